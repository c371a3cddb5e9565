"""The journal of alerts: filtered, paged, and as a CSV file."""

from __future__ import annotations

import csv
import io
from datetime import datetime
from pathlib import Path

import pytest

from helpers.shop import Shop, at, make_shop
from rackboard.core.alerts.kinds import Kind
from rackboard.core.bench import PlaceKind
from rackboard.core.errors import StoreError
from rackboard.core.instants import MINUTE_US
from rackboard.services.alert_export import COLUMNS, export_alerts
from rackboard.services.alert_log import AlertLog, Entry, courier_words, outcome_words
from rackboard.services.alerts import Alerts
from rackboard.services.teller import Done, Message
from rackboard.store.alert_pages import Wanted


class Courier:
    name = "Desktop notices"

    def deliver(self, message: Message, done: Done) -> None:
        done(None)


def busy(names: tuple[str, ...] = ("4 iron", "5 iron")) -> tuple[Shop, Alerts, list[int]]:
    shop = make_shop("Mon 08:00")
    alerts = Alerts(shop.store, shop.clock, (Courier(),))
    shop.feed([(at("Mon 07:55"), 25.0), (at("Mon 08:00"), 25.0)])
    joints = shop.glue(names, number="220")
    while shop.clock.now() < at("Mon 10:00"):
        shop.clock.advance(minutes=5)
        shop.feed([(shop.clock.now(), 12.0)])
        tick(shop, alerts)
    shop.do(shop.bench.disturb(joints[0]))
    tick(shop, alerts)
    return shop, alerts, joints


def tick(shop: Shop, alerts: Alerts) -> None:
    shop.board.tick()
    changes = alerts.tick(shop.board)
    if changes is not None:
        shop.board.take_in(changes)


def page(shop: Shop, **wanted: object) -> list[Entry]:
    return AlertLog(shop.store).page(Wanted(**wanted), 100)[0]  # type: ignore[arg-type]


def kinds(entries: list[Entry]) -> set[str]:
    return {entry.alert.kind for entry in entries}


def rows(path: Path) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(path.read_bytes().decode("utf-8-sig"), newline="")))


def test_an_entry_names_what_it_was_about_when_it_began() -> None:
    shop, alerts, joints = busy()
    club = shop.standing(joints[0]).club.id
    shop.clock.advance(minutes=1)
    shop.do(shop.bench.move(club, shop.rack.id, 7))
    tick(shop, alerts)
    (entry,) = page(shop, kinds=frozenset({Kind.DISTURBED}))
    assert (entry.about.where, entry.about.club, entry.about.job) == ("A1", "4 iron", "220")
    (cold,) = page(shop, kinds=frozenset({Kind.COLD}))
    assert cold.about.zone == shop.board.snapshot.zones[shop.room].name


def test_what_the_couriers_did_is_told_of_each() -> None:
    shop, _, _ = busy()
    (entry,) = page(shop, kinds=frozenset({Kind.DISTURBED}))
    assert courier_words(entry.tellings) == "Desktop notices: shown"
    assert all(entry.alert.id in telling.alert_ids for telling in entry.tellings)


def test_filters_by_job_place_kind_and_day() -> None:
    shop, alerts, _ = busy()
    shop.clock.set("Tue 09:00")
    shop.feed([(at("Tue 09:00"), 25.0)])
    (other,) = shop.glue(1, number="331", box=True)
    shop.do(shop.bench.disturb(other))
    tick(shop, alerts)
    assert {e.about.job for e in page(shop, job="331")} == {"331"}
    assert {e.about.job for e in page(shop, job="33")} == {"331"}
    assert Kind.COLD in kinds(page(shop, job="220")), "the zone in which its clubs lay"
    assert page(shop, job="9") == []
    assert page(shop, job="%") == []
    rack = {e.about.job for e in page(shop, place_id=shop.rack.id)} - {""}
    assert rack == {"220"}
    assert kinds(page(shop, place_id=shop.rack.id)) >= {Kind.COLD, Kind.DISTURBED}
    box = page(shop, place_id=shop.box.id, kinds=frozenset({Kind.DISTURBED}))
    assert [e.about.job for e in box] == ["331"]
    corner = shop.board.snapshot.place(PlaceKind.PICK_UP).id
    assert page(shop, place_id=corner, kinds=frozenset({Kind.DISTURBED})) == []
    tuesday = page(shop, from_us=at("Tue 00:00"), to_us=at("Wed 00:00"))
    assert [e.about.job for e in tuesday if e.alert.due_us >= at("Tue 00:00")]
    assert Kind.DISTURBED in {e.alert.kind for e in tuesday if e.about.job == "220"}, "still on"
    monday = page(shop, from_us=at("Mon 00:00"), to_us=at("Tue 00:00"))
    assert "331" not in {e.about.job for e in monday}


def test_pages_join_without_a_gap_or_a_double() -> None:
    shop, _, _ = busy()
    with shop.store.write("more", shop.clock.now()) as act:
        (last,) = shop.store.alerts.page(1)
        for n in range(25):  # ten of the same instant
            act.add(last._replace(id=0, episode=100 + n, due_us=at("Mon 08:00") + n // 10))
    log, after, ids = AlertLog(shop.store), None, []
    while True:
        entries, after = log.page(Wanted(), 4, after)
        ids += [entry.alert.id for entry in entries]
        if after is None:
            break
    assert ids == [a.id for a in shop.store.alerts.page(100)]
    assert len(ids) == len(set(ids)) > 25


def test_the_file_has_the_columns_and_both_times(tmp_path: Path) -> None:
    shop, alerts, joints = busy()
    alerts.by = "KT"
    disturbed = next(a for a in alerts.open if a.kind == Kind.DISTURBED)
    alerts.got_it([disturbed.id])
    shop.clock.advance(minutes=2)
    hold = shop.board.snapshot.holds[joints[0]]
    shop.do(shop.bench.end_hold(hold, "touched, head did not turn"))
    tick(shop, alerts)
    path = tmp_path / "alerts.csv"
    count = export_alerts(shop.store, shop.board.snapshot.hours, Wanted(), path)
    raw = path.read_bytes()
    assert raw.startswith(b"\xef\xbb\xbf")
    assert raw.count(b"\r\n") == count + 1
    found = rows(path)
    assert len(found) == count == len(shop.store.alerts.page(1000))
    assert tuple(found[0]) == COLUMNS
    line = next(row for row in found if row["code"] == "H1")
    began = datetime.fromisoformat(line["began_utc"])
    assert began == datetime.fromisoformat(line["began_local"])
    assert line["began_utc"].endswith("Z")
    assert line["began_local"].endswith("+01:00")
    assert line["taken_by"] == "KT"
    assert line["outcome"] == "touched, head did not turn"
    assert line["place"] == "A1"
    assert line["club"] == "4 iron"
    cold = next(row for row in found if row["code"] == "H2")
    assert cold["air_c"] == "12.0"
    assert float(cold["limit_c"]) > 12


@pytest.mark.parametrize("name", ["=1+1", "+1", "-5", "@SUM(A1)", "\t=1", " =1", "=cmd|' /c x'!A0"])
def test_no_name_becomes_a_formula(tmp_path: Path, name: str) -> None:
    shop, _, joints = busy()
    club = shop.standing(joints[0]).club.id
    with shop.store.write("a name", shop.clock.now()) as act:
        act.update("club", club, name=name)
    path = tmp_path / "alerts.csv"
    export_alerts(shop.store, shop.board.snapshot.hours, Wanted(), path)
    cells = [cell for row in rows(path) for cell in row.values()]
    assert f"'{name}" in cells
    assert not any(cell.lstrip(" \t\r\n").startswith(("=", "+", "@")) for cell in cells)


def test_only_what_is_wanted_is_written(tmp_path: Path) -> None:
    shop, _, _ = busy()
    path = tmp_path / "alerts.csv"
    wanted = Wanted(kinds=frozenset({Kind.COLD}))
    assert export_alerts(shop.store, shop.board.snapshot.hours, wanted, path) == 1
    assert [row["code"] for row in rows(path)] == ["H2"]


def test_an_old_file_stays_if_the_new_one_cannot_be_written(tmp_path: Path) -> None:
    shop, _, _ = busy()
    with pytest.raises(StoreError):
        export_alerts(
            shop.store, shop.board.snapshot.hours, Wanted(), tmp_path / "nowhere" / "alerts.csv"
        )
    assert list(tmp_path.iterdir()) == []


def test_outcomes_are_said_as_the_bench_says_them() -> None:
    shop, _, _ = busy()
    (alert,) = shop.store.alerts.page(1)
    for stored, said in (
        ("released by KT", "released by KT"), ("customer reached", "customer reached"),
        ("nothing seen; scrapped", "nothing seen; scrapped"), ("", ""), (None, ""),
        ("of an older board", "of an older board"),
    ):  # fmt: skip
        assert outcome_words(alert._replace(closed_as=stored)) == said


def test_a_journal_of_an_older_board_still_reads(tmp_path: Path) -> None:
    shop, _, _ = busy()
    (alert,) = shop.store.alerts.page(1)
    with shop.store.write("an old row", shop.clock.now()) as act:
        act.add(alert._replace(id=0, kind="job safe", subject_id=9999, episode=77, data={}))
        act.add(alert._replace(id=0, kind="disturbed", subject_id=9999, episode=77, data={},
                               due_us=shop.clock.now() - MINUTE_US))  # fmt: skip
    export_alerts(shop.store, shop.board.snapshot.hours, Wanted(), tmp_path / "alerts.csv")
    assert {"M4", "H1"} <= {row["code"] for row in rows(tmp_path / "alerts.csv")}
