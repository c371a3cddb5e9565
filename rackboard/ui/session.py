"""What every view of the window is handed: the services, and word of what has changed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from rackboard.core.errors import RackboardError
from rackboard.core.instants import Clock
from rackboard.core.temperature import Unit
from rackboard.services.board import Board
from rackboard.services.undo import History
from rackboard.store import Store
from rackboard.store.changes import ChangeSet

if TYPE_CHECKING:
    from rackboard.services.alerts import Alerts
    from rackboard.services.bench import Bench
    from rackboard.services.feeding import Feeding
    from rackboard.ui.couriers import Couriers


class Session(QObject):
    """The open shop, for the window.

    Views read `board` and `store`, act through `bench`, and hand each act's change set to
    `take`. Errors of the world are raised by the act itself and shown where it was asked for.
    """

    acted = Signal(object)
    """A change set was taken in: an act, an undo, or what a tick wrote."""
    ticked = Signal()
    """Something may have to be shown anew by the mere passing of time."""

    def __init__(
        self, store: Store, clock: Clock, board: Board, bench: Bench | None = None,
        parent: QObject | None = None,
    ) -> None:  # fmt: skip
        super().__init__(parent)
        self.store = store
        self.clock = clock
        self.board = board
        self._bench = bench
        self.history = History(store, clock)
        self.alerts: Alerts | None = None
        self.couriers: Couriers | None = None
        self.feeding: Feeding | None = None
        self.feed_trouble = ""
        self.locale_unit = Unit.C

    @property
    def bench(self) -> Bench:
        """What people do; made with the first act, the first picture needs none."""
        if self._bench is None:
            from rackboard.services.bench import Bench

            self._bench = Bench(self.store, self.clock, self.board.snapshot.hours)
            by = self.board.snapshot.settings.get("initials")
            self._bench.by = by if isinstance(by, str) and by else None
        return self._bench

    @property
    def unit(self) -> Unit:
        """The unit that temperatures are shown and typed in."""
        set_unit = self.board.snapshot.settings.get("temperature unit")
        return Unit(set_unit) if isinstance(set_unit, str) else self.locale_unit

    def take(self, changes: ChangeSet) -> None:
        """Take in what an act has changed, remember it for undo, and tell everybody."""
        self.history.add(changes)
        self._spread(changes, "corrected" if "former" in changes.tables else "")

    def undo(self) -> str | None:
        """Take back the last act; return its label."""
        label = self.history.undo_label
        changes = self.history.undo()
        if changes is not None:
            self._spread(changes, "undone")
        return label

    def redo(self) -> str | None:
        """Do the last undone act again; return its label."""
        label = self.history.redo_label
        changes = self.history.redo()
        if changes is not None:
            self._spread(changes)
        return label

    def tick(self) -> None:
        """Take in what the sensors say, and bring the board up to now."""
        fed = self._fed()
        if fed is not None:
            self.board.take_in(fed)
        changes = self.board.tick()
        raised = self._raise_due()
        if changes or raised or fed is not None:
            self.acted.emit(changes if changes is not None else fed)
        elif changes is not None:
            self.ticked.emit()

    def _fed(self) -> ChangeSet | None:
        """Return what the feeds have written; a full disk keeps it for the next step."""
        if self.feeding is None:
            return None
        try:
            fed = self.feeding.step()
        except RackboardError as error:
            self.feed_trouble = error.message
            return None
        self.feed_trouble = ""
        return fed

    def raise_due(self) -> None:
        """Tell people what has become due, once the couriers are there."""
        if self._raise_due():
            self.ticked.emit()

    def _raise_due(self, cause: str = "") -> bool:
        if self.alerts is None:
            return False
        self.alerts.by = self.bench.by
        raised = self.alerts.tick(self.board, cause)
        if raised is not None:
            self.board.take_in(raised)
            if "hold" in raised.tables:
                self.board.tick()
        return raised is not None

    def _spread(self, changes: ChangeSet, cause: str = "") -> None:
        self.board.take_in(changes)
        self.bench.hours = self.board.snapshot.hours
        try:
            self.board.tick()
            self._raise_due(cause)
        finally:
            self.acted.emit(changes)  # the act itself is stored, whatever came after it
