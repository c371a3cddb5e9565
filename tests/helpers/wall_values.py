"""Invented tiles of the wall at their longest, and what of them is drawn where. Needs Qt."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from typing import NamedTuple
from unittest.mock import patch

from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter

from rackboard.core.bench import HoldReason
from rackboard.core.words import Word
from rackboard.ui import type
from rackboard.ui.theme import Theme
from rackboard.ui.tile import Glyph
from rackboard.ui.type import Align, Style
from rackboard.ui.wall_painter import WallPainter
from rackboard.ui.wall_size import Viewing, sheet
from rackboard.ui.wall_view import WallDue, WallReading, WallTile, WallView, pages

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
    """A text as drawn: its box from cap height to baseline and its real ink, in physical px."""

    text: str
    style: Style
    box: QRectF
    ink: QRectF


@contextmanager
def drawn() -> Iterator[list[Text]]:
    """Record every text that is drawn."""
    texts: list[Text] = []
    usual: Callable[..., float] = type.draw

    def record(
        painter: QPainter, style: Style, x: float, baseline: float, text: str, color: QColor,
        align: Align = Align.LEFT,
    ) -> float:  # fmt: skip
        wide = usual(painter, style, x, baseline, text, color, align)
        left = x - (wide if align is Align.RIGHT else 0.0)
        to = painter.deviceTransform()
        ink = type.metrics(style).tightBoundingRect(text).translated(left, baseline)
        high = type.metrics(style).tightBoundingRect("H").height()
        if text:
            box = to.mapRect(QRectF(left, baseline - high, wide, high))
            texts.append(Text(text, style, box, to.mapRect(ink)))
        return wide

    with patch.object(type, "draw", record):
        yield texts


def paint(
    shown: WallView,
    theme: Theme,
    size: tuple[int, int],
    *,
    viewing: Viewing | None = None,
    ratio: float = 1.0,
) -> QImage:
    """Paint the first page on a screen of logical px with so many physical ones each."""
    image = QImage(
        round(size[0] * ratio), round(size[1] * ratio), QImage.Format.Format_ARGB32
    )
    image.setDevicePixelRatio(ratio)
    painter = QPainter(image)
    extent = (float(size[0]), float(size[1]))
    made = pages(shown, sheet(*size, viewing, ratio).cells)
    WallPainter(theme).paint(
        painter, extent, shown, made, 0, lit=True, viewing=viewing, ratio=ratio
    )
    painter.end()
    return image


def areas(
    size: tuple[int, int], viewing: Viewing | None = None, ratio: float = 1.0
) -> list[QRectF]:
    """Strip and cells [physical px]."""
    at = sheet(*size, viewing, ratio)
    scale = at.scale * ratio
    strip = QRectF(0, 0, at.width, 80)
    return [
        QRectF(c.x() * scale, c.y() * scale, c.width() * scale, c.height() * scale)
        for c in (strip, *(at.cell(number) for number in range(at.cells)))
    ]
