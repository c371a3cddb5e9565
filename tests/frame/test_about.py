"""About names what is shipped, with its licence."""

from __future__ import annotations

from PySide6.QtWidgets import QLabel, QPlainTextEdit
from pytestqt.qtbot import QtBot

from rackboard import __version__
from rackboard.ui.about import AboutDialog, licences, own_licence


def test_licences_name_every_part_and_hold_the_shipped_text() -> None:
    text = licences()
    for name in ("Barlow", "PySide6", "SQLite", "platformdirs", "LGPL 3"):
        assert name in text
    assert "SIL OPEN FONT LICENSE Version 1.1" in text
    assert "Copyright 2017 The Barlow Project Authors" in text


def test_own_licence() -> None:
    assert "MIT License" in own_licence()
    assert "the rackboard authors" in own_licence()


def test_the_dialog_says_version_and_limits(qtbot: QtBot) -> None:
    dialog = AboutDialog()
    dialog.open()
    text = "\n".join(label.text() for label in dialog.findChildren(QLabel))
    assert __version__ in text
    assert "it does not measure the bond" in text
    texts = [view.toPlainText() for view in dialog.findChildren(QPlainTextEdit)]
    assert any("MIT License" in t for t in texts)
    assert any("Open Font License" in t for t in texts)
    with qtbot.waitSignal(dialog.destroyed):
        dialog.buttons.rejected.emit()
