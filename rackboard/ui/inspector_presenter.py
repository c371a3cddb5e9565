"""The selected slot in full: times with their reasons, curve, facts, what can be done."""

from __future__ import annotations

from rackboard.core.bench import JointKind, Milestone, Parts, PlaceKind
from rackboard.core.cure.forecast import printed_time
from rackboard.core.instants import DAY_US, MINUTE_US, Instant
from rackboard.core.standing import Standing
from rackboard.core.temperature import format_temperature
from rackboard.core.words import SHORT_PHRASES, Word
from rackboard.services.climate import ZoneRecord
from rackboard.services.portrait import Portrait, celsius, portrait
from rackboard.ui.board_presenter import BoardPresenter
from rackboard.ui.inspector_view import (
    Action,
    CurvePoint,
    CurveView,
    Day,
    InspectorView,
    Level,
    Mark,
    Permission,
    Reason,
)
from rackboard.ui.tile import Glyph
from rackboard.ui.wording import DAYS, both_clocks

_TOP = 1.0  # conversion at the top of the picture
_ROOM_K = 3.0  # of temperature above and below the record
_SOONER_MIN = 30 * MINUTE_US
_MOVED_US = 10 * MINUTE_US  # a time that moves by more is said with what it was


class InspectorPresenter:
    """Makes the inspector's values for one joint or an empty slot.

    Parameters
    ----------
    presenter : BoardPresenter
        Of the same moment.
    """

    def __init__(self, presenter: BoardPresenter) -> None:
        self._p = presenter
        self._times = presenter.times

    def empty(self, place_id: int, slot: int) -> InspectorView:
        """Return an empty slot."""
        name = self._p.snapshot.places[place_id].slot_name(slot)
        return InspectorView(
            name, "empty", None, lines=("Enter lays a club out here.",),
            actions=(Action("lay out", "Lay out\na job"),
                     Action("temperature", "Type a\ntemperature")),
            accessible=f"{name}, empty",
        )  # fmt: skip

    def joint(self, standing: Standing) -> InspectorView:
        """Return a joint."""
        where = self._p.snapshot.where(standing.club.id)
        job, batch = standing.job, standing.batch
        customer = self._p.snapshot.customers.get(job.customer_id)
        name = customer.name if customer and customer.name else "customer erased"
        mixed = "not mixed yet"
        if batch.mixed_us is not None:
            mixed = f"mixed {self._times.moment(batch.mixed_us)}"
        lines = (
            f"Job {job.number}, {name}. Batch {batch.number}, {mixed}",
            f"{both_clocks(batch.sheet)} by its sheet",
        )
        if standing.laid_out:
            return InspectorView(
                where, standing.club.name, None, lines=lines,
                actions=(Action("mix", "Mixed\nnow"), Action("move", "Move to\nslot…"),
                         Action("temperature", "Type a\ntemperature")),
                accessible=f"{where}, {standing.club.name}, laid out",
            )  # fmt: skip
        picture = portrait(self._p.board, standing)
        sooner, sooner_short = self._sooner(standing)
        return InspectorView(
            where, standing.club.name, Word.STALE if self._p.stale else standing.word,
            None if standing.hold is None else standing.hold.reason, lines,
            () if self._p.stale else self._permissions(standing),
            self._reasons(standing, picture),
            None if picture is None or self._p.stale else self._curve(standing, picture),
            self._facts(standing), sooner, sooner_short, self._actions(standing),
            f"{where}, {standing.club.name}, {standing.word}: {SHORT_PHRASES[standing.word]}",
        )  # fmt: skip

    def _permissions(self, standing: Standing) -> tuple[Permission, ...]:
        result = []
        outcome = standing.outcome
        for milestone, glyph, name in (
            (Milestone.HANDLING, Glyph.HAND, "off the rack"),
            (Milestone.FULL_CURE, Glyph.TICK, "safe to hit"),
        ):
            grant = self._p.snapshot.grants.get(standing.joint.id, {}).get(milestone)
            if standing.hold is not None:  # nobody may trust what it has earned meanwhile
                result.append(Permission(glyph, name, "", "on hold", False))
                continue
            if grant is not None:
                time = self._times.moment(grant.printed_us)
                result.append(Permission(glyph, name, "since", time, reached=True))
                continue
            if outcome is None:
                continue
            forecast = outcome.forecast
            bounds = forecast.handling if milestone is Milestone.HANDLING else forecast.full_cure
            if bounds is None:
                continue
            probably = ""
            if bounds.expected is not None and milestone is standing.milestone:
                probably = f"probably hard by {self._times.moment(bounds.expected)}"
            if standing.unknown:
                result.append(Permission(glyph, name, "", "low?", False, probably))
            elif bounds.late is None:
                result.append(Permission(glyph, name, "", "no time", False, probably))
            else:
                time = self._times.moment(printed_time(bounds.late))
                result.append(Permission(glyph, name, "not before", time, False, probably))
        return tuple(result)

    def _reasons(self, standing: Standing, picture: Portrait | None) -> tuple[Reason, ...]:
        outcome = standing.outcome
        silent = self._p.stale or standing.hold is not None
        if picture is None or outcome is None or standing.milestone is None or silent:
            return ()
        stepwise = standing.milestone is Milestone.HANDLING and outcome.forecast.handling
        bounds = outcome.forecast.handling if stepwise else outcome.forecast.full_cure
        label = picture.label_handling_us if stepwise else picture.label_full_us
        if bounds is None or label is None:
            return ()
        sheet = standing.batch.sheet
        reference = format_temperature(round(sheet.reference_c * 1000), self._p.unit, 0)
        air = self._air(standing) or "no reading"
        room = "no time" if bounds.expected is None else self._times.moment(bounds.expected)
        margin = "no time" if bounds.late is None else self._times.moment(printed_time(bounds.late))
        if standing.unknown:
            margin = "low?"
        return (
            Reason("the label", self._times.moment(label), f"at {reference}", f"at {reference}"),
            Reason("this room", room, f"by its record, now {air}", f"now {air}"),
            Reason("with the margin", margin, self._margin_words(standing), "not before"),
        )

    def _margin_words(self, standing: Standing) -> str:
        record = self._record(standing)
        if record is None or record.last is None:
            return "type the temperature"
        last = record.last
        low = format_temperature(last.temperature_mc - last.u_mc, self._p.unit)
        how = "read" if last.source.automatic else str(last.source)
        text = f"{how}, taken as {low}"
        if standing.cold:
            least_mc = round(standing.batch.sheet.minimum_c * 1000)
            minimum = format_temperature(least_mc, self._p.unit, 0)
            text += f": below the sheet's {minimum} it counts for less"
        was = self._p.board.foretold(standing)
        now_said = standing.not_before_us
        if was is not None and now_said is not None and abs(was - now_said) > _MOVED_US:
            text = f"was {self._times.moment(was)} at glue-up; {text}"
        return text

    def _curve(self, standing: Standing, picture: Portrait) -> CurveView:
        start, end = picture.start_us, picture.end_us
        span = end - start

        def x(instant: Instant) -> float:
            return min(max((instant - start) / span, 0.0), 1.0)

        points = tuple(
            CurvePoint(x(s.at_us), s.expected / _TOP, min(s.late, s.expected) / _TOP)
            for s in picture.samples
        )
        levels = [Level(picture.full / _TOP, "safe to hit")]
        outcome = standing.outcome
        assert outcome is not None
        forecast = outcome.forecast
        marks = []
        if forecast.handling is not None:
            levels.append(Level(picture.handling / _TOP, "off the rack"))
            marks.append((picture.handling, forecast.handling))
        marks.append((picture.full, forecast.full_cure))
        drawn = tuple(
            Mark(
                level / _TOP, x(bounds.expected), x(bounds.late),
                self._times.moment(bounds.expected),
                self._times.moment(printed_time(bounds.late)),
            )
            for level, bounds in marks
            if bounds.expected is not None and bounds.late is not None
            and bounds.late <= end and not standing.unknown and standing.hold is None
        )  # fmt: skip
        minimum = standing.batch.sheet.minimum_c
        temps = [celsius(t) for s in picture.air for t in s.expected] or [minimum]
        low, high = min(*temps, minimum) - _ROOM_K, max(*temps, minimum) + _ROOM_K

        def y(temp_c: float) -> float:
            return (temp_c - low) / (high - low)

        record: list[tuple[tuple[float, float], ...]] = []
        held: list[tuple[float, float]] = []
        gaps: list[tuple[float, float]] = []
        line: list[tuple[float, float]] = []
        for stretch in picture.air:
            ends = (
                (x(stretch.start_us), y(celsius(stretch.expected[0]))),
                (x(stretch.end_us), y(celsius(stretch.expected[1]))),
            )
            if stretch.gap:
                gaps.append((ends[0][0], ends[1][0]))
                if line:
                    record.append(tuple(line))
                line = []
            elif stretch.end_us <= picture.record_end_us:
                line += ends
            else:
                held += ends
        if line:
            record.append(tuple(line))
        now = self._p.now if start <= self._p.now <= end else None
        unit_minimum = format_temperature(round(minimum * 1000), self._p.unit, 0)
        air = self._air(standing)
        return CurveView(
            points, None if now is None else x(now), self._times.clock(self._p.now),
            tuple(levels), drawn,
            wet_until=x(outcome.use_by_us) if outcome.use_by_us else 0.05,
            still_at=drawn[0].not_before if len(drawn) > 1 else 0.3,
            hard_at=drawn[-1].not_before if drawn else 0.95,
            record=tuple(record), held=tuple(held), minimum=y(minimum),
            minimum_text=f"sheet minimum {unit_minimum}", minimum_short=f"minimum {unit_minimum}",
            held_text=f"reckoned on, from {air}" if held and air else "",
            gaps=tuple(gaps), days=tuple(self._days(start, end)),
        )  # fmt: skip

    def _days(self, start: Instant, end: Instant) -> list[Day]:
        days = []
        step = 1 if end - start < 8 * DAY_US else 2
        midnight = self._times.hours.at(self._times.local(start).date(), 24 * 60)
        while midnight < end:
            local = self._times.local(midnight)
            place = (midnight - start) / (end - start)
            if place < 0.93:
                days.append(Day(place, DAYS[local.weekday()]))
            midnight = self._times.hours.at(local.date(), step * 24 * 60)
        return days

    def _facts(self, standing: Standing) -> tuple[tuple[str, str], ...]:
        joint = standing.joint
        lag = joint.lag_s / 60
        kind = str(joint.kind)
        facts = [("Joint", f"{kind}, lag {lag:.0f} min" if lag else kind)]
        if joint.parts is Parts.COLD and joint.parts_mc is not None:
            facts.append(("Parts", f"cold, {self._p.temperature(joint.parts_mc)}"))
        elif joint.kind is not JointKind.TIP_WEIGHT and joint.graphics:
            facts.append(("Graphics", joint.graphics))
        if standing.batch.lot:
            facts.append(("Lot", standing.batch.lot))
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
        air = format_temperature(round(found.temperature_c * 1000), self._p.unit, 0)
        until = self._times.moment(found.not_before_us)
        stay = f"{found.hours} h in the {box.name.lower()}"
        start = self._times.clock(found.from_us)
        return (
            f"{stay} at {air} from {start}: not before {until}",
            f"{stay}: not before {until}",
        )

    def _actions(self, standing: Standing) -> tuple[Action, ...]:
        place = self._p.snapshot.place_of(standing.club.id)
        on_rack = place is not None and place.kind in (PlaceKind.RACK, PlaceKind.BOX)
        if standing.hold is not None:
            first = Action("answer", "Answer")
        elif standing.batch.racked_us is None and standing.base is Word.WET:
            first = Action("racked", "All\nracked")
        else:
            first = Action("disturb", "Disturbed")
        firm = standing.base in (Word.BENCH, Word.CURED) and standing.hold is None
        off = Action("take off", "Take off\nthe rack", small=False, enabled=on_rack and firm)
        if not on_rack:
            off = Action("out", "Out of\nthe shop", small=False)
        return (
            first, Action("move", "Move to\nslot…"), off,
            Action("temperature", "Type a\ntemperature", small=False),
            Action("more", "More\nactions…", large=False),
        )  # fmt: skip

    def _record(self, standing: Standing) -> ZoneRecord | None:
        stay = standing.stay
        if stay is None:
            return None
        return self._p.records.get(self._p.snapshot.places[stay.place_id].zone_id or 0)

    def _air(self, standing: Standing) -> str:
        record = self._record(standing)
        if record is None or record.last is None:
            return ""
        return self._p.temperature(record.last.temperature_mc)

