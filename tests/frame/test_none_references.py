"""Void calls into Qt must not lose references to None.

One release of PySide6 on Python 3.11 lost one in each call; the process aborted after about
5 000 of them, so that a short test suite stayed green.
"""

from __future__ import annotations

import sys

from PySide6.QtCore import QTimer
from pytestqt.qtbot import QtBot


def test_two_thousand_void_calls_leave_none_alone(qtbot: QtBot) -> None:
    timer = QTimer()
    before = sys.getrefcount(None)
    for _ in range(2000):
        timer.start(3_600_000)
    after = sys.getrefcount(None)
    timer.stop()
    assert abs(after - before) <= 200
