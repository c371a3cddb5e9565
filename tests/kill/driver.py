"""The real program at work until it is killed: python driver.py DATA_DIR SEED START_US.

Acts are done through the window's session and commands. As soon as a transaction is on the
disk a line of JSON says which rows must from now on be found there, as {"rows": [[table, key,
row or null], …], "label": …, "now": …}. The clock runs a thousand times as fast, so that
joints earn their permissions on the way.
"""

from __future__ import annotations

import json
import os
import random
import sys
import time
from zoneinfo import ZoneInfo

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

from rackboard.core.bench import JointKind, PlaceKind, Source
from rackboard.core.instants import MINUTE_US, Instant
from rackboard.services.bench import ClubEntry, JobEntry
from rackboard.services.draft import free_slots
from rackboard.store.changes import ChangeSet
from rackboard.store.transaction import Transaction
from rackboard.ui import Options
from rackboard.ui.main import Program

SPEED = 1000
MOST_CLUBS = 14


class QuickClock:
    """Runs a thousand times as fast, from an instant on."""

    def __init__(self, start_us: Instant) -> None:
        self._start_us = start_us
        self._begun_ns = time.monotonic_ns()

    def now(self) -> Instant:
        """Return the instant [µs UTC]."""
        return self._start_us + (time.monotonic_ns() - self._begun_ns) // 1000 * SPEED


def say(line: dict[str, object]) -> None:
    """Write a line at once: what was handed to the system outlives the process."""
    os.write(1, (json.dumps(line) + "\n").encode())


def acknowledge_commits(clock: QuickClock) -> None:
    """Say of every transaction what it wrote, as soon as it is on the disk."""
    commit = Transaction.commit

    def committed(transaction: Transaction) -> ChangeSet:
        changes = commit(transaction)
        rows = [[row.table, list(row.key), row.after] for row in changes]
        say({"rows": rows, "label": changes.label, "now": clock.now()})
        return changes

    Transaction.commit = committed  # type: ignore[method-assign]


class Hands:
    """Somebody at the bench who never rests."""

    def __init__(self, program: Program, seed: int) -> None:
        self.window = program.window
        self.session = program.window.session
        self.random = random.Random(seed)
        self.run = seed
        self.jobs = 0

    def act(self) -> None:
        """Do one thing that can be done now."""
        acts = [
            self.lay_out, self.mix, self.rack, self.move, self.type_temperature, self.feed,
            self.undo, self.redo, self.disturb, self.answer, self.hand_out, self.hand_out,
            self.correct, self.look, self.take_off, self.set_theme,
        ]  # fmt: skip
        self.random.choice(acts)()
        self.session.tick()
        box = QApplication.activeModalWidget()
        if box is not None:
            box.close()

    def lay_out(self) -> None:
        """A new job; its number tells how many clubs it has."""
        snapshot = self.session.board.snapshot
        free = free_slots(snapshot)
        clubs = min(self.random.randint(1, 5), len(free))
        if clubs == 0:
            return
        self.jobs += 1
        number = f"{self.run}-{self.jobs}-{clubs}"
        epoxy = self.random.choice(list(snapshot.epoxies))
        entries = tuple(
            ClubEntry(f"{n + 3} iron", JointKind.SOLID_HEAD, *free[n]) for n in range(clubs)
        )
        laid = self.session.bench.lay_out(JobEntry(number, "Invented", "", None, entries, epoxy))
        self.session.take(laid.changes)

    def mix(self) -> None:
        """Mix a batch that is laid out."""
        waiting = [s.batch.id for s in self.session.board.standings if s.laid_out]
        if waiting:
            self.session.take(self.session.bench.mix(self.random.choice(waiting)))

    def rack(self) -> None:
        """All racked."""
        wet = [s.batch.id for s in self._glued() if s.batch.racked_us is None]
        if wet:
            late = self.random.randint(0, 1)
            self.session.take(self.session.bench.rack_all(self.random.choice(wet), late))

    def look(self) -> None:
        """The last look."""
        wet = [s.batch.id for s in self._glued() if s.batch.looked_us is None]
        if wet:
            self.session.take(self.session.bench.look(self.random.choice(wet)))

    def move(self) -> None:
        """Carry a club to a free slot."""
        free = free_slots(self.session.board.snapshot)
        standings = self.session.board.standings
        if free and standings:
            club = self.random.choice(standings).club.id
            self.session.take(self.session.bench.move(club, *self.random.choice(free)))

    def take_off(self) -> None:
        """Take a club off the rack by the window's command."""
        self._command("take off", [s for s in self._glued() if s.stay and s.stay.slot is not None])

    def hand_out(self) -> None:
        """Let a club leave the shop."""
        self._command("out", self._glued())

    def disturb(self) -> None:
        """Knock a club."""
        self._command("disturb", [s for s in self._glued() if s.hold is None])

    def answer(self) -> None:
        """Say what happened to it."""
        held = [s.hold for s in self.session.board.standings if s.hold is not None]
        if held:
            outcome = self.random.choice(("touched, head did not turn", "scrapped"))
            self.session.take(self.session.bench.end_hold(self.random.choice(held), outcome))

    def correct(self) -> None:
        """Correct a time of mixing."""
        glued = self._glued()
        if glued:
            batch = self.random.choice(glued).batch
            at_us = (batch.mixed_us or 0) - MINUTE_US
            self.session.take(self.session.bench.correct_mixed(batch.id, at_us))

    def type_temperature(self) -> None:
        """Type what the thermometer says."""
        zone = self.random.choice(list(self.session.board.snapshot.zones))
        milli = self.random.randint(20_000, 32_000)
        self.session.take(self.session.bench.type_temperature(zone, milli, at_rack=True))

    def feed(self) -> None:
        """A few readings of a feed; they have no rows in the change set."""
        now = self.session.clock.now()
        zone = self.random.choice(list(self.session.board.snapshot.zones))
        with self.session.store.write("feed", now) as act:
            act.add_readings(
                zone, [(now - i * MINUTE_US, 30_000 + i, 1000, Source.FEED) for i in range(5)]
            )
        self.session.board.take_in(act.changes)

    def set_theme(self) -> None:
        """Change a setting."""
        self.session.take(self.session.bench.set_theme(self.random.choice(("dark", "light"))))

    def undo(self) -> None:
        """Ctrl+Z."""
        self.window.commands["undo"].trigger()

    def redo(self) -> None:
        """Ctrl+Y."""
        self.window.commands["redo"].trigger()

    def _glued(self) -> list:  # type: ignore[type-arg]
        return [s for s in self.session.board.standings if not s.laid_out and s.stay]

    def _command(self, key: str, standings: list) -> None:  # type: ignore[type-arg]
        wanted = [s for s in standings if self._kind(s) is not PlaceKind.OUT]
        if wanted:
            self.window.select_club(self.random.choice(wanted).club.id)
            self.window.commands[key].trigger()

    def _kind(self, standing: object) -> PlaceKind | None:
        place = self.session.board.snapshot.place_of(standing.club.id)  # type: ignore[attr-defined]
        return None if place is None else place.kind


def main() -> None:
    """Open the board and work until the end."""
    folder, seed, start_us = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
    app = QApplication(["rackboard"])
    clock = QuickClock(start_us)
    acknowledge_commits(clock)
    program = Program(Options(clock=clock, data_dir=folder), ZoneInfo("UTC"))
    program.show()
    hands = Hands(program, seed)
    timer = QTimer()
    timer.timeout.connect(hands.act)
    timer.start(0)
    sys.exit(app.exec())


main()
