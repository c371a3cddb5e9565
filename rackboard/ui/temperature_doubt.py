"""A typed temperature that may be a slip: the question, and the keys that answer it."""

from __future__ import annotations

from typing import NamedTuple

from rackboard.core.temperature import Typed, Unit, format_temperature, room_doubt
from rackboard.ui.language import say, translated

BOX_HIGHEST_MC = 60_000
"""Up to here a warm box isn't asked about [m°C, decision]; a room is from 45 °C on."""


class TemperatureDoubt(NamedTuple):
    """The question, and answers of text and temperature [m°C]; None: let me correct it."""

    question: str
    answers: tuple[tuple[str, int | None], ...]


def temperature_doubt(typed: Typed, unit: Unit, *, warm_box: bool) -> TemperatureDoubt | None:
    """Return what to ask about a typed temperature, None if nothing.

    Parameters
    ----------
    typed : Typed
        As it was read.
    unit : Unit
        The shop's.
    warm_box : bool
        Whether it is a warm box's, which may be warmer than a room.
    """
    value = typed.temperature_mc
    if warm_box and 0 <= value <= BOX_HIGHEST_MC:
        return None
    doubt = room_doubt(value, typed.unit, typed.unit_named)
    if doubt is None:
        return None
    question = translated(doubt.question)
    shown = translated(format_temperature(value, typed.unit))
    if doubt.proposed_mc is None:
        yes = say("TemperatureDoubt", "Yes, {value}").format(value=shown)
        return TemperatureDoubt(
            question,
            ((yes, value), (say("TemperatureDoubt", "Let me correct it"), None)),
        )
    proposed = translated(format_temperature(doubt.proposed_mc, unit))
    yes = say("TemperatureDoubt", "Yes, {value}").format(value=proposed)
    no = say("TemperatureDoubt", "No, {value}").format(value=shown)
    return TemperatureDoubt(question, ((yes, doubt.proposed_mc), (no, value)))
