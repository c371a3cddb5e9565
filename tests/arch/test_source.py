"""House rules that a checker of style does not know."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

from helpers.project import PACKAGE, ROOT, package_files

CLOCK_CALLS = {
    ("datetime", "now"),
    ("datetime", "utcnow"),
    ("datetime", "today"),
    ("date", "today"),
    ("time", "time"),
    ("time", "time_ns"),
    ("time", "localtime"),
    ("time", "gmtime"),
    ("QDateTime", "currentDateTime"),
    ("QDateTime", "currentDateTimeUtc"),
    ("QDateTime", "currentMSecsSinceEpoch"),
    ("QDateTime", "currentSecsSinceEpoch"),
    ("QDate", "currentDate"),
    ("QTime", "currentTime"),
}


def clock_calls(source: str) -> Iterator[str]:
    """Yield where a source asks the system for the time of day."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Attribute):
            owner = node.value
            name = owner.attr if isinstance(owner, ast.Attribute) else getattr(owner, "id", "")
            if (name, node.attr) in CLOCK_CALLS:
                yield f"{node.lineno}: {name}.{node.attr}"
        elif isinstance(node, ast.ImportFrom) and node.module == "time":
            for alias in node.names:
                if ("time", alias.name) in CLOCK_CALLS:
                    yield f"{node.lineno}: from time import {alias.name}"


def test_the_clock_search_finds() -> None:
    assert list(clock_calls("import datetime\ndatetime.datetime.now(None)\n"))
    assert list(clock_calls("import time\nf = time.time\n"))
    assert list(clock_calls("from time import time_ns\n"))
    assert not list(clock_calls("import time\ntime.monotonic()\nclock.now()\n"))


def test_only_the_launcher_asks_the_system_for_the_time() -> None:
    found = [
        f"{path.relative_to(PACKAGE)}:{call}"
        for path in package_files()
        if path != PACKAGE / "app.py"
        for call in clock_calls(path.read_text(encoding="utf-8"))
    ]
    assert not found


def text_files() -> Iterator[Path]:
    for pattern in ("*.md", "*.toml", ".ci/*", "tests/**/*.py", "assets/**/*.py"):
        yield from sorted(ROOT.glob(pattern))
    yield from package_files()


def test_nothing_is_left_for_later() -> None:
    words = ("TO" + "DO", "FIX" + "ME", "XX" + "X")
    found = [
        f"{path}: {word}"
        for path in text_files()
        for word in words
        if word in path.read_text(encoding="utf-8")
    ]
    assert not found


def test_themes_are_tested_with_a_palette() -> None:
    """The call that sets a colour scheme does nothing offscreen; such a test shows nothing."""
    call = "set" + "ColorScheme"
    assert not [p for p in (ROOT / "tests").rglob("*.py") if call in p.read_text("utf-8")]


def test_modules_open_with_their_purpose_and_future_annotations() -> None:
    for path in package_files():
        tree = ast.parse(path.read_text(encoding="utf-8"))
        assert ast.get_docstring(tree), f"{path}: no docstring"
        if any(isinstance(n, ast.FunctionDef | ast.ClassDef) for n in tree.body):
            assert "from __future__ import annotations" in ast.unparse(tree), str(path)


# --- docstrings of the core match the signatures -------------------------------------------


def functions(tree: ast.AST, prefix: str = "") -> Iterator[tuple[str, ast.FunctionDef]]:
    for node in ast.iter_child_nodes(tree):
        if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            yield from functions(node, f"{prefix}{node.name}.")
        elif isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            yield prefix + node.name, node


def documented(docstring: str) -> list[str] | None:
    """Return the names in a numpy Parameters section; None if there is no such section."""
    lines = docstring.splitlines()
    for number, line in enumerate(lines[:-1]):
        if line == "Parameters" and set(lines[number + 1]) == {"-"}:
            break
    else:
        return None
    names: list[str] = []
    for position in range(number + 2, len(lines)):
        line = lines[position]
        following = lines[position + 1] if position + 1 < len(lines) else ""
        if following and set(following) == {"-"} and not line.startswith(" "):
            break
        if line and not line.startswith(" "):
            names += [n.strip().lstrip("*") for n in line.split(" : ")[0].split(",")]
    return names


def parameters(function: ast.FunctionDef) -> list[str]:
    a = function.args
    named = [
        *a.posonlyargs,
        *a.args,
        *([a.vararg] if a.vararg else []),
        *a.kwonlyargs,
        *([a.kwarg] if a.kwarg else []),
    ]
    return [n.arg for n in named if n.arg not in ("self", "cls")]


def core_functions() -> list[tuple[str, list[str], list[str]]]:
    found = []
    for path in package_files("core"):
        for name, function in functions(ast.parse(path.read_text(encoding="utf-8"))):
            names = documented(ast.get_docstring(function) or "")
            if names is not None:
                where = f"{path.relative_to(PACKAGE)}:{name}"
                found.append((where, names, parameters(function)))
    return found


@pytest.mark.parametrize(("where", "names", "real"), core_functions(), ids=lambda v: str(v)[:60])
def test_documented_parameters_are_the_real_ones(
    where: str, names: list[str], real: list[str]
) -> None:
    assert names == real, where


def test_the_docstring_reader_reads() -> None:
    text = (
        "Do.\n\nParameters\n----------\na, b : int\n    Two.\n*rest : int\n\n"
        "Returns\n-------\nint\n"
    )
    assert documented(text) == ["a", "b", "rest"]
    assert documented("Do.") is None
