"""How large the wall's words are, and how many tiles a page has, by where it is read from.

Capitals of state word and time are 20 minutes of arc high, everything else at least 16
(NUREG-0700 and ISO 9241-3; the former second-hand). The design is drawn for a screen of
1920 × 1080 read from 3 m; `Sheet` says how it lies on another one. Tiles fill the screen: words
may come out larger than asked, and are smaller only where four tiles wouldn't fit.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import floor, pi, tan
from typing import NamedTuple

from PySide6.QtCore import QRectF

from rackboard.services.furnishing import DEFAULT_DISTANCE_M, DEFAULT_PITCH_MM
from rackboard.services.snapshot import DISTANCE, PITCH

PREFERRED_ARCMIN, LEAST_ARCMIN = 20.0, 16.0
MARGIN, GUTTER, STRIP, GAP = 16.0, 14.0, 80.0, 11.0
"""Of the design [design units]; the gap stands above and below the tiles."""
TILE_WIDTH, TILE = 366.0, 316.0
LEAST_COLUMNS, LEAST_ROWS, MOST_COLUMNS, MOST_ROWS = 2, 2, 6, 4
TOLERANCE = 0.03
"""How much smaller words may be, so that a pitch known to the millimetre or two of a screen's
width doesn't cost a column [decision]."""
_INCH_MM = 25.4
_MADE_UP_DPI = (72.0, 96.0, 100.0)
_NEARLY = 1e-6


def cap_height_px(distance_m: float, pitch_mm: float, arcmin: float) -> float:
    """Return the height of a capital seen under an angle: h = 2 D tan(a / 2) [pixels].

    Parameters
    ----------
    distance_m : float
        Viewing distance D [m].
    pitch_mm : float
        Pixel pitch [mm].
    arcmin : float
        Angle a [minutes of arc].

    Examples
    --------
    >>> round(cap_height_px(3.0, 0.2768, 20.0), 1)
    63.1
    """
    return 2 * distance_m * 1000 * tan(arcmin / 60 * pi / 180 / 2) / pitch_mm


class Viewing(NamedTuple):
    """Where the wall is read from [m], and the pitch of its physical pixels [mm]."""

    distance_m: float = DEFAULT_DISTANCE_M
    pitch_mm: float = DEFAULT_PITCH_MM

    @property
    def scale(self) -> float:
        """How much larger than designed everything has to be [physical pixels]."""
        return self.distance_m / DEFAULT_DISTANCE_M * DEFAULT_PITCH_MM / self.pitch_mm


class Sheet(NamedTuple):
    """How the design lies on a screen: scale, size in design units, tiles, and what is reached.

    `arcmin` is the angle of the state word's capitals from the viewing distance.
    """

    scale: float
    width: float
    height: float
    columns: int
    rows: int
    arcmin: float

    @property
    def cells(self) -> int:
        """Tiles of a page."""
        return self.columns * self.rows

    @property
    def tile(self) -> tuple[float, float]:
        """Width and height of a tile in design units."""
        wide = (self.width - 2 * MARGIN - (self.columns - 1) * GUTTER) / self.columns
        high = (self.height - STRIP - 2 * GAP - (self.rows - 1) * GUTTER) / self.rows
        return wide, high

    def cell(self, number: int) -> QRectF:
        """Return a tile's rectangle in design units, counted along the rows."""
        wide, high = self.tile
        row, column = divmod(number, self.columns)
        return QRectF(
            MARGIN + column * (wide + GUTTER), STRIP + GAP + row * (high + GUTTER), wide, high
        )


def sheet(width: float, height: float, viewing: Viewing | None = None, ratio: float = 1.0) -> Sheet:
    """Return how the design lies on a screen.

    Parameters
    ----------
    width, height : float
        Of the screen [logical px].
    viewing : Viewing, optional
        By default 3 m and 0.2768 mm.
    ratio : float
        Physical pixels of a logical one.

    Examples
    --------
    >>> at = sheet(1920, 1080)
    >>> at.columns, at.rows, round(at.arcmin)
    (5, 3, 20)
    """
    wanted = max((viewing or Viewing()).scale / ratio, _NEARLY)
    least = wanted * (1 - TOLERANCE)
    columns = _fitting(width / least - 2 * MARGIN, TILE_WIDTH)
    rows = _fitting(height / least - STRIP - 2 * GAP, TILE)
    columns = min(max(columns, LEAST_COLUMNS), MOST_COLUMNS)
    rows = min(max(rows, LEAST_ROWS), MOST_ROWS)
    need_wide = 2 * MARGIN + columns * TILE_WIDTH + (columns - 1) * GUTTER
    need_high = STRIP + 2 * GAP + rows * TILE + (rows - 1) * GUTTER
    scale = max(min(width / need_wide, height / need_high), 0.05)
    return Sheet(
        scale, width / scale, height / scale, columns, rows, PREFERRED_ARCMIN * scale / wanted
    )


def viewing_of(settings: Mapping[str, object], screen_pitch_mm: float | None = None) -> Viewing:
    """Return the viewing that the settings say; a pitch not set is the screen's, if it tells."""
    distance, pitch = settings.get(DISTANCE), settings.get(PITCH)
    return Viewing(
        float(distance) if isinstance(distance, int | float) else DEFAULT_DISTANCE_M,
        float(pitch) if isinstance(pitch, int | float) else screen_pitch_mm or DEFAULT_PITCH_MM,
    )


def plausible_pitch(
    dots_per_inch: float, size_mm: tuple[float, float], size_px: tuple[int, int], ratio: float
) -> float | None:
    """Return a screen's physical pixel pitch [mm] if what it says of itself can be true.

    Projectors, television sets and virtual screens give no size, their aspect instead, or one
    made up for 96 dots an inch: pixels that aren't nearly square, out of 0.1 to 1.3 mm, or at
    exactly 72, 96 or 100 dots are not believed [decision].

    Parameters
    ----------
    dots_per_inch : float
        Logical pixels an inch, as Qt gives them.
    size_mm, size_px : tuple
        Width and height of the screen [mm], [logical px].
    ratio : float
        Physical pixels of a logical one.
    """
    if min(size_mm) <= 0 or min(size_px) <= 0 or dots_per_inch <= 0 or ratio <= 0:
        return None
    wide, high = size_mm[0] / size_px[0], size_mm[1] / size_px[1]
    pitch = _INCH_MM / dots_per_inch / ratio
    made_up = any(abs(dots_per_inch - dpi) < 0.15 for dpi in _MADE_UP_DPI)
    square = abs(wide - high) <= 0.03 * max(wide, high)
    return round(pitch, 4) if square and not made_up and 0.1 <= pitch <= 1.3 else None


def _fitting(room: float, size: float) -> int:
    return floor((room + GUTTER) / (size + GUTTER) + _NEARLY)
