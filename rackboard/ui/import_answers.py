"""How a logger's file is read: what was guessed, and what must be asked."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from rackboard.core.temperature import Unit
from rackboard.feeds.logger_csv import Answers, DateOrder, Preview, Question
from rackboard.ui import import_view
from rackboard.ui.controls import Choice
from rackboard.ui.dialog import Dialog
from rackboard.ui.language import translated


class ImportAnswers(QWidget):
    """The choices beside a file's preview.

    Parameters
    ----------
    dialog : Dialog
        Makes the controls in its look.
    shop_zone : str
        The name of the shop's time zone, offered first.

    Signals
    -------
    answered()
        A person chose something; `answers` holds all that was chosen.
    """

    answered = Signal()

    def __init__(self, dialog: Dialog, shop_zone: str) -> None:
        super().__init__()
        self._dialog = dialog
        self._shop_zone = shop_zone
        self._settled = Answers()
        self.answers = Answers()
        self.setLayout(self._lay_out())

    def _lay_out(self) -> QVBoxLayout:
        made = QVBoxLayout()
        made.setContentsMargins(0, 0, 12, 8)
        made.setSpacing(8)
        made.addWidget(self._dialog.heading(self.tr("How it is read")))
        self.asked = self._dialog.label("", self._dialog.roles.fact_bold, wrap=True)
        made.addWidget(self.asked)
        grid = QGridLayout()
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(10 if self._dialog.roles.large else 8)
        grid.setColumnStretch(1, 1)
        made.addLayout(grid)
        self.time_column = self._answer(grid, self.tr("Time"))
        self.clock_column = self._answer(grid, self.tr("Clock time"))
        self.temperature_column = self._answer(grid, self.tr("Temperature"))
        self.unit = self._answer(grid, self.tr("Unit"), {"C": "°C", "F": "°F"})
        self.date_order = self._answer(grid, self.tr("Order of dates"), import_view.ORDERS)
        self.time_zone = self._answer(grid, self.tr("Time zone"))
        self.decimal = self._answer(grid, self.tr("Decimal mark"), import_view.DECIMALS)
        self.delimiter = self._answer(grid, self.tr("Between columns"), import_view.DELIMITERS)
        self.encoding = self._answer(grid, self.tr("Letters"), import_view.ENCODINGS)
        self.zone_said = self._dialog.label("", self._dialog.roles.small, tone="sub", wrap=True)
        made.addWidget(self.zone_said)
        made.addStretch(1)
        return made

    def _answer(
        self, grid: QGridLayout, name: str, entries: Mapping[str, str] | None = None
    ) -> Choice:
        choice = self._dialog.choice(name)
        for value, text in (entries or {}).items():
            choice.addItem(translated(text), value)
        choice.setCurrentIndex(-1)
        choice.setEnabled(False)
        choice.activated.connect(self._on_answer)
        at = grid.rowCount()
        caption = self._dialog.label(name)
        caption.setBuddy(choice)
        grid.addWidget(caption, at, 0)
        grid.addWidget(choice, at, 1)
        return choice

    def show_preview(self, preview: Preview | None) -> None:
        """Show what was settled, and ask for what is open."""
        settled = Answers() if preview is None else preview.settled
        names = () if preview is None else preview.columns
        asked = () if preview is None else preview.open_questions
        columns = {str(i): f"{i + 1}: {name}" for i, name in enumerate(names)}
        likely = {} if preview is None else {
            str(i): columns.get(str(i), str(i + 1)) for i in preview.temperature_columns
        }  # fmt: skip
        _fill(self.time_column, columns)
        _fill(self.clock_column, {"": self.tr("in the same column"), **columns})
        _fill(self.temperature_column, likely)
        if preview is not None and not self.time_zone.count():
            zones = import_view.zone_names(self._shop_zone)
            _fill(self.time_zone, {name: name for name in zones})
        wanted = {
            self.time_column: _text(settled.time_column),
            self.clock_column: _text(settled.clock_column) or "",
            self.temperature_column: _text(settled.temperature_column),
            self.unit: settled.unit and settled.unit.value,
            self.date_order: settled.date_order and settled.date_order.value,
            self.time_zone: settled.zone,
            self.decimal: settled.decimal,
            self.delimiter: settled.delimiter,
            self.encoding: settled.encoding,
        }
        for choice, value in wanted.items():
            if value and choice.findData(value) < 0:
                choice.addItem(value, value)
            choice.setCurrentIndex(-1 if value is None else choice.findData(value))
            choice.setEnabled(preview is not None and value is not None)
            choice.setPlaceholderText("")
        of_question = {
            Question.TIME_COLUMN: self.time_column,
            Question.TEMPERATURE_COLUMN: self.temperature_column,
            Question.UNIT: self.unit,
            Question.DATE_ORDER: self.date_order,
            Question.ZONE: self.time_zone,
        }
        for question in asked:
            choice = of_question[question]
            choice.setCurrentIndex(-1)
            choice.setPlaceholderText(self.tr("please choose"))
            choice.setEnabled(True)
        if preview is not None and preview.offset_in_file:
            self.time_zone.setCurrentIndex(-1)
            self.time_zone.setEnabled(False)
            self.time_zone.setPlaceholderText(self.tr("named in the file"))

        questions = [translated(import_view.ASKED[question]) for question in asked]
        self.asked.setText("\n".join(questions))
        self.asked.setVisible(bool(questions))
        self.zone_said.setText("" if preview is None else import_view.zone_said(preview))
        self._settled = settled

    def _on_answer(self) -> None:
        choice = self.sender()
        if not isinstance(choice, Choice):
            return
        value = choice.currentData()
        if choice is self.time_column:
            self._answer_with(time_column=int(value))
        elif choice is self.clock_column:
            time = self._settled.time_column
            self._answer_with(time_column=time, clock_column=int(value) if value else None)
        elif choice is self.temperature_column:
            self._answer_with(temperature_column=int(value))
        elif choice is self.unit:
            self._answer_with(unit=Unit(value))
        elif choice is self.date_order:
            self._answer_with(date_order=DateOrder(value))
        elif choice is self.time_zone:
            self._answer_with(zone=value)
        elif choice is self.decimal:
            self._answer_with(decimal=value)
        elif choice is self.delimiter:
            # Other columns: what was said of the old ones holds no more.
            self.answers = Answers(encoding=self.answers.encoding, delimiter=value)
            self.answered.emit()
        else:
            self._answer_with(encoding=value)

    def _answer_with(self, **chosen: Any) -> None:
        self.answers = replace(self.answers, **chosen)
        self.answered.emit()


def _fill(choice: Choice, entries: dict[str, str]) -> None:
    if [choice.itemData(i) for i in range(choice.count())] == list(entries):
        return
    choice.clear()
    for value, text in entries.items():
        choice.addItem(text, value)


def _text(column: int | None) -> str | None:
    return None if column is None else str(column)
