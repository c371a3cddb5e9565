"""The epoxy's form: the sheet's facts on the left, how the glue goes on the right."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QVBoxLayout, QWidget

from rackboard.core.bench import Epoxy
from rackboard.core.epoxy import Sheet
from rackboard.core.errors import RackboardError
from rackboard.core.instants import HOUR_US
from rackboard.core.sheet_toml import sets_in_doubt
from rackboard.ui.dialog import Dialog, error_text, row
from rackboard.ui.epoxy_facts import EpoxyFacts
from rackboard.ui.epoxy_plot import EpoxyPlot
from rackboard.ui.epoxy_view import epoxy_view
from rackboard.ui.language import translated
from rackboard.ui.session import Session
from rackboard.ui.sheet_fields import Read, SheetEntry, entry_of, read_entry
from rackboard.ui.sheet_files import export_sheet, import_sheet
from rackboard.ui.theme import Theme
from rackboard.ui.wording import both_clocks

WAIT_MS = 150
"""The picture follows the typing after so long a pause."""
_FRESH_US = 4 * HOUR_US


class EpoxyForm(Dialog):
    """Adds or changes one epoxy.

    Parameters
    ----------
    session : Session
        The open shop.
    theme : Theme, optional
        The scheme; by default the application's.
    epoxy : Epoxy, optional
        The one to change; None adds one.
    sheet : Sheet, optional
        What a new one starts from.
    """

    def __init__(
        self,
        session: Session,
        parent: QWidget | None = None,
        *,
        theme: Theme | None = None,
        epoxy: Epoxy | None = None,
        sheet: Sheet | None = None,
    ) -> None:
        super().__init__(parent, theme)
        self.session = session
        self._epoxy = epoxy
        self._taken_right: str | None = None
        self._doubt: str | None = None
        self.read = Read()
        self.setWindowTitle(self.tr("Epoxy"))
        self.plot = EpoxyPlot(self.theme, self.roles)
        self.facts = EpoxyFacts(self, session.unit)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(WAIT_MS)
        self._timer.timeout.connect(self.recompute)
        self._lay_out()
        self.facts.changed.connect(self._timer.start)
        self.facts.confirmed.connect(self._on_confirmed)
        self.fill(epoxy.sheet if epoxy is not None else sheet)
        self.fit(1880, 1040)

    def _lay_out(self) -> None:
        large = self.roles.large
        outer = QVBoxLayout(self)
        side = 56 if large else 26
        outer.setContentsMargins(side - 8, 36 if large else 18, side, 22 if large else 16)
        outer.setSpacing(0)
        columns = QHBoxLayout()
        columns.setSpacing(56 if large else 22)
        area = self.scrolled(self.facts)
        wide = self.facts.minimumSizeHint().width() + area.verticalScrollBar().sizeHint().width()
        area.setFixedWidth(max(672 if large else 500, wide))
        columns.addWidget(area)
        columns.addWidget(self.plot, 1)
        outer.addLayout(columns, 1)
        outer.addSpacing(16 if large else 12)
        outer.addLayout(row(8, self.rule(), stretch=False))
        outer.addSpacing(16 if large else 12)
        self.importing = self.button(self.tr("Import…"))
        self.exporting = self.button(self.tr("Export…"))
        self.importing.clicked.connect(self._on_import)
        self.exporting.clicked.connect(self._on_export)
        self.message = self.label("", self.roles.fact_bold, wrap=True)
        save = self.add_buttons(self.tr("Save epoxy"), self.tr("Cancel"))
        assert save is not None
        self.save = save
        bottom = row(8, self.importing, 15, self.exporting, 20, stretch=False)
        bottom.addWidget(self.message, 1)
        bottom.addSpacing(12)
        bottom.addWidget(self.buttons)
        outer.addLayout(bottom)

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        super().show_theme(theme)
        if hasattr(self, "plot"):
            self.plot.show_theme(theme)

    # Reckoning

    def fill(self, sheet: Sheet | None) -> None:
        """Put a sheet into the fields."""
        empty = SheetEntry()
        self.facts.fill(empty if sheet is None else entry_of(sheet, self.session.unit))
        self.recompute()

    def recompute(self) -> None:
        """Read the fields and show what the epoxy does."""
        self._timer.stop()
        read = self.read = read_entry(self.facts.entry(), self.session.unit)
        self.facts.show_read(read)
        self._doubt = sets_in_doubt(read.sheet) if read.sheet is not None else None
        if self._doubt != self._taken_right:
            self._taken_right = None
        self.facts.ask("" if self._taken_right else self._doubt or "")
        self.save.setEnabled(read.sheet is not None and not self.asked)
        self.exporting.setEnabled(read.sheet is not None)
        self.message.setText("")
        self._show_title(read)
        if read.model is None:
            # A name can wait; what the curve needs comes first.
            first = next((said for key, said in read.errors.items() if key != "name"), "")
            self.plot.show_view(None, self.tr("No curve yet. {0}").format(translated(first)))
        else:
            room_c, name = self._room()
            self.plot.show_view(epoxy_view(read.model, self.session.unit, room_c, name))

    @property
    def asked(self) -> bool:
        """Whether the handling time is doubted and nobody has said that it is right."""
        return self._doubt is not None and self._taken_right is None

    def _show_title(self, read: Read) -> None:
        if read.model is not None:
            self.facts.title.setText(both_clocks(read.model.sheet))
        elif not self.facts.title.text():
            self.facts.title.setText(self.tr("A new epoxy"))
        if self._epoxy is not None and self._epoxy.typical:
            self.facts.said.setText(
                self.tr("Typical of its class; type in your own product's sheet.")
            )
        else:
            self.facts.said.setText(
                self.tr("Type in what its data sheet says; leave the rest blank.")
            )

    def _room(self) -> tuple[float | None, str]:
        zones = self.session.board.snapshot.zones
        if not zones:
            return None, ""
        zone = min(zones.values(), key=lambda z: z.sort)
        reading = self.session.store.record.last_reading(zone.id)
        if reading is None or self.session.clock.now() - reading.at_us > _FRESH_US:
            return None, ""
        name = self.tr("the {0} now").format(zone.name[:1].lower() + zone.name[1:])
        return reading.temperature_mc / 1000, name

    # Answers and buttons

    def _on_confirmed(self) -> None:
        self._taken_right = self._doubt
        self.recompute()
        self.facts.fields["full_short"].setFocus()

    def accept(self) -> None:
        """Save the epoxy; what can't be taken stays in the form with its reason."""
        self.facts.spread_spans()
        self.recompute()
        if self.read.sheet is None:
            self.facts.go_to_error(self.read)
            return
        if self.asked:
            self.facts.right.setFocus()
            return
        epoxy_id = None if self._epoxy is None else self._epoxy.id
        try:
            changes = self.session.bench.save_epoxy(self.read.sheet, epoxy_id)
        except RackboardError as error:
            self.message.setText(error_text(error))
            return
        self.session.take(changes)
        super().accept()

    def _on_import(self) -> None:
        title, kind = self.tr("Import an epoxy's sheet"), self.tr("Sheets (*.toml)")
        path, _ = QFileDialog.getOpenFileName(self, title, "", kind)
        if path:
            self.import_from(Path(path))

    def import_from(self, path: Path) -> None:
        """Put a sheet from a file into the fields; it is kept only when saved."""
        try:
            sheet = import_sheet(path)
        except RackboardError as error:
            self.message.setText(error_text(error))
            return
        self.fill(sheet)
        self.message.setText(self.tr("Read from {0}. Save it to keep it.").format(path.name))

    def _on_export(self) -> None:
        if self.read.sheet is None:
            return
        title, kind = self.tr("Export this sheet"), self.tr("Sheets (*.toml)")
        path, _ = QFileDialog.getSaveFileName(self, title, f"{self.read.sheet.name}.toml", kind)
        if path:
            self.export_to(Path(path))

    def export_to(self, path: Path) -> None:
        """Write what is in the form to a file."""
        self.recompute()
        if self.read.sheet is None:
            return
        try:
            written = export_sheet(path, self.read.sheet)
        except RackboardError as error:
            self.message.setText(error_text(error))
            return
        self.message.setText(self.tr("Written to {0}.").format(written.name))
