"""Sources of temperature at work: kept in one transaction, named when wrong, set and taken back."""

from __future__ import annotations

from pathlib import Path

import pytest

from helpers.shop import SHOP_ZONE, FakeClock, Shop, at
from rackboard.core.bench import Heating, Source
from rackboard.core.errors import InputError
from rackboard.core.feed import (
    Fault,
    FaultKind,
    Feed,
    FeedKind,
    FeedSource,
    Polled,
    Sample,
    Start,
    source_of,
)
from rackboard.core.instants import Instant, to_datetime
from rackboard.core.text import text
from rackboard.feeds.live import layout_of, open_feed
from rackboard.feeds.logger_csv import preview
from rackboard.services.agenda import NightQuestion
from rackboard.services.feeding import FEEDS, Feeding, proposal_mc
from rackboard.services.founding import found_shop
from rackboard.store import Store

HEAD = "Time,Temperature (°C)\n"


class Scripted:
    """Hands over what a test has laid ready."""

    def __init__(self) -> None:
        self.ready: list[Polled] = []
        self.polls: list[Instant] = []

    def poll(self, now: Instant) -> Polled:
        self.polls.append(now)
        return self.ready.pop(0) if self.ready else Polled()


class Bench:
    """A founded shop with scripted sources."""

    def __init__(self) -> None:
        self.clock = FakeClock(at("Mon 10:00"))
        self.store = Store.open_memory()
        found_shop(self.store, self.clock.now())
        self.shop = Shop(self.store, self.clock, SHOP_ZONE)
        self.feeds: dict[int, Scripted] = {}
        self.starts: list[Start] = []
        self.feeding = Feeding(self.store, self.clock, self.open)
        self.room = self.shop.room

    def open(self, source: FeedSource, start: Start) -> Feed:
        if source.path == "bad":
            raise InputError("columns", "none", "layout")
        self.starts.append(start)
        return self.feeds.setdefault(source.zone_id, Scripted())

    def set(self, kind: FeedKind = FeedKind.ONE_WIRE, zone: int | None = None) -> Scripted:
        zone = self.room if zone is None else zone
        self.shop.do(self.feeding.set_source(FeedSource(zone, kind, "28-0a")))
        self.feeding.step()
        return self.feeds[zone]

    def kept(self, zone: int | None = None) -> list[tuple[Instant, int, int, str]]:
        return self.store.record.readings(self.room if zone is None else zone, 0, 1 << 60)


@pytest.fixture()
def bench() -> Bench:
    return Bench()


def test_readings_of_all_zones_are_kept_in_one_act_that_undo_leaves_alone(bench: Bench) -> None:
    one, other = bench.set(), bench.set(zone=bench.shop.box_zone)
    bench.clock.advance(minutes=1)
    now = bench.clock.now()
    one.ready = [Polled((Sample(now, 20_000), Sample(now - 1, 20_100)))]
    other.ready = [Polled((Sample(now, 50_000),))]
    changes = bench.feeding.step()
    assert changes is not None
    assert {span.zone_id for span in changes.readings} == {bench.room, bench.shop.box_zone}
    assert not changes.undoable
    assert bench.kept() == [
        (now - 1, 20_100, 1000, Source.FEED), (now, 20_000, 1000, Source.FEED)
    ]  # fmt: skip
    assert bench.feeding.last(bench.room) == Sample(now, 20_000)
    assert bench.feeding.step() is None


def test_a_sensor_is_asked_each_minute_and_a_file_at_each_step(bench: Bench) -> None:
    sensor, file = bench.set(), bench.set(FeedKind.CSV, bench.shop.box_zone)
    sensor.polls.clear()
    file.polls.clear()
    for _ in range(12):
        bench.clock.advance(seconds=10)
        bench.feeding.step()
    assert (len(sensor.polls), len(file.polls)) == (2, 12)
    sensor.ready = [Polled(again=True)]
    bench.clock.advance(seconds=60)
    bench.feeding.step()
    bench.clock.advance(seconds=10)
    bench.feeding.step()
    assert len(sensor.polls) == 4, "an answer under way is fetched at the next step"
    bench.clock.advance(hours=-1)
    bench.feeding.step()
    assert len(sensor.polls) == 5, "a clock set back doesn't silence it"


def test_the_same_reading_twice_is_one(bench: Bench) -> None:
    feed = bench.set()
    reading = Sample(bench.clock.now(), 20_000)
    for _ in range(2):
        bench.clock.advance(minutes=1)
        feed.ready = [Polled((reading, reading._replace(temperature_mc=20_500)))]
        bench.feeding.step()
    assert [row[:2] for row in bench.kept()] == [tuple(reading)]


def test_a_fault_is_a_trouble_while_it_lasts_and_in_the_journal_once(bench: Bench) -> None:
    feed = bench.set()
    since = bench.clock.now()
    fault = Fault(FaultKind.SILENT, text("Feed", "it doesn't answer"), since)
    feed.ready = [Polled((), (fault,))] * 3 + [Polled((), (fault._replace(until_us=since + 9),))]
    for _ in range(3):
        bench.clock.advance(minutes=1)
        bench.feeding.step()
        (trouble,) = bench.feeding.troubles
        assert (trouble.zone_id, trouble.said, trouble.since_us) == (bench.room, fault.said, since)
    bench.clock.advance(minutes=1)
    bench.feeding.step()
    assert bench.feeding.troubles == ()
    events = bench.store.journal.events(kinds=["feed fault"])
    assert [(e.subject_id, e.at_us, e.data["fault"]) for e in events] == [
        (bench.room, since, "silent")
    ]


def test_a_fault_that_came_and_went_within_a_poll_is_in_the_journal(bench: Bench) -> None:
    feed = bench.set()
    now = bench.clock.now()
    feed.ready = [Polled((), (Fault(FaultKind.POWER_ON, text("Feed", "x"), now, now + 1),))]
    bench.clock.advance(minutes=1)
    assert bench.feeding.step() is not None
    assert len(bench.store.journal.events(kinds=["feed fault"])) == 1


def test_what_could_not_be_written_is_written_later(
    bench: Bench, monkeypatch: pytest.MonkeyPatch
) -> None:
    from rackboard.core.errors import StoreError

    feed = bench.set()
    bench.clock.advance(minutes=1)
    feed.ready = [Polled((Sample(bench.clock.now(), 20_000),))]
    with monkeypatch.context() as patched:
        def full(*_: object, **__: object) -> None:
            raise StoreError("the disk is full")

        patched.setattr(Store, "write", full)
        with pytest.raises(StoreError):
            bench.feeding.step()
    assert bench.feeding.step() is not None
    assert len(bench.kept()) == 1


def test_setting_and_removing_a_source_are_acts_with_undo(bench: Bench) -> None:
    bench.set()
    assert [s.path for s in bench.feeding.sources()] == ["28-0a"]
    bench.shop.undo()
    assert bench.feeding.sources() == []
    bench.feeding.step()
    bench.clock.advance(minutes=2)
    polls = len(bench.feeds[bench.room].polls)
    bench.feeding.step()
    assert len(bench.feeds[bench.room].polls) == polls, "a source taken back is left alone"
    bench.set()
    bench.shop.do(bench.feeding.remove_source(bench.room))
    assert bench.feeding.sources() == []
    bench.shop.undo()
    assert len(bench.feeding.sources()) == 1
    with pytest.raises(InputError, match="a zone with a source"):
        bench.feeding.remove_source(bench.shop.box_zone)
    with pytest.raises(InputError, match="a zone of the shop"):
        bench.feeding.set_source(FeedSource(99, FeedKind.IIO, "x"))


def test_a_source_that_cannot_be_used_is_refused_or_named(bench: Bench) -> None:
    with pytest.raises(InputError):
        bench.feeding.set_source(FeedSource(bench.room, FeedKind.CSV, "bad"))
    with bench.store.write("by hand", bench.clock.now()) as act:
        act.set_setting(FEEDS, [FeedSource(bench.room, FeedKind.CSV, "bad").row(), "nonsense"])
    bench.feeding.step()
    (trouble,) = bench.feeding.troubles
    assert trouble.zone_id == bench.room
    assert "can't be used" in trouble.said


@pytest.mark.parametrize(
    "row", [None, {}, {"zone": 1, "kind": "csv", "path": ""}, {"zone": "1", "kind": "csv"},
            {"zone": 1, "kind": "wind", "path": "x"},
            {"zone": 1, "kind": "csv", "path": "x", "layout": 3}],
)  # fmt: skip
def test_rows_that_name_no_source(row: object) -> None:
    with pytest.raises(InputError):
        source_of(row)


def test_a_source_is_written_and_read_back() -> None:
    source = FeedSource(3, FeedKind.CSV, "/logs/room.csv", {"delimiter": ";"}, 17)
    assert source_of(source.row()) == source


def test_after_a_restart_a_source_goes_on_behind_the_record(bench: Bench) -> None:
    bench.shop.flat("Mon 01:00", "Mon 09:00", 20.0, step_min=10)
    bench.shop.type(21.0)
    bench.set()
    start = bench.starts[-1]
    assert start.after_us == at("Mon 09:00")
    assert start.recent[0].at_us == at("Mon 02:00")
    assert start.recent[-1] == Sample(at("Mon 09:00"), 20_000)


def test_a_line_in_the_file_is_on_the_tile_at_the_next_tick(tmp_path: Path) -> None:
    """From the logger's program through the real feed to the board."""
    clock = FakeClock(at("Mon 10:00"))
    store = Store.open_memory()
    found_shop(store, clock.now())
    shop = Shop(store, clock, SHOP_ZONE)
    path = tmp_path / "room.csv"

    def stamped(celsius: float) -> str:
        return f"{to_datetime(clock.now()):%Y-%m-%d %H:%M:%S},{celsius}\n"

    path.write_text(HEAD + stamped(20.5), encoding="utf-8")
    layout = layout_of(preview(path.read_bytes(), default_zone="UTC"))
    feeding = Feeding(store, clock, open_feed)
    shop.do(feeding.set_source(FeedSource(shop.room, FeedKind.CSV, str(path), layout)))
    shop.glue()

    def tick() -> float:
        changes = feeding.step()
        if changes is not None:
            shop.spread(changes)
        last = shop.board.records()[shop.room].last
        assert last is not None
        return last.temperature_mc / 1000

    assert tick() == 20.5
    clock.advance(seconds=60)
    with path.open("a", encoding="utf-8") as file:
        file.write(stamped(21.5))
    clock.advance(seconds=10)
    assert tick() == 21.5
    clock.advance(minutes=16)
    tick()
    assert [t.kind for t in feeding.troubles] == [FaultKind.LOST]
    again = Feeding(store, clock, open_feed)
    again.step()
    assert again.last(shop.room) is None, "what the record has is not read again"


def test_a_gap_is_proposed_to_have_been_as_cold_as_its_colder_end(bench: Bench) -> None:
    start, end = at("Mon 18:00"), at("Tue 08:00")
    question = NightQuestion(bench.room, start, end, ahead=False)
    assert proposal_mc(bench.store, bench.room, question) is None
    bench.shop.feed([(start, 21.0), (end, 17.5)])
    bench.clock.set(end)
    assert proposal_mc(bench.store, bench.room, question) == 17_500
    bench.shop.do(bench.shop.bench.set_heating(bench.room, Heating(420, 1080, 15_000)))
    assert proposal_mc(bench.store, bench.room, question) == 15_000
    bench.shop.do(bench.shop.bench.set_heating(bench.room, Heating(420, 1080, 19_000)))
    assert proposal_mc(bench.store, bench.room, question) == 17_500
    bench.shop.bench.answer_night(question, 17_500)


def test_before_a_night_the_last_reading_is_proposed(bench: Bench) -> None:
    bench.shop.feed([(at("Mon 10:00"), 20.0)])
    question = NightQuestion(bench.room, at("Mon 18:00"), at("Tue 08:00"), ahead=True)
    assert proposal_mc(bench.store, bench.room, question) == 20_000
