"""Facts that can be true but are more likely a slip: asked about before they are taken."""

from __future__ import annotations

from typing import NamedTuple

from rackboard.core.errors import InputError
from rackboard.core.instants import HOUR_US, MINUTE_US, Instant
from rackboard.core.schedule import OpeningHours

AHEAD_US = 5 * MINUTE_US
"""A clock on the wall may be so far ahead of the board's."""
HALF_DAY_US = 12 * HOUR_US
_NEAR_US = 90 * MINUTE_US


class TimeDoubt(NamedTuple):
    """A time of mixing that looks like a slip, and what may have been meant."""

    question: str
    typed_us: Instant
    proposed_us: Instant | None


def check_mixed(at_us: Instant, now: Instant, hours: OpeningHours, where: str) -> Instant:
    """Return a time of mixing; one in the future is refused.

    A few minutes ahead count as now.

    Raises
    ------
    InputError
        If it lies further ahead.
    """
    if at_us > now + AHEAD_US:
        raise InputError(
            f"a time up to now, {hours.local(now):%a %H:%M}",
            f"{hours.local(at_us):%a %H:%M}, in the future", where,
        )  # fmt: skip
    return min(at_us, now)


def mixed_doubt(at_us: Instant, now: Instant, hours: OpeningHours) -> TimeDoubt | None:
    """Return what is odd about a time of mixing, None if nothing is.

    A time when the shop was closed and that half a day later would be about now was most
    likely meant for the other half of the day.
    """
    local, ago = hours.local(at_us), now - at_us
    if abs(ago - HALF_DAY_US) <= _NEAR_US and not hours.is_open(at_us):
        meant = at_us + HALF_DAY_US
        return TimeDoubt(
            f"{local:%H:%M} was twelve hours ago and the shop was closed. "
            f"Was it {hours.local(meant):%H:%M}?",
            at_us, min(meant, now),
        )  # fmt: skip
    if ago > 2 * HOUR_US and not hours.is_open(at_us):
        return TimeDoubt(f"The shop was closed at {local:%a %H:%M}. Is that right?", at_us, None)
    if ago > 2 * HALF_DAY_US:
        return TimeDoubt(f"{local:%a %H:%M} is more than a day ago. Is that right?", at_us, None)
    return None
