"""The second and the third moment of glue-up: mixed now; all racked, and the last look."""

from __future__ import annotations

from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPen
from PySide6.QtWidgets import QWidget

from rackboard.ui import glyphs, type
from rackboard.ui.glue_up_keys import (
    ChoiceKey,
    GreatKey,
    draw_ripple,
    dress_field,
    field_height,
)
from rackboard.ui.glue_up_page import GAP, Answer, DoubtRow, Page
from rackboard.ui.keys import RIM, TARGET, Key
from rackboard.ui.session import Session
from rackboard.ui.theme import Theme
from rackboard.ui.tile import Glyph
from rackboard.ui.time_field import TimeField
from rackboard.ui.type import Align


class MixPage(Page):
    """One key, and below it a field for who says it later.

    Signals
    -------
    mixed(), back_asked()
        The key; the key "Back".
    typed(), answered(object)
        A time was entered in `field`; a doubt about it was answered.
    """

    mixed = Signal()
    back_asked = Signal()
    typed = Signal()
    answered = Signal(object)

    def __init__(
        self, session: Session, theme: Theme, *, large: bool, parent: QWidget | None = None
    ) -> None:
        super().__init__("", theme, large=large, parent=parent)
        self.title = self.tr("Mix")
        self._lines = ("", "")
        self.key = GreatKey(self.tr("Mixed now"), theme, self.roles, self)
        self.key.show_sub(self.tr("press when the two parts meet"))
        self.key.clicked.connect(self._on_key)
        self.field = TimeField(session, self.tr("mixed at"), parent=self)
        dress_field(self.field, theme, self.roles)
        self.field.returnPressed.connect(self.typed)
        self.then = ChoiceKey(self.tr("Mixed then"), theme, self.roles, self)
        self.then.clicked.connect(self.typed)
        self.row = DoubtRow(theme, large=large, parent=self)
        self.row.answered.connect(self._on_answered)
        self.back = ChoiceKey(self.tr("Back"), theme, self.roles, self)
        self.back.clicked.connect(self.back_asked)

    def first_focus(self) -> QWidget:
        """Return the one key."""
        return self.key

    def _on_key(self) -> None:
        if self.presses is None or self.presses.meant:
            self.mixed.emit()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take a touch anywhere above the field for the key."""
        if event.position().y() < self._low and self.key.isEnabled():
            self.key.click()

    def show_batch(self, job: str, batch: str) -> None:
        """Say which batch it is about."""
        if (job, batch) != self._lines:
            self._lines = (job, batch)
            self.update()

    def say(self, text: str) -> None:
        """Say why a time can't be taken."""
        self.row.say(text)
        self._show_row()

    def doubt(self, question: str, answers: list[Answer]) -> None:
        """Ask about a doubtful time of mixing."""
        self.row.ask(question, answers)
        self._show_row()
        self.row.keys[0].setFocus()

    def reset(self) -> None:
        """Forget what was typed."""
        self.field.clear()
        self.row.clear()
        self._show_row()

    def _on_answered(self, value: object) -> None:
        self._show_row()
        self.field.setFocus()
        if value is not None:
            self.answered.emit(value)

    def _show_row(self) -> None:
        for widget in (self.field, self.then):
            widget.setVisible(not self.row.asking)
        self.place()
        self.update()

    @property
    def _low(self) -> float:
        """Where the part below the key begins."""
        return self.height() - self.pad - 2 * TARGET - GAP - (64 if self.large else 58)

    def place(self) -> None:
        """Place everything."""
        top = self.head_bottom + (62 if self.large else 46)
        low = self._low
        self.put(self.key, self.pad, top, self.room, low - (24 if self.large else 18) - top)
        high = field_height(self.roles)
        row_top = low + (28 if self.large else 22)
        wide = 130 if self.large else 92
        self.put(
            self.field, self.pad, row_top + (TARGET - high) / 2, self.room - wide - GAP, high
        )
        self.put(self.then, self.width() - self.pad - wide, row_top, wide, TARGET)
        back_top = self.height() - self.pad - TARGET
        self.put(self.back, self.width() - self.pad - wide, back_top, wide, TARGET)
        if self.row.asking:
            tall = back_top - GAP - low + RIM
            self.put(self.row, self.pad, low, self.room, tall)
        else:
            self.put(self.row, self.pad, row_top + TARGET + 6, self.room - wide - GAP,
                     self.height() - self.pad - row_top - TARGET - 6)  # fmt: skip

    def draw(self, painter: QPainter) -> None:
        """Paint whose batch it is, and the line over the field."""
        roles, theme = self.roles, self.theme
        job, batch = self._lines
        y = self.head_bottom + (14 if self.large else 11)
        style = roles.button if self.large else roles.fact_bold
        type.draw(painter, style, self.pad, y, type.fitting(style, job, self.room), theme.text)
        y += 26 if self.large else 20
        shown = type.fitting(roles.fact, batch, self.room)
        type.draw(painter, roles.fact, self.pad, y, shown, theme.sub)
        if not self.row.asking:
            base = self._low + (16 if self.large else 12)
            self.caption(painter, base, self.tr("Mixed a while ago?"))


class RackView(NamedTuple):
    """What the third moment shows.

    `used` is the share of the working life that is over; `racked` the time of "all racked",
    empty before it; `graphics` how the shafts' are to stand.
    """

    batch: str
    use_by: str
    used: float
    sub: str
    look: str
    clubs: int
    racked: str
    late: int
    graphics: str


class RackPage(Page):
    """All racked; then the last look to read, and all looked at.

    Signals
    -------
    racked(), looked()
        The two keys.
    typed()
        A time of "all racked" was entered in `field`.
    late_chosen(int)
        So many of the last clubs were glued late; 0: none after all.
    """

    racked = Signal()
    looked = Signal()
    typed = Signal()
    late_chosen = Signal(int)

    def __init__(
        self, session: Session, theme: Theme, *, large: bool, parent: QWidget | None = None
    ) -> None:
        super().__init__("", theme, large=large, parent=parent)
        self.title = self.tr("Glue and rack")
        self._view: RackView | None = None
        self.key = GreatKey(self.tr("All racked"), theme, self.roles, self)
        self.key.clicked.connect(self._on_key)
        self.field = TimeField(session, self.tr("all racked at"), parent=self)
        self.field.setPlaceholderText(self.tr("or at 16:02"))
        dress_field(self.field, theme, self.roles)
        self.field.returnPressed.connect(self.typed)
        self.late: dict[int, ChoiceKey] = {}
        for count, text in ((1, self.tr("last 1")), (2, self.tr("last 2"))):
            key = ChoiceKey(text, theme, self.roles, self, sub=self.tr("glued late?"))
            key.setProperty("late", count)
            key.clicked.connect(self._on_late)
            self.late[count] = key
        self.row = DoubtRow(theme, large=large, parent=self)
        self.look = Key(self.tr("All looked at"), theme, self.roles, self, primary=True)
        self.look.clicked.connect(self._on_look)

    def first_focus(self) -> QWidget:
        """Return the key that is next."""
        return self.look if self.look.isEnabled() else self.key

    def show_view(self, view: RackView) -> None:
        """Show how far it is."""
        if view == self._view:
            return
        self._view = view
        self.key.show_sub(view.sub)
        self.key.setEnabled(not view.racked)
        self.field.setEnabled(not view.racked)
        self.look.setEnabled(bool(view.racked))
        for count, key in self.late.items():
            key.setVisible(count < view.clubs)
            key.setChecked(count == view.late)
            key.setEnabled(not view.racked)
        self.update()

    def say(self, words: str) -> None:
        """Say why something can't be done."""
        self.row.say(words)
        self.update()

    def reset(self) -> None:
        """Forget what was typed and said."""
        self.field.clear()
        self.say("")

    def _on_key(self) -> None:
        if self.presses is None or self.presses.meant:
            self.racked.emit()

    def _on_look(self) -> None:
        if self.presses is None or self.presses.meant:
            self.looked.emit()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take a touch beside the smaller keys for the great one."""
        y, late = event.position().y(), self._late_top
        near_late = late - GAP <= y <= late + TARGET + GAP
        if self.key.isEnabled() and not near_late and y < self.foot_top - GAP:
            self.key.click()

    def _on_late(self) -> None:
        sender = self.sender()
        if sender is not None:
            count = int(sender.property("late"))
            chosen = self._view is not None and self._view.late == count
            self.late_chosen.emit(0 if chosen else count)

    @property
    def _late_top(self) -> float:
        top = self.head_bottom + (62 if self.large else 48)
        return top + (288 if self.large else 190) + GAP + (8 if self.large else 2)

    @property
    def _list_top(self) -> float:
        return self._late_top + TARGET + (20 if self.large else 12)

    def place(self) -> None:
        """Place everything."""
        top = self.head_bottom + (62 if self.large else 48)
        self.put(self.key, self.pad, top, self.room, 288 if self.large else 190)
        self.put_row((*self.late.values(), self.field), self._late_top, TARGET, (1, 1, 1.35))
        high = field_height(self.roles)
        box = self.field.geometry()
        self.field.setGeometry(box.x(), box.center().y() - high // 2, box.width(), high)
        self.put_row((self.look,), self.foot_top, self.foot_height)
        self.put(self.row, self.pad, self.foot_top - 44, self.room, 36)

    def draw(self, painter: QPainter) -> None:
        """Paint the batch, its ripple, and the last look."""
        view = self._view
        if view is None:
            return
        roles, theme, large = self.roles, self.theme, self.large
        style = roles.button if large else roles.fact_bold
        y = self.head_bottom + (14 if large else 11)
        type.draw(painter, style, self.pad, y, view.batch, theme.text)
        right = self.width() - self.pad
        type.draw(painter, style, right, y, view.use_by, theme.text, Align.RIGHT)
        high = 20.0 if large else 13.0
        area = QRectF(self.pad, y + (16 if large else 13), self.room, high)
        draw_ripple(painter, theme, area, view.used, now=view.used < 1)
        self._draw_look(painter, view)

    def _draw_look(self, painter: QPainter, view: RackView) -> None:
        roles, theme, large = self.roles, self.theme, self.large
        y = self._list_top
        painter.setPen(QPen(theme.line, 1))
        painter.drawLine(QPointF(self.pad, y), QPointF(self.width() - self.pad, y))
        size = 28.0 if large else 21.0
        y += 14 if large else 9
        glyphs.draw(painter, Glyph.EYE, self.pad, y, size, theme.text)
        style = roles.time if large else roles.head
        base = y + size / 2 + type.cap_height(style) / 2
        type.draw(painter, style, self.pad + size + 11, base, view.look, theme.text)
        note = self.tr("while still soft")
        right = self.width() - self.pad
        type.draw(painter, roles.fact, right, base, note, theme.sub, Align.RIGHT)
        y += size + (8 if large else 4)
        reserve = 50 if large or self.row.text else 8
        pitch = (self.foot_top - reserve - y) / 5
        pitch = min(pitch, 44.0 if large else 34.0)
        bold = roles.button if large else roles.fact_bold
        wide = 150 if large else 96
        for number, (word, meaning) in enumerate(
            (
                (self.tr("straight"), self.tr("sight along the shaft")),
                (self.tr("seated"), self.tr("not crept up")),
                (self.tr("ferrule"), self.tr("tight on the head")),
                (self.tr("wiped"), self.tr("no ring of glue")),
                (self.tr("graphics"), view.graphics),
            )
        ):
            middle = y + pitch * (number + 0.5)
            base = middle + type.cap_height(bold) / 2
            self._draw_bullet(painter, QPointF(self.pad + size / 2, middle), clock=number == 4)
            type.draw(painter, bold, self.pad + size + 11, base, word, theme.text)
            x = self.pad + size + 11 + wide
            type.draw(painter, roles.fact, x, base, meaning, theme.sub)
            if number:
                painter.setPen(QPen(theme.line, 1))
                line = y + pitch * number
                painter.drawLine(QPointF(self.pad + size + 11, line), QPointF(right, line))

    def _draw_bullet(self, painter: QPainter, at: QPointF, *, clock: bool) -> None:
        """Draw a dot, or for the graphics a dial that stands at twelve."""
        theme = self.theme
        painter.setPen(QPen(theme.text, 2) if clock else Qt.PenStyle.NoPen)
        painter.setBrush(Qt.BrushStyle.NoBrush if clock else theme.text)
        radius = 7.0 if clock else 4.0
        painter.drawEllipse(at, radius, radius)
        if clock:
            painter.setPen(QPen(theme.text, 3))
            painter.drawLine(at, QPointF(at.x(), at.y() - radius))
