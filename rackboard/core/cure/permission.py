"""When a permission is given, and when it is taken back.

A limit fires at its early bound. A permission is given only at its late bound, at the printed
time, and only when the record reaches it: a reading at or after the late instant and no open
gap before it. A grant once given is withdrawn only when new facts move its late bound more
than five minutes past now.
"""

from __future__ import annotations

from rackboard.core.cure.forecast import printed_time
from rackboard.core.instants import MINUTE_US, Instant

WITHDRAW_US = 5 * MINUTE_US
"""A late bound may lie so far after now before a grant is withdrawn [decision]."""


def is_earned(
    late_us: Instant | None, record_end_us: Instant, gap_us: Instant | None, now_us: Instant
) -> bool:
    """Return whether a permission may be given now.

    Parameters
    ----------
    late_us : int or None
        Late bound [µs UTC]; None: not within 60 days.
    record_end_us : int
        Up to where stored readings settle the joint's temperature [µs UTC].
    gap_us : int or None
        Where an open gap of the record begins [µs UTC].
    now_us : int
        The present [µs UTC].

    Examples
    --------
    >>> is_earned(0, 0, None, 5 * MINUTE_US)
    True
    >>> is_earned(0, -1, None, 5 * MINUTE_US)
    False
    """
    return (
        late_us is not None
        and late_us <= record_end_us
        and (gap_us is None or late_us <= gap_us)
        and now_us >= printed_time(late_us)
    )


def is_void(late_us: Instant | None, now_us: Instant) -> bool:
    """Return whether new facts take a permission back that was given.

    Parameters
    ----------
    late_us : int or None
        Late bound by what is known now [µs UTC].
    now_us : int
        The present [µs UTC].
    """
    return late_us is None or late_us > now_us + WITHDRAW_US
