"""S10 and its like through the window, by keys alone: swap, release, READY, Correct…, Ctrl+Z."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt

from helpers.scene import CTRL, Scene
from helpers.session import lay_out_irons
from rackboard.core.instants import HOUR_US
from rackboard.core.words import Word
from rackboard.ui.correction import CorrectionDialog
from rackboard.ui.initials_dialog import InitialsDialog
from rackboard.ui.place_chooser import PlaceChooser
from rackboard.ui.release_dialog import ReleaseDialog
from rackboard.ui.swap_dialog import NAME, SwapDialog

ENTER, TAB = Qt.Key.Key_Return, Qt.Key.Key_Tab


@pytest.fixture
def scene(qtbot: Any, tmp_path: Path) -> Any:
    """Two 4 irons of two jobs, glued half an hour apart."""
    made = Scene(qtbot, tmp_path, "2026-03-09T09:00+01:00")
    made.type_temperature("21")
    session = made.session
    for number, slot in (("220", 0), ("221", 1)):
        laid = lay_out_irons(session, 1, first_slot=slot, number=number)
        session.take(session.bench.mix(laid.batch_id))
        session.take(session.bench.rack_all(laid.batch_id))
        made.clock.advance(minutes=30)
    session.tick()
    yield made
    made.close()


def ring(scene: Scene, slot: int) -> None:
    scene.window.board.select(scene.window.board.rack.rows_model.row(slot).key[0], slot)
    scene.window.refresh()


def test_s10_two_irons_with_each_others_name(scene: Scene) -> None:
    ring(scene, 0)
    clocks = [scene.tile(name).time for name in ("A1", "A2")]
    scene.press(Qt.Key.Key_F2, CTRL)
    dialog = scene.dialog(SwapDialog)
    assert dialog.other.currentText() == "A2 4 iron, job 221"
    scene.press(TAB)
    assert scene.focus() is dialog.keys[NAME]
    scene.press(ENTER)
    scene.back()
    assert [scene.tile(name).job for name in ("A1", "A2")] == ["221", "220"]
    assert [scene.tile(name).time for name in ("A1", "A2")] == clocks
    scene.press(Qt.Key.Key_Z, CTRL)
    assert [scene.tile(name).job for name in ("A1", "A2")] == ["220", "221"]


def test_a_swapped_pair_keeps_the_ring_on_its_club(scene: Scene) -> None:
    ring(scene, 0)
    joint = scene.window.selected_standing().joint  # type: ignore[union-attr]
    scene.press(Qt.Key.Key_F2, CTRL)
    dialog = scene.dialog(SwapDialog)
    for _ in range(3):
        scene.press(TAB)
    assert scene.focus() is dialog.keys["carried"]
    scene.press(ENTER)
    scene.back()
    assert scene.window.board.selected()[1] == 1  # type: ignore[index]
    assert scene.window.selected_standing().joint.id == joint.id  # type: ignore[union-attr]


def test_a_moved_club_keeps_the_ring(scene: Scene) -> None:
    ring(scene, 0)
    scene.press(Qt.Key.Key_F2)
    scene.dialog(PlaceChooser)
    scene.press(ENTER)  # the first free slot
    scene.back()
    assert scene.window.board.selected()[1] == 2  # type: ignore[index]
    assert scene.window.selected_standing().job.number == "220"  # type: ignore[union-attr]


def test_a_release_needs_a_deliberate_hand(scene: Scene) -> None:
    scene.clock.advance(hours=1)
    scene.session.tick()
    ring(scene, 0)
    assert scene.tile("A1").word is Word.WAIT or scene.tile("A1").word is Word.WET
    scene.press(Qt.Key.Key_F5, CTRL)
    dialog = scene.dialog(ReleaseDialog)
    assert dialog.warns
    scene.type("he waits")
    scene.type("kt")
    assert scene.window.selected_standing().released is None  # type: ignore[union-attr]
    while scene.focus() is not dialog._accept:
        scene.press(TAB)
    scene.press(ENTER)
    scene.back()
    released = scene.window.selected_standing().released  # type: ignore[union-attr]
    assert released is not None and (released.by, released.reason) == ("kt", "he waits")
    scene.press(Qt.Key.Key_Z, CTRL)
    assert scene.window.selected_standing().released is None  # type: ignore[union-attr]


def test_correct_takes_a_name_by_keys(scene: Scene) -> None:
    ring(scene, 0)
    scene.press(Qt.Key.Key_K, CTRL)
    dialog = scene.dialog(CorrectionDialog)
    assert scene.focus() is dialog.mixed
    while scene.focus() is not dialog.club:
        scene.press(TAB)
    dialog.club.selectAll()
    scene.type("3 iron")
    scene.back()
    assert scene.tile("A1").club == "3 iron"


def test_ready_is_pressed_with_a_name(scene: Scene) -> None:
    scene.type_temperature("21")
    for _ in range(60):
        scene.clock.instant += HOUR_US
        scene.session.take(scene.session.bench.type_temperature(
            scene.standing("4 iron").batch.zone_id, 21_000, at_rack=True))  # fmt: skip
    ring(scene, 0)
    assert scene.tile("A1").word is Word.CURED
    scene.press(Qt.Key.Key_F8)
    scene.dialog(InitialsDialog)
    scene.type("MB")
    scene.back()
    job = scene.window.selected_standing().job  # type: ignore[union-attr]
    assert job.ready_by == "MB"
    scene.press(Qt.Key.Key_F8)
    assert scene.window.selected_standing().job.ready_us is None  # type: ignore[union-attr]
