"""Correct…: every fact of a joint, in one act; the former one stays on the record."""

from __future__ import annotations

import pytest

from helpers.shop import PLAIN, Shop, at, make_shop
from helpers.store import contents
from rackboard.core.bench import Epoxy, JointKind, Milestone
from rackboard.core.errors import InputError
from rackboard.core.instants import MINUTE_US
from rackboard.core.words import Word
from rackboard.services.correcting import NEW_BATCH, Correction, ReadingFix
from rackboard.services.doubts import glued_doubt
from rackboard.store.changes import UNDOABLE


def glued() -> tuple[Shop, list[int]]:
    shop = make_shop("Mon 13:10")
    shop.type(20)
    joints = shop.glue(["6 iron", "7 iron"], number="214")
    shop.bench.act_as("KT")
    shop.tick("Mon 14:00")
    return shop, joints


def correct(shop: Shop, joint: int, **facts: object) -> None:
    shop.do(shop.bench.correct(joint, Correction(**facts)))  # type: ignore[arg-type]


def former(shop: Shop, table: str, key: int) -> list[tuple[str, object, object]]:
    return [(f.column, f.old, f.new) for f in shop.store.journal.former(table, key)]


def refused(shop: Shop, joint: int, **facts: object) -> str:
    """What a correction says; nothing may have changed."""
    tables = UNDOABLE | {"event", "former"}
    before = contents(shop.store, tables)
    with pytest.raises(InputError) as caught:
        shop.bench.correct(joint, Correction(**facts))  # type: ignore[arg-type]
    assert contents(shop.store, tables) == before
    return str(caught.value)


def test_every_fact_at_once_is_one_act_and_one_undo() -> None:
    shop, (six, seven) = glued()
    before = contents(shop.store)
    correct(
        shop, six, mixed_us=at("Mon 13:00"), lot=" L-9 ", glued_us=at("Mon 13:20"),
        kind=JointKind.HOLLOW_HEAD, graphics="6 o'clock", club="5 iron", number="241",
        customer="Invented Customer-Other", place=(shop.box.id, 2),
        readings=(ReadingFix(shop.room, at("Mon 13:10"), 21_000),),
    )  # fmt: skip
    after = contents(shop.store)
    standing = shop.standing(six)
    assert (standing.batch.mixed_us, standing.batch.lot) == (at("Mon 13:00"), "L-9")
    assert (standing.joint.glued_us, standing.joint.lag_s) == (at("Mon 13:20"), 240)
    assert (standing.club.name, standing.job.number) == ("5 iron", "241")
    assert shop.board.snapshot.where(standing.club.id) == "B3"
    assert shop.standing(seven).joint.glued_us == at("Mon 13:00")
    assert [p.initials for p in shop.store.shop.persons()] == ["KT"]
    shop.undo()
    assert contents(shop.store) == before
    assert shop.history.redo() is not None
    assert contents(shop.store) == after


def test_the_former_values_stay_on_the_record() -> None:
    shop, (six, _) = glued()
    club = shop.standing(six).club.id
    correct(shop, six, club="5 iron")
    correct(shop, six, club="4 iron")
    assert former(shop, "club", club) == [
        ("name", "6 iron", "5 iron"), ("name", "5 iron", "4 iron")
    ]  # fmt: skip
    assert {f.by for f in shop.store.journal.former("club", club)} == {"KT"}


def test_a_slot_is_corrected_from_the_beginning_of_the_stay() -> None:
    shop, (six, seven) = glued()
    shop.flat("Mon 13:00", "Wed 12:00", 35.0, box=True)
    club = shop.standing(six).club.id
    correct(shop, six, place=(shop.box.id, 0))
    (stay,) = shop.store.work.stays([club])
    assert (stay.place_id, stay.slot, stay.from_us) == (shop.box.id, 0, at("Mon 13:10"))
    assert shop.store.journal.events(kinds=["moved"]) == []
    warm, cold = shop.standing(six).not_before_us, shop.standing(seven).not_before_us
    assert warm is not None and cold is not None and warm < cold
    assert "7 iron of job 214, already there" in refused(shop, six, place=(shop.rack.id, 1))


def test_a_joint_goes_over_to_another_batch_with_its_time() -> None:
    shop, (six, seven) = glued()
    shop.clock.set("Mon 14:10")
    (other,) = shop.glue(["Driver"])
    batch = shop.standing(other).batch
    correct(shop, six, batch_id=batch.id)
    joint = shop.standing(six).joint
    assert (joint.batch_id, joint.glued_us) == (batch.id, at("Mon 14:10"))
    assert ("batch_id", shop.standing(seven).batch.id, batch.id) in former(shop, "joint", six)
    assert shop.standing(six).not_before_us == shop.standing(other).not_before_us


def test_a_joint_that_was_glued_late_keeps_its_time_in_an_older_batch() -> None:
    shop, (six, _) = glued()
    older = shop.standing(six).batch.id
    shop.clock.set("Mon 14:10")
    (other,) = shop.glue(["Driver"])
    shop.clock.set("Mon 14:20")
    correct(shop, other, glued_us=at("Mon 14:15"))
    correct(shop, other, batch_id=older)
    assert shop.standing(other).joint.glued_us == at("Mon 14:15")


def test_a_joint_gets_a_batch_of_its_own() -> None:
    shop, (six, seven) = glued()
    correct(shop, six, batch_id=NEW_BATCH, mixed_us=at("Mon 13:30"), lot="L-2")
    one, two = shop.standing(six), shop.standing(seven)
    assert one.batch.id != two.batch.id and one.batch.number == two.batch.number + 1
    assert (one.batch.mixed_us, one.joint.glued_us) == (at("Mon 13:30"),) * 2
    assert (one.batch.lot, two.batch.lot, two.batch.mixed_us) == ("L-2", "", at("Mon 13:10"))
    assert one.batch.racked_us == at("Mon 13:30")


def test_another_epoxy_brings_its_sheet() -> None:
    from dataclasses import replace

    shop, (six, seven) = glued()
    with shop.store.write("shelf", shop.clock.now()) as act:
        other = act.add(Epoxy(0, replace(PLAIN, name="invented other"), typical=False))
    correct(shop, six, epoxy_id=other)
    assert {shop.standing(j).batch.sheet.name for j in (six, seven)} == {"invented other"}


def test_a_typed_temperature_is_corrected_where_it_stands() -> None:
    shop, (six, _) = glued()
    before = shop.standing(six).not_before_us
    correct(shop, six, readings=(ReadingFix(shop.room, at("Mon 13:10"), 26_000),))
    (reading,) = shop.bench.typed_readings(shop.room, 0, shop.clock.now())
    assert (reading.at_us, reading.temperature_mc, reading.u_mc) == (
        at("Mon 13:10"), 26_000, 1_000
    )  # fmt: skip
    (was,) = shop.store.journal.former("reading", (shop.room, at("Mon 13:10")))
    assert (was.column, was.old, was.new) == ("temperature_mc", 20_000, 26_000)
    after = shop.standing(six).not_before_us
    assert before is not None and after is not None and after < before


def test_what_was_not_typed_is_not_corrected() -> None:
    shop, (six, _) = glued()
    shop.feed([(at("Mon 13:30"), 20.0)])
    said = refused(shop, six, readings=(ReadingFix(shop.room, at("Mon 13:30"), 21_000),))
    assert said == "Room: wanted a temperature that was typed, got 13:30."


def test_initials_are_corrected() -> None:
    shop, (six, _) = glued()
    shop.do(shop.bench.release(six, Milestone.HANDLING, "a fitting"))
    shop.do(shop.bench.press_ready(shop.standing(six).job.id, True))
    correct(shop, six, released_by="MB", ready_by="MB")
    released = shop.standing(six).released
    assert released is not None and released.by == "MB"
    assert shop.standing(six).job.ready_by == "MB"
    assert former(shop, "release", released.id) == [("by", "KT", "MB")]


def test_a_permission_that_falls_is_withdrawn() -> None:
    shop, (six, _) = glued()
    shop.flat("Mon 14:00", "Wed 12:00", 25.0)
    shop.tick("Tue 20:00")
    assert shop.standing(six).base is Word.CURED
    correct(shop, six, mixed_us=at("Tue 12:00"))
    assert shop.standing(six).base is Word.WAIT
    assert {g.reason for g in shop.store.journal.grants([six])} == {"new facts"}


@pytest.mark.parametrize(
    ("facts", "said"),
    [
        ({}, "correct: wanted a fact that is another, got nothing."),
        ({"club": "6 iron"}, "a fact that is another"),
        ({"club": " "}, "club: wanted a name, got nothing."),
        ({"number": ""}, "job number: wanted a name, got nothing."),
        ({"number": "300"}, "a number that no other job has"),
        ({"mixed_us": at("Mon 14:30")}, "14:30, in the future"),
        ({"glued_us": at("Mon 13:00")}, "a time after batch 1 was mixed, 13:10, got 13:00"),
        ({"batch_id": 999}, "wanted a mixed batch, got batch 999"),
        ({"epoxy_id": 999}, "an epoxy from the shelf"),
        ({"released_by": "MB"}, "the initials of who released it"),
        ({"club": "5 iron", "glued_us": at("Mon 15:00")}, "in the future"),
    ],
)
def test_what_can_not_be_so_changes_nothing(facts: dict[str, object], said: str) -> None:
    shop, (six, _) = glued()
    shop.lay_out(1, number="300")
    assert said in refused(shop, six, **facts)


def test_a_waiting_batch_takes_no_glued_joint() -> None:
    shop, (six, _) = glued()
    waiting = shop.lay_out(1)
    assert "batch 2, not mixed" in refused(shop, six, batch_id=waiting)


def test_gluing_after_the_working_life_is_asked_about() -> None:
    hours = make_shop().bench.hours
    mixed = at("Mon 13:10")
    now = at("Mon 16:00")
    assert glued_doubt(mixed + 60 * MINUTE_US, mixed, 60, now, hours) is None
    doubt = glued_doubt(at("Mon 14:11"), mixed, 60, now, hours)
    assert doubt is not None
    assert doubt.question == "At 14:11 the working life of 60 min was over. Is that right?"
