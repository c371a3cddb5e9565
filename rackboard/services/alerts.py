"""Alerts: raised from what is stored and now, written down first, then told.

A tick brings every alert to where the two tables of `rackboard.core.alerts.machine` put it,
plans what to say, and commits both in one transaction; only then a courier is called, and what
it did is written after it. The list in the window is the rows themselves and can't fail.
"""

from __future__ import annotations

import logging
from collections.abc import Iterable, Sequence
from typing import Any

from rackboard.core.alerts.kinds import NATURE, Kind
from rackboard.core.alerts.machine import (
    COLDER_MC,
    POSTPONED_MOST_US,
    TAKEN_FOR_US,
    Event,
    Mark,
    Passing,
    Phase,
    passed,
    step,
)
from rackboard.core.alerts.rows import Alert
from rackboard.core.alerts.telling import rank
from rackboard.core.bench import Hold, HoldReason, Milestone, Place, PlaceKind, Stay
from rackboard.core.errors import InputError
from rackboard.core.instants import MINUTE_US, Clock, Instant
from rackboard.core.text import text
from rackboard.services.alert_conditions import (
    Coming,
    Condition,
    Conditions,
    Key,
    Seen,
    in_shop,
    milestones,
)
from rackboard.services.board import Board
from rackboard.services.snapshot import Snapshot
from rackboard.services.teller import Courier, Teller
from rackboard.store import Store
from rackboard.store.changes import ChangeSet
from rackboard.store.rows import json_text
from rackboard.store.transaction import Transaction

REACHED = "customer reached"
BACK = "back on the rack"
NEVER_LEFT = "never left the rack"
_STEPPED_US = MINUTE_US  # what lies further ahead was noted before the clock was set back
_LOG = logging.getLogger(__name__)


class Alerts:
    """Raises, brings on and ends alerts.

    Parameters
    ----------
    store : Store
        The data file.
    clock : Clock
        The time.
    couriers : sequence of Courier
        Called in this order for everything that is told.

    Attributes
    ----------
    teller : Teller
        What is said, and what the couriers made of it.
    by : str or None
        Who acts.
    """

    def __init__(self, store: Store, clock: Clock, couriers: Sequence[Courier] = ()) -> None:
        self._store = store
        self._clock = clock
        self._conditions = Conditions(store)
        self._open: dict[Key, Alert] = {alert.key: alert for alert in store.alerts.open()}
        self._looked: Snapshot | None = None
        self.by: str | None = None
        self.teller = Teller(store, clock, couriers)

    @property
    def open(self) -> list[Alert]:
        """All that is open, the most pressing first."""
        return sorted(self._open.values(), key=lambda a: (not a.speaks, rank(Kind(a.kind)),
                                                          a.due_us))  # fmt: skip

    def of(self, kind: Kind, subject_id: int, batch_id: int = 0) -> Alert | None:
        """Return the open alert about something."""
        return self._open.get((kind.value, subject_id, batch_id))

    def tick(self, board: Board, cause: str = "") -> ChangeSet | None:
        """Bring every alert up to now and tell what has to be told.

        Parameters
        ----------
        board : Board
            Ticked.
        cause : str, optional
            "undone" or "corrected" if the tick follows such an act.

        Returns
        -------
        ChangeSet or None
            What was written before any courier was called; None if nothing was.
        """
        if not board.reckoned:
            return None
        now = self._clock.now()
        seen = self._conditions.look(board, self._open, now)
        plan = _Plan(self._open, now)
        self._alarms(plan, board, seen, cause)
        for coming in milestones(board):
            self._milestone(plan, coming)
        self._end_milestones(plan, board)
        after = plan.after()
        tellings = self.teller.plan(after, board, now)
        if not plan.changed and not tellings:
            self._looked = board.snapshot
            self.teller.deliver(board, self._open)
            return None
        with self._store.write("alerts", now) as act:
            # The ids of what was raised just now are known only here.
            self.teller.write(act, tellings, self._write(act, plan, board, now), now)
        # Not before it is on the disk: a full one must not swallow an alert.
        self._looked = board.snapshot
        self._open = {alert.key: alert for alert in self._store.alerts.open()}
        self.teller.deliver(board, self._open)
        return act.changes

    # Alarms

    def _alarms(self, plan: _Plan, board: Board, seen: Seen, cause: str) -> None:
        for condition in seen.on.values():
            alert = self._open.get(condition.key)
            if alert is None:
                plan.begin(condition)
                if condition.kind is Kind.TOO_HOT:
                    plan.hot.append(_joints(condition.data))
            elif condition.subject_id not in seen.frozen or alert.kind == Kind.NO_RECORD:
                newcomers = set()
                if condition.kind is Kind.TOO_HOT:
                    newcomers = set(_joints(condition.data)) - set(_joints(alert.data))
                    plan.hot.append(sorted(newcomers))
                plan.event(alert, Event.ON, **_refreshed(alert, condition, newcomers))
        self._withdrawn(plan, board)
        for alert in self._open.values():
            if not alert.is_alarm:
                continue
            kind = Kind(alert.kind)
            if kind is Kind.DISTURBED and alert.key not in seen.on:
                self._hold_over(plan, alert)
            elif kind is Kind.TOO_HOT:
                self._heat_over(plan, board, alert)
            elif kind is Kind.WITHDRAWN:
                self._withdrawal_over(plan, board, alert, cause)
            elif kind in (Kind.COLD, Kind.NO_RECORD):
                self._zone(plan, alert, seen)
            _by_time(plan, alert, seen)

    def _zone(self, plan: _Plan, alert: Alert, seen: Seen) -> None:
        if alert.subject_id not in seen.watched:
            plan.event(alert, Event.SUBJECT_GONE, closed_as="no longer watched")
        elif alert.key not in seen.on and (
            alert.subject_id not in seen.frozen or alert.kind == Kind.NO_RECORD
        ):
            plan.event(alert, Event.OFF, ended_us=alert.ended_us or plan.now,
                       closed_as="over")  # fmt: skip

    def _hold_over(self, plan: _Plan, alert: Alert) -> None:
        hold_id = alert.data.get("hold")
        holds = [h for h in self._store.journal.holds([alert.subject_id]) if h.id == hold_id]
        if holds and holds[0].outcome is not None:
            plan.event(alert, Event.OUTCOME, closed_as=holds[0].outcome)
        elif not holds:
            plan.event(alert, Event.UNDONE, closed_as="undone")

    def _heat_over(self, plan: _Plan, board: Board, alert: Alert) -> None:
        ids = _joints(alert.data)
        if not ids or any(
            (hold := board.snapshot.holds.get(n)) and hold.reason is HoldReason.TOO_HOT
            for n in ids
        ):
            return
        holds = [h for h in self._store.journal.holds(ids) if h.reason is HoldReason.TOO_HOT]
        if any(hold.outcome is None for hold in holds):
            return  # behind another HOLD of the same joint, or of a club that has left
        answers = {str(h.joint_id): h.outcome for h in holds if h.from_us >= alert.raised_us}
        if not answers:
            return  # other HOLDs were there before it: somebody has to say what was seen
        plan.event(
            alert, Event.OUTCOME, closed_as="; ".join(sorted({a for a in answers.values() if a})),
            data=alert.data | {"seen": answers},
        )  # fmt: skip

    def _withdrawn(self, plan: _Plan, board: Board) -> None:
        """Raise what was permitted and no longer holds, once a grant."""
        if board.snapshot is self._looked:
            return  # a withdrawal is an act, and every act makes a new one
        grants = self._store.alerts.unraised(0)
        if not grants:
            return
        told: dict[int, list[int]] = {}
        for grant in grants:
            told.setdefault(grant.joint_id, []).append(grant.id)
        missing = {g.joint_id for g in grants} - set(board.snapshot.joints)
        if missing:
            board.bring_in(missing)
        for grant in grants:
            at = grant.withdrawn_us or plan.now
            key = (Kind.WITHDRAWN.value, grant.joint_id, 0)
            alert = self._open.get(key)
            data: dict[str, object] = {
                "milestone": grant.milestone.value, "was_us": grant.printed_us,
                "reason": grant.reason or "", "grants": told[grant.joint_id],
            }  # fmt: skip
            if alert is not None:
                before = alert.data.get("grants")
                data["grants"] = [*(before if isinstance(before, list) else []),
                                  *told[grant.joint_id]]  # fmt: skip
                plan.event(alert, Event.ON, data=data)
            else:  # of two at once the later, safe to hit, is the one that matters
                plan.begin(Condition(Kind.WITHDRAWN, grant.joint_id, at, data))

    def _withdrawal_over(self, plan: _Plan, board: Board, alert: Alert, cause: str) -> None:
        snapshot = board.snapshot
        joint = snapshot.joints.get(alert.subject_id)
        club_id = None if joint is None else joint.club_id
        stay = None if club_id is None else snapshot.stays.get(club_id)
        place = None if stay is None else snapshot.places[stay.place_id]
        here = place is not None and place.kind in (PlaceKind.RACK, PlaceKind.BOX)
        stays = [] if club_id is None else self._store.work.stays([club_id])
        last = place if place or not stays else snapshot.places[stays[-1].place_id]
        gone = last is None or last.kind is PlaceKind.OUT
        grants = snapshot.grants.get(alert.subject_id, {})
        again = grants.get(Milestone(str(alert.data["milestone"])))
        if joint is None and not self._store.work.joints(ids=[alert.subject_id]):
            plan.event(alert, Event.UNDONE, closed_as=cause or "undone")
        elif again is not None and again.printed_us <= alert.due_us:
            # The facts are what they were: earned anew its time would lie after the withdrawal.
            plan.event(alert, Event.UNDONE, closed_as=cause or "undone")
        elif here and _was_off(stays, snapshot.places, alert.due_us):
            plan.event(alert, Event.OUTCOME, closed_as=BACK)
        elif here and alert.taken_us is not None:
            plan.event(alert, Event.OUTCOME, closed_as=NEVER_LEFT)
        elif joint is not None and joint.ended_us is not None and not gone:
            plan.event(alert, Event.OUTCOME, closed_as=joint.ended_as or "ended")
        elif not gone and (by := _released(board, alert)):
            plan.event(alert, Event.OUTCOME, closed_as=f"released by {by}")
        elif again is not None and "again_us" not in alert.data:
            plan.event(alert, Event.OFF, data=alert.data | {"again_us": plan.now})

    # Milestones

    def _milestone(self, plan: _Plan, coming: Coming) -> None:
        alert = self._open.get(coming.key)
        now = plan.now
        if alert is None:
            if not coming.holds or coming.due_us is None or coming.due_us > now:
                return
            mark = Mark.EXPIRED if coming.expired else Mark.SEEN if coming.seen else Mark.DUE
            plan.begin(
                Condition(coming.kind, coming.job_id, coming.due_us, coming.data),
                mark.value, coming.batch_id,
            )  # fmt: skip
            return
        mark = Mark(alert.phase)
        if coming.kind in (Kind.OFF_THE_RACK, Kind.JOB_SAFE):
            if not coming.holds and mark is not Mark.WITHDRAWN:
                # READY and a club that went out end it otherwise: that is no withdrawal.
                plan.passing(alert, Passing.WITHDRAWN)
                return
            if coming.holds and mark is Mark.WITHDRAWN:
                plan.passing(alert, Passing.AGAIN, due_us=coming.due_us or now)
                mark = Mark.PENDING
        if mark is Mark.PENDING and coming.holds and (coming.due_us or now) <= now:
            plan.passing(alert, Passing.FELL_DUE, due_us=coming.due_us or now)
            mark = Mark.DUE
        if mark is Mark.DUE and coming.seen:
            plan.passing(alert, Passing.SEEN)
        elif mark is Mark.DUE and coming.expired:
            plan.passing(alert, Passing.EXPIRED)

    def _end_milestones(self, plan: _Plan, board: Board) -> None:
        """Close what belongs to nothing at work any more."""
        here = in_shop(board)
        pairs = {(s.job.id, s.batch.id) for s in here if not s.laid_out}
        jobs = {s.job.id for s in here}
        for alert in self._open.values():
            if alert.is_alarm:
                continue
            there = (
                alert.subject_id in jobs if alert.kind == Kind.JOB_SAFE
                else (alert.subject_id, alert.batch_id) in pairs
            )  # fmt: skip
            if not there:
                plan.passing(alert, Passing.ENDED, closed_as="ended")

    # Writing

    def _write(
        self, act: Transaction, plan: _Plan, board: Board, now: Instant
    ) -> dict[Key, Alert]:
        """Write what has changed; return the open alerts with their ids."""
        for joint_ids in plan.hot:
            _hold_hot(act, board, joint_ids, now)
        for change in plan.changes.values():
            if change.fields:
                act.update("alert", change.alert.id, **_encoded(change.fields))
        for key, alert in plan.new.items():
            last = self._store.alerts.last_of(*key)
            if last is not None and not last.is_alarm and last.due_us == alert.due_us:
                # The same milestone as before: an act was taken back. Nobody is told twice.
                act.update("alert", last.id, phase=Mark.SEEN.value, closed_us=None,
                           closed_as=None)  # fmt: skip
                plan.made[key] = last.id
                continue
            episode = 1 if last is None else last.episode + 1
            plan.made[key] = act.add(alert._replace(episode=episode))
        return plan.after(final=True)

    # What people do

    def got_it(self, ids: Iterable[int]) -> ChangeSet:
        """Take what is on the screen: alarms are taken, milestones seen."""
        return self._act(text("Alerts", "got it"), ids, Event.GOT_IT, Passing.SEEN)

    def see(self, ids: Iterable[int]) -> ChangeSet:
        """Note that milestones were seen: dismissed, or their tile opened. Alarms stay."""
        return self._act(text("Alerts", "seen"), ids, None, Passing.SEEN)

    def accept(self, alert_id: int, air_mc: int) -> ChangeSet:
        """Accept the later times of a cold zone; it is silent until 2 °C colder [m°C].

        Raises
        ------
        InputError
            If this alert is none that can be accepted.
        """
        return self._act(text("Alerts", "accept"), [alert_id], Event.ACCEPT, None,
                         accepted_mc=air_mc)  # fmt: skip

    def postpone(self, alert_id: int, until_us: Instant) -> ChangeSet:
        """Put an alarm off, for at most two hours.

        Raises
        ------
        InputError
            If this alarm can't be put off, or not for so long.
        """
        now = self._clock.now()
        if not now < until_us <= now + POSTPONED_MOST_US:
            raise InputError(
                text("Alerts", "a time within the next two hours"),
                f"{(until_us - now) / 60_000_000:.0f} min", text("Alerts", "remind me later"),
            )  # fmt: skip
        return self._act(text("Alerts", "remind me later"), [alert_id], Event.POSTPONE, None,
                         until_us=until_us)  # fmt: skip

    def close(self, alert_id: int, outcome: str) -> ChangeSet:
        """End an alarm with an outcome that a person gives, such as `REACHED`.

        Raises
        ------
        InputError
            If this alarm ends otherwise.
        """
        return self._act(text("Alerts", "answer"), [alert_id], Event.OUTCOME, None,
                         closed_as=outcome)  # fmt: skip

    def _act(
        self, label: str, ids: Iterable[int], event: Event | None, passing: Passing | None,
        **fields: object,
    ) -> ChangeSet:  # fmt: skip
        now = self._clock.now()
        wanted = set(ids)
        plan = _Plan(self._open, now)
        for alert in self._open.values():
            if alert.id not in wanted:
                continue
            if alert.is_alarm and event is not None:
                if event is Event.GOT_IT:
                    fields = {"taken_us": now, "taken_by": self.by, "closed_as": "got it"}
                if not plan.event(alert, event, **fields):
                    raise InputError(text("Alerts", "an alarm for which this can be done"),
                                     NATURE[Kind(alert.kind)].code, label)  # fmt: skip
            elif not alert.is_alarm and passing is not None:
                plan.passing(alert, passing, taken_us=now, taken_by=self.by)
        with self._store.write(label, now, self.by) as act:
            for change in plan.changes.values():
                act.update("alert", change.alert.id, **_encoded(change.fields))
                act.add_event(
                    "alert", "alert", change.alert.id,
                    {"event": str(event or passing), "phase": change.fields.get("phase", "")},
                )  # fmt: skip
            act.forbid_undo()
        self._open = {alert.key: alert for alert in self._store.alerts.open()}
        return act.changes


class _Change:
    """What becomes of one alert in a tick."""

    __slots__ = ("alert", "fields")

    def __init__(self, alert: Alert) -> None:
        self.alert = alert
        self.fields: dict[str, Any] = {}

    @property
    def phase(self) -> str:
        return str(self.fields.get("phase", self.alert.phase))


class _Plan:
    """What a tick is going to write."""

    def __init__(self, alerts: dict[Key, Alert], now: Instant) -> None:
        self.now = now
        self._alerts = alerts
        self.changes: dict[Key, _Change] = {}
        self.new: dict[Key, Alert] = {}
        self.made: dict[Key, int] = {}
        self.hot: list[list[int]] = []

    @property
    def changed(self) -> bool:
        """Whether there is anything to write."""
        return bool(self.new) or any(change.fields for change in self.changes.values())

    def begin(self, condition: Condition, phase: str = "", batch_id: int = 0) -> None:
        """Begin an episode."""
        if not phase:
            phase = step(condition.kind, Phase.NEW, Event.ON).phase.value
        alert = Alert(0, condition.kind.value, condition.subject_id, batch_id, 1, phase,
                      condition.since_us, self.now, condition.data)  # fmt: skip
        self.new[alert.key] = alert

    def event(self, alert: Alert, event: Event, **fields: Any) -> bool:
        """Bring an event to an alarm; return whether the table takes it."""
        change = self.changes.setdefault(alert.key, _Change(alert))
        done = step(Kind(alert.kind), Phase(change.phase), event)
        if not done.known:
            _LOG.info("%s of %s in %r means nothing", event, alert.kind, change.phase)
        if done.refused or not done.known:
            return False
        self._set(change, done.phase.value, fields)
        return True

    def passing(self, alert: Alert, passing: Passing, **fields: Any) -> None:
        """Bring a milestone on."""
        change = self.changes.setdefault(alert.key, _Change(alert))
        mark = passed(Kind(alert.kind), Mark(change.phase), passing)
        if mark is not None:
            self._set(change, mark.value, fields)

    def _set(self, change: _Change, phase: str, fields: dict[str, Any]) -> None:
        alert = change.alert
        closed_as = fields.pop("closed_as", None)
        if phase != change.phase:
            fields["phase"] = phase
            if phase in (Phase.UNTAKEN.value, Mark.DUE.value):
                fields |= {"first_told_us": None, "told_us": None, "taken_us": None,
                           "until_us": None, "accepted_mc": None, "ended_us": None}  # fmt: skip
            elif phase in (Phase.CLOSED.value, Mark.CLOSED.value):
                fields |= {"closed_us": self.now, "closed_as": closed_as or ""}
        change.fields |= {
            name: value for name, value in fields.items()
            if value != getattr(alert, name) or name in change.fields
        }  # fmt: skip

    def after(self, *, final: bool = False) -> dict[Key, Alert]:
        """Return the open alerts as they will be; new ones have ids once they are written."""
        result = {
            key: alert if key not in self.changes else alert._replace(**self.changes[key].fields)
            for key, alert in self._alerts.items()
        }
        for key, alert in self.new.items():
            result[key] = alert._replace(id=self.made[key]) if final else alert
        return {key: alert for key, alert in result.items() if alert.is_open}


def _by_time(plan: _Plan, alert: Alert, seen: Seen) -> None:
    """Bring on what the mere passing of time, or the air, does to a taken alarm."""
    kind = Kind(alert.kind)
    if alert.until_us is not None and not (
        plan.now < alert.until_us <= plan.now + POSTPONED_MOST_US  # a clock set back puts off less
    ) and alert.phase in (
        Phase.POSTPONED.value, Phase.GONE_POSTPONED.value
    ):
        plan.event(alert, Event.POSTPONE_ENDED, closed_as="over")
    if (
        alert.phase == Phase.TAKEN.value and alert.taken_us is not None
        and not -_STEPPED_US <= plan.now - alert.taken_us < TAKEN_FOR_US
        and kind in (Kind.COLD, Kind.NO_RECORD, Kind.TOO_HOT)
    ):  # fmt: skip
        plan.event(alert, Event.HOUR_TAKEN)
    air = seen.air_mc.get(alert.subject_id)
    if (
        kind is Kind.COLD and alert.phase == Phase.ACCEPTED.value and air is not None
        and alert.accepted_mc is not None and alert.accepted_mc - air >= COLDER_MC
    ):  # fmt: skip
        plan.event(alert, Event.COLDER)


def _refreshed(alert: Alert, condition: Condition, newcomers: set[int]) -> dict[str, Any]:
    """Return the figures of an alarm that goes on: the printed times are those it was told with."""
    if alert.kind == Kind.COLD:
        return {}
    if alert.kind == Kind.TOO_HOT:
        old, new = alert.data.get("air_mc"), condition.data.get("air_mc")
        data = alert.data
        if isinstance(old, int) and isinstance(new, int) and new > old:
            data = data | {"air_mc": new}
        if newcomers:
            data = data | {"joints": sorted({*_joints(data), *newcomers})}
        return {} if data is alert.data else {"data": data}
    if alert.kind == Kind.DISTURBED and alert.data != condition.data:
        return {"data": condition.data}
    return {}


def _hold_hot(act: Transaction, board: Board, joint_ids: Iterable[int], now: Instant) -> None:
    """Put joints on HOLD that aren't yet."""
    for joint_id in joint_ids:
        if joint_id not in board.snapshot.holds:
            act.add(Hold(0, joint_id, HoldReason.TOO_HOT, "", now))


def _joints(data: dict[str, object]) -> list[int]:
    """Return the joints that an alarm of a zone holds."""
    joints = data.get("joints")
    return [int(n) for n in joints] if isinstance(joints, list) else []


def _was_off(stays: Sequence[Stay], places: dict[int, Place], due_us: Instant) -> bool:
    """Return whether a club that lies in a slot was elsewhere after an instant [µs UTC]."""
    return any(
        stay.to_us is not None and stay.to_us > due_us
        and places[stay.place_id].kind not in (PlaceKind.RACK, PlaceKind.BOX)
        for stay in stays
    )


def _released(board: Board, alert: Alert) -> str | None:
    """Return who has released a joint since its permission was withdrawn."""
    for standing in board.standings:
        if standing.joint.id == alert.subject_id:
            released = getattr(standing, "released", None)
            if released is not None and released.at_us > alert.due_us:
                return str(released.by)
    return None


def _encoded(fields: dict[str, Any]) -> dict[str, object]:
    return {
        ("data_json" if name == "data" else name): (json_text(value) if name == "data" else value)
        for name, value in fields.items()
    }
