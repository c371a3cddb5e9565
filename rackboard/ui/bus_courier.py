"""Desktop notices by the Desktop Notifications Specification 1.2, over the session bus."""

from __future__ import annotations

from typing import Any, NamedTuple

from PySide6.QtCore import QObject, Signal

from rackboard.core.text import text
from rackboard.services.teller import Done, Message
from rackboard.ui.bus import BUS, Answer, Bus, News
from rackboard.ui.language import say, translated

NAME = text("Courier", "Desktop notices")
GOT_IT, SHOW = "got it", "show"
"""What a person can choose on a notice."""
SERVER = "org.freedesktop.Notifications"
_PATH = "/org/freedesktop/Notifications"
_APP = "rackboard"
_DEFAULT = "default"  # the specification's word for a click on the notice itself
_NORMAL, _CRITICAL = 1, 2  # urgency; critical is kept for alarms that can't be put off
_NEVER, _AS_SERVER = 0, -1  # when it expires
_DISMISSED = 2  # close reasons: 1 expired, 2 by the person, 3 by us, 4 not said


class _Letter(NamedTuple):
    """A message on its way."""

    message: Message
    done: Done


class BusCourier(QObject):
    """Desktop notices; of one key there is one, and one call under way at a time.

    Parameters
    ----------
    parent : QObject, optional
        Owner.
    address : str, optional
        Of the bus; by default the session's.
    """

    name = NAME
    acted = Signal(object, str)
    """A person chose an action: ids of the alerts, `GOT_IT` or `SHOW`."""
    dismissed = Signal(object)
    """A person closed the notice of these alerts; any other way to vanish says nothing."""

    def __init__(self, parent: QObject | None = None, address: str | None = None) -> None:
        super().__init__(parent)
        self.bus = Bus(self, address)
        self.bus.listen(
            f"type='signal',sender='{BUS}',interface='{BUS}',member='NameOwnerChanged',"
            f"arg0='{SERVER}'"
        )
        self.bus.listen(f"type='signal',sender='{SERVER}',interface='{SERVER}'")
        self.bus.heard.connect(self._on_heard)
        self.bus.failed.connect(self._forget)
        self._waiting: list[_Letter] = []
        self._under_way: set[str] = set()
        self._ids: dict[str, int] = {}
        self._shown: dict[int, tuple[str, tuple[int, ...]]] = {}

    def deliver(self, message: Message, done: Done) -> None:
        """Send a message; `done` hears from the server's answer, or why there was none."""
        self._waiting.append(_Letter(message, done))
        self._send_waiting()

    def close(self) -> None:
        """Let go of the bus; what is under way is given up."""
        self.bus.close()

    def _send_waiting(self) -> None:
        for letter in list(self._waiting):
            # The number of a key's notice is known only when the server has answered.
            if letter.message.key not in self._under_way and letter in self._waiting:
                self._waiting.remove(letter)
                self._send(letter)

    def _send(self, letter: _Letter) -> None:
        message = letter.message
        known = self._ids.get(message.key, 0)
        if message.take_back:
            if not known:
                letter.done(None)
                return
            method, signature, body = "CloseNotification", "u", (known,)
        else:
            method, signature, body = "Notify", "susssasa{sv}i", _notice(message, known)
        self._under_way.add(message.key)
        self.bus.call(
            SERVER, _PATH, SERVER, method, signature, body,
            lambda answer: self._on_answer(letter, answer),
        )  # fmt: skip

    def _on_answer(self, letter: _Letter, answer: Answer) -> None:
        message = letter.message
        self._under_way.discard(message.key)
        if message.take_back:
            # Also after an error: the specification's only one is that it is gone already.
            self._shown.pop(self._ids.pop(message.key, 0), None)
        elif answer.error is None:
            number = int(answer.body[0])
            self._ids[message.key] = number
            self._shown[number] = (message.key, message.alerts)
        letter.done(answer.error)
        self._send_waiting()

    # What the server says

    def _on_heard(self, news: News) -> None:
        if news.interface == BUS and news.member == "NameOwnerChanged":
            self._forget()  # another server knows nothing of the old one's numbers
        elif news.interface == SERVER and news.body and news.body[0] in self._shown:
            number = news.body[0]
            key, alerts = self._shown[number]
            if news.member == "ActionInvoked":
                self.acted.emit(alerts, GOT_IT if news.body[1] == GOT_IT else SHOW)
            elif news.member == "NotificationClosed":
                del self._shown[number]
                if self._ids.get(key) == number:
                    del self._ids[key]
                if news.body[1] == _DISMISSED:
                    self.dismissed.emit(alerts)

    def _forget(self) -> None:
        self._ids.clear()
        self._shown.clear()


def _notice(message: Message, replaces: int) -> tuple[Any, ...]:
    """Return the arguments of Notify."""
    # Servers read a little markup in the body.
    body = translated(message.body).replace("&", "&amp;").replace("<", "&lt;")
    actions = []
    if message.alerts:
        shows = say("Courier", "Show on the board")
        actions = [_DEFAULT, shows, GOT_IT, say("Courier", "Got it"), SHOW, shows]
    hints = {
        "urgency": ("y", _CRITICAL if message.critical else _NORMAL),
        "desktop-entry": ("s", _APP),
        "suppress-sound": ("b", True),  # the board has sounds of its own
        # An alarm stays up while somebody looks at the board, until it is taken there or here.
        "resident": ("b", message.critical),
    }
    expires = _NEVER if message.critical else _AS_SERVER
    return _APP, replaces, "", translated(message.summary), body, actions, hints, expires
