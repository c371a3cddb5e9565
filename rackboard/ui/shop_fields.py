"""The texts of the settings and what they say. No Qt."""

from __future__ import annotations

import re

from rackboard.core.errors import InputError
from rackboard.core.schedule import Hours

_CLOCK = re.compile(r"\s*(\d{1,2})(?:\s*[:.h]\s*(\d{2})|(\d{2}))?\s*(?:h|uhr)?\s*", re.IGNORECASE)
_DAY_MIN = 24 * 60


def clock_text(minutes: int) -> str:
    """Return minutes after midnight as "08:00"."""
    return f"{minutes // 60:02d}:{minutes % 60:02d}"


def read_clock(text: str, where: str) -> int:
    """Return a time of day in minutes after midnight; 24:00 is the end of the day.

    Raises
    ------
    InputError
        If it is none.

    Examples
    --------
    >>> read_clock("8", "here"), read_clock("17:30", "here"), read_clock("0730", "here")
    (480, 1050, 450)
    """
    match = _CLOCK.fullmatch(text)
    if match is not None:
        minutes = int(match[1]) * 60 + int(match[2] or match[3] or 0)
        if minutes <= _DAY_MIN and int(match[2] or match[3] or 0) < 60:
            return minutes
    raise InputError("a time of day such as 08:00", text.strip() or "nothing", where)


def read_day(opening: str, closing: str, closed: bool, where: str) -> Hours:
    """Return one day's hours; None if it is closed.

    Raises
    ------
    InputError
        If a time is none, or the day closes before it opens.
    """
    if closed:
        return None
    start, end = read_clock(opening, where), read_clock(closing, where)
    if start >= end:
        came = f"{clock_text(start)} to {clock_text(end)}"
        raise InputError("a closing hour after the opening hour", came, where)
    return start, end
