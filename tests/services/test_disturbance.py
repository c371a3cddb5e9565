"""S8: a putter knocked at half an hour, at four and a half, and the next morning."""

from __future__ import annotations

import pytest

from helpers.shop import Shop, at, make_shop
from helpers.store import contents
from rackboard.core.bench import HoldReason, JointKind
from rackboard.core.disturbance import Answer, Glue, answers_to, answers_to_hold, glue_at
from rackboard.core.errors import InputError
from rackboard.core.words import Word
from rackboard.services.bench import MOVED_LATE
from rackboard.store.changes import UNDOABLE


def knocked(when: str) -> tuple[Shop, int, Glue]:
    """A putter glued Monday 09:00 at 21 °C, and what its glue may have come to."""
    shop = make_shop("Mon 09:00")
    shop.flat("Mon 08:00", "Thu 12:00", 21.0)
    (joint,) = shop.glue(["Putter"], kind=JointKind.OVER_HOSEL_PUTTER)
    shop.tick(when)
    standing = shop.standing(joint)
    assert standing.outcome is not None
    gel = standing.outcome.forecast.gel_early
    return shop, joint, glue_at(standing.base, shop.clock.now(), standing.use_by_us, gel)


def kinds(shop: Shop) -> list[str]:
    return [event.kind for event in shop.store.journal.events()]


@pytest.mark.parametrize(
    ("when", "glue", "answers"),
    [
        ("Mon 09:30", Glue.WET, {Answer.RE_AIMED}),
        ("Mon 13:30", Glue.MOVED, {Answer.RE_AIMED, Answer.RE_GLUED}),
        (
            "Tue 08:00",
            Glue.GELLED,
            {Answer.UNTURNED, Answer.RE_GLUED, Answer.SCRAPPED, Answer.MISTAKE},
        ),
    ],
)
def test_s8_three_times_three_sets_of_answers(
    when: str, glue: Glue, answers: set[Answer]
) -> None:
    _, _, found = knocked(when)
    assert found is glue
    assert set(answers_to(found)) == answers


@pytest.mark.parametrize(
    ("base", "now", "use_by", "gel", "glue"),
    [
        (Word.WET, 9, 10, 20, Glue.WET),
        (Word.WET, 10, 10, 20, Glue.MOVED),  # the board may be some seconds behind
        (Word.WAIT, 9, 10, 20, Glue.MOVED),
        (Word.WAIT, 19, 10, 20, Glue.MOVED),
        (Word.WAIT, 20, 10, 20, Glue.GELLED),
        (Word.WET, 9, 10, 9, Glue.GELLED),
        (Word.WET, 9, 10, None, Glue.GELLED),
        (Word.WAIT, 9, None, 20, Glue.GELLED),
        (Word.BENCH, 9, 10, 20, Glue.GELLED),
        (Word.CURED, 9, 10, 20, Glue.GELLED),
    ],
)
def test_what_is_not_surely_soft_may_have_gelled(
    base: Word, now: int, use_by: int | None, gel: int | None, glue: Glue
) -> None:
    assert glue_at(base, now, use_by, gel) is glue


def test_a_hold_is_answered_by_its_reason() -> None:
    assert answers_to_hold(HoldReason.DISTURBED) == answers_to(Glue.GELLED)
    assert Answer.UNTURNED not in answers_to_hold(HoldReason.SOFT_SMEAR)
    assert Answer.NOTHING_SEEN in answers_to_hold(HoldReason.TOO_HOT)


@pytest.mark.parametrize("after_life", [False, True])
def test_re_aimed_is_logged_and_changes_nothing_else(after_life: bool) -> None:
    shop, joint, _ = knocked("Mon 13:30" if after_life else "Mon 09:30")
    before, standing = contents(shop.store, UNDOABLE), shop.standing(joint)
    shop.do(shop.bench.re_aim(joint, after_life=after_life))
    assert contents(shop.store, UNDOABLE) == before
    assert shop.standing(joint) == standing
    assert kinds(shop).count(MOVED_LATE if after_life else "re-aimed") == 1
    assert "disturbed" not in kinds(shop)


def test_re_glued_before_gel_ends_the_joint_and_lays_the_club_out_anew() -> None:
    shop, joint, _ = knocked("Mon 13:30")
    was = shop.standing(joint)
    shop.do(shop.bench.re_glued(joint, after_life=True))
    (old,) = shop.store.work.joints(ids=[joint])
    assert (old.ended_us, old.ended_as) == (at("Mon 13:30"), "re-glued")
    (new,) = shop.board.standings
    assert new.laid_out
    assert (new.club, new.stay, new.joint.kind) == (was.club, was.stay, was.joint.kind)
    assert new.batch.id != was.batch.id
    assert MOVED_LATE in kinds(shop)
    assert not shop.store.journal.holds([joint])
    shop.do(shop.bench.mix(new.batch.id))
    assert shop.standing(new.joint.id).word is Word.WET


def test_re_glued_next_morning_answers_the_hold_and_undo_brings_it_back() -> None:
    shop, joint, _ = knocked("Tue 08:00")
    shop.do(shop.bench.disturb(joint))
    before = contents(shop.store, UNDOABLE)
    hold = shop.standing(joint).hold
    assert hold is not None
    shop.do(shop.bench.re_glued(joint, hold))
    (ended,) = shop.store.journal.holds([joint])
    assert ended.outcome == Answer.RE_GLUED
    assert shop.board.standings[0].laid_out
    assert shop.board.standings[0].hold is None
    shop.undo()
    assert contents(shop.store, UNDOABLE) == before
    assert shop.standing(joint).word is Word.HOLD


def test_a_job_is_not_whole_while_a_club_is_glued_anew() -> None:
    shop = make_shop("Mon 09:00")
    shop.flat("Mon 08:00", "Sun 12:00", 21.0)
    first, second = shop.glue(2)
    shop.tick("Sat 09:00")
    (job,) = shop.board.jobs()
    assert job.good
    shop.do(shop.bench.press_ready(job.job.id, True))
    for joint in (first, second):
        shop.do(shop.bench.re_glued(joint))
    (job,) = shop.board.jobs()
    assert (job.good, job.to_glue, job.job.ready_us) == (False, 2, None)
    assert len({s.batch.id for s in shop.board.standings}) == 1  # one new batch for both


def test_a_joint_is_pulled_once() -> None:
    shop, joint, _ = knocked("Mon 13:30")
    shop.do(shop.bench.re_glued(joint))
    with pytest.raises(InputError, match="wanted a glued joint, got Putter, taken apart already"):
        shop.bench.re_glued(joint)
    with pytest.raises(InputError, match="not glued"):
        shop.bench.re_glued(shop.board.standings[0].joint.id)
    assert len(shop.board.standings) == 1
