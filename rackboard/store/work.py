"""Customers, jobs, clubs, joints, batches and where the clubs lie."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any, NamedTuple, TypeVar

from rackboard.core.alerts.rows import WITHDRAWN
from rackboard.core.bench import (
    Batch,
    Club,
    Customer,
    Grant,
    Hold,
    Job,
    Joint,
    PlaceKind,
    Release,
    Stay,
)
from rackboard.core.instants import Instant
from rackboard.store.connection import Database
from rackboard.store.rows import (
    TABLE,
    batch_of,
    columns,
    grant_of,
    hold_of,
    joint_of,
    release_of,
)

T = TypeVar("T")
_AT_ONCE = 900  # values in one list; SQLite's own limit is higher


class Live(NamedTuple):
    """What the board needs to paint first: the clubs at work, with all that hangs on them.

    A club is at work while it lies in the shop, while one of its joints is laid out but not
    glued, or while one is on HOLD or has a withdrawn permission that nobody has answered,
    wherever the club is. Of a job with such a club all clubs
    and all their joints are here, also those that have left or have ended: "whole job safe
    to hit" asks for them.
    """

    customers: list[Customer]
    jobs: list[Job]
    clubs: list[Club]
    joints: list[Joint]
    batches: list[Batch]
    stays: list[Stay]
    holds: list[Hold]
    grants: list[Grant]
    releases: list[Release]


class Work:
    """Reads the bench's work; every question has an index, none reads the whole past."""

    __slots__ = ("_database",)

    def __init__(self, database: Database) -> None:
        self._database = database

    def load_live(self, also: Iterable[int] = ()) -> Live:
        """Return what is at work now, at a cost that doesn't grow with the past.

        Parameters
        ----------
        also : iterable of int, optional
            Ids of further jobs.
        """
        ids = self._database.rows(
            "SELECT c.job_id FROM place p"
            " JOIN stay s ON s.place_id = p.id AND s.to_us IS NULL"
            " JOIN club c ON c.id = s.club_id WHERE p.kind <> ?"
            " UNION SELECT c.job_id FROM joint t INDEXED BY joint_unglued"
            " JOIN club c ON c.id = t.club_id"
            " WHERE t.glued_us IS NULL AND t.ended_us IS NULL"
            " UNION SELECT c.job_id FROM hold h INDEXED BY hold_open"
            " JOIN joint t ON t.id = h.joint_id"
            " JOIN club c ON c.id = t.club_id WHERE h.to_us IS NULL"
            " UNION SELECT c.job_id FROM alert a INDEXED BY alert_open"
            " JOIN joint t ON t.id = a.subject_id"
            " JOIN club c ON c.id = t.club_id WHERE a.closed_us IS NULL AND a.kind = ?",
            (PlaceKind.OUT, WITHDRAWN),
        )
        jobs = self.jobs({row[0] for row in ids} | set(also))
        clubs = self.clubs([job.id for job in jobs])
        club_ids = [club.id for club in clubs]
        joints = self.joints(club_ids=club_ids)
        joint_ids = [joint.id for joint in joints]
        return Live(
            customers=self.customers({job.customer_id for job in jobs}),
            jobs=jobs,
            clubs=clubs,
            joints=joints,
            batches=self.batches({j.batch_id for j in joints if j.batch_id is not None}),
            stays=self.stays(club_ids, open_only=True),
            holds=self._among(Hold, hold_of, "joint_id", joint_ids, " AND to_us IS NULL"),
            grants=self._among(Grant, grant_of, "joint_id", joint_ids),
            releases=self._among(Release, release_of, "joint_id", joint_ids),
        )

    def jobs_permitted(
        self,
        batch_ids: Iterable[int],
        joint_ids: Iterable[int],
        late_from_us: Instant | None,
        *,
        standing: bool = True,
    ) -> set[int]:
        """Return the jobs with a standing permission that may hang on changed facts.

        Parameters
        ----------
        batch_ids, joint_ids : iterable of int
            Batches and joints that were corrected.
        late_from_us : int or None
            Also those with a late bound from here on [µs UTC].
        standing : bool, optional
            Whether the permissions must not have been withdrawn.
        """
        joints = {joint.id for joint in self.joints(batch_ids=batch_ids)} | set(joint_ids)
        grants = self._among(Grant, grant_of, "joint_id", joints)
        permitted = {g.joint_id for g in grants if g.withdrawn_us is None or not standing}
        if late_from_us is not None:
            rows = self._database.rows(
                "SELECT DISTINCT joint_id FROM permission_grant"
                " WHERE withdrawn_us IS NULL AND late_us >= ?",
                (late_from_us,),
            )
            permitted |= {row[0] for row in rows}
        clubs = {joint.club_id for joint in self.joints(ids=permitted)}
        return {club.job_id for club in self.clubs_by_id(clubs)}

    def customers(self, ids: Iterable[int]) -> list[Customer]:
        """Return customers by id."""
        return self._among(Customer, _plain(Customer), "id", ids)

    def customers_named(self, text: str, limit: int = 20) -> list[Customer]:
        """Return customers whose name or phone holds the text, the latest first."""
        pattern = "%" + text.replace("\\", r"\\").replace("%", r"\%").replace("_", r"\_") + "%"
        rows = self._database.rows(
            f"SELECT {columns(Customer)} FROM customer WHERE erased_us IS NULL"
            r" AND (name LIKE ? ESCAPE '\' OR phone LIKE ? ESCAPE '\')"
            " ORDER BY id DESC LIMIT ?",
            (pattern, pattern, limit),
        )
        return [Customer(*row) for row in rows]

    def jobs(self, ids: Iterable[int]) -> list[Job]:
        """Return jobs by id."""
        return self._among(Job, _plain(Job), "id", ids)

    def jobs_of(self, customer_id: int) -> list[Job]:
        """Return a customer's jobs."""
        return self._among(Job, _plain(Job), "customer_id", (customer_id,))

    def job_numbered(self, number: str) -> Job | None:
        """Return the job with this number."""
        found = self._among(Job, _plain(Job), "number", (number,))
        return found[0] if found else None

    def latest_jobs(self, limit: int = 50) -> list[Job]:
        """Return the newest jobs, the latest first."""
        rows = self._database.rows(
            f"SELECT {columns(Job)} FROM job ORDER BY id DESC LIMIT ?", (limit,)
        )
        return [Job(*row) for row in rows]

    def clubs(self, job_ids: Iterable[int]) -> list[Club]:
        """Return the clubs of jobs, in their order."""
        found = self._among(Club, _plain(Club), "job_id", job_ids)
        return sorted(found, key=lambda club: (club.job_id, club.sort, club.id))

    def clubs_by_id(self, ids: Iterable[int]) -> list[Club]:
        """Return clubs by id."""
        return self._among(Club, _plain(Club), "id", ids)

    def joints(
        self,
        *,
        ids: Iterable[int] | None = None,
        club_ids: Iterable[int] | None = None,
        batch_ids: Iterable[int] | None = None,
    ) -> list[Joint]:
        """Return joints by id, of clubs, or of batches (exactly one of them)."""
        if ids is not None:
            return self._among(Joint, joint_of, "id", ids)
        if club_ids is not None:
            return self._among(Joint, joint_of, "club_id", club_ids)
        if batch_ids is not None:
            return self._among(Joint, joint_of, "batch_id", batch_ids)
        raise TypeError("joints of what?")

    def batches(self, ids: Iterable[int]) -> list[Batch]:
        """Return batches by id."""
        return self._among(Batch, batch_of, "id", ids)

    def batches_numbered(self, number: int) -> list[Batch]:
        """Return the batches with this number."""
        return self._among(Batch, batch_of, "number", (number,))

    def next_batch_number(self) -> int:
        """Return one more than the highest batch number so far."""
        return int(self._database.value("SELECT max(number) FROM batch") or 0) + 1

    def stays(self, club_ids: Iterable[int], *, open_only: bool = False) -> list[Stay]:
        """Return the stays of clubs in order of time, or only where they lie now."""
        tail = " AND to_us IS NULL" if open_only else ""
        found = self._among(Stay, _plain(Stay), "club_id", club_ids, tail)
        return sorted(found, key=lambda stay: (stay.from_us, stay.id))

    def stays_at(self, place_ids: Iterable[int]) -> list[Stay]:
        """Return who lies at these places now."""
        return self._among(Stay, _plain(Stay), "place_id", place_ids, " AND to_us IS NULL")

    def _among(
        self,
        kind: type[T],
        make: Callable[[tuple[Any, ...]], T],
        column: str,
        wanted: Iterable[object],
        tail: str = "",
    ) -> list[T]:
        return among(self._database, kind, make, column, wanted, tail)


def among(
    database: Database,
    kind: type[T],
    make: Callable[[tuple[Any, ...]], T],
    column: str,
    wanted: Iterable[object],
    tail: str = "",
) -> list[T]:
    """Return the values whose `column` is one of the wanted, in order of their ids."""
    values = list(dict.fromkeys(wanted))
    select = f'SELECT {columns(kind)} FROM "{TABLE[kind]}" WHERE "{column}"'
    found: list[tuple[Any, ...]] = []
    for start in range(0, len(values), _AT_ONCE):
        part = values[start : start + _AT_ONCE]
        marks = ", ".join("?" * len(part))
        found += database.rows(f"{select} IN ({marks}){tail}", part)
    found.sort(key=_first)
    return [make(row) for row in found]


def _first(row: tuple[Any, ...]) -> Any:
    return row[0]


def _plain(kind: Callable[..., T]) -> Callable[[tuple[Any, ...]], T]:
    return lambda row: kind(*row)
