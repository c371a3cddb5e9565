"""What the model takes for the air: holds, lines, nights, gaps and the outlook."""

from __future__ import annotations

from datetime import datetime
from itertools import pairwise
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from helpers.records import DAY_LONG
from rackboard.core.bench import Heating, Source
from rackboard.core.cure.calibration import calibrate
from rackboard.core.cure.forecast import complete, milestones
from rackboard.core.cure.record import (
    Air,
    Low,
    Point,
    Stretch,
    before_first,
    between,
    clip,
    closed_stretches,
    hold_end,
    outlook,
)
from rackboard.core.cure.run import Bond, Run
from rackboard.core.instants import DAY_US, HOUR_US, MINUTE_US, from_datetime
from rackboard.core.schedule import DEFAULT_WEEK, OpeningHours

BERLIN = ZoneInfo("Europe/Berlin")
HOURS = OpeningHours(DEFAULT_WEEK, BERLIN)
NEVER_OPEN = OpeningHours((None,) * 7, BERLIN)
AIR = Air(HOURS)
HEATED = Air(HOURS, Heating(450, 1080, 12_000))  # from 07:30, falls to 12 °C
TYPED, RACK, FEED = Source.TYPED, Source.TYPED_AT_RACK, Source.FEED

Rows = list[tuple[str, str, tuple[float, float], tuple[float, float], tuple[float, float]]]


def at(text: str) -> int:
    """Return the instant of a local time, "03-11 08:00"."""
    return from_datetime(datetime.fromisoformat(f"2026-{text}").replace(tzinfo=BERLIN))


def point(text: str, celsius: float, source: Source = TYPED, u: float = 1.0) -> Point:
    return Point(at(text), round(celsius * 1000), round(u * 1000), source)


def low(start: str, end: str, celsius: float, u: float = 1.0) -> Low:
    return Low(at(start), at(end), round(celsius * 1000), round(u * 1000))


def celsius(line: tuple[float, float]) -> tuple[float, float]:
    return round(line[0] - 273.15, 3), round(line[1] - 273.15, 3)


def told(stretches: list[Stretch] | tuple[Stretch, ...]) -> Rows:
    """Return stretches as local times and °C: expected, late, early."""
    rows = []
    for s in stretches:
        start, end = (HOURS.local(t).strftime("%m-%d %H:%M") for t in s[:2])
        rows.append((start, end, *(celsius(line) for line in s[2:5])))
    return rows


# --- typed temperatures -----------------------------------------------------------------------


@pytest.mark.parametrize(
    ("typed", "until"),
    [
        ("03-11 09:00", "03-11 13:00"),  # four hours
        ("03-11 16:00", "03-11 18:00"),  # closing comes first
        ("03-11 17:59", "03-11 18:00"),
        ("03-11 06:30", "03-11 10:30"),  # just before opening: of the day
        ("03-11 06:00", "03-11 10:00"),
        ("03-11 05:59", "03-11 05:59"),  # in the night it stands for nothing
        ("03-11 22:00", "03-11 22:00"),
        ("03-14 12:00", "03-14 12:00"),  # on a Saturday neither
    ],
)
def test_hold_of_a_typed_temperature(typed: str, until: str) -> None:
    assert hold_end(point(typed, 20), AIR) == at(until)
    assert hold_end(point(typed, 20, RACK), AIR) == at(until)
    assert hold_end(point(typed, 20, FEED), AIR) == at(typed)
    assert hold_end(point(typed, 20, Source.IMPORTED), AIR) == at(typed)


def test_a_hold_ends_at_the_next_reading() -> None:
    rows = told(between(point("03-11 09:00", 20), point("03-11 11:00", 22), AIR))
    assert rows == [("03-11 09:00", "03-11 11:00", (20, 20), (19, 19), (21, 21))]


def test_what_is_left_up_to_two_hours_is_a_straight_line() -> None:
    rows = told(between(point("03-11 09:00", 20), point("03-11 15:00", 22), AIR))
    assert rows == [
        ("03-11 09:00", "03-11 13:00", (20, 20), (19, 19), (21, 21)),
        ("03-11 13:00", "03-11 15:00", (20, 22), (19, 21), (21, 23)),
    ]


def test_what_is_left_over_two_hours_is_a_gap() -> None:
    found = between(point("03-11 09:00", 20), point("03-11 15:01", 22), AIR)
    assert [(s.still, s.gap) for s in found] == [(False, False), (True, True)]
    # by day the schedule's setback answers nothing
    assert between(point("03-11 09:00", 20), point("03-11 15:01", 22), HEATED)[-1].gap


def test_never_twenty_one_degrees_all_night() -> None:
    """Typed at 21 °C at four, heating off at six: the late bound stands still from closing."""
    found = between(point("03-11 16:00", 21), point("03-12 08:05", 14), AIR)
    assert told(found)[1][:3] == ("03-11 18:00", "03-12 08:05", (21, 21))
    assert (found[1].still, found[1].gap) == (True, True)
    assert celsius(found[1].early) == (24, 24)  # the warmer end and 3 °C


# --- automatic readings -----------------------------------------------------------------------


def test_automatic_readings_are_joined_straight_with_the_left_ones_uncertainty() -> None:
    left, right = point("03-11 20:00", 18, FEED, 1), point("03-11 22:00", 16, FEED, 3)
    assert told(between(left, right, AIR)) == [
        ("03-11 20:00", "03-11 22:00", (18, 16), (17, 15), (19, 17))
    ]


def test_between_two_sources_the_larger_uncertainty() -> None:
    left, right = point("03-11 20:00", 18, FEED, 1), point("03-11 21:00", 16, TYPED, 3)
    assert told(between(left, right, AIR))[0][3:] == ((15, 13), (21, 19))
    left, right = point("03-11 16:00", 18, TYPED, 3), point("03-11 19:00", 16, FEED, 1)
    assert told(between(left, right, AIR))[1][3:] == ((15, 13), (21, 19))


def test_an_open_gap_of_an_automatic_record() -> None:
    left, right = point("03-11 20:00", 18, FEED), point("03-11 22:01", 21, FEED)
    for air in (AIR, HEATED):  # the schedule does not bridge it
        (gap,) = between(left, right, air)
        assert (gap.still, gap.gap) == (True, True)
        assert (celsius(gap.expected), celsius(gap.early)) == ((18, 18), (24, 24))


def test_a_bridged_gap_without_a_schedule() -> None:
    """The low from the first quarter to the last; late the low less its u throughout."""
    air = Air(HOURS, None, (low("03-11 20:00", "03-12 04:00", 15),))
    left, right = point("03-11 20:00", 18, FEED), point("03-12 04:00", 20, FEED)
    late, early = (14, 14), (23, 23)
    assert told(between(left, right, air)) == [
        ("03-11 20:00", "03-11 22:00", (18, 15), late, early),
        ("03-11 22:00", "03-12 02:00", (15, 15), late, early),
        ("03-12 02:00", "03-12 04:00", (15, 20), late, early),
    ]


def test_a_bridged_gap_with_a_schedule_ends_when_the_heating_is_back() -> None:
    air = Air(HOURS, Heating(450, 1080, 12_000), (low("03-11 22:00", "03-12 10:00", 13),))
    left, right = point("03-11 22:00", 18, FEED), point("03-12 10:00", 20, FEED)
    rows = told(between(left, right, air))
    assert [r[:3] for r in rows] == [
        ("03-11 22:00", "03-12 01:00", (18, 13)),
        ("03-12 01:00", "03-12 07:30", (13, 13)),
        ("03-12 07:30", "03-12 10:00", (13, 20)),
    ]


def test_the_newest_answer_counts() -> None:
    lows = (low("03-11 20:00", "03-12 04:00", 15), low("03-11 20:00", "03-12 04:00", 11))
    left, right = point("03-11 20:00", 18, FEED), point("03-12 04:00", 20, FEED)
    found = between(left, right, Air(HOURS, None, lows))
    assert celsius(found[0].late) == (10, 10)
    other = Air(HOURS, None, (low("03-09 20:00", "03-10 04:00", 15),))
    assert between(left, right, other)[0].gap


# --- nights -----------------------------------------------------------------------------------


def test_a_night_with_its_low_from_a_min_max_thermometer() -> None:
    air = Air(HOURS, None, (low("03-11 18:00", "03-12 08:00", 13, 1),))
    found = between(point("03-11 16:00", 21), point("03-12 10:00", 19), air)
    late, early = (12, 12), (24, 24)
    assert told(found) == [
        ("03-11 16:00", "03-11 18:00", (21, 21), (20, 20), (22, 22)),
        ("03-11 18:00", "03-11 21:30", (21, 13), late, early),  # a quarter of 14 h
        ("03-11 21:30", "03-12 09:00", (13, 13), late, early),  # to 09:00 without a schedule
        ("03-12 09:00", "03-12 10:00", (13, 19), late, early),
    ]
    assert not any(s.gap or s.still for s in found)


def test_a_low_typed_ahead_is_less_sure() -> None:
    air = Air(HOURS, None, (low("03-11 18:00", "03-12 08:00", 13, 3),))
    found = between(point("03-11 16:00", 21), point("03-12 08:00", 14), air)
    assert celsius(found[-1].late) == (10, 10)


def test_a_morning_reading_before_the_heating_is_back_ends_the_low() -> None:
    air = Air(HOURS, None, (low("03-11 18:00", "03-12 08:00", 13),))
    found = between(point("03-11 16:00", 21), point("03-12 08:05", 14), air)
    assert told(found)[-1][:3] == ("03-11 21:30", "03-12 08:05", (13, 13))


def test_the_setback_of_the_schedule_is_a_low_with_three_degrees() -> None:
    found = between(point("03-11 16:00", 21), point("03-12 08:30", 20), HEATED)
    assert [r[:4] for r in told(found)][1:] == [
        ("03-11 18:00", "03-11 21:30", (21, 12), (9, 9)),
        ("03-11 21:30", "03-12 07:30", (12, 12), (9, 9)),
        ("03-12 07:30", "03-12 08:30", (12, 20), (9, 9)),
    ]


def test_an_answer_wins_over_the_setback() -> None:
    air = Air(HOURS, HEATED.heating, (low("03-11 18:00", "03-12 08:00", 15),))
    found = between(point("03-11 16:00", 21), point("03-12 08:30", 20), air)
    assert celsius(found[-1].late) == (14, 14)


def test_a_closed_weekend_is_one_night_with_a_fall_of_six_hours() -> None:
    air = Air(HOURS, None, (low("03-13 18:00", "03-16 08:00", 8),))
    found = between(point("03-13 16:00", 21), point("03-16 09:30", 18), air)
    assert [r[:3] for r in told(found)] == [
        ("03-13 16:00", "03-13 18:00", (21, 21)),
        ("03-13 18:00", "03-14 00:00", (21, 8)),
        ("03-14 00:00", "03-16 09:00", (8, 8)),
        ("03-16 09:00", "03-16 09:30", (8, 18)),
    ]


@pytest.mark.parametrize(("friday", "hours"), [("03-27", 61), ("10-23", 63)])
def test_a_weekend_in_which_the_clocks_change(friday: str, hours: int) -> None:
    month, day = friday.split("-")
    monday = f"{month}-{int(day) + 3}"
    left, right = point(f"{friday} 17:00", 21), point(f"{monday} 08:00", 15)
    found = between(left, right, HEATED)
    assert found[0].end_us == at(f"{friday} 18:00")
    assert found[1].end_us - found[1].start_us == 6 * HOUR_US
    assert found[-1].end_us - found[1].start_us == hours * HOUR_US
    assert found[-1].start_us == at(f"{monday} 07:30")


def test_a_night_begins_at_the_reading_where_the_hold_is_over() -> None:
    """Typed after closing it stands for an instant: the night falls from there."""
    air = Air(HOURS, None, (low("03-11 18:00", "03-12 08:00", 13),))
    found = between(point("03-11 20:00", 18), point("03-12 08:00", 14), air)
    assert told(found)[0][:3] == ("03-11 20:00", "03-11 23:00", (18, 13))


def test_a_shop_that_never_opens() -> None:
    air = Air(NEVER_OPEN, Heating(450, 1080, 12_000))
    left, right = point("03-11 12:00", 20), point("03-11 15:00", 20)
    assert between(left, right, air)[0].gap
    answered = Air(NEVER_OPEN, None, (low("03-11 12:00", "03-11 15:00", 17),))
    assert told(between(left, right, answered))[0][3] == (16, 16)
    ahead = list(outlook(left, air, left.at_us + 60 * DAY_US))
    assert [s.still for s in ahead] == [True]
    assert ahead[0].end_us == left.at_us + 60 * DAY_US


def test_before_the_first_reading() -> None:
    first = point("03-11 10:00", 20)
    assert before_first(at("03-11 08:00"), first, AIR)[2:] == (
        (293.15, 293.15), (292.15, 292.15), (294.15, 294.15), False, False,
    )  # fmt: skip
    long = before_first(at("03-11 07:59"), first, AIR)
    assert (long.still, long.gap) == (True, True)


# --- outlook ----------------------------------------------------------------------------------


def test_outlook_without_a_low_stands_still_late_while_closed() -> None:
    ahead = list(outlook(point("03-11 16:00", 20), AIR, at("03-13 12:00")))
    assert [(*r[:3], s.still, s.gap) for r, s in zip(told(ahead), ahead, strict=True)] == [
        ("03-11 16:00", "03-11 18:00", (20, 20), False, False),
        ("03-11 18:00", "03-12 08:00", (20, 20), True, False),
        ("03-12 08:00", "03-12 18:00", (20, 20), False, False),
        ("03-12 18:00", "03-13 08:00", (20, 20), True, False),
        ("03-13 08:00", "03-13 12:00", (20, 20), False, False),
    ]


def test_outlook_goes_on_in_open_hours_past_the_hold() -> None:
    ahead = list(outlook(point("03-11 09:00", 20), AIR, at("03-11 17:00")))
    assert [r[:3] for r in told(ahead)] == [
        ("03-11 09:00", "03-11 13:00", (20, 20)),
        ("03-11 13:00", "03-11 17:00", (20, 20)),
    ]
    assert not any(s.still for s in ahead)


def test_outlook_with_a_setback_recovers_in_two_hours() -> None:
    ahead = told(list(outlook(point("03-11 17:00", 20), HEATED, at("03-12 12:00"))))
    assert [r[:4] for r in ahead] == [
        ("03-11 17:00", "03-11 18:00", (20, 20), (19, 19)),
        ("03-11 18:00", "03-11 21:30", (20, 12), (9, 9)),
        ("03-11 21:30", "03-12 07:30", (12, 12), (9, 9)),
        ("03-12 07:30", "03-12 08:00", (12, 14), (9, 9)),
        ("03-12 08:00", "03-12 09:30", (14, 20), (9, 9)),
        ("03-12 09:30", "03-12 12:00", (20, 20), (19, 19)),
    ]
    assert ahead[1][4] == (23, 23)


def test_outlook_with_a_low_typed_ahead_for_one_night() -> None:
    air = Air(HOURS, None, (low("03-11 18:00", "03-12 08:00", 13, 3),))
    ahead = list(outlook(point("03-11 17:00", 20), air, at("03-13 10:00")))
    rows = {r[0]: (r[2], r[3]) for r in told(ahead)}
    assert rows["03-11 21:30"] == ((13, 13), (10, 10))
    assert rows["03-12 09:00"] == ((13, 20), (10, 10))
    still = [s for s in ahead if s.still]
    assert [told([s])[0][:2] for s in still] == [("03-12 18:00", "03-13 08:00")]


def test_outlook_from_the_middle_of_a_night() -> None:
    ahead = told(list(outlook(point("03-12 00:00", 16, FEED), HEATED, at("03-12 08:00"))))
    assert [r[:3] for r in ahead] == [
        ("03-12 00:00", "03-12 02:00", (16, 12)),
        ("03-12 02:00", "03-12 07:30", (12, 12)),
        ("03-12 07:30", "03-12 08:00", (12, 13)),
    ]


@pytest.mark.parametrize("air", [AIR, HEATED])
@pytest.mark.parametrize("friday", ["03-27", "10-23"])
def test_outlook_over_a_change_of_the_clocks_has_no_hole(air: Air, friday: str) -> None:
    last = point(f"{friday} 17:00", 20)
    ahead = list(outlook(last, air, last.at_us + 60 * DAY_US))
    assert ahead[0].start_us == last.at_us
    assert ahead[-1].end_us == last.at_us + 60 * DAY_US
    for left, right in pairwise(ahead):
        assert left.end_us == right.start_us
    opening = air.hours.next_opening(at(f"{friday} 18:00"))
    assert opening is not None
    assert any(s.start_us == opening for s in ahead)


def test_a_closed_stretch_moves_the_late_time_and_not_the_expected_one() -> None:
    """Glued at 16:00 on a Friday with nothing known of the weekend: Monday at the earliest."""
    model = calibrate(DAY_LONG)
    last = point("03-13 16:00", 25)
    found = {}
    for name, air in (("known", Air(OpeningHours(((0, 1440),) * 7, BERLIN))), ("shop", AIR)):
        run = Run(Bond(model), last.at_us)
        complete(run, outlook(last, air, last.at_us + 60 * DAY_US))
        found[name] = milestones(run)
    known, shop = found["known"], found["shop"]
    assert known.full_cure.expected is not None
    assert shop.full_cure.expected == pytest.approx(known.full_cure.expected, rel=0, abs=1000)
    assert known.full_cure.late is not None
    assert known.full_cure.late < at("03-15 00:00")
    assert shop.full_cure.late is not None
    assert shop.full_cure.late > at("03-16 08:00")
    assert shop.gap_us is None


def test_a_gap_is_remembered_and_the_late_bound_stands_still_across_it() -> None:
    model = calibrate(DAY_LONG)
    points = [point("03-11 08:00", 25, FEED), point("03-11 10:00", 25, FEED),
              point("03-11 20:00", 25, FEED), point("03-11 22:00", 25, FEED)]  # fmt: skip
    run = Run(Bond(model), points[0].at_us)
    for stretch in closed_stretches(points, AIR):
        run.advance(stretch)
    assert run.gap_us == at("03-11 10:00")
    whole = Run(Bond(model), points[0].at_us)
    middle = points[1]
    without = [points[0], middle, middle._replace(at_us=middle.at_us + 2 * HOUR_US)]
    for stretch in closed_stretches(without, AIR):
        whole.advance(stretch)
    late = run.curves.late_full.value
    assert late == pytest.approx(whole.curves.late_full.value, rel=1e-6)  # four hours' worth
    assert run.curves.expected.value > 2 * late


# --- any record -------------------------------------------------------------------------------

readings = st.lists(
    st.tuples(
        st.integers(at("03-20 00:00") // MINUTE_US, at("04-02 00:00") // MINUTE_US),
        st.integers(0, 30_000),
        st.sampled_from([0, 1000, 3000]),
        st.sampled_from(list(Source)),
    ),
    min_size=2,
    max_size=8,
    unique_by=lambda row: row[0],
)


@given(readings, st.sampled_from([AIR, HEATED, Air(NEVER_OPEN)]), st.integers(0, 25_000))
def test_stretches_fill_the_record_in_order(
    rows: list[tuple[int, int, int, Source]], air: Air, low_mc: int
) -> None:
    """No hole, no overlap; late ≤ expected; without a low early is the warmest."""
    points = sorted(Point(t * MINUTE_US, mc, u, source) for t, mc, u, source in rows)
    answered = Air(air.hours, air.heating, (Low(points[0].at_us, points[-1].at_us, low_mc, 1000),))
    for with_low in (air, answered):
        found = list(closed_stretches(points, with_low))
        assert found[0].start_us == points[0].at_us
        assert found[-1].end_us == points[-1].at_us
        for left, right in pairwise(found):
            assert left.end_us == right.start_us
        for s in found:
            assert s.start_us < s.end_us
            assert all(a <= b for a, b in zip(s.expected, s.early, strict=True))
            if not s.still and with_low is air and air is not HEATED:
                assert all(a <= b for a, b in zip(s.late, s.expected, strict=True))
        again = [s for pair in pairwise(points) for s in between(*pair, with_low)]
        assert again == found


@given(st.integers(0, 10**10), st.integers(1, 10**11), st.floats(0, 1), st.floats(0, 1))
def test_clip(start: int, width: int, one: float, other: float) -> None:
    whole = Stretch(start, start + width, (280.0, 300.0), (279.0, 299.0), (281.0, 281.0))
    a, b = sorted((start + int(one * width), start + int(other * width)))
    part = clip(whole, a, b)
    assert clip(whole, start - 5, start + width + 5) is whole
    if a == b:
        assert part is None
        return
    assert part is not None
    assert part[:2] == (a, b)
    assert part.expected[0] == pytest.approx(280 + 20 * (a - start) / width)
    assert part.late[1] == pytest.approx(279 + 20 * (b - start) / width)
    assert part.early == (281.0, 281.0)
