"""A state's plate with its glyph and word, as a legend shows it."""

from __future__ import annotations

from PySide6.QtGui import QPainter

from rackboard.core.bench import HoldReason
from rackboard.core.words import Word
from rackboard.ui import edges, glyphs, type
from rackboard.ui.theme import Theme
from rackboard.ui.tile import HOLD_GLYPHS, WORD_GLYPHS, word_text
from rackboard.ui.type import Roles


def plate_size(roles: Roles) -> tuple[float, float]:
    """Return width and height of a plate; its edge reaches about 8 px below."""
    return (138.0, 44.0) if roles.large else (104.0, 32.0)


def draw_state(
    painter: QPainter,
    theme: Theme,
    roles: Roles,
    word: Word,
    hold: HoldReason | None = None,
) -> None:
    """Draw the plate of a word with its left top at 0, 0.

    Parameters
    ----------
    hold : HoldReason, optional
        Whose glyph a HOLD wears; by default that of a disturbed joint.
    """
    width, height = plate_size(roles)
    cut = 12.0 if word is Word.HOLD else 0.0
    edges.draw_plate(painter, theme, word, width, height, 0.75 if roles.large else 0.6, cut)
    glyph = WORD_GLYPHS[word] if hold is None else HOLD_GLYPHS[hold]
    size = 24.0 if roles.large else 17.0
    color = theme.on_fill(word)
    glyphs.draw(painter, glyph, 12, height / 2 - size / 2, size, color)
    style, said = roles.word._replace(px=24 if roles.large else 18), word_text(word)
    while type.width(style, said) > width - size - 29:  # a longer word of another language
        style = style._replace(px=style.px - 1)
    baseline = height / 2 + type.cap_height(style) / 2
    type.draw(painter, style, 12 + size + 9, baseline, said, color)
