"""Jobs: when the glue of each is good, and the box that says READY."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, QObject, QPersistentModelIndex, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from rackboard.ui import glyphs, type
from rackboard.ui.board_view import JobRow, ReadyBox
from rackboard.ui.grid import Grid
from rackboard.ui.language import say
from rackboard.ui.rack_model import ROW_ROLE
from rackboard.ui.rack_view import RowView
from rackboard.ui.shortening import fitted, shortened
from rackboard.ui.theme import Theme
from rackboard.ui.tile import Glyph
from rackboard.ui.type import Align, Roles

SHOWN = 5
_LEAST_NAME = 40
BOX_TARGET = 44
"""Width at the right of a row that presses its box [px]."""


class JobDelegate(QStyledItemDelegate):
    """Paints one job."""

    def __init__(self, theme: Theme, grid: Grid, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.show_grid(theme, grid)

    def show_grid(self, theme: Theme, grid: Grid) -> None:
        """Take another scheme or size."""
        self._theme, self._grid, self._roles = theme, grid, Roles(large=grid.large)

    def sizeHint(
        self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> QSize:
        """Return the size of a row."""
        del option, index
        return QSize(self._grid.tile_w + 8, self._grid.tile_h // SHOWN)

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        """Paint number, customer, when good, box."""
        row = index.data(ROW_ROLE)
        if not isinstance(row, tuple):
            return
        job = JobRow(*row)
        theme, roles, large = self._theme, self._roles, self._grid.large
        cell = QRectF(option.rect).adjusted(4, 0, -4, 0)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        middle = cell.center().y()
        baseline = middle + type.cap_height(roles.fact) / 2
        size = 20 if large else 17
        box = QRectF(cell.right() - size, middle - size / 2, size, size)
        self._box(painter, box, job.ready)
        right = box.left() - (12 if large else 8)
        color = theme.text if job.strong else theme.sub
        usual = roles.fact_bold if job.strong else roles.fact
        # A long number gives way to when the glue is good, which nothing else here says.
        least = min(type.width(roles.fact_narrow, job.number), 0.3 * (right - cell.left()))
        style, good = fitted(
            (usual, roles.fact_narrow), job.good, right - cell.left() - least - 6
        )
        right -= type.draw(painter, style, right, baseline, good, color, Align.RIGHT)
        style, number = fitted(
            (roles.fact_bold, roles.fact_narrow), job.number, right - 6 - cell.left()
        )
        x = cell.left() + type.draw(painter, style, cell.left(), baseline, number, theme.text)
        if large and right - x > _LEAST_NAME:
            x += 8
            style, customer = fitted(
                (roles.fact, roles.fact_narrow), job.customer, right - 10 - x
            )
            type.draw(painter, style, x, baseline, customer, theme.sub)
        if (index.row() + 1) % SHOWN and index.row() + 1 < index.model().rowCount():
            painter.fillRect(QRectF(cell.left(), cell.bottom(), cell.width(), 1), theme.line)
        if option.state & QStyle.StateFlag.State_Selected:
            painter.setPen(QPen(theme.ring, 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(cell.adjusted(-3, 2, 3, -1), 6, 6)

    def _box(self, painter: QPainter, box: QRectF, ready: ReadyBox) -> None:
        theme = self._theme
        painter.setBrush(Qt.BrushStyle.NoBrush)
        if ready is ReadyBox.PRESSED:
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(theme.text)
            painter.drawRoundedRect(box, 4, 4)
            size = box.width() - 6
            glyphs.draw(painter, Glyph.TICK, box.x() + 3, box.y() + 3, size, theme.bg)
            return
        good = ready is ReadyBox.GOOD
        painter.setPen(QPen(theme.text if good else theme.out, 2.2 if good else 1.5))
        painter.drawRoundedRect(box.adjusted(1, 1, -1, -1), 4, 4)


class JobsList(RowView):
    """The rows; the box's end of a row presses READY, the rest opens the job."""

    ready_clicked = Signal(object)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Tell box and row apart."""
        index = self.indexAt(event.position().toPoint())
        if index.isValid() and event.position().x() >= self.viewport().width() - BOX_TARGET:
            self.ready_clicked.emit(self.key(index))
            return
        super().mouseReleaseEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Space presses the box, Enter opens the job."""
        if event.key() == Qt.Key.Key_Space and self.currentIndex().isValid():
            self.ready_clicked.emit(self.key(self.currentIndex()))
            return
        super().keyPressEvent(event)


class JobsPanel(QWidget):
    """Jobs with their head; more than five scroll by whole rows.

    Signals
    -------
    job_clicked(int)
        The job's row was tapped or entered.
    ready_clicked(int)
        The job's box was pressed.
    """

    job_clicked = Signal(int)
    ready_clicked = Signal(int)

    def __init__(self, theme: Theme, grid: Grid, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._delegate = JobDelegate(theme, grid, self)
        self.list = JobsList(self)
        self.list.setItemDelegate(self._delegate)
        self.list.setAccessibleName(say("Jobs", "Jobs: when the glue is good, and ready"))
        self.list.row_activated.connect(self._on_row_activated)
        self.list.ready_clicked.connect(self._on_ready_clicked)
        self.list.verticalScrollBar().valueChanged.connect(self.update)
        self.show_grid(theme, grid)

    def show_grid(self, theme: Theme, grid: Grid) -> None:
        """Take another scheme or size."""
        self._theme, self._grid, self._roles = theme, grid, Roles(large=grid.large)
        self._delegate.show_grid(theme, grid)
        self.list.set_cells(QSize(grid.tile_w + 8, grid.tile_h // SHOWN), 1, SHOWN)
        self.list.move(0, grid.head)
        self.update()

    def show_jobs(self, jobs: tuple[JobRow, ...]) -> None:
        """Show other jobs."""
        if jobs != self.list.rows_model.rows():
            self.list.rows_model.show_rows(jobs)
            self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the head."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, roles, grid = self._theme, self._roles, self._grid
        baseline = head_baseline(grid, roles)
        head, ready = say("Jobs", "Jobs"), say("Jobs", "ready")
        x = 4 + type.draw(painter, roles.head, 4, baseline, head, theme.text)
        rows = self.list.rows_model.rowCount()
        right = 4.0 + grid.tile_w
        right -= 14 + type.draw(
            painter, roles.small, right, baseline, ready, theme.sub, Align.RIGHT
        )
        if rows > SHOWN:
            first = self.list.first_line()
            last = min(first + SHOWN, rows)
            text = say("Jobs", "{first} to {last} of {count}").format(
                first=first + 1, last=last, count=rows
            )
            if type.width(roles.small, text) > right - x - 22:
                text = f"{first + 1}–{last}/{rows}"
            type.draw(painter, roles.small, x + 8, baseline, text, theme.sub)
            _more(painter, theme.sub, x + 12 + type.width(roles.small, text), baseline)
        else:
            good = shortened(roles.small, say("Jobs", "glue good"), right - x - 8)
            type.draw(painter, roles.small, right, baseline, good, theme.sub, Align.RIGHT)
        painter.end()

    def _on_row_activated(self, key: int) -> None:
        self.job_clicked.emit(key)

    def _on_ready_clicked(self, key: int) -> None:
        self.ready_clicked.emit(key)


def head_baseline(grid: Grid, roles: Roles) -> float:
    """Return the baseline of a head inside its strip of height."""
    return grid.head / 2 - (2 if grid.large else 1) + type.cap_height(roles.head) / 2


def _more(painter: QPainter, color: QColor, x: float, baseline: float) -> None:
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(color)
    triangle = QPolygonF([QRectF(x + 4, baseline - 8, 10, 7).topLeft(),
                          QRectF(x + 4, baseline - 8, 10, 7).topRight(),
                          QRectF(x + 9, baseline - 1, 0, 0).topLeft()])  # fmt: skip
    painter.drawPolygon(triangle)
