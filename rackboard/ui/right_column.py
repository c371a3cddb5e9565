"""The right column: what is due and happened above, the inspector or the list below."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QStackedWidget, QWidget

from rackboard.ui.alarm_card import AlarmCard, MoreKey
from rackboard.ui.board_view import Happening, HappeningKind
from rackboard.ui.grid import Grid
from rackboard.ui.happenings import DueRow, HappeningsList, HeadKey, all_of, first_of
from rackboard.ui.keys import TARGET
from rackboard.ui.theme import Theme
from rackboard.ui.type import Roles

if TYPE_CHECKING:
    from rackboard.ui.inspector import Inspector
    from rackboard.ui.inspector_view import InspectorView


class RightColumn(QWidget):
    """The usual page of the right column.

    Signals
    -------
    alarm_answered(str), due_clicked(str), happening_clicked(str)
        The key of the happening.
    action_chosen(str)
        A button of the inspector.
    """

    alarm_answered = Signal(str)
    due_clicked = Signal(str)
    happening_clicked = Signal(str)
    action_chosen = Signal(str)

    def __init__(self, theme: Theme, grid: Grid, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        large = grid.large
        self.head = HeadKey(theme, Roles(large=large), self)
        self.alarm = AlarmCard(theme, large=large, parent=self)
        self.due = DueRow(theme, Roles(large=large), self)
        self.more = MoreKey(theme, Roles(large=large), self)
        self.more.hide()
        self.stack = QStackedWidget(self)
        self.list = HappeningsList(theme, large=large)
        self._nothing = QWidget()
        self._inspector: Inspector | None = None
        self.stack.addWidget(self._nothing)
        self.stack.addWidget(self.list)
        self._happenings: tuple[Happening, ...] = ()
        self.alarm.alarm_answered.connect(self.alarm_answered)
        self.due.clicked.connect(self._on_due_clicked)
        self.more.clicked.connect(self._on_more_clicked)
        self.head.toggled.connect(self._on_head_toggled)
        self.list.row_activated.connect(self._on_row_activated)
        self.show_grid(theme, grid)

    def show_grid(self, theme: Theme, grid: Grid) -> None:
        """Take another scheme or size."""
        self._theme, self._grid = theme, grid
        roles = Roles(large=grid.large)
        self.head.show_theme(theme, roles)
        self.alarm.show_size(theme, large=grid.large)
        self.due.show_theme(theme, roles)
        self.more.show_theme(theme, roles)
        if self._inspector is not None:
            self._inspector.show_size(theme, large=grid.large)
        self.list.show_size(theme, large=grid.large)
        self._place()

    def show_happenings(self, head: str, happenings: tuple[Happening, ...]) -> None:
        """Show what is due and what happened."""
        self.head.show_count(head)
        if happenings == self._happenings:
            return
        self._happenings = happenings
        self.alarm.show_alarms(all_of(happenings, HappeningKind.ALARM))
        self._show_others()
        self.due.show_due(first_of(happenings, HappeningKind.DUE))
        self.list.rows_model.show_rows(happenings)

    def _show_others(self) -> None:
        """Give the row under the card to further alarms; what is due stands in the strip too."""
        others = self.alarm.others()
        had_focus = self.more.hasFocus() or self.due.hasFocus()
        self.more.show_others(others)
        self.more.setVisible(bool(others))
        self.due.setVisible(not others)
        if had_focus:
            (self.more if others else self.due).setFocus()

    def show_inspector(self, view: InspectorView | None) -> None:
        """Show a slot in full."""
        if view is not None or self._inspector is not None:
            self.inspector.show_inspector(view)

    @property
    def inspector(self) -> Inspector:
        """The inspector, made when it is first needed: the first paint does without."""
        if self._inspector is None:
            from rackboard.ui.inspector import Inspector

            made = Inspector(self._theme, large=self._grid.large)
            made.action_chosen.connect(self.action_chosen)
            self._inspector = made
            self.stack.insertWidget(0, made)
            self.stack.removeWidget(self._nothing)
            if not self.head.isChecked():
                self.stack.setCurrentWidget(made)
        return self._inspector

    def _on_head_toggled(self, checked: bool) -> None:
        self.stack.setCurrentWidget(self.list if checked else self._inspector or self._nothing)

    def _on_due_clicked(self) -> None:
        if self.due.objectName():
            self.due_clicked.emit(self.due.objectName())

    def _on_more_clicked(self) -> None:
        self.alarm.show_next()
        self._show_others()

    def _on_row_activated(self, key: str) -> None:
        self.happening_clicked.emit(key)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Place the parts anew."""
        super().resizeEvent(event)
        self._place()

    def _place(self) -> None:
        grid, width, height = self._grid, self.width(), self.height()
        large = grid.large
        self.head.setGeometry(0, 0, width, grid.head)
        y = grid.head
        card = 104 if large else 96
        self.alarm.setGeometry(0, y, width, card)
        y += card + (15 if large else 12)
        for row in (self.due, self.more):
            row.setGeometry(0, y, width, TARGET)
        y += TARGET + (18 if large else 12)
        self.stack.setGeometry(0, y, width, max(height - y, 0))
