"""Loggers' files: guesses, questions, answers, and every line accounted for."""

from __future__ import annotations

from datetime import UTC, datetime
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rackboard.core.errors import InputError, RackboardError
from rackboard.core.instants import HOUR_US, MINUTE_US, from_datetime
from rackboard.core.temperature import Unit
from rackboard.feeds import encoding, logger_csv, logger_lines
from rackboard.feeds.logger_csv import Answers, DateOrder, Import, Question, preview, read

DATA = Path(__file__).parents[1] / "data"
C, F = Unit.C, Unit.F


def us(*parts: int) -> int:
    return from_datetime(datetime(*parts, tzinfo=UTC))  # type: ignore[misc,arg-type]


AT = us(2026, 3, 13, 9)


def accounted(found: Import) -> bool:
    taken = len(found.readings) + found.merged
    rising = all(a[0] < b[0] for a, b in pairwise(found.readings))
    return rising and taken + found.skipped_count + found.conflict_count == found.lines


def test_real_week() -> None:
    """One week of sea-surface temperatures: UTC with an offset, °C, one gap of 12 h.

    From the Python package bokeh-sampledata 2026.1, which names as its origin NERACOOS
    station B01, dataset B01_sbe37_all; see sea_surface_week.LICENCE.txt.
    """
    data = logger_csv.load(DATA / "sea_surface_week.csv")
    shown = preview(data)
    assert shown.columns == ("time (UTC)", "temperature (celsius)")
    assert shown.unit is C
    assert shown.offset_in_file
    assert shown.open_questions == ()
    assert len(shown.rows) == 8
    assert shown.rows[0][2:] == (us(2016, 7, 6), 16_130, None)
    found = read(data, shown.settled)
    assert found == shown.found
    assert (found.lines, len(found.readings), found.skipped_count) == (314, 314, 0)
    gaps = [(a[0], b[0]) for a, b in pairwise(found.readings) if b[0] - a[0] != 30 * MINUTE_US]
    assert gaps == [(us(2016, 7, 8, 1, 30), us(2016, 7, 8, 13, 30))]
    assert found.readings[-1][0] == us(2016, 7, 13)
    temperatures = [mc for _, mc in found.readings]
    assert (min(temperatures), max(temperatures)) == (15_040, 18_630)


SHAPES = {
    "plain": "time,temp °C\n2026-03-13 09:00,21.5\n",
    "semicolon, decimal comma": "Zeit;Temperatur [°C]\n13.03.2026 09:00;21,5\n",
    "tab": "Time\tTemp (C)\n2026-03-13T09:00:00\t21.5\n",
    "pipe": "Time|temp_c\n2026-03-13 09:00|21.5\n",
    "comma, quoted decimal comma": 'time,"Temp, °C"\n13.03.2026 09:00,"21,5"\n',
    "fahrenheit": "time,temp (°F)\n03/13/2026 09:00:00 AM,70.7\n",
    "two columns of time": "date,time,humidity %,temp C\n13/03/2026,09:00:00,40.1,21.5\n",
    "numbered": '"#","Date Time, GMT+00:00","Temp, °F"\n1,03/13/26 09:00:00 AM,70.7\n',
    "preamble": "Logger,invented\nSerial,1234\n\ntime,temp °C\n2026-03-13 09:00,21.5\n",
    "unit in the cells": "2026-03-13 09:00;21,5 °C\n",
    "trailing delimiter": "time;°C\n2026-03-13 09:00;21,5;\n",
    "seconds since 1970": "stamp,celsius\n1773392400,21.5\n",
    "old line ends": "time,temp °C\r2026-03-13 09:00,21.5\r",
    "dew point beside it": "time,dew point °C,temperature °C\n2026-03-13 09:00,9.1,21.5\n",
}


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("codec", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_shapes(shape: str, codec: str) -> None:
    shown = preview(SHAPES[shape].encode(codec), default_zone="UTC")
    assert shown.open_questions == ()
    assert shown.found is not None
    assert shown.found.readings == [(AT, 21_500)]
    assert shown.rows[0].at_us == AT
    assert accounted(shown.found)


def test_zone_of_the_header_wins_over_the_shop_and_the_answer_over_both() -> None:
    data = b"time (GMT-05:00),temp C\n2026-03-13 09:00,21.5\n"
    assert read(data, default_zone="Europe/Berlin").readings[0][0] == AT + 5 * HOUR_US
    answered = Answers(zone="Europe/Berlin")
    assert read(data, answered).readings[0][0] == AT - HOUR_US


@pytest.mark.parametrize(
    ("text", "question", "answer"),
    [
        ("time,temp\n2026-03-13 09:00Z,21.5\n", Question.UNIT, Answers(unit=C)),
        (
            "time,temp C\n03/12/2026 09:00Z,1\n",
            Question.DATE_ORDER,
            Answers(date_order=DateOrder.DMY),
        ),
        ("time,temp C\n2026-03-13 09:00,21.5\n", Question.ZONE, Answers(zone="UTC")),
        (
            "time,probe 1 °C,probe 2 °C\n2026-03-13 09:00Z,1,21.5\n",
            Question.TEMPERATURE_COLUMN,
            Answers(temperature_column=2),
        ),
    ],
)
def test_open_question(text: str, question: Question, answer: Answers) -> None:
    data = text.encode()
    shown = preview(data)
    assert shown.open_questions == (question,)
    assert shown.found is None
    with pytest.raises(InputError, match=f"wanted an answer: {question}"):
        read(data)
    assert len(read(data, answer).readings) == 1


def test_an_open_column_is_not_settled_by_its_guess() -> None:
    data = b"time,probe 1 (C),probe 2 (F)\n2026-03-13 09:00Z,1,70.7\n"
    shown = preview(data)
    assert shown.temperature_columns == (1, 2)
    assert shown.rows[0].temperature_mc == 1_000
    assert (shown.settled.temperature_column, shown.unit) == (None, None)
    with pytest.raises(InputError, match="temperature column"):
        read(data, shown.settled)
    assert read(data, Answers(temperature_column=2)).readings == [(AT, 21_500)]


def test_date_order_changes_the_instant() -> None:
    data = b"time,temp C\n03/12/2026 09:00Z,21.5\n"
    assert preview(data).date_order is None
    day_first = read(data, Answers(date_order=DateOrder.DMY))
    month_first = read(data, Answers(date_order=DateOrder.MDY))
    assert day_first.readings[0][0] == us(2026, 12, 3, 9)
    assert month_first.readings[0][0] == us(2026, 3, 12, 9)


def test_day_above_twelve_far_down_settles_the_order() -> None:
    lines = [f"0{1 + day // 5}/04/2026 {day % 24:02d}:{day % 60:02d},20" for day in range(40)]
    lines.append("13/04/2026 10:00,20")
    data = "\n".join(["time,temp C", *lines]).encode()
    assert preview(data, default_zone="UTC").date_order is DateOrder.DMY


def test_answer_of_the_other_unit() -> None:
    data = b"time,temp C\n2026-03-13 09:00Z,70.7\n"
    assert read(data, Answers(unit=F)).readings == [(AT, 21_500)]


@pytest.mark.parametrize(
    ("line", "reason"),
    [
        ("2026-03-13 10:00,warm", logger_lines.NO_NUMBER),
        ("2026-03-13 10:00,NaN", logger_lines.NO_NUMBER),
        ("2026-03-13 10:00,inf", logger_lines.NO_NUMBER),
        ("2026-03-13 10:00,1.234.5", logger_lines.NO_NUMBER),
        ("2026-03-13 10:00,", logger_lines.EMPTY),
        ("2026-03-13 10:00,---", logger_lines.EMPTY),
        ("2026-03-13 10:00", logger_lines.TOO_FEW),
        ("2026-03-13 10:00,21,5", logger_lines.TOO_MANY),
        ("2026-03-13 10:00,-40.01", logger_lines.OUT_OF_RANGE),
        ("2026-03-13 10:00,120.01", logger_lines.OUT_OF_RANGE),
        ("2026-03-13 10:00,1e99", logger_lines.OUT_OF_RANGE),
        ("2026-03-13 10:00,85.000", logger_lines.POWER_ON),
        ("2026-03-13 10:00,185 °F", logger_lines.POWER_ON),
        ("2026-02-30 10:00,20", logger_lines.NO_TIME),
        ("yesterday,20", logger_lines.NO_TIME),
        ('"2026-03-13 10:00,20', logger_lines.TOO_FEW),
        ("2026-03-29 02:30,20", logger_lines.SKIPPED_HOUR),
        ("2026-10-25 02:30,20", logger_lines.TWICE),
    ],
)
def test_bad_line_is_skipped_with_its_reason(line: str, reason: str) -> None:
    good = "2026-03-13 09:00,21.5\n2026-03-13 09:05,21.5\n"
    text = f"time,temp °C\n{good}{line}\n2026-03-13 11:00,21.5\n"
    found = read(text.encode(), default_zone="Europe/Berlin")
    assert found.skipped == [(4, reason, line)]
    assert found.reasons == {reason: 1}
    assert len(found.readings) == 3
    assert accounted(found)


def hours(*clock_times: str) -> bytes:
    """Return a record of the night of 25 October 2026, each line of another temperature."""
    lines = [f"2026-10-25 {t},{10 + i / 10}" for i, t in enumerate(clock_times)]
    return "\n".join(["time,temp C", *lines]).encode()


def test_order_of_the_lines_picks_the_fold() -> None:
    times = ("01:30", "02:00", "02:30", "02:00", "02:30", "03:00")
    found = read(hours(*times), default_zone="Europe/Berlin")
    start = us(2026, 10, 24, 23, 30)
    assert [at for at, _ in found.readings] == [start + i * 30 * MINUTE_US for i in range(6)]
    assert [mc for _, mc in found.readings] == [10_000 + 100 * i for i in range(6)]
    backwards = read(hours(*reversed(times)), default_zone="Europe/Berlin")
    assert backwards.newest_first
    assert [at for at, _ in backwards.readings] == [at for at, _ in found.readings]


def test_hourly_record_shows_the_fold_too() -> None:
    found = read(hours("01:00", "02:00", "02:00", "03:00"), default_zone="Europe/Berlin")
    assert [b[0] - a[0] for a, b in pairwise(found.readings)] == [HOUR_US] * 3


@pytest.mark.parametrize(
    "times",
    [
        ("01:30", "02:00", "02:30", "03:00"),
        ("02:30", "02:45", "03:00"),
        ("02:00", "02:30", "02:15", "02:45", "02:20", "03:00"),
    ],
)
def test_doubtful_fold_is_skipped(times: tuple[str, ...]) -> None:
    found = read(hours(*times), default_zone="Europe/Berlin")
    doubtful = sum(t.startswith("02") for t in times)
    assert found.reasons == {logger_lines.TWICE: doubtful}
    assert accounted(found)


def test_equal_readings_merge_and_different_ones_conflict() -> None:
    text = (
        "time,temp C\n2026-03-13 09:00Z,21.5\n2026-03-13 09:00Z,21.50\n"
        "2026-03-13 10:00+01:00,22\n2026-03-13 10:00Z,20\n"
    )
    found = read(text.encode())
    assert found.readings == [(AT, 21_500), (AT + HOUR_US, 20_000)]
    assert found.merged == 1
    assert found.conflicts == [(4, AT, 21_500, 22_000)]
    assert accounted(found)


def test_lines_out_of_order_are_put_in_their_place() -> None:
    times = ("09:00", "10:00", "09:30", "11:00")
    text = "".join(f"2026-03-13 {t}Z,20\n" for t in times)
    found = read(("time,temp C\n" + text).encode())
    assert found.out_of_order == 1
    assert not found.newest_first
    assert [at - AT for at, _ in found.readings] == [0, HOUR_US // 2, HOUR_US, 2 * HOUR_US]


def test_long_lists_are_cut_and_counted() -> None:
    bad = "2026-03-13 09:00Z,broken\n" * 3000
    found = read(("time,temp C\n2026-03-13 09:00Z,20\n" + bad).encode())
    assert len(found.skipped) == logger_lines.LISTED
    assert found.skipped_count == 3000
    assert accounted(found)


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"", "got an empty file"),
        (b" \r\n\t\n", "got an empty file"),
        (b"\xff\xfe", "got an empty file"),
        (b"\xff\xfea", "bytes that are none"),
        (b"PK\x03\x04rest", "a spreadsheet or a zip file"),
        (b"a\x00b,1", "a binary file"),
        (b"hello\n", "a table with times and temperatures, got hello"),
        (b"a,b\n1,2\n", "a table with times and temperatures"),
        (b"date,temp\n2026-03-13,21.5\n", "a table with times and temperatures"),
    ],
)
def test_no_record(data: bytes, said: str) -> None:
    with pytest.raises(InputError) as refusal:
        preview(data, where="log.csv")
    assert str(refusal.value).startswith("log.csv: wanted ")
    assert said in str(refusal.value)


@pytest.mark.parametrize(
    "answers",
    [
        Answers(encoding="klingon"),
        Answers(encoding="ascii"),
        Answers(delimiter=";;"),
        Answers(delimiter='"'),
        Answers(header_line=99),
        Answers(header_line=-1),
        Answers(time_column=7),
        Answers(temperature_column=-1),
        Answers(decimal="x"),
        Answers(zone="Atlantis"),
    ],
)
def test_answer_that_makes_no_sense(answers: Answers) -> None:
    with pytest.raises(InputError):
        preview("time,temp °C\n2026-03-13 09:00,21.5\n".encode(), answers)


def test_too_large_a_file_is_refused(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setattr(encoding, "LARGEST_BYTES", 2 * 1024 * 1024)
    path = tmp_path / "big.csv"
    path.write_bytes(b"1" * (3 * 1024 * 1024))
    with pytest.raises(InputError, match="a file of up to 2 MB, got 3 MB"):
        logger_csv.load(path)
    with pytest.raises(InputError, match="a file of up to 2 MB, got 3 MB"):
        preview(b"1" * (3 * 1024 * 1024))


def test_file_that_cannot_be_read(tmp_path: Path) -> None:
    with pytest.raises(RackboardError, match="there is no such file"):
        logger_csv.load(tmp_path / "none.csv")
    with pytest.raises(RackboardError, match="is a folder"):
        logger_csv.load(tmp_path)
    with pytest.raises(RackboardError, match="can't be read"):
        logger_csv.load(tmp_path / ("x" * 300))


_cells = st.sampled_from(
    [
        "2026-03-13 09:00",
        "13/03/26 9:00 PM",
        "2026-03-13T09:00:00Z",
        "21.5",
        "21,5",
        "70 °F",
        "",
        '"',
        "2026-10-25 02:30",
        "1773392400",
        "NaN",
        "85",
        "temp °C",
        "time",
        "#",
        "٣",
        "-",
    ]
) | st.text(max_size=6)
_tables = st.lists(st.lists(_cells, max_size=4), max_size=8).flatmap(
    lambda rows: st.sampled_from(",;\t|").map(
        lambda mark: "\n".join(mark.join(row) for row in rows).encode()
    )
)
_answers = st.builds(
    Answers,
    header_line=st.none() | st.integers(-1, 4),
    time_column=st.none() | st.integers(-1, 3),
    clock_column=st.none() | st.integers(-1, 3),
    temperature_column=st.none() | st.integers(-1, 3),
    unit=st.none() | st.sampled_from(Unit),
    date_order=st.none() | st.sampled_from(DateOrder),
    zone=st.none() | st.sampled_from(["Europe/Berlin", "UTC+01:00", "America/St_Johns"]),
)


@given(st.binary(max_size=300) | _tables, _answers)
def test_any_bytes_are_read_or_refused_calmly(data: bytes, answers: Answers) -> None:
    try:
        shown = preview(data, answers)
        assert (shown.found is None) is bool(shown.open_questions)
        if shown.found:
            assert accounted(shown.found)
            assert read(data, shown.settled) == shown.found
    except RackboardError as refusal:
        assert refusal.message
