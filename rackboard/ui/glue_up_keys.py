"""The keys of glue-up: choices, clubs on their slots, and the one key that fills the panel."""

from __future__ import annotations

from math import pi, sin

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QLineEdit, QWidget

from rackboard.ui import edges, type
from rackboard.ui.keys import RIM, TARGET, Key
from rackboard.ui.theme import Theme
from rackboard.ui.type import Align, Face, Roles, Style

STROKE = 2.6
_SLIM_PX = 50
_TEXT_ROOM = 10


def great_style(roles: Roles) -> Style:
    """Return the type of the one key."""
    return Style(Face.BOLD, 76 if roles.large else 54)


def dress_field(field: QLineEdit, theme: Theme, roles: Roles) -> None:
    """Give a field of the panel its look; the ring is its border."""
    field.setFont(type.font(roles.job if roles.large else roles.head))
    text, edge = theme.text.name(), theme.edge.name()
    field.setStyleSheet(
        f"QLineEdit{{background:{theme.surf2.name()};color:{text};border:1.5px solid {edge};"
        f"border-radius:8px;padding:0 12px;selection-background-color:{text};"
        f"selection-color:{theme.bg.name()};placeholder-text-color:{theme.dim.name()}}}"
        f"QLineEdit:focus{{border:3px solid {theme.ring.name()};padding:0 10.5px}}"
        f"QLineEdit:disabled{{color:{theme.sub.name()};border-color:{theme.line.name()}}}"
    )


def field_height(roles: Roles) -> int:
    """Return the height of a field: the ask field of the design."""
    return 52 if roles.large else 44


class ChoiceKey(Key):
    """One of several; the chosen one has a strong rim and a marked corner.

    Parameters
    ----------
    text, sub : str
        Two lines; the second is quieter.
    """

    def __init__(
        self, text: str, theme: Theme, roles: Roles, parent: QWidget | None = None, *, sub: str = ""
    ) -> None:
        super().__init__(text, theme, roles, parent)
        self.setCheckable(True)
        self._sub = ""
        self.show_texts(text, sub)

    def show_texts(self, text: str, sub: str = "") -> None:
        """Show other lines."""
        if (text, sub) == (self.text(), self._sub):
            return
        self.setText(text)
        self._sub = sub
        self.setAccessibleName(f"{text} {sub}".replace("\n", " ").strip())
        self.update()

    def nextCheckState(self) -> None:
        """Leave it to the panel which one is chosen."""

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint body, two lines, corner and ring."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, body = self._theme, self.body()
        chosen, on = self.isChecked(), self.isEnabled()
        painter.setBrush(theme.line if self.isDown() else theme.surf2 if on else theme.surf)
        rim = theme.text if chosen else theme.edge if on else theme.line
        wide = 2.5 if chosen else 1.5
        painter.setPen(QPen(rim, wide))
        inner = body.adjusted(wide / 2, wide / 2, -wide / 2, -wide / 2)
        painter.drawRoundedRect(inner, 8, 8)
        if chosen:
            clip = QPainterPath()
            clip.addRoundedRect(body, 8, 8)
            painter.save()
            painter.setClipPath(clip)
            right, top = body.right(), body.top()
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(theme.text)
            painter.drawPolygon(
                QPolygonF(
                    [QPointF(right - 22, top), QPointF(right, top), QPointF(right, top + 22)]
                )
            )
            painter.restore()
        self._draw_lines(painter, body, theme.text if on else theme.dim)
        if self.hasFocus():
            edges.draw_ring(painter, theme.ring, body, RIM - 3.0)
        painter.end()

    def _draw_lines(self, painter: QPainter, body: QRectF, color: QColor) -> None:
        roles, room = self._roles, body.width() - _TEXT_ROOM
        bold, plain = roles.button, roles.fact
        head = self.text().split("\n") if self.text() else []
        tail = self._sub.split("\n") if self._sub else []
        if any(type.width(bold, line) > room for line in head):
            bold = roles.fact_bold
        lines = [(bold, line, color) for line in head]
        sub = self._theme.sub if self.isEnabled() else self._theme.dim
        lines += [(plain, line, sub) for line in tail]
        pitch = 1.22 * roles.button.px
        cap = type.cap_height(bold)
        baseline = body.center().y() - ((len(lines) - 1) * pitch + cap) / 2 + cap
        for style, line, ink in lines:
            shown = type.fitting(style, line, room)
            type.draw(painter, style, body.center().x(), baseline, shown, ink, Align.CENTRE)
            baseline += pitch


class ClubKey(Key):
    """A club with its slot, dashed: laid out soon. A low one shows one line."""

    def __init__(self, theme: Theme, roles: Roles, parent: QWidget | None = None) -> None:
        super().__init__("", theme, roles, parent)
        self._slot = ""
        self.marked = False

    def show_club(self, name: str, slot: str, *, marked: bool) -> None:
        """Show a club; `marked`: the next slot that is tapped becomes this club's."""
        if (name, slot, marked) != (self.text(), self._slot, self.marked):
            self.setText(name)
            self._slot = slot
            self.marked = marked
            where = self.tr("slot {slot}").format(slot=slot) if slot else self.tr("no slot free")
            self.setAccessibleName(f"{name}, {where}")
            self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the dashed tile."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, roles, body = self._theme, self._roles, self.body()
        painter.setBrush(theme.line if self.isDown() else theme.surf2)
        pen = QPen(theme.text if self.marked else theme.sub, 2.5 if self.marked else 1.6)
        pen.setDashPattern([5, 4])
        painter.setPen(pen)
        painter.drawRoundedRect(body.adjusted(1.25, 1.25, -1.25, -1.25), 7, 7)
        x, room = body.left() + 9, body.width() - 14
        slot = self._slot or self.tr("no slot")
        style, sub = roles.fact_bold, roles.fact
        middle, cap = body.center().y(), type.cap_height(style)
        if body.height() < _SLIM_PX:
            x, room = body.left() + 6, body.width() - 11
            if type.width(style, self.text()) + 6 + type.width(sub, slot) > room:
                style, sub = roles.caption_narrow, roles.fact_narrow
            left = room - 4 - type.width(sub, slot)  # the slot is never cut
            shown = type.fitting(style, self.text(), left)
            type.draw(painter, style, x, middle + cap / 2, shown, theme.text)
            right = body.right() - 5
            type.draw(painter, sub, right, middle + cap / 2, slot, theme.sub, Align.RIGHT)
        else:
            if type.width(style, self.text()) > room:
                style = roles.caption_narrow
            shown = type.fitting(style, self.text(), room)
            type.draw(painter, style, x, middle - 5, shown, theme.text)
            type.draw(painter, sub, x, middle + cap + 7, slot, theme.sub)
        if self.hasFocus():
            edges.draw_ring(painter, theme.ring, body, RIM - 3.0)
        painter.end()


class GreatKey(Key):
    """The one key, for a gloved finger, an elbow or the space bar.

    Parameters
    ----------
    text : str
        What is said by pressing it.
    """

    def __init__(
        self, text: str, theme: Theme, roles: Roles, parent: QWidget | None = None
    ) -> None:
        super().__init__(text, theme, roles, parent, primary=True)
        self._sub = ""

    def show_sub(self, sub: str) -> None:
        """Show a line under the word."""
        self._sub = sub
        self.setAccessibleDescription(sub)
        self.update()

    def sizeHint(self) -> QSize:
        """Return a good part of the panel."""
        return QSize(200, 3 * TARGET)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint body, word, line and the hint of the space bar."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, roles, body = self._theme, self._roles, self.body()
        on = self.isEnabled()
        painter.setBrush(theme.sub if self.isDown() else theme.text if on else theme.surf)
        painter.setPen(QPen(theme.text if on else theme.line, 1.5))
        painter.drawRoundedRect(body.adjusted(0.75, 0.75, -0.75, -0.75), 10, 10)
        ink = theme.bg if on else theme.dim
        style, small = great_style(roles), roles.button
        x, cap = body.center().x(), type.cap_height(style)
        hint_h, gap = (34 if roles.large else 28), (26 if roles.large else 20)
        baseline = body.center().y() + cap / 2 - gap
        type.draw(painter, style, x, baseline, self.text(), ink, Align.CENTRE)
        below = baseline + gap + type.cap_height(small)
        shown = type.fitting(small, self._sub, body.width() - 24)
        type.draw(painter, small, x, below, shown, ink, Align.CENTRE)
        if on and self.hasFocus():
            box = QRectF(x - 75, body.bottom() - hint_h - 22, 150, hint_h)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(ink, 1.5))
            painter.drawRoundedRect(box, 6, 6)
            base = box.center().y() + type.cap_height(roles.fact) / 2
            type.draw(painter, roles.fact, x, base, self.tr("space"), ink, Align.CENTRE)
        if self.hasFocus():
            edges.draw_ring(painter, theme.ring, body, RIM - 3.0)
        painter.end()


def draw_ripple(
    painter: QPainter, theme: Theme, area: QRectF, solid: float, *, now: bool = False
) -> None:
    """Draw a working life as the ripple of wet glue.

    Parameters
    ----------
    solid : float
        Share of it that is drawn strong, 0..1: used, or needed.
    now : bool
        Whether a bar stands where the strong part ends.
    """
    high, wide = area.height(), area.width()
    wave = QPainterPath(QPointF(area.left(), area.center().y()))
    steps = max(int(wide / 1.1), 8)
    for step in range(1, steps + 1):
        x = wide * step / steps
        y = (high / 2 - STROKE / 2) * sin(2 * pi * x / (0.85 * high))
        wave.lineTo(area.left() + x, area.center().y() - y)
    cut = area.left() + wide * min(max(solid, 0.0), 1.0)
    for left, right, pen in (
        (area.left() - 2, cut, QPen(theme.text, STROKE)),
        (cut, area.right() + 2, QPen(theme.dim, STROKE * 0.6)),
    ):
        painter.save()
        gap = 3.0 if now and left == cut else 0.0
        painter.setClipRect(QRectF(left + gap, area.top() - 4, right - left - gap, high + 8))
        painter.strokePath(wave, pen)
        painter.restore()
    if now:
        painter.fillRect(QRectF(cut - 1.5, area.top() - high / 2, 3, high * 1.75), theme.text)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(theme.text)
        top = area.top() - high / 2
        painter.drawPolygon(
            QPolygonF([QPointF(cut - 5, top), QPointF(cut + 5, top), QPointF(cut, top + 6)])
        )
