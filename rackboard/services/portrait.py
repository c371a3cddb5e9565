"""One joint in full: its curve, its air, and the three times that explain each other."""

from __future__ import annotations

from typing import NamedTuple

from rackboard.core.cure.kinetics import ALPHA_FULL, ALPHA_HANDLING, ZERO_CELSIUS_K
from rackboard.core.cure.profile import Sample
from rackboard.core.cure.record import Stretch
from rackboard.core.instants import DAY_US, HOUR_US, MINUTE_US, Instant
from rackboard.core.standing import Standing
from rackboard.services.board import Board
from rackboard.services.curing import trace

_SAMPLES = 160
_LEAST_US = 6 * HOUR_US
_MOST_US = 14 * DAY_US


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
    label_us : tuple of int or None
        When the sheet's label would have it handled and hit.
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


def portrait(board: Board, standing: Standing) -> Portrait | None:
    """Return a joint's picture; None before it is mixed or reckoned."""
    found = board.state_of(standing) if board.reckoned else None
    way = board.way_of(standing)
    if found is None or way is None:
        return None
    state, records = found
    if not any(record.points for record in records.values()):
        return None
    outcome = state.outcome
    assert outcome is not None
    mixed = way.mixed_us
    now = board.ticked_us
    full = outcome.forecast.full_cure
    ends = [t for t in (full.late or full.expected, full.expected, now) if t is not None]
    last = way.windows[-1].to_us
    end = max(*ends, mixed + _LEAST_US)
    end = min(mixed + (end - mixed) * 106 // 100, mixed + _MOST_US)
    if last is not None:
        end = min(end, max(last, mixed + MINUTE_US))
    samples, air = trace(way, state.model, records, max((end - mixed) // _SAMPLES, 1), end)
    sheet = state.model.sheet
    label = None
    if sheet.handling_time_h is not None:
        label = mixed + round(sheet.handling_time_h.long * HOUR_US)
    return Portrait(
        mixed, end, samples, air, outcome.record_end_us, ALPHA_HANDLING, ALPHA_FULL, label,
        mixed + round(sheet.full_cure_time_h.long * HOUR_US),
    )  # fmt: skip


def celsius(temp_k: float) -> float:
    """Return a temperature in °C."""
    return temp_k - ZERO_CELSIUS_K
