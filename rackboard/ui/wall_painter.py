"""The wall view, painted: legible from across the room. Works on any QPainter.

Everything is drawn in the units of the design and then scaled as `wall_size` says. Capitals are
63 or 50 units high and the lines of a tile stand 75 units apart or more; a text that has no room
at 50 is said shorter, wrapped, or left out, never made smaller.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from rackboard.core.words import Word
from rackboard.ui import edges, glyphs, type
from rackboard.ui.language import say
from rackboard.ui.theme import Theme
from rackboard.ui.tile import Glyph, word_text
from rackboard.ui.type import Align
from rackboard.ui.wall_size import TILE, Viewing, sheet
from rackboard.ui.wall_strip import BIG, USUAL, StripPainter, first_fitting, two_lines
from rackboard.ui.wall_view import WallPage, WallTile, WallView

PAD = 14.0
PLATE, BAND = 166.0, 66.0
_PLATES = {Word.WET: 168.0, Word.CURED: 162.0}
"""The ripple of WET and the second rule of CURED leave the tails of "grip" above, clubs below."""
EDGE = 1.7
CUT, HOLD_INSET = 34.0, 8.0
WORD_LINE, JOB_LINE = 70.0, 145.0
CLUBS_UP, TIME_UP, REASON_UP, REASON_PITCH = 88.0, 8.0, 16.0, 75.0
"""Baselines of the clubs, the time and a HOLD's reason above the tile's bottom."""
GLYPH, MARK = 62.0, 44.0
_GAP = 16.0
_FREE_LINES = 3


class Lines(NamedTuple):
    """The baselines of a tile and the end of its plate, from its top."""

    word: float
    job: float
    plate: float
    clubs: float
    time: float
    reason: float


def lines(height: float, word: Word) -> Lines:
    """Return the baselines for a tile's height in design units.

    What a tile is higher than designed goes between its lines.
    """
    more = max(height - TILE, 0.0)
    plate = _PLATES.get(word, PLATE) + 0.5 * more
    hold = word is Word.HOLD
    clubs = REASON_UP + REASON_PITCH if hold else CLUBS_UP
    return Lines(
        WORD_LINE + 0.15 * more, JOB_LINE + 0.35 * more, plate,
        height - clubs - 0.25 * more, height - TIME_UP - 0.1 * more,
        height - REASON_UP - 0.1 * more,
    )  # fmt: skip


class WallPainter:
    """Paints a page of the wall in one scheme.

    Parameters
    ----------
    theme : Theme
        The colours.
    """

    def __init__(self, theme: Theme) -> None:
        self.theme = theme

    def paint(
        self,
        painter: QPainter,
        size: tuple[float, float],
        view: WallView,
        pages: tuple[WallPage, ...],
        number: int,
        *,
        lit: bool,
        still: bool = False,
        viewing: Viewing | None = None,
        ratio: float = 1.0,
    ) -> None:
        """Paint one page; `lit`: collars are on; `still`: reduced motion."""
        at = sheet(*size, viewing, ratio)
        painter.save()
        painter.scale(at.scale, at.scale)
        painter.fillRect(QRectF(0, 0, at.width, at.height), self.theme.bg)
        StripPainter(self.theme).paint(painter, at.width, view, pages, number)
        page = pages[number]
        for cell, tile in enumerate(page.tiles):
            rect = at.cell(cell)
            painter.save()
            painter.translate(rect.topLeft())
            self.tile(painter, rect.width(), rect.height(), tile)
            if tile.untaken and (lit or still):
                self._collar(painter, rect.width(), rect.height(), 6.0 if still else 4.0)
            painter.restore()
        if page.free and not view.stale:  # what is free now is not known either
            rect = at.cell(at.cells - 1)
            painter.save()
            painter.translate(rect.topLeft())
            self._free(painter, rect.width(), rect.height(), view)
            painter.restore()
        painter.restore()

    # Tiles

    def tile(self, painter: QPainter, width: float, height: float, tile: WallTile) -> None:
        """Paint a tile with its left top at 0, 0, in design units."""
        theme, word = self.theme, tile.word
        at = lines(height, word)
        hold = word is Word.HOLD
        flooded = hold and tile.untaken
        cut = CUT if hold else 0.0
        painter.fillPath(
            edges.body(width, height, cut), theme.fills[word] if flooded else theme.surf
        )
        if word is Word.STALE:
            below = QRectF(4, at.plate, width - 8, height - at.plate - 4)
            edges.hatch(painter, below, theme.out, 26, 3)
        elif theme.high or not theme.dark:
            rim = theme.ink if flooded else theme.line
            edges.draw_rim(painter, rim, (width, height), cut, 1.5)
        if word is Word.STALE:
            self._stale(painter, width, height, at, tile)
            return
        self._plate(painter, width, at.plate, tile, flooded=flooded)
        inset = PAD + (HOLD_INSET if hold else 0.0)
        on = theme.on_fill(word)
        self._word(painter, width, at.word, inset, tile, on)
        self._row(painter, width, at.job, tile, on)
        text = theme.ink if flooded else theme.text
        sub = theme.ink if flooded else theme.sub
        if hold:
            self._below_hold(painter, width, at, tile, text)
        elif tile.cold:
            self._below_cold(painter, width, height, at, tile)
        else:
            wrapped = self._time_lines(width, tile.time)
            if len(wrapped) > 1:
                self._two_lines(painter, PAD, at.reason, wrapped, sub if tile.quiet else text)
                return
            self._clubs(painter, width, at.clubs, tile, sub)
            self._time(painter, width, height, at.time, tile, sub if tile.quiet else text)

    def _word(
        self,
        painter: QPainter,
        width: float,
        baseline: float,
        inset: float,
        tile: WallTile,
        color: QColor,
    ) -> None:
        """Draw word and glyph; a long word of another language takes the wall's other size."""
        word = word_text(tile.word)
        room = width - 2 * inset - GLYPH - _GAP
        style = BIG if type.width(BIG, word) <= room else USUAL
        type.draw(painter, style, inset, baseline, type.fitting(style, word, room), color)
        top = baseline - (type.cap_height(BIG) + GLYPH) / 2
        glyphs.draw(painter, tile.glyph, width - inset - GLYPH, top, GLYPH, color)

    def _stale(
        self, painter: QPainter, width: float, height: float, at: Lines, tile: WallTile
    ) -> None:
        """Draw a tile of a board that isn't updating: hatched, dashed, and no time to trust.

        What it said last stands on a field of its own, so that no line runs through it.
        """
        theme, word = self.theme, tile.word
        painter.save()
        painter.setClipPath(edges.body(width, height, 0.0))
        painter.fillRect(QRectF(0, 0, width, at.plate), theme.fills[word])
        painter.restore()
        ink = theme.on_fill(word)
        self._word(painter, width, at.word, PAD, tile, ink)
        self._row(painter, width, at.job, tile, ink)
        room = width - 2 * PAD
        clubs = first_fitting(USUAL, tile.clubs, room)
        said = two_lines(tile.time, room)
        lines = [clubs, *said] if len(said) < 2 else said
        for up, line in enumerate(reversed([line for line in lines if line])):
            color = theme.sub if line is clubs else theme.text
            self._on_field(painter, at.plate, at.reason - up * REASON_PITCH, line, color)
        pen = QPen(theme.text, 4)
        pen.setDashPattern([5, 4])
        painter.setPen(pen)
        painter.drawLine(QPointF(0, at.plate), QPointF(width, at.plate))
        self._dashed(painter, width, height)

    def _on_field(
        self, painter: QPainter, plate: float, baseline: float, line: str, color: QColor
    ) -> None:
        top = max(baseline - type.cap_height(USUAL) - 10, plate)
        wide = type.width(USUAL, line)
        painter.fillRect(QRectF(4, top, PAD + wide + 6, baseline + 15 - top), self.theme.surf)
        type.draw(painter, USUAL, PAD, baseline, line, color)

    def _plate(
        self, painter: QPainter, width: float, high: float, tile: WallTile, *, flooded: bool
    ) -> None:
        theme, word = self.theme, tile.word
        if flooded:
            edges.draw_edge(painter, theme.ink, word, width, high, EDGE, 2 * EDGE)
            return
        if tile.cold:
            edges.draw_cold(painter, theme, width, high, BAND, EDGE)
        cut = CUT if word is Word.HOLD else 0.0
        edges.draw_plate(painter, theme, word, width, high, EDGE, cut)
        if tile.cold:
            edges.draw_edge(painter, theme.ink, word, width, high, EDGE, 3)

    def _row(
        self, painter: QPainter, width: float, baseline: float, tile: WallTile, color: QColor
    ) -> None:
        right = width - PAD
        job = type.fitting(USUAL, tile.job, right - PAD)
        x = PAD + type.draw(painter, USUAL, PAD, baseline, job, color) + _GAP
        places = first_fitting(USUAL, tile.places, right - x)
        type.draw(painter, USUAL, right, baseline, places, color, Align.RIGHT)

    def _clubs(
        self, painter: QPainter, width: float, baseline: float, tile: WallTile, color: QColor
    ) -> None:
        room = width - 2 * PAD
        if tile.mark is not None:
            room -= MARK + _GAP
            self._mark(painter, width, baseline, tile.mark, color)
        clubs = first_fitting(USUAL, tile.clubs, room)
        type.draw(painter, USUAL, PAD, baseline, clubs, color)

    def _mark(
        self, painter: QPainter, width: float, baseline: float, mark: Glyph, color: QColor
    ) -> None:
        middle = baseline - type.cap_height(USUAL) / 2
        glyphs.draw(painter, mark, width - PAD - MARK, middle - MARK / 2, MARK, color)

    def _time(
        self,
        painter: QPainter,
        width: float,
        height: float,
        baseline: float,
        tile: WallTile,
        color: QColor,
    ) -> None:
        """Draw the time; a date a week away takes the other size that the wall has."""
        room = width - 2 * PAD
        tail = type.metrics(BIG).tightBoundingRect(tile.time).bottom()
        if type.width(BIG, tile.time) <= room and baseline + tail <= height:
            type.draw(painter, BIG, PAD, baseline, tile.time, color)
            return
        tail = type.metrics(USUAL).tightBoundingRect(tile.time).bottom()
        baseline = min(baseline, height - tail - 2)
        type.draw(painter, USUAL, PAD, baseline, type.fitting(USUAL, tile.time, room), color)

    def _time_lines(self, width: float, time: str) -> list[str]:
        """Return words in place of a time, in two lines where one is too short."""
        room = width - 2 * PAD
        return [time] if type.width(USUAL, time) <= room else two_lines(time, room)

    def _two_lines(
        self, painter: QPainter, x: float, baseline: float, lines: Sequence[str], color: QColor
    ) -> None:
        for up, line in enumerate(reversed(lines)):
            type.draw(painter, USUAL, x, baseline - up * REASON_PITCH, line, color)

    def _below_hold(
        self, painter: QPainter, width: float, at: Lines, tile: WallTile, color: QColor
    ) -> None:
        x = PAD + HOLD_INSET
        room = width - x - PAD
        reason = two_lines(tile.time, room)
        if len(reason) < 2:
            reason = [first_fitting(USUAL, tile.clubs, room), *reason]
        self._two_lines(painter, x, at.reason, reason, color)

    def _below_cold(
        self, painter: QPainter, width: float, height: float, at: Lines, tile: WallTile
    ) -> None:
        """Draw the band's words; below it stands the time or, if there is none, the clubs."""
        theme = self.theme
        cap = type.cap_height(USUAL)
        baseline = at.plate + (BAND - 4.2 * EDGE + cap) / 2 + 3
        glyphs.draw(painter, Glyph.COLD, PAD, baseline - (cap + 48) / 2, 48, theme.ink)
        type.draw(painter, USUAL, PAD + 48 + 12, baseline, say("Wall", "cold"), theme.ink)
        if tile.mark is not None:
            self._mark(painter, width, baseline, tile.mark, theme.ink)
        if tile.time:
            self._time(painter, width, height, at.time, tile, theme.text)
            return
        clubs = first_fitting(USUAL, tile.clubs, width - 2 * PAD)
        type.draw(painter, USUAL, PAD, at.time - 8, clubs, theme.text)

    def _dashed(self, painter: QPainter, width: float, height: float) -> None:
        pen = QPen(self.theme.edge, 3)
        pen.setDashPattern([5, 4])
        painter.setPen(pen)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        rect = QRectF(1.5, 1.5, width - 3, height - 3)
        painter.drawRoundedRect(rect, edges.RADIUS, edges.RADIUS)

    def _collar(self, painter: QPainter, width: float, height: float, pen: float) -> None:
        theme = self.theme
        grow = 4 + pen / 2
        line = QPen(theme.fills[Word.HOLD] if theme.dark else theme.ink, pen)
        line.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
        painter.translate(-grow, -grow)
        path = edges.body(width + 2 * grow, height + 2 * grow, CUT + 0.6 * grow)
        painter.strokePath(path, line)

    def _free(self, painter: QPainter, width: float, height: float, view: WallView) -> None:
        theme = self.theme
        painter.setPen(QPen(theme.out, 2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(
            QRectF(1, 1, width - 2, height - 2), edges.RADIUS, edges.RADIUS
        )
        type.draw(painter, USUAL, PAD, WORD_LINE - 6, say("Wall", "free"), theme.dim)
        room = width - 2 * PAD
        lines = type.wrapped(USUAL, " ".join(view.free), room)
        fits = len(lines) <= _FREE_LINES and all(type.width(USUAL, line) <= room for line in lines)
        if not fits:
            lines = [say("Wall", "%n slots", "%n slot", view.free_count)]
        for up, line in enumerate(reversed(lines)):
            type.draw(painter, USUAL, PAD, height - 18 - 76 * up, line, theme.dim)
