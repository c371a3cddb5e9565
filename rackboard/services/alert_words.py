"""What alerts say: where, what happened, what to do, in the bench's own words."""

from __future__ import annotations

from collections.abc import Sequence

from rackboard.core.alerts.kinds import Kind
from rackboard.core.alerts.rows import Alert
from rackboard.core.bench import Milestone, PlaceKind
from rackboard.core.instants import Instant
from rackboard.core.temperature import Unit, format_temperature
from rackboard.core.text import Text, text
from rackboard.services.board import Board
from rackboard.services.snapshot import UNIT

LONGEST_SUMMARY = 40
"""Characters; more may be cut by whoever shows it (Desktop Notifications Specification)."""


def group(alert: Alert, board: Board) -> str:
    """Return what an alert is told together with: its job × batch, or its zone."""
    kind = Kind(alert.kind)
    if kind in (Kind.DISTURBED, Kind.WITHDRAWN):
        joint = board.snapshot.joints.get(alert.subject_id)
        if joint is None:
            return f"joint {alert.subject_id}"
        club = board.snapshot.clubs.get(joint.club_id)
        smear = alert.data.get("smear")
        if smear is not None:
            return f"smear {smear}"
        return f"{0 if club is None else club.job_id}x{joint.batch_id}"
    if kind in (Kind.COLD, Kind.NO_RECORD, Kind.TOO_HOT):
        return f"zone {alert.subject_id}"
    return f"{alert.subject_id}x{alert.batch_id}"


def words(
    alerts: Sequence[Alert], board: Board, *, folded: bool = False, several: bool = False
) -> tuple[str, str]:
    """Return the summary, of at most 40 characters, and the body of what is said.

    Parameters
    ----------
    alerts : sequence of Alert
        What it is about, in due order; at least one.
    board : Board
        For names and places.
    folded : bool, optional
        There was too much at once: it points to the board.
    several : bool, optional
        They have nothing in common: each gets a line.
    """
    if folded:
        n = len(alerts)
        return (
            text("Alerts", "%n more, see the board", "%n more, see the board", n),
            text("Alerts", "Too much at once to tell one by one. The list has all of it."),
        )
    if not several:
        return _short(headline(alerts[0], board, len(alerts))), body(alerts[0], board)
    lines = " ".join(
        f"{headline(alert, board)} ({_when(alert.due_us, board)})." for alert in alerts
    )
    n = len(alerts)
    return text("Alerts", "%n things since you last looked", "One thing since you last looked",
                n), lines  # fmt: skip


def headline(alert: Alert, board: Board, count: int = 1) -> str:
    """Return where and what, short."""
    kind = Kind(alert.kind)
    data = alert.data
    if kind in (Kind.DISTURBED, Kind.WITHDRAWN):
        club, job, where = _names(alert, board)
        if kind is Kind.DISTURBED:
            return text("Alerts", "Disturbed at {where}: {club}, job {job}").format(
                where=where, club=club, job=job
            )
        if count > 1:
            return text("Alerts", "Do not hit: %n clubs of job {job}",
                        "Do not hit: %n club of job {job}", count).format(job=job)  # fmt: skip
        if data.get("milestone") == Milestone.HANDLING.value:
            return text("Alerts", "Back to the rack: {club}, job {job}").format(club=club, job=job)
        return text("Alerts", "Do not hit: {club}, job {job}").format(club=club, job=job)
    if kind in (Kind.COLD, Kind.NO_RECORD, Kind.TOO_HOT):
        zone = board.snapshot.zones.get(alert.subject_id)
        name = zone.name if zone else "?"
        air = _temperature(data.get("air_mc"), board)
        if kind is Kind.COLD:
            return text("Alerts", "{zone} is cold: {air}").format(zone=name, air=air)
        if kind is Kind.TOO_HOT:
            return text("Alerts", "{zone} is too hot: {air}").format(zone=name, air=air)
        return text("Alerts", "{zone}: no temperature since {time}").format(
            zone=name, time=_when(alert.due_us, board)
        )
    job = str(data.get("job", "?"))
    if kind is Kind.LIFE_OVER:
        return text("Alerts", "Stop using batch {batch}, job {job}").format(
            batch=data.get("batch", "?"), job=job
        )
    if kind is Kind.LAST_LOOK:
        return text("Alerts", "Last look: job {job}").format(job=job)
    if kind is Kind.OFF_THE_RACK:
        return text("Alerts", "Job {job} may come off the rack").format(job=job)
    return text("Alerts", "Job {job}: whole job safe to hit").format(job=job)


def body(alert: Alert, board: Board) -> str:
    """Return what happened and what to do, in whole sentences."""
    kind = Kind(alert.kind)
    since = _when(alert.due_us, board)
    data = alert.data
    if kind is Kind.DISTURBED:
        return text("Alerts", "NOTICE. Knocked, pulled or turned at {time}. What did you do? "
                    "Answer on the board; until then nobody may trust it.").format(time=since)
    if kind is Kind.COLD:
        return text(
            "Alerts", "NOTICE. Below {limit} since {time}, and printed times have moved. Warm it, "
            "carry the clubs to the box, or accept the later times."
        ).format(limit=_temperature(data.get("limit_mc"), board), time=since)  # fmt: skip
    if kind is Kind.NO_RECORD:
        return text("Alerts", "NOTICE. A permission within the hour hangs on it. Mend the feed, or "
                    "type a temperature.")
    if kind is Kind.TOO_HOT:
        return text(
            "Alerts", "NOTICE. Well above {limit} since {time}. Switch it off; look for foam, a "
            "soft ferrule, a crept head; say what you saw."
        ).format(limit=_temperature(data.get("limit_mc"), board), time=since)  # fmt: skip
    if kind is Kind.WITHDRAWN:
        return _withdrawn(alert, board)
    if kind is Kind.LIFE_OVER:
        return text("Alerts", "Its working life is over since {time}.").format(time=since)
    if kind is Kind.LAST_LOOK:
        over = data.get("over_us")
        if isinstance(over, int) and alert.raised_us >= over:
            return text("Alerts", "Was due {time}, too late now.").format(time=since)
        return text("Alerts", "Straight, seated and not crept up, ferrule tight, wiped, graphics.")
    if kind is Kind.OFF_THE_RACK:
        return text("Alerts", "Since {time}. Cut and grip; do not hit.").format(time=since)
    job = board.snapshot.jobs.get(alert.subject_id)
    customer = None if job is None else board.snapshot.customers.get(job.customer_id)
    clubs = data.get("clubs")
    n = clubs if isinstance(clubs, int) else 0
    if customer is not None and customer.name:
        return text(
            "Alerts", "%n clubs for {customer}, since {time}. Twist and tap before it goes out.",
            "1 club for {customer}, since {time}. Twist and tap before it goes out.", n,
        ).format(customer=customer.name, time=since)  # fmt: skip
    return text(
        "Alerts", "%n clubs, since {time}. Twist and tap before it goes out.",
        "1 club, since {time}. Twist and tap before it goes out.", n,
    ).format(time=since)  # fmt: skip


def _withdrawn(alert: Alert, board: Board) -> Text:
    was = alert.data.get("was_us")
    time = _when(was, board) if isinstance(was, int) else "?"
    joint = board.snapshot.joints.get(alert.subject_id)
    club = None if joint is None else board.snapshot.clubs.get(joint.club_id)
    place = None if club is None else board.snapshot.place_of(club.id)
    if club is not None and (place is None or place.kind is PlaceKind.OUT):
        customer = board.snapshot.customers.get(board.snapshot.jobs[club.job_id].customer_id)
        return text(
            "Alerts", "WARNING. A head could come off. What was said for {time} no longer holds, "
            "and the club is gone: call {customer} {phone}. Open until reached."
        ).format(
            time=time, customer="" if customer is None else customer.name,
            phone="" if customer is None else customer.phone,
        )  # fmt: skip
    return text(
        "Alerts", "WARNING. A head could come off. What was said for {time} no longer holds. "
        "Put the club back on the rack."
    ).format(time=time)  # fmt: skip


def _names(alert: Alert, board: Board) -> tuple[str, str, str]:
    """Return a joint's club, job number and place."""
    snapshot = board.snapshot
    joint = snapshot.joints.get(alert.subject_id)
    club = None if joint is None else snapshot.clubs.get(joint.club_id)
    if club is None:
        return "?", "?", "?"
    return club.name, snapshot.jobs[club.job_id].number, snapshot.where(club.id) or "–"


def _when(instant: Instant, board: Board) -> str:
    hours = board.snapshot.hours
    local = hours.local(instant)
    today = hours.local(board.ticked_us).date() == local.date()
    return f"{local:%H:%M}" if today else f"{local:%a %H:%M}"


def _temperature(milli_c: object, board: Board) -> str:
    unit = board.snapshot.settings.get(UNIT)
    shown = Unit(unit) if isinstance(unit, str) else Unit.C
    return format_temperature(milli_c, shown) if isinstance(milli_c, int) else "?"


def _short(summary: str) -> str:
    """Cut a summary that is too long; the body says it whole."""
    if len(summary) <= LONGEST_SUMMARY:
        return summary
    return summary[: LONGEST_SUMMARY - 1] + "…"
