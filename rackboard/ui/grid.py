"""Where everything stands on the board: a pure function of its size. Unit: logical px.

Two sizes are designed, for windows of 1920 × 1080 and 1280 × 800, the menu bar above the
board included. A tile keeps its designed size; what a larger window has over goes to the right
column. A window between 1000 and 1080 high is the larger design with its gaps drawn in.
"""

from __future__ import annotations

from math import ceil
from typing import NamedTuple

LARGE_WIDTH, LARGE_HEIGHT = 1800, 974
"""Least board (without the menu bar) for the larger metrics."""
MENU = 26
"""Height of the menu bar of the larger design."""
COLUMNS, ROWS, BOX_COLUMNS = 5, 3, 4


class Rect(NamedTuple):
    """A rectangle in the board's own coordinates."""

    x: int
    y: int
    w: int
    h: int


class Grid(NamedTuple):
    """The measures of one board size."""

    large: bool
    width: int
    height: int
    menu: int
    margin: int
    gutter: int
    strip: int
    gap: int
    head: int
    tile_w: int
    tile_h: int
    box_gap: int
    slim_gap: int
    slim: int
    column_gap: int
    bottom: int

    @property
    def rack(self) -> Rect:
        """The tiles of the rack shown, 5 × 3."""
        return Rect(
            self.margin,
            self.strip + self.gap + self.head,
            self._span(COLUMNS, self.tile_w),
            self._span(ROWS, self.tile_h),
        )

    @property
    def box(self) -> Rect:
        """The tiles of the box, 4 × 1."""
        rack = self.rack
        top = rack.y + rack.h + self.box_gap + self.head
        return Rect(self.margin, top, self._span(BOX_COLUMNS, self.tile_w), self.tile_h)

    @property
    def jobs(self) -> Rect:
        """Jobs, in the fifth column of the box row, its head included."""
        box = self.box
        return Rect(self.column(4), box.y - self.head, self.tile_w, self.tile_h + self.head)

    @property
    def slim_row(self) -> Rect:
        """The row "off the rack, still curing"."""
        box = self.box
        top = box.y + box.h + self.slim_gap
        return Rect(self.margin, top, self._span(COLUMNS, self.tile_w), self.slim)

    @property
    def right(self) -> Rect:
        """The right column, from under the strip to the bottom margin."""
        rack = self.rack
        left = rack.x + rack.w + self.column_gap
        top = self.strip + self.gap
        return Rect(left, top, self.width - self.margin - left, self.height - self.bottom - top)

    def column(self, number: int) -> int:
        """Return the left of a column of tiles, counted from 0."""
        return self.margin + number * (self.tile_w + self.gutter)

    def _span(self, count: int, size: int) -> int:
        return count * size + (count - 1) * self.gutter


def grid(width: int, height: int) -> Grid:
    """Return the measures for a board of this size, the menu bar not counted.

    Examples
    --------
    >>> grid(1920, 1054).rack
    Rect(x=24, y=120, w=1324, h=623)
    >>> grid(1280, 778).right
    Rect(x=911, y=67, w=353, h=703)
    """
    if width < LARGE_WIDTH or height < LARGE_HEIGHT:
        height = max(height, 778)
        return Grid(
            large=False, width=max(width, 1280), height=height, menu=22, margin=16, gutter=15,
            strip=60, gap=7, head=22, tile_w=163, tile_h=146, box_gap=8, slim_gap=6, slim=31,
            column_gap=20, bottom=8,
        )  # fmt: skip
    tight = min(max((1054 - height) / 80, 0.0), 1.0)

    def drawn_in(size: int, by: int) -> int:
        return size - ceil(tight * by)

    return Grid(
        large=True, width=width, height=height, menu=MENU, margin=24, gutter=16,
        strip=drawn_in(80, 20), gap=drawn_in(12, 5), head=drawn_in(28, 6),
        tile_w=252, tile_h=drawn_in(197, 4), box_gap=drawn_in(12, 6), slim_gap=drawn_in(10, 3),
        slim=drawn_in(44, 8), column_gap=32, bottom=drawn_in(20, 12),
    )  # fmt: skip
