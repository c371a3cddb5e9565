"""The pictures of the help, drawn by what draws the board itself."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import NamedTuple

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from rackboard.core.bench import HoldReason
from rackboard.core.temperature import Unit, format_temperature
from rackboard.core.words import Word
from rackboard.ui import edges, glyphs, legend, motif
from rackboard.ui.language import say, translated
from rackboard.ui.theme import Theme
from rackboard.ui.tile import Glyph, MotifStyle, Tile, TileKind
from rackboard.ui.tile_painter import TilePainter
from rackboard.ui.type import Roles

Draw = Callable[[QPainter, Theme, Roles], None]
_ROUND = 12
"""Room round a tile for its collar [px]."""


class Sign(NamedTuple):
    """A picture: its size at 1920 and at 1280 [px], and who draws it from 0, 0."""

    large: tuple[int, int]
    small: tuple[int, int]
    draw: Draw


class SignView(QWidget):
    """Shows a `Sign`; what it means stands beside it in words.

    Parameters
    ----------
    sign : Sign
        The picture.
    name : str
        Accessible name.
    """

    def __init__(self, sign: Sign, theme: Theme, roles: Roles, name: str = "") -> None:
        super().__init__()
        self._sign, self._theme, self._roles = sign, theme, roles
        self.setFixedSize(QSize(*(sign.large if roles.large else sign.small)))
        self.setAccessibleName(name)

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        self._theme = theme
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint it."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._sign.draw(painter, self._theme, self._roles)
        painter.end()


def state(word: Word, hold: HoldReason | None = None) -> Sign:
    """Return the plate of a word."""

    def draw(painter: QPainter, theme: Theme, roles: Roles) -> None:
        painter.translate(1, 1)
        legend.draw_state(painter, theme, roles, word, hold)

    return Sign((140, 56), (106, 42), draw)


def cold_band() -> Sign:
    """Return the plate of WAIT with the band "cold" under it."""

    def draw(painter: QPainter, theme: Theme, roles: Roles) -> None:
        painter.translate(1, 1)
        width, height = legend.plate_size(roles)
        band = 22.0 if roles.large else 18.0
        scale = 0.75 if roles.large else 0.6
        edges.draw_cold(painter, theme, width, height, band, scale)
        legend.draw_state(painter, theme, roles, Word.WAIT)
        size = 17 if roles.large else 14
        top = height + (band - size) / 2 - scale
        glyphs.draw(painter, Glyph.COLD, 12, top, size, theme.ink)

    return Sign((140, 76), (106, 60), draw)


def glyph(of: Glyph) -> Sign:
    """Return a glyph alone."""

    def draw(painter: QPainter, theme: Theme, roles: Roles) -> None:
        size = 30.0 if roles.large else 24.0
        painter.translate(54 if roles.large else 40, 4)
        glyphs.draw(painter, of, 0, 0, size, theme.text)

    return Sign((140, 40), (106, 32), draw)


def dumbbell() -> Sign:
    """Return the glue line with the two dots, larger than on a tile."""

    def draw(painter: QPainter, theme: Theme, roles: Roles) -> None:
        wide, high = (252.0, 24.0) if roles.large else (163.0, 18.0)
        inks = motif.MotifInks(theme.text, theme.dim, theme.text)
        motif.draw(
            painter, inks, _ROUND, high, wide, high, 0.36, dumbbell=(0.52, 0.78), dumbbell_drop=9.0
        )  # fmt: skip

    return Sign((252 + 2 * _ROUND, 54), (163 + 2 * _ROUND, 44), draw)


def tile(made: Tile) -> Sign:
    """Return a tile of the board."""

    def draw(painter: QPainter, theme: Theme, roles: Roles) -> None:
        wide, high = (252, 197) if roles.large else (163, 146)
        rect = QRectF(_ROUND, _ROUND, wide, high)
        TilePainter(theme, large=roles.large).paint(painter, rect, made)
        if made.untaken:
            color = theme.fills[Word.HOLD] if theme.dark else theme.ink
            edges.draw_collar(painter, color, rect, 4, 4)

    round_it = 2 * _ROUND
    return Sign((252 + round_it, 197 + round_it), (163 + round_it, 146 + round_it), draw)


# Tiles of an invented shop


def usual_tile(unit: Unit) -> Tile:
    """Return one that waits."""
    return Tile(
        0, 6, "A7", TileKind.JOINT, Word.WAIT, say("Help", "5 iron"), "214",
        say("Help", "day-long, {time}").format(time="09:10"),
        translated(format_temperature(17_400, unit)),
        next_glyph=Glyph.HAND, caption=say("Help", "not before"), time="17:20",
        detail=say("Help", "probably hard by {time}").format(time="15:30"),
        detail_short=say("Help", "probably {time}").format(time="15:30"),
        position=0.36, probably=0.46, not_before=0.58,
    )  # fmt: skip


def cold_tile(unit: Unit) -> Tile:
    """Return one that is too cold."""
    return replace(
        usual_tile(unit), name="A4", temperature=translated(format_temperature(10_200, unit)),
        cold=say("Help", "warm it"), caption="", time=say("Help", "no time"), detail="",
        detail_short="", motif=MotifStyle.COLD, probably=None, not_before=None,
    )  # fmt: skip


def low_tile(unit: Unit) -> Tile:
    """Return one whose night has no record."""
    return replace(
        usual_tile(unit), name="B3", time=say("Help", "low?"),
        detail=say("Help", "lowest overnight not known"),
        detail_short=say("Help", "night not known"), position=0.5, gap=(0.3, 0.44),
        probably=None, not_before=None,
    )  # fmt: skip


def released_tile(unit: Unit) -> Tile:
    """Return one that a person has released before its time."""
    return replace(
        usual_tile(unit), name="A9", word=Word.BENCH, caption="", next_glyph=None,
        time=say("Help", "released {initials}").format(initials="KT"), detail="",
        detail_short="", position=0.8, probably=None, not_before=None,
    )  # fmt: skip


def hold_tile(unit: Unit) -> Tile:
    """Return one on HOLD that nobody has answered."""
    return replace(
        usual_tile(unit), name="A13", word=Word.HOLD, next_glyph=None, caption="",
        time=say("Help", "disturbed {time}").format(time="14:19"),
        detail=say("Help", "before it was hard"), detail_short="", hold=HoldReason.DISTURBED,
        untaken=True, motif=MotifStyle.HOLD, probably=None, not_before=None,
    )  # fmt: skip
