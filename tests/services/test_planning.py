"""What may be promised before anything is mixed agrees with what the board says afterwards."""

from __future__ import annotations

import pytest

from helpers.shop import PLAIN, Shop, at, local, make_shop
from rackboard.core.bench import JointKind
from rackboard.core.cure.calibration import calibrate
from rackboard.core.instants import HOUR_US, MINUTE_US
from rackboard.services.planning import (
    is_known,
    needed_us,
    plan_batch,
    plan_joint,
    two_batches,
)

MODEL = calibrate(PLAIN)


def shop_at(celsius: float, box: float | None = None) -> Shop:
    shop = make_shop("Mon 15:24")
    shop.type(celsius)
    if box is not None:
        shop.type(box, box=True)
    return shop


@pytest.mark.parametrize(("celsius", "life_h"), [(21.0, 1.22754), (18.0, 1.51321)])
def test_the_working_life_is_the_early_bound(celsius: float, life_h: float) -> None:
    """Published in the model's check values: working life 60 min, u 1 °C."""
    shop = shop_at(celsius)
    now = shop.clock.now()
    plan = plan_batch(MODEL, shop.board.records()[shop.room], now, 8)
    assert plan.use_by_us is not None
    assert (plan.use_by_us - now) / HOUR_US == pytest.approx(life_h, rel=1e-4)
    assert not plan.tight
    assert plan.share == pytest.approx(25 / 60 / life_h, rel=1e-4)


def test_a_limit_is_said_rounded_down() -> None:
    shop = shop_at(21.0)
    plan = plan_batch(MODEL, shop.board.records()[shop.room], shop.clock.now(), 8)
    assert local(plan.use_by_us) == "Mon 16:37"
    assert local(plan.shown_use_by_us) == "Mon 16:35"


def test_eight_clubs_in_a_hot_shop_are_tight() -> None:
    shop = shop_at(44.0)
    plan = plan_batch(MODEL, shop.board.records()[shop.room], shop.clock.now(), 8)
    assert plan.use_by_us is not None
    life_min = (plan.use_by_us - plan.mixed_us) / MINUTE_US
    assert 10 < life_min < 25
    assert plan.tight and plan.share == 1.0
    assert plan.most_clubs == int((life_min - 5) / 2.5)


def test_a_few_minutes_leave_no_time_for_a_look_of_its_own() -> None:
    assert needed_us(1, 6 * MINUTE_US) == 2.5 * MINUTE_US
    assert needed_us(1, 10 * MINUTE_US) == 7.5 * MINUTE_US


def test_a_joint_planned_comes_to_what_the_board_then_says() -> None:
    shop = shop_at(21.0)
    planned = plan_joint(
        MODEL, shop.board.records()[shop.room], shop.clock.now(), JointKind.SOLID_HEAD
    )
    (joint,) = shop.glue(1)
    assert shop.standing(joint).not_before_us == planned.off_rack_us
    assert planned.stepwise and planned.safe_us is not None
    assert planned.off_rack_us is not None and planned.off_rack_us < planned.safe_us


def test_cold_parts_and_a_warm_box_move_the_times() -> None:
    shop = shop_at(21.0, box=40.0)
    records, now = shop.board.records(), shop.clock.now()
    room = plan_joint(MODEL, records[shop.room], now, JointKind.SOLID_HEAD)
    cold = plan_joint(MODEL, records[shop.room], now, JointKind.SOLID_HEAD, 2_000)
    box = plan_joint(MODEL, records[shop.box_zone], now, JointKind.SOLID_HEAD)
    assert cold.off_rack_us is not None and room.off_rack_us is not None
    assert cold.off_rack_us >= room.off_rack_us
    assert box.off_rack_us is not None and box.off_rack_us < room.off_rack_us


def test_a_temperature_is_known_for_four_hours() -> None:
    shop = make_shop("Mon 09:00")
    assert not is_known(shop.board.records()[shop.room], shop.clock.now())
    assert not is_known(None, shop.clock.now())
    shop.type(20.0)
    assert is_known(shop.board.records()[shop.room], at("Mon 13:00"))
    assert not is_known(shop.board.records()[shop.room], at("Mon 13:01"))


def test_two_batches_share_the_clubs() -> None:
    assert [two_batches(n) for n in (2, 7, 8)] == [(1, 1), (4, 3), (4, 4)]
