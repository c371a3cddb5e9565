"""Several alarms at once: the worst first, each within reach of keys, and nothing shifts."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from helpers.board_values import board_view, happenings
from rackboard.core.words import Word
from rackboard.ui.board import Board
from rackboard.ui.board_view import Happening
from rackboard.ui.resources import load_fonts
from rackboard.ui.theme import dark_theme
from rackboard.ui.tile import Glyph


def alarms(count: int) -> tuple[Happening, ...]:
    """So many HOLDs, all invented."""
    first = happenings()[0]
    return tuple(
        replace(
            first, key=f"hold:{number}", glyph=(Glyph.ROD, Glyph.HOT, Glyph.SMEAR)[number % 3],
            title=f"A{number + 1}, putter, job 31{number}", title_short=f"A{number + 1}, putter",
            accessible=f"HOLD A{number + 1}, putter",
        )
        for number in range(count)
    )  # fmt: skip


@pytest.fixture(params=[(1920, 1054), (1280, 778)])
def board(request: pytest.FixtureRequest, qtbot: QtBot) -> Board:
    load_fonts()
    made = Board(dark_theme())
    made.set_reduced_motion(True)
    qtbot.addWidget(made)
    made.resize(*request.param)
    made.show()
    made.show_view(board_view())
    return made


def show(board: Board, count: int) -> None:
    board.usual.show_happenings(f"{count} holds", (*alarms(count), *happenings()[1:]))
    board.usual.grab()


def test_one_alarm_leaves_the_row_to_what_is_due(board: Board) -> None:
    show(board, 1)
    assert board.usual.due.isVisible()
    assert board.usual.more.isHidden()


def test_each_is_reached_and_answered_by_keys(qtbot: QtBot, board: Board) -> None:
    before = board.usual.stack.geometry()
    place = board.usual.due.geometry()
    show(board, 4)
    more, key = board.usual.more, board.usual.alarm.key
    assert (board.usual.stack.geometry(), more.geometry()) == (before, place), "nothing shifts"
    assert more.accessibleName() == "+ 3 more on hold, next HOLD A2, putter"
    answered = []
    board.alarm_answered.connect(answered.append)
    for _ in range(4):
        qtbot.keyClick(key, Qt.Key.Key_Return)
        qtbot.keyClick(more, Qt.Key.Key_Return)
    assert answered == ["hold:0", "hold:1", "hold:2", "hold:3"]
    assert board.usual.alarm.accessibleName() == "HOLD A1, putter", "round again"


def test_the_one_in_sight_stays_until_a_worse_one_comes(board: Board) -> None:
    show(board, 3)
    board.usual.more.click()
    card = board.usual.alarm
    shown = card.shown()
    assert shown is not None
    assert shown.key == "hold:1"
    board.usual.show_happenings("2 holds", alarms(3)[:2])
    shown = card.shown()
    assert shown is not None
    assert shown.key == "hold:1"
    worse = replace(alarms(1)[0], key="hold:9")
    board.usual.show_happenings("3 holds", (worse, *alarms(3)[:2]))
    shown = card.shown()
    assert shown is not None
    assert shown.key == "hold:9"
    board.usual.show_happenings("1 hold", alarms(1))
    assert board.usual.due.isVisible()
    board.usual.show_happenings("", ())
    assert card.shown() is None
    assert card.key.isHidden()
    assert card.accessibleName() == "No alarm"


def test_the_keys_stay_where_they_are_used(qtbot: QtBot, board: Board) -> None:
    """Whoever leads on by Enter keeps the focus when the row changes its meaning."""
    show(board, 2)
    board.activateWindow()
    board.usual.more.setFocus()
    qtbot.keyClick(board.usual.more, Qt.Key.Key_Return)
    assert board.usual.more.hasFocus()
    show(board, 1)
    assert board.usual.due.hasFocus()


def test_other_alarms_are_counted_as_such(board: Board) -> None:
    cold = replace(alarms(1)[0], key="cold:1", word=None, title="Room is cold: 11.2 °C")
    board.usual.show_happenings("2 alarms", (*alarms(1), cold))
    board.usual.grab()
    assert board.usual.more.accessibleName().startswith("+ 1 more alarm, ")
    assert Word.HOLD not in board.usual.more.accessibleName().split(",")[0]
