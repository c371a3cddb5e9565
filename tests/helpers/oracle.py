"""A second reading of the cure model, by scipy: nothing here uses the program's own formulas.

Calibration by `quad` and `brentq`; the curves, the equivalent ages and the joint's lag as one
system of ordinary differential equations, solved by LSODA with events.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from typing import NamedTuple

from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq, minimize_scalar

from rackboard.core.epoxy import Range, Sheet

GAS = 8.314462618
R0, SHARP, SLOPE, HAND, FULL = 0.05, 30.0, 0.0055, 0.60, 0.90
GEL = 1 / math.sqrt(3)
DAY_S = 86_400.0
HORIZON_S = 60 * DAY_S
WHICH = ("expected", "late", "early")

Line = tuple[float, float]


class Span(NamedTuple):
    """Air over one stretch: seconds after mixing; kelvin, uncertainty applied."""

    start_s: float
    end_s: float
    expected: Line
    late: Line
    early: Line
    still: bool = False


@dataclass(frozen=True)
class Law:
    """The calibrated sheet."""

    n: float
    k: float
    energy: float
    low: float
    high: float
    ref: float
    minimum: float
    maximum: float


def _time(target: float, n: float, critical: float) -> float:
    def slowness(a: float) -> float:
        return (1 + math.exp(SHARP * (a - critical))) / ((R0 + a) * (1 - a) ** n)

    return float(quad(slowness, 0, target, epsabs=0, epsrel=1e-11, limit=200)[0])


def law_of(sheet: Sheet) -> Law:
    """Calibrate a sheet."""
    ref = 273.15 + sheet.reference_c
    minimum = 273.15 + sheet.minimum_c
    critical = FULL + SLOPE * (ref - minimum)
    full_s = sum(sheet.full_cure_time_h) / 2 * 3600
    n = 2.0
    if sheet.handling_time_h is not None:
        ratio = full_s / (sum(sheet.handling_time_h) / 2 * 3600)

        def miss(n: float) -> float:
            return _time(FULL, n, critical) / _time(HAND, n, critical) - ratio

        n = float(brentq(miss, 0.4, 6.5, xtol=1e-11))
    k = _time(FULL, n, critical) / full_s
    if sheet.activation_energy_kj_per_mol is not None:
        energy = sheet.activation_energy_kj_per_mol * 1000
        band = (energy - 5000, energy + 5000)
    elif sheet.further_times:
        energy = _fitted(sheet, n, k, ref, minimum)
        band = (energy - 5000, energy + 5000)
    else:
        energy, band = 58_000.0, (50_000.0, 65_000.0)
    return Law(n, k, energy, *band, ref, minimum, 273.15 + sheet.maximum_c)


def _fitted(sheet: Sheet, n: float, k: float, ref: float, minimum: float) -> float:
    def cost(energy: float) -> float:
        total = 0.0
        for quantity, temperature_c, hours in sheet.further_times:
            temp = 273.15 + temperature_c
            if quantity == "working_life":
                at_ref = sum(sheet.working_life_min) / 2 * 60
            else:
                target = FULL if quantity == "full_cure" else HAND
                at_ref = _time(target, n, FULL + SLOPE * (temp - minimum)) / k
            speed = math.exp(energy / GAS * (1 / ref - 1 / temp))
            total += math.log(at_ref / speed / (sum(hours) / 2 * 3600)) ** 2
        return total

    found = minimize_scalar(cost, bounds=(1e4, 2e5), method="bounded", options={"xatol": 1e-3})
    return float(found.x)


class _Curve(NamedTuple):
    name: str
    temperature: int  # 0…2 the joint's, 3…5 the air's: expected, late, early
    rate: Callable[[float, float], float]
    targets: tuple[tuple[str, float], ...]


def _conversion(law: Law, which: str, times: Range, hard: bool) -> Callable[[float, float], float]:
    middle = sum(times) / 2
    n, exp = law.n, math.exp

    def diffusion(a: float, temp: float) -> float:
        return 1 / (1 + exp(SHARP * (a - FULL - SLOPE * (temp - law.minimum))))

    def speed(temp: float, energy: float) -> float:
        return exp(energy / GAS * (1 / law.ref - 1 / temp))

    def expected(a: float, temp: float) -> float:
        temp = min(temp, law.maximum)
        k = law.k * speed(temp, law.energy)
        return k * (R0 + a) * max(1 - a, 0.0) ** n * diffusion(a, temp)

    def late(a: float, temp: float) -> float:
        if hard:
            taper = 1.0 if temp >= law.minimum else 0.0
        else:
            taper = min(1.0, max(0.0, (temp - law.minimum + 5) / 5))
        temp = min(temp, law.maximum)
        factor = min(speed(temp, law.low), speed(temp, law.high))
        k = law.k * middle / times.long * taper
        return k * factor * (R0 + a) * max(1 - a, 0.0) ** n * diffusion(a, temp)

    def early(a: float, temp: float) -> float:
        factor = max(speed(temp, law.low), speed(temp, law.high))
        k = law.k * middle / times.short
        return k * factor * (R0 + a) * max(1 - a, 0.0) ** n * diffusion(a, max(temp, law.ref))

    return {"expected": expected, "late": late, "early": early}[which]


def _age(law: Law, which: str, life_s: float) -> Callable[[float, float], float]:
    pick = {"expected": None, "late": min, "early": max}[which]

    def rate(_: float, temp: float) -> float:
        x = (1 / law.ref - 1 / temp) / GAS
        if pick is None:
            return math.exp(law.energy * x) / life_s
        return pick(math.exp(law.low * x), math.exp(law.high * x)) / life_s

    return rate


def _curves(sheet: Sheet, law: Law) -> list[_Curve]:
    life, full = sheet.working_life_min, sheet.full_cure_time_h
    hand = sheet.handling_time_h
    hard = sheet.no_cure_below_minimum
    lives = {"expected": sum(life) / 2, "late": life.long, "early": life.short}
    curves = []
    for i, which in enumerate(WHICH):
        age = _age(law, which, lives[which] * 60)
        curves.append(_Curve(f"own {which}", i, age, ((f"own {which}", 1.0),)))
        curves.append(_Curve(f"batch {which}", i + 3, age, ((f"batch {which}", 1.0),)))
        goals: tuple[tuple[str, float], ...] = ((f"full {which}", FULL),)
        gel = (("gel", GEL),) if which == "early" else ()
        if hand is None:
            curve = _conversion(law, which, full, hard)
            curves.append(_Curve(which, i, curve, (*gel, *goals)))
            continue
        curve = _conversion(law, which, hand, hard)
        curves.append(_Curve(f"h {which}", i, curve, (*gel, (f"handling {which}", HAND))))
        curve = _conversion(law, which, full, hard)
        curves.append(_Curve(f"f {which}", i, curve, goals))
    return curves


def straight(
    times_s: list[float], temps_c: list[float], us: list[float], mixed_s: float
) -> Iterator[Span]:
    """Yield a record of straight lines from mixing on, the last reading held for 60 days."""
    points = [*zip(times_s, temps_c, us, strict=True)]
    points.append((mixed_s + HORIZON_S + DAY_S, temps_c[-1], us[-1]))
    for (t0, c0, u, *_), (t1, c1, *_) in itertools.pairwise(points):
        if t1 <= mixed_s or t1 <= t0:
            continue
        a = max(t0, mixed_s)
        k0, k1 = 273.15 + c0 + (c1 - c0) * (a - t0) / (t1 - t0), 273.15 + c1
        lines = [(k0 + d, k1 + d) for d in (0, -u, u)]
        yield Span(a - mixed_s, t1 - mixed_s, *lines)


def milestones(
    sheet: Sheet,
    spans: Iterable[Span],
    *,
    lag_s: float = 0.0,
    parts_k: tuple[float, float, float] | None = None,
    law: Law | None = None,
) -> dict[str, float | None]:
    """Return every milestone in seconds after mixing; None: not within 60 days.

    Keys: "life", "handling", "full", each with " expected", " late", " early"; and "gel".
    """
    law = law or law_of(sheet)
    curves = _curves(sheet, law)
    found: dict[str, float] = {}
    values = {curve.name: 0.0 for curve in curves}
    joint = list(parts_k) if parts_k and lag_s > 0 else None
    for span in spans:
        if joint is None:
            joint = [span.expected[0], span.late[0], span.early[0]]
        for part in _chunks(span):
            joint = _solve(curves, part, lag_s, joint, values, found)
            if all(name in found for c in curves for name, _ in c.targets):
                return _answers(found, sheet.handling_time_h is not None)
        if span.end_s > HORIZON_S:
            break
    return _answers(found, sheet.handling_time_h is not None)


def _chunks(span: Span) -> Iterator[Span]:
    """Cut a long stretch, so that a curve can end without solving all of it."""
    start, width = span.start_s, 12 * 3600.0
    whole = span.end_s - span.start_s
    while start < span.end_s:
        end = min(start + width, span.end_s)
        f0, f1 = (start - span.start_s) / whole, (end - span.start_s) / whole
        lines = [
            (a + (b - a) * f0, a + (b - a) * f1) for a, b in (span.expected, span.late, span.early)
        ]
        yield Span(start, end, *lines, span.still)
        start, width = end, width * 2


def _solve(
    curves: list[_Curve],
    span: Span,
    lag_s: float,
    joint: list[float],
    values: dict[str, float],
    found: dict[str, float],
) -> list[float]:
    h = span.end_s - span.start_s
    lines = (span.expected, span.late, span.early)
    slopes = [(b - a) / h for a, b in lines]
    live = [c for c in curves if any(name not in found for name, _ in c.targets)]
    tracked = 3 if lag_s > 0 else 0

    def rhs(t: float, y: list[float]) -> list[float]:
        air = [line[0] + slope * t for line, slope in zip(lines, slopes, strict=True)]
        temps = [*y[:3], *air] if tracked else [*air, *air]
        out = [(air[i] - temps[i]) / lag_s for i in range(tracked)]
        if span.still and tracked:
            out[1] = 0.0
        for i, curve in enumerate(live, tracked):
            which = curve.temperature
            stands = span.still and which in (1, 4)
            out.append(0.0 if stands else curve.rate(y[i], temps[which]))
        return out

    events, names = [], []
    for i, curve in enumerate(live, tracked):
        for name, target in curve.targets:
            if name not in found:
                events.append(lambda t, y, i=i, target=target: y[i] - target)
                names.append(name)
    start = [*joint[:tracked], *(values[c.name] for c in live)]
    done = solve_ivp(
        rhs, (0.0, h), start, method="LSODA", rtol=1e-8, atol=1e-10, events=events,
        first_step=min(h, 1.0), max_step=h / 2 if h > 4 else math.inf,
    )  # fmt: skip
    assert done.success, done.message
    for name, when in zip(names, done.t_events, strict=True):
        if len(when):
            found[name] = span.start_s + float(when[0])
    for i, curve in enumerate(live, tracked):
        values[curve.name] = float(done.y[i, -1])
    if tracked:
        return [float(x) for x in done.y[:3, -1]]
    return [line[1] for line in lines]


def _answers(found: dict[str, float], handling: bool) -> dict[str, float | None]:
    def get(name: str) -> float:
        value = found.get(name, math.inf)
        return value if value <= HORIZON_S else math.inf

    answers = {"gel": get("gel")}
    for which in WHICH:
        answers[f"life {which}"] = min(get(f"own {which}"), get(f"batch {which}"))
        hand = get(f"handling {which}") if handling else math.inf
        full = get(f"full {which}")
        answers[f"handling {which}"] = hand
        answers[f"full {which}"] = max(hand, full) if handling else full
    return {name: value if value < math.inf else None for name, value in answers.items()}


def miss(ours_s: float | None, theirs_s: float | None) -> float:
    """Return how far two answers lie apart, 1 being what is allowed: 0.1 % or 30 s."""
    if ours_s is None and theirs_s is None:
        return 0.0
    a = HORIZON_S if ours_s is None else ours_s
    b = HORIZON_S if theirs_s is None else theirs_s
    return abs(a - b) / max(30.0, 0.001 * b)
