"""A logger's record: one transaction, repeatable without doubles, contradictions shown."""

from __future__ import annotations

import pytest

from helpers.shop import at, make_shop
from helpers.store import contents
from rackboard.core.errors import InputError
from rackboard.core.instants import HOUR_US, MINUTE_US
from rackboard.core.words import Word
from rackboard.services.importing import import_readings

RECORD = [(at("Mon 09:00") + n * 5 * MINUTE_US, 21_000 + n % 3 * 100) for n in range(400)]


def test_a_record_imported_again_makes_nothing_double() -> None:
    shop = make_shop("Wed 09:00")
    first = import_readings(shop.store, shop.clock, shop.room, RECORD)
    assert (first.new, first.same, first.differing, first.ahead) == (400, 0, (), 0)
    rows = shop.store.record.readings(shop.room, 0, at("Sun 09:00"))
    again = import_readings(shop.store, shop.clock, shop.room, RECORD)
    assert (again.new, again.same) == (0, 400)
    assert shop.store.record.readings(shop.room, 0, at("Sun 09:00")) == rows


def test_a_contradiction_is_kept_out_and_shown_until_the_file_shall_win() -> None:
    shop = make_shop("Wed 09:00")
    import_readings(shop.store, shop.clock, shop.room, RECORD)
    other = [*RECORD[:3], (RECORD[3][0], 5_000)]
    kept = import_readings(shop.store, shop.clock, shop.room, other)
    assert [(c.at_us, c.kept_mc, c.came_mc) for c in kept.differing] == [
        (RECORD[3][0], 21_000, 5_000)
    ]
    assert shop.store.record.readings(shop.room, *[RECORD[3][0]] * 2)[0][1] == 21_000
    import_readings(shop.store, shop.clock, shop.room, other, replace=True)
    assert shop.store.record.readings(shop.room, *[RECORD[3][0]] * 2)[0][1] == 5_000
    former = shop.store.journal.former("reading", (shop.room, RECORD[3][0]))
    assert [(f.column, f.old) for f in former] == [("temperature_mc", 21_000)]


def test_readings_of_the_future_are_counted_and_left_out() -> None:
    shop = make_shop("Mon 10:00")
    found = import_readings(shop.store, shop.clock, shop.room, RECORD)
    assert found.new + found.ahead == 400
    last = shop.store.record.last_reading(shop.room)
    assert last is not None
    assert last.at_us <= shop.clock.now() + 5 * MINUTE_US


def test_nothing_to_take_in_changes_nothing() -> None:
    shop = make_shop("Mon 08:00")
    before = contents(shop.store, frozenset({"reading", "event"}))
    for readings in ([], [(at("Tue 09:00"), 20_000)]):
        with pytest.raises(InputError, match="at least one reading up to now"):
            import_readings(shop.store, shop.clock, shop.room, readings)
    assert contents(shop.store, frozenset({"reading", "event"})) == before


def test_a_record_brought_later_gives_what_the_joint_has_earned() -> None:
    shop = make_shop("Mon 09:00")
    (joint,) = shop.glue(1)
    shop.tick("Tue 18:00")
    assert shop.standing(joint).word is Word.WAIT
    assert shop.standing(joint).unknown
    done = import_readings(shop.store, shop.clock, shop.room, RECORD)
    shop.spread(done.changes)
    assert shop.standing(joint).word is Word.BENCH
    (grant,) = shop.store.journal.grants([joint])
    assert grant.given_us == at("Tue 18:00")
    assert grant.printed_us < at("Tue 18:00") - 10 * HOUR_US
