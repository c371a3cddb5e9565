"""What the shop has: zones, places, people, epoxies, settings."""

from __future__ import annotations

import json
from typing import Any

from rackboard.core.bench import Epoxy, Person, Place, Zone
from rackboard.store.connection import Database
from rackboard.store.rows import columns, epoxy_of, place_of, zone_of


class Shop:
    """Reads the few rows that describe the shop itself."""

    __slots__ = ("_database",)

    def __init__(self, database: Database) -> None:
        self._database = database

    def zones(self) -> list[Zone]:
        """Return all zones in their order."""
        rows = self._database.rows(f"SELECT {columns(Zone)} FROM zone ORDER BY sort, id")
        return [zone_of(row) for row in rows]

    def places(self) -> list[Place]:
        """Return all places in their order."""
        rows = self._database.rows(f"SELECT {columns(Place)} FROM place ORDER BY sort, id")
        return [place_of(row) for row in rows]

    def persons(self) -> list[Person]:
        """Return everybody by initials, the latest first."""
        rows = self._database.rows(
            f"SELECT {columns(Person)} FROM person ORDER BY last_used_us DESC, initials"
        )
        return [Person(*row) for row in rows]

    def epoxies(self, retired: bool = False) -> list[Epoxy]:
        """Return the shelf, with the retired ones only if asked for."""
        where = "" if retired else " WHERE retired_us IS NULL"
        rows = self._database.rows(f"SELECT {columns(Epoxy)} FROM epoxy{where} ORDER BY id")
        return [epoxy_of(row) for row in rows]

    def epoxy(self, epoxy_id: int) -> Epoxy | None:
        """Return one epoxy, also a retired one."""
        row = self._database.row(f"SELECT {columns(Epoxy)} FROM epoxy WHERE id = ?", (epoxy_id,))
        return None if row is None else epoxy_of(row)

    def setting(self, key: str, otherwise: Any = None) -> Any:
        """Return one setting's JSON value, or `otherwise` if it was never set."""
        text = self._database.value("SELECT value FROM setting WHERE key = ?", (key,))
        return otherwise if text is None else json.loads(text)

    def settings(self) -> dict[str, Any]:
        """Return all settings."""
        rows = self._database.rows("SELECT key, value FROM setting ORDER BY key")
        return {key: json.loads(value) for key, value in rows}
