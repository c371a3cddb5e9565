"""A new shop: its places, zones and the four typical epoxies."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from rackboard.core.bench import Epoxy, Place, PlaceKind, Zone
from rackboard.core.epoxy import Range, Sheet
from rackboard.core.instants import Instant
from rackboard.core.text import text
from rackboard.store import Store

TYPICAL = (
    Sheet(
        name=text("Epoxy", "quick"), working_life_min=Range(4, 6), handling_time_h=Range(1, 1.5),
        full_cure_time_h=Range(12, 24), reference_temperature_c=25.0,
        minimum_cure_temperature_c=5.0, maximum_cure_temperature_c=40.0,
        mix_ratio_by_volume=(1, 1), density_g_per_ml=1.15, working_life_mass_g=20.0,
        lap_shear_mpa=12.0, shelf_life_months=24,
    ),
    Sheet(
        name=text("Epoxy", "half-hour"), working_life_min=Range(25, 35),
        handling_time_h=Range(3, 5),
        full_cure_time_h=Range(16, 24), reference_temperature_c=25.0,
        minimum_cure_temperature_c=12.0, maximum_cure_temperature_c=50.0,
        mix_ratio_by_volume=(1, 1), density_g_per_ml=1.12, working_life_mass_g=50.0,
        lap_shear_mpa=18.0, shelf_life_months=24,
    ),
    Sheet(
        name=text("Epoxy", "day-long"), working_life_min=Range(45, 60), handling_time_h=Range(6, 8),
        full_cure_time_h=Range(18, 24), reference_temperature_c=25.0,
        minimum_cure_temperature_c=12.0, maximum_cure_temperature_c=45.0,
        mix_ratio_by_volume=(1, 1), mix_ratio_by_mass=(100, 83), density_g_per_ml=1.12,
        working_life_mass_g=50.0, lap_shear_mpa=22.0, shelf_life_months=24,
    ),
    Sheet(
        name=text("Epoxy", "day-long toughened"),
        working_life_min=Range(60, 75), handling_time_h=Range(8, 10),
        full_cure_time_h=Range(24, 30), reference_temperature_c=25.0,
        minimum_cure_temperature_c=15.0, maximum_cure_temperature_c=60.0,
        mix_ratio_by_volume=(2, 1), density_g_per_ml=1.10, working_life_mass_g=50.0,
        lap_shear_mpa=28.0, shelf_life_months=18,
    ),
)  # fmt: skip
"""Invented, typical of their class; no product's. The user types in his own product's sheet."""
TYPICAL_NOTE = text("Epoxy", "typical of its class; type in your own product's sheet")


def found_shop(store: Store, now: Instant, named: Callable[[str], str] = str) -> bool:
    """Furnish an empty data file; return whether it was empty.

    Rack A has three rows of five slots, the warm box one row of four; the grip bench and
    the pick-up corner lie in the room.

    Parameters
    ----------
    store : Store
        The data file.
    now : int
        The present [µs UTC].
    named : callable, optional
        Puts a name into the shop's language; from then on it is the shop's own.
    """
    if store.shop.zones():
        return False
    with store.write(text("Act", "found the shop"), now) as act:
        room = act.add(Zone(0, named(text("Shop", "Room")), 0))
        warm_box = named(text("Shop", "Warm box"))
        box = act.add(Zone(0, warm_box, 1))
        for place in (
            Place(0, room, PlaceKind.RACK, named(text("Shop", "Rack A")), "A", 3, 5, 0),
            Place(0, box, PlaceKind.BOX, warm_box, "B", 1, 4, 1),
            Place(0, room, PlaceKind.GRIP_BENCH, named(text("Shop", "grip bench")), "", 0, 0, 2),
            Place(0, room, PlaceKind.PICK_UP, named(text("Shop", "pick-up corner")), "", 0, 0, 3),
            Place(0, None, PlaceKind.OUT, named(text("Shop", "out of the shop")), "", 0, 0, 4),
        ):
            act.add(place)
        for sheet in TYPICAL:
            act.add(Epoxy(0, replace(sheet, name=named(sheet.name)), typical=True))
    return True
