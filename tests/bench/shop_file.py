"""Fills a data folder with an invented shop at work: 48 clubs, years of 5-minute readings."""

from __future__ import annotations

import math
import time
from collections.abc import Iterator
from pathlib import Path

from rackboard.core.bench import (
    Batch,
    Club,
    Customer,
    Job,
    Joint,
    JointKind,
    Place,
    PlaceKind,
    Stay,
)
from rackboard.core.instants import DAY_US, HOUR_US, MINUTE_US, Instant
from rackboard.services.founding import found_shop
from rackboard.store import Store
from rackboard.store.paths import Paths

STEP_US = 5 * MINUTE_US
AGES_H = (0.2, 0.6, 5.0, 9.0, 22.0, 30.0)
"""The six batches' ages [h]: clubs in every word."""
CLUBS_A_JOB = 8


def fill(folder: Path, days: int) -> None:
    """Make the data file: its last reading is of now."""
    now: Instant = time.time_ns() // 1000
    store = Store.open(Paths.below(folder), now)
    found_shop(store, now)
    room, box = (zone.id for zone in store.shop.zones())
    with store.write("two more racks", now) as act:
        for sort, name in ((5, "B"), (6, "C")):
            act.add(Place(0, room, PlaceKind.RACK, f"Rack {name}", name, 3, 5, sort))
    slots = [
        (place.id, slot)
        for place in store.shop.places()
        for slot in range(place.rows * place.columns)
    ]
    epoxies = store.shop.epoxies()
    for number, age_h in enumerate(AGES_H):
        mixed = now - round(age_h * HOUR_US)
        epoxy = epoxies[number % 3 + 1]
        with store.write("a job", mixed) as act:
            customer = act.add(Customer(0, f"Invented {number}", ""))
            job = act.add(Job(0, str(200 + number), customer, mixed, now + DAY_US))
            batch = act.add(
                Batch(0, number + 1, epoxy.id, epoxy.sheet, "", room, mixed, mixed, mixed)
            )
            for sort in range(CLUBS_A_JOB):
                club = act.add(Club(0, job, f"{sort + 3} iron", sort))
                act.add(Joint(0, club, JointKind.SOLID_HEAD, 1320, batch, mixed))
                place, slot = slots[number * CLUBS_A_JOB + sort]
                act.add(Stay(0, club, place, slot, mixed))
            act.add_event("mixed", "batch", batch, at_us=mixed)
    raw = store._database.raw
    raw.execute("BEGIN IMMEDIATE")
    for zone, mean_c in ((room, 20.0), (box, 32.0)):
        raw.executemany(
            "INSERT INTO reading VALUES (?, ?, ?, 1000, 'feed')", _readings(zone, now, mean_c, days)
        )
    raw.execute("COMMIT")
    store.close()


def _readings(zone: int, now: Instant, mean_c: float, days: int) -> Iterator[tuple[int, int, int]]:
    for i in range(days * 288, -1, -1):
        swing = math.sin(i / 288 * math.tau) * 1.5 + math.sin(i * 12.9898) * 0.1
        yield zone, now - i * STEP_US, round((mean_c + swing) * 1000)
