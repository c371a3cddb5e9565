"""The whole window over a data file and a clock that tests move; it can be closed and opened.

Needs Qt.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget

from helpers.session import BERLIN
from helpers.shop import FakeClock
from rackboard.core.bench import Epoxy
from rackboard.core.epoxy import Sheet
from rackboard.core.instants import Instant, parse_iso
from rackboard.core.standing import Standing
from rackboard.services.alerts import Alerts
from rackboard.services.bench import Bench
from rackboard.services.board import Board
from rackboard.services.founding import found_shop
from rackboard.services.teller import Done, Message
from rackboard.store import Store
from rackboard.store.paths import Paths
from rackboard.ui.board_view import Chip, JobRow, Strip
from rackboard.ui.main_window import MainWindow
from rackboard.ui.resources import load_fonts
from rackboard.ui.session import Session
from rackboard.ui.theme import Appearance
from rackboard.ui.tile import Tile

CTRL = Qt.KeyboardModifier.ControlModifier
NONE = Qt.KeyboardModifier.NoModifier


class RecordingCourier:
    """Keeps what it was to carry; nothing reaches a desktop, nothing sounds."""

    name = "Desktop notices"

    def __init__(self) -> None:
        self.messages: list[Message] = []

    def deliver(self, message: Message, done: Done) -> None:
        """Keep it."""
        self.messages.append(message)
        done(None)


class Scene:
    """A shop, its window, and somebody's hands.

    Times are ISO 8601 with their offset.
    """

    def __init__(self, qtbot: Any, folder: Path, at: str) -> None:
        load_fonts()
        self.qtbot = qtbot
        self.folder = folder
        self.clock = FakeClock(parse_iso(at, "scene"))
        self.courier = RecordingCourier()
        self.left_over = QApplication.topLevelWidgets()
        self.open()

    # The program

    def open(self) -> None:
        """Start the program, as `rackboard.ui.main` puts it together."""
        now = self.clock.now()
        self.store = Store.open(Paths.below(self.folder), now)
        found_shop(self.store, now)
        board = Board(self.store, self.clock, BERLIN)
        bench = Bench(self.store, self.clock, board.snapshot.hours)
        self.session = Session(self.store, self.clock, board, bench)
        appearance = Appearance("dark")
        self.window = MainWindow(self.session, appearance)
        appearance.setParent(self.window)
        self.session.setParent(self.window)
        self.qtbot.addWidget(self.window)
        self.window.resize(1920, 1080)
        self.window.show()
        self.window.start()
        self.session.alerts = Alerts(self.store, self.clock, (self.courier,))
        self.session.raise_due()
        self.back()

    def back(self) -> None:
        """Come back to the window; offscreen no window manager does it."""
        self.window.activateWindow()
        self.qtbot.waitUntil(self.window.isActiveWindow)

    def close(self) -> None:
        """End the program; the computer may go off."""
        self.window.stop()
        self.window.close()
        self.store.close()

    def restart(self) -> None:
        """End it and start it again."""
        self.close()
        self.open()

    def go(self, at: str | Instant) -> None:
        """Let the time come, with a tick."""
        self.clock.set(parse_iso(at, "scene") if isinstance(at, str) else at)
        self.session.tick()
        self.window.refresh()

    # Hands

    def press(self, key: Qt.Key, modifier: Qt.KeyboardModifier = NONE) -> None:
        """Press a key where the focus is."""
        self.qtbot.keyClick(QApplication.focusWidget() or self.window, key, modifier)

    def type(self, text: str, *, enter: bool = True) -> None:
        """Type where the focus is."""
        self.qtbot.keyClicks(self.focus(), text)
        if enter:
            self.press(Qt.Key.Key_Return)

    def focus(self) -> QWidget:
        """Return what has the focus."""
        widget = QApplication.focusWidget()
        assert widget is not None
        return widget

    def dialog(self, kind: type[QWidget]) -> Any:
        """Return the open dialog of a kind, once it has the keys."""
        found = self.window.findChild(kind)
        assert found is not None, f"no {kind.__name__}"
        self.qtbot.waitUntil(found.isActiveWindow)
        return found

    def type_temperature(self, text: str, *, at_rack: bool = True) -> None:
        """Ctrl+T, the figure, Enter."""
        from rackboard.ui.temperature_dialog import TemperatureDialog

        self.press(Qt.Key.Key_T, CTRL)
        dialog = self.dialog(TemperatureDialog)
        dialog.at_rack.setChecked(at_rack)
        dialog.value.setFocus()
        self.type(text)
        self.back()

    def answer_night(self, text: str) -> None:
        """Type into the strip's field and press Enter."""
        field = self.window.board.strip.night
        assert field.isVisible()
        field.setFocus()
        field.selectAll()
        self.type(text)

    def add_epoxy(self, sheet: Sheet) -> int:
        """Put an epoxy on the shelf."""
        with self.store.write("a sheet for tests", self.clock.now()) as act:
            epoxy = act.add(Epoxy(0, sheet, typical=False))
        self.session.take(act.changes)
        return epoxy

    # Eyes

    @property
    def strip(self) -> Strip:
        """What the strip shows."""
        return self._view().strip

    @property
    def jobs(self) -> tuple[JobRow, ...]:
        """What the list of jobs shows."""
        jobs: tuple[JobRow, ...] = self._view().jobs
        return jobs

    @property
    def chips(self) -> tuple[Chip, ...]:
        """What is off the rack."""
        chips: tuple[Chip, ...] = self._view().chips
        return chips

    def _view(self) -> Any:
        view = self.window.board._view
        assert view is not None
        return view

    def tile(self, name: str) -> Tile:
        """Return a slot's tile as it is shown."""
        board = self.window.board
        for row in (*board.rack.rows_model.rows(), *board.box.rows_model.rows()):
            if isinstance(row, Tile) and row.name == name:
                return row
        raise AssertionError(f"no slot {name}")

    def tiles(self) -> list[Tile]:
        """Return all slots that are taken."""
        board = self.window.board
        rows = (*board.rack.rows_model.rows(), *board.box.rows_model.rows())
        return [row for row in rows if isinstance(row, Tile) and row.club]

    def standing(self, club: str) -> Standing:
        """Return what the board says of a club."""
        return next(s for s in self.session.board.standings if s.club.name == club)

    def select(self, club: str) -> None:
        """Bring the ring to a club."""
        self.window.select_club(self.standing(club).club.id)
