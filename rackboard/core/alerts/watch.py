"""Conditions with a delay and a deadband: when a zone is cold, or hot, long enough to say so."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from rackboard.core.instants import MINUTE_US, Instant

DEADBAND_MC = 1_000
"""A cold zone is cold no more when it is so much above its limit [m°C, decision]."""
HOT_MARGIN_MC = 3_000
HOT_BACK_MC = 2_000
"""Too hot: above the lowest maximum of the sheets by the margin, off below it by HOT_BACK
[m°C, decision]."""


class Limit(NamedTuple):
    """A condition on a zone's air.

    Attributes
    ----------
    on_mc, off_mc : int
        Beyond the first it comes on, beyond the second, the other way, off [m°C].
    below : bool
        Whether it comes on below `on_mc` rather than above.
    on_delay_us, off_delay_us : int
        How long the air must have been there without a break.
    """

    on_mc: int
    off_mc: int
    below: bool
    on_delay_us: Instant
    off_delay_us: Instant

    def is_beyond(self, air_mc: int) -> bool:
        """Return whether this air brings the condition on."""
        return air_mc < self.on_mc if self.below else air_mc > self.on_mc

    def is_back(self, air_mc: int) -> bool:
        """Return whether this air takes the condition off."""
        return air_mc > self.off_mc if self.below else air_mc < self.off_mc


def cold_limit(minimum_mc: int, u_mc: int) -> Limit:
    """Return when a zone is below a sheet's minimum by its uncertainty [m°C].

    Examples
    --------
    >>> cold_limit(15_000, 1_000).on_mc
    16000
    """
    on = minimum_mc + u_mc
    return Limit(on, on + DEADBAND_MC, True, 10 * MINUTE_US, 15 * MINUTE_US)


def hot_limit(maximum_mc: int) -> Limit:
    """Return when a zone is well above a sheet's maximum [m°C].

    Examples
    --------
    >>> hot_limit(60_000).on_mc, hot_limit(60_000).off_mc
    (63000, 62000)
    """
    return Limit(
        maximum_mc + HOT_MARGIN_MC, maximum_mc + HOT_BACK_MC, False, 5 * MINUTE_US, 15 * MINUTE_US
    )


class Watch(NamedTuple):
    """How far a condition has come.

    Attributes
    ----------
    on : bool
        Whether it holds.
    turning_us : int or None
        Since when the air speaks for a change without a break [µs UTC].
    since_us : int or None
        Since when the air has been beyond the limit, as long as the condition holds.
    changed_us : int or None
        When it came on, or went off, after its delay.
    """

    on: bool = False
    turning_us: Instant | None = None
    since_us: Instant | None = None
    changed_us: Instant | None = None


def taken_in(watch: Watch, limit: Limit, at_us: Instant, air_mc: int) -> Watch:
    """Return a condition after one more reading.

    A condition changes only with a reading that still speaks for it when its delay is over:
    silence proves nothing.

    Parameters
    ----------
    watch : Watch
        As it was after the reading before.
    limit : Limit
        What is watched for.
    at_us : int
        When it was read [µs UTC]; never before the last one.
    air_mc : int
        The air [m°C].

    Examples
    --------
    >>> limit = hot_limit(60_000)
    >>> watch = taken_in(Watch(), limit, 0, 70_000)
    >>> taken_in(watch, limit, 5 * MINUTE_US, 70_000).on
    True
    """
    speaks = limit.is_back(air_mc) if watch.on else limit.is_beyond(air_mc)
    if not speaks:
        return watch if watch.turning_us is None else watch._replace(turning_us=None)
    turning = at_us if watch.turning_us is None else watch.turning_us
    delay = limit.off_delay_us if watch.on else limit.on_delay_us
    if at_us - turning < delay:
        return watch._replace(turning_us=turning)
    if watch.on:
        return Watch(False, None, None, at_us)
    return Watch(True, None, turning, at_us)


def watched(limit: Limit, readings: Iterable[tuple[Instant, int]]) -> Watch:
    """Return a condition after readings, in order: (instant [µs UTC], air [m°C])."""
    watch = Watch()
    for at_us, air_mc in readings:
        watch = taken_in(watch, limit, at_us, air_mc)
    return watch


MISSED_SAMPLES = 3
MISSED_LEAST_US = 15 * MINUTE_US
HANGS_US = 60 * MINUTE_US
"""A missing record is an alarm after three samples and a quarter of an hour, if a permission
within the hour hangs on it [decision]."""


def missed_since(
    last_us: Instant | None, interval_us: Instant, now_us: Instant
) -> Instant | None:
    """Return since when a feed's record is missing; None while it isn't late enough.

    Parameters
    ----------
    last_us : int or None
        The feed's last reading [µs UTC]; None: there has never been one.
    interval_us : int
        How often it usually sends one [µs].
    now_us : int
        The present [µs UTC].

    Examples
    --------
    >>> missed_since(0, MINUTE_US, 14 * MINUTE_US) is None
    True
    >>> missed_since(0, MINUTE_US, 15 * MINUTE_US)
    0
    """
    if last_us is None:
        return None
    late = max(MISSED_SAMPLES * interval_us, MISSED_LEAST_US)
    return last_us if now_us - last_us >= late else None
