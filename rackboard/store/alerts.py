"""The journal of alerts: episodes and what was said of them."""

from __future__ import annotations

from collections.abc import Iterable

from rackboard.core.alerts.rows import WITHDRAWN, Alert, Telling
from rackboard.core.bench import Grant
from rackboard.core.instants import Instant
from rackboard.store.connection import Database
from rackboard.store.rows import alert_of, columns, grant_of, telling_of
from rackboard.store.work import among


class AlertJournal:
    """Reads the journal of alerts; it only ever grows."""

    __slots__ = ("_database",)

    def __init__(self, database: Database) -> None:
        self._database = database

    def open(self) -> list[Alert]:
        """Return the alerts that aren't closed, in due order."""
        rows = self._database.rows(
            f"SELECT {columns(Alert)} FROM alert WHERE closed_us IS NULL ORDER BY due_us, id"
        )
        return [alert_of(row) for row in rows]

    def by_id(self, ids: Iterable[int]) -> list[Alert]:
        """Return alerts by their ids."""
        return among(self._database, Alert, alert_of, "id", ids)

    def last_of(self, kind: str, subject_id: int, batch_id: int = 0) -> Alert | None:
        """Return the last episode of an alert, open or closed."""
        rows = self._database.rows(
            f"SELECT {columns(Alert)} FROM alert WHERE kind = ? AND subject_id = ?"
            " AND batch_id = ? ORDER BY episode DESC LIMIT 1",
            (kind, subject_id, batch_id),
        )
        return alert_of(rows[0]) if rows else None

    def unraised(self, after_us: Instant) -> list[Grant]:
        """Return permissions withdrawn after an instant [µs UTC] that no alarm tells of."""
        rows = self._database.rows(
            f"SELECT {columns(Grant, 'g')} FROM permission_grant g"
            " WHERE g.withdrawn_us > ? AND NOT EXISTS (SELECT 1 FROM alert a"
            " JOIN json_each(a.data_json, '$.grants') told ON told.value = g.id"
            " WHERE a.kind = ? AND a.subject_id = g.joint_id)"
            " ORDER BY g.withdrawn_us, g.id",
            (after_us, WITHDRAWN),
        )
        return [grant_of(row) for row in rows]

    def page(
        self,
        limit: int,
        *,
        kinds: Iterable[str] | None = None,
        from_us: Instant | None = None,
        to_us: Instant | None = None,
        before: tuple[Instant, int] | None = None,
    ) -> list[Alert]:
        """Return alerts, the latest first.

        Parameters
        ----------
        limit : int
            At most so many.
        kinds : iterable of str, optional
            Only of these kinds.
        from_us, to_us : int, optional
            Only those that fell due from (included) … to (not included) [µs UTC].
        before : tuple, optional
            Only those that come after the alert of this due instant and id: the next page.
        """
        terms: list[str] = []
        values: list[object] = []
        if kinds is not None:
            wanted = list(kinds)
            terms.append(f"kind IN ({', '.join('?' * len(wanted))})")
            values += wanted
        for term, value in (("due_us >= ?", from_us), ("due_us < ?", to_us)):
            if value is not None:
                terms.append(term)
                values.append(value)
        if before is not None:
            terms.append("(due_us, id) < (?, ?)")
            values += before
        where = f" WHERE {' AND '.join(terms)}" if terms else ""
        rows = self._database.rows(
            f"SELECT {columns(Alert)} FROM alert{where} ORDER BY due_us DESC, id DESC LIMIT ?",
            (*values, limit),
        )
        return [alert_of(row) for row in rows]

    def tellings(self, since_us: Instant) -> list[Telling]:
        """Return what was said after an instant [µs UTC], in order."""
        rows = self._database.rows(
            f"SELECT {columns(Telling)} FROM telling WHERE at_us > ? ORDER BY at_us, id",
            (since_us,),
        )
        return [telling_of(row) for row in rows]

    def untold(self) -> list[Telling]:
        """Return what was written down and never handed to a courier, in order."""
        rows = self._database.rows(
            f"SELECT {columns(Telling)} FROM telling WHERE couriers_json IS NULL ORDER BY at_us, id"
        )
        return [telling_of(row) for row in rows]
