"""The project's own files, for tests that read or run them."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import rackboard

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = Path(rackboard.__file__).resolve().parent


def package_files(*folders: str) -> Iterator[Path]:
    """Yield the Python files of the package, or of these folders of it, in order."""
    for folder in folders or ("",):
        yield from sorted((PACKAGE / folder).rglob("*.py"))


def run_python(
    *arguments: str, cwd: Path | None = None, **variables: str
) -> subprocess.CompletedProcess[str]:
    """Run this Python in another process that imports the same rackboard."""
    environment = os.environ | {"PYTHONPATH": os.pathsep.join(p for p in sys.path if p)}
    return subprocess.run(
        [sys.executable, *arguments],
        env=environment | variables,
        cwd=cwd,
        capture_output=True,
        text=True,
        check=False,
        timeout=300,
        stdin=subprocess.DEVNULL,
    )
