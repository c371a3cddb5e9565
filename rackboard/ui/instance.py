"""One board a folder: whoever starts it again brings the first window to the front.

A local socket: on Unix the system's own, which costs next to nothing; on Windows a named pipe
of Qt's network library, which takes some megabytes and is loaded there alone.
"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QDeadlineTimer, QObject, QSocketNotifier, QThread, Signal

from rackboard.store.paths import Paths

if TYPE_CHECKING:
    from socket import socket

    from PySide6.QtNetwork import QLocalServer

WAIT_MS = 2_000
"""So long a second start waits for the first to answer [decision]."""
_BETWEEN_MS = 50
_LONGEST = 80
"""Of a local socket's path: the system takes 104 to 108 [decision]."""
_RAISE, _YES = b"raise\n", b"yes\n"
_PIPES = sys.platform == "win32"


def socket_name(paths: Paths) -> str:
    """Return where the boards of this data folder meet."""
    if _PIPES:
        return f"rackboard-{_digest(paths)}"
    path = str(paths.runtime / "board")
    if len(path.encode()) <= _LONGEST:
        return path
    from tempfile import gettempdir

    return str(Path(gettempdir()) / f"rackboard-{_digest(paths)}")


def _digest(paths: Paths) -> str:
    from hashlib import sha256  # brings megabytes of a cryptography library along

    return sha256(str(paths.data).encode()).hexdigest()[:16]


class Instance(QObject):
    """Answers later starts; to be made by the one that holds the lock of the folder.

    Parameters
    ----------
    paths : Paths
        The folders of this start.
    parent : QObject, optional
        Owner.

    Attributes
    ----------
    trouble : str or None
        Why it can't be asked; a second start then just says that there is a first.
    """

    asked = Signal()
    """Somebody has started the board again: show the window."""

    def __init__(self, paths: Paths, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.trouble: str | None = None
        self._pipes: QLocalServer | None = None
        self._server: socket | None = None
        try:
            if _PIPES:
                self._listen_to_pipes(socket_name(paths))
            else:
                self._listen(Path(socket_name(paths)))
        except (ImportError, OSError) as error:
            self.trouble = str(error)

    def close(self) -> None:
        """Answer no more."""
        if self._pipes is not None:
            self._pipes.close()
        if self._server is not None:
            self._notifier.setEnabled(False)
            self._server.close()
            self._server = None
            self._path.unlink(missing_ok=True)

    # Unix

    def _listen(self, path: Path) -> None:
        from socket import AF_UNIX, SOCK_STREAM, socket

        # What a killed board left; the lock says that nobody else is there.
        path.unlink(missing_ok=True)
        server = socket(AF_UNIX, SOCK_STREAM)
        server.setblocking(False)
        try:
            server.bind(str(path))
            path.chmod(0o600)
            server.listen(4)
        except OSError:
            server.close()
            raise
        self._path, self._server = path, server
        self._notifier = QSocketNotifier(server.fileno(), QSocketNotifier.Type.Read, self)
        self._notifier.activated.connect(self._on_called)

    def _on_called(self) -> None:
        if self._server is None:
            return
        try:
            caller, _ = self._server.accept()
        except OSError:
            return
        _Caller(caller, self)

    # Windows

    def _listen_to_pipes(self, name: str) -> None:
        from PySide6.QtNetwork import QLocalServer

        pipes = self._pipes = QLocalServer(self)
        pipes.setSocketOptions(QLocalServer.SocketOption.UserAccessOption)
        pipes.newConnection.connect(self._on_connection)
        if not pipes.listen(name):
            self.trouble = pipes.errorString()

    def _on_connection(self) -> None:
        assert self._pipes is not None
        while (pipe := self._pipes.nextPendingConnection()) is not None:
            if pipe.waitForReadyRead(WAIT_MS) and bytes(pipe.readLine().data()) == _RAISE:
                pipe.write(_YES)
                pipe.flush()
                self.asked.emit()
            pipe.deleteLater()


class _Caller(QObject):
    """One later start, until it has hung up."""

    def __init__(self, caller: socket, instance: Instance) -> None:
        super().__init__(instance)
        self._caller = caller
        self._instance = instance
        caller.setblocking(False)
        self._notifier = QSocketNotifier(caller.fileno(), QSocketNotifier.Type.Read, self)
        self._notifier.activated.connect(self._on_read)

    def _on_read(self) -> None:
        self._notifier.setEnabled(False)
        try:
            if self._caller.recv(64) == _RAISE:
                self._caller.send(_YES)
                self._instance.asked.emit()
        except OSError:
            pass  # it has hung up
        self._caller.close()
        self.deleteLater()


def call_first(paths: Paths, wait_ms: int = WAIT_MS) -> bool:
    """Ask the board that is open on these folders to show itself.

    Returns
    -------
    bool
        Whether it has said that it does.
    """
    call = _call_pipe if _PIPES else _call
    patience = QDeadlineTimer(wait_ms)
    while True:  # the first may still be at its first picture
        try:
            return call(socket_name(paths), wait_ms)
        except (ImportError, OSError):
            if patience.hasExpired():
                return False
        QThread.msleep(_BETWEEN_MS)


def _call(name: str, wait_ms: int) -> bool:
    from socket import AF_UNIX, SOCK_STREAM, socket

    with socket(AF_UNIX, SOCK_STREAM) as call:
        call.settimeout(wait_ms / 1000)
        call.connect(name)
        call.sendall(_RAISE)
        return call.recv(64) == _YES


def _call_pipe(name: str, wait_ms: int) -> bool:
    from PySide6.QtNetwork import QLocalSocket

    call = QLocalSocket()
    call.connectToServer(name)
    if not call.waitForConnected(wait_ms):
        raise OSError(call.errorString())
    call.write(_RAISE)
    return call.waitForReadyRead(wait_ms) and bytes(call.readLine().data()) == _YES
