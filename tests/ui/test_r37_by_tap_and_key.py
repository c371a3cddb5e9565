"""R37: everything by a single tap and by key; nothing on bare letters, hover or double click."""

from __future__ import annotations

import string
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QEnterEvent, QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QApplication,
    QLabel,
    QRadioButton,
    QTextBrowser,
    QWidget,
)
from shiboken6 import getCppPointer

from helpers.board_values import board_view
from helpers.demo_window import DemoWindow
from helpers.screens import dialogs, focusable, spoken_name
from helpers.store import contents
from rackboard.ui.board import Board
from rackboard.ui.commands import MENUS
from rackboard.ui.keys import Key
from rackboard.ui.rack_view import RowView
from rackboard.ui.resources import load_fonts
from rackboard.ui.strip import TemperatureKey
from rackboard.ui.theme import dark_theme

ENTER, SPACE, TAB = Qt.Key.Key_Return, Qt.Key.Key_Space, Qt.Key.Key_Tab
LEFT = Qt.MouseButton.LeftButton
SHIFT, NONE = Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.NoModifier
SIZES = ((1920, 1080), (1280, 800))


@pytest.fixture
def demo(qtbot: Any, tmp_path: Path) -> DemoWindow:
    made = DemoWindow(qtbot, tmp_path)
    made.window.activateWindow()
    return made


@pytest.fixture(params=SIZES)
def board(qtbot: Any, request: pytest.FixtureRequest) -> Board:
    load_fonts()
    made = Board(dark_theme())
    made.set_reduced_motion(True)
    qtbot.addWidget(made)
    made.resize(request.param[0], request.param[1] - 22)
    made.show()
    made.show_view(board_view())
    made.activateWindow()
    QApplication.processEvents()
    return made


# Commands


@pytest.mark.qt_log_ignore("This plugin does not support grabbing the keyboard", extend=True)
def test_every_command_by_its_key_and_in_its_menu(demo: DemoWindow) -> None:
    window = demo.window
    fired: list[str] = []
    for name, _, lines in MENUS:
        for line in lines:
            if line is not None:
                action = window.commands[line.key]
                action.triggered.disconnect()
                action.triggered.connect(lambda _=False, key=line.key: fired.append(key))
        menu = window.commands.menu(name)
        menu.aboutToShow.emit()
        for line in lines:
            if line is None:
                continue
            action = window.commands[line.key]
            action.setEnabled(True)
            (key,) = action.shortcuts()[0]
            fired.clear()
            QTest.keyClick(window.board.rack, key.key(), key.keyboardModifiers())
            assert fired == [line.key]
            fired.clear()
            menu.popup(QPoint(40, 40))
            at = menu.actionGeometry(action).center()
            QTest.mouseMove(menu, at)
            QTest.mouseClick(menu, LEFT, NONE, at)
            assert fired == [line.key], "one tap on its line"
            menu.close()


def test_menus_open_by_alt_and_their_letter(demo: DemoWindow) -> None:
    for action in demo.window.menuBar().actions():
        letter = action.text()[action.text().index("&") + 1]
        assert letter.isalpha()
        assert action.menu() is not None


# The board's parts


def cell(view: RowView, row: int) -> QPoint:
    return view.visualRect(view.rows_model.index(row)).center()


def board_parts(board: Board) -> dict[str, tuple[Any, QWidget, Callable[[], None], Any]]:
    """Return signal, widget, what brings the keys there, and where a tap goes (and its key)."""
    usual = board.usual

    def chosen(view: RowView, row: int) -> Callable[[], None]:
        def choose() -> None:
            view.setFocus()
            view.select(row)

        return choose

    jobs = board.jobs.list
    box = jobs.visualRect(jobs.rows_model.index(1))
    temperature = board.strip.findChildren(TemperatureKey)[0]
    keys = [key for key in usual.inspector.findChildren(Key) if key.isVisible()]
    return {
        "slot": (board.slot_activated, board.rack, chosen(board.rack, 3), (cell(board.rack, 3),
                 ENTER)),
        "slot of the box": (board.slot_activated, board.box, chosen(board.box, 1),
                            (cell(board.box, 1), SPACE)),
        "chip": (board.chip_clicked, board.chips, chosen(board.chips, 1),
                 (cell(board.chips, 1), ENTER)),
        "job": (board.job_clicked, jobs, chosen(jobs, 1), (QPoint(20, cell(jobs, 1).y()), ENTER)),
        "ready": (board.ready_clicked, jobs, chosen(jobs, 1),
                  (QPoint(box.right() - 8, box.center().y()), SPACE)),
        "alarm": (board.alarm_answered, usual.alarm.key, usual.alarm.key.setFocus,
                  (usual.alarm.key.rect().center(), ENTER)),
        "due": (board.due_clicked, usual.due, usual.due.setFocus,
                (usual.due.rect().center(), ENTER)),
        "temperature": (board.temperature_clicked, temperature, temperature.setFocus,
                        (temperature.rect().center(), ENTER)),
        "inspector": (board.action_chosen, keys[0], keys[0].setFocus,
                      (keys[0].rect().center(), SPACE)),
    }  # fmt: skip


@pytest.mark.parametrize(
    "part",
    ["slot", "slot of the box", "chip", "job", "ready", "alarm", "due", "temperature", "inspector"],
)
def test_parts_of_the_board_by_key_and_by_one_tap(qtbot: Any, board: Board, part: str) -> None:
    signal, widget, choose, (at, key) = board_parts(board)[part]
    choose()
    assert widget.hasFocus()
    with qtbot.waitSignal(signal) as by_key:
        qtbot.keyClick(widget, key)
    aim = widget.viewport() if isinstance(widget, QAbstractItemView) else widget
    with qtbot.waitSignal(signal) as by_tap:
        qtbot.mouseClick(aim, LEFT, pos=at)
    assert by_key.args == by_tap.args


def test_the_list_of_what_happened_by_key_and_tap(qtbot: Any, board: Board) -> None:
    usual = board.usual
    for press in (
        lambda: qtbot.mouseClick(usual.head, LEFT), lambda: qtbot.keyClick(usual.head, ENTER)
    ):  # fmt: skip
        press()
        assert usual.list.isVisible()
        usual.list.setFocus()
        usual.list.select(1)
        with qtbot.waitSignal(board.happening_clicked) as by_key:
            qtbot.keyClick(usual.list, ENTER)
        with qtbot.waitSignal(board.happening_clicked) as by_tap:
            qtbot.mouseClick(usual.list.viewport(), LEFT, pos=cell(usual.list, 1))
        assert by_key.args == by_tap.args
        usual.head.click()


def test_the_night_is_answered_by_key(qtbot: Any, board: Board) -> None:
    night = board.strip.night
    qtbot.mouseClick(night, LEFT)
    assert night.hasFocus()
    night.setText("13")
    with qtbot.waitSignal(board.night_answered) as answered:
        qtbot.keyClick(night, ENTER)
    assert answered.args[1] == "13"


# Nothing on bare letters


def bare_keys() -> Iterator[tuple[Qt.Key, Qt.KeyboardModifier]]:
    for character in string.ascii_uppercase + string.digits:
        key = getattr(Qt.Key, f"Key_{character}")
        yield key, NONE
        yield key, SHIFT
    for key in (Qt.Key.Key_Minus, Qt.Key.Key_Period, Qt.Key.Key_Comma, Qt.Key.Key_Slash,
                Qt.Key.Key_Plus, Qt.Key.Key_Delete, Qt.Key.Key_Question):  # fmt: skip
        yield key, NONE


def test_no_bare_letter_does_anything_on_the_board(demo: DemoWindow) -> None:
    window = demo.window
    board = window.board
    demo.select("A7")
    before = contents(demo.session.store)
    for part in (board.rack, board.box, board.chips, board.jobs.list, board.usual.alarm.key,
                 board.usual.due, board.usual.head):  # fmt: skip
        part.setFocus()
        demo.select("A7")
        part.setFocus()
        was = board.selected()
        for key, modifier in bare_keys():
            QTest.keyClick(part, key, modifier)
            assert demo.dialogs() == [], (part, key)
            assert board.selected() == was, (part, key)
            assert QApplication.activePopupWidget() is None
    assert contents(demo.session.store) == before
    assert window.board.column.currentWidget() is board.usual


def test_a_scan_of_a_tag_without_a_prefix_changes_nothing(demo: DemoWindow) -> None:
    """A keyboard wedge types a tag and Enter: at worst the selected slot is entered."""
    demo.select("A7")
    demo.window.board.rack.setFocus()
    before = contents(demo.session.store)
    QTest.keyClicks(demo.window.board.rack, "JOB307/A7")
    QTest.keyClick(demo.window.board.rack, ENTER)
    assert contents(demo.session.store) == before


def test_no_shortcut_is_a_bare_letter(demo: DemoWindow) -> None:
    for _, _, lines in MENUS:
        for line in lines:
            for key in line.keys if line is not None else ():
                last = key.split("+")[-1]
                assert len(last) > 1 or key.startswith(("Ctrl+", "Alt+")), key


# Nothing on hover, nothing on a double click


def hover(widget: QWidget) -> None:
    """Move a mouse over all of a widget without pressing it."""
    for part in [widget, *widget.findChildren(QWidget)]:
        if not part.isVisible():
            continue
        at = QPointF(part.rect().center())
        there = QPointF(part.mapToGlobal(part.rect().center()))
        QApplication.sendEvent(part, QEnterEvent(at, at, there))
        move = QMouseEvent(
            QEvent.Type.MouseMove, at, there, Qt.MouseButton.NoButton, Qt.MouseButton.NoButton, NONE
        )
        QApplication.sendEvent(part, move)


def test_hovering_shows_and_does_nothing(qtbot: Any, demo: DemoWindow) -> None:
    window = demo.window
    demo.select("A7")
    window.refresh()
    qtbot.waitUntil(lambda: not window.board.delegate.fading)
    QApplication.processEvents()
    before, image = contents(demo.session.store), window.board.grab().toImage()
    hover(window.board)
    QApplication.processEvents()
    assert contents(demo.session.store) == before
    assert demo.dialogs() == []
    assert window.board.grab().toImage() == image
    told = [part for part in window.findChildren(QWidget) if part.toolTip()]
    assert told == [], "what only hovering tells is told to nobody with gloves"


def test_a_double_click_is_no_more_than_a_tap(qtbot: Any, board: Board) -> None:
    got: list[object] = []
    board.slot_activated.connect(lambda *key: got.append(key))
    qtbot.mouseClick(board.rack.viewport(), LEFT, pos=cell(board.rack, 3))
    once = list(got)
    got.clear()
    qtbot.mouseDClick(board.rack.viewport(), LEFT, pos=cell(board.rack, 3))
    assert set(got) <= set(once)
    assert len(once) == 1


DOUBLE = {"FindDialog", "EpoxyShelf", "FeedDialog", "SettingsDialog"}
"""Dialogs in which a double click on a line saves a tap; a button does the same."""


def test_what_a_double_click_does_a_button_does_too(demo: DemoWindow) -> None:
    found = set()
    for dialog in dialogs(demo):
        for view in dialog.findChildren(QAbstractItemView):
            count = view.receivers("2doubleClicked(QModelIndex)")
            if count and not isinstance(view, RowView):
                found.add(type(dialog).__name__)
                buttons = [
                    b for b in dialog.findChildren(QAbstractButton)
                    if b.focusPolicy() is not Qt.FocusPolicy.NoFocus
                ]  # fmt: skip
                assert buttons, dialog
    assert found <= DOUBLE


# Dialogs and panels


def reached(qtbot: Any, top: QWidget) -> set[int]:
    """Return what Tab leads through, from what has the focus until it comes round."""
    seen: set[int] = set()
    while True:
        focus = QApplication.focusWidget()
        assert focus is not None and focus.window() is top
        if _number(focus) in seen:
            return seen
        seen.add(_number(focus))
        qtbot.keyClick(focus, TAB)


def _number(part: QWidget) -> int:
    """Return what names a widget for good; Python's own object of it may come and go."""
    return int(getCppPointer(part)[0])


def _by_arrows(part: QWidget) -> bool:
    """Return whether a radio button is reached with the arrows from the one that is on."""
    return isinstance(part, QRadioButton | QLabel | QTextBrowser)


@pytest.mark.parametrize("size", SIZES)
def test_tab_reaches_all_parts_of_every_dialog(
    qtbot: Any, tmp_path: Path, size: tuple[int, int]
) -> None:
    demo = DemoWindow(qtbot, tmp_path, size)
    missed, looked = [], 0
    for dialog in dialogs(demo):
        dialog.activateWindow()
        qtbot.waitUntil(dialog.isActiveWindow)
        if QApplication.focusWidget() is None:
            qtbot.keyClick(dialog, TAB)
        there = reached(qtbot, dialog)
        for part in focusable(dialog):
            if not part.isVisible() or not part.isEnabled() or _by_arrows(part):
                continue
            if part.focusPolicy() is Qt.FocusPolicy.ClickFocus:
                missed.append((type(dialog).__name__, "click only", spoken_name(part)))
                continue
            looked += 1
            if _number(part) not in there:
                missed.append((type(dialog).__name__, type(part).__name__, spoken_name(part)))
    assert missed == []
    assert looked > 100


def test_every_button_of_a_dialog_can_be_tapped(qtbot: Any, tmp_path: Path) -> None:
    """Nothing lies over it, and it lies in sight or scrolls there."""
    demo = DemoWindow(qtbot, tmp_path, (1280, 800))
    looked, covered = 0, []
    for dialog in dialogs(demo):
        for button in dialog.findChildren(QAbstractButton):
            if not button.isVisible() or not button.isEnabled() or button.size().isEmpty():
                continue
            if button.visibleRegion().isEmpty():
                continue  # it scrolls into sight; see above
            at = button.visibleRegion().boundingRect().center()
            hit = dialog.childAt(button.mapTo(dialog, at))
            looked += 1
            if hit is not button and not (hit is not None and button.isAncestorOf(hit)):
                covered.append((type(dialog).__name__, button.text(), hit))
    assert covered == []
    assert looked > 60


@pytest.mark.parametrize("size", SIZES)
def test_tab_reaches_all_keys_of_glue_up(
    qtbot: Any, tmp_path: Path, size: tuple[int, int]
) -> None:
    demo = DemoWindow(qtbot, tmp_path, size)
    demo.select("A15")
    demo.window.activateWindow()
    demo.window.new_job()
    QApplication.processEvents()
    panel = demo.window._glue_up
    assert panel is not None
    there = reached(qtbot, demo.window)
    missed = [
        (type(part).__name__, spoken_name(part)) for part in focusable(panel)
        if part.isVisible() and part.isEnabled() and not _by_arrows(part)
        and _number(part) not in there
    ]  # fmt: skip
    assert missed == []
    assert [key for key in panel.findChildren(Key) if key.isVisible()]


def test_every_slot_is_reached_by_arrows(demo: DemoWindow) -> None:
    board = demo.window.board
    board.rack.setFocus()
    board.rack.select(0)
    seen = set()
    down = board.rack.lines() + 1
    for line in range(down):
        for _ in range(board.rack.columns):
            seen.add(board.selected())
            QTest.keyClick(QApplication.focusWidget() or board.rack, Qt.Key.Key_Right)
        seen.add(board.selected())
        for _ in range(board.rack.columns):
            QTest.keyClick(QApplication.focusWidget() or board.rack, Qt.Key.Key_Left)
        if line < down - 1:
            QTest.keyClick(QApplication.focusWidget() or board.rack, Qt.Key.Key_Down)
    all_slots = {
        row.key for view in (board.rack, board.box) for row in view.rows_model.rows()
    }  # fmt: skip
    assert all_slots <= seen
