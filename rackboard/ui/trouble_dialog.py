"""The dialog of `rackboard.ui.trouble`: what went wrong, what still holds, and the report."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Qt, Slot
from PySide6.QtWidgets import (
    QApplication,
    QDialogButtonBox,
    QPlainTextEdit,
    QPushButton,
    QWidget,
)

from rackboard.ui import type
from rackboard.ui.dialog import Dialog


class TroubleDialog(Dialog):
    """Says that something went wrong, what still holds, and hands out the report.

    Parameters
    ----------
    calm : str
        The error in plain words; empty for one that the program can't explain.
    details : str
        The report that "Copy report" puts on the clipboard.
    log_path : Path, optional
        Where the log is.
    parent : QWidget, optional
        The window underneath.
    """

    def __init__(
        self,
        calm: str,
        details: str,
        log_path: Path | None = None,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.details = details
        content = self.frame(self.tr("Something went wrong"))
        said = calm or self.tr("The board met an error that it did not expect.")
        self.message = self.label(said, self.roles.head, wrap=True)
        content.addWidget(self.message)
        content.addWidget(
            self.label(
                self.tr(
                    "What you entered before is stored. If a tile or a time looks wrong, close the"
                    " board and start it again. The report below helps to mend it; it holds no"
                    " customer's name unless the error itself does."
                ),
                wrap=True,
            )
        )
        self.report_view = QPlainTextEdit(details)
        self.report_view.setReadOnly(True)
        self.report_view.setTabChangesFocus(True)
        self.report_view.setFont(type.font(self.roles.small))
        self.report_view.setAccessibleName(self.tr("Report"))
        content.addWidget(self.report_view, 1)
        if log_path is not None:
            log = self.label(
                self.tr("The log is {path}.").format(path=log_path), self.roles.small,
                tone="sub", wrap=True,
            )  # fmt: skip
            log.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
            content.addWidget(log)
        self.copy_button = QPushButton(self.tr("Copy report"))
        self.dress(self.copy_button)
        self.copy_button.setAutoDefault(False)
        self.buttons.addButton(self.copy_button, QDialogButtonBox.ButtonRole.ActionRole)
        self.copy_button.clicked.connect(self.copy_report)
        self.add_buttons("", self.tr("Close"))
        self.fit(820 if self.roles.large else 680, 640 if self.roles.large else 520)

    @Slot()
    def copy_report(self) -> None:
        """Put the report on the clipboard."""
        QApplication.clipboard().setText(self.details)
        self.copy_button.setText(self.tr("Copied"))
