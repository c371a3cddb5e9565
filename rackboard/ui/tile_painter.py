"""A near tile, painted: plate, club, times, motif. Works on any QPainter."""

from __future__ import annotations

from math import ceil
from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPixmap

from rackboard.core.words import Word
from rackboard.ui import edges, glyphs, motif, type
from rackboard.ui.theme import Theme
from rackboard.ui.tile import Glyph, Tile, TileKind
from rackboard.ui.type import Align, Roles

_SIDE = 2.0
"""Room round a plate's picture for its rim [px]."""


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


class TilePainter:
    """Paints tiles of one size in one scheme.

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
        self._plates: dict[tuple[object, ...], QPixmap] = {}

    def paint(self, painter: QPainter, rect: QRectF, tile: Tile) -> None:
        """Paint a tile into its rectangle; ring and collar are the delegate's."""
        painter.save()
        painter.translate(rect.topLeft())
        if tile.kind is TileKind.EMPTY:
            self._empty(painter, rect, tile)
        elif tile.kind is TileKind.LAID_OUT or tile.word is None:
            self._laid_out(painter, rect, tile)
        elif tile.word is Word.STALE:
            self._stale(painter, rect, tile)
        else:
            self._joint(painter, rect, tile, tile.word)
        painter.restore()

    def _empty(self, painter: QPainter, rect: QRectF, tile: Tile) -> None:
        at, theme = self.at, self.theme
        painter.setPen(QPen(theme.out, 1.5))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(
            QRectF(0.75, 0.75, rect.width() - 1.5, rect.height() - 1.5), edges.RADIUS, edges.RADIUS
        )
        dash = 14 * at.scale if self.large else 12
        painter.fillRect(QRectF(at.pad + 1, at.plate / 2 - 1.5, dash, 3), theme.dim)
        self._slot(painter, rect.width(), tile.name, theme.dim, medium=True)

    def _laid_out(self, painter: QPainter, rect: QRectF, tile: Tile) -> None:
        at, theme, roles = self.at, self.theme, self.roles
        painter.fillPath(edges.body(rect.width(), rect.height(), 0), theme.surf)
        pen = QPen(theme.text, 2)
        pen.setDashPattern([5, 4])
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        painter.setPen(pen)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(
            QRectF(1, 1, rect.width() - 2, rect.height() - 2), edges.RADIUS, edges.RADIUS
        )
        self._slot(painter, rect.width(), tile.name, theme.text, medium=True)
        self._club(painter, rect.width(), tile, at.club, theme.text, theme.sub)
        type.draw(painter, roles.fact, at.pad, at.sub, tile.detail, theme.sub)

    def _slot(
        self, painter: QPainter, width: float, name: str, color: QColor, *, medium: bool = False
    ) -> None:
        style = self.roles.slot._replace(face=type.Face.MEDIUM) if medium else self.roles.slot
        baseline = self.at.plate / 2 + type.cap_height(style) / 2
        type.draw(painter, style, width - self.at.pad, baseline, name, color, Align.RIGHT)

    def _plate(self, painter: QPainter, width: float, tile: Tile, word: Word) -> None:
        """Draw plate, band, glyph and word from a picture kept per device pixel ratio."""
        at = self.at
        ratio = painter.deviceTransform().m11()
        flooded = word is Word.HOLD and tile.untaken
        key = (word, tile.glyph, flooded, bool(tile.cold), width, ratio)
        picture = self._plates.get(key)
        height = at.plate + at.band + 10
        if picture is None:
            picture = QPixmap(ceil((width + 2 * _SIDE) * ratio), ceil((height + _SIDE) * ratio))
            picture.setDevicePixelRatio(ratio)
            picture.fill(Qt.GlobalColor.transparent)
            inner = QPainter(picture)
            inner.setRenderHint(QPainter.RenderHint.Antialiasing)
            inner.translate(_SIDE, _SIDE)
            self._fresh_plate(inner, width, tile, word, flooded=flooded)
            inner.end()
            self._plates[key] = picture
        painter.drawPixmap(QPointF(-_SIDE, -_SIDE), picture)

    def _fresh_plate(
        self, painter: QPainter, width: float, tile: Tile, word: Word, *, flooded: bool
    ) -> None:
        at, theme = self.at, self.theme
        hold = word is Word.HOLD
        if flooded:
            edges.draw_edge(painter, theme.ink, word, width, at.plate, at.scale, 2 * at.scale)
        else:
            if tile.cold:
                edges.draw_cold(painter, theme, width, at.plate, at.band, at.scale)
            cut = edges.CUT if hold else 0.0
            edges.draw_plate(painter, theme, word, width, at.plate, at.scale, cut)
        if tile.cold:
            edges.draw_edge(painter, theme.ink, word, width, at.plate, at.scale, 2)
        self._head(painter, tile, word, 5 * at.scale if hold else 0)

    def _head(self, painter: QPainter, tile: Tile, word: Word, inset: float) -> float:
        at, roles = self.at, self.roles
        color = self.theme.on_fill(word)
        middle = at.plate / 2
        x = at.pad + inset
        if tile.glyph is not None:
            glyphs.draw(painter, tile.glyph, x, middle - at.glyph / 2, at.glyph, color)
        x += at.glyph + at.word_gap
        baseline = middle + type.cap_height(roles.word) / 2
        return x + type.draw(painter, roles.word, x, baseline, word.value, color)

    def _club(
        self,
        painter: QPainter,
        width: float,
        tile: Tile,
        baseline: float,
        color: QColor,
        sub: QColor,
    ) -> None:
        at, roles = self.at, self.roles
        right = width - at.pad
        # The narrow face takes over before a name would have to be cut.
        for club, job in (
            (roles.club, roles.job),
            (roles.club_narrow, roles.job),
            (roles.club_narrow, roles.job_narrow),
        ):
            room = right - type.width(job, tile.job) - 6 - at.pad
            if type.width(club, tile.club) <= room:
                break
        type.draw(painter, job, right, baseline, tile.job, sub, Align.RIGHT)
        name = type.fitting(club, tile.club, room)
        type.draw(painter, club, at.pad, baseline, name, color)

    def _facts(
        self, painter: QPainter, width: float, tile: Tile, baseline: float, color: QColor
    ) -> None:
        at, style = self.at, self.roles.fact
        right = width - at.pad
        room = right - at.pad
        if self.large and tile.temperature:
            room -= 10 + type.draw(
                painter, style, right, baseline, tile.temperature, color, Align.RIGHT
            )
        type.draw(painter, style, at.pad, baseline, type.fitting(style, tile.sub, room), color)

    def _joint(self, painter: QPainter, rect: QRectF, tile: Tile, word: Word) -> None:
        at, theme = self.at, self.theme
        width, height = rect.width(), rect.height()
        hold = word is Word.HOLD
        flooded = hold and tile.untaken
        cut = edges.CUT if hold else 0.0
        shape = edges.body(width, height, cut)
        painter.fillPath(shape, theme.fills[word] if flooded else theme.surf)
        if not theme.dark:
            rim = theme.ink if flooded else theme.line
            edges.draw_rim(painter, rim, (width, height), cut, 1)
        self._plate(painter, width, tile, word)
        if tile.cold:
            self._cold_words(painter, width, tile)
        self._slot(painter, width, tile.name, theme.on_fill(word))
        down = at.cold_down if tile.cold else (0.0, 0.0, 0.0)
        text, sub, dim = (
            (theme.ink, theme.ink, theme.ink) if flooded else (theme.text, theme.sub, theme.dim)
        )
        self._club(painter, width, tile, at.club + down[0], text, sub)
        self._facts(painter, width, tile, at.sub + down[1], sub)
        self._time(painter, width, tile, at.time + down[2], text, sub)
        if not tile.cold:
            detail = tile.detail if self.large else tile.detail_short or tile.detail
            style = self.roles.small
            detail = type.fitting(style, detail, width - 2 * at.pad)
            type.draw(painter, style, at.pad, at.detail, detail, text if hold else sub)
        dumbbell = (
            (tile.probably, tile.not_before)
            if tile.probably is not None and tile.not_before is not None
            else None
        )
        motif.draw(
            painter,
            motif.MotifInks(text, dim, sub),
            at.pad,
            height - at.motif_up,
            width - 2 * at.pad,
            at.motif,
            tile.position,
            style=tile.motif,
            gap=tile.gap,
            dumbbell=dumbbell,
            dumbbell_drop=at.dumbbell,
            vector=False,
        )

    def _cold_words(self, painter: QPainter, width: float, tile: Tile) -> None:
        at, theme = self.at, self.theme
        size = 17 if self.large else 14
        middle = at.plate + (at.band - 3 * at.scale) / 2
        glyphs.draw(painter, Glyph.COLD, at.pad + 4 * at.scale, middle - size / 2, size, theme.ink)
        style = self.roles.small_bold
        baseline = middle + type.cap_height(style) / 2
        x = at.pad + at.glyph + at.word_gap - (6 if self.large else 8)
        type.draw(painter, style, x, baseline, "cold", theme.ink)
        type.draw(painter, style, width - at.pad, baseline, tile.cold, theme.ink, Align.RIGHT)

    def _time(
        self,
        painter: QPainter,
        width: float,
        tile: Tile,
        baseline: float,
        text: QColor,
        sub: QColor,
    ) -> None:
        at, roles = self.at, self.roles
        x = at.pad
        if tile.word is Word.HOLD:
            style = roles.hold_time
            reason = type.fitting(style, tile.time, width - 2 * at.pad)
            type.draw(painter, style, x, baseline, reason, text)
            return
        if tile.next_glyph is not None:
            # Hollow while it is still to come, as on the motif: a solid tick is CURED only.
            size = at.next_glyph - (0 if self.large or not tile.other_day else 2)
            top = baseline + 3 * at.scale - size
            glyphs.draw(
                painter, tile.next_glyph, x, top, size, text if tile.reached else sub,
                hollow=0.0 if tile.reached else (1.5 if self.large else 1.2),
            )  # fmt: skip
            x += size + (at.next_gap if self.large or not tile.other_day else 2)
        caption, style, gap = self._time_styles(tile, width - at.pad - x)
        if tile.caption:
            x += type.draw(painter, caption, x, baseline, tile.caption, sub) + gap
        x += type.draw(painter, style, x, baseline, tile.time, text)
        if tile.aside and self.large:
            x += 9
            top = baseline - 12
            for number, line in enumerate(tile.aside):
                type.draw(painter, roles.small, x, top + number * 14, line, sub)

    def _time_styles(self, tile: Tile, room: float) -> tuple[type.Style, type.Style, float]:
        """Return caption, time and gap: the widest of the designed pairs that has room.

        No type is made smaller than its role; a narrow face takes over.
        """
        at, roles = self.at, self.roles
        usual = roles.time_other_day if tile.other_day else roles.time
        pairs = (
            (roles.caption, usual, at.caption_gap),
            (roles.caption_narrow, usual, at.caption_gap if self.large else 3.0),
            (roles.caption_narrow, roles.time_narrow, 3.0),
        )
        for caption, style, gap in pairs[0 if self.large or not tile.other_day else 1 :]:
            lead = type.width(caption, tile.caption) + gap if tile.caption else 0.0
            if lead + type.width(style, tile.time) <= room:
                return caption, style, gap
        return pairs[1] if tile.other_day else pairs[2]

    def _stale(self, painter: QPainter, rect: QRectF, tile: Tile) -> None:
        at, theme, roles = self.at, self.theme, self.roles
        width, height = rect.width(), rect.height()
        painter.fillPath(edges.body(width, height, 0), theme.surf)
        faint = QColor(theme.line)
        edges.hatch(painter, QRectF(4, at.plate, width - 8, height - at.plate - 4), faint, 18, 2)
        edges.draw_plate(painter, theme, Word.STALE, width, at.plate, at.scale)
        self._slot(painter, width, tile.name, theme.ink)
        end = self._head(painter, tile, Word.STALE, 0) + 8
        right = width - at.pad - type.width(roles.slot, tile.name) - 8
        if right > end:
            edges.hatch(painter, QRectF(end, 2, right - end, at.plate - 4), theme.dim, 6, 1.5)
        pen = QPen(theme.edge, 2)
        pen.setDashPattern([5, 4])
        painter.setPen(pen)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(QRectF(1, 1, width - 2, height - 2), edges.RADIUS, edges.RADIUS)
        self._club(painter, width, tile, at.club, theme.text, theme.sub)
        self._facts(painter, width, tile, at.sub, theme.sub)
        style = roles.head
        type.draw(painter, style, at.pad, at.time, tile.time, theme.text)
        type.draw(painter, roles.small, at.pad, at.detail, tile.detail, theme.sub)
