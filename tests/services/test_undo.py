"""Undo restores the undoable tables exactly, fifty deep, and redo does it again."""

from __future__ import annotations

import pytest

from helpers.shop import Shop, at, make_shop
from helpers.store import contents
from rackboard.core.errors import StoreError
from rackboard.services.agenda import NightQuestion
from rackboard.services.undo import DEPTH, History
from rackboard.store.connection import Database
from rackboard.store.faults import ChangedSinceError


def busy_shop() -> tuple[Shop, list[dict[str, list[object]]]]:
    """A shop after more acts than undo keeps, and what the tables held after each."""
    shop = make_shop("Mon 09:00")
    shop.type(21)
    images = [contents(shop.store)]

    def note() -> None:
        shop.clock.advance(minutes=3)
        images.append(contents(shop.store))

    slot = 0
    while len(images) < 58:
        batch = shop.lay_out(1)
        note()
        shop.do(shop.bench.mix(batch))
        note()
        shop.do(shop.bench.rack_all(batch))
        note()
        shop.type(20 + slot / 10)
        note()
        standing = shop.board.standings[-1]
        shop.do(shop.bench.correct_mixed(batch, shop.clock.now() - 60_000_000))
        note()
        shop.do(shop.bench.take_off(standing.club.id))
        note()
        shop.do(shop.bench.disturb(standing.joint.id))
        note()
        shop.do(shop.bench.promise(standing.job.id, at("Fri 17:00")))
        note()
        question = NightQuestion(shop.room, at("Mon 18:00") + slot, at("Tue 08:00"), True)
        shop.do(shop.bench.answer_night(question, 12_000))
        note()
        slot += 1
    return shop, images


def test_undo_goes_fifty_deep_and_each_step_restores_the_tables_exactly() -> None:
    shop, images = busy_shop()
    for step in range(1, DEPTH + 1):
        assert shop.history.undo_label is not None
        shop.undo()
        assert contents(shop.store) == images[-1 - step], step
    assert shop.history.undo() is None
    for step in range(DEPTH - 1, -1, -1):
        changes = shop.history.redo()
        assert changes is not None
        shop.spread(changes)
        assert contents(shop.store) == images[-1 - step], step
    assert shop.history.redo() is None


def test_journals_are_not_undone() -> None:
    shop, _ = busy_shop()
    before = contents(shop.store, frozenset({"event", "former"}))
    shop.undo()
    after = contents(shop.store, frozenset({"event", "former"}))
    for table, rows in before.items():
        assert after[table][: len(rows)] == rows


def test_a_new_act_forgets_what_was_undone() -> None:
    shop = make_shop()
    shop.lay_out(1)
    shop.undo()
    assert shop.history.redo_label == "lay out job 101"
    shop.type(20)
    assert shop.history.redo() is None


def test_what_was_built_on_is_not_undone_and_is_said() -> None:
    shop = make_shop()
    batch = shop.lay_out(1)
    shop.bench.mix(batch)  # an act that this history doesn't know of
    before = contents(shop.store)
    with pytest.raises(ChangedSinceError, match="has been changed again since"):
        shop.history.undo()
    assert contents(shop.store) == before


def test_a_feed_leaves_nothing_to_undo() -> None:
    shop = make_shop()
    history = History(shop.store, shop.clock)
    history.add(shop.feed([(at("Mon 08:00"), 20.0)]))
    assert history.undo_label is None


def test_an_undo_that_met_a_full_disk_can_be_tried_again(monkeypatch: pytest.MonkeyPatch) -> None:
    shop = make_shop("Mon 09:00")
    shop.type(21)
    before = contents(shop.store)
    shop.clock.advance(minutes=3)
    shop.lay_out(1)

    def full(self: Database) -> None:
        self.rollback()
        raise StoreError("The disk is full; nothing was changed.", "Make room.")

    with monkeypatch.context() as patch:
        patch.setattr(Database, "commit", full)
        with pytest.raises(StoreError):
            shop.history.undo()
    shop.undo()
    assert contents(shop.store) == before
