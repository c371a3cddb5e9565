"""R26: capitals are as high as the eye needs them, at every scale and after a change of theme."""

from __future__ import annotations

import pytest
from pytestqt.qtbot import QtBot

from helpers.wall_values import drawn, paint, tile, view
from rackboard.core.words import Word
from rackboard.ui import type
from rackboard.ui.resources import load_fonts
from rackboard.ui.theme import Theme, dark_theme, light_theme
from rackboard.ui.type import Roles, Style
from rackboard.ui.wall import Wall
from rackboard.ui.wall_size import Viewing, cap_height_px, plausible_pitch, sheet, viewing_of
from rackboard.ui.wall_strip import BIG, USUAL

SCALES = (1.0, 1.25, 1.5, 2.0)
THEMES = {
    f"{'dark' if dark else 'light'}{' high' if high else ''}": (dark, high)
    for dark in (True, False) for high in (False, True)
}  # fmt: skip
WHOLE_PIXEL = 0.6
"""A face's outline is rounded to whole pixels where it is measured."""


def theme_named(name: str) -> Theme:
    dark, high = THEMES[name]
    return dark_theme(high=high) if dark else light_theme(high=high)


@pytest.fixture(autouse=True)
def fonts(qapp: object) -> None:
    load_fonts()


@pytest.mark.parametrize(
    ("distance_m", "arcmin", "pixels"),
    [(3.0, 20.0, 63.1), (3.0, 16.0, 50.4), (1.0, 20.0, 21.0), (1.0, 16.0, 16.8)],
)
def test_the_check_values(distance_m: float, arcmin: float, pixels: float) -> None:
    assert cap_height_px(distance_m, 0.2768, arcmin) == pytest.approx(pixels, abs=0.05)
    assert cap_height_px(3.0, 1.0, 20.0) == pytest.approx(17.45, abs=0.005)


@pytest.mark.parametrize("name", THEMES)
@pytest.mark.parametrize("ratio", SCALES)
@pytest.mark.parametrize("same_screen", [True, False], ids=["finer pixels", "same pixels"])
def test_wall_at_every_scale(name: str, ratio: float, same_screen: bool) -> None:
    """A screen of finer pixels at 1920 × 1080 points, and one whose points are larger."""
    size = (1920, 1080) if same_screen else (round(1920 / ratio), round(1080 / ratio))
    pitch = 0.2768 / ratio if same_screen else 0.2768
    viewing = Viewing(3.0, pitch)
    at = sheet(*size, viewing, ratio)
    assert (at.columns, at.rows) == (5, 3)
    with drawn() as texts:
        paint(view(), theme_named(name), size, viewing=viewing, ratio=ratio)
    words = [text for text in texts if text.text in set(Word)]
    assert len(words) >= 15
    for text in texts:
        arcmin = 20.0 if text.style == BIG else 16.0
        least = cap_height_px(3.0, pitch, arcmin)
        assert text.box.height() >= least - WHOLE_PIXEL * ratio, text
    assert {word.style for word in words} == {BIG}
    assert {text.style for text in texts} == {BIG, USUAL}


@pytest.mark.parametrize(("pitch", "tiles"), [(0.2745, 15), (0.2768, 15), (0.31, 15), (0.24, 8)])
def test_a_pitch_not_known_to_the_micrometre_costs_no_column(pitch: float, tiles: int) -> None:
    at = sheet(1920, 1080, Viewing(3.0, pitch))
    assert at.cells == tiles
    assert at.arcmin >= 20 * 0.97


@pytest.mark.parametrize("distance_m", [1.5, 2.0, 3.0, 4.0, 5.0])
@pytest.mark.parametrize("size", [(1920, 1080), (2560, 1440), (1920, 1200), (3840, 2160)])
def test_other_distances_have_their_size_and_fewer_tiles(
    distance_m: float, size: tuple[int, int]
) -> None:
    viewing = Viewing(distance_m, 0.2768)
    at = sheet(*size, viewing)
    assert at.arcmin >= 20 * 0.97 or 2 in (at.columns, at.rows)
    with drawn() as texts:
        paint(view(), dark_theme(), size, viewing=viewing)
    reached = cap_height_px(distance_m, 0.2768, at.arcmin)
    for text in texts:
        if text.style == BIG:
            assert text.box.height() == pytest.approx(reached, abs=at.scale)
        else:
            assert text.box.height() >= 0.8 * reached - at.scale
    nearer = sheet(*size, Viewing(distance_m / 2, 0.2768))
    assert nearer.cells >= at.cells


def test_what_cannot_fit_is_known() -> None:
    at = sheet(1920, 1080, Viewing(6.0))
    assert (at.cells, round(at.arcmin)) == (4, 14)
    assert sheet(1920, 1080).arcmin == pytest.approx(20.0, abs=0.05)


@pytest.mark.parametrize("large", [True, False], ids=["1920", "1280"])
def test_near_view_is_read_from_one_metre(large: bool) -> None:
    """Word, club and time bind at 1 m; another day's time is 14 px; the rest is at least 10.5."""
    roles = Roles(large=large)
    least = 21.0 if large else 16.8

    def cap(style: Style) -> float:
        return type.metrics(style).tightBoundingRect("H").height()

    for style in (roles.word, roles.club, roles.club_narrow, roles.time):
        assert cap(style) >= least - WHOLE_PIXEL
    assert cap(roles.time_other_day) >= 14.0 - WHOLE_PIXEL
    for name, style in vars(roles).items():
        if isinstance(style, Style):
            assert type.cap_height(style) >= 10.5, name


def test_a_change_of_theme_changes_no_size(qtbot: QtBot) -> None:
    wall = Wall(dark_theme())
    qtbot.addWidget(wall)
    wall.resize(1920, 1080)
    wall.show_view(view())
    with drawn() as before:
        wall.grab()
    wall.show_theme(light_theme(high=True))
    with drawn() as after:
        wall.grab()
    assert [text.box for text in after] == [text.box for text in before]
    assert wall.grab().toImage().pixelColor(2, 1078) == light_theme(high=True).bg


def test_the_wall_takes_another_distance(qtbot: QtBot) -> None:
    wall = Wall(dark_theme())
    qtbot.addWidget(wall)
    wall.resize(1920, 1080)
    wall.show_view(view((tile(Word.WAIT, "20:55"),) * 15))
    wall.grab()
    assert [len(page.tiles) for page in wall.pages()] == [15]
    wall.set_viewing(Viewing(6.0))
    assert [len(page.tiles) for page in wall.pages()] == [4, 4, 4, 3]
    wall.resize(1280, 800)
    wall.set_viewing(viewing_of({}))
    assert [len(page.tiles) for page in wall.pages()] == [6, 6, 3]


def test_viewing_of_the_settings() -> None:
    assert viewing_of({}) == (3.0, 0.2768)
    assert viewing_of({}, 0.25) == (3.0, 0.25)
    stored: dict[str, object] = {"wall distance m": 4, "pixel pitch mm": 0.3}
    assert viewing_of(stored, 0.25) == (4.0, 0.3)


@pytest.mark.parametrize(
    ("dpi", "size_mm", "size_px", "ratio", "pitch"),
    [
        (91.76, (531.4, 298.9), (1920, 1080), 1.0, 0.2768),
        (91.76, (531.4, 298.9), (1920, 1080), 2.0, 0.1384),  # twice as many, half as large
        (96.0, (0.0, 0.0), (1920, 1080), 1.0, None),  # a projector
        (81.6, (160.0, 90.0), (1920, 1200), 1.0, None),  # its aspect, given as a size
        (96.0, (508.0, 285.75), (1920, 1080), 1.0, None),  # a virtual screen
        (95.81, (509.0, 286.0), (1920, 1080), 1.0, 0.2651),  # 23 inches
        (12.0, (4064.0, 2286.0), (1920, 1080), 1.0, None),
    ],
)  # fmt: skip
def test_a_screen_is_believed_if_it_can_be_true(
    dpi: float, size_mm: tuple[float, float], size_px: tuple[int, int], ratio: float,
    pitch: float | None,
) -> None:  # fmt: skip
    assert plausible_pitch(dpi, size_mm, size_px, ratio) == pytest.approx(pitch, abs=1e-4)
