"""The dialog that asks what happened to a disturbed joint, or to one on HOLD."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from rackboard.core.bench import Hold, HoldReason
from rackboard.core.disturbance import Answer, Glue, answers_to, answers_to_hold, glue_at
from rackboard.core.instants import Instant
from rackboard.core.standing import Standing
from rackboard.store.changes import ChangeSet
from rackboard.ui.act_dialog import ActDialog
from rackboard.ui.initials_row import InitialsRow
from rackboard.ui.keys import RIM, TARGET, Key
from rackboard.ui.session import Session
from rackboard.ui.wording import Times

UNTURNED, SCRAPPED, MISTAKE = Answer.UNTURNED, Answer.SCRAPPED, Answer.MISTAKE
RE_AIMED, RE_GLUED = Answer.RE_AIMED, Answer.RE_GLUED
"""Outcomes as they are stored."""
_MOST = 4  # answers that are ever offered at once


def glue_of(standing: Standing, now: Instant) -> Glue:
    """Return what the glue of a joint may have come to if it is disturbed now."""
    gel = None if standing.outcome is None else standing.outcome.forecast.gel_early
    return glue_at(standing.base, now, standing.use_by_us, gel)


class HoldDialog(ActDialog):
    """What did you do? One key for each answer.

    Parameters
    ----------
    session : Session
        The open shop.
    standing : Standing
        Of a joint with an open HOLD; or of a disturbed one that surely hasn't gelled and so
        needs none. If it may gel while nobody answers, the answer makes the HOLD after all.
    """

    def __init__(self, session: Session, standing: Standing, parent: QWidget | None = None) -> None:
        super().__init__(session, parent)
        self._joint_id = standing.joint.id
        self._hold: Hold | None = standing.hold
        now = session.clock.now()
        self._glue = Glue.GELLED if standing.hold else glue_of(standing, now)
        where = session.board.snapshot.where(standing.club.id)
        content = self.frame(
            self.tr("What happened to {where} {club}?").format(
                where=where, club=standing.club.name
            ).replace("  ", " "),
            self._said(standing, Times(session.board.snapshot.hours, now)),
        )  # fmt: skip
        content.setSpacing(1)
        self.keys: dict[str, Key] = {}
        self._keys = QVBoxLayout()
        self._keys.setSpacing(1)
        content.addLayout(self._keys)
        self.who = InitialsRow(session, self)
        content.addWidget(self.who)
        self.add_message(content)
        if self._hold is None:
            self.add_buttons("", self.tr("Nothing happened"))
        else:
            self.add_buttons("", self.tr("Leave it on HOLD"))
        self._offer(answers_to(self._glue) if self._hold is None else
                    answers_to_hold(self._hold.reason))  # fmt: skip

    def _said(self, standing: Standing, times: Times) -> str:
        number = standing.job.number
        if self._hold is None:
            if self._glue is Glue.WET:
                return self.tr("Job {n}, disturbed while the glue is still soft.").format(n=number)
            return self.tr(
                "Job {n}, disturbed after its working life, before the glue can have gelled."
            ).format(n=number)
        reasons = {
            HoldReason.DISTURBED: self.tr("disturbed"),
            HoldReason.SOFT_SMEAR: self.tr("soft smear"),
            HoldReason.TOO_HOT: self.tr("too hot"),
        }
        return self.tr("Job {n}, on HOLD since {time}: {reason}.").format(
            n=number, time=times.moment(self._hold.from_us), reason=reasons[self._hold.reason]
        )

    def _offer(self, answers: tuple[Answer, ...]) -> None:
        texts = {
            Answer.RE_AIMED: self.tr("Re-aimed: the clock runs on from mixing"),
            Answer.RE_GLUED: self.tr("Pulled, cleaned, re-glued with a new batch"),
            Answer.UNTURNED: self.tr("Touched, but the head did not turn: the clock runs on"),
            Answer.NOTHING_SEEN: self.tr("Nothing seen: no foam, no soft ferrule, no crept head"),
            Answer.SCRAPPED: self.tr("Scrapped: the joint is taken apart"),
            Answer.RELEASED: self.tr("Released by a person, with a reason…"),
            Answer.MISTAKE: self.tr("Entered by mistake: nothing happened"),
        }
        for key in self.keys.values():
            self._keys.removeWidget(key)
            key.hide()
            key.deleteLater()
        self.keys = {}
        for answer in answers:
            key = Key(texts[answer], self.theme, self.roles)
            key.setProperty("outcome", answer.value)
            key.clicked.connect(self._on_outcome)
            self._keys.addWidget(key)
            self.keys[answer] = key
        self.keys[answers[0]].setFocus()
        spare = (_MOST - len(answers)) * (TARGET + 2 * RIM + 1)
        self.fit(660 if self.roles.large else 560, (710 if self.roles.large else 620) - spare)

    def _on_outcome(self) -> None:
        sender = self.sender()
        assert sender is not None
        answer = Answer(sender.property("outcome"))
        if answer is Answer.RELEASED:
            self._release()
            return
        if self._hold is None and not self._still_soft():
            self._hold_it()
            return
        self.act(lambda: self._do(answer))

    def _do(self, answer: Answer) -> ChangeSet:
        bench = self.session.bench
        self.who.take()
        after_life = self._glue is Glue.MOVED
        if answer is Answer.RE_GLUED:
            return bench.re_glued(self._joint_id, self._hold, after_life=after_life)
        if self._hold is None:
            return bench.re_aim(self._joint_id, after_life=after_life)
        return bench.end_hold(self._hold, answer.value)

    def _release(self) -> None:
        """Ask who releases it, and why, instead."""
        standing = self._standing()
        if standing is not None and standing.hold is not None:
            from rackboard.ui.release_dialog import ReleaseDialog

            ReleaseDialog(self.session, standing, self.parentWidget()).open()
        self.reject()

    def _still_soft(self) -> bool:
        """Return whether the answer comes before the glue may have gelled."""
        standing = self._standing()
        if standing is None or standing.hold is not None:
            return False
        glue = glue_of(standing, self.session.clock.now())
        self._glue = max(self._glue, glue, key=lambda g: g.value)
        return glue is not Glue.GELLED

    def _hold_it(self) -> None:
        """Put the joint on HOLD: it waited for an answer until it may have gelled."""
        standing = self._standing()
        if standing is not None and standing.hold is None:
            self.session.take(self.session.bench.disturb(self._joint_id))
            standing = self._standing()
        if standing is None or standing.hold is None:
            self.reject()  # it has ended meanwhile: there is nothing left to ask
            return
        self._hold = standing.hold
        self._glue = Glue.GELLED
        said = self.tr("The glue may have gelled meanwhile, so it is on HOLD. What did you do?")
        self.say_inside(said)
        self.buttons.buttons()[0].setText(self.tr("Leave it on HOLD"))
        self._offer(answers_to_hold(self._hold.reason))

    def _standing(self) -> Standing | None:
        standings = self.session.board.standings
        return next((s for s in standings if s.joint.id == self._joint_id), None)
