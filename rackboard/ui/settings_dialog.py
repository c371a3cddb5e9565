"""Settings: opening hours, heating, unit, theme, the shop's name, who is at the bench."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QCompleter,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QVBoxLayout,
    QWidget,
)

from rackboard.core.bench import Heating, Zone
from rackboard.core.errors import InputError, RackboardError
from rackboard.core.schedule import Hours
from rackboard.core.temperature import Unit, parse_temperature
from rackboard.services.bench import LONGEST_INITIALS, LONGEST_SHOP_NAME, THEME
from rackboard.services.snapshot import SHOP_NAME, UNIT
from rackboard.store.changes import ChangeSet
from rackboard.ui import wording
from rackboard.ui.controls import Option
from rackboard.ui.dialog import Dialog, row
from rackboard.ui.session import Session
from rackboard.ui.sheet_fields import bare_temperature, said
from rackboard.ui.shop_fields import clock_text, read_clock, read_day
from rackboard.ui.theme import Theme

_USUAL_DAY = (480, 1080)
_USUAL_HEATING = Heating(420, 1080, 16_000)


class DayRow:
    """One day's fields."""

    def __init__(self, dialog: SettingsDialog, name: str, hours: Hours) -> None:
        wide = 92 if dialog.roles.large else 76
        start, end = hours or _USUAL_DAY
        self.name = name
        self.opening = dialog.field(dialog.tr("{0}: opens at").format(name), wide)
        self.closing = dialog.field(dialog.tr("{0}: closes at").format(name), wide)
        self.closed = dialog.tick(dialog.tr("closed"))
        self.closed.setAccessibleName(dialog.tr("{0}: closed").format(name))
        self.opening.setText(clock_text(start))
        self.closing.setText(clock_text(end))
        self.closed.setChecked(hours is None)
        self._show_closed()
        self.closed.toggled.connect(self._show_closed)

    def read(self) -> Hours:
        """Return the day's hours."""
        return read_day(
            self.opening.text(), self.closing.text(), self.closed.isChecked(), self.name
        )

    def _show_closed(self) -> None:
        for field in (self.opening, self.closing):
            field.setEnabled(not self.closed.isChecked())


class HeatingRow:
    """One zone's heating."""

    def __init__(self, dialog: SettingsDialog, zone: Zone) -> None:
        wide = 92 if dialog.roles.large else 76
        self.zone = zone
        self._unit = dialog.session.unit
        heating = zone.heating or _USUAL_HEATING
        self.known = dialog.choice(dialog.tr("{0}: heating").format(zone.name))
        self.known.addItem(dialog.tr("not known"))
        self.known.addItem(dialog.tr("by the clock"))
        self.known.setCurrentIndex(int(zone.heating is not None))
        self.on = dialog.field(dialog.tr("{0}: heating on at").format(zone.name), wide)
        self.off = dialog.field(dialog.tr("{0}: heating off at").format(zone.name), wide)
        self.setback = dialog.field(dialog.tr("{0}: falls at night to").format(zone.name), wide)
        self.on.setText(clock_text(heating.on_min))
        self.off.setText(clock_text(heating.off_min))
        self.setback.setText(bare_temperature(heating.setback_mc / 1000, self._unit))
        self._show_known()
        self.known.currentIndexChanged.connect(self._show_known)

    def read(self) -> Heating | None:
        """Return the zone's heating; None if it isn't known."""
        if self.known.currentIndex() == 0:
            return None
        name = self.zone.name
        on, off = read_clock(self.on.text(), name), read_clock(self.off.text(), name)
        if on >= off:
            came = f"{clock_text(on)} to {clock_text(off)}"
            raise InputError("an hour off after the hour on", came, name)
        return Heating(on, off, parse_temperature(self.setback.text(), self._unit, name))

    def _show_known(self) -> None:
        for field in (self.on, self.off, self.setback):
            field.setEnabled(self.known.currentIndex() == 1)


class SettingsDialog(Dialog):
    """The shop's settings.

    Parameters
    ----------
    session : Session
        The open shop.
    theme : Theme, optional
        The scheme; by default the application's.

    Signals
    -------
    theme_chosen(str)
        "dark", "light" or "" was saved, for the window's appearance.
    """

    theme_chosen = Signal(str)

    def __init__(
        self, session: Session, parent: QWidget | None = None, *, theme: Theme | None = None
    ) -> None:
        super().__init__(parent, theme)
        self.session = session
        snapshot = session.board.snapshot
        self.days = [
            DayRow(self, name, hours)
            for name, hours in zip(wording.LONG_DAYS, snapshot.hours.week, strict=True)
        ]
        zones = sorted(snapshot.zones.values(), key=lambda zone: zone.sort)
        self.heatings = [HeatingRow(self, zone) for zone in zones]
        self._lay_out()
        self.fit(1420 if self.roles.large else 1140, 880 if self.roles.large else 700)
        self.name.setFocus()

    # Layout

    def _lay_out(self) -> None:
        content = self.frame(self.tr("Settings"))
        page = QWidget()
        columns = QHBoxLayout(page)
        columns.setContentsMargins(0, 0, 8, 8)
        columns.setSpacing(64 if self.roles.large else 36)
        columns.addLayout(self._first_column())
        columns.addLayout(self._second_column(), 1)
        content.addWidget(self.scrolled(page), 1)
        self.message = self.label("", self.roles.fact_bold, wrap=True)
        content.addWidget(self.message)
        accepting = self.add_buttons(self.tr("Save settings"), self.tr("Cancel"))
        assert accepting is not None
        self.saving = accepting

    def _first_column(self) -> QVBoxLayout:
        made = QVBoxLayout()
        made.setSpacing(8)
        made.addWidget(self.heading(self.tr("The shop")))
        settings = self.session.board.snapshot.settings
        self.name = self.field(self.tr("Name of the shop"))
        self.name.setText(str(settings.get(SHOP_NAME) or ""))
        self.name.setMaxLength(LONGEST_SHOP_NAME)
        self.initials = self.field(self.tr("Initials of who is at the bench"), 110)
        self.initials.setText(self.session.bench.by or "")
        self.initials.setMaxLength(LONGEST_INITIALS)
        known = [person.initials for person in self.session.store.shop.persons()]
        self.initials.setCompleter(QCompleter(known, self))
        caption = 118 if self.roles.large else 94
        made.addLayout(self._captioned(caption, self.tr("Name"), self.name))
        lately = self.tr("lately: {0}").format(", ".join(known[:6])) if known else ""
        made.addLayout(
            self._captioned(caption, self.tr("At the bench"), self.initials, 12,
                            self.label(lately or self.tr("initials"), tone="sub"))
        )  # fmt: skip
        made.addSpacing(self.gap)
        made.addWidget(self.heading(self.tr("Opening hours")))
        typed = self.session.board.snapshot.hours_typed
        self.until_typed = self.label(
            self.tr("Monday to Friday 08:00–18:00 until you type them."), tone="sub", wrap=True
        )
        self.until_typed.setVisible(not typed)
        made.addWidget(self.until_typed)
        for day in self.days:
            made.addLayout(
                self._captioned(
                    caption, day.name, day.opening, 10, self.label(self.tr("to"), tone="sub"), 10,
                    day.closing, 20, day.closed,
                )
            )  # fmt: skip
        made.addStretch(1)
        return made

    def _captioned(self, width: int, name: str, *items: QWidget | int) -> QHBoxLayout:
        caption: QLabel = self.label(name)
        caption.setFixedWidth(width)
        if isinstance(items[0], QWidget):
            caption.setBuddy(items[0])
        return row(caption, *items, stretch=len(items) > 1)

    def _second_column(self) -> QVBoxLayout:
        made = QVBoxLayout()
        made.setSpacing(8)
        made.addWidget(self.heading(self.tr("Heating")))
        made.addWidget(
            self.label(
                self.tr("On open days. With it the board can reckon a night that nobody measured;"
                        " without it, it asks in the morning how cold it got."),
                tone="sub",
                wrap=True,
            )
        )
        grid = QGridLayout()
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(10)
        grid.setColumnStretch(6, 1)
        heads = ("", self.tr("heating"), self.tr("on at"), self.tr("off at"),
                 self.tr("falls to °{0}").format(self.session.unit))  # fmt: skip
        for at, head in enumerate(heads):
            grid.addWidget(self.label(head, self.roles.small, tone="sub"), 0, at)
        for line, heating in enumerate(self.heatings, 1):
            grid.addWidget(self.label(heating.zone.name), line, 0)
            fields = (heating.known, heating.on, heating.off, heating.setback)
            for at, field in enumerate(fields, 1):
                grid.addWidget(field, line, at)
        made.addLayout(grid)
        made.addSpacing(self.gap)
        settings = self.session.board.snapshot.settings
        made.addWidget(self.heading(self.tr("Temperatures in")))
        by_locale = self.tr("as the system says, °{0}").format(self.session.locale_unit)
        self.units = self._options(
            made, {"": by_locale, "C": "°C", "F": "°F"}, str(settings.get(UNIT) or "")
        )
        made.addSpacing(self.gap)
        made.addWidget(self.heading(self.tr("Theme")))
        themes = {"": self.tr("as the system"), "dark": self.tr("dark"), "light": self.tr("light")}
        self.themes = self._options(made, themes, str(settings.get(THEME) or ""))
        made.addStretch(1)
        return made

    def _options(
        self, column: QVBoxLayout, entries: dict[str, str], chosen: str
    ) -> dict[str, Option]:
        group = QButtonGroup(self)
        line = QHBoxLayout()
        line.setSpacing(28)
        made = {}
        for value, text in entries.items():
            option = self.option(text)
            option.setChecked(value == chosen)
            group.addButton(option)
            line.addWidget(option)
            made[value] = option
        line.addStretch(1)
        column.addLayout(line)
        return made

    # Saving

    def accept(self) -> None:
        """Save what was changed; nothing is saved while something can't be taken."""
        self.message.setText("")
        try:
            acts = self._acts()
            for act in acts:
                changes = act()
                if changes:
                    self.session.take(changes)
        except InputError as error:
            self.message.setText(f"{error.where}: {said(error)}")
            self._mark(error.where)
            return
        except RackboardError as error:
            self.message.setText(str(error))
            return
        theme = _chosen(self.themes)
        if self._theme_changed:
            self.theme_chosen.emit(theme)
        super().accept()

    _theme_changed = False

    def _acts(self) -> list[Callable[[], ChangeSet]]:
        """Read every field; return the acts that store what was changed."""
        bench, snapshot = self.session.bench, self.session.board.snapshot
        week = [day.read() for day in self.days]
        heatings = [(heating.zone, heating.read()) for heating in self.heatings]
        acts: list[Callable[[], ChangeSet]] = []
        name, initials = self.name.text().strip(), self.initials.text().strip()
        if name != str(snapshot.settings.get(SHOP_NAME) or ""):
            acts.append(lambda: bench.set_shop_name(name))
        if initials != (bench.by or ""):
            acts.append(lambda: bench.set_by(initials))
        if week != list(snapshot.hours.week):
            acts.append(lambda: bench.set_week(week))
        for zone, heating in heatings:
            if heating != zone.heating:
                acts.append(lambda z=zone.id, h=heating: bench.set_heating(z, h))  # type: ignore[misc]
        unit, theme = _chosen(self.units), _chosen(self.themes)
        if unit != str(snapshot.settings.get(UNIT) or ""):
            acts.append(lambda: bench.set_unit(Unit(unit) if unit else None))
        self._theme_changed = theme != str(snapshot.settings.get(THEME) or "")
        if self._theme_changed:
            acts.append(lambda: bench.set_theme(theme))
        return acts

    def _mark(self, where: str) -> None:
        fields = {day.name: day.opening for day in self.days}
        fields |= {heating.zone.name: heating.on for heating in self.heatings}
        fields |= {"shop name": self.name, "initials": self.initials}
        for name, field in fields.items():
            self.mark(field, name == where)
        if where in fields:
            fields[where].setFocus()


def _chosen(options: dict[str, Option]) -> str:
    return next((value for value, option in options.items() if option.isChecked()), "")
