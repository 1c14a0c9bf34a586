"""A whole job by pandas and numpy: FILE [tempering]. Prints what `soakwright check` measures on it, as JSON: id -> value.

Written as somebody with these libraries would write it, vectorised throughout, by the definitions that the README gives:
least-squares slopes over sliding windows, crossings on straight lines, the noise of the readings. It is made for the
benchmark's log and no other: even steps of one second, one decimal, nothing missing, one hold. Phases and suspect
channels, which soakwright works out as well, are left out here; tempering is worked out where it is asked for, since
every step of it needs the one before, which costs such a script a loop.
"""
import hashlib
import json
import sys

import numpy as np
import pandas as pd

LOW, HIGH, ABOVE, WIDTH_S, IN_RANGE_MIN_S = 590.0, 620.0, 300.0, 900, 120.0
HEATING, COOLING = 140.0, 180.0
WIDTHS_S = (300, 900, 1800, 3600)


def crossings(first, second, level):
    """Where on the way from one row to the next, 0 to 1, the line passes the level."""
    with np.errstate(divide="ignore", invalid="ignore"):
        return (level - first) / (second - first)


def time_ranges(celsius):
    """Times in s in which every channel is in the range: an array of [from, to]."""
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
    """The hold's first and last time_range that are not the edge being crossed, and its core."""
    lengths = found[:, 1] - found[:, 0]
    core = int(lengths.argmax())
    shortest = max(IN_RANGE_MIN_S, lengths[core] / 10.0)
    first, last = 0, len(found) - 1
    while first < core and lengths[first] < shortest:
        first += 1
    while last > core and lengths[last] < shortest:
        last -= 1
    return first, core, last


def by_excursion_allowed(found, excursion_allowed_s):
    """Longest and summed time were excursions of up to so long forgiven."""
    gaps = found[1:, 0] - found[:-1, 1] > excursion_allowed_s + 1e-3
    starts = found[np.concatenate([[True], gaps]), 0]
    ends = found[np.concatenate([gaps, [True]]), 1]
    return float((ends - starts).max()), float((ends - starts).sum())


class Slopes:
    """Sliding least-squares slopes of one channel from running sums of whole tenths: exact."""

    def __init__(self, tenths, evaluated):
        k = np.arange(len(tenths), dtype=np.int64)
        self.sum = np.concatenate([[0], np.cumsum(tenths)])
        self.moment = np.concatenate([[0], np.cumsum(k * tenths)])
        self.out = np.concatenate([[0], np.cumsum(~evaluated)])

    def fit(self, first, n):
        """C/h over n rows from each row of first."""
        v = self.sum[first + n] - self.sum[first]
        kv = self.moment[first + n] - self.moment[first] - first * v
        return (12.0 * kv - 6.0 * (n - 1) * v) / (n * (n * n - 1.0)) * 360.0

    def over(self, width_s):
        """Every window that lies wholly within a part."""
        n = width_s + 1
        first = np.arange(len(self.sum) - n)
        first = first[self.out[first + n] == self.out[first]]
        return first, self.fit(first, n)

    def short_parts(self, width_s):
        """Parts too short for a window that last IN_RANGE_MIN_S: one window each. Slopes and numbers of readings."""
        edges = np.diff(np.concatenate([[1], np.diff(self.out), [1]]))
        first = np.flatnonzero(edges == -1)
        n = np.flatnonzero(edges == 1) - first
        keep = (n > IN_RANGE_MIN_S) & (n <= width_s)
        return first[keep], self.fit(first[keep], n[keep]), n[keep]


def joined(evaluated):
    """Parts no further apart than IN_RANGE_MIN_S are one."""
    edges = np.diff(np.concatenate([[0], evaluated.astype(np.int8), [0]]))
    first, end = np.flatnonzero(edges == 1), np.flatnonzero(edges == -1)
    evaluated = evaluated.copy()
    for gap_first, gap_end in zip(end[:-1], first[1:]):
        if gap_end - gap_first <= IN_RANGE_MIN_S:
            evaluated[gap_first:gap_end] = True
    return evaluated


def noise(tenths, evaluated):
    bend = (2 * tenths[1:-1] - tenths[:-2] - tenths[2:]) / 10.0
    inside = evaluated[:-2] & evaluated[1:-1] & evaluated[2:]
    squares = bend[inside] ** 2 / 6.0
    if len(squares) < 16:
        return squares.mean() if len(squares) else 0.0
    return np.median(squares) / 0.4549


def noise_k(of_channel, tenths):
    """The channel's, or the window's where that is larger, or what one decimal is worth."""
    own = noise(tenths, np.ones(len(tenths), dtype=bool)) if len(tenths) >= 18 else 0.0
    return np.sqrt(max(of_channel, own, 0.01 / 12.0))


def standard_error(noise_k, n):
    return noise_k / np.sqrt(n * (n * n - 1.0) / 12.0) * 3600.0


def rates(tenths, within, hold, sign, limit):
    """The worst that is evaluated, its standard error, the worst by width, and the verdict."""
    worst, error, by_width = -np.inf, None, dict.fromkeys(WIDTHS_S, -np.inf)
    over, surely = False, False
    for channel in tenths.T:
        # Control within the hold's range is no ramp.
        controlled = hold & (channel >= LOW * 10) & (channel <= HIGH * 10)
        evaluated = joined(within & (channel >= ABOVE * 10) & ~controlled)
        slopes = Slopes(channel, evaluated)
        level = noise(channel, evaluated)
        for width in WIDTHS_S:
            first, found = slopes.over(width)
            found *= sign
            n = np.full(len(found), width + 1)
            by_width[width] = max(by_width[width], found.max(initial=-np.inf))
            if width != WIDTH_S:
                continue
            short_first, short, short_n = slopes.short_parts(width)
            first, n = np.concatenate([first, short_first]), np.concatenate([n, short_n])
            found = np.concatenate([found, sign * short])
            errors = standard_error(noise_k(level, channel[:0]), n)
            if len(found) and found.max() > worst:
                at = found.argmax()
                worst = float(found[at])
                error = float(standard_error(noise_k(level, channel[first[at]:first[at] + n[at]]), n[at]))
            over = over or bool((found > limit + 1e-6).any())
            surely = surely or bool((found - 4.0 * errors > limit + 1e-6).any())
    verdict = "not met" if surely else "inconclusive" if over else "met"
    return worst, error, [float(by_width[width]) for width in WIDTHS_S], verdict


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


def tempering(celsius):
    """Hollomon and Jaffe's parameter at the end, all channels in one row after the other."""
    kelvin = (celsius[:-1] + celsius[1:]) / 2.0 + 273.15
    log_step = 20.0 * np.log(10.0) + np.log(1.0 / 3600.0)
    gathered = kelvin[0] * log_step
    for row in kelvin[1:]:
        gathered += row * np.log1p(np.exp(log_step - gathered / row))
    return (gathered / np.log(10.0) / 1000.0).tolist()


def statistics(celsius, within):
    rows = celsius[within]
    return {"min": rows.min(axis=0).tolist(), "max": rows.max(axis=0).tolist(), "mean": rows.mean(axis=0).tolist()}


def main():
    path = sys.argv[1]
    frame = pd.read_csv(path, parse_dates=[0], infer_datetime_format=True)
    with open(path, "rb") as file:
        sha256 = hashlib.sha256(file.read()).hexdigest()
    seconds = (frame.iloc[:, 0] - frame.iloc[0, 0]).dt.total_seconds().to_numpy()
    celsius = frame.iloc[:, 1:].to_numpy()
    tenths = np.rint(celsius * 10.0).astype(np.int64)
    steps = np.diff(seconds)

    found = time_ranges(celsius)
    first, core, last = span_of(found)
    span = (found[first, 0], found[last, 1])
    hottest, coldest = tenths.max(axis=1), tenths.min(axis=1)
    spread = (hottest - coldest) / 10.0
    hot = hottest >= ABOVE * 10
    heat, cool = seconds <= span[1], seconds >= span[0]
    hold = heat & cool
    up, up_error, up_by_width, up_verdict = rates(tenths, heat, hold, 1.0, HEATING)
    down, down_error, down_by_width, down_verdict = rates(tenths, cool, hold, -1.0, COOLING)
    inside = found[first:last + 1]
    measured = {
        "sha256": sha256,
        "rows": len(frame),
        "min": frame.iloc[:, 1:].min().tolist(),
        "max": frame.iloc[:, 1:].max().tolist(),
        "record.temperature-max": float(celsius.max()),
        "record.start-temperature": float(celsius[0].max()),
        "record.end-temperature": float(celsius[-1].max()),
        "record.gap": float(steps.max()),
        "record.sampling-interval": float(np.median(steps)),
        "stage-1.heating-rate": up,
        "stage-1.verdict": up_verdict,
        "stage-1.by-width": up_by_width,
        "stage-1.standard-error": up_error,
        "stage-1.overall": overall(celsius, found[core], span, True),
        "stage-1.spread": float(spread[hot & (seconds < span[0])].max()),
        "stage-2.hold-time": float(found[core, 1] - found[core, 0]),
        "stage-2.by-excursion_allowed": [by_excursion_allowed(found, excursion_allowed) for excursion_allowed in (0.0, 120.0, 300.0, 600.0)],
        "stage-2.excursion-time": float((inside[1:, 0] - inside[:-1, 1]).sum()),
        "stage-2.spread": float(spread[hold].max()),
        "stage-2.over-temperature": float(celsius.max()),
        "stage-3.cooling-rate": down,
        "stage-3.verdict": down_verdict,
        "stage-3.by-width": down_by_width,
        "stage-3.standard-error": down_error,
        "stage-3.spread": float(spread[hot & (seconds > span[1])].max()),
        "stage-1.channels": statistics(celsius, heat),
        "stage-2.channels": statistics(celsius, heat & cool),
        "stage-3.channels": statistics(celsius, cool),
    }
    if "tempering" in sys.argv:
        measured["tempering"] = tempering(celsius)
    json.dump(measured, sys.stdout)


main()
