"""The floor of the first paint: an empty QWidget program with named imports.

Prints the instant of its first paintEvent on the monotonic clock [ns]; with "memory" it stays
for two seconds more and prints its peak memory [kB] as well.
"""

from __future__ import annotations

import sys
import time

from PySide6.QtCore import QTimer
from PySide6.QtGui import QPaintEvent
from PySide6.QtWidgets import QApplication, QWidget


class Empty(QWidget):
    """A window that says when it was painted."""

    painted = False

    def paintEvent(self, event: QPaintEvent) -> None:
        del event
        if not self.painted:
            self.painted = True
            print(time.monotonic_ns(), flush=True)
            QTimer.singleShot(2000 if "memory" in sys.argv else 0, leave)


def leave() -> None:
    with open("/proc/self/status", encoding="ascii") as status:  # noqa: PTH123 - no import more
        print(next(line.split()[1] for line in status if line.startswith("VmHWM")))
    QApplication.quit()


app = QApplication(sys.argv[:1])
window = Empty()
window.resize(1280, 800)
window.show()
sys.exit(app.exec())
