"""The board: strip, racks, chips, jobs and the right column, placed by the grid.

`show_view` takes one immutable `BoardView` and passes each part on only if it changed.
"""

from __future__ import annotations

from itertools import pairwise

from PySide6.QtCore import QModelIndex, Signal
from PySide6.QtGui import QKeySequence, QPainter, QPaintEvent, QResizeEvent, QShortcut
from PySide6.QtWidgets import QStackedWidget, QWidget

from rackboard.core.words import Word
from rackboard.ui import edges, type
from rackboard.ui.board_view import BoardView
from rackboard.ui.chips import RIM as CHIP_RIM
from rackboard.ui.chips import ChipsRow
from rackboard.ui.grid import BOX_COLUMNS, COLUMNS, ROWS, Grid, Rect, grid
from rackboard.ui.jobs_panel import JobsPanel
from rackboard.ui.language import say
from rackboard.ui.rack_head import RackHead
from rackboard.ui.rack_view import RackView
from rackboard.ui.right_column import RightColumn
from rackboard.ui.shortening import fitted, shortened
from rackboard.ui.strip import StripBar
from rackboard.ui.theme import Theme
from rackboard.ui.tile import Rack, Tile
from rackboard.ui.tile_delegate import TileDelegate
from rackboard.ui.type import Roles

USUAL = "usual"
_PAGES = 9


class Board(QWidget):
    """The near view.

    Signals
    -------
    slot_selected(int, int), slot_activated(int, int)
        Place and slot: the ring came to it; it was tapped or entered.
    night_answered(str, str)
        The key of the question about the night, and the text.
    temperature_clicked(int)
        The zone.
    chip_clicked(int), job_clicked(int), ready_clicked(int)
        The key of the chip or job (chip 0: "+ 2").
    alarm_answered(str), due_clicked(str), happening_clicked(str)
        The key of the happening.
    action_chosen(str)
        The key of a button of the inspector.
    """

    slot_selected = Signal(int, int)
    slot_activated = Signal(int, int)
    night_answered = Signal(str, str)
    temperature_clicked = Signal(int)
    chip_clicked = Signal(int)
    job_clicked = Signal(int)
    ready_clicked = Signal(int)
    alarm_answered = Signal(str)
    due_clicked = Signal(str)
    happening_clicked = Signal(str)
    action_chosen = Signal(str)

    def __init__(self, theme: Theme, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._theme = theme
        self._grid = grid(self.width(), self.height())
        self._roles = Roles(large=self._grid.large)
        self._view: BoardView | None = None
        self._pages: tuple[Rack, ...] = ()
        self._box: Rack | None = None
        self._page = 0
        self._selected: tuple[int, int] | None = None
        self.setAutoFillBackground(True)
        self.setMinimumSize(1280, 778)
        self.strip = StripBar(theme, self._grid, self)
        self.delegate = TileDelegate(theme, self._grid, self)
        self.rack = RackView(self.delegate, self)
        self.box = RackView(self.delegate, self)
        self.chips = ChipsRow(theme, self._grid, self)
        self.jobs = JobsPanel(theme, self._grid, self)
        self.rack_head = RackHead(theme, self._grid, self)
        self.box_head = RackHead(theme, self._grid, self)
        self.usual = RightColumn(theme, self._grid)
        self.column = QStackedWidget(self)
        self.column.addWidget(self.usual)
        self._panels: dict[str, QWidget] = {USUAL: self.usual}
        self._connect()
        self._order()
        self.show_theme(theme)

    def _connect(self) -> None:
        self.strip.night_answered.connect(self.night_answered)
        self.strip.temperature_clicked.connect(self.temperature_clicked)
        for view in (self.rack, self.box):
            view.row_selected.connect(self._on_row_selected)
            view.row_activated.connect(self._on_row_activated)
            view.left.connect(self._on_left)
            view.verticalScrollBar().valueChanged.connect(self._show_heads)
        self.rack_head.page_chosen.connect(self.show_page)
        self.rack_head.lines_scrolled.connect(self.rack.scroll_lines)
        self.box_head.lines_scrolled.connect(self.box.scroll_lines)
        self.chips.row_activated.connect(self._on_chip_activated)
        self.jobs.job_clicked.connect(self.job_clicked)
        self.jobs.ready_clicked.connect(self.ready_clicked)
        self.usual.alarm_answered.connect(self.alarm_answered)
        self.usual.due_clicked.connect(self.due_clicked)
        self.usual.happening_clicked.connect(self.happening_clicked)
        self.usual.action_chosen.connect(self.action_chosen)
        for number in range(_PAGES):
            shortcut = QShortcut(QKeySequence(f"Ctrl+{number + 1}"), self)
            shortcut.setProperty("page", number)
            shortcut.activated.connect(self._on_page_key)

    def _order(self) -> None:
        chain = (self.rack, self.box, self.chips, self.jobs.list, self.column, self.strip.night)
        for first, second in pairwise(chain):
            QWidget.setTabOrder(first, second)

    # -- what it shows ---------------------------------------------------------------------

    def show_view(self, view: BoardView) -> None:
        """Show a moment; parts that are equal to the last one are left alone."""
        old, self._view = self._view, view
        if view is old:
            return
        self.strip.show_strip(view.strip)
        if old is None or view.racks != old.racks:
            self._show_racks(view.racks)
        if old is None or view.chips != old.chips:
            self.chips.show_chips(view.chips)
            self.update(*self._slim_label())
        self.jobs.show_jobs(view.jobs)
        self.usual.show_happenings(view.head, view.happenings)
        self.usual.show_inspector(view.inspector)

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme while running."""
        self._theme = theme
        self.setPalette(theme.palette())
        self._show_grid(self._grid)

    def show_page(self, page: int) -> None:
        """Show another rack, counted from 0."""
        if 0 <= page < len(self._pages):
            self._page = page
            self._show_racks(self._view.racks if self._view else ())

    def select(self, place_id: int, slot: int) -> None:
        """Bring the ring to a slot, on whichever page it is."""
        for number, rack in enumerate(self._pages):
            if rack.place_id == place_id and number != self._page:
                self.show_page(number)
        for view in (self.rack, self.box):
            row = view.rows_model.find((place_id, slot))
            if row >= 0:
                view.select(row)

    def selected(self) -> tuple[int, int] | None:
        """Return place and slot of the ring, or None."""
        return self._selected

    def add_panel(self, name: str, panel: QWidget) -> None:
        """Add a panel that fills the whole right column when `show_panel` names it."""
        self._panels[name] = panel
        self.column.addWidget(panel)

    def show_panel(self, name: str = USUAL) -> None:
        """Show a panel of the right column; without a name the usual one."""
        self.column.setCurrentWidget(self._panels[name])

    # -- the collar ------------------------------------------------------------------------

    def wants_ticks(self) -> bool:
        """Return whether an untaken HOLD is in sight and may blink."""
        return not self.delegate.still and any(True for _ in self._untaken())

    def set_time_ms(self, time_ms: int) -> None:
        """Blink the collars; call it every 250 ms while `wants_ticks`."""
        lit = edges.collar_lit(time_ms)
        if lit is self.delegate.collar_lit:
            return
        self.delegate.collar_lit = lit
        for view, row in self._untaken():
            view.update(view.rows_model.index(row))

    def set_reduced_motion(self, still: bool) -> None:
        """Keep collars steady, 6 px."""
        self.delegate.still = still
        self.rack.viewport().update()
        self.box.viewport().update()

    def _untaken(self) -> list[tuple[RackView, int]]:
        return [
            (view, at)
            for view in (self.rack, self.box)
            for at, row in enumerate(view.rows_model.rows())
            if isinstance(row, Tile) and row.untaken
        ]

    # -- racks -----------------------------------------------------------------------------

    def _show_racks(self, racks: tuple[Rack, ...]) -> None:
        self._box = next((rack for rack in racks if rack.box), None)
        self._pages = tuple(rack for rack in racks if rack is not self._box)
        self._page = min(self._page, max(len(self._pages) - 1, 0))
        for view, rack, columns, rows in (
            (self.rack, self._shown(), COLUMNS, ROWS),
            (self.box, self._box, BOX_COLUMNS, 1),
        ):
            wanted = min(rack.columns, columns) if rack else columns
            if view.columns != wanted or view.shown_rows != rows:
                view.show_grid(self._grid, wanted, rows)
            view.rows_model.show_rows(rack.tiles if rack else ())
            view.setAccessibleName(rack.title if rack else "")
            if self._selected is not None and not view.currentIndex().isValid():
                row = view.rows_model.find(self._selected)
                if row >= 0:
                    view.setCurrentIndex(view.rows_model.index(row))
        self._show_heads()

    def _shown(self) -> Rack | None:
        return self._pages[self._page] if self._pages else None

    def _show_heads(self) -> None:
        others = tuple(
            (number, rack.title)
            for number, rack in enumerate(self._pages)
            if number != self._page
        )
        for head, view, rack, names in (
            (self.rack_head, self.rack, self._shown(), others),
            (self.box_head, self.box, self._box, ()),
        ):
            if rack is None:
                head.show_head("", "")
                continue
            sight, arrows = _sight(view)
            head.show_head(rack.title, rack.subtitle, names, sight, arrows)

    def _on_row_selected(self, key: tuple[int, int]) -> None:
        self._selected = key
        for view in (self.rack, self.box):
            if view.rows_model.find(key) < 0:
                view.clearSelection()
                view.setCurrentIndex(QModelIndex())
        self.slot_selected.emit(*key)

    def _on_row_activated(self, key: tuple[int, int]) -> None:
        self.slot_activated.emit(*key)

    def _on_left(self, down: int, column: int) -> None:
        """Walk from rack to box and back, in the same column."""
        sender = self.sender()
        if sender is self.rack and down > 0 and self.box.rows_model.rowCount():
            self.box.setFocus()
            self.box.select(min(column, self.box.columns - 1))
        elif sender is self.box and down < 0 and self.rack.rows_model.rowCount():
            self.rack.setFocus()
            count = self.rack.rows_model.rowCount()
            first = (self.rack.lines() - 1) * self.rack.columns
            self.rack.select(min(first + min(column, self.rack.columns - 1), count - 1))

    def _on_chip_activated(self, key: int) -> None:
        if key >= 0:
            self.chip_clicked.emit(key)

    def _on_page_key(self) -> None:
        sender = self.sender()
        if sender is not None:
            self.show_page(int(sender.property("page")))

    # -- places ----------------------------------------------------------------------------

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Place everything by the grid."""
        super().resizeEvent(event)
        fresh = grid(self.width(), self.height())
        if fresh != self._grid:
            self._show_grid(fresh)

    def grid(self) -> Grid:
        """Return the measures in force; the main window takes `menu` from them."""
        return self._grid

    def _show_grid(self, fresh: Grid) -> None:
        self._grid, self._roles = fresh, Roles(large=fresh.large)
        theme = self._theme
        self.strip.show_grid(theme, fresh)
        self.strip.setGeometry(0, 0, fresh.width, fresh.strip)
        self.delegate.show_grid(theme, fresh)
        before = fresh.gutter // 2
        for view, area, columns, rows in (
            (self.rack, fresh.rack, self.rack.columns, ROWS),
            (self.box, fresh.box, self.box.columns, 1),
        ):
            view.move(area.x - before, area.y - before)
            view.show_grid(fresh, columns, rows)
        for head, area in ((self.rack_head, fresh.rack), (self.box_head, fresh.box)):
            head.show_grid(theme, fresh)
            head.setGeometry(area.x, area.y - fresh.head, area.w, fresh.head)
            head.raise_()
        self.chips.show_grid(theme, fresh)
        self.chips.move(fresh.column(1) - before, fresh.slim_row.y - CHIP_RIM)
        self.chips.raise_()
        jobs = fresh.jobs
        self.jobs.show_grid(theme, fresh)
        self.jobs.setGeometry(jobs.x - 4, jobs.y, jobs.w + 8, jobs.h)
        self.usual.show_grid(theme, fresh)
        for panel in self._panels.values():
            show_size = getattr(panel, "show_size", None)
            if show_size is not None:
                show_size(theme, large=fresh.large)
        self.column.setGeometry(*fresh.right)
        self.update()

    def _slim_label(self) -> Rect:
        row = self._grid.slim_row
        return Rect(row.x, row.y - 4, self._grid.tile_w + 8, row.h + 8)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the ground and the label of the slim row."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, roles, row = self._theme, self._roles, self._grid.slim_row
        painter.fillRect(self.rect(), theme.bg)
        large = self._grid.large
        style = roles.head if large else roles.fact_bold
        pitch = 22.0 if large else 16.0
        lower = row.y + row.h / 2 + pitch / 2 + type.cap_height(style) / 2 - 1
        out = bool(self._view and self._view.chips)
        note = say("Board", "do not hit") if out else say("Board", "nothing out")
        label = (
            say("Board", "Off the rack, still curing") if large
            else say("Board", "Off the rack, curing:")
        )  # fmt: skip
        room = float(self._grid.tile_w)
        narrow = style._replace(face=type.Face.CONDENSED)
        style, label = fitted((style, narrow), label, room)
        type.draw(painter, style, row.x, lower - pitch, label, theme.text)
        note = shortened(roles.fact, note, room)
        type.draw(painter, roles.fact, row.x, lower, note, theme.sub)
        painter.end()


def _sight(view: RackView) -> tuple[str, tuple[bool, bool]]:
    """Return which rows are in sight, how many HOLDs are not, and where one can scroll."""
    lines = view.lines()
    if lines <= view.shown_rows:
        return "", (False, False)
    first = view.first_line()
    last = first + view.shown_rows
    hidden = sum(
        1
        for at, row in enumerate(view.rows_model.rows())
        if isinstance(row, Tile)
        and row.word is Word.HOLD
        and not first <= at // view.columns < last
    )
    if view.shown_rows == 1:
        text = say("Board", "row {row} of {rows}").format(row=last, rows=lines)
    else:
        text = say("Board", "rows {first} to {last} of {rows}").format(
            first=first + 1, last=last, rows=lines
        )
    if hidden:
        holds = say("Board", "%n HOLDs out of sight", "%n HOLD out of sight", hidden)
        text = f"{text}, {holds}"
    return text, (first > 0, last < lines)


