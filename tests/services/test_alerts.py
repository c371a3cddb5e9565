"""The engine of alerts over an invented shop: raised, told, taken, ended."""

from __future__ import annotations

import contextlib
from pathlib import Path

from helpers.alert_room import Recorder, Room, glued_room, permit, withdraw
from helpers.shop import at, local
from rackboard.core.alerts.kinds import Kind
from rackboard.core.bench import HoldReason, PlaceKind
from rackboard.core.instants import MINUTE_US, SECOND_US
from rackboard.services.alerts import BACK, NEVER_LEFT, REACHED, Alerts
from rackboard.services.teller import Done, Message
from rackboard.store import Store
from rackboard.store.connection import connect
from rackboard.store.migrations import NEWEST
from rackboard.store.paths import Paths


def test_the_row_is_on_the_disk_before_any_courier_is_called(tmp_path: Path) -> None:
    """R01."""
    store = Store.open(Paths.below(tmp_path), at("Mon 08:00"))
    room = Room("Mon 08:00", store)
    seen: list[tuple[object, ...]] = []

    def look(message: Message, done: Done) -> None:
        other = connect(store.path, newest=NEWEST, writable=False)
        seen.extend(other.rows("SELECT kind, phase FROM alert"))
        other.close()
        done(None)

    room.courier.act = look
    room.shop.feed([(at("Mon 08:00"), 25.0)])
    joint = room.shop.glue(1)[0]
    room.shop.do(room.shop.bench.disturb(joint))
    room.tick()
    assert ("disturbed", "on, untaken") in seen
    store.close()


def test_a_disturbed_joint_speaks_until_it_is_answered() -> None:
    """R22."""
    room, joints = glued_room()
    shop = room.shop
    shop.do(shop.bench.disturb(joints[0]))
    room.tick()
    alert = room.the(Kind.DISTURBED)
    assert alert.phase == "on, untaken"
    assert any("Disturbed at A1" in said for said in room.courier.said)
    room.alerts.got_it([alert.id])
    assert room.the(Kind.DISTURBED).phase == "on, taken"
    room.until("Mon 11:00", 25.0)
    assert room.the(Kind.DISTURBED).phase == "on, taken"
    hold = shop.board.snapshot.holds[joints[0]]
    shop.do(shop.bench.end_hold(hold, "touched, head did not turn"))
    room.tick()
    assert not [a for a in room.open() if a.kind == Kind.DISTURBED]
    assert room.last(Kind.DISTURBED).closed_as == "touched, head did not turn"


def test_undoing_the_disturbance_closes_its_alarm_as_undone() -> None:
    room, joints = glued_room()
    room.shop.do(room.shop.bench.disturb(joints[0]))
    room.tick()
    room.shop.undo()
    room.tick("undone")
    assert room.last(Kind.DISTURBED).closed_as == "undone"
    assert room.courier.messages[-1].take_back


def test_untaken_alarms_speak_again_together() -> None:
    """R20."""
    room, joints = glued_room()
    room.shop.do(room.shop.bench.disturb(joints[0]))
    room.tick()
    start = room.shop.clock.now()
    told = [t for t in room.shop.store.alerts.tellings(0) if t.kind == "disturbed"]
    assert len(told) == 1
    room.until("Mon 08:40", 25.0)
    times = [
        (t.at_us - start) // MINUTE_US for t in room.shop.store.alerts.tellings(0)
        if t.key == "alarms"
    ]
    assert times == [2, 5, 15, 30]


def test_a_cold_zone_is_an_alarm_only_if_a_printed_time_moves() -> None:
    """R11: a dip of less than ten minutes is none; a cold hour that moves a time is one."""
    room, _ = glued_room()
    room.until("Mon 09:00", 25.0)
    room.until("Mon 09:09", 12.0)
    room.until("Mon 09:30", 25.0)
    assert not [a for a in room.open() if a.kind == Kind.COLD]
    room.until("Mon 10:30", 12.0)
    alert = room.the(Kind.COLD)
    assert local(alert.due_us) == "Mon 09:31"
    assert sum("is cold" in said for said in room.courier.said) == 1 or room.courier.said


def test_a_cold_zone_that_is_warm_again_stays_listed_until_it_is_taken() -> None:
    """R23."""
    room, _ = glued_room()
    room.until("Mon 10:00", 12.0)
    assert room.the(Kind.COLD).phase == "on, untaken"
    room.until("Mon 10:30", 25.0)
    alert = room.the(Kind.COLD)
    assert alert.phase == "off, untaken"
    assert alert.ended_us is not None
    room.alerts.got_it([alert.id])
    assert room.last(Kind.COLD).closed_as == "got it"


def test_an_accepted_cold_zone_is_silent_until_it_is_two_degrees_colder() -> None:
    """R21."""
    room, _ = glued_room()
    room.until("Mon 10:00", 12.0)
    room.alerts.accept(room.the(Kind.COLD).id, 12_000)
    told = len(room.courier.said)
    room.until("Mon 12:00", 10.1)
    assert room.the(Kind.COLD).phase == "on, accepted"
    assert len(room.courier.said) == told
    room.until("Mon 12:02", 10.0)
    assert room.the(Kind.COLD).phase == "on, untaken"
    assert len(room.courier.said) == told + 1


def test_postponing_is_for_two_hours_at_most_and_not_for_what_may_hurt() -> None:
    """R24."""
    import pytest

    from rackboard.core.errors import InputError

    room, joints = glued_room()
    room.until("Mon 10:00", 12.0)
    now = room.shop.clock.now()
    alert = room.the(Kind.COLD)
    with pytest.raises(InputError, match="two hours"):
        room.alerts.postpone(alert.id, now + 121 * MINUTE_US)
    room.alerts.postpone(alert.id, now + 60 * MINUTE_US)
    told = len(room.courier.said)
    room.until("Mon 10:59", 12.0)
    assert room.the(Kind.COLD).phase == "on, postponed"
    assert len(room.courier.said) == told
    room.until("Mon 11:01", 12.0)
    assert room.the(Kind.COLD).phase == "on, untaken"
    assert len(room.courier.said) > told
    room.shop.do(room.shop.bench.disturb(joints[0]))
    room.tick()
    with pytest.raises(InputError):
        room.alerts.postpone(room.the(Kind.DISTURBED).id, room.shop.clock.now() + MINUTE_US)


def test_a_box_that_is_too_hot_holds_its_joints_until_somebody_says_what_he_saw() -> None:
    room = Room("Mon 08:00")
    shop = room.shop
    shop.feed([(at("Mon 08:00"), 21.0)])
    shop.feed([(at("Mon 08:00"), 40.0)], box=True)
    room.tick()
    (joint,) = shop.glue(1, box=True)
    shop.feed([(at("Mon 08:00") + 30 * SECOND_US, 21.0)])
    room.until("Mon 08:30", 78.0, box=True)
    alert = room.the(Kind.TOO_HOT)
    hold = shop.board.snapshot.holds[joint]
    assert hold.reason is HoldReason.TOO_HOT
    room.until("Mon 09:30", 40.0, box=True)
    assert room.the(Kind.TOO_HOT).id == alert.id
    shop.do(shop.bench.end_hold(hold, "nothing seen"))
    room.tick()
    assert room.last(Kind.TOO_HOT).closed_as == "nothing seen"
    room.until("Mon 10:00", 40.0, box=True)
    assert not [a for a in room.open() if a.kind == Kind.TOO_HOT]


def test_a_withdrawn_permission_is_an_alarm_until_the_club_is_back() -> None:
    """R18, R22."""
    room, joints = glued_room(clubs=1)
    room.until("Mon 18:00", 25.0)
    permit(room, joints[0])
    shop = room.shop
    club = shop.standing(joints[0]).club.id
    shop.do(shop.bench.take_off(club))
    withdraw(room, joints[0])
    assert str(shop.standing(joints[0]).word) != "CURED"
    alert = room.the(Kind.WITHDRAWN)
    assert "Do not hit" in room.courier.said[-1] or "Back to" in room.courier.said[-1]
    room.alerts.got_it([alert.id])
    room.tick()
    assert room.the(Kind.WITHDRAWN).phase == "on, taken"
    shop.clock.advance(minutes=1)
    shop.do(shop.bench.move(club, shop.rack.id, 3))
    room.tick()
    assert room.last(Kind.WITHDRAWN).closed_as == BACK


def test_of_a_club_in_its_slot_got_it_is_enough() -> None:
    room, joints = glued_room(clubs=1)
    room.until("Mon 18:00", 25.0)
    permit(room, joints[0])
    withdraw(room, joints[0])
    room.alerts.got_it([room.the(Kind.WITHDRAWN).id])
    room.tick()
    assert room.last(Kind.WITHDRAWN).closed_as == NEVER_LEFT


def test_of_a_club_that_is_gone_only_the_reached_customer_ends_it() -> None:
    """R22."""
    room, joints = glued_room(clubs=1)
    room.until("Mon 18:00", 25.0)
    permit(room, joints[0])
    shop = room.shop
    batch = shop.standing(joints[0]).batch.id
    shop.do(shop.bench.take_off(shop.standing(joints[0]).club.id, PlaceKind.OUT))
    assert not shop.board.standings
    shop.do(shop.bench.correct_mixed(batch, shop.clock.now() - 120 * MINUTE_US))
    room.tick()
    alert = room.the(Kind.WITHDRAWN)
    (said,) = [m for m in room.courier.messages if m.critical]
    assert "call Invented Customer" in said.body
    room.alerts.got_it([alert.id])
    room.until("Tue 15:00", 25.0)
    assert room.the(Kind.WITHDRAWN).phase == "on, taken"
    room.alerts.close(alert.id, REACHED)
    assert room.last(Kind.WITHDRAWN).closed_as == REACHED


def test_after_an_absence_all_that_fell_due_is_one_summary_in_due_order() -> None:
    """R03."""
    room, _ = glued_room(clubs=2)
    room.shop.clock.advance(minutes=10)
    room.shop.glue(3)
    room.tick()
    before = len(room.courier.messages)
    readings = [(at("Mon 08:00") + n * 10 * MINUTE_US, 25.0) for n in range(1, 6 * 30)]
    room.shop.feed(readings)
    room.shop.clock.set("Tue 12:00")
    room.tick()
    new = room.courier.messages[before:]
    assert [message.key for message in new if not message.take_back] == ["summary"]
    told = room.shop.store.alerts.tellings(0)[-1]
    rows = {alert.id: alert for alert in room.shop.store.alerts.by_id(told.alert_ids)}
    dues = [rows[n].due_us for n in told.alert_ids]
    assert dues == sorted(dues)
    assert len(dues) >= 2
    assert sum(bool(message.sound) for message in new) <= 1


def test_a_closed_shop_is_told_in_the_morning() -> None:
    """R20."""
    room, joints = glued_room(clubs=1)
    room.until("Mon 18:30", 25.0)
    told = len(room.courier.messages)
    room.until("Tue 07:59", 25.0)
    assert len(room.courier.messages) == told
    room.until("Tue 08:30", 25.0)
    assert len(room.courier.said) > 0
    assert [a.kind for a in room.open() if a.speaks and a.told_us is None] == []
    del joints


def test_a_killed_program_tells_once_more_and_a_running_one_never() -> None:
    """R02."""
    room, joints = glued_room(clubs=1)

    def die(message: Message, done: Done) -> None:
        raise KeyboardInterrupt

    room.courier.act = die
    room.shop.do(room.shop.bench.disturb(joints[0]))
    with contextlib.suppress(KeyboardInterrupt):
        room.tick()
    second = Recorder()
    again = Alerts(room.shop.store, room.shop.clock, (second,))
    again.tick(room.shop.board)
    assert len(second.said) == 1
    again.tick(room.shop.board)
    assert len(second.said) == 1
    third = Recorder()
    Alerts(room.shop.store, room.shop.clock, (third,)).tick(room.shop.board)
    assert third.said == []


def test_a_courier_that_fails_is_named_and_the_list_goes_on() -> None:
    """R04."""
    room, joints = glued_room(clubs=1)

    def fail(message: Message, done: Done) -> None:
        raise OSError("no bus")

    room.courier.act = fail
    room.shop.do(room.shop.bench.disturb(joints[0]))
    room.tick()
    assert room.the(Kind.DISTURBED).phase == "on, untaken"
    assert [name for name, _ in room.alerts.teller.troubles] == ["Desktop notices"]
    room.courier.act = lambda message, done: done(None)
    room.until("Mon 08:10", 25.0)
    assert room.alerts.teller.troubles == []


def safe_room() -> tuple[Room, int]:
    """A job of one club that is safe to hit and told so."""
    room, joints = glued_room(clubs=1)
    room.until("Mon 18:00", 25.0)
    permit(room, joints[0])
    room.shop.clock.set("Wed 12:00")
    room.shop.feed([(at("Wed 12:00"), 25.0)])
    room.tick()
    assert room.the(Kind.JOB_SAFE).phase == "due, unseen"
    return room, joints[0]


def test_a_courier_may_answer_later() -> None:
    room, joints = glued_room(clubs=1)
    pending: list[Done] = []
    room.courier.act = lambda message, done: pending.append(done)
    room.shop.do(room.shop.bench.disturb(joints[0]))
    room.tick()
    assert room.shop.store.alerts.tellings(0)[-1].couriers == {"Desktop notices": "asked"}
    assert room.alerts.teller.troubles == []
    pending[-1]("no answer in 10 s")
    pending[-1](None)  # only the first word counts
    said = room.shop.store.alerts.tellings(0)[-1].couriers
    assert said == {"Desktop notices": "failed: no answer in 10 s"}
    assert len(room.alerts.teller.troubles) == 1


def test_a_hold_takes_the_whole_job_back_and_its_end_tells_it_anew() -> None:
    room, joint = safe_room()
    told = room.courier.said.count("Job 101: whole job safe to hit")
    assert told == 1
    shop = room.shop
    shop.do(shop.bench.disturb(joint))
    room.tick()
    assert room.the(Kind.JOB_SAFE).phase == "withdrawn"
    assert any(m.take_back and m.key.startswith("job safe") for m in room.courier.messages)
    shop.clock.advance(minutes=10)
    shop.do(shop.bench.end_hold(shop.board.snapshot.holds[joint], "touched"))
    room.tick()
    assert room.the(Kind.JOB_SAFE).phase == "due, unseen"
    assert room.courier.said.count("Job 101: whole job safe to hit") == 2


def test_ready_ends_the_telling_and_ready_taken_back_says_nothing_anew() -> None:
    room, _ = safe_room()
    shop = room.shop
    told = room.courier.said.count("Job 101: whole job safe to hit")
    job = shop.board.jobs()[0].job.id
    shop.do(shop.bench.press_ready(job, True))
    room.tick()
    assert room.the(Kind.JOB_SAFE).phase == "expired, unseen"
    assert room.courier.messages[-1].take_back
    shop.undo()
    room.tick("undone")
    assert room.courier.said.count("Job 101: whole job safe to hit") == told


def test_a_job_that_left_the_shop_is_closed_and_one_carried_back_is_not_told_again() -> None:
    room, joint = safe_room()
    shop = room.shop
    told = len(room.courier.said)
    shop.do(shop.bench.take_off(shop.standing(joint).club.id, PlaceKind.OUT))
    room.tick()
    assert room.last(Kind.JOB_SAFE).phase == "closed"
    shop.undo()
    room.tick("undone")
    assert room.last(Kind.JOB_SAFE).phase == "seen"
    assert len(room.courier.said) == told


def test_what_a_person_has_seen_is_not_told_again() -> None:
    room, _ = safe_room()
    room.alerts.see([room.the(Kind.JOB_SAFE).id])
    told = len(room.courier.said)
    room.until("Wed 12:30", 25.0)
    assert len(room.courier.said) == told
    again = Alerts(room.shop.store, room.shop.clock, (room.courier,))
    again.tick(room.shop.board)
    assert len(room.courier.said) == told


def test_nothing_is_said_before_the_board_has_reckoned() -> None:
    room, joints = glued_room(clubs=1)
    room.shop.do(room.shop.bench.disturb(joints[0]))
    room.shop.board._reckoned = False
    assert room.alerts.tick(room.shop.board) is None


def test_without_couriers_the_row_is_all() -> None:
    room, joints = glued_room(clubs=1)
    room.shop.do(room.shop.bench.disturb(joints[0]))
    alone = Alerts(room.shop.store, room.shop.clock)
    assert alone.tick(room.shop.board) is not None
    assert room.last(Kind.DISTURBED).phase == "on, untaken"
    assert alone.teller.troubles == []
