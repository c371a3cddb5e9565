"""The speed of the alerts against its bounds: python tests/bench/alerts.py.

Evaluating 96 joints has a bound in milliseconds. Opening the page over a year's journal of
50 000 rows has one too, and is printed beside its floor: the same page over an empty journal.
Whether the journal slows the start is a ratio: starts with it to starts without, in turns, in
fresh processes.
"""

from __future__ import annotations

import json
import os
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from statistics import median
from time import perf_counter

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE), str(HERE.parent), str(HERE.parents[1])]

import board as tick  # noqa: E402
import shop_file  # noqa: E402

from rackboard.core.alerts.kinds import ALARMS, NATURE, Kind, Subject  # noqa: E402
from rackboard.core.instants import DAY_US, MINUTE_US  # noqa: E402
from rackboard.services.alerts import Alerts  # noqa: E402
from rackboard.store import Store  # noqa: E402
from rackboard.store.paths import Paths  # noqa: E402

ROWS = 50_000
TICK_MS, PAGE_MS, START = 2.0, 200.0, 1.05
"""Bounds: an evaluation [ms], the page of a full journal [ms], and the ratio of the starts."""
RUNS = 11
START_RUNS = 15


def evaluation_ms(ticks: int = 200) -> float:
    """Return the mean time of evaluating the alerts of 96 joints, 10 s after the last time [ms].

    The mean, so that the tick in which something is raised counts.
    """
    shop = tick.full_shop()
    alerts = Alerts(shop.store, shop.clock)
    for _ in range(3):
        shop.board.tick()
        alerts.tick(shop.board)
    took = 0.0
    for _ in range(ticks):
        shop.clock.advance(seconds=10)
        shop.board.tick()
        start = perf_counter()
        alerts.tick(shop.board)
        took += perf_counter() - start
    return took / ticks * 1000


def fill_journal(store: Store, now: int, rows: int = ROWS) -> None:
    """Write an invented year of closed alerts, each told once, about what there is."""
    raw = store.alerts._database.raw
    subjects = {
        Subject.JOINT: [r[0] for r in raw.execute("SELECT id FROM joint")],
        Subject.ZONE: [r[0] for r in raw.execute("SELECT id FROM zone")],
        Subject.JOB: [r[0] for r in raw.execute("SELECT id FROM job")],
    }
    batches = [r[0] for r in raw.execute("SELECT id FROM batch")]
    kinds = list(Kind)
    step = 365 * DAY_US // rows
    alerts, tellings = [], []
    for n in range(rows):
        kind = kinds[n % len(kinds)]
        subject = NATURE[kind].subject
        of = subjects[Subject.JOB if subject is Subject.JOB_BATCH else subject]
        batch = batches[n % len(batches)] if subject is Subject.JOB_BATCH else 0
        due = now - (rows - n) * step
        data = {"air_mc": 12_000, "limit_mc": 16_000, "clubs": 8, "batch": 1, "job": "200"}
        alarm = kind in ALARMS
        alerts.append((
            kind.value, of[n % len(of)], batch, n + 1, "closed", due, due, json.dumps(data),
            due + 20 * MINUTE_US if alarm else None, due + MINUTE_US, "KT", due, due,
            due + 30 * MINUTE_US, "over" if alarm else "ended",
        ))  # fmt: skip
        tellings.append((
            kind.value, kind.value, "zone 1", due, 1, 1, json.dumps({"alerts": [n + 1]}),
            '{"Desktop notices": "shown"}',
        ))  # fmt: skip
    raw.execute("BEGIN IMMEDIATE")
    first = raw.execute("SELECT coalesce(max(id), 0) FROM alert").fetchone()[0]
    raw.executemany(
        "INSERT INTO alert (kind, subject_id, batch_id, episode, phase, due_us, raised_us,"
        " data_json, ended_us, taken_us, taken_by, first_told_us, told_us, closed_us, closed_as)"
        f" VALUES ({', '.join('?' * 15)})", alerts,
    )  # fmt: skip
    raw.executemany(
        "INSERT INTO telling (key, kind, group_key, at_us, sounded, counted, data_json,"
        f" couriers_json) VALUES ({', '.join('?' * 8)})", tellings,
    )  # fmt: skip
    raw.execute("COMMIT")
    assert first == 0, "the tellings name the rows from 1 on"


def page_ms(*, full: bool, runs: int = RUNS) -> float:
    """Return the median time until the page is open and painted [ms]."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from PySide6.QtWidgets import QApplication, QWidget

    from rackboard.ui.resources import load_fonts

    app = QApplication.instance() or QApplication([])
    load_fonts()
    shop = tick.full_shop()
    if full:
        fill_journal(shop.store, shop.clock.now())
    from rackboard.ui.alerts_page import AlertsPage
    from rackboard.ui.session import Session

    session = Session(shop.store, shop.clock, shop.board, shop.bench)
    session.alerts = Alerts(shop.store, shop.clock)
    session.tick()
    window = QWidget()
    window.resize(1920, 1080)
    window.show()
    times = []
    for _ in range(runs):
        start = perf_counter()
        page = AlertsPage(session, window)
        page.show()
        page.grab()
        times.append(perf_counter() - start)
        assert (page.model.rowCount() > 0) is full or not full
        page.close()
        app.processEvents()
    window.close()
    return median(times) * 1000


def start_ratio(folder: Path, runs: int = START_RUNS) -> tuple[float, float, float]:
    """Return the first paint with a full journal and with none [ms], and their ratio."""
    import run

    homes = {full: folder / ("full" if full else "none") for full in (True, False)}
    for full, home in homes.items():
        run.environment(home)
        data = home / "data_home" / "rackboard"
        shop_file.fill(data, 30)
        if full:
            import time

            now = time.time_ns() // 1000
            store = Store.open(Paths.below(data), now)
            fill_journal(store, now)
            store.close()
        run.started(run.BOARD, "memory", home)  # warms the caches; what is due is written once
    times: dict[bool, list[float]] = {True: [], False: []}
    for number in range(runs):
        for full in (True, False) if number % 2 else (False, True):
            times[full].append(run.started(run.BOARD, "paint", homes[full])[0])
    ratio = median(a / b for a, b in zip(times[True], times[False], strict=True))
    return median(times[True]), median(times[False]), ratio


def figures(folder: Path) -> Iterator[tuple[str, str, str, float, float, str]]:
    """Yield a line each: what, measured, floor, value, bound, unit."""
    took = evaluation_ms()
    yield "alerts of 96 joints", f"{took:.2f} ms", "-", took, TICK_MS, " ms"
    floor, full = page_ms(full=False), page_ms(full=True)
    yield "alerts page, 50 000 rows", f"{full:.0f} ms", f"{floor:.0f} ms", full, PAGE_MS, " ms"
    with_it, without, ratio = start_ratio(folder)
    yield ("first paint, 50 000 alerts to none", f"{with_it:.0f} ms", f"{without:.0f} ms", ratio,
           START, "×")  # fmt: skip


def main() -> int:
    """Print the figures beside their bounds; return 1 if one is missed."""
    kept = True
    with tempfile.TemporaryDirectory(prefix="bench-") as folder:
        for name, measured, floor, value, bound, unit in figures(Path(folder)):
            ok = value <= bound
            kept = kept and ok
            print(f"{name:36}{measured:>11}{floor:>10}{value:>9.3g}{unit:3} ≤ {bound:g}"
                  f"  {'yes' if ok else 'NO'}", flush=True)  # fmt: skip
    return int(not kept)


if __name__ == "__main__":
    raise SystemExit(main())
