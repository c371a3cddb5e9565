"""Erases a customer's name and phone, and leaves the record of the bonds."""

from __future__ import annotations

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QWidget

from rackboard.core.bench import Customer, Job
from rackboard.core.errors import RackboardError
from rackboard.ui.dialog import Confirmation, Dialog, error_text, row
from rackboard.ui.language import say
from rackboard.ui.list_rows import Line, LineList
from rackboard.ui.session import Session
from rackboard.ui.theme import Theme

_LATEST = 200
_FOUND = 50


class CustomerDialog(Dialog):
    """Picks a customer by name, phone or job number, and erases them.

    Parameters
    ----------
    session : Session
        The open shop.
    theme : Theme, optional
        The scheme; by default the application's.
    """

    def __init__(
        self, session: Session, parent: QWidget | None = None, *, theme: Theme | None = None
    ) -> None:
        super().__init__(parent, theme)
        self.session = session
        self.asked: Confirmation | None = None
        self._asked_about: Line | None = None
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(150)
        self._timer.timeout.connect(self.refresh)
        self._lay_out()
        self.refresh()
        self.fit(820 if self.roles.large else 660, 720 if self.roles.large else 580)
        self.search.setFocus()

    def _lay_out(self) -> None:
        content = self.frame(
            self.tr("Erase a customer"),
            self.tr("Name and phone go, everywhere in the data. Job number, clubs, batches,"
                    " temperatures and what each joint was permitted stay."),
        )  # fmt: skip
        self.search = self.field(
            self.tr("Name, phone or job number"), placeholder=self.tr("name, phone or job number")
        )
        self.search.textChanged.connect(self._on_typed)
        content.addWidget(self.search)
        self.list = LineList(self.tr("Customers, the latest first"), self.theme, self.roles)
        content.addWidget(self.list, 1)
        self.message = self.label("", self.roles.fact_bold, wrap=True)
        self.message.setMinimumHeight(24)
        content.addWidget(self.message)
        self.erasing = self.button(self.tr("Erase name and phone…"))
        self.erasing.clicked.connect(self.ask)
        content.addLayout(row(self.erasing))
        self.add_buttons("", self.tr("Close"))

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        super().show_theme(theme)
        if hasattr(self, "list"):
            self.list.show_theme(theme)

    def _on_typed(self) -> None:
        self._timer.start()

    def refresh(self) -> None:
        """Look for customers again."""
        self._timer.stop()
        work = self.session.store.work
        text = self.search.text().strip()
        if text:
            found = work.customers_named(text, _FOUND)
            job = work.job_numbered(text)
            if job is not None:
                found = [*work.customers([job.customer_id]), *found]
        else:
            latest = work.latest_jobs(_LATEST)
            by_id = {c.id: c for c in work.customers({job.customer_id for job in latest})}
            found = [by_id[job.customer_id] for job in latest if job.customer_id in by_id]
        named = {c.id: c for c in found if c.erased_us is None and (c.name or c.phone)}
        self.list.show_lines(
            tuple(_line(customer, work.jobs_of(customer.id)) for customer in named.values())
        )
        self.erasing.setEnabled(self.list.chosen() is not None)

    def ask(self) -> None:
        """Ask before anything is erased: it can't be taken back."""
        chosen = self.list.chosen()
        if chosen is None:
            return
        self.asked = Confirmation(
            self,
            self.theme,
            self.tr("Erase a customer"),
            self.tr("Erase {0}?").format(chosen.text),
            self.tr(
                "Name and phone can't be brought back. Backups made before still hold them until"
                " ten newer ones have replaced them."
            ),
            self.tr("Erase"),
            self.tr("Cancel"),
        )
        self._asked_about = chosen  # the list may move on while the question stands
        self.asked.finished.connect(self._on_answer)
        self.asked.open()

    def _on_answer(self, result: int) -> None:
        chosen, self._asked_about, self.asked = self._asked_about, None, None
        if chosen is None or result != Dialog.DialogCode.Accepted.value:
            return
        try:
            changes = self.session.bench.erase_customer(chosen.key)
        except RackboardError as error:
            self.message.setText(error_text(error))
            return
        self.session.take(changes)
        self.refresh()
        said = self.tr("Erased. The record stays: {jobs}.")
        self.message.setText(said.format(jobs=chosen.fact))


def _line(customer: Customer, jobs: list[Job]) -> Line:
    text = ", ".join(part for part in (customer.name, customer.phone) if part)
    return Line(customer.id, text, _jobs_text([job.number for job in jobs]))


def _jobs_text(numbers: list[str]) -> str:
    said = say("CustomerDialog", "jobs {numbers}", "job {numbers}", len(numbers))
    return said.format(numbers=", ".join(numbers))
