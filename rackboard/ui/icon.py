"""The program's picture: a ripple that stills to a line and thickens to a bar, on a dark plate.

Painted in code, so that the window has it without a reader of SVG; assets/icon/rackboard.svg
is drawn with the same numbers, for desktops and packages.
"""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPainterPath, QPen, QPixmap

GRID = 64.0
"""The picture's side; all other numbers count in it."""
PLATE, PLATE_RIM, MARK = "#201E1B", "#7C746A", "#F4F1EA"
PLATE_INSET, PLATE_RADIUS, RIM_WIDTH = 2.0, 13.0, 2.0
RIPPLE = (
    "M 8.5 33 C 9.6 12 11.9 12 14.5 33 C 16.9 50 18.9 50 21.3 32.5"
    " C 23.3 23 24.8 23 26.8 32 C 28.2 34.5 29.2 32 31 32 L 39 32"
)
"""The wet end: half waves that lose height, then the line."""
RIPPLE_WIDTH = 5.0
WEDGE = "M 34 29.5 L 40 29.5 L 49 18 L 56 18 L 56 46 L 49 46 L 40 34.5 L 34 34.5 Z"
"""The line that thickens, and the bar."""
SIZES = (16, 24, 32, 48, 64, 128)


def path(data: str) -> QPainterPath:
    """Return the path of a text in SVG's path language; M, L, C and Z, absolute, spaced."""
    made = QPainterPath()
    parts = iter(data.split())
    for letter in parts:
        if letter == "Z":
            made.closeSubpath()
            continue
        numbers = [float(next(parts)) for _ in range(6 if letter == "C" else 2)]
        if letter == "M":
            made.moveTo(*numbers)
        elif letter == "L":
            made.lineTo(*numbers)
        else:
            made.cubicTo(*numbers)
    return made


def paint(painter: QPainter, side: float) -> None:
    """Paint the picture, `side` px wide, from 0, 0."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.scale(side / GRID, side / GRID)
    painter.setBrush(QColor(PLATE))
    painter.setPen(QPen(QColor(PLATE_RIM), RIM_WIDTH))
    inset = PLATE_INSET
    painter.drawRoundedRect(
        QRectF(inset, inset, GRID - 2 * inset, GRID - 2 * inset), PLATE_RADIUS, PLATE_RADIUS
    )
    pen = QPen(QColor(MARK), RIPPLE_WIDTH)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    painter.strokePath(path(RIPPLE), pen)
    painter.fillPath(path(WEDGE), QColor(MARK))
    painter.restore()


def picture(side: int) -> QPixmap:
    """Return the picture, `side` px wide."""
    made = QPixmap(side, side)
    made.fill(Qt.GlobalColor.transparent)
    painter = QPainter(made)
    paint(painter, side)
    painter.end()
    return made


def window_icon() -> QIcon:
    """Return the icon of the program's windows; needs a QGuiApplication."""
    made = QIcon()
    for side in SIZES:
        made.addPixmap(picture(side))
    return made
