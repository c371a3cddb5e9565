"""What a stale board, a nameless repair, a corrected joint and a sheet of paper say."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from helpers.scene import Scene
from helpers.session import place_of
from helpers.shop import PLAIN
from rackboard.core.bench import JointKind, Milestone
from rackboard.core.instants import MINUTE_US, SECOND_US
from rackboard.services.bench import ClubEntry, JobEntry
from rackboard.ui.board_presenter import BoardPresenter
from rackboard.ui.board_view import HappeningKind, ReadyBox
from rackboard.ui.inspector_presenter import InspectorPresenter
from rackboard.ui.joint_sheet import joint_sheet


@pytest.fixture
def scene(qtbot: Any, tmp_path: Path) -> Iterator[Scene]:
    made = Scene(qtbot, tmp_path / "data", "2026-03-09T08:30+01:00")
    made.type_temperature("21")
    yield made
    made.window.stop()
    made.store.close()


def glue(scene: Scene, customer: str = "D. Whitlow") -> None:
    bench, session = scene.session.bench, scene.session
    club = ClubEntry("7 iron", JointKind.SOLID_HEAD, place_of(session).id, 0)
    laid = bench.lay_out(
        JobEntry("310", customer, "", None, (club,), scene.add_epoxy(PLAIN))
    )
    session.take(laid.changes)
    for act in (bench.mix, bench.rack_all):
        session.take(act(laid.batch_id))


def test_a_board_that_is_not_updating_claims_nothing(scene: Scene) -> None:
    glue(scene)
    scene.clock.advance(seconds=31)
    scene.window.refresh()
    assert scene.strip.next_due.title == "Not updating since 08:30"
    due = [h for h in scene._view().happenings if h.kind is HappeningKind.DUE]
    assert [line.title for line in due] == ["Not updating since 08:30"]
    (row,) = scene.jobs
    assert row.good == "–"
    assert row.ready is ReadyBox.NOT_YET


def test_a_repair_without_a_name_is_not_called_erased(scene: Scene) -> None:
    glue(scene, customer="")
    scene.select("7 iron")
    assert "no name given" in scene._view().inspector.lines[0]
    customer = next(iter(scene.session.board.snapshot.customers))
    scene.session.take(scene.session.bench.erase_customer(customer))
    assert "customer erased" in scene._view().inspector.lines[0]


def test_what_was_said_at_glue_up_is_of_the_same_permission(scene: Scene) -> None:
    glue(scene)
    standing = scene.standing("7 iron")
    board = scene.session.board
    handling = board.foretold(standing, Milestone.HANDLING)
    full = board.foretold(standing, Milestone.FULL_CURE)
    assert handling is not None
    assert full is not None
    assert handling < full
    scene.go("2026-03-09T11:00+01:00")
    scene.type_temperature("17")
    presenter = BoardPresenter(board, scene.clock.now(), scene.session.unit)
    times = InspectorPresenter(presenter)._times
    sheet = joint_sheet(scene.session, scene.standing("7 iron"))
    whys = [" ".join(str(part) for part in lines[2]) for _, lines in sheet.reasons]
    assert len(whys) == 2
    assert f"{times.clock(handling)} at glue-up" in whys[0]
    assert f"{times.clock(full)} at glue-up" in whys[1]


def test_a_corrected_joint_is_one_club(scene: Scene) -> None:
    glue(scene)
    scene.clock.advance(minutes=20)
    batch = scene.standing("7 iron").batch
    assert batch.mixed_us is not None
    times = {"was_us": batch.mixed_us, "is_us": batch.mixed_us - 10 * MINUTE_US}
    with scene.store.write("correct", scene.clock.now(), correction=True) as act:
        act.add_event("corrected", "joint", scene.standing("7 iron").joint.id)
        act.add_event("corrected", "batch", batch.id, times)
    scene.go(scene.clock.now() + SECOND_US)
    titles = [h.title for h in scene._view().happenings]
    assert "Job 310, 7 iron: corrected" in titles
    assert any("mixed 08:20, was 08:30" in title for title in titles)


def test_a_head_that_was_re_aimed_is_in_the_list(scene: Scene) -> None:
    glue(scene)
    scene.clock.advance(minutes=5)
    scene.session.take(scene.session.bench.re_aim(scene.standing("7 iron").joint.id))
    scene.window.refresh()
    titles = [h.title for h in scene._view().happenings]
    assert "Job 310, 7 iron: re-aimed while it was wet" in titles
