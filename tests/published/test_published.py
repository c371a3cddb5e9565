"""Published figures: each row carries its source, its tolerance and the tolerance's reason."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import NamedTuple

import pytest

from rackboard.core.cure.kinetics import (
    ALPHA_GEL,
    ALPHA_HANDLING,
    GAS_CONSTANT,
    ZERO_CELSIUS_K,
    acceleration_factor,
    equivalent_age,
    kelvin,
)

EV_J_PER_MOL = 1.602176634e-19 * 6.02214076e23
"""One electronvolt a particle [J/mol], exact in the SI of 2019."""


class Row(NamedTuple):
    """A printed figure and what the program makes of it."""

    name: str
    printed: float
    rel: float
    reason: str
    source: str
    ours: Callable[[], float]


NIST = "NIST/SEMATECH e-Handbook of Statistical Methods, 8.1.5.1 (figures from memory)"
USP = "USP <1160>, mean kinetic temperature, ΔH = 83.144 kJ/mol"
DAIRY = "dairyscience.info, lethality with z = 10 °C at 121.11 °C"
MATURITY = "Nurse–Saul maturity as in ASTM C1074, 28 d at 15 °C over −11 °C"


def mean_kinetic_temperature(celsius: list[float]) -> float:
    """Return Haynes' mean kinetic temperature [°C]; the constant that USP prints."""
    a = 83_144 / 8.3144
    mean = sum(math.exp(-a / kelvin(c)) for c in celsius) / len(celsius)
    return a / -math.log(mean) - ZERO_CELSIUS_K


def lethality(celsius: float) -> float:
    """Return the same integral's speed as another trade writes it."""
    return 10 ** ((celsius - 121.11) / 10)


ROWS = (
    Row("0.5 eV, 25 to 125 °C", 133, 5e-3, "printed to three figures", NIST,
        lambda: acceleration_factor(kelvin(125), kelvin(25), 0.5 * EV_J_PER_MOL)),
    Row("1.0 eV, 25 to 125 °C", 17_597, 5e-4, "its k is 8.617e-5 eV/K and its 0 °C 273.16 K",
        NIST, lambda: acceleration_factor(kelvin(125), kelvin(25), EV_J_PER_MOL)),
    Row("15 and 25 °C", 21.3004, 5e-6, "printed to 0.0001 °C", USP,
        lambda: mean_kinetic_temperature([15, 25])),
    Row("20, 25, 30 and 35 °C", 29.0539, 5e-6, "printed to 0.0001 °C", USP,
        lambda: mean_kinetic_temperature([20, 25, 30, 35])),
    Row("110 °C", 0.077, 7e-3, "printed to two figures", DAIRY, lambda: lethality(110)),
    Row("728 °C·d", 728, 1e-12, "a product of whole numbers", MATURITY, lambda: 28 * (15 + 11.0)),
)  # fmt: skip


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.name)
def test_printed_figure(row: Row) -> None:
    assert row.ours() == pytest.approx(row.printed, rel=row.rel), (row.source, row.reason)


def test_nist_with_its_own_constants() -> None:
    """Exact: the handbook's k and zero give its figures; the law is the same."""
    k, zero = 8.617e-5, 273.16
    for energy_ev, value in ((0.5, 132.652), (1.0, 17_596.5)):
        energy = energy_ev / k * GAS_CONSTANT
        ours = acceleration_factor(zero + 125, zero + 25, energy)
        assert ours == pytest.approx(value, abs=0.06)
    codata = acceleration_factor(kelvin(125), kelvin(25), EV_J_PER_MOL)
    assert codata == pytest.approx(17_599.9, abs=0.06)


@pytest.mark.parametrize("celsius", [[15.0, 25.0], [20.0, 25.0, 30.0, 35.0]])
def test_equivalent_age_is_time_at_the_mean_kinetic_temperature(celsius: list[float]) -> None:
    """Exact, an identity for one activation energy: te = t·AF(MKT), equal times at each."""
    energy, ref = 83_144 / 8.3144 * GAS_CONSTANT, kelvin(25)
    age = sum(equivalent_age([0, 3600], [kelvin(c)] * 2, ref, energy) for c in celsius)
    mkt = kelvin(mean_kinetic_temperature(celsius))
    factor = acceleration_factor(mkt, ref, energy)
    assert age == pytest.approx(3600 * len(celsius) * factor, rel=1e-12)


def test_lethality_is_the_same_integral() -> None:
    """Exact: 0.0774462, which the source prints as 0.077."""
    assert lethality(110) == pytest.approx(0.0774462, rel=1e-6)
    # An Arrhenius law with the slope of z at 121.11 °C runs beside it for a few degrees.
    ref = kelvin(121.11)
    energy = math.log(10) / 10 * GAS_CONSTANT * ref * ref
    assert acceleration_factor(kelvin(120.11), ref, energy) == pytest.approx(
        lethality(120.11), rel=1e-3
    )


def test_a_linear_maturity_law_would_credit_the_cold_far_too_much() -> None:
    """Contrast: datum −10 °C against 23 °C credits 10 °C with 0.606, Arrhenius with 0.327."""
    linear = (10 + 10) / (23 + 10)
    assert linear == pytest.approx(0.606, abs=5e-4)
    ours = acceleration_factor(kelvin(10), kelvin(23), 60_000)
    assert ours == pytest.approx(0.327, abs=5e-4)
    assert linear > 1.8 * ours


def test_gel_point_of_flory_and_stockmayer() -> None:
    """Published: 1/√[(f − 1)(g − 1)] for functionalities 2 and 4."""
    assert pytest.approx(ALPHA_GEL, rel=1e-15) == ((4 - 1) * (2 - 1)) ** -0.5
    assert pytest.approx(0.577350, abs=5e-7) == ALPHA_GEL
    assert ALPHA_GEL < ALPHA_HANDLING


def test_gas_constant_is_avogadro_times_boltzmann() -> None:
    """Published: CODATA 2018, both exact by definition."""
    assert pytest.approx(GAS_CONSTANT, rel=1e-9) == 6.02214076e23 * 1.380649e-23
