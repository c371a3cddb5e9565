"""The wall view: its pages, and what the services say on it. All in here is invented."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from pytestqt.qtbot import QtBot

from helpers.session import lay_out_irons, make_session, type_temperature
from helpers.shop import FakeClock
from helpers.wall_values import tile, view, worst_tiles
from rackboard.core.bench import HoldReason, Milestone
from rackboard.core.instants import DAY_US, MINUTE_US
from rackboard.core.standing import Standing
from rackboard.core.temperature import Unit
from rackboard.core.words import Word
from rackboard.ui.board_presenter import BoardPresenter
from rackboard.ui.resources import load_fonts
from rackboard.ui.session import Session
from rackboard.ui.theme import dark_theme, light_theme
from rackboard.ui.tile import Glyph
from rackboard.ui.wall import PAGE_MS, Wall
from rackboard.ui.wall_presenter import WallPresenter, clubs_text
from rackboard.ui.wall_view import WallView, pages

FROM = Glyph.FROM


@pytest.fixture(autouse=True)
def fonts(qapp: object) -> None:
    load_fonts()


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


def test_a_steady_collar_is_six_pixels(qtbot: QtBot) -> None:
    wall = Wall(dark_theme())
    qtbot.addWidget(wall)
    wall.resize(1920, 1080)
    hold = tile(Word.HOLD, "disturbed", hold=HoldReason.DISTURBED, untaken=True)
    wall.show_view(view((hold,)))
    cell = wall.sheet().cell(0)
    row, left = round(cell.center().y()), round(cell.left())
    widths = []
    for still in (False, True):
        wall.set_reduced_motion(still)
        for time_ms in (0, 250):  # lit, and dark unless it stands still
            wall.set_time_ms(time_ms)
            image = wall.grab().toImage()
            fill, ground = dark_theme().fills[Word.HOLD].redF(), dark_theme().bg.redF()
            reds = (image.pixelColor(x, row).redF() for x in range(left - 2))
            widths.append(sum((red - ground) / (fill - ground) for red in reds))
    assert widths == pytest.approx([4, 0, 6, 6], abs=0.3)


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
