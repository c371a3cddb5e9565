"""A calm message about something of the world, with what can be done about it."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from rackboard.core.errors import RackboardError
from rackboard.ui.dialog import Dialog
from rackboard.ui.language import translated
from rackboard.ui.theme import Theme


class MessageDialog(Dialog):
    """Says what happened, and under it what to do; Enter, space and Esc close it.

    Parameters
    ----------
    parent : QWidget or None
        Whose window it belongs to.
    message, remedy : str
        What happened, and what to do; looked up in the language spoken.
    theme : Theme, optional
        The scheme; by default the application's.
    """

    def __init__(
        self,
        parent: QWidget | None,
        message: str,
        remedy: str = "",
        *,
        theme: Theme | None = None,
    ) -> None:
        super().__init__(parent, theme)
        self.setWindowTitle("rackboard")
        self.message = self.label(translated(message), self.roles.inspector_time, wrap=True)
        self.remedy = self.label(translated(remedy), wrap=True)
        self.setAccessibleName(self.message.text())
        self.setAccessibleDescription(self.remedy.text())
        layout = QVBoxLayout(self)
        margin = self.margin
        layout.setContentsMargins(margin, margin - 4, margin, margin - 4)
        layout.setSpacing(14)
        layout.addWidget(self.message)
        if remedy:
            layout.addWidget(self.remedy)
        layout.addSpacing(self.gap - 8)
        layout.addWidget(self.buttons)
        self.add_buttons("", self.tr("Close"))
        self.closing = self.buttons.buttons()[0]
        self.fit_height(620 if self.roles.large else 500)
        self.closing.setFocus()


def say(parent: QWidget | None, message: str, remedy: str = "") -> MessageDialog:
    """Show a message without stopping the board; it goes when it is read.

    Parameters
    ----------
    parent : QWidget or None
        Whose window it belongs to.
    message, remedy : str
        What happened, and what to do.
    """
    made = MessageDialog(parent, message, remedy)
    made.open()
    return made


def say_error(parent: QWidget | None, error: RackboardError) -> MessageDialog:
    """Show an error of the world; see `say`."""
    return say(parent, error.message, error.remedy)
