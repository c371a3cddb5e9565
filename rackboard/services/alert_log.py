"""What the journal of alerts holds, with the names of then, for the page and for its export."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from rackboard.core.alerts.kinds import Kind
from rackboard.core.alerts.machine import Mark, Phase
from rackboard.core.alerts.rows import Alert, Telling
from rackboard.core.bench import Club, Joint, Milestone, Place, Stay
from rackboard.core.disturbance import said_of
from rackboard.core.instants import Instant
from rackboard.core.text import Text, text
from rackboard.services.alert_headlines import OF_JOINT, OF_ZONE, About, Voice, span
from rackboard.services.teller import ASKED, FAILED, SHOWN
from rackboard.store import Store
from rackboard.store.alert_pages import AlertPages, Cursor, Wanted


class Entry(NamedTuple):
    """An episode: the alert, what it was about when it began, and what was said of it."""

    alert: Alert
    about: About
    tellings: tuple[Telling, ...] = ()


class AlertLog:
    """Reads the journal of alerts.

    Parameters
    ----------
    store : Store
        The data file.
    """

    __slots__ = ("_pages", "_store")

    def __init__(self, store: Store) -> None:
        self._store = store
        self._pages = AlertPages(store)

    def page(
        self, wanted: Wanted, limit: int, after: Cursor | None = None
    ) -> tuple[list[Entry], Cursor | None]:
        """Return entries, the latest first, and where the next page begins; None: nowhere.

        Parameters
        ----------
        wanted : Wanted
            Which.
        limit : int
            At most so many.
        after : Cursor, optional
            What the page before has returned.
        """
        alerts = self._pages.page(wanted, limit, after)
        last = alerts[-1] if len(alerts) == limit else None
        return self._entries(alerts), None if last is None else Cursor(last.due_us, last.id)

    def again(self, ids: Iterable[int]) -> list[Entry]:
        """Return entries by the ids of their alerts, as they are now."""
        return self._entries(self._store.alerts.by_id(ids))

    def _entries(self, alerts: Sequence[Alert]) -> list[Entry]:
        names = _Names(self._store, alerts)
        told = self._told(alerts)
        return [Entry(a, names.about(a), tuple(told.get(a.id, ()))) for a in alerts]

    def _told(self, alerts: Sequence[Alert]) -> dict[int, list[Telling]]:
        """Return what was said of each."""
        if not alerts:
            return {}
        until = max(a.told_us or a.closed_us or a.raised_us for a in alerts)
        said: dict[int, list[Telling]] = defaultdict(list)
        ids = {alert.id for alert in alerts}
        for telling in self._pages.tellings(min(a.raised_us for a in alerts), until):
            for alert_id in ids.intersection(telling.alert_ids):
                said[alert_id].append(telling)
        return said


class _Names:
    """The names behind the alerts of a page, read at once."""

    def __init__(self, store: Store, alerts: Sequence[Alert]) -> None:
        wanted = {n for alert in alerts for n in _joint_ids(alert)}
        work = store.work
        self._joints: dict[int, Joint] = {j.id: j for j in work.joints(ids=wanted)}
        clubs = work.clubs_by_id({joint.club_id for joint in self._joints.values()})
        self._clubs: dict[int, Club] = {club.id: club for club in clubs}
        jobs = {club.job_id for club in clubs} | {
            alert.subject_id for alert in alerts if alert.kind not in (*OF_JOINT, *OF_ZONE)
        }
        self._jobs = {job.id: job.number for job in work.jobs(jobs)}
        self._zones = {zone.id: zone.name for zone in store.shop.zones()}
        self._places: dict[int, Place] = {place.id: place for place in store.shop.places()}
        self._stays: dict[int, list[Stay]] = defaultdict(list)
        for stay in work.stays(self._clubs):
            self._stays[stay.club_id].append(stay)

    def about(self, alert: Alert) -> About:
        """Return what an alert was about when it began."""
        if alert.kind in OF_ZONE:
            return About(zone=self._zones.get(alert.subject_id, ""))
        joints = [self._joints[n] for n in _joint_ids(alert) if n in self._joints]
        where = span(self._where(joint.club_id, alert.due_us) for joint in joints)
        if alert.kind in OF_JOINT:
            if not joints:
                return About()
            club = self._clubs[joints[0].club_id]
            return About(where, "", self._jobs.get(club.job_id, ""), club.name)
        number = self._jobs.get(alert.subject_id) or str(alert.data.get("job", ""))
        return About(where, "", number)

    def _where(self, club_id: int, at_us: Instant) -> str:
        """Return where a club lay at an instant, or else went to next."""
        stays = self._stays[club_id]
        before = [stay for stay in stays if stay.from_us <= at_us]
        stay = before[-1] if before else stays[0] if stays else None
        return "" if stay is None else self._places[stay.place_id].slot_name(stay.slot)


def _joint_ids(alert: Alert) -> list[int]:
    if alert.kind in OF_JOINT:
        return [alert.subject_id]
    ids = alert.data.get("joints")
    if alert.kind in OF_ZONE or not isinstance(ids, list):
        return []
    return [int(n) for n in ids]


# Words


def kind_words(kind: Kind) -> Text:
    """Return what an alert is called in lists."""
    return {
        Kind.DISTURBED: text("AlertKind", "disturbed"),
        Kind.COLD: text("AlertKind", "cold"),
        Kind.NO_RECORD: text("AlertKind", "no temperature"),
        Kind.WITHDRAWN: text("AlertKind", "permission withdrawn"),
        Kind.TOO_HOT: text("AlertKind", "too hot"),
        Kind.LIFE_OVER: text("AlertKind", "working life over"),
        Kind.LAST_LOOK: text("AlertKind", "last look"),
        Kind.OFF_THE_RACK: text("AlertKind", "off the rack"),
        Kind.JOB_SAFE: text("AlertKind", "whole job safe to hit"),
    }[kind]


def state_words(alert: Alert) -> str:
    """Return where an alert stands, in the bench's words."""
    said: dict[str, str] = {
        Phase.UNTAKEN: text("AlertState", "on, untaken"),
        Phase.TAKEN: text("AlertState", "on, taken"),
        Phase.ACCEPTED: text("AlertState", "on, accepted"),
        Phase.POSTPONED: text("AlertState", "on, put off"),
        Phase.GONE: text("AlertState", "over, untaken"),
        Phase.GONE_POSTPONED: text("AlertState", "over, put off"),
        Phase.CLOSED: text("AlertState", "closed"),
        Mark.PENDING: text("AlertState", "to come"),
        Mark.DUE: text("AlertState", "due, unseen"),
        Mark.SEEN: text("AlertState", "seen"),
        Mark.EXPIRED: text("AlertState", "expired, unseen"),
        Mark.WITHDRAWN: text("AlertState", "taken back"),
    }
    return said.get(alert.phase, alert.phase)


def outcome_words(alert: Alert) -> str:
    """Return as what an alert was closed, as the engine has stored it; "" while it is open."""
    known = (
        text("AlertOutcome", "got it"), text("AlertOutcome", "over"),
        text("AlertOutcome", "ended"), text("AlertOutcome", "no longer watched"),
        text("AlertOutcome", "undone"), text("AlertOutcome", "corrected"),
        text("AlertOutcome", "withdrawn"), text("AlertOutcome", "re-glued"),
        text("AlertOutcome", "customer reached"), text("AlertOutcome", "back on the rack"),
        text("AlertOutcome", "never left the rack"),
    )  # fmt: skip
    said: dict[str, str] = {str(outcome): outcome for outcome in known}
    released = text("AlertOutcome", "released by {who}")
    before = released.source.removesuffix("{who}")
    parts: list[str] = []
    for part in (alert.closed_as or "").split("; "):
        if part.startswith(before):
            parts.append(released.format(who=part.removeprefix(before)))
        else:
            parts.append(said.get(part) or said_of(part))
    return _joined(parts)


def what_words(alert: Alert, voice: Voice) -> str:
    """Return the facts of an alert in a few words."""
    kind, data = Kind(alert.kind), alert.data
    air, limit = voice.air(data.get("air_mc")), voice.air(data.get("limit_mc"))
    if kind is Kind.DISTURBED:
        return text("AlertFact", "knocked, pulled or turned")
    if kind is Kind.COLD:
        return text("AlertFact", "{air}, below {limit}").format(air=air, limit=limit)
    if kind is Kind.TOO_HOT:
        return text("AlertFact", "up to {air}, at most {limit}").format(air=air, limit=limit)
    if kind is Kind.NO_RECORD:
        return text("AlertFact", "last {air}").format(air=air)
    if kind is Kind.WITHDRAWN:
        was = data.get("was_us")
        when = voice.when(was) if isinstance(was, int) else "?"
        if data.get("milestone") == Milestone.HANDLING:
            return text("AlertFact", "“off the rack” of {time}").format(time=when)
        return text("AlertFact", "“safe to hit” of {time}").format(time=when)
    clubs = data.get("clubs")
    n = clubs if isinstance(clubs, int) else 0
    counted = text("AlertFact", "%n clubs", "1 club", n)
    if kind is Kind.JOB_SAFE or "batch" not in data:
        return counted
    return text("AlertFact", "batch {batch}, {clubs}").format(batch=data["batch"], clubs=counted)


def courier_words(tellings: Iterable[Telling]) -> str:
    """Return what each courier did in the end, and how often it was asked."""
    known: dict[str, str] = {
        str(name): name for name in (
            text("Courier", "Desktop notices"), text("Courier", "Sound"),
            text("Courier", "Window alert"),
        )
    }  # fmt: skip
    last: dict[str, str] = {}
    times: dict[str, int] = defaultdict(int)
    for telling in tellings:
        for name, did in (telling.couriers or {}).items():
            last[name] = did
            times[name] += 1
    parts = [
        text("AlertFact", "{courier}: {did}").format(
            courier=known.get(name, name),
            did=_did(did, times[name]),
        )
        for name, did in last.items()
    ]  # fmt: skip
    return _joined(parts)


def _did(did: str, times: int) -> str:
    if did == SHOWN:
        return text("AlertFact", "shown %n times", "shown", times)
    if did == ASKED:
        return text("AlertFact", "asked, no answer")
    if did.startswith(FAILED):
        reason = did.removeprefix(FAILED)
        return text("AlertFact", "not working: {reason}").format(reason=reason)
    return did


def _joined(parts: Sequence[str]) -> str:
    made, *rest = parts or ("",)
    for part in rest:
        made = text("AlertFact", "{one}; {other}").format(one=made, other=part)
    return made
