"""What a record would change before it is taken in, and where it has holes."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from rackboard.core.cure.record import GAP_US
from rackboard.core.instants import Instant
from rackboard.store import Store


class Compared(NamedTuple):
    """How many readings are new, are there already, and contradict what is kept."""

    new: int
    same: int
    differing: int


class Hole(NamedTuple):
    """A stretch of a record without a reading, long enough to be asked about [µs UTC]."""

    from_us: Instant
    to_us: Instant


def compare(store: Store, zone_id: int, readings: Sequence[tuple[Instant, int]]) -> Compared:
    """Compare a record with what a zone has, without writing anything.

    Parameters
    ----------
    store : Store
        The data file.
    zone_id : int
        Whose air it is.
    readings : sequence of (int, int)
        Instant [µs UTC] and temperature [m°C], ascending.
    """
    if not readings:
        return Compared(0, 0, 0)
    rows = store.record.readings(zone_id, readings[0][0], readings[-1][0])
    kept = {at: mc for at, mc, *_ in rows}
    same = differing = 0
    for at, mc in readings:
        present = kept.get(at)
        if present is not None:
            same += present == mc
            differing += present != mc
    return Compared(len(readings) - same - differing, same, differing)


def holes(readings: Sequence[tuple[Instant, int]]) -> list[Hole]:
    """Return the stretches of more than two hours without a reading, in order of time."""
    return [
        Hole(first[0], second[0])
        for first, second in pairwise(readings)
        if second[0] - first[0] > GAP_US
    ]
