"""The running states of all joints at work: a tick integrates only what is new.

Joints that share mixing, gluing, lag and way through the zones share one state; what
identifies it is a plain value, so a corrected fact simply asks for another state.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Generic, NamedTuple

from rackboard.core.bench import Batch, Joint, Parts, Place, PlaceKind, Stay
from rackboard.core.cure.calibration import CureModel, calibrate
from rackboard.core.cure.forecast import complete, earlier, life_bounds, milestones
from rackboard.core.cure.kinetics import kelvin
from rackboard.core.cure.profile import Profile, Sample, sample
from rackboard.core.cure.record import Stretch
from rackboard.core.cure.run import HORIZON_US, Bond, Curves, Life, Run
from rackboard.core.epoxy import Sheet
from rackboard.core.instants import Instant
from rackboard.core.standing import Outcome
from rackboard.services.climate import Climate, ZoneRecord
from rackboard.services.snapshot import Snapshot

COLD_PARTS_U_K = 3.0
"""Uncertainty of the temperature of parts brought in cold [K, decision]."""


class Window(NamedTuple):
    """A stay in a zone's air, from … to (None: still there)."""

    zone_id: int
    from_us: Instant
    to_us: Instant | None


class Way(NamedTuple):
    """All that a joint's cure depends on beside the records: the key of its state.

    `glued` is the index of the window with which it is glued; `parts_k` None: as the air.
    """

    sheet: Sheet
    mixed_us: Instant
    lag_s: float
    parts_k: float | None
    glued: int
    windows: tuple[Window, ...]


def way_of(
    joint: Joint, batch: Batch, stays: list[Stay], places: dict[int, Place]
) -> Way | None:
    """Return the way of a joint through the zones; None before it is mixed.

    Parameters
    ----------
    joint, batch : Joint, Batch
        What was glued with what.
    stays : list of Stay
        All stays of the club, in order.
    places : dict
        By id.
    """
    if batch.mixed_us is None:
        return None
    glued = batch.mixed_us if joint.glued_us is None else max(joint.glued_us, batch.mixed_us)
    windows = []
    if glued > batch.mixed_us:
        windows.append(Window(batch.zone_id, batch.mixed_us, glued))
    first = len(windows)
    for stay in stays:
        zone_id = places[stay.place_id].zone_id
        if zone_id is None or places[stay.place_id].kind is PlaceKind.OUT:
            continue
        start = max(stay.from_us, glued)
        if stay.to_us is not None and stay.to_us <= start:
            continue
        if len(windows) > first and windows[-1].zone_id == zone_id:
            before = windows.pop()
            if before.to_us == start:
                start = before.from_us
            else:
                windows.append(before)
        elif len(windows) == first:
            start = glued  # laid out elsewhere, or racked after gluing: it was in this air
        windows.append(Window(zone_id, start, stay.to_us))
    if len(windows) == first:
        windows.append(Window(batch.zone_id, glued, glued if stays else None))
    parts = None if joint.parts is Parts.SHOP or joint.parts_mc is None else kelvin(
        joint.parts_mc / 1000)  # fmt: skip
    return Way(batch.sheet, batch.mixed_us, float(joint.lag_s), parts, first, tuple(windows))


class Follower(Generic[Curves]):
    """A run on its way through windows: how far the stored readings have taken it."""

    __slots__ = ("_glued", "_index", "_lag_s", "_parts_k", "_passed", "run", "windows")

    def __init__(self, run: Run[Curves], way: Way, windows: tuple[Window, ...]) -> None:
        self.run = run
        self.windows = windows
        self._index = 0
        self._glued = way.glued
        self._lag_s = way.lag_s
        self._parts_k = way.parts_k
        self._passed: list[tuple[int, int]] = []
        if self._glued == 0:
            self._glue(run)

    def stale(self, records: dict[int, ZoneRecord]) -> bool:
        """Return whether a zone that was left behind has got a reading since."""
        return any(len(records[zone].points) != count for zone, count in self._passed)

    def follow(self, records: dict[int, ZoneRecord]) -> None:
        """Advance the run over all that stored readings settle."""
        while not self.run.done:
            window = self.windows[self._index]
            record = records[window.zone_id]
            end = self._end(window)
            for stretch in record.settled(self.run.now_us, end):
                self.run.advance(stretch)
            if window.to_us is None or self._index + 1 == len(self.windows):
                return
            if self.run.now_us < window.to_us:
                after = records[self.windows[self._index + 1].zone_id].last
                if after is None or after.at_us < window.to_us or record.last is None:
                    return
                self._passed.append((window.zone_id, len(record.points)))
                for stretch in record.left(self.run.now_us, window.to_us):
                    self.run.advance(stretch)
            self._index += 1
            self._enter(self.run, self._index)

    def ahead(self, records: dict[int, ZoneRecord]) -> Run[Curves]:
        """Return a copy of the run, completed by what is reckoned with."""
        run = self.run.copy()
        for index in range(self._index, len(self.windows)):
            window = self.windows[index]
            record = records[window.zone_id]
            end = self._end(window)
            if index > self._index:
                self._enter(run, index)
                complete(run, record.settled(run.now_us, end))
            complete(run, record.ahead(run.now_us, end))
            if record.last is None and run.gap_us is None:
                run.gap_us = run.now_us
        return run

    def outlook(self, records: dict[int, ZoneRecord], start: Instant) -> Iterator[Stretch]:
        """Yield what is reckoned with if the joint stays where it is."""
        window = self.windows[-1]
        yield from records[window.zone_id].ahead(start, self._end(window))

    def all_stretches(
        self, records: dict[int, ZoneRecord], end_us: Instant
    ) -> Iterator[Stretch]:
        """Yield the air from the run's own time to an instant, gluing on the way.

        The run is to be advanced over each stretch before the next is asked for.
        """
        for index, window in enumerate(self.windows):
            if index:
                self._enter(self.run, index)
            record = records[window.zone_id]
            end = end_us if window.to_us is None else min(window.to_us, end_us)
            yield from record.settled(self.run.now_us, end)
            if self.run.now_us < end:
                left = record.ahead if window.to_us is None else record.left
                yield from left(self.run.now_us, end)

    def _end(self, window: Window) -> Instant:
        horizon = self.run.mixed_us + HORIZON_US
        return horizon if window.to_us is None else window.to_us

    def _enter(self, run: Run[Curves], index: int) -> None:
        """Come into a window; what lies between it and the one before earns nothing."""
        window = self.windows[index]
        if run.now_us < window.from_us:  # it was out of the shop, where nobody knows the air
            run.now_us, run.temps_k = window.from_us, None
        if index == self._glued:
            self._glue(run)

    def _glue(self, run: Run[Curves]) -> None:
        parts, u = self._parts_k, COLD_PARTS_U_K
        run.glue(None if parts is None else (parts, parts - u, parts + u), self._lag_s)


class State:
    """One way's running states, and what they last came to."""

    __slots__ = ("_counts", "_joint", "_life", "model", "outcome", "revisions", "way")

    def __init__(self, way: Way, batch_zone: int, model: CureModel, records: dict[int, ZoneRecord]):
        self.way = way
        self.model = model
        self._joint = Follower(Run(Bond(model), way.mixed_us), way, way.windows)
        # The batch in its cup follows the air of its zone.
        cup = (Window(batch_zone, way.mixed_us, None),)
        self._life = Follower(
            Run(Life(model), way.mixed_us), way._replace(lag_s=0.0, parts_k=None, glued=-1), cup
        )
        self.revisions = {zone: record.revision for zone, record in records.items()}
        self._counts: dict[int, int] = {}
        self.outcome: Outcome | None = None

    def fits(self, records: dict[int, ZoneRecord]) -> bool:
        """Return whether the state may be prolonged."""
        return all(
            record.revision == self.revisions.get(zone) for zone, record in records.items()
        ) and not self._joint.stale(records)

    def settle(self, records: dict[int, ZoneRecord]) -> None:
        """Take in new readings and look ahead again, if there are any."""
        counts = {zone: len(record.points) for zone, record in records.items()}
        if counts == self._counts and self.outcome is not None:
            return
        self._counts = counts
        self._joint.follow(records)
        self._life.follow(records)
        run = self._joint.ahead(records)
        forecast = milestones(run)
        cup = life_bounds(self._life.ahead(records).curves, self.way.mixed_us)
        use_by = earlier(cup.early, forecast.working_life.early)
        if not any(record.points for record in records.values()):
            forecast = forecast._replace(gap_us=self.way.mixed_us)
        self.outcome = Outcome(forecast, use_by, self._joint.run.now_us, None)

    @property
    def run(self) -> Run[Bond]:
        """The joint's curves as far as the record goes."""
        return self._joint.run

    def outlook(self, records: dict[int, ZoneRecord], start: Instant) -> Iterator[Stretch]:
        """Yield what is reckoned with if the joint stays where it is."""
        return self._joint.outlook(records, start)


class Curing:
    """Follows every joint at work.

    Parameters
    ----------
    climate : Climate
        The zones' records.
    """

    __slots__ = ("_climate", "_states")

    def __init__(self, climate: Climate) -> None:
        self._climate = climate
        self._states: dict[tuple[Way, int], State] = {}

    def records(self, way: Way, batch_zone: int, snapshot: Snapshot) -> dict[int, ZoneRecord]:
        """Return the records that a way leads through."""
        zones = {batch_zone} | {window.zone_id for window in way.windows}
        return {zone: self._climate.record(zone, snapshot, way.mixed_us) for zone in zones}

    def state(self, way: Way, batch_zone: int, snapshot: Snapshot) -> State:
        """Return the state of a way, up to date with the record."""
        records = self.records(way, batch_zone, snapshot)
        key = (way, batch_zone)
        state = self._states.get(key)
        if state is None or not state.fits(records):
            state = State(way, batch_zone, calibrate(way.sheet), records)
            self._states[key] = state
        state.settle(records)
        return state

    def forget(self, keep: set[tuple[Way, int]]) -> None:
        """Drop the states of joints that are no longer at work."""
        for key in self._states.keys() - keep:
            del self._states[key]


def trace(
    way: Way, model: CureModel, records: dict[int, ZoneRecord], every_us: int, end_us: Instant
) -> tuple[list[Sample], list[Stretch]]:
    """Return a joint's curve from mixing to an instant, and the air that it is made from.

    Parameters
    ----------
    way : Way
        Of the joint.
    model : CureModel
        Of its sheet.
    records : dict
        The zones' records.
    every_us : int
        Distance of the samples [µs].
    end_us : int
        Where to stop [µs UTC].
    """
    run = Run(Profile(model), way.mixed_us)
    follower = Follower(run, way, way.windows)
    air: list[Stretch] = []

    def kept() -> Iterator[Stretch]:
        for stretch in follower.all_stretches(records, end_us):
            air.append(stretch)
            yield stretch

    return sample(run, kept(), every_us, end_us), air
