#!/usr/bin/env python3
"""Crossings and rolling slopes of the sample log of W-117, by numpy and scipy (Debian: python3-numpy, python3-scipy).

  tests/cases/sample_by_numpy.py > tests/cases/sample_by_numpy.json

By the definitions, not by the program: crossings are roots of scipy's piecewise line; a slope is scipy's linregress over
the readings within 450 s on either side of a reading, for windows that lie between the crossing of 300 °C and the last
moment at which all thermocouples are within 590 to 620 °C.
"""
import csv
import json
import os
from datetime import datetime

import numpy
from scipy.interpolate import InterpolatedUnivariateSpline
from scipy.stats import linregress

LOG = os.path.join(os.path.dirname(os.path.abspath(__file__)), "../../sample-logs/w-117-stress-relief/d3-n2.csv")
HALF_S = 450.0


def read():
    with open(LOG, encoding="utf-8") as file:
        rows = [row for row in csv.reader(file) if row and not row[0].startswith("#")]
    names = [name.split(" (")[0] for name in rows[0]]
    stamps = [datetime.fromisoformat(row[0]) for row in rows[1:]]
    times = numpy.array([(stamp - stamps[0]).total_seconds() for stamp in stamps])
    table = numpy.array([[float(cell) for cell in row[1:]] for row in rows[1:]])
    return times, {name: table[:, i] for i, name in enumerate(names[1:]) if name != "Set point"}


def roots(times, values, level):
    """Moments at which the straight lines between the readings are at the level."""
    line = InterpolatedUnivariateSpline(times, values - level, k=1)
    found = []
    for left, right in zip(times[:-1], times[1:]):
        a, b = float(line(left)), float(line(right))
        if a * b < 0 or b == 0:
            found.append(float(left + (right - left) * a / (a - b)))
    return found


def main():
    times, channels = read()
    came_in = {name: roots(times, values, 590.0)[0] for name, values in channels.items()}
    left = {name: roots(times, values, 590.0)[-1] for name, values in channels.items()}
    end = min(left.values())
    steepest = (-numpy.inf, None, None)
    for name, values in channels.items():
        begin = roots(times, values, 300.0)[0]
        for at in times[(times - HALF_S >= begin - 1e-6) & (times + HALF_S <= end + 1e-6)]:
            inside = numpy.abs(times - at) <= HALF_S + 1e-6
            slope = linregress(times[inside] - at, values[inside]).slope * 3600.0
            if slope > steepest[0] + 1e-9:
                steepest = (float(slope), name, float(at))
    print(json.dumps({"came_in_s": came_in, "left_s": left, "heating_rate": steepest[0], "channel": steepest[1],
                      "at_s": steepest[2], "hold_time_s": end - max(came_in.values())}, indent=1, sort_keys=True))


if __name__ == "__main__":
    main()
