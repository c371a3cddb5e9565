"""The rate law piece by piece, and every constant held to its range."""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from helpers.records import DAY_LONG
from rackboard.core.cure import calibration, kinetics, record, run
from rackboard.core.cure.calibration import calibrate
from rackboard.core.cure.kinetics import (
    Pace,
    conversion_step,
    critical_conversion,
    diffusion_factor,
    joint_pieces,
    kelvin,
    lagged,
    split_at_kinks,
)
from rackboard.core.epoxy import Sheet
from rackboard.core.instants import DAY_US, HOUR_US

temperatures = st.floats(250.0, 390.0)


@pytest.mark.parametrize(
    ("value", "low", "high"),
    [
        (kinetics.GAS_CONSTANT, 8.314462618, 8.314462618),
        (kinetics.ZERO_CELSIUS_K, 273.15, 273.15),
        (kinetics.AUTOCATALYSIS_R, 0.01, 0.1),
        (kinetics.DIFFUSION_C, 25, 35),
        (kinetics.DIFFUSION_SLOPE_PER_K, 0.005, 0.006),
        (kinetics.ALPHA_HANDLING, kinetics.ALPHA_GEL, kinetics.ALPHA_FULL),
        (kinetics.ALPHA_FULL, kinetics.ALPHA_HANDLING, 1 - 1e-9),
        (kinetics.TAPER_K, 5, 5),
        (calibration.KNOWN_ENERGY_BAND, 5000, 5000),
        (calibration.FIT_TOLERANCE, 0.15, 0.15),
        (record.TYPED_HOLD_US / HOUR_US, 4, 4),
        (record.GAP_US / HOUR_US, 2, 2),
        (record.RAMP_US / HOUR_US, 6, 6),
        (record.RECOVERY_US / HOUR_US, 2, 2),
        (record.EARLY_NIGHT_K, 3, 3),
        (record.SETBACK_U_MC, 3000, 3000),
        (run.HORIZON_US / DAY_US, 60, 60),
    ],
)
def test_constants_lie_in_their_ranges(value: float, low: float, high: float) -> None:
    assert low <= value <= high


def test_default_energy_lies_in_its_band_and_range() -> None:
    energy, low, high = calibration.DEFAULT_ENERGY
    least, most = calibration.ENERGY_RANGE
    assert least < low < energy < high < most


def test_diffusion_is_off_far_below_the_critical_conversion() -> None:
    assert diffusion_factor(0.0, 0.9) == pytest.approx(1, abs=1e-11)
    assert diffusion_factor(0.9, 0.9) == 0.5
    assert diffusion_factor(0.95, 0.9) < 0.2


@given(temperatures, st.sampled_from(["expected", "late", "early"]), st.booleans())
def test_terms_are_the_law_and_its_derivatives(temp_k: float, which: str, hard: bool) -> None:
    from dataclasses import replace

    model = calibrate(replace(DAY_LONG, no_cure_below_minimum=hard))
    times = model.sheet.full_cure_time_h
    pace = model.expected() if which == "expected" else getattr(model, which)(times)
    if any(abs(temp_k - kink) < 0.05 for kink in pace.kinks_k):
        return
    k, b, b2, critical, slope = pace.terms(temp_k)
    d = 1e-3
    below, above = pace.terms(temp_k - d), pace.terms(temp_k + d)
    assert (above[3] - below[3]) / 2 / d == pytest.approx(slope, abs=1e-9)
    assert 0.4 < critical < 1.6
    if k == 0:
        assert which == "late"
        return
    assert (math.log(above[0]) - math.log(below[0])) / 2 / d == pytest.approx(b, rel=1e-3, abs=1e-9)
    assert (above[1] - below[1]) / 2 / d == pytest.approx(b2, rel=1e-2, abs=1e-6)


def rate(pace: Pace, temp_k: float, alpha: float) -> float:
    k, _, _, critical, _ = pace.terms(temp_k)
    return k * (0.05 + alpha) * (1 - alpha) ** 2 * diffusion_factor(alpha, critical)


@given(temperatures, st.floats(0, 0.95), st.sampled_from([0.0, 1.0, 3.0]), st.floats(0, 20))
def test_the_three_rates_are_ordered_and_rise_with_temperature(
    temp_k: float, alpha: float, u: float, warmer: float
) -> None:
    model = calibrate(DAY_LONG)
    full: Callable[[float], tuple[float, ...]] = lambda t: (  # noqa: E731
        rate(model.late(model.sheet.full_cure_time_h), t - u, alpha),
        rate(model.expected(), t, alpha),
        rate(model.early(model.sheet.full_cure_time_h), t + u, alpha),
    )
    late, expected, early = full(temp_k)
    assert late <= expected * (1 + 1e-12)
    assert expected <= early * (1 + 1e-12)
    for cold, warm in zip(full(temp_k), full(temp_k + warmer), strict=True):
        assert cold <= warm * (1 + 1e-12)


@pytest.mark.parametrize(
    ("celsius", "taper"), [(15, 1), (14, 0.8), (12.5, 0.5), (10.01, 0.002), (10, 0), (5, 0)]
)
def test_taper(celsius: float, taper: float) -> None:
    pace = calibrate(DAY_LONG).late(DAY_LONG.full_cure_time_h)
    untapered = Pace(
        calibrate(DAY_LONG).k_per_s, 298.15, 65e3, 50e3, kelvin(15), ceiling_k=kelvin(60)
    )
    speed = pace.terms(kelvin(celsius))[0]
    assert speed == pytest.approx(taper * untapered.terms(kelvin(celsius))[0], rel=1e-6)


def test_hard_edge_touches_the_late_bound_only() -> None:
    from dataclasses import replace

    hard = calibrate(replace(DAY_LONG, no_cure_below_minimum=True))
    full = hard.sheet.full_cure_time_h
    assert hard.late(full).terms(kelvin(14.999))[0] == 0
    assert hard.late(full).terms(kelvin(15))[0] > 0
    soft = calibrate(DAY_LONG)
    for celsius in (5, 14.9, 30):
        assert hard.expected().terms(kelvin(celsius)) == soft.expected().terms(kelvin(celsius))
        assert hard.early(full).terms(kelvin(celsius)) == soft.early(full).terms(kelvin(celsius))


def test_no_more_speed_than_at_the_maximum_but_for_working_life_and_early() -> None:
    model = calibrate(DAY_LONG)
    full = model.sheet.full_cure_time_h
    hot, hotter = kelvin(60), kelvin(80)
    assert model.expected().terms(hotter)[0] == pytest.approx(model.expected().terms(hot)[0])
    assert model.late(full).terms(hotter)[0] == pytest.approx(model.late(full).terms(hot)[0])
    assert model.early(full).terms(hotter)[0] > 1.5 * model.early(full).terms(hot)[0]
    for age in model.ages():
        assert age.terms(hotter)[0] > 1.5 * age.terms(hot)[0]
        assert age.terms(kelvin(0))[0] > 0


@given(
    st.floats(270, 340), st.floats(270, 340), st.floats(270, 340), st.floats(1, 1e6),
    st.floats(1, 5000),
)  # fmt: skip
def test_pieces_follow_the_lag(tj0: float, t0: float, t1: float, h: float, lag_s: float) -> None:
    """They fill the stretch, stay within a few mK and keep the exponential's mean."""
    pieces = list(joint_pieces(tj0, t0, t1, h, lag_s))
    assert len(pieces) < 300
    assert sum(p[0] for p in pieces) == pytest.approx(h, rel=1e-9)
    t = 0.0
    for width, first, last in pieces:
        assert first == pytest.approx(lagged(tj0, t0, t1, h, lag_s, t), abs=0.003)
        t += width
        assert last == pytest.approx(lagged(tj0, t0, t1, h, lag_s, t), abs=0.003)
    slope = (t1 - t0) / h
    transient = tj0 - t0 + slope * lag_s
    whole = (t0 - slope * lag_s) * h + slope * h * h / 2
    whole += transient * lag_s * -math.expm1(-h / lag_s)
    ours = sum(w * (a + b) / 2 for w, a, b in pieces)
    assert ours / h == pytest.approx(whole / h, abs=1e-6)


def test_lag_against_its_equation() -> None:
    """dTj/dt = (Tair − Tj)/τ, by differences."""
    args = (280.0, 290.0, 300.0, 7200.0, 1306.668)
    for t in (100.0, 2000.0, 7000.0):
        rate = (lagged(*args, t + 0.5) - lagged(*args, t - 0.5))
        air = 290 + 10 * t / 7200
        assert rate == pytest.approx((air - lagged(*args, t)) / 1306.668, rel=1e-5)
    assert lagged(*args, 0.0) == pytest.approx(280)
    assert lagged(280.0, 290.0, 300.0, 7200.0, 0.0, 3600.0) == 295


@given(temperatures, temperatures, st.lists(temperatures, max_size=4))
def test_split_at_kinks_keeps_the_line(t0: float, t1: float, kinks: list[float]) -> None:
    parts = list(split_at_kinks((3600.0, t0, t1), tuple(sorted(set(kinks)))))
    assert sum(p[0] for p in parts) == pytest.approx(3600)
    assert parts[0][1] == t0
    assert parts[-1][2] == t1
    for (_, _, end), (_, start, _) in itertools.pairwise(parts):
        assert end == start
    for _, a, b in parts:
        assert not any(min(a, b) < kink < max(a, b) for kink in kinks)


def test_fourth_order() -> None:
    """Half the step leaves about a sixteenth of the error."""
    terms = (2e-4, 0.0, 0.0, critical_conversion(298.15, 288.15), 0.0)

    def after(steps: int) -> float:
        alpha = 0.0
        for _ in range(steps):
            alpha = conversion_step(alpha, 30_000 / steps, terms, 0.0, 2.0)
        return alpha

    exact = after(4000)
    coarse, fine = (abs(after(n) - exact) for n in (60, 120))
    assert 10 < coarse / fine < 24


def test_a_sheet_is_hashable_and_calibrated_once() -> None:
    twin = Sheet(**{f: getattr(DAY_LONG, f) for f in DAY_LONG.__dataclass_fields__})
    assert calibrate(twin) is calibrate(DAY_LONG)
