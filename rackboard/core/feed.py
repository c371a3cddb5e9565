"""What a live source of temperature hands over: samples, and what is wrong with it."""

from __future__ import annotations

from enum import StrEnum
from typing import NamedTuple, Protocol

from rackboard.core.errors import InputError
from rackboard.core.instants import Instant
from rackboard.core.text import Text, text


class FeedKind(StrEnum):
    """What kind of source it is."""

    CSV = "csv"
    ONE_WIRE = "one-wire"
    HWMON = "hwmon"
    IIO = "iio"


class FaultKind(StrEnum):
    """What can be wrong with a source."""

    MISSING = "missing"
    UNREADABLE = "unreadable"
    COLUMNS = "columns"
    CHECKSUM = "checksum"
    SILENT = "silent"
    LOST = "lost"
    FROZEN = "frozen"
    OUT_OF_RANGE = "out of range"
    POWER_ON = "power-on value"
    JUMP = "jump"
    AHEAD = "ahead"


class Sample(NamedTuple):
    """A temperature [m°C] as a source gave it, and when it was measured [µs UTC]."""

    at_us: Instant
    temperature_mc: int


class Fault(NamedTuple):
    """Something wrong with a source, in words, from … to (None: still so) [µs UTC]."""

    kind: FaultKind
    said: Text
    since_us: Instant
    until_us: Instant | None = None


class Polled(NamedTuple):
    """What a source had to say.

    Attributes
    ----------
    samples : tuple of Sample
        What is new, in the order in which it came.
    faults : tuple of Fault
        What is wrong now, and what came and went since the last poll.
    again : bool
        Whether there is more to fetch than one poll takes.
    """

    samples: tuple[Sample, ...] = ()
    faults: tuple[Fault, ...] = ()
    again: bool = False


class Feed(Protocol):
    """A source of temperature that is asked from time to time."""

    def poll(self, now: Instant) -> Polled:
        """Return what has come since the last poll; never waits.

        Parameters
        ----------
        now : int
            The present [µs UTC].
        """


class FeedSource(NamedTuple):
    """Where a zone's temperatures come from, as a person has set it.

    Attributes
    ----------
    zone_id : int
        Whose air it is.
    kind : FeedKind
        How it is read.
    path : str
        The file's path, or the sensor's lasting name.
    layout : dict, optional
        How the lines of a file are read; JSON values.
    from_us : int
        Nothing older is taken [µs UTC].
    """

    zone_id: int
    kind: FeedKind
    path: str
    layout: dict[str, object] | None = None
    from_us: Instant = 0

    def row(self) -> dict[str, object]:
        """Return it as JSON values, for the settings."""
        row: dict[str, object] = {
            "zone": self.zone_id, "kind": self.kind.value, "path": self.path,
            "from_us": self.from_us,
        }  # fmt: skip
        if self.layout is not None:
            row["layout"] = self.layout
        return row


class Start(NamedTuple):
    """Where a source is taken up again: what the record has of it already.

    Attributes
    ----------
    after_us : int
        Only later readings are wanted [µs UTC].
    recent : tuple of Sample
        The last ones of the record, in order of time.
    now_us : int
        The present [µs UTC].
    """

    after_us: Instant
    recent: tuple[Sample, ...]
    now_us: Instant


def source_of(row: object) -> FeedSource:
    """Return the source that a row of the settings names.

    Parameters
    ----------
    row : object
        JSON values, as `FeedSource.row` gives them.

    Raises
    ------
    InputError
        If it names none.

    Examples
    --------
    >>> source_of({"zone": 1, "kind": "one-wire", "path": "28-0a"}).kind.value
    'one-wire'
    """
    where = text("Feed", "temperature source")
    if not isinstance(row, dict):
        raise InputError(text("Feed", "a source of temperature"), row, where)
    zone, path, start = row.get("zone"), row.get("path"), row.get("from_us", 0)
    layout = row.get("layout")
    try:
        kind = FeedKind(row.get("kind", ""))
    except ValueError:
        wanted = text("Feed", "a file or a sensor")
        raise InputError(wanted, str(row.get("kind")), where) from None
    if (
        not isinstance(zone, int) or not isinstance(path, str) or not path
        or not isinstance(start, int) or not isinstance(layout, dict | None)
    ):  # fmt: skip
        raise InputError(text("Feed", "a zone and where to read"), repr(row), where)
    return FeedSource(zone, kind, path, layout, start)
