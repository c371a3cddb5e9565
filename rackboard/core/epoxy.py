"""An epoxy as its data sheet gives it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, NamedTuple

Quantity = Literal["working_life", "handling", "full_cure"]
QUANTITIES: tuple[Quantity, ...] = ("working_life", "handling", "full_cure")

ROOM_TEMPERATURE_C = 25.0
"""What "room temperature" with no figure is taken as [decision]."""
MINIMUM_BELOW_REFERENCE_K = 10.0
"""A sheet without a minimum cure temperature: this far under its reference [decision]."""
DEFAULT_MAXIMUM_C = 40.0
"""A sheet without a maximum cure temperature [decision]."""


class Range(NamedTuple):
    """A time as the sheet gives it, shortest to longest, both in one unit."""

    short: float
    long: float

    @property
    def middle(self) -> float:
        """The arithmetic middle, on which the model is calibrated."""
        return (self.short + self.long) / 2


class FurtherTime(NamedTuple):
    """One more time of the sheet, at another temperature."""

    quantity: Quantity
    temperature_c: float
    hours: Range


@dataclass(frozen=True, slots=True)
class Sheet:
    """The facts of one data sheet; None where the sheet is blank.

    Units are in the names. `rackboard.core.cure.calibration.calibrate` checks that the
    times belong together and turns them into a model.
    """

    name: str
    working_life_min: Range
    full_cure_time_h: Range
    handling_time_h: Range | None = None
    reference_temperature_c: float | None = None
    minimum_cure_temperature_c: float | None = None
    maximum_cure_temperature_c: float | None = None
    no_cure_below_minimum: bool = False
    activation_energy_kj_per_mol: float | None = None
    further_times: tuple[FurtherTime, ...] = ()
    mix_ratio_by_volume: tuple[float, float] | None = None
    mix_ratio_by_mass: tuple[float, float] | None = None
    density_g_per_ml: float | None = None
    working_life_mass_g: float | None = None
    lap_shear_mpa: float | None = None
    shelf_life_months: float | None = None

    @property
    def reference_c(self) -> float:
        """Temperature at which the sheet's times hold [°C]."""
        given = self.reference_temperature_c
        return ROOM_TEMPERATURE_C if given is None else given

    @property
    def minimum_c(self) -> float:
        """Below it the sheet promises nothing [°C]."""
        given = self.minimum_cure_temperature_c
        return self.reference_c - MINIMUM_BELOW_REFERENCE_K if given is None else given

    @property
    def maximum_c(self) -> float:
        """Above it no more speed is credited than at it [°C]."""
        if self.maximum_cure_temperature_c is not None:
            return self.maximum_cure_temperature_c
        hottest = max((time.temperature_c for time in self.further_times), default=0.0)
        return hottest if hottest > self.reference_c else DEFAULT_MAXIMUM_C
