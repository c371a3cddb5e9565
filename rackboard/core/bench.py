"""The nouns of the bench, as immutable values.

A customer's **job** holds **clubs**; a club has **joints** in its life; a joint is glued
with a **batch** of epoxy; a club stays at **places**, and a place lies in a temperature
**zone** with **readings**. Ids are the store's row ids. Instants are µs UTC.
"""

from __future__ import annotations

from enum import StrEnum
from typing import NamedTuple

from rackboard.core.epoxy import Sheet
from rackboard.core.instants import Instant


class JointKind(StrEnum):
    """What is glued; it sets the thermal lag."""

    SOLID_HEAD = "solid head"
    HOLLOW_HEAD = "hollow head"
    OVER_HOSEL_PUTTER = "over-hosel putter"
    ADAPTER_SLEEVE = "adapter sleeve"
    BUTT_EXTENSION = "butt extension"
    TIP_WEIGHT = "tip weight"


class Parts(StrEnum):
    """How warm the parts are when they are glued."""

    SHOP = "shop"
    COLD = "cold"


class PlaceKind(StrEnum):
    """Where a club can be; the last three have no slots."""

    RACK = "rack"
    BOX = "box"
    GRIP_BENCH = "grip bench"
    PICK_UP = "pick-up corner"
    OUT = "out of the shop"


class Source(StrEnum):
    """Where a temperature comes from; the first two are typed by a person."""

    TYPED = "typed"
    TYPED_AT_RACK = "typed at the rack"
    IMPORTED = "imported"
    FEED = "feed"

    @property
    def automatic(self) -> bool:
        """Whether two neighbours of this source may be joined by a straight line."""
        return self in (Source.IMPORTED, Source.FEED)


class Milestone(StrEnum):
    """A permission that a joint can earn."""

    HANDLING = "handling"
    FULL_CURE = "full cure"


class HoldReason(StrEnum):
    """Why nobody may trust a joint until a person has said what happened."""

    DISTURBED = "disturbed"
    SOFT_SMEAR = "soft smear"
    TOO_HOT = "too hot"


class Heating(NamedTuple):
    """When the heating of a zone runs on an open day, and what the zone falls to at night.

    `on_min` and `off_min` are minutes after local midnight.
    """

    on_min: int
    off_min: int
    setback_mc: int


class Zone(NamedTuple):
    """A body of air with one temperature record."""

    id: int
    name: str
    sort: int
    heating: Heating | None = None


class Place(NamedTuple):
    """A rack or box with `rows` × `columns` slots, or a place without slots (0 × 0)."""

    id: int
    zone_id: int | None
    kind: PlaceKind
    name: str
    prefix: str
    rows: int
    columns: int
    sort: int

    def slot_name(self, slot: int | None) -> str:
        """Return what is painted on the wood: the prefix and a number from 1."""
        return self.name if slot is None else f"{self.prefix}{slot + 1}"


class Person(NamedTuple):
    """Somebody at the bench, known by initials."""

    initials: str
    last_used_us: Instant


class Customer(NamedTuple):
    """Whose clubs they are; name and phone can be erased and leave the bonds' record."""

    id: int
    name: str
    phone: str
    erased_us: Instant | None = None


class Job(NamedTuple):
    """A customer's order: one to fourteen clubs."""

    id: int
    number: str
    customer_id: int
    created_us: Instant
    promised_us: Instant | None = None
    ready_us: Instant | None = None
    ready_by: str | None = None


class Club(NamedTuple):
    """One club of a job."""

    id: int
    job_id: int
    name: str
    sort: int


class Epoxy(NamedTuple):
    """A product on the shop's shelf."""

    id: int
    sheet: Sheet
    typical: bool
    retired_us: Instant | None = None


class Batch(NamedTuple):
    """One mixing of epoxy; `sheet` is the sheet as it was when mixed.

    Before `mixed_us` is set the batch is only laid out. `racked_us` is when the last club
    was on the rack, `looked_us` when the last look was done.
    """

    id: int
    number: int
    epoxy_id: int
    sheet: Sheet
    lot: str
    zone_id: int
    mixed_us: Instant | None = None
    racked_us: Instant | None = None
    looked_us: Instant | None = None
    mass_mg: int | None = None


class Joint(NamedTuple):
    """One glued joint of a club.

    `lag_s` is the thermal lag behind the air [s]; `parts_mc` the parts' temperature [m°C]
    when `parts` is cold. `ended_us` is set when the joint is scrapped or glued anew.
    """

    id: int
    club_id: int
    kind: JointKind
    lag_s: int
    batch_id: int | None = None
    glued_us: Instant | None = None
    parts: Parts = Parts.SHOP
    parts_mc: int | None = None
    graphics: str = ""
    ended_us: Instant | None = None
    ended_as: str | None = None


class Stay(NamedTuple):
    """A club at a place, from … to (None: still there)."""

    id: int
    club_id: int
    place_id: int
    slot: int | None
    from_us: Instant
    to_us: Instant | None = None


class Reading(NamedTuple):
    """One temperature of a zone; `u_mc` is its uncertainty. Both in m°C."""

    zone_id: int
    at_us: Instant
    temperature_mc: int
    u_mc: int
    source: Source


class Bridge(NamedTuple):
    """The answer "it got no colder than …" for a stretch without a record [m°C]."""

    id: int
    zone_id: int
    from_us: Instant
    to_us: Instant
    low_mc: int
    u_mc: int
    said_us: Instant
    by: str | None = None


class Grant(NamedTuple):
    """A permission that the board has given: journalled, and withdrawn only with a reason."""

    id: int
    joint_id: int
    milestone: Milestone
    late_us: Instant
    printed_us: Instant
    given_us: Instant
    withdrawn_us: Instant | None = None
    reason: str | None = None


class Hold(NamedTuple):
    """A joint nobody may trust until `to_us` with an outcome."""

    id: int
    joint_id: int
    reason: HoldReason
    detail: str
    from_us: Instant
    to_us: Instant | None = None
    outcome: str | None = None
    by: str | None = None


class Release(NamedTuple):
    """A joint that a person lets go before the board does: `milestone` is what for."""

    id: int
    joint_id: int
    milestone: Milestone
    by: str
    at_us: Instant
    reason: str


class Event(NamedTuple):
    """One line of the shop's journal.

    `at_us` is when it happened, `recorded_us` when it was said. `subject` and `subject_id`
    name what it is about ("job", "batch", "joint", "club", "zone", "shop"); `data` holds the
    figures, JSON values only.
    """

    id: int
    at_us: Instant
    recorded_us: Instant
    kind: str
    subject: str
    subject_id: int
    by: str | None
    data: dict[str, object]
