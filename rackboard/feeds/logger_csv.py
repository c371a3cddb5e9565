"""A logger's CSV: guessed, shown, asked about, then read with every bad line counted.

`preview` says what was guessed and which questions are open; `read` takes the answers.
Both are functions of bytes; `load` alone touches a file.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import TYPE_CHECKING, NamedTuple

from rackboard.core.errors import InputError
from rackboard.core.text import text
from rackboard.feeds.encoding import decode, load
from rackboard.feeds.logger_lines import (
    Answers,
    Conflict,
    Import,
    LineReader,
    Skipped,
    import_lines,
)
from rackboard.feeds.stamps import (
    DateOrder,
    LocalClock,
    StampReader,
    date_of,
    guess_order,
    named_zone_in,
    zone_named,
)
from rackboard.feeds.table import Table, number, read_table, split

if TYPE_CHECKING:
    from rackboard.core.instants import Instant
    from rackboard.core.temperature import Unit

__all__ = [
    "Answers",
    "Conflict",
    "DateOrder",
    "Import",
    "Preview",
    "PreviewRow",
    "Question",
    "Skipped",
    "load",
    "preview",
    "read",
]

PREVIEW_ROWS = 8
THE_FILE = text("Logger", "the file")
_SAMPLE = 300


class Question(StrEnum):
    """What the file does not say and a person must."""

    TIME_COLUMN = "time column"
    TEMPERATURE_COLUMN = "temperature column"
    UNIT = "unit"
    DATE_ORDER = "date order"
    ZONE = "zone"


class PreviewRow(NamedTuple):
    """One of the first lines: its cells and what they were read as, None where they weren't."""

    line_no: int
    cells: tuple[str, ...]
    at_us: Instant | None
    temperature_mc: int | None
    reason: str | None


@dataclass(frozen=True, slots=True)
class Preview:
    """What was found in a file.

    `settled` holds every answer and every guess that needs no answer; hand it to `read`.
    To change one, preview again with the person's own answers alone: the guesses hang
    together (another column may have another unit). `found` is None while a question is
    open; the rows then show the first of the likely columns.
    """

    settled: Answers
    columns: tuple[str, ...]
    temperature_columns: tuple[int, ...]
    offset_in_file: bool
    open_questions: tuple[Question, ...]
    rows: tuple[PreviewRow, ...]
    lines: int
    found: Import | None

    @property
    def date_order(self) -> DateOrder | None:
        """The order of day and month; None: it needs an answer."""
        return self.settled.date_order

    @property
    def unit(self) -> Unit | None:
        """The unit; None: it needs an answer."""
        return self.settled.unit


def preview(
    data: bytes,
    answers: Answers | None = None,
    *,
    default_zone: str | None = None,
    where: str = THE_FILE,
) -> Preview:
    """Guess how a logger's file is to be read, and say what must be asked.

    Parameters
    ----------
    data : bytes
        The file, up to 64 MB.
    answers : Answers, optional
        What a person chose so far; it wins over every guess.
    default_zone : str, optional
        The shop's zone, for times that carry no offset in a file that names none.
    where : str
        The file's name, for errors.

    Returns
    -------
    Preview
        With the first eight lines read as far as they can be.

    Raises
    ------
    InputError
        If it is no table of times and temperatures, or an answer makes no sense.
    """
    return _preview(data, answers or Answers(), default_zone, where)


def read(
    data: bytes,
    answers: Answers | None = None,
    *,
    default_zone: str | None = None,
    where: str = THE_FILE,
) -> Import:
    """Read a logger's file; bad lines are skipped and counted.

    Parameters
    ----------
    data : bytes
        The file, up to 64 MB.
    answers : Answers, optional
        Usually `Preview.settled`.
    default_zone : str, optional
        As for `preview`.
    where : str
        The file's name, for errors.

    Returns
    -------
    Import
        Readings in order, and what was not taken.

    Raises
    ------
    InputError
        If a question is still open, or as for `preview`.
    """
    shown = _preview(data, answers or Answers(), default_zone, where)
    if shown.found is None:
        wanted = text("Logger", "an answer: {questions}").format(
            questions=", ".join(shown.open_questions)
        )
        raise InputError(wanted, text("Logger", "none"), where)
    return shown.found


def _preview(data: bytes, answers: Answers, default_zone: str | None, where: str) -> Preview:
    content, encoding = decode(data, where, answers.encoding)
    table = read_table(content, where, answers.delimiter, answers.header_line)
    settled = _columns(replace(answers, encoding=encoding), table, where)
    numbered = list(table.rows())
    questions = []
    if settled.time_column is None:
        questions.append(Question.TIME_COLUMN)
    if answers.temperature_column is None and table.hinted != 1:
        questions.append(Question.TEMPERATURE_COLUMN)
    rows: tuple[PreviewRow, ...]
    if settled.time_column is None or settled.temperature_column is None:
        raw = numbered[:PREVIEW_ROWS]
        rows = tuple(
            PreviewRow(no, tuple(split(line, table.delimiter)), None, None, None)
            for no, line in raw
        )
        return Preview(
            settled,
            table.columns,
            table.temperature_columns,
            False,
            tuple(questions),
            rows,
            len(numbered),
            None,
        )
    settled, naive = _guesses(settled, table, numbered, default_zone)
    reader = LineReader(table, settled, not naive)
    if settled.unit is None and not _units_in_cells(reader, numbered):
        questions.append(Question.UNIT)
    if settled.date_order is None:
        questions.append(Question.DATE_ORDER)
    if settled.zone is None and naive:
        questions.append(Question.ZONE)
    clock = LocalClock(zone_named(settled.zone, where)) if settled.zone else None
    if Question.TEMPERATURE_COLUMN in questions:
        settled = replace(
            settled, temperature_column=None, unit=answers.unit, decimal=answers.decimal
        )
    rows = tuple(_row(reader, clock, no, line) for no, line in numbered[:PREVIEW_ROWS])
    found = None if questions else import_lines(reader, clock, numbered)
    return Preview(
        settled,
        table.columns,
        table.temperature_columns,
        not naive,
        tuple(questions),
        rows,
        len(numbered),
        found,
    )


def _columns(answers: Answers, table: Table, where: str) -> Answers:
    """Fill in delimiter, header and columns."""
    width = max(len(table.columns), *(c + 1 for c in (*table.temperature_columns, 0)), 1)
    for column in (answers.time_column, answers.clock_column, answers.temperature_column):
        if column is not None and not 0 <= column < max(width, 1):
            wanted = text("Logger", "a column from 1 to {last}").format(last=width)
            raise InputError(wanted, str(column + 1), where)
    if answers.decimal not in (None, ".", ","):
        wanted = text("Logger", "a point or a comma as the decimal mark")
        raise InputError(wanted, answers.decimal, where)
    own_time = answers.time_column is not None
    temperature = answers.temperature_column
    if temperature is None and table.temperature_columns:
        temperature = table.temperature_columns[0]
    return replace(
        answers,
        delimiter=table.delimiter,
        header_line=table.header_line,
        time_column=answers.time_column if own_time else table.time_column,
        clock_column=answers.clock_column
        if own_time or answers.clock_column is not None
        else table.clock_column,
        temperature_column=temperature,
    )


def _guesses(
    settled: Answers, table: Table, numbered: list[tuple[int, str]], default_zone: str | None
) -> tuple[Answers, bool]:
    """Fill in decimal mark, unit, date order and zone; say whether some times are naive."""
    time, temperature = settled.time_column, settled.temperature_column
    assert time is not None
    assert temperature is not None
    sample = [split(line, table.delimiter) for _, line in numbered[:_SAMPLE]]
    if settled.decimal is None:
        cells = [row[temperature] for row in sample if temperature < len(row)]
        marks = Counter(mark for cell in cells if number(cell) for mark in ".," if mark in cell)
        settled = replace(settled, decimal=marks.most_common(1)[0][0] if marks else ".")
    if settled.unit is None:
        settled = replace(settled, unit=table.unit_hint(temperature))
    if settled.date_order is None:
        dates = {_date_text(line, table.delimiter, time) for _, line in numbered}
        dates.discard(None)
        # A column of seconds since 1970 has no dates, and nothing to ask.
        order = guess_order(date for date in dates if date) if dates else DateOrder.YMD
        settled = replace(settled, date_order=order)
    reader = LineReader(
        table, replace(settled, date_order=settled.date_order or DateOrder.DMY), True
    )
    naive = _some_naive(reader, numbered)
    if settled.zone is None and naive:
        names = table.columns[time : time + 1]
        if settled.clock_column is not None:
            names += table.columns[settled.clock_column : settled.clock_column + 1]
        zone = next((zone for name in names if (zone := named_zone_in(name))), default_zone)
        settled = replace(settled, zone=zone)
    return settled, naive


def _date_text(line: str, delimiter: str, column: int) -> str | None:
    if '"' in line:
        cells = split(line, delimiter)
    else:
        cells = line.split(delimiter, column + 1)
    return date_of(cells[column].strip()) if column < len(cells) else None


def _some_naive(reader: LineReader, numbered: list[tuple[int, str]]) -> bool:
    """Return whether some readings carry no offset; the search ends at the first."""
    stamps = StampReader(reader.settled.date_order)
    for _, line in numbered:
        cells = split(line, reader.table.delimiter)
        if len(cells) < reader.needed:
            continue
        stamp = stamps.read(reader.stamp_text(cells))
        if stamp and stamp[1] is None:
            return True
    return False


def _units_in_cells(reader: LineReader, numbered: list[tuple[int, str]]) -> bool:
    """Return whether the cells themselves name their unit."""
    column = reader.settled.temperature_column
    assert column is not None
    named = 0
    for _, line in numbered[:_SAMPLE]:
        cells = split(line, reader.table.delimiter)
        found = number(cells[column]) if column < len(cells) else None
        if found:
            if found[1] is None:
                return False
            named += 1
    return named > 0


def _row(reader: LineReader, clock: LocalClock | None, line_no: int, text: str) -> PreviewRow:
    cells = tuple(split(text, reader.table.delimiter))
    line = reader.line(line_no, text)
    if isinstance(line, str):
        return PreviewRow(line_no, cells, None, None, line)
    at_us: Instant | None = None
    if line.offset_us is not None:
        at_us = line.local_us - line.offset_us
    elif clock is not None:
        first, second = clock.instants(line.local_us)
        at_us = first if first == second else None
    return PreviewRow(line_no, cells, at_us, line.temperature_mc, None)
