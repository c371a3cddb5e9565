"""The curve of a joint as a picture needs it: conversion at chosen instants."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from rackboard.core.cure.calibration import CureModel
from rackboard.core.cure.record import Stretch, clip
from rackboard.core.cure.run import Run, Track, Tracks
from rackboard.core.instants import Instant

_TOP = 0.985  # a picture needs no more


class Sample(NamedTuple):
    """Conversion on the expected and on the late curve at an instant."""

    at_us: Instant
    expected: float
    late: float


class Profile:
    """The expected curve and the late one of full cure; there is no early one to draw.

    Parameters
    ----------
    model : CureModel
        Of the batch's sheet.
    """

    __slots__ = ("expected", "late")

    def __init__(self, model: CureModel) -> None:
        self.expected = Track(model.expected(), (_TOP,), model.n)
        self.late = Track(model.late(model.sheet.full_cure_time_h), (_TOP,), model.n)

    @property
    def tracks(self) -> Tracks:
        """The tracks that follow the expected, the late and the early temperature."""
        return (self.expected,), (self.late,), ()

    def copy(self) -> Profile:
        """Return an independent copy."""
        twin = object.__new__(Profile)
        twin.expected, twin.late = self.expected.copy(), self.late.copy()
        return twin


def sample(
    run: Run[Profile], stretches: Iterable[Stretch], every_us: int, end_us: Instant
) -> list[Sample]:
    """Advance a run and return its curve.

    Parameters
    ----------
    run : Run of Profile
        At the start of the stretches; it is advanced.
    stretches : iterable of Stretch
        Of air, in order.
    every_us : int
        Distance of the samples [µs].
    end_us : int
        Where to stop [µs UTC].
    """
    samples = [Sample(run.now_us, run.curves.expected.value, run.curves.late.value)]
    for stretch in stretches:
        if run.now_us >= samples[-1].at_us + every_us:  # away meanwhile: the curve lay still
            curves = run.curves
            samples.append(Sample(run.now_us, curves.expected.value, curves.late.value))
        while run.now_us < min(stretch.end_us, end_us):  # cut at the samples
            part = clip(stretch, run.now_us, min(samples[-1].at_us + every_us, end_us))
            if part is None:
                break
            run.advance(part)
            if run.now_us >= min(samples[-1].at_us + every_us, end_us):
                curves = run.curves
                samples.append(Sample(run.now_us, curves.expected.value, curves.late.value))
        if run.now_us >= end_us:
            break
    return samples
