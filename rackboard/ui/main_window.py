"""The window: menus, the board, its panels and dialogs, and the two timers."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QTimer, Signal
from PySide6.QtGui import QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QMainWindow, QStackedWidget, QWidget

from rackboard.core.standing import Standing
from rackboard.services.snapshot import CONTRAST, LANGUAGE, MOTION, THEME
from rackboard.ui import type
from rackboard.ui.board import Board
from rackboard.ui.board_presenter import BoardPresenter
from rackboard.ui.board_view import BoardView, Happening
from rackboard.ui.commands import Commands
from rackboard.ui.doing import Doing
from rackboard.ui.grid import MENU, grid
from rackboard.ui.language import say
from rackboard.ui.session import Session
from rackboard.ui.theme import Appearance, Theme
from rackboard.ui.type import Roles

if TYPE_CHECKING:
    from rackboard.services.agenda import NightQuestion
    from rackboard.ui.alerts_presenter import AlarmCard
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
    language_changed = Signal()
    """Another language is set: the window has to be made anew."""
    _painted = _started = _stopped = _still = False

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
        self._cards: dict[str, AlarmCard] = {}
        self._shown_minute = -1
        self._shown_stale = False
        self._planned: list[tuple[int, int]] = []
        self.setWindowTitle(self._title())
        self.board = Board(appearance.theme, self)
        self._views = QStackedWidget(self)
        self._views.addWidget(self.board)
        self.setCentralWidget(self._views)
        self.doing = Doing(session, self, self.selected_standing, self._selected_zone)
        self.commands = Commands(self, self._slots())
        self._connect()
        self._language = self._setting(LANGUAGE)
        self._look = (self._setting(THEME), self._setting(CONTRAST))
        self._take_settings()
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
        from rackboard.ui.carrying import Carrying  # nothing is dragged before the first picture

        board = self.board
        carrying = Carrying(self.session, self, (board.rack, board.box, board.chips))
        carrying.club_chosen.connect(self.select_club)
        self.session.tick()
        if self.board.selected() is None:
            self._select_first()
        self.refresh()
        from rackboard.ui.announcing import Announcements

        self._announcements = Announcements(self.session, self, self.selected_standing)
        self.doing.undone.connect(self._announcements.undone)
        self.doing.redone.connect(self._announcements.redone)
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
    def stopped(self) -> bool:
        """Whether it looks at nothing any more."""
        return self._stopped

    @property
    def appearance(self) -> Appearance:
        """The colour scheme."""
        return self._appearance

    @property
    def started(self) -> bool:
        """Whether the forecasts are worked out and the timers run."""
        return self._started

    def stop(self) -> None:
        """Stop the timers and look at nothing any more, before the data file is closed."""
        self._stopped = True
        for timer in (self._clock_timer, self._engine_timer, self._blink_timer):
            timer.stop()

    def quit(self) -> None:
        """End the program, also where a closed window would go on in the tray."""
        couriers = self.session.couriers
        if couriers is None:
            self.close()
        else:
            couriers.staying.quit()

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
            # When the rest of it is painted too:
            QTimer.singleShot(0, self, self.first_painted.emit)

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
            self.session.board, now, self.session.unit, self._planned, self._taken_joints()
        )
        lines = self._happenings(presenter)
        self.board.show_view(
            BoardView(
                presenter.strip(), presenter.racks(), presenter.chips(), presenter.jobs(),
                lines[0], lines[1], self._inspector(presenter),
            )
        )  # fmt: skip
        self._show_wall(presenter)
        self._show_commands()
        if self._is_first_run():
            self._show_first_run()

    def _show_wall(self, presenter: BoardPresenter) -> None:
        if self._wall is not None and self.on_wall:
            from rackboard.ui.wall_presenter import WallPresenter

            self._wall.show_view(WallPresenter(presenter).view())

    def _happenings(self, presenter: BoardPresenter) -> tuple[str, tuple[Happening, ...]]:
        from rackboard.ui.happening_presenter import SHOWN_US, HappeningPresenter

        events = self.session.store.journal.events(_EVENTS, from_us=presenter.now - SHOWN_US)
        notes = [*self._notes(), *self._extra_notes]
        maker = HappeningPresenter(presenter, notes)
        if self._has_alarms():
            from rackboard.ui.alarm_happenings import alarm_lines

            assert self.session.alerts is not None

            found = alarm_lines(self.session.alerts, self.session.board, presenter.times)
            self._cards = found.cards
            maker = HappeningPresenter(presenter, notes, found.lines, found.disturbed)
        happenings = maker.happenings(events)
        return maker.head(happenings), happenings

    def _has_alarms(self) -> bool:
        alerts = self.session.alerts
        return alerts is not None and any(alert.is_alarm for alert in alerts.open)

    def _taken_joints(self) -> set[int]:
        if not self._has_alarms():
            return set()
        from rackboard.ui.alarm_happenings import taken_joints

        assert self.session.alerts is not None
        return taken_joints(self.session.alerts)

    def _inspector(self, presenter: BoardPresenter) -> InspectorView | None:
        standing, slot = self.selected_standing(), self.board.selected()
        if standing is None and slot is None:
            return None
        from rackboard.ui.inspector_presenter import InspectorPresenter

        if standing is not None:
            return InspectorPresenter(presenter).joint(standing)
        assert slot is not None
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

    def _setting(self, key: str) -> object:
        return self.session.board.snapshot.settings.get(key)

    def _take_settings(self) -> None:
        """Let what is set take effect, also when an undo has set it."""
        settings = self.session.board.snapshot.settings
        look = (settings.get(THEME), settings.get(CONTRAST))
        if look != self._look:
            self._look = look
            self._appearance.take_settings(settings)
        still = bool(settings.get(MOTION))
        if still is not self._still:
            self._still = still
            self.board.set_reduced_motion(still)
        if self._wall is not None:
            from rackboard.ui.screen_settings import screen_pitch_mm
            from rackboard.ui.wall_size import viewing_of

            self._wall.set_reduced_motion(still)
            self._wall.set_viewing(viewing_of(settings, screen_pitch_mm(self)))
        if settings.get(LANGUAGE) != self._language:
            self._language = settings.get(LANGUAGE)
            QTimer.singleShot(0, self, self.language_changed.emit)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give the menu bar the height and type of the board's size."""
        super().resizeEvent(event)
        self._fit_menu_bar()

    def _fit_menu_bar(self) -> None:
        # Of the size that the board will have: it is resized after its window.
        at = grid(self.width(), self.height() - MENU)
        bar = self.menuBar()
        bar.setFont(type.font(Roles(large=at.large).small))
        bar.setFixedHeight(at.menu)

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
        board.temperature_clicked.connect(self.doing.temperature)
        board.chip_clicked.connect(self._on_chip_clicked)
        board.job_clicked.connect(self._on_job_clicked)
        board.ready_clicked.connect(self._on_ready_clicked)
        board.alarm_answered.connect(self._on_alarm_answered)
        board.action_chosen.connect(self._on_action_chosen)
        self._appearance.theme_changed.connect(self._show_theme)
        doing = self.doing
        doing.club_chosen.connect(self.select_club)
        doing.job_chosen.connect(self._on_job_clicked)
        doing.theme_chosen.connect(self._appearance.set_override)
        doing.refused.connect(self._show_commands)

    def _on_acted(self, changes: object) -> None:
        del changes
        self.setWindowTitle(self._title())
        self._take_settings()
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
            where = say("Board", "{zone}, lowest of the night").format(zone=zone)
            low_mc = parse_temperature(text, self.session.unit, where)
            self.session.take(self.session.bench.answer_night(question, low_mc))

        self.doing.act(answer)

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
        self.doing.ready(job_id)

    def _on_alarm_answered(self, key: str) -> None:
        card = self._cards.get(key)
        if card is not None:
            self.doing.answer_alarm(card)
            return
        kind, _, number = key.partition(":")
        if kind == "hold":
            for standing in self.session.board.standings:
                if standing.joint.id == int(number):
                    self.doing.answer(standing)
                    return

    def _on_action_chosen(self, key: str) -> None:
        if key == "more":
            self.commands.menu("club").popup(self.board.mapToGlobal(self.board.rect().center()))
            return
        names = {
            "lay out": "new", "mix": "mix", "racked": "racked", "disturb": "disturb",
            "answer": "answer", "move": "move", "take off": "take off", "out": "out",
            "temperature": "temperature", "record": "record", "table": "table",
        }  # fmt: skip
        action = self.commands.get(names.get(key, ""))
        if action is not None:
            action.trigger()

    # Acts

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
            self._take_settings()
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

    # Commands

    def _slots(self) -> dict[str, Callable[[], object]]:
        doing = self.doing
        return {
            "new": self.new_job, "import": doing.import_record, "shelf": doing.shelf,
            "erase": doing.erase_customer, "settings": doing.settings, "quit": self.quit,
            "undo": doing.undo, "redo": doing.redo, "find": doing.find,
            "correct": doing.correct, "wall": self.toggle_wall, "leave": self.leave_wall,
            "mix": self.mix_selected, "racked": self.rack_selected, "move": doing.move,
            "take off": doing.take_off, "out": doing.hand_out, "disturb": doing.disturb,
            "answer": doing.answer, "swap": doing.swap, "release": doing.release,
            "ready": doing.ready, "temperature": doing.temperature, "promise": doing.promise,
            "sources": doing.sources, "alerts": doing.alerts, "about": doing.about,
            "help": doing.help, "happened": self.board.usual.head.toggle,
            "record": doing.record, "table": doing.table, "sheet": doing.sheet,
        }  # fmt: skip

    def _show_commands(self) -> None:
        self.commands.show(
            self.selected_standing(), self.session.history, on_wall=self.on_wall
        )

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

    def _selected_zone(self) -> int:
        snapshot = self.session.board.snapshot
        slot = self.board.selected()
        if slot is not None:
            zone_id = snapshot.places[slot[0]].zone_id
            if zone_id is not None:
                return zone_id
        return next(iter(snapshot.zones))
