"""An epoxy's sheet as TOML, and the checks that every sheet must pass.

The keys are the fields of `rackboard.core.epoxy.Sheet`. Whether the times fit one model is
not decided here but by the calibration.
"""

from __future__ import annotations

import math
import re
from typing import TYPE_CHECKING

from rackboard.core.epoxy import QUANTITIES, FurtherTime, Range, Sheet
from rackboard.core.errors import InputError
from rackboard.core.temperature import HIGHEST_MC, LOWEST_MC

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

_TIMES = ("working_life_min", "handling_time_h", "full_cure_time_h")
_TEMPERATURES = (
    "reference_temperature_c",
    "minimum_cure_temperature_c",
    "maximum_cure_temperature_c",
)
_RATIOS = ("mix_ratio_by_volume", "mix_ratio_by_mass")
_POSITIVE = ("density_g_per_ml", "working_life_mass_g", "lap_shear_mpa", "shelf_life_months")
_ENERGY = "activation_energy_kj_per_mol"
_HARD_EDGE = "no_cure_below_minimum"
_FURTHER = "further_times"
KEYS = ("name", *_TIMES, *_TEMPERATURES, _HARD_EDGE, _ENERGY, *_RATIOS, *_POSITIVE, _FURTHER)
"""Every key that a sheet may have, in the order in which they are written."""
_FURTHER_KEYS = ("quantity", "temperature_c", "hours")

SHORTEST_S = 1.0
LONGEST_H = 8760.0
"""A time of a sheet lies between one second and one year [decision]."""
ENERGY_KJ_PER_MOL = (30.0, 120.0)
"""An activation energy outside of this is no epoxy's [decision]."""
DOUBTED_RATIO = 3.0
"""A handling time under this many working lives is asked about [decision]."""
_LONGEST_NAME = 120
_LONGEST_TEXT = 1_000_000
_RATIO = re.compile(r"\s*([0-9]+(?:[.,][0-9]+)?)\s*[:/]\s*([0-9]+(?:[.,][0-9]+)?)\s*")
_CONTROL = re.compile("[\x00-\x1f\x7f\ud800-\udfff]")


def sheet_from_toml(text: str, where: str) -> Sheet:
    r"""Read one sheet.

    Parameters
    ----------
    text : str
        TOML; a time is a number or [short, long], in the unit of its key.
    where : str
        The file, named in every error.

    Returns
    -------
    Sheet
        Checked by `check_sheet`.

    Raises
    ------
    InputError
        If it is no TOML, a key is unknown or missing, or a value can't be taken.

    Examples
    --------
    >>> text = "name = 'A'\nworking_life_min = 60\nfull_cure_time_h = [20, 24]"
    >>> sheet_from_toml(text, "here").full_cure_time_h
    Range(short=20.0, long=24.0)
    """
    table = _parsed(text, where)
    _refuse_unknown(table, KEYS, where)
    for key in ("name", "working_life_min", "full_cure_time_h"):
        if key not in table:
            raise InputError(f"the key {key}", "none", where)
    given: dict[str, object] = dict(table)
    for key in _TIMES:
        if key in table:
            given[key] = _range(table[key], f"{where}, {key}")
    for key in _RATIOS:
        if key in table:
            given[key] = _ratio(table[key], f"{where}, {key}")
    for key in (*_TEMPERATURES, _ENERGY, *_POSITIVE):
        if key in table:
            given[key] = _number(table[key], f"{where}, {key}")
    if _FURTHER in table:
        given[_FURTHER] = _further_times(table[_FURTHER], f"{where}, {_FURTHER}")
    return check_sheet(Sheet(**given), where)  # type: ignore[arg-type]


def _parsed(text: str, where: str) -> dict[str, object]:
    import tomllib

    wanted = "a sheet as TOML, one key = value a line"
    if len(text) > _LONGEST_TEXT:
        raise InputError(wanted, f"{len(text)} characters", where)
    try:
        return tomllib.loads(text.removeprefix("\ufeff"))
    except RecursionError:
        raise InputError(wanted, "brackets nested too deep", where) from None
    except ValueError as error:
        said = str(error)
        at = re.search(r" \(at (?:line (\d+), column \d+|end of document)\)$", said)
        if at is None:
            raise InputError(wanted, said, where) from None
        lines = len(text.splitlines())
        line = at[1] or str(max(lines, 1))
        raise InputError(wanted, said[: at.start()], f"{where}, line {line}") from None


def _refuse_unknown(table: Mapping[str, object], known: Iterable[str], where: str) -> None:
    known = tuple(known)
    for key in table:
        if key not in known:
            from difflib import get_close_matches

            close = get_close_matches(key, known, n=1, cutoff=0.5)
            remedy = f'Did you mean "{close[0]}"?' if close else f"Keys: {', '.join(known)}."
            raise InputError("a key that a sheet knows", f'"{key}"', where, remedy)


def _number(value: object, where: str) -> float:
    """Return a finite number; True is none, and neither is a text."""
    if isinstance(value, int | float) and not isinstance(value, bool):
        try:
            number = float(value)
        except OverflowError:
            number = math.inf
        if math.isfinite(number):
            return number
        raise InputError("a finite number", str(value), where)
    raise InputError("a number", _shown(value), where)


def _range(value: object, where: str) -> Range:
    if isinstance(value, list | tuple):
        if len(value) != 2:
            raise InputError("a number or [short, long]", _shown(value), where)
        return Range(_number(value[0], where), _number(value[1], where))
    if isinstance(value, str | bool) or not isinstance(value, int | float):
        raise InputError("a number or [short, long]", _shown(value), where)
    number = _number(value, where)
    return Range(number, number)


def _ratio(value: object, where: str) -> tuple[float, float]:
    wanted = 'a ratio such as "100:83", [100, 83] or 1.2 (meaning 1.2 : 1)'
    if isinstance(value, str):
        match = _RATIO.fullmatch(value)
        if match is None:
            raise InputError(wanted, _shown(value), where)
        first, second = (float(part.replace(",", ".")) for part in match.groups())
        return first, second
    if isinstance(value, list | tuple):
        if len(value) != 2:
            raise InputError(wanted, _shown(value), where)
        return _number(value[0], where), _number(value[1], where)
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise InputError(wanted, _shown(value), where)
    return _number(value, where), 1.0


def _further_times(value: object, where: str) -> tuple[FurtherTime, ...]:
    if not isinstance(value, list) or not all(isinstance(entry, dict) for entry in value):
        raise InputError("tables, each headed [[further_times]]", _shown(value), where)
    times = []
    for number, entry in enumerate(value, 1):
        here = f"{where} {number}"
        _refuse_unknown(entry, _FURTHER_KEYS, here)
        for key in _FURTHER_KEYS:
            if key not in entry:
                raise InputError(f"the key {key}", "none", here)
        temperature_c = _number(entry["temperature_c"], f"{here}, temperature_c")
        hours = _range(entry["hours"], f"{here}, hours")
        times.append(FurtherTime(entry["quantity"], temperature_c, hours))
    return tuple(times)


def _shown(value: object) -> str:
    """Return a value as TOML would show it, roughly."""
    if isinstance(value, str):
        return f'"{value}"'
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, dict):
        return "a table"
    return str(value)


def check_sheet(sheet: Sheet, where: str) -> Sheet:
    """Refuse a sheet whose facts can't be, whatever the model thinks of them.

    Parameters
    ----------
    sheet : Sheet
        From a file or a form.
    where : str
        The file or the form; the key is added to it in every error.

    Returns
    -------
    Sheet
        The same sheet.

    Raises
    ------
    InputError
        If a value is missing, of the wrong kind, not finite, not positive, in the wrong
        order or out of range.
    """
    _check_name(sheet.name, f"{where}, name")
    for key in _TIMES:
        given = getattr(sheet, key)
        if given is not None:
            _check_time(given, 60.0 if key.endswith("_min") else 3600.0, f"{where}, {key}")
        elif key != "handling_time_h":
            raise InputError("a time", "none", f"{where}, {key}")
    _check_order(sheet, where)
    for number, time in enumerate(sheet.further_times, 1):
        here = f"{where}, {_FURTHER} {number}"
        if time.quantity not in QUANTITIES:
            names = ", ".join(f'"{name}"' for name in QUANTITIES)
            raise InputError(f"one of {names}", _shown(time.quantity), f"{here}, quantity")
        _check_temperature(time.temperature_c, f"{here}, temperature_c")
        _check_time(time.hours, 3600.0, f"{here}, hours")
    _check_temperatures(sheet, where)
    if not isinstance(sheet.no_cure_below_minimum, bool):
        shown = _shown(sheet.no_cure_below_minimum)
        raise InputError("true or false", shown, f"{where}, {_HARD_EDGE}")
    low, high = ENERGY_KJ_PER_MOL
    energy = sheet.activation_energy_kj_per_mol
    if energy is not None and not low <= _number(energy, f"{where}, {_ENERGY}") <= high:
        wanted = f"an activation energy from {low:g} to {high:g} kJ/mol"
        raise InputError(wanted, f"{energy:g}", f"{where}, {_ENERGY}")
    for key in _POSITIVE:
        given = getattr(sheet, key)
        if given is not None:
            _check_positive(given, f"{where}, {key}")
    for key in _RATIOS:
        for part in getattr(sheet, key) or ():
            _check_positive(part, f"{where}, {key}")
    return sheet


def _check_name(name: object, where: str) -> None:
    wanted = f"a name in one line, up to {_LONGEST_NAME} characters"
    if not isinstance(name, str):
        raise InputError(wanted, _shown(name), where)
    if not name.strip():
        raise InputError(wanted, "nothing", where)
    if len(name) > _LONGEST_NAME:
        raise InputError(wanted, f"{len(name)} characters", where)
    if _CONTROL.search(name):
        raise InputError(wanted, ascii(name), where)


def _check_positive(value: object, where: str) -> None:
    number = _number(value, where)
    if number <= 0:
        raise InputError("a number above zero", f"{number:g}", where)


def _check_time(time: Range, unit_s: float, where: str) -> None:
    for end in time:
        _check_positive(end, where)
        if not SHORTEST_S <= end * unit_s <= LONGEST_H * 3600:
            raise InputError("a time between one second and one year", f"{end:g}", where)
    if time.short > time.long:
        wanted = "the shorter time first"
        raise InputError(wanted, f"[{time.short:g}, {time.long:g}]", where)


def _check_order(sheet: Sheet, where: str) -> None:
    handling, full = sheet.handling_time_h, sheet.full_cure_time_h
    if handling is None:
        return
    for name, first, second in (
        ("shortest", handling.short, full.short),
        ("longest", handling.long, full.long),
    ):
        if first > second:
            wanted = f"a {name} time of at most the full cure's {second:g} h"
            raise InputError(wanted, f"{first:g} h", f"{where}, handling_time_h")


def _check_temperature(value: object, where: str) -> None:
    number = _number(value, where)
    low, high = LOWEST_MC / 1000, HIGHEST_MC / 1000
    if not low <= number <= high:
        raise InputError(f"a temperature from −{-low:g} to {high:g} °C", f"{number:g}", where)


def _check_temperatures(sheet: Sheet, where: str) -> None:
    reference, minimum, maximum = _TEMPERATURES
    for key in _TEMPERATURES:
        given = getattr(sheet, key)
        if given is not None:
            _check_temperature(given, f"{where}, {key}")
    base = f"the reference temperature, {sheet.reference_c:g} °C"
    if sheet.reference_temperature_c is None:
        base += " (assumed)"
    if sheet.minimum_c > sheet.reference_c:
        wanted = f"a minimum of at most {base}"
        raise InputError(wanted, f"{sheet.minimum_c:g}", f"{where}, {minimum}")
    if sheet.maximum_c <= sheet.reference_c:
        wanted = f"a maximum above {base}"
        came, remedy = f"{sheet.maximum_c:g}", ""
        if sheet.maximum_cure_temperature_c is None:
            came += " (assumed, as the sheet gives none)"
            remedy = f"Give {maximum}, or check {reference}."
        raise InputError(wanted, came, f"{where}, {maximum}", remedy)


def sets_in_doubt(sheet: Sheet) -> str | None:
    """Return what to ask when a handling time looks like a working life.

    Parameters
    ----------
    sheet : Sheet
        A checked sheet.

    Returns
    -------
    str or None
        A question if the middle of the handling time is under three times the middle of
        the working life.
    """
    if sheet.handling_time_h is None:
        return None
    handling_min = sheet.handling_time_h.middle * 60
    life_min = sheet.working_life_min.middle
    if handling_min >= DOUBTED_RATIO * life_min:
        return None
    return (
        '"Sets in" on a pack is the working life, not the handling time. '
        f"May a joint really come off the rack after {handling_min:.3g} min, "
        f"with {life_min:.3g} min to use the epoxy?"
    )


def sheet_to_toml(sheet: Sheet) -> str:
    """Return a sheet as TOML that `sheet_from_toml` reads back as the same sheet.

    Parameters
    ----------
    sheet : Sheet
        A checked sheet; blank facts are left out.

    Returns
    -------
    str
        Ends with a line break.
    """
    lines = []
    for key in KEYS[:-1]:
        value = getattr(sheet, key)
        if value is not None and value is not False:
            lines.append(f"{key} = {_written(value)}")
    for time in sheet.further_times:
        lines += ["", f"[[{_FURTHER}]]"]
        lines += [f"{key} = {_written(getattr(time, key))}" for key in _FURTHER_KEYS]
    return "\n".join(lines) + "\n"


def _written(value: object) -> str:
    if value is True:
        return "true"
    if isinstance(value, str):
        escaped = value.replace("\\", "\\\\").replace('"', '\\"')
        return f'"{escaped}"'
    if isinstance(value, Range) and value.short == value.long:
        return _written(value.short)
    if isinstance(value, tuple):
        return f"[{', '.join(_written(part) for part in value)}]"
    number = float(value)  # type: ignore[arg-type]
    exact = number.is_integer() and abs(number) < 1e15
    return str(int(number)) if exact else repr(number)
