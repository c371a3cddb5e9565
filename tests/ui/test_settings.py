"""Settings: stored when saved, refused in the form, taken back by undo."""

from __future__ import annotations

from typing import Any

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import QDialogButtonBox, QLabel, QWidget

from helpers.session import lay_out_irons, make_session
from helpers.windows import make_window
from rackboard.core.bench import Heating, PlaceKind
from rackboard.core.errors import InputError
from rackboard.core.schedule import DEFAULT_WEEK
from rackboard.core.temperature import Unit
from rackboard.ui import screen_settings
from rackboard.ui.place_fields import PlaceForm, ZoneForm
from rackboard.ui.screen_settings import wall_text
from rackboard.ui.session import Session
from rackboard.ui.settings_dialog import HOURS, NOTICES, RACKS, SCREEN, SHOP, SettingsDialog
from rackboard.ui.shop_fields import read_clock, read_day, read_length
from rackboard.ui.theme import dark_theme, light_theme
from rackboard.ui.wall_size import Viewing


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
    dialog.show_page(HOURS)
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
    again.show_page(HOURS)
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


# Pages


def test_pages_turn_by_keys_and_clicks(qtbot: Any) -> None:
    _, dialog = dialog_of(qtbot)
    assert dialog.stack.currentIndex() == SHOP
    dialog.activateWindow()
    qtbot.waitUntil(dialog.isActiveWindow)
    dialog.pages.setFocus()
    qtbot.keyClick(dialog.pages, Qt.Key.Key_Down)
    assert dialog.stack.currentIndex() == HOURS
    assert dialog.days[0].opening.isVisible()
    for expected in (RACKS, SCREEN, NOTICES, SHOP):
        qtbot.keyClick(dialog, Qt.Key.Key_PageDown, Qt.KeyboardModifier.ControlModifier)
        assert dialog.stack.currentIndex() == expected
    qtbot.keyClick(dialog, Qt.Key.Key_PageUp, Qt.KeyboardModifier.ControlModifier)
    assert dialog.stack.currentIndex() == NOTICES
    at = dialog.pages.visualRect(dialog.pages.lines_model.index(RACKS)).center()
    qtbot.mouseClick(dialog.pages.viewport(), Qt.MouseButton.LeftButton, pos=at)
    assert dialog.racks.isVisible()


def test_tab_goes_from_the_pages_into_the_page(qtbot: Any) -> None:
    _, dialog = dialog_of(qtbot)
    dialog.activateWindow()
    for page, first in ((SHOP, dialog.name), (HOURS, dialog.days[0].opening)):
        dialog.pages.setFocus()
        dialog.show_page(page)
        qtbot.keyClick(dialog.pages, Qt.Key.Key_Tab)
        assert dialog.focusWidget() is first


def test_what_is_wrong_turns_to_its_page(qtbot: Any) -> None:
    _, dialog = dialog_of(qtbot)
    dialog.show_page(SCREEN)
    dialog.days[1].opening.setText("late")
    dialog.accept()
    assert dialog.stack.currentIndex() == HOURS
    dialog.days[1].opening.setText("8")
    dialog.screen_page.distance.setText("far")
    dialog.accept()
    assert dialog.stack.currentIndex() == SCREEN
    assert dialog.message.text().startswith("Viewing distance: Wanted a number of m; this is far")
    assert dialog.screen_page.distance.property("wrong") is True
    dialog.screen_page.distance.setText("50")
    dialog.accept()
    assert "0.5 to 20 m" in dialog.message.text()
    assert dialog.isVisible()


# Racks and zones


def press(qtbot: Any, dialog: SettingsDialog, name: str) -> None:
    qtbot.mouseClick(dialog.racks.buttons[name], Qt.MouseButton.LeftButton)


def rack_lines(dialog: SettingsDialog) -> list[str]:
    return [f"{line.text}: {line.fact}" for line in dialog.racks.places.lines_model.lines()]


def place_form(dialog: SettingsDialog) -> PlaceForm:
    form = dialog.racks.form
    assert isinstance(form, PlaceForm)
    return form


def test_a_rack_is_added_changed_and_removed(qtbot: Any) -> None:
    session, dialog = dialog_of(qtbot)
    dialog.show_page(RACKS)
    assert rack_lines(dialog)[:2] == ["Rack A: A1–A15, 3 × 5, Room",
                                      "Warm box: B1–B4, 1 × 4, Warm box"]  # fmt: skip
    press(qtbot, dialog, "place add")
    form = place_form(dialog)
    assert (form.name.text(), form.prefix.text()) == ("Rack C", "C")
    form.rows.setText("2")
    assert form.slots.text() == "Slots C1 to C10, counted along the rows."
    form.accept()
    assert "Rack C: C1–C10, 2 × 5, Room" in rack_lines(dialog)
    dialog.racks.places.setCurrentIndex(dialog.racks.places.lines_model.index(2))
    press(qtbot, dialog, "place up")
    press(qtbot, dialog, "place up")
    assert rack_lines(dialog)[0].startswith("Rack C")
    press(qtbot, dialog, "place down")
    assert rack_lines(dialog)[1].startswith("Rack C")
    press(qtbot, dialog, "place remove")
    assert not [line for line in rack_lines(dialog) if line.startswith("Rack C")]
    session.undo()
    assert rack_lines(dialog)[1].startswith("Rack C")


def test_a_form_stays_open_with_what_was_refused(qtbot: Any) -> None:
    session, dialog = dialog_of(qtbot)
    lay_out_irons(session, 8)
    seen = events(session)
    press(qtbot, dialog, "place edit")
    form = place_form(dialog)
    form.prefix.setText("B")
    form.accept()
    assert form.message.text() == (
        "Prefix: Wanted letters that no other rack has; this is B, as of Warm box."
    )
    assert form.prefix.property("wrong") is True
    form.prefix.setText("A")
    form.rows.setText("x")
    form.accept()
    assert form.message.text() == "Rows: Wanted a whole number; this is x."
    form.rows.setText("1")
    form.accept()
    assert form.message.text() == (
        "Rack A can't be made so small. Clubs lie in slots that would go: 9 iron 220 (A6),"
        " 10 iron 220 (A7), 11 iron 220 (A8). Carry them elsewhere first."
    )
    assert form.isVisible()
    assert seen == []
    form.reject()


@pytest.mark.parametrize(("anew", "where"), [(False, "A6"), (True, "A7")])
def test_other_columns_ask_what_the_clubs_keep(qtbot: Any, anew: bool, where: str) -> None:
    session, dialog = dialog_of(qtbot)
    lay_out_irons(session, 6)
    press(qtbot, dialog, "place edit")
    form = place_form(dialog)
    assert not form.by_place.isVisible()
    form.columns.setText("6")
    assert form.by_number.isVisible()
    assert form.by_number.text() == "their number, as painted: A6 stays A6"
    assert form.by_place.text() == "their row and column, painted anew: A6 becomes A7"
    if anew:
        qtbot.mouseClick(form.by_place, Qt.MouseButton.LeftButton)
    form.accept()
    snapshot = session.board.snapshot
    assert snapshot.where(max(snapshot.clubs)) == where
    session.undo()
    assert session.board.snapshot.where(max(snapshot.clubs)) == "A6"
    assert rack_lines(dialog)[0] == "Rack A: A1–A15, 3 × 5, Room"


def test_a_place_without_slots_asks_for_no_size(qtbot: Any) -> None:
    session, dialog = dialog_of(qtbot)
    press(qtbot, dialog, "place add")
    form = place_form(dialog)
    form.kind.setCurrentIndex(form.kind.findData(PlaceKind.GRIP_BENCH))
    assert not form.rows.isEnabled()
    form.name.setText("second bench")
    form.accept()
    (made,) = [p for p in session.board.snapshot.places.values() if p.name == "second bench"]
    assert (made.kind, made.prefix, made.rows, made.columns) == (PlaceKind.GRIP_BENCH, "", 0, 0)


def test_zones_are_added_renamed_and_removed(qtbot: Any) -> None:
    session, dialog = dialog_of(qtbot)
    press(qtbot, dialog, "zone add")
    form = dialog.racks.form
    assert isinstance(form, ZoneForm)
    form.name.setText("room")
    form.accept()
    assert form.message.text() == "Name: Wanted a name that no other zone has; this is room."
    form.name.setText("Back room")
    form.accept()
    assert [zone.name for zone in session.board.snapshot.zones.values()][-1] == "Back room"
    press(qtbot, dialog, "zone edit")
    renaming = dialog.racks.form
    assert isinstance(renaming, ZoneForm)
    renaming.name.setText("Workshop")
    renaming.accept()
    dialog.accept()  # the page of hours still knows its zone
    assert next(iter(session.board.snapshot.zones.values())).name == "Workshop"


def test_what_cannot_go_is_said_on_the_page(qtbot: Any) -> None:
    session, dialog = dialog_of(qtbot)
    seen = events(session)
    press(qtbot, dialog, "place remove")
    assert dialog.racks.message.text() == (
        "Rack A can't be removed: the board needs one such place."
    )
    press(qtbot, dialog, "zone remove")
    assert dialog.racks.message.text().startswith("Room can't be removed while places lie in it:")
    assert seen == []


# The screen


def test_the_screens_settings_are_stored_and_told(qtbot: Any) -> None:
    session, dialog = dialog_of(qtbot)
    page = dialog.screen_page
    qtbot.mouseClick(page.contrasts["on"], Qt.MouseButton.LeftButton)
    qtbot.mouseClick(page.still, Qt.MouseButton.LeftButton)
    qtbot.mouseClick(page.languages["de"], Qt.MouseButton.LeftButton)
    page.distance.setText("4,5")
    page.pitch.setText("0.25 mm")
    told: list[Any] = []
    for signal in (dialog.contrast_chosen, dialog.motion_chosen, dialog.language_chosen,
                   dialog.viewing_chosen, dialog.theme_chosen):  # fmt: skip
        signal.connect(told.append)
    dialog.accept()
    assert told == ["on", "de", True, (4.5, 0.25)]
    settings = session.board.snapshot.settings
    assert settings["high contrast"] == "on"
    assert settings["reduced motion"] is True
    assert settings["language"] == "de"
    assert (settings["wall distance m"], settings["pixel pitch mm"]) == (4.5, 0.25)
    labels = [session.undo() for _ in range(4)]
    assert labels == ["viewing distance", "language", "reduced motion", "high contrast"]
    again = SettingsDialog(session, make_window(qtbot), theme=dark_theme())
    assert again.screen_page.contrasts[""].isChecked()
    assert again.screen_page.distance.text() == "3"


def test_the_page_says_what_the_wall_will_show(qtbot: Any) -> None:
    assert wall_text(Viewing(), 1920, 1080, 1.0) == "At 3 m: words of 20 arcmin, 15 tiles a page."
    assert wall_text(Viewing(6.0), 1920, 1080, 1.0) == (
        "At 6 m the words would be 14 arcmin: 4 tiles a page."
        " 20 are wanted, 16 the least that can be read."
    )
    _, dialog = dialog_of(qtbot)
    page = dialog.screen_page
    page.distance.setText("12")
    assert page.reach.text().startswith("At 12 m the words would be ")
    page.distance.setText("far")
    assert page.reach.text() == ""


def test_a_pitch_left_empty_follows_the_screen(
    qtbot: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    _, without = dialog_of(qtbot)
    assert without.screen_page.pitch.text() == "0.2768"  # this screen's size is made up
    monkeypatch.setattr(screen_settings, "screen_pitch_mm", lambda _: 0.31)
    session, dialog = dialog_of(qtbot)
    page = dialog.screen_page
    assert page.pitch.text() == ""
    assert page.pitch.placeholderText() == "0.31"
    assert page.viewing() == (3.0, 0.31)
    page.distance.setText("2")
    dialog.accept()
    assert session.board.snapshot.settings["pixel pitch mm"] is None
    assert session.board.snapshot.settings["wall distance m"] == 2.0


@pytest.mark.parametrize("text", ["3", "3.0", "3,0", " 3 m", "3M"])
def test_lengths_as_people_type_them(text: str) -> None:
    assert read_length(text, "m", "x") == 3.0


@pytest.mark.parametrize("text", ["", "m", "-3", "3 mm", "3 ft", "1e3"])
def test_what_is_no_length_is_refused(text: str) -> None:
    with pytest.raises(InputError, match="a number of m"):
        read_length(text, "m", "x")


@pytest.mark.parametrize("size", [(1280, 800), (1920, 1080)])
@pytest.mark.parametrize("theme", [light_theme(), dark_theme(high=True)], ids=["light", "high"])
def test_no_page_cuts_a_text(qtbot: Any, size: tuple[int, int], theme: Any) -> None:
    session, _ = make_session()
    dialog = SettingsDialog(session, make_window(qtbot, *size), theme=theme)
    dialog.show()
    for page in (SHOP, HOURS, RACKS, SCREEN, NOTICES):
        dialog.show_page(page)
        for label in dialog.stack.currentWidget().findChildren(QLabel):
            if label.isVisible() and not label.wordWrap():
                assert label.width() >= label.sizeHint().width(), label.text()
        inner = dialog.stack.currentWidget().findChild(QWidget, "page")
        assert inner.width() <= dialog.stack.width(), page
