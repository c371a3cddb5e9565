"""Releasing before the board does, swapping two clubs, and whose initials an act carries."""

from __future__ import annotations

from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from helpers.session import lay_out_irons, make_session, type_temperature
from helpers.shop import FakeClock
from helpers.windows import make_window
from rackboard.core.bench import Hold, HoldReason, Milestone
from rackboard.core.disturbance import Answer
from rackboard.core.standing import Standing, expected_at
from rackboard.ui.act_dialog import ActDialog
from rackboard.ui.hold_dialog import HoldDialog
from rackboard.ui.initials_dialog import ready_dialog
from rackboard.ui.release_dialog import ReleaseDialog
from rackboard.ui.resources import load_fonts
from rackboard.ui.session import Session
from rackboard.ui.swap_dialog import CARRIED, NAME, NOTCH, SwapDialog

ENTER, DOWN, UP, TAB = Qt.Key.Key_Return, Qt.Key.Key_Down, Qt.Key.Key_Up, Qt.Key.Key_Tab


class Desk:
    def __init__(self, qtbot: Any) -> None:
        load_fonts()
        self.qtbot = qtbot
        self.session: Session
        self.clock: FakeClock
        self.session, self.clock = make_session("2026-03-09T10:00+01:00")
        self.window: QWidget = make_window(qtbot)
        type_temperature(self.session, 21.0)
        for initials in ("MB", "KT"):
            self.session.take(self.session.bench.set_by(initials))
            self.clock.advance(minutes=1)
        laid = lay_out_irons(self.session, 2)
        self.session.take(self.session.bench.mix(laid.batch_id))

    def standing(self, index: int = 0) -> Standing:
        return self.session.board.standings[index]

    def open(self, dialog: ActDialog) -> Any:
        dialog.open()
        self.qtbot.waitUntil(dialog.isActiveWindow)
        return dialog

    def press(self, dialog: ActDialog, key: Qt.Key) -> None:
        focus = dialog.focusWidget()
        assert focus is not None
        self.qtbot.keyClick(focus, key)

    def after_expected(self, milestone: Milestone) -> None:
        """Go where a permission is expected but not given."""
        expected = expected_at(self.standing(), milestone)
        assert expected is not None
        self.clock.set(expected + 60_000_000)
        self.session.tick()


@pytest.fixture
def desk(qtbot: Any) -> Desk:
    return Desk(qtbot)


# Release


def test_after_the_expected_time_it_is_a_plain_entry(desk: Desk) -> None:
    desk.after_expected(Milestone.HANDLING)
    type_temperature(desk.session, 21.0)
    dialog = desk.open(ReleaseDialog(desk.session, desk.standing(), desk.window))
    assert dialog.milestone is Milestone.HANDLING
    assert not dialog.warns and not dialog.panel.isVisible()
    desk.qtbot.keyClicks(dialog.reason, "needed for a fitting")
    desk.press(dialog, ENTER)
    released = desk.standing().released
    assert released is not None
    assert (released.by, released.reason) == ("KT", "needed for a fitting")
    assert released.milestone is Milestone.HANDLING


def test_before_it_there_is_a_warning_and_enter_ends_at_cancel(desk: Desk) -> None:
    dialog = desk.open(ReleaseDialog(desk.session, desk.standing(), desk.window))
    assert dialog.warns and dialog.panel.isVisible()
    assert dialog.signal.text() == "WARNING"
    assert "can injure" in dialog.danger.text()
    assert "own sheet comes first" in dialog.danger.text()
    desk.qtbot.keyClicks(dialog.reason, "he waits")
    for _ in range(2):
        desk.press(dialog, ENTER)
        assert dialog.isVisible() and desk.standing().released is None
    dialog._cancel.setFocus()
    desk.press(dialog, ENTER)
    assert not dialog.isVisible() and desk.standing().released is None


def test_a_warned_person_may_do_it_all_the_same(desk: Desk) -> None:
    dialog = desk.open(ReleaseDialog(desk.session, desk.standing(), desk.window))
    dialog.options[Milestone.FULL_CURE].setChecked(True)
    assert dialog._cancel.isDefault() and not dialog._accept.isDefault()
    dialog.reason.setText("he waits")
    dialog.who.field.setText("MB")
    dialog._accept.setFocus()
    desk.press(dialog, ENTER)
    released = desk.standing().released
    assert released is not None
    assert (released.by, released.milestone) == ("MB", Milestone.FULL_CURE)


def test_the_warning_comes_and_goes_with_what_it_is_released_for(desk: Desk) -> None:
    desk.after_expected(Milestone.HANDLING)
    type_temperature(desk.session, 21.0)
    dialog = desk.open(ReleaseDialog(desk.session, desk.standing(), desk.window))
    place = dialog.reason.pos()
    dialog.options[Milestone.FULL_CURE].setChecked(True)
    assert dialog.warns and dialog.panel.isVisible() and dialog._cancel.isDefault()
    assert dialog.reason.pos() == place
    dialog.options[Milestone.HANDLING].setChecked(True)
    assert not dialog.panel.isVisible() and dialog._accept.isDefault()


def test_without_a_reason_or_initials_nothing_is_released(desk: Desk) -> None:
    dialog = desk.open(ReleaseDialog(desk.session, desk.standing(), desk.window))
    dialog._accept.click()
    assert "a reason" in dialog.message.text() and dialog.focusWidget() is dialog.reason
    dialog.reason.setText("he waits")
    dialog.who.field.clear()
    dialog._accept.click()
    assert "the initials of who releases it" in dialog.message.text()
    assert dialog.focusWidget() is dialog.who.field
    assert desk.session.store.journal.releases([desk.standing().joint.id]) == []


def test_a_hold_is_answered_by_a_release(desk: Desk) -> None:
    joint = desk.standing().joint
    with desk.session.store.write("too hot", desk.clock.now()) as act:
        act.add(Hold(0, joint.id, HoldReason.TOO_HOT, "", desk.clock.now()))
    desk.session.take(act.changes)
    hold = desk.open(HoldDialog(desk.session, desk.standing(), desk.window))
    hold.keys[Answer.RELEASED].click()
    dialog = desk.window.findChild(ReleaseDialog)
    assert dialog is not None and dialog.warns
    assert list(dialog.options) == [Milestone.FULL_CURE]
    dialog.reason.setText("looked at it")
    assert dialog._accept is not None
    dialog._accept.click()
    (ended,) = desk.session.store.journal.holds([joint.id])
    assert (ended.outcome, ended.by) == ("released", "KT")
    assert desk.standing().released is not None


# Whose initials


def test_the_last_who_acted_is_offered_first_and_arrows_walk(desk: Desk) -> None:
    desk.session.bench.act_as("")
    dialog = desk.open(ReleaseDialog(desk.session, desk.standing(), desk.window))
    assert dialog.who.initials == "KT"
    assert [key.text() for key in dialog.who.keys] == ["KT", "MB"]
    dialog.who.field.setFocus()
    desk.press(dialog, DOWN)
    assert dialog.who.initials == "MB"
    desk.press(dialog, UP)
    assert dialog.who.initials == "KT"
    dialog.who.keys[1].click()
    assert dialog.who.initials == "MB"


def test_ready_asks_who_and_remembers_it(desk: Desk) -> None:
    job = desk.standing().job
    dialog = desk.open(ready_dialog(desk.session, job.id, desk.window))
    desk.qtbot.keyClicks(dialog.who.field, "JS")  # over the selected proposal
    desk.press(dialog, ENTER)
    assert desk.standing().job.ready_by == "JS"
    assert desk.session.bench.by == "JS"
    assert desk.session.store.shop.persons()[0].initials == "JS"


def test_nobody_presses_ready(desk: Desk) -> None:
    dialog = desk.open(ready_dialog(desk.session, desk.standing().job.id, desk.window))
    dialog.who.field.clear()
    desk.press(dialog, ENTER)
    assert dialog.isVisible() and desk.standing().job.ready_us is None
    dialog.who.field.setText("farTooLong")
    assert len(dialog.who.initials) == 8


def test_an_answered_hold_carries_the_initials_shown(desk: Desk) -> None:
    desk.session.take(desk.session.bench.disturb(desk.standing().joint.id))
    dialog = desk.open(HoldDialog(desk.session, desk.standing(), desk.window))
    dialog.who.keys[1].click()
    dialog.keys[Answer.UNTURNED].click()
    (hold,) = desk.session.store.journal.holds([desk.standing().joint.id])
    assert hold.by == "MB"


# Swap


def swap(desk: Desk) -> SwapDialog:
    """Open it for the 4 iron of job 220, beside whose slot one of the same name lies."""
    laid = lay_out_irons(desk.session, 1, first_slot=7, number="221")
    desk.session.take(desk.session.bench.mix(laid.batch_id))
    dialog: SwapDialog = desk.open(SwapDialog(desk.session, desk.standing(), desk.window))
    return dialog


def test_the_same_name_is_proposed_before_the_neighbour(desk: Desk) -> None:
    dialog = swap(desk)
    assert dialog.other.currentText() == "A8 4 iron, job 221"
    assert dialog.other.itemText(1) == "A2 5 iron, job 220"
    assert set(dialog.keys) == {NAME, NOTCH, CARRIED}
    assert "since 10:02" in dialog.keys[NOTCH].text()


@pytest.mark.parametrize(
    ("answer", "where", "number"),
    [(NAME, "A1", "221"), (NOTCH, "A8", "220"), (CARRIED, "A8", "220")],
)
def test_each_answer_does_what_it_says(desk: Desk, answer: str, where: str, number: str) -> None:
    joint = desk.standing().joint.id
    dialog = swap(desk)
    dialog.keys[answer].setFocus()
    desk.press(dialog, ENTER)
    standing = next(s for s in desk.session.board.standings if s.joint.id == joint)
    assert desk.session.board.snapshot.where(standing.club.id) == where
    assert standing.job.number == number
    corrected = "former" in [change.table for change in desk.session.history._done[-1]]
    assert corrected is (answer != CARRIED)


def test_a_neighbour_is_chosen_by_keys(desk: Desk) -> None:
    dialog = swap(desk)
    desk.press(dialog, DOWN)
    assert dialog.other.currentText() == "A2 5 iron, job 220"
    desk.press(dialog, TAB)
    assert dialog.focusWidget() is dialog.keys[NAME]
    desk.press(dialog, ENTER)
    assert [s.club.name for s in desk.session.board.standings[:2]] == ["5 iron", "4 iron"]


def test_a_club_alone_has_nothing_to_swap_with(qtbot: Any) -> None:
    desk = Desk(qtbot)
    for _ in range(3):
        desk.session.undo()
    type_temperature(desk.session, 21.0)
    lay_out_irons(desk.session, 1)
    dialog = desk.open(SwapDialog(desk.session, desk.standing(), desk.window))
    assert not any(key.isEnabled() for key in dialog.keys.values())
