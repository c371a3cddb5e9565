"""The temperature record of a zone as the model reads it: stretches, nights, gaps, outlook.

Between two stored readings everything is settled, so a pair of readings always gives the
same stretches. After the last reading there is only an outlook: it moves a printed time, and
never makes a permission.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from rackboard.core.bench import Heating, Source
from rackboard.core.cure.kinetics import ZERO_CELSIUS_K
from rackboard.core.instants import HOUR_US, Instant
from rackboard.core.schedule import OpeningHours

TYPED_HOLD_US = 4 * HOUR_US
"""A typed temperature holds so long while the shop is open [decision]."""
GAP_US = 2 * HOUR_US
"""A stretch without a record that is longer is a gap [decision]."""
RAMP_US = 6 * HOUR_US
"""At night the expected temperature reaches the low in at most this [decision]."""
RECOVERY_US = 2 * HOUR_US
"""In the outlook the room is warm so long after the heating is back [decision]."""
MORNING_US = HOUR_US
"""People come before the shop opens: from so long before a night begins to matter [decision]."""
EARLY_NIGHT_K = 3.0
"""The early curve takes a night as the warmer end and this [K, decision]."""
SETBACK_U_MC = 3_000
"""Uncertainty of a schedule's setback or of a low typed ahead [m°C, decision]."""


class Point(NamedTuple):
    """A stored reading: µs UTC, m°C, m°C, source."""

    at_us: Instant
    temperature_mc: int
    u_mc: int
    source: Source

    @property
    def kelvin(self) -> float:
        """The temperature [K]."""
        return _kelvin(self.temperature_mc)

    @property
    def u_k(self) -> float:
        """The uncertainty [K]."""
        return self.u_mc / 1000


class Low(NamedTuple):
    """The answer to "how cold did it get?" for a stretch: µs UTC, µs UTC, m°C, m°C."""

    from_us: Instant
    to_us: Instant
    low_mc: int
    u_mc: int


class Stretch(NamedTuple):
    """Air temperature between two instants, as each curve reads it [K].

    The uncertainty is already applied: `late` lies below `expected`, `early` above.
    `still`: the late bound earns nothing. `gap`: no record, and nobody has said how cold.
    """

    start_us: Instant
    end_us: Instant
    expected: tuple[float, float]
    late: tuple[float, float]
    early: tuple[float, float]
    still: bool = False
    gap: bool = False


@dataclass(frozen=True, slots=True)
class Air:
    """What else shapes a zone's record: opening hours, heating, answered lows.

    Attributes
    ----------
    hours : OpeningHours
        Of the shop.
    heating : Heating or None
        Of the zone.
    lows : tuple of Low
        Answers for nights and gaps of the zone, the newest last.
    """

    hours: OpeningHours
    heating: Heating | None = None
    lows: tuple[Low, ...] = ()

    def answers(self, start_us: Instant, end_us: Instant) -> list[Low]:
        """Return the answers that reach into a gap, in order of time.

        One that a newer answer covers wholly is corrected by it and doesn't count.
        """
        found: list[Low] = []
        for low in reversed(self.lows):
            if low.from_us < end_us and start_us < low.to_us and not any(
                newer.from_us <= low.from_us and low.to_us <= newer.to_us for newer in found
            ):  # fmt: skip
                found.append(low)
        return sorted(found)

    def low_for(self, start_us: Instant, end_us: Instant) -> Low | None:
        """Return the coldest of the answers for a gap; None if they leave over 2 h unanswered."""
        answers = self.answers(start_us, end_us)
        if not answers or self.unanswered(start_us, end_us, answers):
            return None
        return _coldest(answers)

    def unanswered(
        self, start_us: Instant, end_us: Instant, answers: Sequence[Low]
    ) -> list[tuple[Instant, Instant]]:
        """Return what is left of a gap beside its answers, where that is more than 2 h."""
        holes = []
        t = start_us
        for low in answers:
            if low.from_us - t > GAP_US and not (
                t == start_us and self._before_closing(t, low.from_us)
            ):
                holes.append((t, low.from_us))
            t = max(t, low.to_us)
        if end_us - t > GAP_US:
            holes.append((t, end_us))
        return holes

    def answered_until(self, start_us: Instant, now_us: Instant) -> Instant:
        """Return up to when answers without a hole follow an instant."""
        t = start_us
        for low in self.answers(start_us, now_us) if now_us > start_us else ():
            if low.from_us - t <= GAP_US or (
                t == start_us and self._before_closing(t, low.from_us)
            ):
                t = max(t, low.to_us)
        return t

    def _before_closing(self, start_us: Instant, from_us: Instant) -> bool:
        """Return whether a night said from closing time on begins with this end of a hold."""
        closing = self.hours.next_closing(start_us)
        return closing is not None and from_us <= closing and self.hours.is_open(start_us)


def _coldest(lows: Sequence[Low]) -> Low:
    """Return the coldest of some answers, with its u taken off, as one for all of them."""
    cold = min(lows, key=lambda low: low.low_mc - low.u_mc)
    return cold._replace(
        from_us=min(low.from_us for low in lows), to_us=max(low.to_us for low in lows)
    )


def hold_end(point: Point, air: Air) -> Instant:
    """Return until when a reading stands by itself.

    An automatic one does not; a typed one for 4 h, but not past closing time.
    """
    if point.source.automatic:
        return point.at_us
    hold = point.at_us + TYPED_HOLD_US
    if not air.hours.is_open(point.at_us):
        # Typed just before opening it is a reading of the day; late in the night it is not.
        opening = air.hours.next_opening(point.at_us)
        if opening is None or opening - point.at_us > GAP_US:
            return point.at_us
        closing = air.hours.next_closing(opening)
    else:
        closing = air.hours.next_closing(point.at_us)
    return hold if closing is None else min(hold, closing)


def _kelvin(milli_c: int) -> float:
    return milli_c / 1000 + ZERO_CELSIUS_K


def _flat(start: Instant, end: Instant, temp_k: float, u_k: float, **marks: bool) -> Stretch:
    low, high = temp_k - u_k, temp_k + u_k
    return Stretch(start, end, (temp_k, temp_k), (low, low), (high, high), **marks)


def _line(left: Point, start: Instant, right: Point) -> Stretch:
    t0, t1 = left.kelvin, right.kelvin
    u = left.u_k if left.source == right.source else max(left.u_k, right.u_k)
    return Stretch(start, right.at_us, (t0, t1), (t0 - u, t1 - u), (t0 + u, t1 + u))


def between(left: Point, right: Point, air: Air) -> tuple[Stretch, ...]:
    """Return what lies between two neighbouring readings.

    Parameters
    ----------
    left, right : Point
        Neighbours in the record, `left` earlier.
    air : Air
        Of the zone.

    Returns
    -------
    tuple of Stretch
        From `left` to `right` without a hole.
    """
    start = min(hold_end(left, air), right.at_us)
    held = (_flat(left.at_us, start, left.kelvin, left.u_k),) if start > left.at_us else ()
    if start == right.at_us:
        return held
    if right.at_us - start <= GAP_US:
        return (*held, _line(left, start, right))
    answers = air.answers(start, right.at_us)
    holes = air.unanswered(start, right.at_us, answers)
    if holes and not left.source.automatic and (low := _setback(start, right.at_us, air)):
        answers, holes = [*answers, low], []
    warm = max(left.kelvin, right.kelvin) + EARLY_NIGHT_K
    night = tuple(_night(left, start, right, _coldest(answers), air)) if answers else ()
    rest: list[Stretch] = []
    t = start
    for a, b in (*holes, (right.at_us, right.at_us)):
        rest += [part for stretch in night if (part := clip(stretch, t, a))]
        if b > a:  # an answer for one night says nothing about the next day
            gap = _flat(a, b, left.kelvin, left.u_k, still=True, gap=True)
            rest.append(gap._replace(early=(warm, warm)))
        t = b
    return (*held, *rest)


def _setback(start: Instant, end: Instant, air: Air) -> Low | None:
    """Return the schedule's low, if the shop is closed at some time of the stretch."""
    if air.heating is None:
        return None
    opening = air.hours.next_opening(start)
    if air.hours.is_open(start) and (closing := air.hours.next_closing(start)) is not None:
        opening = air.hours.next_opening(closing)
        if closing >= end:
            return None
    if opening is None:
        return None
    return Low(start, opening, air.heating.setback_mc, SETBACK_U_MC)


class _Night(NamedTuple):
    """The curves of a stretch that is known by its low: corners of the expected one [K]."""

    corners: tuple[tuple[Instant, float], ...]
    late_k: float
    early_k: float

    def part(self, start: Instant, end: Instant) -> Iterator[Stretch]:
        """Yield what lies between two instants."""
        flat = (self.late_k, self.late_k), (self.early_k, self.early_k)
        for (t0, k0), (t1, k1) in zip(self.corners, self.corners[1:], strict=False):
            whole = Stretch(t0, t1, (k0, k1), *flat) if t1 > t0 else None
            part = clip(whole, start, end) if whole else None
            if part:
                yield part


def _night(left: Point, start: Instant, right: Point, low: Low, air: Air) -> Iterator[Stretch]:
    """Yield a night or gap that ends at a reading, with the low that somebody gave."""
    end = right.at_us
    opening = air.hours.next_opening(start)
    night_end = end if opening is None else min(end, opening)
    if left.source.automatic:
        night_end = end
        back = end - (end - start) // 4
        if air.heating is not None and opening is not None:
            back = air.hours.heating_back(opening, air.heating)
    else:
        back = end if opening is None else air.hours.heating_back(opening, air.heating)
    ramp_end = start + min((night_end - start) // 4, RAMP_US)
    low_k, cold_k = _kelvin(low.low_mc), _kelvin(low.low_mc - low.u_mc)
    corners = (
        (start, left.kelvin), (ramp_end, low_k),
        (min(max(back, ramp_end), end), low_k), (end, right.kelvin),
    )  # fmt: skip
    warm = max(left.kelvin, right.kelvin, low_k) + EARLY_NIGHT_K
    yield from _Night(corners, cold_k, warm).part(start, end)


def before_first(start: Instant, first: Point, air: Air) -> Stretch:
    """Return the stretch before the first reading: held back for 2 h, a gap beyond that.

    Once somebody has said how cold it was, that is what counts.
    """
    gap = first.at_us - start > GAP_US
    low = air.low_for(start, first.at_us) if gap else None
    if low is not None:
        low_k, cold_k = _kelvin(low.low_mc), _kelvin(low.low_mc - low.u_mc)
        warm = max(low_k, first.kelvin) + EARLY_NIGHT_K
        return Stretch(
            start, first.at_us, (low_k, low_k), (cold_k, cold_k), (warm, warm)
        )  # fmt: skip
    return _flat(start, first.at_us, first.kelvin, first.u_k, still=gap, gap=gap)


def outlook(last: Point, air: Air, until: Instant) -> Iterator[Stretch]:
    """Yield what is reckoned with after the last reading.

    In open hours the last reading; at night the low, if the schedule or somebody gives one;
    with neither the expected curve goes on at the last reading and the late bound stands
    still.

    Parameters
    ----------
    last : Point
        The zone's last reading.
    air : Air
        Of the zone.
    until : int
        Where to stop [µs UTC].
    """
    hours = air.hours
    temp, u = last.kelvin, last.u_k
    t = last.at_us
    hold = hold_end(last, air)
    if hold > t:
        yield _flat(t, min(hold, until), temp, u)
        t = hold
    night: _Night | None = None  # the last one, until the room is warm again
    while t < until:
        if hours.is_open(t):
            closing = hours.next_closing(t)
            end = until if closing is None else min(closing, until)
            if night is not None and t < night.corners[-1][0]:
                end = min(end, night.corners[-1][0])
                yield from night.part(t, end)
            else:
                yield _flat(t, end, temp, u)
            t = end
            continue
        opening = hours.next_opening(t)
        end = until if opening is None else min(opening, until)
        low = None if opening is None else air.low_for(t, opening) or _setback(t, opening, air)
        if low is None or opening is None:
            night = None
            yield _flat(t, end, temp, u, still=True)
        else:
            low_k = _kelvin(low.low_mc)
            ramp_end = t + min((opening - t) // 4, RAMP_US)
            back = max(ramp_end, hours.heating_back(opening, air.heating))
            warm_again = back + RECOVERY_US
            corners = ((t, temp), (ramp_end, low_k), (back, low_k), (warm_again, temp))
            cold_k = _kelvin(low.low_mc - low.u_mc)
            night = _Night(corners, cold_k, max(temp, low_k) + EARLY_NIGHT_K)
            yield from night.part(t, end)
            if warm_again < end:
                yield _flat(warm_again, end, temp, u)
        t = end


def left_behind(last: Point, end: Instant, air: Air) -> tuple[Stretch, ...]:
    """Return what lies between a zone's last reading and the moment a club left the zone.

    A rest of up to 2 h is taken at the last reading; a longer one is a gap like any other.
    """
    hold = min(hold_end(last, air), end)
    held = (_flat(last.at_us, hold, last.kelvin, last.u_k),) if hold > last.at_us else ()
    if hold == end:
        return held
    if end - hold <= GAP_US:
        return (*held, _flat(hold, end, last.kelvin, last.u_k))
    low = air.low_for(hold, end)
    if low is None and not last.source.automatic:
        low = _setback(hold, end, air)
    if low is None:
        warm = last.kelvin + EARLY_NIGHT_K
        gap = _flat(hold, end, last.kelvin, last.u_k, still=True, gap=True)
        return (*held, gap._replace(early=(warm, warm)))
    right = Point(end, min(low.low_mc, last.temperature_mc), low.u_mc, last.source)
    return (*held, *_night(last, hold, right, low, air))


def unknown_since(last: Point, air: Air, now: Instant) -> Instant | None:
    """Return since when nobody knows how cold the zone is, None while that is no matter.

    A night without a low begins to matter an hour before the shop opens; any other stretch
    without a record after 2 h.
    """
    start = hold_end(last, air)
    answered = air.answered_until(start, now)
    if answered > start:
        start = answered
    elif not last.source.automatic and not air.hours.is_open(start):
        opening = air.hours.next_opening(start)
        if opening is None or now < opening - MORNING_US:
            return None
        if _setback(start, now, air) is None:
            return start
        start = opening
    if now - start <= GAP_US:
        return None
    return start


def clip(stretch: Stretch, start_us: Instant, end_us: Instant) -> Stretch | None:
    """Return the part of a stretch between two instants, None if there is none."""
    a, b = max(stretch.start_us, start_us), min(stretch.end_us, end_us)
    if a >= b:
        return None
    if a == stretch.start_us and b == stretch.end_us:
        return stretch
    whole = stretch.end_us - stretch.start_us
    f0, f1 = (a - stretch.start_us) / whole, (b - stretch.start_us) / whole

    def part(line: tuple[float, float]) -> tuple[float, float]:
        t0, t1 = line
        return (t0, t1) if t0 == t1 else (t0 + (t1 - t0) * f0, t0 + (t1 - t0) * f1)

    return stretch._replace(
        start_us=a, end_us=b, expected=part(stretch.expected), late=part(stretch.late),
        early=part(stretch.early),
    )  # fmt: skip


def closed_stretches(points: Sequence[Point], air: Air) -> Iterator[Stretch]:
    """Yield everything between the first and the last of a zone's readings, in order."""
    for left, right in itertools.pairwise(points):
        yield from between(left, right, air)


def linear(points: Sequence[Point], hold_until: Instant) -> Iterator[Stretch]:
    """Yield a record of straight lines with the last reading held; no nights, no gaps.

    For a finished record at the prompt.
    """
    for left, right in itertools.pairwise(points):
        yield _line(left, left.at_us, right)
    last = points[-1]
    if hold_until > last.at_us:
        yield _flat(last.at_us, hold_until, last.kelvin, last.u_k)
