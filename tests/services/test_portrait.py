"""The picture of a joint says the same as the model that gives its times."""

from __future__ import annotations

import pytest

from helpers.shop import Shop, at, make_shop
from rackboard.core.bench import PlaceKind, Source
from rackboard.core.cure.kinetics import ALPHA_FULL
from rackboard.core.instants import HOUR_US, MINUTE_US, Instant
from rackboard.services.portrait import portrait


def warm_record(shop: Shop, start: Instant, hours: int) -> None:
    """Give the room 21 °C every ten minutes."""
    rows = [
        (start + n * 10 * MINUTE_US, 21_000, 1_000, Source.FEED) for n in range(hours * 6 + 1)
    ]
    with shop.store.write("readings", shop.clock.now()) as act:
        act.add_readings(shop.room, rows)
    shop.spread(act.changes)


def height_at(shop: Shop, joint_id: int, instant: Instant) -> float:
    """Return the expected curve's conversion at an instant, as the picture shows it."""
    (standing,) = [s for s in shop.board.standings if s.joint.id == joint_id]
    picture = portrait(shop.board, standing)
    assert picture is not None
    before = [s for s in picture.samples if s.at_us <= instant]
    after = [s for s in picture.samples if s.at_us >= instant]
    assert before and after, "the picture ends before the permission"
    return (before[-1].expected + after[0].expected) / 2


@pytest.mark.parametrize("away", [False, True])
def test_the_curve_meets_the_level_at_the_expected_time(away: bool) -> None:
    shop = make_shop("Mon 10:00")
    warm_record(shop, at("Mon 09:00"), 1)
    (joint,) = shop.glue()
    club = shop.board.snapshot.joints[joint].club_id
    if away:
        shop.tick("Mon 13:00")
        warm_record(shop, at("Mon 10:10"), 3)
        shop.do(shop.bench.take_off(club, PlaceKind.OUT))
        shop.tick("Mon 19:00")
        shop.do(shop.bench.take_off(club, PlaceKind.GRIP_BENCH))
    shop.tick("Tue 12:00")
    warm_record(shop, at("Mon 13:20" if away else "Mon 10:10"), 22)
    shop.tick()
    (standing,) = shop.board.standings
    assert standing.outcome is not None
    expected = standing.outcome.forecast.full_cure.expected
    assert expected is not None
    assert abs(height_at(shop, joint, expected) - ALPHA_FULL) < 0.004
    if away:  # six hours without any air that is known
        hours = (expected - at("Mon 10:00")) / HOUR_US
        assert hours > 39
