"""What the epoxy's panel shows, and its figures in words. No Qt."""

from __future__ import annotations

import math
from dataclasses import dataclass

from rackboard.core.cure.calibration import CureModel
from rackboard.core.temperature import Unit
from rackboard.services.sheet_table import (
    TABLE_C,
    TABLE_F,
    CurveSample,
    Held,
    curve,
    held,
    view_hours,
)
from rackboard.ui.sheet_fields import bare_temperature, shown_temperature

_WARMER_K = 10.0
_FINE_H = 20.0
_MINUTES_BELOW_H = 1.5


@dataclass(frozen=True, slots=True)
class Companion:
    """A dashed curve at another temperature, with its name."""

    samples: tuple[CurveSample, ...]
    name: str


@dataclass(frozen=True, slots=True)
class EpoxyView:
    """Everything the panel shows, worked out from a model."""

    at_reference: Held
    reference: str
    end_h: float
    samples: tuple[CurveSample, ...]
    companions: tuple[Companion, ...]
    columns: tuple[tuple[str, Held], ...]
    has_handling: bool
    note: str
    unit: Unit


def epoxy_view(model: CureModel, unit: Unit, room_c: float | None, room_name: str) -> EpoxyView:
    """Work out what the panel shows.

    Parameters
    ----------
    model : CureModel
        Of the sheet in the form.
    unit : Unit
        Of the shop.
    room_c : float or None
        What the room has now, for a curve beside [°C].
    room_name : str
        What that curve is called.
    """
    sheet = model.sheet
    reference_c = sheet.reference_c
    at_reference = held(model, reference_c)
    end_h = view_hours(at_reference)
    companions = []
    warm_c = min(reference_c + _WARMER_K, sheet.maximum_c)
    if warm_c - reference_c >= _WARMER_K / 2:
        name = shown_temperature(warm_c, unit)
        companions.append(Companion(curve(model, warm_c, end_h), name))
    if room_c is not None and abs(room_c - reference_c) > 1 and room_c != warm_c:
        name = f"{shown_temperature(room_c, unit)}, {room_name}"
        companions.append(Companion(curve(model, room_c, end_h), name))
    if unit is Unit.C:
        temperatures = list(TABLE_C)
    else:
        temperatures = [(f - 32) / 1.8 for f in TABLE_F]
    if all(abs(t - reference_c) > 0.05 for t in temperatures):
        temperatures.append(reference_c)
    columns = tuple(
        (bare_temperature(round(t, 3), unit), held(model, t)) for t in sorted(temperatures)
    )
    minimum = shown_temperature(sheet.minimum_c, unit)
    if sheet.no_cure_below_minimum:
        note = f"Below {minimum} no time: the sheet forbids it."
    else:
        note = f"Below {minimum} the sheet promises nothing, and the hours count for less."
    return EpoxyView(
        at_reference, shown_temperature(reference_c, unit), end_h, curve(model, reference_c, end_h),
        tuple(companions), columns, model.has_handling, note, unit,
    )  # fmt: skip


def late_text(hours: float | None) -> str:
    """Return a late bound as a figure in hours, rounded up; "no time" where there is none."""
    return "no time" if hours is None else _figure(hours, up=True)


def expected_text(hours: float | None) -> str:
    """Return an expected time as a figure in hours, to the nearest."""
    return "no time" if hours is None else _figure(hours, up=False)


def _figure(hours: float, *, up: bool) -> str:
    scale = 10 if hours < _FINE_H else 1
    scaled = hours * scale
    whole = math.ceil(scaled - 1e-6) if up else round(scaled)
    return f"{whole / scale:.1f}" if scale > 1 else f"{whole}"


def spoken(hours: float | None, figure: str) -> str:
    """Return a time in words: "7 h", "55 min", "no time"."""
    if hours is None:
        return figure
    if hours < _MINUTES_BELOW_H:
        return f"{round(hours * 60)} min"
    return f"{figure.removesuffix('.0')} h"


def use_by_text(hours: float | None) -> str:
    """Return a limit, rounded down."""
    if hours is None:
        return ""
    if hours < _MINUTES_BELOW_H:
        return f"use by {math.floor(hours * 60 + 1e-6)} min"
    return f"use by {math.floor(hours * 10 + 1e-6) / 10:g} h"


def accessible_text(view: EpoxyView) -> str:
    """Return the table in words."""
    lines = []
    for name, column in view.columns:
        at = f"At {name} °{view.unit}:"
        parts = []
        if view.has_handling:
            parts.append(
                f"off the rack not before {late_text(column.handling_late_h)},"
                f" probably {expected_text(column.handling_expected_h)}"
            )
        parts.append(
            f"to hit not before {late_text(column.full_late_h)},"
            f" probably {expected_text(column.full_expected_h)} hours"
        )
        lines.append(f"{at} {'; '.join(parts)}.")
    return " ".join([*lines, view.note])
