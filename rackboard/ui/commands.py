"""The menus: every command with its key, and when it can be given."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, NamedTuple

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMainWindow, QMenu

from rackboard.core.standing import Standing
from rackboard.core.text import Text, text
from rackboard.core.words import Word
from rackboard.ui.language import say, translated

if TYPE_CHECKING:
    from rackboard.services.undo import History


class Command(NamedTuple):
    """One line of a menu.

    `needs` is what must be selected: "" nothing, "club" any, "dry" one that waits for its
    batch to be mixed, "glued", "wet" one whose batch isn't all racked, "firm" one that may come
    off the rack, "held" one on HOLD, "calm" glued and not on HOLD, "soft" calm and not safe to
    hit yet, "wall" the wall view.
    """

    key: str
    label: Text
    keys: tuple[str, ...]
    needs: str = ""
    role: QAction.MenuRole = QAction.MenuRole.NoRole


_SEPARATOR = None
_C = Command
MENUS: tuple[tuple[str, Text, tuple[Command | None, ...]], ...] = (
    ("file", text("Menu", "&File"), (
        _C("new", text("Menu", "New job…"), ("Ctrl+N",)),
        _C("import", text("Menu", "Import record…"), ("Ctrl+I",)),
        _C("sources", text("Menu", "Temperature sources…"), ("Ctrl+Shift+T",)),
        _SEPARATOR,
        _C("shelf", text("Menu", "Epoxies…"), ("Ctrl+E",)),
        _C("erase", text("Menu", "Erase a customer…"), ("Ctrl+Shift+E",)),
        _C("settings", text("Menu", "Settings…"), ("Ctrl+,",),
           role=QAction.MenuRole.PreferencesRole),
        _SEPARATOR,
        _C("quit", text("Menu", "Quit"), ("Ctrl+Q",), role=QAction.MenuRole.QuitRole),
    )),
    ("edit", text("Menu", "&Edit"), (
        _C("undo", text("Menu", "Undo"), ("Ctrl+Z",)),
        _C("redo", text("Menu", "Redo"), ("Ctrl+Y", "Ctrl+Shift+Z")),
        _SEPARATOR,
        _C("find", text("Menu", "Find…"), ("Ctrl+F",)),
        _SEPARATOR,
        _C("correct", text("Menu", "Correct…"), ("Ctrl+K",), "club"),
        _C("swap", text("Menu", "Swap…"), ("Ctrl+F2",), "club"),
    )),
    ("view", text("Menu", "&View"), (
        _C("wall", text("Menu", "Wall view"), ("F11",)),
        _C("leave", text("Menu", "Leave the wall view"), ("Esc",), "wall"),
        _SEPARATOR,
        _C("alerts", text("Menu", "Alerts…"), ("Ctrl+L",)),
        _C("happened", text("Menu", "Due and happened"), ("Ctrl+D",)),
    )),
    ("club", text("Menu", "&Club"), (
        _C("mix", text("Menu", "Mixed now…"), ("Ctrl+M",), "dry"),
        _C("racked", text("Menu", "All racked…"), ("Ctrl+R",), "wet"),
        _SEPARATOR,
        _C("move", text("Menu", "Move to…"), ("F2",), "club"),
        _C("take off", text("Menu", "Take off the rack"), ("F3",), "firm"),
        _C("out", text("Menu", "Out of the shop"), ("Ctrl+F3",), "club"),
        _SEPARATOR,
        _C("disturb", text("Menu", "Disturbed"), ("F4",), "calm"),
        _C("answer", text("Menu", "Answer…"), ("F5",), "held"),
        _C("release", text("Menu", "Release…"), ("Ctrl+F5",), "soft"),
        _C("ready", text("Menu", "READY"), ("F8",), "club"),
        _SEPARATOR,
        _C("temperature", text("Menu", "Type a temperature…"), ("Ctrl+T",)),
        _C("promise", text("Menu", "Promised for…"), ("Ctrl+P",), "club"),
        _SEPARATOR,
        _C("record", text("Menu", "Record of the joint…"), ("F6",), "club"),
        _C("table", text("Menu", "Curve as a table…"), ("F7",), "glued"),
        _C("sheet", text("Menu", "Save curve as PDF…"), ("Ctrl+S",), "glued"),
    )),
    ("help", text("Menu", "&Help"), (
        _C("help", text("Menu", "Help…"), ("F1",)),
        _SEPARATOR,
        _C("about", text("Menu", "About rackboard"), ("Shift+F1",),
           role=QAction.MenuRole.AboutRole),
    )),
)  # fmt: skip


class Commands:
    """The window's menus.

    Parameters
    ----------
    window : QMainWindow
        Gets the menu bar.
    slots : dict
        What each command calls, by its key; a command without one is left out.
    """

    def __init__(self, window: QMainWindow, slots: dict[str, Callable[[], object]]) -> None:
        self._window = window
        self._actions: dict[str, QAction] = {}
        self._needs: dict[str, str] = {}
        self._menus: dict[str, QMenu] = {}
        for name, title, lines in MENUS:
            menu = self._menus[name] = window.menuBar().addMenu(translated(title))
            for line in lines:
                if line is None:
                    menu.addSeparator()
                elif line.key in slots:
                    self._add(menu, line, slots[line.key])

    def _add(self, menu: QMenu, line: Command, slot: Callable[[], object]) -> None:
        action = QAction(translated(line.label), self._window)
        action.setShortcuts([QKeySequence(key) for key in line.keys])
        action.setMenuRole(line.role)
        action.triggered.connect(_without_checked(slot))
        menu.addAction(action)
        self._window.addAction(action)  # its key works on the wall too, without a menu bar
        self._actions[line.key] = action
        if line.needs:
            self._needs[line.key] = line.needs
            action.setEnabled(False)

    def insert(self, key: str, label: str, slot: Callable[[], object], shortcut: str) -> None:
        """Add a command of the composition root (backups) above the settings."""
        action = QAction(label, self._window)
        action.setShortcut(QKeySequence(shortcut))
        action.triggered.connect(_without_checked(slot))
        self._menus["file"].insertAction(self._actions["settings"], action)
        self._window.insertAction(self._actions["settings"], action)
        self._actions[key] = action

    def __getitem__(self, key: str) -> QAction:
        return self._actions[key]

    def get(self, key: str) -> QAction | None:
        """Return a command, None if there is none of that key."""
        return self._actions.get(key)

    def menu(self, name: str) -> QMenu:
        """Return a menu by its name."""
        return self._menus[name]

    def lines(self) -> Iterable[tuple[str, str]]:
        """Return every command with its keys, for the help."""
        for _name, _title, lines in MENUS:
            for line in lines:
                if line is not None and line.key in self._actions:
                    yield (
                        translated(line.label).rstrip("…"),
                        ", ".join(
                            QKeySequence(key).toString(QKeySequence.SequenceFormat.NativeText)
                            for key in line.keys
                        ),
                    )

    def show(self, standing: Standing | None, history: History, *, on_wall: bool) -> None:
        """Let only that be chosen which can be done."""
        for key, name, label in (
            ("undo", say("Menu", "Undo {what}"), history.undo_label),
            ("redo", say("Menu", "Redo {what}"), history.redo_label),
        ):
            action = self._actions[key]
            action.setEnabled(label is not None)
            action.setText(name.format(what=translated(label or "")).rstrip())
        have = _said_of(standing)
        have["wall"] = on_wall
        for key, needs in self._needs.items():
            self._actions[key].setEnabled(have[needs])


def _said_of(standing: Standing | None) -> dict[str, bool]:
    """Return which needs of a command the selected joint meets."""
    if standing is None:
        return dict.fromkeys(("club", "dry", "glued", "wet", "firm", "held", "calm", "soft"), False)
    glued, held = not standing.laid_out, standing.hold is not None
    return {
        "club": True,
        "dry": not glued,
        "glued": glued,
        "wet": glued and standing.batch.racked_us is None,
        "firm": not held and standing.base in (Word.BENCH, Word.CURED),
        "held": held,
        "calm": glued and not held,
        "soft": glued and not held and standing.base is not Word.CURED,
    }


def _without_checked(slot: Callable[[], object]) -> Callable[[bool], None]:
    def call(checked: bool = False) -> None:
        del checked
        slot()

    return call
