"""Nothing that was acknowledged is lost by kill -9, whenever it comes."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))

import run as killing

pytestmark = [
    pytest.mark.kill,
    pytest.mark.skipif(sys.platform == "win32", reason="there is no SIGKILL"),
]


def test_twenty_kills_lose_nothing(tmp_path: Path) -> None:
    done = killing.kill(20, 7, tmp_path / "data")
    # A slow machine gets less done between two kills; more than one act each shows enough.
    assert done.transactions > done.kills, "the kills came too early to show anything"


def test_the_check_finds_what_is_missing(tmp_path: Path) -> None:
    folder = tmp_path / "data"
    killing.kill(2, 3, folder)
    known: killing.Known = {("setting", ("theme",)): {"key": "theme", "value": '"unseen"'}}
    known["event", (10_000_000,)] = {"id": 10_000_000, "recorded_us": 1}
    with pytest.raises(killing.LostError, match="event"):
        killing.check(folder, known)
