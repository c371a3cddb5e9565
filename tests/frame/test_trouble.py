"""An unexpected error is logged, shown once, and never loops."""

from __future__ import annotations

import sys
import threading
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication, QDialogButtonBox, QPushButton
from pytestqt.qtbot import QtBot

from rackboard import __version__
from rackboard.core.errors import StoreError
from rackboard.ui.trouble import MOST_DIALOGS, Trouble


def fail_at_one_place() -> None:
    raise ValueError("one place")


def take(trouble: Trouble, error: Exception | None = None) -> None:
    """Do what Qt's wrapper does with an exception in a slot."""
    try:
        if error is not None:
            raise error
        fail_at_one_place()
    except Exception as caught:
        trouble.take(type(caught), caught, caught.__traceback__)


@pytest.fixture
def trouble(qtbot: QtBot, tmp_path: Path) -> Trouble:
    return Trouble(tmp_path / "rackboard.log")


@pytest.mark.expects_log("unexpected")
def test_it_is_shown_later_and_can_be_copied(trouble: Trouble, qtbot: QtBot) -> None:
    take(trouble)
    assert trouble.dialog is None  # never from inside a paint event
    qtbot.waitUntil(lambda: trouble.dialog is not None)
    dialog = trouble.dialog
    assert dialog is not None
    assert dialog.isVisible()
    (buttons,) = dialog.findChildren(QDialogButtonBox)
    (copy,) = [b for b in buttons.findChildren(QPushButton) if b.text() == "Copy report"]
    copy.click()
    text = QApplication.clipboard().text()
    assert f"rackboard {__version__}" in text
    assert "fail_at_one_place" in text
    assert "ValueError: one place" in text
    assert "rackboard.log" in text
    dialog.close()
    qtbot.waitUntil(lambda: trouble.dialog is None)


@pytest.mark.expects_log("unexpected")
@pytest.mark.expects_log(r"again, \d+ times so far: ValueError")
def test_the_same_place_is_shown_once_and_the_log_stays_short(
    trouble: Trouble, qtbot: QtBot, caplog: pytest.LogCaptureFixture
) -> None:
    for _ in range(1000):
        take(trouble)
    qtbot.waitUntil(lambda: trouble.dialog is not None)
    assert len(caplog.records) < 12
    assert trouble.dialog is not None
    trouble.dialog.close()
    qtbot.waitUntil(lambda: trouble.dialog is None)
    take(trouble)
    QApplication.processEvents()
    assert trouble.dialog is None


@pytest.mark.expects_log("unexpected")
def test_different_places_are_shown_a_few_times_at_most(trouble: Trouble, qtbot: QtBot) -> None:
    shown = 0
    for number in range(MOST_DIALOGS + 2):
        code = compile("\n" * number + "raise KeyError('other')", "places", "exec")
        try:
            exec(code, {})
        except KeyError as caught:
            trouble.take(type(caught), caught, caught.__traceback__)
        QApplication.processEvents()
        if trouble.dialog is not None:
            shown += 1
            trouble.dialog.close()
            qtbot.waitUntil(lambda: trouble.dialog is None)
    assert shown == MOST_DIALOGS


@pytest.mark.expects_log("unexpected")
def test_trouble_of_the_world_is_said_in_its_own_words(trouble: Trouble, qtbot: QtBot) -> None:
    take(trouble, StoreError("The disk is full.", "Make room, then try again."))
    qtbot.waitUntil(lambda: trouble.dialog is not None)
    dialog = trouble.dialog
    assert dialog is not None
    assert "The disk is full. Make room, then try again." in dialog.message.text()  # type: ignore[attr-defined]
    dialog.close()
    qtbot.waitUntil(lambda: trouble.dialog is None)


@pytest.mark.expects_log("unexpected")
def test_an_error_in_another_thread_is_shown_in_this_one(
    trouble: Trouble, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "excepthook", sys.excepthook)
    monkeypatch.setattr(threading, "excepthook", threading.excepthook)
    trouble.install()
    worker = threading.Thread(target=fail_at_one_place)
    worker.start()
    worker.join()
    qtbot.waitUntil(lambda: trouble.dialog is not None)
    assert trouble.dialog is not None
    assert trouble.dialog.thread() is QApplication.instance().thread()
    trouble.dialog.close()
    qtbot.waitUntil(lambda: trouble.dialog is None)


def test_an_error_while_reporting_goes_to_python_itself(
    trouble: Trouble, monkeypatch: pytest.MonkeyPatch
) -> None:
    passed: list[BaseException] = []
    monkeypatch.setattr(sys, "__excepthook__", lambda kind, error, traceback: passed.append(error))
    monkeypatch.setattr(trouble, "_take", lambda *arguments: 1 / 0)
    take(trouble, ValueError("first"))
    assert [str(error) for error in passed] == ["first"]
