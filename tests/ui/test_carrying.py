"""A dragged tile is carried as by "Move to…"; a tap stays a tap, and nothing needs drag."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest

from helpers.scene import Scene
from helpers.session import lay_out_irons, place_of
from rackboard.ui.carrying import Carrying
from rackboard.ui.message import MessageDialog
from rackboard.ui.place_chooser import PlaceChooser
from rackboard.ui.rack_view import RowView
from rackboard.ui.swap_dialog import SwapDialog

LEFT = Qt.MouseButton.LeftButton


class Floor:
    """The board with a rack of two clubs, and somebody's mouse."""

    def __init__(self, qtbot: Any, folder: Path) -> None:
        self.scene = Scene(qtbot, folder, "2026-03-09T10:00+01:00")
        lay_out_irons(self.scene.session, 2)
        board = self.scene.window.board
        self.chosen: list[int] = []
        self.carrying = self.scene.window.findChild(Carrying) or Carrying(
            self.scene.session, self.scene.window, (board.rack, board.box, board.chips)
        )
        self.carrying.club_chosen.connect(self.chosen.append)
        self.rack, self.box, self.chips = board.rack, board.box, board.chips

    def spot(self, view: RowView, row: int) -> QPoint:
        return view.visualRect(view.rows_model.index(row)).center()

    def drag(
        self, view: RowView, row: int, to: RowView, goal: QPoint, *, drop: bool = True
    ) -> None:
        port = view.viewport()
        start = self.spot(view, row)
        end = port.mapFromGlobal(to.viewport().mapToGlobal(goal))
        QTest.mousePress(port, LEFT, pos=start)
        for at in (start + QPoint(30, 0), end):
            self._move(view, at)
        if drop:
            QTest.mouseRelease(port, LEFT, pos=end)

    def _move(self, view: RowView, at: QPoint) -> None:
        from PySide6.QtCore import QEvent, QPointF
        from PySide6.QtGui import QMouseEvent

        event = QMouseEvent(
            QEvent.Type.MouseMove, QPointF(at), QPointF(view.viewport().mapToGlobal(at)),
            Qt.MouseButton.NoButton, LEFT, Qt.KeyboardModifier.NoModifier,
        )  # fmt: skip
        view.mouseMoveEvent(event)

    def where(self, club: str) -> str:
        standing = self.scene.standing(club)
        return self.scene.session.board.snapshot.where(standing.club.id)


@pytest.fixture
def floor(qtbot: Any, tmp_path: Path) -> Any:
    floor = Floor(qtbot, tmp_path)
    yield floor
    floor.scene.close()


def test_a_tile_is_dragged_to_a_free_slot_and_the_ring_follows(floor: Floor) -> None:
    floor.drag(floor.rack, 0, floor.rack, floor.spot(floor.rack, 6))
    assert floor.where("4 iron") == "A7"
    assert floor.chosen == [floor.scene.standing("4 iron").club.id]
    assert floor.scene.session.history.undo_label == "move 4 iron to A7"


def test_into_the_box_and_off_the_rack_and_back(floor: Floor) -> None:
    floor.drag(floor.rack, 0, floor.box, floor.spot(floor.box, 1))
    assert floor.where("4 iron") == "B2"
    floor.drag(floor.box, 1, floor.chips, floor.spot(floor.chips, 2))
    assert floor.where("4 iron") == "grip bench"


def test_a_taken_slot_offers_the_swap(floor: Floor) -> None:
    floor.drag(floor.rack, 0, floor.rack, floor.spot(floor.rack, 1))
    dialog = floor.scene.dialog(SwapDialog)
    assert dialog.other.currentText() == "A2 5 iron, job 220"
    assert floor.where("4 iron") == "A1"
    dialog.keys["carried"].click()
    assert (floor.where("4 iron"), floor.where("5 iron")) == ("A2", "A1")
    assert floor.chosen == [floor.scene.standing("4 iron").club.id]


def test_dropped_nowhere_or_where_it_lay_nothing_happens(floor: Floor) -> None:
    label = floor.scene.session.history.undo_label
    floor.drag(floor.rack, 0, floor.rack, floor.spot(floor.rack, 0))
    floor.drag(floor.rack, 0, floor.rack, QPoint(-500, -500))
    floor.drag(floor.rack, 5, floor.rack, floor.spot(floor.rack, 6))  # an empty slot
    assert floor.where("4 iron") == "A1"
    assert floor.scene.session.history.undo_label == label
    assert floor.scene.window.findChild(MessageDialog) is None


def test_escape_lets_it_go(floor: Floor) -> None:
    goal = floor.spot(floor.rack, 6)
    floor.drag(floor.rack, 0, floor.rack, goal, drop=False)
    assert floor.rack._ghost is not None and floor.rack._ghost.isVisible()
    QTest.keyClick(floor.rack, Qt.Key.Key_Escape)
    assert floor.rack._ghost is None
    QTest.mouseRelease(floor.rack.viewport(), LEFT, pos=goal)
    assert floor.where("4 iron") == "A1"


def test_a_tap_with_a_trembling_hand_stays_a_tap(floor: Floor) -> None:
    tapped: list[object] = []
    floor.rack.row_activated.connect(tapped.append)
    port, at = floor.rack.viewport(), floor.spot(floor.rack, 1)
    QTest.mousePress(port, LEFT, pos=at)
    floor._move(floor.rack, at + QPoint(2, 2))
    QTest.mouseRelease(port, LEFT, pos=at + QPoint(2, 2))
    assert tapped == [(place_of(floor.scene.session).id, 1)]


def test_move_to_says_which_club_was_carried(floor: Floor) -> None:
    carried: list[int] = []
    standing = floor.scene.standing("4 iron")
    dialog = PlaceChooser(floor.scene.session, standing, floor.scene.window)
    dialog.club_carried.connect(carried.append)
    dialog.open()
    dialog.keys[(place_of(floor.scene.session).id, 9)].click()
    assert carried == [standing.club.id]
