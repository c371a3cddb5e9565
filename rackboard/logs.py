"""The log: a rotating file, and a second one into which a crash of the process writes itself.

Nothing personal is logged: facts are named by their ids.
"""

from __future__ import annotations

import logging
import sys
from pathlib import Path
from typing import IO, TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from logging.handlers import RotatingFileHandler

LOG_NAME = "rackboard.log"
FAULT_NAME = "crash.txt"
MAX_BYTES = 500_000
KEPT_FILES = 4

_LINE = "%(asctime)s %(levelname)s %(name)s: %(message)s"


class LogFiles(NamedTuple):
    """Where the log and the crash report are, and whether the last run left a crash report."""

    log: Path
    fault: Path
    crashed_before: bool


class LateRotatingHandler(logging.Handler):
    """Writes to a rotating file that is opened with the first record.

    The rotating handler's module is slow to import, and a calm start has nothing to say.

    Parameters
    ----------
    path : Path
        The log file; its folder must exist.
    """

    def __init__(self, path: Path) -> None:
        super().__init__(logging.INFO)
        self.path = path
        self.setFormatter(logging.Formatter(_LINE))
        self._file: RotatingFileHandler | None = None

    def emit(self, record: logging.LogRecord) -> None:
        """Write one record; trouble with the disk is no reason to disturb the bench."""
        try:
            if self._file is None:
                self._file = self._open()
            self._file.handle(record)
        except OSError:
            self.handleError(record)

    def handleError(self, record: logging.LogRecord) -> None:  # noqa: N802 - logging's name
        """Say it on standard error, if there is one, and go on."""
        if sys.stderr is not None:
            print(f"rackboard: can't write {self.path}: {record.getMessage()}", file=sys.stderr)

    def close(self) -> None:
        """Close the file."""
        if self._file is not None:
            self._file.close()
            self._file = None
        super().close()

    def _open(self) -> RotatingFileHandler:
        from logging.handlers import RotatingFileHandler

        file = RotatingFileHandler(
            self.path, maxBytes=MAX_BYTES, backupCount=KEPT_FILES, encoding="utf-8"
        )
        file.setFormatter(self.formatter)
        file.handleError = self.handleError  # type: ignore[method-assign]
        return file


class Log:
    """The running log of this process.

    Parameters
    ----------
    folder : Path
        Where both files lie; made if it is not there, readable by its owner alone.

    Raises
    ------
    OSError
        If the folder can't be made or the crash file can't be opened.
    """

    def __init__(self, folder: Path) -> None:
        import faulthandler

        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        fault = folder / FAULT_NAME
        crashed = fault.exists() and fault.stat().st_size > 0
        if crashed:
            fault.replace(fault.with_name(f"previous-{FAULT_NAME}"))
        self.files = LogFiles(folder / LOG_NAME, fault, crashed)
        # A windowed build has no standard error, so the crash needs a file of its own.
        self._fault: IO[str] = fault.open("w", encoding="utf-8")
        faulthandler.enable(self._fault)
        self._handler = LateRotatingHandler(self.files.log)
        root = logging.getLogger()
        root.addHandler(self._handler)
        self._level_before = root.level
        root.setLevel(logging.INFO)

    def close(self) -> None:
        """Let go of both files."""
        import faulthandler

        root = logging.getLogger()
        root.removeHandler(self._handler)
        root.setLevel(self._level_before)
        self._handler.close()
        faulthandler.disable()
        self._fault.close()
