"""Scenes of a shop's week through the whole window: keys, taps and a clock that tests move.

The sheet is the model's own (handling 8 h, full cure 24 h at 25 °C, minimum 15 °C); the times
are the model's.
"""

from __future__ import annotations

import csv
from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu, QWidget

from helpers import oracle
from helpers.scene import CTRL, Scene
from helpers.session import BERLIN, place_of, zone_of
from helpers.shop import PLAIN
from rackboard.core.bench import JointKind, Milestone
from rackboard.core.cure.forecast import printed_time
from rackboard.core.epoxy import Range, Sheet
from rackboard.core.instants import DAY_US, HOUR_US, SECOND_US, Instant, parse_iso, to_datetime
from rackboard.core.words import Word
from rackboard.services.bench import ClubEntry, JobEntry
from rackboard.ui.correction import CorrectionDialog
from rackboard.ui.import_dialog import ImportDialog

WEEK = Path(__file__).parent.parent / "data" / "sea_surface_week.csv"
ENTER = Qt.Key.Key_Return


@pytest.fixture
def scene(qtbot: Any, tmp_path: Path) -> Iterator[Scene]:
    made = Scene(qtbot, tmp_path / "data", "2026-03-09T08:30+01:00")
    yield made
    made.window.stop()
    made.store.close()


def glue(
    scene: Scene, number: str, clubs: list[str], epoxy: int, slot: int,
    kind: JointKind = JointKind.SOLID_HEAD, promised: str | None = None,
) -> None:  # fmt: skip
    """Lay out, mix and rack now."""
    bench, session = scene.session.bench, scene.session
    rack = place_of(session).id
    laid = bench.lay_out(
        JobEntry(
            number, "D. Whitlow", "", None if promised is None else parse_iso(promised, "promise"),
            tuple(ClubEntry(name, kind, rack, slot + n) for n, name in enumerate(clubs)), epoxy,
        )
    )  # fmt: skip
    session.take(laid.changes)
    session.take(bench.mix(laid.batch_id))
    session.take(bench.rack_all(laid.batch_id))
    session.take(bench.look(laid.batch_id))


def typical(scene: Scene, name: str) -> int:
    epoxies = scene.session.board.snapshot.epoxies.values()
    return next(epoxy.id for epoxy in epoxies if epoxy.sheet.name == name)


def local(instant: Instant | None) -> datetime:
    assert instant is not None
    return to_datetime(instant).astimezone(BERLIN)


IRONS = [f"{n} iron" for n in range(3, 10)] + ["PW"]


def monday(scene: Scene) -> None:
    """A driver glued at half past eight with the quick one, eight irons at 15:40; all at 21 °C."""
    scene.type_temperature("21")
    glue(scene, "300", ["Driver"], typical(scene, "quick"), 14, JointKind.HOLLOW_HEAD)
    scene.go("2026-03-09T12:20+01:00")
    scene.type_temperature("21")
    scene.go("2026-03-09T15:40+01:00")
    scene.type_temperature("21")
    glue(scene, "301", IRONS, scene.add_epoxy(PLAIN), 0)
    scene.go("2026-03-09T16:02+01:00")
    assert scene.tile("A15").word is Word.BENCH
    assert {scene.tile(f"A{n}").word for n in range(1, 9)} == {Word.WET}
    scene.go("2026-03-09T18:10+01:00")
    assert {scene.tile(f"A{n}").word for n in range(1, 9)} == {Word.WAIT}


# S1: Tuesday, 07:55


def test_the_morning_after_a_cold_night(scene: Scene) -> None:
    monday(scene)
    promised = scene.standing("7 iron").not_before_us
    scene.close()
    scene.clock.set(parse_iso("2026-03-10T07:55+01:00", "scene"))
    scene.open()

    (question,) = scene.session.board.questions()
    ask = scene.strip.ask
    assert ask is not None and ask.question == "Lowest it got overnight?"
    assert ask.record == "room, Mon 18:00 to 07:55"
    assert not question.ahead
    for n in range(1, 9):
        tile = scene.tile(f"A{n}")
        assert (tile.word, tile.time) == (Word.WAIT, "low?")
    assert scene.tile("A15").word is Word.BENCH
    assert [row.good for row in scene.jobs] == ["low?", "low?"]

    scene.answer_night("13")
    assert scene.session.board.questions() == []
    assert scene.strip.ask is None
    standing = scene.standing("7 iron")
    assert standing.word is Word.WAIT and not standing.unknown
    assert standing.outcome is not None and standing.outcome.forecast.handling is not None
    late = standing.outcome.forecast.handling.late
    assert late is not None and standing.not_before_us == printed_time(late)
    # On Monday nobody knew the night, so it counted for nothing; now it counts for little.
    assert promised is not None and parse_iso("2026-03-10T16:00+01:00", "x") < late < promised
    for n in range(1, 9):
        tile = scene.tile(f"A{n}")
        assert (tile.word, tile.time) == (Word.WAIT, f"{local(standing.not_before_us):%H:%M}")
    assert scene.tile("A15").word is Word.BENCH
    scene.select("7 iron")
    view = scene._view().inspector
    assert view is not None
    names = [reason[0] for reason in view.reasons]
    assert names == ["the label", "this room", "with the margin"]
    assert view.reasons[2][2].startswith("was Wed 08:15 at glue-up; typed at the rack")
    told = [message.summary for message in scene.courier.messages if message.sound]
    assert told == ["Job 300 may come off the rack", "Last look: A1–A8, job 301"], "all on Monday"


def test_unanswered_it_stays_wait_all_day(scene: Scene) -> None:
    monday(scene)
    scene.close()
    scene.clock.set(parse_iso("2026-03-10T07:55+01:00", "scene"))
    scene.open()
    for at in ("08:05", "12:00", "15:55"):
        scene.go(f"2026-03-10T{at}+01:00")
        scene.type_temperature("21")
    scene.go("2026-03-10T17:00+01:00")
    for n in range(1, 9):
        tile = scene.tile(f"A{n}")
        assert (tile.word, tile.time) == (Word.WAIT, "low?")
    assert scene.tile("A15").word is Word.BENCH
    assert len([q for q in scene.session.board.questions() if not q.ahead]) == 1
    assert not [m for m in scene.courier.messages if "whole job" in m.summary or m.critical]


# S4: Friday, 16:00


def test_a_weekend_without_heating(scene: Scene) -> None:
    scene.go("2026-03-13T09:00+01:00")
    scene.type_temperature("21")
    epoxy = scene.add_epoxy(PLAIN)
    promised = "2026-03-16T10:00+01:00"
    glue(scene, "310", ["7 iron", "8 iron"], epoxy, 0, promised=promised)
    for at in ("12:55", "16:00"):
        scene.go(f"2026-03-13T{at}+01:00")
        scene.type_temperature("21")
    ask = scene.strip.ask
    assert ask is not None and ask.question == "Lowest it will get?"
    assert ask.record == "room, until Mon 08:00"
    scene.answer_night("8")
    assert scene.strip.ask is None
    (job,) = scene.jobs
    assert "late" in job.good or job.good == "no time"
    assert scene.session.board.jobs()[0].at_risk
    scene.go("2026-03-13T18:05+01:00")
    for day in (14, 15):
        for hour in range(24):
            scene.go(f"2026-03-{day}T{hour:02}:00+01:00")
            assert all(tile.word in (Word.WAIT, Word.BENCH) for tile in scene.tiles()), (day, hour)
    assert not [m for m in scene.courier.messages if "whole job" in m.summary]


def test_a_weekend_that_nobody_spoke_of(scene: Scene) -> None:
    """Unasked, unanswered: what was earned on Friday stays, and nothing more is earned."""
    scene.go("2026-03-13T09:00+01:00")
    scene.type_temperature("21")
    glue(scene, "311", ["7 iron"], scene.add_epoxy(PLAIN), 0, promised="2026-03-16T10:00+01:00")
    scene.go("2026-03-13T16:00+01:00")
    scene.type_temperature("21")
    assert scene.session.board.jobs()[0].at_risk
    scene.go("2026-03-13T18:00+01:00")
    word = scene.tile("A1").word
    for day in (14, 15):
        for hour in range(0, 24, 3):
            scene.go(f"2026-03-{day}T{hour:02}:00+01:00")
            assert scene.tile("A1").word is word
    assert word in (Word.WAIT, Word.BENCH)


# S10, first half: 01:10 typed for 13:10


def test_a_slip_of_twelve_hours(scene: Scene) -> None:
    scene.go("2026-03-09T13:12+01:00")
    scene.type_temperature("21")
    scene.press(Qt.Key.Key_N, CTRL)
    panel = scene.window._glue_up
    assert panel is not None and panel.isVisible()
    scene.qtbot.waitUntil(lambda: panel.isAncestorOf(scene.focus()))
    for _ in range(4):  # to the line-ups, the first one, laid out
        scene.press(ENTER)
    (batch,) = scene.session.board.snapshot.batches.values()
    panel.mix.field.setFocus()
    scene.type("01:10")
    assert panel.mix.row.asking, "asked at once"
    assert "13:10" in panel.mix.row.keys[0].text()
    batch = scene.session.board.snapshot.batches[batch.id]
    assert batch.mixed_us is None, "nothing is stored before the answer"
    scene.qtbot.mouseClick(panel.mix.row.keys[1], Qt.MouseButton.LeftButton)
    wrong = parse_iso("2026-03-09T01:10+01:00", "scene")
    assert scene.session.board.snapshot.batches[batch.id].mixed_us == wrong

    scene.press(Qt.Key.Key_Escape)
    scene.go("2026-03-09T13:40+01:00")
    scene.select("4 iron")
    scene.press(Qt.Key.Key_K, CTRL)
    dialog = scene.dialog(CorrectionDialog)
    dialog.mixed.setFocus()
    scene.type("13:10")
    right = parse_iso("2026-03-09T13:10+01:00", "scene")
    assert scene.session.board.snapshot.batches[batch.id].mixed_us == right
    former = scene.store.journal.former("batch", batch.id)
    assert [(line.column, line.old, line.new) for line in former] == [("mixed_us", wrong, right)]
    assert {j.glued_us for j in scene.session.board.snapshot.joints.values()} == {right}
    assert "mixed 13:10" in scene._view().inspector.lines[0]


# The program goes and comes


def shown(scene: Scene) -> list[object]:
    tiles = [(t.name, t.word, t.club, t.caption, t.time, t.detail) for t in scene.tiles()]
    return [tiles, scene.chips, scene.jobs, scene.strip]


def test_a_restart_shows_the_same(scene: Scene) -> None:
    monday(scene)
    scene.select("Driver")
    scene.press(Qt.Key.Key_F3)
    (iron,) = [s for s in scene.session.board.standings if s.club.name == "5 iron"]
    scene.session.take(scene.session.bench.disturb(iron.joint.id))
    before = shown(scene)
    assert [chip.word for chip in scene.chips] == [Word.BENCH]
    assert scene.tile("A3").word is Word.HOLD
    scene.restart()
    assert shown(scene) == before


def test_undo_by_key(scene: Scene) -> None:
    monday(scene)
    (driver,) = [tile.name for tile in scene.tiles() if tile.club == "Driver"]
    scene.select("Driver")
    scene.press(Qt.Key.Key_F4)  # past gel: a HOLD at once
    assert scene.tile(driver).word is Word.HOLD
    scene.press(Qt.Key.Key_Z, CTRL)
    assert scene.tile(driver).word is Word.BENCH
    scene.press(Qt.Key.Key_Z, CTRL | Qt.KeyboardModifier.ShiftModifier)
    assert scene.tile(driver).word is Word.HOLD
    scene.press(Qt.Key.Key_Z, CTRL)
    for _ in range(4):  # looked, racked, mixed, laid out
        scene.press(Qt.Key.Key_Z, CTRL)
    assert {tile.club for tile in scene.tiles()} == {"Driver"}
    for _ in range(4):
        scene.press(Qt.Key.Key_Y, CTRL)
    assert scene.tile("A3").word is Word.WAIT


def test_a_board_that_is_not_updating_says_so(scene: Scene) -> None:
    monday(scene)
    scene.window._engine_timer.stop()
    scene.clock.advance(seconds=30)
    scene.window._clock_timer.timeout.emit()
    assert scene.tile("A1").word is Word.WAIT
    scene.clock.advance(seconds=1)
    scene.window._clock_timer.timeout.emit()
    assert {tile.word for tile in scene.tiles()} == {Word.STALE}
    assert scene.tile("A1").club == "3 iron"
    scene.window._engine_timer.timeout.emit()
    scene.window._clock_timer.timeout.emit()
    assert scene.tile("A1").word is Word.WAIT


# Every command by key


def commands(menu: QMenu) -> Iterator[QAction]:
    for action in menu.actions():
        below = action.menu()
        if isinstance(below, QMenu):
            yield from commands(below)
        elif not action.isSeparator():
            yield action


def test_every_command_stands_in_a_menu_with_a_key_of_its_own(scene: Scene) -> None:
    bar = scene.window.menuBar()
    titles = [action.text() for action in bar.actions()]
    assert titles == ["&File", "&Edit", "&View", "&Club", "&Help"]
    found = [c for top in bar.actions() for c in commands(top.menu())]  # type: ignore[arg-type]
    assert set(found) == set(scene.window.commands._actions.values())
    keys = [key.toString() for command in found for key in command.shortcuts()]
    assert all(command.shortcuts() for command in found)
    assert len(set(keys)) == len(keys)
    bare = [key for key in keys if len(key) == 1]
    assert not bare, "a scanner would press them"


def test_every_command_answers_to_its_key(scene: Scene) -> None:
    monday(scene)
    scene.window.board.rack.setFocus()
    for name, command in scene.window.commands._actions.items():
        command.setEnabled(True)
        command.triggered.disconnect()
        pressed: list[str] = []
        command.triggered.connect(lambda _=False, name=name, to=pressed: to.append(name))
        for key in command.shortcuts():
            pressed.clear()
            stroke = key[0]
            scene.press(stroke.key(), stroke.keyboardModifiers())
            assert pressed == [name], key.toString()


def test_tab_comes_everywhere_and_back(scene: Scene) -> None:
    monday(scene)
    scene.close()
    scene.clock.set(parse_iso("2026-03-10T07:55+01:00", "scene"))
    scene.open()
    board = scene.window.board
    board.rack.setFocus()
    for key in (Qt.Key.Key_Tab, Qt.Key.Key_Backtab):
        there = round_trip(scene, key)
        for wanted in (board.box, board.chips, board.jobs.list, board.strip.night):
            assert wanted in there


def round_trip(scene: Scene, key: Qt.Key) -> list[QWidget]:
    """Press Tab until the rack has the focus again; return where it has been."""
    seen = []
    for _ in range(40):
        seen.append(scene.focus())
        scene.press(key)
        if scene.focus() is scene.window.board.rack:
            return seen
    raise AssertionError("it never comes back")


# A real week, through the dialog

GAP = (parse_iso("2016-07-08T01:30Z", "gap"), parse_iso("2016-07-08T13:30Z", "gap"))
MIXED = parse_iso("2016-07-07T15:00Z", "mixed")
LOW_C = 14.0
WARM_WATER = replace(
    PLAIN, name="invented, minimum 10", handling_time_h=Range(7, 9),
    full_cure_time_h=Range(22, 26), minimum_cure_temperature_c=10.0,
)  # fmt: skip


def readings() -> list[tuple[Instant, float]]:
    with WEEK.open(encoding="utf-8", newline="") as file:
        rows = list(csv.reader(file))[1:]
    return [(parse_iso(at, "week"), float(c)) for at, c in rows]


def oracle_times(sheet: Sheet, low_c: float) -> dict[str, float | None]:
    """Return the milestones by scipy [s after mixing], the gap bridged, by the rules alone."""
    spans = []

    def add(a: Instant, b: Instant, *lines: tuple[float, float]) -> None:
        kelvin = [(x + 273.15, y + 273.15) for x, y in lines]
        spans.append(oracle.Span((a - MIXED) / 1e6, (b - MIXED) / 1e6, *kelvin, False))

    points = [point for point in readings() if point[0] >= MIXED]
    for (a, c0), (b, c1) in pairwise(points):
        if b - a <= 2 * HOUR_US:
            add(a, b, (c0, c1), (c0 - 1, c1 - 1), (c0 + 1, c1 + 1))
            continue
        assert (a, b) == GAP
        quarter, warm, cold = (b - a) // 4, max(c0, c1) + 3, low_c - 1
        for t0, t1, line in (
            (a, a + quarter, (c0, low_c)),
            (a + quarter, b - quarter, (low_c, low_c)),
            (b - quarter, b, (low_c, c1)),
        ):
            add(t0, t1, line, (cold, cold), (warm, warm))
    end, last = points[-1]
    add(end, MIXED + 61 * DAY_US, *[(last + d, last + d) for d in (0, -1, 1)])
    first = points[0][1] + 273.15
    return oracle.milestones(sheet, spans, lag_s=1320, parts_k=(first, first - 1, first + 1))


def import_week(scene: Scene) -> None:
    """Ctrl+I, the file, Import, Close."""
    scene.press(Qt.Key.Key_I, CTRL)
    dialog = scene.dialog(ImportDialog)
    dialog.open_file(WEEK)
    scene.qtbot.waitUntil(lambda: not dialog.reading, timeout=10_000)
    scene.qtbot.mouseClick(dialog.importing, Qt.MouseButton.LeftButton)
    assert dialog.imported is not None
    scene.qtbot.mouseClick(dialog.closing, Qt.MouseButton.LeftButton)
    dialog.deleteLater()
    scene.qtbot.waitUntil(lambda: scene.window.findChild(ImportDialog) is None)
    scene.back()


@pytest.fixture
def week(qtbot: Any, tmp_path: Path) -> Iterator[Scene]:
    made = Scene(qtbot, tmp_path / "data", "2016-07-07T17:00+02:00")
    glue(made, "320", ["7 iron"], made.add_epoxy(WARM_WATER), 0)
    yield made
    made.window.stop()
    made.store.close()


def test_safe_to_hit_at_the_time_that_scipy_finds(week: Scene) -> None:
    week.go("2016-07-08T17:30+02:00")
    assert week.tile("A1").word is Word.WAIT, "no record, no permission"
    import_week(week)
    ask = week.strip.ask
    assert ask is not None
    assert ask.record == "room, 03:30 to 15:30"
    assert week.tile("A1").time == "low?"
    week.answer_night(f"{LOW_C:g}")
    assert week.strip.ask is None
    assert week.tile("A1").time != "low?"

    late_s = oracle_times(WARM_WATER, LOW_C)["full late"]
    assert late_s is not None
    late = MIXED + round(late_s * SECOND_US)
    printed = printed_time(late)
    reaches = next(at for at, _ in readings() if at >= late)
    now = parse_iso("2016-07-08T18:00+02:00", "scene")
    while now < min(printed, reaches):
        week.go(now)
        import_week(week)
        assert week.tile("A1").word is not Word.CURED, "not before"
        now += 4 * HOUR_US
    week.go(printed - SECOND_US)
    import_week(week)
    assert week.tile("A1").word is Word.BENCH, "not a second before"
    assert not [m for m in week.courier.messages if "whole job" in m.summary]
    week.go(max(printed, reaches))
    import_week(week)
    tile = week.tile("A1")
    assert tile.word is Word.CURED
    grant = week.session.board.snapshot.grants[week.standing("7 iron").joint.id]
    assert grant[Milestone.FULL_CURE].printed_us == printed
    assert abs(grant[Milestone.FULL_CURE].late_us - late) <= max(30 * SECOND_US, late_s * 1_000)
    assert week.session.alerts is not None
    (safe,) = [alert for alert in week.session.alerts.open if alert.kind == "job safe"]
    assert safe.due_us == printed
    assert safe.told_us is None, "on a Saturday nothing is said; Monday morning tells it"


def test_with_the_gap_open_it_never_becomes_safe(week: Scene) -> None:
    week.go("2016-07-13T12:00+02:00")
    import_week(week)
    zone = zone_of(week.session)
    assert len(week.store.record.readings(zone, 0, 1 << 62)) == 314
    assert week.strip.ask is not None
    assert (week.tile("A1").word, week.tile("A1").time) == (Word.WAIT, "low?")
    week.clock.advance(minutes=10)
    week.session.tick()
    assert week.tile("A1").word is Word.WAIT


def test_a_joint_that_is_not_gelled_is_asked_about_without_a_hold(scene: Scene) -> None:
    from rackboard.ui.hold_dialog import HoldDialog

    monday(scene)
    scene.select("5 iron")
    scene.press(Qt.Key.Key_F4)
    assert scene.tile("A3").word is Word.WAIT
    assert scene.window.findChild(HoldDialog) is not None


def test_the_wall_shows_the_same_and_is_left_by_escape(scene: Scene) -> None:
    monday(scene)
    scene.press(Qt.Key.Key_F11)
    assert scene.window.on_wall
    wall = scene.window._wall
    assert wall is not None
    assert "WAIT" in wall.accessibleDescription()
    scene.press(Qt.Key.Key_Escape)
    assert not scene.window.on_wall


def test_find_brings_the_ring_to_a_club(scene: Scene) -> None:
    from rackboard.ui.find_dialog import FindDialog

    monday(scene)
    scene.press(Qt.Key.Key_F, CTRL)
    dialog = scene.window.findChild(FindDialog)
    assert dialog is not None
    dialog.club_chosen.emit(
        next(s.club.id for s in scene.session.board.standings if s.club.name == "Driver")
    )
    standing = scene.window.selected_standing()
    assert standing is not None
    assert standing.club.name == "Driver"
