"""Opens the real board and prints when its first picture was complete.

What is printed, a line each: the instant on the monotonic clock [ns]; how many forecasts the
first picture waited for; then by the first argument:

- "paint": nothing more;
- "memory": after two seconds the peak memory [kB] and the number of forecasts;
- "idle": after settling, the processor time [s] and the wall time [s] of a long look at it.

The folders come by XDG variables: the plain start, as from the desktop.
"""

from __future__ import annotations

import os
import sys
import time
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from PySide6.QtGui import QPaintEvent

HOW = sys.argv[1]
IDLE_S = float(os.environ.get("BENCH_IDLE_S", "20"))


def watch() -> None:
    """Have the window say when it is painted, without a line in the program itself.

    A filter of all events would be simpler and cost a tenth of the start.
    """
    from rackboard.ui import main

    window = main.MainWindow
    show, paint = main.Program.show, window.paintEvent
    programs: list[main.Program] = []

    def shown(program: main.Program) -> None:
        programs.append(program)
        show(program)

    def painting(widget: main.MainWindow, event: QPaintEvent) -> None:
        from PySide6.QtCore import QTimer

        if programs:
            # The window is painted first, then what lies on it; then the loop comes round.
            program = programs.pop()
            QTimer.singleShot(0, lambda: painted(program))
        paint(widget, event)

    main.Program.show = shown  # type: ignore[method-assign]
    window.paintEvent = painting  # type: ignore[method-assign]


def painted(program: object) -> None:
    """Say when, and go on as the first argument says."""
    print(time.monotonic_ns(), flush=True)
    from PySide6.QtCore import QTimer

    print(forecasts(program), flush=True)
    if HOW == "paint":
        os._exit(0)
    elif HOW == "memory":
        QTimer.singleShot(2000, lambda: leave(program))
    else:
        QTimer.singleShot(4000, rest)


def forecasts(program: object) -> int:
    """Return how many joints have a forecast."""
    standings = program.window.session.board.standings  # type: ignore[attr-defined]
    return sum(standing.outcome is not None for standing in standings)


def leave(program: object) -> None:
    """Say how much memory was needed, and go."""
    with open("/proc/self/status", encoding="ascii") as status:  # noqa: PTH123 - no import more
        print(next(line.split()[1] for line in status if line.startswith("VmHWM")))
    print(forecasts(program), flush=True)
    os._exit(0)


def rest() -> None:
    """Look at the board for a while and say what it did meanwhile."""
    from PySide6.QtCore import QTimer

    cpu, wall = time.process_time(), time.monotonic()

    def done() -> None:
        print(time.process_time() - cpu, time.monotonic() - wall, flush=True)
        os._exit(0)

    QTimer.singleShot(round(IDLE_S * 1000), done)


def main() -> None:
    """Start as the desktop does."""
    from rackboard import app
    from rackboard.__main__ import main as start

    options = app._options

    def watched(parsed: object) -> object:
        watch()  # the window's modules are loaded by now, and nothing is made yet
        return options(parsed)  # type: ignore[arg-type]

    app._options = watched  # type: ignore[assignment]
    sys.argv[1:] = []
    sys.exit(start())


main()
