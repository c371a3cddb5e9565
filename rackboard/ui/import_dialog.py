"""A logger's record taken in: shown first, asked about, then imported in one go."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QStringListModel, Qt, Slot
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFileDialog,
    QHBoxLayout,
    QHeaderView,
    QListView,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from rackboard.core.errors import RackboardError
from rackboard.feeds.logger_csv import Answers, Import, Preview
from rackboard.services.doubts import AHEAD_US
from rackboard.services.import_check import Compared, compare, holes
from rackboard.services.importing import Imported, import_readings
from rackboard.ui import import_view, type
from rackboard.ui.dialog import Dialog, error_text, row
from rackboard.ui.import_answers import ImportAnswers
from rackboard.ui.import_table import FirstLines
from rackboard.ui.language import say
from rackboard.ui.record_reader import RecordReader
from rackboard.ui.session import Session
from rackboard.ui.theme import Theme


class ImportDialog(Dialog):
    """Imports a logger's CSV into a zone.

    Parameters
    ----------
    session : Session
        The open shop.
    theme : Theme, optional
        The scheme; by default the application's.
    zone_id : int, optional
        The zone chosen first.
    """

    def __init__(
        self,
        session: Session,
        parent: QWidget | None = None,
        *,
        theme: Theme | None = None,
        zone_id: int | None = None,
    ) -> None:
        super().__init__(parent, theme)
        self.session = session
        self._zones = sorted(session.board.snapshot.zones.values(), key=lambda z: z.sort)
        self._path: Path | None = None
        self._data: bytes | None = None
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
        self.answers = ImportAnswers(self, _name(self.session) or "")
        self.answers.answered.connect(self._on_answered)
        area = self.scrolled(self.answers)
        area.setFixedWidth(470 if large else 384)
        columns.addWidget(area)
        columns.addLayout(self._findings(), 1)
        content.addLayout(columns, 1)
        accepting = self.add_buttons(self.tr("Import"), self.tr("Cancel"))
        assert accepting is not None
        self.importing = accepting
        self.closing = self.buttons.buttons()[-1]

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
        self.answers.answers = Answers()
        self.preview, self.imported = None, None
        self.file_name.setText(path.name)
        self.closing.setText(self.tr("Cancel"))
        self._read()

    def _on_answered(self) -> None:
        self.imported = None
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
        reader = RecordReader(self._number, self._path, self._data, self.answers.answers, shop)
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
            self.message.setText(error_text(found))
            return
        self.preview = found
        self.message.setText("")
        self._show()

    # Showing

    def _show(self) -> None:
        preview = self.preview
        hours, unit = self.session.board.snapshot.hours, self.session.unit
        self.answers.show_preview(preview)
        if preview is None:
            self.lines.show_rows((), ())
            self.remarks.setStringList([])
            self.summary.setText("")
        else:
            self.lines.show_rows(import_view.rows(preview, hours, unit), preview.columns)
            found = preview.found
            if found is None:
                self.summary.setText(
                    say("ImportDialog", "%n lines to read once the questions are answered.",
                        "%n line to read once the questions are answered.", preview.lines)
                )  # fmt: skip
                self.remarks.setStringList([])
            else:
                self.summary.setText(import_view.summary(found, hours))
                past = self._past(found)
                ahead = len(found.readings) - len(past)
                listed = import_view.remarks(found, holes(past), ahead, hours, unit)
                nothing = self.tr("No gap over 2 h, nothing left out.")
                self.remarks.setStringList(listed or [nothing])
        self._compare()

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
            self.differing_text.setText(
                say("ImportDialog",
                    "At %n moments the board has another temperature than the file.",
                    "At %n moment the board has another temperature than the file.", differing)
            )  # fmt: skip
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

    def accept(self) -> None:
        """Import; the dialog stays and says what came of it."""
        found = None if self.preview is None else self.preview.found
        if found is None or not self.importing.isEnabled():
            return
        replacing = self.take.isChecked() and bool(self.compared.differing)
        # One transaction can't be cut in slices: a year of minutes takes about two seconds.
        QGuiApplication.setOverrideCursor(Qt.CursorShape.WaitCursor)
        try:
            imported = import_readings(
                self.session.store, self.session.clock, self._zone_id(), found.readings,
                replace=replacing,
            )  # fmt: skip
            self.session.take(imported.changes)
        except RackboardError as error:
            self.message.setText(error_text(error))
            return
        finally:
            QGuiApplication.restoreOverrideCursor()
        self.imported = imported
        differing = len(imported.differing)
        left_out = found.skipped_count + found.conflict_count + imported.ahead
        text = import_view.result(
            imported.new, imported.same, differing if replacing else 0,
            0 if replacing else differing, left_out,
        )  # fmt: skip
        self.message.setText(text)
        self.closing.setText(self.tr("Close"))
        self.differing.hide()
        self.importing.setEnabled(False)
        self.closing.setFocus()


def _name(session: Session) -> str | None:
    """Return the name of the shop's time zone, if it has one."""
    return getattr(session.board.snapshot.hours.zone, "key", None)
