"""Where one is in a file that grows, and its whole lines as bytes."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from rackboard.core.instants import Instant

MARK = 64
"""So many bytes before a place tell whether it is still the same text."""


class Place(NamedTuple):
    """How far a file has been read; `mark` are the bytes before.

    `put_aside_us` is when it was seen to have got another name [µs UTC].
    """

    path: Path
    inode: int
    offset: int = 0
    mark: bytes = b""
    put_aside_us: Instant | None = None


def goes_on(path: Path, place: Place) -> bool:
    """Return whether the bytes before a place are those that were read there."""
    if not place.mark:
        return True
    with path.open("rb") as file:
        file.seek(place.offset - len(place.mark))
        return file.read(len(place.mark)) == place.mark


def _ends(encoding: str) -> Iterator[bytes]:
    for end in ("\n", "\r"):
        yield end.encode(encoding)


def whole_lines(data: bytes, encoding: str) -> int:
    """Return the length of the whole lines at the beginning of data."""
    for end in _ends(encoding):
        at = data.rfind(end)
        while at >= 0 and at % len(end):
            at = data.rfind(end, 0, at + len(end) - 1)
        if at >= 0:
            whole = at + len(end)
            if b"\n" in end or whole < len(data):
                return whole
            # A carriage return at the very end may be half of a line end.
            before = data.rfind(end, 0, at)
            return before + len(end) if before >= 0 and before % len(end) == 0 else 0
    return 0


def first_line(data: bytes, encoding: str) -> int:
    """Return the length of the first whole line."""
    for end in _ends(encoding):
        at = data.find(end)
        while at >= 0 and at % len(end):
            at = data.find(end, at + 1)
        if at >= 0:
            return at + len(end)
    return 0


def decoded(data: bytes, encoding: str) -> str:
    """Return the text of whole lines; Windows-1252 where the settled encoding fails."""
    try:
        return data.decode(encoding, "replace" if encoding == "cp1252" else "strict")
    except UnicodeDecodeError:
        return data.decode("cp1252", "replace")
