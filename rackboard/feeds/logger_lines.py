"""The lines of a logger's file, read by settled answers into readings and what was left out."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from rackboard.core.temperature import HIGHEST_MC, LOWEST_MC, Unit, is_power_on_value
from rackboard.core.text import text
from rackboard.feeds.stamps import DateOrder, LocalClock, StampReader
from rackboard.feeds.table import Table, number, split

if TYPE_CHECKING:
    from collections.abc import Iterator

    from rackboard.core.instants import Instant

LISTED = 1000
"""So many skipped lines and conflicts are listed; all are counted."""
_TEXT_CHARS = 120

NO_TIME = text("Logger", "no time that can be read")
NO_OFFSET = text("Logger", "a time without a zone")
SKIPPED_HOUR = text("Logger", "an hour that the clock skipped (summer time began)")
TWICE = text(
    "Logger", "an hour that happened twice (summer time ended): which one, the file does not say"
)  # fmt: skip
TOO_FEW = text("Logger", "fewer fields than the chosen columns")
TOO_MANY = text("Logger", "more fields than the header")
EMPTY = text("Logger", "no temperature")
NO_NUMBER = text("Logger", "not a number")
NO_UNIT = text("Logger", "no unit")
OUT_OF_RANGE = text("Logger", "outside −40…120 °C")
POWER_ON = text("Logger", "85.000 °C: a sensor that has not measured yet")


@dataclass(frozen=True, slots=True)
class Answers:
    """What a person chose; None leaves it to the file. Columns count from 0.

    `zone` is a zone's name or a fixed offset for times that carry none; `decimal` is "."
    or ","; a `header_line` of 0 says that there is none.
    """

    encoding: str | None = None
    delimiter: str | None = None
    decimal: str | None = None
    header_line: int | None = None
    time_column: int | None = None
    clock_column: int | None = None
    temperature_column: int | None = None
    unit: Unit | None = None
    date_order: DateOrder | None = None
    zone: str | None = None


class Skipped(NamedTuple):
    """A line that was not taken, and why."""

    line_no: int
    reason: str
    text: str


class Conflict(NamedTuple):
    """A second, different temperature [m°C] for an instant [µs UTC]; the first is kept."""

    line_no: int
    at_us: Instant
    kept_mc: int
    other_mc: int


@dataclass(frozen=True, slots=True)
class Import:
    """What a file holds. `lines` = readings + merged + skipped_count + conflict_count.

    `readings` are (µs UTC, m°C), strictly ascending. `merged` counts equal readings of one
    instant, `out_of_order` the lines that were put in their place; a file that runs
    backwards as a whole is `newest_first`. `reasons` counts the skipped lines by reason.
    """

    readings: list[tuple[Instant, int]]
    skipped: list[Skipped]
    conflicts: list[Conflict]
    reasons: dict[str, int]
    lines: int
    merged: int
    skipped_count: int
    conflict_count: int
    out_of_order: int
    newest_first: bool


class Line(NamedTuple):
    """A line with a time and a temperature; without an offset [µs] its time is local."""

    line_no: int
    text: str
    local_us: int
    offset_us: int | None
    temperature_mc: int


class LineReader:
    """Reads the lines of one table by settled answers."""

    def __init__(self, table: Table, settled: Answers, offset_in_file: bool) -> None:
        self.table = table
        self.settled = settled
        self.offset_in_file = offset_in_file
        self._stamps = StampReader(settled.date_order)
        self._temperatures: dict[str, int | str] = {}
        self._width = len(table.columns) if table.header_line else 0
        columns = (settled.time_column, settled.clock_column, settled.temperature_column)
        self.needed = max(column for column in columns if column is not None) + 1

    def stamp_text(self, cells: list[str]) -> str:
        """Return the text of a line's date and clock time."""
        settled = self.settled
        assert settled.time_column is not None
        if settled.clock_column is None:
            return cells[settled.time_column]
        return f"{cells[settled.time_column]} {cells[settled.clock_column]}"

    def line(self, line_no: int, text: str) -> Line | str:
        """Return what a line says, or why it can't be taken."""
        cells = split(text, self.table.delimiter)
        if len(cells) < self.needed:
            return TOO_FEW
        if self._width and len(cells) > self._width and any(cells[self._width :]):
            return TOO_MANY
        stamp = self._stamps.read(self.stamp_text(cells))
        if stamp is None:
            return NO_TIME
        assert self.settled.temperature_column is not None
        cell = cells[self.settled.temperature_column]
        temperature = self._temperatures.get(cell)
        if temperature is None:
            temperature = self._temperatures[cell] = self._temperature(cell)
        if isinstance(temperature, str):
            return temperature
        return Line(line_no, text, *stamp, temperature)

    def _temperature(self, cell: str) -> int | str:
        if not cell or set(cell) <= {"-", "\N{EN DASH}", "\N{EM DASH}"}:
            return EMPTY
        found = number(cell, self.settled.decimal)
        if found is None:
            return NO_NUMBER
        value, unit = found
        unit = unit or self.settled.unit
        if unit is None:
            return NO_UNIT
        if unit is Unit.F:
            value = (value - 32) / 1.8
        if not LOWEST_MC <= value * 1000 <= HIGHEST_MC:
            return OUT_OF_RANGE
        temperature_mc = round(value * 1000)
        return POWER_ON if is_power_on_value(temperature_mc) else temperature_mc


class _Ledger:
    """Counts what is not taken."""

    def __init__(self) -> None:
        self.skipped: list[Skipped] = []
        self.reasons: Counter[str] = Counter()

    def skip(self, line_no: int, reason: str, text: str) -> None:
        self.reasons[reason] += 1
        if len(self.skipped) < LISTED:
            self.skipped.append(Skipped(line_no, reason, text[:_TEXT_CHARS]))


def import_lines(
    reader: LineReader, clock: LocalClock | None, numbered: list[tuple[int, str]]
) -> Import:
    """Read all lines of a table.

    Parameters
    ----------
    reader : LineReader
        The table and the settled answers.
    clock : LocalClock or None
        For times without an offset; None if there are none.
    numbered : list of (int, str)
        Line numbers and lines.

    Returns
    -------
    Import
        Every line is in it: as a reading, merged, skipped or as a conflict.
    """
    ledger = _Ledger()
    taken: list[Line] = []
    for line_no, written in numbered:
        line = reader.line(line_no, written)
        if isinstance(line, str):
            ledger.skip(line_no, line, written)
        else:
            taken.append(line)
    steps = [b.local_us - a.local_us for a, b in pairwise(taken)]
    newest_first = sum(step < 0 for step in steps) > sum(step > 0 for step in steps)
    if newest_first:
        taken.reverse()
    stamped = list(_instants(taken, clock, ledger))
    out_of_order = sum(b[0] < a[0] for a, b in pairwise(stamped))
    stamped.sort()
    readings: list[tuple[Instant, int]] = []
    conflicts: list[Conflict] = []
    merged = conflict_count = 0
    for at_us, line_no, temperature_mc in stamped:
        if not readings or readings[-1][0] != at_us:
            readings.append((at_us, temperature_mc))
        elif readings[-1][1] == temperature_mc:
            merged += 1
        else:
            conflict_count += 1
            if len(conflicts) < LISTED:
                conflicts.append(Conflict(line_no, at_us, readings[-1][1], temperature_mc))
    ledger.skipped.sort()
    return Import(
        readings,
        ledger.skipped,
        conflicts,
        dict(ledger.reasons),
        len(numbered),
        merged,
        sum(ledger.reasons.values()),
        conflict_count,
        out_of_order,
        newest_first,
    )


def _instants(
    taken: list[Line], clock: LocalClock | None, ledger: _Ledger
) -> Iterator[tuple[Instant, int, int]]:
    """Yield instant, line number and temperature of each line whose instant is known."""
    twice: list[tuple[Line, Instant, Instant]] = []
    for line in taken:
        if line.offset_us is not None:
            first = second = line.local_us - line.offset_us
        elif clock is None:
            ledger.skip(line.line_no, NO_OFFSET, line.text)
            continue
        else:
            first, second = clock.instants(line.local_us)
        if second > first:
            twice.append((line, first, second))
            continue
        if twice:
            yield from _settled(twice, ledger)
            twice = []
        if second < first:
            ledger.skip(line.line_no, SKIPPED_HOUR, line.text)
        else:
            yield first, line.line_no, line.temperature_mc
    yield from _settled(twice, ledger)


def _settled(
    twice: list[tuple[Line, Instant, Instant]], ledger: _Ledger
) -> Iterator[tuple[Instant, int, int]]:
    """Yield the lines of an hour that happened twice, if one step back shows the turn.

    Without a step back the hour is there once, and nothing says which of the two it is.
    """
    pairs = list(enumerate(pairwise(twice), 1))
    turns = [index for index, (a, b) in pairs if b[0].local_us < a[0].local_us]
    if not turns:
        turns = [
            index
            for index, (a, b) in pairs
            if b[0].local_us == a[0].local_us and b[0].temperature_mc != a[0].temperature_mc
        ]
    for index, (line, first, second) in enumerate(twice):
        if len(turns) == 1:
            yield (first if index < turns[0] else second), line.line_no, line.temperature_mc
        else:
            ledger.skip(line.line_no, TWICE, line.text)
