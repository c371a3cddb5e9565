"""From a sheet's times to the model: what is assumed, fitted and refused, and why."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from helpers.records import DAY_LONG
from rackboard.core.cure.calibration import (
    ENERGY_RANGE,
    ORDER_RANGE,
    calibrate,
    reduced_time,
)
from rackboard.core.cure.kinetics import ALPHA_FULL, ALPHA_HANDLING, critical_conversion, kelvin
from rackboard.core.epoxy import FurtherTime, Range, Sheet
from rackboard.core.errors import InputError


def flat(value: float) -> Range:
    return Range(value, value)


def further(*times: tuple[str, float, float]) -> Sheet:
    found = tuple(FurtherTime(q, c, flat(h)) for q, c, h in times)  # type: ignore[arg-type]
    return replace(DAY_LONG, further_times=found)


BLANK = Sheet("A", flat(60), flat(24))


def test_blanks_and_what_is_assumed() -> None:
    model = calibrate(BLANK)
    assert model.assumptions == (
        "No reference temperature given: its times are taken at 25 °C.",
        "No minimum cure temperature given: 15 °C assumed.",
        "No maximum cure temperature given: 40 °C assumed.",
        "No handling time given: it stays on the rack until it is safe to hit.",
        "No times at other temperatures given: 58 kJ/mol assumed, between 50 and 65.",
    )
    assert (model.ref_k, model.minimum_k, model.maximum_k) == (298.15, 288.15, 313.15)
    assert (model.n, model.has_handling) == (2.0, False)
    assert calibrate(replace(BLANK, reference_temperature_c=20.0)).minimum_k == kelvin(10)


def test_a_full_sheet_assumes_nothing() -> None:
    sheet = replace(DAY_LONG, activation_energy_kj_per_mol=60.0)
    assert calibrate(sheet).assumptions == ()


def test_maximum_from_the_hottest_further_time() -> None:
    sheet = replace(
        further(("full_cure", 50, 2), ("full_cure", 40, 4.5)), maximum_cure_temperature_c=None
    )
    model = calibrate(sheet)
    assert model.maximum_k == kelvin(50)
    assert model.assumptions == ("No maximum cure temperature given: 50 °C assumed.",)


def test_middles_of_ranges_are_reached_at_the_reference() -> None:
    sheet = replace(DAY_LONG, handling_time_h=Range(6, 10), full_cure_time_h=Range(20, 28))
    model = calibrate(sheet)
    assert model.hours_at(25, ALPHA_HANDLING) == pytest.approx(8, rel=1e-9)
    assert model.hours_at(25, ALPHA_FULL) == pytest.approx(24, rel=1e-9)


def test_the_minimum_is_where_diffusion_takes_half_the_speed() -> None:
    assert critical_conversion(kelvin(15), kelvin(15)) == ALPHA_FULL


@pytest.mark.parametrize("order", ORDER_RANGE)
def test_orders_up_to_the_ends_are_taken(order: float) -> None:
    """About 1.3 to 600 times, where the minimum lies 10 °C under the reference."""
    critical = critical_conversion(kelvin(25), kelvin(15))
    ratio = reduced_time(ALPHA_FULL, order, critical) / reduced_time(
        ALPHA_HANDLING, order, critical
    )
    assert ratio == pytest.approx(1.3 if order < 1 else 600, rel=0.15)
    inside = 1.001 if order < 1 else 0.999
    sheet = replace(DAY_LONG, handling_time_h=flat(24 / (ratio * inside)))
    assert calibrate(sheet).n == pytest.approx(order, abs=0.02)
    outside = replace(DAY_LONG, handling_time_h=flat(24 / (ratio / inside)))
    with pytest.raises(InputError):
        calibrate(outside)


# --- activation energy ------------------------------------------------------------------------


def test_default_energy_and_its_band() -> None:
    model = calibrate(DAY_LONG)
    assert (model.energy, model.energy_low, model.energy_high) == (58e3, 50e3, 65e3)


@pytest.mark.parametrize("given", [30.0, 58.0, 120.0])
def test_given_energy_wins_and_its_band_is_not_clipped(given: float) -> None:
    model = calibrate(replace(DAY_LONG, activation_energy_kj_per_mol=given))
    assert (model.energy_low, model.energy, model.energy_high) == (
        given * 1000 - 5000, given * 1000, given * 1000 + 5000,
    )  # fmt: skip


def test_given_energy_is_checked_by_further_times() -> None:
    good = replace(further(("full_cure", 50, 2)), activation_energy_kj_per_mol=78.0)
    assert calibrate(good).energy == 78e3
    bad = replace(good, activation_energy_kj_per_mol=58.0)
    with pytest.raises(InputError, match=r"within 15%\), got full_cure 2 h at 50 °C"):
        calibrate(bad)


def test_all_quantities_go_into_one_sum() -> None:
    """Times that the model itself makes at another energy give that energy back."""
    made = calibrate(replace(DAY_LONG, activation_energy_kj_per_mol=71.0))
    factor = made.expected().terms(kelvin(40))[0] / made.k_per_s
    sheet = further(
        ("working_life", 40, 1 / factor),
        ("handling", 15, made.hours_at(15, ALPHA_HANDLING)),
        ("full_cure", 50, made.hours_at(50, ALPHA_FULL)),
    )
    assert calibrate(sheet).energy == pytest.approx(71e3, rel=1e-9)


def test_a_further_time_at_the_reference_says_nothing_of_the_energy() -> None:
    model = calibrate(further(("full_cure", 25, 24)))
    assert (model.energy, model.energy_low, model.energy_high) == (58e3, 50e3, 65e3)
    assert any("58 kJ/mol assumed" in sentence for sentence in model.assumptions)


@pytest.mark.parametrize("edge", ENERGY_RANGE)
def test_energy_range_is_enforced(edge: float) -> None:
    given = replace(DAY_LONG, activation_energy_kj_per_mol=edge / 1000)
    assert calibrate(given).energy == edge
    out = edge / 1000 + (-0.1 if edge < 5e4 else 0.1)
    with pytest.raises(InputError, match=r"wanted an activation energy of 30 to 120 kJ/mol"):
        calibrate(replace(DAY_LONG, activation_energy_kj_per_mol=out))


def test_a_time_missed_by_more_than_15_percent_is_refused() -> None:
    times = [("full_cure", 50.0, 2.0), ("full_cure", 40.0, 4.3)]
    calibrate(further(*times))
    with pytest.raises(InputError, match=r"times that one epoxy can have \(within 15%\)"):
        calibrate(further(times[0], ("full_cure", 40, 8)))


# --- refusals: what was wanted, what came and where -------------------------------------------


@pytest.mark.parametrize(
    ("sheet", "message"),
    [
        (replace(DAY_LONG, handling_time_h=flat(23)),
         "sheet: handling_time_h: wanted a full-cure time at least 1.28 times the handling time, "
         "got 1.04 times: handling and full cure are the same time. "
         "Leave the handling time blank."),
        (replace(DAY_LONG, handling_time_h=flat(0.01)), "wanted a full-cure time at most "),
        (replace(DAY_LONG, handling_time_h=flat(0.01)), "perhaps the working life?"),
        (replace(DAY_LONG, handling_time_h=Range(8, 30)),
         "sheet: handling_time_h: wanted a handling time no longer than the full-cure time, at "
         "both ends, got handling 8–30 h, full cure 24 h."),
        (replace(DAY_LONG, handling_time_h=Range(9, 8)), "the shorter then the longer"),
        (replace(DAY_LONG, full_cure_time_h=flat(-24)), "sheet: full_cure_time_h: wanted a time"),
        (replace(DAY_LONG, working_life_min=flat(float("nan"))), "sheet: working_life_min"),
        (replace(DAY_LONG, working_life_min=flat(0)), "sheet: working_life_min: wanted a time"),
        (replace(DAY_LONG, minimum_cure_temperature_c=25.1),
         "wanted minimum ≤ reference < maximum cure temperature, got 25.1 ≤ 25 < 60 °C."),
        (replace(DAY_LONG, maximum_cure_temperature_c=25.0), "got 15 ≤ 25 < 25 °C."),
        (further(("full_cure", 50, 23.5)), "from the times at other temperatures"),
        (further(("full_cure", 50, 0)), "sheet: further_times[1]: wanted hours above 0"),
        (further(("full_cure", 130, 1)), "further_times[1]: wanted a temperature of −40 to 120"),
        (further(("gel", 50, 1)),
         "further_times[1]: wanted working_life or handling or full_cure, got gel."),
        (replace(BLANK, further_times=(FurtherTime("handling", 40, flat(2)),)),
         "wanted a handling time at the reference temperature beside one at another, got none."),
    ],
)  # fmt: skip
def test_refused(sheet: Sheet, message: str) -> None:
    with pytest.raises(InputError, match=re.escape(message)):
        calibrate(sheet)


def test_the_minimum_may_be_the_reference() -> None:
    assert calibrate(replace(DAY_LONG, minimum_cure_temperature_c=25.0)).n > 0
