"""The record of the prompt: taken whole, or refused at its first bad line."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rackboard.core.errors import InputError
from rackboard.core.instants import HOUR_US, to_datetime
from rackboard.feeds.strict_csv import read_strict

HEAD = "time,temperature_c\n"
FIRST = "2026-03-11T09:00:00+01:00,21.5\n"
AT_US = 1_773_216_000_000_000


@pytest.mark.parametrize(
    "text",
    [
        HEAD + FIRST,
        HEAD.replace("\n", "\r\n") + FIRST.replace("\n", "\r\n"),
        "\ufeff" + HEAD + FIRST,
        HEAD + FIRST.strip(),
        HEAD + FIRST + "\n\n",
        HEAD + FIRST + FIRST,
        HEAD + FIRST + "2026-03-11T08:00:00Z,21.500\n",
        HEAD + '"2026-03-11T09:00:00+01:00","21.5"\n',
        HEAD + "2026-03-11T09:00+01:00,+2.15e1\n",
    ],
)
def test_taken(text: str) -> None:
    assert read_strict(text.encode(), "r.csv") == [(AT_US, 21_500)]


def test_limits_are_taken() -> None:
    data = (HEAD + "2026-03-11T08:00Z,-40\n2026-03-11T09:00Z,120.0\n").encode()
    assert read_strict(data, "r.csv") == [(AT_US, -40_000), (AT_US + HOUR_US, 120_000)]


@pytest.mark.parametrize(
    ("text", "where", "said"),
    [
        ("", "r.csv", "header time,temperature_c, got an empty file"),
        ("\n" + HEAD, "r.csv, line 1", "got nothing"),
        ("Time,Temp\n" + FIRST, "r.csv, line 1", "got Time,Temp"),
        ("time;temperature_c\n", "r.csv, line 1", "the header"),
        ("temperature_c,time\n", "r.csv, line 1", "the header"),
        (FIRST, "r.csv, line 1", "the header"),
        (HEAD, "r.csv", "at least one reading"),
        (HEAD + "\n\n", "r.csv", "at least one reading"),
        (HEAD + FIRST + "\n" + FIRST, "r.csv, line 3", "got an empty line"),
        (HEAD + FIRST + "2026-03-11T10:00:00+01:00\n", "r.csv, line 3", "two fields"),
        (HEAD + "2026-03-11T10:00:00+01:00,21,5\n", "r.csv, line 2", "two fields"),
        (HEAD + "yesterday,21\n", "r.csv, line 2", "ISO 8601"),
        (HEAD + "2026-03-11T10:00:00,21\n", "r.csv, line 2", "no offset"),
        (HEAD + "2026-03-11,21\n", "r.csv, line 2", "no offset"),
        (HEAD + "2026-02-30T10:00:00Z,21\n", "r.csv, line 2", "ISO 8601"),
        (HEAD + "0001-01-01T00:00:00+14:00,21\n", "r.csv, line 2", "ISO 8601"),
        (HEAD + "1969-12-31T23:59:59Z,21\n", "r.csv, line 2", "from 1970 to 2199"),
        (HEAD + "2200-01-01T00:00:00Z,21\n", "r.csv, line 2", "from 1970 to 2199"),
        (HEAD + "2026-03-11T10:00:00Z,warm\n", "r.csv, line 2", "got warm"),
        (HEAD + "2026-03-11T10:00:00Z,\n", "r.csv, line 2", "got nothing"),
        (HEAD + "2026-03-11T10:00:00Z,NaN\n", "r.csv, line 2", "got NaN"),
        (HEAD + "2026-03-11T10:00:00Z,inf\n", "r.csv, line 2", "got inf"),
        (HEAD + "2026-03-11T10:00:00Z,1_0\n", "r.csv, line 2", "got 1_0"),
        (HEAD + "2026-03-11T10:00:00Z,٢١\n", "r.csv, line 2", "such as 21.5"),
        (HEAD + "2026-03-11T10:00:00Z,21 C\n", "r.csv, line 2", "got 21 C"),
        (HEAD + "2026-03-11T10:00:00Z,1e999\n", "r.csv, line 2", "−40 to 120"),
        (HEAD + "2026-03-11T10:00:00Z,-40.1\n", "r.csv, line 2", "−40 to 120"),
        (HEAD + "2026-03-11T10:00:00Z,120.1\n", "r.csv, line 2", "−40 to 120"),
        (HEAD + "2026-03-11T10:00:00Z,85.000\n", "r.csv, line 2", "before it has measured"),
        (HEAD + FIRST + "2026-03-11T07:59:59Z,21\n", "r.csv, line 3", "which is earlier"),
        (HEAD + FIRST + "2026-03-11T08:00Z,21.6\n", "r.csv, line 3", "21.5 and 21.6 °C"),
        (HEAD + '2026-03-11T10:00:00Z,"21\n', "r.csv, line 2", "no CSV"),
    ],
)
def test_refused(text: str, where: str, said: str) -> None:
    with pytest.raises(InputError) as refusal:
        read_strict(text.encode(), "r.csv")
    assert refusal.value.where == where
    assert said in str(refusal.value)


def test_other_encodings_are_refused_at_their_line() -> None:
    with pytest.raises(InputError) as refusal:
        read_strict((HEAD + FIRST + "Größe\n").encode("cp1252"), "r.csv")
    assert refusal.value.where == "r.csv, line 3"
    assert refusal.value.wanted == "text in UTF-8"


@given(
    st.lists(
        st.tuples(st.integers(0, 4_000_000_000), st.integers(-40_000, 120_000)),
        min_size=1,
        unique_by=lambda reading: reading[0],
    )
)
def test_what_is_written_reads_the_same(readings: list[tuple[int, int]]) -> None:
    record = [(s * 1_000_000, mc) for s, mc in sorted(readings) if mc != 85_000]
    lines = [f"{to_datetime(at).isoformat()},{mc / 1000}\n" for at, mc in record]
    data = (HEAD + "".join(lines)).encode()
    if record:
        assert read_strict(data, "r.csv") == record


@given(st.binary(max_size=200) | st.text(max_size=200).map(lambda t: (HEAD + t).encode()))
def test_any_bytes_are_taken_or_refused(data: bytes) -> None:
    try:
        assert read_strict(data, "r.csv")
    except InputError:
        return
