"""A whole job by pandas and numpy: FILE. Prints what `soakwright check` measures on it, as JSON: id -> value.

Written as somebody with these libraries would write it, vectorised throughout, by the definitions that the README gives:
least-squares slopes over sliding windows, crossings on straight lines, the noise of the readings. It is made for the
benchmark's log and no other: even steps of one second, one decimal, nothing missing, one hold. Tempering, phases and
suspect channels, which soakwright works out as well, are left out here.
"""
import hashlib
import json
import sys

import numpy as np
import pandas as pd

LOW, HIGH, ABOVE, WIDTH_S, SETTLE_S = 590.0, 620.0, 300.0, 900, 120.0
WIDTHS_S = (300, 900, 1800, 3600)


def crossings(first, second, level):
    """Where on the way from one row to the next, 0 to 1, the line passes the level."""
    with np.errstate(divide="ignore", invalid="ignore"):
        return (level - first) / (second - first)


def stretches(celsius):
    """Times in s in which every channel is in the band: an array of [from, to]."""
    first, second = celsius[:-1], celsius[1:]
    inside = (celsius >= LOW) & (celsius <= HIGH)
    before, after = inside[:-1], inside[1:]
    enter = np.where(before, 0.0, crossings(first, second, np.where(first < LOW, LOW, HIGH)))
    leave = np.where(after, 1.0, crossings(first, second, np.where(second < LOW, LOW, HIGH)))
    never = ~before & ~after & ((np.maximum(first, second) < LOW) | (np.minimum(first, second) > HIGH))
    enter = np.where(never, np.inf, enter).max(axis=1)
    leave = leave.min(axis=1)
    steps = np.flatnonzero(enter <= leave)
    starts, ends = steps + enter[steps], steps + leave[steps]
    new = np.concatenate([[True], starts[1:] > ends[:-1] + 1e-12])
    last = np.concatenate([new[1:], [True]])
    found = np.column_stack([starts[new], ends[last]])
    return found[found[:, 1] > found[:, 0]]


def span_of(found):
    """The hold's first and last stretch that are not the edge being crossed, and its core."""
    lengths = found[:, 1] - found[:, 0]
    core = int(lengths.argmax())
    shortest = max(SETTLE_S, lengths[core] / 10.0)
    first, last = 0, len(found) - 1
    while first < core and lengths[first] < shortest:
        first += 1
    while last > core and lengths[last] < shortest:
        last -= 1
    return first, core, last


def by_grace(found, grace_s):
    """Longest and summed time were departures of up to so long forgiven."""
    gaps = found[1:, 0] - found[:-1, 1] > grace_s + 1e-3
    starts = found[np.concatenate([[True], gaps]), 0]
    ends = found[np.concatenate([gaps, [True]]), 1]
    return float((ends - starts).max()), float((ends - starts).sum())


class Slopes:
    """Sliding least-squares slopes of one channel from running sums of whole tenths: exact."""

    def __init__(self, tenths, judged):
        k = np.arange(len(tenths), dtype=np.int64)
        self.sum = np.concatenate([[0], np.cumsum(tenths)])
        self.moment = np.concatenate([[0], np.cumsum(k * tenths)])
        self.out = np.concatenate([[0], np.cumsum(~judged)])

    def over(self, width_s):
        """C/h of every window that lies wholly within a part, and its first row."""
        n = width_s + 1
        first = np.arange(len(self.sum) - n)
        first = first[self.out[first + n] == self.out[first]]
        v = self.sum[first + n] - self.sum[first]
        kv = self.moment[first + n] - self.moment[first] - first * v
        return (12.0 * kv - 6.0 * (n - 1) * v) / (n * (n * n - 1.0)) * 360.0, first


def noise(tenths, judged):
    bend = (2 * tenths[1:-1] - tenths[:-2] - tenths[2:]) / 10.0
    inside = judged[:-2] & judged[1:-1] & judged[2:]
    squares = bend[inside] ** 2 / 6.0
    return np.sqrt(max(squares.mean() if len(squares) else 0.0, 0.01 / 12.0))


def rates(tenths, within, sign):
    """Worst by width, with the standard error of the judged one."""
    worst = {width: None for width in WIDTHS_S}
    error = None
    for channel in tenths.T:
        judged = within & (channel >= ABOVE * 10)
        slopes = Slopes(channel, judged)
        for width in WIDTHS_S:
            found, _ = slopes.over(width)
            if len(found) == 0:
                continue
            steepest = float((sign * found).max())
            if worst[width] is None or steepest > worst[width]:
                worst[width] = steepest
                if width == WIDTH_S:
                    n = width + 1
                    error = noise(channel, judged) / np.sqrt(n * (n * n - 1.0) / 12.0) * 3600.0
    return worst, float(error)


def overall(celsius, core, span, up):
    """Per channel, from one level to the other."""
    found = []
    for channel in celsius.T:
        first, second = channel[:-1], channel[1:]
        if up:
            at = np.flatnonzero((first < ABOVE) & (second >= ABOVE))
            ramp = (at + crossings(first[at], second[at], ABOVE))
            start = ramp[ramp <= core[0]][-1]
            at = np.flatnonzero((first < LOW) & (second >= LOW))
            arrive = at + crossings(first[at], second[at], LOW)
            end = arrive[arrive > start][0]
        else:
            at = np.flatnonzero((first >= ABOVE) & (second < ABOVE))
            leave = at + crossings(first[at], second[at], ABOVE)
            end = leave[leave > span[1]][0]
            at = np.flatnonzero((first >= LOW) & (second < LOW))
            start = (at + crossings(first[at], second[at], LOW))
            start = start[start < end][-1]
        found.append((LOW - ABOVE) / (end - start) * 3600.0)
    return found


def main():
    path = sys.argv[1]
    frame = pd.read_csv(path, parse_dates=[0], infer_datetime_format=True)
    with open(path, "rb") as file:
        sha256 = hashlib.sha256(file.read()).hexdigest()
    seconds = (frame.iloc[:, 0] - frame.iloc[0, 0]).dt.total_seconds().to_numpy()
    celsius = frame.iloc[:, 1:].to_numpy()
    tenths = np.rint(celsius * 10.0).astype(np.int64)
    steps = np.diff(seconds)

    found = stretches(celsius)
    first, core, last = span_of(found)
    span = (found[first, 0], found[last, 1])
    hottest, coldest = tenths.max(axis=1), tenths.min(axis=1)
    spread = (hottest - coldest) / 10.0
    in_stretch = np.zeros(len(seconds), dtype=bool)
    for start, end in found[first:last + 1]:
        in_stretch[int(np.ceil(start - 1e-3)):int(np.floor(end + 1e-3)) + 1] = True
    hot = hottest >= ABOVE * 10
    heat, cool = seconds <= span[1], seconds >= span[0]
    up, up_error = rates(tenths, heat, 1.0)
    down, down_error = rates(tenths, cool, -1.0)
    json.dump({
        "sha256": sha256,
        "rows": len(frame),
        "min": frame.iloc[:, 1:].min().tolist(),
        "max": frame.iloc[:, 1:].max().tolist(),
        "record.ceiling": float(celsius.max()),
        "record.start": float(celsius[0].max()),
        "record.end": float(celsius[-1].max()),
        "record.gap": float(steps.max()),
        "record.interval": float(np.median(steps)),
        "stage-1.heating-rate": up[WIDTH_S],
        "stage-1.by-width": [up[width] for width in WIDTHS_S],
        "stage-1.standard-error": up_error,
        "stage-1.overall": overall(celsius, found[core], span, True),
        "stage-1.spread": float(spread[hot & (seconds < span[0])].max()),
        "stage-2.hold-time": float(found[core, 1] - found[core, 0]),
        "stage-2.by-grace": [by_grace(found, grace) for grace in (0.0, 120.0, 300.0, 600.0)],
        "stage-2.spread": float(spread[in_stretch].max()),
        "stage-2.over": float(celsius.max()),
        "stage-3.cooling-rate": down[WIDTH_S],
        "stage-3.by-width": [down[width] for width in WIDTHS_S],
        "stage-3.standard-error": down_error,
        "stage-3.spread": float(spread[hot & (seconds > span[1])].max()),
    }, sys.stdout)


main()
