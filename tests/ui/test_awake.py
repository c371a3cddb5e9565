"""The computer is kept awake while anything cures (R09), or the board says that it isn't."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QObject
from pytestqt.qtbot import QtBot

from helpers.session import lay_out_irons, make_session, type_temperature
from rackboard.core.bench import PlaceKind
from rackboard.ui import awake
from rackboard.ui.awake import Awake, Got, ProcessWay, Way, WindowsWay, anything_cures

linux = pytest.mark.skipif(not sys.platform.startswith("linux"), reason="a bus is Linux's")


class Recorded:
    """A way that keeps what it is told."""

    def __init__(self, reason: str | None = None) -> None:
        self.reason = reason
        self.did: list[str] = []

    def take(self, got: Got) -> None:
        self.did.append("take")
        got(self.reason)

    def release(self) -> None:
        self.did.append("release")


def awake_by(*ways: Way) -> Awake:
    return Awake(None, lambda parent, lost: ways)


# R09


def test_r09_it_is_held_while_anything_cures(qtbot: QtBot) -> None:
    session, _ = make_session()
    way = Recorded()
    made = awake_by(way)
    made.follow(session)
    assert not made.held
    type_temperature(session, 25.0)
    laid = lay_out_irons(session)
    assert not made.held  # laid out, not mixed
    session.take(session.bench.mix(laid.batch_id))
    assert made.held
    session.take(session.bench.rack_all(laid.batch_id))
    assert way.did == ["take"]
    for club in session.board.snapshot.clubs.values():
        session.take(session.bench.move(club.id, _place(session, PlaceKind.OUT), None))
    assert not made.held  # out of the shop nothing is earned
    assert way.did == ["take", "release"]
    session.undo()
    assert made.held
    made.close()
    assert way.did == ["take", "release", "take", "release"]


def _place(session: Any, kind: PlaceKind) -> int:
    return int(session.board.snapshot.place(kind).id)


def test_r09_a_cured_club_keeps_nobody_awake(qtbot: QtBot) -> None:
    session, clock = make_session("2026-03-09T09:00+01:00")
    type_temperature(session, 25.0)
    laid = lay_out_irons(session, 1)
    session.take(session.bench.mix(laid.batch_id))
    session.take(session.bench.rack_all(laid.batch_id))
    made = awake_by(Recorded())
    made.follow(session)
    assert made.held
    for _ in range(60):
        clock.advance(hours=1)
        session.tick()
        type_temperature(session, 25.0)
        if not made.held:
            break
    words = [str(s.word) for s in session.board.standings]
    assert words == ["CURED"]
    assert not anything_cures(session.board)
    assert not made.held


def test_another_session_is_followed_instead(qtbot: QtBot) -> None:
    first, _ = make_session()
    second, _ = make_session()
    made = awake_by(Recorded())
    made.follow(first)
    made.follow(second)
    laid = lay_out_irons(first)
    first.take(first.bench.mix(laid.batch_id))
    assert not made.held


# Ways


def test_the_first_that_works_holds(qtbot: QtBot) -> None:
    refused, works, spare = Recorded("no"), Recorded(), Recorded()
    made = awake_by(refused, works, spare)
    made.hold(True)
    made.hold(True)
    assert made.held
    assert made.trouble is None
    made.hold(False)
    assert (refused.did, works.did, spare.did) == (["take"], ["take", "release"], [])


def test_if_none_works_it_is_said_and_tried_again(qtbot: QtBot) -> None:
    way = Recorded("not allowed")
    made = awake_by(way)
    with qtbot.waitSignal(made.changed):
        made.hold(True)
    assert not made.held
    assert made.trouble == (
        "This computer may go to sleep while epoxy cures, and no alert is told then"
        " (not allowed). Switch sleep off in its settings."
    )
    way.reason = None
    made._again.setInterval(1)
    made._again.start()
    qtbot.waitUntil(lambda: made.held, timeout=10_000)
    assert made.trouble is None
    made.hold(False)


def test_a_refusal_is_no_trouble_once_nothing_cures(qtbot: QtBot) -> None:
    made = awake_by(Recorded("not allowed"))
    made.hold(True)
    made.hold(False)
    assert made.trouble is None
    assert not made._again.isActive()


def test_an_answer_that_comes_too_late_is_given_back(qtbot: QtBot) -> None:
    class Slow(Recorded):
        got: Got

        def take(self, got: Got) -> None:
            self.did.append("take")
            self.got = got

    way = Slow()
    made = awake_by(way)
    made.hold(True)
    made.hold(False)
    way.got(None)
    assert way.did == ["take", "release"]
    assert not made.held


def test_a_way_that_is_lost_is_asked_again(qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(awake, "LOST_MS", 1)
    losts: list[Callable[[], None]] = []
    way = Recorded()

    def ways(parent: QObject, lost: Callable[[], None]) -> list[Way]:
        losts.append(lost)
        return [way]

    made = Awake(None, ways)
    made.hold(True)
    losts[0]()
    assert not made.held
    qtbot.waitUntil(lambda: made.held, timeout=10_000)
    assert way.did == ["take", "take"]
    made.hold(False)


def test_windows_is_told_that_the_system_is_required(qtbot: QtBot) -> None:
    states: list[int] = []
    made = awake_by(WindowsWay(lambda state: states.append(state) or 1))  # type: ignore[func-returns-value]
    made.hold(True)
    made.hold(False)
    assert states == [0x80000001, 0x80000000]
    made = awake_by(WindowsWay(lambda state: 0))
    made.hold(True)
    assert made.trouble is not None
    made.hold(False)


def test_a_program_holds_as_long_as_it_runs(qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(awake, "LOST_MS", 1)
    command = [sys.executable, "-c", "import sys; sys.stdin.read()"]
    owner = QObject()
    ways: list[ProcessWay] = []

    def make(parent: QObject, lost: Callable[[], None]) -> list[Way]:
        ways.append(ProcessWay(owner, lost, command))
        return list(ways)

    made = Awake(None, make)
    made.hold(True)
    qtbot.waitUntil(lambda: made.held, timeout=10_000)
    process = ways[0]._process
    assert process is not None
    process.kill()
    qtbot.waitUntil(lambda: ways[0]._process not in (None, process), timeout=10_000)
    qtbot.waitUntil(lambda: made.held, timeout=10_000)
    last = ways[0]._process
    assert last is not None
    with qtbot.waitSignal(last.destroyed, timeout=10_000):
        made.hold(False)


def test_a_program_that_is_not_there_is_said(qtbot: QtBot, tmp_path: Path) -> None:
    owner = QObject()
    made = Awake(
        None, lambda parent, lost: [ProcessWay(owner, lost, [str(tmp_path / "caffeinate")])]
    )
    made.hold(True)
    qtbot.waitUntil(lambda: made.trouble is not None, timeout=10_000)
    made.hold(False)


# Buses

if sys.platform.startswith("linux"):
    from jeepney import new_method_return
    from jeepney.io.blocking import DBusConnection, open_dbus_connection

    from helpers.bus import Stub, private_bus, refusal
    from rackboard.ui.awake import BusWay, asked_on_session, asked_on_system
    from rackboard.ui.bus import Bus

    class Power(Stub):
        """What KDE, XFCE and others have."""

        name = "org.freedesktop.PowerManagement"
        begin, end = ("Inhibit", "ss"), ("UnInhibit", "u")

        def answers(self, message: Any, member: str, signature: str) -> list[Any]:
            if (member, signature) == self.begin:
                return [new_method_return(message, "u", (17,))]
            if (member, signature) == self.end:
                return [new_method_return(message)]
            return [refusal(message, f"{member} {signature}")]

    class Gnome(Power):
        name = "org.gnome.SessionManager"
        begin, end = ("Inhibit", "susu"), ("Uninhibit", "u")

    class Login(Stub):
        """Hands out the writing end of a pipe: it holds until that is closed."""

        name = "org.freedesktop.login1"

        def _connect(self, address: str) -> DBusConnection:
            self.read, self._write = os.pipe()
            return open_dbus_connection(address, enable_fds=True)

        def answers(self, message: Any, member: str, signature: str) -> list[Any]:
            if (member, signature) != ("Inhibit", "ssss"):
                return [refusal(message, f"{member} {signature}")]
            return [new_method_return(message, "h", (self._write,))]

        def sent(self) -> None:
            """Keep no copy of what was handed out."""
            os.close(self._write)


@pytest.fixture
def bus(tmp_path: Path) -> Iterator[str]:
    with private_bus(tmp_path) as address:
        yield address


@linux
@pytest.mark.parametrize("desktop", ["Power", "Gnome"])
def test_a_desktop_is_asked_and_released(qtbot: QtBot, bus: str, desktop: str) -> None:
    connection = Bus(None, bus)
    made = Awake(
        None, lambda parent, lost: [BusWay(parent, connection, asked_on_session(), lost)]
    )
    with globals()[desktop].on(bus) as server:
        made.hold(True)
        qtbot.waitUntil(lambda: made.held, timeout=10_000)
        member, signature, body = server.call()
        assert (member, signature) == server.begin
        assert body[0] == "rackboard"
        if desktop == "Gnome":
            assert body[3] == 4  # suspending
        made.hold(False)
        qtbot.waitUntil(lambda: not server.calls.empty(), timeout=10_000)
        assert server.call() == (server.end[0], "u", (17,))
    connection.close()


@linux
def test_the_login_manager_holds_by_a_descriptor(qtbot: QtBot, bus: str) -> None:
    connection = Bus(None, bus, fds=True)
    made = Awake(
        None, lambda parent, lost: [BusWay(parent, connection, asked_on_system(), lost)]
    )
    with Login.on(bus) as server:
        made.hold(True)
        qtbot.waitUntil(lambda: made.held, timeout=10_000)
        _, _, body = server.call()
        assert body[0] == "idle"
        assert body[3] == "block"
        server.sent()
        connection.fail("the bus is gone")
        assert made.held  # the descriptor is what counts
        os.set_blocking(server.read, False)
        with pytest.raises(BlockingIOError):
            os.read(server.read, 1)
        made.hold(False)
        assert os.read(server.read, 1) == b""  # all writing ends are closed
        os.close(server.read)
    connection.close()


@linux
def test_nobody_on_the_bus_is_said(qtbot: QtBot, bus: str) -> None:
    connection = Bus(None, bus)
    made = Awake(
        None, lambda parent, lost: [BusWay(parent, connection, asked_on_session(), lost)]
    )
    made.hold(True)
    qtbot.waitUntil(lambda: made.trouble is not None, timeout=10_000)
    assert "org.gnome.SessionManager" in str(made.trouble)
    made.hold(False)
    connection.close()


@linux
def test_a_bus_that_goes_takes_the_hold_with_it(
    qtbot: QtBot, bus: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(awake, "LOST_MS", 1)
    connection = Bus(None, bus)
    made = Awake(
        None, lambda parent, lost: [BusWay(parent, connection, asked_on_session(), lost)]
    )
    with Power.on(bus) as server:
        made.hold(True)
        qtbot.waitUntil(lambda: made.held, timeout=10_000)
        server.call()
        connection.fail("the bus is gone")
        assert not made.held
        qtbot.waitUntil(lambda: made.held, timeout=10_000)
        assert server.call()[0] == "Inhibit"
        made.hold(False)
        qtbot.waitUntil(lambda: not server.calls.empty(), timeout=10_000)
        assert server.call()[0] == "UnInhibit"
    connection.close()
