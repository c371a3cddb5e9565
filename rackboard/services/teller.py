"""Says what alerts have to say: plans it, writes it down, then calls the couriers."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import NamedTuple, Protocol

from rackboard.core.alerts.kinds import NATURE, Kind, Sort
from rackboard.core.alerts.machine import Phase
from rackboard.core.alerts.rows import Alert, Telling
from rackboard.core.alerts.telling import (
    WINDOW_US,
    Annunciation,
    Told,
    Wanted,
    plan,
    rank,
    repeat_due_us,
)
from rackboard.core.errors import StoreError
from rackboard.core.instants import MINUTE_US, Clock, Instant
from rackboard.core.text import text
from rackboard.services import alert_words
from rackboard.services.alert_conditions import Key
from rackboard.services.board import Board
from rackboard.store import Store
from rackboard.store.transaction import Transaction

QUIET = "quiet hours"
"""Setting: [from, to], minutes after local midnight, in which nothing sounds but "too hot"."""
SHOWN = "shown"
ASKED = "asked"
FAILED = "failed: "
ABSENT_US = 2 * MINUTE_US
"""After so long without a tick all that fell due is told in one summary [decision]."""

Done = Callable[[str | None], None]
"""How a courier says what became of a message: None if it was shown, else why not."""


class Message(NamedTuple):
    """What a courier shows.

    Attributes
    ----------
    key : str
        A later message of the same key takes the place of this one.
    summary : str
        At most 40 characters.
    body : str
        Whole sentences.
    take_back : bool
        Nothing new: what was shown under the key is to go away.
    critical : bool
        It must not expire by itself.
    sound : str
        "alarm", "prompt", "good news", or "" for none.
    alerts : tuple of int
        The alerts that it tells of, for its actions.
    """

    key: str
    summary: str
    body: str
    take_back: bool = False
    critical: bool = False
    sound: str = ""
    alerts: tuple[int, ...] = ()


class Courier(Protocol):
    """Somebody who carries messages out of the window; must never block."""

    @property
    def name(self) -> str:
        """In the bench's words, such as "Desktop notices"."""

    def deliver(self, message: Message, done: Done) -> None:
        """Show a message, or take one back; call `done` once, now or later, or raise."""


class Planned(NamedTuple):
    """An annunciation and the alerts behind its numbers."""

    said: Annunciation
    keys: tuple[Key, ...]
    name: str


class Teller:
    """Plans, writes and delivers.

    Parameters
    ----------
    store : Store
        The data file.
    clock : Clock
        The time.
    couriers : sequence of Courier
        Called in this order for every message; one that fails stops none of the others.
    """

    __slots__ = ("_clock", "_couriers", "_said", "_since_us", "_store", "_ticked_us",
                 "_unwritten", "_was_open")

    def __init__(self, store: Store, clock: Clock, couriers: Sequence[Courier]) -> None:
        self._store = store
        self._clock = clock
        self._couriers = tuple(couriers)
        self._since_us: dict[str, Instant] = {}
        self._said: dict[str, set[int]] = {}
        self._unwritten: dict[int, dict[str, str]] = {}
        self._ticked_us: Instant | None = None
        self._was_open = False

    @property
    def troubles(self) -> list[tuple[str, Instant]]:
        """The couriers that don't work, and since when [µs UTC]."""
        return [(c.name, self._since_us[c.name]) for c in self._couriers
                if c.name in self._since_us]  # fmt: skip

    def plan(self, alerts: dict[Key, Alert], board: Board, now: Instant) -> list[Planned]:
        """Return what to say now of the alerts as they are about to be."""
        hours = board.snapshot.hours
        # Of a shop that never opens no morning would tell anything.
        is_open = hours.is_open(now) or not any(hours.week)
        came_back = (
            self._ticked_us is None or now - self._ticked_us > ABSENT_US
            or (is_open and not self._was_open)
        )  # fmt: skip
        self._ticked_us, self._was_open = now, is_open
        listed = list(alerts.values())
        wanted = [
            Wanted(n, Kind(a.kind), alert_words.group(a, board), a.due_us)
            for n, a in enumerate(listed) if a.speaks and a.told_us is None
        ]  # fmt: skip
        repeats = [
            Wanted(n, Kind(a.kind), "alarms", a.due_us, repeat=True)
            for n, a in enumerate(listed)
            if a.phase == Phase.UNTAKEN.value and a.told_us is not None
            and (is_open or a.kind == Kind.TOO_HOT)
        ]  # fmt: skip
        if not wanted and not repeats:
            return []
        told = [_told(t) for t in self._store.alerts.tellings(now - WINDOW_US)
                if t.at_us <= now]  # not what was said before the clock was set back  # fmt: skip
        quiet = _is_quiet(board.snapshot.settings.get(QUIET), hours.local(now))
        said, _ = plan(wanted, told, now, is_open=is_open, quiet=quiet, summary=came_back)
        planned = [Planned(one, _keys(one, listed), _name(one)) for one in said]
        if repeats and not any(NATURE[one.kind].sort is Sort.ALARM for one in said):
            first = min(listed[w.alert_id].first_told_us or now for w in repeats)
            last = max(listed[w.alert_id].told_us or now for w in repeats)
            if now >= repeat_due_us(first, last) or last > now + MINUTE_US:  # clock set back
                kind = min((w.kind for w in repeats), key=rank)
                recent = any(t.sounded and t.at_us > now - MINUTE_US for t in told)
                sounds = not recent and (not quiet or kind is Kind.TOO_HOT)
                again = Annunciation(tuple(repeats), kind, sounds)
                planned.append(Planned(again, _keys(again, listed), "alarms"))
        return planned

    def write(
        self, act: Transaction, planned: Iterable[Planned], alerts: dict[Key, Alert], now: Instant
    ) -> None:
        """Write down what is going to be said, in the transaction that raises it."""
        for one in planned:
            there = [alerts[key] for key in one.keys if key in alerts]
            for alert in there:
                act.update("alert", alert.id, told_us=now,
                           first_told_us=min(alert.first_told_us or now, now))  # fmt: skip
            repeat = one.name == "alarms"
            counted = not repeat and not (
                NATURE[one.said.kind].never_folded and not one.said.summary
            )
            act.add(
                Telling(
                    0, one.name, one.said.kind.value, one.said.alerts[0].group, now,
                    int(one.said.sounds), int(counted),
                    {"alerts": [alert.id for alert in there], "folded": one.said.folded,
                     "summary": one.said.summary},
                )
            )  # fmt: skip

    def deliver(self, board: Board, alerts: dict[Key, Alert]) -> None:
        """Hand over what was written and not handed over yet, also by the run before."""
        by_id = {alert.id: alert for alert in alerts.values()}
        for telling_id, said in list(self._unwritten.items()):
            self._write_down(telling_id, said)
        for telling in self._store.alerts.untold():
            if telling.id in self._unwritten:
                continue
            speaking = [by_id[n] for n in telling.alert_ids if n in by_id and by_id[n].speaks]
            if not speaking:
                self._write_down(telling.id, {})
                continue
            self._hand_over(telling, _message(telling, speaking, board))
            self._said[telling.key] = {alert.id for alert in speaking}
        for key, ids in list(self._said.items()):
            if not any(n in by_id and by_id[n].speaks for n in ids):
                self._said.pop(key, None)
                self._call(Message(key, "", "", take_back=True), _ignore)

    def _hand_over(self, telling: Telling, message: Message) -> None:
        said: dict[str, str] = {}
        waiting = True

        def done(name: str, what: str) -> None:
            said[name] = what
            if not waiting:
                self._write_down(telling.id, said)

        self._call(message, done)
        waiting = False
        self._write_down(telling.id, {c.name: ASKED for c in self._couriers} | said)

    def _call(self, message: Message, note: Callable[[str, str], None]) -> None:
        """Call every courier; whatever one does, the others and the list go on."""
        for courier in self._couriers:
            answered = False

            def done(reason: str | None, name: str = courier.name) -> None:
                nonlocal answered
                if answered:
                    return
                answered = True
                if reason is None:
                    self._since_us.pop(name, None)
                else:
                    self._since_us.setdefault(name, self._clock.now())
                note(name, SHOWN if reason is None else f"{FAILED}{reason}")

            try:
                courier.deliver(message, done)
            except Exception as error:  # a courier may fail in any way
                done(str(error) or type(error).__name__)

    def test(self) -> None:
        """Send a message that means nothing, to see whether it arrives."""
        self._call(
            Message("test", text("Alerts", "A test from the board"),
                    text("Alerts", "If you can read this, notices work."), sound="prompt"),
            _ignore,
        )  # fmt: skip

    def _write_down(self, telling_id: int, said: dict[str, str]) -> None:
        from rackboard.store.rows import json_text

        if self._store.is_closed:
            return  # a late answer; the next start calls again whoever was not heard of
        try:
            with self._store.write("couriers", self._clock.now()) as act:
                act.update("telling", telling_id, couriers_json=json_text(said))
        except StoreError:  # a full disk: told once all the same, and written down later
            self._unwritten[telling_id] = said
            return
        self._unwritten.pop(telling_id, None)


def _ignore(name: str, what: str) -> None:
    del name, what


def _told(telling: Telling) -> Told:
    return Told(telling.at_us, NATURE[Kind(telling.kind)].sort, bool(telling.sounded),
                telling.group_key, bool(telling.counted))  # fmt: skip


def _keys(said: Annunciation, listed: list[Alert]) -> tuple[Key, ...]:
    return tuple(listed[one.alert_id].key for one in said.alerts)


def _name(said: Annunciation) -> str:
    if said.summary:
        return "summary"
    return "more" if said.folded else f"{said.kind.value}:{said.alerts[0].group}"


def _is_quiet(setting: object, local: object) -> bool:
    if not isinstance(setting, list) or len(setting) != 2:
        return False
    begin, end = int(setting[0]), int(setting[1])
    minutes = local.hour * 60 + local.minute  # type: ignore[attr-defined]
    if begin <= end:
        return bool(begin <= minutes < end)
    return bool(minutes >= begin or minutes < end)


SOUNDS = {Sort.ALARM: "alarm", Sort.PROMPT: "prompt", Sort.MESSAGE: "good news"}


def _message(telling: Telling, alerts: list[Alert], board: Board) -> Message:
    kind = Kind(telling.kind)
    nature = NATURE[kind]
    summary, body = alert_words.words(
        alerts, board, folded=bool(telling.data.get("folded")), several=telling.key in
        ("summary", "alarms", "more") and len(alerts) > 1,
    )  # fmt: skip
    return Message(
        telling.key, summary, body, critical=nature.never_folded,
        sound=SOUNDS[nature.sort] if telling.sounded else "",
        alerts=tuple(alert.id for alert in alerts),
    )  # fmt: skip


