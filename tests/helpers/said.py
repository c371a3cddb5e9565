"""Everything that a window says: its widgets' texts, its painted words, what the reader hears."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from PySide6.QtCore import QAbstractItemModel, QAbstractListModel, QModelIndex, Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QComboBox,
    QGroupBox,
    QLabel,
    QLineEdit,
    QMenu,
    QTabWidget,
    QWidget,
)

from rackboard.ui import type as letters

_ENGLISH = """
the and of not before is are with from to this that it for club clubs job jobs batch rack since
probably use safe hit hits mixed glue glued cold until now look more wait wet bench cured hold
stale cancel close save done yes what when where whole may off on by head shaft slot slots lay
laid reading nobody somebody nothing there here if then than longest shortest no sheet hours
minutes room light dark find help quit edit view file new add iron wood today tomorrow ago just
every one two
"""
ENGLISH = frozenset(_ENGLISH.split())
"""Words that are English and in no German sentence of the board."""
_ROLES = (
    Qt.ItemDataRole.DisplayRole,
    Qt.ItemDataRole.ToolTipRole,
    Qt.ItemDataRole.AccessibleTextRole,
    Qt.ItemDataRole.AccessibleDescriptionRole,
)


def widget_texts(top: QWidget) -> Iterator[str]:
    """Yield what the widgets below one say, shown or read out."""
    for widget in [top, *top.findChildren(QWidget)]:
        yield from (
            widget.windowTitle(), widget.toolTip(), widget.accessibleName(),
            widget.accessibleDescription(),
        )  # fmt: skip
        match widget:
            case QLabel() | QAbstractButton():
                yield widget.text()
            case QLineEdit():
                yield widget.placeholderText()
            case QGroupBox() | QMenu():
                yield widget.title()
            case QComboBox():
                yield from (widget.itemText(i) for i in range(widget.count()))
            case QTabWidget():
                yield from (widget.tabText(i) for i in range(widget.count()))
            case QAbstractItemView():
                model = widget.model()
                if model is not None:
                    yield from _rows(model)
    for action in top.findChildren(QAction):
        yield from (action.text(), action.toolTip(), action.statusTip())


def _rows(model: QAbstractItemModel) -> Iterator[str]:
    nowhere = QModelIndex()
    one_column = isinstance(model, QAbstractListModel)  # its columnCount() is private
    for column in range(1 if one_column else model.columnCount(nowhere)):
        head = model.headerData(column, Qt.Orientation.Horizontal)
        yield head if isinstance(head, str) else ""
        for row in range(model.rowCount(nowhere)):
            for role in _ROLES:
                value = model.index(row, column).data(role)
                yield value if isinstance(value, str) else ""


class Painted:
    """Notes every text that is painted, and every one that was cut to its room.

    Parameters
    ----------
    monkeypatch : pytest.MonkeyPatch
        Puts the painting back afterwards.
    """

    def __init__(self, monkeypatch: Any) -> None:
        self.texts: set[str] = set()
        self.cut: set[str] = set()
        layout, fitting = letters._layout, letters.fitting

        def noted_layout(style: letters.Style, text: str) -> Any:
            self.texts.add(text)
            return layout(style, text)

        def noted_fitting(style: letters.Style, text: str, room: float) -> str:
            fitted = fitting(style, text, room)
            if fitted != text:
                self.cut.add(text)
            return fitted

        monkeypatch.setattr(letters, "_layout", noted_layout)
        monkeypatch.setattr(letters, "fitting", noted_fitting)

    def of(self, widget: QWidget) -> set[str]:
        """Return what is painted when a widget is drawn now."""
        self.texts.clear()
        widget.grab()
        return set(self.texts)


def english_words(texts: set[str]) -> list[str]:
    """Return the texts that have an English word in them, with that word."""
    found = []
    for text in sorted(texts):
        words = re.findall(r"[A-Za-zÄÖÜäöüß]+", text)
        hit = [word for word in words if word.casefold() in ENGLISH]
        if hit:
            found.append(f"{text!r}: {', '.join(hit)}")
    return found
