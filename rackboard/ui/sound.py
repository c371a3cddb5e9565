"""The sounds of alerts, played by whatever the system has; a failure is said, and beeps."""

from __future__ import annotations

import shutil
import sys
from array import array
from collections.abc import Callable, Sequence
from typing import Any

from PySide6.QtCore import QObject, QProcess, QTemporaryDir, QTimer

from rackboard.core.text import text
from rackboard.services.teller import Done, Message
from rackboard.ui.resources import resource_bytes, resource_path

NAME = text("Courier", "Sound")
FILES = {"alarm": "alarm.wav", "prompt": "prompt.wav", "good news": "good-news.wav"}
PLAYERS = {
    "linux": (("pw-play",), ("paplay",), ("aplay", "-q")),
    "darwin": (("afplay",),),
}
"""Programs that play a WAV, in the order in which they are tried."""
PATIENCE_MS = 5_000
"""A player that is at it for so long plays nothing [decision]: no sound takes a second."""
_KILLED_MS = 1_000
FULL = 100
_HEADER = 44  # bytes before the samples in the files that assets/sounds makes


class SoundCourier(QObject):
    """Plays the sound that a message asks for; the newest only, if one is still playing.

    Parameters
    ----------
    parent : QObject, optional
        Owner.
    volume : callable, optional
        Returns how loud, 0 to 100.
    beep : callable, optional
        Makes the noise that is left when no player works.
    platform : str, optional
        As `sys.platform`.
    winsound : object, optional
        The module of that name.
    """

    name = NAME

    def __init__(
        self,
        parent: QObject | None = None,
        volume: Callable[[], int] = lambda: FULL,
        beep: Callable[[], object] | None = None,
        platform: str = sys.platform,
        winsound: Any = None,
    ) -> None:
        super().__init__(parent)
        self._volume = volume
        self._beep = beep or _beep
        self._platform = platform
        self._winsound = winsound
        self._trouble: str | None = None
        self._scaled: QTemporaryDir | None = None
        self._play: _Play | None = None

    def deliver(self, message: Message, done: Done) -> None:
        """Play a message's sound; `done` hears when it has been played, or why it wasn't."""
        if message.take_back or not message.sound or self._volume() <= 0:
            done(self._trouble)  # nothing to play: what was wrong before still is
            return

        def played(reason: str | None) -> None:
            self._trouble = reason
            if reason is not None:
                self._beep()
            done(reason)

        path = self._file(message.sound)
        if self._platform == "win32":
            played(self._by_winsound(path))
            return
        commands = [
            [found, *options, path]
            for program, *options in PLAYERS.get(self._platform, PLAYERS["linux"])
            if (found := shutil.which(program))
        ]
        if not commands:
            played(text("Courier", "no player was found"))
            return
        if self._play is not None:
            self._play.stop()
        self._play = _Play(self, commands, played)

    def close(self) -> None:
        """Stop playing."""
        if self._play is not None:
            self._play.stop()
            self._play = None
        for process in self.findChildren(QProcess):
            process.waitForFinished(_KILLED_MS)

    def _by_winsound(self, path: str) -> str | None:
        if self._winsound is None:
            from importlib import import_module

            self._winsound = import_module("winsound")
        sound = self._winsound
        try:
            sound.PlaySound(path, sound.SND_FILENAME | sound.SND_ASYNC | sound.SND_NODEFAULT)
        except RuntimeError as error:
            return str(error)
        return None

    def _file(self, sound: str) -> str:
        """Return a file of the sound, as loud as it is to be."""
        name = FILES[sound]
        volume = min(self._volume(), FULL)
        if volume == FULL and resource_path("sounds", name).exists():
            return str(resource_path("sounds", name))
        if self._scaled is None:
            self._scaled = QTemporaryDir()
        path = self._scaled.filePath(f"{volume}-{name}")
        from pathlib import Path

        if not Path(path).exists():
            Path(path).write_bytes(scaled(resource_bytes("sounds", name), volume))
        return path


def scaled(data: bytes, volume: int) -> bytes:
    """Return one of our own WAVs made quieter.

    Parameters
    ----------
    data : bytes
        A WAV of 16 bit samples with a plain header.
    volume : int
        0 to 100; the ear hears the square of the amplitude, so half is a quarter of it.
    """
    factor = (volume / FULL) ** 2
    samples = array("h", data[_HEADER:])
    if sys.byteorder == "big":
        samples.byteswap()
    quieter = array("h", (round(sample * factor) for sample in samples))
    if sys.byteorder == "big":
        quieter.byteswap()
    return data[:_HEADER] + quieter.tobytes()


class _Play(QObject):
    """One sound, tried with one player after the other."""

    def __init__(
        self, parent: QObject, commands: Sequence[list[str]], played: Callable[[str | None], None]
    ) -> None:
        super().__init__(parent)
        self._commands = list(commands)
        self._played = played
        self._reason = ""
        self._process: QProcess | None = None
        self._over = False
        self._patience = QTimer(self)
        self._patience.setSingleShot(True)
        self._patience.setInterval(PATIENCE_MS)
        self._patience.timeout.connect(self._give_up)
        self._try_next()

    def stop(self) -> None:
        """Make way for another sound; as far as it came, it was played."""
        if not self._over:
            self._end(None)

    def _try_next(self) -> None:
        if not self._commands:
            self._end(self._reason)
            return
        command = self._commands.pop(0)
        self._process = QProcess(self)
        self._process.setProcessChannelMode(QProcess.ProcessChannelMode.MergedChannels)
        self._process.finished.connect(self._on_finished)
        self._process.errorOccurred.connect(self._on_error)
        self._patience.start()
        self._process.start(command[0], command[1:])

    def _on_finished(self, code: int, status: QProcess.ExitStatus) -> None:
        if self._process is None:
            return
        if code == 0 and status is QProcess.ExitStatus.NormalExit:
            self._end(None)
            return
        said = bytes(self._process.readAll().data()).decode(errors="replace").strip()
        self._next(said.splitlines()[-1] if said else _died(self._process.program(), code))

    def _on_error(self, error: QProcess.ProcessError) -> None:
        if error is QProcess.ProcessError.FailedToStart and self._process is not None:
            self._next(self._process.errorString())

    def _give_up(self) -> None:
        if self._process is not None:
            program = self._process.program()
            self._next(text("Courier", "{program} doesn't come to an end").format(program=program))

    def _next(self, reason: str) -> None:
        self._reason = reason
        self._drop()
        self._try_next()

    def _drop(self) -> None:
        self._patience.stop()
        process, self._process = self._process, None
        if process is not None:
            process.setParent(self.parent())  # it may outlive this sound by a moment
            process.finished.connect(process.deleteLater)
            process.kill()
            if process.state() is QProcess.ProcessState.NotRunning:
                process.deleteLater()

    def _end(self, reason: str | None) -> None:
        self._drop()
        self._over = True
        self.deleteLater()
        self._played(reason)


def _died(program: str, code: int) -> str:
    return text("Courier", "{program} ended with {code}").format(program=program, code=code)


def _beep() -> None:
    from PySide6.QtWidgets import QApplication

    QApplication.beep()
