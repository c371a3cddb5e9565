"""The journal of alerts page by page, the latest first: by kind, time, job and place."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from rackboard.core.alerts.kinds import NATURE, Kind, Subject
from rackboard.core.alerts.rows import Alert, Telling
from rackboard.core.instants import Instant
from rackboard.store.rows import alert_of, columns, telling_of
from rackboard.store.store import Store

_AT_ONCE = 400


class Wanted(NamedTuple):
    """Which alerts; None: any.

    Attributes
    ----------
    kinds : frozenset of Kind or None
        Of these kinds.
    from_us, to_us : int or None
        Those that held, or fell due, from (included) … to (not included) [µs UTC].
    job : str
        Whose job's number begins so, "" for any: of its clubs, of itself, or of a zone in which
        a club of it lay meanwhile.
    place_id : int or None
        Whose clubs lay at this place when it fell due, or in whose zone the place lies.
    """

    kinds: frozenset[Kind] | None = None
    from_us: Instant | None = None
    to_us: Instant | None = None
    job: str = ""
    place_id: int | None = None


class Cursor(NamedTuple):
    """After which alert a page begins: its due instant [µs UTC] and its id."""

    due_us: Instant
    id: int


def _kinds(subject: Subject) -> str:
    return ", ".join(f"'{kind}'" for kind, nature in NATURE.items() if nature.subject is subject)


_JOINT, _ZONE = _kinds(Subject.JOINT), _kinds(Subject.ZONE)
_BATCH, _JOB = _kinds(Subject.JOB_BATCH), _kinds(Subject.JOB)
_EVER = 1 << 62
_END = f"coalesce(a.ended_us, a.closed_us, {_EVER})"
_MEANWHILE = f"s.from_us <= {_END} AND coalesce(s.to_us, {_EVER}) >= a.due_us"
_THEN = f"s.from_us <= a.due_us AND coalesce(s.to_us, {_EVER}) > a.due_us"
_OF_JOB = (
    f"(a.kind IN ({_JOINT}) AND a.subject_id IN (SELECT t.id FROM joint t"
    " JOIN club c ON c.id = t.club_id WHERE c.job_id IN ({jobs}))"
    f" OR a.kind IN ({_BATCH}, {_JOB}) AND a.subject_id IN ({{jobs}})"
    f" OR a.kind IN ({_ZONE}) AND EXISTS (SELECT 1 FROM lay s"
    f" WHERE s.zone_id = a.subject_id AND {_MEANWHILE}))"
)
_LAY = (
    "WITH lay AS MATERIALIZED (SELECT DISTINCT p.zone_id, s.from_us, s.to_us FROM club c"
    " JOIN stay s ON s.club_id = c.id JOIN place p ON p.id = s.place_id"
    " WHERE c.job_id IN ({jobs})) "
)
"""In which zone clubs of these jobs lay, and when: the clubs of a job mostly move together."""
_AT_PLACE = (
    f"(a.kind IN ({_ZONE}) AND a.subject_id = (SELECT zone_id FROM place WHERE id = {{place}})"
    f" OR a.kind IN ({_JOINT}) AND EXISTS (SELECT 1 FROM joint t JOIN stay s"
    f" ON s.club_id = t.club_id WHERE t.id = a.subject_id AND s.place_id = {{place}} AND {_THEN})"
    f" OR a.kind IN ({_BATCH}) AND EXISTS (SELECT 1 FROM joint t JOIN stay s"
    " ON s.club_id = t.club_id WHERE t.batch_id = a.batch_id AND s.place_id = {place}"
    f" AND {_THEN})"
    f" OR a.kind IN ({_JOB}) AND EXISTS (SELECT 1 FROM club c JOIN stay s"
    f" ON s.club_id = c.id WHERE c.job_id = a.subject_id AND s.place_id = {{place}} AND {_THEN}))"
)


class AlertPages:
    """Reads the journal of alerts in pages.

    Parameters
    ----------
    store : Store
        The data file.
    """

    __slots__ = ("_database",)

    def __init__(self, store: Store) -> None:
        self._database = store.alerts._database

    def page(self, wanted: Wanted, limit: int, after: Cursor | None = None) -> list[Alert]:
        """Return alerts, the latest first.

        Parameters
        ----------
        wanted : Wanted
            Which.
        limit : int
            At most so many.
        after : Cursor, optional
            The last one of the page before.
        """
        terms: list[str] = []
        values: list[object] = []

        def mark(value: object) -> str:
            values.append(value)
            return f"?{len(values)}"

        if wanted.kinds is not None:
            terms.append(f"a.kind IN ({', '.join(mark(kind.value) for kind in wanted.kinds)})")
        if wanted.from_us is not None:
            begin = mark(wanted.from_us)
            lasting = f"a.kind IN ({_JOINT}, {_ZONE}) AND {_END} >= {begin}"
            terms.append(f"(a.due_us >= {begin} OR {lasting})")
        if wanted.to_us is not None:
            terms.append(f"a.due_us < {mark(wanted.to_us)}")
        before = ""
        if wanted.job:
            jobs = ", ".join(str(n) for n in self._jobs(wanted.job))
            before = _LAY.format(jobs=jobs)
            terms.append(_OF_JOB.format(jobs=jobs))
        if wanted.place_id is not None:
            terms.append(_AT_PLACE.format(place=mark(wanted.place_id)))
        if after is not None:
            terms.append(f"(a.due_us, a.id) < ({mark(after.due_us)}, {mark(after.id)})")
        where = f" WHERE {' AND '.join(terms)}" if terms else ""
        rows = self._database.rows(
            f"{before}SELECT {columns(Alert, 'a')} FROM alert a{where}"
            f" ORDER BY a.due_us DESC, a.id DESC LIMIT {mark(limit)}",
            values,
        )
        return [alert_of(row) for row in rows]

    def tellings(self, from_us: Instant, to_us: Instant) -> list[Telling]:
        """Return what was said from … to, both included [µs UTC], in order."""
        rows = self._database.rows(
            f"SELECT {columns(Telling)} FROM telling WHERE at_us BETWEEN ? AND ?"
            " ORDER BY at_us, id",
            (from_us, to_us),
        )
        return [telling_of(row) for row in rows]

    def _jobs(self, number: str) -> Iterable[int]:
        pattern = "".join(f"\\{c}" if c in "\\%_" else c for c in number) + "%"
        rows = self._database.rows(
            "SELECT id FROM job WHERE number LIKE ? ESCAPE '\\' ORDER BY id DESC LIMIT ?",
            (pattern, _AT_ONCE),
        )
        return [row[0] for row in rows]
