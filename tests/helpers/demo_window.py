"""The real window over the demo's invented shop, at a moment in mid-week. Needs Qt."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from PySide6.QtWidgets import QDialog

from helpers.session import BERLIN
from helpers.shop import FakeClock
from rackboard.services import demo
from rackboard.services.bench import Bench
from rackboard.services.board import Board
from rackboard.store import Store
from rackboard.store.paths import Paths
from rackboard.ui.main_window import MainWindow
from rackboard.ui.resources import load_fonts
from rackboard.ui.session import Session
from rackboard.ui.theme import Appearance


class DemoWindow:
    """A window, its clock, and what to do with its dialogs.

    Parameters
    ----------
    qtbot
        Of the test.
    folder : Path
        For the data.
    size : tuple of int
        Of the window [px].
    theme : str
        "dark" or "light".
    """

    def __init__(
        self, qtbot: Any, folder: Path, size: tuple[int, int] = (1920, 1080), theme: str = "dark"
    ) -> None:
        load_fonts()
        self.clock = FakeClock(demo.demo_start(BERLIN))
        now = self.clock.now()
        store = Store.open(Paths.below(folder), now)
        demo.furnish_demo(store, now, BERLIN)
        board = Board(store, self.clock, BERLIN)
        session = Session(store, self.clock, board, Bench(store, self.clock, board.snapshot.hours))
        appearance = Appearance(theme)
        self.window = MainWindow(session, appearance)
        appearance.setParent(self.window)
        session.setParent(self.window)
        self.session = session
        qtbot.addWidget(self.window)
        self.window.resize(*size)
        self.window.show()
        self.window.start()
        session.tick()
        self.window.refresh()
        self.window.board.set_reduced_motion(True)

    def select(self, name: str) -> None:
        """Bring the ring to a slot by its name."""
        board = self.window.board
        for view in (board.rack, board.box):
            for row in view.rows_model.rows():
                if getattr(row, "name", "") == name:
                    board.select(*row.key)  # type: ignore[misc]
                    return
        raise AssertionError(f"no slot {name}")

    def dialogs(self) -> list[QDialog]:
        """Return the dialogs that are open."""
        return [dialog for dialog in self.window.findChildren(QDialog) if dialog.isVisible()]
