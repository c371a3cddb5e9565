"""Display values for tests of the board; every name, job and time in them is invented."""

from __future__ import annotations

from rackboard.core.bench import HoldReason
from rackboard.core.words import Word
from rackboard.ui.board_view import (
    Ask,
    BoardView,
    Chip,
    Due,
    Happening,
    HappeningKind,
    JobRow,
    ReadyBox,
    Strip,
    Temperature,
)
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
from rackboard.ui.tile import Glyph, MotifStyle, Rack, Tile, TileKind

RACK, BOX = 1, 2


def empty(place: int, slot: int) -> Tile:
    name = f"{'AB'[place - 1]}{slot + 1}"
    return Tile(place, slot, name, accessible=f"{name}, empty")


def wait(place: int, slot: int, time: str = "20:40", other_day: bool = False) -> Tile:
    name = f"{'AB'[place - 1]}{slot + 1}"
    return Tile(
        place, slot, name, TileKind.JOINT, Word.WAIT, "50° wedge", "317", "half-hour, 12:05",
        "17.4 °C", Glyph.HAND, "not before", time, other_day=other_day,
        detail="probably hard by 20:20", detail_short="probably 20:20", position=0.35,
        probably=0.44, not_before=0.58,
        accessible=f"{name}, 50° wedge, do not move, not before {time}",
    )  # fmt: skip


def hold(place: int, slot: int, *, untaken: bool = True) -> Tile:
    name = f"{'AB'[place - 1]}{slot + 1}"
    return Tile(
        place, slot, name, TileKind.JOINT, Word.HOLD, "Putter", "315", "half-hour, 12:40",
        "17.4 °C", time="disturbed 14:19", detail="before it was hard", position=0.3,
        hold=HoldReason.DISTURBED, untaken=untaken, motif=MotifStyle.HOLD,
        accessible=f"{name}, putter, on hold: disturbed 14:19",
    )  # fmt: skip


def worst_tiles() -> tuple[Tile, ...]:
    """The longest texts that the presenter makes, in every state."""
    joint = TileKind.JOINT
    dates = ("toughened, Wed 20:55", "-10.4 °C")
    names = ("Sand wedge", "2048")
    return (
        Tile(1, 0, "A15", joint, Word.WET, *names, *dates, Glyph.LOCK, "use by", "20:55",
             detail="last look 20:45", position=0.1),
        Tile(1, 1, "A15", joint, Word.WAIT, *names, *dates, Glyph.HAND, "not before", "20:55",
             detail="probably hard by Wed 20:55", detail_short="probably Wed 20:55",
             position=0.3, probably=0.4, not_before=0.58),
        Tile(1, 2, "A15", joint, Word.BENCH, *names, *dates, Glyph.TICK, "not before",
             "Wed 20:55", other_day=True, detail="probably hard by Wed 20:55",
             detail_short="probably Wed 20:55", position=0.7),
        Tile(1, 3, "A15", joint, Word.BENCH, *names, *dates, Glyph.TICK, "not before", "low?",
             detail="lowest overnight not known", detail_short="lowest not known",
             position=0.8, gap=(0.6, 0.7)),
        Tile(1, 4, "A15", joint, Word.WAIT, *names, *dates, Glyph.HAND, "not before", "20:40?",
             detail="probably hard by 20:20", detail_short="probably 20:20", position=0.3),
        Tile(1, 5, "A15", joint, Word.WAIT, *names, *dates, Glyph.HAND, time="no time",
             aside=("until it is", "above 18 °C"), cold="warm it", position=0.4,
             motif=MotifStyle.COLD),
        Tile(1, 6, "A15", joint, Word.BENCH, *names, *dates, Glyph.TICK, "not before",
             "Wed 20:55", other_day=True, cold="warm it", position=0.7, motif=MotifStyle.COLD),
        Tile(1, 7, "A15", joint, Word.CURED, *names, *dates, Glyph.TICK, "since", "Wed 20:55",
             reached=True, other_day=True, detail="safe to hit", position=1.0),
        Tile(1, 8, "A15", joint, Word.HOLD, *names, *dates, time="disturbed 20:40",
             detail="before it was hard", hold=HoldReason.DISTURBED, untaken=True,
             motif=MotifStyle.HOLD, position=0.3),
        Tile(1, 9, "A15", joint, Word.HOLD, *names, *dates, time="soft smear",
             detail="batch smear soft at 20:40", detail_short="smear soft 20:40",
             hold=HoldReason.SOFT_SMEAR, motif=MotifStyle.HOLD, position=0.3),
        Tile(1, 10, "A15", joint, Word.STALE, *names, *dates, time="no word since 20:40",
             detail="it said BENCH then", motif=MotifStyle.NONE),
        Tile(1, 11, "A15", TileKind.LAID_OUT, None, *names, detail="laid out, batch 12"),
        Tile(1, 12, "A15"),
    )  # fmt: skip


def racks(rows: int = 3) -> tuple[Rack, ...]:
    tiles = [wait(RACK, 0), hold(RACK, 1), *(empty(RACK, slot) for slot in range(2, 5 * rows))]
    box = [wait(BOX, 0), *(empty(BOX, slot) for slot in range(1, 4))]
    return (
        Rack(RACK, "Rack A", "room 17.4 °C, 2 of 15 taken", rows, 5, tuple(tiles)),
        Rack(BOX, "Warm box", "31.8 °C, 1 of 4 taken", 1, 4, tuple(box), box=True),
    )


def curve() -> CurveView:
    points = tuple(
        CurvePoint(x / 60, 0.97 * (1 - (1 - x / 60) ** 4), 0.95 * (1 - (1 - x / 60) ** 3))
        for x in range(61)
    )
    return CurveView(
        points, 0.41, "14:26", (Level(0.93, "safe to hit"), Level(0.62, "off the rack")),
        (Mark(0.62, 0.21, 0.28, "Wed 19:30", "Wed 23:40"),
         Mark(0.93, 0.52, 0.97, "Fri 02:00", "Sat 07:55")),
        record=(((0.0, 0.6), (0.05, 0.7)), ((0.1, 0.6), (0.41, 0.7))), held=((0.41, 0.7), (1, 0.7)),
        minimum=0.4, minimum_text="sheet minimum 12 °C", minimum_short="minimum 12 °C",
        held_text="held at 17.4 °C", gaps=((0.05, 0.1),), days=(Day(0.2, "Thu"), Day(0.6, "Fri")),
    )  # fmt: skip


def inspector() -> InspectorView:
    return InspectorView(
        "A15", "Sand wedge", Word.BENCH, None,
        ("Job 2048, R. Okonjo. Batch 12, mixed Wed 20:40", "60 min to use, 24 h to hit"),
        (Permission(Glyph.HAND, "off the rack", "since", "Wed 20:40", True),
         Permission(Glyph.TICK, "safe to hit", "not before", "Wed 20:55", False)),
        (Reason("The label", "Wed 20:40", "24 h at 25 °C"),
         Reason("This room", "Wed 20:40", "probably; 17.4 °C now, 14.1 °C last night",
                "17.4 °C, 14.1 °C at night"),
         Reason("With margin", "Wed 20:55", "the sheet's range, 1 °C of the sensor",
                "range, 1 °C of sensor")),
        curve(), (("Head", "steel, lag 22 min"), ("Graphics", "12 o'clock")),
        "not before 20:40 if it goes to the warm box now", "not before 20:40, in the warm box",
        (Action("disturbed", "Disturbed"), Action("move", "Move to\nslot…"),
         Action("off", "Take off\nthe rack", small=False),
         Action("temperature", "Type a\ntemperature", small=False),
         Action("more", "More\nactions…", large=False)),
        "A15, sand wedge, job 2048",
    )  # fmt: skip


def strip(clock: str = "20:40") -> Strip:
    return Strip(
        clock, "Wednesday", "24 December",
        Due(Glyph.EYE, "20:45", "Last look, A11 and A12", "in 5 min: straighten, wipe, graphics",
            "Last look, A11, A12", "straighten, wipe"),
        Due(Glyph.HAND, "20:55", "not before 20:55", "B1 off the rack"),
        Ask("2:7", "Lowest it got overnight?", "warm box, 03:10 to 06:40", "°C", "13"),
        (Temperature(1, "Room", "-10.4", "°C", "13 min ago"),
         Temperature(2, "Warm box", "31.8", "°C", "13 min ago")),
    )  # fmt: skip


def happenings() -> tuple[Happening, ...]:
    return (
        Happening("h1", HappeningKind.ALARM, "14:19", Glyph.ROD, "HOLD  A13, putter, job 315",
                  ("Disturbed 14:19, before it was hard.", "Head turned? Say what you did."),
                  "HOLD  A13, putter", ("Disturbed 14:19, not yet hard.", "Say what you did."),
                  Word.HOLD, "Answer", "HOLD, A13, putter: disturbed 14:19"),
        Happening("d1", HappeningKind.DUE, "20:45", Glyph.EYE, "Last look, A11 and A12",
                  ("straighten, wipe, check the graphics",), "Last look, A11, A12", (), Word.WET,
                  accessible="20:45, last look, A11 and A12"),
        Happening("x1", HappeningKind.HAPPENED, "14:06", Glyph.TICK, "READY pressed, job 309",
                  accessible="14:06, READY pressed for job 309"),
    )  # fmt: skip


def board_view(rows: int = 3) -> BoardView:
    chips = tuple(
        Chip(number, Word.BENCH, "Sand wedge", "2048", "pick-up corner", "pick-up",
             "not before", "20:40", f"club {number}, off the rack, do not hit")
        for number in range(1, 4)
    )  # fmt: skip
    jobs = tuple(
        JobRow(number, str(2040 + number), "Sandqvist", "Fri at opening", True, ready,
               f"job {2040 + number}, glue good Friday at opening")
        for number, ready in enumerate((*ReadyBox, ReadyBox.GOOD, ReadyBox.NOT_YET), 1)
    )  # fmt: skip
    return BoardView(
        strip(), racks(rows), chips, jobs, "1 hold, 10 more today", happenings(), inspector()
    )
