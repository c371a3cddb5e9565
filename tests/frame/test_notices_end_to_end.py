"""An alert from the bench to a real desktop: glued by key, told, replaced, acted on.

The program runs in a window under Xvfb, with dunst as notification server on a bus of its own;
what goes over that bus is seen by a monitor.
"""

from __future__ import annotations

import contextlib
import json
import os
import queue
import subprocess
import sys
import threading
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from helpers.display import virtual_display, xdotool

pytestmark = [
    pytest.mark.window,
    pytest.mark.skipif(not sys.platform.startswith("linux"), reason="the bus is Linux's"),
]
if sys.platform.startswith("linux"):
    from jeepney import DBusAddress, new_method_call
    from jeepney.bus_messages import message_bus
    from jeepney.io.blocking import open_dbus_connection

    from helpers.bus import SERVER, Monitor, private_bus

LIMIT_S = 60
DRIVER = Path(__file__).with_name("notices_driver.py")
_DUNSTRC = """[global]
    history_length = 20
    dmenu = {menu}
[urgency_low]
    timeout = 0
[urgency_normal]
    timeout = 0
[urgency_critical]
    timeout = 0
"""
_MENU = """#!/bin/sh
exec grep -m1 "Got it"
"""
"""Stands for a person who picks "Got it" from the server's menu."""


@pytest.fixture
def display() -> Iterator[str]:
    with virtual_display("dunst", "dbus-daemon") as number:
        yield number


@pytest.fixture
def bus(tmp_path: Path) -> Iterator[str]:
    with private_bus(tmp_path) as address:
        yield address


@pytest.fixture
def dunst(bus: str, display: str, tmp_path: Path) -> Iterator[None]:
    """A real server, from when it has its name on the bus."""
    menu = tmp_path / "menu"
    menu.write_text(_MENU)
    menu.chmod(0o755)
    config = tmp_path / "dunstrc"
    config.write_text(_DUNSTRC.format(menu=menu))
    with open_dbus_connection(bus) as connection:
        rule = f"type='signal',member='NameOwnerChanged',arg0='{SERVER}'"
        connection.send_and_get_reply(message_bus.AddMatch(rule))
        server = subprocess.Popen(
            ["dunst", "-config", str(config)],
            env=os.environ | {"DBUS_SESSION_BUS_ADDRESS": bus, "DISPLAY": display},
            stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
        )  # fmt: skip
        try:
            while True:
                message = connection.receive(timeout=LIMIT_S)
                if message.body and message.body[0] == SERVER:
                    break
            yield
        finally:
            server.terminate()
            server.wait(LIMIT_S)


def ask_dunst(bus: str, method: str) -> None:
    """Do with dunst what a person does with its keys."""
    address = DBusAddress("/org/freedesktop/Notifications", SERVER, "org.dunstproject.cmd0")
    with open_dbus_connection(bus) as connection:
        connection.send_and_get_reply(new_method_call(address, method), timeout=LIMIT_S)


class Board:
    """The program, its keys, and what it says."""

    def __init__(self, display: str, bus: str, folder: Path) -> None:
        environment = os.environ | {
            "DISPLAY": display,
            "DBUS_SESSION_BUS_ADDRESS": bus,
            "PYTHONPATH": os.pathsep.join(p for p in sys.path if p),
            "PATH": str(folder / "no-players"),  # nothing sounds
        }
        environment.pop("QT_QPA_PLATFORM", None)
        self._errors = (folder / "errors").open("w+")
        self.process = subprocess.Popen(
            [sys.executable, str(DRIVER), str(folder / "data")], env=environment, text=True,
            stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=self._errors,
        )  # fmt: skip
        self._display = display
        self._lines: queue.Queue[dict[str, Any]] = queue.Queue()
        self._reader = threading.Thread(target=self._read, daemon=True)
        self._reader.start()

    def _read(self) -> None:
        assert self.process.stdout is not None
        for line in self.process.stdout:
            self._lines.put(json.loads(line))
        self._lines.put({"over": True})

    def until(self, holds: Callable[[dict[str, Any]], object]) -> dict[str, Any]:
        """Wait until what the program says is so."""
        seen: list[dict[str, Any]] = []
        while True:
            try:
                line = self._lines.get(timeout=LIMIT_S)
            except queue.Empty:
                pytest.fail(f"never came: {seen[-3:]}")
            seen.append(line)
            if "over" in line:
                self._errors.seek(0)
                pytest.fail(f"the program ended: {seen[-3:]}\n{self._errors.read()}")
            if holds(line):
                return line

    def tell(self, line: str) -> None:
        assert self.process.stdin is not None
        self.process.stdin.write(f"{line}\n")
        self.process.stdin.flush()

    def press(self, *keys: str) -> None:
        xdotool(self._display, "key", *keys)

    def focus(self) -> None:
        found = xdotool(self._display, "search", "--sync", "--onlyvisible", "--name", "^rackboard$")
        xdotool(self._display, "windowfocus", "--sync", found.splitlines()[0])

    def close(self) -> None:
        if self.process.poll() is None:
            self.process.kill()
        self.process.wait(LIMIT_S)
        self._reader.join(LIMIT_S)
        for pipe in (self.process.stdin, self.process.stdout, self._errors):
            if pipe is not None:
                with contextlib.suppress(BrokenPipeError):
                    pipe.close()


@pytest.fixture
def board(display: str, bus: str, dunst: None, tmp_path: Path) -> Iterator[Board]:
    made = Board(display, bus, tmp_path)
    yield made
    made.close()


def test_glued_by_key_told_on_the_desktop_replaced_and_acted_on(board: Board, bus: str) -> None:
    monitor = Monitor(bus)
    try:
        board.until(lambda s: s.get("visible"))
        board.focus()
        # A set of irons on free slots; mixed; racked; looked at.
        board.press("ctrl+n", "Return", "Return", "Return", "Return")
        board.until(lambda s: s.get("words") == ["WAIT"])
        board.press("space")
        board.until(lambda s: s.get("words") == ["WET"])
        board.press("space", "space")

        # What is no alarm: an ordinary notice, and a person who puts it away has seen it.
        board.tell("until off the rack")
        notice = monitor.next("Notify")
        app, replaces, _, summary, _, actions, hints, expires = notice.body
        assert (app, replaces, expires) == ("rackboard", 0, -1)
        assert summary.endswith("may come off the rack")
        assert hints["urgency"] == ("y", 1)
        assert actions[2:4] == ["got it", "Got it"]
        number = monitor.reply_to(notice).body[0]
        ask_dunst(bus, "NotificationCloseLast")
        assert monitor.next("NotificationClosed").body == (number, 2)
        board.until(lambda s: (s.get("open") or {}).get("off the rack") == "seen")

        # An alarm: critical.
        board.press("Home", "F4")
        alarm = monitor.next("Notify")
        assert "Disturbed at" in alarm.body[3]
        assert alarm.body[6]["urgency"] == ("y", 2)
        assert alarm.body[7] == 0
        first = monitor.reply_to(alarm).body[0]

        # Nobody takes it: it is said again, and that takes its own place the next time.
        board.tell("go 2")
        again = monitor.next("Notify")
        assert again.body[6]["urgency"] == ("y", 2)
        repeated = monitor.reply_to(again).body[0]
        assert repeated != first
        board.tell("go 3")
        replaced = monitor.next("Notify")
        assert replaced.body[1] == repeated
        assert monitor.reply_to(replaced).body == (repeated,)

        # Got it, on the notice: taken, and what no longer holds is withdrawn.
        ask_dunst(bus, "ContextMenuCall")
        chosen = monitor.next("ActionInvoked")
        assert chosen.body[0] in (first, repeated)
        assert chosen.body[1] == "got it"
        board.until(lambda s: (s.get("open") or {}).get("disturbed") == "on, taken")
        assert monitor.next("CloseNotification").body[0] in (first, repeated)

        board.tell("quit")
        assert board.process.wait(LIMIT_S) == 0
    finally:
        monitor.close()
