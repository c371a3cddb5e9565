"""The head over a rack: its name, how warm, which rows are in sight, the other racks."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPaintEvent, QPolygonF
from PySide6.QtWidgets import QWidget

from rackboard.ui import type
from rackboard.ui.grid import Grid
from rackboard.ui.shortening import shortened
from rackboard.ui.theme import Theme
from rackboard.ui.type import Align, Roles

_ARROW_W = 73.0


class RackHead(QWidget):
    """Painted; the arrows and the names of the other racks take taps (keys: PgUp, Ctrl+1…9).

    Signals
    -------
    page_chosen(int)
        Another rack, counted from 0.
    lines_scrolled(int)
        One row up (-1) or down (1).
    """

    page_chosen = Signal(int)
    lines_scrolled = Signal(int)

    def __init__(self, theme: Theme, grid: Grid, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._title = self._subtitle = self._sight = ""
        self._others: tuple[tuple[int, str], ...] = ()
        self._taps: list[tuple[QRectF, Signal | object, int]] = []
        self._arrows = (False, False)
        self.show_grid(theme, grid)

    def show_grid(self, theme: Theme, grid: Grid) -> None:
        """Take another scheme or size."""
        self._theme, self._grid, self._roles = theme, grid, Roles(large=grid.large)
        self.update()

    def show_head(
        self,
        title: str,
        subtitle: str,
        others: tuple[tuple[int, str], ...] = (),
        sight: str = "",
        arrows: tuple[bool, bool] = (False, False),
    ) -> None:
        """Show the rack's words; `sight` says which rows are shown and what is out of sight."""
        fresh = (title, subtitle, others, sight, arrows)
        if fresh == (self._title, self._subtitle, self._others, self._sight, self._arrows):
            return
        self._title, self._subtitle, self._others, self._sight, self._arrows = fresh
        self.setAccessibleName(", ".join(part for part in (title, subtitle, sight) if part))
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the words and remember where the taps are."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, roles, large = self._theme, self._roles, self._grid.large
        baseline = 18.0 * self.height() / 28 if large else 13.0
        self._taps = []
        x = type.draw(painter, roles.head, 0, baseline, self._title, theme.text)
        x += 12
        x += type.draw(painter, roles.fact, x, baseline, self._subtitle_within(x), theme.sub)
        for page, name in self._others:
            x += 24
            wide = type.draw(painter, roles.head, x, baseline, name, theme.dim)
            area = QRectF(x - 11, 0, wide + 22, self.height())
            painter.fillRect(QRectF(x, baseline + 4, wide, 1.5), theme.dim)
            self._taps.append((area, self.page_chosen, page))
            x += wide
        right = float(self.width())
        if any(self._arrows):
            for step, shown in ((1, self._arrows[1]), (-1, self._arrows[0])):
                right -= _ARROW_W
                area = QRectF(right, 0, _ARROW_W, self.height())
                self._arrow(painter, area, step, shown=shown)
                if shown:
                    self._taps.append((area, self.lines_scrolled, step))
            right -= 6
        if self._sight:
            type.draw(painter, roles.fact, right, baseline, self._sight, theme.text, Align.RIGHT)
        painter.end()

    def _subtitle_within(self, x: float) -> str:
        """Return the subtitle as far as the other racks and the rows in sight leave it room."""
        roles = self._roles
        taken = sum(type.width(roles.head, name) + 24 for _, name in self._others)
        if self._sight:
            taken += type.width(roles.fact, self._sight) + 12
        if any(self._arrows):
            taken += 2 * _ARROW_W + 6
        return shortened(roles.fact, self._subtitle, self.width() - x - taken)

    def _arrow(self, painter: QPainter, area: QRectF, step: int, *, shown: bool) -> None:
        theme = self._theme
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(theme.text if shown else theme.line)
        x, y = area.center().x(), area.center().y() - 2
        base = y - 4 * step
        corners = [QPointF(x - 8, base), QPointF(x + 8, base), QPointF(x, y + 4 * step)]
        painter.drawPolygon(QPolygonF(corners))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Answer a tap."""
        for area, signal, value in self._taps:
            if area.contains(event.position()):
                signal.emit(value)  # type: ignore[union-attr]
                return
        event.ignore()
