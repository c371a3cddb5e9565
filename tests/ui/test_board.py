from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from helpers.board_values import BOX, RACK, board_view, empty, hold, racks, wait
from rackboard.ui.board import Board
from rackboard.ui.board_view import BoardView, HappeningKind
from rackboard.ui.keys import APART, TARGET, Key
from rackboard.ui.rack_view import RowView
from rackboard.ui.resources import load_fonts
from rackboard.ui.strip import TemperatureKey
from rackboard.ui.theme import dark_theme, light_theme
from rackboard.ui.tile import Rack

SIZES = [(1920, 1054), (1280, 778)]


@pytest.fixture
def board(qtbot: QtBot) -> Board:
    load_fonts()
    made = Board(dark_theme())
    made.set_reduced_motion(True)
    qtbot.addWidget(made)
    made.resize(1920, 1054)
    made.show()
    made.show_view(board_view())
    return made


def cell(view: RowView, row: int) -> QPoint:
    return view.visualRect(view.rows_model.index(row)).center()


def press(qtbot: QtBot, board: Board, *keys: Qt.Key) -> None:
    for key in keys:
        view = board.focusWidget()
        assert view is not None
        qtbot.keyClick(view, key)


def test_all_slots_stand_in_the_designed_grid(board: Board) -> None:
    for size in SIZES:
        board.resize(*size)
        at = board.grid()
        for view, area, columns in ((board.rack, at.rack, 5), (board.box, at.box, 4)):
            for row in range(view.rows_model.rowCount()):
                rect = view.visualRect(view.rows_model.index(row)).translated(view.pos())
                line, column = divmod(row, columns)
                assert rect.x() + at.gutter // 2 == area.x + column * (at.tile_w + at.gutter)
                assert rect.y() + at.gutter // 2 == area.y + line * (at.tile_h + at.gutter)


def test_arrows_walk_within_and_across_the_racks(qtbot: QtBot, board: Board) -> None:
    board.rack.setFocus()
    board.select(RACK, 0)
    key = Qt.Key
    press(qtbot, board, key.Key_Right, key.Key_Right, key.Key_Down, key.Key_Down)
    assert board.selected() == (RACK, 12)
    press(qtbot, board, key.Key_Down)
    assert board.selected() == (BOX, 2)
    assert board.focusWidget() is board.box
    assert not board.rack.currentIndex().isValid(), "one ring only"
    press(qtbot, board, key.Key_Right, key.Key_Right)
    assert board.selected() == (BOX, 3)
    press(qtbot, board, key.Key_Up)
    assert board.selected() == (RACK, 13)
    assert board.focusWidget() is board.rack


def test_enter_and_a_single_tap_activate(qtbot: QtBot, board: Board) -> None:
    board.rack.setFocus()
    board.select(RACK, 3)
    with qtbot.waitSignal(board.slot_activated) as entered:
        press(qtbot, board, Qt.Key.Key_Return)
    assert entered.args == [RACK, 3]
    with (
        qtbot.waitSignal(board.slot_selected) as selected,
        qtbot.waitSignal(board.slot_activated) as tapped,
    ):
        qtbot.mouseClick(board.box.viewport(), Qt.MouseButton.LeftButton, pos=cell(board.box, 1))
    assert selected.args == tapped.args == [BOX, 1]


def test_tab_reaches_every_part(qtbot: QtBot, board: Board) -> None:
    board.rack.setFocus()
    reached: list[QWidget | None] = []
    for _ in range(16):
        reached.append(board.focusWidget())
        qtbot.keyClick(board.focusWidget() or board, Qt.Key.Key_Tab)
    for part in (board.rack, board.box, board.chips, board.jobs.list, board.usual.alarm.key,
                 board.usual.due, board.strip.night):  # fmt: skip
        assert part in reached, part


def test_a_tick_repaints_only_what_changed(qtbot: QtBot, board: Board) -> None:
    changed: list[int] = []
    board.rack.rows_model.dataChanged.connect(lambda first, last: changed.append(first.row()))
    resets: list[int] = []
    board.rack.rows_model.modelReset.connect(lambda: resets.append(1))
    view = board_view()
    board.show_view(view)
    assert (changed, resets) == ([], [])
    first, box = view.racks
    tiles = (*first.tiles[:4], wait(RACK, 4), *first.tiles[5:])
    board.show_view(replace(view, racks=(replace(first, tiles=tiles), box)))
    assert (changed, resets) == ([4], [])


def test_a_larger_rack_scrolls_by_whole_rows_and_counts_holds(qtbot: QtBot, board: Board) -> None:
    tiles = [empty(RACK, slot) for slot in range(25)]
    tiles[22] = hold(RACK, 22)
    rack = Rack(RACK, "Rack A", "", 5, 5, tuple(tiles))
    board.show_view(replace(board_view(), racks=(rack, racks()[1])))
    assert "rows 1 to 3 of 5, 1 HOLD out of sight" in board.rack_head.accessibleName()
    board.rack.setFocus()
    board.select(RACK, 12)
    press(qtbot, board, Qt.Key.Key_Down, Qt.Key.Key_Down)
    assert board.selected() == (RACK, 22)
    assert board.rack.first_line() == 2
    assert "rows 3 to 5 of 5" in board.rack_head.accessibleName()
    assert "HOLD" not in board.rack_head.accessibleName()


def test_further_racks_are_pages(qtbot: QtBot, board: Board) -> None:
    other = Rack(7, "Rack C", "empty", 3, 5, tuple(
        replace(empty(RACK, slot), place_id=7) for slot in range(15)))  # fmt: skip
    board.show_view(replace(board_view(), racks=(*racks(), other)))
    qtbot.keyClick(board, Qt.Key.Key_2, Qt.KeyboardModifier.ControlModifier)
    assert board.rack.accessibleName() == "Rack C"
    board.select(RACK, 2)
    assert board.rack.accessibleName() == "Rack A"


def test_the_night_is_answered_by_enter(qtbot: QtBot, board: Board) -> None:
    field = board.strip.night
    assert field.text() == "13"
    field.selectAll()
    qtbot.keyClicks(field, "12,5")
    board.show_view(replace(board_view(), head="2 holds"))
    assert field.text() == "12,5", "a tick leaves a half-made entry alone"
    with qtbot.waitSignal(board.night_answered) as answered:
        qtbot.keyClick(field, Qt.Key.Key_Return)
    assert answered.args == ["2:7", "12,5"]
    board.show_view(replace(board_view(), strip=replace(board_view().strip, ask=None)))
    assert field.isHidden()


def test_signals_of_the_parts(qtbot: QtBot, board: Board) -> None:
    left = Qt.MouseButton.LeftButton
    with qtbot.waitSignal(board.alarm_answered) as alarm:
        qtbot.mouseClick(board.usual.alarm.key, left)
    assert alarm.args == ["h1"]
    with qtbot.waitSignal(board.due_clicked) as due:
        qtbot.mouseClick(board.usual.due, left)
    assert due.args == ["d1"]
    with qtbot.waitSignal(board.action_chosen) as action:
        qtbot.mouseClick(board.usual.inspector.keys()[1], left)
    assert action.args == ["move"]
    jobs = board.jobs.list
    with qtbot.waitSignal(board.job_clicked) as job:
        qtbot.mouseClick(jobs.viewport(), left, pos=QPoint(30, cell(jobs, 1).y()))
    assert job.args == [2]
    with qtbot.waitSignal(board.ready_clicked) as ready:
        at = QPoint(jobs.viewport().width() - 12, cell(jobs, 1).y())
        qtbot.mouseClick(jobs.viewport(), left, pos=at)
    assert ready.args == [2]
    with qtbot.waitSignal(board.chip_clicked) as chip:
        qtbot.mouseClick(board.chips.viewport(), left, pos=cell(board.chips, 2))
    assert chip.args == [3]


def test_enter_presses_what_has_the_focus(qtbot: QtBot, board: Board) -> None:
    for widget, signal in (
        (board.usual.alarm.key, board.alarm_answered),
        (board.usual.due, board.due_clicked),
        (board.usual.inspector.keys()[0], board.action_chosen),
    ):
        with qtbot.waitSignal(signal):
            qtbot.keyClick(widget, Qt.Key.Key_Return)
    temperatures = board.strip.findChildren(TemperatureKey)
    with qtbot.waitSignal(board.temperature_clicked) as clicked:
        qtbot.keyClick(temperatures[1], Qt.Key.Key_Space)
    assert clicked.args == [2]


def test_a_change_of_word_fades_and_ends(qtbot: QtBot, board: Board) -> None:
    board.set_reduced_motion(False)
    first, box = racks()
    tiles = (*first.tiles[:4], wait(RACK, 4), *first.tiles[5:])
    board.show_view(replace(board_view(), racks=(replace(first, tiles=tiles), box)))
    assert set(board.delegate.fading) == {(RACK, 4)}
    qtbot.waitUntil(lambda: not board.delegate.fading)


def test_a_fifth_club_off_the_rack_is_counted(board: Board) -> None:
    first = board_view().chips[0]
    chips = tuple(first._replace(key=number) for number in range(1, 6))
    board.show_view(replace(board_view(), chips=chips))
    rows = board.chips.rows_model.rows()
    assert len(rows) == 4
    assert rows[3].accessible == "2 more clubs off the rack"


def test_the_list_opens_and_closes_by_its_head(qtbot: QtBot, board: Board) -> None:
    qtbot.mouseClick(board.usual.head, Qt.MouseButton.LeftButton)
    assert board.usual.list.isVisible()
    assert board.usual.list.rows_model.rowCount() == 3
    with qtbot.waitSignal(board.happening_clicked) as clicked:
        qtbot.mouseClick(
            board.usual.list.viewport(), Qt.MouseButton.LeftButton, pos=cell(board.usual.list, 2)
        )
    assert clicked.args == ["x1"]
    qtbot.mouseClick(board.usual.head, Qt.MouseButton.LeftButton)
    assert board.usual.inspector.isVisible()


@pytest.mark.parametrize("size", SIZES)
def test_targets(board: Board, size: tuple[int, int]) -> None:
    board.resize(*size)
    board.grab()
    keys = [board.usual.alarm.key, *board.usual.inspector.keys()]
    assert len(keys) == (5 if size[0] == 1920 else 4)
    for key in keys:
        assert min(key.body().width(), key.body().height()) >= TARGET, key.text()
    bodies = [
        key.body().translated(key.pos().x(), key.pos().y()) for key in keys[1:]
    ]
    for one, other in pairwise(bodies):
        assert other.left() - one.right() >= APART - 1
    assert board.usual.due.height() >= TARGET
    at = board.grid()
    assert min(at.tile_w, at.tile_h) >= TARGET
    assert at.gutter >= APART


def test_accessible_names_follow_the_state(board: Board) -> None:
    view = QAccessible.queryAccessibleInterface(board.rack)
    assert view is not None
    said = [view.child(at).text(QAccessible.Text.Name) for at in range(view.childCount())]
    assert "A1, 50° wedge, do not move, not before 20:40" in said
    assert "A2, putter, on hold: disturbed 14:19" in said
    first, box = racks()
    board.show_view(
        replace(board_view(), racks=(replace(first, tiles=(empty(RACK, 0), *first.tiles[1:])), box))
    )
    said = [view.child(at).text(QAccessible.Text.Name) for at in range(view.childCount())]
    assert "A1, empty" in said
    for part in (board.rack, board.box, board.chips, board.jobs.list, board.usual.alarm.key,
                 board.usual.due, board.usual.head, board.usual.inspector, board.strip,
                 board.strip.night, board.rack_head):  # fmt: skip
        assert part.accessibleName(), part
    for key in board.findChildren(Key):
        assert key.accessibleName(), key


def test_the_collar_beats_only_while_a_hold_is_untaken(qtbot: QtBot, board: Board) -> None:
    board.set_reduced_motion(False)
    assert board.wants_ticks()
    board.set_time_ms(300)
    dark = board.rack.grab().toImage()
    board.set_time_ms(500)
    lit = board.rack.grab().toImage()
    assert dark != lit
    board.set_reduced_motion(True)
    assert not board.wants_ticks()
    board.set_reduced_motion(False)
    first, box = racks()
    tiles = (first.tiles[0], hold(RACK, 1, untaken=False), *first.tiles[2:])
    board.show_view(replace(board_view(), racks=(replace(first, tiles=tiles), box)))
    assert not board.wants_ticks()


def test_a_live_change_of_theme(board: Board) -> None:
    dark = board.grab().toImage().pixelColor(2, 500)
    board.show_theme(light_theme())
    light = board.grab().toImage().pixelColor(2, 500)
    assert (dark, light) == (dark_theme().bg, light_theme().bg)


def test_an_empty_board(board: Board) -> None:
    view = board_view()
    bare = BoardView(replace(view.strip, ask=None, temperatures=(), following=None), ())
    board.show_view(bare)
    board.grab()
    assert board.usual.alarm.accessibleName() == "No alarm"
    assert board.usual.due.accessibleName() == "Nothing due"
    assert all(one.kind is not HappeningKind.ALARM for one in bare.happenings)
