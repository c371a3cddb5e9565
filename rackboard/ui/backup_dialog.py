"""Backups: what there is, one more now, and the way back to one."""

from __future__ import annotations

from collections.abc import Callable, Generator
from pathlib import Path

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QWidget

from rackboard.core.errors import RackboardError
from rackboard.core.text import Figure
from rackboard.store.backup import KEEP, backups, made_at
from rackboard.ui.dialog import Confirmation, Dialog, error_text, row
from rackboard.ui.import_view import moment
from rackboard.ui.language import translated
from rackboard.ui.list_rows import Line, LineList
from rackboard.ui.session import Session
from rackboard.ui.theme import Theme


class BackupDialog(Dialog):
    """Lists the backups, makes one, and restores one.

    Parameters
    ----------
    session : Session
        The open shop.
    restore : callable
        Called with the backup that shall take the place of the data; it closes the store,
        restores and opens anew. A `RackboardError` from it is shown here.
    theme : Theme, optional
        The scheme; by default the application's.
    """

    def __init__(
        self,
        session: Session,
        restore: Callable[[Path], None],
        parent: QWidget | None = None,
        *,
        theme: Theme | None = None,
    ) -> None:
        super().__init__(parent, theme)
        self.session = session
        data = session.store.path
        self._folder = data.with_name("backups") if data.is_absolute() else None
        self._restore = restore
        self._slices: Generator[float, None, Path] | None = None
        self.asked: Confirmation | None = None
        self._asked_about: Line | None = None
        self._timer = QTimer(self)
        self._timer.setInterval(0)
        self._timer.timeout.connect(self._go_on)
        self._lay_out()
        self.refresh()
        self.fit(820 if self.roles.large else 660, 680 if self.roles.large else 540)

    def _lay_out(self) -> None:
        said = self.tr(
            "One a day by itself; the last {0} are kept. Copy one to a stick from time to time: a"
            " backup on the same disk goes with the disk."
        )
        content = self.frame(self.tr("Backups"), said.format(KEEP))
        self.list = LineList(self.tr("Backups, the newest first"), self.theme, self.roles)
        content.addWidget(self.list, 1)
        self.where = self.label("", self.roles.small, tone="sub", wrap=True)
        if self._folder is not None:
            self.where.setText(self.tr("They lie in {0}.").format(self._folder))
        content.addWidget(self.where)
        self.message = self.label("", self.roles.fact_bold, wrap=True)
        self.message.setMinimumHeight(24)
        content.addWidget(self.message)
        self.making = self.button(self.tr("Back up now"))
        self.making.clicked.connect(self.back_up)
        self.restoring = self.button(self.tr("Restore this…"))
        self.restoring.clicked.connect(self.ask)
        content.addLayout(row(self.making, 15, self.restoring))
        self.add_buttons("", self.tr("Close"))

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        super().show_theme(theme)
        if hasattr(self, "list"):
            self.list.show_theme(theme)

    def refresh(self) -> None:
        """Look into the folder again."""
        hours = self.session.board.snapshot.hours
        try:
            found = [] if self._folder is None else backups(self._folder)
            lines = tuple(
                Line(path, moment(hours, made_at(path)), size_text(path.stat().st_size))
                for path in found
            )
        except (RackboardError, OSError) as error:
            self.message.setText(error_text(error))
            lines = ()
        self.list.show_lines(lines)
        if self._folder is None:
            self.message.setText(self.tr("This shop has no file, so it has no backups."))
        elif not lines and not self.message.text():
            self.message.setText(self.tr("No backup yet."))
        self._show_ready()

    def _show_ready(self) -> None:
        busy = self._slices is not None
        self.making.setEnabled(self._folder is not None and not busy)
        self.restoring.setEnabled(self.list.chosen() is not None and not busy)

    # Backing up

    def back_up(self) -> None:
        """Begin a backup; it is made in slices between the other events."""
        try:
            self._slices = self.session.store.backup_slices(self.session.clock.now())
        except RackboardError as error:
            self.message.setText(error_text(error))
            return
        self._show_ready()
        self._timer.start()

    @property
    def busy(self) -> bool:
        """Whether a backup is being made."""
        return self._slices is not None

    def _go_on(self) -> None:
        if self._slices is None:
            self._timer.stop()
            return
        try:
            share = next(self._slices)
        except StopIteration as done:
            path: Path = done.value
            said = self.tr("Backed up: {0}, checked.").format(path.name)
        except RackboardError as error:
            said = error_text(error)
        else:
            percent = self.tr("Backing up… {0} %").format(round(share * 100))
            self.message.setText(percent)
            return
        self._timer.stop()
        self._slices = None
        self.message.setText(said)
        self.refresh()

    def done(self, result: int) -> None:
        """Give up a backup in the making, then close."""
        self._timer.stop()
        if self._slices is not None:
            self._slices.close()
            self._slices = None
        super().done(result)

    # The way back

    def ask(self) -> None:
        """Ask before the present data is replaced."""
        chosen = self.list.chosen()
        if chosen is None:
            return
        self.asked = Confirmation(
            self,
            self.theme,
            self.tr("Restore a backup"),
            self.tr("Put the backup of {0} in the place of the present data?").format(chosen.text),
            self.tr(
                "What was entered since then is no longer on the board. The present data is backed"
                " up first, so there is a way back. The board closes and opens again."
            ),
            self.tr("Restore"),
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
            self._restore(chosen.key)
        except RackboardError as error:
            self.message.setText(error_text(error))
            self.refresh()
            return
        self.accept()


def size_text(size: int) -> str:
    """Return a file's size: "812 kB", "4.2 MB"."""
    if size < 1_000_000:
        return f"{max(size // 1000, 1)} kB"
    return f"{translated(Figure(f'{size / 1_000_000:.1f}'))} MB"
