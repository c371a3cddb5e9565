"""R29: contrasts by the WCAG formula, in every scheme, at every scale, after a change of theme."""

from __future__ import annotations

from collections import Counter

import pytest
from PySide6.QtGui import QColor, QPalette
from pytestqt.qtbot import QtBot

from helpers.contrast import contrast
from helpers.wall_values import areas, paint, tile, view
from rackboard.core.words import Word
from rackboard.ui.resources import load_fonts
from rackboard.ui.theme import (
    COLD,
    DARK_TOKENS,
    FILLS,
    HIGH_DARK_TOKENS,
    HIGH_LIGHT_TOKENS,
    INK,
    LIGHT_TOKENS,
    Theme,
    dark_theme,
    light_theme,
)
from rackboard.ui.wall import Wall
from rackboard.ui.wall_painter import lines
from rackboard.ui.wall_size import TILE, Viewing

SCALES = (1.0, 1.25, 1.5, 2.0)
NORMAL = {"dark": DARK_TOKENS, "light": LIGHT_TOKENS}
HIGH = {"dark": HIGH_DARK_TOKENS, "light": HIGH_LIGHT_TOKENS}
GROUNDS = ("bg", "strip", "surf", "surf2", "plot")
THEMES = {
    "dark": dark_theme(), "light": light_theme(),
    "dark high": dark_theme(high=True), "light high": light_theme(high=True),
}  # fmt: skip


def between(a: QColor, b: QColor) -> float:
    return contrast(a.name(), b.name())


@pytest.mark.parametrize(
    ("a", "b", "ratio"),
    [("#000000", "#FFFFFF", 21.0), ("#767676", "#FFFFFF", 4.54), ("#777777", "#FFFFFF", 4.48)],
)
def test_the_formula_by_its_check_values(a: str, b: str, ratio: float) -> None:
    assert contrast(a, b) == pytest.approx(ratio, abs=0.005)
    assert contrast(b, a) == contrast(a, b)


@pytest.mark.parametrize("name", NORMAL)
def test_tokens(name: str) -> None:
    tokens = NORMAL[name]
    for ground in GROUNDS:
        for text in ("text", "sub"):
            assert contrast(tokens[text], tokens[ground]) >= 4.5, (text, ground)
        assert contrast(tokens["ring"], tokens[ground]) >= 3.0
    for ground in ("bg", "strip", "surf"):
        assert contrast(tokens["dim"], tokens[ground]) >= 4.5, ground
    for mark in ("edge", "out"):
        for ground in ("bg", "surf"):
            assert contrast(tokens[mark], tokens[ground]) >= 3.0, (mark, ground)


@pytest.mark.parametrize("name", HIGH)
def test_tokens_of_high_contrast(name: str) -> None:
    tokens = HIGH[name]
    for ground in GROUNDS:
        for text in ("text", "sub", "dim"):
            assert contrast(tokens[text], tokens[ground]) >= 7.0, (text, ground)
        for mark in ("edge", "out", "line", "ring"):
            assert contrast(tokens[mark], tokens[ground]) >= 4.5, (mark, ground)


@pytest.mark.parametrize("theme", THEMES.values(), ids=THEMES)
def test_words_and_plates(theme: Theme) -> None:
    """Word and glyph on their fill 7; the plate, or its rim, against the tile."""
    least = 4.5 if theme.high else 3.0
    for word in Word:
        fill = theme.fills[word]
        assert between(theme.on_fill(word), fill) >= 7.0, word
        rims = [fill]
        if word is Word.WAIT and theme.dark:
            rims.append(theme.wait_rim)
        if not theme.dark:
            rims.append(theme.ink)
        assert max(between(rim, theme.surf) for rim in rims) >= least, word
    assert contrast(INK, COLD) >= 7.0
    assert {word: fill.name().upper() for word, fill in theme.fills.items()} == FILLS


@pytest.mark.parametrize("theme", THEMES.values(), ids=THEMES)
def test_word_and_time_on_the_wall_have_seven(theme: Theme) -> None:
    pairs = [(theme.text, theme.surf), (theme.sub, theme.surf), (theme.text, theme.strip)]
    pairs += [(theme.ink, theme.fills[Word.HOLD]), (theme.bg, theme.text)]
    for ink, ground in pairs:
        assert between(ink, ground) >= 7.0, (ink.name(), ground.name())
    assert between(theme.sub, theme.strip) >= 4.5
    assert between(theme.dim, theme.bg) >= (7.0 if theme.high else 4.5)


@pytest.mark.parametrize("theme", THEMES.values(), ids=THEMES)
def test_palette(theme: Theme) -> None:
    palette, role = theme.palette(), QPalette.ColorRole
    least = 7.0 if theme.high else 4.5
    for front, back in (
        (role.WindowText, role.Window), (role.Text, role.Base), (role.Text, role.AlternateBase),
        (role.ButtonText, role.Button), (role.HighlightedText, role.Highlight),
        (role.ToolTipText, role.ToolTipBase), (role.Link, role.Window),
        (role.PlaceholderText, role.Base),
    ):  # fmt: skip
        assert between(palette.color(front), palette.color(back)) >= least, front


def _inks(ratio: float, theme: Theme) -> None:
    """Measure a word and a time in the picture, against the ground that they stand on."""
    size, viewing = (1920, 1080), Viewing(3.0, 0.2768 / ratio)
    shown = view(tuple(tile(word, "20:55") for word in Word))
    image = paint(shown, theme, size, viewing=viewing, ratio=ratio)
    for cell, word in enumerate(Word):
        rect = areas(size, viewing, ratio)[cell + 1]
        scale = ratio
        at = lines(TILE, word)
        for top, bottom, ground in (
            (at.word - 60, at.word, theme.fills[word]),
            (at.time - 40, at.time - 10, theme.surf),
        ):
            found = {
                image.pixelColor(round(rect.left() + x * scale), y).name()
                for y in range(round(rect.top() + top * scale), round(rect.top() + bottom * scale))
                for x in range(16, 120, 2)
            }
            assert ground.name() in found, (word, ground.name())
            best = max(contrast(color, ground.name()) for color in found)
            assert best >= 7.0, (word, best)


@pytest.mark.parametrize("ratio", SCALES)
@pytest.mark.parametrize("theme", THEMES.values(), ids=THEMES)
def test_measured_at_every_scale(qapp: object, ratio: float, theme: Theme) -> None:
    load_fonts()
    _inks(ratio, theme)


def test_after_a_change_of_theme_no_colour_of_the_old_one_is_left(qtbot: QtBot) -> None:
    load_fonts()
    wall = Wall(THEMES["dark"])
    qtbot.addWidget(wall)
    wall.resize(960, 540)
    wall.show_view(view((tile(Word.WAIT, "20:55"),)))
    for name in ("light", "dark high", "light high", "dark"):
        theme = THEMES[name]
        wall.show_theme(theme)
        image = wall.grab().toImage()
        count = Counter(
            image.pixelColor(x, y).name() for x in range(0, 960, 2) for y in range(0, 540, 2)
        )
        found = {color for color, times in count.items() if times > 100}  # not the soft edges
        assert {theme.bg.name(), theme.strip.name(), theme.surf.name()} <= found
        for other in THEMES.values():
            if other.bg != theme.bg:
                assert not {other.bg.name(), other.surf.name()} - {
                    theme.text.name(), theme.white.name(), theme.ring.name(), theme.ink.name(),
                } & found, (name, other.bg.name())  # fmt: skip
