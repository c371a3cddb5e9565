"""R32: times are absolute: HH:MM, the weekday if not today, nowhere a bare countdown."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QLocale
from PySide6.QtWidgets import QApplication

from helpers.demo_window import DemoWindow
from helpers.said import Painted, widget_texts
from helpers.session import BERLIN
from helpers.shown_times import COUNTDOWN, known_instants, said_at, strings, times_in
from rackboard.core.instants import DAY_US, HOUR_US, MINUTE_US, Instant, from_datetime
from rackboard.core.schedule import DEFAULT_WEEK, OpeningHours
from rackboard.core.words import Word
from rackboard.services.demo import DemoFeed
from rackboard.services.finding import Finding
from rackboard.ui.board_presenter import BoardPresenter
from rackboard.ui.board_view import BoardView
from rackboard.ui.language import speak, translated
from rackboard.ui.tile import Tile, TileKind
from rackboard.ui.wall_presenter import WallPresenter
from rackboard.ui.wording import Times

STEPS_MIN = (0, 47, 95, 3, 200, 333, 240, 310, 60, 15, 150, 400, 360, 500, 55)
"""From the demo's Thursday afternoon on, over two days and two nights."""

FULL_DAYS = {
    "en": {"today", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday",
           "March", "April", "since"},
    "de": {"heute", "Montag", "Dienstag", "Mittwoch", "Donnerstag", "Freitag", "Samstag",
           "Sonntag", "März", "April", "seit"},
}  # fmt: skip


@pytest.fixture(params=["en", "de"])
def language(request: pytest.FixtureRequest, qapp: QApplication) -> Iterator[str]:
    before = QLocale()
    speak(request.param)
    yield request.param
    speak("en")
    QLocale.setDefault(before)


class TwoDays:
    """The demo with its sensors, hour by hour."""

    def __init__(self, qtbot: Any, folder: Path) -> None:
        self.demo = DemoWindow(qtbot, folder)
        self.session = self.demo.session
        self._feed = DemoFeed(self.session.store, BERLIN)

    def moments(self) -> Iterator[Instant]:
        """Go on from moment to moment."""
        for minutes in STEPS_MIN:
            self.demo.clock.advance(minutes=minutes)
            now = self.demo.clock.now()
            changes = self._feed.feed(now)
            if changes is not None:
                self.session.board.take_in(changes)
            self.session.tick()
            self.demo.window.refresh()
            yield now

    def view(self) -> BoardView:
        """What the board shows."""
        view = self.demo.window.board._view
        assert view is not None
        return view

    def texts(self) -> set[str]:
        """Every text of the near view and the wall, without the inspector."""
        session, view = self.session, self.view()
        presenter = BoardPresenter(session.board, self.demo.clock.now(), session.unit)
        shown = (
            view.strip, view.racks, view.chips, view.jobs, view.head, view.happenings,
            WallPresenter(presenter).view(),
        )  # fmt: skip
        return set(strings(shown))

    def counter(self) -> list[str]:
        """The sentences to read aloud."""
        finding = Finding(self.session.board, self.demo.clock.now())
        return [translated(finding.sentence(job)) for job in finding.jobs]


def test_every_time_is_an_instant_that_the_board_knows_said_with_its_day(
    qtbot: Any, tmp_path: Path, language: str
) -> None:
    days = TwoDays(qtbot, tmp_path)
    seen: set[str] = set()
    for now in days.moments():
        known = known_instants(days.session.board, days.session.store, now)
        hours = days.session.board.snapshot.hours
        known |= {t for t in (hours.next_opening(now), hours.next_closing(now)) if t is not None}
        said = {said_at(instant, now, BERLIN, language) for instant in known}
        for text in days.texts():
            for time in times_in(text, language):
                assert time in said, (text, time)
                seen.add(time)
        for sentence in days.counter():  # the weekday in full, before the time
            if times := times_in(sentence, language):
                before = re.findall(r"(\S+) (?:(?:at|um) )?\d\d:\d\d", sentence)
                assert len(before) == len(times) == 1, sentence
                assert before[0] in FULL_DAYS[language], sentence
    assert len(seen) > 60
    assert any(" " in time for time in seen)


def test_no_countdown_is_said(qtbot: Any, tmp_path: Path, language: str) -> None:
    days = TwoDays(qtbot, tmp_path)
    for _ in days.moments():
        counted = [text for text in days.texts() if COUNTDOWN.search(text)]
        assert counted == []


def test_no_countdown_in_inspector_and_dialogs(
    qtbot: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, language: str
) -> None:
    painted = Painted(monkeypatch)
    demo = DemoWindow(qtbot, tmp_path, (1280, 800))
    found = set()
    for slot in ("A4", "A7", "A11", "A13", "A14", "B1"):
        demo.select(slot)
        demo.window.refresh()
        for name in ("move", "correct", "record", "table", "answer", "disturb", "release", "find"):
            before = set(demo.dialogs())
            getattr(demo.window.doing, name)()
            for dialog in [demo.window, *(d for d in demo.dialogs() if d not in before)]:
                found |= {
                    text for text in painted.of(dialog) | set(widget_texts(dialog))
                    if COUNTDOWN.search(text)
                }  # fmt: skip
                if dialog is not demo.window:
                    dialog.close()
            QApplication.processEvents()
    assert found == set()


@pytest.mark.parametrize(
    ("text", "bad"),
    [
        ("ready in 20 min", True), ("3 h left", True), ("noch 12 min", True), ("0:41:07", True),
        ("-12:30", True), ("3 min ago", False), ("not before 17:20", False),
        ("60 min to use, 24 h to hit", False), ("2 h in the warm box at 32 °C", False),
    ],
)  # fmt: skip
def test_countdowns_are_recognised(text: str, bad: bool) -> None:
    assert (COUNTDOWN.search(text) is not None) is bad


@pytest.mark.parametrize("language", ["en", "de"], indirect=True)
def test_the_day_stands_before_every_time_that_is_not_today(language: str) -> None:
    hours = OpeningHours(DEFAULT_WEEK, BERLIN)
    start = from_datetime(datetime(2026, 3, 27, 14, 26, tzinfo=BERLIN))
    for step in range(-40 * 24, 40 * 24, 7):  # over the change to summer time on the 29th
        instant = start + step * HOUR_US + 11 * MINUTE_US
        for now in (start, start + 10 * HOUR_US, start + 2 * DAY_US):
            said = Times(hours, now).moment(instant)
            assert said == said_at(instant, now, BERLIN, language)
            clock = said.split()[-1]
            assert re.fullmatch(r"[0-2]\d:[0-5]\d", clock)
            local = hours.local(instant)
            far = local.date() != hours.local(now).date()
            assert (" " in said) is far
            assert clock == f"{local:%H:%M}"


def test_a_week_away_needs_the_date() -> None:
    """The same weekday a week on would be read as today's or the coming one."""
    hours = OpeningHours(DEFAULT_WEEK, BERLIN)
    now = from_datetime(datetime(2026, 3, 12, 14, 26, tzinfo=BERLIN))
    times = Times(hours, now)
    for days in (-8, -7, 7, 8):
        said = times.moment(now + days * DAY_US)
        assert not said.startswith(("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")), said
    assert times.moment(now + 6 * DAY_US) == "Wed 14:26"
    assert datetime(2026, 3, 12) + timedelta(days=6) == datetime(2026, 3, 18)


def test_tiles_keep_their_times_absolute_as_the_hours_pass(qtbot: Any, tmp_path: Path) -> None:
    """The same club's text doesn't count: it changes with facts, not with the clock."""
    days = TwoDays(qtbot, tmp_path)
    before: dict[tuple[int, int], Tile] = {}
    kept = 0
    for _ in days.moments():
        for rack in days.view().racks:
            for tile in rack.tiles:
                last = before.get(tile.key)
                if tile.kind is TileKind.JOINT and last and last.word is tile.word is Word.BENCH:
                    kept += last.time.split()[-1:] == tile.time.split()[-1:]
                before[tile.key] = tile
    assert kept > 5
