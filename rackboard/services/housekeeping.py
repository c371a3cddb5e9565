"""What the board does by the way: a daily backup, and an eye on the machine's clock."""

from __future__ import annotations

from collections.abc import Callable, Generator
from pathlib import Path

from rackboard.core.errors import RackboardError
from rackboard.core.instants import HOUR_US, MINUTE_US, Clock, Instant
from rackboard.core.text import text
from rackboard.store import Store

RETRY_US = HOUR_US
"""After a backup that failed the next is tried so much later [decision]."""
STEPPED_US = 2 * MINUTE_US
"""A clock that is off by less isn't worth a word [decision]."""


class DailyBackup:
    """Makes a backup a day, a slice whenever the caller has a moment.

    Parameters
    ----------
    store : Store
        The data file.
    clock : Clock
        The time.
    """

    __slots__ = ("_clock", "_next_us", "_slices", "_store", "made", "trouble")

    def __init__(self, store: Store, clock: Clock) -> None:
        self._store = store
        self._clock = clock
        self._slices: Generator[float, None, Path] | None = None
        self._next_us: Instant = 0
        self.made: Path | None = None
        self.trouble: str | None = None

    @property
    def at_work(self) -> bool:
        """Whether a backup is under way."""
        return self._slices is not None

    def step(self) -> bool:
        """Do a few milliseconds' work; return whether there is more to do now.

        A fault is kept in `trouble` in plain words, until the next backup is made.
        """
        now = self._clock.now()
        try:
            if self._slices is None:
                if self._next_us - RETRY_US <= now < self._next_us:
                    return False
                self._next_us = now + RETRY_US
                if not self._store.backup_due(now):
                    return False
                self._slices = self._store.backup_slices(now)
            next(self._slices)
        except StopIteration as done:
            self._slices, self.made, self.trouble = None, done.value, None
            return False
        except RackboardError as error:
            self._slices = None
            self.trouble = text("House", "No backup was made. {error}").format(error=str(error))
            return False
        return True

    def stop(self) -> None:
        """Give up a backup that is under way; the half-made copy is removed."""
        if self._slices is not None:
            self._slices.close()
            self._slices = None


class ClockWatch:
    """Notices a machine's clock that was set back or put forward.

    Parameters
    ----------
    store : Store
        The data file: nothing in it was recorded later than now.
    elapsed : callable, optional
        Time that passes also in suspend and that nobody can set [µs]; without it only a
        clock set back is noticed.
    """

    __slots__ = ("_elapsed", "_last", "_store")

    def __init__(self, store: Store, elapsed: Callable[[], int] | None = None) -> None:
        self._store = store
        self._elapsed = elapsed
        self._last: tuple[Instant, int] | None = None

    def check(self, now: Instant) -> str | None:
        """Return what is odd about the clock, in plain words; None if nothing is.

        A clock set back is reported at every call until it has caught up with what was
        recorded; one put forward only once.

        Parameters
        ----------
        now : int
            What the machine's clock says [µs UTC].
        """
        passed = 0
        last, ran = self._last, self._elapsed() if self._elapsed else 0
        self._last = (now, ran)
        newest = max(
            (event.recorded_us for event in self._store.journal.events(50)), default=now
        )
        if newest - now >= STEPPED_US:
            return text(
                "House", "The clock of this computer was set back: the board has records that are "
                "{span} later. Nothing is lost and what was earned stays; look at date and time."
            ).format(span=_span(newest - now))  # fmt: skip
        if last is not None and self._elapsed is not None:
            passed = now - last[0] - (ran - last[1])
        if abs(passed) >= STEPPED_US:
            said = (
                text("House", "The clock of this computer was put forward by {span}. If that was "
                     "wrong, the times on the board are too; look at date and time.")
                if passed > 0 else
                text("House", "The clock of this computer was set back by {span}. If that was "
                     "wrong, the times on the board are too; look at date and time.")
            )  # fmt: skip
            return said.format(span=_span(abs(passed)))
        return None


def _span(duration_us: int) -> str:
    minutes = round(duration_us / MINUTE_US)
    if minutes < 60:
        return f"{minutes} min"
    hours, minutes = divmod(minutes, 60)
    if hours >= 48:
        return text("House", "%n days", "%n day", hours // 24)
    return f"{hours} h {minutes:02d} min" if minutes else f"{hours} h"
