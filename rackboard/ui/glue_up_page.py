"""What the pages of glue-up share: the ground, the head, and the row that asks about a doubt."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QLabel, QLineEdit, QWidget

from rackboard.core.errors import RackboardError
from rackboard.ui import type
from rackboard.ui.glue_up_keys import ChoiceKey, dress_field, field_height
from rackboard.ui.glue_up_press import Presses
from rackboard.ui.keys import RIM, TARGET, Key
from rackboard.ui.language import translated
from rackboard.ui.theme import Theme
from rackboard.ui.type import Align, Roles

GAP = 15


def error_text(error: RackboardError) -> str:
    """Return what an error says, in the language spoken."""
    parts = (translated(error.message), translated(error.remedy))
    return " ".join(part for part in parts if part)


class Page(QWidget):
    """One page of the right column: painted ground and head, keys and fields placed by hand.

    Parameters
    ----------
    title : str
        The head.
    """

    def __init__(
        self, title: str, theme: Theme, *, large: bool, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.theme = theme
        self.roles = Roles(large=large)
        self.large = large
        self.title = title
        self.clock = ""
        self.presses: Presses | None = None
        self.setAccessibleName(title)

    # Size and scheme

    @property
    def pad(self) -> int:
        """Room between the ground's edge and what stands on it."""
        return 22 if self.large else 14

    @property
    def room(self) -> int:
        """Width between the paddings."""
        return self.width() - 2 * self.pad

    @property
    def head_bottom(self) -> int:
        """Where the content may begin."""
        return 62 if self.large else 42

    @property
    def foot_height(self) -> int:
        """Height of the lowest row of keys."""
        return 84 if self.large else TARGET

    @property
    def foot_top(self) -> int:
        """Where the lowest row of keys begins."""
        return self.height() - self.pad - self.foot_height

    def show_size(self, theme: Theme, *, large: bool) -> None:
        """Take another scheme or size."""
        self.theme, self.large, self.roles = theme, large, Roles(large=large)
        for key in self.findChildren(Key):
            key.show_theme(theme, self.roles)
        for field in self.findChildren(QLineEdit):
            dress_field(field, theme, self.roles)
        for row in self.findChildren(DoubtRow):
            row.show_size(theme, large=large)
        self.place()
        self.update()

    def place(self) -> None:
        """Place keys and fields; a page says how."""

    def first_focus(self) -> QWidget:
        """Return the widget that takes the ring when the page comes up."""
        return self

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Place everything anew."""
        super().resizeEvent(event)
        self.place()

    def put(self, widget: QWidget, x: float, y: float, width: float, height: float) -> None:
        """Place a widget; a key is given by its body, its ring stands outside."""
        rim = RIM if isinstance(widget, Key) else 0
        widget.setGeometry(
            round(x) - rim, round(y) - rim, round(width) + 2 * rim, round(height) + 2 * rim
        )

    def put_row(
        self, widgets: Sequence[QWidget], y: float, height: float, shares: Sequence[float] = ()
    ) -> None:
        """Place widgets side by side over the whole width, by their shares of it."""
        parts = shares or [1.0] * len(widgets)
        free = self.room - GAP * (len(widgets) - 1)
        x = float(self.pad)
        for widget, part in zip(widgets, parts, strict=True):
            wide = free * part / sum(parts)
            self.put(widget, x, y, wide, height)
            x += wide + GAP

    # Painting

    def show_clock(self, clock: str) -> None:
        """Show the day and the time at the right of the head."""
        if clock != self.clock:
            self.clock = clock
            self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the ground, the head, and what the page adds."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, roles = self.theme, self.roles
        painter.setPen(QPen(theme.surf if theme.dark else theme.line, 1))
        painter.setBrush(theme.surf)
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5), 10, 10)
        base = self.pad + type.cap_height(roles.inspector_title) + 2
        type.draw(painter, roles.inspector_title, self.pad, base, self.title, theme.text)
        right = self.width() - self.pad
        type.draw(painter, roles.job, right, base, self.clock, theme.sub, Align.RIGHT)
        self.draw(painter)
        painter.end()
        if self.presses is not None:
            self.presses.seen()

    def draw(self, painter: QPainter) -> None:
        """Paint what the page adds."""

    def caption(self, painter: QPainter, y: float, text: str, right: str = "") -> None:
        """Paint a line over a group, its baseline at y."""
        type.draw(painter, self.roles.fact, self.pad, y, text, self.theme.sub)
        room = self.room - type.width(self.roles.fact, text) - 12
        shown = type.fitting(self.roles.fact, right, room)
        at = self.width() - self.pad
        type.draw(painter, self.roles.fact, at, y, shown, self.theme.sub, Align.RIGHT)


class Answer(NamedTuple):
    """A key that answers a doubt."""

    text: str
    value: int | None


class DoubtRow(QWidget):
    """Says an error in words, or asks about a doubtful value with two keys to answer.

    Signals
    -------
    answered(object)
        The value of the key that was pressed; None: let me correct it.
    """

    answered = Signal(object)

    def __init__(self, theme: Theme, *, large: bool, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        roles = Roles(large=large)
        self.message = QLabel(self)
        self.message.setWordWrap(True)
        self.message.setTextFormat(Qt.TextFormat.PlainText)
        self.message.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        self.keys = (ChoiceKey("", theme, roles, self), ChoiceKey("", theme, roles, self))
        self._answers: tuple[Answer, ...] = ()
        for number, key in enumerate(self.keys):
            key.setProperty("answer", number)
            key.clicked.connect(self._on_clicked)
        self.show_size(theme, large=large)
        self.clear()

    @property
    def asking(self) -> bool:
        """Whether a question is open."""
        return bool(self._answers)

    @property
    def text(self) -> str:
        """What is said or asked."""
        return self.message.text()

    def show_size(self, theme: Theme, *, large: bool) -> None:
        """Take another scheme or size."""
        self._large = large
        roles = Roles(large=large)
        for key in self.keys:
            key.show_theme(theme, roles)
        self.message.setFont(type.font(roles.fact_bold))
        self.message.setStyleSheet(f"color:{theme.text.name()};background:transparent")
        self._place()

    def say(self, text: str) -> None:
        """Say an error, or nothing."""
        self._answers = ()
        self._show(text)

    def ask(self, question: str, answers: Sequence[Answer]) -> None:
        """Ask; one or two answers."""
        self._answers = tuple(answers)
        self._show(question)
        self.keys[0].setFocus()

    def clear(self) -> None:
        """Say and ask nothing."""
        self.say("")

    def _show(self, text: str) -> None:
        self.message.setText(text)
        self.message.setAccessibleName(text)
        for number, key in enumerate(self.keys):
            there = number < len(self._answers)
            key.setVisible(there)
            if there:
                key.show_texts(self._answers[number].text)
        self._place()

    def _on_clicked(self) -> None:
        sender = self.sender()
        assert sender is not None
        answer = self._answers[int(sender.property("answer"))]
        self.clear()
        self.answered.emit(answer.value)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Place text and keys anew."""
        super().resizeEvent(event)
        self._place()

    def _place(self) -> None:
        count = len(self._answers)
        high = self.height() - (TARGET + 2 * RIM if count else 0)
        self.message.setGeometry(0, 0, self.width(), max(high, 18))
        if count:
            wide = (self.width() - GAP * (count - 1)) / count
            for number, key in enumerate(self.keys[:count]):
                key.setGeometry(
                    round(number * (wide + GAP)) - RIM * (number > 0), high,
                    round(wide) + RIM * (1 + (count > 1 and number > 0)), TARGET + 2 * RIM,
                )  # fmt: skip


__all__ = ("GAP", "Answer", "DoubtRow", "Page", "error_text", "field_height")
