"""Opens glue-up, find and the inspector for the first time and prints how long each took [ms].

Over the real window with the demo's invented shop, the forecasts done. The first figure is the
floor: an empty dialog with one line to type in, shown over the same window. "Open" is until
what was opened has painted itself.
"""

from __future__ import annotations

import os
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

os.environ["QT_QPA_PLATFORM"] = "offscreen"
sys.path[:0] = [str(Path(__file__).resolve().parents[number]) for number in (1, 2)]

from PySide6.QtCore import QEvent, QObject  # noqa: E402
from PySide6.QtWidgets import QApplication, QDialog, QLineEdit, QWidget  # noqa: E402


class Painted(QObject):
    """Notes when something was painted that was not there before."""

    def __init__(self, known: set[QWidget]) -> None:
        super().__init__()
        self._known = known
        self.at = 0.0

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Note the last paint of a new widget."""
        if event.type() is QEvent.Type.Paint and watched not in self._known:
            self.at = time.perf_counter()
        return False


class NoBot:
    """Stands for a test's qtbot."""

    def addWidget(self, widget: QWidget) -> None:  # noqa: N802 - as pytest-qt calls it
        """Keep nothing."""


def opened(app: QApplication, act: Callable[[], object]) -> float:
    """Return how long it took from an act until what it opened was painted [ms]."""
    painted = Painted(set(app.allWidgets()))
    start = time.perf_counter()
    act()
    app.installEventFilter(painted)  # afterwards: it slows down all events
    while not painted.at:
        app.processEvents()
        if time.perf_counter() - start > 10:
            raise SystemExit("nothing was painted")
    app.processEvents()
    app.removeEventFilter(painted)
    return (time.perf_counter() - start) * 1000


def main() -> None:
    """Open them in turn."""
    from helpers.demo_window import DemoWindow

    app = QApplication([])
    app.setStyle("Fusion")
    with tempfile.TemporaryDirectory(prefix="bench-") as folder:
        demo = DemoWindow(NoBot(), Path(folder))
        window = demo.window
        window.board.usual.show_inspector(None)
        for _ in range(20):
            app.processEvents()
        floor = QDialog(window)
        field = QLineEdit(floor)
        field.resize(200, 40)
        times = [opened(app, floor.show)]
        floor.close()
        column = window.board.usual
        assert column._inspector is not None
        column._inspector.deleteLater()
        column._inspector = None
        app.processEvents()
        times.append(opened(app, window.new_job))
        window._leave_panel()
        app.processEvents()
        times.append(opened(app, window.doing.find))
        for dialog in demo.dialogs():
            dialog.close()
        app.processEvents()
        times.append(opened(app, lambda: demo.select("A7")))
    print(*(f"{took:.2f}" for took in times), flush=True)
    os._exit(0)


main()
