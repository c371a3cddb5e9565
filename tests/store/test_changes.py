from __future__ import annotations

import sqlite3
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from helpers.store import NOON, SmallShop, contents, small_shop
from rackboard.core.alerts.rows import Alert
from rackboard.core.bench import (
    Bridge,
    Club,
    Customer,
    Grant,
    Hold,
    HoldReason,
    Job,
    Milestone,
    Reading,
    Source,
    Stay,
)
from rackboard.core.errors import InputError
from rackboard.core.instants import MINUTE_US
from rackboard.store import Store
from rackboard.store.changes import ChangeSet, RowChange
from rackboard.store.faults import ChangedSinceError
from rackboard.store.transaction import Transaction

Act = Callable[[Transaction, SmallShop], object]


def test_a_change_set_says_what_changed(memory: Store, shop: SmallShop) -> None:
    with memory.write("carry 6 iron to W1", NOON + 1, "KT") as act:
        act.update("stay", shop.stays[0], to_us=NOON + 1)
        new = act.add(Stay(0, shop.clubs[0], shop.box, 0, NOON + 1))
        act.use_person("KT")
    changes = act.changes
    assert (changes.label, changes.at_us, changes.by) == ("carry 6 iron to W1", NOON + 1, "KT")
    assert changes.tables == {"stay", "person"}
    assert changes.keys("stay") == {(shop.stays[0],), (new,)}
    assert changes.undoable
    first, second, _ = changes
    assert first.before is not None and first.after is not None
    assert (first.before["to_us"], first.after["to_us"]) == (None, NOON + 1)
    assert second == RowChange(
        "stay", (new,), None,
        {"id": new, "club_id": shop.clubs[0], "place_id": shop.box, "slot": 0,
         "from_us": NOON + 1, "to_us": None},
    )  # fmt: skip


def test_an_update_that_changes_nothing_is_no_change(memory: Store, shop: SmallShop) -> None:
    with memory.write("same", NOON, correction=True) as act:
        act.update("club", shop.clubs[0], name="6 iron")
    assert act.changes == ChangeSet()
    assert act.changes.tables == frozenset() and not act.changes.undoable
    assert memory.journal.former("club", shop.clubs[0]) == []


def test_an_exception_leaves_all_as_it_was(filed: Store) -> None:
    shop = small_shop(filed)
    before = contents(filed)
    with pytest.raises(ZeroDivisionError), filed.write("half", NOON) as act:
        act.update("club", shop.clubs[0], name="other")
        act.add(Customer(0, "x", ""))
        _ = 1 / 0
    assert contents(filed) == before
    with pytest.raises(RuntimeError, match="not committed"):
        _ = act.changes
    with filed.write("next", NOON) as act:
        act.use_person("KT")


def test_a_transaction_ends_once(memory: Store) -> None:
    with memory.write("one", NOON) as act:
        act.use_person("KT")
        assert act.commit() is act.changes
        with pytest.raises(RuntimeError, match="already committed"):
            act.use_person("LM")
    assert [person.initials for person in memory.shop.persons()] == ["KT"]


def test_no_transaction_in_a_transaction(memory: Store) -> None:
    with memory.write("outer", NOON) as act:
        act.use_person("KT")
        with pytest.raises(RuntimeError, match="inside another"), memory.write("inner", NOON):
            pass
    assert len(memory.shop.persons()) == 1


def test_a_missing_row_is_a_mistake_of_ours(memory: Store) -> None:
    with pytest.raises(LookupError, match="club"), memory.write("x", NOON) as act:
        act.update("club", 77, name="x")
    with pytest.raises(LookupError, match="club"), memory.write("x", NOON) as act:
        act.delete("club", 77)
    with pytest.raises(sqlite3.IntegrityError), memory.write("x", NOON) as act:
        act.add(Club(0, 77, "no such job", 0))


def test_a_key_is_never_changed(memory: Store) -> None:
    with memory.write("x", NOON) as act:
        act.use_person("KT")
        with pytest.raises(ValueError, match="key of person"):
            act.update("person", "KT", initials="LM")


def test_a_taken_slot_is_named(memory: Store, shop: SmallShop) -> None:
    before = contents(memory)
    with pytest.raises(InputError) as caught, memory.write("put", NOON) as act:
        club = act.add(Club(0, shop.job, "8 iron", 2))
        act.add(Stay(0, club, shop.rack, 0, NOON))
    assert caught.value.where == "A1"
    assert "6 iron of job 1042" in caught.value.message
    assert contents(memory) == before
    with pytest.raises(InputError) as caught, memory.write("move", NOON) as act:
        act.update("stay", shop.stays[1], slot=0)
    assert caught.value.where == "A1"


def test_a_club_lies_at_one_place(memory: Store, shop: SmallShop) -> None:
    with pytest.raises(InputError) as caught, memory.write("put", NOON) as act:
        act.add(Stay(0, shop.clubs[1], shop.box, 2, NOON))
    assert "7 iron of job 1042" in caught.value.message
    assert "A2" in caught.value.message


def test_a_slot_is_free_again_and_slotless_places_hold_many(memory: Store, shop: SmallShop) -> None:
    with memory.write("out", NOON + 1) as act:
        for stay, club in zip(shop.stays, shop.clubs, strict=True):
            act.update("stay", stay, to_us=NOON + 1)
            act.add(Stay(0, club, shop.out, None, NOON + 1))
        club = act.add(Club(0, shop.job, "8 iron", 2))
        act.add(Stay(0, club, shop.rack, 0, NOON + 1))
    here = memory.work.stays([*shop.clubs, club], open_only=True)
    assert [(s.place_id, s.slot) for s in here if s.club_id == club] == [(shop.rack, 0)]
    assert sum(s.place_id == shop.out and s.slot is None for s in here) == len(shop.clubs)


def test_a_job_number_twice_is_named(memory: Store, shop: SmallShop) -> None:
    with pytest.raises(InputError) as caught, memory.write("job", NOON) as act:
        act.add(Job(0, "1042", shop.customer, NOON))
    assert "1042" in caught.value.message and "job number" in caught.value.message


def test_a_correction_keeps_the_former_value(memory: Store, shop: SmallShop) -> None:
    with memory.write("correct mixed at", NOON + 9, "KT", correction=True) as act:
        act.update("batch", shop.batch, mixed_us=NOON - 5, lot="L8")
    kept = memory.journal.former("batch", shop.batch)
    assert [(f.column, f.old, f.new, f.changed_us, f.by) for f in kept] == [
        ("mixed_us", NOON, NOON - 5, NOON + 9, "KT"),
        ("lot", "L7", "L8", NOON + 9, "KT"),
    ]
    assert memory.work.batches([shop.batch])[0].mixed_us == NOON - 5


def test_a_plain_edit_keeps_none(memory: Store, shop: SmallShop) -> None:
    with memory.write("all racked", NOON + 9) as act:
        act.update("batch", shop.batch, racked_us=NOON + 9)
    assert memory.journal.former("batch", shop.batch) == []


def test_a_corrected_away_reading_is_kept_whole(memory: Store, shop: SmallShop) -> None:
    with memory.write("log", NOON) as act:
        act.add(Reading(shop.room, NOON, 21_000, 3_000, Source.TYPED))
    with memory.write("correct", NOON + 1, correction=True) as act:
        act.delete("reading", (shop.room, NOON))
        act.add(Reading(shop.room, NOON + 7, 21_000, 3_000, Source.TYPED))
    (kept,) = memory.journal.former("reading", (shop.room, NOON))
    assert kept.column == "*" and kept.old["temperature_mc"] == 21_000 and kept.new is None


def test_undo_takes_back_and_redo_does_again(memory: Store, shop: SmallShop) -> None:
    before = contents(memory)
    with memory.write("new job", NOON + 1) as act:
        customer = act.add(Customer(0, "Invented", "1"))
        job = act.add(Job(0, "2000", customer, NOON + 1))
        club = act.add(Club(0, job, "driver", 0))
        act.add(Stay(0, club, shop.box, 0, NOON + 1))
        act.update("stay", shop.stays[0], to_us=NOON + 1)
        act.delete("stay", shop.stays[1])
        act.set_setting("units", "F")
        act.set_setting("units", "C")
        act.add_readings(shop.room, [(NOON, 21_000, 3_000, "typed")])
        act.add(Bridge(0, shop.room, NOON, NOON + 9, 13_000, 1_000, NOON + 9))
        act.add(Hold(0, shop.joints[0], HoldReason.DISTURBED, "", NOON + 1))
    after = contents(memory)
    undone = memory.apply_inverse(act.changes, "undo new job", NOON + 2)
    assert contents(memory) == before
    assert undone.label == "undo new job" and "reading" in undone.tables and undone.readings
    redone = memory.apply_inverse(undone, "redo new job", NOON + 3)
    assert contents(memory) == after
    memory.apply_inverse(redone, "undo again", NOON + 4)
    assert contents(memory) == before


def test_undo_leaves_the_journals_alone(memory: Store, shop: SmallShop) -> None:
    with memory.write("act", NOON + 1, correction=True) as act:
        act.update("batch", shop.batch, lot="L9")
        act.add_event("corrected", "batch", shop.batch)
        act.add(Alert(0, "job safe", shop.job, 0, 1, "due, unseen", NOON, NOON, {}))
        act.add(Grant(0, shop.joints[0], Milestone.HANDLING, NOON, NOON, NOON))
    undone = memory.apply_inverse(act.changes, "undo", NOON + 2)
    assert undone.tables == {"batch"}
    assert memory.work.batches([shop.batch])[0].lot == "L7"
    assert len(memory.journal.events()) == len(memory.alerts.open()) == 1
    assert len(memory.journal.grants(shop.joints)) == 1
    assert len(memory.journal.former("batch", shop.batch)) == 1


def test_undo_of_a_joint_that_has_earned_a_permission(memory: Store, shop: SmallShop) -> None:
    before = contents(memory)
    with memory.write("late entry", NOON + 1) as act:
        job = act.add(Job(0, "3", shop.customer, NOON))
        club = act.add(Club(0, job, "wedge", 0))
        joint = act.insert("joint", {"club_id": club, "kind": "solid head", "lag_s": 0,
                                     "parts": "shop", "graphics": ""})  # fmt: skip
    with memory.write("tick", NOON + 2) as tick:
        tick.add(Grant(0, joint, Milestone.HANDLING, NOON, NOON, NOON))
    memory.apply_inverse(act.changes, "undo", NOON + 3)
    assert contents(memory) == before


def test_only_journals_can_not_be_undone(memory: Store) -> None:
    with memory.write("note", NOON) as act:
        act.add_event("x", "shop", 0)
    assert not act.changes.undoable
    with pytest.raises(ChangedSinceError, match="note"):
        memory.apply_inverse(act.changes, "undo", NOON)


@pytest.mark.parametrize(
    "meanwhile",
    [
        lambda act, shop: act.update("stay", shop.stays[0], to_us=NOON + 5),
        lambda act, shop: act.delete("stay", shop.stays[0]),
        lambda act, shop: act.update("club", shop.clubs[1], name="other"),
    ],
)
def test_undo_that_does_not_fit_changes_nothing(
    memory: Store, shop: SmallShop, meanwhile: Act
) -> None:
    with memory.write("move both", NOON + 1) as act:
        act.update("stay", shop.stays[0], slot=7)
        act.update("club", shop.clubs[1], name="seven iron")
        act.update("stay", shop.stays[1], slot=8)
    with memory.write("meanwhile", NOON + 2) as other:
        meanwhile(other, shop)
    before = contents(memory)
    with pytest.raises(ChangedSinceError, match="move both") as caught:
        memory.apply_inverse(act.changes, "undo", NOON + 3)
    assert caught.value.remedy
    assert contents(memory) == before


def test_undo_is_refused_where_somebody_built_on_it(memory: Store, shop: SmallShop) -> None:
    with memory.write("new customer", NOON) as act:
        customer = act.add(Customer(0, "Invented", ""))
    with memory.write("off the rack", NOON + 1) as moved:
        moved.update("stay", shop.stays[0], to_us=NOON + 1)
    with memory.write("job for them", NOON + 2) as job:
        number = job.add(Job(0, "9", customer, NOON + 2))
        club = job.add(Club(0, number, "wedge", 0))
        job.add(Stay(0, club, shop.rack, 0, NOON + 2))
    before = contents(memory)
    for changes in (act.changes, moved.changes):  # a job hangs on it; the slot is taken
        with pytest.raises(ChangedSinceError):
            memory.apply_inverse(changes, "undo", NOON + 3)
        assert contents(memory) == before


def test_more_may_be_written_with_an_undo(memory: Store, shop: SmallShop) -> None:
    with memory.write("edit", NOON) as act:
        act.update("club", shop.clubs[0], name="x")
    with memory.write("undo edit", NOON + 1) as undo:
        undo.invert(act.changes)
        undo.add_event("undone", "club", shop.clubs[0])
    assert memory.work.clubs_by_id([shop.clubs[0]])[0].name == "6 iron"
    assert undo.changes.tables == {"club", "event"}


@given(st.lists(st.tuples(st.integers(0, 6), st.integers(0, 14)), min_size=50, max_size=60))
def test_fifty_acts_are_undone_and_redone_exactly(steps: list[tuple[int, int]]) -> None:
    store = Store.open_memory()
    shop = small_shop(store)
    states = [contents(store)]
    done: list[ChangeSet] = []
    for number, (kind, n) in enumerate(steps, start=1):
        now = NOON + number * MINUTE_US
        try:
            with store.write(f"act {number}", now, "KT", correction=n % 2 == 0) as act:
                _any_act(act, shop, kind, n, number)
        except InputError:
            assert contents(store) == states[-1]
            continue
        if act.changes.undoable:
            done.append(act.changes)
            states.append(contents(store))
    undone: list[ChangeSet] = []
    for changes, state in zip(reversed(done), reversed(states[:-1]), strict=True):
        undone.append(store.apply_inverse(changes, "undo", NOON))
        assert contents(store) == state
    for changes, state in zip(reversed(undone), states[1:], strict=True):
        store.apply_inverse(changes, "redo", NOON)
        assert contents(store) == state
    store.close()


def _any_act(act: Transaction, shop: SmallShop, kind: int, n: int, number: int) -> None:
    stay = shop.stays[n % 2]
    match kind:
        case 0:
            act.update("stay", stay, slot=n)
        case 1:
            act.update("batch", shop.batch, mixed_us=NOON - n, racked_us=n or None)
        case 2:
            act.add_readings(shop.room, [(NOON + n, 20_000 + n, 3_000, "typed")], replace=True)
        case 3:
            job = act.add(Job(0, f"n{n}", shop.customer, NOON))
            club = act.add(Club(0, job, "new", 0))
            act.add(Stay(0, club, shop.box, n % 4, NOON))
        case 4:
            act.set_setting("s", n)
        case 5:
            act.use_person(f"P{n}")
            act.add_event("x", "shop", n)
        case _:
            act.add_readings(shop.room, [(NOON + n, 15_000 + number, 1_000, "typed")], True)
