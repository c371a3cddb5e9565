"""What is due, which jobs are good, and what has to be asked about the night."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from enum import Enum
from typing import NamedTuple

from rackboard.core.bench import Customer, Job, Milestone
from rackboard.core.cure.forecast import printed_time
from rackboard.core.cure.record import GAP_US
from rackboard.core.instants import HOUR_US, MINUTE_US, Instant
from rackboard.core.standing import Standing
from rackboard.core.words import Word
from rackboard.services.climate import ZoneRecord
from rackboard.services.curing import Window
from rackboard.services.snapshot import Snapshot

LOOK_BEFORE_US = 10 * MINUTE_US
"""The last look is due at the latest so long before the working life ends [decision]."""
ASK_BEFORE_CLOSING_US = 2 * HOUR_US
"""From so long before closing the board asks how cold it will get [decision]."""
_CUSTOMER = Customer(0, "", "")


class DueKind(Enum):
    """What falls due."""

    LAST_LOOK = 0
    USE_BY = 1
    OFF_THE_RACK = 2
    SAFE_TO_HIT = 3


class Due(NamedTuple):
    """Something to come, for the clubs of one job glued with one batch."""

    at_us: Instant
    kind: DueKind
    standings: tuple[Standing, ...]


def dues(standings: Iterable[Standing], now: Instant) -> list[Due]:
    """Return what is to come, in order of time; HOLDs have nothing to come."""
    groups: dict[tuple[Instant, int, int, int], list[Standing]] = defaultdict(list)

    def add(at: Instant | None, kind: DueKind, standing: Standing) -> None:
        if at is not None and at > now:
            key = (at, kind.value, standing.job.id, standing.batch.id)
            groups[key].append(standing)

    for standing in standings:
        if standing.hold or standing.laid_out:
            continue
        if standing.base is Word.WET and standing.use_by_us is not None:
            life = standing.use_by_us - (standing.batch.mixed_us or 0)
            if standing.batch.looked_us is None and life >= LOOK_BEFORE_US:
                add(standing.use_by_us - LOOK_BEFORE_US, DueKind.LAST_LOOK, standing)
            if standing.batch.racked_us is None:
                add(standing.use_by_us, DueKind.USE_BY, standing)
        if standing.milestone is Milestone.HANDLING:
            add(standing.not_before_us, DueKind.OFF_THE_RACK, standing)
        elif standing.milestone is Milestone.FULL_CURE:
            add(standing.not_before_us, DueKind.SAFE_TO_HIT, standing)
    return [
        Due(at, DueKind(kind), tuple(members))
        for (at, kind, _, _), members in sorted(groups.items(), key=lambda item: item[0])
    ]


class JobStanding(NamedTuple):
    """A customer's job as the board sees it.

    Attributes
    ----------
    to_glue : int
        Clubs that aren't glued yet.
    good : bool
        Whole job safe to hit.
    good_us : int or None
        When it is, or was [µs UTC]; None: no time.
    at_risk : bool
        Its late time falls after the promise, or there is none.
    held : bool
        A joint of it is on HOLD.
    unknown : bool
        A time hangs on how cold it got.
    """

    job: Job
    customer: Customer
    clubs: int
    to_glue: int
    good: bool
    good_us: Instant | None
    at_risk: bool
    held: bool
    unknown: bool


def job_standings(snapshot: Snapshot, standings: Iterable[Standing]) -> list[JobStanding]:
    """Return all jobs at work, by number."""
    of_job: dict[int, list[Standing]] = defaultdict(list)
    for standing in standings:
        of_job[standing.job.id].append(standing)
    ended = {joint.club_id for joint in snapshot.joints.values() if joint.ended_us is not None}
    clubs_of: dict[int, list[int]] = defaultdict(list)
    for club in snapshot.clubs.values():
        clubs_of[club.job_id].append(club.id)
    result = []
    for job in snapshot.jobs.values():
        joints = of_job[job.id]
        glued = {s.club.id for s in joints if not s.laid_out}
        laid_out = {s.club.id for s in joints if s.laid_out}
        clubs = clubs_of[job.id]
        to_glue = sum(1 for c in clubs if c in laid_out or (c not in glued and c not in ended))
        good = bool(joints) and to_glue == 0 and all(s.word is Word.CURED for s in joints)
        times = [_safe_us(s) for s in joints]
        known = [t for t in times if t is not None]
        good_us = max(known) if known and len(known) == len(times) and not to_glue else None
        late = not good and (good_us is None or good_us > (job.promised_us or 0))
        result.append(
            JobStanding(
                job, snapshot.customers.get(job.customer_id, _CUSTOMER), len(clubs), to_glue,
                good, good_us, job.promised_us is not None and job.ready_us is None and late,
                any(s.hold for s in joints), any(s.unknown for s in joints),
            )
        )  # fmt: skip
    return sorted(result, key=lambda s: (_number(s.job.number), s.job.number))


def _safe_us(standing: Standing) -> Instant | None:
    if standing.base is Word.CURED:
        return standing.since_us
    if standing.unknown or standing.outcome is None:
        return None
    late = standing.outcome.forecast.full_cure.late
    if late is None:
        return None
    if standing.milestone is Milestone.FULL_CURE:
        return standing.not_before_us
    return printed_time(late)


def _number(text: str) -> int:
    return int(text) if text.isdigit() else 1 << 60


class NightQuestion(NamedTuple):
    """How cold did it get, or will it get? For one zone and one stretch [µs UTC].

    `ahead`: it is asked before the night.
    """

    zone_id: int
    from_us: Instant
    to_us: Instant
    ahead: bool

    @property
    def key(self) -> str:
        """Names the question, so that an answer reaches the one that was asked."""
        return f"{self.zone_id}:{self.from_us}:{int(self.ahead)}"


def night_questions(
    snapshot: Snapshot,
    records: dict[int, ZoneRecord],
    standings: Sequence[Standing],
    windows: dict[int, tuple[Window, ...]],
    now: Instant,
) -> list[NightQuestion]:
    """Return what should be asked about the nights, the most pressing first.

    Only zones are asked about in whose air a joint lies, or has lain, that still has a
    permission to earn; `windows` are the ways of the joints, by id.
    """
    past: dict[tuple[int, Instant], NightQuestion] = {}
    ahead: list[NightQuestion] = []
    for zone_id, members in _waiting_zones(snapshot, standings, windows).items():
        record = records[zone_id]
        if record.last is None:
            continue
        unknown = record.unknown_since(now)
        if unknown is not None and any(
            window.to_us is None or window.to_us - unknown > GAP_US for _, window in members
        ):
            past[(zone_id, unknown)] = NightQuestion(zone_id, unknown, now, False)
        before = record.first_gap(min(window.from_us for _, window in members))
        gaps = {(s.start_us, s.end_us) for s in record.stretches if s.gap}
        for start, end in gaps if before is None else {before, *gaps}:
            if any(_lay_in(window, start, end) and _depends(s, start) for s, window in members):
                past[(zone_id, start)] = NightQuestion(zone_id, start, end, False)
        here = [standing for standing, window in members if window.to_us is None]
        if here and unknown is None and not record.last.source.automatic:
            question = _tonight(snapshot, record, zone_id, here, now)
            if question is not None:
                ahead.append(question)
    return sorted(past.values(), key=lambda q: q.from_us) + ahead


def _waiting_zones(
    snapshot: Snapshot, standings: Iterable[Standing], windows: dict[int, tuple[Window, ...]]
) -> dict[int, list[tuple[Standing, Window]]]:
    waiting: dict[int, list[tuple[Standing, Window]]] = defaultdict(list)
    for standing in standings:
        if standing.laid_out or standing.milestone is None or standing.stay is None:
            continue
        if snapshot.places[standing.stay.place_id].zone_id is None:
            continue
        for window in windows.get(standing.joint.id, ()):
            waiting[window.zone_id].append((standing, window))
    return waiting


def _lay_in(window: Window, start: Instant, end: Instant) -> bool:
    return window.from_us < end and (window.to_us is None or window.to_us > start)


def _depends(standing: Standing, gap_us: Instant) -> bool:
    outcome = standing.outcome
    return outcome is not None and outcome.forecast.gap_us is not None and (
        abs(outcome.forecast.gap_us - gap_us) < HOUR_US or outcome.forecast.gap_us <= gap_us
        or (standing.batch.mixed_us or 0) > gap_us
    )  # fmt: skip


def _tonight(
    snapshot: Snapshot, record: ZoneRecord, zone_id: int, members: Iterable[Standing], now: Instant
) -> NightQuestion | None:
    hours = snapshot.hours
    if not hours.is_open(now) or record.air.heating is not None:
        return None
    closing = hours.next_closing(now)
    if closing is None or closing - now > ASK_BEFORE_CLOSING_US:
        return None
    opening = hours.next_opening(closing)
    if opening is None or record.air.low_for(closing, opening) is not None:
        return None
    for standing in members:
        late = standing.outcome.forecast.full_cure.late if standing.outcome else None
        if late is None or late > closing:
            return NightQuestion(zone_id, closing, opening, True)
    return None
