from __future__ import annotations

import os
import shutil
import sqlite3
import stat
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest

from helpers.store import NOON, small_shop, unprivileged
from rackboard.core.errors import StoreError
from rackboard.store import Store
from rackboard.store.connection import APPLICATION_ID, connect
from rackboard.store.faults import (
    DamagedFileError,
    ForeignFileError,
    FullDiskError,
    LockedFileError,
    NewerFileError,
    ReadOnlyError,
    guard,
)
from rackboard.store.migrations import NEWEST
from rackboard.store.paths import Paths

posix = pytest.mark.skipif(os.name == "nt", reason="rights are other things there")


def made(paths: Paths) -> Path:
    Store.open(paths, NOON).close()
    return paths.database


def refused(paths: Paths, kind: type[StoreError]) -> StoreError:
    before = paths.database.read_bytes()
    with pytest.raises(kind) as caught:
        Store.open(paths, NOON, busy_s=0)
    assert str(paths.database) in caught.value.message
    assert caught.value.remedy
    assert paths.database.read_bytes() == before
    return caught.value


def test_pragmas_are_set_on_every_open(paths: Paths) -> None:
    for _ in range(2):
        store = Store.open(paths, NOON)
        asked = {
            name: store._database.value(f"PRAGMA {name}")
            for name in ("journal_mode", "synchronous", "foreign_keys", "secure_delete",
                         "application_id", "user_version", "busy_timeout")
        }  # fmt: skip
        assert asked == {
            "journal_mode": "delete",
            "synchronous": 3,
            "foreign_keys": 1,
            "secure_delete": 1,
            "application_id": APPLICATION_ID,
            "user_version": NEWEST,
            "busy_timeout": 3000,
        }
        store.close()


@posix
def test_the_file_is_private(paths: Paths) -> None:
    assert stat.S_IMODE(made(paths).stat().st_mode) == 0o600


def test_a_newer_file_is_refused(paths: Paths) -> None:
    raw = sqlite3.connect(made(paths))
    raw.execute("PRAGMA user_version=99")
    raw.close()
    error = refused(paths, NewerFileError)
    assert "99" in error.message and str(NEWEST) in error.message


@pytest.mark.parametrize(
    "script", ["CREATE TABLE theirs (x)", "PRAGMA application_id=77", "PRAGMA user_version=1"]
)
def test_a_foreign_file_is_refused(paths: Paths, script: str) -> None:
    paths.prepare(lambda folder: None)
    raw = sqlite3.connect(paths.database)
    raw.execute(script)
    raw.close()
    refused(paths, ForeignFileError)


def test_a_file_that_is_no_database_is_damaged(paths: Paths) -> None:
    paths.prepare(lambda folder: None)
    paths.database.write_bytes(b"not a database at all, but long enough to be read" * 100)
    assert "damaged" in refused(paths, DamagedFileError).message


def test_a_cut_file_is_damaged(paths: Paths) -> None:
    path = made(paths)
    path.write_bytes(path.read_bytes()[: 4096 * 3])
    refused(paths, DamagedFileError)


def test_a_broken_page_is_said_when_it_is_read(paths: Paths) -> None:
    store = Store.open(paths, NOON)
    small_shop(store)
    root = store._database.value("SELECT rootpage FROM sqlite_schema WHERE name = 'club'")
    store.close()
    with paths.database.open("r+b") as stream:
        stream.seek((root - 1) * 4096)
        stream.write(b"\xff" * 4096)
    store = Store.open(paths, NOON)
    with pytest.raises(DamagedFileError, match="damaged"):
        store.work.clubs_by_id([1])
    store.close()


def test_an_emptied_file_with_backups_is_damaged(paths: Paths) -> None:
    path = made(paths)
    path.write_bytes(b"")
    (paths.backups / "rackboard-20260101T000000Z.db").write_bytes(b"x")
    refused(paths, DamagedFileError)


def test_an_empty_file_without_backups_is_a_new_one(paths: Paths) -> None:
    paths.prepare(lambda folder: None)
    paths.database.write_bytes(b"")
    made(paths)


@pytest.mark.parametrize("lock", ["BEGIN IMMEDIATE", "BEGIN EXCLUSIVE"])
def test_a_locked_file_is_said(paths: Paths, lock: str) -> None:
    other = sqlite3.connect(made(paths), isolation_level=None)
    other.execute(lock)
    try:
        assert "using" in refused(paths, LockedFileError).message
    finally:
        other.close()
    Store.open(paths, NOON, busy_s=0).close()


def test_locked_by_a_reader_in_mid_commit_changes_nothing(filed: Store) -> None:
    other = sqlite3.connect(filed.path, isolation_level=None)
    other.execute("BEGIN")
    other.execute("SELECT * FROM person").fetchall()
    with pytest.raises(LockedFileError), filed.write("use", NOON) as act:
        act.use_person("KT")
    other.execute("COMMIT")
    assert filed.shop.persons() == []
    with filed.write("use", NOON) as act:
        act.use_person("KT")
    assert other.execute("SELECT initials FROM person").fetchall() == [("KT",)]
    other.close()


@pytest.fixture
def open_folder() -> Iterator[Path]:
    folder = Path(tempfile.mkdtemp())
    folder.chmod(0o755)
    yield folder
    folder.chmod(0o755)
    shutil.rmtree(folder)


@posix
def test_a_read_only_file_is_said(open_folder: Path) -> None:
    paths = Paths.below(open_folder / "data")
    made(paths)
    paths.database.chmod(0o444)
    with unprivileged(paths.data), pytest.raises(ReadOnlyError) as caught:
        connect(paths.database, newest=NEWEST, busy_s=0)
    assert str(paths.database) in caught.value.message
    assert "right to write" in caught.value.remedy


@posix
def test_a_read_only_folder_is_said(open_folder: Path) -> None:
    paths = Paths.below(open_folder / "data")
    path = made(paths)
    with unprivileged(paths.data, path):
        paths.data.chmod(0o555)
        with pytest.raises(ReadOnlyError):
            connect(path, newest=NEWEST, busy_s=0)
        paths.data.chmod(0o755)


@posix
def test_a_folder_that_may_not_be_made_is_said(open_folder: Path) -> None:
    open_folder.chmod(0o555)
    with unprivileged(), pytest.raises(ReadOnlyError) as caught:
        Paths.below(open_folder / "data").prepare(lambda folder: None)
    assert "data" in caught.value.message


def test_read_only_found_while_writing(filed: Store) -> None:
    filed._database.rows("PRAGMA query_only=ON")
    with pytest.raises(ReadOnlyError), filed.write("use", NOON) as act:
        act.use_person("KT")


def test_a_full_disk_keeps_what_was_there(filed: Store) -> None:
    small_shop(filed)
    pages = filed._database.value("PRAGMA page_count")
    filed._database.rows(f"PRAGMA max_page_count={pages}")
    with pytest.raises(FullDiskError) as caught, filed.write("much", NOON) as act:
        for _ in range(400):
            act.add_event("x", "shop", 0, {"text": "y" * 200})
    assert str(filed.path) in caught.value.message
    assert "space" in caught.value.remedy
    assert filed.journal.events() == []
    filed._database.rows("PRAGMA max_page_count=1000000")
    with filed.write("again", NOON) as act:
        act.add_event("x", "shop", 0)
    assert len(filed.journal.events()) == 1


@pytest.fixture
def tiny_disk(tmp_path: Path) -> Iterator[Path]:
    folder = tmp_path / "tiny"
    folder.mkdir()
    mount = ["mount", "-t", "tmpfs", "-o", "size=600k", "tmpfs", str(folder)]
    may = sys.platform.startswith("linux") and os.geteuid() == 0 and shutil.which("mount")
    if not may or subprocess.run(mount, check=False, capture_output=True).returncode:
        pytest.skip("only root may mount a tiny disk")
    yield folder
    subprocess.run(["umount", str(folder)], check=True)


def test_a_disk_that_is_really_full_or_read_only(tiny_disk: Path) -> None:
    paths = Paths.below(tiny_disk / "data")
    store = Store.open(paths, NOON)
    small_shop(store)
    (tiny_disk / "fill").write_bytes(b"")
    with pytest.raises(OSError), (tiny_disk / "fill").open("wb", buffering=0) as stream:
        while True:
            if stream.write(b"x" * 4096) < 4096:
                raise OSError
    with pytest.raises(FullDiskError), store.write("more", NOON) as act:
        act.use_person("KT")
    with pytest.raises(FullDiskError):
        list(store.backup_slices(NOON))
    assert list(paths.backups.iterdir()) == []
    assert store.shop.persons() == [] and len(store.load_live().clubs) == 2
    (tiny_disk / "fill").unlink()
    with store.write("more", NOON) as act:
        act.use_person("KT")
    store.close()
    subprocess.run(["mount", "-o", "remount,ro", str(tiny_disk)], check=True)
    refused(paths, ReadOnlyError)


def test_a_missing_file_is_not_made_by_a_reader(tmp_path: Path) -> None:
    with pytest.raises(StoreError, match=r"absent\.db"):
        connect(tmp_path / "absent.db", newest=NEWEST, writable=False)
    assert list(tmp_path.iterdir()) == []


def test_a_mistake_of_ours_is_not_dressed_up(memory: Store) -> None:
    with pytest.raises(sqlite3.OperationalError):
        memory._database.rows("SELECT nonsense FROM nowhere")


@pytest.mark.parametrize(
    ("number", "kind"),
    [("ENOSPC", FullDiskError), ("EROFS", ReadOnlyError), ("EACCES", ReadOnlyError),
     ("EIO", StoreError)],
)  # fmt: skip
def test_faults_of_the_system(number: str, kind: type[StoreError]) -> None:
    import errno

    with pytest.raises(kind) as caught, guard(Path("/x/y")):
        raise OSError(getattr(errno, number), "no luck")
    assert type(caught.value) is kind
    assert "/x/y" in caught.value.message


def test_only_a_whole_transaction_is_seen_by_a_second_connection(filed: Store) -> None:
    other = sqlite3.connect(filed.path, isolation_level=None)
    with filed.write("use", NOON) as act:
        act.use_person("KT")
        assert other.execute("SELECT count(*) FROM person").fetchone() == (0,)
    assert other.execute("SELECT count(*) FROM person").fetchone() == (1,)
    other.close()
