"""The settings' page of racks, boxes, places without slots, and zones."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from rackboard.core.bench import Place, Zone
from rackboard.core.errors import RackboardError
from rackboard.services.furnishing import Furnishing
from rackboard.services.slots import SLOTTED
from rackboard.store.changes import ChangeSet
from rackboard.ui.dialog import Dialog, row
from rackboard.ui.language import say, translated
from rackboard.ui.list_rows import Line, LineList
from rackboard.ui.place_fields import PlaceForm, ZoneForm, kind_text, refusal
from rackboard.ui.session import Session
from rackboard.ui.theme import Theme


class RackSettings(QWidget):
    """Two lists with their keys; every act holds at once, and undo takes it back.

    Parameters
    ----------
    session : Session
        The open shop.
    dialog : Dialog
        The settings, for their hand.
    theme : Theme, optional
        The scheme of the forms; by default the application's.
    """

    def __init__(self, session: Session, dialog: Dialog, theme: Theme | None = None) -> None:
        super().__init__()
        self._theme = theme
        self._session = session
        self._dialog = dialog
        self.form: PlaceForm | ZoneForm | None = None
        self.places = self._list(say("Settings", "Racks and places"))
        self.zones = self._list(say("Settings", "Zones"))
        self.message = dialog.label("", dialog.roles.fact_bold, wrap=True)
        self.buttons: dict[str, QPushButton] = {}
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 2, 8, 8)
        column.setSpacing(8)
        column.addWidget(dialog.heading(say("Settings", "Racks, warm boxes and other places")))
        column.addLayout(self._beside("place", self.places, (
            (say("Settings", "Edit…"), self.edit_place), (say("Settings", "Add…"), self.add_place),
            (say("Settings", "Remove"), self.remove_place),
            (say("Settings", "Up"), self.place_up), (say("Settings", "Down"), self.place_down),
        )), 3)  # fmt: skip
        column.addSpacing(dialog.gap - 6)
        column.addWidget(dialog.heading(say("Settings", "Zones, each with its own temperature")))
        column.addLayout(self._beside("zone", self.zones, (
            (say("Settings", "Rename…"), self.edit_zone), (say("Settings", "Add…"), self.add_zone),
            (say("Settings", "Remove"), self.remove_zone),
            (say("Settings", "Up"), self.zone_up), (say("Settings", "Down"), self.zone_down),
        )), 2)  # fmt: skip
        column.addWidget(self.message)
        at_once = say("Settings", "What is done on this page holds at once; Undo takes it back.")
        column.addWidget(dialog.label(at_once, tone="sub", wrap=True))
        session.acted.connect(self._on_acted)
        self.refresh()

    def _list(self, name: str) -> LineList:
        made = LineList(name, self._dialog.theme, self._dialog.roles)
        made.setMinimumHeight(3 * (46 if self._dialog.roles.large else 36) + 8)
        return made

    def _beside(
        self, what: str, lines: LineList, keys: tuple[tuple[str, Callable[[], None]], ...]
    ) -> QHBoxLayout:
        """Lay a list out with its keys under each other."""
        side = QVBoxLayout()
        side.setSpacing(8 if self._dialog.roles.large else 6)
        for (label, slot), name in zip(keys, ("edit", "add", "remove", "up", "down"), strict=True):
            button = self._dialog.button(label)
            button.setMinimumHeight(44 if self._dialog.roles.large else 32)
            button.clicked.connect(slot)
            self.buttons[f"{what} {name}"] = button
            if name == "up":
                pair = row(button, 8, stretch=False)
            elif name == "down":
                pair.addWidget(button)
                side.addLayout(pair)
            else:
                side.addWidget(button)
        side.addStretch(1)
        lines.doubleClicked.connect(keys[0][1])
        made = QHBoxLayout()
        made.setSpacing(16)
        made.addWidget(lines, 1)
        made.addLayout(side)
        return made

    # What is shown

    def refresh(self) -> None:
        """Show what the shop has."""
        snapshot = self._session.board.snapshot
        places = [p for p in snapshot.places.values() if p.kind in SLOTTED]
        places += [p for p in snapshot.places.values() if p.kind not in SLOTTED]
        self.places.show_lines(tuple(Line(p.id, p.name, self._fact(p)) for p in places))
        zones = snapshot.zones.values()
        self.zones.show_lines(tuple(Line(z.id, z.name, self._in_zone(z)) for z in zones))

    def _fact(self, place: Place) -> str:
        zone = self._session.board.snapshot.zones.get(place.zone_id or 0)
        where = zone.name if zone is not None else "–"
        kind = translated(kind_text(place.kind))
        if place.kind not in SLOTTED:
            return f"{kind}, {where}" if place.name != kind else where
        count = place.rows * place.columns
        return (
            f"{place.slot_name(0)}–{place.slot_name(count - 1)},"
            f" {place.rows} × {place.columns}, {where}"
        )

    def _in_zone(self, zone: Zone) -> str:
        places = self._session.board.snapshot.places.values()
        return ", ".join(place.name for place in places if place.zone_id == zone.id)

    def _on_acted(self, changes: object) -> None:
        if isinstance(changes, ChangeSet) and changes.tables & {"place", "zone"}:
            self.refresh()

    # Acts

    def _place(self) -> Place | None:
        line = self.places.chosen()
        return None if line is None else self._session.board.snapshot.places.get(line.key)

    def _zone(self) -> Zone | None:
        line = self.zones.chosen()
        return None if line is None else self._session.board.snapshot.zones.get(line.key)

    def _open(self, form: PlaceForm | ZoneForm) -> None:
        self.message.setText("")
        self.form = form
        form.destroyed.connect(self._on_form_closed)
        form.open()

    def _on_form_closed(self) -> None:
        self.form = None

    def edit_place(self) -> None:
        """Change the chosen place."""
        if (place := self._place()) is not None:
            self._open(PlaceForm(self._session, self._dialog, place=place, theme=self._theme))

    def add_place(self) -> None:
        """Add a place."""
        self._open(PlaceForm(self._session, self._dialog, theme=self._theme))

    def remove_place(self) -> None:
        """Remove the chosen place, if nothing hangs on it."""
        if (place := self._place()) is not None:
            self._act(lambda acts: acts.remove_place(place.id))

    def place_up(self) -> None:
        """Move the chosen place up."""
        if (place := self._place()) is not None:
            self._act(lambda acts: acts.shift_place(place.id, -1))

    def place_down(self) -> None:
        """Move the chosen place down."""
        if (place := self._place()) is not None:
            self._act(lambda acts: acts.shift_place(place.id, 1))

    def edit_zone(self) -> None:
        """Rename the chosen zone."""
        if (zone := self._zone()) is not None:
            self._open(ZoneForm(self._session, self._dialog, zone=zone, theme=self._theme))

    def add_zone(self) -> None:
        """Add a zone."""
        self._open(ZoneForm(self._session, self._dialog, theme=self._theme))

    def remove_zone(self) -> None:
        """Remove the chosen zone, if nothing hangs on it."""
        if (zone := self._zone()) is not None:
            self._act(lambda acts: acts.remove_zone(zone.id))

    def zone_up(self) -> None:
        """Move the chosen zone up."""
        if (zone := self._zone()) is not None:
            self._act(lambda acts: acts.shift_zone(zone.id, -1))

    def zone_down(self) -> None:
        """Move the chosen zone down."""
        if (zone := self._zone()) is not None:
            self._act(lambda acts: acts.shift_zone(zone.id, 1))

    def _act(self, act: Callable[[Furnishing], ChangeSet]) -> None:
        session = self._session
        self.message.setText("")
        try:
            changes = act(Furnishing(session.store, session.clock, session.bench.by))
        except RackboardError as error:
            self.message.setText(refusal(error))
            return
        if changes:
            session.take(changes)

    def show_theme(self) -> None:
        """Take the dialog's scheme."""
        for lines in (self.places, self.zones):
            lines.show_theme(self._dialog.theme)


