"""The one progress line: a ripple that stills to a line, then thickens to a bar.

u runs from 0 to 1: wet to 0.22, still at 0.58, firm to 0.92, hard to 1.
"""

from __future__ import annotations

from functools import lru_cache
from math import ceil, pi, sin
from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QPainter,
    QPainterPath,
    QPen,
    QPixmap,
    QPolygonF,
)

from rackboard.core.words import Word
from rackboard.ui.edges import hatch
from rackboard.ui.tile import MotifStyle

WET, STILL, FIRM = 0.22, 0.58, 0.92
STROKE = 2.6
_STAGES = {Word.WET: (0.0, WET), Word.WAIT: (WET, STILL), Word.BENCH: (STILL, FIRM)}


def along(word: Word, fraction: float) -> float:
    """Return where a joint stands on the motif.

    Parameters
    ----------
    word : Word
        Its base word; a stage begins and ends at the word's own late bounds.
    fraction : float
        How much of the stage's time is over, 0..1.
    """
    if word is Word.CURED:
        return 1.0
    begin, end = _STAGES.get(word, (0.0, 1.0))
    return begin + (end - begin) * min(max(fraction, 0.0), 1.0)


class MotifInks(NamedTuple):
    """Colours: the way behind, the way ahead, the dumbbell."""

    strong: QColor
    dim: QColor
    dumbbell: QColor


class Stages(NamedTuple):
    """Where wet ends, where the line lies still, where it is full."""

    wet: float = WET
    still: float = STILL
    firm: float = FIRM


USUAL = Stages()


@lru_cache(maxsize=64)
def _wave(width: float, height: float, stages: Stages) -> QPainterPath:
    end = stages.still * width
    full = height / 2 - STROKE / 2 + 0.4
    path = QPainterPath(QPointF(0, 0))
    steps = max(int(end / 1.1), 8)
    for step in range(1, steps + 1):
        u = stages.still * step / steps
        if u <= stages.wet:
            amplitude = full * (1 - 0.1 * u / stages.wet)
        else:
            s = min((u - stages.wet) / (stages.still - stages.wet), 1.0)
            amplitude = full * 0.9 * (1 - s) ** 1.6
        path.lineTo(u * width, -amplitude * sin(2 * pi * u * width / (0.85 * height)))
    return path


@lru_cache(maxsize=64)
def _wedge(width: float, height: float, stages: Stages) -> QPolygonF:
    half = height / 2
    start, full = (stages.still - 0.04) * width, stages.firm * width
    points = [
        QPointF(start, -STROKE / 2), QPointF(stages.still * width, -STROKE / 2),
        QPointF(full, -half), QPointF(width, -half), QPointF(width, half), QPointF(full, half),
        QPointF(stages.still * width, STROKE / 2), QPointF(start, STROKE / 2),
    ]  # fmt: skip
    return QPolygonF(points)


@lru_cache(maxsize=64)
def _wedge_outline(width: float, height: float, stages: Stages) -> QPolygonF:
    half = height / 2 - 0.8
    start, full, end = stages.still * width, stages.firm * width, width - 0.8
    return QPolygonF(
        [QPointF(start, 0), QPointF(full, -half), QPointF(end, -half), QPointF(end, half),
         QPointF(full, half), QPointF(start, 0)]
    )  # fmt: skip


def _behind(painter: QPainter, size: tuple[float, float], stages: Stages, color: QColor) -> None:
    pen = QPen(color, STROKE)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    painter.strokePath(_wave(*size, stages), pen)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(color)
    painter.drawPolygon(_wedge(*size, stages))


def _ahead(painter: QPainter, size: tuple[float, float], stages: Stages, color: QColor) -> None:
    pen = QPen(color, STROKE * 0.6)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    painter.strokePath(_wave(*size, stages), pen)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPolyline(_wedge_outline(*size, stages))


_UP, _SIDE = 1.2, 2.0
"""Room round a cached picture: up and down in heights, to the sides in px."""


@lru_cache(maxsize=64)
def _picture(
    size: tuple[float, float], stages: Stages, color: int, ratio: float, *, behind: bool
) -> QPixmap:
    # Stroking the ripple is most of a tile's time, so it is done once a size, colour and
    # device pixel ratio; a tile shows a part of the picture.
    width, height = size
    picture = QPixmap(
        ceil((width + 2 * _SIDE) * ratio), ceil(2 * _UP * height * ratio)
    )
    picture.setDevicePixelRatio(ratio)
    picture.fill(Qt.GlobalColor.transparent)
    painter = QPainter(picture)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(_SIDE, _UP * height)
    (_behind if behind else _ahead)(painter, size, stages, QColor.fromRgba(color))
    painter.end()
    return picture


def _part(
    painter: QPainter,
    size: tuple[float, float],
    stages: Stages,
    color: QColor,
    span: tuple[float, float],
    *,
    behind: bool,
    vector: bool,
) -> None:
    """Draw the part of the way behind or ahead that lies in `span` px of the motif."""
    begin, end = span
    if end - begin < 1:
        return  # nothing to see; and Qt takes a source narrower than a pixel for the whole
    if vector:
        painter.save()
        area = QRectF(begin, -_UP * size[1], end - begin, 2 * _UP * size[1])
        painter.setClipRect(area, Qt.ClipOperation.IntersectClip)
        (_behind if behind else _ahead)(painter, size, stages, color)
        painter.restore()
        return
    ratio = painter.deviceTransform().m11()
    painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform, ratio % 1 != 0)
    picture = _picture(size, stages, color.rgba(), ratio, behind=behind)
    tall = 2 * _UP * size[1]
    source = QRectF((begin + _SIDE) * ratio, 0, (end - begin) * ratio, tall * ratio)
    painter.drawPixmap(QRectF(begin, -_UP * size[1], end - begin, tall), picture, source)


def _bars(painter: QPainter, begin: float, size: tuple[float, float], color: QColor) -> None:
    width, height = size
    x = begin
    while x <= width - STROKE:
        grown = min(max((x / width - 0.36) / (FIRM - 0.36), 0.0), 1.0)
        tall = max(STROKE, height * grown)
        painter.fillRect(QRectF(x, -tall / 2, STROKE, tall), color)
        x += 7


def _now(painter: QPainter, x: float, height: float, color: QColor) -> None:
    top = -height
    painter.fillRect(QRectF(x - 1.5, top, 3, height * 1.72), color)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(color)
    painter.drawPolygon(
        QPolygonF([QPointF(x - 5, top), QPointF(x + 5, top), QPointF(x, top + 6)])
    )


def draw(
    painter: QPainter,
    inks: MotifInks,
    x: float,
    centre: float,
    width: float,
    height: float,
    position: float,
    *,
    style: MotifStyle = MotifStyle.PLAIN,
    gap: tuple[float, float] | None = None,
    dumbbell: tuple[float, float] | None = None,
    dumbbell_drop: float = 6.5,
    stages: Stages = USUAL,
    now_bar: bool = True,
    vector: bool = True,
) -> None:
    """Draw the motif from x, its line at `centre`.

    Parameters
    ----------
    position : float
        Where now lies, 0..1; at 1 all is behind and there is no bar.
    gap : tuple of float, optional
        Hatched stretch; the way behind ends at it.
    dumbbell : tuple of float, optional
        Probably and not before, on the same axis.
    vector : bool
        Draw the paths themselves; else from pictures kept per device pixel ratio, which is
        many times faster and meant for tiles on a screen.
    """
    if style is MotifStyle.NONE:
        return
    size = (width, height)
    now = position * width
    over = position >= 1.0
    painter.save()
    painter.translate(x, centre)
    solid_to = gap[0] * width if gap else now
    apart = 0.0 if over or gap or not now_bar else 2.6
    solid_end = width + 1 if over and not gap else solid_to - apart
    _part(painter, size, stages, inks.strong, (-_SIDE, solid_end), behind=True,
          vector=vector)  # fmt: skip
    if gap:
        area = QRectF(gap[0] * width, -height / 2, (gap[1] - gap[0]) * width, height)
        hatch(painter, area, inks.strong, 5.2, 2.2)
    if not over:
        begin = gap[1] * width if gap else now + (3.4 if now_bar else 0)
        if style is MotifStyle.COLD:
            _bars(painter, begin + 3, size, inks.dim)
        else:
            drop = height / 3 if style is MotifStyle.HOLD else 0.0
            painter.translate(0, drop)
            _part(painter, size, stages, inks.dim, (begin, width + 1), behind=False,
                  vector=vector)  # fmt: skip
            painter.translate(0, -drop)
        if style is MotifStyle.HOLD:
            painter.setPen(QPen(inks.strong, STROKE))
            lean, tall_by = 0.2 * height, 0.9 * height
            painter.drawLine(QPointF(now + lean, -tall_by), QPointF(now - lean, tall_by))
        elif now_bar:
            _now(painter, now, height, inks.strong)
    if dumbbell:
        _dumbbell(painter, inks.dumbbell, dumbbell, width, height / 2 + dumbbell_drop)
    painter.restore()


def _dumbbell(
    painter: QPainter, color: QColor, ends: tuple[float, float], width: float, y: float
) -> None:
    hollow, solid = ends[0] * width, ends[1] * width
    painter.setPen(QPen(color, 1.5))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if solid - hollow > 6:
        painter.drawEllipse(QPointF(hollow, y), 2.6, 2.6)
        painter.drawLine(QPointF(hollow + 2.6, y), QPointF(solid, y))
    painter.setBrush(color)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.drawEllipse(QPointF(solid, y), 3.3, 3.3)
