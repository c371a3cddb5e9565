"""Collects every text that can be said in another language, and compiles the catalogues.

Run it after a text has changed, translate what it calls unfinished in rackboard_de.ts (a text
editor or Qt Linguist), and run it again:

    python assets/languages/make_languages.py

The texts are found by reading the sources as Python: lupdate itself overlooks calls with a
computed number. It merges what was found into the catalogue and keeps what is translated.
"""

from __future__ import annotations

import ast
import json
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple
from xml.etree import ElementTree

HERE = Path(__file__).parent
PROJECT = HERE.parent.parent
PACKAGE = PROJECT / "rackboard"
COMPILED = PACKAGE / "ui" / "languages"
CODES = ("de",)
SAYERS = {("rackboard.core.text", "text"), ("rackboard.ui.language", "say")}
"""Functions that take context, source, the English singular, and a number."""


class Message(NamedTuple):
    """A text to be translated; `comment` is the English singular where there is a number."""

    context: str
    source: str
    comment: str
    numerus: bool


class Entry(NamedTuple):
    """What a catalogue has for a message: one form, or singular and plural."""

    forms: tuple[str, ...]
    finished: bool


def messages_of(path: Path) -> Iterator[Message | str]:
    """Yield the texts of one module, and as a string what isn't written out where it is said."""
    tree = ast.parse(path.read_text("utf-8"))
    sayers = {
        alias.asname or alias.name
        for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)
        for alias in node.names if (node.module, alias.name) in SAYERS
    }  # fmt: skip
    yield from _in(tree, "", sayers, path)


def _in(node: ast.AST, owner: str, sayers: set[str], path: Path) -> Iterator[Message | str]:
    for child in ast.iter_child_nodes(node):
        inner = child.name if isinstance(child, ast.ClassDef) else owner
        if isinstance(child, ast.Call):
            called = child.func
            if isinstance(called, ast.Name) and called.id in sayers:
                yield _said(child, [], path)
            elif isinstance(called, ast.Attribute) and called.attr == "tr":
                yield _said(child, [owner], path)
        yield from _in(child, inner, sayers, path)


def _said(call: ast.Call, before: list[str], path: Path) -> Message | str:
    written: list[object] = [*before]
    for argument in call.args[: 3 - len(before)]:
        written.append(argument.value if isinstance(argument, ast.Constant) else None)
    if call.keywords or len(written) < 2 or not all(isinstance(w, str) for w in written):
        return f"{path.relative_to(PROJECT)}:{call.lineno}"
    context, source, *rest = (str(w) for w in written)
    return Message(
        context, source, rest[0] if rest else "", len(call.args) + len(before) > len(written)
    )


def extracted(package: Path = PACKAGE) -> tuple[list[Message], list[str]]:
    """Return every text of the package, once and in order, and the places that hide theirs."""
    found = {message for path in package.rglob("*.py") for message in messages_of(path)}
    return (
        sorted(message for message in found if isinstance(message, Message)),
        sorted(place for place in found if isinstance(place, str)),
    )


def catalogue(path: Path) -> dict[Message, Entry]:
    """Return what a .ts file holds."""
    found = {}
    for context in ElementTree.parse(path).getroot().iter("context"):
        name = context.findtext("name") or ""
        for message in context.iter("message"):
            translation = message.find("translation")
            if translation is None:
                continue
            numerus = message.get("numerus") == "yes"
            forms = [form.text or "" for form in translation.iter("numerusform")]
            key = Message(
                name, message.findtext("source") or "", message.findtext("comment") or "", numerus
            )
            found[key] = Entry(
                tuple(forms) if numerus else (translation.text or "",),
                translation.get("type") is None,
            )
    return found


def update(code: str, ts: Path) -> None:
    """Put the texts of the package into a catalogue; what is gone is dropped."""
    with tempfile.TemporaryDirectory() as folder:
        calls = Path(folder) / "texts.py"
        calls.write_text("".join(map(_call, extracted()[0])), "utf-8")
        _run(
            "pyside6-lupdate", "-silent", "-no-obsolete", "-locations", "none", "-sort-messages",
            "-target-language", code, str(calls), "-ts", str(ts),
        )  # fmt: skip


def _call(message: Message) -> str:
    words = [json.dumps(part, ensure_ascii=False) for part in message[:3]]
    return f"translate({', '.join(words)}{', 1' if message.numerus else ''})\n"


def compile_catalogue(ts: Path, qm: Path) -> None:
    """Compile a catalogue; what isn't finished is left out."""
    qm.parent.mkdir(exist_ok=True)
    _run("pyside6-lrelease", "-silent", "-nounfinished", str(ts), "-qm", str(qm))


def _run(tool: str, *arguments: str) -> None:
    beside = Path(sys.executable).with_name(tool)
    subprocess.run([str(beside) if beside.exists() else tool, *arguments], check=True)


def main() -> int:
    hidden = extracted()[1]
    unfinished = len(hidden)
    for place in hidden:
        print(f"{place}: context and text are to be written out where the text is said")
    for code in CODES:
        ts = HERE / f"rackboard_{code}.ts"
        update(code, ts)
        compile_catalogue(ts, COMPILED / f"{code}.qm")
        for message, entry in catalogue(ts).items():
            if not entry.finished:
                unfinished += 1
                print(f"{code}: {message.context}: {message.source}")
    return min(unfinished, 1)


if __name__ == "__main__":
    sys.exit(main())
