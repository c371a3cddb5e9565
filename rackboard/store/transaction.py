"""One act, kept whole or not at all."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable, Mapping
from types import TracebackType

from rackboard.core.instants import Instant
from rackboard.core.text import text
from rackboard.store.changes import (
    CORRECTABLE,
    KEYS,
    TYPED,
    ChangeSet,
    Image,
    Key,
    ReadingRow,
    ReadingsAdded,
    ReadingSpan,
    RowChange,
    compare_readings,
    reading_image,
)
from rackboard.store.connection import Database
from rackboard.store.faults import ChangedSinceError
from rackboard.store.rows import TABLE, Value, json_text, row_of
from rackboard.store.statements import assigned, listed, marks, matching, taken


class Transaction:
    """One act of a person or of a feed: all of it is kept, or nothing.

    Made by `Store.write` and used in a ``with`` block; when the block ends well the rows
    are on the disk and `changes` says what they were.
    """

    __slots__ = ("_changes", "_correction", "_database", "_final", "_rows", "_spans",
                 "at_us", "by", "label")  # fmt: skip

    def __init__(
        self, database: Database, label: str, at_us: Instant, by: str | None, correction: bool
    ) -> None:
        self.label = label
        self.at_us = at_us
        self.by = by
        self._database = database
        self._correction = correction
        self._rows: list[RowChange] = []
        self._spans: list[ReadingSpan] = []
        self._changes: ChangeSet | None = None
        self._final = False

    def __enter__(self) -> Transaction:
        if self._database.raw.in_transaction:
            raise RuntimeError(f"{self.label!r} began inside another transaction")
        self._database.begin()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        traceback: TracebackType | None,
    ) -> None:
        if error is not None:
            self._database.rollback()
        elif self._changes is None:
            self.commit()

    @property
    def changes(self) -> ChangeSet:
        """What was changed; only once it is on the disk."""
        if self._changes is None:
            raise RuntimeError(f"{self.label!r} is not committed")
        return self._changes

    @property
    def alters(self) -> bool:
        """Whether anything that undo could take back has been changed so far."""
        return any(change.undoable for change in self._rows)

    def commit(self) -> ChangeSet:
        """Put everything on the disk and return what was changed."""
        self._check_open()
        self._database.commit()
        self._changes = ChangeSet(
            self._rows, self.label, self.at_us, self.by, self._spans, not self._final
        )
        return self._changes

    def add(self, value: Value) -> int:
        """Insert a value of the bench; an id of 0 is given by the store.

        Returns
        -------
        int
            The new row's id; 0 for persons and readings, which have none.
        """
        return self.insert(TABLE[type(value)], row_of(value))

    def insert(self, table: str, row: Mapping[str, object]) -> int:
        """Insert a row of columns.

        Parameters
        ----------
        table : str
            Name of the table.
        row : mapping
            Column to value; structures are already encoded (see `rackboard.store.rows`).

        Returns
        -------
        int
            The new row's id, 0 in a table without ids.

        Raises
        ------
        InputError
            If a slot or a job number is already taken, or the club lies elsewhere.
        """
        self._check_open()
        image = self._written(
            f'INSERT INTO "{table}" ({listed(row)}) VALUES ({marks(row)}) RETURNING *',
            table, tuple(row.values()), row,
        )  # fmt: skip
        self._record(table, None, image)
        return int(image.get("id", 0))

    def update(self, table: str, key: object, /, **columns: object) -> None:
        """Change columns of one row; in a correction the old values are kept in `former`.

        Raises
        ------
        LookupError
            If there is no such row.
        InputError
            As for `insert`.
        """
        self._check_open()
        where = _key(key)
        before = self._present(table, where)
        changed = {name: value for name, value in columns.items() if before[name] != value}
        if not changed:
            return
        if any(name in KEYS[table] for name in changed):
            raise ValueError(f"the key of {table} can't be changed: delete and insert")
        after = self._replaced(table, where, before, changed)
        self._record(table, before, after)
        if self._correction and table in CORRECTABLE:
            for name in changed:
                self._keep_former(table, where, name, before[name], after[name])

    def delete(self, table: str, key: object) -> None:
        """Delete one row; in a correction the whole row is kept in `former`.

        Raises
        ------
        LookupError
            If there is no such row.
        """
        self._check_open()
        where = _key(key)
        before = self._present(table, where)
        self._database.rows(f'DELETE FROM "{table}" WHERE {matching(table)}', where)
        self._record(table, before, None)
        if self._correction and table in CORRECTABLE:
            self._keep_former(table, where, "*", before, None)

    def put(self, table: str, row: Mapping[str, object]) -> None:
        """Insert a row, or update the one with its key."""
        where = tuple(row[name] for name in KEYS[table])
        if self._image(table, where) is None:
            self.insert(table, row)
        else:
            self.update(table, where, **{k: v for k, v in row.items() if k not in KEYS[table]})

    def set_setting(self, key: str, value: object) -> None:
        """Keep a setting; any JSON value."""
        self.put("setting", {"key": key, "value": json_text(value)})

    def use_person(self, initials: str) -> None:
        """Note that somebody with these initials is at work."""
        self.put("person", {"initials": initials, "last_used_us": self.at_us})

    def add_event(
        self,
        kind: str,
        subject: str,
        subject_id: int,
        data: Mapping[str, object] | None = None,
        at_us: Instant | None = None,
    ) -> int:
        """Append a line to the journal.

        Parameters
        ----------
        kind, subject, subject_id
            As of `rackboard.core.bench.Event`.
        data : mapping, optional
            JSON values; ids and figures, never a customer's name or phone.
        at_us : int, optional
            When it happened [µs UTC], if that isn't the instant of this transaction.
        """
        row = {
            "at_us": self.at_us if at_us is None else at_us,
            "recorded_us": self.at_us,
            "kind": kind,
            "subject": subject,
            "subject_id": subject_id,
            "by": self.by,
            "data_json": json_text(dict(data or {})),
        }
        return self.insert("event", row)

    def add_readings(
        self,
        zone_id: int,
        rows: Iterable[ReadingRow],
        replace: bool = False,
    ) -> ReadingsAdded:
        """Keep many temperatures of one zone.

        An equal temperature at the same instant is the same reading. Another one at the
        same instant is a conflict: it isn't written, unless `replace` says so; then the
        old value goes to `former`.

        Parameters
        ----------
        zone_id : int
            The zone.
        rows : iterable of tuple
            ``(at_us, temperature_mc, u_mc, source)`` [µs UTC, m°C, m°C].
        replace : bool
            Whether the new value wins.

        Returns
        -------
        ReadingsAdded
            How many were new, how many were there already, and the conflicts.
        """
        self._check_open()
        came = list(rows)
        if not came:
            return ReadingsAdded(0, 0, ())
        kept = self._kept_readings(zone_id, [row[0] for row in came])
        new, replaced, added = compare_readings(came, kept, replace)
        self._insert_readings(zone_id, list(new.values()))
        for row in replaced.values():
            self._replace_reading(zone_id, row)
        return added

    def invert(self, changes: ChangeSet) -> None:
        """Take back, inside this transaction, what an earlier one did to undoable rows.

        Raises
        ------
        ChangedSinceError
            If one of the rows has been changed since; the block must then be left.
        """
        self._check_open()
        if not changes.undoable:
            raise ChangedSinceError(
                text("Store", "“{act}” can't be undone.").format(act=changes.label),
                text("Store", "Use Correct… to change a wrong fact."),
            )
        try:
            # Backwards every step passes through a state that held once, so all constraints
            # hold too, unless somebody has built on the change since.
            for change in reversed(changes):
                if change.undoable:
                    self._invert_row(changes, change)
        except sqlite3.IntegrityError as error:
            raise _changed_since(changes) from error

    def _invert_row(self, changes: ChangeSet, change: RowChange) -> None:
        table, key, before, after = change
        if self._image(table, key) != after:
            raise _changed_since(changes)
        if before is None:
            self._database.rows(f'DELETE FROM "{table}" WHERE {matching(table)}', key)
            self._record(table, after, None)
        elif after is None:
            statement = f'INSERT INTO "{table}" ({listed(before)}) VALUES ({marks(before)})'
            self._database.rows(statement, tuple(before.values()))
            self._record(table, None, before)
        else:
            changed = {name: value for name, value in before.items() if after[name] != value}
            self._database.rows(
                f'UPDATE "{table}" SET {assigned(changed)} WHERE {matching(table)}',
                (*changed.values(), *key),
            )
            self._record(table, after, before)

    def forbid_undo(self) -> None:
        """Say that this transaction is never taken back (an erasure)."""
        self._final = True

    def record_erasure(self, table: str, key: Key, after: Image) -> None:
        """Note a row whose former content nobody may keep, not even undo."""
        self._rows.append(RowChange(table, key, after, after))

    def _check_open(self) -> None:
        if self._changes is not None:
            raise RuntimeError(f"{self.label!r} is already committed")

    def _image(self, table: str, key: Key) -> Image | None:
        found = self._database.images(f'SELECT * FROM "{table}" WHERE {matching(table)}', key)
        return found[0] if found else None

    def _present(self, table: str, key: Key) -> Image:
        image = self._image(table, key)
        if image is None:
            raise LookupError(f"there is no {table} {key}")
        return image

    def _replaced(self, table: str, key: Key, before: Image, changed: Image) -> Image:
        return self._written(
            f'UPDATE "{table}" SET {assigned(changed)} WHERE {matching(table)} RETURNING *',
            table, (*changed.values(), *key), {**before, **changed},
        )  # fmt: skip

    def _written(self, statement: str, table: str, values: Key, row: Mapping[str, object]) -> Image:
        try:
            return self._database.images(statement, values)[0]
        except sqlite3.IntegrityError as error:
            calm = taken(self._database, table, row, str(error))
            if calm is None:
                raise
            raise calm from error

    def _record(self, table: str, before: Image | None, after: Image | None) -> None:
        image = after if after is not None else before
        assert image is not None
        key = tuple(image[name] for name in KEYS[table])
        self._rows.append(RowChange(table, key, before, after))
        if table == "reading":
            self._spans.append(ReadingSpan(image["zone_id"], image["at_us"], image["at_us"]))

    def _keep_former(self, table: str, key: Key, column: str, old: object, new: object) -> None:
        row = {
            "table_name": table,
            "row_key": json_text(key[0] if len(key) == 1 else key),
            "column_name": column,
            "old_json": json_text(old),
            "new_json": json_text(new),
            "changed_us": self.at_us,
            "by": self.by,
        }
        self.insert("former", row)

    def _kept_readings(self, zone_id: int, instants: list[Instant]) -> dict[Instant, int]:
        if len(instants) <= 8:  # a feed: no need to read the stretch between
            each = ", ".join("?" * len(instants))
            found = self._database.rows(
                "SELECT at_us, temperature_mc FROM reading"
                f" WHERE zone_id = ? AND at_us IN ({each})",
                (zone_id, *instants),
            )
        else:
            found = self._database.rows(
                "SELECT at_us, temperature_mc FROM reading"
                " WHERE zone_id = ? AND at_us BETWEEN ? AND ?",
                (zone_id, min(instants), max(instants)),
            )
        return dict(found)

    def _insert_readings(self, zone_id: int, rows: list[ReadingRow]) -> None:
        if not rows:
            return
        self._database.write_many(
            "INSERT INTO reading (zone_id, at_us, temperature_mc, u_mc, source)"
            " VALUES (?, ?, ?, ?, ?)",
            [(zone_id, *row) for row in rows],
        )
        instants = [row[0] for row in rows]
        self._spans.append(ReadingSpan(zone_id, min(instants), max(instants)))
        # Row images only of what undo may take back: a year of a logger would be a burden.
        self._rows.extend(
            RowChange("reading", (zone_id, row[0]), None, reading_image(zone_id, row))
            for row in rows
            if row[3] in TYPED
        )

    def _replace_reading(self, zone_id: int, row: ReadingRow) -> None:
        key = (zone_id, row[0])
        before = self._present("reading", key)
        changed = {"temperature_mc": row[1], "u_mc": row[2], "source": str(row[3])}
        after = self._replaced("reading", key, before, changed)
        self._record("reading", before, after)
        for name in changed:
            if before[name] != after[name]:
                self._keep_former("reading", key, name, before[name], after[name])


def _changed_since(changes: ChangeSet) -> ChangedSinceError:
    return ChangedSinceError(
        text("Store", "“{act}” can't be undone: what it changed has been changed again since."
             " Everything was left as it is.").format(act=changes.label),
        text("Store", "Use Correct… to change a wrong fact."),
    )  # fmt: skip


def _key(key: object) -> Key:
    return key if isinstance(key, tuple) else (key,)
