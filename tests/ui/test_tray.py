"""The icon in the tray: what it says, its menu, notices, and a window that stays there."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from PySide6.QtCore import QEvent, QObject, Signal
from PySide6.QtGui import QIcon
from PySide6.QtWidgets import QApplication, QSystemTrayIcon, QWidget
from pytestqt.qtbot import QtBot

from helpers.session import make_session
from helpers.windows import make_window
from rackboard.services.teller import Message
from rackboard.ui.bus_courier import SHOW
from rackboard.ui.couriers import KEEP_RUNNING, SAID_STAYS, Couriers
from rackboard.ui.tray import Staying, Tray, TrayCourier, bring_up

ONE = Message("job safe:1:1", "Job 214: whole job safe to hit", "2 clubs.", alerts=(4,))


class Icon(QObject):
    """What a desktop with a tray would show."""

    activated = Signal(QSystemTrayIcon.ActivationReason)
    messageClicked = Signal()  # noqa: N815 (Qt's name)

    def __init__(self, icon: QIcon, parent: QObject) -> None:
        super().__init__(parent)
        self.shown = False
        self.tip = ""
        self.menu: Any = None
        self.messages: list[tuple[str, str]] = []
        assert not icon.isNull()

    def setContextMenu(self, menu: Any) -> None:  # noqa: N802
        self.menu = menu

    def setToolTip(self, tip: str) -> None:  # noqa: N802
        self.tip = tip

    def show(self) -> None:
        self.shown = True

    def hide(self) -> None:
        self.shown = False

    def isVisible(self) -> bool:  # noqa: N802
        return self.shown

    def showMessage(self, summary: str, body: str) -> None:  # noqa: N802
        assert self.shown
        self.messages.append((summary, body))


class Desktop:
    """A desktop whose tray can come and go."""

    def __init__(self) -> None:
        self.has_tray = True
        self.tray = Tray(None, lambda: self.has_tray, Icon)
        self.icon: Icon = self.tray.icon
        self.tray.show()


@pytest.fixture
def desktop(qtbot: QtBot) -> Iterator[Desktop]:
    made = Desktop()
    yield made
    made.tray.close()
    QApplication.setQuitOnLastWindowClosed(True)


def test_it_says_what_comes_next(desktop: Desktop) -> None:
    assert desktop.icon.tip == "rackboard\nNothing is due."
    desktop.tray.show_next("14:45 Last look: job 220")
    assert desktop.icon.tip == "rackboard\n14:45 Last look: job 220"


def test_its_menu_opens_and_quits(qtbot: QtBot, desktop: Desktop) -> None:
    opens, quits = (a for a in desktop.icon.menu.actions() if not a.isSeparator())
    assert opens.text() == "Open the board"
    assert quits.text() == "Quit: alerts rest until the board is open again"
    with qtbot.waitSignal(desktop.tray.opened):
        opens.trigger()
    with qtbot.waitSignal(desktop.tray.quit_asked):
        quits.trigger()


def test_a_click_opens_and_the_menu_key_does_not(qtbot: QtBot, desktop: Desktop) -> None:
    reason = QSystemTrayIcon.ActivationReason
    with qtbot.waitSignal(desktop.tray.opened):
        desktop.icon.activated.emit(reason.Trigger)
    with qtbot.assertNotEmitted(desktop.tray.opened):
        desktop.icon.activated.emit(reason.Context)


def test_a_tray_that_comes_later_is_found(desktop: Desktop) -> None:
    desktop.tray.hide()
    desktop.has_tray = False
    desktop.tray.show()
    assert not desktop.icon.shown
    desktop.has_tray = True
    desktop.tray.show_next("")
    assert desktop.icon.shown
    assert desktop.tray.is_there


def test_the_courier_shows_and_takes_its_click(qtbot: QtBot, desktop: Desktop) -> None:
    courier = TrayCourier(desktop.tray)
    said: list[str | None] = []
    courier.deliver(ONE, said.append)
    assert desktop.icon.messages == [(ONE.summary, ONE.body)]
    with qtbot.waitSignal(courier.acted) as chosen:
        desktop.icon.messageClicked.emit()
    assert chosen.args == [(4,), SHOW]
    courier.deliver(ONE._replace(take_back=True), said.append)
    with qtbot.assertNotEmitted(courier.acted):
        desktop.icon.messageClicked.emit()
    assert said == [None, None]


def test_without_a_tray_the_courier_says_so(desktop: Desktop) -> None:
    desktop.has_tray = False
    said: list[str | None] = []
    TrayCourier(desktop.tray).deliver(ONE, said.append)
    assert said == ["there is no tray"]
    assert desktop.icon.messages == []


# Staying


class Home:
    """A window that may stay in the tray."""

    def __init__(self, qtbot: QtBot, desktop: Desktop) -> None:
        self.may_stay = True
        self.said = 0
        self.window = make_window(qtbot)
        self.staying = Staying(desktop.tray, lambda: self.may_stay, self._say)
        self.staying.watch(self.window)

    def _say(self) -> None:
        self.said += 1


@pytest.fixture
def home(qtbot: QtBot, desktop: Desktop) -> Home:
    return Home(qtbot, desktop)


def test_a_closed_window_goes_to_the_tray_and_comes_back(desktop: Desktop, home: Home) -> None:
    assert not home.window.close()
    assert home.window.isHidden()
    assert home.said == 1
    assert not QApplication.quitOnLastWindowClosed()
    desktop.tray.opened.emit()
    assert home.window.isVisible()
    assert QApplication.quitOnLastWindowClosed()


@pytest.mark.parametrize("why", ["no tray", "not wanted", "quit"])
def test_else_closing_ends(desktop: Desktop, home: Home, why: str) -> None:
    if why == "no tray":
        desktop.has_tray = False
    elif why == "not wanted":
        home.may_stay = False
    if why == "quit":
        home.staying.quit()
    else:
        assert home.window.close()
    assert home.window.isHidden()
    assert QApplication.quitOnLastWindowClosed()
    assert home.said == 0


def test_quitting_from_the_tray_ends_it(
    desktop: Desktop, home: Home, monkeypatch: pytest.MonkeyPatch
) -> None:
    ended: list[int] = []
    monkeypatch.setattr(QApplication, "quit", lambda *args: ended.append(1))
    home.window.close()
    desktop.tray.quit_asked.emit()
    assert ended == [1]


def test_the_end_of_the_desktop_is_not_held_up(home: Home) -> None:
    home.staying._on_session_end(None)
    assert home.window.close()


def test_another_window_takes_the_place(qtbot: QtBot, home: Home) -> None:
    other = make_window(qtbot)
    home.staying.watch(other)
    assert home.window.close()
    assert not other.close()


def test_other_events_pass(home: Home) -> None:
    assert not home.staying.eventFilter(home.window, QEvent(QEvent.Type.WindowActivate))


def test_a_minimised_window_is_brought_up(qtbot: QtBot) -> None:
    window: QWidget = make_window(qtbot)
    window.showMinimized()
    bring_up(window)
    assert not window.isMinimized()
    assert window.isVisible()


def test_it_is_said_once_that_the_board_stays(qtbot: QtBot) -> None:
    session, _ = make_session()
    window = make_window(qtbot)
    made = Couriers(session, window)
    said: list[Message] = []
    made.desktop.deliver = (  # type: ignore[method-assign]
        lambda message, done: said.append(message)
    )
    try:
        made._say_stays()
        made._say_stays()
        assert [message.summary for message in said] == ["The board goes on in the tray"]
        assert session.board.snapshot.settings[SAID_STAYS] is True
        assert session.history.undo_label is None
        assert made._may_stay()
        with session.store.write("settings", 1) as act:
            act.set_setting(KEEP_RUNNING, False)
        session.take(act.changes)
        assert not made._may_stay()
    finally:
        made.close()


def test_a_demo_ends_with_its_window(qtbot: QtBot) -> None:
    session, _ = make_session()
    made = Couriers(session, make_window(qtbot), is_demo=True)
    assert not made._may_stay()
    made.close()
