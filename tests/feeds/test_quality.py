"""Faults of sensors: each seeded one is found and named, and valid air never is one."""

from __future__ import annotations

import random

import pytest

from rackboard.core.feed import Fault, FaultKind, Polled, Sample
from rackboard.core.instants import HOUR_US, MINUTE_US, SECOND_US, Instant
from rackboard.feeds.quality import Judge, JudgedFeed

RANGE = (-40_000, 85_000)
T0: Instant = 1_773_000_000 * SECOND_US


def judge() -> Judge:
    return Judge(RANGE, T0)


def take(
    judged: Judge, temperatures: list[int], start: Instant = T0
) -> tuple[list[int], list[Fault]]:
    """Hand in minute samples one a call; return what was kept and every fault that was named."""
    kept: list[int] = []
    named: dict[tuple[FaultKind, Instant], Fault] = {}
    for minute, mc in enumerate(temperatures):
        at = start + minute * MINUTE_US
        samples, faults = judged.judge([Sample(at, mc)], at)
        kept += [sample.temperature_mc for sample in samples]
        named |= {(fault.kind, fault.since_us): fault for fault in faults}
    return kept, list(named.values())


def sensor(rng: random.Random, minute: int) -> int:
    """Shop air with 0.3 °C noise, in the steps of 1/16 °C of a one-wire sensor."""
    air = 19_000 + 3_000 * ((minute // 60) % 24 in range(8, 18)) + rng.gauss(0, 300)
    return int(round(air / 62.5) * 62.5)


def test_a_thousand_hours_of_valid_air_have_no_fault() -> None:
    rng = random.Random(12)
    air = [sensor(rng, minute) for minute in range(60_000)]
    kept, faults = take(judge(), air)
    assert faults == []
    assert kept == air


def test_a_hundred_seeded_faults_are_each_found_and_named_and_nothing_else_is() -> None:
    rng = random.Random(35)
    judged = judge()
    kinds = ["lost", "frozen", "range", "power", "jump"] * 20
    rng.shuffle(kinds)
    at = T0
    seeded: list[tuple[FaultKind, Instant]] = []
    found: dict[tuple[FaultKind, Instant], Fault] = {}
    bad: set[Instant] = set()
    kept: set[Instant] = set()

    def step(samples: list[Sample]) -> None:
        taken, faults = judged.judge(samples, at)
        kept.update(sample.at_us for sample in taken)
        found.update({(fault.kind, fault.since_us): fault for fault in faults})

    for kind in kinds:
        for minute in range(rng.randint(60, 120)):
            at += MINUTE_US
            step([Sample(at, sensor(rng, minute))])
        if kind == "lost":
            seeded.append((FaultKind.LOST, at))
            for _ in range(rng.randint(16, 90)):
                at += MINUTE_US
                step([])
        elif kind == "frozen":
            value = sensor(rng, 0) + 1
            seeded.append((FaultKind.FROZEN, at + MINUTE_US))
            for _ in range(rng.randint(365, 500)):
                at += MINUTE_US
                step([Sample(at, value)])
        else:
            wrong, name = {
                "range": (rng.choice([-55_000, 127_000]), FaultKind.OUT_OF_RANGE),
                "power": (85_000, FaultKind.POWER_ON),
                "jump": (rng.choice([-5_000, 60_000]), FaultKind.JUMP),
            }[kind]
            at += MINUTE_US
            seeded.append((name, at))
            bad.add(at)
            step([Sample(at, wrong)])
    for minute in range(30):
        at += MINUTE_US
        step([Sample(at, sensor(rng, minute))])
    assert sorted(found) == sorted(seeded)
    assert len(seeded) == 100
    assert not bad & kept
    assert all(fault.said for fault in found.values())


def test_a_power_on_value_is_a_temperature_beside_its_neighbours() -> None:
    assert take(judge(), [20_000, 85_000, 85_000, 20_100])[0] == [20_000, 20_100]
    hot = take(judge(), [84_900, 85_000, 84_950])
    assert hot == ([84_900, 85_000, 84_950], [])
    assert take(judge(), [85_000, 84_000, 84_100])[0] == [85_000, 84_000, 84_100]


def test_a_jump_waits_for_the_next_sample() -> None:
    judged = judge()
    kept, faults = take(judged, [20_000, 45_000])
    assert kept == [20_000]
    assert [(f.kind, f.until_us) for f in faults] == [(FaultKind.JUMP, None)]
    at = T0 + 2 * MINUTE_US
    samples, after = judged.judge([Sample(at, 46_000)], at)
    assert [s.temperature_mc for s in samples] == [45_000, 46_000]
    assert after == []


def test_a_spike_is_left_out_and_named_and_stays_out_when_it_comes_again() -> None:
    judged = judge()
    kept, faults = take(judged, [20_000, 60_000, 20_100])
    assert kept == [20_000, 20_100]
    assert [(f.kind, f.until_us) for f in faults] == [(FaultKind.JUMP, T0 + 2 * MINUTE_US)]
    take(judged, [20_000] * 30, T0 + 3 * MINUTE_US)
    spike = Sample(T0 + MINUTE_US, 60_000)
    again, _ = judged.judge([Sample(T0, 20_000), spike], T0 + 33 * MINUTE_US)
    assert again == [Sample(T0, 20_000)]


def test_what_comes_late_is_kept_unless_it_jumps() -> None:
    judged = judge()
    take(judged, [20_000] * 3)
    late = [Sample(T0 + 30 * SECOND_US, 20_100), Sample(T0 + 90 * SECOND_US, 50_000)]
    assert judged.judge(late, T0 + 3 * MINUTE_US)[0] == late[:1]


def test_after_a_gap_a_jump_is_no_wonder() -> None:
    judged = judge()
    judged.judge([Sample(T0, 5_000)], T0)
    later = T0 + HOUR_US
    kept, faults = judged.judge([Sample(later, 30_000)], later)
    assert kept == [Sample(later, 30_000)]
    assert faults == []


def test_a_coarse_sensor_may_show_one_figure_all_night() -> None:
    assert take(judge(), [20_000, 20_500, 20_000] + [20_500] * 600)[1] == []
    fine = take(judge(), [20_000, 20_062, 20_000] + [20_062] * 600)
    assert [fault.kind for fault in fine[1]] == [FaultKind.FROZEN]
    assert len(fine[0]) == 603, "frozen readings are kept, and spoken of"


def test_what_is_on_the_record_already_tells_that_it_is_frozen() -> None:
    recent = [Sample(T0 - 400 * MINUTE_US, 20_062)]
    recent += [Sample(T0 - minute * MINUTE_US, 20_000) for minute in range(380, 0, -1)]
    judged = Judge(RANGE, T0, recent)
    faults = judged.judge([Sample(T0, 20_000)], T0)[1]
    assert [(f.kind, f.since_us) for f in faults] == [
        (FaultKind.FROZEN, T0 - 380 * MINUTE_US)
    ]


def test_a_stamp_to_come_is_refused_and_named() -> None:
    judged = judge()
    late = Sample(T0 + 6 * MINUTE_US, 20_000)
    kept, faults = judged.judge([late], T0)
    assert kept == []
    assert [fault.kind for fault in faults] == [FaultKind.AHEAD]
    near = Sample(T0 + 5 * MINUTE_US, 20_000)
    kept, faults = judged.judge([near], T0)
    assert kept == [near]
    assert [fault.until_us for fault in faults] == [near.at_us]


@pytest.mark.parametrize(("minutes", "lost"), [(14, False), (15, True)])
def test_a_source_that_never_sent_is_lost_since_it_was_asked(minutes: int, lost: bool) -> None:
    now = T0 + minutes * MINUTE_US
    faults = judge().judge([], now)[1]
    assert [(f.kind, f.since_us) for f in faults] == ([(FaultKind.LOST, T0)] if lost else [])


def test_a_source_that_says_why_is_not_also_lost() -> None:
    class Gone:
        def poll(self, now: Instant) -> Polled:
            from rackboard.core.text import text

            return Polled((), (Fault(FaultKind.MISSING, text("Feed", "gone"), T0),))

    polled = JudgedFeed(Gone(), judge()).poll(T0 + HOUR_US)
    assert [fault.kind for fault in polled.faults] == [FaultKind.MISSING]
