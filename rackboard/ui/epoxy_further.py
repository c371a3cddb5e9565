"""One more time of an epoxy's sheet, as a row of its form."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QVBoxLayout, QWidget

from rackboard.core.epoxy import Quantity
from rackboard.core.text import Figure
from rackboard.ui.controls import Choice
from rackboard.ui.dialog import row
from rackboard.ui.language import translated
from rackboard.ui.sheet_fields import FurtherEntry

if TYPE_CHECKING:
    from rackboard.ui.epoxy_facts import EpoxyFacts

_QUANTITIES: tuple[Quantity, ...] = ("full_cure", "handling", "working_life")


class FurtherRow(QWidget):
    """One more time of the sheet: what, how long, at which temperature."""

    def __init__(self, facts: EpoxyFacts, entry: FurtherEntry) -> None:
        super().__init__()
        self._facts = facts
        form = facts.form
        large = form.roles.large
        self.quantity: Choice = form.choice(self.tr("What this time is"))
        for text in (self.tr("to hit"), self.tr("off the rack"), self.tr("to use")):
            self.quantity.addItem(text)
        self.quantity.setCurrentIndex(_QUANTITIES.index(entry.quantity))
        self.quantity.setFixedWidth(150 if large else 122)
        self.time = form.field(self.tr("How long, or shortest to longest"), 116 if large else 88)
        self.time.setText(local_figure(entry.time))
        self.unit = form.label("", tone="sub")
        self.unit.setFixedWidth(30)
        self.temperature = form.field(self.tr("At which temperature"), 84 if large else 62)
        self.temperature.setText(local_figure(entry.temperature))
        self.remove = form.button(self.tr("Remove"))
        self.remove.setAccessibleName(self.tr("Remove this time"))
        self.remove.setMinimumHeight(self.time.height())
        self.hint = facts.hint()
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 7, 0, 0)
        layout.setSpacing(0)
        degrees = form.label(f"°{facts.unit}", tone="sub")
        layout.addLayout(
            row(self.quantity, 12, self.time, 10, self.unit, form.label(self.tr("at"), tone="sub"),
                8, self.temperature, 8, degrees, 14, self.remove)
        )  # fmt: skip
        layout.addWidget(self.hint)
        self._on_quantity()
        self.quantity.currentIndexChanged.connect(self._on_quantity)
        self.quantity.currentIndexChanged.connect(facts.changed)
        self.time.textChanged.connect(facts.changed)
        self.temperature.textChanged.connect(facts.changed)
        self.remove.clicked.connect(self._on_remove)

    def entry(self) -> FurtherEntry:
        """Return what is typed."""
        quantity = _QUANTITIES[self.quantity.currentIndex()]
        return FurtherEntry(quantity, self.time.text(), self.temperature.text())

    def _on_quantity(self) -> None:
        life = _QUANTITIES[self.quantity.currentIndex()] == "working_life"
        self.unit.setText(self.tr("min") if life else self.tr("h"))

    def _on_remove(self) -> None:
        self._facts.remove_further(self)


def local_figure(figure: str) -> str:
    """Return a figure with the language's decimal point; a form reads both."""
    return translated(Figure(figure))
