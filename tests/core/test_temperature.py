"""Temperatures in every spelling that people use."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rackboard.core.errors import InputError
from rackboard.core.temperature import (
    HIGHEST_MC,
    LOWEST_MC,
    Doubt,
    Unit,
    format_difference,
    format_temperature,
    is_power_on_value,
    parse_temperature,
    read_typed,
    room_doubt,
)

C, F = Unit.C, Unit.F
NBSP = "\N{NO-BREAK SPACE}"

TAKEN = [
    ("21.5", C, 21_500),
    ("21,5", C, 21_500),
    ("21,5 °C", C, 21_500),
    ("21.5°C", C, 21_500),
    ("21.5 ° C", C, 21_500),
    ("21.5 C", C, 21_500),
    ("21.5c", C, 21_500),
    ("21.5\N{NO-BREAK SPACE}°C", C, 21_500),
    ("21.5\N{NARROW NO-BREAK SPACE}°C", C, 21_500),
    ("21.5 \N{DEGREE CELSIUS}", C, 21_500),
    ("21.5 ºC", C, 21_500),
    ("21.5 ˚C", C, 21_500),
    ("21 degrees", C, 21_000),
    ("21 deg C", C, 21_000),
    ("21 Celsius", C, 21_000),
    ("  21  ", C, 21_000),
    ("+21", C, 21_000),
    ("+ 21", C, 21_000),
    ("21.", C, 21_000),
    (".5", C, 500),
    ("021", C, 21_000),
    ("\N{MINUS SIGN}3 C", C, -3_000),
    ("\N{EN DASH}3", C, -3_000),
    ("-3", C, -3_000),
    ("- 3 °C", C, -3_000),
    ("-0", C, 0),
    ("5C", C, 5_000),
    ("41F", C, 5_000),
    ("70F", C, 21_111),
    ("70 °F", C, 21_111),
    ("70f", C, 21_111),
    ("70 Fahrenheit", C, 21_111),
    ("70", F, 21_111),
    ("70,5", F, 21_389),
    ("21 °C", F, 21_000),
    ("-40 F", C, -40_000),
    ("-40", F, -40_000),
    ("120", C, 120_000),
    ("248", F, 120_000),
    ("17.4567", C, 17_457),
    ("17.0005", C, 17_001),
    ("-17.0005", C, -17_001),
    ("85.000", C, 85_000),
]


@pytest.mark.parametrize(("text", "unit", "expected_mc"), TAKEN)
def test_taken(text: str, unit: Unit, expected_mc: int) -> None:
    assert parse_temperature(text, unit, "the form") == expected_mc


REFUSED = [
    "",
    "   ",
    "warm",
    "°C",
    "C",
    ".",
    "+",
    "--3",
    "21.5.3",
    "21,5,3",
    "1,021.5",
    "21 5",
    "21 °C 5",
    "12-14",
    "nan",
    "inf",
    "-inf",
    "1e1",
    "2_1",
    "0x15",
    "21 °X",
    "21 CF",
    "21 %",
    "~20",
    "294 K",
    "294.15 kelvin",
    "120.001",
    "-40.001",
    "249 F",
    "999999999999",
    "9" * 5000,
    "21\N{NULL}",
]


@pytest.mark.parametrize("text", REFUSED)
def test_refused(text: str) -> None:
    with pytest.raises(InputError) as refusal:
        parse_temperature(text, C, "rack A, temperature")
    assert str(refusal.value).startswith("rack A, temperature: wanted a temperature")


def test_kelvin_is_refused_with_its_celsius() -> None:
    with pytest.raises(InputError) as refusal:
        parse_temperature("294 K", C, "the form")
    assert refusal.value.remedy == f"294 K would be 20.9{NBSP}°C."


def test_limits_are_named_in_the_unit_that_was_read() -> None:
    with pytest.raises(InputError, match=f"from −40 to 248{NBSP}°F, got 300"):
        parse_temperature("300", F, "the form")


def test_named_unit_is_known() -> None:
    assert read_typed("70 F", C, "x") == (21_111, F, True)
    assert read_typed("70", F, "x") == (21_111, F, False)


@pytest.mark.parametrize(
    ("text", "unit", "doubt"),
    [
        ("0", C, None),
        ("45", C, None),
        ("32", F, None),
        ("113 F", C, None),
        ("70", C, Doubt(f"70{NBSP}°F = 21.1{NBSP}°C?", 21_111)),
        ("70.5", C, Doubt(f"70.5{NBSP}°F = 21.4{NBSP}°C?", 21_389)),
        ("21", F, Doubt(f"21{NBSP}°C = 69.8{NBSP}°F?", 21_000)),
        ("70 C", C, Doubt(f"70{NBSP}°C in a room?", None)),
        ("46", C, Doubt(f"46{NBSP}°F = 7.8{NBSP}°C?", 7_778)),
        ("-3", C, Doubt(f"−3{NBSP}°C in a room?", None)),
        ("118", C, Doubt(f"118{NBSP}°C in a room?", None)),
    ],
)
def test_room_doubt(text: str, unit: Unit, doubt: Doubt | None) -> None:
    assert room_doubt(*read_typed(text, unit, "x")) == doubt


def test_power_on_value_is_exact() -> None:
    assert is_power_on_value(85_000)
    assert not is_power_on_value(84_999)
    assert not is_power_on_value(85_062)


@pytest.mark.parametrize(
    ("temperature_mc", "unit", "decimals", "shown"),
    [
        (17_350, C, 1, "17.4 °C"),
        (-3_000, C, 1, "−3.0 °C"),
        (-40, C, 1, "0.0 °C"),
        (21_111, F, 0, "70 °F"),
        (21_000, F, 1, "69.8 °F"),
        (-40_000, F, 1, "−40.0 °F"),
        (17_354, C, 3, "17.354 °C"),
    ],
)
def test_format(temperature_mc: int, unit: Unit, decimals: int, shown: str) -> None:
    assert format_temperature(temperature_mc, unit, decimals) == shown.replace(" ", NBSP)


@pytest.mark.parametrize(
    ("difference_mc", "unit", "signed", "shown"),
    [
        (2_000, C, False, "2.0 °C"),
        (2_000, F, False, "3.6 °F"),
        (-1_000, F, True, "−1.8 °F"),
        (1_000, C, True, "+1.0 °C"),
        (20, C, True, "0.0 °C"),
    ],
)
def test_format_difference(difference_mc: int, unit: Unit, signed: bool, shown: str) -> None:
    assert format_difference(difference_mc, unit, signed=signed) == shown.replace(" ", NBSP)


@given(st.integers(LOWEST_MC, HIGHEST_MC), st.sampled_from(Unit), st.sampled_from(Unit))
def test_what_is_shown_can_be_typed(mc: int, shown_in: Unit, shop: Unit) -> None:
    typed = parse_temperature(format_temperature(mc, shown_in, 3), shop, "x")
    assert abs(typed - mc) <= (0 if shown_in is C else 1)


@given(st.text(max_size=50))
def test_any_text_is_taken_or_refused(text: str) -> None:
    try:
        taken = parse_temperature(text, C, "x")
    except InputError:
        return
    assert LOWEST_MC <= taken <= HIGHEST_MC
