"""An invented shop with a clock that tests move, and short ways to work in it. No Qt here."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime, timedelta, timezone, tzinfo

from rackboard.core.bench import Epoxy, JointKind, Parts, PlaceKind, Source
from rackboard.core.epoxy import Range, Sheet
from rackboard.core.instants import HOUR_US, MINUTE_US, Instant, from_datetime, to_datetime
from rackboard.core.standing import Standing
from rackboard.services.bench import Bench, ClubEntry, JobEntry
from rackboard.services.board import Board
from rackboard.services.founding import found_shop
from rackboard.services.undo import History
from rackboard.store import Store
from rackboard.store.changes import ChangeSet

SHOP_ZONE = timezone(timedelta(hours=1), "shop")
"""A fixed offset: which zones a machine knows is no matter to these tests."""
MONDAY = datetime(2026, 3, 9, tzinfo=SHOP_ZONE)
_DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")

PLAIN = Sheet("invented 8/24", Range(60, 60), Range(24, 24), Range(8, 8), 25.0, 15.0, 60.0)
"""The sheet of the model's check values: handling 8 h, full cure 24 h at 25 °C, minimum 15."""


def at(text: str, weeks: int = 0) -> Instant:
    """Return the instant of "Mon 15:40" in the tests' week, or weeks after it."""
    day, clock = text.split()
    hours, minutes = clock.split(":")
    moment = MONDAY + timedelta(
        weeks=weeks, days=_DAYS.index(day), hours=int(hours), minutes=int(minutes)
    )
    return from_datetime(moment)


def local(instant: Instant | None) -> str:
    """Return an instant as "Mon 15:40" for messages and comparisons."""
    return "never" if instant is None else to_datetime(instant).astimezone(SHOP_ZONE).strftime(
        "%a %H:%M"
    )


class FakeClock:
    """A clock that stands still until a test moves it."""

    def __init__(self, now: Instant) -> None:
        self.instant = now

    def now(self) -> Instant:
        """Return what the test has set."""
        return self.instant

    def set(self, instant: Instant | str) -> None:
        """Go to an instant, or to "Tue 07:55"."""
        self.instant = at(instant) if isinstance(instant, str) else instant

    def advance(self, *, hours: float = 0, minutes: float = 0, seconds: float = 0) -> None:
        """Go on."""
        self.instant += round(hours * HOUR_US + minutes * MINUTE_US + seconds * 1_000_000)


class Shop:
    """The services over one store, as the window puts them together, without a window."""

    def __init__(self, store: Store, clock: FakeClock, zone: tzinfo = SHOP_ZONE) -> None:
        self.store = store
        self.clock = clock
        self.board = Board(store, clock, zone)
        self.bench = Bench(store, clock, self.board.snapshot.hours)
        self.history = History(store, clock)
        self.room, self.box_zone = list(self.board.snapshot.zones)[:2]
        self.rack = self.board.snapshot.place(PlaceKind.RACK)
        self.box = self.board.snapshot.place(PlaceKind.BOX)
        with store.write("a sheet for tests", clock.now()) as act:
            self.epoxy = act.add(Epoxy(0, PLAIN, typical=False))
        self.board.take_in(act.changes)
        self._jobs = 0
        self._slots: dict[int, int] = {}

    def do(self, changes: ChangeSet) -> ChangeSet | None:
        """Take in an act as the window does; return what the tick wrote."""
        self.history.add(changes)
        return self.spread(changes)

    def spread(self, changes: ChangeSet) -> ChangeSet | None:
        """Take in a change that undo doesn't reach (an undo, an import)."""
        self.board.take_in(changes)
        self.bench.hours = self.board.snapshot.hours
        return self.board.tick()

    def undo(self) -> None:
        """Take back the last act."""
        changes = self.history.undo()
        assert changes is not None
        self.spread(changes)

    def tick(self, when: Instant | str | None = None) -> ChangeSet | None:
        """Tick, at a new time if one is given."""
        if when is not None:
            self.clock.set(when)
        return self.board.tick()

    def lay_out(
        self,
        clubs: int | Sequence[str] = 1,
        *,
        number: str | None = None,
        promised: str | Instant | None = None,
        kind: JointKind = JointKind.SOLID_HEAD,
        box: bool = False,
        epoxy: int | None = None,
        parts_mc: int | None = None,
    ) -> int:
        """Lay a job out on the next free slots; return the batch's id."""
        names = [f"{n} iron" for n in range(clubs)] if isinstance(clubs, int) else clubs
        self._jobs += number is None
        place = self.box if box else self.rack
        first = self._slots.get(place.id, 0)
        self._slots[place.id] = first + len(names)
        entries = tuple(
            ClubEntry(name, kind, place.id, first + i) for i, name in enumerate(names)
        )
        laid = self.bench.lay_out(
            JobEntry(
                number or str(100 + self._jobs), "Invented Customer", "",
                at(promised) if isinstance(promised, str) else promised,
                entries, epoxy or self.epoxy,
                parts=Parts.SHOP if parts_mc is None else Parts.COLD, parts_mc=parts_mc,
            )
        )  # fmt: skip
        self.do(laid.changes)
        return laid.batch_id

    def glue(self, clubs: int | Sequence[str] = 1, **layout: object) -> list[int]:
        """Lay out, mix and rack now; return the joints' ids."""
        batch = self.lay_out(clubs, **layout)  # type: ignore[arg-type]
        self.do(self.bench.mix(batch))
        self.do(self.bench.rack_all(batch))
        return [joint.id for joint in self.board.snapshot.joints_of_batch[batch]]

    def type(self, celsius: float, *, box: bool = False, at_rack: bool = True) -> None:
        """Type a temperature now."""
        zone = self.box_zone if box else self.room
        self.do(self.bench.type_temperature(zone, round(celsius * 1000), at_rack=at_rack))

    def feed(
        self, readings: Sequence[tuple[Instant, float]], *, box: bool = False
    ) -> ChangeSet:
        """Keep automatic readings; the board takes them in, but doesn't tick."""
        zone = self.box_zone if box else self.room
        with self.store.write("feed", self.clock.now()) as act:
            act.add_readings(
                zone, [(t, round(c * 1000), 1000, Source.FEED) for t, c in readings]
            )
        self.board.take_in(act.changes)
        return act.changes

    def flat(
        self, start: str, end: str, celsius: float, *, box: bool = False, step_min: int = 60
    ) -> None:
        """Keep automatic readings of one temperature from … to, both included."""
        step = step_min * MINUTE_US
        self.feed([(t, celsius) for t in range(at(start), at(end) + 1, step)], box=box)

    def standing(self, joint: int) -> Standing:
        """Return what the board says of a joint."""
        return next(s for s in self.board.standings if s.joint.id == joint)

    def words(self) -> list[str]:
        """Return every joint's word, in order of the joints."""
        return [str(s.word) for s in sorted(self.board.standings, key=lambda s: s.joint.id)]


def make_shop(now: Instant | str = "Mon 08:00", store: Store | None = None) -> Shop:
    """Return a newly founded shop whose clock stands at an instant of the tests' week."""
    instant = at(now) if isinstance(now, str) else now
    kept = store or Store.open_memory()
    found_shop(kept, instant)
    return Shop(kept, FakeClock(instant))


def utc(instant: Instant) -> datetime:
    """Return an instant as UTC, for failure messages."""
    return to_datetime(instant).astimezone(UTC)
