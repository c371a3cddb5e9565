"""Moments as people type them at a bench: "15:40", "Mon 15:40", "5 min ago", "Sa 8 Uhr".

English and German are read, whatever the window speaks. Nothing is guessed. A bare time of
day is today's; the order of day and month is never taken from two figures.
"""

from __future__ import annotations

import re
from datetime import date, timedelta
from typing import TYPE_CHECKING

from rackboard.core.day_names import DAYS, LONG_DAYS, MONTHS
from rackboard.core.errors import InputError
from rackboard.core.instants import HOUR_US, MINUTE_US, Instant
from rackboard.core.spoken_german import in_english
from rackboard.core.text import Text, text

if TYPE_CHECKING:
    from collections.abc import Sequence

    from rackboard.core.schedule import OpeningHours

AHEAD_US = 5 * MINUTE_US
"""A clock on the wall may be so far ahead of the board's; such a moment counts as past."""
_LONG_MONTHS = (
    "january", "february", "march", "april", "may", "june", "july", "august", "september",
    "october", "november", "december",
)  # fmt: skip
_NEAR_DAYS = {"yesterday": -1, "today": 0, "tomorrow": 1}
_LONGEST = 60
_WEEK = 7
_HALF_DAY_H = 12

# Compiled when first typed into: the first paint only formats.
_SPAN = (
    r"(?:(?P<h>\d{1,3}|an|half an) ?(?:h|hr|hrs|hours?))?"
    r" ?(?:(?P<min>\d{1,4}|a) ?(?:m|min|mins|minutes?))?"
)
_AGO = _SPAN + r" ago"
_IN = r"in " + _SPAN
_CLOCK = r"(?:at )?(?P<h>\d{1,2}) ?[:h] ?(?P<min>\d{2})(?: ?(?P<half>[ap])\.?m\.?)?"
_DIGITS = r"(?:at )?(?P<h>\d{1,2})(?P<min>\d{2})(?: ?h)?"
_HALF = r"(?:at )?(?P<h>\d{1,2}) ?(?P<half>[ap])\.?m\.?"
_ISO = r"(?P<y>\d{4})-(?P<mon>\d{1,2})-(?P<d>\d{1,2})"
_NAMED = (
    r"(?:(?P<wd>[a-z]{3,9})\.? )?"
    r"(?:(?P<d>\d{1,2})\.? (?P<mon>[a-z]{3,9})\.?|(?P<mon2>[a-z]{3,9})\.? (?P<d2>\d{1,2}))"
    r"(?: (?P<y>\d{4}))?"
)
_AMBIGUOUS = r"\d{1,4}[./-]\d{1,2}(?:[./-]\d{0,4})?"


def parse_moment(
    typed: str, now_us: Instant, hours: OpeningHours, future: bool, where: str
) -> Instant:
    """Return the instant [µs UTC] that somebody means.

    Parameters
    ----------
    typed : str
        "15:40", "1540", "3:40 pm", "now", "5 min ago", "in 20 min", "Mon 15:40",
        "yesterday 17:00", "Sat at opening", "17 March 08:00", "2026-03-14 08:00"; in German too:
        "vor 5 min", "Mo 15:40", "gestern 17 Uhr".
    now_us : int
        The present [µs UTC].
    hours : OpeningHours
        Of the shop; they also hold its time zone.
    future : bool
        Whether it must lie ahead (a promise) or may not (a mixing).
    where : str
        Named in the error.

    Returns
    -------
    int
        The instant. Of an hour that comes twice in autumn the later one, unless that is
        still to come.

    Raises
    ------
    InputError
        If it can't be read without guessing, or lies on the wrong side of now.

    Examples
    --------
    >>> from datetime import UTC
    >>> from rackboard.core.schedule import DEFAULT_WEEK, OpeningHours
    >>> parse_moment("5 min ago", HOUR_US, OpeningHours(DEFAULT_WEEK, UTC), False, "here")
    3300000000
    """
    came = typed.strip() or text("Moment", "nothing")
    wanted = (
        text("Moment", "a time such as Sat 08:00 or 2026-03-14 08:00") if future
        else text("Moment", "a time such as 15:40, 5 min ago or Mon 15:40")
    )  # fmt: skip
    plain = " ".join(typed.replace(",", " ").casefold().split())
    if not plain or len(plain) > _LONGEST:
        raise InputError(wanted, came, where)
    plain = in_english(plain)
    span = _span(plain, now_us)
    if span is not None:
        at_us = span
    else:
        reading = _Reading(now_us, hours, future, wanted, came, where)
        at_us = reading.of(plain)
    if future and at_us <= now_us:
        over = format_moment(at_us, now_us, hours)
        raise InputError(
            text("Moment", "a time that is still to come"), came, where,
            text("Moment", "{time} is over.").format(time=over),
        )  # fmt: skip
    if not future and at_us > now_us + AHEAD_US:
        raise InputError(
            text("Moment", "a time up to now, {now}")
            .format(now=format_moment(now_us, now_us, hours)),
            came, where, text("Moment", 'For the day before write "yesterday" in front.'),
        )  # fmt: skip
    return at_us


def format_moment(at_us: Instant, now_us: Instant, hours: OpeningHours) -> Text:
    """Return a moment as it is shown and may be typed: "15:40", "Mon 15:40", "17 Mar 15:40".

    The weekday stands if it isn't today, the date if it isn't within six days.

    Parameters
    ----------
    at_us, now_us : int
        The moment and the present [µs UTC].
    hours : OpeningHours
        Holds the shop's time zone.
    """
    local, today = hours.local(at_us), hours.local(now_us).date()
    day, month = local.day, MONTHS[local.month - 1]
    clock = f"{local:%H:%M}"
    away = abs((local.date() - today).days)
    if away == 0:
        return text("Moment", "{clock}").format(clock=clock)
    if away < _WEEK:
        weekday = DAYS[local.weekday()]
        return text("Moment", "{weekday} {clock}").format(weekday=weekday, clock=clock)
    if abs(at_us - now_us) < 180 * 24 * HOUR_US:
        return text("Moment", "{day} {month} {clock}").format(day=day, month=month, clock=clock)
    return text("Moment", "{day} {month} {year} {clock}").format(
        day=day, month=month, year=local.year, clock=clock
    )


def _span(plain: str, now_us: Instant) -> Instant | None:
    """Return now, or a moment so long before or after it; None if it is no such text."""
    if plain in ("now", "just now"):
        return now_us
    for pattern, sign in ((_AGO, -1), (_IN, 1)):
        match = re.fullmatch(pattern, plain)
        if match is None or not (match["h"] or match["min"]):
            continue
        words = {"an": HOUR_US, "half an": HOUR_US // 2}
        hours = match["h"] or "0"
        length = words.get(hours) or int(hours) * HOUR_US
        minutes = match["min"] or "0"
        length += (1 if minutes == "a" else int(minutes)) * MINUTE_US
        return now_us + sign * length
    return None


class _Reading:
    """One text on its way to an instant."""

    def __init__(
        self, now_us: Instant, hours: OpeningHours, future: bool, wanted: str, came: str,
        where: str,
    ) -> None:  # fmt: skip
        self.now_us = now_us
        self.hours = hours
        self.future = future
        self.wanted = wanted
        self.came = came
        self.where = where
        self.today = hours.local(now_us).date()

    def of(self, plain: str) -> Instant:
        """Return the instant of a day and a time of day."""
        day, clock = self._split(plain)
        if clock is None:
            wanted = text("Moment", "{wanted}, with the time of day").format(wanted=self.wanted)
            raise InputError(wanted, self.came, self.where)
        if day == "":
            return self._bare(clock)
        if day in _NEAR_DAYS:
            return self._at(self.today + timedelta(days=_NEAR_DAYS[day]), clock)
        weekday = _index(day.removesuffix("."), DAYS, LONG_DAYS)
        if weekday is not None:
            return self._weekday(weekday, clock)
        return self._at(self._date(day), clock)

    def _split(self, plain: str) -> tuple[str, str | None]:
        """Return the text of the day and that of the time of day."""
        words = plain.replace("t", " ", 1).split() if re.match(_ISO + "t", plain) else plain.split()
        for cut in range(len(words)):
            clock = " ".join(words[cut:])
            if self._is_clock(clock):
                return " ".join(words[:cut]), clock
        if re.fullmatch(_AMBIGUOUS, words[0]) and not re.fullmatch(_ISO, words[0]):
            raise self._two_orders()
        return plain, None

    def _is_clock(self, plain: str) -> bool:
        if plain.removeprefix("at ") in ("opening", "closing", "noon"):
            return True
        return any(re.fullmatch(pattern, plain) for pattern in (_CLOCK, _DIGITS, _HALF))

    def _two_orders(self) -> InputError:
        return InputError(
            self.wanted, self.came, self.where,
            text("Moment", "Write a time of day with a colon (15:40), a date as 2026-03-14 or"
                 " 14 March."),
        )  # fmt: skip

    def _minutes(self, clock: str, day: date) -> int:
        """Return a time of day in minutes after midnight."""
        word = clock.removeprefix("at ")
        if word == "noon":
            return 12 * 60
        if word in ("opening", "closing"):
            open_hours = self.hours.week[day.weekday()]
            if open_hours is None:
                raise InputError(
                    text("Moment", "a day on which the shop is open"), self.came, self.where,
                    text("Moment", "It is closed on {weekday}.")
                    .format(weekday=DAYS[day.weekday()]),
                )  # fmt: skip
            return open_hours[0 if word == "opening" else 1]
        match = next(
            m for p in (_CLOCK, _DIGITS, _HALF) if (m := re.fullmatch(p, clock)) is not None
        )
        found = match.groupdict()
        hour, minute = int(found["h"]), int(found.get("min") or 0)
        half = found.get("half")
        if half:
            right = 1 <= hour <= _HALF_DAY_H
            hour = hour % _HALF_DAY_H + (_HALF_DAY_H if half == "p" else 0)
        else:
            right = hour < 2 * _HALF_DAY_H
        if not right or minute > 59:
            wanted = text("Moment", "a time of day from 00:00 to 23:59")
            raise InputError(wanted, self.came, self.where)
        return hour * 60 + minute

    def _at(self, day: date, clock: str) -> Instant:
        minutes = self._minutes(clock, day)
        at_us = self.hours.at(day, minutes)
        local = self.hours.local(at_us)
        if (local.date(), local.hour * 60 + local.minute) != (day, minutes):
            wanted = text("Moment", "an hour that the clocks didn't skip")
            raise InputError(wanted, self.came, self.where)
        second = at_us + HOUR_US  # the hour that comes twice in autumn
        twice = self.hours.local(second).replace(tzinfo=None) == local.replace(tzinfo=None)
        return second if twice and (self.future or second <= self.now_us) else at_us

    def _bare(self, clock: str) -> Instant:
        at_us = self._at(self.today, clock)
        if self.future and at_us <= self.now_us:
            raise InputError(
                text("Moment", "a time that is still to come"), self.came, self.where,
                text("Moment", 'For the day after write "tomorrow" in front.'),
            )  # fmt: skip
        return at_us

    def _weekday(self, weekday: int, clock: str) -> Instant:
        """Return the last such weekday up to now, or the next one after it."""
        step = 1 if self.future else -1
        away = (weekday - self.today.weekday()) * step % _WEEK
        at_us = self._at(self.today + timedelta(days=step * away), clock)
        over = at_us <= self.now_us if self.future else at_us > self.now_us + AHEAD_US
        if away == 0 and over:
            return self._at(self.today + timedelta(days=step * _WEEK), clock)
        return at_us

    def _date(self, plain: str) -> date:
        match = re.fullmatch(_ISO, plain)
        if match is not None:
            return self._made(int(match["y"]), int(match["mon"]), int(match["d"]))
        match = re.fullmatch(_NAMED, plain)
        if match is None:
            if re.search(_AMBIGUOUS, plain):
                raise self._two_orders()
            raise InputError(self.wanted, self.came, self.where)
        month = _index(match["mon"] or match["mon2"], MONTHS, _LONG_MONTHS)
        day = int(match["d"] or match["d2"])
        if month is None:
            raise InputError(self.wanted, self.came, self.where)
        if match["y"]:
            found = self._made(int(match["y"]), month + 1, day)
        else:
            found = self._made(self.today.year, month + 1, day)
            if self.future and found < self.today:
                found = self._made(self.today.year + 1, month + 1, day)
            elif not self.future and found > self.today:
                found = self._made(self.today.year - 1, month + 1, day)
        if match["wd"]:
            weekday = _index(match["wd"], DAYS, LONG_DAYS)
            if weekday != found.weekday():
                raise InputError(
                    text("Moment", "a weekday that fits the date"), self.came, self.where,
                    text("Moment", "{date} is a {weekday}.").format(
                        date=found.isoformat(), weekday=LONG_DAYS[found.weekday()]
                    ),
                )  # fmt: skip
        return found

    def _made(self, year: int, month: int, day: int) -> date:
        try:
            made = date(year, month, day)
        except ValueError:
            wanted = text("Moment", "a day of the calendar")
            raise InputError(wanted, self.came, self.where) from None
        if abs(year - self.today.year) > 10:
            raise InputError(text("Moment", "a year near this one"), self.came, self.where)
        return made


def _index(word: str, short: Sequence[str], long: Sequence[str]) -> int | None:
    """Return which weekday or month a word is, short or in full."""
    for number, (abbreviated, full) in enumerate(zip(short, long, strict=True)):
        if word == abbreviated.casefold() or (
            len(word) > len(abbreviated) and full.casefold().startswith(word)
        ):
            return number
    return None
