from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import pairwise
from typing import NamedTuple

import pytest
from PySide6.QtCore import QPoint, QRectF
from PySide6.QtGui import QColor, QImage, QPainter, QRegion
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from helpers.board_values import board_view, inspector, worst_tiles
from rackboard.core.bench import HoldReason
from rackboard.core.words import Word
from rackboard.ui import edges, glyphs, motif, type
from rackboard.ui.board import Board
from rackboard.ui.first_run import FirstRunPanel
from rackboard.ui.grid import grid
from rackboard.ui.keys import Key
from rackboard.ui.resources import load_fonts
from rackboard.ui.strip import TemperatureKey
from rackboard.ui.theme import Theme, dark_theme, light_theme
from rackboard.ui.tile import Glyph, Tile
from rackboard.ui.tile_painter import TilePainter
from rackboard.ui.tile_plan import mark
from rackboard.ui.type import Align, Roles, Style

SIZES = {True: (252, 197), False: (163, 146)}


class Text(NamedTuple):
    """A text as it was drawn, its box from cap height to baseline, in device px."""

    text: str
    box: QRectF


@pytest.fixture(autouse=True)
def fonts(qapp: object) -> None:
    load_fonts()


@pytest.fixture
def drawn(monkeypatch: pytest.MonkeyPatch) -> Iterator[list[Text]]:
    texts: list[Text] = []
    usual: Callable[..., float] = type.draw
    for left_over in QApplication.topLevelWidgets():
        left_over.hide()  # a window of an earlier test must not paint into this one's list

    def record(
        painter: QPainter, style: Style, x: float, baseline: float, text: str, color: QColor,
        align: Align = Align.LEFT,
    ) -> float:  # fmt: skip
        wide = usual(painter, style, x, baseline, text, color, align)
        left = x - {Align.LEFT: 0.0, Align.RIGHT: wide, Align.CENTRE: wide / 2}[align]
        cap = type.cap_height(style)
        box = painter.combinedTransform().mapRect(QRectF(left, baseline - cap, wide, cap))
        if text:
            texts.append(Text(text, box))
        return wide

    monkeypatch.setattr(type, "draw", record)
    yield texts


def check(texts: list[Text], area: QRectF, margin: float) -> None:
    inner = area.adjusted(margin, margin, -margin, -margin)
    for number, one in enumerate(texts):
        assert "…" not in one.text.removesuffix("slot…").removesuffix("actions…"), one
        assert inner.contains(one.box), (one, inner)
        for other in texts[number + 1 :]:
            assert not one.box.adjusted(0.5, 0.5, -0.5, -0.5).intersects(other.box), (one, other)


def alone(part: QWidget) -> None:
    """Paint a widget without its children, whose texts have coordinates of their own."""
    image = QImage(part.size(), QImage.Format.Format_ARGB32)
    part.render(image, QPoint(), QRegion(), QWidget.RenderFlag.DrawWindowBackground)


def paint(tile: Tile, theme: Theme, *, large: bool, ratio: float = 1.0) -> QImage:
    width, height = SIZES[large]
    image = QImage(round(width * ratio), round(height * ratio), QImage.Format.Format_ARGB32)
    image.setDevicePixelRatio(ratio)
    image.fill(theme.bg)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    TilePainter(theme, large=large).paint(painter, QRectF(0, 0, width, height), tile)
    painter.end()
    return image


@pytest.mark.parametrize("large", [True, False])
@pytest.mark.parametrize("tile", worst_tiles(), ids=lambda tile: f"{tile.word}-{tile.slot}")
def test_nothing_is_clipped_elided_or_crowded_on_a_tile(
    drawn: list[Text], tile: Tile, large: bool
) -> None:
    paint(tile, dark_theme(), large=large)
    width, height = SIZES[large]
    check(drawn, QRectF(0, 0, width, height), 5.0)


@pytest.mark.parametrize("large", [True, False])
def test_cap_heights_on_a_tile(large: bool) -> None:
    """State word, club and time are 16 arcmin at 1 m; a 1280 tile's other day 14 px."""
    roles = Roles(large=large)
    for style in (roles.word, roles.club, roles.time):
        assert type.cap_height(style) >= (21.0 if large else 16.8) - 1e-9
    assert type.cap_height(roles.time_other_day) >= 14.0 - 1e-9
    for style in (
        roles.job, roles.slot, roles.head, roles.fact, roles.caption, roles.caption_narrow,
        roles.small, roles.small_bold, roles.button, roles.fact_bold, roles.time_narrow,
        roles.hold_time, roles.strip_head,
    ):  # fmt: skip
        assert type.cap_height(style) >= 10.5


@pytest.mark.parametrize("large", [True, False])
def test_the_letters_are_as_high_as_the_arithmetic_says(large: bool) -> None:
    roles = Roles(large=large)
    for style in (roles.word, roles.club, roles.time, roles.clock, roles.small):
        measured = type.metrics(style).tightBoundingRect("H").height()
        assert measured == pytest.approx(type.cap_height(style), abs=1.0)


def test_figures_are_tabular() -> None:
    style = Roles(large=True).time
    assert type.width(style, "11:11") == pytest.approx(type.width(style, "00:00"))


@pytest.mark.parametrize("size", [(1920, 1054), (1280, 778)])
def test_strip_inspector_and_cards_keep_their_texts_whole(
    qtbot: QtBot, drawn: list[Text], size: tuple[int, int]
) -> None:
    board = Board(dark_theme())
    qtbot.addWidget(board)
    board.resize(*size)
    board.show_view(board_view())
    board.grab()
    parts: tuple[QWidget, ...] = (
        board.strip, board.usual.inspector, board.usual.alarm, board.usual.due, board.usual.head,
        board.rack_head, board.box_head, board.jobs, board.chips.viewport(),
    )  # fmt: skip
    children = [*board.strip.findChildren(TemperatureKey), *board.usual.findChildren(Key)]
    for part in (*parts, *children):
        drawn.clear()
        alone(part)
        assert drawn, part
        check(drawn, QRectF(part.rect()), 0.0)
    drawn.clear()
    alone(board.strip)
    first = min(key.x() for key in board.strip.findChildren(TemperatureKey))
    assert max(text.box.right() for text in drawn) < first


@pytest.mark.parametrize("large", [True, False])
def test_first_panel_keeps_its_texts_whole(
    qtbot: QtBot, drawn: list[Text], large: bool
) -> None:
    panel = FirstRunPanel(dark_theme(), large=large)
    qtbot.addWidget(panel)
    at = grid(1920, 1054) if large else grid(1280, 778)
    panel.resize(at.right.w, at.right.h)
    alone(panel)
    check([text for text in drawn if text.box.y() < panel.key.y()], QRectF(panel.rect()), 4.0)


def test_the_plot_is_at_least_160_px_high_at_1920(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    from rackboard.ui.curve import CurvePainter

    heights: list[float] = []
    usual = CurvePainter.paint

    def record(self: CurvePainter, painter: QPainter, rect: QRectF, view: object) -> None:
        heights.append(rect.height() - self.below() - 22)
        usual(self, painter, rect, view)  # type: ignore[arg-type]

    monkeypatch.setattr(CurvePainter, "paint", record)
    board = Board(dark_theme())
    qtbot.addWidget(board)
    board.resize(1920, 1054)
    board.show_view(board_view())
    board.usual.inspector.grab()
    assert heights
    assert min(heights) >= 160


def test_a_hold_floods_its_tile_until_it_is_taken() -> None:
    theme = dark_theme()
    untaken = worst_tiles()[8]
    taken = Tile(**{name: getattr(untaken, name) for name in Tile.__slots__} | {"untaken": False})
    at = (126, 170)
    assert paint(untaken, theme, large=True).pixelColor(*at) == theme.fills[Word.HOLD]
    assert paint(taken, theme, large=True).pixelColor(*at) == theme.surf
    for tile in (untaken, taken):
        assert paint(tile, theme, large=True).pixelColor(2, 2) == theme.bg, "corners are cut"


def test_light_plates_wear_an_ink_rim_except_wait() -> None:
    theme = light_theme()
    wet, wait = worst_tiles()[0], worst_tiles()[1]
    rim = paint(wet, theme, large=True).pixelColor(126, 0)
    assert rim.lightness() < 90
    assert paint(wait, theme, large=True).pixelColor(126, 2) == theme.fills[Word.WAIT]


@pytest.mark.parametrize("large", [True, False])
def test_only_a_cured_tile_wears_a_tick(large: bool) -> None:
    """What comes next has a bar and an arrow; a tick before its time would look like CURED."""
    for tile in worst_tiles():
        sign = mark(tile)
        if tile.word is Word.CURED:
            assert sign is Glyph.TICK
        elif tile.word is Word.WET:
            assert sign is Glyph.UNTIL
        else:
            assert sign in (Glyph.FROM, None)
    theme = dark_theme()
    bench, cured = worst_tiles()[2], worst_tiles()[7]
    same = replace(
        bench, word=Word.CURED, reached=True, position=cured.position, detail="", detail_short=""
    )
    area = (10, 112, 28, 26) if large else (8, 80, 20, 22)
    pictures = [
        paint(replace(tile, caption="", time="20:55"), theme, large=large).copy(*area)
        for tile in (bench, same)
    ]
    assert pictures[0] != pictures[1]


def far_tiles() -> tuple[Tile, ...]:
    """Texts longer than usual: dates, initials, slots, clubs, jobs."""
    wait, bench, cold = (worst_tiles()[at] for at in (1, 2, 6))
    far = "28 Mar 20:55"
    return (
        replace(wait, time=far, other_day=True, detail=f"probably hard by {far}",
                detail_short=f"probably {far}"),
        replace(bench, time=far, detail=f"probably hard by {far}", detail_short=f"probably {far}"),
        replace(cold, time=far),
        replace(bench, caption="", time="released MWK", other_day=False, next_glyph=None,
                detail="", detail_short=""),
        replace(wait, name="A108"), replace(bench, name="A108"), replace(bench, name="WB120"),
        replace(worst_tiles()[8], name="A108"), replace(worst_tiles()[8], name="WB120"),
    )  # fmt: skip


@pytest.mark.parametrize("large", [True, False])
@pytest.mark.parametrize("number", range(len(far_tiles())))
def test_dates_a_week_away_and_long_slots_have_room(
    drawn: list[Text], number: int, large: bool
) -> None:
    tile = far_tiles()[number]
    paint(tile, dark_theme(), large=large)
    width, height = SIZES[large]
    check(drawn, QRectF(0, 0, width, height), 5.0)
    assert tile.time in [text.text for text in drawn]
    assert tile.name in [text.text for text in drawn]


@pytest.mark.parametrize("large", [True, False])
def test_long_names_are_cut_after_a_word(drawn: list[Text], large: bool) -> None:
    long = replace(
        worst_tiles()[1], club="Sand wedge with an extended butt", job="2026-0481/12",
        sub="toughened with a long name, Wed 20:55",
    )  # fmt: skip
    paint(long, dark_theme(), large=large)
    said = [text.text for text in drawn]
    (club,) = [text for text in said if text.startswith("Sand")]
    assert club.endswith("…")
    assert "Sand wedge with an extended butt".startswith(club.removesuffix("…"))
    assert club.removesuffix("…").split() == long.club.split()[
        : len(club.split())
    ]  # fmt: skip
    assert any(text.endswith(("0481/12", "81/12")) for text in said)
    boxes = [text.box for text in drawn]
    for at, box in enumerate(boxes):
        assert not any(box.adjusted(1, 1, -1, -1).intersects(other) for other in boxes[at + 1 :])


@pytest.mark.parametrize("ratio", [1.25, 1.5, 2.0])
def test_pictures_follow_the_device_pixel_ratio(ratio: float) -> None:
    theme = dark_theme()
    image = paint(worst_tiles()[1], theme, large=True, ratio=ratio)
    x, y = round(200 * ratio), round(10 * ratio)
    assert image.pixelColor(x, y) == theme.fills[Word.WAIT]
    below = image.pixelColor(x, round(56 * ratio))
    assert below == theme.surf


def test_collar_beats_twice_a_second_half_on() -> None:
    lit = [edges.collar_lit(at) for at in range(0, 1000, 50)]
    assert sum(lit) == 10
    assert sum(a and not b for a, b in pairwise(lit)) == 2


def test_every_glyph_stays_on_its_grid_and_differs() -> None:
    shapes = set()
    for glyph in Glyph:
        box = glyphs.path(glyph).boundingRect()
        assert QRectF(-0.2, -0.2, 24.4, 24.4).contains(box), glyph
        image = QImage(24, 24, QImage.Format.Format_ARGB32)
        image.fill(QColor("white"))
        painter = QPainter(image)
        glyphs.draw(painter, glyph, 0, 0, 24, QColor("black"))
        painter.end()
        shapes.add(bytes(image.constBits()))
    assert len(shapes) == len(Glyph)


def test_places_on_the_motif() -> None:
    assert motif.along(Word.WET, 0) == 0
    assert motif.along(Word.WAIT, 1) == motif.STILL == motif.along(Word.BENCH, 0)
    assert motif.along(Word.BENCH, 2) == motif.FIRM
    assert motif.along(Word.CURED, 0) == 1


def test_edges_of_the_plates() -> None:
    ups = {word: max(y for _, y in edges.lower_edge(word, 252, 1.0)) for word in Word}
    assert ups[Word.WET] == pytest.approx(5)
    assert ups[Word.WAIT] == pytest.approx(1.9)
    assert ups[Word.BENCH] == ups[Word.CURED] == 0
    assert edges.lower_edge(Word.HOLD, 100, 1.0) == ((0, -4), (50, -4), (53, 5), (100, 5))


def test_the_inspector_view_has_no_place_for_an_early_bound() -> None:
    names = {name for point in inspector().curve.points for name in point._fields}  # type: ignore[union-attr]
    assert names == {"x", "expected", "late"}


def test_a_joint_just_mixed_is_not_drawn_as_hard() -> None:
    """Less than a pixel of the way is behind: nothing of the hard end may show."""
    ink = QColor("#000000")
    clear = QColor(0, 0, 0, 0)
    for position in (0.0028, 0.003, 0.0035, 0.005, 0.007):
        picture = QImage(240, 40, QImage.Format.Format_ARGB32_Premultiplied)
        picture.fill(0xFFFFFFFF)
        painter = QPainter(picture)
        motif.draw(
            painter, motif.MotifInks(ink, clear, clear), 10, 20, 220, 16, position, vector=False
        )  # fmt: skip
        painter.end()
        hard = [picture.pixelColor(x, 20).lightness() for x in range(180, 228)]
        assert min(hard) == 255


@pytest.mark.parametrize("large", [True, False])
@pytest.mark.parametrize("word", [Word.HOLD, Word.CURED])
def test_nothing_is_crowded_in_an_inspector_without_reasons(
    drawn: list[Text], qtbot: QtBot, large: bool, word: Word
) -> None:
    """On HOLD and once CURED there are no three lines between the times and the curve."""
    from rackboard.ui.inspector import Inspector

    usual = inspector()
    assert usual.curve is not None
    view = replace(
        usual, word=word, reasons=(), curve=replace(usual.curve, now=0.02, now_text="14:26"),
        hold=HoldReason.DISTURBED if word is Word.HOLD else None,
    )  # fmt: skip
    panel = Inspector(dark_theme(), large=large)
    qtbot.addWidget(panel)
    panel.resize(516 if large else 353, 705 if large else 490)
    panel.show_inspector(view)
    drawn.clear()
    panel.grab()
    tags = [one for one in drawn if one.text == "14:26"]
    assert tags
    for tag in tags:
        room = tag.box.adjusted(-6, -6, 6, 6)  # the tag's own body round its time
        assert not [o for o in drawn if o is not tag and room.intersects(o.box)]
