"""What the epoxy's panel shows, and its figures in words."""

from __future__ import annotations

import math
from dataclasses import dataclass

from rackboard.core.cure.calibration import CureModel
from rackboard.core.temperature import Unit
from rackboard.core.text import Figure
from rackboard.services.sheet_table import (
    TABLE_C,
    TABLE_F,
    CurveSample,
    Held,
    curve,
    held,
    view_hours,
)
from rackboard.ui.language import say, translated
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
        name = translated(shown_temperature(warm_c, unit))
        companions.append(Companion(curve(model, warm_c, end_h), name))
    if room_c is not None and abs(room_c - reference_c) > 1 and room_c != warm_c:
        name = f"{translated(shown_temperature(room_c, unit))}, {room_name}"
        companions.append(Companion(curve(model, room_c, end_h), name))
    if unit is Unit.C:
        temperatures = list(TABLE_C)
    else:
        temperatures = [(f - 32) / 1.8 for f in TABLE_F]
    if all(abs(t - reference_c) > 0.05 for t in temperatures):
        temperatures.append(reference_c)
    columns = tuple(
        (_local(bare_temperature(round(t, 3), unit)), held(model, t)) for t in sorted(temperatures)
    )
    if sheet.no_cure_below_minimum:
        note = say("EpoxyView", "Below {minimum} no time: the sheet forbids it.")
    else:
        note = say(
            "EpoxyView", "Below {minimum} the sheet promises nothing, and the hours count for less."
        )
    note = note.format(minimum=translated(shown_temperature(sheet.minimum_c, unit)))
    return EpoxyView(
        at_reference, translated(shown_temperature(reference_c, unit)), end_h,
        curve(model, reference_c, end_h), tuple(companions), columns, model.has_handling, note,
        unit,
    )  # fmt: skip


def late_text(hours: float | None) -> str:
    """Return a late bound as a figure in hours, rounded up; "no time" where there is none."""
    return say("EpoxyView", "no time") if hours is None else _figure(hours, up=True)


def expected_text(hours: float | None) -> str:
    """Return an expected time as a figure in hours, to the nearest."""
    return say("EpoxyView", "no time") if hours is None else _figure(hours, up=False)


def _figure(hours: float, *, up: bool) -> str:
    scale = 10 if hours < _FINE_H else 1
    scaled = hours * scale
    whole = math.ceil(scaled - 1e-6) if up else round(scaled)
    return _local(f"{whole / scale:.1f}") if scale > 1 else f"{whole}"


def _local(figure: str) -> str:
    return translated(Figure(figure))


def spoken(hours: float | None, figure: str) -> str:
    """Return a time in words: "7 h", "55 min", "no time"."""
    if hours is None:
        return figure
    if hours < _MINUTES_BELOW_H:
        return say("EpoxyView", "{minutes} min").format(minutes=round(hours * 60))
    whole = figure.removesuffix(".0").removesuffix(",0")
    return say("EpoxyView", "{hours} h").format(hours=whole)


def use_by_text(hours: float | None) -> str:
    """Return a limit, rounded down."""
    if hours is None:
        return ""
    if hours < _MINUTES_BELOW_H:
        minutes = math.floor(hours * 60 + 1e-6)
        return say("EpoxyView", "use by {minutes} min").format(minutes=minutes)
    figure = _local(f"{math.floor(hours * 10 + 1e-6) / 10:g}")
    return say("EpoxyView", "use by {hours} h").format(hours=figure)


def accessible_text(view: EpoxyView) -> str:
    """Return the table in words."""
    off = say("EpoxyView", "off the rack not before {late}, probably {expected} hours")
    hit = say("EpoxyView", "to hit not before {late}, probably {expected} hours")
    lines = []
    for name, column in view.columns:
        parts = []
        if view.has_handling:
            parts.append(
                off.format(
                    late=late_text(column.handling_late_h),
                    expected=expected_text(column.handling_expected_h),
                )
            )
        parts.append(
            hit.format(
                late=late_text(column.full_late_h), expected=expected_text(column.full_expected_h)
            )
        )
        at = say("EpoxyView", "At {temperature}: {times}.")
        lines.append(at.format(temperature=f"{name} °{view.unit}", times="; ".join(parts)))
    return " ".join([*lines, view.note])
