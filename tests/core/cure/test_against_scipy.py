"""The model against scipy, which knows nothing of its formulas: random sheets and records."""

from __future__ import annotations

import random

import pytest

from helpers import oracle
from helpers.records import Case, answers, random_case
from rackboard.core.cure.calibration import calibrate

BLOCKS, EACH = 12, 50


def by_scipy(case: Case) -> dict[str, float | None]:
    points = case.points
    spans = oracle.straight(
        [p.at_us / 1e6 for p in points],
        [p.temperature_mc / 1e3 for p in points],
        [p.u_mc / 1e3 for p in points],
        case.mixed_us / 1e6,
    )
    parts = case.parts or points[0]
    warm = (parts.kelvin, parts.kelvin - parts.u_k, parts.kelvin + parts.u_k)
    return oracle.milestones(case.sheet, spans, lag_s=case.lag_s, parts_k=warm)


@pytest.mark.parametrize("block", range(BLOCKS))
def test_random_sheets_and_records(block: int) -> None:
    """Every milestone, early, expected and late, within 0.1 % or 30 s."""
    reached = never = 0
    for seed in range(block * EACH, (block + 1) * EACH):
        case = random_case(random.Random(seed))
        ours, theirs = answers(case), by_scipy(case)
        assert ours.keys() == theirs.keys()
        for name, value in theirs.items():
            assert oracle.miss(ours[name], value) <= 1, (seed, name, ours[name], value)
            reached += value is not None
            never += value is None
    assert reached > 5 * EACH
    assert never  # cold and blank ones are among them


def test_the_cases_are_of_every_kind() -> None:
    cases = [random_case(random.Random(seed)) for seed in range(BLOCKS * EACH)]
    kinds = {
        "lag": [c.lag_s > 0 for c in cases],
        "parts": [c.parts is not None for c in cases],
        "no handling time": [c.sheet.handling_time_h is None for c in cases],
        "hard edge": [c.sheet.no_cure_below_minimum for c in cases],
        "given energy": [c.sheet.activation_energy_kj_per_mol is not None for c in cases],
        "fitted energy": [bool(c.sheet.further_times) for c in cases],
        "range": [c.sheet.full_cure_time_h.short < c.sheet.full_cure_time_h.long for c in cases],
        "late mixing": [c.mixed_us > c.points[0].at_us for c in cases],
        "hot": [max(p.temperature_mc for p in c.points) > 50_000 for c in cases],
    }
    for kind, flags in kinds.items():
        assert 20 <= sum(flags) <= len(cases) - 20, kind
    assert {p.u_mc for c in cases for p in c.points} == {0, 1000, 3000}


@pytest.mark.parametrize("seed", range(0, 120, 3))
def test_calibration(seed: int) -> None:
    sheet = random_case(random.Random(seed)).sheet
    ours, theirs = calibrate(sheet), oracle.law_of(sheet)
    assert ours.n == pytest.approx(theirs.n, rel=1e-8)
    assert ours.k_per_s == pytest.approx(theirs.k, rel=1e-8)
    assert ours.energy == pytest.approx(theirs.energy, rel=1e-6)


def test_the_tolerance_can_be_missed() -> None:
    assert oracle.miss(100_000.0, 100_101.0) > 1
    assert oracle.miss(1000.0, 1031.0) > 1
    assert oracle.miss(None, 1000.0) > 1
    assert oracle.miss(1000.0, 1029.0) < 1
