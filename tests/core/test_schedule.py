"""Opening hours in local time, over the days when the clocks change."""

from __future__ import annotations

import itertools
from datetime import UTC, date, datetime
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rackboard.core.bench import Heating
from rackboard.core.errors import InputError
from rackboard.core.instants import DAY_US, HOUR_US, from_datetime, to_datetime
from rackboard.core.schedule import DEFAULT_WEEK, Hours, OpeningHours

BERLIN = ZoneInfo("Europe/Berlin")
HOURS = OpeningHours(DEFAULT_WEEK, BERLIN)
CLOSED = OpeningHours((None,) * 7, BERLIN)


def local(text: str, fold: int = 0) -> int:
    return from_datetime(datetime.fromisoformat(text).replace(tzinfo=BERLIN, fold=fold))


def utc(text: str) -> int:
    return from_datetime(datetime.fromisoformat(text).replace(tzinfo=UTC))


@pytest.mark.parametrize(
    ("at", "is_open"),
    [
        ("2026-03-11 07:59:59", False), ("2026-03-11 08:00", True),
        ("2026-03-11 17:59:59", True), ("2026-03-11 18:00", False),
        ("2026-03-14 12:00", False), ("2026-03-15 12:00", False), ("2026-03-16 08:00", True),
    ],
)  # fmt: skip
def test_open_from_the_first_instant_to_before_the_last(at: str, is_open: bool) -> None:
    assert HOURS.is_open(local(at)) is is_open


def test_next_opening_and_closing_over_a_weekend() -> None:
    friday = local("2026-03-13 17:00")
    assert HOURS.next_closing(friday) == local("2026-03-13 18:00")
    assert HOURS.next_opening(friday) == local("2026-03-16 08:00")
    assert HOURS.next_closing(local("2026-03-13 18:00")) == local("2026-03-16 18:00")
    assert HOURS.next_opening(local("2026-03-16 08:00")) == local("2026-03-16 08:00")


def test_spring_forward() -> None:
    """Sunday 29 March 2026: 08:00 on Friday is 07:00 UTC, on Monday 06:00 UTC."""
    assert HOURS.next_opening(local("2026-03-27 07:00")) == utc("2026-03-27 07:00")
    assert HOURS.next_opening(local("2026-03-27 18:00")) == utc("2026-03-30 06:00")
    spans = HOURS.open_spans(local("2026-03-27 00:00"), local("2026-03-31 00:00"))
    assert [(b - a) // HOUR_US for a, b in spans] == [10, 10]
    assert spans[1][0] - spans[0][1] == 61 * HOUR_US  # an hour less than any other weekend


def test_autumn_back() -> None:
    """Sunday 25 October 2026: the weekend has an hour more."""
    spans = HOURS.open_spans(local("2026-10-23 00:00"), local("2026-10-27 00:00"))
    assert spans[1][0] - spans[0][1] == 63 * HOUR_US
    assert HOURS.next_opening(local("2026-10-24 12:00")) == utc("2026-10-26 07:00")


def test_open_on_the_day_of_the_change() -> None:
    week: tuple[Hours, ...] = ((480, 1080),) * 7
    hours = OpeningHours(week, BERLIN)
    for day, night_h in (("2026-03-29", 13), ("2026-10-25", 15)):
        opening = local(f"{day} 08:00")
        before = hours.next_closing(opening - DAY_US - 2 * HOUR_US)
        assert before is not None
        assert opening - before == night_h * HOUR_US


def test_hours_inside_the_skipped_hour() -> None:
    """A time skipped in spring moves on; hours turned about by that don't happen."""
    assert HOURS.at(date(2026, 3, 29), 150) == utc("2026-03-29 01:30")
    week: tuple[Hours, ...] = ((165, 195),) * 7
    hours = OpeningHours(week, BERLIN)
    assert hours.next_opening(local("2026-03-29 00:00")) == local("2026-03-30 02:45")
    assert not hours.is_open(utc("2026-03-29 01:20"))


def test_round_the_clock() -> None:
    week: tuple[Hours, ...] = ((0, 1440),) * 7
    hours = OpeningHours(week, BERLIN)
    assert hours.is_open(local("2026-03-11 00:00"))
    assert hours.is_open(local("2026-03-11 23:59:59"))
    assert hours.next_closing(local("2026-03-11 10:00")) == local("2026-03-12 00:00")


def test_a_shop_that_never_opens() -> None:
    now = local("2026-03-11 12:00")
    assert not CLOSED.is_open(now)
    assert CLOSED.next_opening(now) is None
    assert CLOSED.next_closing(now) is None
    assert CLOSED.open_spans(now, now + 10 * DAY_US) == []


def test_heating_back_at_nine_or_by_the_schedule() -> None:
    opening = local("2026-03-30 08:00")
    assert HOURS.heating_back(opening, None) == local("2026-03-30 09:00")
    assert HOURS.heating_back(opening, Heating(390, 1080, 12_000)) == local("2026-03-30 06:30")


@pytest.mark.parametrize(
    ("week", "words"),
    [
        (((480, 1080),) * 6, "wanted seven days, got 6"),
        (((1080, 480),) + (None,) * 6, "wanted a closing hour after the opening hour"),
        (((480, 480),) + (None,) * 6, "wanted a closing hour after the opening hour"),
        (((480, 1441),) + (None,) * 6, "wanted a closing hour after the opening hour"),
    ],
)
def test_refused_weeks(week: tuple[Hours, ...], words: str) -> None:
    with pytest.raises(InputError, match=f"opening hours: {words}"):
        OpeningHours(week, BERLIN)


days = st.one_of(
    st.none(),
    st.tuples(st.integers(0, 1439), st.integers(1, 1440)).filter(lambda d: d[0] < d[1]),
)


@given(st.tuples(*[days] * 7), st.integers(utc("2026-03-20 00:00"), utc("2026-11-05 00:00")))
def test_the_answers_agree(week: tuple[Hours, ...], now: int) -> None:
    hours = OpeningHours(week, BERLIN)
    opening, closing = hours.next_opening(now), hours.next_closing(now)
    assert opening is None or (opening >= now and hours.is_open(opening))
    assert closing is None or (closing > now and hours.is_open(closing - 1))
    if hours.is_open(now):
        assert closing is not None
        assert closing <= now + DAY_US
    spans = hours.open_spans(now, now + 9 * DAY_US)
    assert all(a < b for a, b in spans)
    assert all(b0 <= a1 for (_, b0), (a1, _) in itertools.pairwise(spans))
    for a, b in spans:
        assert hours.is_open(a)
        assert hours.is_open(b - 1)
        assert to_datetime(a).astimezone(BERLIN).date() == hours.local(b - 1).date()
