"""The small dialogs: what is typed is asked about where it is doubtful, then stored."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QWidget
from pytestqt.qtbot import QtBot

from helpers.session import lay_out_irons, make_session, place_of, type_temperature, zone_of
from helpers.shop import FakeClock
from rackboard.core.bench import PlaceKind, Source
from rackboard.core.disturbance import Glue
from rackboard.core.instants import MINUTE_US, Instant, parse_iso
from rackboard.core.standing import Standing
from rackboard.ui.act_dialog import ActDialog
from rackboard.ui.correction import CorrectionDialog
from rackboard.ui.hold_dialog import (
    MISTAKE,
    RE_AIMED,
    RE_GLUED,
    SCRAPPED,
    UNTURNED,
    HoldDialog,
    glue_of,
)
from rackboard.ui.place_chooser import PlaceChooser
from rackboard.ui.promise_dialog import PromiseDialog
from rackboard.ui.resources import load_fonts
from rackboard.ui.session import Session
from rackboard.ui.temperature_dialog import TemperatureDialog

ENTER, ESCAPE = Qt.Key.Key_Return, Qt.Key.Key_Escape


class Desk:
    def __init__(self, qtbot: QtBot) -> None:
        load_fonts()
        self.qtbot = qtbot
        self.session: Session
        self.clock: FakeClock
        self.session, self.clock = make_session("2026-03-09T15:24+01:00")
        self.window = QWidget()
        qtbot.addWidget(self.window)
        self.window.resize(1280, 800)
        self.acted = 0

    def open(self, dialog: ActDialog) -> None:
        dialog.acted.connect(self._on_acted)
        dialog.open()
        self.qtbot.waitUntil(dialog.isActiveWindow)

    def _on_acted(self) -> None:
        self.acted += 1

    def press(self, dialog: ActDialog, key: Qt.Key) -> None:
        focus = dialog.focusWidget()
        assert focus is not None
        self.qtbot.keyClick(focus, key)

    def standing(self, index: int = 0) -> Standing:
        return self.session.board.standings[index]

    def readings(self, kind: PlaceKind = PlaceKind.RACK) -> list[tuple[int, int, str]]:
        zone = zone_of(self.session, kind)
        return [tuple(row[1:]) for row in self.session.store.record.readings(zone, 0, 1 << 62)]


@pytest.fixture
def desk(qtbot: QtBot) -> Iterator[Desk]:
    yield Desk(qtbot)


def instant(text: str) -> Instant:
    return parse_iso(f"2026-03-09T{text}+01:00", "test")


# Temperatures


def test_a_temperature_is_noted(desk: Desk) -> None:
    dialog = TemperatureDialog(desk.session, zone_of(desk.session), desk.window)
    desk.open(dialog)
    desk.qtbot.keyClicks(dialog.value, "20,5 °C")
    dialog.at_rack.setChecked(True)
    desk.press(dialog, ENTER)
    assert desk.readings() == [(20_500, 1_000, Source.TYPED_AT_RACK)]
    assert desk.acted == 1


def test_seventy_in_a_celsius_shop_is_asked_about_inside(desk: Desk) -> None:
    dialog = TemperatureDialog(desk.session, zone_of(desk.session), desk.window)
    desk.open(dialog)
    desk.qtbot.keyClicks(dialog.value, "70")
    desk.press(dialog, ENTER)
    assert dialog.asking and "21.1" in dialog.message.text()
    assert desk.readings() == []
    desk.press(dialog, ENTER)
    assert desk.readings() == [(21_111, 3_000, Source.TYPED)]


def test_a_warm_box_may_be_warmer_than_a_room(desk: Desk) -> None:
    dialog = TemperatureDialog(desk.session, zone_of(desk.session, PlaceKind.BOX), desk.window)
    desk.open(dialog)
    desk.qtbot.keyClicks(dialog.value, "48")
    desk.press(dialog, ENTER)
    assert desk.readings(PlaceKind.BOX) == [(48_000, 3_000, Source.TYPED)]


@pytest.mark.parametrize("text", ["", "warm", "500", "3 K"])
def test_what_is_no_temperature_is_refused_inside(desk: Desk, text: str) -> None:
    dialog = TemperatureDialog(desk.session, zone_of(desk.session), desk.window)
    desk.open(dialog)
    desk.qtbot.keyClicks(dialog.value, text)
    desk.press(dialog, ENTER)
    assert dialog.message.text().startswith("Room: wanted a temperature")
    assert dialog.isVisible() and desk.readings() == []


def test_escape_stores_nothing(desk: Desk) -> None:
    dialog = TemperatureDialog(desk.session, zone_of(desk.session), desk.window)
    desk.open(dialog)
    desk.qtbot.keyClicks(dialog.value, "20")
    gone: list[bool] = []
    dialog.destroyed.connect(lambda: gone.append(True))
    desk.press(dialog, ESCAPE)
    desk.qtbot.waitUntil(lambda: gone == [True])
    assert desk.readings() == [] and desk.acted == 0


# Where a club lies


def test_a_club_is_carried_to_a_free_slot(desk: Desk) -> None:
    lay_out_irons(desk.session, 2)
    rack = place_of(desk.session)
    dialog = PlaceChooser(desk.session, desk.standing(), desk.window)
    desk.open(dialog)
    taken = [slot for (place, slot), key in dialog.keys.items() if not key.isEnabled()]
    assert taken == [0, 1]
    assert dialog.focusWidget() is dialog.keys[(rack.id, 2)]
    desk.press(dialog, ENTER)
    assert desk.session.board.snapshot.where(desk.standing().club.id) == "A3"


@pytest.mark.parametrize("kind", [PlaceKind.GRIP_BENCH, PlaceKind.PICK_UP, PlaceKind.OUT])
def test_a_club_is_carried_to_a_place_without_slots(desk: Desk, kind: PlaceKind) -> None:
    lay_out_irons(desk.session, 1)
    club = desk.standing().club.id
    dialog = PlaceChooser(desk.session, desk.standing(), desk.window)
    desk.open(dialog)
    dialog.keys[(place_of(desk.session, kind).id, None)].click()
    (stay,) = desk.session.store.work.stays([club], open_only=True)
    assert (stay.place_id, stay.slot) == (place_of(desk.session, kind).id, None)


def test_a_slot_taken_meanwhile_is_said_inside(desk: Desk) -> None:
    lay_out_irons(desk.session, 1)
    dialog = PlaceChooser(desk.session, desk.standing(), desk.window)
    desk.open(dialog)
    lay_out_irons(desk.session, 1, first_slot=2, number="221")
    dialog.keys[(place_of(desk.session).id, 2)].click()
    assert dialog.isVisible() and "A3" in dialog.message.text()
    assert desk.session.board.snapshot.where(desk.standing().club.id) == "A1"


# When it was mixed


def mixed(desk: Desk, at: str = "15:20") -> Standing:
    type_temperature(desk.session, 21.0)
    laid = lay_out_irons(desk.session, 2)
    desk.session.take(desk.session.bench.mix(laid.batch_id, instant(at)))
    return desk.standing()


def test_the_time_of_mixing_is_corrected_and_the_former_kept(desk: Desk) -> None:
    standing = mixed(desk)
    dialog = CorrectionDialog(desk.session, standing, desk.window)
    desk.open(dialog)
    desk.qtbot.keyClicks(dialog.mixed, "15:05")
    desk.press(dialog, ENTER)
    assert desk.standing().batch.mixed_us == instant("15:05")
    assert {s.joint.glued_us for s in desk.session.board.standings} == {instant("15:05")}
    again = CorrectionDialog(desk.session, desk.standing(), desk.window)
    desk.open(again)
    said = "On record: 15:05, before that 15:20"
    assert again.mixed.accessibleDescription() == said
    assert said in [label.text() for label in again.findChildren(QLabel)]
    again.reject()


def test_a_doubtful_correction_is_asked_about_inside(desk: Desk) -> None:
    dialog = CorrectionDialog(desk.session, mixed(desk), desk.window)
    desk.open(dialog)
    desk.qtbot.keyClicks(dialog.mixed, "03:15")
    desk.press(dialog, ENTER)
    assert "Was it 15:15?" in dialog.message.text()
    assert desk.standing().batch.mixed_us == instant("15:20")
    dialog.answer_keys[0].click()
    assert desk.standing().batch.mixed_us == instant("15:15")


# HOLD


@pytest.mark.parametrize("outcome", [UNTURNED, SCRAPPED, MISTAKE])
def test_a_hold_is_answered(desk: Desk, outcome: str) -> None:
    joint = mixed(desk).joint
    desk.session.take(desk.session.bench.disturb(joint.id))
    dialog = HoldDialog(desk.session, desk.standing(), desk.window)
    desk.open(dialog)
    dialog.keys[outcome].setFocus()
    desk.press(dialog, ENTER)
    (hold,) = desk.session.store.journal.holds([joint.id])
    assert (hold.outcome, hold.to_us) == (outcome, desk.clock.now())
    ended = desk.session.store.work.joints(ids=[joint.id])[0].ended_as
    assert ended == ("scrapped" if outcome == SCRAPPED else None)


def test_a_hold_is_answered_with_a_new_batch(desk: Desk) -> None:
    joint = mixed(desk).joint
    desk.session.take(desk.session.bench.disturb(joint.id))
    dialog = HoldDialog(desk.session, desk.standing(), desk.window)
    desk.open(dialog)
    assert list(dialog.keys) == [UNTURNED, RE_GLUED, SCRAPPED, MISTAKE]
    dialog.keys[RE_GLUED].click()
    (hold,) = desk.session.store.journal.holds([joint.id])
    assert hold.outcome == RE_GLUED
    club = next(s for s in desk.session.board.standings if s.club.id == joint.club_id)
    assert club.laid_out and desk.session.board.snapshot.where(club.club.id) == "A1"


def disturbed(desk: Desk, minutes: int) -> HoldDialog:
    """Press Disturbed some minutes after mixing, as the window does."""
    standing = mixed(desk, "15:24")
    desk.clock.advance(minutes=minutes)
    desk.session.tick()
    dialog = HoldDialog(desk.session, standing_of(desk, standing), desk.window)
    desk.open(dialog)
    return dialog


def standing_of(desk: Desk, standing: Standing) -> Standing:
    return next(s for s in desk.session.board.standings if s.joint.id == standing.joint.id)


def test_while_wet_one_answer_is_logged_without_a_hold(desk: Desk) -> None:
    dialog = disturbed(desk, 10)
    joint = desk.standing().joint
    assert list(dialog.keys) == [RE_AIMED]
    desk.press(dialog, ENTER)
    assert desk.acted == 1 and desk.standing().hold is None
    assert desk.session.store.journal.holds([joint.id]) == []
    (event,) = desk.session.store.journal.events(kinds=["re-aimed"])
    assert event.subject_id == joint.id


@pytest.mark.parametrize("answer", [RE_AIMED, RE_GLUED])
def test_after_its_working_life_it_may_be_glued_anew(desk: Desk, answer: str) -> None:
    dialog = disturbed(desk, 70)
    assert list(dialog.keys) == [RE_AIMED, RE_GLUED]
    joint = desk.standing().joint
    dialog.keys[answer].click()
    (event,) = desk.session.store.journal.events(kinds=["moved after its working life"])
    assert event.subject_id == joint.id
    assert desk.session.store.journal.holds([joint.id]) == []
    ended = desk.session.store.work.joints(ids=[joint.id])[0].ended_as
    assert ended == ("re-glued" if answer == RE_GLUED else None)


def test_an_answer_that_waits_until_it_may_have_gelled_makes_the_hold(desk: Desk) -> None:
    dialog = disturbed(desk, 10)
    desk.clock.advance(hours=8)
    desk.press(dialog, ENTER)
    assert dialog.isVisible() and desk.standing().hold is not None
    assert "may have gelled meanwhile" in dialog.message.text()
    assert list(dialog.keys) == [UNTURNED, RE_GLUED, SCRAPPED, MISTAKE]
    assert desk.session.store.journal.events(kinds=["re-aimed"]) == []
    dialog.keys[UNTURNED].click()
    assert desk.standing().hold is None and not dialog.isVisible()


def test_nothing_happened_leaves_no_trace(desk: Desk) -> None:
    dialog = disturbed(desk, 10)
    before = len(desk.session.store.journal.events())
    desk.press(dialog, ESCAPE)
    assert len(desk.session.store.journal.events()) == before
    assert desk.standing().hold is None


def test_without_a_temperature_it_may_have_gelled(desk: Desk) -> None:
    laid = lay_out_irons(desk.session, 1)
    desk.session.take(desk.session.bench.mix(laid.batch_id))
    assert glue_of(desk.standing(), desk.clock.now()) is Glue.GELLED


def test_escape_leaves_it_on_hold(desk: Desk) -> None:
    joint = mixed(desk).joint
    desk.session.take(desk.session.bench.disturb(joint.id))
    dialog = HoldDialog(desk.session, desk.standing(), desk.window)
    desk.open(dialog)
    desk.press(dialog, ESCAPE)
    assert desk.standing().hold is not None


# The promise


def test_a_promise_is_made_and_taken_away(desk: Desk) -> None:
    lay_out_irons(desk.session, 1)
    dialog = PromiseDialog(desk.session, desk.standing().job, desk.window)
    desk.open(dialog)
    desk.qtbot.keyClicks(dialog.promise, "17:00")
    desk.press(dialog, ENTER)
    assert desk.standing().job.promised_us == instant("17:00")
    again = PromiseDialog(desk.session, desk.standing().job, desk.window)
    desk.open(again)
    desk.press(again, ENTER)
    assert desk.standing().job.promised_us is None


def test_a_promise_in_the_past_is_refused_inside(desk: Desk) -> None:
    lay_out_irons(desk.session, 1, promised_us=desk.clock.now() + 600 * MINUTE_US)
    dialog = PromiseDialog(desk.session, desk.standing().job, desk.window)
    desk.open(dialog)
    desk.qtbot.keyClicks(dialog.promise, "15:00")
    desk.press(dialog, ENTER)
    assert "still to come" in dialog.message.text() and dialog.isVisible()
