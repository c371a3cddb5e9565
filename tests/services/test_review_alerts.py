"""Alerts in awkward moments: full disks, stepped clocks, restarts, clubs that have left."""

from __future__ import annotations

import contextlib
from typing import Any

import pytest

from helpers.alert_room import Recorder, Room, glued_room, permit, withdraw
from helpers.shop import at
from rackboard.core.alerts.kinds import Kind
from rackboard.core.bench import Heating, HoldReason, Milestone, PlaceKind
from rackboard.core.errors import RackboardError
from rackboard.core.instants import MINUTE_US, SECOND_US
from rackboard.services.alerts import BACK, Alerts
from rackboard.services.teller import Done, Message
from rackboard.store import Store
from rackboard.store.faults import FullDiskError


def full() -> FullDiskError:
    return FullDiskError("the disk is full", "the data file")


def restart(room: Room) -> Recorder:
    """Start the program anew: nothing is left but what is stored."""
    from rackboard.services.board import Board

    shop = room.shop
    shop.board = Board(shop.store, shop.clock, shop.board.snapshot.hours.zone)
    room.courier = Recorder()
    room.alerts = Alerts(shop.store, shop.clock, (room.courier,))
    return room.courier


def fail_once(monkeypatch: pytest.MonkeyPatch, owner: Any, name: str) -> None:
    real = getattr(owner, name)
    left = [1]

    def once(*args: Any, **named: Any) -> Any:
        if left:
            left.pop()
            raise full()
        return real(*args, **named)

    monkeypatch.setattr(owner, name, once)


# The disk is full


def test_an_alarm_that_could_not_be_written_is_raised_by_the_next_tick(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    from rackboard.services.teller import Teller

    room, joints = glued_room(clubs=1)
    room.shop.do(room.shop.bench.disturb(joints[0]))
    fail_once(monkeypatch, Teller, "write")
    with contextlib.suppress(FullDiskError):
        room.tick()
    assert not [a for a in room.shop.store.alerts.open() if a.kind == Kind.DISTURBED]
    for _ in range(3):
        room.shop.clock.advance(seconds=10)
        with contextlib.suppress(RackboardError):
            room.tick()
    assert [a.phase for a in room.shop.store.alerts.open() if a.kind == Kind.DISTURBED] == [
        "on, untaken"
    ]
    assert any("Disturbed" in said for said in room.courier.said)


def test_a_withdrawal_that_could_not_be_written_is_raised_by_the_next_tick(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    room, joints = glued_room(clubs=1)
    room.until("Mon 18:00", 25.0)
    permit(room, joints[0])
    fail_once(monkeypatch, Alerts, "_write")
    with contextlib.suppress(FullDiskError):
        withdraw(room, joints[0])
    room.shop.clock.advance(seconds=10)
    room.tick()
    assert room.the(Kind.WITHDRAWN).phase == "on, untaken"


def test_on_a_full_disk_a_courier_is_called_once(monkeypatch: pytest.MonkeyPatch) -> None:
    room, joints = glued_room(clubs=1)
    write = Store.write
    is_full = [True]

    def refuse(self: Store, label: str, *args: Any, **named: Any) -> Any:
        if label == "couriers" and is_full:
            raise full()
        return write(self, label, *args, **named)

    room.shop.do(room.shop.bench.disturb(joints[0]))
    monkeypatch.setattr(Store, "write", refuse)
    for _ in range(4):
        with contextlib.suppress(RackboardError):
            room.tick()
        room.shop.clock.advance(seconds=10)
    said = [m for m in room.courier.messages if m.key.startswith("disturbed")]
    assert len(said) == 1
    is_full.clear()
    room.tick()
    assert room.shop.store.alerts.untold() == []


def test_a_courier_that_answers_when_the_file_is_closed_is_not_heard() -> None:
    room, joints = glued_room(clubs=1)
    pending: list[Done] = []
    room.courier.act = lambda message, done: pending.append(done)
    room.shop.do(room.shop.bench.disturb(joints[0]))
    room.tick()
    room.shop.store.close()
    pending[-1](None)


def test_a_courier_may_take_the_alert_it_is_shown(monkeypatch: pytest.MonkeyPatch) -> None:
    room, joints = glued_room(clubs=2)

    def take(message: Message, done: Done) -> None:
        done(None)
        if not message.take_back:
            room.alerts.got_it(message.alerts)

    room.courier.act = take
    room.shop.do(room.shop.bench.disturb(joints[0]))
    room.shop.do(room.shop.bench.disturb(joints[1]))
    room.tick()
    room.tick()
    assert {a.phase for a in room.open() if a.kind == Kind.DISTURBED} == {"on, taken"}


# The clock is set back


def test_a_new_alarm_sounds_after_the_clock_was_set_back() -> None:
    room, joints = glued_room(clubs=2)
    room.until("Mon 12:00", 25.0)
    room.shop.do(room.shop.bench.disturb(joints[0]))
    room.tick()
    assert room.courier.messages[-1].sound == "alarm"
    room.shop.clock.advance(hours=-1)
    room.tick()
    room.shop.clock.advance(seconds=70)
    room.tick()
    before = len(room.courier.messages)
    room.shop.do(room.shop.bench.disturb(joints[1]))
    room.tick()
    assert any(m.sound == "alarm" for m in room.courier.messages[before:])


def test_an_untaken_alarm_repeats_after_the_clock_was_set_back() -> None:
    room, joints = glued_room(clubs=1)
    room.until("Mon 12:00", 25.0)
    room.shop.do(room.shop.bench.disturb(joints[0]))
    room.tick()
    room.shop.clock.advance(hours=-2)
    before = len(room.courier.said)
    for _ in range(20):
        room.shop.clock.advance(minutes=1)
        room.tick()
    assert len(room.courier.said) - before >= 2


def test_a_milestone_is_told_after_the_clock_was_set_back() -> None:
    """What was told before the step, in the future now, uses up no budget."""
    room, _ = glued_room(clubs=1)
    room.until("Mon 12:00", 25.0)
    for n in range(4):
        room.shop.glue(1, number=f"70{n}")
        room.shop.clock.advance(seconds=70)
        room.tick()
    room.shop.clock.advance(hours=-3)
    room.tick()
    room.shop.glue(1, number="800")
    for _ in range(15):
        room.shop.clock.advance(minutes=1)
        room.tick()
    waiting = [a for a in room.open() if a.speaks and a.told_us is None]
    assert waiting == []


def test_a_withdrawal_after_the_clock_was_set_back_is_raised() -> None:
    room = Room("Mon 08:00")
    shop = room.shop
    shop.feed([(at("Mon 07:59"), 25.0), (at("Mon 08:00"), 25.0)])
    room.tick()
    one, two = shop.glue(1, number="1")[0], shop.glue(1, number="2")[0]
    room.tick()
    room.until("Mon 18:00", 25.0)
    permit(room, one)
    withdraw(room, one)
    shop.clock.advance(hours=-1)
    room.tick()
    withdraw(room, two)
    assert {a.subject_id for a in room.open() if a.kind == Kind.WITHDRAWN} == {one, two}


def test_an_alarm_put_off_is_not_put_off_for_longer_by_a_clock_set_back() -> None:
    room, _ = glued_room()
    room.until("Mon 12:00", 12.0)
    cold = room.the(Kind.COLD)
    room.alerts.postpone(cold.id, room.shop.clock.now() + 119 * MINUTE_US)
    room.shop.clock.advance(hours=-3)
    room.tick()
    assert room.the(Kind.COLD).phase == "on, untaken"


# Once and not again


def test_a_second_withdrawal_told_of_by_an_open_alarm_is_not_raised_by_a_restart() -> None:
    room, joints = glued_room(clubs=1)
    room.until("Mon 18:00", 25.0)
    permit(room, joints[0])
    withdraw(room, joints[0])
    shop = room.shop
    # Earned again, and withdrawn again, while the first alarm is open.
    for _ in range(200):
        shop.clock.advance(hours=1)
        shop.feed([(shop.clock.now(), 25.0)])
        room.tick()
        if shop.board.snapshot.grants.get(joints[0]):
            break
    withdraw(room, joints[0])
    alert = room.the(Kind.WITHDRAWN)
    room.alerts.got_it([alert.id])
    room.tick()
    assert not [a for a in room.open() if a.kind == Kind.WITHDRAWN]
    shop.clock.advance(minutes=1)
    restart(room)
    room.tick()
    assert not [a for a in room.open() if a.kind == Kind.WITHDRAWN]


def test_withdrawals_from_before_there_were_alerts_are_not_raised() -> None:
    """A data file of the first schema brings its history along, not its alarms."""
    from rackboard.store.migrations import STEPS

    room, joints = glued_room(clubs=1)
    room.until("Mon 18:00", 25.0)
    permit(room, joints[0])
    withdraw(room, joints[0])
    database = room.shop.store.alerts._database
    database.rows("DELETE FROM alert")
    database.rows("DELETE FROM telling")
    database.rows("UPDATE permission_grant SET withdrawn_us = withdrawn_us - 86400000000 * 200"
                  " WHERE withdrawn_us IS NOT NULL")  # fmt: skip
    for statement in STEPS[1]:
        if "permission_grant" in statement and statement.lstrip().startswith(("INSERT", "UPDATE")):
            database.rows(statement)
    restart(room)
    room.tick()
    assert not [a for a in room.open() if a.kind == Kind.WITHDRAWN]


def test_an_unrelated_undo_closes_no_withdrawal() -> None:
    """R22: what would hold again stays until somebody has given its outcome."""
    room, joints = glued_room(clubs=1)
    room.until("Mon 18:00", 25.0)
    permit(room, joints[0])
    shop = room.shop
    shop.do(shop.bench.take_off(shop.standing(joints[0]).club.id))
    withdraw(room, joints[0])
    for _ in range(200):
        shop.clock.advance(hours=1)
        shop.feed([(shop.clock.now(), 25.0)])
        room.tick()
        if Milestone.FULL_CURE in shop.board.snapshot.grants.get(joints[0], {}):
            break
    alert = room.the(Kind.WITHDRAWN)
    assert "again_us" in alert.data
    shop.do(shop.bench.set_heating(shop.box_zone, Heating(8 * 60, 18 * 60, 10_000)))
    room.tick()
    shop.undo()
    room.tick("undone")
    assert room.the(Kind.WITHDRAWN).id == alert.id


def test_undoing_a_correction_that_reached_a_club_that_is_gone_closes_its_alarm() -> None:
    room, joints = glued_room(clubs=1)
    room.until("Mon 18:00", 25.0)
    permit(room, joints[0])
    shop = room.shop
    batch = shop.standing(joints[0]).batch.id
    shop.do(shop.bench.take_off(shop.standing(joints[0]).club.id, PlaceKind.OUT))
    room.tick()
    shop.clock.advance(minutes=5)
    shop.do(shop.bench.correct_mixed(batch, shop.clock.now() - 120 * MINUTE_US))
    room.tick("corrected")
    assert room.the(Kind.WITHDRAWN)
    shop.clock.advance(minutes=1)
    shop.undo()
    room.tick("undone")
    assert room.last(Kind.WITHDRAWN).closed_as == "undone"


def test_an_undo_before_a_crash_closes_the_alarm_after_it() -> None:
    room, joints = glued_room(clubs=1)
    room.until("Mon 18:00", 25.0)
    permit(room, joints[0])
    shop = room.shop
    shop.do(shop.bench.take_off(shop.standing(joints[0]).club.id))
    withdraw(room, joints[0])
    shop.clock.advance(minutes=1)
    shop.undo()  # the board has ticked, the alerts have not
    restart(room)
    room.tick()
    assert room.last(Kind.WITHDRAWN).closed_as == "undone"


def test_a_club_that_is_gone_says_nothing_but_that_it_was_withdrawn() -> None:
    room, joints = glued_room(clubs=1)
    room.until("Mon 18:00", 25.0)
    permit(room, joints[0])
    shop = room.shop
    batch = shop.standing(joints[0]).batch.id
    shop.do(shop.bench.take_off(shop.standing(joints[0]).club.id, PlaceKind.OUT))
    room.tick()
    shop.clock.advance(hours=1)
    room.tick()
    before = len(room.courier.messages)
    shop.do(shop.bench.correct_mixed(batch, shop.clock.now() - 120 * MINUTE_US))
    for _ in range(20):
        room.tick("corrected")
        shop.clock.advance(minutes=1)
    rows = [a.kind for a in room.open() if not a.is_alarm]
    new = {m.key.split(":")[0] for m in room.courier.messages[before:] if not m.take_back}
    assert new <= {"withdrawn", "alarms"}
    assert rows == []


def test_after_a_restart_the_call_still_names_the_customer() -> None:
    room, joints = glued_room(clubs=1)
    room.until("Mon 18:00", 25.0)
    permit(room, joints[0])
    shop = room.shop
    batch = shop.standing(joints[0]).batch.id
    shop.do(shop.bench.take_off(shop.standing(joints[0]).club.id, PlaceKind.OUT))
    shop.do(shop.bench.correct_mixed(batch, shop.clock.now() - 120 * MINUTE_US))
    room.tick()
    shop.clock.advance(minutes=15)
    courier = restart(room)
    room.tick()
    shop.clock.advance(minutes=15)
    room.tick()
    bodies = [m.body for m in courier.messages]
    assert bodies
    assert all("Invented Customer" in body for body in bodies) or "WARNING" in bodies[-1]


def test_a_scrapped_club_needs_no_call() -> None:
    """Its customer never got it: scrapping ends the alarm, whatever else lies in the shop."""
    room, joints = glued_room(clubs=1)
    room.until("Mon 18:00", 25.0)
    permit(room, joints[0])
    shop = room.shop
    shop.do(shop.bench.take_off(shop.standing(joints[0]).club.id))
    withdraw(room, joints[0])
    shop.do(shop.bench.disturb(joints[0]))
    room.tick()
    shop.do(shop.bench.end_hold(shop.board.snapshot.holds[joints[0]], "scrapped"))
    room.tick()
    room.tick()
    assert room.last(Kind.WITHDRAWN).closed_as == "scrapped"


def test_a_club_carried_from_slot_to_slot_was_never_off_the_rack() -> None:
    """R22: nobody has said anything, so the alarm stays until it is taken."""
    room, joints = glued_room(clubs=1)
    room.until("Mon 18:00", 25.0)
    permit(room, joints[0])
    shop = room.shop
    withdraw(room, joints[0])
    shop.clock.advance(minutes=1)
    shop.do(shop.bench.move(shop.standing(joints[0]).club.id, shop.rack.id, 7))
    room.tick()
    assert room.the(Kind.WITHDRAWN).phase == "on, untaken"
    assert room.last(Kind.WITHDRAWN).closed_as != BACK


# Too hot


def hot_room(until: str = "Mon 08:30") -> tuple[Room, int]:
    room = Room("Mon 08:00")
    shop = room.shop
    shop.feed([(at("Mon 08:00"), 21.0)])
    shop.feed([(at("Mon 08:00"), 40.0)], box=True)
    room.tick()
    (joint,) = shop.glue(1, box=True)
    shop.feed([(at("Mon 08:00") + 30 * SECOND_US, 21.0)])
    room.until(until, 78.0, box=True)
    assert room.the(Kind.TOO_HOT)
    return room, joint


def test_a_joint_that_is_also_disturbed_stays_under_the_heat_alarm() -> None:
    room, joint = hot_room()
    shop = room.shop
    with contextlib.suppress(RackboardError):
        shop.do(shop.bench.disturb(joint))
    room.tick()
    assert room.the(Kind.TOO_HOT).phase == "on, untaken"


def test_an_answered_heat_alarm_is_not_raised_again_while_it_cools() -> None:
    room, joint = hot_room()
    shop = room.shop
    shop.do(shop.bench.end_hold(shop.board.snapshot.holds[joint], "nothing seen"))
    room.tick()
    assert room.last(Kind.TOO_HOT).closed_as == "nothing seen"
    room.until("Mon 08:34", 50.0, box=True)
    assert not [a for a in room.open() if a.kind == Kind.TOO_HOT]
    assert joint not in shop.board.snapshot.holds


def test_heat_that_came_and_went_while_the_program_was_stopped_is_an_alarm() -> None:
    """A logger's file tells of it afterwards; the glue has boiled all the same."""
    room = Room("Mon 08:00")
    shop = room.shop
    shop.feed([(at("Mon 08:00"), 21.0)])
    shop.feed([(at("Mon 08:00"), 40.0)], box=True)
    room.tick()
    (joint,) = shop.glue(1, box=True)
    room.until("Mon 08:05", 40.0, box=True)
    shop.clock.set("Mon 11:00")
    start = at("Mon 08:05")
    shop.feed([(start + n * MINUTE_US, 78.0 if 20 < n < 80 else 40.0) for n in range(1, 175)],
              box=True)  # fmt: skip
    room.tick()
    assert [a.kind for a in room.open() if a.is_alarm] == ["too hot"]
    assert shop.board.snapshot.holds[joint].reason is HoldReason.TOO_HOT


def test_a_box_that_was_hot_while_empty_holds_nothing() -> None:
    """R15."""
    room = Room("Mon 08:00")
    shop = room.shop
    shop.feed([(at("Mon 08:00"), 21.0)])
    shop.feed([(at("Mon 08:00"), 40.0)], box=True)
    room.tick()
    room.until("Mon 08:30", 78.0, box=True)
    room.until("Mon 08:33", 40.0, box=True)
    (joint,) = shop.glue(1, box=True)
    room.until("Mon 08:36", 40.0, box=True)
    assert not [a for a in room.open() if a.kind == Kind.TOO_HOT]
    assert joint not in shop.board.snapshot.holds


def test_a_joint_carried_into_a_hot_box_is_held_too() -> None:
    room, _ = hot_room()
    (other,) = room.shop.glue(1, box=True)
    room.until("Mon 08:45", 78.0, box=True)
    assert room.shop.board.snapshot.holds[other].reason is HoldReason.TOO_HOT


# Cold


def test_the_time_of_another_milestone_is_no_moved_time() -> None:
    """R11: full cure comes after handling; that it does so is no alarm."""
    room, joints = glued_room(clubs=1)
    shop = room.shop
    room.until("Mon 10:30", 12.0)
    cold = room.the(Kind.COLD)
    room.until("Mon 11:00", 25.0)
    room.alerts.got_it([cold.id])
    while Milestone.HANDLING not in shop.board.snapshot.grants.get(joints[0], {}):
        shop.clock.advance(minutes=10)
        shop.feed([(shop.clock.now(), 25.0)])
        room.tick()
    while shop.clock.now() < at("Tue 09:00"):
        shop.clock.advance(minutes=10)
        shop.feed([(shop.clock.now(), 25.0)])
        room.tick()
    assert shop.standing(joints[0]).milestone is Milestone.FULL_CURE, "else it shows nothing"
    before = shop.standing(joints[0]).not_before_us
    room.until("Tue 09:13", 15.9)
    after = shop.standing(joints[0]).not_before_us
    assert before is not None
    assert after is not None
    foretold = shop.board.foretold(shop.standing(joints[0]))
    assert foretold is not None
    if after - foretold > 10 * MINUTE_US:
        pytest.skip("it moved")
    assert not [a for a in room.open() if a.kind == Kind.COLD]


def test_a_typed_reading_does_not_judge_the_feed_before_it() -> None:
    """R11: its larger uncertainty is its own; ten minutes have to pass first."""
    room, _ = glued_room(17.0)
    room.until("Mon 09:30", 17.0)
    assert not [a for a in room.open() if a.kind == Kind.COLD]
    room.shop.clock.advance(minutes=1)
    room.shop.type(17.0, at_rack=False)
    room.tick()
    assert not [a for a in room.open() if a.kind == Kind.COLD]


# No record


def test_a_missing_record_stays_an_alarm_until_its_gap_is_bridged() -> None:
    room, joints = glued_room(clubs=1)
    room.until("Mon 14:30", 25.0)
    while room.shop.clock.now() < at("Mon 17:40"):
        room.shop.clock.advance(minutes=1)
        room.tick()
    shop = room.shop
    assert room.the(Kind.NO_RECORD).phase == "on, untaken"
    room.until("Mon 17:50", 25.0)
    assert shop.standing(joints[0]).unknown
    assert room.the(Kind.NO_RECORD).phase == "on, untaken"


# Silence


def test_a_shop_that_never_opens_is_told_all_the_same() -> None:
    room, joints = glued_room(clubs=1)
    shop = room.shop
    shop.do(shop.bench.set_week([None] * 7))
    shop.do(shop.bench.disturb(joints[0]))
    shop.clock.advance(hours=24 * 7)
    room.tick()
    assert room.the(Kind.DISTURBED).told_us is not None
    assert room.courier.said


def test_repeats_of_what_may_be_folded_count_in_the_budget() -> None:
    """At most six annunciations in any ten minutes, those of H1, H4 and H5 apart."""
    room, _ = glued_room()
    shop = room.shop
    room.until("Mon 08:58", 12.0)
    for n in range(6):
        shop.glue(1, number=f"60{n}")
        room.until(f"Mon 09:{2 * n:02d}", 12.0)
    room.until("Mon 09:40", 12.0)
    tellings = shop.store.alerts.tellings(0)
    for telling in tellings:
        window = [t for t in tellings if telling.at_us - 10 * MINUTE_US < t.at_us <= telling.at_us]
        assert len(window) <= 6
