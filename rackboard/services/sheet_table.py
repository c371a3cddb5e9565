"""How an epoxy goes at temperatures held: the figures and curves of its form."""

from __future__ import annotations

from typing import NamedTuple

from rackboard.core.bench import Source
from rackboard.core.cure.calibration import CureModel
from rackboard.core.cure.forecast import Bounds, forecast_record
from rackboard.core.cure.kinetics import ALPHA_FULL, ALPHA_HANDLING
from rackboard.core.cure.profile import Profile, sample
from rackboard.core.cure.record import Point, linear
from rackboard.core.cure.run import Run
from rackboard.core.instants import HOUR_US, Instant

TABLE_C = (10.0, 15.0, 20.0, 25.0, 30.0, 40.0)
"""Temperatures of the table [°C]."""
TABLE_F = (50.0, 60.0, 70.0, 77.0, 90.0, 100.0)
"""The same for a shop that reads °F [°F]."""
U_MC = 1_000
"""Uncertainty of the temperature held: a thermometer at the rack [m°C, decision]."""
LEVEL_HANDLING, LEVEL_FULL = ALPHA_HANDLING, ALPHA_FULL
"""Conversions at which a joint may come off the rack, and be hit."""
_SAMPLES = 160
_VIEW = 1.35
"""The picture's time axis ends so many times later than the solid dot of full cure."""


class Held(NamedTuple):
    """What a sheet makes of one temperature held from mixing on.

    Hours from mixing; None where it isn't reached within 60 days, `handling_*` also where
    the sheet gives no handling time. `use_by_h` is the early bound of the working life, the
    other pairs are the expected time and the late bound. `below_minimum`: the sheet promises
    nothing at this temperature.
    """

    temperature_c: float
    use_by_h: float | None
    handling_expected_h: float | None
    handling_late_h: float | None
    full_expected_h: float | None
    full_late_h: float | None
    below_minimum: bool


class CurveSample(NamedTuple):
    """Conversion on the expected and the late curve, so many hours after mixing."""

    hours: float
    expected: float
    late: float


def held(model: CureModel, temperature_c: float) -> Held:
    """Return when a joint is hard enough if one temperature is held [°C]."""
    point = _point(temperature_c)
    forecast = forecast_record(model, [point], 0)
    handling = forecast.handling or Bounds(None, None, None)
    return Held(
        temperature_c,
        _hours(forecast.working_life.early),
        _hours(handling.expected),
        _hours(handling.late),
        _hours(forecast.full_cure.expected),
        _hours(forecast.full_cure.late),
        temperature_c < model.sheet.minimum_c - 1e-9,
    )


def table(model: CureModel, temperatures_c: tuple[float, ...] = TABLE_C) -> tuple[Held, ...]:
    """Return the columns of the table, one for each temperature [°C]."""
    return tuple(held(model, temperature_c) for temperature_c in temperatures_c)


def curve(model: CureModel, temperature_c: float, end_h: float) -> tuple[CurveSample, ...]:
    """Return the curve at one temperature held [°C], from mixing to `end_h` [h]."""
    end_us = round(end_h * HOUR_US)
    run = Run(Profile(model), 0)
    every_us = max(end_us // _SAMPLES, 1)
    samples = sample(run, linear([_point(temperature_c)], end_us), every_us, end_us)
    return tuple(CurveSample(s.at_us / HOUR_US, s.expected, s.late) for s in samples)


def view_hours(at_reference: Held) -> float:
    """Return how long a time axis shows the whole of it [h]."""
    late = at_reference.full_late_h or at_reference.full_expected_h or 24.0
    return _VIEW * late


def _point(temperature_c: float) -> Point:
    return Point(0, round(temperature_c * 1000), U_MC, Source.FEED)


def _hours(instant: Instant | None) -> float | None:
    return None if instant is None else instant / HOUR_US
