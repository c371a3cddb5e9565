"""How the glue goes: the curve, the motif along its time, the temperature under it.

Everything is painted with a QPainter into a rectangle, so the same code serves the window and
paper. The shading runs from the expected line to the late side only.
"""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen, QPolygonF

from rackboard.ui import edges, motif, type
from rackboard.ui.inspector_view import CurveView, Mark
from rackboard.ui.theme import Theme
from rackboard.ui.type import Align, Roles

_NOW_NEAR_NAMES = 0.75  # so far right the line of the present would cross the names
_SHADES = 4
_TAG_W, _TAG_H = 50.0, 22.0


def draw_dumbbell(
    painter: QPainter, theme: Theme, hollow: QPointF, solid: QPointF, bottom: float
) -> None:
    """Draw "probably" and "not before" of one permission, and drop the latter to `bottom`."""
    dashes = QPen(theme.text, 1.4)
    dashes.setDashPattern([3, 3])
    painter.setPen(dashes)
    painter.drawLine(QPointF(solid.x(), solid.y() + 6), QPointF(solid.x(), bottom))
    painter.setPen(QPen(theme.text, 2.4))
    painter.drawLine(hollow, solid)
    painter.setBrush(theme.surf)
    painter.setPen(QPen(theme.text, 2.2))
    painter.drawEllipse(hollow, 4.2, 4.2)
    painter.setBrush(theme.text)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.drawEllipse(solid, 5.2, 5.2)


class CurvePainter:
    """Paints a `CurveView`.

    Parameters
    ----------
    theme, roles
        Colours and type; on paper `theme.paper_theme()`.
    times : bool
        Whether the two rows of times are printed under the motif.
    strip : float, optional
        The height of the temperature strip [px]; by default as the board has room for.
    """

    def __init__(
        self, theme: Theme, roles: Roles, *, times: bool = True, strip: float = 0.0
    ) -> None:
        self.theme = theme
        self.roles = roles
        self.times = times
        large = roles.large
        self._motif_h = 22.0 if large else 15.0
        self._row = 18.5 if large else 16.5
        self._strip_h = strip or (42.0 if large else 36.0)
        self._legend = 20.0 if large else 17.0

    def below(self) -> float:
        """Return the height of all that stands under the plot."""
        rows = 2 * self._row + 6 if self.times else 6
        return self._motif_h + 11 + rows + self._strip_h + self._legend

    def paint(self, painter: QPainter, rect: QRectF, view: CurveView) -> None:
        """Paint curve, motif, times, temperature and legend into the rectangle."""
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        tag = _TAG_H if view.now is not None else 4
        plot = QRectF(rect.x(), rect.y() + tag, rect.width(), rect.height() - tag - self.below())
        self._levels(painter, plot, view)
        self._shade(painter, plot, view)
        self._line(painter, plot, view)
        centre = plot.bottom() + 4 + self._motif_h / 2
        self._drops(painter, plot, view, centre - self._motif_h / 2 - 2)
        self._level_names(painter, plot, view)
        stages = motif.Stages(view.wet_until, view.still_at, view.hard_at)
        motif.draw(
            painter,
            motif.MotifInks(self.theme.text, self.theme.dim, self.theme.sub),
            rect.x(),
            centre,
            rect.width(),
            self._motif_h,
            1.0 if view.now is None else view.now,
            stages=stages,
            now_bar=False,
        )
        y = centre + self._motif_h / 2 + 6
        if self.times:
            self._times(painter, rect, view.marks, y)
            y += 2 * self._row + 4
        strip = QRectF(rect.x(), y, rect.width(), self._strip_h)
        self._temperature(painter, strip, view)
        self._day_names(painter, strip, view)
        self._legends(painter, strip, view)
        if view.now is not None:
            self._now(painter, rect, view, centre + self._motif_h / 2 + 4, strip)
        painter.restore()

    def _levels(self, painter: QPainter, plot: QRectF, view: CurveView) -> None:
        for level in view.levels:
            y = _at(plot, 0, level.y).y()
            painter.fillRect(QRectF(plot.x(), y - 0.5, plot.width(), 1), self.theme.line)

    def _level_names(self, painter: QPainter, plot: QRectF, view: CurveView) -> None:
        """Name the levels, over whatever drops past them."""
        style = self.roles.fact
        for level in view.levels:
            y = _at(plot, 0, level.y).y()
            drop = type.cap_height(style) + (9 if self.roles.large else 7)
            right = plot.right() - (16 if self.roles.large else 14)
            if view.now is not None and view.now > _NOW_NEAR_NAMES:
                right = plot.x() + view.now * plot.width() - 10
            wide = type.width(style, level.name)
            for mark in view.marks:  # what drops from a solid dot would run through the name
                drops_at = plot.x() + mark.not_before * plot.width()
                if right - wide - 8 < drops_at < right + 8:
                    right = drops_at - 10
            clear = QRectF(right - wide - 3, y + 6.5, wide + 6, drop - 2.5)
            painter.fillRect(clear, self.theme.surf)
            type.draw(painter, style, right, y + drop, level.name, self.theme.sub, Align.RIGHT)

    def _shade(self, painter: QPainter, plot: QRectF, view: CurveView) -> None:
        if not view.points:
            return
        upper = [_at(plot, point.x, point.expected) for point in view.points]
        painter.setPen(Qt.PenStyle.NoPen)
        shade = QColor(self.theme.text)
        shade.setAlphaF(0.15)
        for step in range(1, _SHADES + 1):
            part = step / _SHADES
            lower = [
                _at(plot, point.x, point.expected + (point.late - point.expected) * part)
                for point in reversed(view.points)
            ]
            painter.setBrush(shade)
            painter.drawPolygon(QPolygonF([*upper, *lower]))

    def _line(self, painter: QPainter, plot: QRectF, view: CurveView) -> None:
        now = 1.0 if view.now is None else view.now
        points = [_at(plot, point.x, point.expected) for point in view.points]
        split = plot.x() + now * plot.width()
        past = [point for point in points if point.x() <= split]
        ahead = [point for point in points if point.x() > split]
        if past and ahead:
            a, b = past[-1], ahead[0]
            share = (split - a.x()) / (b.x() - a.x())
            joint = QPointF(split, a.y() + share * (b.y() - a.y()))
            past.append(joint)
            ahead.insert(0, joint)
        _stroke(painter, past, QPen(self.theme.text, 3.2))
        _stroke(painter, ahead, QPen(self.theme.text, 1.5))

    def _drops(self, painter: QPainter, plot: QRectF, view: CurveView, bottom: float) -> None:
        theme = self.theme
        for mark in view.marks:
            hollow, solid = _at(plot, mark.probably, mark.y), _at(plot, mark.not_before, mark.y)
            draw_dumbbell(painter, theme, hollow, solid, bottom)

    def _times(
        self, painter: QPainter, rect: QRectF, marks: tuple[Mark, ...], top: float
    ) -> None:
        roles, theme = self.roles, self.theme
        cap = type.cap_height(roles.fact)
        rows = (
            (roles.fact, theme.sub, True,
             [(m.probably, m.probably_text) for m in marks]),
            (roles.fact_bold, theme.text, False,
             [(m.not_before, m.not_before_text) for m in marks]),
        )  # fmt: skip
        for number, (style, color, hollow, texts) in enumerate(rows):
            baseline = top + number * self._row + cap + 3
            widths = [type.width(style, text) + 13 for _, text in texts]
            places = row_places([rect.x() + u * rect.width() for u, _ in texts], widths, rect)
            for (begin, leftward), wide, (_, text) in zip(places, widths, texts, strict=True):
                dot = QPointF(begin + wide - 4 if leftward else begin + 4, baseline - cap / 2)
                type.draw(painter, style, begin if leftward else begin + 13, baseline, text, color)
                painter.setBrush(Qt.BrushStyle.NoBrush if hollow else color)
                painter.setPen(QPen(color, 1.6))
                painter.drawEllipse(dot, 3.2, 3.2)

    def _temperature(self, painter: QPainter, strip: QRectF, view: CurveView) -> None:
        theme = self.theme
        painter.fillRect(strip, theme.plot)
        for day in view.days:
            x = strip.x() + day.x * strip.width()
            painter.fillRect(QRectF(x, strip.y(), 1, strip.height()), theme.line)
        air = strip.adjusted(0, 2, 0, -self._names())
        if view.minimum is not None:
            dashes = QPen(theme.sub, 1.2)
            dashes.setDashPattern([6, 5])
            painter.setPen(dashes)
            y = _at(air, 0, view.minimum).y()
            painter.drawLine(QPointF(strip.left(), y), QPointF(strip.right(), y))
        for begin, end in view.gaps:
            area = QRectF(strip.x() + begin * strip.width(), strip.y(),
                          (end - begin) * strip.width(), air.bottom() - strip.y())  # fmt: skip
            painter.fillRect(area, theme.plot)
            edges.hatch(painter, area, theme.text, 5.2, 1.8)
        for stretch in view.record:
            _stroke(painter, [_at(air, x, y) for x, y in stretch], QPen(theme.text, 2))
        dots = QPen(theme.text, 1.8)
        dots.setDashPattern([1.2, 2.6])
        _stroke(painter, [_at(air, x, y) for x, y in view.held], dots)

    def _names(self) -> float:
        """Return the height of the day names' own row: no line of the record comes near them."""
        return type.cap_height(self.roles.small) + 7

    def _day_names(self, painter: QPainter, strip: QRectF, view: CurveView) -> None:
        """Name the days, clear of each other and of the line of the present."""
        style = self.roles.small
        now = None if view.now is None else strip.x() + view.now * strip.width()
        starts = [strip.x() + day.x * strip.width() for day in view.days]
        for day, x, end in zip(view.days, starts, [*starts[1:], strip.right()], strict=False):
            wide = type.width(style, day.name)
            left = x + 5
            if now is not None and left - 4 < now < left + wide + 4:
                left = now + 5
            if left + wide + 3 <= end:
                type.draw(painter, style, left, strip.bottom() - 4, day.name, self.theme.sub)

    def _legends(self, painter: QPainter, strip: QRectF, view: CurveView) -> None:
        """Say what is dashed and dotted; a narrow picture takes the shorter words."""
        roles, theme = self.roles, self.theme
        baseline = strip.bottom() + self._legend - 3
        y = baseline - type.cap_height(roles.small) / 2
        taken = type.width(roles.small, view.held_text) + 40 if view.held_text else 0.0
        if view.minimum is not None:
            dashes = QPen(theme.sub, 1.4)
            dashes.setDashPattern([6, 5])
            painter.setPen(dashes)
            painter.drawLine(QPointF(strip.x(), y), QPointF(strip.x() + 20, y))
            text, room = view.minimum_text, strip.width() - taken - 28
            if type.width(roles.small, text) > room:
                text = type.fitting(roles.small, view.minimum_short or text, room)
            type.draw(painter, roles.small, strip.x() + 28, baseline, text, theme.sub)
        if view.held_text:
            type.draw(
                painter, roles.small, strip.right(), baseline, view.held_text, theme.sub,
                Align.RIGHT,
            )  # fmt: skip
            dots = QPen(theme.text, 1.8)
            dots.setDashPattern([1.2, 2.6])
            painter.setPen(dots)
            x = strip.right() - taken + 32
            painter.drawLine(QPointF(x - 20, y), QPointF(x, y))

    def _now(
        self, painter: QPainter, rect: QRectF, view: CurveView, bottom: float, strip: QRectF
    ) -> None:
        theme, roles = self.theme, self.roles
        now = view.now or 0.0
        x = rect.x() + now * rect.width()
        top = rect.y() + _TAG_H
        painter.fillRect(QRectF(x - 1, top, 2, bottom - top), theme.text)
        painter.fillRect(QRectF(x - 1, strip.y() - 2, 2, strip.height() + 2), theme.text)
        wide = max(type.width(roles.fact_bold, view.now_text) + 12, _TAG_W)
        left = min(max(x - wide / 2, rect.left()), rect.right() - wide)
        tag = QRectF(left, rect.y(), wide, _TAG_H)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(theme.text)
        painter.drawRoundedRect(tag, 3, 3)
        baseline = tag.center().y() + type.cap_height(roles.fact_bold) / 2
        type.draw(painter, roles.fact_bold, tag.center().x(), baseline, view.now_text, theme.surf,
                  Align.CENTRE)  # fmt: skip


def row_places(
    marks: list[float], widths: list[float], rect: QRectF, apart: float = 14.0
) -> list[tuple[float, bool]]:
    """Return where the texts of a row begin, and whether their dot stands behind them.

    Each stands as near to its mark as the others and the edges let it; none overlaps another.

    Parameters
    ----------
    marks, widths : list of float
        The marks from left to right, and each text's width with its dot [px].
    rect : QRectF
        Between whose sides they stand.
    apart : float
        What lies between two [px].
    """
    leftward = [x - 4 + wide > rect.right() for x, wide in zip(marks, widths, strict=True)]
    begins: list[float] = []
    free = rect.left()
    for x, wide, left in zip(marks, widths, leftward, strict=True):
        begins.append(max(x + 4 - wide if left else x - 4, free))
        free = begins[-1] + wide + apart
    edge = rect.right()
    for index in reversed(range(len(begins))):
        begins[index] = min(begins[index], edge - widths[index])
        edge = begins[index] - apart
    return list(zip(begins, leftward, strict=True))


def _at(area: QRectF, x: float, y: float) -> QPointF:
    return QPointF(area.x() + x * area.width(), area.bottom() - y * area.height())


def _stroke(painter: QPainter, points: Iterable[QPointF], pen: QPen) -> None:
    several = list(points)
    if len(several) < 2:
        return
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    path = QPainterPath(several[0])
    for point in several[1:]:
        path.lineTo(point)
    painter.strokePath(path, pen)
