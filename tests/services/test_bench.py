"""The acts of the bench: what each changes, what it refuses and in which words."""

from __future__ import annotations

import pytest

from helpers.shop import PLAIN, Shop, at, make_shop
from helpers.store import contents
from rackboard.core.bench import Heating, JointKind, Parts, PlaceKind
from rackboard.core.errors import InputError
from rackboard.core.instants import HOUR_US, MINUTE_US
from rackboard.core.schedule import DEFAULT_WEEK
from rackboard.core.words import Word
from rackboard.services.agenda import DueKind, NightQuestion, dues
from rackboard.services.bench import LAG_S, ClubEntry, JobEntry
from rackboard.services.doubts import check_mixed, mixed_doubt
from rackboard.store.changes import UNDOABLE


def entry(shop: Shop, *slots: int, number: str = "214", epoxy: int | None = None) -> JobEntry:
    clubs = tuple(ClubEntry(f"{n} iron", JointKind.SOLID_HEAD, shop.rack.id, n) for n in slots)
    return JobEntry(number, "Invented", "", None, clubs, epoxy or shop.epoxy)


def refused(shop: Shop, job: JobEntry) -> str:
    """What laying out says; nothing may have changed."""
    before = contents(shop.store, UNDOABLE | {"event"})
    with pytest.raises(InputError) as caught:
        shop.bench.lay_out(job)
    assert contents(shop.store, UNDOABLE | {"event"}) == before
    return str(caught.value)


# Laying out


def test_a_taken_slot_is_named_with_who_lies_there() -> None:
    shop = make_shop()
    shop.do(shop.bench.lay_out(entry(shop, 3)).changes)
    said = refused(shop, entry(shop, 4, 3, number="215"))
    assert said == "A4: wanted a free slot, got 3 iron of job 214, already there."


@pytest.mark.parametrize(
    ("slots", "number", "said"),
    [
        ((), "214", "at least one club"),
        ((1, 1), "214", "the same slot twice"),
        ((1,), "  ", "job number"),
    ],
)
def test_what_is_missing_is_named(slots: tuple[int, ...], number: str, said: str) -> None:
    shop = make_shop()
    assert said in refused(shop, entry(shop, *slots, number=number))


def test_fifteen_clubs_are_one_too_many_also_in_two_goes() -> None:
    shop = make_shop()
    assert "at most 14 clubs" in refused(shop, entry(shop, *range(15)))
    shop.do(shop.bench.lay_out(entry(shop, *range(13))).changes)
    assert refused(shop, entry(shop, 13, 14)) == (
        "job 214: wanted at most 14 clubs in a job, got 15."
    )
    shop.do(shop.bench.lay_out(entry(shop, 13)).changes)


def test_an_epoxy_that_is_not_on_the_shelf_is_refused() -> None:
    shop = make_shop()
    assert "an epoxy from the shelf" in refused(shop, entry(shop, 1, epoxy=999))


def test_each_kind_has_its_lag() -> None:
    shop = make_shop()
    for slot, kind in enumerate(JointKind):
        job = JobEntry(f"{slot}", "", "", None, (ClubEntry("x", kind, shop.rack.id, slot),),
                       shop.epoxy)  # fmt: skip
        shop.do(shop.bench.lay_out(job).changes)
    lags = {joint.kind: joint.lag_s for joint in shop.board.snapshot.joints.values()}
    assert lags == LAG_S
    assert (lags[JointKind.SOLID_HEAD], lags[JointKind.HOLLOW_HEAD]) == (22 * 60, 4 * 60)


# Mixing


def test_mixing_in_the_future_is_refused_and_a_few_minutes_ahead_are_now() -> None:
    shop = make_shop("Mon 13:10")
    batch = shop.lay_out(1)
    with pytest.raises(InputError) as caught:
        shop.bench.mix(batch, at("Mon 13:16"))
    assert str(caught.value) == (
        "mixed at: wanted a time up to now, 13:10, got 13:16, in the future."
    )
    shop.do(shop.bench.mix(batch, at("Mon 13:14")))
    assert shop.board.standings[0].batch.mixed_us == at("Mon 13:10")


def test_a_batch_is_mixed_once() -> None:
    shop = make_shop()
    batch = shop.lay_out(1)
    shop.do(shop.bench.mix(batch))
    with pytest.raises(InputError, match="a batch that isn't mixed yet"):
        shop.bench.mix(batch)


def test_racking_asks_for_a_mixed_batch() -> None:
    shop = make_shop()
    with pytest.raises(InputError, match="wanted a mixed batch"):
        shop.bench.rack_all(shop.lay_out(1))


def test_entered_after_washing_it_gives_the_same_record() -> None:
    """S2: "mixed 40 min ago" said afterwards against the keys pressed at the time."""
    pressed, washed = make_shop("Mon 15:40"), make_shop("Mon 15:40")
    for shop in (pressed, washed):
        shop.feed([(at("Mon 15:00"), 20.0), (at("Mon 16:30"), 20.0)])
    batch = pressed.lay_out(2)
    pressed.do(pressed.bench.mix(batch))
    pressed.clock.set("Mon 16:02")
    pressed.do(pressed.bench.rack_all(batch))
    pressed.tick("Mon 16:20")
    late = washed.lay_out(2)
    washed.clock.set("Mon 16:20")
    washed.do(washed.bench.mix(late, at("Mon 15:40")))
    washed.do(washed.bench.rack_all(late, at_us=at("Mon 16:02")))
    for one, other in zip(pressed.board.standings, washed.board.standings, strict=True):
        assert one.outcome == other.outcome
        assert (one.batch.mixed_us, one.batch.racked_us) == (
            other.batch.mixed_us, other.batch.racked_us,
        )  # fmt: skip


def test_the_last_ones_glued_late_start_late() -> None:
    shop = make_shop("Mon 15:40")
    shop.feed([(at("Mon 15:00"), 20.0)])
    batch = shop.lay_out(3)
    shop.do(shop.bench.mix(batch))
    shop.clock.set("Mon 16:02")
    shop.do(shop.bench.rack_all(batch, glued_late=2))
    glued = [joint.glued_us for joint in shop.board.snapshot.joints_of_batch[batch]]
    assert glued == [at("Mon 15:40"), at("Mon 16:02"), at("Mon 16:02")]


def test_a_batch_keeps_the_sheet_as_it_was_when_mixed() -> None:
    from dataclasses import replace

    shop = make_shop()
    mixed, waiting = shop.lay_out(1), shop.lay_out(1)
    shop.do(shop.bench.mix(mixed))
    changed = replace(PLAIN, name="changed")
    shop.do(shop.bench.save_epoxy(changed, shop.epoxy))
    shop.do(shop.bench.mix(waiting))
    names = [shop.board.snapshot.batches[b].sheet.name for b in (mixed, waiting)]
    assert names == ["invented 8/24", "changed"]


# S10, first half


def test_ten_past_one_at_night_typed_for_ten_past_one_by_day_is_asked_about() -> None:
    shop = make_shop("Mon 13:20")
    doubt = mixed_doubt(at("Mon 01:10"), shop.clock.now(), shop.bench.hours)
    assert doubt is not None
    assert doubt.question == "01:10 was twelve hours ago and the shop was closed. Was it 13:10?"
    assert doubt.proposed_us == at("Mon 13:10")
    assert mixed_doubt(at("Mon 13:10"), shop.clock.now(), shop.bench.hours) is None
    assert mixed_doubt(at("Mon 09:10"), shop.clock.now(), shop.bench.hours) is None


def test_other_odd_times_of_mixing_are_asked_about() -> None:
    hours = make_shop().bench.hours
    closed = mixed_doubt(at("Mon 05:00"), at("Mon 09:30"), hours)
    assert closed is not None
    assert "The shop was closed at 05:00" in closed.question
    old = mixed_doubt(at("Mon 10:00"), at("Tue 12:00"), hours)
    assert old is not None
    assert "more than a day ago" in old.question
    assert check_mixed(at("Mon 09:00"), at("Mon 09:30"), hours, "x") == at("Mon 09:00")


def test_a_corrected_time_keeps_the_former_one_and_moves_the_times_by_as_much() -> None:
    shop = make_shop("Mon 20:00")
    shop.flat("Mon 00:00", "Thu 12:00", 21.0, step_min=30)
    batch = shop.lay_out(1)
    shop.do(shop.bench.mix(batch, at("Mon 01:10")))
    wrong = shop.board.standings[0]
    assert wrong.word is Word.BENCH
    shop.do(shop.bench.correct_mixed(batch, at("Mon 13:10")))
    right = shop.board.standings[0]
    assert right.word is Word.WAIT
    assert right.batch.mixed_us == at("Mon 13:10")
    assert wrong.outcome is not None
    assert right.outcome is not None
    moved = right.outcome.forecast.full_cure.late - wrong.outcome.forecast.full_cure.late  # type: ignore[operator]
    assert abs(moved - 12 * HOUR_US) <= 1_000_000
    former = shop.store.journal.former("batch", batch)
    assert [(f.column, f.old, f.new) for f in former] == [
        ("mixed_us", at("Mon 01:10"), at("Mon 13:10"))
    ]
    assert shop.store.journal.events(kinds=["permission withdrawn"])


# Carrying


def test_a_slot_of_another_place_is_refused() -> None:
    shop = make_shop()
    shop.lay_out(2)
    first, second = (s.club.id for s in shop.board.standings)
    with pytest.raises(InputError, match="a slot of Warm box"):
        shop.bench.move(first, shop.box.id, 4)
    with pytest.raises(InputError, match="another place"):
        shop.bench.move(first, shop.rack.id, 0)
    with pytest.raises(InputError, match="a free slot"):
        shop.bench.move(first, shop.rack.id, 1)
    assert shop.board.snapshot.where(second) == "A2"


def test_a_club_off_the_rack_has_no_slot_and_frees_its_own() -> None:
    shop = make_shop()
    shop.lay_out(1)
    club = shop.board.standings[0].club.id
    shop.do(shop.bench.take_off(club))
    assert shop.board.snapshot.where(club) == "grip bench"
    shop.do(shop.bench.lay_out(entry(shop, 0)).changes)


# Temperatures


def test_a_temperature_out_of_all_reason_is_refused() -> None:
    shop = make_shop()
    for milli in (-40_001, 120_001):
        with pytest.raises(InputError, match="Room"):
            shop.bench.type_temperature(shop.room, milli, at_rack=True)
    assert shop.store.record.last_reading(shop.room) is None


def test_two_temperatures_for_one_moment_are_refused_unless_replaced() -> None:
    shop = make_shop()
    shop.type(21)
    with pytest.raises(InputError, match="one temperature for one moment"):
        shop.bench.type_temperature(shop.room, 20_000, at_rack=True)
    shop.do(shop.bench.type_temperature(shop.room, 20_000, at_rack=True, replace=True))
    last = shop.store.record.last_reading(shop.room)
    assert last is not None
    assert last.temperature_mc == 20_000


def test_how_sure_a_typed_temperature_is_depends_on_where_it_was_read() -> None:
    shop = make_shop()
    shop.type(21, at_rack=False)
    shop.clock.advance(minutes=1)
    shop.type(21, at_rack=True)
    us = [u for _, _, u, _ in shop.store.record.readings(shop.room, 0, shop.clock.now())]
    assert us == [3_000, 1_000]


def test_a_low_warmer_than_the_readings_beside_it_is_refused() -> None:
    shop = make_shop("Mon 17:00")
    shop.type(18)
    question = NightQuestion(shop.room, at("Mon 18:00"), at("Tue 08:00"), True)
    with pytest.raises(InputError, match="the lowest of the night"):
        shop.bench.answer_night(question, 19_001)
    shop.do(shop.bench.answer_night(question, 13_000))
    (bridge,) = shop.store.record.bridges(shop.room, 0)
    assert (bridge.low_mc, bridge.u_mc) == (13_000, 3_000)


def test_a_typed_temperature_holds_four_hours_and_not_past_closing() -> None:
    shop = make_shop("Mon 12:00")
    shop.type(21)
    shop.glue(1)
    shop.tick("Mon 17:59")
    assert not shop.board.standings[0].unknown
    shop.tick("Mon 18:01")  # 4 h of hold and 2 h more
    assert shop.board.standings[0].unknown


# What is due


def test_what_is_due_comes_in_order_and_holds_have_nothing_to_come() -> None:
    shop = make_shop("Mon 09:00")
    shop.feed([(at("Mon 09:00"), 21.0)])
    batch = shop.lay_out(2)
    shop.do(shop.bench.mix(batch))
    kinds = [due.kind for due in dues(shop.board.standings, shop.clock.now())]
    assert kinds[:3] == [DueKind.LAST_LOOK, DueKind.USE_BY, DueKind.OFF_THE_RACK]
    times = [due.at_us for due in dues(shop.board.standings, shop.clock.now())]
    assert times == sorted(times)
    assert times[1] - times[0] == 10 * MINUTE_US
    shop.do(shop.bench.rack_all(batch))
    assert DueKind.USE_BY not in [d.kind for d in dues(shop.board.standings, shop.clock.now())]
    for standing in list(shop.board.standings):
        shop.do(shop.bench.disturb(standing.joint.id))
    assert dues(shop.board.standings, shop.clock.now()) == []


# The shop


def test_a_heating_that_goes_off_before_it_comes_on_is_refused() -> None:
    shop = make_shop()
    with pytest.raises(InputError, match="an hour off after the hour on"):
        shop.bench.set_heating(shop.room, Heating(18 * 60, 8 * 60, 13_000))
    with pytest.raises(InputError):
        shop.bench.set_week([(600, 500), *DEFAULT_WEEK[1:]])


def test_cold_parts_make_it_later() -> None:
    lates = []
    for parts in (None, 5_000):
        shop = make_shop("Mon 09:00")
        shop.flat("Mon 09:00", "Wed 12:00", 22.0)
        shop.glue(1, parts_mc=parts)
        standing = shop.board.standings[0]
        assert standing.joint.parts is (Parts.SHOP if parts is None else Parts.COLD)
        assert standing.outcome is not None
        handling = standing.outcome.forecast.handling
        assert handling is not None
        assert handling.late is not None
        lates.append(handling.late)
    assert 10 * MINUTE_US < lates[1] - lates[0] < 60 * MINUTE_US


def test_no_place_without_a_zone_is_a_rack() -> None:
    shop = make_shop()
    kinds = {p.kind for p in shop.board.snapshot.places.values() if p.zone_id is None}
    assert kinds == {PlaceKind.OUT}
