"""Pieces of SQL for one row of any table, and what a failed index means at the bench."""

from __future__ import annotations

from collections.abc import Mapping

from rackboard.core.errors import InputError
from rackboard.core.text import text
from rackboard.store.changes import KEYS
from rackboard.store.connection import Database


def matching(table: str) -> str:
    """Return the condition that finds a row by its key."""
    return " AND ".join(f'"{name}" = ?' for name in KEYS[table])


def listed(row: Mapping[str, object]) -> str:
    """Return the columns of a row, as after INSERT INTO."""
    return ", ".join(f'"{name}"' for name in row)


def marks(row: Mapping[str, object]) -> str:
    """Return a mark for each value of a row."""
    return ", ".join("?" * len(row))


def assigned(row: Mapping[str, object]) -> str:
    """Return the columns of a row, as after SET."""
    return ", ".join(f'"{name}" = ?' for name in row)


def taken(
    database: Database, table: str, row: Mapping[str, object], message: str
) -> InputError | None:
    """Return what the index that failed means at the bench."""
    if "job.number" in message:
        wanted = text("Store", "a number that no other job has")
        return InputError(wanted, str(row["number"]), text("Store", "job number"))
    if table != "stay" or "UNIQUE" not in message:
        return None
    by_slot = "stay.slot" in message
    column, value = ("place_id", row["place_id"]) if by_slot else ("club_id", row["club_id"])
    found = database.row(
        "SELECT p.prefix || (s.slot + 1), p.name, c.name, j.number FROM stay s"
        " JOIN place p ON p.id = s.place_id JOIN club c ON c.id = s.club_id"
        f" JOIN job j ON j.id = c.job_id WHERE s.{column} = ? AND s.to_us IS NULL"
        + (" AND s.slot = ?" if by_slot else ""),
        (value, row["slot"]) if by_slot else (value,),
    )
    if found is None:
        return None
    slot, place, club, number = found
    if by_slot:
        there = text("Store", "{club} of job {number}, already there")
        return InputError(
            text("Store", "a free slot"), there.format(club=club, number=number), slot
        )  # fmt: skip
    return InputError(
        text("Store", "a club that lies nowhere else"),
        text("Store", "one at {place}").format(place=slot or place),
        text("Store", "{club} of job {number}").format(club=club, number=number),
    )
