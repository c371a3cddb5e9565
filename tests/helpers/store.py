"""A small invented shop in a store, and ways to look at a store from outside."""

from __future__ import annotations

import contextlib
import os
import sqlite3
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from rackboard.core.bench import (
    Batch,
    Club,
    Customer,
    Epoxy,
    Heating,
    Job,
    Joint,
    JointKind,
    Place,
    PlaceKind,
    Stay,
    Zone,
)
from rackboard.core.epoxy import FurtherTime, Range, Sheet
from rackboard.core.instants import HOUR_US, Instant
from rackboard.store import Store
from rackboard.store.changes import UNDOABLE
from rackboard.store.transaction import Transaction

NOON: Instant = 1_773_226_800 * 1_000_000

SHEET = Sheet(
    name="Invented 60/24",
    working_life_min=Range(50, 70),
    full_cure_time_h=Range(20, 28),
    handling_time_h=Range(6, 10),
    reference_temperature_c=25.0,
    further_times=(FurtherTime("full_cure", 50.0, Range(2, 2)),),
    mix_ratio_by_volume=(1.0, 1.0),
    density_g_per_ml=1.12,
)


@dataclass(frozen=True, slots=True)
class SmallShop:
    room: int
    rack: int
    box: int
    out: int
    epoxy: int
    batch: int
    customer: int
    job: int
    clubs: tuple[int, ...]
    joints: tuple[int, ...]
    stays: tuple[int, ...]


def add_places(act: Transaction) -> tuple[int, int, int, int]:
    """Room, rack, box, out of the shop."""
    room = act.add(Zone(0, "room", 0, Heating(480, 1080, 16_000)))
    warm = act.add(Zone(0, "warm box", 1))
    rack = act.add(Place(0, room, PlaceKind.RACK, "Rack A", "A", 3, 5, 0))
    box = act.add(Place(0, warm, PlaceKind.BOX, "Warm box", "W", 1, 4, 1))
    out = act.add(Place(0, None, PlaceKind.OUT, "Out", "", 0, 0, 9))
    return room, rack, box, out


def add_job(
    act: Transaction, number: str, customer: int, batch: int | None, names: tuple[str, ...]
) -> tuple[int, list[int], list[int]]:
    """A job with clubs, one glued joint each."""
    job = act.add(Job(0, number, customer, act.at_us))
    clubs = [act.add(Club(0, job, name, sort)) for sort, name in enumerate(names)]
    joints = [
        act.add(Joint(0, club, JointKind.SOLID_HEAD, 1320, batch, act.at_us if batch else None))
        for club in clubs
    ]
    return job, clubs, joints


def small_shop(store: Store) -> SmallShop:
    """Two irons of one job, curing on A1 and A2."""
    with store.write("set up", NOON, "KT") as act:
        room, rack, box, out = add_places(act)
        epoxy = act.add(Epoxy(0, SHEET, True))
        batch = act.add(Batch(0, 1, epoxy, SHEET, "L7", room, NOON))
        customer = act.add(Customer(0, "Quillon Vantreight", "0555 010203"))
        job, clubs, joints = add_job(act, "1042", customer, batch, ("6 iron", "7 iron"))
        stays = [act.add(Stay(0, club, rack, slot, NOON)) for slot, club in enumerate(clubs)]
    return SmallShop(
        room, rack, box, out, epoxy, batch, customer, job,
        tuple(clubs), tuple(joints), tuple(stays),
    )  # fmt: skip


def past_shop(store: Store, jobs: int, readings: int) -> SmallShop:
    """The small shop after years: jobs out of the shop, readings of one zone."""
    shop = small_shop(store)
    raw = store._database.raw
    raw.execute("BEGIN IMMEDIATE")
    for number in range(jobs):
        at_us = NOON - (jobs - number) * HOUR_US
        (job,) = raw.execute(
            "INSERT INTO job (number, customer_id, created_us) VALUES (?, ?, ?) RETURNING id",
            (f"P{number}", shop.customer, at_us),
        ).fetchall()[0]
        (club,) = raw.execute(
            "INSERT INTO club (job_id, name, sort) VALUES (?, 'putter', 0) RETURNING id", (job,)
        ).fetchall()[0]
        raw.execute(
            "INSERT INTO joint (club_id, kind, lag_s, batch_id, glued_us, parts, graphics)"
            " VALUES (?, 'solid head', 1320, ?, ?, 'shop', '')",
            (club, shop.batch, at_us),
        )
        raw.execute(
            "INSERT INTO stay (club_id, place_id, slot, from_us) VALUES (?, ?, NULL, ?)",
            (club, shop.out, at_us),
        )
    raw.executemany(
        "INSERT INTO reading VALUES (?, ?, 21000, 1000, 'feed')",
        ((shop.room, NOON - n * 300_000_000) for n in range(1, readings + 1)),
    )
    raw.execute("COMMIT")
    return shop


def contents(store: Store, tables: frozenset[str] = UNDOABLE) -> dict[str, list[Any]]:
    """All rows of tables; of readings only the typed ones."""
    found = {}
    for table in sorted(tables):
        where = " WHERE source LIKE 'typed%'" if table == "reading" else ""
        found[table] = store._database.rows(f'SELECT * FROM "{table}"{where} ORDER BY 1, 2')
    return found


def schema_text(connection: sqlite3.Connection) -> str:
    """The schema as SQL, in the order in which it was made, with the file's numbers."""
    version = connection.execute("PRAGMA user_version").fetchone()[0]
    owner = connection.execute("PRAGMA application_id").fetchone()[0]
    rows = connection.execute(
        "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL AND name <> 'sqlite_sequence'"
        " ORDER BY rowid"
    ).fetchall()
    lines = [f"PRAGMA application_id={owner};", f"PRAGMA user_version={version};"]
    return "\n".join(lines + [f"{row[0]};" for row in rows]) + "\n"


@contextlib.contextmanager
def unprivileged(*folders: Path) -> Iterator[None]:
    """Act as a user without rights, also when the tests are run by root."""
    if os.name == "nt" or os.geteuid() != 0:
        yield
        return
    for folder in folders:
        os.chown(folder, 65534, -1)
    os.seteuid(65534)
    try:
        yield
    finally:
        os.seteuid(0)
