"""The icon in the tray: the next event, notices where there is no bus, and staying there."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QEvent, QObject, Signal
from PySide6.QtGui import QAction, QIcon
from PySide6.QtWidgets import QApplication, QMenu, QStyle, QSystemTrayIcon, QWidget
from shiboken6 import isValid

from rackboard.core.text import text
from rackboard.services.teller import Done, Message
from rackboard.ui.bus_courier import NAME, SHOW
from rackboard.ui.language import say, translated

Reason = QSystemTrayIcon.ActivationReason


class Tray(QObject):
    """The board's icon in the tray, with Open and Quit.

    Parameters
    ----------
    parent : QObject, optional
        Owner.
    is_there : callable, optional
        Returns whether the desktop has a tray; it may come and go.
    make_icon : callable, optional
        Returns a QSystemTrayIcon or what stands for one.
    """

    opened = Signal()
    """Somebody wants to see the window."""
    quit_asked = Signal()
    """Somebody wants the program to end."""
    message_clicked = Signal()
    """Somebody clicked the notice that was shown last."""

    def __init__(
        self,
        parent: QObject | None = None,
        is_there: Callable[[], bool] = QSystemTrayIcon.isSystemTrayAvailable,
        make_icon: Callable[[QIcon, QObject], Any] = QSystemTrayIcon,
    ) -> None:
        super().__init__(parent)
        self._is_there = is_there
        self._next = ""
        self._wanted = False
        self.menu = QMenu()
        self._open = QAction(self)
        self._quit = QAction(self)
        self._open.triggered.connect(self.opened)
        self._quit.triggered.connect(self.quit_asked)
        self.menu.addAction(self._open)
        self.menu.addSeparator()
        self.menu.addAction(self._quit)
        self.icon = make_icon(_picture(), self)
        self.icon.setContextMenu(self.menu)
        self.icon.activated.connect(self._on_activated)
        self.icon.messageClicked.connect(self.message_clicked)
        self.speak()

    @property
    def is_there(self) -> bool:
        """Whether there is a tray that shows the icon."""
        return self._is_there() and bool(self.icon.isVisible())

    def show(self) -> None:
        """Show the icon if there is a tray; it is asked again with each `show_next`."""
        self._wanted = True
        if self._is_there() and not self.icon.isVisible():
            self.icon.show()

    def hide(self) -> None:
        """Take the icon away."""
        self._wanted = False
        self.icon.hide()

    def speak(self) -> None:
        """Say everything in the language that is spoken now."""
        self._open.setText(say("Tray", "Open the board"))
        self._quit.setText(say("Tray", "Quit: alerts rest until the board is open again"))
        self.show_next(self._next)

    def show_next(self, words: str) -> None:
        """Say what comes next; an empty text says that nothing does."""
        self._next = words
        said = translated(words) if words else say("Tray", "Nothing is due.")
        self.icon.setToolTip(f"rackboard\n{said}")
        if self._wanted:
            self.show()  # a tray may come after us

    def notice(self, summary: str, body: str) -> bool:
        """Show a notice at the icon; False if there is no tray."""
        if not self.is_there:
            return False
        self.icon.showMessage(summary, body)
        return True

    def close(self) -> None:
        """Take icon and menu away for good."""
        self.hide()
        self.menu.deleteLater()

    def _on_activated(self, reason: QSystemTrayIcon.ActivationReason) -> None:
        if reason in (Reason.Trigger, Reason.DoubleClick):
            self.opened.emit()


class TrayCourier(QObject):
    """Desktop notices through the icon in the tray, where there is no bus.

    Parameters
    ----------
    tray : Tray
        Must be shown.
    parent : QObject, optional
        Owner.
    """

    name = NAME
    acted = Signal(object, str)
    """A person clicked the last notice: ids of the alerts, `SHOW`."""
    dismissed = Signal(object)
    """Never emitted: a tray doesn't tell how a notice went."""

    def __init__(self, tray: Tray, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._tray = tray
        self._last: Message | None = None
        tray.message_clicked.connect(self._on_clicked)

    def deliver(self, message: Message, done: Done) -> None:
        """Show a message; a tray can take nothing back."""
        if message.take_back:
            if self._last is not None and self._last.key == message.key:
                self._last = None
            done(None)
            return
        if not self._tray.notice(translated(message.summary), translated(message.body)):
            done(text("Courier", "there is no tray"))
            return
        self._last = message
        done(None)

    def close(self) -> None:
        """Forget the last notice."""
        self._last = None

    def _on_clicked(self) -> None:
        if self._last is not None and self._last.alerts:
            self.acted.emit(self._last.alerts, SHOW)


class Staying(QObject):
    """Lets a closed window go on in the tray, if it may and there is a tray; else it ends.

    Parameters
    ----------
    tray : Tray
        Where it goes on.
    may_stay : callable
        Returns whether the shop wants that.
    say_so : callable
        Is called each time the window goes to the tray, to say it once.
    parent : QObject, optional
        Owner.
    """

    def __init__(
        self,
        tray: Tray,
        may_stay: Callable[[], bool],
        say_so: Callable[[], None],
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._tray = tray
        self._may_stay = may_stay
        self._say_so = say_so
        self._leaving = False
        self._window: QWidget | None = None
        tray.opened.connect(self.open)
        tray.quit_asked.connect(self.quit)
        app = QApplication.instance()
        if isinstance(app, QApplication):
            # The desktop's session ends: nothing may hold it up.
            app.commitDataRequest.connect(self._on_session_end)

    def watch(self, window: QWidget) -> None:
        """Answer for this window from now on; another one is let go."""
        if self._window is not None and isValid(self._window):
            self._window.removeEventFilter(self)
        self._window = window
        window.installEventFilter(self)

    def open(self) -> None:
        """Bring the window to the front, from the tray or from below others."""
        if self._window is None:
            return
        QApplication.setQuitOnLastWindowClosed(True)
        bring_up(self._window)

    def quit(self) -> None:
        """End the program, whatever the settings say."""
        self._leaving = True
        if self._window is None:
            return
        hidden = self._window.isHidden()
        self._window.close()
        if hidden or not QApplication.quitOnLastWindowClosed():
            QApplication.quit()  # no window closed that anybody saw

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Turn closing into hiding where the program goes on."""
        if watched is not self._window or event.type() is not QEvent.Type.Close:
            return False
        if self._leaving or not self._tray.is_there or not self._may_stay():
            return False
        event.ignore()
        # A dialog that is opened and closed meanwhile must not end the program.
        QApplication.setQuitOnLastWindowClosed(False)
        self._window.hide()
        self._say_so()
        return True

    def _on_session_end(self, manager: object) -> None:
        del manager
        self._leaving = True


def bring_up(window: QWidget) -> None:
    """Show a window in front of all others, as large as it was."""
    if window.isMinimized():
        window.setWindowState(window.windowState() & ~_minimized())
    window.show()
    window.raise_()
    window.activateWindow()


def _minimized() -> Any:
    from PySide6.QtCore import Qt

    return Qt.WindowState.WindowMinimized


def _picture() -> QIcon:
    icon = QApplication.windowIcon()
    if icon.isNull():
        return QApplication.style().standardIcon(QStyle.StandardPixmap.SP_ComputerIcon)
    return icon
