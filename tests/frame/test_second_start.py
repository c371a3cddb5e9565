"""The program started twice: the second start brings up the first window, also after a kill."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from helpers.display import LIMIT_S, virtual_display, xdotool

pytestmark = [
    pytest.mark.window,
    pytest.mark.skipif(not sys.platform.startswith("linux"), reason="the screen is an X server"),
]


@pytest.fixture
def display() -> Iterator[str]:
    with virtual_display() as number:
        yield number


@pytest.fixture
def starts(display: str, tmp_path: Path) -> Iterator[Starts]:
    made = Starts(display, tmp_path)
    yield made
    made.close()


class Starts:
    """Starts the board on one folder."""

    def __init__(self, display: str, folder: Path) -> None:
        self._environment = os.environ | {
            "DISPLAY": display, "PYTHONPATH": os.pathsep.join(p for p in sys.path if p),
        }  # fmt: skip
        self._environment.pop("QT_QPA_PLATFORM", None)
        self._folder = folder
        self.all: list[subprocess.Popen[str]] = []

    def start(self) -> subprocess.Popen[str]:
        process = subprocess.Popen(
            [sys.executable, "-m", "rackboard", "--data-dir", str(self._folder / "data")],
            env=self._environment, cwd=self._folder, stderr=subprocess.PIPE, text=True,
        )  # fmt: skip
        self.all.append(process)
        return process

    def close(self) -> None:
        for process in self.all:
            if process.poll() is None:
                process.kill()
            process.communicate(timeout=LIMIT_S)


def window_on(display: str) -> str:
    found = xdotool(display, "search", "--sync", "--onlyvisible", "--name", "^rackboard$")
    return found.splitlines()[0]


def test_a_second_start_raises_the_first_also_after_a_kill(starts: Starts, display: str) -> None:
    first = starts.start()
    window = window_on(display)
    second = starts.start()
    assert second.wait(LIMIT_S) == 0
    assert first.poll() is None
    assert window_on(display) == window

    first.kill()
    first.wait(LIMIT_S)
    third = starts.start()
    window = window_on(display)
    assert starts.start().wait(LIMIT_S) == 0
    xdotool(display, "windowfocus", "--sync", window)
    xdotool(display, "key", "--window", window, "ctrl+q", check=False)
    assert third.wait(LIMIT_S) == 0
