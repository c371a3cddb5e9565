"""An invented shop through its days: ragged temperatures, faults, restarts, kills, clock steps.

Every tick of the engine is checked against what was seeded. Whole, a year of 300 jobs:

    python tests/simulation/shop_year.py 365

The tests run sampled days of it.
"""

from __future__ import annotations

import math
import random
import sys
from collections import Counter
from pathlib import Path
from typing import NamedTuple

if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).parents[1]))

from helpers.shop import FakeClock, Shop, make_shop
from rackboard.core.alerts.kinds import NATURE, Kind, Sort
from rackboard.core.alerts.rows import Alert
from rackboard.core.alerts.telling import ALARM_BUDGET, BUDGET, WINDOW_US
from rackboard.core.bench import HoldReason, JointKind, PlaceKind
from rackboard.core.instants import DAY_US, HOUR_US, MINUTE_US, SECOND_US, Instant
from rackboard.core.words import Word
from rackboard.services.alerts import REACHED, Alerts
from rackboard.services.teller import ABSENT_US, Done, Message

TICK_US = 10 * SECOND_US
FEED_US = 5 * MINUTE_US
QUIET_TICK_US = MINUTE_US
"""While the shop is closed the simulation ticks once a minute, to be done within the hour."""
JOBS_A_YEAR = 300
KINDS = list(JointKind)
EPISODES = {"cold", "hot", "no record"}


class Fault(NamedTuple):
    """Something that goes wrong on purpose."""

    kind: str
    from_us: Instant
    to_us: Instant


class KilledError(Exception):
    """The program dies while it calls a courier."""


class Phone:
    """A courier that is sometimes deaf, and dies when it is told to."""

    name = "Desktop notices"

    def __init__(self, dice: random.Random) -> None:
        self.messages: list[tuple[Instant, Message]] = []
        self.now: Instant = 0
        self.kill = False
        self._dice = dice

    def deliver(self, message: Message, done: Done) -> None:
        if self.kill and not message.take_back:
            self.kill = False
            raise KeyboardInterrupt
        self.messages.append((self.now, message))
        done("nobody there" if self._dice.random() < 0.05 else None)


class Year:
    """The shop, its seeded faults, and what was found at every tick."""

    def __init__(self, seed: int, days: int, start: str = "Mon 07:00") -> None:
        self.dice = random.Random(seed)
        self.shop: Shop = make_shop(start)
        self.clock: FakeClock = self.shop.clock
        with self.shop.store.write("a large rack", self.clock.now()) as act:
            act.update("place", self.shop.rack.id, rows=8)
        self.shop.spread(act.changes)
        self.shop.rack = self.shop.board.snapshot.places[self.shop.rack.id]
        self.begin = self.clock.now()
        self.days = days
        self.counts: Counter[str] = Counter()
        self.faults = self._seed_faults()
        self.phone = Phone(self.dice)
        self.said: set[tuple[int, Instant]] = set()
        self.corrected: set[int] = set()
        self.disturbed: set[int] = set()
        self.fed_us = self.begin - FEED_US
        self.off_until: Instant = 0
        self.jobs_left = max(1, round(JOBS_A_YEAR * days / 365))
        self.next_job = self.begin + HOUR_US
        self.new_program()
        self._first_reading()

    # The world

    def _seed_faults(self) -> list[Fault]:
        faults = []
        for day in range(self.days):
            opening = self.begin + day * DAY_US + HOUR_US
            roll = self.dice.random()
            at = opening + self.dice.randrange(1 * 60, 6 * 60) * MINUTE_US
            if roll < 0.12:
                faults.append(Fault("cold", at, at + self.dice.randrange(60, 180) * MINUTE_US))
            elif roll < 0.20:
                faults.append(Fault("dip", at, at + 6 * MINUTE_US))
            elif roll < 0.32:
                faults.append(
                    Fault("no record", at, at + self.dice.randrange(40, 240) * MINUTE_US)
                )
            elif roll < 0.40:
                faults.append(Fault("hot", at, at + self.dice.randrange(20, 60) * MINUTE_US))
        return faults

    def _during(self, kind: str, now: Instant, after_us: Instant = 0) -> bool:
        return any(f.kind == kind and f.from_us <= now < f.to_us + after_us for f in self.faults)

    def temperature(self, now: Instant, *, box: bool) -> float:
        """Return the air as a sensor at the rack reads it [°C]."""
        noise = self.dice.gauss(0, 0.1)
        if box:
            return (78.0 if self._during("hot", now) else 40.0) + noise
        hour = (now - self.begin) % DAY_US / HOUR_US
        air = 21.5 + 1.5 * math.sin(hour / 24 * 2 * math.pi)
        if self._during("cold", now) or self._during("dip", now):
            air = 9.0
        return air + noise

    def _first_reading(self) -> None:
        for box in (False, True):
            self.shop.feed([(self.begin - FEED_US, 21.0 if not box else 40.0)], box=box)

    def feed(self, now: Instant) -> None:
        """Let the sensors send what they have seen since the last time."""
        while self.fed_us + FEED_US <= now:
            self.fed_us += FEED_US
            if self._during("no record", self.fed_us):
                continue
            for box in (False, True):
                self.shop.feed([(self.fed_us, self.temperature(self.fed_us, box=box))], box=box)

    # The program

    def new_program(self) -> None:
        """Start the program: nothing is left of the last one but what is stored."""
        from rackboard.services.bench import Bench
        from rackboard.services.board import Board
        from rackboard.services.undo import History

        shop = self.shop
        shop.board = Board(shop.store, shop.clock, shop.board.snapshot.hours.zone)
        shop.bench = Bench(shop.store, shop.clock, shop.board.snapshot.hours)
        shop.history = History(shop.store, shop.clock)
        self.alerts = Alerts(shop.store, shop.clock, (self.phone,))
        self.said = set()
        self.ticked_us: Instant | None = None
        self.counts["starts"] += 1

    def tick(self) -> None:
        now = self.clock.now()
        self.phone.now = now
        before = len(self.phone.messages)
        try:
            self.shop.board.tick()
            changes = self.alerts.tick(self.shop.board)
            if changes is not None:
                self.shop.board.take_in(changes)
                self.shop.board.tick()
        except KeyboardInterrupt:
            self.counts["kills"] += 1
            self.new_program()
            return
        self.counts["ticks"] += 1
        self.check(now, before)
        self.ticked_us = now

    # What people do

    def act(self, now: Instant) -> None:
        """Do what is to be done at the bench at this moment."""
        shop, dice = self.shop, self.dice
        if self.jobs_left and now >= self.next_job and self._free() >= 14:
            self.jobs_left -= 1
            spread = self.days * DAY_US // max(1, round(JOBS_A_YEAR * self.days / 365))
            self.next_job = now + dice.randrange(spread // 2, spread * 3 // 2)
            self.glue(1 if dice.random() < 0.5 else dice.randrange(2, 10))
        for standing in list(shop.board.standings):
            if standing.laid_out:
                continue
            if standing.hold is not None:
                if dice.random() < 0.01:
                    outcome = "scrapped" if dice.random() < 0.2 else "nothing seen"
                    shop.do(shop.bench.end_hold(standing.hold, outcome))
                    return
            elif standing.word is Word.WAIT and dice.random() < 2e-5:
                self.disturbed.add(standing.joint.id)
                shop.do(shop.bench.disturb(standing.joint.id))
                return
            elif standing.word in (Word.BENCH, Word.CURED) and dice.random() < 2e-5:
                batch = standing.batch
                assert batch.mixed_us is not None
                self.corrected |= {
                    j.id for j in shop.store.work.joints(batch_ids=[batch.id])
                }  # fmt: skip
                truth = max(batch.mixed_us, now - dice.randrange(1, 6) * HOUR_US)
                shop.do(shop.bench.correct_mixed(batch.id, truth))
                return
            elif (
                standing.word is Word.CURED and dice.random() < 1e-3
                and shop.board.snapshot.in_shop(standing.club.id)
            ):  # fmt: skip
                shop.do(shop.bench.take_off(standing.club.id, PlaceKind.OUT))
                return
        for alert in self.alerts.open:
            if dice.random() < 0.01:
                self.answer(alert)
                return

    def answer(self, alert: Alert) -> None:
        if alert.kind == Kind.WITHDRAWN and alert.taken_us is not None:
            joint = self.shop.board.snapshot.joints.get(alert.subject_id)
            gone = joint is None or not self.shop.board.snapshot.in_shop(joint.club_id)
            if gone:
                self.alerts.close(alert.id, REACHED)
            elif joint is not None and self._free():
                self.shop.do(self.shop.bench.move(joint.club_id, *self._slot()))
            return
        self.alerts.got_it([alert.id])

    def glue(self, clubs: int) -> None:
        shop = self.shop
        box = clubs < 4 and self.dice.random() < 0.3
        kind = self.dice.choice(KINDS)
        place = shop.box if box else shop.rack
        taken = {s.slot for s in shop.board.snapshot.stays.values() if s.place_id == place.id}
        free = [n for n in range(place.rows * place.columns) if n not in taken]
        if len(free) < clubs:
            return
        from rackboard.services.bench import ClubEntry, JobEntry

        self.counts["jobs"] += 1
        entries = tuple(
            ClubEntry(f"{n} iron", kind, place.id, free[n]) for n in range(clubs)
        )
        laid = shop.bench.lay_out(
            JobEntry(str(1000 + self.counts["jobs"]), "Invented", "000", None, entries, shop.epoxy)
        )
        shop.do(laid.changes)
        shop.do(shop.bench.mix(laid.batch_id))
        shop.do(shop.bench.rack_all(laid.batch_id))
        self.counts["clubs"] += clubs

    def _free(self) -> int:
        rack = self.shop.rack
        taken = {s.slot for s in self.shop.board.snapshot.stays.values() if s.place_id == rack.id}
        return rack.rows * rack.columns - len(taken)

    def _slot(self) -> tuple[int, int]:
        rack = self.shop.rack
        taken = {s.slot for s in self.shop.board.snapshot.stays.values() if s.place_id == rack.id}
        return rack.id, next(n for n in range(rack.rows * rack.columns) if n not in taken)

    # What must hold at every tick

    def check(self, now: Instant, before: int) -> None:
        shop = self.shop
        is_open = shop.board.snapshot.hours.is_open(now)
        for standing in shop.board.standings:
            self._check_joint(standing.joint.id, now)
        for alert in self.alerts.open:
            self._check_alert(alert, now, is_open=is_open)
        self._check_said(now, before, is_open=is_open)

    def _check_joint(self, joint_id: int, now: Instant) -> None:
        standing = self.shop.standing(joint_id)
        for grant in self.shop.board.snapshot.grants.get(joint_id, {}).values():
            assert grant.late_us < grant.printed_us <= grant.given_us, "no permission before late"
        outcome = standing.outcome
        if standing.base is Word.WET and outcome is not None and outcome.use_by_us is not None:
            assert now < outcome.use_by_us, "no limit after its early bound"

    def _check_alert(self, alert: Alert, now: Instant, *, is_open: bool) -> None:
        kind = Kind(alert.kind)
        seeded = {
            Kind.COLD: any(f.kind == "cold" and f.from_us <= alert.raised_us for f in self.faults),
            Kind.NO_RECORD: any(
                f.kind == "no record" and f.from_us <= alert.raised_us for f in self.faults
            ),
            Kind.TOO_HOT: any(f.kind == "hot" and f.from_us <= alert.raised_us
                              for f in self.faults),
            Kind.DISTURBED: alert.subject_id in self.disturbed,
            Kind.WITHDRAWN: alert.subject_id in self.corrected,
        }.get(kind, True)  # fmt: skip
        assert seeded, f"an alarm without a fault: {alert}"
        if alert.is_alarm:
            self.counts[f"seen {kind}"] += alert.raised_us == now
        if alert.speaks and alert.told_us is None and is_open and NATURE[kind].never_folded:
            raise AssertionError(f"not told: {alert}")

    def _check_said(self, now: Instant, before: int, *, is_open: bool) -> None:
        new = [message for _, message in self.phone.messages[before:] if not message.take_back]
        tellings = self.shop.store.alerts.tellings(now - WINDOW_US)
        counted = [t for t in tellings if t.counted]
        assert len(counted) <= BUDGET + ALARM_BUDGET, "the budget"
        lower = [t for t in counted if NATURE[Kind(t.kind)].sort is not Sort.ALARM]
        assert len(lower) <= BUDGET, "the budget of the lower classes"
        for message in new:
            self.counts["messages"] += 1
            kinds = {a.kind for a in self.shop.store.alerts.by_id(message.alerts)}
            assert is_open or kinds <= {Kind.TOO_HOT.value}, "silence in a closed shop"
            if message.key == "alarms":
                continue
            for alert in self.shop.store.alerts.by_id(message.alerts):
                key = (alert.id, alert.first_told_us or 0)
                assert key not in self.said, f"told twice: {alert}"
                self.said.add(key)

    def check_day(self) -> None:
        """Once a day: the running board says what a new one says, and no fault was missed."""
        from rackboard.services.board import Board

        fresh = Board(self.shop.store, self.clock, self.shop.board.snapshot.hours.zone)
        fresh.tick()
        mine = {s.joint.id: (s.word, s.not_before_us) for s in self.shop.board.standings}
        new = {s.joint.id: (s.word, s.not_before_us) for s in fresh.standings}
        assert mine == new, {n: (mine.get(n), new.get(n)) for n in mine | new
                             if mine.get(n) != new.get(n)}  # fmt: skip
        holds = [h for h in self.shop.board.snapshot.holds.values()
                 if h.reason is HoldReason.DISTURBED]  # fmt: skip
        for hold in holds:
            assert self.alerts.of(Kind.DISTURBED, hold.joint_id), "an alarm is lost"
        assert not self.shop.store.alerts.unraised(0), "a withdrawal is lost"

    def run(self) -> Counter[str]:
        """Let the days pass; return what happened."""
        end = self.begin + self.days * DAY_US
        day = 0
        while self.clock.now() < end:
            now = self.clock.now()
            is_open = self.shop.board.snapshot.hours.is_open(now)
            self.feed(now)
            self.tick()
            if is_open:
                self.act(now)
            if self.dice.random() < 2e-4:
                self.phone.kill = True
            roll = self.dice.random()
            if roll < 4e-5:
                self.clock.advance(hours=self.dice.uniform(0.2, 8))  # asleep, or off
                self.counts["absences"] += 1
                if self.dice.random() < 0.5:
                    self.new_program()
            elif roll < 6e-5:
                self.clock.advance(minutes=-self.dice.uniform(1, 60))
                self.counts["clock steps"] += 1
            self.clock.instant += TICK_US if is_open else QUIET_TICK_US
            if (self.clock.now() - self.begin) // DAY_US > day:
                day += 1
                self.feed(self.clock.now())
                while self.ticked_us != self.clock.now():  # it may have been killed meanwhile
                    self.tick()
                self.check_day()
        return self.counts


assert ABSENT_US > TICK_US


def main() -> None:
    """Run whole and print the figures."""
    days = int(sys.argv[1]) if len(sys.argv) > 1 else 365
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    counts = Year(seed, days).run()
    for name, n in sorted(counts.items()):
        print(f"{name:24} {n}")


if __name__ == "__main__":
    main()
