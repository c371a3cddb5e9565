"""Conditions with delay and deadband: a cold zone, a hot one, a feed that is silent."""

from __future__ import annotations

import random
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rackboard.core.alerts.watch import (
    Limit,
    Watch,
    cold_limit,
    hot_limit,
    missed_since,
    taken_in,
    watched,
)
from rackboard.core.instants import HOUR_US, MINUTE_US, SECOND_US, Instant

COLD = cold_limit(15_000, 1_000)


def minutes(*air_mc: int) -> list[tuple[Instant, int]]:
    return [(n * MINUTE_US, air) for n, air in enumerate(air_mc)]


def test_a_dip_of_less_than_ten_minutes_is_no_cold() -> None:
    """R11."""
    assert not watched(COLD, minutes(*[20_000] * 5, *[10_000] * 10, *[20_000] * 5)).on


def test_ten_minutes_below_the_limit_are_cold_since_the_first_of_them() -> None:
    watch = watched(COLD, minutes(20_000, *[15_900] * 11))
    assert watch == Watch(True, None, 1 * MINUTE_US, 11 * MINUTE_US)


def test_at_the_limit_it_is_not_cold_and_inside_the_deadband_it_stays_so() -> None:
    assert not watched(COLD, minutes(*[16_000] * 60)).on
    cold = minutes(*[15_999] * 11)
    still = [(HOUR_US + n * MINUTE_US, 17_000) for n in range(60)]
    assert watched(COLD, cold + still).on
    warm = [(HOUR_US + n * MINUTE_US, 17_001) for n in range(16)]
    assert not watched(COLD, cold + warm).on
    assert watched(COLD, cold + warm[:-1]).on


def test_a_swing_of_nine_tenths_about_the_limit_comes_on_once_in_a_day() -> None:
    """R11."""
    noise = random.Random(20)
    watch, times = Watch(), 0
    for n in range(24 * 60):
        before = watch.on
        air = 16_000 + noise.randint(-900, 900)
        watch = taken_in(watch, COLD, n * MINUTE_US, air)
        times += watch.on and not before
    assert times <= 1


def test_too_hot_is_five_minutes_above_the_maximum_by_three() -> None:
    limit = hot_limit(60_000)
    assert not watched(limit, minutes(*[63_000] * 10)).on
    assert not watched(limit, minutes(*[78_000] * 5)).on
    assert watched(limit, minutes(*[78_000] * 6)).on
    hot = minutes(*[78_000] * 6)
    back = [(HOUR_US + n * MINUTE_US, 61_999) for n in range(16)]
    assert not watched(limit, hot + back).on
    assert watched(limit, hot + back[:15]).on


@given(
    st.lists(st.tuples(st.integers(1, 900), st.integers(5_000, 25_000)), max_size=120),
    st.sampled_from([COLD, hot_limit(20_000)]),
)
def test_no_condition_changes_before_its_delay_is_over(
    steps: list[tuple[int, int]], limit: Limit
) -> None:
    """R14 at its root: on and off lie at least their delays apart."""
    watch, at, changes = Watch(), 0, []
    for seconds, air in steps:
        at += seconds * SECOND_US
        after = taken_in(watch, limit, at, air)
        if after.on is not watch.on:
            changes.append(at)
            if after.on:
                assert after.since_us is not None
                assert at - after.since_us >= limit.on_delay_us
        watch = after
    assert all(
        b - a >= min(limit.on_delay_us, limit.off_delay_us)
        for a, b in pairwise(changes)
    )


@pytest.mark.parametrize(
    ("interval", "silent", "missing"),
    [
        (MINUTE_US, 14, False), (MINUTE_US, 15, True), (10 * MINUTE_US, 29, False),
        (10 * MINUTE_US, 30, True), (HOUR_US, 179, False), (HOUR_US, 180, True),
    ],
)  # fmt: skip
def test_a_feed_is_missing_after_three_samples_and_a_quarter_of_an_hour(
    interval: int, silent: int, missing: bool
) -> None:
    assert (missed_since(0, interval, silent * MINUTE_US) == 0) is missing
    assert missed_since(None, interval, silent * MINUTE_US) is None
