"""R38 through the window: Ctrl+Z and Ctrl+Y, fifty deep, over acts of all kinds, without a box."""

from __future__ import annotations

from pathlib import Path
from random import Random
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QDialog

from helpers.random_acts import ACTS
from helpers.scene import CTRL, Scene
from helpers.session import epoxy_named, lay_out_irons, place_of, zone_of
from helpers.store import contents
from rackboard.core.bench import PlaceKind
from rackboard.core.errors import InputError
from rackboard.services.undo import DEPTH
from rackboard.ui.correction import CorrectionDialog
from rackboard.ui.swap_dialog import NAME, SwapDialog

Z, Y = Qt.Key.Key_Z, Qt.Key.Key_Y
SHIFT = Qt.KeyboardModifier.ShiftModifier


class Hands:
    """A scene as the random acts need it."""

    def __init__(self, scene: Scene) -> None:
        session = scene.session
        self.store, self.clock = scene.store, scene.clock
        self.board, self.bench = session.board, session.bench
        self.room, self.box_zone = zone_of(session), zone_of(session, PlaceKind.BOX)
        self.rack, self.box = place_of(session), place_of(session, PlaceKind.BOX)
        self.epoxy = epoxy_named(session, "half-hour")


@pytest.fixture
def scene(qtbot: Any, tmp_path: Path) -> Any:
    made = Scene(qtbot, tmp_path, "2026-03-09T09:00+01:00")
    made.session.bench.act_as("KT")
    session = made.session
    session.take(session.bench.type_temperature(zone_of(session), 21_000, at_rack=True))
    laid = lay_out_irons(session, 3)
    session.take(session.bench.mix(laid.batch_id))
    yield made
    made.close()


def boxes(scene: Scene) -> list[QDialog]:
    """The dialogs over this window; another test may have left one of its own."""
    return [
        w for w in QApplication.topLevelWidgets()
        if isinstance(w, QDialog) and w.isVisible()
        and w.parentWidget() in (None, scene.window)
        and w not in scene.left_over
    ]  # fmt: skip


def test_r38_ctrl_z_fifty_deep_opens_no_box(scene: Scene) -> None:
    hands, chance = Hands(scene), Random(2026)
    images = [contents(scene.store)]
    done: set[str] = set()
    while len(images) <= DEPTH + 5:
        act = ACTS[chance.randrange(len(ACTS))]
        scene.clock.advance(minutes=3)
        try:
            changes = act(hands, chance.randrange)
        except InputError:
            continue
        if changes is not None and changes.undoable:
            scene.session.take(changes)
            images.append(contents(scene.store))
            done.add(act.__name__)
    assert len(done) > 12, done
    for image in images[::-1][1 : DEPTH + 1]:
        scene.press(Z, CTRL)
        assert boxes(scene) == []
        assert contents(scene.store) == image
    assert not scene.window.commands["undo"].isEnabled()
    for number, image in enumerate(images[-DEPTH:]):
        if number % 2:
            scene.press(Y, CTRL)
        else:
            scene.press(Z, CTRL | SHIFT)
        assert boxes(scene) == []
        assert contents(scene.store) == image
    assert not scene.window.commands["redo"].isEnabled()


def test_r38_what_a_dialog_did_is_one_ctrl_z(scene: Scene) -> None:
    before = contents(scene.store)
    form = CorrectionDialog(scene.session, scene.standing("4 iron"), scene.window)
    form.open()
    form.club.setText("3 iron")
    form.lot.setText("K-9")
    form.accept()
    corrected = contents(scene.store)
    swap = SwapDialog(scene.session, scene.standing("3 iron"), scene.window)
    swap.open()
    swap.keys[NAME].click()
    scene.back()
    assert scene.window.commands["undo"].text() == "Undo correct the names of 3 iron and 5 iron"
    scene.press(Z, CTRL)
    assert contents(scene.store) == corrected
    scene.press(Z, CTRL)
    assert contents(scene.store) == before
    assert boxes(scene) == []
