"""The one way to open the data file: pragmas, checks, and errors in plain words."""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any, Final

from rackboard.core.errors import StoreError
from rackboard.core.text import text
from rackboard.store import faults
from rackboard.store.faults import guard

APPLICATION_ID: Final = 0x7261636B
"""``rack`` in the file's header: how a file of ours is known [decision]."""
BUSY_S: Final = 3.0
"""How long a locked file is waited for [s, decision]."""
OLDEST_SQLITE: Final = (3, 37, 0)
"""STRICT tables came with it."""

MEMORY: Final = Path(":memory:")

Row = tuple[Any, ...]


class Database:
    """An open data file: statements in, plain tuples out, faults of the world in words."""

    __slots__ = ("closed", "path", "raw")

    def __init__(self, raw: sqlite3.Connection, path: Path) -> None:
        self.raw = raw
        self.path = path
        self.closed = False

    def rows(self, statement: str, values: Sequence[object] = ()) -> list[Row]:
        """Return all rows of a statement."""
        with guard(self.path):
            return self.raw.execute(statement, values).fetchall()

    def row(self, statement: str, values: Sequence[object] = ()) -> Row | None:
        """Return the only row of a statement, or None."""
        found = self.rows(statement, values)
        return found[0] if found else None

    def images(self, statement: str, values: Sequence[object] = ()) -> list[dict[str, Any]]:
        """Return all rows of a statement as {column: value}."""
        with guard(self.path):
            cursor = self.raw.execute(statement, values)
            found = cursor.fetchall()
            names = [column[0] for column in cursor.description or ()]
        return [dict(zip(names, row, strict=True)) for row in found]

    def value(self, statement: str, values: Sequence[object] = ()) -> Any:
        """Return the only value of a statement, or None."""
        found = self.row(statement, values)
        return None if found is None else found[0]

    def write_many(self, statement: str, values: Iterable[Sequence[object]]) -> None:
        """Run one statement for each row of values."""
        with guard(self.path):
            self.raw.executemany(statement, values)

    def begin(self) -> None:
        """Open a transaction that may write, so that being locked shows before the work.

        Raises
        ------
        StoreError
            If the file is locked or can't be written.
        """
        self.rows("BEGIN IMMEDIATE")

    def commit(self) -> None:
        """Put the transaction on the disk; when this returns, it is there."""
        try:
            self.rows("COMMIT")
        except BaseException:
            self.rollback()
            raise

    def rollback(self) -> None:
        """Leave everything as it was before the transaction."""
        if self.raw.in_transaction:  # SQLite has already rolled back after some faults
            self.rows("ROLLBACK")

    def close(self) -> None:
        """Close the file."""
        with guard(self.path):
            self.raw.close()
        self.closed = True


def connect(path: Path, *, newest: int, writable: bool = True, busy_s: float = BUSY_S) -> Database:
    """Open a data file and refuse, in words, what is not one of ours.

    Parameters
    ----------
    path : Path
        The file, made if it is missing and `writable`; `MEMORY` for a store without a file.
    newest : int
        The highest schema number that the caller knows.
    writable : bool
        Whether it will be written.
    busy_s : float
        How long a locked file is waited for [s].

    Raises
    ------
    StoreError
        If the file is newer, foreign, locked, read-only, damaged or out of reach.
    """
    if sqlite3.sqlite_version_info < OLDEST_SQLITE:
        raise StoreError(
            text("Store", "This Python brings SQLite {version}; rackboard wants 3.37 or later.")
            .format(version=sqlite3.sqlite_version),
            text("Store", "Install a newer Python."),
        )
    with guard(path):
        if path == MEMORY:
            target = ":memory:"
        elif not writable and not path.is_file():
            raise FileNotFoundError(2, "there is no such file", str(path))
        else:
            if writable and not path.exists():
                os.close(os.open(path, os.O_CREAT | os.O_RDWR, 0o600))  # names and phones
            target = f"{path.absolute().as_uri()}?mode={'rwc' if writable else 'ro'}"
        raw = sqlite3.connect(
            target,
            uri=True,
            timeout=busy_s,
            isolation_level=None,
            # A backup walks through the connection in a thread, in step with this one.
            check_same_thread=False,
        )
    database = Database(raw, path)
    try:
        _set_pragmas(database, writable)
        _check(database, newest)
        if writable and path != MEMORY:
            _check_writable(database)
    except BaseException:
        raw.close()
        raise
    return database


def _set_pragmas(database: Database, writable: bool) -> None:
    """Set what doesn't persist in the file; reading the journal mode opens the file."""
    if writable:
        database.rows("PRAGMA journal_mode=DELETE")
    database.rows("PRAGMA synchronous=EXTRA")
    database.rows("PRAGMA foreign_keys=ON")
    database.rows("PRAGMA secure_delete=ON")  # an erased name must leave the file


def _check(database: Database, newest: int) -> None:
    owner = database.value("PRAGMA application_id")
    version = database.value("PRAGMA user_version")
    empty = not database.value("SELECT count(*) FROM sqlite_schema")
    if owner != APPLICATION_ID and not (empty and owner == 0 and version == 0):
        raise faults.foreign(database.path)
    if version > newest:
        raise faults.newer(database.path, newest, version)


def _check_writable(database: Database) -> None:
    """Find out before the first press of a key whether it could be kept."""
    effective = os.access in os.supports_effective_ids
    # BEGIN IMMEDIATE is content with a read-only file; the folder takes the journal.
    for needed in (database.path, database.path.absolute().parent):
        if not os.access(needed, os.W_OK, effective_ids=effective):
            raise faults.read_only(database.path)
    database.begin()
    database.rollback()
