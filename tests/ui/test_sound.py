"""Sounds: distinct, small, played by what is there; a failure is said and beeps."""

from __future__ import annotations

import os
import sys
import wave
from array import array
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from pytestqt.qtbot import QtBot

from helpers.project import PACKAGE, ROOT, run_python
from rackboard.services.teller import Message
from rackboard.ui import sound
from rackboard.ui.sound import FILES, SoundCourier, scaled

LOUD = Message("disturbed:7", "Disturbed", "Answer it.", critical=True, sound="alarm")
PLAYER = """#!/bin/sh
echo "$0" "$@" >> "{log}"
for last; do :; done
cp "$last" "{log}.$(basename "$0").wav"
{ends}
"""


@pytest.fixture
def players(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Players:
    if os.name == "nt":
        pytest.skip("the players are shell scripts")
    return Players(tmp_path, monkeypatch)


class Players:
    """Recording players on a PATH of their own."""

    def __init__(self, folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        self.bin = folder / "bin"
        self.bin.mkdir()
        self.log = folder / "played"
        monkeypatch.setenv("PATH", f"{self.bin}{os.pathsep}/usr/bin{os.pathsep}/bin")
        real = sound.shutil.which
        monkeypatch.setattr(
            sound.shutil, "which",
            lambda name: real(name, path=str(self.bin)),  # none that this machine may have
        )  # fmt: skip

    def add(self, name: str, ends: str = "exit 0") -> None:
        path = self.bin / name
        path.write_text(PLAYER.format(log=self.log, ends=ends))
        path.chmod(0o755)

    @property
    def played(self) -> list[list[str]]:
        return [line.split() for line in self.log.read_text().splitlines()]

    def heard(self, name: str) -> bytes:
        return Path(f"{self.log}.{name}.wav").read_bytes()


_ears: list[Ear] = []


@pytest.fixture(autouse=True)
def _close_ears() -> Iterator[None]:
    yield
    while _ears:
        _ears.pop().courier.close()


class Ear:
    """Waits for what the courier says, and counts beeps."""

    def __init__(self, qtbot: QtBot, volume: int = 100, **options: Any) -> None:
        self.qtbot = qtbot
        self.beeps: list[int] = []
        self.volume = volume
        options.setdefault("platform", "linux")
        self.courier = SoundCourier(
            None, lambda: self.volume, lambda: self.beeps.append(1), **options
        )
        _ears.append(self)

    def told(self, message: Message = LOUD) -> str | None:
        said: list[str | None] = []
        self.courier.deliver(message, said.append)
        self.qtbot.waitUntil(lambda: bool(said), timeout=10_000)
        assert len(said) == 1
        return said[0]


def samples(data: bytes) -> array[int]:
    return array("h", data[44:])


def test_three_distinct_sounds_of_less_than_60_kb() -> None:
    folder = PACKAGE / "ui" / "sounds"
    assert sorted(p.name for p in folder.glob("*.wav")) == sorted(FILES.values())
    heard = set()
    for name in FILES.values():
        with wave.open(str(folder / name)) as file:
            assert (file.getnchannels(), file.getsampwidth()) == (1, 2)
            assert 0.2 < file.getnframes() / file.getframerate() < 1.0
            data = file.readframes(file.getnframes())
        assert max(array("h", data)) > 20_000
        # The quiet header of 44 bytes that the volume counts on.
        assert (folder / name).stat().st_size == len(data) + 44
        heard.add(data)
    assert len(heard) == 3
    assert sum(p.stat().st_size for p in folder.iterdir()) < 60_000


def test_the_sounds_are_what_the_script_makes(tmp_path: Path) -> None:
    code = (
        "import runpy, pathlib, sys\n"
        f"made = runpy.run_path({str(ROOT / 'assets' / 'sounds' / 'make_sounds.py')!r})\n"
        "made['main'].__globals__['FOLDER'] = pathlib.Path(sys.argv[1])\n"
        "made['main']()\n"
    )
    done = run_python("-c", code, str(tmp_path))
    assert done.returncode == 0, done.stderr
    for name in FILES.values():
        assert (tmp_path / name).read_bytes() == (PACKAGE / "ui" / "sounds" / name).read_bytes()


@pytest.mark.parametrize("kind", list(FILES))
def test_the_first_player_plays_the_file_asked_for(
    qtbot: QtBot, players: Players, kind: str
) -> None:
    players.add("paplay")
    players.add("aplay")
    ear = Ear(qtbot)
    assert ear.told(LOUD._replace(sound=kind)) is None
    ((program, path),) = players.played
    assert Path(program).name == "paplay"
    assert Path(path).name == FILES[kind]
    assert not ear.beeps


def test_a_player_that_fails_gives_way_to_the_next(qtbot: QtBot, players: Players) -> None:
    players.add("pw-play", "echo no server >&2; exit 1")
    players.add("aplay")
    ear = Ear(qtbot)
    assert ear.told() is None
    assert [Path(line[0]).name for line in players.played] == ["pw-play", "aplay"]
    assert players.played[1][1] == "-q"


def test_if_all_fail_it_is_said_and_beeps(qtbot: QtBot, players: Players) -> None:
    players.add("pw-play", "echo first; echo no server >&2; exit 1")
    ear = Ear(qtbot)
    assert ear.told() == "no server"
    assert ear.beeps == [1]
    # A message without a sound mends nothing.
    assert ear.told(LOUD._replace(sound="")) == "no server"
    assert ear.told(LOUD._replace(take_back=True)) == "no server"
    assert ear.beeps == [1]
    players.add("pw-play")
    assert ear.told() is None
    assert ear.told(LOUD._replace(sound="")) is None


def test_a_player_that_dies_without_a_word(qtbot: QtBot, players: Players) -> None:
    players.add("aplay", "exit 3")
    said = Ear(qtbot).told()
    assert said is not None
    assert said.endswith("aplay ended with 3")


def test_no_player_is_said_and_beeps(qtbot: QtBot, players: Players) -> None:
    ear = Ear(qtbot)
    assert ear.told() == "no player was found"
    assert ear.beeps == [1]


def test_a_player_that_cannot_be_started(qtbot: QtBot, players: Players) -> None:
    players.add("aplay")
    (players.bin / "aplay").write_text("#!/nowhere/sh\n")
    ear = Ear(qtbot)
    assert ear.told()
    assert ear.beeps == [1]


def test_a_player_that_hangs_is_ended(
    qtbot: QtBot, players: Players, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sound, "PATIENCE_MS", 200)
    players.add("aplay", "exec cat /dev/zero > /dev/null")
    said = Ear(qtbot).told()
    assert said is not None
    assert "doesn't come to an end" in said


def test_a_second_sound_takes_the_place_of_the_first(qtbot: QtBot, players: Players) -> None:
    players.add("aplay", "case $2 in *alarm*) exec tail -f /dev/null;; esac")
    ear = Ear(qtbot)
    first: list[str | None] = []
    ear.courier.deliver(LOUD, first.append)
    assert ear.told(LOUD._replace(sound="prompt")) is None
    assert first == [None]
    assert not ear.beeps


def test_deliver_returns_before_anything_has_played(qtbot: QtBot, players: Players) -> None:
    players.add("aplay", "exec tail -f /dev/null")
    said: list[str | None] = []
    ear = Ear(qtbot)
    ear.courier.deliver(LOUD, said.append)
    assert said == []
    ear.courier.close()
    assert said == [None]


def test_volume_makes_the_file_quieter(qtbot: QtBot, players: Players) -> None:
    players.add("aplay")
    full = (PACKAGE / "ui" / "sounds" / "alarm.wav").read_bytes()
    ear = Ear(qtbot, volume=50)
    assert ear.told() is None
    heard = players.heard("aplay")
    assert heard[:44] == full[:44]
    assert max(samples(heard)) == pytest.approx(max(samples(full)) / 4, abs=1)
    ear.volume = 0
    assert ear.told() is None
    assert len(players.played) == 1
    assert set(samples(scaled(full, 0))) == {0}


def test_macos_plays_with_its_own(qtbot: QtBot, players: Players) -> None:
    players.add("afplay")
    players.add("aplay")
    assert Ear(qtbot, platform="darwin").told() is None
    assert Path(players.played[0][0]).name == "afplay"


class Winsound:
    SND_FILENAME, SND_ASYNC, SND_NODEFAULT = 0x20000, 1, 2

    def __init__(self, error: str = "") -> None:
        self.error = error
        self.played: list[tuple[str, int]] = []

    def PlaySound(self, path: str, flags: int) -> None:  # noqa: N802 (its name)
        if self.error:
            raise RuntimeError(self.error)
        self.played.append((Path(path).name, flags))


def test_windows_plays_without_waiting(qtbot: QtBot) -> None:
    winsound = Winsound()
    assert Ear(qtbot, platform="win32", winsound=winsound).told() is None
    assert winsound.played == [("alarm.wav", 0x20003)]
    ear = Ear(qtbot, platform="win32", winsound=Winsound("Failed to play sound"))
    assert ear.told() == "Failed to play sound"
    assert ear.beeps == [1]


def test_the_module_is_there_where_it_should_be() -> None:
    if sys.platform == "win32":
        import winsound

        assert winsound.SND_ASYNC
