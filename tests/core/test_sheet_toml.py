"""Sheets as TOML: read, refused by name, written back."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rackboard.core.epoxy import QUANTITIES, FurtherTime, Range, Sheet
from rackboard.core.errors import InputError
from rackboard.core.sheet_toml import (
    KEYS,
    check_sheet,
    sets_in_doubt,
    sheet_from_toml,
    sheet_to_toml,
)

SHORT = """\
name = "day-long"
working_life_min = 60
full_cure_time_h = [20, 28]
"""

FULL = """\
name = "day-long, toughened (invented)"
reference_temperature_c = 25
working_life_min = [50, 70]
handling_time_h = [6, 10.5]
full_cure_time_h = 24
minimum_cure_temperature_c = 15
maximum_cure_temperature_c = 60.0
mix_ratio_by_volume = "1 : 1"
mix_ratio_by_mass = "100:83"
density_g_per_ml = 1.12
working_life_mass_g = 100
lap_shear_mpa = 28
shelf_life_months = 24
no_cure_below_minimum = true
activation_energy_kj_per_mol = 58

[[further_times]]
quantity = "full_cure"
temperature_c = 50
hours = 2

[[further_times]]
quantity = "working_life"
temperature_c = 15.5
hours = [1.5, 2]
"""


def test_short_sheet_leaves_the_rest_blank() -> None:
    sheet = sheet_from_toml(SHORT, "s.toml")
    assert sheet == Sheet("day-long", Range(60, 60), Range(20, 28))
    assert sheet.handling_time_h is None


def test_full_sheet() -> None:
    assert sheet_from_toml(FULL, "s.toml") == Sheet(
        name="day-long, toughened (invented)",
        reference_temperature_c=25.0,
        working_life_min=Range(50, 70),
        handling_time_h=Range(6, 10.5),
        full_cure_time_h=Range(24, 24),
        minimum_cure_temperature_c=15.0,
        maximum_cure_temperature_c=60.0,
        mix_ratio_by_volume=(1.0, 1.0),
        mix_ratio_by_mass=(100.0, 83.0),
        density_g_per_ml=1.12,
        working_life_mass_g=100.0,
        lap_shear_mpa=28.0,
        shelf_life_months=24.0,
        no_cure_below_minimum=True,
        activation_energy_kj_per_mol=58.0,
        further_times=(
            FurtherTime("full_cure", 50.0, Range(2, 2)),
            FurtherTime("working_life", 15.5, Range(1.5, 2)),
        ),
    )


def test_byte_order_mark_is_no_key() -> None:
    assert sheet_from_toml("\ufeff" + SHORT, "s.toml").name == "day-long"


@pytest.mark.parametrize(
    ("written", "parts"),
    [
        ('"100:83"', (100, 83)),
        ('"1 : 1"', (1, 1)),
        ('"1:0,9"', (1, 0.9)),
        ('"2/1"', (2, 1)),
        ("[100, 83]", (100, 83)),
        ("1.2", (1.2, 1)),
        ("2", (2, 1)),
    ],
)
def test_ratio(written: str, parts: tuple[float, float]) -> None:
    assert sheet_from_toml(f"{SHORT}mix_ratio_by_mass = {written}", "x").mix_ratio_by_mass == parts


REFUSED = [
    # key, its line, what the message must hold
    ("name", "name = 5", "name in one line"),
    ("name", 'name = "  "', "got nothing"),
    ("name", 'name = "a\\nb"', "name in one line"),
    ("working_life_min", "working_life_min = -5", "above zero, got -5"),
    ("working_life_min", "working_life_min = 0", "above zero"),
    ("working_life_min", "working_life_min = true", "number or [short, long], got true"),
    ("working_life_min", 'working_life_min = "60"', 'got "60"'),
    ("working_life_min", "working_life_min = nan", "finite"),
    ("working_life_min", "working_life_min = inf", "finite"),
    ("working_life_min", "working_life_min = [70, 50]", "shorter time first, got [70, 50]"),
    ("working_life_min", "working_life_min = [50]", "[short, long]"),
    ("working_life_min", "working_life_min = [50, 60, 70]", "[short, long]"),
    ("working_life_min", "working_life_min = [50, true]", "a number, got true"),
    ("working_life_min", "working_life_min = [50, nan]", "finite"),
    ("working_life_min", "working_life_min = 0.001", "one second"),
    ("working_life_min", f"working_life_min = 1{'0' * 400}", "finite"),
    ("working_life_min", "working_life_min = 12:30:00", "[short, long]"),
    ("full_cure_time_h", "full_cure_time_h = 9000", "one year"),
    ("full_cure_time_h", "full_cure_time_h = {a = 1}", "got a table"),
    ("handling_time_h", "handling_time_h = 29", "shortest time of at most"),
    ("handling_time_h", "handling_time_h = [8, 29]", "longest time of at most"),
    ("reference_temperature_c", "reference_temperature_c = -41", "−40 to 120"),
    ("reference_temperature_c", "reference_temperature_c = '25'", "a number"),
    ("minimum_cure_temperature_c", "minimum_cure_temperature_c = 26", "25 °C (assumed), got 26"),
    ("maximum_cure_temperature_c", "maximum_cure_temperature_c = 25", "above the reference"),
    ("maximum_cure_temperature_c", "reference_temperature_c = 45", "40 (assumed"),
    ("maximum_cure_temperature_c", "maximum_cure_temperature_c = 121", "−40 to 120"),
    ("mix_ratio_by_mass", "mix_ratio_by_mass = '1'", "a ratio such as"),
    ("mix_ratio_by_mass", "mix_ratio_by_mass = [1, 2, 3]", "a ratio such as"),
    ("mix_ratio_by_mass", "mix_ratio_by_mass = '1:0'", "above zero"),
    ("mix_ratio_by_volume", "mix_ratio_by_volume = false", "a ratio such as"),
    ("density_g_per_ml", "density_g_per_ml = 0", "above zero"),
    ("lap_shear_mpa", "lap_shear_mpa = -1", "above zero"),
    ("working_life_mass_g", "working_life_mass_g = [1]", "a number"),
    ("shelf_life_months", "shelf_life_months = inf", "finite"),
    ("no_cure_below_minimum", "no_cure_below_minimum = 1", "true or false, got 1"),
    ("activation_energy_kj_per_mol", "activation_energy_kj_per_mol = 29.9", "from 30 to 120"),
    ("activation_energy_kj_per_mol", "activation_energy_kj_per_mol = 121", "from 30 to 120"),
    ("further_times", "further_times = 5", "[[further_times]]"),
    ("further_times", "[further_times]\nhours = 5", "[[further_times]]"),
    ("further_times 1", "[[further_times]]\nquantity = 'handling'", "the key temperature_c"),
    (
        "further_times 1, quantity",
        "[[further_times]]\nquantity = 'cure'\ntemperature_c = 5\nhours = 1",
        '"full_cure"',
    ),
    (
        "further_times 1, hours",
        "[[further_times]]\nquantity = 'handling'\ntemperature_c = 5\nhours = [3, 2]",
        "shorter time first",
    ),
    (
        "further_times 1, temperature_c",
        "[[further_times]]\nquantity = 'handling'\ntemperature_c = 130\nhours = 2",
        "−40 to 120",
    ),
]


@pytest.mark.parametrize(("key", "line", "said"), REFUSED)
def test_refused(key: str, line: str, said: str) -> None:
    own = line.split(" =", maxsplit=1)[0]
    kept = [other for other in SHORT.splitlines() if other.split(" =")[0] != own]
    with pytest.raises(InputError) as refusal:
        sheet_from_toml("\n".join([*kept, line]), "s.toml")
    assert str(refusal.value).startswith(f"s.toml, {key}: wanted ")
    assert said in str(refusal.value)


@pytest.mark.parametrize("key", ["name", "working_life_min", "full_cure_time_h"])
def test_missing_key_is_named(key: str) -> None:
    text = "\n".join(line for line in SHORT.splitlines() if not line.startswith(key))
    with pytest.raises(InputError, match=f"wanted the key {key}, got none"):
        sheet_from_toml(text, "s.toml")


@pytest.mark.parametrize(
    ("line", "came", "remedy"),
    [
        ("handling_time = 8", '"handling_time"', 'Did you mean "handling_time_h"?'),
        ("colour = 'grey'", '"colour"', "Keys: name, "),
        (
            "[[further_times]]\nquantity='handling'\ntemperatur_c=5\nhours=1",
            '"temperatur_c"',
            'Did you mean "temperature_c"?',
        ),
    ],
)
def test_unknown_key_is_named(line: str, came: str, remedy: str) -> None:
    with pytest.raises(InputError) as refusal:
        sheet_from_toml(SHORT + line, "s.toml")
    assert refusal.value.came == came
    assert refusal.value.remedy.startswith(remedy)


@pytest.mark.parametrize(
    ("text", "where"),
    [
        ("name = \n", "s.toml, line 1"),
        ('name = "a"\nworking_life_min = 6O\n', "s.toml, line 2"),
        ('name = "a', "s.toml, line 1"),
        ("name = 'a'\nname = 'b'\n", "s.toml, line 2"),
        ("a = " + "[" * 50_000, "s.toml"),
        ("a = 1" + "0" * 5_000, "s.toml"),
        ("#" * 1_000_001, "s.toml"),
    ],
)
def test_broken_toml_names_its_line(text: str, where: str) -> None:
    with pytest.raises(InputError) as refusal:
        sheet_from_toml(text, "s.toml")
    assert refusal.value.where == where


def test_form_passes_the_same_check() -> None:
    sheet = sheet_from_toml(FULL, "x")
    assert check_sheet(sheet, "the form") is sheet
    with pytest.raises(InputError, match="the form, density_g_per_ml: wanted a number above zero"):
        check_sheet(replace(sheet, density_g_per_ml=-1.0), "the form")
    with pytest.raises(InputError, match="the form, working_life_min: wanted a time, got none"):
        check_sheet(replace(sheet, working_life_min=None), "the form")


@pytest.mark.parametrize(
    ("life_min", "handling_h", "asked"),
    [((5, 5), (0.1, 0.1), True), ((50, 70), (2.9, 2.9), True), ((50, 70), (2, 4), False)],
)
def test_sets_in(
    life_min: tuple[float, float], handling_h: tuple[float, float], asked: bool
) -> None:
    sheet = Sheet("x", Range(*life_min), Range(24, 24), Range(*handling_h))
    doubt = sets_in_doubt(sheet)
    assert (doubt is not None) is asked
    if doubt:
        assert doubt.startswith('"Sets in" on a pack is the working life, not the handling time')


def test_blank_handling_time_is_not_asked_about() -> None:
    assert sets_in_doubt(Sheet("x", Range(60, 60), Range(24, 24))) is None


def _ranges(low: float, high: float) -> st.SearchStrategy[Range]:
    ends = st.floats(low, high)
    return st.tuples(ends, ends).map(lambda pair: Range(min(pair), max(pair)))


_positive = st.none() | st.floats(1e-9, 1e18)
_ratio = st.none() | st.tuples(st.floats(1e-6, 1e6), st.floats(1e-6, 1e6))
_names = st.text(
    st.characters(min_codepoint=32, exclude_categories=("Cs",), exclude_characters="\x7f"),
    min_size=1,
    max_size=120,
).filter(str.strip)
_further = st.builds(
    FurtherTime, st.sampled_from(QUANTITIES), st.floats(40.5, 120), _ranges(0.01, 8000)
)
_sheets = st.builds(
    Sheet,
    name=_names,
    working_life_min=_ranges(0.1, 10_000),
    full_cure_time_h=_ranges(50, 8000),
    handling_time_h=st.none() | _ranges(0.01, 50),
    reference_temperature_c=st.none() | st.floats(20, 30),
    minimum_cure_temperature_c=st.none() | st.floats(-40, 20),
    maximum_cure_temperature_c=st.none() | st.floats(31, 120),
    no_cure_below_minimum=st.booleans(),
    activation_energy_kj_per_mol=st.none() | st.floats(30, 120),
    further_times=st.lists(_further, max_size=3).map(tuple),
    mix_ratio_by_volume=_ratio,
    mix_ratio_by_mass=_ratio,
    density_g_per_ml=_positive,
    working_life_mass_g=_positive,
    lap_shear_mpa=_positive,
    shelf_life_months=_positive,
)


@given(_sheets)
def test_what_is_written_reads_the_same(sheet: Sheet) -> None:
    assert sheet_from_toml(sheet_to_toml(sheet), "x") == sheet


def test_keys_are_the_fields_of_a_sheet() -> None:
    assert set(KEYS) == set(Sheet.__dataclass_fields__)


@given(st.text(max_size=200))
def test_any_text_is_refused_calmly(text: str) -> None:
    with pytest.raises(InputError):
        sheet_from_toml(text, "x")
