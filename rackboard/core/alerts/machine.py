"""The two tables by which alerts live: what an event does to an alarm, and to a milestone.

An event that isn't in a table for a phase leaves the alert as it is; whoever calls logs it.
"""

from __future__ import annotations

from enum import StrEnum
from typing import NamedTuple

from rackboard.core.alerts.kinds import Kind
from rackboard.core.instants import MINUTE_US

POSTPONED_MOST_US = 120 * MINUTE_US
"""An alarm may be put off for at most so long [decision]."""
TAKEN_FOR_US = 60 * MINUTE_US
"""An alarm taken by "Got it" speaks again after so long, if it still holds [decision]."""
COLDER_MC = 2_000
"""An accepted cold zone speaks again when it is so much colder [m°C, decision]."""


class Phase(StrEnum):
    """Where an alarm stands. "on" and "off" are its condition."""

    NEW = ""
    UNTAKEN = "on, untaken"
    TAKEN = "on, taken"
    ACCEPTED = "on, accepted"
    POSTPONED = "on, postponed"
    GONE = "off, untaken"
    GONE_POSTPONED = "off, postponed"
    CLOSED = "closed"


class Event(StrEnum):
    """What may happen to an alarm."""

    ON = "condition on"
    OFF = "condition off"
    GOT_IT = "got it"
    ACCEPT = "accept"
    POSTPONE = "postpone"
    POSTPONE_ENDED = "postponing ended"
    HOUR_TAKEN = "an hour on and taken"
    COLDER = "2 °C colder than when accepted"
    SHOP_CLOSES = "shop closes"
    SHOP_OPENS = "shop opens"
    OUTCOME = "outcome"
    UNDONE = "undone or corrected"
    SUBJECT_GONE = "subject gone"
    UNKNOWN = "record unknown"


class Step(NamedTuple):
    """What an event does: the phase afterwards, and whether the table knows the pair."""

    phase: Phase
    known: bool = True
    refused: bool = False


_P = Phase
_NEW: dict[Phase, Phase] = {_P.NEW: _P.UNTAKEN, _P.CLOSED: _P.UNTAKEN}
# Known, and nothing changes:
_SAME: dict[Phase, Phase] = {p: p for p in Phase if p not in (_P.NEW, _P.CLOSED)}
_CLOSED: dict[Phase, Phase] = dict.fromkeys(_SAME, _P.CLOSED)
_NONE: dict[Phase, Phase] = {}
_REFUSED = "refused"

_ON_ZONE: dict[Phase, Phase] = {
    **_NEW, **_SAME, _P.GONE: _P.UNTAKEN, _P.GONE_POSTPONED: _P.POSTPONED,
}  # fmt: skip
_OFF_ZONE: dict[Phase, Phase] = {
    _P.UNTAKEN: _P.GONE, _P.TAKEN: _P.CLOSED, _P.ACCEPTED: _P.CLOSED,
    _P.POSTPONED: _P.GONE_POSTPONED, _P.GONE: _P.GONE, _P.GONE_POSTPONED: _P.GONE_POSTPONED,
}  # fmt: skip
_GOT_ZONE: dict[Phase, Phase] = {
    _P.UNTAKEN: _P.TAKEN, _P.TAKEN: _P.TAKEN, _P.ACCEPTED: _P.ACCEPTED, _P.POSTPONED: _P.TAKEN,
    _P.GONE: _P.CLOSED, _P.GONE_POSTPONED: _P.CLOSED,
}  # fmt: skip
_GOT: dict[Phase, Phase] = {_P.UNTAKEN: _P.TAKEN, _P.TAKEN: _P.TAKEN}
_ACCEPT: dict[Phase, Phase] = dict.fromkeys(
    (_P.UNTAKEN, _P.TAKEN, _P.POSTPONED, _P.ACCEPTED), _P.ACCEPTED
)
_POSTPONE: dict[Phase, Phase] = dict.fromkeys((_P.UNTAKEN, _P.TAKEN, _P.POSTPONED), _P.POSTPONED)
_POSTPONE_ENDED: dict[Phase, Phase] = {_P.POSTPONED: _P.UNTAKEN, _P.GONE_POSTPONED: _P.CLOSED}
_HOUR: dict[Phase, Phase] = {_P.TAKEN: _P.UNTAKEN}
_COLDER: dict[Phase, Phase] = {_P.ACCEPTED: _P.UNTAKEN}

_Cell = dict[Phase, Phase] | str
TABLE: dict[Event, tuple[_Cell, _Cell, _Cell, _Cell, _Cell]] = {
    #                      disturbed  cold             no record        withdrawn  too hot
    Event.ON:             (_NEW,     _ON_ZONE,        _ON_ZONE,        _NEW | _SAME, _NEW | _SAME),
    Event.OFF:            (_NONE,    _OFF_ZONE,       _OFF_ZONE,       _SAME,     _SAME),
    Event.GOT_IT:         (_GOT,     _GOT_ZONE,       _GOT_ZONE,       _GOT,      _GOT),
    Event.ACCEPT:         (_NONE,    _ACCEPT,         _NONE,           _NONE,     _NONE),
    Event.POSTPONE:       (_REFUSED, _POSTPONE,       _POSTPONE,       _REFUSED,  _REFUSED),
    Event.POSTPONE_ENDED: (_NONE,    _POSTPONE_ENDED, _POSTPONE_ENDED, _NONE,     _NONE),
    Event.HOUR_TAKEN:     (_NONE,    _HOUR,           _HOUR,           _NONE,     _HOUR),
    Event.COLDER:         (_NONE,    _COLDER,         _NONE,           _NONE,     _NONE),
    Event.SHOP_CLOSES:    (_SAME,    _SAME,           _SAME,           _SAME,     _SAME),
    Event.SHOP_OPENS:     (_SAME,    _SAME,           _SAME,           _SAME,     _SAME),
    Event.OUTCOME:        (_CLOSED,  _NONE,           _NONE,           _CLOSED,   _CLOSED),
    Event.UNDONE:         (_CLOSED,  _NONE,           _NONE,           _CLOSED,   _NONE),
    Event.SUBJECT_GONE:   (_SAME,    _CLOSED,         _CLOSED,         _SAME,     _SAME),
    Event.UNKNOWN:        (_NONE,    _SAME,           _NONE,           _NONE,     _SAME),
}  # fmt: skip
"""Alarms. While the record is unknown the conditions of a cold and a hot zone are frozen;
a closed shop and its opening change what is said, not where an alarm stands."""

COLUMNS = (Kind.DISTURBED, Kind.COLD, Kind.NO_RECORD, Kind.WITHDRAWN, Kind.TOO_HOT)


def step(kind: Kind, phase: Phase, event: Event) -> Step:
    """Return what an event does to an alarm.

    Parameters
    ----------
    kind : Kind
        One of the alarms.
    phase : Phase
        Where it stands; NEW if there is none of its subject yet.
    event : Event
        What has happened.

    Raises
    ------
    KeyError
        If `kind` is no alarm.

    Examples
    --------
    >>> step(Kind.COLD, Phase.UNTAKEN, Event.OFF).phase
    <Phase.GONE: 'off, untaken'>
    >>> step(Kind.WITHDRAWN, Phase.UNTAKEN, Event.POSTPONE)
    Step(phase=<Phase.UNTAKEN: 'on, untaken'>, known=True, refused=True)
    """
    if kind not in COLUMNS:
        raise KeyError(kind)
    cell = TABLE[event][COLUMNS.index(kind)]
    if isinstance(cell, str):
        return Step(phase, refused=True)
    after = cell.get(phase)
    return Step(phase, known=False) if after is None else Step(after)


class Mark(StrEnum):
    """Where a milestone stands."""

    PENDING = "pending"
    DUE = "due, unseen"
    SEEN = "seen"
    EXPIRED = "expired, unseen"
    WITHDRAWN = "withdrawn"
    CLOSED = "closed"


class Passing(StrEnum):
    """What may happen to a milestone."""

    FELL_DUE = "fell due"
    SEEN = "seen"
    EXPIRED = "expired"
    WITHDRAWN = "withdrawn"
    AGAIN = "pending again"
    ENDED = "ended"


_M = Mark
_OPEN = tuple(mark for mark in Mark if mark is not _M.CLOSED)
_TAKEN_BACK: dict[Mark, Mark] = dict.fromkeys(_OPEN, _M.WITHDRAWN)
_NOT: dict[Mark, Mark] = {}
PASSINGS: dict[Passing, tuple[dict[Mark, Mark], dict[Mark, Mark]]] = {
    #                   life over, last look                 off the rack, job safe
    Passing.FELL_DUE:  ({_M.PENDING: _M.DUE},               {_M.PENDING: _M.DUE}),
    Passing.SEEN:      ({_M.DUE: _M.SEEN},                  {_M.DUE: _M.SEEN}),
    Passing.EXPIRED:   ({_M.DUE: _M.EXPIRED},               {_M.DUE: _M.EXPIRED}),
    Passing.WITHDRAWN: (_NOT,                               _TAKEN_BACK),
    Passing.AGAIN:     (_NOT,                               {_M.WITHDRAWN: _M.PENDING}),
    Passing.ENDED:     (dict.fromkeys(_OPEN, _M.CLOSED),    dict.fromkeys(_OPEN, _M.CLOSED)),
}  # fmt: skip
"""Milestones. A limit that has passed is not taken back by a HOLD; a permission is."""


def passed(kind: Kind, mark: Mark, passing: Passing) -> Mark | None:
    """Return where a milestone stands afterwards; None if the table doesn't know the pair.

    Examples
    --------
    >>> passed(Kind.JOB_SAFE, Mark.SEEN, Passing.WITHDRAWN)
    <Mark.WITHDRAWN: 'withdrawn'>
    """
    if kind in COLUMNS:
        raise KeyError(kind)
    permits = kind in (Kind.OFF_THE_RACK, Kind.JOB_SAFE)
    return PASSINGS[passing][permits].get(mark)
