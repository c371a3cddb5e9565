"""Dates, clock times, offsets and the two turns of the clock."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from rackboard.core.errors import InputError
from rackboard.core.instants import HOUR_US, MINUTE_US, from_datetime
from rackboard.feeds.stamps import (
    DateOrder,
    LocalClock,
    StampReader,
    guess_order,
    named_zone_in,
    zone_named,
)

YMD, DMY, MDY = DateOrder.YMD, DateOrder.DMY, DateOrder.MDY


def us(*parts: int) -> int:
    return from_datetime(datetime(*parts, tzinfo=UTC))  # type: ignore[misc,arg-type]


@pytest.mark.parametrize(
    ("cell", "order", "local_us", "offset_us"),
    [
        ("2026-03-11T09:10:00Z", None, us(2026, 3, 11, 9, 10), 0),
        ("2026-03-11 09:10", None, us(2026, 3, 11, 9, 10), None),
        ("2026/3/1 9:10:05", None, us(2026, 3, 1, 9, 10, 5), None),
        ("2026-03-11T09:10:00.25+01:00", None, us(2026, 3, 11, 9, 10, 0, 250_000), HOUR_US),
        ("2026-03-11 09:10:00 -0330", None, us(2026, 3, 11, 9, 10), -210 * MINUTE_US),
        ("2026-03-11 09:10 UTC", None, us(2026, 3, 11, 9, 10), 0),
        ("2026-03-11 09:10 GMT+2", None, us(2026, 3, 11, 9, 10), 2 * HOUR_US),
        ("11.03.2026 09:10", DMY, us(2026, 3, 11, 9, 10), None),
        ("11.3.26, 09:10", DMY, us(2026, 3, 11, 9, 10), None),
        ("03/11/2026 12:10 AM", MDY, us(2026, 3, 11, 0, 10), None),
        ("03/11/26 12:10:00 PM", MDY, us(2026, 3, 11, 12, 10), None),
        ("03/11/26 1:10 p.m.", MDY, us(2026, 3, 11, 13, 10), None),
        ("26-03-11 01:10", YMD, us(2026, 3, 11, 1, 10), None),
        ("1773220200", None, us(2026, 3, 11, 9, 10), 0),
        ("1773220200250", None, us(2026, 3, 11, 9, 10, 0, 250_000), 0),
    ],
)
def test_read(cell: str, order: DateOrder | None, local_us: int, offset_us: int | None) -> None:
    assert StampReader(order).read(cell) == (local_us, offset_us)


@pytest.mark.parametrize(
    "cell",
    [
        "",
        "21.4",
        "21.4.",
        "2026-03-11",
        "09:10",
        "2026-02-30 09:10",
        "2026-13-01 09:10",
        "2026-03-11 24:00",
        "2026-03-11 09:60",
        "2026-03-11 09:10:60",
        "2026-03-11 13:10 PM",
        "2026-03-11 0:10 AM",
        "2026-03/11 09:10",
        "1969-12-31 23:59",
        "2200-01-01 00:00",
        "31/31/2026 10:00",
        "111/1/2026 10:00",
        "٢٠٢٦-03-11 09:10",
    ],
)
def test_no_time(cell: str) -> None:
    assert StampReader(DMY).read(cell) is None


@pytest.mark.parametrize(
    ("dates", "order"),
    [
        (["2026-03-04", "2026-03-05"], YMD),
        (["04.03.2026"], DMY),
        (["04.03.26"], DMY),
        (["03/04/2026", "12/04/2026"], None),
        (["03/04/2026", "13/04/2026"], DMY),
        (["04/03/2026", "04/13/2026"], MDY),
        (["03-04-2026"], None),
        (["04/03/26", "04/13/26"], MDY),
        (["13/04/26", "14/04/26"], DMY),
        (["13/04/26"], None),  # 13 April 2026 or 26 April 2013
        (["26/04/13", "26/04/14", "26/04/15"], None),
        (["26/04/30", "26/05/01"], None),
        ([], None),
        (["99/99/2026"], None),
    ],
)
def test_order(dates: list[str], order: DateOrder | None) -> None:
    assert guess_order(dates) is order


@pytest.mark.parametrize(
    ("header", "zone"),
    [
        ("time (UTC)", "UTC"),
        ("Date Time, GMT-05:00", "GMT-05:00"),
        ("Zeit [UTC +01:00]", "UTC+01:00"),
        ("Time (+01:00)", "+01:00"),
        ("Time", None),
        ("Computcount", None),
    ],
)
def test_header_zone(header: str, zone: str | None) -> None:
    assert named_zone_in(header) == zone
    if zone:
        zone_named(zone, "x")


@pytest.mark.parametrize("name", ["", "Berlin", "Europe", "../etc/passwd", "/x", "UTC+99", "a\0b"])
def test_no_such_zone(name: str) -> None:
    with pytest.raises(InputError, match="a time zone such as Europe/Berlin"):
        zone_named(name, "the form")


def test_turns_of_the_clock() -> None:
    clock = LocalClock(zone_named("Europe/Berlin", "x"))
    plain = us(2026, 3, 29, 1, 59)
    assert clock.instants(plain) == (plain - HOUR_US, plain - HOUR_US)
    first, second = clock.instants(us(2026, 3, 29, 2, 30))
    assert first > second
    first, second = clock.instants(us(2026, 10, 25, 2, 30))
    assert (first, second) == (us(2026, 10, 25, 0, 30), us(2026, 10, 25, 1, 30))


def test_turn_within_an_hour() -> None:
    """Lord Howe Island goes back by half an hour: at 02:00 to 01:30."""
    clock = LocalClock(zone_named("Australia/Lord_Howe", "x"))
    first, second = clock.instants(us(2026, 4, 5, 1, 45))
    assert second - first == 30 * MINUTE_US
    first, second = clock.instants(us(2026, 4, 5, 1, 15))
    assert first == second
