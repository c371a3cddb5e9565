"""Couriers that carry notices to the desktop; none of them blocks, each says what it did."""

from __future__ import annotations

import os
import socket
import sys
from collections.abc import Callable
from typing import TYPE_CHECKING, Any, NamedTuple

from PySide6.QtCore import QObject, QSocketNotifier, QTimer

from rackboard.services.notices import Courier, Done, Message

if TYPE_CHECKING:
    from PySide6.QtWidgets import QSystemTrayIcon

NAME = "Desktop notices"
PATIENCE_MS = 10_000
"""A bus or server that hasn't answered for so long is taken as not working [decision]."""
SERVER = "org.freedesktop.Notifications"
_PATH = "/org/freedesktop/Notifications"
_APP = "rackboard"
_NORMAL = 1  # urgency; 2, critical, is kept for alarms
_BUS = "org.freedesktop.DBus"
_ERROR = 3  # message types of the bus
_SIGNAL = 4


def desktop_courier(parent: QObject | None = None) -> Courier:
    """Return the courier of this system: the notification server's, elsewhere the tray's."""
    if sys.platform.startswith("linux"):
        return BusCourier(parent)
    return TrayCourier(parent)


class _Letter(NamedTuple):
    """A message on its way."""

    message: Message
    done: Done


class BusCourier(QObject):
    """Desktop notices by the Desktop Notifications Specification, over the session bus.

    Everything runs from the event loop: connecting, signing on, sending, and the answers.

    Parameters
    ----------
    parent : QObject, optional
        Owner.
    address : str, optional
        Of the bus; by default the session's.
    """

    name = NAME

    def __init__(self, parent: QObject | None = None, address: str | None = None) -> None:
        super().__init__(parent)
        self._address = address
        self._socket: socket.socket | None = None
        self._notifiers: list[QSocketNotifier] = []
        self._auth: Any = None
        self._parser: Any = None
        self._serial = 0
        self._out = b""
        self._waiting: list[_Letter] = []
        self._sent: dict[int, _Letter] = {}
        self._hello: int | None = None
        self._signed_on = False
        self._ids: dict[str, int] = {}
        self._patience = QTimer(self)
        self._patience.setSingleShot(True)
        self._patience.setInterval(PATIENCE_MS)
        self._patience.timeout.connect(self._give_up)

    def deliver(self, message: Message, done: Done) -> None:
        """Send a message; `done` hears from the server's answer, or why there was none."""
        if message.take_back and message.key not in self._ids:
            done(None)
            return
        self._waiting.append(_Letter(message, done))
        try:
            if self._socket is None:
                self._connect()
            elif self._signed_on:
                self._send_waiting()
        except (OSError, ValueError, KeyError, RuntimeError, StopIteration, ImportError) as error:
            self._fail(_reason(error))
        if (self._waiting or self._sent) and not self._patience.isActive():
            self._patience.start()

    def close(self) -> None:
        """Let go of the bus; what is under way is given up."""
        self._fail("closed")

    # The bus

    def _connect(self) -> None:
        from jeepney.auth import Authenticator  # type: ignore[import-untyped]
        from jeepney.bus import get_bus  # type: ignore[import-untyped]
        from jeepney.low_level import Parser  # type: ignore[import-untyped]

        if self._address is None and not os.environ.get("DBUS_SESSION_BUS_ADDRESS"):
            raise OSError("there is no session bus")
        target = get_bus(self._address or "SESSION")
        sock = socket.socket(socket.AF_UNIX, socket.SOCK_STREAM)
        sock.setblocking(False)
        try:
            sock.connect(target)
        except BaseException:
            sock.close()
            raise
        self._socket = sock
        for kind, slot in (
            (QSocketNotifier.Type.Read, self._read),
            (QSocketNotifier.Type.Write, self._write),
        ):
            notifier = QSocketNotifier(sock.fileno(), kind, self)
            notifier.activated.connect(slot)
            self._notifiers.append(notifier)
        self._auth = Authenticator()
        self._parser = Parser()
        self._send(self._auth.data_to_send() or b"")

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
            self._fail(_reason(error))
            return
        self._out = self._out[sent:]
        if not self._out:
            self._notifiers[1].setEnabled(False)

    def _read(self) -> None:
        if self._socket is None:
            return
        try:
            data = self._socket.recv(65536)
            if not data:
                raise OSError("the bus has hung up")
            self._take(data)
        except BlockingIOError:
            return
        except (OSError, ValueError) as error:
            self._fail(_reason(error))

    def _take(self, data: bytes) -> None:
        if not self._auth.authenticated:
            self._auth.feed(data)
            if self._auth.authenticated:
                self._send(b"BEGIN\r\n")
                self._hello = self._call(_BUS, "/org/freedesktop/DBus", _BUS, "Hello")
                rule = (
                    f"type='signal',sender='{_BUS}',interface='{_BUS}',"
                    f"member='NameOwnerChanged',arg0='{SERVER}'"
                )
                self._call(_BUS, "/org/freedesktop/DBus", _BUS, "AddMatch", "s", (rule,))
            return
        self._parser.add_data(data)
        while (message := self._parser.get_next_message()) is not None:
            self._hear(message)

    def _call(
        self, to: str, path: str, interface: str, method: str, signature: str | None = None,
        body: tuple[Any, ...] = (),
    ) -> int:  # fmt: skip
        from jeepney import (  # type: ignore[import-untyped]
            DBusAddress,
            new_method_call,
        )

        self._serial += 1
        address = DBusAddress(path, to, interface)
        call = new_method_call(address, method, signature, body)
        self._send(call.serialise(serial=self._serial))
        return self._serial

    def _hear(self, message: Any) -> None:
        from jeepney import HeaderFields

        fields = message.header.fields
        kind = message.header.message_type.value
        if kind == _SIGNAL:
            if fields.get(HeaderFields.member) == "NameOwnerChanged":
                self._ids.clear()  # another server knows nothing of the old one's numbers
            return
        serial = fields.get(HeaderFields.reply_serial)
        if serial == self._hello:
            self._signed_on = True
            self._send_waiting()
            return
        letter = self._sent.pop(serial, None)
        if letter is None:
            return
        if not self._sent and not self._waiting:
            self._patience.stop()
        if kind == _ERROR:
            detail = message.body[0] if message.body else ""
            name = str(fields.get(HeaderFields.error_name, ""))
            letter.done(str(detail) or name)
            return
        if letter.message.take_back:
            self._ids.pop(letter.message.key, None)
        else:
            self._ids[letter.message.key] = message.body[0]
        letter.done(None)

    # The notices

    def _send_waiting(self) -> None:
        while self._waiting:
            letter = self._waiting.pop(0)
            message = letter.message
            known = self._ids.get(message.key, 0)
            if message.take_back:
                serial = self._call(SERVER, _PATH, SERVER, "CloseNotification", "u", (known,))
            else:
                hints = {"urgency": ("y", _NORMAL), "desktop-entry": ("s", _APP)}
                # Servers read a little markup in the body.
                body = message.body.replace("&", "&amp;").replace("<", "&lt;")
                serial = self._call(
                    SERVER, _PATH, SERVER, "Notify", "susssasa{sv}i",
                    (_APP, known, "", message.summary, body, [], hints, -1),
                )  # fmt: skip
            self._sent[serial] = letter

    def _give_up(self) -> None:
        self._fail(f"no answer in {PATIENCE_MS // 1000} s")

    def _fail(self, reason: str) -> None:
        self._patience.stop()
        for notifier in self._notifiers:
            notifier.setEnabled(False)
            notifier.deleteLater()
        self._notifiers = []
        if self._socket is not None:
            self._socket.close()
            self._socket = None
        self._out, self._signed_on, self._hello = b"", False, None
        self._ids.clear()
        lost = [*self._sent.values(), *self._waiting]
        self._sent, self._waiting = {}, []
        for letter in lost:
            letter.done(reason)


class TrayCourier(QObject):
    """Desktop notices through a visible icon in the tray, where there is no bus.

    Parameters
    ----------
    parent : QObject, optional
        Owner.
    make_icon : callable, optional
        Returns the icon; by default one with the window's own picture.
    """

    name = NAME

    def __init__(
        self,
        parent: QObject | None = None,
        make_icon: Callable[[QObject], QSystemTrayIcon] | None = None,
    ) -> None:
        super().__init__(parent)
        self._make_icon = make_icon or _tray_icon
        self._icon: QSystemTrayIcon | None = None

    def deliver(self, message: Message, done: Done) -> None:
        """Show a message; a tray can take nothing back."""
        if message.take_back:
            done(None)
            return
        if self._icon is None:
            from PySide6.QtWidgets import QSystemTrayIcon

            if not QSystemTrayIcon.isSystemTrayAvailable():
                done("there is no tray")
                return
            self._icon = self._make_icon(self)
            self._icon.show()
        self._icon.showMessage(message.summary, message.body)
        done(None)


def _tray_icon(parent: QObject) -> QSystemTrayIcon:
    from PySide6.QtWidgets import QApplication, QStyle, QSystemTrayIcon

    icon = QApplication.windowIcon()
    if icon.isNull():
        icon = QApplication.style().standardIcon(QStyle.StandardPixmap.SP_ComputerIcon)
    return QSystemTrayIcon(icon, parent)


def _reason(error: BaseException) -> str:
    if isinstance(error, OSError) and error.strerror:
        return error.strerror
    return str(error) or type(error).__name__
