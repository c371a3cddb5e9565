"""The couriers of this board, in order: desktop notice, sound, window alert.

The last of the chain is no courier: the list in the window is the rows themselves and can't
fail. None of them blocks, and each says what it did.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable, Mapping
from typing import TYPE_CHECKING, NamedTuple

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QApplication, QWidget
from shiboken6 import isValid

from rackboard.core.alerts.kinds import NATURE, Kind, Subject
from rackboard.core.errors import InputError
from rackboard.core.instants import Clock, Instant
from rackboard.core.text import text
from rackboard.services.alerts import Alerts
from rackboard.services.teller import Courier, Done, Message
from rackboard.ui import sound
from rackboard.ui.awake import Awake
from rackboard.ui.bus_courier import GOT_IT, NAME, SHOW, BusCourier
from rackboard.ui.language import say, translated
from rackboard.ui.session import Session
from rackboard.ui.sound import FULL, SoundCourier
from rackboard.ui.tray import Staying, Tray, TrayCourier

if TYPE_CHECKING:
    from rackboard.ui.autostart import Autostart

__all__ = [
    "GOT_IT", "KEEP_RUNNING", "NAME", "NOTICES", "SAID_STAYS", "SHOW", "SOUND", "VOLUME",
    "Chain", "Couriers", "Report", "WindowCourier", "club_of", "desktop_courier", "trouble_words",
]  # fmt: skip

NOTICES = "desktop notices"
"""Setting: whether notices are shown on the desktop; by default they are."""
SOUND = "sound"
"""Setting: whether alerts sound; by default they do."""
VOLUME = "volume"
"""Setting: how loud, 0 to 100."""
USUAL_VOLUME = 80
KEEP_RUNNING = "keep running in the tray"
"""Setting: whether a closed window goes on in the tray; by default it does."""
SAID_STAYS = "said that it stays in the tray"
"""Setting: whether a person has been told so."""
WINDOW_NAME = text("Courier", "Window alert")
BRIEFLY_MS = 5_000
"""So long the window's entry asks for a look at what is no alarm [decision]."""

Settings = Callable[[], Mapping[str, object]]


class Report(NamedTuple):
    """What a courier did last, and when [µs UTC]; `reason` is None if it worked."""

    at_us: Instant
    reason: str | None


def desktop_courier(
    parent: QObject | None = None, tray: Tray | None = None
) -> BusCourier | TrayCourier:
    """Return the courier of this system: the notification server's, elsewhere the tray's."""
    if sys.platform.startswith("linux"):
        return BusCourier(parent)
    return TrayCourier(tray or Tray(parent), parent)


class WindowCourier:
    """Lets the window's entry in the task bar ask for a look, until an alarm has got one.

    Parameters
    ----------
    window : callable
        Returns the window, None while there is none.
    alert : callable, optional
        As QApplication.alert.
    """

    name = WINDOW_NAME

    def __init__(
        self,
        window: Callable[[], QWidget | None],
        alert: Callable[[QWidget, int], object] = QApplication.alert,
    ) -> None:
        self._window = window
        self._alert = alert

    def deliver(self, message: Message, done: Done) -> None:
        """Ask for a look; a window that is in use needs none."""
        window = self._window()
        if window is None:
            done(text("Courier", "there is no window"))
            return
        if not message.take_back and not window.isHidden():
            self._alert(window, 0 if message.critical else BRIEFLY_MS)
        done(None)


class Link:
    """One courier of the chain: can be switched off, and what it did last is kept.

    Parameters
    ----------
    courier : Courier
        Does the work.
    is_on : callable
        Returns whether it is switched on.
    counts : callable
        Returns whether a message gives it anything to do.
    reported : callable
        Hears each time it has done something.
    """

    def __init__(
        self,
        courier: Courier,
        is_on: Callable[[], bool],
        counts: Callable[[Message], bool],
        reported: Callable[[str, str | None], None],
    ) -> None:
        self._courier = courier
        self._is_on = is_on
        self._counts = counts
        self._reported = reported

    @property
    def name(self) -> str:
        """As the courier's."""
        return self._courier.name

    @property
    def is_on(self) -> bool:
        """Whether it is switched on."""
        return self._is_on()

    def deliver(self, message: Message, done: Done) -> None:
        """Hand it on; while it is off only what was shown is taken back."""
        if not message.take_back and not self._is_on():
            done(None)
            return

        def heard(reason: str | None) -> None:
            if self._counts(message):
                self._reported(self.name, reason)
            done(reason)

        try:
            self._courier.deliver(message, heard)
        except Exception as error:  # a courier may fail in any way
            heard(str(error) or type(error).__name__)


class Chain(QObject):
    """The couriers in their order, each with its switch and its last report.

    Parameters
    ----------
    clock : Clock
        The time.
    settings : callable
        Returns the stored settings.
    links : sequence of tuple
        Of each courier and the setting that switches it off, "" if none does.
    parent : QObject, optional
        Owner.
    """

    reported = Signal()
    """One of them has done something, or failed to."""

    def __init__(
        self,
        clock: Clock,
        settings: Settings,
        links: list[tuple[Courier, str]],
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._clock = clock
        self.reports: dict[str, Report] = {}
        self.couriers = tuple(
            Link(courier, _switch(settings, key), _sounds if key == SOUND else _shows, self._note)
            for courier, key in links
        )

    def _note(self, name: str, reason: str | None) -> None:
        self.reports[name] = Report(self._clock.now(), reason)
        self.reported.emit()


def _sounds(message: Message) -> bool:
    return bool(message.sound) and not message.take_back


def _shows(message: Message) -> bool:
    return not message.take_back


def _switch(settings: Settings, key: str) -> Callable[[], bool]:
    return lambda: not key or settings().get(key) is not False


class Couriers(QObject):
    """All that reaches people outside the window, put together for one program start.

    Parameters
    ----------
    session : Session
        The open shop.
    window : QWidget
        The board's window.
    parent : QObject, optional
        Owner; must outlive session and window, which may be made anew.
    autostart : Autostart, optional
        Start at login; None where that makes no sense, as for the demo.
    is_demo : bool, optional
        A demo keeps no computer awake and ends when its window is closed.
    """

    shown = Signal(object)
    """A person wants to see what a notice tells of: the club's id, or None."""

    def __init__(
        self,
        session: Session,
        window: QWidget,
        parent: QObject | None = None,
        autostart: Autostart | None = None,
        *,
        is_demo: bool = False,
    ) -> None:
        super().__init__(parent)
        self._session = session
        self._window = window
        self._is_demo = is_demo
        self.autostart = autostart
        self.tray = Tray(self)
        self.desktop = desktop_courier(self, self.tray)
        self.sound = SoundCourier(self, self._volume)
        self.window_alert = WindowCourier(lambda: self._window)
        self.chain = Chain(
            session.clock, self._settings,
            [(self.desktop, NOTICES), (self.sound, SOUND), (self.window_alert, "")], self,
        )  # fmt: skip
        self.awake = Awake(self)
        self.staying = Staying(self.tray, self._may_stay, self._say_stays, self)
        self.desktop.acted.connect(self._on_acted)
        self.desktop.dismissed.connect(self._on_dismissed)
        self.tray.show()
        self.watch(session, window)

    def watch(self, session: Session, window: QWidget) -> None:
        """Answer for this session and window from now on: they may be made anew."""
        if session is not self._session and isValid(self._session):
            for signal in (self._session.acted, self._session.ticked):
                signal.disconnect(self._show_next)
        is_new = session is not self._session or not self._watching
        self._session, self._window, self._watching = session, window, True
        if is_new:
            session.acted.connect(self._show_next)
            session.ticked.connect(self._show_next)
        self.staying.watch(window)
        if not self._is_demo:
            self.awake.follow(session)
        self.tray.speak()
        self._show_next()

    _watching = False

    def make_alerts(self) -> Alerts:
        """Return the engine of alerts that calls these couriers."""
        return Alerts(self._session.store, self._session.clock, self.chain.couriers)

    def lines(self) -> list[str]:
        """Return what the list on the board has to say of the couriers, and of sleep."""
        session = self._session
        lines = []
        if session.alerts is not None:
            hours = session.board.snapshot.hours
            lines = [
                trouble_words(name, f"{hours.local(since):%H:%M}")
                for name, since in session.alerts.teller.troubles
            ]
        sleep = self.awake.trouble
        return lines if sleep is None else [*lines, translated(sleep)]

    def show(self) -> None:
        """Bring the window to the front, from the tray or from below others."""
        self.staying.open()

    def close(self) -> None:
        """Let go of everything, with the program."""
        self.awake.close()
        self.sound.close()
        self.desktop.close()
        self.tray.close()

    def _show_next(self) -> None:
        if not self.tray.is_there:
            self.tray.show()
            return
        from rackboard.ui.board_presenter import BoardPresenter

        session = self._session
        presenter = BoardPresenter(session.board, session.clock.now(), session.unit, [])
        coming = presenter.coming()
        due = presenter.due_line(coming[0]) if coming else None
        self.tray.show_next("" if due is None else f"{due.time} {due.title}")

    # What people do

    def _on_acted(self, alerts: tuple[int, ...], action: str) -> None:
        if action == SHOW:
            self.show()
            self.shown.emit(club_of(self._session, alerts))
        elif self._session.alerts is not None:
            try:
                self._session.take(self._session.alerts.got_it(alerts))
            except InputError:
                return  # it was answered on the board meanwhile; the notice goes with the tick

    def _on_dismissed(self, alerts: tuple[int, ...]) -> None:
        if self._session.alerts is not None:
            self._session.take(self._session.alerts.see(alerts))

    # Settings

    def _settings(self) -> Mapping[str, object]:
        return self._session.board.snapshot.settings

    def _volume(self) -> int:
        return volume_of(self._settings())

    def _may_stay(self) -> bool:
        return not self._is_demo and self._settings().get(KEEP_RUNNING) is not False

    def _say_stays(self) -> None:
        if self._settings().get(SAID_STAYS):
            return
        summary = say("Tray", "The board goes on in the tray")
        body = say("Tray", "Closing the window leaves it there, so that alerts are told. Quit ends"
                   " it. Settings, Notices and sounds, says otherwise.")  # fmt: skip
        self.desktop.deliver(Message("staying", summary, body), _unheeded)
        with self._session.store.write("tray", self._session.clock.now()) as act:
            act.set_setting(SAID_STAYS, True)
            act.forbid_undo()
        self._session.take(act.changes)


def club_of(session: Session, alerts: Iterable[int]) -> int | None:
    """Return a club that one of these alerts is about, the most pressing first."""
    wanted = set(alerts)
    found = [] if session.alerts is None else [a for a in session.alerts.open if a.id in wanted]
    for alert in found:
        subject = NATURE[Kind(alert.kind)].subject
        for standing in session.board.standings:
            stay = standing.stay
            zone = None if stay is None else session.board.snapshot.places[stay.place_id].zone_id
            about = {Subject.JOINT: standing.joint.id, Subject.ZONE: zone}
            if about.get(subject, standing.job.id) == alert.subject_id:
                return standing.club.id
    return None


def volume_of(settings: Mapping[str, object]) -> int:
    """Return how loud it is to be, 0 to 100."""
    stored = settings.get(VOLUME)
    return stored if isinstance(stored, int) and 0 <= stored <= FULL else USUAL_VOLUME


def trouble_words(name: str, since: str) -> str:
    """Return the line about a courier that doesn't work, for the list in the window."""
    if name == sound.NAME:
        return say("Courier", "Sound off since {time}: the board beeps instead").format(time=since)
    return say("Board", "{courier}: not working since {time}").format(
        courier=translated(name), time=since
    )


def _unheeded(reason: str | None) -> None:
    del reason
