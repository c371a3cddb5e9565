"""The log rotates, opens late, and a crash of the process leaves its own report."""

from __future__ import annotations

import logging
import stat
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from helpers.project import run_python
from rackboard import logs


@pytest.fixture
def log(tmp_path: Path) -> Iterator[logs.Log]:
    running = logs.Log(tmp_path / "logs")
    yield running
    running.close()


def test_the_file_is_made_with_the_first_record(log: logs.Log) -> None:
    assert not log.files.log.exists()
    logging.getLogger("rackboard.test").info("batch %d mixed", 7)
    assert "INFO rackboard.test: batch 7 mixed" in log.files.log.read_text("utf-8")


def test_it_rotates_and_keeps_few(log: logs.Log, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(logs, "MAX_BYTES", 1000)
    logger = logging.getLogger("rackboard.test")
    for number in range(200):
        logger.info("record %d %s", number, "x" * 50)
    names = sorted(p.name for p in log.files.log.parent.glob("rackboard.log*"))
    assert names == ["rackboard.log", *(f"rackboard.log.{n}" for n in range(1, 5))]
    assert all((log.files.log.parent / name).stat().st_size <= 1000 for name in names)
    assert "record 199" in log.files.log.read_text("utf-8")


def test_a_record_that_cannot_be_written_disturbs_nobody(
    log: logs.Log, capsys: pytest.CaptureFixture[str]
) -> None:
    log.files.log.mkdir()  # nothing can be written to a folder
    logging.getLogger("rackboard.test").info("seven")
    assert "seven" in capsys.readouterr().err


def test_closing_gives_the_root_logger_back(tmp_path: Path) -> None:
    root = logging.getLogger()
    before = (root.level, list(root.handlers))
    logs.Log(tmp_path).close()
    assert (root.level, list(root.handlers)) == before


@pytest.mark.skipif(sys.platform == "win32", reason="folders have no such modes there")
def test_the_folder_is_its_owners_alone(log: logs.Log) -> None:
    assert stat.S_IMODE(log.files.log.parent.stat().st_mode) == 0o700


def test_a_crash_is_written_and_found_at_the_next_start(tmp_path: Path) -> None:
    code = (
        "import sys, pathlib, faulthandler; sys.stderr = None\n"
        "from rackboard.logs import Log\n"
        "log = Log(pathlib.Path(sys.argv[1]))\n"
        "import ctypes; ctypes.string_at(0)\n"
    )
    assert run_python("-c", code, str(tmp_path)).returncode != 0
    again = logs.Log(tmp_path)
    again.close()
    assert again.files.crashed_before
    assert "Segmentation fault" in (tmp_path / "previous-crash.txt").read_text() or (
        sys.platform == "win32"
    )
    third = logs.Log(tmp_path)
    third.close()
    assert not third.files.crashed_before
