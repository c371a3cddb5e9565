"""Settings: stored when saved, refused in the form, taken back by undo."""

from __future__ import annotations

from typing import Any

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import QDialogButtonBox

from helpers.session import make_session
from helpers.windows import make_window
from rackboard.core.bench import Heating
from rackboard.core.errors import InputError
from rackboard.core.schedule import DEFAULT_WEEK
from rackboard.core.temperature import Unit
from rackboard.ui.session import Session
from rackboard.ui.settings_dialog import SettingsDialog
from rackboard.ui.shop_fields import read_clock, read_day
from rackboard.ui.theme import dark_theme, light_theme


def dialog_of(qtbot: Any) -> tuple[Session, SettingsDialog]:
    session, _ = make_session()
    dialog = SettingsDialog(session, make_window(qtbot), theme=dark_theme())
    dialog.show()
    return session, dialog


def events(session: Session) -> list[Any]:
    seen: list[Any] = []
    session.acted.connect(seen.append)
    return seen


@pytest.mark.parametrize(
    ("text", "minutes"),
    [("08:00", 480), ("8", 480), ("0730", 450), ("7.30", 450), (" 17:05 ", 1025), ("24:00", 1440),
     ("0:00", 0), ("8 h", 480)],
)  # fmt: skip
def test_times_of_day_as_people_type_them(text: str, minutes: int) -> None:
    assert read_clock(text, "x") == minutes


@pytest.mark.parametrize("text", ["", "noon", "25", "8:60", "24:01", "-1", "8:5"])
def test_what_is_no_time_of_day_is_refused(text: str) -> None:
    with pytest.raises(InputError, match="time of day"):
        read_clock(text, "x")


def test_a_day_does_not_close_before_it_opens() -> None:
    assert read_day("9", "17:30", False, "Monday") == (540, 1050)
    assert read_day("nonsense", "", True, "Sunday") is None
    with pytest.raises(InputError, match=r"Monday.*closing hour after"):
        read_day("18:00", "08:00", False, "Monday")


def test_saving_unchanged_writes_nothing(qtbot: Any) -> None:
    session, dialog = dialog_of(qtbot)
    seen = events(session)
    dialog.accept()
    assert seen == []
    assert not session.board.snapshot.hours_typed


def test_the_assumed_hours_are_said_until_they_are_typed(qtbot: Any) -> None:
    session, dialog = dialog_of(qtbot)
    assert dialog.until_typed.isVisible()
    assert "Monday to Friday 08:00–18:00 until you type them" in dialog.until_typed.text()
    assert dialog.days[5].closed.isChecked()
    assert not dialog.days[5].opening.isEnabled()
    qtbot.mouseClick(dialog.days[5].closed, Qt.MouseButton.LeftButton)
    dialog.days[5].opening.setText("9")
    dialog.days[5].closing.setText("13:00")
    dialog.accept()
    assert session.board.snapshot.hours.week == (*DEFAULT_WEEK[:5], (540, 780), None)
    assert session.board.snapshot.hours_typed
    assert session.bench.hours.week[5] == (540, 780)
    again = SettingsDialog(session, make_window(qtbot), theme=dark_theme())
    again.show()
    assert not again.until_typed.isVisible()
    assert again.days[5].opening.text() == "09:00"
    session.undo()
    assert session.board.snapshot.hours.week == DEFAULT_WEEK


def test_heating_is_stored_for_its_zone(qtbot: Any) -> None:
    session, dialog = dialog_of(qtbot)
    room = dialog.heatings[0]
    assert not room.on.isEnabled()
    room.known.setCurrentIndex(1)
    room.on.setText("6:30")
    room.off.setText("19")
    room.setback.setText("14,5")
    dialog.accept()
    zones = list(session.board.snapshot.zones.values())
    assert zones[0].heating == Heating(390, 1140, 14_500)
    assert zones[1].heating is None
    again = SettingsDialog(session, make_window(qtbot), theme=dark_theme())
    again.heatings[0].known.setCurrentIndex(0)
    again.accept()
    assert next(iter(session.board.snapshot.zones.values())).heating is None


def test_unit_name_initials_and_theme_are_stored(qtbot: Any) -> None:
    session, dialog = dialog_of(qtbot)
    dialog.name.setText(" Tallow Lane bench ")
    dialog.initials.setText("KT")
    qtbot.mouseClick(dialog.units["F"], Qt.MouseButton.LeftButton)
    qtbot.mouseClick(dialog.themes["light"], Qt.MouseButton.LeftButton)
    with qtbot.waitSignal(dialog.theme_chosen) as chosen:
        dialog.accept()
    assert chosen.args == ["light"]
    settings = session.board.snapshot.settings
    assert settings["shop name"] == "Tallow Lane bench"
    assert settings["theme"] == "light"
    assert session.unit is Unit.F
    assert session.bench.by == "KT"
    assert [person.initials for person in session.store.shop.persons()] == ["KT"]
    assert session.undo() == "theme"
    assert session.undo() == "temperature unit"
    assert session.unit is Unit.C
    assert session.undo() == "shop name"
    assert "shop name" not in session.board.snapshot.settings
    assert session.bench.by == "KT"  # who is there is no deed to take back


def test_nobody_may_be_at_the_bench(qtbot: Any) -> None:
    session, dialog = dialog_of(qtbot)
    dialog.initials.setText("KT")
    dialog.accept()
    again = SettingsDialog(session, make_window(qtbot), theme=dark_theme())
    assert again.initials.text() == "KT"
    again.initials.setText("")
    again.accept()
    assert session.bench.by is None


@pytest.mark.parametrize(
    ("opening", "closing", "held"),
    [("late", "18:00", "time of day"), ("18:00", "08:00", "closing hour after")],
)
def test_what_cannot_be_taken_stays_in_the_form(
    qtbot: Any, opening: str, closing: str, held: str
) -> None:
    session, dialog = dialog_of(qtbot)
    seen = events(session)
    dialog.name.setText("not yet")
    dialog.days[1].opening.setText(opening)
    dialog.days[1].closing.setText(closing)
    dialog.accept()
    assert dialog.isVisible()
    assert dialog.message.text().startswith("Tuesday: Wanted ")
    assert held in dialog.message.text()
    assert dialog.days[1].opening.property("wrong") is True
    assert dialog.focusWidget() is dialog.days[1].opening
    assert seen == []
    assert "shop name" not in session.board.snapshot.settings


def test_a_setback_outside_every_thermometer_is_refused(qtbot: Any) -> None:
    session, dialog = dialog_of(qtbot)
    dialog.heatings[0].known.setCurrentIndex(1)
    dialog.heatings[0].setback.setText("160")
    dialog.accept()
    assert dialog.message.text().startswith("Room: Wanted")
    assert next(iter(session.board.snapshot.zones.values())).heating is None


def test_escape_changes_nothing(qtbot: Any) -> None:
    session, dialog = dialog_of(qtbot)
    seen = events(session)
    dialog.name.setText("never")
    with qtbot.waitSignal(dialog.finished):
        qtbot.keyClick(dialog, Qt.Key.Key_Escape)
    assert seen == []


def test_the_buttons_stand_in_a_button_box(qtbot: Any) -> None:
    _, dialog = dialog_of(qtbot)
    role = QDialogButtonBox.ButtonRole
    assert dialog.buttons.buttonRole(dialog.saving) is role.AcceptRole
    assert dialog.saving.isDefault()


def test_an_open_dialog_follows_the_applications_scheme(qtbot: Any, qapp: Any) -> None:
    before = qapp.palette()
    session, _ = make_session()
    try:
        qapp.setPalette(dark_theme().palette())
        dialog = SettingsDialog(session, make_window(qtbot))
        dialog.show()
        assert dialog.theme.dark
        qapp.setPalette(light_theme().palette())
        # Qt itself sends this only while the application's own loop runs.
        qapp.sendEvent(dialog, QEvent(QEvent.Type.ApplicationPaletteChange))
        assert not dialog.theme.dark
        assert dialog.grab().toImage().pixelColor(4, 4) == light_theme().bg
    finally:
        qapp.setPalette(before)
