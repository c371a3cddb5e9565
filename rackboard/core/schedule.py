"""When the shop is open, in local time, answered in instants."""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass
from datetime import date, datetime, timedelta, tzinfo
from typing import TYPE_CHECKING

from rackboard.core.errors import InputError
from rackboard.core.instants import Instant, from_datetime, to_datetime
from rackboard.core.text import text

if TYPE_CHECKING:
    from rackboard.core.bench import Heating

Hours = tuple[int, int] | None
"""Opening and closing in minutes after local midnight; None: closed all day."""

DEFAULT_WEEK: tuple[Hours, ...] = ((480, 1080),) * 5 + (None, None)
"""Monday to Friday 08:00–18:00 until typed [decision]."""
HEATING_BACK_MIN = 9 * 60
"""Without a heating schedule the shop is warm again at 09:00 [decision]."""
_LOOK_DAYS = 15


@dataclass(frozen=True, slots=True)
class OpeningHours:
    """The shop's week.

    Parameters
    ----------
    week : tuple of (int, int) or None, length 7
        From Monday: opening and closing [min after local midnight], None for a closed day.
    zone : tzinfo
        The shop's time zone.

    Raises
    ------
    InputError
        If a day closes before it opens, or the week hasn't seven days.
    """

    week: tuple[Hours, ...]
    zone: tzinfo

    def __post_init__(self) -> None:
        """Check the week."""
        if len(self.week) != 7:
            raise InputError(
                text("Hours", "seven days"), f"{len(self.week)}", text("Hours", "opening hours")
            )  # fmt: skip
        for day in self.week:
            if day is not None and not 0 <= day[0] < day[1] <= 24 * 60:
                raise InputError(
                    text("Hours", "a closing hour after the opening hour"), day,
                    text("Hours", "opening hours"),
                )  # fmt: skip

    def local(self, instant: Instant) -> datetime:
        """Return the shop's local time at an instant."""
        return to_datetime(instant).astimezone(self.zone)

    def at(self, day: date, minutes: int) -> Instant:
        """Return the instant of a local time of day; a time skipped in spring moves on."""
        midnight = datetime(day.year, day.month, day.day, tzinfo=self.zone)
        naive = midnight.replace(tzinfo=None) + timedelta(minutes=minutes)
        return from_datetime(naive.replace(tzinfo=self.zone))

    def _edges(self, day: date, days: int) -> list[tuple[Instant, Instant]]:
        edges = []
        for offset in range(days):
            that = day + timedelta(days=offset)
            hours = self.week[that.weekday()]
            if hours is not None:
                opening, closing = self.at(that, hours[0]), self.at(that, hours[1])
                if opening < closing:  # hours that the clock skips in spring don't happen
                    edges.append((opening, closing))
        return edges

    def is_open(self, instant: Instant) -> bool:
        """Return whether the shop is open; at the closing instant it is not."""
        day = self.local(instant).date()
        return any(a <= instant < b for a, b in self._edges(day - timedelta(days=1), 2))

    def next_opening(self, instant: Instant) -> Instant | None:
        """Return the first opening at or after an instant; None if the shop never opens."""
        day = self.local(instant).date()
        return next((a for a, _ in self._edges(day, _LOOK_DAYS) if a >= instant), None)

    def next_closing(self, instant: Instant) -> Instant | None:
        """Return the first closing after an instant; None if the shop never opens."""
        day = self.local(instant).date() - timedelta(days=1)
        return next((b for _, b in self._edges(day, _LOOK_DAYS + 1) if b > instant), None)

    def heating_back(self, night_end: Instant, heating: Heating | None) -> Instant:
        """Return when the zone is heated again on the day that a night ends."""
        minutes = HEATING_BACK_MIN if heating is None else heating.on_min
        return self.at(self.local(night_end).date(), minutes)

    def open_spans(self, start: Instant, end: Instant) -> list[tuple[Instant, Instant]]:
        """Return the stretches of [start, end) in which the shop is open, in order."""
        day = self.local(start).date() - timedelta(days=1)
        days = (self.local(end).date() - day).days + 1
        spans = self._edges(day, days)
        first = bisect_right([b for _, b in spans], start)
        return [(max(a, start), min(b, end)) for a, b in spans[first:] if a < end]
