"""Journal first: the row, then the couriers, then what they did."""

from __future__ import annotations

import contextlib
from collections.abc import Callable
from pathlib import Path

from helpers.shop import FakeClock, Shop, at, local, make_shop
from rackboard.core.bench import Notice, PlaceKind
from rackboard.services.notices import Done, Message, Notices
from rackboard.store import Store
from rackboard.store.connection import connect
from rackboard.store.migrations import NEWEST
from rackboard.store.paths import Paths


class Recorder:
    """A courier that keeps what it is given and does what a test says."""

    def __init__(self, name: str = "Desktop notices") -> None:
        self.name = name
        self.messages: list[Message] = []
        self.pending: list[Done] = []
        self.act: Callable[[Message, Done], None] = lambda message, done: done(None)

    def deliver(self, message: Message, done: Done) -> None:
        self.messages.append(message)
        self.act(message, done)


def notices_of(shop: Shop, *couriers: Recorder) -> Notices:
    return Notices(shop.store, shop.clock, couriers)


def cured_shop(jobs: int = 1, store: Store | None = None) -> Shop:
    """Jobs of one club, an hour apart, all safe to hit; the clock stands after that."""
    shop = make_shop("Mon 08:00", store)
    shop.feed([(at("Mon 08:00"), 25.0)])
    for number in range(jobs):
        shop.clock.set(at("Mon 08:00") + number * 3_600_000_000)
        shop.glue(1)
    shop.clock.set("Wed 12:00")
    shop.flat("Mon 09:00", "Wed 12:00", 25.0)
    shop.board.tick()
    assert set(shop.words()) == {"CURED"}
    return shop


def the_notices(shop: Shop) -> list[Notice]:
    return sorted(shop.store.journal.notices(), key=lambda notice: notice.id)


def test_the_row_is_on_the_disk_before_any_courier_is_called(tmp_path: Path) -> None:
    store = Store.open(Paths.below(tmp_path), at("Mon 08:00"))
    shop = cured_shop(store=store)
    seen: list[tuple[object, ...]] = []

    def look(message: Message, done: Done) -> None:
        other = connect(store.path, newest=NEWEST, writable=False)
        seen.extend(other.rows("SELECT key, couriers_json FROM notice"))
        other.close()
        done(None)

    courier = Recorder()
    courier.act = look
    notices_of(shop, courier).raise_due(shop.board)
    job = shop.board.jobs()[0].job.id
    assert seen == [(f"job safe:{job}:1", None)]
    assert the_notices(shop)[0].couriers == {"Desktop notices": "shown"}
    store.close()


def test_a_job_is_told_once_with_the_time_it_was_safe_from() -> None:
    shop, courier = cured_shop(), Recorder()
    notices = notices_of(shop, courier)
    changes = notices.raise_due(shop.board)
    assert changes is not None
    assert changes.tables == {"notice", "event"}
    assert notices.raise_due(shop.board) is None
    (notice,) = the_notices(shop)
    assert notice.due_us == shop.board.standings[0].since_us
    assert notice.raised_us == at("Wed 12:00")
    (message,) = courier.messages
    assert message.summary == "Job 101: whole job safe to hit"
    assert len(message.summary) <= 40
    assert message.body.startswith("1 club for Invented Customer, since Tue ")
    assert local(notice.due_us)[4:] in message.body


def test_nothing_is_said_before_the_board_has_reckoned() -> None:
    shop = cured_shop()
    fresh = Shop(shop.store, shop.clock)
    notices = notices_of(shop, Recorder())
    fresh.board._reckoned = False
    assert notices.raise_due(fresh.board) is None


def test_after_an_absence_all_come_in_due_order_in_one_summary() -> None:
    shop, courier = cured_shop(3), Recorder()
    notices_of(shop, courier).raise_due(shop.board)
    dues = [notice.due_us for notice in the_notices(shop)]
    assert len(dues) == 3
    assert dues == sorted(set(dues))
    (message,) = courier.messages
    assert message.summary == "3 whole jobs safe to hit"
    places = [message.body.index(f"Job {n}") for n in (101, 102, 103)]
    assert places == sorted(places)
    assert all(n.couriers == {"Desktop notices": "shown"} for n in the_notices(shop))


def test_a_restart_tells_nothing_twice() -> None:
    shop = cured_shop()
    notices_of(shop, Recorder()).raise_due(shop.board)
    courier = Recorder()
    assert notices_of(shop, courier).raise_due(shop.board) is None
    assert courier.messages == []


def test_what_was_written_but_never_handed_over_is_told_at_the_next_start() -> None:
    shop, dying, courier = cured_shop(), Recorder(), Recorder()

    def die(message: Message, done: Done) -> None:
        raise KeyboardInterrupt

    dying.act = die
    with contextlib.suppress(KeyboardInterrupt):
        notices_of(shop, dying).raise_due(shop.board)
    assert the_notices(shop)[0].couriers is None
    again = notices_of(shop, courier)
    again.raise_due(shop.board)
    again.raise_due(shop.board)
    assert [m.key for m in courier.messages] == [the_notices(shop)[0].key]
    assert the_notices(shop)[0].couriers == {"Desktop notices": "shown"}


def test_a_courier_that_raises_is_written_down_and_the_next_success_clears_it() -> None:
    shop, bad, good = cured_shop(2), Recorder(), Recorder("Sound")

    def fail(message: Message, done: Done) -> None:
        raise OSError("the bus is down")

    bad.act = fail
    notices = notices_of(shop, bad, good)
    notices.raise_due(shop.board)
    assert notices.trouble == "Desktop notices: not working since 12:00"
    said = the_notices(shop)[0].couriers
    assert said == {"Desktop notices": "failed: the bus is down", "Sound": "shown"}
    assert len(shop.store.journal.notices(open_only=True)) == 2  # the list in the window has all
    bad.act = lambda message, done: done(None)
    shop.clock.advance(minutes=7)
    joint = shop.board.standings[0].joint.id
    shop.do(shop.bench.disturb(joint))
    notices.raise_due(shop.board)
    assert notices.trouble is None


def test_a_courier_may_answer_later() -> None:
    shop, slow = cured_shop(), Recorder()
    slow.act = lambda message, done: slow.pending.append(done)
    notices = notices_of(shop, slow)
    notices.raise_due(shop.board)
    assert the_notices(shop)[0].couriers == {"Desktop notices": "asked"}
    assert notices.trouble is None
    slow.pending[0]("no answer in 10 s")
    slow.pending[0](None)  # only the first word counts
    assert the_notices(shop)[0].couriers == {"Desktop notices": "failed: no answer in 10 s"}
    assert notices.trouble == "Desktop notices: not working since 12:00"


def test_a_hold_takes_it_back_and_its_end_raises_it_anew() -> None:
    shop, courier = cured_shop(), Recorder()
    notices = notices_of(shop, courier)
    notices.raise_due(shop.board)
    shop.do(shop.bench.disturb(shop.board.standings[0].joint.id))
    notices.raise_due(shop.board)
    assert the_notices(shop)[0].withdrawn_us == at("Wed 12:00")
    assert courier.messages[-1].summary == "Job 101: no longer safe to hit"
    assert courier.messages[-1].key == courier.messages[0].key  # in the place of the first
    shop.do(shop.bench.end_hold(shop.board.snapshot.holds.popitem()[1], "touched"))
    notices.raise_due(shop.board)
    assert [n.key.rpartition(":")[2] for n in the_notices(shop)] == ["1", "2"]
    assert len(courier.messages) == 3


def test_ready_closes_it_and_ready_taken_back_opens_it_without_a_word() -> None:
    shop, courier = cured_shop(), Recorder()
    notices = notices_of(shop, courier)
    notices.raise_due(shop.board)
    job = shop.board.jobs()[0].job.id
    shop.do(shop.bench.press_ready(job, True))
    notices.raise_due(shop.board)
    assert the_notices(shop)[0].withdrawn_us is not None
    assert courier.messages[-1].take_back
    shop.undo()
    notices.raise_due(shop.board)
    (notice,) = the_notices(shop)
    assert notice.withdrawn_us is None
    assert len(courier.messages) == 2


def test_a_job_that_is_ready_already_is_not_told() -> None:
    shop, courier = cured_shop(), Recorder()
    shop.do(shop.bench.press_ready(shop.board.jobs()[0].job.id, True))
    assert notices_of(shop, courier).raise_due(shop.board) is None
    assert courier.messages == []


def test_a_job_that_left_the_shop_is_closed() -> None:
    shop, courier = cured_shop(), Recorder()
    notices = notices_of(shop, courier)
    notices.raise_due(shop.board)
    shop.do(shop.bench.take_off(shop.board.standings[0].club.id, PlaceKind.OUT))
    notices.raise_due(shop.board)
    assert the_notices(shop)[0].withdrawn_us is not None
    assert courier.messages[-1].take_back


def test_what_a_person_has_dismissed_is_not_raised_again() -> None:
    shop, courier = cured_shop(), Recorder()
    notices = notices_of(shop, courier)
    notices.raise_due(shop.board)
    notices.see(the_notices(shop)[0].id)
    assert shop.store.journal.notices(open_only=True) == []
    assert notices.raise_due(shop.board) is None
    assert notices_of(shop, courier).raise_due(shop.board) is None
    assert len(courier.messages) == 1


def test_a_new_club_in_a_good_job_takes_it_back() -> None:
    shop, courier = cured_shop(), Recorder()
    notices = notices_of(shop, courier)
    notices.raise_due(shop.board)
    shop.lay_out(1, number="101")
    notices.raise_due(shop.board)
    assert courier.messages[-1].summary == "Job 101: no longer safe to hit"


def test_without_couriers_the_row_is_all() -> None:
    shop = cured_shop()
    notices = Notices(shop.store, FakeClock(shop.clock.now()), ())
    assert notices.raise_due(shop.board) is not None
    assert len(the_notices(shop)) == 1
    assert notices.trouble is None
