"""What all acts of the bench share: the data file, the time, and who acts."""

from __future__ import annotations

from rackboard.core.bench import Batch, Club, Job, Joint, JointKind, Place
from rackboard.core.errors import InputError
from rackboard.core.instants import Clock
from rackboard.core.schedule import OpeningHours
from rackboard.core.text import text
from rackboard.store import Store
from rackboard.store.transaction import Transaction

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
LONGEST_INITIALS = 8


class Acts:
    """The base of every group of acts.

    Parameters
    ----------
    store : Store
        The data file.
    clock : Clock
        The time.
    hours : OpeningHours
        Of the shop, for words in errors and doubts.

    Attributes
    ----------
    by : str or None
        Whose initials the acts carry.
    """

    def __init__(self, store: Store, clock: Clock, hours: OpeningHours) -> None:
        self._store = store
        self._clock = clock
        self.hours = hours
        self.by: str | None = None

    def act_as(self, initials: str) -> None:
        """Let the acts from now on carry these initials, "" nobody's; nothing is written.

        Raises
        ------
        InputError
            If they are too long.
        """
        self.by = checked_initials(initials) or None

    def _note_person(self, act: Transaction) -> None:
        if self.by:
            act.use_person(self.by)

    def _batch(self, batch_id: int) -> Batch:
        return self._store.work.batches([batch_id])[0]

    def _job(self, job_id: int) -> Job:
        return self._store.work.jobs([job_id])[0]

    def _club(self, club_id: int) -> Club:
        return self._store.work.clubs_by_id([club_id])[0]

    def _joint(self, joint_id: int) -> Joint:
        return self._store.work.joints(ids=[joint_id])[0]

    def _place(self, place_id: int) -> Place:
        return next(place for place in self._store.shop.places() if place.id == place_id)

    def _zone_name(self, zone_id: int) -> str:
        return next(zone.name for zone in self._store.shop.zones() if zone.id == zone_id)

    def _joints_of(self, batch_id: int) -> list[Joint]:
        joints = self._store.work.joints(batch_ids=[batch_id])
        return [joint for joint in joints if joint.ended_us is None]

    def _unready(self, act: Transaction, job_id: int) -> None:
        """Take READY back: somebody said it of other joints than there are now."""
        if self._job(job_id).ready_us is not None:
            act.update("job", job_id, ready_us=None, ready_by=None)
            act.add_event("not ready", "job", job_id)


def checked_initials(initials: str) -> str:
    """Return initials without blanks around them.

    Raises
    ------
    InputError
        If they are too long or not in one line.
    """
    initials = initials.strip()
    if len(initials) > LONGEST_INITIALS or not initials.isprintable():
        wanted = text("Act", "initials, up to %n letters", "", LONGEST_INITIALS)
        raise InputError(wanted, initials, text("Act", "initials"))
    return initials


def slot_of(place: Place, slot: int | None, where: str) -> int | None:
    """Return the slot that a club takes at a place, None at one without slots.

    Raises
    ------
    InputError
        If it isn't one of the place.
    """
    if place.rows * place.columns == 0:
        return None
    if slot is None or not 0 <= slot < place.rows * place.columns:
        raise InputError(
            text("Act", "a slot of {place}").format(place=place.name), str(slot), where
        )
    return slot
