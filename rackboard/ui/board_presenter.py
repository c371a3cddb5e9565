"""Turns what the services know into what the board shows."""

from __future__ import annotations

from collections.abc import Iterable

from rackboard.core.bench import HoldReason, Milestone, Place, PlaceKind
from rackboard.core.instants import MINUTE_US, Instant
from rackboard.core.standing import Standing
from rackboard.core.temperature import Unit, format_temperature
from rackboard.core.words import PHRASES, Word
from rackboard.services.agenda import Due, DueKind, JobStanding, NightQuestion, dues
from rackboard.services.board import Board
from rackboard.services.climate import ZoneRecord
from rackboard.ui.board_view import (
    Ask,
    Chip,
    JobRow,
    ReadyBox,
    Strip,
    Temperature,
)
from rackboard.ui.board_view import Due as DueLine
from rackboard.ui.tile import Glyph, MotifStyle, Rack, Tile, TileKind
from rackboard.ui.wording import LONG_DAYS, LONG_MONTHS, Times, short_name

DUE_GLYPHS = {
    DueKind.LAST_LOOK: Glyph.EYE,
    DueKind.USE_BY: Glyph.LOCK,
    DueKind.OFF_THE_RACK: Glyph.HAND,
    DueKind.SAFE_TO_HIT: Glyph.TICK,
}
DUE_TITLES = {
    DueKind.LAST_LOOK: "Last look",
    DueKind.USE_BY: "Use by",
    DueKind.OFF_THE_RACK: "Off the rack",
    DueKind.SAFE_TO_HIT: "Safe to hit",
}
DUE_DETAILS = {
    DueKind.LAST_LOOK: "straighten, wipe, check the graphics",
    DueKind.USE_BY: "stop using this batch",
    DueKind.OFF_THE_RACK: "cut and grip; do not hit",
    DueKind.SAFE_TO_HIT: "ferrule, loft and lie, hitting",
}
_SHORT_PLACES = {PlaceKind.GRIP_BENCH: "grip", PlaceKind.PICK_UP: "pick-up"}
_FRESH_US = 30 * MINUTE_US


class BoardPresenter:
    """Makes display values from the board as it stands at one moment.

    Parameters
    ----------
    board : Board
        The services' board, ticked.
    now : int
        The present [µs UTC].
    unit : Unit
        For temperatures.
    planned : iterable of tuple
        Place and slot of clubs that are about to be laid out.
    """

    def __init__(
        self, board: Board, now: Instant, unit: Unit, planned: Iterable[tuple[int, int]] = ()
    ) -> None:
        self.board = board
        self.snapshot = board.snapshot
        self.times = Times(board.snapshot.hours, now)
        self.now = now
        self.unit = unit
        self.planned = frozenset(planned)
        self.stale = board.is_stale(now)
        self.records: dict[int, ZoneRecord] = board.records() if board.reckoned else {}

    def temperature(self, milli_c: int) -> str:
        """Return "17.4 °C"."""
        return format_temperature(milli_c, self.unit)

    # Tiles

    def racks(self) -> tuple[Rack, ...]:
        """Return every rack and box with its tiles."""
        by_slot = {
            (s.stay.place_id, s.stay.slot): s
            for s in self.board.standings
            if s.stay is not None and s.stay.slot is not None
        }
        racks = []
        for place in self.snapshot.places.values():
            if place.kind not in (PlaceKind.RACK, PlaceKind.BOX):
                continue
            count = place.rows * place.columns
            tiles = tuple(self._slot(place, n, by_slot.get((place.id, n))) for n in range(count))
            taken = sum(tile.kind is not TileKind.EMPTY for tile in tiles)
            racks.append(
                Rack(
                    place.id, place.name, self._rack_note(place, taken, count), place.rows,
                    place.columns, tiles, place.kind is PlaceKind.BOX,
                )
            )  # fmt: skip
        return tuple(racks)

    def _rack_note(self, place: Place, taken: int, count: int) -> str:
        parts = []
        air = self._air(place.zone_id)
        if air:
            zone = self.snapshot.zones[place.zone_id or 0]
            parts.append(air if place.name == zone.name else f"{zone.name.lower()} {air}")
        if place.kind is PlaceKind.RACK:
            parts.append(f"{taken} of {count} taken" if taken else "nothing on it yet")
        elif not taken:
            parts.append("nothing in it")
        return ", ".join(parts)

    def _air(self, zone_id: int | None) -> str:
        record = None if zone_id is None else self.records.get(zone_id)
        last = None if record is None else record.last
        return "" if last is None else self.temperature(last.temperature_mc)

    def _slot(self, place: Place, slot: int, standing: Standing | None) -> Tile:
        name = place.slot_name(slot)
        if standing is None and (place.id, slot) in self.planned:
            return Tile(
                place.id, slot, name, TileKind.LAID_OUT, detail="a club goes here",
                accessible=f"{name}, a club goes here",
            )  # fmt: skip
        if standing is None:
            return Tile(place.id, slot, name, accessible=f"{name}, empty")
        club, job = standing.club.name, standing.job.number
        if standing.laid_out:
            return Tile(
                place.id, slot, name, TileKind.LAID_OUT, club=club, job=job,
                detail="laid out, not glued",
                accessible=f"{name}, {club}, job {job}, laid out, not glued",
            )  # fmt: skip
        if self.stale:
            return self._stale_tile(place, slot, name, standing)
        return self._joint_tile(place, slot, name, standing)

    def _stale_tile(self, place: Place, slot: int, name: str, standing: Standing) -> Tile:
        since = self.times.moment(self.board.ticked_us)
        said = f"it said {standing.word} then"
        return Tile(
            place.id, slot, name, TileKind.JOINT, Word.STALE, standing.club.name,
            standing.job.number, self._sub(standing), time=f"no word since {since}",
            detail=said, detail_short=said,
            accessible=f"{name}, {standing.club.name}, {PHRASES[Word.STALE]} since {since}, {said}",
        )  # fmt: skip

    def _joint_tile(self, place: Place, slot: int, name: str, standing: Standing) -> Tile:
        caption, time, detail, short = self.time_words(standing)
        other_day = " " in time and time[-1:].isdigit()
        hold = standing.hold
        aside: tuple[str, ...] = ()
        if standing.no_time and standing.cold:
            aside = ("until it is", f"above {self._warm_enough(standing)}")
        motif = MotifStyle.PLAIN
        if hold is not None:
            motif = MotifStyle.HOLD
        elif standing.cold:
            motif = MotifStyle.COLD
        gap = None
        if standing.unknown and hold is None:
            gap = (max(standing.position - 0.2, 0.05), max(standing.position - 0.02, 0.1))
        dots = standing.probably_at, standing.not_before_at
        if standing.base is Word.WET or hold is not None or None in dots:
            dots = (None, None)
        phrase = PHRASES[standing.word] if hold is None else f"{hold.reason}, {detail}"
        said = " ".join(part for part in (caption, time) if part)
        return Tile(
            place.id, slot, name, TileKind.JOINT, standing.word, standing.club.name,
            standing.job.number, self._sub(standing), self._air(place.zone_id),
            next_glyph=None if hold is not None else _next_glyph(standing),
            caption=caption, time=time, reached=standing.base is Word.CURED,
            other_day=other_day, detail=detail, detail_short=short, aside=aside,
            cold="warm it" if standing.cold and hold is None else "",
            hold=None if hold is None else hold.reason, untaken=hold is not None,
            position=standing.position, motif=motif, gap=gap,
            probably=dots[0], not_before=dots[1],
            accessible=f"{name}, {standing.club.name}, job {standing.job.number}, "
            f"{standing.word}: {phrase}. {said}" + (", cold" if standing.cold else ""),
        )  # fmt: skip

    def _sub(self, standing: Standing) -> str:
        mixed = standing.batch.mixed_us
        name = short_name(standing.batch.sheet)
        return name if mixed is None else f"{name}, {self.times.moment(mixed)}"

    def _warm_enough(self, standing: Standing) -> str:
        record = None
        if standing.stay is not None:
            record = self.records.get(self.snapshot.places[standing.stay.place_id].zone_id or 0)
        u_mc = record.last.u_mc if record and record.last else 3000
        return format_temperature(round(standing.batch.sheet.minimum_c * 1000) + u_mc, self.unit, 0)

    def time_words(self, standing: Standing) -> tuple[str, str, str, str]:
        """Return caption, time, detail and short detail of a joint."""
        times = self.times
        if standing.hold is not None:
            reason = f"{standing.hold.reason} {times.moment(standing.hold.from_us)}"
            if standing.hold.reason is not HoldReason.DISTURBED:
                reason = str(standing.hold.reason)
            detail = standing.hold.detail or {
                Word.WET: "while it was soft", Word.WAIT: "before it was hard",
                Word.BENCH: "before it was safe to hit", Word.CURED: "after it was hard",
            }[self._base_at(standing, standing.hold.from_us)]  # fmt: skip
            when = times.moment(standing.hold.from_us)
            if not times.is_today(standing.hold.from_us):
                return "", str(standing.hold.reason), f"{when}, {detail}", when
            return "", reason, detail, detail
        if standing.outcome is None and standing.base is not Word.CURED:
            return "", "…", "working it out", "working it out"
        if standing.base is Word.CURED:
            since = times.moment(standing.since_us or 0)
            return "since", since, "safe to hit", "safe to hit"
        if standing.base is Word.WET and standing.use_by_us is not None:
            look = standing.use_by_us - 10 * MINUTE_US
            done = standing.batch.looked_us is not None
            detail = "looked at" if done else f"last look {times.limit(look)}"
            if look <= self.now and not done:
                detail = "last look now"
            return "use by", times.limit(standing.use_by_us), detail, detail
        return self._permission_words(standing)

    def _base_at(self, standing: Standing, at: Instant) -> Word:
        """Return what a joint was at an instant of the past."""
        grants = self.snapshot.grants.get(standing.joint.id, {})
        for milestone, word in (
            (Milestone.FULL_CURE, Word.CURED), (Milestone.HANDLING, Word.BENCH)
        ):  # fmt: skip
            grant = grants.get(milestone)
            if grant is not None and grant.printed_us <= at:
                return word
        use_by = standing.use_by_us
        return Word.WET if use_by is not None and at < use_by else Word.WAIT

    def _permission_words(self, standing: Standing) -> tuple[str, str, str, str]:
        if standing.unknown and not self._has_record(standing):
            return "", "low?", "type the temperature", "type the temperature"
        if standing.unknown:
            return "", "low?", "lowest overnight not known", "lowest not known"
        if standing.asked and standing.not_before_us is not None:
            time = f"{self.times.moment(standing.not_before_us)}?"
            return "", time, "type the temperature", "type the temperature"
        if standing.not_before_us is None:
            return "", "no time", "" if standing.cold else "not within 60 days", ""
        probably = standing.probably_us
        text = "" if probably is None else self.times.moment(probably)
        return (
            "not before",
            self.times.moment(standing.not_before_us),
            f"probably hard by {text}" if text else "",
            f"probably {text}" if text else "",
        )

    def _has_record(self, standing: Standing) -> bool:
        """Return whether the zone where a joint lies has ever been read."""
        stay = standing.stay
        zone_id = None if stay is None else self.snapshot.places[stay.place_id].zone_id
        record = None if zone_id is None else self.records.get(zone_id)
        return record is not None and record.last is not None

    # Off the rack, jobs

    def chips(self) -> tuple[Chip, ...]:
        """Return the clubs off the rack that are still curing, at most four."""
        chips = []
        for standing in self.board.standings:
            place = self.snapshot.place_of(standing.club.id)
            if (
                place is None or place.kind not in _SHORT_PLACES
                or (standing.base is Word.CURED and standing.hold is None) or standing.laid_out
            ):  # fmt: skip
                continue
            caption, time, *_ = self.time_words(standing)
            chips.append(
                Chip(
                    standing.club.id, Word.STALE if self.stale else standing.word,
                    standing.club.name, standing.job.number, place.name,
                    _SHORT_PLACES[place.kind], "" if self.stale else caption,
                    "" if self.stale else time,
                    f"{place.name}, {standing.club.name}, job {standing.job.number}, "
                    f"{standing.word}: {PHRASES[standing.word]}. {caption} {time}",
                )
            )  # fmt: skip
        if len(chips) > 4:
            more = len(chips) - 3
            chips = [*chips[:3], Chip(0, None, f"+ {more}", "", "", "", "", "", f"{more} more")]
        return tuple(chips)

    def jobs(self) -> tuple[JobRow, ...]:
        """Return the jobs at work: those with something to come first."""
        rows = []
        for job in self.board.jobs():
            good = self.job_words(job)
            box = ReadyBox.NOT_YET
            if job.job.ready_us is not None:
                box = ReadyBox.PRESSED
            elif job.good:
                box = ReadyBox.GOOD
            rows.append(
                JobRow(
                    job.job.id, job.job.number, job.customer.name, good,
                    job.good or job.good_us is not None or job.held, box,
                    f"job {job.job.number}, {job.customer.name}, glue good: {good}"
                    + (", READY" if job.job.ready_us is not None else ""),
                )
            )  # fmt: skip
        return tuple(rows)

    def job_words(self, job: JobStanding) -> str:
        """Return when the glue of a job is good, in opening-hours words."""
        if job.held:
            return "on hold"
        if job.to_glue:
            return f"{job.to_glue} to glue"
        if job.good:
            return "now"
        if job.unknown:
            return "low?"
        if not self.board.reckoned:
            return "…"
        if job.good_us is None:
            return "no time"
        words = self.times.counter(job.good_us)
        if job.at_risk:
            return f"{words}, late" if len(words) < 8 else f"late: {words}"
        return words

    # Strip

    def strip(self) -> Strip:
        """Return the top strip."""
        local = self.times.local(self.now)
        coming = self.coming()
        upcoming = [self.due_line(due) for due in coming[:1]]
        following = None
        if coming:
            rest = [d for d in coming[1:] if d.kind.value >= DueKind.OFF_THE_RACK.value]
            following = self._following(rest[0]) if rest else None
        nothing = DueLine(None, "", "Nothing due", "the next event will stand here")
        return Strip(
            f"{local:%H:%M}", LONG_DAYS[local.weekday()],
            f"{local.day} {LONG_MONTHS[local.month - 1]}",
            upcoming[0] if upcoming else nothing, following, self.ask(), self._temperatures(),
        )  # fmt: skip

    def coming(self) -> list[Due]:
        """Return what is to come; nothing while the board isn't updating."""
        return [] if self.stale else dues(self.board.standings, self.now)

    def due_line(self, due: Due) -> DueLine:
        """Return one thing to come."""
        places = self.places(due.standings)
        title = f"{DUE_TITLES[due.kind]}, {places}"
        return DueLine(
            DUE_GLYPHS[due.kind], self.times.limit(due.at_us), title, DUE_DETAILS[due.kind],
            title, "straighten, wipe" if due.kind is DueKind.LAST_LOOK else DUE_DETAILS[due.kind],
        )  # fmt: skip

    def _following(self, due: Due) -> DueLine:
        what = "off the rack" if due.kind is DueKind.OFF_THE_RACK else "safe to hit"
        return DueLine(
            DUE_GLYPHS[due.kind], "", f"not before {self.times.moment(due.at_us)}",
            f"{self.places(due.standings)} {what}",
        )  # fmt: skip

    def places(self, standings: Iterable[Standing]) -> str:
        """Return "A6 to A9", "A11 and A12" or "4 clubs"."""
        members = list(standings)
        names = [self.snapshot.where(s.club.id) for s in members]
        stays = [s.stay for s in members if s.stay is not None]
        slots = [(stay.place_id, stay.slot) for stay in stays if stay.slot is not None]
        if len(names) == 1:
            return names[0] or "1 club"
        places = {place for place, _ in slots}
        if len(slots) == len(names) and len(places) == 1:
            numbers = sorted(slot for _, slot in slots)
            first = self.snapshot.places[places.pop()]
            if numbers[-1] - numbers[0] == len(numbers) - 1:
                joint = "and" if len(numbers) == 2 else "to"
                return f"{first.slot_name(numbers[0])} {joint} {first.slot_name(numbers[-1])}"
            if len(numbers) <= 3:
                return " ".join(first.slot_name(n) for n in numbers)
        return f"{len(names)} clubs"

    def ask(self) -> Ask | None:
        """Return the question about the night."""
        questions = self.board.questions()
        if not questions:
            return None
        first = questions[0]
        zone = self.snapshot.zones[first.zone_id].name.lower()
        unit = "°C" if self.unit is Unit.C else "°F"
        if first.ahead:
            span = f"{zone}, until {self.times.moment(first.to_us)}"
            return Ask(first.key, "Lowest it will get?", span, unit)
        question = "Lowest it got overnight?" if self._is_night(first) else "Lowest it got?"
        span = f"{zone}, {self.times.moment(first.from_us)} to {self.times.moment(first.to_us)}"
        return Ask(first.key, question, span, unit)

    def _is_night(self, question: NightQuestion) -> bool:
        hours = self.snapshot.hours
        return not hours.open_spans(question.from_us, question.to_us) or (
            not hours.is_open(question.from_us)
        )

    def _temperatures(self) -> tuple[Temperature, ...]:
        unit = "°C" if self.unit is Unit.C else "°F"
        result = []
        for zone in self.snapshot.zones.values():
            record = self.records.get(zone.id)
            last = None if record is None else record.last
            if last is None:
                age = "no reading yet" if self.board.reckoned else "…"
                result.append(Temperature(zone.id, zone.name, "", unit, age, f"{zone.name}: {age}"))
                continue
            text = self.temperature(last.temperature_mc)
            age = self.times.ago(last.at_us)
            result.append(
                Temperature(
                    zone.id, zone.name, text.split("\N{NO-BREAK SPACE}")[0], unit, age,
                    f"{zone.name}: {text}, {age}",
                )
            )  # fmt: skip
        return tuple(result)


def _next_glyph(standing: Standing) -> Glyph:
    if standing.base is Word.WET:
        return Glyph.LOCK
    if standing.milestone is Milestone.HANDLING:
        return Glyph.HAND
    return Glyph.TICK

