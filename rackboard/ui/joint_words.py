"""Says of one joint what it may bear and when: on its tile, its chip, and to a screen reader."""

from __future__ import annotations

from rackboard.core.bench import Hold, HoldReason, Milestone, Release
from rackboard.core.instants import MINUTE_US, Instant
from rackboard.core.standing import Standing
from rackboard.core.temperature import Unit, format_temperature
from rackboard.core.text import text
from rackboard.core.words import PHRASES, Word
from rackboard.services.board import Board
from rackboard.services.climate import ZoneRecord
from rackboard.ui.language import say, translated
from rackboard.ui.tile import word_text
from rackboard.ui.wording import Times

REASONS = {
    HoldReason.DISTURBED: text("Board", "disturbed"),
    HoldReason.SOFT_SMEAR: text("Board", "soft smear"),
    HoldReason.TOO_HOT: text("Board", "too hot"),
}
_SINCE = {
    Word.WET: text("Board", "while it was soft"), Word.WAIT: text("Board", "before it was hard"),
    Word.BENCH: text("Board", "before it was safe to hit"),
    Word.CURED: text("Board", "after it was hard"),
}  # fmt: skip
_RELEASED_FOR = {
    Milestone.HANDLING: text("Board", "to go off the rack"),
    Milestone.FULL_CURE: text("Board", "to be hit"),
}


class JointWords:
    """The board at one moment, joint by joint.

    Parameters
    ----------
    board : Board
        The services' board, ticked.
    now : int
        The present [µs UTC].
    unit : Unit
        For temperatures.
    """

    def __init__(self, board: Board, now: Instant, unit: Unit) -> None:
        self.board = board
        self.snapshot = board.snapshot
        self.times = Times(board.snapshot.hours, now)
        self.now = now
        self.unit = unit
        self.stale = board.is_stale(now)
        self.records: dict[int, ZoneRecord] = board.records() if board.reckoned else {}

    def temperature(self, milli_c: int) -> str:
        """Return "17.4 °C"."""
        return translated(format_temperature(milli_c, self.unit))

    def time_words(self, standing: Standing) -> tuple[str, str, str, str]:
        """Return caption, time, detail and short detail of a joint."""
        times = self.times
        if standing.hold is not None:
            reason, when = translated(REASONS[standing.hold.reason]), times.moment(
                standing.hold.from_us
            )
            detail = self._held_because(standing, standing.hold)
            if not times.is_today(standing.hold.from_us):
                return "", reason, f"{when}, {detail}", when
            if standing.hold.reason is HoldReason.DISTURBED:
                reason = say("Board", "{reason} {time}").format(reason=reason, time=when)
            return "", reason, detail, detail
        if standing.released is not None:
            return self._released_words(standing.released)
        if standing.outcome is None and standing.base is not Word.CURED:
            working = say("Board", "working it out")
            return "", "…", working, working
        if standing.base is Word.CURED:
            since = times.moment(standing.since_us or 0)
            safe = say("Board", "safe to hit")
            return say("Board", "since"), since, safe, safe
        if standing.base is Word.WET and standing.use_by_us is not None:
            look = standing.use_by_us - 10 * MINUTE_US
            done = standing.batch.looked_us is not None
            detail = say("Board", "last look {time}").format(time=times.limit(look))
            if done:
                detail = say("Board", "looked at")
            elif look <= self.now:
                detail = say("Board", "last look now")
            return say("Board", "use by"), times.limit(standing.use_by_us), detail, detail
        return self._permission_words(standing)

    def _released_words(self, release: Release) -> tuple[str, str, str, str]:
        """Return whose word stands in place of the time, and what for."""
        who = say("Board", "released {initials}").format(initials=release.by)
        what, when = translated(_RELEASED_FOR[release.milestone]), self.times.moment(release.at_us)
        return "", who, f"{what}, {when}", what

    def _held_because(self, standing: Standing, hold: Hold) -> str:
        said = hold.detail or _SINCE[self._base_at(standing, hold.from_us)]
        return translated(said)

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
        ask = say("Board", "type the temperature")
        if standing.unknown and not self._has_record(standing):
            return "", say("Board", "low?"), ask, ask
        if standing.unknown:
            return (
                "", say("Board", "low?"), say("Board", "lowest overnight not known"),
                say("Board", "lowest not known"),
            )  # fmt: skip
        if standing.asked and standing.not_before_us is not None:
            time = f"{self.times.moment(standing.not_before_us)}?"
            return "", time, ask, ask
        if standing.not_before_us is None:
            far = "" if standing.cold else say("Board", "not within 60 days")
            return "", say("Board", "no time"), far, ""
        caption, late = say("Board", "not before"), self.times.moment(standing.not_before_us)
        if standing.probably_us is None:
            return caption, late, "", ""
        probably = self.times.moment(standing.probably_us)
        return (
            caption, late, say("Board", "probably hard by {time}").format(time=probably),
            say("Board", "probably {time}").format(time=probably),
        )  # fmt: skip

    def _has_record(self, standing: Standing) -> bool:
        """Return whether the zone where a joint lies has ever been read."""
        stay = standing.stay
        zone_id = None if stay is None else self.snapshot.places[stay.place_id].zone_id
        record = None if zone_id is None else self.records.get(zone_id)
        return record is not None and record.last is not None

    def accessible(self, place: str, standing: Standing) -> str:
        """Return place, club, phrase and an absolute time, for who hears the tile."""
        caption, time, detail, _ = self.time_words(standing)
        hold, mixed = standing.hold, standing.batch.mixed_us
        phrase = translated(PHRASES[standing.word])
        said = " ".join(part for part in (caption, time) if part)
        if hold is not None:
            phrase = f"{translated(REASONS[hold.reason])}, {self._held_because(standing, hold)}"
            said = say("Board", "since {time}").format(time=self.times.moment(hold.from_us))
        elif standing.released is not None:
            said = f"{said}, {detail}"
        elif mixed is not None and (
            standing.unknown or standing.outcome is None or standing.no_time
        ) and standing.base is not Word.CURED:  # it has no time of its own yet
            since = say("Board", "mixed {time}").format(time=self.times.moment(mixed))
            said = ", ".join(part for part in (said, detail, since) if part.strip("…"))
        accessible = say("Board", "{slot}, {club}, job {job}, {word}: {phrase}. {said}").format(
            slot=place, club=standing.club.name, job=standing.job.number,
            word=word_text(standing.word), phrase=phrase, said=said,
        )  # fmt: skip
        if standing.cold:
            accessible = say("Board", "{said}, cold").format(said=accessible)
        return accessible

    def stale_said(self, place: str, standing: Standing) -> str:
        """Return the same of a board that isn't being updated."""
        return say("Board", "{slot}, {club}, {phrase} since {time}, {said}").format(
            slot=place, club=standing.club.name, phrase=translated(PHRASES[Word.STALE]),
            time=self.times.moment(self.board.ticked_us),
            said=say("Board", "it said {word} then").format(word=word_text(standing.word)),
        )
