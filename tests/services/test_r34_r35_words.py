"""R34, R35: the words of every alert: signal words as they belong, where, what, do, and short."""

from __future__ import annotations

import pytest

from helpers.shop import Shop, at, make_shop
from rackboard.core.alerts.kinds import ALARMS, MILESTONES, Kind
from rackboard.core.alerts.rows import Alert
from rackboard.core.bench import Milestone, PlaceKind
from rackboard.core.text import Text
from rackboard.services.alert_headlines import LONGEST_SUMMARY, headline, headlines, span
from rackboard.services.alert_words import bodies, body, signal_word, words

LONG = "Left-handed five wood with the bent hosel"
SIGNALS = ("DANGER", "WARNING", "CAUTION", "NOTICE")
TRIANGLES = "⚠△▲▵🔺"
ACTS = {
    Kind.DISTURBED: "Answer", Kind.COLD: "Warm it", Kind.NO_RECORD: "Mend the feed",
    Kind.WITHDRAWN: "Put the club back on the rack", Kind.TOO_HOT: "Switch it off",
    Kind.LIFE_OVER: "Stop using", Kind.LAST_LOOK: "Straight", Kind.OFF_THE_RACK: "do not hit",
    Kind.JOB_SAFE: "Twist and tap",
}  # fmt: skip


def shop_with(club: str = "5 iron", number: str = "220") -> tuple[Shop, int]:
    shop = make_shop("Mon 08:00")
    shop.feed([(at("Mon 08:00"), 21.0)])
    (joint,) = shop.glue([club], number=number)
    shop.clock.set("Mon 09:00")
    shop.tick()
    return shop, joint


def alert(kind: Kind, shop: Shop, joint: int, **data: object) -> Alert:
    standing = next(s for s in shop.board.standings if s.joint.id == joint)
    facts: dict[str, object] = {"air_mc": 12_000, "limit_mc": 16_000}
    subject, batch = shop.room, 0
    if kind in (Kind.DISTURBED, Kind.WITHDRAWN):
        subject = joint
        facts = {"milestone": Milestone.FULL_CURE.value, "was_us": at("Mon 08:30")}
    elif kind in MILESTONES:
        subject, batch = standing.job.id, standing.batch.id
        facts = {"job": standing.job.number, "clubs": 1, "batch": 1, "joints": [joint],
                 "over_us": at("Mon 10:00")}  # fmt: skip
    return Alert(1, kind.value, subject, batch, 1, "on, untaken", at("Mon 08:40"),
                 at("Mon 08:50"), facts | data)  # fmt: skip


def said(kind: Kind, club: str = "5 iron", number: str = "220") -> tuple[str, str]:
    shop, joint = shop_with(club, number)
    return words([alert(kind, shop, joint)], shop.board)


def names_in(sentence: object) -> set[str]:
    """The names of club, job and place that a sentence was made with."""
    found: set[str] = set()
    for name, part in sentence.parts.items() if isinstance(sentence, Text) else ():
        found |= {str(part)} if name in ("club", "job", "where") else names_in(part)
    return found


@pytest.mark.parametrize("kind", Kind)
@pytest.mark.parametrize("club", ["5 iron", LONG, "x" * 80])
@pytest.mark.parametrize("number", ["220", "2026-03-0000000000000000000000217"])
def test_a_summary_is_short_and_cuts_no_name(kind: Kind, club: str, number: str) -> None:
    summary, below = said(kind, club, number)
    assert len(summary) <= LONGEST_SUMMARY
    assert "…" not in summary
    shop, joint = shop_with(club, number)
    whole = headline(alert(kind, shop, joint), shop.board)
    assert names_in(summary) <= {club, number, "A1"}
    if whole not in summary:
        assert whole in below, "what the summary leaves out, the body says"


@pytest.mark.parametrize("kind", Kind)
def test_every_alert_says_where_what_and_what_to_do(kind: Kind) -> None:
    shop, joint = shop_with()
    this = alert(kind, shop, joint)
    summary, below = words([this], shop.board)
    everything = f"{summary}\n{below}"
    assert ACTS[kind] in everything
    if kind in (Kind.COLD, Kind.NO_RECORD, Kind.TOO_HOT):
        where = shop.board.snapshot.zones[shop.room].name
    elif kind in (Kind.DISTURBED, Kind.WITHDRAWN, Kind.LAST_LOOK):
        where = "A1"
    else:
        where = "220"
    assert where in everything
    assert isinstance(summary, Text)
    assert isinstance(below, Text)
    assert {"{", "}"}.isdisjoint(everything)


def test_the_signal_word_of_each_kind() -> None:
    assert {kind: str(signal_word(kind)) for kind in Kind} == {
        Kind.WITHDRAWN: "WARNING",
        **dict.fromkeys((Kind.DISTURBED, Kind.COLD, Kind.NO_RECORD, Kind.TOO_HOT), "NOTICE"),
        **dict.fromkeys(MILESTONES, ""),
    }


@pytest.mark.parametrize("kind", Kind)
@pytest.mark.parametrize("club", ["5 iron", LONG])
def test_a_signal_word_is_a_word_of_its_own_said_once_and_never_danger(
    kind: Kind, club: str
) -> None:
    shop, joint = shop_with(club)
    this = alert(kind, shop, joint)
    summary, below = words([this], shop.board)
    everything = f"{summary}\n{below}"
    for signal in SIGNALS:
        assert everything.count(signal) == (signal == str(signal_word(kind)))
    if kind in ALARMS:
        signal = str(signal_word(kind))
        assert summary.startswith(f"{signal}. ") or below.split("\n")[0] == signal
    for text in (headline(this, shop.board), body(this, shop.board)):
        assert not any(signal in text for signal in SIGNALS)
    assert not any(sign in everything for sign in TRIANGLES)


def test_no_source_text_of_the_alerts_says_danger_or_draws_a_triangle() -> None:
    from helpers.project import PACKAGE

    for name in ("services/alert_words.py", "services/alert_headlines.py",
                 "services/alert_log.py", "ui/alert_dialog.py", "ui/alerts_page.py",
                 "ui/alerts_presenter.py"):  # fmt: skip
        source = (PACKAGE / name).read_text("utf-8")
        assert "DANGER" not in source
        assert not any(sign in source for sign in TRIANGLES)


def test_names_are_left_out_by_how_little_they_are_needed() -> None:
    shop, joint = shop_with("Driver with the long name")
    fitting, whole = headlines([alert(Kind.DISTURBED, shop, joint)], shop.board)
    assert whole == "Disturbed at A1: Driver with the long name, job 220"
    assert fitting == "Disturbed at A1, job 220"


def test_a_smear_over_two_jobs_names_both() -> None:
    shop, joint = shop_with()
    (other,) = shop.glue(1, number="221")
    alerts = [alert(Kind.WITHDRAWN, shop, n, smear=1) for n in (joint, other)]
    fitting, _ = headlines(alerts, shop.board)
    assert fitting == "Do not hit: 2 clubs of jobs 220, 221"
    assert "2 clubs are at A1–A2." in bodies(alerts, shop.board)


def test_of_a_club_that_is_gone_the_customer_and_the_phone_are_said() -> None:
    shop, joint = shop_with()
    club = next(s.club.id for s in shop.board.standings if s.joint.id == joint)
    this = alert(Kind.WITHDRAWN, shop, joint)
    shop.do(shop.bench.take_off(club, PlaceKind.OUT))
    with shop.store.write("its alert", shop.clock.now()) as act:
        act.add(this)
    shop.board.bring_in({joint})
    assert "call Invented Customer" in body(this, shop.board)


def test_several_things_have_a_line_each_with_their_own_signal_word() -> None:
    shop, joint = shop_with()
    alerts = [alert(kind, shop, joint) for kind in (Kind.COLD, Kind.WITHDRAWN, Kind.JOB_SAFE)]
    summary, below = words(alerts, shop.board, several=True)
    assert summary == "3 things since you last looked"
    first, second, third = below.split("\n")
    assert first.startswith("NOTICE. Room is cold") or first.startswith("NOTICE. ")
    assert second.startswith("WARNING. Do not hit: 5 iron")
    assert third == "Job 220: whole job safe to hit (08:40)."


def test_what_is_over_says_from_when_to_when() -> None:
    shop, joint = shop_with()
    for kind, word in ((Kind.COLD, "warm again"), (Kind.NO_RECORD, "known again")):
        this = alert(kind, shop, joint)._replace(phase="off, untaken", ended_us=at("Mon 08:55"))
        assert "08:40 to 08:55" in body(this, shop.board)
        assert word in body(this, shop.board)


@pytest.mark.parametrize(
    ("places", "said"),
    [([], ""), (["A4"], "A4"), (["A10", "A9"], "A9–A10"), (["A1", "A3"], "A1, A3"),
     (["Grip bench", "Grip bench"], "Grip bench"), (["A1", "Grip bench"], "A1, Grip bench")],
)  # fmt: skip
def test_places_in_short(places: list[str], said: str) -> None:
    assert span(places) == said
