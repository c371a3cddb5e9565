"""What alerts say: where, what happened, what to do, in the bench's own words.

A signal word (ANSI Z535, known from texts about it) is a word of its own above the text, never a
part of a sentence: "WARNING" only where a head could come off, "NOTICE" for damage to a club.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from rackboard.core.alerts.kinds import Kind
from rackboard.core.alerts.machine import Phase
from rackboard.core.alerts.rows import Alert
from rackboard.core.text import Text, text
from rackboard.services.alert_headlines import (
    LONGEST_SUMMARY,
    OF_JOINT,
    OF_ZONE,
    About,
    Voice,
    about,
    headline,
    headlines,
    span,
    voice,
)
from rackboard.services.board import Board

_OVER = (Phase.GONE.value, Phase.GONE_POSTPONED.value)


def signal_word(kind: Kind) -> Text | str:
    """Return the word that stands above an alert; "" for prompts and good news.

    Examples
    --------
    >>> signal_word(Kind.WITHDRAWN), signal_word(Kind.COLD), signal_word(Kind.JOB_SAFE)
    ('WARNING', 'NOTICE', '')
    """
    if kind is Kind.WITHDRAWN:
        return text("Alerts", "WARNING")
    if kind in (*OF_JOINT, *OF_ZONE):
        return text("Alerts", "NOTICE")
    return ""


def group(alert: Alert, board: Board) -> str:
    """Return what an alert is told together with: its job × batch, or its zone."""
    kind = Kind(alert.kind)
    if kind in OF_JOINT:
        joint = board.snapshot.joints.get(alert.subject_id)
        if joint is None:
            return f"joint {alert.subject_id}"
        club = board.snapshot.clubs.get(joint.club_id)
        smear = alert.data.get("smear")
        if smear is not None:
            return f"smear {smear}"
        return f"{0 if club is None else club.job_id}x{joint.batch_id}"
    if kind in OF_ZONE:
        return f"zone {alert.subject_id}"
    return f"{alert.subject_id}x{alert.batch_id}"


def words(
    alerts: Sequence[Alert], board: Board, *, folded: bool = False, several: bool = False
) -> tuple[str, str]:
    """Return the summary, of at most 40 characters, and the body of what is said.

    The signal word stands before the summary where that leaves it short enough, else on a line
    of its own above the body. What a short summary leaves out, the body says first.

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
    n = len(alerts)
    if folded:
        return (
            text("Alerts", "%n more, see the board", "%n more, see the board", n),
            text("Alerts", "Too much at once to tell one by one. The list has all of it."),
        )
    if several:
        return (
            text("Alerts", "%n things since you last looked", "One thing since you last looked",
                 n),
            _lines(_line(alert, board) for alert in alerts),
        )  # fmt: skip
    summary, whole = headlines(alerts, board)
    signal = signal_word(Kind(alerts[0].kind))
    below = bodies(alerts, board)
    if summary != whole:
        below = _lines((text("Alerts", "{what}.").format(what=whole), below))
    if not signal:
        return summary, below
    before = text("Alerts", "{signal}. {what}").format(signal=signal, what=summary)
    if len(before) <= LONGEST_SUMMARY:
        return before, below
    return summary, _lines((signal, below))


def _line(alert: Alert, board: Board) -> Text:
    what, time = headline(alert, board), voice(board).when(alert.due_us)
    signal = signal_word(Kind(alert.kind))
    if signal:
        return text("Alerts", "{signal}. {what} ({time}).").format(
            signal=signal, what=what, time=time
        )
    return text("Alerts", "{what} ({time}).").format(what=what, time=time)


def _lines(parts: Iterable[str]) -> str:
    """Return texts on lines of their own, still to be said in any language."""
    made, *rest = parts
    for part in rest:
        made = text("Alerts", "{above}\n{below}").format(above=made, below=part)
    return made


# Bodies


def bodies(alerts: Sequence[Alert], board: Board) -> str:
    """Return what happened and what to do, of alerts that are told together."""
    if alerts[0].kind != Kind.WITHDRAWN:
        return body(alerts[0], board)
    named = [(alert, about(alert, board)) for alert in alerts]
    here = [(alert, this) for alert, this in named if not this.gone]
    gone = [(alert, this) for alert, this in named if this.gone]
    parts = []
    for members in (here, gone):
        if members:
            alert, this = members[0]
            together = this._replace(where=span(one.where for _, one in members))
            parts.append(_withdrawn(alert, together, voice(board), len(members)))
    return _lines(parts)


def body(alert: Alert, board: Board) -> Text:
    """Return what happened and what to do, in whole sentences."""
    kind, say, data = Kind(alert.kind), voice(board), alert.data
    since = say.when(alert.due_us)
    if kind is Kind.DISTURBED:
        return text("Alerts", "Knocked, pulled or turned at {time}. What did you do? "
                    "Answer on the board; until then nobody may trust it.").format(time=since)
    if kind in OF_ZONE:
        return _zone_body(alert, say)
    if kind is Kind.WITHDRAWN:
        return _withdrawn(alert, about(alert, board), say)
    if kind is Kind.LIFE_OVER:
        return text("Alerts", "Its working life is over since {time}.").format(time=since)
    if kind is Kind.LAST_LOOK:
        over = data.get("over_us")
        if isinstance(over, int) and alert.raised_us >= over:
            return text("Alerts", "Was due {time}, too late now.").format(time=since)
        return text("Alerts", "Straight, seated and not crept up, ferrule tight, wiped, graphics.")
    if kind is Kind.OFF_THE_RACK:
        return text("Alerts", "Since {time}. Cut and grip; do not hit.").format(time=since)
    clubs, customer = data.get("clubs"), about(alert, board).customer
    n = clubs if isinstance(clubs, int) else 0
    if customer:
        return text(
            "Alerts", "%n clubs for {customer}, since {time}. Twist and tap before it goes out.",
            "1 club for {customer}, since {time}. Twist and tap before it goes out.", n,
        ).format(customer=customer, time=since)  # fmt: skip
    return text(
        "Alerts", "%n clubs, since {time}. Twist and tap before it goes out.",
        "1 club, since {time}. Twist and tap before it goes out.", n,
    ).format(time=since)  # fmt: skip


def _zone_body(alert: Alert, say: Voice) -> Text:
    kind, since, limit = Kind(alert.kind), say.when(alert.due_us), alert.data.get("limit_mc")
    over = alert.phase in _OVER and alert.ended_us is not None
    if over and kind is Kind.COLD:
        return text(
            "Alerts", "It was below {limit} from {time} to {end} and is warm again. Got it closes "
            "it; the times that moved stay as they are."
        ).format(limit=say.air(limit), time=since, end=say.when(alert.ended_us or 0))  # fmt: skip
    if over:
        return text(
            "Alerts", "It was missing from {time} to {end} and is known again. Got it closes it."
        ).format(time=since, end=say.when(alert.ended_us or 0))
    if kind is Kind.COLD:
        return text(
            "Alerts", "Below {limit} since {time}, and printed times have moved. Warm it, "
            "carry the clubs to the box, or accept the later times."
        ).format(limit=say.air(limit), time=since)  # fmt: skip
    if kind is Kind.NO_RECORD:
        return text("Alerts", "A permission within the hour hangs on it. Mend the feed, or "
                    "type a temperature.")  # fmt: skip
    return text(
        "Alerts", "Well above {limit} since {time}. Switch it off; look for foam, a "
        "soft ferrule, a crept head; say what you saw."
    ).format(limit=say.air(limit), time=since)  # fmt: skip


def _withdrawn(alert: Alert, this: About, say: Voice, n: int = 1) -> Text:
    was = alert.data.get("was_us")
    time = say.when(was) if isinstance(was, int) else "?"
    if not (this.gone or this.where):
        return text(
            "Alerts", "A head could come off. What was said for {time} no longer holds. "
            "Find %n clubs and put them back on the rack.",
            "A head could come off. What was said for {time} no longer holds. "
            "Find the club and put it back on the rack.", n,
        ).format(time=time)  # fmt: skip
    if not this.gone:
        return text(
            "Alerts", "A head could come off. %n clubs are at {where}. What was said for {time} "
            "no longer holds. Put the clubs back on the rack.",
            "A head could come off. The club is at {where}. What was said for {time} "
            "no longer holds. Put the club back on the rack.", n,
        ).format(time=time, where=this.where)  # fmt: skip
    if not (this.customer or this.phone):
        return text(
            "Alerts", "A head could come off. What was said for {time} no longer holds, and "
            "%n clubs are gone: find whose they are and call. Open until reached.",
            "A head could come off. What was said for {time} no longer holds, and "
            "the club is gone: find whose it is and call. Open until reached.", n,
        ).format(time=time)  # fmt: skip
    return text(
        "Alerts", "A head could come off. What was said for {time} no longer holds, and "
        "%n clubs are gone: call {customer} {phone}. Open until reached.",
        "A head could come off. What was said for {time} no longer holds, and "
        "the club is gone: call {customer} {phone}. Open until reached.", n,
    ).format(time=time, customer=this.customer, phone=this.phone)  # fmt: skip
