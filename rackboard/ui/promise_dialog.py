"""The dialog that says when a job is promised."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from rackboard.core.bench import Job
from rackboard.core.errors import InputError
from rackboard.ui import type
from rackboard.ui.act_dialog import ActDialog
from rackboard.ui.controls import field_height, field_style
from rackboard.ui.session import Session
from rackboard.ui.time_field import TimeField
from rackboard.ui.wording import Times


class PromiseDialog(ActDialog):
    """When a job is promised; an empty field takes the promise away.

    Parameters
    ----------
    session : Session
        The open shop.
    job : Job
        The job.
    """

    def __init__(self, session: Session, job: Job, parent: QWidget | None = None) -> None:
        super().__init__(session, parent)
        self._job = job
        times = Times(session.board.snapshot.hours, session.clock.now())
        content = self.frame(
            self.tr("Job {n}: promised when?").format(n=job.number),
            self.tr("Leave it empty if nothing is promised."),
        )
        promised = job.promised_us
        now = self.tr("nothing") if promised is None else times.moment(promised)
        content.addWidget(self.heading(self.tr("Promised so far: {when}").format(when=now)))
        self.promise = TimeField(session, self.tr("promised"), future=True)
        self.promise.setFont(type.font(field_style(self.roles)))
        self.promise.setFixedHeight(field_height(self.roles))
        content.addWidget(self.promise)
        self.add_message(content)
        self.add_buttons(self.tr("Promise it"), self.tr("Cancel"))
        self.promise.setFocus()
        self.fit(620 if self.roles.large else 480, 400 if self.roles.large else 320)

    def accept(self) -> None:
        """Set the promise."""
        self.mark(self.promise, False)
        try:
            promised = None if self.promise.empty else self.promise.moment()
        except InputError as error:
            self.refuse(error, self.promise)
            return
        self.act(lambda: self.session.bench.promise(self._job.id, promised), self.promise)
