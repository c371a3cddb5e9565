"""The page of notices and sounds: stored when saved, refused in the form, states said."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from helpers.session import make_session
from helpers.shop import FakeClock
from helpers.windows import make_window
from rackboard.core.errors import InputError
from rackboard.services.alerts import Alerts
from rackboard.services.teller import Done, Message
from rackboard.ui.autostart import DesktopEntry
from rackboard.ui.awake import Awake
from rackboard.ui.courier_settings import (
    KEEP_RUNNING,
    NOTICES,
    QUIET,
    SOUND,
    VOLUME,
    CourierSettings,
)
from rackboard.ui.couriers import Chain
from rackboard.ui.dialog import Dialog
from rackboard.ui.session import Session


class Courier:
    def __init__(self, name: str) -> None:
        self.name = name
        self.reason: str | None = None
        self.messages: list[Message] = []

    def deliver(self, message: Message, done: Done) -> None:
        self.messages.append(message)
        done(self.reason)


class FakeTray:
    is_there = True


class FakeCouriers:
    """What the page reads of the couriers."""

    def __init__(self, session: Session, folder: Path) -> None:
        self.notices, self.sound = Courier("Desktop notices"), Courier("Sound")
        self.chain = Chain(
            session.clock, lambda: session.board.snapshot.settings,
            [(self.notices, NOTICES), (self.sound, SOUND)],
        )  # fmt: skip
        self.tray = FakeTray()
        self.awake = Awake(None, lambda parent, lost: [])
        self.autostart = DesktopEntry(folder / "autostart", ["rackboard"])


class Desk:
    def __init__(self, qtbot: QtBot, folder: Path) -> None:
        self.qtbot = qtbot
        self.session, self.clock = make_session()
        self.couriers: Any = FakeCouriers(self.session, folder)
        self.session.alerts = Alerts(
            self.session.store, self.clock, self.couriers.chain.couriers
        )
        self.open()

    def open(self) -> CourierSettings:
        self.dialog = Dialog(make_window(self.qtbot))
        self.page = CourierSettings(self.session, self.dialog, self.couriers)
        self.dialog.frame("Settings").addWidget(self.page)
        self.dialog.show()
        return self.page

    def save(self) -> None:
        for act in self.page.acts():
            changes = act()
            if changes:
                self.session.take(changes)

    @property
    def settings(self) -> dict[str, object]:
        return self.session.board.snapshot.settings

    def states(self) -> list[str]:
        return [label.text() for _, label in self.page._states]


@pytest.fixture
def desk(qtbot: QtBot, tmp_path: Path) -> Iterator[Desk]:
    made = Desk(qtbot, tmp_path)
    yield made
    made.couriers.awake.close()


def test_it_opens_with_everything_on_and_login_off(desk: Desk) -> None:
    page = desk.page
    assert page.notices.isChecked()
    assert page.sounds.isChecked()
    assert page.volume.text() == "80"
    assert not page.is_quiet.isChecked()
    assert page.stays.isChecked()
    assert not page.at_login.isChecked()
    assert page.acts() == []


def test_what_is_changed_is_stored_in_one_act_and_taken_back(desk: Desk) -> None:
    page = desk.page
    page.notices.setChecked(False)
    page.volume.setText("35")
    page.is_quiet.setChecked(True)
    page.quiet_from.setText("20")
    page.quiet_to.setText("6:30")
    page.stays.setChecked(False)
    desk.save()
    wanted = {NOTICES: False, VOLUME: 35, QUIET: [1200, 390], KEEP_RUNNING: False}
    assert {key: desk.settings.get(key) for key in wanted} == wanted
    assert SOUND not in desk.settings
    again = desk.open()
    assert again.acts() == []
    assert (again.quiet_from.text(), again.quiet_to.text()) == ("20:00", "06:30")
    again.is_quiet.setChecked(False)
    desk.save()
    assert desk.settings.get(QUIET) is None
    desk.session.undo()
    desk.session.undo()
    assert NOTICES not in desk.settings or desk.settings[NOTICES] is None


def test_start_at_login_is_the_systems(desk: Desk) -> None:
    desk.page.at_login.setChecked(True)
    desk.save()
    assert desk.couriers.autostart.is_on
    assert desk.open().at_login.isChecked()
    desk.page.at_login.setChecked(False)
    desk.save()
    assert not desk.couriers.autostart.is_on


@pytest.mark.parametrize(
    ("volume", "begin", "end", "where"),
    [("101", "21", "7", "Volume"), ("loud", "21", "7", "Volume"), ("", "21", "7", "Volume"),
     ("80", "late", "7", "Quiet hours"), ("80", "21", "25", "Quiet hours"),
     ("80", "7", "7:00", "Quiet hours")],
)  # fmt: skip
def test_what_cannot_be_taken_is_refused_where_it_stands(
    desk: Desk, volume: str, begin: str, end: str, where: str
) -> None:
    page = desk.page
    page.is_quiet.setChecked(True)
    page.volume.setText(volume)
    page.quiet_from.setText(begin)
    page.quiet_to.setText(end)
    with pytest.raises(InputError) as refused:
        page.acts()
    assert str(refused.value.where) == where
    assert where in page.fields()


def test_what_is_switched_off_is_not_read(desk: Desk) -> None:
    desk.page.sounds.setChecked(False)
    desk.page.volume.setText("loud")
    desk.page.quiet_from.setText("late")
    assert not desk.page.volume.isEnabled()
    assert not desk.page.quiet_from.isEnabled()
    desk.save()
    assert desk.settings[SOUND] is False


def test_a_test_is_sent_and_the_lines_say_how_it_went(desk: Desk) -> None:
    assert desk.states() == ["Desktop notices: nothing sent yet", "Sound: nothing sent yet"]
    desk.couriers.sound.reason = "no player was found"
    desk.page.testing.click()
    assert [m.key for m in desk.couriers.notices.messages] == ["test"]
    assert desk.states() == [
        "Desktop notices: worked at 15:24",
        "Sound: not working since 15:24 (no player was found)",
    ]
    assert isinstance(desk.clock, FakeClock)
    desk.clock.advance(minutes=6)
    desk.page.testing.click()
    assert desk.states() == [
        "Desktop notices: worked at 15:30",
        "Sound: not working since 15:24 (no player was found)",
    ]
    desk.couriers.sound.reason = None
    desk.page.testing.click()
    assert desk.states()[1] == "Sound: worked at 15:30"


def test_a_courier_that_is_off_says_so(desk: Desk) -> None:
    desk.page.notices.setChecked(False)
    desk.save()
    desk.page.testing.click()
    assert desk.couriers.notices.messages == []
    assert desk.states()[0] == "Desktop notices: switched off"


def test_a_desktop_without_a_tray_and_a_computer_that_sleeps_are_said(desk: Desk) -> None:
    assert desk.page.no_tray.isHidden()
    assert desk.page.awake.isHidden()
    desk.couriers.tray.is_there = False
    desk.couriers.awake.hold(True)
    assert "may go to sleep" in desk.page.awake.text()
    assert not desk.page.awake.isHidden()
    page = desk.open()
    assert not page.no_tray.isHidden()
    assert "may go to sleep" in page.awake.text()


def test_without_couriers_it_opens_too(qtbot: QtBot) -> None:
    session, _ = make_session()
    dialog = Dialog(make_window(qtbot))
    page = CourierSettings(session, dialog)
    dialog.frame("Settings").addWidget(page)
    page.send_test()
    assert not page.at_login.isEnabled()
    assert page.acts() == []


def test_every_field_has_a_name(desk: Desk) -> None:
    fields = [*desk.page.fields().values(), desk.page.quiet_to]
    assert [f.accessibleName() for f in fields] == ["Volume, per cent", "Quiet from", "Quiet to"]
    assert all(label.text() for label in desk.page.findChildren(QLabel) if label.isVisible())
