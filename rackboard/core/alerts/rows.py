"""What is kept of alerts: one row an episode, one a thing said."""

from __future__ import annotations

from typing import NamedTuple

from rackboard.core.instants import Instant

# Written out: the board is painted before the tables are needed. Tests hold them to those.
SPEAKING = ("on, untaken", "due, unseen")
"""Phases in which an alert wants to be told."""
SHUT = "closed"
WITHDRAWN = "withdrawn"
ALARM_KINDS = frozenset({"disturbed", "cold", "no record", WITHDRAWN, "too hot"})


class Alert(NamedTuple):
    """One episode of an alert.

    `subject_id` is a joint's, zone's or job's id by its kind, `batch_id` the batch of a
    milestone of a job × batch, else 0. `due_us` is when the condition began or the milestone
    fell due, `ended_us` when the condition went off, `until_us` until when it is put off.
    `first_told_us` and `told_us` are set anew when it speaks anew. `data` holds its figures,
    JSON values only. Instants are µs UTC.
    """

    id: int
    kind: str
    subject_id: int
    batch_id: int
    episode: int
    phase: str
    due_us: Instant
    raised_us: Instant
    data: dict[str, object]
    ended_us: Instant | None = None
    taken_us: Instant | None = None
    taken_by: str | None = None
    until_us: Instant | None = None
    accepted_mc: int | None = None
    first_told_us: Instant | None = None
    told_us: Instant | None = None
    closed_us: Instant | None = None
    closed_as: str | None = None

    @property
    def is_open(self) -> bool:
        """Whether it isn't closed."""
        return self.phase != SHUT

    @property
    def is_alarm(self) -> bool:
        """Whether it is an alarm rather than a milestone."""
        return self.kind in ALARM_KINDS

    @property
    def speaks(self) -> bool:
        """Whether it wants to be told."""
        return self.phase in SPEAKING

    @property
    def key(self) -> tuple[str, int, int]:
        """What it is about; of several episodes the last counts."""
        return (self.kind, self.subject_id, self.batch_id)


class Telling(NamedTuple):
    """One annunciation: committed before any courier is called.

    `key` names it to the couriers: a later one of the same key takes its place. `data` holds
    the ids of its alerts; `couriers` maps a courier's name to what it did, None before.
    """

    id: int
    key: str
    kind: str
    group_key: str
    at_us: Instant
    sounded: int
    counted: int
    data: dict[str, object]
    couriers: dict[str, str] | None = None

    @property
    def alert_ids(self) -> list[int]:
        """The alerts that it tells of."""
        ids = self.data.get("alerts")
        return [int(n) for n in ids] if isinstance(ids, list) else []
