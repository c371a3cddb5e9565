"""A temperature record in the one form that the prompt takes; nothing is guessed.

The header is ``time,temperature_c``; times are ISO 8601 with their offset and ascend.
"""

from __future__ import annotations

import io
import re

from rackboard.core.errors import InputError
from rackboard.core.instants import Instant, parse_iso
from rackboard.core.temperature import HIGHEST_MC, LOWEST_MC, is_power_on_value
from rackboard.feeds.encoding import decode_utf8

HEADER = ("time", "temperature_c")
EARLIEST_US = 0
LATEST_US = 7_258_118_400_000_000
"""2200-01-01T00:00Z: a record from beyond is a mistake [decision]."""
_NUMBER = re.compile(r"[+-]?\d+(?:\.\d*)?(?:[eE][+-]?\d{1,3})?", re.ASCII)
_WANTED_HEADER = "the header time,temperature_c"


def read_strict(data: bytes, where: str) -> list[tuple[Instant, int]]:
    r"""Read a record, or refuse it at its first bad line.

    Parameters
    ----------
    data : bytes
        The file: CSV in UTF-8.
    where : str
        The file's name; the line is added to it in every error.

    Returns
    -------
    list of (int, int)
        Instants [µs UTC], strictly ascending, and temperatures [m°C]. A repeated equal
        reading is one.

    Raises
    ------
    InputError
        If anything is not as it must be.

    Examples
    --------
    >>> read_strict(b"time,temperature_c\n1970-01-01T01:00:00+01:00,21.5\n", "here")
    [(0, 21500)]
    """
    import csv

    text = decode_utf8(data, where)
    rows = csv.reader(io.StringIO(text, newline=""), strict=True)
    readings: list[tuple[Instant, int]] = []
    try:
        header = next(rows, None)
        if header is None:
            raise InputError(_WANTED_HEADER, "an empty file", where)
        if tuple(header) != HEADER:
            raise InputError(_WANTED_HEADER, ",".join(header) or "nothing", f"{where}, line 1")
        blank = 0
        for row in rows:
            here = f"{where}, line {rows.line_num}"
            if not row:
                blank = blank or rows.line_num
                continue
            if blank:
                raise InputError("a reading", "an empty line", f"{where}, line {blank}")
            _add(readings, row, here)
    except csv.Error as error:
        came = f"what is no CSV ({error})"
        raise InputError("a reading", came, f"{where}, line {rows.line_num}") from None
    if not readings:
        raise InputError("at least one reading", "none", where)
    return readings


def _add(readings: list[tuple[Instant, int]], row: list[str], where: str) -> None:
    if len(row) != len(HEADER):
        came = f"{len(row)} ({','.join(row)})"
        raise InputError("two fields, time and temperature", came, where)
    at_us = parse_iso(row[0], where)
    if not EARLIEST_US <= at_us < LATEST_US:
        raise InputError("an ISO 8601 time from 1970 to 2199", row[0].strip(), where)
    temperature_mc = _temperature(row[1].strip(), where)
    if readings:
        before_us, before_mc = readings[-1]
        if at_us == before_us and temperature_mc == before_mc:
            return
        if at_us == before_us:
            came = f"{before_mc / 1000:g} and {temperature_mc / 1000:g} °C at {row[0].strip()}"
            raise InputError("one temperature at one instant", came, where)
        if at_us < before_us:
            came = f"{row[0].strip()}, which is earlier"
            raise InputError("a time after that of the line before", came, where)
    readings.append((at_us, temperature_mc))


def _temperature(text: str, where: str) -> int:
    if _NUMBER.fullmatch(text) is None:
        raise InputError("a temperature in °C such as 21.5", text or "nothing", where)
    value = float(text)
    low, high = LOWEST_MC / 1000, HIGHEST_MC / 1000
    if not low <= value <= high:
        raise InputError(f"a temperature from −{-low:g} to {high:g} °C", text, where)
    temperature_mc = round(value * 1000)
    if is_power_on_value(temperature_mc):
        came = f"{text}, what a sensor sends before it has measured"
        raise InputError("a measured temperature", came, where, "Delete the line.")
    return temperature_mc
