"""The daily backup in slices, and the watch on the machine's clock."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from helpers.shop import FakeClock, at, make_shop
from helpers.store import small_shop
from rackboard.core.errors import StoreError
from rackboard.core.instants import HOUR_US, MINUTE_US
from rackboard.services.housekeeping import ClockWatch, DailyBackup
from rackboard.store import Store
from rackboard.store.paths import Paths


@pytest.fixture
def kept(tmp_path: Path) -> Iterator[tuple[Store, Paths]]:
    paths = Paths.below(tmp_path)
    store = Store.open(paths, at("Mon 08:00"))
    yield store, paths
    store.close()


def finish(backup: DailyBackup) -> int:
    steps = 1
    while backup.step():
        steps += 1
    return steps


def test_a_backup_is_made_in_slices_once_a_day(kept: tuple[Store, Paths]) -> None:
    store, paths = kept
    small_shop(store)
    clock = FakeClock(at("Mon 08:00"))
    backup = DailyBackup(store, clock)
    assert backup.step()
    assert backup.at_work
    with store.write("an act in the middle", clock.now()) as act:
        act.set_setting("middle", True)
    assert finish(backup) >= 1
    assert backup.made is not None
    assert backup.made.parent == paths.backups
    clock.set("Mon 20:00")
    assert not backup.step()
    assert len(list(paths.backups.iterdir())) == 1
    clock.set("Tue 08:00")
    finish(backup)
    assert len(list(paths.backups.iterdir())) == 2


def test_a_fault_is_said_and_tried_again_an_hour_later(
    kept: tuple[Store, Paths], monkeypatch: pytest.MonkeyPatch
) -> None:
    store, _ = kept
    clock = FakeClock(at("Mon 08:00"))
    backup = DailyBackup(store, clock)
    tried: list[int] = []

    def full(self: Store, now: int) -> Iterator[float]:
        tried.append(now)
        raise StoreError("The disk is full.", "Make room.")
        yield 0.0

    with monkeypatch.context() as patched:
        patched.setattr(Store, "backup_slices", full)
        assert not backup.step()
        assert backup.trouble == "No backup was made. The disk is full. Make room."
        clock.advance(minutes=59)
        backup.step()
        assert len(tried) == 1
        clock.advance(minutes=2)
        backup.step()
        assert len(tried) == 2
    clock.advance(hours=1, minutes=1)
    finish(backup)
    assert backup.trouble is None


def test_a_clock_set_far_back_does_not_put_the_backup_off(kept: tuple[Store, Paths]) -> None:
    store, paths = kept
    clock = FakeClock(at("Wed 08:00"))
    backup = DailyBackup(store, clock)
    finish(backup)
    clock.set("Mon 08:00")
    finish(backup)
    assert len(list(paths.backups.iterdir())) == 2


def test_stopping_leaves_no_half_backup(kept: tuple[Store, Paths]) -> None:
    store, paths = kept
    backup = DailyBackup(store, FakeClock(at("Mon 08:00")))
    assert backup.step()
    backup.stop()
    assert not backup.at_work
    assert list(paths.backups.iterdir()) == []


def test_a_clock_set_back_an_hour_is_said_until_it_has_caught_up() -> None:
    shop = make_shop("Mon 12:00")
    shop.glue(1)
    watch = ClockWatch(shop.store)
    assert watch.check(at("Mon 12:00")) is None
    assert watch.check(at("Mon 11:58") + 1) is None
    said = watch.check(at("Mon 11:00"))
    assert said is not None
    assert "set back" in said
    assert "1 h later" in said
    assert watch.check(at("Mon 11:30")) is not None
    assert watch.check(at("Mon 12:00")) is None


def test_mixing_said_afterwards_is_no_clock_set_back() -> None:
    shop = make_shop("Mon 12:00")
    batch = shop.lay_out(1)
    shop.do(shop.bench.mix(batch, at("Mon 11:20")))
    assert ClockWatch(shop.store).check(at("Mon 12:00")) is None
    assert ClockWatch(shop.store).check(at("Mon 11:30")) is not None


@pytest.mark.parametrize(
    ("step_us", "way"), [(HOUR_US, "put forward by 1 h"), (-10 * MINUTE_US, "set back by 10 min")]
)
def test_a_jump_against_the_steady_clock_is_said_once(step_us: int, way: str) -> None:
    store = Store.open_memory()
    steady = [0]
    watch = ClockWatch(store, lambda: steady[0])
    now = at("Mon 08:00")
    assert watch.check(now) is None
    steady[0] += 8 * HOUR_US  # the machine slept: both clocks went on
    now += 8 * HOUR_US
    assert watch.check(now) is None
    steady[0] += MINUTE_US
    now += MINUTE_US + step_us
    said = watch.check(now)
    assert said is not None
    assert way in said
    steady[0] += MINUTE_US
    assert watch.check(now + MINUTE_US) is None
