"""The list "Due and happened": alarms first, then what is to come, then today's journal."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from rackboard.core.bench import Event, HoldReason
from rackboard.core.disturbance import said_of
from rackboard.core.instants import DAY_US, Instant
from rackboard.core.standing import Standing
from rackboard.core.text import text
from rackboard.core.words import Word
from rackboard.services.agenda import Due
from rackboard.ui.board_presenter import DUE_DETAILS, DUE_GLYPHS, DUE_TITLES, BoardPresenter
from rackboard.ui.board_view import Happening, HappeningKind
from rackboard.ui.language import say, translated
from rackboard.ui.tile import HOLD_GLYPHS, Glyph, word_text

SHOWN_US = 3 * DAY_US
"""The list goes back so far; the journal itself keeps everything."""

_BATCH = {
    "mixed": text("Happening", "Batch {batch} mixed"),
    "all racked": text("Happening", "Batch {batch} all racked"),
    "last look": text("Happening", "Batch {batch} last look done"),
}
_JOINT = {
    "may come off the rack": text("Happening", "may come off the rack"),
    "safe to hit": text("Happening", "safe to hit"),
    "disturbed": text("Happening", "disturbed"),
    "glued late": text("Happening", "glued late"),
    "permission withdrawn": text("Happening", "permission withdrawn"),
    "moved after its working life": text("Happening", "moved after its working life"),
    "re-aimed": text("Happening", "re-aimed while it was wet"),
    "released": text("Happening", "released"),
    "re-glued": text("Happening", "re-glued"),
    "corrected": text("Happening", "corrected"),
}
_JOB = {
    "ready": text("Happening", "READY"),
    "not ready": text("Happening", "READY taken back"),
    "laid out": text("Happening", "laid out"),
    "whole job safe to hit": text("Happening", "whole job safe to hit"),
}
_GLYPHS = {
    "mixed": Glyph.EYE, "all racked": Glyph.EYE, "last look": Glyph.EYE,
    "may come off the rack": Glyph.HAND, "safe to hit": Glyph.TICK,
    "whole job safe to hit": Glyph.TICK,
    "ready": Glyph.TICK, "disturbed": Glyph.ROD, "permission withdrawn": Glyph.LOCK,
}  # fmt: skip
_WORDS = {Glyph.EYE: Word.WET, Glyph.HAND: Word.BENCH, Glyph.TICK: Word.CURED}


class HappeningPresenter:
    """Makes the lines of the list.

    Parameters
    ----------
    presenter : BoardPresenter
        Of the same moment.
    notes : iterable of str
        What the board has to say of itself ("Desktop notices: not working since 14:05").
    alarms : iterable of Happening, optional
        The open alarms, the most pressing first; without the engine of alerts the HOLDs are.
    disturbed : mapping of int to str, optional
        The keys of the alarms that tell of a joint's HOLD, by joint.
    """

    def __init__(
        self, presenter: BoardPresenter, notes: Iterable[str] = (),
        alarms: Iterable[Happening] | None = None, disturbed: Mapping[int, str] | None = None,
    ) -> None:  # fmt: skip
        self._p = presenter
        self._notes = tuple(notes)
        self._cards = None if alarms is None else list(alarms)
        self._disturbed = disturbed or {}

    def happenings(self, events: Iterable[Event]) -> tuple[Happening, ...]:
        """Return all lines."""
        alarms = self._alarms()
        coming = [self._coming(n, due) for n, due in enumerate(self._p.coming())]
        if self._p.stale:
            coming = [self._not_updating()]
        notes = [
            Happening(f"note:{n}", HappeningKind.HAPPENED, "", Glyph.CLOCK, note, accessible=note)
            for n, note in enumerate(map(translated, self._notes))
        ]
        return (*alarms, *coming, *notes, *self._happened(events))

    def head(self, happenings: Iterable[Happening]) -> str:
        """Return the count beside the head: "1 hold, 10 more today"."""
        happenings = tuple(happenings)
        alarms = sum(h.kind is HappeningKind.ALARM for h in happenings)
        holds = sum(h.kind is HappeningKind.ALARM and h.word is Word.HOLD for h in happenings)
        today = [h for h in happenings if h.kind is HappeningKind.DUE or " " not in h.time]
        rest = sum(h.kind is not HappeningKind.ALARM for h in today) - 1
        parts = []
        if alarms and alarms == holds:
            parts.append(say("Happening", "%n holds", "%n hold", alarms))
        elif alarms:
            parts.append(say("Happening", "%n alarms", "%n alarm", alarms))
        if rest > 0:
            parts.append(say("Happening", "%n more today", "%n more today", rest))
        return ", ".join(parts)

    def _alarms(self) -> list[Happening]:
        alarms = []
        for standing in self._p.board.standings:
            hold = standing.hold
            if hold is None or (self._cards is not None and hold.reason is HoldReason.TOO_HOT):
                continue
            where = self._p.snapshot.where(standing.club.id)
            _, reason, detail, _ = self._p.time_words(standing)
            ask = say("Happening", "Head turned? Say what you did.")
            short_ask = say("Happening", "Say what you did.")
            title = say("Happening", "{slot}, {club}, job {job}").format(
                slot=where, club=standing.club.name, job=standing.job.number
            )
            short = f"{where}, {standing.club.name}"
            said = f"{reason[0].upper()}{reason[1:]}, {detail}."
            alarms.append(
                Happening(
                    self._disturbed.get(standing.joint.id, f"hold:{standing.joint.id}"),
                    HappeningKind.ALARM,
                    self._p.times.moment(hold.from_us), HOLD_GLYPHS[hold.reason], title,
                    (said, ask), short, (said, short_ask), Word.HOLD,
                    say("Happening", "Answer"),
                    f"{word_text(Word.HOLD)} {title}. {said} {ask}",
                )
            )  # fmt: skip
        cards = self._cards or []
        above = [card for card in cards if card.word is Word.HOLD or card.glyph is Glyph.LOCK]
        return [*above, *alarms, *(card for card in cards if card not in above)]

    def _not_updating(self) -> Happening:
        """Return what stands in place of what is due: a stale board knows of nothing."""
        line = self._p.not_updating()
        return Happening(
            "stale", HappeningKind.DUE, "", Glyph.CLOCK, line.title, (line.detail,), line.title,
            (line.detail,), accessible=f"{line.title}. {line.detail}",
        )  # fmt: skip

    def _coming(self, number: int, due: Due) -> Happening:
        places = self._p.places(due.standings)
        title = f"{translated(DUE_TITLES[due.kind])}, {places}"
        glyph = DUE_GLYPHS[due.kind]
        time = self._p.times.limit(due.at_us)
        detail = translated(DUE_DETAILS[due.kind])
        key = f"due:{due.standings[0].joint.id}:{due.kind.value}:{number}"
        return Happening(
            key, HappeningKind.DUE, time, glyph, title, (detail,), title, (detail,),
            _WORDS.get(glyph), accessible=f"{time}, {title}: {detail}",
        )  # fmt: skip

    def _happened(self, events: Iterable[Event]) -> list[Happening]:
        """Return the journal's lines; clubs of one batch and one moment share a line."""
        by_joint = {s.joint.id: s for s in self._p.board.standings}
        groups: dict[tuple[Instant, str, str, int], list[Event]] = {}
        for event in events:
            if event.at_us > self._p.now:
                continue
            batch = 0
            if event.subject == "joint" and event.subject_id in by_joint:
                batch = by_joint[event.subject_id].batch.id
            key = (event.at_us, event.kind, event.subject, batch or event.subject_id)
            groups.setdefault(key, []).append(event)
        lines = []
        for (at, kind, _, _), members in groups.items():
            title = self._title(members, by_joint)
            if not title:
                continue
            time = self._p.times.moment(at)
            glyph = _GLYPHS.get(kind)
            line = f"event:{members[0].id}"
            lines.append(
                Happening(
                    line, HappeningKind.HAPPENED, time, glyph, title, title_short=title,
                    word=None if glyph is None else _WORDS.get(glyph),
                    accessible=f"{time}, {title}",
                )
            )  # fmt: skip
        return lines

    def _title(self, events: list[Event], by_joint: dict[int, Standing]) -> str:
        event = events[0]
        data = event.data
        snapshot = self._p.snapshot
        if event.subject == "batch":
            batch = snapshot.batches.get(event.subject_id)
            name = batch.number if batch else "?"
            if event.kind == "corrected":
                was, is_ = data.get("was_us"), data.get("is_us")
                if isinstance(was, int) and isinstance(is_, int):
                    moment = self._p.times.moment
                    return say("Happening", "Batch {batch}: mixed {new}, was {old}").format(
                        batch=name, new=moment(is_), old=moment(was)
                    )
                return say("Happening", "Batch {batch} corrected").format(batch=name)
            kept = _BATCH.get(event.kind)
            return "" if kept is None else translated(kept.format(batch=name))
        if event.subject == "joint":
            members = [by_joint[e.subject_id] for e in events if e.subject_id in by_joint]
            if not members:
                return ""
            clubs = say("Board", "%n clubs", "%n club", len(members))
            if len(members) == 1:
                clubs = members[0].club.name
            what: str = _JOINT.get(event.kind, "")
            if event.kind == "hold ended":
                what = text("Happening", "hold ended: {outcome}").format(
                    outcome=said_of(str(data.get("outcome")))
                )
            if not what:
                return ""
            return say("Happening", "Job {job}, {clubs}: {what}").format(
                job=members[0].job.number, clubs=clubs, what=translated(what)
            )
        if event.subject in ("job", "club"):
            return self._work_title(event)
        if event.subject == "zone" and event.subject_id in snapshot.zones:
            return self._zone_title(event, snapshot.zones[event.subject_id].name)
        return ""

    def _work_title(self, event: Event) -> str:
        snapshot = self._p.snapshot
        if event.subject == "job":
            job = snapshot.jobs.get(event.subject_id)
            what = _JOB.get(event.kind)
            if job is None or what is None:
                return ""
            return say("Happening", "Job {job}: {what}").format(
                job=job.number, what=translated(what)
            )
        club = snapshot.clubs.get(event.subject_id)
        place_id, slot = event.data.get("place"), event.data.get("slot")
        if club is None or not isinstance(place_id, int) or place_id not in snapshot.places:
            return ""
        to = snapshot.places[place_id].slot_name(slot if isinstance(slot, int) else None)
        return say("Happening", "{club} moved to {place}").format(club=club.name, place=to)

    def _zone_title(self, event: Event, zone: str) -> str:
        data = event.data
        mc = data.get("mc")
        if event.kind == "temperature typed" and isinstance(mc, int):
            return say("Happening", "{zone}: {temperature} typed").format(
                zone=zone, temperature=self._p.temperature(mc)
            )
        if event.kind == "low said" and isinstance(mc, int):
            return say("Happening", "{zone}: lowest {temperature} said").format(
                zone=zone, temperature=self._p.temperature(mc)
            )
        new = data.get("new")
        if event.kind == "record imported" and isinstance(new, int):
            return say(
                "Happening", "{zone}: %n readings imported", "{zone}: %n reading imported", new
            ).format(zone=zone)
        return ""

