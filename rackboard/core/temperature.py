"""Temperatures as people type and read them; inside, whole m°C."""

from __future__ import annotations

import re
from enum import StrEnum
from typing import NamedTuple

from rackboard.core.errors import InputError
from rackboard.core.text import Figure, text

LOWEST_MC = -40_000
HIGHEST_MC = 120_000
"""Outside of these nothing is taken, from nobody [decision]."""
ROOM_LOWEST_MC = 0
ROOM_HIGHEST_MC = 45_000
"""Outside of these a room's temperature is asked about [decision]."""
POWER_ON_MC = 85_000
"""What a common one-wire sensor sends before its first conversion [from memory]."""
ZERO_C_IN_MK = 273_150

_NBSP = "\N{NO-BREAK SPACE}"
_MINUS = "\N{MINUS SIGN}"
_PLAIN = str.maketrans(
    {
        _MINUS: "-",
        "\N{EN DASH}": "-",
        "\N{FULLWIDTH HYPHEN-MINUS}": "-",
        "\N{SUPERSCRIPT MINUS}": "-",
        _NBSP: " ",
        "\N{NARROW NO-BREAK SPACE}": " ",
        "\N{THIN SPACE}": " ",
        "\N{MASCULINE ORDINAL INDICATOR}": "°",
        "\N{RING ABOVE}": "°",
        "\N{DEGREE CELSIUS}": "°C",
        "\N{DEGREE FAHRENHEIT}": "°F",
        "\N{KELVIN SIGN}": "K",
        "\N{ARABIC DECIMAL SEPARATOR}": ",",
    }
)
# Compiled when first typed into: the first paint only formats.
_TYPED = (
    r"(?P<sign>[+-]?) ?(?P<whole>\d*)(?:[.,](?P<part>\d*))?"
    r" ?(?:°|deg\.?|degrees?)? ?"
    r"(?P<unit>c|celsius|celcius|centigrade|f|fahrenheit|k|kelvin)?\.?"
)
_LONGEST = 40


class Unit(StrEnum):
    """The unit a shop reads its thermometers in."""

    C = "C"
    F = "F"

    @property
    def other(self) -> Unit:
        """The unit that it is confused with."""
        return Unit.F if self is Unit.C else Unit.C


class Typed(NamedTuple):
    """A temperature read from a field, with the unit it was read in.

    `unit_named` is whether the person wrote the unit or the shop's was taken.
    """

    temperature_mc: int
    unit: Unit
    unit_named: bool


class Doubt(NamedTuple):
    """A question about a value, and the value that was probably meant [m°C], if any."""

    question: str
    proposed_mc: int | None


def _divided(numerator: int, denominator: int) -> int:
    """Return the quotient rounded to the nearest integer, halves away from zero."""
    quotient = (2 * abs(numerator) + denominator) // (2 * denominator)
    return quotient if numerator >= 0 else -quotient


def _to_mc(figure: int, scale: int, unit: Unit) -> int:
    """Return figure/scale in `unit` as m°C."""
    if unit is Unit.C:
        return _divided(figure * 1000, scale)
    return _divided((figure - 32 * scale) * 5000, 9 * scale)


def read_typed(typed: str, unit: Unit, where: str) -> Typed:
    """Read a temperature as people type it, and say in which unit it was read.

    Parameters
    ----------
    typed : str
        "21,5 °C", "70F", "+21", "−3 C"; a point or a comma before the decimals.
    unit : Unit
        The shop's unit, taken where none is written.
    where : str
        Named in the error.

    Returns
    -------
    Typed
        The temperature [m°C] and its unit.

    Raises
    ------
    InputError
        If it is no temperature, is in kelvin, or lies outside −40…120 °C.

    Examples
    --------
    >>> read_typed("70 °F", Unit.C, "here")
    Typed(temperature_mc=21111, unit=<Unit.F: 'F'>, unit_named=True)
    """
    wanted = text("Temperature", "a temperature such as 21.5 °C or 70 °F")
    plain = " ".join(typed.translate(_PLAIN).split())
    match = re.fullmatch(_TYPED, plain, re.IGNORECASE) if len(plain) <= _LONGEST else None
    if match is None or not (match["whole"] or match["part"]):
        raise InputError(wanted, typed.strip() or text("Temperature", "nothing"), where)
    part = match["part"] or ""
    scale = 10 ** len(part)
    figure = int((match["whole"] or "0") + part)
    if match["sign"] == "-":
        figure = -figure
    letter = (match["unit"] or "").upper()[:1]
    if letter == "K":
        celsius_mc = _to_mc(figure, scale, Unit.C) - ZERO_C_IN_MK
        shown = format_temperature(celsius_mc, unit)
        raise InputError(
            wanted, typed.strip(), where,
            text("Temperature", "{kelvin} would be {shown}.").format(kelvin=plain, shown=shown),
        )  # fmt: skip
    named = Unit(letter) if letter else None
    read_in = named or unit
    temperature_mc = _to_mc(figure, scale, read_in)
    check_limits(temperature_mc, read_in, where, typed.strip())
    return Typed(temperature_mc, read_in, named is not None)


def parse_temperature(typed: str, unit: Unit, where: str) -> int:
    """Return a typed temperature [m°C]; see `read_typed`.

    Parameters
    ----------
    typed : str
        What was typed, or given as an argument ("5C", "41F").
    unit : Unit
        Taken where the text names none.
    where : str
        Named in the error.

    Returns
    -------
    int
        The temperature [m°C].

    Raises
    ------
    InputError
        If it is no temperature between −40 and 120 °C.

    Examples
    --------
    >>> parse_temperature("21,5", Unit.C, "here")
    21500
    >>> parse_temperature("41F", Unit.C, "here")
    5000
    """
    return read_typed(typed, unit, where).temperature_mc


def check_limits(temperature_mc: int, unit: Unit, where: str, came: str | None = None) -> None:
    """Refuse a temperature [m°C] outside −40…120 °C.

    Parameters
    ----------
    temperature_mc : int
        The temperature [m°C].
    unit : Unit
        The unit in which the limits are named.
    where : str
        Named in the error.
    came : str, optional
        The text as it came.

    Raises
    ------
    InputError
        If it lies outside.
    """
    if LOWEST_MC <= temperature_mc <= HIGHEST_MC:
        return
    wanted = text("Temperature", "a temperature from {low} to {high}").format(
        low=Figure(_figure(LOWEST_MC, unit, 0)), high=format_temperature(HIGHEST_MC, unit, 0)
    )
    shown = came if came is not None else format_temperature(temperature_mc, unit)
    raise InputError(wanted, shown, where)


def room_doubt(temperature_mc: int, unit: Unit, unit_named: bool = False) -> Doubt | None:
    """Return what to ask about a room's temperature outside 0…45 °C.

    Parameters
    ----------
    temperature_mc : int
        The temperature as it was read [m°C].
    unit : Unit
        The unit in which it was read.
    unit_named : bool
        Whether the person wrote that unit; the other one is proposed only if not.

    Returns
    -------
    Doubt or None
        None if there is nothing to ask.

    Examples
    --------
    >>> room_doubt(70_000, Unit.C).question.replace(chr(160), " ")
    '70 °F = 21.1 °C?'
    >>> room_doubt(21_000, Unit.C) is None
    True
    """
    if ROOM_LOWEST_MC <= temperature_mc <= ROOM_HIGHEST_MC:
        return None
    figure = _figure(temperature_mc, unit, 1).removesuffix(".0")
    if not unit_named:
        other_mc = (
            _to_mc(temperature_mc, 1000, Unit.F)
            if unit is Unit.C
            else _divided(temperature_mc * 9, 5) + 32_000
        )
        if ROOM_LOWEST_MC <= other_mc <= ROOM_HIGHEST_MC:
            in_shop_unit = format_temperature(other_mc, unit)
            question = text("Temperature", "{typed} = {meant}?").format(
                typed=Figure(f"{figure}{_NBSP}°{unit.other}"), meant=in_shop_unit
            )
            return Doubt(question, other_mc)
    typed = Figure(f"{figure}{_NBSP}°{unit}")
    return Doubt(text("Temperature", "{typed} in a room?").format(typed=typed), None)


def is_power_on_value(temperature_mc: int) -> bool:
    """Return whether an automatic reading [m°C] is the 85.000 °C of a sensor just started."""
    return temperature_mc == POWER_ON_MC


def format_temperature(temperature_mc: int, unit: Unit, decimals: int = 1) -> str:
    """Return a temperature [m°C] as it is shown, such as "17.4 °C".

    Parameters
    ----------
    temperature_mc : int
        The temperature [m°C].
    unit : Unit
        The unit to show.
    decimals : int
        Decimals, 0…3; halves are rounded away from zero.

    Returns
    -------
    str
        With a no-break space before the unit and a minus sign below zero.

    Examples
    --------
    >>> format_temperature(17_350, Unit.C).replace(chr(160), " ")
    '17.4 °C'
    """
    return Figure(f"{_figure(temperature_mc, unit, decimals)}{_NBSP}°{unit}")


def format_difference(
    difference_mc: int, unit: Unit, decimals: int = 1, signed: bool = False
) -> str:
    """Return a difference of temperatures [mK] as it is shown, such as "3.6 °F".

    Parameters
    ----------
    difference_mc : int
        The difference [mK].
    unit : Unit
        The unit to show; 1 K is 1.8 °F.
    decimals : int
        Decimals, 0…3.
    signed : bool
        Whether a rise gets its plus.

    Returns
    -------
    str
        With a no-break space before the unit.

    Examples
    --------
    >>> format_difference(2_000, Unit.F).replace(chr(160), " ")
    '3.6 °F'
    """
    fifths = difference_mc * (5 if unit is Unit.C else 9)
    figure = _rounded(fifths, decimals)
    sign = "+" if signed and figure.strip("0.") and not figure.startswith(_MINUS) else ""
    return Figure(f"{sign}{figure}{_NBSP}°{unit}")


def _figure(temperature_mc: int, unit: Unit, decimals: int) -> str:
    """Return the bare figure of a temperature [m°C] in `unit`."""
    fifths = temperature_mc * 5 if unit is Unit.C else temperature_mc * 9 + 160_000
    return _rounded(fifths, decimals)


def _rounded(fifths: int, decimals: int) -> str:
    """Return fifths of a thousandth as a decimal text; zero has no minus."""
    scale = 10**decimals
    figure = _divided(fifths * scale, 5000)
    whole, part = divmod(abs(figure), scale)
    shown = f"{whole}.{part:0{decimals}d}" if decimals else str(whole)
    return f"{_MINUS}{shown}" if figure < 0 else shown
