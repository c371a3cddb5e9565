"""Exact figures: closed forms, and values computed once outside of the program.

The tolerance is half a unit of the last figure written, unless a row says otherwise.
"""

from __future__ import annotations

import math
from statistics import linear_regression

import pytest
from scipy.special import exp1

from helpers.records import DAY_LONG, in_hours, reading, record
from rackboard.core.cure.calibration import calibrate
from rackboard.core.cure.forecast import forecast_record
from rackboard.core.cure.kinetics import (
    GAS_CONSTANT,
    acceleration_factor,
    conversion_step,
    equivalent_age,
    kelvin,
)
from rackboard.core.epoxy import FurtherTime, Range, Sheet

EA, REF = 60_000.0, kelvin(23)
HOURS = [0, 2, 5, 9, 14, 24]
CELSIUS = [18, 16, 12, 9, 11, 15]


def factor(celsius: float, energy: float = EA) -> float:
    return acceleration_factor(kelvin(celsius), REF, energy)


def age_h(hours: list[float], celsius: list[float], energy: float = EA) -> float:
    temps = [kelvin(c) for c in celsius]
    return equivalent_age([h * 3600 for h in hours], temps, REF, energy) / 3600


@pytest.mark.parametrize(
    ("celsius", "energy", "value"),
    [
        (5, 60_000, 0.206619), (10, 60_000, 0.326689), (15, 60_000, 0.508386),
        (30, 60_000, 1.75533), (40, 60_000, 3.75401),
        (10, 50_000, 0.393651), (10, 70_000, 0.271117),
    ],
)  # fmt: skip
def test_acceleration_factor(celsius: float, energy: float, value: float) -> None:
    assert factor(celsius, energy) == pytest.approx(value, rel=4e-6)


def test_equivalent_age_of_a_record() -> None:
    exact = age_h(HOURS, CELSIUS)
    assert exact == pytest.approx(9.90803, abs=5e-6)
    pairs = [*zip(HOURS, CELSIUS, HOURS[1:], CELSIUS[1:], strict=False)]
    middle = sum((h1 - h0) * factor((c0 + c1) / 2) for h0, c0, h1, c1 in pairs)
    ends = sum((h1 - h0) * (factor(c0) + factor(c1)) / 2 for h0, c0, h1, c1 in pairs)
    held = sum((h1 - h0) * factor(c0) for h0, c0, h1, c1 in pairs)
    assert middle == pytest.approx(9.87389, abs=5e-6)
    assert ends == pytest.approx(9.97636, abs=5e-6)
    assert held == pytest.approx(9.60759, abs=5e-6)
    assert middle <= exact <= ends  # the factor is convex in the temperature


def test_equivalent_age_of_a_ramp() -> None:
    assert age_h([0, 8], [10, 30]) == pytest.approx(6.922333171, abs=5e-10)


@pytest.mark.parametrize(("c1", "c2"), [(10, 30), (30, 10), (-5, 60), (18, 18.001)])
def test_exponential_integral_form(c1: float, c2: float) -> None:
    """te = h/(T2 − T1)·[F(T2) − F(T1)]·e^(a/Tref), F(T) = T e^(−a/T) − a E1(a/T)."""
    a = EA / GAS_CONSTANT

    def integral(temp: float) -> float:
        return temp * math.exp(-a / temp) - a * float(exp1(a / temp))

    t1, t2 = kelvin(c1), kelvin(c2)
    closed = 8 / (t2 - t1) * (integral(t2) - integral(t1)) * math.exp(a / REF)
    # Rounding of the closed form grows as the difference of temperatures falls.
    assert age_h([0, 8], [c1, c2]) == pytest.approx(closed, rel=1e-11 + 1e-11 / abs(t2 - t1))


def test_equivalent_age_of_a_day() -> None:
    """12 + 6 sin(2πt/24) °C; a minute's chords miss the sine by less than 1e-5 °C."""
    hours = [m / 60 for m in range(24 * 60 + 1)]
    celsius = [12 + 6 * math.sin(2 * math.pi * h / 24) for h in hours]
    assert age_h(hours, celsius) == pytest.approx(9.99407, abs=5e-6)
    assert 24 * factor(12) == pytest.approx(9.37513, abs=5e-6)


@pytest.mark.parametrize(("celsius", "hours"), [(10, 61.2204), (30, 11.3938)])
def test_twenty_hours_still_to_go(celsius: float, hours: float) -> None:
    assert age_h([0, hours], [celsius] * 2) == pytest.approx(20, rel=4e-6)


@pytest.mark.parametrize(("low", "high", "value"), [(20, 30, 51.2162), (25, 35, 52.9489)])
def test_doubles_every_ten_degrees(low: float, high: float, value: float) -> None:
    twice = acceleration_factor(kelvin(high), kelvin(low), value * 1000)
    assert twice == pytest.approx(2, rel=1e-6)


def test_energy_from_two_times() -> None:
    ratio = acceleration_factor(kelvin(30), kelvin(15), 53_194.1)
    assert ratio == pytest.approx(60 / 20, rel=2e-6)


def test_energy_from_three_times_by_least_squares() -> None:
    """The plain fit of ln t on 1/T, 120, 45 and 14 min at 10, 23 and 40 °C."""
    inverse = [1 / kelvin(c) for c in (10, 23, 40)]
    slope, _ = linear_regression(inverse, [math.log(t) for t in (120, 45, 14)])
    assert slope * GAS_CONSTANT / 1000 == pytest.approx(52.8013, abs=5e-5)


# --- conversion, the invented sheet of 8 and 24 hours ----------------------------------------


def test_calibration() -> None:
    model = calibrate(DAY_LONG)
    assert model.n == pytest.approx(1.998812, abs=5e-7)
    assert model.k_per_s == pytest.approx(1.591733e-4, abs=5e-11)
    assert (model.energy, model.energy_low, model.energy_high) == (58e3, 50e3, 65e3)


@pytest.mark.parametrize(
    ("celsius", "handling", "full"),
    [
        (5, 43.0261, 237.359), (10, 27.6305, 111.869), (15, 18.0189, 61.3626),
        (20, 11.9234, 37.2434), (25, 8.0000, 24.0000), (30, 5.4387, 16.0217),
        (40, 2.6084, 7.5948),
    ],
)  # fmt: skip
def test_hours_at_one_temperature(celsius: float, handling: float, full: float) -> None:
    model = calibrate(DAY_LONG)
    assert model.hours_at(celsius, 0.6) == pytest.approx(handling, rel=5e-6, abs=6e-5)
    assert model.hours_at(celsius, 0.9) == pytest.approx(full, rel=5e-6, abs=6e-5)
    forecast = forecast_record(model, [reading(0, celsius)], 0)
    assert forecast.handling is not None
    assert in_hours(forecast.handling.expected) == pytest.approx(handling, rel=5e-6, abs=6e-5)
    assert in_hours(forecast.full_cure.expected) == pytest.approx(full, rel=5e-6, abs=6e-5)


LAG_MIN = 21.7778
HISTORIES = [
    ("falling and rising", HOURS, CELSIUS, 0.0, None, 22.3626, 65.7506),
    ("two cold days, then heated", [0, 48, 48.5], [8, 8, 24], 0.0, None, 32.9234, 61.7562),
    ("cold parts", [0], [22], LAG_MIN, 5, 10.5202, 31.4422),
    ("cold parts, no lag", [0], [22], 0.0, 5, None, 31.0698),
    ("into the warm box", [0], [40], LAG_MIN, 12, 3.0956, 8.0822),
    ("into the warm box, no lag", [0], [40], 0.0, 12, None, 7.5948),
]


@pytest.mark.parametrize(
    ("hours", "celsius", "lag_min", "parts", "handling", "full"),
    [row[1:] for row in HISTORIES],
    ids=[row[0] for row in HISTORIES],
)
def test_histories(
    hours: list[float],
    celsius: list[float],
    lag_min: float,
    parts: float | None,
    handling: float | None,
    full: float,
) -> None:
    forecast = forecast_record(
        calibrate(DAY_LONG),
        record(hours, celsius),
        0,
        lag_s=lag_min * 60,
        parts=None if parts is None else reading(0, parts),
    )
    assert forecast.handling is not None
    if handling is not None:
        # written to four decimals; the lag's chords are within 0.003 K of its exponential
        assert in_hours(forecast.handling.expected) == pytest.approx(handling, abs=2e-4)
    assert in_hours(forecast.full_cure.expected) == pytest.approx(full, abs=2e-4)


@pytest.mark.parametrize(
    ("order", "until_s", "alpha", "target", "reached_s"),
    [(1, 14_400, 0.482420, 3**-0.5, 16_146.2), (2, 36_000, 0.775993, 0.9, 66_653.2)],
)
def test_integrator_against_closed_forms(
    order: int, until_s: float, alpha: float, target: float, reached_s: float
) -> None:
    """m = 1, k1 = 1e-5, k2 = 2e-4 1/s without diffusion; k1/k2 is the law's own r = 0.05."""
    terms = (2e-4, 0.0, 0.0, 1000.0, 0.0)

    def after(seconds: float) -> float:
        steps = math.ceil(seconds * 2e-4 / 0.05)  # as long as the run's longest
        value = 0.0
        for _ in range(steps):
            value = conversion_step(value, seconds / steps, terms, 0.0, order)
        return value

    assert after(until_s) == pytest.approx(alpha, abs=5e-6)
    assert after(reached_s) == pytest.approx(target, abs=5e-6)
    if order == 1:
        k1, k2 = 1e-5, 2e-4
        closed = math.log((k1 + k2 * target) / (k1 * (1 - target))) / (k1 + k2)
        assert closed == pytest.approx(reached_s, abs=0.05)


# --- early, expected, late -------------------------------------------------------------------

BOUNDS = [
    ([0], [21], 1.22754, 10.9968, 12.5117, 33.9812, 39.0810),
    ([0], [18], 1.51321, 14.0408, 16.4842, 45.0644, 53.8111),
    ([0], [12], 2.32994, 23.2457, 145.588, 86.6343, 564.093),
    ([0, 4, 8, 20, 21], [21, 21, 14, 14, 21], 1.22754, 15.0453, 22.2383, 40.4463, 48.8076),
    ([0, 1, 1.001, 3, 3.001], [20, 20, 80, 80, 20], 1.0046, 1.6278, 1.8915, 2.9317, 16.3630),
]
RANGES = Sheet(
    "invented day-long", Range(50, 70), Range(20, 28), Range(6, 10), 25.0, 15.0, 60.0
)


@pytest.mark.parametrize(
    ("sheet", "hours", "celsius", "life", "handling", "handling_late", "full", "full_late"),
    [
        *((DAY_LONG, *row) for row in BOUNDS),
        (RANGES, [0], [21], 1.02295, 10.9968, 15.6397, 33.9812, 45.5945),
    ],
)
def test_bounds(
    sheet: Sheet,
    hours: list[float],
    celsius: list[float],
    life: float,
    handling: float,
    handling_late: float,
    full: float,
    full_late: float,
) -> None:
    """Ea 58 (50–65) kJ/mol, u = 1 °C, the last reading held."""
    forecast = forecast_record(calibrate(sheet), record(hours, celsius), 0)
    assert forecast.handling is not None
    rel, tiny = 5e-6, 6e-5
    assert in_hours(forecast.working_life.early) == pytest.approx(life, rel=rel, abs=tiny)
    assert in_hours(forecast.handling.expected) == pytest.approx(handling, rel=rel, abs=tiny)
    assert in_hours(forecast.handling.late) == pytest.approx(handling_late, rel=rel, abs=tiny)
    assert in_hours(forecast.full_cure.expected) == pytest.approx(full, rel=rel, abs=tiny)
    assert in_hours(forecast.full_cure.late) == pytest.approx(full_late, rel=rel, abs=tiny)


def test_energy_from_a_further_time() -> None:
    """Full cure in 2 h at 50 °C: 78.5947 kJ/mol through the model, 79.62 by AF alone."""
    sheet = Sheet(
        "invented", Range(60, 60), Range(24, 24), Range(8, 8), 25.0, 15.0, 60.0,
        further_times=(FurtherTime("full_cure", 50.0, Range(2, 2)),),
    )  # fmt: skip
    model = calibrate(sheet)
    assert model.energy / 1000 == pytest.approx(78.5947, abs=5e-5)
    assert (model.energy_low, model.energy_high) == (model.energy - 5000, model.energy + 5000)
    alone = GAS_CONSTANT * math.log(24 / 2) / (1 / kelvin(25) - 1 / kelvin(50))
    assert alone / 1000 == pytest.approx(79.62, abs=5e-3)


def test_lag_of_a_solid_head() -> None:
    """Exact: τ = m·cp/(h·A) for 0.300 kg of steel is what the histories above take."""
    assert pytest.approx(LAG_MIN, abs=5e-5) == 0.300 * 490 / (9 * 0.0125) / 60
