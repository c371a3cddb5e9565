"""How fast epoxy goes from wet to hard at a temperature.

`dα/dt = K · AF(T) · (r + α)(1 − α)^n · D(α, T)` with α the conversion, `AF` the Arrhenius
acceleration factor against the sheet's reference temperature and `D` the diffusion factor
that stalls a cold cure. A `Pace` is one such law with its own reading of the temperature:
expected, late or early.

References
----------
Arrhenius equivalent age: ASTM C1074; N. J. Carino, The maturity method (1984).
Autocatalytic rate law: M. R. Kamal, S. Sourour, Polym. Eng. Sci. 13 (1973) 59.
Diffusion factor: C. S. Chern, G. W. Poehlein, Polym. Eng. Sci. 27 (1987) 788.
(Volume and page numbers of the last two from memory.)
"""

from __future__ import annotations

from math import ceil, exp, inf, log
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

GAS_CONSTANT = 8.314462618
"""R [J/(mol·K)], CODATA 2018, exact."""
ZERO_CELSIUS_K = 273.15
"""0 °C in kelvin, exact."""

ALPHA_GEL = 3**-0.5
"""Gel point of a stoichiometric diepoxide with a tetrafunctional amine (Flory–Stockmayer)."""
ALPHA_HANDLING = 0.60
"""Conversion at handling strength: just past the gel point [decision]."""
ALPHA_FULL = 0.90
"""Conversion at full cure [decision]."""
AUTOCATALYSIS_R = 0.05
"""r: what the reaction starts with before its own product speeds it up [decision]."""
DIFFUSION_C = 30.0
"""C: sharpness of the diffusion factor [decision]."""
DIFFUSION_SLOPE_PER_K = 0.0055
"""s: how the critical conversion rises with temperature [1/K, decision]."""
TAPER_K = 5.0
"""The late bound's credit falls to nothing over this span below the sheet's minimum [decision]."""

_C2 = DIFFUSION_C * DIFFUSION_C
_C3 = _C2 * DIFFUSION_C
_CS = DIFFUSION_C * DIFFUSION_SLOPE_PER_K
_CS2 = _CS * _CS

_STEP = 0.08  # largest K·AF·D·Δt of one step, a third of it in a stall
_STEP_K = 1.0  # largest temperature change of one step [K]
_LAG_CURVATURE_K = 0.018  # keeps a chord within 0.0015 K of the lag's exponential
_LAG_SMALL_K = 1e-4  # a lag's transient smaller than this dies out in one chord
_LAG_OVER_K = 1e-8  # and smaller than this it is over
_LAG_DIES = 10.0  # in so many lags it has fallen from the one to the other

Terms = tuple[float, float, float, float, float]
Piece = tuple[float, float, float]
"""A linear stretch of joint temperature: duration [s], first and last temperature [K]."""


def kelvin(celsius: float) -> float:
    """Return a Celsius temperature in kelvin.

    Examples
    --------
    >>> kelvin(25.0)
    298.15
    """
    return celsius + ZERO_CELSIUS_K


def acceleration_factor(
    temp_k: float, ref_k: float, activation_energy_j_per_mol: float
) -> float:
    """Return how much faster than at the reference the reaction runs (Arrhenius).

    `AF = exp[(Ea/R)(1/Tref − 1/T)]`.

    Parameters
    ----------
    temp_k, ref_k : float
        Temperature and reference temperature [K], above 0.
    activation_energy_j_per_mol : float
        Ea [J/mol].

    Returns
    -------
    float
        1 at the reference temperature.

    Examples
    --------
    >>> round(acceleration_factor(283.15, 296.15, 60_000.0), 6)
    0.326689
    """
    return exp(activation_energy_j_per_mol / GAS_CONSTANT * (1 / ref_k - 1 / temp_k))


def equivalent_age(
    times_s: Sequence[float],
    temps_k: Sequence[float],
    ref_k: float,
    activation_energy_j_per_mol: float,
) -> float:
    """Return the equivalent age `∫ AF(T(s)) ds` of a piecewise-linear record.

    Parameters
    ----------
    times_s : sequence of float, shape (n,)
        Ascending [s].
    temps_k : sequence of float, shape (n,)
        Temperatures at these times [K]; straight lines between them.
    ref_k : float
        Reference temperature [K].
    activation_energy_j_per_mol : float
        Ea [J/mol].

    Returns
    -------
    float
        Time at the reference temperature that would have done as much [s].

    Notes
    -----
    Three-point Gauss–Legendre over at most 2 K at a time; on a straight line it agrees
    with the exponential-integral form to about 1e-12.

    Examples
    --------
    >>> age = equivalent_age([0, 8 * 3600], [283.15, 303.15], 296.15, 60_000.0)
    >>> round(age / 3600, 9)
    6.922333171
    """
    a = activation_energy_j_per_mol / GAS_CONSTANT
    total = 0.0
    node = 0.6**0.5 / 2
    for i in range(1, len(times_s)):
        t0, t1 = temps_k[i - 1], temps_k[i]
        h = times_s[i] - times_s[i - 1]
        parts = max(1, ceil(abs(t1 - t0) / 2))
        dt = (t1 - t0) / parts
        for j in range(parts):
            mid = t0 + (j + 0.5) * dt
            total += (
                h / parts / 18 * (
                    5 * exp(a * (1 / ref_k - 1 / (mid - node * dt)))
                    + 8 * exp(a * (1 / ref_k - 1 / mid))
                    + 5 * exp(a * (1 / ref_k - 1 / (mid + node * dt)))
                )
            )  # fmt: skip
    return total


def diffusion_factor(alpha: float, critical: float) -> float:
    """Return `D = 1 / (1 + exp{C [α − αc]})` (Chern and Poehlein).

    Parameters
    ----------
    alpha, critical : float
        Conversion and critical conversion αc(T), both of 0…1.

    Examples
    --------
    >>> diffusion_factor(0.9, 0.9)
    0.5
    """
    return 1 / (1 + exp(DIFFUSION_C * (alpha - critical)))


def critical_conversion(temp_k: float, minimum_k: float) -> float:
    """Return `αc(T) = α_full + s (T − T_min)`: where diffusion takes half the speed.

    Parameters
    ----------
    temp_k, minimum_k : float
        Temperature and the sheet's minimum cure temperature [K].

    Examples
    --------
    >>> critical_conversion(288.15, 288.15)
    0.9
    """
    return ALPHA_FULL + DIFFUSION_SLOPE_PER_K * (temp_k - minimum_k)


class Pace:
    """One reading of the rate law: how a temperature turns into speed.

    Parameters
    ----------
    amplitude : float
        K times the factor of the sheet's range [1/s]; 1 for an equivalent age.
    ref_k : float
        The sheet's reference temperature [K].
    below, above : float
        Activation energy used below and above the reference [J/mol].
    minimum_k : float
        The sheet's minimum cure temperature [K], where αc is α_full.
    ceiling_k : float, optional
        No more speed is credited than at it [K].
    taper_k : float, optional
        Span below the minimum over which the credit falls to nothing [K]; None: no taper,
        0: the hard edge of a sheet that forbids curing below its minimum.
    diffusion_floor_k : float, optional
        Diffusion is taken as at least at this temperature [K].
    """

    __slots__ = (
        "_above",
        "_below",
        "_bottom_k",
        "_ceiling_k",
        "_floor_k",
        "_inv_ref",
        "_log_amplitude",
        "_minimum_k",
        "_ref_k",
        "_taper_k",
        "kinks_k",
    )

    def __init__(
        self,
        amplitude: float,
        ref_k: float,
        below: float,
        above: float,
        minimum_k: float,
        *,
        ceiling_k: float = inf,
        taper_k: float | None = None,
        diffusion_floor_k: float = 0.0,
    ) -> None:
        self._log_amplitude = log(amplitude)
        self._ref_k = ref_k
        self._inv_ref = 1 / ref_k
        self._below = below / GAS_CONSTANT
        self._above = above / GAS_CONSTANT
        self._minimum_k = minimum_k
        self._ceiling_k = ceiling_k
        self._floor_k = diffusion_floor_k
        self._taper_k = taper_k or 0.0
        self._bottom_k = 0.0 if taper_k is None else minimum_k - taper_k
        kinks = {ceiling_k} if ceiling_k < inf else set()
        if below != above:
            kinks.add(ref_k)
        if diffusion_floor_k:
            kinks.add(diffusion_floor_k)
        if taper_k is not None:
            kinks |= {minimum_k, self._bottom_k}
        self.kinks_k = tuple(sorted(kinks))

    def terms(self, temp_k: float) -> Terms:
        """Return the speed at a temperature and how it changes with it.

        Parameters
        ----------
        temp_k : float
            Joint temperature, already moved by its uncertainty [K].

        Returns
        -------
        tuple of float
            k [1/s]; d ln k/dT [1/K]; d² ln k/dT² [1/K²]; critical conversion; its slope [1/K].
        """
        if temp_k < self._bottom_k:
            return 0.0, 0.0, 0.0, ALPHA_FULL, 0.0
        slope = DIFFUSION_SLOPE_PER_K
        if temp_k > self._ceiling_k:
            inv = 1 / self._ceiling_k
            k = exp(self._log_amplitude + self._above * (self._inv_ref - inv))
            critical = ALPHA_FULL + slope * (self._ceiling_k - self._minimum_k)
            return k, 0.0, 0.0, critical, 0.0
        inv = 1 / temp_k
        a = self._below if temp_k < self._ref_k else self._above
        k = exp(self._log_amplitude + a * (self._inv_ref - inv))
        b = a * inv * inv
        b2 = -2 * b * inv
        if self._bottom_k and temp_k < self._minimum_k:
            above_bottom = temp_k - self._bottom_k
            if above_bottom <= 0:
                return 0.0, 0.0, 0.0, ALPHA_FULL, 0.0
            k *= above_bottom / self._taper_k
            b += 1 / above_bottom
            b2 -= 1 / (above_bottom * above_bottom)
        if temp_k < self._floor_k:
            return k, b, b2, ALPHA_FULL + slope * (self._floor_k - self._minimum_k), 0.0
        return k, b, b2, ALPHA_FULL + slope * (temp_k - self._minimum_k), slope


def lagged(tj0: float, t0: float, t1: float, h: float, lag_s: float, t: float) -> float:
    """Return the joint's temperature behind linearly changing air (first-order lag).

    Solves `dTj/dt = (Tair − Tj)/τ` exactly.

    Parameters
    ----------
    tj0 : float
        Joint temperature at the start [K].
    t0, t1 : float
        Air temperature at the start and end of the stretch [K].
    h : float
        Duration of the stretch [s], above 0.
    lag_s : float
        τ [s]; 0: the joint is as warm as the air.
    t : float
        When it is asked for [s after the start].
    """
    slope = (t1 - t0) / h
    if lag_s <= 0:
        return t0 + slope * t
    return t0 + slope * (t - lag_s) + (tj0 - t0 + slope * lag_s) * exp(-t / lag_s)


def joint_pieces(tj0: float, t0: float, t1: float, h: float, lag_s: float) -> Iterator[Piece]:
    """Yield the joint's temperature over one stretch of air as straight pieces.

    Parameters
    ----------
    tj0, t0, t1, h, lag_s : float
        As in `lagged`.

    Yields
    ------
    tuple of float
        Duration [s], first and last joint temperature [K]; no chord is more than about
        0.0015 K off the exponential.
    """
    if lag_s <= 0:
        yield h, t0, t1
        return
    slope = (t1 - t0) / h
    transient = tj0 - t0 + slope * lag_s
    t = 0.0
    last = tj0
    while t < h:
        size = abs(transient)
        if size < _LAG_OVER_K:
            width = h - t
        elif size < _LAG_SMALL_K:
            width = lag_s * _LAG_DIES
        else:
            width = lag_s * (_LAG_CURVATURE_K / size) ** 0.5
        t_end = h if width >= h - t else t + width
        x = (t_end - t) / lag_s
        after = transient * exp(-x)
        temp = t0 + slope * (t_end - lag_s) + after
        # The chord is moved so that its mean is the exponential's own.
        off = (transient - after) / x - (transient + after) / 2
        yield t_end - t, last + off, temp + off
        transient = after
        t, last = t_end, temp


def split_at_kinks(piece: Piece, kinks_k: tuple[float, ...]) -> Iterator[Piece]:
    """Yield a straight piece cut where it crosses a temperature at which the law bends."""
    h, t0, t1 = piece
    low, high = (t0, t1) if t0 < t1 else (t1, t0)
    inside = [k for k in kinks_k if low < k < high]
    if not inside:
        yield piece
        return
    if t1 < t0:
        inside.reverse()
    done, here = 0.0, t0
    for kink in inside:
        t = h * (kink - t0) / (t1 - t0)
        if t > done:
            yield t - done, here, kink
        done, here = t, kink
    if h > done:
        yield h - done, here, t1


def conversion_step(alpha: float, h: float, terms: Terms, dt_k: float, n: float) -> float:
    """Return the conversion after one short step.

    Taylor series of the rate law, of fourth order in conversion and of third in a
    temperature that changes linearly by `dt_k`, about the conversion at the start and the
    temperature at the middle of the step.

    Parameters
    ----------
    alpha : float
        Conversion at the start, 0…1.
    h : float
        Duration [s].
    terms : tuple of float
        `Pace.terms` at the middle temperature.
    dt_k : float
        Temperature at the end less that at the start [K].
    n : float
        Order of the reaction.
    """
    k, b, b2, critical, slope = terms
    e = exp(DIFFUSION_C * (alpha - critical))
    p = e / (1 + e)
    pd = p / (1 + e)
    ra = AUTOCATALYSIS_R + alpha
    left = 1 - alpha
    power: float = left**n
    x = h * k * ra * power / (1 + e)
    order = n / left
    l1 = 1 / ra - order - DIFFUSION_C * p
    square = 1 / (ra * ra)
    bend = order / left
    l2 = -square - bend - _C2 * pd
    l3 = 2 * (square / ra - bend / left) - _C3 * pd * (1 - 2 * p)
    growth = 1 + x * (
        l1 / 2 + x * ((2 * l1 * l1 + l2) / 6 + x * (l1 * (6 * l1 * l1 + 7 * l2) + l3) / 24)
    )
    if dt_k:
        if slope:
            b += _CS * p
            b2 -= _CS2 * pd
            growth += x * dt_k * _C2 * slope * pd / 12
        growth += dt_k * dt_k * (b * b + b2) / 24
    return alpha + x * growth


def age_step(age_s: float, h: float, terms: Terms, dt_k: float) -> float:
    """Return the equivalent age [s] after one short step; arguments as `conversion_step`."""
    k, b, b2, _, _ = terms
    return age_s + h * k * (1 + dt_k * dt_k * (b * b + b2) / 24)


def steps_for(h: float, terms: Terms, dt_k: float, alpha: float) -> int:
    """Return into how many equal steps a straight piece is cut.

    It depends on the piece and on the conversion at its start alone, so that a run
    continued later takes the very same steps as one done at once.
    """
    k, b, *_, critical, _ = terms
    change = abs(dt_k)
    fast = h * k * (1 + b * change)
    if fast <= _STEP and change <= _STEP_K:
        return 1
    if fast > _STEP:
        factor = 1 / (1 + exp(DIFFUSION_C * (alpha - critical)))
        fast *= factor * (3 - 2 * factor)  # a stall sets in steeply: shorter steps there
    return max(1, ceil(fast / _STEP), ceil(change / _STEP_K))
