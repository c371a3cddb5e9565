"""The wall view, painted: legible from across the room. Works on any QPainter.

Everything is drawn in the units of a screen 1920 px wide and then scaled, so that a smaller
screen shows the same in proportion. Capitals are 63 or 50 units high and the lines of a tile
stand 75 units apart or more; a text that has no room at 50 is left out, never made smaller.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from rackboard.core.words import Word
from rackboard.ui import edges, glyphs, type
from rackboard.ui.theme import Theme
from rackboard.ui.tile import Glyph
from rackboard.ui.type import Align, Face, Style
from rackboard.ui.wall_view import WallPage, WallTile, WallView

DESIGN = (1920.0, 1080.0)
COLUMNS, ROWS = 5, 3
BIG = Style(Face.CONDENSED, 90, tabular=False)
USUAL = Style(Face.CONDENSED, 72, tabular=False)
MARGIN, GUTTER, STRIP, PAD = 16.0, 14.0, 84.0, 14.0
PLATE, PLATE_CURED, BAND = 162.0, 158.0, 66.0
EDGE = 1.7
CUT, HOLD_INSET = 34.0, 8.0
WORD_LINE, JOB_LINE = 73.0, 148.0
CLUBS_UP, TIME_UP, REASON_UP, REASON_PITCH = 91.0, 10.0, 16.0, 75.0
"""Baselines of the clubs, the time and a HOLD's reason above the tile's bottom."""
TILE = 314.0
"""The designed height; what a tile is higher goes between its lines."""
GLYPH, MARK, CHIP = 62.0, 44.0, 56.0
_GAP = 16.0


class Lines(NamedTuple):
    """The baselines of a tile and the end of its plate, from its top."""

    word: float
    job: float
    plate: float
    clubs: float
    time: float
    reason: float


def lines(height: float, word: Word) -> Lines:
    """Return the baselines for a tile's height in design units."""
    more = max(height - TILE, 0.0)
    plate = (PLATE_CURED if word is Word.CURED else PLATE) + 0.5 * more
    hold = word is Word.HOLD
    clubs = REASON_UP + REASON_PITCH if hold else CLUBS_UP
    return Lines(
        WORD_LINE + 0.15 * more, JOB_LINE + 0.35 * more, plate,
        height - clubs - 0.25 * more, height - TIME_UP - 0.1 * more,
        height - REASON_UP - 0.1 * more,
    )  # fmt: skip


class Sheet(NamedTuple):
    """How the design lies on a screen: scale and the size in design units."""

    scale: float
    width: float
    height: float

    def cell(self, number: int) -> QRectF:
        """Return a tile's rectangle in design units, counted along the rows."""
        wide = (self.width - 2 * MARGIN - (COLUMNS - 1) * GUTTER) / COLUMNS
        room = self.height - STRIP
        high = (room - 2 * 13 - (ROWS - 1) * GUTTER) / ROWS
        row, column = divmod(number, COLUMNS)
        return QRectF(
            MARGIN + column * (wide + GUTTER), STRIP + 13 + row * (high + GUTTER), wide, high
        )


def sheet(width: float, height: float) -> Sheet:
    """Return how the design lies on a screen of this size [logical px]."""
    scale = max(min(width / DESIGN[0], height / DESIGN[1]), 0.05)
    return Sheet(scale, width / scale, height / scale)


def first_fitting(style: Style, texts: Iterable[str], room: float) -> str:
    """Return the first text that has room, "" if none has."""
    return next((text for text in texts if type.width(style, text) <= room), "")


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
    ) -> None:
        """Paint one page; `lit`: collars are on; `still`: reduced motion."""
        at = sheet(*size)
        painter.save()
        painter.scale(at.scale, at.scale)
        painter.fillRect(QRectF(0, 0, at.width, at.height), self.theme.bg)
        self._strip(painter, at, view, pages, number)
        page = pages[number]
        for cell, tile in enumerate(page.tiles):
            rect = at.cell(cell)
            painter.save()
            painter.translate(rect.topLeft())
            self.tile(painter, rect.width(), rect.height(), tile)
            if tile.untaken and (lit or still):
                self._collar(painter, rect.width(), rect.height(), 6.0 if still else 4.0)
            painter.restore()
        if page.free:
            rect = at.cell(COLUMNS * ROWS - 1)
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
            edges.hatch(painter, below, theme.line, 34, 3)
        elif not theme.dark:
            rim = theme.ink if flooded else theme.line
            edges.draw_rim(painter, rim, (width, height), cut, 1.5)
        self._plate(painter, width, at.plate, tile, flooded=flooded)
        if word is Word.STALE:
            self._dashed(painter, width, height)
        inset = PAD + (HOLD_INSET if hold else 0.0)
        on = theme.on_fill(word)
        type.draw(painter, BIG, inset, at.word, word.value, on)
        top = at.word - (type.cap_height(BIG) + GLYPH) / 2
        glyphs.draw(painter, tile.glyph, width - inset - GLYPH, top, GLYPH, on)
        self._row(painter, width, at.job, tile, on)
        text = theme.ink if flooded else theme.text
        sub = theme.ink if flooded else theme.sub
        if hold:
            self._below_hold(painter, width, at, tile, text)
        elif tile.cold:
            self._below_cold(painter, width, at, tile)
        else:
            self._clubs(painter, width, at.clubs, tile, sub)
            self._time(painter, width, at.time, tile, sub if tile.quiet else text)

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
        job = first_fitting(USUAL, (tile.job,), right - PAD)
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
        self, painter: QPainter, width: float, baseline: float, tile: WallTile, color: QColor
    ) -> None:
        """Draw the time; a date a week away takes the other size that the wall has."""
        room = width - 2 * PAD
        big = tile.word is not Word.STALE and type.width(BIG, tile.time) <= room
        type.draw(painter, BIG if big else USUAL, PAD, baseline, tile.time, color)

    def _below_hold(
        self, painter: QPainter, width: float, at: Lines, tile: WallTile, color: QColor
    ) -> None:
        x = PAD + HOLD_INSET
        clubs = first_fitting(USUAL, tile.clubs, width - x - PAD)
        type.draw(painter, USUAL, x, at.clubs, clubs, color)
        type.draw(painter, USUAL, x, at.reason, tile.time, color)

    def _below_cold(self, painter: QPainter, width: float, at: Lines, tile: WallTile) -> None:
        """Draw the band's words; below it stands the time or, if there is none, the clubs."""
        theme = self.theme
        cap = type.cap_height(USUAL)
        baseline = at.plate + (BAND - 4.2 * EDGE + cap) / 2 + 1
        glyphs.draw(painter, Glyph.COLD, PAD, baseline - (cap + 48) / 2, 48, theme.ink)
        type.draw(painter, USUAL, PAD + 48 + 12, baseline, "cold", theme.ink)
        if tile.mark is not None:
            self._mark(painter, width, baseline, tile.mark, theme.ink)
        if tile.time:
            self._time(painter, width, at.time, tile, theme.text)
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
        type.draw(painter, USUAL, PAD, WORD_LINE - 6, "free", theme.dim)
        room = width - 2 * PAD
        lines = type.wrapped(USUAL, " ".join(view.free), room)
        fits = len(lines) <= ROWS and all(type.width(USUAL, line) <= room for line in lines)
        if not fits:
            count = view.free_count
            lines = [f"{count} slots" if count > 1 else "1 slot"]
        for up, line in enumerate(reversed(lines)):
            type.draw(painter, USUAL, PAD, height - 18 - 76 * up, line, theme.dim)

    # Strip

    def _strip(
        self, painter: QPainter, at: Sheet, view: WallView, pages: tuple[WallPage, ...], number: int
    ) -> None:
        """Draw the strip: the clock, what is due, chips of the pages, temperatures.

        What has no room is left out: first where the next thing is due, then the readings
        from the last on.
        """
        theme = self.theme
        painter.fillRect(QRectF(0, 0, at.width, STRIP), theme.strip)
        painter.fillRect(QRectF(0, STRIP - 1.5, at.width, 1.5), theme.line)
        middle = STRIP / 2
        low = middle + type.cap_height(USUAL) / 2
        big_low = middle + type.cap_height(BIG) / 2
        x = MARGIN + type.draw(painter, BIG, MARGIN, big_low, view.clock, theme.text) + 30
        painter.fillRect(QRectF(x, 16, 1.5, STRIP - 32), theme.line)
        x += 30
        right = at.width - MARGIN
        chips = len(pages) * (CHIP + 12) + 24 if len(pages) > 1 else 0.0
        due_room = 56 + 14 + type.width(USUAL, view.due.time) + 24 if view.due else 0.0
        stale = f"no word since {view.stale}" if view.stale else ""
        need = x + chips + max(due_room, type.width(USUAL, stale))
        readings = list(view.readings)
        while readings and need + self._readings_width(readings) > right:
            readings.pop()
        right -= self._readings(painter, right, low, readings)
        if chips:
            right -= chips
            self._chips(painter, right + 24, middle, pages, number)
        if stale:
            type.draw(painter, USUAL, x, low, first_fitting(USUAL, (stale,), right - x), theme.text)
        elif view.due is not None:
            glyphs.draw(painter, view.due.glyph, x, middle - 28, 56, theme.text)
            x += 56 + 14
            x += type.draw(painter, USUAL, x, low, view.due.time, theme.text) + 24
            places = first_fitting(USUAL, view.due.places, right - x - 24)
            type.draw(painter, USUAL, x, low, places, theme.sub)

    def _readings_width(self, readings: Iterable[tuple[str, str]]) -> float:
        return sum(
            40 + 14 + type.width(USUAL, name) + type.width(USUAL, value) for name, value in readings
        )

    def _readings(
        self, painter: QPainter, right: float, baseline: float, readings: Sequence[tuple[str, str]]
    ) -> float:
        x = right
        for name, value in reversed(readings):
            x -= type.draw(painter, USUAL, x, baseline, value, self.theme.text, Align.RIGHT) + 14
            x -= type.draw(painter, USUAL, x, baseline, name, self.theme.sub, Align.RIGHT) + 40
        return right - x

    def _chips(
        self,
        painter: QPainter,
        x: float,
        middle: float,
        pages: tuple[WallPage, ...],
        number: int,
    ) -> None:
        theme = self.theme
        for at, page in enumerate(pages):
            box = QRectF(x + at * (CHIP + 12), middle - CHIP / 2, CHIP, CHIP)
            if page.worst is not None:
                word = page.worst.word
                painter.setPen(Qt.PenStyle.NoPen)
                painter.setBrush(theme.fills[word])
                painter.drawRoundedRect(box, edges.RADIUS, edges.RADIUS)
                glyphs.draw(
                    painter, page.worst.glyph, box.x() + 9, box.y() + 9, CHIP - 18,
                    theme.on_fill(word),
                )  # fmt: skip
            if at == number:
                painter.setPen(QPen(theme.ring, 4))
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.drawRoundedRect(box.adjusted(-5, -5, 5, 5), 12, 12)
