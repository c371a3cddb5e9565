"""Times and names as the bench says them: absolute, with the weekday if it isn't today."""

from __future__ import annotations

from datetime import datetime

from rackboard.core.epoxy import Range, Sheet
from rackboard.core.instants import DAY_US, MINUTE_US, Instant
from rackboard.core.schedule import OpeningHours

DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
LONG_DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
LONG_MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip
_WEEK_DAYS = 6
_SHORT_NAME = 12


class Times:
    """Says instants in the shop's local time, seen from now.

    Parameters
    ----------
    hours : OpeningHours
        Of the shop, with its time zone.
    now : int
        The present [µs UTC].
    """

    __slots__ = ("_today", "hours", "now")

    def __init__(self, hours: OpeningHours, now: Instant) -> None:
        self.hours = hours
        self.now = now
        self._today = hours.local(now).date()

    def local(self, instant: Instant) -> datetime:
        """Return local time."""
        return self.hours.local(instant)

    def clock(self, instant: Instant) -> str:
        """Return "14:26"."""
        return f"{self.hours.local(instant):%H:%M}"

    def is_today(self, instant: Instant) -> bool:
        """Return whether it is today."""
        return self.hours.local(instant).date() == self._today

    def moment(self, instant: Instant) -> str:
        """Return "17:20", "Sat 07:55", or "21 Mar 07:55" a week away."""
        local = self.hours.local(instant)
        if local.date() == self._today:
            return f"{local:%H:%M}"
        if abs((local.date() - self._today).days) <= _WEEK_DAYS:
            return f"{DAYS[local.weekday()]} {local:%H:%M}"
        return f"{local.day} {MONTHS[local.month - 1]} {local:%H:%M}"

    def limit(self, instant: Instant) -> str:
        """Return a limit, rounded down to the full minute."""
        return self.moment(instant // MINUTE_US * MINUTE_US)

    def day(self, instant: Instant) -> str:
        """Return "today", "Fri" or "21 Mar"."""
        local = self.hours.local(instant)
        if local.date() == self._today:
            return "today"
        if abs((local.date() - self._today).days) <= _WEEK_DAYS:
            return DAYS[local.weekday()]
        return f"{local.day} {MONTHS[local.month - 1]}"

    def counter(self, instant: Instant) -> str:
        """Return when somebody can have it, in opening hours: "now", "16:10", "Fri at opening"."""
        if instant <= self.now:
            return "now"
        if self.hours.is_open(instant):
            return self.moment(instant)
        opening = self.hours.next_opening(instant)
        return self.moment(instant) if opening is None else f"{self.day(opening)} at opening"

    def ago(self, instant: Instant) -> str:
        """Return "3 min ago", "2 h ago" or the time itself if it is longer."""
        minutes = (self.now - instant) // MINUTE_US
        if minutes < 1:
            return "just now"
        if minutes < 100:
            return f"{minutes} min ago"
        if self.now - instant < DAY_US:
            return f"{minutes // 60} h ago"
        return self.moment(instant)


def hours_text(hours: float) -> str:
    """Return "24 h", "1½ h", "30 min" or "3 days"."""
    if hours < 1:
        return f"{hours * 60:.3g} min"
    whole, rest = divmod(hours, 1)
    if rest == 0.5:
        return f"{int(whole)}½ h"
    return f"{hours:.3g} h"


def both_clocks(sheet: Sheet) -> str:
    """Return an epoxy's name by both clocks: "60 min to use, 24 h to hit".

    By the times of the sheet: the most careful end of each range.
    """
    life: Range = sheet.working_life_min
    return f"{life.long:.3g} min to use, {hours_text(sheet.full_cure_time_h.long)} to hit"


def short_name(sheet: Sheet) -> str:
    """Return what a tile has room for: the last word of a long name."""
    return sheet.name if len(sheet.name) <= _SHORT_NAME else sheet.name.split()[-1]
