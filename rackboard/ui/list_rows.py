"""A list of two-column lines for dialogs: what it is on the left, a fact on the right."""

from __future__ import annotations

from typing import Any, NamedTuple

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QPersistentModelIndex,
    QRectF,
    QSize,
    Qt,
)
from PySide6.QtGui import QPainter, QPen
from PySide6.QtWidgets import (
    QAbstractItemView,
    QListView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from rackboard.ui import type
from rackboard.ui.theme import Theme
from rackboard.ui.type import Align, Roles

_Index = QModelIndex | QPersistentModelIndex
LINE_ROLE = Qt.ItemDataRole.UserRole


class Line(NamedTuple):
    """One line; `key` is what the dialog knows it by."""

    key: Any
    text: str
    fact: str = ""


class Lines(QAbstractListModel):
    """Immutable lines."""

    def __init__(self) -> None:
        super().__init__()
        self._lines: tuple[Line, ...] = ()

    def show_lines(self, lines: tuple[Line, ...]) -> None:
        """Show others."""
        if lines != self._lines:
            self.beginResetModel()
            self._lines = lines
            self.endResetModel()

    def lines(self) -> tuple[Line, ...]:
        """Return what is shown."""
        return self._lines

    def rowCount(self, parent: _Index = QModelIndex()) -> int:  # noqa: B008
        """Return how many there are."""
        return 0 if parent.isValid() else len(self._lines)

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return the line, or its words."""
        if not index.isValid():
            return None
        line = self._lines[index.row()]
        if role == LINE_ROLE:
            return line
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            return f"{line.text}, {line.fact}" if line.fact else line.text
        return None


class LineDelegate(QStyledItemDelegate):
    """Paints a line; the chosen one has the ring while the list has the focus."""

    def __init__(self, theme: Theme, roles: Roles, parent: QWidget) -> None:
        super().__init__(parent)
        self.theme, self.roles = theme, roles

    def sizeHint(self, option: QStyleOptionViewItem, index: _Index) -> QSize:
        """Return the height of a line that a finger can hit."""
        del option, index
        return QSize(200, 46 if self.roles.large else 36)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: _Index) -> None:
        """Paint it."""
        line: Line = index.data(LINE_ROLE)
        theme, roles = self.theme, self.roles
        state: QStyle.StateFlag = option.state
        rect = QRectF(option.rect).adjusted(4, 2, -4, -2)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if state & QStyle.StateFlag.State_Selected:
            focus = bool(state & QStyle.StateFlag.State_HasFocus)
            painter.setBrush(theme.surf2)
            painter.setPen(QPen(theme.ring if focus else theme.edge, 3 if focus else 1.5))
            painter.drawRoundedRect(rect.adjusted(1, 1, -1, -1), 7, 7)
        pad = 14.0
        baseline = rect.center().y() + type.cap_height(roles.fact) / 2
        taken = type.draw(painter, roles.fact, rect.right() - pad, baseline, line.fact, theme.sub,
                          Align.RIGHT)  # fmt: skip
        room = rect.width() - 3 * pad - taken
        shown = type.fitting(roles.fact_bold, line.text, room)
        type.draw(painter, roles.fact_bold, rect.left() + pad, baseline, shown, theme.text)
        painter.restore()


class LineList(QListView):
    """The view of `Lines`.

    Parameters
    ----------
    name : str
        Accessible name.
    """

    def __init__(self, name: str, theme: Theme, roles: Roles) -> None:
        super().__init__()
        self.lines_model = Lines()
        self.setModel(self.lines_model)
        self._delegate = LineDelegate(theme, roles, self)
        self.setItemDelegate(self._delegate)
        self.setAccessibleName(name)
        self.setUniformItemSizes(True)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)

    def show_lines(self, lines: tuple[Line, ...]) -> None:
        """Show others; the first is chosen unless the chosen one is still there."""
        chosen = self.chosen()
        self.lines_model.show_lines(lines)
        keys = [line.key for line in lines]
        at = keys.index(chosen.key) if chosen is not None and chosen.key in keys else 0
        if lines:
            self.setCurrentIndex(self.lines_model.index(at))

    def chosen(self) -> Line | None:
        """Return the chosen line."""
        index = self.currentIndex()
        found = index.data(LINE_ROLE) if index.isValid() else None
        return found if isinstance(found, Line) else None

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        self._delegate.theme = theme
        self.viewport().update()
