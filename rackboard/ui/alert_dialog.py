"""What is open, and what can be done about it: one panel, on the alerts page and in a dialog."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from rackboard.core.alerts.rows import Alert
from rackboard.core.disturbance import Answer
from rackboard.core.errors import RackboardError
from rackboard.core.instants import MINUTE_US
from rackboard.services.alert_headlines import about
from rackboard.services.alerts import REACHED, Alerts
from rackboard.store.changes import ChangeSet
from rackboard.ui import type
from rackboard.ui.alerts_presenter import Acts, acts, card, groups, when_words
from rackboard.ui.dialog import Dialog, error_text
from rackboard.ui.keys import Key
from rackboard.ui.language import say
from rackboard.ui.session import Session
from rackboard.ui.theme import Theme

LATER_MIN = (15, 60, 120)
"""For how long an alarm is put off [min]."""


class AlertPanel(QWidget):
    """An alarm, or some that are told as one: where, what, do, and a key for each act.

    Parameters
    ----------
    session : Session
        The open shop, with its alerts.
    dialog : Dialog
        Whose look it takes; also the parent of the dialog that an answer opens.

    Signals
    -------
    acted()
        Something was done about what is shown.
    club_chosen(int)
        This club is to be shown on the board.
    """

    acted = Signal()
    club_chosen = Signal(int)

    def __init__(self, session: Session, dialog: Dialog) -> None:
        super().__init__(dialog)
        self._session, self._dialog = session, dialog
        self._alerts: tuple[Alert, ...] = ()
        self._offered: tuple[tuple[str, str], ...] = ()
        self._later = False
        self.keys: dict[str, Key] = {}
        roles = dialog.roles
        self.signal = dialog.label("", roles.head, tone="signal")
        self.state = dialog.label("", tone="sub")
        self.headline = dialog.label("", roles.inspector_time, wrap=True)
        self.body = dialog.label("", wrap=True)
        self.phone = dialog.label("", roles.title)
        self.message = dialog.label("", roles.fact_bold, wrap=True)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(6)
        top = QHBoxLayout()
        top.addWidget(self.signal)
        top.addWidget(self.state)
        top.addStretch(1)
        top.setSpacing(12)
        layout.addLayout(top)
        for label in (self.headline, self.body, self.message):
            layout.addWidget(label)
        layout.addStretch(1)
        bottom = QHBoxLayout()
        bottom.setSpacing(15)
        self._row = QHBoxLayout()
        self._row.setSpacing(1)
        bottom.addLayout(self._row)
        bottom.addWidget(self.phone)
        bottom.addStretch(1)
        layout.addLayout(bottom)
        self.phone.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse
            | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )

    @property
    def ids(self) -> tuple[int, ...]:
        """The alerts that are shown: what Got it takes."""
        return tuple(alert.id for alert in self._alerts)

    def show_alerts(self, alerts: Sequence[Alert]) -> None:
        """Show alerts that are told as one; none: that nothing is open."""
        if tuple(alert.id for alert in alerts) != self.ids:
            self._later = False
            self._refuse("")
        self._alerts = tuple(alerts)
        if not alerts:
            self._say(self.signal, "")
            self._say(self.state, "")
            self._say(self.headline, say("Alert", "Nothing is open."))
            self._say(self.body, "")
            self._say(self.phone, "")
            self.setAccessibleName(self.headline.text())
            self._offer(Acts())
            return
        board = self._session.board
        shown = card(alerts, board)
        done = acts(alerts, board)
        self._say(self.signal, shown.signal)
        self._say(self.headline, shown.headline)
        self._say(self.body, shown.body)
        self._say(self.state, when_words(alerts[0], self._session.clock.now(),
                                         board.snapshot.hours))  # fmt: skip
        self._say(self.phone, about(alerts[0], board).phone if done.reached else "")
        self.setAccessibleName(shown.accessible)
        self._offer(done)

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        for key in self.keys.values():
            key.show_theme(theme, self._dialog.roles)

    def focus_first(self) -> None:
        """Bring the focus to the first key."""
        for key in self.keys.values():
            key.setFocus()
            return

    @staticmethod
    def _say(label: QLabel, text: str) -> None:
        label.setText(text)
        label.setVisible(bool(text))

    # Keys

    def _offer(self, may: Acts) -> None:
        offered = list(self._keys_later() if self._later and may.later else self._keys_for(may))
        if tuple(offered) == self._offered:
            return
        self._offered = tuple(offered)
        focused = any(key.hasFocus() for key in self.keys.values())
        while (item := self._row.takeAt(0)) is not None:
            if (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        self.keys = {}
        for act, text in offered:
            key = Key(text, self._dialog.theme, self._dialog.roles, self, primary=not self.keys)
            key.setProperty("act", act)
            key.clicked.connect(self._on_key)
            self._row.addWidget(key)
            key.show()  # or it could not take the focus before the next turn of the event loop
            self.keys[act] = key
        if focused:
            self.focus_first()

    def _keys_for(self, may: Acts) -> list[tuple[str, str]]:
        keys: list[tuple[str, str]] = []
        if may.reached:
            keys.append(("reached", say("Alert", "Customer reached")))
        if may.answer is not None:
            where = self._session.board.snapshot.where(may.answer.club.id)
            keys.append(("answer", say("Alert", "Answer for {where} {club}…").format(
                where=where, club=may.answer.club.name)))  # fmt: skip
        if may.nothing_seen:
            keys.append(("nothing", say("Alert", "Nothing seen")))
        if may.got_it:
            keys.append(("take", say("Alert", "Got it")))
        if may.accept:
            keys.append(("accept", say("Alert", "Accept the\nlater times")))
        if may.later:
            keys.append(("later", say("Alert", "Remind me\nlater…")))
        if may.club_id is not None:
            keys.append(("show", say("Alert", "Show on\nthe board")))
        return keys

    @staticmethod
    def _keys_later() -> list[tuple[str, str]]:
        texts = (say("Alert", "In 15 min"), say("Alert", "In 1 h"), say("Alert", "In 2 h"))
        keys = [(f"in:{minutes}", text) for minutes, text in zip(LATER_MIN, texts, strict=True)]
        return [*keys, ("back", say("Alert", "Back"))]

    # Acts

    def _on_key(self) -> None:
        sender = self.sender()
        assert sender is not None
        act = str(sender.property("act"))
        if act in ("later", "back"):
            self._later = act == "later"
            self.show_alerts(self._alerts)
            self.focus_first()
        elif act == "answer":
            self._answer()
        elif act == "show":
            club_id = acts(self._alerts, self._session.board).club_id
            if club_id is not None:
                self.club_chosen.emit(club_id)
        else:
            self._do(act)

    def _do(self, act: str) -> None:
        alerts = self._session.alerts
        if alerts is None:
            return
        alerts.by = self._session.bench.by
        ids = self.ids
        done: list[Callable[[], ChangeSet]] = []
        if act == "take":
            done = [lambda: alerts.got_it(ids)]
        elif act == "accept":
            done = [lambda: alerts.accept(ids[0], self._air_mc())]
        elif act == "reached":
            done = [lambda n=n: alerts.close(n, REACHED) for n in ids]  # type: ignore[misc]
        elif act == "nothing":
            done = [lambda: alerts.close(ids[0], Answer.NOTHING_SEEN.value)]
        elif act.startswith("in:"):
            until = self._session.clock.now() + int(act.removeprefix("in:")) * MINUTE_US
            done = [lambda: alerts.postpone(ids[0], until)]
        try:
            for do in done:
                self._session.take(do())
        except RackboardError as error:
            self._refuse(error_text(error))
            return
        self._later = False
        self._refuse("")
        self.acted.emit()

    def _answer(self) -> None:
        standing = acts(self._alerts, self._session.board).answer
        if standing is None:
            return
        from rackboard.ui.hold_dialog import HoldDialog

        HoldDialog(self._session, standing, self._dialog).open()

    def _air_mc(self) -> int:
        """Return the air that is accepted: the zone's last reading [m°C]."""
        alert = self._alerts[0]
        record = self._session.board.records().get(alert.subject_id)
        if record is not None and record.last is not None:
            return record.last.temperature_mc
        told = alert.data.get("air_mc")
        return told if isinstance(told, int) else 0

    def _refuse(self, text: str) -> None:
        self._say(self.message, text)
        self.message.setAccessibleName(text)


def open_groups(alerts: Alerts | None, session: Session) -> tuple[tuple[Alert, ...], ...]:
    """Return what is open and asks for something, the most pressing first, as it is told."""
    listed = [] if alerts is None else [a for a in alerts.open if a.is_alarm or a.speaks]
    return groups(listed, session.board)


class AlertDialog(Dialog):
    """One alarm, with its keys; it closes when something was done about it.

    Parameters
    ----------
    session : Session
        The open shop, with its alerts.
    alert : Alert
        An open one; those that are told together with it come along.

    Signals
    -------
    club_chosen(int)
        This club is to be shown on the board.
    """

    club_chosen = Signal(int)

    def __init__(self, session: Session, alert: Alert, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._key = alert.key
        self.panel = AlertPanel(session, self)
        layout = QVBoxLayout(self)
        margin = self.margin
        layout.setContentsMargins(margin, margin - 4, margin, margin - 4)
        layout.setSpacing(0)
        layout.addWidget(self.panel, 1)
        layout.addSpacing(self.gap)
        layout.addWidget(self.rule())
        layout.addSpacing(self.gap - 6)
        layout.addWidget(self.buttons)
        self.setWindowTitle(say("Alert", "Alert"))
        self.add_buttons("", say("Alert", "Close"))
        self.panel.acted.connect(self.accept)
        self.panel.club_chosen.connect(self._on_club_chosen)
        session.acted.connect(self.refresh)
        session.ticked.connect(self.refresh)
        self.refresh()
        self.fit(820 if self.roles.large else 680, 440 if self.roles.large else 380)
        self.panel.focus_first()

    def refresh(self) -> None:
        """Show it as it stands now; close if it is over."""
        for members in open_groups(self._session.alerts, self._session):
            if any(alert.key == self._key for alert in members):
                self.panel.show_alerts(members)
                self.setAccessibleName(self.panel.accessibleName())
                return
        if self.isVisible():
            self.accept()

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        super().show_theme(theme)
        if hasattr(self, "panel"):
            self.panel.show_theme(theme)

    def _on_club_chosen(self, club_id: int) -> None:
        self.club_chosen.emit(club_id)
        self.accept()


def height_for(dialog: Dialog) -> int:
    """Return the height that a panel needs for a headline, three lines and its keys [px]."""
    roles = dialog.roles
    lines = 6 * type.metrics(roles.fact).lineSpacing()
    return round(type.metrics(roles.inspector_time).lineSpacing() + lines + 87 + 40)
