"""What happened, for a table: rows come page by page as one scrolls."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt

from rackboard.services.alert_log import Entry
from rackboard.store.alert_pages import Cursor
from rackboard.ui.alerts_presenter import Row, heads

_Index = QModelIndex | QPersistentModelIndex
Page = tuple[list[Entry], Cursor | None]
Reader = Callable[[int, Cursor | None], Page]
"""Reads at most so many entries after a cursor."""
FIRST, FURTHER = 100, 400
"""How many rows are read at once."""
ID_ROLE = Qt.ItemDataRole.UserRole


class AlertsModel(QAbstractTableModel):
    """Rows of the journal, the latest first.

    Parameters
    ----------
    read : Reader
        Reads the pages.
    again : callable
        Reads entries by their ids.
    said : callable
        Makes the row of an entry.
    """

    def __init__(
        self, read: Reader, again: Callable[[list[int]], list[Entry]],
        said: Callable[[Entry], Row],
    ) -> None:  # fmt: skip
        super().__init__()
        self._read = read
        self._again = again
        self._said = said
        self._rows: list[Row] = []
        self._after: Cursor | None = None
        self._heads = heads()

    @property
    def complete(self) -> bool:
        """Whether there is no further page."""
        return self._after is None

    def reload(self, *, anew: bool = False) -> None:
        """Read the first page again, and what is open further down; all keeps its place.

        Parameters
        ----------
        anew : bool, optional
            Something else is wanted: what stood there goes.
        """
        entries, after = self._read(FIRST, None)
        rows = [self._said(entry) for entry in entries]
        same = [row.id for row in rows] == [row.id for row in self._rows[: len(rows)]]
        if not anew and rows and same and len(self._rows) >= len(rows):
            below = [row.id for row in self._rows[len(rows) :] if row.is_open]
            rows += [self._said(entry) for entry in self._again(below)] if below else []
            at = {row.id: number for number, row in enumerate(self._rows)}
            for row in rows:
                number = at[row.id]
                if row != self._rows[number]:
                    self._rows[number] = row
                    self.dataChanged.emit(
                        self.index(number, 0), self.index(number, self.columnCount() - 1)
                    )
            return
        if not anew and rows == self._rows:
            return
        self.beginResetModel()
        self._rows, self._after = rows, after
        self.endResetModel()

    def row_of(self, alert_id: int) -> int:
        """Return where an alert stands, -1 if nowhere."""
        return next((n for n, row in enumerate(self._rows) if row.id == alert_id), -1)

    def row_at(self, number: int) -> Row | None:
        """Return a row."""
        return self._rows[number] if 0 <= number < len(self._rows) else None

    def canFetchMore(self, parent: _Index = QModelIndex()) -> bool:  # noqa: B008, N802
        """Return whether there is a further page."""
        return not parent.isValid() and self._after is not None

    def fetchMore(self, parent: _Index = QModelIndex()) -> None:  # noqa: B008, N802
        """Read the next page."""
        if parent.isValid() or self._after is None:
            return
        entries, self._after = self._read(FURTHER, self._after)
        if not entries:
            return
        first = len(self._rows)
        self.beginInsertRows(QModelIndex(), first, first + len(entries) - 1)
        self._rows += [self._said(entry) for entry in entries]
        self.endInsertRows()

    def rowCount(self, parent: _Index = QModelIndex()) -> int:  # noqa: B008
        """Return how many rows have been read."""
        return 0 if parent.isValid() else len(self._rows)

    def columnCount(self, parent: _Index = QModelIndex()) -> int:  # noqa: B008
        """Return how many columns there are."""
        return 0 if parent.isValid() else len(self._heads)

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return a cell's text; the whole row for a screen reader and a tip."""
        if not index.isValid():
            return None
        row = self._rows[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return row.cells[index.column()]
        if role in (Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole):
            return row.words
        return row.id if role == ID_ROLE else None

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:
        """Return a column's head."""
        if orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return self._heads[section]
        return None
