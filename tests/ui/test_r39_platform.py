"""R39: keys of the platform, buttons in button boxes, menus with their roles, an empty board."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QKeySequence, QShortcut
from PySide6.QtWidgets import QApplication, QDialog, QDialogButtonBox, QPushButton

from helpers.demo_window import DemoWindow
from helpers.said import Painted, widget_texts
from helpers.scene import CTRL, Scene
from helpers.screens import dialogs
from helpers.store import contents
from rackboard.ui.commands import MENUS
from rackboard.ui.dialog import Dialog
from rackboard.ui.keys import Key
from rackboard.ui.tile import Tile, TileKind

SIZES = ((1920, 1080), (1280, 800))
WANTED = {
    "new": "Ctrl+N", "find": "Ctrl+F", "undo": "Ctrl+Z", "quit": "Ctrl+Q", "settings": "Ctrl+,",
    "wall": "F11", "help": "F1", "leave": "Esc",
}  # fmt: skip
ROLES = {
    "quit": QAction.MenuRole.QuitRole, "settings": QAction.MenuRole.PreferencesRole,
    "about": QAction.MenuRole.AboutRole,
}  # fmt: skip


@pytest.fixture
def demo(qtbot: Any, tmp_path: Path) -> DemoWindow:
    return DemoWindow(qtbot, tmp_path)


@pytest.fixture
def empty(qtbot: Any, tmp_path: Path) -> Any:
    made = Scene(qtbot, tmp_path, "2026-03-09T09:00+01:00")
    yield made
    made.close()


def keys_of(action: QAction) -> list[str]:
    return [key.toString(QKeySequence.SequenceFormat.PortableText) for key in action.shortcuts()]


# Shortcuts


def test_every_command_has_a_key_and_no_two_have_the_same(demo: DemoWindow) -> None:
    taken: dict[str, str] = {}
    for _, _, lines in MENUS:
        for line in lines:
            if line is None:
                continue
            action = demo.window.commands[line.key]
            keys = keys_of(action)
            assert keys and all(keys), line.key
            for key in keys:
                assert key not in taken, (key, line.key, taken[key])
                taken[key] = line.key
    for shortcut in demo.window.findChildren(QShortcut):
        key = shortcut.key().toString(QKeySequence.SequenceFormat.PortableText)
        assert key
        assert key not in taken, (key, taken.get(key))
        if shortcut.context() is not Qt.ShortcutContext.WidgetShortcut:
            taken[key] = "a shortcut"
    assert len(taken) > 30


def test_the_keys_that_everybody_knows(demo: DemoWindow) -> None:
    for key, wanted in WANTED.items():
        assert wanted in keys_of(demo.window.commands[key]), key
    assert set(keys_of(demo.window.commands["redo"])) == {"Ctrl+Y", "Ctrl+Shift+Z"}


def test_no_key_is_ambiguous_for_qt(demo: DemoWindow) -> None:
    """Qt fires neither of two actions of one key, so each is pressed once."""
    fired: list[str] = []
    for _, _, lines in MENUS:
        for line in lines:
            if line is not None:
                action = demo.window.commands[line.key]
                action.triggered.disconnect()
                action.setEnabled(True)
                action.triggered.connect(lambda _=False, name=line.key: fired.append(name))
    demo.window.activateWindow()
    for _, _, lines in MENUS:
        for line in lines:
            if line is None:
                continue
            for key in demo.window.commands[line.key].shortcuts():
                fired.clear()
                one = key[0]
                from PySide6.QtTest import QTest

                QTest.keyClick(demo.window.board.rack, one.key(), one.keyboardModifiers())
                assert fired == [line.key], (key.toString(), fired)


# Menus


def test_menus_and_their_roles(demo: DemoWindow) -> None:
    titles = [action.text().replace("&", "") for action in demo.window.menuBar().actions()]
    assert titles == ["File", "Edit", "View", "Club", "Help"]
    mnemonics = [action.text().split("&")[1][0] for action in demo.window.menuBar().actions()]
    assert len(set(mnemonics)) == len(mnemonics)
    for key, role in ROLES.items():
        assert demo.window.commands[key].menuRole() is role
    for action in demo.window.findChildren(QAction):
        # Left to Qt a name such as "Settings…" would be moved on one platform only.
        assert action.menuRole() is not QAction.MenuRole.TextHeuristicRole or not action.text() or (
            action.menu() is not None or not keys_of(action)
        ), action.text()  # fmt: skip


def test_a_command_that_asks_first_ends_in_dots(demo: DemoWindow) -> None:
    for key in ("new", "find", "settings", "move", "correct", "swap", "release", "answer", "help"):
        assert demo.window.commands[key].text().endswith("…"), key
    for key in ("quit", "wall", "out", "take off"):
        assert not demo.window.commands[key].text().endswith("…"), key


# Dialogs


@pytest.mark.parametrize("size", SIZES)
def test_every_dialog_has_its_buttons_in_a_button_box(
    qtbot: Any, tmp_path: Path, size: tuple[int, int]
) -> None:
    demo = DemoWindow(qtbot, tmp_path, size)
    seen = set()
    for dialog in dialogs(demo):
        seen.add(type(dialog).__name__)
        boxes = [box for box in dialog.findChildren(QDialogButtonBox) if box.isVisible()]
        assert len(boxes) == 1, dialog
        buttons = boxes[0].buttons()
        roles = [boxes[0].buttonRole(button) for button in buttons]
        role = QDialogButtonBox.ButtonRole
        assert role.RejectRole in roles, dialog
        assert role.InvalidRole not in roles
        assert all(button.text() for button in buttons)
        assert dialog.windowTitle()
        defaults = [b for b in dialog.findChildren(QPushButton) if b.isDefault()]
        assert len(defaults) <= 1
        # What ends a dialog stands in its box, nowhere else.
        for button in dialog.findChildren(QPushButton):
            if button.text() in ("OK", "Cancel", "Close", "Save"):
                assert button in buttons, (dialog, button.text())
    assert len(seen) >= 27


def test_escape_closes_every_dialog_and_stores_nothing(demo: DemoWindow, qtbot: Any) -> None:
    for dialog in dialogs(demo):
        before = contents(demo.session.store)
        qtbot.keyClick(dialog, Qt.Key.Key_Escape)
        assert not dialog.isVisible(), dialog
        assert contents(demo.session.store) == before


def test_all_dialogs_share_one_look(demo: DemoWindow) -> None:
    for dialog in dialogs(demo):
        assert isinstance(dialog, Dialog)
        assert dialog.size().width() <= demo.window.width()
        assert dialog.size().height() <= demo.window.height()


# The empty board


@pytest.mark.parametrize("size", SIZES)
def test_an_empty_board_says_what_to_do(
    empty: Scene, monkeypatch: pytest.MonkeyPatch, size: tuple[int, int]
) -> None:
    painted = Painted(monkeypatch)
    empty.window.resize(*size)
    empty.window.refresh()
    QApplication.processEvents()
    tiles = [
        row for view in (empty.window.board.rack, empty.window.board.box)
        for row in view.rows_model.rows() if isinstance(row, Tile)
    ]  # fmt: skip
    assert tiles
    assert {tile.kind for tile in tiles} == {TileKind.EMPTY}
    said = painted.of(empty.window) | set(widget_texts(empty.window))
    assert "Nothing due" in said
    assert any("nothing on it yet" in text for text in said)
    assert not [text for text in said if "None" in text or "nan" in text.split()]
    keys = [key for key in empty.window.findChildren(Key) if key.isVisible()]
    assert keys, "the first step is a key"


def test_on_an_empty_board_every_command_is_harmless(empty: Scene, qtbot: Any) -> None:
    """What can't be done is grey; what can opens, and closes again."""
    commands = empty.window.commands
    for key in ("undo", "redo", "correct", "swap", "mix", "racked", "move", "take off", "out",
                "disturb", "answer", "release", "ready", "promise", "record", "table", "sheet",
                "leave"):  # fmt: skip
        assert not commands[key].isEnabled(), key
    for key, slot in empty.window._slots().items():
        if key in ("quit", "wall", "leave", "sheet"):
            continue
        slot()
        QApplication.processEvents()
        for dialog in empty.window.findChildren(QDialog):
            if dialog.isVisible():
                qtbot.keyClick(dialog, Qt.Key.Key_Escape)
        empty.window._leave_panel()
    assert empty.session.board.standings == []


def test_an_empty_wall_and_the_way_back(empty: Scene) -> None:
    empty.press(Qt.Key.Key_F11)
    assert empty.window.on_wall
    QApplication.processEvents()
    empty.window.grab()
    empty.press(Qt.Key.Key_Escape)
    assert not empty.window.on_wall


def test_enter_on_an_empty_slot_lays_out(empty: Scene) -> None:
    empty.window.board.rack.setFocus()
    empty.window.board.select(*empty.window.board.rack.rows_model.row(2).key)  # type: ignore[misc]
    empty.press(Qt.Key.Key_Return)
    panel = empty.window._glue_up
    assert panel is not None and panel.isVisible()
    empty.press(Qt.Key.Key_Escape)
    assert not panel.isVisible()


def test_quit_asks_nothing(empty: Scene, qtbot: Any) -> None:
    del qtbot
    empty.press(Qt.Key.Key_Q, CTRL)
    QApplication.processEvents()
    assert not [d for d in QApplication.topLevelWidgets() if isinstance(d, QDialog)
                and d.isVisible()]  # fmt: skip
    assert not empty.window.isVisible()
