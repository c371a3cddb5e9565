"""Kills the real program at random moments: python tests/kill/run.py 300 [SEED].

After each kill the data file is opened as the program opens it and compared with what had
been acknowledged; the same folder goes on, so each start also opens what a kill left behind.
"""

from __future__ import annotations

import json
import os
import random
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from typing import Any, NamedTuple

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parents[1]))

from rackboard.core.instants import parse_iso  # noqa: E402
from rackboard.store import Store  # noqa: E402
from rackboard.store.changes import KEYS  # noqa: E402
from rackboard.store.paths import Paths  # noqa: E402

EARLIEST_S, LATEST_S = 0.1, 1.5
"""The kill comes so long after the start: while it opens, or in the middle of the work."""
START = parse_iso("2026-03-09T08:00Z", "start")

Row = dict[str, Any]
Known = dict[tuple[str, tuple[Any, ...]], Row | None]


class Figures(NamedTuple):
    """What a number of kills came to."""

    kills: int
    transactions: int
    rows: int
    unsaid: int
    seconds: float


class LostError(AssertionError):
    """Something that had been acknowledged is not there, or half of something is."""


def kill_once(folder: Path, seed: int, start_us: int, delay_s: float) -> list[Row]:
    """Start the program, kill it, and return the lines that it wrote before."""
    variables = dict(os.environ, QT_QPA_PLATFORM="offscreen", PYTHONPATH=str(HERE.parents[1]),
                     QT_LOGGING_RULES="*.warning=false")  # fmt: skip
    said, cried = folder.with_name("said"), folder.with_name("cried")
    with said.open("wb") as out, cried.open("wb") as err:
        process = subprocess.Popen(
            [sys.executable, HERE / "driver.py", folder, str(seed), str(start_us)],
            stdout=out, stderr=err, env=variables,
        )  # fmt: skip
        try:
            process.wait(delay_s)
        except subprocess.TimeoutExpired:
            process.send_signal(signal.SIGKILL)
            process.wait()
    if process.returncode != -signal.SIGKILL:
        raise LostError(f"the program ended by itself: {cried.read_text()}")
    if b"Traceback" in cried.read_bytes():
        raise LostError(f"the program failed: {cried.read_text()}")
    log = folder / "logs" / "rackboard.log"
    if log.exists() and "Traceback" in log.read_text():
        raise LostError(f"the program failed: {log.read_text()}")
    return [json.loads(line) for line in said.read_text().splitlines()]


def check(folder: Path, known: Known) -> int:
    """Open the data file and compare; return how many rows nobody had told of yet."""
    store = Store.open(Paths.below(folder), START)
    try:
        database = store._database
        if (found := database.value("PRAGMA integrity_check")) != "ok":
            raise LostError(f"integrity_check: {found}")
        if found := database.rows("PRAGMA foreign_key_check"):
            raise LostError(f"foreign_key_check: {found}")
        _check_whole(store)
        return _compare(store, known)
    finally:
        store.close()


def _compare(store: Store, known: Known) -> int:
    """Compare every row with what is known of it, and take the file's word from here on.

    What was being written when the kill came may be there, but then as one whole act: all
    rows that differ must stem from the act of one instant.
    """
    unsaid: list[tuple[str, tuple[Any, ...], Row | None, Row | None]] = []
    for table in sorted({table for table, _ in known}):
        names = KEYS[table]
        rows = store._database.images(f'SELECT * FROM "{table}"')
        present = {tuple(row[name] for name in names): row for row in rows}
        expected = {key: row for (of, key), row in known.items() if of == table}
        for key in present.keys() | {key for key, row in expected.items() if row is not None}:
            if present.get(key) != expected.get(key):
                # Readings of a feed are nobody's rows.
                if table == "reading" and key not in expected and present[key]["source"] == "feed":
                    continue
                unsaid.append((table, key, expected.get(key), present.get(key)))
    events = [row for table, _, _, row in unsaid if table == "event" and row is not None]
    if len({event["recorded_us"] for event in events}) > 1:
        raise LostError(f"more than one act that nobody told of: {unsaid}")
    for table, key, expected_row, row in unsaid:
        if table in ("event", "former", "permission_grant") and row is None:
            raise LostError(f"{table} {key} is gone: {expected_row}")
        known[table, key] = row
    return len(unsaid)


def _check_whole(store: Store) -> None:
    """Look for half of an act: what one act writes together must be there together."""
    rows = store._database.rows
    for question, statement in (
        ("jobs with other than their clubs",
         "SELECT number, count(c.id) n FROM job j LEFT JOIN club c ON c.job_id = j.id"
         " GROUP BY j.id HAVING n <> CAST(substr(number, length(number)) AS INTEGER)"),
        ("clubs without a joint",
         "SELECT id FROM club WHERE id NOT IN (SELECT club_id FROM joint)"),
        ("clubs that lie nowhere, with a joint that has not ended",
         "SELECT club_id FROM joint WHERE ended_us IS NULL AND club_id NOT IN"
         " (SELECT club_id FROM stay WHERE to_us IS NULL)"),
        ("joints glued with a batch that isn't mixed, or the other way",
         "SELECT t.id FROM joint t JOIN batch b ON b.id = t.batch_id"
         " WHERE (t.glued_us IS NULL) <> (b.mixed_us IS NULL)"),
        ("batches without a joint",
         "SELECT id FROM batch WHERE id NOT IN (SELECT batch_id FROM joint)"),
        ("jobs laid out without a word of it",
         "SELECT id FROM job WHERE id NOT IN"
         " (SELECT subject_id FROM event WHERE kind = 'laid out')"),
        ("open HOLDs of a joint that has ended",
         "SELECT h.id FROM hold h JOIN joint t ON t.id = h.joint_id"
         " WHERE h.to_us IS NULL AND t.ended_us IS NOT NULL AND t.ended_as = 'scrapped'"
         " AND h.from_us > t.ended_us"),
        ("feeds with less than their five readings",
         "SELECT zone_id, count(*) n FROM reading WHERE source = 'feed'"
         " GROUP BY zone_id HAVING n % 5"),
        ("shops half founded",
         "SELECT n FROM (SELECT count(*) n FROM place) WHERE n NOT IN (0, 5)"),
    ):  # fmt: skip
        if found := rows(statement):
            raise LostError(f"{question}: {found}")


def kill(times: int, seed: int, folder: Path) -> Figures:
    """Kill so many times and return the figures.

    Raises
    ------
    LostError
        As soon as one kill has lost or halved something; the folder is left as it is.
    """
    dice = random.Random(seed)
    known: Known = {}
    now, transactions, told, unsaid = START, 0, 0, 0
    begun = time.monotonic()
    for number in range(times):
        delay_s = dice.uniform(EARLIEST_S, LATEST_S)
        lines = kill_once(folder, seed * 1000 + number, now, delay_s)
        for line in lines:
            for table, key, row in line["rows"]:
                known[table, tuple(key)] = row
                told += 1
            now = line["now"]
        transactions += len(lines)
        if (folder / "rackboard.db").exists():
            try:
                unsaid += check(folder, known)
            except LostError as lost:
                where = f"kill {number} of seed {seed}, after {delay_s:.3f} s"
                raise LostError(f"{where}: {lost}") from None
        now += 60_000_000
    return Figures(times, transactions, told, unsaid, time.monotonic() - begun)


def main() -> int:
    """Kill as often as the first argument says and print the figures."""
    times = int(sys.argv[1]) if len(sys.argv) > 1 else 300
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    with tempfile.TemporaryDirectory(prefix="kill-") as home:
        try:
            done = kill(times, seed, Path(home) / "data")
        except LostError as lost:
            print(lost)
            return 1
    print(
        f"{done.kills} kills in {done.seconds:.0f} s: {done.transactions} transactions told of, "
        f"{done.rows} rows, none lost, none by half; {done.unsaid} rows were on the disk before "
        "anybody could be told."
    )
    return 0


if __name__ == "__main__":
    sys.exit(main())
