"""The first page of glue-up: whose clubs, promised when, and which usual line-up."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QLineEdit, QWidget

from rackboard.core.errors import InputError
from rackboard.services.draft import LINE_UPS, Draft
from rackboard.ui import type
from rackboard.ui.glue_up_keys import ChoiceKey, dress_field, field_height
from rackboard.ui.glue_up_page import GAP, DoubtRow, Page
from rackboard.ui.keys import TARGET, Key
from rackboard.ui.session import Session
from rackboard.ui.theme import Theme
from rackboard.ui.time_field import TimeField
from rackboard.ui.wording import Times


class JobForm(Page):
    """Job number, customer, phone, promise; the usual line-ups.

    Signals
    -------
    lined_up(int)
        A usual line-up was chosen (index of `LINE_UPS`); the facts are in the draft.
    accepted()
        On to the clubs that are there already; the facts are in the draft.
    cancelled()
        Nothing is to be laid out.
    """

    lined_up = Signal(int)
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
        self.customer = QLineEdit(self)
        self.phone = QLineEdit(self)
        self.promise = TimeField(session, self.tr("promised"), future=True, parent=self)
        self._labels = (
            self.tr("Job"), self.tr("Customer"), self.tr("Phone"), self.tr("Promised"),
        )  # fmt: skip
        self._fields: tuple[QLineEdit, ...] = (
            self.number, self.customer, self.phone, self.promise,
        )  # fmt: skip
        for field, label in zip(self._fields, self._labels, strict=True):
            field.setAccessibleName(label)
            field.setMaxLength(80)
            dress_field(field, theme, self.roles)
            field.returnPressed.connect(self._on_return)
        self.number.textEdited.connect(self._show_present)
        self.row = DoubtRow(theme, large=large, parent=self)
        self.keys = []
        for index, line_up in enumerate(LINE_UPS):
            key = ChoiceKey(line_up.name, theme, self.roles, self)
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
        self.customer.setText(draft.customer)
        self.phone.setText(draft.phone)
        board = self._session.board
        times = Times(board.snapshot.hours, self._session.clock.now())
        promised = draft.promised_us
        self.promise.setText("" if promised is None else times.moment(promised))
        self.go_on.setEnabled(bool(draft.clubs))
        self.row.clear()
        self._show_present()

    def first_focus(self) -> QWidget:
        """Return the customer's field: a free number stands there already."""
        return self.customer if self.customer.isEnabled() else self.number

    def take(self) -> bool:
        """Write the fields to the draft; say what can't be taken, and return False."""
        try:
            if not self.number.text().strip():
                raise InputError(self.tr("a job number"), self.tr("nothing"), self.tr("Job"))
            promised = None if self.promise.empty else self.promise.moment()
        except InputError as error:
            self.row.say(str(error))
            (self.promise if self.number.text().strip() else self.number).setFocus()
            return False
        draft = self._draft
        draft.number = self.number.text().strip()
        draft.customer = self.customer.text().strip()
        draft.phone = self.phone.text().strip()
        draft.promised_us = promised
        return True

    def _show_present(self) -> None:
        """Say so if the number is there already: the clubs are added to that job."""
        store = self._session.store
        present = store.work.job_numbered(self.number.text().strip())
        for field in (self.customer, self.phone, self.promise):
            field.setEnabled(present is None)
        if present is None:
            if self.row.property("present"):
                self.row.clear()
                self.row.setProperty("present", False)
            return
        customers = store.work.customers([present.customer_id])
        name = customers[0].name if customers else ""
        self.row.setProperty("present", True)
        text = self.tr("Job {number}, {customer}, is there already: the clubs are added to it.")
        self.row.say(text.format(number=present.number, customer=name))

    def _on_return(self) -> None:
        if self._draft.clubs:
            self._on_go_on()
        else:
            self.keys[0].setFocus()

    def _on_go_on(self) -> None:
        if self._draft.clubs and self.take():
            self.accepted.emit()

    def _on_line_up(self) -> None:
        sender = self.sender()
        assert sender is not None
        if self.take():
            self.lined_up.emit(int(sender.property("line_up")))

    def _field_top(self, row: int) -> float:
        pitch = field_height(self.roles) + (12 if self.large else 9)
        return self.head_bottom + (14 if self.large else 8) + row * pitch

    @property
    def _label_width(self) -> int:
        return 110 if self.large else 78

    @property
    def _message_top(self) -> float:
        return self._field_top(4)

    @property
    def _line_ups_top(self) -> float:
        return self._message_top + (96 if self.large else 78)

    def place(self) -> None:
        """Place fields and keys."""
        x = self.pad + self._label_width
        wide = self.width() - self.pad - x
        for row, field in enumerate(self._fields):
            self.put(field, x, self._field_top(row), wide, field_height(self.roles))
        high = 52 if self.large else 44
        self.put(self.row, self.pad, self._message_top, self.room, high)
        y = self._line_ups_top
        for at in range(0, len(self.keys), 2):
            self.put_row(self.keys[at : at + 2], y, TARGET)
            y += TARGET + GAP
        self.put_row((self.go_on, self.cancel), self.foot_top, self.foot_height, (3, 1.2))

    def draw(self, painter: QPainter) -> None:
        """Paint the labels."""
        style = self.roles.fact
        cap = type.cap_height(style)
        for row, label in enumerate(self._labels):
            y = self._field_top(row) + field_height(self.roles) / 2 + cap / 2
            type.draw(painter, style, self.pad, y, label, self.theme.sub)
        self.caption(painter, self._line_ups_top - 14, self.tr("Usual line-ups"))
