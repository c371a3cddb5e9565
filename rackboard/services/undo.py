"""Undo and redo, fifty deep, for as long as the program runs."""

from __future__ import annotations

from rackboard.core.instants import Clock
from rackboard.store import Store
from rackboard.store.changes import ChangeSet
from rackboard.store.faults import ChangedSinceError

DEPTH = 50
"""So many acts can be taken back [decision]."""


class History:
    """The acts that can be taken back, and those that can be done again.

    Parameters
    ----------
    store : Store
        The data file.
    clock : Clock
        The time.
    """

    __slots__ = ("_clock", "_done", "_store", "_undone")

    def __init__(self, store: Store, clock: Clock) -> None:
        self._store = store
        self._clock = clock
        self._done: list[ChangeSet] = []
        self._undone: list[ChangeSet] = []

    def add(self, changes: ChangeSet) -> None:
        """Remember an act; what was undone before can't be done again after it."""
        if not changes.undoable:
            return
        self._done = [*self._done[1 - DEPTH :], changes]
        self._undone = []

    @property
    def undo_label(self) -> str | None:
        """The act that undo takes back."""
        return self._done[-1].label if self._done else None

    @property
    def redo_label(self) -> str | None:
        """The act that redo does again."""
        return self._undone[-1].label if self._undone else None

    def undo(self) -> ChangeSet | None:
        """Take back the last act.

        Raises
        ------
        ChangedSinceError
            If its rows have been changed since; it is then forgotten.
        StoreError
            If the disk is full or the file locked; it can be tried again.
        """
        return self._turn(self._done, self._undone)

    def redo(self) -> ChangeSet | None:
        """Do again what was undone last; raises as `undo`."""
        return self._turn(self._undone, self._done)

    def _turn(self, source: list[ChangeSet], target: list[ChangeSet]) -> ChangeSet | None:
        if not source:
            return None
        changes = source[-1]
        try:
            inverse = self._store.apply_inverse(changes, changes.label, self._clock.now())
        except ChangedSinceError:
            source.pop()
            raise
        source.pop()
        target.append(inverse)
        return inverse
