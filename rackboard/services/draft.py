"""A job on its way to the rack: what is typed with clean hands, before it is laid out."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from typing import NamedTuple

from rackboard.core.bench import JointKind, Parts, Place, PlaceKind
from rackboard.core.errors import InputError
from rackboard.core.instants import Instant
from rackboard.services.bench import MOST_CLUBS, ClubEntry, JobEntry
from rackboard.services.snapshot import Snapshot
from rackboard.store import Store

FIRST_NUMBER = 101
"""The first job number of a shop that has typed none [decision]."""

Slot = tuple[int, int]
"""Place id and slot from 0."""


class LineUp(NamedTuple):
    """A usual set of clubs."""

    name: str
    clubs: tuple[str, ...]


LINE_UPS = (
    LineUp("4 iron to PW", (*(f"{n} iron" for n in range(4, 10)), "PW")),
    LineUp("5 iron to PW", (*(f"{n} iron" for n in range(5, 10)), "PW")),
    LineUp("wedges 50 54 58", ("50° wedge", "54° wedge", "58° wedge")),
    LineUp("driver", ("driver",)),
    LineUp("putter", ("putter",)),
    LineUp("single club", ("club",)),
)
_HOLLOW = ("driver", "wood", "hybrid", "rescue")


@dataclass(frozen=True, slots=True)
class DraftClub:
    """A club of the draft; `slot` is None while there is no room for it."""

    name: str
    kind: JointKind
    slot: Slot | None = None
    graphics: str = ""


def usual_kind(name: str) -> JointKind:
    """Return the kind of joint that a club of this name usually has.

    Examples
    --------
    >>> usual_kind("3 wood").value, usual_kind("7 iron").value
    ('hollow head', 'solid head')
    """
    folded = name.casefold()
    hollow = any(word in folded for word in _HOLLOW)
    return JointKind.HOLLOW_HEAD if hollow else JointKind.SOLID_HEAD


def next_number(store: Store) -> str:
    """Return a job number that is still free: one more than the highest of the latest jobs."""
    figures = [int(job.number) for job in store.work.latest_jobs() if job.number.isdecimal()]
    number = max(figures, default=FIRST_NUMBER - 1) + 1
    while store.work.job_numbered(str(number)) is not None:
        number += 1
    return str(number)


def free_slots(snapshot: Snapshot, start: Slot | None = None) -> list[Slot]:
    """Return the free slots in the order in which clubs are put on them.

    From `start` to the end of its place, then the rest of that place, then the other racks,
    then the boxes.
    """
    taken = {(stay.place_id, stay.slot) for stay in snapshot.stays.values()}
    places = sorted(
        (p for p in snapshot.places.values() if p.rows * p.columns),
        key=lambda p: (p.kind is not PlaceKind.RACK, p.sort, p.id),
    )
    if start is not None:
        places.sort(key=lambda p: p.id != start[0])
    result: list[Slot] = []
    for place in places:
        slots = list(range(place.rows * place.columns))
        if start is not None and place.id == start[0]:
            slots = slots[start[1] :] + slots[: start[1]]
        result += [(place.id, slot) for slot in slots if (place.id, slot) not in taken]
    return result


@dataclass(slots=True)
class Draft:
    """What stands in the form; the clubs keep their order.

    `start` is the slot that was selected when the form was opened.
    """

    number: str = ""
    customer: str = ""
    phone: str = ""
    promised_us: Instant | None = None
    clubs: list[DraftClub] = field(default_factory=list)
    epoxy_id: int = 0
    lot: str = ""
    parts: Parts = Parts.SHOP
    parts_mc: int | None = None
    start: Slot | None = None

    @property
    def slots(self) -> list[Slot]:
        """The slots that are spoken for."""
        return [club.slot for club in self.clubs if club.slot is not None]

    def take(self, names: Iterable[str], snapshot: Snapshot) -> None:
        """Put these clubs into the draft in place of what was there.

        Raises
        ------
        InputError
            If they are more than a set has.
        """
        wanted = list(names)
        if len(wanted) > MOST_CLUBS:
            raise InputError(f"at most {MOST_CLUBS} clubs in a job", str(len(wanted)), "clubs")
        self.clubs = [DraftClub(name, usual_kind(name)) for name in wanted]
        self.seat(snapshot)

    def add(self, name: str, snapshot: Snapshot) -> None:
        """Add one club.

        Raises
        ------
        InputError
            If the draft has as many as a set has.
        """
        if len(self.clubs) >= MOST_CLUBS:
            raise InputError(
                f"at most {MOST_CLUBS} clubs in a job", str(len(self.clubs) + 1), "clubs"
            )
        self.clubs.append(DraftClub(name, usual_kind(name)))
        self.seat(snapshot)

    def remove(self, index: int) -> None:
        """Take one club out."""
        del self.clubs[index]

    def change(self, index: int, **facts: object) -> None:
        """Change a club's name, kind or graphics."""
        self.clubs[index] = replace(self.clubs[index], **facts)  # type: ignore[arg-type]

    def seat(self, snapshot: Snapshot) -> None:
        """Give every club a slot: those that have a free one keep it."""
        free = free_slots(snapshot, self.start)
        kept: set[Slot] = set()
        for index, club in enumerate(self.clubs):
            if club.slot in free and club.slot not in kept and club.slot is not None:
                kept.add(club.slot)
            else:
                self.clubs[index] = replace(club, slot=None)
        rest = (slot for slot in free if slot not in kept)
        for index, club in enumerate(self.clubs):
            if club.slot is None:
                self.clubs[index] = replace(club, slot=next(rest, None))

    def put(self, index: int, slot: Slot, snapshot: Snapshot) -> bool:
        """Put a club on a slot; a club of the draft that is there changes places with it.

        Returns
        -------
        bool
            False if somebody else's club is on the slot.
        """
        if slot not in free_slots(snapshot):
            return False
        here = self.clubs[index]
        for other, club in enumerate(self.clubs):
            if club.slot == slot:
                self.clubs[other] = replace(club, slot=here.slot)
        self.clubs[index] = replace(here, slot=slot)
        return True

    def entries(self, parts: tuple[int, ...]) -> list[JobEntry]:
        """Return the job, shared out between batches of so many clubs each.

        Raises
        ------
        InputError
            If a club has no slot, or there is no club.
        """
        if not self.clubs:
            raise InputError("at least one club", "none", f"job {self.number}")
        if self.parts is Parts.COLD and self.parts_mc is None:
            raise InputError("the temperature of the cold parts", "nothing", "parts")
        seated: list[ClubEntry] = []
        for club in self.clubs:
            if club.slot is None:
                raise InputError("a free slot for every club", f"none for {club.name}", "slots")
            seated.append(ClubEntry(club.name, club.kind, *club.slot, club.graphics))
        result, at = [], 0
        for count in parts:
            result.append(
                JobEntry(
                    self.number, self.customer, self.phone, self.promised_us,
                    tuple(seated[at : at + count]), self.epoxy_id, self.lot, self.parts,
                    self.parts_mc if self.parts is Parts.COLD else None,
                )
            )  # fmt: skip
            at += count
        return result


def span_name(slots: Iterable[Slot], places: dict[int, Place]) -> str:
    """Return slots in short: "A1 to A8", "A3", "A1, A4 and B2".

    Neighbours are drawn together.
    """
    runs: list[tuple[Slot, Slot]] = []
    for slot in sorted(slots, key=lambda s: (places[s[0]].sort, s)):
        if runs and runs[-1][1] == (slot[0], slot[1] - 1):
            runs[-1] = (runs[-1][0], slot)
        else:
            runs.append((slot, slot))
    texts = []
    for first, last in runs:
        name, end = (places[s[0]].slot_name(s[1]) for s in (first, last))
        texts.append(name if first == last else f"{name} to {end}")
    if len(texts) < 2:
        return "".join(texts)
    return f"{', '.join(texts[:-1])} and {texts[-1]}"
