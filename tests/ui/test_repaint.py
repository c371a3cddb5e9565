"""One tile's change repaints one tile; a tick that changes nothing repaints nothing."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from unittest.mock import patch

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from helpers.board_values import BOX, RACK, board_view, racks, wait
from helpers.demo_window import DemoWindow
from rackboard.ui.board import Board
from rackboard.ui.resources import load_fonts
from rackboard.ui.theme import dark_theme
from rackboard.ui.tile import Tile
from rackboard.ui.tile_delegate import TileDelegate


@contextmanager
def painted() -> Iterator[list[str]]:
    """Record which tiles the delegate paints."""
    names: list[str] = []
    usual: Callable[..., None] = TileDelegate.paint_cell

    def record(
        self: TileDelegate, painter: QPainter, cell: QRectF, tile: Tile, *, selected: bool
    ) -> None:
        names.append(tile.name)
        usual(self, painter, cell, tile, selected=selected)

    with patch.object(TileDelegate, "paint_cell", record):
        yield names


def settle() -> None:
    for _ in range(3):
        QApplication.sendPostedEvents()
        QApplication.processEvents()


def made(qtbot: QtBot) -> Board:
    load_fonts()
    board = Board(dark_theme())
    board.set_reduced_motion(True)
    qtbot.addWidget(board)
    board.resize(1920, 1054)
    board.show()
    board.show_view(board_view())
    settle()
    return board


def test_a_whole_frame_is_counted(qtbot: QtBot) -> None:
    board = made(qtbot)
    with painted() as names:
        board.rack.viewport().update()
        board.box.viewport().update()
        settle()
    assert len(names) == 19


def test_one_change_repaints_one_tile(qtbot: QtBot) -> None:
    board = made(qtbot)
    first, box = racks()
    for slot, place in ((4, RACK), (0, RACK), (14, RACK)):
        tiles = (*first.tiles[:slot], wait(place, slot, "21:15"), *first.tiles[slot + 1 :])
        first = replace(first, tiles=tiles)
        with painted() as names:
            board.show_view(replace(board_view(), racks=(first, box)))
            settle()
        assert names == [f"A{slot + 1}"]
    changed = replace(box, tiles=(wait(BOX, 0, "21:20"), *box.tiles[1:]))
    with painted() as names:
        board.show_view(replace(board_view(), racks=(first, changed)))
        settle()
    assert names == ["B1"]


def test_the_same_again_repaints_nothing(qtbot: QtBot) -> None:
    board = made(qtbot)
    with painted() as names:
        board.show_view(board_view())
        board.show_view(replace(board_view(), head="2 holds", happenings=()))
        settle()
    assert names == []


def test_the_ring_repaints_where_it_was_and_where_it_goes(qtbot: QtBot) -> None:
    board = made(qtbot)
    board.select(RACK, 3)
    settle()
    with painted() as names:
        board.select(RACK, 4)
        settle()
    assert set(names) <= {"A4", "A5"}
    assert "A5" in names


def test_the_beat_of_a_collar_repaints_its_tile(qtbot: QtBot) -> None:
    board = made(qtbot)
    board.set_reduced_motion(False)
    board.set_time_ms(0)
    settle()
    with painted() as names:
        board.set_time_ms(100)
        settle()
        assert names == []
        board.set_time_ms(250)
        settle()
    assert names == ["A2"]


def test_a_step_too_small_to_be_seen_is_none() -> None:
    tile = replace(wait(RACK, 0), position=0.40001, not_before=0.58001)
    assert tile == replace(tile, position=0.40002, not_before=0.58002)
    assert tile != replace(tile, position=0.40001 + 1 / 128)
    assert replace(tile, position=0.9999).position < 1.0
    assert replace(tile, position=1.0).position == 1.0


def test_ticks_repaint_what_changed_and_nothing_else(qtbot: QtBot, tmp_path: Path) -> None:
    """Ten minutes of ticks: a tile is painted only when what it shows is another."""
    demo = DemoWindow(qtbot, tmp_path)
    board = demo.window.board
    qtbot.waitUntil(lambda: not board.delegate.fading)
    settle()
    quiet = 0
    for _ in range(60):
        before = {row.key: row for row in (*board.rack.rows_model.rows(),
                                           *board.box.rows_model.rows())}  # fmt: skip
        demo.clock.advance(seconds=10)
        with painted() as names:
            demo.session.tick()
            demo.window.refresh()
            settle()
        after = {row.key: row for row in (*board.rack.rows_model.rows(),
                                          *board.box.rows_model.rows())}  # fmt: skip
        changed = [row.name for key, row in after.items() if row != before[key]]  # type: ignore[attr-defined]
        assert set(changed) <= set(names)
        assert changed or not names, "nothing changed, nothing is painted"
        quiet += not changed
    assert quiet >= 45, "most ticks of a quiet shop change no tile"
