"""What a draft would come to if it were mixed now, in the bench's words: before mixing."""

from __future__ import annotations

from rackboard.core.bench import Epoxy, Parts, PlaceKind
from rackboard.core.cure.calibration import CureModel, calibrate
from rackboard.core.errors import InputError
from rackboard.core.instants import MINUTE_US, Instant
from rackboard.core.temperature import format_temperature
from rackboard.core.text import Figure
from rackboard.services.climate import ZoneRecord
from rackboard.services.draft import Draft
from rackboard.services.planning import (
    LOOK_FROM_MIN,
    BatchPlan,
    Late,
    Permissions,
    is_known,
    plan_batch,
    plan_joint,
    shares,
    slowest_kind,
    why_late,
)
from rackboard.ui.glue_up_page import error_text
from rackboard.ui.glue_up_plan import PlanView
from rackboard.ui.language import say, translated
from rackboard.ui.session import Session
from rackboard.ui.wording import Times

_MOST_SHOWN = 4


class GlueUpForecast:
    """Says what a batch mixed now would give, and what would not fit or come too late.

    Parameters
    ----------
    session : Session
        The open shop.
    draft : Draft
        What is typed so far.
    cup_zone : int
        Zone of the air that the batch stands in.
    """

    def __init__(self, session: Session, draft: Draft, cup_zone: int) -> None:
        self._session = session
        self._draft = draft
        self._cup_zone = cup_zone
        self._snapshot = session.board.snapshot
        self._records = session.board.records()
        self._now = session.clock.now()
        self._times = Times(self._snapshot.hours, self._now)
        self._count = len(draft.clubs)

    @property
    def promised_us(self) -> Instant | None:
        """When the job is promised for, also one that is there already [µs UTC]."""
        job = self._session.store.work.job_numbered(self._draft.number)
        return self._draft.promised_us if job is None else job.promised_us

    def shares(self) -> tuple[int, ...]:
        """Return how the clubs are shared if they don't fit into one batch."""
        model = self._model(self._epoxy())
        if model is None or not self._count:
            return ()
        plan = self._batch(model, self._count)
        return shares(self._count, plan.most_clubs) if plan.tight else ()

    def is_plain(self) -> bool:
        """Return whether there is nothing to ask or warn of before it is laid out."""
        view = self.view(split=False)
        return view is not None and not view.tight and not view.missed

    def view(self, *, split: bool) -> PlanView | None:
        """Return what the box of the lay-out shows; None without epoxy or clubs."""
        epoxy = self._epoxy()
        if epoxy is None or not self._count:
            return None
        try:
            model = calibrate(epoxy.sheet)
        except InputError as error:
            return PlanView("–", 0.0, (), error_text(error))
        plan = whole = self._batch(model, self._count)
        parts = shares(self._count, whole.most_clubs) if whole.tight else ()
        if split and parts:
            plan = self._batch(model, parts[0])
        shown = plan.shown_use_by_us
        return PlanView(
            "–" if shown is None else self._times.moment(shown), plan.share,
            tuple(self._row(model, kind) for kind in (PlaceKind.RACK, PlaceKind.BOX)
                  if self._zone(kind) is not None),
            *self._missed(model), self._tight(whole, parts, split=split), _split_key(parts), split,
        )  # fmt: skip

    def _epoxy(self) -> Epoxy | None:
        return self._snapshot.epoxies.get(self._draft.epoxy_id)

    def _model(self, epoxy: Epoxy | None) -> CureModel | None:
        try:
            return None if epoxy is None else calibrate(epoxy.sheet)
        except InputError:
            return None

    def _batch(self, model: CureModel, clubs: int) -> BatchPlan:
        return plan_batch(model, self._records[self._cup_zone], self._now, clubs)

    def _zone(self, kind: PlaceKind) -> int | None:
        for place in self._snapshot.places.values():
            if place.kind is kind and place.zone_id is not None:
                return place.zone_id
        return None

    def _known(self, zone_id: int | None) -> ZoneRecord | None:
        record = None if zone_id is None else self._records.get(zone_id)
        return record if is_known(record, self._now) else None

    # The times, by place

    def _row(self, model: CureModel, kind: PlaceKind) -> tuple[str, str, str]:
        """Return a place with its temperature, off the rack and safe to hit not before."""
        place = say("GlueUp", "rack") if kind is PlaceKind.RACK else say("GlueUp", "box")
        record = self._known(self._zone(kind))
        if record is None or record.last is None:
            return place, "", say("GlueUp", "no reading yet")
        degrees = format_temperature(record.last.temperature_mc, self._session.unit, 0)
        name = say("GlueUp", "{place} at {temperature}").format(
            place=place, temperature=translated(degrees)
        )
        found = self._permissions(model, record)
        never = say("GlueUp", "no time")
        off = ""
        if found.stepwise:
            at = found.off_rack_us
            off = never if at is None else self._times.moment(at)
        safe = found.safe_us
        return name, off, never if safe is None else self._times.moment(safe)

    def _permissions(self, model: CureModel, record: ZoneRecord) -> Permissions:
        kind = slowest_kind(club.kind for club in self._draft.clubs)
        cold = self._draft.parts_mc if self._draft.parts is Parts.COLD else None
        return plan_joint(model, record, self._now, kind, cold)

    # The promise

    def _missed(self, model: CureModel) -> tuple[str, str]:
        """Return what is to be said of a promise that won't be kept where the clubs lie.

        In full, with the reason and what would keep it, and in short.
        """
        promised = self.promised_us
        if promised is None:
            return "", ""
        worst: tuple[Instant | None, ZoneRecord] | None = None
        for record in self._records_of_slots():
            safe = self._permissions(model, record).safe_us
            if safe is None:
                worst = (None, record)
                break
            if safe > promised and (worst is None or worst[0] is None or safe > worst[0]):
                worst = (safe, record)
        if worst is None:
            return "", ""
        safe, record = worst
        short = say("GlueUp", "Not before {when}, promised {promised}")
        if safe is None:
            short = say("GlueUp", "No time, promised {promised}")
        short = short.format(
            when="" if safe is None else self._times.moment(safe),
            promised=self._times.moment(promised),
        )
        return say("GlueUp", "{missed}: {reason}. {better}").format(
            missed=short, reason=self._reason(model, record, promised),
            better=self._better(model, promised),
        ), short  # fmt: skip

    def _records_of_slots(self) -> list[ZoneRecord]:
        places = (self._snapshot.places[place_id] for place_id, _ in self._draft.slots)
        zones = dict.fromkeys(place.zone_id for place in places)
        return [record for zone in zones if (record := self._known(zone)) is not None]

    def _reason(self, model: CureModel, record: ZoneRecord, promised: Instant) -> str:
        kind = slowest_kind(club.kind for club in self._draft.clubs)
        late = why_late(model, record, self._now, kind, promised)
        if late is Late.NIGHT:
            return say("GlueUp", "the shop cools down when closed")
        if late is Late.EPOXY:
            return say("GlueUp", "this epoxy takes so long")
        unit, sheet = self._session.unit, model.sheet
        limit = sheet.minimum_c if late is Late.COLD else sheet.reference_c
        said = say("GlueUp", "{here} is cooler than the {label} of its sheet")
        if late is Late.COLD:
            said = say("GlueUp", "{here} is too cold for this epoxy, which needs {label}")
        here = Figure("–")
        if record.last is not None:
            here = Figure(format_temperature(record.last.temperature_mc, unit))
        label = format_temperature(round(limit * 1000), unit, 0)
        return said.format(here=translated(here), label=translated(label))

    def _better(self, model: CureModel, promised: Instant) -> str:
        """Return what would keep the promise: the box, or an epoxy of the shelf."""
        box = self._known(self._zone(PlaceKind.BOX))
        if box is not None and self._keeps(model, box, promised):
            return say("GlueUp", "The box keeps it.")
        records = self._records_of_slots()
        for epoxy in self._others():
            other = self._model(epoxy)
            if other is not None and not self._batch(other, self._count).tight and all(
                self._keeps(other, record, promised) for record in records
            ):  # fmt: skip
                return say("GlueUp", "The {epoxy} keeps it.").format(epoxy=epoxy.sheet.name)
        return say("GlueUp", "Agree a later time.")

    def _keeps(self, model: CureModel, record: ZoneRecord, promised: Instant) -> bool:
        safe = self._permissions(model, record).safe_us
        return safe is not None and safe <= promised

    def _others(self) -> list[Epoxy]:
        """Return the rest of the shelf, the longest working life last."""
        rest = [
            epoxy for epoxy in self._snapshot.epoxies.values()
            if epoxy.retired_us is None and epoxy.id != self._draft.epoxy_id
        ]  # fmt: skip
        return sorted(rest, key=lambda epoxy: epoxy.sheet.working_life_min.short)

    # The working life

    def _tight(self, plan: BatchPlan, parts: tuple[int, ...], *, split: bool) -> str:
        """Return the question about clubs that don't fit into one batch."""
        if not plan.tight or plan.use_by_us is None:
            return ""
        if split and parts:
            return say("GlueUp", "%n batches, one after the other", "", len(parts))
        minutes = (plan.use_by_us - plan.mixed_us) // MINUTE_US
        if len(parts) == 2 and minutes >= LOOK_FROM_MIN:
            return say("GlueUp", "%n clubs at 2½ min is tight: two batches?", "", self._count)
        ways = [say("GlueUp", "%n clubs a batch", "%n club a batch", parts[0])] if parts else []
        other = self._roomier(plan)
        if other is not None:
            ways.append(say("GlueUp", "the {epoxy}").format(epoxy=other.sheet.name))
        opening = self._snapshot.hours.next_opening(self._now + MINUTE_US)
        if opening is not None:
            ways.append(self._times.moment(opening))
        said = say("GlueUp", "about {minutes} min: {ways}")
        if not ways:
            said = say("GlueUp", "about {minutes} min is too short for a club")
        elif not parts:
            said = say("GlueUp", "about {minutes} min is too short for a club: {ways}")
        joined = ways[0] if ways else ""
        for way in ways[1:]:
            joined = say("GlueUp", "{first}, or {next}").format(first=joined, next=way)
        return said.format(minutes=minutes, ways=joined)

    def _roomier(self, plan: BatchPlan) -> Epoxy | None:
        """Return the epoxy of the shelf that fits all clubs with the least time to spare.

        If none fits them all, the one that fits most of them.
        """
        most, best = max(plan.most_clubs, 0), None
        for epoxy in self._others():
            model = self._model(epoxy)
            if model is None:
                continue
            other = self._batch(model, self._count)
            if not other.tight:
                return epoxy
            if other.most_clubs > most:
                most, best = other.most_clubs, epoxy
        return best


def _split_key(parts: tuple[int, ...]) -> str:
    """Return the text of the key that shares the clubs out."""
    if not parts:
        return ""
    said = say("GlueUp", "%n batches\n{clubs}", "", len(parts))
    if len(parts) == 2:
        said = say("GlueUp", "Two batches\n{clubs}")
    if len(parts) <= _MOST_SHOWN:
        return said.format(clubs=" + ".join(str(count) for count in parts))
    return said.format(clubs=say("GlueUp", "up to {clubs} each").format(clubs=parts[0]))
