"""How an epoxy goes, beside its form: the curve, its times, and the table by temperature."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, QSize
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from rackboard.services.sheet_table import LEVEL_FULL, LEVEL_HANDLING, CurveSample
from rackboard.ui import motif, type
from rackboard.ui.curve import draw_dumbbell
from rackboard.ui.epoxy_view import (
    Companion,
    EpoxyView,
    accessible_text,
    expected_text,
    late_text,
    spoken,
    use_by_text,
)
from rackboard.ui.theme import Theme
from rackboard.ui.type import Align, Roles, Style

_SHADES = 4


class EpoxyPlot(QWidget):
    """Paints an `EpoxyView`, or why there is none yet."""

    def __init__(self, theme: Theme, roles: Roles, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._theme, self._roles = theme, roles
        self._view: EpoxyView | None = None
        self._missing = ""
        self.setAccessibleName(self.tr("How this glue goes"))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    @property
    def view(self) -> EpoxyView | None:
        """What is shown."""
        return self._view

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        self._theme = theme
        self.update()

    def show_view(self, view: EpoxyView | None, missing: str = "") -> None:
        """Show another view; None shows `missing` in its place."""
        self._view, self._missing = view, missing
        self.setAccessibleDescription(missing if view is None else accessible_text(view))
        self.update()

    def sizeHint(self) -> QSize:
        """Return what the picture needs."""
        return QSize(1096, 860) if self._roles.large else QSize(700, 600)

    def minimumSizeHint(self) -> QSize:
        """Return the least that can be read."""
        return QSize(520, 470)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the panel."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, roles = self._theme, self._roles
        large = roles.large
        painter.setPen(QPen(theme.surf if theme.dark else theme.line, 1))
        painter.setBrush(theme.surf)
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5), 10, 10)
        pad = 36.0 if large else 20.0
        area = QRectF(self.rect()).adjusted(pad, pad * 0.8, -pad, -pad * 0.8)
        style = Style(roles.head.face, 26 if large else 20)
        baseline = area.top() + type.cap_height(style) + 6
        type.draw(painter, style, area.left(), baseline, self.tr("How this glue goes"), theme.text)
        if self._view is None:
            y = baseline + 48
            for line in type.wrapped(roles.fact, self._missing, min(area.width(), 520)):
                type.draw(painter, roles.fact, area.left(), y, line, theme.sub)
                y += 26
            high = 40.0 if large else 30.0
            inks = motif.MotifInks(theme.text, theme.dim, theme.sub)
            motif.draw(painter, inks, area.left(), area.center().y() + high, area.width(), high,
                       0.0, now_bar=False)  # fmt: skip
            painter.end()
            return
        at = self.tr("at {0}, as you type").format(self._view.reference)
        type.draw(painter, roles.fact, area.right(), baseline, at, theme.sub, Align.RIGHT)
        pitch = 36.0 if large else 25.0
        rows = 5 if self._view.has_handling else 3
        table_h = pitch * (rows + 1) + (18 if large else 10)
        table = QRectF(area.left(), area.bottom() - table_h, area.width(), table_h)
        head = baseline + (34 if large else 20)
        upper = QRectF(area.left(), head, area.width(), table.top() - head - (14 if large else 6))
        self._paint_curve(painter, upper, self._view)
        self._paint_table(painter, table, self._view, pitch)
        painter.end()

    # The curve

    def _paint_curve(self, painter: QPainter, rect: QRectF, view: EpoxyView) -> None:
        theme, roles = self._theme, self._roles
        motif_h = 26.0 if roles.large else 17.0
        line = 24.0 if roles.large else 19.0
        plot = QRectF(rect.x(), rect.y(), rect.width(), rect.height() - motif_h - 2 * line - 22)
        levels = [(LEVEL_FULL, self.tr("safe to hit"))]
        if view.has_handling:
            levels.append((LEVEL_HANDLING, self.tr("off the rack")))
        lines = [(view.samples, 10.0), *((c.samples, 4.0) for c in view.companions)]
        boxes: list[QRectF] = []
        for level, name in levels:
            y = self._at(plot, view, 0, level).y()
            painter.fillRect(QRectF(plot.x(), y - 0.5, plot.width(), 1), theme.line)
            box = self._free_box(plot, view, lines, self._level_boxes(plot, y, name))
            type.draw(painter, roles.fact, box.x(), box.bottom(), name, theme.sub)
            boxes.append(box)
        painter.save()
        painter.setClipRect(plot.adjusted(0, -2, 0, 2))
        for companion in view.companions:
            self._dashed(painter, plot, view, companion)
        self._shade(painter, plot, view)
        pen = QPen(theme.text, 3.2)
        points = [self._at(plot, view, s.hours, s.expected) for s in view.samples]
        painter.strokePath(_path(points), pen)
        painter.restore()
        for companion in view.companions:
            box = self._free_box(plot, view, lines, self._name_boxes(plot, view, companion), boxes)
            type.draw(painter, roles.fact, box.x(), box.bottom(), companion.name, theme.sub)
            boxes.append(box)
        self._marks(painter, plot, view, plot.bottom() + 8, motif_h, line)

    def _at(self, plot: QRectF, view: EpoxyView, hours: float, conversion: float) -> QPointF:
        return QPointF(
            plot.x() + min(hours / view.end_h, 1.0) * plot.width(),
            plot.bottom() - conversion * plot.height(),
        )

    def _shade(self, painter: QPainter, plot: QRectF, view: EpoxyView) -> None:
        painter.setPen(QPen(QColor(0, 0, 0, 0)))
        shade = QColor(self._theme.text)
        shade.setAlphaF(0.15)
        painter.setBrush(shade)
        upper = [self._at(plot, view, s.hours, s.expected) for s in view.samples]
        for step in range(1, _SHADES + 1):
            part = step / _SHADES
            lower = [
                self._at(plot, view, s.hours, s.expected + (s.late - s.expected) * part)
                for s in reversed(view.samples)
            ]
            painter.drawPolygon(QPolygonF([*upper, *lower]))

    def _dashed(
        self, painter: QPainter, plot: QRectF, view: EpoxyView, companion: Companion
    ) -> None:
        pen = QPen(self._theme.sub, 1.6)
        pen.setDashPattern([5, 3.4])
        points = [self._at(plot, view, s.hours, s.expected) for s in companion.samples]
        painter.strokePath(_path(points), pen)

    def _level_boxes(self, plot: QRectF, y: float, name: str) -> list[QRectF]:
        """Return where a level's name may stand, the best place first."""
        style = self._roles.fact
        wide, cap = type.width(style, name), type.cap_height(style)
        return [
            QRectF(x, top, wide, cap)
            for top in (y - 7 - cap, y + 8)
            for x in (plot.x() + 2, plot.right() - wide)
        ]

    def _name_boxes(self, plot: QRectF, view: EpoxyView, companion: Companion) -> list[QRectF]:
        """Return where the name of a dashed curve may stand: beside itself, at some height."""
        style = self._roles.fact
        wide, cap = type.width(style, companion.name), type.cap_height(style)
        warmer = companion.samples[-1].expected > view.samples[-1].expected
        boxes = []
        for level in (0.4, 0.5, 0.3, 0.66, 0.76, 0.2, 0.83):
            found = next((s for s in companion.samples if s.expected >= level), None)
            if found is None:
                continue
            point = self._at(plot, view, found.hours, found.expected)
            if warmer:
                boxes.append(QRectF(point.x() - wide - 12, point.y() - cap, wide, cap))
            else:
                boxes.append(QRectF(point.x() + 14, point.y() + 4, wide, cap))
        end = self._at(plot, view, view.end_h, companion.samples[-1].expected)
        top = end.y() + (-10 - cap if warmer else 12)
        boxes.append(QRectF(plot.right() - wide, top, wide, cap))
        return boxes

    def _free_box(
        self,
        plot: QRectF,
        view: EpoxyView,
        lines: list[tuple[tuple[CurveSample, ...], float]],
        boxes: list[QRectF],
        taken: Sequence[QRectF] = (),
    ) -> QRectF:
        """Return the first box that no curve and no other text runs through, else the last."""
        for box in boxes:
            wide = box.adjusted(-3, -3, 3, 3)
            if not plot.adjusted(-2, -20, 2, 0).contains(box) or any(map(wide.intersects, taken)):
                continue
            if not any(
                wide.adjusted(-near / 2, -near / 2, near / 2, near / 2).intersects(
                    QRectF(self._at(plot, view, a.hours, a.expected),
                           self._at(plot, view, b.hours, b.expected)).normalized()
                )
                for samples, near in lines
                for a, b in pairwise(samples)
            ):  # fmt: skip
                return box
        first = boxes[-1]
        first.moveLeft(min(max(first.x(), plot.x()), plot.right() - first.width()))
        return first

    def _marks(
        self,
        painter: QPainter,
        plot: QRectF,
        view: EpoxyView,
        top: float,
        motif_h: float,
        line: float,
    ) -> None:
        theme, at = self._theme, view.at_reference
        full_late = at.full_late_h or view.end_h
        still = at.handling_late_h or 0.55 * full_late
        wet = (at.use_by_h or 0) / view.end_h
        stages = motif.Stages(
            max(min(wet, 0.5 * still / view.end_h), 0.004),
            still / view.end_h,
            min(full_late / view.end_h, 0.98),
        )
        inks = motif.MotifInks(theme.text, theme.dim, theme.sub)
        centre = top + motif_h / 2
        motif.draw(painter, inks, plot.x(), centre, plot.width(), motif_h, 1.0, stages=stages)
        below = top + motif_h + 4
        solids = []
        hollows = []
        to_hit = self.tr("to hit, not before {0}")
        pairs = [(LEVEL_FULL, at.full_expected_h, at.full_late_h, to_hit)]
        if view.has_handling:
            pairs.insert(
                0,
                (LEVEL_HANDLING, at.handling_expected_h, at.handling_late_h,
                 self.tr("off the rack, not before {0}")),
            )  # fmt: skip
        if at.use_by_h is not None:
            x = self._at(plot, view, at.use_by_h, 0).x()
            solids.append((x, use_by_text(at.use_by_h)))
        for level, expected, late, words in pairs:
            if expected is None or late is None:
                continue
            hollow, solid = self._at(plot, view, expected, level), self._at(plot, view, late, level)
            draw_dumbbell(painter, self._theme, hollow, solid, top - 2)
            probably = spoken(expected, expected_text(expected))
            hollows.append((hollow.x(), self.tr("probably {0}").format(probably)))
            solids.append((solid.x(), words.format(spoken(late, late_text(late)))))
        self._texts(painter, plot, hollows, below + line * 0.75, hollow=True)
        self._texts(painter, plot, solids, below + line * 1.75, hollow=False)

    def _texts(
        self,
        painter: QPainter,
        plot: QRectF,
        texts: list[tuple[float, str]],
        baseline: float,
        *,
        hollow: bool,
    ) -> None:
        """Draw a row of texts, each behind its dot; none runs into the next or out of the plot."""
        theme, roles = self._theme, self._roles
        style = roles.fact if hollow else roles.fact_bold
        gaps = sum(type.width(style, text) + 31 for _, text in texts) - 18
        if gaps > plot.width():
            style = roles.fact_narrow
        color = theme.sub if hollow else theme.text
        mark = 13.0
        widths = [mark + type.width(style, text) for _, text in texts]
        lefts: list[float] = []
        free = plot.left()
        for (x, _), wide in zip(texts, widths, strict=True):
            lefts.append(max(x - 4, free))
            free = lefts[-1] + wide + 18
        edge = plot.right()
        for index in reversed(range(len(lefts))):
            lefts[index] = min(lefts[index], edge - widths[index])
            edge = lefts[index] - 18
        for left, (_, text) in zip(lefts, texts, strict=True):
            dot = QPointF(left + 4, baseline - type.cap_height(style) / 2)
            painter.setBrush(theme.surf if hollow else color)
            painter.setPen(QPen(color, 1.6))
            painter.drawEllipse(dot, 3.4, 3.4)
            type.draw(painter, style, left + mark, baseline, text, color)

    # The table

    def _paint_table(
        self, painter: QPainter, rect: QRectF, view: EpoxyView, pitch: float
    ) -> None:
        theme, roles = self._theme, self._roles
        painter.fillRect(QRectF(rect.x(), rect.y(), rect.width(), 1), theme.line)
        plain, bold = roles.fact, roles.fact_bold
        cap = type.cap_height(plain)
        first = rect.y() + pitch / 2 + cap / 2 + (6 if roles.large else 3)
        names = [self.tr("kept at °{0}, hours").format(view.unit)]
        if view.has_handling:
            names += [self.tr("off the rack, not before"), self.tr("probably")]
        names += [self.tr("to hit, not before"), self.tr("probably")]
        label_w = max(type.width(bold, name) for name in names) + (18 if roles.large else 10)
        cell_w = (rect.width() - label_w) / len(view.columns)
        probably = self.tr("probably")
        for row, name in enumerate(names):
            y = first + row * pitch
            quiet = row == 0 or name == probably
            x = rect.x() + (14 if name == probably else 0)
            type.draw(painter, plain, x, y, name, theme.sub if quiet else theme.text)
        for number, (name, column) in enumerate(view.columns):
            right = rect.x() + label_w + (number + 1) * cell_w
            here = abs(column.temperature_c - view.at_reference.temperature_c) < 0.05
            figures = []
            if view.has_handling:
                figures.append(late_text(column.handling_late_h))
                figures.append(expected_text(column.handling_expected_h))
            figures.append(late_text(column.full_late_h))
            figures.append(expected_text(column.full_expected_h))
            type.draw(painter, bold if here else plain, right, first, name,
                      theme.text if here else theme.sub, Align.RIGHT)  # fmt: skip
            for row, figure in enumerate(figures, 1):
                late = row % 2 == 1
                style = bold if late and here else plain
                faint = not late or column.below_minimum
                type.draw(painter, style, right, first + row * pitch, figure,
                          theme.sub if faint else theme.text, Align.RIGHT)  # fmt: skip
        y = first + len(names) * pitch
        type.draw(painter, roles.small, rect.x(), y, view.note, theme.sub)


def _path(points: list[QPointF]) -> QPainterPath:
    path = QPainterPath(points[0])
    for point in points[1:]:
        path.lineTo(point)
    return path
