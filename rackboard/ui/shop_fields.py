"""The texts of the settings and what they say. No Qt."""

from __future__ import annotations

import re

from rackboard.core.errors import InputError
from rackboard.core.schedule import Hours
from rackboard.core.text import Text, text

_CLOCK = re.compile(r"\s*(\d{1,2})(?:\s*[:.h]\s*(\d{2})|(\d{2}))?\s*(?:h|uhr)?\s*", re.IGNORECASE)
_LENGTH = re.compile(r"\s*(\d{1,3}(?:[.,]\d{0,6})?|[.,]\d{1,6})\s*(m|mm)?\s*", re.IGNORECASE)
_COUNT = re.compile(r"\s*[0-9]{1,4}\s*")
_DAY_MIN = 24 * 60


def clock_text(minutes: int) -> str:
    """Return minutes after midnight as "08:00"."""
    return f"{minutes // 60:02d}:{minutes % 60:02d}"


def read_clock(typed: str, where: str) -> int:
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
    match = _CLOCK.fullmatch(typed)
    if match is not None:
        minutes = int(match[1]) * 60 + int(match[2] or match[3] or 0)
        if minutes <= _DAY_MIN and int(match[2] or match[3] or 0) < 60:
            return minutes
    wanted = text("Settings", "a time of day such as 08:00")
    raise InputError(wanted, typed.strip() or text("Settings", "nothing"), where)


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
        wanted = text("Settings", "a closing hour after the opening hour")
        raise InputError(wanted, said_span(start, end), where)
    return start, end


def said_span(start: int, end: int) -> Text:
    """Return "08:00 to 18:00"."""
    return text("Settings", "{start} to {end}").format(start=clock_text(start), end=clock_text(end))


def read_length(typed: str, unit: str, where: str) -> float:
    """Return a length in its unit, with a point or a comma.

    Raises
    ------
    InputError
        If it is none.

    Examples
    --------
    >>> read_length("3,5 m", "m", "here")
    3.5
    """
    match = _LENGTH.fullmatch(typed)
    if match is None or (match[2] and match[2].lower() != unit):
        wanted = text("Settings", "a number of {unit}").format(unit=unit)
        raise InputError(wanted, typed.strip() or text("Settings", "nothing"), where)
    return float(match[1].replace(",", "."))


def read_count(typed: str, where: str) -> int:
    """Return a whole number.

    Raises
    ------
    InputError
        If it is none.
    """
    if not _COUNT.fullmatch(typed):
        wanted = text("Settings", "a whole number")
        raise InputError(wanted, typed.strip() or text("Settings", "nothing"), where)
    return int(typed)
