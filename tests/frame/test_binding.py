"""The Qt binding doesn't read our sources while the program starts."""

from __future__ import annotations

import os
import subprocess
import sys

from helpers.project import ROOT

CODE = """
import sys, linecache
if {spare}:
    from rackboard.ui.binding import spare_sources
    spare_sources()
import PySide6.QtCore
import rackboard.ui.theme, rackboard.services.board
read = [name for name in linecache.cache if "rackboard" in name.replace(chr(92), "/")]
print(len(read))
"""


def sources_read(spare: bool) -> int:
    done = subprocess.run(
        [sys.executable, "-c", CODE.format(spare=spare)], capture_output=True, text=True,
        check=True, env=os.environ | {"PYTHONPATH": str(ROOT), "QT_QPA_PLATFORM": "offscreen"},
    )  # fmt: skip
    return int(done.stdout)


def test_no_source_is_read() -> None:
    assert sources_read(spare=True) == 0


def test_it_may_be_asked_twice() -> None:
    from rackboard.ui.binding import spare_sources

    spare_sources()
    search = sys.modules.get("shibokensupport.feature")
    once = getattr(search, "_mod_uses_pyside", None)
    spare_sources()
    assert getattr(search, "_mod_uses_pyside", None) is once
