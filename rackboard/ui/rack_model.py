"""One list model for all rows of the board: immutable values, compared, never reset on a tick."""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from typing import Protocol

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
    Signal,
)

ID_ROLE = int(Qt.ItemDataRole.UserRole)
ROW_ROLE = ID_ROLE + 1
_NO_PARENT = QModelIndex()


class Row(Protocol):
    """A display value that a list can show."""

    @property
    def key(self) -> Hashable:
        """The id of the row."""

    @property
    def accessible(self) -> str:
        """What a screen reader says."""


class RowModel(QAbstractListModel):
    """Rows shown by one view; `show_rows` tells the view only of what differs.

    Signals
    -------
    rows_replaced(tuple)
        The former values of the rows that `dataChanged` is about to announce.
    """

    rows_replaced = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._rows: tuple[Row, ...] = ()

    def show_rows(self, rows: Sequence[Row]) -> None:
        """Take new rows.

        With the same ids in the same order only the changed rows are announced, in runs;
        otherwise the model is reset.
        """
        fresh = tuple(rows)
        old = self._rows
        if [row.key for row in fresh] != [row.key for row in old]:
            self.beginResetModel()
            self._rows = fresh
            self.endResetModel()
            return
        changed = [at for at, row in enumerate(fresh) if row is not old[at] and row != old[at]]
        self._rows = fresh
        if changed:
            self.rows_replaced.emit(tuple(old[at] for at in changed))
        for at in changed:  # of a run the view would paint all that lies between its ends
            self.dataChanged.emit(self.index(at), self.index(at))

    def row(self, number: int) -> Row:
        """Return a row."""
        return self._rows[number]

    def rows(self) -> tuple[Row, ...]:
        """Return all rows."""
        return self._rows

    def find(self, key: Hashable) -> int:
        """Return the number of the row with an id, or -1."""
        return next((at for at, row in enumerate(self._rows) if row.key == key), -1)

    def rowCount(self, parent: QModelIndex | QPersistentModelIndex = _NO_PARENT) -> int:
        """Return the number of rows."""
        return 0 if parent.isValid() else len(self._rows)

    def data(
        self,
        index: QModelIndex | QPersistentModelIndex,
        role: int = int(Qt.ItemDataRole.DisplayRole),
    ) -> object:
        """Return the row, its id, or what a screen reader says of it."""
        if not index.isValid():
            return None
        row = self._rows[index.row()]
        if role == ROW_ROLE:
            return row
        if role == ID_ROLE:
            return row.key
        if role in (Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.DisplayRole):
            return row.accessible
        return None
