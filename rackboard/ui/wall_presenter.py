"""Turns what the board knows into the wall view: one tile for a job and batch."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Sequence
from itertools import groupby

from rackboard.core.bench import HoldReason, PlaceKind
from rackboard.core.standing import Standing
from rackboard.core.temperature import format_temperature
from rackboard.core.words import PHRASES, Word
from rackboard.ui.board_presenter import DUE_GLYPHS, SHORT_PLACES, BoardPresenter
from rackboard.ui.joint_words import REASONS
from rackboard.ui.language import say, spoken, translated
from rackboard.ui.tile import Glyph, word_text
from rackboard.ui.wall_view import WallDue, WallReading, WallTile, WallView
from rackboard.ui.wording import in_sentence

# A club's name is the shop's own and in its language, whichever the window speaks.
_NUMBERED = re.compile(
    r"(?P<n>\d+) ?(?P<kind>iron|wood|hybrid)|(?P<kind2>eisen|holz|hybrid) ?(?P<n2>\d+)",
    re.IGNORECASE,
)
_KINDS = {"eisen": "iron", "holz": "wood"}
_FEW = 2
_LONG_DATE = re.compile(r"(\d+\.? [^\W\d]+) \d\d:\d\d")


def clubs_text(names: Sequence[str]) -> tuple[str, ...]:
    """Return clubs said ever shorter: ("4–7 iron", "4 clubs"), ("driver, 3w", "2 clubs").

    Examples
    --------
    >>> clubs_text(["4 iron", "5 iron", "7 iron"])
    ('4–5, 7 iron', '3 irons', '3 clubs')
    """
    count = len(names)
    if count == 1:
        return (_plain(names[0]), _short(names[0]), say("Board", "%n clubs", "%n club", 1))
    number = say("Board", "%n clubs", "%n club", count)
    found = [_numbered(name) for name in names]
    kinds = {pair[0] for pair in found if pair}
    if len(kinds) == 1 and all(found):
        kind = kinds.pop()
        figures = ", ".join(_runs(sorted({pair[1] for pair in found if pair})))
        run, several = {
            "iron": (say("Clubs", "{number} iron"), say("Clubs", "%n irons", "%n iron", count)),
            "wood": (say("Clubs", "{number} wood"), say("Clubs", "%n woods", "%n wood", count)),
            "hybrid": (
                say("Clubs", "{number} hybrid"), say("Clubs", "%n hybrids", "%n hybrid", count)
            ),
        }[kind]  # fmt: skip
        return (run.format(number=figures), several, number)
    if all("wedge" in name.lower() for name in names):
        return (say("Clubs", "%n wedges", "%n wedge", count), number)
    if count == _FEW:
        return (", ".join(_short(name) for name in names), number)
    return (number,)


def _plain(name: str) -> str:
    """Return "Putter" as "putter", but "PW" as it is; only English names are small."""
    if name[:2].isupper() or spoken() != "en":
        return name
    return name[:1].lower() + name[1:]


def _numbered(name: str) -> tuple[str, int] | None:
    """Return kind and number of "4 iron" or "Eisen 4", None if it is no such club."""
    match = _NUMBERED.fullmatch(name.strip())
    if match is None:
        return None
    kind = (match["kind"] or match["kind2"]).lower()
    return _KINDS.get(kind, kind), int(match["n"] or match["n2"])


def _short(name: str) -> str:
    found = _numbered(name)
    if found is None:
        return _plain(name)
    letter = {
        "iron": say("Clubs", "{number}i"), "wood": say("Clubs", "{number}w"),
        "hybrid": say("Clubs", "{number}h"),
    }[found[0]]  # fmt: skip
    return letter.format(number=found[1])


def _runs(numbers: Sequence[int], prefix: str = "") -> list[str]:
    """Return rising numbers as runs: "A1–A3", "A7"."""
    result = []
    for _, run in groupby(enumerate(numbers), lambda pair: pair[1] - pair[0]):
        members = [number for _, number in run]
        first, last = f"{prefix}{members[0]}", f"{prefix}{members[-1]}"
        result.append(first if len(members) == 1 else f"{first}–{last}")
    return result


class WallPresenter:
    """Makes the wall's display values.

    Parameters
    ----------
    board : BoardPresenter
        The near view's presenter, made for this moment.
    """

    def __init__(self, board: BoardPresenter) -> None:
        self._near = board
        self._snapshot = board.snapshot
        self._times = board.times

    def view(self) -> WallView:
        """Return all that the wall shows."""
        near = self._near
        free, count = self._free()
        return WallView(
            self._times.clock(near.now), self._due(), self._readings(),
            tuple(self._tile(group) for group in self._groups()), free, count,
            self._times.moment(near.board.ticked_us) if near.stale else "",
        )  # fmt: skip

    # Groups

    def _shown(self, standing: Standing) -> bool:
        if standing.laid_out:
            return False
        if standing.hold is not None:
            return True
        place = self._snapshot.place_of(standing.club.id)
        if standing.base is not Word.CURED:
            return True
        if place is None or place.kind is PlaceKind.OUT:
            return False
        return place.kind is not PlaceKind.PICK_UP or standing.job.ready_us is None

    def _groups(self) -> list[list[Standing]]:
        groups: dict[tuple[object, ...], list[Standing]] = defaultdict(list)
        for standing in sorted(filter(self._shown, self._near.board.standings), key=self._order):
            groups[self._key(standing)].append(standing)
        return list(groups.values())

    def _order(self, standing: Standing) -> tuple[int, ...]:
        stay = standing.stay
        if stay is None:
            return (1, 0, 0, 0, standing.club.id)
        sort = self._snapshot.places[stay.place_id].sort
        return (0, sort, stay.place_id, stay.slot or 0, standing.club.id)

    def _key(self, standing: Standing) -> tuple[object, ...]:
        """Return what joints must share to share a tile.

        A batch lying in two zones has two clocks. A disturbed club wants an answer of its own;
        a soft smear or too hot is said of many at once, and so is a person's release.
        """
        hold = standing.hold
        aside: object = None
        if hold is not None:
            single = hold.reason is HoldReason.DISTURBED
            aside = standing.joint.id if single else hold.reason
        elif standing.released is not None:
            aside = standing.released.by
        place = self._snapshot.place_of(standing.club.id)
        zone = None if place is None or standing.base is Word.CURED else place.zone_id
        cold = standing.cold and hold is None
        return (standing.job.id, standing.batch.id, standing.word, aside, cold, zone)

    # Tiles

    def _tile(self, group: Sequence[Standing]) -> WallTile:
        first = group[0]
        word, hold = first.word, first.hold
        places, clubs = self._places(group), clubs_text(self._names(group))
        if self._near.stale:
            since = self._times.moment(self._near.board.ticked_us)
            return WallTile(
                Word.STALE, first.job.number, places, clubs,
                say("Wall", "said {word}").format(word=word_text(word)),
                accessible=say(
                    "Wall", "{places}, {clubs}, job {job}: no word since {time}, "
                    "it said {word} then"
                ).format(
                    places=places[0], clubs=clubs[0], job=first.job.number, time=since,
                    word=word_text(word),
                ),
            )  # fmt: skip
        time, mark = self._time(group)
        cold = first.cold and hold is None
        phrase = translated(PHRASES[word] if hold is None else REASONS[hold.reason])
        if time and hold is None:
            caption = say("Wall", "{time}")
            if mark is Glyph.FROM:
                caption = say("Wall", "not before {time}")
            elif mark is Glyph.UNTIL:
                caption = say("Wall", "use by {time}")
            elif word is Word.CURED:
                caption = say("Wall", "since {time}")
            phrase = f"{phrase}. {caption.format(time=time)}"
        said = say("Wall", "{places}, {clubs}, job {job}, {word}: {phrase}").format(
            places=places[0], clubs=clubs[0], job=first.job.number, word=word_text(word),
            phrase=phrase,
        )  # fmt: skip
        return WallTile(
            word, first.job.number, places, clubs, time, mark, word is Word.CURED, cold,
            None if hold is None else hold.reason, hold is not None,
            say("Board", "{said}, cold").format(said=said) if cold else said,
        )  # fmt: skip

    def _time(self, group: Sequence[Standing]) -> tuple[str, Glyph | None]:
        """Return the time that all joints of a tile keep: the latest permission, the first limit.

        A permission is its late bound or nothing.
        """
        first = group[0]
        if first.hold is not None:
            return translated(REASONS[first.hold.reason]), None
        if first.released is not None:
            said = say("Board", "released {initials}")
            return said.format(initials=first.released.by), None
        if first.base is Word.CURED:
            sinces = [s.since_us for s in group if s.since_us is not None]
            text = self._times.moment(max(sinces)) if sinces else ""
            return _LONG_DATE.sub(r"\1", text), None
        if any(s.outcome is None for s in group):
            return "", None
        limits = [s.use_by_us for s in group if s.use_by_us is not None]
        if first.base is Word.WET and limits:
            return self._times.limit(min(limits)), Glyph.UNTIL
        if any(s.unknown for s in group):
            return say("Board", "low?"), Glyph.FROM
        lates = [s.not_before_us for s in group if s.not_before_us is not None]
        if len(lates) < len(group):
            return ("" if first.cold else say("Board", "no time")), None
        text = self._times.moment(max(lates))
        if any(s.asked for s in group):
            return _LONG_DATE.sub(r"\1", text) + "?", None
        return text, Glyph.FROM

    def _names(self, group: Iterable[Standing]) -> list[str]:
        clubs = {s.club.id: s.club for s in group}
        return [club.name for club in sorted(clubs.values(), key=lambda c: (c.sort, c.id))]

    def _places(self, group: Iterable[Standing]) -> tuple[str, ...]:
        """Return places said ever shorter: ("A1–A3 A7", "A1 +3", "4 clubs")."""
        stays = {s.club.id: s.stay for s in group}
        names: list[str] = []
        slots: dict[int, set[int]] = defaultdict(set)
        for stay in stays.values():
            if stay is None:
                continue
            place = self._snapshot.places[stay.place_id]
            if stay.slot is not None:
                slots[place.id].add(stay.slot + 1)
            elif (short := translated(SHORT_PLACES.get(place.kind, place.name))) not in names:
                names.append(short)
        runs = [
            text
            for place_id, numbers in slots.items()
            for text in _runs(sorted(numbers), self._snapshot.places[place_id].prefix)
        ]
        whole = " ".join([*runs, *names])
        count = len(stays)
        shorter = f"{(runs or names or [''])[0].split('–')[0]} +{count - 1}"
        return (whole,) if count == 1 else (
            whole, shorter, say("Board", "%n clubs", "%n club", count)
        )  # fmt: skip

    # Around the tiles

    def _due(self) -> WallDue | None:
        coming = self._near.coming()
        if not coming:
            return None
        due = coming[0]
        return WallDue(
            DUE_GLYPHS[due.kind], self._times.limit(due.at_us), self._places(due.standings)
        )

    def _readings(self) -> tuple[WallReading, ...]:
        result = []
        for zone in self._snapshot.zones.values():
            record = self._near.records.get(zone.id)
            if record is not None and record.last is not None:
                shown = translated(
                    format_temperature(record.last.temperature_mc, self._near.unit)
                )
                value = shown.split("\N{NO-BREAK SPACE}")[0]
                result.append(WallReading(in_sentence(zone.name).split()[-1], f"{value}°"))
        return tuple(result)

    def _free(self) -> tuple[tuple[str, ...], int]:
        taken = {(s.place_id, s.slot) for s in self._snapshot.stays.values()} | self._near.planned
        texts: list[str] = []
        count = 0
        for place in self._snapshot.places.values():
            numbers = [
                slot + 1
                for slot in range(place.rows * place.columns)
                if (place.id, slot) not in taken
            ]
            count += len(numbers)
            texts += _runs(numbers, place.prefix)
        return tuple(texts), count
