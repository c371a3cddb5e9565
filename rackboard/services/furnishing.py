"""The shop's furniture: racks, boxes, places without slots, zones, and how the screen is read.

A slot is known by its number: it is what is painted on the wood. So a rack that gets other
rows or columns leaves every club and every past stay at its number. Whoever paints the numbers
anew says so; then the clubs that lie there now keep their row and column and get the numbers
of those, while stays of the past keep the number that stood there then.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from rackboard.core.bench import Club, Milestone, Place, PlaceKind, Stay, Zone
from rackboard.core.errors import InputError, RackboardError
from rackboard.core.instants import Clock
from rackboard.core.text import Figure, Text, text
from rackboard.services.slots import (
    LONGEST_NAME,
    SLOTTED,
    Keep,
    carried_over,
    check_prefix,
    check_size,
    one_line,
    shifted,
)
from rackboard.services.snapshot import CONTRAST, DISTANCE, LANGUAGE, MOTION, PITCH
from rackboard.store import Store
from rackboard.store.changes import ChangeSet
from rackboard.store.traces import stays_ever, zone_has_record
from rackboard.store.transaction import Transaction

NEEDED = (PlaceKind.RACK, PlaceKind.GRIP_BENCH, PlaceKind.PICK_UP, PlaceKind.OUT)
"""Kinds of which the shop keeps at least one."""
DEFAULT_DISTANCE_M, DEFAULT_PITCH_MM = 3.0, 0.2768
"""Where the wall is read from, and the pitch of a 24 inch screen of 1920 × 1080 [decision]."""
DISTANCES_M, PITCHES_MM = (0.5, 20.0), (0.05, 2.0)
_NAMED = 4


class Furnishing:
    """The acts on racks, places and zones, and the settings of the screen.

    Parameters
    ----------
    store : Store
        The data file.
    clock : Clock
        The time.
    by : str, optional
        Initials of who is at the bench.
    """

    def __init__(self, store: Store, clock: Clock, by: str | None = None) -> None:
        self._store = store
        self._clock = clock
        self.by = by

    # Places

    def add_place(self, place: Place) -> ChangeSet:
        """Add a rack, a box or a place without slots; its id and order are given here.

        Raises
        ------
        InputError
            If name, prefix, rows, columns or zone can't be taken.
        """
        place = self._checked(place._replace(id=0))
        last = max((p.sort for p in self._store.shop.places()), default=-1)
        with self._write(text("Act", "add {place}").format(place=place.name)) as act:
            act.add(place._replace(sort=last + 1))
        return act.changes

    def change_place(self, place: Place, keep: Keep = Keep.NUMBERS) -> ChangeSet:
        """Give a place another name, prefix, size or zone; an empty change set if it has them.

        Raises
        ------
        InputError
            If name, prefix, rows, columns or zone can't be taken.
        RackboardError
            If a club lies in a slot that would go, or a cure hangs on the zone.
        """
        old = self._place(place.id)
        place = self._checked(place._replace(kind=old.kind, sort=old.sort))
        if place == old:
            return ChangeSet()
        stays = self._store.work.stays_at([place.id])
        moved = self._renumbered(old, place, stays, keep)
        if place.zone_id != old.zone_id:
            self._check_no_cure(old)
        with self._write(text("Act", "change {place}").format(place=place.name)) as act:
            act.update(
                "place", place.id, name=place.name, prefix=place.prefix, rows=place.rows,
                columns=place.columns, zone_id=place.zone_id,
            )  # fmt: skip
            for stay, slot in moved:
                act.update("stay", stay.id, slot=slot)
            act.add_event("place changed", "place", place.id, {
                "was": [old.name, old.prefix, old.rows, old.columns, old.zone_id],
                "is": [place.name, place.prefix, place.rows, place.columns, place.zone_id],
                "slots": [[stay.club_id, stay.slot, slot] for stay, slot in moved],
            })  # fmt: skip
        return act.changes

    def renames(self, place: Place) -> tuple[str, str] | None:
        """Return the first occupied slot that another shape would number anew, before and after.

        None if no club's number hangs on how the rack is counted.
        """
        old = self._place(place.id)
        if place.columns < 1 or old.columns == place.columns:
            return None
        for stay in sorted(self._store.work.stays_at([old.id]), key=lambda s: s.slot or 0):
            slot = carried_over(stay.slot or 0, old, place)
            if slot is not None and slot != stay.slot:
                return old.slot_name(stay.slot), place.slot_name(slot)
        return None

    def remove_place(self, place_id: int) -> ChangeSet:
        """Remove a place at which no club lies or has ever lain.

        Raises
        ------
        RackboardError
            If one does or did, or the shop needs a place of this kind.
        """
        place = self._place(place_id)
        if place.kind in NEEDED and self._only_one(place.kind):
            raise RackboardError(
                text("Furnishing", "{place} can't be removed: the board needs one such place.")
                .format(place=place.name)
            )  # fmt: skip
        stays = stays_ever(self._store, place_id)
        lying = [stay for stay in stays if stay.to_us is None]
        if lying:
            raise RackboardError(
                text("Furnishing", "{place} can't be removed while clubs lie there: {clubs}.")
                .format(place=place.name, clubs=self._said(lying, place)),
                text("Furnishing", "Carry them elsewhere first."),
            )  # fmt: skip
        if stays:
            raise RackboardError(
                text("Furnishing", "{place} can't be removed; it is on the record of {clubs}.")
                .format(place=place.name, clubs=self._said(stays, place)),
                text("Furnishing", "It may get another name, or fewer slots."),
            )  # fmt: skip
        with self._write(text("Act", "remove {place}").format(place=place.name)) as act:
            act.delete("place", place_id)
        return act.changes

    def shift_place(self, place_id: int, by: int) -> ChangeSet:
        """Move a place up (-1) or down (+1) among those with slots, or those without."""
        place = self._place(place_id)
        slotted = place.kind in SLOTTED
        peers = [p for p in self._store.shop.places() if (p.kind in SLOTTED) is slotted]
        rest = [p for p in self._store.shop.places() if (p.kind in SLOTTED) is not slotted]
        order = shifted([p.id for p in peers], place_id, by)
        order = [*order, *(p.id for p in rest)] if slotted else [*(p.id for p in rest), *order]
        with self._write(text("Act", "order of the places")) as act:
            for sort, which in enumerate(order):
                act.update("place", which, sort=sort)
        return act.changes

    # Zones

    def add_zone(self, name: str) -> ChangeSet:
        """Add a body of air with a temperature record of its own.

        Raises
        ------
        InputError
            If the name can't be taken.
        """
        name = self._zone_name(name, 0)
        last = max((zone.sort for zone in self._store.shop.zones()), default=-1)
        with self._write(text("Act", "add {place}").format(place=name)) as act:
            act.add(Zone(0, name, last + 1))
        return act.changes

    def rename_zone(self, zone_id: int, name: str) -> ChangeSet:
        """Give a zone another name; an empty change set if it has it.

        Raises
        ------
        InputError
            If the name can't be taken.
        """
        name = self._zone_name(name, zone_id)
        if name == self._zone(zone_id).name:
            return ChangeSet()
        with self._write(text("Act", "change {place}").format(place=name)) as act:
            act.update("zone", zone_id, name=name)
        return act.changes

    def remove_zone(self, zone_id: int) -> ChangeSet:
        """Remove a zone without places and without a record.

        Raises
        ------
        RackboardError
            If it has either.
        """
        zone = self._zone(zone_id)
        places = [p.name for p in self._store.shop.places() if p.zone_id == zone_id]
        if places:
            raise RackboardError(
                text("Furnishing", "{zone} can't be removed while places lie in it: {places}.")
                .format(zone=zone.name, places=", ".join(places)),
                text("Furnishing", "Give them another zone first."),
            )  # fmt: skip
        if zone_has_record(self._store, zone_id):
            raise RackboardError(
                text("Furnishing", "{zone} can't be removed: it has a temperature record, and past"
                     " cures hang on it.").format(zone=zone.name)
            )  # fmt: skip
        with self._write(text("Act", "remove {place}").format(place=zone.name)) as act:
            act.delete("zone", zone_id)
        return act.changes

    def shift_zone(self, zone_id: int, by: int) -> ChangeSet:
        """Move a zone up (-1) or down (+1)."""
        order = shifted([zone.id for zone in self._store.shop.zones()], zone_id, by)
        with self._write(text("Act", "order of the zones")) as act:
            for sort, which in enumerate(order):
                act.update("zone", which, sort=sort)
        return act.changes

    # The screen

    def set_contrast(self, contrast: str) -> ChangeSet:
        """Show high contrast "on" or "off"; "" follows the system.

        Raises
        ------
        InputError
            If it is neither.
        """
        if contrast not in ("", "on", "off"):
            wanted = text("Furnishing", "on, off or the system's")
            raise InputError(wanted, contrast, text("Furnishing", "high contrast"))
        return self._set(text("Act", "high contrast"), {CONTRAST: contrast})

    def set_reduced_motion(self, still: bool) -> ChangeSet:
        """Let nothing flash or fade."""
        return self._set(text("Act", "reduced motion"), {MOTION: still})

    def set_viewing(self, distance_m: float, pitch_mm: float | None) -> ChangeSet:
        """Set from where the wall is read [m], and the pitch of its pixels [mm].

        Raises
        ------
        InputError
            If one of them is out of 0.5…20 m or 0.05…2 mm.
        """
        for value, (least, most), where, unit in (
            (distance_m, DISTANCES_M, text("Furnishing", "Viewing distance"), "m"),
            (pitch_mm, PITCHES_MM, text("Furnishing", "Pixel pitch"), "mm"),
        ):
            if value is not None and not least <= value <= most:
                raise InputError(
                    text("Furnishing", "{least} to {most} {unit}")
                    .format(least=Figure(f"{least:g}"), most=Figure(f"{most:g}"), unit=unit),
                    f"{value:g}", where,
                )  # fmt: skip
        return self._set(
            text("Act", "viewing distance"), {DISTANCE: distance_m, PITCH: pitch_mm}
        )

    def set_language(self, code: str) -> ChangeSet:
        """Speak a language; "" follows the system."""
        return self._set(text("Act", "language"), {LANGUAGE: code})

    def _set(self, label: Text, values: dict[str, object]) -> ChangeSet:
        with self._write(label) as act:
            for key, value in values.items():
                act.set_setting(key, value)
        return act.changes

    # Checks

    def _checked(self, place: Place) -> Place:
        others = [p for p in self._store.shop.places() if p.id != place.id]
        name = one_line(place.name, LONGEST_NAME, text("Furnishing", "Name"))
        if any(p.name.casefold() == name.casefold() for p in others):
            raise InputError(
                text("Furnishing", "a name that no other place has"), name,
                text("Furnishing", "Name"),
            )  # fmt: skip
        zone_id = None if place.kind is PlaceKind.OUT else place.zone_id
        if place.kind is not PlaceKind.OUT and zone_id not in {
            zone.id for zone in self._store.shop.zones()
        }:
            raise InputError(
                text("Furnishing", "a zone"), text("Furnishing", "none"),
                text("Furnishing", "Zone"),
            )  # fmt: skip
        if place.kind not in SLOTTED:
            return place._replace(name=name, prefix="", rows=0, columns=0, zone_id=zone_id)
        prefix = check_prefix(place.prefix, others)
        check_size(place.rows, place.columns)
        return place._replace(name=name, prefix=prefix, zone_id=zone_id)

    def _renumbered(
        self, old: Place, new: Place, stays: Sequence[Stay], keep: Keep
    ) -> list[tuple[Stay, int]]:
        """Return the clubs that get another number, in an order in which no two meet.

        Raises
        ------
        RackboardError
            If a club lies in a slot that would go.
        """
        if not old.rows * old.columns:
            return []
        count = new.rows * new.columns
        found: list[tuple[Stay, int]] = []
        lost: list[Stay] = []
        for stay in sorted(stays, key=lambda s: s.slot or 0):
            at: int | None = stay.slot or 0
            if keep is Keep.PLACES:
                at = carried_over(stay.slot or 0, old, new)
            if at is None or at >= count:
                lost.append(stay)
            elif at != stay.slot:
                found.append((stay, at))
        if lost:
            raise RackboardError(
                text("Furnishing", "{place} can't be made so small. Clubs lie in slots that would"
                     " go: {clubs}.")
                .format(place=old.name, clubs=self._said(lost, old)),
                text("Furnishing", "Carry them elsewhere first."),
            )  # fmt: skip
        return found[::-1] if new.columns > old.columns else found

    def _check_no_cure(self, place: Place) -> None:
        """Refuse another zone while the cure of a club hangs on the one that the place has."""
        live = self._store.load_live()
        done = {
            grant.joint_id for grant in live.grants
            if grant.milestone is Milestone.FULL_CURE and grant.withdrawn_us is None
        }  # fmt: skip
        curing = {
            joint.club_id for joint in live.joints
            if joint.ended_us is None and joint.glued_us is not None and joint.id not in done
        }  # fmt: skip
        stays = [s for s in self._store.work.stays(curing) if s.place_id == place.id]
        if stays:
            latest = {stay.club_id: stay for stay in stays}
            raise RackboardError(
                text("Furnishing", "{place} keeps its zone while times hang on its temperature,"
                     " those of {clubs}.")
                .format(place=place.name, clubs=self._said(latest.values(), place)),
                text("Furnishing", "If it was carried to other air, add a new one there and move"
                     " the clubs."),
            )  # fmt: skip

    def _said(self, stays: Iterable[Stay], place: Place) -> str:
        """Return clubs in words: "7 iron of 220 (A4), driver of 221"."""
        stays = list(stays)
        clubs: dict[int, Club] = {
            club.id: club for club in self._store.work.clubs_by_id(s.club_id for s in stays)
        }
        jobs = {job.id: job for job in self._store.work.jobs(c.job_id for c in clubs.values())}
        named: list[str] = []
        for stay in stays:
            club = clubs[stay.club_id]
            slot = "" if stay.slot is None else f" ({place.slot_name(stay.slot)})"
            said = f"{club.name} {jobs[club.job_id].number}{slot}"
            if said not in named:
                named.append(said)
        more = ["…"] if len(named) > _NAMED else []
        return ", ".join([*named[:_NAMED], *more])

    def _zone_name(self, name: str, zone_id: int) -> str:
        where = text("Furnishing", "Name")
        name = one_line(name, LONGEST_NAME, where)
        zones = self._store.shop.zones()
        if any(z.name.casefold() == name.casefold() and z.id != zone_id for z in zones):
            raise InputError(text("Furnishing", "a name that no other zone has"), name, where)
        return name

    def _only_one(self, kind: PlaceKind) -> bool:
        return sum(place.kind is kind for place in self._store.shop.places()) == 1

    def _place(self, place_id: int) -> Place:
        return next(place for place in self._store.shop.places() if place.id == place_id)

    def _zone(self, zone_id: int) -> Zone:
        return next(zone for zone in self._store.shop.zones() if zone.id == zone_id)

    def _write(self, label: Text) -> Transaction:
        return self._store.write(label, self._clock.now(), self.by)
