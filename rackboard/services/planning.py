"""Before anything is mixed: how long the batch lasts, and what may be promised of it.

The times are those of a joint glued now, by the zones' outlook; the board's own times, once
it is mixed, follow the record.
"""

from __future__ import annotations

from collections.abc import Iterable
from enum import Enum
from typing import NamedTuple

from rackboard.core.bench import JointKind
from rackboard.core.cure.calibration import CureModel
from rackboard.core.cure.forecast import (
    complete,
    forecast_record,
    life_bounds,
    milestones,
    printed_time,
)
from rackboard.core.cure.kinetics import kelvin
from rackboard.core.cure.record import TYPED_HOLD_US, Point
from rackboard.core.cure.run import HORIZON_US, Bond, Curves, Life, Run
from rackboard.core.instants import MINUTE_US, Instant
from rackboard.services.bench import LAG_S
from rackboard.services.climate import ZoneRecord
from rackboard.services.curing import COLD_PARTS_U_K

CLUB_MIN = 2.5
"""Coating, seating and racking one club takes about so long [min, decision]."""
LOOK_MIN = 5.0
"""The last look at a batch takes about so long [min, decision]."""
LOOK_FROM_MIN = 10.0
"""In a shorter working life there is no time for a last look of its own [min, decision]."""
_ROUND_US = 5 * MINUTE_US


class BatchPlan(NamedTuple):
    """What a batch mixed now would give.

    Attributes
    ----------
    mixed_us : int
        When it would be mixed [µs UTC].
    use_by_us : int or None
        Early bound of its working life; None: not within 60 days.
    needed_us : int
        Time for the clubs and the last look [µs].
    tight : bool
        The clubs and the last look take longer than the early working life.
    most_clubs : int
        So many clubs fit into it.
    """

    mixed_us: Instant
    use_by_us: Instant | None
    needed_us: int
    tight: bool
    most_clubs: int

    @property
    def share(self) -> float:
        """The time needed as a share of the working life, at most 1."""
        if self.use_by_us is None:
            return 0.0
        return min(1.0, self.needed_us / max(self.use_by_us - self.mixed_us, 1))

    @property
    def shown_use_by_us(self) -> Instant | None:
        """The use-by time as it is said: a limit, so down to full 5 min, but after mixing."""
        if self.use_by_us is None:
            return None
        shown = self.use_by_us // _ROUND_US * _ROUND_US
        return shown if shown > self.mixed_us else self.use_by_us // MINUTE_US * MINUTE_US


class Permissions(NamedTuple):
    """Printed "not before" times of a joint glued now [µs UTC]; None: no time.

    `stepwise`: the sheet gives a handling time.
    """

    off_rack_us: Instant | None
    safe_us: Instant | None
    stepwise: bool


def needed_us(clubs: int, life_us: int) -> int:
    """Return the time that so many clubs take in a working life [µs], the last look included.

    Examples
    --------
    >>> needed_us(8, 38 * MINUTE_US) / MINUTE_US, needed_us(1, 6 * MINUTE_US) / MINUTE_US
    (25.0, 2.5)
    """
    return round(CLUB_MIN * clubs * MINUTE_US) + _look_us(life_us)


def _look_us(life_us: int) -> int:
    return round(LOOK_MIN * MINUTE_US) if life_us >= LOOK_FROM_MIN * MINUTE_US else 0


def is_known(record: ZoneRecord | None, now_us: Instant) -> bool:
    """Return whether a zone's temperature is known well enough to plan by: from the last 4 h."""
    return record is not None and record.last is not None and (
        record.last.at_us >= now_us - TYPED_HOLD_US
    )  # fmt: skip


def plan_batch(model: CureModel, cup: ZoneRecord, now_us: Instant, clubs: int) -> BatchPlan:
    """Return what a batch mixed now would give.

    Parameters
    ----------
    model : CureModel
        Of the epoxy's sheet.
    cup : ZoneRecord
        Of the air that the batch stands in.
    now_us : int
        When it would be mixed [µs UTC].
    clubs : int
        How many are to be glued with it.
    """
    run = Run(Life(model), now_us)
    _look_ahead(run, cup)
    early = life_bounds(run.curves, now_us).early
    if early is None:
        return BatchPlan(now_us, None, needed_us(clubs, HORIZON_US), False, clubs)
    life = early - now_us
    need = needed_us(clubs, life)
    fit = (life - _look_us(life)) // round(CLUB_MIN * MINUTE_US)
    return BatchPlan(now_us, early, need, need > life, fit)


def plan_joint(
    model: CureModel,
    record: ZoneRecord,
    now_us: Instant,
    kind: JointKind,
    parts_mc: int | None = None,
) -> Permissions:
    """Return the permissions of a joint that is glued now and stays in a zone.

    Parameters
    ----------
    model : CureModel
        Of the epoxy's sheet.
    record : ZoneRecord
        Of the zone.
    now_us : int
        When it would be mixed and glued [µs UTC].
    kind : JointKind
        Sets the lag.
    parts_mc : int, optional
        Temperature of parts that were brought in cold [m°C].
    """
    run = Run(Bond(model), now_us)
    start = None
    if parts_mc is not None:
        parts_k = kelvin(parts_mc / 1000)
        start = (parts_k, parts_k - COLD_PARTS_U_K, parts_k + COLD_PARTS_U_K)
    run.glue(start, float(LAG_S[kind]))
    _look_ahead(run, record)
    forecast = milestones(run)
    handling = None if forecast.handling is None else _printed(forecast.handling.late)
    return Permissions(
        handling, _printed(forecast.full_cure.late), model.sheet.handling_time_h is not None
    )


class Late(Enum):
    """Why a joint glued now isn't safe by the time promised."""

    COLD = "colder than the epoxy can take"
    NIGHT = "it would do at today's temperature, but nights are colder"
    COOL = "cooler than the sheet's temperature"
    EPOXY = "the epoxy takes so long"


def why_late(
    model: CureModel, record: ZoneRecord, now_us: Instant, kind: JointKind, promised_us: Instant
) -> Late:
    """Return why a joint that is glued now is not safe to hit by then.

    Parameters
    ----------
    model, record, now_us, kind
        As in `plan_joint`.
    promised_us : int
        When the club is promised for [µs UTC].
    """
    last = record.last
    if last is None or last.temperature_mc < model.sheet.minimum_c * 1000:
        return Late.COLD
    held = _held(model, last._replace(at_us=now_us), kind)
    if held is None:
        return Late.COLD
    if held <= promised_us:
        return Late.NIGHT
    label_mc = round(model.sheet.reference_c * 1000)
    label = _held(model, Point(now_us, label_mc, 0, last.source), kind)
    return Late.COOL if label is not None and label <= promised_us else Late.EPOXY


def _held(model: CureModel, point: Point, kind: JointKind) -> Instant | None:
    """Return when it would be safe to hit if one temperature held [µs UTC]."""
    found = forecast_record(model, [point], point.at_us, lag_s=float(LAG_S[kind]))
    return _printed(found.full_cure.late)


def slowest_kind(kinds: Iterable[JointKind]) -> JointKind:
    """Return the kind that follows the air last."""
    return max(kinds, key=lambda kind: (LAG_S[kind], kind))


def shares(clubs: int, most_clubs: int) -> tuple[int, ...]:
    """Return how clubs that don't fit into one batch are shared between batches.

    Two at least; empty if not even one club fits into a batch.

    Examples
    --------
    >>> shares(7, 6), shares(8, 2), shares(8, 0)
    ((4, 3), (2, 2, 2, 2), ())
    """
    if most_clubs < 1 or clubs < 2:
        return ()
    batches = max(-(-clubs // most_clubs), 2)
    least, more = divmod(clubs, batches)
    return (least + 1,) * more + (least,) * (batches - more)


def _printed(late_us: Instant | None) -> Instant | None:
    return None if late_us is None else printed_time(late_us)


def _look_ahead(run: Run[Curves], record: ZoneRecord) -> None:
    horizon = run.mixed_us + HORIZON_US
    complete(run, record.settled(run.now_us, horizon))
    complete(run, record.ahead(run.now_us, horizon))
