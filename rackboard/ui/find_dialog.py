"""Find, at the counter: a job or club as one types, and the one sentence to read aloud."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QWidget

from rackboard.services.finding import Finding, Found
from rackboard.ui.board_presenter import BoardPresenter
from rackboard.ui.dialog import Dialog
from rackboard.ui.language import translated
from rackboard.ui.list_rows import Line, LineList
from rackboard.ui.session import Session
from rackboard.ui.theme import Theme

_STEPS = {
    Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1, Qt.Key.Key_PageUp: -8, Qt.Key.Key_PageDown: 8,
}  # fmt: skip


class FindDialog(Dialog):
    """Finds among the jobs at work. It is shown beside the board, which stays as it is.

    Parameters
    ----------
    session : Session
        The open shop.
    theme : Theme, optional
        The scheme; by default the application's.
    """

    club_chosen = Signal(int)
    """Enter: bring the ring to this club; the dialog closes."""
    job_chosen = Signal(int)
    """Enter on a job none of whose clubs has a joint."""

    def __init__(
        self, session: Session, parent: QWidget | None = None, *, theme: Theme | None = None
    ) -> None:
        super().__init__(parent, theme)
        self.session = session
        self._finding: Finding
        self._found: dict[tuple[int, int | None], Found] = {}
        self.setModal(False)
        self._lay_out()
        session.acted.connect(self.refresh)
        session.ticked.connect(self.refresh)
        self.refresh()
        self.fit(980 if self.roles.large else 760, 760 if self.roles.large else 600)
        self.search.setFocus()

    def _lay_out(self) -> None:
        content = self.frame(self.tr("Find"))
        self.search = self.field(
            self.tr("Job, customer, club, epoxy or lot"),
            placeholder=self.tr("job, customer, club, epoxy or lot"),
        )
        self.search.textChanged.connect(self._on_typed)
        self.search.installEventFilter(self)
        content.addWidget(self.search)
        self.sentence = self.label("", self.roles.title, wrap=True)
        self.sentence.setAlignment(Qt.AlignmentFlag.AlignTop)
        lines = 3 * self.sentence.fontMetrics().lineSpacing()
        self.sentence.setFixedHeight(lines)  # so that nothing shifts as one types
        content.addWidget(self.sentence)
        self.list = LineList(self.tr("Jobs and clubs found"), self.theme, self.roles)
        self.list.selectionModel().currentChanged.connect(self._say)
        self.list.doubleClicked.connect(self.accept)
        content.addWidget(self.list, 1)
        self.showing = self.add_buttons(self.tr("Show on the board"), self.tr("Close"))

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        super().show_theme(theme)
        if hasattr(self, "list"):
            self.list.show_theme(theme)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Let the arrows move through the list while the field is typed in."""
        if watched is self.search and isinstance(event, QKeyEvent):
            step = _STEPS.get(Qt.Key(event.key()))
            if event.type() is QEvent.Type.KeyPress and step is not None:
                self._step(step)
                return True
        return super().eventFilter(watched, event)

    def _step(self, by: int) -> None:
        rows = self.list.lines_model.rowCount()
        if rows:
            at = min(max(self.list.currentIndex().row() + by, 0), rows - 1)
            self.list.setCurrentIndex(self.list.lines_model.index(at))

    def refresh(self) -> None:
        """Look again, at the board as it stands now."""
        now = self.session.clock.now()
        self._finding = Finding(self.session.board, now)
        self._show(BoardPresenter(self.session.board, now, self.session.unit))

    def _on_typed(self) -> None:
        self.refresh()
        if self.list.lines_model.rowCount():  # what is typed is about the closest, not the last
            self.list.setCurrentIndex(self.list.lines_model.index(0))

    def _show(self, presenter: BoardPresenter) -> None:
        found = self._finding.search(self.search.text())
        self._found = {(row.job.job.id, row.club_id): row for row in found}
        lines = []
        for key, row in self._found.items():
            text = ", ".join(part for part in (
                row.job.job.number, row.job.customer.name, row.club, row.where
            ) if part)  # fmt: skip
            lines.append(Line(key, text, presenter.job_words(row.job)))
        self.list.show_lines(tuple(lines))
        self._say()

    def chosen(self) -> Found | None:
        """Return what the sentence is about."""
        line = self.list.chosen()
        return None if line is None else self._found.get(line.key)

    def _say(self) -> None:
        row = self.chosen()
        if row is not None:
            said = translated(self._finding.sentence(row.job))
        elif self.search.text().strip():
            said = self.tr("Nothing at work by that name.")
        else:
            said = self.tr("Nothing is at work.")
        self.sentence.setText(said)
        self.sentence.setAccessibleName(said)
        if self.showing is not None:
            self.showing.setEnabled(row is not None)

    def accept(self) -> None:
        """Bring the ring to what is chosen, and close."""
        row = self.chosen()
        if row is None:
            return
        if row.club_id is not None:
            self.club_chosen.emit(row.club_id)
        else:
            self.job_chosen.emit(row.job.job.id)
        super().accept()
