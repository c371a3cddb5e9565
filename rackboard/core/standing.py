"""What a joint may bear at an instant: its word, its times, its place on the way to hard."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from rackboard.core.bench import Batch, Club, Grant, Hold, Job, Joint, Milestone, Release, Stay
from rackboard.core.cure.forecast import Bounds, Forecast, printed_time
from rackboard.core.instants import Instant
from rackboard.core.words import Word

WET_END, STILL_END, FIRM_END = 0.22, 0.58, 0.92
"""Where the working life, handling and full cure lie on the way from mixed to hard."""


class Outcome(NamedTuple):
    """A forecast as far as the record goes.

    `record_end_us` is up to where stored readings settle it; `unknown_us` since when nobody
    knows how cold it is, where that matters. `use_by_us` is the earlier early bound of the
    batch's working life and the joint's own.
    """

    forecast: Forecast
    use_by_us: Instant | None
    record_end_us: Instant
    unknown_us: Instant | None


class Standing(NamedTuple):
    """One joint on the board.

    Attributes
    ----------
    joint, club, job, batch, stay
        What it is and where it lies; `stay` is None if the club lies nowhere.
    word, base : Word
        What is shown, and what it is without a HOLD. WAIT until mixed times are known.
    since_us : int or None
        Since when the base word holds [µs UTC].
    milestone : Milestone or None
        The next permission; None when there is none left.
    not_before_us, probably_us : int or None
        Its printed time and its expected instant; None: no time, or not known.
    use_by_us : int or None
        End of the working life.
    unknown : bool
        Nobody knows how cold it got: the time reads "low?".
    asked : bool
        The printed time is there, the record isn't: the tile asks for the temperature.
    cold : bool
        The zone's air is below what the sheet asks for.
    hold : Hold or None
        The open HOLD.
    position : float
        On the way from mixed (0) to hard (1).
    probably_at, not_before_at : float or None
        The two times on the same way.
    outcome : Outcome or None
        None while it isn't worked out yet.
    released : Release or None
        A person's word that stands in place of the time: "released KT". None on HOLD, and
        once the board gives the permission itself.
    """

    joint: Joint
    club: Club
    job: Job
    batch: Batch
    stay: Stay | None
    word: Word
    base: Word
    since_us: Instant | None
    milestone: Milestone | None
    not_before_us: Instant | None
    probably_us: Instant | None
    use_by_us: Instant | None
    unknown: bool
    asked: bool
    cold: bool
    hold: Hold | None
    position: float
    probably_at: float | None
    not_before_at: float | None
    outcome: Outcome | None
    released: Release | None = None

    @property
    def laid_out(self) -> bool:
        """Whether the joint waits for its batch to be mixed."""
        return self.batch.mixed_us is None

    @property
    def no_time(self) -> bool:
        """Whether no time can be given within 60 days."""
        return self.outcome is not None and self.milestone is not None and (
            self.not_before_us is None and not self.unknown
        )  # fmt: skip


def stand(
    joint: Joint,
    club: Club,
    job: Job,
    batch: Batch,
    stay: Stay | None,
    *,
    grants: dict[Milestone, Grant],
    hold: Hold | None,
    outcome: Outcome | None,
    cold: bool,
    now: Instant,
    releases: Sequence[Release] = (),
) -> Standing:
    """Return what a joint may bear now.

    `grants` are those that hold; `cold` is said of the zone's air. Permissions come from
    grants alone: a forecast never makes one, and a person's release changes no word.
    """
    handling = grants.get(Milestone.HANDLING)
    full = grants.get(Milestone.FULL_CURE)
    use_by = outcome.use_by_us if outcome else None
    stepwise = batch.sheet.handling_time_h is not None
    milestone: Milestone | None = Milestone.HANDLING if stepwise else Milestone.FULL_CURE
    since: Instant | None = batch.mixed_us
    if full is not None:
        base, milestone, since = Word.CURED, None, full.printed_us
    elif handling is not None:
        base, milestone, since = Word.BENCH, Milestone.FULL_CURE, handling.printed_us
    elif batch.mixed_us is not None and use_by is not None and now < use_by:
        base = Word.WET
    else:
        base, since = Word.WAIT, use_by
    bounds = _bounds(outcome, milestone)
    unknown = asked = False
    printed = probably = None
    if outcome is not None and bounds is not None:
        probably = bounds.expected
        printed = None if bounds.late is None else printed_time(bounds.late)
        settled = bounds.late is not None and bounds.late <= outcome.record_end_us
        gap = outcome.forecast.gap_us
        unknown = (gap is not None and (bounds.late is None or bounds.late > gap)) or (
            outcome.unknown_us is not None and not settled
        )
        asked = not unknown and not settled and printed is not None and now >= printed
        if unknown:
            printed = None
    way = _way(batch, outcome)
    position = 1.0 if base is Word.CURED else _along(way, now, Word.BENCH if handling else base)
    return Standing(
        joint, club, job, batch, stay,
        Word.HOLD if hold else base, base, since, milestone, printed, probably, use_by,
        unknown, asked, cold and base in (Word.WAIT, Word.BENCH), hold, position,
        _at(way, probably), _at(way, bounds.late if bounds and printed else None), outcome,
        None if hold else _released(releases, grants),
    )  # fmt: skip


def expected_at(standing: Standing, milestone: Milestone) -> Instant | None:
    """Return when a permission is expected, before which a release is a danger [µs UTC].

    None on HOLD, while a gap in the record leaves it open, and before it is worked out.
    """
    if standing.hold is not None or standing.outcome is None or standing.unknown:
        return None
    bounds = _bounds(standing.outcome, milestone)
    return None if bounds is None else bounds.expected


def _released(
    releases: Sequence[Release], grants: dict[Milestone, Grant]
) -> Release | None:
    """Return the last release that no permission of the board has come after."""
    standing = None
    for release in releases:
        later = grants.get(Milestone.FULL_CURE) or grants.get(release.milestone)
        if later is None or later.given_us < release.at_us:
            standing = release
    return standing


def _bounds(outcome: Outcome | None, milestone: Milestone | None) -> Bounds | None:
    if outcome is None or milestone is None:
        return None
    forecast = outcome.forecast
    return forecast.handling if milestone is Milestone.HANDLING else forecast.full_cure


def _way(batch: Batch, outcome: Outcome | None) -> list[tuple[Instant, float]]:
    """Return instants along the way from mixed to hard, as far as they are known."""
    if batch.mixed_us is None:
        return []
    way = [(batch.mixed_us, 0.0)]
    if outcome is None:
        return way
    forecast = outcome.forecast
    handling = forecast.handling.late if forecast.handling else None
    full = forecast.full_cure.late or forecast.full_cure.expected
    if handling is None and forecast.handling is not None:
        handling = forecast.handling.expected
    for instant, at in ((outcome.use_by_us, WET_END), (handling, STILL_END), (full, FIRM_END)):
        if instant is not None and instant > way[-1][0]:
            way.append((instant, at))
    return way


def _at(way: list[tuple[Instant, float]], instant: Instant | None) -> float | None:
    """Return where an instant lies on the way, None if the way doesn't reach so far."""
    if instant is None:
        return None
    for (t0, u0), (t1, u1) in pairwise(way):
        if instant <= t1:
            return u0 + (u1 - u0) * max(0.0, (instant - t0) / (t1 - t0))
    return None


_SPANS = {
    Word.WET: (0.0, WET_END),
    Word.WAIT: (WET_END, STILL_END),
    Word.BENCH: (STILL_END, FIRM_END),
}


def _along(way: list[tuple[Instant, float]], now: Instant, base: Word) -> float:
    """Return where now lies, but never outside the stretch that the word stands for."""
    low, high = _SPANS[base]
    at = _at(way, now)
    if at is None:
        at = high if len(way) > 1 else low
    return min(max(at, low), high - 0.01)
