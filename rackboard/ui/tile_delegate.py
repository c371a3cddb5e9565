"""The one delegate of all racks: a tile inside its cell, with ring and collar around it."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, QObject, QPersistentModelIndex, QRectF, QSize, Qt
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from rackboard.core.words import Word
from rackboard.ui import edges
from rackboard.ui.grid import Grid
from rackboard.ui.rack_model import ROW_ROLE
from rackboard.ui.theme import Theme
from rackboard.ui.tile import Tile
from rackboard.ui.tile_painter import TilePainter


class TileDelegate(QStyledItemDelegate):
    """Paints tiles; a cell is a tile and half a gutter all round.

    `collar_lit` and `still` (reduced motion) are set by the board before it asks for a repaint.
    While a plate changes, `fading` holds the former tile and `faded` how far it is gone, 0..1.
    """

    def __init__(self, theme: Theme, grid: Grid, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.collar_lit = True
        self.still = False
        self.fading: dict[tuple[int, int], Tile] = {}
        self.faded = 0.0
        self.show_grid(theme, grid)

    def show_grid(self, theme: Theme, grid: Grid) -> None:
        """Take another scheme or size."""
        self._theme = theme
        self._grid = grid
        self._tiles = TilePainter(theme, large=grid.large, ground=theme.bg)

    def tile_rect(self, cell: QRectF) -> QRectF:
        """Return where the tile lies in its cell."""
        before = self._grid.gutter // 2
        return QRectF(cell.x() + before, cell.y() + before, self._grid.tile_w, self._grid.tile_h)

    def sizeHint(
        self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> QSize:
        """Return the size of a cell."""
        del option, index
        return QSize(
            self._grid.tile_w + self._grid.gutter, self._grid.tile_h + self._grid.gutter
        )

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        """Paint one cell."""
        tile = index.data(ROW_ROLE)
        if not isinstance(tile, Tile):
            return
        selected = bool(option.state & QStyle.StateFlag.State_Selected)
        self.paint_cell(painter, QRectF(option.rect), tile, selected=selected)

    def paint_cell(
        self, painter: QPainter, cell: QRectF, tile: Tile, *, selected: bool
    ) -> None:
        """Paint a tile into its cell, with what lies around it."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        rect = self.tile_rect(cell)
        self._tiles.paint(painter, rect, tile)
        former = self.fading.get(tile.key)
        if former is not None:  # the plate alone: two texts on each other can't be read
            painter.save()
            at = self._tiles.at
            plate = rect.adjusted(0, 0, 0, at.plate + 8 * at.scale - rect.height())
            painter.setClipRect(plate, Qt.ClipOperation.IntersectClip)
            painter.setOpacity(1.0 - self.faded)
            self._tiles.paint(painter, rect, former)
            painter.restore()
        if tile.untaken:
            self._collar(painter, rect, selected=selected)
        if selected:
            edges.draw_ring(painter, self._theme.ring, rect, self._off)

    @property
    def _off(self) -> float:
        return min(4.0, self._grid.gutter / 2 - 3.5)

    def _collar(self, painter: QPainter, rect: QRectF, *, selected: bool) -> None:
        color = self._theme.fills[Word.HOLD] if self._theme.dark else self._theme.ink
        room = self._grid.gutter // 2
        if selected:
            # Inside the ring there are 4 px; the collar keeps its beat in them.
            if self.still or self.collar_lit:
                edges.draw_collar(painter, color, rect, 2.5, self._off - 3)
        elif self.still:
            edges.draw_collar(painter, color, rect, 6, room - 6)
        elif self.collar_lit:
            edges.draw_collar(painter, color, rect, 4, room - 4)
