"""What is said, and when: grouping, the budget of annunciations, repeats, silence.

A pure function of what is wanted, what was said before, and now. Why a budget: one alarm in ten
minutes is manageable, more than ten in ten minutes are a flood (EEMUA 191, known from texts about
it); told one by one, fourteen clubs would give about thirty.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from rackboard.core.alerts.kinds import NATURE, Kind, Sort
from rackboard.core.instants import MINUTE_US, SECOND_US, Instant

GROUP_US = 60 * SECOND_US
"""What belongs together and falls due within so long is told as one [decision]."""
SOUND_US = 60 * SECOND_US
"""At most one sound in so long [decision]."""
WINDOW_US = 10 * MINUTE_US
BUDGET, ALARM_BUDGET = 4, 2
"""In any ten minutes four annunciations, and two more for alarms [decision]."""
REPEATS_US = (2 * MINUTE_US, 5 * MINUTE_US, 15 * MINUTE_US)
"""Untaken alarms speak again after so long, then every quarter of an hour [decision]."""


class Wanted(NamedTuple):
    """Something that wants to be told.

    Attributes
    ----------
    alert_id : int
        Its row.
    kind : Kind
        What it is about.
    group : str
        What it is told together with: job × batch and message, or the zone.
    due_us : int
        When it fell due [µs UTC].
    repeat : bool
        It was told before and is still untaken.
    """

    alert_id: int
    kind: Kind
    group: str
    due_us: Instant
    repeat: bool = False


class Told(NamedTuple):
    """An annunciation that was made.

    Attributes
    ----------
    at_us : int
        When [µs UTC].
    sort : Sort
        Of its most pressing alert.
    sounded : bool
        Whether it made a sound.
    group : str
        What it was about, as in `Wanted`.
    counted : bool
        Whether it counts in the budget; what is never folded doesn't.
    """

    at_us: Instant
    sort: Sort
    sounded: bool
    group: str = ""
    counted: bool = True


class Annunciation(NamedTuple):
    """One thing to say.

    Attributes
    ----------
    alerts : tuple of Wanted
        What it says, in due order.
    kind : Kind
        Of the most pressing.
    sounds : bool
        With a sound.
    folded : bool
        The budget is spent: it says only that there is more on the board.
    summary : bool
        Several groups in one, after an absence or in the morning.
    """

    alerts: tuple[Wanted, ...]
    kind: Kind
    sounds: bool
    folded: bool = False
    summary: bool = False


def rank(kind: Kind) -> tuple[int, int]:
    """Return a sorting key, the most pressing first."""
    nature = NATURE[kind]
    return (-nature.sort, nature.rank)


def repeat_due_us(first_us: Instant, told_us: Instant) -> Instant:
    """Return when an untaken alarm speaks again.

    Parameters
    ----------
    first_us : int
        When the oldest of those that are open was first told [µs UTC].
    told_us : int
        When they were last told.

    Examples
    --------
    >>> [repeat_due_us(0, t * MINUTE_US) // MINUTE_US for t in (0, 2, 5, 15, 30, 31)]
    [2, 5, 15, 30, 45, 45]
    """
    for step in REPEATS_US:
        if told_us < first_us + step:
            return first_us + step
    quarter = REPEATS_US[-1]
    return first_us + ((told_us - first_us) // quarter + 1) * quarter


def plan(
    wanted: Iterable[Wanted],
    told: Sequence[Told],
    now_us: Instant,
    *,
    is_open: bool,
    quiet: bool = False,
    summary: bool = False,
) -> tuple[list[Annunciation], list[Wanted]]:
    """Return what to say now, and what waits.

    Parameters
    ----------
    wanted : iterable of Wanted
        All that fell due and was not told yet.
    told : sequence of Told
        What was said in the last ten minutes at least.
    now_us : int
        The present [µs UTC].
    is_open : bool
        Whether the shop is open; closed, everything but "too hot" waits.
    quiet : bool, optional
        Quiet hours of the settings: nothing sounds but "too hot".
    summary : bool, optional
        After an absence or at opening: all in one.

    Notes
    -----
    What waits in a closed shop is told by the morning summary. What the budget folds is one
    annunciation "N more, see the board" at most in ten minutes, which counts itself.
    """
    said: list[Wanted] = []
    silent: list[Wanted] = []
    just_told = {one.group for one in told if one.at_us > now_us - GROUP_US}
    for one in wanted:
        nature = NATURE[one.kind]
        speaks = is_open or one.kind is Kind.TOO_HOT
        # What belongs to something told just now is told together with what else comes.
        waits = one.group in just_told and not nature.never_folded
        (said if speaks and not waits else silent).append(one)
    if not said:
        return [], silent
    groups = _grouped(said)
    alone = [group for group in groups if NATURE[group[0].kind].never_folded]
    others = [group for group in groups if not NATURE[group[0].kind].never_folded]
    plans: list[tuple[list[Wanted], bool, bool]] = [(group, False, False) for group in alone]
    if summary and len(groups) > 1:
        everything = sorted((one for group in groups for one in group), key=lambda one: one.due_us)
        plans, others = [], [everything]
    recent = [one for one in told if one.at_us > now_us - WINDOW_US and one.counted]
    lower = sum(one.sort is not Sort.ALARM for one in recent)
    alarms = len(recent) - lower
    folded: list[Wanted] = []
    for group in others:
        kinds = {one.kind for one in group}
        alarm = any(NATURE[kind].sort is Sort.ALARM for kind in kinds)
        room = BUDGET + (ALARM_BUDGET if alarm else 0) - lower - alarms
        must = any(NATURE[kind].never_folded for kind in kinds)
        # The last place of the lower classes is kept for "N more, see the board".
        last = group is others[-1] and not folded
        if must or room > (0 if alarm else 1) or (room == 1 and last):
            plans.append((group, False, summary and len(groups) > 1))
            alarms, lower = alarms + (alarm and not must), lower + (not alarm)
        else:
            folded += group
    if folded and lower + alarms < BUDGET:
        plans.append((folded, True, False))
        folded = []
    return _with_sounds(plans, told, now_us, quiet=quiet), silent + folded


def _grouped(wanted: list[Wanted]) -> list[list[Wanted]]:
    """Return what is told together, the most pressing group first."""
    groups: dict[tuple[str, Kind], list[Wanted]] = {}
    for one in sorted(wanted, key=lambda one: one.due_us):
        groups.setdefault((one.group, one.kind), []).append(one)
    return sorted(groups.values(), key=lambda group: (rank(group[0].kind), group[0].due_us))


def _with_sounds(
    plans: list[tuple[list[Wanted], bool, bool]],
    told: Sequence[Told],
    now_us: Instant,
    *,
    quiet: bool,
) -> list[Annunciation]:
    """Give the first the sound, if one may be made; an alarm may break the pause once."""
    recent = [one for one in told if one.sounded and one.at_us > now_us - SOUND_US]
    free = not recent
    may_break = not any(one.sort is Sort.ALARM for one in recent)
    result = []
    for alerts, folded, summary in plans:
        kind = min((one.kind for one in alerts), key=rank)
        alarm = NATURE[kind].sort is Sort.ALARM
        sounds = (free or (alarm and may_break)) and not folded
        if quiet and kind is not Kind.TOO_HOT:
            sounds = False
        if sounds:
            free = False
            may_break = may_break and not alarm
        result.append(Annunciation(tuple(alerts), kind, sounds, folded, summary))
    return result
