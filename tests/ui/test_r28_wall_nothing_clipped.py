"""R28: nothing on the wall is elided, clipped or overlapping, in every state and at every scale."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import QRectF

from helpers.wall_values import Text, areas, drawn, paint, tile, view, worst_tiles
from rackboard.core.bench import HoldReason
from rackboard.core.words import Word
from rackboard.ui.resources import load_fonts
from rackboard.ui.theme import dark_theme, light_theme
from rackboard.ui.tile import Glyph
from rackboard.ui.wall_painter import lines
from rackboard.ui.wall_size import TILE, Viewing, sheet
from rackboard.ui.wall_view import CELLS, WallReading, WallTile, WallView

SIZES = ((1920, 1080), (2560, 1440), (1920, 1200))
SCALES = (1.0, 1.25, 1.5, 2.0)


@pytest.fixture(autouse=True)
def fonts(qapp: object) -> None:
    load_fonts()


def check(texts: list[Text], fields: list[QRectF]) -> None:
    """Every text lies whole inside one cell, and none runs into another."""
    for number, one in enumerate(texts):
        assert "…" not in one.text
        inside = [field for field in fields if field.contains(one.ink)]
        assert len(inside) == 1, one
        for other in texts[number + 1 :]:
            assert not one.box.intersects(other.box), (one, other)
            room = one.ink.adjusted(1, 1, -1, -1)
            assert not room.intersects(other.ink.adjusted(1, 1, -1, -1)), (one, other)


def check_whole(texts: list[Text], tiles: tuple[WallTile, ...]) -> None:
    """Every word, job and time is there; clubs and places in one of their lengths."""
    said = {text.text for text in texts}
    for shown in tiles:
        assert {shown.word.value, shown.job} <= said
        assert not shown.time or shown.time in said
        assert {*shown.places} & said
        assert {*shown.clubs} & said or (shown.cold and shown.time)


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("ratio", SCALES)
@pytest.mark.parametrize(("stale", "count"), [("", 1), ("28 Mar 20:55", 4)])
def test_fifteen_tiles_in_every_state(
    size: tuple[int, int], ratio: float, stale: str, count: int
) -> None:
    viewing = Viewing(3.0, 0.2768 / ratio)
    cells = sheet(*size, viewing, ratio).cells
    assert cells >= CELLS
    shown = view(worst_tiles() * count, stale=stale)
    with drawn() as texts:
        paint(shown, light_theme(), size, viewing=viewing, ratio=ratio)
    check(texts, areas(size, viewing, ratio))
    check_whole(texts, worst_tiles())


@pytest.mark.parametrize("distance_m", [1.0, 2.0, 4.0, 6.0, 12.0])
@pytest.mark.parametrize("size", [(1920, 1080), (1280, 800), (1280, 720), (640, 360)])
def test_other_distances_and_windows(size: tuple[int, int], distance_m: float) -> None:
    viewing = Viewing(distance_m)
    cells = sheet(*size, viewing).cells
    for first in range(0, CELLS, cells):
        tiles = worst_tiles()[first : first + cells]
        with drawn() as texts:
            paint(view(tiles), dark_theme(), size, viewing=viewing)
        check(texts, areas(size, viewing))
        check_whole(texts, tiles)


def long_tiles() -> tuple[WallTile, ...]:
    """Words as long as other languages and people make them."""
    places = ("Abholecke am Fenster", "Abholung", "14 Schläger")
    clubs = ("Annäherungswedge 52°", "14 Eisen", "14 Schläger")

    def long(word: Word, time: str, mark: Glyph | None = None, **more: object) -> WallTile:
        made = tile(word, time, mark, places=places, clubs=clubs, **more)
        return replace(made, job="2048/1")

    reasons = ("bewegt", "Abstrich weich", "zu heiß geworden")
    holds = [
        replace(long(Word.HOLD, said), hold=reason, untaken=True)
        for reason, said in zip(HoldReason, reasons, strict=True)
    ]
    return (
        long(Word.WET, "Mi 20:55", Glyph.UNTIL), long(Word.WAIT, "28. Mrz 20:55", Glyph.FROM),
        long(Word.WAIT, "niedrig?", Glyph.FROM), long(Word.WAIT, "noch keine Zeit"),
        long(Word.WAIT, "", cold=True), long(Word.WAIT, "Mi 20:55?"),
        long(Word.BENCH, "28. Mrz 20:55", Glyph.FROM), long(Word.BENCH, "", cold=True),
        long(Word.BENCH, "28. Mrz 20:55", Glyph.FROM, cold=True),
        long(Word.CURED, "gestern gegen Abend", quiet=True), *holds,
        long(Word.STALE, "sagte zuletzt WARTEN"), long(Word.STALE, "sagte FERTIG"),
    )  # fmt: skip


@pytest.mark.parametrize("ratio", SCALES)
@pytest.mark.parametrize("stale", ["", "Donnerstag 20:55"])
def test_words_of_another_language(ratio: float, stale: str) -> None:
    tiles = long_tiles()
    assert len(tiles) == CELLS
    readings = (WallReading("Werkstatt", "-10,4°"), WallReading("Wärmeschrank", "-31,8°"))
    shown = view(tiles, readings=readings, stale=stale)
    viewing = Viewing(3.0, 0.2768 / ratio)
    with drawn() as texts:
        paint(shown, dark_theme(), (1920, 1080), viewing=viewing, ratio=ratio)
    check(texts, areas((1920, 1080), viewing, ratio))
    words = {word for text in texts for word in text.text.split()}
    for one in tiles:
        assert {one.word.value, one.job, *one.time.split()} <= words


@pytest.mark.parametrize("word", [Word.WET, Word.WAIT, Word.BENCH, Word.CURED])
@pytest.mark.parametrize("place", ["grip", "pick-up"])
def test_tails_stay_on_the_plate(word: Word, place: str) -> None:
    one = tile(word, "Wed 20:55", clubs=("gypsy",), places=(place,))
    with drawn() as texts:
        paint(view((one,), free_count=0), dark_theme(), (1920, 1080))
    cell = areas((1920, 1080))[1]
    (said,) = [text for text in texts if text.text == place]
    scale = sheet(1920, 1080).scale
    ripple = {Word.WET: 5.0, Word.WAIT: 1.9}.get(word, 0.0) * 1.7
    edge = lines(TILE, word).plate - ripple
    assert (said.ink.bottom() - cell.top()) / scale <= edge + 0.75
    body = [text for text in texts if text.box.top() > cell.top()]
    assert len(body) == 5
    check(texts, areas((1920, 1080)))


def test_stale_shows_no_time_of_a_permission_and_no_free_slots() -> None:
    tiles = tuple(tile(Word.STALE, f"said {word}") for word in ("WET", "WAIT", "BENCH"))
    shown: WallView = view(tiles, stale="14:05")
    for theme in (dark_theme(), light_theme(), light_theme(high=True)):
        with drawn() as texts:
            image = paint(shown, theme, (1920, 1080))
        said = [text.text for text in texts]
        assert said.count("STALE") == 4  # each tile, and the strip
        assert "no word since 14:05" in said
        assert "free" not in said
        assert not [text for text in said if "20:55" in text and text != shown.clock]
        assert not [text for text in said if "°" in text]
        cell = areas((1920, 1080))[1]
        row = round(cell.bottom()) - 30  # hatched, right of what it said last
        right = range(round(cell.right()) - 60, round(cell.right()) - 8)
        assert {image.pixelColor(x, row).name() for x in right} >= {
            theme.surf.name(), theme.out.name()
        }  # fmt: skip
