"""Where the clubs lie: carrying them, and two that were taken for each other."""

from __future__ import annotations

from rackboard.core.bench import PlaceKind, Stay
from rackboard.core.errors import InputError
from rackboard.core.instants import Instant
from rackboard.core.text import text
from rackboard.services.acts import Acts, slot_of
from rackboard.store.changes import ChangeSet


class Carrying(Acts):
    """The acts that move clubs, or say which is which."""

    def move(self, club_id: int, place_id: int, slot: int | None) -> ChangeSet:
        """Carry a club to another slot or place.

        Raises
        ------
        InputError
            If the slot is taken, or isn't one of the place.
        """
        now = self._clock.now()
        place = self._place(place_id)
        slot = slot_of(place, slot, text("Act", "move"))
        club = self._club(club_id)
        target = place.slot_name(slot)
        label = text("Act", "move {club} to {place}").format(club=club.name, place=target)
        with self._store.write(label, now, self.by) as act:
            for stay in self._store.work.stays([club_id], open_only=True):
                if (stay.place_id, stay.slot) == (place_id, slot):
                    there = text("Act", "{club} is at {place}")
                    raise InputError(
                        text("Act", "another place"),
                        there.format(club=club.name, place=target), text("Act", "move"),
                    )  # fmt: skip
                act.update("stay", stay.id, to_us=max(now, stay.from_us))
            act.add(Stay(0, club_id, place_id, slot, now))
            act.add_event("moved", "club", club_id, {"place": place_id, "slot": slot})
        return act.changes

    def take_off(self, club_id: int, kind: PlaceKind = PlaceKind.GRIP_BENCH) -> ChangeSet:
        """Take a club off the rack: to the grip bench, the pick-up corner, or out."""
        place = next(p for p in self._store.shop.places() if p.kind is kind)
        return self.move(club_id, place.id, None)

    def lain_since(self, club_id: int, other_id: int) -> Instant:
        """Return since when two clubs lie where they are noted, both of them.

        Raises
        ------
        InputError
            If it is one club, or one of them lies nowhere.
        """
        return max(stay.from_us for stay in self._both_stays(club_id, other_id))

    def change_places(self, club_id: int, other_id: int) -> ChangeSet:
        """Carry two clubs, each to the other's place; the clocks go with them.

        Raises
        ------
        InputError
            If it is one club, or one of them lies nowhere.
        """
        now = self._clock.now()
        stays = self._both_stays(club_id, other_id)
        one, two = self._club(club_id), self._club(other_id)
        label = text("Act", "swap {one} and {two}").format(one=one.name, two=two.name)
        with self._store.write(label, now, self.by) as act:
            for stay in stays:
                act.update("stay", stay.id, to_us=max(now, stay.from_us))
            for stay, at in (stays, (stays[1], stays[0])):
                act.add(Stay(0, stay.club_id, at.place_id, at.slot, now))
                act.add_event(
                    "moved", "club", stay.club_id, {"place": at.place_id, "slot": at.slot}
                )
        return act.changes

    def correct_notches(self, club_id: int, other_id: int) -> ChangeSet:
        """Say that two clubs were noted in each other's slot: club and clock change places.

        They lay the other way round since both lay there; before that, each was where it was
        noted. The wrong stays stay on the record.

        Raises
        ------
        InputError
            If it is one club, or one of them lies nowhere.
        """
        now = self._clock.now()
        stays = self._both_stays(club_id, other_id)
        since = max(stay.from_us for stay in stays)
        one, two = self._club(club_id), self._club(other_id)
        label = text("Act", "correct the notches of {one} and {two}")
        label = label.format(one=one.name, two=two.name)
        with self._store.write(label, now, self.by, correction=True) as act:
            for stay in stays:
                if stay.from_us == since:
                    act.delete("stay", stay.id)
                else:
                    act.update("stay", stay.id, to_us=since)
            for stay, at in (stays, (stays[1], stays[0])):
                act.add(Stay(0, stay.club_id, at.place_id, at.slot, since))
            data = {"with": other_id, "notch": True, "since_us": since}
            act.add_event("swapped", "club", club_id, data)
            act.add_event("swapped", "club", other_id, {**data, "with": club_id})
            self._note_person(act)
        return act.changes

    def correct_names(self, club_id: int, other_id: int) -> ChangeSet:
        """Say that two clubs go by each other's name: the clocks stay where they are.

        Their joints, stays and history belong to the club itself and stay with it; job, name
        and place in the job change hands. A job that gets another club is no longer READY.

        Raises
        ------
        InputError
            If it is one club, or both have the same name in one job.
        """
        now = self._clock.now()
        one, two = self._club(club_id), self._club(other_id)
        where = text("Act", "swap")
        if one.id == two.id:
            raise InputError(text("Act", "two clubs"), one.name, where)
        if (one.job_id, one.name) == (two.job_id, two.name):
            raise InputError(text("Act", "two names"), one.name, where)
        label = text("Act", "correct the names of {one} and {two}")
        label = label.format(one=one.name, two=two.name)
        with self._store.write(label, now, self.by, correction=True) as act:
            for club, named in ((one, two), (two, one)):
                act.update("club", club.id, job_id=named.job_id, name=named.name, sort=named.sort)
                act.add_event("swapped", "club", club.id, {"with": named.id, "notch": False})
            if one.job_id != two.job_id:
                self._unready(act, one.job_id)
                self._unready(act, two.job_id)
            self._note_person(act)
        return act.changes

    def _both_stays(self, club_id: int, other_id: int) -> tuple[Stay, Stay]:
        stays = {s.club_id: s for s in self._store.work.stays([club_id, other_id], open_only=True)}
        where = text("Act", "swap")
        if club_id == other_id:
            raise InputError(text("Act", "two clubs"), self._club(club_id).name, where)
        for club in (club_id, other_id):
            if club not in stays:
                came = text("Act", "{club}, which lies nowhere").format(club=self._club(club).name)
                raise InputError(text("Act", "two clubs that lie somewhere"), came, where)
        return stays[club_id], stays[other_id]
