"""The folders of the program, in one value that is handed around."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path, PureWindowsPath

from rackboard.core.text import text
from rackboard.store.faults import NetworkShareError, guard

SHARES = frozenset(
    {
        "9p", "afs", "beegfs", "ceph", "cifs", "davfs", "drvfs", "fuse.afp",
        "fuse.ceph", "fuse.davfs", "fuse.davfs2", "fuse.glusterfs", "fuse.gvfsd-fuse",
        "fuse.rclone", "fuse.s3fs", "fuse.smbnetfs", "fuse.sshfs", "glusterfs", "lustre",
        "ncpfs", "nfs", "nfs4", "smb3", "smbfs", "vboxsf",
    }
)  # fmt: skip
"""File system types whose locks can't be trusted [decision of this project]."""

_DRIVE_REMOTE = 4  # GetDriveTypeW


@dataclass(frozen=True, slots=True)
class Paths:
    """Where the program keeps its things; nothing else may ask for a folder."""

    data: Path
    config: Path
    cache: Path
    logs: Path
    runtime: Path

    @classmethod
    def of_user(cls) -> Paths:
        """Return the folders that the desktop gives to a program of this user."""
        from platformdirs import PlatformDirs

        dirs = PlatformDirs("rackboard", appauthor=False)
        return cls(
            data=Path(dirs.user_data_dir),
            config=Path(dirs.user_config_dir),
            cache=Path(dirs.user_cache_dir),
            logs=Path(dirs.user_log_dir),
            runtime=Path(dirs.user_runtime_dir),
        )

    @classmethod
    def below(cls, folder: Path) -> Paths:
        """Return the folders that all lie below one, as given by ``--data-dir``."""
        folder = folder.expanduser().absolute()
        return cls(
            data=folder,
            config=folder / "config",
            cache=folder / "cache",
            logs=folder / "logs",
            runtime=folder / "runtime",
        )

    @property
    def database(self) -> Path:
        """The one file with everything that people did."""
        return self.data / "rackboard.db"

    @property
    def backups(self) -> Path:
        """The folder of the last ten backups."""
        return self.data / "backups"

    @property
    def lock(self) -> Path:
        """The lock file that lets one board at a time use the data."""
        return self.data / "rackboard.lock"

    def prepare(self, share_of: Callable[[Path], str | None] | None = None) -> None:
        """Make the folders, readable by their owner alone.

        Parameters
        ----------
        share_of : callable, optional
            Names the network share that a path lies on, or None; given by tests.

        Raises
        ------
        NetworkShareError
            If the data would lie on another machine.
        StoreError
            If a folder can't be made.
        """
        refuse_share(self.data, share_of or network_share)
        folders = (self.data, self.backups, self.config, self.cache, self.logs, self.runtime)
        for folder in folders:
            with guard(folder):
                # Never chmod a folder that is already there: it may be shared on purpose.
                folder.mkdir(mode=0o700, parents=True, exist_ok=True)


def refuse_share(folder: Path, share_of: Callable[[Path], str | None]) -> None:
    """Raise if `folder` lies on a network share, where two machines could write at once.

    Raises
    ------
    NetworkShareError
        With the kind of share, and what to do.
    """
    kind = share_of(folder)
    if kind is not None:
        raise NetworkShareError(
            text("Store", "{folder} lies on a network share ({kind}). The data file must be on a"
                 " disk of this machine: over a network two boards could spoil it.")
            .format(folder=folder, kind=kind),
            text("Store", "Choose a folder on this machine with --data-dir. A backup may be copied"
                 " to the share."),
        )  # fmt: skip


def network_share(folder: Path) -> str | None:
    """Return the kind of network share that `folder` lies on, or None.

    A folder that doesn't exist yet lies where its nearest existing parent lies.
    """
    if sys.platform == "win32":
        return windows_share(str(folder.absolute()), _drive_type)
    if sys.platform.startswith("linux"):
        return linux_share(folder, _mount_table)
    return None


def linux_share(folder: Path, mount_table: Callable[[], str]) -> str | None:
    """Return the share's file system type from a table like ``/proc/self/mountinfo``.

    Parameters
    ----------
    folder : Path
        Need not exist; links are followed.
    mount_table : callable
        Returns the text of the table; empty if there is none.
    """
    target = os.path.realpath(folder)
    best, kind = -1, ""
    for line in mount_table().splitlines():
        left, dash, right = line.partition(" - ")
        fields = left.split()
        if not dash or len(fields) < 5 or not right:
            continue
        point = _unescaped(fields[4])
        inside = target == point or target.startswith(point.rstrip("/") + "/")
        if inside and len(point) >= best:  # of two on one point the later covers the earlier
            best, kind = len(point), right.split()[0]
    return kind if kind in SHARES else None


def windows_share(folder: str, drive_type: Callable[[str], int]) -> str | None:
    """Return the kind of share of a Windows path: a UNC path or a mapped drive.

    Parameters
    ----------
    folder : str
        Absolute.
    drive_type : callable
        Returns what GetDriveTypeW says of a root, a drive with its backslash.
    """
    path = PureWindowsPath(folder)
    drive = path.drive
    if drive.startswith("\\\\?\\UNC\\") or (
        drive.startswith("\\\\") and not drive.startswith(("\\\\?\\", "\\\\.\\"))
    ):
        return f"UNC path {drive}"
    if drive and drive_type(f"{drive}\\") == _DRIVE_REMOTE:
        return f"network drive {drive}"
    return None


def _mount_table() -> str:
    try:
        return Path("/proc/self/mountinfo").read_text(encoding="utf-8", errors="surrogateescape")
    except OSError:
        return ""


def _unescaped(point: str) -> str:
    """Undo the octal escapes of the mount table."""
    for code, character in (("\\040", " "), ("\\011", "\t"), ("\\012", "\n"), ("\\134", "\\")):
        point = point.replace(code, character)
    return point


def _drive_type(root: str) -> int:
    import ctypes

    windll = getattr(ctypes, "windll", None)
    return int(windll.kernel32.GetDriveTypeW(root)) if windll is not None else 0
