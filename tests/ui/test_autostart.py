"""Start at login: off until asked for, made and taken away where the system looks."""

from __future__ import annotations

import configparser
import plistlib
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from rackboard.core.errors import StoreError
from rackboard.ui import autostart
from rackboard.ui.autostart import DesktopEntry, LaunchAgent, RunKey, of_system, start_command

ODD = ["/opt/my tools/python3", "-m", "rackboard", "--data-dir", '/home/q/50% "new" $x\\y']


def test_a_desktop_entry_comes_and_goes(tmp_path: Path) -> None:
    entry = DesktopEntry(tmp_path / "config" / "autostart", ["/usr/bin/python3", "-m", "rackboard"])
    assert not entry.is_on
    entry.set(True)
    assert entry.is_on
    read = configparser.ConfigParser(interpolation=None)
    read.read_string(entry.path.read_text("utf-8"))
    assert read["Desktop Entry"]["Exec"] == "/usr/bin/python3 -m rackboard"
    assert read["Desktop Entry"]["Type"] == "Application"
    entry.set(False)
    assert not entry.is_on
    assert not entry.path.exists()
    entry.set(False)


def test_exec_is_quoted_as_the_specification_wants(tmp_path: Path) -> None:
    entry = DesktopEntry(tmp_path, ODD)
    entry.set(True)
    (line,) = (x for x in entry.path.read_text("utf-8").splitlines() if x.startswith("Exec="))
    assert line == (
        'Exec="/opt/my tools/python3" -m rackboard --data-dir '
        '"/home/q/50%% \\\\"new\\\\" \\\\$x\\\\\\\\y"'
    )
    checker = shutil.which("desktop-file-validate")
    if checker is not None:
        assert subprocess.run([checker, str(entry.path)], check=False).returncode == 0


@pytest.mark.parametrize("line", ["Hidden=true", "X-GNOME-Autostart-enabled=false"])
def test_one_that_the_desktop_switched_off_is_off(tmp_path: Path, line: str) -> None:
    entry = DesktopEntry(tmp_path, ODD)
    entry.set(True)
    with entry.path.open("a", encoding="utf-8") as file:
        file.write(f"{line}\n")
    assert not entry.is_on


def test_a_folder_that_cannot_be_made_is_said(tmp_path: Path) -> None:
    (tmp_path / "config").write_text("a file")
    with pytest.raises(StoreError):
        DesktopEntry(tmp_path / "config" / "autostart", ODD).set(True)


def test_a_launch_agent_comes_and_goes(tmp_path: Path) -> None:
    agent = LaunchAgent(tmp_path / "LaunchAgents", ODD)
    assert not agent.is_on
    agent.set(True)
    assert agent.is_on
    read = plistlib.loads(agent.path.read_bytes())
    assert read["ProgramArguments"] == ODD
    assert read["RunAtLoad"] is True
    agent.set(False)
    assert not agent.is_on
    agent.set(False)


class Key:
    def __enter__(self) -> Key:
        return self

    def __exit__(self, *args: object) -> None:
        pass


class Winreg:
    """As much of the registry as is used."""

    HKEY_CURRENT_USER, REG_SZ = object(), 1

    def __init__(self) -> None:
        self.values: dict[str, str] = {}
        self.refuses = False

    def OpenKey(self, root: object, path: str) -> Key:  # noqa: N802 (its name)
        assert path.endswith(r"CurrentVersion\Run")
        return Key()

    def CreateKey(self, root: object, path: str) -> Key:  # noqa: N802
        if self.refuses:
            raise PermissionError(13, "Access is denied")
        return self.OpenKey(root, path)

    def QueryValueEx(self, key: Key, name: str) -> tuple[str, int]:  # noqa: N802
        if name not in self.values:
            raise FileNotFoundError(2, "no such value")
        return self.values[name], self.REG_SZ

    def SetValueEx(self, key: Key, name: str, zero: int, kind: int, value: str) -> None:  # noqa: N802
        self.values[name] = value

    def DeleteValue(self, key: Key, name: str) -> None:  # noqa: N802
        del self.values[name]


def test_a_run_key_comes_and_goes() -> None:
    registry = Winreg()
    key = RunKey([r"C:\My Tools\pythonw.exe", "-m", "rackboard"], registry)
    assert not key.is_on
    key.set(True)
    assert key.is_on
    assert registry.values == {"rackboard": r'"C:\My Tools\pythonw.exe" -m rackboard'}
    key.set(False)
    key.set(False)
    assert not key.is_on
    registry.refuses = True
    with pytest.raises(StoreError):
        key.set(True)


def test_the_command_starts_this_python_on_this_folder(tmp_path: Path) -> None:
    assert start_command()[1:] == ["-m", "rackboard"]
    assert Path(start_command()[0]).parent == Path(sys.executable).parent
    assert start_command(str(tmp_path))[3:] == ["--data-dir", str(tmp_path)]


@pytest.mark.parametrize(
    ("platform", "kind"), [("linux", DesktopEntry), ("darwin", LaunchAgent), ("win32", RunKey)]
)
def test_each_system_has_its_way(
    monkeypatch: pytest.MonkeyPatch, test_home: Path, platform: str, kind: type[Any]
) -> None:
    monkeypatch.setattr(autostart.sys, "platform", platform)
    made = of_system()
    assert isinstance(made, kind)
    if isinstance(made, DesktopEntry):
        assert made.path == test_home / ".config" / "autostart" / "rackboard.desktop"
        assert not made.is_on
