"""What the list of jobs says: in opening hours, and of a promise whether it can be kept."""

from __future__ import annotations

import pytest

from helpers.shop import Shop, make_shop
from rackboard.core.temperature import Unit
from rackboard.ui.board_presenter import BoardPresenter
from rackboard.ui.board_view import JobRow


def rows(shop: Shop) -> tuple[JobRow, ...]:
    return BoardPresenter(shop.board, shop.clock.now(), Unit.C).jobs()


@pytest.fixture
def shop() -> Shop:
    made = make_shop("Mon 08:00")
    made.type(21)
    return made


@pytest.mark.parametrize(
    ("promised", "good", "said"),
    [
        (None, "10:40", ""),
        ("Tue 10:45", "10:40", ", promised 10:45"),
        ("Tue 10:35", "10:40, late", ", promised 10:35, at risk"),
        ("Mon 17:00", "10:40, late", ", promised Mon 17:00, missed"),
    ],
)
def test_a_promise_and_whether_it_can_be_kept(
    shop: Shop, promised: str | None, good: str, said: str
) -> None:
    shop.glue(1, promised=promised)
    shop.flat("Mon 08:30", "Tue 10:30", 25.0)
    shop.tick("Tue 10:30")
    (row,) = rows(shop)
    assert row.good == good
    assert row.accessible == f"job 101, Invented Customer, glue good: {good}{said}"


def test_outside_opening_hours_the_late_word_stands_first(shop: Shop) -> None:
    shop.glue(1, promised="Tue 09:00")
    shop.flat("Mon 08:30", "Mon 17:00", 18.0)
    shop.tick("Mon 17:00")
    (row,) = rows(shop)
    assert row.good.startswith(("late: ", "no time"))


def test_a_missed_promise_of_what_is_not_glued_is_late(shop: Shop) -> None:
    shop.lay_out(2, promised="Mon 12:00")
    (row,) = rows(shop)
    assert row.good == "2 to glue"
    assert row.accessible.endswith("promised 12:00, at risk")
    shop.tick("Mon 12:00")
    (row,) = rows(shop)
    assert row.good == "2 to glue, late"
    assert row.accessible.endswith("promised 12:00, missed")


def test_of_a_night_that_nobody_knows_a_promise_is_late_once_it_is_missed(shop: Shop) -> None:
    shop.glue(1, promised="Tue 09:00")
    shop.tick("Tue 07:55")
    (row,) = rows(shop)
    assert row.good == "low?"
    shop.tick("Tue 09:00")
    (row,) = rows(shop)
    assert row.good == "low?, late"


def test_a_hold_says_more_than_a_late_promise(shop: Shop) -> None:
    (joint,) = shop.glue(1, promised="Mon 09:00")
    shop.do(shop.bench.disturb(joint))
    shop.tick("Mon 10:00")
    (row,) = rows(shop)
    assert row.good == "on hold"
    assert row.accessible.endswith("missed")
