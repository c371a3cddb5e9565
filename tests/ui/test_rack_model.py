from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QModelIndex, Qt
from pytestqt.qtbot import QtBot

from helpers.board_values import racks, wait
from rackboard.ui.rack_model import ID_ROLE, ROW_ROLE, RowModel


class Watch:
    def __init__(self, model: RowModel) -> None:
        self.changed: list[tuple[int, int]] = []
        self.resets = 0
        model.dataChanged.connect(self._on_changed)
        model.modelReset.connect(self._on_reset)

    def _on_changed(self, first: QModelIndex, last: QModelIndex) -> None:
        self.changed.append((first.row(), last.row()))

    def _on_reset(self) -> None:
        self.resets += 1


def test_only_changed_rows_are_announced(qtbot: QtBot) -> None:
    model = RowModel()
    tiles = list(racks()[0].tiles)
    model.show_rows(tiles)
    watch = Watch(model)
    model.show_rows(list(racks()[0].tiles))
    assert watch.changed == []
    for slot in (3, 4, 9):
        tiles[slot] = wait(1, slot)
    model.show_rows(tiles)
    assert watch.changed == [(3, 3), (4, 4), (9, 9)]
    assert watch.resets == 0


def test_a_tick_never_resets_but_another_rack_does(qtbot: QtBot) -> None:
    model = RowModel()
    first, box = racks()
    model.show_rows(first.tiles)
    watch = Watch(model)
    model.show_rows([replace(tile, temperature="18.0 °C") for tile in first.tiles])
    assert (watch.changed, watch.resets) == ([(n, n) for n in range(15)], 0)
    model.show_rows(box.tiles)
    assert watch.resets == 1
    assert model.rowCount() == 4


def test_roles(qtbot: QtBot) -> None:
    model = RowModel()
    model.show_rows(racks()[0].tiles)
    index = model.index(0)
    assert index.data(ID_ROLE) == (1, 0)
    assert index.data(ROW_ROLE) is model.row(0)
    said = index.data(Qt.ItemDataRole.AccessibleTextRole)
    assert said == "A1, 50° wedge, do not move, not before 20:40"
    assert model.find((1, 7)) == 7
    assert model.find((9, 9)) == -1
