"""A field for a moment as people type it at a bench: "15:40", "5 min ago", "Sat 08:00"."""

from __future__ import annotations

from PySide6.QtWidgets import QLineEdit, QWidget

from rackboard.core.instants import Instant
from rackboard.core.spoken_time import parse_moment
from rackboard.ui.session import Session


class TimeField(QLineEdit):
    """A field for a local date and time.

    Parameters
    ----------
    session : Session
        Gives the time and the opening hours.
    name : str
        What is asked for; names the field to a screen reader and in errors.
    future : bool
        Whether the moment must lie ahead (a promise) or may not (a mixing).
    """

    def __init__(
        self, session: Session, name: str, *, future: bool = False, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._session = session
        self._name = name
        self._future = future
        self.setAccessibleName(name)
        self.setMaxLength(60)
        self.setPlaceholderText(
            self.tr("Sat 08:00") if future else self.tr("5 min ago, 15:40, Mon 15:40")
        )

    @property
    def empty(self) -> bool:
        """Whether nothing is typed."""
        return not self.text().strip()

    def moment(self) -> Instant:
        """Return what is typed [µs UTC].

        Raises
        ------
        InputError
            If it can't be read without guessing, or lies on the wrong side of now.
        """
        now = self._session.clock.now()
        hours = self._session.board.snapshot.hours
        return parse_moment(self.text(), now, hours, self._future, self._name)
