"""The glyphs, our own paths on a 24 grid, each filled in one colour."""

from __future__ import annotations

from functools import lru_cache
from math import cos, radians, sin

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QPainter,
    QPainterPath,
    QPainterPathStroker,
    QPolygonF,
    QTransform,
)

from rackboard.ui.tile import Glyph


def _stroked(
    path: QPainterPath,
    width: float,
    cap: Qt.PenCapStyle = Qt.PenCapStyle.FlatCap,
    join: Qt.PenJoinStyle = Qt.PenJoinStyle.MiterJoin,
) -> QPainterPath:
    stroker = QPainterPathStroker()
    stroker.setWidth(width)
    stroker.setCapStyle(cap)
    stroker.setJoinStyle(join)
    return stroker.createStroke(path).simplified()


def _line(*points: tuple[float, float]) -> QPainterPath:
    path = QPainterPath(QPointF(*points[0]))
    for point in points[1:]:
        path.lineTo(*point)
    return path


def _polygon(*points: tuple[float, float]) -> QPainterPath:
    path = QPainterPath()
    path.addPolygon(QPolygonF([QPointF(*point) for point in points]))
    path.closeSubpath()
    return path


def _disc(x: float, y: float, radius: float) -> QPainterPath:
    path = QPainterPath()
    path.addEllipse(QPointF(x, y), radius, radius)
    return path


def _rounded(x: float, y: float, w: float, h: float, radius: float) -> QPainterPath:
    path = QPainterPath()
    path.addRoundedRect(QRectF(x, y, w, h), radius, radius)
    return path


def _eye() -> QPainterPath:
    lids = QPainterPath(QPointF(1.9, 12))
    lids.cubicTo(5.0, 6.9, 8.4, 5.0, 12, 5.0)
    lids.cubicTo(15.6, 5.0, 19.0, 6.9, 22.1, 12)
    lids.cubicTo(19.0, 17.1, 15.6, 19.0, 12, 19.0)
    lids.cubicTo(8.4, 19.0, 5.0, 17.1, 1.9, 12)
    lids.closeSubpath()
    return _stroked(lids, 2.4).united(_disc(12, 12, 3.6))


def _lock() -> QPainterPath:
    shackle = QPainterPath(QPointF(7.4, 11.5))
    shackle.lineTo(7.4, 7.4)
    shackle.arcTo(QRectF(7.4, 2.8, 9.2, 9.2), 180, -180)
    shackle.lineTo(16.6, 11.5)
    body = _rounded(4.2, 10.4, 15.6, 11.6, 1.8)
    return _stroked(shackle, 2.7).united(body).subtracted(_rounded(10.8, 13.6, 2.4, 5.2, 1.2))


def _hand() -> QPainterPath:
    palm = QPainterPath(QPointF(1.4, 14.4))
    palm.lineTo(7.4, 14.4)
    palm.cubicTo(9.4, 14.4, 10.2, 16.0, 12.2, 16.0)
    palm.lineTo(14.6, 16.0)
    palm.cubicTo(16.3, 16.0, 16.3, 18.2, 14.6, 18.3)
    palm.lineTo(16.4, 18.3)
    palm.lineTo(20.4, 14.9)
    palm.cubicTo(21.4, 14.1, 23.1, 15.5, 22.2, 16.7)
    palm.lineTo(17.8, 21.2)
    palm.cubicTo(17.0, 22.0, 16.2, 22.4, 15.0, 22.4)
    palm.lineTo(1.4, 22.4)
    palm.closeSubpath()
    arrow = _polygon(
        (11.8, 1.0), (17.0, 7.2), (13.3, 7.2), (13.3, 12.6), (10.3, 12.6), (10.3, 7.2), (6.6, 7.2)
    )
    return palm.united(arrow)


def _tick() -> QPainterPath:
    return _stroked(_line((3.3, 12.0), (9.7, 18.3), (20.9, 4.9)), 3.8)


def _rod() -> QPainterPath:
    path = _polygon((19.9, 4.6), (23.2, 7.2), (10.7, 23.2), (7.4, 20.6))
    for top in (1.2, 6.6, 12.0, 17.4):
        path.addRect(QRectF(2.4, top, 3.6, 3.6))
    return path


def _smear() -> QPainterPath:
    drop = QPainterPath(QPointF(22.9, 2.0))
    drop.cubicTo(18.6, 6.6, 14.6, 9.0, 10.2, 9.3)
    drop.cubicTo(5.0, 9.6, 1.8, 12.3, 1.8, 15.9)
    drop.cubicTo(1.8, 19.2, 4.4, 21.6, 7.6, 21.6)
    drop.cubicTo(11.0, 21.6, 12.8, 19.6, 14.8, 16.6)
    drop.cubicTo(17.6, 12.5, 20.8, 7.6, 22.9, 2.0)
    drop.closeSubpath()
    return drop.united(_disc(18.8, 18.4, 3.0))


def _hot() -> QPainterPath:
    # A full column in a filled bulb: nothing but "too hot" has a thermometer.
    glass = _rounded(5.4, 1.2, 7.2, 16.4, 3.6).united(_disc(9, 17.6, 5.6))
    hollow = _rounded(7.4, 3.2, 3.2, 14, 1.6).united(_disc(9, 17.6, 3.5))
    column = _rounded(8.1, 4.2, 1.8, 13.4, 0.9).united(_disc(9, 17.6, 2.6))
    arrow = _polygon(
        (18.6, 2.2), (23.2, 8.0), (20.1, 8.0), (20.1, 14.0), (17.1, 14.0), (17.1, 8.0), (14.0, 8.0)
    )
    return glass.subtracted(hollow).united(column).united(arrow)


def _cold() -> QPainterPath:
    # A frost star; the thermometer is left to "too hot", so the two can't be mixed up.
    star = QPainterPath()
    for number in range(6):
        turn = radians(60 * number + 30)
        x, y = cos(turn), sin(turn)
        star.moveTo(12, 12)
        star.lineTo(12 + 10.6 * x, 12 + 10.6 * y)
        for side in (-1, 1):
            bent = turn + side * radians(52)
            star.moveTo(12 + 5.6 * x, 12 + 5.6 * y)
            star.lineTo(12 + 5.6 * x + 4.4 * cos(bent), 12 + 5.6 * y + 4.4 * sin(bent))
    return _stroked(star, 2.2, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin)


def _clock() -> QPainterPath:
    ring = QRectF(2.6, 2.6, 18.8, 18.8)
    arcs = QPainterPath()
    arcs.arcMoveTo(ring, 72)
    arcs.arcTo(ring, 72, 212)
    arcs.arcMoveTo(ring, -52)
    arcs.arcTo(ring, -52, 92)
    return _stroked(arcs, 2.6).united(_stroked(_line((11.7, 6.4), (11.7, 12.6), (17.2, 12.6)), 2.6))


def _from() -> QPainterPath:
    arrow = _polygon(
        (22.6, 12.0), (15.6, 18.0), (15.6, 13.4), (6.6, 13.4), (6.6, 10.6), (15.6, 10.6), (15.6, 6)
    )
    arrow.addRect(QRectF(1.4, 4.0, 2.8, 16.0))
    return arrow


def _until() -> QPainterPath:
    arrow = _polygon(
        (17.4, 12.0), (10.4, 18.0), (10.4, 13.4), (1.4, 13.4), (1.4, 10.6), (10.4, 10.6), (10.4, 6)
    )
    arrow.addRect(QRectF(19.8, 4.0, 2.8, 16.0))
    return arrow


_DRAWINGS = {
    Glyph.EYE: _eye,
    Glyph.LOCK: _lock,
    Glyph.HAND: _hand,
    Glyph.TICK: _tick,
    Glyph.ROD: _rod,
    Glyph.SMEAR: _smear,
    Glyph.HOT: _hot,
    Glyph.COLD: _cold,
    Glyph.CLOCK: _clock,
    Glyph.FROM: _from,
    Glyph.UNTIL: _until,
}


@lru_cache(maxsize=32)
def path(glyph: Glyph) -> QPainterPath:
    """Return the outline of a glyph on its 24 grid."""
    return _DRAWINGS[glyph]()


@lru_cache(maxsize=128)
def _scaled(glyph: Glyph, size: float) -> QPainterPath:
    return QTransform.fromScale(size / 24, size / 24).map(path(glyph))


@lru_cache(maxsize=64)
def _hollow(glyph: Glyph, size: float, pen: float) -> QPainterPath:
    return _stroked(_scaled(glyph, size), pen)


def draw(
    painter: QPainter,
    glyph: Glyph,
    x: float,
    y: float,
    size: float,
    color: QColor,
    *,
    hollow: float = 0.0,
) -> None:
    """Draw a glyph with its left top at x, y; `hollow` > 0 draws the outline only, so thick."""
    painter.translate(x, y)
    if hollow:
        painter.fillPath(_hollow(glyph, size, hollow), color)
    else:
        painter.fillPath(_scaled(glyph, size), color)
    painter.translate(-x, -y)
