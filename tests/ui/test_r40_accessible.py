"""R40: what a screen reader is told follows the state; everything that takes the focus has a name.

At both sizes, in both themes and after a live change of the theme.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QModelIndex, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QApplication, QDialog, QLineEdit, QPushButton

from helpers.demo_window import DemoWindow
from helpers.scene import Scene
from helpers.screens import dialogs, focusable, spoken_name
from helpers.session import lay_out_irons
from helpers.shown_times import times_in
from rackboard.core.bench import HoldReason, PlaceKind
from rackboard.core.standing import Standing
from rackboard.core.words import PHRASES, Word
from rackboard.services.demo import DemoFeed
from rackboard.ui.rack_view import RackView
from rackboard.ui.tile import Tile

SIZES = ((1920, 1080), (1280, 800))
THEMES = ("dark", "light")


def names_of(view: RackView) -> list[str]:
    """What a screen reader is given for each tile, from the accessible tree itself."""
    interface = QAccessible.queryAccessibleInterface(view)
    assert interface is not None
    children = (interface.child(n) for n in range(interface.childCount()))
    return [child.text(QAccessible.Text.Name) for child in children if child is not None]


def tiles_of(demo: DemoWindow | Scene) -> Iterator[tuple[Tile, str]]:
    """Yield every tile with its name in the model and in the accessible tree."""
    board = demo.window.board
    for view in (board.rack, board.box):
        model = view.rows_model
        said = names_of(view)
        assert len(said) == model.rowCount(QModelIndex())
        for row, name in zip(model.rows(), said, strict=True):
            assert isinstance(row, Tile)
            index = model.index(model.find(row.key))
            assert index.data(Qt.ItemDataRole.AccessibleTextRole) == name
            yield row, name


def standing_at(demo: DemoWindow | Scene, tile: Tile) -> Standing | None:
    for standing in demo.session.board.standings:
        stay = standing.stay
        if stay is not None and (stay.place_id, stay.slot) == tile.key:
            return standing
    return None


def check(tile: Tile, name: str, standing: Standing | None) -> None:
    """A name holds place, club, phrase and an absolute time."""
    assert name.startswith(tile.name)
    if standing is None:
        assert name == f"{tile.name}, empty"
        return
    assert standing.club.name in name
    assert standing.job.number in name
    if standing.laid_out:
        assert "laid out, not glued" in name
        return
    assert str(standing.word) in name
    if standing.hold is None:
        assert PHRASES[standing.word] in name
    else:
        assert str(standing.hold.reason) in name
    assert times_in(name), name
    if standing.cold and standing.hold is None:
        assert name.endswith("cold")
    assert "…" not in name


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize("size", SIZES)
def test_every_tile_says_place_club_phrase_and_time(
    qtbot: Any, tmp_path: Path, size: tuple[int, int], theme: str
) -> None:
    demo = DemoWindow(qtbot, tmp_path, size, theme)
    feed = DemoFeed(demo.session.store, demo.session.board.snapshot.hours.zone)
    words = set()
    for minutes in (0, 30, 500, 900):
        demo.clock.advance(minutes=minutes)
        changes = feed.feed(demo.clock.now())
        if changes is not None:
            demo.session.board.take_in(changes)
        demo.session.tick()
        demo.window.refresh()
        for tile, name in tiles_of(demo):
            standing = standing_at(demo, tile)
            check(tile, name, standing)
            if standing is not None and not standing.laid_out:
                words.add(standing.word)
    assert words == {Word.WET, Word.WAIT, Word.BENCH, Word.CURED, Word.HOLD}


def test_before_the_times_are_known_it_says_since_when(qtbot: Any, tmp_path: Path) -> None:
    """No reading at all: the tile has no time but that of mixing."""
    scene = Scene(qtbot, tmp_path, "2026-03-09T09:00+01:00")
    laid = lay_out_irons(scene.session, 1)
    scene.session.take(scene.session.bench.mix(laid.batch_id))
    (name,) = [name for tile, name in tiles_of(scene) if tile.club]
    assert "low?" in name
    assert "mixed 09:00" in name
    scene.close()


def test_a_name_follows_its_state_within_a_tick(qtbot: Any, tmp_path: Path) -> None:
    scene = Scene(qtbot, tmp_path, "2026-03-09T09:00+01:00")
    scene.type_temperature("21")
    laid = lay_out_irons(scene.session, 1)

    def name() -> str:
        found = [said for tile, said in tiles_of(scene) if tile.club]
        assert len(found) == 1
        return found[0]

    assert name() == "A1, 4 iron, job 220, laid out, not glued"
    scene.session.take(scene.session.bench.mix(laid.batch_id))
    assert name().startswith("A1, 4 iron, job 220, WET: still soft")
    assert "use by 09:" in name()
    scene.session.take(scene.session.bench.rack_all(laid.batch_id))
    scene.go("2026-03-09T10:30+01:00")
    assert "WAIT: do not move. not before" in name()
    joint = scene.standing("4 iron").joint.id
    scene.session.take(scene.session.bench.disturb(joint))
    assert name().startswith("A1, 4 iron, job 220, HOLD: disturbed")
    assert name().endswith("since 10:30")
    scene.go("2026-03-10T08:00+01:00")
    assert name().endswith("since Mon 10:30")
    scene.session.undo()
    assert "HOLD" not in name()
    scene.clock.advance(seconds=31)
    scene.window._on_second()
    assert name() == (
        "A1, 4 iron, the board is not being updated since 08:00, it said WAIT then"
    )
    scene.session.tick()
    assert "not being updated" not in name()
    scene.close()


def test_a_release_is_said_with_who_and_what_for(qtbot: Any, tmp_path: Path) -> None:
    scene = Scene(qtbot, tmp_path, "2026-03-09T09:00+01:00")
    scene.type_temperature("21")
    scene.session.bench.act_as("KT")
    laid = lay_out_irons(scene.session, 1)
    scene.session.take(scene.session.bench.mix(laid.batch_id))
    scene.go("2026-03-09T10:30+01:00")
    from rackboard.core.bench import Milestone

    standing = scene.standing("4 iron")
    scene.session.take(
        scene.session.bench.release(standing.joint.id, Milestone.HANDLING, "he waits")
    )
    tile = scene.tile("A1")
    assert (tile.word, tile.caption, tile.time) == (Word.WAIT, "", "released KT")
    assert tile.detail == "to go off the rack, 10:30"
    assert tile.next_glyph is None and tile.not_before is None
    (name,) = [said for row, said in tiles_of(scene) if row.club]
    assert name.endswith("do not move. released KT, to go off the rack, 10:30")
    from rackboard.core.temperature import Unit
    from rackboard.ui.board_presenter import BoardPresenter
    from rackboard.ui.wall_presenter import WallPresenter

    near = BoardPresenter(scene.session.board, scene.clock.now(), Unit.C)
    (on_wall,) = WallPresenter(near).view().tiles
    assert (on_wall.time, on_wall.mark) == ("released KT", None)
    assert "released KT" in on_wall.accessible
    scene.close()


def test_chips_are_named_like_tiles(qtbot: Any, tmp_path: Path) -> None:
    demo = DemoWindow(qtbot, tmp_path)
    rows = demo.window.board.chips.rows_model
    said = [rows.index(n).data(Qt.ItemDataRole.AccessibleTextRole) for n in range(rows.rowCount())]
    named = 0
    for standing in demo.session.board.standings:
        place = demo.session.board.snapshot.place_of(standing.club.id)
        if place is None or place.kind not in (PlaceKind.GRIP_BENCH, PlaceKind.PICK_UP):
            continue
        for text in said:
            if text.startswith(f"{place.name}, {standing.club.name}, job {standing.job.number}"):
                assert times_in(text)
                named += 1
    assert named > 0


def test_jobs_say_when_promised_and_if_at_risk(qtbot: Any, tmp_path: Path) -> None:
    demo = DemoWindow(qtbot, tmp_path)
    rows = demo.window.board.jobs.list.rows_model
    said = [rows.index(n).data(Qt.ItemDataRole.AccessibleTextRole) for n in range(rows.rowCount())]
    for job, text in zip(demo.session.board.jobs(), said, strict=True):
        assert text.startswith(f"job {job.job.number}, {job.customer.name}")
        if job.job.promised_us is not None and job.job.ready_us is None:
            assert "promised " in text
            assert ("at risk" in text or "missed" in text) is job.at_risk
        if job.job.ready_us is not None:
            assert "READY" in text


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize("size", SIZES)
def test_whatever_takes_the_focus_has_a_name(
    qtbot: Any, tmp_path: Path, size: tuple[int, int], theme: str
) -> None:
    demo = DemoWindow(qtbot, tmp_path, size, theme)
    seen, nameless = set(), []
    for dialog in dialogs(demo):
        seen.add(type(dialog).__name__)
        assert spoken_name(dialog)
        parts = list(focusable(dialog))
        assert parts, dialog
        nameless += [
            (type(dialog).__name__, type(part).__name__) for part in parts if not spoken_name(part)
        ]
    assert len(seen) >= 27, seen
    demo.window.new_job()
    QApplication.processEvents()
    nameless += [
        ("window", type(part).__name__)
        for part in focusable(demo.window) if not spoken_name(part) and _now(part)
    ]  # fmt: skip
    assert nameless == []


def _now(part: Any) -> bool:
    """Return whether it can be reached now; a page that isn't asked yet has no words yet."""
    return bool(part.isVisible())


@pytest.mark.parametrize("size", SIZES)
def test_a_live_change_of_theme_keeps_every_name(
    qtbot: Any, tmp_path: Path, size: tuple[int, int]
) -> None:
    demo = DemoWindow(qtbot, tmp_path, size, "dark")
    before = [name for _, name in tiles_of(demo)]
    named = {id(part): spoken_name(part) for part in focusable(demo.window)}
    demo.window.doing.find()
    QApplication.processEvents()
    (find,) = demo.dialogs()
    in_find = [spoken_name(part) for part in focusable(find)]
    demo.window.appearance.set_override("light")
    QApplication.processEvents()
    assert demo.window.appearance.theme.dark is False
    demo.window.refresh()
    assert [name for _, name in tiles_of(demo)] == before
    for part in focusable(demo.window):
        if id(part) in named and _now(part):
            assert spoken_name(part) == named[id(part)]
    assert [spoken_name(part) for part in focusable(find)] == in_find
    find.close()
    demo.select("A13")
    standing = demo.window.selected_standing()
    assert standing is not None and standing.hold is not None
    assert standing.hold.reason in HoldReason
    for tile, name in tiles_of(demo):
        check(tile, name, standing_at(demo, tile))


def test_names_have_no_marks_of_menus_or_line_breaks(qtbot: Any, tmp_path: Path) -> None:
    demo = DemoWindow(qtbot, tmp_path)
    for part in focusable(demo.window):
        assert not re.search(r"[\n&]", spoken_name(part)), spoken_name(part)


def test_a_part_without_a_name_is_found(qtbot: Any) -> None:
    """The walk can fail."""
    dialog = QDialog()
    qtbot.addWidget(dialog)
    QLineEdit(dialog)
    QPushButton("Close", dialog)
    assert [spoken_name(part) for part in focusable(dialog)] == ["", "Close"]
