"""How cold it got: what one answer says, what it leaves open, and whom it is asked for."""

from __future__ import annotations

import pytest

from helpers.shop import Shop, at, local, make_shop
from rackboard.core.bench import Milestone
from rackboard.core.errors import StoreError
from rackboard.core.instants import HOUR_US, MINUTE_US
from rackboard.store.connection import Database


def typed_shop() -> tuple[Shop, int]:
    """Return a shop with a joint of Monday 14:00; the last temperature is of 16:00."""
    shop = make_shop("Mon 14:00")
    shop.type(21)
    (joint,) = shop.glue()
    shop.clock.set("Mon 16:00")
    shop.type(21)
    return shop, joint


def answer(shop: Shop, celsius: float) -> None:
    """Answer the first question."""
    shop.do(shop.bench.answer_night(shop.board.questions()[0], round(celsius * 1000)))


def asked(shop: Shop) -> list[tuple[int, str, str]]:
    """Return the questions: zone, from, to."""
    return [(q.zone_id, local(q.from_us), local(q.to_us)) for q in shop.board.questions()]


def test_an_answer_for_the_morning_does_not_warm_the_night() -> None:
    shop, joint = typed_shop()
    shop.tick("Tue 07:55")
    answer(shop, 8)
    shop.tick("Tue 10:10")  # nobody has typed a temperature since: asked again
    assert asked(shop) == [(shop.room, "Tue 07:55", "Tue 10:10")]
    answer(shop, 19)
    shop.clock.set("Tue 10:11")
    shop.type(21)
    standing = shop.standing(joint)
    assert (str(standing.base), standing.unknown) == ("WAIT", False)
    assert standing.not_before_us is not None
    assert standing.not_before_us > at("Wed 04:00")  # by the 19 °C it was Tue 04:15


def test_a_corrected_answer_counts_though_it_is_warmer() -> None:
    shop, joint = typed_shop()
    shop.tick("Tue 07:55")
    (question,) = shop.board.questions()
    shop.do(shop.bench.answer_night(question, 8000))
    cold = shop.standing(joint).not_before_us
    shop.do(shop.bench.answer_night(question, 16000))
    warmer = shop.standing(joint).not_before_us
    assert cold is not None and warmer is not None and warmer < cold


def test_a_low_of_one_night_says_nothing_about_the_next() -> None:
    shop, joint = typed_shop()
    shop.clock.set("Mon 17:00")
    shop.type(21)
    assert asked(shop) == [(shop.room, "Mon 18:00", "Tue 08:00")]
    answer(shop, 20)
    shop.clock.set("Wed 09:00")  # nobody was there on Tuesday
    shop.type(21)
    assert shop.standing(joint).unknown
    assert asked(shop) == [(shop.room, "Tue 08:00", "Wed 09:00")]
    answer(shop, 14)
    assert not shop.standing(joint).unknown
    assert asked(shop) == []


def test_a_club_carried_to_the_box_is_still_asked_about_its_night_on_the_rack() -> None:
    shop, joint = typed_shop()
    shop.clock.set("Tue 08:00")
    shop.type(40, box=True)
    shop.do(shop.bench.move(shop.standing(joint).club.id, shop.box.id, 0))
    shop.clock.set("Tue 08:05")
    shop.type(40, box=True)
    assert shop.standing(joint).unknown
    assert asked(shop) == [(shop.room, "Mon 18:00", "Tue 08:05")]
    answer(shop, 13)
    assert not shop.standing(joint).unknown
    assert asked(shop) == []


def test_hours_before_the_first_reading_of_all_can_be_answered() -> None:
    shop = make_shop("Mon 09:00")
    (joint,) = shop.glue()
    shop.clock.set("Mon 12:30")
    shop.type(21)
    assert shop.standing(joint).unknown
    assert asked(shop) == [(shop.room, "Mon 09:00", "Mon 12:30")]
    answer(shop, 18)
    standing = shop.standing(joint)
    assert not standing.unknown and standing.not_before_us is not None
    assert asked(shop) == []


def test_a_withdrawal_outlives_a_full_disk(monkeypatch: pytest.MonkeyPatch) -> None:
    shop = make_shop("Mon 08:00")
    (joint,) = shop.glue()
    shop.flat("Mon 08:00", "Thu 08:00", 21)
    shop.tick("Thu 08:00")
    assert shop.words() == ["CURED"]
    shop.feed([(at("Mon 08:30") + h * HOUR_US, 3.0) for h in range(71)])

    def full(self: Database) -> None:
        self.rollback()
        raise StoreError("The disk is full; nothing was changed.", "Make room.")

    with monkeypatch.context() as patch:
        patch.setattr(Database, "commit", full)
        with pytest.raises(StoreError):
            shop.tick()
    shop.tick()  # no new fact, and no minute has passed
    assert Milestone.FULL_CURE not in shop.board.snapshot.grants.get(joint, {})


def test_the_reading_past_the_late_bound_still_shapes_it() -> None:
    shop = make_shop("Mon 08:00")
    (joint,) = shop.glue()
    shop.flat("Mon 08:00", "Tue 22:00", 21)
    shop.clock.set("Tue 23:50")
    shop.type(21)
    grant = shop.board.snapshot.grants[joint][Milestone.FULL_CURE]
    assert at("Tue 22:30") < grant.late_us < at("Tue 23:50") - 10 * MINUTE_US
    shop.do(shop.bench.type_temperature(shop.room, -20000, at_rack=True, replace=True))
    assert shop.words() == ["BENCH"]
