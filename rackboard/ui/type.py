"""Type: three faces, the sizes of each role, and text drawn from cached layouts.

The faces' capitals are exactly 0.7 em high, so every size is arithmetic. Baselines and widths
are logical px.
"""

from __future__ import annotations

from enum import Enum
from functools import lru_cache
from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QStaticText

from rackboard.ui.resources import CONDENSED, SEMI_CONDENSED


class Face(Enum):
    """The three faces that the package carries: family and weight."""

    MEDIUM = (SEMI_CONDENSED, QFont.Weight.Medium)
    BOLD = (SEMI_CONDENSED, QFont.Weight.DemiBold)
    CONDENSED = (CONDENSED, QFont.Weight.Medium)


_TABULAR = QFont.Tag("tnum")


class Style(NamedTuple):
    """A face at a pixel size; tabular figures unless said otherwise."""

    face: Face
    px: int
    spacing: float = 0.0
    tabular: bool = True


class Align(Enum):
    """Where x lies on a piece of text."""

    LEFT = 0
    RIGHT = 1
    CENTRE = 2


class Roles:
    """The styles of one board size."""

    def __init__(self, *, large: bool) -> None:
        def style(face: Face, at_1920: int, at_1280: int, spacing: float = 0.0) -> Style:
            return Style(face, at_1920 if large else at_1280, spacing)

        medium, bold, narrow = Face.MEDIUM, Face.BOLD, Face.CONDENSED
        self.large = large
        self.clock = style(narrow, 60, 44)
        self.reading = style(narrow, 42, 30)
        self.title = style(bold, 44, 32)
        self.inspector_title = style(bold, 32, 24)
        self.inspector_time = style(bold, 28, 21)
        self.club = style(medium, 30, 24)
        self.club_narrow = style(narrow, 30, 24)
        self.word = style(bold, 30, 24, 0.6)
        self.time = style(bold, 30, 24)
        self.time_other_day = self.time if large else Style(narrow, 20, tabular=False)
        self.hold_time = style(bold, 24, 20)
        self.slot = style(bold if large else medium, 24, 24)
        self.job = style(medium, 24, 20)
        self.job_narrow = style(narrow, 24, 20)
        self.head = style(bold, 20, 16)
        self.strip_head = style(bold, 20, 15)
        self.button = style(bold, 19, 17)
        self.fact = style(medium, 17, 15)
        self.fact_bold = style(bold, 17, 15)
        self.fact_narrow = style(narrow, 17, 15)
        self.caption = style(medium, 16, 15)
        self.caption_narrow = style(narrow, 16, 15)
        self.time_narrow = style(narrow, 30, 20)
        self.small = style(medium, 15, 15)
        self.small_bold = style(bold, 15, 15)


@lru_cache(maxsize=128)
def font(style: Style) -> QFont:
    """Return the font of a style."""
    family, weight = style.face.value
    made = QFont(family)
    made.setPixelSize(style.px)
    made.setWeight(weight)
    made.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    if style.tabular:
        made.setFeature(_TABULAR, 1)
    if style.spacing:
        made.setLetterSpacing(QFont.SpacingType.AbsoluteSpacing, style.spacing)
    return made


@lru_cache(maxsize=128)
def metrics(style: Style) -> QFontMetricsF:
    """Return the metrics of a style."""
    return QFontMetricsF(font(style))


@lru_cache(maxsize=4096)
def width(style: Style, text: str) -> float:
    """Return the advance of a text."""
    return metrics(style).horizontalAdvance(text)


def cap_height(style: Style) -> float:
    """Return the height of a capital H above its baseline, by arithmetic."""
    return 0.7 * style.px


@lru_cache(maxsize=2048)
def _layout(style: Style, text: str) -> tuple[QStaticText, float, float]:
    static = QStaticText(text)
    static.setTextFormat(Qt.TextFormat.PlainText)
    static.setPerformanceHint(QStaticText.PerformanceHint.AggressiveCaching)
    made = font(style)
    static.prepare(font=made)
    return static, width(style, text), metrics(style).ascent()


def draw(
    painter: QPainter,
    style: Style,
    x: float,
    baseline: float,
    text: str,
    color: QColor,
    align: Align = Align.LEFT,
) -> float:
    """Draw one line of text and return its advance."""
    if not text:
        return 0.0
    static, advance, ascent = _layout(style, text)
    if align is Align.RIGHT:
        x -= advance
    elif align is Align.CENTRE:
        x -= advance / 2
    painter.setFont(font(style))
    painter.setPen(color)
    painter.drawStaticText(QPointF(x, baseline - ascent), static)
    return advance


def draw_lines(
    painter: QPainter,
    style: Style,
    rect: QRectF,
    text: str,
    color: QColor,
    pitch: float,
) -> None:
    """Draw lines centred in a rectangle, as on a key."""
    lines = text.split("\n")
    cap = cap_height(style)
    top = rect.center().y() - ((len(lines) - 1) * pitch + cap) / 2
    for number, line in enumerate(lines):
        baseline = top + cap + number * pitch
        draw(painter, style, rect.center().x(), baseline, line, color, Align.CENTRE)


def wrapped(style: Style, text: str, room: float) -> list[str]:
    """Return the text broken at spaces into lines no wider than `room`."""
    lines: list[str] = []
    for word in text.replace("\n", " ").split(" "):  # not at a no-break space: "17.5 °C"
        if not word:
            continue
        if lines and width(style, f"{lines[-1]} {word}") <= room:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines


def fitting(style: Style, text: str, room: float) -> str:
    """Return the text, elided only if it can't fit (its full form is in the accessible name)."""
    if width(style, text) <= room:
        return text
    return metrics(style).elidedText(text, Qt.TextElideMode.ElideRight, room)
