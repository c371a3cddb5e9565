"""A week as a sensor recorded it, in the sea off Maine, with twelve hours missing.

tests/data/sea_surface_week.LICENCE.txt says where it comes from and on which terms.
"""

from __future__ import annotations

import csv
import math
from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, datetime
from itertools import pairwise
from pathlib import Path

import pytest
from scipy.integrate import quad

from helpers import oracle
from helpers.records import DAY_LONG, Case, answers
from rackboard.core.bench import Source
from rackboard.core.cure.calibration import calibrate
from rackboard.core.cure.forecast import Forecast, complete, milestones, printed_time
from rackboard.core.cure.kinetics import equivalent_age, kelvin
from rackboard.core.cure.permission import is_earned
from rackboard.core.cure.record import Air, Low, Point, closed_stretches, outlook
from rackboard.core.cure.run import HORIZON_US, Bond, Run
from rackboard.core.epoxy import Range
from rackboard.core.instants import DAY_US, HOUR_US, from_datetime, parse_iso
from rackboard.core.schedule import OpeningHours

WEEK = Path(__file__).parents[2] / "data" / "sea_surface_week.csv"
START = from_datetime(datetime(2016, 7, 6, tzinfo=UTC))
GAP_START = from_datetime(datetime(2016, 7, 8, 1, 30, tzinfo=UTC))
GAP_END = from_datetime(datetime(2016, 7, 8, 13, 30, tzinfo=UTC))
ALWAYS = OpeningHours(((0, 1440),) * 7, UTC)

SHEET = replace(
    DAY_LONG,
    minimum_cure_temperature_c=10.0,
    handling_time_h=Range(7, 9),
    full_cure_time_h=Range(22, 26),
)
"""Invented; its minimum lies under the week's 15.04 °C less 1."""
LOW_MC, LOW_U_MC = 14_000, 1_000
MIXED = from_datetime(datetime(2016, 7, 7, 15, 0, tzinfo=UTC))


def week() -> list[Point]:
    with WEEK.open(encoding="utf-8", newline="") as file:
        rows = list(csv.reader(file))[1:]
    return [
        Point(parse_iso(t, "week"), round(float(c) * 1000), 1000, Source.IMPORTED)
        for t, c in rows
    ]


def on_the_week(air: Air, lag_s: float = 1320.0) -> Forecast:
    """Return what a joint mixed 10.5 h before the gap comes to, as the board reckons it."""
    points = [p for p in week() if p.at_us >= MIXED]
    first = points[0]
    assert first.at_us == MIXED
    run = Run(Bond(calibrate(SHEET), early_permissions=True), MIXED)
    run.glue((first.kelvin, first.kelvin - 1, first.kelvin + 1), lag_s)
    for stretch in closed_stretches(points, air):
        run.advance(stretch)
    complete(run, outlook(points[-1], air, MIXED + HORIZON_US))
    return milestones(run)


def spans(bridged: bool) -> Iterator[oracle.Span]:
    """Yield the same by the rules of gaps, without the program."""

    def span(a: int, b: int, lines: list[oracle.Line], still: bool = False) -> oracle.Span:
        return oracle.Span((a - MIXED) / 1e6, (b - MIXED) / 1e6, *lines, still)

    points = [p for p in week() if p.at_us >= MIXED]
    for left, right in pairwise(points):
        a, b = left.at_us, right.at_us
        k0, k1 = left.temperature_mc / 1000 + 273.15, right.temperature_mc / 1000 + 273.15
        if b - a <= 2 * HOUR_US:
            yield span(a, b, [(k0 + d, k1 + d) for d in (0, -1, 1)])
            continue
        warm = max(k0, k1) + 3
        if not bridged:
            yield span(a, b, [(k0, k0), (k0 - 1, k0 - 1), (warm, warm)], True)
            continue
        low_k = LOW_MC / 1000 + 273.15
        cold = low_k - LOW_U_MC / 1000
        quarter = (b - a) // 4
        for t0, t1, line in (
            (a, a + quarter, (k0, low_k)),
            (a + quarter, b - quarter, (low_k, low_k)),
            (b - quarter, b, (low_k, k1)),
        ):
            yield span(t0, t1, [line, (cold, cold), (warm, warm)])
    end, last = points[-1].at_us, points[-1].temperature_mc / 1000 + 273.15
    yield span(end, MIXED + HORIZON_US + DAY_US, [(last + d, last + d) for d in (0, -1, 1)])


def by_scipy(bridged: bool, lag_s: float = 1320.0) -> dict[str, float | None]:
    start = next(p.temperature_mc for p in week() if p.at_us == MIXED) / 1000 + 273.15
    return oracle.milestones(
        SHEET, spans(bridged), lag_s=lag_s, parts_k=(start, start - 1, start + 1)
    )


def agree(ours: Forecast, theirs: dict[str, float | None]) -> None:
    assert ours.handling is not None
    for name, bounds in (
        ("life", ours.working_life), ("handling", ours.handling), ("full", ours.full_cure)
    ):  # fmt: skip
        for which in ("early", "expected", "late"):
            instant = getattr(bounds, which)
            after = None if instant is None else (instant - MIXED) / 1e6
            value = theirs[f"{name} {which}"]
            if name == "life":  # the batch's, in the air, is not part of this run
                continue
            assert oracle.miss(after, value) <= 1, (name, which, after, value)


BRIDGED = Air(ALWAYS, None, (Low(GAP_START, GAP_END, LOW_MC, LOW_U_MC),))


def test_the_week_is_the_one_described() -> None:
    points = week()
    assert points[0].at_us == START
    assert points[-1].at_us == START + 7 * DAY_US
    steps = [(b.at_us - a.at_us, a.at_us) for a, b in pairwise(points)]
    assert max(steps) == (12 * HOUR_US, GAP_START)
    assert sum(step > 2 * HOUR_US for step, _ in steps) == 1
    assert min(p.temperature_mc for p in points) >= 15_000
    assert max(p.temperature_mc for p in points) <= 18_700


@pytest.mark.parametrize(("days", "value"), [(2, 27.1765), (7, 102.2388)])
def test_equivalent_age(days: int, value: float) -> None:
    """Ea 60 kJ/mol against 23 °C, straight lines, by an independent quadrature.

    The values are pins of that quadrature.
    """
    points = [p for p in week() if p.at_us <= START + days * DAY_US]
    times = [(p.at_us - START) / 1e6 for p in points]
    temps = [kelvin(p.temperature_mc / 1000) for p in points]
    ref, energy = kelvin(23), 60_000.0
    exact = 0.0
    for (t0, a), (t1, b) in pairwise(zip(times, temps, strict=True)):
        rise = (b - a) / (t1 - t0)

        def speed(t: float, a: float = a, rise: float = rise) -> float:
            return math.exp(energy / oracle.GAS * (1 / ref - 1 / (a + rise * t)))

        exact += float(quad(speed, 0, t1 - t0)[0]) / 3600
    assert exact == pytest.approx(value, abs=1e-4)
    assert equivalent_age(times, temps, ref, energy) / 3600 == pytest.approx(exact, rel=1e-9)


def test_the_gap_open() -> None:
    """The late bound stands still across it, and nothing is given after its start."""
    ours = on_the_week(Air(ALWAYS))
    agree(ours, by_scipy(bridged=False))
    assert ours.gap_us == GAP_START
    late, record_end = ours.full_cure.late, START + 7 * DAY_US
    assert late is not None
    assert GAP_END < late < record_end
    assert not is_earned(late, record_end, ours.gap_us, record_end)
    assert ours.handling is not None
    assert ours.handling.late is not None
    assert not is_earned(ours.handling.late, record_end, ours.gap_us, record_end)


def test_the_gap_bridged() -> None:
    ours, open_one = on_the_week(BRIDGED), on_the_week(Air(ALWAYS))
    agree(ours, by_scipy(bridged=True))
    assert ours.gap_us is None
    late = ours.full_cure.late
    assert late is not None
    assert open_one.full_cure.late is not None
    assert late < open_one.full_cure.late
    record_end = START + 7 * DAY_US
    assert not is_earned(late, record_end, None, printed_time(late) - 1)
    assert is_earned(late, record_end, None, printed_time(late))


def test_a_permission_earned_before_the_gap_stays() -> None:
    quick = replace(SHEET, handling_time_h=Range(2, 2.5), full_cure_time_h=Range(6, 6))
    points = [p for p in week() if p.at_us >= MIXED]
    run = Run(Bond(calibrate(quick)), MIXED)
    for stretch in closed_stretches(points, Air(ALWAYS)):
        run.advance(stretch)
    found = milestones(run)
    assert found.handling is not None
    assert found.handling.late is not None
    assert found.handling.late < GAP_START
    assert is_earned(found.handling.late, points[-1].at_us, run.gap_us, GAP_END)


@pytest.mark.parametrize("lag_s", [0.0, 240.0, 1320.0])
def test_straight_through_as_at_the_prompt(lag_s: float) -> None:
    """No gaps there: the whole week against scipy, every milestone with the batch's own life."""
    points = tuple(week())
    case = Case(SHEET, points, MIXED, lag_s, None)
    theirs = oracle.milestones(
        SHEET,
        oracle.straight(
            [p.at_us / 1e6 for p in points], [p.temperature_mc / 1e3 for p in points],
            [1.0] * len(points), MIXED / 1e6,
        ),
        lag_s=lag_s,
        parts_k=(points[0].kelvin, points[0].kelvin - 1, points[0].kelvin + 1),
    )  # fmt: skip
    ours = answers(case)
    for name, value in theirs.items():
        assert oracle.miss(ours[name], value) <= 1, name
