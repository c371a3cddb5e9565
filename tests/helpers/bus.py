"""A private message bus and a stub notification server that refuses a wrong signature."""

from __future__ import annotations

import contextlib
import queue
import shutil
import subprocess
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from jeepney import DBusAddress, HeaderFields, MessageType, new_error, new_method_return
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


class StubServer:
    """A notification server in a thread: keeps what it is told, strict about types.

    Attributes
    ----------
    calls : queue.Queue
        Of (member, signature, body).
    """

    def __init__(self, address: str, *, silent: bool = False) -> None:
        self.calls: queue.Queue[tuple[str, str, tuple[Any, ...]]] = queue.Queue()
        self._silent = silent
        self._next_id = 40
        self._connection: DBusConnection = open_dbus_connection(address)
        self._connection.send_and_get_reply(message_bus.RequestName(SERVER))
        self._thread = threading.Thread(target=self._serve, daemon=True)
        self._thread.start()

    def close(self) -> None:
        """Leave the bus."""
        stop = DBusAddress("/", self._connection.unique_name, "rackboard.test")
        from jeepney import new_method_call

        other = open_dbus_connection(self._address)
        other.send(new_method_call(stop, "Stop"))
        self._thread.join(10)
        other.close()
        self._connection.close()

    @classmethod
    @contextlib.contextmanager
    def on(cls, address: str, *, silent: bool = False) -> Iterator[StubServer]:
        """Serve on a bus while the block runs."""
        server = cls(address, silent=silent)
        server._address = address
        try:
            yield server
        finally:
            server.close()

    _address = ""

    def _serve(self) -> None:
        while True:
            message = self._connection.receive()
            if message.header.message_type is not MessageType.method_call:
                continue
            fields = message.header.fields
            member = fields[HeaderFields.member]
            if member == "Stop":
                return
            signature = fields.get(HeaderFields.signature, "")
            self.calls.put((member, signature, message.body))
            if not self._silent:
                self._connection.send(self._answer(message, member, signature))

    def _answer(self, message: Any, member: str, signature: str) -> Any:
        wanted = {"Notify": "susssasa{sv}i", "CloseNotification": "u"}.get(member)
        if signature != wanted:
            name = "org.freedesktop.DBus.Error.InvalidArgs"
            return new_error(message, name, "s", (f"wanted {wanted}, got {signature}",))
        if member == "CloseNotification":
            return new_method_return(message)
        hints = message.body[6]
        if hints.get("urgency", ("y", 0))[0] != "y":
            name = "org.freedesktop.DBus.Error.InvalidArgs"
            return new_error(message, name, "s", ("urgency is no byte",))
        replaces: int = message.body[1]
        if not replaces:
            self._next_id += 1
        return new_method_return(message, "u", (replaces or self._next_id,))
