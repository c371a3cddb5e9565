"""The dialog that takes what a thermometer says."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QWidget

from rackboard.core.bench import PlaceKind
from rackboard.core.errors import InputError
from rackboard.core.temperature import read_typed
from rackboard.ui.act_dialog import ActDialog
from rackboard.ui.session import Session
from rackboard.ui.temperature_doubt import temperature_doubt


class TemperatureDialog(ActDialog):
    """Zone, value, and whether it was read at the rack.

    Parameters
    ----------
    session : Session
        The open shop.
    zone_id : int
        The zone that is shown first.
    """

    def __init__(self, session: Session, zone_id: int, parent: QWidget | None = None) -> None:
        super().__init__(session, parent)
        content = self.frame(
            self.tr("Type a temperature"),
            self.tr("What a thermometer says now. It holds for 4 h while the shop is open."),
        )
        self.zone = self.choice(self.tr("Where"))
        zones = sorted(session.board.snapshot.zones.values(), key=lambda z: (z.sort, z.id))
        for zone in zones:
            self.zone.addItem(zone.name, zone.id)
        self.zone.setCurrentIndex(max(self.zone.findData(zone_id), 0))
        self.value = self.field(self.tr("Temperature"), 150 if self.roles.large else 120)
        self.at_rack = self.tick(self.tr("read at the rack, not guessed"))
        row = QHBoxLayout()
        row.setSpacing(15)
        row.addWidget(self.zone)
        row.addWidget(self.value)
        row.addWidget(self.label(f"°{session.unit}", tone="sub"))
        row.addStretch(1)
        content.addLayout(row)
        content.addWidget(self.at_rack)
        self.add_message(content)
        self.add_buttons(self.tr("Note it"), self.tr("Cancel"))
        self.value.setFocus()
        self.fit(620 if self.roles.large else 480, 440 if self.roles.large else 360)

    def accept(self) -> None:
        """Note it, or ask first."""
        if self.asking:
            return
        unit = self.session.unit
        self.mark(self.value, False)
        try:
            typed = read_typed(self.value.text(), unit, self.zone.currentText())
        except InputError as error:
            self.refuse(error, self.value)
            return
        warm_box = is_box(self.session, int(self.zone.currentData()))
        doubt = temperature_doubt(typed, unit, warm_box=warm_box)
        if doubt is None:
            self._note(typed.temperature_mc)
        else:
            self.ask(doubt.question, list(doubt.answers), self._note, self.value)

    def _note(self, temperature_mc: int) -> None:
        zone_id, at_rack = int(self.zone.currentData()), self.at_rack.isChecked()
        bench = self.session.bench
        self.act(
            lambda: bench.type_temperature(zone_id, temperature_mc, at_rack=at_rack, replace=True),
            self.value,
        )


def is_box(session: Session, zone_id: int) -> bool:
    """Return whether a zone is the air of warm boxes alone, which may be warmer than a room."""
    places = session.board.snapshot.places.values()
    return {place.kind for place in places if place.zone_id == zone_id} == {PlaceKind.BOX}
