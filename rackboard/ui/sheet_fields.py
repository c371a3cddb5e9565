"""The texts of an epoxy's form and the sheet that they say, both ways.

What is said of a field is a `Text`; whoever shows it looks it up.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace

from rackboard.core.cure.calibration import CureModel, calibrate
from rackboard.core.epoxy import (
    DEFAULT_MAXIMUM_C,
    MINIMUM_BELOW_REFERENCE_K,
    ROOM_TEMPERATURE_C,
    FurtherTime,
    Quantity,
    Range,
    Sheet,
)
from rackboard.core.errors import InputError
from rackboard.core.sheet_toml import KEYS, check_sheet
from rackboard.core.temperature import Unit, format_temperature, parse_temperature, room_doubt
from rackboard.core.text import Figure, Text, text
from rackboard.ui.language import say

FORM = "form"
_OF_FORM = {
    "full_cure": text("Sheet", "to hit"), "handling": text("Sheet", "off the rack"),
    "working_life": text("Sheet", "to use"),
}  # fmt: skip
_CELSIUS = re.compile("([-−]?\\d+(?:\\.\\d+)?)[ \N{NO-BREAK SPACE}]°C")
FURTHER = "further_times"
_NUMBER = r"\d+(?:[.,]\d+)?|[.,]\d+"
_ONE = re.compile(rf"\s*({_NUMBER})\s*")
_SPAN = re.compile(rf"\s*({_NUMBER})\s*(?:to|-|–|…|bis|\.\.)\s*({_NUMBER})\s*", re.IGNORECASE)
_RATIO = re.compile(rf"\s*({_NUMBER})\s*(?::|/|to)\s*({_NUMBER})\s*", re.IGNORECASE)
_WANTED_TIME = text("Sheet", "a number above 0, or the shorter and the longer such as 45 to 60")
_WANTED = text("Sheet", "Wanted {wanted}; this is “{came}”.")

TIMES = {
    "working_life_min": ("life_short", "life_long"),
    "handling_time_h": ("handling_short", "handling_long"),
    "full_cure_time_h": ("full_short", "full_long"),
}
TEMPERATURES = {
    "reference_temperature_c": "reference",
    "minimum_cure_temperature_c": "minimum",
    "maximum_cure_temperature_c": "maximum",
}
RATIOS = {"mix_ratio_by_volume": "volume", "mix_ratio_by_mass": "mass"}
NUMBERS = {
    "density_g_per_ml": "density",
    "working_life_mass_g": "life_mass",
    "lap_shear_mpa": "shear",
    "shelf_life_months": "shelf",
    "activation_energy_kj_per_mol": "energy",
}


@dataclass(frozen=True, slots=True)
class FurtherEntry:
    """One more time as typed; the working life in minutes, the others in hours."""

    quantity: Quantity
    time: str
    temperature: str


@dataclass(frozen=True, slots=True)
class SheetEntry:
    """An epoxy as it stands in the form's fields."""

    name: str = ""
    reference: str = ""
    life_short: str = ""
    life_long: str = ""
    life_mass: str = ""
    handling_short: str = ""
    handling_long: str = ""
    full_short: str = ""
    full_long: str = ""
    minimum: str = ""
    maximum: str = ""
    no_cure_below_minimum: bool = False
    volume: str = ""
    mass: str = ""
    density: str = ""
    shear: str = ""
    shelf: str = ""
    energy: str = ""
    further: tuple[FurtherEntry, ...] = ()


@dataclass(frozen=True, slots=True)
class Read:
    """What a form says: a sheet and its model, or what is wrong, by the sheet's keys.

    A further time is `further_times 1`, counted from 1. `hints` are assumptions and doubts
    that refuse nothing; `missing` are the errors that only mean "not typed yet". Where only
    facts are wrong that the model doesn't need there is a model without a sheet.
    """

    sheet: Sheet | None = None
    model: CureModel | None = None
    errors: dict[str, str] = field(default_factory=dict)
    hints: dict[str, str] = field(default_factory=dict)
    missing: frozenset[str] = frozenset()


def number_text(value: float) -> str:
    """Return a number as it is typed."""
    return f"{value:.10g}"


def bare_temperature(temperature_c: float, unit: Unit) -> str:
    """Return a temperature [°C] as typed in the shop's unit, without the unit."""
    value = temperature_c if unit is Unit.C else temperature_c * 1.8 + 32
    return number_text(round(value, 6))


def shown_temperature(temperature_c: float, unit: Unit) -> str:
    """Return a temperature [°C] as it is said in the shop's unit: "25 °C"."""
    return Figure(format_temperature(round(temperature_c * 1000), unit).replace(".0", ""))


def entry_of(sheet: Sheet, unit: Unit) -> SheetEntry:
    """Return the texts of a sheet."""
    texts: dict[str, str] = {}
    for key, (short, long) in TIMES.items():
        times = getattr(sheet, key)
        if times is not None:
            texts[short] = number_text(times.short)
            texts[long] = "" if times.short == times.long else number_text(times.long)
    for key, name in TEMPERATURES.items():
        given = getattr(sheet, key)
        texts[name] = "" if given is None else bare_temperature(given, unit)
    for key, name in RATIOS.items():
        ratio = getattr(sheet, key)
        texts[name] = "" if ratio is None else " : ".join(number_text(part) for part in ratio)
    for key, name in NUMBERS.items():
        value = getattr(sheet, key)
        texts[name] = "" if value is None else number_text(value)
    further = tuple(
        FurtherEntry(time.quantity, _time_text(time), bare_temperature(time.temperature_c, unit))
        for time in sheet.further_times
    )
    return SheetEntry(
        name=sheet.name, no_cure_below_minimum=sheet.no_cure_below_minimum, further=further, **texts
    )


def _time_text(time: FurtherTime) -> str:
    scale = 60 if time.quantity == "working_life" else 1
    ends = [number_text(round(end * scale, 9)) for end in time.hours]
    return ends[0] if ends[0] == ends[1] else "–".join(ends)


def split_span(text: str) -> tuple[str, str] | None:
    """Return the two ends of a range typed in one field, None if it is none."""
    match = _SPAN.fullmatch(text)
    return (match[1], match[2]) if match else None


class _Reader:
    def __init__(self, unit: Unit) -> None:
        self.unit = unit
        self.errors: dict[str, str] = {}
        self.missing: set[str] = set()

    def need(self, key: str, message: Text) -> None:
        self.errors[key] = message
        self.missing.add(key)

    def number(self, key: str, typed: str, wanted: Text) -> float | None:
        if not typed.strip():
            return None
        match = _ONE.fullmatch(typed)
        value = float(match[1].replace(",", ".")) if match else 0.0
        if value <= 0:
            self.errors[key] = _WANTED.format(wanted=wanted, came=typed.strip())
            return None
        return value

    def span(self, key: str, short: str, long: str, *, needed: Text | None = None) -> Range | None:
        both = split_span(short)
        if both and not long.strip():
            short, long = both
        if not short.strip() and not long.strip():
            if needed is not None:
                self.need(key, needed)
            return None
        first = self.number(key, short or long, _WANTED_TIME)
        second = self.number(key, long or short, _WANTED_TIME)
        if first is None or second is None:
            return None
        if first > second:
            self.errors[key] = (
                text("Sheet", "Wanted the shorter time first; this is {short} to {long}.")
            ).format(short=Figure(number_text(first)), long=Figure(number_text(second)))
            return None
        return Range(first, second)

    def temperature(self, key: str, typed: str) -> float | None:
        if not typed.strip():
            return None
        try:
            return parse_temperature(typed, self.unit, FORM) / 1000
        except InputError as error:
            self.errors[key] = said(error, self.unit)
            return None

    def ratio(self, key: str, typed: str) -> tuple[float, float] | None:
        if not typed.strip():
            return None
        match = _RATIO.fullmatch(typed)
        parts = tuple(float(part.replace(",", ".")) for part in match.groups()) if match else ()
        if len(parts) != 2 or min(parts) <= 0:
            wanted = text("Sheet", "two parts such as 1 : 1 or 100 : 83")
            self.errors[key] = _WANTED.format(wanted=wanted, came=typed.strip())
            return None
        return parts[0], parts[1]


def read_entry(entry: SheetEntry, unit: Unit) -> Read:
    """Return what a form says: sheet and model, or what can't be taken, each at its field.

    Parameters
    ----------
    entry : SheetEntry
        The texts.
    unit : Unit
        Of temperatures without one.
    """
    reader = _Reader(unit)
    hints = _assumptions(entry, unit)
    name = entry.name.strip()
    if not name:
        reader.need("name", text("Sheet", "Wanted a short name; tiles show it."))
    life = reader.span(
        "working_life_min", entry.life_short, entry.life_long,
        needed=text("Sheet", "Wanted how long the mix may be used; the pack says “sets in” or"
                    " “pot life”."),
    )  # fmt: skip
    handling = reader.span("handling_time_h", entry.handling_short, entry.handling_long)
    full = reader.span(
        "full_cure_time_h", entry.full_short, entry.full_long,
        needed=text("Sheet", "Wanted the time to full cure; without it nothing can be reckoned."),
    )  # fmt: skip
    temperatures = {
        key: reader.temperature(key, getattr(entry, name)) for key, name in TEMPERATURES.items()
    }
    ratios = {key: reader.ratio(key, getattr(entry, name)) for key, name in RATIOS.items()}
    numbers = {
        key: reader.number(key, getattr(entry, name), text("Sheet", "a number above 0, or nothing"))
        for key, name in NUMBERS.items()
    }
    further = [_further(reader, number, time) for number, time in enumerate(entry.further, 1)]
    facts = {"name", *RATIOS, *NUMBERS} - {"activation_energy_kj_per_mol"}
    if life is None or full is None or not reader.errors.keys() <= facts:
        return Read(errors=reader.errors, hints=hints, missing=frozenset(reader.missing))
    sheet = Sheet(
        name=name or "-", working_life_min=life, handling_time_h=handling, full_cure_time_h=full,
        no_cure_below_minimum=entry.no_cure_below_minimum,
        further_times=tuple(time for time in further if time is not None),
        **temperatures, **ratios, **numbers,  # type: ignore[arg-type]
    )  # fmt: skip
    errors = reader.errors | _temperature_order(sheet, unit)
    if errors.keys() - facts:
        return Read(errors=errors, hints=hints)
    try:
        check_sheet(sheet, FORM)
        model = calibrate(sheet, FORM)
    except InputError as error:
        return Read(errors=errors | {field_of(error): said(error, unit)}, hints=hints)
    return Read(None if errors else sheet, model, errors, hints, frozenset(reader.missing))


def _further(reader: _Reader, number: int, entry: FurtherEntry) -> FurtherTime | None:
    key = f"{FURTHER} {number}"
    hours = reader.span(key, entry.time, "", needed=text("Sheet", "Wanted a time, or “Remove”."))
    if not entry.temperature.strip():
        if key not in reader.errors:
            reader.need(key, text("Sheet", "Wanted the temperature at which this time holds."))
        return None
    temperature_c = reader.temperature(key, entry.temperature)
    if hours is None or temperature_c is None:
        return None
    if entry.quantity == "working_life":
        hours = Range(hours.short / 60, hours.long / 60)
    return FurtherTime(entry.quantity, temperature_c, hours)


def _assumptions(entry: SheetEntry, unit: Unit) -> dict[str, str]:
    """Name what is taken where the pack is blank, and ask about what looks odd."""
    hints: dict[str, str] = {}
    trial = _Reader(unit)
    reference = trial.temperature("", entry.reference)
    if not entry.reference.strip():
        hints["reference_temperature_c"] = text(
            "Sheet", "Blank: “room temperature” is taken as {temperature}."
        ).format(temperature=shown_temperature(ROOM_TEMPERATURE_C, unit))
    elif reference is not None:
        doubt = room_doubt(round(reference * 1000), unit)
        if doubt is not None:
            hints["reference_temperature_c"] = doubt.question
    base = ROOM_TEMPERATURE_C if reference is None else reference
    no_low, no_high = not entry.minimum.strip(), not entry.maximum.strip()
    if no_low or no_high:
        hottest = [trial.temperature("", time.temperature) or -99.0 for time in entry.further]
        above = max((t for t in hottest if t > base), default=DEFAULT_MAXIMUM_C)
        said = (
            text("Sheet", "Blank: taken as from {low} up to {high}.") if no_low and no_high
            else text("Sheet", "Blank: taken as from {low}.") if no_low
            else text("Sheet", "Blank: taken as up to {high}.")
        )  # fmt: skip
        hints["minimum_cure_temperature_c"] = said.format(
            low=shown_temperature(base - MINIMUM_BELOW_REFERENCE_K, unit),
            high=shown_temperature(above, unit),
        )
    if not (entry.handling_short + entry.handling_long).strip():
        said = text("Sheet", "Blank: it stays on the rack until it is safe to hit.")
        hints["handling_time_h"] = said
    if not entry.energy.strip() and not entry.further:
        hints["activation_energy_kj_per_mol"] = text(
            "Sheet", "Blank: 58 is assumed, between 50 and 65."
        )
    elif not entry.energy.strip():
        hints["activation_energy_kj_per_mol"] = text("Sheet", "Blank: found from the times below.")
    return hints


def _temperature_order(sheet: Sheet, unit: Unit) -> dict[str, str]:
    reference = shown_temperature(sheet.reference_c, unit)
    if sheet.minimum_c > sheet.reference_c:
        said = text("Sheet", "Wanted a lowest temperature of at most {reference}, at which the"
                    " times hold; this is {given}.")  # fmt: skip
        given = shown_temperature(sheet.minimum_c, unit)
    elif sheet.maximum_c <= sheet.reference_c:
        given = shown_temperature(sheet.maximum_c, unit)
        if sheet.maximum_cure_temperature_c is not None:
            said = text("Sheet", "Wanted a highest temperature above {reference}, at which the"
                        " times hold; this is {given}.")  # fmt: skip
        else:
            said = text("Sheet", "Wanted a highest temperature above {reference}, at which the"
                        " times hold; this is {given}, assumed.")  # fmt: skip
    else:
        return {}
    return {"minimum_cure_temperature_c": said.format(reference=reference, given=given)}


def field_of(error: InputError) -> str:
    """Return the key of the field that an error of the checks belongs to."""
    further = re.search(rf"{FURTHER}[ \[](\d+)", error.where)
    if further:
        return f"{FURTHER} {further[1]}"
    for key in KEYS:
        if key in error.where:
            return "minimum_cure_temperature_c" if key.startswith("maximum") else key
    return "full_cure_time_h"


def said(error: InputError, unit: Unit = Unit.C) -> Text:
    """Return an error without its place, which stands at its field, in the shop's unit."""
    wanted, came = _in_form(error.wanted, unit), _in_form(error.came, unit)
    if not error.remedy:
        return text("Sheet", "Wanted {wanted}; this is {came}.").format(wanted=wanted, came=came)
    return text("Sheet", "Wanted {wanted}; this is {came}. {remedy}").format(
        wanted=wanted, came=came, remedy=_in_form(error.remedy, unit)
    )


def _in_form(part: object, unit: Unit) -> object:
    """Return a part of an error in the form's own words and in the shop's unit."""
    if isinstance(part, str) and part.replace(" ", "_") in _OF_FORM:
        return _OF_FORM[part.replace(" ", "_")]
    if isinstance(part, Text):
        parts = {name: _in_form(value, unit) for name, value in part.parts.items()}
        return part.format(**parts)
    if not isinstance(part, str):
        return part
    if unit is Unit.C:
        return part
    shown = _CELSIUS.sub(lambda at: shown_temperature(float(at[1].replace("−", "-")), unit), part)
    return Figure(shown) if isinstance(part, Figure) else shown


def copy_name(name: str, taken: set[str]) -> str:
    """Return a name for a copy that isn't taken."""
    number, made = 2, say("Sheet", "{name} (copy)").format(name=name)
    while made in taken:
        made = say("Sheet", "{name} (copy {number})").format(name=name, number=number)
        number += 1
    return made


def renamed(sheet: Sheet, name: str) -> Sheet:
    """Return the same sheet by another name."""
    return replace(sheet, name=name)
