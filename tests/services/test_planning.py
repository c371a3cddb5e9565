"""What may be promised before anything is mixed agrees with what the board says afterwards."""

from __future__ import annotations

import pytest

from helpers.shop import PLAIN, Shop, at, local, make_shop
from rackboard.core.bench import JointKind
from rackboard.core.cure.calibration import calibrate
from rackboard.core.instants import HOUR_US, MINUTE_US
from rackboard.services.planning import (
    Late,
    is_known,
    needed_us,
    plan_batch,
    plan_joint,
    shares,
    slowest_kind,
    why_late,
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


@pytest.mark.parametrize(
    ("clubs", "most", "parts"),
    [(2, 1, (1, 1)), (7, 6, (4, 3)), (8, 7, (4, 4)), (8, 2, (2, 2, 2, 2)), (14, 3, (3, 3, 3, 3, 2)),
     (8, 0, ()), (1, 0, ())],
)  # fmt: skip
def test_batches_share_the_clubs(clubs: int, most: int, parts: tuple[int, ...]) -> None:
    assert shares(clubs, most) == parts
    assert not parts or (sum(parts) == clubs and max(parts) <= most)


def test_the_slowest_kind_sets_the_times() -> None:
    assert slowest_kind([JointKind.ADAPTER_SLEEVE, JointKind.HOLLOW_HEAD]) is JointKind.HOLLOW_HEAD
    both = [JointKind.OVER_HOSEL_PUTTER, JointKind.HOLLOW_HEAD]
    assert slowest_kind(both) is JointKind.OVER_HOSEL_PUTTER


@pytest.mark.parametrize(
    ("celsius", "promised", "reason"),
    [
        (21.0, "Mon 20:00", Late.EPOXY),  # 24 h at the label's 25 °C
        (20.0, "Tue 20:00", Late.COOL),
        (26.0, "Tue 17:50", Late.NIGHT),
        (8.0, "Fri 17:00", Late.COLD),
    ],
)
def test_a_late_promise_has_its_reason(celsius: float, promised: str, reason: Late) -> None:
    shop = shop_at(celsius)
    record, now = shop.board.records()[shop.room], shop.clock.now()
    kind = JointKind.SOLID_HEAD
    safe = plan_joint(MODEL, record, now, kind).safe_us
    assert safe is None or safe > at(promised), local(safe)
    assert why_late(MODEL, record, now, kind, at(promised)) is reason
