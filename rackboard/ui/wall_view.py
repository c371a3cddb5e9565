"""What the wall view shows: immutable display values, made by its presenter."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from rackboard.core.bench import HoldReason
from rackboard.core.words import Word
from rackboard.ui.tile import HOLD_GLYPHS, WORD_GLYPHS, Glyph


class WallDue(NamedTuple):
    """The next thing to come: glyph, time and where ("A11–A12")."""

    glyph: Glyph
    time: str
    places: tuple[str, ...]


class WallReading(NamedTuple):
    """The last reading of a zone: "room", "17.4°"."""

    name: str
    value: str


@dataclass(frozen=True, slots=True)
class WallTile:
    """Joints of one job and batch that say the same, readable from across the room.

    Attributes
    ----------
    word : Word
        The plate.
    job : str
        "214".
    places, clubs : tuple of str
        The same said ever shorter, the longest first: ("A6–A9", "4 clubs"). The first that
        has room is drawn whole; if none has, none is drawn.
    time : str
        "17:20", "Sat 07:55", "low?", "no time", "said WAIT", or the reason of a HOLD.
    mark : Glyph or None
        FROM: not before; UNTIL: use by.
    quiet : bool
        The time is past and asks for nothing: it is drawn in the sub colour.
    cold : bool
        Wears the cold band.
    hold : HoldReason or None
        The glyph of a HOLD.
    untaken : bool
        The HOLD floods the tile and wears the collar.
    accessible : str
        Places, clubs, job, phrase and absolute time.
    """

    word: Word
    job: str
    places: tuple[str, ...]
    clubs: tuple[str, ...]
    time: str = ""
    mark: Glyph | None = None
    quiet: bool = False
    cold: bool = False
    hold: HoldReason | None = None
    untaken: bool = False
    accessible: str = ""

    @property
    def glyph(self) -> Glyph:
        """The glyph on the plate."""
        return WORD_GLYPHS[self.word] if self.hold is None else HOLD_GLYPHS[self.hold]


@dataclass(frozen=True, slots=True)
class WallView:
    """All that the wall shows at one moment.

    `free` are the free slots, one text for each run ("A14–A15"), `free_count` how many;
    `stale` says since when nothing is known, else it is empty.
    """

    clock: str
    due: WallDue | None = None
    readings: tuple[WallReading, ...] = ()
    tiles: tuple[WallTile, ...] = ()
    free: tuple[str, ...] = ()
    free_count: int = 0
    stale: str = ""


CELLS = 15
"""Tiles of a page as designed, 5 × 3."""
_WORST_FIRST = (Word.HOLD, Word.STALE, Word.WET, Word.WAIT, Word.BENCH, Word.CURED)


class WallPage(NamedTuple):
    """As many tiles as a page has, and their worst one for the chip."""

    tiles: tuple[WallTile, ...]
    worst: WallTile | None
    free: bool
    """Whether the last cell names the free slots."""


def _badness(tile: WallTile) -> tuple[int, bool]:
    return (_WORST_FIRST.index(tile.word), not tile.cold)


def pages(view: WallView, cells: int = CELLS) -> tuple[WallPage, ...]:
    """Return the pages of a view, the worst first; there is always one.

    Tiles keep their order within a page, and pages of equal worst states theirs.
    """
    runs = [view.tiles[at : at + cells] for at in range(0, len(view.tiles), cells)] or [()]
    made = [WallPage(run, min(run, key=_badness, default=None), False) for run in runs]
    last = made[-1]
    if view.free_count and len(last.tiles) < cells:
        made[-1] = last._replace(free=True)
    return tuple(sorted(made, key=lambda p: _badness(p.worst) if p.worst else (0, False)))
