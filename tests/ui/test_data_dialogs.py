"""Backups and the erasing of a customer: done when asked for, never by a stray Enter."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import Qt

from helpers.session import lay_out_irons, make_session
from helpers.shop import FakeClock
from helpers.windows import make_window
from rackboard.core.errors import RackboardError, StoreError
from rackboard.core.instants import parse_iso
from rackboard.services.bench import Bench
from rackboard.services.board import Board
from rackboard.services.founding import found_shop
from rackboard.store import Store
from rackboard.store.backup import backups, restore
from rackboard.store.paths import Paths
from rackboard.ui.backup_dialog import BackupDialog, size_text
from rackboard.ui.customer_dialog import CustomerDialog
from rackboard.ui.dialog import Confirmation, Dialog
from rackboard.ui.message import say, say_error
from rackboard.ui.session import Session
from rackboard.ui.theme import dark_theme


class Filed:
    """A shop in a real file, as the window opens it."""

    def __init__(self, folder: Path) -> None:
        self.paths = Paths.below(folder)
        self.clock = FakeClock(parse_iso("2026-03-12T14:26+01:00", "test"))
        self.store = Store.open(self.paths, self.clock.now())
        found_shop(self.store, self.clock.now())
        self.session = self._session()
        self.restored: list[Path] = []

    def _session(self) -> Session:
        from helpers.session import BERLIN

        board = Board(self.store, self.clock, BERLIN)
        return Session(
            self.store, self.clock, board, Bench(self.store, self.clock, board.snapshot.hours)
        )

    def restore(self, path: Path) -> None:
        """Do what the main window does."""
        self.store.close()
        restore(self.paths, path, self.clock.now())
        self.store = Store.open(self.paths, self.clock.now())
        self.session = self._session()
        self.restored.append(path)


@pytest.fixture
def filed(tmp_path: Path) -> Any:
    shop = Filed(tmp_path / "data")
    yield shop
    shop.store.close()


def backup_dialog(qtbot: Any, filed: Filed) -> BackupDialog:
    dialog = BackupDialog(
        filed.session, filed.restore, make_window(qtbot), theme=dark_theme()
    )
    dialog.show()
    return dialog


def make_backup(qtbot: Any, dialog: BackupDialog) -> None:
    qtbot.mouseClick(dialog.making, Qt.MouseButton.LeftButton)
    assert dialog.busy
    qtbot.waitUntil(lambda: not dialog.busy, timeout=10_000)


def confirmation(dialog: BackupDialog | CustomerDialog) -> Confirmation:
    assert dialog.asked is not None
    return dialog.asked


def test_a_backup_is_made_and_listed(qtbot: Any, filed: Filed) -> None:
    dialog = backup_dialog(qtbot, filed)
    assert dialog.message.text() == "No backup yet."
    assert not dialog.restoring.isEnabled()
    make_backup(qtbot, dialog)
    assert "Backed up: rackboard-20260312T132600Z.db, checked." in dialog.message.text()
    (line,) = dialog.list.lines_model.lines()
    assert line.text == "12 Mar 2026 14:26"
    assert line.fact.endswith("kB")
    assert dialog.restoring.isEnabled()
    assert [line.key] == backups(filed.paths.backups)


def test_closing_gives_up_a_backup_in_the_making(qtbot: Any, filed: Filed) -> None:
    dialog = backup_dialog(qtbot, filed)
    qtbot.mouseClick(dialog.making, Qt.MouseButton.LeftButton)
    qtbot.keyClick(dialog, Qt.Key.Key_Escape)
    assert backups(filed.paths.backups) == []
    assert list(filed.paths.backups.iterdir()) == []


def test_restoring_asks_and_cancel_is_what_enter_means(qtbot: Any, filed: Filed) -> None:
    dialog = backup_dialog(qtbot, filed)
    make_backup(qtbot, dialog)
    qtbot.mouseClick(dialog.restoring, Qt.MouseButton.LeftButton)
    asked = confirmation(dialog)
    assert asked.cancel.isDefault()
    assert asked.focusWidget() is asked.cancel
    assert "12 Mar 2026 14:26" in asked.text.text()
    assert "backed up first" in asked.consequence.text()
    qtbot.keyClick(asked, Qt.Key.Key_Return)
    assert filed.restored == []
    assert dialog.isVisible()


def test_restoring_brings_back_what_was(qtbot: Any, filed: Filed) -> None:
    dialog = backup_dialog(qtbot, filed)
    make_backup(qtbot, dialog)
    filed.session.take(filed.session.bench.set_shop_name("after the backup"))
    filed.clock.advance(minutes=5)
    qtbot.mouseClick(dialog.restoring, Qt.MouseButton.LeftButton)
    asked = confirmation(dialog)
    qtbot.mouseClick(asked.go_on, Qt.MouseButton.LeftButton)
    assert len(filed.restored) == 1
    assert filed.store.shop.setting("shop name") is None
    assert len(backups(filed.paths.backups)) == 2  # the replaced data was kept


def test_a_restore_that_fails_is_said_in_the_dialog(qtbot: Any, filed: Filed) -> None:
    def fail(path: Path) -> None:
        raise RackboardError("The backup is damaged.", "Take an older one.")

    dialog = BackupDialog(
        filed.session, fail, make_window(qtbot), theme=dark_theme()
    )
    dialog.show()
    make_backup(qtbot, dialog)
    qtbot.mouseClick(dialog.restoring, Qt.MouseButton.LeftButton)
    qtbot.mouseClick(confirmation(dialog).go_on, Qt.MouseButton.LeftButton)
    assert dialog.message.text() == "The backup is damaged. Take an older one."
    assert dialog.isVisible()


def test_a_shop_without_a_file_says_so(qtbot: Any) -> None:
    session, _ = make_session()
    dialog = BackupDialog(session, lambda path: None, make_window(qtbot))
    assert not dialog.making.isEnabled()
    assert "has no file" in dialog.message.text()


def test_sizes_in_words() -> None:
    assert [size_text(size) for size in (12, 812_300, 4_210_000)] == ["1 kB", "812 kB", "4.2 MB"]


# --- erasing ---------------------------------------------------------------------------------


def customer_dialog(qtbot: Any) -> tuple[Session, CustomerDialog]:
    session, _ = make_session()
    lay_out_irons(session, number="220")
    lay_out_irons(session, first_slot=4, number="221")
    dialog = CustomerDialog(session, make_window(qtbot), theme=dark_theme())
    dialog.show()
    return session, dialog


def test_customers_are_listed_and_found_by_name_or_job(qtbot: Any) -> None:
    _, dialog = customer_dialog(qtbot)
    lines = dialog.list.lines_model.lines
    assert [line.fact for line in lines()] == ["job 221", "job 220"]
    for text, found in (("whit", 2), ("220", 1), ("nobody", 0)):
        dialog.search.setText(text)
        dialog.refresh()
        assert len(lines()) == found, text
    assert not dialog.erasing.isEnabled()


def test_erasing_asks_first_and_enter_cancels(qtbot: Any) -> None:
    session, dialog = customer_dialog(qtbot)
    qtbot.mouseClick(dialog.erasing, Qt.MouseButton.LeftButton)
    asked = confirmation(dialog)
    assert asked.cancel.isDefault()
    assert "can't be brought back" in asked.consequence.text()
    qtbot.keyClick(asked, Qt.Key.Key_Return)
    assert all(c.name == "D. Whitlow" for c in session.board.snapshot.customers.values())


def test_erasing_takes_the_name_and_leaves_the_work(qtbot: Any) -> None:
    session, dialog = customer_dialog(qtbot)
    clubs = len(session.board.snapshot.clubs)
    dialog.search.setText("220")
    dialog.refresh()
    qtbot.mouseClick(dialog.erasing, Qt.MouseButton.LeftButton)
    qtbot.mouseClick(confirmation(dialog).go_on, Qt.MouseButton.LeftButton)
    job = session.store.work.job_numbered("220")
    assert job is not None
    (customer,) = session.store.work.customers([job.customer_id])
    assert customer.name == ""
    assert customer.erased_us is not None
    assert len(session.board.snapshot.clubs) == clubs
    assert session.board.snapshot.customers[customer.id].name == ""
    assert "The record stays: job 220." in dialog.message.text()
    assert dialog.list.lines_model.lines() == ()
    label = session.history.undo_label
    assert label is not None
    assert "erase" not in label  # for good


def test_whom_was_asked_about_is_erased_though_the_list_moves_on(qtbot: Any) -> None:
    """The search looks again a moment after the last key: the question may stand by then."""
    session, dialog = customer_dialog(qtbot)
    asked_of, other = (job_customer(session, number) for number in ("220", "221"))
    lines = dialog.list.lines_model.lines()
    at = next(n for n, line in enumerate(lines) if line.key == asked_of)
    dialog.list.setCurrentIndex(dialog.list.lines_model.index(at))
    dialog.ask()
    dialog.search.setText("221")
    dialog.refresh()
    qtbot.mouseClick(confirmation(dialog).go_on, Qt.MouseButton.LeftButton)
    erased = {
        c.id for c in session.store.work.customers([asked_of, other]) if c.erased_us is not None
    }
    assert erased == {asked_of}


def job_customer(session: Session, number: str) -> int:
    job = session.store.work.job_numbered(number)
    assert job is not None
    return job.customer_id


# --- messages, and the row of buttons ----------------------------------------------------------


def test_a_message_says_what_and_what_to_do_and_goes_with_a_key(qtbot: Any) -> None:
    window = make_window(qtbot)
    error = StoreError("The disk is full.", "Make room, then try again.")
    dialog = say_error(window, error)
    assert dialog.message.text() == "The disk is full."
    assert dialog.remedy.text() == "Make room, then try again."
    assert dialog.focusWidget() is dialog.closing
    with qtbot.waitSignal(dialog.finished):
        qtbot.keyClick(dialog, Qt.Key.Key_Escape)


def test_a_message_without_a_remedy_has_no_empty_line(qtbot: Any) -> None:
    window = make_window(qtbot)
    with_one, without = say(window, "One line.", "A second."), say(window, "One line.")
    assert without.height() < with_one.height()
    with_one.close()
    without.close()


def test_a_long_message_is_shown_whole(qtbot: Any) -> None:
    dialog = say(make_window(qtbot), "A line that is wrapped. " * 8, "And its remedy. " * 20)
    for label in (dialog.message, dialog.remedy):
        assert label.height() >= label.heightForWidth(label.width())
    dialog.close()


def test_the_key_to_press_stands_last_whatever_the_window_wears(qtbot: Any) -> None:
    """A style sheet on the window underneath once kept the row in another order."""
    window = make_window(qtbot)
    window.setStyleSheet("QToolTip{padding:6px}")
    dialog = Dialog(window, dark_theme())
    dialog.frame("Title")
    accepting = dialog.add_buttons("Save", "Cancel")
    assert accepting is not None
    dialog.open()
    (cancel,) = (b for b in dialog.buttons.buttons() if b is not accepting)
    assert cancel.x() < accepting.x()
    dialog.close()
