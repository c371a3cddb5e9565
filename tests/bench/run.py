"""The program's speed against its bounds: python tests/bench/run.py [--quick].

Times and memory of the window are ratios to an empty window measured in the same run, in
fresh processes, in turns, with warm caches; the floors' scripts lie beside this one. A table
is printed; the exit code is 1 if a bound is missed. Linux only (VmHWM).
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from statistics import median
from typing import NamedTuple

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE), str(HERE.parent), str(HERE.parents[1])]

import board as tick  # noqa: E402
import cure  # noqa: E402
import shop_file  # noqa: E402

EMPTY = HERE / "floors" / "empty_window.py"
BOARD = HERE / "board_window.py"
OPENING = HERE / "opening_window.py"
RUNS, RUNS_QUICK = 11, 7
IDLE_S = 20.0
YEAR_DAYS = 365

PAINT, MEMORY, CURVE, IDLE, TEN_YEARS = 2.2, 1.6, 10.0, 0.01, 1.05
OPEN = 22.0
"""Bounds: ratios to the floors, the idle one a share of a core. Glue-up, find and inspector
are to open within 100 ms, where an empty dialog with one field takes 4 to 5."""

_FOLDERS = ("DATA_HOME", "CONFIG_HOME", "STATE_HOME", "CACHE_HOME", "RUNTIME_DIR")


class Figure(NamedTuple):
    """One line of the table; `more` says that more is better."""

    name: str
    measured: str
    floor: str
    value: float
    bound: float
    unit: str = "×"
    more: bool = False

    @property
    def kept(self) -> bool:
        """Whether the bound is kept."""
        return self.value >= self.bound if self.more else self.value <= self.bound


def environment(home: Path) -> dict[str, str]:
    """Return the variables of a start whose folders all lie below one."""
    made = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    made["QT_QPA_PLATFORM"] = "offscreen"
    made["QT_LOGGING_RULES"] = "*.warning=false"
    made["PYTHONPATH"] = str(HERE.parents[1])
    made["PYTHONPYCACHEPREFIX"] = str(home.parent / "compiled")
    made["BENCH_IDLE_S"] = str(IDLE_S)
    for name in _FOLDERS:
        folder = home / name.casefold()
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        made[f"XDG_{name}"] = str(folder)
    return made


def started(script: Path, how: str, home: Path) -> tuple[float, list[str]]:
    """Return the time from the start to the first picture [ms], and what else was printed."""
    variables = environment(home)
    start = time.monotonic_ns()
    done = subprocess.run(
        [sys.executable, script, how], env=variables, capture_output=True, text=True, check=False
    )
    lines = done.stdout.split("\n")
    if not lines[0].isdigit():
        raise SystemExit(f"{script.name} {how} printed no time:\n{done.stdout}{done.stderr}")
    return (int(lines[0]) - start) / 1e6, lines[1:]


def window_figures(folder: Path, runs: int) -> Iterator[Figure]:
    """Yield what an empty window is the floor of, and the idle board."""
    empty, year, ten = (folder / name for name in ("empty", "year", "ten"))
    for home, years in ((year, 1), (ten, 10)):
        environment(home)
        shop_file.fill(home / "data_home" / "rackboard", YEAR_DAYS * years)
    floors: list[float] = []
    firsts: list[float] = []
    tenths: list[float] = []
    for home in (year, ten):  # warms the caches, and what is due is written once
        started(BOARD, "memory", home)
    memory = [started(BOARD, "memory", year)[1] for _ in range(3)]
    peak, filled = median(int(lines[1]) for lines in memory), int(memory[-1][2])
    peaks = [int(started(EMPTY, "memory", empty)[1][0]) for _ in range(3)]
    clubs = len(shop_file.AGES_H) * shop_file.CLUBS_A_JOB
    if filled != clubs:
        raise SystemExit(f"2 s after the first picture {filled} of {clubs} joints have a time")
    waited = 0
    for number in range(runs):
        floors.append(started(EMPTY, "paint", empty)[0])
        both = [(year, firsts), (ten, tenths)]
        for home, times in both if number % 2 else reversed(both):
            took, lines = started(BOARD, "paint", home)
            times.append(took)
            waited = max(waited, int(lines[0]))
    floor, first, tenth = median(floors), median(firsts), median(tenths)
    yield Figure("first paint, 48 clubs, a year", f"{first:.0f} ms", f"{floor:.0f} ms",
                 first / floor, PAINT)  # fmt: skip
    yield Figure("forecasts it waited for", f"{waited}", "0", waited, 0, "")
    yield Figure("peak memory, forecasts in", f"{peak / 1024:.1f} MB",
                 f"{median(peaks) / 1024:.1f} MB", peak / median(peaks), MEMORY)  # fmt: skip
    pairs = median(b / a for a, b in zip(firsts, tenths, strict=True))
    yield Figure("first paint, ten years to one", f"{tenth:.0f} ms", f"{first:.0f} ms",
                 pairs, TEN_YEARS)  # fmt: skip
    cpu, wall = map(float, started(BOARD, "idle", year)[1][1].split())
    yield Figure(f"idle for {wall:.0f} s", f"{cpu * 1000:.0f} ms", f"{wall:.0f} s",
                 cpu / wall, IDLE, "")  # fmt: skip


def tick_figures() -> Iterator[Figure]:
    """Yield the board's ticks, which have bounds in milliseconds, and the curve."""
    shop = tick.full_shop()
    for name, took, bound in (
        ("tick, 96 joints, nothing new", tick.quiet_tick_ms(shop), tick.QUIET_MS),
        ("tick, 96 joints, one reading", tick.reading_tick_ms(shop), tick.READING_MS),
    ):
        yield Figure(name, f"{took:.3f} ms", "-", took, bound, " ms")
    ratio, _ = cure.curve_ratio()
    yield Figure("a curve, times as fast as scipy", "", "scipy", ratio, CURVE, more=True)


def frame_figures() -> Iterator[Figure]:
    """Yield a full frame of 96 tiles, in both sizes and themes; the floor fills and writes."""
    import frame
    from PySide6.QtWidgets import QApplication

    app = QApplication.instance() or QApplication([])
    for one in frame.frames():
        yield Figure(f"96 tiles, {one.name}", f"{one.full_ms:.1f} ms", f"{one.plain_ms:.2f} ms",
                     one.ratio, frame.FRAME)  # fmt: skip
    del app


def opening_figures(folder: Path, runs: int) -> Iterator[Figure]:
    """Yield what opens for the first time; the floor is an empty dialog with one field."""
    rows = []
    for _ in range(runs):
        done = subprocess.run(
            [sys.executable, OPENING], env=environment(folder / "opening"),
            capture_output=True, text=True, check=False,
        )  # fmt: skip
        if done.returncode:
            raise SystemExit(f"{OPENING.name} failed:\n{done.stdout}{done.stderr}")
        rows.append([float(took) for took in done.stdout.split()])
    floor, *others = (median(column) for column in zip(*rows, strict=True))
    for name, took, column in zip(("glue-up", "find", "inspector"), others, (1, 2, 3), strict=True):
        ratio = median(row[column] / row[0] for row in rows)
        yield Figure(f"{name} opens", f"{took:.0f} ms", f"{floor:.1f} ms", ratio, OPEN)


def main() -> int:
    """Print the table; return 1 if a bound is missed."""
    runs = RUNS_QUICK if "--quick" in sys.argv else RUNS
    kept = True
    print(f"{'what':34}{'measured':>11}{'floor':>10}{'ratio':>10}{'bound':>10}  ok")
    with tempfile.TemporaryDirectory(prefix="bench-") as folder:
        for figures in (
            window_figures(Path(folder), runs), opening_figures(Path(folder), runs),
            frame_figures(), tick_figures(),
        ):  # fmt: skip
            for f in figures:
                sign = "≥" if f.more else "≤"
                print(
                    f"{f.name:34}{f.measured:>11}{f.floor:>10}{f.value:>9.3g}{f.unit or ' '}"
                    f"{sign + f' {f.bound:g}':>10}  {'yes' if f.kept else 'NO'}", flush=True,
                )  # fmt: skip
                kept = kept and f.kept
    return int(not kept)


if __name__ == "__main__":
    sys.exit(main())
