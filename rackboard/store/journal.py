"""What was promised, stopped, said and told: grants, holds, events, releases, former values."""

from __future__ import annotations

import json
from collections.abc import Iterable
from typing import Any, NamedTuple

from rackboard.core.bench import Event, Grant, Hold, Release
from rackboard.core.instants import Instant
from rackboard.store.connection import Database
from rackboard.store.rows import (
    columns,
    event_of,
    grant_of,
    hold_of,
    json_text,
    release_of,
)
from rackboard.store.work import among


class Former(NamedTuple):
    """A value that was corrected; column ``*`` stands for a whole row taken away."""

    table: str
    key: Any
    column: str
    old: Any
    new: Any
    changed_us: Instant
    by: str | None


class Journal:
    """Reads the journals; they only ever grow."""

    __slots__ = ("_database",)

    def __init__(self, database: Database) -> None:
        self._database = database

    def grants(self, joint_ids: Iterable[int]) -> list[Grant]:
        """Return all permissions ever given to joints, oldest first."""
        return among(self._database, Grant, grant_of, "joint_id", joint_ids)

    def holds(
        self, joint_ids: Iterable[int] | None = None, *, open_only: bool = False
    ) -> list[Hold]:
        """Return the holds of joints, or of all joints, oldest first."""
        tail = " AND to_us IS NULL" if open_only else ""
        if joint_ids is not None:
            return among(self._database, Hold, hold_of, "joint_id", joint_ids, tail)
        rows = self._database.rows(f"SELECT {columns(Hold)} FROM hold WHERE 1{tail} ORDER BY id")
        return [hold_of(row) for row in rows]

    def releases(self, joint_ids: Iterable[int]) -> list[Release]:
        """Return when and why joints were let go by a person, oldest first."""
        return among(self._database, Release, release_of, "joint_id", joint_ids)

    def events(
        self,
        limit: int = 200,
        *,
        kinds: Iterable[str] | None = None,
        subject: str | None = None,
        subject_id: int | None = None,
        from_us: Instant | None = None,
        to_us: Instant | None = None,
    ) -> list[Event]:
        """Return lines of the journal, the latest first.

        Parameters
        ----------
        limit : int
            At most so many.
        kinds : iterable of str, optional
            Only of these kinds.
        subject, subject_id : optional
            Only about these.
        from_us, to_us : int, optional
            Only what happened from (included) … to (not included).
        """
        terms: list[str] = []
        values: list[object] = []
        if kinds is not None:
            wanted = list(kinds)
            terms.append(f"kind IN ({', '.join('?' * len(wanted))})")
            values += wanted
        for term, value in (
            ("subject = ?", subject),
            ("subject_id = ?", subject_id),
            ("at_us >= ?", from_us),
            ("at_us < ?", to_us),
        ):
            if value is not None:
                terms.append(term)
                values.append(value)
        where = f" WHERE {' AND '.join(terms)}" if terms else ""
        rows = self._database.rows(
            f"SELECT {columns(Event)} FROM event{where} ORDER BY at_us DESC, id DESC LIMIT ?",
            (*values, limit),
        )
        return [event_of(row) for row in rows]

    def former(self, table: str, key: int | tuple[object, ...]) -> list[Former]:
        """Return the corrected values of one row, oldest first."""
        rows = self._database.rows(
            "SELECT column_name, old_json, new_json, changed_us, by FROM former"
            " WHERE table_name = ? AND row_key = ? ORDER BY id",
            (table, json_text(key)),
        )
        return [
            Former(table, key, column, json.loads(old), json.loads(new), changed_us, by)
            for column, old, new, changed_us, by in rows
        ]
