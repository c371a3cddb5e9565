"""Texts are cut after a word, and only when no narrower face helps."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rackboard.ui import type
from rackboard.ui.resources import load_fonts
from rackboard.ui.shortening import fitted, sentences, shortened
from rackboard.ui.type import Roles

WORDS = st.lists(st.text("abcdefghij", min_size=1, max_size=14), min_size=1, max_size=8)


@pytest.fixture(autouse=True)
def fonts(qapp: object) -> None:
    load_fonts()


@given(words=WORDS, room=st.floats(20, 400))
def test_what_is_left_fits_and_ends_after_a_word(words: list[str], room: float) -> None:
    load_fonts()
    style = Roles(large=True).fact
    text = " ".join(words)
    short = shortened(style, text, room)
    assert type.width(style, short) <= room
    if short == text:
        return
    kept = short.removesuffix("…").split()
    if len(kept) > 1 or (kept and kept[0] == words[0]):
        assert kept == words[: len(kept)]


def test_a_narrow_face_comes_first() -> None:
    roles = Roles(large=True)
    text = "probably hard by Wed 20:55"
    usual = type.width(roles.fact, text)
    assert fitted((roles.fact, roles.fact_narrow), text, usual) == (roles.fact, text)
    assert fitted((roles.fact, roles.fact_narrow), text, usual - 4) == (roles.fact_narrow, text)
    style, short = fitted((roles.fact, roles.fact_narrow), text, 0.6 * usual)
    assert style == roles.fact_narrow
    assert short.endswith("…")


def test_sentences_run_on_and_the_last_is_left_out() -> None:
    style = Roles(large=False).fact
    parts = ("Disturbed 14:19, before it was safe to hit.", "Head turned?", "Say what you did.")
    wide = type.width(style, parts[0])
    assert sentences(style, parts[:2], wide + 10, 2) == list(parts[:2])
    lines = sentences(style, parts, 0.7 * wide, 2)
    assert len(lines) == 2
    assert all(type.width(style, line) <= 0.7 * wide for line in lines)
    assert " ".join(lines).startswith(parts[0])
    (one,) = sentences(style, parts, 0.5 * wide, 1)
    assert one.endswith("…")
    assert sentences(style, (), 100, 2) == []
