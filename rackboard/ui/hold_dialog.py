"""The dialog that asks what happened to a joint on HOLD."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from rackboard.core.bench import Hold, HoldReason
from rackboard.core.standing import Standing
from rackboard.ui.act_dialog import ActDialog
from rackboard.ui.keys import Key
from rackboard.ui.session import Session
from rackboard.ui.wording import Times

UNTURNED, SCRAPPED, MISTAKE = "touched, head did not turn", "scrapped", "entered by mistake"
"""Outcomes as they are stored."""


class HoldDialog(ActDialog):
    """What did you do? One key for each answer.

    Parameters
    ----------
    session : Session
        The open shop.
    standing : Standing
        Of a joint with an open HOLD.
    """

    def __init__(self, session: Session, standing: Standing, parent: QWidget | None = None) -> None:
        super().__init__(session, parent)
        assert standing.hold is not None
        self._hold: Hold = standing.hold
        where = session.board.snapshot.where(standing.club.id)
        times = Times(session.board.snapshot.hours, session.clock.now())
        reasons = {
            HoldReason.DISTURBED: self.tr("disturbed"),
            HoldReason.SOFT_SMEAR: self.tr("soft smear"),
            HoldReason.TOO_HOT: self.tr("too hot"),
        }
        content = self.frame(
            self.tr("What happened to {where} {club}?").format(
                where=where, club=standing.club.name
            ).replace("  ", " "),
            self.tr("Job {n}, on HOLD since {time}: {reason}.").format(
                n=standing.job.number, time=times.moment(self._hold.from_us),
                reason=reasons[self._hold.reason],
            ),
        )  # fmt: skip
        content.setSpacing(1)
        self.keys: dict[str, Key] = {}
        for outcome, text in (
            (UNTURNED, self.tr("Touched, but the head did not turn: the clock runs on")),
            (SCRAPPED, self.tr("Scrapped: the joint is taken apart")),
            (MISTAKE, self.tr("Entered by mistake: nothing happened")),
        ):
            key = Key(text, self.theme, self.roles)
            key.setProperty("outcome", outcome)
            key.clicked.connect(self._on_outcome)
            content.addWidget(key)
            self.keys[outcome] = key
        self.add_message(content)
        self.add_buttons("", self.tr("Leave it on HOLD"))
        self.keys[UNTURNED].setFocus()
        self.fit(660 if self.roles.large else 560, 560 if self.roles.large else 500)

    def _on_outcome(self) -> None:
        sender = self.sender()
        assert sender is not None
        outcome = str(sender.property("outcome"))
        self.act(lambda: self.session.bench.end_hold(self._hold, outcome))
