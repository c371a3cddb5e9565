"""What README prints is what is tested, and what it names is there."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from helpers.project import ROOT
from rackboard import preflight

README = (ROOT / "README.md").read_text(encoding="utf-8")


def command(marker: str) -> str:
    """Return the one command in the fenced block after a marker."""
    found = re.findall(rf"^<!-- {marker} -->\n```\w*\n(.*?)^```$", README, re.M | re.S)
    assert len(found) == 1, marker
    lines = found[0].strip().splitlines()
    assert len(lines) == 1, "one copy-paste line"
    return str(lines[0])


def apt_packages(line: str) -> set[str]:
    (packages,) = re.findall(r"apt-get install -y (?:--no-install-recommends )?(.*?) &&", line)
    return set(packages.split())


@pytest.mark.parametrize("marker", ["demo-command", "test-command"])
def test_each_command_sets_up_everything(marker: str) -> None:
    line = command(marker)
    needed = {debian for debian, _ in (preflight.OFFSCREEN | preflight.XCB).values()}
    assert needed | {preflight.FONT_PACKAGES[0], "python3", "python3-venv"} <= apt_packages(line)
    assert "python3 -m venv .venv" in line
    assert line.count("$(command -v sudo)") == 2
    assert not re.search(r"(?<!-v )\bsudo\b", line), "it must work as root without sudo"


def test_the_demo_command_opens_the_demo() -> None:
    assert command("demo-command").endswith("&& .venv/bin/rackboard --demo")


def test_the_test_command_tests_the_wheel() -> None:
    line = command("test-command")
    assert line.endswith("&& .venv/bin/pytest")
    assert "'.[test]'" in line
    assert " -e " not in line
    assert {"xvfb", "xdotool"} <= apt_packages(line)


@pytest.mark.skipif(sys.platform == "win32", reason="a shell script")
def test_ci_runs_the_readme_s_test_command(tmp_path: Path) -> None:
    (tmp_path / ".ci").mkdir()
    shutil.copy(ROOT / ".ci" / "run", tmp_path / ".ci" / "run")
    line = command("test-command")
    fake = "pwd; echo \"CI=$CI\"; cat; echo 'read to the end'; exit 7"
    (tmp_path / "README.md").write_text(README.replace(line, fake), encoding="utf-8")
    done = subprocess.run(
        ["bash", str(tmp_path / ".ci" / "run")],
        cwd="/",
        env={"PATH": os.environ["PATH"]},
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )
    assert done.returncode == 7
    assert str(tmp_path) in done.stdout.splitlines()
    assert "CI=true" in done.stdout.splitlines()
    assert "read to the end" in done.stdout


@pytest.mark.skipif(sys.platform == "win32", reason="a shell script")
def test_ci_says_when_the_command_is_gone(tmp_path: Path) -> None:
    (tmp_path / ".ci").mkdir()
    shutil.copy(ROOT / ".ci" / "run", tmp_path / ".ci" / "run")
    (tmp_path / "README.md").write_text("nothing\n")
    done = subprocess.run(
        ["bash", str(tmp_path / ".ci" / "run")], capture_output=True, text=True, check=False
    )
    assert done.returncode == 2
    assert "test-command" in done.stderr


def test_files_that_readme_names_are_there() -> None:
    named = set(re.findall(r"\]\(([^)#:]+)\)", README))
    named |= set(re.findall(r"`((?:assets|rackboard|tests)/[\w./-]+)`", README))
    assert named
    assert not [name for name in sorted(named) if not (ROOT / name).exists()]


def test_the_job_comes_first() -> None:
    lines = [line for line in README.splitlines() if line.strip()]
    assert lines[0] == "# rackboard"
    assert len(lines[1].split()) > 40
