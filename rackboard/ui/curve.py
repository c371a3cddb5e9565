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
    """

    def __init__(self, theme: Theme, roles: Roles, *, times: bool = True) -> None:
        self.theme = theme
        self.roles = roles
        self.times = times
        large = roles.large
        self._motif_h = 22.0 if large else 15.0
        self._row = 18.5 if large else 16.5
        self._strip_h = 40.0 if large else 30.0
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
            clear = QRectF(right - wide - 3, y + 4, wide + 6, drop)
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
            free = rect.left()
            for u, text in texts:
                wide = type.width(style, text)
                x = rect.x() + u * rect.width()
                leftward = x + 9 + wide > rect.right()
                begin = max((x - 9 - wide) if leftward else x - 4, free)
                dot = QPointF(
                    begin + wide + 9 if leftward else begin + 4, baseline - cap / 2
                )
                text_x = begin if leftward else begin + 13
                type.draw(painter, style, text_x, baseline, text, color)
                painter.setBrush(Qt.BrushStyle.NoBrush if hollow else color)
                painter.setPen(QPen(color, 1.6))
                painter.drawEllipse(dot, 3.2, 3.2)
                free = begin + wide + 20

    def _temperature(self, painter: QPainter, strip: QRectF, view: CurveView) -> None:
        theme = self.theme
        painter.fillRect(strip, theme.plot)
        for day in view.days:
            x = strip.x() + day.x * strip.width()
            painter.fillRect(QRectF(x, strip.y(), 1, strip.height()), theme.line)
        if view.minimum is not None:
            dashes = QPen(theme.sub, 1.2)
            dashes.setDashPattern([6, 5])
            painter.setPen(dashes)
            y = _at(strip, 0, view.minimum).y()
            painter.drawLine(QPointF(strip.left(), y), QPointF(strip.right(), y))
        for begin, end in view.gaps:
            area = QRectF(strip.x() + begin * strip.width(), strip.y(),
                          (end - begin) * strip.width(), strip.height())  # fmt: skip
            painter.fillRect(area, theme.plot)
            edges.hatch(painter, area, theme.text, 5.2, 1.8)
        for stretch in view.record:
            _stroke(painter, [_at(strip, x, y) for x, y in stretch], QPen(theme.text, 2))
        dots = QPen(theme.text, 1.8)
        dots.setDashPattern([1.2, 2.6])
        _stroke(painter, [_at(strip, x, y) for x, y in view.held], dots)

    def _day_names(self, painter: QPainter, strip: QRectF, view: CurveView) -> None:
        """Name the days, above or below the record, whichever is clear of it."""
        style = self.roles.small
        cap = type.cap_height(style)
        points = [point for stretch in view.record for point in stretch] + list(view.held)
        if view.minimum is not None:
            points += [(day.x, view.minimum) for day in view.days]
        for day in view.days:
            x = strip.x() + day.x * strip.width()
            wide = type.width(style, day.name)
            if x + 8 + wide >= strip.right():
                continue
            end = day.x + (wide + 8) / strip.width()
            near = [y for at, y in points if day.x - 0.01 <= at <= end + 0.01] or [0.5]
            low = min(near) > 1 - max(near)
            baseline = strip.bottom() - 4 if low else strip.top() + cap + 4
            taken = (cap + 8) / strip.height()
            if any(y < taken if low else y > 1 - taken for y in near):
                clear = QRectF(x + 3, baseline - cap - 2, wide + 4, cap + 4)
                painter.fillRect(clear, self.theme.plot)
            type.draw(painter, style, x + 5, baseline, day.name, self.theme.sub)

    def _legends(self, painter: QPainter, strip: QRectF, view: CurveView) -> None:
        roles, theme = self.roles, self.theme
        baseline = strip.bottom() + self._legend - 3
        y = baseline - type.cap_height(roles.small) / 2
        if view.minimum is not None:
            dashes = QPen(theme.sub, 1.4)
            dashes.setDashPattern([6, 5])
            painter.setPen(dashes)
            painter.drawLine(QPointF(strip.x(), y), QPointF(strip.x() + 20, y))
            text = view.minimum_text if roles.large else view.minimum_short or view.minimum_text
            type.draw(painter, roles.small, strip.x() + 28, baseline, text, theme.sub)
        if view.held_text:
            taken = type.draw(
                painter, roles.small, strip.right(), baseline, view.held_text, theme.sub,
                Align.RIGHT,
            )  # fmt: skip
            dots = QPen(theme.text, 1.8)
            dots.setDashPattern([1.2, 2.6])
            painter.setPen(dots)
            x = strip.right() - taken - 8
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
