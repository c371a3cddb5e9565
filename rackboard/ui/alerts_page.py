"""The alerts: what is open, with its acts, and all that happened, to filter and to export."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFileDialog,
    QHBoxLayout,
    QHeaderView,
    QPushButton,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from rackboard.core.alerts.kinds import ALARMS, MILESTONES, NATURE, Kind
from rackboard.core.alerts.rows import Alert
from rackboard.core.errors import InputError, RackboardError
from rackboard.core.instants import Instant
from rackboard.services.alert_headlines import Voice
from rackboard.services.alert_log import AlertLog, Entry, kind_words
from rackboard.store.alert_pages import Cursor, Wanted
from rackboard.ui import type
from rackboard.ui.alert_dialog import AlertPanel, height_for, open_groups
from rackboard.ui.alerts_model import AlertsModel, Page
from rackboard.ui.alerts_presenter import Row, card, day_of, row, when_words
from rackboard.ui.dialog import Dialog, error_text
from rackboard.ui.language import say, translated
from rackboard.ui.list_rows import Line, LineList
from rackboard.ui.session import Session
from rackboard.ui.theme import Theme

_WIDE, _HIGH = (1800, 1000), (1240, 760)
_WIDTHS = (165, 165, 110, 110, 0, 115, 105, 140, 215)
"""Of the columns at the smaller size [px]; the one without takes the rest."""


class AlertsPage(Dialog):
    """What is open and what happened. It is shown beside the board, which goes on.

    Parameters
    ----------
    session : Session
        The open shop.

    Signals
    -------
    club_chosen(int)
        This club is to be shown on the board; the page closes.
    """

    club_chosen = Signal(int)

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._log = AlertLog(session.store)
        self._wanted = Wanted()
        self._groups: dict[int, tuple[Alert, ...]] = {}
        self._voice = self._make_voice()
        self.setModal(False)
        content = self.frame(say("AlertsPage", "Alerts"))
        self._lay_out_open(content)
        content.addWidget(self.rule())
        self._lay_out_filters(content)
        self._lay_out_table(content)
        self.export = QPushButton(say("AlertsPage", "Export CSV…"))
        self.dress(self.export)
        self.export.setAutoDefault(False)
        self.export.clicked.connect(self._on_export)
        self.buttons.addButton(self.export, self.buttons.ButtonRole.ActionRole)
        self.add_buttons("", say("AlertsPage", "Close"))
        session.acted.connect(self.refresh)
        session.ticked.connect(self.refresh)
        self._show_open()
        self.model.reload(anew=True)
        self._after_reload()
        self.fit(*(_WIDE if self.roles.large else _HIGH))
        self.open_list.setFocus() if self._groups else self.job.setFocus()

    # Laying out

    def _lay_out_open(self, content: QVBoxLayout) -> None:
        self.open_head = self.heading("")
        content.addWidget(self.open_head)
        line = QHBoxLayout()
        line.setSpacing(self.gap)
        self.open_list = LineList(say("AlertsPage", "What is open"), self.theme, self.roles)
        self.open_list.selectionModel().currentChanged.connect(self._on_open_chosen)
        self.open_list.activated.connect(self._on_open_activated)
        self.panel = AlertPanel(self._session, self)
        self.panel.acted.connect(self.refresh)
        self.panel.club_chosen.connect(self._on_club_chosen)
        high = height_for(self)
        self.open_list.setFixedHeight(high)
        self.panel.setFixedHeight(high)  # so that nothing shifts
        line.addWidget(self.open_list, 5)
        line.addWidget(self.panel, 6)
        content.addLayout(line)

    def _lay_out_filters(self, content: QVBoxLayout) -> None:
        line = QHBoxLayout()
        line.setSpacing(15)
        line.addWidget(self.heading(say("AlertsPage", "What happened")))
        self.count = self.label("", tone="sub")
        line.addWidget(self.count)
        line.addStretch(1)
        large = self.roles.large
        self.job = self.field(
            say("AlertsPage", "Job"), 150 if large else 110, placeholder=say("AlertsPage", "job")
        )
        self.day = self.field(
            say("AlertsPage", "Day"), 270 if large else 215,
            placeholder=say("AlertsPage", "day: today, Fri or 9 March"),
        )  # fmt: skip
        self.place = self.choice(say("AlertsPage", "Place"))
        self.place.addItem(say("AlertsPage", "All places"), None)
        for place in self._session.board.snapshot.places.values():
            self.place.addItem(place.name, place.id)
        self.kind = self.choice(say("AlertsPage", "Kind"))
        self.kind.addItem(say("AlertsPage", "All kinds"), None)
        self.kind.addItem(say("AlertsPage", "Alarms"), ALARMS)
        self.kind.addItem(say("AlertsPage", "Prompts and messages"), MILESTONES)
        for kind in NATURE:
            self.kind.addItem(translated(kind_words(kind)), (kind,))
        for field in (self.job, self.day):
            field.setClearButtonEnabled(True)
            field.textChanged.connect(self._on_filtered)
        for choice in (self.place, self.kind):
            choice.currentIndexChanged.connect(self._on_filtered)
        for control in (self.job, self.place, self.kind, self.day):
            line.addWidget(control)
        content.addLayout(line)

    def _lay_out_table(self, content: QVBoxLayout) -> None:
        self.model = AlertsModel(self._read, self._log.again, self._said)
        self.table = QTableView()
        self.table.setModel(self.model)
        self.table.setAccessibleName(say("AlertsPage", "What happened"))
        self._dress_table()
        self.table.selectionModel().currentRowChanged.connect(self._on_row_chosen)
        self.model.rowsInserted.connect(self._say_count)
        content.addWidget(self.table, 1)
        self.details = self.label("", wrap=True)
        self.details.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.details.setFixedHeight(2 * self.details.fontMetrics().lineSpacing() + 2)
        content.addWidget(self.details)

    def _dress_table(self) -> None:
        table, roles = self.table, self.roles
        table.setFont(type.font(roles.fact_narrow))
        header = table.horizontalHeader()
        header.setFont(type.font(roles.small))
        header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft)
        header.setHighlightSections(False)
        for column, width in enumerate(_WIDTHS):
            if width:
                table.setColumnWidth(column, round(width * (1.35 if roles.large else 0.9)))
            else:
                header.setSectionResizeMode(column, QHeaderView.ResizeMode.Stretch)
        rows = table.verticalHeader()
        rows.hide()
        rows.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        rows.setDefaultSectionSize(32 if roles.large else 26)
        table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        table.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerItem)
        table.setShowGrid(False)
        table.setWordWrap(False)
        table.setTabKeyNavigation(False)

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        super().show_theme(theme)
        if hasattr(self, "panel"):
            self.open_list.show_theme(theme)
            self.panel.show_theme(theme)

    # What is open

    def refresh(self) -> None:
        """Show all as it stands now."""
        self._voice = self._make_voice()
        self._show_open()
        chosen = self.model.row_at(self.table.currentIndex().row())
        self.model.reload()
        at = -1 if chosen is None else self.model.row_of(chosen.id)
        if at >= 0 and self.table.currentIndex().row() != at:
            self.table.setCurrentIndex(self.model.index(at, 0))
        self._after_reload()

    def _show_open(self) -> None:
        session = self._session
        now, hours = session.clock.now(), session.board.snapshot.hours
        found = open_groups(session.alerts, session)
        self._groups = {min(a.id for a in members): members for members in found}
        lines = []
        for key, members in self._groups.items():
            shown = card(members, session.board)
            head = shown.headline
            if shown.signal:
                head = say("AlertsPage", "{signal}  {what}").format(
                    signal=shown.signal, what=shown.headline
                )
            lines.append(Line(key, head, when_words(members[0], now, hours)))
        self.open_list.show_lines(tuple(lines))
        head = say("AlertsPage", "%n open", "1 open", len(lines))
        self.open_head.setText(head if lines else say("AlertsPage", "Open"))
        self._on_open_chosen()

    def _on_open_chosen(self) -> None:
        line = self.open_list.chosen() if self._groups else None
        self.panel.show_alerts(self._groups.get(line.key, ()) if line is not None else ())

    def _on_open_activated(self) -> None:
        self.panel.focus_first()

    def _on_club_chosen(self, club_id: int) -> None:
        self.club_chosen.emit(club_id)
        self.accept()

    # What happened

    def _make_voice(self) -> Voice:
        session = self._session
        return Voice(session.board.snapshot.hours, session.clock.now(), session.unit)

    def _read(self, limit: int, after: Cursor | None) -> Page:
        return self._log.page(self._wanted, limit, after)

    def _said(self, entry: Entry) -> Row:
        return row(entry, self._voice)

    def _on_filtered(self) -> None:
        span: tuple[Instant | None, Instant | None] = (None, None)
        typed = self.day.text().strip()
        wrong = ""
        if typed:
            try:
                span = day_of(typed, self._session.clock.now(), self._voice.hours)
            except InputError:
                wrong = say("AlertsPage", "A day is today, yesterday, Fri, 12 March or 2026-03-12.")
        self.mark(self.day, bool(wrong))
        if wrong:
            self._tell(wrong)
            return
        kinds: tuple[Kind, ...] | None = self.kind.currentData()
        self._wanted = Wanted(
            None if kinds is None else frozenset(Kind(kind) for kind in kinds), *span,
            self.job.text().strip(), self.place.currentData(),
        )  # fmt: skip
        self.model.reload(anew=True)
        self._after_reload()

    def _after_reload(self) -> None:
        if self.model.rowCount() and not self.table.currentIndex().isValid():
            self.table.setCurrentIndex(self.model.index(0, 0))
        self._on_row_chosen(self.table.currentIndex())
        self._say_count()

    def _say_count(self) -> None:
        n = self.model.rowCount()
        if not n:
            said = say("AlertsPage", "No alert like that is in the journal.")
        elif self.model.complete:
            said = say("AlertsPage", "%n alerts", "1 alert", n)
        else:
            said = say("AlertsPage", "The latest %n alerts; scroll for more.",
                       "The latest alert; scroll for more.", n)  # fmt: skip
        self.count.setText(said)

    def _on_row_chosen(self, index: QModelIndex) -> None:
        chosen = self.model.row_at(index.row()) if index.isValid() else None
        self._tell("" if chosen is None else chosen.words)

    def _tell(self, words: str) -> None:
        """Say something under the table."""
        self.details.setText(words)
        self.details.setAccessibleName(words)

    # Export

    def _on_export(self) -> None:
        local = self._voice.hours.local(self._session.clock.now())
        name = say("AlertsPage", "alerts-{day}.csv").format(day=f"{local:%Y-%m-%d}")
        path, _ = QFileDialog.getSaveFileName(
            self, say("AlertsPage", "Export the alerts"), name, say("AlertsPage", "CSV (*.csv)")
        )
        if path:
            self.export_to(Path(path))

    def export_to(self, path: Path) -> None:
        """Write what the filters let through to a file, and say how many rows there are."""
        from rackboard.services.alert_export import export_alerts

        try:
            n = export_alerts(self._session.store, self._voice.hours, self._wanted, path)
        except RackboardError as error:
            self._tell(error_text(error))
            return
        self._tell(
            say("AlertsPage", "%n alerts written to {file}.", "1 alert written to {file}.", n)
            .format(file=path.name)
        )  # fmt: skip
