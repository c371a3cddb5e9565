"""No test reaches the real home, and the checks of conftest really fail a test."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import platformdirs
import pytest

from helpers.project import ROOT, run_python

FOLDERS = (
    platformdirs.user_data_path,
    platformdirs.user_config_path,
    platformdirs.user_cache_path,
    platformdirs.user_log_path,
    platformdirs.user_state_path,
    platformdirs.user_runtime_path,
)


@pytest.mark.skipif(sys.platform == "win32", reason="Windows is asked through its registry")
@pytest.mark.parametrize("folder", FOLDERS, ids=lambda f: f.__name__)
def test_platformdirs_stays_in_the_test_home(folder, test_home: Path) -> None:
    assert folder("rackboard").is_relative_to(test_home)
    assert Path.home() == test_home


def test_qt_draws_offscreen() -> None:
    assert os.environ["QT_QPA_PLATFORM"] == "offscreen"


CASES = {
    "a warning in the log": "import logging\ndef test_it(): logging.getLogger('x').warning('oh')\n",
    "an announced record that is absent": (
        "import pytest\n@pytest.mark.expects_log('never')\ndef test_it(): pass\n"
    ),
    "a Python warning": "import warnings\ndef test_it(): warnings.warn('old')\n",
    "a message of Qt": (
        "from PySide6.QtCore import qWarning\ndef test_it(qapp): qWarning('strange')\n"
    ),
    "an unknown marker": "import pytest\n@pytest.mark.unheard\ndef test_it(): pass\n",
}


@pytest.mark.parametrize("case", CASES)
def test_it_fails_the_test(case: str, tmp_path: Path) -> None:
    assert run_inner(tmp_path, CASES[case]) == 1 + (case == "an unknown marker")


def test_the_one_line_of_offscreen_windows_is_ignored(tmp_path: Path) -> None:
    line = "This plugin does not support propagateSizeHints()"
    text = f"from PySide6.QtCore import qWarning\ndef test_it(qapp): qWarning('{line}')\n"
    assert run_inner(tmp_path, text) == 0


def run_inner(folder: Path, text: str) -> int:
    """Run one test file under this project's own configuration; return pytest's exit code."""
    tests = folder / "tests"
    tests.mkdir()
    (tests / "test_inner.py").write_text(text)
    (tests / "conftest.py").write_text((ROOT / "tests" / "conftest.py").read_text("utf-8"))
    (folder / "pyproject.toml").write_text((ROOT / "pyproject.toml").read_text("utf-8"))
    done = run_python("-m", "pytest", "-p", "no:cacheprovider", "-q", cwd=folder)
    return done.returncode
