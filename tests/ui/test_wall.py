"""The wall view. Every name, job and time in here is invented."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import pairwise
from typing import NamedTuple

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter
from pytestqt.qtbot import QtBot

from helpers.session import lay_out_irons, make_session, type_temperature
from helpers.shop import FakeClock
from rackboard.core.bench import HoldReason, Milestone
from rackboard.core.instants import DAY_US, MINUTE_US
from rackboard.core.standing import Standing
from rackboard.core.temperature import Unit
from rackboard.core.words import Word
from rackboard.ui import type
from rackboard.ui.board_presenter import BoardPresenter
from rackboard.ui.resources import load_fonts
from rackboard.ui.session import Session
from rackboard.ui.theme import Theme, dark_theme, light_theme
from rackboard.ui.tile import Glyph
from rackboard.ui.type import Align, Style
from rackboard.ui.wall import PAGE_MS, Wall
from rackboard.ui.wall_painter import BIG, USUAL, WallPainter, lines, sheet
from rackboard.ui.wall_presenter import WallPresenter, clubs_text
from rackboard.ui.wall_view import CELLS, WallDue, WallReading, WallTile, WallView, pages

SIZES = ((1920, 1080), (1280, 800), (2560, 1440), (1920, 1200))
PLACES = ("A11–A15 B10", "A11 +9", "10 clubs")
CLUBS = ("4–5, 7, 9 iron", "10 irons", "10 clubs")
FROM, UNTIL = Glyph.FROM, Glyph.UNTIL


def tile(word: Word, time: str, mark: Glyph | None = None, **more: object) -> WallTile:
    made = WallTile(word, "2048", PLACES, CLUBS, time, mark, accessible=f"2048 {word} {time}")
    return replace(made, **more)  # type: ignore[arg-type]


def worst_tiles() -> tuple[WallTile, ...]:
    """The longest texts that the presenter makes, in every state: one full page."""
    holds = [
        tile(Word.HOLD, str(reason), hold=reason, untaken=reason is not HoldReason.TOO_HOT)
        for reason in HoldReason
    ]
    wedges = ("3 wedges", "3 clubs")
    return (
        tile(Word.WET, "Wed 20:55", UNTIL),
        tile(Word.WAIT, "Wed 20:55", FROM, clubs=wedges),
        tile(Word.WAIT, "28 Mar 20:55", FROM),
        tile(Word.WAIT, "low?", FROM),
        tile(Word.WAIT, "Wed 20:55?"),
        tile(Word.WAIT, "no time"),
        tile(Word.WAIT, "", cold=True, clubs=wedges),
        tile(Word.BENCH, "Wed 20:55", FROM, places=("pick-up",), clubs=("driver, 3w", "2 clubs")),
        tile(Word.BENCH, "28 Mar 20:55", FROM, cold=True),
        tile(Word.CURED, "Wed 20:55", quiet=True, places=("grip",)),
        *holds,
        tile(Word.STALE, "said CURED"),
        tile(Word.STALE, "said BENCH"),
    )  # fmt: skip


def view(tiles: tuple[WallTile, ...] = (), **more: object) -> WallView:
    due = WallDue(Glyph.EYE, "Wed 20:55", PLACES)
    readings = (WallReading("room", "-10.4°"), WallReading("box", "-31.8°"))
    made = WallView("20:55", due, readings, tiles or worst_tiles(), ("A14–A15", "B4"), 3)
    return replace(made, **more)  # type: ignore[arg-type]


class Text(NamedTuple):
    """A text as drawn: its box from cap height to baseline and its real ink, in device px."""

    text: str
    style: Style
    box: QRectF
    ink: QRectF


@pytest.fixture(autouse=True)
def fonts(qapp: object) -> None:
    load_fonts()


@pytest.fixture
def drawn(monkeypatch: pytest.MonkeyPatch) -> Iterator[list[Text]]:
    texts: list[Text] = []
    usual: Callable[..., float] = type.draw

    def record(
        painter: QPainter, style: Style, x: float, baseline: float, text: str, color: QColor,
        align: Align = Align.LEFT,
    ) -> float:  # fmt: skip
        wide = usual(painter, style, x, baseline, text, color, align)
        left = x - (wide if align is Align.RIGHT else 0.0)
        cap = type.cap_height(style)
        to = painter.combinedTransform()
        ink = type.metrics(style).tightBoundingRect(text).translated(left, baseline)
        if text:
            box = to.mapRect(QRectF(left, baseline - cap, wide, cap))
            texts.append(Text(text, style, box, to.mapRect(ink)))
        return wide

    monkeypatch.setattr(type, "draw", record)
    yield texts


def paint(shown: WallView, theme: Theme, size: tuple[int, int], number: int = 0) -> QImage:
    image = QImage(*size, QImage.Format.Format_ARGB32)
    painter = QPainter(image)
    extent = (float(size[0]), float(size[1]))
    WallPainter(theme).paint(painter, extent, shown, pages(shown), number, lit=True)
    painter.end()
    return image


def test_r26_cap_heights() -> None:
    for style, cap in ((BIG, 63), (USUAL, 50)):
        assert type.metrics(style).tightBoundingRect("H").height() == pytest.approx(cap, abs=1)


def test_r26_nothing_is_drawn_below_the_cap(drawn: list[Text]) -> None:
    paint(view(), dark_theme(), (1920, 1080))
    assert {text.style for text in drawn} == {BIG, USUAL}
    for text in drawn:
        assert text.box.height() >= 50, text
        if text.text in {*Word} or re.fullmatch(r"(Wed )?20:55|low\?|no time", text.text):
            assert text.style == BIG or text.text == "Wed 20:55", text


@pytest.mark.parametrize("height", [314.0, 354.0])
@pytest.mark.parametrize("word", list(Word))
def test_r27_line_pitch(word: Word, height: float) -> None:
    at = lines(height, word)
    last = at.reason if word is Word.HOLD else at.time
    for upper, lower in pairwise((at.word, at.job, at.clubs, last)):
        assert lower - upper >= 1.5 * 50
    assert sheet(1920, 1080).cell(0).height() >= 313.9


def test_r27_stem_of_light_letters_on_dark() -> None:
    metrics = type.metrics(BIG)
    stem = metrics.tightBoundingRect("l").width()
    assert 1 / 8.5 <= stem / type.cap_height(BIG) <= 1 / 6.5


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("stale", ["", "28 Mar 20:55"])
@pytest.mark.parametrize("count", [1, 4])
def test_r28_nothing_is_clipped_or_elided(
    drawn: list[Text], size: tuple[int, int], stale: str, count: int
) -> None:
    shown = view(worst_tiles() * count, stale=stale)
    assert len(pages(shown)) == count
    at = sheet(*size)
    paint(shown, light_theme(), size)
    cells = [at.cell(number) for number in range(CELLS)]
    areas = [
        QRectF(c.x() * at.scale, c.y() * at.scale, c.width() * at.scale, c.height() * at.scale)
        for c in (QRectF(0, 0, at.width, 84), *cells)
    ]
    for number, one in enumerate(drawn):
        assert "…" not in one.text
        assert sum(area.contains(one.ink) for area in areas) == 1, one
        for other in drawn[number + 1 :]:
            assert not one.box.intersects(other.box), (one, other)
    said = {text.text for text in drawn}
    # Every word, job and time is there whole; clubs and places in one of their lengths.
    for shown_tile in worst_tiles():
        assert {shown_tile.word.value, "2048"} <= said
        assert not shown_tile.time or shown_tile.time in said
        assert {*shown_tile.places} & said
        assert {*shown_tile.clubs} & said or (shown_tile.cold and shown_tile.time)


def test_r28_ink_of_lines_does_not_touch(drawn: list[Text]) -> None:
    one = tile(Word.BENCH, "Wed 20:55", FROM, clubs=("gypsy",), places=("pick-up",))
    paint(view((one,), free_count=0), dark_theme(), (1920, 1080))
    body = [text for text in drawn if text.box.y() > 84]
    assert len(body) == 5
    for number, text in enumerate(body):
        for other in body[number + 1 :]:
            assert not text.ink.adjusted(1, 1, -1, -1).intersects(other.ink), (text, other)


def _luminance(color: QColor) -> float:
    parts = [
        c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4
        for c in (color.redF(), color.greenF(), color.blueF())
    ]
    return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2]


@pytest.mark.parametrize("theme", [dark_theme(), light_theme()], ids=["dark", "light"])
def test_r29_word_and_time_have_seven_to_one(theme: Theme) -> None:
    pairs = [(theme.on_fill(word), theme.fills[word]) for word in Word]
    pairs += [(theme.text, theme.surf), (theme.sub, theme.surf), (theme.text, theme.strip)]
    for ink, ground in pairs:
        high, low = sorted((_luminance(ink), _luminance(ground)), reverse=True)
        assert (high + 0.05) / (low + 0.05) >= 7


@pytest.mark.parametrize(
    ("names", "first"),
    [
        (["4 iron", "5 iron", "6 iron", "7 iron"], "4–7 iron"),
        (["4 iron", "5 iron", "7 iron"], "4–5, 7 iron"),
        (["50° wedge", "54° wedge", "58° wedge"], "3 wedges"),
        (["Driver", "3 wood"], "driver, 3w"),
        (["Driver", "3 wood", "putter"], "3 clubs"),
        (["Putter"], "putter"),
        (["PW"], "PW"),
    ],
)
def test_clubs_are_condensed(names: list[str], first: str) -> None:
    texts = clubs_text(names)
    assert texts[0] == first
    assert texts[-1] == ("1 club" if len(names) == 1 else f"{len(names)} clubs")


# Pages


def test_fifteen_tiles_are_one_page_and_sixteen_are_two() -> None:
    one = tile(Word.WAIT, "20:55", FROM)
    assert len(pages(view((one,) * 15))) == 1
    assert not pages(view((one,) * 15))[0].free
    assert pages(view((one,) * 14))[0].free
    two = pages(view((one,) * 16))
    assert [len(page.tiles) for page in two] == [15, 1]
    assert two[1].free


def test_the_page_of_a_hold_comes_first_and_chips_say_the_worst() -> None:
    cured, wait = tile(Word.CURED, "20:55", quiet=True), tile(Word.WAIT, "20:55", FROM)
    hold = tile(Word.HOLD, "disturbed", hold=HoldReason.DISTURBED, untaken=True)
    made = pages(view((*(cured,) * 15, *(wait,) * 15, hold)))
    assert [page.worst.word for page in made if page.worst] == [Word.HOLD, Word.WAIT, Word.CURED]


def test_pages_turn_every_eight_seconds_by_the_given_clock(qtbot: QtBot) -> None:
    wall = Wall(dark_theme())
    qtbot.addWidget(wall)
    wait = tile(Word.WAIT, "20:55", FROM)
    wall.set_time_ms(1000)
    wall.show_view(view((wait,) * 40))
    seen = []
    for step in range(8):
        wall.set_time_ms(1000 + step * PAGE_MS // 2)
        seen.append(wall.page())
    assert seen == [0, 0, 1, 1, 2, 2, 0, 0]
    assert "page 1 of 3" in wall.accessibleName()
    wall.set_time_ms(1000 + PAGE_MS)
    hold = tile(Word.HOLD, "disturbed", hold=HoldReason.DISTURBED, untaken=True)
    wall.show_view(view((*(wait,) * 39, hold)))
    assert wall.page() == 0  # a new HOLD brings its page at once
    assert wall.pages()[0].worst == hold


def test_the_collar_flashes_and_stands_still_with_reduced_motion(qtbot: QtBot) -> None:
    wall = Wall(dark_theme())
    qtbot.addWidget(wall)
    wall.resize(960, 540)
    wall.show_view(view())
    frames = []
    for still in (False, True):
        wall.set_reduced_motion(still)
        for time_ms in (0, 250):
            wall.set_time_ms(time_ms)
            frames.append(wall.grab().toImage())
    assert frames[0] != frames[1]
    assert frames[2] == frames[3]


def test_accessible_description_lists_the_tiles(qtbot: QtBot) -> None:
    wall = Wall(light_theme())
    qtbot.addWidget(wall)
    wall.show_view(view())
    for one in worst_tiles():
        assert one.accessible in wall.accessibleDescription()
    assert "A14–A15" in wall.accessibleDescription()
    wall.resize(480, 270)
    before = wall.grab().toImage()
    wall.show_theme(dark_theme())
    assert wall.grab().toImage() != before


# From the services


@pytest.fixture
def shop(qapp: object) -> tuple[Session, FakeClock]:
    session, clock = make_session("2026-03-09T09:00+01:00")
    type_temperature(session, 21.0)
    laid = lay_out_irons(session, 4)
    session.take(session.bench.mix(laid.batch_id))
    session.tick()
    return session, clock


def shown_by(session: Session, clock: FakeClock) -> WallView:
    return WallPresenter(BoardPresenter(session.board, clock.now(), Unit.C)).view()


def with_changes(session: Session, change: Callable[[int, Standing], Standing]) -> None:
    session.board.standings = [change(n, s) for n, s in enumerate(session.board.standings)]


def test_a_batch_of_a_job_is_one_tile(shop: tuple[Session, FakeClock]) -> None:
    (only,) = shown_by(*shop).tiles
    assert (only.word, only.job, only.mark) == (Word.WET, "220", Glyph.UNTIL)
    assert only.places[0] == "A1–A4"
    assert only.clubs[0] == "4–7 iron"
    free = shown_by(*shop)
    assert free.free[0] == "A5–A15"
    assert free.free_count == 15


def test_odd_joints_stand_on_their_own(shop: tuple[Session, FakeClock]) -> None:
    session, clock = shop
    base = {"word": Word.WAIT, "base": Word.WAIT}

    def change(n: int, s: Standing) -> Standing:
        s = s._replace(**base)  # type: ignore[arg-type]
        if n == 1:
            return s._replace(cold=True)
        if n == 2:
            return s._replace(word=Word.BENCH, base=Word.BENCH, milestone=Milestone.FULL_CURE)
        return s

    with_changes(session, change)
    tiles = shown_by(session, clock).tiles
    assert [(t.word, t.places[0], t.cold) for t in tiles] == [
        (Word.WAIT, "A1 A4", False), (Word.WAIT, "A2", True), (Word.BENCH, "A3", False)
    ]  # fmt: skip
    assert [t.clubs[0] for t in tiles] == ["4, 7 iron", "5 iron", "6 iron"]


def test_a_disturbed_club_says_its_reason_in_place_of_the_time(
    shop: tuple[Session, FakeClock],
) -> None:
    session, clock = shop
    clock.advance(minutes=50)
    session.tick()
    joint = session.board.standings[1].joint.id
    session.take(session.bench.disturb(joint))
    held = [t for t in shown_by(session, clock).tiles if t.word is Word.HOLD]
    assert [(t.places[0], t.time, t.mark) for t in held] == [("A2", "disturbed", None)]


def test_r33_no_early_bound_of_a_permission(shop: tuple[Session, FakeClock]) -> None:
    session, clock = shop
    clock.advance(minutes=45)
    session.tick()
    shown = shown_by(session, clock)
    (only,) = shown.tiles
    times = WallPresenter(BoardPresenter(session.board, clock.now(), Unit.C))._times
    late = max(s.not_before_us or 0 for s in session.board.standings)
    assert only.time == times.moment(late)
    assert late % (5 * MINUTE_US) == 0
    said = repr(shown)
    for standing in session.board.standings:
        assert standing.outcome is not None
        forecast = standing.outcome.forecast
        for bounds in (forecast.handling, forecast.full_cure):
            if bounds is not None and bounds.early is not None:
                assert times.moment(bounds.early) not in said
    assert "from" not in said.lower().replace("glyph.from", "")


def test_joints_of_one_tile_keep_its_latest_permission(shop: tuple[Session, FakeClock]) -> None:
    session, clock = shop
    late = clock.now() + DAY_US

    def change(n: int, s: Standing) -> Standing:
        return s._replace(
            word=Word.WAIT, base=Word.WAIT, unknown=False, asked=False,
            not_before_us=late + n * 5 * MINUTE_US,
        )  # fmt: skip

    with_changes(session, change)
    (only,) = shown_by(session, clock).tiles
    assert (only.time, only.mark) == ("Tue 09:15", Glyph.FROM)
    with_changes(session, lambda n, s: s._replace(unknown=n == 3))
    (only,) = shown_by(session, clock).tiles
    assert only.time == "low?"


def test_stale_says_so_and_drops_every_time(shop: tuple[Session, FakeClock]) -> None:
    session, clock = shop
    clock.advance(minutes=2)
    shown = shown_by(session, clock)
    assert shown.stale == "09:00"
    assert shown.due is None
    (only,) = shown.tiles
    assert (only.word, only.time, only.mark) == (Word.STALE, "said WET", None)
