"""The first page of glue-up: whose clubs, which, promised when; the usual line-ups."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QLineEdit, QWidget

from rackboard.core.errors import InputError
from rackboard.core.text import text
from rackboard.services.draft import LINE_UPS, Draft, read_clubs
from rackboard.ui import type
from rackboard.ui.glue_up_keys import ChoiceKey, dress_field, field_height
from rackboard.ui.glue_up_page import GAP, DoubtRow, Page, error_text
from rackboard.ui.keys import TARGET, Key
from rackboard.ui.language import say, translated
from rackboard.ui.session import Session
from rackboard.ui.theme import Theme
from rackboard.ui.time_field import TimeField
from rackboard.ui.wording import Times

COLUMNS = 3


class JobForm(Page):
    """Job number, clubs, customer, phone, promise; the usual line-ups.

    For a single club two fields do: the number and the club, then Enter.

    Signals
    -------
    clubs_named(object)
        Names that were typed, to be added; the other facts are in the draft.
    lined_up(object)
        Names of a line-up, to be added; the other facts are in the draft.
    accepted()
        On to the clubs that are there already; the facts are in the draft.
    cancelled()
        Nothing is to be laid out.
    """

    clubs_named = Signal(object)
    lined_up = Signal(object)
    accepted = Signal()
    cancelled = Signal()

    def __init__(
        self, session: Session, theme: Theme, *, large: bool, parent: QWidget | None = None
    ) -> None:
        super().__init__("", theme, large=large, parent=parent)
        self.title = self.tr("Glue-up")
        self._session = session
        self._draft = Draft()
        self.number = QLineEdit(self)
        self.clubs = QLineEdit(self)
        self.clubs.setPlaceholderText(self.tr("driver, or 4-PW, or below"))
        self.customer = QLineEdit(self)
        self.phone = QLineEdit(self)
        self.promise = TimeField(session, self.tr("promised"), future=True, parent=self)
        self._labels = (
            self.tr("Job"), self.tr("Clubs"), self.tr("Customer"), self.tr("Phone"),
            self.tr("Promised"),
        )  # fmt: skip
        self._fields: tuple[QLineEdit, ...] = (
            self.number, self.clubs, self.customer, self.phone, self.promise,
        )  # fmt: skip
        for field, label in zip(self._fields, self._labels, strict=True):
            field.setAccessibleName(label)
            field.setMaxLength(80)
            dress_field(field, theme, self.roles)
            if field is not self.number:
                field.returnPressed.connect(self._on_return)
        self.number.returnPressed.connect(self.clubs.setFocus)
        self.number.textEdited.connect(self._show_present)
        self.clubs.textEdited.connect(self._show_go_on)
        self.row = DoubtRow(theme, large=large, parent=self)
        self.keys: list[ChoiceKey] = []
        for index, line_up in enumerate(LINE_UPS):
            key = ChoiceKey(
                translated(line_up.name), theme, self.roles, self, sub=line_up.sub
            )
            key.setProperty("line_up", index)
            key.clicked.connect(self._on_line_up)
            self.keys.append(key)
        self.go_on = Key(self.tr("To the clubs"), theme, self.roles, self, primary=True)
        self.go_on.clicked.connect(self._on_go_on)
        self.cancel = Key(self.tr("Cancel"), theme, self.roles, self)
        self.cancel.clicked.connect(self.cancelled)

    def show_draft(self, draft: Draft) -> None:
        """Fill the fields from a draft; they are written back to it."""
        self._draft = draft
        self.number.setText(draft.number)
        self.clubs.clear()
        self.customer.setText(draft.customer)
        self.phone.setText(draft.phone)
        board = self._session.board
        times = Times(board.snapshot.hours, self._session.clock.now())
        promised = draft.promised_us
        self.promise.setText("" if promised is None else times.moment(promised))
        self.row.clear()
        self._show_go_on()
        self._show_present()
        self.number.selectAll()
        self.update()

    def first_focus(self) -> QWidget:
        """Return the number's field, or that of further clubs."""
        return self.clubs if self._draft.clubs else self.number

    def say(self, words: str) -> None:
        """Say why something can't be taken."""
        self.row.say(words)
        self.update()

    def take(self) -> bool:
        """Write the fields to the draft; say what can't be taken, and return False."""
        try:
            if not self.number.text().strip():
                raise InputError(
                    text("JobForm", "a job number"), text("JobForm", "nothing"),
                    text("JobForm", "Job"),
                )  # fmt: skip
            promised = None if self.promise.empty else self.promise.moment()
        except InputError as error:
            self.say(error_text(error))
            (self.promise if self.number.text().strip() else self.number).setFocus()
            return False
        draft = self._draft
        draft.number = self.number.text().strip()
        draft.customer = self.customer.text().strip()
        draft.phone = self.phone.text().strip()
        draft.promised_us = promised
        return True

    def _show_go_on(self) -> None:
        self.go_on.setEnabled(bool(self._draft.clubs or self.clubs.text().strip()))

    def _show_present(self) -> None:
        """Say so if the number is there already: the clubs are added to that job."""
        store = self._session.store
        present = store.work.job_numbered(self.number.text().strip())
        for field in (self.customer, self.phone, self.promise):
            field.setEnabled(present is None)
        if present is None:
            if self.row.property("present"):
                self.say("")
                self.row.setProperty("present", False)
            return
        customers = store.work.customers([present.customer_id])
        name = customers[0].name if customers else ""
        self.row.setProperty("present", True)
        said = self.tr("Job {number}, {customer}, is there already: the clubs are added to it.")
        if not name:
            said = self.tr("Job {number} is there already: the clubs are added to it.")
        self.say(said.format(number=present.number, customer=name))

    def _on_return(self) -> None:
        if self._draft.clubs or self.clubs.text().strip():
            self._on_go_on()
        elif self.sender() is self.clubs:
            self.keys[0].setFocus()
        else:
            self.clubs.setFocus()

    def _on_go_on(self) -> None:
        try:
            names = read_clubs(self.clubs.text())
        except InputError as error:
            self.say(error_text(error))
            self.clubs.setFocus()
            return
        if not self.take():
            return
        if names:
            self.clubs_named.emit(names)
        elif self._draft.clubs:
            self.accepted.emit()

    def _on_line_up(self) -> None:
        sender = self.sender()
        assert sender is not None
        if self.take():
            self.lined_up.emit(LINE_UPS[int(sender.property("line_up"))].clubs)

    def _field_top(self, row: int) -> float:
        pitch = field_height(self.roles) + (12 if self.large else 5)
        return self.head_bottom + (14 if self.large else 6) + row * pitch

    @property
    def _label_width(self) -> int:
        return 110 if self.large else 78

    @property
    def _message_top(self) -> float:
        return self._field_top(5)

    @property
    def _line_ups_top(self) -> float:
        rows = -(-len(self.keys) // COLUMNS)
        high = rows * (TARGET + GAP)
        if not self.large:
            return self.foot_top - high
        return min(self._message_top + 96, self.foot_top - high)

    def place(self) -> None:
        """Place fields and keys."""
        x = self.pad + self._label_width
        wide = self.width() - self.pad - x
        for row, field in enumerate(self._fields):
            self.put(field, x, self._field_top(row), wide, field_height(self.roles))
        top, y = self._message_top, self._line_ups_top
        self.put(self.row, self.pad, top, self.room, max(y - top - 6, 18))
        for at in range(0, len(self.keys), COLUMNS):
            self.put_row(self.keys[at : at + COLUMNS], y, TARGET)
            y += TARGET + GAP
        self.put_row((self.go_on, self.cancel), self.foot_top, self.foot_height, (3, 1.2))

    def draw(self, painter: QPainter) -> None:
        """Paint the labels; what has to be said takes the place of the caption."""
        style = self.roles.fact
        cap = type.cap_height(style)
        for row, label in enumerate(self._labels):
            y = self._field_top(row) + field_height(self.roles) / 2 + cap / 2
            type.draw(painter, style, self.pad, y, label, self.theme.sub)
        if self.row.text and not self.large:
            return
        caption = self.tr("Usual line-ups")
        count = len(self._draft.clubs)
        there = say("JobForm", "%n clubs are there", "%n club is there", count) if count else ""
        up = 14 if self.large else 10
        self.caption(painter, self._line_ups_top - up, caption, there)
