"""The controls of dialogs, painted flat: a choice, a tick, an option, and the focus ring."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF, QWheelEvent
from PySide6.QtWidgets import (
    QAbstractButton,
    QCheckBox,
    QComboBox,
    QDialogButtonBox,
    QRadioButton,
    QWidget,
)

from rackboard.ui import edges, glyphs, type
from rackboard.ui.theme import Theme
from rackboard.ui.tile import Glyph
from rackboard.ui.type import Face, Roles, Style

RING_ROOM = 7
"""Room that the ring of a focused control needs round it."""


def field_height(roles: Roles) -> int:
    """Return the height of a field; targets in dialogs are at least 24 px."""
    return 44 if roles.large else 34


def field_style(roles: Roles) -> Style:
    """Return the type inside a field."""
    return Style(Face.MEDIUM, 19 if roles.large else 16)


class FocusRing(QWidget):
    """Draws the ring round the focused control, as a sibling of it.

    It is a child of the control's own parent, so that it scrolls and hides with it.
    """

    def __init__(self, theme: Theme) -> None:
        super().__init__()
        self._theme = theme
        self._control: QWidget | None = None
        self._box: QWidget | None = None
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)

    def surround(self, control: QWidget) -> None:
        """Move to another control."""
        self.leave()
        self._control = control
        control.installEventFilter(self)
        parent = control.parentWidget()
        if isinstance(parent, QDialogButtonBox):  # too tight: the ring would be cut off
            self._box = parent
            parent.installEventFilter(self)
            parent = parent.parentWidget()
        self.setParent(parent)
        self._follow()
        self.show()
        self.raise_()

    def leave(self) -> None:
        """Surround nothing."""
        if self._control is not None:
            self._control.removeEventFilter(self)
            self._control = None
        if self._box is not None:
            self._box.removeEventFilter(self)
            self._box = None
        self.hide()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Follow the control when it moves."""
        if watched in (self._control, self._box) and event.type() in (
            QEvent.Type.Move, QEvent.Type.Resize, QEvent.Type.Show,
        ):  # fmt: skip
            self._follow()
        return False

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the ring."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        room = RING_ROOM
        body = QRectF(self.rect()).adjusted(room, room, -room, -room)
        edges.draw_ring(painter, self._theme.ring, body, room - 4.0)
        painter.end()

    def _follow(self) -> None:
        if self._control is None:
            return
        area = self._control.geometry()
        if self._box is not None:
            area.translate(self._box.pos())
        self.setGeometry(area.adjusted(-RING_ROOM, -RING_ROOM, RING_ROOM, RING_ROOM))


class Choice(QComboBox):
    """One of several, in a field of the form's own look."""

    def __init__(self, theme: Theme, roles: Roles, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._theme, self._roles = theme, roles
        self.setFont(type.font(field_style(roles)))
        self.setFixedHeight(field_height(roles))
        # Not AdjustToContents: a box in a form was at times painted before its layout was done.

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        self._theme = theme
        self.update()

    def sizeHint(self) -> QSize:
        """Return room for the longest entry and the arrow."""
        style = field_style(self._roles)
        texts = [self.itemText(index) for index in range(self.count())] or [""]
        return QSize(round(max(type.width(style, text) for text in texts)) + 54,
                     field_height(self._roles))  # fmt: skip

    def minimumSizeHint(self) -> QSize:
        """Return a little; the text is elided."""
        return QSize(90, field_height(self._roles))

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Leave the wheel to the form: a choice turned by accident is not noticed."""
        event.ignore()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint field, text and arrow."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, style = self._theme, field_style(self._roles)
        body = QRectF(self.rect()).adjusted(0.75, 0.75, -0.75, -0.75)
        painter.setBrush(theme.surf)
        empty = self.currentIndex() < 0
        asks = empty and self.isEnabled()
        rim = theme.text if asks else theme.edge if self.isEnabled() else theme.line
        painter.setPen(QPen(rim, 2.5 if asks else 1.5))
        painter.drawRoundedRect(body, 6, 6)
        middle = body.center().y()
        baseline = middle + type.cap_height(style) / 2
        text = self.placeholderText() if empty else self.currentText()
        color = theme.sub if empty or not self.isEnabled() else theme.text
        shown = type.fitting(style, text, body.width() - 48)
        type.draw(painter, style, 13, baseline, shown, color)
        x = body.right() - 20
        pen = QPen(theme.sub, 2)
        pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
        painter.setPen(pen)
        ends = (QPointF(x - 5, middle - 3), QPointF(x, middle + 3), QPointF(x + 5, middle - 3))
        painter.drawPolyline(QPolygonF(ends))
        painter.end()


class Tick(QCheckBox):
    """A box with a tick."""

    def __init__(
        self, text: str, theme: Theme, roles: Roles, parent: QWidget | None = None
    ) -> None:
        super().__init__(text, parent)
        self._theme, self._roles = theme, roles

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        self._theme = theme
        self.update()

    def sizeHint(self) -> QSize:
        """Return room for box and text."""
        return _mark_hint(self._roles, self.text())

    def minimumSizeHint(self) -> QSize:
        """Return the same."""
        return self.sizeHint()

    def hitButton(self, pos: object) -> bool:  # noqa: N802
        """Take a press anywhere on box and text."""
        del pos
        return True

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint box, tick and text."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, on = self._theme, self.isChecked()
        size = _mark_size(self._roles)
        box = QRectF(1, self.height() / 2 - size / 2, size, size)
        painter.setBrush(theme.text if on else theme.surf)
        painter.setPen(QPen(theme.text if on else theme.edge, 1.5))
        painter.drawRoundedRect(box, 5, 5)
        if on:
            glyphs.draw(painter, Glyph.TICK, box.x() + 2, box.y() + 2, size - 4, theme.bg)
        _mark_text(painter, self, theme, self._roles)
        painter.end()


class Option(QRadioButton):
    """One of several that exclude each other, all in sight."""

    def __init__(
        self, text: str, theme: Theme, roles: Roles, parent: QWidget | None = None
    ) -> None:
        super().__init__(text, parent)
        self._theme, self._roles = theme, roles

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        self._theme = theme
        self.update()

    def sizeHint(self) -> QSize:
        """Return room for ring and text."""
        return _mark_hint(self._roles, self.text())

    def minimumSizeHint(self) -> QSize:
        """Return the same."""
        return self.sizeHint()

    def hitButton(self, pos: object) -> bool:  # noqa: N802
        """Take a press anywhere on ring and text."""
        del pos
        return True

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint ring, dot and text."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, size = self._theme, _mark_size(self._roles)
        ring = QRectF(1, self.height() / 2 - size / 2, size, size)
        painter.setBrush(theme.surf)
        painter.setPen(QPen(theme.text if self.isChecked() else theme.edge, 1.5))
        painter.drawEllipse(ring)
        if self.isChecked():
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(theme.text)
            painter.drawEllipse(ring.adjusted(6, 6, -6, -6))
        _mark_text(painter, self, theme, self._roles)
        painter.end()


def _mark_size(roles: Roles) -> float:
    return 24.0 if roles.large else 20.0


def _mark_hint(roles: Roles, text: str) -> QSize:
    wide = type.width(roles.fact, text)
    return QSize(round(_mark_size(roles) + 12 + wide + 4), 36 if roles.large else 30)


def _mark_text(painter: QPainter, control: QAbstractButton, theme: Theme, roles: Roles) -> None:
    style = roles.fact
    color = theme.text if control.isEnabled() else theme.dim
    baseline = control.height() / 2 + type.cap_height(style) / 2
    type.draw(painter, style, _mark_size(roles) + 12, baseline, control.text(), color)
