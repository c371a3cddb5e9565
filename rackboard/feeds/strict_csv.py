"""A temperature record in the one form that the prompt takes; nothing is guessed.

The header is ``time,temperature_c``; times are ISO 8601 with their offset and ascend.
"""

from __future__ import annotations

import io
import re

from rackboard.core.errors import InputError
from rackboard.core.instants import Instant, parse_iso
from rackboard.core.temperature import HIGHEST_MC, LOWEST_MC, is_power_on_value
from rackboard.core.text import Figure, text
from rackboard.feeds.encoding import decode_utf8, line_of

HEADER = ("time", "temperature_c")
EARLIEST_US = 0
LATEST_US = 7_258_118_400_000_000
"""2200-01-01T00:00Z: a record from beyond is a mistake [decision]."""
_NUMBER = re.compile(r"[+-]?\d+(?:\.\d*)?(?:[eE][+-]?\d{1,3})?", re.ASCII)
_WANTED_HEADER = text("Logger", "the header time,temperature_c")


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

    content = decode_utf8(data, where)
    rows = csv.reader(io.StringIO(content, newline=""), strict=True)
    readings: list[tuple[Instant, int]] = []
    try:
        header = next(rows, None)
        if header is None:
            raise InputError(_WANTED_HEADER, text("Logger", "an empty file"), where)
        if tuple(header) != HEADER:
            came = ",".join(header) or text("Logger", "nothing")
            raise InputError(_WANTED_HEADER, came, line_of(where, 1))
        blank = 0
        for row in rows:
            here = line_of(where, rows.line_num)
            if not row:
                blank = blank or rows.line_num
                continue
            if blank:
                came = text("Logger", "an empty line")
                raise InputError(text("Logger", "a reading"), came, line_of(where, blank))
            _add(readings, row, here)
    except csv.Error as error:
        came = text("Logger", "what is no CSV ({reason})").format(reason=error)
        here = line_of(where, rows.line_num)
        raise InputError(text("Logger", "a reading"), came, here) from None
    if not readings:
        raise InputError(text("Logger", "at least one reading"), text("Logger", "none"), where)
    return readings


def _add(readings: list[tuple[Instant, int]], row: list[str], where: str) -> None:
    if len(row) != len(HEADER):
        came = f"{len(row)} ({','.join(row)})"
        raise InputError(text("Logger", "two fields, time and temperature"), came, where)
    at_us = parse_iso(row[0], where)
    if not EARLIEST_US <= at_us < LATEST_US:
        wanted = text("Logger", "an ISO 8601 time from 1970 to 2199")
        raise InputError(wanted, row[0].strip(), where)
    temperature_mc = _temperature(row[1].strip(), where)
    if readings:
        before_us, before_mc = readings[-1]
        if at_us == before_us and temperature_mc == before_mc:
            return
        if at_us == before_us:
            both = text("Logger", "{first} and {second} at {time}").format(
                first=Figure(f"{before_mc / 1000:g}"),
                second=Figure(f"{temperature_mc / 1000:g} °C"), time=row[0].strip(),
            )  # fmt: skip
            raise InputError(text("Logger", "one temperature at one instant"), both, where)
        if at_us < before_us:
            earlier = text("Logger", "{time}, which is earlier").format(time=row[0].strip())
            wanted = text("Logger", "a time after that of the line before")
            raise InputError(wanted, earlier, where)
    readings.append((at_us, temperature_mc))


def _temperature(cell: str, where: str) -> int:
    if _NUMBER.fullmatch(cell) is None:
        wanted = text("Logger", "a temperature in °C such as 21.5")
        raise InputError(wanted, cell or text("Logger", "nothing"), where)
    value = float(cell)
    low, high = LOWEST_MC / 1000, HIGHEST_MC / 1000
    if not low <= value <= high:
        wanted = text("Logger", "a temperature from {low} to {high}").format(
            low=f"−{-low:g}", high=f"{high:g} °C"
        )
        raise InputError(wanted, cell, where)
    temperature_mc = round(value * 1000)
    if is_power_on_value(temperature_mc):
        came = text("Logger", "{value}, what a sensor sends before it has measured")
        raise InputError(
            text("Logger", "a measured temperature"), came.format(value=cell), where,
            text("Logger", "Delete the line."),
        )  # fmt: skip
    return temperature_mc
