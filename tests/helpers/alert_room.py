"""A shop with the engine of alerts, ticked as the program ticks it, and a recording courier."""

from __future__ import annotations

from collections.abc import Callable

from helpers.shop import Shop, at, make_shop
from rackboard.core.alerts.kinds import Kind
from rackboard.core.alerts.rows import Alert
from rackboard.core.instants import MINUTE_US, Instant
from rackboard.services.alerts import Alerts
from rackboard.services.teller import Done, Message
from rackboard.store import Store


class Recorder:
    """A courier that keeps what it is given and does what a test says."""

    def __init__(self, name: str = "Desktop notices") -> None:
        self.name = name
        self.messages: list[Message] = []
        self.act: Callable[[Message, Done], None] = lambda message, done: done(None)

    def deliver(self, message: Message, done: Done) -> None:
        self.messages.append(message)
        self.act(message, done)

    @property
    def said(self) -> list[str]:
        return [message.summary for message in self.messages if not message.take_back]


class Room:
    """A shop with an engine that ticks every ten seconds when a test lets time pass."""

    def __init__(self, now: str = "Mon 08:00", store: Store | None = None) -> None:
        self.shop: Shop = make_shop(now, store)
        self.courier = Recorder()
        self.alerts = Alerts(self.shop.store, self.shop.clock, (self.courier,))

    def tick(self, cause: str = "") -> None:
        self.shop.board.tick()
        changes = self.alerts.tick(self.shop.board, cause)
        if changes is not None:
            self.shop.board.take_in(changes)
            self.shop.board.tick()

    def until(self, when: str, celsius: float | None = None, *, box: bool = False) -> None:
        """Let time pass in steps of a minute, with a reading a minute if a temperature is given."""
        end = at(when)
        while self.shop.clock.now() < end:
            self.shop.clock.advance(minutes=1)
            if celsius is not None:
                self.shop.feed([(self.shop.clock.now(), celsius)], box=box)
            self.tick()

    def open(self) -> list[Alert]:
        return self.alerts.open

    def the(self, kind: Kind) -> Alert:
        (alert,) = [alert for alert in self.alerts.open if alert.kind == kind]
        return alert

    def last(self, kind: Kind) -> Alert:
        return next(a for a in self.shop.store.alerts.page(100) if a.kind == kind)


def glued_room(celsius: float = 25.0, clubs: int = 2) -> tuple[Room, list[int]]:
    room = Room("Mon 08:00")
    room.shop.feed([(at("Mon 07:59"), celsius), (at("Mon 08:00"), celsius)])
    room.tick()
    joints = room.shop.glue(clubs)
    room.tick()
    return room, joints


def permit(room: Room, joint: int) -> None:
    start = at("Mon 18:00")
    readings: list[tuple[Instant, float]] = [
        (start + n * 10 * MINUTE_US, 25.0) for n in range(1, 6 * 20)
    ]
    room.shop.feed(readings)
    room.shop.clock.set(readings[-1][0])
    room.tick()
    assert str(room.shop.standing(joint).word) == "CURED"


def withdraw(room: Room, joint: int) -> None:
    batch = room.shop.standing(joint).batch.id
    room.shop.do(room.shop.bench.correct_mixed(batch, room.shop.clock.now() - 120 * MINUTE_US))
    room.tick()
