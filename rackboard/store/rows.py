"""Rows of the store and values of the bench, each made from the other.

Columns are called as the fields of the values; a field that is itself a structure is kept
as JSON in a column whose name ends in ``_json``.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from functools import lru_cache
from typing import Any, Final

from rackboard.core.alerts.rows import Alert, Telling
from rackboard.core.bench import (
    Batch,
    Bridge,
    Club,
    Customer,
    Epoxy,
    Event,
    Grant,
    Heating,
    Hold,
    HoldReason,
    Job,
    Joint,
    JointKind,
    Milestone,
    Parts,
    Person,
    Place,
    PlaceKind,
    Reading,
    Release,
    Source,
    Stay,
    Zone,
)
from rackboard.core.epoxy import FurtherTime, Range, Sheet

Value = (
    Alert | Batch | Bridge | Club | Customer | Epoxy | Event | Grant | Hold | Job | Joint
    | Person | Place | Reading | Release | Stay | Telling | Zone
)  # fmt: skip

TABLE: Final[dict[type, str]] = {
    Alert: "alert",
    Batch: "batch",
    Bridge: "bridge",
    Club: "club",
    Customer: "customer",
    Epoxy: "epoxy",
    Event: "event",
    Grant: "permission_grant",
    Hold: "hold",
    Job: "job",
    Joint: "joint",
    Person: "person",
    Place: "place",
    Reading: "reading",
    Release: "release",
    Stay: "stay",
    Telling: "telling",
    Zone: "zone",
}


def json_text(value: object) -> str:
    """Return compact JSON; NaN and infinities are refused."""
    return json.dumps(value, ensure_ascii=False, allow_nan=False, separators=(",", ":"))


_PAIRS: Final = ("mix_ratio_by_volume", "mix_ratio_by_mass")
_RANGES: Final = ("working_life_min", "full_cure_time_h", "handling_time_h")


def sheet_text(sheet: Sheet) -> str:
    """Return a sheet as JSON; what the sheet leaves blank is left out."""
    facts: dict[str, object] = {}
    for name in _fields(Sheet):
        value = getattr(sheet, name)
        if value is None or value is False or value == ():
            continue
        facts[name] = value
    return json_text(facts)


@lru_cache(maxsize=512)
def sheet_of(text: str) -> Sheet:
    """Return the sheet of a JSON text; equal texts give the same value."""
    facts: dict[str, Any] = json.loads(text)
    for name in _RANGES:
        if name in facts:
            facts[name] = Range(*facts[name])
    for name in _PAIRS:
        if name in facts:
            facts[name] = tuple(facts[name])
    facts["further_times"] = tuple(
        FurtherTime(quantity, temperature_c, Range(*hours))
        for quantity, temperature_c, hours in facts.get("further_times", ())
    )
    return Sheet(**facts)


def heating_text(heating: Heating | None) -> str | None:
    """Return a heating schedule as JSON, None for none."""
    if heating is None:
        return None
    return json_text({name: getattr(heating, name) for name in _fields(Heating)})


def heating_of(text: str | None) -> Heating | None:
    """Return the heating schedule of a JSON text."""
    return None if text is None else Heating(**json.loads(text))


def _optional_text(value: object) -> str | None:
    return None if value is None else json_text(value)


_ENCODED: Final[dict[str, Callable[[Any], str | None]]] = {
    "sheet": sheet_text,
    "heating": heating_text,
    "couriers": _optional_text,
    "data": json_text,
}


def _fields(kind: type) -> tuple[str, ...]:
    names: tuple[str, ...] = getattr(kind, "_fields", ()) or kind.__slots__  # type: ignore[attr-defined]
    return names


def column_of(field: str) -> str:
    """Return the column in which a field is kept."""
    return f"{field}_json" if field in _ENCODED else field


def columns(kind: type, of: str = "") -> str:
    """Return the columns of a value, in the order of its fields, for a SELECT.

    Examples
    --------
    >>> columns(Person, "p")
    'p."initials", p."last_used_us"'
    """
    prefix = f"{of}." if of else ""
    return ", ".join(f'{prefix}"{column_of(field)}"' for field in _fields(kind))


def row_of(value: Value) -> dict[str, object]:
    """Return a value as a row; an id of 0 is left out, the store then gives one."""
    row: dict[str, object] = {}
    for field in _fields(type(value)):
        item = getattr(value, field)
        if field == "id" and item == 0:
            continue
        encode = _ENCODED.get(field)
        row[column_of(field)] = item if encode is None else encode(item)
    return row


def place_of(row: tuple[Any, ...]) -> Place:
    """Return the place of a row of `columns(Place)`."""
    return Place(row[0], row[1], PlaceKind(row[2]), *row[3:])


def zone_of(row: tuple[Any, ...]) -> Zone:
    """Return the zone of a row of `columns(Zone)`."""
    return Zone(row[0], row[1], row[2], heating_of(row[3]))


def epoxy_of(row: tuple[Any, ...]) -> Epoxy:
    """Return the epoxy of a row of `columns(Epoxy)`."""
    return Epoxy(row[0], sheet_of(row[1]), bool(row[2]), row[3])


def batch_of(row: tuple[Any, ...]) -> Batch:
    """Return the batch of a row of `columns(Batch)`."""
    return Batch(row[0], row[1], row[2], sheet_of(row[3]), *row[4:])


def joint_of(row: tuple[Any, ...]) -> Joint:
    """Return the joint of a row of `columns(Joint)`."""
    id_, club_id, kind, lag_s, batch_id, glued_us, parts, *rest = row
    return Joint(id_, club_id, JointKind(kind), lag_s, batch_id, glued_us, Parts(parts), *rest)


def reading_of(row: tuple[Any, ...]) -> Reading:
    """Return the reading of a row of `columns(Reading)`."""
    zone_id, at_us, temperature_mc, u_mc, source = row
    return Reading(zone_id, at_us, temperature_mc, u_mc, Source(source))


def grant_of(row: tuple[Any, ...]) -> Grant:
    """Return the grant of a row of `columns(Grant)`."""
    return Grant(row[0], row[1], Milestone(row[2]), *row[3:])


def hold_of(row: tuple[Any, ...]) -> Hold:
    """Return the hold of a row of `columns(Hold)`."""
    return Hold(row[0], row[1], HoldReason(row[2]), *row[3:])


def release_of(row: tuple[Any, ...]) -> Release:
    """Return the release of a row of `columns(Release)`."""
    return Release(row[0], row[1], Milestone(row[2]), *row[3:])


def event_of(row: tuple[Any, ...]) -> Event:
    """Return the event of a row of `columns(Event)`."""
    return Event(*(*row[:7], json.loads(row[7])))


def alert_of(row: tuple[Any, ...]) -> Alert:
    """Return the alert of a row of `columns(Alert)`."""
    return Alert(*(*row[:8], json.loads(row[8]), *row[9:]))


def telling_of(row: tuple[Any, ...]) -> Telling:
    """Return the annunciation of a row of `columns(Telling)`."""
    couriers = None if row[8] is None else json.loads(row[8])
    return Telling(*(*row[:7], json.loads(row[7]), couriers))
