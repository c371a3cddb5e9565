"""The forms of one rack, box or place, and of one zone."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QButtonGroup, QGridLayout, QLineEdit, QVBoxLayout, QWidget

from rackboard.core.bench import Place, PlaceKind, Zone
from rackboard.core.errors import InputError, RackboardError
from rackboard.core.text import Text, text
from rackboard.services.furnishing import Furnishing
from rackboard.services.slots import LONGEST_NAME, LONGEST_PREFIX, MOST_SLOTS, SLOTTED, Keep
from rackboard.store.changes import ChangeSet
from rackboard.ui.dialog import Dialog, row
from rackboard.ui.language import say, translated
from rackboard.ui.session import Session
from rackboard.ui.shop_fields import read_count
from rackboard.ui.theme import Theme

NEW_RACK = (3, 5)
NEW_BOX = (1, 4)


def kind_text(kind: PlaceKind) -> Text:
    """Return what a kind of place is called."""
    return {
        PlaceKind.RACK: text("Place", "rack"),
        PlaceKind.BOX: text("Place", "warm box"),
        PlaceKind.GRIP_BENCH: text("Place", "grip bench"),
        PlaceKind.PICK_UP: text("Place", "pick-up corner"),
        PlaceKind.OUT: text("Place", "out of the shop"),
    }[kind]


def refusal(error: RackboardError) -> str:
    """Return an error as it is said in a form."""
    if isinstance(error, InputError):
        line = say("Settings", "{field}: Wanted {wanted}; this is {came}.").format(
            field=translated(error.where), wanted=translated(error.wanted),
            came=translated(str(error.came) if not isinstance(error.came, str) else error.came),
        )  # fmt: skip
        return f"{line} {translated(error.remedy)}".strip()
    return f"{translated(error.message)} {translated(error.remedy)}".strip()


class FurnitureForm(Dialog):
    """What the two forms share: they act when saved, and stay open with what was refused."""

    def __init__(self, session: Session, parent: QWidget | None, theme: Theme | None) -> None:
        super().__init__(parent, theme)
        self.session = session
        self.furnishing = Furnishing(session.store, session.clock, session.bench.by)
        self.message = self.label("", self.roles.fact_bold, wrap=True)

    def act(self, act: Callable[[], ChangeSet]) -> bool:
        """Do something; False and the reason in the form if it can't be done."""
        self.message.setText("")
        try:
            changes = act()
        except RackboardError as error:
            self.message.setText(refusal(error))
            where = error.where if isinstance(error, InputError) else ""
            self._mark(str(where))
            return False
        if changes:
            self.session.take(changes)
        return True

    def fields(self) -> dict[str, QLineEdit]:
        """Return the fields by what errors call them."""
        return {}

    def _mark(self, where: str) -> None:
        for name, field in self.fields().items():
            self.mark(field, name == where)
            if name == where:
                field.setFocus()
                field.selectAll()


class PlaceForm(FurnitureForm):
    """Adds a place, or gives one another name, prefix, size or zone.

    Parameters
    ----------
    session : Session
        The open shop.
    place : Place, optional
        The one to change; None: a new one.
    """

    def __init__(
        self,
        session: Session,
        parent: QWidget | None = None,
        *,
        place: Place | None = None,
        theme: Theme | None = None,
    ) -> None:
        super().__init__(session, parent, theme)
        self.place = place
        self._zones: list[Zone] = list(session.board.snapshot.zones.values())
        self._lay_out()
        self._fill()
        self._follow_kind()
        self._follow_size()
        for field in (self.prefix, self.rows, self.columns):
            field.textChanged.connect(self._follow_size)
        self.kind.currentIndexChanged.connect(self._on_kind)
        self.name.setFocus()
        self.name.selectAll()
        large = self.roles.large
        self.fit(760 if large else 600, 660 if large else 500)

    def _lay_out(self) -> None:
        title = say("Place", "A new place") if self.place is None else self.place.name
        content = self.frame(title)
        self.kind = self.choice(say("Place", "Kind"))
        for kind in PlaceKind:
            if kind is not PlaceKind.OUT or (self.place and self.place.kind is kind):
                self.kind.addItem(translated(kind_text(kind)), kind)
        self.name = self.field(say("Place", "Name"))
        self.name.setMaxLength(LONGEST_NAME)
        wide = 92 if self.roles.large else 76
        self.prefix = self.field(say("Place", "Letters before the number"), wide)
        self.prefix.setMaxLength(LONGEST_PREFIX)
        self.rows = self.field(say("Place", "Rows"), wide)
        self.columns = self.field(say("Place", "Columns"), wide)
        self.zone = self.choice(say("Place", "Zone"))
        for zone in self._zones:
            self.zone.addItem(zone.name, zone.id)
        self.slots = self.label("", tone="sub", wrap=True)
        self.keeping = self.label("", wrap=True)
        self.by_number, self.by_place = self.option(""), self.option("")
        self.by_number.setChecked(True)
        group = QButtonGroup(self)
        group.addButton(self.by_number)
        group.addButton(self.by_place)
        grid = QGridLayout()
        grid.setHorizontalSpacing(16)
        grid.setVerticalSpacing(10)
        grid.setColumnStretch(1, 1)
        self._captions: dict[QWidget, QWidget] = {}
        self._size = row(self.rows, 10, self.label("×", tone="sub"), 10, self.columns)
        lines = (
            (say("Place", "Kind"), self.kind, row(self.kind)),
            (say("Place", "Name"), self.name, row(self.name, stretch=False)),
            (say("Place", "Prefix"), self.prefix, row(self.prefix)),
            (say("Place", "Rows × columns"), self.rows, self._size),
            (say("Place", "Zone"), self.zone, row(self.zone)),
        )
        for at, (caption, field, line) in enumerate(lines):
            made = self.label(caption)
            made.setBuddy(field)
            self._captions[field] = made
            grid.addWidget(made, at, 0)
            grid.addLayout(line, at, 1)
        content.addLayout(grid)
        content.addWidget(self.slots)
        kept = QVBoxLayout()
        kept.setSpacing(2)
        for item in (self.keeping, self.by_number, self.by_place):
            kept.addWidget(item)
        content.addLayout(kept)
        content.addStretch(1)
        content.addWidget(self.message)
        self.add_buttons(say("Place", "Save"), say("Place", "Cancel"))

    def fields(self) -> dict[str, QLineEdit]:
        """Return the fields by what errors call them."""
        return {
            "Name": self.name, "Prefix": self.prefix, "Rows": self.rows, "Columns": self.columns,
        }  # fmt: skip

    def _fill(self) -> None:
        place = self.place
        if place is None:
            self._propose(PlaceKind.RACK)
            return
        self.kind.setCurrentIndex(max(self.kind.findData(place.kind), 0))
        self.kind.setEnabled(False)
        self.name.setText(place.name)
        self.prefix.setText(place.prefix)
        self.rows.setText(str(place.rows or ""))
        self.columns.setText(str(place.columns or ""))
        self.zone.setCurrentIndex(max(self.zone.findData(place.zone_id), 0))

    def _propose(self, kind: PlaceKind) -> None:
        """Propose the next free letter and a usual size."""
        taken = {p.prefix.upper() for p in self.session.board.snapshot.places.values()}
        letter = next((c for c in "ABCDEFGHIJKLMNOPQRSTUVWXYZ" if c not in taken), "")
        rows, columns = NEW_BOX if kind is PlaceKind.BOX else NEW_RACK
        name = translated(kind_text(kind))
        if kind in SLOTTED:
            name = f"{name[:1].upper()}{name[1:]} {letter}".strip()
        self.name.setText(name)
        self.prefix.setText(letter)
        self.rows.setText(str(rows))
        self.columns.setText(str(columns))

    def _on_kind(self) -> None:
        self._propose(self._kind())
        self._follow_kind()
        self._follow_size()

    def _kind(self) -> PlaceKind:
        return PlaceKind(self.kind.currentData())

    def _follow_kind(self) -> None:
        slotted, inside = self._kind() in SLOTTED, self._kind() is not PlaceKind.OUT
        for field in (self.prefix, self.rows, self.columns):
            field.setEnabled(slotted)
        self.zone.setEnabled(inside)

    def _follow_size(self) -> None:
        """Say which slots there will be, and ask what the clubs keep if the numbers move."""
        said, pair = "", None
        if self._kind() in SLOTTED:
            try:
                wanted = self.read()
            except InputError:
                wanted = None
            if wanted is not None and 1 <= wanted.rows * wanted.columns <= MOST_SLOTS:
                last = wanted.slot_name(wanted.rows * wanted.columns - 1)
                said = say("Place", "Slots {first} to {last}, counted along the rows.")
                said = said.format(first=wanted.slot_name(0), last=last)
                pair = None if self.place is None else self.furnishing.renames(wanted)
        self.slots.setText(said)
        for item in (self.keeping, self.by_number, self.by_place):
            item.setVisible(pair is not None)
        if pair is None:
            self.by_number.setChecked(True)
            return
        before, after = pair
        self.keeping.setText(say("Place", "Clubs that lie there keep"))
        number = say("Place", "their number, as painted: {slot} stays {slot}")
        place = say("Place", "their row and column, painted anew: {before} becomes {after}")
        self.by_number.setText(number.format(slot=before))
        self.by_place.setText(place.format(before=before, after=after))

    def read(self) -> Place:
        """Return the place as it stands in the form.

        Raises
        ------
        InputError
            If a number is none.
        """
        kind = self._kind()
        slotted = kind in SLOTTED
        return Place(
            0 if self.place is None else self.place.id,
            self.zone.currentData() if kind is not PlaceKind.OUT else None, kind,
            self.name.text().strip(), self.prefix.text().strip() if slotted else "",
            read_count(self.rows.text(), text("Furnishing", "Rows")) if slotted else 0,
            read_count(self.columns.text(), text("Furnishing", "Columns")) if slotted else 0,
            0 if self.place is None else self.place.sort,
        )  # fmt: skip

    def accept(self) -> None:
        """Save it; the form stays open with the reason if it can't be."""
        keep = Keep.PLACES if self.by_place.isChecked() else Keep.NUMBERS

        def save() -> ChangeSet:
            place = self.read()
            if self.place is None:
                return self.furnishing.add_place(place)
            return self.furnishing.change_place(place, keep)

        if self.act(save):
            super().accept()


class ZoneForm(FurnitureForm):
    """Adds a zone, or gives one another name.

    Parameters
    ----------
    session : Session
        The open shop.
    zone : Zone, optional
        The one to rename; None: a new one.
    """

    def __init__(
        self,
        session: Session,
        parent: QWidget | None = None,
        *,
        zone: Zone | None = None,
        theme: Theme | None = None,
    ) -> None:
        super().__init__(session, parent, theme)
        self.zone = zone
        title = say("Place", "A new zone") if zone is None else zone.name
        said = say("Place", "A body of air with one temperature: the room, the inside of a box.")
        content = self.frame(title, said)
        self.name = self.field(say("Place", "Name"))
        self.name.setMaxLength(LONGEST_NAME)
        self.name.setText("" if zone is None else zone.name)
        caption = self.label(say("Place", "Name"))
        caption.setBuddy(self.name)
        content.addLayout(row(caption, 16, self.name, stretch=False))
        content.addStretch(1)
        content.addWidget(self.message)
        self.add_buttons(say("Place", "Save"), say("Place", "Cancel"))
        self.name.setFocus()
        self.fit(620 if self.roles.large else 520, 320 if self.roles.large else 260)

    def fields(self) -> dict[str, QLineEdit]:
        """Return the fields by what errors call them."""
        return {"Name": self.name}

    def accept(self) -> None:
        """Save it; the form stays open with the reason if it can't be."""
        name = self.name.text()

        def save() -> ChangeSet:
            if self.zone is None:
                return self.furnishing.add_zone(name)
            return self.furnishing.rename_zone(self.zone.id, name)

        if self.act(save):
            super().accept()
