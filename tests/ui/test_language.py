"""The window in another language: whole, with its own plurals, decimals and dates."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from PySide6.QtCore import QEvent, QLocale, QSize, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QDialogButtonBox, QWidget

from helpers.said import Painted, english_words, widget_texts
from helpers.shop import FakeClock
from rackboard.core.errors import InputError
from rackboard.core.instants import from_datetime
from rackboard.core.schedule import DEFAULT_WEEK, OpeningHours
from rackboard.core.spoken_time import format_moment, parse_moment
from rackboard.core.temperature import Unit, format_temperature, parse_temperature
from rackboard.core.text import text
from rackboard.core.words import PHRASES, Word
from rackboard.services.alerts import Alerts
from rackboard.services.bench import Bench
from rackboard.services.board import Board
from rackboard.services.demo import demo_start, furnish_demo
from rackboard.services.furnishing import Furnishing
from rackboard.store import Store
from rackboard.ui import Options, language
from rackboard.ui.language import say, speak, spoken, translated
from rackboard.ui.main import Program
from rackboard.ui.main_window import MainWindow
from rackboard.ui.resources import load_fonts
from rackboard.ui.session import Session
from rackboard.ui.theme import Appearance
from rackboard.ui.tile import word_text

BERLIN = ZoneInfo("Europe/Berlin")
NOW = from_datetime(datetime(2026, 3, 12, 14, 26, tzinfo=BERLIN))
HOURS = OpeningHours(DEFAULT_WEEK, BERLIN)
KEYS = {"\t": Qt.Key.Key_Tab, "\r": Qt.Key.Key_Return}


@pytest.fixture(autouse=True)
def english_afterwards(qapp: QApplication) -> Iterator[None]:
    before = QLocale()
    yield
    speak("en")
    QLocale.setDefault(before)


@pytest.fixture
def german() -> None:
    assert speak("de") == "de"


class System:
    """Stands in for QLocale, with a system of another language."""

    name_of_system = "fr_FR"

    def __init__(self, code: str = "") -> None:
        self.code = code

    @classmethod
    def system(cls) -> System:
        return cls(cls.name_of_system)

    @classmethod
    def setDefault(cls, locale: object) -> None:  # noqa: N802 - Qt's name
        """Leave Qt's own alone."""

    def name(self) -> str:
        return self.code


# Which language


@pytest.mark.parametrize(
    ("system", "chosen", "wanted"),
    [
        ("de_AT", "", "de"),
        ("en_GB", "", "en"),
        ("fr_FR", "", "en"),
        ("C", "", "en"),
        ("fr_FR", "de", "de"),
        ("de_DE", "en", "en"),
        ("de_DE", "tlh", "de"),
    ],
)
def test_which_language_is_spoken(
    monkeypatch: pytest.MonkeyPatch, system: str, chosen: str, wanted: str
) -> None:
    monkeypatch.setattr(System, "name_of_system", system)
    monkeypatch.setattr(language, "QLocale", System)
    assert speak(chosen) == wanted
    assert spoken() == wanted


@pytest.mark.expects_log("can't load the language de")
def test_a_missing_catalogue_leaves_english(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, german: None
) -> None:
    monkeypatch.setattr(language, "resource_path", lambda *parts: tmp_path.joinpath(*parts))
    assert speak("de") == "en"
    assert say("Menu", "Undo") == "Undo"


@pytest.mark.expects_log("can't load the language de")
def test_a_broken_catalogue_leaves_english(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    (tmp_path / "languages").mkdir()
    (tmp_path / "languages" / "de.qm").write_bytes(b"no catalogue at all" * 20)
    monkeypatch.setattr(language, "resource_path", lambda *parts: tmp_path.joinpath(*parts))
    assert speak("de") == "en"
    assert translated(text("Menu", "Undo")) == "Undo"


def test_there_and_back(german: None) -> None:
    assert say("Menu", "Undo") == "Rückgängig"
    assert speak("en") == "en"
    assert say("Menu", "Undo") == "Undo"
    assert speak("de") == "de"
    assert speak("de") == "de"
    assert say("Menu", "Undo") == "Rückgängig"


def test_qts_own_buttons_speak_it_too(german: None, qtbot: Any) -> None:
    box = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
    qtbot.addWidget(box)
    assert [button.text().replace("&", "") for button in box.buttons()] == ["Abbrechen"]


# Sentences, plurals, figures, times


def test_what_is_not_translated_stays_english(german: None) -> None:
    assert say("Nowhere", "%n odd clubs", "%n odd club", 2) == "2 odd clubs"
    assert translated("A customer's own words: 3.5") == "A customer's own words: 3.5"


@pytest.mark.parametrize(("number", "german"), [(0, "Tage"), (1, "Tag"), (2, "Tage")])
def test_plurals(number: int, german: str) -> None:
    speak("de")
    assert translated(text("House", "%n days", "%n day", number)) == f"{number} {german}"
    assert say("House", "%n days", "%n day", number) == f"{number} {german}"


def test_parts_are_translated_in_their_own_order(german: None) -> None:
    error = InputError(text("Sheet", "a number"), text("Sheet", "nothing"), "X")
    assert translated(error.message) == "X: gebraucht wird eine Zahl, da steht nichts."
    assert translated(str(error)) == translated(error.message)


def test_a_temperature_has_a_comma(german: None) -> None:
    shown = translated(format_temperature(17_400, Unit.C))
    assert shown == "17,4\N{NO-BREAK SPACE}°C"
    assert parse_temperature(shown, Unit.C, "here") == 17_400
    assert parse_temperature("13,5", Unit.C, "here") == 13_500


@pytest.mark.parametrize(
    ("hours", "shown"),
    [(0, "14:26"), (-26, "Mi 12:26"), (41.5, "Sa 07:56"), (-24 * 10, "2. Mär 14:26"),
     (-24 * 300, "16. Mai 2025 15:26")],
)  # fmt: skip
def test_moments_are_shown_as_they_may_be_typed(german: None, hours: float, shown: str) -> None:
    at = NOW + round(hours * 3_600_000_000)
    said = translated(format_moment(at, NOW, HOURS))
    assert said == shown
    if hours:
        assert abs(parse_moment(said, NOW, HOURS, hours > 0, "here") - at) < 60_000_000


def test_words_are_short_and_unlike_each_other(german: None) -> None:
    words = [word_text(word) for word in Word]
    for word in words:
        assert word.isupper()
        assert len(word) <= 7
    for one in words:
        for two in words:
            if one < two:
                same = sum(a == b for a, b in zip(one, two, strict=False))
                assert same <= 2, (one, two)
    assert all(translated(PHRASES[word]) != PHRASES[word] for word in Word)


# The window


class Shown:
    """The demo in a window of a size, furnished and shown in the language spoken."""

    def __init__(self, qtbot: Any, tmp_path: Path, width: int, height: int) -> None:
        load_fonts()
        clock = FakeClock(demo_start(BERLIN))
        self.store = Store.open_memory()
        furnish_demo(self.store, clock.now(), BERLIN, translated)
        board = Board(self.store, clock, BERLIN)
        session = Session(self.store, clock, board, Bench(self.store, clock, board.snapshot.hours))
        appearance = Appearance("dark")
        self.window = MainWindow(session, appearance)
        appearance.setParent(self.window)
        session.setParent(self.window)
        qtbot.addWidget(self.window)
        self.window.board.set_reduced_motion(True)
        self.size = QSize(width, height)
        self.window.resize(self.size)
        self.window.show()
        self.window.start()
        session.alerts = Alerts(self.store, clock, ())
        session.raise_due()
        self.window.refresh()
        QApplication.processEvents()

    def screens(self) -> Iterator[tuple[str, QWidget]]:
        """Yield the board with every slot chosen once, then every dialog."""
        window, doing = self.window, self.window.doing
        places = [p for p in window.session.board.snapshot.places.values() if p.prefix]
        for place in places:
            for slot in range(place.rows * place.columns):
                window.board.select(place.id, slot)
                yield f"{place.prefix}{slot + 1}", window
        window.board.select(places[0].id, 5)
        for name in ("temperature", "move", "correct", "promise", "record", "table", "find",
                     "shelf", "import_record", "erase_customer", "settings", "about", "help"):
            yield from self.dialogs(name, getattr(doing, name))
        window.board.select(places[0].id, 10)
        yield from self.dialogs("disturb", doing.disturb)
        window.board.select(places[0].id, 12)
        yield from self.dialogs("answer", doing.answer)
        window.toggle_wall()
        QApplication.processEvents()
        yield "wall", window
        window.toggle_wall()
        window.resize(self.size)
        yield from self.glue_up(places[0].id)

    def glue_up(self, rack_id: int) -> Iterator[tuple[str, QWidget]]:
        """Yield the pages of one club being glued on the free slot."""
        window = self.window
        window.activateWindow()
        window.board.select(rack_id, 14)
        window.new_job()
        yield "new job", window
        for page, keys in (("layout", "\t4\tD. Whitlow\t555\tSa 08:00\r"), ("mix", "\r")):
            for key in keys:
                focus = QApplication.focusWidget()
                assert focus is not None
                QTest.keyClick(focus, KEYS[key]) if key in KEYS else QTest.keyClicks(focus, key)
            QApplication.processEvents()
            yield page, window

    def dialogs(self, name: str, act: Any) -> Iterator[tuple[str, QWidget]]:
        """Yield what opens, and close it."""
        before = set(QApplication.topLevelWidgets())
        act()
        QApplication.processEvents()
        for dialog in set(QApplication.topLevelWidgets()) - before:
            if isinstance(dialog, QDialog) and dialog.isVisible():
                yield name, dialog
                dialog.close()


@pytest.fixture
def painted(monkeypatch: pytest.MonkeyPatch) -> Painted:
    return Painted(monkeypatch)


def test_no_english_word_is_left(
    qtbot: Any, tmp_path: Path, painted: Painted, german: None
) -> None:
    shown = Shown(qtbot, tmp_path, 1280, 800)
    found: dict[str, str] = {}
    said: set[str] = set()
    for name, widget in shown.screens():
        texts = painted.of(widget) | set(widget_texts(widget))
        said |= texts
        for line in english_words(texts):
            found.setdefault(line, name)
    assert not found, "\n".join(f"{name}: {line}" for line, name in found.items())
    assert {"SPERRE", "Gemischt", "Einstellungen", "Eisen 7–8", "17,4"} <= said


def test_no_decimal_point_is_left(
    qtbot: Any, tmp_path: Path, painted: Painted, german: None
) -> None:
    shown = Shown(qtbot, tmp_path, 1280, 800)
    found = set()
    for name, widget in shown.screens():
        for said in painted.of(widget) | set(widget_texts(widget)):
            if re.search(r"\d\.\d+\s?(?:°|h\b|min|%|kJ)", said):
                found.add((name, said))
    assert not found


@pytest.mark.parametrize(("width", "height"), [(1280, 800), (1920, 1080)])
def test_nothing_is_cut_in_german(
    qtbot: Any, tmp_path: Path, painted: Painted, german: None, width: int, height: int
) -> None:
    shown = Shown(qtbot, tmp_path, width, height)
    cut = set()
    for name, widget in shown.screens():
        painted.cut.clear()
        painted.of(widget)
        cut |= {(name, said) for said in painted.cut}
    assert not cut


def test_the_program_makes_its_window_anew(qtbot: Any, tmp_path: Path) -> None:
    program = Program(Options(clock=FakeClock(NOW), data_dir=str(tmp_path / "data")), BERLIN)
    program.window.show()
    program.window.start()
    try:
        first, session = program.window, program.window.session
        furnishing = Furnishing(session.store, session.clock)
        for code, undo in (("de", "Rückgängig"), ("en", "Undo")):
            session.take(furnishing.set_language(code))
            program.window.refresh()
            qtbot.waitUntil(lambda code=code: spoken() == code)
            qtbot.waitUntil(lambda: program.window is not None and program.window.isVisible())
            assert program.window is not first
            assert program.window.session is session
            assert program.window.commands["undo"].text().startswith(undo)
            # As the program's own event loop does, which no test runs.
            QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
            first = program.window
    finally:
        program.window.close()
        program.close()


def test_the_stop_list_finds(painted: Painted, qtbot: Any, tmp_path: Path) -> None:
    """In English nearly everything is English: the search can fail."""
    speak("en")
    shown = Shown(qtbot, tmp_path, 1280, 800)
    texts = painted.of(shown.window) | set(widget_texts(shown.window))
    assert len(english_words(texts)) > 20
