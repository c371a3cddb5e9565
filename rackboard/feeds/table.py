"""A logger's text as a table: its delimiter, header and columns, found by their content."""

from __future__ import annotations

import re
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from rackboard.core.errors import InputError
from rackboard.core.temperature import Unit
from rackboard.core.text import text
from rackboard.feeds import stamps

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

DELIMITERS = ("\t", ";", "|", ",")
_LOOKED_AT = 300
_NUMBER = re.compile(
    r"([+-]?)(\d{1,9})(?:([.,])(\d{1,12}))?(?:[eE]([+-]?\d{1,2}))?"
    r"(?: ?(?:°|º|deg)? ?([CF]))?",
    re.ASCII | re.IGNORECASE,
)
_WORDS = re.compile(r"temp|celsius|fahrenheit|[°º]|\bdeg ?[cf]\b|wärme|thermo", re.IGNORECASE)
_NOT_WORDS = re.compile(
    r"hum|feucht|\brh\b|%|dew|\btau|press|druck|hpa|mbar|bat|volt|co2|lux|light|\bno\b|\bnr\b|^#|"
    r"index|count|serial|alarm|rssi|kelvin",
    re.IGNORECASE,
)
_CELSIUS = re.compile(r"celsius|[°º�] ?c\b|\bdeg\.? ?c\b|[\(\[_ ,/]c(?=[\)\]]|$)", re.IGNORECASE)
_FAHRENHEIT = re.compile(
    r"fahrenheit|[°º�] ?f\b|\bdeg\.? ?f\b|[\(\[_ ,/]f(?=[\)\]]|$)", re.IGNORECASE
)
_PLAIN = str.maketrans(
    {
        "\N{MINUS SIGN}": "-",
        "\N{NO-BREAK SPACE}": " ",
        "\N{NARROW NO-BREAK SPACE}": " ",
        "\N{DEGREE CELSIUS}": "°C",
        "\N{DEGREE FAHRENHEIT}": "°F",
    }
)


def lines_of(text: str) -> list[str]:
    """Return a text's lines; only the three usual line ends count."""
    return text.replace("\r\n", "\n").replace("\r", "\n").split("\n")


def split(line: str, delimiter: str) -> list[str]:
    """Return the cells of one line, without the blanks around them.

    Each line is read alone, so that a stray quote spoils its own line and no more.
    """
    if '"' not in line:
        return [cell.strip() for cell in line.split(delimiter)]
    import csv

    try:
        cells = next(csv.reader([line], delimiter=delimiter, skipinitialspace=True), [])
    except csv.Error:
        return [line]
    return [cell.strip() for cell in cells]


def number(cell: str, decimal: str | None = None) -> tuple[float, Unit | None] | None:
    """Return the number in a cell and the unit that stands behind it, if any.

    Parameters
    ----------
    cell : str
        "21.5", "21,5 °C".
    decimal : str, optional
        The decimal mark; with None a point and a comma are both taken for it.

    Returns
    -------
    tuple or None
        None if it is no plain number.
    """
    match = _NUMBER.fullmatch(cell) or _NUMBER.fullmatch(cell.translate(_PLAIN))
    if match is None:
        return None
    sign, whole, mark, part, exponent, unit = match.groups()
    if mark and decimal and mark != decimal:
        return None
    value = float(f"{sign}{whole}.{part or 0}e{exponent or 0}")
    return value, Unit(unit.upper()) if unit else None


@dataclass(frozen=True, slots=True)
class Table:
    """Where the readings stand in a text. Line numbers count from 1, columns from 0.

    `header_line` is 0 if there is none. `clock_column` is None where one column holds date
    and clock time. `temperature_columns` are the likely ones, best first, and
    `hinted` says how many of them are equally good.
    """

    lines: list[str]
    delimiter: str
    header_line: int
    first_line: int
    columns: tuple[str, ...]
    time_column: int | None
    clock_column: int | None
    temperature_columns: tuple[int, ...]
    hinted: int

    def rows(self) -> Iterator[tuple[int, str]]:
        """Yield line number and text of each line after the header that is not blank."""
        for line_no in range(self.first_line, len(self.lines) + 1):
            line = self.lines[line_no - 1]
            if line and not line.isspace():
                yield line_no, line

    def unit_hint(self, column: int) -> Unit | None:
        """Return the unit that a column's header names."""
        name = self.columns[column] if column < len(self.columns) else ""
        celsius, fahrenheit = _CELSIUS.search(name), _FAHRENHEIT.search(name)
        if bool(celsius) == bool(fahrenheit):
            return None
        return Unit.C if celsius else Unit.F


def _kind(cell: str) -> str:
    """Return what a cell looks like: S stamp, D date, H clock, E epoch, N number, - none."""
    if not cell:
        return "-"
    if stamps.looks_like_stamp(cell):
        return "S"
    if stamps.looks_like_epoch(cell):
        return "E"
    if number(cell):
        return "N"
    if stamps.looks_like_date(cell):
        return "D"
    if stamps.looks_like_clock(cell):
        return "H"
    return "x"


def _is_reading(kinds: str) -> bool:
    timed = "S" in kinds or "E" in kinds or ("D" in kinds and "H" in kinds)
    return timed and "N" in kinds


def read_table(
    content: str, where: str, delimiter: str | None = None, header_line: int | None = None
) -> Table:
    """Find delimiter, header and columns of a text.

    Parameters
    ----------
    content : str
        The file's text.
    where : str
        The file's name.
    delimiter, header_line : optional
        A person's answers; a header line of 0 says that there is none.

    Returns
    -------
    Table
        What was found.

    Raises
    ------
    InputError
        If no line holds a time and a number, or an answer makes no sense.
    """
    if delimiter is not None and (len(delimiter) != 1 or delimiter in '"\r\n'):
        raise InputError(text("Logger", "one character as the delimiter"), delimiter, where)
    lines = lines_of(content)
    head = [(no, line) for no, line in enumerate(lines[:20_000], 1) if line.strip()][:_LOOKED_AT]
    best: list[tuple[int, list[str], str]] = []
    chosen = delimiter or DELIMITERS[-1]
    for candidate in (delimiter,) if delimiter else DELIMITERS:
        found = []
        for line_no, line in head:
            cells = split(line, candidate)
            kinds = "".join(map(_kind, cells)) if len(cells) > 1 else ""
            if _is_reading(kinds):
                found.append((line_no, cells, kinds))
        if len(found) > len(best):
            best, chosen = found, candidate
    if not best:
        wanted = text("Logger", "a table with times and temperatures")
        remedy = text("Logger", "Each line needs a date with its clock time, and a temperature.")
        raise InputError(wanted, _first(head), where, remedy)
    first_line = best[0][0]
    if header_line is None:
        before = [item for item in head if item[0] < first_line]
        header_line = before[-1][0] if before and len(split(before[-1][1], chosen)) > 1 else 0
    elif not 0 <= header_line < len(lines):
        wanted = text("Logger", "a header line from 0 to {last}").format(last=len(lines) - 1)
        raise InputError(wanted, header_line, where)
    elif header_line:
        first_line = header_line + 1
    width = max(len(cells) for _, cells, _ in best)
    columns = tuple(split(lines[header_line - 1], chosen)) if header_line else ()
    if not header_line:
        columns = tuple(
            text("Logger", "column {number}").format(number=number)
            for number in range(1, width + 1)
        )
    time_column, clock_column = _time_columns(best, width)
    ranked, hinted = _temperature_columns(best, width, columns, time_column)
    return Table(
        lines,
        chosen,
        header_line,
        first_line,
        columns,
        time_column,
        clock_column,
        ranked,
        hinted,
    )


def _first(head: Sequence[tuple[int, str]]) -> str:
    return head[0][1].strip() if head else text("Logger", "an empty file")


def _share(rows: list[tuple[int, list[str], str]], column: int, kinds: str) -> float:
    return sum(column < len(k) and k[column] in kinds for *_, k in rows) / len(rows)


def _time_columns(
    rows: list[tuple[int, list[str], str]], width: int
) -> tuple[int | None, int | None]:
    """Return the column of the stamps, or those of date and clock."""
    for kind in "SE":
        for column in range(width):
            if _share(rows, column, kind) > 0.5:
                return column, None
    dates = [column for column in range(width) if _share(rows, column, "D") > 0.5]
    clocks = [column for column in range(width) if _share(rows, column, "H") > 0.5]
    return (dates[0], clocks[0]) if dates and clocks else (None, None)


def _temperature_columns(
    rows: list[tuple[int, list[str], str]],
    width: int,
    columns: tuple[str, ...],
    time_column: int | None,
) -> tuple[tuple[int, ...], int]:
    """Return the numeric columns, likely ones first, and how many are equally likely."""
    ranks = {}
    for column in range(width):
        numeric = _share(rows, column, "N")
        if column == time_column or not numeric or _share(rows, column, "SDHEx") > 0.5:
            continue
        name = columns[column] if column < len(columns) else ""
        cells = [cells[column] for _, cells, kinds in rows if kinds[column : column + 1] == "N"]
        rank = 2 if any(_NUMBER.fullmatch(c) and c[-1:] in "CFcf" for c in cells) else 1
        if _WORDS.search(name):
            rank = 3
        if _NOT_WORDS.search(name):
            rank = 0 if rank < 3 or re.search(r"dew|\btau|alarm|kelvin", name, re.I) else rank
        elif rank == 1 and _counts_up(cells):
            rank = 0
        ranks[column] = rank
    ordered = sorted(ranks, key=lambda column: (-ranks[column], column))
    if not ordered:
        return (), 0
    top = ranks[ordered[0]]
    return tuple(ordered), sum(rank == top for rank in ranks.values())


def _counts_up(cells: list[str]) -> bool:
    """Return whether a column only numbers its lines."""
    if len(cells) < 3 or not all(cell.isdecimal() for cell in cells):
        return False
    return all(int(after) == int(before) + 1 for before, after in pairwise(cells))
