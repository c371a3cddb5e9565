"""The invented shop: every state is there, by the model itself, and its clock can run fast."""

from __future__ import annotations

import itertools
from datetime import datetime

import pytest

from helpers.shop import SHOP_ZONE, FakeClock
from rackboard.core.bench import PlaceKind
from rackboard.core.instants import DAY_US, HOUR_US, MINUTE_US, SECOND_US, Instant, to_datetime
from rackboard.core.words import Word
from rackboard.services.board import Board
from rackboard.services.demo import STEP_US, DemoFeed, FastClock, demo_start, furnish_demo
from rackboard.store import Store
from rackboard.store.changes import UNDOABLE


def furnished() -> tuple[Store, Board, FakeClock]:
    start = demo_start(SHOP_ZONE)
    store = Store.open_memory()
    furnish_demo(store, start, SHOP_ZONE)
    clock = FakeClock(start)
    board = Board(store, clock, SHOP_ZONE)
    board.tick()
    return store, board, clock


@pytest.fixture(scope="module")
def demo() -> tuple[Store, Board, FakeClock]:
    return furnished()


def test_it_begins_on_a_thursday_in_opening_hours() -> None:
    start = to_datetime(demo_start(SHOP_ZONE)).astimezone(SHOP_ZONE)
    assert start == datetime(2026, 3, 12, 14, 26, tzinfo=SHOP_ZONE)
    assert start.weekday() == 3


def test_every_state_is_there(demo: tuple[Store, Board, FakeClock]) -> None:
    _, board, _ = demo
    standings = board.standings
    words = {s.word for s in standings if not s.laid_out}
    assert words == {Word.WET, Word.WAIT, Word.BENCH, Word.CURED, Word.HOLD}
    assert any(s.laid_out for s in standings)
    assert any(s.cold for s in standings)
    assert [s.club.name for s in standings if s.unknown] == ["Driver"]
    places = [board.snapshot.place_of(s.club.id) for s in standings if s.word is Word.BENCH]
    assert {p.kind for p in places if p} == {
        PlaceKind.RACK, PlaceKind.BOX, PlaceKind.GRIP_BENCH, PlaceKind.PICK_UP,
    }  # fmt: skip
    jobs = board.jobs()
    assert any(j.at_risk for j in jobs)
    assert any(j.job.ready_us for j in jobs)
    assert any(j.good and not j.job.ready_us for j in jobs)
    assert len(board.questions()) == 1


def test_the_racks_are_nearly_full(demo: tuple[Store, Board, FakeClock]) -> None:
    _, board, _ = demo
    taken = [board.snapshot.places[stay.place_id].kind for stay in board.snapshot.stays.values()]
    assert (taken.count(PlaceKind.RACK), taken.count(PlaceKind.BOX)) == (14, 3)


def test_it_stands_as_a_user_would_have_left_it(demo: tuple[Store, Board, FakeClock]) -> None:
    """The board itself finds nothing more to give or to take back."""
    store, board, clock = demo
    assert not Board(store, clock, SHOP_ZONE).tick()
    for grants in board.snapshot.grants.values():
        for grant in grants.values():
            assert grant.late_us <= grant.given_us <= clock.now()
            assert grant.given_us == grant.printed_us


def test_nothing_in_it_lies_after_its_beginning(demo: tuple[Store, Board, FakeClock]) -> None:
    store, _, _ = demo
    start = demo_start(SHOP_ZONE)
    assert max(e.recorded_us for e in store.journal.events(10_000)) <= start
    for zone in store.shop.zones():
        last = store.record.last_reading(zone.id)
        assert last is not None
        assert 0 <= start - last.at_us < STEP_US


def test_its_temperatures_are_a_shops(demo: tuple[Store, Board, FakeClock]) -> None:
    store, _, _ = demo
    start = demo_start(SHOP_ZONE)
    room, box = store.shop.zones()
    rows = store.record.readings(room.id, start - 7 * DAY_US, start)
    warm = [mc for _, mc, _, _ in rows]
    assert 11_000 < min(warm) < 13_500
    assert 17_000 < max(warm) < 19_000
    assert all(abs(a - b) <= 700 for a, b in itertools.pairwise(warm)), "no leaps"
    hot = store.record.readings(box.id, start - 7 * DAY_US, start)
    assert all(31_000 < mc < 33_000 for _, mc, _, _ in hot)
    gaps = [(b[0] - a[0]) / HOUR_US for a, b in itertools.pairwise(hot)]
    assert [gap for gap in gaps if gap > 0.5] == [3.5]


def test_it_is_the_same_every_time() -> None:
    from helpers.store import contents

    tables = UNDOABLE | {"permission_grant", "event"}
    assert contents(furnished()[0], tables) == contents(furnished()[0], tables)


def test_the_feed_says_the_same_in_one_leap_and_in_steps() -> None:
    start = demo_start(SHOP_ZONE)

    def rows(steps: list[Instant]) -> list[object]:
        store, board, _ = furnished()
        feed = DemoFeed(store, SHOP_ZONE)
        for now in steps:
            feed.feed(now)
        room = next(iter(board.snapshot.zones))
        return list(store.record.readings(room, start - HOUR_US, start + 2 * DAY_US))

    end = start + DAY_US
    odd = [start + n * 7 * MINUTE_US for n in range(1, 200)]
    assert rows([end]) == rows([*odd, end])
    assert len(rows([end])) == 25 * 12


def test_the_feed_writes_nothing_twice() -> None:
    store, _, _ = furnished()
    feed = DemoFeed(store, SHOP_ZONE)
    start = demo_start(SHOP_ZONE)
    assert feed.feed(start + MINUTE_US) is None
    assert feed.feed(start + 10 * MINUTE_US) is not None
    assert feed.feed(start + 10 * MINUTE_US) is None
    assert DemoFeed(store, SHOP_ZONE).feed(start + 10 * MINUTE_US) is None


def test_as_its_clock_runs_a_club_becomes_safe_to_hit() -> None:
    store, board, clock = furnished()
    feed = DemoFeed(store, SHOP_ZONE)
    hybrid = next(s for s in board.standings if s.club.name == "3 hybrid")
    assert hybrid.word is Word.BENCH
    assert hybrid.not_before_us is not None
    last = Word.BENCH
    given: Instant = 0
    for _ in range(12 * 4):
        clock.advance(minutes=15)
        changes = feed.feed(clock.now())
        if changes is not None:
            board.take_in(changes)
        board.tick()
        word = next(s.word for s in board.standings if s.club.name == "3 hybrid")
        if word is not last:
            last, given = word, clock.now()
    assert last is Word.CURED
    # Measured, the box is surer than its schedule was: never later, and not by much earlier.
    assert 0 <= hybrid.not_before_us - given <= 2 * HOUR_US


@pytest.mark.parametrize("speed", [1.0, 60.0, 100_000.0])
def test_a_fast_clock_starts_where_it_is_told_and_runs_at_its_speed(speed: float) -> None:
    inner = FakeClock(123 * SECOND_US)
    clock = FastClock(inner, 5_000_000, speed)
    assert clock.now() == 5_000_000
    inner.advance(seconds=2)
    assert clock.now() == 5_000_000 + round(2_000_000 * speed)
