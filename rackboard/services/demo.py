"""An invented shop in mid-week, for a look round: people, clubs and readings are made up.

Everything is done the way a user does it, at past instants of a clock of its own, so that
the board says of it what the model says.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import date, datetime, timedelta, tzinfo
from math import exp, pi, sin

from rackboard.core.bench import Heating, PlaceKind, Source
from rackboard.core.instants import (
    DAY_US,
    HOUR_US,
    MINUTE_US,
    SECOND_US,
    Clock,
    Instant,
    from_datetime,
)
from rackboard.core.text import text
from rackboard.services.bench import RACK_U_MC, Bench, ClubEntry, JobEntry
from rackboard.services.board import Board
from rackboard.services.demo_week import PUTTER, SLOW_WHEN_COLD, WEEK, Glue
from rackboard.services.founding import found_shop
from rackboard.services.snapshot import SHOP_NAME
from rackboard.store import Store
from rackboard.store.changes import ChangeSet, ReadingRow

NAME = text("Demo", "Tallow Lane bench (invented)")
STEP_US = 5 * MINUTE_US
"""The demo's sensors say something this often."""
_LONGEST_US = 60 * DAY_US  # at a leap of the clock no more than so much is made up
_SEED = 20260312

ROOM_HEATING = Heating(7 * 60 + 30, 18 * 60, 13_000)
BOX_HEATING = Heating(0, 24 * 60, 32_000)

def demo_start(zone: tzinfo) -> Instant:
    """Return when the demo begins: Thursday 12 March 2026, 14:26 local time, every time."""
    return from_datetime(datetime(2026, 3, 12, 14, 26, tzinfo=zone))


class FastClock:
    """A clock that starts at an instant of our choice and may run fast.

    Parameters
    ----------
    inner : Clock
        The machine's clock.
    start_us : int
        What the clock shows first [µs UTC].
    speed : float
        How many times as fast as the inner clock it runs.
    """

    __slots__ = ("_inner", "_inner_us", "_speed", "_start_us")

    def __init__(self, inner: Clock, start_us: Instant, speed: float = 1.0) -> None:
        self._inner = inner
        self._inner_us = inner.now()
        self._start_us = start_us
        self._speed = speed

    def now(self) -> Instant:
        """Return the present instant of the demo [µs UTC]."""
        return self._start_us + round((self._inner.now() - self._inner_us) * self._speed)


class DemoFeed:
    """The two invented sensors: the room, cold at night, and the warm box with its thermostat.

    What they say is a function of the instant alone.

    Parameters
    ----------
    store : Store
        A furnished demo.
    zone : tzinfo
        The shop's time zone: the heating goes by local time.
    """

    __slots__ = ("_box", "_gap", "_room", "_start_us", "_store", "_until_us", "_zone")

    def __init__(self, store: Store, zone: tzinfo) -> None:
        self._store = store
        self._zone = zone
        self._room, self._box = [zone.id for zone in store.shop.zones()][:2]
        start = demo_start(zone)
        self._start_us = start
        night = from_datetime(datetime(2026, 3, 12, 3, 10, tzinfo=zone))
        self._gap = (night, night + 3 * HOUR_US + 30 * MINUTE_US)
        last = store.record.last_reading(self._room)
        self._until_us = start - 10 * DAY_US if last is None else last.at_us

    def readings_until(self, now: Instant) -> dict[int, list[ReadingRow]]:
        """Return what the sensors have said since they were last asked, by zone id."""
        first = max(self._until_us, now - _LONGEST_US) // STEP_US + 1
        instants = [n * STEP_US for n in range(first, now // STEP_US + 1)]
        if not instants:
            return {}
        self._until_us = instants[-1]
        source = Source.FEED
        return {
            self._room: [(t, self.room_mc(t), RACK_U_MC, source) for t in instants],
            self._box: [
                (t, self.box_mc(t), RACK_U_MC, source)
                for t in instants if not self._gap[0] < t < self._gap[1]
            ],
        }  # fmt: skip

    def feed(self, now: Instant) -> ChangeSet | None:
        """Keep what the sensors have said up to now; None if it was nothing."""
        found = self.readings_until(now)
        if not found:
            return None
        with self._store.write(text("Act", "demo readings"), now) as act:
            for zone_id, rows in found.items():
                act.add_readings(zone_id, rows)
        return act.changes

    def room_mc(self, at_us: Instant) -> int:
        """Return the room's temperature [m°C]: heated on weekdays, falling at night."""
        local = _local(at_us, self._zone)
        day = local.date()
        minute = local.hour * 60 + local.minute + local.second / 60
        on, off = ROOM_HEATING.on_min, ROOM_HEATING.off_min
        if day.weekday() < 5 and on <= minute < off:
            warm = _warm_c(day)
            start = _cooled_c(day, on)
            share = (minute - on) / (off - on)
            celsius = warm - (warm - start) * exp(-(minute - on) / 70) + 0.4 * sin(pi * share)
        else:
            celsius = _cooled_c(day, minute)
        return round((celsius + 0.06 * _wander(at_us // STEP_US)) * 10) * 100

    def box_mc(self, at_us: Instant) -> int:
        """Return the warm box's temperature [m°C]: 32 °C and a thermostat's saw."""
        phase = (at_us / MINUTE_US / 23.0) % 1.0
        ripple = 0.8 * (phase / 0.35 if phase < 0.35 else (1 - phase) / 0.65) - 0.4
        return round((32.0 + ripple + 0.1 * _wander(at_us // STEP_US + 7)) * 10) * 100


def _local(at_us: Instant, zone: tzinfo) -> datetime:
    return datetime.fromtimestamp(at_us / SECOND_US, zone)


def _warm_c(day: date) -> float:
    return 17.4 + 0.5 * _wander(day.toordinal())


def _cooled_c(day: date, minute: float) -> float:
    """Return what the room has fallen to since the heating last went off."""
    since = minute - ROOM_HEATING.off_min
    while since < 0 or day.weekday() > 4:
        day -= timedelta(days=1)
        since += 24 * 60
    low = 12.6 + 0.4 * _wander(day.toordinal() + 1000)
    return low + (_warm_c(day) - low) * exp(-since / 240)


def _wander(number: int) -> float:
    """Return a scrambled number of −1…1, the same for the same number at any time."""
    x = (number * 0x9E3779B97F4A7C15 + _SEED) & 0xFFFFFFFFFFFFFFFF
    x = ((x ^ (x >> 30)) * 0xBF58476D1CE4E5B9) & 0xFFFFFFFFFFFFFFFF
    x = ((x ^ (x >> 27)) * 0x94D049BB133111EB) & 0xFFFFFFFFFFFFFFFF
    return (x >> 11) / (1 << 52) - 1.0


class _PastClock:
    __slots__ = ("instant",)

    def __init__(self, instant: Instant) -> None:
        self.instant = instant

    def now(self) -> Instant:
        return self.instant


def furnish_demo(
    store: Store, now: Instant, zone: tzinfo, named: Callable[[str], str] = str
) -> None:
    """Fill an empty data file with the invented shop, as it stands at an instant.

    Parameters
    ----------
    store : Store
        Empty.
    now : int
        Normally `demo_start(zone)`; acts that lie after it are left out [µs UTC].
    zone : tzinfo
        The shop's time zone.
    named : callable, optional
        Puts the names of clubs, epoxies and places into the shop's language.
    """
    monday = demo_start(zone) - 3 * DAY_US
    clock = _PastClock(monday - 7 * DAY_US)
    found_shop(store, clock.now(), named)
    _Furnisher(store, clock, zone, named).run(now)


class _Furnisher:
    """Lives through the week."""

    def __init__(
        self, store: Store, clock: _PastClock, zone: tzinfo, named: Callable[[str], str]
    ) -> None:
        self._named = named
        self._store = store
        self._clock = clock
        self._zone = zone
        self._board = Board(store, clock, zone)
        self._bench = Bench(store, clock, self._board.snapshot.hours)
        self._bench.by = "KT"
        self._acts: list[tuple[Instant, Callable[[], ChangeSet | None]]] = []
        self._batches: dict[tuple[str, Instant], int] = {}

    def run(self, now: Instant) -> None:
        """Do everything up to an instant, and tick whenever a permission falls due."""
        self._set_up(now)
        for glue in WEEK:
            self._plan(glue)
        self._plan_rest()
        for at, act in sorted(self._acts, key=lambda item: item[0]):
            if at > now:
                break
            self._pass(at)
            changes = act()
            if changes is not None:
                self._board.take_in(changes)
                self._board.tick()
        self._pass(now)

    def _at(self, day: int, time: str) -> Instant:
        hour, minute = time.split(":")
        date = datetime(2026, 3, 9, int(hour), int(minute), tzinfo=self._zone)
        return from_datetime(date + timedelta(days=day))

    def _set_up(self, now: Instant) -> None:
        feed = DemoFeed(self._store, self._zone)
        with self._store.write(text("Act", "furnish the demo"), self._clock.now()) as act:
            act.set_setting(SHOP_NAME, self._named(NAME))
            for zone_id, rows in feed.readings_until(now).items():
                act.add_readings(zone_id, rows)
        self._board.take_in(act.changes)
        room, box = self._board.snapshot.zones
        for changes in (
            self._bench.set_heating(room, ROOM_HEATING),
            self._bench.set_heating(box, BOX_HEATING),
            self._bench.save_epoxy(
                replace(SLOW_WHEN_COLD, name=self._named(SLOW_WHEN_COLD.name))
            ),
        ):
            self._board.take_in(changes)

    def _pass(self, until: Instant) -> None:
        """Let time pass, and stop wherever the board has something to write."""
        self._clock.instant = max(self._clock.instant, self._board.ticked_us)
        while True:
            due = [
                s.not_before_us for s in self._board.standings
                if s.not_before_us is not None and self._clock.instant < s.not_before_us <= until
            ]  # fmt: skip
            if not due:
                break
            self._clock.instant = min(due)
            self._board.tick()
        self._clock.instant = until
        self._board.tick()

    def _plan(self, glue: Glue) -> None:
        at = self._at(glue.day, glue.time)
        key = (glue.number, at)

        def mix() -> ChangeSet:
            return self._bench.mix(self._batches[key])

        def rack() -> ChangeSet:
            return self._bench.rack_all(self._batches[key])

        def look() -> ChangeSet:
            return self._bench.look(self._batches[key])

        early = at - 12 * MINUTE_US if glue.mixed else at
        self._acts.append((early, lambda: self._lay_out(glue, key)))
        if glue.mixed:
            self._acts.append((at, mix))
            for minutes, act in ((glue.racked_min, rack), (glue.looked_min, look)):
                if minutes is not None:
                    self._acts.append((at + minutes * MINUTE_US, act))

    def _lay_out(self, glue: Glue, key: tuple[str, Instant]) -> ChangeSet:
        snapshot = self._board.snapshot
        epoxies = {e.sheet.name: e.id for e in snapshot.epoxies.values()}
        places = {p.prefix: p for p in snapshot.places.values() if p.prefix}
        entries: Sequence[ClubEntry] = [
            ClubEntry(self._named(name), kind, places[slot[0]].id, int(slot[1:]) - 1, "12")
            for name, kind, slot in glue.clubs
        ]
        promised = None if glue.promised is None else self._at(*glue.promised)
        laid = self._bench.lay_out(
            JobEntry(
                glue.number, glue.customer, "555-0100", promised, tuple(entries),
                epoxies[self._named(glue.epoxy)], glue.lot,
            )
        )  # fmt: skip
        self._batches[key] = laid.batch_id
        return laid.changes

    def _plan_rest(self) -> None:
        bench = self._bench

        def joint(name: str, number: str) -> int:
            return next(
                s.joint.id for s in self._board.standings
                if s.club.name == self._named(name) and s.job.number == number
            )  # fmt: skip

        def carry(number: str, kind: PlaceKind) -> ChangeSet | None:
            changes: ChangeSet | None = None
            for standing in list(self._board.standings):
                if standing.job.number == number:
                    if changes is not None:
                        self._board.take_in(changes)
                    changes = bench.take_off(standing.club.id, kind)
            return changes

        def ready() -> ChangeSet:
            job = next(j.job for j in self._board.jobs() if j.job.number == "301")
            return bench.press_ready(job.id, True)

        self._acts += [
            (self._at(2, "15:05"), lambda: carry("304", PlaceKind.PICK_UP)),
            (self._at(3, "11:40"), lambda: carry("303", PlaceKind.GRIP_BENCH)),
            (self._at(3, "11:20"), ready),
            (self._at(3, "14:19"), lambda: bench.disturb(joint(PUTTER, "310"))),
        ]
