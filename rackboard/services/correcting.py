"""Facts that were noted wrong: corrected in one act, the former ones stay on the record."""

from __future__ import annotations

from typing import NamedTuple

from rackboard.core.bench import Batch, Joint, JointKind, Reading, Source
from rackboard.core.cure.calibration import calibrate
from rackboard.core.errors import InputError
from rackboard.core.instants import Instant
from rackboard.core.temperature import Unit, check_limits
from rackboard.core.text import text
from rackboard.services.acts import LAG_S, Acts, checked_initials, slot_of
from rackboard.services.doubts import check_mixed, said_at
from rackboard.store.changes import TYPED, ChangeSet
from rackboard.store.rows import sheet_text
from rackboard.store.transaction import Transaction

NEW_BATCH = 0
"""In `Correction.batch_id`: a batch of its own, of the same epoxy."""


class ReadingFix(NamedTuple):
    """A typed temperature as it should have been [m°C]."""

    zone_id: int
    at_us: Instant
    temperature_mc: int


class Correction(NamedTuple):
    """What is wrong about a joint and what hangs on it; None: as it is.

    Attributes
    ----------
    mixed_us, epoxy_id, lot
        Of the batch, so of all its joints; with `NEW_BATCH` of the new one.
    batch_id : int or None
        With which batch it was glued, or `NEW_BATCH`.
    glued_us, kind, graphics
        Of the joint.
    club, number, customer
        Names: of the club, the job, the customer.
    place : tuple of (int, int or None), optional
        Place and slot in which the club has been since its stay there began.
    ready_by, released_by
        Initials.
    readings : tuple of ReadingFix
        Typed temperatures.
    """

    mixed_us: Instant | None = None
    epoxy_id: int | None = None
    lot: str | None = None
    batch_id: int | None = None
    glued_us: Instant | None = None
    kind: JointKind | None = None
    graphics: str | None = None
    club: str | None = None
    number: str | None = None
    customer: str | None = None
    place: tuple[int, int | None] | None = None
    ready_by: str | None = None
    released_by: str | None = None
    readings: tuple[ReadingFix, ...] = ()


class Correcting(Acts):
    """The acts that mend the record."""

    def correct(self, joint_id: int, correction: Correction) -> ChangeSet:
        """Correct facts of a joint, all of them or none; the former ones are kept.

        Raises
        ------
        InputError
            If nothing is corrected, or one of the facts can't be so.
        """
        now = self._clock.now()
        joint = self._joint(joint_id)
        club = self._club(joint.club_id)
        label = text("Act", "correct {club}").format(club=club.name)
        with self._store.write(label, now, self.by, correction=True) as act:
            self._correct_joint(act, joint, correction)
            self._correct_names(act, joint, correction)
            self._correct_place(act, joint, correction)
            self._correct_initials(act, joint, correction)
            for fix in correction.readings:
                self._correct_reading(act, fix)
            if not act.alters:
                raise InputError(
                    text("Act", "a fact that is another"), text("Act", "nothing"),
                    text("Act", "correct"),
                )  # fmt: skip
            facts = [
                name for name, value in correction._asdict().items() if value not in (None, ())
            ]
            act.add_event("corrected", "joint", joint_id, {"facts": facts})
            self._note_person(act)
        return act.changes

    def correct_mixed(self, batch_id: int, at_us: Instant) -> ChangeSet:
        """Correct the time of mixing; the former one stays on the record.

        Raises
        ------
        InputError
            If that lies in the future, or the batch isn't mixed.
        """
        now = self._clock.now()
        batch = self._batch(batch_id)
        label = text("Act", "correct batch {number}").format(number=batch.number)
        with self._store.write(label, now, self.by, correction=True) as act:
            self._correct_mixed(act, batch, at_us)
            self._note_person(act)
        return act.changes

    def _correct_joint(self, act: Transaction, joint: Joint, correction: Correction) -> None:
        """Correct the batch, what it is of, and when the joint was glued with it."""
        if joint.batch_id is None:
            return
        batch = self._batch(joint.batch_id)
        if correction.batch_id is not None and correction.batch_id != batch.id:
            batch = self._correct_batch(act, joint, batch, correction)
            joint = self._joint(joint.id)
        elif correction.mixed_us is not None:
            self._correct_mixed(act, batch, correction.mixed_us)
            batch, joint = self._batch(batch.id), self._joint(joint.id)
        if correction.batch_id in (None, NEW_BATCH):
            self._correct_epoxy(act, batch, correction)
        if correction.glued_us is not None:
            where = text("Act", "glued at")
            at = check_mixed(correction.glued_us, act.at_us, self.hours, where)
            if batch.mixed_us is None or at < batch.mixed_us:
                mixed = text("Act", "not mixed") if batch.mixed_us is None else said_at(
                    batch.mixed_us, act.at_us, self.hours
                )
                wanted = text("Act", "a time after batch {number} was mixed, {time}")
                raise InputError(
                    wanted.format(number=batch.number, time=mixed),
                    said_at(at, act.at_us, self.hours), where,
                )  # fmt: skip
            act.update("joint", joint.id, glued_us=at)
        if correction.kind is not None:
            act.update("joint", joint.id, kind=correction.kind, lag_s=LAG_S[correction.kind])
        if correction.graphics is not None:
            act.update("joint", joint.id, graphics=correction.graphics.strip())

    def _correct_mixed(self, act: Transaction, batch: Batch, at_us: Instant) -> None:
        where = text("Act", "mixed at")
        if batch.mixed_us is None:
            came = text("Act", "batch {number}, not mixed").format(number=batch.number)
            raise InputError(text("Act", "a mixed batch"), came, where)
        at = check_mixed(at_us, act.at_us, self.hours, where)
        racked = batch.racked_us
        if racked is not None and racked < at:
            act.update("batch", batch.id, mixed_us=at, racked_us=at)
        else:
            act.update("batch", batch.id, mixed_us=at)
        for joint in self._joints_of(batch.id):
            if joint.glued_us is not None and (
                joint.glued_us == batch.mixed_us or joint.glued_us < at
            ):
                act.update("joint", joint.id, glued_us=at)
        act.add_event("corrected", "batch", batch.id, {"was_us": batch.mixed_us, "is_us": at})

    def _correct_batch(
        self, act: Transaction, joint: Joint, old: Batch, correction: Correction
    ) -> Batch:
        """Glue a joint with another batch after all; return that batch."""
        glued = joint.glued_us
        if correction.batch_id == NEW_BATCH:
            mixed = glued
            if glued is not None and correction.mixed_us is not None:
                where = text("Act", "mixed at")
                mixed = check_mixed(correction.mixed_us, act.at_us, self.hours, where)
            number = self._store.work.next_batch_number()
            new = old._replace(
                id=0, number=number, mixed_us=mixed, mass_mg=None,
                racked_us=None if mixed is None or old.racked_us is None
                else max(old.racked_us, mixed),
            )  # fmt: skip
            batch = new._replace(id=act.add(new))
        else:
            assert correction.batch_id is not None
            found = self._store.work.batches([correction.batch_id])
            if not found or (found[0].mixed_us is None) is not (glued is None):
                came = text("Act", "batch {number}, not mixed").format(
                    number=found[0].number if found else correction.batch_id
                )
                raise InputError(text("Act", "a mixed batch"), came, text("Act", "batch"))
            batch = found[0]
        if glued is not None and batch.mixed_us is not None:
            late = glued != old.mixed_us and glued >= batch.mixed_us
            glued = glued if late else batch.mixed_us
        act.update("joint", joint.id, batch_id=batch.id, glued_us=glued)
        return batch

    def _correct_epoxy(self, act: Transaction, batch: Batch, correction: Correction) -> None:
        if correction.epoxy_id is not None and correction.epoxy_id != batch.epoxy_id:
            epoxy = self._store.shop.epoxy(correction.epoxy_id)
            if epoxy is None:
                raise InputError(
                    text("Act", "an epoxy from the shelf"), str(correction.epoxy_id),
                    text("Act", "epoxy"),
                )  # fmt: skip
            calibrate(epoxy.sheet)
            act.update("batch", batch.id, epoxy_id=epoxy.id, sheet_json=sheet_text(epoxy.sheet))
        if correction.lot is not None:
            act.update("batch", batch.id, lot=correction.lot.strip())

    def _correct_names(self, act: Transaction, joint: Joint, correction: Correction) -> None:
        club = self._club(joint.club_id)
        job = self._job(club.job_id)
        for name, where in (
            (correction.club, text("Act", "club")), (correction.number, text("Act", "job number"))
        ):  # fmt: skip
            if name is not None and not name.strip():
                raise InputError(text("Act", "a name"), text("Act", "nothing"), where)
        if correction.club is not None:
            act.update("club", club.id, name=correction.club.strip())
        if correction.number is not None:
            act.update("job", job.id, number=correction.number.strip())
        if correction.customer is not None:
            customer = self._store.work.customers([job.customer_id])[0]
            if customer.erased_us is not None:
                raise InputError(
                    text("Act", "a customer who isn't erased"), text("Act", "one that is"),
                    text("Act", "customer"),
                )  # fmt: skip
            act.update("customer", job.customer_id, name=correction.customer.strip())

    def _correct_place(self, act: Transaction, joint: Joint, correction: Correction) -> None:
        """Say where the club has been since its stay began; the stay isn't cut."""
        if correction.place is None:
            return
        where = text("Act", "slot")
        place_id, slot = correction.place
        slot = slot_of(self._place(place_id), slot, where)
        stays = self._store.work.stays([joint.club_id], open_only=True)
        if not stays:
            raise InputError(
                text("Act", "a club that lies somewhere"), self._club(joint.club_id).name, where
            )
        act.update("stay", stays[0].id, place_id=place_id, slot=slot)

    def _correct_initials(self, act: Transaction, joint: Joint, correction: Correction) -> None:
        if correction.ready_by is not None:
            job = self._job(self._club(joint.club_id).job_id)
            act.update("job", job.id, ready_by=checked_initials(correction.ready_by) or None)
        if correction.released_by is not None:
            releases = self._store.journal.releases([joint.id])
            by = checked_initials(correction.released_by)
            if not releases or not by:
                raise InputError(
                    text("Act", "the initials of who released it"), text("Act", "nothing"),
                    text("Act", "released by"),
                )  # fmt: skip
            act.update("release", releases[-1].id, by=by)

    def _correct_reading(self, act: Transaction, fix: ReadingFix) -> None:
        zone = self._zone_name(fix.zone_id)
        check_limits(fix.temperature_mc, Unit.C, zone)
        kept = self.typed_readings(fix.zone_id, fix.at_us, fix.at_us + 1)
        if not kept:
            came = said_at(fix.at_us, act.at_us, self.hours)
            raise InputError(text("Act", "a temperature that was typed"), came, zone)
        row = (fix.at_us, fix.temperature_mc, kept[0].u_mc, kept[0].source)
        act.add_readings(fix.zone_id, [row], replace=True)

    def typed_readings(self, zone_id: int, from_us: Instant, to_us: Instant) -> list[Reading]:
        """Return what was typed in a zone from … to (not included) [µs UTC]."""
        found = self._store.record.readings(zone_id, from_us, to_us - 1)
        return [
            Reading(zone_id, at_us, temperature_mc, u_mc, Source(source))
            for at_us, temperature_mc, u_mc, source in found
            if source in TYPED
        ]
