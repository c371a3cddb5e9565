"""Correct…: one form for all facts of a joint; only what is another there is corrected."""

from __future__ import annotations

from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from helpers.session import lay_out_irons, make_session, place_of, type_temperature
from helpers.shop import FakeClock
from helpers.windows import make_window
from rackboard.core.bench import JointKind, Milestone, PlaceKind
from rackboard.core.instants import Instant, parse_iso
from rackboard.core.standing import Standing
from rackboard.services.correcting import NEW_BATCH
from rackboard.ui.correction import CorrectionDialog
from rackboard.ui.resources import load_fonts
from rackboard.ui.session import Session

ENTER = Qt.Key.Key_Return


def instant(text: str) -> Instant:
    return parse_iso(f"2026-03-09T{text}+01:00", "test")


class Desk:
    def __init__(self, qtbot: Any, size: tuple[int, int] = (1280, 800)) -> None:
        load_fonts()
        self.qtbot = qtbot
        self.session: Session
        self.clock: FakeClock
        self.session, self.clock = make_session("2026-03-09T15:24+01:00")
        self.window = make_window(qtbot, *size)
        type_temperature(self.session, 21.0)
        laid = lay_out_irons(self.session, 2)
        self.session.take(self.session.bench.mix(laid.batch_id, instant("15:20")))

    def standing(self, index: int = 0) -> Standing:
        return self.session.board.standings[index]

    def open(self, index: int = 0) -> CorrectionDialog:
        dialog = CorrectionDialog(self.session, self.standing(index), self.window)
        dialog.open()
        self.qtbot.waitUntil(dialog.isActiveWindow)
        return dialog

    def enter(self, dialog: CorrectionDialog) -> None:
        focus = dialog.focusWidget()
        assert focus is not None
        self.qtbot.keyClick(focus, ENTER)


@pytest.fixture
def desk(qtbot: Any) -> Desk:
    return Desk(qtbot)


def test_several_facts_are_one_act(desk: Desk) -> None:
    dialog = desk.open()
    dialog.club.setText("3 iron")
    dialog.number.setText("202")
    dialog.customer.setText("D. Whitlowe")
    dialog.kind.setCurrentIndex(dialog.kind.findData(JointKind.HOLLOW_HEAD))
    dialog.graphics.setCurrentIndex(dialog.graphics.findData("6"))
    dialog.lot.setText("K-9")
    dialog.who.field.setText("MB")
    dialog.who.field.setFocus()
    desk.enter(dialog)
    standing = desk.standing()
    assert (standing.club.name, standing.job.number) == ("3 iron", "202")
    assert (standing.joint.kind, standing.joint.lag_s) == (JointKind.HOLLOW_HEAD, 240)
    assert (standing.joint.graphics, standing.batch.lot) == ("6", "K-9")
    customers = desk.session.board.snapshot.customers
    assert customers[standing.job.customer_id].name == "D. Whitlowe"
    assert desk.session.bench.by == "MB"
    assert desk.session.history.undo_label == "correct 4 iron"
    desk.session.undo()
    assert desk.standing().club.name == "4 iron"


def test_what_was_before_stands_under_its_field(desk: Desk) -> None:
    for name in ("3 iron", "2 iron"):
        dialog = desk.open()
        dialog.club.setText(name)
        desk.enter(dialog)
    dialog = desk.open()
    assert "before that 3 iron, 4 iron" in [label.text() for label in dialog.findChildren(QLabel)]
    assert dialog.club.accessibleDescription() == "before that 3 iron, 4 iron"


def test_nothing_changed_is_said_inside(desk: Desk) -> None:
    dialog = desk.open()
    desk.enter(dialog)
    assert dialog.isVisible() and "a fact that is another" in dialog.message.text()


def test_a_slot_is_corrected_without_a_move(desk: Desk) -> None:
    dialog = desk.open()
    assert dialog.place is not None
    rack = place_of(desk.session)
    free = [dialog.place.itemText(at) for at in range(dialog.place.count())]
    assert free[0] == "A1" and "A2" not in free and "grip bench" in free
    dialog.place.setCurrentIndex(free.index("A7"))
    desk.enter(dialog)
    (stay,) = desk.session.store.work.stays([desk.standing().club.id])
    assert (stay.place_id, stay.slot) == (rack.id, 6)
    again = desk.open()
    assert again.place is not None
    assert again.place.accessibleDescription() == "before that A1"


def test_a_joint_gets_a_batch_of_its_own_with_its_time(desk: Desk) -> None:
    dialog = desk.open()
    dialog.batch.setCurrentIndex(dialog.batch.findData(NEW_BATCH))
    assert dialog.mixed.isEnabled()
    dialog.mixed.setFocus()
    desk.qtbot.keyClicks(dialog.mixed, "15:22")
    desk.enter(dialog)
    one, two = desk.standing(0), desk.standing(1)
    assert (one.batch.mixed_us, two.batch.mixed_us) == (instant("15:22"), instant("15:20"))


def test_of_another_batch_nothing_is_changed_from_here(desk: Desk) -> None:
    laid = lay_out_irons(desk.session, 1, first_slot=4, number="221")
    desk.session.take(desk.session.bench.mix(laid.batch_id, instant("15:23")))
    dialog = desk.open()
    assert dialog.batch.count() == 3
    dialog.mixed.setText("15:00")
    dialog.batch.setCurrentIndex(dialog.batch.findData(laid.batch_id))
    assert not dialog.mixed.isEnabled() and not dialog.epoxy.isEnabled()
    dialog.club.setFocus()
    desk.enter(dialog)
    assert desk.standing().batch.id == laid.batch_id
    assert desk.standing().batch.mixed_us == instant("15:23")


def test_a_typed_temperature_is_corrected_and_asked_about(desk: Desk) -> None:
    dialog = desk.open()
    assert not dialog.temperature.isEnabled()
    dialog.reading.setCurrentIndex(1)
    assert dialog.reading.currentText() == "Room 15:24: 21.0\N{NO-BREAK SPACE}°C"
    dialog.temperature.setText("64")
    dialog.temperature.setFocus()
    desk.enter(dialog)
    assert dialog.asking and "17.8" in dialog.message.text()
    dialog.answer_keys[0].click()
    zone = desk.standing().batch.zone_id
    (reading,) = desk.session.bench.typed_readings(zone, 0, desk.clock.now() + 1)
    assert reading.temperature_mc == 17_778
    again = desk.open()
    again.reading.setCurrentIndex(1)
    said = again.temperature.accessibleDescription().replace("\N{NO-BREAK SPACE}", " ")
    assert said == "On record: 17.8 °C, before that 21.0 °C"


def test_a_reading_without_a_value_is_refused_at_its_field(desk: Desk) -> None:
    dialog = desk.open()
    dialog.reading.setCurrentIndex(1)
    desk.enter(dialog)
    assert dialog.message.text().startswith("Room: wanted a temperature")
    assert dialog.temperature.property("wrong") is True


def test_gluing_after_the_working_life_is_asked_about(desk: Desk) -> None:
    desk.clock.advance(hours=3)
    desk.session.tick()
    dialog = desk.open()
    dialog.glued.setFocus()
    desk.qtbot.keyClicks(dialog.glued, "18:00")
    desk.enter(dialog)
    assert dialog.asking and "the working life" in dialog.message.text()
    dialog.answer_keys[1].click()  # let me correct it
    assert dialog.isVisible() and dialog.focusWidget() is dialog.glued
    assert desk.standing().joint.glued_us == instant("15:20")
    desk.enter(dialog)
    dialog.answer_keys[0].click()
    assert desk.standing().joint.glued_us == instant("18:00")


def test_initials_that_are_on_record_are_corrected(desk: Desk) -> None:
    bench = desk.session.bench
    bench.act_as("KT")
    desk.session.take(bench.release(desk.standing().joint.id, Milestone.HANDLING, "a fitting"))
    desk.session.take(bench.press_ready(desk.standing().job.id, True))
    dialog = desk.open()
    assert dialog.released_by is not None and dialog.ready_by is not None
    dialog.released_by.setText("MB")
    dialog.ready_by.setText("MB")
    desk.enter(dialog)
    released = desk.standing().released
    assert released is not None and released.by == "MB"
    assert desk.standing().job.ready_by == "MB"


def test_a_club_that_is_only_laid_out_has_names_to_correct(desk: Desk) -> None:
    lay_out_irons(desk.session, 1, first_slot=4, number="221")
    dialog = desk.open(2)
    assert not dialog.mixed.isEnabled() and not dialog.glued.isEnabled()
    dialog.club.setText("9 iron")
    desk.enter(dialog)
    assert desk.standing(2).club.name == "9 iron"


def test_off_the_rack_the_place_is_corrected_too(desk: Desk) -> None:
    desk.session.take(desk.session.bench.take_off(desk.standing().club.id))
    dialog = desk.open()
    assert dialog.place is not None
    pick_up = place_of(desk.session, PlaceKind.PICK_UP)
    dialog.place.setCurrentIndex(dialog.place.findText(pick_up.name))
    desk.enter(dialog)
    assert desk.session.board.snapshot.where(desk.standing().club.id) == pick_up.name


@pytest.mark.parametrize("size", [(1280, 800), (1920, 1080)])
def test_it_fits_into_the_window(qtbot: Any, size: tuple[int, int]) -> None:
    desk = Desk(qtbot, size)
    dialog = desk.open()
    assert dialog.width() <= size[0] - 40 and dialog.height() <= size[1] - 40
    assert dialog.roles.large is (size[0] == 1920)
