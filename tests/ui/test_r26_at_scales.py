"""R26, R29, R36 on screens of finer pixels, and after the system has changed its scheme.

The near view is painted with as many device pixels to a point as a scale of 1, 1.25, 1.5 and 2
has, and measured in the picture, ink by ink: how high its capitals are, how far they stand out.
Offscreen no scheme of the system can be set; its palette is, as that of a system without one.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any, NamedTuple

import pytest
from PySide6.QtCore import QPoint, QRectF, Qt
from PySide6.QtGui import QColor, QGuiApplication, QImage, QPainter
from PySide6.QtWidgets import QAbstractButton, QApplication, QWidget

from helpers.board_values import RACK, wait
from helpers.contrast import contrast
from helpers.demo_window import DemoWindow
from rackboard.core.words import Word
from rackboard.ui import type
from rackboard.ui.grid import Grid, grid
from rackboard.ui.keys import TARGET, Key
from rackboard.ui.resources import load_fonts
from rackboard.ui.theme import Appearance, Theme, dark_theme, light_theme
from rackboard.ui.tile import MotifStyle, Tile
from rackboard.ui.tile_delegate import TileDelegate
from rackboard.ui.tile_painter import TilePainter

SCALES = (1.0, 1.25, 1.5, 2.0)
SIZES = {"1920": grid(1920, 1054), "1280": grid(1280, 778)}
THEMES = {
    "dark": dark_theme(), "light": light_theme(),
    "dark high": dark_theme(high=True), "light high": light_theme(high=True),
}  # fmt: skip
LEAST = {"1920": 21.0, "1280": 16.8}
"""Capitals that bind at 1 m: 20 and 16 arcmin on pixels of 0.2768 mm [px]."""
OTHER_DAY = {"1920": 21.0, "1280": 14.0}
LEAST_DIALOG = 24
TEXT = "HHH"
"""Nothing but capitals, so that the ink is as high as they are."""


@pytest.fixture(autouse=True)
def fonts(qapp: object) -> None:
    load_fonts()


class Ink(NamedTuple):
    """What was found of a text: its height [device px] and its best contrast."""

    high: int
    best: float


def tile(word: Word, *, other_day: bool = False) -> Tile:
    """A tile with nothing on it but its word, its club and its time."""
    made: Tile = replace(
        wait(RACK, 0), word=word, name="", club=TEXT, job="", sub="", temperature="",
        next_glyph=None, caption="", time=TEXT, other_day=other_day, detail="", detail_short="",
        probably=None, not_before=None, motif=MotifStyle.NONE,
    )  # fmt: skip
    return made


def painted(delegate: TileDelegate, at: Grid, shown: Tile, ratio: float) -> QImage:
    """Paint a cell on a screen with so many pixels to a point."""
    wide, high = at.tile_w + at.gutter, at.tile_h + at.gutter
    image = QImage(round(wide * ratio), round(high * ratio), QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(ratio)
    image.fill(QColor("#808080"))
    painter = QPainter(image)
    delegate.paint_cell(painter, QRectF(0, 0, wide, high), shown, selected=False)
    painter.end()
    return image


def ink(image: QImage, area: QRectF, front: QColor, ground: QColor) -> Ink:
    """Measure a text in an area of points: the rows that are more ink than ground."""
    ratio = image.devicePixelRatio()

    def far(a: QColor, b: QColor) -> int:
        return abs(a.red() - b.red()) + abs(a.green() - b.green()) + abs(a.blue() - b.blue())

    rows, found = 0, set()
    for y in range(round(area.top() * ratio), round(area.bottom() * ratio)):
        colours = {
            image.pixelColor(x, y).rgb()
            for x in range(round(area.left() * ratio), round(area.right() * ratio))
        }
        found |= colours
        if any(far(QColor(c), front) < far(QColor(c), ground) for c in colours):
            rows += 1
    best = max((contrast(QColor(c).name(), ground.name()) for c in found), default=1.0)
    return Ink(rows, best)


def measured(
    delegate: TileDelegate, at: Grid, theme: Theme, ratio: float, shown: Tile
) -> dict[str, Ink]:
    """Measure word, club and time of a tile."""
    image = painted(delegate, at, shown, ratio)
    tiles = TilePainter(theme, large=at.large)
    to, roles = tiles.at, tiles.roles
    left, top = float(at.gutter // 2), float(at.gutter // 2)
    word = shown.word
    assert word is not None
    after_glyph = left + to.pad + to.glyph + to.word_gap
    middle, half = top + to.plate / 2, roles.word.px * 0.42
    wide = type.width(roles.word, str(word))
    areas = {
        "word": QRectF(after_glyph, middle - half, wide, 2 * half),
        "club": above(left + to.pad, top + to.club, roles.club.px),
        "time": above(left + to.pad, top + to.time, roles.time.px),
    }
    inks = {"word": theme.on_fill(word), "club": theme.text, "time": theme.text}
    grounds = {"word": theme.fills[word], "club": theme.surf, "time": theme.surf}
    return {name: ink(image, areas[name], inks[name], grounds[name]) for name in areas}


def above(left: float, baseline: float, px: int) -> QRectF:
    """Return where three capitals stand, with a little air above and below."""
    return QRectF(left, baseline - 0.8 * px, 1.6 * px, 0.9 * px)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("ratio", SCALES)
def test_capitals_and_contrast_of_a_near_tile(size: str, ratio: float) -> None:
    """At every scale and, with the same delegate, after every change of theme."""
    at = SIZES[size]
    delegate = TileDelegate(THEMES["dark"], at)
    heights: list[int] = []
    for name in ("dark", "light", "dark high", "light high", "dark"):
        theme = THEMES[name]
        delegate.show_grid(theme, at)
        for word in (Word.WET, Word.WAIT, Word.BENCH, Word.CURED):
            found = measured(delegate, at, theme, ratio, tile(word))
            for part, text in found.items():
                # Finer pixels on the same screen: so many more on the same millimetre.
                assert text.high >= LEAST[size] * ratio - 1, (name, word, part, text)
                assert text.best >= (7.0 if theme.high else 4.5), (name, word, part, text)
            heights += [text.high for text in found.values()]
        late = measured(delegate, at, theme, ratio, tile(Word.WAIT, other_day=True))["time"]
        assert late.high >= OTHER_DAY[size] * ratio - 1
    parts = 3 * 4
    assert len(heights) == 5 * parts
    assert heights[:parts] == heights[-parts:]
    for number, high in enumerate(heights):  # by a soft row at most, dark on light or the reverse
        assert abs(high - heights[number % parts]) <= 1


def test_smaller_capitals_would_be_noticed() -> None:
    """The measure is one: half the pixels give half the height."""
    at, theme = SIZES["1920"], THEMES["dark"]
    delegate = TileDelegate(theme, at)
    full = measured(delegate, at, theme, 2.0, tile(Word.WAIT))
    half = measured(delegate, at, theme, 1.0, tile(Word.WAIT))
    for part, text in full.items():
        assert abs(text.high - 2 * half[part].high) <= 2, part
        assert half[part].high < LEAST["1920"] * 2 - 1


# The whole window


def change_scheme(appearance: Appearance, theme: Theme) -> None:
    """Let the system change to a scheme while the program runs."""
    hints = QGuiApplication.styleHints()
    assert hints.colorScheme() is Qt.ColorScheme.Unknown, "this platform knows of a scheme"
    appearance._system_palette = theme.palette()
    hints.colorSchemeChanged.emit(Qt.ColorScheme.Unknown)
    QApplication.processEvents()


def targets(top: QWidget) -> dict[str, tuple[int, int, int, int]]:
    """Return what can be tapped and is shown: where it is and how large."""
    found = {}
    for at, part in enumerate(top.findChildren(QAbstractButton)):
        if part.isVisibleTo(top):
            place = part.mapTo(top, QPoint())
            found[f"{at} {part.accessibleName() or part.text()}"] = (
                place.x(), place.y(), part.width(), part.height(),
            )  # fmt: skip
    return found


@pytest.mark.parametrize("size", [(1920, 1080), (1280, 800)])
def test_targets_after_a_live_change_of_theme(
    qtbot: Any, tmp_path: Path, size: tuple[int, int]
) -> None:
    demo = DemoWindow(qtbot, tmp_path, size, "")
    window = demo.window
    for theme in (light_theme(), dark_theme()):
        change_scheme(window.appearance, theme)
    demo.select("A13")
    window.doing.answer()
    QApplication.processEvents()
    (dialog,) = demo.dialogs()
    board, asked = targets(window.board), targets(dialog)
    assert len(board) >= 5
    assert len(asked) >= 4
    for theme in (light_theme(), dark_theme(), light_theme()):
        change_scheme(window.appearance, theme)
        assert window.appearance.theme.dark is theme.dark
        assert targets(window.board) == board
        assert targets(dialog) == asked
        for key in window.board.usual.findChildren(Key):
            if key.isVisible():
                assert min(key.body().width(), key.body().height()) >= TARGET, key.text()
        for _, _, wide, high in asked.values():
            assert min(wide, high) >= LEAST_DIALOG
        assert dialog.palette().window().color() == theme.bg
        shown = dialog.grab().toImage()
        assert shown.pixelColor(3, 3) == theme.bg


@pytest.mark.parametrize("ratio", SCALES)
def test_the_window_at_a_scale_after_a_live_change(
    qtbot: Any, tmp_path: Path, ratio: float
) -> None:
    """Rendered with so many pixels to a point: grounds, plates and texts of the new theme only."""
    demo = DemoWindow(qtbot, tmp_path, (1280, 800), "")
    board = demo.window.board
    for theme in (dark_theme(), light_theme(), dark_theme()):
        change_scheme(demo.window.appearance, theme)
        image = QImage(
            round(board.width() * ratio), round(board.height() * ratio),
            QImage.Format.Format_RGB32,
        )  # fmt: skip
        image.setDevicePixelRatio(ratio)
        board.render(image)
        seen = {
            image.pixelColor(x, y).rgb()
            for x in range(0, image.width(), 2) for y in range(0, image.height(), 2)
        }  # fmt: skip
        other = light_theme() if theme.dark else dark_theme()
        for colour in (theme.bg, theme.strip, theme.surf, *theme.fills.values()):
            if colour != theme.fills[Word.STALE]:
                assert colour.rgb() in seen, colour.name()
        assert not {other.bg.rgb(), other.plot.rgb()} & seen
