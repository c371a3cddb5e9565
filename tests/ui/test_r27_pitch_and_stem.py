"""R27: the wall's lines stand 1.5 cap heights apart, and its stems suit light letters on dark."""

from __future__ import annotations

from itertools import pairwise

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage, QPainter

from rackboard.core.words import Word
from rackboard.ui import type
from rackboard.ui.resources import load_fonts
from rackboard.ui.theme import dark_theme
from rackboard.ui.type import Style
from rackboard.ui.wall_painter import lines
from rackboard.ui.wall_size import TILE, Viewing, sheet
from rackboard.ui.wall_strip import BIG, USUAL

SCALES = (1.0, 1.25, 1.5, 2.0)


@pytest.fixture(autouse=True)
def fonts(qapp: object) -> None:
    load_fonts()


@pytest.mark.parametrize("height", [TILE, TILE + 40, 2 * TILE])
@pytest.mark.parametrize("word", list(Word))
def test_line_pitch(word: Word, height: float) -> None:
    at = lines(height, word)
    last = at.reason if word in (Word.HOLD, Word.STALE) else at.time
    clubs = at.reason - 75 if word is Word.STALE else at.clubs
    for upper, lower in pairwise((at.word, at.job, clubs, last)):
        assert lower - upper >= 1.5 * 50


@pytest.mark.parametrize("size", [(1920, 1080), (1280, 800), (2560, 1440), (640, 360)])
@pytest.mark.parametrize("distance_m", [1.0, 3.0, 6.0, 20.0])
def test_no_tile_is_smaller_than_its_lines(size: tuple[int, int], distance_m: float) -> None:
    at = sheet(*size, Viewing(distance_m))
    wide, high = at.tile
    assert high >= TILE - 1e-6
    assert wide >= 366 - 1e-6
    last = at.cell(at.cells - 1)
    assert last.right() <= at.width
    assert last.bottom() <= at.height


@pytest.mark.parametrize("ratio", SCALES)
@pytest.mark.parametrize("style", [BIG, USUAL], ids=["word", "usual"])
def test_stem_of_light_letters_on_dark(style: Style, ratio: float) -> None:
    """Measured in the picture: the light of the row through the middle of an l."""
    image = QImage(round(100 * ratio), round(120 * ratio), QImage.Format.Format_ARGB32)
    image.setDevicePixelRatio(ratio)
    image.fill(Qt.GlobalColor.black)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    type.draw(painter, style, 20, 100, "I", dark_theme().white)
    painter.end()
    row = round((100 - type.cap_height(style) / 2) * ratio)
    light = sum(image.pixelColor(x, row).lightnessF() for x in range(image.width()))
    stem = light / ratio / type.cap_height(style)
    assert 1 / 8.5 <= stem <= 1 / 6.5
