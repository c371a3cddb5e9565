"""A near tile, painted: plate, club, times, motif. Works on any QPainter.

What tiles of one kind have in common (body, plate, edge, word, mark) is a picture kept for its
device pixel ratio; where a tile's own texts go is worked out once for its value. Both together
make a full frame several times faster than drawing it all anew.
"""

from __future__ import annotations

from math import ceil

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPixmap

from rackboard.core.words import Word
from rackboard.ui import edges, glyphs, motif, type
from rackboard.ui.theme import Theme
from rackboard.ui.tile import Glyph, Tile, TileKind, word_text
from rackboard.ui.tile_plan import LARGE, SMALL, Plan, TilePlanner, mark
from rackboard.ui.type import Roles

_SIDE = 2.0
"""Room round a tile's picture for its rim, at least [px]."""
_PICTURES = 48
"""Pictures kept at most, some 200 kB each; a board shows about a dozen kinds of tiles."""
_MOTIFS = 128
"""Pictures of the progress line kept at most, some 30 kB each; a batch shares one."""


class TilePainter:
    """Paints tiles of one size in one scheme.

    Parameters
    ----------
    theme : Theme
        The colours.
    large : bool
        The 1920 measures, else those of 1280.
    ground : QColor, optional
        What lies behind the tiles. Where it is known, pictures need no transparency, and a
        frame takes a third less.
    """

    def __init__(self, theme: Theme, *, large: bool, ground: QColor | None = None) -> None:
        self.theme = theme
        self.ground = ground
        self.roles = Roles(large=large)
        self.at = LARGE if large else SMALL
        self.large = large
        self._planner = TilePlanner(theme, large=large)
        self._grounds: dict[tuple[object, ...], QPixmap] = {}
        self._motifs: dict[tuple[object, ...], QPixmap] = {}
        self._plans: dict[tuple[int, int], Plan] = {}

    def paint(self, painter: QPainter, rect: QRectF, tile: Tile) -> None:
        """Paint a tile into its rectangle; ring and collar are the delegate's."""
        width, height = rect.width(), rect.height()
        plan = self._plans.get(tile.key)
        if plan is None or plan.tile is not tile or (plan.width, plan.height) != (width, height):
            plan = self._planner.planned(tile, width, height)
            self._plans[tile.key] = plan
        to = painter.deviceTransform()
        ratio, x, y = to.m11(), rect.x(), rect.y()
        if ratio > 0:  # pictures lie on the device's own pixels, or they would be blurred
            x = (round(x * ratio + to.dx()) - to.dx()) / ratio
            y = (round(y * ratio + to.dy()) - to.dy()) / ratio
        else:  # a turned painter has none
            ratio = 1.0
        painter.translate(x, y)
        side = _side(ratio)
        painter.drawPixmap(QPointF(-side, -side), self._ground(plan, ratio))
        for style, left, baseline, text, color, align in plan.lines:
            type.draw(painter, style, left, baseline, text, color, align)
        if plan.motif is not None:
            self._motif(painter, plan, ratio)
        painter.translate(-x, -y)

    # The pictures that tiles share

    def _ground(self, plan: Plan, ratio: float) -> QPixmap:
        key = (plan.kind, ratio)
        picture = self._grounds.get(key)
        if picture is None:
            if len(self._grounds) >= _PICTURES:
                self._grounds.clear()
            picture = self._drawn(plan, ratio)
            self._grounds[key] = picture
        return picture

    def _drawn(self, plan: Plan, ratio: float) -> QPixmap:
        side = _side(ratio)
        picture = _blank(plan.width + 2 * side, plan.height + 2 * side, ratio, self.ground)
        painter = QPainter(picture)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.translate(side, side)
        tile = plan.tile
        if tile.kind is TileKind.EMPTY:
            self._draw_empty(painter, plan)
        elif tile.kind is TileKind.LAID_OUT or tile.word is None:
            self._draw_laid_out(painter, plan)
        elif tile.word is Word.STALE:
            self._draw_stale(painter, plan)
        else:
            self._draw_joint(painter, plan, tile.word)
        painter.end()
        return picture

    def _draw_empty(self, painter: QPainter, plan: Plan) -> None:
        at, theme = self.at, self.theme
        painter.setPen(QPen(theme.out, 1.5))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(
            QRectF(0.75, 0.75, plan.width - 1.5, plan.height - 1.5), edges.RADIUS, edges.RADIUS
        )
        dash = 14 * at.scale if self.large else 12
        painter.fillRect(QRectF(at.pad + 1, at.plate / 2 - 1.5, dash, 3), theme.dim)

    def _draw_laid_out(self, painter: QPainter, plan: Plan) -> None:
        painter.fillPath(edges.body(plan.width, plan.height, 0), self.theme.surf)
        self._draw_dashes(painter, plan, self.theme.text)

    def _draw_dashes(self, painter: QPainter, plan: Plan, color: QColor) -> None:
        pen = QPen(color, 2)
        pen.setDashPattern([5, 4])
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        painter.setPen(pen)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(
            QRectF(1, 1, plan.width - 2, plan.height - 2), edges.RADIUS, edges.RADIUS
        )

    def _draw_joint(self, painter: QPainter, plan: Plan, word: Word) -> None:
        at, theme, tile = self.at, self.theme, plan.tile
        width, height = plan.width, plan.height
        hold = word is Word.HOLD
        flooded = hold and tile.untaken
        cut = edges.CUT if hold else 0.0
        painter.fillPath(
            edges.body(width, height, cut), theme.fills[word] if flooded else theme.surf
        )
        if not theme.dark or theme.high:
            rim = theme.ink if flooded else theme.line
            edges.draw_rim(painter, rim, (width, height), cut, 1)
        if flooded:
            edges.draw_edge(painter, theme.ink, word, width, at.plate, at.scale, 2 * at.scale)
        else:
            if tile.cold:
                edges.draw_cold(painter, theme, width, at.plate, at.band, at.scale)
            edges.draw_plate(painter, theme, word, width, at.plate, at.scale, cut)
        if tile.cold:
            edges.draw_edge(painter, theme.ink, word, width, at.plate, at.scale, 2)
            size = 17.0 if self.large else 14.0
            middle = at.plate + (at.band - 3 * at.scale) / 2
            glyphs.draw(
                painter, Glyph.COLD, at.pad + 4 * at.scale, middle - size / 2, size, theme.ink
            )
        self._draw_head(painter, plan, word)
        sign = mark(tile)
        if sign is not None:
            size = self._planner.mark_size(tile)
            down = at.cold_down[2] if tile.cold else 0.0
            color = theme.text if tile.reached else theme.sub
            style = self.roles.time
            middle = at.time + down - type.cap_height(style) / 2
            glyphs.draw(painter, sign, at.pad, middle - size / 2, size, color)

    def _draw_head(self, painter: QPainter, plan: Plan, word: Word) -> float:
        at = self.at
        color = self.theme.on_fill(word)
        middle = at.plate / 2
        x = at.pad + self._planner.inset(word)
        glyph = plan.tile.glyph
        if glyph is not None:
            glyphs.draw(painter, glyph, x, middle - at.glyph / 2, at.glyph, color)
        x += at.glyph + at.word_gap
        style = self._planner.word_style(narrow=plan.narrow)
        baseline = middle + type.cap_height(style) / 2
        return x + type.draw(painter, style, x, baseline, word_text(word), color)

    def _draw_stale(self, painter: QPainter, plan: Plan) -> None:
        at, theme, roles = self.at, self.theme, self.roles
        width, height = plan.width, plan.height
        painter.fillPath(edges.body(width, height, 0), theme.surf)
        faint = QColor(theme.line)
        edges.hatch(painter, QRectF(4, at.plate, width - 8, height - at.plate - 4), faint, 18, 2)
        edges.draw_plate(painter, theme, Word.STALE, width, at.plate, at.scale)
        end = self._draw_head(painter, plan, Word.STALE) + 8
        right = width - at.pad - type.width(roles.slot, plan.tile.name) - 8
        if right > end:
            edges.hatch(painter, QRectF(end, 2, right - end, at.plate - 4), theme.dim, 6, 1.5)
        self._draw_dashes(painter, plan, theme.edge)

    def _motif(self, painter: QPainter, plan: Plan, ratio: float) -> None:
        """Draw the progress line; clubs of a batch share its picture."""
        at = self.at
        around = _side(ratio) * 4
        key = (plan.motif, ratio)
        picture = self._motifs.get(key)
        if picture is None:
            if len(self._motifs) >= _MOTIFS:
                self._motifs.clear()
            picture = self._drawn_motif(plan, ratio, around)
            self._motifs[key] = picture
        top = plan.height - at.motif_up - self._motif_high(ratio) / 2
        painter.drawPixmap(QPointF(at.pad - around, top), picture)

    def _motif_high(self, ratio: float) -> float:
        at = self.at
        return ceil(2 * max(1.25 * at.motif, at.motif / 2 + at.dumbbell + 4) * ratio) / ratio

    def _drawn_motif(self, plan: Plan, ratio: float, around: float) -> QPixmap:
        at, theme, tile = self.at, self.theme, plan.tile
        high, wide = self._motif_high(ratio), plan.width - 2 * at.pad
        picture = _blank(wide + 2 * around, high, ratio, None)
        flooded = tile.word is Word.HOLD and tile.untaken
        inks = (
            motif.MotifInks(theme.ink, theme.ink, theme.ink) if flooded
            else motif.MotifInks(theme.text, theme.dim, theme.sub)
        )  # fmt: skip
        dumbbell = None
        if tile.probably is not None and tile.not_before is not None:
            dumbbell = (tile.probably, tile.not_before)
        painter = QPainter(picture)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        motif.draw(
            painter, inks, around, high / 2, wide, at.motif, tile.position, style=tile.motif,
            gap=tile.gap, dumbbell=dumbbell, dumbbell_drop=at.dumbbell, vector=False,
        )  # fmt: skip
        painter.end()
        return picture


def _side(ratio: float) -> float:
    """Return the room round a picture, a whole number of the device's pixels."""
    return ceil(_SIDE * ratio) / ratio


def _blank(width: float, height: float, ratio: float, ground: QColor | None) -> QPixmap:
    picture = QPixmap(ceil(width * ratio), ceil(height * ratio))
    picture.setDevicePixelRatio(ratio)
    picture.fill(Qt.GlobalColor.transparent if ground is None else ground)
    return picture
