"""What the board shows around its tiles: immutable display values, made by the presenter."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from typing import TYPE_CHECKING, NamedTuple

from rackboard.core.words import Word
from rackboard.ui.tile import Glyph, Rack

if TYPE_CHECKING:
    from rackboard.ui.inspector_view import InspectorView


class Due(NamedTuple):
    """One thing to come: glyph, time, what and how. The short texts are for 1280."""

    glyph: Glyph | None
    time: str
    title: str
    detail: str
    title_short: str = ""
    detail_short: str = ""


class Ask(NamedTuple):
    """The question about the night: which record it is about, and the unit of the answer.

    `key` names the gap; the field is emptied (or filled with `proposal`) when it changes.
    """

    key: str
    question: str
    record: str
    unit: str
    proposal: str = ""


class Temperature(NamedTuple):
    """The last reading of a zone: "Room", "17.4", "°C", "3 min ago"; value "" if none."""

    zone_id: int
    name: str
    value: str
    unit: str
    age: str
    accessible: str = ""


@dataclass(frozen=True, slots=True)
class Strip:
    """The top strip. `following` is the permission after `next_due` (1920 only)."""

    clock: str
    weekday: str
    date: str
    next_due: Due
    following: Due | None = None
    ask: Ask | None = None
    temperatures: tuple[Temperature, ...] = ()


class Chip(NamedTuple):
    """A club off the rack and still curing. `place_short` is for 1280 ("grip")."""

    key: int
    word: Word | None
    club: str
    job: str
    place: str
    place_short: str
    caption: str
    time: str
    accessible: str


class ReadyBox(Enum):
    """The box of a job: not yet good, good but not pressed, pressed."""

    NOT_YET = 0
    GOOD = 1
    PRESSED = 2


class JobRow(NamedTuple):
    """A job: when its glue is good, in opening-hours words; `strong` prints that in bold."""

    key: int
    number: str
    customer: str
    good: str
    strong: bool
    ready: ReadyBox
    accessible: str


class HappeningKind(Enum):
    """Why a line stands in the list."""

    ALARM = 0
    DUE = 1
    HAPPENED = 2


@dataclass(frozen=True, slots=True)
class Happening:
    """A line of "Due and happened".

    The first alarm fills the card (`title`, two `lines`, `button`), the first due line the row
    under it. `word` colours the bar or, for HOLD, floods the card; other alarms get a plain
    card. `title_short` and `lines_short` are for 1280.
    """

    key: str
    kind: HappeningKind
    time: str
    glyph: Glyph | None
    title: str
    lines: tuple[str, ...] = ()
    title_short: str = ""
    lines_short: tuple[str, ...] = ()
    word: Word | None = None
    button: str = ""
    accessible: str = ""


@dataclass(frozen=True, slots=True)
class BoardView:
    """All that the board shows at one moment."""

    strip: Strip
    racks: tuple[Rack, ...]
    chips: tuple[Chip, ...] = ()
    jobs: tuple[JobRow, ...] = ()
    head: str = ""
    happenings: tuple[Happening, ...] = ()
    inspector: InspectorView | None = None
