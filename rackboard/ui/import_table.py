"""The first lines of a logger's file, as a table."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt

from rackboard.ui import import_view

_Index = QModelIndex | QPersistentModelIndex


class FirstLines(QAbstractTableModel):
    """The first lines of a file and what each was read as."""

    def __init__(self) -> None:
        super().__init__()
        self._rows: tuple[import_view.Row, ...] = ()
        self._heads: list[str] = []
        self._cells = 0

    def show_rows(self, rows: tuple[import_view.Row, ...], columns: tuple[str, ...]) -> None:
        """Show other lines under the file's own heads."""
        self.beginResetModel()
        self._rows = rows
        self._cells = max((len(row.cells) for row in rows), default=0)
        heads = [columns[i] if i < len(columns) else "" for i in range(self._cells)]
        own = (self.tr("Line"), self.tr("Read as, shop's time"), self.tr("Temperature"))
        self._heads = [*own, *heads]
        self.endResetModel()

    def rowCount(self, parent: _Index = QModelIndex()) -> int:  # noqa: B008
        """Return how many lines there are."""
        return 0 if parent.isValid() else len(self._rows)

    def columnCount(self, parent: _Index = QModelIndex()) -> int:  # noqa: B008
        """Return the readings' three columns and the file's own."""
        return 0 if parent.isValid() else len(self._heads)

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return a cell's text."""
        if not index.isValid() or role not in (
            Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole,
        ):  # fmt: skip
            return None
        row = self._rows[index.row()]
        own = (row.line, row.at, row.temperature, *row.cells)
        return own[index.column()] if index.column() < len(own) else ""

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:
        """Return a column's head."""
        if orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return self._heads[section]
        return None
