"""The six words that the board says of a joint, and their phrases."""

from __future__ import annotations

from enum import StrEnum


class Word(StrEnum):
    """What a joint may bear, in one word; STALE is said of the whole board."""

    WET = "WET"
    WAIT = "WAIT"
    BENCH = "BENCH"
    CURED = "CURED"
    HOLD = "HOLD"
    STALE = "STALE"


PHRASES: dict[Word, str] = {
    Word.WET: "still soft: straighten, wipe, look along the shaft",
    Word.WAIT: "do not move",
    Word.BENCH: "off the rack: cut, grip; do not hit",
    Word.CURED: "safe to hit: hit, bend loft and lie, turn the ferrule",
    Word.HOLD: "on hold until somebody says what happened",
    Word.STALE: "the board is not being updated",
}
"""For banners, notices and the screen reader; after HOLD comes its reason."""

SHORT_PHRASES: dict[Word, str] = {
    Word.WET: "still soft: straighten, wipe",
    Word.WAIT: "do not move",
    Word.BENCH: "off the rack: cut, grip; do not hit",
    Word.CURED: "safe to hit",
    Word.HOLD: "disturbed, soft smear or too hot",
    Word.STALE: "the board is not being updated",
}
"""For a legend and for one line."""
