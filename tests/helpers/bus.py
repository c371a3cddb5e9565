"""A private message bus and a stub notification server that refuses a wrong signature."""

from __future__ import annotations

import contextlib
import queue
import shutil
import subprocess
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any, Self

import pytest
from jeepney import (
    DBusAddress,
    HeaderFields,
    MessageType,
    new_error,
    new_method_call,
    new_method_return,
    new_signal,
)
from jeepney.bus_messages import message_bus
from jeepney.io.blocking import DBusConnection, open_dbus_connection

SERVER = "org.freedesktop.Notifications"
_CONFIG = """<!DOCTYPE busconfig PUBLIC "-//freedesktop//DTD D-Bus Bus Configuration 1.0//EN"
 "http://www.freedesktop.org/standards/dbus/1.0/busconfig.dtd">
<busconfig>
  <type>session</type>
  <listen>unix:path={socket}</listen>
  <auth>EXTERNAL</auth>
  <policy context="default">
    <allow send_destination="*" eavesdrop="true"/>
    <allow eavesdrop="true"/>
    <allow own="*"/>
  </policy>
</busconfig>
"""
"""No <servicedir>: an installed notification server must not start in mid-test."""


@contextlib.contextmanager
def private_bus(folder: Path) -> Iterator[str]:
    """Run a bus of our own; yield its address."""
    program = shutil.which("dbus-daemon")
    if program is None:
        pytest.fail("dbus-daemon is not installed: see the README's test command")
    config = folder / "bus.conf"
    config.write_text(_CONFIG.format(socket=folder / "bus"), encoding="utf-8")
    daemon = subprocess.Popen(
        [program, f"--config-file={config}", "--nofork", "--nopidfile", "--print-address=1"],
        stdout=subprocess.PIPE, text=True,
    )  # fmt: skip
    try:
        assert daemon.stdout is not None
        yield daemon.stdout.readline().strip()  # printed when it listens
    finally:
        daemon.terminate()
        daemon.wait(10)
        if daemon.stdout is not None:
            daemon.stdout.close()


class Stub:
    """A service in a thread: keeps what it is told, strict about types.

    Attributes
    ----------
    calls : queue.Queue
        Of (member, signature, body).
    """

    name = ""

    def __init__(self, address: str, *, silent: bool = False) -> None:
        self.calls: queue.Queue[tuple[str, str, tuple[Any, ...]]] = queue.Queue()
        self._address = address
        self._silent = silent
        self._signals: queue.Queue[Any] = queue.Queue()
        self._connection: DBusConnection = self._connect(address)
        self._connection.send_and_get_reply(message_bus.RequestName(self.name))
        self._thread = threading.Thread(target=self._serve, daemon=True)
        self._thread.start()

    def _connect(self, address: str) -> DBusConnection:
        return open_dbus_connection(address)

    def close(self) -> None:
        """Leave the bus."""
        self._poke("Stop")
        self._thread.join(10)
        self._connection.close()

    @classmethod
    @contextlib.contextmanager
    def on(cls, address: str, *, silent: bool = False) -> Iterator[Self]:
        """Serve on a bus while the block runs."""
        server = cls(address, silent=silent)
        try:
            yield server
        finally:
            server.close()

    def call(self) -> tuple[str, str, tuple[Any, ...]]:
        """Wait for the next call."""
        return self.calls.get(timeout=10)

    def emit(self, signal: Any) -> None:
        """Send a signal from the thread that holds the name."""
        self._signals.put(signal)
        self._poke("Emit")

    def _poke(self, member: str) -> None:
        address = DBusAddress("/", self._connection.unique_name, "rackboard.test")
        other = open_dbus_connection(self._address)
        other.send(new_method_call(address, member))
        other.close()

    def _serve(self) -> None:
        while True:
            message = self._connection.receive()
            if message.header.message_type is not MessageType.method_call:
                continue
            fields = message.header.fields
            member = fields[HeaderFields.member]
            if member == "Stop":
                return
            if member == "Emit":
                self._connection.send(self._signals.get(timeout=10))
                continue
            signature = fields.get(HeaderFields.signature, "")
            self.calls.put((member, signature, message.body))
            if not self._silent:
                for answer in self.answers(message, member, signature):
                    self._connection.send(answer)

    def answers(self, message: Any, member: str, signature: str) -> list[Any]:
        """Return what to send upon a call."""
        raise NotImplementedError


def refusal(message: Any, why: str) -> Any:
    """An error as servers send it for wrong arguments."""
    return new_error(message, "org.freedesktop.DBus.Error.InvalidArgs", "s", (why,))


class StubServer(Stub):
    """A notification server."""

    name = SERVER
    _next_id = 40

    def answers(self, message: Any, member: str, signature: str) -> list[Any]:
        wanted = {"Notify": "susssasa{sv}i", "CloseNotification": "u"}.get(member)
        if signature != wanted:
            return [refusal(message, f"wanted {wanted}, got {signature}")]
        if member == "CloseNotification":
            return [new_method_return(message), closed(message.body[0], 3)]
        hints = message.body[6]
        if hints.get("urgency", ("y", 0))[0] != "y":
            return [refusal(message, "urgency is no byte")]
        replaces: int = message.body[1]
        if not replaces:
            self._next_id += 1
        return [new_method_return(message, "u", (replaces or self._next_id,))]


_SERVER = DBusAddress("/org/freedesktop/Notifications", None, SERVER)


def closed(number: int, reason: int) -> Any:
    """The server says that a notice is gone."""
    return new_signal(_SERVER, "NotificationClosed", "uu", (number, reason))


def action(number: int, key: str) -> Any:
    """The server says what a person chose."""
    return new_signal(_SERVER, "ActionInvoked", "us", (number, key))


class Monitor:
    """Sees every call on a bus, as `dbus-monitor` does."""

    def __init__(self, address: str) -> None:
        self._connection = open_dbus_connection(address)
        become = DBusAddress(
            "/org/freedesktop/DBus", "org.freedesktop.DBus", "org.freedesktop.DBus.Monitoring"
        )
        self._connection.send_and_get_reply(
            new_method_call(become, "BecomeMonitor", "asu", ([], 0))
        )

    def next(self, member: str, timeout_s: float = 60) -> Any:
        """Wait for the next call or signal of a name; the calls before it are left out."""
        while True:
            message = self._connection.receive(timeout=timeout_s)
            if message.header.fields.get(HeaderFields.member) == member:
                return message

    def reply_to(self, call: Any, timeout_s: float = 60) -> Any:
        """Wait for the reply to a call that was seen."""
        caller = call.header.fields[HeaderFields.sender]
        while True:
            message = self._connection.receive(timeout=timeout_s)
            fields = message.header.fields
            if (
                fields.get(HeaderFields.reply_serial) == call.header.serial
                and fields.get(HeaderFields.destination) == caller
            ):
                return message

    def close(self) -> None:
        """Look no more."""
        self._connection.close()
