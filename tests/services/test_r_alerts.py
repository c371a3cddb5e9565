"""The checks of the alerts that look at many cases: R07, R11 to R15, R17, R19, R23."""

from __future__ import annotations

import random
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from helpers.alert_room import Room, glued_room
from helpers.shop import PLAIN, at, make_shop
from rackboard.core.alerts.kinds import NATURE, Kind, Sort
from rackboard.core.bench import (
    Batch,
    Club,
    Customer,
    Grant,
    Hold,
    HoldReason,
    Job,
    Joint,
    JointKind,
    Milestone,
    PlaceKind,
)
from rackboard.core.cure.forecast import NEVER, Bounds, Forecast
from rackboard.core.instants import DAY_US, HOUR_US, MINUTE_US, SECOND_US, Instant
from rackboard.core.standing import Outcome, stand
from rackboard.services.agenda import job_standings


def kinds(room: Room) -> list[str]:
    return sorted(alert.kind for alert in room.shop.store.alerts.page(1000))


@pytest.mark.parametrize("step_h", [-1.0, 1.0])
def test_r07_a_stepped_clock_loses_nothing_and_tells_nothing_twice(step_h: float) -> None:
    room, joints = glued_room(clubs=2)
    room.until("Mon 09:00", 25.0)
    room.shop.do(room.shop.bench.disturb(joints[0]))
    room.tick()
    told = [m.key for m in room.courier.messages if m.sound or m.critical]
    room.shop.clock.advance(hours=step_h)
    for _ in range(12):
        room.shop.clock.advance(seconds=10)
        room.tick()
    assert room.the(Kind.DISTURBED).phase == "on, untaken"
    new = [m.key for m in room.courier.messages if m.sound or m.critical][len(told):]
    assert [key for key in new if key != "alarms"] == []
    assert kinds(room).count("disturbed") == 1


def test_r07_eight_hours_asleep_tell_each_thing_once() -> None:
    room, _ = glued_room(clubs=3)
    room.until("Mon 08:30", 25.0)
    room.shop.clock.set("Mon 16:30")
    room.shop.feed([(at("Mon 08:30") + n * 10 * MINUTE_US, 25.0) for n in range(1, 49)])
    room.tick()
    room.tick()
    rows = room.shop.store.alerts.page(100)
    assert len({alert.key for alert in rows}) == len(rows)
    told = [n for t in room.shop.store.alerts.tellings(0) if t.key != "alarms"
            for n in t.alert_ids]  # fmt: skip
    assert len(told) == len(set(told))


def test_r07_over_the_change_to_summer_time_each_thing_is_told_once() -> None:
    zone = ZoneInfo("Europe/Berlin")
    room = Room("Mon 08:00")
    shop = room.shop
    from rackboard.services.board import Board

    shop.board = Board(shop.store, shop.clock, zone)
    shop.clock.set(at("Fri 08:00", weeks=2))  # the clocks change on Sunday, 29 March 2026
    shop.feed([(shop.clock.now() - MINUTE_US, 22.0), (shop.clock.now(), 22.0)])
    room.tick()
    shop.glue(2)
    start = shop.clock.now()
    while shop.clock.now() < start + 4 * DAY_US:
        shop.clock.advance(minutes=10)
        shop.feed([(shop.clock.now(), 22.0)])
        room.tick()
    rows = shop.store.alerts.page(100)
    assert sorted(alert.kind for alert in rows) == ["job safe", "last look", "off the rack"]
    told = [n for t in shop.store.alerts.tellings(0) for n in t.alert_ids]
    assert len(told) == len(set(told))
    opening = {shop.board.snapshot.hours.is_open(t.at_us) for t in shop.store.alerts.tellings(0)}
    assert opening == {True}


def test_r11_cold_by_the_stated_schedule_is_no_alarm() -> None:
    from rackboard.core.bench import Heating

    def run(heating: Heating | None) -> int:
        room, _ = glued_room(clubs=1)
        room.shop.do(room.shop.bench.set_heating(room.shop.room, heating))
        room.until("Mon 14:00", 25.0)
        room.until("Mon 16:00", 10.0)
        return kinds(room).count("cold")

    assert run(Heating(8 * 60, 14 * 60, 10_000)) == 0
    assert run(Heating(8 * 60, 18 * 60, 10_000)) == 1


def test_r11_nor_is_a_cold_zone_in_which_no_printed_time_moves() -> None:
    room, joints = glued_room(clubs=1)
    shop = room.shop
    assert not [a for a in room.open() if a.kind == Kind.COLD]
    shop.do(shop.bench.take_off(shop.standing(joints[0]).club.id, PlaceKind.OUT))
    room.until("Mon 10:00", 10.0)
    assert kinds(room).count("cold") == 0


def test_r12_a_thousand_hours_of_ordinary_noise_raise_no_alarm() -> None:
    """And the glue that lies in them all the time is told of, each milestone once."""
    noise = random.Random(12)
    room = Room("Mon 08:00")
    shop = room.shop
    shop.feed([(at("Mon 07:55"), 21.0), (at("Mon 08:00"), 21.0)])
    room.tick()
    shop.glue(3)
    start = shop.clock.now()
    while shop.clock.now() < start + 1000 * HOUR_US:
        shop.clock.advance(minutes=5)
        shop.feed([(shop.clock.now(), 21.0 + noise.gauss(0, 0.3))])
        if shop.clock.now() % (20 * MINUTE_US) == 0:
            room.tick()
    alarms = [k for k in kinds(room) if NATURE[Kind(k)].sort is Sort.ALARM]
    assert alarms == []
    assert kinds(room) == ["job safe", "last look", "off the rack"]


def test_r13_a_job_of_fourteen_is_told_six_times_in_ten_minutes_at_most() -> None:
    room = Room("Mon 08:00")
    shop = room.shop
    shop.feed([(at("Mon 07:59"), 25.0), (at("Mon 08:00"), 25.0)])
    room.tick()
    kinds_of = [JointKind.SOLID_HEAD, JointKind.HOLLOW_HEAD, JointKind.ADAPTER_SLEEVE]
    for n in range(7):
        shop.glue(2, number="500", kind=kinds_of[n % 3])
        shop.clock.advance(minutes=3)
        room.tick()
    room.until("Mon 18:00", 25.0)
    room.until("Tue 12:00", 25.0)
    tellings = shop.store.alerts.tellings(0)
    for telling in tellings:
        window = [t for t in tellings if telling.at_us - 10 * MINUTE_US < t.at_us <= telling.at_us]
        assert len(window) <= 6
    rows = shop.store.alerts.page(1000)
    assert len(rows) == 7 + 7 + 1
    assert all(alert.told_us is not None or not alert.speaks for alert in rows)


@settings(max_examples=15, deadline=None)
@given(st.lists(st.tuples(st.integers(10, 120), st.integers(5, 75)), min_size=20, max_size=60))
def test_r14_nothing_toggles_three_times_in_a_minute(steps: list[tuple[int, int]]) -> None:
    room, _ = glued_room(clubs=1)
    seen: dict[int, list[tuple[Instant, str]]] = {}
    for seconds, celsius in steps:
        room.shop.clock.advance(seconds=seconds)
        room.shop.feed([(room.shop.clock.now(), float(celsius))])
        room.tick()
        for alert in room.shop.store.alerts.page(50):
            changes = seen.setdefault(alert.id, [])
            if not changes or changes[-1][1] != alert.phase:
                changes.append((room.shop.clock.now(), alert.phase))
    for changes in seen.values():
        for first, last in zip(changes, changes[3:], strict=False):
            assert last[0] - first[0] > 60 * SECOND_US


def test_r15_a_place_that_never_held_the_joint_says_nothing_of_it() -> None:
    room = Room("Mon 08:00")
    shop = room.shop
    shop.feed([(at("Mon 07:59"), 25.0), (at("Mon 08:00"), 25.0)])
    shop.feed([(at("Mon 08:00"), 25.0)], box=True)
    room.tick()
    shop.glue(2)
    for _ in range(60):
        shop.clock.advance(minutes=1)
        shop.feed([(shop.clock.now(), 25.0)])
        shop.feed([(shop.clock.now(), 80.0)], box=True)  # the box is hot, and empty
        room.tick()
    assert [k for k in kinds(room) if k in ("too hot", "cold", "no record")] == []
    assert not shop.board.snapshot.holds


def test_r17_a_whole_job_is_safe_only_if_every_joint_of_it_is() -> None:
    """10 000 random jobs against the rule, spelled out again."""
    dice = random.Random(17)
    shop = make_shop("Mon 08:00")
    now = at("Tue 08:00")
    done = Forecast(NEVER, None, Bounds(None, now - 2 * HOUR_US, now - HOUR_US), None, None)
    safe_jobs = 0
    for number in range(10_000):
        clubs = dice.randrange(1, 5)
        standings, safe = [], True
        joints: dict[int, Joint] = {}
        job = Job(1, str(number), 1, 0)
        for n in range(1, clubs + 1):
            roll = dice.random()
            batch = Batch(1, 1, 1, PLAIN, "", shop.room, None if roll < 0.04 else at("Mon 08:00"))
            scrapped = 0.04 <= roll < 0.1
            joint = Joint(n, n, JointKind.SOLID_HEAD, 0, 1, batch.mixed_us, ended_us=(
                now if scrapped else None), ended_as="scrapped" if scrapped else None)  # fmt: skip
            joints[n] = joint
            held, granted = dice.random() < 0.1, dice.random() < 0.85
            if batch.mixed_us is None or (not scrapped and (held or not granted)):
                safe = False
            if scrapped:
                continue
            grants = {Milestone.FULL_CURE: Grant(n, n, Milestone.FULL_CURE, now - HOUR_US,
                      now - HOUR_US, now)} if granted and batch.mixed_us else {}  # fmt: skip
            standings.append(
                stand(joint, Club(n, 1, "iron", n), job, batch, None, grants=grants,
                      hold=Hold(n, n, HoldReason.DISTURBED, "", now) if held else None,
                      outcome=Outcome(done, None, now, None) if batch.mixed_us else None,
                      cold=False, now=now)
            )  # fmt: skip
        safe = safe and bool(standings)
        snapshot = shop.board.snapshot
        snapshot.jobs, snapshot.joints = {1: job}, joints
        snapshot.customers = {1: Customer(1, "Invented", "")}
        snapshot.clubs = {n: Club(n, 1, "iron", n) for n in joints}
        (found,) = job_standings(snapshot, standings)
        assert found.good is safe, number
        safe_jobs += safe
    assert 1_000 < safe_jobs < 9_000


def test_r19_a_moved_forecast_makes_no_sound() -> None:
    room, joints = glued_room(clubs=1)
    room.until("Mon 09:00", 25.0)
    before = room.shop.standing(joints[0]).not_before_us
    told = len(room.courier.messages)
    room.until("Mon 11:00", 19.0)
    after = room.shop.standing(joints[0]).not_before_us
    assert before is not None
    assert after is not None
    assert after - before > 10 * MINUTE_US
    assert len(room.courier.messages) == told


def test_r23_an_alarm_that_was_over_before_it_was_told_stays_listed_with_begin_and_end() -> None:
    """In a closed shop nothing is said; the morning finds it in the list, and silent."""
    room, _ = glued_room(clubs=1)
    room.until("Mon 18:10", 25.0)
    room.until("Mon 20:00", 5.0)
    room.until("Mon 21:00", 25.0)
    cold = [a for a in room.open() if a.kind == Kind.COLD]
    assert [a.phase for a in cold] == ["off, untaken"]
    assert cold[0].ended_us is not None
    assert cold[0].ended_us > cold[0].due_us
    room.until("Tue 08:05", 25.0)
    assert not [m for m in room.courier.messages if "is cold" in m.summary]
