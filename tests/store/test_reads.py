from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from helpers.store import NOON, SHEET, SmallShop, add_job, past_shop, small_shop
from rackboard.core.alerts.rows import Alert, Telling
from rackboard.core.bench import (
    Batch,
    Club,
    Customer,
    Epoxy,
    Grant,
    Heating,
    Hold,
    HoldReason,
    Job,
    Joint,
    JointKind,
    Milestone,
    Parts,
    Person,
    Place,
    PlaceKind,
    Stay,
    Zone,
)
from rackboard.core.epoxy import FurtherTime, Range, Sheet
from rackboard.store import Store
from rackboard.store.rows import row_of, sheet_of, sheet_text

finite = st.floats(0.1, 1e4)
ranges = st.builds(lambda a, b: Range(min(a, b), max(a, b)), finite, finite)
sheets = st.builds(
    Sheet,
    name=st.text(max_size=30),
    working_life_min=ranges,
    full_cure_time_h=ranges,
    handling_time_h=st.none() | ranges,
    reference_temperature_c=st.none() | finite,
    minimum_cure_temperature_c=st.none() | st.floats(-40, 40),
    maximum_cure_temperature_c=st.none() | finite,
    no_cure_below_minimum=st.booleans(),
    activation_energy_kj_per_mol=st.none() | finite,
    further_times=st.lists(
        st.builds(
            FurtherTime, st.sampled_from(["working_life", "handling", "full_cure"]), finite, ranges
        ),
        max_size=3,
    ).map(tuple),
    mix_ratio_by_volume=st.none() | st.tuples(finite, finite),
    mix_ratio_by_mass=st.none() | st.tuples(finite, finite),
    density_g_per_ml=st.none() | finite,
    working_life_mass_g=st.none() | finite,
    lap_shear_mpa=st.none() | finite,
    shelf_life_months=st.none() | finite,
)


@given(sheets)
def test_a_sheet_comes_back_as_it_was(sheet: Sheet) -> None:
    back = sheet_of(sheet_text(sheet))
    assert back == sheet
    assert repr(back) == repr(sheet)  # also the types within
    assert sheet_of(sheet_text(sheet)) is back


def test_a_sheet_with_nan_is_refused() -> None:
    with pytest.raises(ValueError, match="JSON"):
        sheet_text(Sheet("x", Range(1, 2), Range(float("nan"), 2)))


def test_values_come_back_as_they_were(memory: Store, shop: SmallShop) -> None:
    with memory.write("all", NOON + 1, "KT") as act:
        zone = act.add(Zone(0, "attic", 5, Heating(420, 1020, 14_000)))
        place = act.add(Place(0, zone, PlaceKind.GRIP_BENCH, "Grip bench", "", 0, 0, 5))
        epoxy = act.add(Epoxy(0, SHEET, False, NOON))
        customer = act.add(Customer(0, "Ünïcode ⅜", "1"))
        job = act.add(Job(0, "77", customer, 1, 2, 3, "KT"))
        club = act.add(Club(0, job, "driver", 1))
        batch = act.add(Batch(0, 8, epoxy, SHEET, "", zone, 1, 2, 3, 4))
        joint = act.add(
            Joint(0, club, JointKind.ADAPTER_SLEEVE, 0, batch, 5, Parts.COLD, 4_000, "12", 6, "s")
        )
        stay = act.add(Stay(0, club, place, None, 7, 8))
        grant = act.add(Grant(0, joint, Milestone.FULL_CURE, 1, 2, 3, 4, "why"))
        hold = act.add(Hold(0, joint, HoldReason.TOO_HOT, "78", 1, 2, "nothing seen", "KT"))
        act.add(Person("KT", 9))
        event = act.add_event("glued", "job", job, {"clubs": [club], "u": None}, at_us=3)
        alert = Alert(0, "cold", zone, 0, 1, "closed", 1, 2, {"air_mc": 3}, 4, 5, "KT", 6, 7, 8, 9,
                      10, "got it")  # fmt: skip
        alert = alert._replace(id=act.add(alert))
        telling = Telling(0, "k", "cold", "zone 1", 3, 1, 0, {"alerts": [1]}, {"list": "shown"})
        telling = telling._replace(id=act.add(telling))
    work, journal = memory.work, memory.journal
    assert memory.shop.zones()[-1] == Zone(zone, "attic", 5, Heating(420, 1020, 14_000))
    back = next(p for p in memory.shop.places() if p.id == place)
    assert back == Place(place, zone, PlaceKind.GRIP_BENCH, "Grip bench", "", 0, 0, 5)
    assert isinstance(back.kind, PlaceKind)
    assert memory.shop.epoxy(epoxy) == Epoxy(epoxy, SHEET, False, NOON)
    assert epoxy not in [e.id for e in memory.shop.epoxies()]
    assert epoxy in [e.id for e in memory.shop.epoxies(retired=True)]
    assert work.customers([customer]) == [Customer(customer, "Ünïcode ⅜", "1")]
    assert work.jobs([job]) == [Job(job, "77", customer, 1, 2, 3, "KT")]
    assert work.job_numbered("77") == work.jobs([job])[0]
    assert work.clubs([job]) == work.clubs_by_id([club]) == [Club(club, job, "driver", 1)]
    assert work.batches([batch]) == [Batch(batch, 8, epoxy, SHEET, "", zone, 1, 2, 3, 4)]
    assert work.next_batch_number() == 9
    expected = Joint(
        joint, club, JointKind.ADAPTER_SLEEVE, 0, batch, 5, Parts.COLD, 4_000, "12", 6, "s"
    )
    assert work.joints(ids=[joint]) == work.joints(batch_ids=[batch]) == [expected]
    assert work.joints(club_ids=[club]) == [expected]
    assert isinstance(work.joints(ids=[joint])[0].parts, Parts)
    assert work.stays([club]) == [Stay(stay, club, place, None, 7, 8)]
    assert work.stays([club], open_only=True) == []
    assert journal.grants([joint]) == [Grant(grant, joint, Milestone.FULL_CURE, 1, 2, 3, 4, "why")]
    assert journal.holds([joint]) == [
        Hold(hold, joint, HoldReason.TOO_HOT, "78", 1, 2, "nothing seen", "KT")
    ]
    assert journal.holds(open_only=True) == []
    assert memory.shop.persons() == [Person("KT", 9)]
    (found,) = journal.events()
    assert (found.id, found.at_us, found.recorded_us, found.by) == (event, 3, NOON + 1, "KT")
    assert found.data == {"clubs": [club], "u": None}
    assert memory.alerts.last_of("cold", zone) == alert
    assert memory.alerts.by_id([alert.id]) == memory.alerts.page(5) == [alert]
    assert memory.alerts.page(5, kinds=["cold"], from_us=1, to_us=2) == [alert]
    assert memory.alerts.page(5, before=(alert.due_us, alert.id)) == []
    assert memory.alerts.open() == memory.alerts.untold() == []
    assert memory.alerts.tellings(2) == [telling]
    assert memory.alerts.tellings(3) == []


def test_every_value_is_written_back_the_same(memory: Store, shop: SmallShop) -> None:
    for stay in memory.work.stays(shop.clubs):
        with memory.write("again", NOON) as act:
            act.update("stay", stay.id, **row_of(stay))
        assert act.changes == ()


def test_settings(memory: Store) -> None:
    assert memory.shop.setting("hours", [8, 18]) == [8, 18]
    with memory.write("set", NOON) as act:
        act.set_setting("hours", {"mon": [7, 16]})
        act.set_setting("units", "F")
    assert memory.shop.setting("hours") == {"mon": [7, 16]}
    assert memory.shop.settings() == {"hours": {"mon": [7, 16]}, "units": "F"}


def test_events_are_filtered(memory: Store) -> None:
    with memory.write("x", NOON) as act:
        for n in range(10):
            act.add_event("ab"[n % 2], "job", n % 3, at_us=n)
    events = memory.journal.events
    assert [e.at_us for e in events(3)] == [9, 8, 7]
    assert [e.at_us for e in events(kinds=["a"])] == [8, 6, 4, 2, 0]
    assert [e.at_us for e in events(kinds=["a", "b"], subject="job", subject_id=0)] == [9, 6, 3, 0]
    assert [e.at_us for e in events(from_us=2, to_us=4)] == [3, 2]
    assert events(kinds=[]) == []


def test_customers_are_found_by_name_or_phone(memory: Store, shop: SmallShop) -> None:
    find = memory.work.customers_named
    assert [c.id for c in find("vantre")] == [c.id for c in find("0102")] == [shop.customer]
    assert find("100%") == find("_") == []


def test_more_ids_than_one_statement_takes(memory: Store, shop: SmallShop) -> None:
    assert [c.id for c in memory.work.clubs_by_id(range(5000))] == list(shop.clubs)


def test_live_holds_what_is_at_work(memory: Store, shop: SmallShop) -> None:
    live = memory.load_live()
    assert [job.number for job in live.jobs] == ["1042"]
    assert [club.id for club in live.clubs] == list(shop.clubs)
    assert [joint.id for joint in live.joints] == list(shop.joints)
    assert [stay.id for stay in live.stays] == list(shop.stays)
    assert [batch.id for batch in live.batches] == [shop.batch]
    assert [customer.id for customer in live.customers] == [shop.customer]
    assert live.holds == live.grants == []


def take_out(store: Store, shop: SmallShop, which: int) -> None:
    with store.write("out", NOON + 1) as act:
        act.update("stay", shop.stays[which], to_us=NOON + 1)
        act.add(Stay(0, shop.clubs[which], shop.out, None, NOON + 1))


def test_live_forgets_a_job_that_has_left_as_a_whole(memory: Store, shop: SmallShop) -> None:
    take_out(memory, shop, 0)
    assert [club.id for club in memory.load_live().clubs] == list(shop.clubs)
    take_out(memory, shop, 1)
    assert memory.load_live() == ([],) * 9


def test_live_keeps_a_hold_wherever_the_club_is(memory: Store, shop: SmallShop) -> None:
    take_out(memory, shop, 0)
    take_out(memory, shop, 1)
    with memory.write("soft smear", NOON + 2) as act:
        hold = act.add(Hold(0, shop.joints[0], HoldReason.SOFT_SMEAR, "", NOON + 2))
        act.add(Grant(0, shop.joints[0], Milestone.HANDLING, 1, 2, 3))
    live = memory.load_live()
    assert [h.id for h in live.holds] == [hold]
    assert len(live.grants) == 1 and [job.id for job in live.jobs] == [shop.job]
    with memory.write("released", NOON + 3) as act:
        act.update("hold", hold, to_us=NOON + 3, outcome="released", by="KT")
    assert memory.load_live().jobs == []


def test_live_holds_what_is_laid_out_without_a_place(memory: Store, shop: SmallShop) -> None:
    with memory.write("lay out", NOON) as act:
        add_job(act, "5", shop.customer, None, ("wedge",))
    assert [job.number for job in memory.load_live().jobs] == ["1042", "5"]


def test_live_never_scans_the_past(memory: Store, monkeypatch: pytest.MonkeyPatch) -> None:
    shop = past_shop(memory, 300, 300)
    asked: list[tuple[str, tuple[object, ...]]] = []
    plain = type(memory._database).rows

    def rows(self, statement, values=()):
        asked.append((statement, tuple(values)))
        return plain(self, statement, values)

    monkeypatch.setattr(type(memory._database), "rows", rows)
    memory.load_live()
    memory.record.last_reading(shop.room)
    memory.record.reading_before(shop.room, NOON)
    memory.record.readings(shop.room, NOON, NOON + 1)
    memory.journal.events(50)
    memory.journal.events(50, kinds=["x"])
    memory.journal.events(50, subject="job", subject_id=1)
    memory.alerts.open()
    memory.alerts.page(50)
    memory.alerts.untold()
    memory.work.next_batch_number()
    memory.work.latest_jobs()
    monkeypatch.undo()
    for statement, values in asked:
        for *_, step in memory._database.rows("EXPLAIN QUERY PLAN " + statement, values):
            plain_scan = step.startswith("SCAN") and "INDEX" not in step
            allowed = ("SCAN p", "SCAN job", "SCAN h ", "SCAN alert", "SCAN telling", "SCAN event")
            ordered = "ORDER BY id DESC LIMIT" in statement
            assert not plain_scan or step in allowed[:1] or ordered, (step, statement)
            assert "TEMP B-TREE FOR ORDER" not in step or "LIMIT" not in statement, statement


def test_the_first_paint_reads_nothing_of_the_past(memory: Store) -> None:
    young = Store.open_memory()
    small_shop(young)
    past_shop(memory, 5_000, 100_000)

    assert memory.load_live() == young.load_live()
    assert memory.record.last_reading(1) is not None
    young.close()
