"""Puts the window together: folders, store, services, theme, window, event loop."""

from __future__ import annotations

import sys
from collections.abc import Callable
from datetime import tzinfo
from pathlib import Path
from typing import TYPE_CHECKING, Any
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from PySide6.QtCore import QLocale, QLockFile, QTimer, QTimeZone
from PySide6.QtGui import QFont, QFontDatabase
from PySide6.QtWidgets import QApplication

from rackboard import preflight
from rackboard.core.errors import RackboardError, StoreError
from rackboard.core.instants import Clock
from rackboard.core.temperature import Unit
from rackboard.core.text import text
from rackboard.services.board import STALE_US, Board
from rackboard.services.founding import found_shop
from rackboard.services.snapshot import CONTRAST, LANGUAGE, THEME
from rackboard.store import Store
from rackboard.store.paths import Paths
from rackboard.ui import Options
from rackboard.ui.language import say, speak, translated
from rackboard.ui.main_window import MainWindow
from rackboard.ui.resources import SEMI_CONDENSED, load_fonts
from rackboard.ui.session import Session
from rackboard.ui.theme import Appearance

if TYPE_CHECKING:
    from rackboard.core.feed import Feed
    from rackboard.services.demo import DemoFeed
    from rackboard.services.housekeeping import ClockWatch, DailyBackup
    from rackboard.ui.couriers import Couriers
    from rackboard.ui.instance import Instance

_AFTER_PAINT_MS = 200
_UNSEEN_MS = 2_000
_ROUND_MS = 10_000
_BACKUP_MS = 50
_DEMO_MS = 60_000  # how often the demo's sensors are asked, by its own clock
_FASTEST_MS = 100


def system_zone() -> tzinfo:
    """Return the machine's time zone; UTC if it can't be told."""
    name = bytes(QTimeZone.systemTimeZoneId().data()).decode("ascii", "replace")
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError):
        return ZoneInfo("UTC")


def paths_for(options: Options) -> Paths:
    """Return the folders of this start; the demo's lie apart from the real ones."""
    paths = Paths.of_user() if options.data_dir is None else Paths.below(Path(options.data_dir))
    return Paths.below(paths.data / "demo") if options.demo else paths


class InUseError(StoreError):
    """Another board has this folder."""


class Program:
    """One running board: opened, shown, closed."""

    def __init__(self, options: Options, zone: tzinfo) -> None:
        self._options = options
        self._zone = zone
        self.paths = paths_for(options)
        self.paths.prepare()
        self._lock = QLockFile(str(self.paths.lock))
        self._lock.setStaleLockTime(0)
        if not self._lock.tryLock(0):
            raise InUseError(
                text("Store", "Another board already uses {folder}.").format(
                    folder=self.paths.data
                ),
                text("Store", "Use that window, or choose another folder with --data-dir."),
            )
        from rackboard.logs import Log
        from rackboard.ui.trouble import Trouble

        self._log = Log(self.paths.logs)
        self._trouble = Trouble(self._log.files.log)
        self._trouble.install()
        self.clock: Clock = options.clock
        self._demo_feed: DemoFeed | None = None
        self._watch: ClockWatch | None = None
        self._backup: DailyBackup | None = None
        self._couriers: Couriers | None = None
        self._instance: Instance | None = None
        self._odd_clock: str | None = None
        self._timers: list[QTimer] = []
        self.window = self._open()

    def _open(self) -> MainWindow:
        store, self.clock = self._open_store()
        board = Board(store, self.clock, self._zone)
        board.stale_us = round(STALE_US * self._options.speed)
        session = Session(store, self.clock, board)
        session.locale_unit = _locale_unit()
        speak(str(board.snapshot.settings.get(LANGUAGE) or ""))
        settings = board.snapshot.settings
        appearance = Appearance(
            str(settings.get(THEME) or ""), contrast=str(settings.get(CONTRAST) or "")
        )
        return self._make_window(session, appearance)

    def _make_window(self, session: Session, appearance: Appearance) -> MainWindow:
        window = MainWindow(session, appearance, self._notes)
        appearance.setParent(window)
        session.setParent(window)
        window.language_changed.connect(self.speak_anew)
        if not self._options.demo:  # the demo is furnished anew at every start
            window.commands.insert(
                "backups", say("Menu", "Backups…"), self.open_backups, "Ctrl+B"
            )
        self._trouble.set_window(window)
        self._watch_window(session, window)
        return window

    def _watch_window(self, session: Session, window: MainWindow) -> None:
        """Let the couriers answer for this window from now on."""
        if self._couriers is not None:
            session.couriers = self._couriers
            self._couriers.watch(session, window)

    def _open_store(self) -> tuple[Store, Clock]:
        clock = self._options.clock
        speak("")  # names that are given once, at founding, are in the language of then
        if not self._options.demo:
            store = Store.open(self.paths, clock.now())
            found_shop(store, clock.now(), translated)
            return store, clock
        from rackboard.services.demo import DemoFeed, FastClock, demo_start, furnish_demo

        self.paths.database.unlink(missing_ok=True)
        store = Store.open(self.paths, clock.now())
        start = demo_start(self._zone)
        furnish_demo(store, start, self._zone, translated)
        self._demo_feed = DemoFeed(store, self._zone)
        return store, FastClock(clock, start, self._options.speed)

    def show(self) -> None:
        """Show the window; the forecasts are worked out once it is painted."""
        self.window.first_painted.connect(self._start)
        self.window.show()
        QTimer.singleShot(_UNSEEN_MS, self._start)  # a minimised window is never painted

    def _start(self) -> None:
        if self.window.started:
            return
        self.window.start()
        QTimer.singleShot(_AFTER_PAINT_MS, self._start_rest)

    def _start_rest(self) -> None:
        """Begin what the first picture doesn't need: couriers, backup, the demo's sensors."""
        if self.window.stopped or self.window.session.alerts is not None:
            return  # closed meanwhile, or begun by the window before this one
        from rackboard.services.feeding import Feeding
        from rackboard.services.housekeeping import ClockWatch, DailyBackup
        from rackboard.ui.icon import window_icon

        QApplication.setWindowIcon(window_icon())
        session = self.window.session
        if self._couriers is None:
            self._couriers = self._make_couriers()
        if not self._options.demo:
            session.feeding = Feeding(session.store, self.clock, _open_feed)
        session.alerts = self._couriers.make_alerts()
        elapsed = None if self._options.demo else getattr(self.clock, "elapsed", None)
        self._watch = ClockWatch(session.store, elapsed)
        self._backup = DailyBackup(session.store, self.clock)
        self._timers = [
            self._timer(_ROUND_MS, self._go_round),
            self._timer(_BACKUP_MS, self._step_backup),
        ]
        if self._options.demo:
            fast = max(int(_DEMO_MS / self._options.speed), _FASTEST_MS)
            self._timers.append(self._timer(fast, self._feed_demo))
        self._go_round()

    def _make_couriers(self) -> Couriers:
        """Make what reaches people outside the window, and answer later starts."""
        from rackboard.ui.autostart import of_system
        from rackboard.ui.couriers import Couriers
        from rackboard.ui.instance import Instance

        demo, session = self._options.demo, self.window.session
        couriers = session.couriers = Couriers(
            session, self.window, is_demo=demo,
            autostart=None if demo else of_system(self._options.data_dir),
        )  # fmt: skip
        couriers.shown.connect(self._on_shown)
        self._instance = Instance(self.paths)
        self._instance.asked.connect(couriers.show)
        return couriers

    def _on_shown(self, club_id: int | None) -> None:
        if club_id is not None:
            self.window.select_club(club_id)

    def _timer(self, interval_ms: int, slot: Callable[[], None]) -> QTimer:
        timer = QTimer(self.window.session)
        timer.setInterval(interval_ms)
        timer.timeout.connect(slot)
        timer.start()
        return timer

    def _go_round(self) -> None:
        """Every ten seconds: look at the clock, raise what is due, begin the day's backup."""
        session = self.window.session
        if self._watch is not None:
            self._odd_clock = self._watch.check(self.clock.now())
        session.raise_due()
        if self._backup is not None and not self._options.demo and self._backup.step():
            self._timers[1].start()

    def _step_backup(self) -> None:
        if self._backup is None or not self._backup.at_work or not self._backup.step():
            self._timers[1].stop()

    def _feed_demo(self) -> None:
        if self._demo_feed is None:
            return
        changes = self._demo_feed.feed(self.clock.now())
        if changes is not None:
            self.window.session.take(changes)
        else:
            self.window.session.tick()

    def _notes(self) -> list[str]:
        """Return what the board has to say of itself."""
        session = getattr(self, "window", None) and self.window.session
        lines = [self._odd_clock, self._backup.trouble if self._backup else None]
        if session and session.couriers is not None:
            lines += session.couriers.lines()
        if session and session.feeding is not None:
            zones = session.board.snapshot.zones
            lines += [session.feed_trouble and translated(session.feed_trouble)]
            lines += [
                say("Board", "{zone}: {what} Since {time}.").format(
                    zone=zones[trouble.zone_id].name, what=translated(trouble.said),
                    time=f"{session.board.snapshot.hours.local(trouble.since_us):%H:%M}",
                )
                for trouble in session.feeding.troubles if trouble.zone_id in zones
            ]  # fmt: skip
        return [line for line in lines if line]

    def speak_anew(self) -> None:
        """Make the window anew in the language that is set; the shop stays open."""
        old = self.window
        session = old.session
        speak(str(session.board.snapshot.settings.get(LANGUAGE) or ""))
        geometry, on_wall = old.saveGeometry(), old.on_wall
        old.stop()
        old.setEnabled(False)
        self.window = self._make_window(session, old.appearance)
        self.window.restoreGeometry(geometry)
        self.window.show()
        self.window.start()
        if on_wall:
            self.window.toggle_wall()
        old.close()
        old.deleteLater()

    def open_backups(self) -> None:
        """Show the backups."""
        from rackboard.ui.backup_dialog import BackupDialog

        BackupDialog(self.window.session, self.restore, self.window).open()

    def restore(self, backup: Path) -> None:
        """Put a backup in the place of the present data, which is backed up first."""
        from rackboard.store.backup import restore

        old = self.window
        if self._backup is not None:
            self._backup.stop()
        for timer in self._timers:
            timer.stop()
        geometry, on_wall = old.saveGeometry(), old.on_wall
        old.stop()
        old.setEnabled(False)
        old.session.store.close()
        fault: RackboardError | None = None
        try:
            restore(self.paths, backup, self.clock.now())
        except RackboardError as error:
            fault = error  # the old data are still there: open them again and say so there
        try:
            self.window = self._open()
        except RackboardError as error:
            app = QApplication.instance()
            assert isinstance(app, QApplication)
            _show_fault(app, error)
            app.exit(1)
            return
        self.window.restoreGeometry(geometry)
        self.show()
        if on_wall:
            self.window.toggle_wall()
        old.close()
        old.deleteLater()
        if fault is not None:
            from rackboard.ui.message import say_error

            say_error(self.window, fault)

    def close(self) -> None:
        """Close the data file and the log."""
        if self._backup is not None:
            self._backup.stop()
        for timer in self._timers:
            timer.stop()
        if self.window.started:
            self.window.stop()
        if self._instance is not None:
            self._instance.close()
        if self._couriers is not None:
            self._couriers.close()
        self.window.session.store.close()
        self._log.close()
        self._lock.unlock()


def _open_feed(*values: Any, **named: Any) -> Feed:
    """Open a source of temperatures; what that takes is loaded with the first one."""
    from rackboard.feeds.live import open_feed

    return open_feed(*values, **named)


def _locale_unit() -> Unit:
    """Return the unit of the user's country."""
    system = QLocale.system().measurementSystem()
    return Unit.F if system is QLocale.MeasurementSystem.ImperialUSSystem else Unit.C


def _show_fault(app: QApplication, error: RackboardError) -> None:
    """Say in a window why the board can't open; whoever started it from a menu sees no prompt."""
    if app.platformName() == "offscreen":
        return
    from rackboard.ui.message import MessageDialog

    MessageDialog(None, error.message, error.remedy).exec()


def run(options: Options) -> int:
    """Open the board and return the exit code."""
    app = QApplication.instance() or QApplication(sys.argv[:1])
    assert isinstance(app, QApplication)
    app.setStyle("Fusion")
    app.setApplicationName("rackboard")
    app.setApplicationDisplayName("rackboard")
    app.setDesktopFileName("rackboard")
    trouble = preflight.font_trouble(QFontDatabase.families())
    if trouble is not None:
        print(trouble, file=sys.stderr)
        return 2
    if load_fonts():
        font = QFont(SEMI_CONDENSED)
        font.setPixelSize(17)
        font.setWeight(QFont.Weight.Medium)
        app.setFont(font)
    try:
        program = Program(options, system_zone())
    except InUseError as error:
        from rackboard.ui.instance import call_first

        if call_first(paths_for(options)):
            return 0  # the first window is in front now
        _show_fault(app, error)
        raise
    except RackboardError as error:
        _show_fault(app, error)
        raise
    program.show()
    code = app.exec()
    program.close()
    return code
