"""Racks, places and zones: added, changed and removed without touching what is on record."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from helpers.shop import Shop, make_shop
from helpers.store import contents
from rackboard.core.bench import Place, PlaceKind
from rackboard.core.errors import InputError, RackboardError
from rackboard.services.furnishing import Furnishing
from rackboard.services.slots import Keep
from rackboard.services.snapshot import CONTRAST, DISTANCE, LANGUAGE, MOTION, PITCH
from rackboard.store.changes import ChangeSet


@pytest.fixture
def shop() -> Shop:
    made = make_shop("Mon 09:00")
    made.type(21.0)
    return made


def furnishing(shop: Shop) -> Furnishing:
    return Furnishing(shop.store, shop.clock, "KT")


def rack(shop: Shop) -> Place:
    return shop.board.snapshot.places[shop.rack.id]


def where(shop: Shop) -> list[str]:
    return sorted(
        (shop.board.snapshot.where(club) for club in shop.board.snapshot.clubs),
        key=lambda name: (name[0], int(name[1:]) if name[1:].isdigit() else 0),
    )


ACTS: dict[str, Callable[[Furnishing, Shop], ChangeSet]] = {
    "add": lambda f, s: f.add_place(Place(0, s.room, PlaceKind.RACK, "Rack C", "C", 2, 6, 0)),
    "change": lambda f, s: f.change_place(rack(s)._replace(name="Bench rack", prefix="R")),
    "columns": lambda f, s: f.change_place(rack(s)._replace(columns=6), Keep.PLACES),
    "order": lambda f, s: f.shift_place(s.rack.id, 1),
    "remove": lambda f, s: f.remove_place(s.box.id),
    "zone": lambda f, s: f.add_zone("Back room"),
    "rename zone": lambda f, s: f.rename_zone(s.room, "Shop"),
    "zone order": lambda f, s: f.shift_zone(s.room, 1),
    "contrast": lambda f, s: f.set_contrast("on"),
    "motion": lambda f, s: f.set_reduced_motion(True),
    "viewing": lambda f, s: f.set_viewing(4.5, None),
    "language": lambda f, s: f.set_language("de"),
}


@pytest.mark.parametrize("name", ACTS)
def test_every_act_is_one_act_and_is_undone(shop: Shop, name: str) -> None:
    shop.lay_out(8)
    before = contents(shop.store)
    changes = ACTS[name](furnishing(shop), shop)
    shop.do(changes)
    assert contents(shop.store) != before
    assert changes.undoable
    assert changes.by == "KT"
    shop.undo()
    assert contents(shop.store) == before


def test_other_columns_leave_each_club_at_its_number(shop: Shop) -> None:
    shop.lay_out(8)
    shop.do(furnishing(shop).change_place(rack(shop)._replace(columns=6)))
    assert where(shop) == [f"A{n}" for n in range(1, 9)]


@pytest.mark.parametrize(
    ("columns", "expected"),
    [(6, ["A1", "A2", "A3", "A4", "A5", "A7", "A8", "A9"]),
     (7, ["A1", "A2", "A3", "A4", "A5", "A8", "A9", "A10"])],
)  # fmt: skip
def test_numbers_painted_anew_keep_row_and_column(
    shop: Shop, columns: int, expected: list[str]
) -> None:
    shop.lay_out(8)
    wider = rack(shop)._replace(columns=columns)
    assert furnishing(shop).renames(wider) == ("A6", f"A{columns + 1}")
    shop.do(furnishing(shop).change_place(wider, Keep.PLACES))
    assert where(shop) == expected
    # and back again, with two clubs meeting nowhere on the way
    shop.do(furnishing(shop).change_place(rack(shop)._replace(columns=5), Keep.PLACES))
    assert where(shop) == [f"A{n}" for n in range(1, 9)]


def test_numbers_painted_anew_leave_the_past_as_it_was_called(shop: Shop) -> None:
    (joint,) = shop.glue(["putter"])
    club = shop.standing(joint).club.id
    shop.do(shop.bench.move(club, shop.rack.id, 7))
    shop.clock.advance(minutes=1)
    shop.do(shop.bench.move(club, shop.rack.id, 8))
    shop.do(furnishing(shop).change_place(rack(shop)._replace(columns=6), Keep.PLACES))
    assert [stay.slot for stay in shop.store.work.stays([club])][-2:] == [7, 9]


def test_a_rack_is_not_made_smaller_than_its_clubs(shop: Shop) -> None:
    shop.lay_out(12)
    before = contents(shop.store)
    with pytest.raises(RackboardError, match=r"so small.*10 iron 101 \(A11\), 11 iron 101 \(A12\)"):
        furnishing(shop).change_place(rack(shop)._replace(rows=2))
    with pytest.raises(RackboardError, match=r"so small.*4 iron 101 \(A5\)"):
        furnishing(shop).change_place(rack(shop)._replace(columns=4), Keep.PLACES)
    assert contents(shop.store) == before
    shop.do(furnishing(shop).change_place(rack(shop)._replace(columns=4)))
    assert where(shop)[-1] == "A12"


def test_a_place_with_clubs_or_a_past_stays(shop: Shop) -> None:
    (joint,) = shop.glue(["putter"], box=True)
    with pytest.raises(RackboardError, match=r"while clubs lie there: putter 101 \(B1\)"):
        furnishing(shop).remove_place(shop.box.id)
    shop.do(shop.bench.move(shop.standing(joint).club.id, shop.rack.id, 0))
    with pytest.raises(RackboardError, match=r"on the record of putter 101 \(B1\)"):
        furnishing(shop).remove_place(shop.box.id)
    for kind in (PlaceKind.RACK, PlaceKind.GRIP_BENCH, PlaceKind.PICK_UP, PlaceKind.OUT):
        with pytest.raises(RackboardError, match="needs one such place"):
            furnishing(shop).remove_place(shop.board.snapshot.place(kind).id)


def test_a_zone_with_places_or_a_record_stays(shop: Shop) -> None:
    with pytest.raises(RackboardError, match="while places lie in it: Rack A, grip bench"):
        furnishing(shop).remove_zone(shop.room)
    shop.do(furnishing(shop).add_zone("Back room"))
    back = max(shop.board.snapshot.zones)
    shop.do(shop.bench.type_temperature(back, 15_000, at_rack=True))
    with pytest.raises(RackboardError, match="temperature record"):
        furnishing(shop).remove_zone(back)
    shop.undo()
    shop.do(furnishing(shop).remove_zone(back))
    assert back not in shop.board.snapshot.zones


def test_no_cure_gets_the_air_of_another_zone(shop: Shop) -> None:
    (joint,) = shop.glue(["putter"])
    colder = rack(shop)._replace(zone_id=shop.box_zone)
    with pytest.raises(RackboardError, match=r"keeps its zone.*putter 101 \(A1\)"):
        furnishing(shop).change_place(colder)
    shop.do(shop.bench.take_off(shop.standing(joint).club.id))
    with pytest.raises(RackboardError, match="keeps its zone"):
        furnishing(shop).change_place(colder)
    shop.flat("Mon 10:00", "Thu 10:00", 25.0)
    shop.tick("Thu 10:00")
    assert shop.words() == ["CURED"]
    shop.do(furnishing(shop).change_place(colder))
    assert shop.words() == ["CURED"]


@pytest.mark.parametrize(
    ("change", "wanted"),
    [
        ({"name": " "}, "one line"), ({"name": "x" * 31}, "one line"),
        ({"name": "WARM BOX"}, "no other place"), ({"prefix": "b"}, "no other rack"),
        ({"prefix": "A1"}, "one to three letters"), ({"prefix": ""}, "one to three letters"),
        ({"rows": 0}, "from 1 to 12"), ({"columns": 21}, "from 1 to 20"),
        ({"rows": 12, "columns": 9}, "at most 96"), ({"zone_id": 99}, "a zone"),
        ({"zone_id": None}, "a zone"),
    ],
)  # fmt: skip
def test_what_no_rack_can_be_is_refused(
    shop: Shop, change: dict[str, object], wanted: str
) -> None:
    before = contents(shop.store)
    with pytest.raises(InputError, match=wanted):
        furnishing(shop).change_place(rack(shop)._replace(**change))  # type: ignore[arg-type]
    assert contents(shop.store) == before


def test_unchanged_writes_nothing(shop: Shop) -> None:
    assert furnishing(shop).change_place(rack(shop)) == ()
    assert furnishing(shop).rename_zone(shop.room, "Room") == ()


def test_order_goes_up_and_down_among_its_own(shop: Shop) -> None:
    def names() -> list[str]:
        return [place.name for place in shop.board.snapshot.places.values()]

    shop.do(furnishing(shop).shift_place(shop.box.id, -1))
    assert names()[:2] == ["Warm box", "Rack A"]
    grip = shop.board.snapshot.place(PlaceKind.GRIP_BENCH).id
    shop.do(furnishing(shop).shift_place(grip, 1))
    assert names() == ["Warm box", "Rack A", "pick-up corner", "grip bench", "out of the shop"]
    shop.do(furnishing(shop).shift_place(shop.box.id, -5))
    assert names()[0] == "Warm box"


def test_settings_of_the_screen(shop: Shop) -> None:
    acts = furnishing(shop)
    for changes in (
        acts.set_contrast("off"), acts.set_reduced_motion(True), acts.set_viewing(4.5, 0.25),
        acts.set_language("de"),
    ):  # fmt: skip
        shop.do(changes)
    kept = shop.board.snapshot.settings
    assert [kept[key] for key in (CONTRAST, MOTION, DISTANCE, PITCH, LANGUAGE)] == [
        "off", True, 4.5, 0.25, "de",
    ]  # fmt: skip
    with pytest.raises(InputError, match=r"Viewing distance: wanted 0.5 to 20 m"):
        acts.set_viewing(30.0, None)
    with pytest.raises(InputError, match="Pixel pitch"):
        acts.set_viewing(3.0, 3.0)
    with pytest.raises(InputError, match="high contrast"):
        acts.set_contrast("loud")
