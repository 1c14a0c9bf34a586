#!/usr/bin/env python3
"""Makes the sample logs: python3 sample-logs/generate.py

Everything here is invented: the works, the people, the drum and its welds. The traces come from a heat balance, so that
they look like runs and not like rulers: each spot under a heater gains from its zone's power, loses to the air, and
passes heat to the wall below it, where the thermocouple sits; a controller follows a programme on one of them; the
recorder adds noise and its last digit. Same script, same bytes: the random numbers are seeded per log.
"""
import datetime
import math
import pathlib
import random

HERE = pathlib.Path(__file__).resolve().parent
STEP_S = 5.0


class Spot:
    """A thermocouple under a heater: skin and wall, gain of its zone, losses."""

    def __init__(self, name, gain=1.0, loss=1.0, lag_s=90.0, air=18.0):
        self.name, self.gain, self.loss, self.lag_s = name, gain, loss, lag_s
        self.skin = self.wall = self.air = air

    def advance(self, power, mean, dt):
        # Full power lifts a spot without losses by 430 degrees an hour; at 600 degrees it loses 170 an hour, a third of
        # it by radiation. Neighbours share heat along the work.
        above = self.skin - self.air
        radiated = ((self.skin + 273.15) ** 4 - (self.air + 273.15) ** 4) / (873.15**4)
        rate = 0.12 * self.gain * power - self.loss * (5.4e-5 * above + 0.0157 * radiated)
        rate += (mean - self.skin) / 5400.0
        self.skin += rate * dt
        self.wall += (self.skin - self.wall) * dt / self.lag_s


class Controller:
    """Follows a programme of (target, degrees an hour, hold minutes) on one spot."""

    def __init__(self, programme, start):
        self.programme, self.set_point, self.sum = list(programme), start, 0.0
        self.held_s = 0.0

    def advance(self, measured, dt):
        if not self.programme:
            return None
        target, rate, hold_min = self.programme[0]
        step = rate / 3600.0 * dt
        if abs(self.set_point - target) > step:
            # The programme waits for the work: it does not run away from a slow ramp.
            if abs(self.set_point - measured) < 12.0:
                self.set_point += step if target > self.set_point else -step
        else:
            self.set_point = target
            self.held_s += dt
            if self.held_s >= hold_min * 60.0:
                self.programme.pop(0)
                self.held_s = 0.0
        error = self.set_point - measured
        self.sum = max(-0.2, min(0.9, self.sum + error * dt / 9000.0))
        return max(0.0, min(1.0, 0.045 * error + self.sum))


def run(spots, controller, seconds, events=None, control=0):
    """Yields (t, set point, temperatures) every STEP_S; `events(t, power, spots)` may change the power per spot."""
    t = 0.0
    while t <= seconds:
        power = controller.advance(spots[control].wall, STEP_S)
        set_point = controller.set_point if power is not None else None
        powers = [power or 0.0] * len(spots)
        if events:
            powers = events(t, powers, spots)
        yield t, set_point, [s.wall for s in spots]
        mean = sum(s.skin for s in spots) / len(spots)
        for spot, p in zip(spots, powers):
            spot.advance(p, mean, STEP_S)
        t += STEP_S


def every(rows, interval_s):
    for row in rows:
        if row[0] % interval_s == 0.0:
            yield row


def tenth(value, rng, noise=0.15):
    return f"{value + rng.gauss(0.0, noise):.1f}"


def write(folder, name, lines):
    path = HERE / folder / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(("\n".join(lines) + "\n").encode("utf-8"))


def heading(job, recorder):
    return ["# Brackwater Fabrication, Port Ellery", f"# {job}", f"# Recorder: {recorder}"]


def clean_stress_relief():
    rng = random.Random(117)
    names = ["TC1", "TC2", "TC3", "TC4", "TC5", "TC6"]
    spots = [Spot(n, gain=g, loss=l, lag_s=lag) for n, g, l, lag in
             zip(names, [1.0, 1.01, 0.995, 1.005, 0.985, 0.99], [1.0, 1.0, 1.0, 1.0, 0.99, 1.0],
                 [90, 100, 110, 95, 190, 180])]
    controller = Controller([(605, 105, 122), (300, 120, 0), (120, 90, 0)], 18.0)
    start = datetime.datetime(2031, 4, 2, 6, 0, 0)
    lines = heading("Steam drum D-3, nozzle N2 to shell, weld W-117", "12 channels, every 30 s")
    lines.append("Time,TC1 (°C),TC2 (°C),TC3 (°C),TC4 (°C),TC5 (°C),TC6 (°C),Set point (°C)")
    for t, set_point, temperatures in every(run(spots, controller, 13.2 * 3600), 30):
        stamp = (start + datetime.timedelta(seconds=t)).strftime("%Y-%m-%d %H:%M:%S")
        lines.append(",".join([stamp] + [tenth(v, rng) for v in temperatures] +
                              [f"{set_point:.1f}" if set_point is not None else ""]))
    write("w-117-stress-relief", "d3-n2.csv", lines)


def late_dip_excursion():
    rng = random.Random(118)
    names = ["TC1", "TC2", "TC3", "TC4", "TC5"]
    spots = [Spot(n, gain=g, loss=l, lag_s=lag) for n, g, l, lag in
             zip(names, [1.0, 1.01, 1.0, 0.99, 0.965], [1.0, 1.0, 1.01, 1.0, 1.0], [90, 100, 95, 105, 420])]
    controller = Controller([(605, 105, 150), (300, 120, 0), (150, 90, 0)], 18.0)
    start = datetime.datetime(2031, 4, 9, 5, 30, 0)

    def events(t, powers, all_spots):
        powers = list(powers)
        # Somebody lays hands on the output of one zone for twenty-five minutes of the ramp.
        if 4.05 * 3600 <= t <= 4.05 * 3600 + 25 * 60:
            powers[1] = min(1.0, powers[1] + 0.28)
        # A breaker trips in the hold and is found after nine minutes.
        if 6.95 * 3600 <= t <= 6.95 * 3600 + 9 * 60:
            powers[2] = 0.0
        return powers

    lines = heading("Steam drum D-3, nozzle N3 to shell, weld W-118", "12 channels, every 30 s")
    lines.append("Time,TC1 (°C),TC2 (°C),TC3 (°C),TC4 (°C),TC5 (°C),Set point (°C)")
    for t, set_point, temperatures in every(run(spots, controller, 13.4 * 3600, events), 30):
        stamp = (start + datetime.timedelta(seconds=t)).strftime("%Y-%m-%d %H:%M:%S")
        lines.append(",".join([stamp] + [tenth(v, rng) for v in temperatures] +
                              [f"{set_point:.1f}" if set_point is not None else ""]))
    write("w-118-late-and-dipping", "d3-n3.csv", lines)


def preheat_through_welding():
    rng = random.Random(121)
    names = ["TC1", "TC2", "TC3", "TC4"]
    spots = [Spot(n, gain=g, lag_s=lag) for n, g, lag in zip(names, [1.0, 1.02, 0.98, 0.99], [100, 110, 120, 105])]
    controller = Controller([(165, 150, 420)], 16.0)
    start = datetime.datetime(2031, 4, 14, 6, 20, 0)

    def events(t, powers, all_spots):
        powers = list(powers)
        # Weld runs pass the thermocouples one after the other and lift them for a few minutes.
        if 2.0 * 3600 <= t <= 6.5 * 3600:
            place = int((t - 2.0 * 3600) / 600) % 4
            if (t - 2.0 * 3600) % 600 < 150:
                powers[place] = min(1.0, powers[place] + 0.33)
        return powers

    lines = heading("Steam drum D-3, circumferential seam, weld W-121, preheat", "every minute")
    lines.append("Date;Time;TC1 °C;TC2 °C;TC3 °C;TC4 °C")
    for t, _, temperatures in every(run(spots, controller, 8.0 * 3600, events), 60):
        stamp = start + datetime.timedelta(seconds=t)
        lines.append(";".join([stamp.strftime("%d.%m.%Y"), stamp.strftime("%H:%M:%S")] +
                              [tenth(v, rng).replace(".", ",") for v in temperatures]))
    write("w-121-preheat", "seam-preheat.csv", lines)


def bake_out():
    rng = random.Random(122)
    names = ["TC1", "TC2", "TC3", "TC4"]
    spots = [Spot(n, gain=g, lag_s=lag, air=18.0) for n, g, lag in zip(names, [1.0, 1.01, 0.99, 1.0], [100, 140, 120, 130])]
    for spot in spots:
        spot.skin = spot.wall = 158.0 + rng.uniform(-3, 3)
    controller = Controller([(335, 60, 265)], 158.0)
    lines = ["Elapsed (min)\tTC1\tTC2\tTC3\tTC4", "min\t°C\t°C\t°C\t°C"]
    for t, _, temperatures in every(run(spots, controller, 12.5 * 3600), 60):
        lines.append("\t".join([f"{t / 60:.0f}"] + [tenth(v, rng) for v in temperatures]))
    write("w-121-bake-out", "seam-bake-out.txt", lines)


def half_broken_recorder():
    rng = random.Random(124)
    names = ["CH1", "CH2", "CH3", "CH4", "CH5"]
    spots = [Spot(n, gain=g, lag_s=lag) for n, g, lag in zip(names, [1.0, 1.005, 0.99, 0.995, 1.0], [90, 100, 120, 110, 100])]
    controller = Controller([(612, 120, 100), (300, 130, 0), (150, 90, 0)], 19.0)
    start = datetime.datetime(2031, 4, 22, 7, 0, 0)
    lines = ["Port Ellery yard, recorder 4; one printer column dead, clock battery low",
             "Stamp;CH1 degF;CH2 degF;CH3 degF;CH4 degF;CH5 degF;CH6 degF"]
    for t, _, temperatures in every(run(spots, controller, 11.5 * 3600), 60):
        stamp = start + datetime.timedelta(seconds=t)
        cells = []
        for i, v in enumerate(temperatures):
            value = v + rng.gauss(0.0, 0.2)
            # The junction of CH2 comes off in the hold and cools in the air beside the work.
            if i == 1 and t >= 6.2 * 3600:
                gone = t - 6.2 * 3600
                value = 90.0 + (v - 90.0) * math.exp(-gone / 240.0) + rng.gauss(0.0, 1.5)
                if gone > 1500:
                    cells.append("----")
                    continue
            cells.append(f"{value * 9 / 5 + 32:.0f}")
        cells.append("")
        # The recorder sleeps for a minute now and then, and once writes a line twice.
        if rng.random() < 0.012:
            continue
        line = ";".join([stamp.strftime("%m/%d/%Y %I:%M:%S %p")] + cells)
        lines.append(line)
        if rng.random() < 0.004:
            lines.append(line)
    write("w-124-half-broken", "yard-4.csv", lines)


def two_cycles():
    rng = random.Random(126)
    names = ["TC1", "TC2", "TC3", "TC4"]
    spots = [Spot(n, gain=g, lag_s=lag) for n, g, lag in zip(names, [1.0, 1.01, 0.99, 1.0], [90, 130, 120, 100])]
    first = [(604, 110, 62), (300, 130, 0), (60, 90, 200)]
    controller = Controller(first + [(604, 110, 62), (300, 130, 0), (100, 90, 0)], 17.0)
    start = datetime.datetime(2031, 4, 25, 20, 0, 0)
    lines = heading("Steam drum D-3, manhole ring, weld W-126, two cycles", "every minute")
    lines.append("Time,TC1,TC2,TC3,TC4")
    lines.append(",°C,°C,°C,°C")
    for t, _, temperatures in every(run(spots, controller, 34.0 * 3600), 60):
        stamp = (start + datetime.timedelta(seconds=t)).strftime("%Y-%m-%dT%H:%M")
        lines.append(",".join([stamp] + [tenth(v, rng) for v in temperatures]))
    write("w-126-two-cycles", "ring.csv", lines)


def over_two_days():
    rng = random.Random(128)
    names = ["TC1", "TC2", "TC3"]
    # The first evening the yard's supply fails two hours and a half into the hold; the next morning the work starts again
    # from where it cooled to.
    for day, air, hold_min, hours, name in ((28, 18.0, 400, 9.0, "lug-day-1.csv"), (29, 15.0, 110, 9.5, "lug-day-2.csv")):
        spots = [Spot(n, gain=g, lag_s=lag, air=air) for n, g, lag in zip(names, [1.0, 1.01, 0.99], [100, 130, 120])]
        for spot in spots:
            spot.skin = spot.wall = air + (0.0 if day == 28 else 24.0)
        controller = Controller([(340, 110, hold_min)], spots[0].wall)
        start = datetime.datetime(2031, 4, day, 13 if day == 28 else 7, 0, 0)

        def events(t, powers, all_spots, cut=day == 28):
            return [0.0] * len(powers) if cut and t >= 5.6 * 3600 else powers

        lines = heading("Steam drum D-3, lifting lug, weld W-128, bake-out", "every minute")
        lines.append("Time,TC1 (°C),TC2 (°C),TC3 (°C)")
        for t, _, temperatures in every(run(spots, controller, hours * 3600, events), 60):
            stamp = (start + datetime.timedelta(seconds=t)).strftime("%Y-%m-%d %H:%M:%S")
            lines.append(",".join([stamp] + [tenth(v, rng) for v in temperatures]))
        write("w-128-over-two-days", name, lines)


if __name__ == "__main__":
    clean_stress_relief()
    late_dip_excursion()
    preheat_through_welding()
    bake_out()
    half_broken_recorder()
    two_cycles()
    over_two_days()
