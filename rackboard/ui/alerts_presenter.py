"""Alerts as they are shown: cards of what is open, rows of what happened, and what is asked for."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from rackboard.core.alerts.kinds import Kind
from rackboard.core.alerts.machine import Event, Mark, Phase, step
from rackboard.core.alerts.rows import Alert
from rackboard.core.bench import HoldReason
from rackboard.core.instants import DAY_US, Instant
from rackboard.core.schedule import OpeningHours
from rackboard.core.spoken_time import format_moment, parse_moment
from rackboard.core.standing import Standing
from rackboard.services.alert_headlines import OF_JOINT, Voice, about, headlines
from rackboard.services.alert_log import (
    Entry,
    courier_words,
    kind_words,
    outcome_words,
    state_words,
    what_words,
)
from rackboard.services.alert_words import bodies, group, signal_word
from rackboard.services.board import Board
from rackboard.ui.language import say, translated

HOLD, PLAIN = "hold", "plain"
"""Tones of a card: a HOLD's is flooded while nobody has taken it."""


class AlarmCard(NamedTuple):
    """An alarm, or some that are told as one.

    Attributes
    ----------
    key : str
        Names it: "alert:" and the lowest id.
    ids : tuple of int
        The alerts that it shows: what Got it takes.
    signal : str
        "WARNING", "NOTICE" or "": a word of its own above the rest.
    headline, body : str
        Where and what; what happened and what to do.
    button : str
        "Answer…" opens `AlertDialog`; "Got it" takes `ids`.
    answers : bool
        Whether the button opens the dialog.
    speaking : bool
        It is untaken: collar and flood.
    tone : str
        `HOLD` or `PLAIN`.
    """

    key: str
    ids: tuple[int, ...]
    kind: Kind
    signal: str
    headline: str
    body: str
    button: str
    answers: bool
    speaking: bool
    tone: str

    @property
    def accessible(self) -> str:
        """The whole card in one sentence, for a screen reader."""
        signal = f"{self.signal}. " if self.signal else ""
        return f"{signal}{self.headline}. {self.body}"


class Acts(NamedTuple):
    """What a person may do about alerts that are told as one.

    `answer` is the joint on HOLD to be answered for next, `club_id` the club to show.
    """

    got_it: bool = False
    accept: bool = False
    later: bool = False
    reached: bool = False
    nothing_seen: bool = False
    answer: Standing | None = None
    club_id: int | None = None


def groups(alerts: Iterable[Alert], board: Board) -> tuple[tuple[Alert, ...], ...]:
    """Return alerts as they are told: withdrawn permissions of one job and cause as one."""
    found: dict[tuple[object, ...], list[Alert]] = {}
    for alert in alerts:
        key: tuple[object, ...] = (alert.id,)
        if alert.kind == Kind.WITHDRAWN:
            this = about(alert, board)
            milestone = alert.data.get("milestone")
            key = (group(alert, board), this.job, this.gone, milestone, alert.phase)
        found.setdefault(key, []).append(alert)
    return tuple(tuple(members) for members in found.values())


def cards(alerts: Iterable[Alert], board: Board) -> tuple[AlarmCard, ...]:
    """Return the cards of all open alarms, the most pressing first.

    Parameters
    ----------
    alerts : iterable of Alert
        What is open, the most pressing first, as `Alerts.open` gives it.
    board : Board
        For names and places.
    """
    return tuple(
        card(members, board) for members in groups((a for a in alerts if a.is_alarm), board)
    )


def card(members: Sequence[Alert], board: Board) -> AlarmCard:
    """Return the card of alerts that are told as one."""
    alert = members[0]
    kind = Kind(alert.kind)
    answers = kind in (Kind.DISTURBED, Kind.TOO_HOT) or (
        kind is Kind.WITHDRAWN and about(alert, board).gone
    )
    held = any(a.subject_id in board.snapshot.holds for a in members if kind in OF_JOINT)
    tone = HOLD if held or kind is Kind.TOO_HOT else PLAIN
    button = say("Alert", "Answer…") if answers else say("Alert", "Got it")
    return AlarmCard(
        f"alert:{min(a.id for a in members)}", tuple(a.id for a in members), kind,
        translated(signal_word(kind)), translated(headlines(members, board)[1]),
        translated(bodies(members, board)), button, answers, alert.speaks, tone,
    )  # fmt: skip


def acts(members: Sequence[Alert], board: Board) -> Acts:
    """Return what may be done about alerts that are told as one, by the engine's table."""
    alert = members[0]
    kind = Kind(alert.kind)
    club_id = _club_of(alert, board)
    if not alert.is_alarm:
        return Acts(got_it=alert.phase == Mark.DUE, club_id=club_id)
    phase = Phase(alert.phase)

    def may(event: Event) -> bool:
        done = step(kind, phase, event)
        return done.known and not done.refused

    gone = kind is Kind.WITHDRAWN and about(alert, board).gone
    answer = _held(alert, board)
    return Acts(
        got_it=may(Event.GOT_IT) and step(kind, phase, Event.GOT_IT).phase is not phase,
        accept=may(Event.ACCEPT) and phase is not Phase.ACCEPTED,
        later=may(Event.POSTPONE),
        reached=gone,
        nothing_seen=kind is Kind.TOO_HOT and answer is None,
        answer=answer,
        club_id=None if gone else club_id,
    )


def _club_of(alert: Alert, board: Board) -> int | None:
    if alert.kind in OF_JOINT:
        joint = board.snapshot.joints.get(alert.subject_id)
        return None if joint is None else joint.club_id
    for standing in board.standings:
        ids = alert.data.get("joints")
        if isinstance(ids, list) and standing.joint.id in ids:
            return standing.club.id
        if alert.kind == Kind.JOB_SAFE and standing.job.id == alert.subject_id:
            return standing.club.id
    return None


def _held(alert: Alert, board: Board) -> Standing | None:
    """Return the joint whose HOLD has to be answered next."""
    joints = alert.data.get("joints")
    ids = {alert.subject_id} if alert.kind in OF_JOINT else set()
    if alert.kind == Kind.TOO_HOT and isinstance(joints, list):
        ids = {int(n) for n in joints}
    for standing in board.standings:
        hold = standing.hold
        if standing.joint.id in ids and hold is not None:
            if alert.kind == Kind.TOO_HOT and hold.reason is not HoldReason.TOO_HOT:
                continue
            return standing
    return None


# The journal


class Row(NamedTuple):
    """One line of what happened: its id, its cells, and all of it in words."""

    id: int
    cells: tuple[str, ...]
    words: str
    is_open: bool = False


def heads() -> tuple[str, ...]:
    """Return the heads of the columns."""
    return (
        say("AlertsPage", "When"), say("AlertsPage", "Kind"), say("AlertsPage", "Where"),
        say("AlertsPage", "Job"), say("AlertsPage", "What"), say("AlertsPage", "State"),
        say("AlertsPage", "Taken by"), say("AlertsPage", "Outcome"),
        say("AlertsPage", "What the couriers did"),
    )  # fmt: skip


def row(entry: Entry, voice: Voice) -> Row:
    """Return the line of an episode."""
    alert, this = entry.alert, entry.about
    club = f"{this.job}, {this.club}" if this.job and this.club else this.job or this.club
    taken = ""
    if alert.taken_us is not None:
        taken = translated(voice.when(alert.taken_us))
        if alert.taken_by:
            taken = say("AlertsPage", "{who}, {time}").format(who=alert.taken_by, time=taken)
    cells = (
        _span(alert, voice), translated(kind_words(Kind(alert.kind))), this.zone or this.where,
        club, translated(what_words(alert, voice)), translated(state_words(alert)), taken,
        translated(outcome_words(alert)), translated(courier_words(entry.tellings)),
    )  # fmt: skip
    named = (f"{head}: {cell}" for head, cell in zip(heads(), cells, strict=True) if cell)
    return Row(alert.id, cells, ";  ".join(named), alert.is_open)


def _span(alert: Alert, voice: Voice) -> str:
    begin = translated(voice.when(alert.due_us))
    if not alert.is_alarm:
        return begin
    end = alert.ended_us or alert.closed_us
    if end is None:
        return say("AlertsPage", "{begin} –").format(begin=begin)
    local = voice.hours.local
    same = local(end).date() == local(alert.due_us).date()
    until = f"{local(end):%H:%M}" if same else translated(voice.when(end))
    return say("AlertsPage", "{begin} – {end}").format(begin=begin, end=until)


def day_of(typed: str, now: Instant, hours: OpeningHours) -> tuple[Instant, Instant]:
    """Return a day as it is typed: "today", "Fri", "12 March", "2026-03-12"; from … to [µs UTC].

    Raises
    ------
    InputError
        If it is no day up to today.
    """
    moment = parse_moment(f"{typed.strip()} 00:00", now, hours, False, say("AlertsPage", "Day"))
    day = hours.local(moment).date()
    begin = hours.at(day, 0)
    after = hours.local(begin + DAY_US + DAY_US // 8).date()  # a day may have 25 hours
    return begin, hours.at(after, 0)


def when_words(alert: Alert, now: Instant, hours: OpeningHours) -> str:
    """Return since when an open alert holds, and where it stands."""
    since = translated(format_moment(alert.due_us, now, hours))
    state = translated(state_words(alert))
    until = alert.until_us
    if until is not None and alert.phase in (Phase.POSTPONED, Phase.GONE_POSTPONED):
        again = translated(format_moment(until, now, hours))
        return say("Alert", "since {time}: {state} until {until}").format(
            time=since, state=state, until=again
        )
    return say("Alert", "since {time}: {state}").format(time=since, state=state)
