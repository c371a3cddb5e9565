"""The work at hand, in memory: what the board is made from."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from datetime import tzinfo

from rackboard.core.bench import (
    Batch,
    Club,
    Customer,
    Epoxy,
    Grant,
    Hold,
    Job,
    Joint,
    Milestone,
    Place,
    PlaceKind,
    Release,
    Stay,
    Zone,
)
from rackboard.core.schedule import DEFAULT_WEEK, Hours, OpeningHours
from rackboard.store import Store

WEEK = "opening hours"
UNIT = "temperature unit"
SHOP_NAME = "shop name"
THEME = "theme"
"""Setting: "dark", "light", or "" to follow the system."""
CONTRAST = "high contrast"
"""Setting: "on", "off", or "" to follow the system."""
MOTION = "reduced motion"
"""Setting: whether collars stand still and plates change at once."""
DISTANCE = "wall distance m"
"""Setting: from where the wall is read [m]."""
PITCH = "pixel pitch mm"
"""Setting: the pitch of the screen's pixels [mm]; None: as the screen says."""
LANGUAGE = "language"
"""Setting: the code of a language, or "" to follow the system."""


class Snapshot:
    """Everything at work, read at once and never changed: a new one follows every act.

    Parameters
    ----------
    store : Store
        Is read here and not kept.
    zone : tzinfo
        The shop's time zone.
    also : iterable of int, optional
        Ids of jobs that aren't at work any more.
    """

    __slots__ = (
        "batches", "clubs", "customers", "epoxies", "grants", "holds", "hours", "hours_typed",
        "jobs", "joints", "joints_of_batch", "joints_of_job", "places", "releases", "settings",
        "stays", "zones",
    )  # fmt: skip

    def __init__(self, store: Store, zone: tzinfo, also: Iterable[int] = ()) -> None:
        live = store.load_live(also)
        self.settings: dict[str, object] = store.shop.settings()
        week = self.settings.get(WEEK)
        self.hours_typed = week is not None
        self.hours = OpeningHours(_week(week), zone)
        self.zones: dict[int, Zone] = {zone.id: zone for zone in store.shop.zones()}
        self.places: dict[int, Place] = {place.id: place for place in store.shop.places()}
        self.epoxies: dict[int, Epoxy] = {e.id: e for e in store.shop.epoxies(retired=True)}
        self.customers: dict[int, Customer] = {c.id: c for c in live.customers}
        self.jobs: dict[int, Job] = {job.id: job for job in live.jobs}
        self.clubs: dict[int, Club] = {club.id: club for club in live.clubs}
        self.batches: dict[int, Batch] = {batch.id: batch for batch in live.batches}
        self.joints: dict[int, Joint] = {joint.id: joint for joint in live.joints}
        self.stays: dict[int, Stay] = {stay.club_id: stay for stay in live.stays}
        self.holds: dict[int, Hold] = {hold.joint_id: hold for hold in live.holds}
        self.grants: dict[int, dict[Milestone, Grant]] = defaultdict(dict)
        for grant in live.grants:
            if grant.withdrawn_us is None:
                self.grants[grant.joint_id][grant.milestone] = grant
        self.releases: dict[int, list[Release]] = defaultdict(list)
        for release in live.releases:
            self.releases[release.joint_id].append(release)
        self.joints_of_batch: dict[int, list[Joint]] = defaultdict(list)
        self.joints_of_job: dict[int, list[Joint]] = defaultdict(list)
        for joint in live.joints:
            if joint.ended_us is None and joint.batch_id is not None:
                self.joints_of_batch[joint.batch_id].append(joint)
                self.joints_of_job[self.clubs[joint.club_id].job_id].append(joint)

    def place_of(self, club_id: int) -> Place | None:
        """Return where a club lies, None if nowhere."""
        stay = self.stays.get(club_id)
        return None if stay is None else self.places[stay.place_id]

    def place(self, kind: PlaceKind) -> Place:
        """Return the first place of a kind."""
        return next(place for place in self.places.values() if place.kind is kind)

    def where(self, club_id: int) -> str:
        """Return the name of a club's slot or place."""
        stay = self.stays.get(club_id)
        return "" if stay is None else self.places[stay.place_id].slot_name(stay.slot)

    def in_shop(self, club_id: int) -> bool:
        """Return whether a club lies somewhere in the shop."""
        place = self.place_of(club_id)
        return place is not None and place.kind is not PlaceKind.OUT


def _week(value: object) -> tuple[Hours, ...]:
    if not isinstance(value, list):
        return DEFAULT_WEEK
    return tuple(None if day is None else (int(day[0]), int(day[1])) for day in value)
