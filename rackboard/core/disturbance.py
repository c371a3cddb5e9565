"""A disturbed joint: which answers make sense by what may have happened to its glue."""

from __future__ import annotations

from enum import Enum, StrEnum

from rackboard.core.bench import HoldReason
from rackboard.core.instants import Instant
from rackboard.core.text import text
from rackboard.core.words import Word


class Answer(StrEnum):
    """What a person did about it; the value is the outcome as it is stored."""

    RE_AIMED = "re-aimed, clock runs on from mixing"
    RE_GLUED = "pulled, cleaned, re-glued with a new batch"
    UNTURNED = "touched, head did not turn"
    NOTHING_SEEN = "nothing seen"
    SCRAPPED = "scrapped"
    RELEASED = "released"
    MISTAKE = "entered by mistake"


class Glue(Enum):
    """What the glue of a disturbed joint may have come to."""

    WET = 0
    """Within its working life: a head set right holds as if nothing had happened."""
    MOVED = 1
    """Past its working life, but surely not gelled yet."""
    GELLED = 2
    """Possibly gelled: a head that turned has torn its bond."""


_OFFERED = {
    Glue.WET: (Answer.RE_AIMED,),
    Glue.MOVED: (Answer.RE_AIMED, Answer.RE_GLUED),
    Glue.GELLED: (Answer.UNTURNED, Answer.RE_GLUED, Answer.SCRAPPED, Answer.MISTAKE),
}
_OF_HOLD = {
    HoldReason.DISTURBED: _OFFERED[Glue.GELLED],
    HoldReason.SOFT_SMEAR: (Answer.RE_GLUED, Answer.SCRAPPED, Answer.RELEASED, Answer.MISTAKE),
    HoldReason.TOO_HOT: (
        Answer.NOTHING_SEEN, Answer.RE_GLUED, Answer.SCRAPPED, Answer.RELEASED,
    ),
}  # fmt: skip


def glue_at(
    base: Word, now: Instant, use_by_us: Instant | None, gel_early_us: Instant | None
) -> Glue:
    """Return what the glue may have come to.

    Where the bounds aren't known it may have gelled: only a joint that surely hasn't is let
    off without a HOLD.

    Parameters
    ----------
    base : Word
        What the joint says without a HOLD.
    now : int
        When it was disturbed [µs UTC].
    use_by_us : int or None
        Early end of the working life [µs UTC]; None: not known.
    gel_early_us : int or None
        Early bound of gel [µs UTC]; None: not known.
    """
    if base not in (Word.WET, Word.WAIT) or use_by_us is None or gel_early_us is None:
        return Glue.GELLED
    if now >= gel_early_us:
        return Glue.GELLED
    return Glue.WET if base is Word.WET and now < use_by_us else Glue.MOVED


def answers_to(glue: Glue) -> tuple[Answer, ...]:
    """Return the answers that are offered, the likeliest first."""
    return _OFFERED[glue]


def answers_to_hold(reason: HoldReason) -> tuple[Answer, ...]:
    """Return the answers that end a HOLD, the likeliest first.

    A HOLD is answered as if the glue had gelled, however soft it may have been.
    """
    return _OF_HOLD[reason]


def said_of(outcome: str) -> str:
    """Return an outcome as it is said; it may be of an older board and unknown here."""
    said = {
        Answer.RE_AIMED: text("Answer", "re-aimed, clock runs on from mixing"),
        Answer.RE_GLUED: text("Answer", "pulled, cleaned, re-glued with a new batch"),
        Answer.UNTURNED: text("Answer", "touched, head did not turn"),
        Answer.NOTHING_SEEN: text("Answer", "nothing seen"),
        Answer.SCRAPPED: text("Answer", "scrapped"),
        Answer.RELEASED: text("Answer", "released"),
        Answer.MISTAKE: text("Answer", "entered by mistake"),
    }
    return said.get(outcome, outcome)  # type: ignore[call-overload, no-any-return]
