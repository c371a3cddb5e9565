"""The help says what the board shows, every key, how it reckons, and its cautions."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QLabel, QMainWindow, QScrollArea

from helpers.windows import make_window
from rackboard.core.temperature import Unit
from rackboard.core.words import PHRASES, Word
from rackboard.ui.help_dialog import HelpDialog, spoken
from rackboard.ui.help_pages import KeyLine, Signal, plain
from rackboard.ui.help_signs import SignView
from rackboard.ui.theme import dark_theme, light_theme

PAGES = ["states", "board", "keys", "model", "cautions"]


@pytest.fixture
def window(qtbot: Any) -> QMainWindow:
    made = QMainWindow()
    qtbot.addWidget(made)
    menu = made.menuBar().addMenu("&File")
    for label, keys in (
        ("New &job…", ["Ctrl+N"]),
        ("Undo laying out 220", ["Ctrl+Z"]),
        ("Redo", ["Ctrl+Y", "Ctrl+Shift+Z"]),
        ("No key", []),
    ):
        action = QAction(label, made)
        action.setShortcuts([QKeySequence(key) for key in keys])
        menu.addAction(action)
        made.addAction(action)
    made.resize(1280, 800)
    return made


@pytest.fixture
def dialog(qtbot: Any, window: QMainWindow) -> Iterator[HelpDialog]:
    made = HelpDialog(window, actions=window.actions(), theme=dark_theme())
    made.open()
    yield made
    made.close()


def texts(dialog: HelpDialog) -> str:
    return "\n".join(spoken(page) for page in dialog.pages)


def test_every_page_is_listed_and_turned_to_by_the_arrows(qtbot: Any, dialog: HelpDialog) -> None:
    assert [page.key for page in dialog.pages] == PAGES
    assert [line.key for line in dialog.list.lines_model.lines()] == PAGES
    assert dialog.focusWidget() is dialog.list
    for at in range(1, len(PAGES)):
        qtbot.keyClick(dialog.list, Qt.Key.Key_Down)
        assert dialog.stack.currentIndex() == at


def test_a_page_can_be_asked_for(window: QMainWindow, qtbot: Any) -> None:
    made = HelpDialog(window, page="cautions")
    assert made.stack.currentIndex() == PAGES.index("cautions")
    made.show_page("nothing of that name")
    assert made.stack.currentIndex() == 0
    made.deleteLater()


def test_a_long_page_scrolls_from_the_list(qtbot: Any, dialog: HelpDialog) -> None:
    dialog.show_page("model")
    area = dialog.stack.currentWidget()
    assert isinstance(area, QScrollArea)
    bar = area.verticalScrollBar()
    assert bar.maximum() > 0
    qtbot.keyClick(dialog.list, Qt.Key.Key_PageDown)
    assert bar.value() > 0
    qtbot.keyClick(dialog.list, Qt.Key.Key_PageUp)
    assert bar.value() == 0


@pytest.mark.parametrize("size", [(1280, 800), (1920, 1080)])
def test_no_line_is_wider_than_its_page(qtbot: Any, size: tuple[int, int]) -> None:
    dialog = HelpDialog(make_window(qtbot, *size), theme=light_theme())
    dialog.open()
    assert dialog.height() <= size[1]
    for key in PAGES:
        dialog.show_page(key)
        area = dialog.stack.currentWidget()
        assert isinstance(area, QScrollArea)
        page = area.widget()
        assert page.minimumSizeHint().width() <= area.viewport().width()
    dialog.close()


def test_every_state_is_there_with_its_phrase(dialog: HelpDialog) -> None:
    states = spoken(dialog.pages[0])
    for word in Word:
        if word is not Word.HOLD:
            assert PHRASES[word] in states
    for reason in ("disturbed", "soft smear", "too hot"):
        assert f"on hold: {reason}" in states
    plates = dialog.stack.widget(0).findChildren(SignView)
    assert len(plates) == 9


def test_every_sign_is_drawn_in_both_schemes(dialog: HelpDialog) -> None:
    for key in PAGES:
        dialog.show_page(key)
    assert len(dialog.findChildren(SignView)) > 15
    for theme in (dark_theme(), light_theme()):
        dialog.show_theme(theme)
        for sign in dialog.findChildren(SignView):
            image = sign.grab().toImage()
            first = image.pixel(0, 0)
            assert any(
                image.pixel(x, y) != first
                for x in range(0, image.width(), 2)
                for y in range(0, image.height(), 2)
            ), sign.accessibleName()


def test_keys_come_from_the_windows_own_commands(dialog: HelpDialog) -> None:
    blocks = dialog.pages[2].blocks
    lines = {block.name: block.keys for block in blocks if isinstance(block, KeyLine)}
    assert lines["New job"] == "Ctrl+N"
    assert lines["Undo"] == "Ctrl+Z"  # whatever it would undo just now
    assert lines["Redo"] == "Ctrl+Y, Ctrl+Shift+Z"
    assert "No key" not in lines
    assert "File" in spoken(dialog.pages[2])


def test_a_label_loses_its_mnemonic_only() -> None:
    assert plain("&File") == "File"
    assert plain("Nuts && bolts…") == "Nuts & bolts"


def test_signal_words_are_used_as_the_board_uses_them(dialog: HelpDialog) -> None:
    signals = [b for page in dialog.pages for b in page.blocks if isinstance(b, Signal)]
    assert [s.name for s in signals if s.word == "WARNING"] == ["A head that lets go can injure"]
    assert {s.name for s in signals if s.word == "CAUTION"} == {
        "Skin and eyes", "Solvent vapour", "The warm box",
    }  # fmt: skip
    assert "DANGER" not in texts(dialog).upper()


def test_the_cautions_name_every_hazard(dialog: HelpDialog) -> None:
    said = spoken(dialog.pages[4])
    for words in (
        "does not measure the bond", "local codes", "qualified builder", "Gloves", "ventilation",
        "sensitise", "vapour creeps", "near a warm box", "cut-out", "the club isn't hit",
        "hot car",
    ):  # fmt: skip
        assert words in said, words


def test_temperatures_are_in_the_shops_unit(window: QMainWindow) -> None:
    fahrenheit = HelpDialog(window, unit=Unit.F)
    said = texts(fahrenheit)
    assert "°C" not in said
    assert "18\N{NO-BREAK SPACE}°F warmer" in said
    assert "113\N{NO-BREAK SPACE}°F to 140\N{NO-BREAK SPACE}°F" in said
    fahrenheit.deleteLater()


def test_a_screen_reader_gets_the_whole_page(dialog: HelpDialog) -> None:
    for page in dialog.pages:
        dialog.show_page(page.key)
        area = dialog.stack.currentWidget()
        assert area.accessibleName() == page.title
        told = area.accessibleDescription()
        assert area.findChildren(QLabel)
        for label in area.findChildren(QLabel):
            assert label.text() in (page.title, "–") or label.text() in told, label.text()
        assert area.focusPolicy() & Qt.FocusPolicy.TabFocus
