"""R36: what is tapped is at least 20 mm wide and high in near view, 24 px in dialogs."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations
from pathlib import Path
from typing import NamedTuple

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractSpinBox,
    QApplication,
    QComboBox,
    QDialog,
    QFileDialog,
    QLineEdit,
    QTabBar,
    QWidget,
)
from pytestqt.qtbot import QtBot

from helpers.board_values import board_view, happenings
from helpers.demo_window import DemoWindow
from rackboard.ui.board import Board
from rackboard.ui.keys import APART, RIM, TARGET, Key
from rackboard.ui.rack_view import RowView
from rackboard.ui.resources import load_fonts
from rackboard.ui.strip import TemperatureKey
from rackboard.ui.theme import dark_theme

PITCH_MM = 0.2768
"""Of a pixel on the screen that the sizes are made for, 1920 wide and 24 inches across [mm]."""
SCALES = (1.0, 1.25, 1.5, 2.0)
SIZES = ((1920, 1054), (1280, 778))
LEAST_DIALOG = 24


class Smaller(NamedTuple):
    """A target that is designed smaller: its least height at 1920 and 1280, and the other way."""

    large: int
    small: int
    other_way: str


EXCEPTIONS = {
    "chip": Smaller(60, 42, "the tile's commands, once it is selected"),
    "night": Smaller(73, 59, "Tab leads to the field; its whole question is tapped"),
    "temperature": Smaller(73, 59, "Ctrl+T, and a key of 73 px in the inspector"),
    "job": Smaller(38, 28, "arrows and Enter; a job's clubs are tiles"),
    "ready": Smaller(38, 28, "Space on the job's row"),
    "head": Smaller(28, 22, "Tab and Enter"),
}


def screens() -> list[tuple[float, tuple[int, int]]]:
    """Logical sizes of a board on a screen of 3840 x 2160 or 2560 x 1600 at each scale."""
    found = []
    for scale in SCALES:
        for wide, high in ((3840, 2160), (2560, 1600)):
            size = (round(wide / scale), round(high / scale) - 26)
            if size[0] >= SIZES[1][0] and size[1] >= SIZES[1][1]:
                found.append((scale, size))
    return [*found, *((1.0, size) for size in SIZES)]


def made(qtbot: QtBot, size: tuple[int, int]) -> Board:
    load_fonts()
    board = Board(dark_theme())
    board.set_reduced_motion(True)
    qtbot.addWidget(board)
    board.resize(*size)
    board.show()
    board.show_view(board_view())
    QApplication.processEvents()
    return board


def in_board(board: Board, widget: QWidget, rect: QRect) -> QRect:
    return QRect(widget.mapTo(board, rect.topLeft()), rect.size())


def body(board: Board, key: Key) -> QRect:
    return in_board(board, key, key.body().toAlignedRect())


def cells(board: Board, view: RowView) -> list[QRect]:
    """Where a tap hits each row, found by asking the view itself at its edges."""
    found = []
    for row in range(view.rows_model.rowCount()):
        index = view.rows_model.index(row)
        rect = view.visualRect(index).intersected(view.viewport().rect())
        if rect.isEmpty():
            continue
        corners = (rect.topLeft(), rect.bottomRight(), QPoint(rect.left(), rect.bottom()))
        assert all(view.indexAt(corner) == index for corner in corners)
        found.append(in_board(board, view.viewport(), rect))
    return found


def gap(one: QRect, other: QRect) -> int:
    """Return the wider of the gaps across and down; negative where they overlap."""
    across = max(one.left(), other.left()) - min(one.right(), other.right()) - 1
    down = max(one.top(), other.top()) - min(one.bottom(), other.bottom()) - 1
    return max(across, down)


@pytest.mark.parametrize(("scale", "size"), screens())
def test_targets_of_the_near_view(qtbot: QtBot, scale: float, size: tuple[int, int]) -> None:
    board = made(qtbot, size)
    at = board.grid()
    tiles = []
    for view, first in ((board.rack, at.rack), (board.box, at.box)):
        for number, _ in enumerate(cells(board, view)):
            line, column = divmod(number, view.columns)
            x = first.x + column * (at.tile_w + at.gutter)
            y = first.y + line * (at.tile_h + at.gutter)
            tiles.append(QRect(x, y, at.tile_w, at.tile_h))
    actions = list(board.usual.inspector.keys())
    keys = [body(board, key) for key in (board.usual.alarm.key, *actions)]
    keys.append(in_board(board, board.usual.due, board.usual.due.rect()))
    assert len(tiles) == 19
    assert len(keys) >= 5
    for rect in (*tiles, *keys):
        least = min(rect.width(), rect.height())
        assert least >= TARGET, rect
        # At a scale of s a screen has s times the pixels on the same millimetre.
        assert least * scale * (PITCH_MM / scale) >= 20
    for one, other in combinations((*tiles, *keys), 2):
        # Two keys beside each other are apart by their two rims.
        assert gap(one, other) >= (2 * RIM if one in keys and other in keys else APART)
    assert at.gutter >= APART


@pytest.mark.parametrize("size", SIZES)
def test_with_several_alarms(qtbot: QtBot, size: tuple[int, int]) -> None:
    board = made(qtbot, size)
    first, *rest = happenings()
    many = tuple(replace(first, key=f"h{number}") for number in range(4))
    board.usual.show_happenings("4 holds", (*many, *rest))
    QApplication.processEvents()
    assert board.usual.due.isHidden()
    more = in_board(board, board.usual.more, board.usual.more.rect())
    assert min(more.width(), more.height()) >= TARGET
    assert gap(more, body(board, board.usual.alarm.key)) >= APART


@pytest.mark.parametrize("size", SIZES)
def test_what_is_smaller_by_design(qtbot: QtBot, size: tuple[int, int]) -> None:
    """None may get smaller than it is, and each has another way."""
    board = made(qtbot, size)
    large = board.grid().large
    found = {
        "chip": cells(board, board.chips),
        "job": cells(board, board.jobs.list),
        "night": [board.strip.ask_area().toAlignedRect()],
        "temperature": [
            in_board(board, key, key.rect()) for key in board.strip.findChildren(TemperatureKey)
        ],
        "head": [in_board(board, board.usual.head, board.usual.head.rect())],
    }
    assert len(found["chip"]) == 4
    for name, rects in found.items():
        assert rects
        least = EXCEPTIONS[name].large if large else EXCEPTIONS[name].small
        for rect in rects:
            assert rect.height() >= least, (name, rect)
            assert rect.width() >= TARGET, (name, rect)
            assert EXCEPTIONS[name].other_way
    heights = [rect.height() for rect in found["chip"]]
    assert min(heights) > board.grid().slim + 8, "the margin below belongs to the chip"


@pytest.mark.parametrize("size", SIZES)
def test_a_tap_beside_the_small_field_goes_into_it(qtbot: QtBot, size: tuple[int, int]) -> None:
    board = made(qtbot, size)
    board.activateWindow()
    area = board.strip.ask_area().toAlignedRect()
    for at in (area.topLeft() + QPoint(2, 2), area.bottomRight() - QPoint(2, 2)):
        board.rack.setFocus()
        qtbot.mouseClick(board.strip, Qt.MouseButton.LeftButton, pos=at)
        assert board.focusWidget() is board.strip.night
        assert board.strip.night.selectedText() == "13"


@pytest.mark.parametrize("size", SIZES)
def test_a_tap_below_a_chip_is_the_chips(qtbot: QtBot, size: tuple[int, int]) -> None:
    board = made(qtbot, size)
    rect = cells(board, board.chips)[1]
    for y in (rect.top() + 1, rect.bottom() - 1):
        at = board.chips.viewport().mapFrom(board, QPoint(rect.center().x(), y))
        with qtbot.waitSignal(board.chip_clicked) as clicked:
            qtbot.mouseClick(board.chips.viewport(), Qt.MouseButton.LeftButton, pos=at)
        assert clicked.args == [2]
    assert board.childAt(rect.center()) is board.chips.viewport()


# Dialogs

_TAPPED = (QAbstractButton, QLineEdit, QAbstractSpinBox, QComboBox)


def targets(dialog: QWidget) -> list[tuple[str, QRect]]:
    """Return all that can be tapped in a dialog, with its place."""
    found: list[tuple[str, QRect]] = []
    for child in dialog.findChildren(QWidget):
        inner = isinstance(child.parentWidget(), QComboBox | QAbstractSpinBox | QAbstractItemView)
        if not child.isVisibleTo(dialog) or (inner and not isinstance(child, QAbstractItemView)):
            continue
        place = QRect(child.mapTo(dialog, QPoint()), child.size())
        name = f"{type(child).__name__} {child.accessibleName() or child.property('text') or ''}"
        if isinstance(child, QTabBar):
            for tab in range(child.count()):
                found.append((name, child.tabRect(tab).translated(place.topLeft())))
        elif isinstance(child, QAbstractItemView):
            model = child.model()
            for row in range(min(model.rowCount(child.rootIndex()) if model else 0, 3)):
                rect = child.visualRect(model.index(row, 0))
                if not rect.isEmpty():
                    found.append((f"{name} row {row}", rect.translated(place.topLeft())))
        elif isinstance(child, _TAPPED):
            found.append((name, place))
    return found


NO_DIALOG = {"quit", "undo", "redo", "wall", "leave", "sheet", "take off", "out"}
"""Commands that open none, or one of the system's own."""
SLOTS = ("A4", "A7", "A11", "A13", "A14")
"""Cold, BENCH, WET, HOLD and laid out in the demo."""


@pytest.mark.parametrize("size", [(1920, 1080), (1280, 800)])
def test_targets_of_all_dialogs(qtbot: QtBot, tmp_path: Path, size: tuple[int, int]) -> None:
    """Every command of the menus is given over every kind of slot; what opens is measured."""
    demo = DemoWindow(qtbot, tmp_path, size)
    seen: set[str] = set()
    small = []
    for slot in SLOTS:
        demo.select(slot)
        for key, command in demo.window._slots().items():
            if key in NO_DIALOG:
                continue
            command()
            QApplication.processEvents()
            for dialog in demo.dialogs():
                assert not isinstance(dialog, QFileDialog), key
                seen.add(type(dialog).__name__)
                small += [
                    (type(dialog).__name__, name, rect.size().toTuple())
                    for name, rect in targets(dialog)
                    if min(rect.width(), rect.height()) < LEAST_DIALOG
                ]
                dialog.close()
            demo.window._leave_panel()
    assert small == []
    assert len(seen) >= 12, seen


@pytest.mark.parametrize("size", [(1920, 1080), (1280, 800)])
def test_keys_of_glue_up(qtbot: QtBot, tmp_path: Path, size: tuple[int, int]) -> None:
    """With gloves on: each key of the panel is a target of the near view."""
    demo = DemoWindow(qtbot, tmp_path, size)
    demo.select("A15")
    demo.window.new_job()
    QApplication.processEvents()
    keys = [key for key in demo.window.findChildren(Key) if key.isVisible()]
    assert keys
    for key in keys:
        assert min(key.body().width(), key.body().height()) >= TARGET, key.text()


def test_dialogs_are_found() -> None:
    """The walk sees what a dialog holds."""
    dialog = QDialog()
    button = QLineEdit(dialog)
    button.setGeometry(3, 4, 60, 10)
    ((name, rect),) = targets(dialog)
    assert name.startswith("QLineEdit")
    assert rect == QRect(3, 4, 60, 10)
