"""The board's heart: what every joint may bear now, and the permissions that follow.

A tick is a function of what is stored and of now. What it finds due is written first, and
only then told to anybody.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from datetime import tzinfo
from typing import NamedTuple

from rackboard.core.bench import Grant, Joint, Milestone, Stay
from rackboard.core.cure.forecast import printed_time
from rackboard.core.cure.kinetics import kelvin
from rackboard.core.cure.permission import is_earned, is_void
from rackboard.core.cure.record import GAP_US
from rackboard.core.cure.remedy import Remedy, warm_remedy
from rackboard.core.cure.run import HORIZON_US
from rackboard.core.instants import MINUTE_US, SECOND_US, Clock, Instant
from rackboard.core.standing import Outcome, Standing, stand
from rackboard.services.agenda import JobStanding, NightQuestion, job_standings, night_questions
from rackboard.services.climate import Climate, ZoneRecord
from rackboard.services.curing import Curing, State, Way, way_of
from rackboard.services.snapshot import WEEK, Snapshot
from rackboard.store import Store
from rackboard.store.changes import ChangeSet

REFRESH_US = MINUTE_US
"""Marks that creep along (the way to hard) are set anew at most this often."""
_FORETOLD_KEPT = 2000
_FRESH_US = 10 * MINUTE_US
_JOURNALS = frozenset({"reading", "event", "former", "alert", "telling"})
_NEVER_US: Instant = 1 << 62
STALE_US = 30 * SECOND_US
"""Without a tick for so long the board says that it isn't updating [decision]."""


class Touched(NamedTuple):
    """What changed facts reach back to: readings from an instant on, batches, joints, clubs.

    `clubs` maps a club to the earliest instant [µs UTC] at which it lay elsewhere than noted.
    """

    since_us: Instant = _NEVER_US
    batches: frozenset[int] = frozenset()
    joints: frozenset[int] = frozenset()
    clubs: tuple[tuple[int, Instant], ...] = ()

    def reaches(self, joint: Joint, grant: Grant) -> bool:
        """Return whether a permission may hang on what has changed.

        A reading past its late bound still shapes the line that leads up to it.
        """
        late_us = grant.late_us
        return (
            self.since_us <= max(late_us, min(grant.given_us, late_us + GAP_US))
            or joint.batch_id in self.batches
            or joint.id in self.joints
            or any(club == joint.club_id and at <= late_us for club, at in self.clubs)
        )

    def and_by(self, changes: ChangeSet) -> Touched:
        """Return what this and a change set touch together."""
        since = min([self.since_us, *(span.from_us for span in changes.readings)])
        batches, joints, clubs = set(self.batches), set(self.joints), list(self.clubs)
        for change in changes:
            images = [image for image in (change.before, change.after) if image is not None]
            if change.table == "batch":
                batches.add(change.key[0])
            elif change.table == "joint":
                joints.add(change.key[0])
            elif change.table == "bridge":
                since = min([since, *(image["from_us"] for image in images)])
            elif change.table in ("zone", "place") or change.key == (WEEK,):
                since = 0
            elif change.table == "stay":
                ends = [image["to_us"] for image in images if image["to_us"] is not None]
                moved = ends if len(images) == 2 and ends else [images[0]["from_us"]]
                clubs.append((images[0]["club_id"], min(moved)))
        return Touched(since, frozenset(batches), frozenset(joints), tuple(clubs))


class Foretold(NamedTuple):
    """The printed times that were said when a joint was racked [µs UTC]."""

    handling_us: Instant | None
    full_us: Instant | None


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
        self.stale_us = STALE_US  # a clock that runs fast is given more of its own time
        self._dirty = True
        self._wake_us: Instant = 0
        self._foretold: dict[int, Foretold] | None = None
        # Whatever an act of the last run may have left unsaid is looked at once.
        self._touched = Touched(since_us=clock.now() - HORIZON_US)
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
        self._touched = self._touched.and_by(changes)
        if changes.tables - _JOURNALS:
            self._load()
        self._dirty = True

    def bring_in(self, joint_ids: Iterable[int]) -> None:
        """Load joints of jobs that have left the shop, until the next act."""
        self._load(self._store.work.jobs_permitted((), joint_ids, None, standing=False))
        self._stand(self.ticked_us)

    def _load(self, also: Iterable[int] = ()) -> None:
        self.snapshot = Snapshot(self._store, self._zone, also)
        self._ways.clear()

    def _gone_touched(self, now: Instant) -> set[int]:
        """Return jobs that have left the shop and whose permissions changed facts may void.

        A feed's newest readings reach back to nothing that has left already.
        """
        touched = self._touched
        since = touched.since_us - GAP_US if touched.since_us < now - _FRESH_US else None
        if since is None and not touched.batches and not touched.joints:
            return set()
        permitted = self._store.work.jobs_permitted(touched.batches, touched.joints, since)
        return permitted - set(self.snapshot.jobs)

    def tick(self) -> ChangeSet | None:
        """Bring everything up to now; return what was written, None if nothing has changed.

        An empty change set says that something has to be shown anew though nothing was
        written.
        """
        now = self._clock.now()
        back = now < self.ticked_us - MINUTE_US
        if not self._dirty and now < self._wake_us and not back:
            self.ticked_us = now
            return None
        self._dirty = True  # until it is written down: a full disk must not swallow a withdrawal
        self._reckoned = True
        gone = self._gone_touched(now)
        if gone:
            self._load(gone)
        self._stand(now)
        changes = self._write_down(now)
        self._touched = Touched()
        if changes is not None:
            self.take_in(changes)
        if gone:
            self._load()
        if changes is not None or gone:
            self._stand(now)
        self._dirty = False
        self._wake_us = self._next_us(now)
        self.ticked_us = now  # a tick that couldn't be written down is none: STALE must show
        return changes if changes is not None else ChangeSet()

    def is_stale(self, now: Instant) -> bool:
        """Return whether the board hasn't been updated for too long."""
        return now - self.ticked_us > self.stale_us

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
        if not self._ways:
            self._find_ways()
        windows = {joint_id: way.windows for joint_id, way in self._ways.items()}
        return night_questions(
            self.snapshot, self.records(), self.standings, windows, self.ticked_us
        )

    def foretold(
        self, standing: Standing, milestone: Milestone | None = None
    ) -> Instant | None:
        """Return the printed time of a permission, the next one, as it was said at glue-up."""
        said = (self._foretold or {}).get(standing.joint.id)
        if said is None:
            return None
        handling = (milestone or standing.milestone) is Milestone.HANDLING
        return said.handling_us if handling else said.full_us

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
        unfinished = [
            s.batch.mixed_us for s in self.standings if s.milestone and s.batch.mixed_us is not None
        ]
        return min(unfinished, default=self.ticked_us)

    def _way(self, standing: Standing) -> Way | None:
        if standing.joint.id not in self._ways:
            self._find_ways()
        return self._ways.get(standing.joint.id)

    def _find_ways(self) -> None:
        snapshot = self.snapshot
        stays: dict[int, list[Stay]] = defaultdict(list)
        for stay in self._store.work.stays(snapshot.clubs):
            stays[stay.club_id].append(stay)
        same: dict[Way, Way] = {}
        for joint in snapshot.joints.values():
            if joint.ended_us is not None or joint.batch_id is None:
                continue
            batch = snapshot.batches[joint.batch_id]
            way = way_of(joint, batch, stays[joint.club_id], snapshot.places)
            if way is not None:
                self._ways[joint.id] = same.setdefault(way, way)

    def _outcomes(self, now: Instant) -> dict[int, Outcome]:
        """Return what the ways of the joints come to that still have something to earn.

        A joint that is cured is looked at again only if facts behind it have changed, with
        records of its own that are dropped afterwards: it may have waited for months.
        """
        if not self._ways:
            self._find_ways()
        grants = self.snapshot.grants
        open_ways: dict[int, Way] = {}
        cured_ways: dict[int, Way] = {}
        for joint_id, way in self._ways.items():
            full = grants.get(joint_id, {}).get(Milestone.FULL_CURE)
            if full is None:
                open_ways[joint_id] = way
            elif self._touched.reaches(self.snapshot.joints[joint_id], full):
                cured_ways[joint_id] = way
        climate = self._climate
        self.records()  # as far back as needed at once, so that no state is begun twice
        result = self._come_to(open_ways, self._curing, climate, now)
        self._curing.forget(
            {(way, self._cup_zone(joint_id)) for joint_id, way in open_ways.items()}
        )
        if cured_ways:
            once = Climate(self._store)
            result.update(self._come_to(cured_ways, Curing(once), once, now))
        return result

    def _come_to(
        self, ways: dict[int, Way], curing: Curing, climate: Climate, now: Instant
    ) -> dict[int, Outcome]:
        snapshot = self.snapshot
        shared: dict[tuple[Way, int], Outcome] = {}
        unknown: dict[int, Instant | None] = {}
        result: dict[int, Outcome] = {}
        for joint_id, way in sorted(ways.items(), key=lambda item: item[1].mixed_us):
            key = (way, self._cup_zone(joint_id))
            outcome = shared.get(key)
            if outcome is None:
                outcome = curing.state(*key, snapshot).outcome
                assert outcome is not None
                last = way.windows[-1]
                if last.to_us is None:
                    if last.zone_id not in unknown:
                        record = climate.record(last.zone_id, snapshot, way.mixed_us)
                        unknown[last.zone_id] = record.unknown_since(now)
                    outcome = outcome._replace(unknown_us=unknown[last.zone_id])
                shared[key] = outcome
            result[joint_id] = outcome
        return result

    def _cup_zone(self, joint_id: int) -> int:
        batch_id = self.snapshot.joints[joint_id].batch_id
        assert batch_id is not None
        return self.snapshot.batches[batch_id].zone_id

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
                    releases=snapshot.releases.get(joint.id, ()),
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

    def _write_down(self, now: Instant) -> ChangeSet | None:
        """Write what is earned, what new facts void, and what is foretold at glue-up."""
        earned: list[tuple[Standing, Milestone, Instant]] = []
        void: list[tuple[Standing, Grant, Instant | None]] = []
        for standing in self.standings:
            outcome = standing.outcome
            given = self.snapshot.grants.get(standing.joint.id, {})
            if outcome is None:
                if standing.laid_out:  # the mixing was undone after it had earned something
                    void += [(standing, grant, None) for grant in given.values()]
                continue
            forecast, end = outcome.forecast, outcome.record_end_us
            for milestone, bounds in (
                (Milestone.HANDLING, forecast.handling), (Milestone.FULL_CURE, forecast.full_cure)
            ):  # fmt: skip
                late = None if bounds is None else bounds.late
                grant = given.get(milestone)
                if grant is None:
                    if late is not None and is_earned(late, end, forecast.gap_us, now):
                        earned.append((standing, milestone, late))
                # A clock set back makes nothing soft again: it has been given_us already.
                elif grant.late_us != late and is_void(late, max(now, grant.given_us)):
                    void.append((standing, grant, late))
        foretold = self._newly_foretold()
        if not earned and not void and not foretold:
            return None
        with self._store.write("permissions", now) as act:
            for standing, milestone, late in earned:
                printed = printed_time(late)
                act.add(Grant(0, standing.joint.id, milestone, late, printed, now))
                kind = "safe to hit"
                if milestone is Milestone.HANDLING:
                    kind = "may come off the rack"
                act.add_event(kind, "joint", standing.joint.id, at_us=printed)
            for standing, grant, late_now in void:
                act.update("permission_grant", grant.id, withdrawn_us=now, reason="new facts")
                data = {"milestone": str(grant.milestone), "was_us": grant.printed_us,
                        "late_us": late_now}  # fmt: skip
                act.add_event("permission withdrawn", "joint", standing.joint.id, data)
            for joint_id, said in foretold.items():
                act.add_event("foretold", "joint", joint_id, said._asdict())
        self._foretold = {**(self._foretold or {}), **foretold}
        return act.changes

    def _newly_foretold(self) -> dict[int, Foretold]:
        """Return the printed times of joints that were racked since the last tick."""
        if self._foretold is None:
            self._foretold = {}
            for event in self._store.journal.events(
                _FORETOLD_KEPT, kinds=["foretold"], from_us=self._oldest_us()
            ):
                if event.subject_id not in self._foretold:
                    handling, full = (event.data.get(field) for field in Foretold._fields)
                    self._foretold[event.subject_id] = Foretold(
                        handling if isinstance(handling, int) else None,
                        full if isinstance(full, int) else None,
                    )
        new = {}
        for standing in self.standings:
            if (
                standing.outcome is None or standing.batch.racked_us is None
                or standing.joint.id in self._foretold or standing.unknown
            ):  # fmt: skip
                continue
            forecast = standing.outcome.forecast
            lates = (forecast.handling and forecast.handling.late, forecast.full_cure.late)
            new[standing.joint.id] = Foretold(
                *(None if late is None else printed_time(late) for late in lates)
            )
        return new

    def _next_us(self, now: Instant) -> Instant:
        """Return when something changes by the mere passing of time."""
        times = [now + REFRESH_US]
        for standing in self.standings:
            times += [t for t in (standing.use_by_us, standing.not_before_us) if t and t > now]
        hours = self.snapshot.hours
        times += [t for t in (hours.next_opening(now), hours.next_closing(now)) if t and t > now]
        return min(times)

