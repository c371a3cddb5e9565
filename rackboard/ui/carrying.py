"""A club dragged from tile to tile: the same as "Move to…", and nothing needs it."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QObject, QPoint, Signal
from PySide6.QtWidgets import QWidget

from rackboard.core.bench import PlaceKind
from rackboard.core.errors import RackboardError
from rackboard.store.changes import ChangeSet
from rackboard.ui.rack_view import RackView, RowView
from rackboard.ui.session import Session


class Carrying(QObject):
    """Carries a club to the slot where its tile was dropped.

    On a taken slot the swap of both clubs is offered; off the rack, on the slim row, it goes
    to the grip bench; anywhere else nothing happens.

    Parameters
    ----------
    session : Session
        The open shop.
    window : QWidget
        The parent of a dialog or message.
    views : sequence of RowView
        The racks and boxes, and the row of what is off the rack.

    Signals
    -------
    club_chosen(int)
        A club lies elsewhere now: bring the ring to it.
    """

    club_chosen = Signal(int)

    def __init__(self, session: Session, window: QWidget, views: Sequence[RowView]) -> None:
        super().__init__(window)
        self._session = session
        self._window = window
        self._views = tuple(views)
        self._swapped = 0
        for view in self._views:
            view.draggable = True
            view.dropped.connect(self._on_dropped)

    def _on_dropped(self, key: object, at: QPoint) -> None:
        club_id = self._club(key)
        target = next((view for view in self._views if _holds(view, at)), None)
        if club_id is None or target is None:
            return
        snapshot, bench = self._session.board.snapshot, self._session.bench
        if not isinstance(target, RackView):
            if not isinstance(key, int):
                self._do(bench.take_off, club_id, PlaceKind.GRIP_BENCH)
            return
        index = target.indexAt(target.viewport().mapFromGlobal(at))
        goal = target.key(index) if index.isValid() else None
        if not isinstance(goal, tuple) or goal == key:
            return
        place_id, slot = goal
        there = next(
            (s.club_id for s in snapshot.stays.values() if (s.place_id, s.slot) == goal), None
        )
        if there is None:
            self._do(bench.move, club_id, place_id, slot)
        else:
            self._offer_swap(club_id, there)

    def _club(self, key: object) -> int | None:
        """Return the club of a tile's slot or of a chip."""
        stays = self._session.board.snapshot.stays
        if isinstance(key, tuple):
            return next((s.club_id for s in stays.values() if (s.place_id, s.slot) == key), None)
        return key if isinstance(key, int) and key in stays else None

    def _do(self, act: object, club_id: int, *where: object) -> None:
        assert callable(act)
        try:
            changes: ChangeSet = act(club_id, *where)
        except RackboardError as error:
            from rackboard.ui.message import say_error

            say_error(self._window, error)
            return
        self._session.take(changes)
        self.club_chosen.emit(club_id)

    def _offer_swap(self, club_id: int, other_id: int) -> None:
        standings = self._session.board.standings
        standing = next((s for s in standings if s.club.id == club_id), None)
        if standing is None:
            return
        from rackboard.ui.swap_dialog import SwapDialog

        self._swapped = club_id
        dialog = SwapDialog(self._session, standing, self._window, other_id)
        dialog.acted.connect(self._on_swapped)
        dialog.open()

    def _on_swapped(self) -> None:
        self.club_chosen.emit(self._swapped)


def _holds(view: RowView, at: QPoint) -> bool:
    return view.isVisible() and view.rect().contains(view.mapFromGlobal(at))
