"""The page that stops glue-up while parts are still warm from pulling the old shaft."""

from __future__ import annotations

from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QPainter, QPen
from PySide6.QtWidgets import QWidget

from rackboard.ui import type
from rackboard.ui.glue_up_keys import great_style
from rackboard.ui.glue_up_page import Page
from rackboard.ui.keys import Key
from rackboard.ui.theme import Theme


class StopPage(Page):
    """Why, what to do, and one key when it is done.

    Signals
    -------
    cooled(), left()
        The parts are as warm as the air; lay nothing out now.
    """

    cooled = Signal()
    left = Signal()

    def __init__(self, theme: Theme, *, large: bool, parent: QWidget | None = None) -> None:
        super().__init__("", theme, large=large, parent=parent)
        self.title = self.tr("Glue-up")
        self.key = Key(self.tr("Cool to the hand"), theme, self.roles, self, primary=True)
        self.key.clicked.connect(self.cooled)
        self.cancel = Key(self.tr("Not now"), theme, self.roles, self)
        self.cancel.clicked.connect(self.left)
        why, steps = self._texts()
        self.setAccessibleName(self.tr("Stop: the parts are still warm"))
        self.key.setAccessibleDescription(" ".join((why, *(step for _, step in steps))))

    def _texts(self) -> tuple[str, tuple[tuple[str, str], ...]]:
        return self.tr(
            "The parts are still warm from pulling the old shaft. "
            "Warm parts use up the glue in minutes: it may set before the club is seated."
        ), (
            (self.tr("mix nothing"), self.tr("the working life runs from mixing")),
            (self.tr("set it down"), self.tr("head and shaft apart, on the cool bench")),
            (self.tr("clean and dry"), self.tr("no old epoxy, no oil, no solvent left")),
            (self.tr("then feel"), self.tr("hosel as cool as the bench")),
        )

    def first_focus(self) -> QWidget:
        """Return the key that goes on."""
        return self.key

    def place(self) -> None:
        """Place the two keys."""
        self.put_row((self.key, self.cancel), self.foot_top, self.foot_height, (2.4, 1))

    def draw(self, painter: QPainter) -> None:
        """Paint the great word, why, and what to do."""
        roles, theme, large = self.roles, self.theme, self.large
        great = great_style(roles)
        y = self.head_bottom + (24 if large else 16) + type.cap_height(great)
        type.draw(painter, great, self.pad, y, self.tr("Stop"), theme.text)
        why, steps = self._texts()
        y += 48 if large else 36
        style = roles.head if large else roles.button
        for line in type.wrapped(style, why, self.room):
            type.draw(painter, style, self.pad, y, line, theme.text)
            y += 1.45 * style.px
        y += 8 if large else 4
        pitch = 62.0 if large else 52.0
        right = float(self.width() - self.pad)
        bold = roles.button
        for word, meaning in steps:
            painter.setPen(QPen(theme.line, 1))
            painter.drawLine(QPointF(self.pad, y), QPointF(right, y))
            middle = y + pitch / 2
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(theme.text)
            painter.drawEllipse(QPointF(self.pad + 10, middle), 4, 4)
            x = self.pad + 34.0
            up = 4 if large else 3
            type.draw(painter, bold, x, middle - up, word, theme.text)
            below = middle + type.cap_height(roles.fact) + (9 if large else 7)
            shown = type.fitting(roles.fact, meaning, right - x)
            type.draw(painter, roles.fact, x, below, shown, theme.sub)
            y += pitch
