"""Start at login: an entry where this system looks for one, made and taken away again."""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any, Protocol

from rackboard.store.faults import guard
from rackboard.store.files import write_atomically

NAME = "rackboard"
_RUN = r"Software\Microsoft\Windows\CurrentVersion\Run"


class Autostart(Protocol):
    """Whether the board starts when its user logs in."""

    @property
    def is_on(self) -> bool:
        """Whether there is an entry, whatever command it has."""

    def set(self, on: bool) -> None:
        """Make the entry, or take it away; raises StoreError if the system refuses."""


def start_command(data_dir: str | None = None) -> list[str]:
    """Return how the board is started, with the Python that runs it now."""
    python = Path(sys.executable)
    windowed = python.with_name("pythonw.exe")
    if sys.platform == "win32" and windowed.exists():
        python = windowed  # no console
    command = [str(python), "-m", "rackboard"]
    return command if data_dir is None else [*command, "--data-dir", str(Path(data_dir).absolute())]


def of_system(data_dir: str | None = None) -> Autostart:
    """Return the entry of this system and user."""
    command = start_command(data_dir)
    if sys.platform == "win32":
        return RunKey(command)
    if sys.platform == "darwin":
        return LaunchAgent(Path.home() / "Library" / "LaunchAgents", command)
    config = os.environ.get("XDG_CONFIG_HOME") or Path.home() / ".config"
    return DesktopEntry(Path(config) / "autostart", command)


class DesktopEntry:
    """A file in the autostart folder (freedesktop.org, Desktop Application Autostart).

    Parameters
    ----------
    folder : Path
        Usually ~/.config/autostart.
    command : sequence of str
        What is run.
    """

    def __init__(self, folder: Path, command: Sequence[str]) -> None:
        self.path = folder / f"{NAME}.desktop"
        self._command = command

    @property
    def is_on(self) -> bool:
        """Whether there is a file that isn't hidden or switched off by the desktop."""
        try:
            lines = self.path.read_text(encoding="utf-8").splitlines()
        except OSError:
            return False
        off = ("Hidden=true", "X-GNOME-Autostart-enabled=false")
        return not any(line.strip() in off for line in lines)

    def set(self, on: bool) -> None:
        """Write the file, or remove it."""
        if not on:
            _remove(self.path)
            return
        quoted = " ".join(_exec_quoted(part) for part in self._command)
        entry = (
            "[Desktop Entry]\nType=Application\nVersion=1.0\nName=rackboard\n"
            f"Exec={quoted}\nIcon=rackboard\nTerminal=false\n"
        )
        _write(self.path, entry.encode())


class LaunchAgent:
    """A property list of launchd.

    Parameters
    ----------
    folder : Path
        Usually ~/Library/LaunchAgents.
    command : sequence of str
        What is run.
    """

    def __init__(self, folder: Path, command: Sequence[str]) -> None:
        self.path = folder / f"{NAME}.plist"
        self._command = command

    @property
    def is_on(self) -> bool:
        """Whether there is a list."""
        return self.path.exists()

    def set(self, on: bool) -> None:
        """Write the list, or remove it; it is read at the next login."""
        if not on:
            _remove(self.path)
            return
        import plistlib

        entry = {
            "Label": NAME, "ProgramArguments": list(self._command), "RunAtLoad": True,
            "ProcessType": "Interactive",
        }  # fmt: skip
        _write(self.path, plistlib.dumps(entry))


class RunKey:
    """A value under the user's Run key of the Windows registry.

    Parameters
    ----------
    command : sequence of str
        What is run.
    winreg : object, optional
        The module of that name.
    """

    def __init__(self, command: Sequence[str], winreg: Any = None) -> None:
        self._command = command
        self._given = winreg

    @property
    def is_on(self) -> bool:
        """Whether there is a value."""
        registry = self._registry()
        try:
            with registry.OpenKey(registry.HKEY_CURRENT_USER, _RUN) as key:
                registry.QueryValueEx(key, NAME)
        except OSError:
            return False
        return True

    def set(self, on: bool) -> None:
        """Write the value, or remove it."""
        from subprocess import list2cmdline

        registry = self._registry()
        with guard(Path(_RUN)), registry.CreateKey(registry.HKEY_CURRENT_USER, _RUN) as key:
            if on:
                line = list2cmdline(self._command)
                registry.SetValueEx(key, NAME, 0, registry.REG_SZ, line)
            elif self.is_on:
                registry.DeleteValue(key, NAME)

    def _registry(self) -> Any:
        if self._given is None:
            from importlib import import_module

            self._given = import_module("winreg")
        return self._given


def _exec_quoted(part: str) -> str:
    """Quote an argument of Exec (Desktop Entry Specification, "The Exec key")."""
    if part and all(c.isalnum() or c in "-_./:=+,@" for c in part):
        return part
    inner = "".join(f"\\{c}" if c in '"`$\\' else c for c in part).replace("%", "%%")
    # The value is a string of its own, in which a backslash is written twice.
    return '"' + inner.replace("\\", "\\\\") + '"'


def _write(path: Path, data: bytes) -> None:
    with guard(path.parent):
        path.parent.mkdir(parents=True, exist_ok=True)
    write_atomically(path, data)


def _remove(path: Path) -> None:
    with guard(path):
        path.unlink(missing_ok=True)
