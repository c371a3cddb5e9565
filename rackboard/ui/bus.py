"""A connection to a D-Bus message bus that never blocks: everything runs from the event loop."""

from __future__ import annotations

import os
import socket
from collections.abc import Callable
from typing import Any, NamedTuple

from PySide6.QtCore import QObject, QSocketNotifier, QTimer, Signal

from rackboard.core.text import Text, text

PATIENCE_MS = 10_000
"""A bus or server that hasn't answered for so long is taken as not working [decision]."""
BUS = "org.freedesktop.DBus"
_BUS_PATH = "/org/freedesktop/DBus"
_ERROR = 3  # message types of the bus
_SIGNAL = 4
_MOST_FDS = 8
_CHUNK = 65536


class Answer(NamedTuple):
    """What came of a call: the body of the reply, or why there is none."""

    body: tuple[Any, ...] = ()
    error: str | None = None


class News(NamedTuple):
    """A signal from the bus."""

    interface: str
    member: str
    body: tuple[Any, ...]


Answered = Callable[[Answer], None]


class Bus(QObject):
    """One connection; made at the first call, and again at the next one after a failure.

    Parameters
    ----------
    parent : QObject, optional
        Owner.
    address : str, optional
        Of the bus; "SYSTEM" for the system's, by default the session's.
    fds : bool, optional
        Whether replies may carry file descriptors.
    """

    heard = Signal(object)
    """A signal that `listen` asked for: `News`."""
    failed = Signal()
    """The connection is lost; what was under way has been answered with the reason."""

    def __init__(
        self, parent: QObject | None = None, address: str | None = None, *, fds: bool = False
    ) -> None:
        super().__init__(parent)
        self._address = address
        self._with_fds = fds
        self._socket: socket.socket | None = None
        self._notifiers: list[QSocketNotifier] = []
        self._auth: Any = None
        self._parser: Any = None
        self._serial = 0
        self._out = b""
        self._queue = b""
        self._rules: list[str] = []
        self._open: dict[int, Answered] = {}
        self.patience = QTimer(self)
        self.patience.setSingleShot(True)
        self.patience.setInterval(PATIENCE_MS)
        self.patience.timeout.connect(self._give_up)

    def listen(self, rule: str) -> None:
        """Ask for signals by a match rule, now or from the first call on."""
        self._rules.append(rule)
        if self._socket is not None:
            self._match(rule)

    def call(
        self, to: str, path: str, interface: str, method: str, signature: str | None,
        body: tuple[Any, ...], answered: Answered,
    ) -> None:  # fmt: skip
        """Call a method; `answered` hears once, also of a failure."""
        try:
            if self._socket is None:
                self._connect()
            self._put(to, path, interface, method, signature, body, answered)
        except (OSError, ValueError, KeyError, RuntimeError, StopIteration, ImportError) as error:
            reason = reason_of(error)
            self.fail(reason)
            answered(Answer(error=reason))
            return
        if not self.patience.isActive():
            self.patience.start()

    def close(self) -> None:
        """Let go of the bus; what is under way is given up."""
        self.fail(text("Courier", "closed"))

    # Connecting

    def _connect(self) -> None:
        from jeepney.auth import Authenticator  # type: ignore[import-untyped]
        from jeepney.bus import get_bus  # type: ignore[import-untyped]
        from jeepney.low_level import Parser  # type: ignore[import-untyped]

        if self._address is None and not os.environ.get("DBUS_SESSION_BUS_ADDRESS"):
            raise OSError(text("Courier", "there is no session bus"))
        target = get_bus(self._address or "SESSION")
        sock = socket.socket(socket.AF_UNIX, socket.SOCK_STREAM)
        sock.setblocking(False)
        try:
            sock.connect(target)
        except OSError as error:
            sock.close()
            said = text("Courier", "no message bus: {reason}").format(reason=reason_of(error))
            raise OSError(said) from error
        self._socket = sock
        for kind, slot in (
            (QSocketNotifier.Type.Read, self._read),
            (QSocketNotifier.Type.Write, self._write),
        ):
            notifier = QSocketNotifier(sock.fileno(), kind, self)
            notifier.activated.connect(slot)
            self._notifiers.append(notifier)
        self._auth = Authenticator(enable_fds=self._with_fds)
        self._parser = Parser()
        self._send(self._auth.data_to_send() or b"")
        self._put(BUS, _BUS_PATH, BUS, "Hello", None, (), _unheeded)
        for rule in self._rules:
            self._match(rule)

    def _match(self, rule: str) -> None:
        self._put(BUS, _BUS_PATH, BUS, "AddMatch", "s", (rule,), _unheeded)

    def _put(
        self, to: str, path: str, interface: str, method: str, signature: str | None,
        body: tuple[Any, ...], answered: Answered,
    ) -> None:  # fmt: skip
        from jeepney import (  # type: ignore[import-untyped]
            DBusAddress,
            new_method_call,
        )

        call = new_method_call(DBusAddress(path, to, interface), method, signature, body)
        data = call.serialise(serial=self._serial + 1)
        self._serial += 1
        self._open[self._serial] = answered
        if self._auth.authenticated:
            self._send(data)
        else:
            self._queue += data  # until the bus knows who we are

    # The socket

    def _send(self, data: bytes) -> None:
        self._out += data
        self._notifiers[1].setEnabled(True)

    def _write(self) -> None:
        if self._socket is None:
            return
        try:
            sent = self._socket.send(self._out) if self._out else 0
        except BlockingIOError:
            return
        except OSError as error:
            self.fail(reason_of(error))
            return
        self._out = self._out[sent:]
        if not self._out:
            self._notifiers[1].setEnabled(False)

    def _read(self) -> None:
        if self._socket is None:
            return
        try:
            data, fds = self._received(self._socket)
            if not data:
                raise OSError(text("Courier", "the bus has hung up"))
            self._take(data, fds)
        except BlockingIOError:
            return
        except (OSError, ValueError) as error:
            self.fail(reason_of(error))

    def _received(self, sock: socket.socket) -> tuple[bytes, list[Any]]:
        if not self._with_fds:
            return sock.recv(_CHUNK), []
        from jeepney.fds import FileDescriptor  # type: ignore[import-untyped]

        size = self._parser.bytes_desired() if self._auth.authenticated else 1024
        data, numbers, _, _ = socket.recv_fds(sock, size, _MOST_FDS)
        return data, [FileDescriptor(number) for number in numbers]

    def _take(self, data: bytes, fds: list[Any]) -> None:
        if not self._auth.authenticated:
            self._auth.feed(data)
            self._send(self._auth.data_to_send() or b"")
            if self._auth.authenticated:
                self._send(b"BEGIN\r\n" + self._queue)
                self._queue = b""
            return
        self._parser.add_data(data, fds)
        while self._parser is not None:
            message = self._parser.get_next_message()
            if message is None:
                return
            self._hear(message)

    def _hear(self, message: Any) -> None:
        from jeepney import HeaderFields

        fields = message.header.fields
        kind = message.header.message_type.value
        if kind == _SIGNAL:
            interface = str(fields.get(HeaderFields.interface, ""))
            self.heard.emit(News(interface, str(fields.get(HeaderFields.member, "")), message.body))
            return
        answered = self._open.pop(fields.get(HeaderFields.reply_serial), None)
        if answered is None:
            return
        self.patience.stop()
        if self._open:
            self.patience.start()
        if kind == _ERROR:
            detail = message.body[0] if message.body else ""
            name = str(fields.get(HeaderFields.error_name, ""))
            answered(Answer(error=str(detail) or name))
        else:
            answered(Answer(message.body))

    def _give_up(self) -> None:
        self.fail(text("Courier", "no answer in {n} s").format(n=PATIENCE_MS // 1000))

    def fail(self, reason: str) -> None:
        """Hang up, and answer what is under way with the reason."""
        self.patience.stop()
        was_open = self._socket is not None
        for notifier in self._notifiers:
            notifier.setEnabled(False)
            notifier.deleteLater()
        self._notifiers = []
        if self._socket is not None:
            self._socket.close()
            self._socket = None
        self._out = self._queue = b""
        self._auth = self._parser = None
        lost, self._open = list(self._open.values()), {}
        for answered in lost:
            answered(Answer(error=reason))
        if was_open:
            self.failed.emit()


def _unheeded(answer: Answer) -> None:
    del answer


def reason_of(error: BaseException) -> str:
    """Return why something of the system failed, in its own words or ours."""
    if error.args and isinstance(error.args[0], Text):
        return error.args[0]
    if isinstance(error, OSError) and error.strerror:
        return error.strerror
    return str(error) or type(error).__name__
