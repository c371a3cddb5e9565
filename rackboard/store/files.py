"""Files outside the database: written whole or not at all."""

from __future__ import annotations

import os
from pathlib import Path

from rackboard.store.faults import guard


def write_atomically(path: Path, content: bytes | str) -> None:
    """Write a file so that a reader sees the old content or the new, never a half.

    Parameters
    ----------
    path : Path
        The file; its folder must exist.
    content : bytes or str
        Text is written as UTF-8.

    Raises
    ------
    StoreError
        If the disk is full, the folder can't be written or the disk reports a fault; the
        old file is then unchanged.
    """
    data = content.encode() if isinstance(content, str) else content
    temporary = path.with_name(f".{path.name}.{os.getpid()}.part")
    with guard(path):
        try:
            descriptor = os.open(temporary, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
            with os.fdopen(descriptor, "wb") as stream:
                stream.write(data)
                stream.flush()
                os.fsync(stream.fileno())
            temporary.replace(path)
        except BaseException:
            temporary.unlink(missing_ok=True)
            raise
        sync_folder(path.parent)


def sync_file(path: Path) -> None:
    """Make sure that the content of a file is on the disk."""
    descriptor = os.open(path, os.O_RDWR)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)


def sync_folder(folder: Path) -> None:
    """Make sure that a rename in a folder is on the disk."""
    if os.name == "nt":  # a folder can't be opened there, and NTFS journals the rename
        return
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)
