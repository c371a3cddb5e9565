"""One board a folder: a second start brings the first window up, also after a kill."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from helpers.project import run_python
from rackboard.store.paths import Paths
from rackboard.ui import instance
from rackboard.ui.instance import Instance, call_first, socket_name

_CALL = (
    "import sys\n"
    "from pathlib import Path\n"
    "from PySide6.QtCore import QCoreApplication\n"
    "from rackboard.store.paths import Paths\n"
    "from rackboard.ui.instance import call_first\n"
    "app = QCoreApplication([])\n"
    "print('calling', flush=True)\n"
    "sys.exit(0 if call_first(Paths.below(Path(sys.argv[1]))) else 3)\n"
)
_HOLD = (
    "import sys\n"
    "from pathlib import Path\n"
    "from PySide6.QtCore import QCoreApplication, QTimer\n"
    "from rackboard.store.paths import Paths\n"
    "from rackboard.ui.instance import Instance\n"
    "app = QCoreApplication([])\n"
    "paths = Paths.below(Path(sys.argv[1]))\n"
    "paths.prepare()\n"
    "first = Instance(paths)\n"
    "first.asked.connect(lambda: print('asked', flush=True))\n"
    "print(first.trouble, flush=True)\n"
    "app.exec()\n"
)


@pytest.fixture
def paths(tmp_path: Path) -> Paths:
    made = Paths.below(tmp_path / "data")
    made.prepare()
    return made


@pytest.fixture
def holder(paths: Paths) -> Iterator[subprocess.Popen[str]]:
    """Another process that is the first."""
    environment = os.environ | {"PYTHONPATH": os.pathsep.join(p for p in sys.path if p)}
    process = subprocess.Popen(
        [sys.executable, "-c", _HOLD, str(paths.data)], env=environment,
        stdout=subprocess.PIPE, text=True,
    )  # fmt: skip
    assert process.stdout is not None
    assert process.stdout.readline() == "None\n"
    yield process
    process.kill()
    process.wait(30)
    process.stdout.close()


def test_a_second_start_raises_the_first(
    paths: Paths, holder: subprocess.Popen[str]
) -> None:
    assert run_python("-c", _CALL, str(paths.data)).returncode == 0
    assert holder.stdout is not None
    assert holder.stdout.readline() == "asked\n"


def test_after_a_kill_the_next_one_is_the_first(
    qtbot: QtBot, paths: Paths, holder: subprocess.Popen[str]
) -> None:
    holder.kill()
    holder.wait(30)
    assert not call_first(paths, 100)
    first = Instance(paths)
    assert first.trouble is None
    caller = subprocess.Popen(
        [sys.executable, "-c", _CALL, str(paths.data)],
        env=os.environ | {"PYTHONPATH": os.pathsep.join(p for p in sys.path if p)},
    )
    with qtbot.waitSignal(first.asked, timeout=30_000):
        pass
    qtbot.waitUntil(lambda: caller.poll() is not None, timeout=30_000)
    assert caller.returncode == 0
    first.close()


def test_nobody_is_there(qtbot: QtBot, paths: Paths) -> None:
    assert not call_first(paths, 100)
    first = Instance(paths)
    first.close()
    assert not call_first(paths, 100)


def test_a_first_that_is_still_starting_is_waited_for(qtbot: QtBot, paths: Paths) -> None:
    caller = subprocess.Popen(
        [sys.executable, "-c", _CALL.replace("[1]))", "[1])), 30_000"), str(paths.data)],
        env=os.environ | {"PYTHONPATH": os.pathsep.join(p for p in sys.path if p)},
        stdout=subprocess.PIPE, text=True,
    )  # fmt: skip
    assert caller.stdout is not None
    assert caller.stdout.readline() == "calling\n"
    first = Instance(paths)
    with qtbot.waitSignal(first.asked, timeout=30_000):
        pass
    qtbot.waitUntil(lambda: caller.poll() is not None, timeout=30_000)
    assert caller.returncode == 0
    caller.stdout.close()
    first.close()


def test_each_folder_has_its_own(qtbot: QtBot, paths: Paths, tmp_path: Path) -> None:
    other = Paths.below(tmp_path / "other")
    other.prepare()
    first = Instance(paths)
    assert not call_first(other, 100)
    first.close()


@pytest.mark.skipif(sys.platform == "win32", reason="pipes have no folders there")
def test_it_lies_in_the_runtime_folder_or_has_a_short_name(tmp_path: Path) -> None:
    near = Paths.below(Path("/srv/rackboard"))
    assert socket_name(near) == "/srv/rackboard/runtime/board"
    far = Paths.below(tmp_path / ("deep" * 30))
    assert len(socket_name(far)) < 100
    assert socket_name(far) != socket_name(Paths.below(tmp_path / ("deeper" * 30)))


def test_a_long_path_works_too(qtbot: QtBot, tmp_path: Path) -> None:
    far = Paths.below(tmp_path / ("deep" * 30))
    far.prepare()
    first = Instance(far)
    assert first.trouble is None
    caller = subprocess.Popen(
        [sys.executable, "-c", _CALL, str(far.data)],
        env=os.environ | {"PYTHONPATH": os.pathsep.join(p for p in sys.path if p)},
    )
    with qtbot.waitSignal(first.asked, timeout=30_000):
        pass
    qtbot.waitUntil(lambda: caller.poll() is not None, timeout=30_000)
    assert caller.returncode == 0
    first.close()


def test_a_folder_that_cannot_hold_it_is_said(
    qtbot: QtBot, paths: Paths, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(instance, "socket_name", lambda paths: "/nowhere/at/all/board")
    assert Instance(paths).trouble
