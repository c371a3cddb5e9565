"""What is abnormal, or due, on the board as it stands: the conditions behind every alert.

Nothing is raised here: a condition is a fact of the stored record and now.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections import defaultdict
from itertools import pairwise
from typing import NamedTuple

from rackboard.core.alerts.kinds import Kind
from rackboard.core.alerts.machine import TAKEN_FOR_US
from rackboard.core.alerts.rows import Alert
from rackboard.core.alerts.watch import (
    HANGS_US,
    Limit,
    Watch,
    cold_limit,
    hot_limit,
    missed_since,
    taken_in,
)
from rackboard.core.bench import HoldReason, Milestone, PlaceKind, Source, Zone
from rackboard.core.cure.record import RECOVERY_US, Point
from rackboard.core.instants import DAY_US, MINUTE_US, Instant
from rackboard.core.standing import Standing
from rackboard.services.agenda import LOOK_BEFORE_US, JobStanding
from rackboard.services.board import Board
from rackboard.services.climate import ZoneRecord
from rackboard.store import Store

MOVED_US = 10 * MINUTE_US
"""A cold zone is an alarm only if a printed time in it moved by more than this [decision]."""
_WATCHED_US = 3 * DAY_US
_SAMPLES = 8

Key = tuple[str, int, int]


class Condition(NamedTuple):
    """Something abnormal: since when [µs UTC], and its figures."""

    kind: Kind
    subject_id: int
    since_us: Instant
    data: dict[str, object]

    @property
    def key(self) -> Key:
        """What it is about, as in `Alert.key`."""
        return (self.kind.value, self.subject_id, 0)


class Coming(NamedTuple):
    """A milestone of a job × batch, or of a job.

    Attributes
    ----------
    due_us : int or None
        When it falls, or fell, due [µs UTC]; None: no time.
    holds : bool
        Whether it may fall due: no HOLD, and what it says is permitted.
    seen, expired : bool
        Whether somebody has acted on it, or it is too late for it.
    """

    kind: Kind
    job_id: int
    batch_id: int
    due_us: Instant | None
    holds: bool
    seen: bool
    expired: bool
    data: dict[str, object]

    @property
    def key(self) -> Key:
        """What it is about, as in `Alert.key`."""
        return (self.kind.value, self.job_id, self.batch_id)


class Seen(NamedTuple):
    """The conditions at one moment.

    `watched` are the zones with a joint curing in them, `frozen` those whose air nobody knows,
    `air_mc` their last readings [m°C].
    """

    on: dict[Key, Condition]
    watched: frozenset[int]
    frozen: frozenset[int]
    air_mc: dict[int, int]


class _Watched(NamedTuple):
    """A watch with what it has taken in of a record; `last_us`: since when it last held."""

    limit: Limit
    whole: tuple[int, Instant]
    taken: int
    watch: Watch
    last_us: Instant | None = None


class Conditions:
    """Looks at the board; remembers only how far it has read each zone's record.

    Parameters
    ----------
    store : Store
        Where the last alarms are found.
    """

    __slots__ = ("_store", "_watches")

    def __init__(self, store: Store) -> None:
        self._store = store
        self._watches: dict[tuple[int, Kind], _Watched] = {}

    def look(self, board: Board, alerts: dict[Key, Alert], now: Instant) -> Seen:
        """Return what is abnormal now.

        Parameters
        ----------
        board : Board
            Reckoned and ticked.
        alerts : dict
            The last episode of every alert that is open, by what it is about: a cold zone
            that has been told of is cold until its air is back.
        now : int
            The present [µs UTC].
        """
        on: dict[Key, Condition] = {}
        for joint_id, hold in board.snapshot.holds.items():
            if hold.reason is HoldReason.DISTURBED:
                condition = Condition(Kind.DISTURBED, joint_id, hold.from_us, {"hold": hold.id})
                on[condition.key] = condition
        records = board.records()
        curing: dict[int, list[Standing]] = defaultdict(list)
        present: dict[int, list[Standing]] = defaultdict(list)
        for standing in board.standings:
            zone_id = _zone_of(board, standing)
            if zone_id is None or standing.laid_out:
                continue
            present[zone_id].append(standing)
            if standing.milestone is not None:
                curing[zone_id].append(standing)
        frozen = set()
        air: dict[int, int] = {}
        for zone_id, record in records.items():
            if record.last is None:
                continue
            air[zone_id] = record.last.temperature_mc
            missing = self._missing(zone_id, record, curing[zone_id], alerts, now)
            if missing is not None:
                on[missing.key] = missing
            if missing is not None or record.unknown_since(now) is not None:
                frozen.add(zone_id)
                continue
            for found in (
                self._cold(board, zone_id, record, curing[zone_id], alerts, now),
                self._hot(zone_id, record, present[zone_id], alerts, now),
            ):
                if found is not None:
                    on[found.key] = found
        watched = frozenset(zone_id for zone_id, there in curing.items() if there)
        return Seen(on, watched, frozenset(frozen), air)

    def _watch(
        self, zone_id: int, kind: Kind, limit: Limit, record: ZoneRecord, now: Instant,
        from_us: Instant = 0,
    ) -> tuple[Watch, Instant | None]:  # fmt: skip
        """Return how a condition stands, having read only what is new of the record."""
        key = (zone_id, kind)
        state = self._watches.get(key)
        points = record.points
        whole = (record.revision, from_us)
        if state is None or state.limit != limit or state.whole != whole:
            since = max(now - _WATCHED_US, from_us - 1)
            first = bisect_right(points, since, key=lambda point: point.at_us)
            state = _Watched(limit, whole, first, Watch())
        watch, since_us = state.watch, state.last_us
        # A reading is judged by its own uncertainty, whatever the next one's is.
        for point in points[state.taken :]:
            watch = taken_in(watch, limit, point.at_us, _air_mc(point, limit))
            since_us = watch.since_us if watch.on else since_us
        self._watches[key] = state._replace(taken=len(points), watch=watch, last_us=since_us)
        last = points[-1]
        if not last.source.automatic and now > last.at_us:
            # A typed temperature holds until it is typed again; a feed has to go on saying so.
            watch = taken_in(watch, limit, now, _air_mc(last, limit))
            since_us = watch.since_us if watch.on else since_us
        return watch, since_us

    def _cold(
        self, board: Board, zone_id: int, record: ZoneRecord, curing: list[Standing],
        alerts: dict[Key, Alert], now: Instant,
    ) -> Condition | None:  # fmt: skip
        if not curing or record.last is None:
            return None
        minimum_mc = max(round(s.batch.sheet.minimum_c * 1000) for s in curing)
        watch, _ = self._watch(zone_id, Kind.COLD, cold_limit(minimum_mc, 0), record, now)
        if not watch.on or watch.since_us is None:
            return None
        data: dict[str, object] = {
            "air_mc": record.last.temperature_mc, "limit_mc": minimum_mc + record.last.u_mc,
            "printed": {_printed_key(s): s.not_before_us for s in curing},
        }  # fmt: skip
        condition = Condition(Kind.COLD, zone_id, watch.since_us, data)
        if condition.key in alerts:
            return condition
        if _is_stated(board, board.snapshot.zones[zone_id], record, now):
            return None
        said = self._said(zone_id)
        return condition if any(_moved(board, s, said) for s in curing) else None

    def _said(self, zone_id: int) -> dict[str, object]:
        """Return the printed times as the last alarm of the zone knew them, by joint."""
        last = self._store.alerts.last_of(Kind.COLD.value, zone_id)
        printed = None if last is None else last.data.get("printed")
        return printed if isinstance(printed, dict) else {}

    def _hot(
        self, zone_id: int, record: ZoneRecord, present: list[Standing],
        alerts: dict[Key, Alert], now: Instant,
    ) -> Condition | None:  # fmt: skip
        there = [s for s in present if s.stay is not None]
        if not there or record.last is None:
            return None
        maximum_mc = min(round(s.batch.sheet.maximum_c * 1000) for s in present)
        limit = hot_limit(maximum_mc)
        arrived = {s.joint.id: s.stay.from_us for s in there if s.stay is not None}
        watch, since = self._watch(zone_id, Kind.TOO_HOT, limit, record, now,
                                   min(arrived.values()))  # fmt: skip
        if since is None:
            return None
        # Not a matter of now alone: heat that came and went unwatched has done its work.
        first = bisect_left(record.points, since, key=lambda point: point.at_us)
        hot = [p for p in record.points[first:] if p.temperature_mc > limit.off_mc]
        if not hot:
            return None
        heated = sorted(n for n, from_us in arrived.items() if from_us <= hot[-1].at_us)
        data: dict[str, object] = {
            "air_mc": max(p.temperature_mc for p in hot), "limit_mc": maximum_mc, "joints": heated,
        }  # fmt: skip
        condition = Condition(Kind.TOO_HOT, zone_id, since, data)
        if condition.key in alerts:
            return condition if watch.on else None
        last = self._store.alerts.last_of(Kind.TOO_HOT.value, zone_id)
        if last is None or last.closed_us is None or last.closed_us < since:
            return condition
        # Answered while it was hot: told again if others are in it, or an hour later.
        known = last.data.get("joints")
        others = set(heated) - set(known if isinstance(known, list) else [])
        if watch.on and (others or now - last.closed_us >= TAKEN_FOR_US):
            return condition
        return None

    @staticmethod
    def _missing(
        zone_id: int, record: ZoneRecord, curing: list[Standing], alerts: dict[Key, Alert],
        now: Instant,
    ) -> Condition | None:  # fmt: skip
        last = record.last
        if last is None or not curing:
            return None
        told = alerts.get((Kind.NO_RECORD.value, zone_id, 0))
        if told is not None and any(_waits_for_bridge(s) for s in curing):
            return Condition(Kind.NO_RECORD, zone_id, told.due_us, told.data)
        if last.source is not Source.FEED:
            return None
        since = missed_since(last.at_us, _interval_us(record.points), now)
        if since is None:
            return None
        condition = Condition(Kind.NO_RECORD, zone_id, since, {"air_mc": last.temperature_mc})
        if condition.key in alerts or any(_hangs(s, now) for s in curing):
            return condition
        return None


def in_shop(board: Board) -> list[Standing]:
    """Return the joints of jobs of which something is still in the shop."""
    jobs = {
        s.job.id for s in board.standings
        if (place := board.snapshot.place_of(s.club.id)) is None
        or place.kind is not PlaceKind.OUT
    }  # fmt: skip
    return [s for s in board.standings if s.job.id in jobs]


def _air_mc(point: Point, limit: Limit) -> int:
    """Return what a reading says at least where cold is looked for, itself where heat is."""
    return point.temperature_mc - point.u_mc if limit.below else point.temperature_mc


def _printed_key(standing: Standing) -> str:
    """Return what a printed time is of: handling and full cure are two of them."""
    return f"{standing.joint.id} {standing.milestone}"


def _zone_of(board: Board, standing: Standing) -> int | None:
    stay = standing.stay
    return None if stay is None else board.snapshot.places[stay.place_id].zone_id


def _interval_us(points: list[Point]) -> Instant:
    """Return how often a feed sends: the middle one of its last intervals."""
    last = [point.at_us for point in points[-_SAMPLES - 1 :] if point.source is Source.FEED]
    gaps = sorted(b - a for a, b in pairwise(last))
    return gaps[len(gaps) // 2] if gaps else MINUTE_US


def _waits_for_bridge(standing: Standing) -> bool:
    """Return whether a permission hangs on a gap that nobody has bridged."""
    outcome = standing.outcome
    return standing.unknown and outcome is not None and outcome.forecast.gap_us is not None


def _hangs(standing: Standing, now: Instant) -> bool:
    """Return whether a permission within the hour waits for the record."""
    if standing.asked:
        return True
    forecast = standing.outcome.forecast if standing.outcome else None
    if forecast is None or standing.milestone is None:
        return False
    bounds = forecast.handling if standing.milestone is Milestone.HANDLING else forecast.full_cure
    late = None if bounds is None else bounds.late or bounds.expected
    return late is not None and late <= now + HANGS_US


def _moved(board: Board, standing: Standing, said: dict[str, object]) -> bool:
    """Return whether a printed time has moved away since it was last said."""
    if standing.unknown or standing.outcome is None:
        return False
    before = said.get(_printed_key(standing))
    if not isinstance(before, int):
        before = board.foretold(standing)
    if before is None:
        return False
    return standing.not_before_us is None or standing.not_before_us - before > MOVED_US


def _is_stated(board: Board, zone: Zone, record: ZoneRecord, now: Instant) -> bool:
    """Return whether the cold was said to come: by the heating's schedule or by a person."""
    if any(low.from_us <= now < low.to_us for low in record.air.lows):
        return True
    heating = zone.heating
    if heating is None:
        return False
    hours = board.snapshot.hours
    today = hours.local(now).date()
    if hours.week[today.weekday()] is None:
        return True
    on = hours.at(today, heating.on_min) + RECOVERY_US
    return not on <= now < hours.at(today, heating.off_min)


def milestones(board: Board) -> list[Coming]:
    """Return the milestones of everything at work."""
    here = in_shop(board)
    at_work = {s.job.id for s in here}
    jobs = [job for job in board.jobs() if job.job.id in at_work]
    groups: dict[tuple[int, int], list[Standing]] = defaultdict(list)
    for standing in here:
        if standing.batch.mixed_us is not None:
            groups[(standing.job.id, standing.batch.id)].append(standing)
    safe = {job.job.id: job for job in jobs}
    permitted = {s.batch.id for s in board.standings if board.snapshot.grants.get(s.joint.id)}
    coming: list[Coming] = []
    for (job_id, batch_id), members in groups.items():
        coming += _of_batch(board, job_id, batch_id, members, safe[job_id], permitted)
    for job in jobs:
        coming.append(
            Coming(
                Kind.JOB_SAFE, job.job.id, 0, job.good_us, job.good, False,
                job.job.ready_us is not None, {"job": job.job.number, "clubs": job.clubs},
            )
        )  # fmt: skip
    return coming


def _of_batch(
    board: Board, job_id: int, batch_id: int, members: list[Standing], job: JobStanding,
    permitted: set[int],
) -> list[Coming]:  # fmt: skip
    batch = members[0].batch
    assert batch.mixed_us is not None
    data: dict[str, object] = {
        "job": job.job.number, "clubs": len(members), "batch": batch.number,
        "joints": [s.joint.id for s in members],
    }  # fmt: skip
    coming: list[Coming] = []
    lives = [s.use_by_us for s in members if s.use_by_us is not None]
    expired = batch_id in permitted
    if lives:
        over = min(lives)
        racked = batch.racked_us
        in_time = racked is None or racked >= over
        coming.append(
            Coming(Kind.LIFE_OVER, job_id, batch_id, over, in_time, racked is not None, expired,
                   data)
        )  # fmt: skip
        if over - batch.mixed_us >= LOOK_BEFORE_US:
            look = over - LOOK_BEFORE_US if racked is None else min(racked, over - LOOK_BEFORE_US)
            coming.append(
                Coming(Kind.LAST_LOOK, job_id, batch_id, max(look, batch.mixed_us), True,
                       batch.looked_us is not None, expired, data | {"over_us": over})
            )  # fmt: skip
    if batch.sheet.handling_time_h is not None:
        grants = [board.snapshot.grants.get(s.joint.id, {}).get(Milestone.HANDLING)
                  for s in members]  # fmt: skip
        printed = [grant.printed_us for grant in grants if grant is not None]
        holds = len(printed) == len(members) and not any(s.hold for s in members)
        coming.append(
            Coming(Kind.OFF_THE_RACK, job_id, batch_id, max(printed, default=None), holds,
                   all(_off_the_rack(board, s) for s in members), job.good, data)
        )  # fmt: skip
    return coming


def _off_the_rack(board: Board, standing: Standing) -> bool:
    place = board.snapshot.place_of(standing.club.id)
    return place is None or place.kind not in (PlaceKind.RACK, PlaceKind.BOX)
