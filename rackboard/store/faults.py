"""What can be wrong with the data file or its disk, said calmly, with the remedy.

Faults of the world become one of the errors below. Whatever else SQLite reports (a wrong
statement, a broken reference) is a mistake of the program and passes through untouched.
"""

from __future__ import annotations

import errno
import sqlite3
from pathlib import Path
from types import TracebackType

from rackboard.core.errors import StoreError
from rackboard.core.text import text


class LockedFileError(StoreError):
    """Another program holds the data file."""


class ReadOnlyError(StoreError):
    """The data file or its folder can't be written."""


class DamagedFileError(StoreError):
    """The data file is no database, or not a whole one."""


class FullDiskError(StoreError):
    """There is no room for what was to be written."""


class ForeignFileError(StoreError):
    """The file is a database, but not one of this program."""


class NewerFileError(StoreError):
    """The file was written by a newer version of this program."""


class NetworkShareError(StoreError):
    """The data folder lies on another machine."""


class ChangedSinceError(StoreError):
    """What was to be undone has been changed since."""


def locked(path: Path) -> LockedFileError:
    """Return the error for a file that somebody else is using."""
    return LockedFileError(
        text("Store", "Another program is using {path}; nothing was changed.").format(path=path),
        text("Store", "Close the other program (a second board, a backup, a virus scan) and try"
             " again."),
    )  # fmt: skip


def read_only(path: Path) -> ReadOnlyError:
    """Return the error for a file or folder without the right to write."""
    return ReadOnlyError(
        text("Store", "{path} can be read but not written; nothing was changed.")
        .format(path=path),
        text("Store", "Give yourself the right to write to the folder {folder} and to every file"
             " in it, or choose another folder with --data-dir.").format(folder=path.parent),
    )  # fmt: skip


def unreachable(path: Path, reason: str) -> ReadOnlyError:
    """Return the error for a file or folder that can't be opened at all."""
    return ReadOnlyError(
        text("Store", "{path} can't be opened ({reason}).").format(path=path, reason=reason),
        text("Store", "See that the folder {folder} exists and is yours to read and write, or"
             " choose another folder with --data-dir.").format(folder=path.parent),
    )  # fmt: skip


def damaged(path: Path, reason: str) -> DamagedFileError:
    """Return the error for a file that is not a whole database."""
    return DamagedFileError(
        text("Store", "{path} is damaged ({reason}).").format(path=path, reason=reason),
        text("Store", "Restore the last backup (File, Restore a backup); the damaged file is kept"
             " beside the backups."),
    )  # fmt: skip


def disk_full(path: Path) -> FullDiskError:
    """Return the error for a disk without room."""
    return FullDiskError(
        text("Store", "The disk is full: {path} could not be written. What was saved before is"
             " safe.").format(path=path),
        text("Store", "Free some space on the disk of {folder} and do it again.")
        .format(folder=path.parent),
    )  # fmt: skip


def foreign(path: Path) -> ForeignFileError:
    """Return the error for a database of another program."""
    return ForeignFileError(
        text("Store", "{path} is a database, but not one of rackboard; it was left alone.")
        .format(path=path),
        text("Store", "Move it elsewhere, or choose another folder with --data-dir."),
    )  # fmt: skip


def newer(path: Path, wanted: int, came: int) -> NewerFileError:
    """Return the error for a file with a schema that this version doesn't know."""
    return NewerFileError(
        text("Store", "{path} was written by a newer rackboard: this one reads data up to number"
             " {wanted}, the file has number {came}. It was left alone.")
        .format(path=path, wanted=wanted, came=came),
        text("Store", "Install the newer rackboard, or restore a backup from before the change."),
    )  # fmt: skip


def disk_fault(path: Path, reason: str) -> StoreError:
    """Return the error for a disk that reports a fault."""
    return StoreError(
        text("Store", "The disk reported a fault at {path} ({reason}).")
        .format(path=path, reason=reason),
        text("Store", "See that the disk is still connected. Copy the backups to another disk."),
    )  # fmt: skip


_RIGHTS = (errno.EACCES, errno.EPERM, errno.EROFS)
_NO_ROOM = (errno.ENOSPC, errno.EDQUOT) if hasattr(errno, "EDQUOT") else (errno.ENOSPC,)


def translated(error: Exception, path: Path) -> Exception:
    """Return the calm error for a fault of the world, or `error` itself if it is our own.

    Parameters
    ----------
    error : Exception
        From sqlite3 or from the operating system.
    path : Path
        The file that it is about.
    """
    if isinstance(error, sqlite3.Error):
        code = getattr(error, "sqlite_errorcode", None)
        if code is None:
            return error
        match code & 0xFF:  # the low byte is the primary code
            case sqlite3.SQLITE_BUSY | sqlite3.SQLITE_LOCKED:
                return locked(path)
            case sqlite3.SQLITE_READONLY | sqlite3.SQLITE_PERM | sqlite3.SQLITE_AUTH:
                return read_only(path)
            case sqlite3.SQLITE_CANTOPEN:
                return unreachable(path, str(error))
            case sqlite3.SQLITE_NOTADB | sqlite3.SQLITE_CORRUPT:
                return damaged(path, str(error))
            case sqlite3.SQLITE_FULL:
                return disk_full(path)
            case sqlite3.SQLITE_IOERR:
                return disk_fault(path, str(error))
        return error
    if isinstance(error, OSError):
        if error.errno in _NO_ROOM:
            return disk_full(path)
        if error.errno in _RIGHTS:
            return read_only(path)
        if error.errno in (errno.ENOENT, errno.ENOTDIR, errno.EISDIR, errno.EEXIST):
            return unreachable(path, error.strerror or str(error))
        return disk_fault(path, error.strerror or str(error))
    return error


class guard:  # noqa: N801 - used as a word after `with`
    """Turn faults of the world at one file into calm errors: ``with guard(path): …``."""

    __slots__ = ("_path",)

    def __init__(self, path: Path) -> None:
        self._path = path

    def __enter__(self) -> None:
        return None

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        traceback: TracebackType | None,
    ) -> None:
        if isinstance(error, sqlite3.Error | OSError):
            calm = translated(error, self._path)
            if calm is not error:
                raise calm from error
