"""What people do at the bench: each act is one transaction and returns what it changed."""

from __future__ import annotations

from typing import NamedTuple

from rackboard.core.bench import (
    Batch,
    Bridge,
    Club,
    Customer,
    Job,
    Joint,
    JointKind,
    Parts,
    Place,
    PlaceKind,
    Source,
    Stay,
)
from rackboard.core.cure.calibration import calibrate
from rackboard.core.errors import InputError
from rackboard.core.instants import Instant
from rackboard.core.temperature import Unit, check_limits, format_temperature
from rackboard.core.text import text
from rackboard.services.acts import LAG_S, LONGEST_INITIALS
from rackboard.services.agenda import NightQuestion
from rackboard.services.carrying import Carrying
from rackboard.services.correcting import Correcting
from rackboard.services.doubts import check_mixed
from rackboard.services.holding import MOVED_LATE, Holding
from rackboard.services.shopkeeping import LONGEST_SHOP_NAME, ShopKeeping
from rackboard.services.snapshot import THEME
from rackboard.store.changes import ChangeSet
from rackboard.store.rows import sheet_text

__all__ = [
    "LAG_S", "LONGEST_INITIALS", "LONGEST_SHOP_NAME", "MOST_CLUBS", "MOVED_LATE", "RACK_U_MC",
    "THEME", "TYPED_U_MC", "Bench", "ClubEntry", "JobEntry", "LaidOut",
]  # fmt: skip

MOST_CLUBS = 14
"""A set has at most so many clubs (Rules of Golf, from memory)."""

TYPED_U_MC = 3_000
"""Uncertainty of "about 20" [m°C, decision]."""
RACK_U_MC = 1_000
"""Uncertainty of a thermometer or sensor at the rack [m°C, decision]."""
LOW_READ_U_MC = 1_000
"""Uncertainty of a low read from a min–max thermometer [m°C, decision]."""
LOW_GUESSED_U_MC = 3_000
"""Uncertainty of a low said before the night [m°C, decision]."""


class ClubEntry(NamedTuple):
    """A club to be laid out: its name, kind of joint, and slot."""

    name: str
    kind: JointKind
    place_id: int
    slot: int
    graphics: str = ""


class JobEntry(NamedTuple):
    """A job as it is laid out with clean hands."""

    number: str
    customer: str
    phone: str
    promised_us: Instant | None
    clubs: tuple[ClubEntry, ...]
    epoxy_id: int
    lot: str = ""
    parts: Parts = Parts.SHOP
    parts_mc: int | None = None


class LaidOut(NamedTuple):
    """What laying out made."""

    job_id: int
    batch_id: int
    changes: ChangeSet


class Bench(Carrying, Holding, Correcting, ShopKeeping):
    """The acts of the bench; see `Acts` for its parameters."""

    # Laying out, mixing, racking

    def lay_out(self, entry: JobEntry) -> LaidOut:
        """Lay a job's clubs out on their slots with a batch that isn't mixed yet.

        A job number that is already there gets the clubs added to it.

        Raises
        ------
        InputError
            If something is missing, a slot is taken, or the epoxy can't be calculated with.
        """
        now = self._clock.now()
        number = entry.number.strip()
        if not number:
            raise InputError(
                text("Act", "a job number"), text("Act", "nothing"), text("Act", "job")
            )
        where = text("Act", "job {number}").format(number=number)
        if not entry.clubs:
            raise InputError(text("Act", "at least one club"), text("Act", "none"), where)
        slots = [(club.place_id, club.slot) for club in entry.clubs]
        if len(set(slots)) < len(slots):
            raise InputError(
                text("Act", "a slot of its own for every club"),
                text("Act", "the same slot twice"), text("Act", "slots"),
            )  # fmt: skip
        epoxy = self._store.shop.epoxy(entry.epoxy_id)
        if epoxy is None:
            raise InputError(
                text("Act", "an epoxy from the shelf"), str(entry.epoxy_id), text("Act", "epoxy")
            )
        calibrate(epoxy.sheet)
        places = {place.id: place for place in self._store.shop.places()}
        first = places[entry.clubs[0].place_id]
        label = text("Act", "lay out job {number}").format(number=number)
        with self._store.write(label, now, self.by) as act:
            present = self._store.work.job_numbered(number)
            if present is None:
                customer = act.add(Customer(0, entry.customer.strip(), entry.phone.strip()))
                job_id = act.add(Job(0, number, customer, now, entry.promised_us))
            else:
                job_id = present.id
            clubs_before = len(self._store.work.clubs([job_id]))
            if clubs_before + len(entry.clubs) > MOST_CLUBS:
                wanted = text("Act", "at most %n clubs in a job", "", MOST_CLUBS)
                raise InputError(wanted, str(clubs_before + len(entry.clubs)), where)
            batch_id = act.add(
                Batch(
                    0, self._store.work.next_batch_number(), epoxy.id, epoxy.sheet,
                    entry.lot.strip(), self._cup_zone(first, places),
                )
            )  # fmt: skip
            for sort, club in enumerate(entry.clubs, clubs_before):
                club_id = act.add(Club(0, job_id, club.name.strip() or "club", sort))
                act.add(
                    Joint(
                        0, club_id, club.kind, LAG_S[club.kind], batch_id, None, entry.parts,
                        entry.parts_mc, club.graphics,
                    )
                )  # fmt: skip
                act.add(Stay(0, club_id, club.place_id, club.slot, now))
            act.add_event("laid out", "job", job_id, {"batch": batch_id})
            self._note_person(act)
        return LaidOut(job_id, batch_id, act.changes)

    def mix(self, batch_id: int, at_us: Instant | None = None) -> ChangeSet:
        """Say when the two parts of a batch met; the sheet is kept as it is now.

        Raises
        ------
        InputError
            If that lies in the future, or the batch is mixed already.
        """
        now = self._clock.now()
        batch = self._batch(batch_id)
        if batch.mixed_us is not None:
            came = text("Act", "batch {number}").format(number=batch.number)
            raise InputError(
                text("Act", "a batch that isn't mixed yet"), came, text("Act", "mixed now")
            )
        where = text("Act", "mixed at")
        at = now if at_us is None else check_mixed(at_us, now, self.hours, where)
        epoxy = self._store.shop.epoxy(batch.epoxy_id)
        sheet = batch.sheet if epoxy is None else epoxy.sheet
        label = text("Act", "mix batch {number}").format(number=batch.number)
        with self._store.write(label, now, self.by) as act:
            act.update("batch", batch_id, mixed_us=at, sheet_json=sheet_text(sheet))
            for joint in self._joints_of(batch_id):
                act.update("joint", joint.id, glued_us=at)
            act.add_event("mixed", "batch", batch_id, at_us=at)
        return act.changes

    def rack_all(
        self, batch_id: int, glued_late: int = 0, at_us: Instant | None = None
    ) -> ChangeSet:
        """Say that the last club of a batch is on the rack; the last few may be glued late.

        Raises
        ------
        InputError
            If the batch isn't mixed yet.
        """
        now = self._clock.now()
        batch = self._batch(batch_id)
        at = now if at_us is None else min(at_us, now)
        if batch.mixed_us is None:
            came = text("Act", "batch {number}, not mixed").format(number=batch.number)
            raise InputError(text("Act", "a mixed batch"), came, text("Act", "all racked"))
        label = text("Act", "rack batch {number}").format(number=batch.number)
        with self._store.write(label, now, self.by) as act:
            act.update("batch", batch_id, racked_us=max(at, batch.mixed_us))
            joints = self._joints_of(batch_id)
            for joint in joints[max(len(joints) - glued_late, 0) :] if glued_late else ():
                act.update("joint", joint.id, glued_us=max(at, batch.mixed_us))
                act.add_event("glued late", "joint", joint.id, at_us=at)
            act.add_event("all racked", "batch", batch_id, at_us=at)
        return act.changes

    def look(self, batch_id: int) -> ChangeSet:
        """Say that the last look at a batch's clubs is done."""
        now = self._clock.now()
        batch = self._batch(batch_id)
        label = text("Act", "last look at batch {number}").format(number=batch.number)
        with self._store.write(label, now, self.by) as act:
            act.update("batch", batch_id, looked_us=now)
            act.add_event("last look", "batch", batch_id)
        return act.changes

    # Temperatures

    def type_temperature(
        self, zone_id: int, temperature_mc: int, *, at_rack: bool, replace: bool = False
    ) -> ChangeSet:
        """Note what a thermometer says now [m°C]; at the rack it is surer.

        Raises
        ------
        InputError
            If it is out of −40…120 °C, or something else was typed this very moment.
        """
        now = self._clock.now()
        zone = self._zone_name(zone_id)
        check_limits(temperature_mc, Unit.C, zone)
        source = Source.TYPED_AT_RACK if at_rack else Source.TYPED
        u = RACK_U_MC if at_rack else TYPED_U_MC
        label = text("Act", "type {zone} temperature").format(zone=zone)
        with self._store.write(label, now, self.by) as act:
            added = act.add_readings(zone_id, [(now, temperature_mc, u, source)], replace=replace)
            if added.differing and not replace:
                came = text("Act", "{new} beside {kept}").format(
                    new=format_temperature(temperature_mc, Unit.C),
                    kept=format_temperature(added.differing[0].kept_mc, Unit.C),
                )
                raise InputError(text("Act", "one temperature for one moment"), came, zone)
            act.add_event("temperature typed", "zone", zone_id, {"mc": temperature_mc})
        return act.changes

    def answer_night(self, question: NightQuestion, low_mc: int) -> ChangeSet:
        """Say how cold it got, or will get, in a stretch without a record [m°C].

        Raises
        ------
        InputError
            If it is out of −40…120 °C, or warmer than the readings at its ends.
        """
        now = self._clock.now()
        zone = self._zone_name(question.zone_id)
        check_limits(low_mc, Unit.C, zone)
        before = self._store.record.reading_before(question.zone_id, question.from_us + 1)
        after = self._store.record.reading_after(question.zone_id, question.from_us)
        ends = [reading.temperature_mc for reading in (before, after) if reading is not None]
        if ends and low_mc > min(ends) + RACK_U_MC:
            wanted = text("Act", "the lowest of the night, so no more than the {end} beside it")
            raise InputError(
                wanted.format(end=format_temperature(min(ends), Unit.C)),
                format_temperature(low_mc, Unit.C), zone,
            )  # fmt: skip
        u = LOW_GUESSED_U_MC if question.ahead else LOW_READ_U_MC
        label = text("Act", "{zone}: lowest of the night").format(zone=zone)
        with self._store.write(label, now, self.by) as act:
            act.add(
                Bridge(
                    0, question.zone_id, question.from_us, question.to_us, low_mc, u, now, self.by
                )
            )
            act.add_event("low said", "zone", question.zone_id, {"mc": low_mc,
                          "from_us": question.from_us, "to_us": question.to_us})  # fmt: skip
        return act.changes

    def _cup_zone(self, place: Place, places: dict[int, Place]) -> int:
        """Return the zone whose air the batch follows: the room, unless there is none."""
        for candidate in places.values():
            if candidate.kind is PlaceKind.RACK and candidate.zone_id is not None:
                return candidate.zone_id
        assert place.zone_id is not None
        return place.zone_id
