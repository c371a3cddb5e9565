"""From the times on a data sheet to the constants of the rate law.

n and K are found once per sheet so that, held at the reference temperature, the conversion
reaches α_hand at the middle handling time and α_full at the middle full-cure time.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import exp, isfinite, log

from rackboard.core.cure.kinetics import (
    ALPHA_FULL,
    ALPHA_HANDLING,
    AUTOCATALYSIS_R,
    DIFFUSION_C,
    GAS_CONSTANT,
    TAPER_K,
    Pace,
    critical_conversion,
    kelvin,
)
from rackboard.core.epoxy import QUANTITIES, FurtherTime, Range, Sheet
from rackboard.core.errors import InputError
from rackboard.core.text import Figure, text

DEFAULT_ENERGY = (58_000.0, 50_000.0, 65_000.0)
"""Ea and its band [J/mol] where the sheet gives none [decision].

In the middle of what is published for cold-curing amine epoxies: DGEBA + ethylenediamine
58.6 kJ/mol, + 1,3-BAC 44–57, + 1,2-DCH 58.5 ± 1.3, aliphatic diepoxide +
aminoethylpiperazine 61.4, polyamines 40–56 (published, abstracts).
"""
KNOWN_ENERGY_BAND = 5_000.0
"""Half width of the band round a given or fitted Ea [J/mol, decision]."""
ENERGY_RANGE = (30_000.0, 120_000.0)
"""An Ea outside is refused [J/mol, decision]."""
FIT_TOLERANCE = 0.15
"""A further time missed by more than this fraction is refused [decision]."""
ORDER_RANGE = (0.5, 6.0)
"""Reaction orders n that a sheet may have [decision]."""
ORDER_WITHOUT_HANDLING = 2.0
"""n of a sheet with no handling time: second-order amine chemistry [decision]."""

_MINUTE_S = 60.0
_HOUR_S = 3600.0
_PANELS = 24
# Eight-point Gauss–Legendre on −1…1 (Abramowitz and Stegun, table 25.4).
_NODES = (
    (0.1834346424956498, 0.3626837833783620),
    (0.5255324099163290, 0.3137066458778873),
    (0.7966664774136267, 0.2223810344533745),
    (0.9602898564975363, 0.1012285362903763),
)


@dataclass(frozen=True, slots=True)
class CureModel:
    """A calibrated sheet: everything the curves need, in SI units.

    Attributes
    ----------
    sheet : Sheet
        What it was made from.
    n : float
        Reaction order.
    k_per_s : float
        K at the reference temperature [1/s].
    energy, energy_low, energy_high : float
        Ea and its band [J/mol].
    ref_k, minimum_k, maximum_k : float
        Temperatures of the sheet [K].
    assumptions : tuple of str
        What was assumed where the sheet is blank, in plain sentences.
    """

    sheet: Sheet
    n: float
    k_per_s: float
    energy: float
    energy_low: float
    energy_high: float
    ref_k: float
    minimum_k: float
    maximum_k: float
    assumptions: tuple[str, ...]

    @property
    def has_handling(self) -> bool:
        """Whether the sheet gives a handling time; without one there is no BENCH."""
        return self.sheet.handling_time_h is not None

    def expected(self) -> Pace:
        """Return the pace of the expected curve."""
        return Pace(
            self.k_per_s, self.ref_k, self.energy, self.energy, self.minimum_k,
            ceiling_k=self.maximum_k,
        )  # fmt: skip

    def late(self, times: Range) -> Pace:
        """Return the pace of the late bound of a milestone with these sheet times."""
        return Pace(
            self.k_per_s * times.middle / times.long,
            self.ref_k, self.energy_high, self.energy_low, self.minimum_k,
            ceiling_k=self.maximum_k,
            taper_k=0.0 if self.sheet.no_cure_below_minimum else TAPER_K,
        )  # fmt: skip

    def early(self, times: Range) -> Pace:
        """Return the pace of the early bound of a milestone with these sheet times."""
        return Pace(
            self.k_per_s * times.middle / times.short,
            self.ref_k, self.energy_low, self.energy_high, self.minimum_k,
            diffusion_floor_k=self.ref_k,
        )  # fmt: skip

    def ages(self) -> tuple[Pace, Pace, Pace]:
        """Return the paces of the working life's equivalent age: early, expected, late."""
        low, high = self.energy_low, self.energy_high
        return (
            Pace(1.0, self.ref_k, low, high, self.minimum_k),
            Pace(1.0, self.ref_k, self.energy, self.energy, self.minimum_k),
            Pace(1.0, self.ref_k, high, low, self.minimum_k),
        )

    def hours_at(self, temperature_c: float, target: float) -> float:
        """Return the expected time to a conversion at one temperature held [h]."""
        pace = self.expected()
        k, *_ = pace.terms(kelvin(temperature_c))
        critical = critical_conversion(min(kelvin(temperature_c), self.maximum_k), self.minimum_k)
        return reduced_time(target, self.n, critical) / k / _HOUR_S


def reduced_time(target: float, n: float, critical: float) -> float:
    """Return `∫ dα / [(r + α)(1 − α)^n D]` from 0 to `target`: K·AF times the time.

    Parameters
    ----------
    target : float
        Conversion, below 1.
    n : float
        Reaction order.
    critical : float
        Critical conversion of the temperature held.

    Notes
    -----
    Composite eight-point Gauss–Legendre in ln(r + α), where the integrand is smooth.
    """
    u0, u1 = log(AUTOCATALYSIS_R), log(AUTOCATALYSIS_R + target)
    half = (u1 - u0) / _PANELS / 2
    total = 0.0
    for panel in range(_PANELS):
        middle = u0 + half * (2 * panel + 1)
        for node, weight in _NODES:
            for u in (middle - half * node, middle + half * node):
                alpha = exp(u) - AUTOCATALYSIS_R
                stall = 1 + exp(DIFFUSION_C * (alpha - critical))
                total += weight * (1 - alpha) ** -n * stall
    return total * half


@lru_cache(maxsize=64)
def calibrate(sheet: Sheet, where: str = "sheet") -> CureModel:
    """Return the model of a sheet.

    Parameters
    ----------
    sheet : Sheet
        As typed or read.
    where : str
        Named in errors.

    Raises
    ------
    InputError
        If the times and temperatures can't belong together, with the reason.
    """
    _check(sheet, where)
    assumptions = []
    if sheet.reference_temperature_c is None:
        assumptions.append(
            text("Sheet", "No reference temperature given: its times are taken at {assumed}.")
            .format(assumed=_celsius(sheet.reference_c))
        )  # fmt: skip
    if sheet.minimum_cure_temperature_c is None:
        assumptions.append(
            text("Sheet", "No minimum cure temperature given: {assumed} assumed.")
            .format(assumed=_celsius(sheet.minimum_c))
        )  # fmt: skip
    if sheet.maximum_cure_temperature_c is None:
        assumptions.append(
            text("Sheet", "No maximum cure temperature given: {assumed} assumed.")
            .format(assumed=_celsius(sheet.maximum_c))
        )  # fmt: skip
    ref_k, minimum_k = kelvin(sheet.reference_c), kelvin(sheet.minimum_c)
    critical = critical_conversion(ref_k, minimum_k)
    full_s = sheet.full_cure_time_h.middle * _HOUR_S
    if sheet.handling_time_h is None:
        n = ORDER_WITHOUT_HANDLING
        assumptions.append(text(
            "Sheet", "No handling time given: it stays on the rack until it is safe to hit."
        ))  # fmt: skip
    else:
        n = _order(full_s / (sheet.handling_time_h.middle * _HOUR_S), critical, where)
    k_per_s = reduced_time(ALPHA_FULL, n, critical) / full_s
    energy, low, high = _energy(sheet, n, k_per_s, ref_k, minimum_k, where)
    if (energy, low, high) == DEFAULT_ENERGY and sheet.activation_energy_kj_per_mol is None:
        assumptions.append(text(
            "Sheet", "No times at other temperatures given: 58 kJ/mol assumed, between 50 and 65."
        ))  # fmt: skip
    return CureModel(
        sheet, n, k_per_s, energy, low, high, ref_k, minimum_k, kelvin(sheet.maximum_c),
        tuple(assumptions),
    )  # fmt: skip


def _check(sheet: Sheet, where: str) -> None:
    named = (
        ("working_life_min", sheet.working_life_min),
        ("handling_time_h", sheet.handling_time_h),
        ("full_cure_time_h", sheet.full_cure_time_h),
    )
    for key, times in named:
        if times is None:
            continue
        if not all(isfinite(t) and t > 0 for t in times) or times.short > times.long:
            wanted = text("Sheet", "a time above 0, or the shorter then the longer")
            raise InputError(wanted, times, _at(where, key))
    handling = sheet.handling_time_h
    full = sheet.full_cure_time_h
    if handling and (handling.short > full.short or handling.long > full.long):
        raise InputError(
            text("Sheet", "a handling time no longer than the full-cure time, at both ends"),
            text("Sheet", "handling {handling}, full cure {full}").format(
                handling=_span(handling), full=_span(full)
            ),
            _at(where, "handling_time_h"),
        )
    if not sheet.minimum_c <= sheet.reference_c < sheet.maximum_c:
        raise InputError(
            text("Sheet", "minimum ≤ reference < maximum cure temperature"),
            Figure(f"{sheet.minimum_c:g} ≤ {sheet.reference_c:g} < {sheet.maximum_c:g} °C"),
            where,
        )


def _order(ratio: float, critical: float, where: str) -> float:
    def spread(n: float) -> float:
        return reduced_time(ALPHA_FULL, n, critical) / reduced_time(ALPHA_HANDLING, n, critical)

    low, high = ORDER_RANGE
    least, most = spread(low), spread(high)
    if ratio < least:
        raise InputError(
            text("Sheet", "a full-cure time at least {least} times the handling time").format(
                least=Figure(f"{least:.2f}")
            ),
            text("Sheet", "{ratio} times: handling and full cure are the same time").format(
                ratio=Figure(f"{ratio:.3g}")
            ),
            _at(where, "handling_time_h"),
            text("Sheet", "Leave the handling time blank."),
        )
    if ratio > most:
        raise InputError(
            text("Sheet", "a full-cure time at most {most} times the handling time").format(
                most=f"{most:.0f}"
            ),
            text("Sheet", "{ratio} times").format(ratio=Figure(f"{ratio:.4g}")),
            _at(where, "handling_time_h"),
            text("Sheet", "Is the handling time perhaps the working life?"),
        )
    target = log(ratio)
    # The spread grows steadily with n: bisection to start, then secant inside the bracket.
    f_low, f_high = log(least) - target, log(most) - target
    for _ in range(100):
        if f_high == f_low:
            break
        guess = high - f_high * (high - low) / (f_high - f_low)
        if not low < guess < high or _ % 3 == 2:
            guess = (low + high) / 2
        f = log(spread(guess)) - target
        if f < 0:
            low, f_low = guess, f
        else:
            high, f_high = guess, f
        if abs(f) < 1e-13 or high - low < 1e-12:
            return guess
    return (low + high) / 2


def _energy(
    sheet: Sheet, n: float, k_per_s: float, ref_k: float, minimum_k: float, where: str
) -> tuple[float, float, float]:
    points = []
    for number, time in enumerate(sheet.further_times, 1):
        at = _at(where, f"further_times[{number}]")
        _check_further(time, sheet, at)
        temp_k = kelvin(time.temperature_c)
        if time.quantity == "working_life":
            reduced_s = sheet.working_life_min.middle * _MINUTE_S
        else:
            target = ALPHA_FULL if time.quantity == "full_cure" else ALPHA_HANDLING
            reduced_s = reduced_time(target, n, critical_conversion(temp_k, minimum_k)) / k_per_s
        x = 1 / ref_k - 1 / temp_k
        points.append((x, log(reduced_s / (time.hours.middle * _HOUR_S)), at, time))
    given = sheet.activation_energy_kj_per_mol
    spread = sum(x * x for x, *_ in points)
    if given is not None:
        energy = given * 1000
    elif spread:
        # ln(model time) is linear in Ea, so the least squares have a closed form.
        energy = GAS_CONSTANT * sum(x * y for x, y, *_ in points) / spread
    else:
        energy = DEFAULT_ENERGY[0]
    least, most = ENERGY_RANGE
    if not least <= energy <= most:
        shown = Figure(f"{energy / 1000:.4g} kJ/mol")
        raise InputError(
            text("Sheet", "an activation energy of {least} to {most} kJ/mol").format(
                least=f"{least / 1000:g}", most=f"{most / 1000:g}"
            ),
            shown if given is not None
            else text("Sheet", "{energy} from the times at other temperatures")
            .format(energy=shown),
            _at(where, "activation_energy_kj_per_mol" if given is not None else "further_times"),
        )
    for x, y, at, time in points:
        missed = exp(y - energy / GAS_CONSTANT * x) - 1
        if abs(missed) > FIT_TOLERANCE:
            sheet_h = time.hours.middle
            raise InputError(
                text("Sheet", "times that one epoxy can have (within {tolerance})").format(
                    tolerance=f"{FIT_TOLERANCE:.0%}"
                ),
                text("Sheet", "{quantity} {given} at {temperature}, where the rest of the sheet "
                     "makes {made}").format(
                    quantity=time.quantity, given=Figure(f"{sheet_h:g} h"),
                    temperature=_celsius(time.temperature_c),
                    made=Figure(f"{sheet_h * (1 + missed):.3g} h"),
                ),
                at,
            )
    if given is None and not spread:
        return DEFAULT_ENERGY
    return energy, energy - KNOWN_ENERGY_BAND, energy + KNOWN_ENERGY_BAND


def _check_further(time: FurtherTime, sheet: Sheet, at: str) -> None:
    if time.quantity not in QUANTITIES:
        raise InputError(" or ".join(QUANTITIES), time.quantity, at)
    if not all(isfinite(t) and t > 0 for t in time.hours) or time.hours.short > time.hours.long:
        raise InputError(text("Sheet", "hours above 0, the shorter first"), time.hours, at)
    if not -40 <= time.temperature_c <= 120:
        wanted = text("Sheet", "a temperature of {low} to {high}").format(
            low="−40", high="120 °C"
        )
        raise InputError(wanted, time.temperature_c, at)
    if time.quantity == "handling" and sheet.handling_time_h is None:
        raise InputError(
            text("Sheet", "a handling time at the reference temperature beside one at another"),
            text("Sheet", "none"), at,
        )


def _at(where: str, key: str) -> str:
    return f"{where}: {key}" if where else key


def _span(times: Range) -> str:
    if times.short == times.long:
        return Figure(f"{times.short:g} h")
    return Figure(f"{times.short:g}–{times.long:g} h")


def _celsius(temperature_c: float) -> str:
    return Figure(f"{temperature_c:g} °C")
