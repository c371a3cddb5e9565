"""Milestones of a joint: when each is reached early, expected and late."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from rackboard.core.cure.calibration import CureModel
from rackboard.core.cure.record import Point, Stretch, clip, linear
from rackboard.core.cure.run import HORIZON_US, Bond, Curves, Life, Run, Track
from rackboard.core.errors import InputError
from rackboard.core.instants import MINUTE_US, SECOND_US, Instant, to_datetime
from rackboard.core.text import text

PRINT_STEP_US = 5 * MINUTE_US
"""Permissions are printed at full five minutes [decision]."""
PRINT_MARGIN_US = 60 * SECOND_US
"""A printed time lies at least this after the late bound [decision]."""


class Bounds(NamedTuple):
    """One milestone as three instants [µs UTC]; None: not within 60 days of mixing."""

    early: Instant | None
    expected: Instant | None
    late: Instant | None


class Forecast(NamedTuple):
    """What a joint's record and outlook come to.

    `handling` is None where the sheet gives no handling time. `gel_early` is when a
    disturbed joint may first have gelled. `gap_us` is where an open gap of the record begins.
    """

    working_life: Bounds
    handling: Bounds | None
    full_cure: Bounds
    gel_early: Instant | None
    gap_us: Instant | None


NEVER = Bounds(None, None, None)


def printed_time(late_us: Instant) -> Instant:
    """Return the time that is printed as "not before" for a late bound.

    The first full five minutes that lies at least 60 s after it.

    Examples
    --------
    >>> printed_time(0) // MINUTE_US, printed_time(4 * MINUTE_US + 1) // MINUTE_US
    (5, 10)
    """
    return -(-(late_us + PRINT_MARGIN_US) // PRINT_STEP_US) * PRINT_STEP_US


def later(first: Instant | None, second: Instant | None) -> Instant | None:
    """Return the later of two bounds; None (never) is later than anything."""
    return None if first is None or second is None else max(first, second)


def earlier(first: Instant | None, second: Instant | None) -> Instant | None:
    """Return the earlier of two bounds; None is never."""
    if first is None or second is None:
        return first if second is None else second
    return min(first, second)


def complete(run: Run[Curves], ahead: Iterable[Stretch]) -> None:
    """Advance a run (a copy, usually) until nothing is left to reach, or for 60 days."""
    horizon = run.mixed_us + HORIZON_US
    for stretch in ahead:
        if stretch.start_us >= horizon or run.done:
            return
        run.advance(stretch)


def _reached(track: Track | None, index: int, mixed_us: Instant) -> Instant | None:
    if track is None or len(track.reached_us) <= index:
        return None
    at = track.reached_us[index]
    return at if at <= mixed_us + HORIZON_US else None


def life_bounds(life: Life, mixed_us: Instant) -> Bounds:
    """Return the working life's three bounds, as far as a run has come."""
    return Bounds(
        _reached(life.early, 0, mixed_us),
        _reached(life.expected, 0, mixed_us),
        _reached(life.late, 0, mixed_us),
    )


def milestones(run: Run[Bond]) -> Forecast:
    """Return what a completed run has reached.

    Full cure is given at the later of its own bound and that of handling, in all three.
    """
    bond, mixed = run.curves, run.mixed_us
    handling = None
    if bond.late_handling is None:
        full = Bounds(
            _reached(bond.early_handling, 1, mixed),
            _reached(bond.expected, 0, mixed),
            _reached(bond.late_full, 0, mixed),
        )
    else:
        handling = Bounds(
            _reached(bond.early_handling, 1, mixed),
            _reached(bond.expected, 0, mixed),
            _reached(bond.late_handling, 0, mixed),
        )
        full = Bounds(
            later(_reached(bond.early_full, 0, mixed), handling.early),
            later(_reached(bond.expected, 1, mixed), handling.expected),
            later(_reached(bond.late_full, 0, mixed), handling.late),
        )
    gel = _reached(bond.early_handling, 0, mixed)
    return Forecast(life_bounds(bond.life, mixed), handling, full, gel, run.gap_us)


def forecast_record(
    model: CureModel,
    points: Sequence[Point],
    mixed_us: Instant,
    *,
    lag_s: float = 0.0,
    parts: Point | None = None,
) -> Forecast:
    """Return the milestones of a joint glued as soon as mixed, on a finished record.

    Straight lines between the readings, the last one held; no nights, gaps or hours.

    Parameters
    ----------
    model : CureModel
        Of the sheet.
    points : sequence of Point
        The record, ascending.
    mixed_us : int
        When it was mixed [µs UTC], inside the record.
    lag_s : float, optional
        First-order lag of the joint [s].
    parts : Point, optional
        Start temperature of the parts; the first reading if not given.

    Raises
    ------
    InputError
        If the mixing time lies outside the record.
    """
    first, last = points[0].at_us, points[-1].at_us
    if not first <= mixed_us <= last:
        raise InputError(
            text("Sheet", "a mixing time inside the record, {first} to {last}").format(
                first=_iso(first), last=_iso(last)
            ),
            _iso(mixed_us),
            text("Sheet", "mixed at"),
        )
    start = parts or points[0]
    bond = Run(Bond(model, early_permissions=True), mixed_us)
    batch = Run(Life(model), mixed_us)
    warm, u = start.kelvin, start.u_k
    bond.glue((warm, warm - u, warm + u) if lag_s > 0 else None, lag_s)
    until = mixed_us + HORIZON_US
    stretches = (clip(s, mixed_us, until) for s in linear(points, until))
    for stretch in stretches:
        if stretch is None:
            continue
        if bond.done and batch.done:
            break
        bond.advance(stretch)
        batch.advance(stretch)
    result = milestones(bond)
    of_batch = life_bounds(batch.curves, mixed_us)
    own = result.working_life
    both = Bounds(*(earlier(a, b) for a, b in zip(of_batch, own, strict=True)))
    return result._replace(working_life=both)


def _iso(instant: Instant) -> str:
    return to_datetime(instant).isoformat(timespec="seconds").replace("+00:00", "Z")
