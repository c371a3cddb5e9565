"""No test leaves a dialog on the screen: a modal one would take the keys of the next test."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtWidgets import QApplication, QDialog


@pytest.fixture(autouse=True)
def _no_dialog_left() -> Iterator[None]:
    yield
    if QApplication.instance() is not None:
        for widget in QApplication.topLevelWidgets():
            if isinstance(widget, QDialog) and widget.isVisible():
                widget.close()
