"""Glue-up by keys and by two touches: what is pressed is what is stored."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from helpers.session import (
    epoxy_named,
    lay_out_irons,
    make_session,
    place_of,
    type_temperature,
    zone_of,
)
from rackboard.core.bench import Batch, Joint, JointKind, Parts, PlaceKind, Source
from rackboard.core.instants import Instant, parse_iso
from rackboard.ui.glue_up import GlueUpPanel
from rackboard.ui.glue_up_keys import ClubKey
from rackboard.ui.keys import RIM, TARGET, Key
from rackboard.ui.resources import load_fonts
from rackboard.ui.theme import dark_theme

ENTER, SPACE, BACK = Qt.Key.Key_Return, Qt.Key.Key_Space, Qt.Key.Key_Backspace


class Desk:
    """A panel on the screen, and the hands on its keys."""

    def __init__(self, qtbot: QtBot, at: str, *, large: bool = True) -> None:
        load_fonts()
        self.session, self.clock = make_session(at)
        self.qtbot = qtbot
        self.panel = GlueUpPanel(self.session, dark_theme(), large=large)
        qtbot.addWidget(self.panel)
        self.panel.resize(516 if large else 353, 942 if large else 703)
        self.ms = 0
        self.panel.presses.now_ms = lambda: self.ms
        self.finished = 0
        self.slots: list[tuple[int, int]] = []
        self.panel.finished.connect(self._on_finished)
        self.panel.slots_chosen.connect(self._on_slots)
        self.panel.show()
        self.panel.activateWindow()
        qtbot.waitUntil(self.panel.isActiveWindow)

    def _on_finished(self) -> None:
        self.finished += 1

    def _on_slots(self, slots: list[tuple[int, int]]) -> None:
        self.slots = slots

    def focus(self) -> QWidget:
        widget = QApplication.focusWidget()
        assert widget is not None
        return widget

    def press(self, *keys: Qt.Key) -> None:
        """Press keys as somebody does who looks before each."""
        for key in keys:
            self.look()
            self.qtbot.keyClick(self.focus(), key)

    def look(self) -> None:
        """See what is on the screen, for a second."""
        self.panel.grab()
        self.ms += 1000

    def type(self, text: str) -> None:
        self.qtbot.keyClicks(self.focus(), text)

    def batches(self) -> list[Batch]:
        return list(self.session.board.snapshot.batches.values())

    def joints(self) -> list[Joint]:
        return list(self.session.board.snapshot.joints.values())

    def start(self, line_up: int = 0) -> None:
        self.panel.start((place_of(self.session).id, 0))
        self.press(ENTER, ENTER)  # past the number and the clubs to the line-ups
        for _ in range(line_up):
            self.press(Qt.Key.Key_Tab)
        self.press(ENTER)


@pytest.fixture
def desk(qtbot: QtBot) -> Desk:
    made = Desk(qtbot, "2026-03-09T15:24+01:00")
    type_temperature(made.session, 21.0)
    return made


def instant(text: str) -> Instant:
    return parse_iso(text, "test")


def test_the_three_moments_by_keys_alone(desk: Desk) -> None:
    desk.panel.start((place_of(desk.session).id, 3))
    desk.press(Qt.Key.Key_Tab, Qt.Key.Key_Tab)
    desk.type("D. Whitlow")
    desk.press(Qt.Key.Key_Tab)
    desk.type("0555 0102")
    desk.press(Qt.Key.Key_Tab)
    desk.type("Sat 08:00")
    desk.press(Qt.Key.Key_Tab, ENTER)  # the first line-up
    assert desk.panel.page is desk.panel.hands.layout_page
    assert desk.slots == [(place_of(desk.session).id, slot) for slot in range(3, 10)]
    desk.press(ENTER)
    assert desk.slots == []
    (batch,) = desk.batches()
    assert batch.mixed_us is None and len(desk.joints()) == 7
    job = next(iter(desk.session.board.snapshot.jobs.values()))
    assert (job.number, job.promised_us) == ("101", instant("2026-03-14T08:00+01:00"))
    customer = desk.session.board.snapshot.customers[job.customer_id]
    assert (customer.name, customer.phone) == ("D. Whitlow", "0555 0102")

    desk.clock.advance(minutes=16)
    desk.press(SPACE)
    assert desk.batches()[0].mixed_us == instant("2026-03-09T15:40+01:00")
    desk.clock.advance(minutes=22)
    desk.press(SPACE)
    assert desk.batches()[0].racked_us == instant("2026-03-09T16:02+01:00")
    assert desk.focus() is desk.panel.rack.look
    desk.clock.advance(minutes=4)
    assert desk.finished == 0
    desk.press(SPACE)
    assert desk.batches()[0].looked_us == instant("2026-03-09T16:06+01:00")
    assert desk.finished == 1
    assert {joint.glued_us for joint in desk.joints()} == {instant("2026-03-09T15:40+01:00")}


def test_two_gloved_touches_from_mixing_to_the_last_club(desk: Desk) -> None:
    desk.start()
    desk.press(ENTER)
    touches = 0
    for key in (desk.panel.mix.key, desk.panel.rack.key):
        assert key.isVisible() and key.body().height() >= TARGET * 2
        desk.look()
        desk.qtbot.mouseClick(key, Qt.MouseButton.LeftButton, pos=key.rect().center())
        touches += 1
        desk.clock.advance(minutes=20)
    (batch,) = desk.batches()
    assert touches == 2
    assert batch.mixed_us == instant("2026-03-09T15:24+01:00")
    assert batch.racked_us == instant("2026-03-09T15:44+01:00")


def test_backspace_undoes_each_press(desk: Desk) -> None:
    desk.start()
    desk.press(ENTER, SPACE, SPACE)
    assert desk.batches()[0].racked_us is not None
    desk.press(BACK)
    assert desk.batches()[0].racked_us is None
    assert desk.focus() is desk.panel.rack.key
    desk.press(BACK)
    assert desk.batches()[0].mixed_us is None
    assert desk.focus() is desk.panel.mix.key
    desk.press(BACK)
    assert desk.batches() == [] and desk.joints() == []
    assert desk.panel.page is desk.panel.hands.layout_page
    assert len(desk.slots) == 7


def test_backspace_leaves_what_somebody_else_did(desk: Desk) -> None:
    desk.start()
    desk.press(ENTER, SPACE)
    desk.clock.advance(minutes=1)
    type_temperature(desk.session, 20.0)
    desk.press(BACK)
    assert desk.batches()[0].mixed_us is not None
    assert "Something else" in desk.panel.rack.row.text


def test_an_undo_from_the_menu_is_seen(desk: Desk) -> None:
    desk.start()
    desk.press(ENTER, SPACE)
    assert desk.panel.page is desk.panel.rack
    desk.session.undo()
    assert desk.panel.page is desk.panel.mix


def test_the_last_clubs_were_glued_late(desk: Desk) -> None:
    desk.start()
    desk.press(ENTER, SPACE)
    desk.clock.advance(minutes=20)
    desk.panel.rack.late[2].click()
    assert desk.panel.rack.late[2].isChecked()
    desk.panel.rack.key.setFocus()
    desk.press(SPACE)
    mixed, racked = instant("2026-03-09T15:24+01:00"), instant("2026-03-09T15:44+01:00")
    assert [joint.glued_us for joint in desk.joints()] == [mixed] * 5 + [racked] * 2


@pytest.mark.parametrize("typed", ["40 min ago", "15:24", "today 1524"])
def test_mixing_said_later_gives_the_same_record(desk: Desk, typed: str) -> None:
    desk.start()
    desk.press(ENTER)
    desk.clock.advance(minutes=40)
    desk.panel.mix.field.setFocus()
    desk.type(typed)
    desk.press(ENTER)
    assert desk.batches()[0].mixed_us == instant("2026-03-09T15:24+01:00")
    assert desk.panel.page is desk.panel.rack


@pytest.fixture
def noon(qtbot: QtBot) -> Desk:
    """S10, first half: mixed at 01:10 typed for 13:10."""
    made = Desk(qtbot, "2026-03-09T13:12+01:00")
    type_temperature(made.session, 21.0)
    made.start()
    made.press(ENTER)
    made.panel.mix.field.setFocus()
    made.type("01:10")
    made.press(ENTER)
    return made


def test_half_a_day_off_is_asked_about_and_nothing_stored(noon: Desk) -> None:
    assert "Was it 13:10?" in noon.panel.mix.row.text
    assert noon.batches()[0].mixed_us is None
    assert noon.panel.page is noon.panel.mix


@pytest.mark.parametrize(("answer", "mixed"), [(0, "13:10"), (1, "01:10")])
def test_the_answer_is_what_is_stored(noon: Desk, answer: int, mixed: str) -> None:
    key = noon.panel.mix.row.keys[answer]
    assert mixed in key.text()
    key.setFocus()
    noon.press(SPACE)
    assert noon.batches()[0].mixed_us == instant(f"2026-03-09T{mixed}+01:00")


@pytest.mark.parametrize("typed", ["soon", "13:30", "9.3. 13:10", "tomorrow 08:00"])
def test_a_time_that_cannot_be_is_refused_in_the_form(noon: Desk, typed: str) -> None:
    noon.panel.mix.reset()
    noon.panel.mix.field.setFocus()
    noon.type(typed)
    noon.press(ENTER)
    assert noon.panel.mix.row.text.startswith("mixed at: wanted")
    assert noon.batches()[0].mixed_us is None


def test_a_missing_temperature_is_asked_for_first(qtbot: QtBot) -> None:
    desk = Desk(qtbot, "2026-03-09T15:24+01:00")
    desk.start()
    box = desk.panel.hands.layout_page.box
    assert desk.focus() is box.field
    desk.panel.hands.layout_page.go_on.click()
    assert desk.batches() == [] and "how warm" in box.row.text
    box.field.setFocus()
    desk.type("21,5")
    desk.press(ENTER)
    (reading,) = desk.session.store.record.readings(zone_of(desk.session), 0, 1 << 62)
    assert reading[1:] == (21_500, 3_000, Source.TYPED)
    assert not box.asks and desk.focus() is desk.panel.hands.layout_page.go_on
    desk.press(ENTER)
    assert len(desk.batches()) == 1


def test_a_reading_of_yesterday_is_none(qtbot: QtBot) -> None:
    desk = Desk(qtbot, "2026-03-09T15:24+01:00")
    type_temperature(desk.session, 21.0)
    desk.clock.advance(hours=17)
    desk.start()
    assert desk.panel.hands.layout_page.box.asks


def test_seventy_in_a_celsius_shop_is_asked_about(qtbot: QtBot) -> None:
    desk = Desk(qtbot, "2026-03-09T15:24+01:00")
    desk.start()
    box = desk.panel.hands.layout_page.box
    box.at_rack.click()
    box.field.setFocus()
    desk.type("70")
    desk.press(ENTER)
    zone = zone_of(desk.session)
    assert box.row.asking and "21.1" in box.row.text
    assert desk.session.store.record.readings(zone, 0, 1 << 62) == []
    desk.press(SPACE)
    (reading,) = desk.session.store.record.readings(zone, 0, 1 << 62)
    assert reading[1:] == (21_111, 1_000, Source.TYPED_AT_RACK)


def test_cold_parts_are_asked_how_cold(desk: Desk) -> None:
    desk.start()
    desk.panel.hands.layout_page.parts["cold"].click()
    assert desk.focus() is desk.panel.hands.layout_page.box.field
    desk.type("5")
    desk.press(ENTER, ENTER)
    assert {(j.parts, j.parts_mc) for j in desk.joints()} == {(Parts.COLD, 5_000)}


def test_warm_parts_stop_everything(desk: Desk) -> None:
    desk.start()
    page = desk.panel.hands.layout_page
    page.parts["warm"].click()
    stop = desk.panel.hands.stop
    assert desk.panel.page is stop and not page.go_on.isVisible()
    assert desk.focus() is stop.key and desk.slots == []
    desk.press(Qt.Key.Key_Escape)
    assert desk.panel.page is page and len(desk.slots) == 7
    page.parts["warm"].click()
    desk.press(ENTER)  # cool to the hand
    assert desk.panel.page is page and desk.batches() == []
    assert page.parts["shop"].isChecked()


def test_a_taken_slot_is_refused_and_a_free_one_taken(desk: Desk) -> None:
    rack = place_of(desk.session).id
    lay_out_irons(desk.session, 2)
    desk.start()
    assert desk.slots == [(rack, slot) for slot in range(2, 9)]
    desk.panel.toggle_slot(rack, 0)
    assert "A1 is taken" in desk.panel.hands.layout_page.box.row.text
    desk.panel.toggle_slot(rack, 14)
    assert desk.slots[0] == (rack, 14)
    desk.panel.toggle_slot(rack, 13)
    assert desk.slots[:2] == [(rack, 14), (rack, 13)]


def test_a_slot_taken_meanwhile_is_given_up(desk: Desk) -> None:
    rack = place_of(desk.session).id
    desk.start()
    lay_out_irons(desk.session, 2)
    assert (rack, 0) not in desk.slots and len(set(desk.slots)) == 7
    desk.press(ENTER)
    assert len(desk.batches()) == 2


def test_fourteen_clubs_and_not_one_more(desk: Desk) -> None:
    desk.start()
    desk.panel.hands.layout_page.grid.keys()[0].click()
    for _ in range(7):
        desk.panel.hands.clubs.add.click()
    assert len(desk.panel.hands.draft.clubs) == 14
    desk.panel.hands.clubs.add.click()
    assert "at most 14 clubs" in desk.panel.hands.clubs.row.text
    desk.panel.hands.clubs.go_on.click()
    desk.press(ENTER)
    assert len(desk.joints()) == 14


def test_a_club_is_renamed_and_gets_its_joint(desk: Desk) -> None:
    desk.start(line_up=8)
    assert desk.panel.hands.draft.clubs[0].kind is JointKind.OVER_HOSEL_PUTTER
    desk.panel.hands.layout_page.grid.keys()[0].click()
    desk.panel.hands.clubs.name.clear()
    desk.type("blade")
    assert desk.panel.hands.draft.clubs[0].kind is JointKind.SOLID_HEAD
    desk.panel.hands.clubs.kinds[JointKind.OVER_HOSEL_PUTTER].click()
    desk.type(" II")
    desk.panel.hands.clubs.graphics["6"].click()
    desk.panel.hands.clubs.go_on.click()
    desk.press(ENTER)
    (joint,) = desk.joints()
    club = desk.session.board.snapshot.clubs[joint.club_id]
    assert (club.name, joint.kind, joint.graphics) == ("blade II", "over-hosel putter", "6")


def test_tight_clubs_go_into_two_batches(qtbot: QtBot) -> None:
    desk = Desk(qtbot, "2026-03-09T15:24+01:00")
    type_temperature(desk.session, 27.0)
    desk.start()
    page = desk.panel.hands.layout_page
    desk.panel.hands.draft.epoxy_id = epoxy_named(desk.session, "half-hour")
    desk.panel.show_now()
    assert page.box._plan is not None
    assert page.box._plan.tight == "7 clubs at 2½ min is tight: two batches?"
    assert page.box.split.isVisible() and page.box.split.text() == "Two batches\n4 + 3"
    page.box.split.click()
    page.go_on.setFocus()
    desk.press(ENTER)
    assert len(desk.batches()) == 2
    counts = [len(js) for js in desk.session.board.snapshot.joints_of_batch.values()]
    assert counts == [4, 3]
    desk.press(SPACE, SPACE, SPACE)  # mixed, racked, looked at
    assert desk.panel.page is desk.panel.mix and desk.finished == 0
    desk.press(SPACE, SPACE, SPACE)
    assert desk.finished == 1
    assert all(batch.looked_us is not None for batch in desk.batches())


def test_back_from_two_batches_takes_both_back(qtbot: QtBot) -> None:
    desk = Desk(qtbot, "2026-03-09T15:24+01:00")
    type_temperature(desk.session, 27.0)
    desk.start()
    desk.panel.hands.layout_page.box.split.click()
    desk.panel.hands.layout_page.go_on.setFocus()
    desk.press(ENTER, BACK)
    assert desk.batches() == [] and len(desk.slots) == 7


def test_a_batch_is_resumed_where_it_was_left(desk: Desk) -> None:
    laid = lay_out_irons(desk.session, 2)
    desk.panel.resume(laid.batch_id)
    assert desk.focus() is desk.panel.mix.key
    desk.session.take(desk.session.bench.mix(laid.batch_id))
    desk.panel.resume(laid.batch_id)
    assert desk.focus() is desk.panel.rack.key
    assert not desk.panel.rack.late[2].isVisible()  # both of two: none was glued in time


def test_cancel_drops_the_draft_and_its_preview(desk: Desk) -> None:
    desk.start()
    left: list[bool] = []
    desk.panel.cancelled.connect(lambda: left.append(True))
    desk.press(Qt.Key.Key_Escape)
    assert left == [True] and desk.slots == [] and desk.panel.hands.draft.clubs == []
    lay_out_irons(desk.session, 2)
    assert desk.slots == []


def test_a_promise_in_the_past_stays_in_the_form(desk: Desk) -> None:
    desk.panel.start(None)
    desk.panel.hands.job.promise.setText("yesterday 08:00")
    desk.panel.hands.job.keys[0].click()
    assert desk.panel.page is desk.panel.hands.job
    assert "still to come" in desk.panel.hands.job.row.text


def test_a_number_that_is_there_gets_the_clubs_added(desk: Desk) -> None:
    lay_out_irons(desk.session, 2, number="220")
    desk.panel.start(None)
    desk.panel.hands.job.number.setFocus()
    desk.panel.hands.job.number.clear()
    desk.type("220")
    assert "are added to it" in desk.panel.hands.job.row.text
    desk.panel.hands.job.keys[5].click()
    desk.press(ENTER)
    assert len(desk.session.board.snapshot.jobs) == 1 and len(desk.joints()) == 3


def test_the_box_is_asked_how_warm_it_is_when_a_club_goes_there(desk: Desk) -> None:
    desk.start(line_up=5)
    box = place_of(desk.session, PlaceKind.BOX)
    desk.panel.toggle_slot(box.id, 0)
    assert desk.panel.hands.layout_page.box.asks
    desk.panel.hands.layout_page.box.field.setFocus()
    desk.type("48")  # a warm box may be so warm
    desk.press(ENTER)
    assert not desk.panel.hands.layout_page.box.asks


@pytest.mark.parametrize("large", [True, False])
def test_targets_are_large_enough_and_nothing_overlaps(qtbot: QtBot, large: bool) -> None:
    desk = Desk(qtbot, "2026-03-09T15:24+01:00", large=large)
    type_temperature(desk.session, 27.0)
    desk.start()
    panel = desk.panel
    pages = [
        panel.hands.layout_page, panel.hands.job, panel.hands.clubs, panel.hands.stop,
    ]
    panel.hands.clubs.show_club([("4 iron", "A1")] * 14, 0, panel.hands.draft.clubs[0])
    for page in pages:
        panel.hands.open(page)
        slim = panel.hands.layout_page.change
        keys = [k for k in page.findChildren(Key) if k.isVisible() and k is not slim]
        bodies = []
        for key in keys:
            top_left = key.mapTo(panel, key.rect().topLeft())
            body = key.rect().adjusted(RIM, RIM, -RIM, -RIM).translated(top_left)
            assert panel.rect().contains(body)
            if not isinstance(key, ClubKey):
                assert body.height() >= TARGET and body.width() >= TARGET - 2, key.text()
            bodies.append(body)
        for at, body in enumerate(bodies):
            assert not any(body.intersects(other) for other in bodies[at + 1 :])
