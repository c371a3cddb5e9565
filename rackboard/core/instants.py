"""Instants: whole microseconds since 1970-01-01T00:00Z, always UTC.

Integers keep their exact value through the store and through differences, so that
shifting every instant by the same amount shifts every answer by exactly that amount.
Local time exists only where something is shown or typed.
"""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from typing import Protocol

from rackboard.core.errors import InputError
from rackboard.core.text import text

Instant = int

SECOND_US = 1_000_000
MINUTE_US = 60 * SECOND_US
HOUR_US = 3600 * SECOND_US
DAY_US = 24 * HOUR_US

_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
_US = timedelta(microseconds=1)


class Clock(Protocol):
    """Whoever needs the time is handed one of these; nobody else asks the system."""

    def now(self) -> Instant:
        """Return the present instant [µs UTC]."""


def from_datetime(moment: datetime) -> Instant:
    """Return the instant [µs UTC] of an aware datetime.

    Parameters
    ----------
    moment : datetime
        Aware; a naive one names no instant.

    Returns
    -------
    int
        Microseconds since the epoch.

    Raises
    ------
    ValueError
        If `moment` is naive.

    Examples
    --------
    >>> from_datetime(datetime(1970, 1, 1, 0, 0, 1, tzinfo=UTC))
    1000000
    """
    if moment.tzinfo is None:
        raise ValueError("a time without an offset names no instant")
    return (moment - _EPOCH) // _US


def to_datetime(instant: Instant) -> datetime:
    """Return the aware UTC datetime of an instant [µs UTC].

    Examples
    --------
    >>> to_datetime(1_000_000).isoformat()
    '1970-01-01T00:00:01+00:00'
    """
    return _EPOCH + timedelta(microseconds=instant)


def parse_iso(written: str, where: str) -> Instant:
    """Return the instant [µs UTC] of an ISO 8601 text that carries an offset.

    Parameters
    ----------
    written : str
        For example ``2026-03-11T09:10:00+01:00`` or ``2026-03-11T08:10Z``.
    where : str
        Named in the error.

    Raises
    ------
    InputError
        If the text is no ISO 8601 time, or has no offset.

    Examples
    --------
    >>> parse_iso("1970-01-01T01:00:00+01:00", "here")
    0
    """
    wanted = text(
        "Moment", "an ISO 8601 time with its offset, such as 2026-03-11T09:10:00+01:00"
    )  # fmt: skip
    try:
        moment = datetime.fromisoformat(written.strip())
    except ValueError:
        raise InputError(wanted, written, where) from None
    if moment.tzinfo is None:
        raise InputError(
            wanted, text("Moment", "{came} (no offset)").format(came=written), where
        )  # fmt: skip
    try:
        return from_datetime(moment)
    except OverflowError:
        raise InputError(wanted, written, where) from None
