"""A job on its way to the rack: numbers, slots and batches."""

from __future__ import annotations

import pytest

from helpers.shop import Shop, make_shop
from rackboard.core.bench import JointKind, Parts
from rackboard.core.errors import InputError
from rackboard.services.draft import Draft, free_slots, next_number, span_name, usual_kind


def drafted(shop: Shop, clubs: int, start: int = 0) -> Draft:
    draft = Draft(number="7", epoxy_id=shop.epoxy, start=(shop.rack.id, start))
    draft.take([f"{n} iron" for n in range(clubs)], shop.board.snapshot)
    return draft


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
        draft.add("club", shop.board.snapshot)
    with pytest.raises(InputError, match="at most 14 clubs"):
        draft.take(["club"] * 15, shop.board.snapshot)


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


def test_heads_are_hollow_by_their_names() -> None:
    assert usual_kind("Driver") is JointKind.HOLLOW_HEAD
    assert usual_kind("50° wedge") is JointKind.SOLID_HEAD


def test_slots_are_said_in_short() -> None:
    shop = make_shop()
    rack, box = shop.rack.id, shop.box.id
    places = shop.board.snapshot.places
    assert span_name([(rack, n) for n in range(8)], places) == "A1 to A8"
    assert span_name([(box, 1), (rack, 3), (rack, 0)], places) == "A1, A4 and B2"
    assert span_name([], places) == ""
