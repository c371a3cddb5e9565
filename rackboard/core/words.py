"""The six words that the board says of a joint, and their phrases."""

from __future__ import annotations

from enum import StrEnum

from rackboard.core.text import Text, text


class Word(StrEnum):
    """What a joint may bear, in one word; STALE is said of the whole board."""

    WET = "WET"
    WAIT = "WAIT"
    BENCH = "BENCH"
    CURED = "CURED"
    HOLD = "HOLD"
    STALE = "STALE"


PHRASES: dict[Word, Text] = {
    Word.WET: text("Phrase", "still soft: straighten, wipe, look along the shaft"),
    Word.WAIT: text("Phrase", "do not move"),
    Word.BENCH: text("Phrase", "off the rack: cut, grip; do not hit"),
    Word.CURED: text("Phrase", "safe to hit: hit, bend loft and lie, turn the ferrule"),
    Word.HOLD: text("Phrase", "on hold until somebody says what happened"),
    Word.STALE: text("Phrase", "the board is not being updated"),
}
"""For banners, notices and the screen reader; after HOLD comes its reason."""

SHORT_PHRASES: dict[Word, Text] = {
    Word.WET: text("Phrase", "still soft: straighten, wipe"),
    Word.WAIT: text("Phrase", "do not move"),
    Word.BENCH: text("Phrase", "off the rack: cut, grip; do not hit"),
    Word.CURED: text("Phrase", "safe to hit"),
    Word.HOLD: text("Phrase", "disturbed, soft smear or too hot"),
    Word.STALE: text("Phrase", "the board is not being updated"),
}
"""For a legend and for one line."""
