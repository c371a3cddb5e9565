from __future__ import annotations

from helpers.store import NOON, SmallShop, small_shop
from rackboard.core.bench import Bridge, Reading, Source
from rackboard.core.instants import HOUR_US, MINUTE_US
from rackboard.store import Store
from rackboard.store.changes import Conflict, ReadingsAdded, ReadingSpan
from rackboard.store.faults import ChangedSinceError

LOGGER = [(NOON + n * MINUTE_US, 20_000 + n, 1_000, "imported") for n in range(100)]


def add(store: Store, zone: int, rows: list[tuple[int, int, int, str]], replace: bool = False):
    with store.write("log", NOON) as act:
        added = act.add_readings(zone, rows, replace)
    return added, act.changes


def test_an_import_can_be_repeated(memory: Store, shop: SmallShop) -> None:
    added, changes = add(memory, shop.room, LOGGER)
    assert added == ReadingsAdded(100, 0, ())
    assert changes.tables == {"reading"} and not changes.undoable
    assert changes.readings == (ReadingSpan(shop.room, NOON, NOON + 99 * MINUTE_US),)
    added, changes = add(memory, shop.room, LOGGER)
    assert added == ReadingsAdded(0, 100, ()) and changes.readings == ()
    assert memory.record.readings(shop.room, NOON, NOON + HOUR_US * 9) == LOGGER


def test_another_value_at_the_instant_is_a_conflict_and_not_written(
    memory: Store, shop: SmallShop
) -> None:
    add(memory, shop.room, LOGGER)
    came = [(LOGGER[3][0], 9_000, 1_000, "imported"), (NOON - 1, 19_000, 1_000, "imported")]
    added, _ = add(memory, shop.room, came)
    assert added == ReadingsAdded(1, 0, (Conflict(LOGGER[3][0], 20_003, 9_000),))
    assert memory.record.readings(shop.room, NOON - 1, NOON + HOUR_US * 9) == [
        (NOON - 1, 19_000, 1_000, "imported"), *LOGGER,
    ]  # fmt: skip
    assert memory.journal.former("reading", (shop.room, LOGGER[3][0])) == []


def test_a_replaced_value_is_kept_as_former(memory: Store, shop: SmallShop) -> None:
    add(memory, shop.room, LOGGER)
    at_us = LOGGER[3][0]
    added, changes = add(memory, shop.room, [(at_us, 9_000, 3_000, "typed")], replace=True)
    assert added.differing == (Conflict(at_us, 20_003, 9_000),)
    assert changes.readings == (ReadingSpan(shop.room, at_us, at_us),)
    assert memory.record.reading_before(shop.room, at_us) == Reading(
        shop.room, at_us, 9_000, 3_000, Source.TYPED
    )
    kept = memory.journal.former("reading", (shop.room, at_us))
    assert [(f.column, f.old, f.new) for f in kept] == [
        ("temperature_mc", 20_003, 9_000), ("u_mc", 1_000, 3_000), ("source", "imported", "typed"),
    ]  # fmt: skip


def test_doubles_within_one_file(memory: Store, shop: SmallShop) -> None:
    rows = [(NOON, 1, 0, "imported"), (NOON, 1, 0, "imported"), (NOON, 2, 0, "imported")]
    added, _ = add(memory, shop.room, rows)
    assert added == ReadingsAdded(1, 1, (Conflict(NOON, 1, 2),))
    assert memory.record.last_reading(shop.room).temperature_mc == 1
    many = [(NOON + 9, n, 0, "imported") for n in range(20)]
    added, _ = add(memory, shop.room, many, replace=True)
    assert added.new == 1 and len(added.differing) == 19
    assert memory.record.last_reading(shop.room).temperature_mc == 19


def test_nothing_is_nothing(memory: Store, shop: SmallShop) -> None:
    added, changes = add(memory, shop.room, [])
    assert added == ReadingsAdded(0, 0, ()) and changes.tables == frozenset()


def test_zones_are_apart(memory: Store, shop: SmallShop) -> None:
    other = memory.shop.zones()[1].id
    add(memory, shop.room, LOGGER)
    added, _ = add(memory, other, [(row[0], 1, 0, "feed") for row in LOGGER])
    assert added.new == 100
    assert memory.record.last_reading(other) == Reading(other, LOGGER[-1][0], 1, 0, Source.FEED)


def test_typed_readings_are_undone_fed_ones_are_not(memory: Store, shop: SmallShop) -> None:
    with memory.write("log 21 °C", NOON) as act:
        act.add_readings(
            shop.room, [(NOON, 21_000, 3_000, "typed"), (NOON + 1, 20_000, 1_000, "feed")]
        )
    memory.apply_inverse(act.changes, "undo", NOON)
    assert memory.record.readings(shop.room, 0, NOON * 2) == [(NOON + 1, 20_000, 1_000, "feed")]


def test_undo_of_a_typed_reading_that_an_import_replaced(memory: Store, shop: SmallShop) -> None:
    _, typed = add(memory, shop.room, [(NOON, 21_000, 3_000, "typed")])
    _, imported = add(memory, shop.room, [(NOON, 15_000, 1_000, "imported")], replace=True)
    assert not imported.undoable
    try:
        memory.apply_inverse(typed, "undo", NOON)
    except ChangedSinceError:
        assert memory.record.last_reading(shop.room).temperature_mc == 15_000
    else:
        raise AssertionError("an imported reading was taken away")


def test_neighbours_in_time(memory: Store, shop: SmallShop) -> None:
    record = memory.record
    assert record.last_reading(shop.room) is None
    add(memory, shop.room, LOGGER)
    assert record.reading_before(shop.room, NOON - 1) is None
    assert record.reading_before(shop.room, NOON + MINUTE_US - 1).at_us == NOON
    assert record.reading_before(shop.room, NOON + MINUTE_US).at_us == NOON + MINUTE_US
    assert record.reading_after(shop.room, NOON).at_us == NOON + MINUTE_US
    assert record.reading_after(shop.room, LOGGER[-1][0]) is None
    assert record.last_reading(shop.room).at_us == LOGGER[-1][0]
    assert record.readings(shop.room, NOON + 1, NOON + MINUTE_US) == [LOGGER[1]]


def test_bridges_that_still_matter(memory: Store, shop: SmallShop) -> None:
    with memory.write("lowest 13", NOON, "KT") as act:
        first = act.add(Bridge(0, shop.room, 0, 10, 13_000, 1_000, NOON, "KT"))
        second = act.add(Bridge(0, shop.room, 10, 20, 12_000, 1_000, NOON))
    assert [bridge.id for bridge in memory.record.bridges(shop.room, 0)] == [first, second]
    assert memory.record.bridges(shop.room, 10) == [
        Bridge(second, shop.room, 10, 20, 12_000, 1_000, NOON)
    ]


def test_a_big_import_is_one_transaction(filed: Store) -> None:
    shop = small_shop(filed)
    rows = [(NOON + n * MINUTE_US, 20_000, 1_000, "imported") for n in range(50_000)]
    added, _ = add(filed, shop.room, rows)
    read = filed.record.readings(shop.room, 0, NOON * 2)
    assert added.new == 50_000 and read == rows
