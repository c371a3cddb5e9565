"""S10, second half: two clubs that were taken for each other, put right on the record."""

from __future__ import annotations

import pytest

from helpers.shop import Shop, at, make_shop
from helpers.store import contents
from rackboard.core.errors import InputError
from rackboard.core.standing import Standing


def two_seven_irons() -> tuple[Shop, Standing, Standing]:
    """One in the rack since Monday 09:00, one in the warm box since 10:00; two jobs."""
    shop = make_shop("Mon 09:00")
    shop.flat("Mon 08:00", "Wed 12:00", 18.0)
    shop.flat("Mon 08:00", "Wed 12:00", 35.0, box=True)
    (one,) = shop.glue(["7 iron"], number="214")
    shop.clock.set("Mon 10:00")
    (two,) = shop.glue(["7 iron"], number="215", box=True)
    shop.tick("Mon 12:00")
    return shop, shop.standing(one), shop.standing(two)


def late(standing: Standing) -> int:
    assert standing.outcome is not None
    full = standing.outcome.forecast.full_cure.late
    assert full is not None
    return full


def test_two_clubs_change_places_from_now_on() -> None:
    shop, one, two = two_seven_irons()
    shop.do(shop.bench.change_places(one.club.id, two.club.id))
    assert shop.board.snapshot.where(one.club.id) == "B1"
    assert shop.board.snapshot.where(two.club.id) == "A1"
    stays = shop.store.work.stays([one.club.id])
    assert [(s.from_us, s.to_us) for s in stays] == [
        (at("Mon 09:00"), at("Mon 12:00")), (at("Mon 12:00"), None)
    ]  # fmt: skip
    assert late(shop.standing(one.joint.id)) < late(one)
    assert late(shop.standing(two.joint.id)) > late(two)
    assert [e.kind for e in shop.store.journal.events(2)] == ["moved", "moved"]


def test_a_wrong_notch_is_wrong_since_both_lay_there_and_the_record_keeps_it() -> None:
    shop, one, two = two_seven_irons()
    assert shop.bench.lain_since(one.club.id, two.club.id) == at("Mon 10:00")
    wrong = shop.store.work.stays([two.club.id])[0]
    shop.do(shop.bench.correct_notches(one.club.id, two.club.id))
    places = {
        club: [(s.place_id, s.slot, s.from_us, s.to_us) for s in shop.store.work.stays([club])]
        for club in (one.club.id, two.club.id)
    }
    assert places == {
        one.club.id: [
            (shop.rack.id, 0, at("Mon 09:00"), at("Mon 10:00")),
            (shop.box.id, 0, at("Mon 10:00"), None),
        ],
        two.club.id: [(shop.rack.id, 0, at("Mon 10:00"), None)],
    }
    (former,) = shop.store.journal.former("stay", wrong.id)
    assert former.column == "*" and former.old["place_id"] == shop.box.id
    # The one that was noted in the cold rack has lain in the warm box, and the other way round.
    assert late(shop.standing(one.joint.id)) < late(one)
    assert late(shop.standing(two.joint.id)) > late(two)
    assert {e.subject_id for e in shop.store.journal.events(kinds=["swapped"])} == {
        one.club.id, two.club.id
    }  # fmt: skip


def test_wrong_names_change_hands_and_the_clocks_stay() -> None:
    shop, one, two = two_seven_irons()
    shop.do(shop.bench.press_ready(one.job.id, True))
    shop.do(shop.bench.correct_names(one.club.id, two.club.id))
    was_one, was_two = shop.standing(one.joint.id), shop.standing(two.joint.id)
    assert (was_one.job.number, was_two.job.number) == ("215", "214")
    assert (was_one.stay, was_two.stay) == (one.stay, two.stay)
    assert (was_one.batch, was_two.batch) == (one.batch, two.batch)
    assert (was_one.not_before_us, was_two.not_before_us) == (
        one.not_before_us, two.not_before_us
    )  # fmt: skip
    (former,) = shop.store.journal.former("club", one.club.id)
    assert (former.column, former.old, former.new) == ("job_id", one.job.id, two.job.id)
    # Another club than the one that was tested belongs to the job now.
    assert shop.board.snapshot.jobs[one.job.id].ready_us is None


def test_wrong_names_in_one_job_leave_it_ready() -> None:
    shop = make_shop()
    shop.type(20)
    four, five = shop.glue(["4 iron", "5 iron"])
    standing = shop.standing(four)
    shop.do(shop.bench.press_ready(standing.job.id, True))
    shop.do(shop.bench.correct_names(standing.club.id, shop.standing(five).club.id))
    assert shop.standing(four).club.name == "5 iron"
    assert shop.standing(four).job.ready_us is not None


@pytest.mark.parametrize("act", ["change_places", "correct_notches", "correct_names"])
def test_a_swap_is_one_act_and_one_undo(act: str) -> None:
    shop, one, two = two_seven_irons()
    before = contents(shop.store)
    shop.do(getattr(shop.bench, act)(one.club.id, two.club.id))
    after = contents(shop.store)
    shop.undo()
    assert contents(shop.store) == before
    assert shop.history.redo() is not None
    assert contents(shop.store) == after


@pytest.mark.parametrize("act", ["change_places", "correct_notches", "correct_names"])
def test_a_club_is_not_swapped_with_itself(act: str) -> None:
    shop, one, _ = two_seven_irons()
    with pytest.raises(InputError, match="wanted two clubs"):
        getattr(shop.bench, act)(one.club.id, one.club.id)


def test_names_that_are_the_same_are_refused() -> None:
    shop = make_shop()
    one, two = (shop.standing(joint).club.id for joint in shop.glue(["wedge", "wedge"]))
    with pytest.raises(InputError, match="wanted two names, got wedge"):
        shop.bench.correct_names(one, two)


def test_a_club_that_lies_nowhere_has_no_notch() -> None:
    shop, one, two = two_seven_irons()
    shop.do(shop.bench.disturb(two.joint.id))
    hold = shop.standing(two.joint.id).hold
    assert hold is not None
    shop.do(shop.bench.end_hold(hold, "scrapped"))
    with pytest.raises(InputError, match="got 7 iron, which lies nowhere"):
        shop.bench.correct_notches(one.club.id, two.club.id)
