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
from rackboard.core.text import Figure, Text, text

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


def sheet_from_toml(written: str, where: str) -> Sheet:
    r"""Read one sheet.

    Parameters
    ----------
    written : str
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
    table = _parsed(written, where)
    _refuse_unknown(table, KEYS, where)
    for key in ("name", "working_life_min", "full_cure_time_h"):
        if key not in table:
            raise _no_key(key, where)
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


def _no_key(key: str, where: str) -> InputError:
    wanted = text("Sheet", "the key {key}").format(key=key)
    return InputError(wanted, text("Sheet", "none"), where)


def _parsed(written: str, where: str) -> dict[str, object]:
    import tomllib

    wanted = text("Sheet", "a sheet as TOML, one key = value a line")
    if len(written) > _LONGEST_TEXT:
        raise InputError(wanted, _characters(written), where)
    try:
        return tomllib.loads(written.removeprefix("\ufeff"))
    except RecursionError:
        came = text("Sheet", "brackets nested too deep")
        raise InputError(wanted, came, where) from None
    except ValueError as error:
        said = str(error)
        at = re.search(r" \(at (?:line (\d+), column \d+|end of document)\)$", said)
        if at is None:
            raise InputError(wanted, said, where) from None
        lines = len(written.splitlines())
        line = at[1] or str(max(lines, 1))
        here = text("Sheet", "{where}, line {line}").format(where=where, line=line)
        raise InputError(wanted, said[: at.start()], here) from None


def _refuse_unknown(table: Mapping[str, object], known: Iterable[str], where: str) -> None:
    known = tuple(known)
    for key in table:
        if key not in known:
            from difflib import get_close_matches

            close = get_close_matches(key, known, n=1, cutoff=0.5)
            if close:
                remedy = text("Sheet", 'Did you mean "{key}"?').format(key=close[0])
            else:
                remedy = text("Sheet", "Keys: {keys}.").format(keys=", ".join(known))
            wanted = text("Sheet", "a key that a sheet knows")
            raise InputError(wanted, f'"{key}"', where, remedy)


def _number(value: object, where: str) -> float:
    """Return a finite number; True is none, and neither is a text."""
    if isinstance(value, int | float) and not isinstance(value, bool):
        try:
            number = float(value)
        except OverflowError:
            number = math.inf
        if math.isfinite(number):
            return number
        raise InputError(text("Sheet", "a finite number"), str(value), where)
    raise InputError(text("Sheet", "a number"), _shown(value), where)


def _range(value: object, where: str) -> Range:
    if isinstance(value, list | tuple):
        if len(value) != 2:
            raise InputError(text("Sheet", "a number or [short, long]"), _shown(value), where)
        return Range(_number(value[0], where), _number(value[1], where))
    if isinstance(value, str | bool) or not isinstance(value, int | float):
        raise InputError(text("Sheet", "a number or [short, long]"), _shown(value), where)
    number = _number(value, where)
    return Range(number, number)


def _ratio(value: object, where: str) -> tuple[float, float]:
    wanted = text("Sheet", 'a ratio such as "100:83", [100, 83] or 1.2 (meaning 1.2 : 1)')
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
        wanted = text("Sheet", "tables, each headed [[further_times]]")
        raise InputError(wanted, _shown(value), where)
    times = []
    for number, entry in enumerate(value, 1):
        here = f"{where} {number}"
        _refuse_unknown(entry, _FURTHER_KEYS, here)
        for key in _FURTHER_KEYS:
            if key not in entry:
                raise _no_key(key, here)
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
        return text("Sheet", "a table")
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
            wanted = text("Sheet", "a time")
            raise InputError(wanted, text("Sheet", "none"), f"{where}, {key}")
    _check_order(sheet, where)
    for number, time in enumerate(sheet.further_times, 1):
        here = f"{where}, {_FURTHER} {number}"
        if time.quantity not in QUANTITIES:
            names = ", ".join(f'"{name}"' for name in QUANTITIES)
            wanted = text("Sheet", "one of {names}").format(names=names)
            raise InputError(wanted, _shown(time.quantity), f"{here}, quantity")
        _check_temperature(time.temperature_c, f"{here}, temperature_c")
        _check_time(time.hours, 3600.0, f"{here}, hours")
    _check_temperatures(sheet, where)
    if not isinstance(sheet.no_cure_below_minimum, bool):
        shown = _shown(sheet.no_cure_below_minimum)
        raise InputError(text("Sheet", "true or false"), shown, f"{where}, {_HARD_EDGE}")
    low, high = ENERGY_KJ_PER_MOL
    energy = sheet.activation_energy_kj_per_mol
    if energy is not None and not low <= _number(energy, f"{where}, {_ENERGY}") <= high:
        wanted = text("Sheet", "an activation energy from {low} to {high} kJ/mol").format(
            low=f"{low:g}", high=f"{high:g}"
        )
        raise InputError(wanted, Figure(f"{energy:g}"), f"{where}, {_ENERGY}")
    for key in _POSITIVE:
        given = getattr(sheet, key)
        if given is not None:
            _check_positive(given, f"{where}, {key}")
    for key in _RATIOS:
        for part in getattr(sheet, key) or ():
            _check_positive(part, f"{where}, {key}")
    return sheet


def _check_name(name: object, where: str) -> None:
    wanted = text("Sheet", "a name in one line, up to {most} characters").format(
        most=_LONGEST_NAME
    )
    if not isinstance(name, str):
        raise InputError(wanted, _shown(name), where)
    if not name.strip():
        raise InputError(wanted, text("Sheet", "nothing"), where)
    if len(name) > _LONGEST_NAME:
        raise InputError(wanted, _characters(name), where)
    if _CONTROL.search(name):
        raise InputError(wanted, ascii(name), where)


def _characters(written: str) -> Text:
    return text("Sheet", "%n characters", "%n character", len(written))


def _check_positive(value: object, where: str) -> None:
    number = _number(value, where)
    if number <= 0:
        raise InputError(text("Sheet", "a number above zero"), Figure(f"{number:g}"), where)


def _check_time(time: Range, unit_s: float, where: str) -> None:
    for end in time:
        _check_positive(end, where)
        if not SHORTEST_S <= end * unit_s <= LONGEST_H * 3600:
            wanted = text("Sheet", "a time between one second and one year")
            raise InputError(wanted, Figure(f"{end:g}"), where)
    if time.short > time.long:
        wanted = text("Sheet", "the shorter time first")
        raise InputError(wanted, f"[{time.short:g}, {time.long:g}]", where)


def _check_order(sheet: Sheet, where: str) -> None:
    handling, full = sheet.handling_time_h, sheet.full_cure_time_h
    if handling is None:
        return
    for wanted, first, second in (
        (text("Sheet", "a shortest time of at most the full cure's {time}"),
         handling.short, full.short),
        (text("Sheet", "a longest time of at most the full cure's {time}"),
         handling.long, full.long),
    ):  # fmt: skip
        if first > second:
            limit = wanted.format(time=Figure(f"{second:g} h"))
            raise InputError(limit, Figure(f"{first:g} h"), f"{where}, handling_time_h")


def _check_temperature(value: object, where: str) -> None:
    number = _number(value, where)
    low, high = LOWEST_MC / 1000, HIGHEST_MC / 1000
    if not low <= number <= high:
        wanted = text("Sheet", "a temperature from {low} to {high}").format(
            low=f"−{-low:g}", high=f"{high:g} °C"
        )
        raise InputError(wanted, Figure(f"{number:g}"), where)


def _check_temperatures(sheet: Sheet, where: str) -> None:
    reference, minimum, maximum = _TEMPERATURES
    for key in _TEMPERATURES:
        given = getattr(sheet, key)
        if given is not None:
            _check_temperature(given, f"{where}, {key}")
    base = (
        text("Sheet", "the reference temperature, {temperature}")
        if sheet.reference_temperature_c is not None
        else text("Sheet", "the reference temperature, {temperature} (assumed)")
    ).format(temperature=Figure(f"{sheet.reference_c:g} °C"))
    if sheet.minimum_c > sheet.reference_c:
        wanted = text("Sheet", "a minimum of at most {reference}").format(reference=base)
        raise InputError(wanted, Figure(f"{sheet.minimum_c:g}"), f"{where}, {minimum}")
    if sheet.maximum_c <= sheet.reference_c:
        wanted = text("Sheet", "a maximum above {reference}").format(reference=base)
        came: str = Figure(f"{sheet.maximum_c:g}")
        remedy = ""
        if sheet.maximum_cure_temperature_c is None:
            came = text("Sheet", "{maximum} (assumed, as the sheet gives none)").format(
                maximum=came
            )
            remedy = text("Sheet", "Give {maximum}, or check {reference}.").format(
                maximum=maximum, reference=reference
            )
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
    return text(
        "Sheet", '"Sets in" on a pack is the working life, not the handling time. '
        "May a joint really come off the rack after {handling}, with {life} to use the epoxy?"
    ).format(
        handling=Figure(f"{handling_min:.3g} min"), life=Figure(f"{life_min:.3g} min")
    )  # fmt: skip


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
