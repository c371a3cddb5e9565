"""What is said and what waits: the budget, sounds, repeats, a closed shop."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from rackboard.core.alerts.kinds import NATURE, Kind, Sort
from rackboard.core.alerts.telling import (
    ALARM_BUDGET,
    BUDGET,
    WINDOW_US,
    Annunciation,
    Told,
    Wanted,
    plan,
    repeat_due_us,
)
from rackboard.core.instants import MINUTE_US, SECOND_US, Instant


def told_of(said: list[Annunciation], now: Instant) -> list[Told]:
    return [
        Told(now, NATURE[one.kind].sort, one.sounds, one.alerts[0].group,
             counted=one.summary or not NATURE[one.kind].never_folded)
        for one in said
    ]  # fmt: skip


def test_what_belongs_together_is_said_once() -> None:
    wanted = [Wanted(n, Kind.OFF_THE_RACK, "7:2417", n * SECOND_US) for n in range(8)]
    said, waits = plan(wanted, [], 10 * SECOND_US, is_open=True)
    assert [len(one.alerts) for one in said] == [8]
    assert not waits


def test_a_late_comer_of_a_group_waits_a_minute() -> None:
    first, _ = plan([Wanted(1, Kind.OFF_THE_RACK, "a", 0)], [], 0, is_open=True)
    told = told_of(first, 0)
    late = [Wanted(2, Kind.OFF_THE_RACK, "a", 20 * SECOND_US)]
    said, waits = plan(late, told, 30 * SECOND_US, is_open=True)
    assert not said
    assert waits == late
    said, waits = plan(late, told, 60 * SECOND_US, is_open=True)
    assert said
    assert not waits


def test_a_closed_shop_is_silent_but_for_what_burns() -> None:
    """R20."""
    wanted = [Wanted(n, kind, str(n), 0) for n, kind in enumerate(Kind)]
    said, waits = plan(wanted, [], 0, is_open=False)
    assert [one.kind for one in said] == [Kind.TOO_HOT]
    assert {one.kind for one in waits} == set(Kind) - {Kind.TOO_HOT}


def test_quiet_hours_spare_only_what_burns() -> None:
    wanted = [Wanted(1, Kind.WITHDRAWN, "a", 0), Wanted(2, Kind.TOO_HOT, "b", 0)]
    said, _ = plan(wanted, [], 0, is_open=True, quiet=True)
    assert {one.kind: one.sounds for one in said} == {Kind.TOO_HOT: True, Kind.WITHDRAWN: False}


def test_one_sound_a_minute_which_an_alarm_may_break_once() -> None:
    told = [Told(0, Sort.MESSAGE, True, "m")]
    now = 30 * SECOND_US
    prompt, _ = plan([Wanted(1, Kind.LAST_LOOK, "a", now)], told, now, is_open=True)
    assert not prompt[0].sounds
    alarm, _ = plan([Wanted(2, Kind.COLD, "b", now)], told, now, is_open=True)
    assert alarm[0].sounds
    told += told_of(alarm, now)
    again, _ = plan([Wanted(3, Kind.NO_RECORD, "c", now)], told, now + SECOND_US, is_open=True)
    assert not again[0].sounds


def test_after_an_absence_everything_is_one_summary_in_due_order() -> None:
    """R03."""
    wanted = [
        Wanted(3, Kind.JOB_SAFE, "c", 30), Wanted(1, Kind.LAST_LOOK, "a", 10),
        Wanted(2, Kind.OFF_THE_RACK, "b", 20),
    ]  # fmt: skip
    said, waits = plan(wanted, [], 8 * 60 * MINUTE_US, is_open=True, summary=True)
    assert [[one.alert_id for one in a.alerts] for a in said] == [[1, 2, 3]]
    assert sum(one.sounds for one in said) == 1
    assert not waits


def test_alarms_speak_again_at_2_5_15_and_every_15_minutes() -> None:
    """R20."""
    at, times = 0, []
    for _ in range(6):
        at = repeat_due_us(0, at)
        times.append(at // MINUTE_US)
    assert times == [2, 5, 15, 30, 45, 60]


@given(
    st.lists(
        st.tuples(st.sampled_from(list(Kind)), st.integers(0, 30), st.integers(0, 1200)),
        max_size=60,
    )
)
def test_the_budget_holds_and_nothing_is_lost(events: list[tuple[Kind, int, int]]) -> None:
    """R13: in any ten minutes six, four of them no alarms; never two sounds of one sort."""
    waiting: list[Wanted] = []
    told: list[Told] = []
    heard: set[int] = set()
    coming = sorted((seconds * SECOND_US, n, kind, group)
                    for n, (kind, group, seconds) in enumerate(events))  # fmt: skip
    for now in range(0, 4000 * SECOND_US, 10 * SECOND_US):
        while coming and coming[0][0] <= now:
            due, n, kind, group = coming.pop(0)
            waiting.append(Wanted(n, kind, f"{kind}{group}", due))
        said, waiting = plan(waiting, told, now, is_open=True)
        for one in said:
            heard |= {w.alert_id for w in one.alerts}
        told += told_of(said, now)
        recent = [t for t in told if t.counted and t.at_us > now - WINDOW_US]
        assert len(recent) <= BUDGET + ALARM_BUDGET
        assert sum(t.sort is not Sort.ALARM for t in recent) <= BUDGET
        sounds = [t for t in told if t.sounded and t.at_us > now - 60 * SECOND_US]
        assert len(sounds) <= 2

    assert heard | {w.alert_id for w in waiting} == set(range(len(events)))
    assert not any(NATURE[w.kind].never_folded for w in waiting)
