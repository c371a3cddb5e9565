"""Times in what is shown, and an independent way to say the instants that a board knows."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from datetime import date, datetime, timedelta, tzinfo
from enum import Enum

from rackboard.core.cure.forecast import printed_time
from rackboard.core.instants import DAY_US, MINUTE_US, Instant, to_datetime
from rackboard.services.board import Board
from rackboard.store import Store

DAYS = {
    "en": ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"),
    "de": ("Mo", "Di", "Mi", "Do", "Fr", "Sa", "So"),
}
MONTHS = {
    "en": ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"],
    "de": ["Jan", "Feb", "Mär", "Apr", "Mai", "Jun", "Jul", "Aug", "Sep", "Okt", "Nov", "Dez"],
}
COUNTDOWN = re.compile(
    r"\b(?:in|noch|still|another)\s+\d+(?:½)?\s*(?:s|sec|min|h|hours?|minutes?|Std|Stunden?"
    r"|Minuten?)\b(?!\s+(?:at|in|bei)\b)"
    r"|\d\s*(?:s|min|h|hours?|minutes?)\s+(?:left|to go|remaining|more to go|übrig)\b"
    r"|\b\d+:\d\d:\d\d\b|[−-]\d+:\d\d\b|\bT-\d",
    re.IGNORECASE,
)
"""Ways to say how long it still takes instead of when."""


def strings(value: object) -> Iterator[str]:
    """Yield every string inside a display value."""
    if isinstance(value, Enum):
        return
    if isinstance(value, str):
        yield value
    elif isinstance(value, list | tuple):
        for part in value:
            yield from strings(part)
    elif is_dataclass(value):
        for field in fields(value):
            yield from strings(getattr(value, field.name))


def times_in(text: str, language: str = "en") -> list[str]:
    """Return every time of day in a text, with its day if it stands before it.

    Examples
    --------
    >>> times_in("room, Mon 18:00 to 07:55; 21 Mar 08:00")
    ['Mon 18:00', '07:55', '21 Mar 08:00']
    """
    days, months = "|".join(DAYS[language]), "|".join(MONTHS[language])
    day = rf"(?:(?:{days})|\d{{1,2}}\.? (?:{months}))"
    return re.findall(rf"(?:\b{day} )?(?<![\d:])\d\d:\d\d(?![\d:])", text)


def said_at(instant: Instant, now: Instant, zone: tzinfo, language: str = "en") -> str:
    """Return an instant as board.md has it: HH:MM, the weekday if not today, the date if far."""
    local, today = _local(instant, zone), _local(now, zone).date()
    clock = f"{local.hour:02}:{local.minute:02}"
    if local.date() == today:
        return clock
    return f"{_day(local.date(), today, language)} {clock}"


def _day(day: date, today: date, language: str) -> str:
    if abs(day - today) < timedelta(days=7):
        return DAYS[language][day.weekday()]
    dot = "." if language == "de" else ""
    return f"{day.day}{dot} {MONTHS[language][day.month - 1]}"


def _local(instant: Instant, zone: tzinfo) -> datetime:
    return to_datetime(instant).astimezone(zone)


def known_instants(board: Board, store: Store, now: Instant) -> set[Instant]:
    """Return every instant that the board may rightly speak of."""
    found = {now, board.ticked_us}
    snapshot = board.snapshot
    for standing in board.standings:
        found |= {t for t in (
            standing.since_us, standing.not_before_us, standing.probably_us,
            standing.batch.mixed_us, standing.job.promised_us,
        ) if t is not None}  # fmt: skip
        if standing.use_by_us is not None:
            found |= {standing.use_by_us, standing.use_by_us - 10 * MINUTE_US}
        if standing.hold is not None:
            found.add(standing.hold.from_us)
        if standing.released is not None:
            found.add(standing.released.at_us)
        if standing.outcome is not None:
            forecast = standing.outcome.forecast
            for bounds in (forecast.handling, forecast.full_cure):
                if bounds is not None:
                    found |= {printed_time(bounds.late)} if bounds.late is not None else set()
                    found |= {bounds.expected} if bounds.expected is not None else set()
        for grant in snapshot.grants.get(standing.joint.id, {}).values():
            found.add(grant.printed_us)
    for record in (board.records() if board.reckoned else {}).values():
        if record.last is not None:
            found.add(record.last.at_us)
    for question in board.questions():
        found |= {question.from_us, question.to_us}
    for event in store.journal.events(500, from_us=now - 10 * DAY_US):
        found.add(event.at_us)
        found |= {n for n in event.data.values() if isinstance(n, int) and n > 10**14}
    return found
