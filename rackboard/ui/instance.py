"""One board a folder: whoever starts it again brings the first window to the front.

Qt's network library is loaded late, and missing system libraries of it (it wants those of
Kerberos) are only noted: a second start then says that there is a first, and no more.
"""

from __future__ import annotations

import hashlib
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QDeadlineTimer, QObject, QThread, Signal

from rackboard.store.paths import Paths

if TYPE_CHECKING:
    from PySide6.QtNetwork import QLocalServer, QLocalSocket

WAIT_MS = 2_000
"""So long a second start waits for the first to answer [decision]."""
_BETWEEN_MS = 50
_LONGEST = 80
"""Of a local socket's path: the system takes 104 to 108, and Qt puts a folder in [decision]."""
_RAISE, _YES = b"raise\n", b"yes\n"


def socket_name(paths: Paths) -> str:
    """Return where the boards of this data folder meet."""
    digest = hashlib.sha256(str(paths.data).encode()).hexdigest()[:16]
    if sys.platform == "win32":
        return f"rackboard-{digest}"
    path = str(paths.runtime / "board")
    if len(path.encode()) <= _LONGEST:
        return path
    from tempfile import gettempdir

    return str(Path(gettempdir()) / f"rackboard-{digest}")


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
        self._server: QLocalServer | None = None
        self.trouble: str | None = None
        try:
            self._listen(socket_name(paths))
        except ImportError as error:
            self.trouble = str(error)

    def _listen(self, name: str) -> None:
        from PySide6.QtNetwork import QLocalServer

        server = self._server = QLocalServer(self)
        server.setSocketOptions(QLocalServer.SocketOption.UserAccessOption)
        server.newConnection.connect(self._on_connection)
        # What a killed board left; the lock says that nobody else is there.
        QLocalServer.removeServer(name)
        if not server.listen(name):
            self.trouble = server.errorString()

    def close(self) -> None:
        """Answer no more."""
        if self._server is not None:
            self._server.close()

    def _on_connection(self) -> None:
        assert self._server is not None
        while (socket := self._server.nextPendingConnection()) is not None:
            _Caller(socket, self)


class _Caller(QObject):
    """One later start, until it has hung up."""

    def __init__(self, socket: QLocalSocket, instance: Instance) -> None:
        super().__init__(instance)
        self._socket = socket
        self._instance = instance
        socket.setParent(self)
        socket.readyRead.connect(self._on_read)
        socket.disconnected.connect(self.deleteLater)
        self._on_read()

    def _on_read(self) -> None:
        if self._socket.canReadLine() and bytes(self._socket.readLine().data()) == _RAISE:
            self._socket.write(_YES)
            self._socket.flush()
            self._instance.asked.emit()


def call_first(paths: Paths, wait_ms: int = WAIT_MS) -> bool:
    """Ask the board that is open on these folders to show itself.

    Returns
    -------
    bool
        Whether it has said that it does.
    """
    try:
        from PySide6.QtNetwork import QLocalSocket
    except ImportError:
        return False
    patience = QDeadlineTimer(wait_ms)
    socket = QLocalSocket()
    while True:  # the first may still be at its first picture
        socket.connectToServer(socket_name(paths))
        if socket.waitForConnected(wait_ms):
            break
        if patience.hasExpired():
            return False
        QThread.msleep(_BETWEEN_MS)
    socket.write(_RAISE)
    while not socket.canReadLine():
        if not socket.waitForReadyRead(wait_ms):
            return False
    return bytes(socket.readLine().data()) == _YES
