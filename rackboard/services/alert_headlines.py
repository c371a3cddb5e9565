"""Where and what an alert says, in full and shorter: its names, and its headline."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from rackboard.core.alerts.kinds import Kind
from rackboard.core.alerts.rows import Alert
from rackboard.core.bench import Milestone, PlaceKind
from rackboard.core.instants import Instant
from rackboard.core.schedule import OpeningHours
from rackboard.core.spoken_time import format_moment
from rackboard.core.temperature import Unit, format_temperature
from rackboard.core.text import Text, text
from rackboard.services.board import Board
from rackboard.services.snapshot import UNIT

LONGEST_SUMMARY = 40
"""Characters; more may be cut by whoever shows it (Desktop Notifications Specification)."""
OF_JOINT = (Kind.DISTURBED, Kind.WITHDRAWN)
OF_ZONE = (Kind.COLD, Kind.NO_RECORD, Kind.TOO_HOT)
_NAMED_PLACES = 3


class About(NamedTuple):
    """What an alert is about, by name; "" for what is not known any more.

    Attributes
    ----------
    where : str
        Slots or place of the clubs.
    zone : str
        Name of the zone, of an alert of a zone.
    job, club, customer, phone : str
        Of the joint or job.
    gone : bool
        The club has left the shop.
    """

    where: str = ""
    zone: str = ""
    job: str = ""
    club: str = ""
    customer: str = ""
    phone: str = ""
    gone: bool = False


class Voice(NamedTuple):
    """How figures are said: local time seen from now [µs UTC], and the unit."""

    hours: OpeningHours
    now_us: Instant
    unit: Unit

    def when(self, instant: Instant) -> Text:
        """Return a moment."""
        return format_moment(instant, self.now_us, self.hours)

    def air(self, milli_c: object) -> str:
        """Return a temperature [m°C]; "?" of none."""
        return format_temperature(milli_c, self.unit) if isinstance(milli_c, int) else "?"


def voice(board: Board) -> Voice:
    """Return how the board says figures."""
    unit = board.snapshot.settings.get(UNIT)
    return Voice(
        board.snapshot.hours, board.ticked_us, Unit(unit) if isinstance(unit, str) else Unit.C
    )


def about(alert: Alert, board: Board) -> About:
    """Return what an alert is about, as the board knows it now."""
    snapshot, kind = board.snapshot, Kind(alert.kind)
    if kind in OF_ZONE:
        zone = snapshot.zones.get(alert.subject_id)
        return About(zone="" if zone is None else zone.name)
    if kind in OF_JOINT:
        joint = snapshot.joints.get(alert.subject_id)
        club = None if joint is None else snapshot.clubs.get(joint.club_id)
        if club is None:
            return About()
        job = snapshot.jobs[club.job_id]
        customer = snapshot.customers.get(job.customer_id)
        place = snapshot.place_of(club.id)
        return About(
            snapshot.where(club.id), "", job.number, club.name,
            "" if customer is None else customer.name, "" if customer is None else customer.phone,
            place is None or place.kind is PlaceKind.OUT,
        )  # fmt: skip
    of_job = snapshot.jobs.get(alert.subject_id)
    customer = None if of_job is None else snapshot.customers.get(of_job.customer_id)
    ids = alert.data.get("joints")
    joints = [snapshot.joints.get(int(n)) for n in ids] if isinstance(ids, list) else []
    clubs = [joint.club_id for joint in joints if joint is not None]
    return About(
        span(snapshot.where(club_id) for club_id in clubs if snapshot.in_shop(club_id)), "",
        str(alert.data.get("job", "") if of_job is None else of_job.number), "",
        "" if customer is None else customer.name,
    )  # fmt: skip


def span(places: Iterable[str]) -> str:
    """Return slots and places in short.

    Examples
    --------
    >>> span(["A1", "A3", "A2"]), span(["A1", "B2"]), span(["A1", "A2", "A3", "B1", "B3"])
    ('A1–A3', 'A1, B2', 'A1, A2, A3 …')
    """
    names = sorted({place for place in places if place}, key=_slot)
    if not names:
        return ""
    slots = [_slot(name) for name in names]
    (prefix, first), last = slots[0], slots[-1]
    if len(names) > 1 and first >= 0 and last == (prefix, first + len(names) - 1):
        return f"{names[0]}–{names[-1]}"
    return ", ".join(names[:_NAMED_PLACES]) + (" …" if len(names) > _NAMED_PLACES else "")


def _slot(name: str) -> tuple[str, int]:
    match = re.fullmatch(r"(\D*)(\d{1,4})", name)
    return (name, -1) if match is None else (match[1], int(match[2]))


# Headlines


def headlines(alerts: Sequence[Alert], board: Board) -> tuple[Text, Text]:
    """Return where and what of alerts that are told together: short enough, and in full."""
    whole, *shorter = _variants(alerts, [about(a, board) for a in alerts], voice(board))
    fitting = next((v for v in (whole, *shorter) if len(v) <= LONGEST_SUMMARY), whole)
    return fitting, whole


def headline(alert: Alert, board: Board, count: int = 1) -> Text:
    """Return where and what of an alert, or of `count` that are told as one, in full."""
    named = about(alert, board)
    return _variants([alert] * count, [named] * count, voice(board))[0]


def _variants(alerts: Sequence[Alert], named: Sequence[About], say: Voice) -> tuple[Text, ...]:
    """Return the headline in full, then without what is needed least; the last has no names."""
    alert, this = alerts[0], named[0]
    kind = Kind(alert.kind)
    if kind in OF_JOINT:
        return _of_joints(alert, named)
    if kind in OF_ZONE:
        return _of_zone(alert, this, say)
    job, where = this.job or "?", this.where
    if kind is Kind.LIFE_OVER:
        batch = alert.data.get("batch", "?")
        return (
            text("Alerts", "Stop using batch {batch}, job {job}").format(batch=batch, job=job),
            text("Alerts", "Stop using batch {batch}").format(batch=batch),
        )
    if kind is Kind.LAST_LOOK:
        plain = (
            text("Alerts", "Last look: job {job}").format(job=job),
            text("Alerts", "Last look before it is hard"),
        )
        if not where:
            return plain
        full = text("Alerts", "Last look: {where}, job {job}").format(where=where, job=job)
        short = text("Alerts", "Last look: {where}").format(where=where)
        return (full, short, *plain)
    if kind is Kind.OFF_THE_RACK:
        return (
            text("Alerts", "Job {job} may come off the rack").format(job=job),
            text("Alerts", "A job may come off the rack"),
        )
    return (
        text("Alerts", "Job {job}: whole job safe to hit").format(job=job),
        text("Alerts", "A whole job is safe to hit"),
    )


def _of_joints(alert: Alert, named: Sequence[About]) -> tuple[Text, ...]:
    this, count = named[0], len(named)
    club, job, where = this.club or "?", this.job or "?", this.where or "–"
    if alert.kind == Kind.DISTURBED:
        if count > 1:
            return (
                text("Alerts", "Disturbed: %n clubs of job {job}",
                     "Disturbed: %n club of job {job}", count).format(job=job),
                text("Alerts", "Disturbed: %n clubs", "Disturbed: %n club", count),
            )  # fmt: skip
        return (
            text("Alerts", "Disturbed at {where}: {club}, job {job}").format(
                where=where, club=club, job=job
            ),
            text("Alerts", "Disturbed at {where}: {club}").format(where=where, club=club),
            text("Alerts", "Disturbed at {where}, job {job}").format(where=where, job=job),
            text("Alerts", "Disturbed at {where}").format(where=where),
            text("Alerts", "A joint was disturbed"),
        )
    if count > 1:
        jobs = sorted({name.job for name in named if name.job})
        general = text("Alerts", "Do not hit: %n clubs", "Do not hit: %n club", count)
        if len(jobs) > 1:
            return (
                text("Alerts", "Do not hit: %n clubs of jobs {jobs}",
                     "Do not hit: %n club of jobs {jobs}", count).format(jobs=", ".join(jobs)),
                general,
            )  # fmt: skip
        return (
            text("Alerts", "Do not hit: %n clubs of job {job}",
                 "Do not hit: %n club of job {job}", count).format(job=job),
            general,
        )  # fmt: skip
    if alert.data.get("milestone") == Milestone.HANDLING.value and not this.gone:
        return (
            text("Alerts", "Back to the rack: {club}, job {job}").format(club=club, job=job),
            text("Alerts", "Back to the rack: {club}").format(club=club),
            text("Alerts", "Back to the rack: job {job}").format(job=job),
            text("Alerts", "A club must go back to the rack"),
        )
    return (
        text("Alerts", "Do not hit: {club}, job {job}").format(club=club, job=job),
        text("Alerts", "Do not hit: {club}").format(club=club),
        text("Alerts", "Do not hit: job {job}").format(job=job),
        text("Alerts", "A club must not be hit"),
    )


def _of_zone(alert: Alert, this: About, say: Voice) -> tuple[Text, ...]:
    zone, air = this.zone or "?", say.air(alert.data.get("air_mc"))
    if alert.kind == Kind.COLD:
        return (
            text("Alerts", "{zone} is cold: {air}").format(zone=zone, air=air),
            text("Alerts", "{zone} is cold").format(zone=zone),
            text("Alerts", "Too cold for the glue: {air}").format(air=air),
        )
    if alert.kind == Kind.TOO_HOT:
        return (
            text("Alerts", "{zone} is too hot: {air}").format(zone=zone, air=air),
            text("Alerts", "{zone} is too hot").format(zone=zone),
            text("Alerts", "Too hot for the glue: {air}").format(air=air),
        )
    since = say.when(alert.due_us)
    return (
        text("Alerts", "{zone}: no temperature since {time}").format(zone=zone, time=since),
        text("Alerts", "{zone}: no temperature").format(zone=zone),
        text("Alerts", "No temperature since {time}").format(time=since),
    )
