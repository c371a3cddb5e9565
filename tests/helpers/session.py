"""A newly founded shop as the window is handed it; all its data is invented. Needs Qt."""

from __future__ import annotations

from zoneinfo import ZoneInfo

from helpers.shop import FakeClock
from rackboard.core.bench import JointKind, Place, PlaceKind
from rackboard.core.instants import parse_iso
from rackboard.services.bench import Bench, ClubEntry, JobEntry, LaidOut
from rackboard.services.board import Board
from rackboard.services.founding import found_shop
from rackboard.store import Store
from rackboard.ui.session import Session

BERLIN = ZoneInfo("Europe/Berlin")
MONDAY = "2026-03-09T15:24+01:00"


def make_session(at: str = MONDAY) -> tuple[Session, FakeClock]:
    """A founded shop at a time with its offset: rack A, warm box, four typical epoxies."""
    clock = FakeClock(parse_iso(at, "test"))
    store = Store.open_memory()
    found_shop(store, clock.now())
    board = Board(store, clock, BERLIN)
    session = Session(store, clock, board, Bench(store, clock, board.snapshot.hours))
    session.tick()
    return session, clock


def place_of(session: Session, kind: PlaceKind = PlaceKind.RACK) -> Place:
    """The first place of a kind."""
    return session.board.snapshot.place(kind)


def zone_of(session: Session, kind: PlaceKind = PlaceKind.RACK) -> int:
    """The zone of the first place of a kind."""
    zone_id = place_of(session, kind).zone_id
    assert zone_id is not None
    return zone_id


def epoxy_named(session: Session, name: str) -> int:
    """The id of a typical epoxy."""
    epoxies = session.board.snapshot.epoxies.values()
    return next(epoxy.id for epoxy in epoxies if epoxy.sheet.name == name)


def type_temperature(
    session: Session, celsius: float, kind: PlaceKind = PlaceKind.RACK, *, at_rack: bool = True
) -> None:
    """Type what a thermometer says now."""
    milli = round(celsius * 1000)
    session.take(session.bench.type_temperature(zone_of(session, kind), milli, at_rack=at_rack))


def lay_out_irons(
    session: Session, clubs: int = 2, *, first_slot: int = 0, number: str = "220",
    epoxy: str = "half-hour", promised_us: int | None = None,
) -> LaidOut:  # fmt: skip
    """Lay out irons on neighbouring slots of the rack, from the 4 iron on."""
    rack = place_of(session)
    laid = session.bench.lay_out(
        JobEntry(
            number, "D. Whitlow", "", promised_us,
            tuple(
                ClubEntry(f"{n + 4} iron", JointKind.SOLID_HEAD, rack.id, first_slot + n)
                for n in range(clubs)
            ),
            epoxy_named(session, epoxy),
        )
    )  # fmt: skip
    session.take(laid.changes)
    return laid
