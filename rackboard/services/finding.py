"""Finding a job as somebody types, and the one sentence about it to read aloud.

Times are said in opening hours, and never before the late bound.
"""

from __future__ import annotations

import unicodedata
from collections import defaultdict
from datetime import date, timedelta
from typing import NamedTuple

from rackboard.core.day_names import LONG_DAYS
from rackboard.core.instants import Instant
from rackboard.core.standing import Standing
from rackboard.core.text import Text, text
from rackboard.services.agenda import JobStanding
from rackboard.services.board import Board

_MONTHS = (
    text("Months", "January"), text("Months", "February"), text("Months", "March"),
    text("Months", "April"), text("Months", "May"), text("Months", "June"),
    text("Months", "July"), text("Months", "August"), text("Months", "September"),
    text("Months", "October"), text("Months", "November"), text("Months", "December"),
)  # fmt: skip
_WEEK = 7
_NUMBERS = (
    text("Counter", "no"), text("Counter", "one"), text("Counter", "two"),
    text("Counter", "three"), text("Counter", "four"), text("Counter", "five"),
    text("Counter", "six"), text("Counter", "seven"), text("Counter", "eight"),
    text("Counter", "nine"), text("Counter", "ten"), text("Counter", "eleven"),
    text("Counter", "twelve"), text("Counter", "thirteen"), text("Counter", "fourteen"),
)  # fmt: skip
_PLAIN = str.maketrans(
    {"ø": "o", "ł": "l", "đ": "d", "ð": "d", "þ": "th", "æ": "ae", "œ": "oe", "ı": "i"}
)
"""Letters that Unicode doesn't take apart into a letter and an accent."""


def fold(name: str) -> str:
    """Return a text without case and accents, for comparing.

    Examples
    --------
    >>> fold("Çelik-Ørsted Weiß")
    'celik-orsted weiss'
    """
    apart = unicodedata.normalize("NFKD", name.casefold())
    return "".join(c for c in apart if not unicodedata.combining(c)).translate(_PLAIN)


class Found(NamedTuple):
    """A line of the answer: a job, or one club of it where the words name a club.

    `club_id` is the club to bring the ring to, None if no club of the job has a joint.
    """

    job: JobStanding
    club_id: int | None
    club: str
    where: str


class Finding:
    """Looks among the jobs at work, all as they stand at one moment.

    Parameters
    ----------
    board : Board
        What the bench sees.
    now : int
        The present [µs UTC].
    """

    def __init__(self, board: Board, now: Instant) -> None:
        self._board = board
        self._now = now
        self._hours = board.snapshot.hours
        self.jobs = board.jobs()
        self._of_job: dict[int, list[Standing]] = defaultdict(list)
        for standing in board.standings:
            self._of_job[standing.job.id].append(standing)

    # Looking

    def search(self, typed: str) -> list[Found]:
        """Return what holds every word of the text, the closest first; all jobs for no text.

        Looked at are job number, customer, club, epoxy and lot.
        """
        words = fold(typed).split()
        ranked: list[tuple[int, int, Found]] = []
        for order, job in enumerate(self.jobs):
            found = self._in_job(job, words)
            ranked += [(_rank(job, words), order, row) for row in found]
        ranked.sort(key=lambda item: item[:2])
        return [row for _, _, row in ranked]

    def _in_job(self, job: JobStanding, words: list[str]) -> list[Found]:
        of_job = fold(f"{job.job.number}\n{job.customer.name}")
        standings = self._of_job[job.job.id]
        left = [word for word in words if word not in of_job]
        if not left:
            return [self._whole(job, standings)]
        batches = {s.batch.id: fold(f"{s.batch.sheet.name}\n{s.batch.lot}") for s in standings}
        by_batch = [s for s in standings if all(word in batches[s.batch.id] for word in left)]
        if by_batch:
            return [self._whole(job, by_batch)]
        named = [
            s for s in standings
            if all(word in fold(s.club.name) or word in batches[s.batch.id] for word in left)
        ]  # fmt: skip
        # "4 iron" in job 214: the clubs that hold both words, before those that lean on the job.
        closest = [s for s in named if all(word in fold(s.club.name) for word in words)]
        where = self._board.snapshot.where
        return [Found(job, s.club.id, s.club.name, where(s.club.id)) for s in closest or named]

    def _whole(self, job: JobStanding, standings: list[Standing]) -> Found:
        """Return the job's line; a club on HOLD is what one wants to see first."""
        first = min(standings, key=lambda s: s.hold is None, default=None)
        return Found(job, None if first is None else first.club.id, "", "")

    # Saying

    def sentence(self, job: JobStanding) -> Text:
        """Return the one sentence to read aloud at the counter."""
        name = job.customer.name
        head = (
            text("Counter", "Job {job} for {customer}") if name else text("Counter", "Job {job}")
        ).format(job=job.job.number, customer=name)
        said = self._said(job)
        return said.format(**{**said.parts, "head": head})

    def _said(self, job: JobStanding) -> Text:
        """Return the sentence, its `head` still to be filled in."""
        standings = self._of_job[job.job.id]
        if self._board.is_stale(self._now):
            return text("Counter", "{head}: it can't be said now; the board is not being updated.")
        if job.held:
            held = len({s.club.id for s in standings if s.hold})
            return text(
                "Counter", "{head}: {number} clubs are on hold, somebody will call.",
                "{head}: one club is on hold, somebody will call.", held,
            ).format(head="", number=_number(held))  # fmt: skip
        if job.to_glue:
            return text(
                "Counter", "{head}: {number} clubs are not glued yet, so there is no time to give.",
                "{head}: one club is not glued yet, so there is no time to give.", job.to_glue,
            ).format(head="", number=_number(job.to_glue))  # fmt: skip
        if not standings:
            return text("Counter", "{head}: there is no glued club left.")
        if job.good:
            if job.job.ready_us is not None:
                return text("Counter", "{head} is ready and can be picked up.")
            return text("Counter", "{head}: the glue is good now; it still needs READY.")
        unknown = self._unknown(job, standings)
        if unknown:
            return text("Counter", "{head}: it can't be said yet; {reason}.").format(
                head="", reason=unknown
            )
        if job.good_us is None:
            return text("Counter", "{head}: no time can be given, it is too cold for the glue.")
        return text("Counter", "{head}: the glue is good {when}.").format(
            head="", when=self._when(job.good_us)
        )

    def _unknown(self, job: JobStanding, standings: list[Standing]) -> str:
        """Return why no time can be said yet, "" if one can."""
        if job.unknown:
            since = [_unknown_since(s) for s in standings if s.unknown]
            return self._unknown_words(min(t for t in since if t is not None))
        if any(s.outcome is None and s.milestone is not None for s in standings):
            return text("Counter", "the times are still being worked out")
        if job.good_us is not None and job.good_us <= self._now:
            return text("Counter", "the temperature has not been read up to now")
        return ""

    def _unknown_words(self, since_us: Instant) -> Text:
        if since_us > self._now:
            return text("Counter", "how cold it will get is not known")
        local = self._hours.local(since_us)
        days = (self._today() - local.date()).days
        if days <= 0:
            return text("Counter", "how cold it got since {time} is not known").format(
                time=f"{local:%H:%M}"
            )
        if days == 1:
            return text("Counter", "how cold it got last night is not known")
        return text("Counter", "how cold it got since {day} is not known").format(
            day=self._day(local.date())
        )

    def _when(self, instant: Instant) -> Text:
        """Return "today at 16:10", "on Friday at opening" or "on 21 March at opening"."""
        local = self._hours.local(instant)
        opening = None if self._hours.is_open(instant) else self._hours.next_opening(instant)
        if opening is not None:
            local = self._hours.local(opening)
            today, other = (
                text("Counter", "today at opening"), text("Counter", "on {day} at opening")
            )  # fmt: skip
        else:
            today, other = text("Counter", "today at {time}"), text("Counter", "on {day} at {time}")
        said = today if local.date() == self._today() else other
        return said.format(day=self._day(local.date()), time=f"{local:%H:%M}")

    def _today(self) -> date:
        return self._hours.local(self._now).date()

    def _day(self, day: date) -> Text:
        if abs(day - self._today()) < timedelta(days=_WEEK):
            return LONG_DAYS[day.weekday()]
        return text("Times", "{day} {month}").format(day=day.day, month=_MONTHS[day.month - 1])


def _rank(job: JobStanding, words: list[str]) -> int:
    """Return how close a job is: its number, the start of it, the start of a name, the rest."""
    number = fold(job.job.number)
    if number in words:
        return 0
    if any(number.startswith(word) for word in words):
        return 1
    names = fold(job.customer.name).split()
    return 2 if any(name.startswith(word) for name in names for word in words) else 3


def _number(count: int) -> str:
    return _NUMBERS[count] if count < len(_NUMBERS) else str(count)


def _unknown_since(standing: Standing) -> Instant | None:
    outcome = standing.outcome
    if outcome is None:
        return None
    known = [t for t in (outcome.unknown_us, outcome.forecast.gap_us) if t is not None]
    return min(known, default=None)
