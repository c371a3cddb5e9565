"""Sheets and temperature records that several tests use; all invented."""

from __future__ import annotations

import random
from collections.abc import Sequence
from typing import NamedTuple

from hypothesis import strategies as st

from rackboard.core.bench import Source
from rackboard.core.cure.calibration import calibrate
from rackboard.core.cure.forecast import Bounds, Forecast, forecast_record
from rackboard.core.cure.record import Point
from rackboard.core.epoxy import FurtherTime, Range, Sheet
from rackboard.core.errors import InputError
from rackboard.core.instants import HOUR_US, SECOND_US, Instant

DAY_LONG = Sheet(
    "invented day-long", Range(60, 60), Range(24, 24), Range(8, 8), 25.0, 15.0, 60.0
)
"""Handling 8 h, full cure 24 h at 25 °C, minimum 15 °C, maximum 60 °C, working life 60 min."""


def reading(
    hours: float, celsius: float, u: float = 1.0, source: Source = Source.IMPORTED
) -> Point:
    """Return a reading so many hours after the epoch."""
    return Point(round(hours * HOUR_US), round(celsius * 1000), round(u * 1000), source)


def record(hours: Sequence[float], celsius: Sequence[float], u: float = 1.0) -> list[Point]:
    """Return an automatic record."""
    return [reading(h, c, u) for h, c in zip(hours, celsius, strict=True)]


def in_hours(instant: Instant | None, since: Instant = 0) -> float | None:
    """Return an instant as hours since another."""
    return None if instant is None else (instant - since) / HOUR_US


class Case(NamedTuple):
    """One joint on one record."""

    sheet: Sheet
    points: tuple[Point, ...]
    mixed_us: Instant
    lag_s: float
    parts: Point | None

    def forecast(self) -> Forecast:
        """Return what the model says."""
        return forecast_record(
            calibrate(self.sheet), self.points, self.mixed_us, lag_s=self.lag_s, parts=self.parts
        )


def bounds_of(forecast: Forecast) -> list[Bounds]:
    """Return every milestone's three bounds."""
    handling = forecast.handling or Bounds(None, None, None)
    return [forecast.working_life, handling, forecast.full_cure]


def answers(case: Case) -> dict[str, float | None]:
    """Return the model's milestones in seconds after mixing, keyed as the oracle's."""
    forecast = case.forecast()
    out: dict[str, float | None] = {"gel": _after(forecast.gel_early, case.mixed_us)}
    for name, bounds in zip(("life", "handling", "full"), bounds_of(forecast), strict=True):
        for which in ("expected", "late", "early"):
            out[f"{name} {which}"] = _after(getattr(bounds, which), case.mixed_us)
    return out


def _after(instant: Instant | None, mixed_us: Instant) -> float | None:
    return None if instant is None else (instant - mixed_us) / SECOND_US


def random_sheet(rng: random.Random) -> Sheet:
    """Return a sheet that can be calibrated."""
    while True:
        ref = rng.choice([20.0, 23.0, 25.0, round(rng.uniform(18, 28), 1)])
        handling = 10 ** rng.uniform(-0.6, 1.1)
        full = handling * 10 ** rng.uniform(0.2, 1.6)
        life = handling * 60 / rng.uniform(3, 12)
        spread = rng.choice([1.0, 1.2, 1.6])
        energy = rng.choice([None, None, round(rng.uniform(35, 110), 1)])
        further: tuple[FurtherTime, ...] = ()
        if energy is None and rng.random() < 0.3:
            hours = full / rng.uniform(4, 12)
            further = (FurtherTime("full_cure", 50.0, Range(hours, hours * spread)),)
        sheet = Sheet(
            "invented",
            Range(life, life * spread),
            Range(full, full * spread),
            None if rng.random() < 0.2 else Range(handling, handling * spread),
            ref,
            None if rng.random() < 0.2 else ref - rng.choice([0.0, 3.0, 8.0, 10.0, 15.0]),
            None if further or rng.random() < 0.3 else ref + rng.choice([3.0, 15.0, 35.0]),
            rng.random() < 0.2,
            energy,
            further,
        )
        try:
            calibrate(sheet)
        except InputError:
            continue
        return sheet


def random_case(rng: random.Random) -> Case:
    """Return a sheet, a record with its own uncertainties, a lag and cold or warm parts."""
    count = rng.randint(1, 6)
    hours = sorted(rng.sample(range(0, 4 * 36), count))
    base = rng.uniform(6, 32)
    temps = [base + rng.uniform(-8, 8) for _ in hours]
    if rng.random() < 0.15:
        temps[rng.randrange(count)] = rng.uniform(50, 90)
    us = [rng.choice([0.0, 1.0, 3.0]) for _ in hours] if rng.random() < 0.3 else (
        [rng.choice([0.0, 1.0, 3.0])] * count)  # fmt: skip
    points = tuple(
        reading(h / 4, round(c, 3), u) for h, c, u in zip(hours, temps, us, strict=True)
    )
    mixed = rng.randint(points[0].at_us, (points[0].at_us + points[-1].at_us) // 2)
    lag_s = rng.choice([0.0, 0.0, 240.0, 1306.668, 1320.0, 3600.0])
    parts = reading(0, round(rng.uniform(0, 70), 1), rng.choice([0.0, 1.0, 3.0]))
    return Case(random_sheet(rng), points, mixed, lag_s, parts if rng.random() < 0.5 else None)


@st.composite
def cases(draw: st.DrawFn) -> Case:
    """Draw a random case; Hypothesis chooses the seed and what it shrinks to."""
    return random_case(random.Random(draw(st.integers(0, 2**32))))
