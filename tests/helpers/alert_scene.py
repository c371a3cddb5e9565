"""A shop in which every sort of alert has happened, as the window is handed it. Needs Qt."""

from __future__ import annotations

from helpers.scene import RecordingCourier
from helpers.session import epoxy_named, make_session, place_of, zone_of
from helpers.shop import FakeClock
from rackboard.core.alerts.kinds import Kind
from rackboard.core.alerts.rows import Alert
from rackboard.core.bench import JointKind, PlaceKind, Source
from rackboard.core.instants import MINUTE_US, Instant, parse_iso
from rackboard.services.alerts import Alerts
from rackboard.services.bench import ClubEntry, JobEntry
from rackboard.ui.session import Session

START = "2026-03-09T08:00+01:00"


class AlertShop:
    """A founded shop with its alerts, a recording courier, and two feeds."""

    def __init__(self, at: str = START) -> None:
        self.session: Session
        self.clock: FakeClock
        self.session, self.clock = make_session(at)
        self.courier = RecordingCourier()
        self.session.alerts = Alerts(self.session.store, self.clock, (self.courier,))
        self.feed(25.0)
        self.feed(40.0, box=True)

    @property
    def alerts(self) -> Alerts:
        """The engine."""
        assert self.session.alerts is not None
        return self.session.alerts

    def feed(self, celsius: float, *, box: bool = False) -> None:
        """Keep one reading of now."""
        zone = zone_of(self.session, PlaceKind.BOX if box else PlaceKind.RACK)
        with self.session.store.write("feed", self.clock.now()) as act:
            act.add_readings(zone, [(self.clock.now(), round(celsius * 1000), 1000, Source.FEED)])
        self.session.board.take_in(act.changes)

    def until(
        self, at: str | Instant, celsius: float | None = 25.0, box: float | None = None,
        step_min: int = 5,
    ) -> None:
        """Let time pass, with readings."""
        end = parse_iso(at, "test") if isinstance(at, str) else at
        while self.clock.now() < end:
            self.clock.set(min(self.clock.now() + step_min * MINUTE_US, end))
            if celsius is not None:
                self.feed(celsius)
            if box is not None:
                self.feed(box, box=True)
            self.session.tick()

    def glue(
        self, clubs: int = 1, *, number: str = "220", first: int = 0, box: bool = False,
        epoxy: str = "half-hour", customer: str = "D. Whitlow", phone: str = "555 0100",
    ) -> list[int]:  # fmt: skip
        """Lay out, mix and rack irons now; return the joints' ids."""
        session = self.session
        place = place_of(session, PlaceKind.BOX if box else PlaceKind.RACK)
        laid = session.bench.lay_out(
            JobEntry(
                number, customer, phone, None,
                tuple(
                    ClubEntry(f"{n + 4} iron", JointKind.SOLID_HEAD, place.id, first + n)
                    for n in range(clubs)
                ),
                epoxy_named(session, epoxy),
            )
        )  # fmt: skip
        session.take(laid.changes)
        session.take(session.bench.mix(laid.batch_id))
        session.take(session.bench.rack_all(laid.batch_id))
        return [joint.id for joint in session.board.snapshot.joints_of_batch[laid.batch_id]]

    def withdraw(self, joint: int) -> None:
        """Correct the mixing of a joint's batch by so much that what was said falls."""
        batch = next(s.batch for s in self.session.board.standings if s.joint.id == joint)
        later = self.clock.now() - 20 * MINUTE_US
        self.session.take(self.session.bench.correct_mixed(batch.id, later))

    def the(self, kind: Kind) -> Alert:
        """The only open alert of a kind."""
        (alert,) = [alert for alert in self.alerts.open if alert.kind == kind]
        return alert

    def last(self, kind: Kind) -> Alert:
        """The latest alert of a kind, open or closed."""
        (alert,) = self.session.store.alerts.page(1, kinds=[kind])
        return alert
