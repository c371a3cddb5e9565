"""The temperature record: readings, and the bridges over what is missing."""

from __future__ import annotations

from rackboard.core.bench import Bridge, Reading
from rackboard.core.instants import Instant
from rackboard.store.changes import ReadingRow
from rackboard.store.connection import Database
from rackboard.store.rows import columns, reading_of


class Record:
    """Reads temperatures by zone and time; the key of the table is the only index."""

    __slots__ = ("_database",)

    def __init__(self, database: Database) -> None:
        self._database = database

    def readings(self, zone_id: int, from_us: Instant, to_us: Instant) -> list[ReadingRow]:
        """Return the readings of a zone from … to, both included, in order of time."""
        return self._database.rows(
            "SELECT at_us, temperature_mc, u_mc, source FROM reading"
            " WHERE zone_id = ? AND at_us BETWEEN ? AND ? ORDER BY at_us",
            (zone_id, from_us, to_us),
        )

    def last_reading(self, zone_id: int) -> Reading | None:
        """Return the newest reading of a zone."""
        return self._one(
            f"SELECT {columns(Reading)} FROM reading WHERE zone_id = ? ORDER BY at_us DESC LIMIT 1",
            (zone_id,),
        )

    def reading_before(self, zone_id: int, at_us: Instant) -> Reading | None:
        """Return the last reading of a zone at or before an instant."""
        return self._one(
            f"SELECT {columns(Reading)} FROM reading WHERE zone_id = ? AND at_us <= ?"
            " ORDER BY at_us DESC LIMIT 1",
            (zone_id, at_us),
        )

    def reading_after(self, zone_id: int, at_us: Instant) -> Reading | None:
        """Return the first reading of a zone after an instant."""
        return self._one(
            f"SELECT {columns(Reading)} FROM reading WHERE zone_id = ? AND at_us > ?"
            " ORDER BY at_us LIMIT 1",
            (zone_id, at_us),
        )

    def bridges(self, zone_id: int, from_us: Instant) -> list[Bridge]:
        """Return the bridges of a zone that end after an instant, in order of time."""
        rows = self._database.rows(
            f"SELECT {columns(Bridge)} FROM bridge WHERE zone_id = ? AND to_us > ?"
            " ORDER BY from_us, id",
            (zone_id, from_us),
        )
        return [Bridge(*row) for row in rows]

    def _one(self, statement: str, values: tuple[int, ...]) -> Reading | None:
        row = self._database.row(statement, values)
        return None if row is None else reading_of(row)
