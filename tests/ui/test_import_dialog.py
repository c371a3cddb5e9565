"""A logger's file through the dialog: shown, asked about, taken once, with what it lacks said."""

from __future__ import annotations

import threading
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt

from helpers.session import make_session, zone_of
from helpers.shop import FakeClock
from helpers.windows import make_window
from rackboard.core.bench import PlaceKind
from rackboard.core.instants import HOUR_US, MINUTE_US, parse_iso
from rackboard.feeds import logger_csv
from rackboard.feeds.logger_csv import Answers
from rackboard.services.import_check import Compared, Hole, compare, holes
from rackboard.ui.import_dialog import ImportDialog
from rackboard.ui.record_reader import RecordReader
from rackboard.ui.session import Session
from rackboard.ui.theme import dark_theme

WEEK = Path(__file__).parent.parent / "data" / "sea_surface_week.csv"
AFTER = "2016-07-13T12:00+02:00"


def dialog_of(qtbot: Any, at: str = AFTER) -> tuple[Session, FakeClock, ImportDialog]:
    session, clock = make_session(at)
    dialog = ImportDialog(session, make_window(qtbot), theme=dark_theme())
    dialog.show()
    return session, clock, dialog


def read(qtbot: Any, dialog: ImportDialog, path: Path) -> None:
    dialog.open_file(path)
    settle(qtbot, dialog)


def settle(qtbot: Any, dialog: ImportDialog) -> None:
    qtbot.waitUntil(lambda: not dialog.reading, timeout=10_000)


def answer(qtbot: Any, choice: Any, text: str, dialog: ImportDialog) -> None:
    texts = [choice.itemText(at) for at in range(choice.count())]
    at = texts.index(text) if text in texts else choice.findText(text, Qt.MatchFlag.MatchContains)
    assert at >= 0, text
    choice.setCurrentIndex(at)
    choice.activated.emit(at)
    settle(qtbot, dialog)


def said(dialog: ImportDialog) -> str:
    return "\n".join(dialog.remarks.stringList()).replace("\N{NO-BREAK SPACE}", " ")


def kept(session: Session, zone_id: int | None = None) -> list[Any]:
    zone = zone_of(session) if zone_id is None else zone_id
    return session.store.record.readings(zone, 0, 2**60)


# --- the real week ---------------------------------------------------------------------------


def test_the_real_week_is_shown_then_taken(qtbot: Any) -> None:
    session, _, dialog = dialog_of(qtbot)
    assert not dialog.importing.isEnabled()
    read(qtbot, dialog, WEEK)
    assert dialog.summary.text().startswith("314 readings, 6 Jul 2016 02:00 to 13 Jul 2016 02:00")
    assert "No record for 12 h: 8 Jul 2016 03:30 to 8 Jul 2016 15:30" in said(dialog)
    first = [dialog.lines.data(dialog.lines.index(0, column)) for column in range(3)]
    assert [text.replace("\N{NO-BREAK SPACE}", " ") for text in first] == [
        "2", "6 Jul 2016 02:00", "16.13 °C",
    ]  # fmt: skip
    assert dialog.answers.time_zone.placeholderText() == "named in the file"
    assert not dialog.answers.time_zone.isEnabled()
    assert kept(session) == []
    qtbot.mouseClick(dialog.importing, Qt.MouseButton.LeftButton)
    assert dialog.message.text() == "314 new, 0 already there, 0 lines left out."
    rows = kept(session)
    assert len(rows) == 314
    assert rows[0][:2] == (parse_iso("2016-07-06T00:00Z", "x"), 16_130)
    assert not dialog.importing.isEnabled()
    assert dialog.closing.text() == "Close"
    assert dialog.isVisible()


def test_the_same_file_again_makes_no_doubles(qtbot: Any) -> None:
    session, _, dialog = dialog_of(qtbot)
    read(qtbot, dialog, WEEK)
    dialog.accept()
    before = kept(session)
    read(qtbot, dialog, WEEK)
    assert not dialog.differing.isVisible()
    dialog.accept()
    assert dialog.message.text() == "0 new, 314 already there, 0 lines left out."
    assert kept(session) == before


def test_the_other_zone_gets_it_if_that_is_chosen(qtbot: Any) -> None:
    session, _, dialog = dialog_of(qtbot)
    dialog.zone.setCurrentIndex(1)
    read(qtbot, dialog, WEEK)
    dialog.accept()
    assert kept(session) == []
    assert len(kept(session, zone_of(session, PlaceKind.BOX))) == 314


def test_a_different_value_at_an_instant_is_asked_about(qtbot: Any, tmp_path: Path) -> None:
    session, _, dialog = dialog_of(qtbot)
    read(qtbot, dialog, WEEK)
    dialog.accept()
    before = kept(session)
    other = tmp_path / "other.csv"
    text = WEEK.read_text().replace("2016-07-06T00:00:00Z,16.13", "2016-07-06T00:00:00Z,17.5")
    other.write_text(text + "2016-07-13T00:30:00Z,16.5\n")
    read(qtbot, dialog, other)
    assert dialog.differing.isVisible()
    assert "At 1 moment" in dialog.differing_text.text()
    assert not dialog.importing.isEnabled()
    dialog.accept()  # not answered: nothing happens
    assert kept(session) == before
    qtbot.mouseClick(dialog.keep, Qt.MouseButton.LeftButton)
    assert dialog.importing.isEnabled()
    dialog.accept()
    assert dialog.message.text() == (
        "1 new, 313 already there, 1 kept as it was, 0 lines left out."
    )
    assert kept(session)[0][1] == 16_130
    read(qtbot, dialog, other)
    qtbot.mouseClick(dialog.take, Qt.MouseButton.LeftButton)
    dialog.accept()
    assert "1 replaced by the file's" in dialog.message.text()
    assert kept(session)[0][1] == 17_500
    assert len(kept(session)) == 315


# --- questions -------------------------------------------------------------------------------

AMBIGUOUS = "Date;Time;Temp\n" + "".join(
    f"{day:02d}/03/2026;{hour:02d}:00;{20 + hour / 10:.1f}\n".replace(".", ",")
    for day in (3, 4, 5)
    for hour in range(24)
)


def test_an_ambiguous_date_and_unit_are_asked_before_anything_is_taken(
    qtbot: Any, tmp_path: Path
) -> None:
    session, _, dialog = dialog_of(qtbot, "2026-06-01T08:00+02:00")
    path = tmp_path / "logger.csv"
    path.write_text(AMBIGUOUS)
    read(qtbot, dialog, path)
    assert "Is the day first, or the month?" in dialog.answers.asked.text()
    assert "°C or °F" in dialog.answers.asked.text()
    assert dialog.lines.data(dialog.lines.index(0, 1)) == "day or month first?"
    assert not dialog.importing.isEnabled()
    answer(qtbot, dialog.answers.unit, "°C", dialog)
    assert not dialog.importing.isEnabled()
    answer(qtbot, dialog.answers.date_order, "day, month, year", dialog)
    assert dialog.answers.asked.text() == ""
    assert dialog.importing.isEnabled()
    assert dialog.answers.time_zone.currentText() == "Europe/Berlin"
    dialog.accept()
    rows = kept(session)
    assert len(rows) == 72
    assert rows[0][:2] == (parse_iso("2026-03-03T00:00+01:00", "x"), 20_000)


def test_the_other_answer_gives_other_days(qtbot: Any, tmp_path: Path) -> None:
    session, _, dialog = dialog_of(qtbot, "2026-06-01T08:00+02:00")
    path = tmp_path / "logger.csv"
    path.write_text(AMBIGUOUS)
    read(qtbot, dialog, path)
    answer(qtbot, dialog.answers.date_order, "month, day, year", dialog)
    answer(qtbot, dialog.answers.unit, "°F", dialog)
    answer(qtbot, dialog.answers.time_zone, "UTC+02:00", dialog)
    assert "never put forward" in dialog.answers.zone_said.text()
    dialog.accept()
    rows = kept(session)
    assert rows[0][:2] == (parse_iso("2026-03-03T00:00+02:00", "x"), -6_667)
    assert rows[24][0] == parse_iso("2026-04-03T00:00+02:00", "x")


def test_two_temperature_columns_are_asked_about(qtbot: Any, tmp_path: Path) -> None:
    session, _, dialog = dialog_of(qtbot, "2026-06-01T08:00+02:00")
    path = tmp_path / "two.csv"
    lines = "".join(f"2026-03-13 {h:02d}:00,2{h % 10}.5,31.{h % 10}\n" for h in range(24))
    path.write_text("Time,Temp room (°C),Temp box (°C)\n" + lines)
    read(qtbot, dialog, path)
    assert "Which column holds this zone's temperature?" in dialog.answers.asked.text()
    assert not dialog.importing.isEnabled()
    answer(qtbot, dialog.answers.temperature_column, "Temp box", dialog)
    dialog.accept()
    assert kept(session)[1][1] == 31_100


# --- bad lines, gaps, later than now ---------------------------------------------------------


def test_bad_lines_are_counted_and_listed_with_their_reasons(qtbot: Any, tmp_path: Path) -> None:
    session, _, dialog = dialog_of(qtbot)
    path = tmp_path / "bad.csv"
    lines = WEEK.read_text().splitlines()
    lines[5] = "2016-07-06T02:00:00Z,ERR"
    lines[9] = "2016-07-06T04:00:00Z,85.000"
    path.write_text("\n".join(lines) + "\n")
    read(qtbot, dialog, path)
    assert "312 readings" in dialog.summary.text()
    assert "2 lines left out" in dialog.summary.text()
    assert "Line 6: not a number: 2016-07-06T02:00:00Z,ERR" in said(dialog)
    assert "Line 10: 85.000 °C: a sensor that has not measured yet" in said(dialog)
    dialog.accept()
    assert dialog.message.text() == "312 new, 0 already there, 2 lines left out."
    assert len(kept(session)) == 312


def test_readings_later_than_now_are_left_out(qtbot: Any) -> None:
    session, _, dialog = dialog_of(qtbot, "2016-07-06T03:00Z")
    read(qtbot, dialog, WEEK)
    assert "307 readings lie after now: left out." in said(dialog)
    dialog.accept()
    assert dialog.message.text() == "7 new, 0 already there, 307 lines left out."
    assert len(kept(session)) == 7


@pytest.mark.parametrize(
    ("content", "held"),
    [
        (b"", "an empty file"),
        (b"PK\x03\x04 and so on", "spreadsheet"),
        (b"no table here\nat all\n", "times and temperatures"),
    ],
)
def test_a_file_that_is_no_record_is_refused_in_words(
    qtbot: Any, tmp_path: Path, content: bytes, held: str
) -> None:
    session, _, dialog = dialog_of(qtbot)
    path = tmp_path / "odd.csv"
    path.write_bytes(content)
    read(qtbot, dialog, path)
    assert "odd.csv" in dialog.message.text()
    assert held in dialog.message.text()
    assert not dialog.importing.isEnabled()
    assert kept(session) == []


def test_a_gap_of_two_hours_is_none() -> None:
    readings = [(0, 1), (2 * HOUR_US, 1), (4 * HOUR_US + MINUTE_US, 1)]
    assert holes(readings) == [Hole(2 * HOUR_US, 4 * HOUR_US + MINUTE_US)]


def test_comparing_writes_nothing() -> None:
    session, _ = make_session()
    zone = zone_of(session)
    before = kept(session)
    assert compare(session.store, zone, [(1, 20_000), (2, 21_000)]) == Compared(2, 0, 0)
    assert compare(session.store, zone, []) == Compared(0, 0, 0)
    assert kept(session) == before


# --- the thread ------------------------------------------------------------------------------


def test_the_window_goes_on_while_a_file_is_read(
    qtbot: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The reading waits until the window has answered to a key."""
    go = threading.Event()
    real = logger_csv.preview

    def slow(*arguments: Any, **named: Any) -> Any:
        assert threading.current_thread() is not threading.main_thread()
        assert go.wait(10)
        return real(*arguments, **named)

    monkeypatch.setattr(logger_csv, "preview", slow)
    _, _, dialog = dialog_of(qtbot)
    dialog.open_file(WEEK)
    assert dialog.reading
    assert dialog.message.text() == "Reading…"
    assert not dialog.importing.isEnabled()
    qtbot.keyClick(dialog.zone, Qt.Key.Key_Down)
    assert dialog.zone.currentIndex() == 1
    go.set()
    settle(qtbot, dialog)
    assert dialog.importing.isEnabled()


def test_a_dialog_closed_while_reading_leaves_no_trouble(
    qtbot: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    go = threading.Event()
    real = logger_csv.preview

    def slow(*arguments: Any, **named: Any) -> Any:
        assert go.wait(10)
        return real(*arguments, **named)

    monkeypatch.setattr(logger_csv, "preview", slow)
    _, _, dialog = dialog_of(qtbot)
    dialog.open_file(WEEK)
    with qtbot.waitSignal(dialog.destroyed):
        qtbot.keyClick(dialog, Qt.Key.Key_Escape)
    go.set()
    qtbot.waitUntil(lambda: not RecordReader._running, timeout=10_000)


def test_an_older_answer_that_comes_late_is_dropped(qtbot: Any) -> None:
    _, _, dialog = dialog_of(qtbot)
    read(qtbot, dialog, WEEK)
    shown = dialog.preview
    assert shown is not None
    dialog._on_read(-1, (None, logger_csv.preview(WEEK.read_bytes(), Answers())))
    assert dialog.preview is shown
