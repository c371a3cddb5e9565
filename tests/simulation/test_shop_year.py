"""Sampled days of the simulated shop; `shop_year.py` runs the whole year."""

from __future__ import annotations

import importlib.util
import sys
from pathlib import Path
from types import ModuleType

import pytest


@pytest.fixture(scope="module")
def simulation() -> ModuleType:
    path = Path(__file__).parent / "shop_year.py"
    spec = importlib.util.spec_from_file_location("shop_year", path)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules["shop_year"] = module
    spec.loader.exec_module(module)
    return module


@pytest.mark.parametrize("seed", [4, 21, 33])
def test_what_was_seeded_is_what_the_alerts_say(simulation: ModuleType, seed: int) -> None:
    """R12, R13 and R20 at every tick of four days: faults, kills, absences, clock steps."""
    counts = simulation.Year(seed, 4).run()
    assert counts["ticks"] > 10_000
    assert counts["jobs"] >= 1
    assert counts["messages"] >= 1


def test_an_alarm_that_nobody_seeded_is_found(simulation: ModuleType) -> None:
    year = simulation.Year(4, 1)
    year.shop.clock.set(year.begin + 2 * 3_600_000_000)
    year.feed(year.clock.now())
    year.tick()
    joint = year.shop.glue(1)[0]
    year.shop.do(year.shop.bench.disturb(joint))
    with pytest.raises(AssertionError, match="without a fault"):
        year.tick()
