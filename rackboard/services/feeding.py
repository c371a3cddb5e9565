"""Temperatures that come by themselves: every zone's source is asked, and what it says kept."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from rackboard.core.bench import Source
from rackboard.core.errors import InputError, RackboardError
from rackboard.core.feed import (
    Fault,
    FaultKind,
    Feed,
    FeedKind,
    FeedSource,
    Polled,
    Sample,
    Start,
    source_of,
)
from rackboard.core.instants import DAY_US, HOUR_US, MINUTE_US, Clock, Instant
from rackboard.core.text import Text, text
from rackboard.services.agenda import NightQuestion
from rackboard.services.bench import RACK_U_MC
from rackboard.store import Store
from rackboard.store.changes import ChangeSet, ReadingRow
from rackboard.store.transaction import Transaction

FEEDS = "feeds"
"""Setting: the zones' sources, as `FeedSource.row` writes them."""
INTERVAL_US = MINUTE_US
"""How often a sensor is asked [decision]."""
BACK_US = 2 * DAY_US
"""So much of a file that was there before is taken when it is set [decision]."""
RECENT_US = 7 * HOUR_US
"""So much of the record a source is judged by when the program starts [decision]."""
SAID_AGAIN_US = HOUR_US
"""A fault that comes again within this is not written into the journal again [decision]."""
_MOST_TYPED = 500

Opener = Callable[[FeedSource, Start], Feed]


class Trouble(NamedTuple):
    """Something wrong with a zone's source now, and since when [µs UTC]."""

    zone_id: int
    said: Text
    since_us: Instant
    kind: FaultKind


class _Line:
    """One zone's source at work."""

    def __init__(self, source: FeedSource, feed: Feed) -> None:
        self.source = source
        self.feed = feed
        self.polled_us: Instant | None = None
        self.again = False
        self.unwritten: list[Sample] = []
        self.ended: list[Fault] = []
        self.faults: tuple[Fault, ...] = ()
        self.last: Sample | None = None

    def is_due(self, now: Instant) -> bool:
        if self.polled_us is None or self.again or self.source.kind is FeedKind.CSV:
            return True
        return not self.polled_us <= now < self.polled_us + INTERVAL_US


class Feeding:
    """Asks the sources of the settings, and keeps what they say.

    Parameters
    ----------
    store : Store
        The data file.
    clock : Clock
        The time.
    open_feed : callable
        Makes the feed of a source; raises `RackboardError` if it can't be used.

    Attributes
    ----------
    by : str or None
        Whose initials the acts carry.
    """

    def __init__(self, store: Store, clock: Clock, open_feed: Opener) -> None:
        self._store = store
        self._clock = clock
        self.open_feed = open_feed
        self.by: str | None = None
        self._rows: object = None
        self._lines: dict[int, _Line] = {}
        self._unusable: dict[int, Trouble] = {}
        self._said: dict[tuple[int, FaultKind], Instant] = {}

    # What is set

    def sources(self) -> list[FeedSource]:
        """Return the sources of the settings; what can't be understood is left out."""
        found = []
        rows = self._store.shop.setting(FEEDS, [])
        for row in rows if isinstance(rows, list) else ():
            try:
                found.append(source_of(row))
            except InputError:
                continue
        return found

    def set_source(self, source: FeedSource) -> ChangeSet:
        """Let a zone's temperatures come from a source, in place of the one it has.

        Raises
        ------
        InputError
            If there is no such zone, or the source can't be read as it is described.
        """
        now = self._clock.now()
        zone = self._zone_name(source.zone_id)
        if source.from_us == 0:
            source = source._replace(from_us=now - BACK_US)
        self.open_feed(source, Start(source.from_us, (), now))
        others = [s for s in self.sources() if s.zone_id != source.zone_id]
        label = text("Act", "{zone}: temperature source").format(zone=zone)
        return self._keep_sources([*others, source], label)

    def remove_source(self, zone_id: int) -> ChangeSet:
        """Let a zone's temperatures be typed again; what was kept stays.

        Raises
        ------
        InputError
            If there is no such zone, or it has no source.
        """
        zone = self._zone_name(zone_id)
        sources = self.sources()
        others = [s for s in sources if s.zone_id != zone_id]
        if len(others) == len(sources):
            raise InputError(text("Act", "a zone with a source"), text("Act", "none"), zone)
        label = text("Act", "{zone}: no temperature source").format(zone=zone)
        return self._keep_sources(others, label)

    def _keep_sources(self, sources: list[FeedSource], label: Text) -> ChangeSet:
        with self._store.write(label, self._clock.now(), self.by) as act:
            act.set_setting(FEEDS, [s.row() for s in sorted(sources, key=lambda s: s.zone_id)])
        return act.changes

    def _zone_name(self, zone_id: int) -> str:
        for zone in self._store.shop.zones():
            if zone.id == zone_id:
                return zone.name
        raise InputError(text("Act", "a zone of the shop"), str(zone_id), text("Act", "zone"))

    # What comes

    @property
    def troubles(self) -> tuple[Trouble, ...]:
        """What is wrong with the sources now, the oldest first."""
        found = list(self._unusable.values())
        for zone_id, line in self._lines.items():
            found += [Trouble(zone_id, f.said, f.since_us, f.kind) for f in line.faults]
        return tuple(sorted(found, key=lambda trouble: trouble.since_us))

    def last(self, zone_id: int) -> Sample | None:
        """Return the newest temperature that a zone's source has given since the start."""
        line = self._lines.get(zone_id)
        return None if line is None else line.last

    def step(self) -> ChangeSet | None:
        """Ask every source that is due; return what was written, None if nothing was.

        Raises
        ------
        StoreError
            If it can't be written; it is tried again at the next step.
        """
        now = self._clock.now()
        self._follow(now)
        for line in self._lines.values():
            if line.is_due(now):
                self._poll(line, now)
        if not any(line.unwritten or self._news(line) for line in self._lines.values()):
            return None
        with self._store.write(text("Act", "temperatures"), now) as act:
            for zone_id, line in self._lines.items():
                self._write(act, zone_id, line)
            act.forbid_undo()
        for zone_id, line in self._lines.items():
            for fault in self._news(line):
                self._said[(zone_id, fault.kind)] = fault.until_us or now
            line.unwritten, line.ended = [], []
        return act.changes if act.changes.tables else None

    def _follow(self, now: Instant) -> None:
        """Open and drop feeds as the settings say; undo changes them too."""
        rows = self._store.shop.setting(FEEDS, [])
        zones = {zone.id for zone in self._store.shop.zones()}
        if rows == self._rows and self._lines.keys() | self._unusable.keys() <= zones:
            return
        self._rows = rows
        before, self._lines, self._unusable = self._lines, {}, {}
        for source in self.sources():
            zone_id = source.zone_id
            if zone_id not in zones:
                continue
            if zone_id in before and before[zone_id].source == source:
                self._lines[zone_id] = before[zone_id]
                continue
            try:
                feed = self.open_feed(source, self._start(source, now))
            except RackboardError as error:
                said = text("Feed", "it can't be used: {reason}").format(reason=error.message)
                self._unusable[zone_id] = Trouble(zone_id, said, now, FaultKind.UNREADABLE)
                continue
            self._lines[zone_id] = _Line(source, feed)

    def _start(self, source: FeedSource, now: Instant) -> Start:
        """Return where a source is taken up again."""
        record = self._store.record
        reading = record.reading_before(source.zone_id, now)
        for _ in range(_MOST_TYPED):
            if reading is None or reading.source is Source.FEED:
                break
            reading = record.reading_before(source.zone_id, reading.at_us - 1)
        if reading is None or reading.source is not Source.FEED:
            return Start(source.from_us, (), now)
        rows = record.readings(source.zone_id, reading.at_us - RECENT_US, reading.at_us)
        recent = tuple(Sample(row[0], row[1]) for row in rows if row[3] == Source.FEED)
        return Start(max(source.from_us, reading.at_us), recent, now)

    def _poll(self, line: _Line, now: Instant) -> None:
        try:
            polled = line.feed.poll(now)
        except (RackboardError, OSError) as error:
            said = text("Feed", "it can't be read: {reason}").format(reason=str(error))
            since = next((f.since_us for f in line.faults if f.kind is FaultKind.MISSING), now)
            polled = Polled((), (Fault(FaultKind.MISSING, said, since),))
        line.polled_us, line.again = now, polled.again
        line.unwritten += polled.samples
        line.faults = tuple(f for f in polled.faults if f.until_us is None)
        line.ended += [f for f in polled.faults if f.until_us is not None]
        newest = max(polled.samples, default=None)
        if newest is not None and (line.last is None or newest.at_us >= line.last.at_us):
            line.last = newest

    def _news(self, line: _Line) -> list[Fault]:
        """Return the faults that the journal doesn't know of yet."""
        return [fault for fault in (*line.ended, *line.faults) if self._is_news(line, fault)]

    def _is_news(self, line: _Line, fault: Fault) -> bool:
        said = self._said.get((line.source.zone_id, fault.kind))
        return said is None or fault.since_us > said + SAID_AGAIN_US

    def _write(self, act: Transaction, zone_id: int, line: _Line) -> None:
        rows: list[ReadingRow] = [
            (at, mc, RACK_U_MC, Source.FEED) for at, mc in line.unwritten
        ]
        if rows:
            act.add_readings(zone_id, rows)
        for fault in self._news(line):
            data = {"fault": fault.kind.value, "said": str(fault.said)}
            act.add_event("feed fault", "zone", zone_id, data, at_us=fault.since_us)


def proposal_mc(store: Store, zone_id: int, question: NightQuestion) -> int | None:
    """Return what can be proposed as the lowest of a stretch without a record [m°C].

    The lower of the readings at its ends, and no more than the zone falls to at night where
    that is known.

    Parameters
    ----------
    store : Store
        The data file.
    zone_id : int
        The zone that is asked about.
    question : NightQuestion
        The stretch.
    """
    before = store.record.reading_before(zone_id, question.from_us + 1)
    after = store.record.reading_after(zone_id, question.from_us)
    lows = [reading.temperature_mc for reading in (before, after) if reading is not None]
    zone = next((zone for zone in store.shop.zones() if zone.id == zone_id), None)
    if zone is not None and zone.heating is not None:
        lows.append(zone.heating.setback_mc)
    return min(lows, default=None)
