from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest

from rackboard.store import files
from rackboard.store.faults import FullDiskError, ReadOnlyError
from rackboard.store.files import write_atomically


def test_a_file_is_written_and_replaced(tmp_path: Path) -> None:
    path = tmp_path / "sheet.toml"
    write_atomically(path, "name = 'x ⅜'")
    write_atomically(path, b"new")
    assert path.read_bytes() == b"new"
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize("failing", ["fsync", "replace"])
def test_a_fault_leaves_the_old_file_and_no_litter(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, failing: str
) -> None:
    path = tmp_path / "sheet.toml"
    write_atomically(path, "old")

    def full(*_: object) -> None:
        raise OSError(errno.ENOSPC, "no room")

    if failing == "fsync":
        monkeypatch.setattr(files.os, "fsync", full)
    else:
        monkeypatch.setattr(Path, "replace", full)
    with pytest.raises(FullDiskError, match=r"sheet\.toml"):
        write_atomically(path, "new")
    monkeypatch.undo()
    assert path.read_text() == "old"
    assert list(tmp_path.iterdir()) == [path]


def test_the_content_is_on_the_disk_before_the_name(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    order: list[str] = []
    sync, replace = os.fsync, Path.replace
    monkeypatch.setattr(files.os, "fsync", lambda fd: (order.append("sync"), sync(fd)))
    monkeypatch.setattr(Path, "replace", lambda a, b: (order.append("name"), replace(a, b)))
    write_atomically(tmp_path / "x", "x")
    assert order == (["sync", "name"] if os.name == "nt" else ["sync", "name", "sync"])


def test_a_missing_folder_is_said(tmp_path: Path) -> None:
    with pytest.raises(ReadOnlyError, match="absent"):
        write_atomically(tmp_path / "absent" / "x", "x")
