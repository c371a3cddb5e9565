from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from helpers.store import NOON, SmallShop, small_shop
from rackboard.store import Store
from rackboard.store.paths import Paths


@pytest.fixture
def memory() -> Iterator[Store]:
    store = Store.open_memory()
    yield store
    store.close()


@pytest.fixture
def shop(memory: Store) -> SmallShop:
    return small_shop(memory)


@pytest.fixture
def paths(tmp_path: Path) -> Paths:
    return Paths.below(tmp_path / "data")


@pytest.fixture
def filed(paths: Paths) -> Iterator[Store]:
    store = Store.open(paths, NOON, busy_s=0)
    yield store
    store.close()
