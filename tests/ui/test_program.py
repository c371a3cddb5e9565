"""The whole program, put together as it is started: restoring, the demo, a second start."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from pytestqt.qtbot import QtBot
from shiboken6 import isValid

from helpers.shop import FakeClock, at
from rackboard.core.bench import JointKind
from rackboard.core.errors import StoreError
from rackboard.services.bench import ClubEntry, JobEntry
from rackboard.store.backup import backups
from rackboard.ui import Options
from rackboard.ui.main import Program

BERLIN = ZoneInfo("Europe/Berlin")


@pytest.fixture
def clock() -> FakeClock:
    return FakeClock(at("Mon 10:00"))


@pytest.fixture
def program(qtbot: QtBot, tmp_path: Path, clock: FakeClock) -> Iterator[Program]:
    made = Program(Options(clock=clock, data_dir=str(tmp_path / "data")), BERLIN)
    made.window.show()
    made.window.start()
    yield made
    made.window.close()
    made.close()


def lay_out(program: Program, number: str) -> None:
    session = program.window.session
    rack = next(p for p in session.board.snapshot.places.values() if p.prefix == "A")
    club = ClubEntry("7 iron", JointKind.SOLID_HEAD, rack.id, int(number) % 10)
    session.take(session.bench.lay_out(JobEntry(number, "Invented", "", None, (club,), 1)).changes)


def numbers(program: Program) -> set[str]:
    return {job.number for job in program.window.session.board.snapshot.jobs.values()}


def back_up(program: Program, clock: FakeClock) -> Path:
    for _ in program.window.session.store.backup_slices(clock.now()):
        pass
    return max(backups(program.paths.backups))


def test_a_backup_is_restored_and_the_board_goes_on(
    program: Program, clock: FakeClock, qtbot: QtBot
) -> None:
    lay_out(program, "101")
    kept = back_up(program, clock)
    clock.advance(hours=1)
    lay_out(program, "102")
    old = program.window
    program.restore(kept)
    qtbot.waitUntil(lambda: not isValid(old))
    program.window.start()
    assert program.window is not old
    assert numbers(program) == {"101"}
    lay_out(program, "103")
    assert numbers(program) == {"101", "103"}
    # What was there is among the backups.
    assert len(list(backups(program.paths.backups))) == 2


def test_restoring_from_the_wall_comes_back_to_the_wall(
    program: Program, clock: FakeClock, qtbot: QtBot
) -> None:
    lay_out(program, "101")
    kept = back_up(program, clock)
    clock.advance(hours=1)
    program.window.toggle_wall()
    old = program.window
    program.restore(kept)
    qtbot.waitUntil(lambda: not isValid(old))
    program.window.start()
    assert program.window.on_wall


def test_a_damaged_backup_changes_nothing(
    program: Program, clock: FakeClock, qtbot: QtBot, tmp_path: Path
) -> None:
    from rackboard.ui.message import MessageDialog

    lay_out(program, "101")
    broken = tmp_path / "broken.db"
    broken.write_bytes(b"not a database at all" * 100)
    old = program.window
    program.restore(broken)
    qtbot.waitUntil(lambda: not isValid(old))
    program.window.start()
    assert numbers(program) == {"101"}
    assert program.window.findChild(MessageDialog) is not None


def test_a_second_board_on_the_same_folder_is_refused(
    program: Program, clock: FakeClock, tmp_path: Path
) -> None:
    assert program.window.started
    with pytest.raises(StoreError, match="Another board"):
        Program(Options(clock=clock, data_dir=str(tmp_path / "data")), BERLIN)


def test_the_fast_demo_is_not_stale_between_two_ticks(
    qtbot: QtBot, tmp_path: Path, clock: FakeClock
) -> None:
    program = Program(
        Options(clock=clock, demo=True, data_dir=str(tmp_path / "data"), speed=600.0), BERLIN
    )
    try:
        program.window.show()
        program.window.start()
        clock.advance(seconds=10)  # one round of the engine, 100 minutes of the demo
        now = program.clock.now()
        assert not program.window.session.board.is_stale(now)
        clock.advance(seconds=25)
        assert program.window.session.board.is_stale(program.clock.now())
        assert "backups" not in program.window.commands._actions
    finally:
        program.window.close()
        program.close()
