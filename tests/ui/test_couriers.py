"""The desktop courier on a private bus: right types, replacing, and every way to fail."""

from __future__ import annotations

import socket
import sys
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

if not sys.platform.startswith("linux"):
    pytest.skip("the session bus is Linux's", allow_module_level=True)

from jeepney import DBusAddress, HeaderFields, MessageType, new_method_call
from jeepney.io.blocking import open_dbus_connection
from pytestqt.qtbot import QtBot

from helpers.bus import Monitor, StubServer, action, closed, private_bus, refusal
from helpers.session import lay_out_irons, make_session, type_temperature
from helpers.shop import FakeClock, at, make_shop
from helpers.windows import make_window
from rackboard.core.alerts.kinds import Kind
from rackboard.core.alerts.machine import Mark, Phase
from rackboard.core.alerts.rows import Alert
from rackboard.services.teller import Done, Message, Teller
from rackboard.ui import couriers
from rackboard.ui.bus_courier import GOT_IT, SHOW, BusCourier
from rackboard.ui.couriers import (
    NOTICES,
    SOUND,
    Chain,
    Couriers,
    Report,
    WindowCourier,
    club_of,
    trouble_words,
)
from rackboard.ui.tray import TrayCourier

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
    assert told(qtbot, courier, ONE) == "no message bus: No such file or directory"


def test_no_address_is_said_at_once(qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("DBUS_SESSION_BUS_ADDRESS", raising=False)
    assert told(qtbot, BusCourier(), ONE) == "there is no session bus"


def test_a_silent_server_does_not_hold_anybody_up(
    qtbot: QtBot, bus: str, courier: BusCourier, monkeypatch: pytest.MonkeyPatch
) -> None:
    courier.bus.patience.setInterval(50)
    with StubServer.on(bus, silent=True):
        assert told(qtbot, courier, ONE) == "no answer in 10 s"


def test_a_bus_that_says_nothing_is_given_up(qtbot: QtBot, tmp_path: Path) -> None:
    with socket.socket(socket.AF_UNIX) as listener:
        listener.bind(str(tmp_path / "mute"))
        listener.listen()
        courier = BusCourier(None, f"unix:path={tmp_path}/mute")
        courier.bus.patience.setInterval(50)
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


# Actions, closing


ALARM = ONE._replace(key="disturbed:7", critical=True, alerts=(3, 5))


def test_r10_an_alarm_on_a_monitored_bus(qtbot: QtBot, bus: str, courier: BusCourier) -> None:
    monitor = Monitor(bus)
    try:
        with StubServer.on(bus):
            assert told(qtbot, courier, ALARM) is None
            call = monitor.next("Notify")
            assert call.header.fields[HeaderFields.signature] == "susssasa{sv}i"
            assert monitor.reply_to(call).body == (41,)
            hints, expires = call.body[6], call.body[7]
            assert hints["urgency"] == ("y", 2)
            assert hints["resident"] == ("b", True)
            assert hints["suppress-sound"] == ("b", True)
            assert expires == 0
            assert told(qtbot, courier, ALARM) is None
            assert monitor.next("Notify").body[1] == 41
    finally:
        monitor.close()
    with StubServer.on(bus) as anew:
        told(qtbot, courier, ONE)  # the bus tells of the new server before it answers
        told(qtbot, courier, ALARM)
        assert [anew.call()[2][1] for _ in range(2)] == [0, 0]


def test_what_can_wait_is_no_resident_and_may_expire(
    qtbot: QtBot, bus: str, courier: BusCourier
) -> None:
    with StubServer.on(bus) as server:
        told(qtbot, courier, ALARM._replace(critical=False))
        body = server.call()[2]
    assert (body[6]["urgency"], body[6]["resident"], body[7]) == (("y", 1), ("b", False), -1)


@pytest.mark.parametrize(
    ("key", "meant"), [("got it", GOT_IT), ("show", SHOW), ("default", SHOW)]
)
def test_actions_reach_the_alerts(
    qtbot: QtBot, bus: str, courier: BusCourier, key: str, meant: str
) -> None:
    with StubServer.on(bus) as server:
        told(qtbot, courier, ALARM)
        offered = server.call()[2][5]
        assert offered[::2] == ["default", "got it", "show"]
        assert offered[1::2] == ["Show on the board", "Got it", "Show on the board"]
        with qtbot.waitSignal(courier.acted, timeout=10_000) as chosen:
            server.emit(action(41, key))
    assert chosen.args == [(3, 5), meant]


def test_actions_of_other_notices_are_none_of_ours(
    qtbot: QtBot, bus: str, courier: BusCourier
) -> None:
    seen: list[object] = []
    courier.acted.connect(lambda alerts, what: seen.append((alerts, what)))
    courier.dismissed.connect(seen.append)
    with StubServer.on(bus) as server:
        told(qtbot, courier, ALARM)
        for signal in (action(7, "got it"), closed(7, 2), action(41, "got it")):
            server.emit(signal)
        qtbot.waitUntil(lambda: bool(seen), timeout=10_000)
    assert seen == [((3, 5), GOT_IT)]


@pytest.mark.parametrize("reason", [1, 2, 3, 4])
def test_r05_only_a_person_dismisses(
    qtbot: QtBot, bus: str, courier: BusCourier, reason: int
) -> None:
    seen: list[object] = []
    courier.dismissed.connect(seen.append)
    with StubServer.on(bus) as server:
        told(qtbot, courier, ALARM)
        server.call()
        server.emit(closed(41, reason))
        # The bus keeps the order: what is answered later was said later.
        told(qtbot, courier, ONE)
        server.call()
        assert seen == ([(3, 5)] if reason == 2 else [])
        # What is gone is neither replaced nor taken back.
        told(qtbot, courier, ALARM._replace(take_back=True))
        told(qtbot, courier, ALARM)
        member, _, body = server.call()
        assert (member, body[1]) == ("Notify", 0)


def test_a_key_said_twice_at_once_is_one_notice(
    qtbot: QtBot, bus: str, courier: BusCourier
) -> None:
    said: list[str | None] = []
    with StubServer.on(bus) as server:
        for message in (ALARM, ALARM, ALARM._replace(take_back=True)):
            courier.deliver(message, said.append)
        qtbot.waitUntil(lambda: len(said) == 3, timeout=10_000)
        calls = [server.call() for _ in range(3)]
    assert said == [None] * 3
    assert [(member, body[1] if member == "Notify" else body[0]) for member, _, body in calls] == [
        ("Notify", 0), ("Notify", 41), ("CloseNotification", 41),
    ]  # fmt: skip


class Refusing(StubServer):
    def answers(self, message: Any, member: str, signature: str) -> list[Any]:
        return [refusal(message, "not today")]


def test_a_server_that_refuses_is_quoted(qtbot: QtBot, bus: str, courier: BusCourier) -> None:
    with Refusing.on(bus):
        assert told(qtbot, courier, ALARM) == "not today"
        assert told(qtbot, courier, ALARM) == "not today"
    with StubServer.on(bus):
        assert told(qtbot, courier, ALARM) is None


def test_the_stub_refuses_what_the_specification_does(bus: str) -> None:
    server = DBusAddress(
        "/org/freedesktop/Notifications", "org.freedesktop.Notifications",
        "org.freedesktop.Notifications",
    )  # fmt: skip
    urgent = {"urgency": ("u", 2)}
    with StubServer.on(bus), open_dbus_connection(bus) as connection:
        for signature, body in (
            ("sissasa{sv}i", ("a", 0, "", "b", [], {}, -1)),
            ("susssasa{sv}i", ("a", 0, "", "b", "c", [], urgent, -1)),
        ):
            reply = connection.send_and_get_reply(
                new_method_call(server, "Notify", signature, body), timeout=10
            )
            assert reply.header.message_type is MessageType.error


# The chain


class Recorder:
    """A courier that keeps what it is told, and fails if it is to."""

    def __init__(self, name: str, reason: str | None = None) -> None:
        self.name = name
        self.reason = reason
        self.messages: list[Message] = []

    def deliver(self, message: Message, done: Done) -> None:
        self.messages.append(message)
        done(self.reason)


def test_a_switched_off_courier_only_takes_back() -> None:
    settings: dict[str, object] = {}
    notices, sound = Recorder("Desktop notices"), Recorder("Sound", "no player was found")
    clock = FakeClock(at("Mon 10:00"))
    chain = Chain(clock, lambda: settings, [(notices, NOTICES), (sound, SOUND)])
    said: list[str | None] = []
    back = ALARM._replace(take_back=True)
    for message in (ALARM, ALARM._replace(sound="alarm")):
        for courier in chain.couriers:
            courier.deliver(message, said.append)
    assert said == [None, "no player was found"] * 2
    # A message without a sound tells nothing of the sound.
    assert chain.reports == {
        "Desktop notices": Report(clock.now(), None),
        "Sound": Report(clock.now(), "no player was found"),
    }
    settings[NOTICES] = settings[SOUND] = False
    for message in (ALARM, back):
        for courier in chain.couriers:
            courier.deliver(message, said.append)
    assert notices.messages[2:] == sound.messages[2:] == [back]
    assert [link.is_on for link in chain.couriers] == [False, False]


def test_r04_a_courier_that_fails_is_said_and_stops_nobody() -> None:
    class Broken(Recorder):
        def deliver(self, message: Message, done: Done) -> None:
            super().deliver(message, done)
            if self.reason:
                raise OSError(self.reason)
            done(None)

    shop = make_shop()
    broken, sound = Broken("Desktop notices", "no server"), Recorder("Sound")
    chain = Chain(shop.clock, dict, [(broken, NOTICES), (sound, SOUND)])
    teller = Teller(shop.store, shop.clock, chain.couriers)
    teller.test()
    since = shop.clock.now()
    shop.clock.advance(minutes=5)
    teller.test()
    assert teller.troubles == [("Desktop notices", since)]
    assert chain.reports["Desktop notices"] == Report(shop.clock.now(), "no server")
    assert len(sound.messages) == 2
    assert trouble_words("Desktop notices", "10:00") == "Desktop notices: not working since 10:00"
    broken.reason = None
    teller.test()
    assert teller.troubles == []


def test_the_window_alert_lasts_for_an_alarm(qtbot: QtBot) -> None:
    alerted: list[int] = []
    window = make_window(qtbot)
    courier = WindowCourier(lambda: window, lambda widget, ms: alerted.append(ms))
    said: list[str | None] = []
    for message in (ALARM, ONE, ALARM._replace(take_back=True)):
        courier.deliver(message, said.append)
    assert alerted == [0, couriers.BRIEFLY_MS]
    assert said == [None] * 3
    WindowCourier(lambda: None).deliver(ONE, said.append)
    assert said[-1] == "there is no window"


def test_each_system_has_its_courier(qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> None:
    assert isinstance(couriers.desktop_courier(), BusCourier)
    monkeypatch.setattr(couriers.sys, "platform", "win32")
    assert isinstance(couriers.desktop_courier(), TrayCourier)


# The whole


@pytest.fixture
def whole(qtbot: QtBot) -> Iterator[Whole]:
    made = Whole(qtbot)
    yield made
    made.couriers.close()


class Whole:
    """A shop with a disturbed club, its window, and all couriers; nobody is on the bus."""

    def __init__(self, qtbot: QtBot) -> None:
        self.session, self.clock = make_session("2026-03-09T09:00+01:00")
        self.window = make_window(qtbot)
        self.couriers = Couriers(self.session, self.window, is_demo=True)
        self.couriers.sound.deliver = lambda message, done: done(None)  # type: ignore[method-assign]
        self.session.alerts = self.couriers.make_alerts()
        type_temperature(self.session, 25.0)
        laid = lay_out_irons(self.session, 3)
        self.session.take(self.session.bench.mix(laid.batch_id))
        self.session.take(self.session.bench.rack_all(laid.batch_id))
        self.clock.advance(hours=3)
        type_temperature(self.session, 25.0)
        joint = self.session.board.standings[1].joint.id
        self.session.take(self.session.bench.disturb(joint))

    def alert(self, kind: Kind) -> Alert:
        return next(a for a in self.session.alerts.open if a.kind == kind)


def test_got_it_takes_the_alarm(whole: Whole) -> None:
    alarm = whole.alert(Kind.DISTURBED)
    assert alarm.phase == Phase.UNTAKEN.value
    whole.couriers.desktop.acted.emit((alarm.id,), GOT_IT)
    assert whole.alert(Kind.DISTURBED).phase == Phase.TAKEN.value
    whole.couriers.desktop.acted.emit((alarm.id,), GOT_IT)  # again, from another notice
    whole.couriers.desktop.acted.emit((999,), GOT_IT)
    assert whole.alert(Kind.DISTURBED).phase == Phase.TAKEN.value


def test_r05_a_dismissal_makes_a_milestone_seen_and_no_alarm_taken(whole: Whole) -> None:
    whole.clock.advance(hours=9)
    whole.session.tick()
    milestones = [a for a in whole.session.alerts.open if not a.is_alarm]
    assert [a for a in milestones if a.phase == Mark.DUE.value]
    whole.couriers.desktop.dismissed.emit(tuple(a.id for a in whole.session.alerts.open))
    milestones = [a for a in whole.session.alerts.open if not a.is_alarm]
    assert not [a for a in milestones if a.phase == Mark.DUE.value]
    assert whole.alert(Kind.DISTURBED).phase == Phase.UNTAKEN.value


def test_show_brings_the_window_up_at_the_club(qtbot: QtBot, whole: Whole) -> None:
    alarm = whole.alert(Kind.DISTURBED)
    whole.window.hide()
    with qtbot.waitSignal(whole.couriers.shown) as shown:
        whole.couriers.desktop.acted.emit((alarm.id,), SHOW)
    assert shown.args == [whole.session.board.standings[1].club.id]
    assert whole.window.isVisible()
    assert whole.alert(Kind.DISTURBED).phase == Phase.UNTAKEN.value
    assert club_of(whole.session, ()) is None


def test_trouble_is_said_in_the_list(qtbot: QtBot, whole: Whole) -> None:
    teller = whole.session.alerts.teller
    qtbot.waitUntil(lambda: bool(teller.troubles), timeout=10_000)
    assert whole.couriers.lines() == ["Desktop notices: not working since 09:00"]
    assert trouble_words("Sound", "12:00") == "Sound off since 12:00: the board beeps instead"


def test_the_tray_says_what_comes_next(whole: Whole, monkeypatch: pytest.MonkeyPatch) -> None:
    said: list[str] = []
    monkeypatch.setattr(type(whole.couriers.tray), "is_there", property(lambda tray: True))
    monkeypatch.setattr(whole.couriers.tray, "show_next", said.append)
    whole.session.tick()
    assert "Off the rack, A1 A3" in said[-1]
    assert ":" in said[-1]


def test_a_new_session_and_window_are_followed(qtbot: QtBot, whole: Whole) -> None:
    session, _ = make_session()
    window = make_window(qtbot)
    whole.couriers.watch(session, window)
    whole.window.hide()
    whole.couriers.show()
    assert whole.window.isHidden()
    assert whole.couriers.lines() == []
    whole.session.tick()
    whole.couriers.watch(session, window)
