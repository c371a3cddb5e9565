"""A file's bytes, and what they say as text."""

from __future__ import annotations

import codecs
from typing import TYPE_CHECKING

from rackboard.core.errors import InputError, RackboardError

if TYPE_CHECKING:
    from pathlib import Path

LARGEST_BYTES = 64 * 1024 * 1024
"""Some years of one-second readings; a larger file is taken for a mistake [decision]."""
_WANTED = "a temperature record as text (CSV)"


def check_size(size: int, where: str) -> None:
    """Refuse more than 64 MB.

    Parameters
    ----------
    size : int
        Bytes.
    where : str
        The file.

    Raises
    ------
    InputError
        If it is larger.
    """
    if size > LARGEST_BYTES:
        limit = LARGEST_BYTES // 1024**2
        remedy = "Export a shorter stretch, or split the file."
        raise InputError(f"a file of up to {limit} MB", f"{size // 1024**2} MB", where, remedy)


def load(path: Path) -> bytes:
    """Return a file's bytes.

    Parameters
    ----------
    path : Path
        The file.

    Returns
    -------
    bytes
        At most 64 MB.

    Raises
    ------
    RackboardError
        If it can't be read; the message says why.
    InputError
        If it is too large.
    """
    try:
        with path.open("rb") as file:
            data = file.read(LARGEST_BYTES + 1)
            size = len(data) if len(data) <= LARGEST_BYTES else path.stat().st_size
    except FileNotFoundError:
        raise RackboardError(f"{path}: there is no such file.", "Check the name.") from None
    except IsADirectoryError:
        raise RackboardError(f"{path} is a folder.", "Choose a file in it.") from None
    except PermissionError:
        raise RackboardError(
            f"{path} may not be read by you.", "Copy it to a folder of yours."
        ) from None
    except (OSError, ValueError) as error:
        said = getattr(error, "strerror", None) or str(error)
        raise RackboardError(
            f"{path} can't be read: {said}.", "Is the drive or card still there?"
        ) from None
    check_size(max(size, len(data)), str(path))
    return data


def decode_utf8(data: bytes, where: str) -> str:
    """Return UTF-8 text, with or without its byte-order mark, or name the line that is not.

    Parameters
    ----------
    data : bytes
        The file.
    where : str
        The file's name.

    Returns
    -------
    str
        The text.

    Raises
    ------
    InputError
        If it is too large or no UTF-8.
    """
    check_size(len(data), where)
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        byte = f"the byte 0x{data[error.start]:02x}"
        raise InputError("text in UTF-8", byte, f"{where}, line {line}") from None


def decode(data: bytes, where: str, encoding: str | None = None) -> tuple[str, str]:
    """Return the text of a logger's file and the encoding that it was read in.

    Tried in turn: the byte-order marks of UTF-8 and UTF-16, UTF-8, Windows-1252. No
    guessing by letter statistics: a degree sign alone is too little for it.

    Parameters
    ----------
    data : bytes
        The file.
    where : str
        The file's name.
    encoding : str, optional
        A person's answer.

    Returns
    -------
    tuple of str
        The text and the encoding.

    Raises
    ------
    InputError
        If it is empty, too large or no text.
    """
    check_size(len(data), where)
    if not data.strip():
        raise InputError(_WANTED, "an empty file", where)
    if data.startswith(b"PK\x03\x04"):
        remedy = 'Open it there and save it as "CSV".'
        raise InputError(_WANTED, "a spreadsheet or a zip file", where, remedy)
    name = encoding or _guessed(data)
    try:
        text = data.decode(name, "replace" if name == "cp1252" else "strict")
    except LookupError:
        raise InputError("an encoding such as utf-8 or cp1252", name, where) from None
    except (UnicodeError, ValueError):
        raise InputError(f"text in {name}", "bytes that are none", where) from None
    if "\x00" in text:
        raise InputError(_WANTED, "a binary file", where)
    if not text.strip():
        raise InputError(_WANTED, "an empty file", where)
    return text, name


def _guessed(data: bytes) -> str:
    if data.startswith(codecs.BOM_UTF8):
        return "utf-8-sig"
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        return "utf-16"
    try:
        data.decode("utf-8")
    except UnicodeDecodeError:
        return "cp1252"
    return "utf-8"
