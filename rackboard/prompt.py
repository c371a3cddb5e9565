"""The forecast at the prompt: a sheet, a record and a mixing time in; milestones out.

Needs no screen. Errors are raised as `InputError` and said by the launcher.
"""

from __future__ import annotations

import sys
from datetime import UTC, datetime, timezone
from math import isfinite
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from rackboard.core.bench import Source
from rackboard.core.cure.calibration import calibrate
from rackboard.core.cure.forecast import Bounds, Forecast, forecast_record, printed_time
from rackboard.core.cure.kinetics import TAPER_K
from rackboard.core.cure.record import Point, Stretch, clip, linear
from rackboard.core.cure.remedy import Remedy, warm_remedy
from rackboard.core.cure.run import HORIZON_US, Bond, Run
from rackboard.core.errors import InputError
from rackboard.core.instants import MINUTE_US, SECOND_US, Instant, parse_iso, to_datetime
from rackboard.core.sheet_toml import sets_in_doubt, sheet_from_toml
from rackboard.core.temperature import Unit, format_temperature, parse_temperature
from rackboard.feeds.encoding import decode_utf8
from rackboard.feeds.strict_csv import read_strict

if TYPE_CHECKING:
    import argparse
    from collections.abc import Iterator

    from rackboard.core.cure.calibration import CureModel

U_MC = 1_000
"""Uncertainty of the record and of the parts' temperature [m°C, decision]."""
LONGEST_LAG_MIN = 1_440.0
"""A thermal lag of more than a day is no joint's [decision]."""
REMEDY_C = 40.0
"""Warm air is proposed at this, or at the sheet's maximum if that is lower [decision]."""
WORTH_US = 30 * MINUTE_US
"""A remedy that brings less isn't worth saying [decision]."""
YEARS = (1900, 9000)
"""Mixing times outside of these years are mistyped [decision]."""

CAUTION = (
    "The board estimates from the sheet and the temperature; it does not measure the bond. "
    "When in doubt the club isn't hit."
)
_DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
_FIVE_MINUTES_US = 5 * MINUTE_US
_NEVER = "no time within 60 days of mixing"


class _Question(NamedTuple):
    """What is asked: everything read and checked."""

    model: CureModel
    points: tuple[Point, ...]
    mixed_us: Instant
    zone: timezone
    lag_s: float
    parts: Point


def main_forecast(args: argparse.Namespace) -> int:
    """Print the milestones of a joint glued as soon as mixed, on a finished record.

    Parameters
    ----------
    args : argparse.Namespace
        `sheet` and `record`, paths; `mixed_at`, ISO 8601 with offset; `parts_temperature`,
        text or None; `lag_min`, minutes; `json`, bool.

    Returns
    -------
    int
        0.

    Raises
    ------
    InputError
        If anything can't be taken: what was wanted, what came and where.
    """
    asked = _question(args)
    forecast = forecast_record(
        asked.model, asked.points, asked.mixed_us, lag_s=asked.lag_s, parts=asked.parts
    )
    advice = list(_advice(asked, forecast))
    text = _json(forecast, advice) if args.json else _plain(asked, forecast, advice)
    if hasattr(sys.stdout, "reconfigure"):
        # A terminal that knows no degree sign still gets its times.
        sys.stdout.reconfigure(errors="replace")
    print(text)
    return 0


def _question(args: argparse.Namespace) -> _Question:
    sheet_at, record_at = str(args.sheet), str(args.record)
    text = decode_utf8(_read(sheet_at, "a sheet"), sheet_at)
    model = calibrate(sheet_from_toml(text, sheet_at), sheet_at)
    readings = read_strict(_read(record_at, "a record"), record_at)
    points = tuple(Point(at, mc, U_MC, Source.IMPORTED) for at, mc in readings)
    mixed_us, zone = _mixed(args.mixed_at)
    lag_min = float(args.lag_min)
    if not (isfinite(lag_min) and 0 <= lag_min <= LONGEST_LAG_MIN):
        wanted = f"minutes from 0 to {LONGEST_LAG_MIN:.0f}, such as 22"
        raise InputError(wanted, f"{lag_min:g}", "--lag-min")
    parts = points[0]
    if args.parts_temperature is not None:
        parts_mc = parse_temperature(args.parts_temperature, Unit.C, "--parts-temperature")
        parts = Point(mixed_us, parts_mc, U_MC, Source.IMPORTED)
    return _Question(model, points, mixed_us, zone, lag_min * 60, parts)


def _read(path: str, wanted: str) -> bytes:
    try:
        return Path(path).read_bytes()
    except OSError as error:
        reason = error.strerror or type(error).__name__
        raise InputError(f"{wanted} that can be read", reason, path) from None
    except ValueError:
        raise InputError(f"{wanted} that can be read", "no path", repr(path)) from None


def _mixed(text: str) -> tuple[Instant, timezone]:
    where = "--mixed-at"
    instant = parse_iso(text, where)
    moment = datetime.fromisoformat(text.strip())
    first, last = YEARS
    if not first <= moment.year <= last:
        raise InputError(f"a year from {first} to {last}", text, where)
    offset = moment.utcoffset()
    return instant, timezone(offset) if offset else UTC


# --- advice -----------------------------------------------------------------------------------


def _advice(asked: _Question, forecast: Forecast) -> Iterator[str]:
    """Yield what was assumed, what is doubtful, and what would make it sooner."""
    yield from asked.model.assumptions
    doubt = sets_in_doubt(asked.model.sheet)
    if doubt:
        yield doubt
    late_us, end = forecast.full_cure.late, asked.points[-1]
    yield from _about_temperatures(asked, end.at_us if late_us is None else late_us)
    if late_us is not None and late_us <= end.at_us:
        return
    offset = _offset(asked)
    yield (
        f"The record ends on {_shown(end.at_us, asked.zone)} ({offset}), before the joint is "
        f"safe to hit: its last reading, {_celsius(end.temperature_mc)}, is held from there on."
    )
    remedy = _remedy(asked)
    if remedy is not None:
        instead = remedy.instead_of_us
        yield (
            f"{remedy.hours} h at {remedy.temperature_c:g} °C from "
            f"{_shown(remedy.from_us, asked.zone)} ({offset}): "
            f"not before {_shown(remedy.not_before_us, asked.zone)} instead of "
            f"{_NEVER if instead is None else _shown(instead, asked.zone)}."
        )


def _about_temperatures(asked: _Question, until_us: Instant) -> Iterator[str]:
    model, sheet = asked.model, asked.model.sheet
    last = asked.points[-1].at_us
    if asked.mixed_us < last:
        spans = [clip(s, asked.mixed_us, until_us) for s in linear(asked.points, last)]
        ends = [t for s in spans if s is not None for t in s.expected]
    else:
        ends = [asked.points[-1].kelvin]
    if not ends:
        return
    zero_k = 273.15
    lowest_mc = round((min(ends) - zero_k) * 1000)
    highest_mc = round((max(ends) - zero_k) * 1000)
    taken_k = min(ends) - U_MC / 1000
    if taken_k < model.minimum_k:
        bottom_k = model.minimum_k - (0 if sheet.no_cure_below_minimum else TAPER_K)
        counts = "the hours count for less" if taken_k > bottom_k else "nothing counts"
        yield (
            f"The record falls to {_celsius(lowest_mc)}, taken as "
            f"{_celsius(lowest_mc - U_MC)}: that far below the sheet's {sheet.minimum_c:g} °C "
            f"{counts}."
        )
    if max(ends) > model.maximum_k:
        yield (
            f"The record rises to {_celsius(highest_mc)}: no more speed is credited than at "
            f"the sheet's maximum, {sheet.maximum_c:g} °C, and more heat can harm the bond."
        )


def _remedy(asked: _Question) -> Remedy | None:
    model, last = asked.model, asked.points[-1]
    run = Run(Bond(model), asked.mixed_us)
    warm, u = asked.parts.kelvin, asked.parts.u_k
    lagging = asked.lag_s > 0
    run.glue((warm, warm - u, warm + u) if lagging else None, asked.lag_s)
    for stretch in linear(asked.points, last.at_us):
        part = clip(stretch, asked.mixed_us, last.at_us)
        if part is not None:
            run.advance(part)

    def outlook(start_us: Instant) -> Iterator[Stretch]:
        held = linear((last,), asked.mixed_us + HORIZON_US)
        yield from (part for s in held if (part := clip(s, start_us, s.end_us)) is not None)

    warm_c = min(REMEDY_C, model.sheet.maximum_c)
    remedy = warm_remedy(run, outlook, last.at_us, warm_c)
    if remedy is None or remedy.instead_of_us is None:
        return remedy
    return remedy if remedy.instead_of_us - remedy.not_before_us >= WORTH_US else None


# --- output -----------------------------------------------------------------------------------


def _json(forecast: Forecast, advice: list[str]) -> str:
    import json

    nothing = Bounds(None, None, None)
    document: dict[str, object] = {
        "working_life_over": _seconds(forecast.working_life),
        "may_be_handled": _seconds(forecast.handling or nothing),
        "safe_to_hit": _seconds(forecast.full_cure),
        "advice": advice,
    }
    return json.dumps(document, indent=2)


def _seconds(bounds: Bounds) -> dict[str, str | None]:
    """Return early rounded down, expected to the nearest second, late rounded up."""
    up = SECOND_US - 1
    return {
        "early": _iso(bounds.early, 0),
        "expected": _iso(bounds.expected, SECOND_US // 2),
        "late": _iso(bounds.late, up),
    }


def _iso(instant: Instant | None, add_us: int) -> str | None:
    if instant is None:
        return None
    whole = (instant + add_us) // SECOND_US * SECOND_US
    return to_datetime(whole).replace(tzinfo=None).isoformat(timespec="seconds") + "Z"


def _plain(asked: _Question, forecast: Forecast, advice: list[str]) -> str:
    zone = asked.zone
    lines = [
        f"{asked.model.sheet.name}, mixed {_shown(asked.mixed_us, zone)} "
        f"({_offset(asked)})",
        "",
        f"Working life  {_use_by(asked, forecast.working_life)}",
    ]
    if forecast.handling is not None:
        lines.append(f"Off the rack  {_not_before(forecast.handling, 'hard', zone)}")
    lines.append(f"Safe to hit   {_not_before(forecast.full_cure, 'cured', zone)}")
    lines += ["", *(f"- {sentence}" for sentence in advice)] if advice else []
    return "\n".join([*lines, "", CAUTION])


def _use_by(asked: _Question, life: Bounds) -> str:
    early, expected = life.early, life.expected
    if early is None:
        return _NEVER
    shown = early // _FIVE_MINUTES_US * _FIVE_MINUTES_US
    if shown <= asked.mixed_us:  # of a quick epoxy five minutes are too much
        shown = early // MINUTE_US * MINUTE_US
    text = f"use by {_shown(shown, asked.zone)}"
    if expected is None:
        return text
    return f"{text} (probably over by {_shown(_up(expected), asked.zone)})"


def _not_before(bounds: Bounds, word: str, zone: timezone) -> str:
    text = _NEVER
    if bounds.late is not None:
        text = f"not before {_shown(printed_time(bounds.late), zone)}"
    if bounds.expected is None:
        return text
    return f"{text} (probably {word} by {_shown(_up(bounds.expected), zone)})"


def _up(instant: Instant) -> Instant:
    """Return the first full five minutes at or after an instant."""
    return -(-instant // _FIVE_MINUTES_US) * _FIVE_MINUTES_US


def _shown(instant: Instant, zone: timezone) -> str:
    local = to_datetime(instant).astimezone(zone)
    return f"{_DAYS[local.weekday()]} {local:%Y-%m-%d %H:%M}"


def _offset(asked: _Question) -> str:
    """Return the offset of the times shown, as "UTC+01:00"."""
    return f"UTC{to_datetime(asked.mixed_us).astimezone(asked.zone).isoformat()[-6:]}"


def _celsius(temperature_mc: int) -> str:
    return format_temperature(temperature_mc, Unit.C).replace("\N{NO-BREAK SPACE}", " ")
