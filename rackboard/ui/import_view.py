"""What the import dialog says of a file: texts from a preview."""

from __future__ import annotations

from typing import NamedTuple

from PySide6.QtCore import QLocale

from rackboard.core.instants import HOUR_US, Instant
from rackboard.core.schedule import OpeningHours
from rackboard.core.temperature import Unit, format_temperature
from rackboard.core.text import Figure, text
from rackboard.feeds.logger_csv import Import, Preview, Question
from rackboard.services.import_check import Hole
from rackboard.ui.language import say, spoken, translated

DELIMITERS = {
    ",": text("ImportView", "comma"), ";": text("ImportView", "semicolon"),
    "\t": text("ImportView", "tab"), "|": text("ImportView", "bar"),
}  # fmt: skip
DECIMALS = {".": text("ImportView", "point, 21.5"), ",": text("ImportView", "comma, 21,5")}
ENCODINGS = {
    "utf-8": "UTF-8", "utf-8-sig": text("ImportView", "UTF-8, marked"), "utf-16": "UTF-16",
    "cp1252": "Windows-1252",
}  # fmt: skip
ORDERS = {
    "ymd": text("ImportView", "year, month, day"), "dmy": text("ImportView", "day, month, year"),
    "mdy": text("ImportView", "month, day, year"),
}  # fmt: skip
ASKED = {
    Question.TIME_COLUMN: text("ImportView", "Which column holds the time?"),
    Question.TEMPERATURE_COLUMN: text(
        "ImportView", "Which column holds this zone's temperature?"
    ),
    Question.UNIT: text("ImportView", "Is it °C or °F? The file doesn't say."),
    Question.DATE_ORDER: text(
        "ImportView", "Is the day first, or the month? No day in the file settles it."
    ),
    Question.ZONE: text("ImportView", "Which time zone did the logger's clock show?"),
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
    month = QLocale(spoken()).standaloneMonthName(local.month, QLocale.FormatType.ShortFormat)
    return say("ImportView", "{day} {month} {year} {time}").format(
        day=local.day, month=month, year=local.year, time=f"{local:%H:%M}"
    )


def rows(preview: Preview, hours: OpeningHours, unit: Unit) -> tuple[Row, ...]:
    """Return the first lines, each with what it was read as."""
    made = []
    order_open = Question.DATE_ORDER in preview.open_questions
    for line in preview.rows:
        if order_open:
            at = say("ImportView", "day or month first?")
        elif line.reason or line.at_us is None:
            at = translated(line.reason or "?")
        else:
            at = moment(hours, line.at_us)
        mc = line.temperature_mc
        shown = "" if mc is None else translated(format_temperature(mc, unit, 2))
        made.append(Row(str(line.line_no), line.cells, at, shown))
    return tuple(made)


def summary(found: Import, hours: OpeningHours) -> str:
    """Return what is in the file, in a line."""
    if not found.readings:
        return say("ImportView", "No line of it can be taken.")
    number = len(found.readings)
    held = say(
        "ImportView", "%n readings, {first} to {last}", "%n reading, {first} to {last}", number
    ).format(first=moment(hours, found.readings[0][0]), last=moment(hours, found.readings[-1][0]))
    left_out = found.skipped_count + found.conflict_count
    if not left_out:
        return say("ImportView", "{held}; nothing left out.").format(held=held)
    lines = say("ImportView", "%n lines left out", "%n line left out", left_out)
    return say("ImportView", "{held}; {lines}.").format(held=held, lines=lines)


def remarks(
    found: Import, gaps: list[Hole], ahead: int, hours: OpeningHours, unit: Unit
) -> list[str]:
    """Return the findings one a line: gaps, left-out lines with reasons, contradictions."""
    gap = say(
        "ImportView",
        "No record for {length}: {first} to {last}. The board will ask how cold it got.",
    )
    lines = [
        gap.format(
            length=hole_text(hole), first=moment(hours, hole.from_us),
            last=moment(hours, hole.to_us),
        )
        for hole in gaps[:_FIRST_LISTED]
    ]  # fmt: skip
    if ahead:
        lines.append(
            say("ImportView", "%n readings lie after now: left out.",
                "%n reading lies after now: left out.", ahead)
        )  # fmt: skip
    if found.newest_first:
        lines.append(say("ImportView", "The newest line stands first: turned round."))
    elif found.out_of_order:
        lines.append(
            say("ImportView", "%n lines out of order: put in place.",
                "%n line out of order: put in place.", found.out_of_order)
        )  # fmt: skip
    if found.merged:
        lines.append(
            say("ImportView", "%n lines there twice, the same: taken once.",
                "%n line there twice, the same: taken once.", found.merged)
        )  # fmt: skip
    return lines + _left_out(found, hours, unit)


def _left_out(found: Import, hours: OpeningHours, unit: Unit) -> list[str]:
    lines = []
    if found.conflict_count:
        lines.append(
            say("ImportView",
                "%n lines give a second temperature for the same moment: the first is taken.",
                "%n line gives a second temperature for the same moment: the first is taken.",
                found.conflict_count)
        )  # fmt: skip
    other = say("ImportView", "Line {line}, {moment}: {other}, taken is {kept}.")
    lines += [
        other.format(
            line=conflict.line_no, moment=moment(hours, conflict.at_us),
            other=translated(format_temperature(conflict.other_mc, unit, 2)),
            kept=translated(format_temperature(conflict.kept_mc, unit, 2)),
        )
        for conflict in found.conflicts[:_FIRST_LISTED]
    ]  # fmt: skip
    for reason, number in sorted(found.reasons.items(), key=lambda item: -item[1]):
        said = say("ImportView", "%n lines left out: {reason}.", "%n line left out: {reason}.",
                   number)  # fmt: skip
        lines.append(said.format(reason=translated(reason)))
    one = say("ImportView", "Line {line}: {reason}: {text}")
    lines += [
        one.format(line=line.line_no, reason=translated(line.reason), text=line.text)
        for line in found.skipped[:_FIRST_LISTED]
    ]
    more = found.skipped_count - _FIRST_LISTED
    if more > 0:
        lines.append(say("ImportView", "… and %n more lines.", "… and %n more line.", more))
    return lines


def hole_text(hole: Hole) -> str:
    """Return how long a stretch without a record is."""
    hours = (hole.to_us - hole.from_us) / HOUR_US
    if hours < 48:
        return say("ImportView", "{hours} h").format(hours=_local(f"{hours:.3g}"))
    return say("ImportView", "{days} days").format(days=_local(f"{hours / 24:.3g}"))


def _local(figure: str) -> str:
    return translated(Figure(figure))


def result(new: int, same: int, replaced: int, kept: int, left_out: int) -> str:
    """Return what an import came to: "603 new, 12 already there, 2 lines left out."."""
    parts = [
        say("ImportView", "%n new", "%n new", new),
        say("ImportView", "%n already there", "%n already there", same),
    ]
    if replaced:
        parts.append(
            say("ImportView", "%n replaced by the file's", "%n replaced by the file's", replaced)
        )
    if kept:
        parts.append(say("ImportView", "%n kept as they were", "%n kept as it was", kept))
    parts.append(say("ImportView", "%n lines left out", "%n line left out", left_out))
    return f"{', '.join(parts)}."


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
        return say("ImportView", "The file's times carry their own offset; nothing to choose.")
    zone = preview.settled.zone
    if zone is None:
        return ""
    if "/" in zone:
        return say(
            "ImportView",
            "Summer time as in that zone. An hour that came twice is left out if nothing tells"
            " which.",
        )
    return say(
        "ImportView", "The same all year: this clock was never put forward for summer time."
    )
