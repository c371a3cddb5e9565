"""A logger's record taken in: shown first, asked about, then imported in one go."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QPersistentModelIndex,
    QStringListModel,
    Qt,
    Slot,
)
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFileDialog,
    QGridLayout,
    QHBoxLayout,
    QHeaderView,
    QListView,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from rackboard.core.errors import RackboardError
from rackboard.core.temperature import Unit
from rackboard.feeds.logger_csv import Answers, DateOrder, Import, Preview, Question
from rackboard.services.doubts import AHEAD_US
from rackboard.services.import_check import Compared, compare, holes
from rackboard.services.importing import Imported, import_readings
from rackboard.ui import import_view, type
from rackboard.ui.controls import Choice
from rackboard.ui.dialog import Dialog, row
from rackboard.ui.record_reader import RecordReader
from rackboard.ui.session import Session
from rackboard.ui.theme import Theme

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


class ImportDialog(Dialog):
    """Imports a logger's CSV into a zone.

    Parameters
    ----------
    session : Session
        The open shop.
    theme : Theme
        The scheme.
    zone_id : int, optional
        The zone chosen first.
    """

    def __init__(
        self,
        session: Session,
        theme: Theme,
        parent: QWidget | None = None,
        *,
        zone_id: int | None = None,
    ) -> None:
        super().__init__(theme, parent)
        self.session = session
        self._zones = sorted(session.board.snapshot.zones.values(), key=lambda z: z.sort)
        self._path: Path | None = None
        self._data: bytes | None = None
        self._answers = Answers()
        self._number = 0
        self.preview: Preview | None = None
        self.compared = Compared(0, 0, 0)
        self.imported: Imported | None = None
        self.lines = FirstLines()
        self.remarks = QStringListModel()
        self._lay_out()
        if zone_id is not None:
            ids = [zone.id for zone in self._zones]
            self.zone.setCurrentIndex(ids.index(zone_id))
        self.zone.currentIndexChanged.connect(self._on_target)
        self._show()
        self.fit(1500 if self.roles.large else 1180, 920 if self.roles.large else 740)

    # Layout

    def _lay_out(self) -> None:
        content = self.frame(
            self.tr("Import a temperature record"),
            self.tr("A logger's CSV. Importing the same file again adds nothing twice."),
        )
        large = self.roles.large
        self.choosing = self.button(self.tr("Choose file…"))
        self.choosing.clicked.connect(self._on_choose)
        self.file_name = self.label(self.tr("no file yet"), tone="sub")
        self.zone = self.choice(self.tr("Zone that the record belongs to"))
        for zone in self._zones:
            self.zone.addItem(zone.name)
        top = row(self.choosing, 16, self.file_name)
        top.addWidget(self.label(self.tr("It is the air of")))
        top.addSpacing(10)
        top.addWidget(self.zone)
        content.addLayout(top)
        columns = QHBoxLayout()
        columns.setSpacing(36 if large else 20)
        left = QWidget()
        left.setLayout(self._answer_fields())
        self.answer_area = self.scrolled(left)
        self.answer_area.setFixedWidth(470 if large else 384)
        columns.addWidget(self.answer_area)
        columns.addLayout(self._findings(), 1)
        content.addLayout(columns, 1)
        accepting = self.add_buttons(self.tr("Import"), self.tr("Cancel"))
        assert accepting is not None
        self.importing = accepting
        self.closing = self.buttons.buttons()[-1]

    def _answer_fields(self) -> QVBoxLayout:
        made = QVBoxLayout()
        made.setContentsMargins(0, 0, 12, 8)
        made.setSpacing(8)
        made.addWidget(self.heading(self.tr("How it is read")))
        self.asked = self.label("", self.roles.fact_bold, wrap=True)
        made.addWidget(self.asked)
        grid = QGridLayout()
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(10 if self.roles.large else 8)
        grid.setColumnStretch(1, 1)
        made.addLayout(grid)
        self.time_column = self._answer(grid, self.tr("Time"))
        self.clock_column = self._answer(grid, self.tr("Clock time"))
        self.temperature_column = self._answer(grid, self.tr("Temperature"))
        self.unit = self._answer(grid, self.tr("Unit"), {"C": "°C", "F": "°F"})
        self.date_order = self._answer(grid, self.tr("Order of dates"), import_view.ORDERS)
        self.time_zone = self._answer(grid, self.tr("Time zone"))
        self.decimal = self._answer(grid, self.tr("Decimal mark"), import_view.DECIMALS)
        self.delimiter = self._answer(grid, self.tr("Between columns"), import_view.DELIMITERS)
        self.encoding = self._answer(grid, self.tr("Letters"), import_view.ENCODINGS)
        self.zone_said = self.label("", self.roles.small, tone="sub", wrap=True)
        made.addWidget(self.zone_said)
        made.addStretch(1)
        return made

    def _answer(
        self, grid: QGridLayout, name: str, entries: dict[str, str] | None = None
    ) -> Choice:
        choice = self.choice(name)
        for value, text in (entries or {}).items():
            choice.addItem(text, value)
        choice.setCurrentIndex(-1)
        choice.setEnabled(False)
        choice.activated.connect(self._on_answer)
        at = grid.rowCount()
        caption = self.label(name)
        caption.setBuddy(choice)
        grid.addWidget(caption, at, 0)
        grid.addWidget(choice, at, 1)
        return choice

    def _findings(self) -> QVBoxLayout:
        made = QVBoxLayout()
        made.setSpacing(8)
        made.addWidget(self.heading(self.tr("Its first lines")))
        self.table = QTableView()
        self.table.setModel(self.lines)
        self.table.setAccessibleName(self.tr("The first lines of the file"))
        self.table.setFont(type.font(self.roles.small))
        self.table.horizontalHeader().setFont(type.font(self.roles.small))
        self.table.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft)
        self.table.horizontalHeader().setHighlightSections(False)
        self.table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.table.horizontalHeader().setStretchLastSection(True)
        self.table.verticalHeader().hide()
        self.table.verticalHeader().setDefaultSectionSize(28 if self.roles.large else 24)
        self.table.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
        self.table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.table.setShowGrid(False)
        self.table.setTabKeyNavigation(False)
        made.addWidget(self.table, 3)
        made.addSpacing(6)
        made.addWidget(self.heading(self.tr("What is in it")))
        self.summary = self.label("", wrap=True)
        made.addWidget(self.summary)
        self.remark_list = QListView()
        self.remark_list.setModel(self.remarks)
        self.remark_list.setAccessibleName(self.tr("Gaps, and lines that are left out"))
        self.remark_list.setFont(type.font(self.roles.small))
        self.remark_list.setWordWrap(True)
        self.remark_list.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
        self.remark_list.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        made.addWidget(self.remark_list, 2)
        made.addWidget(self._differing())
        self.message = self.label("", self.roles.head, wrap=True)
        made.addWidget(self.message)
        return made

    def _differing(self) -> QWidget:
        self.differing = QWidget()
        self.differing_text = self.label("", self.roles.fact_bold, wrap=True)
        self.keep = self.option(self.tr("Keep what the board has"))
        self.take = self.option(self.tr("Take the file's"))
        for option in (self.keep, self.take):
            option.toggled.connect(self._show_ready)
        layout = QVBoxLayout(self.differing)
        layout.setContentsMargins(7, 4, 0, 0)
        layout.addWidget(self.differing_text)
        layout.addLayout(row(self.keep, 28, self.take))
        self.differing.hide()
        return self.differing

    # Reading

    def _on_choose(self) -> None:
        title = self.tr("Choose a logger's file")
        kinds = self.tr("Records (*.csv *.txt *.tsv *.log);;All files (*)")
        path, _ = QFileDialog.getOpenFileName(self, title, "", kinds)
        if path:
            self.open_file(Path(path))

    def open_file(self, path: Path) -> None:
        """Begin with a file; it is read in a thread."""
        self._path, self._data = path, None
        self._answers = Answers()
        self.preview, self.imported = None, None
        self.file_name.setText(path.name)
        self.closing.setText(self.tr("Cancel"))
        self._read()

    def answer(self, **chosen: Any) -> None:
        """Take a person's answer, by the names of `Answers`, and read again."""
        self._answers = replace(self._answers, **chosen)
        self._read()

    @property
    def reading(self) -> bool:
        """Whether a file is being read."""
        return self._reader_number == self._number and self._number > 0

    _reader_number = 0

    def _read(self) -> None:
        if self._path is None:
            return
        self._number += 1
        self._reader_number = self._number
        self.message.setText(self.tr("Reading…"))
        self._show_ready()
        shop = _name(self.session)
        reader = RecordReader(self._number, self._path, self._data, self._answers, shop)
        reader.finished.connect(self._on_read, Qt.ConnectionType.QueuedConnection)
        reader.start()

    @Slot(int, object)
    def _on_read(self, number: int, outcome: tuple[bytes | None, Preview | RackboardError]) -> None:
        if number != self._number:
            return  # a later answer is being read already
        self._reader_number = 0
        self._data, found = outcome
        if isinstance(found, RackboardError):
            self.preview = None
            self._show()
            self.message.setText(str(found))
            return
        self.preview = found
        self.message.setText("")
        self._show()

    # Showing

    def _show(self) -> None:
        preview = self.preview
        hours, unit = self.session.board.snapshot.hours, self.session.unit
        self._show_answers(preview)
        if preview is None:
            self.lines.show_rows((), ())
            self.remarks.setStringList([])
            self.summary.setText("")
            self.asked.setText("")
            self.zone_said.setText("")
        else:
            self.lines.show_rows(import_view.rows(preview, hours, unit), preview.columns)
            questions = [import_view.ASKED[question] for question in preview.open_questions]
            self.asked.setText("\n".join(questions))
            self.zone_said.setText(import_view.zone_said(preview))
            found = preview.found
            if found is None:
                waits = self.tr("{0} to read once the questions are answered.")
                lines = import_view.counted(preview.lines, "line", "lines")
                self.summary.setText(waits.format(lines))
                self.remarks.setStringList([])
            else:
                self.summary.setText(import_view.summary(found, hours))
                past = self._past(found)
                ahead = len(found.readings) - len(past)
                listed = import_view.remarks(found, holes(past), ahead, hours, unit)
                nothing = self.tr("No gap over 2 h, nothing left out.")
                self.remarks.setStringList(listed or [nothing])
        self.asked.setVisible(bool(self.asked.text()))
        self._compare()

    def _show_answers(self, preview: Preview | None) -> None:
        settled = Answers() if preview is None else preview.settled
        names = () if preview is None else preview.columns
        asked = () if preview is None else preview.open_questions
        columns = {str(i): f"{i + 1}: {name}" for i, name in enumerate(names)}
        likely = {} if preview is None else {
            str(i): columns.get(str(i), str(i + 1)) for i in preview.temperature_columns
        }  # fmt: skip
        _fill(self.time_column, columns)
        _fill(self.clock_column, {"": self.tr("in the same column"), **columns})
        _fill(self.temperature_column, likely)
        if preview is not None and not self.time_zone.count():
            zones = import_view.zone_names(_name(self.session) or "")
            _fill(self.time_zone, {name: name for name in zones})
        wanted = {
            self.time_column: _text(settled.time_column),
            self.clock_column: _text(settled.clock_column) or "",
            self.temperature_column: _text(settled.temperature_column),
            self.unit: settled.unit and settled.unit.value,
            self.date_order: settled.date_order and settled.date_order.value,
            self.time_zone: settled.zone,
            self.decimal: settled.decimal,
            self.delimiter: settled.delimiter,
            self.encoding: settled.encoding,
        }
        for choice, value in wanted.items():
            if value and choice.findData(value) < 0:
                choice.addItem(value, value)
            choice.setCurrentIndex(-1 if value is None else choice.findData(value))
            choice.setEnabled(preview is not None and value is not None)
            choice.setPlaceholderText("")
        of_question = {
            Question.TIME_COLUMN: self.time_column,
            Question.TEMPERATURE_COLUMN: self.temperature_column,
            Question.UNIT: self.unit,
            Question.DATE_ORDER: self.date_order,
            Question.ZONE: self.time_zone,
        }
        for question in asked:
            choice = of_question[question]
            choice.setCurrentIndex(-1)
            choice.setPlaceholderText(self.tr("please choose"))
            choice.setEnabled(True)
        if preview is not None and preview.offset_in_file:
            self.time_zone.setCurrentIndex(-1)
            self.time_zone.setEnabled(False)
            self.time_zone.setPlaceholderText(self.tr("named in the file"))

    def _past(self, found: Import) -> list[tuple[int, int]]:
        latest = self.session.clock.now() + AHEAD_US
        return [reading for reading in found.readings if reading[0] <= latest]

    def _compare(self) -> None:
        found = None if self.preview is None else self.preview.found
        self.compared = Compared(0, 0, 0)
        if found is not None:
            self.compared = compare(self.session.store, self._zone_id(), self._past(found))
        differing = self.compared.differing
        if differing:
            asked = self.tr("At {0} the board has another temperature than the file.")
            moments = import_view.counted(differing, "moment", "moments")
            self.differing_text.setText(asked.format(moments))
        self.differing.setVisible(bool(differing))
        self._show_ready()

    def _show_ready(self) -> None:
        found = None if self.preview is None else self.preview.found
        answered = not self.compared.differing or self.keep.isChecked() or self.take.isChecked()
        ready = found is not None and bool(found.readings) and answered
        self.importing.setEnabled(ready and not self.reading and self.imported is None)

    def _zone_id(self) -> int:
        return self._zones[self.zone.currentIndex()].id

    # Answers and import

    def _on_target(self) -> None:
        self.imported = None
        self.message.setText("")
        self._compare()

    def _on_answer(self) -> None:
        choice = self.sender()
        if not isinstance(choice, Choice):
            return
        value = choice.currentData()
        self.imported = None
        if choice is self.time_column:
            self.answer(time_column=int(value))
        elif choice is self.clock_column:
            time = self._answers.time_column
            if time is None and self.preview is not None:
                time = self.preview.settled.time_column
            self.answer(time_column=time, clock_column=int(value) if value else None)
        elif choice is self.temperature_column:
            self.answer(temperature_column=int(value))
        elif choice is self.unit:
            self.answer(unit=Unit(value))
        elif choice is self.date_order:
            self.answer(date_order=DateOrder(value))
        elif choice is self.time_zone:
            self.answer(zone=value)
        elif choice is self.decimal:
            self.answer(decimal=value)
        elif choice is self.delimiter:
            # Other columns: what was said of the old ones holds no more.
            self._answers = Answers(encoding=self._answers.encoding, delimiter=value)
            self._read()
        else:
            self.answer(encoding=value)

    def accept(self) -> None:
        """Import; the dialog stays and says what came of it."""
        found = None if self.preview is None else self.preview.found
        if found is None or not self.importing.isEnabled():
            return
        replacing = self.take.isChecked() and bool(self.compared.differing)
        try:
            imported = import_readings(
                self.session.store, self.session.clock, self._zone_id(), found.readings,
                replace=replacing,
            )  # fmt: skip
        except RackboardError as error:
            self.message.setText(str(error))
            return
        self.imported = imported
        self.session.take(imported.changes)
        differing = len(imported.differing)
        left_out = found.skipped_count + found.conflict_count + imported.ahead
        text = import_view.result(
            imported.new, imported.same, differing if replacing else 0,
            0 if replacing else differing, left_out,
        )  # fmt: skip
        self.message.setText(text + ".")
        self.closing.setText(self.tr("Close"))
        self.differing.hide()
        self.importing.setEnabled(False)
        self.closing.setFocus()


def _fill(choice: Choice, entries: dict[str, str]) -> None:
    if [choice.itemData(i) for i in range(choice.count())] == list(entries):
        return
    choice.clear()
    for value, text in entries.items():
        choice.addItem(text, value)


def _text(column: int | None) -> str | None:
    return None if column is None else str(column)


def _name(session: Session) -> str | None:
    """Return the name of the shop's time zone, if it has one."""
    return getattr(session.board.snapshot.hours.zone, "key", None)
