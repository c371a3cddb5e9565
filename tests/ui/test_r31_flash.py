"""R31: an untaken alarm flashes at 2.0 Hz, half of it lit, in its border only; never text."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from PySide6.QtCore import QRect
from PySide6.QtGui import QImage
from pytestqt.qtbot import QtBot

from helpers.board_values import RACK, board_view, hold, racks
from helpers.shop import FakeClock, at
from helpers.wall_values import areas
from helpers.wall_values import tile as wall_tile
from helpers.wall_values import view as wall_view
from rackboard.core.bench import HoldReason
from rackboard.core.words import Word
from rackboard.ui.board import Board
from rackboard.ui.edges import CUT
from rackboard.ui.resources import load_fonts
from rackboard.ui.theme import Theme, dark_theme, light_theme
from rackboard.ui.wall import Wall
from rackboard.ui.wall_painter import CUT as WALL_CUT

MINUTE_MS, STEP_MS = 60_000, 50
SIZES = [(1920, 1054), (1280, 778)]


def made(qtbot: QtBot, theme: Theme, size: tuple[int, int]) -> Board:
    load_fonts()
    board = Board(theme)
    qtbot.addWidget(board)
    board.resize(*size)
    board.show()
    board.show_view(board_view())
    return board


def tile_area(board: Board, slot: int) -> QRect:
    """The tile itself, without its cell's rim, in the rack's own px."""
    cell = board.rack.visualRect(board.rack.rows_model.index(slot))
    before, at = board.grid().gutter // 2, board.grid()
    return QRect(cell.x() + before, cell.y() + before, at.tile_w, at.tile_h)


def within_corners(body: QRect, cut: int) -> tuple[QRect, QRect]:
    """What lies inside the cut corners, as two rectangles that cover all text."""
    return body.adjusted(cut, 1, -cut, -1), body.adjusted(1, cut, -1, -cut)


def picture(board: Board) -> QImage:
    return board.rack.grab().toImage()


def changed(one: QImage, other: QImage, within: QRect) -> int:
    """Count the px in a rectangle that differ."""
    rows = range(within.top(), within.bottom() + 1)
    columns = range(within.left(), within.right() + 1)
    return sum(one.pixel(x, y) != other.pixel(x, y) for y in rows for x in columns)


@pytest.mark.parametrize("size", SIZES)
def test_rate_and_duty_over_a_minute(qtbot: QtBot, size: tuple[int, int]) -> None:
    """The injected clock runs for 60 s; what a screen would show is looked at 20 times a second."""
    board = made(qtbot, dark_theme(), size)
    clock = FakeClock(at("Mon 09:00"))
    start = clock.now()
    cell = board.rack.visualRect(board.rack.rows_model.index(1))
    corner = (cell.center().x(), cell.top() + 2)
    cached: dict[bool, bool] = {}
    lit = []
    for _ in range(MINUTE_MS // STEP_MS):
        board.set_time_ms((clock.now() - start) // 1000)
        on = board.delegate.collar_lit
        if on not in cached:
            color = picture(board).pixelColor(*corner)
            cached[on] = color == dark_theme().fills[Word.HOLD]
        lit.append(cached[on])
        clock.advance(seconds=STEP_MS / 1000)
    assert clock.now() - start == MINUTE_MS * 1000
    assert sum(lit) / len(lit) == pytest.approx(0.5)
    begins = sum(later and not earlier for earlier, later in pairwise([False, *lit]))
    assert begins / 60 == pytest.approx(2.0)
    for first in range(0, len(lit), 1000 // STEP_MS):
        second = lit[first : first + 1000 // STEP_MS]
        flashes = sum(a and not b for a, b in pairwise([*second, False]))
        assert flashes <= 3  # WCAG 2.3.1, three flashes or below threshold


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("theme", [dark_theme(), light_theme()])
def test_border_only(qtbot: QtBot, theme: Theme, size: tuple[int, int]) -> None:
    board = made(qtbot, theme, size)
    board.set_time_ms(0)
    lit = picture(board)
    board.set_time_ms(250)
    dark = picture(board)
    whole = QRect(0, 0, lit.width(), lit.height())
    cell = board.rack.visualRect(board.rack.rows_model.index(1))
    assert changed(lit, dark, cell) > 1000
    for part in within_corners(tile_area(board, 1), round(CUT)):
        assert changed(lit, dark, part) == 0, "no text, no flood"
    assert changed(lit, dark, whole) == changed(lit, dark, cell), "nothing else flashes"


@pytest.mark.parametrize("size", SIZES)
def test_none_with_reduced_motion(qtbot: QtBot, size: tuple[int, int]) -> None:
    board = made(qtbot, dark_theme(), size)
    board.set_reduced_motion(True)
    assert not board.wants_ticks()
    pictures = []
    for time_ms in range(0, 1000, STEP_MS):
        board.set_time_ms(time_ms)
        pictures.append(picture(board))
    assert all(one == pictures[0] for one in pictures)
    cell = board.rack.visualRect(board.rack.rows_model.index(1))
    ahead = tile_area(board, 1).top() - cell.top()
    rim = [picture(board).pixelColor(cell.center().x(), cell.top() + y) for y in range(ahead)]
    assert rim.count(dark_theme().fills[Word.HOLD]) == 6, "steady, 6 px"


def test_none_once_it_is_taken(qtbot: QtBot) -> None:
    board = made(qtbot, dark_theme(), SIZES[0])
    assert board.wants_ticks()
    first, box = racks()
    tiles = (first.tiles[0], hold(RACK, 1, untaken=False), *first.tiles[2:])
    board.show_view(replace(board_view(), racks=(replace(first, tiles=tiles), box)))
    assert not board.wants_ticks()
    board.set_time_ms(0)
    before = picture(board)
    board.set_time_ms(250)
    assert picture(board) == before


def test_on_the_wall(qtbot: QtBot) -> None:
    """The wall's collar keeps the same beat and stays a border as well."""
    load_fonts()
    wall = Wall(dark_theme())
    qtbot.addWidget(wall)
    wall.resize(1920, 1080)
    one = wall_tile(Word.HOLD, "disturbed", hold=HoldReason.DISTURBED, untaken=True)
    wall.show_view(wall_view((one,)))
    wall.set_reduced_motion(False)
    pictures = []
    for time_ms in (0, 250):
        wall.set_time_ms(time_ms)
        pictures.append(wall.grab().toImage())
    assert pictures[0] != pictures[1]
    body = areas((1920, 1080))[1].toAlignedRect()
    for part in within_corners(body, round(WALL_CUT)):
        assert changed(pictures[0], pictures[1], part) == 0
    wall.set_reduced_motion(True)
    still = []
    for time_ms in (0, 250):
        wall.set_time_ms(time_ms)
        still.append(wall.grab().toImage())
    assert still[0] == still[1]
