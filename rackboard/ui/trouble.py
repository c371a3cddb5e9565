"""The one calm dialog for an error that nobody expected.

An exception in a slot or in a paint event reaches `sys.excepthook` and the program goes on.
Each place in the code is reported once, however often it fails: in the log, and in a dialog
that is opened later from the event loop, never from inside a paint event.
"""

from __future__ import annotations

import sys
import threading
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication, QObject, Qt, Signal, Slot
from PySide6.QtWidgets import QDialog, QWidget

from rackboard.core.errors import RackboardError

if TYPE_CHECKING:
    from pathlib import Path
    from types import TracebackType

MOST_DIALOGS = 3
"""After so many different errors the log alone goes on [decision]."""


class Trouble(QObject):
    """Takes the exceptions that reached nobody.

    Parameters
    ----------
    log_path : Path, optional
        Named in the dialog and in the report.
    parent : QWidget, optional
        The window over which the dialog opens; may be set later by `set_window`.
    """

    _reported = Signal(str, str)

    def __init__(self, log_path: Path | None = None, parent: QWidget | None = None) -> None:
        super().__init__()
        self.log_path = log_path
        self.dialog: QDialog | None = None
        self._window = parent
        self._seen: dict[tuple[str, str, int], int] = {}
        self._shown = 0
        # Queued: also from another thread the dialog opens in this one, after the paint event.
        self._reported.connect(self._show, Qt.ConnectionType.QueuedConnection)

    def set_window(self, window: QWidget) -> None:
        """Open later dialogs over this window."""
        self._window = window

    def install(self) -> None:
        """Take the exceptions of this thread and of all others from now on."""
        sys.excepthook = self.take
        threading.excepthook = self._take_thread

    def take(
        self,
        kind: type[BaseException],
        error: BaseException,
        traceback: TracebackType | None,
    ) -> None:
        """Log the exception and have it shown, if its place is new. Never raises."""
        try:
            self._take(kind, error, traceback)
        except Exception:
            sys.__excepthook__(kind, error, traceback)

    def _take_thread(self, arguments: threading.ExceptHookArgs) -> None:
        if arguments.exc_value is not None and arguments.exc_type is not SystemExit:
            self.take(arguments.exc_type, arguments.exc_value, arguments.exc_traceback)

    def _take(
        self,
        kind: type[BaseException],
        error: BaseException,
        traceback: TracebackType | None,
    ) -> None:
        if issubclass(kind, KeyboardInterrupt):
            QCoreApplication.quit()
            return
        import logging

        logger = logging.getLogger(__name__)
        place = (kind.__name__, *_place(traceback))
        times = self._seen.get(place, 0) + 1
        self._seen[place] = times
        if times > 1:
            if times & (times - 1) == 0:  # 2, 4, 8, …: a paint event may fail 60 times a second
                logger.error("again, %d times so far: %s in %s:%d", times, *place)
            return
        logger.error("unexpected", exc_info=(kind, error, traceback))
        if self._shown >= MOST_DIALOGS or QCoreApplication.instance() is None:
            return
        import traceback as traceback_module

        text = "".join(traceback_module.format_exception(kind, error, traceback))
        calm = ""
        if isinstance(error, RackboardError):
            from rackboard.ui.language import translated

            calm = f"{translated(error.message)} {translated(error.remedy)}".strip()
        self._reported.emit(calm, report(text, self.log_path))

    @Slot(str, str)
    def _show(self, calm: str, details: str) -> None:
        if self._shown >= MOST_DIALOGS or self.dialog is not None:
            return  # it is in the log
        from rackboard.ui.trouble_dialog import TroubleDialog

        self._shown += 1
        dialog = TroubleDialog(calm, details, self.log_path, self._window)
        dialog.destroyed.connect(self._forget)
        self.dialog = dialog
        dialog.open()

    @Slot()
    def _forget(self) -> None:
        self.dialog = None


def report(traceback_text: str, log_path: Path | None = None) -> str:
    """Return what a person can send to whoever mends the program."""
    import platform

    import PySide6
    from PySide6.QtGui import QGuiApplication

    from rackboard import __version__

    return "\n".join(
        (
            f"rackboard {__version__}",
            f"Python {platform.python_version()}, PySide6 {PySide6.__version__}",
            f"{platform.platform()}, {QGuiApplication.platformName()}",
            f"log: {log_path if log_path is not None else 'none'}",
            "",
            traceback_text.rstrip(),
            "",
        )
    )


def _place(traceback: TracebackType | None) -> tuple[str, int]:
    """Return file and line of the innermost frame."""
    if traceback is None:
        return "?", 0
    while traceback.tb_next is not None:
        traceback = traceback.tb_next
    return traceback.tb_frame.f_code.co_filename, traceback.tb_lineno
