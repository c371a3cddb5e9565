"""Every dialog of the program, opened over the demo, one after the other. Needs Qt."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import (
    QAbstractScrollArea,
    QAbstractSpinBox,
    QApplication,
    QComboBox,
    QDialog,
    QFileDialog,
    QLabel,
    QScrollBar,
    QStackedWidget,
    QWidget,
)

from helpers.demo_window import DemoWindow
from rackboard.services.alerts import Alerts
from rackboard.services.feeding import Feeding
from rackboard.ui.dialog import Confirmation

NO_DIALOG = {"quit", "undo", "redo", "wall", "leave", "sheet", "take off", "out"}
"""Commands that open none, or one of the system's own."""
SLOTS = ("A4", "A7", "A11", "A13", "A14")
"""Cold, BENCH, WET, HOLD and laid out in the demo."""


def dialogs(demo: DemoWindow) -> Iterator[QDialog]:
    """Yield each kind of dialog once, open; it is closed afterwards."""
    seen: set[str] = set()
    for slot in SLOTS:
        demo.select(slot)
        for key, command in demo.window._slots().items():
            if key in NO_DIALOG:
                continue
            yield from _opened(demo, command, seen)
            demo.window._leave_panel()
    for make in _others(demo):
        yield from _opened(demo, make, seen)


def _opened(
    demo: DemoWindow, command: Callable[[], object], seen: set[str]
) -> Iterator[QDialog]:
    command()
    QApplication.processEvents()
    for dialog in demo.dialogs():
        assert not isinstance(dialog, QFileDialog)
        name = type(dialog).__name__
        if name not in seen:
            seen.add(name)
            yield dialog
        dialog.close()
        QApplication.processEvents()


def _others(demo: DemoWindow) -> list[Callable[[], Any]]:
    """Return what opens the dialogs that no command of the menus opens by itself."""
    window, session, doing = demo.window, demo.session, demo.window.doing

    def shown(made: QDialog) -> QDialog:
        made.show()
        return made

    def alerts() -> None:
        from rackboard.ui.alerts_page import AlertsPage

        if session.alerts is None:
            session.alerts = Alerts(session.store, session.clock, ())
            session.raise_due()
        shown(AlertsPage(session, window))

    def alert() -> None:
        from rackboard.ui.alert_dialog import AlertDialog

        assert session.alerts is not None
        shown(AlertDialog(session, session.alerts.open[0], window))

    def backups() -> None:
        from rackboard.ui.backup_dialog import BackupDialog

        shown(BackupDialog(session, lambda path: None, window))

    def message() -> None:
        from rackboard.ui.message import MessageDialog

        shown(MessageDialog(window, "The disk is full.", "Make room."))

    def trouble() -> None:
        from rackboard.ui.trouble_dialog import TroubleDialog

        shown(TroubleDialog("", "details", None, window))

    def form() -> None:
        from rackboard.ui.epoxy_form import EpoxyForm

        shown(EpoxyForm(session, window))

    def initials() -> None:
        from rackboard.ui.initials_dialog import ready_dialog

        shown(ready_dialog(session, session.board.standings[0].job.id, window))

    def swap() -> None:
        demo.select("A7")
        doing.swap()

    def feeds() -> None:
        from rackboard.ui.feed_settings import FeedDialog

        feeding = Feeding(session.store, session.clock, no_feed)
        shown(FeedDialog(session, feeding, window, sensors=list))

    def feed() -> None:
        from rackboard.ui.feed_form import FeedForm

        feeding = Feeding(session.store, session.clock, no_feed)
        zone = next(iter(session.board.snapshot.zones.values()))
        shown(FeedForm(session, feeding, zone, window, sensors=list))

    def place() -> None:
        from rackboard.ui.place_fields import PlaceForm

        shown(PlaceForm(session, window))

    def zone() -> None:
        from rackboard.ui.place_fields import ZoneForm

        shown(ZoneForm(session, window))

    def confirmation() -> None:
        asked = Confirmation(
            window, window.appearance.theme, "Erase", "Erase it?", "It can't be undone.",
            "Erase", "Cancel",
        )  # fmt: skip
        shown(asked)

    return [alerts, alert, backups, message, trouble, form, initials, swap, feeds, feed,
            place, zone, confirmation]  # fmt: skip


def no_feed(source: object) -> Any:
    """Open no source of temperatures."""
    raise AssertionError(source)


def focusable(top: QWidget) -> Iterator[QWidget]:
    """Yield what Tab or a tap can bring the focus to; not the inner parts of Qt's own controls."""
    for widget in top.findChildren(QWidget):
        parent = widget.parentWidget()
        inner = isinstance(parent, QComboBox | QAbstractSpinBox | QScrollBar) or (
            isinstance(parent, QAbstractScrollArea) and parent.viewport() is widget
        ) or isinstance(widget, QScrollBar) or _inside(widget, QComboBox)  # fmt: skip
        if inner or widget.focusPolicy() is Qt.FocusPolicy.NoFocus or _put_away(widget, top):
            continue
        if widget.focusProxy() is not None or (isinstance(widget, QLabel) and not widget.text()):
            continue  # the tabs of a page take its focus; a label without a text is not there
        yield widget


def _put_away(widget: QWidget, top: QWidget) -> bool:
    """Return whether a widget or what holds it is hidden for now; other pages' parts aren't."""
    while widget is not top:
        parent = widget.parentWidget()
        if widget.isHidden() and not isinstance(parent, QStackedWidget):
            return True
        if parent is None:
            return False
        widget = parent
    return False


def _inside(widget: QWidget, kind: type[QWidget]) -> bool:
    above = widget.parentWidget()
    while above is not None:
        if isinstance(above, kind):
            return True
        above = above.parentWidget()
    return False


def spoken_name(widget: QWidget) -> str:
    """Return the name that a screen reader is given."""
    interface = QAccessible.queryAccessibleInterface(widget)
    return interface.text(QAccessible.Text.Name) if interface is not None else ""
