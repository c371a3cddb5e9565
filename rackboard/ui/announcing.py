"""Says to a screen reader what has happened, once: a HOLD, an alarm, a permission, an undo.

What merely moves with time stands in the accessible names and is not announced.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable
from typing import NamedTuple

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from rackboard.core.alerts.kinds import Kind
from rackboard.core.alerts.rows import Alert
from rackboard.core.bench import HoldReason
from rackboard.core.standing import Standing
from rackboard.core.words import Word
from rackboard.ui.board_presenter import BoardPresenter
from rackboard.ui.joint_words import REASONS
from rackboard.ui.language import say, translated
from rackboard.ui.session import Session

Send = Callable[[QWidget, str, bool], None]
"""Takes a widget, the sentence, and whether it breaks into what is being read."""


def send(widget: QWidget, sentence: str, assertive: bool) -> None:
    """Hand a sentence to the platform's screen reader; where Qt can't (before 6.8), do nothing."""
    try:
        from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
    except ImportError:
        return
    event = QAccessibleAnnouncementEvent(widget, sentence)
    politeness = QAccessible.AnnouncementPoliteness
    event.setPoliteness(politeness.Assertive if assertive else politeness.Polite)
    QAccessible.updateAccessibility(event)


class Announcer:
    """The one way to a screen reader.

    Parameters
    ----------
    send : callable
        Carries a sentence; tests put in one that keeps it, for nobody can observe Qt's own.
    """

    __slots__ = ("_send",)

    def __init__(self, send: Send = send) -> None:
        self._send = send

    def announce(self, widget: QWidget, sentence: str, assertive: bool = False) -> None:
        """Say a sentence; an empty one is not said.

        Parameters
        ----------
        widget : QWidget
            In whose name it is said.
        sentence : str
            In the language that is spoken.
        assertive : bool
            Whether it breaks into what is being read: an alarm only.
        """
        if sentence:
            self._send(widget, sentence, assertive)


class _Known(NamedTuple):
    """What has been looked at already: nothing is news twice."""

    holds: frozenset[int]
    alarms: frozenset[int]
    bases: dict[int, Word]


class Announcements(QObject):
    """Follows the board and announces what is new on it.

    What stands on the board when it begins is known: the window itself reads that out.

    Parameters
    ----------
    session : Session
        The open shop.
    window : QWidget
        In whose name it speaks, and its parent.
    selected : callable
        Gives the selected joint, or None: permissions are announced of its job alone.
    announcer : Announcer, optional
        The way out.
    """

    def __init__(
        self,
        session: Session,
        window: QWidget,
        selected: Callable[[], Standing | None],
        announcer: Announcer | None = None,
    ) -> None:
        super().__init__(window)
        self._session = session
        self._window = window
        self._selected = selected
        self._announcer = announcer or Announcer()
        self._known = self._look()
        session.acted.connect(self._on_acted)
        session.ticked.connect(self.look)

    def undone(self, label: str) -> None:
        """Say what Ctrl+Z has taken back."""
        said = say("Announcement", "Undone: {what}.").format(what=translated(label))
        self._announcer.announce(self._window, said)

    def redone(self, label: str) -> None:
        """Say what Ctrl+Y has done again."""
        said = say("Announcement", "Done again: {what}.").format(what=translated(label))
        self._announcer.announce(self._window, said)

    def look(self) -> None:
        """Look at the board and announce what is new."""
        if getattr(self._window, "stopped", False):
            return
        before, self._known = self._known, self._look()
        session = self._session
        presenter = BoardPresenter(session.board, session.clock.now(), session.unit)
        fresh = self._known.holds - before.holds
        held = [s for s in session.board.standings if s.hold is not None and s.hold.id in fresh]
        for sentence in (*self._of_holds(presenter, held), *self._of_alarms(before, held)):
            self._announcer.announce(self._window, sentence, assertive=True)
        for sentence in self._of_permissions(presenter, before):
            self._announcer.announce(self._window, sentence)

    def _on_acted(self, changes: object) -> None:
        del changes
        self.look()

    def _alarms(self) -> list[Alert]:
        """Return the alarms that have been told; untold ones wait for opening hours."""
        alerts = self._session.alerts
        opened = [] if alerts is None else alerts.open
        return [a for a in opened if a.is_alarm and a.speaks and a.first_told_us is not None]

    def _look(self) -> _Known:
        standings = self._session.board.standings
        return _Known(
            frozenset(s.hold.id for s in standings if s.hold is not None),
            frozenset(alert.id for alert in self._alarms()),
            {s.joint.id: s.base for s in standings},
        )

    def _of_holds(
        self, presenter: BoardPresenter, held: Iterable[Standing]
    ) -> Iterable[str]:
        """Return a sentence a job and reason: fourteen clubs of one batch are one piece of news."""
        groups: dict[tuple[int, HoldReason], list[Standing]] = defaultdict(list)
        for standing in held:
            if standing.hold is not None:
                groups[standing.job.id, standing.hold.reason].append(standing)
        for (_, reason), members in groups.items():
            first = members[0]
            said = say("Announcement", "HOLD: {places}, job {job}: {reason}. Say what you did.")
            if reason is not HoldReason.DISTURBED:
                said = say("Announcement", "HOLD: {places}, job {job}: {reason}.")
            yield said.format(
                places=_places(presenter, members), job=first.job.number,
                reason=translated(REASONS[reason]),
            )  # fmt: skip

    def _of_alarms(self, before: _Known, held: list[Standing]) -> Iterable[str]:
        """Return a sentence a new alarm, unless its HOLD has just been said."""
        news = [alarm for alarm in self._alarms() if alarm.id not in before.alarms]
        if not news:
            return ()
        from rackboard.ui.alerts_presenter import cards

        on_hold = {s.joint.id for s in self._session.board.standings if s.hold is not None}
        hot = any(s.hold is not None and s.hold.reason is HoldReason.TOO_HOT for s in held)
        left = [
            alarm for alarm in news
            if not (alarm.kind == Kind.TOO_HOT and hot)
            and not (alarm.kind in (Kind.DISTURBED, Kind.WITHDRAWN)
                     and alarm.subject_id in on_hold)
        ]  # fmt: skip
        return [card.accessible for card in cards(left, self._session.board)]

    def _of_permissions(self, presenter: BoardPresenter, before: _Known) -> Iterable[str]:
        """Return what the selected job has just been given."""
        selected = self._selected()
        if selected is None:
            return
        groups: dict[Word, list[Standing]] = defaultdict(list)
        for standing in self._session.board.standings:
            was = before.bases.get(standing.joint.id)
            given = standing.base in (Word.BENCH, Word.CURED) and was not in (None, standing.base)
            if (
                given and was is not Word.CURED and standing.hold is None
                and standing.job.id == selected.job.id
            ):  # fmt: skip
                groups[standing.base].append(standing)
        for word, members in groups.items():
            said = say("Announcement", "{places}, job {job}: may come off the rack. Do not hit.")
            if word is Word.CURED:
                said = say("Announcement", "{places}, job {job}: safe to hit.")
            yield said.format(places=_places(presenter, members), job=selected.job.number)


def _places(presenter: BoardPresenter, members: list[Standing]) -> str:
    """Return "A13, 7 iron" of one club, else the places of all."""
    places = presenter.places(members)
    return f"{places}, {members[0].club.name}" if len(members) == 1 else places
