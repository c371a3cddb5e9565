"""A calm message about something of the world, with what can be done about it."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMessageBox, QWidget


def say(parent: QWidget | None, message: str, remedy: str = "") -> QMessageBox:
    """Show a message without stopping the board; it goes when it is read.

    Parameters
    ----------
    parent : QWidget or None
        Whose window it belongs to.
    message, remedy : str
        What happened, and what to do.
    """
    box = QMessageBox(parent)
    box.setIcon(QMessageBox.Icon.NoIcon)
    box.setWindowTitle("rackboard")
    box.setText(message)
    box.setInformativeText(remedy)
    box.setStandardButtons(QMessageBox.StandardButton.Ok)
    box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    box.open()
    return box

