"""Imports run one way, and Qt and other people's packages stay where they belong."""

from __future__ import annotations

import ast
import sys
from pathlib import Path

import pytest

from helpers.project import PACKAGE, ROOT, package_files, run_python

LOWER = ("core", "store", "services", "feeds", "prompt.py", "logs.py", "preflight.py")

IMPORT_ALL = """
import sys
for blocked in ("PySide6", "shiboken6"):
    sys.modules[blocked] = None
import importlib, pkgutil, rackboard
names = []
for name in sys.argv[1:]:
    module = importlib.import_module("rackboard." + name)
    names.append(module.__name__)
    for found in pkgutil.walk_packages(getattr(module, "__path__", []), module.__name__ + "."):
        importlib.import_module(found.name)
        names.append(found.name)
print("\\n".join(names))
"""


def test_lower_layers_import_without_qt() -> None:
    present = [name.removesuffix(".py") for name in LOWER if (PACKAGE / name).exists()]
    done = run_python("-c", IMPORT_ALL, *present)
    assert done.returncode == 0, done.stderr
    assert "rackboard.core.instants" in done.stdout.split()
    assert {"rackboard.logs", "rackboard.preflight"} <= set(done.stdout.split())


def test_the_block_works() -> None:
    done = run_python("-c", IMPORT_ALL, "ui.resources")
    assert done.returncode != 0
    assert "PySide6" in done.stderr


def test_launcher_imports_without_qt() -> None:
    done = run_python(
        "-c", "import sys, rackboard.app, rackboard.ui; sys.exit('PySide6' in sys.modules)"
    )
    assert done.returncode == 0, done.stderr


def test_import_linter_contracts() -> None:
    done = run_python(
        "-c",
        "import sys; from importlinter.cli import lint_imports;"
        "sys.exit(lint_imports(no_cache=True))",
        cwd=ROOT,
    )
    assert done.returncode == 0, done.stdout + done.stderr


def imported_roots(path: Path) -> set[str]:
    roots: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            roots |= {alias.name.split(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}:{node.lineno}: relative import"
            roots.add((node.module or "").split(".")[0])
    return roots


@pytest.mark.parametrize(
    "path", list(package_files("core")), ids=lambda p: str(p.relative_to(PACKAGE))
)
def test_core_needs_the_standard_library_only(path: Path) -> None:
    strangers = imported_roots(path) - set(sys.stdlib_module_names) - {"rackboard"}
    assert not strangers


@pytest.mark.parametrize(
    "path", list(package_files("core")), ids=lambda p: str(p.relative_to(PACKAGE))
)
def test_core_does_no_input_or_output(path: Path) -> None:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    calls = {
        n.func.id
        for n in ast.walk(tree)
        if isinstance(n, ast.Call) and isinstance(n.func, ast.Name)
    }
    assert not calls & {"open", "print", "input"}
    assert not imported_roots(path) & {
        "io",
        "os",
        "pathlib",
        "shutil",
        "socket",
        "sqlite3",
        "subprocess",
        "tempfile",
        "time",
        "threading",
        "logging",
        "urllib",
    }
