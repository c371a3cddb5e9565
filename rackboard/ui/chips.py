"""Off the rack, still curing: a slim row of up to four clubs."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, QObject, QPersistentModelIndex, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem, QWidget

from rackboard.core.words import Word
from rackboard.ui import glyphs, type
from rackboard.ui.board_view import Chip
from rackboard.ui.grid import Grid
from rackboard.ui.language import say
from rackboard.ui.rack_model import ROW_ROLE
from rackboard.ui.rack_view import RowView
from rackboard.ui.shortening import fitted
from rackboard.ui.theme import Theme
from rackboard.ui.tile import WORD_GLYPHS
from rackboard.ui.type import Align, Roles

PLACES = 4
RIM = 4
"""Room above a chip for its ring [px]."""


def cell_size(grid: Grid) -> QSize:
    """Return a chip's cell: to the bottom of the window, so that a gloved tap finds it.

    44 or 31 px are less than a target should have; the margin below is given to it.
    """
    return QSize(grid.tile_w + grid.gutter, RIM + grid.slim + grid.bottom)



class ChipDelegate(QStyledItemDelegate):
    """Paints one chip in its cell."""

    def __init__(self, theme: Theme, grid: Grid, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.show_grid(theme, grid)

    def show_grid(self, theme: Theme, grid: Grid) -> None:
        """Take another scheme or size."""
        self._theme, self._grid, self._roles = theme, grid, Roles(large=grid.large)

    def sizeHint(
        self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> QSize:
        """Return the size of a cell."""
        del option, index
        return cell_size(self._grid)

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        """Paint the chip, or an outline where none is."""
        chip = index.data(ROW_ROLE)
        if not isinstance(chip, tuple):
            return
        value = Chip(*chip)
        grid, theme = self._grid, self._theme
        cell = QRectF(option.rect)
        rect = QRectF(cell.x() + grid.gutter // 2, cell.y() + RIM, grid.tile_w, grid.slim)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if not value.club:
            painter.setPen(QPen(theme.line, 1.5))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(rect.adjusted(0.75, 0.75, -0.75, -0.75), 6, 6)
            return
        painter.setPen(Qt.PenStyle.NoPen if theme.dark else QPen(theme.line, 1))
        painter.setBrush(theme.surf)
        painter.drawRoundedRect(rect, 6, 6)
        x = rect.left() + 10
        if value.word is not None:
            x = self._plate(painter, rect, value.word)
        self._texts(painter, rect, x, value)
        if option.state & QStyle.StateFlag.State_Selected:
            painter.setPen(QPen(theme.ring, 3))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(rect.adjusted(-2, -2, 2, 2), 8, 8)

    def _plate(self, painter: QPainter, rect: QRectF, word: Word) -> float:
        theme, large = self._theme, self._grid.large
        wide = 40 if large else 26
        shape = QPainterPath()
        shape.setFillRule(Qt.FillRule.WindingFill)
        shape.addRoundedRect(QRectF(rect.x(), rect.y(), wide, rect.height()), 6, 6)
        shape.addRect(QRectF(rect.x() + 8, rect.y(), wide - 8, rect.height()))
        shape = shape.simplified()
        painter.fillPath(shape, theme.fills[word])
        if not theme.dark and word is not Word.WAIT:
            painter.strokePath(shape, QPen(theme.ink, 1.5))
        size = 24 if large else 17
        glyphs.draw(
            painter,
            WORD_GLYPHS[word],
            rect.x() + (wide - size) / 2,
            rect.center().y() - size / 2,
            size,
            theme.on_fill(word),
        )
        return rect.x() + wide + (10 if large else 6)

    def _texts(self, painter: QPainter, rect: QRectF, x: float, chip: Chip) -> None:
        theme, roles, large = self._theme, self._roles, self._grid.large
        pitch = 19.0 if large else 14.5
        middle = rect.center().y() + type.cap_height(roles.fact) / 2
        upper, lower = middle - pitch / 2, middle + pitch / 2
        right = rect.right() - 8
        if not chip.time:
            style, club = fitted((roles.fact_bold, roles.fact_narrow), chip.club, right - x)
            type.draw(painter, style, x, middle, club, theme.text)
            return
        taken = 0.0
        first = chip.club if large else f"{chip.club}, {chip.place_short}"
        if large:
            taken = 8 + type.draw(
                painter, roles.fact, right, upper, chip.job, theme.sub, Align.RIGHT
            )
        room = right - x - taken
        style, first = fitted((roles.fact_bold, roles.fact_narrow), first, room)
        type.draw(painter, style, x, upper, first, theme.text)
        lead = f"{chip.place}, {chip.caption}" if large else chip.caption
        room = right - x - type.width(roles.small_bold, chip.time) - 4
        if type.width(roles.small, lead) > room:
            lead = f"{chip.place_short}, {chip.caption}" if large else chip.caption
        if type.width(roles.small, lead) > room:
            lead = chip.caption
        x += type.draw(painter, roles.small, x, lower, lead, theme.sub) + 4
        type.draw(painter, roles.small_bold, x, lower, chip.time, theme.text)


def _blank(number: int) -> Chip:
    return Chip(-1 - number, None, "", "", "", "", "", "", "")


class ChipsRow(RowView):
    """The four chips; a fifth club turns the last one into "+ 2"."""

    def __init__(self, theme: Theme, grid: Grid, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._delegate = ChipDelegate(theme, grid, self)
        self.setItemDelegate(self._delegate)
        self.setAccessibleName(say("Chips", "Off the rack, still curing: do not hit"))
        self.show_chips(())
        self.show_grid(theme, grid)

    def show_grid(self, theme: Theme, grid: Grid) -> None:
        """Take another scheme or size."""
        self._delegate.show_grid(theme, grid)
        self.set_cells(cell_size(grid), PLACES, 1)

    def show_chips(self, chips: tuple[Chip, ...]) -> None:
        """Show other clubs."""
        shown = list(chips)
        if len(shown) > PLACES:
            more = len(shown) - PLACES + 1
            said = say("Chips", "%n more clubs off the rack", "%n more club off the rack", more)
            shown = shown[: PLACES - 1]
            shown.append(Chip(0, None, f"+ {more}", "", "", "", "", "", said))
        shown += [_blank(number) for number in range(len(shown), PLACES)]
        self.rows_model.show_rows(shown)


