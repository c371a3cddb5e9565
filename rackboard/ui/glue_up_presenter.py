"""Words and figures of glue-up: from the draft and the board to what its pages show."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

from rackboard.core.bench import Batch, Epoxy, JointKind, Parts, PlaceKind
from rackboard.core.cure.calibration import calibrate
from rackboard.core.errors import InputError
from rackboard.core.instants import MINUTE_US, Instant
from rackboard.core.temperature import format_temperature
from rackboard.services.agenda import LOOK_BEFORE_US
from rackboard.services.draft import Draft, span_name
from rackboard.services.planning import (
    BatchPlan,
    Permissions,
    is_known,
    plan_batch,
    plan_joint,
    two_batches,
)
from rackboard.ui.glue_up_layout import EpoxyView, LayoutView
from rackboard.ui.glue_up_moments import RackView
from rackboard.ui.glue_up_plan import AskView, PlanView
from rackboard.ui.session import Session
from rackboard.ui.wording import DAYS, Times, both_clocks

PARTS = "parts"
ROOM = "zone:"


def _tr(text: str) -> str:
    return QCoreApplication.translate("GlueUpPresenter", text)


class GlueUpPresenter:
    """Says what stands in a draft, and what it would come to now.

    Parameters
    ----------
    session : Session
        The open shop.
    draft : Draft
        What is typed so far.
    """

    def __init__(self, session: Session, draft: Draft) -> None:
        self._session = session
        self._draft = draft
        self._snapshot = session.board.snapshot
        self._now = session.clock.now()
        self._times = Times(self._snapshot.hours, self._now)

    def clock(self) -> str:
        """Return "Fri 15:24"."""
        local = self._times.local(self._now)
        return f"{DAYS[local.weekday()]} {local:%H:%M}"

    def moment(self, instant: Instant) -> str:
        """Return an instant as the bench says it."""
        return self._times.moment(instant)

    # Clean hands

    def layout(self, marked: int, *, warm: bool, split: bool) -> LayoutView:
        """Return the lay-out page."""
        draft, snapshot = self._draft, self._snapshot
        unit = self._session.unit
        clubs = tuple(
            (
                club.name,
                "" if club.slot is None else snapshot.places[club.slot[0]].slot_name(club.slot[1]),
            )
            for club in draft.clubs
        )
        cup = self._session.board.records().get(self._cup_zone())
        shop = _tr("as the air")
        if cup is not None and cup.last is not None and is_known(cup, self._now):
            shop = format_temperature(cup.last.temperature_mc, unit)
        cold = _tr("brought in")
        if draft.parts is Parts.COLD and draft.parts_mc is not None:
            cold = format_temperature(draft.parts_mc, unit)
        promised = draft.promised_us
        parts = "warm" if warm else "cold" if draft.parts is Parts.COLD else "shop"
        ask = self.ask(warm=warm)
        return LayoutView(
            ", ".join(
                text for text in (_tr("Job {n}").format(n=draft.number), draft.customer) if text
            ),
            "" if promised is None else _tr("promised {when}").format(when=self.moment(promised)),
            clubs, marked, self._two_epoxies(), self._batch_note(), parts, shop, cold,
            None if ask or warm else self.plan(split=split), ask,
            _tr("Parts that are still warm from pulling the old shaft use up the glue in minutes. "
                "Let them cool to the hand, then go on.") if warm else "",
        )  # fmt: skip

    def _batch_note(self) -> str:
        number = self._session.store.work.next_batch_number()
        text = _tr("batch {n}").format(n=number)
        lot = self._draft.lot
        return f"{text}, {_tr('lot {lot}').format(lot=lot)}" if lot else text

    def _epoxy(self) -> Epoxy | None:
        return self._snapshot.epoxies.get(self._draft.epoxy_id)

    def _on_shelf(self) -> list[Epoxy]:
        return [e for e in self._snapshot.epoxies.values() if e.retired_us is None]

    def _two_epoxies(self) -> tuple[EpoxyView, ...]:
        """Return the usual two: the shelf's first two, but the chosen one is always there."""
        shelf = self._on_shelf()
        used = [batch.epoxy_id for batch in self._snapshot.batches.values()]
        shelf.sort(key=lambda e: (-used.count(e.id), e.id))
        chosen = self._draft.epoxy_id
        two = shelf[:2]
        if chosen not in [e.id for e in two]:
            two = [*two[:1], *(e for e in shelf if e.id == chosen)]
        two.sort(key=lambda e: e.id)
        views = []
        for epoxy in two:
            use, _, hit = both_clocks(epoxy.sheet).partition(", ")
            views.append(EpoxyView(epoxy.id, use, hit, epoxy.id == chosen))
        return tuple(views)

    def shelf(self) -> tuple[EpoxyView, ...]:
        """Return all epoxies that aren't retired."""
        return tuple(
            EpoxyView(
                epoxy.id, both_clocks(epoxy.sheet), epoxy.sheet.name,
                epoxy.id == self._draft.epoxy_id,
            )
            for epoxy in self._on_shelf()
        )  # fmt: skip

    def ask(self, *, warm: bool) -> AskView | None:
        """Return the temperature that has to be typed before there are times."""
        if warm or not self._draft.clubs:
            return None
        unit = f"°{self._session.unit}"
        records = self._session.board.records()
        for zone_id in self._zones():
            if not is_known(records.get(zone_id), self._now):
                name = self._snapshot.zones[zone_id].name
                text = _tr("{zone}: how warm is it now?").format(zone=name)
                return AskView(f"{ROOM}{zone_id}", text, unit, True)
        if self._draft.parts is Parts.COLD and self._draft.parts_mc is None:
            return AskView(PARTS, _tr("How cold are the parts?"), unit, False)
        return None

    def asks_of_box(self, ask: AskView) -> bool:
        """Return whether it is a warm box that is asked about."""
        if not ask.key.startswith(ROOM):
            return False
        zone_id = int(ask.key.removeprefix(ROOM))
        kinds = {p.kind for p in self._snapshot.places.values() if p.zone_id == zone_id}
        return kinds == {PlaceKind.BOX}

    def _cup_zone(self) -> int:
        for place in self._snapshot.places.values():
            if place.kind is PlaceKind.RACK and place.zone_id is not None:
                return place.zone_id
        return next(iter(self._snapshot.zones))

    def _zones(self) -> list[int]:
        """Return the zone of the cup, then those of the slots."""
        zones = [self._cup_zone()]
        for place_id, _ in self._draft.slots:
            zone_id = self._snapshot.places[place_id].zone_id
            if zone_id is not None and zone_id not in zones:
                zones.append(zone_id)
        return zones

    def plan(self, *, split: bool) -> PlanView | None:
        """Return what a batch mixed now would give; None without epoxy or clubs."""
        epoxy, count = self._epoxy(), len(self._draft.clubs)
        if epoxy is None or not count:
            return None
        records = self._session.board.records()
        try:
            model = calibrate(epoxy.sheet)
        except InputError as error:
            return PlanView("–", 0.0, (), str(error))
        both = two_batches(count)
        at_once = both[0] if split else count
        whole = plan_batch(model, records[self._cup_zone()], self._now, count)
        plan = whole if not split else plan_batch(
            model, records[self._cup_zone()], self._now, at_once)  # fmt: skip
        kinds = {club.kind for club in self._draft.clubs}
        slowest = JointKind.SOLID_HEAD if JointKind.SOLID_HEAD in kinds else min(kinds)
        cold = self._draft.parts_mc if self._draft.parts is Parts.COLD else None
        rows = []
        for name, zone_id in self._places():
            if not is_known(records.get(zone_id), self._now):
                rows.append((name, "", _tr("no reading yet")))
                continue
            found = plan_joint(model, records[zone_id], self._now, slowest, cold)
            rows.append((name, *self._permission(found)))
        shown = plan.shown_use_by_us
        tight, key = self._tight(whole, count, both, split=split)
        return PlanView(
            "–" if shown is None else self.moment(shown), plan.share, tuple(rows), tight, key, split
        )

    def _places(self) -> list[tuple[str, int]]:
        """Return the rack and the box, by their zones."""
        found = []
        for kind, name in ((PlaceKind.RACK, _tr("rack")), (PlaceKind.BOX, _tr("box"))):
            for place in self._snapshot.places.values():
                if place.kind is kind and place.zone_id is not None:
                    found.append((name, place.zone_id))
                    break
        return found

    def _permission(self, found: Permissions) -> tuple[str, str]:
        never = _tr("no time")
        first = "" if not found.stepwise else (
            never if found.off_rack_us is None else self.moment(found.off_rack_us)
        )  # fmt: skip
        return first, never if found.safe_us is None else self.moment(found.safe_us)

    def _tight(
        self, plan: BatchPlan, count: int, both: tuple[int, int], *, split: bool
    ) -> tuple[str, str]:
        """Return the question about clubs that don't fit, and the key that answers it."""
        if not plan.tight or plan.use_by_us is None:
            return "", ""
        minutes = (plan.use_by_us - plan.mixed_us) // MINUTE_US
        if count == 1:
            text = _tr("about {min} min: too short for a club. Another epoxy, or later?")
            return text.format(min=minutes), ""
        if plan.most_clubs < both[0]:
            text = _tr("about {min} min: {most} a batch, or an epoxy with more time?")
            return text.format(min=minutes, most=plan.most_clubs), ""
        key = _tr("Two batches\n{a} + {b}").format(a=both[0], b=both[1])
        if split:
            return _tr("two batches, one after the other"), key
        text = _tr("{n} clubs at 2½ min is tight: two batches?")
        return text.format(n=count), key

    # Mixed now, all racked

    def batch_lines(self, batch: Batch) -> tuple[str, str]:
        """Return whose batch it is, and which epoxy."""
        job, customer, clubs, where = self._clubs_of(batch)
        who = f"{_tr('Job {n}').format(n=job)}, {customer}" if customer else _tr("Job {n}").format(
            n=job)  # fmt: skip
        text = _tr("batch {n}, {epoxy}").format(n=batch.number, epoxy=both_clocks(batch.sheet))
        return f"{who}, {_clubs(clubs)}, {where}", text

    def rack(self, batch: Batch, late: int) -> RackView:
        """Return the third moment."""
        _, _, clubs, where = self._clubs_of(batch)
        assert batch.mixed_us is not None
        limits = [
            s.use_by_us
            for s in self._session.board.standings
            if s.batch.id == batch.id and s.use_by_us is not None
        ]
        use_by, used = "", 0.0
        look = _tr("Last look")
        if limits:
            end = min(limits)
            use_by = _tr("use by {time}").format(time=self._times.limit(end))
            if self._now >= end:
                use_by = _tr("use by {time}, over").format(time=self._times.limit(end))
            used = (self._now - batch.mixed_us) / max(end - batch.mixed_us, 1)
            if batch.racked_us is None and end - batch.mixed_us >= LOOK_BEFORE_US:
                look_at = self._times.limit(end - LOOK_BEFORE_US)
                look = _tr("Last look at {time}").format(time=look_at)
        racked = "" if batch.racked_us is None else self.moment(batch.racked_us)
        sub = f"{_clubs(clubs)}, {where}"
        if racked:
            sub = _tr("{clubs}, racked {time}").format(clubs=_clubs(clubs), time=racked)
        head = _tr("Batch {n}, mixed {time}").format(
            n=batch.number, time=self.moment(batch.mixed_us)
        )
        return RackView(head, use_by, min(used, 1.0), sub, look, clubs, racked, late)

    def _clubs_of(self, batch: Batch) -> tuple[str, str, int, str]:
        """Return job number, customer, how many clubs and where they lie."""
        snapshot = self._snapshot
        joints = snapshot.joints_of_batch.get(batch.id, [])
        slots = []
        number = customer = ""
        for joint in joints:
            club = snapshot.clubs[joint.club_id]
            job = snapshot.jobs[club.job_id]
            number = job.number
            found = snapshot.customers.get(job.customer_id)
            customer = found.name if found else ""
            stay = snapshot.stays.get(club.id)
            if stay is not None and stay.slot is not None:
                slots.append((stay.place_id, stay.slot))
        return number, customer, len(joints), span_name(slots, snapshot.places)


def _clubs(count: int) -> str:
    return _tr("1 club") if count == 1 else _tr("{n} clubs").format(n=count)
