"""Backups of the data file, made in slices while the board is in use, and the way back."""

from __future__ import annotations

import os
import re
import sqlite3
import threading
from collections.abc import Callable, Generator
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path
from typing import Final, TypeVar

from rackboard.core.instants import DAY_US, SECOND_US, Instant, from_datetime, to_datetime
from rackboard.store import faults
from rackboard.store.connection import Database, connect
from rackboard.store.faults import DamagedFileError, ForeignFileError, guard
from rackboard.store.files import sync_file, sync_folder
from rackboard.store.migrations import NEWEST
from rackboard.store.paths import Paths

KEEP: Final = 10
PAGES: Final = 256
"""Pages of one slice: 1 MB, a few milliseconds."""
_CHECK_STEPS: Final = 200_000  # of SQLite's machine between two pauses of the check
_NAME: Final = re.compile(r"rackboard-(\d{8}T\d{6})Z\.db")
_FORM: Final = "%Y%m%dT%H%M%S"

T = TypeVar("T")
Pause = Callable[[float], None]


def backups(folder: Path) -> list[Path]:
    """Return the backups in a folder, the newest first."""
    with guard(folder):
        if not folder.is_dir():
            return []
        found = [path for path in folder.iterdir() if _NAME.fullmatch(path.name)]
    return sorted(found, key=lambda path: path.name, reverse=True)


def made_at(backup: Path) -> Instant:
    """Return the instant in a backup's name [µs UTC].

    Raises
    ------
    ValueError
        If the name is not that of a backup.
    """
    match = _NAME.fullmatch(backup.name)
    if match is None:
        raise ValueError(f"{backup.name} is not the name of a backup")
    return from_datetime(datetime.strptime(match[1], _FORM).replace(tzinfo=UTC))


def due(folder: Path, now_us: Instant) -> bool:
    """Return whether a day has passed since the last backup.

    A backup that lies in the future (the clock was set back) doesn't count.
    """
    return not any(0 <= now_us - made_at(path) < DAY_US for path in backups(folder))


def backup_slices(
    database: Database, folder: Path, now_us: Instant, pages: int = PAGES
) -> Generator[float, None, Path]:
    """Make a backup, a slice each time the caller asks for the next value.

    Between two slices the caller may read and write as usual: what it writes gets into the
    copy. The copy is checked before it takes its name, then the oldest beyond ten are
    deleted.

    Parameters
    ----------
    database : Database
        The open data file.
    folder : Path
        The folder of the backups.
    now_us : int
        For the name [µs UTC].
    pages : int
        Pages a slice.

    Yields
    ------
    float
        How much is done, 0…1.

    Returns
    -------
    Path
        The backup.

    Raises
    ------
    StoreError
        If the disk is full or the data is damaged; the older backups then stay.
    """
    final = _free_name(folder, now_us)
    part = final.with_suffix(".part")
    with guard(folder):
        for left_over in folder.glob("rackboard-*.part*"):
            left_over.unlink()

    def work(pause: Pause) -> None:
        _copy(database, part, pages, lambda share: pause(0.7 * share))
        _check_whole(part, lambda: pause(0.9))
        with guard(part):
            sync_file(part)
            part.replace(final)
            sync_folder(folder)

    try:
        yield from _in_step(work)
    except BaseException:
        part.unlink(missing_ok=True)
        raise
    for old in [path for path in backups(folder) if path != final][KEEP - 1 :]:
        with guard(old):
            old.unlink(missing_ok=True)
    return final


def back_up(database: Database, folder: Path, now_us: Instant) -> Path:
    """Make a backup in one go; as `backup_slices`."""
    slices = backup_slices(database, folder, now_us, pages=4096)
    while True:
        try:
            next(slices)
        except StopIteration as done:
            made: Path = done.value
            return made


def verify(backup: Path) -> None:
    """Check that a backup is ours, is known to this version and is whole.

    Raises
    ------
    StoreError
        If it isn't.
    """
    with guard(backup), closing(connect(backup, newest=NEWEST, writable=False)) as database:
        if database.value("PRAGMA user_version") == 0:
            raise faults.foreign(backup)
    _check_whole(backup, lambda: None)


def restore(paths: Paths, backup: Path, now_us: Instant) -> Path | None:
    """Put a backup in the place of the data file, while no store is open on it.

    The present file is backed up first; if it is damaged it is kept, as it is, beside the
    backups.

    Parameters
    ----------
    paths : Paths
        The folders.
    backup : Path
        Any backup, also one brought from elsewhere.
    now_us : int
        For the names [µs UTC].

    Returns
    -------
    Path or None
        Where the present data went; None if there was none.

    Raises
    ------
    StoreError
        If the backup is not good, the data is in use or the disk is full; the present file
        is then unchanged.
    """
    verify(backup)
    part = paths.data / "rackboard.restored.part"
    try:
        with guard(part):
            # A fresh copy through SQLite: the backup may lie on a read-only stick.
            with closing(connect(backup, newest=NEWEST, writable=False)) as source:
                _copy(source, part, -1, lambda _: None)
            sync_file(part)
        kept = _keep_present(paths, now_us)
        with guard(paths.database):
            # A journal belongs to the file that goes; over another file it would spoil it.
            _journal(paths.database).unlink(missing_ok=True)
            part.replace(paths.database)
            sync_folder(paths.data)
    except BaseException:
        part.unlink(missing_ok=True)
        raise
    return kept


def _keep_present(paths: Paths, now_us: Instant) -> Path | None:
    present = paths.database
    with guard(present):
        if not present.exists() or present.stat().st_size == 0:
            return None
    try:
        with closing(connect(present, newest=2**31)) as database:
            database.rows("BEGIN EXCLUSIVE")  # nobody else has it open
            database.rollback()
            return back_up(database, paths.backups, now_us)
    except (DamagedFileError, ForeignFileError):
        kept = _free_name(paths.backups, now_us).with_suffix(".damaged")
        with guard(kept):
            kept.write_bytes(present.read_bytes())
            journal = _journal(present)
            if journal.exists():
                _journal(kept).write_bytes(journal.read_bytes())
            sync_file(kept)
        return kept


def _journal(path: Path) -> Path:
    return path.with_name(path.name + "-journal")


def _free_name(folder: Path, now_us: Instant) -> Path:
    while True:
        path = folder / f"rackboard-{to_datetime(now_us).strftime(_FORM)}Z.db"
        if not path.exists():
            return path
        now_us += SECOND_US


def _copy(database: Database, target: Path, pages: int, pause: Pause) -> None:
    def progress(_status: int, remaining: int, total: int) -> None:
        pause(1 - remaining / total if total else 1.0)

    with guard(target):
        os.close(os.open(target, os.O_CREAT | os.O_RDWR, 0o600))  # names and phones
    with guard(target), closing(sqlite3.connect(target, isolation_level=None)) as copy:
        # The copy is worth nothing until it is whole: no journal, and one sync at the end.
        copy.execute("PRAGMA journal_mode=OFF").fetchall()
        copy.execute("PRAGMA synchronous=OFF").fetchall()
        database.raw.backup(copy, pages=pages, progress=progress, sleep=0.01)


def _check_whole(path: Path, pause: Callable[[], None]) -> None:
    stopped: list[BaseException] = []

    def handler() -> int:
        try:
            pause()
        except BaseException as error:  # SQLite would swallow it
            stopped.append(error)
            return 1
        return 0

    with guard(path), closing(connect(path, newest=2**31, writable=False)) as database:
        database.raw.set_progress_handler(handler, _CHECK_STEPS)
        try:
            answers = database.rows("PRAGMA quick_check(1)")
        except sqlite3.OperationalError:
            if stopped:
                raise stopped[0] from None
            raise
    if answers != [("ok",)]:
        raise faults.damaged(path, str(answers[0][0]) if answers else "no answer")


class _AbandonedError(BaseException):
    """The caller wants no more slices."""


def _in_step(work: Callable[[Pause], None]) -> Generator[float, None, None]:
    """Run `work` in a thread that moves only while the caller waits for the next value.

    SQLite's own backup can only be called whole from Python; so its thread is stopped in
    each progress call until the caller comes again. The two never run at once, therefore
    they may share the connection.
    """
    go, done = threading.Semaphore(0), threading.Semaphore(0)
    share = 0.0
    finished = abandoned = False
    failure: BaseException | None = None

    def pause(now: float) -> None:
        nonlocal share
        share = now
        done.release()
        go.acquire()
        if abandoned:
            raise _AbandonedError

    def run() -> None:
        nonlocal finished, failure
        go.acquire()
        try:
            if not abandoned:
                work(pause)
        except BaseException as error:  # carried to the caller below
            failure = error
        finally:
            finished = True
            done.release()

    thread = threading.Thread(target=run, name="backup", daemon=True)
    thread.start()
    try:
        while True:
            go.release()
            done.acquire()
            if finished:
                break
            yield share
    finally:
        while not finished:
            abandoned = True
            go.release()
            done.acquire()
        thread.join()
    if failure is not None:
        raise failure
