"""The real program with a clock that is told the time: python notices_driver.py DATA_DIR.

Lines on standard input: "go MINUTES" lets so many minutes pass, with readings of 35 °C and a
tick; "until KIND" lets ten minutes pass at a time until an alert of the kind is open; "quit"
ends it. Every change is said as a line of JSON on standard output.
"""

from __future__ import annotations

import json
import os
import sys

from PySide6.QtCore import QSocketNotifier, QTimer
from PySide6.QtWidgets import QApplication

from helpers.session import BERLIN
from helpers.shop import FakeClock, at
from rackboard.core.bench import PlaceKind, Source
from rackboard.core.instants import MINUTE_US
from rackboard.ui import Options, glue_up_press
from rackboard.ui.couriers import Couriers
from rackboard.ui.main import Program

WARM_MC = 35_000
MOST_HOPS = 200


class Driver:
    """Carries out the lines of standard input."""

    def __init__(self, program: Program, clock: FakeClock) -> None:
        self.program = program
        self.clock = clock
        self.session = program.window.session
        self.fed_us = clock.now()
        self.buffer = b""
        self.notifier = QSocketNotifier(0, QSocketNotifier.Type.Read)
        self.notifier.activated.connect(self.read)
        session = self.session
        session.acted.connect(self.say)
        session.ticked.connect(self.say)

    def wire_when_started(self) -> None:
        """Wait for what the program begins after its first picture."""
        if self.session.alerts is None:
            QTimer.singleShot(20, self.wire_when_started)
        else:
            self.wire()

    def wire(self) -> None:
        """Give the program its couriers, if it has none, as it does itself when it is started."""
        made = getattr(self.session, "couriers", None)
        if made is None:
            made = Couriers(self.session, self.program.window)
            self.session.alerts = made.make_alerts()
        self.couriers = made
        self.say()

    def say(self) -> None:
        """Say how everything stands."""
        alerts = self.session.alerts
        print(
            json.dumps(
                {
                    "words": sorted({str(s.word) for s in self.session.board.standings}),
                    "open": {a.kind: a.phase for a in (alerts.open if alerts else ())},
                    "troubles": [str(n) for n, _ in alerts.teller.troubles] if alerts else [],
                    "visible": self.program.window.isVisible(),
                }
            ),
            flush=True,
        )

    def read(self) -> None:
        """Take what has come on standard input."""
        data = os.read(0, 4096)
        if not data:
            QApplication.exit(3)
            return
        self.buffer += data
        while b"\n" in self.buffer:
            line, self.buffer = self.buffer.split(b"\n", 1)
            self.obey(line.decode().split(" ", 1))

    def obey(self, words: list[str]) -> None:
        """Carry out one line."""
        if words[0] == "go":
            self.go(int(words[1]))
        elif words[0] == "until":
            for _ in range(MOST_HOPS):
                if any(a.kind == words[1] for a in self.session.alerts.open):
                    break
                self.go(10)
        elif words[0] == "quit":
            self.couriers.staying.quit()

    def go(self, minutes: int) -> None:
        """Let time pass."""
        self.clock.advance(minutes=minutes)
        self.feed()
        self.session.tick()

    def feed(self) -> None:
        """Keep a reading a minute up to now."""
        zone = self.session.board.snapshot.place(PlaceKind.RACK).zone_id
        times = range(self.fed_us + MINUTE_US, self.clock.now() + 1, MINUTE_US)
        with self.session.store.write("feed", self.clock.now()) as act:
            act.add_readings(zone, [(t, WARM_MC, 1000, Source.FEED) for t in times])
        self.fed_us = self.clock.now()
        self.session.board.take_in(act.changes)


def main() -> None:
    """Open the board and do as told."""
    glue_up_press.PAUSE_MS = 0  # whoever presses here has seen the page before
    app = QApplication(["rackboard"])
    clock = FakeClock(at("Mon 08:30"))
    program = Program(Options(clock=clock, data_dir=sys.argv[1]), BERLIN)
    driver = Driver(program, clock)
    bench = driver.session.bench
    zone = driver.session.board.snapshot.place(PlaceKind.RACK).zone_id
    driver.session.take(bench.type_temperature(zone, WARM_MC, at_rack=True))
    program.show()
    QTimer.singleShot(0, driver.wire_when_started)
    code = app.exec()
    driver.couriers.close()
    program.close()
    sys.exit(code)


main()
