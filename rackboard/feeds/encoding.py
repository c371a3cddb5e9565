"""A file's bytes, and what they say as text."""

from __future__ import annotations

import codecs
from typing import TYPE_CHECKING

from rackboard.core.errors import InputError, RackboardError
from rackboard.core.text import Text, text

if TYPE_CHECKING:
    from pathlib import Path

LARGEST_BYTES = 64 * 1024 * 1024
"""Some years of one-second readings; a larger file is taken for a mistake [decision]."""
_WANTED = text("Logger", "a temperature record as text (CSV)")


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
        remedy = text("Logger", "Export a shorter stretch, or split the file.")
        wanted = text("Logger", "a file of up to {most} MB").format(most=limit)
        raise InputError(wanted, f"{size // 1024**2} MB", where, remedy)


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
        raise RackboardError(
            text("Logger", "{path}: there is no such file.").format(path=path),
            text("Logger", "Check the name."),
        ) from None
    except IsADirectoryError:
        raise RackboardError(
            text("Logger", "{path} is a folder.").format(path=path),
            text("Logger", "Choose a file in it."),
        ) from None
    except PermissionError:
        raise RackboardError(
            text("Logger", "{path} may not be read by you.").format(path=path),
            text("Logger", "Copy it to a folder of yours."),
        ) from None
    except (OSError, ValueError) as error:
        said = getattr(error, "strerror", None) or str(error)
        raise RackboardError(
            text("Logger", "{path} can't be read: {reason}.").format(path=path, reason=said),
            text("Logger", "Is the drive or card still there?"),
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
        byte = text("Logger", "the byte {byte}").format(byte=f"0x{data[error.start]:02x}")
        wanted = text("Logger", "text in {encoding}").format(encoding="UTF-8")
        raise InputError(wanted, byte, line_of(where, line)) from None


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
        raise InputError(_WANTED, text("Logger", "an empty file"), where)
    if data.startswith(b"PK\x03\x04"):
        remedy = text("Logger", 'Open it there and save it as "CSV".')
        came = text("Logger", "a spreadsheet or a zip file")
        raise InputError(_WANTED, came, where, remedy)
    name = encoding or _guessed(data)
    try:
        content = data.decode(name, "replace" if name == "cp1252" else "strict")
    except LookupError:
        wanted = text("Logger", "an encoding such as utf-8 or cp1252")
        raise InputError(wanted, name, where) from None
    except (UnicodeError, ValueError):
        wanted = text("Logger", "text in {encoding}").format(encoding=name)
        raise InputError(wanted, text("Logger", "bytes that are none"), where) from None
    if "\x00" in content:
        raise InputError(_WANTED, text("Logger", "a binary file"), where)
    if not content.strip():
        raise InputError(_WANTED, text("Logger", "an empty file"), where)
    return content, name


def line_of(where: str, line_no: int) -> Text:
    """Return a line of a file as an error names it."""
    return text("Logger", "{file}, line {line}").format(file=where, line=line_no)


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
