"""Where a near tile's texts go, worked out once for its value; and the sizes of a tile."""

from __future__ import annotations

from typing import NamedTuple

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor

from rackboard.core.words import Word
from rackboard.ui import type
from rackboard.ui.language import say
from rackboard.ui.shortening import fitted, shortened
from rackboard.ui.theme import Theme
from rackboard.ui.tile import Glyph, MotifStyle, Tile, TileKind, word_text
from rackboard.ui.type import Align, Roles


class Measures(NamedTuple):
    """The places of a tile's parts, in px from its left top; y are baselines."""

    pad: float
    plate: float
    scale: float
    glyph: float
    word_gap: float
    club: float
    sub: float
    time: float
    detail: float
    next_glyph: float
    next_gap: float
    caption_gap: float
    motif_up: float
    motif: float
    dumbbell: float
    band: float
    cold_down: tuple[float, float, float]


LARGE = Measures(14, 46, 1.0, 28, 9, 80, 103, 135, 153, 21, 6, 8, 20.5, 16, 6.5, 22, (19, 17, 17))
SMALL = Measures(
    10, 34, 0.75, 21, 7, 58, 75, 98, 115, 17, 4, 5, 14.5, 11.5, 5, 18, (16, 14, 14)
)  # fmt: skip
_TIME_OVER = 4.0
"""How far the time may reach into the right padding at 1280: "not before Sat 07:55" is long."""
_LONG_SLOT, _WORD_GAP = 4, 7.0
_NOT_COLD = (0.0, 0.0, 0.0)


class Line(NamedTuple):
    """One text where it is to be drawn."""

    style: type.Style
    x: float
    baseline: float
    text: str
    color: QColor
    align: Align = Align.LEFT


class Plan(NamedTuple):
    """What is a tile's own: the texts, and the kind of its picture."""

    tile: Tile
    width: float
    height: float
    lines: tuple[Line, ...]
    narrow: bool
    """The word takes the narrow face, so that a long slot name has room."""
    kind: tuple[object, ...]
    """All that the shared picture hangs on but its scale."""
    motif: tuple[object, ...] | None
    """All that the progress line hangs on, or None if there is none."""


def mark(tile: Tile) -> Glyph | None:
    """Return the mark before a tile's time.

    A time to come is marked as on the wall, a bar and an arrow, whichever permission it is: a
    tick would look like CURED at a glance. It is the solid tick itself once it is reached.
    """
    if tile.next_glyph is None or tile.reached:
        return tile.next_glyph
    return Glyph.UNTIL if tile.word is Word.WET else Glyph.FROM


class TilePlanner:
    """Plans tiles of one size in one scheme.

    Parameters
    ----------
    theme : Theme
        The colours.
    large : bool
        The 1920 measures, else those of 1280.
    """

    def __init__(self, theme: Theme, *, large: bool) -> None:
        self.theme = theme
        self.roles = Roles(large=large)
        self.at = LARGE if large else SMALL
        self.large = large
        self._small_narrow = self.roles.small._replace(face=type.Face.CONDENSED)

    def _kind(self, tile: Tile, width: float, height: float, *, narrow: bool) -> tuple[object, ...]:
        """Return all that a tile's picture hangs on but its scale."""
        stale = tile.word is Word.STALE
        return (
            tile.kind.value, "" if tile.word is None else word_text(tile.word), tile.hold,
            tile.untaken, tile.cold != "", mark(tile), tile.reached, tile.other_day, narrow,
            width, height, type.width(self.roles.slot, tile.name) if stale else 0.0,
        )  # fmt: skip

    def planned(self, tile: Tile, width: float, height: float) -> Plan:
        """Return where a tile's texts go, and which pictures lie behind them."""
        at, theme, roles = self.at, self.theme, self.roles
        lines: list[Line] = []
        narrow = False
        if tile.kind is TileKind.EMPTY:
            lines.append(self._slot(width, tile.name, theme.dim, medium=True))
        elif tile.kind is TileKind.LAID_OUT or tile.word is None:
            lines.append(self._slot(width, tile.name, theme.text, medium=True))
            lines += self._club(width, tile, at.club, theme.text, theme.sub)
            room = width - 2 * at.pad
            style, text = fitted((roles.fact, roles.fact_narrow), tile.detail, room)
            lines.append(Line(style, at.pad, at.sub, text, theme.sub))
        else:
            narrow = self._is_narrow(width, tile, tile.word)
            slot = self._slot(width, tile.name, theme.on_fill(tile.word), narrow=narrow)
            lines.append(slot)
            lines += (self._stale_lines if tile.word is Word.STALE else self._joint_lines)(
                width, tile
            )
        return Plan(
            tile, width, height, tuple(line for line in lines if line.text), narrow,
            self._kind(tile, width, height, narrow=narrow), self._motif_kind(tile, width),
        )  # fmt: skip

    def _motif_kind(self, tile: Tile, width: float) -> tuple[object, ...] | None:
        """Return all that the progress line hangs on, in half px, or None if there is none."""
        if tile.kind is not TileKind.JOINT or tile.word is Word.STALE:
            return None
        if tile.motif is MotifStyle.NONE:
            return None
        places = (tile.position, *(tile.gap or ()), tile.probably, tile.not_before)
        flooded = tile.word is Word.HOLD and tile.untaken
        return (flooded, tile.motif, width, tile.gap is None, tile.position >= 1.0,
                *(None if place is None else round(2 * place * width) for place in places)
                )  # fmt: skip

    def inset(self, word: Word) -> float:
        """Return how much further in a plate's glyph begins [px]."""
        return 5 * self.at.scale if word is Word.HOLD else 0.0

    def word_style(self, *, narrow: bool) -> type.Style:
        """Return the style of the word on the plate."""
        style = self.roles.word
        return style._replace(face=type.Face.CONDENSED, spacing=0.0) if narrow else style

    def _is_narrow(self, width: float, tile: Tile, word: Word) -> bool:
        """Return whether word and slot, or one of them, would run into each other."""
        at = self.at
        begin = at.pad + self.inset(word) + at.glyph + at.word_gap
        taken = type.width(self.roles.word, word_text(word)) + type.width(
            self.roles.slot, tile.name
        )
        return begin + taken + _WORD_GAP > width - at.pad

    def _slot(
        self, width: float, name: str, color: QColor, *, medium: bool = False, narrow: bool = False
    ) -> Line:
        style = self.roles.slot._replace(face=type.Face.MEDIUM) if medium else self.roles.slot
        if narrow and len(name) > _LONG_SLOT:
            style = self.roles.job_narrow
        baseline = self.at.plate / 2 + type.cap_height(style) / 2
        return Line(style, width - self.at.pad, baseline, name, color, Align.RIGHT)

    def _club(
        self, width: float, tile: Tile, baseline: float, color: QColor, sub: QColor
    ) -> list[Line]:
        """Return club and job; the narrow face takes over before a name is cut."""
        at, roles = self.at, self.roles
        right = width - at.pad
        whole = right - at.pad
        most = 0.45 * whole
        job = tile.job
        for club_style, job_style in (
            (roles.club, roles.job),
            (roles.club_narrow, roles.job),
            (roles.club_narrow, roles.job_narrow),
        ):
            room = whole - min(type.width(job_style, job), most) - 6
            if type.width(club_style, tile.club) <= room:
                break
        if type.width(job_style, job) > most:
            # The end of a long number tells it from its neighbours.
            job_style = roles.job_narrow
            job = type.metrics(job_style).elidedText(job, Qt.TextElideMode.ElideLeft, most)
            room = whole - type.width(job_style, job) - 6
        name = shortened(club_style, tile.club, room)
        return [
            Line(job_style, right, baseline, job, sub, Align.RIGHT),
            Line(club_style, at.pad, baseline, name, color),
        ]

    def _facts(self, width: float, tile: Tile, baseline: float, color: QColor) -> list[Line]:
        """Return epoxy and mixed-at, and how warm it is if there is room."""
        at, roles = self.at, self.roles
        right = width - at.pad
        whole = right - at.pad
        styles = (roles.fact, roles.fact_narrow)
        if self.large and tile.temperature:
            room = whole - 10 - type.width(roles.fact, tile.temperature)
            for style in styles:
                if type.width(style, tile.sub) <= room:
                    return [
                        Line(roles.fact, right, baseline, tile.temperature, color, Align.RIGHT),
                        Line(style, at.pad, baseline, tile.sub, color),
                    ]
        style, text = fitted(styles, tile.sub, whole)
        return [Line(style, at.pad, baseline, text, color)]

    def _joint_lines(self, width: float, tile: Tile) -> list[Line]:
        at, theme, roles = self.at, self.theme, self.roles
        hold = tile.word is Word.HOLD
        flooded = hold and tile.untaken
        text, sub = (theme.ink, theme.ink) if flooded else (theme.text, theme.sub)
        down = at.cold_down if tile.cold else _NOT_COLD
        lines = self._club(width, tile, at.club + down[0], text, sub)
        lines += self._facts(width, tile, at.sub + down[1], sub)
        lines += self._time(width, tile, at.time + down[2], text, sub)
        if tile.cold:
            return lines + self._cold_lines(width, tile)
        detail = tile.detail if self.large else tile.detail_short or tile.detail
        style, detail = fitted(
            (roles.small, self._small_narrow), detail, width - 2 * at.pad
        )
        lines.append(Line(style, at.pad, at.detail, detail, text if hold else sub))
        return lines

    def _cold_lines(self, width: float, tile: Tile) -> list[Line]:
        at, ink, style = self.at, self.theme.ink, self.roles.small_bold
        middle = at.plate + (at.band - 3 * at.scale) / 2
        baseline = middle + type.cap_height(style) / 2
        x = at.pad + at.glyph + at.word_gap - (6 if self.large else 8)
        cold = say("Board", "cold")
        room = width - at.pad - x - type.width(style, cold) - 8
        return [
            Line(style, x, baseline, cold, ink),
            Line(style, width - at.pad, baseline, shortened(style, tile.cold, room), ink,
                  Align.RIGHT),
        ]  # fmt: skip

    def _time(
        self, width: float, tile: Tile, baseline: float, text: QColor, sub: QColor
    ) -> list[Line]:
        at, roles = self.at, self.roles
        x = at.pad
        right = width - at.pad
        if tile.word is Word.HOLD:
            style, reason = fitted(
                (roles.hold_time, roles.hold_time._replace(face=type.Face.CONDENSED)),
                tile.time, right - x,
            )  # fmt: skip
            return [Line(style, x, baseline, reason, text)]
        sign = mark(tile)
        if sign is not None:
            x += self.mark_size(tile)
            x += at.next_gap if self.large or not tile.other_day else 2
        right += 0 if self.large else _TIME_OVER
        caption, style, gap = self._time_styles(tile, right - x)
        lines = []
        if caption is not None and tile.caption:
            lines.append(Line(caption, x, baseline, tile.caption, sub))
            x += type.width(caption, tile.caption) + gap
        time = shortened(style, tile.time, right - x)
        lines.append(Line(style, x, baseline, time, text))
        if tile.aside and self.large:
            x += type.width(style, time) + 9
            if max(type.width(roles.small, line) for line in tile.aside) <= right - x:
                lines += [
                    Line(roles.small, x, baseline - 12 + number * 14, line, sub)
                    for number, line in enumerate(tile.aside)
                ]
        return lines

    def mark_size(self, tile: Tile) -> float:
        """Return the size of the mark before the time [px]."""
        return self.at.next_glyph - (0 if self.large or not tile.other_day else 2)

    def _time_styles(
        self, tile: Tile, room: float
    ) -> tuple[type.Style | None, type.Style, float]:
        """Return caption, time and gap: the widest of the designed pairs that has room.

        No type is made smaller than its role; a narrow face takes over, and where even that is
        too wide ("not before 21 Mar 07:55" at 1280) the mark alone says "not before".
        """
        at, roles = self.at, self.roles
        usual = roles.time_other_day if tile.other_day else roles.time
        gap = at.caption_gap if self.large else 3.0
        pairs: list[tuple[type.Style | None, type.Style, float]] = [
            (roles.caption, usual, at.caption_gap),
            (roles.caption_narrow, usual, gap),
            (roles.caption_narrow, roles.time_narrow, 3.0),
            (None, usual, 0.0),
            (None, roles.time_narrow, 0.0),
        ]
        if not tile.caption:
            pairs = pairs[3:]
        elif tile.other_day and not self.large:
            del pairs[0]
        for caption, style, apart in pairs:
            lead = 0.0 if caption is None else type.width(caption, tile.caption) + apart
            if lead + type.width(style, tile.time) <= room:
                return caption, style, apart
        return pairs[-1]

    def _stale_lines(self, width: float, tile: Tile) -> list[Line]:
        """Return club, epoxy, since when nothing is known, and what was said last."""
        at, theme, roles = self.at, self.theme, self.roles
        room = width - 2 * at.pad
        lines = self._club(width, tile, at.club, theme.text, theme.sub)
        lines += self._facts(width, tile, at.sub, theme.sub)
        narrow = roles.head._replace(face=type.Face.CONDENSED)
        style, time = fitted((roles.head, narrow), tile.time, room)
        lines.append(Line(style, at.pad, at.time, time, theme.text))
        style, detail = fitted((roles.small, self._small_narrow), tile.detail, room)
        lines.append(Line(style, at.pad, at.detail, detail, theme.sub))
        return lines
