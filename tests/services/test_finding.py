"""Finding at the counter: what is found, and the sentence for every state of a job."""

from __future__ import annotations

import pytest

from helpers.shop import Shop, at, make_shop
from rackboard.core.bench import JointKind
from rackboard.services.bench import ClubEntry, JobEntry
from rackboard.services.finding import Finding, Found, fold

WARM = 21.0


def warm_shop() -> Shop:
    shop = make_shop("Mon 09:00")
    shop.flat("Mon 08:00", "Sun 23:00", WARM)
    return shop


def lay(shop: Shop, number: str, customer: str, *clubs: str, first: int = 0, lot: str = "") -> int:
    entries = tuple(
        ClubEntry(name, JointKind.SOLID_HEAD, shop.rack.id, first + n)
        for n, name in enumerate(clubs)
    )
    laid = shop.bench.lay_out(JobEntry(number, customer, "", None, entries, shop.epoxy, lot))
    shop.do(laid.changes)
    return laid.batch_id


def glue(shop: Shop, *args: str) -> None:
    batch = lay(shop, *args)
    shop.do(shop.bench.mix(batch))
    shop.do(shop.bench.rack_all(batch))


def search(shop: Shop, text: str) -> list[Found]:
    return Finding(shop.board, shop.clock.now()).search(text)


def said(shop: Shop, index: int = 0) -> str:
    finding = Finding(shop.board, shop.clock.now())
    return finding.sentence(finding.jobs[index])


# Looking


@pytest.mark.parametrize(
    ("text", "folded"),
    [("Müller", "muller"), ("MULLER", "muller"), ("Łukasz Ørsted", "lukasz orsted"),
     ("Weiß", "weiss"), ("Ångström", "angstrom")],
)  # fmt: skip
def test_case_and_accents_do_not_matter(text: str, folded: str) -> None:
    assert fold(text) == folded


def found_numbers(shop: Shop, text: str) -> list[str]:
    return [row.job.job.number for row in search(shop, text)]


@pytest.fixture
def full() -> Shop:
    shop = warm_shop()
    lay(shop, "214", "R. Castle", "4 iron", "Putter", lot="K-77")
    lay(shop, "21", "Zoë Müller", "Putter", first=2)
    lay(shop, "321", "Castleton", "50° wedge", first=3)
    return shop


@pytest.mark.parametrize(
    ("text", "numbers"),
    [
        ("", ["21", "214", "321"]),
        ("21", ["21", "214", "321"]),  # itself, what begins with it, what holds it
        ("214", ["214"]),
        ("castle", ["214", "321"]),
        ("CASTLE 214", ["214"]),
        ("muller", ["21"]),
        ("müller", ["21"]),
        ("zoe", ["21"]),
        ("wedge", ["321"]),
        ("k-77", ["214"]),
        ("invented", ["21", "214", "321"]),  # the epoxy
        ("nobody", []),
        ("castle wedge nobody", []),
    ],
)
def test_every_word_is_looked_for_everywhere(full: Shop, text: str, numbers: list[str]) -> None:
    assert found_numbers(full, text) == numbers


def test_a_club_that_is_named_has_its_own_line_with_its_slot(full: Shop) -> None:
    rows = search(full, "putter")
    assert [(r.job.job.number, r.club, r.where) for r in rows] == [
        ("21", "Putter", "A3"), ("214", "Putter", "A2"),
    ]  # fmt: skip
    (row,) = search(full, "castle putter")
    assert row.club_id == full.board.standings[1].club.id


def test_a_job_leads_to_its_club_on_hold() -> None:
    shop = warm_shop()
    glue(shop, "214", "R. Castle", "4 iron", "5 iron")
    second = shop.board.standings[1]
    shop.do(shop.bench.disturb(second.joint.id))
    (row,) = search(shop, "214")
    assert row.club_id == second.club.id


# Saying


def test_what_is_curing_is_said_in_opening_hours() -> None:
    shop = warm_shop()
    glue(shop, "214", "R. Castle", "4 iron")  # good on Wednesday at 00:04
    assert said(shop) == "Job 214 for R. Castle: the glue is good on Wednesday at opening."
    shop.tick("Tue 17:00")
    assert said(shop) == "Job 214 for R. Castle: the glue is good on Wednesday at opening."


def test_in_opening_hours_the_printed_time_is_said() -> None:
    shop = make_shop("Mon 12:00")
    shop.flat("Mon 08:00", "Sun 23:00", 25.0)
    glue(shop, "214", "", "4 iron")
    (job,) = shop.board.jobs()
    assert job.good_us is not None
    assert said(shop) == "Job 214: the glue is good on Tuesday at 14:25."
    shop.tick("Tue 09:00")
    assert said(shop) == "Job 214: the glue is good today at 14:25."


def test_good_needs_ready_and_ready_can_go() -> None:
    shop = warm_shop()
    glue(shop, "214", "R. Castle", "4 iron")
    shop.tick("Wed 09:00")
    assert said(shop) == "Job 214 for R. Castle: the glue is good now; it still needs READY."
    (job,) = shop.board.jobs()
    shop.do(shop.bench.press_ready(job.job.id, True))
    assert said(shop) == "Job 214 for R. Castle is ready and can be picked up."


def test_a_hold_comes_before_everything_also_before_ready() -> None:
    shop = warm_shop()
    glue(shop, "214", "R. Castle", "4 iron", "5 iron")
    shop.tick("Wed 09:00")
    (job,) = shop.board.jobs()
    shop.do(shop.bench.press_ready(job.job.id, True))
    first, second = (s.joint.id for s in shop.board.standings)
    shop.do(shop.bench.disturb(first))
    assert said(shop) == "Job 214 for R. Castle: one club is on hold, somebody will call."
    shop.do(shop.bench.disturb(second))
    assert said(shop) == "Job 214 for R. Castle: two clubs are on hold, somebody will call."


def test_what_is_not_glued_has_no_time() -> None:
    shop = warm_shop()
    lay(shop, "214", "R. Castle", "4 iron")
    assert said(shop) == (
        "Job 214 for R. Castle: one club is not glued yet, so there is no time to give."
    )


def test_an_unknown_night_is_said() -> None:
    shop = make_shop("Mon 15:00")
    shop.type(WARM)
    glue(shop, "214", "R. Castle", "4 iron")
    shop.tick("Tue 08:30")
    assert said(shop) == (
        "Job 214 for R. Castle: it can't be said yet; how cold it got last night is not known."
    )
    shop.tick("Thu 08:30")
    assert said(shop) == (
        "Job 214 for R. Castle: it can't be said yet; how cold it got since Monday is not known."
    )


def test_a_reading_that_is_missing_since_noon_is_said() -> None:
    shop = make_shop("Mon 09:00")
    shop.type(WARM)
    glue(shop, "214", "R. Castle", "4 iron")
    shop.tick("Mon 17:00")
    assert said(shop) == (
        "Job 214 for R. Castle: it can't be said yet; how cold it got since 13:00 is not known."
    )


def test_a_time_that_has_passed_without_a_reading_is_not_good() -> None:
    shop = make_shop("Mon 12:00")
    shop.flat("Mon 08:00", "Tue 14:00", 25.0)
    glue(shop, "214", "R. Castle", "4 iron")
    shop.tick("Tue 14:30")
    (job,) = shop.board.jobs()
    assert not job.good
    assert job.good_us is not None and job.good_us <= shop.clock.now()
    assert said(shop).endswith("it can't be said yet; the temperature has not been read up to now.")


def test_too_cold_gives_no_time() -> None:
    shop = make_shop("Mon 09:00")
    shop.flat("Mon 08:00", "Mon 09:00", -20.0)
    glue(shop, "214", "R. Castle", "4 iron")
    assert said(shop) == (
        "Job 214 for R. Castle: no time can be given, it is too cold for the glue."
    )


def test_a_board_that_is_not_updated_says_nothing_else() -> None:
    shop = warm_shop()
    glue(shop, "214", "R. Castle", "4 iron")
    shop.clock.set("Wed 09:00")
    assert said(shop) == (
        "Job 214 for R. Castle: it can't be said now; the board is not being updated."
    )


def test_no_sentence_names_a_time_before_the_printed_one() -> None:
    shop = warm_shop()
    glue(shop, "214", "R. Castle", "4 iron")
    for when in ("Mon 10:00", "Mon 22:00", "Tue 12:00", "Tue 23:59"):
        shop.tick(when)
        assert "on Wednesday at opening" in said(shop)
    shop.tick(at("Wed 00:10"))
    assert "good now" in said(shop)
