"""Temperature sources in the window: set by key and tap, shown as they speak, taken back."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from helpers.session import make_session, zone_of
from helpers.shop import FakeClock
from helpers.windows import make_window
from rackboard.core.bench import PlaceKind
from rackboard.core.feed import FeedKind, FeedSource
from rackboard.core.instants import to_datetime
from rackboard.feeds.live import layout_of, open_feed
from rackboard.feeds.logger_csv import preview
from rackboard.feeds.sysfs import discover
from rackboard.services.feeding import Feeding
from rackboard.ui.feed_form import FeedForm
from rackboard.ui.feed_settings import FeedDialog, FeedPage
from rackboard.ui.session import Session
from rackboard.ui.theme import dark_theme, light_theme

HEAD = "Time,Temperature\n"


class Room:
    """A session with a made-up tree of sensors, and the page over it."""

    def __init__(self, qtbot: Any, root: Path) -> None:
        self.qtbot, self.root = qtbot, root
        self.session: Session
        self.clock: FakeClock
        self.session, self.clock = make_session()
        self.feeding = Feeding(
            self.session.store, self.session.clock,
            lambda source, start: open_feed(source, start, root, lambda read: read()),
        )  # fmt: skip
        self.wire = root / "sys/bus/w1/devices/28-0a1b2c3d4e5f/temperature"
        self.wire.parent.mkdir(parents=True)
        self.wire.write_text("21312\n")
        self.dialog = FeedDialog(
            self.session, self.feeding, make_window(qtbot), sensors=lambda: discover(root),
            theme=dark_theme(),
        )  # fmt: skip
        self.dialog.show()

    @property
    def page(self) -> FeedPage:
        return self.dialog.page

    def form(self) -> FeedForm:
        QTest.keyClick(self.page.setting, Qt.Key.Key_Space)
        assert self.page.form is not None
        return self.page.form

    def csv(self, celsius: str = "20.5 °C") -> Path:
        path = self.root / "bench.csv"
        at = to_datetime(self.clock.now())
        path.write_text(f"{HEAD}{at:%Y-%m-%dT%H:%M:%SZ},{celsius}\n", encoding="utf-8")
        return path

    def open(self, form: FeedForm, path: Path) -> None:
        form.open_file(path)
        self.qtbot.waitUntil(lambda: not form.reading, timeout=10_000)

    def step(self) -> None:
        changes = self.feeding.step()
        if changes is not None:
            self.session.take(changes)

    def facts(self) -> dict[str, str]:
        lines = self.page.zones.lines_model.lines()
        return {line.text: line.fact.replace("\N{NO-BREAK SPACE}", " ") for line in lines}


@pytest.fixture()
def room(qtbot: Any, tmp_path: Path) -> Room:
    return Room(qtbot, tmp_path)


def plain(said: str) -> str:
    return said.replace("\N{NO-BREAK SPACE}", " ")


def test_a_zone_is_typed_until_it_has_a_source(room: Room) -> None:
    assert set(room.facts().values()) == {"typed"}
    assert room.page.setting.text() == "Set…"
    assert not room.page.removing.isEnabled()


def test_a_sensor_is_chosen_and_says_what_it_measures_before_it_is_used(room: Room) -> None:
    form = room.form()
    assert not form.using.isEnabled()
    QTest.keyClick(form.from_sensor, Qt.Key.Key_Space)
    assert not form.using.isEnabled(), "nothing is chosen for anybody"
    form.sensor.setFocus()
    QTest.keyClick(form.sensor, Qt.Key.Key_Down)
    assert plain(form.now.text()) == "It says 21.3 °C, 15:24."
    room.wire.write_text("22000\n")
    form.look()
    assert plain(form.now.text()) == "It says 22.0 °C, 15:24."
    QTest.keyClick(form, Qt.Key.Key_Return)
    (source,) = room.feeding.sources()
    assert (source.kind, source.path) == (FeedKind.ONE_WIRE, "28-0a1b2c3d4e5f")
    room.step()
    zone = room.session.board.snapshot.zones[source.zone_id].name
    assert room.facts()[zone] == "sensor 28-0a1b2c3d4e5f, 22.0 °C"
    last = room.session.store.record.last_reading(source.zone_id)
    assert last is not None
    assert last.temperature_mc == 22_000
    room.session.undo()
    assert room.feeding.sources() == []
    assert room.facts()[zone] == "typed"


def test_a_file_is_shown_asked_about_and_used(room: Room) -> None:
    form = room.form()
    room.open(form, room.csv("20.5"))
    assert form.answers.asked.text() == "Is it °C or °F? The file doesn't say."
    assert not form.using.isEnabled()
    form.answers.unit.setCurrentIndex(0)
    form.answers.unit.activated.emit(0)
    room.qtbot.waitUntil(lambda: not form.reading, timeout=10_000)
    assert plain(form.now.text()) == "It says 20.5 °C, 15:24."
    room.clock.advance(minutes=1)
    with (room.root / "bench.csv").open("a", encoding="utf-8") as file:
        file.write(f"{to_datetime(room.clock.now()):%Y-%m-%dT%H:%M:%SZ},20.7\n")
    form.look()
    assert plain(form.now.text()) == "It says 20.7 °C, 15:25."
    form.using.click()
    room.step()
    (source,) = room.feeding.sources()
    assert source.layout is not None
    rows = room.session.store.record.readings(source.zone_id, 0, 1 << 60)
    assert [row[1] for row in rows] == [20_500, 20_700]
    again = room.form()
    room.qtbot.waitUntil(lambda: not again.reading, timeout=10_000)
    assert again.file_name.text() == "bench.csv", "the form begins with what is set"
    assert again.answers.unit.currentText() == "°C"
    again.using.click()
    (same,) = room.feeding.sources()
    assert same.layout == source.layout


def test_a_file_that_is_no_record_is_refused_in_the_form(room: Room) -> None:
    form = room.form()
    path = room.root / "letter.txt"
    path.write_text("Dear customer", encoding="utf-8")
    room.open(form, path)
    assert "times and temperatures" in form.message.text()
    assert not form.using.isEnabled()
    room.open(form, room.root / "nowhere.csv")
    assert "there is no such file" in form.message.text()
    room.open(form, room.csv())
    assert form.message.text() == ""
    assert form.using.isEnabled()


def test_a_trouble_is_said_calmly_and_goes_again(room: Room) -> None:
    zone = zone_of(room.session)
    room.session.take(
        room.feeding.set_source(FeedSource(zone, FeedKind.ONE_WIRE, "28-0a1b2c3d4e5f"))
    )
    room.step()
    room.wire.rename(room.root / "away")
    room.clock.advance(minutes=2)
    room.step()
    room.page.refresh()
    name = room.session.board.snapshot.zones[zone].name
    assert room.facts()[name] == "sensor 28-0a1b2c3d4e5f: in trouble"
    assert "Since 15:26: 28-0a1b2c3d4e5f is not there." in room.page.said.text()
    (room.root / "away").rename(room.wire)
    room.clock.advance(minutes=2)
    room.step()
    assert "Since" not in room.page.said.text()
    assert plain(room.facts()[name]).endswith("21.3 °C")


def test_a_source_is_removed_by_key_and_undo_brings_it_back(room: Room) -> None:
    zone = zone_of(room.session)
    layout = layout_of(preview(room.csv().read_bytes()))
    path = str(room.root / "bench.csv")
    room.session.take(room.feeding.set_source(FeedSource(zone, FeedKind.CSV, path, layout)))
    assert room.page.removing.isEnabled()
    assert room.page.setting.text() == "Change…"
    QTest.keyClick(room.page.removing, Qt.Key.Key_Space)
    assert room.feeding.sources() == []
    room.session.undo()
    assert len(room.feeding.sources()) == 1
    assert room.page.removing.isEnabled()


def test_the_list_opens_the_form_by_enter_and_escape_leaves_it(room: Room) -> None:
    room.page.zones.setFocus()
    QTest.keyClick(room.page.zones, Qt.Key.Key_Down)
    QTest.keyClick(room.page.zones, Qt.Key.Key_Return)
    form = room.page.form
    assert form is not None
    assert form.zone.id == zone_of(room.session, PlaceKind.BOX)
    QTest.keyClick(form, Qt.Key.Key_Escape)
    assert room.page.form is None
    assert room.feeding.sources() == []


def test_a_computer_without_sensors_says_so(qtbot: Any) -> None:
    session, _ = make_session()
    feeding = Feeding(session.store, session.clock, open_feed)
    zone = next(iter(session.board.snapshot.zones.values()))
    form = FeedForm(
        session, feeding, zone, make_window(qtbot), sensors=list, theme=light_theme()
    )
    assert not form.sensor.isEnabled()
    form.show()
    form.from_sensor.setChecked(True)
    assert not form.using.isEnabled()


def test_the_page_follows_the_scheme(room: Room) -> None:
    room.dialog.show_theme(light_theme())
    assert room.page.zones._delegate.theme is room.dialog.theme
