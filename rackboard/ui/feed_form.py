"""The form of one zone's source: a file that grows or a sensor, and what it says now."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import Qt, QTimer, Slot
from PySide6.QtWidgets import (
    QAbstractItemView,
    QButtonGroup,
    QFileDialog,
    QHBoxLayout,
    QHeaderView,
    QStackedWidget,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from rackboard.core.bench import Zone
from rackboard.core.errors import RackboardError
from rackboard.core.feed import Fault, Feed, FeedKind, FeedSource, Sample, Start
from rackboard.core.temperature import format_temperature
from rackboard.feeds.live import layout_of, settled_of
from rackboard.feeds.logger_csv import Answers, Preview
from rackboard.feeds.sysfs import Sensor, discover
from rackboard.services.feeding import Feeding
from rackboard.ui import import_view, type
from rackboard.ui.dialog import Dialog, error_text, row
from rackboard.ui.import_answers import ImportAnswers
from rackboard.ui.import_table import FirstLines
from rackboard.ui.language import say, translated
from rackboard.ui.place_fields import refusal
from rackboard.ui.record_reader import RecordReader
from rackboard.ui.session import Session
from rackboard.ui.theme import Theme
from rackboard.ui.wording import Times

LOOK_MS = 1000
FILE, SENSOR = range(2)


class FeedForm(Dialog):
    """Sets where a zone's temperature comes from.

    Parameters
    ----------
    session : Session
        The open shop.
    feeding : Feeding
        Keeps the sources.
    zone : Zone
        Whose air it is.
    sensors : callable, optional
        Returns the sensors that are there.
    theme : Theme, optional
        The scheme; by default the application's.
    """

    def __init__(
        self,
        session: Session,
        feeding: Feeding,
        zone: Zone,
        parent: QWidget | None = None,
        *,
        sensors: Callable[[], list[Sensor]] = discover,
        theme: Theme | None = None,
    ) -> None:
        super().__init__(parent, theme)
        self.session, self.feeding, self.zone = session, feeding, zone
        self.sensors = sensors()
        self.lines = FirstLines()
        self.preview: Preview | None = None
        self._path: Path | None = None
        self._data: bytes | None = None
        self._number = 0
        self._awaited = 0
        self._source: FeedSource | None = None
        self._feed: Feed | None = None
        self._last: Sample | None = None
        self._timer = QTimer(self)
        self._timer.setInterval(LOOK_MS)
        self._timer.timeout.connect(self.look)
        self._lay_out()
        self._begin()
        self._timer.start()
        self.fit(1500 if self.roles.large else 1180, 920 if self.roles.large else 740)

    # Layout

    def _lay_out(self) -> None:
        content = self.frame(
            say("Feeds", "Temperature of {zone}").format(zone=self.zone.name),
            say("Feeds", "From a file that a logger's program keeps writing, or from a sensor of"
                " this computer. What comes is kept by itself."),
        )  # fmt: skip
        self.from_file = self.option(say("Feeds", "a logger's file"))
        self.from_sensor = self.option(say("Feeds", "a sensor of this computer"))
        group = QButtonGroup(self)
        group.addButton(self.from_file)
        group.addButton(self.from_sensor)
        content.addLayout(row(self.from_file, 28, self.from_sensor))
        self.now = self.label("", self.roles.head, wrap=True)
        self.now.setMinimumHeight(52 if self.roles.large else 42)
        content.addWidget(self.now)
        self.stack = QStackedWidget()
        self.stack.addWidget(self._file_page())
        self.stack.addWidget(self._sensor_page())
        self.message = self.label("", self.roles.fact_bold, wrap=True)
        content.addWidget(self.stack, 1)
        content.addWidget(self.message)
        accepting = self.add_buttons(say("Feeds", "Use it"), say("Feeds", "Cancel"))
        assert accepting is not None
        self.using = accepting
        self.from_sensor.toggled.connect(self._on_kind)

    def _file_page(self) -> QWidget:
        page = QWidget()
        made = QVBoxLayout(page)
        made.setContentsMargins(0, 0, 0, 0)
        self.choosing = self.button(say("Feeds", "Choose file…"))
        self.choosing.clicked.connect(self._on_choose)
        self.file_name = self.label(say("Feeds", "no file yet"), tone="sub")
        made.addLayout(row(9, self.choosing, 16, self.file_name))
        made.addSpacing(6)
        columns = QHBoxLayout()
        columns.setSpacing(36 if self.roles.large else 20)
        zone = getattr(self.session.board.snapshot.hours.zone, "key", None) or ""
        self.answers = ImportAnswers(self, zone)
        self.answers.answered.connect(self._read)
        area = self.scrolled(self.answers)
        area.setFixedWidth(470 if self.roles.large else 384)
        columns.addWidget(area)
        found = QVBoxLayout()
        found.setSpacing(8)
        found.addWidget(self.heading(say("Feeds", "Its first lines")))
        self.table = QTableView()
        self.table.setModel(self.lines)
        self.table.setAccessibleName(say("Feeds", "The first lines of the file"))
        self.table.setFont(type.font(self.roles.small))
        head = self.table.horizontalHeader()
        head.setFont(type.font(self.roles.small))
        head.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft)
        head.setHighlightSections(False)
        head.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        head.setStretchLastSection(True)
        self.table.verticalHeader().hide()
        self.table.verticalHeader().setDefaultSectionSize(28 if self.roles.large else 24)
        self.table.setSelectionMode(QAbstractItemView.SelectionMode.NoSelection)
        self.table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.table.setShowGrid(False)
        self.table.setTabKeyNavigation(False)
        found.addWidget(self.table, 1)
        self.summary = self.label("", wrap=True)
        found.addWidget(self.summary)
        columns.addLayout(found, 1)
        made.addLayout(columns, 1)
        return page

    def _sensor_page(self) -> QWidget:
        page = QWidget()
        made = QVBoxLayout(page)
        made.setContentsMargins(9, 0, 0, 0)
        made.setSpacing(10)
        self.sensor = self.choice(say("Feeds", "Sensor"))
        for sensor in self.sensors:
            self.sensor.addItem(sensor.label)
        self.sensor.setCurrentIndex(-1)
        self.sensor.setPlaceholderText(say("Feeds", "please choose"))
        self.sensor.setEnabled(bool(self.sensors))
        self.sensor.setMinimumWidth(420 if self.roles.large else 340)
        self.sensor.currentIndexChanged.connect(self._on_sensor)
        made.addLayout(row(self.sensor))
        said = say("Feeds", "This computer shows no sensor of temperature.")
        if self.sensors:
            said = say("Feeds", "A chip's own temperature is not that of the room: take a sensor"
                       " that hangs where the clubs lie.")  # fmt: skip
        made.addWidget(self.label(said, tone="sub", wrap=True))
        made.addStretch(1)
        return page

    def _begin(self) -> None:
        """Show the source that the zone has."""
        present = next((s for s in self.feeding.sources() if s.zone_id == self.zone.id), None)
        sensor = present is not None and present.kind is not FeedKind.CSV
        (self.from_sensor if sensor else self.from_file).setChecked(True)
        self._on_kind()
        if present is None:
            (self.from_sensor if sensor else self.choosing).setFocus()
        elif sensor:
            keys = [(each.kind, each.key) for each in self.sensors]
            if (present.kind, present.path) in keys:
                self.sensor.setCurrentIndex(keys.index((present.kind, present.path)))
        else:
            self.open_file(Path(present.path), present.layout)

    # A file

    def _on_choose(self) -> None:
        title = say("Feeds", "Choose a logger's file")
        kinds = say("Feeds", "Records (*.csv *.txt *.tsv *.log);;All files (*)")
        path, _ = QFileDialog.getOpenFileName(self, title, "", kinds)
        if path:
            self.open_file(Path(path))

    def open_file(self, path: Path, layout: dict[str, object] | None = None) -> None:
        """Begin with a file, and with how it was read so far; it is read in a thread."""
        self._path, self._data = path, None
        try:
            self.answers.answers = Answers() if layout is None else settled_of(layout)[0]
        except RackboardError:
            self.answers.answers = Answers()
        self.file_name.setText(path.name)
        self._read()

    @property
    def reading(self) -> bool:
        """Whether a file is being read."""
        return self._awaited != 0

    def _read(self) -> None:
        if self._path is None:
            return
        self._number += 1
        self._awaited = self._number
        self._drop()
        self.message.setText(say("Feeds", "Reading…"))
        zone = getattr(self.session.board.snapshot.hours.zone, "key", None)
        reader = RecordReader(self._number, self._path, self._data, self.answers.answers, zone)
        reader.finished.connect(self._on_read, Qt.ConnectionType.QueuedConnection)
        reader.start()

    @Slot(int, object)
    def _on_read(self, number: int, outcome: tuple[bytes | None, Preview | RackboardError]) -> None:
        if number != self._number:
            return  # a later answer is being read already
        self._awaited = 0
        self._data, found = outcome
        self.message.setText("")
        self.preview = None if isinstance(found, RackboardError) else found
        if isinstance(found, RackboardError):
            self.message.setText(error_text(found))
        self.answers.show_preview(self.preview)
        self._show_lines()
        self._take_file()

    def _show_lines(self) -> None:
        preview = self.preview
        if preview is None:
            self.lines.show_rows((), ())
            self.summary.setText("")
            return
        hours, unit = self.session.board.snapshot.hours, self.session.unit
        self.lines.show_rows(import_view.rows(preview, hours, unit), preview.columns)
        found = preview.found
        said = say("Feeds", "%n lines to read once the questions are answered.",
                   "%n line to read once the questions are answered.", preview.lines)  # fmt: skip
        self.summary.setText(said if found is None else import_view.summary(found, hours))

    def _take_file(self) -> None:
        preview = self.preview
        if self.from_sensor.isChecked():
            return
        if preview is None or preview.found is None or self._path is None:
            self._drop()
            return
        readings = preview.found.readings
        source = FeedSource(
            self.zone.id, FeedKind.CSV, str(self._path.absolute()), layout_of(preview)
        )
        self._listen(source, readings[-1][0] - 1 if readings else 0)

    # A sensor

    def _on_kind(self) -> None:
        sensor = self.from_sensor.isChecked()
        self.stack.setCurrentIndex(SENSOR if sensor else FILE)
        self._drop()
        if sensor:
            self._on_sensor()
        else:
            self._take_file()

    def _on_sensor(self) -> None:
        at = self.sensor.currentIndex()
        if not self.from_sensor.isChecked() or at < 0:
            return
        chosen = self.sensors[at]
        self._listen(FeedSource(self.zone.id, chosen.kind, chosen.key), 0)

    # What it says now

    def _drop(self) -> None:
        self._source = self._feed = self._last = None
        self.now.setText("")
        self.using.setEnabled(False)

    def _listen(self, source: FeedSource, after_us: int) -> None:
        """Begin to show what a source says."""
        if source == self._source:
            return
        self._drop()
        try:
            feed = self.feeding.open_feed(source, Start(after_us, (), self.session.clock.now()))
        except RackboardError as error:
            self.message.setText(refusal(error))
            return
        self._source, self._feed = source, feed
        self.using.setEnabled(True)
        self.look()

    def look(self) -> None:
        """Ask the source, and show what it says."""
        if self._feed is None:
            return
        now = self.session.clock.now()
        polled = self._feed.poll(now)
        self._last = max(polled.samples, default=self._last)
        times = Times(self.session.board.snapshot.hours, now)
        lines = []
        if self._last is not None:
            lines.append(sample_text(self._last, self.session, times))
        lines += [fault_text(fault, times) for fault in polled.faults if fault.until_us is None]
        waits = say("Feeds", "It has said nothing yet.")
        self.now.setText("\n".join(lines) or waits)

    def accept(self) -> None:
        """Set it; the form stays open with the reason if it can't be."""
        if self._source is None:
            return
        self.feeding.by = self.session.bench.by
        try:
            changes = self.feeding.set_source(self._source)
        except RackboardError as error:
            self.message.setText(refusal(error))
            return
        self.session.take(changes)
        super().accept()


def sample_text(sample: Sample, session: Session, times: Times) -> str:
    """Return what a source says: "It says 21.3 °C, 10:04."."""
    shown = translated(format_temperature(sample.temperature_mc, session.unit))
    return say("Feeds", "It says {temperature}, {time}.").format(
        temperature=shown, time=times.moment(sample.at_us)
    )


def fault_text(fault: Fault, times: Times) -> str:
    """Return what is wrong and since when."""
    return say("Feeds", "Since {time}: {what}.").format(
        time=times.moment(fault.since_us), what=translated(fault.said)
    )
