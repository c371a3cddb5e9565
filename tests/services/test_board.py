"""What the board gives, keeps and takes back; a tick agrees with a board made anew to the bit."""

from __future__ import annotations

import contextlib
import itertools
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from helpers.shop import SHOP_ZONE, Shop, at, local, make_shop
from rackboard.core.bench import Milestone, PlaceKind, Source
from rackboard.core.cure.run import Run
from rackboard.core.errors import InputError
from rackboard.core.instants import HOUR_US, MINUTE_US
from rackboard.core.words import Word
from rackboard.services.board import Board
from rackboard.services.importing import import_readings
from rackboard.store.faults import ChangedSinceError, FullDiskError


def late_of(shop: Shop, joint: int, milestone: Milestone = Milestone.HANDLING) -> int:
    outcome = shop.standing(joint).outcome
    assert outcome is not None
    bounds = outcome.forecast.handling
    if milestone is Milestone.FULL_CURE:
        bounds = outcome.forecast.full_cure
    assert bounds is not None
    assert bounds.late is not None
    return bounds.late


def withdrawn(shop: Shop) -> int:
    return len(shop.store.journal.events(kinds=["permission withdrawn"]))


def iron_at_21(until: str = "Tue 12:00") -> tuple[Shop, int]:
    """One iron glued Monday 09:00 at 21 °C; an hourly record until …; it is Monday 10:00."""
    shop = make_shop("Mon 09:00")
    shop.feed([(at("Mon 09:00"), 21.0)])
    (joint,) = shop.glue(1)
    shop.flat("Mon 10:00", until, 21.0)
    shop.tick("Mon 10:00")
    return shop, joint


# When a permission is given


def test_times_are_those_of_the_model() -> None:
    """21 °C flat, u 1: handling late 12.5117 h, full cure 39.0810 h (lag none to speak of)."""
    shop, joint = iron_at_21("Wed 12:00")
    assert (late_of(shop, joint) - at("Mon 09:00")) / HOUR_US == pytest.approx(12.5117, abs=1e-3)
    full = late_of(shop, joint, Milestone.FULL_CURE)
    assert (full - at("Mon 09:00")) / HOUR_US == pytest.approx(39.0810, abs=1e-3)


def test_it_is_given_at_the_printed_time_and_not_a_second_before() -> None:
    shop, joint = iron_at_21()
    printed = shop.standing(joint).not_before_us
    assert local(printed) == "Mon 21:35"
    assert printed is not None
    shop.tick(printed - 1_000_000)
    assert shop.standing(joint).word is Word.WAIT
    assert shop.tick(printed)
    assert shop.standing(joint).word is Word.BENCH
    (grant,) = shop.store.journal.grants([joint])
    assert (grant.printed_us, grant.given_us) == (printed, printed)
    assert grant.late_us == late_of(shop, joint)


def test_it_is_given_only_when_the_record_reaches_it() -> None:
    """In open hours, where the outlook goes on at the last reading, but gives nothing."""
    shop = make_shop("Mon 09:00")
    shop.feed([(at("Mon 09:00"), 30.0)])
    (joint,) = shop.glue(1)
    shop.flat("Mon 10:00", "Mon 15:00", 30.0)
    shop.tick("Mon 15:00")
    late, printed = late_of(shop, joint), shop.standing(joint).not_before_us
    assert printed is not None
    assert at("Mon 15:00") < late < printed < at("Mon 16:00")
    shop.tick(at("Mon 16:30"))
    assert late_of(shop, joint) == late
    assert shop.standing(joint).word is Word.WAIT
    assert shop.standing(joint).asked
    shop.feed([(late - 1_000_000, 30.0)])
    shop.board.tick()
    assert shop.standing(joint).word is Word.WAIT
    shop.feed([(at("Mon 16:30"), 30.0)])
    shop.board.tick()
    assert shop.standing(joint).word is Word.BENCH


def test_it_depends_on_nothing_after_the_first_reading_past_it() -> None:
    shop, joint = iron_at_21("Mon 22:00")
    before = late_of(shop, joint)
    shop.feed([(at("Mon 23:00"), -10.0)])
    shop.tick("Mon 23:00")
    assert late_of(shop, joint) == before
    assert shop.standing(joint).word is Word.BENCH


# Nights


def test_a_cold_morning_asks_once_and_moves_the_times() -> None:
    """S1: irons glued Monday 15:40 at 21, PC off since 18:10, Tuesday 07:55 at 13 °C."""
    shop = make_shop("Mon 15:30")
    shop.type(21)
    irons = shop.glue(8)
    shop.clock.set("Mon 18:00")
    before = shop.standing(irons[0]).not_before_us
    fresh = Shop(shop.store, shop.clock)  # the PC was off: a board that starts anew
    fresh.clock.set("Tue 07:55")
    fresh.type(13)
    assert fresh.words() == ["WAIT"] * 8
    assert all(s.unknown and s.not_before_us is None for s in fresh.board.standings)
    (question,) = fresh.board.questions()
    assert (local(question.from_us), local(question.to_us)) == ("Mon 18:00", "Tue 07:55")
    fresh.tick("Tue 12:00")  # unanswered: nothing is earned, whatever the clock says
    assert fresh.words() == ["WAIT"] * 8
    fresh.do(fresh.bench.answer_night(question, 13_000))
    assert fresh.board.questions() == []
    after = fresh.standing(irons[0])
    assert not after.unknown
    assert before is not None
    assert after.not_before_us is not None
    assert after.not_before_us > at("Tue 07:55")
    assert withdrawn(fresh) == 0


def test_what_was_reached_on_monday_holds_on_tuesday() -> None:
    """S1: a driver that reached BENCH before the night still says BENCH."""
    shop = make_shop("Mon 08:00")
    for hour in range(8, 18):
        shop.clock.set(f"Mon {hour:02d}:00")
        shop.type(30)
        if hour == 8:
            (driver,) = shop.glue(["Driver"])
    assert shop.standing(driver).word is Word.BENCH
    shop.clock.set("Tue 07:55")
    shop.type(13)
    assert shop.standing(driver).word is Word.BENCH
    assert shop.standing(driver).unknown


def test_the_low_decides_how_late_it_gets() -> None:
    lates = []
    for low in (18_000, 14_000, 8_000):
        shop = make_shop("Mon 15:30")
        shop.type(21)
        (joint,) = shop.glue(1)
        shop.clock.set("Tue 08:00")
        shop.type(20)
        shop.do(shop.bench.answer_night(shop.board.questions()[0], low))
        lates.append(late_of(shop, joint))
    assert lates == sorted(set(lates))


def test_at_closing_on_friday_the_weekend_is_asked_about_and_the_promise_is_at_risk() -> None:
    """S4: Friday 16:00, heating off till Monday; never CURED on Sunday."""
    shop = make_shop("Fri 15:50")
    shop.type(21)
    batch = shop.lay_out(2, promised=at("Mon 09:00", 1))
    shop.do(shop.bench.mix(batch))
    shop.do(shop.bench.rack_all(batch))
    assert shop.tick("Fri 15:59") is not None
    assert shop.board.questions() == []
    shop.tick("Fri 16:01")
    (question,) = shop.board.questions()
    assert question.ahead
    assert (question.from_us, question.to_us) == (at("Fri 18:00"), at("Mon 08:00", 1))
    shop.do(shop.bench.answer_night(question, 12_000))
    assert shop.board.questions() == []
    (job,) = shop.board.jobs()
    assert job.at_risk
    assert job.good_us is not None
    assert job.good_us > at("Mon 09:00", 1)
    for day in ("Sat", "Sun"):
        shop.tick(f"{day} 12:00")
        assert shop.words() == ["WAIT", "WAIT"]
    shop.tick(at("Mon 07:59", 1))
    assert "CURED" not in shop.words()


def test_a_promise_that_is_kept_is_not_at_risk() -> None:
    shop = make_shop("Mon 09:00")
    shop.feed([(at("Mon 09:00"), 25.0)])
    batch = shop.lay_out(1, promised=at("Fri 17:00"))
    shop.do(shop.bench.mix(batch))
    shop.flat("Mon 10:00", "Wed 10:00", 25.0)
    shop.tick("Mon 10:00")
    assert not shop.board.jobs()[0].at_risk
    job = shop.board.jobs()[0].job
    shop.do(shop.bench.promise(job.id, at("Mon 17:00")))
    assert shop.board.jobs()[0].at_risk


def test_an_open_gap_of_a_feed_gives_nothing_until_it_is_bridged() -> None:
    shop, joint = iron_at_21("Mon 12:00")
    shop.flat("Mon 16:00", "Tue 20:00", 21.0)
    shop.tick("Tue 20:00")
    assert shop.standing(joint).unknown
    assert shop.standing(joint).word is Word.WAIT
    (question,) = shop.board.questions()
    assert (local(question.from_us), local(question.to_us)) == ("Mon 12:00", "Mon 16:00")
    shop.do(shop.bench.answer_night(question, 19_000))
    assert shop.standing(joint).word is Word.BENCH


# Taken back


def test_a_late_bound_a_little_past_now_takes_nothing_back() -> None:
    shop, joint = iron_at_21("Mon 22:00")
    shop.tick("Mon 21:35")
    assert shop.standing(joint).word is Word.BENCH
    # A late reading between two others makes it a little colder: some minutes.
    shop.feed([(at("Mon 20:30"), 20.6)])
    shop.board.tick()
    assert at("Mon 21:31") < late_of(shop, joint) <= at("Mon 21:40")
    assert shop.standing(joint).word is Word.BENCH
    assert withdrawn(shop) == 0


def test_a_late_bound_well_past_now_takes_it_back_with_an_entry() -> None:
    shop, joint = iron_at_21("Mon 22:00")
    shop.tick("Mon 21:35")
    shop.feed([(at("Mon 15:30"), 5.0)])
    assert shop.board.tick()
    assert late_of(shop, joint) > at("Mon 21:40")
    assert shop.standing(joint).word is Word.WAIT
    (grant,) = shop.store.journal.grants([joint])
    assert grant.withdrawn_us == at("Mon 21:35")
    (event,) = shop.store.journal.events(kinds=["permission withdrawn"])
    assert event.subject_id == joint
    assert event.data["was_us"] == at("Mon 21:35")
    assert event.data["late_us"] == late_of(shop, joint)


def test_mixing_undone_takes_what_it_had_earned() -> None:
    shop = make_shop("Mon 22:00")
    shop.flat("Mon 08:00", "Mon 22:00", 25.0)
    batch = shop.lay_out(1)
    shop.do(shop.bench.mix(batch, at("Mon 09:00")))
    assert shop.words() == ["BENCH"]
    shop.undo()
    assert shop.words() == ["WAIT"]
    assert shop.board.standings[0].laid_out
    assert withdrawn(shop) == 1
    redone = shop.history.redo()
    assert redone is not None
    shop.spread(redone)
    assert shop.words() == ["BENCH"]


def test_a_clock_set_back_an_hour_takes_nothing_and_loses_nothing() -> None:
    shop, joint = iron_at_21("Mon 22:00")
    shop.tick("Mon 21:35")
    grants = shop.store.journal.grants([joint])
    shop.tick("Mon 20:35")
    assert shop.standing(joint).word is Word.BENCH
    # Readings come with the wrong time and move the late bound a little.
    shop.feed([(at("Mon 20:40"), 20.8)])
    shop.tick("Mon 20:40")
    assert late_of(shop, joint) != grants[0].late_us
    assert shop.standing(joint).word is Word.BENCH
    assert Shop(shop.store, shop.clock).board.tick() is not None
    assert shop.store.journal.grants([joint]) == grants
    assert withdrawn(shop) == 0
    shop.tick("Mon 22:00")
    assert shop.store.journal.grants([joint]) == grants


# Carrying


def test_a_club_that_is_carried_keeps_its_curves() -> None:
    """From a 21 °C room to a 40 °C box after five hours, and never worse off for it."""
    shop, joint = iron_at_21()
    shop.flat("Mon 09:00", "Tue 12:00", 40.0, box=True)
    left = late_of(shop, joint)
    shop.tick("Mon 14:00")
    club = shop.standing(joint).club.id
    shop.do(shop.bench.move(club, shop.box.id, 0))
    moved = late_of(shop, joint)
    assert at("Mon 14:00") < moved < left
    straight = make_shop("Mon 14:00")
    straight.flat("Mon 14:00", "Tue 12:00", 40.0, box=True)
    (other,) = straight.glue(1, box=True)
    # What it earned in the room counts.
    assert moved - at("Mon 14:00") < late_of(straight, other) - at("Mon 14:00")


def test_out_of_the_shop_it_earns_nothing_and_keeps_its_word() -> None:
    shop, joint = iron_at_21("Sat 12:00")
    shop.tick("Mon 21:35")
    club = shop.standing(joint).club.id
    stayed = late_of(shop, joint, Milestone.FULL_CURE)
    shop.do(shop.bench.take_off(club, PlaceKind.OUT))
    shop.tick("Wed 18:00")
    assert Shop(shop.store, shop.clock).board.tick() is not None
    shop.do(shop.bench.take_off(club, PlaceKind.GRIP_BENCH))
    standing = shop.standing(joint)
    assert standing.word is Word.BENCH
    back = late_of(shop, joint, Milestone.FULL_CURE)
    away = at("Wed 18:00") - at("Mon 21:35")
    assert back - stayed == pytest.approx(away, abs=15 * MINUTE_US)


def test_a_driver_waits_weeks_for_pick_up_and_stays_cured() -> None:
    """S12: 41 days in the pick-up corner."""
    shop, joint = iron_at_21("Wed 12:00")
    shop.tick("Wed 12:00")
    assert shop.standing(joint).word is Word.CURED
    shop.do(shop.bench.take_off(shop.standing(joint).club.id, PlaceKind.PICK_UP))
    shop.tick(at("Tue 12:00", 6))
    assert shop.standing(joint).word is Word.CURED
    fresh = Shop(shop.store, shop.clock)
    fresh.board.tick()
    assert fresh.standing(joint).word is Word.CURED
    assert withdrawn(fresh) == 0


def test_a_power_cut_of_three_hours_is_one_question() -> None:
    """S12."""
    shop, joint = iron_at_21("Mon 11:00")
    shop.flat("Mon 14:00", "Mon 15:00", 20.0)
    shop.tick("Mon 15:00")
    assert [(local(q.from_us), local(q.to_us)) for q in shop.board.questions()] == [
        ("Mon 11:00", "Mon 14:00")
    ]
    shop.do(shop.bench.answer_night(shop.board.questions()[0], 18_000))
    assert shop.board.questions() == []
    assert not shop.standing(joint).unknown


# Jobs


def test_a_job_is_good_only_when_every_club_is_glued_and_cured_and_none_is_held() -> None:
    shop = make_shop("Mon 09:00")
    shop.flat("Mon 09:00", "Thu 12:00", 25.0)
    first, second = shop.glue(2)
    shop.tick("Tue 08:00")
    assert not shop.board.jobs()[0].good
    shop.tick("Wed 12:00")
    job = shop.board.jobs()[0]
    assert job.good
    assert job.good_us == shop.standing(first).since_us
    shop.do(shop.bench.disturb(second))
    assert not shop.board.jobs()[0].good
    assert shop.board.jobs()[0].held
    hold = shop.board.snapshot.holds[second]
    shop.do(shop.bench.end_hold(hold, "scrapped"))
    assert shop.board.jobs()[0].good  # the scrapped one is no longer waited for
    shop.lay_out(1, number=job.job.number)
    assert not shop.board.jobs()[0].good
    assert shop.board.jobs()[0].to_glue == 1


# Work


def test_joints_of_a_batch_share_one_state() -> None:
    shop = make_shop("Mon 09:00")
    shop.feed([(at("Mon 09:00"), 21.0)])
    joints = shop.glue(8)
    states = {id(shop.board.state_of(shop.standing(j))[0]) for j in joints}  # type: ignore[index]
    assert len(states) == 1


def test_a_tick_with_nothing_new_integrates_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    shop, _ = iron_at_21()
    calls: list[int] = []
    advance = Run.advance

    def counted(self: Run[object], stretch: object) -> None:  # type: ignore[type-var]
        calls.append(1)
        advance(self, stretch)  # type: ignore[arg-type]

    monkeypatch.setattr(Run, "advance", counted)
    shop.clock.advance(seconds=10)
    assert shop.board.tick() is None
    shop.clock.advance(minutes=2)  # the marks creep, but nothing is integrated for it
    assert shop.board.tick() is not None
    assert calls == []
    shop.feed([(at("Tue 13:00"), 21.0)])
    shop.board.tick()
    assert 0 < len(calls) < 20


# To the bit

def test_a_reading_of_the_zone_left_behind_still_counts() -> None:
    """It comes after the club was carried away, and says how warm the last half hour was."""
    shop = make_shop("Mon 09:00")
    shop.feed([(at("Mon 09:00"), 21.0)])
    shop.feed([(at("Mon 09:00"), 34.0)], box=True)
    (joint,) = shop.glue(1)
    shop.tick("Mon 10:30")
    shop.do(shop.bench.move(shop.standing(joint).club.id, shop.box.id, 0))
    shop.feed([(at("Mon 11:00"), 34.0)], box=True)
    shop.tick("Mon 11:00")
    before = late_of(shop, joint)
    shop.feed([(at("Mon 10:40"), 5.0)])
    shop.tick("Mon 11:05")
    fresh = Shop(shop.store, shop.clock)
    fresh.board.tick()
    assert late_of(shop, joint) == late_of(fresh, joint) > before


SCRIPT = st.lists(
    st.tuples(
        st.sampled_from(
            ["feed", "feed", "type", "late", "edit", "move", "out", "undo", "bridge", "correct",
             "wait", "glue"]
        ),
        st.integers(0, 10_000),
    ),
    min_size=4, max_size=25,
)  # fmt: skip


def act_at_random(shop: Shop, kind: str, seed: int) -> None:
    """Do one thing that a user or a sensor may do; what is refused is let go."""
    rng = random.Random(seed)
    now = shop.clock.now()
    celsius = rng.uniform(4, 38)
    box = rng.random() < 0.3
    standings = shop.board.standings
    match kind:
        case "feed":
            shop.clock.advance(minutes=rng.choice([5, 30, 90]))
            shop.feed([(shop.clock.now(), celsius)], box=box)
        case "type":
            shop.clock.advance(minutes=rng.choice([10, 120, 400]))
            shop.type(celsius, box=box, at_rack=rng.random() < 0.5)
        case "late":
            shop.feed([(now - rng.randrange(1, 20 * HOUR_US), celsius)], box=box)
        case "edit":
            zone = shop.room
            last = shop.store.record.last_reading(zone)
            if last is not None:
                done = import_readings(
                    shop.store, shop.clock, zone, [(last.at_us, round(celsius * 1000))],
                    replace=True,
                )
                shop.spread(done.changes)
        case "move" if standings:
            club = rng.choice(standings).club.id
            place = rng.choice([shop.rack, shop.box])
            shop.do(shop.bench.move(club, place.id, rng.randrange(place.rows * place.columns)))
        case "out" if standings:
            kinds = [PlaceKind.OUT, PlaceKind.GRIP_BENCH]
            shop.do(shop.bench.take_off(rng.choice(standings).club.id, rng.choice(kinds)))
        case "undo":
            changes = shop.history.undo()
            if changes is not None:
                shop.spread(changes)
        case "bridge":
            for question in shop.board.questions()[:1]:
                shop.do(shop.bench.answer_night(question, rng.randrange(3_000, 12_000)))
        case "correct" if standings:
            batch = rng.choice(standings).batch
            shop.do(shop.bench.correct_mixed(batch.id, now - rng.randrange(0, 9 * HOUR_US)))
        case "glue" if len(standings) < 8:
            shop.glue(rng.choice([1, 2]), box=box and shop._slots.get(shop.box.id, 0) < 3)
        case "wait":
            shop.clock.advance(hours=rng.choice([1, 5, 14]))


@given(SCRIPT)
@settings(max_examples=60)
def test_going_on_and_starting_anew_agree_to_the_bit(script: list[tuple[str, int]]) -> None:
    shop = make_shop("Mon 08:30")
    shop.feed([(at("Mon 08:30"), 21.0)])
    shop.feed([(at("Mon 08:30"), 34.0)], box=True)
    shop.glue(2)
    for kind, seed in script:
        with contextlib.suppress(InputError, ChangedSinceError):
            act_at_random(shop, kind, seed)
        shop.board.tick()
    fresh = Board(shop.store, shop.clock, SHOP_ZONE)
    fresh.tick()
    for old in shop.board.standings:
        new = next(s for s in fresh.standings if s.joint.id == old.joint.id)
        if old.outcome is not None and new.outcome is not None:
            assert new.outcome == old.outcome
        assert (new.word, new.not_before_us, new.unknown) == (
            old.word, old.not_before_us, old.unknown,
        )  # fmt: skip


@given(st.integers(0, 1_000_000))
@settings(max_examples=40)
def test_no_permission_comes_before_its_printed_time_or_across_a_gap(seed: int) -> None:
    rng = random.Random(seed)
    shop = make_shop("Mon 08:30")
    shop.feed([(at("Mon 08:30"), 24.0)])
    (joint,) = shop.glue(1)
    for _ in range(60):
        shop.clock.advance(minutes=rng.choice([20, 60, 60, 115, 200]))
        shop.feed([(shop.clock.now(), rng.uniform(12, 32))])
        shop.board.tick()
        for grant in shop.store.journal.grants([joint]):
            assert grant.given_us >= grant.printed_us >= grant.late_us + MINUTE_US
            rows = shop.store.record.readings(shop.room, 0, grant.given_us)
            assert rows[-1][0] >= grant.late_us
            assert rows[-1][3] == Source.FEED
            steps = [b[0] - a[0] for a, b in itertools.pairwise(rows)
                     if a[0] < grant.late_us]  # fmt: skip
            assert max(steps) <= 2 * HOUR_US


def test_a_board_whose_ticks_fail_says_that_it_is_not_updating(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """A full disk: the clock goes on, nothing is written down, and the board must say so."""
    shop = make_shop("Mon 10:00")
    shop.do(shop.bench.type_temperature(shop.room, 21_000, at_rack=True))
    shop.glue()

    def full(*_: object) -> None:
        raise FullDiskError("The disk is full.")

    with monkeypatch.context() as broken:
        broken.setattr(shop.board, "_write_down", full)
        for _ in range(7):
            shop.clock.advance(minutes=2)
            with pytest.raises(FullDiskError):
                shop.board.tick()
    assert shop.board.is_stale(shop.clock.now())
    shop.board.tick()
    assert not shop.board.is_stale(shop.clock.now())
