"""What the import dialog says of a file: texts from a preview. No Qt."""

from __future__ import annotations

from typing import NamedTuple

from rackboard.core.instants import HOUR_US, Instant
from rackboard.core.schedule import OpeningHours
from rackboard.core.temperature import Unit, format_temperature
from rackboard.feeds.logger_csv import Import, Preview, Question
from rackboard.services.import_check import Hole
from rackboard.ui.wording import MONTHS

DELIMITERS = {",": "comma", ";": "semicolon", "\t": "tab", "|": "bar"}
DECIMALS = {".": "point, 21.5", ",": "comma, 21,5"}
ENCODINGS = {
    "utf-8": "UTF-8", "utf-8-sig": "UTF-8, marked", "utf-16": "UTF-16", "cp1252": "Windows-1252",
}  # fmt: skip
ORDERS = {
    "ymd": "year, month, day", "dmy": "day, month, year", "mdy": "month, day, year",
}  # fmt: skip
ASKED = {
    Question.TIME_COLUMN: "Which column holds the time?",
    Question.TEMPERATURE_COLUMN: "Which column holds this zone's temperature?",
    Question.UNIT: "Is it °C or °F? The file doesn't say.",
    Question.DATE_ORDER: "Is the day first, or the month? No day in the file settles it.",
    Question.ZONE: "Which time zone did the logger's clock show?",
}
_FIRST_LISTED = 200


class Row(NamedTuple):
    """One of the file's first lines, as cells of the preview."""

    line: str
    cells: tuple[str, ...]
    at: str
    temperature: str


def moment(hours: OpeningHours, instant: Instant) -> str:
    """Return an instant with its date in the shop's time: "6 Jul 2016 02:00"."""
    local = hours.local(instant)
    return f"{local.day} {MONTHS[local.month - 1]} {local.year} {local:%H:%M}"


def rows(preview: Preview, hours: OpeningHours, unit: Unit) -> tuple[Row, ...]:
    """Return the first lines, each with what it was read as."""
    made = []
    order_open = Question.DATE_ORDER in preview.open_questions
    for line in preview.rows:
        if order_open:
            at = "day or month first?"
        elif line.reason or line.at_us is None:
            at = line.reason or "?"
        else:
            at = moment(hours, line.at_us)
        mc = line.temperature_mc
        shown = "" if mc is None else format_temperature(mc, unit, 2)
        made.append(Row(str(line.line_no), line.cells, at, shown))
    return tuple(made)


def counted(number: int, one: str, several: str) -> str:
    """Return "1 line", "2 lines"."""
    return f"{number} {one if number == 1 else several}"


def summary(found: Import, hours: OpeningHours) -> str:
    """Return what is in the file, in a line."""
    if not found.readings:
        return "No line of it can be taken."
    first, last = found.readings[0][0], found.readings[-1][0]
    parts = [
        f"{counted(len(found.readings), 'reading', 'readings')},"
        f" {moment(hours, first)} to {moment(hours, last)}"
    ]
    left_out = found.skipped_count + found.conflict_count
    named = counted(left_out, "line", "lines") if left_out else "nothing"
    parts.append(f"{named} left out")
    return "; ".join(parts) + "."


def remarks(
    found: Import, gaps: list[Hole], ahead: int, hours: OpeningHours, unit: Unit
) -> list[str]:
    """Return the findings one a line: gaps, left-out lines with reasons, contradictions."""
    lines = [
        f"No record for {hole_text(hole)}: {moment(hours, hole.from_us)} to"
        f" {moment(hours, hole.to_us)}. The board will ask how cold it got."
        for hole in gaps[:_FIRST_LISTED]
    ]
    if ahead:
        lines.append(f"{counted(ahead, 'reading lies', 'readings lie')} after now: left out.")
    if found.newest_first:
        lines.append("The newest line stands first: turned round.")
    elif found.out_of_order:
        lines.append(f"{counted(found.out_of_order, 'line', 'lines')} out of order: put in place.")
    if found.merged:
        lines.append(f"{counted(found.merged, 'line', 'lines')} there twice, the same: taken once.")
    if found.conflict_count:
        said = counted(found.conflict_count, "line gives", "lines give")
        lines.append(f"{said} a second temperature for the same moment: the first is taken.")
    for conflict in found.conflicts[:_FIRST_LISTED]:
        kept = format_temperature(conflict.kept_mc, unit, 2)
        other = format_temperature(conflict.other_mc, unit, 2)
        lines.append(
            f"Line {conflict.line_no}, {moment(hours, conflict.at_us)}: {other}, taken is {kept}."
        )
    for reason, number in sorted(found.reasons.items(), key=lambda item: -item[1]):
        lines.append(f"{counted(number, 'line', 'lines')} left out: {reason}.")
    lines += [
        f"Line {line.line_no}: {line.reason}: {line.text}" for line in found.skipped[:_FIRST_LISTED]
    ]
    if found.skipped_count > _FIRST_LISTED:
        lines.append(f"… and {found.skipped_count - _FIRST_LISTED} more lines.")
    return lines


def hole_text(hole: Hole) -> str:
    """Return how long a stretch without a record is."""
    hours = (hole.to_us - hole.from_us) / HOUR_US
    return f"{hours:.3g} h" if hours < 48 else f"{hours / 24:.3g} days"


def result(new: int, same: int, replaced: int, kept: int, left_out: int) -> str:
    """Return what an import came to: "603 new, 12 already there, 2 lines left out"."""
    parts = [f"{new} new", f"{same} already there"]
    if replaced:
        parts.append(f"{replaced} replaced by the file's")
    if kept:
        parts.append(f"{kept} kept as they were")
    parts.append(f"{counted(left_out, 'line', 'lines')} left out")
    return ", ".join(parts)


def zone_names(shop: str) -> list[str]:
    """Return the time zones to choose from: the shop's, UTC, fixed offsets, then all."""
    from zoneinfo import available_timezones

    offsets = [
        f"UTC{'+' if hour >= 0 else '-'}{abs(hour):02d}:00" for hour in range(-11, 15) if hour
    ]
    first = [name for name in (shop, "UTC", *offsets) if name]
    named = sorted(name for name in available_timezones() if "/" in name)
    return list(dict.fromkeys([*first, *named]))


def zone_said(preview: Preview) -> str:
    """Return how the times of a file are read."""
    if preview.found is not None and not preview.found.readings:
        return ""
    if preview.offset_in_file:
        return "The file's times carry their own offset; nothing to choose."
    zone = preview.settled.zone
    if zone is None:
        return ""
    if "/" in zone:
        return (
            "Summer time as in that zone. An hour that came twice is left out if nothing tells"
            " which."
        )
    return "The same all year: this clock was never put forward for summer time."
