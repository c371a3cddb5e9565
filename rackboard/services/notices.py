"""What is told to people: written down first, then handed to the couriers.

A notice is a row before anybody is called, so that nothing is lost if a courier fails or the
program dies; what each courier did is written after it. The list in the window is the row
itself and can't fail.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import NamedTuple, Protocol

from rackboard.core.bench import Notice
from rackboard.core.instants import Clock, Instant
from rackboard.services.agenda import JobStanding
from rackboard.services.board import Board
from rackboard.store import Store
from rackboard.store.changes import ChangeSet

KIND = "job safe"
SHOWN = "shown"
_FAILED = "failed: "

Done = Callable[[str | None], None]
"""How a courier says what became of a message: None if it was shown, else why not."""


class Message(NamedTuple):
    """What a courier shows.

    Attributes
    ----------
    key : str
        A later message of the same key takes the place of this one.
    summary : str
        At most 40 characters.
    body : str
        Whole sentences.
    take_back : bool
        Nothing new: what was shown under the key is to go away.
    """

    key: str
    summary: str
    body: str
    take_back: bool = False


class Courier(Protocol):
    """Somebody who carries messages out of the window; must never block."""

    @property
    def name(self) -> str:
        """In the bench's words, such as "Desktop notices"."""

    def deliver(self, message: Message, done: Done) -> None:
        """Show a message, or take one back; call `done` once, now or later, or raise."""


class Notices:
    """Raises "whole job safe to hit" once a job, and takes it back when it no longer holds.

    Parameters
    ----------
    store : Store
        The data file.
    clock : Clock
        The time.
    couriers : sequence of Courier
        Called in this order, each for every message.
    """

    __slots__ = ("_began", "_clock", "_couriers", "_latest", "_since_us", "_store", "_time_text")

    def __init__(self, store: Store, clock: Clock, couriers: Sequence[Courier]) -> None:
        self._store = store
        self._clock = clock
        self._couriers = tuple(couriers)
        self._latest: dict[int, Notice | None] = {}
        self._since_us: dict[str, Instant] = {}
        self._began = False
        self._time_text: Callable[[Instant], str] = str

    @property
    def trouble(self) -> str | None:
        """What doesn't work, for the strip: "Desktop notices: not working since 14:05"."""
        for courier in self._couriers:
            since = self._since_us.get(courier.name)
            if since is not None:
                return f"{courier.name}: not working since {self._time_text(since)}"
        return None

    def raise_due(self, board: Board) -> ChangeSet | None:
        """Write down what has become due or no longer holds, then call the couriers.

        Returns
        -------
        ChangeSet or None
            What was written before any courier was called; None if nothing was.
        """
        if not board.reckoned:
            return None
        hours = board.snapshot.hours
        self._time_text = lambda instant: f"{hours.local(instant):%H:%M}"
        now = self._clock.now()
        jobs = {standing.job.id: standing for standing in board.jobs()}
        self._learn(jobs)
        due = [
            standing for standing in jobs.values()
            if standing.good and standing.job.ready_us is None and not self._open(standing.job.id)
        ]  # fmt: skip
        due.sort(key=lambda standing: (standing.good_us or 0, standing.job.id))
        gone = [
            (notice, jobs.get(job_id)) for job_id, notice in self._latest.items()
            if notice is not None and notice.withdrawn_us is None
            and ((standing := jobs.get(job_id)) is None or standing.job.ready_us is not None
                 or not standing.good)
        ]  # fmt: skip
        left_over = self._left_over(jobs)
        if not due and not gone and not left_over:
            return None
        # A READY taken back opens the same notice again; nobody needs to be told twice.
        again = [standing for standing in due if self._closed_by_ready(standing.job.id)]
        raised: list[tuple[Notice, JobStanding]] = []
        changes: ChangeSet | None = None
        if due or gone:
            with self._store.write("notices", now) as act:
                for standing in due:
                    old = self._latest[standing.job.id]
                    if standing in again and old is not None:
                        act.update("notice", old.id, withdrawn_us=None)
                        continue
                    episode = 1 if old is None else _episode(old) + 1
                    notice = Notice(
                        0, f"{KIND}:{standing.job.id}:{episode}", KIND, "job", standing.job.id,
                        standing.good_us or now, now,
                    )  # fmt: skip
                    act.add(notice)
                    raised.append((notice, standing))
                    act.add_event("whole job safe to hit", "job", standing.job.id,
                                  {"episode": episode}, at_us=notice.due_us)  # fmt: skip
                for notice, there in gone:
                    act.update("notice", notice.id, withdrawn_us=now)
                    kind = "notice closed" if _is_over(there) else "notice withdrawn"
                    act.add_event(kind, "job", notice.subject_id)
            changes = act.changes
            for notice, _ in [*raised, *gone]:
                self._read(notice.subject_id, notice.key)
            for standing in again:
                old = self._latest[standing.job.id]
                assert old is not None
                self._read(standing.job.id, old.key)
        self._tell([*left_over, *raised], gone, board)
        return changes

    def see(self, notice_id: int) -> ChangeSet:
        """Note that a person has dismissed a notice in the window."""
        now = self._clock.now()
        with self._store.write("notice seen", now) as act:
            act.update("notice", notice_id, seen_us=now)
        for job_id, notice in self._latest.items():
            if notice is not None and notice.id == notice_id:
                self._read(job_id, notice.key)
                break
        return act.changes

    def _learn(self, jobs: dict[int, JobStanding]) -> None:
        """Read the latest notice of jobs not met before, and all that are still open."""
        if not self._began:
            for notice in self._store.journal.notices(1000, open_only=True):
                if notice.kind == KIND:
                    self._latest[notice.subject_id] = notice
        wanted = [job_id for job_id in jobs if job_id not in self._latest]
        episode = 1
        while wanted:
            for job_id in wanted:
                self._latest.setdefault(job_id, None)
            found = self._store.journal.notices_keyed(f"{KIND}:{j}:{episode}" for j in wanted)
            self._latest.update({notice.subject_id: notice for notice in found})
            wanted = [notice.subject_id for notice in found]
            episode += 1

    def _left_over(self, jobs: dict[int, JobStanding]) -> list[tuple[Notice, JobStanding]]:
        """Return what was written down before the program died and never handed over."""
        if self._began:
            return []
        self._began = True
        return sorted(
            (
                (notice, standing) for job_id, standing in jobs.items()
                if standing.good and standing.job.ready_us is None
                and (notice := self._latest[job_id]) is not None and _is_open(notice)
                and notice.seen_us is None and notice.couriers is None
            ),
            key=lambda pair: pair[0].due_us,
        )  # fmt: skip

    def _read(self, job_id: int, key: str) -> None:
        self._latest[job_id] = self._store.journal.notice(key)

    def _open(self, job_id: int) -> bool:
        notice = self._latest[job_id]
        return notice is not None and _is_open(notice)

    def _closed_by_ready(self, job_id: int) -> bool:
        if self._latest[job_id] is None:
            return False
        kinds = ("notice closed", "notice withdrawn")
        last = self._store.journal.events(1, kinds=kinds, subject="job", subject_id=job_id)
        return bool(last) and last[0].kind == "notice closed"

    def _tell(
        self,
        raised: list[tuple[Notice, JobStanding]],
        gone: list[tuple[Notice, JobStanding | None]],
        board: Board,
    ) -> None:
        for notice, there in gone:
            self._hand_over(_taken_back(notice, there), ())
        if not raised:
            return
        keys = [notice.key for notice, _ in raised]
        if len(raised) == 1:
            self._hand_over(_one(*raised[0], board), keys)
        else:
            self._hand_over(_several(raised, board), keys)

    def _hand_over(self, message: Message, keys: Sequence[str]) -> None:
        """Call every courier, then write down what each has done."""
        said: dict[str, str] = {}
        waiting = True

        def done_by(courier: Courier) -> Done:
            def done(reason: str | None) -> None:
                if courier.name in said:
                    return
                said[courier.name] = SHOWN if reason is None else f"{_FAILED}{reason}"
                if reason is None:
                    self._since_us.pop(courier.name, None)
                else:
                    self._since_us.setdefault(courier.name, self._clock.now())
                if not waiting:
                    self._write_down(keys, said)

            return done

        for courier in self._couriers:
            done = done_by(courier)
            try:
                courier.deliver(message, done)
            except Exception as error:  # whatever it is, the others and the list go on
                done(str(error) or type(error).__name__)
        waiting = False
        asked = {courier.name: "asked" for courier in self._couriers}
        self._write_down(keys, asked | said)

    def _write_down(self, keys: Iterable[str], said: dict[str, str]) -> None:
        notices = self._store.journal.notices_keyed(keys)
        if not notices:
            return
        from rackboard.store.rows import json_text

        with self._store.write("couriers", self._clock.now()) as act:
            for notice in notices:
                text = json_text((notice.couriers or {}) | said)
                act.update("notice", notice.id, couriers_json=text)


def _episode(notice: Notice) -> int:
    return int(notice.key.rpartition(":")[2])


def _is_open(notice: Notice) -> bool:
    """Whether it still stands; a notice that was seen isn't raised anew."""
    return notice.withdrawn_us is None


def _is_over(standing: JobStanding | None) -> bool:
    """Whether the job is READY or has left the shop, rather than no longer good."""
    return standing is None or standing.job.ready_us is not None


def _clubs(standing: JobStanding) -> str:
    return "1 club" if standing.clubs == 1 else f"{standing.clubs} clubs"


def _when(notice: Notice, board: Board) -> str:
    local = board.snapshot.hours.local(notice.due_us)
    today = board.snapshot.hours.local(notice.raised_us).date() == local.date()
    return f"{local:%H:%M}" if today else f"{local:%a %H:%M}"


def _one(notice: Notice, standing: JobStanding, board: Board) -> Message:
    customer = standing.customer.name
    body = (
        f"{_clubs(standing)}{f' for {customer}' if customer else ''}, since "
        f"{_when(notice, board)}. Twist and tap before it goes out."
    )
    return Message(notice.key, _short(f"Job {standing.job.number}: whole job safe to hit"), body)


def _several(raised: list[tuple[Notice, JobStanding]], board: Board) -> Message:
    lines = [
        f"Job {standing.job.number} since {_when(notice, board)}" for notice, standing in raised
    ]
    return Message(
        "+".join(notice.key for notice, _ in raised), f"{len(raised)} whole jobs safe to hit",
        "; ".join(lines) + ".",
    )  # fmt: skip


def _taken_back(notice: Notice, standing: JobStanding | None) -> Message:
    if standing is None or _is_over(standing):
        return Message(notice.key, "", "", take_back=True)
    return Message(
        notice.key, _short(f"Job {standing.job.number}: no longer safe to hit"),
        "What was said before no longer holds. See the board.",
    )  # fmt: skip


def _short(text: str) -> str:
    return text if len(text) <= 40 else text[:39] + "…"
