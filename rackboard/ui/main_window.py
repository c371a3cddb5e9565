"""The window: menus, the board, its panels and dialogs, and the two timers."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QTimer, Signal
from PySide6.QtGui import QAction, QKeySequence, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QMainWindow, QMenu, QStackedWidget, QWidget

from rackboard.core.bench import PlaceKind
from rackboard.core.errors import RackboardError
from rackboard.core.standing import Standing
from rackboard.core.words import Word
from rackboard.ui import type
from rackboard.ui.board import Board
from rackboard.ui.board_presenter import BoardPresenter
from rackboard.ui.board_view import BoardView, Happening
from rackboard.ui.session import Session
from rackboard.ui.theme import Appearance, Theme
from rackboard.ui.type import Roles

if TYPE_CHECKING:
    from rackboard.services.agenda import NightQuestion
    from rackboard.ui.glue_up import GlueUpPanel
    from rackboard.ui.inspector_view import InspectorView
    from rackboard.ui.wall import Wall

CLOCK_MS = 1_000
ENGINE_MS = 10_000
BLINK_MS = 250
_EVENTS = 200


class MainWindow(QMainWindow):
    """The board's window.

    Parameters
    ----------
    session : Session
        The open shop.
    appearance : Appearance
        The colour scheme.
    notes : callable
        Gives what the board has to say of itself, in lines.
    """

    first_painted = Signal()
    """The first picture is there; the forecasts can be worked out."""
    _painted = _started = _stopped = False

    def __init__(
        self,
        session: Session,
        appearance: Appearance,
        notes: Callable[[], list[str]] = list,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.session = session
        self._appearance = appearance
        self._notes = notes
        self._extra_notes: list[str] = []
        self._shown_minute = -1
        self._shown_stale = False
        self._planned: list[tuple[int, int]] = []
        self._actions: dict[str, QAction] = {}
        self.setWindowTitle(self._title())
        self.board = Board(appearance.theme, self)
        self._views = QStackedWidget(self)
        self._views.addWidget(self.board)
        self.setCentralWidget(self._views)
        self._make_menus()
        self._connect()
        self._show_theme(appearance.theme)
        self.resize(1280, 800)
        self.refresh()
        self.board.rack.setFocus()

    # Start and stop

    def start(self) -> None:
        """Work out the forecasts, now that the window is there, and start the timers."""
        if self._started:
            return
        self._started = True
        self.session.tick()
        if self.board.selected() is None:
            self._select_first()
        self.refresh()
        self._clock_timer = self._timer(CLOCK_MS, self._on_second)
        self._engine_timer = self._timer(ENGINE_MS, self.session.tick)
        self._blink_timer = QTimer(self)
        self._blink_timer.setInterval(BLINK_MS)
        self._blink_timer.timeout.connect(self._on_blink)
        self._blink()

    def _select_first(self) -> None:
        """Bring the ring to what is most pressing: a HOLD, else the first joint."""
        standings = [s for s in self.session.board.standings if s.stay and s.stay.slot is not None]
        for standing in sorted(standings, key=lambda s: (s.hold is None, s.laid_out)):
            if standing.stay is not None and standing.stay.slot is not None:
                self.board.select(standing.stay.place_id, standing.stay.slot)
                return

    @property
    def started(self) -> bool:
        """Whether the forecasts are worked out and the timers run."""
        return self._started

    def stop(self) -> None:
        """Stop the timers and look at nothing any more, before the data file is closed."""
        self._stopped = True
        for timer in (self._clock_timer, self._engine_timer, self._blink_timer):
            timer.stop()

    def _timer(self, interval_ms: int, slot: Callable[[], None]) -> QTimer:
        timer = QTimer(self)
        timer.setInterval(interval_ms)
        timer.timeout.connect(slot)
        timer.start()
        return timer

    def add_note(self, text: str) -> None:
        """Show a line about the board itself until the program ends."""
        if text not in self._extra_notes:
            self._extra_notes.append(text)
            self.refresh()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Say once that the first picture is there."""
        super().paintEvent(event)
        if not self._painted:
            self._painted = True
            QTimer.singleShot(0, self.first_painted.emit)  # when the rest of it is painted too

    def changeEvent(self, event: QEvent) -> None:
        """Catch up as soon as the window is looked at again."""
        super().changeEvent(event)
        running = self._started and not self._stopped
        if running and event.type() is QEvent.Type.ActivationChange and self.isActiveWindow():
            self.session.tick()

    # Showing

    def refresh(self) -> None:
        """Show the board as it stands."""
        if self._stopped:
            return
        now = self.session.clock.now()
        self._shown_minute = now // 60_000_000
        self._shown_stale = self.session.board.is_stale(now)
        presenter = BoardPresenter(
            self.session.board, now, self.session.unit, self._planned
        )
        lines = self._happenings(presenter)
        self.board.show_view(
            BoardView(
                presenter.strip(), presenter.racks(), presenter.chips(), presenter.jobs(),
                lines[0], lines[1], self._inspector(presenter),
            )
        )  # fmt: skip
        self._show_wall(presenter)
        self._show_actions()
        if self._is_first_run():
            self._show_first_run()

    def _show_wall(self, presenter: BoardPresenter) -> None:
        if self._wall is not None and self.on_wall:
            from rackboard.ui.wall_presenter import WallPresenter

            self._wall.show_view(WallPresenter(presenter).view())

    def _happenings(self, presenter: BoardPresenter) -> tuple[str, tuple[Happening, ...]]:
        from rackboard.ui.happening_presenter import SHOWN_US, HappeningPresenter

        events = self.session.store.journal.events(_EVENTS, from_us=presenter.now - SHOWN_US)
        maker = HappeningPresenter(presenter, [*self._notes(), *self._extra_notes])
        happenings = maker.happenings(events)
        return maker.head(happenings), happenings

    def _inspector(self, presenter: BoardPresenter) -> InspectorView | None:
        from rackboard.ui.inspector_presenter import InspectorPresenter

        standing = self.selected_standing()
        if standing is not None:
            return InspectorPresenter(presenter).joint(standing)
        slot = self.board.selected()
        if slot is None:
            return None
        return InspectorPresenter(presenter).empty(*slot)

    def _on_second(self) -> None:
        now = self.session.clock.now()
        stale = self.session.board.is_stale(now)
        if now // 60_000_000 != self._shown_minute or stale is not self._shown_stale:
            self.refresh()

    def _on_blink(self) -> None:
        time_ms = self.session.clock.now() // 1000
        self.board.set_time_ms(time_ms)
        if self._wall is not None and self.on_wall:
            self._wall.set_time_ms(time_ms)
        self._blink()

    def _blink(self) -> None:
        if self.on_wall or self.board.wants_ticks():
            self._blink_timer.start()
        else:
            self._blink_timer.stop()
            self.board.set_time_ms(0)

    def _show_theme(self, theme: Theme) -> None:
        from PySide6.QtWidgets import QApplication

        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.setPalette(theme.palette())
            app.setStyleSheet(theme.style_sheet())
        self.board.show_theme(theme)
        if self._wall is not None:
            self._wall.show_theme(theme)
        self._fit_menu_bar()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give the menu bar the height and type of the board's size."""
        super().resizeEvent(event)
        self._fit_menu_bar()

    def _fit_menu_bar(self) -> None:
        grid = self.board.grid()
        bar = self.menuBar()
        bar.setFont(type.font(Roles(large=grid.large).small))
        bar.setFixedHeight(grid.menu)

    def _title(self) -> str:
        name = self.session.board.snapshot.settings.get("shop name")
        return f"{name} – rackboard" if isinstance(name, str) and name else "rackboard"

    # What is selected

    def selected_standing(self) -> Standing | None:
        """Return the joint in the selected slot, or the club chosen off the rack."""
        slot = self.board.selected()
        for standing in self.session.board.standings:
            stay = standing.stay
            if self._chosen_club is not None:
                if standing.club.id == self._chosen_club:
                    return standing
            elif stay is not None and slot == (stay.place_id, stay.slot):
                return standing
        return None

    _chosen_club: int | None = None

    def select_club(self, club_id: int) -> None:
        """Bring the ring to a club, wherever it lies."""
        stay = self.session.board.snapshot.stays.get(club_id)
        if stay is not None and stay.slot is not None:
            self._chosen_club = None
            self.board.select(stay.place_id, stay.slot)
        else:
            self._chosen_club = club_id
        self.refresh()

    # Signals

    def _connect(self) -> None:
        board, session = self.board, self.session
        session.acted.connect(self._on_acted)
        session.ticked.connect(self.refresh)
        board.slot_selected.connect(self._on_slot_selected)
        board.slot_activated.connect(self._on_slot_activated)
        board.night_answered.connect(self._on_night_answered)
        board.temperature_clicked.connect(self.type_temperature)
        board.chip_clicked.connect(self._on_chip_clicked)
        board.job_clicked.connect(self._on_job_clicked)
        board.ready_clicked.connect(self._on_ready_clicked)
        board.alarm_answered.connect(self._on_alarm_answered)
        board.action_chosen.connect(self._on_action_chosen)
        self._appearance.theme_changed.connect(self._show_theme)

    def _on_acted(self, changes: object) -> None:
        del changes
        self.setWindowTitle(self._title())
        self.refresh()
        if hasattr(self, "_blink_timer"):
            self._blink()

    def _on_slot_selected(self, place_id: int, slot: int) -> None:
        del place_id, slot
        self._chosen_club = None
        if self._started:
            self.refresh()

    def _on_slot_activated(self, place_id: int, slot: int) -> None:
        panel = self._glue_up
        if panel is not None and panel.isVisible() and panel.takes_slots():
            panel.toggle_slot(place_id, slot)
            return
        standing = self.selected_standing()
        if standing is None:
            self.new_job()
        elif standing.laid_out or (
            standing.batch.racked_us is None and standing.base.value == "WET"
        ):
            self.resume_batch(standing.batch.id)

    def _on_night_answered(self, key: str, text: str) -> None:
        question = self._question(key)
        if question is None:
            return
        from rackboard.core.temperature import parse_temperature

        zone = self.session.board.snapshot.zones[question.zone_id].name

        def answer() -> None:
            low_mc = parse_temperature(text, self.session.unit, f"{zone}, lowest of the night")
            self.session.take(self.session.bench.answer_night(question, low_mc))

        self._act(answer)

    def _question(self, key: str) -> NightQuestion | None:
        return next((q for q in self.session.board.questions() if q.key == key), None)

    def _on_chip_clicked(self, club_id: int) -> None:
        if club_id:
            self.select_club(club_id)

    def _on_job_clicked(self, job_id: int) -> None:
        for standing in self.session.board.standings:
            if standing.job.id == job_id:
                self.select_club(standing.club.id)
                return

    def _on_ready_clicked(self, job_id: int) -> None:
        job = next((j for j in self.session.board.jobs() if j.job.id == job_id), None)
        if job is None:
            return
        if job.good or job.job.ready_us is not None:
            ready = job.job.ready_us is None
            self._act(lambda: self.session.take(self.session.bench.press_ready(job_id, ready)))

    def _on_alarm_answered(self, key: str) -> None:
        kind, _, number = key.partition(":")
        if kind == "hold":
            for standing in self.session.board.standings:
                if standing.joint.id == int(number):
                    self.answer_hold(standing)
                    return

    def _on_action_chosen(self, key: str) -> None:
        if key == "more":
            menu: QMenu = self._club_menu
            menu.popup(self.board.mapToGlobal(self.board.rect().center()))
            return
        names = {
            "lay out": "new", "mix": "mix", "racked": "racked", "disturb": "disturb",
            "answer": "answer", "move": "move", "take off": "take off", "out": "out",
            "temperature": "temperature",
        }  # fmt: skip
        action = self._actions.get(names.get(key, ""))
        if action is not None:
            action.trigger()

    # Acts

    def _act(self, act: Callable[[], object]) -> bool:
        """Do something; show an error of the world calmly."""
        try:
            act()
        except RackboardError as error:
            from rackboard.ui.message import say

            say(self, error.message, error.remedy)
            return False
        return True

    def undo(self) -> None:
        """Take back the last act."""
        if not self._act(self.session.undo):
            self._show_actions()

    def redo(self) -> None:
        """Do the last undone act again."""
        if not self._act(self.session.redo):
            self._show_actions()

    _glue_up: GlueUpPanel | None = None

    def _glue_panel(self) -> GlueUpPanel:
        if self._glue_up is None:
            from rackboard.ui.glue_up import GlueUpPanel

            panel = GlueUpPanel(self.session, self._appearance.theme,
                                large=self.board.grid().large)  # fmt: skip
            panel.finished.connect(self._leave_panel)
            panel.cancelled.connect(self._leave_panel)
            panel.slots_chosen.connect(self._on_slots_chosen)
            self.board.add_panel("glue-up", panel)
            self._glue_up = panel
        return self._glue_up

    def new_job(self) -> None:
        """Lay out a job on free slots, from the selected one on."""
        panel = self._glue_panel()
        panel.start(self.board.selected())
        self.board.show_panel("glue-up")
        panel.setFocus()

    def resume_batch(self, batch_id: int) -> None:
        """Go on with a batch that is laid out or mixed."""
        panel = self._glue_panel()
        panel.resume(batch_id)
        self.board.show_panel("glue-up")
        panel.setFocus()

    def _on_slots_chosen(self, slots: list[tuple[int, int]]) -> None:
        if slots != self._planned:
            self._planned = slots
            self.refresh()

    def _leave_panel(self) -> None:
        self.board.show_panel()
        self.board.rack.setFocus()
        self.refresh()

    def _is_first_run(self) -> bool:
        board = self.session.board
        return not board.standings and not board.snapshot.jobs and self._glue_up is None

    _first_run: QWidget | None = None

    def _show_first_run(self) -> None:
        if self._first_run is None:
            from rackboard.ui.first_run import FirstRunPanel

            panel = FirstRunPanel(self._appearance.theme, large=self.board.grid().large)
            panel.first_job_asked.connect(self.new_job)
            self.board.add_panel("first run", panel)
            self._first_run = panel
            self.board.show_panel("first run")
            panel.setFocus()

    def mix_selected(self) -> None:
        """Go to "mixed now" for the selected batch."""
        standing = self.selected_standing()
        if standing is not None and standing.laid_out:
            self.resume_batch(standing.batch.id)

    def rack_selected(self) -> None:
        """Go to "all racked" for the selected batch."""
        standing = self.selected_standing()
        if standing is not None and not standing.laid_out and standing.batch.racked_us is None:
            self.resume_batch(standing.batch.id)

    def disturb_selected(self) -> None:
        """Ask what happened to the selected joint; HOLD if it may have gelled already."""
        standing = self.selected_standing()
        if standing is None or standing.hold is not None or standing.laid_out:
            return
        from rackboard.core.disturbance import Glue
        from rackboard.ui.hold_dialog import HoldDialog, glue_of

        if glue_of(standing, self.session.clock.now()) is not Glue.GELLED:
            HoldDialog(self.session, standing, self).open()
            return
        bench = self.session.bench
        self._act(lambda: self.session.take(bench.disturb(standing.joint.id)))

    def answer_hold(self, standing: Standing | None = None) -> None:
        """Ask what happened to a joint on HOLD."""
        standing = standing or self.selected_standing()
        if standing is not None and standing.hold is not None:
            from rackboard.ui.hold_dialog import HoldDialog

            HoldDialog(self.session, standing, self).open()

    def move_selected(self) -> None:
        """Carry the selected club somewhere else."""
        standing = self.selected_standing()
        if standing is not None:
            from rackboard.ui.place_chooser import PlaceChooser

            PlaceChooser(self.session, standing, self).open()

    def take_off_selected(self) -> None:
        """Take the selected club to the grip bench."""
        self._carry(PlaceKind.GRIP_BENCH)

    def hand_out_selected(self) -> None:
        """Say that the selected club has left the shop."""
        self._carry(PlaceKind.OUT)

    def _carry(self, kind: PlaceKind) -> None:
        standing = self.selected_standing()
        if standing is not None:
            bench = self.session.bench
            self._act(lambda: self.session.take(bench.take_off(standing.club.id, kind)))

    def type_temperature(self, zone_id: int | None = None) -> None:
        """Type what a thermometer says."""
        from rackboard.ui.temperature_dialog import TemperatureDialog

        zones = self.session.board.snapshot.zones
        if zone_id not in zones:
            zone_id = self._selected_zone()
        TemperatureDialog(self.session, zone_id, self).open()

    def _selected_zone(self) -> int:
        snapshot = self.session.board.snapshot
        slot = self.board.selected()
        if slot is not None:
            zone_id = snapshot.places[slot[0]].zone_id
            if zone_id is not None:
                return zone_id
        return next(iter(snapshot.zones))

    def correct_selected(self) -> None:
        """Correct when the selected batch was mixed."""
        standing = self.selected_standing()
        if standing is not None and not standing.laid_out:
            from rackboard.ui.correction import CorrectionDialog

            CorrectionDialog(self.session, standing.batch, self).open()

    def promise_selected(self) -> None:
        """Say when the selected job is promised."""
        standing = self.selected_standing()
        if standing is not None:
            from rackboard.ui.promise_dialog import PromiseDialog

            PromiseDialog(self.session, standing.job, self).open()

    _find: QWidget | None = None

    def open_find(self) -> None:
        """Find a job or club, beside whatever is half done."""
        if self._find is None:
            from rackboard.ui.find_dialog import FindDialog

            dialog = FindDialog(self.session, self)
            dialog.club_chosen.connect(self.select_club)
            dialog.job_chosen.connect(self._on_job_clicked)
            dialog.destroyed.connect(self._on_find_closed)
            self._find = dialog
            dialog.show()
        self._find.raise_()
        self._find.activateWindow()

    def _on_find_closed(self) -> None:
        self._find = None

    def open_shelf(self) -> None:
        """Show the epoxies."""
        from rackboard.ui.epoxy_shelf import EpoxyShelf

        EpoxyShelf(self.session, self).open()

    def import_record(self) -> None:
        """Take in a logger's record."""
        from rackboard.ui.import_dialog import ImportDialog

        ImportDialog(self.session, self).open()

    def erase_customer(self) -> None:
        """Erase a customer's name and phone."""
        from rackboard.ui.customer_dialog import CustomerDialog

        CustomerDialog(self.session, self).open()

    def open_settings(self) -> None:
        """Show the settings."""
        from rackboard.ui.settings_dialog import SettingsDialog

        dialog = SettingsDialog(self.session, self)
        dialog.theme_chosen.connect(self._appearance.set_override)
        dialog.open()

    def about(self) -> None:
        """Show what this program is and whose work it contains."""
        from rackboard.ui.about import AboutDialog

        AboutDialog(self).open()

    _wall: Wall | None = None

    @property
    def on_wall(self) -> bool:
        """Whether the wall view is shown."""
        return self._wall is not None and self._views.currentWidget() is self._wall

    def toggle_wall(self) -> None:
        """Fill the screen with the view that is read from across the room, or leave it."""
        if self.on_wall:
            self.leave_wall()
            return
        if self._wall is None:
            from rackboard.ui.wall import Wall

            self._wall = Wall(self._appearance.theme)
            self._views.addWidget(self._wall)
        self._views.setCurrentWidget(self._wall)
        self.menuBar().hide()
        self.showFullScreen()
        self.refresh()
        if hasattr(self, "_blink_timer"):
            self._blink()

    def leave_wall(self) -> None:
        """Esc: back to the bench."""
        if self.on_wall:
            self._views.setCurrentWidget(self.board)
            self.menuBar().show()
            self.showNormal()
            self.board.rack.setFocus()

    # Menus

    def _make_menus(self) -> None:
        bar = self.menuBar()
        file_menu = bar.addMenu(self.tr("&File"))
        self._add(file_menu, "new", self.tr("New job…"), self.new_job, "Ctrl+N")
        self._add(file_menu, "import", self.tr("Import record…"), self.import_record, "Ctrl+I")
        file_menu.addSeparator()
        self._add(file_menu, "shelf", self.tr("Epoxies…"), self.open_shelf, "Ctrl+E")
        self._add(
            file_menu, "erase", self.tr("Erase a customer…"), self.erase_customer, "Ctrl+Shift+E"
        )
        preferences = self._add(
            file_menu, "settings", self.tr("Settings…"), self.open_settings, "Ctrl+,"
        )
        preferences.setMenuRole(QAction.MenuRole.PreferencesRole)
        self._file_menu = file_menu
        self._file_end = file_menu.addSeparator()
        quit_action = self._add(file_menu, "quit", self.tr("Quit"), self.close, "Ctrl+Q")
        quit_action.setMenuRole(QAction.MenuRole.QuitRole)
        edit = bar.addMenu(self.tr("&Edit"))
        self._add(edit, "undo", self.tr("Undo"), self.undo, "Ctrl+Z")
        redo = self._add(edit, "redo", self.tr("Redo"), self.redo, "Ctrl+Y")
        redo.setShortcuts([QKeySequence("Ctrl+Y"), QKeySequence("Ctrl+Shift+Z")])
        edit.addSeparator()
        self._add(edit, "find", self.tr("Find…"), self.open_find, "Ctrl+F")
        edit.addSeparator()
        self._add(edit, "correct", self.tr("Correct mixing time…"), self.correct_selected, "Ctrl+K")
        view = bar.addMenu(self.tr("&View"))
        self._add(view, "wall", self.tr("Wall view"), self.toggle_wall, "F11")
        leave = self._add(view, "leave", self.tr("Leave the wall view"), self.leave_wall, "Esc")
        leave.setEnabled(False)  # Esc belongs to forms and panels until there is a wall to leave
        club = bar.addMenu(self.tr("&Club"))
        self._club_menu = club
        self._add(club, "mix", self.tr("Mixed now…"), self.mix_selected, "Ctrl+M")
        self._add(club, "racked", self.tr("All racked…"), self.rack_selected, "Ctrl+R")
        club.addSeparator()
        self._add(club, "move", self.tr("Move to…"), self.move_selected, "F2")
        self._add(club, "take off", self.tr("Take off the rack"), self.take_off_selected, "F3")
        self._add(club, "out", self.tr("Out of the shop"), self.hand_out_selected, "Ctrl+F3")
        club.addSeparator()
        self._add(club, "disturb", self.tr("Disturbed"), self.disturb_selected, "F4")
        self._add(club, "answer", self.tr("Answer…"), self.answer_hold, "F5")
        club.addSeparator()
        self._add(
            club, "temperature", self.tr("Type a temperature…"), self.type_temperature, "Ctrl+T"
        )
        self._add(club, "promise", self.tr("Promised for…"), self.promise_selected, "Ctrl+P")
        help_menu = bar.addMenu(self.tr("&Help"))
        about = self._add(help_menu, "about", self.tr("About rackboard"), self.about, "F1")
        about.setMenuRole(QAction.MenuRole.AboutRole)

    def add_file_action(
        self, key: str, text: str, slot: Callable[[], object], shortcut: str
    ) -> None:
        """Add a command of the composition root (backups) above Quit."""
        action = QAction(text, self)
        action.setShortcut(QKeySequence(shortcut))
        action.triggered.connect(_without_checked(slot))
        self._file_menu.insertAction(self._file_end, action)
        self._actions[key] = action

    def _add(
        self, menu: QMenu, key: str, text: str, slot: Callable[[], object], shortcut: str
    ) -> QAction:
        action = QAction(text, self)
        action.setShortcut(QKeySequence(shortcut))
        action.triggered.connect(_without_checked(slot))
        menu.addAction(action)
        self.addAction(action)  # its key works on the wall too, where the menu bar is hidden
        self._actions[key] = action
        return action

    def action(self, key: str) -> QAction:
        """Return a command by its key."""
        return self._actions[key]

    def _show_actions(self) -> None:
        history = self.session.history
        for key, name, label in (
            ("undo", self.tr("Undo"), history.undo_label),
            ("redo", self.tr("Redo"), history.redo_label),
        ):
            self._actions[key].setEnabled(label is not None)
            self._actions[key].setText(f"{name} {label}" if label else name)
        standing = self.selected_standing()
        here = standing is not None
        glued = standing is not None and not standing.laid_out
        held = standing is not None and standing.hold is not None
        firm = not held and standing is not None and standing.base in (Word.BENCH, Word.CURED)
        for key, enabled in (
            ("leave", self.on_wall),
            ("mix", here and not glued), ("move", here), ("out", here), ("promise", here),
            ("take off", firm), ("correct", glued), ("disturb", glued and not held),
            ("answer", held),
            ("racked", glued and standing is not None and standing.batch.racked_us is None),
        ):  # fmt: skip
            self._actions[key].setEnabled(enabled)


def _without_checked(slot: Callable[[], object]) -> Callable[[bool], None]:
    def call(checked: bool = False) -> None:
        del checked
        slot()

    return call

