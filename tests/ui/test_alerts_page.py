"""The alerts page and the alarm's dialog: R22 to R25 by tap and key, filters, pages, export."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QWidget

from helpers.alert_scene import AlertShop
from helpers.windows import make_window
from rackboard.core.alerts.kinds import NATURE, Kind
from rackboard.core.alerts.rows import Alert
from rackboard.core.bench import PlaceKind
from rackboard.core.errors import InputError
from rackboard.core.instants import MINUTE_US, parse_iso
from rackboard.services.alerts import REACHED
from rackboard.ui.alert_dialog import AlertDialog
from rackboard.ui.alerts_model import FIRST, FURTHER
from rackboard.ui.alerts_page import AlertsPage
from rackboard.ui.alerts_presenter import HOLD, PLAIN, cards, day_of
from rackboard.ui.hold_dialog import UNTURNED, HoldDialog
from rackboard.ui.keys import RIM, TARGET, Key
from rackboard.ui.resources import load_fonts
from rackboard.ui.theme import light_theme


@pytest.fixture(autouse=True)
def fonts(qapp: object) -> None:
    load_fonts()


@pytest.fixture
def window(qtbot: Any) -> Iterator[QWidget]:
    yield make_window(qtbot)


def cold_shop() -> AlertShop:
    shop = AlertShop()
    shop.glue(2)
    shop.until("2026-03-09T10:00+01:00", 12.0)
    return shop


def disturbed_shop() -> tuple[AlertShop, int]:
    shop = AlertShop()
    (joint, _) = shop.glue(2)
    shop.until("2026-03-09T10:00+01:00")
    shop.session.take(shop.session.bench.disturb(joint))
    return shop, joint


def withdrawn_shop(*, gone: bool, clubs: int = 1, phone: str = "555 0100") -> AlertShop:
    shop = AlertShop()
    joints = shop.glue(clubs, phone=phone)
    shop.until("2026-03-10T15:00+01:00", step_min=30)
    standings = [s for s in shop.session.board.standings if s.joint.id in joints]
    assert all(str(s.word) in ("BENCH", "CURED") for s in standings)
    batch = standings[0].batch.id
    if gone:
        for standing in standings:
            shop.session.take(shop.session.bench.take_off(standing.club.id, PlaceKind.OUT))
    shop.session.take(
        shop.session.bench.correct_mixed(batch, shop.clock.now() - 20 * MINUTE_US)
    )
    return shop


def dialog(qtbot: Any, shop: AlertShop, alert: Alert, window: QWidget) -> AlertDialog:
    made = AlertDialog(shop.session, alert, window)
    made.show()
    qtbot.waitUntil(made.isActiveWindow)
    return made


def page(qtbot: Any, shop: AlertShop, window: QWidget) -> AlertsPage:
    made = AlertsPage(shop.session, window)
    made.show()
    qtbot.waitUntil(made.isActiveWindow)
    return made


def press(qtbot: Any, key: Key) -> None:
    qtbot.mouseClick(key, Qt.MouseButton.LeftButton)


def cells(made: AlertsPage, column: int) -> list[str]:
    model = made.model
    return [str(model.index(n, column).data()) for n in range(model.rowCount())]


# --- R22 to R25 ----------------------------------------------------------------------------


def test_r22_a_disturbance_has_no_key_that_ends_it_but_its_answer(
    qtbot: Any, window: QWidget
) -> None:
    shop, joint = disturbed_shop()
    made = dialog(qtbot, shop, shop.the(Kind.DISTURBED), window)
    assert set(made.panel.keys) == {"answer", "take", "show"}
    press(qtbot, made.panel.keys["take"])
    assert shop.the(Kind.DISTURBED).phase == "on, taken"
    made = dialog(qtbot, shop, shop.the(Kind.DISTURBED), window)
    assert set(made.panel.keys) == {"answer", "show"}
    press(qtbot, made.panel.keys["answer"])
    asked = made.findChild(HoldDialog)
    assert asked is not None
    press(qtbot, asked.keys[UNTURNED])
    assert shop.last(Kind.DISTURBED).closed_as == UNTURNED
    assert not made.isVisible()
    assert joint not in shop.session.board.snapshot.holds


def test_r22_a_customer_is_called_by_a_large_number_until_reached(
    qtbot: Any, window: QWidget
) -> None:
    shop = withdrawn_shop(gone=True)
    made = dialog(qtbot, shop, shop.the(Kind.WITHDRAWN), window)
    panel = made.panel
    assert panel.signal.text() == "WARNING"
    assert panel.phone.text() == "555 0100"
    assert panel.phone.isVisible()
    assert panel.phone.font().pixelSize() == made.roles.title.px
    assert set(panel.keys) == {"reached", "take"}
    press(qtbot, panel.keys["take"])
    assert shop.the(Kind.WITHDRAWN).phase == "on, taken"
    made = dialog(qtbot, shop, shop.the(Kind.WITHDRAWN), window)
    assert set(made.panel.keys) == {"reached"}
    press(qtbot, made.panel.keys["reached"])
    assert shop.last(Kind.WITHDRAWN).closed_as == REACHED


def test_r22_of_a_club_in_its_slot_got_it_is_enough(qtbot: Any, window: QWidget) -> None:
    shop = withdrawn_shop(gone=False)
    made = dialog(qtbot, shop, shop.the(Kind.WITHDRAWN), window)
    assert set(made.panel.keys) == {"take", "show"}
    assert not made.panel.phone.isVisible()
    press(qtbot, made.panel.keys["take"])
    shop.session.tick()
    assert shop.last(Kind.WITHDRAWN).closed_as == "never left the rack"


def test_r22_heat_without_a_hold_of_its_own_can_still_be_answered(
    qtbot: Any, window: QWidget
) -> None:
    shop = AlertShop()
    (joint,) = shop.glue(1, box=True)
    shop.session.take(shop.session.bench.disturb(joint))
    shop.until("2026-03-09T10:00+01:00", 21.0, 78.0)
    shop.until("2026-03-09T11:00+01:00", 21.0, 40.0)
    alert = shop.the(Kind.TOO_HOT)
    made = dialog(qtbot, shop, alert, window)
    assert set(made.panel.keys) == {"nothing", "take", "show"}
    press(qtbot, made.panel.keys["nothing"])
    assert shop.last(Kind.TOO_HOT).closed_as == "nothing seen"


def test_r23_what_went_before_it_was_taken_stays_listed_with_begin_and_end(
    qtbot: Any, window: QWidget
) -> None:
    shop = cold_shop()
    shop.until("2026-03-09T11:00+01:00", 25.0)
    made = page(qtbot, shop, window)
    lines = made.open_list.lines_model.lines()
    at = next(n for n, line in enumerate(lines) if "is cold" in line.text)
    assert lines[at].fact == "since 08:05: over, untaken"
    made.open_list.setCurrentIndex(made.open_list.lines_model.index(at))
    assert "warm again" in made.panel.body.text()
    assert cells(made, 0)[cells(made, 1).index("cold")] == "08:05 – 10:20"
    made.panel.keys["take"].setFocus()
    qtbot.keyClick(made.panel.keys["take"], Qt.Key.Key_Return)
    assert shop.last(Kind.COLD).closed_as == "got it"
    assert cells(made, 7)[cells(made, 1).index("cold")] == "got it"


@pytest.mark.parametrize(("key", "minutes"), [("in:15", 15), ("in:60", 60), ("in:120", 120)])
def test_r24_a_cold_zone_can_be_put_off(
    qtbot: Any, window: QWidget, key: str, minutes: int
) -> None:
    shop = cold_shop()
    made = dialog(qtbot, shop, shop.the(Kind.COLD), window)
    assert set(made.panel.keys) == {"take", "accept", "later"}
    made.panel.keys["later"].setFocus()
    qtbot.keyClick(made.panel.keys["later"], Qt.Key.Key_Space)
    assert set(made.panel.keys) == {"in:15", "in:60", "in:120", "back"}
    qtbot.keyClick(made.focusWidget(), Qt.Key.Key_Tab)
    press(qtbot, made.panel.keys["back"])
    assert "take" in made.panel.keys
    press(qtbot, made.panel.keys["later"])
    press(qtbot, made.panel.keys[key])
    alert = shop.the(Kind.COLD)
    assert alert.phase == "on, postponed"
    assert alert.until_us == shop.clock.now() + minutes * MINUTE_US
    assert not made.isVisible()


def test_r24_alarms_that_may_not_be_put_off_have_no_such_key(qtbot: Any, window: QWidget) -> None:
    shop, _ = disturbed_shop()
    for alert in shop.alerts.open:
        if NATURE[Kind(alert.kind)].never_folded:
            assert "later" not in dialog(qtbot, shop, alert, window).panel.keys


def test_the_later_times_are_accepted_at_the_air_of_now(qtbot: Any, window: QWidget) -> None:
    shop = cold_shop()
    shop.until("2026-03-09T10:30+01:00", 11.4)
    made = dialog(qtbot, shop, shop.the(Kind.COLD), window)
    press(qtbot, made.panel.keys["accept"])
    alert = shop.the(Kind.COLD)
    assert (alert.phase, alert.accepted_mc) == ("on, accepted", 11_400)


def test_r25_got_it_takes_only_what_is_on_the_screen(qtbot: Any, window: QWidget) -> None:
    shop, _ = disturbed_shop()
    other = next(
        s.joint.id for s in shop.session.board.standings
        if s.joint.id not in shop.session.board.snapshot.holds
    )
    made = page(qtbot, shop, window)
    shown = made.panel.ids
    assert len(shown) == 1
    # A second alarm is raised behind the page's back: nothing of it is on the screen yet.
    shop.session.blockSignals(True)
    shop.session.take(shop.session.bench.disturb(other))
    shop.session.blockSignals(False)
    press(qtbot, made.panel.keys["take"])
    taken = {a.id for a in shop.alerts.open if a.phase == "on, taken"}
    assert taken == set(shown)
    assert len([a for a in shop.alerts.open if a.kind == Kind.DISTURBED]) == 2


def test_r25_clubs_told_as_one_are_taken_as_one(qtbot: Any, window: QWidget) -> None:
    shop = withdrawn_shop(gone=True, clubs=3)
    made = dialog(qtbot, shop, shop.alerts.open[0], window)
    assert made.panel.headline.text() == "Do not hit: 3 clubs of job 220"
    assert "3 clubs are gone: call D. Whitlow 555 0100" in made.panel.body.text()
    assert len(made.panel.ids) == 3
    press(qtbot, made.panel.keys["take"])
    assert {a.phase for a in shop.alerts.open if a.kind == Kind.WITHDRAWN} == {"on, taken"}


def test_a_refusal_is_said_calmly_in_the_panel(qtbot: Any, window: QWidget) -> None:
    shop = cold_shop()
    made = dialog(qtbot, shop, shop.the(Kind.COLD), window)
    press(qtbot, made.panel.keys["later"])
    refused = InputError("an alarm for which this can be done", "H2", "remind me later")

    def refuse(alert_id: int, until_us: int) -> Any:
        del alert_id, until_us
        raise refused

    shop.alerts.postpone = refuse  # type: ignore[method-assign]
    press(qtbot, made.panel.keys["in:15"])
    assert made.isVisible()
    assert made.panel.message.text() == str(refused)


def test_the_dialog_goes_when_its_alarm_is_over_elsewhere(qtbot: Any, window: QWidget) -> None:
    shop, joint = disturbed_shop()
    made = dialog(qtbot, shop, shop.the(Kind.DISTURBED), window)
    hold = shop.session.board.snapshot.holds[joint]
    shop.session.take(shop.session.bench.end_hold(hold, UNTURNED))
    assert not made.isVisible()


def test_a_club_can_be_shown_on_the_board(qtbot: Any, window: QWidget) -> None:
    shop, joint = disturbed_shop()
    made = dialog(qtbot, shop, shop.the(Kind.DISTURBED), window)
    club = next(s.club.id for s in shop.session.board.standings if s.joint.id == joint)
    with qtbot.waitSignal(made.club_chosen) as chosen:
        press(qtbot, made.panel.keys["show"])
    assert chosen.args == [club]


# --- Cards ---------------------------------------------------------------------------------


def test_cards_are_of_alarms_only_worst_first() -> None:
    shop, _ = disturbed_shop()
    shop.until("2026-03-09T12:00+01:00", 12.0)
    shown = cards(shop.alerts.open, shop.session.board)
    assert [card.kind for card in shown] == [Kind.DISTURBED, Kind.COLD]
    assert [card.signal for card in shown] == ["NOTICE", "NOTICE"]
    assert [card.button for card in shown] == ["Answer…", "Got it"]
    assert [card.answers for card in shown] == [True, False]
    assert [card.tone for card in shown] == [HOLD, PLAIN]
    assert all(card.speaking for card in shown)
    assert shown[0].accessible.startswith("NOTICE. Disturbed at A1: 4 iron, job 220. ")
    shop.session.take(shop.alerts.got_it(shown[0].ids))
    after = cards(shop.alerts.open, shop.session.board)
    assert {card.kind: card.speaking for card in after} == {Kind.COLD: True, Kind.DISTURBED: False}


def test_clubs_of_two_states_have_two_cards() -> None:
    shop = withdrawn_shop(gone=True, clubs=2)
    first = next(a for a in shop.alerts.open if a.kind == Kind.WITHDRAWN)
    shop.session.take(shop.alerts.got_it([first.id]))
    shown = [card.ids for card in cards(shop.alerts.open, shop.session.board)]
    assert sorted(len(ids) for ids in shown) == [1, 1]


# --- The page ------------------------------------------------------------------------------


def test_nothing_open_is_said(qtbot: Any, window: QWidget) -> None:
    made = page(qtbot, AlertShop(), window)
    assert made.panel.headline.text() == "Nothing is open."
    assert made.panel.keys == {}
    assert made.count.text() == "No alert like that is in the journal."


def test_without_couriers_yet_the_journal_is_still_shown(qtbot: Any, window: QWidget) -> None:
    shop, _ = disturbed_shop()
    shop.session.alerts = None
    made = page(qtbot, shop, window)
    assert made.panel.headline.text() == "Nothing is open."
    assert "disturbed" in cells(made, 1)


def test_what_is_open_stands_most_pressing_first_and_is_chosen_by_key(
    qtbot: Any, window: QWidget
) -> None:
    shop, _ = disturbed_shop()
    shop.until("2026-03-09T12:00+01:00", 12.0)
    made = page(qtbot, shop, window)
    lines = [line.text for line in made.open_list.lines_model.lines()]
    assert lines[0] == "NOTICE  Disturbed at A1: 4 iron, job 220"
    assert lines[1].startswith("NOTICE  Room is cold")
    assert made.open_list.hasFocus()
    qtbot.keyClick(made.open_list, Qt.Key.Key_Down)
    assert made.panel.headline.text().startswith("Room is cold")
    qtbot.keyClick(made.open_list, Qt.Key.Key_Return)
    assert made.panel.keys["take"].hasFocus()
    assert made.isVisible()


def test_the_journal_is_filtered_as_one_types(qtbot: Any, window: QWidget) -> None:
    shop = cold_shop()
    (other,) = shop.glue(1, number="331", first=5)
    shop.session.take(shop.session.bench.disturb(other))
    made = page(qtbot, shop, window)
    everything = made.model.rowCount()
    made.job.setFocus()
    qtbot.keyClicks(made.job, "33")
    assert {job for job in cells(made, 3) if job} == {"331, 4 iron", "331"}
    made.job.clear()
    assert made.model.rowCount() == everything
    made.kind.setCurrentIndex(made.kind.findText("cold"))
    assert set(cells(made, 1)) == {"cold"}
    made.kind.setCurrentIndex(made.kind.findText("Prompts and messages"))
    assert "cold" not in cells(made, 1)
    made.kind.setCurrentIndex(0)
    made.place.setCurrentIndex(made.place.findText("Warm box"))
    assert made.model.rowCount() == 0
    made.place.setCurrentIndex(0)
    for typed, some in (("today", True), ("Mon", True), ("9 March", True), ("yesterday", False)):
        made.day.setText(typed)
        assert bool(made.model.rowCount()) is some, typed
    made.day.setText("9")
    assert made.day.property("wrong")
    assert "2026-03-12" in made.details.text()
    made.day.clear()
    assert not made.day.property("wrong")
    assert made.model.rowCount() == everything


def test_a_row_says_everything_for_a_screen_reader(qtbot: Any, window: QWidget) -> None:
    shop, _ = disturbed_shop()
    shop.session.bench.by = "KT"
    made = page(qtbot, shop, window)
    press(qtbot, made.panel.keys["take"])
    n = cells(made, 1).index("disturbed")
    assert [cells(made, c)[n] for c in range(9)] == [
        "10:00 –", "disturbed", "A1", "220, 4 iron", "knocked, pulled or turned", "on, taken",
        "KT, 10:00", "", "Desktop notices: shown",
    ]  # fmt: skip
    words = made.model.index(n, 0).data(Qt.ItemDataRole.AccessibleTextRole)
    for part in ("When: 10:00", "Where: A1", "State: on, taken", "Taken by: KT"):
        assert part in words
    made.table.setCurrentIndex(made.model.index(n, 0))
    assert made.details.text() == words


def test_rows_come_page_by_page(qtbot: Any, window: QWidget) -> None:
    shop, _ = disturbed_shop()
    (last,) = shop.session.store.alerts.page(1)
    total = FIRST + FURTHER + 20
    with shop.session.store.write("many", shop.clock.now()) as act:
        for n in range(total):
            act.add(last._replace(id=0, episode=100 + n, phase="closed", closed_as="undone",
                                  closed_us=last.due_us, due_us=last.due_us - n - 1))  # fmt: skip
    made = page(qtbot, shop, window)
    assert made.model.rowCount() == FIRST
    assert made.count.text() == f"The latest {FIRST} alerts; scroll for more."
    made.model.fetchMore()
    assert made.model.rowCount() == FIRST + FURTHER
    made.table.setCurrentIndex(made.model.index(FIRST + 50, 0))
    chosen = made.table.currentIndex().row()
    shop.session.tick()
    made.refresh()
    assert made.table.currentIndex().row() == chosen, "a refresh must not throw one back"
    made.table.setCurrentIndex(made.model.index(3, 0))
    stays = made.model.row_at(3)
    assert stays is not None
    with shop.session.store.write("one more", shop.clock.now()) as act:
        act.add(last._replace(id=0, episode=9999, due_us=shop.clock.now() + 1))
    made.refresh()
    assert made.model.row_at(4) == stays
    assert made.table.currentIndex().row() == 4
    while made.model.canFetchMore():
        made.model.fetchMore()
    assert made.model.complete
    assert made.count.text() == f"{made.model.rowCount()} alerts"


def test_what_is_open_far_down_is_shown_as_it_stands(qtbot: Any, window: QWidget) -> None:
    shop, _ = disturbed_shop()
    alert = shop.the(Kind.DISTURBED)
    with shop.session.store.write("many", shop.clock.now()) as act:
        for n in range(FIRST + 5):
            due = alert.due_us + n + 1
            act.add(alert._replace(id=0, episode=100 + n, phase="closed", closed_as="undone",
                                   closed_us=due, due_us=due))  # fmt: skip
    made = page(qtbot, shop, window)
    made.model.fetchMore()
    at = made.model.row_of(alert.id)
    assert at > FIRST
    assert made.model.index(at, 5).data() == "on, untaken"
    shop.session.take(shop.alerts.got_it([alert.id]))
    assert made.model.index(at, 5).data() == "on, taken"


def test_what_the_filters_let_through_is_exported(
    qtbot: Any, window: QWidget, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shop = cold_shop()
    made = page(qtbot, shop, window)
    made.kind.setCurrentIndex(made.kind.findText("cold"))
    path = tmp_path / "out.csv"
    asked: list[str] = []

    def choose(parent: QWidget, title: str, name: str, kind: str) -> tuple[str, str]:
        asked.append(name)
        return str(path), kind

    monkeypatch.setattr(QFileDialog, "getSaveFileName", choose)
    made.export.click()
    assert asked == ["alerts-2026-03-09.csv"]
    with path.open(encoding="utf-8-sig", newline="") as stream:
        assert [row["code"] for row in csv.DictReader(stream)] == ["H2"]
    assert made.details.text() == "1 alert written to out.csv."
    made.export_to(tmp_path / "nowhere" / "out.csv")
    assert "written" not in made.details.text()
    assert made.details.text() == made.details.accessibleName() != ""
    assert made.isVisible()


def test_everything_can_be_reached_with_tab(qtbot: Any, window: QWidget) -> None:
    shop = cold_shop()
    made = page(qtbot, shop, window)
    reached: set[QWidget] = set()
    for _ in range(20):
        focus = made.focusWidget()
        assert focus is not None
        reached.add(focus)
        qtbot.keyClick(focus, Qt.Key.Key_Tab)
    wanted = {made.open_list, *made.panel.keys.values(), made.job, made.place, made.kind,
              made.day, made.table, made.export}  # fmt: skip
    assert wanted <= reached
    for widget in wanted - {made.export}:
        assert widget.accessibleName()


@pytest.mark.parametrize(("width", "height"), [(1280, 800), (1920, 1080)])
def test_keys_are_large_and_nothing_is_cut(qtbot: Any, width: int, height: int) -> None:
    shop = withdrawn_shop(gone=True, clubs=2)
    window = make_window(qtbot, width, height)
    made = dialog(qtbot, shop, shop.alerts.open[0], window)
    for key in made.panel.keys.values():
        assert key.body().height() >= TARGET
        assert key.width() >= key.sizeHint().width()
        assert key.height() == TARGET + 2 * RIM
    for label in (made.panel.headline, made.panel.body, made.panel.phone):
        assert label.height() >= label.heightForWidth(label.width()) if label.wordWrap() else True
        assert made.rect().contains(label.geometry())
    listed = page(qtbot, shop, window)
    panel = listed.panel
    assert panel.minimumSizeHint().height() <= panel.height()


def test_the_dialogs_follow_the_scheme(qtbot: Any, window: QWidget) -> None:
    shop = cold_shop()
    made = page(qtbot, shop, window)
    light = light_theme()
    made.show_theme(light)
    assert made.theme is light
    assert all(key._theme is light for key in made.panel.keys.values())


def test_days_are_whole_days_of_the_shop() -> None:
    shop = AlertShop("2026-03-29T12:00+02:00")  # the clocks went forward this morning
    hours = shop.session.board.snapshot.hours
    begin, end = day_of("today", shop.clock.now(), hours)
    assert (begin, end) == (
        parse_iso("2026-03-29T00:00+01:00", "test"), parse_iso("2026-03-30T00:00+02:00", "test")
    )
    assert day_of("2026-03-28", shop.clock.now(), hours)[1] == begin
    for typed in ("tomorrow", "2026-02-30", "12.3.", "soon"):
        with pytest.raises(InputError):
            day_of(typed, shop.clock.now(), hours)
