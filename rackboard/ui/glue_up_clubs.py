"""The page of glue-up on which single clubs are changed: name, kind of joint, graphics."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QLineEdit, QWidget

from rackboard.core.bench import JointKind
from rackboard.services.draft import INDEX_MARK, DraftClub
from rackboard.ui.glue_up_keys import ChoiceKey, ClubKey, dress_field, field_height
from rackboard.ui.glue_up_page import GAP, DoubtRow, Page
from rackboard.ui.keys import RIM, TARGET, Key
from rackboard.ui.theme import Theme

COLUMNS = 4
GRAPHICS = ("12", "6", INDEX_MARK)
"""What can be chosen; none of them is chosen by pressing again."""


class ClubGrid(QWidget):
    """The clubs of the draft with their slots, four in a row; high while there are few.

    Signals
    -------
    club_chosen(int)
        A club was pressed.
    """

    club_chosen = Signal(int)

    def __init__(self, page: Page) -> None:
        super().__init__(page)
        self._page = page
        self._keys: list[ClubKey] = []
        self._count = 0

    def show_clubs(self, clubs: list[tuple[str, str]], marked: int) -> None:
        """Show clubs (name, slot); `marked` gets the ring of the next slot."""
        while len(self._keys) < len(clubs):
            key = ClubKey(self._page.theme, self._page.roles, self)
            key.setProperty("club", len(self._keys))
            key.clicked.connect(self._on_clicked)
            self._keys.append(key)
        for index, key in enumerate(self._keys):
            key.setVisible(index < len(clubs))
            if index < len(clubs):
                key.show_club(*clubs[index], marked=index == marked)
        if len(clubs) != self._count:
            self._count = len(clubs)
            self._page.place()
        self.place()

    def keys(self) -> list[ClubKey]:
        """Return the keys of the clubs that are there."""
        return self._keys[: self._count]

    @property
    def pitch(self) -> int:
        """Height of a row and of the gap under it."""
        return self._high() + (12 if self._page.large else 7)

    def wanted_height(self) -> int:
        """Return the height of all rows."""
        rows = max(-(-self._count // COLUMNS), 1)
        return rows * self.pitch

    def _high(self) -> int:
        rows = max(-(-self._count // COLUMNS), 1)
        if self._page.large:
            return TARGET if rows <= 2 else 44
        return TARGET if rows == 1 else 31

    def place(self) -> None:
        """Place the keys; the widget stands out by the rim on every side."""
        gap = 12 if self._page.large else 9
        wide = (self.width() - 2 * RIM - gap * (COLUMNS - 1)) / COLUMNS
        for index, key in enumerate(self._keys):
            row, column = divmod(index, COLUMNS)
            key.setGeometry(
                round(column * (wide + gap)), row * self.pitch,
                round(wide) + 2 * RIM, self._high() + 2 * RIM,
            )  # fmt: skip

    def _on_clicked(self) -> None:
        sender = self.sender()
        if sender is not None:
            self.club_chosen.emit(int(sender.property("club")))


class ClubsPage(Page):
    """One club of the draft at a time.

    Signals
    -------
    club_chosen(int), renamed(str), kind_chosen(object), graphics_chosen(str)
        About the club shown.
    removed(), added(), accepted()
        Take the club out; add one; back to the lay-out.
    """

    club_chosen = Signal(int)
    renamed = Signal(str)
    kind_chosen = Signal(object)
    graphics_chosen = Signal(str)
    removed = Signal()
    added = Signal()
    accepted = Signal()

    def __init__(self, theme: Theme, *, large: bool, parent: QWidget | None = None) -> None:
        super().__init__("", theme, large=large, parent=parent)
        self.title = self.tr("Clubs")
        self.grid = ClubGrid(self)
        self.grid.club_chosen.connect(self.club_chosen)
        self.name = QLineEdit(self)
        self.name.setAccessibleName(self.tr("Club"))
        self.name.setMaxLength(40)
        self.name.textEdited.connect(self.renamed)
        dress_field(self.name, theme, self.roles)
        self.kinds: dict[JointKind, ChoiceKey] = {}
        for kind, text in (
            (JointKind.SOLID_HEAD, self.tr("solid\nhead")),
            (JointKind.HOLLOW_HEAD, self.tr("hollow\nhead")),
            (JointKind.OVER_HOSEL_PUTTER, self.tr("over-hosel\nputter")),
            (JointKind.ADAPTER_SLEEVE, self.tr("adapter\nsleeve")),
            (JointKind.BUTT_EXTENSION, self.tr("butt\nextension")),
            (JointKind.TIP_WEIGHT, self.tr("tip\nweight")),
        ):
            key = ChoiceKey(text, theme, self.roles, self)
            key.setProperty("kind", kind.value)
            key.clicked.connect(self._on_kind)
            self.kinds[kind] = key
        self.graphics: dict[str, ChoiceKey] = {}
        for value, text in zip(
            GRAPHICS, (self.tr("at 12"), self.tr("at 6"), self.tr("index mark")), strict=True
        ):
            key = ChoiceKey(text, theme, self.roles, self)
            key.setProperty("graphics", value)
            key.clicked.connect(self._on_graphics)
            self.graphics[value] = key
        self.row = DoubtRow(theme, large=large, parent=self)
        self.go_on = Key(self.tr("Done"), theme, self.roles, self, primary=True)
        self.add = Key(self.tr("Add\na club"), theme, self.roles, self)
        self.remove = Key(self.tr("Take\nit out"), theme, self.roles, self)
        self.go_on.clicked.connect(self.accepted)
        self.add.clicked.connect(self.added)
        self.remove.clicked.connect(self.removed)
        self.name.returnPressed.connect(self.accepted)

    def first_focus(self) -> QWidget:
        """Return the field of the name."""
        return self.name

    def show_club(self, clubs: list[tuple[str, str]], index: int, club: DraftClub) -> None:
        """Show all clubs, and one of them in full."""
        self.grid.show_clubs(clubs, index)
        if self.name.text() != club.name:
            self.name.setText(club.name)
        for kind, key in self.kinds.items():
            key.setChecked(kind is club.kind)
        for value, choice in self.graphics.items():
            choice.setChecked(value == club.graphics)
        self.graphics[INDEX_MARK].setEnabled(club.kind is JointKind.ADAPTER_SLEEVE)

    def _on_kind(self) -> None:
        sender = self.sender()
        if sender is not None:
            self.kind_chosen.emit(JointKind(sender.property("kind")))

    def _on_graphics(self) -> None:
        sender = self.sender()
        if sender is not None:
            value = str(sender.property("graphics"))
            self.graphics_chosen.emit("" if self.graphics[value].isChecked() else value)

    @property
    def _kinds_top(self) -> float:
        return self._name_top + field_height(self.roles) + (40 if self.large else 28)

    @property
    def _name_top(self) -> float:
        return self.head_bottom + (14 if self.large else 4) + self.grid.wanted_height() + 4

    @property
    def _graphics_top(self) -> float:
        return self._kinds_top + 2 * (TARGET + GAP) + (28 if self.large else 20)

    def place(self) -> None:
        """Place everything."""
        top = self.head_bottom + (14 if self.large else 4)
        self.grid.setGeometry(
            self.pad - RIM, top - RIM, self.room + 2 * RIM, self.grid.wanted_height() + 2 * RIM
        )
        self.grid.place()
        self.put(self.name, self.pad, self._name_top, self.room, field_height(self.roles))
        kinds = list(self.kinds.values())
        self.put_row(kinds[:3], self._kinds_top, TARGET)
        self.put_row(kinds[3:], self._kinds_top + TARGET + GAP, TARGET)
        self.put_row(list(self.graphics.values()), self._graphics_top, TARGET)
        below = self._graphics_top + TARGET + 8
        self.put(self.row, self.pad, below, self.room, max(self.foot_top - below - 8, 18))
        keys = (self.go_on, self.add, self.remove)
        self.put_row(keys, self.foot_top, self.foot_height, (2, 1, 1))

    def draw(self, painter: QPainter) -> None:
        """Paint the captions."""
        up = 12 if self.large else 9
        self.caption(painter, self._kinds_top - up, self.tr("What is glued"))
        graphics_base = self._graphics_top - up
        self.caption(painter, graphics_base, self.tr("Graphics of the shaft; press again for none"))
