"""The dialog that corrects when a batch was mixed; the former time stays on the record."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from rackboard.core.bench import Batch
from rackboard.core.errors import InputError
from rackboard.core.instants import Instant
from rackboard.services.doubts import mixed_doubt
from rackboard.ui import type
from rackboard.ui.act_dialog import ActDialog
from rackboard.ui.controls import field_height, field_style
from rackboard.ui.session import Session
from rackboard.ui.time_field import TimeField
from rackboard.ui.wording import Times


class CorrectionDialog(ActDialog):
    """When a batch was really mixed.

    Parameters
    ----------
    session : Session
        The open shop.
    batch : Batch
        A mixed one.
    """

    def __init__(self, session: Session, batch: Batch, parent: QWidget | None = None) -> None:
        super().__init__(session, parent)
        self._batch = batch
        self._times = Times(session.board.snapshot.hours, session.clock.now())
        content = self.frame(
            self.tr("Correct batch {n}").format(n=batch.number),
            self.tr("All its clubs get new times. The former time stays on the record."),
        )
        content.addWidget(self.heading(self._was()))
        self.mixed = TimeField(session, self.tr("mixed at"))
        self.mixed.setFont(type.font(field_style(self.roles)))
        self.mixed.setFixedHeight(field_height(self.roles))
        content.addWidget(self.mixed)
        self.add_message(content)
        self.add_buttons(self.tr("Correct it"), self.tr("Cancel"))
        self.mixed.setFocus()
        self.fit(620 if self.roles.large else 480, 440 if self.roles.large else 360)

    def _was(self) -> str:
        mixed = self._batch.mixed_us
        now = "–" if mixed is None else self._times.moment(mixed)
        text = self.tr("On record: mixed {time}").format(time=now)
        former = [
            self._times.moment(line.old)
            for line in self.session.store.journal.former("batch", self._batch.id)
            if line.column == "mixed_us" and isinstance(line.old, int)
        ]
        if former:
            text += self.tr(", before that {times}").format(times=", ".join(reversed(former)))
        return text

    def accept(self) -> None:
        """Correct it, or ask first."""
        if self.asking:
            return
        self.mark(self.mixed, False)
        try:
            at_us = self.mixed.moment()
        except InputError as error:
            self.refuse(error, self.mixed)
            return
        now, hours = self.session.clock.now(), self.session.board.snapshot.hours
        doubt = mixed_doubt(at_us, now, hours)
        if doubt is None:
            self._correct(at_us)
            return
        said = self._times.moment
        yes, no = self.tr("Yes, {time}"), self.tr("No, {time}")
        answers: list[tuple[str, int | None]]
        if doubt.proposed_us is None:
            answers = [
                (yes.format(time=said(at_us)), at_us), (self.tr("Let me correct it"), None),
            ]  # fmt: skip
        else:
            answers = [
                (yes.format(time=said(doubt.proposed_us)), doubt.proposed_us),
                (no.format(time=said(at_us)), at_us),
            ]
        self.ask(doubt.question, answers, self._correct, self.mixed)

    def _correct(self, at_us: Instant) -> None:
        self.act(lambda: self.session.bench.correct_mixed(self._batch.id, at_us), self.mixed)
