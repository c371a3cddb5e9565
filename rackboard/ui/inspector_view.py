"""What the inspector shows: immutable display values, made by the presenter.

No early bound of a permission has a place here, so none can be drawn.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from rackboard.core.bench import HoldReason
from rackboard.core.words import Word
from rackboard.ui.tile import Glyph


class CurvePoint(NamedTuple):
    """x along the time axis, the expected hardness and the late one, all 0..1; late ≤ expected."""

    x: float
    expected: float
    late: float


class Level(NamedTuple):
    """A horizontal line: height 0..1 and its name ("safe to hit")."""

    y: float
    name: str


class Mark(NamedTuple):
    """A permission on its level: hollow dot at `probably`, solid dot at `not_before`."""

    y: float
    probably: float
    not_before: float
    probably_text: str
    not_before_text: str


class Day(NamedTuple):
    """A midnight in the temperature strip, and the day that begins there."""

    x: float
    name: str


@dataclass(frozen=True, slots=True)
class CurveView:
    """How the glue goes; every x is a fraction of the time axis, every y of its own height.

    Attributes
    ----------
    points : tuple of CurvePoint
        The whole curve in order; what lies right of `now` is drawn thin.
    now, now_text : float, str
        The present. None: no line (everything is past).
    wet_until, still_at, hard_at : float
        End of the working life, and where the motif under the curve begins and ends to
        thicken (the two solid dots, as a rule).
    record : tuple of tuples of (x, y)
        Stretches of the temperature record; between them nothing is drawn.
    held : tuple of (x, y)
        The outlook, dotted.
    minimum, minimum_text, minimum_short : float or None, str
        The sheet's minimum, dashed, and its legend.
    held_text : str
        The legend of the outlook.
    gaps : tuple of (x, x)
        No record: hatched.
    """

    points: tuple[CurvePoint, ...]
    now: float | None
    now_text: str
    levels: tuple[Level, ...] = ()
    marks: tuple[Mark, ...] = ()
    wet_until: float = 0.05
    still_at: float = 0.3
    hard_at: float = 0.95
    record: tuple[tuple[tuple[float, float], ...], ...] = ()
    held: tuple[tuple[float, float], ...] = ()
    minimum: float | None = None
    minimum_text: str = ""
    minimum_short: str = ""
    held_text: str = ""
    gaps: tuple[tuple[float, float], ...] = ()
    days: tuple[Day, ...] = ()


class Permission(NamedTuple):
    """One of the two times: what it allows, "since" / "not before", the time."""

    glyph: Glyph
    name: str
    caption: str
    time: str
    reached: bool
    probably: str = ""


class Reason(NamedTuple):
    """One of the three lines: whose time it is, the time, why."""

    name: str
    time: str
    why: str
    why_short: str = ""


class Action(NamedTuple):
    """A button; `text` may have two lines. At 1280 only those with `small` are shown."""

    key: str
    text: str
    small: bool = True
    large: bool = True
    enabled: bool = True


@dataclass(frozen=True, slots=True)
class InspectorView:
    """The selected slot. `facts` are pairs such as ("Head", "steel, lag 22 min") for 1920.

    `curve_said` is the curve in words, for those who can't see it.
    """

    slot: str
    title: str
    word: Word | None
    hold: HoldReason | None = None
    lines: tuple[str, ...] = ()
    permissions: tuple[Permission, ...] = ()
    reasons: tuple[Reason, ...] = ()
    curve: CurveView | None = None
    facts: tuple[tuple[str, str], ...] = ()
    sooner: str = ""
    sooner_short: str = ""
    actions: tuple[Action, ...] = ()
    accessible: str = ""
    curve_said: str = ""
