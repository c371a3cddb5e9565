"""The board's heart: what every joint may bear now, and the permissions that follow.

A tick is a function of what is stored and of now. What it finds due is written first, and
only then told to anybody.
"""

from __future__ import annotations

from collections import defaultdict
from datetime import tzinfo

from rackboard.core.bench import Grant, Milestone, Stay
from rackboard.core.cure.forecast import printed_time
from rackboard.core.cure.kinetics import kelvin
from rackboard.core.cure.permission import is_earned, is_void
from rackboard.core.cure.remedy import Remedy, warm_remedy
from rackboard.core.instants import MINUTE_US, SECOND_US, Clock, Instant
from rackboard.core.standing import Outcome, Standing, stand
from rackboard.services.agenda import JobStanding, NightQuestion, job_standings, night_questions
from rackboard.services.climate import Climate, ZoneRecord
from rackboard.services.curing import Curing, State, Way, way_of
from rackboard.services.snapshot import Snapshot
from rackboard.store import Store
from rackboard.store.changes import ChangeSet

REFRESH_US = MINUTE_US
"""Marks that creep along (the way to hard) are set anew at most this often."""
STALE_US = 30 * SECOND_US
"""Without a tick for so long the board says that it isn't updating [decision]."""


class Board:
    """What the bench sees.

    Parameters
    ----------
    store : Store
        The data file.
    clock : Clock
        The time.
    zone : tzinfo
        The shop's time zone.

    Attributes
    ----------
    snapshot : Snapshot
        The work at hand.
    standings : list of Standing
        Every joint that has not ended, in the order of its job.
    """

    def __init__(self, store: Store, clock: Clock, zone: tzinfo) -> None:
        self._store = store
        self._clock = clock
        self._zone = zone
        self._climate = Climate(store)
        self._curing = Curing(self._climate)
        self._ways: dict[int, Way] = {}
        self._reckoned = False
        self._dirty = True
        self._wake_us: Instant = 0
        self.snapshot = Snapshot(store, zone)
        self.standings: list[Standing] = []
        self.ticked_us: Instant = clock.now()
        self._stand(self.ticked_us)

    @property
    def reckoned(self) -> bool:
        """Whether the forecasts are worked out yet; the first picture doesn't wait for them."""
        return self._reckoned

    def take_in(self, changes: ChangeSet) -> None:
        """Take in what an act has changed; the next tick reckons with it."""
        if not changes and not changes.readings:
            return
        self._climate.take_in(changes)
        if changes.tables - {"reading", "event", "former", "notice"}:
            self.snapshot = Snapshot(self._store, self._zone)
            self._ways.clear()
        self._dirty = True

    def tick(self) -> ChangeSet | None:
        """Bring everything up to now; return what was written, None if nothing has changed.

        An empty change set says that something has to be shown anew though nothing was
        written.
        """
        now = self._clock.now()
        back = now < self.ticked_us - MINUTE_US
        self.ticked_us = now
        if not self._dirty and now < self._wake_us and not back:
            return None
        self._dirty = False
        self._reckoned = True
        self._stand(now)
        changes = self._grant(now)
        if changes is not None:
            self.take_in(changes)
            self._dirty = False
            self._stand(now)
        self._wake_us = self._next_us(now)
        return changes if changes is not None else ChangeSet()

    def is_stale(self, now: Instant) -> bool:
        """Return whether the board hasn't been updated for too long."""
        return now - self.ticked_us > STALE_US

    def records(self) -> dict[int, ZoneRecord]:
        """Return the record of every zone, as far back as anything at work needs it."""
        oldest = self._oldest_us()
        return {z: self._climate.record(z, self.snapshot, oldest) for z in self.snapshot.zones}

    def jobs(self) -> list[JobStanding]:
        """Return all jobs at work."""
        return job_standings(self.snapshot, self.standings)

    def questions(self) -> list[NightQuestion]:
        """Return what should be asked about the nights."""
        if not self._reckoned:
            return []
        return night_questions(self.snapshot, self.records(), self.standings, self.ticked_us)

    def state_of(self, standing: Standing) -> tuple[State, dict[int, ZoneRecord]] | None:
        """Return a joint's curves and the records they follow; None before it is mixed."""
        way = self._way(standing)
        if way is None:
            return None
        state = self._curing.state(way, standing.batch.zone_id, self.snapshot)
        return state, self._curing.records(way, standing.batch.zone_id, self.snapshot)

    def way_of(self, standing: Standing) -> Way | None:
        """Return a joint's way through the zones."""
        return self._way(standing)

    def remedy(self, standing: Standing, temperature_c: float) -> Remedy | None:
        """Return what some hours in warm air would bring, from the next full five minutes on."""
        found = self.state_of(standing)
        if found is None or standing.milestone is None:
            return None
        state, records = found
        start = max(printed_time(self.ticked_us), state.run.now_us)
        warm = min(temperature_c, state.model.sheet.maximum_c)
        return warm_remedy(state.run, lambda t: state.outlook(records, t), start, warm)

    def _oldest_us(self) -> Instant:
        mixed = [b.mixed_us for b in self.snapshot.batches.values() if b.mixed_us is not None]
        unfinished = [
            s.batch.mixed_us for s in self.standings if s.milestone and s.batch.mixed_us is not None
        ]
        return min(unfinished or mixed[:0] or [self.ticked_us])

    def _way(self, standing: Standing) -> Way | None:
        if standing.joint.id not in self._ways:
            self._find_ways()
        return self._ways.get(standing.joint.id)

    def _find_ways(self) -> None:
        snapshot = self.snapshot
        stays: dict[int, list[Stay]] = defaultdict(list)
        for stay in self._store.work.stays(snapshot.clubs):
            stays[stay.club_id].append(stay)
        for joint in snapshot.joints.values():
            if joint.ended_us is not None or joint.batch_id is None:
                continue
            batch = snapshot.batches[joint.batch_id]
            way = way_of(joint, batch, stays[joint.club_id], snapshot.places)
            if way is not None:
                self._ways[joint.id] = way

    def _outcomes(self, now: Instant) -> dict[int, Outcome]:
        """Return what every mixed joint's way comes to; those cured for good are left out."""
        snapshot = self.snapshot
        if not self._ways:
            self._find_ways()
        shared: dict[tuple[Way, int], Outcome] = {}
        unknown: dict[int, Instant | None] = {}
        result: dict[int, Outcome] = {}
        seen: dict[int, Outcome] = {}
        for joint_id, way in self._ways.items():
            outcome = seen.get(id(way))
            if outcome is None:
                joint = snapshot.joints[joint_id]
                assert joint.batch_id is not None
                zone = snapshot.batches[joint.batch_id].zone_id
                key = (way, zone)
                outcome = shared.get(key)
                if outcome is None:
                    state = self._curing.state(way, zone, snapshot)
                    assert state.outcome is not None
                    last = way.windows[-1]
                    if last.to_us is None and last.zone_id not in unknown:
                        record = self._climate.record(last.zone_id, snapshot, way.mixed_us)
                        unknown[last.zone_id] = record.unknown_since(now)
                    since = unknown.get(last.zone_id) if last.to_us is None else None
                    outcome = state.outcome._replace(unknown_us=since)
                    shared[key] = outcome
                seen[id(way)] = outcome
            result[joint_id] = outcome
        self._curing.forget(set(shared))
        return result

    def _stand(self, now: Instant) -> None:
        snapshot = self.snapshot
        outcomes = self._outcomes(now) if self._reckoned else {}
        cold: dict[tuple[int, float], bool] = {}
        standings = []
        for joint in snapshot.joints.values():
            if joint.ended_us is not None or joint.batch_id is None:
                continue
            club = snapshot.clubs[joint.club_id]
            batch = snapshot.batches[joint.batch_id]
            stay = snapshot.stays.get(club.id)
            standings.append(
                stand(
                    joint, club, snapshot.jobs[club.job_id], batch, stay,
                    grants=snapshot.grants.get(joint.id, {}), hold=snapshot.holds.get(joint.id),
                    outcome=outcomes.get(joint.id), now=now,
                    cold=self._reckoned and self._is_cold(stay, batch.sheet.minimum_c, cold),
                )
            )  # fmt: skip
        self.standings = standings

    def _is_cold(
        self, stay: Stay | None, minimum_c: float, known: dict[tuple[int, float], bool]
    ) -> bool:
        zone_id = None if stay is None else self.snapshot.places[stay.place_id].zone_id
        if zone_id is None:
            return False
        key = (zone_id, minimum_c)
        if key not in known:
            record = self._climate.record(zone_id, self.snapshot, self.ticked_us)
            known[key] = record.is_cold(kelvin(minimum_c))
        return known[key]

    def _grant(self, now: Instant) -> ChangeSet | None:
        """Write the permissions that are earned, and take back those that new facts void."""
        earned: list[tuple[Standing, Milestone, Instant]] = []
        void: list[tuple[Standing, Grant, Instant | None]] = []
        for standing in self.standings:
            outcome = standing.outcome
            if outcome is None:
                continue
            forecast = outcome.forecast
            given = self.snapshot.grants.get(standing.joint.id, {})
            for milestone, bounds in (
                (Milestone.HANDLING, forecast.handling), (Milestone.FULL_CURE, forecast.full_cure)
            ):  # fmt: skip
                late = None if bounds is None else bounds.late
                grant = given.get(milestone)
                if grant is None:
                    if late is not None and is_earned(
                        late, outcome.record_end_us, forecast.gap_us, now
                    ):
                        earned.append((standing, milestone, late))
                elif grant.late_us != late and is_void(late, now):
                    void.append((standing, grant, late))
        if not earned and not void:
            return None
        with self._store.write("permissions", now) as act:
            for standing, milestone, late in earned:
                act.add(
                    Grant(0, standing.joint.id, milestone, late, printed_time(late), now)
                )
                act.add_event(
                    "may come off the rack" if milestone is Milestone.HANDLING else "safe to hit",
                    "joint", standing.joint.id, at_us=printed_time(late),
                )  # fmt: skip
            for standing, grant, late_now in void:
                act.update("permission_grant", grant.id, withdrawn_us=now, reason="new facts")
                act.add_event(
                    "permission withdrawn", "joint", standing.joint.id,
                    data={"milestone": str(grant.milestone), "was_us": grant.printed_us,
                          "late_us": late_now},
                )  # fmt: skip
        return act.changes

    def _next_us(self, now: Instant) -> Instant:
        """Return when something changes by the mere passing of time."""
        times = [now + REFRESH_US]
        for standing in self.standings:
            times += [t for t in (standing.use_by_us, standing.not_before_us) if t and t > now]
        hours = self.snapshot.hours
        times += [t for t in (hours.next_opening(now), hours.next_closing(now)) if t and t > now]
        return min(times)

