"""The view of one rack: a fixed grid of cells that scrolls by whole rows."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QModelIndex, QPoint, QSize, Qt, QVariantAnimation, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPalette, QWheelEvent
from PySide6.QtWidgets import QApplication, QFrame, QListView, QWidget

from rackboard.ui.grid import Grid
from rackboard.ui.rack_model import RowModel
from rackboard.ui.tile import Tile
from rackboard.ui.tile_delegate import TileDelegate

if TYPE_CHECKING:
    from rackboard.ui.drag_ghost import DragGhost

_STEPS: dict[int, tuple[int, int]] = {
    Qt.Key.Key_Left: (0, -1),
    Qt.Key.Key_Right: (0, 1),
    Qt.Key.Key_Up: (-1, 0),
    Qt.Key.Key_Down: (1, 0),
}
FADE_MS = 160
_ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter)


class RowView(QListView):
    """A list in fixed cells: one tap activates, nothing moves, and nothing needs drag.

    Attributes
    ----------
    draggable : bool
        Whether a row can be dragged out of its cell; Esc lets it go.

    Signals
    -------
    row_activated(object)
        The id of the row that was tapped or entered.
    row_selected(object)
        The id of the row that became current by key or tap.
    left(int, int)
        An arrow went over the upper (-1) or lower (1) edge, in this column.
    dropped(object, QPoint)
        A row was dragged there, in global coordinates.
    """

    row_activated = Signal(object)
    row_selected = Signal(object)
    left = Signal(int, int)
    dropped = Signal(object, QPoint)
    draggable = False
    _pressed: QPoint | None = None
    _pressed_key: object = None
    _ghost: DragGhost | None = None

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.rows_model = RowModel(self)
        self.setModel(self.rows_model)
        self.setViewMode(QListView.ViewMode.IconMode)
        self.setMovement(QListView.Movement.Static)
        self.setResizeMode(QListView.ResizeMode.Fixed)
        self.setFlow(QListView.Flow.LeftToRight)
        self.setWrapping(True)
        self.setUniformItemSizes(True)
        self.setSelectionMode(QListView.SelectionMode.SingleSelection)
        self.setSelectionRectVisible(False)
        self.setEditTriggers(QListView.EditTrigger.NoEditTriggers)
        self.setDragEnabled(False)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAutoScroll(False)
        # Not by viewport(): the first call that returns a QWidget costs 9 ms of the first paint.
        clear = self.palette()
        clear.setColor(QPalette.ColorRole.Base, Qt.GlobalColor.transparent)
        self.setPalette(clear)
        self.columns = 1
        self.shown_rows = 1
        self._cell = QSize(1, 1)

    def set_cells(self, cell: QSize, columns: int, shown_rows: int) -> None:
        """Take the size of a cell and how many are in sight; the view gets just that big."""
        self.columns, self.shown_rows, self._cell = columns, shown_rows, cell
        self.setGridSize(cell)
        # One px more than the cells, or the last column wraps.
        self.resize(cell.width() * columns + 1, cell.height() * shown_rows)
        self.verticalScrollBar().setSingleStep(cell.height())
        self.verticalScrollBar().setPageStep(cell.height() * shown_rows)
        self.scheduleDelayedItemsLayout()

    def key(self, index: QModelIndex) -> object:
        """Return the id of a row."""
        return self.rows_model.row(index.row()).key

    def select(self, row: int) -> None:
        """Make a row current, bring it into sight and say so."""
        if not 0 <= row < self.rows_model.rowCount():
            return
        index = self.rows_model.index(row)
        self.setCurrentIndex(index)
        self._show_line(row // self.columns)
        self.row_selected.emit(self.key(index))

    def first_line(self) -> int:
        """Return the number of the uppermost line in sight."""
        return round(self.verticalScrollBar().value() / self._cell.height())

    def lines(self) -> int:
        """Return how many lines there are."""
        return -(-self.rows_model.rowCount() // self.columns)

    def scroll_lines(self, by: int) -> None:
        """Scroll by whole lines."""
        top = min(max(self.first_line() + by, 0), max(self.lines() - self.shown_rows, 0))
        bar = self.verticalScrollBar()
        bar.setMaximum(max(bar.maximum(), top * self._cell.height()))
        bar.setValue(top * self._cell.height())

    def _show_line(self, line: int) -> None:
        first = self.first_line()
        if line < first:
            self.scroll_lines(line - first)
        elif line >= first + self.shown_rows:
            self.scroll_lines(line - first - self.shown_rows + 1)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows walk the cells and over the edge; Enter and space activate."""
        key = event.key()
        if key == Qt.Key.Key_Escape and self._ghost is not None:
            self._let_go()
            return
        current = self.currentIndex()
        if key in _STEPS and not event.modifiers() & ~Qt.KeyboardModifier.KeypadModifier:
            self._walk(current.row() if current.isValid() else -1, *_STEPS[key])
            return
        if key in (*_ENTER, Qt.Key.Key_Space):
            if current.isValid():
                self.row_activated.emit(self.key(current))
            return
        if key in (Qt.Key.Key_Home, Qt.Key.Key_End):
            self.select(0 if key == Qt.Key.Key_Home else self.rows_model.rowCount() - 1)
            return
        event.ignore()

    def _walk(self, row: int, down: int, right: int) -> None:
        if row < 0:
            self.select(0)
            return
        line, column = divmod(row, self.columns)
        column += right
        line += down
        if not 0 <= column < self.columns:
            return
        if not 0 <= line < self.lines():
            self.left.emit(down, column)
            return
        self.select(min(line * self.columns + column, self.rows_model.rowCount() - 1))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Select what is tapped."""
        index = self.indexAt(event.position().toPoint())
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        if index.isValid() and event.button() is Qt.MouseButton.LeftButton:
            self.select(index.row())
            self._pressed, self._pressed_key = event.position().toPoint(), self.key(index)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Take a tile along, once it is clear that this is no tap."""
        event.accept()
        if not self.draggable or self._pressed is None:
            return
        at = event.position().toPoint()
        index = self.indexAt(self._pressed)
        if self._ghost is None:
            far = (at - self._pressed).manhattanLength() >= QApplication.startDragDistance()
            if not far or not index.isValid():
                return
            from rackboard.ui.drag_ghost import DragGhost

            self._ghost = DragGhost(self.viewport(), self.visualRect(index), self._pressed)
        self._ghost.follow(self.viewport().mapToGlobal(at))

    def _let_go(self) -> None:
        self._pressed = None
        if self._ghost is not None:
            self._ghost.hide()
            self._ghost.deleteLater()
            self._ghost = None

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Activate what was tapped, or drop what was dragged."""
        dragged = self._ghost is not None
        self._let_go()
        if dragged:
            at = self.viewport().mapToGlobal(event.position().toPoint())
            self.dropped.emit(self._pressed_key, at)
            return
        index = self.indexAt(event.position().toPoint())
        left = event.button() is Qt.MouseButton.LeftButton
        if left and index.isValid() and index == self.currentIndex():
            self.row_activated.emit(self.key(index))

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Take the second press as one more tap."""
        self.mousePressEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Scroll by whole lines."""
        turned = event.angleDelta().y()
        if turned:
            self.scroll_lines(-1 if turned > 0 else 1)
        event.accept()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Give the ring to the first row when nothing is current."""
        super().focusInEvent(event)
        if not self.currentIndex().isValid() and self.rows_model.rowCount():
            by_key = event.reason() in (
                Qt.FocusReason.TabFocusReason,
                Qt.FocusReason.BacktabFocusReason,
            )
            if by_key:
                self.select(0)


class RackView(RowView):
    """A rack or box."""

    def __init__(self, delegate: TileDelegate, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._delegate = delegate
        self.setItemDelegate(delegate)
        self._fade = QVariantAnimation(self)
        self._fade.setDuration(FADE_MS)
        self._fade.setStartValue(0.0)
        self._fade.setEndValue(1.0)
        self._fade.valueChanged.connect(self._on_faded)
        self._fade.finished.connect(self._on_fade_finished)
        self.rows_model.rows_replaced.connect(self._on_rows_replaced)

    def _on_rows_replaced(self, former: tuple[Tile, ...]) -> None:
        """Fade plates that change their word; nothing else moves."""
        if self._delegate.still or not self.isVisible():
            return
        for tile in former:
            row = self.rows_model.row(self.rows_model.find(tile.key))
            if isinstance(row, Tile) and row.word is not tile.word:
                self._delegate.fading[tile.key] = tile
        if self._delegate.fading:
            self._fade.stop()
            self._fade.start()

    def _on_faded(self, faded: float) -> None:
        self._delegate.faded = faded
        for key in self._delegate.fading:
            row = self.rows_model.find(key)
            if row >= 0:
                self.update(self.rows_model.index(row))

    def _on_fade_finished(self) -> None:
        keys = [key for key in self._delegate.fading if self.rows_model.find(key) >= 0]
        for key in keys:
            del self._delegate.fading[key]
            self.update(self.rows_model.index(self.rows_model.find(key)))

    def show_grid(self, grid: Grid, columns: int, shown_rows: int) -> None:
        """Take the measures of the board."""
        cell = QSize(grid.tile_w + grid.gutter, grid.tile_h + grid.gutter)
        self.set_cells(cell, columns, shown_rows)
