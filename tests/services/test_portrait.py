"""The picture of a joint says the same as the model that gives its times."""

from __future__ import annotations

import pytest

from helpers.shop import Shop, at, make_shop
from rackboard.core.bench import PlaceKind, Source
from rackboard.core.cure.kinetics import ALPHA_FULL
from rackboard.core.instants import HOUR_US, MINUTE_US, Instant
from rackboard.services.portrait import joint_record, portrait


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


def test_a_cured_joint_keeps_its_picture_on_every_tick() -> None:
    """A joint that has nothing left to earn is not reckoned any more; its curve is."""
    shop = make_shop("Mon 10:00")
    warm_record(shop, at("Mon 09:00"), 80)
    (joint,) = shop.glue()
    for when in ("Wed 20:00", "Wed 20:10", "Wed 20:20"):
        shop.tick(when)
        standing = shop.standing(joint)
        assert standing.word == "CURED"
        picture = portrait(shop.board, standing)
        assert picture is not None
        full = picture.outcome.forecast.full_cure
        assert full.late is not None
        assert picture.end_us >= full.late


def test_the_picture_answers_for_any_instant() -> None:
    shop = make_shop("Mon 10:00")
    warm_record(shop, at("Mon 09:00"), 5)
    (joint,) = shop.glue()
    shop.tick("Mon 14:00")
    picture = portrait(shop.board, shop.standing(joint))
    assert picture is not None
    assert picture is portrait(shop.board, shop.standing(joint)), "not worked out twice"
    last = (0.0, 0.0)
    for step in range(101):
        instant = picture.start_us + (picture.end_us - picture.start_us) * step // 100
        said = picture.conversion(instant)
        assert said[1] <= said[0]
        assert said[0] >= last[0]
        assert said[1] >= last[1]
        last = said
    assert picture.air_at(at("Mon 12:00")) == (pytest.approx(21.0), False)
    temp_c, reckoned = picture.air_at(at("Mon 20:00"))
    assert temp_c is not None
    assert reckoned


def test_another_fact_gives_another_picture() -> None:
    shop = make_shop("Mon 10:00")
    warm_record(shop, at("Mon 09:00"), 5)
    (joint,) = shop.glue()
    shop.tick("Mon 14:00")
    first = portrait(shop.board, shop.standing(joint))
    shop.do(shop.bench.correct_mixed(shop.standing(joint).batch.id, at("Mon 09:30")))
    second = portrait(shop.board, shop.standing(joint))
    assert first is not None
    assert second is not None
    assert second.start_us == at("Mon 09:30") != first.start_us


def test_the_record_of_a_joint_holds_all_that_happened_to_it() -> None:
    shop = make_shop("Mon 10:00")
    warm_record(shop, at("Mon 09:00"), 30)
    one, other = shop.glue(2)
    club = shop.standing(one).club.id
    shop.tick("Mon 10:30")
    shop.do(shop.bench.correct_mixed(shop.standing(one).batch.id, at("Mon 09:50")))
    shop.tick("Mon 15:00")
    shop.do(shop.bench.disturb(one))
    hold = shop.standing(one).hold
    assert hold is not None
    shop.do(shop.bench.end_hold(hold, "nothing seen"))
    shop.tick("Tue 14:00")
    shop.do(shop.bench.take_off(club))
    record = joint_record(shop.store, shop.board, shop.standing(one))
    assert [h.outcome for h in record.holds] == ["nothing seen"]
    assert len(record.stays) == 2
    assert record.grants
    assert {f.column for f in record.former} >= {"mixed_us"}
    kinds = [event.kind for event in record.events]
    assert {"mixed", "all racked", "disturbed", "hold ended", "moved"} <= set(kinds)
    assert [e.at_us for e in record.events] == sorted(e.at_us for e in record.events)
    assert not record.others
    untouched = joint_record(shop.store, shop.board, shop.standing(other))
    assert not untouched.holds


def test_the_record_names_the_joint_before_a_re_gluing() -> None:
    shop = make_shop("Mon 10:00")
    warm_record(shop, at("Mon 09:00"), 30)
    (joint,) = shop.glue()
    shop.tick("Mon 16:00")
    shop.do(shop.bench.re_glued(joint))
    (again,) = shop.board.standings
    record = joint_record(shop.store, shop.board, again)
    assert [(o.id, o.ended_as) for o in record.others] == [(joint, "re-glued")]
    assert again.batch.id not in record.batches
