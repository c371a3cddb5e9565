"""The dialog in which a person lets a joint go before the board does: who, what for, and why."""

from __future__ import annotations

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QButtonGroup,
    QFrame,
    QHBoxLayout,
    QLineEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from rackboard.core.bench import Milestone
from rackboard.core.errors import InputError
from rackboard.core.standing import Standing, expected_at
from rackboard.core.text import text
from rackboard.services.holding import LONGEST_REASON
from rackboard.store.changes import ChangeSet
from rackboard.ui.act_dialog import ActDialog
from rackboard.ui.controls import Option
from rackboard.ui.initials_row import InitialsRow
from rackboard.ui.language import say
from rackboard.ui.session import Session
from rackboard.ui.wording import Times


class ReleaseDialog(ActDialog):
    """Release a joint: a plain entry once its time is expected to be over, else a WARNING.

    With the warning Cancel is the default: Enter walks through the fields and ends there.

    Parameters
    ----------
    session : Session
        The open shop.
    standing : Standing
        Of a glued joint; one on HOLD is answered with it.
    """

    _accept: QPushButton | None = None

    def __init__(self, session: Session, standing: Standing, parent: QWidget | None = None) -> None:
        super().__init__(session, parent)
        self._standing = standing
        self._times = Times(session.board.snapshot.hours, session.clock.now())
        where = session.board.snapshot.where(standing.club.id)
        content = self.frame(
            say("Release", "Release {where} {club}").format(
                where=where, club=standing.club.name
            ).replace("  ", " "),
            say("Release", "Job {number}. The board keeps its word; your initials stand in place "
                "of the time, and on the record.").format(number=standing.job.number),
        )  # fmt: skip
        self.options: dict[Milestone, Option] = {}
        self._group = QButtonGroup(self)
        content.addLayout(self._milestones())
        content.addWidget(self._warning())
        self.reason = self.field(say("Release", "Why it is released now"))
        self.reason.setMaxLength(LONGEST_REASON)
        self.reason.setPlaceholderText(say("Release", "why now: required"))
        content.addSpacing(6)
        content.addWidget(self.reason)
        self.who = InitialsRow(session, self)
        content.addWidget(self.who)
        self.add_message(content)
        accept, cancel = say("Release", "Release it"), say("Release", "Cancel")
        self._accept = accepting = self.add_buttons(accept, cancel)
        assert accepting is not None
        accepting.setAutoDefault(False)
        self._cancel = next(
            button for button in self.buttons.buttons()
            if isinstance(button, QPushButton) and button is not self._accept
        )  # fmt: skip
        self._show_warning()
        self.fit(760 if self.roles.large else 600, 620 if self.roles.large else 500)
        self.reason.setFocus()

    def _milestones(self) -> QVBoxLayout:
        """Return what it can be released for, the nearer permission first."""
        column = QVBoxLayout()
        column.setSpacing(6)
        names = {
            Milestone.HANDLING: say("Release", "to come off the rack, not to be hit"),
            Milestone.FULL_CURE: say("Release", "to be hit, bent and handed out"),
        }
        open_ones = [Milestone.FULL_CURE]
        if self._standing.hold is None and self._standing.milestone is Milestone.HANDLING:
            open_ones.insert(0, Milestone.HANDLING)
        for milestone in open_ones:
            option = self.option(names[milestone])
            self._group.addButton(option)
            option.toggled.connect(self._show_warning)
            column.addWidget(option)
            self.options[milestone] = option
        self.options[open_ones[0]].setChecked(True)
        return column

    def _warning(self) -> QFrame:
        self.panel = QFrame()
        self.panel.setProperty("tone", "panel")
        self.signal = self.label(say("Release", "WARNING"), self.roles.head, tone="signal")
        self.danger = self.label("", wrap=True)
        row = QHBoxLayout(self.panel)
        row.setContentsMargins(16, 12, 16, 12)
        row.setSpacing(16)
        row.addWidget(self.signal, 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self.danger, 1)
        keeps = self.panel.sizePolicy()
        keeps.setRetainSizeWhenHidden(True)  # nothing shifts when it comes or goes
        self.panel.setSizePolicy(keeps)
        return self.panel

    @property
    def milestone(self) -> Milestone:
        """What it is released for."""
        return next(m for m, option in self.options.items() if option.isChecked())

    @property
    def warns(self) -> bool:
        """Whether it is released before its time is expected."""
        expected = expected_at(self._standing, self.milestone)
        return expected is None or self.session.clock.now() < expected

    def _show_warning(self) -> None:
        if self._accept is None:
            return
        warns = self.warns
        self.danger.setText(self._danger())
        self.panel.setVisible(warns)
        self.setAccessibleDescription(self._danger() if warns else "")
        self._accept.setText(
            say("Release", "Release it all the same") if warns else say("Release", "Release it")
        )
        self.dress(self._accept, primary=not warns)
        self._accept.style().unpolish(self._accept)
        self._accept.style().polish(self._accept)
        self._accept.setDefault(not warns)
        self._cancel.setDefault(warns)

    def _danger(self) -> str:
        expected = expected_at(self._standing, self.milestone)
        if self._standing.hold is not None:
            said = say("Release", "It is on HOLD: nobody knows what the bond bears.")
        elif expected is None:
            said = say("Release", "Nobody can say yet when it will be hard.")
        else:
            said = say("Release", "It is probably hard by {time}, not now.").format(
                time=self._times.moment(expected)
            )
        return say(
            "Release",
            "{why} A head that lets go can injure somebody. The epoxy's own sheet comes first: "
            "when in doubt the club is not hit.",
        ).format(why=said)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let Enter in a field go on to the next one while there is a warning."""
        focus: QObject | None = self.focusWidget()
        enter = event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        if enter and self.warns and isinstance(focus, QLineEdit):
            self.focusNextChild()
            return
        super().keyPressEvent(event)

    def accept(self) -> None:
        """Release it."""
        self.mark(self.reason, False)
        self.mark(self.who.field, False)
        if not self.who.initials:
            nothing = text("Release", "nothing")
            wanted = text("Release", "the initials of who releases it")
            self.refuse(InputError(wanted, nothing, text("Release", "who")), self.who.field)
            return
        self.act(self._release, self.reason)

    def _release(self) -> ChangeSet:
        self.who.take()
        standing = self._standing
        return self.session.bench.release(
            standing.joint.id, self.milestone, self.reason.text(), standing.hold
        )
