from __future__ import annotations

import pytest

from helpers.store import NOON, SmallShop, small_shop
from rackboard.core.bench import Customer
from rackboard.store import Store
from rackboard.store.faults import ChangedSinceError

NAMES = (b"Quillon", b"Vantreight", b"0555 010203", b"Quillion")


def told(store: Store) -> SmallShop:
    """A shop in which the name has been in every corner."""
    shop = small_shop(store)
    with store.write("typo", NOON) as act:
        act.update("customer", shop.customer, name="Quillion Vantreight")
    with store.write("correct", NOON, correction=True) as act:
        act.update("customer", shop.customer, name="Quillon Vantreight")
        act.add_event("called", "job", shop.job, {"who": "Quillon Vantreight", "n": [1, "kept"]})
        act.add_event("called", "customer", shop.customer, {"at": "0555 010203"})
        act.add_event("glued", "joint", shop.joints[0], {"lot": "L7"})
    # Rows come and go, so that pages hold what no row says any more.
    for n in range(60):
        with store.write("come", NOON) as act:
            row = act.add(Customer(0, f"Quillon Vantreight {n:0400d}", "0555 010203"))
        with store.write("go", NOON) as act:
            act.delete("customer", row)
    return shop


def test_erasure_leaves_no_name_in_the_file(filed: Store) -> None:
    shop = told(filed)
    assert any(name in filed.path.read_bytes() for name in NAMES)
    changes = filed.erase_customer(shop.customer, NOON + 5, "KT")
    content = filed.path.read_bytes()
    assert [name for name in NAMES if name in content] == []
    assert filed.work.customers([shop.customer]) == [Customer(shop.customer, "", "", NOON + 5)]
    assert "customer" in changes.tables and changes.keys("customer") == {(shop.customer,)}
    assert "Quillon" not in repr(tuple(changes))


def test_shadows_of_a_file_that_was_written_carelessly_go_too(filed: Store) -> None:
    filed._database.rows("PRAGMA secure_delete=OFF")
    shop = told(filed)
    filed._database.rows("PRAGMA secure_delete=ON")
    filed.erase_customer(shop.customer, NOON + 5)
    content = filed.path.read_bytes()
    assert [name for name in NAMES if name in content] == []


def test_the_record_of_the_bond_stays(filed: Store) -> None:
    shop = told(filed)
    live = filed.load_live()
    filed.erase_customer(shop.customer, NOON + 5)
    after = filed.load_live()
    assert after._replace(customers=[]) == live._replace(customers=[])
    assert filed.work.jobs_of(shop.customer)[0].number == "1042"
    data = {event.kind + event.subject: event.data for event in filed.journal.events()}
    assert data["calledjob"] == {"who": "", "n": [1, "kept"]}
    assert data["calledcustomer"] == {"at": ""}
    assert data["gluedjoint"] == {"lot": "L7"}
    former = filed.journal.former("customer", shop.customer)
    assert [(f.column, f.old, f.new) for f in former] == [("name", None, None)]


def test_others_keep_their_names(filed: Store) -> None:
    shop = told(filed)
    with filed.write("another", NOON) as act:
        other = act.add(Customer(0, "Ottoline Invented", "1"))
        act.add_event("called", "customer", other, {"who": "Ottoline Invented"})
    filed.erase_customer(shop.customer, NOON + 5)
    assert filed.work.customers([other])[0].name == "Ottoline Invented"
    (event,) = filed.journal.events(subject="customer", subject_id=other)
    assert event.data == {"who": "Ottoline Invented"}


def test_no_undo_brings_the_name_back(filed: Store) -> None:
    shop = told(filed)
    with filed.write("rename", NOON) as act:
        act.update("customer", shop.customer, phone="2")
    erased = filed.erase_customer(shop.customer, NOON + 5)
    assert not erased.undoable
    for changes in (erased, act.changes):
        with pytest.raises(ChangedSinceError):
            filed.apply_inverse(changes, "undo", NOON + 6)
    assert filed.work.customers([shop.customer])[0].name == ""


def test_a_customer_who_is_not_there(memory: Store) -> None:
    with pytest.raises(LookupError, match="customer 5"):
        memory.erase_customer(5, NOON)
