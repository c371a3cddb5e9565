"""Times and names as the bench says them: absolute, with the weekday if it isn't today.

In the language that is spoken.
"""

from __future__ import annotations

from datetime import datetime

from rackboard.core.bench import Customer
from rackboard.core.day_names import DAYS, LONG_DAYS, MONTHS
from rackboard.core.epoxy import Range, Sheet
from rackboard.core.instants import DAY_US, MINUTE_US, Instant
from rackboard.core.schedule import OpeningHours
from rackboard.core.text import Figure, text
from rackboard.ui.language import say, spoken, translated

__all__ = (
    "DAYS", "LONG_DAYS", "LONG_MONTHS", "MONTHS", "Times", "both_clocks", "customer_said",
    "hours_text", "in_sentence", "long_date", "short_name",
)  # fmt: skip

LONG_MONTHS = (
    text("Months", "January"), text("Months", "February"), text("Months", "March"),
    text("Months", "April"), text("Months", "May"), text("Months", "June"),
    text("Months", "July"), text("Months", "August"), text("Months", "September"),
    text("Months", "October"), text("Months", "November"), text("Months", "December"),
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
        clock = f"{local:%H:%M}"
        return clock if local.date() == self._today else f"{self._date(local)} {clock}"

    def _date(self, local: datetime) -> str:
        """Return "Sat", or "21 Mar" a week away."""
        if abs((local.date() - self._today).days) <= _WEEK_DAYS:
            return translated(DAYS[local.weekday()])
        month = translated(MONTHS[local.month - 1])
        return say("Times", "{day} {month}").format(day=local.day, month=month)

    def limit(self, instant: Instant) -> str:
        """Return a limit, rounded down to the full minute."""
        return self.moment(instant // MINUTE_US * MINUTE_US)

    def day(self, instant: Instant) -> str:
        """Return "today", "Fri" or "21 Mar"."""
        local = self.hours.local(instant)
        return say("Times", "today") if local.date() == self._today else self._date(local)

    def counter(self, instant: Instant) -> str:
        """Return when somebody can have it, in opening hours: "now", "16:10", "Fri at opening"."""
        if instant <= self.now:
            return say("Times", "now")
        if self.hours.is_open(instant):
            return self.moment(instant)
        opening = self.hours.next_opening(instant)
        if opening is None:
            return self.moment(instant)
        return say("Times", "{day} at opening").format(day=self.day(opening))

    def ago(self, instant: Instant) -> str:
        """Return "3 min ago", "2 h ago" or the time itself if it is longer."""
        minutes = (self.now - instant) // MINUTE_US
        if minutes < 1:
            return say("Times", "just now")
        if minutes < 100:
            return say("Times", "{minutes} min ago").format(minutes=minutes)
        if self.now - instant < DAY_US:
            return say("Times", "{hours} h ago").format(hours=minutes // 60)
        return self.moment(instant)


def long_date(local: datetime) -> str:
    """Return "12 March"."""
    month = translated(LONG_MONTHS[local.month - 1])
    return say("Times", "{day} {month}").format(day=local.day, month=month)


def hours_text(hours: float) -> str:
    """Return "24 h", "1½ h" or "30 min"."""
    if hours < 1:
        return translated(Figure(f"{hours * 60:.3g} min"))
    whole, rest = divmod(hours, 1)
    if rest == 0.5:
        return f"{int(whole)}½ h"
    return translated(Figure(f"{hours:.3g} h"))


def customer_said(customer: Customer | None) -> str:
    """Return whose clubs they are: a quick repair may have no name, an erased one has none."""
    if customer is not None and customer.name:
        return customer.name
    if customer is not None and customer.erased_us is None:
        return say("Inspector", "no name given")
    return say("Inspector", "customer erased")


def both_clocks(sheet: Sheet) -> str:
    """Return an epoxy's name by both clocks: "60 min to use, 24 h to hit".

    By the times of the sheet: the most careful end of each range.
    """
    life: Range = sheet.working_life_min
    return say("Times", "{life} to use, {full} to hit").format(
        life=translated(Figure(f"{life.long:.3g} min")),
        full=hours_text(sheet.full_cure_time_h.long),
    )


def short_name(sheet: Sheet) -> str:
    """Return what a tile has room for: the last word of a long name."""
    return sheet.name if len(sheet.name) <= _SHORT_NAME else sheet.name.split()[-1]


def in_sentence(name: str) -> str:
    """Return a name as it stands inside a sentence: small in English only."""
    return name.lower() if spoken() == "en" else name
