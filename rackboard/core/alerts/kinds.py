"""The alerts by name: what each asks for and how pressing it is.

An alarm is an abnormal condition that asks for a response now, a prompt an expected event that
asks for one, a message one that asks for none (after ISA-18.2 and IEC 62682, known from texts
about them).
"""

from __future__ import annotations

from enum import IntEnum, StrEnum
from typing import NamedTuple


class Kind(StrEnum):
    """What an alert is about."""

    DISTURBED = "disturbed"
    COLD = "cold"
    NO_RECORD = "no record"
    WITHDRAWN = "withdrawn"
    TOO_HOT = "too hot"
    LIFE_OVER = "working life over"
    LAST_LOOK = "last look"
    OFF_THE_RACK = "off the rack"
    JOB_SAFE = "job safe"


class Sort(IntEnum):
    """How much an alert asks for; the higher speaks over the lower."""

    MESSAGE = 0
    PROMPT = 1
    ALARM = 2


class Subject(StrEnum):
    """What an alert belongs to: never a slot, the club may be carried away."""

    JOINT = "joint"
    ZONE = "zone"
    JOB_BATCH = "job batch"
    JOB = "job"


class Nature(NamedTuple):
    """What is the same for all alerts of a kind.

    Attributes
    ----------
    code : str
        Short name in tables and exports: H for "hold or halt", M for milestones.
    sort : Sort
        Alarm, prompt or message.
    rank : int
        Priority among its sort, 0 the most pressing.
    subject : Subject
        What it belongs to.
    never_folded : bool
        It is told on its own, whatever the budget says, and can't be put off.
    """

    code: str
    sort: Sort
    rank: int
    subject: Subject
    never_folded: bool = False


NATURE: dict[Kind, Nature] = {
    Kind.TOO_HOT: Nature("H5", Sort.ALARM, 0, Subject.ZONE, never_folded=True),
    Kind.WITHDRAWN: Nature("H4", Sort.ALARM, 1, Subject.JOINT, never_folded=True),
    Kind.DISTURBED: Nature("H1", Sort.ALARM, 2, Subject.JOINT, never_folded=True),
    Kind.NO_RECORD: Nature("H3", Sort.ALARM, 3, Subject.ZONE),
    Kind.COLD: Nature("H2", Sort.ALARM, 4, Subject.ZONE),
    Kind.LAST_LOOK: Nature("M2", Sort.PROMPT, 0, Subject.JOB_BATCH),
    Kind.LIFE_OVER: Nature("M1", Sort.PROMPT, 1, Subject.JOB_BATCH),
    Kind.JOB_SAFE: Nature("M4", Sort.MESSAGE, 0, Subject.JOB),
    Kind.OFF_THE_RACK: Nature("M3", Sort.MESSAGE, 1, Subject.JOB_BATCH),
}
"""Most pressing first."""

ALARMS = tuple(kind for kind, nature in NATURE.items() if nature.sort is Sort.ALARM)
MILESTONES = tuple(kind for kind, nature in NATURE.items() if nature.sort is not Sort.ALARM)
