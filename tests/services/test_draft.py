"""A job on its way to the rack: numbers, slots and batches."""

from __future__ import annotations

import pytest

from helpers.shop import Shop, make_shop
from rackboard.core.bench import JointKind, Parts
from rackboard.core.errors import InputError
from rackboard.services.draft import (
    INDEX_MARK,
    LINE_UPS,
    Draft,
    Named,
    free_slots,
    next_number,
    read_clubs,
    span_name,
    usual_kind,
)


def drafted(shop: Shop, clubs: int, start: int = 0) -> Draft:
    draft = Draft(number="7", epoxy_id=shop.epoxy, start=(shop.rack.id, start))
    draft.join(named(*(f"{n} iron" for n in range(clubs))), shop.board.snapshot)
    return draft


def named(*names: str) -> list[Named]:
    return [(name, usual_kind(name)) for name in names]


def names(shop: Shop, draft: Draft) -> list[str]:
    return [shop.board.snapshot.places[p].slot_name(s) for p, s in draft.slots]


def test_clubs_go_on_free_slots_from_the_selected_one_on() -> None:
    shop = make_shop()
    shop.lay_out(2)
    assert names(shop, drafted(shop, 3)) == ["A3", "A4", "A5"]
    assert names(shop, drafted(shop, 3, start=13)) == ["A14", "A15", "A3"]


def test_a_full_rack_goes_on_in_the_box_and_then_there_is_no_room() -> None:
    shop = make_shop()
    shop.lay_out(13)
    draft = drafted(shop, 7)
    assert names(shop, draft) == ["A14", "A15", "B1", "B2", "B3", "B4"]
    with pytest.raises(InputError, match="a free slot for every club"):
        draft.entries((7,))


def test_a_club_takes_a_slot_and_changes_places_with_its_own() -> None:
    shop = make_shop()
    shop.lay_out(1)
    draft = drafted(shop, 2, start=1)
    snapshot = shop.board.snapshot
    assert draft.put(0, (shop.rack.id, 9), snapshot)
    assert names(shop, draft) == ["A10", "A3"]
    assert draft.put(0, (shop.rack.id, 2), snapshot)
    assert names(shop, draft) == ["A3", "A10"]
    assert not draft.put(0, (shop.rack.id, 0), snapshot)
    assert names(shop, draft) == ["A3", "A10"]


def test_a_slot_taken_meanwhile_is_given_up() -> None:
    shop = make_shop()
    draft = drafted(shop, 2)
    shop.lay_out(1)
    draft.seat(shop.board.snapshot)
    assert sorted(names(shop, draft)) == ["A2", "A3"]
    assert (shop.rack.id, 0) not in free_slots(shop.board.snapshot)


def test_fourteen_clubs_are_the_most() -> None:
    shop = make_shop()
    draft = drafted(shop, 14)
    with pytest.raises(InputError, match="at most 14 clubs"):
        draft.join(named("club"), shop.board.snapshot)
    assert len(draft.clubs) == 14
    draft.remove(3)
    draft.join(named("club"), shop.board.snapshot)
    assert [club.name for club in draft.clubs][2:4] == ["2 iron", "4 iron"]


def test_two_batches_keep_the_order() -> None:
    shop = make_shop()
    first, second = drafted(shop, 7).entries((4, 3))
    assert [club.name for club in first.clubs] == ["0 iron", "1 iron", "2 iron", "3 iron"]
    assert [club.name for club in second.clubs] == ["4 iron", "5 iron", "6 iron"]


def test_cold_parts_want_their_temperature() -> None:
    shop = make_shop()
    draft = drafted(shop, 1)
    draft.parts = Parts.COLD
    with pytest.raises(InputError, match="temperature of the cold parts"):
        draft.entries((1,))


def test_the_next_number_is_free() -> None:
    shop = make_shop()
    assert next_number(shop.store) == "101"
    shop.lay_out(1, number="220")
    shop.lay_out(1, number="R-9")
    assert next_number(shop.store) == "221"


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("Driver", JointKind.HOLLOW_HEAD), ("3 wood", JointKind.HOLLOW_HEAD),
        ("4 hybrid", JointKind.HOLLOW_HEAD), ("50° wedge", JointKind.SOLID_HEAD),
        ("PW", JointKind.SOLID_HEAD), ("putter", JointKind.OVER_HOSEL_PUTTER),
        ("driver sleeve", JointKind.ADAPTER_SLEEVE), ("butt extension", JointKind.BUTT_EXTENSION),
        ("tip weight", JointKind.TIP_WEIGHT),
    ],
)  # fmt: skip
def test_the_joint_follows_from_the_name(name: str, kind: JointKind) -> None:
    assert usual_kind(name) is kind


def test_the_usual_line_ups() -> None:
    sizes = {str(line_up.name): len(line_up.clubs) for line_up in LINE_UPS}
    assert sizes == {
        "4 iron to PW": 7, "3 iron to PW": 8, "5 iron to SW": 7, "8 irons": 8, "wedge set": 3,
        "driver": 1, "3 wood": 1, "hybrid": 1, "putter": 1,
    }  # fmt: skip
    assert list(LINE_UPS[2].clubs) == ["5 iron", "6 iron", "7 iron", "8 iron", "9 iron", "PW", "SW"]


@pytest.mark.parametrize(
    ("typed", "clubs"),
    [
        ("driver", ["driver"]), ("  7 ", ["7 iron"]), ("7i", ["7 iron"]), ("sw", ["SW"]),
        ("8-PW", ["8 iron", "9 iron", "PW"]), ("8 to 9", ["8 iron", "9 iron"]),
        ("7 iron – 9 iron", ["7 iron", "8 iron", "9 iron"]), ("9-4", ["9-4"]),
        ("Driver, 3 wood;putter", ["driver", "3 wood", "putter"]), ("mallet no 2", ["mallet no 2"]),
        ("wedge set + driver", ["50°", "54°", "58°", "driver"]), (" , ", []),
    ],
)  # fmt: skip
def test_clubs_are_typed_in_short(typed: str, clubs: list[str]) -> None:
    assert list(read_clubs(typed)) == clubs


def test_a_name_too_long_for_a_tile_is_refused() -> None:
    with pytest.raises(InputError, match="at most 40 letters"):
        read_clubs("x" * 41)


def test_the_kind_follows_the_name_until_it_is_chosen() -> None:
    shop = make_shop()
    draft = drafted(shop, 1)
    draft.rename(0, "driver")
    assert draft.clubs[0].kind is JointKind.HOLLOW_HEAD
    draft.set_kind(0, JointKind.ADAPTER_SLEEVE)
    draft.change(0, graphics=INDEX_MARK)
    draft.rename(0, "7 iron")
    assert draft.clubs[0].kind is JointKind.ADAPTER_SLEEVE
    draft.set_kind(0, JointKind.SOLID_HEAD)
    assert draft.clubs[0].graphics == "", "only a sleeve has an index mark"


def test_slots_are_said_in_short() -> None:
    shop = make_shop()
    rack, box = shop.rack.id, shop.box.id
    places = shop.board.snapshot.places
    assert span_name([(rack, n) for n in range(8)], places) == "A1 to A8"
    assert span_name([(box, 1), (rack, 3), (rack, 0)], places) == "A1, A4 and B2"
    assert span_name([], places) == ""
