"""A dialog about one act: it does it itself, says errors inside, and asks about doubts."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from rackboard.core.errors import RackboardError
from rackboard.store.changes import ChangeSet
from rackboard.ui.controls import RING_ROOM
from rackboard.ui.dialog import Dialog, error_text
from rackboard.ui.language import translated
from rackboard.ui.session import Session


class ActDialog(Dialog):
    """A small form in the board's look.

    Parameters
    ----------
    session : Session
        The open shop.
    parent : QWidget, optional
        The window underneath.

    Signals
    -------
    acted()
        What was asked for is done; the dialog closes.
    """

    acted = Signal()

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.session = session
        self.message = self.label("", self.roles.fact_bold, wrap=True)
        self.message.setMinimumHeight(48 if self.roles.large else 40)
        self.message.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.answers = QWidget(self)
        self._answer_row = QHBoxLayout(self.answers)
        self._answer_row.setContentsMargins(RING_ROOM, RING_ROOM, RING_ROOM, RING_ROOM)
        self._answer_row.setSpacing(15)
        self.answer_keys: list[QPushButton] = []
        self._values: list[int | None] = []
        self._answered: Callable[[int], None] | None = None
        self._doubtful: QWidget | None = None
        self.answers.hide()

    def add_message(self, content: QVBoxLayout) -> None:
        """Put the place for errors and doubts under what is there already."""
        content.addWidget(self.message)
        content.addWidget(self.answers)
        content.addStretch(1)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let Enter press the button that has the focus, not always the default one."""
        focus = self.focusWidget()
        enter = event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        if enter and isinstance(focus, QPushButton) and focus.isEnabled():
            focus.click()
            return
        super().keyPressEvent(event)

    def refuse(self, error: Exception, field: QWidget | None = None) -> None:
        """Say why something can't be taken, and go back to the field."""
        self._close_doubt()
        self.say_inside(error_text(error))
        if field is not None:
            self.mark(field, True)
            field.setFocus()

    def ask(
        self,
        question: str,
        answers: list[tuple[str, int | None]],
        answered: Callable[[int], None],
        field: QWidget,
    ) -> None:
        """Ask about a doubtful value; None sends back to the field."""
        self._close_doubt()
        self.say_inside(translated(question))
        self._answered, self._doubtful = answered, field
        for number, (text, value) in enumerate(answers):
            key = self.button(text)
            key.setMinimumHeight(73 if self.roles.large else 56)
            key.setProperty("answer", number)
            key.clicked.connect(self._on_answer)
            self._answer_row.addWidget(key)
            self.answer_keys.append(key)
            self._values.append(value)
        self.answers.show()
        self.answer_keys[0].setFocus()

    def say_inside(self, said: str) -> None:
        """Say something where errors and doubts are said."""
        self.message.setText(said)
        self.message.setAccessibleName(said)

    @property
    def asking(self) -> bool:
        """Whether a doubt is open."""
        return bool(self.answer_keys)

    def act(self, doing: Callable[[], ChangeSet], field: QWidget | None = None) -> None:
        """Do it, and close; an error of the world is said inside."""
        try:
            changes = doing()
        except RackboardError as error:
            self.refuse(error, field)
            return
        self.session.take(changes)
        self.acted.emit()
        self.done(Dialog.DialogCode.Accepted)

    def _on_answer(self) -> None:
        sender, answered, field = self.sender(), self._answered, self._doubtful
        assert sender is not None
        value = self._values[int(sender.property("answer"))]
        self._close_doubt()
        self.message.setText("")
        if value is None:
            if field is not None:
                field.setFocus()
        elif answered is not None:
            answered(value)

    def _close_doubt(self) -> None:
        for key in self.answer_keys:
            self._answer_row.removeWidget(key)
            key.deleteLater()
        self.answer_keys, self._values = [], []
        self._answered = self._doubtful = None
        self.answers.hide()
