"""Times as loggers write them: explicit formats only, and the offsets of a zone.

Between the text and the instant stands local time, counted as µs as if it were UTC.
"""

from __future__ import annotations

import re
from datetime import UTC, date, datetime, timedelta, timezone
from enum import StrEnum
from typing import TYPE_CHECKING

from rackboard.core.errors import InputError
from rackboard.core.instants import DAY_US, HOUR_US, MINUTE_US, SECOND_US, Instant
from rackboard.core.text import text

if TYPE_CHECKING:
    from collections.abc import Iterable
    from datetime import tzinfo

EARLIEST_YEAR = 1970
LATEST_YEAR = 2199
_GAP = "[ \N{NO-BREAK SPACE}\N{NARROW NO-BREAK SPACE}]"
_DATE = r"(\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4})"
_HALF = rf"(?:{_GAP}?([AaPp])\.?{_GAP}?[Mm]\.?)?"
_CLOCK = rf"(\d{{1,2}}):(\d{{2}})(?::(\d{{2}})(?:[.,](\d{{1,9}}))?)?{_HALF}"
_OFFSET = rf"(?:{_GAP}?(Z|z|UTC|GMT|(?:UTC|GMT)?[+-]\d{{1,2}}(?::?\d{{2}})?))?"
_STAMP = re.compile(rf"{_DATE}(?:[Tt]|,?{_GAP}{{1,3}}){_CLOCK}{_OFFSET}", re.ASCII)
_ONLY_DATE = re.compile(_DATE, re.ASCII)
_ONLY_CLOCK = re.compile(_CLOCK + _OFFSET, re.ASCII)
_EPOCH = re.compile(r"([12]\d{9})(?:[.,](\d{1,6})\d*|(\d{3}))?", re.ASCII)
_NAMED_OFFSET = re.compile(r"(?:UTC|GMT|Z)?([+-])?(\d{1,2})?:?(\d{2})?", re.ASCII | re.IGNORECASE)
_HEADER_ZONE = re.compile(
    r"\b(?:UTC|GMT)\b(?: ?[+-]\d{1,2}(?::?\d{2})?)?|(?<![\w.])[+-]\d{2}:\d{2}\b", re.ASCII
)
_FIRST_DAY = date(1970, 1, 1).toordinal()


class DateOrder(StrEnum):
    """The order of day, month and year where the year does not stand first in four digits."""

    YMD = "ymd"
    DMY = "dmy"
    MDY = "mdy"


def looks_like_stamp(cell: str) -> bool:
    """Return whether a cell holds a date and a clock time."""
    return _STAMP.fullmatch(cell) is not None


def looks_like_date(cell: str) -> bool:
    """Return whether a cell holds a date alone."""
    return _ONLY_DATE.fullmatch(cell) is not None


def looks_like_clock(cell: str) -> bool:
    """Return whether a cell holds a clock time alone."""
    return _ONLY_CLOCK.fullmatch(cell) is not None


def looks_like_epoch(cell: str) -> bool:
    """Return whether a cell holds seconds or milliseconds since 1970, from 2001 on."""
    return _EPOCH.fullmatch(cell) is not None


def date_of(cell: str) -> str | None:
    """Return the date's text in a cell that begins with one."""
    match = _ONLY_DATE.match(cell)
    return match[1] if match else None


def named_zone_in(header: str) -> str | None:
    """Return the offset that a column's header names, such as "UTC" or "GMT-05:00"."""
    match = _HEADER_ZONE.search(header)
    return match[0].replace(" ", "") if match else None


def _parts(text: str) -> tuple[str, str, str, bool] | None:
    first, second, third = re.split("[-/.]", text)
    dotted = "." in text
    if (dotted and ("-" in text or "/" in text)) or ("-" in text and "/" in text):
        return None
    return first, second, third, dotted


def day_us(text: str, order: DateOrder | None) -> int | None:
    """Return local midnight [µs] of a date, or None if it is no date in that order."""
    parts = _parts(text)
    if parts is None:
        return None
    first, second, third, _ = parts
    if len(first) == 4:
        year, month, day = first, second, third
    elif order is DateOrder.DMY:
        day, month, year = first, second, third
    elif order is DateOrder.MDY:
        month, day, year = first, second, third
    elif order is DateOrder.YMD:
        year, month, day = first, second, third
    else:
        return None
    if len(year) not in (2, 4) or len(day) > 2:
        return None
    full_year = int(year) + (2000 if len(year) == 2 else 0)
    if not EARLIEST_YEAR <= full_year <= LATEST_YEAR:
        return None
    try:
        return (date(full_year, int(month), int(day)).toordinal() - _FIRST_DAY) * DAY_US
    except ValueError:
        return None


def guess_order(dates: Iterable[str]) -> DateOrder | None:
    """Return the only order in which a file's dates make sense, or None: ask.

    Parameters
    ----------
    dates : iterable of str
        The dates' texts. Four digits in front are year, month, day; points mean day,
        month, year. Everything else is settled by a day above 12 or not at all.

    Returns
    -------
    DateOrder or None
        None if more than one order, or none, reads most of them.

    Examples
    --------
    >>> guess_order(["03/04/2026", "13/04/2026"])
    <DateOrder.DMY: 'dmy'>
    >>> guess_order(["03/04/2026"]) is None
    True
    """
    distinct = set(dates)
    short = [parts for text in distinct if (parts := _parts(text)) and len(parts[0]) < 4]
    if not short:
        return DateOrder.YMD if distinct else None
    if all(dotted for *_, dotted in short):
        orders = [DateOrder.DMY]
    else:
        orders = [DateOrder.DMY, DateOrder.MDY]
        firsts = {first for first, *_ in short}
        lasts = {last for _, _, last, _ in short}
        years_last = any(len(last) == 4 for last in lasts) or (len(lasts) == 1 and len(firsts) > 1)
        if not years_last:
            orders.append(DateOrder.YMD)
    scores = {order: sum(day_us(text, order) is not None for text in distinct) for order in orders}
    best = max(scores.values())
    winners = [order for order in orders if scores[order] == best]
    return winners[0] if best and len(winners) == 1 else None


class StampReader:
    """Reads the stamps of one file; dates are remembered, as they repeat.

    Parameters
    ----------
    order : DateOrder or None
        For dates without a four-digit year in front.
    """

    def __init__(self, order: DateOrder | None) -> None:
        self._order = order
        self._days: dict[str, int | None] = {}

    def read(self, cell: str) -> tuple[int, int | None] | None:
        """Return local µs and the offset [µs] that the cell itself gives, if any.

        Parameters
        ----------
        cell : str
            Date and clock time, or seconds since 1970.

        Returns
        -------
        tuple or None
            None if it is no time.
        """
        match = _STAMP.fullmatch(cell)
        if match is None:
            return _epoch_us(cell)
        day, hours, minutes, seconds, part, half, offset = match.groups()
        if day in self._days:
            midnight = self._days[day]
        else:
            midnight = self._days[day] = day_us(day, self._order)
        hour, minute, second = int(hours), int(minutes), int(seconds or 0)
        if half:
            if not 1 <= hour <= 12:
                return None
            hour = hour % 12 + (12 if half in "Pp" else 0)
        if midnight is None or hour > 23 or minute > 59 or second > 59:
            return None
        local = midnight + hour * HOUR_US + minute * MINUTE_US + second * SECOND_US
        if part:
            local += int(part[:6].ljust(6, "0"))
        return local, None if offset is None else _offset_us(offset)


def _epoch_us(cell: str) -> tuple[int, int] | None:
    match = _EPOCH.fullmatch(cell)
    if match is None:
        return None
    seconds, part, milli = match.groups()
    fraction = (part or milli or "").ljust(6, "0")
    return int(seconds) * SECOND_US + int(fraction), 0


def _offset_us(text: str) -> int | None:
    """Return a named offset [µs], None if it is none that exists."""
    match = _NAMED_OFFSET.fullmatch(text)
    if match is None:
        return None
    sign, hours, minutes = match.groups()
    if bool(sign) != bool(hours):
        return None
    offset = int(hours or 0) * HOUR_US + int(minutes or 0) * MINUTE_US
    if offset > 18 * HOUR_US or int(minutes or 0) > 59:
        return None
    return -offset if sign == "-" else offset


def zone_named(name: str, where: str) -> tzinfo:
    """Return the zone of a name such as "Europe/Berlin", "UTC" or "UTC+01:00".

    Parameters
    ----------
    name : str
        A name of the zone database, or a fixed offset.
    where : str
        Named in the error.

    Returns
    -------
    tzinfo
        The zone.

    Raises
    ------
    InputError
        If there is no such zone.
    """
    offset_us = _offset_us(name.strip()) if name.strip() else None
    if offset_us is not None:
        return timezone(timedelta(microseconds=offset_us)) if offset_us else UTC
    from zoneinfo import ZoneInfo

    try:
        return ZoneInfo(name.strip())
    except (KeyError, ValueError, OSError):
        wanted = text("Logger", "a time zone such as Europe/Berlin or UTC+01:00")
        raise InputError(wanted, name or text("Logger", "nothing"), where) from None


class LocalClock:
    """What a clock on the wall of one zone means; hours without a change are remembered.

    Parameters
    ----------
    zone : tzinfo
        The zone.
    """

    def __init__(self, zone: tzinfo) -> None:
        self._zone = zone
        self._hours: dict[int, int | None] = {}

    def instants(self, local_us: int) -> tuple[Instant, Instant]:
        """Return the instants [µs UTC] that a local time [µs] can mean.

        Parameters
        ----------
        local_us : int
            Local time as if it were UTC.

        Returns
        -------
        tuple of int
            Twice the same for a plain time; the earlier and the later one for a time that
            happened twice; **falling** for a time that the clock skipped.
        """
        hour = local_us // HOUR_US
        if hour not in self._hours:
            start = hour * HOUR_US
            offsets = {*self._offsets(start), *self._offsets(start + HOUR_US - 1)}
            self._hours[hour] = offsets.pop() if len(offsets) == 1 else None
        plain = self._hours[hour]
        if plain is not None:
            return local_us - plain, local_us - plain
        first, second = self._offsets(local_us)
        return local_us - first, local_us - second

    def _offsets(self, local_us: int) -> tuple[int, int]:
        moment = datetime(1970, 1, 1) + timedelta(microseconds=local_us)
        micro = timedelta(microseconds=1)
        first = moment.replace(tzinfo=self._zone).utcoffset() or timedelta()
        second = moment.replace(tzinfo=self._zone, fold=1).utcoffset() or timedelta()
        return first // micro, second // micro
