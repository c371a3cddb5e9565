"""One joint in full: its curve, its air, the three times that explain each other, its record."""

from __future__ import annotations

from bisect import bisect_right
from typing import NamedTuple
from weakref import WeakKeyDictionary

from rackboard.core.bench import Batch, Event, Grant, Hold, Joint, Stay
from rackboard.core.cure.kinetics import ALPHA_FULL, ALPHA_HANDLING, ZERO_CELSIUS_K
from rackboard.core.cure.profile import Sample
from rackboard.core.cure.record import Stretch
from rackboard.core.instants import DAY_US, HOUR_US, MINUTE_US, Instant
from rackboard.core.standing import Outcome, Standing
from rackboard.services.board import Board
from rackboard.services.curing import trace
from rackboard.store import Store
from rackboard.store.journal import Former

_SAMPLES = 160
_LEAST_US = 6 * HOUR_US
_MOST_US = 14 * DAY_US
_EVENTS = 500
_LAST: WeakKeyDictionary[Board, tuple[tuple[object, ...], Portrait]] = WeakKeyDictionary()
"""The picture that a board was asked for last: card, table and sheet of one joint share it."""


class Portrait(NamedTuple):
    """A joint's curve and what it is made from; conversions of 0…1, temperatures in °C.

    Attributes
    ----------
    start_us, end_us : int
        The span of the picture [µs UTC].
    samples : list of Sample
        The expected and the late curve.
    air : list of Stretch
        What the joint's air was and is reckoned to be.
    record_end_us : int
        Where the record ends and the outlook begins.
    handling, full : float
        The levels of the two permissions.
    label_handling_us, label_full_us : int or None
        When the sheet's label would have it handled and hit.
    outcome : Outcome
        What its record and outlook come to; a joint that is cured has none on the board.
    """

    start_us: Instant
    end_us: Instant
    samples: list[Sample]
    air: list[Stretch]
    record_end_us: Instant
    handling: float
    full: float
    label_handling_us: Instant | None
    label_full_us: Instant
    outcome: Outcome

    def conversion(self, instant: Instant) -> tuple[float, float]:
        """Return the expected and the late conversion at an instant [µs UTC], 0…1."""
        samples = self.samples
        if not samples:
            return 0.0, 0.0
        after = bisect_right(samples, instant, key=_sampled)
        if after == 0 or after == len(samples):
            end = samples[0] if after == 0 else samples[-1]
            return end.expected, min(end.late, end.expected)
        a, b = samples[after - 1], samples[after]
        share = (instant - a.at_us) / (b.at_us - a.at_us)
        expected = a.expected + share * (b.expected - a.expected)
        return expected, min(a.late + share * (b.late - a.late), expected)

    def air_at(self, instant: Instant) -> tuple[float | None, bool]:
        """Return the air at an instant [°C] and whether it is reckoned, not read.

        None: there is no record of it.
        """
        for stretch in self.air:
            if stretch.start_us <= instant <= stretch.end_us:
                if stretch.gap:
                    return None, False
                span = stretch.end_us - stretch.start_us
                share = (instant - stretch.start_us) / span if span else 0.0
                first, last = stretch.expected
                temp_c = celsius(first + share * (last - first))
                return temp_c, stretch.end_us > self.record_end_us
        return None, False


class JointRecord(NamedTuple):
    """All that is on record of a joint, in order of time.

    Attributes
    ----------
    stays : list of Stay
        Of its club.
    holds, grants : list
        Ended and withdrawn ones too.
    events : list of Event
        Of the joint, its batch, club and job, and the lows that were said for its air.
    former : list of Former
        Corrected values of all of them.
    others : list of Joint
        What else was ever glued at this club.
    batches : dict
        Of those, by id.
    """

    stays: list[Stay]
    holds: list[Hold]
    grants: list[Grant]
    events: list[Event]
    former: list[Former]
    others: list[Joint]
    batches: dict[int, Batch]


def portrait(board: Board, standing: Standing) -> Portrait | None:
    """Return a joint's picture; None before it is mixed or reckoned."""
    found = board.state_of(standing) if board.reckoned else None
    way = board.way_of(standing)
    if found is None or way is None:
        return None
    state, records = found
    if not any(record.points for record in records.values()):
        return None
    outcome = standing.outcome or state.outcome
    assert outcome is not None
    mixed = way.mixed_us
    now = board.ticked_us
    full = outcome.forecast.full_cure
    # What is cured long since needs no picture of the weeks on the shelf after it.
    seen = full.late if standing.milestone is None and full.late is not None else now
    ends = [t for t in (full.late or full.expected, full.expected, seen) if t is not None]
    last = way.windows[-1].to_us
    end = max(*ends, mixed + _LEAST_US)
    end = min(mixed + (end - mixed) * 106 // 100, mixed + _MOST_US)
    if last is not None:
        end = min(end, max(last, mixed + MINUTE_US))
    key = (
        way, outcome, end, board.snapshot,
        *((zone, record.revision, len(record.points)) for zone, record in records.items()),
    )  # fmt: skip
    last_key, kept = _LAST.get(board, ((), None))
    if kept is not None and last_key == key:
        return kept
    samples, air = trace(way, state.model, records, max((end - mixed) // _SAMPLES, 1), end)
    sheet = state.model.sheet
    label = None
    if sheet.handling_time_h is not None:
        label = mixed + round(sheet.handling_time_h.long * HOUR_US)
    made = Portrait(
        mixed, end, samples, air, outcome.record_end_us, ALPHA_HANDLING, ALPHA_FULL, label,
        mixed + round(sheet.full_cure_time_h.long * HOUR_US), outcome,
    )  # fmt: skip
    _LAST[board] = key, made
    return made


def joint_record(store: Store, board: Board, standing: Standing) -> JointRecord:
    """Return what is on record of a joint.

    Parameters
    ----------
    store : Store
        The data file.
    board : Board
        Of the moment.
    standing : Standing
        The joint.
    """
    joint, club, batch, job = standing.joint, standing.club, standing.batch, standing.job
    journal = store.journal
    stays = store.work.stays([club.id])
    events = []
    for subject, number in (
        ("joint", joint.id), ("batch", batch.id), ("club", club.id), ("job", job.id),
    ):  # fmt: skip
        events += journal.events(_EVENTS, subject=subject, subject_id=number)
    former = []
    for table, number in (
        ("joint", joint.id), ("batch", batch.id), ("club", club.id), ("job", job.id),
        *(("stay", stay.id) for stay in stays),
    ):  # fmt: skip
        former += journal.former(table, number)
    events += _lows(store, board, standing)
    others = [other for other in store.work.joints(club_ids=[club.id]) if other.id != joint.id]
    batches = store.work.batches({o.batch_id for o in others if o.batch_id is not None})
    return JointRecord(
        stays, journal.holds([joint.id]), journal.grants([joint.id]),
        sorted(events, key=_happened), sorted(former, key=_changed), others,
        {batch.id: batch for batch in batches},
    )  # fmt: skip


def _lows(store: Store, board: Board, standing: Standing) -> list[Event]:
    """Return the answers about nights that the joint went through."""
    way = board.way_of(standing)
    if way is None:
        return []
    said = store.journal.events(_EVENTS, kinds=["low said"], from_us=way.mixed_us)
    return [
        event for event in said
        if any(
            window.zone_id == event.subject_id
            and _number(event.data.get("to_us"), event.at_us) > window.from_us
            and (window.to_us is None
                 or _number(event.data.get("from_us"), event.at_us) < window.to_us)
            for window in way.windows
        )
    ]  # fmt: skip


def _number(value: object, otherwise: int) -> int:
    return value if isinstance(value, int) else otherwise


def _sampled(sample: Sample) -> Instant:
    return sample.at_us


def _happened(event: Event) -> tuple[Instant, int]:
    return event.at_us, event.id


def _changed(former: Former) -> Instant:
    return former.changed_us


def celsius(temp_k: float) -> float:
    """Return a temperature in °C."""
    return temp_k - ZERO_CELSIUS_K
