"""Golden pictures of the tiles: one for each state, theme and size, near and on the wall."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QImage, QPainter

from helpers import golden
from helpers.board_values import empty, hold, wait, worst_tiles
from helpers.wall_values import FROM, UNTIL, areas
from helpers.wall_values import tile as wall_tile
from helpers.wall_values import view as wall_view
from rackboard.core.bench import HoldReason
from rackboard.core.words import Word
from rackboard.ui.grid import grid
from rackboard.ui.resources import load_fonts
from rackboard.ui.theme import Theme, dark_theme, light_theme
from rackboard.ui.tile import Glyph, MotifStyle, Tile, TileKind
from rackboard.ui.tile_delegate import TileDelegate
from rackboard.ui.wall_painter import WallPainter
from rackboard.ui.wall_view import WallTile, pages

THEMES = {"dark": dark_theme, "light": light_theme}
SIZES = {"1920": grid(1920, 1054), "1280": grid(1280, 778)}


@pytest.fixture(autouse=True)
def fonts(qapp: object) -> None:
    load_fonts()


def near_tiles() -> dict[str, Tile]:
    """Every state with usual texts; all invented."""
    usual = wait(1, 0)
    bench = replace(
        usual, word=Word.BENCH, club="5 iron", next_glyph=Glyph.TICK, time="Sat 07:55",
        other_day=True, detail="probably hard by Fri 02:00", detail_short="probably Fri 02:00",
        position=0.72, probably=0.78, not_before=0.92,
    )  # fmt: skip
    wet = replace(
        usual, word=Word.WET, next_glyph=Glyph.LOCK, caption="use by", time="14:45",
        detail="last look 14:35", detail_short="", position=0.1, probably=None, not_before=None,
    )  # fmt: skip
    cold = {"cold": "warm it", "motif": MotifStyle.COLD, "detail": "", "detail_short": ""}
    smear = replace(
        hold(1, 0, untaken=False), hold=HoldReason.SOFT_SMEAR, time="soft smear",
        detail="batch smear soft at 13:30", detail_short="smear soft 13:30",
    )  # fmt: skip
    return {
        "wet": wet,
        "wait": usual,
        "wait-cold": replace(usual, caption="", time="no time", probably=None,
                             aside=("until it is", "above 18 °C"), **cold),  # type: ignore[arg-type]
        "bench": bench,
        "bench-cold": replace(bench, **cold),  # type: ignore[arg-type]
        "bench-week-ahead": replace(bench, time="21 Mar 07:55"),
        "bench-released": replace(bench, caption="", time="released KT", other_day=False,
                                  next_glyph=None, detail="", detail_short="", probably=None),
        "night-not-known": replace(bench, time="low?", other_day=False, gap=(0.6, 0.7),
                                   detail="lowest overnight not known",
                                   detail_short="lowest not known", probably=None),
        "cured": replace(bench, word=Word.CURED, caption="since", reached=True, position=1.0,
                         detail="safe to hit", detail_short="", probably=None),
        "hold-disturbed": hold(1, 0),
        "hold-too-hot": replace(hold(1, 0), hold=HoldReason.TOO_HOT, time="too hot",
                                detail="box 52 °C at 13:10"),
        "hold-taken": smear,
        "stale": worst_tiles()[10],
        "laid-out": Tile(1, 0, "A14", TileKind.LAID_OUT, None, "9 iron", "312",
                         detail="laid out, not glued"),
        "empty": empty(1, 0),
    }  # fmt: skip


def paint_near(tile: Tile, theme: Theme, size: str, *, selected: bool = False) -> QImage:
    """Paint a cell as the rack does, with the collar lit."""
    at = SIZES[size]
    delegate = TileDelegate(theme, at)
    wide, high = at.tile_w + at.gutter, at.tile_h + at.gutter
    image = QImage(wide, high, QImage.Format.Format_RGB32)
    image.fill(theme.bg)
    painter = QPainter(image)
    delegate.paint_cell(painter, QRectF(0, 0, wide, high), tile, selected=selected)
    painter.end()
    return image


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize("state", near_tiles())
def test_near(state: str, theme: str, size: str) -> None:
    image = paint_near(near_tiles()[state], THEMES[theme](), size)
    golden.check(f"near-{size}-{theme}-{state}", image)


@pytest.mark.parametrize("theme", THEMES)
def test_selected(theme: str) -> None:
    for state in ("bench", "hold-disturbed"):
        image = paint_near(near_tiles()[state], THEMES[theme](), "1920", selected=True)
        golden.check(f"near-1920-{theme}-{state}-selected", image)


def wall_tiles() -> dict[str, WallTile]:
    """Every state of a tile on the wall."""
    holds = {
        f"hold-{str(reason).replace(' ', '-')}": wall_tile(
            Word.HOLD, str(reason), hold=reason, untaken=reason is not HoldReason.SOFT_SMEAR
        )
        for reason in HoldReason
    }
    return {
        "wet": wall_tile(Word.WET, "14:45", UNTIL),
        "wait": wall_tile(Word.WAIT, "17:20", FROM),
        "wait-cold": wall_tile(Word.WAIT, "", cold=True),
        "bench": wall_tile(Word.BENCH, "Sat 07:55", FROM),
        "bench-cold": wall_tile(Word.BENCH, "Sat 07:55", FROM, cold=True),
        "night-not-known": wall_tile(Word.WAIT, "low?", FROM),
        "cured": wall_tile(Word.CURED, "Wed 11:45", quiet=True),
        **holds,
        "stale": wall_tile(Word.STALE, "said BENCH"),
    }  # fmt: skip


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize("state", wall_tiles())
def test_wall(state: str, theme: str) -> None:
    size = (1920, 1080)
    shown = wall_view((wall_tiles()[state],))
    image = QImage(*size, QImage.Format.Format_RGB32)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    WallPainter(THEMES[theme]()).paint(painter, size, shown, pages(shown), 0, lit=True)
    painter.end()
    cell = areas(size)[1].toAlignedRect().adjusted(-10, -10, 10, 10)
    golden.check(f"wall-{theme}-{state}", image.copy(cell))


def test_a_wrong_mark_figure_or_colour_is_noticed() -> None:
    """A tick for the arrow, 18 for 17, a taken HOLD for an untaken one: none may pass."""
    theme = dark_theme()
    tiles = near_tiles()
    right = tiles["bench"]
    for size in SIZES:
        usual = golden.plain(paint_near(right, theme, size))
        assert golden.difference(usual, usual) == (0.0, 0.0)
        for wrong in (
            replace(right, reached=True),
            replace(right, time="Sat 08:55"),
            replace(right, word=Word.CURED),
            replace(right, name="B1"),
            replace(right, job="318"),
        ):
            other = golden.plain(paint_near(wrong, theme, size))
            mean, worst = golden.difference(usual, other)
            assert mean > golden.MOST_MEAN or worst > golden.MOST_BLOCK, wrong
    taken = golden.plain(paint_near(replace(tiles["hold-disturbed"], untaken=False), theme, "1280"))
    untaken = golden.plain(paint_near(tiles["hold-disturbed"], theme, "1280"))
    assert golden.difference(taken, untaken)[0] > golden.MOST_MEAN


def test_a_golden_picture_that_is_not_there_is_asked_for(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv(golden.MAKE, raising=False)
    image = QImage(8, 8, QImage.Format.Format_RGB32)
    with pytest.raises(AssertionError, match="RACKBOARD_GOLDENS=make"):
        golden.check("none-such", image)
