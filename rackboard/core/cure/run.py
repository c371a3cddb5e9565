"""A joint on its way from wet to hard: the running state of all its curves.

A run is advanced stretch by stretch and never looks back. Over closed stretches it keeps its
state; what lies after the last reading is reckoned on a copy. The steps depend on the stretch
and the state at its start alone, so going on and starting anew agree to the bit.
"""

from __future__ import annotations

from math import ceil
from typing import Generic, Protocol, Self, TypeVar

from rackboard.core.cure.calibration import CureModel
from rackboard.core.cure.kinetics import (
    ALPHA_FULL,
    ALPHA_GEL,
    ALPHA_HANDLING,
    Pace,
    Piece,
    Terms,
    age_step,
    conversion_step,
    joint_pieces,
    lagged,
    split_at_kinks,
    steps_for,
)
from rackboard.core.cure.record import Stretch
from rackboard.core.instants import DAY_US, SECOND_US, Instant

HORIZON_US = 60 * DAY_US
"""A milestone later than this after mixing is not foretold [decision]."""

_SURE_S = 1e-6  # an instant is a whole microsecond
_MOST_GUESSES = 60

Tracks = tuple[tuple["Track", ...], tuple["Track", ...], tuple["Track", ...]]
"""Those that follow the expected, the late and the early temperature."""


class HasTracks(Protocol):
    """Curves that a run can take along."""

    @property
    def tracks(self) -> Tracks:
        """The tracks that follow the expected, the late and the early temperature."""

    def copy(self) -> Self:
        """Return an independent copy."""


Curves = TypeVar("Curves", bound=HasTracks)


class Track:
    """One curve of a joint: its pace, how far it is, and when it reached its targets.

    Parameters
    ----------
    pace : Pace
        How temperature turns into speed.
    targets : tuple of float
        Ascending conversions, or equivalent ages [s].
    order : float or None
        Reaction order n; None: the track is a plain equivalent age.
    """

    __slots__ = ("order", "pace", "reached_us", "targets", "value")

    def __init__(self, pace: Pace, targets: tuple[float, ...], order: float | None) -> None:
        self.pace = pace
        self.targets = targets
        self.order = order
        self.value = 0.0
        self.reached_us: tuple[Instant, ...] = ()

    @property
    def done(self) -> bool:
        """Whether every target is reached; a done track isn't advanced any more."""
        return len(self.reached_us) == len(self.targets)

    def copy(self) -> Track:
        """Return an independent copy."""
        twin = Track(self.pace, self.targets, self.order)
        twin.value, twin.reached_us = self.value, self.reached_us
        return twin

    def advance(self, start_us: Instant, piece: Piece) -> None:
        """Go on over one straight piece of joint temperature.

        Parameters
        ----------
        start_us : int
            When the piece begins [µs UTC].
        piece : tuple of float
            Duration [s], first and last temperature [K].
        """
        h, t0, t1 = piece
        low, high = (t0, t1) if t0 < t1 else (t1, t0)
        for kink in self.pace.kinks_k:
            if low < kink < high:
                break
        else:  # the usual case, and the one that has to be fast
            self._straight(start_us, 0.0, h, t0, t1)
            return
        t = 0.0
        for part in split_at_kinks(piece, self.pace.kinks_k):
            if self.done:
                return
            self._straight(start_us, t, *part)
            t += part[0]

    def _straight(self, start_us: Instant, t: float, h: float, t0: float, t1: float) -> None:
        dt = t1 - t0
        terms = self.pace.terms(t0 + dt / 2)
        order = self.order
        if order is None:
            count = max(1, ceil(abs(dt)))
        else:
            count = steps_for(h, terms, dt, self.value)
            if count == 1:
                value = conversion_step(self.value, h, terms, dt, order)
                if value < self.targets[len(self.reached_us)]:
                    self.value = value
                    return
        h /= count
        dt /= count
        target = self.targets[len(self.reached_us)]
        for i in range(count):
            if dt and count > 1:
                terms = self.pace.terms(t0 + (i + 0.5) * dt)
            if order is None:
                value = age_step(self.value, h, terms, dt)
            else:
                value = conversion_step(self.value, h, terms, dt, order)
            if value >= target:
                self._reach(start_us, t + i * h, h, t0 + i * dt, dt, value)
                if self.done:
                    return
                target = self.targets[len(self.reached_us)]
            self.value = value

    def _reach(
        self, start_us: Instant, t: float, h: float, t0: float, dt: float, after: float
    ) -> None:
        """Find when within one step, which ends at `after`, the targets were reached."""
        while after >= self.targets[len(self.reached_us)]:
            target = self.targets[len(self.reached_us)]
            seconds = t + self._when(target, h, t0, dt, after)
            self.reached_us += (start_us + round(seconds * SECOND_US),)
            if self.done:
                self.value = target
                return

    def _when(self, target: float, h: float, t0: float, dt: float, after: float) -> float:
        """Return when within one step a target is reached [s], by the Illinois method."""
        low, high = 0.0, h
        f_low, f_high = self.value - target, after - target
        if f_low >= 0:
            return 0.0
        guess, side = h, 0
        for _ in range(_MOST_GUESSES):
            before = guess
            guess = high - f_high * (high - low) / (f_high - f_low)
            if abs(guess - before) < _SURE_S:
                break
            part = dt * guess / h
            f = self._step(self.value, guess, self.pace.terms(t0 + part / 2), part) - target
            if f < 0:
                low, f_low = guess, f
                f_high /= 2 if side < 0 else 1
                side = -1
            else:
                high, f_high = guess, f
                f_low /= 2 if side > 0 else 1
                side = 1
        return guess

    def _step(self, value: float, h: float, terms: Terms, dt: float) -> float:
        if self.order is None:
            return age_step(value, h, terms, dt)
        return conversion_step(value, h, terms, dt, self.order)


class Life:
    """The working life of a batch, or of a joint by itself: an equivalent age.

    Parameters
    ----------
    model : CureModel
        Of the batch's sheet.
    """

    __slots__ = ("early", "expected", "late")

    def __init__(self, model: CureModel) -> None:
        life = model.sheet.working_life_min
        early, expected, late = model.ages()
        self.early = Track(early, (life.short * 60,), None)
        self.expected = Track(expected, (life.middle * 60,), None)
        self.late = Track(late, (life.long * 60,), None)

    @property
    def tracks(self) -> Tracks:
        """The tracks that follow the expected, the late and the early temperature."""
        return (self.expected,), (self.late,), (self.early,)

    def copy(self) -> Life:
        """Return an independent copy."""
        twin = object.__new__(Life)
        twin.early, twin.expected = self.early.copy(), self.expected.copy()
        twin.late = self.late.copy()
        return twin


class Bond:
    """The curves of one joint's conversion, and its own working life.

    Parameters
    ----------
    model : CureModel
        Of the batch's sheet.
    early_permissions : bool, optional
        Also follow the early bounds of the two permissions. Nobody at the bench is shown
        them, so the board doesn't; the early bound of gel it always has.
    """

    __slots__ = ("early_full", "early_handling", "expected", "late_full", "late_handling", "life")

    def __init__(self, model: CureModel, *, early_permissions: bool = False) -> None:
        n = model.n
        handling, full = model.sheet.handling_time_h, model.sheet.full_cure_time_h
        goals = (ALPHA_HANDLING, ALPHA_FULL) if handling else (ALPHA_FULL,)
        self.expected = Track(model.expected(), goals, n)
        self.late_full = Track(model.late(full), (ALPHA_FULL,), n)
        self.early_full: Track | None = None
        self.late_handling: Track | None = None
        if handling:
            self.late_handling = Track(model.late(handling), (ALPHA_HANDLING,), n)
        early = (ALPHA_GEL, *goals[:1]) if early_permissions else (ALPHA_GEL,)
        self.early_handling = Track(model.early(handling or full), early, n)
        if early_permissions and handling:
            self.early_full = Track(model.early(full), (ALPHA_FULL,), n)
        self.life = Life(model)

    @property
    def tracks(self) -> Tracks:
        """The tracks that follow the expected, the late and the early temperature."""
        late = (self.late_full,) if self.late_handling is None else (
            self.late_handling, self.late_full)  # fmt: skip
        early = (self.early_handling,) if self.early_full is None else (
            self.early_handling, self.early_full)  # fmt: skip
        life = self.life
        return (self.expected, life.expected), (*late, life.late), (*early, life.early)

    def copy(self) -> Bond:
        """Return an independent copy."""
        twin = object.__new__(Bond)
        twin.expected, twin.life = self.expected.copy(), self.life.copy()
        twin.late_full, twin.early_handling = self.late_full.copy(), self.early_handling.copy()
        twin.late_handling = self.late_handling and self.late_handling.copy()
        twin.early_full = self.early_full and self.early_full.copy()
        return twin


class Run(Generic[Curves]):
    """Curves on their way through a temperature record.

    Parameters
    ----------
    curves : Life or Bond
        What is followed.
    mixed_us : int
        When the two parts met [µs UTC].
    """

    __slots__ = ("curves", "gap_us", "lag_s", "mixed_us", "now_us", "temps_k")

    def __init__(self, curves: Curves, mixed_us: Instant) -> None:
        self.curves = curves
        self.mixed_us = mixed_us
        self.now_us = mixed_us
        self.lag_s = 0.0
        self.temps_k: tuple[float, float, float] | None = None
        self.gap_us: Instant | None = None

    @property
    def done(self) -> bool:
        """Whether nothing is left to reach."""
        return all(track.done for line in self.curves.tracks for track in line)

    def copy(self) -> Run[Curves]:
        """Return an independent copy, for the way ahead."""
        twin = Run(self.curves.copy(), self.mixed_us)
        twin.now_us, twin.lag_s = self.now_us, self.lag_s
        twin.temps_k, twin.gap_us = self.temps_k, self.gap_us
        return twin

    def glue(self, temps_k: tuple[float, float, float] | None, lag_s: float) -> None:
        """Take the parts' start temperature: from here on the joint lags behind the air.

        Parameters
        ----------
        temps_k : tuple of float or None
            Expected, late and early start temperature of the parts [K]; None: as the air.
        lag_s : float
            First-order lag τ [s].
        """
        self.temps_k, self.lag_s = temps_k, lag_s

    def advance(self, stretch: Stretch) -> None:
        """Go on over one stretch of air, which begins where the last one ended."""
        start, end, expected, late, early, still, gap = stretch
        h = (end - start) / SECOND_US
        if gap and self.gap_us is None:
            self.gap_us = start
        temps = self.temps_k or (expected[0], late[0], early[0])
        ends = []
        for i, (line, air) in enumerate(
            zip(self.curves.tracks, (expected, late, early), strict=True)
        ):
            temp = temps[i]
            if still and i == 1:  # the late bound earns nothing, its joint keeps its warmth
                ends.append(temp)
                continue
            if self.lag_s <= 0:
                piece = (h, air[0], air[1])
                for track in line:
                    if not track.done:
                        track.advance(start, piece)
                ends.append(air[1])
                continue
            ends.append(lagged(temp, *air, h, self.lag_s, h))
            if all(track.done for track in line):
                continue
            at = 0.0
            for piece in joint_pieces(temp, *air, h, self.lag_s):
                when = start + round(at * SECOND_US)
                for track in line:
                    if not track.done:
                        track.advance(when, piece)
                at += piece[0]
        self.temps_k = None if self.lag_s <= 0 else (ends[0], ends[1], ends[2])
        self.now_us = end
