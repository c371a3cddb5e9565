"""How long a full frame of 96 tiles takes, against 96 fills and words: python tests/bench/frame.py.

The frame is a rack's own view, painted whole as after a change of theme: model, delegate, ring
and all. The floor is a bare widget of the same size that fills 96 tiles and writes the state's
word into each, once with plain rectangles and once with the rounded ones that a tile has.
Both are painted in turns.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterator
from itertools import cycle, islice
from pathlib import Path
from statistics import median
from time import perf_counter
from typing import NamedTuple

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
sys.path[:0] = [str(Path(__file__).resolve().parents[number]) for number in (1, 2)]

from PySide6.QtCore import QPoint, QPointF, QRectF, Qt  # noqa: E402
from PySide6.QtGui import QImage, QPainter, QPaintEvent, QRegion  # noqa: E402
from PySide6.QtWidgets import QApplication, QWidget  # noqa: E402

from helpers.board_values import worst_tiles  # noqa: E402
from rackboard.core.words import Word  # noqa: E402
from rackboard.ui import edges, type  # noqa: E402
from rackboard.ui.grid import Grid, grid  # noqa: E402
from rackboard.ui.rack_view import RackView  # noqa: E402
from rackboard.ui.resources import load_fonts  # noqa: E402
from rackboard.ui.theme import Theme, dark_theme, light_theme  # noqa: E402
from rackboard.ui.tile import Tile, TileKind  # noqa: E402
from rackboard.ui.tile_delegate import TileDelegate  # noqa: E402

COLUMNS, ROWS = 12, 8
FRAME = 9.0
"""Bound of a frame, as a ratio to the floor of 96 fills and words."""
TURNS = 41


class Frame(NamedTuple):
    """Medians of one size and theme [ms]."""

    name: str
    full_ms: float
    plain_ms: float
    rounded_ms: float
    ratio: float
    """Of the frame to the floor of plain fills, the stricter one: the median over the turns."""


class _Floor(QWidget):
    """Fills and words, nothing else."""

    def __init__(self, theme: Theme, at: Grid, words: list[Word], *, rounded: bool) -> None:
        super().__init__()
        self._theme, self._at, self._words, self._rounded = theme, at, words, rounded
        self._font = type.font(type.Roles(large=at.large).word)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint them."""
        del event
        painter, at, theme = QPainter(self), self._at, self._theme
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(self._font)
        painter.setBrush(theme.surf)
        for number, word in enumerate(self._words):
            line, column = divmod(number, COLUMNS)
            x, y = column * (at.tile_w + at.gutter) + 8, line * (at.tile_h + at.gutter) + 8
            rect = QRectF(x, y, at.tile_w, at.tile_h)
            if self._rounded:
                painter.setPen(Qt.PenStyle.NoPen)
                painter.drawRoundedRect(rect, edges.RADIUS, edges.RADIUS)
            else:
                painter.fillRect(rect, theme.surf)
            painter.setPen(theme.text)
            painter.drawText(QPointF(x + 46, y + 34), word.value)
        painter.end()


def tiles() -> list[Tile]:
    """Return 96 joints in every state with the longest texts, none twice in a row."""
    kinds = [tile for tile in worst_tiles() if tile.kind is TileKind.JOINT]
    return [
        Tile(**{name: getattr(tile, name) for name in Tile.__slots__} | {"slot": slot})
        for slot, tile in enumerate(islice(cycle(kinds), COLUMNS * ROWS))
    ]


def rack(theme: Theme, at: Grid) -> RackView:
    """Return the view of a rack of 96 joints, all of it in sight."""
    delegate = TileDelegate(theme, at)
    delegate.still = True
    view = RackView(delegate)
    delegate.setParent(view)
    view.show_grid(at, COLUMNS, ROWS)
    view.rows_model.show_rows(tiles())
    view.grab()  # lays the cells out
    return view


def painter_of(widget: QWidget, ratio: float) -> Callable[[], None]:
    """Return what paints a widget whole."""
    image = QImage(widget.size() * ratio, QImage.Format.Format_ARGB32_Premultiplied)
    image.setDevicePixelRatio(ratio)

    def paint() -> None:
        widget.render(image, QPoint(), QRegion(), QWidget.RenderFlag.DrawChildren)

    return paint


def frame(theme: Theme, at: Grid, ratio: float = 1.0, turns: int = TURNS) -> Frame:
    """Measure a frame and its floors in turns."""
    view = rack(theme, at)
    words = [tile.word or Word.WAIT for tile in tiles()]
    floors = [_Floor(theme, at, words, rounded=rounded) for rounded in (False, True)]
    for floor in floors:
        floor.resize(view.size())
    paints = [painter_of(widget, ratio) for widget in (view, *floors)]
    for paint in paints:
        paint()
        paint()
    times: list[list[float]] = [[], [], []]
    for _ in range(turns):
        for paint, took in zip(paints, times, strict=True):
            start = perf_counter()
            paint()
            took.append((perf_counter() - start) * 1000)
    name = f"{'1920' if at.large else '1280'} {'dark' if theme.dark else 'light'}"
    if ratio != 1.0:
        name += f" × {ratio:g}"
    ratios = [full / plain for full, plain in zip(times[0], times[1], strict=True)]
    full, plain, rounded = (median(took) for took in times)
    return Frame(name, full, plain, rounded, median(ratios))


def frames() -> Iterator[Frame]:
    """Measure both sizes in both themes, and one at a scale of 1.5."""
    load_fonts()
    large, small = grid(1920, 1054), grid(1280, 778)
    for at in (large, small):
        for theme in (dark_theme(), light_theme()):
            yield frame(theme, at)
    yield frame(dark_theme(), large, 1.5)


def main() -> int:
    """Print the frames; return 1 if one misses its bound."""
    app = QApplication.instance() or QApplication([])
    kept = True
    for one in frames():
        print(
            f"{one.name:16} {one.full_ms:7.2f} ms, plain floor {one.plain_ms:5.2f} ms, "
            f"rounded {one.rounded_ms:5.2f} ms: {one.ratio:.2f} ×, "
            f"{one.full_ms / one.rounded_ms:.2f} × (at most {FRAME:g})",
            flush=True,
        )
        kept = kept and one.ratio <= FRAME
    del app
    return int(not kept)


if __name__ == "__main__":
    raise SystemExit(main())
