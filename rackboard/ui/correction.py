"""The dialog that corrects what is on record of a joint; the former facts stay there."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from rackboard.core.bench import JointKind
from rackboard.core.errors import InputError
from rackboard.core.instants import Instant
from rackboard.core.standing import Standing
from rackboard.core.temperature import read_typed
from rackboard.services.correcting import NEW_BATCH, Correction, ReadingFix
from rackboard.services.doubts import TimeDoubt, glued_doubt, mixed_doubt
from rackboard.store.changes import ChangeSet
from rackboard.ui.act_dialog import ActDialog
from rackboard.ui.controls import Choice
from rackboard.ui.correction_fields import Column, Record, kind_name
from rackboard.ui.dialog import room_under
from rackboard.ui.initials_row import InitialsRow
from rackboard.ui.language import say
from rackboard.ui.session import Session
from rackboard.ui.temperature_dialog import is_box
from rackboard.ui.temperature_doubt import temperature_doubt
from rackboard.ui.time_field import TimeField


class CorrectionDialog(ActDialog):
    """All facts of a joint in one form; only what is another there is corrected.

    Parameters
    ----------
    session : Session
        The open shop.
    standing : Standing
        The joint.
    """

    def __init__(self, session: Session, standing: Standing, parent: QWidget | None = None) -> None:
        super().__init__(session, parent)
        self._standing = standing
        self._record = Record(session, standing)
        self._sure: dict[QLineEdit, tuple[str, int]] = {}
        self._reading_of: QWidget | None = None
        self._doubted: QLineEdit
        content = self.frame(
            say("Correct", "Correct {where} {club}, job {number}").format(
                where=session.board.snapshot.where(standing.club.id), club=standing.club.name,
                number=standing.job.number,
            ).replace("  ", " "),
            say("Correct", "Change what is wrong. The former facts stay on the record."),
        )  # fmt: skip
        page = QWidget()
        columns = QHBoxLayout(page)
        columns.setContentsMargins(8, 8, 8, 0)
        columns.setSpacing(self.gap + 10)
        for column in (self._of_club(), self._of_joint(), self._of_batch()):
            column.layout.addStretch(1)
            columns.addLayout(column.layout, 1)
        content.addWidget(self.scrolled(page), 1)
        self.who = InitialsRow(session, self, say("Correct", "Corrected by"))
        foot = QVBoxLayout()
        foot.addWidget(self.who)
        self.add_message(foot)
        content.addLayout(foot)
        self.add_buttons(say("Correct", "Correct it"), say("Correct", "Cancel"))
        self._show_batch()
        self.batch.currentIndexChanged.connect(self._show_batch)
        (self.mixed if self.mixed.isEnabled() else self.club).setFocus()
        room = room_under(parent)
        self.fit(min(1400, room.width() - 80), 960 if self.roles.large else 750)

    # The form

    def _of_club(self) -> Column:
        standing, record = self._standing, self._record
        customer = record.snapshot.customers.get(standing.job.customer_id)
        column = Column(self, say("Correct", "The club"))
        self.club = column.text(
            say("Correct", "Club"), standing.club.name,
            record.before("club", standing.club.id, "name"),
        )  # fmt: skip
        self.number = column.text(
            say("Correct", "Job number"), standing.job.number,
            record.before("job", standing.job.id, "number"), 20,
        )  # fmt: skip
        self.customer = column.text(
            say("Correct", "Customer"), customer.name if customer else "",
            record.before("customer", standing.job.customer_id, "name"), 80,
        )  # fmt: skip
        self._customer = customer.name if customer else ""
        self.customer.setEnabled(customer is not None and customer.erased_us is None)
        self.place: Choice | None = None
        if standing.stay is not None:
            self.place = column.choice(
                say("Correct", "Where it has been since {time}").format(
                    time=record.times.moment(standing.stay.from_us)),
                record.slots(), (standing.stay.place_id, standing.stay.slot),
                record.place_before(standing.stay.id),
            )  # fmt: skip
        self.ready_by: QLineEdit | None = None
        self.released_by: QLineEdit | None = None
        if standing.job.ready_us is not None:
            self.ready_by = column.text(
                say("Correct", "READY pressed by"), standing.job.ready_by or "",
                record.before("job", standing.job.id, "ready_by"), 8,
            )  # fmt: skip
        if standing.released is not None:
            self.released_by = column.text(
                say("Correct", "Released by"), standing.released.by,
                record.before("release", standing.released.id, "by"), 8,
            )  # fmt: skip
        return column

    def _of_joint(self) -> Column:
        joint, record = self._standing.joint, self._record
        column = Column(self, say("Correct", "The joint"))
        self.kind = column.choice(
            say("Correct", "Kind of joint"), [(kind_name(kind), kind) for kind in JointKind],
            joint.kind, record.before("joint", joint.id, "kind"),
        )  # fmt: skip
        marks = [
            ("", say("Correct", "no graphics")), ("12", say("Correct", "at 12 o'clock")),
            ("6", say("Correct", "at 6 o'clock")), ("index mark", say("Correct", "index mark")),
        ]  # fmt: skip
        if joint.graphics not in [value for value, _ in marks]:
            marks.append((joint.graphics, joint.graphics))
        self.graphics = column.choice(
            say("Correct", "Graphics"), [(text, value) for value, text in marks], joint.graphics,
            record.before("joint", joint.id, "graphics"),
        )  # fmt: skip
        self.glued = column.time(
            self.session, say("Correct", "Glued at"),
            self._on_record(joint.glued_us, "joint", joint.id, "glued_us"),
        )  # fmt: skip
        self.glued.setEnabled(joint.glued_us is not None)
        self.batch = column.choice(
            say("Correct", "Glued with batch"), record.batches(), self._standing.batch.id,
            record.before("joint", joint.id, "batch_id"),
        )  # fmt: skip
        return column

    def _of_batch(self) -> Column:
        batch, record = self._standing.batch, self._record
        clubs = len(record.snapshot.joints_of_batch[batch.id])
        column = Column(self, say(
            "Correct", "Its batch, so all %n clubs of it", "Its batch, with this club alone", clubs
        ))  # fmt: skip
        self.mixed = column.time(
            self.session, say("Correct", "Mixed at"),
            self._on_record(batch.mixed_us, "batch", batch.id, "mixed_us"),
        )  # fmt: skip
        shelf = [
            (epoxy.sheet.name, epoxy.id)
            for epoxy in record.snapshot.epoxies.values()
            if epoxy.retired_us is None or epoxy.id == batch.epoxy_id
        ]
        self.epoxy = column.choice(
            say("Correct", "Epoxy"), shelf, batch.epoxy_id,
            record.before("batch", batch.id, "epoxy_id"),
        )  # fmt: skip
        self.lot = column.text(
            say("Correct", "Lot"), batch.lot, record.before("batch", batch.id, "lot"), 40
        )
        self._readings = record.readings()
        said = [(say("Correct", "none of them"), -1)]
        said += [(record.reading_said(r), at) for at, r in enumerate(self._readings)]
        self.reading = column.choice(
            say("Correct", "A temperature that was typed"), said, -1, ""
        )
        self.temperature = column.text(
            say("Correct", "It should have been [{unit}]").format(unit=f"°{self.session.unit}"),
            "", "", 20,
        )  # fmt: skip
        self._batch_column = column
        self.reading.setEnabled(bool(self._readings))
        self.reading.currentIndexChanged.connect(self._show_reading)
        self._show_reading()
        return column

    def _on_record(self, now_us: Instant | None, table: str, key: int, column: str) -> str:
        """Return "On record: 15:20, before that 15:05"."""
        if now_us is None:
            return say("Correct", "not yet")
        return self._record.now_and_before(
            self._record.times.moment(now_us), table, key, column
        )

    def _show_batch(self) -> None:
        """Let only that be changed which is of this batch, or of a new one."""
        own = self.batch.currentData() in (self._standing.batch.id, NEW_BATCH)
        self.mixed.setEnabled(own and self._standing.batch.mixed_us is not None)
        self.epoxy.setEnabled(own)
        self.lot.setEnabled(own)

    def _show_reading(self) -> None:
        at, said = self.reading.currentData(), ""
        self.temperature.setEnabled(at != -1)
        if at != -1:
            reading = self._readings[at]
            said = self._record.now_and_before(
                self._record.degrees(reading.temperature_mc), "reading",
                (reading.zone_id, reading.at_us), "temperature_mc",
            )  # fmt: skip
        self._batch_column.say_under(self.temperature, said)

    # What is another

    def accept(self) -> None:
        """Correct it, or ask first."""
        if self.asking:
            return
        for field in (self.mixed, self.glued, self.club, self.number, self.temperature):
            self.mark(field, False)
        try:
            correction = self._correction()
        except _DoubtError as doubt:
            self._doubted = doubt.field
            self.ask(doubt.question, doubt.answers, self._be_sure, doubt.field)
            return
        except InputError as error:
            self.refuse(error, self._reading_of)
            return
        self.act(lambda: self._correct(correction))

    def _be_sure(self, value: int) -> None:
        """Take a doubtful value from now on, as long as the text stays."""
        self._sure[self._doubted] = (self._doubted.text(), value)
        self.accept()

    def _correct(self, correction: Correction) -> ChangeSet:
        self.who.take()
        return self.session.bench.correct(self._standing.joint.id, correction)

    def _correction(self) -> Correction:
        """Return what is another than on record.

        Raises
        ------
        InputError
            If something can't be read; `_reading_of` is the field.
        _DoubtError
            If something has to be asked about first.
        """
        standing = self._standing
        mixed_us = self._moment(self.mixed, self._mixed_doubt)
        glued_us = self._moment(self.glued, lambda at: self._glued_doubt(at, mixed_us))
        place = None if self.place is None or self.place.currentIndex() == 0 else tuple(
            self.place.currentData()
        )
        return Correction(
            mixed_us=mixed_us,
            glued_us=glued_us,
            epoxy_id=_other(self.epoxy, standing.batch.epoxy_id),
            lot=_retyped(self.lot, standing.batch.lot),
            batch_id=_other(self.batch, standing.batch.id),
            kind=_other(self.kind, standing.joint.kind),
            graphics=_other(self.graphics, standing.joint.graphics),
            club=_retyped(self.club, standing.club.name),
            number=_retyped(self.number, standing.job.number),
            customer=_retyped(self.customer, self._customer),
            place=place,
            ready_by=_retyped(self.ready_by, standing.job.ready_by or ""),
            released_by=_retyped(
                self.released_by, standing.released.by if standing.released else ""
            ),
            readings=self._reading_fix(),
        )  # fmt: skip

    def _moment(
        self, field: TimeField, doubt: Callable[[Instant], TimeDoubt | None]
    ) -> Instant | None:
        if field.empty or not field.isEnabled():
            return None
        self._reading_of = field
        at_us = field.moment()
        sure = self._sure.get(field)
        if sure is not None and sure[0] == field.text():
            return sure[1]
        found = doubt(at_us)
        if found is None:
            return at_us
        yes, no = say("Correct", "Yes, {time}"), say("Correct", "No, {time}")
        moment = self._record.times.moment
        if found.proposed_us is None:
            answers: list[tuple[str, int | None]] = [
                (yes.format(time=moment(at_us)), at_us),
                (say("Correct", "Let me correct it"), None),
            ]
        else:
            answers = [
                (yes.format(time=moment(found.proposed_us)), found.proposed_us),
                (no.format(time=moment(at_us)), at_us),
            ]
        raise _DoubtError(found.question, answers, field)

    def _mixed_doubt(self, at_us: Instant) -> TimeDoubt | None:
        return mixed_doubt(at_us, self.session.clock.now(), self._record.snapshot.hours)

    def _glued_doubt(self, at_us: Instant, mixed_us: Instant | None) -> TimeDoubt | None:
        chosen = self._record.snapshot.batches.get(self.batch.currentData(), self._standing.batch)
        mixed_us = chosen.mixed_us if mixed_us is None else mixed_us
        if mixed_us is None or self.batch.currentData() == NEW_BATCH:
            return None
        return glued_doubt(
            at_us, mixed_us, chosen.sheet.working_life_min.long, self.session.clock.now(),
            self._record.snapshot.hours,
        )  # fmt: skip

    def _reading_fix(self) -> tuple[ReadingFix, ...]:
        at = self.reading.currentData()
        if at == -1:
            return ()
        self._reading_of = self.temperature
        reading, unit = self._readings[at], self.session.unit
        zone = self._record.snapshot.zones[reading.zone_id]
        typed = read_typed(self.temperature.text(), unit, zone.name)
        value = typed.temperature_mc
        sure = self._sure.get(self.temperature)
        if sure is not None and sure[0] == self.temperature.text():
            value = sure[1]
        else:
            doubt = temperature_doubt(typed, unit, warm_box=is_box(self.session, zone.id))
            if doubt is not None:
                raise _DoubtError(doubt.question, list(doubt.answers), self.temperature)
        return (ReadingFix(reading.zone_id, reading.at_us, value),)


class _DoubtError(Exception):
    """Something can be true but is more likely a slip: it is asked about inside the form."""

    def __init__(
        self, question: str, answers: list[tuple[str, int | None]], field: QLineEdit
    ) -> None:
        super().__init__(question)
        self.question, self.answers, self.field = question, answers, field


def _retyped(field: QLineEdit | None, now: str) -> str | None:
    """Return what was typed, None if it is what is on record."""
    if field is None:
        return None
    typed = field.text().strip()
    return None if typed == now or not field.isEnabled() else typed


def _other(choice: Choice, now: Any) -> Any:
    """Return what was chosen, None if it is what is on record."""
    chosen = choice.currentData()
    return None if chosen == now or not choice.isEnabled() else chosen
