"""What holds on any record: order, monotonicity, and independence of how it is cut."""

from __future__ import annotations

import random
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from helpers.records import Case, answers, bounds_of, cases, random_case, random_sheet
from rackboard.core.bench import Source
from rackboard.core.cure.calibration import calibrate
from rackboard.core.cure.forecast import Forecast
from rackboard.core.cure.record import Point, Stretch, clip, linear
from rackboard.core.cure.run import HORIZON_US, Bond, Life, Run
from rackboard.core.instants import DAY_US, SECOND_US

NEVER_S = HORIZON_US / SECOND_US
BOTH = ("life", "handling", "full")
seeds = st.integers(0, 2**32)


def seconds(value: float | None) -> float:
    return NEVER_S if value is None else value


def with_u(case: Case, u_mc: int) -> Case:
    """Return the same record with another uncertainty throughout."""
    points = tuple(p._replace(u_mc=u_mc) for p in case.points)
    parts = None if case.parts is None else case.parts._replace(u_mc=u_mc)
    return case._replace(points=points, parts=parts)


@settings(max_examples=300)
@given(seeds)
def test_early_expected_late(seed: int) -> None:
    """Three records and lags a sheet, u of 0, 1 and 3 °C: in this order within a second."""
    rng = random.Random(seed)
    sheet = random_sheet(rng)
    for _ in range(3):
        case = random_case(rng)._replace(sheet=sheet)
        for u_mc in (0, 1000, 3000):
            found = answers(with_u(case, u_mc))
            for name in BOTH:
                if name == "handling" and sheet.handling_time_h is None:
                    continue
                early, expected, late = (
                    seconds(found[f"{name} {which}"]) for which in ("early", "expected", "late")
                )
                assert early <= expected + 1, (name, case)
                assert expected <= late + 1, (name, case)


@settings(max_examples=300)
@given(seeds)
def test_warming_never_delays(seed: int) -> None:
    """Three records and lags a sheet, each warmed at random; u of 0, 1 or 3 °C."""
    rng = random.Random(seed)
    sheet = random_sheet(rng)
    for _ in range(3):
        case = with_u(random_case(rng)._replace(sheet=sheet), rng.choice([0, 1000, 3000]))
        warmed = tuple(
            p._replace(temperature_mc=p.temperature_mc + rng.choice([0, 1, 50, 1000, 12_000]))
            for p in case.points
        )
        parts = case.parts or case.points[0]
        warm_parts = parts._replace(temperature_mc=parts.temperature_mc + rng.choice([0, 1500]))
        base = answers(case._replace(parts=parts))
        warm = answers(case._replace(points=warmed, parts=warm_parts))
        for name, value in base.items():
            assert seconds(warm[name]) <= seconds(value) + 1, (name, case, warmed)


@given(cases(), seeds)
def test_readings_on_the_line_change_nothing(case: Case, seed: int) -> None:
    """More readings between two, on their line, rounded to m°C as the store does: 5 s."""
    rng = random.Random(seed)
    points: list[Point] = []
    for left, right in pairwise(case.points):
        points.append(left)
        for fraction in sorted(rng.random() for _ in range(rng.randint(0, 4))):
            at = round(left.at_us + (right.at_us - left.at_us) * fraction)
            if points[-1].at_us < at < right.at_us:
                rise = (right.temperature_mc - left.temperature_mc) * fraction
                points.append(left._replace(at_us=at, temperature_mc=round(
                    left.temperature_mc + rise)))  # fmt: skip
    points.append(case.points[-1])
    held = case.points[-1]
    points.append(held._replace(at_us=held.at_us + rng.randint(1, DAY_US)))
    plain, denser = answers(case), answers(case._replace(points=tuple(points)))
    # Half a m°C is worth less than 1e-4 of a time.
    for name, value in plain.items():
        allowed = max(5.0, 1e-4 * seconds(value))
        assert abs(seconds(denser[name]) - seconds(value)) <= allowed, (name, case)


def stretches_of(case: Case) -> list[Stretch]:
    until = case.mixed_us + HORIZON_US
    found = (clip(s, case.mixed_us, until) for s in linear(case.points, until))
    return [s for s in found if s is not None]


def run_of(case: Case) -> Run[Bond]:
    run = Run(Bond(calibrate(case.sheet), early_permissions=True), case.mixed_us)
    parts = case.parts or case.points[0]
    warm, u = parts.kelvin, parts.u_k
    run.glue((warm, warm - u, warm + u) if case.lag_s else None, case.lag_s)
    return run


def state(run: Run[Bond]) -> tuple[object, ...]:
    """Return everything a run knows, to the bit."""
    tracks = [t for line in run.curves.tracks for t in line]
    return (run.now_us, run.temps_k, run.gap_us, [(t.value, t.reached_us) for t in tracks])


def reached(run: Run[Bond]) -> list[int | None]:
    """Return when every target was reached [µs]; a curve cut shorter reaches the same."""
    tracks = [t for line in run.curves.tracks for t in line]
    return [
        t.reached_us[i] if i < len(t.reached_us) else None
        for t in tracks
        for i in range(len(t.targets))
    ]


@given(cases(), seeds)
def test_splitting_a_stretch_changes_nothing(case: Case, seed: int) -> None:
    """Within a second; a cure that has almost stalled, within a hundred-thousandth."""
    rng = random.Random(seed)
    whole, split = run_of(case), run_of(case)
    for stretch in stretches_of(case):
        whole.advance(stretch)
        a, b = stretch.start_us, stretch.end_us
        cuts = sorted({a, b, *(rng.randint(a, min(b, a + 4 * DAY_US)) for _ in range(3))})
        for start, end in pairwise(cuts):
            part = clip(stretch, start, end)
            assert part is not None
            split.advance(part)
    for one, other in zip(reached(whole), reached(split), strict=True):
        if one is None or other is None:
            last = one or other
            assert last is None or last > case.mixed_us + HORIZON_US - SECOND_US
            continue
        allowed = max(SECOND_US, 1e-5 * (one - case.mixed_us))
        assert abs(one - other) <= allowed, case


@given(cases(), st.integers(-(10**15), 10**15))
def test_shifting_all_instants_shifts_the_answers_exactly(case: Case, by_us: int) -> None:
    moved = case._replace(
        mixed_us=case.mixed_us + by_us,
        points=tuple(p._replace(at_us=p.at_us + by_us) for p in case.points),
    )

    def instants(forecast: Forecast, shift: int) -> list[int | None]:
        found = [*(x for b in bounds_of(forecast) for x in b), forecast.gel_early]
        return [None if x is None else x + shift for x in found]

    assert instants(moved.forecast(), 0) == instants(case.forecast(), by_us)


@given(cases())
def test_going_on_and_starting_anew_agree_to_the_bit(case: Case) -> None:
    """Each closed stretch on a copy of the state before it, the way ahead on another copy."""
    stretches = stretches_of(case)
    at_once = run_of(case)
    for stretch in stretches:
        at_once.advance(stretch)
    closed = run_of(case)
    for number, stretch in enumerate(stretches):
        ahead = closed.copy()
        for later in stretches[number:]:
            ahead.advance(later)
        assert state(ahead) == state(at_once)
        before = state(closed)
        twin = closed.copy()
        twin.advance(stretch)
        assert state(closed) == before  # a copy is independent
        closed = twin
    assert state(closed) == state(at_once)


@given(cases(), seeds)
def test_a_late_reading_counts_from_the_state_before_it(case: Case, seed: int) -> None:
    """Inserted between two others, with the states after it discarded: as if always there."""
    rng = random.Random(seed)
    first, last = case.points[0], case.points[-1]
    if last.at_us - first.at_us < 2:
        return
    at = rng.randint(first.at_us + 1, last.at_us - 1)
    if any(p.at_us == at for p in case.points):
        return
    added = Point(at, rng.randint(0, 40_000), 1000, Source.IMPORTED)
    points = tuple(sorted((*case.points, added)))
    late = case._replace(points=points)
    anew = run_of(late)
    states = [(anew.now_us, anew.copy())]
    for stretch in stretches_of(case):  # the record as it was known first
        following = states[-1][1].copy()
        following.advance(stretch)
        states.append((following.now_us, following))
    before = max(p.at_us for p in points if p.at_us < at)
    kept = [run for now, run in states if now <= max(before, case.mixed_us)][-1].copy()
    for stretch in stretches_of(late):
        anew.advance(stretch)
        if stretch.start_us >= kept.now_us:
            kept.advance(stretch)
    assert state(kept) == state(anew)


@given(cases())
def test_a_batch_follows_its_own_working_life(case: Case) -> None:
    """The answer is the earlier of the batch in the air and the joint behind it."""
    batch = Run(Life(calibrate(case.sheet)), case.mixed_us)
    own = run_of(case)
    for stretch in stretches_of(case):
        batch.advance(stretch)
        own.advance(stretch)
    both = case.forecast().working_life
    for name in ("early", "expected", "late"):
        of_batch = getattr(batch.curves, name).reached_us
        of_joint = getattr(own.curves.life, name).reached_us
        soonest = min((*of_batch, *of_joint), default=None)
        if soonest is not None and soonest > case.mixed_us + HORIZON_US:
            soonest = None
        assert getattr(both, name) == soonest
