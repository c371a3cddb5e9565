"""Reads a logger's file in a thread, so that the window stays awake over a large one."""

from __future__ import annotations

import threading
from pathlib import Path
from typing import ClassVar

from PySide6.QtCore import QObject, Qt, Signal, Slot

from rackboard.core.errors import RackboardError
from rackboard.feeds import logger_csv
from rackboard.feeds.logger_csv import Answers, Preview


class RecordReader(QObject):
    """One reading of a file with one set of answers.

    It keeps itself alive until its thread has ended, also when the dialog is closed before.

    Signals
    -------
    finished(int, object)
        Its number, and the bytes with the `Preview` or the `RackboardError`.
    """

    finished = Signal(int, object)
    _running: ClassVar[set[RecordReader]] = set()

    def __init__(
        self,
        number: int,
        path: Path,
        data: bytes | None,
        answers: Answers,
        default_zone: str | None,
    ) -> None:
        super().__init__()
        self._number = number
        self._path, self._data = path, data
        self._answers, self._default_zone = answers, default_zone
        self._thread = threading.Thread(target=self._read, name="record reader", daemon=True)

    def start(self) -> None:
        """Begin; whoever wants to hear of the end has connected before."""
        RecordReader._running.add(self)
        self.finished.connect(self._forget, Qt.ConnectionType.QueuedConnection)
        self._thread.start()

    def _read(self) -> None:
        outcome: tuple[bytes | None, Preview | RackboardError]
        try:
            data = logger_csv.load(self._path) if self._data is None else self._data
            shown = logger_csv.preview(
                data, self._answers, default_zone=self._default_zone, where=self._path.name
            )
            outcome = (data, shown)
        except RackboardError as error:
            outcome = (self._data, error)
        self.finished.emit(self._number, outcome)

    @Slot(int, object)
    def _forget(self, number: int, outcome: object) -> None:
        del number, outcome
        # The signal is on its way to us while the thread is still sending it to others: gone
        # before it has, this object would take their share with it.
        self._thread.join()
        RecordReader._running.discard(self)
