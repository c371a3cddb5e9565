"""Who acts: a field for initials, and the remembered ones to take by a tap or the arrows."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from rackboard.services.acts import LONGEST_INITIALS
from rackboard.ui.controls import RING_ROOM
from rackboard.ui.dialog import Dialog
from rackboard.ui.language import say
from rackboard.ui.session import Session

_MOST = 4
"""So many people have a key; the arrows in the field reach all."""
_STEPS: dict[int, int] = {Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1}


class InitialsRow(QWidget):
    """Initials of who acts; it starts with who is at the bench, else with whoever acted last.

    Parameters
    ----------
    session : Session
        The open shop.
    dialog : Dialog
        Whose look the row takes.
    head : str, optional
        What stands before the field; "Who" by default.
    """

    def __init__(self, session: Session, dialog: Dialog, head: str = "") -> None:
        super().__init__()
        self._session = session
        self.people = [person.initials for person in session.store.shop.persons()]
        large = dialog.roles.large
        self.field = dialog.field(say("Initials", "Initials of who does it"), 130 if large else 104)
        self.field.setMaxLength(LONGEST_INITIALS)
        self.field.setPlaceholderText(say("Initials", "initials"))
        self.field.setText(session.bench.by or (self.people[0] if self.people else ""))
        self.field.installEventFilter(self)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, RING_ROOM, RING_ROOM, RING_ROOM)
        row.setSpacing(15)
        row.addWidget(dialog.heading(head or say("Initials", "Who")))
        row.addWidget(self.field)
        self.keys: list[QPushButton] = []
        for initials in self.people[:_MOST]:
            key = dialog.button(initials.replace("&", "&&"))
            key.setFixedHeight(self.field.height())
            key.setMinimumHeight(self.field.height())
            key.setAccessibleName(say("Initials", "It is {initials}").format(initials=initials))
            key.setProperty("initials", initials)
            key.clicked.connect(self._on_key)
            row.addWidget(key)
            self.keys.append(key)
        row.addStretch(1)

    @property
    def initials(self) -> str:
        """What stands in the field."""
        return self.field.text().strip()

    def take(self) -> None:
        """Let the acts from now on carry these initials.

        Raises
        ------
        InputError
            If they are too long.
        """
        self._session.bench.act_as(self.initials)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Let the arrows walk through the remembered people."""
        if watched is self.field and isinstance(event, QKeyEvent):
            step = _STEPS.get(event.key(), 0)
            if step and self.people and event.type() is QEvent.Type.KeyPress:
                here = self.people.index(self.initials) if self.initials in self.people else -1
                at = (here + step) % len(self.people) if here >= 0 else 0
                self.field.setText(self.people[at])
                self.field.selectAll()
                return True
        return False

    def _on_key(self) -> None:
        sender = self.sender()
        assert sender is not None
        self.field.setText(str(sender.property("initials")))
        self.field.setFocus()
