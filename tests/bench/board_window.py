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

HOW = sys.argv[1]
IDLE_S = float(os.environ.get("BENCH_IDLE_S", "20"))


def watch() -> None:
    """Have the window say when it is painted, without a line in the program itself."""
    from rackboard.ui import main

    show = main.Program.show

    def shown(program: main.Program) -> None:
        from PySide6.QtCore import QEvent, QObject
        from PySide6.QtWidgets import QApplication

        class Eye(QObject):
            """Looks at events: after the first paint events the first other one ends it."""

            painting = done = False

            def eventFilter(self, watched: QObject, event: QEvent) -> bool:
                if self.done:
                    return False
                if event.type() is QEvent.Type.Paint:
                    self.painting = True
                elif self.painting:
                    self.done = True
                    print(time.monotonic_ns(), flush=True)
                    app.removeEventFilter(self)
                    painted(program)
                return False

        app = QApplication.instance()
        assert app is not None
        eye = Eye(app)
        app.installEventFilter(eye)
        show(program)

    main.Program.show = shown  # type: ignore[method-assign]


def painted(program: object) -> None:
    """Go on as the first argument says."""
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
    from rackboard.__main__ import main as start

    # The launcher imports the window late; the watch has to be set just before.
    from rackboard import app

    board = app._board

    def watched(parsed: object) -> int:
        from rackboard.preflight import trouble  # noqa: F401 - as the launcher does, in its order

        watch()
        return board(parsed)  # type: ignore[arg-type]

    app._board = watched  # type: ignore[assignment]
    sys.argv[1:] = []
    sys.exit(start())


main()
