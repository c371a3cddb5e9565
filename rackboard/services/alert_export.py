"""The journal of alerts as a CSV file, for whoever asks later what was said when.

UTF-8 with a byte order mark, because the spreadsheets of a shop take a file without one for
their own code page; commas, CRLF and quotes as in RFC 4180. Names of columns, kinds and states
are English whatever the window speaks, so that files of two benches can be joined.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from rackboard.core.alerts.kinds import NATURE, Kind
from rackboard.core.instants import Instant, to_datetime
from rackboard.core.schedule import OpeningHours
from rackboard.services.alert_log import AlertLog, Entry, courier_words
from rackboard.store import Store
from rackboard.store.alert_pages import Cursor, Wanted
from rackboard.store.files import write_atomically

COLUMNS = (
    "id", "code", "kind", "episode", "job", "club", "place", "zone", "batch", "began_utc",
    "began_local", "raised_utc", "ended_utc", "ended_local", "state", "taken_utc", "taken_by",
    "put_off_until_utc", "air_c", "limit_c", "accepted_c", "closed_utc", "closed_local",
    "outcome", "couriers",
)  # fmt: skip
"""The columns in order. What isn't known is empty.

- id: number of the row in the journal; code: H1 to H5 for alarms, M1 to M4 for prompts and
  messages; kind: what it is about; episode: how often it began for the same joint, zone or job.
- job, club, batch: number, name, number; place: slots or place when it began; zone: its name.
- began: when the condition began, or the milestone fell due; raised: when the board said so;
  ended: when the condition went off; taken: when somebody took or saw it, by initials in
  taken_by; put_off_until; closed, and as what: outcome. Instants are ISO 8601, "utc" with Z,
  "local" by the shop's clock with its offset.
- state: where it stands; couriers: what they did.
- air, limit, accepted: of the zone, of the sheet with its margin, and the air at which the
  later times were accepted [°C].
"""

_PAGE = 1_000
_FORMULA = ("=", "+", "-", "@", "\t", "\r")
_BOM = "\ufeff"


def export_alerts(store: Store, hours: OpeningHours, wanted: Wanted, path: Path) -> int:
    """Write the alerts that are wanted to a file, the latest first; return how many.

    Parameters
    ----------
    store : Store
        The data file.
    hours : OpeningHours
        Of the shop; they hold its time zone.
    wanted : Wanted
        Which.
    path : Path
        The file; an old one is replaced only when the new one is whole.

    Raises
    ------
    StoreError
        If it can't be written.
    """
    import csv
    import io

    stream = io.StringIO(newline="")
    stream.write(_BOM)
    writer = csv.writer(stream)
    writer.writerow(COLUMNS)
    count = 0
    for entry in _entries(store, wanted):
        writer.writerow(_cells(entry, hours))
        count += 1
    write_atomically(path, stream.getvalue())
    return count


def _entries(store: Store, wanted: Wanted) -> Iterator[Entry]:
    log = AlertLog(store)
    after: Cursor | None = None
    while True:
        entries, after = log.page(wanted, _PAGE, after)
        yield from entries
        if after is None:
            return


def _cells(entry: Entry, hours: OpeningHours) -> list[object]:
    alert, about = entry.alert, entry.about
    kind, data = Kind(alert.kind), alert.data

    def local(instant: Instant | None) -> str:
        return "" if instant is None else hours.local(instant).isoformat(timespec="seconds")

    return [
        alert.id, NATURE[kind].code, kind.value, alert.episode, plain(about.job),
        plain(about.club), plain(about.where), plain(about.zone),
        data.get("batch", "") if isinstance(data.get("batch"), int) else "",
        _utc(alert.due_us), local(alert.due_us), _utc(alert.raised_us), _utc(alert.ended_us),
        local(alert.ended_us), alert.phase, _utc(alert.taken_us), plain(alert.taken_by or ""),
        _utc(alert.until_us), _celsius(data.get("air_mc")), _celsius(data.get("limit_mc")),
        _celsius(alert.accepted_mc), _utc(alert.closed_us), local(alert.closed_us),
        plain(alert.closed_as or ""), plain(courier_words(entry.tellings)),
    ]  # fmt: skip


def plain(cell: str) -> str:
    """Return a text that no spreadsheet takes for a formula.

    Whoever names a club "=1+1" is to read that, and nobody's machine is to reckon it: an
    apostrophe stands before it.

    Examples
    --------
    >>> plain("=1+1"), plain("5 iron"), plain(" @SUM(A1)")
    ("'=1+1", '5 iron', "' @SUM(A1)")
    """
    return f"'{cell}" if cell.lstrip(" \n").startswith(_FORMULA) else cell


def _utc(instant: Instant | None) -> str:
    if instant is None:
        return ""
    moment = to_datetime(instant).replace(tzinfo=None)
    return f"{moment.isoformat(timespec='seconds')}Z"


def _celsius(milli_c: object) -> str:
    return f"{milli_c / 1000:.1f}" if isinstance(milli_c, int) else ""
