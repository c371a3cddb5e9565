"""A logger's file while its program writes, rotates, cuts and rewrites it."""

from __future__ import annotations

import os
import random
from datetime import UTC, datetime
from pathlib import Path

import pytest

from rackboard.core.feed import FaultKind, Polled, Sample
from rackboard.core.instants import MINUTE_US, SECOND_US, Instant, from_datetime, to_datetime
from rackboard.feeds.csv_watch import MOST_BYTES, CsvWatch
from rackboard.feeds.live import layout_of, settled_of
from rackboard.feeds.logger_csv import preview

HEAD = "Time;Temperature (°C)\n"
T0: Instant = from_datetime(datetime(2026, 3, 9, 8, tzinfo=UTC))


def line(minute: int, mc: int | None = None) -> str:
    at = to_datetime(T0 + minute * MINUTE_US)
    celsius = (20_000 + minute % 50 * 100 if mc is None else mc) / 1000
    return f"{at:%Y-%m-%d %H:%M:%S};{celsius:.3f}\n"


def lines(first: int, last: int) -> str:
    return "".join(line(minute) for minute in range(first, last))


def watch(path: Path, after: Instant = 0, zone: str = "UTC", content: bytes = b"") -> CsvWatch:
    """Watch a file by the layout that its preview finds."""
    shown = preview(content or (HEAD + lines(0, 5)).encode(), default_zone=zone)
    settled, columns = settled_of(layout_of(shown))
    return CsvWatch(path, settled, columns, after)


def minutes(polled: Polled) -> list[int]:
    return [(sample.at_us - T0) // MINUTE_US for sample in polled.samples]


def add(path: Path, content: str) -> None:
    with path.open("a", encoding="utf-8", newline="") as file:
        file.write(content)


def test_only_what_is_appended_is_read(tmp_path: Path) -> None:
    path = tmp_path / "room.csv"
    add(path, HEAD + lines(0, 3))
    feed = watch(path)
    assert minutes(feed.poll(T0)) == [0, 1, 2]
    assert feed.poll(T0).samples == ()
    add(path, line(3))
    assert feed.poll(T0).samples == (Sample(T0 + 3 * MINUTE_US, 20_300),)


def test_half_a_line_waits_for_its_other_half(tmp_path: Path) -> None:
    path = tmp_path / "room.csv"
    add(path, HEAD[:7])
    feed = watch(path)
    for half in (HEAD[7:], line(0)[:-4], line(0)[-4:-1]):
        assert feed.poll(T0) == Polled()
        add(path, half)
    assert feed.poll(T0).samples == ()
    add(path, "\r\n")
    assert minutes(feed.poll(T0)) == [0]


def test_a_carriage_return_alone_may_be_half_of_a_line_end(tmp_path: Path) -> None:
    path = tmp_path / "room.csv"
    add(path, HEAD + line(0)[:-1] + "\r")
    feed = watch(path)
    assert feed.poll(T0).samples == ()
    add(path, "\n" + line(1)[:-1] + "\r")
    assert minutes(feed.poll(T0)) == [0]


def test_a_renamed_file_is_read_to_its_end_before_the_new_one(tmp_path: Path) -> None:
    path = tmp_path / "room.csv"
    add(path, HEAD + lines(0, 3))
    feed = watch(path)
    feed.poll(T0)
    add(path, lines(3, 5))
    path.rename(tmp_path / "room.csv.1")
    between = feed.poll(T0)
    assert between == Polled(), "a file that is just being changed is no trouble yet"
    add(path, HEAD + line(5))
    assert minutes(feed.poll(T0)) == [3, 4, 5]
    add(tmp_path / "room.csv.1", line(6))  # its writer still holds it open
    add(path, line(7))
    assert minutes(feed.poll(T0 + MINUTE_US)) == [6, 7]


def test_a_file_that_is_copied_away_and_cut_loses_nothing(tmp_path: Path) -> None:
    path = tmp_path / "room.csv"
    add(path, HEAD + lines(0, 3))
    feed = watch(path)
    feed.poll(T0)
    add(path, lines(3, 5))
    (tmp_path / "room-old.csv").write_bytes(path.read_bytes())
    with path.open("w") as file:
        file.truncate()
    add(path, HEAD + lines(5, 40))  # longer than before: only its text tells
    assert minutes(feed.poll(T0)) == [3, 4, *range(5, 40)]


def test_a_file_written_anew_each_time_goes_on_where_it_was(tmp_path: Path) -> None:
    path = tmp_path / "room.csv"
    add(path, HEAD + lines(0, 300))
    feed = watch(path)
    assert len(feed.poll(T0).samples) == 300
    fresh = tmp_path / "room.tmp"
    add(fresh, HEAD + lines(0, 301))
    fresh.replace(path)
    assert minutes(feed.poll(T0)) == [300]


def test_what_the_record_has_is_not_read_again_after_a_restart(tmp_path: Path) -> None:
    path = tmp_path / "room.csv"
    add(tmp_path / "room.csv.1", HEAD + lines(0, 9000))
    add(path, HEAD + lines(9000, 30_000))
    feed = watch(path, after=T0 + 29_990 * MINUTE_US)
    assert minutes(feed.poll(T0)) == list(range(29_991, 30_000))
    aside = watch(path, after=T0 + 8_990 * MINUTE_US)
    first = aside.poll(T0)
    assert minutes(first)[:11] == list(range(8_991, 9_002))
    assert first.again
    while first.again:
        first = aside.poll(T0)
    assert minutes(first)[-1] == 29_999


def test_a_long_file_is_read_in_pieces(tmp_path: Path) -> None:
    path = tmp_path / "room.csv"
    add(path, HEAD + lines(0, 20_000))
    feed = watch(path)
    got: list[int] = []
    polls = 0
    while True:
        polled = feed.poll(T0)
        got += minutes(polled)
        polls += 1
        if not polled.again:
            break
    assert got == list(range(20_000))
    assert polls == pytest.approx(path.stat().st_size / MOST_BYTES, abs=2)


def test_a_missing_file_is_named_and_waited_for(tmp_path: Path) -> None:
    path = tmp_path / "room.csv"
    feed = watch(path)
    polled = feed.poll(T0)
    assert [(f.kind, f.since_us) for f in polled.faults] == [(FaultKind.MISSING, T0)]
    assert "room.csv" in polled.faults[0].said
    add(path, HEAD + line(0))
    later = feed.poll(T0 + MINUTE_US)
    assert minutes(later) == [0]
    assert [(f.kind, f.until_us) for f in later.faults] == [(FaultKind.MISSING, T0 + MINUTE_US)]


def test_other_columns_are_named_and_not_guessed_at(tmp_path: Path) -> None:
    path = tmp_path / "room.csv"
    add(path, HEAD + line(0))
    feed = watch(path)
    feed.poll(T0)
    path.unlink()
    add(path, "Time;Humidity (%);Temperature (°C)\n2026-03-09 08:01:00;51;20.0\n")
    polled = feed.poll(T0)
    assert polled.samples == ()
    assert [fault.kind for fault in polled.faults] == [FaultKind.COLUMNS]


def test_a_line_that_cannot_be_read_is_named_and_a_header_again_is_not(tmp_path: Path) -> None:
    path = tmp_path / "room.csv"
    add(path, HEAD + line(0) + HEAD + line(1))
    feed = watch(path)
    assert feed.poll(T0).faults == ()
    add(path, "2026-03-09 08:02:00;---\n")
    bad = feed.poll(T0)
    assert [fault.kind for fault in bad.faults] == [FaultKind.UNREADABLE]
    add(path, line(3))
    good = feed.poll(T0 + MINUTE_US)
    assert [fault.until_us for fault in good.faults] == [T0 + MINUTE_US]
    assert minutes(good) == [3]


def test_a_power_on_value_is_handed_on_to_who_knows_its_neighbours(tmp_path: Path) -> None:
    path = tmp_path / "room.csv"
    add(path, HEAD + line(0, 85_000))
    assert watch(path).poll(T0).samples == (Sample(T0, 85_000),)


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_letters_are_read_as_the_preview_found_them(tmp_path: Path, encoding: str) -> None:
    path = tmp_path / "room.csv"
    content = (HEAD + lines(0, 5)).encode(encoding)
    path.write_bytes(content)
    feed = watch(path, content=content)
    assert minutes(feed.poll(T0)) == [0, 1, 2, 3, 4]
    more = line(5).encode("utf-16-le" if encoding == "utf-16" else encoding.removesuffix("-sig"))
    with path.open("ab") as file:
        file.write(more[:-1])
    assert feed.poll(T0).samples == ()
    with path.open("ab") as file:
        file.write(more[-1:])
    assert minutes(feed.poll(T0)) == [5]


def test_the_hour_that_happens_twice_is_told_by_when_it_is_written(tmp_path: Path) -> None:
    path = tmp_path / "room.csv"
    add(path, HEAD)
    feed = watch(path, zone="Europe/Berlin")
    feed.poll(T0)
    began = from_datetime(datetime(2026, 10, 25, 0, 0, tzinfo=UTC))  # 02:00 for the first time
    got: list[Instant] = []
    for step in range(0, 130, 10):
        now = began + step * MINUTE_US
        local = ["02", "02", "03"][step // 60]
        add(path, f"2026-10-25 {local}:{step % 60:02d}:00;20.000\n")
        got += [sample.at_us for sample in feed.poll(now).samples]
    assert got == [began + step * MINUTE_US for step in range(0, 130, 10)]


def test_the_hour_that_happens_twice_is_told_by_the_lines_before(tmp_path: Path) -> None:
    path = tmp_path / "room.csv"
    began = from_datetime(datetime(2026, 10, 24, 23, 50, tzinfo=UTC))
    clocks = ["01:50", "02:00", "02:30", "02:50", "02:00", "02:30", "03:00"]
    add(path, HEAD + "".join(f"2026-10-25 {clock}:00;20.000\n" for clock in clocks))
    got = [s.at_us for s in watch(path, zone="Europe/Berlin").poll(began + 10**12).samples]
    assert got == [began + minute * MINUTE_US for minute in (0, 10, 40, 60, 70, 100, 130)]


def test_in_the_hour_that_happens_twice_a_restart_goes_on_behind_the_record(
    tmp_path: Path,
) -> None:
    path = tmp_path / "room.csv"
    last = from_datetime(datetime(2026, 10, 24, 23, 58, tzinfo=UTC))
    add(path, f"{HEAD}2026-10-25 01:58:00;20.000\n2026-10-25 02:05:00;20.000\n")
    feed = watch(path, after=last, zone="Europe/Berlin")
    assert [s.at_us for s in feed.poll(last + 10 * MINUTE_US).samples] == [last + 7 * MINUTE_US]


def test_lines_may_end_with_a_carriage_return_alone(tmp_path: Path) -> None:
    path = tmp_path / "room.csv"
    add(path, (HEAD + lines(0, 4)).replace("\n", "\r"))
    feed = watch(path)
    assert minutes(feed.poll(T0)) == [0, 1, 2], "the last may be half of a line end"
    add(path, line(4).replace("\n", "\r"))
    assert minutes(feed.poll(T0)) == [3]


def test_two_changes_of_file_between_two_polls(tmp_path: Path) -> None:
    path = tmp_path / "room.csv"
    add(path, HEAD + lines(0, 3))
    feed = watch(path)
    feed.poll(T0)
    add(path, line(3))
    path.rename(tmp_path / "room.csv.2")
    add(path, HEAD + line(4))
    path.rename(tmp_path / "room.csv.1")
    add(path, HEAD + line(5))
    for age, name in enumerate(("room.csv", "room.csv.1", "room.csv.2")):
        os.utime(tmp_path / name, ns=((T0 * 1000 + (9 - age) * 10**9,) * 2))
    assert minutes(feed.poll(T0)) == [3, 4, 5]


@pytest.mark.parametrize("seed", range(20))
def test_a_writer_without_mercy_loses_nothing_and_nothing_comes_twice(
    tmp_path: Path, seed: int
) -> None:
    rng = random.Random(seed)
    path = tmp_path / "room.csv"
    add(path, HEAD)
    feed = watch(path)
    got: list[int] = []
    written = rotated = 0
    polled, seen = False, False
    rest = ""
    for _ in range(150):
        for _ in range(rng.randint(0, 4)):
            rest += line(written)
            written += 1
        cut = rng.randint(0, len(rest))
        add(path, rest[:cut])
        rest = rest[cut:]
        act = rng.random()
        if act < 0.1 and polled:
            add(path, rest)
            rest = ""
            rotated += 1
            # Cut back to the very text that was seen last, a file shows nothing of it.
            if rng.random() < 0.5 or not seen:
                path.rename(tmp_path / f"room.csv.{rotated}")
                add(path, HEAD)
            else:
                copy = tmp_path / f"room_{rotated}.csv"
                copy.write_bytes(path.read_bytes())
                os.utime(copy, ns=(10**18 * 2 + rotated,) * 2)  # files are made too fast here
                path.write_text(HEAD, encoding="utf-8")
        elif act < 0.2:
            fresh = tmp_path / "other.tmp"
            fresh.write_bytes(path.read_bytes())
            fresh.replace(path)
        polled = rng.random() < 0.6
        if polled:
            got += minutes(feed.poll(T0 + SECOND_US))
            seen = path.read_text(encoding="utf-8").count("\n") > 1
    add(path, rest)
    got += minutes(feed.poll(T0 + SECOND_US))
    assert len(got) == len(set(got)), "read twice"
    assert sorted(got) == list(range(written))
    assert rotated > 0
