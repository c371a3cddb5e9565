"""Printed times, permissions given and withdrawn, the remedy, and the curve for a picture."""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from helpers.records import DAY_LONG, in_hours, reading, record
from rackboard.core.cure.calibration import calibrate
from rackboard.core.cure.forecast import (
    NEVER,
    complete,
    earlier,
    forecast_record,
    later,
    milestones,
    printed_time,
)
from rackboard.core.cure.kinetics import ALPHA_FULL, ALPHA_HANDLING
from rackboard.core.cure.permission import is_earned, is_void
from rackboard.core.cure.profile import Profile, sample
from rackboard.core.cure.record import Point, Stretch, clip, linear
from rackboard.core.cure.remedy import warm_remedy
from rackboard.core.cure.run import HORIZON_US, Bond, Run
from rackboard.core.epoxy import Range
from rackboard.core.errors import InputError
from rackboard.core.instants import DAY_US, HOUR_US, MINUTE_US, SECOND_US

MODEL = calibrate(DAY_LONG)
FIVE_US = 5 * MINUTE_US


# --- printed times ----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("late_s", "printed_min"),
    [(0, 5), (239, 5), (240, 5), (240.000001, 10), (241, 10), (300, 10), (539, 10), (541, 15)],
)
def test_printed_time(late_s: float, printed_min: int) -> None:
    """The first full five minutes at least 60 s after the bound."""
    assert printed_time(round(late_s * SECOND_US)) == printed_min * MINUTE_US


@given(st.integers(-(10**16), 10**16))
def test_printed_time_is_full_and_after_the_margin_and_the_first(late_us: int) -> None:
    printed = printed_time(late_us)
    assert printed % FIVE_US == 0
    assert 60 * SECOND_US <= printed - late_us < 60 * SECOND_US + FIVE_US


def test_later_and_earlier_with_never() -> None:
    assert (later(1, 2), later(None, 2), later(1, None)) == (2, None, None)
    assert (earlier(1, 2), earlier(None, 2), earlier(1, None)) == (1, 2, 1)
    assert earlier(None, None) is None


# --- permissions ------------------------------------------------------------------------------

LATE = 10 * HOUR_US + 1
PRINTED = printed_time(LATE)


def test_a_permission_is_given_at_the_printed_time_and_not_before() -> None:
    assert is_earned(LATE, LATE, None, PRINTED)
    assert not is_earned(LATE, LATE, None, PRINTED - 1)
    assert not is_earned(None, LATE, None, PRINTED)


def test_only_if_the_record_reaches_the_late_bound() -> None:
    assert not is_earned(LATE, LATE - 1, None, PRINTED + DAY_US)
    assert is_earned(LATE, LATE, None, PRINTED + DAY_US)


def test_an_open_gap_before_the_late_bound_denies_it_and_one_after_does_not() -> None:
    assert not is_earned(LATE, LATE, LATE - 1, PRINTED)
    assert is_earned(LATE, LATE, LATE, PRINTED)
    assert is_earned(LATE, LATE, LATE + 1, PRINTED)


def test_new_facts_withdraw_only_over_five_minutes_past_now() -> None:
    now = 10**12
    assert not is_void(now + FIVE_US, now)
    assert is_void(now + FIVE_US + 1, now)
    assert is_void(None, now)
    assert not is_void(now - DAY_US, now)


def test_nothing_after_the_first_reading_past_the_late_instant_matters() -> None:
    until = record([0, 40], [21, 21])
    cold = [*until, reading(40.01, -10), reading(100, -10)]
    one, other = (forecast_record(MODEL, points, 0) for points in (until, cold))
    assert one.full_cure.late is not None
    assert one.full_cure.late < 40 * HOUR_US
    assert one == other


# --- milestones -------------------------------------------------------------------------------


def test_full_cure_never_before_handling() -> None:
    """A handling range so wide that its late bound lies after full cure's own."""
    wide = replace(DAY_LONG, handling_time_h=Range(1, 26), full_cure_time_h=Range(22, 26))
    found = forecast_record(calibrate(wide), [reading(0, 45)], 0)
    assert found.handling is not None
    for which in ("early", "expected", "late"):
        assert getattr(found.full_cure, which) >= getattr(found.handling, which)
    assert found.full_cure.late == found.handling.late


def test_no_handling_time() -> None:
    found = forecast_record(
        calibrate(replace(DAY_LONG, handling_time_h=None)), [reading(0, 25)], 0
    )
    assert found.handling is None
    assert in_hours(found.full_cure.expected) == pytest.approx(24, rel=1e-5)
    assert found.gel_early is not None
    assert found.full_cure.early is not None
    assert found.gel_early < found.full_cure.early


def test_gel_comes_before_handling_on_its_early_curve() -> None:
    found = forecast_record(MODEL, [reading(0, 25)], 0)
    assert found.handling is not None
    assert found.handling.early is not None
    assert found.gel_early is not None
    assert 0.9 * found.handling.early < found.gel_early < found.handling.early


def test_what_is_not_reached_within_sixty_days_is_never() -> None:
    found = forecast_record(MODEL, [reading(0, -40)], 0)
    assert found.full_cure == NEVER
    assert found.gel_early is None


@pytest.mark.parametrize("mixed", [-1, 2 * HOUR_US + 1])
def test_mixed_outside_of_the_record(mixed: int) -> None:
    points = record([0, 2], [21, 21])
    with pytest.raises(InputError) as refused:
        forecast_record(MODEL, points, mixed)
    message = str(refused.value)
    assert "1970-01-01T00:00:00Z to 1970-01-01T02:00:00Z" in message
    assert ("got 1969-12-31T23:59:59Z" if mixed < 0 else "got 1970-01-01T02:00:00Z") in message


def test_a_hard_edge_and_the_taper() -> None:
    """Where the sheet forbids curing below its minimum the late bound earns nothing there."""
    hard = calibrate(replace(DAY_LONG, no_cure_below_minimum=True))
    points = [reading(0, 15.5)]  # taken as 14.5
    assert forecast_record(hard, points, 0).full_cure.late is None
    assert forecast_record(MODEL, points, 0).full_cure.late is not None
    assert forecast_record(hard, points, 0).full_cure.expected == (
        forecast_record(MODEL, points, 0).full_cure.expected
    )


# --- remedy -----------------------------------------------------------------------------------


def held(last: Point, start: int) -> Iterator[Stretch]:
    for stretch in linear([last], HORIZON_US):
        part = clip(stretch, start, HORIZON_US)
        if part is not None:
            yield part


def run_over(points: list[Point]) -> Run[Bond]:
    run = Run(Bond(MODEL), 0)
    for stretch in linear(points, points[-1].at_us):
        run.advance(stretch)
    return run


def test_remedy_is_what_the_model_says_of_that_stay() -> None:
    points = record([0, 5], [18, 18])
    run = run_over(points)
    before = run.curves.late_full.value
    remedy = warm_remedy(run, lambda t: held(points[-1], t), 6 * HOUR_US, 40.0)
    assert run.curves.late_full.value == before
    assert remedy is not None
    assert (remedy.from_us, remedy.temperature_c) == (6 * HOUR_US, 40.0)
    box = [*record([0, 6], [18, 18]), reading(6 + 1e-9, 40)]
    late = forecast_record(MODEL, box, 0).full_cure.late
    assert late is not None
    assert remedy.not_before_us == printed_time(late)
    assert remedy.hours == -(-(late - 6 * HOUR_US) // HOUR_US)
    without = forecast_record(MODEL, points, 0).full_cure.late
    assert without is not None
    assert remedy.instead_of_us == printed_time(without)
    out = [*box, reading(6 + remedy.hours, 40), reading(6 + remedy.hours + 1e-9, 5)]
    assert forecast_record(MODEL, out, 0).full_cure.late == pytest.approx(late, abs=SECOND_US)


def test_a_remedy_where_there_is_no_time_otherwise() -> None:
    points = record([0, 1], [5, 5])
    remedy = warm_remedy(run_over(points), lambda t: held(points[-1], t), HOUR_US, 40.0)
    assert remedy is not None
    assert remedy.instead_of_us is None


def test_no_remedy_that_brings_nothing() -> None:
    warm = record([0, 1], [40, 40])
    assert warm_remedy(run_over(warm), lambda t: held(warm[-1], t), HOUR_US, 40.0) is None
    done = record([0, 60], [21, 21])
    assert warm_remedy(run_over(done), lambda t: held(done[-1], t), 60 * HOUR_US, 40.0) is None
    cold = record([0, 1], [8, 8])  # a box hardly warmer does not do it in a day
    assert warm_remedy(run_over(cold), lambda t: held(cold[-1], t), HOUR_US, 18.0) is None


# --- profile ----------------------------------------------------------------------------------


def test_profile_is_the_curve_at_even_instants() -> None:
    points = record([0, 10, 20, 30], [21, 18, 25, 21])
    run = Run(Profile(MODEL), 0)
    samples = sample(run, linear(points, 40 * HOUR_US), 30 * MINUTE_US, 36 * HOUR_US)
    assert [s.at_us for s in samples] == [i * 30 * MINUTE_US for i in range(73)]
    assert samples[0][1:] == (0.0, 0.0)
    for before, after in itertools.pairwise(samples):
        assert before.expected < after.expected
        assert before.late < after.late <= after.expected
    found = forecast_record(MODEL, points, 0)
    assert found.handling is not None
    for instant, alpha in (
        (found.handling.expected, ALPHA_HANDLING),
        (found.full_cure.expected, ALPHA_FULL),
    ):
        assert instant is not None
        at = instant // (30 * MINUTE_US)
        assert samples[at].expected < alpha < samples[at + 1].expected


def test_profile_stops_with_the_record() -> None:
    run = Run(Profile(MODEL), 0)
    samples = sample(run, linear(record([0, 2], [21, 21]), 2 * HOUR_US), HOUR_US, 9 * HOUR_US)
    assert [s.at_us // HOUR_US for s in samples] == [0, 1, 2]


def test_complete_stops_at_the_horizon() -> None:
    run = Run(Bond(MODEL), 0)
    cold = (260.0, 260.0)
    days = [Stretch(d * DAY_US, (d + 1) * DAY_US, cold, cold, cold) for d in range(100)]
    complete(run, days)
    assert run.now_us == HORIZON_US
    assert milestones(run).full_cure == NEVER
