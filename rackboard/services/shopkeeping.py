"""What the shop says of itself, its shelf of epoxies, and what it forgets of its customers."""

from __future__ import annotations

from collections.abc import Sequence

from rackboard.core.bench import Epoxy, Heating
from rackboard.core.cure.calibration import calibrate
from rackboard.core.epoxy import Sheet
from rackboard.core.errors import InputError
from rackboard.core.schedule import Hours, OpeningHours
from rackboard.core.temperature import Unit, check_limits
from rackboard.core.text import text
from rackboard.services.acts import Acts, checked_initials
from rackboard.services.snapshot import SHOP_NAME, THEME, UNIT, WEEK
from rackboard.store.changes import ChangeSet
from rackboard.store.rows import heating_text, sheet_text

LONGEST_SHOP_NAME = 60
_DAY_MIN = 24 * 60


class ShopKeeping(Acts):
    """The acts about the shop itself."""

    def set_week(self, week: Sequence[Hours]) -> ChangeSet:
        """Set the opening hours.

        Raises
        ------
        InputError
            If a day closes before it opens.
        """
        hours = OpeningHours(tuple(week), self.hours.zone)
        with self._store.write(text("Act", "opening hours"), self._clock.now(), self.by) as act:
            act.set_setting(WEEK, [list(day) if day else None for day in week])
        self.hours = hours
        return act.changes

    def set_heating(self, zone_id: int, heating: Heating | None) -> ChangeSet:
        """Set when a zone is heated and what it falls to at night; None: not known.

        Raises
        ------
        InputError
            If the setback is out of −40…120 °C, or the heating goes off before it comes on.
        """
        zone = self._zone_name(zone_id)
        if heating is not None:
            check_limits(heating.setback_mc, Unit.C, zone)
            if not 0 <= heating.on_min < heating.off_min <= _DAY_MIN:
                came = text("Act", "on at {on}, off at {off}").format(
                    on=_clock(heating.on_min), off=_clock(heating.off_min)
                )
                raise InputError(text("Act", "an hour off after the hour on"), came, zone)
        label = text("Act", "{zone}: heating").format(zone=zone)
        with self._store.write(label, self._clock.now(), self.by) as act:
            act.update("zone", zone_id, heating_json=heating_text(heating))
        return act.changes

    def set_unit(self, unit: Unit | None) -> ChangeSet:
        """Show temperatures in °C or °F; None: by the locale."""
        label = text("Act", "temperature unit")
        with self._store.write(label, self._clock.now(), self.by) as act:
            act.set_setting(UNIT, None if unit is None else unit.value)
        return act.changes

    def set_theme(self, theme: str) -> ChangeSet:
        """Show the board "dark" or "light"; "" follows the system.

        Raises
        ------
        InputError
            If it is neither.
        """
        if theme not in ("", "dark", "light"):
            raise InputError(
                text("Act", "dark, light or the system's"), theme, text("Act", "theme")
            )
        with self._store.write(text("Act", "theme"), self._clock.now(), self.by) as act:
            act.set_setting(THEME, theme)
        return act.changes

    def set_shop_name(self, name: str) -> ChangeSet:
        """Set the name of the shop; it stands on the board and on paper.

        Raises
        ------
        InputError
            If it is too long or not in one line.
        """
        name = name.strip()
        if len(name) > LONGEST_SHOP_NAME or not name.isprintable():
            wanted = text(
                "Act", "a name in one line, up to %n characters", "", LONGEST_SHOP_NAME
            )
            raise InputError(wanted, name, text("Act", "shop name"))
        with self._store.write(text("Act", "shop name"), self._clock.now(), self.by) as act:
            act.set_setting(SHOP_NAME, name)
        return act.changes

    def set_by(self, initials: str) -> ChangeSet:
        """Say who is at the bench; the acts from now on carry these initials, "" nobody's.

        Raises
        ------
        InputError
            If they are too long.
        """
        initials = checked_initials(initials)
        self.by = initials or None
        if not initials:
            return ChangeSet()
        with self._store.write(text("Act", "initials"), self._clock.now(), self.by) as act:
            act.use_person(initials)
            act.forbid_undo()  # taking it back would not take back who acts
        return act.changes

    def save_epoxy(self, sheet: Sheet, epoxy_id: int | None = None) -> ChangeSet:
        """Put an epoxy on the shelf, or change one; batches keep the sheet they were mixed by.

        Raises
        ------
        InputError
            If the sheet can't be calculated with, with the reason.
        """
        calibrate(sheet)
        now = self._clock.now()
        label = text("Act", "save {epoxy}").format(epoxy=sheet.name)
        with self._store.write(label, now, self.by, correction=True) as act:
            if epoxy_id is None:
                act.add(Epoxy(0, sheet, typical=False))
            else:
                act.update("epoxy", epoxy_id, sheet_json=sheet_text(sheet), typical=0)
        return act.changes

    def retire_epoxy(self, epoxy_id: int, retired: bool = True) -> ChangeSet:
        """Take an epoxy off the shelf, or put it back."""
        now = self._clock.now()
        label = text("Act", "retire epoxy") if retired else text("Act", "use epoxy again")
        with self._store.write(label, now) as act:
            act.update("epoxy", epoxy_id, retired_us=now if retired else None)
        return act.changes

    def erase_customer(self, customer_id: int) -> ChangeSet:
        """Erase a customer's name and phone; the record of the bonds stays."""
        return self._store.erase_customer(customer_id, self._clock.now(), self.by)


def _clock(minutes: int) -> str:
    return f"{minutes // 60:02d}:{minutes % 60:02d}"
