"""The slots of a rack: how they are counted, and which shapes and names a rack can have."""

from __future__ import annotations

from enum import Enum

from rackboard.core.bench import Place, PlaceKind
from rackboard.core.errors import InputError
from rackboard.core.text import Text, text

LONGEST_NAME, LONGEST_PREFIX = 30, 3
MOST_ROWS, MOST_COLUMNS, MOST_SLOTS = 12, 20, 96
"""Limits of a rack [decision]."""
SLOTTED = (PlaceKind.RACK, PlaceKind.BOX)


class Keep(Enum):
    """What the clubs of a rack keep when its rows and columns change."""

    NUMBERS = "numbers"
    PLACES = "row and column"


def carried_over(slot: int, old: Place, new: Place) -> int | None:
    """Return the number of the same row and column in another shape; None if it has none."""
    row, column = divmod(slot, old.columns)
    if row >= new.rows or column >= new.columns:
        return None
    return row * new.columns + column


def shifted(ids: list[int], which: int, by: int) -> list[int]:
    """Return ids with one of them moved up (by < 0) or down, at most to the end."""
    at = ids.index(which)
    to = min(max(at + by, 0), len(ids) - 1)
    ids.insert(to, ids.pop(at))
    return ids


def one_line(name: str, longest: int, where: Text) -> str:
    """Return a name without the spaces round it.

    Raises
    ------
    InputError
        If it is empty, too long or not in one line.
    """
    name = name.strip()
    if not name or len(name) > longest or not name.isprintable():
        wanted = text("Furnishing", "a name in one line, up to {longest} characters")
        came = name or text("Furnishing", "nothing")
        raise InputError(wanted.format(longest=longest), came, where)
    return name


def check_prefix(prefix: str, others: list[Place]) -> str:
    """Return the letters of a rack's slots without the spaces round them.

    Raises
    ------
    InputError
        If they aren't one to three letters, or another place has them.
    """
    prefix = prefix.strip()
    where = text("Furnishing", "Prefix")
    if not prefix.isalpha() or len(prefix) > LONGEST_PREFIX:
        wanted = text("Furnishing", "one to three letters, such as A")
        raise InputError(wanted, prefix or text("Furnishing", "nothing"), where)
    same = [p for p in others if p.prefix and p.prefix.casefold() == prefix.casefold()]
    if same:
        wanted = text("Furnishing", "letters that no other rack has")
        came = text("Furnishing", "{prefix}, as of {place}")
        raise InputError(wanted, came.format(prefix=prefix, place=same[0].name), where)
    return prefix


def check_size(rows: int, columns: int) -> None:
    """Refuse what is no rack.

    Raises
    ------
    InputError
        If rows, columns or slots are too few or too many.
    """
    for value, most, where in (
        (rows, MOST_ROWS, text("Furnishing", "Rows")),
        (columns, MOST_COLUMNS, text("Furnishing", "Columns")),
    ):
        if not 1 <= value <= most:
            wanted = text("Furnishing", "a number from 1 to {most}").format(most=most)
            raise InputError(wanted, str(value), where)
    if rows * columns > MOST_SLOTS:
        raise InputError(
            text("Furnishing", "at most {most} slots").format(most=MOST_SLOTS),
            f"{rows} × {columns} = {rows * columns}", text("Furnishing", "Columns"),
        )  # fmt: skip
