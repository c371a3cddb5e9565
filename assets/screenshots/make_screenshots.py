"""Take the pictures of the README from the demo, always of the same instant.

    python assets/screenshots/make_screenshots.py [FOLDER]

Works on the platform that Qt finds: with QT_QPA_PLATFORM=offscreen, or in a window under Xvfb
(1920 × 1080). The data is the demo's, all invented; nothing of the user's is opened. The
pictures are written beside this script, or into FOLDER.
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path
from zoneinfo import ZoneInfo

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

from PySide6.QtCore import QEventLoop, Qt, QTimer  # noqa: E402
from PySide6.QtGui import QFont  # noqa: E402
from PySide6.QtTest import QTest  # noqa: E402
from PySide6.QtWidgets import QApplication, QDialog, QWidget  # noqa: E402

from rackboard.core.bench import PlaceKind  # noqa: E402
from rackboard.core.instants import Instant  # noqa: E402
from rackboard.core.words import Word  # noqa: E402
from rackboard.services.bench import Bench  # noqa: E402
from rackboard.services.board import Board  # noqa: E402
from rackboard.services.demo import demo_start, furnish_demo  # noqa: E402
from rackboard.store import Store  # noqa: E402
from rackboard.ui.language import speak  # noqa: E402
from rackboard.ui.main_window import MainWindow  # noqa: E402
from rackboard.ui.resources import SEMI_CONDENSED, load_fonts  # noqa: E402
from rackboard.ui.session import Session  # noqa: E402
from rackboard.ui.theme import Appearance  # noqa: E402

ZONE = ZoneInfo("Europe/Berlin")
LARGE, SMALL = (1920, 1080), (1280, 800)
CLUB = "5 iron"
"""The ring stands on the first one of this name."""
FREED = 4
"""The first slot that a cured club leaves."""


def logger_file() -> str:
    """Return a logger's file, invented: decimal commas, a gap, a line that is no reading."""
    lines = ["Nr;Datum;Uhrzeit;Temperatur (°C);Feuchte (%)"]
    for day in (23, 24, 25):
        for half_hour in range(48):
            hour, minute = divmod(half_hour * 30, 60)
            if day == 24 and 2 <= hour < 6:
                continue
            celsius = f"{17.0 + 4.5 * (8 <= hour < 18) - 0.1 * (hour % 5):.1f}".replace(".", ",")
            if (day, half_hour) == (25, 30):
                celsius = "n/a"
            lines.append(f"{len(lines)};{day:02}.02.2026;{hour:02}:{minute:02};{celsius};41")
    return "\n".join(lines) + "\n"


class StillClock:
    """Stands at one instant."""

    def __init__(self, instant: Instant) -> None:
        self.instant = instant

    def now(self) -> Instant:
        """Return it."""
        return self.instant


def settle(milliseconds: int = 300) -> None:
    """Let the window come to rest."""
    loop = QEventLoop()
    QTimer.singleShot(milliseconds, loop.quit)
    loop.exec()


def open_demo(scheme: str, size: tuple[int, int]) -> MainWindow:
    """Return the demo's window."""
    start = demo_start(ZONE)
    store = Store.open_memory()
    furnish_demo(store, start, ZONE)
    clock = StillClock(start)
    board = Board(store, clock, ZONE)
    session = Session(store, clock, board, Bench(store, clock, board.snapshot.hours))
    appearance = Appearance(scheme)
    window = MainWindow(session, appearance)
    appearance.setParent(window)
    session.setParent(window)
    window.resize(*size)
    window.move(0, 0)
    window.show()
    window.start()
    window.activateWindow()
    for standing in board.standings:
        if standing.club.name == CLUB and standing.stay is not None:
            window.select_club(standing.club.id)
            break
    settle()
    return window


def take(widget: QWidget, folder: Path, name: str) -> None:
    """Save a picture of a widget."""
    path = folder / f"{name}.png"
    if not widget.grab().save(str(path)):
        raise SystemExit(f"can't write {path}")
    print(f"{path.name}: {widget.width()} × {widget.height()}")


def close(window: QWidget) -> None:
    """Go on to the next picture with nothing left over."""
    window.hide()
    window.deleteLater()
    settle(50)


def boards(folder: Path) -> None:
    """Picture the board in both schemes and both sizes, and in the other language."""
    for name, scheme, size in (
        ("board-dark", "dark", LARGE),
        ("board-light", "light", LARGE),
        ("board-dark-1280", "dark", SMALL),
    ):
        window = open_demo(scheme, size)
        take(window, folder, name)
        close(window)
    speak("de")
    window = open_demo("dark", SMALL)
    take(window, folder, "board-german")
    close(window)
    speak("en")


def wall(folder: Path) -> None:
    """Picture the view that is read from across the room."""
    window = open_demo("dark", LARGE)
    window.toggle_wall()
    window.showNormal()
    window.resize(*LARGE)
    settle()
    take(window, folder, "wall")
    close(window)


def glue_up(folder: Path) -> None:
    """Picture three wedges being laid out, on slots that cured clubs have left."""
    window = open_demo("dark", LARGE)
    session = window.session
    for standing in list(session.board.standings):
        if standing.word is Word.CURED:
            session.take(session.bench.take_off(standing.club.id, PlaceKind.PICK_UP))
    rack = session.board.snapshot.place(PlaceKind.RACK)
    window.board.select(rack.id, FREED)
    window.new_job()
    settle()
    panel = window._glue_up
    assert panel is not None
    form = panel.hands.job
    form.customer.setText("D. Whitlow")
    form.phone.setText("0555 0102")
    form.promise.setText("Sat 08:00")
    form.clubs.setFocus()
    QTest.keyClicks(form.clubs, "50° wedge, 54° wedge, 58° wedge")
    QTest.keyClick(form.clubs, Qt.Key.Key_Return)
    settle()
    take(window, folder, "glue-up")
    close(window)


def dialogs(folder: Path) -> None:
    """Picture an epoxy's form, the import and the alerts."""
    from rackboard.services.alerts import Alerts
    from rackboard.ui.alerts_page import AlertsPage
    from rackboard.ui.epoxy_form import EpoxyForm
    from rackboard.ui.import_dialog import ImportDialog

    window = open_demo("dark", LARGE)
    day_long = list(window.session.board.snapshot.epoxies.values())[2]
    form = EpoxyForm(window.session, window, theme=window._appearance.theme, epoxy=day_long)
    shown(form, folder, "epoxy")
    importing = ImportDialog(window.session, window)
    with tempfile.TemporaryDirectory() as home:
        file = Path(home) / "logger-february.csv"
        file.write_text(logger_file(), encoding="utf-8")
        importing.open_file(file)
        while importing.reading:
            settle(20)
    shown(importing, folder, "import")
    session = window.session
    session.alerts = Alerts(session.store, session.clock)
    session.raise_due()
    shown(AlertsPage(session, window), folder, "alerts")
    close(window)


def shown(dialog: QDialog, folder: Path, name: str) -> None:
    """Show a dialog, save its picture, close it."""
    dialog.open()
    settle()
    take(dialog, folder, name)
    dialog.reject()
    settle(50)


def main() -> None:
    """Take all pictures."""
    folder = Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).resolve().parent
    folder.mkdir(parents=True, exist_ok=True)
    app = QApplication(sys.argv[:1])
    speak("en")
    app.setStyle("Fusion")
    load_fonts()
    font = QFont(SEMI_CONDENSED)
    font.setPixelSize(17)
    font.setWeight(QFont.Weight.Medium)
    app.setFont(font)
    boards(folder)
    wall(folder)
    glue_up(folder)
    dialogs(folder)


if __name__ == "__main__":
    main()
