"""The program in a real window: opened on a virtual screen, seen, closed by its key."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

pytestmark = [
    pytest.mark.window,
    pytest.mark.skipif(not sys.platform.startswith("linux"), reason="the screen is an X server"),
]
LIMIT_S = 60


@pytest.fixture
def display() -> Iterator[str]:
    """A screen of its own, on a number that the server finds."""
    for tool in ("Xvfb", "xdotool"):
        if shutil.which(tool) is None:
            pytest.fail(f"{tool} is missing: install the packages of the README's test line")
    read, write = os.pipe()
    server = subprocess.Popen(
        ["Xvfb", "-displayfd", str(write), "-screen", "0", "1280x800x24", "-nolisten", "tcp"],
        pass_fds=[write], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
    )  # fmt: skip
    os.close(write)
    try:
        with os.fdopen(read) as pipe:
            number = pipe.readline().strip()
        assert number, "the X server didn't start"
        yield f":{number}"
    finally:
        server.terminate()
        server.wait(LIMIT_S)


def test_the_demo_opens_on_a_screen_and_quits_by_its_key(display: str, tmp_path: Path) -> None:
    environment = {**os.environ, "DISPLAY": display}
    environment.pop("QT_QPA_PLATFORM", None)
    program = subprocess.Popen(
        [sys.executable, "-m", "rackboard", "--demo", "--data-dir", str(tmp_path / "data")],
        env=environment, cwd=tmp_path, stderr=subprocess.PIPE, text=True,
    )  # fmt: skip
    try:
        def xdotool(*words: str, check: bool = True) -> str:
            done = subprocess.run(
                ["xdotool", *words], env=environment, capture_output=True, text=True,
                timeout=LIMIT_S, check=check,
            )  # fmt: skip
            return done.stdout.strip()

        found = xdotool("search", "--sync", "--onlyvisible", "--name", "Tallow Lane bench")
        window = found.splitlines()[0]
        xdotool("windowfocus", "--sync", window)
        # The window may be gone before the key comes up, which xdotool takes for an error.
        xdotool("key", "--window", window, "ctrl+q", check=False)
        _, said = program.communicate(timeout=LIMIT_S)
    finally:
        if program.poll() is None:
            program.kill()
            program.communicate()
    assert program.returncode == 0, said
    assert "Traceback" not in said
    assert (tmp_path / "data" / "demo" / "rackboard.db").stat().st_size > 0
