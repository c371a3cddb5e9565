"""What a transaction changed, row by row.

Views refresh by the change set, undo turns it round, and nothing is written any other way.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, Final, NamedTuple

from rackboard.core.instants import Instant
from rackboard.store.rows import TABLE

Key = tuple[Any, ...]
Image = dict[str, Any]
ReadingRow = tuple[Instant, int, int, str]
"""``(at_us, temperature_mc, u_mc, source)``: years of them pass, so no dataclass each."""

KEYS: Final[dict[str, tuple[str, ...]]] = {
    **dict.fromkeys(TABLE.values(), ("id",)),
    "former": ("id",),
    "person": ("initials",),
    "setting": ("key",),
    "reading": ("zone_id", "at_us"),
}
"""The columns by which a row is known."""

UNDOABLE: Final = frozenset(
    {
        "person", "customer", "job", "club", "joint", "batch", "stay", "epoxy", "place",
        "zone", "setting", "bridge", "hold", "reading", "release",
    }
)  # fmt: skip
"""Of readings only the typed ones; journals (event, former, alerts, grants) never."""

CORRECTABLE: Final = UNDOABLE - {"person", "setting"}
"""Tables whose former values a correction keeps."""

TYPED: Final = ("typed", "typed at the rack")


class RowChange(NamedTuple):
    """One row before and after; None where it wasn't there."""

    table: str
    key: Key
    before: Image | None
    after: Image | None

    @property
    def undoable(self) -> bool:
        """Whether undo takes this change back."""
        if self.table == "reading":
            images = (self.before, self.after)
            return all(image is None or image["source"] in TYPED for image in images)
        return self.table in UNDOABLE


class ReadingSpan(NamedTuple):
    """A stretch of a zone's record in which readings changed."""

    zone_id: int
    from_us: Instant
    to_us: Instant


class ChangeSet(tuple[RowChange, ...]):
    """What one transaction changed, row by row, in order.

    Attributes
    ----------
    label : str
        The act in the bench's words, for "Undo …".
    at_us : int
        When it was done [µs UTC].
    by : str or None
        Initials.
    readings : tuple of ReadingSpan
        Where readings changed, also those of a feed or a file, which have no rows here.
    undoable : bool
        Whether undo takes anything of it back.
    """

    label: str
    at_us: Instant
    by: str | None
    readings: tuple[ReadingSpan, ...]
    undoable: bool

    def __new__(
        cls,
        rows: Iterable[RowChange] = (),
        label: str = "",
        at_us: Instant = 0,
        by: str | None = None,
        readings: Iterable[ReadingSpan] = (),
        undoable: bool = True,
    ) -> ChangeSet:
        """Return a change set of the rows."""
        made = super().__new__(cls, rows)
        made.label = label
        made.at_us = at_us
        made.by = by
        made.readings = tuple(readings)
        made.undoable = undoable and any(change.undoable for change in made)
        return made

    @property
    def tables(self) -> frozenset[str]:
        """The tables in which something changed."""
        tables = {change.table for change in self}
        if self.readings:
            tables.add("reading")
        return frozenset(tables)

    def keys(self, table: str) -> frozenset[Key]:
        """Return the keys of the rows of one table that changed."""
        return frozenset(change.key for change in self if change.table == table)


class Conflict(NamedTuple):
    """A reading that says something else than the one already kept for its instant."""

    at_us: Instant
    kept_mc: int
    came_mc: int


class ReadingsAdded(NamedTuple):
    """What became of readings that were handed in."""

    new: int
    same: int
    differing: tuple[Conflict, ...]


def compare_readings(
    came: Iterable[ReadingRow], kept: dict[Instant, int], replace: bool
) -> tuple[dict[Instant, ReadingRow], dict[Instant, ReadingRow], ReadingsAdded]:
    """Sort readings into new ones, ones that replace a kept one, and what to report.

    Parameters
    ----------
    came : iterable of tuple
        Readings of one zone; of doubles the first counts, with `replace` the last.
    kept : dict
        Instant to temperature of what is already kept [m°C]; grows by what came.
    replace : bool
        Whether another value at the same instant wins.
    """
    new: dict[Instant, ReadingRow] = {}
    replaced: dict[Instant, ReadingRow] = {}
    same = 0
    differing: list[Conflict] = []
    for row in came:
        at_us, temperature_mc = row[0], row[1]
        present = kept.get(at_us)
        if present is None:
            kept[at_us] = temperature_mc
            new[at_us] = row
        elif present == temperature_mc:
            same += 1
        else:
            differing.append(Conflict(at_us, present, temperature_mc))
            if replace:
                kept[at_us] = temperature_mc
                (new if at_us in new else replaced)[at_us] = row
    return new, replaced, ReadingsAdded(len(new), same, tuple(differing))


def reading_image(zone_id: int, row: ReadingRow) -> Image:
    """Return the row image of a reading."""
    at_us, temperature_mc, u_mc, source = row
    return {
        "zone_id": zone_id,
        "at_us": at_us,
        "temperature_mc": temperature_mc,
        "u_mc": u_mc,
        "source": str(source),
    }
