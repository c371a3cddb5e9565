"""Golden pictures of whole screens over the demo's invented shop, at its fixed instant.

The board in both themes and sizes, every panel and dialog in one theme and size, turn by turn.
The font of the program and a cursor that stands still are set for each picture, so that no test
before it can change it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QFont, QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from helpers import golden
from helpers.demo_window import DemoWindow
from helpers.session import BERLIN
from helpers.shop import FakeClock
from rackboard.core.alerts.kinds import Kind
from rackboard.core.bench import JointKind, PlaceKind
from rackboard.core.instants import DAY_US, HOUR_US
from rackboard.core.words import Word
from rackboard.services.alerts import Alerts
from rackboard.services.bench import Bench, ClubEntry, JobEntry
from rackboard.services.board import Board
from rackboard.services.demo import demo_start
from rackboard.services.founding import found_shop
from rackboard.store import Store
from rackboard.ui import type
from rackboard.ui.language import speak
from rackboard.ui.main_window import MainWindow
from rackboard.ui.rack_view import RackView
from rackboard.ui.resources import SEMI_CONDENSED, load_fonts
from rackboard.ui.session import Session
from rackboard.ui.theme import COLD as COLD_FILL
from rackboard.ui.theme import DARK_TOKENS, FILLS, INK, LIGHT_TOKENS, WHITE, Appearance

LARGE, SMALL = (1920, 1080), (1280, 800)
SIZES = {"1920": LARGE, "1280": SMALL}
THEMES = ("dark", "light")
COLD, WAIT, BENCH, WET, HOLD = "A4", "A1", "A6", "A11", "A13"
"""Slots of the demo, by what stands in them."""


@pytest.fixture(autouse=True)
def look(qapp: QApplication) -> Iterator[None]:
    """The font of the program, a cursor that doesn't blink, English before and after."""
    before = qapp.font(), qapp.palette(), qapp.styleSheet(), qapp.cursorFlashTime()
    load_fonts()
    for measured in vars(type).values():  # by a test that had no fonts yet
        if hasattr(measured, "cache_clear"):
            measured.cache_clear()
    speak("en")
    font = QFont(SEMI_CONDENSED)
    font.setPixelSize(17)
    font.setWeight(QFont.Weight.Medium)
    qapp.setFont(font)
    qapp.setCursorFlashTime(0)
    yield
    speak("en")
    qapp.setFont(before[0])
    qapp.setPalette(before[1])
    qapp.setStyleSheet(before[2])
    qapp.setCursorFlashTime(before[3])


def ramp(one: str, other: str, steps: int) -> list[int]:
    """Return the colours from one to the other, as a letter's soft edge has them."""
    a, b = QColor(one), QColor(other)
    return [
        QColor(*(
            round(x + (y - x) * step / steps)
            for x, y in zip(a.getRgb()[:3], b.getRgb()[:3], strict=True)  # type: ignore[index]
        )).rgb()
        for step in range(steps + 1)
    ]  # fmt: skip


@cache
def colours() -> list[int]:
    """Return those of both themes, and of soft edges between them: a picture needs no others."""
    found = []
    for tokens in (DARK_TOKENS, LIGHT_TOKENS):
        found += [QColor(token).rgb() for token in tokens.values()]
        for front, steps in (("text", 8), ("sub", 4), ("edge", 3)):
            for back in ("bg", "surf"):
                found += ramp(tokens[front], tokens[back], steps)
    for fill in (*FILLS.values(), COLD_FILL):
        found += ramp(WHITE if fill == FILLS[Word.WAIT] else INK, fill, 6)
        found += ramp(fill, DARK_TOKENS["surf"], 2) + ramp(fill, LIGHT_TOKENS["surf"], 2)
    return sorted(set(found))


def check(name: str, widget: QWidget) -> None:
    """Compare a widget, at rest and in the active window, with its golden picture.

    It is kept in few colours, or the pictures would be twice as large.
    """
    widget.window().activateWindow()
    for _ in range(4):
        QApplication.processEvents()
    for view in widget.findChildren(RackView):
        view._fade.setCurrentTime(view._fade.duration())  # a plate that has just changed
    picture = widget.grab().toImage()
    assert picture.devicePixelRatio() == 1.0
    few = picture.convertToFormat(
        QImage.Format.Format_Indexed8, colours(), Qt.ImageConversionFlag.AvoidDither
    )
    golden.check(f"screen-{name}", few)


def shown(demo: DemoWindow) -> QWidget:
    """Return the board without the menu bar, whose underlines depend on the active window."""
    demo.window.refresh()
    board = demo.window.centralWidget()
    assert board is not None
    return board


def sized(window: MainWindow, size: tuple[int, int]) -> None:
    """Give a window its size once more: the menu bar goes by the size that the board had before."""
    window.resize(size[0], size[1] + 1)
    window.resize(*size)
    QApplication.processEvents()


def opened(qtbot: Any, folder: Path, size: tuple[int, int], theme: str) -> DemoWindow:
    """Return the window over the demo."""
    made = DemoWindow(qtbot, folder, size, theme)
    sized(made.window, size)
    return made


def with_alarms(demo: DemoWindow) -> Alerts:
    """Start the engine of the alerts over the demo."""
    alerts = Alerts(demo.session.store, demo.clock)
    demo.session.alerts = alerts
    demo.session.raise_due()
    return alerts


def new_shop(qtbot: Any, folder: Path, size: tuple[int, int], theme: str) -> DemoWindow:
    """Return a window over a founded shop in which nothing has been glued yet."""
    made = DemoWindow.__new__(DemoWindow)
    made.clock = FakeClock(demo_start(BERLIN))
    store = Store.open_memory()
    found_shop(store, made.clock.now())
    board = Board(store, made.clock, BERLIN)
    made.session = Session(store, made.clock, board, Bench(store, made.clock, board.snapshot.hours))
    appearance = Appearance(theme)
    made.window = MainWindow(made.session, appearance)
    appearance.setParent(made.window)
    made.session.setParent(made.window)
    qtbot.addWidget(made.window)
    made.window.board.set_reduced_motion(True)
    made.window.resize(*size)
    made.window.show()
    made.window.start()
    sized(made.window, size)
    return made


# The board


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("theme", THEMES)
def test_board(qtbot: Any, tmp_path: Path, theme: str, size: str) -> None:
    demo = opened(qtbot, tmp_path, SIZES[size], theme)
    demo.select(WAIT)
    check(f"board-{theme}-{size}", shown(demo))


def test_board_with_its_menu_bar(qtbot: Any, tmp_path: Path) -> None:
    demo = opened(qtbot, tmp_path, SMALL, "dark")
    bar = demo.window.menuBar()
    check("menu-bar", bar)


@pytest.mark.parametrize(("theme", "size"), [("dark", "1920"), ("light", "1280")])
def test_board_with_alarms(qtbot: Any, tmp_path: Path, theme: str, size: str) -> None:
    demo = opened(qtbot, tmp_path, SIZES[size], theme)
    with_alarms(demo)
    demo.select(HOLD)
    check(f"alarms-{theme}-{size}", shown(demo))


def test_board_in_german(qtbot: Any, tmp_path: Path) -> None:
    speak("de")
    demo = opened(qtbot, tmp_path, SMALL, "dark")
    demo.select(WAIT)
    check("board-german-1280", shown(demo))


@pytest.mark.parametrize(("theme", "size"), [("dark", "1280"), ("light", "1920")])
def test_stale(qtbot: Any, tmp_path: Path, theme: str, size: str) -> None:
    demo = opened(qtbot, tmp_path, SIZES[size], theme)
    demo.select(WAIT)
    demo.clock.advance(seconds=40)
    check(f"stale-{theme}-{size}", shown(demo))


@pytest.mark.parametrize(("theme", "size"), [("dark", "1280"), ("light", "1920")])
def test_first_run(qtbot: Any, tmp_path: Path, theme: str, size: str) -> None:
    demo = new_shop(qtbot, tmp_path, SIZES[size], theme)
    check(f"first-run-{theme}-{size}", shown(demo))


@pytest.mark.parametrize("theme", THEMES)
def test_wall(qtbot: Any, tmp_path: Path, theme: str) -> None:
    demo = opened(qtbot, tmp_path, LARGE, theme)
    check(f"wall-{theme}", on_wall(demo))


def test_stale_on_the_wall(qtbot: Any, tmp_path: Path) -> None:
    demo = opened(qtbot, tmp_path, LARGE, "dark")
    demo.clock.advance(seconds=40)
    check("wall-stale", on_wall(demo))


def on_wall(demo: DemoWindow) -> QWidget:
    window = demo.window
    window.toggle_wall()
    assert window._wall is not None
    window._wall.set_reduced_motion(True)
    window.showNormal()
    sized(window, LARGE)
    return shown(demo)


# The right column


INSPECTED = {"cold": COLD, "bench": BENCH, "wet": WET, "hold": HOLD, "laid-out": "A14",
             "box": "B1", "empty": "A15"}  # fmt: skip


@pytest.mark.parametrize("name", INSPECTED)
def test_inspector(qtbot: Any, tmp_path: Path, name: str) -> None:
    theme = THEMES[list(INSPECTED).index(name) % 2]
    demo = opened(qtbot, tmp_path, LARGE, theme)
    demo.select(INSPECTED[name])
    shown(demo)
    check(f"inspector-{name}", demo.window.board.usual)


def test_list_of_what_happened(qtbot: Any, tmp_path: Path) -> None:
    demo = opened(qtbot, tmp_path, SMALL, "light")
    demo.window.board.usual.head.toggle()
    shown(demo)
    check("happened", demo.window.board.usual)


def irons(demo: DemoWindow) -> int:
    """Lay out eight irons in the new shop; return their batch."""
    session = demo.session
    rack = session.board.snapshot.place(PlaceKind.RACK)
    assert rack.zone_id is not None
    session.take(session.bench.type_temperature(rack.zone_id, 17_500, at_rack=True))
    clubs = tuple(ClubEntry(f"{n} iron", JointKind.SOLID_HEAD, rack.id, n) for n in range(3, 11))
    promise = demo.clock.now() + 4 * DAY_US
    laid = session.bench.lay_out(JobEntry("220", "D. Whitlow", "555 0100", promise, clubs, 2, "K1"))
    session.take(laid.changes)
    return laid.batch_id


@pytest.mark.parametrize(("theme", "size"), [("dark", "1920"), ("light", "1280")])
def test_glue_up(qtbot: Any, tmp_path: Path, theme: str, size: str) -> None:
    demo = new_shop(qtbot, tmp_path, SIZES[size], theme)
    session, window = demo.session, demo.window
    batch = irons(demo)
    window.new_job()
    panel = window._glue_up
    assert panel is not None
    form = panel.hands.job
    check(f"glue-up-1-job-{size}", panel)
    form.customer.setText("M. Ashby")
    form.phone.setText("555 0102")
    form.promise.setText("Sat 08:00")
    form.clubs.setFocus()
    QTest.keyClicks(form.clubs, "50° wedge, 54° wedge, 58° wedge")
    QTest.keyClick(form.clubs, Qt.Key.Key_Return)
    panel.setFocus()
    check(f"glue-up-1-clubs-{size}", panel if size == "1280" else shown(demo))
    window._leave_panel()
    window.resume_batch(batch)
    check(f"glue-up-2-mixed-{size}", panel)
    session.take(session.bench.mix(batch))
    demo.clock.advance(minutes=6)
    session.tick()
    check(f"glue-up-3-racked-{size}", panel)
    session.take(session.bench.rack_all(batch))
    check(f"glue-up-4-look-{size}", panel)


def test_warm_parts_stop(qtbot: Any, tmp_path: Path) -> None:
    demo = opened(qtbot, tmp_path, LARGE, "light")
    demo.select("A15")
    demo.window.new_job()
    panel = demo.window._glue_up
    assert panel is not None
    qtbot.waitUntil(demo.window.isActiveWindow)
    hands = panel.hands
    hands.job.clubs.setFocus()
    hands.job.clubs.setText("7 iron, 8 iron")
    QTest.keyClick(hands.job.clubs, Qt.Key.Key_Return)
    hands.layout_page.parts["warm"].click()
    assert panel.page is hands.stop
    check("glue-up-stop", panel)


# Dialogs: each in one theme and size, turn by turn


def find(demo: DemoWindow) -> None:
    demo.window.doing.find()
    (dialog,) = demo.dialogs()
    dialog.search.setText("fen")  # type: ignore[attr-defined]


def epoxy(demo: DemoWindow) -> None:
    from rackboard.ui.epoxy_form import EpoxyForm

    EpoxyForm(demo.session, demo.window, epoxy=demo.session.store.shop.epoxies()[2]).open()


def settings_page(page: int) -> Callable[[DemoWindow], None]:
    def act(demo: DemoWindow) -> None:
        demo.window.doing.settings()
        (dialog,) = demo.dialogs()
        dialog.show_page(page)  # type: ignore[attr-defined]

    return act


def help_page(key: str) -> Callable[[DemoWindow], None]:
    def act(demo: DemoWindow) -> None:
        demo.window.doing.help()
        (dialog,) = demo.dialogs()
        dialog.show_page(key)  # type: ignore[attr-defined]

    return act


def on(slot: str, command: str) -> Callable[[DemoWindow], None]:
    """Give a command to what stands in a slot."""

    def act(demo: DemoWindow) -> None:
        demo.select(slot)
        demo.window._slots()[command]()

    return act


def alerts_page(demo: DemoWindow) -> None:
    with_alarms(demo)
    demo.window.doing.alerts()


def withdrawn(demo: DemoWindow) -> None:
    """Say that a batch that may be cut and gripped was mixed later: the permission falls."""
    from rackboard.ui.alert_dialog import AlertDialog

    alerts = with_alarms(demo)
    demo.select(BENCH)
    standing = demo.window.selected_standing()
    assert standing is not None
    bench = demo.session.bench
    demo.session.take(bench.correct_mixed(standing.batch.id, demo.clock.now() - HOUR_US))
    demo.session.raise_due()
    alert = next(alert for alert in alerts.open if alert.kind == Kind.WITHDRAWN)
    AlertDialog(demo.session, alert, demo.window).open()


def message(demo: DemoWindow) -> None:
    from rackboard.ui.message import MessageDialog

    MessageDialog(
        demo.window, "The data can't be written: the disk is full.",
        "Make room on it; what you did last is not on record. The board goes on.",
    ).open()  # fmt: skip


DIALOGS: dict[str, Callable[[DemoWindow], object]] = {
    "find": find, "epoxy-form": epoxy, "shelf": lambda demo: demo.window.doing.shelf(),
    **{f"settings-{page}": settings_page(page) for page in range(5)},
    "correct": on(BENCH, "correct"), "swap": on(BENCH, "swap"), "release": on(WAIT, "release"),
    "hold-answer": on(HOLD, "answer"), "disturbed-wet": on(WET, "disturb"),
    "move": on(WAIT, "move"), "promise": on(WAIT, "promise"),
    "temperature": on(WAIT, "temperature"),
    **{f"help-{key}": help_page(key) for key in ("states", "board", "keys", "model", "cautions")},
    "record": on(WAIT, "record"), "curve-table": on(WAIT, "table"),
    "alerts-page": alerts_page, "alert-withdrawn": withdrawn, "message": message,
    "erase": on(WAIT, "erase"), "import": on(WAIT, "import"),
}  # fmt: skip


@pytest.mark.parametrize("name", DIALOGS)
def test_dialog(qtbot: Any, tmp_path: Path, name: str) -> None:
    at = list(DIALOGS).index(name)
    theme, size = THEMES[at % 2], (LARGE, SMALL)[at // 2 % 2]
    demo = opened(qtbot, tmp_path, size, theme)
    DIALOGS[name](demo)
    QApplication.processEvents()
    dialog = demo.dialogs()[-1]
    check(name, dialog)
