from __future__ import annotations

import sqlite3
from pathlib import Path

import pytest

from helpers.store import NOON, schema_text, small_shop
from rackboard.core.errors import StoreError
from rackboard.store import Store, migrations
from rackboard.store.backup import backups
from rackboard.store.connection import connect
from rackboard.store.migrations import NEWEST, STEPS, migrate
from rackboard.store.paths import Paths

SCHEMAS = Path(__file__).parent / "schemas"


def test_every_step_has_its_dump() -> None:
    assert sorted(path.name for path in SCHEMAS.glob("*.sql")) == [
        f"{number}.sql" for number in range(1, NEWEST + 1)
    ]


@pytest.mark.parametrize("number", range(1, NEWEST + 1))
def test_a_step_gives_exactly_the_released_schema(number: int, tmp_path: Path) -> None:
    path = tmp_path / "rackboard.db"
    if number > 1:
        raw = sqlite3.connect(path)
        raw.executescript((SCHEMAS / f"{number - 1}.sql").read_text(encoding="utf-8"))
        raw.close()
    database = connect(path, newest=NEWEST)
    assert migrate(database, steps=STEPS[:number]) == 1
    assert schema_text(database.raw) == (SCHEMAS / f"{number}.sql").read_text(encoding="utf-8")
    database.close()


def test_the_dump_is_a_working_schema(tmp_path: Path, paths: Paths) -> None:
    paths.prepare(lambda folder: None)
    raw = sqlite3.connect(paths.database)
    raw.executescript((SCHEMAS / f"{NEWEST}.sql").read_text(encoding="utf-8"))
    raw.close()
    store = Store.open(paths, NOON)
    shop = small_shop(store)
    assert {club.id for club in store.load_live().clubs} == set(shop.clubs)
    store.close()


def test_a_step_commits_with_its_number_or_not_at_all(filed: Store) -> None:
    small_shop(filed)
    database = filed._database
    before = schema_text(database.raw)
    steps = (*STEPS, ("CREATE TABLE extra (x) STRICT", "THIS IS NO SQL"))
    with pytest.raises(sqlite3.OperationalError):
        migrate(database, steps=steps)
    assert schema_text(database.raw) == before


def test_a_full_disk_leaves_the_file_at_a_whole_step(filed: Store) -> None:
    database = filed._database
    before = schema_text(database.raw)
    database.rows(f"PRAGMA max_page_count={database.value('PRAGMA page_count')}")
    step = tuple(f"CREATE TABLE extra{n} (x INTEGER) STRICT" for n in range(20))
    with pytest.raises(StoreError, match="full"):
        migrate(database, steps=(*STEPS, step))
    assert schema_text(database.raw) == before


def test_a_backup_precedes_a_migration(paths: Paths, monkeypatch: pytest.MonkeyPatch) -> None:
    store = Store.open(paths, NOON)
    small_shop(store)
    store.close()
    assert backups(paths.backups) == []
    steps = (*STEPS, ("CREATE TABLE extra (x INTEGER) STRICT",))
    monkeypatch.setattr(migrations, "STEPS", steps)
    monkeypatch.setattr("rackboard.store.store.NEWEST", NEWEST + 1)
    store = Store.open(paths, NOON)
    assert store._database.value("PRAGMA user_version") == NEWEST + 1
    store.close()
    (made,) = backups(paths.backups)
    old = sqlite3.connect(made)
    assert old.execute("PRAGMA user_version").fetchone() == (NEWEST,)
    assert old.execute("SELECT count(*) FROM club").fetchone() == (2,)
    old.close()


def test_a_new_file_needs_no_backup(filed: Store, paths: Paths) -> None:
    assert backups(paths.backups) == []


def test_ids_are_never_given_twice(memory: Store) -> None:
    from rackboard.core.bench import Customer

    with memory.write("add", NOON) as act:
        first = act.add(Customer(0, "Invented", ""))
    memory.apply_inverse(act.changes, "undo", NOON)
    with memory.write("add", NOON) as act:
        assert act.add(Customer(0, "Other", "")) != first


def test_a_notice_of_a_whole_job_becomes_an_alert_that_is_not_told_again(tmp_path: Path) -> None:
    path = tmp_path / "rackboard.db"
    raw = sqlite3.connect(path)
    raw.executescript((SCHEMAS / "1.sql").read_text(encoding="utf-8"))
    raw.executemany(
        "INSERT INTO notice (key, kind, subject, subject_id, due_us, raised_us, seen_us,"
        " withdrawn_us) VALUES (?, 'job safe', 'job', ?, ?, ?, ?, ?)",
        [("a:7:1", 7, 10, 20, None, 30), ("a:7:2", 7, 40, 50, None, None),
         ("a:8:1", 8, 60, 70, 80, None)],
    )  # fmt: skip
    raw.commit()
    raw.close()
    database = connect(path, newest=NEWEST)
    migrate(database)
    rows = database.rows(
        "SELECT subject_id, episode, phase, due_us, told_us, closed_us FROM alert ORDER BY id"
    )
    assert [tuple(row) for row in rows] == [
        (7, 1, "closed", 10, 20, 30), (7, 2, "due, unseen", 40, 50, None),
        (8, 1, "seen", 60, 70, None),
    ]  # fmt: skip
    database.close()
