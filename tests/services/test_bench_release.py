"""A person lets a joint go before the board does: the word stays, the initials stand."""

from __future__ import annotations

import pytest

from helpers.shop import Shop, make_shop
from helpers.store import contents
from rackboard.core.bench import Hold, HoldReason, Milestone
from rackboard.core.errors import InputError
from rackboard.core.standing import expected_at
from rackboard.core.words import Word


def curing(when: str = "Mon 15:00") -> tuple[Shop, int]:
    shop = make_shop("Mon 09:00")
    shop.flat("Mon 08:00", "Thu 12:00", 21.0)
    (joint,) = shop.glue(["Driver"])
    shop.bench.act_as("KT")
    shop.tick(when)
    return shop, joint


def test_a_release_changes_no_word_and_gives_no_permission() -> None:
    shop, joint = curing()
    before = shop.standing(joint)
    shop.do(shop.bench.release(joint, Milestone.HANDLING, "  needed  for a fitting "))
    after = shop.standing(joint)
    assert (after.word, after.not_before_us) == (before.word, before.not_before_us)
    assert after.released is not None
    assert (after.released.by, after.released.reason) == ("KT", "needed for a fitting")
    assert after.released.at_us == shop.clock.now()
    assert shop.store.journal.grants([joint]) == []
    (event,) = shop.store.journal.events(kinds=["released"])
    assert (event.by, event.data["milestone"]) == ("KT", "handling")
    assert [p.initials for p in shop.store.shop.persons()] == ["KT"]


def test_the_boards_own_permission_takes_its_place() -> None:
    shop, joint = curing()
    shop.do(shop.bench.release(joint, Milestone.HANDLING, "a fitting"))
    shop.tick("Tue 08:00")
    assert shop.standing(joint).base is Word.BENCH
    assert shop.standing(joint).released is None
    shop.do(shop.bench.release(joint, Milestone.FULL_CURE, "he stood at the counter"))
    assert shop.standing(joint).released is not None
    shop.tick("Thu 08:00")
    assert shop.standing(joint).base is Word.CURED
    assert shop.standing(joint).released is None
    assert len(shop.store.journal.releases([joint])) == 2


def test_a_release_for_hitting_outlasts_the_permission_to_handle() -> None:
    shop, joint = curing()
    shop.do(shop.bench.release(joint, Milestone.FULL_CURE, "a fitting"))
    shop.tick("Tue 08:00")
    released = shop.standing(joint).released
    assert released is not None and released.milestone is Milestone.FULL_CURE


def test_on_hold_nobody_reads_released() -> None:
    shop, joint = curing()
    shop.do(shop.bench.release(joint, Milestone.HANDLING, "a fitting"))
    shop.do(shop.bench.disturb(joint))
    assert shop.standing(joint).released is None


def test_a_release_ends_a_hold_that_it_answers() -> None:
    shop, joint = curing("Tue 08:00")
    with shop.store.write("hold", shop.clock.now()) as act:
        act.add(Hold(0, joint, HoldReason.TOO_HOT, "", shop.clock.now()))
    shop.spread(act.changes)
    hold = shop.standing(joint).hold
    assert hold is not None
    before = contents(shop.store)
    shop.do(shop.bench.release(joint, Milestone.FULL_CURE, "looked at it", hold))
    assert shop.standing(joint).hold is None
    (ended,) = shop.store.journal.holds([joint])
    assert (ended.outcome, ended.by) == ("released", "KT")
    shop.undo()
    assert contents(shop.store) == before


def test_it_is_taken_back_by_undo() -> None:
    shop, joint = curing()
    before = contents(shop.store)
    shop.do(shop.bench.release(joint, Milestone.HANDLING, "a fitting"))
    assert shop.history.undo_label == "release Driver"
    shop.undo()
    assert contents(shop.store) == before
    assert shop.standing(joint).released is None


@pytest.mark.parametrize(
    ("by", "reason", "said"),
    [
        ("", "x", "the initials of who releases it"),
        ("KT", "  ", "a reason"),
        ("KT", "x" * 201, "in up to 200 letters"),
    ],
)
def test_it_asks_who_and_why(by: str, reason: str, said: str) -> None:
    shop, joint = curing()
    shop.bench.act_as(by)
    with pytest.raises(InputError, match=said):
        shop.bench.release(joint, Milestone.HANDLING, reason)
    assert shop.store.journal.releases([joint]) == []


def test_what_is_only_laid_out_is_not_released() -> None:
    shop, _ = curing()
    batch = shop.lay_out(["Putter"])
    (joint,) = shop.board.snapshot.joints_of_batch[batch]
    with pytest.raises(InputError, match="a glued joint"):
        shop.bench.release(joint.id, Milestone.HANDLING, "x")


def test_what_is_expected_is_known_for_each_permission() -> None:
    shop, joint = curing()
    standing = shop.standing(joint)
    handling = expected_at(standing, Milestone.HANDLING)
    full = expected_at(standing, Milestone.FULL_CURE)
    assert handling is not None and full is not None
    assert shop.clock.now() < handling < full
    shop.do(shop.bench.disturb(joint))
    assert expected_at(shop.standing(joint), Milestone.HANDLING) is None


def test_an_erased_customer_stands_in_no_reason() -> None:
    shop, joint = curing()
    shop.do(shop.bench.release(joint, Milestone.HANDLING, "Invented Customer was in a hurry"))
    shop.spread(shop.bench.erase_customer(shop.standing(joint).job.customer_id))
    assert shop.store.journal.releases([joint])[0].reason == ""
