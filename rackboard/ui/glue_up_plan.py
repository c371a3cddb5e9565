"""The box of the lay-out page: how long the batch lasts, and what has to be said first."""

from __future__ import annotations

from typing import NamedTuple

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QLineEdit, QWidget

from rackboard.ui import type
from rackboard.ui.glue_up_keys import ChoiceKey, draw_ripple, dress_field, field_height
from rackboard.ui.glue_up_page import GAP, DoubtRow
from rackboard.ui.keys import RIM, TARGET
from rackboard.ui.theme import Theme
from rackboard.ui.type import Align, Roles

_KEY_WIDTH, _SMALL_KEY_WIDTH = 152, 116


class PlanView(NamedTuple):
    """What a batch mixed now would give, in words.

    Attributes
    ----------
    use_by : str
        "16:00".
    share : float
        Of the working life, needed for gluing and the last look.
    rows : tuple of (str, str, str)
        Place, off the rack and safe to hit not before.
    missed, missed_short : str
        What is to be said of a promise that can't be kept so, and where there is no room for
        the reason; empty: nothing.
    tight : str
        The question if the clubs don't fit; empty: they do.
    split : str
        Text of the key that answers it; empty: no key.
    split_chosen : bool
        Whether two batches were chosen.
    """

    use_by: str
    share: float
    rows: tuple[tuple[str, str, str], ...]
    missed: str = ""
    missed_short: str = ""
    tight: str = ""
    split: str = ""
    split_chosen: bool = False


class AskView(NamedTuple):
    """A temperature that has to be typed first.

    `at_rack`: whether "read at the rack" can be ticked.
    """

    key: str
    question: str
    unit: str
    at_rack: bool


class PlanBox(QWidget):
    """Use by about, what is needed of it, and the times it would come to; or a question.

    Signals
    -------
    typed(str)
        A temperature was entered.
    answered(object)
        A doubt about it was answered.
    split_clicked()
        Two batches, or one after all.
    """

    typed = Signal(str)
    answered = Signal(object)
    split_clicked = Signal()

    def __init__(self, theme: Theme, *, large: bool, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        roles = Roles(large=large)
        self._plan: PlanView | None = None
        self._ask: AskView | None = None
        self.field = QLineEdit(self)
        self.field.setMaxLength(20)
        self.field.returnPressed.connect(self._on_return)
        self.at_rack = ChoiceKey(self.tr("read at\nthe rack"), theme, roles, self)
        self.at_rack.clicked.connect(self._on_at_rack)
        self.split = ChoiceKey("", theme, roles, self)
        self.split.clicked.connect(self.split_clicked)
        self.row = DoubtRow(theme, large=large, parent=self)
        self.row.answered.connect(self._on_answered)
        self.show_size(theme, large=large)

    @property
    def asks(self) -> bool:
        """Whether a temperature is asked for."""
        return self._ask is not None

    def show_size(self, theme: Theme, *, large: bool) -> None:
        """Take another scheme or size."""
        self._theme, self._large, self._roles = theme, large, Roles(large=large)
        for key in (self.at_rack, self.split):
            key.show_theme(theme, self._roles)
        dress_field(self.field, theme, self._roles)
        self.row.show_size(theme, large=large)
        self._place()
        self.update()

    def show_state(self, plan: PlanView | None, ask: AskView | None) -> None:
        """Show one of the two; a question comes before the plan."""
        if (plan, ask) == (self._plan, self._ask):
            return
        if ask is None or self._ask is None or ask.key != self._ask.key:
            self.field.clear()
            self.row.clear()
            self.at_rack.setChecked(False)
        if ask is not None:
            self.field.setAccessibleName(ask.question)
        self._plan, self._ask = plan, ask
        if plan is not None:
            self.split.show_texts(plan.split)
            self.split.setChecked(plan.split_chosen)
            self.setAccessibleName(self._spoken(plan))
        self._place()
        self.update()

    def _spoken(self, plan: PlanView) -> str:
        """Return the plan for who can't see it."""
        parts = [self.tr("use by about {time}").format(time=plan.use_by)]
        for place, off, safe in plan.rows:
            said = self.tr("{place}: off the rack not before {off}, safe to hit not before {safe}")
            if not off:
                said = self.tr("{place}: safe to hit not before {safe}")
            parts.append(said.format(place=place, off=off, safe=safe))
        return "; ".join(part for part in (*parts, plan.missed, plan.tight) if part)

    def say(self, text: str) -> None:
        """Say why something can't be taken."""
        self.row.say(text)
        self._place()
        self.update()

    def doubt(self, question: str, answers: list[tuple[str, int | None]]) -> None:
        """Ask about a doubtful temperature."""
        from rackboard.ui.glue_up_page import Answer

        self.row.ask(question, [Answer(*answer) for answer in answers])
        self._place()
        self.row.keys[0].setFocus()
        self.update()

    def _on_return(self) -> None:
        self.typed.emit(self.field.text())

    def _on_at_rack(self) -> None:
        self.at_rack.setChecked(not self.at_rack.isChecked())

    def _on_answered(self, value: object) -> None:
        self._place()
        self.field.setFocus()
        if value is not None:
            self.answered.emit(value)
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Place everything anew."""
        super().resizeEvent(event)
        self._place()

    @property
    def _pad(self) -> int:
        return 16 if self._large else 11

    @property
    def _key_width(self) -> int:
        return _KEY_WIDTH if self._large else _SMALL_KEY_WIDTH

    def _place(self) -> None:
        pad, wide = self._pad, self.width() - 2 * self._pad
        ask, doubt = self._ask, self.row.asking
        typing = ask is not None and not doubt
        self.field.setVisible(typing)
        self.at_rack.setVisible(typing and ask is not None and ask.at_rack)
        plan = self._plan if ask is None else None
        self.split.setVisible(plan is not None and bool(plan.split) and not self.row.text)
        key_x = self.width() - pad - self._key_width - RIM
        if ask is not None:
            high = field_height(self._roles)
            top = pad + (30 if self._large else 22)
            unit = 40
            self.field.setGeometry(
                pad, top + (TARGET - high) // 2,
                wide - self._key_width * ask.at_rack - unit - GAP * ask.at_rack, high,
            )  # fmt: skip
            self.at_rack.setGeometry(
                key_x, top - RIM, self._key_width + 2 * RIM, TARGET + 2 * RIM
            )
            below = pad if doubt else top + TARGET + 8
            self.row.setGeometry(pad, below, wide, self.height() - below - (0 if doubt else 4))
        else:
            high = TARGET + 2 * RIM
            bottom = self.height() - pad + RIM - high
            self.split.setGeometry(key_x, bottom, self._key_width + 2 * RIM, high)
            tall = 60 if self._large else 56
            self.row.setGeometry(pad, self.height() - tall - 4, wide, tall)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the plan, or what is asked."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self._theme.plot)
        painter.drawRoundedRect(QRectF(self.rect()), 8, 8)
        if self._ask is not None:
            self._draw_ask(painter, self._ask)
        elif self._plan is not None:
            self._draw_plan(painter, self._plan)
        painter.end()

    def _draw_ask(self, painter: QPainter, ask: AskView) -> None:
        if self.row.asking:
            return
        theme, roles, pad = self._theme, self._roles, self._pad
        y = pad + type.cap_height(roles.button) + 2.0
        type.draw(painter, roles.button, pad, y, ask.question, theme.text)
        field = self.field.geometry()
        base = field.center().y() + type.cap_height(roles.job) / 2
        type.draw(painter, roles.job, field.right() + 10, base, ask.unit, theme.sub)

    def _draw_plan(self, painter: QPainter, plan: PlanView) -> None:
        theme, roles, pad, large = self._theme, self._roles, self._pad, self._large
        right, fact = self.width() - pad, roles.fact
        y = pad + type.cap_height(roles.reading)
        type.draw(painter, fact, pad, y, self.tr("use by about"), theme.sub)
        type.draw(painter, roles.reading, right, y, plan.use_by, theme.text, Align.RIGHT)
        high = 20.0 if large else 13.0
        y += 14 if large else 9
        draw_ripple(painter, theme, QRectF(pad, y, right - pad, high), plan.share)
        y += high + (21 if large else 17)
        pitch = 25 if large else 18
        low = self._message_top(plan)
        table = pitch * len(plan.rows)
        if large and low - y >= table + 1.5 * pitch:
            note = self.tr("solid: gluing and the last look")
            type.draw(painter, fact, pad, y, note, theme.sub)
            y += 1.5 * pitch
        if low - y < table:
            pitch = 22 if large else 16
        if low - y >= pitch * len(plan.rows):  # what is asked comes before the times
            self._draw_rows(painter, plan, y, pitch)
        if not self.row.text:
            self._draw_messages(painter, plan)

    def _draw_rows(self, painter: QPainter, plan: PlanView, y: float, pitch: float) -> None:
        theme, roles, pad = self._theme, self._roles, self._pad
        fact, bold = roles.fact, roles.fact_bold
        safe = self.width() - pad
        off = safe - (150 if self._large else 104)
        head = self.tr("if glued now, not before") if self._large else self.tr("not before")
        type.draw(painter, fact, pad, y, head, theme.sub)
        type.draw(painter, fact, off, y, self.tr("off the rack"), theme.sub, Align.RIGHT)
        type.draw(painter, fact, safe, y, self.tr("safe to hit"), theme.sub, Align.RIGHT)
        for name, first, second in plan.rows:
            y += pitch
            room = off - type.width(bold, first) - pad - 8
            if not first:
                room = safe - type.width(bold, second) - pad - 8
            style = fact if type.width(fact, name) <= room else roles.fact_narrow
            type.draw(painter, style, pad, y, type.fitting(style, name, room), theme.text)
            type.draw(painter, bold, off, y, first, theme.text, Align.RIGHT)
            type.draw(painter, bold, safe, y, second, theme.text, Align.RIGHT)

    # What has to be said below the times

    def _message_style(self) -> type.Style:
        return self._roles.button if self._large else self._roles.fact_bold

    def _messages(self, plan: PlanView) -> tuple[list[str], list[str]]:
        """Return the lines of the missed promise and of the question, as wide as they may be.

        Where there is little room both stand beside the key.
        """
        style, wide = self._message_style(), self.width() - 2 * self._pad
        beside = wide - (self._key_width + 14 if plan.split else 0)
        tight = type.wrapped(style, plan.tight, beside)
        missed = type.wrapped(style, plan.missed, wide)
        if self._stacked_height(missed, tight, plan) > self._below_ripple():
            missed = type.wrapped(style, plan.missed, beside)
            if (len(missed) + len(tight) - 0.45) * self._pitch > self._below_ripple():
                missed = type.wrapped(style, plan.missed_short, beside)
        return missed, tight

    @property
    def _pitch(self) -> float:
        return 1.28 * self._message_style().px

    def _stacked_height(self, missed: list[str], tight: list[str], plan: PlanView) -> float:
        foot = max(len(tight) * self._pitch, TARGET if plan.split else 0)
        return len(missed) * self._pitch + (6 if missed else 0) + foot

    def _below_ripple(self) -> float:
        """Return how much room there is under the ripple."""
        cap = type.cap_height(self._roles.reading)
        return self.height() - 2 * self._pad - cap - (44 if self._large else 26)

    def _message_top(self, plan: PlanView) -> float:
        """Return where what is said below the times begins."""
        low = float(self.height() - self._pad)
        if self.row.text:
            return self.row.y() - 6.0
        if not plan.tight and not plan.missed:
            return low
        return low - self._stacked_height(*self._messages(plan), plan) - (9 if self._large else 6)

    def _draw_messages(self, painter: QPainter, plan: PlanView) -> None:
        missed, tight = self._messages(plan)
        style, pitch = self._message_style(), self._pitch
        cap = type.cap_height(style)
        low = self.height() - self._pad
        stacked = self._stacked_height(missed, tight, plan)
        ink = self._theme.text
        if stacked > self._below_ripple():  # one block beside the key
            y = low - (len(missed) + len(tight) - 1) * pitch
            for line in (*missed, *tight):
                type.draw(painter, style, self._pad, y, line, ink)
                y += pitch
            return
        y = low - stacked + cap
        for line in missed:
            type.draw(painter, style, self._pad, y, line, ink)
            y += pitch
        high = (len(tight) - 1) * pitch + cap
        foot = max(TARGET if plan.split else 0.0, high)
        y = low - foot / 2 - high / 2 + cap
        for line in tight:
            type.draw(painter, style, self._pad, y, line, ink)
            y += pitch
