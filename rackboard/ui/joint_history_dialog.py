"""The joint's record in a dialog: its facts above, what happened below."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtWidgets import QGridLayout, QTableView, QWidget

from rackboard.core.standing import Standing
from rackboard.services.portrait import joint_record, portrait
from rackboard.ui.board_presenter import BoardPresenter
from rackboard.ui.curve_table import CurveTableDialog, dress_table
from rackboard.ui.dialog import Dialog
from rackboard.ui.joint_history import JointHistory, Line
from rackboard.ui.joint_sheet_file import save_joint_sheet
from rackboard.ui.language import say
from rackboard.ui.session import Session

_Index = QModelIndex | QPersistentModelIndex
_WIDE, _HIGH = (1240, 900), (900, 720)
_FACT_COLUMNS = 3


class HistoryModel(QAbstractTableModel):
    """What happened to a joint: when, what, and who said so."""

    def __init__(self) -> None:
        super().__init__()
        self._lines: tuple[Line, ...] = ()

    def show_lines(self, lines: tuple[Line, ...]) -> None:
        """Show other lines."""
        if lines == self._lines:
            return
        same = [line.key for line in lines] == [line.key for line in self._lines]
        if same and lines:
            self._lines = lines
            self.dataChanged.emit(self.index(0, 0), self.index(len(lines) - 1, 2))
            return
        self.beginResetModel()
        self._lines = lines
        self.endResetModel()

    def rowCount(self, parent: _Index = QModelIndex()) -> int:  # noqa: B008
        """Return how many lines there are."""
        return 0 if parent.isValid() else len(self._lines)

    def columnCount(self, parent: _Index = QModelIndex()) -> int:  # noqa: B008
        """Return when, what, who."""
        return 0 if parent.isValid() else 3

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return a cell's text, for the screen and for a screen reader."""
        if not index.isValid():
            return None
        line = self._lines[index.row()]
        cells = (line.time, line.what, line.by)
        if role == Qt.ItemDataRole.DisplayRole:
            return cells[index.column()]
        if role in (Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole):
            return ", ".join(cell for cell in cells if cell)
        return None

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:
        """Return a column's head."""
        if orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return (say("History", "When"), say("History", "What"), say("History", "Who"))[section]
        return None


class JointHistoryDialog(Dialog):
    """The record of one joint.

    Parameters
    ----------
    session : Session
        The open shop.
    standing : Standing
        The joint.
    """

    def __init__(
        self, session: Session, standing: Standing, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._session = session
        self._joint_id = standing.joint.id
        self._standing = standing
        title = say("History", "Record of the joint: {club}, job {job}").format(
            club=standing.club.name, job=standing.job.number
        )
        content = self.frame(title)
        self.facts = QGridLayout()
        self.facts.setHorizontalSpacing(self.gap)
        self.facts.setVerticalSpacing(6 if self.roles.large else 3)
        content.addLayout(self.facts)
        content.addWidget(self.rule())
        self.rows = HistoryModel()
        self.table = QTableView()
        self.table.setModel(self.rows)
        dress_table(self.table, self.roles, stretch=1)
        self.table.setAccessibleName(say("History", "What happened"))
        content.addWidget(self.table, 1)
        self.add_buttons("", say("History", "Close"))
        self.as_table = self.button(say("Inspector", "Curve as a table…"))
        self.as_table.clicked.connect(self._on_table_clicked)
        self.save = self.button(say("Inspector", "Save curve as PDF…"))
        self.save.clicked.connect(self._on_save_clicked)
        for button in (self.as_table, self.save):
            self.buttons.addButton(button, self.buttons.ButtonRole.ActionRole)
        self.show_record()
        session.acted.connect(self._on_acted)
        self.table.setFocus()
        self.fit(*(_WIDE if self.roles.large else _HIGH))

    def show_record(self) -> None:
        """Show the record as it stands."""
        board = self._session.board
        for standing in board.standings:
            if standing.joint.id == self._joint_id:
                self._standing = standing
        standing = self._standing
        presenter = BoardPresenter(board, self._session.clock.now(), self._session.unit)
        record = joint_record(self._session.store, board, standing)
        picture = portrait(board, standing)
        history = JointHistory(presenter, standing, record)
        self._show_facts(history.facts(picture))
        self.rows.show_lines(history.lines())
        self.as_table.setEnabled(picture is not None and not presenter.stale)
        self.save.setEnabled(picture is not None and not presenter.stale)
        if self.table.currentIndex().row() < 0:
            self.table.setCurrentIndex(self.rows.index(self.rows.rowCount() - 1, 0))

    def _show_facts(self, facts: tuple[tuple[str, str], ...]) -> None:
        while (item := self.facts.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.deleteLater()
        rows = -(-len(facts) // _FACT_COLUMNS)
        for number, (name, value) in enumerate(facts):
            column, line = divmod(number, rows)
            self.facts.addWidget(self.label(name, tone="sub"), line, 2 * column)
            shown = self.label(value, self.roles.fact_bold, wrap=True)
            shown.setAccessibleName(f"{name}: {value}")
            self.facts.addWidget(shown, line, 2 * column + 1)
            self.facts.setColumnStretch(2 * column + 1, 1)

    def _on_acted(self, changes: object) -> None:
        del changes
        self.show_record()

    def _on_table_clicked(self) -> None:
        CurveTableDialog(self._session, self._standing, self).open()

    def _on_save_clicked(self) -> None:
        save_joint_sheet(self._session, self._standing, self)
