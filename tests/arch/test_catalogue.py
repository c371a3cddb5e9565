"""Every text that a person can see can be said in another language, and is."""

from __future__ import annotations

import ast
import importlib.util
import re
import string
import sys
from collections.abc import Iterator
from types import ModuleType
from typing import Any

import pytest

from helpers.project import PACKAGE, ROOT, package_files

LANGUAGES = ROOT / "assets" / "languages"


def _tool() -> ModuleType:
    spec = importlib.util.spec_from_file_location("make_languages", LANGUAGES / "make_languages.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules["make_languages"] = module
    spec.loader.exec_module(module)
    return module


tool = _tool()
CODES: tuple[str, ...] = tool.CODES


def names(text: str) -> set[str]:
    """Return the names in a text's braces."""
    return {name for _, name, _, _ in string.Formatter().parse(text) if name is not None}


@pytest.fixture(scope="module")
def sources() -> Any:
    return tool.extracted()


@pytest.fixture(params=CODES)
def catalogue(request: pytest.FixtureRequest) -> Any:
    return tool.catalogue(LANGUAGES / f"rackboard_{request.param}.ts")


def test_every_text_is_written_out_where_it_is_said(sources: Any) -> None:
    assert sources[1] == []


def test_braces_of_the_sources_can_be_filled(sources: Any) -> None:
    broken = []
    for message in sources[0]:
        try:
            names(message.source)
        except ValueError:
            broken.append(message)
        if message.comment and message.numerus and names(message.comment) - names(message.source):
            broken.append(message)
    assert broken == []


def test_the_catalogue_has_every_text_and_no_other(sources: Any, catalogue: Any) -> None:
    assert set(sources[0]) - set(catalogue) == set(), "run assets/languages/make_languages.py"
    assert set(catalogue) - set(sources[0]) == set(), "run assets/languages/make_languages.py"


def test_every_text_is_translated(catalogue: Any) -> None:
    open_ones = [
        message for message, entry in catalogue.items()
        if not entry.finished or not all(entry.forms)
    ]  # fmt: skip
    assert open_ones == []


def test_translations_keep_names_and_number(catalogue: Any) -> None:
    wrong = []
    for message, entry in catalogue.items():
        allowed = [names(message.source)]
        if message.numerus and message.comment:
            allowed.append(names(message.comment))
        for form in entry.forms:
            if names(form) not in allowed:
                wrong.append((message.source, form))
        # "One day" needs no figure, so only the plural has to say it.
        last = entry.forms[-1]
        if ("%n" in message.source) != ("%n" in last):
            wrong.append((message.source, last))
    assert wrong == []


def test_translations_keep_mnemonics_and_ends(catalogue: Any) -> None:
    wrong = []
    for message, entry in catalogue.items():
        for form in entry.forms:
            for end in ("…", ":", "?", "\n"):
                if message.source.endswith(end) != form.endswith(end):
                    wrong.append((message.source, form))
            if form != form.strip() and message.source == message.source.strip():
                wrong.append((message.source, form))
            if "'" in form or "..." in form:
                wrong.append((message.source, form))
    assert wrong == []


@pytest.mark.parametrize("code", CODES)
def test_the_compiled_catalogue_is_of_the_sources(qapp: object, code: str) -> None:
    from PySide6.QtCore import QTranslator

    compiled = QTranslator()
    assert compiled.load(str(PACKAGE / "ui" / "languages" / f"{code}.qm"))
    wrong = []
    for message, entry in tool.catalogue(LANGUAGES / f"rackboard_{code}.ts").items():
        for number, form in zip((1, 2) if message.numerus else (-1,), entry.forms, strict=True):
            found = compiled.translate(message.context, message.source, message.comment, number)
            if found != form:
                wrong.append((message.source, form, found))
    assert wrong == []


def test_the_catalogue_names_no_place() -> None:
    for path in LANGUAGES.glob("*.ts"):
        written = path.read_text("utf-8")
        assert "<location" not in written
        assert "texts.py" not in written


# What is said without being translated

_WORDS = re.compile(r"[A-Za-z]{2,} +[a-z]{2,}|[a-z]{2,}[.,;:…] |^[A-Z][a-z]{2,}$")
"""At least two words, or a single capitalised one."""
NOT_SAID = {
    "core/alerts/kinds.py": "codes",
    "core/alerts/machine.py": "codes",
    "core/alerts/rows.py": "codes",
    "core/spoken_german.py": "what people type",
    "core/spoken_time.py": "what people type",
    "services/alert_export.py": "the columns of a file, in English for other programs",
    "services/snapshot.py": "the keys of the settings",
    "ui/about.py": "names and licences",
    "ui/autostart.py": "what the system reads",
    "ui/awake.py": "what the system reads",
    "ui/bus.py": "what the system reads",
    "ui/language.py": "each language's name in itself",
}
"""Modules whose bare words nobody reads, and why."""
UNTRANSLATED = {
    "core/cure/run.py": {"Track", "Curves"},  # types
    "core/sheet_toml.py": {r" \(at (?:line (\d+), column \d+|end of document)\)$"},
    "services/alerts.py": {
        "customer reached", "back on the rack", "never left the rack", "no longer watched",
        "released by ", "got it",
    },
    "services/board.py": {"safe to hit", "may come off the rack", "new facts"},
    "services/draft.py": {"index mark", "tip weight"},
    "services/holding.py": {"moved after its working life"},
    "services/portrait.py": {"low said"},
    "services/teller.py": {"quiet hours", "failed: ", "good news"},
    "ui/bus_courier.py": {"got it", "Notify"},
    "ui/commands.py": {"Esc", "take off"},
    "ui/correction.py": {"index mark"},
    "ui/couriers.py": {
        "desktop notices", "keep running in the tray", "said that it stays in the tray",
    },
    "ui/curve_table.py": {"use by", "not before:"},
    "ui/inspector_presenter.py": {"lay out", "take off"},
    "ui/joint_history.py": {"hold ended:"},
    "ui/main.py": {"Fusion"},
    "ui/main_window.py": {"lay out", "take off", "first run"},
    "ui/record_reader.py": {"record reader"},
    "ui/trouble.py": {"log: "},
}  # fmt: skip
"""Codes and keys by module, that nobody reads."""
STYLE_SHEETS = re.compile("[{}]|^;")
SILENT = {
    "debug", "info", "warning", "error", "exception", "critical", "getLogger", "compile",
    "RuntimeError", "ValueError", "TypeError", "LookupError", "KeyError", "OSError",
    "NotImplementedError", "AssertionError", "FileNotFoundError", "setObjectName", "setProperty",
    "property", "setStyleSheet", "add_event", "strftime", "getattr", "frozenset", "TypeVar",
    "get",
}  # fmt: skip
"""Calls whose arguments no user sees."""
SAYERS = {"say", "text", "tr"}


def _called(node: ast.Call) -> str:
    function = node.func
    return function.attr if isinstance(function, ast.Attribute) else getattr(function, "id", "")


def untranslated(tree: ast.AST) -> Iterator[tuple[int, str]]:
    """Yield line and text of what looks like English words outside a translating call."""
    for child in ast.iter_child_nodes(tree):
        match child:
            case ast.Expr(value=ast.Constant()):  # a docstring
                pass
            case ast.ClassDef(bases=[ast.Name(id="StrEnum" | "Enum"), *_]):  # codes
                pass
            case ast.Call() if _called(child) in SILENT:
                pass
            case ast.Call() if _called(child) in SAYERS:
                for argument in child.args[3:]:
                    yield from untranslated(ast.Expression(argument))
            case ast.Assign(targets=[ast.Name(id="__all__" | "__slots__")]):
                pass
            case ast.arg() | ast.Compare() | ast.Subscript() | ast.Set():  # codes
                pass
            case ast.Dict(values=values):  # its keys are codes
                for value in values:
                    yield from untranslated(ast.Expression(value))
            case ast.AnnAssign(value=value):
                if value is not None:
                    yield from untranslated(ast.Expression(value))
            case ast.Constant(value=str(words)):
                if _WORDS.search(words):
                    yield child.lineno, words
            case _:
                yield from untranslated(child)


def test_the_search_finds() -> None:
    assert list(untranslated(ast.parse('label.setText("Got it, thanks")')))
    assert list(untranslated(ast.parse('x = f"{n} clubs of this"')))
    assert list(untranslated(ast.parse('button("Cancel")')))
    assert not list(untranslated(ast.parse('say("A", "Got it, thanks")')))
    assert not list(untranslated(ast.parse('class A(StrEnum):\n    B = "two words"')))
    assert not list(untranslated(ast.parse('logger.warning("no such thing")')))
    assert not list(untranslated(ast.parse('def f() -> None:\n    """Do what it says."""')))


@pytest.mark.parametrize("folder", ["ui", "services", "feeds", "core"])
def test_nothing_is_said_in_english_only(folder: str) -> None:
    found = []
    for path in package_files(folder):
        name = path.relative_to(PACKAGE).as_posix()
        if name not in NOT_SAID:
            found += [
                f"{name}:{line}: {words}"
                for line, words in untranslated(ast.parse(path.read_text("utf-8")))
                if words not in UNTRANSLATED.get(name, set()) and not STYLE_SHEETS.search(words)
            ]
    assert not found, "\n".join(found)
