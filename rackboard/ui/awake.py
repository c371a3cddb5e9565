"""Keeps the computer awake while anything cures, if the system lets us; else it says so.

A computer that sleeps tells nobody that a head was knocked or a box runs hot. The screen may
go dark; only sleep is held up. Every way here ends by itself when the program is killed.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterable, Sequence
from typing import TYPE_CHECKING, Any, NamedTuple, Protocol

from PySide6.QtCore import QObject, QProcess, QTimer, Signal
from shiboken6 import isValid

from rackboard.core.bench import PlaceKind
from rackboard.core.standing import Standing
from rackboard.core.text import text
from rackboard.ui.bus import Answer, Bus
from rackboard.ui.language import translated

if TYPE_CHECKING:
    from rackboard.services.board import Board
    from rackboard.ui.session import Session

AGAIN_MS = 600_000
"""After so long a refusal is tried again [decision]."""
LOST_MS = 1_000
"""So long after a way is lost it is asked for again: a desktop may be starting anew."""
_APP = "rackboard"
_WHY = text("Awake", "Epoxy is curing; the board watches it")
_SUSPEND = 4  # of the GNOME session manager's flags: inhibit suspending
_CONTINUOUS, _SYSTEM = 0x80000000, 0x00000001  # of SetThreadExecutionState
Got = Callable[[str | None], None]
"""How a way says what came of it: None if it holds, else why not."""


def anything_cures(board: Board) -> bool:
    """Return whether a joint in the shop is mixed and may not be hit yet."""
    return any(_cures(board, standing) for standing in board.standings)


def _cures(board: Board, standing: Standing) -> bool:
    if standing.laid_out or standing.milestone is None or standing.stay is None:
        return False
    return board.snapshot.places[standing.stay.place_id].kind is not PlaceKind.OUT


class Way(Protocol):
    """One way to keep a computer awake."""

    def take(self, got: Got) -> None:
        """Begin; `got` hears once, now or later."""

    def release(self) -> None:
        """End."""


class Asked(NamedTuple):
    """Whom to ask on a bus: address, and the calls that begin and end it.

    `end` is None where it ends with a file descriptor.
    """

    to: str
    path: str
    interface: str
    begin: tuple[str, str, tuple[Any, ...]]
    end: str | None


def asked_on_session() -> tuple[Asked, ...]:
    """Return whom to ask on the session bus: what keeps awake there, most desktops first."""
    why = translated(_WHY)
    power = "org.freedesktop.PowerManagement"
    gnome = "org.gnome.SessionManager"
    return (
        Asked(power, "/org/freedesktop/PowerManagement/Inhibit", f"{power}.Inhibit",
              ("Inhibit", "ss", (_APP, why)), "UnInhibit"),
        Asked(gnome, "/org/gnome/SessionManager", gnome,
              ("Inhibit", "susu", (_APP, 0, why, _SUSPEND)), "Uninhibit"),
    )  # fmt: skip


def asked_on_system() -> tuple[Asked, ...]:
    """Return whom to ask on the system bus: the login manager, where no desktop answers.

    It is asked to hold up the sleep of an idle computer, not one that a person chooses.
    """
    login = "org.freedesktop.login1"
    return (
        Asked(login, "/org/freedesktop/login1", f"{login}.Manager",
              ("Inhibit", "ssss", ("idle", _APP, translated(_WHY), "block")), None),
    )  # fmt: skip


class BusWay(QObject):
    """Asks on a bus, one after the other, until somebody agrees.

    Parameters
    ----------
    parent : QObject
        Owner.
    bus : Bus
        Stays connected while it holds.
    asked : sequence of Asked
        In the order in which they are tried.
    lost : callable
        Is called when what held is lost.
    """

    def __init__(
        self, parent: QObject, bus: Bus, asked: Sequence[Asked], lost: Callable[[], None]
    ) -> None:
        super().__init__(parent)
        self._bus = bus
        self._asked = asked
        self._lost = lost
        self._wanted = False
        self._held: tuple[Asked, Any] | None = None
        bus.failed.connect(self._on_failed)

    def take(self, got: Got) -> None:
        """Begin with the first."""
        self._wanted = True
        self._try(0, got)

    def release(self) -> None:
        """Give back what holds; a file descriptor is simply closed."""
        self._wanted = False
        held, self._held = self._held, None
        if held is not None:
            self._give_back(*held)

    def _give_back(self, asked: Asked, kept: Any) -> None:
        if asked.end is None:
            kept.close()
        else:
            self._bus.call(
                asked.to, asked.path, asked.interface, asked.end, "u", (kept,), _unheeded
            )

    def _try(self, at: int, got: Got) -> None:
        asked = self._asked[at]

        def heard(answer: Answer) -> None:
            if answer.error is None:
                if self._wanted:
                    self._held = (asked, answer.body[0])
                else:
                    self._give_back(asked, answer.body[0])
                got(None)
            elif at + 1 < len(self._asked) and self._wanted:
                self._try(at + 1, got)
            else:
                got(answer.error)

        method, signature, body = asked.begin
        self._bus.call(asked.to, asked.path, asked.interface, method, signature, body, heard)

    def _on_failed(self) -> None:
        held, self._held = self._held, None
        if held is not None:
            if held[0].end is None:
                self._held = held  # a file descriptor holds without the bus
            else:
                self._lost()


class WindowsWay:
    """Tells Windows that the system is required.

    Parameters
    ----------
    set_state : callable, optional
        SetThreadExecutionState; it returns 0 if it fails.
    """

    def __init__(self, set_state: Callable[[int], int] | None = None) -> None:
        self._set_state = set_state or _set_execution_state

    def take(self, got: Got) -> None:
        """Begin; it holds for the thread that calls, the window's own."""
        done = self._set_state(_CONTINUOUS | _SYSTEM)
        got(None if done else text("Awake", "the system refused"))

    def release(self) -> None:
        """End."""
        self._set_state(_CONTINUOUS)


class ProcessWay(QObject):
    """Runs a program that keeps the computer awake as long as it runs.

    Parameters
    ----------
    parent : QObject
        Owner.
    command : sequence of str
        By default caffeinate, which ends with this process.
    lost : callable
        Is called when it ends by itself.
    """

    def __init__(
        self, parent: QObject, lost: Callable[[], None], command: Sequence[str] | None = None
    ) -> None:
        super().__init__(parent)
        self._command = list(command or ("caffeinate", "-i", "-w", str(os.getpid())))
        self._lost = lost
        self._process: QProcess | None = None
        self._got: Got | None = None

    def take(self, got: Got) -> None:
        """Start it."""
        self._got = got
        process = self._process = QProcess(self)
        process.started.connect(self._on_started)
        process.errorOccurred.connect(self._on_error)
        process.finished.connect(self._on_finished)
        process.start(self._command[0], self._command[1:])

    def release(self) -> None:
        """End it."""
        process, self._process = self._process, None
        if process is not None:
            process.finished.connect(process.deleteLater)
            process.kill()

    def _on_started(self) -> None:
        self._tell(None)

    def _on_error(self, error: QProcess.ProcessError) -> None:
        if error is QProcess.ProcessError.FailedToStart and self._process is not None:
            reason = self._process.errorString()
            self._process.deleteLater()
            self._process = None
            self._tell(reason)

    def _on_finished(self) -> None:
        if self._process is not None:
            self._process.deleteLater()
            self._process = None
            self._lost()

    def _tell(self, reason: str | None) -> None:
        got, self._got = self._got, None
        if got is not None:
            got(reason)


class Awake(QObject):
    """Holds sleep up while it is wanted, by the first way that works.

    Parameters
    ----------
    parent : QObject, optional
        Owner.
    ways : callable, optional
        Makes the ways of this system, given what to call when one is lost.
    """

    changed = Signal()
    """It holds now, or no longer, or it was refused."""

    def __init__(
        self,
        parent: QObject | None = None,
        ways: Callable[[QObject, Callable[[], None]], Iterable[Way]] | None = None,
    ) -> None:
        super().__init__(parent)
        self._ways = list((ways or _of_system)(self, self._on_lost))
        self._wanted = False
        self._trying = False
        self._way: Way | None = None
        self._reason: str | None = None
        self._again = QTimer(self)
        self._again.setSingleShot(True)
        self._again.setInterval(AGAIN_MS)
        self._again.timeout.connect(self._retry)
        self._session: Session | None = None

    @property
    def held(self) -> bool:
        """Whether the computer is kept awake now."""
        return self._way is not None

    @property
    def trouble(self) -> str | None:
        """What to say while something cures and the system may sleep; None if all is well."""
        if not self._wanted or self._reason is None:
            return None
        return text(
            "Awake", "This computer may go to sleep while epoxy cures, and no alert is told then"
            " ({reason}). Switch sleep off in its settings."
        ).format(reason=self._reason)  # fmt: skip

    def follow(self, session: Session) -> None:
        """Hold while anything of this session cures; another session is let go."""
        old = self._session
        if old is not None and old is not session and isValid(old):
            old.acted.disconnect(self._look)
            old.ticked.disconnect(self._look)
        if self._session is not session:
            self._session = session
            session.acted.connect(self._look)
            session.ticked.connect(self._look)
        self._look()

    def hold(self, on: bool) -> None:
        """Begin or end."""
        if on is self._wanted:
            return
        self._wanted = on
        if on:
            self._retry()
        else:
            self._again.stop()
            self._reason = None
            way, self._way = self._way, None
            if way is not None:
                way.release()
            self.changed.emit()

    def close(self) -> None:
        """End, with the program."""
        self.hold(False)

    def _look(self) -> None:
        if self._session is not None:
            self.hold(anything_cures(self._session.board))

    def _retry(self) -> None:
        if self._wanted and self._way is None and not self._trying:
            self._trying = True
            self._try(0)

    def _try(self, at: int) -> None:
        if at >= len(self._ways):
            self._settle(None, self._reason or text("Awake", "the system has no way to ask"))
            return
        way = self._ways[at]

        def got(reason: str | None) -> None:
            if reason is None:
                self._settle(way, None)
            else:
                self._reason = reason
                self._try(at + 1)

        way.take(got)

    def _settle(self, way: Way | None, reason: str | None) -> None:
        self._trying = False
        if way is not None and not self._wanted:
            way.release()
            return
        self._way, self._reason = way, reason if self._wanted else None
        if reason is not None and self._wanted:
            self._again.start()
        self.changed.emit()

    def _on_lost(self) -> None:
        self._way = None
        if self._wanted and not self._again.isActive():
            QTimer.singleShot(LOST_MS, self._retry)
        self.changed.emit()


def _unheeded(answer: Answer) -> None:
    del answer


def _of_system(parent: QObject, lost: Callable[[], None]) -> list[Way]:
    if sys.platform == "win32":
        return [WindowsWay()]
    if sys.platform == "darwin":
        return [ProcessWay(parent, lost)]
    return [
        BusWay(parent, Bus(parent), asked_on_session(), lost),
        BusWay(parent, Bus(parent, "SYSTEM", fds=True), asked_on_system(), lost),
    ]


def _set_execution_state(state: int) -> int:
    import ctypes

    windll = getattr(ctypes, "windll", None)
    return 0 if windll is None else int(windll.kernel32.SetThreadExecutionState(state))
