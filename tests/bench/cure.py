"""What the cure model costs, beside scipy doing the same in the same run.

One expected curve over 20 160 one-minute readings, so cold that it never ends, against
`solve_ivp(LSODA, max_step=60, rtol=1e-8)` on the same air; and one tick with a new reading
for 96 joints of 12 batches before a flat outlook.
"""

from __future__ import annotations

import math
import random
import time
from collections.abc import Callable, Sequence
from dataclasses import replace
from zoneinfo import ZoneInfo

import numpy as np
from scipy.integrate import solve_ivp

from rackboard.core.bench import Source
from rackboard.core.cure.calibration import CureModel, calibrate
from rackboard.core.cure.forecast import complete, milestones
from rackboard.core.cure.record import Air, Point, between, closed_stretches, outlook
from rackboard.core.cure.run import HORIZON_US, Bond, Run, Track
from rackboard.core.epoxy import Range, Sheet
from rackboard.core.instants import MINUTE_US, Instant
from rackboard.core.schedule import OpeningHours

READINGS = 20_160
RATIO_LEAST = 10.0
TICK_MOST_S = 0.040
BATCHES, JOINTS = 12, 8
ALWAYS = Air(OpeningHours(((0, 1440),) * 7, ZoneInfo("UTC")))
SHEET = Sheet("invented day-long", Range(60, 60), Range(24, 24), Range(8, 8), 25.0, 15.0, 60.0)


def cold_fortnight() -> list[Point]:
    """Return two weeks of one-minute readings at 6 °C and noise: the curve never ends."""
    rng = random.Random(1)
    return [
        Point(i * MINUTE_US, 6_000 + round(rng.gauss(0, 200)), 1_000, Source.FEED)
        for i in range(READINGS)
    ]


def fastest(work: Callable[[], object], times: int) -> float:
    """Return the shortest of several times of some work [s]."""
    best = math.inf
    for _ in range(times):
        start = time.perf_counter()
        work()
        best = min(best, time.perf_counter() - start)
    return best


def our_curve(model: CureModel, points: Sequence[Point]) -> float:
    """Return the expected conversion at the end of a record."""
    track = Track(model.expected(), (0.9,), model.n)
    for stretch in closed_stretches(points, ALWAYS):
        track.advance(
            stretch.start_us, ((stretch.end_us - stretch.start_us) / 1e6, *stretch.expected)
        )
    return track.value


def floor_curve(model: CureModel, points: Sequence[Point]) -> float:
    """Return the same by scipy: the floor that the ratio is measured against."""
    times = np.array([p.at_us / 1e6 for p in points])
    temps = np.array([p.temperature_mc / 1000 + 273.15 for p in points])
    at, warmth = times.tolist(), temps.tolist()
    energy, n, k = model.energy / 8.314462618, model.n, model.k_per_s
    ref, minimum, top = model.ref_k, model.minimum_k, model.maximum_k
    exp = math.exp

    def rate(t: float, y: Sequence[float]) -> float:
        i = min(int(t // 60), READINGS - 2)  # minutes apart: no search
        temp = warmth[i] + (warmth[i + 1] - warmth[i]) * (t - at[i]) / 60
        temp = min(temp, top)
        a = y[0]
        stall = 1 + exp(30 * (a - 0.9 - 0.0055 * (temp - minimum)))
        return k * exp(energy * (1 / ref - 1 / temp)) * (0.05 + a) * (1 - a) ** n / stall

    done = solve_ivp(rate, (at[0], at[-1]), [0.0], method="LSODA", max_step=60, rtol=1e-8)
    return float(done.y[0, -1])


def curve_ratio() -> tuple[float, str]:
    """Return how many times as fast as scipy one curve is, and a line that says so."""
    model, points = calibrate(SHEET), cold_fortnight()
    ours, floor = our_curve(model, points), floor_curve(model, points)
    ours_s = fastest(lambda: our_curve(model, points), 5)
    floor_s = fastest(lambda: floor_curve(model, points), 3)
    ratio = floor_s / ours_s
    return ratio, (
        f"one curve over {READINGS} readings: {ours_s * 1e3:.1f} ms, LSODA {floor_s * 1e3:.0f} ms, "
        f"{ratio:.1f} times as fast (at least {RATIO_LEAST:g}); "
        f"conversion {ours:.9f}, LSODA {floor:.9f}, apart {abs(ours - floor):.1e}"
    )


def _runs() -> list[tuple[Run[Bond], Point]]:
    """Return 96 joints half-way, a batch each half hour, each as far as the last reading."""
    points = [Point(i * 5 * MINUTE_US, 18_000, 1_000, Source.FEED) for i in range(73)]
    found = []
    for batch in range(BATCHES):
        sheet = replace(SHEET, name=f"invented {batch}", full_cure_time_h=Range(24, 24 + batch))
        model, mixed = calibrate(sheet), points[batch * 6].at_us
        for joint in range(JOINTS):
            run = Run(Bond(model), mixed)
            start = 288.15 + joint
            run.glue((start, start - 1, start + 1), 1320.0)
            for stretch in closed_stretches(points[batch * 6 :], ALWAYS):
                run.advance(stretch)
            found.append((run, points[-1]))
    return found


def tick_cost() -> tuple[float, str]:
    """Return what one new reading costs 96 joints before a flat outlook [s], and a line."""
    runs = _runs()
    last = runs[0][1]
    new = Point(last.at_us + 5 * MINUTE_US, 18_100, 1_000, Source.FEED)
    closed = between(last, new, ALWAYS)
    ahead = list(outlook(new, ALWAYS, new.at_us + HORIZON_US))

    def tick() -> list[Instant | None]:
        answers = []
        for run, _ in runs:
            now = run.copy()
            for stretch in closed:
                now.advance(stretch)
            way = now.copy()
            complete(way, ahead)
            answers.append(milestones(way).full_cure.late)
        return answers

    assert all(late is not None for late in tick())
    cost_s = fastest(tick, 5)
    return cost_s, (
        f"a tick with one new reading, {len(runs)} joints in {BATCHES} batches, model alone: "
        f"{cost_s * 1e3:.1f} ms (the whole tick at most {TICK_MOST_S * 1e3:.0f})"
    )


if __name__ == "__main__":
    print(curve_ratio()[1])
    print(tick_cost()[1])
