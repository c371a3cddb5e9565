"""The settings' page of what reaches people: notices, sounds, quiet hours, tray, login."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QLabel, QLineEdit, QVBoxLayout, QWidget

from rackboard.core.errors import InputError
from rackboard.core.text import text
from rackboard.services.teller import QUIET
from rackboard.store.changes import ChangeSet
from rackboard.ui.couriers import (
    KEEP_RUNNING,
    NOTICES,
    SAID_STAYS,
    SOUND,
    VOLUME,
    Couriers,
    Link,
    volume_of,
)
from rackboard.ui.dialog import Dialog, row
from rackboard.ui.language import say, translated
from rackboard.ui.session import Session
from rackboard.ui.shop_fields import clock_text, read_clock, read_count
from rackboard.ui.sound import FULL
from rackboard.ui.wording import Times

if TYPE_CHECKING:
    from rackboard.services.alerts import Alerts

__all__ = [
    "KEEP_RUNNING", "NOTICES", "QUIET", "SAID_STAYS", "SOUND", "VOLUME", "CourierSettings",
]  # fmt: skip

_USUAL_QUIET = (1260, 420)
_VOLUME = text("Settings", "Volume")
_QUIET = text("Settings", "Quiet hours")


class CourierSettings(QWidget):
    """How alerts reach people who don't look at the board.

    Parameters
    ----------
    session : Session
        The open shop; its alerts send the test.
    dialog : Dialog
        The settings, for their hand.
    couriers : Couriers, optional
        Of this program start; None before they are made.
    """

    def __init__(self, session: Session, dialog: Dialog, couriers: Couriers | None = None) -> None:
        super().__init__()
        self._session = session
        self._dialog = dialog
        self._couriers = couriers
        self._settings: Mapping[str, object] = dict(session.board.snapshot.settings)
        self._states: list[tuple[Link, QLabel]] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(8, 2, 8, 8)
        self._column.setSpacing(8)
        self._lay_out_notices()
        self._lay_out_quiet()
        self._lay_out_running()
        self._column.addStretch(1)
        if couriers is not None:
            couriers.chain.reported.connect(self.show_states)
            couriers.awake.changed.connect(self.show_states)
        self.sounds.toggled.connect(self._show_enabled)
        self.is_quiet.toggled.connect(self._show_enabled)
        self._show_enabled()
        self.show_states()

    # Layout

    def _head(self, words: str) -> None:
        if self._column.count():
            self._column.addSpacing(self._dialog.gap - 4)
        self._column.addWidget(self._dialog.heading(words))

    def _lay_out_notices(self) -> None:
        dialog, settings = self._dialog, self._settings
        self._head(say("Settings", "An alert comes as"))
        self.notices = dialog.tick(say("Settings", "a notice on the desktop"))
        self.notices.setChecked(settings.get(NOTICES) is not False)
        self._column.addWidget(self.notices)
        self.sounds = dialog.tick(say("Settings", "a sound, volume"))
        self.sounds.setChecked(settings.get(SOUND) is not False)
        self.volume = dialog.field(say("Settings", "Volume, per cent"), 80)
        self.volume.setText(str(volume_of(settings)))
        of_full = dialog.label(say("Settings", "% of full"), tone="sub")
        self._column.addLayout(row(self.sounds, 10, self.volume, 10, of_full))
        always = say("Settings", "and always as a line in the list on the board.")
        self._column.addWidget(dialog.label(always, tone="sub", wrap=True))
        self.testing = dialog.button(say("Settings", "Send a test"))
        self.testing.clicked.connect(self.send_test)
        self._column.addSpacing(4)
        self._column.addLayout(row(self.testing))
        links = () if self._couriers is None else self._couriers.chain.couriers
        for link in links:
            state = dialog.label("", tone="sub", wrap=True)
            self._states.append((link, state))
            self._column.addWidget(state)

    def _lay_out_quiet(self) -> None:
        dialog = self._dialog
        stored = self._settings.get(QUIET)
        begin, end = stored if isinstance(stored, list) and len(stored) == 2 else _USUAL_QUIET
        self._head(say("Settings", "Quiet hours"))
        wide = 92 if dialog.roles.large else 76
        self.is_quiet = dialog.tick(say("Settings", "nothing sounds but “too hot” from"))
        self.is_quiet.setChecked(stored is not None)
        self.quiet_from = dialog.field(say("Settings", "Quiet from"), wide)
        self.quiet_to = dialog.field(say("Settings", "Quiet to"), wide)
        self.quiet_from.setText(clock_text(int(begin)))
        self.quiet_to.setText(clock_text(int(end)))
        to = dialog.label(say("Settings", "to"), tone="sub")
        self._column.addLayout(row(self.is_quiet, 10, self.quiet_from, 10, to, 10, self.quiet_to))

    def _lay_out_running(self) -> None:
        dialog = self._dialog
        self._head(say("Settings", "While nobody looks"))
        self.stays = dialog.tick(say("Settings", "a closed window goes on in the tray"))
        self.stays.setChecked(self._settings.get(KEEP_RUNNING) is not False)
        self._column.addWidget(self.stays)
        self.no_tray = dialog.label(
            say("Settings", "This desktop shows no tray: closing the window ends the board, and"
                " alerts rest until it is open again."),
            tone="sub", wrap=True,
        )  # fmt: skip
        self.no_tray.setVisible(self._couriers is not None and not self._couriers.tray.is_there)
        self._column.addWidget(self.no_tray)
        self.at_login = dialog.tick(say("Settings", "the board starts when you log in"))
        autostart = None if self._couriers is None else self._couriers.autostart
        self.at_login.setEnabled(autostart is not None)
        self.at_login.setChecked(autostart is not None and autostart.is_on)
        self._column.addWidget(self.at_login)
        self.awake = dialog.label("", wrap=True)
        self._column.addWidget(self.awake)

    def _show_enabled(self) -> None:
        self.volume.setEnabled(self.sounds.isChecked())
        for field in (self.quiet_from, self.quiet_to):
            field.setEnabled(self.is_quiet.isChecked())

    # What the couriers did

    def show_states(self) -> None:
        """Show what each courier did last."""
        for link, state in self._states:
            state.setText(self.state_of(link))
        trouble = None if self._couriers is None else self._couriers.awake.trouble
        self.awake.setText("" if trouble is None else translated(trouble))
        self.awake.setVisible(trouble is not None)

    def state_of(self, link: Link) -> str:
        """Return a line such as "Desktop notices: not working since 14:05 (no server)"."""
        name = translated(link.name)
        if not link.is_on:
            return say("Settings", "{courier}: switched off").format(courier=name)
        report = None if self._couriers is None else self._couriers.chain.reports.get(link.name)
        if report is None:
            return say("Settings", "{courier}: nothing sent yet").format(courier=name)
        snapshot = self._session.board.snapshot
        times = Times(snapshot.hours, self._session.clock.now())
        if report.reason is None:
            return say("Settings", "{courier}: worked at {time}").format(
                courier=name, time=times.moment(report.at_us)
            )
        alerts: Alerts | None = self._session.alerts
        troubles = {} if alerts is None else dict(alerts.teller.troubles)
        return say("Settings", "{courier}: not working since {time} ({reason})").format(
            courier=name, time=times.moment(troubles.get(link.name, report.at_us)),
            reason=translated(report.reason),
        )  # fmt: skip

    def send_test(self) -> None:
        """Send a message that means nothing; the lines say how it went."""
        if self._session.alerts is not None:
            self._session.alerts.teller.test()

    # Saving

    def fields(self) -> dict[str, QLineEdit]:
        """Return the fields that can be refused, by what an error calls them."""
        return {str(_VOLUME): self.volume, str(_QUIET): self.quiet_from}

    def read(self) -> dict[str, object]:
        """Return the settings as they are typed.

        Raises
        ------
        InputError
            If a time or the volume can't be taken.
        """
        volume = volume_of(self._settings)
        if self.sounds.isChecked():
            volume = read_count(self.volume.text(), _VOLUME)
            if volume > FULL:
                wanted = text("Settings", "a number from 0 to 100")
                raise InputError(wanted, self.volume.text().strip(), _VOLUME)
        quiet: list[int] | None = None
        if self.is_quiet.isChecked():
            quiet = [read_clock(f.text(), _QUIET) for f in (self.quiet_from, self.quiet_to)]
            if quiet[0] == quiet[1]:
                wanted = text("Settings", "two times that differ")
                raise InputError(wanted, self.quiet_to.text().strip(), _QUIET)
        return {
            NOTICES: self.notices.isChecked(), SOUND: self.sounds.isChecked(), VOLUME: volume,
            QUIET: quiet, KEEP_RUNNING: self.stays.isChecked(),
        }  # fmt: skip

    def acts(self) -> list[Callable[[], ChangeSet]]:
        """Return the acts that store what was changed; raises as `read`."""
        before = {
            NOTICES: self._settings.get(NOTICES) is not False,
            SOUND: self._settings.get(SOUND) is not False,
            VOLUME: volume_of(self._settings), QUIET: self._settings.get(QUIET),
            KEEP_RUNNING: self._settings.get(KEEP_RUNNING) is not False,
        }  # fmt: skip
        changed = {key: now for key, now in self.read().items() if now != before[key]}
        made: list[Callable[[], ChangeSet]] = []
        if changed:
            made.append(lambda: self._store(changed))
        autostart = None if self._couriers is None else self._couriers.autostart
        if autostart is not None and self.at_login.isChecked() is not autostart.is_on:
            made.append(self._set_autostart)
        return made

    def _store(self, values: dict[str, object]) -> ChangeSet:
        session = self._session
        label = text("Act", "notices and sounds")
        with session.store.write(label, session.clock.now(), session.bench.by) as act:
            for key, value in values.items():
                act.set_setting(key, value)
        return act.changes

    def _set_autostart(self) -> ChangeSet:
        """Make the entry or take it away; that is the system's, not the shop's."""
        assert self._couriers is not None
        assert self._couriers.autostart is not None
        self._couriers.autostart.set(self.at_login.isChecked())
        return ChangeSet()
