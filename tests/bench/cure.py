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
from rackboard.core.cure.kinetics import Piece
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
    """Return two weeks, minute by minute, at 0 °C and a sensor's noise: it never ends."""
    rng = random.Random(1)
    return [
        Point(i * MINUTE_US, round(rng.gauss(0, 60)), 1_000, Source.FEED)
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


def our_curve(model: CureModel, air: Sequence[tuple[Instant, Piece]]) -> float:
    """Return the expected conversion at the end of a record."""
    track = Track(model.expected(), (0.9,), model.n)
    for start_us, piece in air:
        track.advance(start_us, piece)
    return track.value


def floor_curve(
    model: CureModel, times: np.ndarray[tuple[int], np.dtype[np.float64]],
    temps: np.ndarray[tuple[int], np.dtype[np.float64]],
) -> float:
    """Return the same by scipy: the floor that the ratio is measured against."""
    energy, n, k = model.energy / 8.314462618, model.n, model.k_per_s
    ref, minimum, top = model.ref_k, model.minimum_k, model.maximum_k
    exp = math.exp

    def rate(t: float, y: Sequence[float]) -> float:
        temp = min(float(np.interp(t, times, temps)), top)
        a = y[0]
        stall = 1 + exp(30 * (a - 0.9 - 0.0055 * (temp - minimum)))
        power: float = (1 - a) ** n
        return k * exp(energy * (1 / ref - 1 / temp)) * (0.05 + a) * power / stall

    # scipy's own atol of 1e-6 would make it three times as fast and 1e-6 wrong; ours is 1e-9 off.
    done = solve_ivp(
        rate, (times[0], times[-1]), [0.0], method="LSODA", max_step=60, rtol=1e-8, atol=1e-10
    )
    return float(done.y[0, -1])


def curve_ratio() -> tuple[float, str]:
    """Return how many times as fast as scipy one curve is, and a line that says so."""
    model, points = calibrate(SHEET), cold_fortnight()
    # Both are given the air ready: here as straight pieces, there as arrays.
    stretches = closed_stretches(points, ALWAYS)
    air = [(s.start_us, ((s.end_us - s.start_us) / 1e6, *s.expected)) for s in stretches]
    times = np.array([p.at_us / 1e6 for p in points])
    temps = np.array([p.kelvin for p in points])
    ours, floor = our_curve(model, air), floor_curve(model, times, temps)
    ours_s = fastest(lambda: our_curve(model, air), 5)
    floor_s = fastest(lambda: floor_curve(model, times, temps), 3)
    ratio = floor_s / ours_s
    return ratio, (
        f"one curve over {READINGS} readings: {ours_s * 1e3:.1f} ms, LSODA {floor_s * 1e3:.0f} ms, "
        f"{ratio:.1f} times as fast (at least {RATIO_LEAST:g}); "
        f"conversion {ours:.9f}, LSODA {floor:.9f}, apart {abs(ours - floor):.1e}"
    )


def _runs(alike: bool) -> list[Run[Bond]]:
    """Return the joints of 12 batches, half an hour apart, each as far as the last reading.

    `alike`: those of a batch share their way, as eight irons off one rack do, and are
    followed once; else each has parts of its own temperature.
    """
    points = _warm_shop()
    found = []
    for batch in range(BATCHES):
        sheet = replace(SHEET, name=f"invented {batch}", full_cure_time_h=Range(24, 24 + batch))
        model, mixed = calibrate(sheet), points[batch * 6].at_us
        for joint in range(1 if alike else JOINTS):
            run = Run(Bond(model), mixed)
            start = 288.15 + joint
            run.glue((start, start - 1, start + 1), 1320.0)
            for stretch in closed_stretches(points[batch * 6 :], ALWAYS):
                run.advance(stretch)
            found.append(run)
    return found


def _warm_shop() -> list[Point]:
    return [Point(i * 5 * MINUTE_US, 18_000, 1_000, Source.FEED) for i in range(73)]


def tick_cost(alike: bool) -> tuple[float, str]:
    """Return what one new reading costs 96 joints before a flat outlook [s], and a line."""
    runs, last = _runs(alike), _warm_shop()[-1]
    new = Point(last.at_us + 5 * MINUTE_US, 18_100, 1_000, Source.FEED)

    def tick() -> list[Instant | None]:
        closed = between(last, new, ALWAYS)
        ahead = list(outlook(new, ALWAYS, new.at_us + HORIZON_US))
        answers = []
        for run in runs:
            now = run.copy()
            for stretch in closed:
                now.advance(stretch)
            way = now.copy()
            complete(way, ahead)
            answers.append(milestones(way).full_cure.late)
        return answers

    assert all(late is not None for late in tick())
    cost_s = fastest(tick, 5)
    kind = "alike within a batch" if alike else "each on a way of its own"
    return cost_s, (
        f"a new reading for {BATCHES * JOINTS} joints in {BATCHES} batches, {kind}, "
        f"the model alone: {cost_s * 1e3:.1f} ms (a whole tick at most {TICK_MOST_S * 1e3:.0f})"
    )


if __name__ == "__main__":
    print(curve_ratio()[1])
    print(tick_cost(alike=True)[1])
    print(tick_cost(alike=False)[1])
