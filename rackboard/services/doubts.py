"""Facts that can be true but are more likely a slip: asked about before they are taken."""

from __future__ import annotations

from typing import NamedTuple

from rackboard.core.errors import InputError
from rackboard.core.instants import HOUR_US, MINUTE_US, Instant
from rackboard.core.schedule import OpeningHours
from rackboard.core.text import text

AHEAD_US = 5 * MINUTE_US
"""A clock on the wall may be so far ahead of the board's."""
HALF_DAY_US = 12 * HOUR_US
_NEAR_US = 90 * MINUTE_US


def said_at(at_us: Instant, now: Instant, hours: OpeningHours) -> str:
    """Return a moment as it is said: "15:40", "Mon 15:40"."""
    from rackboard.core.spoken_time import format_moment  # not before somebody errs

    return format_moment(at_us, now, hours)


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
            text("Act", "a time up to now, {now}").format(now=said_at(now, now, hours)),
            text("Act", "{time}, in the future").format(time=said_at(at_us, now, hours)), where,
        )  # fmt: skip
    return min(at_us, now)


def mixed_doubt(at_us: Instant, now: Instant, hours: OpeningHours) -> TimeDoubt | None:
    """Return what is odd about a time of mixing, None if nothing is.

    A time when the shop was closed and that half a day later would be about now was most
    likely meant for the other half of the day.
    """
    ago = now - at_us
    if abs(ago - HALF_DAY_US) <= _NEAR_US and not hours.is_open(at_us):
        meant = at_us + HALF_DAY_US
        question = text(
            "Doubt", "{time} was twelve hours ago and the shop was closed. Was it {meant}?"
        ).format(time=f"{hours.local(at_us):%H:%M}", meant=f"{hours.local(meant):%H:%M}")
        return TimeDoubt(question, at_us, min(meant, now))
    if ago > 2 * HOUR_US and not hours.is_open(at_us):
        question = text("Doubt", "The shop was closed at {time}. Is that right?")
        return TimeDoubt(question.format(time=said_at(at_us, now, hours)), at_us, None)
    if ago > 2 * HALF_DAY_US:
        question = text("Doubt", "{time} is more than a day ago. Is that right?")
        return TimeDoubt(question.format(time=said_at(at_us, now, hours)), at_us, None)
    return None


def glued_doubt(
    at_us: Instant, mixed_us: Instant, life_min: float, now: Instant, hours: OpeningHours
) -> TimeDoubt | None:
    """Return what is odd about a time of gluing: that the batch could hardly be used any more.

    Parameters
    ----------
    at_us, mixed_us, now : int
        When it was glued, when its batch was mixed, and the present [µs UTC].
    life_min : float
        The longest working life of the sheet [min].
    hours : OpeningHours
        Of the shop.
    """
    if at_us - mixed_us <= life_min * MINUTE_US:
        return None
    question = text(
        "Doubt", "At {time} the working life of {minutes} min was over. Is that right?"
    ).format(time=said_at(at_us, now, hours), minutes=f"{life_min:.0f}")
    return TimeDoubt(question, at_us, None)
