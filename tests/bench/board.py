"""How long a tick of the board takes, against its bounds: python tests/bench/board.py."""

from __future__ import annotations

import sys
from pathlib import Path
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from helpers.shop import FakeClock, Shop, at
from rackboard.core.bench import Place, PlaceKind, Source
from rackboard.services.bench import RACK_U_MC
from rackboard.services.founding import found_shop
from rackboard.store import Store

BATCHES, CLUBS = 12, 8
QUIET_MS = 1.0
"""Bound of a tick without a new reading [ms]."""
READING_MS = 40.0
"""Bound of a tick with one new reading and a flat outlook [ms]."""


def full_shop() -> Shop:
    """Return 96 curing joints of 12 batches, mixed 5 min apart, on one big rack."""
    store = Store.open_memory()
    clock = FakeClock(at("Mon 09:00"))
    found_shop(store, clock.now())
    zone = store.shop.zones()[0].id
    with store.write("a big rack", clock.now()) as act:
        act.add(Place(0, zone, PlaceKind.RACK, "Rack B", "L", 8, 12, -1))
        # Open day and night: after the last reading there is one flat stretch.
        act.set_setting("opening hours", [[0, 1440]] * 7)
    shop = Shop(store, clock)
    shop.feed([(at("Mon 08:55"), 21.0)])
    for _ in range(BATCHES):
        shop.feed([(clock.now(), 21.0)])
        shop.glue(CLUBS)
        clock.advance(minutes=5)
    for _ in range(3 * 12):
        shop.feed([(clock.now(), 21.0)])
        clock.advance(minutes=5)
    shop.tick()
    assert len(shop.board.standings) == BATCHES * CLUBS
    assert all(s.milestone is not None for s in shop.board.standings)
    return shop


def quiet_tick_ms(shop: Shop, ticks: int = 200) -> float:
    """Return the time of a tick without a new reading, 10 s after the last one [ms].

    The mean, so that the minute in which the marks are set anew counts.
    """
    took = 0.0
    for _ in range(ticks):
        shop.clock.advance(seconds=10)
        start = perf_counter()
        shop.board.tick()
        took += perf_counter() - start
    return took / ticks * 1000


def reading_tick_ms(shop: Shop, ticks: int = 15) -> float:
    """Return the median time of taking a new reading in and of the tick after it [ms]."""
    times = []
    for _ in range(ticks):
        shop.clock.advance(minutes=5)
        now = shop.clock.now()
        with shop.store.write("feed", now) as act:
            act.add_readings(shop.room, [(now, 21_000, RACK_U_MC, Source.FEED)])
        start = perf_counter()
        shop.board.take_in(act.changes)
        shop.board.tick()
        times.append(perf_counter() - start)
    return sorted(times)[len(times) // 2] * 1000


def main() -> int:
    """Print both times beside their bounds; return 1 if one is missed."""
    shop = full_shop()
    figures = (
        ("tick, 96 joints, nothing new", quiet_tick_ms(shop), QUIET_MS),
        ("tick, 96 joints, one reading", reading_tick_ms(shop), READING_MS),
    )
    for name, took, bound in figures:
        print(f"{name}: {took:.3f} ms (at most {bound:g} ms)")
    return int(any(took > bound for _, took, bound in figures))


if __name__ == "__main__":
    raise SystemExit(main())
