"""The dialog "Move to…": every free slot and every place as a key."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from rackboard.core.bench import Place
from rackboard.core.standing import Standing
from rackboard.ui.act_dialog import ActDialog
from rackboard.ui.keys import Key
from rackboard.ui.session import Session

_MOST_COLUMNS = 8


class PlaceChooser(ActDialog):
    """Where a club is carried; it is done as soon as a key is pressed.

    Parameters
    ----------
    session : Session
        The open shop.
    standing : Standing
        Of the club's joint.

    Signals
    -------
    club_carried(int)
        The club lies where it was carried: bring the ring to it.
    """

    club_carried = Signal(int)

    def __init__(self, session: Session, standing: Standing, parent: QWidget | None = None) -> None:
        super().__init__(session, parent)
        self._club_id = standing.club.id
        snapshot = session.board.snapshot
        here = standing.stay
        where = snapshot.where(standing.club.id)
        content = self.frame(
            self.tr("Move {club} to…").format(club=standing.club.name),
            self.tr("Job {n}, now at {where}. Carry it with its head untouched.").format(
                n=standing.job.number, where=where or self.tr("no place")
            ),
        )
        page = QWidget()
        column = QVBoxLayout(page)
        column.setContentsMargins(0, 0, 8, 0)
        column.setSpacing(4)
        self.keys: dict[tuple[int, int | None], Key] = {}
        taken = {(stay.place_id, stay.slot) for stay in snapshot.stays.values()}
        places = sorted(snapshot.places.values(), key=lambda p: (p.sort, p.id))
        for place in places:
            if place.rows * place.columns:
                column.addWidget(self.heading(place.name))
                column.addLayout(self._slots(place, taken))
        row = QHBoxLayout()
        row.setSpacing(1)
        for place in places:
            if not place.rows * place.columns:
                key = self._key(place.name, place.id, None)
                key.setEnabled(here is None or here.place_id != place.id)
                row.addWidget(key)
        column.addWidget(self.heading(self.tr("Elsewhere")))
        column.addLayout(row)
        column.addStretch(1)
        content.addWidget(self.scrolled(page), 1)
        content.addWidget(self.message)
        self.message.setMinimumHeight(20)
        self.add_buttons("", self.tr("Cancel"))
        first = next((key for key in self.keys.values() if key.isEnabled()), None)
        if first is not None:
            first.setFocus()
        self.fit(720 if self.roles.large else 620, 820 if self.roles.large else 740)

    def _slots(self, place: Place, taken: set[tuple[int, int | None]]) -> QGridLayout:
        grid = QGridLayout()
        grid.setSpacing(1)
        columns = min(place.columns, _MOST_COLUMNS)
        for slot in range(place.rows * place.columns):
            key = self._key(place.slot_name(slot), place.id, slot)
            key.setEnabled((place.id, slot) not in taken)
            grid.addWidget(key, slot // columns, slot % columns)
        return grid

    def _key(self, text: str, place_id: int, slot: int | None) -> Key:
        key = Key(text, self.theme, self.roles)
        key.setProperty("place", place_id)
        key.setProperty("slot", -1 if slot is None else slot)
        key.clicked.connect(self._on_place)
        self.keys[(place_id, slot)] = key
        return key

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let Enter press the key that has the ring."""
        focus = self.focusWidget()
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and isinstance(focus, Key):
            focus.click()
            return
        super().keyPressEvent(event)

    def _on_place(self) -> None:
        sender = self.sender()
        assert sender is not None
        place_id, slot = int(sender.property("place")), int(sender.property("slot"))
        bench = self.session.bench
        self.act(lambda: bench.move(self._club_id, place_id, None if slot < 0 else slot))
        if self.result() == self.DialogCode.Accepted:
            self.club_carried.emit(self._club_id)
