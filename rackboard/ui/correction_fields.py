"""The fields of "Correct…", and what is on record under each of them."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtWidgets import QLabel, QLineEdit, QVBoxLayout, QWidget

from rackboard.core.bench import Batch, JointKind, Place, Reading
from rackboard.core.instants import DAY_US
from rackboard.core.standing import Standing
from rackboard.core.temperature import format_temperature
from rackboard.services.correcting import NEW_BATCH
from rackboard.ui import type
from rackboard.ui.controls import Choice, field_height, field_style
from rackboard.ui.dialog import Dialog
from rackboard.ui.language import say, translated
from rackboard.ui.session import Session
from rackboard.ui.time_field import TimeField
from rackboard.ui.wording import Times

NEAR_US = DAY_US
"""Batches mixed so near are offered as the one that was meant [decision]."""
_MOST_READINGS = 40
_MOST_FORMER = 3


class Record:
    """Says what is on record of a joint, and what was before.

    Parameters
    ----------
    session : Session
        The open shop.
    standing : Standing
        The joint.
    """

    def __init__(self, session: Session, standing: Standing) -> None:
        self._session = session
        self.standing = standing
        self.snapshot = session.board.snapshot
        self.times = Times(self.snapshot.hours, session.clock.now())

    def before(self, table: str, key: int, column: str) -> str:
        """Return "before that 15:20", the latest first; "" if it was never corrected."""
        former = self._former(table, key, column)
        return say("Correct", "before that {values}").format(values=former) if former else ""

    def now_and_before(
        self, now: str, table: str, key: int | tuple[object, ...], column: str
    ) -> str:
        """Return "On record: 15:20, before that 15:05"."""
        former = self._former(table, key, column)
        if not former:
            return say("Correct", "On record: {now}").format(now=now)
        return say("Correct", "On record: {now}, before that {values}").format(
            now=now, values=former
        )

    def _former(self, table: str, key: int | tuple[object, ...], column: str) -> str:
        found = [
            self._said(column, line.old)
            for line in self._session.store.journal.former(table, key)
            if line.column == column
        ]
        said = dict.fromkeys(reversed([text for text in found if text]))
        return ", ".join(list(said)[:_MOST_FORMER])

    def _said(self, column: str, value: object) -> str:
        if column.endswith("_us") and isinstance(value, int):
            return self.times.moment(value)
        if column == "temperature_mc" and isinstance(value, int):
            return self.degrees(value)
        if column == "batch_id" and isinstance(value, int):
            found = self._session.store.work.batches([value])
            return str(found[0].number) if found else ""
        if column == "epoxy_id" and isinstance(value, int):
            epoxy = self.snapshot.epoxies.get(value)
            return epoxy.sheet.name if epoxy else ""
        if column == "kind" and isinstance(value, str):
            return kind_name(JointKind(value))
        return "" if value is None else str(value)

    def place_before(self, stay_id: int) -> str:
        """Return where a stay was noted before."""
        former = self._session.store.journal.former("stay", stay_id)
        known = self.snapshot.stays.get(self.standing.club.id)
        place_id, slot = (known.place_id, known.slot) if known else (0, None)
        said = []
        for changed_us in dict.fromkeys(line.changed_us for line in reversed(former)):
            for line in former:
                if line.changed_us == changed_us and line.column == "place_id":
                    place_id = line.old
                if line.changed_us == changed_us and line.column == "slot":
                    slot = line.old
            if place_id in self.snapshot.places:
                said.append(self.snapshot.places[place_id].slot_name(slot))
        if not said:
            return ""
        return say("Correct", "before that {values}").format(values=", ".join(said))

    def degrees(self, milli_c: int) -> str:
        """Return a temperature in the shop's unit."""
        return translated(format_temperature(milli_c, self._session.unit))

    # What can be chosen

    def batches(self) -> Iterable[tuple[str, int]]:
        """Yield the batch, those that were mixed about then, and a new one."""
        own = self.standing.batch
        yield self._batch(own), own.id
        if own.mixed_us is None:
            return
        others = [
            batch
            for batch in self.snapshot.batches.values()
            if batch.id != own.id and batch.mixed_us is not None
            and abs(batch.mixed_us - own.mixed_us) <= NEAR_US
        ]  # fmt: skip
        mixed_us = own.mixed_us
        others.sort(key=lambda batch: abs((batch.mixed_us or 0) - mixed_us))
        for batch in others:
            yield self._batch(batch), batch.id
        yield say("Correct", "a batch of its own"), NEW_BATCH

    def _batch(self, batch: Batch) -> str:
        if batch.mixed_us is None:
            return say("Correct", "{number}, {epoxy}, not mixed").format(
                number=batch.number, epoxy=batch.sheet.name
            )
        return say("Correct", "{number}, {epoxy}, mixed {time}").format(
            number=batch.number, epoxy=batch.sheet.name, time=self.times.moment(batch.mixed_us)
        )

    def slots(self) -> Iterable[tuple[str, tuple[int, int | None]]]:
        """Yield where the club lies, the free slots, and the places without slots."""
        here = self.standing.stay
        assert here is not None
        taken = {(stay.place_id, stay.slot) for stay in self.snapshot.stays.values()}
        yield self.snapshot.where(self.standing.club.id), (here.place_id, here.slot)
        places: list[Place] = sorted(self.snapshot.places.values(), key=lambda p: (p.sort, p.id))
        for place in places:
            for slot in range(place.rows * place.columns):
                if (place.id, slot) not in taken:
                    yield place.slot_name(slot), (place.id, slot)
        for place in places:
            if not place.rows * place.columns and place.id != here.place_id:
                yield place.name, (place.id, None)

    def readings(self) -> list[Reading]:
        """Return what was typed where this joint cures, since its batch was mixed, newest first."""
        batch, stay = self.standing.batch, self.standing.stay
        zones = {batch.zone_id}
        if stay is not None and self.snapshot.places[stay.place_id].zone_id is not None:
            zones.add(self.snapshot.places[stay.place_id].zone_id or 0)
        now = self._session.clock.now()
        since = (batch.mixed_us or now) - NEAR_US
        found = [
            reading
            for zone in sorted(zones)
            for reading in self._session.bench.typed_readings(zone, since, now + 1)
        ]
        found.sort(key=lambda reading: -reading.at_us)
        return found[:_MOST_READINGS]

    def reading_said(self, reading: Reading) -> str:
        """Return "Room 15:40: 20 °C"."""
        return say("Correct", "{zone} {time}: {temperature}").format(
            zone=self.snapshot.zones[reading.zone_id].name,
            time=self.times.moment(reading.at_us),
            temperature=self.degrees(reading.temperature_mc),
        )


def kind_name(kind: JointKind) -> str:
    """Return the name of a kind of joint."""
    from rackboard.ui.inspector_presenter import KINDS

    return translated(KINDS[kind])


class Column:
    """A column of the form: heads, fields, and a line of what is on record under each.

    Parameters
    ----------
    dialog : Dialog
        Whose look it takes.
    title : str
        What all fields of the column are of.
    """

    def __init__(self, dialog: Dialog, title: str) -> None:
        self._dialog = dialog
        self._under: dict[QWidget, QLabel] = {}
        self.layout = QVBoxLayout()
        self.layout.setSpacing(6 if dialog.roles.large else 5)
        self.layout.addWidget(dialog.heading(title))
        self.layout.addSpacing(6)

    def text(self, name: str, value: str, said: str, longest: int = 60) -> QLineEdit:
        """Add a field that holds what is on record."""
        field = self._dialog.field(name)
        field.setText(value)
        field.setMaxLength(longest)
        self._add(name, field, said)
        return field

    def say_under(self, field: QWidget, said: str) -> None:
        """Say something else under a field."""
        self._under[field].setText(said)
        field.setAccessibleDescription(said)

    def time(self, session: Session, name: str, said: str) -> TimeField:
        """Add a field for a moment; empty: as it is."""
        field = TimeField(session, name)
        field.setFont(type.font(field_style(self._dialog.roles)))
        field.setFixedHeight(field_height(self._dialog.roles))
        self._add(name, field, said)
        return field

    def choice(
        self, name: str, entries: Iterable[tuple[str, object]], now: object, said: str
    ) -> Choice:
        """Add a choice; `now` is what is on record."""
        made = self._dialog.choice(name)
        made.setSizeAdjustPolicy(Choice.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        for text, value in entries:
            made.addItem(text, value)
        at = next((i for i in range(made.count()) if made.itemData(i) == now), 0)
        made.setCurrentIndex(at)
        self._add(name, made, said)
        return made

    def _add(self, name: str, field: QWidget, said: str) -> None:
        label: QLabel = self._dialog.label(name, tone="sub")
        label.setBuddy(field)
        self.layout.addWidget(label)
        self.layout.addWidget(field)
        self._under[field] = self._dialog.label(said, self._dialog.roles.small, tone="sub")
        self.layout.addWidget(self._under[field])
        if said:
            field.setAccessibleDescription(said)
