"""Moments as people type them: read without guessing, or refused."""

from __future__ import annotations

from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rackboard.core.errors import InputError
from rackboard.core.instants import HOUR_US, MINUTE_US, parse_iso
from rackboard.core.schedule import DEFAULT_WEEK, OpeningHours
from rackboard.core.spoken_time import format_moment, parse_moment

HOURS = OpeningHours(DEFAULT_WEEK, ZoneInfo("Europe/Berlin"))
TUESDAY = parse_iso("2026-03-10T15:45+01:00", "test")


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("15:40", "2026-03-10T15:40"),
        (" 15:40 ", "2026-03-10T15:40"),
        ("15h40", "2026-03-10T15:40"),
        ("1540", "2026-03-10T15:40"),
        ("940", "2026-03-10T09:40"),
        ("0110", "2026-03-10T01:10"),
        ("15:50", "2026-03-10T15:50"),  # the clock on the wall may be 5 min ahead
        ("3:40 pm", "2026-03-10T15:40"),
        ("3pm", "2026-03-10T15:00"),
        ("12 am", "2026-03-10T00:00"),
        ("12:05 p.m.", "2026-03-10T12:05"),
        ("noon", "2026-03-10T12:00"),
        ("now", "2026-03-10T15:45"),
        ("5 min ago", "2026-03-10T15:40"),
        ("a minute ago", "2026-03-10T15:44"),
        ("40 minutes ago", "2026-03-10T15:05"),
        ("half an hour ago", "2026-03-10T15:15"),
        ("1 h 20 min ago", "2026-03-10T14:25"),
        ("1h20m ago", "2026-03-10T14:25"),
        ("an hour ago", "2026-03-10T14:45"),
        ("today 9:00", "2026-03-10T09:00"),
        ("yesterday 17:00", "2026-03-09T17:00"),
        ("yesterday, at 17:00", "2026-03-09T17:00"),
        ("Mon 15:40", "2026-03-09T15:40"),
        ("Monday 1540", "2026-03-09T15:40"),
        ("tues 15:40", "2026-03-10T15:40"),
        ("Tue 16:40", "2026-03-03T16:40"),  # today's is still to come
        ("Wed 10:00", "2026-03-04T10:00"),
        ("Mon at closing", "2026-03-09T18:00"),
        ("2026-03-09 08:05", "2026-03-09T08:05"),
        ("2026-03-09T08:05", "2026-03-09T08:05"),
        ("9 March 08:05", "2026-03-09T08:05"),
        ("Mar 9 08:05", "2026-03-09T08:05"),
        ("Mon 9 Mar 8:05", "2026-03-09T08:05"),
        ("24 Dec 10:00", "2025-12-24T10:00"),
    ],
)
def test_a_mixing_time_is_read(text: str, meant: str) -> None:
    assert parse_moment(text, TUESDAY, HOURS, False, "mixed at") == parse_iso(
        f"{meant}+01:00", "test"
    )


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("17:00", "2026-03-10T17:00+01:00"),
        ("in 20 min", "2026-03-10T16:05+01:00"),
        ("tomorrow 08:00", "2026-03-11T08:00+01:00"),
        ("Sat 08:00", "2026-03-14T08:00+01:00"),
        ("Tue 15:00", "2026-03-17T15:00+01:00"),  # today's is over
        ("Fri at opening", "2026-03-13T08:00+01:00"),
        ("2026-03-14 08:00", "2026-03-14T08:00+01:00"),
        ("14 March 08:00", "2026-03-14T08:00+01:00"),
        ("2 Apr 09:00", "2026-04-02T09:00+02:00"),
        ("3 Jan 09:00", "2027-01-03T09:00+01:00"),
    ],
)
def test_a_promise_is_read(text: str, meant: str) -> None:
    assert parse_moment(text, TUESDAY, HOURS, True, "promised") == parse_iso(meant, "test")


@pytest.mark.parametrize(
    "text",
    [
        "", "  ", "soon", "9", "15", "25:10", "15:61", "2460", "0 pm", "13 pm", "15:4", "15;40",
        "15.40", "3.4. 08:00", "3/4 08:00", "03-04 08:00", "03/04/2026 08:00", "4.3.2026 8:00",
        "2026-02-30 08:00", "2026-03-09", "Monday", "5 ago", "ago", "min ago", "in 6 min",
        "15:51", "tomorrow 08:00", "Sun at opening", "Tue 9 March 08:05", "9 Marche 08:05",
        "Mix 15:40", "1926-03-09 08:00", "15:40 16:40", "-5 min ago", "9" * 80,
    ],
)  # fmt: skip
def test_a_mixing_time_that_would_have_to_be_guessed_is_refused(text: str) -> None:
    with pytest.raises(InputError) as refused:
        parse_moment(text, TUESDAY, HOURS, False, "mixed at")
    assert str(refused.value).startswith("mixed at: wanted a")


@pytest.mark.parametrize("text", ["15:40", "5 min ago", "yesterday 17:00", "2026-03-10 15:45"])
def test_a_promise_in_the_past_is_refused(text: str) -> None:
    with pytest.raises(InputError, match="still to come"):
        parse_moment(text, TUESDAY, HOURS, True, "promised")


def test_an_hour_that_the_clocks_skipped_is_refused() -> None:
    now = parse_iso("2026-03-29T12:00+02:00", "test")
    with pytest.raises(InputError, match="skip"):
        parse_moment("02:30", now, HOURS, False, "mixed at")


def test_of_an_hour_that_comes_twice_the_later_one_counts() -> None:
    now = parse_iso("2026-10-25T12:00+01:00", "test")
    assert parse_moment("02:30", now, HOURS, False, "x") == parse_iso("2026-10-25T02:30+01:00", "x")
    between = parse_iso("2026-10-25T02:40+02:00", "test")
    first = parse_iso("2026-10-25T02:30+02:00", "test")
    assert parse_moment("02:30", between, HOURS, False, "x") == first


@given(st.integers(min_value=0, max_value=60 * 24 * 300))
def test_what_is_shown_can_be_typed(minutes: int) -> None:
    at_us = TUESDAY - minutes * MINUTE_US
    shown = format_moment(at_us, TUESDAY, HOURS)
    back = parse_moment(shown, TUESDAY, HOURS, False, "mixed at")
    assert back == at_us or abs(back - at_us) == HOUR_US  # the hour that comes twice


@given(st.text(max_size=30))
def test_any_other_text_is_read_or_refused(text: str) -> None:
    try:
        parse_moment(text, TUESDAY, HOURS, False, "mixed at")
    except InputError as refused:
        assert "mixed at: wanted a" in str(refused)
