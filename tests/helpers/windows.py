"""A window for dialogs to open over, and what tests do to them. Needs Qt."""

from __future__ import annotations

from typing import Any

from PySide6.QtWidgets import QWidget

_open: list[QWidget] = []  # pytest-qt itself keeps only weak references


def make_window(qtbot: Any, width: int = 1280, height: int = 800) -> QWidget:
    """A shown window of a size; its dialogs go with it."""
    window = QWidget()
    window.resize(width, height)
    _open.append(window)
    qtbot.addWidget(window, before_close_func=_open.remove)
    window.show()
    return window
