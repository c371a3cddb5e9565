"""What is on record of a joint, said: its facts, and what happened to it in order of time."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from rackboard.core.bench import Event, Hold, HoldReason, Milestone, Parts, PlaceKind, Stay
from rackboard.core.instants import Instant
from rackboard.core.standing import Standing
from rackboard.core.temperature import format_temperature
from rackboard.core.text import Text, text
from rackboard.services.portrait import JointRecord, Portrait, celsius
from rackboard.store.journal import Former
from rackboard.ui.board_presenter import BoardPresenter
from rackboard.ui.curve_presenter import ALLOWS
from rackboard.ui.inspector_presenter import graphics_said, kind_said
from rackboard.ui.language import say, translated
from rackboard.ui.tile import HOLD_GLYPHS, Glyph
from rackboard.ui.wording import Times, both_clocks, customer_said

REASONS = {
    HoldReason.DISTURBED: text("History", "on HOLD: disturbed"),
    HoldReason.SOFT_SMEAR: text("History", "on HOLD: soft smear"),
    HoldReason.TOO_HOT: text("History", "on HOLD: too hot"),
}
OUTCOMES = {
    "re-aimed, clock runs on from mixing": text("History", "re-aimed, clock runs on from mixing"),
    "pulled, cleaned, re-glued with a new batch": text(
        "History", "pulled, cleaned, re-glued with a new batch"
    ),
    "touched, head did not turn": text("History", "touched, head did not turn"),
    "nothing seen": text("History", "nothing seen"),
    "scrapped": text("History", "scrapped"),
    "entered by mistake": text("History", "entered by mistake"),
}
_PLAIN = {
    "mixed": text("History", "batch mixed"),
    "all racked": text("History", "all racked"),
    "last look": text("History", "last look done"),
    "glued late": text("History", "glued late"),
    "re-aimed": text("History", "re-aimed before it gelled, the clock runs on"),
    "moved after its working life": text("History", "moved after its working life"),
    "ready": text("History", "READY pressed for the job"),
    "not ready": text("History", "READY taken back"),
    "whole job safe to hit": text("History", "whole job safe to hit"),
    "customer erased": text("History", "the customer's name and phone erased"),
}
_GLYPHS = {
    "mixed": Glyph.EYE, "all racked": Glyph.EYE, "last look": Glyph.EYE, "glued late": Glyph.EYE,
    "ready": Glyph.TICK, "whole job safe to hit": Glyph.TICK, "released": Glyph.TICK,
    "moved after its working life": Glyph.ROD, "re-aimed": Glyph.EYE, "re-glued": Glyph.EYE,
}  # fmt: skip
_TOLD_ELSEWHERE = frozenset(
    {
        "moved", "may come off the rack", "safe to hit", "permission withdrawn", "disturbed",
        "hold ended", "corrected", "notice closed", "notice withdrawn", "laid out",
    }
)  # fmt: skip
"""Events whose rows say more than the event does."""
_COLUMNS = {
    ("batch", "mixed_us"): text("History", "corrected: mixed {new}, was {old}"),
    ("batch", "racked_us"): text("History", "corrected: all racked {new}, was {old}"),
    ("batch", "lot"): text("History", "corrected: lot {new}, was {old}"),
    ("joint", "glued_us"): text("History", "corrected: glued {new}, was {old}"),
    ("joint", "batch_id"): text("History", "corrected: glued with another batch"),
    ("joint", "kind"): text("History", "corrected: {new}, was {old}"),
    ("joint", "graphics"): text("History", "corrected: graphics {new}, was {old}"),
    ("joint", "parts"): text("History", "corrected: parts {new}, were {old}"),
    ("club", "name"): text("History", "corrected: {new}, was {old}"),
    ("stay", "slot"): text("History", "corrected: another slot"),
    ("stay", "club_id"): text("History", "corrected: swapped with another club"),
    ("job", "promised_us"): text("History", "promised for {new}, was {old}"),
    ("job", "number"): text("History", "corrected: job {new}, was {old}"),
}


class Line(NamedTuple):
    """Something that happened: its key, when, a glyph, what, and whose initials."""

    key: str
    at_us: Instant
    time: str
    glyph: Glyph | None
    what: str
    by: str


class JointHistory:
    """Says one joint's record.

    Parameters
    ----------
    presenter : BoardPresenter
        Of the same moment.
    standing : Standing
        The joint.
    record : JointRecord
        What is on record of it.
    times : Times, optional
        How times are said; on paper each needs its date.
    """

    def __init__(
        self,
        presenter: BoardPresenter,
        standing: Standing,
        record: JointRecord,
        times: Times | None = None,
    ) -> None:
        self._p = presenter
        self._standing = standing
        self._record = record
        self._times = times or presenter.times
        self._begun_us = self._begin()

    def _begin(self) -> Instant:
        """Return when this joint begins: a club that was re-glued has an earlier life."""
        for event in self._record.events:
            if event.kind == "re-glued" and event.subject_id == self._standing.joint.id:
                return event.at_us
        return 0

    # Facts

    def facts(self, picture: Portrait | None = None) -> tuple[tuple[str, str], ...]:
        """Return the joint's facts as pairs of a name and what it is."""
        standing, moment = self._standing, self._times.moment
        joint, batch, job = standing.joint, standing.batch, standing.job
        customer = self._p.snapshot.customers.get(job.customer_id)
        facts = [
            (say("History", "Job"), job.number),
            (say("History", "Customer"), customer_said(customer)),
            (say("History", "Joint"), kind_said(joint.kind, joint.lag_s)),
            (say("History", "Epoxy"), batch.sheet.name),
            (say("History", "By its sheet"), both_clocks(batch.sheet)),
            (say("History", "Batch"), str(batch.number)),
            (say("History", "Lot"), batch.lot or say("History", "not noted")),
            (say("History", "Parts"), self._parts()),
        ]
        if joint.graphics:
            facts.append((say("History", "Graphics"), graphics_said(joint.graphics)))
        for head, instant in (
            (say("History", "Mixed"), batch.mixed_us),
            (say("History", "Glued"), joint.glued_us),
            (say("History", "All racked"), batch.racked_us),
            (say("History", "Looked at"), batch.looked_us),
        ):
            said = say("History", "not yet") if instant is None else moment(instant)
            facts.append((head, said))
        facts.append((say("History", "Now at"), self._p.snapshot.where(standing.club.id) or "–"))
        coldest = None if picture is None else self._coldest(picture)
        if coldest is not None:
            facts.append((say("History", "Coldest so far"), coldest))
        return tuple(facts)

    def _parts(self) -> str:
        joint = self._standing.joint
        if joint.parts is Parts.COLD and joint.parts_mc is not None:
            return say("Inspector", "cold, {temperature}").format(
                temperature=self._degrees(joint.parts_mc))  # fmt: skip
        return say("History", "as warm as the shop")

    def _coldest(self, picture: Portrait) -> str | None:
        read = [
            (temp_k, at_us)
            for stretch in picture.air
            if not stretch.gap and stretch.end_us <= picture.record_end_us
            for temp_k, at_us in zip(
                stretch.expected, (stretch.start_us, stretch.end_us), strict=True
            )
        ]
        if not read:
            return None
        temp_k, at_us = min(read)
        return say("History", "{temperature}, {time}").format(
            temperature=self._degrees(round(celsius(temp_k) * 1000)),
            time=self._times.moment(at_us),
        )

    # What happened

    def lines(self) -> tuple[Line, ...]:
        """Return what happened, the earliest first."""
        found = [
            *self._earlier(), *self._stays(), *self._events(), *self._grants(), *self._holds(),
            *self._corrections(),
        ]  # fmt: skip
        return tuple(sorted(found, key=_at))

    def _line(
        self, key: str, at_us: Instant, glyph: Glyph | None, what: str, by: str | None = None
    ) -> Line:
        return Line(key, at_us, self._times.moment(at_us), glyph, what, by or "")

    def _earlier(self) -> Iterator[Line]:
        """Yield the joints of this club that came before, and how they ended."""
        for joint in self._record.others:
            if joint.ended_us is None:
                continue
            batch = self._record.batches.get(joint.batch_id or 0)
            parts: dict[str, object] = {
                "kind": kind_said(joint.kind, 0), "batch": batch.number if batch else "–",
                "outcome": translated(_ended(joint.ended_as)),
            }  # fmt: skip
            if joint.glued_us is None:
                what = say("History", "an earlier {kind}, never glued: {outcome}")
            else:
                what = say("History", "an earlier {kind}, batch {batch}, glued {time}: {outcome}")
                parts["time"] = self._times.moment(joint.glued_us)
            yield self._line(f"joint:{joint.id}", joint.ended_us, None, what.format(**parts))

    def _stays(self) -> Iterator[Line]:
        by = {e.at_us: e.by for e in self._record.events if e.kind == "moved"}
        first = True
        for stay in self._record.stays:
            if stay.to_us is not None and stay.to_us <= self._begun_us:
                continue
            what = self._stay_said(stay, first=first)
            first = False
            at = max(stay.from_us, self._begun_us)
            yield self._line(f"stay:{stay.id}", at, None, what, by.get(stay.from_us))

    def _stay_said(self, stay: Stay, *, first: bool) -> str:
        place = self._p.snapshot.places[stay.place_id]
        if place.kind is PlaceKind.OUT:
            return say("History", "left the shop")
        name = place.slot_name(stay.slot)
        if first:
            return say("History", "laid out at {place}").format(place=name)
        return say("History", "carried to {place}").format(place=name)

    def _events(self) -> Iterator[Line]:
        foretold = False
        for event in self._record.events:
            if event.kind in _TOLD_ELSEWHERE or event.at_us < self._begun_us:
                continue
            if event.kind == "foretold":
                if foretold:
                    continue  # what was said first is what people went by
                foretold = True
            what = self._event_said(event)
            if what:
                glyph = _GLYPHS.get(event.kind)
                yield self._line(f"event:{event.id}", event.at_us, glyph, what, event.by)

    def _event_said(self, event: Event) -> str:
        data = event.data
        if event.kind == "foretold":
            return self._foretold(event)
        if event.kind == "low said":
            mc = data.get("mc")
            zone = self._p.snapshot.zones.get(event.subject_id)
            if not isinstance(mc, int) or zone is None:
                return ""
            return say("History", "{zone}: lowest of the night {temperature}").format(
                zone=zone.name, temperature=self._degrees(mc))  # fmt: skip
        if event.kind == "re-glued":
            was = data.get("was")
            if event.subject_id != self._standing.joint.id or not isinstance(was, int):
                return ""
            return say("History", "laid out again, to be glued with a new batch")
        if event.kind == "released":
            reason = data.get("reason")
            if isinstance(reason, str) and reason:
                return say("History", "released by a person: {reason}").format(reason=reason)
            return say("History", "released by a person")
        plain = _PLAIN.get(event.kind)
        return event.kind if plain is None else translated(plain)

    def _foretold(self, event: Event) -> str:
        times = {
            name: self._times.moment(value)
            for name, value in event.data.items() if isinstance(value, int)
        }  # fmt: skip
        if "handling_us" in times and "full_us" in times:
            said = say(
                "History",
                "said at glue-up: off the rack not before {handling_us},"
                " safe to hit not before {full_us}",
            )
        elif "full_us" in times:
            said = say("History", "said at glue-up: safe to hit not before {full_us}")
        else:
            return ""
        return said.format(**times)

    def _grants(self) -> Iterator[Line]:
        for grant in self._record.grants:
            handling = grant.milestone is Milestone.HANDLING
            glyph = Glyph.HAND if handling else Glyph.TICK
            if handling:
                said = say("History", "may come off the rack")
            else:
                said = translated(ALLOWS[grant.milestone])
            yield self._line(f"grant:{grant.id}", grant.printed_us, glyph, said)
            if grant.withdrawn_us is not None:
                yield self._line(
                    f"withdrawn:{grant.id}", grant.withdrawn_us, Glyph.LOCK,
                    say("History", "permission withdrawn: {allowed}").format(
                        allowed=translated(ALLOWS[grant.milestone])),
                )  # fmt: skip

    def _holds(self) -> Iterator[Line]:
        said_by = {e.at_us: e.by for e in self._record.events if e.kind == "disturbed"}
        for hold in self._record.holds:
            by = said_by.get(hold.from_us) or (hold.by if hold.to_us is None else None)
            glyph = HOLD_GLYPHS[hold.reason]
            yield self._line(f"hold:{hold.id}", hold.from_us, glyph, _hold_said(hold), by)
            if hold.to_us is not None:
                outcome = OUTCOMES.get(hold.outcome or "")
                what = say("History", "HOLD ended: {outcome}").format(
                    outcome=translated(outcome or hold.outcome or "–"))  # fmt: skip
                yield self._line(f"hold ended:{hold.id}", hold.to_us, None, what, hold.by)

    def _corrections(self) -> Iterator[Line]:
        mixed = {f.changed_us for f in self._record.former if f.column == "mixed_us"}
        for number, former in enumerate(self._record.former):
            if former.changed_us in mixed and former.column in ("glued_us", "racked_us"):
                continue  # they went along with the batch
            sentence = _COLUMNS.get((former.table, former.column))
            if sentence is None:
                continue
            what = translated(sentence).format(
                new=self._value(former, former.new), old=self._value(former, former.old)
            )
            yield self._line(f"former:{number}", former.changed_us, None, what, former.by)

    def _value(self, former: Former, value: object) -> str:
        if former.column.endswith("_us") and isinstance(value, int):
            return self._times.moment(value)
        return "–" if value in (None, "") else str(value)

    def _degrees(self, milli_c: int) -> str:
        return translated(format_temperature(milli_c, self._p.unit))


def _hold_said(hold: Hold) -> str:
    said = translated(REASONS[hold.reason])
    if not hold.detail:
        return said
    return say("History", "{reason}, {detail}").format(reason=said, detail=hold.detail)


def _ended(ended_as: str | None) -> Text | str:
    if ended_as == "re-glued":
        return text("History", "pulled, cleaned and glued again")
    if ended_as == "scrapped":
        return text("History", "scrapped")
    return ended_as or "–"


def _at(line: Line) -> tuple[Instant, str]:
    return line.at_us, line.key
