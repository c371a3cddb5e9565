"""The sources of live temperatures behind one protocol: files that grow, and sensors."""

from __future__ import annotations

from dataclasses import asdict, fields
from pathlib import Path
from typing import TYPE_CHECKING, Any

from rackboard.core.errors import InputError
from rackboard.core.feed import (
    Fault,
    FaultKind,
    Feed,
    FeedKind,
    FeedSource,
    Polled,
    Sample,
    Start,
    source_of,
)
from rackboard.core.temperature import Unit
from rackboard.core.text import text
from rackboard.feeds.csv_watch import CsvWatch
from rackboard.feeds.logger_csv import Answers, DateOrder, Preview
from rackboard.feeds.quality import RANGE_MC, Judge, JudgedFeed
from rackboard.feeds.sysfs import ROOT, SysfsFeed

if TYPE_CHECKING:
    from collections.abc import Callable

__all__ = [
    "Fault", "FaultKind", "Feed", "FeedKind", "FeedSource", "Polled", "Sample", "Start",
    "layout_of", "open_feed", "settled_of", "source_of",
]  # fmt: skip


def layout_of(preview: Preview) -> dict[str, object]:
    """Return how a file is read, as JSON values for the settings.

    Parameters
    ----------
    preview : Preview
        Of the file, with every question answered.

    Raises
    ------
    InputError
        If a question is still open.
    """
    if preview.found is None:
        questions = ", ".join(preview.open_questions)
        raise InputError(
            text("Logger", "an answer: {questions}").format(questions=questions),
            text("Logger", "none"), text("Feed", "temperature source"),
        )  # fmt: skip
    made: dict[str, object] = {
        name: value for name, value in asdict(preview.settled).items() if value is not None
    }
    return {**made, "columns": list(preview.columns) if preview.settled.header_line else []}


def settled_of(layout: dict[str, object]) -> tuple[Answers, tuple[str, ...]]:
    """Return the answers and the header's columns of a layout.

    Parameters
    ----------
    layout : dict
        As `layout_of` made it.

    Raises
    ------
    InputError
        If it lacks what is needed to read a line.
    """
    where = text("Feed", "temperature source")
    known = {field.name for field in fields(Answers)}
    values: dict[str, Any] = {name: value for name, value in layout.items() if name in known}
    columns = layout.get("columns")
    try:
        if "unit" in values:
            values["unit"] = Unit(str(values["unit"]))
        if "date_order" in values:
            values["date_order"] = DateOrder(str(values["date_order"]))
        settled = Answers(**values)
    except (TypeError, ValueError) as error:
        raise InputError(text("Feed", "how its lines are read"), str(error), where) from None
    needed = (settled.time_column, settled.temperature_column)
    if not all(isinstance(column, int) for column in needed) or not settled.delimiter:
        wanted = text("Feed", "the columns of time and temperature")
        raise InputError(wanted, repr(layout), where)
    named = tuple(map(str, columns)) if isinstance(columns, list) else ()
    return settled, named


def open_feed(
    source: FeedSource,
    start: Start,
    root: Path = ROOT,
    run: Callable[[Callable[[], None]], None] | None = None,
) -> Feed:
    """Return the feed of a source, with its judge; nothing is read yet.

    Parameters
    ----------
    source : FeedSource
        What a person has set.
    start : Start
        What the record has of it already.
    root : Path
        Where the file system with the sensors begins.
    run : callable, optional
        Runs the reading of a sensor; see `SysfsFeed`.

    Raises
    ------
    InputError
        If the layout of a file can't be used.
    """
    raw: Feed
    if source.kind is FeedKind.CSV:
        settled, columns = settled_of(source.layout or {})
        raw = CsvWatch(Path(source.path), settled, columns, start.after_us)
    else:
        raw = SysfsFeed(source.kind, source.path, root, run)
    return JudgedFeed(raw, Judge(RANGE_MC[source.kind], start.now_us, start.recent))
