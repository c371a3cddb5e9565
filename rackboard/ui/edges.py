"""Plates and their lower edges: the surface of the glue as the second code of a state."""

from __future__ import annotations

from functools import lru_cache
from math import pi, sin

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPainterPathStroker, QPen

from rackboard.core.words import Word
from rackboard.ui.theme import Theme

WAVES, TEETH = 6, 9
RADIUS, CUT = 8.0, 18.0
_AMPLITUDE = {Word.WET: 5.0, Word.WAIT: 1.9}
COLLAR_PERIOD_MS = 500
"""2.0 Hz, half duty."""


def collar_lit(time_ms: int) -> bool:
    """Return whether the collar of an untaken HOLD is lit at this time [ms]."""
    return time_ms % COLLAR_PERIOD_MS < COLLAR_PERIOD_MS // 2


@lru_cache(maxsize=64)
def lower_edge(word: Word, width: float, scale: float) -> tuple[tuple[float, float], ...]:
    """Return the edge from left to right; y is 0 on the plate's line, downwards."""
    if word is Word.HOLD:
        high, low = -4 * scale, 5 * scale
        return ((0.0, high), (0.5 * width, high), (0.53 * width, low), (width, low))
    amplitude = _AMPLITUDE.get(word, 0.0) * scale
    if not amplitude:
        return ((0.0, 0.0), (width, 0.0))
    steps = WAVES * 16
    return tuple(
        (width * step / steps, amplitude * sin(2 * pi * WAVES * step / steps + pi / 2))
        for step in range(steps + 1)
    )


@lru_cache(maxsize=64)
def _teeth(width: float, scale: float) -> tuple[tuple[float, float], ...]:
    high = 4.2 * scale
    step = width / TEETH
    points: list[tuple[float, float]] = []
    for tooth in range(TEETH):
        points += [(tooth * step, -high), ((tooth + 0.5) * step, high)]
    return (*points, (width, -high))


def _open(path: QPainterPath, points: tuple[tuple[float, float], ...], y: float) -> None:
    path.moveTo(points[0][0], points[0][1] + y)
    for point in points[1:]:
        path.lineTo(point[0], point[1] + y)


@lru_cache(maxsize=128)
def plate(word: Word, width: float, height: float, scale: float, cut: float) -> QPainterPath:
    """Return the plate from 0, 0 down to its edge; `cut` > 0 cuts the upper corners."""
    edge = lower_edge(word, width, scale)
    path = QPainterPath(QPointF(edge[0][0], edge[0][1] + height))
    if cut:
        path.lineTo(0, cut)
        path.lineTo(cut, 0)
        path.lineTo(width - cut, 0)
        path.lineTo(width, cut)
    else:
        path.lineTo(0, RADIUS)
        path.arcTo(QRectF(0, 0, 2 * RADIUS, 2 * RADIUS), 180, -90)
        path.arcTo(QRectF(width - 2 * RADIUS, 0, 2 * RADIUS, 2 * RADIUS), 90, -90)
    for x, y in reversed(edge):
        path.lineTo(x, y + height)
    path.closeSubpath()
    return path


@lru_cache(maxsize=64)
def body(width: float, height: float, cut: float) -> QPainterPath:
    """Return a tile's body: rounded, or with four cut corners."""
    path = QPainterPath()
    if not cut:
        path.addRoundedRect(QRectF(0, 0, width, height), RADIUS, RADIUS)
        return path
    path.moveTo(cut, 0)
    for x, y in (
        (width - cut, 0), (width, cut), (width, height - cut), (width - cut, height),
        (cut, height), (0, height - cut), (0, cut),
    ):  # fmt: skip
        path.lineTo(x, y)
    path.closeSubpath()
    return path


@lru_cache(maxsize=64)
def _edge_path(word: Word, width: float, y: float, scale: float) -> QPainterPath:
    path = QPainterPath()
    _open(path, lower_edge(word, width, scale), y)
    return path


@lru_cache(maxsize=64)
def _band(width: float, top: float, bottom: float, scale: float) -> QPainterPath:
    path = QPainterPath()
    _open(path, _teeth(width, scale), bottom)
    path.lineTo(width, top)
    path.lineTo(0, top)
    path.closeSubpath()
    return path


@lru_cache(maxsize=64)
def _rim(word: Word, size: tuple[float, float], scale: float, cut: float) -> QPainterPath:
    return _stroked(plate(word, *size, scale, cut), 1.5)


@lru_cache(maxsize=64)
def _body_rim(size: tuple[float, float], cut: float, pen: float) -> QPainterPath:
    return _stroked(body(*size, cut), pen)


@lru_cache(maxsize=64)
def _edge_line(word: Word, width: float, y: float, scale: float, pen: float) -> QPainterPath:
    return _stroked(_edge_path(word, width, y, scale), pen)


def _stroked(path: QPainterPath, pen: float) -> QPainterPath:
    # Stroking is most of a tile's time; a cached outline is only filled.
    stroker = QPainterPathStroker()
    stroker.setWidth(pen)
    stroker.setCapStyle(Qt.PenCapStyle.FlatCap)
    stroker.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    return stroker.createStroke(path).simplified()


def draw_rim(
    painter: QPainter, color: QColor, size: tuple[float, float], cut: float, pen: float
) -> None:
    """Draw the outline of a body with its left top at 0, 0."""
    painter.fillPath(_body_rim(size, cut, pen), color)


def draw_plate(
    painter: QPainter,
    theme: Theme,
    word: Word,
    width: float,
    height: float,
    scale: float,
    cut: float = 0.0,
) -> None:
    """Draw a state's plate with its left top at 0, 0."""
    shape = plate(word, width, height, scale, cut)
    painter.fillPath(shape, theme.fills[word])
    if word is Word.WAIT:
        if theme.dark:
            painter.fillPath(_rim(word, (width, height), scale, cut), theme.wait_rim)
    elif not theme.dark:
        painter.fillPath(_rim(word, (width, height), scale, cut), theme.ink)
    if word is Word.CURED:
        rule = 3 * scale if theme.dark else 2 * scale
        color = theme.fills[word] if theme.dark else theme.ink
        painter.fillRect(QRectF(0, height + 4 * scale, width, rule), color)


def draw_cold(
    painter: QPainter,
    theme: Theme,
    width: float,
    plate_height: float,
    band_height: float,
    scale: float,
) -> None:
    """Draw the cold band under a plate; call it before the plate is drawn."""
    shape = _band(width, plate_height - 8 * scale, plate_height + band_height, scale)
    painter.fillPath(shape, theme.cold)
    if not theme.dark:
        painter.strokePath(shape, QPen(theme.ink, 1.5))


def draw_edge(
    painter: QPainter, color: QColor, word: Word, width: float, y: float, scale: float, pen: float
) -> None:
    """Draw the edge alone as a line."""
    painter.fillPath(_edge_line(word, width, y, scale, pen), color)


def draw_collar(painter: QPainter, color: QColor, rect: QRectF, pen: float, off: float) -> None:
    """Draw the collar: cut corners, a line of `pen`, its inside `off` px outside the tile."""
    grow = off + pen / 2
    outer = rect.adjusted(-grow, -grow, grow, grow)
    painter.translate(outer.topLeft())
    line = QPen(color, pen)
    line.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    painter.strokePath(body(outer.width(), outer.height(), CUT + 0.6 * grow), line)
    painter.translate(-outer.topLeft())


def draw_ring(painter: QPainter, color: QColor, rect: QRectF, off: float = 4.0) -> None:
    """Draw the ring of what is focused or selected: 3 px, 4 px off, radius 12."""
    grow = off + 1.5
    painter.setPen(QPen(color, 3))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(rect.adjusted(-grow, -grow, grow, grow), 12, 12)


def hatch(painter: QPainter, rect: QRectF, color: QColor, step: float, pen: float) -> None:
    """Fill a rectangle with slanting lines."""
    painter.save()
    painter.setClipRect(rect, Qt.ClipOperation.IntersectClip)
    painter.setPen(QPen(color, pen))
    x = rect.left() - rect.height()
    while x < rect.right():
        painter.drawLine(QPointF(x, rect.bottom()), QPointF(x + rect.height(), rect.top()))
        x += step
    painter.restore()
