"""The curve's values: what the painter draws, as fractions of the picture's axes."""

from __future__ import annotations

from PySide6.QtCore import QLocale

from rackboard.core.bench import Milestone
from rackboard.core.cure.forecast import printed_time
from rackboard.core.instants import DAY_US, Instant
from rackboard.core.standing import Standing
from rackboard.core.temperature import format_temperature
from rackboard.core.text import text
from rackboard.services.climate import ZoneRecord
from rackboard.services.portrait import Portrait, celsius
from rackboard.ui.board_presenter import BoardPresenter
from rackboard.ui.inspector_view import CurvePoint, CurveView, Day, Level, Mark
from rackboard.ui.language import say, spoken, translated
from rackboard.ui.wording import Times

_TOP = 1.0  # conversion at the top of the picture
_ROOM_K = 3.0  # of temperature above and below the record

ALLOWS = {
    Milestone.HANDLING: text("Inspector", "off the rack"),
    Milestone.FULL_CURE: text("Inspector", "safe to hit"),
}


class CurvePresenter:
    """Makes the picture of one joint.

    Parameters
    ----------
    presenter : BoardPresenter
        Of the moment.
    times : Times
        How times are said.
    """

    def __init__(self, presenter: BoardPresenter, times: Times) -> None:
        self._p = presenter
        self._times = times

    def view(self, standing: Standing, picture: Portrait) -> CurveView:
        """Return the picture's values."""
        start, end = picture.start_us, picture.end_us
        span = end - start

        def x(instant: Instant) -> float:
            return min(max((instant - start) / span, 0.0), 1.0)

        points = tuple(
            CurvePoint(x(s.at_us), s.expected / _TOP, min(s.late, s.expected) / _TOP)
            for s in picture.samples
        )
        levels = [Level(picture.full / _TOP, translated(ALLOWS[Milestone.FULL_CURE]))]
        outcome = picture.outcome
        forecast = outcome.forecast
        marks = []
        if forecast.handling is not None:
            levels.append(Level(picture.handling / _TOP, translated(ALLOWS[Milestone.HANDLING])))
            marks.append((Milestone.HANDLING, picture.handling, forecast.handling))
        marks.append((Milestone.FULL_CURE, picture.full, forecast.full_cure))
        given = self._p.snapshot.grants.get(standing.joint.id, {})
        drawn = tuple(
            Mark(
                level / _TOP, x(bounds.expected), x(bounds.late),
                self._times.moment(bounds.expected),
                self._times.moment(
                    given[milestone].printed_us if milestone in given
                    else printed_time(bounds.late)
                ),
            )
            for milestone, level, bounds in marks
            if bounds.expected is not None and bounds.late is not None and bounds.late <= end
            and (milestone in given or not standing.unknown) and standing.hold is None
        )  # fmt: skip
        minimum = standing.batch.sheet.minimum_c
        temps = [celsius(t) for s in picture.air for t in s.expected] or [minimum]
        low, high = min(*temps, minimum) - _ROOM_K, max(*temps, minimum) + _ROOM_K

        def y(temp_c: float) -> float:
            return (temp_c - low) / (high - low)

        record: list[tuple[tuple[float, float], ...]] = []
        held: list[tuple[float, float]] = []
        gaps: list[tuple[float, float]] = []
        line: list[tuple[float, float]] = []
        for stretch in picture.air:
            ends = (
                (x(stretch.start_us), y(celsius(stretch.expected[0]))),
                (x(stretch.end_us), y(celsius(stretch.expected[1]))),
            )
            if stretch.gap:
                gaps.append((ends[0][0], ends[1][0]))
                if line:
                    record.append(tuple(line))
                line = []
            elif stretch.end_us <= picture.record_end_us:
                line += ends
            else:
                held += ends
        if line:
            record.append(tuple(line))
        now = self._p.now if start <= self._p.now <= end else None
        least = degrees(self._p, round(minimum * 1000), 0)
        air = air_of(self._p, standing)
        return CurveView(
            points, None if now is None else x(now), self._times.clock(self._p.now),
            tuple(levels), drawn,
            wet_until=x(outcome.use_by_us) if outcome.use_by_us else 0.05,
            still_at=_still(drawn, stepwise=forecast.handling is not None),
            hard_at=drawn[-1].not_before if drawn and drawn[-1].y == picture.full / _TOP else 1.0,
            record=tuple(record), held=tuple(held), minimum=y(minimum),
            minimum_text=say("Inspector", "sheet minimum {temperature}").format(temperature=least),
            minimum_short=say("Inspector", "minimum {temperature}").format(temperature=least),
            held_text=say("Inspector", "reckoned on, from {air}").format(air=air)
            if held and air else "",
            gaps=tuple(gaps), days=tuple(self._days(start, end)),
        )  # fmt: skip

    def _days(self, start: Instant, end: Instant) -> list[Day]:
        days = []
        names = QLocale(spoken())
        step = 1 if end - start < 8 * DAY_US else 2
        midnight = self._times.hours.at(self._times.local(start).date(), 24 * 60)
        while midnight < end:
            local = self._times.local(midnight)
            place = (midnight - start) / (end - start)
            if place < 0.93:
                name = names.dayName(local.isoweekday(), QLocale.FormatType.ShortFormat)
                days.append(Day(place, name.rstrip(".")))
            midnight = self._times.hours.at(local.date(), step * 24 * 60)
        return days


def degrees(presenter: BoardPresenter, milli_c: int, decimals: int = 1) -> str:
    """Return a temperature [m°C] in the shop's unit and the language spoken."""
    return translated(format_temperature(milli_c, presenter.unit, decimals))


def record_of(presenter: BoardPresenter, standing: Standing) -> ZoneRecord | None:
    """Return the record of the air in which a joint lies."""
    stay = standing.stay
    if stay is None:
        return None
    return presenter.records.get(presenter.snapshot.places[stay.place_id].zone_id or 0)


def air_of(presenter: BoardPresenter, standing: Standing) -> str:
    """Return the last reading of a joint's air, "" if there is none."""
    record = record_of(presenter, standing)
    if record is None or record.last is None:
        return ""
    return degrees(presenter, record.last.temperature_mc)


def way_there(picture: Portrait, conversion: float) -> str:
    """Return how far a conversion is on the way to the next thing that may be done.

    Rounded down, so that 100 % is said of what has got there and of nothing else.
    """
    stepwise = picture.outcome.forecast.handling is not None
    if stepwise and conversion < picture.handling:
        share = int(100 * conversion / picture.handling)
        return say("Inspector", "{share} % of the way to off the rack").format(share=share)
    share = min(int(100 * conversion / picture.full), 100)
    return say("Inspector", "{share} % of the way to safe to hit").format(share=share)


def _still(marks: tuple[Mark, ...], *, stepwise: bool) -> float:
    """Return where the motif begins to thicken: where handling is, if that is known."""
    if not marks:
        return 0.5
    return marks[0].not_before if stepwise else 0.6 * marks[0].not_before
