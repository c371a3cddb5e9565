"""What was glued in the demo's week: people, clubs and products are invented."""

from __future__ import annotations

from typing import NamedTuple

from rackboard.core.bench import JointKind
from rackboard.core.epoxy import Range, Sheet
from rackboard.core.text import text

SLOW_WHEN_COLD = Sheet(
    name=text("Epoxy", "day-long filled"), working_life_min=Range(50, 70),
    handling_time_h=Range(8, 10),
    full_cure_time_h=Range(24, 30), reference_temperature_c=25.0,
    minimum_cure_temperature_c=17.0, maximum_cure_temperature_c=60.0,
    mix_ratio_by_volume=(1, 1), density_g_per_ml=1.25, working_life_mass_g=50.0,
    lap_shear_mpa=24.0, shelf_life_months=18,
)  # fmt: skip
"""Invented, with a high minimum, so that the demo has a cold club."""


class Glue(NamedTuple):
    """One glue-up of the week: what, where, with what, when; and what became of it."""

    day: int  # 0: Monday
    time: str
    number: str
    customer: str
    epoxy: str
    clubs: tuple[tuple[str, JointKind, str], ...]
    promised: tuple[int, str] | None = None
    lot: str = ""
    mixed: bool = True
    racked_min: int | None = 8
    looked_min: int | None = 14


_SOLID, _HOLLOW = JointKind.SOLID_HEAD, JointKind.HOLLOW_HEAD
_OVER_HOSEL = JointKind.OVER_HOSEL_PUTTER
_DAY_LONG, _HALF_HOUR = text("Epoxy", "day-long"), text("Epoxy", "half-hour")
_DRIVER, _WOOD = text("Clubs", "Driver"), text("Clubs", "{number} wood")
_HYBRID, PUTTER = text("Clubs", "{number} hybrid"), text("Clubs", "Putter")
_IRON, _WEDGE = text("Clubs", "{number} iron"), text("Clubs", "{loft} wedge")


def _irons(*numbers: int, first: int) -> tuple[tuple[str, JointKind, str], ...]:
    return tuple(
        (_IRON.format(number=number), _SOLID, f"A{first + i}") for i, number in enumerate(numbers)
    )


def _wedges(*lofts: str, first: int) -> tuple[tuple[str, JointKind, str], ...]:
    return tuple(
        (_WEDGE.format(loft=loft), _SOLID, f"A{first + i}") for i, loft in enumerate(lofts)
    )


WEEK = (
    Glue(0, "09:30", "301", "M. Wendle", _DAY_LONG, ((_DRIVER, _HOLLOW, "A5"),),
         (3, "12:00"), "D-17"),
    Glue(0, "10:20", "302", "T. Oakum", _HALF_HOUR, ((_WOOD.format(number=3), _HOLLOW, "A10"),),
         (3, "17:00"), "H-04"),
    Glue(1, "15:40", "303", "P. Sallow", _DAY_LONG,
         _irons(6, 7, first=1), (7, "10:00"), "D-17"),
    Glue(1, "16:30", "304", "E. Tarn", _HALF_HOUR, ((_DRIVER, _HOLLOW, "A3"),),
         (7, "09:00"), "H-04"),
    Glue(2, "08:10", "305", "J. Fennow", _HALF_HOUR,
         _irons(4, 5, 6, 7, first=6), (4, "16:00"), "H-04"),
    Glue(2, "15:30", "306", "B. Quarl", SLOW_WHEN_COLD.name,
         ((_HYBRID.format(number=4), _HOLLOW, "A4"),),
         (10, "12:00"), "F-02"),
    Glue(2, "17:20", "307", "A. Rushmere", _DAY_LONG, ((_DRIVER, _HOLLOW, "B3"),),
         None, "D-18"),
    Glue(3, "08:05", "308", "C. Hethers", _DAY_LONG, ((_HYBRID.format(number=3), _HOLLOW, "B2"),),
         (4, "16:00"), "D-18"),
    Glue(3, "10:30", "308", "C. Hethers", _DAY_LONG, ((_WOOD.format(number=5), _HOLLOW, "B1"),),
         None, "D-18"),
    Glue(3, "12:05", "309", "L. Marrow", _HALF_HOUR,
         _wedges("50°", "54°", "58°", first=1), (9, "15:00"), "H-05"),
    Glue(3, "12:40", "310", "G. Pellow", _HALF_HOUR, ((PUTTER, _OVER_HOSEL, "A13"),),
         (10, "17:00"), "H-05"),
    Glue(3, "14:06", "311", "S. Ivering", _HALF_HOUR,
         _irons(7, 8, first=11), (10, "09:00"), "H-05",
         racked_min=11, looked_min=None),
    Glue(3, "14:20", "312", "N. Cobb", _DAY_LONG, _irons(9, first=14),
         None, "D-18", mixed=False),
)  # fmt: skip
