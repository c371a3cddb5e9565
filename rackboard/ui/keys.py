"""Buttons of the board: painted keys with a ring of their own, 73 px high in near view."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from rackboard.ui import edges, type
from rackboard.ui.theme import Theme
from rackboard.ui.type import Align, Roles, Style

TARGET, APART = 73, 15
RIM = 7
"""Room round the body of a key, in which the ring is drawn: half of what lies between two."""


class TapKey(QAbstractButton):
    """A button that Enter presses as well as space."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Take Enter for a press."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and not event.isAutoRepeat():
            self.click()
            return
        super().keyPressEvent(event)


class Key(TapKey):
    """A key. Its body is the widget less `RIM` on each side; two widgets may touch.

    Parameters
    ----------
    text : str
        One or two lines.
    theme, roles
        Colours and type.
    primary : bool
        Bone with ink, for the one thing to do next.
    hint : str
        A shortcut shown in a small box ("Ctrl+N").
    style : Style, optional
        Larger type than a key usually has.
    """

    def __init__(
        self,
        text: str,
        theme: Theme,
        roles: Roles,
        parent: QWidget | None = None,
        *,
        primary: bool = False,
        hint: str = "",
        style: Style | None = None,
    ) -> None:
        super().__init__(parent)
        self._theme = theme
        self._roles = roles
        self._primary = primary
        self._hint = hint
        self._style = style
        self.on_hold = False
        self.setText(text)
        self.setAccessibleName(text.replace("\n", " "))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_theme(self, theme: Theme, roles: Roles) -> None:
        """Take another scheme or size."""
        self._theme, self._roles = theme, roles
        self.update()

    def body(self) -> QRectF:
        """Return the body, which is what a finger aims at."""
        return QRectF(self.rect()).adjusted(RIM, RIM, -RIM, -RIM)

    def sizeHint(self) -> QSize:
        """Return 73 px and the rim, as wide as the text needs."""
        style = self._style or self._roles.button
        widest = max(type.width(style, line) for line in self.text().split("\n"))
        return QSize(max(round(widest) + 24, TARGET) + 2 * RIM, TARGET + 2 * RIM)

    def minimumSizeHint(self) -> QSize:
        """Return the same."""
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint body, text and ring."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, body = self._theme, self.body()
        if self.on_hold:
            fill, text, rim = theme.ink, theme.white, theme.ink
        elif self._primary:
            fill, text, rim = theme.text, theme.bg, theme.text
        else:
            fill, text, rim = theme.surf2, theme.text, theme.edge
        if not self.isEnabled():
            fill, text, rim = theme.surf, theme.dim, theme.line
        if self.isDown():
            fill = theme.line if not (self._primary or self.on_hold) else theme.sub
        painter.setBrush(fill)
        painter.setPen(QPen(rim, 1.5))
        painter.drawRoundedRect(body.adjusted(0.75, 0.75, -0.75, -0.75), 8, 8)
        style = self._style or self._roles.button
        if self._hint:
            baseline = body.center().y() + type.cap_height(style) / 2
            type.draw(painter, style, body.left() + 24, baseline, self.text(), text)
            self._hint_box(painter, body)
        else:
            type.draw_lines(painter, style, body, self.text(), text, 1.25 * style.px)
        if self.hasFocus():
            # On the flood of a HOLD the ring takes the ink, or it would not show.
            color = theme.ink if self.on_hold else theme.ring
            edges.draw_ring(painter, color, body, RIM - 3.0)
        painter.end()

    def _hint_box(self, painter: QPainter, body: QRectF) -> None:
        style = self._roles.small
        wide = type.width(style, self._hint) + 16
        box = QRectF(body.right() - 24 - wide, body.center().y() - 13, wide, 26)
        color = self._theme.bg if self._primary else self._theme.text
        painter.setPen(QPen(color, 1.5))
        painter.drawRoundedRect(box, 5, 5)
        baseline = box.center().y() + type.cap_height(style) / 2
        type.draw(painter, style, box.center().x(), baseline, self._hint, color, Align.CENTRE)
