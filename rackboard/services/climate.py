"""The temperature records of the zones, read once and then only prolonged."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator
from itertools import pairwise

from rackboard.core.bench import Reading, Source
from rackboard.core.cure.record import (
    Air,
    Low,
    Point,
    Stretch,
    before_first,
    between,
    clip,
    left_behind,
    outlook,
    unknown_since,
)
from rackboard.core.instants import DAY_US, Instant
from rackboard.services.snapshot import Snapshot
from rackboard.store import Store
from rackboard.store.changes import ChangeSet

_BEFORE_US = 3 * DAY_US  # a night or gap that began before the oldest glue still at work
_FOREVER = 1 << 62


class ZoneRecord:
    """One zone's readings and the stretches that they settle.

    `revision` changes whenever anything but a reading at the end has changed; what was
    reckoned from an older revision has to be reckoned anew.
    """

    __slots__ = ("_starts", "air", "points", "revision", "stretches")

    def __init__(self, points: list[Point], air: Air, revision: int) -> None:
        self.air = air
        self.points = points
        self.revision = revision
        self.stretches: list[Stretch] = []
        for left, right in pairwise(points):
            self.stretches += between(left, right, air)
        self._starts = [stretch.start_us for stretch in self.stretches]

    @property
    def last(self) -> Point | None:
        """The last reading."""
        return self.points[-1] if self.points else None

    def append(self, point: Point) -> None:
        """Add a reading after the last one."""
        if self.points:
            new = between(self.points[-1], point, self.air)
            self.stretches += new
            self._starts += [stretch.start_us for stretch in new]
        self.points.append(point)

    def settled(self, start: Instant, end: Instant) -> Iterator[Stretch]:
        """Yield what stored readings settle between two instants, in order."""
        if not self.points or end <= start:
            return
        first = self.points[0]
        if start < first.at_us:
            part = clip(before_first(start, first, self.air), start, end)
            if part:
                yield part
        index = max(bisect_right(self._starts, start) - 1, 0)
        for i in range(index, len(self.stretches)):
            stretch = self.stretches[i]
            if stretch.start_us >= end:
                return
            part = clip(stretch, start, end)
            if part:
                yield part

    def ahead(self, start: Instant, end: Instant) -> Iterator[Stretch]:
        """Yield what is reckoned with from an instant after the last reading on."""
        if self.last is None:
            return
        for stretch in outlook(self.last, self.air, end):
            part = clip(stretch, start, end)
            if part:
                yield part

    def left(self, start: Instant, end: Instant) -> Iterator[Stretch]:
        """Yield what lies after the last reading for a club that left the zone at `end`."""
        if self.last is None:
            return
        for stretch in left_behind(self.last, end, self.air):
            part = clip(stretch, start, end)
            if part:
                yield part

    def unknown_since(self, now: Instant) -> Instant | None:
        """Return since when nobody knows how cold it is, where that matters."""
        return None if self.last is None else unknown_since(self.last, self.air, now)

    def first_gap(self, start: Instant) -> tuple[Instant, Instant] | None:
        """Return the open gap between an instant and the first reading of all, if there is one."""
        if not self.points or self.points[0].at_us <= start:
            return None
        stretch = before_first(start, self.points[0], self.air)
        return (stretch.start_us, stretch.end_us) if stretch.gap else None

    def is_cold(self, limit_k: float) -> bool:
        """Return whether the air is below a limit by its uncertainty, with 1 °C to come back.

        On below `limit + u`, off at `limit + u + 1 °C`.
        """
        cold = False
        for point in self.points[-50:]:
            above = point.kelvin - point.u_k - limit_k
            if above < 0:
                cold = True
            elif above >= 1.0:
                cold = False
        return cold


class Climate:
    """All zones' records, from the oldest glue at work until now.

    Parameters
    ----------
    store : Store
        Where the readings are.
    """

    __slots__ = ("_from_us", "_records", "_revision", "_store")

    def __init__(self, store: Store) -> None:
        self._store = store
        self._records: dict[int, ZoneRecord] = {}
        self._from_us: dict[int, Instant] = {}
        self._revision = 0

    def record(self, zone_id: int, snapshot: Snapshot, from_us: Instant) -> ZoneRecord:
        """Return a zone's record, reaching back at least to an instant."""
        present = self._records.get(zone_id)
        if present is not None and self._from_us[zone_id] <= from_us:
            return present
        start = from_us - _BEFORE_US
        rows = self._store.record.readings(zone_id, start, _FOREVER)
        points = [Point(at, mc, u, Source(source)) for at, mc, u, source in rows]
        earlier = self._store.record.reading_before(zone_id, start)
        if earlier is not None:
            points.insert(0, _point(earlier))
        bridges = self._store.record.bridges(zone_id, start)
        bridges.sort(key=lambda bridge: (bridge.said_us, bridge.id))
        lows = tuple(Low(b.from_us, b.to_us, b.low_mc, b.u_mc) for b in bridges)
        air = Air(snapshot.hours, snapshot.zones[zone_id].heating, lows)
        self._revision += 1
        self._records[zone_id] = ZoneRecord(points, air, self._revision)
        self._from_us[zone_id] = from_us
        return self._records[zone_id]

    def take_in(self, changes: ChangeSet) -> None:
        """Prolong records by what was added at their ends; forget those changed otherwise."""
        if changes.tables & {"bridge", "zone", "setting"}:
            self._records.clear()
            return
        for span in changes.readings:
            record = self._records.get(span.zone_id)
            if record is None:
                continue
            if record.last is not None and span.from_us > record.last.at_us:
                for at, mc, u, source in self._store.record.readings(
                    span.zone_id, span.from_us, span.to_us
                ):
                    record.append(Point(at, mc, u, Source(source)))
            else:
                del self._records[span.zone_id]


def _point(reading: Reading) -> Point:
    return Point(reading.at_us, reading.temperature_mc, reading.u_mc, reading.source)
