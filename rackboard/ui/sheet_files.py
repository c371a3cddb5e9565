"""An epoxy's sheet from and to a TOML file."""

from __future__ import annotations

from pathlib import Path

from rackboard.core.epoxy import Sheet
from rackboard.core.errors import InputError
from rackboard.core.sheet_toml import sheet_from_toml, sheet_to_toml
from rackboard.core.text import text
from rackboard.feeds.encoding import decode_utf8, load
from rackboard.store.files import write_atomically


def import_sheet(path: Path) -> Sheet:
    """Return the sheet in a file.

    Raises
    ------
    RackboardError
        If the file can't be read, or holds no sheet.
    """
    data = load(path)
    if not data.strip():
        wanted = text("Sheet", "an epoxy's sheet as TOML")
        raise InputError(wanted, text("Sheet", "an empty file"), path.name)
    return sheet_from_toml(decode_utf8(data, path.name), path.name)


def export_sheet(path: Path, sheet: Sheet) -> Path:
    """Write a sheet to a file, whole or not at all; return the path with its ending.

    Raises
    ------
    RackboardError
        If the file can't be written.
    """
    target = path if path.suffix else path.with_suffix(".toml")
    write_atomically(target, sheet_to_toml(sheet))
    return target
