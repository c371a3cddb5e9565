"""What would make it sooner: some hours in warm air, with the figures."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import NamedTuple

from rackboard.core.cure.forecast import complete, milestones, printed_time
from rackboard.core.cure.kinetics import kelvin
from rackboard.core.cure.record import Stretch, clip
from rackboard.core.cure.run import HORIZON_US, Bond, Run
from rackboard.core.instants import HOUR_US, Instant

BOX_U_K = 1.0
"""Uncertainty of the warm air's temperature: a thermometer stands in it [K]."""
LONGEST_STAY_H = 24
"""Longer stays in the warm box aren't proposed [decision]."""


class Remedy(NamedTuple):
    """So many hours at a temperature, and what they bring.

    `instead_of_us` is None where there would be no time at all without it.
    """

    temperature_c: float
    from_us: Instant
    hours: int
    not_before_us: Instant
    instead_of_us: Instant | None


def warm_remedy(
    run: Run[Bond],
    outlook: Callable[[Instant], Iterable[Stretch]],
    from_us: Instant,
    temperature_c: float,
) -> Remedy | None:
    """Return the shortest stay in warm air, in whole hours, after which the joint is safe to hit.

    Parameters
    ----------
    run : Run of Bond
        As far as the record reaches; it is not changed.
    outlook : callable
        Gives the stretches reckoned with from an instant on, if the joint stays where it is.
    from_us : int
        When it would go into the warm air [µs UTC], at or after the run's own time.
    temperature_c : float
        Of the warm air [°C].

    Returns
    -------
    Remedy or None
        None if warm air brings nothing: it is safe before that, or not within 24 h of warmth.
    """
    stay = run.copy()
    for stretch in outlook(run.now_us):
        if stretch.start_us >= from_us:
            break
        if part := clip(stretch, run.now_us, from_us):
            stay.advance(part)
    left = stay.copy()
    complete(left, outlook(from_us))
    without = milestones(left).full_cure.late
    warm = kelvin(temperature_c)
    end = from_us + LONGEST_STAY_H * HOUR_US
    stay.advance(
        Stretch(from_us, end, (warm, warm), (warm - BOX_U_K,) * 2, (warm + BOX_U_K,) * 2)
    )
    late = milestones(stay).full_cure.late
    if late is None or late <= from_us or late > stay.mixed_us + HORIZON_US:
        return None
    printed = printed_time(late)
    instead = None if without is None else printed_time(without)
    if instead is not None and printed >= instead:
        return None
    return Remedy(temperature_c, from_us, -(-(late - from_us) // HOUR_US), printed, instead)
