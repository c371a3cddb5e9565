"""The inspector's parts: its curve for eyes and for ears, the table, the joint's record."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QAccessible, QColor, QImage, QPainter
from PySide6.QtWidgets import QApplication, QTableView
from pytestqt.qtbot import QtBot

from helpers.board_values import inspector
from helpers.session import BERLIN, lay_out_irons, make_session, type_temperature
from helpers.shop import FakeClock
from helpers.windows import make_window
from rackboard.core.instants import HOUR_US, MINUTE_US
from rackboard.core.standing import Standing
from rackboard.core.words import Word
from rackboard.services import demo
from rackboard.services.bench import Bench
from rackboard.services.board import Board
from rackboard.services.portrait import joint_record, portrait
from rackboard.store import Store
from rackboard.ui.board_presenter import BoardPresenter
from rackboard.ui.curve import CurvePainter, row_places
from rackboard.ui.curve_table import CurveTable, CurveTableDialog, Row
from rackboard.ui.inspector import Inspector
from rackboard.ui.inspector_presenter import InspectorPresenter
from rackboard.ui.inspector_view import CurveView
from rackboard.ui.joint_history import JointHistory
from rackboard.ui.joint_history_dialog import JointHistoryDialog
from rackboard.ui.resources import load_fonts
from rackboard.ui.session import Session
from rackboard.ui.theme import dark_theme, light_theme, paper_theme
from rackboard.ui.type import Roles

SIZES = {True: (516, 705), False: (353, 490)}
ORDER = [Word.WET, Word.WAIT, Word.BENCH, Word.CURED]


@pytest.fixture(scope="module")
def session(qapp: QApplication) -> Session:
    """The demo's invented shop, only read."""
    del qapp
    load_fonts()
    clock = FakeClock(demo.demo_start(BERLIN))
    store = Store.open_memory()
    demo.furnish_demo(store, clock.now(), BERLIN)
    board = Board(store, clock, BERLIN)
    made = Session(store, clock, board, Bench(store, clock, board.snapshot.hours))
    made.tick()
    return made


def presenter_of(session: Session) -> BoardPresenter:
    return BoardPresenter(session.board, session.clock.now(), session.unit)


def standing_of(session: Session, word: Word, *, unknown: bool = False) -> Standing:
    return next(s for s in session.board.standings if s.word is word and s.unknown is unknown)


def rows_of(session: Session, standing: Standing) -> tuple[Row, ...]:
    picture = portrait(session.board, standing)
    assert picture is not None
    return CurveTable(presenter_of(session), standing, picture).rows()


def share(text: str) -> float:
    """How far a cell says, on one scale: 0…60 to off the rack, up to 90 to safe to hit."""
    found = re.match(r"(\d+) % of the way to (.*)", text)
    assert found is not None, text
    return int(found[1]) * (0.6 if found[2] == "off the rack" else 0.9)


# The card


@pytest.fixture(params=[True, False], ids=["1920", "1280"])
def card(qtbot: QtBot, request: pytest.FixtureRequest) -> Inspector:
    load_fonts()
    made = Inspector(dark_theme(), large=request.param)
    qtbot.addWidget(made)
    made.resize(*SIZES[request.param])
    made.show_inspector(inspector())
    made.show()
    return made


def test_the_curve_and_the_head_can_be_pressed_by_finger_and_key(
    qtbot: QtBot, card: Inspector
) -> None:
    for spot, key in ((card.head, "record"), (card.picture, "table")):
        with qtbot.waitSignal(card.action_chosen) as chosen:
            qtbot.mouseClick(spot, Qt.MouseButton.LeftButton)
        assert chosen.args == [key]
        with qtbot.waitSignal(card.action_chosen) as chosen:
            qtbot.keyClick(spot, Qt.Key.Key_Return)
        assert chosen.args == [key]
        assert spot.focusPolicy() & Qt.FocusPolicy.TabFocus


def test_the_curve_says_in_words_what_it_shows(card: Inspector) -> None:
    from dataclasses import replace

    card.show_inspector(replace(inspector(), curve_said="Mixed Wed 09:10; off the rack."))
    said = QAccessible.queryAccessibleInterface(card.picture)
    assert said is not None
    assert said.text(QAccessible.Text.Name) == "How the glue goes"
    assert said.text(QAccessible.Text.Description) == "Mixed Wed 09:10; off the rack."


def test_the_pressed_part_lies_over_what_is_painted(
    card: Inspector, monkeypatch: pytest.MonkeyPatch
) -> None:
    areas: list[QRectF] = []
    usual = CurvePainter.paint

    def record(self: CurvePainter, painter: QPainter, rect: QRectF, view: CurveView) -> None:
        areas.append(rect)
        usual(self, painter, rect, view)

    monkeypatch.setattr(CurvePainter, "paint", record)
    card.grab()
    assert areas
    assert QRectF(card.picture.geometry()).adjusted(0, 0, 1, 1).contains(areas[0])
    assert card.head.geometry().bottom() < card.picture.geometry().top()
    for body in (key.geometry().adjusted(7, 7, -7, -7) for key in card.keys()):  # noqa: SIM118
        assert not card.picture.geometry().intersects(body)


def test_without_a_curve_there_is_nothing_to_press(card: Inspector) -> None:
    from dataclasses import replace

    card.show_inspector(replace(inspector(), curve=None, word=None))
    assert card.head.isHidden()
    assert card.picture.isHidden()


# The curve


@given(
    marks=st.lists(st.floats(0, 1), min_size=1, max_size=2),
    widths=st.lists(st.floats(40, 130), min_size=2, max_size=2),
)
def test_times_under_the_curve_never_overlap(marks: list[float], widths: list[float]) -> None:
    rect = QRectF(14, 0, 325, 40)
    places = sorted(rect.x() + u * rect.width() for u in marks)
    begins = [begin for begin, _ in row_places(places, widths[: len(places)], rect)]
    ends = [begin + wide for begin, wide in zip(begins, widths, strict=False)]
    for end, begin in pairwise([*zip(ends, begins, strict=True)]):
        assert begin[1] >= end[0] + 13.9
    assert begins[0] >= rect.left() - 1e-6
    assert ends[-1] <= rect.right() + 1e-6


@pytest.mark.parametrize("large", [True, False])
@pytest.mark.parametrize("theme", [dark_theme, light_theme, paper_theme])
def test_no_line_of_the_record_comes_near_the_day_names(
    session: Session, large: bool, theme: object
) -> None:
    """The row of the names holds nothing but the plot's ground while there are no names."""
    from dataclasses import replace

    colors = theme()  # type: ignore[operator]
    presenter = InspectorPresenter(presenter_of(session))
    for standing in session.board.standings:
        if standing.laid_out or standing.word not in (Word.WAIT, Word.BENCH):
            continue
        picture = portrait(session.board, standing)
        assert picture is not None
        view = replace(presenter.curve(standing, picture), days=(), now=None)
        size = (472, 330) if large else (325, 260)
        image = QImage(*size, QImage.Format.Format_ARGB32)
        image.fill(colors.surf)
        painter = QPainter(image)
        roles = Roles(large=large)
        CurvePainter(colors, roles, times=large).paint(painter, QRectF(0, 0, *size), view)
        painter.end()
        bottom = size[1] - (23 if large else 24)  # the legend under the strip
        for y in range(bottom - 14, bottom - 2):
            row = {image.pixelColor(x, y).name() for x in range(4, size[0] - 4, 3)}
            assert row == {QColor(colors.plot).name()}, y


def test_a_joint_whose_night_is_not_known_is_not_drawn_as_hard(session: Session) -> None:
    standing = next(s for s in session.board.standings if s.unknown and s.word is Word.BENCH)
    picture = portrait(session.board, standing)
    assert picture is not None
    view = InspectorPresenter(presenter_of(session)).curve(standing, picture)
    assert len(view.marks) == 1, "the permission that it has, and no other"
    assert view.hard_at == 1.0
    assert view.now is not None


def test_every_joint_of_the_demo_has_its_inspector_after_more_ticks(session: Session) -> None:
    session.board.tick()
    presenter = InspectorPresenter(presenter_of(session))
    for standing in session.board.standings:
        view = presenter.joint(standing)
        assert view.accessible
        if not standing.laid_out:
            assert view.curve is not None
            assert view.curve_said.startswith("Mixed ")
            assert view.curve_said.count(".") == 1
    assert any(s.word is Word.CURED for s in session.board.standings)


# The table


def test_the_table_holds_the_marks_among_the_hours(session: Session) -> None:
    rows = rows_of(session, standing_of(session, Word.BENCH))
    assert [row.at_us for row in rows] == sorted(row.at_us for row in rows)
    marks = [row.mark for row in rows if row.mark]
    assert marks == [
        "mixed", "use by", "probably off the rack", "off the rack since", "now",
        "probably safe to hit", "not before this: safe to hit",
    ]  # fmt: skip
    assert 15 <= len(rows) <= 40


@pytest.mark.parametrize("word", ORDER)
def test_words_and_shares_only_ever_go_on(session: Session, word: Word) -> None:
    rows = rows_of(session, standing_of(session, word))
    steps = [ORDER.index(row.word) for row in rows]
    assert steps == sorted(steps)
    assert rows[-1].word is Word.CURED
    now = [row for row in rows if row.mark == "now"]
    assert all(row.word is word for row in now)
    for column in ("probably", "margin"):
        shares = [share(getattr(row, column)) for row in rows]
        assert all(b >= a - 1.0 for a, b in pairwise(shares)), column  # each is rounded down
    for row in rows:
        assert share(row.margin) <= share(row.probably) + 1.0
        hard = row.margin == "100 % of the way to safe to hit"
        assert not hard or row.word in (Word.CURED, Word.BENCH)
        if row.word in (Word.WET, Word.WAIT):
            at_level = row.margin.endswith("to safe to hit")
            late = [r.at_us for r in rows if "off the rack" in r.mark and "prob" not in r.mark]
            assert not at_level or late[0] - row.at_us <= 6 * MINUTE_US


def test_the_table_never_shows_an_early_bound_of_a_permission(session: Session) -> None:
    for standing in session.board.standings:
        if standing.laid_out or standing.outcome is None:
            continue
        instants = {row.at_us for row in rows_of(session, standing) if row.mark}
        forecast = standing.outcome.forecast
        for bounds in (forecast.handling, forecast.full_cure):
            assert bounds is None or bounds.early not in instants


def test_where_the_low_is_missing_the_margin_is_not_known(session: Session) -> None:
    rows = rows_of(session, next(s for s in session.board.standings if s.unknown))
    assert rows[-1].margin == "not known"
    assert rows[0].margin != "not known"
    assert all(row.word is not Word.CURED for row in rows)
    assert "no record" in {row.air for row in rows}


def test_on_hold_the_table_says_so_and_gives_no_permission(session: Session) -> None:
    standing = standing_of(session, Word.HOLD)
    rows = rows_of(session, standing)
    assert "on hold from here" in [row.mark for row in rows]
    assert rows[-1].word is Word.HOLD
    assert not [row for row in rows if "not before" in row.mark]


@pytest.mark.parametrize("size", [(1920, 1080), (1280, 800)])
def test_the_table_opens_at_now_and_is_read_by_keys(
    qtbot: QtBot, session: Session, size: tuple[int, int]
) -> None:
    window = make_window(qtbot, *size)
    dialog = CurveTableDialog(session, standing_of(session, Word.BENCH), window)
    dialog.open()
    qtbot.waitUntil(dialog.isActiveWindow)
    table = dialog.findChild(QTableView)
    assert table is not None
    assert table.hasFocus()
    model = table.model()
    at = table.currentIndex().row()
    assert model.index(at, 1).data() == "now"
    said = model.index(at, 0).data(Qt.ItemDataRole.AccessibleTextRole)
    assert said.startswith("14:26, now: BENCH, off the rack: cut, grip; do not hit; 17.4")
    qtbot.keyClick(table, Qt.Key.Key_Down)
    assert table.currentIndex().row() == at + 1
    session.ticked.emit()
    assert table.currentIndex().row() == at + 1, "a tick leaves the reader where they are"
    assert table.accessibleName()
    assert table.accessibleDescription().startswith("Mixed Tue 15:40; now probably 99 %")
    heads = [model.headerData(n, Qt.Orientation.Horizontal) for n in range(6)]
    assert heads == ["When", "Mark", "Temperature", "Word", "Probably", "With the margin"]
    qtbot.keyClick(dialog, Qt.Key.Key_Escape)
    assert not dialog.isVisible()


# The record


def test_the_record_tells_the_joints_life(qtbot: QtBot) -> None:
    del qtbot
    load_fonts()
    session, clock = make_session()
    type_temperature(session, 21.0)
    session.bench.by = "KT"
    laid = lay_out_irons(session, 1)
    session.take(session.bench.mix(laid.batch_id))
    clock.advance(minutes=5)
    session.take(session.bench.rack_all(laid.batch_id))
    clock.advance(minutes=10)
    session.take(session.bench.correct_mixed(laid.batch_id, clock.now() - 20 * MINUTE_US))
    (standing,) = session.board.standings
    clock.advance(hours=3)
    session.take(session.bench.disturb(standing.joint.id))
    clock.advance(minutes=1)
    hold = session.board.standings[0].hold
    assert hold is not None
    session.take(session.bench.end_hold(hold, "touched, head did not turn"))
    clock.advance(minutes=1)
    session.take(session.bench.re_glued(standing.joint.id))
    (again,) = session.board.standings
    first = JointHistory(
        presenter_of(session), standing, joint_record(session.store, session.board, standing)
    )
    told = [(line.what, line.by) for line in first.lines()]
    for line in (
        ("laid out at A1", ""), ("batch mixed", "KT"), ("all racked", "KT"),
        ("corrected: mixed 15:19, was 15:24", "KT"), ("on HOLD: disturbed", "KT"),
        ("HOLD ended: touched, head did not turn", "KT"),
    ):  # fmt: skip
        assert line in told, told
    facts = dict(first.facts())
    assert facts["Mixed"] == "15:19"
    assert facts["Lot"] == "not noted"
    second = JointHistory(
        presenter_of(session), again, joint_record(session.store, session.board, again)
    )
    told = [(line.what, line.by) for line in second.lines()]
    earlier = "an earlier solid head, batch 1, glued 15:19: pulled, cleaned and glued again"
    assert (earlier, "") in told, told
    assert ("laid out again, to be glued with a new batch", "KT") in told
    assert "all racked" not in [what for what, _ in told]


@pytest.mark.parametrize("size", [(1920, 1080), (1280, 800)])
def test_the_record_opens_with_everything_named(
    qtbot: QtBot, session: Session, size: tuple[int, int]
) -> None:
    window = make_window(qtbot, *size)
    dialog = JointHistoryDialog(session, standing_of(session, Word.HOLD), window)
    dialog.open()
    table = dialog.findChild(QTableView)
    assert table is not None
    model = table.model()
    rows = [model.index(n, 1).data() for n in range(model.rowCount())]
    assert rows[0].startswith("laid out at ")
    assert "on HOLD: disturbed" in rows
    assert table.accessibleName() == "What happened"
    said = model.index(0, 0).data(Qt.ItemDataRole.AccessibleTextRole)
    assert said.endswith(rows[0])
    for button in (dialog.as_table, dialog.save):
        assert button.isEnabled()
        assert button.text()
    dialog.close()


def test_a_joint_that_waits_for_its_batch_has_a_record_and_no_curve(qtbot: QtBot) -> None:
    session, _ = make_session()
    lay_out_irons(session, 1)
    window = make_window(qtbot)
    dialog = JointHistoryDialog(session, session.board.standings[0], window)
    dialog.open()
    assert not dialog.as_table.isEnabled()
    assert not dialog.save.isEnabled()
    dialog.close()


def test_the_hours_of_the_table_are_full_hours(session: Session) -> None:
    rows = rows_of(session, standing_of(session, Word.BENCH))
    plain = [row.at_us for row in rows if not row.mark]
    assert len(plain) > 5
    assert all(at % HOUR_US == 0 for at in plain)
