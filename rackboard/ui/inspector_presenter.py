"""The selected slot in full: times with their reasons, curve, facts, what can be done."""

from __future__ import annotations

from rackboard.core.bench import JointKind, Milestone, Parts, PlaceKind, Source
from rackboard.core.cure.forecast import Bounds, printed_time
from rackboard.core.instants import MINUTE_US, Instant
from rackboard.core.standing import Standing
from rackboard.core.text import text
from rackboard.core.words import SHORT_PHRASES, Word
from rackboard.services.portrait import Portrait, portrait
from rackboard.ui.board_presenter import BoardPresenter
from rackboard.ui.curve_presenter import (
    ALLOWS,
    CurvePresenter,
    air_of,
    degrees,
    record_of,
    way_there,
)
from rackboard.ui.inspector_view import (
    Action,
    CurveView,
    InspectorView,
    Permission,
    Reason,
)
from rackboard.ui.language import say, spoken, translated
from rackboard.ui.tile import Glyph, word_text
from rackboard.ui.wording import Times, both_clocks, customer_said

_SOONER_MIN = 30 * MINUTE_US
_MOVED_US = 10 * MINUTE_US  # a time that moves by more is said with what it was

KINDS = {
    JointKind.SOLID_HEAD: text("Joint", "solid head"),
    JointKind.HOLLOW_HEAD: text("Joint", "hollow head"),
    JointKind.OVER_HOSEL_PUTTER: text("Joint", "over-hosel putter"),
    JointKind.ADAPTER_SLEEVE: text("Joint", "adapter sleeve"),
    JointKind.BUTT_EXTENSION: text("Joint", "butt extension"),
    JointKind.TIP_WEIGHT: text("Joint", "tip weight"),
}


class InspectorPresenter:
    """Makes the inspector's values for one joint or an empty slot.

    Parameters
    ----------
    presenter : BoardPresenter
        Of the same moment.
    times : Times, optional
        How times are said; on paper each needs its date.
    """

    def __init__(self, presenter: BoardPresenter, times: Times | None = None) -> None:
        self._p = presenter
        self._times = times or presenter.times

    def empty(self, place_id: int, slot: int) -> InspectorView:
        """Return an empty slot."""
        name = self._p.snapshot.places[place_id].slot_name(slot)
        return InspectorView(
            name, say("Inspector", "empty"), None,
            lines=(say("Inspector", "Enter lays a club out here."),),
            actions=(Action("lay out", say("Inspector", "Lay out\na job")),
                     Action("temperature", say("Inspector", "Type a\ntemperature"))),
            accessible=say("Inspector", "{slot}, empty").format(slot=name),
        )  # fmt: skip

    def joint(self, standing: Standing) -> InspectorView:
        """Return a joint."""
        where = self._p.snapshot.where(standing.club.id)
        job, batch = standing.job, standing.batch
        customer = self._p.snapshot.customers.get(job.customer_id)
        head = say("Inspector", "Job {job}, {customer}. Batch {batch}, not mixed yet")
        mixed = ""
        if batch.mixed_us is not None:
            head = say("Inspector", "Job {job}, {customer}. Batch {batch}, mixed {time}")
            mixed = self._times.moment(batch.mixed_us)
        lines = (
            head.format(job=job.number, customer=customer_said(customer),
                        batch=batch.number, time=mixed),
            say("Inspector", "{clocks} by its sheet").format(clocks=both_clocks(batch.sheet)),
        )  # fmt: skip
        if standing.laid_out:
            return InspectorView(
                where, standing.club.name, None, lines=lines,
                actions=(Action("mix", say("Inspector", "Mixed\nnow")),
                         Action("move", say("Inspector", "Move to\nslot…")),
                         Action("temperature", say("Inspector", "Type a\ntemperature"))),
                accessible=say("Inspector", "{slot}, {club}, laid out").format(
                    slot=where, club=standing.club.name),
            )  # fmt: skip
        picture = portrait(self._p.board, standing)
        sooner, sooner_short = self._sooner(standing)
        said = say("Inspector", "{slot}, {club}, {word}: {phrase}").format(
            slot=where, club=standing.club.name, word=word_text(standing.word),
            phrase=translated(SHORT_PHRASES[standing.word]),
        )  # fmt: skip
        return InspectorView(
            where, standing.club.name, Word.STALE if self._p.stale else standing.word,
            None if standing.hold is None else standing.hold.reason, lines,
            () if self._p.stale else self._permissions(standing),
            self._reasons(standing, picture),
            None if picture is None or self._p.stale else self.curve(standing, picture),
            self._facts(standing), sooner, sooner_short, self._actions(standing), said,
            "" if picture is None or self._p.stale else self.in_words(standing, picture),
        )  # fmt: skip

    def bounds_said(self, standing: Standing, milestone: Milestone, bounds: Bounds) -> str:
        """Return one permission as a clause: "off the rack not before 17:20"."""
        grant = self._p.snapshot.grants.get(standing.joint.id, {}).get(milestone)
        name = translated(ALLOWS[milestone])
        if standing.hold is not None:
            return say("Inspector", "{allowed}: on hold").format(allowed=name)
        if grant is not None:
            time = self._times.moment(grant.printed_us)
            return say("Inspector", "{allowed} since {time}").format(allowed=name, time=time)
        if standing.unknown:
            return say("Inspector", "{allowed}: not known, the night's low is missing").format(
                allowed=name)  # fmt: skip
        if bounds.late is None:
            return say("Inspector", "{allowed}: no time, it is too cold").format(allowed=name)
        late = self._times.moment(printed_time(bounds.late))
        if bounds.expected is None:
            return say("Inspector", "{allowed} not before {time}").format(allowed=name, time=late)
        return say(
            "Inspector", "{allowed} not before {time} (probably hard by {probably})"
        ).format(allowed=name, time=late, probably=self._times.moment(bounds.expected))

    def in_words(self, standing: Standing, picture: Portrait) -> str:
        """Return the curve for those who can't see it, in one sentence."""
        forecast = picture.outcome.forecast
        clauses = [self.bounds_said(standing, Milestone.FULL_CURE, forecast.full_cure)]
        if forecast.handling is not None:
            clauses.insert(0, self.bounds_said(standing, Milestone.HANDLING, forecast.handling))
        if self._p.now <= picture.end_us:
            now = say("Inspector", "now probably {far}").format(
                far=way_there(picture, picture.conversion(self._p.now)[0])
            )
            clauses.insert(0, now)
        mixed = say("Inspector", "Mixed {time}").format(
            time=self._times.moment(picture.start_us))  # fmt: skip
        return f"{'; '.join((mixed, *clauses))}."

    def _permissions(self, standing: Standing) -> tuple[Permission, ...]:
        result = []
        outcome = standing.outcome
        for milestone, glyph in (
            (Milestone.HANDLING, Glyph.HAND), (Milestone.FULL_CURE, Glyph.TICK)
        ):  # fmt: skip
            name = translated(ALLOWS[milestone])
            grant = self._p.snapshot.grants.get(standing.joint.id, {}).get(milestone)
            if standing.hold is not None:  # nobody may trust what it has earned meanwhile
                held = say("Inspector", "on hold")
                result.append(Permission(glyph, name, "", held, False))
                continue
            if grant is not None:
                time = self._times.moment(grant.printed_us)
                since = say("Inspector", "since")
                result.append(Permission(glyph, name, since, time, reached=True))
                continue
            if outcome is None:
                continue
            forecast = outcome.forecast
            bounds = forecast.handling if milestone is Milestone.HANDLING else forecast.full_cure
            if bounds is None:
                continue
            probably = ""
            if bounds.expected is not None and milestone is standing.milestone:
                probably = say("Inspector", "probably hard by {time}").format(
                    time=self._times.moment(bounds.expected))  # fmt: skip
            if standing.unknown:
                low = say("Inspector", "low?")
                result.append(Permission(glyph, name, "", low, False, probably))
            elif bounds.late is None:
                none = say("Inspector", "no time")
                result.append(Permission(glyph, name, "", none, False, probably))
            else:
                time = self._times.moment(printed_time(bounds.late))
                caption = say("Inspector", "not before")
                result.append(Permission(glyph, name, caption, time, False, probably))
        return tuple(result)

    def _reasons(self, standing: Standing, picture: Portrait | None) -> tuple[Reason, ...]:
        outcome = standing.outcome
        silent = self._p.stale or standing.hold is not None
        if picture is None or outcome is None or standing.milestone is None or silent:
            return ()
        return self.three_lines(standing, picture, standing.milestone)

    def three_lines(
        self, standing: Standing, picture: Portrait, milestone: Milestone
    ) -> tuple[Reason, ...]:
        """Return whose time it is, the time, and why: label, this room, with the margin."""
        forecast = picture.outcome.forecast
        handling = milestone is Milestone.HANDLING and forecast.handling is not None
        bounds = forecast.handling if handling else forecast.full_cure
        label = picture.label_handling_us if handling else picture.label_full_us
        if bounds is None or label is None:
            return ()
        none = say("Inspector", "no time")
        room = none if bounds.expected is None else self._times.moment(bounds.expected)
        margin = none if bounds.late is None else self._times.moment(printed_time(bounds.late))
        grant = self._p.snapshot.grants.get(standing.joint.id, {}).get(milestone)
        if grant is not None:
            margin = self._times.moment(grant.printed_us)
        elif standing.unknown:
            margin = say("Inspector", "low?")
        reference_mc = round(standing.batch.sheet.reference_c * 1000)
        by_label = say("Inspector", "at {temperature}").format(
            temperature=degrees(self._p, reference_mc, 0)
        )
        air = air_of(self._p, standing) or say("Inspector", "no reading")
        by_record = say("Inspector", "by its record, now {air}").format(air=air)
        short = say("Inspector", "now {air}").format(air=air)
        said = None if bounds.late is None or standing.unknown else printed_time(bounds.late)
        why = self._margin_words(standing, milestone, said)
        if grant is not None:
            by_record = short = say("Inspector", "by its record")
            why = (say("Inspector", "the record has reached it"),) * 2
        return (
            Reason(say("Inspector", "the label"), self._times.moment(label), by_label, by_label),
            Reason(say("Inspector", "this room"), room, by_record, short),
            Reason(say("Inspector", "with the margin"), margin, *why),
        )

    def _margin_words(
        self, standing: Standing, milestone: Milestone, now_said: Instant | None
    ) -> tuple[str, str]:
        """Return why the margin's time is what it is, and the same for a narrow card."""
        record = record_of(self._p, standing)
        if record is None or record.last is None:
            why = say("Inspector", "type the temperature")
            return why, why
        last = record.last
        if last.source is Source.TYPED_AT_RACK:
            why = say("Inspector", "typed at the rack, taken as {low}")
        elif last.source.automatic:
            why = say("Inspector", "read, taken as {low}")
        else:
            why = say("Inspector", "typed, taken as {low}")
        why = why.format(low=degrees(self._p, last.temperature_mc - last.u_mc))
        short = say("Inspector", "not before")
        if standing.cold:
            minimum = degrees(self._p, round(standing.batch.sheet.minimum_c * 1000), 0)
            short = say("Inspector", "below the sheet's {minimum}").format(minimum=minimum)
            why = say(
                "Inspector", "{why}: below the sheet's {minimum} it counts for less"
            ).format(why=why, minimum=minimum)
        was = self._p.board.foretold(standing, milestone)
        if was is not None and now_said is not None and abs(was - now_said) > _MOVED_US:
            time = self._times.moment(was)
            short = say("Inspector", "was {time} at glue-up").format(time=time)
            why = say("Inspector", "was {time} at glue-up; {why}").format(time=time, why=why)
        return why, short

    def curve(self, standing: Standing, picture: Portrait) -> CurveView:
        """Return the picture's values."""
        return CurvePresenter(self._p, self._times).view(standing, picture)

    def _facts(self, standing: Standing) -> tuple[tuple[str, str], ...]:
        joint = standing.joint
        facts = [(say("Inspector", "Joint"), kind_said(joint.kind, joint.lag_s))]
        if joint.parts is Parts.COLD and joint.parts_mc is not None:
            cold = say("Inspector", "cold, {temperature}").format(
                temperature=degrees(self._p, joint.parts_mc))  # fmt: skip
            facts.append((say("Inspector", "Parts"), cold))
        elif joint.kind is not JointKind.TIP_WEIGHT and joint.graphics:
            facts.append((say("Inspector", "Graphics"), graphics_said(joint.graphics)))
        if standing.batch.lot:
            facts.append((say("Inspector", "Lot"), standing.batch.lot))
        return tuple(facts[:2])

    def _sooner(self, standing: Standing) -> tuple[str, str]:
        place = self._p.snapshot.place_of(standing.club.id)
        if (
            place is None or place.kind in (PlaceKind.BOX, PlaceKind.OUT)
            or standing.hold is not None or standing.milestone is None or standing.unknown
            or self._p.stale or not self._p.board.reckoned or standing.base is Word.WET
        ):  # fmt: skip
            return "", ""
        box = next(
            (p for p in self._p.snapshot.places.values() if p.kind is PlaceKind.BOX), None
        )
        record = None if box is None else self._p.records.get(box.zone_id or 0)
        if box is None or record is None or record.last is None:
            return "", ""
        warm_c = record.last.temperature_mc / 1000
        found = self._p.board.remedy(standing, warm_c)
        if found is None:
            return "", ""
        instead = found.instead_of_us
        if instead is not None and instead - found.not_before_us < _SOONER_MIN:
            return "", ""
        parts = {
            "box": box.name.lower() if spoken() == "en" else box.name,
            "air": degrees(self._p, round(found.temperature_c * 1000), 0),
            "start": self._times.clock(found.from_us),
            "time": self._times.moment(found.not_before_us),
        }
        hours = found.hours
        return (
            say("Inspector", "%n h in the {box} at {air} from {start}: not before {time}",
                "%n h in the {box} at {air} from {start}: not before {time}",
                hours).format(**parts),
            say("Inspector", "%n h in the {box}: not before {time}",
                "%n h in the {box}: not before {time}", hours).format(**parts),
        )  # fmt: skip

    def _actions(self, standing: Standing) -> tuple[Action, ...]:
        place = self._p.snapshot.place_of(standing.club.id)
        on_rack = place is not None and place.kind in (PlaceKind.RACK, PlaceKind.BOX)
        if standing.hold is not None:
            first = Action("answer", say("Inspector", "Answer"))
        elif standing.batch.racked_us is None and standing.base is Word.WET:
            first = Action("racked", say("Inspector", "All\nracked"))
        else:
            first = Action("disturb", say("Inspector", "Disturbed"))
        firm = standing.base in (Word.BENCH, Word.CURED) and standing.hold is None
        off = Action("take off", say("Inspector", "Take off\nthe rack"), small=False,
                     enabled=on_rack and firm)  # fmt: skip
        if not on_rack:
            off = Action("out", say("Inspector", "Out of\nthe shop"), small=False)
        return (
            first, Action("move", say("Inspector", "Move to\nslot…")), off,
            Action("temperature", say("Inspector", "Type a\ntemperature"), small=False),
            Action("more", say("Inspector", "More\nactions…"), large=False),
        )  # fmt: skip



def graphics_said(graphics: str) -> str:
    """Return how the graphics lie, as it is kept in words."""
    if graphics.isdigit():
        return say("Inspector", "{hour} o'clock").format(hour=graphics)
    from rackboard.services.draft import INDEX_MARK

    return say("Inspector", "index mark") if graphics == INDEX_MARK else graphics


def kind_said(kind: JointKind, lag_s: int) -> str:
    """Return "solid head, lag 22 min"."""
    name = translated(KINDS[kind])
    if not lag_s:
        return name
    return say("Inspector", "{kind}, lag {minutes} min").format(
        kind=name, minutes=f"{lag_s / 60:.0f}"
    )
