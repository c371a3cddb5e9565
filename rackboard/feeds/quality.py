"""A sensor's temperatures told apart from what a sensor sends when something is wrong with it."""

from __future__ import annotations

from itertools import pairwise
from statistics import median
from typing import TYPE_CHECKING

from rackboard.core.alerts.watch import missed_since
from rackboard.core.feed import Fault, FaultKind, FeedKind, Polled, Sample
from rackboard.core.instants import HOUR_US, MINUTE_US
from rackboard.core.temperature import (
    HIGHEST_MC,
    LOWEST_MC,
    POWER_ON_MC,
    Unit,
    format_temperature,
    is_power_on_value,
)
from rackboard.core.text import text

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from rackboard.core.feed import Feed
    from rackboard.core.instants import Instant
    from rackboard.core.text import Text

RANGE_MC = {
    FeedKind.CSV: (LOWEST_MC, HIGHEST_MC),
    FeedKind.ONE_WIRE: (-40_000, POWER_ON_MC),
    FeedKind.HWMON: (LOWEST_MC, HIGHEST_MC),
    FeedKind.IIO: (-40_000, POWER_ON_MC),
}
"""What a source of a kind can have measured in a shop [m°C, decision]."""
AHEAD_US = 5 * MINUTE_US
"""A logger's clock may be so far ahead of the board's [decision]."""
JUMP_MC = 20_000
"""Air changes by less from one sample to the next; more has to be said twice [m°C, decision]."""
NEAR_US = 15 * MINUTE_US
"""So far apart two samples still vouch for each other [decision]."""
NEAR_MC = 5_000
"""So near a power-on value its neighbours make it a temperature [m°C, decision]."""
FROZEN_US = 6 * HOUR_US
"""So long the same to the last digit is a sensor that no longer measures [decision]."""
FROZEN_SAMPLES = 12
FINE_MC = 100
"""Only a sensor that has shown steps so small can be called frozen [m°C, decision].

In six hours the air of a room or a controlled box moves by more than a tenth of a degree;
with steps of half a degree a quiet night may well show one figure.
"""
_INTERVALS = 9
_REMEMBERED = 1000


class Judge:
    """Takes in a source's samples one after the other, and says which are temperatures.

    Parameters
    ----------
    range_mc : tuple of (int, int)
        What the sensor can measure [m°C].
    began_us : int
        Since when it is listened to [µs UTC].
    recent : iterable of Sample
        The last ones that are on the record already, in order of time.
    """

    def __init__(
        self, range_mc: tuple[int, int], began_us: Instant, recent: Iterable[Sample] = ()
    ) -> None:
        self._low, self._high = range_mc
        self._began = began_us
        self._last: Sample | None = None
        self._held: Sample | None = None
        self._started: Sample | None = None
        self._step: int | None = None
        self._refused: dict[Instant, None] = {}
        self._same: tuple[Instant, int] = (began_us, 0)
        self._times: list[Instant] = []
        self._open: dict[FaultKind, Fault] = {}
        self._over: list[Fault] = []
        for sample in recent:
            if self._last is None or sample.at_us > self._last.at_us:
                self._keep(sample, [])
        self._over.clear()

    def judge(
        self, came: Sequence[Sample], now: Instant, *, excused: bool = False
    ) -> tuple[list[Sample], list[Fault]]:
        """Return the temperatures among new samples, and what is or was wrong.

        Parameters
        ----------
        came : sequence of Sample
            In the order in which they came.
        now : int
            The present [µs UTC].
        excused : bool
            Whether the source itself has said why nothing comes.

        Returns
        -------
        tuple of lists
            Samples to keep, which may include an earlier one that has now been confirmed;
            faults that hold, and those that came and went since the last call.
        """
        self._over = []
        kept: list[Sample] = []
        for sample in came:
            self._take(sample, now, kept)
        since = None
        if not excused and not (self._open.keys() - {FaultKind.LOST, FaultKind.FROZEN}):
            last = self._began if self._last is None else self._last.at_us
            since = missed_since(last, self._interval_us(), now)
        if since is not None:
            self._begin(FaultKind.LOST, text("Feed", "nothing new comes"), since)
        elif FaultKind.LOST in self._open:
            self._end(FaultKind.LOST, now if self._last is None else self._last.at_us)
        return kept, [*self._over, *self._open.values()]

    def _take(self, sample: Sample, now: Instant, kept: list[Sample]) -> None:
        at, mc = sample
        if at > now + AHEAD_US:
            said = text("Feed", "its clock is ahead: it sends times that are still to come")
            self._begin(FaultKind.AHEAD, said, now)
            return
        self._end(FaultKind.AHEAD, at)
        if not self._low <= mc <= self._high:
            said = text("Feed", "{came} is outside what it can measure, {low} to {high}").format(
                came=_shown(mc), low=_shown(self._low), high=_shown(self._high)
            )
            self._begin(FaultKind.OUT_OF_RANGE, said, at)
            return
        self._end(FaultKind.OUT_OF_RANGE, at)
        last = self._last
        if last is not None and at <= last.at_us:
            self._take_late(sample, last, kept)
            return
        if is_power_on_value(mc) and not _near(last, sample, NEAR_MC):
            self._started = sample
            self._refuse(sample)
            said = text("Feed", "{came} is what a sensor sends before it has measured")
            self._begin(FaultKind.POWER_ON, said.format(came=_shown(mc)), at)
            return
        if self._started is not None and _near(self._started, sample, NEAR_MC):
            self._forgive(FaultKind.POWER_ON)
            self._keep(self._started, kept)
            last = self._last
        self._started = None
        self._end(FaultKind.POWER_ON, at)
        self._check_jump(sample, last, kept)

    def _take_late(self, sample: Sample, last: Sample, kept: list[Sample]) -> None:
        """Keep what came late or a second time, but not what was refused before."""
        if sample.at_us in self._refused or is_power_on_value(sample.temperature_mc):
            return
        if last.at_us - sample.at_us > NEAR_US or _near(last, sample, JUMP_MC):
            kept.append(sample)  # what it says already, the record knows

    def _refuse(self, sample: Sample) -> None:
        self._refused[sample.at_us] = None
        if len(self._refused) > _REMEMBERED:
            del self._refused[next(iter(self._refused))]

    def _check_jump(self, sample: Sample, last: Sample | None, kept: list[Sample]) -> None:
        """Keep a sample, or hold it back until the next one says the same."""
        held, self._held = self._held, None
        if held is not None and last is not None and _near(held, sample, JUMP_MC):
            there = abs(sample.temperature_mc - held.temperature_mc)
            if there < abs(sample.temperature_mc - last.temperature_mc):
                self._forgive(FaultKind.JUMP)
                self._keep(held, kept)
                self._keep(sample, kept)
                return
        if (
            last is not None and sample.at_us - last.at_us <= NEAR_US
            and not _near(last, sample, JUMP_MC)
        ):  # fmt: skip
            self._held = sample
            self._refuse(sample)
            said = text("Feed", "{came} straight after {before}: waits for the next one").format(
                came=_shown(sample.temperature_mc), before=_shown(last.temperature_mc)
            )
            self._begin(FaultKind.JUMP, said, sample.at_us)
            return
        self._end(FaultKind.JUMP, sample.at_us)
        self._keep(sample, kept)

    def _keep(self, sample: Sample, kept: list[Sample]) -> None:
        self._refused.pop(sample.at_us, None)
        last, self._last = self._last, sample
        kept.append(sample)
        self._times = [*self._times[1 - _INTERVALS :], sample.at_us]
        self._end(FaultKind.LOST, sample.at_us)
        if last is None or last.temperature_mc != sample.temperature_mc:
            if last is not None:
                step = abs(sample.temperature_mc - last.temperature_mc)
                self._step = step if self._step is None else min(step, self._step)
            self._same = (sample.at_us, 1)
            self._end(FaultKind.FROZEN, sample.at_us)
            return
        since, count = self._same[0], self._same[1] + 1
        self._same = (since, count)
        fine = self._step is not None and self._step <= FINE_MC
        if fine and count >= FROZEN_SAMPLES and sample.at_us - since >= FROZEN_US:
            said = text("Feed", "{came} for hours, to the last digit: does it still measure?")
            self._begin(FaultKind.FROZEN, said.format(came=_shown(sample.temperature_mc)), since)

    def _interval_us(self) -> Instant:
        steps = [b - a for a, b in pairwise(self._times)]
        return round(median(steps)) if steps else MINUTE_US

    def _begin(self, kind: FaultKind, said: Text, since_us: Instant) -> None:
        present = self._open.get(kind)
        self._open[kind] = Fault(kind, said, since_us if present is None else present.since_us)

    def _end(self, kind: FaultKind, until_us: Instant) -> None:
        fault = self._open.pop(kind, None)
        if fault is not None:
            self._over.append(fault._replace(until_us=max(until_us, fault.since_us)))

    def _forgive(self, kind: FaultKind) -> None:
        """Forget a fault that turned out to be none."""
        self._open.pop(kind, None)


class JudgedFeed:
    """A source with its judge: what it hands over are temperatures.

    Parameters
    ----------
    source : Feed
        Hands over what it reads, whatever it is.
    judge : Judge
        Knows the sensor.
    """

    def __init__(self, source: Feed, judge: Judge) -> None:
        self._source = source
        self._judge = judge

    def poll(self, now: Instant) -> Polled:
        """Return what has come since the last poll; see `Feed`."""
        came = self._source.poll(now)
        excused = came.again or any(fault.until_us is None for fault in came.faults)
        kept, faults = self._judge.judge(came.samples, now, excused=excused)
        return Polled(tuple(kept), (*came.faults, *faults), came.again)


def _near(one: Sample | None, other: Sample, within_mc: int) -> bool:
    return (
        one is not None and abs(other.at_us - one.at_us) <= NEAR_US
        and abs(other.temperature_mc - one.temperature_mc) <= within_mc
    )  # fmt: skip


def _shown(temperature_mc: int) -> str:
    return format_temperature(temperature_mc, Unit.C)
