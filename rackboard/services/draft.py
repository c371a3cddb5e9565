"""A job on its way to the rack: what is typed with clean hands, before it is laid out."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from typing import NamedTuple

from rackboard.core.bench import JointKind, Parts, Place, PlaceKind
from rackboard.core.errors import InputError
from rackboard.core.instants import Instant
from rackboard.core.text import Text, text
from rackboard.services.bench import MOST_CLUBS, ClubEntry, JobEntry
from rackboard.services.snapshot import Snapshot
from rackboard.store import Store

FIRST_NUMBER = 101
"""The first job number of a shop that has typed none [decision]."""
INDEX_MARK = "index mark"
"""Graphics of a sleeve: it is turned by its mark, not by the clock."""

Slot = tuple[int, int]
"""Place id and slot from 0."""
Named = tuple[str, JointKind]
"""A club's name, and what is glued of it."""


class LineUp(NamedTuple):
    """A usual set of clubs; `sub` says what is in it where the name doesn't."""

    name: Text
    clubs: tuple[str, ...]
    sub: str = ""


_DRIVER, _HYBRID = text("Clubs", "driver"), text("Clubs", "hybrid")
_PUTTER, _THREE_WOOD = text("Clubs", "putter"), text("Clubs", "3 wood")
_LETTERS = ("PW", "GW", "SW", "LW")
_HIGHEST_IRON = 9


def iron(number: int) -> Text:
    """Return the name of an iron."""
    return text("Clubs", "{number} iron").format(number=str(number))


def irons(first: int, last: str = "PW") -> tuple[str, ...]:
    """Return irons from a number to a number or a wedge; no gap wedge unless it is the last.

    Examples
    --------
    >>> [str(name) for name in irons(8, "SW")]
    ['8 iron', '9 iron', 'PW', 'SW']
    """
    if last.isdecimal():
        return tuple(iron(n) for n in range(first, int(last) + 1))
    wedges = ["PW"] if last == "PW" else ["PW", last]
    return (*(iron(n) for n in range(first, _HIGHEST_IRON + 1)), *wedges)


LINE_UPS = (
    LineUp(text("Clubs", "4 iron to PW"), irons(4)),
    LineUp(text("Clubs", "3 iron to PW"), irons(3)),
    LineUp(text("Clubs", "5 iron to SW"), irons(5, "SW")),
    LineUp(text("Clubs", "8 irons"), (*irons(4), "50°"), "4–PW, 50°"),
    LineUp(text("Clubs", "wedge set"), ("50°", "54°", "58°"), "50° 54° 58°"),
    LineUp(_DRIVER, (_DRIVER,)),
    LineUp(_THREE_WOOD, (_THREE_WOOD,)),
    LineUp(_HYBRID, (_HYBRID,)),
    LineUp(_PUTTER, (_PUTTER,)),
)
"""Each is added to what is there already."""

_KINDS = (
    (("sleeve", "adapter"), JointKind.ADAPTER_SLEEVE),
    (("extension",), JointKind.BUTT_EXTENSION),
    (("tip weight",), JointKind.TIP_WEIGHT),
    (("putter", "mallet"), JointKind.OVER_HOSEL_PUTTER),
    (("driver", "wood", "holz", "hybrid", "rescue"), JointKind.HOLLOW_HEAD),
)
_LONGEST_NAME = 40


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
    >>> [usual_kind(name).value for name in ("3 wood", "7 iron", "putter")]
    ['hollow head', 'solid head', 'over-hosel putter']
    """
    folded = name.casefold()
    for words, kind in _KINDS:
        if any(word in folded for word in words):
            return kind
    return JointKind.SOLID_HEAD


def read_clubs(typed: str) -> tuple[str, ...]:
    """Return the clubs that somebody types: names, line-ups and ranges, between commas.

    Parameters
    ----------
    typed : str
        "driver", "7" (an iron), "4-PW", "8 irons, putter".

    Raises
    ------
    InputError
        If a name is too long for a tile.

    Examples
    --------
    >>> [str(name) for name in read_clubs("driver, 8-pw")]
    ['driver', '8 iron', '9 iron', 'PW']
    """
    known = {str(line_up.name).casefold(): line_up.clubs for line_up in LINE_UPS}
    found: list[str] = []
    for part in re.split(r"[,;+]", typed):
        name = " ".join(part.split())
        if not name:
            continue
        if len(name) > _LONGEST_NAME:
            raise InputError(
                text("Draft", "a club's name of at most %n letters", "", _LONGEST_NAME),
                name, text("Draft", "Clubs"),
            )  # fmt: skip
        found += known.get(name.casefold()) or _range(name) or (name,)
    return tuple(found)


def _range(name: str) -> tuple[str, ...]:
    """Return the irons of "4-PW", "4 iron to 9 iron", "7"; nothing if it is none of these."""
    last = rf"([1-9]|{'|'.join(_LETTERS)})"
    match = re.fullmatch(
        rf"([1-9]) ?(?:irons?|i)?(?: ?(?:-|–|to|bis) ?{last} ?(?:irons?|i)?)?",
        name, re.IGNORECASE,
    )  # fmt: skip
    if match is None:
        return (name.upper(),) if name.upper() in _LETTERS else ()
    first, end = int(match[1]), match[2]
    if end is None:
        return (iron(first),)
    if end.isdecimal() and int(end) <= first:
        return ()
    return irons(first, end.upper())


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

    def join(self, clubs: Iterable[Named], snapshot: Snapshot) -> None:
        """Add these clubs to those that are there.

        Raises
        ------
        InputError
            If they are together more than a set has.
        """
        wanted = list(clubs)
        together = len(self.clubs) + len(wanted)
        if together > MOST_CLUBS:
            raise InputError(
                text("Draft", "at most %n clubs in a job", "", MOST_CLUBS), str(together),
                text("Draft", "Clubs"),
            )  # fmt: skip
        self.clubs += [DraftClub(name, kind) for name, kind in wanted]
        self.seat(snapshot)

    def remove(self, index: int) -> None:
        """Take one club out."""
        del self.clubs[index]

    def rename(self, index: int, name: str) -> None:
        """Change a club's name; its kind follows, unless another than the usual was chosen."""
        club = self.clubs[index]
        usual = club.kind is usual_kind(club.name)
        self.change(index, name=name)
        if usual:
            self.set_kind(index, usual_kind(name))

    def set_kind(self, index: int, kind: JointKind) -> None:
        """Say what is glued; only a sleeve has an index mark."""
        marked = self.clubs[index].graphics == INDEX_MARK
        self.change(index, kind=kind)
        if marked and kind is not JointKind.ADAPTER_SLEEVE:
            self.change(index, graphics="")

    def change(self, index: int, **facts: object) -> None:
        """Change single facts of a club."""
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
            raise InputError(
                text("Draft", "at least one club"), text("Draft", "none"),
                text("Draft", "job {number}").format(number=self.number),
            )  # fmt: skip
        if self.parts is Parts.COLD and self.parts_mc is None:
            raise InputError(
                text("Draft", "the temperature of the cold parts"), text("Draft", "nothing"),
                text("Draft", "parts"),
            )  # fmt: skip
        seated: list[ClubEntry] = []
        for club in self.clubs:
            if club.slot is None:
                raise InputError(
                    text("Draft", "a free slot for every club"),
                    text("Draft", "none for {club}").format(club=club.name),
                    text("Draft", "slots"),
                )  # fmt: skip
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
    said: str = ""
    for number, (first, last) in enumerate(runs, 1):
        name, end = (places[s[0]].slot_name(s[1]) for s in (first, last))
        run = name if first == last else (
            text("Slots", "{first} to {last}").format(first=name, last=end)
        )  # fmt: skip
        if number == 1:
            said = run
        elif number == len(runs):
            said = text("Slots", "{several} and {last}").format(several=said, last=run)
        else:
            said = text("Slots", "{several}, {next}").format(several=said, next=run)
    return said
