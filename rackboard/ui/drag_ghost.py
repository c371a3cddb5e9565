"""The picture of a tile that follows the pointer while it is dragged."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QWidget

_OPACITY = 0.8


class DragGhost(QWidget):
    """A copy of one cell of a list, above everything in its window.

    Parameters
    ----------
    source : QWidget
        The list's viewport.
    cell : QRect
        The cell in it.
    at : QPoint
        Where the pointer has taken hold, in the viewport.
    """

    def __init__(self, source: QWidget, cell: QRect, at: QPoint) -> None:
        super().__init__(source.window())
        self._picture: QPixmap = source.grab(cell)
        self._held = at - cell.topLeft()
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.resize(cell.size())

    def follow(self, at: QPoint) -> None:
        """Go where the pointer is, in global coordinates."""
        parent = self.parentWidget()
        assert parent is not None
        self.move(parent.mapFromGlobal(at) - self._held)
        self.show()
        self.raise_()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the copy; the board shines through."""
        del event
        painter = QPainter(self)
        painter.setOpacity(_OPACITY)
        painter.drawPixmap(0, 0, self._picture)
        painter.end()
