"""The epoxy's form and shelf: what is typed, assumed, asked about, refused, kept and undone."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialogButtonBox

from helpers.session import make_session, type_temperature
from helpers.windows import make_window
from rackboard.core.epoxy import FurtherTime, Range, Sheet
from rackboard.core.sheet_toml import sheet_from_toml
from rackboard.core.temperature import Unit
from rackboard.services.founding import TYPICAL
from rackboard.ui.epoxy_form import WAIT_MS, EpoxyForm
from rackboard.ui.epoxy_shelf import EpoxyShelf
from rackboard.ui.epoxy_view import expected_text, late_text, use_by_text
from rackboard.ui.session import Session
from rackboard.ui.sheet_fields import FurtherEntry, SheetEntry, entry_of, read_entry
from rackboard.ui.theme import dark_theme, light_theme

DAY_LONG = TYPICAL[2]


def form_of(qtbot: Any, sheet: Sheet | None = DAY_LONG) -> tuple[Session, EpoxyForm]:
    session, _ = make_session()
    form = EpoxyForm(session, make_window(qtbot), theme=dark_theme(), sheet=sheet)
    form.show()
    return session, form


def put(form: EpoxyForm, **texts: str) -> None:
    for name, text in texts.items():
        form.facts.fields[name].setText(text)
    form.recompute()


def names(session: Session, retired: bool = True) -> list[str]:
    return [epoxy.sheet.name for epoxy in session.store.shop.epoxies(retired=retired)]


# --- fields and sheet, both ways -------------------------------------------------------------


@pytest.mark.parametrize("unit", list(Unit))
@pytest.mark.parametrize("sheet", TYPICAL, ids=lambda sheet: sheet.name)
def test_a_sheet_comes_back_from_its_fields_as_it_was(sheet: Sheet, unit: Unit) -> None:
    assert read_entry(entry_of(sheet, unit), unit).sheet == sheet


def test_every_fact_comes_back() -> None:
    sheet = replace(
        DAY_LONG, no_cure_below_minimum=True, activation_energy_kj_per_mol=62.5,
        maximum_cure_temperature_c=70.0,
        further_times=(
            FurtherTime("full_cure", 50.0, Range(2.5, 3.3)),
            FurtherTime("working_life", 15.0, Range(1.9, 2.3)),
        ),
    )  # fmt: skip
    found = read_entry(entry_of(sheet, Unit.C), Unit.C)
    assert found.errors == {}
    assert found.sheet == sheet


def test_ranges_and_ratios_are_read_as_people_type_them() -> None:
    entry = SheetEntry(
        name="a", life_short="45 to 60", handling_short="6-8", full_short="24", volume="2:1",
        mass="100 / 83,5", density="1,12", minimum="12 °C",
    )  # fmt: skip
    sheet = read_entry(entry, Unit.C).sheet
    assert sheet is not None
    assert sheet.working_life_min == Range(45, 60)
    assert sheet.handling_time_h == Range(6, 8)
    assert sheet.full_cure_time_h == Range(24, 24)
    assert sheet.mix_ratio_by_volume == (2, 1)
    assert sheet.mix_ratio_by_mass == (100, 83.5)
    assert sheet.density_g_per_ml == 1.12
    assert sheet.minimum_cure_temperature_c == 12


def test_a_shop_in_fahrenheit_types_fahrenheit() -> None:
    entry = replace(entry_of(DAY_LONG, Unit.F), reference="77")
    assert entry.minimum == "53.6"
    sheet = read_entry(entry, Unit.F).sheet
    assert sheet is not None
    assert sheet.reference_temperature_c == 25
    hints = read_entry(replace(entry, reference="", minimum=""), Unit.F).hints
    assert "77 °F" in hints["reference_temperature_c"].replace("\N{NO-BREAK SPACE}", " ")
    assert "59 °F" in hints["minimum_cure_temperature_c"].replace("\N{NO-BREAK SPACE}", " ")


def test_refusals_in_a_fahrenheit_shop_name_fahrenheit() -> None:
    """Whatever the checks below the window say, the form speaks the shop's unit."""
    entry = entry_of(DAY_LONG, Unit.F)
    misfit = (FurtherEntry("full_cure", "6", "104"), FurtherEntry("full_cure", "12", "104"))
    for wrong in (
        replace(entry, minimum="86"),
        replace(entry, maximum="50"),
        replace(entry, reference="700"),
        replace(entry, reference="cold"),
        replace(entry, further=misfit),
        replace(entry, further=(FurtherEntry("full_cure", "2", "900"),)),
    ):
        found = read_entry(wrong, Unit.F)
        (said,) = found.errors.values()
        shown = said.replace("\N{NO-BREAK SPACE}", " ")
        assert "°F" in shown, shown
        assert "°C" not in shown.replace("21.5 °C or 70 °F", ""), shown


REFUSED = [
    # what is typed, the key at which it is refused, what the reason holds
    ({"name": " "}, "name", "short name"),
    ({"life_short": "", "life_long": ""}, "working_life_min", "sets in"),
    ({"full_short": "", "full_long": ""}, "full_cure_time_h", "full cure"),
    ({"full_short": "a day"}, "full_cure_time_h", "“a day”"),
    ({"full_short": "-3"}, "full_cure_time_h", "“-3”"),
    ({"full_short": "30"}, "full_cure_time_h", "shorter time first"),
    ({"handling_short": "17", "handling_long": "20"}, "handling_time_h", "same time"),
    ({"handling_short": "8", "handling_long": "30"}, "handling_time_h", "at most"),
    ({"minimum": "30"}, "minimum_cure_temperature_c", "at most 25"),
    ({"maximum": "20"}, "minimum_cure_temperature_c", "above 25"),
    ({"reference": "hot"}, "reference_temperature_c", "hot"),
    ({"reference": "300"}, "reference_temperature_c", "300"),
    ({"volume": "1"}, "mix_ratio_by_volume", "two parts"),
    ({"mass": "100 : 0"}, "mix_ratio_by_mass", "two parts"),
    ({"energy": "900"}, "activation_energy_kj_per_mol", "30 to 120"),
    ({"shear": "strong"}, "lap_shear_mpa", "strong"),
]


@pytest.mark.parametrize(("texts", "key", "held"), REFUSED)
def test_what_cannot_be_taken_is_refused_at_its_field(
    texts: dict[str, str], key: str, held: str
) -> None:
    found = read_entry(replace(entry_of(DAY_LONG, Unit.C), **texts), Unit.C)
    assert found.sheet is None
    assert list(found.errors) == [key]
    assert held in found.errors[key].replace("\N{NO-BREAK SPACE}", " ")


def test_further_times_that_no_epoxy_can_have_are_refused_at_their_line() -> None:
    entry = replace(
        entry_of(DAY_LONG, Unit.C),
        energy="58",
        further=(FurtherEntry("full_cure", "6,7", "40"), FurtherEntry("full_cure", "20", "40")),
    )
    errors = read_entry(entry, Unit.C).errors
    assert list(errors) == ["further_times 2"]
    assert "to hit 20 h at 40 °C" in errors["further_times 2"]
    alone = replace(entry, energy="", further=entry.further[1:])
    assert "kJ/mol from the times at other temperatures" in str(read_entry(alone, Unit.C).errors)


def test_a_blank_pack_is_taken_with_the_assumptions_named() -> None:
    entry = SheetEntry(name="pack", life_short="5", full_short="24")
    found = read_entry(entry, Unit.C)
    assert found.sheet is not None
    assert found.sheet.handling_time_h is None
    said = {key: text.replace("\N{NO-BREAK SPACE}", " ") for key, text in found.hints.items()}
    assert "25 °C" in said["reference_temperature_c"]
    assert "from 15 °C up to 40 °C" in said["minimum_cure_temperature_c"]
    assert "until it is safe to hit" in said["handling_time_h"]
    assert "58" in said["activation_energy_kj_per_mol"]


# --- figures ---------------------------------------------------------------------------------


def test_a_late_bound_is_rounded_up_and_a_limit_down() -> None:
    assert late_text(8.71) == "8.8"
    assert late_text(26.01) == "27"
    assert late_text(8.0) == "8.0"
    assert late_text(None) == "no time"
    assert expected_text(8.74) == "8.7"
    assert use_by_text(0.699) == "use by 41 min"
    assert use_by_text(2.39) == "use by 2.3 h"


def test_the_picture_names_the_late_bound_not_before(qtbot: Any) -> None:
    _, form = form_of(qtbot)
    view = form.plot.view
    assert view is not None
    at = view.at_reference
    # Computed by the model for this sheet, 25 °C and u 1 °C; the label's own 24 h is no bound.
    assert at.full_expected_h == pytest.approx(21.0, abs=0.01)
    assert at.full_late_h == pytest.approx(26.31, abs=0.02)
    assert "At 25 °C: off the rack not before 8.8, probably 7.0" in (
        form.plot.accessibleDescription()
    )
    assert "to hit not before 27, probably 21" in form.plot.accessibleDescription()
    assert [column[0] for column in view.columns] == ["10", "15", "20", "25", "30", "40"]


def test_the_room_has_a_curve_of_its_own_while_its_temperature_is_fresh(qtbot: Any) -> None:
    session, clock = make_session()
    type_temperature(session, 17.4)
    window = make_window(qtbot)
    form = EpoxyForm(session, window, theme=dark_theme(), sheet=DAY_LONG)
    assert form.plot.view is not None
    companions = [c.name.replace("\N{NO-BREAK SPACE}", " ") for c in form.plot.view.companions]
    assert companions == ["35 °C", "17.4 °C, the room now"]
    clock.advance(hours=5)
    form.recompute()
    assert len(form.plot.view.companions) == 1


# --- the form --------------------------------------------------------------------------------


def test_typing_is_followed_after_a_pause(qtbot: Any) -> None:
    _, form = form_of(qtbot)
    before = form.plot.view
    form.facts.fields["full_long"].setText("30")
    assert form.plot.view is before
    qtbot.waitUntil(lambda: form.plot.view is not before, timeout=20 * WAIT_MS)
    assert "30 h to hit" in form.facts.title.text()


def test_an_error_stands_under_its_field_and_nothing_is_saved(qtbot: Any) -> None:
    session, form = form_of(qtbot)
    put(form, handling_short="17", handling_long="20")
    assert "same time" in form.facts.hint_of("handling_time_h")
    assert form.facts.fields["handling_short"].property("wrong") is True
    assert form.facts.fields["full_short"].property("wrong") is False
    assert not form.save.isEnabled()
    assert form.plot.view is None
    before = names(session)
    form.accept()
    assert names(session) == before
    assert form.isVisible()


def test_sets_in_typed_as_handling_time_is_asked_about(qtbot: Any) -> None:
    session, form = form_of(qtbot)
    put(form, life_short="60", life_long="", handling_short="1", handling_long="1,5")
    assert form.asked
    assert form.facts.question.isVisible()
    assert "working life" in form.facts.question_text.text()
    assert not form.save.isEnabled()
    form.accept()
    assert form.isVisible()
    qtbot.mouseClick(form.facts.right, Qt.MouseButton.LeftButton)
    assert not form.facts.question.isVisible()
    put(form, handling_long="1,2")  # another figure: asked again
    assert form.asked
    qtbot.mouseClick(form.facts.right, Qt.MouseButton.LeftButton)
    form.accept()
    assert session.store.shop.epoxies()[-1].sheet.handling_time_h == Range(1, 1.2)


def test_an_empty_form_asks_calmly(qtbot: Any) -> None:
    _, form = form_of(qtbot, None)
    assert not form.save.isEnabled()
    assert form.facts.fields["name"].property("wrong") is False
    assert form.facts.hint_of("name")
    assert form.plot.accessibleDescription().startswith("No curve yet.")


def test_a_further_time_gives_the_energy(qtbot: Any) -> None:
    _, form = form_of(qtbot, replace(DAY_LONG, maximum_cure_temperature_c=60.0))
    qtbot.mouseClick(form.facts.adding, Qt.MouseButton.LeftButton)
    line = form.facts.further[0]
    form.recompute()
    assert not form.save.isEnabled()
    line.time.setText("3")
    line.temperature.setText("50")
    form.recompute()
    assert form.read.sheet is not None
    assert form.read.sheet.further_times == (FurtherTime("full_cure", 50.0, Range(3, 3)),)
    assert "kJ/mol" in form.facts.why.text()
    qtbot.mouseClick(line.remove, Qt.MouseButton.LeftButton)
    form.recompute()
    assert form.read.sheet.further_times == ()


def test_saving_keeps_the_epoxy_and_undo_takes_it_back(qtbot: Any) -> None:
    session, _ = make_session()
    epoxy = session.store.shop.epoxies()[2]
    form = EpoxyForm(session, make_window(qtbot), theme=dark_theme(), epoxy=epoxy)
    form.show()
    assert form.facts.said.text().startswith("Typical of its class")
    put(form, full_long="28", name="ours")
    form.accept()
    kept = session.store.shop.epoxy(epoxy.id)
    assert kept is not None
    assert (kept.sheet.name, kept.sheet.full_cure_time_h, kept.typical) == ("ours", (18, 28), False)
    assert session.undo() == "save ours"
    assert session.store.shop.epoxy(epoxy.id) == epoxy


def test_escape_leaves_everything_as_it_was(qtbot: Any) -> None:
    session, form = form_of(qtbot)
    put(form, name="never")
    before = names(session)
    with qtbot.waitSignal(form.finished):
        qtbot.keyClick(form, Qt.Key.Key_Escape)
    assert names(session) == before


def test_a_sheet_goes_out_as_toml_and_comes_back_through_the_form(
    qtbot: Any, tmp_path: Path
) -> None:
    _, form = form_of(qtbot)
    put(form, name="out and back", full_long="26")
    form.facts.forbids.setChecked(True)
    form.export_to(tmp_path / "sheet")
    written = (tmp_path / "sheet.toml").read_text(encoding="utf-8")
    assert sheet_from_toml(written, "x") == form.read.sheet
    _, second = form_of(qtbot, None)
    second.import_from(tmp_path / "sheet.toml")
    assert second.read.sheet == form.read.sheet
    assert second.facts.forbids.isChecked()
    second.accept()
    assert second.session.store.shop.epoxies()[-1].sheet == form.read.sheet


def test_a_file_that_is_no_sheet_changes_nothing_and_is_named(qtbot: Any, tmp_path: Path) -> None:
    _, form = form_of(qtbot)
    (tmp_path / "bad.toml").write_text("name = 'x'\nfull_cure_h = 3\n")
    form.import_from(tmp_path / "bad.toml")
    assert "bad.toml" in form.message.text()
    assert "full_cure_h" in form.message.text()
    form.import_from(tmp_path / "none.toml")
    assert "no such file" in form.message.text()
    assert form.facts.fields["name"].text() == "day-long"
    form.export_to(tmp_path / "no folder" / "x.toml")
    assert form.message.text()


def test_the_keyboard_goes_through_the_form_in_reading_order(qtbot: Any) -> None:
    _, form = form_of(qtbot)
    fields = form.facts.fields
    fields["name"].setFocus()
    seen = ["name"]
    for _ in range(9):
        qtbot.keyClick(form.focusWidget(), Qt.Key.Key_Tab)
        seen += [name for name, field in fields.items() if field is form.focusWidget()]
    assert seen == [
        "name", "reference", "life_short", "life_long", "life_mass", "handling_short",
        "handling_long", "full_short", "full_long", "minimum",
    ]  # fmt: skip


def test_it_takes_another_theme_while_open(qtbot: Any) -> None:
    _, form = form_of(qtbot)
    form.show_theme(light_theme())
    image = form.grab().toImage()
    assert image.pixelColor(2, 2) == light_theme().bg


# --- the shelf -------------------------------------------------------------------------------


def shelf_of(qtbot: Any) -> tuple[Session, EpoxyShelf]:
    session, _ = make_session()
    shelf = EpoxyShelf(session, make_window(qtbot), theme=dark_theme())
    shelf.show()
    return session, shelf


def test_the_shelf_names_epoxies_by_both_clocks(qtbot: Any) -> None:
    _, shelf = shelf_of(qtbot)
    said = [shelf.model.data(shelf.model.index(row)) for row in range(shelf.model.rowCount())]
    assert said[2] == (
        "day-long, 60 min to use, 24 h to hit, typical of its class; type in your own product's"
        " sheet"
    )
    assert shelf.buttons.button(QDialogButtonBox.StandardButton.NoButton) is None
    assert [button.text() for button in shelf.buttons.buttons()] == ["Close"]


def test_retiring_and_bringing_back(qtbot: Any) -> None:
    session, shelf = shelf_of(qtbot)
    qtbot.mouseClick(shelf.retiring, Qt.MouseButton.LeftButton)
    assert "quick" not in names(session, retired=False)
    assert shelf.model.rowCount() == 3
    qtbot.mouseClick(shelf.show_retired, Qt.MouseButton.LeftButton)
    assert shelf.model.rowCount() == 4
    shelf.select(3)
    assert shelf.retiring.text() == "Bring back"
    qtbot.mouseClick(shelf.retiring, Qt.MouseButton.LeftButton)
    assert "quick" in names(session, retired=False)
    session.undo()
    assert "quick" not in names(session, retired=False)
    assert shelf.model.rowCount() == 4


def test_a_copy_is_another_epoxy_with_another_name(qtbot: Any) -> None:
    session, shelf = shelf_of(qtbot)
    shelf.select(2)
    qtbot.mouseClick(shelf.copying, Qt.MouseButton.LeftButton)
    assert shelf.form is not None
    shelf.form.accept()
    assert names(session) == [*(sheet.name for sheet in TYPICAL), "day-long (copy)"]
    assert shelf.model.rowCount() == 5


def test_the_shelf_imports_through_the_form_and_exports_the_chosen(
    qtbot: Any, tmp_path: Path
) -> None:
    session, shelf = shelf_of(qtbot)
    shelf.select(3)
    shelf.export_to(tmp_path / "tough.toml")
    assert sheet_from_toml((tmp_path / "tough.toml").read_text("utf-8"), "x") == TYPICAL[3]
    shelf.import_from(tmp_path / "tough.toml")
    assert shelf.form is not None
    assert len(names(session)) == 4  # not before it is saved
    shelf.form.accept()
    assert names(session)[-1] == TYPICAL[3].name
    shelf.import_from(tmp_path / "none.toml")
    assert "no such file" in shelf.message.text()
