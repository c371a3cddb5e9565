"""Glue-up before mixing: single clubs, line-ups, what is warned of, and presses that are meant."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

import pytest
from PySide6.QtCore import QEvent, QPoint, Qt
from PySide6.QtGui import QKeyEvent, QPointingDevice
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from helpers.session import epoxy_named, make_session, place_of, type_temperature
from rackboard.core.bench import Batch, Joint, JointKind, PlaceKind
from rackboard.core.instants import parse_iso
from rackboard.services.draft import INDEX_MARK, read_clubs
from rackboard.ui import type as lettering
from rackboard.ui.glue_up import GlueUpPanel
from rackboard.ui.glue_up_plan import PlanView
from rackboard.ui.glue_up_press import PAUSE_MS, Presses
from rackboard.ui.resources import load_fonts
from rackboard.ui.theme import FILLS, dark_theme, light_theme

ENTER, SPACE = Qt.Key.Key_Return, Qt.Key.Key_Space
NBSP = "\N{NO-BREAK SPACE}"
FRIDAY = "2026-03-13T15:24+01:00"
_open: list[Desk] = []  # pytest-qt itself keeps only weak references


class Desk:
    """A panel, a clock of milliseconds that stands still, and hands."""

    def __init__(
        self, qtbot: QtBot, celsius: float | None = 21.0, box: float | None = None,
        at: str = FRIDAY, *, large: bool = True, light: bool = False,
    ) -> None:  # fmt: skip
        load_fonts()
        self.session, self.clock = make_session(at)
        if celsius is not None:
            type_temperature(self.session, celsius)
        if box is not None:
            type_temperature(self.session, box, PlaceKind.BOX)
        self.ms = 0
        theme = light_theme() if light else dark_theme()
        self.panel = GlueUpPanel(self.session, theme, large=large)
        self.panel.presses.now_ms = lambda: self.ms
        self.hands = self.panel.hands
        _open.append(self)
        qtbot.addWidget(self.panel, before_close_func=lambda _: _open.remove(self))
        self.panel.resize(516 if large else 353, 942 if large else 703)
        self.panel.show()
        self.panel.activateWindow()
        qtbot.waitUntil(self.panel.isActiveWindow)

    def press(self, *keys: Qt.Key) -> None:
        """Press at once, seen or not."""
        for key in keys:
            QTest.keyClick(self.focus(), key)

    def type(self, text: str) -> None:
        QTest.keyClicks(self.focus(), text)

    def focus(self) -> QWidget:
        widget = QApplication.focusWidget()
        assert widget is not None
        return widget

    def look(self, ms: int = 1000) -> None:
        self.panel.grab()
        self.ms += ms

    def start(
        self, clubs: str, *, epoxy: str = "", promise: str = "", number: str = "",
        customer: str = "",
    ) -> None:  # fmt: skip
        """Fill the first page and go on to the lay-out."""
        self.panel.start((place_of(self.session).id, 0))
        if epoxy:
            self.hands.draft.epoxy_id = epoxy_named(self.session, epoxy)
        job = self.hands.job
        job.number.setText(number or job.number.text())
        job.customer.setText(customer)
        job.promise.setText(promise)
        assert job.take()
        job.lined_up.emit(read_clubs(clubs))

    def plan(self) -> PlanView:
        plan = self.hands.layout_page.box._plan
        assert plan is not None
        return plan

    def batches(self) -> list[Batch]:
        return list(self.session.board.snapshot.batches.values())

    def joints(self) -> list[Joint]:
        return list(self.session.board.snapshot.joints.values())


class Drawn:
    """What was lettered while a widget was painted: text, left edge and baseline."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.texts: list[tuple[str, float]] = []
        draw = lettering.draw

        def record(painter, style, x, baseline, text, color, align=lettering.Align.LEFT):  # type: ignore[no-untyped-def]
            self.texts.append((text, baseline))
            return draw(painter, style, x, baseline, text, color, align)

        monkeypatch.setattr(lettering, "draw", record)

    def of(self, widget: QWidget) -> list[str]:
        self.texts.clear()
        widget.grab()
        return [text for text, _ in self.texts]


@pytest.fixture
def drawn(monkeypatch: pytest.MonkeyPatch) -> Iterator[Drawn]:
    lettering._layout.cache_clear()
    yield Drawn(monkeypatch)


# A single club: two fields


def test_a_single_club_takes_two_fields(qtbot: QtBot) -> None:
    desk = Desk(qtbot, 21.0)
    desk.panel.start((place_of(desk.session).id, 6))
    desk.type("2417")
    desk.press(ENTER)
    desk.type("driver")
    desk.press(ENTER)
    (joint,) = desk.joints()
    (job,) = desk.session.board.snapshot.jobs.values()
    (stay,) = desk.session.board.snapshot.stays.values()
    assert (job.number, joint.kind, stay.slot) == ("2417", JointKind.HOLLOW_HEAD, 6)
    assert desk.panel.page is desk.panel.mix and desk.focus() is desk.panel.mix.key


def test_backspace_brings_a_single_club_back_to_its_lay_out(qtbot: QtBot) -> None:
    desk = laid_out(qtbot)
    desk.press(Qt.Key.Key_Backspace)
    assert desk.batches() == [] and desk.joints() == []
    assert desk.panel.page is desk.hands.layout_page
    assert [club.name for club in desk.hands.draft.clubs] == ["driver"]
    desk.press(ENTER)
    assert len(desk.batches()) == 1 and desk.panel.page is desk.panel.mix


def test_the_epoxy_of_last_time_is_chosen(qtbot: QtBot) -> None:
    desk = Desk(qtbot, 21.0)
    for epoxy in ("day-long", ""):
        desk.start("7", epoxy=epoxy)
        desk.hands.layout_page.go_on.click()
    assert {batch.sheet.name for batch in desk.batches()} == {"day-long"}


@pytest.mark.parametrize(
    ("celsius", "epoxy", "promise"),
    [(None, "day-long", ""), (42.0, "quick", ""), (21.0, "day-long", "Fri 17:00")],
    ids=["no temperature", "too hot", "promise missed"],
)
def test_a_single_club_waits_where_there_is_something_to_say(
    qtbot: QtBot, celsius: float | None, epoxy: str, promise: str
) -> None:
    desk = Desk(qtbot, celsius)
    desk.panel.start(None)
    desk.hands.draft.epoxy_id = epoxy_named(desk.session, epoxy)
    desk.hands.job.promise.setText(promise)
    desk.press(ENTER)
    desk.type("driver")
    desk.press(ENTER)
    assert desk.panel.page is desk.hands.layout_page and desk.batches() == []


# Line-ups


def test_line_ups_are_added_to_each_other_and_one_club_taken_out(qtbot: QtBot) -> None:
    desk = Desk(qtbot, 21.0)
    desk.panel.start(None)
    for name in ("4 iron to PW", "driver", "putter"):
        next(key for key in desk.hands.job.keys if key.text() == name).click()
        desk.hands.layout_page.change.click()
    names = [club.name for club in desk.hands.draft.clubs]
    assert names == [*(f"{n} iron" for n in range(4, 10)), "PW", "driver", "putter"]
    desk.hands.job.go_on.click()
    desk.hands.layout_page.grid.keys()[7].click()
    desk.hands.clubs.remove.click()
    assert [club.name for club in desk.hands.draft.clubs] == [*names[:7], "putter"]


def test_too_many_are_refused_and_the_rest_stays(qtbot: QtBot) -> None:
    desk = Desk(qtbot, 21.0)
    desk.start("3-PW")
    desk.hands.layout_page.change.click()
    desk.hands.job.keys[0].click()
    assert "at most 14 clubs" in desk.hands.job.row.text
    assert len(desk.hands.draft.clubs) == 8 and desk.panel.page is desk.hands.job


def test_the_last_club_taken_out_leads_back_to_the_job(qtbot: QtBot) -> None:
    desk = Desk(qtbot, 21.0)
    desk.start("7")
    desk.hands.layout_page.grid.keys()[0].click()
    desk.hands.clubs.remove.click()
    assert desk.panel.page is desk.hands.job and not desk.hands.job.go_on.isEnabled()


@pytest.mark.parametrize("kind", list(JointKind))
def test_every_kind_of_joint_can_be_chosen(qtbot: QtBot, kind: JointKind) -> None:
    desk = Desk(qtbot, 21.0)
    desk.start("4, 5")
    desk.hands.layout_page.grid.keys()[1].click()
    desk.hands.clubs.kinds[kind].click()
    mark = desk.hands.clubs.graphics[INDEX_MARK]
    assert mark.isEnabled() == (kind is JointKind.ADAPTER_SLEEVE)
    mark.click()
    desk.hands.clubs.go_on.click()
    desk.hands.layout_page.go_on.click()
    first, second = desk.joints()
    assert (first.kind, first.graphics) == (JointKind.SOLID_HEAD, "")
    wanted = INDEX_MARK if kind is JointKind.ADAPTER_SLEEVE else ""
    assert (second.kind, second.graphics) == (kind, wanted)


def test_graphics_pressed_again_are_none(qtbot: QtBot) -> None:
    desk = Desk(qtbot, 21.0)
    desk.start("4")
    desk.hands.layout_page.grid.keys()[0].click()
    for wanted in ("12", ""):
        desk.hands.clubs.graphics["12"].click()
        assert desk.hands.draft.clubs[0].graphics == wanted


# What is said before mixing


def test_a_promise_that_will_be_missed_is_said_before_mixing(qtbot: QtBot) -> None:
    desk = Desk(qtbot, 23.0, box=40.0)
    desk.start("8 irons", epoxy="half-hour", promise="Mon 17:00")
    rack, box = desk.plan().rows
    assert desk.plan().missed == (
        f"Not before {rack[2]}, promised Mon 17:00: the shop cools down when closed. "
        "The box keeps it."
    )
    assert box[2].startswith("Mon") and box[2] < "Mon 17:00"
    assert desk.batches() == []


def test_a_promise_kept_in_the_box_is_not_warned_of(qtbot: QtBot) -> None:
    desk = Desk(qtbot, 23.0, box=40.0)
    desk.start("driver", epoxy="half-hour", promise="Mon 17:00")
    assert desk.plan().missed
    desk.panel.toggle_slot(place_of(desk.session, PlaceKind.BOX).id, 0)
    assert desk.plan().missed == ""


@pytest.mark.parametrize(
    ("celsius", "epoxy", "promise", "reason"),
    [
        (21.0, "day-long", "Fri 17:00", "this epoxy takes so long"),
        (9.0, "day-long", "20 Mar 17:00", "9.0 °C is too cold for this epoxy, which needs 12 °C"),
        (20.5, "half-hour", "Sat 17:00", "20.5 °C is cooler than the 25 °C of its sheet"),
    ],
)
def test_the_reason_stands_beside_it(
    qtbot: QtBot, celsius: float, epoxy: str, promise: str, reason: str
) -> None:
    desk = Desk(qtbot, celsius)
    desk.start("driver", epoxy=epoxy, promise=promise)
    assert f": {reason}. " in desk.plan().missed.replace(NBSP, " ")


def test_a_job_that_is_there_keeps_its_promise_in_view(qtbot: QtBot) -> None:
    desk = Desk(qtbot, 21.0)
    desk.start("driver", epoxy="day-long", promise="Fri 17:00", number="220")
    desk.hands.layout_page.go_on.click()
    desk.start("3 wood", epoxy="day-long", number="220")
    assert "promised 17:00" in desk.plan().missed


def test_s3_rack_and_box_for_a_customer_who_waits(qtbot: QtBot) -> None:
    desk = Desk(qtbot, 21.0, box=40.0, at="2026-03-13T11:00+01:00")
    desk.start("driver sleeve", epoxy="quick")
    (rack, off, _), (box, box_off, _) = desk.plan().rows
    assert (rack, box) == (f"rack at 21{NBSP}°C", f"box at 40{NBSP}°C")
    assert "11:00" < box_off < off < "18:00"


def test_s5_a_hot_shop_offers_three_ways(qtbot: QtBot) -> None:
    desk = Desk(qtbot, 36.0, at="2026-03-12T15:24+01:00")
    desk.start("4-7", epoxy="half-hour")
    plan = desk.plan()
    assert plan.tight == "about 9 min: 2 clubs a batch, or the day-long, or Fri 08:00"
    assert plan.split == "Two batches\n2 + 2"


def test_a_hot_shop_is_split_as_offered(qtbot: QtBot) -> None:
    desk = Desk(qtbot, 36.0)
    desk.start("8 irons", epoxy="half-hour")
    desk.hands.layout_page.box.split.click()
    assert desk.plan().tight == "3 batches, one after the other"
    assert desk.plan().share < 1
    desk.hands.layout_page.go_on.click()
    sizes = [len(js) for js in desk.session.board.snapshot.joints_of_batch.values()]
    assert sizes == [3, 3, 2]


# What is drawn is whole


@pytest.mark.parametrize("large", [True, False])
def test_a_long_name_never_cuts_the_promise(qtbot: QtBot, large: bool, drawn: Drawn) -> None:
    desk = Desk(qtbot, 21.0, large=large)
    desk.start(
        "8 irons", promise="27 Mar 17:00", number="2026-2417",
        customer="Bartholomew Featherstone-Hughes the Elder",
    )  # fmt: skip
    texts = drawn.of(desk.hands.layout_page)
    assert "promised 27 Mar 17:00" in texts
    assert any(text.startswith("Job 2026-2417, Barth") for text in texts)


@pytest.mark.parametrize("light", [True, False])
def test_fourteen_low_chips_show_name_and_slot(
    qtbot: QtBot, light: bool, drawn: Drawn
) -> None:
    desk = Desk(qtbot, 27.0, 40.0, large=False, light=light)
    clubs = "3-PW, driver, 3 wood, hybrid, 54°, 58°, putter"
    desk.start(clubs, epoxy="half-hour", promise="Sat 17:00")
    texts = drawn.of(desk.hands.layout_page)
    for at, name in enumerate(read_clubs(clubs), 1):
        assert name in texts and f"A{at}" in texts
    assert not any("…" in text for text in texts)


@pytest.mark.parametrize("large", [True, False])
@pytest.mark.parametrize("clubs", ["driver", "8 irons", "3-PW, driver, 3 wood, hybrid, 54, 58, PT"])
def test_no_sentence_runs_into_another(
    qtbot: QtBot, large: bool, clubs: str, drawn: Drawn
) -> None:
    desk = Desk(qtbot, 27.0, 40.0, large=large)
    desk.start(clubs, epoxy="half-hour", promise="Sat 17:00")
    box = desk.hands.layout_page.box
    drawn.of(box)
    roles = box._roles
    ripple = box._pad + lettering.cap_height(roles.reading) + (34 if large else 22)
    cap = lettering.cap_height(box._message_style())
    assert box._messages(desk.plan())[0]
    top = {"use by about", desk.plan().use_by}
    keys = set(desk.plan().split.split("\n"))
    below = [(text, y) for text, y in drawn.texts if text not in top | keys]
    assert below and all(ripple <= y - cap and y <= box.height() for _, y in below)
    rows = sorted({round(y) for _, y in below})
    assert all(b - a >= cap + 3 for a, b in pairwise(rows) if b - a > 2)


def test_the_stop_is_said_in_ink_not_in_a_fill(qtbot: QtBot, drawn: Drawn) -> None:
    desk = Desk(qtbot, 21.0)
    desk.start("7")
    desk.hands.layout_page.parts["warm"].click()
    stop = desk.hands.stop
    said = drawn.of(stop)
    assert "Stop" in said and "then feel" in said
    picture = stop.grab().toImage()
    colors = {
        picture.pixelColor(x, y).name()
        for x in range(0, picture.width(), 3) for y in range(0, picture.height(), 3)
    }  # fmt: skip
    assert not colors & {fill.lower() for fill in FILLS.values() if fill != "#F4F1EA"}


# Presses that are meant


def laid_out(qtbot: QtBot) -> Desk:
    desk = Desk(qtbot, 21.0)
    desk.panel.start(None)
    desk.press(ENTER)
    desk.type("driver")
    desk.press(ENTER)
    assert desk.panel.page is desk.panel.mix
    return desk


def test_quick_enters_stop_before_mixed_now(qtbot: QtBot) -> None:
    desk = laid_out(qtbot)
    desk.press(ENTER, ENTER, SPACE)
    desk.look(PAUSE_MS - 1)
    desk.press(ENTER, SPACE)
    assert desk.batches()[0].mixed_us is None
    desk.ms += 1
    desk.press(ENTER)
    assert desk.batches()[0].mixed_us == desk.clock.now()


def test_what_was_typed_ahead_of_the_page_is_not_meant() -> None:
    now = 0
    presses = Presses(lambda: now)
    presses.changed()
    now = 5000  # the program was busy
    assert not presses.meant
    presses.seen()
    assert not presses.meant
    now += PAUSE_MS
    presses.seen()  # painted again
    assert presses.meant


def test_a_held_key_is_one_press(qtbot: QtBot) -> None:
    desk = laid_out(qtbot)
    desk.look()
    for key in (ENTER, SPACE):
        held = QKeyEvent(
            QEvent.Type.KeyPress, key, Qt.KeyboardModifier.NoModifier, "", autorep=True
        )
        QApplication.sendEvent(desk.focus(), held)
    assert desk.batches()[0].mixed_us is None


def test_a_double_press_is_not_all_racked(qtbot: QtBot) -> None:
    desk = laid_out(qtbot)
    desk.look()
    desk.press(SPACE, SPACE)
    (batch,) = desk.batches()
    assert batch.mixed_us is not None and batch.racked_us is None
    desk.look()
    desk.press(SPACE, SPACE)
    (batch,) = desk.batches()
    assert batch.racked_us is not None and batch.looked_us is None
    assert desk.focus() is desk.panel.rack.look


def touch(widget: QWidget, device: QPointingDevice, at: QPoint) -> None:
    QTest.touchEvent(widget, device).press(0, at, widget).commit()
    QTest.touchEvent(widget, device).release(0, at, widget).commit()


def test_two_touches_of_a_glove_anywhere_on_the_panel(qtbot: QtBot) -> None:
    desk = laid_out(qtbot)
    device = QTest.createTouchDevice()
    desk.look()
    touch(desk.panel.mix, device, QPoint(30, 70))  # beside the key
    assert desk.batches()[0].mixed_us is not None
    desk.look()
    page = desk.panel.rack
    touch(page, device, QPoint(page.width() // 2, page.foot_top - 60))  # on the list
    (batch,) = desk.batches()
    assert batch.racked_us is not None and batch.looked_us is None


def test_a_touch_that_misses_a_small_key_does_nothing(qtbot: QtBot) -> None:
    desk = laid_out(qtbot)
    desk.look()
    low = QPoint(10, desk.panel.mix.height() - 10)
    QTest.mouseClick(desk.panel.mix, Qt.MouseButton.LeftButton, pos=low)
    assert desk.batches()[0].mixed_us is None


# Entered afterwards


def glued(qtbot: QtBot, *, afterwards: bool) -> Desk:
    """Eight irons at 15:24, racked at 15:46, the last two glued late; live or after washing."""
    desk = Desk(qtbot, 21.0)
    desk.start("8 irons", epoxy="half-hour")
    desk.hands.layout_page.go_on.click()
    if afterwards:
        desk.clock.advance(minutes=40)
        desk.panel.mix.field.setFocus()
        desk.type("40 min ago")
        desk.press(ENTER)
        desk.panel.rack.late[2].click()
        desk.panel.rack.field.setFocus()
        desk.type("15:46")
        desk.press(ENTER)
    else:
        desk.look()
        desk.press(SPACE)
        desk.clock.advance(minutes=22)
        desk.panel.rack.late[2].click()
        desk.look()
        desk.panel.rack.key.click()
        desk.clock.advance(minutes=18)
    return desk


def test_entered_afterwards_it_is_the_same_record(qtbot: QtBot) -> None:
    live, later = glued(qtbot, afterwards=False), glued(qtbot, afterwards=True)
    assert live.batches() == later.batches()
    assert live.joints() == later.joints()
    assert live.batches()[0].racked_us == parse_iso("2026-03-13T15:46+01:00", "test")
    events = [
        [
            (event.at_us, event.kind, event.subject, event.subject_id, event.data)
            for event in desk.session.store.journal.events()
            if event.kind != "foretold"  # that is said when it is entered
        ]
        for desk in (live, later)
    ]
    assert {kind for _, kind, *_ in events[0]} > {"mixed", "glued late", "all racked"}
    assert events[0] == events[1]


@pytest.mark.parametrize("typed", ["15:20", "tomorrow 08:00", "soon"])
def test_a_time_of_racking_that_cannot_be_is_refused(qtbot: QtBot, typed: str) -> None:
    desk = laid_out(qtbot)
    desk.look()
    desk.press(SPACE)
    desk.clock.advance(minutes=10)
    desk.panel.rack.field.setFocus()
    desk.type(typed)
    desk.press(ENTER)
    assert desk.batches()[0].racked_us is None
    assert desk.panel.rack.row.text.startswith("all racked at: wanted")
