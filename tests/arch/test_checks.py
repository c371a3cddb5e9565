"""The checkers pass, as part of the tests."""

from __future__ import annotations

import os
from pathlib import Path

import rackboard
from helpers.project import PACKAGE, ROOT, run_python


def test_ruff() -> None:
    done = run_python("-m", "ruff", "check", "--no-cache", ".", cwd=ROOT)
    assert done.returncode == 0, done.stdout + done.stderr


def test_mypy_strict() -> None:
    # mypy refuses a PYTHONPATH that names its own site-packages
    done = run_python("-m", "mypy", cwd=ROOT, PYTHONPATH="")
    assert done.returncode == 0, done.stdout + done.stderr


def test_the_installed_package_is_tested() -> None:
    """What is tested is the wheel as people install it, not the source tree beside the tests."""
    in_tree = PACKAGE == ROOT / "rackboard"
    if os.environ.get("CI"):
        assert not in_tree, f"install the package without -e; tested was {rackboard.__file__}"
    assert (Path(rackboard.__file__).parent / "ui" / "fonts" / "OFL.txt").is_file()
