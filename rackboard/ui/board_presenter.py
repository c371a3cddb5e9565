"""Turns what the services know into what the board shows."""

from __future__ import annotations

from collections.abc import Iterable

from rackboard.core.bench import Milestone, Place, PlaceKind
from rackboard.core.instants import Instant
from rackboard.core.standing import Standing
from rackboard.core.temperature import Unit, format_temperature
from rackboard.core.text import text
from rackboard.core.words import Word
from rackboard.services.agenda import Due, DueKind, JobStanding, NightQuestion, dues
from rackboard.services.board import Board
from rackboard.ui.board_view import (
    Ask,
    Chip,
    JobRow,
    ReadyBox,
    Strip,
    Temperature,
)
from rackboard.ui.board_view import Due as DueLine
from rackboard.ui.joint_words import JointWords
from rackboard.ui.language import say, translated
from rackboard.ui.tile import Glyph, MotifStyle, Rack, Tile, TileKind, word_text
from rackboard.ui.wording import LONG_DAYS, in_sentence, long_date, short_name

DUE_GLYPHS = {
    DueKind.LAST_LOOK: Glyph.EYE,
    DueKind.USE_BY: Glyph.LOCK,
    DueKind.OFF_THE_RACK: Glyph.HAND,
    DueKind.SAFE_TO_HIT: Glyph.TICK,
}
DUE_TITLES = {
    DueKind.LAST_LOOK: text("Board", "Last look"),
    DueKind.USE_BY: text("Board", "Use by"),
    DueKind.OFF_THE_RACK: text("Board", "Off the rack"),
    DueKind.SAFE_TO_HIT: text("Board", "Safe to hit"),
}
DUE_DETAILS = {
    DueKind.LAST_LOOK: text("Board", "straighten, wipe, check the graphics"),
    DueKind.USE_BY: text("Board", "stop using this batch"),
    DueKind.OFF_THE_RACK: text("Board", "cut and grip; do not hit"),
    DueKind.SAFE_TO_HIT: text("Board", "ferrule, loft and lie, hitting"),
}
SHORT_PLACES = {
    PlaceKind.GRIP_BENCH: text("Board", "grip"), PlaceKind.PICK_UP: text("Board", "pick-up"),
    PlaceKind.OUT: text("Board", "out"),
}  # fmt: skip
_ADVERB = 8  # a time shorter than this has ", late" after it, a longer one before it


class BoardPresenter(JointWords):
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
    taken : iterable of int
        Joints on HOLD whose alarm somebody has taken.
    """

    def __init__(
        self, board: Board, now: Instant, unit: Unit, planned: Iterable[tuple[int, int]] = (),
        taken: Iterable[int] = ()
    ) -> None:
        super().__init__(board, now, unit)
        self.planned = frozenset(planned)
        self.taken = frozenset(taken)

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
            parts.append(air if place.name == zone.name else f"{in_sentence(zone.name)} {air}")
        if place.kind is PlaceKind.RACK:
            said = say("Board", "{taken} of {count} taken").format(taken=taken, count=count)
            parts.append(said if taken else say("Board", "nothing on it yet"))
        elif not taken:
            parts.append(say("Board", "nothing in it"))
        return ", ".join(parts)

    def _air(self, zone_id: int | None) -> str:
        record = None if zone_id is None else self.records.get(zone_id)
        last = None if record is None else record.last
        return "" if last is None else self.temperature(last.temperature_mc)

    def _slot(self, place: Place, slot: int, standing: Standing | None) -> Tile:
        name = place.slot_name(slot)
        if standing is None and (place.id, slot) in self.planned:
            return Tile(
                place.id, slot, name, TileKind.LAID_OUT, detail=say("Board", "a club goes here"),
                accessible=say("Board", "{slot}, a club goes here").format(slot=name),
            )  # fmt: skip
        if standing is None:
            said = say("Board", "{slot}, empty").format(slot=name)
            return Tile(place.id, slot, name, accessible=said)
        club, job = standing.club.name, standing.job.number
        if standing.laid_out:
            return Tile(
                place.id, slot, name, TileKind.LAID_OUT, club=club, job=job,
                detail=say("Board", "laid out, not glued"),
                accessible=say("Board", "{slot}, {club}, job {job}, laid out, not glued").format(
                    slot=name, club=club, job=job
                ),
            )  # fmt: skip
        if self.stale:
            return self._stale_tile(place, slot, name, standing)
        return self._joint_tile(place, slot, name, standing)

    def _stale_tile(self, place: Place, slot: int, name: str, standing: Standing) -> Tile:
        since = self.times.moment(self.board.ticked_us)
        said = say("Board", "it said {word} then").format(word=word_text(standing.word))
        return Tile(
            place.id, slot, name, TileKind.JOINT, Word.STALE, standing.club.name,
            standing.job.number, self._sub(standing),
            time=say("Board", "no word since {time}").format(time=since),
            detail=said, detail_short=said,
            accessible=self.stale_said(name, standing),
        )  # fmt: skip

    def _joint_tile(self, place: Place, slot: int, name: str, standing: Standing) -> Tile:
        caption, time, detail, short = self.time_words(standing)
        other_day = " " in time and time[-1:].isdigit()
        hold = standing.hold
        aside: tuple[str, ...] = ()
        if standing.no_time and standing.cold:
            above = say("Board", "above {temperature}")
            aside = (
                say("Board", "until it is"),
                above.format(temperature=self._warm_enough(standing)),
            )
        motif = MotifStyle.PLAIN
        if hold is not None:
            motif = MotifStyle.HOLD
        elif standing.cold:
            motif = MotifStyle.COLD
        gap = None
        if standing.unknown and hold is None:
            gap = (max(standing.position - 0.2, 0.05), max(standing.position - 0.02, 0.1))
        dots = standing.probably_at, standing.not_before_at
        if (
            standing.base is Word.WET or hold is not None or standing.released is not None
            or None in dots
        ):  # fmt: skip
            dots = (None, None)
        accessible = self.accessible(name, standing)
        return Tile(
            place.id, slot, name, TileKind.JOINT, standing.word, standing.club.name,
            standing.job.number, self._sub(standing), self._air(place.zone_id),
            next_glyph=_next_glyph(standing),
            caption=caption, time=time, reached=standing.base is Word.CURED,
            other_day=other_day, detail=detail, detail_short=short, aside=aside,
            cold=say("Board", "warm it") if standing.cold and hold is None else "",
            hold=None if hold is None else hold.reason,
            untaken=hold is not None and standing.joint.id not in self.taken,
            position=standing.position, motif=motif, gap=gap,
            probably=dots[0], not_before=dots[1],
            accessible=accessible,
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
        minimum_mc = round(standing.batch.sheet.minimum_c * 1000)
        return translated(format_temperature(minimum_mc + u_mc, self.unit, 0))

    # Off the rack, jobs

    def chips(self) -> tuple[Chip, ...]:
        """Return the clubs off the rack that are still curing, at most four."""
        chips = []
        for standing in self.board.standings:
            place = self.snapshot.place_of(standing.club.id)
            if (
                place is None or place.kind not in (PlaceKind.GRIP_BENCH, PlaceKind.PICK_UP)
                or (standing.base is Word.CURED and standing.hold is None) or standing.laid_out
            ):  # fmt: skip
                continue
            caption, time, *_ = self.time_words(standing)
            chips.append(
                Chip(
                    standing.club.id, Word.STALE if self.stale else standing.word,
                    standing.club.name, standing.job.number, place.name,
                    translated(SHORT_PLACES[place.kind]), "" if self.stale else caption,
                    "" if self.stale else time,
                    self.stale_said(place.name, standing) if self.stale
                    else self.accessible(place.name, standing),
                )
            )  # fmt: skip
        if len(chips) > 4:
            more = len(chips) - 3
            said = say("Board", "%n more", "%n more", more)
            chips = [*chips[:3], Chip(0, None, f"+ {more}", "", "", "", "", "", said)]
        return tuple(chips)

    def jobs(self) -> tuple[JobRow, ...]:
        """Return the jobs at work: those with something to come first."""
        rows = []
        for job in self.board.jobs():
            good = self.job_words(job)
            said = say("Board", "job {job}, {customer}, glue good: {time}").format(
                job=job.job.number, customer=job.customer.name, time=good
            )
            if job.job.ready_us is not None:
                said = say("Board", "{said}, READY").format(said=said)
            if not self.stale and (promise := self._promise_words(job)):
                said = f"{said}, {promise}"
            box = ReadyBox.NOT_YET
            if job.job.ready_us is not None:
                box = ReadyBox.PRESSED
            elif job.good and not self.stale:
                box = ReadyBox.GOOD
            rows.append(
                JobRow(
                    job.job.id, job.job.number, job.customer.name, good,
                    job.good or job.good_us is not None or job.held, box,
                    said,
                )
            )  # fmt: skip
        return tuple(rows)

    def job_words(self, job: JobStanding) -> str:
        """Return when the glue of a job is good, in opening-hours words.

        A promise that can't be kept is said; of one that nobody knows, once it is missed.
        """
        if self.stale:
            return "–"
        if job.held:
            return say("Board", "on hold")
        promised = job.job.promised_us
        late = job.at_risk and promised is not None and promised <= self.now
        if job.to_glue:
            words = say("Board", "%n to glue", "%n to glue", job.to_glue)
        elif job.good:
            return say("Times", "now")
        elif job.unknown:
            words = say("Board", "low?")
        elif not self.board.reckoned:
            return "…"
        else:
            late = job.at_risk
            words = (
                say("Board", "no time") if job.good_us is None
                else self.times.counter(job.good_us)
            )  # fmt: skip
        if not late:
            return words
        said = say("Board", "late: {time}")
        if job.good_us is None or len(words) < _ADVERB:
            said = say("Board", "{time}, late")
        return said.format(time=words)

    def _promise_words(self, job: JobStanding) -> str:
        """Return "promised Fri 16:00", and whether it is missed or at risk; "" without one."""
        promised = job.job.promised_us
        if promised is None or job.job.ready_us is not None:
            return ""
        said = say("Board", "promised {time}")
        if job.at_risk:
            said = say("Board", "promised {time}, at risk")
            if promised <= self.now:
                said = say("Board", "promised {time}, missed")
        return said.format(time=self.times.moment(promised))

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
        nothing = DueLine(
            None, "", say("Board", "Nothing due"), say("Board", "the next event will stand here")
        )
        if self.stale:
            nothing = self.not_updating()
        return Strip(
            f"{local:%H:%M}", translated(LONG_DAYS[local.weekday()]), long_date(local),
            upcoming[0] if upcoming else nothing, following, self.ask(), self._temperatures(),
        )  # fmt: skip

    def not_updating(self) -> DueLine:
        """Return what is said in place of the next event while the board isn't updating."""
        return DueLine(
            Glyph.CLOCK, "",
            say("Board", "Not updating since {time}").format(
                time=self.times.moment(self.board.ticked_us)
            ),
            say("Board", "rely on nothing here"),
        )  # fmt: skip

    def coming(self) -> list[Due]:
        """Return what is to come; nothing while the board isn't updating."""
        return [] if self.stale else dues(self.board.standings, self.now)

    def due_line(self, due: Due) -> DueLine:
        """Return one thing to come."""
        places = self.places(due.standings)
        title = f"{translated(DUE_TITLES[due.kind])}, {places}"
        detail = short = translated(DUE_DETAILS[due.kind])
        if due.kind is DueKind.LAST_LOOK:
            short = say("Board", "straighten, wipe")
        return DueLine(
            DUE_GLYPHS[due.kind], self.times.limit(due.at_us), title, detail, title, short
        )

    def _following(self, due: Due) -> DueLine:
        what = (
            say("Board", "{places} off the rack") if due.kind is DueKind.OFF_THE_RACK
            else say("Board", "{places} safe to hit")
        )  # fmt: skip
        late = say("Board", "not before {time}").format(time=self.times.moment(due.at_us))
        return DueLine(
            DUE_GLYPHS[due.kind], "", late, what.format(places=self.places(due.standings))
        )

    def places(self, standings: Iterable[Standing]) -> str:
        """Return "A6 to A9", "A11 and A12" or "4 clubs"."""
        members = list(standings)
        names = [self.snapshot.where(s.club.id) for s in members]
        stays = [s.stay for s in members if s.stay is not None]
        slots = [(stay.place_id, stay.slot) for stay in stays if stay.slot is not None]
        if len(names) == 1:
            return names[0] or say("Board", "%n clubs", "%n club", 1)
        places = {place for place, _ in slots}
        if len(slots) == len(names) and len(places) == 1:
            numbers = sorted(slot for _, slot in slots)
            first = self.snapshot.places[places.pop()]
            if numbers[-1] - numbers[0] == len(numbers) - 1:
                run = (
                    say("Board", "{first} and {last}") if len(numbers) == 2
                    else say("Board", "{first} to {last}")
                )  # fmt: skip
                return run.format(
                    first=first.slot_name(numbers[0]), last=first.slot_name(numbers[-1])
                )
            if len(numbers) <= 3:
                return " ".join(first.slot_name(n) for n in numbers)
        return say("Board", "%n clubs", "%n club", len(names))

    def ask(self) -> Ask | None:
        """Return the question about the night."""
        questions = self.board.questions()
        if not questions:
            return None
        first = questions[0]
        zone = in_sentence(self.snapshot.zones[first.zone_id].name)
        unit = "°C" if self.unit is Unit.C else "°F"
        if first.ahead:
            span = say("Board", "{zone}, until {end}")
            span = span.format(zone=zone, end=self.times.moment(first.to_us))
            return Ask(first.key, say("Board", "Lowest it will get?"), span, unit)
        question = (
            say("Board", "Lowest it got overnight?") if self._is_night(first)
            else say("Board", "Lowest it got?")
        )  # fmt: skip
        span = say("Board", "{zone}, {start} to {end}").format(
            zone=zone, start=self.times.moment(first.from_us), end=self.times.moment(first.to_us)
        )
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
                age = say("Board", "no reading yet") if self.board.reckoned else "…"
                result.append(Temperature(zone.id, zone.name, "", unit, age, f"{zone.name}: {age}"))
                continue
            shown = self.temperature(last.temperature_mc)
            age = self.times.ago(last.at_us)
            result.append(
                Temperature(
                    zone.id, zone.name, shown.split("\N{NO-BREAK SPACE}")[0], unit, age,
                    f"{zone.name}: {shown}, {age}",
                )
            )  # fmt: skip
        return tuple(result)


def _next_glyph(standing: Standing) -> Glyph | None:
    if standing.hold is not None or standing.released is not None:
        return None
    if standing.base is Word.WET:
        return Glyph.LOCK
    if standing.milestone is Milestone.HANDLING:
        return Glyph.HAND
    return Glyph.TICK

