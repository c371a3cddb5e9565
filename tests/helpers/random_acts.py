"""Acts of all kinds on whatever lies on the board, chosen by a draw; no Qt here."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Protocol

from helpers.shop import PLAIN, FakeClock
from rackboard.core.bench import (
    Heating,
    Hold,
    HoldReason,
    JointKind,
    Milestone,
    Place,
    PlaceKind,
)
from rackboard.core.instants import HOUR_US, MINUTE_US
from rackboard.core.schedule import DEFAULT_WEEK
from rackboard.core.standing import Standing
from rackboard.core.temperature import Unit
from rackboard.services.agenda import NightQuestion
from rackboard.services.bench import Bench, ClubEntry, JobEntry
from rackboard.services.board import Board
from rackboard.services.correcting import NEW_BATCH, Correction, ReadingFix
from rackboard.store import Store
from rackboard.store.changes import ChangeSet


class Workshop(Protocol):
    """What the acts need of a shop or a session."""

    store: Store
    clock: FakeClock
    board: Board
    bench: Bench
    room: int
    box_zone: int
    rack: Place
    box: Place
    epoxy: int


Draw = Callable[[int], int]
"""Gives a number below another one, as Hypothesis likes it."""


def pick(shop: Workshop, draw: Draw) -> Standing:
    return shop.board.standings[draw(len(shop.board.standings))]


def lay_out(shop: Workshop, draw: Draw) -> ChangeSet | None:
    taken = {(s.place_id, s.slot) for s in shop.board.snapshot.stays.values()}
    free = [n for n in range(shop.rack.rows * shop.rack.columns) if (shop.rack.id, n) not in taken]
    if not free:
        return None
    number = f"{300 + draw(4)}"
    kind = list(JointKind)[draw(len(JointKind))]
    entry = JobEntry(number, "Invented", "", None,
                     (ClubEntry("wedge", kind, shop.rack.id, free[0]),), shop.epoxy)  # fmt: skip
    return shop.bench.lay_out(entry).changes


def mix(shop: Workshop, draw: Draw) -> ChangeSet | None:
    standing = pick(shop, draw)
    ago = shop.clock.now() - draw(30) * MINUTE_US
    return shop.bench.mix(standing.batch.id, ago)


def rack_all(shop: Workshop, draw: Draw) -> ChangeSet | None:
    return shop.bench.rack_all(pick(shop, draw).batch.id, draw(3))


def look(shop: Workshop, draw: Draw) -> ChangeSet | None:
    return shop.bench.look(pick(shop, draw).batch.id)


def move(shop: Workshop, draw: Draw) -> ChangeSet | None:
    place = (shop.rack, shop.box)[draw(2)]
    return shop.bench.move(pick(shop, draw).club.id, place.id, draw(place.rows * place.columns))


def take_off(shop: Workshop, draw: Draw) -> ChangeSet | None:
    kinds = (PlaceKind.GRIP_BENCH, PlaceKind.PICK_UP, PlaceKind.OUT)
    return shop.bench.take_off(pick(shop, draw).club.id, kinds[draw(3)])


def swap(shop: Workshop, draw: Draw) -> ChangeSet | None:
    acts = (shop.bench.change_places, shop.bench.correct_notches, shop.bench.correct_names)
    return acts[draw(3)](pick(shop, draw).club.id, pick(shop, draw).club.id)


def type_temperature(shop: Workshop, draw: Draw) -> ChangeSet | None:
    zone = (shop.room, shop.box_zone)[draw(2)]
    return shop.bench.type_temperature(
        zone, (10 + draw(20)) * 1000, at_rack=bool(draw(2)), replace=bool(draw(2))
    )


def answer_night(shop: Workshop, draw: Draw) -> ChangeSet | None:
    start = shop.clock.now() - draw(40) * HOUR_US
    return shop.bench.answer_night(
        NightQuestion(shop.room, start, start + HOUR_US, bool(draw(2))), draw(12) * 1000
    )


def disturb(shop: Workshop, draw: Draw) -> ChangeSet | None:
    standing = pick(shop, draw)
    return None if standing.hold else shop.bench.disturb(standing.joint.id)


def too_hot(shop: Workshop, draw: Draw) -> ChangeSet | None:
    standing = pick(shop, draw)
    if standing.hold is None:
        with shop.store.write("too hot", shop.clock.now()) as act:
            act.add(Hold(0, standing.joint.id, HoldReason.TOO_HOT, "", shop.clock.now()))
        return act.changes
    return None


def answer(shop: Workshop, draw: Draw) -> ChangeSet | None:
    held = [s for s in shop.board.standings if s.hold]
    if not held:
        return None
    hold = held[draw(len(held))].hold
    assert hold is not None
    outcomes = ("touched, head did not turn", "scrapped", "nothing seen", "entered by mistake")
    outcome = outcomes[draw(4)]
    if outcome == "scrapped" and len(shop.board.standings) < 3:
        return None
    return shop.bench.end_hold(hold, outcome)


def re_aim(shop: Workshop, draw: Draw) -> ChangeSet | None:
    return shop.bench.re_aim(pick(shop, draw).joint.id, after_life=bool(draw(2)))


def re_glue(shop: Workshop, draw: Draw) -> ChangeSet | None:
    standing = pick(shop, draw)
    return shop.bench.re_glued(standing.joint.id, standing.hold, after_life=bool(draw(2)))


def release(shop: Workshop, draw: Draw) -> ChangeSet | None:
    standing = pick(shop, draw)
    milestone = (Milestone.HANDLING, Milestone.FULL_CURE)[draw(2)]
    hold = standing.hold if draw(2) else None
    return shop.bench.release(standing.joint.id, milestone, "for a test", hold)


def ready(shop: Workshop, draw: Draw) -> ChangeSet | None:
    return shop.bench.press_ready(pick(shop, draw).job.id, bool(draw(2)))


def promise(shop: Workshop, draw: Draw) -> ChangeSet | None:
    when = shop.clock.now() + draw(90) * HOUR_US
    return shop.bench.promise(pick(shop, draw).job.id, when if draw(3) else None)


def correct(shop: Workshop, draw: Draw) -> ChangeSet | None:
    standing = pick(shop, draw)
    facts: list[dict[str, object]] = [
        {"mixed_us": shop.clock.now() - draw(300) * MINUTE_US},
        {"glued_us": shop.clock.now() - draw(60) * MINUTE_US},
        {"lot": f"L{draw(5)}"}, {"epoxy_id": 1 + draw(5)},
        {"batch_id": NEW_BATCH, "lot": "new"}, {"batch_id": pick(shop, draw).batch.id},
        {"club": f"{draw(9)} iron"}, {"kind": list(JointKind)[draw(6)]},
        {"graphics": ("", "6 o'clock")[draw(2)]}, {"number": f"{300 + draw(9)}"},
        {"customer": ("Invented", "Inventor")[draw(2)]},
        {"place": ((shop.rack.id, draw(9)), (shop.box.id, draw(3)))[draw(2)]},
        {"ready_by": ("KT", "MB")[draw(2)]}, {"released_by": ("KT", "MB")[draw(2)]},
    ]  # fmt: skip
    both = {**facts[draw(len(facts))], **facts[draw(len(facts))]}
    return shop.bench.correct(standing.joint.id, Correction(**both))  # type: ignore[arg-type]


def correct_reading(shop: Workshop, draw: Draw) -> ChangeSet | None:
    typed = shop.bench.typed_readings(shop.room, 0, shop.clock.now() + 1)
    reading = typed[draw(len(typed))]
    fix = ReadingFix(shop.room, reading.at_us, (12 + draw(15)) * 1000)
    return shop.bench.correct(pick(shop, draw).joint.id, Correction(readings=(fix,)))


def settings_of_shop(shop: Workshop, draw: Draw) -> ChangeSet | None:
    which = draw(6)
    if which == 0:
        return shop.bench.set_week([(420 + draw(60), 1080), *DEFAULT_WEEK[1:]])
    if which == 1:
        return shop.bench.set_heating(shop.room, Heating(400 + draw(99), 1000, 15_000))
    if which == 2:
        return shop.bench.set_unit((None, Unit.C, Unit.F)[draw(3)])
    if which == 3:
        return shop.bench.set_theme(("", "dark", "light")[draw(3)])
    return shop.bench.set_shop_name(f"Invented bench {draw(3)}")


def shelf(shop: Workshop, draw: Draw) -> ChangeSet | None:
    if draw(2):
        return shop.bench.retire_epoxy(1, bool(draw(2)))
    sheet = replace(PLAIN, name=f"invented {draw(9)}")
    return shop.bench.save_epoxy(sheet, (None, shop.epoxy)[draw(2)])


ACTS = (
    lay_out, mix, rack_all, look, move, take_off, swap, type_temperature, answer_night, disturb,
    too_hot, answer, re_aim, re_glue, release, ready, promise, correct, correct_reading,
    settings_of_shop, shelf,
)  # fmt: skip
