"""The strip at the top of the wall: the clock, what is due, the pages, the temperatures."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from rackboard.core.words import Word
from rackboard.ui import edges, glyphs, type
from rackboard.ui.language import say
from rackboard.ui.theme import Theme
from rackboard.ui.tile import WORD_GLYPHS, word_text
from rackboard.ui.type import Align, Face, Style
from rackboard.ui.wall_size import MARGIN, STRIP
from rackboard.ui.wall_view import WallPage, WallView

BIG = Style(Face.CONDENSED, 90, tabular=False)
USUAL = Style(Face.CONDENSED, 72, tabular=False)
CHIP = 56.0
_PAD = 14.0
_GAP = 16.0


def first_fitting(style: Style, texts: Iterable[str], room: float) -> str:
    """Return the first text that has room, "" if none has."""
    return next((text for text in texts if type.width(style, text) <= room), "")


def two_lines(text: str, room: float) -> list[str]:
    """Return a text in up to two lines; what is longer still is elided at the end."""
    lines = type.wrapped(USUAL, text, room)
    if len(lines) > 1:
        lines = [lines[0], " ".join(lines[1:])]
    return [type.fitting(USUAL, line, room) for line in lines]


class StripPainter:
    """Paints the strip in design units.

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
        width: float,
        view: WallView,
        pages: tuple[WallPage, ...],
        number: int,
    ) -> None:
        """Paint the strip: the clock, what is due, chips of the pages, temperatures.

        What has no room is left out: first where the next thing is due, then the readings
        from the last on.
        """
        theme = self.theme
        painter.fillRect(QRectF(0, 0, width, STRIP), theme.strip)
        painter.fillRect(QRectF(0, STRIP - 1.5, width, 1.5), theme.line)
        middle = STRIP / 2
        low = middle + type.cap_height(USUAL) / 2 - 2  # room for the tails
        big_low = middle + type.cap_height(BIG) / 2
        x = MARGIN + type.draw(painter, BIG, MARGIN, big_low, view.clock, theme.text) + 30
        painter.fillRect(QRectF(x, 16, 1.5, STRIP - 32), theme.line)
        x += 30
        right = width - MARGIN
        chips = len(pages) * (CHIP + 12) + 24 if len(pages) > 1 else 0.0
        due_room = 56 + 14 + type.width(USUAL, view.due.time) + 24 if view.due else 0.0
        if view.stale:
            self._stale_strip(painter, x, right - chips, view.stale)
        need = x + chips + due_room
        readings = [] if view.stale else list(view.readings)
        while readings and need + self._readings_width(readings) > right:
            readings.pop()
        right -= self._readings(painter, right, low, readings)
        if chips:
            right -= chips
            self._chips(painter, right + 24, middle, pages, number)
        if view.due is not None and not view.stale:
            glyphs.draw(painter, view.due.glyph, x, middle - 28, 56, theme.text)
            x += 56 + 14
            x += type.draw(painter, USUAL, x, low, view.due.time, theme.text) + 24
            places = first_fitting(USUAL, view.due.places, right - x - 24)
            type.draw(painter, USUAL, x, low, places, theme.sub)

    def _stale_strip(
        self, painter: QPainter, x: float, right: float, since: str
    ) -> None:
        """Draw across the strip that nothing here is known to hold any more."""
        theme = self.theme
        ink = theme.bg
        word, said = word_text(Word.STALE), say("Wall", "no word since {time}")
        texts = (said.format(time=since), since)
        room = right - x - 2 * _PAD - 56 - 2 * _GAP - type.width(USUAL, word)
        shown = first_fitting(USUAL, texts, room)
        field = QRectF(x - 30, 0, right - x + 30 + MARGIN, STRIP)
        painter.fillRect(field, theme.text)
        middle = STRIP / 2
        low = middle + type.cap_height(USUAL) / 2 - 2  # room for the tails
        glyphs.draw(painter, WORD_GLYPHS[Word.STALE], x, middle - 28, 56, ink)
        x += 56 + _GAP
        x += type.draw(painter, USUAL, x, low, word, ink) + 2 * _GAP
        type.draw(painter, USUAL, x, low, shown, ink)

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
        for cell, page in enumerate(pages):
            box = QRectF(x + cell * (CHIP + 12), middle - CHIP / 2, CHIP, CHIP)
            if page.worst is not None:
                word = page.worst.word
                painter.setPen(Qt.PenStyle.NoPen)
                painter.setBrush(theme.fills[word])
                painter.drawRoundedRect(box, edges.RADIUS, edges.RADIUS)
                glyphs.draw(
                    painter, page.worst.glyph, box.x() + 9, box.y() + 9, CHIP - 18,
                    theme.on_fill(word),
                )  # fmt: skip
            if cell == number:
                painter.setPen(QPen(theme.ring, 4))
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.drawRoundedRect(box.adjusted(-5, -5, 5, 5), 12, 12)
