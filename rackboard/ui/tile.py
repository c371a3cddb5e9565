"""What one tile and one rack show: immutable display values, made by the presenter.

Texts arrive finished; nothing here knows a store, a clock or a formula. Positions along the
motif run from 0 (mixed) to 1 (hard): see `rackboard.ui.motif.along`.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum, StrEnum

from rackboard.core.bench import HoldReason
from rackboard.core.text import text
from rackboard.core.words import Word
from rackboard.ui.language import translated


class Glyph(StrEnum):
    """The marks; the drawing stands in `rackboard.ui.glyphs`."""

    EYE = "eye"
    LOCK = "padlock"
    HAND = "hand"
    TICK = "tick"
    ROD = "fallen rod"
    SMEAR = "smear"
    HOT = "too hot"
    COLD = "cold"
    CLOCK = "broken clock"
    FROM = "not before"
    UNTIL = "use by"


WORD_GLYPHS: dict[Word, Glyph] = {
    Word.WET: Glyph.EYE,
    Word.WAIT: Glyph.LOCK,
    Word.BENCH: Glyph.HAND,
    Word.CURED: Glyph.TICK,
    Word.HOLD: Glyph.ROD,
    Word.STALE: Glyph.CLOCK,
}
HOLD_GLYPHS: dict[HoldReason, Glyph] = {
    HoldReason.DISTURBED: Glyph.ROD,
    HoldReason.SOFT_SMEAR: Glyph.SMEAR,
    HoldReason.TOO_HOT: Glyph.HOT,
}

WORD_TEXTS = {
    Word.WET: text("Word", "WET"), Word.WAIT: text("Word", "WAIT"),
    Word.BENCH: text("Word", "BENCH"), Word.CURED: text("Word", "CURED"),
    Word.HOLD: text("Word", "HOLD"), Word.STALE: text("Word", "STALE"),
}  # fmt: skip


def word_text(word: Word) -> str:
    """Return a state's word in the language that is spoken."""
    return translated(WORD_TEXTS[word])


class TileKind(Enum):
    """What stands in the slot."""

    EMPTY = 0
    LAID_OUT = 1
    JOINT = 2


class MotifStyle(Enum):
    """How the way ahead is drawn."""

    PLAIN = 0
    COLD = 1
    HOLD = 2
    NONE = 3


STEP = 1 / 256
"""Of places along the motif, about a pixel: a smaller one would repaint for nothing."""


@dataclass(frozen=True, slots=True)
class Tile:
    """One slot of a rack.

    Attributes
    ----------
    place_id, slot : int
        The id; slots count from 0.
    name : str
        What is painted on the wood, "A7".
    kind : TileKind
        Empty, laid out or a joint.
    word : Word or None
        The plate; None for an empty or laid out slot. STALE keeps `club`, `job` and `sub`,
        `time` says "no word since 14:05" and `detail` "it said WAIT then".
    club, job, sub, temperature : str
        "5 iron", "214", "day-long, Wed 09:10", "17.4 °C" (left out at 1280). A laid out slot
        shows `club` and `detail`.
    next_glyph : Glyph or None
        What comes next; unless it is `reached`, a bar and an arrow are drawn for it.
    caption, time : str
        "not before" / "use by" / "since"; "17:20", "Sat 07:55", "low?", "no time", "14:10?".
        HOLD: no caption, `time` is the reason ("disturbed 14:19"), `detail` the detail.
    reached : bool
        The permission is there already ("since"): its glyph is drawn.
    other_day : bool
        `time` carries a weekday or date (narrower type at 1280).
    detail, detail_short : str
        Line 5 at 1920 ("probably hard by 15:30") and at 1280 ("probably 15:30").
    aside : tuple of str
        Two short lines right of "no time" ("until it is", "above 18 °C"); 1920 only.
    cold : str
        Right text of the cold band ("warm it"); empty: no band.
    hold : HoldReason or None
        The glyph of a HOLD.
    untaken : bool
        The HOLD floods the tile and wears the collar.
    position : float
        Where the joint stands on the motif, 0..1; kept in steps of `STEP`, as are the others.
    motif : MotifStyle
        The way ahead.
    gap : tuple of float or None
        Hatched stretch of the motif (night not known).
    probably, not_before : float or None
        Dumbbell on the motif's axis; drawn only if both are given.
    accessible : str
        Place, club, phrase, absolute time.
    """

    place_id: int
    slot: int
    name: str
    kind: TileKind = TileKind.EMPTY
    word: Word | None = None
    club: str = ""
    job: str = ""
    sub: str = ""
    temperature: str = ""
    next_glyph: Glyph | None = None
    caption: str = ""
    time: str = ""
    reached: bool = False
    other_day: bool = False
    detail: str = ""
    detail_short: str = ""
    aside: tuple[str, ...] = ()
    cold: str = ""
    hold: HoldReason | None = None
    untaken: bool = False
    position: float = 0.0
    motif: MotifStyle = MotifStyle.PLAIN
    gap: tuple[float, float] | None = None
    probably: float | None = None
    not_before: float | None = None
    accessible: str = ""

    def __post_init__(self) -> None:
        """Take the places along the motif in whole steps; only what is over is at 1."""
        for name in ("position", "probably", "not_before"):
            at = getattr(self, name)
            if at is not None and at < 1.0:
                object.__setattr__(self, name, int(at / STEP) * STEP)

    @property
    def key(self) -> tuple[int, int]:
        """The id of the row: place and slot."""
        return (self.place_id, self.slot)

    @property
    def glyph(self) -> Glyph | None:
        """The glyph on the plate."""
        if self.word is None:
            return None
        if self.word is Word.HOLD and self.hold is not None:
            return HOLD_GLYPHS[self.hold]
        return WORD_GLYPHS[self.word]


@dataclass(frozen=True, slots=True)
class Rack:
    """A rack or box as the board shows it.

    The first box (`box` true) stands in the row under the racks; the others are pages.
    `tiles` are in slot order and number rows × columns.
    """

    place_id: int
    title: str
    subtitle: str
    rows: int
    columns: int
    tiles: tuple[Tile, ...]
    box: bool = False
