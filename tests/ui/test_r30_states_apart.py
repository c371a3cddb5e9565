"""R30: each state has its own word, glyph, edge and fill; no fill is told apart by hue alone."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations, pairwise

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter

from helpers.board_values import worst_tiles
from helpers.colour_vision import MATRICES, cie76, lab
from rackboard.core.bench import HoldReason
from rackboard.core.words import Word
from rackboard.ui import edges, glyphs
from rackboard.ui.resources import load_fonts
from rackboard.ui.theme import COLD, FILLS, Theme, dark_theme, light_theme
from rackboard.ui.tile import HOLD_GLYPHS, WORD_GLYPHS, Glyph, Tile, word_text
from rackboard.ui.tile_painter import TilePainter
from rackboard.ui.tile_plan import mark

LEAST = 19.0
PLATES = {**{word.value: fill for word, fill in FILLS.items()}, "cold": COLD}
SMALLEST = {"normal": 36.0, "protan": 21.8, "deutan": 23.6, "tritan": 21.5}
"""Of this project's own design, computed before; a pin."""


@pytest.fixture(autouse=True)
def fonts(qapp: object) -> None:
    load_fonts()


def states() -> dict[str, Tile]:
    """One tile for each state, with one and the same club, slot and times."""
    base = replace(
        worst_tiles()[1], position=0.5, probably=None, not_before=None, time="20:55",
        caption="", detail="", detail_short="", next_glyph=None,
    )  # fmt: skip
    made = {word.value: replace(base, word=word) for word in Word}
    made |= {
        f"HOLD {reason}": replace(base, word=Word.HOLD, hold=reason) for reason in HoldReason
    }
    del made["HOLD"]
    made["WAIT cold"] = replace(base, cold="warm it")
    made["BENCH cold"] = replace(base, word=Word.BENCH, cold="warm it")
    return made


def plate(tile: Tile, theme: Theme, *, large: bool) -> QImage:
    """The upper part of a tile, in grey: its form without its colour."""
    width, height = (252, 197) if large else (163, 146)
    image = QImage(width, height, QImage.Format.Format_RGB32)
    image.fill(theme.bg)
    painter = QPainter(image)
    TilePainter(theme, large=large).paint(painter, QRectF(0, 0, width, height), tile)
    painter.end()
    return image.copy(0, 0, width, 78 if large else 58).convertToFormat(
        QImage.Format.Format_Grayscale8
    )


def test_check_values_of_the_colour_space() -> None:
    """Red of sRGB in CIELAB, known values; each row of a matrix keeps grey grey."""
    assert lab("#FF0000") == pytest.approx((53.24, 80.09, 67.20), abs=0.01)
    assert lab("#FFFFFF") == pytest.approx((100, 0, 0), abs=0.001)
    assert cie76("#000000", "#FFFFFF") == pytest.approx(100, abs=0.001)
    for rows in MATRICES.values():
        for row in rows:
            assert sum(row) == pytest.approx(1.0, abs=2e-6)


@pytest.mark.parametrize("vision", MATRICES)
def test_fills_are_apart_for_every_eye(vision: str) -> None:
    apart = {
        (a, b): cie76(PLATES[a], PLATES[b], vision) for a, b in combinations(PLATES, 2)
    }
    assert {pair: far for pair, far in apart.items() if far < LEAST} == {}
    assert min(apart.values()) == pytest.approx(SMALLEST[vision], abs=0.2)


def test_words_and_glyphs() -> None:
    assert len({word_text(word) for word in Word}) == len(Word)
    used = [*(WORD_GLYPHS[word] for word in Word if word is not Word.HOLD), *HOLD_GLYPHS.values()]
    assert len(set(used)) == len(used)
    assert Glyph.COLD not in used
    assert set(HOLD_GLYPHS) == set(HoldReason)


def test_edges() -> None:
    """Each word's edge is a line of its own; CURED has the second rule below a straight one."""
    width = 252.0
    straight = {
        word for word in Word if {y for _, y in edges.lower_edge(word, width, 1.0)} == {0.0}
    }
    assert straight == {Word.BENCH, Word.CURED, Word.STALE}
    others = [edges.lower_edge(word, width, 1.0) for word in Word if word not in straight]
    assert len(set(others)) == len(others)
    theme = dark_theme()
    rules = {}
    for word in straight:
        image = QImage(252, 80, QImage.Format.Format_RGB32)
        image.fill(theme.surf)
        painter = QPainter(image)
        edges.draw_plate(painter, theme, word, width, 46, 1.0)
        painter.end()
        column = [image.pixelColor(120, y).name() for y in range(46, 60)]
        rules[word] = sum(a != b for a, b in pairwise(column))
    assert rules[Word.CURED] > rules[Word.BENCH] == rules[Word.STALE]


@pytest.mark.parametrize("large", [True, False])
@pytest.mark.parametrize("theme", [dark_theme(), light_theme(), light_theme(high=True)])
def test_without_any_colour_the_plates_differ(theme: Theme, large: bool) -> None:
    """In grey, with the words taken away by their own shape, glyph and edge still tell."""
    pictures = {name: plate(tile, theme, large=large) for name, tile in states().items()}
    for (a, one), (b, other) in combinations(pictures.items(), 2):
        area = 24 * 24 if large else 18 * 18
        differing = sum(
            abs((one.pixel(x, y) & 255) - (other.pixel(x, y) & 255)) > 48
            for y in range(0, one.height())
            for x in range(0, 60 if large else 46)
        )
        assert differing > 0.1 * area, (a, b)


def overlap(one: Glyph, other: Glyph, size: int) -> float:
    """Share of the ink that two glyphs have in common, 0 to 1."""
    pictures = []
    for glyph in (one, other):
        image = QImage(size, size, QImage.Format.Format_Grayscale8)
        image.fill(0)
        painter = QPainter(image)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        glyphs.draw(painter, glyph, 0, 0, size, QColor("white"))
        painter.end()
        pictures.append([image.pixel(x, y) & 255 for y in range(size) for x in range(size)])
    both = sum(min(a, b) for a, b in zip(*pictures, strict=True))
    either = sum(max(a, b) for a, b in zip(*pictures, strict=True))
    return both / either


def test_glyphs_are_told_apart_at_a_glance() -> None:
    """At the smallest size that a tile has; "too hot" and "cold" share no thermometer."""
    for one, other in combinations(Glyph, 2):
        assert overlap(one, other, 14) < 0.62, (one, other)
    assert overlap(Glyph.HOT, Glyph.COLD, 14) < 0.4
    assert overlap(Glyph.FROM, Glyph.TICK, 14) < 0.4


def test_nothing_but_cured_wears_a_tick() -> None:
    """A permission to come is marked by bar and arrow, not by the tick it will be."""
    for tile in worst_tiles():
        if tile.word is not Word.CURED:
            assert Glyph.TICK not in (tile.glyph, mark(tile)), tile.word
