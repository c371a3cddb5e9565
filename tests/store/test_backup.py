from __future__ import annotations

import os
import sqlite3
import threading
from contextlib import closing
from pathlib import Path

import pytest

from helpers.store import NOON, contents, small_shop
from rackboard.core.errors import StoreError
from rackboard.core.instants import DAY_US, HOUR_US, SECOND_US
from rackboard.store import Store, backup
from rackboard.store.backup import back_up, backups, due, made_at, restore, verify
from rackboard.store.faults import (
    DamagedFileError,
    ForeignFileError,
    FullDiskError,
    LockedFileError,
    NewerFileError,
)
from rackboard.store.paths import Paths


def fill(store: Store, count: int = 3_000) -> None:
    with store.write("much", NOON) as act:
        for n in range(count):
            act.add_event("x", "shop", n, {"text": f"{n:200d}"})


def run(slices) -> tuple[Path, list[float]]:
    shares = []
    while True:
        try:
            shares.append(next(slices))
        except StopIteration as done:
            return done.value, shares


def events_in(path: Path) -> int:
    with closing(sqlite3.connect(path)) as raw:
        assert raw.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        return raw.execute("SELECT count(*) FROM event").fetchone()[0]


def test_a_backup_is_whole_and_named_by_its_instant(filed: Store, paths: Paths) -> None:
    small_shop(filed)
    fill(filed)
    made, shares = run(backup.backup_slices(filed._database, paths.backups, NOON, pages=20))
    assert made.name == "rackboard-20260311T110000Z.db"
    assert made_at(made) == NOON
    assert len(shares) > 8 and shares == sorted(shares) and shares[-1] <= 1
    assert events_in(made) == 3_000
    assert list(paths.backups.iterdir()) == [made]
    assert os.name == "nt" or made.stat().st_mode & 0o077 == 0
    verify(made)


def test_what_is_written_between_two_slices_gets_in(filed: Store) -> None:
    fill(filed)
    slices = filed.backup_slices(NOON)
    next(slices)
    with filed.write("meanwhile", NOON) as act:
        act.add_event("meanwhile", "shop", 0)
    assert filed.journal.events(1)[0].kind == "meanwhile"
    made, rest = run(slices)
    assert rest
    assert events_in(made) == 3_001


def test_an_abandoned_backup_leaves_nothing(filed: Store, paths: Paths) -> None:
    fill(filed)
    threads = threading.active_count()
    slices = filed.backup_slices(NOON)
    next(slices)
    assert threading.active_count() == threads + 1
    slices.close()
    assert threading.active_count() == threads
    assert list(paths.backups.iterdir()) == []
    run(filed.backup_slices(NOON))
    never_begun = filed.backup_slices(NOON)
    never_begun.close()


def test_a_half_made_backup_of_a_killed_program_is_swept(filed: Store, paths: Paths) -> None:
    stale = paths.backups / "rackboard-20200101T000000Z.part"
    stale.write_bytes(b"half")
    made, _ = run(filed.backup_slices(NOON))
    assert list(paths.backups.iterdir()) == [made]


def test_the_last_ten_are_kept(filed: Store, paths: Paths) -> None:
    other = paths.backups / "mine.db"
    other.write_bytes(b"")
    for day in range(13):
        back_up(filed._database, paths.backups, NOON + day * DAY_US)
    kept = [made_at(path) for path in backups(paths.backups)]
    assert kept == [NOON + day * DAY_US for day in range(12, 2, -1)]
    assert other.exists()


def test_two_backups_in_one_second(filed: Store, paths: Paths) -> None:
    first = back_up(filed._database, paths.backups, NOON)
    second = back_up(filed._database, paths.backups, NOON)
    assert made_at(second) == made_at(first) + SECOND_US


def test_due_once_a_day(filed: Store, paths: Paths) -> None:
    assert filed.backup_due(NOON)
    back_up(filed._database, paths.backups, NOON)
    assert not filed.backup_due(NOON + DAY_US - SECOND_US)
    assert filed.backup_due(NOON + DAY_US)
    assert due(paths.backups, NOON - HOUR_US), "the clock was set back"
    back_up(filed._database, paths.backups, NOON - HOUR_US)
    assert not due(paths.backups, NOON - HOUR_US)


def test_a_full_disk_leaves_the_old_ones(
    filed: Store, paths: Paths, monkeypatch: pytest.MonkeyPatch
) -> None:
    old = [back_up(filed._database, paths.backups, NOON + n * DAY_US) for n in range(10)]
    fill(filed)
    plain = sqlite3.connect

    def cramped(target, *args, **named):
        raw = plain(target, *args, **named)
        if str(target).endswith(".part"):
            raw.execute("PRAGMA max_page_count=20")
        return raw

    monkeypatch.setattr(backup.sqlite3, "connect", cramped)
    with pytest.raises(FullDiskError) as caught:
        run(filed.backup_slices(NOON + 20 * DAY_US))
    assert str(paths.backups) in caught.value.message
    assert sorted(paths.backups.iterdir()) == sorted(old)


def test_damaged_data_is_not_kept_as_a_backup(filed: Store, paths: Paths) -> None:
    small_shop(filed)
    fill(filed)
    old = back_up(filed._database, paths.backups, NOON)
    root = filed._database.value("SELECT rootpage FROM sqlite_schema WHERE name = 'event'")
    filed.close()
    with paths.database.open("r+b") as stream:
        stream.seek((root - 1) * 4096)
        stream.write(b"\xff" * 4096)
    store = Store.open(paths, NOON)
    with pytest.raises(DamagedFileError):
        run(store.backup_slices(NOON + DAY_US))
    store.close()
    assert list(paths.backups.iterdir()) == [old]


def test_restore_puts_the_backup_back_and_keeps_the_present(paths: Paths) -> None:
    store = Store.open(paths, NOON)
    small_shop(store)
    before = contents(store)
    old, _ = run(store.backup_slices(NOON))
    fill(store)
    with store.write("rename", NOON) as act:
        act.update("club", 1, name="later")
    later = contents(store)
    store.close()
    kept = restore(paths, old, NOON)
    assert kept is not None and kept != old
    store = Store.open(paths, NOON)
    assert contents(store) == before and store.journal.events() == []
    store.close()
    restore(paths, kept, NOON + DAY_US)
    store = Store.open(paths, NOON)
    assert contents(store) == later and len(store.journal.events(9999)) == 3_000
    store.close()
    names = {path.name for path in paths.data.iterdir()}
    assert not any("part" in name or "journal" in name for name in names)


def test_restore_over_a_damaged_file_keeps_it_beside(paths: Paths) -> None:
    store = Store.open(paths, NOON)
    small_shop(store)
    old, _ = run(store.backup_slices(NOON))
    store.close()
    paths.database.write_bytes(b"rubbish" * 1000)
    paths.database.with_name("rackboard.db-journal").write_bytes(b"stale journal")
    kept = restore(paths, old, NOON)
    assert kept is not None and kept.suffix == ".damaged" and kept.read_bytes() == b"rubbish" * 1000
    assert not paths.database.with_name("rackboard.db-journal").exists()
    store = Store.open(paths, NOON)
    assert len(store.load_live().clubs) == 2
    store.close()


def test_restore_when_the_data_file_is_gone(paths: Paths) -> None:
    store = Store.open(paths, NOON)
    small_shop(store)
    old, _ = run(store.backup_slices(NOON))
    store.close()
    paths.database.unlink()
    assert restore(paths, old, NOON) is None
    assert backups(paths.backups) == [old]
    store = Store.open(paths, NOON)
    assert len(store.load_live().clubs) == 2
    store.close()


def rubbish(path: Path) -> None:
    path.write_bytes(b"rubbish" * 1000)


def theirs(path: Path) -> None:
    with closing(sqlite3.connect(path)) as raw:
        raw.execute("CREATE TABLE theirs (x)")


def nothing(path: Path) -> None:
    path.write_bytes(b"")


def newer(path: Path) -> None:
    with closing(sqlite3.connect(path)) as raw:
        raw.execute(f"PRAGMA application_id={0x7261636B}")
        raw.execute("PRAGMA user_version=99")


@pytest.mark.parametrize(
    ("spoil", "kind"),
    [(rubbish, DamagedFileError), (theirs, ForeignFileError), (nothing, ForeignFileError),
     (newer, NewerFileError), (lambda path: None, StoreError)],
)  # fmt: skip
def test_a_bad_backup_is_refused_and_nothing_changes(paths: Paths, spoil, kind) -> None:
    store = Store.open(paths, NOON)
    small_shop(store)
    store.close()
    before = paths.database.read_bytes()
    bad = paths.data / "bad.db"
    spoil(bad)
    with pytest.raises(kind, match=r"bad\.db"):
        restore(paths, bad, NOON)
    assert paths.database.read_bytes() == before
    assert list(paths.backups.iterdir()) == []


def test_restore_is_refused_while_the_data_is_in_use(
    paths: Paths, monkeypatch: pytest.MonkeyPatch
) -> None:
    store = Store.open(paths, NOON)
    old, _ = run(store.backup_slices(NOON))
    store._database.rows("BEGIN")
    store.shop.persons()
    before = paths.database.read_bytes()
    monkeypatch.setattr(backup, "connect", lambda *a, **k: plain(*a, **{**k, "busy_s": 0}))
    with pytest.raises(LockedFileError):
        restore(paths, old, NOON)
    assert paths.database.read_bytes() == before
    store.close()


plain = backup.connect


def test_a_store_without_a_file_has_no_backups(memory: Store) -> None:
    with pytest.raises(RuntimeError, match="no backups"):
        memory.backup_due(NOON)
