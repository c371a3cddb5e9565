"""The dialog that asks who does something, before it is done."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QWidget

from rackboard.core.errors import InputError
from rackboard.core.text import text
from rackboard.store.changes import ChangeSet
from rackboard.ui.act_dialog import ActDialog
from rackboard.ui.initials_row import InitialsRow
from rackboard.ui.language import say
from rackboard.ui.session import Session


class InitialsDialog(ActDialog):
    """Who does it? The act is done with these initials, and they are remembered.

    Parameters
    ----------
    session : Session
        The open shop.
    title, said : str
        What is done ("Job 2417 is READY"), and what that means.
    accept : str
        The button that does it.
    doing : callable
        The act of the bench.
    """

    def __init__(
        self,
        session: Session,
        title: str,
        said: str,
        accept: str,
        doing: Callable[[], ChangeSet],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(session, parent)
        self._doing = doing
        content = self.frame(title, said)
        self.who = InitialsRow(session, self)
        content.addWidget(self.who)
        self.add_message(content)
        self.add_buttons(accept, say("Initials", "Cancel"))
        self.who.field.setFocus()
        self.who.field.selectAll()
        self.fit(660 if self.roles.large else 540, 400 if self.roles.large else 320)

    def accept(self) -> None:
        """Do it with these initials."""
        self.mark(self.who.field, False)
        if not self.who.initials:
            self.refuse(
                InputError(
                    text("Initials", "the initials of who does it"), text("Initials", "nothing"),
                    text("Initials", "who"),
                ),
                self.who.field,
            )  # fmt: skip
            return
        self.act(self._do, self.who.field)

    def _do(self) -> ChangeSet:
        self.who.take()
        return self._doing()


def ready_dialog(session: Session, job_id: int, parent: QWidget | None = None) -> InitialsDialog:
    """Return the dialog in which somebody says that a job is READY."""
    job = session.board.snapshot.jobs[job_id]
    return InitialsDialog(
        session,
        say("Initials", "Job {number} is READY").format(number=job.number),
        say("Initials", "Gripped, loft and lie, twisted and tapped by hand: it may go out."),
        say("Initials", "READY"),
        lambda: session.bench.press_ready(job_id, True),
        parent,
    )
