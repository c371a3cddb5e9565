"""A logger's record taken into a zone: all of it or nothing, and repeatable."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from rackboard.core.bench import Source
from rackboard.core.errors import InputError
from rackboard.core.instants import Clock, Instant
from rackboard.core.text import text
from rackboard.services.bench import RACK_U_MC
from rackboard.services.doubts import AHEAD_US
from rackboard.store import Store
from rackboard.store.changes import ChangeSet, Conflict


class Imported(NamedTuple):
    """What became of a record: new readings, those that were there, and contradictions."""

    changes: ChangeSet
    new: int
    same: int
    differing: tuple[Conflict, ...]
    ahead: int


def import_readings(
    store: Store,
    clock: Clock,
    zone_id: int,
    readings: Sequence[tuple[Instant, int]],
    *,
    replace: bool = False,
) -> Imported:
    """Take a record into a zone in one transaction.

    Parameters
    ----------
    store, clock : Store, Clock
        The data file and the time.
    zone_id : int
        Whose air it is.
    readings : sequence of (int, int)
        Instant [µs UTC] and temperature [m°C], ascending.
    replace : bool, optional
        Whether the file wins where another temperature is kept for the same instant;
        otherwise the kept ones stay and are returned in `differing`.

    Raises
    ------
    InputError
        If there is nothing to take in.
    """
    now = clock.now()
    past = [reading for reading in readings if reading[0] <= now + AHEAD_US]
    if not past:
        came = text("House", "%n later ones", "%n later one", len(readings))
        raise InputError(
            text("House", "at least one reading up to now"),
            came if readings else text("House", "none"), text("House", "record"),
        )  # fmt: skip
    with store.write(text("Act", "import record"), now) as act:
        rows = [(at, mc, RACK_U_MC, Source.IMPORTED) for at, mc in past]
        added = act.add_readings(zone_id, rows, replace=replace)
        act.add_event("record imported", "zone", zone_id, {
            "new": added.new, "same": added.same, "differing": len(added.differing),
            "from_us": past[0][0], "to_us": past[-1][0],
        })  # fmt: skip
    return Imported(
        act.changes, added.new, added.same, added.differing, len(readings) - len(past)
    )
