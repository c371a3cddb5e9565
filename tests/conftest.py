"""Every test runs without a screen, away from the real home, and with nothing unexpected logged."""

from __future__ import annotations

import os

# Before anything can import Qt: without a display it would abort the whole run.
os.environ["QT_QPA_PLATFORM"] = "offscreen"

import atexit
import logging
import re
import shutil
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import settings

_HOME = Path(tempfile.mkdtemp(prefix="rackboard-tests-"))
atexit.register(shutil.rmtree, _HOME, ignore_errors=True)
_FOLDERS = {
    "HOME": "",
    "USERPROFILE": "",
    "APPDATA": "AppData/Roaming",
    "LOCALAPPDATA": "AppData/Local",
    "XDG_DATA_HOME": ".local/share",
    "XDG_CONFIG_HOME": ".config",
    "XDG_STATE_HOME": ".local/state",
    "XDG_CACHE_HOME": ".cache",
    "XDG_RUNTIME_DIR": "run",
}
for _variable, _folder in _FOLDERS.items():
    _path = _HOME / _folder
    _path.mkdir(mode=0o700, parents=True, exist_ok=True)
    os.environ[_variable] = str(_path)
# Nobody's desktop gets a notice from a test.
os.environ["DBUS_SESSION_BUS_ADDRESS"] = f"unix:path={_HOME}/no-bus"

settings.register_profile("ci", derandomize=True, deadline=None, database=None)
settings.load_profile("ci")


@pytest.fixture(scope="session")
def test_home() -> Path:
    """The folder that stands for the home of whoever runs the tests."""
    return _HOME


class _Records(logging.Handler):
    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.records: list[logging.LogRecord] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.records.append(record)


@pytest.fixture(autouse=True)
def _no_unexpected_log(request: pytest.FixtureRequest) -> Iterator[None]:
    """Fail a test that logs a warning it didn't announce, or doesn't log one it announced."""
    patterns = [mark.args[0] for mark in request.node.iter_markers("expects_log")]
    handler = _Records()
    root = logging.getLogger()
    root.addHandler(handler)
    try:
        yield
    finally:
        root.removeHandler(handler)
    lines = [f"{r.levelname} {r.name}: {r.getMessage()}" for r in handler.records]
    surprises = [x for x in lines if not any(re.search(pattern, x) for pattern in patterns)]
    absent = [p for p in patterns if not any(re.search(p, line) for line in lines)]
    if surprises:
        pytest.fail("unexpected log records:\n" + "\n".join(surprises), pytrace=False)
    if absent:
        pytest.fail(f"announced but not logged: {absent}", pytrace=False)
