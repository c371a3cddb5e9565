"""A screen of its own for tests of the real window: an X server without a monitor."""

from __future__ import annotations

import contextlib
import os
import shutil
import subprocess
from collections.abc import Iterator

import pytest

LIMIT_S = 60


@contextlib.contextmanager
def virtual_display(*tools: str) -> Iterator[str]:
    """Run Xvfb on a number that it finds; yield the display. `tools` must be installed too."""
    for tool in ("Xvfb", "xdotool", *tools):
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


def xdotool(display: str, *words: str, check: bool = True) -> str:
    """Do something on a display; return what xdotool says."""
    done = subprocess.run(
        ["xdotool", *words], env=os.environ | {"DISPLAY": display}, check=check,
        capture_output=True, text=True, timeout=LIMIT_S,
    )  # fmt: skip
    return done.stdout.strip()
