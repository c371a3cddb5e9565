"""Words and figures of glue-up: from the draft and the board to what its pages show."""

from __future__ import annotations

from rackboard.core.bench import Batch, Epoxy, Parts, PlaceKind
from rackboard.core.instants import Instant
from rackboard.core.temperature import format_temperature
from rackboard.core.text import Figure
from rackboard.services.agenda import LOOK_BEFORE_US
from rackboard.services.draft import INDEX_MARK, Draft, span_name
from rackboard.services.planning import is_known
from rackboard.ui.glue_up_forecast import GlueUpForecast
from rackboard.ui.glue_up_layout import EpoxyView, LayoutView
from rackboard.ui.glue_up_moments import RackView
from rackboard.ui.glue_up_plan import AskView
from rackboard.ui.language import say, translated
from rackboard.ui.session import Session
from rackboard.ui.wording import DAYS, Times, both_clocks, hours_text

PARTS = "parts"
ROOM = "zone:"


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
        return say("GlueUp", "{day} {time}").format(
            day=translated(DAYS[local.weekday()]), time=f"{local:%H:%M}"
        )

    def moment(self, instant: Instant) -> str:
        """Return an instant as the bench says it."""
        return self._times.moment(instant)

    # Clean hands

    def layout(self, marked: int, *, split: bool) -> LayoutView:
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
        shop = say("GlueUp", "as the air")
        if cup is not None and cup.last is not None and is_known(cup, self._now):
            shop = translated(format_temperature(cup.last.temperature_mc, unit))
        cold = say("GlueUp", "brought in")
        if draft.parts is Parts.COLD and draft.parts_mc is not None:
            cold = translated(format_temperature(draft.parts_mc, unit))
        forecast = self.forecast()
        promised = forecast.promised_us
        said = say("GlueUp", "promised {when}")
        ask = self.ask()
        return LayoutView(
            _job(draft.number, draft.customer),
            "" if promised is None else said.format(when=self.moment(promised)),
            clubs, marked, self._two_epoxies(), self._batch_note(),
            "cold" if draft.parts is Parts.COLD else "shop", shop, cold,
            None if ask else forecast.view(split=split), ask,
        )  # fmt: skip

    def forecast(self) -> GlueUpForecast:
        """Return what the draft would come to if it were mixed now."""
        return GlueUpForecast(self._session, self._draft, self._cup_zone())

    def _batch_note(self) -> str:
        number, lot = self._session.store.work.next_batch_number(), self._draft.lot
        if lot:
            return say("GlueUp", "batch {number}, lot {lot}").format(number=number, lot=lot)
        return say("GlueUp", "batch {number}").format(number=number)

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
            sheet = epoxy.sheet
            use = say("GlueUp", "{minutes} min to use").format(
                minutes=translated(Figure(f"{sheet.working_life_min.long:.3g}"))
            )
            hit = say("GlueUp", "{hours} to hit").format(
                hours=translated(hours_text(sheet.full_cure_time_h.long))
            )
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

    def ask(self) -> AskView | None:
        """Return the temperature that has to be typed before there are times."""
        if not self._draft.clubs:
            return None
        unit = f"°{self._session.unit}"
        records = self._session.board.records()
        for zone_id in self._zones():
            if not is_known(records.get(zone_id), self._now):
                name = self._snapshot.zones[zone_id].name
                text = say("GlueUp", "{zone}: how warm is it now?").format(zone=name)
                return AskView(f"{ROOM}{zone_id}", text, unit, True)
        if self._draft.parts is Parts.COLD and self._draft.parts_mc is None:
            return AskView(PARTS, say("GlueUp", "How cold are the parts?"), unit, False)
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

    # Mixed now, all racked

    def batch_lines(self, batch: Batch) -> tuple[str, str]:
        """Return whose batch it is, and which epoxy."""
        number, customer, clubs, where = self._clubs_of(batch)
        who = say("GlueUp", "{job}, {clubs}, {slots}").format(
            job=_job(number, customer), clubs=_clubs(clubs), slots=where
        )
        epoxy = say("GlueUp", "batch {number}, {epoxy}").format(
            number=batch.number, epoxy=translated(both_clocks(batch.sheet))
        )
        return who, epoxy

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
        look = say("GlueUp", "Last look")
        if limits:
            end = min(limits)
            use_by = say("GlueUp", "use by {time}")
            if self._now >= end:
                use_by = say("GlueUp", "use by {time}, over")
            use_by = use_by.format(time=self._times.limit(end))
            used = (self._now - batch.mixed_us) / max(end - batch.mixed_us, 1)
            if batch.racked_us is None and end - batch.mixed_us >= LOOK_BEFORE_US:
                look_at = self._times.limit(end - LOOK_BEFORE_US)
                look = say("GlueUp", "Last look at {time}").format(time=look_at)
        racked = "" if batch.racked_us is None else self.moment(batch.racked_us)
        sub = say("GlueUp", "{clubs}, {slots}").format(clubs=_clubs(clubs), slots=where)
        if racked:
            sub = say("GlueUp", "{clubs}, racked {time}").format(
                clubs=_clubs(clubs), time=racked
            )
        head = say("GlueUp", "Batch {number}, mixed {time}").format(
            number=batch.number, time=self.moment(batch.mixed_us)
        )
        return RackView(
            head, use_by, min(used, 1.0), sub, look, clubs, racked, late, self._graphics(batch)
        )

    def _graphics(self, batch: Batch) -> str:
        """Return how the graphics of a batch's shafts are to stand."""
        joints = self._snapshot.joints_of_batch.get(batch.id, [])
        wanted = {joint.graphics for joint in joints if joint.graphics}
        if len(wanted) != 1:
            return say("GlueUp", "at 12 or 6 as wanted")
        (only,) = wanted
        if only == INDEX_MARK:
            return say("GlueUp", "sleeve by its index mark")
        return say("GlueUp", "at {hour} o'clock").format(hour=only)

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
        return number, customer, len(joints), translated(span_name(slots, snapshot.places))


def _clubs(count: int) -> str:
    return say("GlueUp", "%n clubs", "%n club", count)


def _job(number: str, customer: str) -> str:
    if not customer:
        return say("GlueUp", "Job {number}").format(number=number)
    return say("GlueUp", "Job {number}, {customer}").format(number=number, customer=customer)
