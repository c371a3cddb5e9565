"""Sentences that can be said in another language later."""

from __future__ import annotations

import copy
import json
import pickle
import sqlite3

import pytest

from rackboard.core.errors import InputError, RackboardError
from rackboard.core.temperature import Unit, format_temperature
from rackboard.core.text import Figure, Text, text


def test_is_an_english_string_to_whoever_passes_it_on() -> None:
    said = text("Board", "The {club} is at {slot}.").format(club="driver", slot="A3")
    assert said == "The driver is at A3."
    assert f"{said}!" == "The driver is at A3.!"
    assert json.dumps(said) == '"The driver is at A3."'
    kept = sqlite3.connect(":memory:").execute("SELECT ?", (said,)).fetchone()[0]
    assert kept == said


def test_keeps_its_source_and_parts() -> None:
    said = text("Board", "The {club} is at {slot}.").format(club="driver", slot="A3")
    assert (said.context, said.source) == ("Board", "The {club} is at {slot}.")
    assert said.parts == {"club": "driver", "slot": "A3"}
    assert said.number == -1


def test_a_part_may_be_a_sentence_of_its_own() -> None:
    inner = text("Board", "{n} clubs").format(n=3)
    outer = text("Board", "Wanted {what}.").format(what=inner)
    assert outer == "Wanted 3 clubs."
    assert isinstance(outer.parts["what"], Text)


@pytest.mark.parametrize(
    ("number", "english"), [(0, "0 clubs of 2417"), (1, "1 club of 2417"), (8, "8 clubs of 2417")]
)
def test_plural_and_singular(number: int, english: str) -> None:
    said = text("Jobs", "%n clubs of {job}", "%n club of {job}", number).format(job="2417")
    assert said == english
    assert (said.number, said.one) == (number, "%n club of {job}")


def test_without_a_singular_the_plural_stands() -> None:
    assert text("Jobs", "at most %n clubs", "", 1) == "at most 1 clubs"


def test_a_part_needs_a_name() -> None:
    with pytest.raises(TypeError, match="needs a name"):
        text("Jobs", "{0} clubs").format(3)


def test_braces_in_a_part_are_left_alone() -> None:
    assert text("Jobs", "by {name}").format(name="{odd}") == "by {odd}"


def test_a_figure_is_told_from_a_text() -> None:
    shown = format_temperature(17_400, Unit.C)
    assert isinstance(shown, Figure)
    assert not isinstance(shown, Text)


def test_copies_are_equal_strings() -> None:
    said = text("Board", "Got it")
    assert copy.copy(said) == said
    assert pickle.loads(pickle.dumps(said)) == said


def test_an_error_is_a_sentence_of_sentences() -> None:
    error = InputError(text("Sheet", "a number"), "x", "sheet", text("Sheet", "Type one."))
    assert str(error) == "sheet: wanted a number, got x. Type one."
    assert isinstance(error.message, Text)
    assert isinstance(error.message.parts["wanted"], Text)
    assert isinstance(str(error), str)


def test_an_error_without_a_remedy_is_its_message() -> None:
    assert str(RackboardError("Full.")) == "Full."


def test_a_long_value_is_cut_in_an_error() -> None:
    error = InputError("a name", "y" * 100, "form")
    assert str(error) == f"form: wanted a name, got {'y' * 77}...."
