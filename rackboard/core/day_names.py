"""The days of the week and the months, as they are shown and typed."""

from __future__ import annotations

from rackboard.core.text import text

DAYS = (
    text("Days", "Mon"), text("Days", "Tue"), text("Days", "Wed"), text("Days", "Thu"),
    text("Days", "Fri"), text("Days", "Sat"), text("Days", "Sun"),
)  # fmt: skip
MONTHS = (
    text("Months", "Jan"), text("Months", "Feb"), text("Months", "Mar"), text("Months", "Apr"),
    text("Months", "May"), text("Months", "Jun"), text("Months", "Jul"), text("Months", "Aug"),
    text("Months", "Sep"), text("Months", "Oct"), text("Months", "Nov"), text("Months", "Dec"),
)  # fmt: skip
LONG_DAYS = (
    text("Days", "Monday"), text("Days", "Tuesday"), text("Days", "Wednesday"),
    text("Days", "Thursday"), text("Days", "Friday"), text("Days", "Saturday"),
    text("Days", "Sunday"),
)  # fmt: skip
