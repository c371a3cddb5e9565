"""R06: every pair of the two tables, written down here a second time, cell by cell."""

from __future__ import annotations

import pytest

from rackboard.core.alerts import rows
from rackboard.core.alerts.kinds import ALARMS, MILESTONES, NATURE, Kind, Sort
from rackboard.core.alerts.machine import (
    COLUMNS,
    Event,
    Mark,
    Passing,
    Phase,
    passed,
    step,
)

# Phases: N none yet, U on untaken, T on taken, A on accepted, P on postponed, G off untaken,
# Q off postponed, C closed. A cell: phase before > after; "." leaves it, "!" refuses it.
PHASES = {
    "N": Phase.NEW, "U": Phase.UNTAKEN, "T": Phase.TAKEN, "A": Phase.ACCEPTED,
    "P": Phase.POSTPONED, "G": Phase.GONE, "Q": Phase.GONE_POSTPONED, "C": Phase.CLOSED,
}  # fmt: skip
LETTERS = "NUTAPGQC"
ROWS = {
    #  before:              N U T A P G Q C
    Event.ON: {
        Kind.DISTURBED:   "U......U", Kind.COLD:      "U....UPU", Kind.NO_RECORD: "U....UPU",
        Kind.WITHDRAWN:   "U......U", Kind.TOO_HOT:   "U......U",
    },
    Event.OFF: {
        Kind.DISTURBED:   "........", Kind.COLD:      ".GCCQ...", Kind.NO_RECORD: ".GCCQ...",
        Kind.WITHDRAWN:   "........", Kind.TOO_HOT:   "........",
    },
    Event.GOT_IT: {
        Kind.DISTURBED:   ".T......", Kind.COLD:      ".T..TCC.", Kind.NO_RECORD: ".T..TCC.",
        Kind.WITHDRAWN:   ".T......", Kind.TOO_HOT:   ".T......",
    },
    Event.ACCEPT: {
        Kind.DISTURBED:   "........", Kind.COLD:      ".AA.A...", Kind.NO_RECORD: "........",
        Kind.WITHDRAWN:   "........", Kind.TOO_HOT:   "........",
    },
    Event.POSTPONE: {
        Kind.DISTURBED:   "!!!!!!!!", Kind.COLD:      ".PP.....", Kind.NO_RECORD: ".PP.....",
        Kind.WITHDRAWN:   "!!!!!!!!", Kind.TOO_HOT:   "!!!!!!!!",
    },
    Event.POSTPONE_ENDED: {
        Kind.DISTURBED:   "........", Kind.COLD:      "....U.C.", Kind.NO_RECORD: "....U.C.",
        Kind.WITHDRAWN:   "........", Kind.TOO_HOT:   "........",
    },
    Event.HOUR_TAKEN: {
        Kind.DISTURBED:   "........", Kind.COLD:      "..U.....", Kind.NO_RECORD: "..U.....",
        Kind.WITHDRAWN:   "........", Kind.TOO_HOT:   "..U.....",
    },
    Event.COLDER: {
        Kind.DISTURBED:   "........", Kind.COLD:      "...U....", Kind.NO_RECORD: "........",
        Kind.WITHDRAWN:   "........", Kind.TOO_HOT:   "........",
    },
    Event.SHOP_CLOSES: dict.fromkeys(COLUMNS, "........"),
    Event.SHOP_OPENS: dict.fromkeys(COLUMNS, "........"),
    Event.OUTCOME: {
        Kind.DISTURBED:   ".CCCCCC.", Kind.COLD:      "........", Kind.NO_RECORD: "........",
        Kind.WITHDRAWN:   ".CCCCCC.", Kind.TOO_HOT:   ".CCCCCC.",
    },
    Event.UNDONE: {
        Kind.DISTURBED:   ".CCCCCC.", Kind.COLD:      "........", Kind.NO_RECORD: "........",
        Kind.WITHDRAWN:   ".CCCCCC.", Kind.TOO_HOT:   "........",
    },
    Event.SUBJECT_GONE: {
        Kind.DISTURBED:   "........", Kind.COLD:      ".CCCCCC.", Kind.NO_RECORD: ".CCCCCC.",
        Kind.WITHDRAWN:   "........", Kind.TOO_HOT:   "........",
    },
    Event.UNKNOWN: dict.fromkeys(COLUMNS, "........"),
}  # fmt: skip


@pytest.mark.parametrize("event", list(Event))
@pytest.mark.parametrize("kind", COLUMNS)
def test_every_event_does_to_every_phase_what_is_written(kind: Kind, event: Event) -> None:
    for letter, cell in zip(LETTERS, ROWS[event][kind], strict=True):
        before = PHASES[letter]
        done = step(kind, before, event)
        assert done.refused is (cell == "!"), before
        assert done.phase is (before if cell in ".!" else PHASES[cell]), before


def test_all_events_and_alarms_are_written_down() -> None:
    assert set(ROWS) == set(Event)
    assert set(COLUMNS) == set(ALARMS)
    assert len(ALARMS) + len(MILESTONES) == len(Kind) == len(NATURE)


@pytest.mark.parametrize(
    ("kind", "phase", "event"),
    [
        (Kind.DISTURBED, Phase.UNTAKEN, Event.ACCEPT),
        (Kind.COLD, Phase.UNTAKEN, Event.OUTCOME),
        (Kind.WITHDRAWN, Phase.CLOSED, Event.OUTCOME),
        (Kind.COLD, Phase.TAKEN, Event.COLDER),
        (Kind.NO_RECORD, Phase.TAKEN, Event.UNKNOWN),
    ],
)
def test_a_pair_outside_the_table_is_told_apart(kind: Kind, phase: Phase, event: Event) -> None:
    done = step(kind, phase, event)
    assert done.phase is phase
    assert not done.known


def test_only_an_outcome_or_an_undone_act_ends_what_may_hurt_somebody() -> None:
    """R22: no other event, from no phase, closes the three; of a club that is gone neither."""
    for kind in (Kind.DISTURBED, Kind.WITHDRAWN, Kind.TOO_HOT):
        closing = {
            event for event in Event for phase in Phase
            if phase is not Phase.CLOSED and step(kind, phase, event).phase is Phase.CLOSED
        }  # fmt: skip
        assert closing == ({Event.OUTCOME, Event.UNDONE} if kind is not Kind.TOO_HOT
                           else {Event.OUTCOME})  # fmt: skip


def test_a_milestone_has_no_place_in_the_table_of_alarms() -> None:
    with pytest.raises(KeyError):
        step(Kind.JOB_SAFE, Phase.NEW, Event.ON)
    with pytest.raises(KeyError):
        passed(Kind.COLD, Mark.PENDING, Passing.SEEN)


# P pending, D due unseen, S seen, E expired unseen, W withdrawn, C closed; "." leaves it.
MARKS = {
    "P": Mark.PENDING, "D": Mark.DUE, "S": Mark.SEEN, "E": Mark.EXPIRED, "W": Mark.WITHDRAWN,
    "C": Mark.CLOSED,
}  # fmt: skip
LIMIT, PERMIT = (Kind.LIFE_OVER, Kind.LAST_LOOK), (Kind.OFF_THE_RACK, Kind.JOB_SAFE)
PASSES = {
    #                   limits    permissions      of  P D S E W C
    Passing.FELL_DUE:  ("D.....", "D....."),
    Passing.SEEN:      (".S....", ".S...."),
    Passing.EXPIRED:   (".E....", ".E...."),
    Passing.WITHDRAWN: ("......", "WWWW.."),
    Passing.AGAIN:     ("......", "....P."),
    Passing.ENDED:     ("CCCCC.", "CCCCC."),
}  # fmt: skip


@pytest.mark.parametrize("passing", list(Passing))
@pytest.mark.parametrize("kind", MILESTONES)
def test_milestones_pass_as_written(kind: Kind, passing: Passing) -> None:
    cells = PASSES[passing][kind in PERMIT]
    for letter, cell in zip("PDSEWC", cells, strict=True):
        before = MARKS[letter]
        after = passed(kind, before, passing)
        assert (after or before) is (before if cell == "." else MARKS[cell]), before


def test_the_rows_know_the_tables_words() -> None:
    assert (Phase.UNTAKEN.value, Mark.DUE.value) == rows.SPEAKING
    assert rows.SHUT == Phase.CLOSED.value == Mark.CLOSED.value
    assert {kind.value for kind in ALARMS} == rows.ALARM_KINDS
    assert Kind.WITHDRAWN.value == rows.WITHDRAWN


def test_the_sorts_are_those_of_the_bench() -> None:
    assert {k for k in Kind if NATURE[k].sort is Sort.PROMPT} == set(LIMIT)
    assert {k for k in Kind if NATURE[k].sort is Sort.MESSAGE} == set(PERMIT)
