"""The left side of the epoxy's form: the fields, with what is assumed or wrong under each."""

from __future__ import annotations

from itertools import pairwise

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QLabel, QLineEdit, QVBoxLayout, QWidget

from rackboard.ui import type
from rackboard.ui.dialog import Dialog, row
from rackboard.ui.epoxy_further import FurtherRow, local_figure
from rackboard.ui.language import translated
from rackboard.ui.sheet_fields import (
    FURTHER,
    NUMBERS,
    RATIOS,
    TEMPERATURES,
    TIMES,
    FurtherEntry,
    Read,
    SheetEntry,
    split_span,
)

RING = 5
"""What the ring of a focused field covers of the line under it [px]."""


class EpoxyFacts(QWidget):
    """The fields of one sheet.

    Parameters
    ----------
    form : Dialog
        Makes the controls in its look.
    unit : str
        The shop's unit of temperature.

    Signals
    -------
    changed()
        Something was typed.
    confirmed()
        The doubtful handling time is right.
    """

    changed = Signal()
    confirmed = Signal()

    def __init__(self, form: Dialog, unit: str) -> None:
        super().__init__()
        self.form = form
        self.roles = form.roles
        self.unit = unit
        self.fields: dict[str, QLineEdit] = {}
        self.further: list[FurtherRow] = []
        self._hints: dict[str, QLabel] = {}
        self._captions: list[QLabel] = []
        self.setLayout(self._lay_out())

    def _lay_out(self) -> QVBoxLayout:
        large = self.roles.large
        facts = QVBoxLayout()
        facts.setContentsMargins(8, 4, 16, 8)
        facts.setSpacing(0)
        facts.addWidget(self.form.label(self.tr("Epoxy"), self.roles.head, tone="sub"))
        self.title = self.form.label("", self.roles.title if large else self.roles.inspector_title)
        facts.addWidget(self.title)
        self.said = self.form.label("", tone="sub", wrap=True)
        facts.addWidget(self.said)
        facts.addSpacing(14 if large else 12)
        degrees = f"°{self.unit}"
        wide = 96 if large else 74
        to = self.tr("to")
        self._row(facts, "name", self.tr("Short name, on tiles"), self._text("name", 0), 8)
        self._row(
            facts, "reference_temperature_c", self.tr("Times hold at"),
            self._text("reference", wide), 10, self._unit(degrees),
        )
        self._row(
            facts, "working_life_min", self.tr("To use"), self._text("life_short", wide), 10,
            self._unit(to), 10, self._text("life_long", wide), 10, self._unit(self.tr("min, of")),
            8, self._text("life_mass", 66 if large else 54), 8, self._unit(self.tr("g")),
        )  # fmt: skip
        self._row(
            facts, "handling_time_h", self.tr("Off the rack after"),
            self._text("handling_short", wide), 10, self._unit(to), 10,
            self._text("handling_long", wide), 10, self._unit(self.tr("h")),
        )  # fmt: skip
        facts.addWidget(self._question())
        self._row(
            facts, "full_cure_time_h", self.tr("To hit after"), self._text("full_short", wide), 10,
            self._unit(to), 10, self._text("full_long", wide), 10, self._unit(self.tr("h")),
        )  # fmt: skip
        self._row(
            facts, "minimum_cure_temperature_c", self.tr("Cures between"),
            self._text("minimum", wide), 10, self._unit(to), 10, self._text("maximum", wide), 10,
            self._unit(degrees),
        )  # fmt: skip
        self.forbids = self.form.tick(self.tr("The sheet forbids curing below its minimum"))
        self.forbids.toggled.connect(self.changed)
        facts.addLayout(row(self._caption(""), self.forbids))
        facts.addSpacing(8 if large else 10)
        ratio = 120 if large else 92
        self._row(
            facts, "mix_ratio_by_volume", self.tr("Mix ratio"), self._text("volume", ratio), 10,
            self._unit(self.tr("by volume")), 18, self._text("mass", ratio), 10,
            self._unit(self.tr("by mass")),
        )  # fmt: skip
        self._row(
            facts, "lap_shear_mpa", self.tr("Lap shear"), self._text("shear", wide), 10,
            self._unit(self.tr("MPa"), 42), self._unit(self.tr("shelf life")), 10,
            self._text("shelf", wide), 10, self._unit(self.tr("months")),
        )  # fmt: skip
        self._row(
            facts, "activation_energy_kj_per_mol", self.tr("Activation energy"),
            self._text("energy", wide), 10, self._unit(self.tr("kJ/mol"), 48),
            self._unit(self.tr("density")), 10, self._text("density", wide), 10,
            self._unit(self.tr("g/ml")),
        )  # fmt: skip
        facts.addSpacing(4)
        facts.addWidget(self.form.rule())
        facts.addSpacing(10)
        self.none_given = self.form.label("", tone="sub")
        head = row(
            self.form.label(self.tr("Times at other temperatures"), self.roles.fact_bold), 10,
            stretch=True,
        )
        head.addWidget(self.none_given)
        facts.addLayout(head)
        self.why = self.form.label("", tone="sub", wrap=True)
        facts.addWidget(self.why)
        self._list = QVBoxLayout()
        self._list.setSpacing(0)
        facts.addLayout(self._list)
        facts.addSpacing(10)
        self.adding = self.form.button(self.tr("Add a time…"))
        self.adding.setMinimumHeight(40 if large else 38)
        self.adding.clicked.connect(self.add_further)
        facts.addLayout(row(self.adding))
        facts.addStretch(1)
        self._align()
        return facts

    def _row(self, facts: QVBoxLayout, key: str, name: str, *items: QWidget | int) -> None:
        caption = self._caption(name)
        field = items[0]
        if isinstance(field, QLineEdit):
            caption.setBuddy(field)
        stretch = key != "name"
        facts.addLayout(row(caption, *items, stretch=stretch))
        hint = self.hint()
        self._hints[key] = hint
        facts.addWidget(hint)

    def _caption(self, name: str) -> QLabel:
        made = self.form.label(name)
        self._captions.append(made)
        return made

    def _align(self) -> None:
        """Make the column of captions as wide as its longest, in whatever language."""
        least = 204 if self.roles.large else 136
        wide = max(least, *(caption.sizeHint().width() + 10 for caption in self._captions))
        for caption in self._captions:
            caption.setFixedWidth(wide)
        for hint in self._hints.values():
            hint.setContentsMargins(wide, RING, 0, 0)

    def hint(self) -> QLabel:
        """Return the line under a field: what is assumed, or what is wrong."""
        made = self.form.label("", self.roles.small, tone="sub", wrap=True)
        made.setAlignment(Qt.AlignmentFlag.AlignTop)
        made.setContentsMargins(0, RING, 0, 0)
        made.setMinimumHeight(18 + RING)
        return made

    def _text(self, name: str, width: int) -> QLineEdit:
        names = {
            "name": self.tr("Short name"),
            "reference": self.tr("Temperature at which the times hold"),
            "life_short": self.tr("To use, shortest, minutes"),
            "life_long": self.tr("To use, longest, minutes"),
            "life_mass": self.tr("Mass of that batch, grams"),
            "handling_short": self.tr("Off the rack after, shortest, hours"),
            "handling_long": self.tr("Off the rack after, longest, hours"),
            "full_short": self.tr("To hit after, shortest, hours"),
            "full_long": self.tr("To hit after, longest, hours"),
            "minimum": self.tr("Lowest temperature at which it cures"),
            "maximum": self.tr("Highest temperature at which it may cure"),
            "volume": self.tr("Mix ratio by volume"),
            "mass": self.tr("Mix ratio by mass"),
            "shear": self.tr("Lap shear strength, megapascal"),
            "shelf": self.tr("Shelf life, months"),
            "density": self.tr("Density, grams per millilitre"),
            "energy": self.tr("Activation energy, kilojoule per mole"),
        }
        made = self.form.field(names[name], width)
        made.textChanged.connect(self.changed)
        self.fields[name] = made
        return made

    def _unit(self, text: str, width: int = 0) -> QLabel:
        made = self.form.label(text, tone="sub")
        if width:
            made.setMinimumWidth(width + 12)
        return made

    def _question(self) -> QWidget:
        self.question = QWidget()
        self.question_text = self.form.label("", self.roles.fact_bold, wrap=True)
        self.right = self.form.button(self.tr("It is right"))
        self.right.clicked.connect(self.confirmed)
        layout = QVBoxLayout(self.question)
        layout.setContentsMargins(0, 2, 0, 14)
        layout.addWidget(self.question_text)
        layout.addLayout(row(self.right))
        self.question.hide()
        return self.question

    # What is in the fields

    def fill(self, entry: SheetEntry) -> None:
        """Put the texts of a sheet into the fields."""
        for name, field in self.fields.items():
            given = getattr(entry, name)
            field.setText(given if name == "name" else local_figure(given))
        self.forbids.setChecked(entry.no_cure_below_minimum)
        for old in list(self.further):
            self._drop(old)
        for time in entry.further:
            self._append(time)

    def hint_of(self, key: str) -> str:
        """Return what stands under the field of a sheet's key."""
        if key.startswith(FURTHER):
            return self.further[int(key.split()[1]) - 1].hint.text()
        return self._hints[_home(key)].text()

    def entry(self) -> SheetEntry:
        """Return what is typed."""
        texts = {name: field.text() for name, field in self.fields.items()}
        return SheetEntry(
            no_cure_below_minimum=self.forbids.isChecked(),
            further=tuple(line.entry() for line in self.further),
            **texts,
        )

    def add_further(self) -> None:
        """Add an empty line for one more time."""
        line = self._append(FurtherEntry("full_cure", "", ""))
        line.time.setFocus()
        self.changed.emit()

    def remove_further(self, line: FurtherRow) -> None:
        """Take one line away again."""
        self._drop(line)
        self.adding.setFocus()
        self.changed.emit()

    def _append(self, time: FurtherEntry) -> FurtherRow:
        line = FurtherRow(self, time)
        self.further.append(line)
        self._list.addWidget(line)
        before = self.further[-2].remove if len(self.further) > 1 else self.fields["energy"]
        chain = (before, line.quantity, line.time, line.temperature, line.remove, self.adding)
        for first, second in pairwise(chain):
            QWidget.setTabOrder(first, second)
        return line

    def _drop(self, line: FurtherRow) -> None:
        self.further.remove(line)
        self._list.removeWidget(line)
        line.hide()
        line.deleteLater()

    def spread_spans(self) -> None:
        """Put a range that was typed into one field into its two."""
        for short, long in TIMES.values():
            both = split_span(self.fields[short].text())
            if both and not self.fields[long].text().strip():
                self.fields[short].setText(both[0])
                self.fields[long].setText(both[1])

    def go_to_error(self, read: Read) -> None:
        """Go to the first field that can't be taken."""
        key = next(iter(read.errors), "name")
        if key.startswith(FURTHER):
            self.further[int(key.split()[1]) - 1].time.setFocus()
        elif key in _FIELDS:
            self.fields[_FIELDS[key][0]].setFocus()

    # What is said of them

    def ask(self, doubt: str) -> None:
        """Ask about the handling time; nothing to ask: empty."""
        self.question_text.setText(translated(doubt))
        self.question.setVisible(bool(doubt))

    def show_read(self, read: Read) -> None:
        """Show at each field what is assumed or wrong, and what the further times come to."""
        self._show_hints(read)
        self.none_given.setText(self.tr("none given") if not self.further else "")
        self.why.setText(self._why(read))

    def _why(self, read: Read) -> str:
        if read.model is None:
            return ""
        energy = read.model.energy / 1000
        low, high = read.model.energy_low / 1000, read.model.energy_high / 1000
        if self.fields["energy"].text().strip():
            text = self.tr("Checked against the {0} kJ/mol above.")
            return text.format(local_figure(f"{energy:.3g}")) if self.further else ""
        if self.further:
            text = self.tr("They make {0} kJ/mol ({1} to {2}).")
            return text.format(*(local_figure(f"{value:.1f}") for value in (energy, low, high)))
        return self.tr(
            "One such time replaces the guess of 58 kJ/mol (50 to 65) and brings every"
            " “not before” on the board closer."
        )

    def _show_hints(self, read: Read) -> None:
        texts: dict[str, str] = {}
        wrong: set[str] = set()
        for key, hint in read.hints.items():
            texts[_home(key)] = hint
        for key, error in read.errors.items():
            home = _home(key)
            texts[home] = error
            if key not in read.missing:
                wrong.add(home)
        for home, label in self._hints.items():
            self._say(label, texts.get(home, ""), home in wrong)
        for number, line in enumerate(self.further, 1):
            key = f"{FURTHER} {number}"
            self._say(line.hint, texts.get(key, ""), key in wrong)
            self.form.mark(line.time, key in wrong)
        for key, names in _FIELDS.items():
            for name in names:
                self.form.mark(self.fields[name], key in read.errors and key not in read.missing)

    def _say(self, label: QLabel, text: str, wrong: bool) -> None:
        style = self.roles.small_bold if wrong else self.roles.small
        font = type.font(style)
        if label.font() != font:
            label.setFont(font)
        tone = "" if wrong else "sub"
        if label.property("tone") != tone:
            label.setProperty("tone", tone)
            label.style().unpolish(label)
            label.style().polish(label)
        label.setText(translated(text))


_FIELDS: dict[str, tuple[str, ...]] = {
    "name": ("name",),
    **TIMES,
    **{key: (name,) for key, name in (TEMPERATURES | RATIOS | NUMBERS).items()},
}
_FIELDS["minimum_cure_temperature_c"] = ("minimum", "maximum")
_HOMES = {
    "maximum_cure_temperature_c": "minimum_cure_temperature_c",
    "no_cure_below_minimum": "minimum_cure_temperature_c",
    "mix_ratio_by_mass": "mix_ratio_by_volume",
    "shelf_life_months": "lap_shear_mpa",
    "working_life_mass_g": "working_life_min",
    "density_g_per_ml": "activation_energy_kj_per_mol",
    FURTHER: "activation_energy_kj_per_mol",
}


def _home(key: str) -> str:
    """Return the key under whose row a message stands."""
    return _HOMES.get(key, key)
