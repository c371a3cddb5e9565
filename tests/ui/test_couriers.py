"""The desktop courier on a private bus: right types, replacing, and every way to fail."""

from __future__ import annotations

import socket
import sys
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest

if not sys.platform.startswith("linux"):
    pytest.skip("the session bus is Linux's", allow_module_level=True)

from pytestqt.qtbot import QtBot

from helpers.bus import StubServer, private_bus
from rackboard.services.teller import Message
from rackboard.ui import couriers
from rackboard.ui.couriers import BusCourier, TrayCourier

ONE = Message("job safe:1:1", "Job 214: whole job safe to hit", "2 clubs <tips & all>, since 9:00.")
GONE = Message("job safe:1:1", "Job 214: no longer safe to hit", "See the board.")


@pytest.fixture(scope="module")
def bus(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    with private_bus(tmp_path_factory.mktemp("bus")) as address:
        yield address


@pytest.fixture
def courier(qtbot: QtBot, bus: str) -> Iterator[BusCourier]:
    made = BusCourier(None, bus)
    yield made
    made.close()


def told(qtbot: QtBot, courier: BusCourier, message: Message) -> str | None:
    """Deliver and wait for the courier's word."""
    said: list[str | None] = []
    courier.deliver(message, said.append)
    qtbot.waitUntil(lambda: bool(said), timeout=10_000)
    assert len(said) == 1
    return said[0]


def test_notify_has_the_types_of_the_specification(
    qtbot: QtBot, bus: str, courier: BusCourier
) -> None:
    with StubServer.on(bus) as server:
        assert told(qtbot, courier, ONE) is None
        member, signature, body = server.calls.get(timeout=10)
    assert (member, signature) == ("Notify", "susssasa{sv}i")
    app, replaces, _icon, summary, text, actions, hints, expires = body
    assert (app, replaces, actions, expires) == ("rackboard", 0, [], -1)
    assert summary == ONE.summary
    assert text == "2 clubs &lt;tips &amp; all>, since 9:00."
    assert hints["urgency"] == ("y", 1)


def test_the_same_key_replaces_and_another_does_not(
    qtbot: QtBot, bus: str, courier: BusCourier
) -> None:
    with StubServer.on(bus) as server:
        told(qtbot, courier, ONE)
        told(qtbot, courier, GONE)
        told(qtbot, courier, ONE._replace(key="job safe:2:1"))
        replaced = [server.calls.get(timeout=10)[2][1] for _ in range(3)]
    assert replaced == [0, 41, 0]


def test_a_new_server_is_not_asked_to_replace_what_the_old_one_showed(
    qtbot: QtBot, bus: str, courier: BusCourier
) -> None:
    with StubServer.on(bus):
        told(qtbot, courier, ONE)
    with StubServer.on(bus) as server:
        # The bus tells of the change of owner before it answers anything asked later.
        told(qtbot, courier, ONE._replace(key="other"))
        told(qtbot, courier, ONE)
        replaced = [server.calls.get(timeout=10)[2][1] for _ in range(2)]
    assert replaced == [0, 0]


def test_taking_back_closes_what_was_shown_and_asks_nothing_otherwise(
    qtbot: QtBot, bus: str, courier: BusCourier
) -> None:
    back = ONE._replace(take_back=True)
    assert told(qtbot, courier, back) is None
    with StubServer.on(bus) as server:
        told(qtbot, courier, ONE)
        assert told(qtbot, courier, back) is None
        assert told(qtbot, courier, back) is None
        server.calls.get(timeout=10)
        assert server.calls.get(timeout=10) == ("CloseNotification", "u", (41,))
        assert server.calls.empty()


def test_no_server_is_said_and_the_next_one_is_found(
    qtbot: QtBot, bus: str, courier: BusCourier
) -> None:
    reason = told(qtbot, courier, ONE)
    assert reason is not None
    assert "org.freedesktop.Notifications" in reason
    with StubServer.on(bus):
        assert told(qtbot, courier, ONE) is None


def test_no_bus_is_said_at_once(qtbot: QtBot, tmp_path: Path) -> None:
    courier = BusCourier(None, f"unix:path={tmp_path}/nobody")
    assert told(qtbot, courier, ONE) == "No such file or directory"


def test_no_address_is_said_at_once(qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("DBUS_SESSION_BUS_ADDRESS", raising=False)
    assert told(qtbot, BusCourier(), ONE) == "there is no session bus"


def test_a_silent_server_does_not_hold_anybody_up(
    qtbot: QtBot, bus: str, courier: BusCourier, monkeypatch: pytest.MonkeyPatch
) -> None:
    courier._patience.setInterval(50)
    with StubServer.on(bus, silent=True):
        assert told(qtbot, courier, ONE) == "no answer in 10 s"


def test_a_bus_that_says_nothing_is_given_up(qtbot: QtBot, tmp_path: Path) -> None:
    with socket.socket(socket.AF_UNIX) as listener:
        listener.bind(str(tmp_path / "mute"))
        listener.listen()
        courier = BusCourier(None, f"unix:path={tmp_path}/mute")
        courier._patience.setInterval(50)
        assert told(qtbot, courier, ONE) == "no answer in 10 s"


def test_a_bus_that_hangs_up_is_said(qtbot: QtBot, tmp_path: Path) -> None:
    with socket.socket(socket.AF_UNIX) as listener:
        listener.bind(str(tmp_path / "rude"))
        listener.listen()

        def hang_up() -> None:
            connection, _ = listener.accept()
            with connection:
                connection.recv(4096)

        thread = threading.Thread(target=hang_up)
        thread.start()
        courier = BusCourier(None, f"unix:path={tmp_path}/rude")
        assert told(qtbot, courier, ONE) == "the bus has hung up"
        thread.join(10)


def test_deliver_returns_before_anything_is_answered(
    qtbot: QtBot, bus: str, courier: BusCourier
) -> None:
    said: list[str | None] = []
    with StubServer.on(bus) as server:
        for number in range(3):
            courier.deliver(ONE._replace(key=f"k{number}"), said.append)
        assert said == []
        assert server.calls.empty()
        qtbot.waitUntil(lambda: said == [None] * 3, timeout=10_000)


def test_the_tray_says_when_there_is_none(qtbot: QtBot) -> None:
    courier = TrayCourier()
    said: list[str | None] = []
    courier.deliver(ONE, said.append)
    assert said == ["there is no tray"]


def test_the_tray_shows_a_message(qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> None:
    from PySide6.QtWidgets import QSystemTrayIcon

    shown: list[tuple[str, str]] = []

    class Icon:
        visible = False

        def show(self) -> None:
            self.visible = True

        def showMessage(self, title: str, text: str) -> None:  # noqa: N802 (Qt's name)
            assert self.visible
            shown.append((title, text))

    monkeypatch.setattr(QSystemTrayIcon, "isSystemTrayAvailable", lambda: True)
    courier = TrayCourier(None, lambda parent: Icon())  # type: ignore[arg-type, return-value]
    said: list[str | None] = []
    courier.deliver(ONE, said.append)
    courier.deliver(ONE._replace(take_back=True), said.append)
    assert shown == [(ONE.summary, ONE.body)]
    assert said == [None, None]


def test_each_system_has_its_courier(qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> None:
    assert isinstance(couriers.desktop_courier(), BusCourier)
    monkeypatch.setattr(couriers.sys, "platform", "win32")
    assert isinstance(couriers.desktop_courier(), TrayCourier)
