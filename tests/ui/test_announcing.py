"""What a screen reader is told aloud: once, by what is new, and nothing for what merely passes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from PySide6.QtCore import QLocale
from PySide6.QtWidgets import QWidget

from helpers.alert_scene import AlertShop
from helpers.windows import make_window
from rackboard.core.bench import Hold, HoldReason, Milestone, PlaceKind
from rackboard.core.disturbance import Answer
from rackboard.core.standing import Standing
from rackboard.core.words import Word
from rackboard.ui.announcing import Announcements, Announcer, send
from rackboard.ui.language import speak
from rackboard.ui.resources import load_fonts


class Heard:
    """A shop whose announcements are kept."""

    def __init__(self, window: QWidget) -> None:
        load_fonts()
        self.window = window
        self.shop = AlertShop()
        self.said: list[tuple[str, bool]] = []
        self.chosen: int | None = None
        self.announcements: Announcements

    def begin(self) -> None:
        """Begin to listen, as the window does when it is there."""
        self.announcements = Announcements(
            self.shop.session, self.window, self.selected, Announcer(self.keep)
        )

    def keep(self, widget: QWidget, sentence: str, assertive: bool) -> None:
        assert widget is self.window
        self.said.append((sentence, assertive))

    def selected(self) -> Standing | None:
        return next(
            (s for s in self.shop.session.board.standings if s.joint.id == self.chosen), None
        )

    def new(self) -> list[tuple[str, bool]]:
        """Return what was said since the last look."""
        said, self.said = self.said, []
        return said


@pytest.fixture
def heard(qtbot: Any) -> Iterator[Heard]:
    made = Heard(make_window(qtbot))
    yield made
    made.shop.session.store.close()


def test_a_hold_is_one_assertive_announcement(heard: Heard) -> None:
    joint, _ = heard.shop.glue(2)
    heard.shop.until("2026-03-09T10:00+01:00")
    heard.begin()
    heard.shop.session.take(heard.shop.session.bench.disturb(joint))
    assert heard.new() == [("HOLD: A1, 4 iron, job 220: disturbed. Say what you did.", True)]
    heard.shop.until("2026-03-09T11:30+01:00")
    assert [said for said, assertive in heard.new() if assertive] == []


def test_all_clubs_of_a_soft_smear_are_one_sentence(heard: Heard) -> None:
    heard.shop.glue(4)
    heard.shop.until("2026-03-09T10:00+01:00")
    heard.begin()
    session, now = heard.shop.session, heard.shop.clock.now()
    with session.store.write("soft smear", now) as act:
        for standing in session.board.standings:
            act.add(Hold(0, standing.joint.id, HoldReason.SOFT_SMEAR, "", now))
    session.take(act.changes)
    assert heard.new() == [("HOLD: A1 to A4, job 220: soft smear.", True)]


def test_an_alarm_of_a_zone_is_said_when_it_is_told(heard: Heard) -> None:
    heard.shop.glue(2)
    heard.begin()
    heard.shop.until("2026-03-09T10:00+01:00", 12.0)
    (said, *more) = [line for line in heard.new() if line[1]]
    assert more == []
    assert "NOTICE" in said[0]
    assert "°C" in said[0]


def test_a_permission_of_the_selected_job_is_said_politely(heard: Heard) -> None:
    joints = heard.shop.glue(2)
    heard.shop.glue(1, number="221", first=4)
    heard.chosen = joints[0]
    heard.begin()
    heard.shop.until("2026-03-09T17:00+01:00")
    polite = [said for said, assertive in heard.new() if not assertive]
    words = {s.base for s in heard.shop.session.board.standings}
    assert words <= {Word.BENCH, Word.CURED}
    assert polite[0] == "A1 and A2, job 220: may come off the rack. Do not hit."
    assert all("221" not in said for said in polite)
    assert len(polite) == len(set(polite)) <= 2


def test_nothing_is_said_of_a_job_that_is_not_selected(heard: Heard) -> None:
    heard.shop.glue(2)
    heard.begin()
    heard.shop.until("2026-03-09T17:00+01:00")
    assert [said for said, assertive in heard.new() if not assertive] == []


def test_what_stood_there_before_is_not_news(heard: Heard) -> None:
    joint, _ = heard.shop.glue(2)
    heard.shop.until("2026-03-09T10:00+01:00")
    heard.shop.session.take(heard.shop.session.bench.disturb(joint))
    heard.begin()
    heard.shop.session.tick()
    heard.announcements.look()
    assert heard.new() == []


def test_an_answer_and_a_carried_club_say_nothing(heard: Heard) -> None:
    joint, _ = heard.shop.glue(2)
    heard.shop.until("2026-03-09T10:00+01:00")
    heard.shop.session.take(heard.shop.session.bench.disturb(joint))
    heard.chosen = joint
    heard.begin()
    session = heard.shop.session
    standing = next(s for s in session.board.standings if s.joint.id == joint)
    assert standing.hold is not None
    session.take(session.bench.take_off(standing.club.id, PlaceKind.GRIP_BENCH))
    session.take(session.bench.end_hold(standing.hold, Answer.UNTURNED))
    assert heard.new() == []


def test_undo_and_redo_say_their_label(heard: Heard) -> None:
    heard.begin()
    heard.announcements.undone("disturbed")
    heard.announcements.redone("disturbed")
    assert heard.new() == [("Undone: disturbed.", False), ("Done again: disturbed.", False)]


def test_a_release_is_no_permission(heard: Heard) -> None:
    (joint,) = heard.shop.glue(1)
    heard.shop.until("2026-03-09T10:00+01:00")
    heard.chosen = joint
    heard.begin()
    session = heard.shop.session
    session.bench.act_as("KT")
    session.take(session.bench.release(joint, Milestone.FULL_CURE, "he waits"))
    assert heard.new() == []


def test_it_is_said_in_the_language_spoken(heard: Heard) -> None:
    before = QLocale()
    joint, _ = heard.shop.glue(2)
    heard.shop.until("2026-03-09T10:00+01:00")
    heard.begin()
    try:
        speak("de")
        heard.shop.session.take(heard.shop.session.bench.disturb(joint))
        (said,) = heard.new()
    finally:
        speak("en")
        QLocale.setDefault(before)
    assert "bewegt" in said[0] or "gestört" in said[0]


def test_empty_sentences_are_not_sent(heard: Heard) -> None:
    announcer = Announcer(heard.keep)
    announcer.announce(heard.window, "", True)
    announcer.announce(heard.window, "Something.")
    assert heard.new() == [("Something.", False)]


def test_the_platform_takes_an_announcement(heard: Heard) -> None:
    """Nobody can observe it offscreen; it must at least not fail."""
    send(heard.window, "A13, 4 iron: HOLD", True)
    send(heard.window, "Undone: disturbed.", False)
