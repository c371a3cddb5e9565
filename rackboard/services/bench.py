"""What people do at the bench: each act is one transaction and returns what it changed."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from rackboard.core.bench import (
    Batch,
    Bridge,
    Club,
    Customer,
    Epoxy,
    Heating,
    Hold,
    HoldReason,
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
from rackboard.core.disturbance import Answer
from rackboard.core.epoxy import Sheet
from rackboard.core.errors import InputError
from rackboard.core.instants import Clock, Instant
from rackboard.core.schedule import Hours, OpeningHours
from rackboard.core.temperature import Unit, check_limits
from rackboard.services.agenda import NightQuestion
from rackboard.services.doubts import check_mixed
from rackboard.services.snapshot import SHOP_NAME, UNIT, WEEK
from rackboard.store import Store
from rackboard.store.changes import ChangeSet
from rackboard.store.rows import heating_text, sheet_text

LAG_S = {
    JointKind.SOLID_HEAD: 1320,
    JointKind.HOLLOW_HEAD: 240,
    JointKind.OVER_HOSEL_PUTTER: 1320,
    JointKind.ADAPTER_SLEEVE: 0,
    JointKind.BUTT_EXTENSION: 0,
    JointKind.TIP_WEIGHT: 0,
}
"""Thermal lag by kind of joint [s].

A 0.300 kg steel head with 490 J/(kg·K), 0.0125 m² and 9 W/(m²·K) in still air has 22 min,
a thin hollow one of 0.2 kg about 4 (computed); the small parts follow at once [decision].
"""
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
MOVED_LATE = "moved after its working life"
"""What the journal says of a head set right, or pulled, when it was past its working life."""
THEME = "theme"
"""Setting: "dark", "light", or "" to follow the system."""
LONGEST_SHOP_NAME, LONGEST_INITIALS = 60, 8


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


class Bench:
    """The acts of the bench.

    Parameters
    ----------
    store : Store
        The data file.
    clock : Clock
        The time.
    hours : OpeningHours
        Of the shop, for words in errors and doubts.
    """

    def __init__(self, store: Store, clock: Clock, hours: OpeningHours) -> None:
        self._store = store
        self._clock = clock
        self.hours = hours
        self.by: str | None = None

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
            raise InputError("a job number", "nothing", "job")
        if not entry.clubs:
            raise InputError("at least one club", "none", f"job {number}")
        slots = [(club.place_id, club.slot) for club in entry.clubs]
        if len(set(slots)) < len(slots):
            raise InputError("a slot of its own for every club", "the same slot twice", "slots")
        epoxy = self._store.shop.epoxy(entry.epoxy_id)
        if epoxy is None:
            raise InputError("an epoxy from the shelf", entry.epoxy_id, "epoxy")
        calibrate(epoxy.sheet)
        places = {place.id: place for place in self._store.shop.places()}
        first = places[entry.clubs[0].place_id]
        with self._store.write(f"lay out job {number}", now, self.by) as act:
            present = self._store.work.job_numbered(number)
            if present is None:
                customer = act.add(Customer(0, entry.customer.strip(), entry.phone.strip()))
                job_id = act.add(Job(0, number, customer, now, entry.promised_us))
            else:
                job_id = present.id
            clubs_before = len(self._store.work.clubs([job_id]))
            if clubs_before + len(entry.clubs) > MOST_CLUBS:
                raise InputError(
                    f"at most {MOST_CLUBS} clubs in a job",
                    f"{clubs_before + len(entry.clubs)}", f"job {number}",
                )  # fmt: skip
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
            if self.by:
                act.use_person(self.by)
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
            raise InputError("a batch that isn't mixed yet", f"batch {batch.number}", "mixed now")
        at = now if at_us is None else check_mixed(at_us, now, self.hours, "mixed at")
        epoxy = self._store.shop.epoxy(batch.epoxy_id)
        sheet = batch.sheet if epoxy is None else epoxy.sheet
        with self._store.write(f"mix batch {batch.number}", now, self.by) as act:
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
            raise InputError("a mixed batch", f"batch {batch.number}, not mixed", "all racked")
        with self._store.write(f"rack batch {batch.number}", now, self.by) as act:
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
        with self._store.write(f"last look at batch {batch.number}", now, self.by) as act:
            act.update("batch", batch_id, looked_us=now)
            act.add_event("last look", "batch", batch_id)
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
        if batch.mixed_us is None:
            raise InputError("a mixed batch", f"batch {batch.number}, not mixed", "mixed at")
        at = check_mixed(at_us, now, self.hours, "mixed at")
        with self._store.write(
            f"correct batch {batch.number}", now, self.by, correction=True
        ) as act:
            racked = batch.racked_us
            if racked is not None and racked < at:
                act.update("batch", batch_id, mixed_us=at, racked_us=at)
            else:
                act.update("batch", batch_id, mixed_us=at)
            for joint in self._joints_of(batch_id):
                if joint.glued_us is not None and (
                    joint.glued_us == batch.mixed_us or joint.glued_us < at
                ):
                    act.update("joint", joint.id, glued_us=at)
            act.add_event("corrected", "batch", batch_id, {"was_us": batch.mixed_us, "is_us": at})
        return act.changes

    # Carrying

    def move(self, club_id: int, place_id: int, slot: int | None) -> ChangeSet:
        """Carry a club to another slot or place.

        Raises
        ------
        InputError
            If the slot is taken, or isn't one of the place.
        """
        now = self._clock.now()
        place = self._place(place_id)
        if place.rows * place.columns == 0:
            slot = None
        elif slot is None or not 0 <= slot < place.rows * place.columns:
            raise InputError(f"a slot of {place.name}", slot, "move")
        club = self._club(club_id)
        target = place.slot_name(slot)
        with self._store.write(f"move {club.name} to {target}", now, self.by) as act:
            for stay in self._store.work.stays([club_id], open_only=True):
                if (stay.place_id, stay.slot) == (place_id, slot):
                    raise InputError("another place", f"{club.name} is at {target}", "move")
                act.update("stay", stay.id, to_us=max(now, stay.from_us))
            act.add(Stay(0, club_id, place_id, slot, now))
            act.add_event("moved", "club", club_id, {"place": place_id, "slot": slot})
        return act.changes

    def take_off(self, club_id: int, kind: PlaceKind = PlaceKind.GRIP_BENCH) -> ChangeSet:
        """Take a club off the rack: to the grip bench, the pick-up corner, or out."""
        place = next(p for p in self._store.shop.places() if p.kind is kind)
        return self.move(club_id, place.id, None)

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
        with self._store.write(f"type {zone} temperature", now, self.by) as act:
            added = act.add_readings(zone_id, [(now, temperature_mc, u, source)], replace=replace)
            if added.differing and not replace:
                raise InputError(
                    "one temperature for one moment",
                    f"{temperature_mc / 1000:g} beside {added.differing[0].kept_mc / 1000:g} °C",
                    zone,
                )
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
            raise InputError(
                f"the lowest of the night, so no more than the {min(ends) / 1000:g} °C beside it",
                f"{low_mc / 1000:g} °C", zone,
            )  # fmt: skip
        u = LOW_GUESSED_U_MC if question.ahead else LOW_READ_U_MC
        with self._store.write(f"{zone}: lowest of the night", now, self.by) as act:
            act.add(
                Bridge(
                    0, question.zone_id, question.from_us, question.to_us, low_mc, u, now, self.by
                )
            )
            act.add_event("low said", "zone", question.zone_id, {"mc": low_mc,
                          "from_us": question.from_us, "to_us": question.to_us})  # fmt: skip
        return act.changes

    # Holds, READY

    def disturb(self, joint_id: int) -> ChangeSet:
        """Put a joint on HOLD because it was knocked, pulled or turned."""
        now = self._clock.now()
        with self._store.write("disturbed", now, self.by) as act:
            act.add(Hold(0, joint_id, HoldReason.DISTURBED, "", now, by=self.by))
            act.add_event("disturbed", "joint", joint_id)
        return act.changes

    def end_hold(self, hold: Hold, outcome: str) -> ChangeSet:
        """End a HOLD with what a person has said; "scrapped" ends the joint too."""
        now = self._clock.now()
        with self._store.write(f"answer: {outcome}", now, self.by) as act:
            act.update("hold", hold.id, to_us=now, outcome=outcome, by=self.by)
            if outcome == "scrapped":
                act.update("joint", hold.joint_id, ended_us=now, ended_as="scrapped")
                joint = self._store.work.joints(ids=[hold.joint_id])[0]
                for stay in self._store.work.stays([joint.club_id], open_only=True):
                    act.update("stay", stay.id, to_us=now)
            act.add_event("hold ended", "joint", hold.joint_id, {"outcome": outcome})
        return act.changes

    def re_aim(self, joint_id: int, *, after_life: bool = False) -> ChangeSet:
        """Note that a disturbed head was set right before the glue gelled; its clock runs on.

        `after_life` says that the working life was over by then.
        """
        now = self._clock.now()
        kind = MOVED_LATE if after_life else "re-aimed"
        with self._store.write(kind, now, self.by) as act:
            act.add_event(kind, "joint", joint_id, {"outcome": Answer.RE_AIMED.value})
        return act.changes

    def re_glued(
        self, joint_id: int, hold: Hold | None = None, *, after_life: bool = False
    ) -> ChangeSet:
        """End a joint that was pulled and cleaned, and lay its club out with a new batch.

        The new joint waits for its batch to be mixed, so that nobody takes the job for whole;
        clubs of one job re-glued with the same epoxy share a batch until it is mixed. READY
        is taken back. `hold` is the open HOLD that this answers.

        Raises
        ------
        InputError
            If the joint has ended already, or was never glued.
        """
        now = self._clock.now()
        joint = self._store.work.joints(ids=[joint_id])[0]
        club = self._club(joint.club_id)
        if joint.ended_us is not None or joint.glued_us is None or joint.batch_id is None:
            raise InputError("a glued joint", f"{club.name}, {joint.ended_as or 'not glued'}",
                             "re-glued")  # fmt: skip
        old = self._batch(joint.batch_id)
        job = self._store.work.jobs([club.job_id])[0]
        with self._store.write(f"re-glue {club.name}", now, self.by) as act:
            if hold is not None:
                act.update("hold", hold.id, to_us=now, outcome=Answer.RE_GLUED.value, by=self.by)
                act.add_event("hold ended", "joint", joint_id, {"outcome": Answer.RE_GLUED.value})
            act.update("joint", joint_id, ended_us=now, ended_as="re-glued")
            if after_life:
                act.add_event(MOVED_LATE, "joint", joint_id, {"outcome": Answer.RE_GLUED.value})
            batch_id = self._waiting_batch(job.id, old.epoxy_id)
            if batch_id is None:
                epoxy = self._store.shop.epoxy(old.epoxy_id)
                number = self._store.work.next_batch_number()
                sheet = old.sheet if epoxy is None else epoxy.sheet
                batch_id = act.add(Batch(0, number, old.epoxy_id, sheet, "", old.zone_id))
            again = joint._replace(id=0, batch_id=batch_id, glued_us=None, parts=Parts.SHOP,
                                   parts_mc=None)  # fmt: skip
            act.add_event("re-glued", "joint", act.add(again), {"was": joint_id})
            if job.ready_us is not None:
                act.update("job", job.id, ready_us=None, ready_by=None)
                act.add_event("not ready", "job", job.id)
        return act.changes

    def press_ready(self, job_id: int, ready: bool) -> ChangeSet:
        """Say that a job is gripped, bent, tested: READY is a person's word."""
        now = self._clock.now()
        with self._store.write("READY" if ready else "not READY", now, self.by) as act:
            act.update("job", job_id, ready_us=now if ready else None,
                       ready_by=self.by if ready else None)  # fmt: skip
            act.add_event("ready" if ready else "not ready", "job", job_id)
        return act.changes

    def promise(self, job_id: int, promised_us: Instant | None) -> ChangeSet:
        """Set or correct when a job is promised."""
        now = self._clock.now()
        with self._store.write("promise", now, self.by, correction=True) as act:
            act.update("job", job_id, promised_us=promised_us)
        return act.changes

    # The shop

    def set_week(self, week: Sequence[Hours]) -> ChangeSet:
        """Set the opening hours.

        Raises
        ------
        InputError
            If a day closes before it opens.
        """
        hours = OpeningHours(tuple(week), self.hours.zone)
        with self._store.write("opening hours", self._clock.now(), self.by) as act:
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
            if not 0 <= heating.on_min < heating.off_min <= 24 * 60:
                raise InputError("an hour off after the hour on", heating, zone)
        with self._store.write(f"{zone}: heating", self._clock.now(), self.by) as act:
            act.update("zone", zone_id, heating_json=heating_text(heating))
        return act.changes

    def set_unit(self, unit: Unit | None) -> ChangeSet:
        """Show temperatures in °C or °F; None: by the locale."""
        with self._store.write("temperature unit", self._clock.now(), self.by) as act:
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
            raise InputError("dark, light or the system's", theme, "theme")
        with self._store.write("theme", self._clock.now(), self.by) as act:
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
            wanted = f"a name in one line, up to {LONGEST_SHOP_NAME} characters"
            raise InputError(wanted, name, "shop name")
        with self._store.write("shop name", self._clock.now(), self.by) as act:
            act.set_setting(SHOP_NAME, name)
        return act.changes

    def set_by(self, initials: str) -> ChangeSet:
        """Say who is at the bench; the acts from now on carry these initials, "" nobody's.

        Raises
        ------
        InputError
            If they are too long.
        """
        initials = initials.strip()
        if len(initials) > LONGEST_INITIALS or not initials.isprintable():
            raise InputError(f"initials, up to {LONGEST_INITIALS} letters", initials, "initials")
        self.by = initials or None
        if not initials:
            return ChangeSet()
        with self._store.write("initials", self._clock.now(), self.by) as act:
            act.use_person(initials)
            act.forbid_undo()  # taking it back would not take back who acts
        return act.changes

    # The shelf

    def save_epoxy(self, sheet: Sheet, epoxy_id: int | None = None) -> ChangeSet:
        """Put an epoxy on the shelf, or change one; batches keep the sheet they were mixed by.

        Raises
        ------
        InputError
            If the sheet can't be calculated with, with the reason.
        """
        calibrate(sheet)
        now = self._clock.now()
        with self._store.write(f"save {sheet.name}", now, self.by, correction=True) as act:
            if epoxy_id is None:
                act.add(Epoxy(0, sheet, typical=False))
            else:
                act.update("epoxy", epoxy_id, sheet_json=sheet_text(sheet), typical=0)
        return act.changes

    def retire_epoxy(self, epoxy_id: int, retired: bool = True) -> ChangeSet:
        """Take an epoxy off the shelf, or put it back."""
        now = self._clock.now()
        with self._store.write("retire epoxy" if retired else "use epoxy again", now) as act:
            act.update("epoxy", epoxy_id, retired_us=now if retired else None)
        return act.changes

    def erase_customer(self, customer_id: int) -> ChangeSet:
        """Erase a customer's name and phone; the record of the bonds stays."""
        return self._store.erase_customer(customer_id, self._clock.now(), self.by)

    def _batch(self, batch_id: int) -> Batch:
        return self._store.work.batches([batch_id])[0]

    def _club(self, club_id: int) -> Club:
        return self._store.work.clubs_by_id([club_id])[0]

    def _place(self, place_id: int) -> Place:
        return next(place for place in self._store.shop.places() if place.id == place_id)

    def _zone_name(self, zone_id: int) -> str:
        return next(zone.name for zone in self._store.shop.zones() if zone.id == zone_id)

    def _joints_of(self, batch_id: int) -> list[Joint]:
        joints = self._store.work.joints(batch_ids=[batch_id])
        return [joint for joint in joints if joint.ended_us is None]

    def _waiting_batch(self, job_id: int, epoxy_id: int) -> int | None:
        """Return a job's batch of an epoxy that is laid out and not mixed yet."""
        clubs = self._store.work.clubs([job_id])
        joints = self._store.work.joints(club_ids=[club.id for club in clubs])
        batches = self._store.work.batches(
            {j.batch_id for j in joints if j.batch_id is not None and j.ended_us is None}
        )
        unmixed = (b.id for b in batches if b.mixed_us is None and b.epoxy_id == epoxy_id)
        return next(unmixed, None)

    def _cup_zone(self, place: Place, places: dict[int, Place]) -> int:
        """Return the zone whose air the batch follows: the room, unless there is none."""
        for candidate in places.values():
            if candidate.kind is PlaceKind.RACK and candidate.zone_id is not None:
                return candidate.zone_id
        assert place.zone_id is not None
        return place.zone_id
