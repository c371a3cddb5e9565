"""Settings in pages: the shop, its hours and heating, its racks and zones, the screen."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QModelIndex, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QCompleter,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from rackboard.core.bench import Heating, Zone
from rackboard.core.errors import InputError, RackboardError
from rackboard.core.schedule import Hours
from rackboard.core.temperature import Unit, parse_temperature
from rackboard.core.text import text
from rackboard.services.bench import LONGEST_INITIALS, LONGEST_SHOP_NAME
from rackboard.services.furnishing import Furnishing
from rackboard.services.snapshot import CONTRAST, LANGUAGE, MOTION, SHOP_NAME, THEME, UNIT
from rackboard.store.changes import ChangeSet
from rackboard.ui import wording
from rackboard.ui.courier_settings import CourierSettings
from rackboard.ui.dialog import Dialog, row
from rackboard.ui.language import say, translated
from rackboard.ui.list_rows import Line, LineList
from rackboard.ui.place_fields import refusal
from rackboard.ui.rack_settings import RackSettings
from rackboard.ui.screen_settings import ScreenSettings, chosen_of, options, screen_pitch_mm
from rackboard.ui.session import Session
from rackboard.ui.sheet_fields import bare_temperature
from rackboard.ui.shop_fields import clock_text, read_clock, read_day, said_span
from rackboard.ui.theme import Theme
from rackboard.ui.wall_size import viewing_of

SHOP, HOURS, RACKS, SCREEN, NOTICES = range(5)
"""The pages."""
_USUAL_DAY = (480, 1080)
_USUAL_HEATING = Heating(420, 1080, 16_000)


class DayRow:
    """One day's fields."""

    def __init__(self, dialog: SettingsDialog, name: str, hours: Hours) -> None:
        wide = 92 if dialog.roles.large else 76
        start, end = hours or _USUAL_DAY
        self.name = name
        self.opening = dialog.field(say("Settings", "{day}: opens at").format(day=name), wide)
        self.closing = dialog.field(say("Settings", "{day}: closes at").format(day=name), wide)
        self.closed = dialog.tick(say("Settings", "closed"))
        self.closed.setAccessibleName(say("Settings", "{day}: closed").format(day=name))
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
        self.known = dialog.choice(say("Settings", "{zone}: heating").format(zone=zone.name))
        self.known.addItem(say("Settings", "not known"))
        self.known.addItem(say("Settings", "by the clock"))
        self.known.setCurrentIndex(int(zone.heating is not None))
        name = zone.name
        self.on = dialog.field(say("Settings", "{zone}: heating on at").format(zone=name), wide)
        self.off = dialog.field(say("Settings", "{zone}: heating off at").format(zone=name), wide)
        night = say("Settings", "{zone}: falls at night to")
        self.setback = dialog.field(night.format(zone=name), wide)
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
            wanted = text("Settings", "an hour off after the hour on")
            raise InputError(wanted, said_span(on, off), name)
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
    theme_chosen(str), contrast_chosen(str), motion_chosen(bool), language_chosen(str)
        Was saved, for the window's appearance: "dark", "light" or ""; "on", "off" or "";
        whether nothing moves; the code of a language or "".
    viewing_chosen(Viewing)
        From where the wall is read now.
    """

    theme_chosen = Signal(str)
    contrast_chosen = Signal(str)
    motion_chosen = Signal(bool)
    language_chosen = Signal(str)
    viewing_chosen = Signal(object)

    def __init__(
        self, session: Session, parent: QWidget | None = None, *, theme: Theme | None = None
    ) -> None:
        super().__init__(parent, theme)
        self.session = session
        snapshot = session.board.snapshot
        self.days = [
            DayRow(self, translated(name), hours)
            for name, hours in zip(wording.LONG_DAYS, snapshot.hours.week, strict=True)
        ]
        zones = sorted(snapshot.zones.values(), key=lambda zone: zone.sort)
        self.heatings = [HeatingRow(self, zone) for zone in zones]
        self.racks = RackSettings(session, self, theme)
        self.screen_page = ScreenSettings(dict(snapshot.settings), self)
        self.themes = self.screen_page.themes
        self.courier_page = CourierSettings(session, self, session.couriers)
        self._lay_out()
        session.acted.connect(self._on_acted)
        self.fit(1420 if self.roles.large else 1140, 980 if self.roles.large else 720)
        self.name.setFocus()

    # Layout

    def _lay_out(self) -> None:
        content = self.frame(say("Settings", "Settings"))
        self.pages = LineList(say("Settings", "Pages"), self.theme, self.roles)
        self.pages.setFixedWidth(300 if self.roles.large else 236)
        self.stack = QStackedWidget()
        named = (
            (say("Settings", "Shop"), self._shop_page()),
            (say("Settings", "Hours and heating"), self._hours_page()),
            (say("Settings", "Racks and zones"), self.racks),
            (say("Settings", "Screen and wall"), self.screen_page),
            (say("Settings", "Notices and sounds"), self.courier_page),
        )
        for name, page in named:
            self.stack.addWidget(self.scrolled(page))
            page.setAccessibleName(name)
        self.pages.show_lines(tuple(Line(at, name) for at, (name, _) in enumerate(named)))
        self.pages.selectionModel().currentChanged.connect(self._on_page)
        for keys, by in (("Ctrl+PgDown", 1), ("Ctrl+PgUp", -1)):
            shortcut = QShortcut(QKeySequence(keys), self)
            shortcut.activated.connect(self._next_page if by > 0 else self._last_page)
        columns = QHBoxLayout()
        columns.setSpacing(32 if self.roles.large else 16)
        columns.addWidget(self.pages)
        columns.addWidget(self.stack, 1)
        content.addLayout(columns, 1)
        self.message = self.label("", self.roles.fact_bold, wrap=True)
        content.addWidget(self.message)
        accepting = self.add_buttons(say("Settings", "Save settings"), say("Settings", "Cancel"))
        assert accepting is not None
        self.saving = accepting

    def _page(self) -> tuple[QWidget, QVBoxLayout]:
        page = QWidget()
        column = QVBoxLayout(page)
        column.setContentsMargins(8, 2, 8, 8)
        column.setSpacing(8)
        return page, column

    def _shop_page(self) -> QWidget:
        page, made = self._page()
        made.addWidget(self.heading(say("Settings", "The shop")))
        settings = self.session.board.snapshot.settings
        wide = 420 if self.roles.large else 340
        self.name = self.field(say("Settings", "Name of the shop"), wide)
        self.name.setText(str(settings.get(SHOP_NAME) or ""))
        self.name.setMaxLength(LONGEST_SHOP_NAME)
        self.initials = self.field(say("Settings", "Initials of who is at the bench"), 110)
        self.initials.setText(self.session.bench.by or "")
        self.initials.setMaxLength(LONGEST_INITIALS)
        known = [person.initials for person in self.session.store.shop.persons()]
        self.initials.setCompleter(QCompleter(known, self))
        lately = say("Settings", "lately: {initials}").format(initials=", ".join(known[:6]))
        made.addLayout(self._captioned(say("Settings", "Name"), self.name))
        made.addLayout(
            self._captioned(
                say("Settings", "At the bench"), self.initials, 12,
                self.label(lately if known else say("Settings", "initials"), tone="sub"),
            )
        )  # fmt: skip
        made.addSpacing(self.gap)
        made.addWidget(self.heading(say("Settings", "Temperatures in")))
        by_locale = say("Settings", "as the system says, °{unit}")
        by_locale = by_locale.format(unit=self.session.locale_unit)
        self.units = options(
            self, made, {"": by_locale, "C": "°C", "F": "°F"}, str(settings.get(UNIT) or "")
        )
        made.addStretch(1)
        return page

    def _hours_page(self) -> QWidget:
        page, made = self._page()
        made.addWidget(self.heading(say("Settings", "Opening hours")))
        self.until_typed = self.label(
            say("Settings", "Monday to Friday 08:00–18:00 until you type them."),
            tone="sub", wrap=True,
        )  # fmt: skip
        self.until_typed.setVisible(not self.session.board.snapshot.hours_typed)
        made.addWidget(self.until_typed)
        for day in self.days:
            made.addLayout(
                self._captioned(
                    day.name, day.opening, 10, self.label(say("Settings", "to"), tone="sub"), 10,
                    day.closing, 20, day.closed,
                )
            )  # fmt: skip
        made.addSpacing(self.gap)
        made.addWidget(self.heading(say("Settings", "Heating")))
        made.addWidget(
            self.label(
                say("Settings", "On open days. With it the board can reckon a night that nobody"
                    " measured; without it, it asks in the morning how cold it got."),
                tone="sub",
                wrap=True,
            )
        )  # fmt: skip
        grid = QGridLayout()
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(10)
        grid.setColumnStretch(6, 1)
        falls = say("Settings", "falls to °{unit}").format(unit=self.session.unit)
        heads = ("", say("Settings", "heating"), say("Settings", "on at"),
                 say("Settings", "off at"), falls)  # fmt: skip
        for at, head in enumerate(heads):
            grid.addWidget(self.label(head, self.roles.small, tone="sub"), 0, at)
        for line, heating in enumerate(self.heatings, 1):
            grid.addWidget(self.label(heating.zone.name), line, 0)
            fields = (heating.known, heating.on, heating.off, heating.setback)
            for at, field in enumerate(fields, 1):
                grid.addWidget(field, line, at)
        made.addLayout(grid)
        made.addStretch(1)
        return page

    def _captioned(self, name: str, *items: QWidget | int) -> QHBoxLayout:
        caption: QLabel = self.label(name)
        caption.setFixedWidth(160 if self.roles.large else 128)
        if isinstance(items[0], QWidget):
            caption.setBuddy(items[0])
        return row(caption, *items)

    # Pages

    def show_page(self, number: int) -> None:
        """Turn to a page: SHOP, HOURS, RACKS, SCREEN or NOTICES."""
        self.pages.setCurrentIndex(self.pages.lines_model.index(number))

    def _on_page(self, current: QModelIndex) -> None:
        self.stack.setCurrentIndex(current.row())

    def _next_page(self) -> None:
        self.show_page((self.stack.currentIndex() + 1) % self.stack.count())

    def _last_page(self) -> None:
        self.show_page((self.stack.currentIndex() - 1) % self.stack.count())

    def _on_acted(self, changes: object) -> None:
        """Follow what the page of racks did: a renamed zone; a new one has no heating yet."""
        del changes
        zones = self.session.board.snapshot.zones
        for heating in self.heatings:
            heating.zone = zones.get(heating.zone.id, heating.zone)

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        super().show_theme(theme)
        if hasattr(self, "pages"):
            self.pages.show_theme(theme)
            self.racks.show_theme()

    # Saving

    def accept(self) -> None:
        """Save what was changed; nothing is saved while something can't be taken."""
        self.message.setText("")
        before = dict(self.session.board.snapshot.settings)
        try:
            for act in self._acts():
                changes = act()
                if changes:
                    self.session.take(changes)
        except RackboardError as error:
            self.message.setText(refusal(error))
            self._mark(str(error.where) if isinstance(error, InputError) else "")
            return
        self._tell(before)
        super().accept()

    def _tell(self, before: dict[str, object]) -> None:
        """Say what was changed, for what is on the screen already."""
        settings = self.session.board.snapshot.settings
        for key, signal in (
            (THEME, self.theme_chosen), (CONTRAST, self.contrast_chosen),
            (LANGUAGE, self.language_chosen),
        ):  # fmt: skip
            value = str(settings.get(key) or "")
            if value != str(before.get(key) or ""):
                signal.emit(value)
        if bool(settings.get(MOTION)) is not bool(before.get(MOTION)):
            self.motion_chosen.emit(bool(settings.get(MOTION)))
        pitch = screen_pitch_mm(self)
        viewing = viewing_of(settings, pitch)
        if viewing != viewing_of(before, pitch):
            self.viewing_chosen.emit(viewing)

    def _acts(self) -> list[Callable[[], ChangeSet]]:
        """Read every field; return the acts that store what was changed."""
        bench, snapshot = self.session.bench, self.session.board.snapshot
        furnishing = Furnishing(self.session.store, self.session.clock, bench.by)
        week = [day.read() for day in self.days]
        heatings = [
            (heating.zone, heating.read())
            for heating in self.heatings if heating.zone.id in snapshot.zones
        ]  # fmt: skip
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
        unit = chosen_of(self.units)
        if unit != str(snapshot.settings.get(UNIT) or ""):
            acts.append(lambda: bench.set_unit(Unit(unit) if unit else None))
        return acts + self.screen_page.acts(bench, furnishing) + self.courier_page.acts()

    def _mark(self, where: str) -> None:
        fields: dict[str, tuple[int, QLineEdit]] = {
            day.name: (HOURS, day.opening) for day in self.days
        }
        fields |= {heating.zone.name: (HOURS, heating.on) for heating in self.heatings}
        fields |= {"shop name": (SHOP, self.name), "initials": (SHOP, self.initials)}
        fields["Viewing distance"] = (SCREEN, self.screen_page.distance)
        fields["Pixel pitch"] = (SCREEN, self.screen_page.pitch)
        fields |= {name: (NOTICES, f) for name, f in self.courier_page.fields().items()}
        for name, (_, field) in fields.items():
            self.mark(field, name == where)
        if where in fields:
            page, field = fields[where]
            self.show_page(page)
            field.setFocus()
