"""The one object that services are handed: reads, writes, undo, erasure, backup."""

from __future__ import annotations

import json
from collections.abc import Callable, Generator, Iterable
from pathlib import Path

from rackboard.core.instants import Instant
from rackboard.core.text import text
from rackboard.store import faults
from rackboard.store.alerts import AlertJournal
from rackboard.store.changes import ChangeSet
from rackboard.store.connection import BUSY_S, MEMORY, Database, connect
from rackboard.store.faults import guard
from rackboard.store.journal import Journal
from rackboard.store.migrations import NEWEST, migrate
from rackboard.store.paths import Paths
from rackboard.store.record import Record
from rackboard.store.rows import json_text
from rackboard.store.shop import Shop
from rackboard.store.transaction import Transaction
from rackboard.store.work import Live, Work


class Store:
    """An open data file.

    Attributes
    ----------
    shop : Shop
        Zones, places, persons, epoxies, settings.
    work : Work
        Customers, jobs, clubs, joints, batches, stays.
    record : Record
        Readings and bridges.
    alerts : AlertJournal
        Episodes of alerts and what was said of them.
    journal : Journal
        Grants, holds, events, releases, former values.
    """

    __slots__ = ("_backups", "_database", "alerts", "journal", "record", "shop", "work")

    def __init__(self, database: Database, backups: Path | None) -> None:
        self._database = database
        self._backups = backups
        self.shop = Shop(database)
        self.work = Work(database)
        self.record = Record(database)
        self.journal = Journal(database)
        self.alerts = AlertJournal(database)

    @classmethod
    def open(
        cls,
        paths: Paths,
        now_us: Instant,
        *,
        busy_s: float = BUSY_S,
        share_of: Callable[[Path], str | None] | None = None,
    ) -> Store:
        """Open the data file, made or migrated if need be.

        Parameters
        ----------
        paths : Paths
            The folders; missing ones are made.
        now_us : int
            For the name of a backup before a migration [µs UTC].
        busy_s : float
            How long a locked file is waited for [s].
        share_of : callable, optional
            See `Paths.prepare`.

        Raises
        ------
        StoreError
            If the data can't be used; the message says why, the remedy what to do.
        """
        paths.prepare(share_of)
        path = paths.database
        with guard(path):
            if path.exists() and path.stat().st_size == 0 and any(paths.backups.iterdir()):
                raise faults.damaged(path, "it is empty, though there are backups")
        database = connect(path, newest=NEWEST, busy_s=busy_s)

        def back_up_first() -> None:
            from rackboard.store.backup import back_up

            back_up(database, paths.backups, now_us)

        try:
            migrate(database, before=back_up_first)
        except BaseException:
            database.raw.close()
            raise
        return cls(database, paths.backups)

    @classmethod
    def open_memory(cls) -> Store:
        """Return an empty store without a file."""
        database = connect(MEMORY, newest=NEWEST)
        migrate(database)
        return cls(database, None)

    @property
    def path(self) -> Path:
        """The data file."""
        return self._database.path

    @property
    def is_closed(self) -> bool:
        """Whether the data file was let go of."""
        return self._database.closed

    def close(self) -> None:
        """Close the file; everything is on the disk already."""
        self._database.close()

    def load_live(self, also: Iterable[int] = ()) -> Live:
        """Return what the board paints first; see `Work.load_live`."""
        return self.work.load_live(also)

    def write(
        self, label: str, at_us: Instant, by: str | None = None, *, correction: bool = False
    ) -> Transaction:
        """Return a transaction, to be used in a ``with`` block.

        Parameters
        ----------
        label : str
            The act in the bench's words.
        at_us : int
            Now [µs UTC].
        by : str, optional
            Initials.
        correction : bool
            Whether old values are kept in `former`.

        Examples
        --------
        >>> store = Store.open_memory()
        >>> with store.write("note initials", 1_000_000) as act:
        ...     act.use_person("KT")
        >>> sorted(act.changes.tables), store.shop.persons()[0].initials
        (['person'], 'KT')
        """
        return Transaction(self._database, label, at_us, by, correction)

    def apply_inverse(
        self, changes: ChangeSet, label: str, at_us: Instant, by: str | None = None
    ) -> ChangeSet:
        """Take back what a change set did to undoable rows; its own inverse is the redo.

        Raises
        ------
        ChangedSinceError
            If one of the rows has been changed since; nothing is then taken back.
        """
        with self.write(label, at_us, by) as act:
            act.invert(changes)
        return act.changes

    def erase_customer(self, customer_id: int, at_us: Instant, by: str | None = None) -> ChangeSet:
        """Blank a customer's name and phone everywhere in the data file, for good.

        The bonds' record stays. Backups made before still hold the name until newer ones
        have replaced them.

        Raises
        ------
        LookupError
            If there is no such customer.
        """
        known: set[str] = set()
        with self.write(text("Act", "erase customer"), at_us, by) as act:
            found = self._database.images("SELECT * FROM customer WHERE id = ?", (customer_id,))
            if not found:
                raise LookupError(f"there is no customer {customer_id}")
            known |= {found[0]["name"], found[0]["phone"]}
            known |= self._erase_former(customer_id)
            known.discard("")
            self._erase_from_events(customer_id, known)
            self._erase_from_releases(customer_id, known)
            erased = {**found[0], "name": "", "phone": "", "erased_us": at_us}
            self._database.rows(
                "UPDATE customer SET name = '', phone = '', erased_us = ? WHERE id = ?",
                (at_us, customer_id),
            )
            act.record_erasure("customer", (customer_id,), erased)
            act.forbid_undo()
            act.add_event("customer erased", "customer", customer_id)
        if self._still_written(known):
            self._database.rows("VACUUM")  # a page may keep a shadow of a moved row
        return act.changes

    def backup_slices(self, now_us: Instant) -> Generator[float, None, Path]:
        """Make a backup step by step; see `rackboard.store.backup.backup_slices`."""
        from rackboard.store.backup import backup_slices

        return backup_slices(self._database, self._backup_folder(), now_us)

    def backup_due(self, now_us: Instant) -> bool:
        """Return whether a day has passed since the last backup."""
        from rackboard.store.backup import due

        return due(self._backup_folder(), now_us)

    def _backup_folder(self) -> Path:
        if self._backups is None:
            raise RuntimeError("a store without a file has no backups")
        return self._backups

    def _erase_former(self, customer_id: int) -> set[str]:
        """Blank the customer's corrected names; return them."""
        known: set[str] = set()
        where = "table_name = 'customer' AND row_key = ?"
        key = (json_text(customer_id),)
        for old, new in self._database.rows(
            f"SELECT old_json, new_json FROM former WHERE {where}", key
        ):
            for value in (json.loads(old), json.loads(new)):
                parts = value.values() if isinstance(value, dict) else (value,)
                known |= {part for part in parts if isinstance(part, str)}
        self._database.rows(
            f"UPDATE former SET old_json = 'null', new_json = 'null' WHERE {where}", key
        )
        return known

    def _erase_from_events(self, customer_id: int, known: set[str]) -> None:
        """Blank what an event of this customer says of him, should it say anything."""
        rows = self._database.rows(
            "SELECT id, data_json FROM event WHERE subject = 'customer' AND subject_id = ?1"
            " UNION SELECT e.id, e.data_json FROM job j JOIN event e"
            " ON e.subject = 'job' AND e.subject_id = j.id WHERE j.customer_id = ?1"
            " UNION SELECT e.id, e.data_json FROM job j JOIN club c ON c.job_id = j.id"
            " JOIN event e ON e.subject = 'club' AND e.subject_id = c.id"
            " WHERE j.customer_id = ?1"
            " UNION SELECT e.id, e.data_json FROM job j JOIN club c ON c.job_id = j.id"
            " JOIN joint t ON t.club_id = c.id"
            " JOIN event e ON e.subject = 'joint' AND e.subject_id = t.id"
            " WHERE j.customer_id = ?1",
            (customer_id,),
        )
        for event_id, written in rows:
            data = json.loads(written)
            blanked = _blanked(data, known)
            if blanked != data:
                self._database.rows(
                    "UPDATE event SET data_json = ? WHERE id = ?",
                    (json_text(blanked), event_id),
                )

    def _erase_from_releases(self, customer_id: int, known: set[str]) -> None:
        """Blank the reason of a release that names this customer."""
        rows = self._database.rows(
            "SELECT r.id, r.reason FROM job j JOIN club c ON c.job_id = j.id"
            " JOIN joint t ON t.club_id = c.id JOIN release r ON r.joint_id = t.id"
            " WHERE j.customer_id = ?",
            (customer_id,),
        )
        for release_id, reason in rows:
            if _blanked(reason, known) != reason:
                self._database.rows("UPDATE release SET reason = '' WHERE id = ?", (release_id,))

    def _still_written(self, known: set[str]) -> bool:
        """Return whether one of the texts stands anywhere in the file."""
        if self._database.path == MEMORY:
            return False
        wanted = [text.encode() for text in known]
        overlap = max((len(text) for text in wanted), default=1)
        tail = b""
        with guard(self.path), self.path.open("rb") as stream:
            while block := stream.read(1 << 20):
                window = tail + block
                if any(text in window for text in wanted):
                    return True
                tail = window[-overlap:]
        return False


def _blanked(value: object, known: set[str]) -> object:
    """Return JSON data with every text that holds one of the known texts made empty."""
    if isinstance(value, str):
        return "" if any(text in value for text in known) else value
    if isinstance(value, list):
        return [_blanked(item, known) for item in value]
    if isinstance(value, dict):
        return {key: _blanked(item, known) for key, item in value.items()}
    return value
