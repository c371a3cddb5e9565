from __future__ import annotations

import os
import stat
from pathlib import Path

import pytest

from rackboard.store.faults import NetworkShareError, ReadOnlyError
from rackboard.store.paths import Paths, linux_share, windows_share

posix = pytest.mark.skipif(os.name == "nt", reason="rights are other things there")

TABLE = r"""
21 1 8:1 / / rw,relatime shared:1 - ext4 /dev/sda1 rw
30 21 0:25 / /home/kt/net rw,relatime shared:9 - nfs4 server:/x rw
31 30 0:26 / /home/kt/net/local rw - ext4 /dev/sdb1 rw
32 21 0:27 / /mnt/my\040share rw - cifs //server/x rw
33 21 0:28 / /mnt/ssh rw - fuse.sshfs kt@server: rw
34 21 0:29 / /mnt/nine rw - 9p C:\134 rw
35 21 0:30 / /mnt/auto rw - autofs systemd-1 rw
36 35 0:31 / /mnt/auto rw - smb3 //server/y rw
odd line
"""


@posix
@pytest.mark.parametrize(
    ("folder", "kind"),
    [
        ("/home/kt/.local/share/rackboard", None),
        ("/home/kt/net/rackboard", "nfs4"),
        ("/home/kt/net", "nfs4"),
        ("/home/kt/network", None),
        ("/home/kt/net/local/rackboard", None),
        ("/mnt/my share/data", "cifs"),
        ("/mnt/ssh/a/b/c", "fuse.sshfs"),
        ("/mnt/nine/Users", "9p"),
        ("/mnt/auto/data", "smb3"),
    ],
)
def test_share_of_a_linux_folder(folder: str, kind: str | None) -> None:
    assert linux_share(Path(folder), lambda: TABLE) == kind


def test_no_mount_table_is_no_share() -> None:
    assert linux_share(Path("/data"), lambda: "") is None


@posix
def test_a_link_to_a_share_is_a_share(tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    (tmp_path / "link").symlink_to(tmp_path / "real")
    real = os.path.realpath(tmp_path / "real")
    table = f"1 0 8:1 / / rw - ext4 a rw\n2 1 0:9 / {real} rw - nfs b rw\n"
    assert linux_share(tmp_path / "link" / "data", lambda: table) == "nfs"


@pytest.mark.parametrize(
    ("folder", "kind"),
    [
        (r"\\server\share\rackboard", r"UNC path \\server\share"),
        ("//server/share/rackboard", r"UNC path \\server\share"),
        (r"\\?\UNC\server\share\x", r"UNC path \\?\UNC\server\share"),
        (r"Z:\rackboard", "network drive Z:"),
        (r"C:\Users\kt", None),
    ],
)
def test_share_of_a_windows_folder(folder: str, kind: str | None) -> None:
    found = windows_share(folder, lambda root: 4 if root == "Z:\\" else 3)
    if folder.startswith("\\\\?\\"):  # how the drive is cut differs between Pythons
        assert found is not None and found.startswith("UNC path")
    else:
        assert found == kind


def test_a_network_share_is_refused_in_words_and_nothing_is_made(tmp_path: Path) -> None:
    paths = Paths.below(tmp_path / "data")
    with pytest.raises(NetworkShareError) as caught:
        paths.prepare(lambda folder: "cifs")
    assert str(paths.data) in caught.value.message
    assert "cifs" in caught.value.message
    assert "--data-dir" in caught.value.remedy
    assert not paths.data.exists()


@posix
def test_all_folders_lie_below_the_data_dir_and_are_private(tmp_path: Path) -> None:
    paths = Paths.below(tmp_path / "deep" / "data")
    paths.prepare(lambda folder: None)
    made = {paths.data, paths.backups, paths.config, paths.cache, paths.logs, paths.runtime}
    assert len(made) == 6
    for folder in made:
        assert folder.is_relative_to(tmp_path / "deep" / "data")
        assert stat.S_IMODE(folder.stat().st_mode) == 0o700
    assert paths.database == paths.data / "rackboard.db"
    assert paths.lock.parent == paths.data


@posix
def test_a_folder_that_was_there_keeps_its_rights(tmp_path: Path) -> None:
    tmp_path.chmod(0o755)
    Paths.below(tmp_path).prepare(lambda folder: None)
    assert stat.S_IMODE(tmp_path.stat().st_mode) == 0o755


@posix
def test_folders_of_the_user(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    for name in ("XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_CACHE_HOME", "XDG_RUNTIME_DIR",
                 "XDG_STATE_HOME"):  # fmt: skip
        monkeypatch.setenv(name, str(tmp_path / name))
    monkeypatch.setenv("HOME", str(tmp_path))
    paths = Paths.of_user()
    assert paths.data.name == "rackboard"
    assert all(
        folder.is_relative_to(tmp_path) for folder in (paths.data, paths.config, paths.cache)
    )


def test_a_file_in_the_way_is_said(tmp_path: Path) -> None:
    (tmp_path / "data").write_text("a file")
    with pytest.raises(ReadOnlyError, match="data") as caught:
        Paths.below(tmp_path / "data").prepare(lambda folder: None)
    assert caught.value.remedy
