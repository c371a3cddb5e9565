"""What the commands do with the selected club: acts at once, or the dialog that asks first."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

from rackboard.core.bench import PlaceKind
from rackboard.core.errors import RackboardError
from rackboard.core.standing import Standing
from rackboard.ui.session import Session

if TYPE_CHECKING:
    from rackboard.ui.alerts_presenter import AlarmCard


class Doing(QObject):
    """Acts on the selected club.

    Dialogs are imported with their first use: the first picture needs none of them.

    Parameters
    ----------
    session : Session
        The open shop.
    window : QWidget
        The parent of every dialog.
    selected : callable
        Gives the selected joint, or None.
    zone : callable
        Gives the zone of what is selected.
    """

    club_chosen = Signal(int)
    """A club was found, or has been carried: bring the ring to it."""
    job_chosen = Signal(int)
    theme_chosen = Signal(str)
    undone = Signal(object)
    redone = Signal(object)
    """The label of what was taken back, or done again."""
    refused = Signal()
    """An act was refused and said so; what is shown may have to be brought back."""

    def __init__(
        self,
        session: Session,
        window: QWidget,
        selected: Callable[[], Standing | None],
        zone: Callable[[], int],
    ) -> None:
        super().__init__(window)
        self.session = session
        self._window = window
        self._selected = selected
        self._zone = zone
        self._find: QWidget | None = None
        self._page: QWidget | None = None

    def act(self, act: Callable[[], object]) -> bool:
        """Do something; show an error of the world calmly."""
        try:
            act()
        except RackboardError as error:
            from rackboard.ui.message import say_error

            say_error(self._window, error)
            return False
        return True

    def undo(self) -> None:
        """Take back the last act."""
        label = self.session.history.undo_label
        if not self.act(self.session.undo):
            self.refused.emit()
        elif label:
            self.undone.emit(label)

    def redo(self) -> None:
        """Do the last undone act again."""
        label = self.session.history.redo_label
        if not self.act(self.session.redo):
            self.refused.emit()
        elif label:
            self.redone.emit(label)

    def disturb(self) -> None:
        """Ask what happened to the selected joint; HOLD if it may have gelled already."""
        standing = self._selected()
        if standing is None or standing.hold is not None or standing.laid_out:
            return
        from rackboard.core.disturbance import Glue
        from rackboard.ui.hold_dialog import HoldDialog, glue_of

        if glue_of(standing, self.session.clock.now()) is not Glue.GELLED:
            HoldDialog(self.session, standing, self._window).open()
            return
        bench = self.session.bench
        self.act(lambda: self.session.take(bench.disturb(standing.joint.id)))

    def answer(self, standing: Standing | None = None) -> None:
        """Ask what happened to a joint on HOLD."""
        standing = standing or self._selected()
        if standing is not None and standing.hold is not None:
            from rackboard.ui.hold_dialog import HoldDialog

            HoldDialog(self.session, standing, self._window).open()

    def move(self) -> None:
        """Carry the selected club somewhere else."""
        standing = self._selected()
        if standing is not None:
            from rackboard.ui.place_chooser import PlaceChooser

            chooser = PlaceChooser(self.session, standing, self._window)
            chooser.club_carried.connect(self.club_chosen)
            chooser.open()

    def take_off(self) -> None:
        """Take the selected club to the grip bench."""
        self._carry(PlaceKind.GRIP_BENCH)

    def hand_out(self) -> None:
        """Say that the selected club has left the shop."""
        self._carry(PlaceKind.OUT)

    def _carry(self, kind: PlaceKind) -> None:
        standing = self._selected()
        if standing is not None:
            bench = self.session.bench
            if self.act(lambda: self.session.take(bench.take_off(standing.club.id, kind))):
                self.club_chosen.emit(standing.club.id)

    def temperature(self, zone_id: int | None = None) -> None:
        """Type what a thermometer says."""
        from rackboard.ui.temperature_dialog import TemperatureDialog

        if zone_id not in self.session.board.snapshot.zones:
            zone_id = self._zone()
        TemperatureDialog(self.session, zone_id, self._window).open()

    def correct(self) -> None:
        """Correct what is on record of the selected joint."""
        standing = self._selected()
        if standing is not None:
            from rackboard.ui.correction import CorrectionDialog

            CorrectionDialog(self.session, standing, self._window).open()

    def swap(self) -> None:
        """Swap the selected club with another: carried, wrong slot or wrong name."""
        standing = self._selected()
        if standing is not None:
            from rackboard.ui.swap_dialog import SwapDialog

            dialog = SwapDialog(self.session, standing, self._window)
            self._followed = standing.club.id
            dialog.acted.connect(self._on_followed)
            dialog.open()

    def release(self) -> None:
        """Let the selected joint go before the board does."""
        standing = self._selected()
        if standing is not None and not standing.laid_out:
            from rackboard.ui.release_dialog import ReleaseDialog

            ReleaseDialog(self.session, standing, self._window).open()

    def ready(self, job_id: int | None = None) -> None:
        """Say that a job is READY, or no longer; who says so is asked for."""
        if job_id is None:
            standing = self._selected()
            job_id = None if standing is None else standing.job.id
        job = next((j for j in self.session.board.jobs() if j.job.id == job_id), None)
        if job is None:
            return
        if job.job.ready_us is not None:
            bench, number = self.session.bench, job.job.id
            self.act(lambda: self.session.take(bench.press_ready(number, False)))
        elif job.good:
            from rackboard.ui.initials_dialog import ready_dialog

            ready_dialog(self.session, job.job.id, self._window).open()

    _followed = 0

    def _on_followed(self) -> None:
        self.club_chosen.emit(self._followed)

    def promise(self) -> None:
        """Say when the selected job is promised."""
        standing = self._selected()
        if standing is not None:
            from rackboard.ui.promise_dialog import PromiseDialog

            PromiseDialog(self.session, standing.job, self._window).open()

    def find(self) -> None:
        """Find a job or club, beside whatever is half done."""
        if self._find is None:
            from rackboard.ui.find_dialog import FindDialog

            dialog = FindDialog(self.session, self._window)
            dialog.club_chosen.connect(self.club_chosen)
            dialog.job_chosen.connect(self.job_chosen)
            dialog.destroyed.connect(self._on_find_closed)
            self._find = dialog
            dialog.show()
        self._find.raise_()
        self._find.activateWindow()

    def _on_find_closed(self) -> None:
        self._find = None

    def answer_alarm(self, card: AlarmCard) -> None:
        """Answer an alarm as it was shown, or take it."""
        alerts = self.session.alerts
        if alerts is None:
            return
        if not card.answers:
            self.act(lambda: self.session.take(alerts.got_it(card.ids)))
            return
        alert = next((a for a in alerts.open if a.id in card.ids), None)
        if alert is not None:
            from rackboard.ui.alert_dialog import AlertDialog

            dialog = AlertDialog(self.session, alert, self._window)
            dialog.club_chosen.connect(self.club_chosen)
            dialog.open()

    def alerts(self) -> None:
        """Show what is open and what happened."""
        if self.session.alerts is None:
            return
        if self._page is None:
            from rackboard.ui.alerts_page import AlertsPage

            page = AlertsPage(self.session, self._window)
            page.club_chosen.connect(self.club_chosen)
            page.destroyed.connect(self._on_page_closed)
            self._page = page
            page.show()
        self._page.raise_()
        self._page.activateWindow()

    def _on_page_closed(self) -> None:
        self._page = None

    def shelf(self) -> None:
        """Show the epoxies."""
        from rackboard.ui.epoxy_shelf import EpoxyShelf

        EpoxyShelf(self.session, self._window).open()

    def import_record(self) -> None:
        """Take in a logger's record."""
        from rackboard.ui.import_dialog import ImportDialog

        ImportDialog(self.session, self._window).open()

    def sources(self) -> None:
        """Show where the temperatures come from."""
        if self.session.feeding is not None:
            from rackboard.ui.feed_settings import FeedDialog

            FeedDialog(self.session, self.session.feeding, self._window).open()

    def erase_customer(self) -> None:
        """Erase a customer's name and phone."""
        from rackboard.ui.customer_dialog import CustomerDialog

        CustomerDialog(self.session, self._window).open()

    def settings(self) -> None:
        """Show the settings."""
        from rackboard.ui.settings_dialog import SettingsDialog

        dialog = SettingsDialog(self.session, self._window)
        dialog.theme_chosen.connect(self.theme_chosen)
        dialog.open()

    def record(self) -> None:
        """Show what is on record of the selected joint."""
        standing = self._selected()
        if standing is not None:
            from rackboard.ui.joint_history_dialog import JointHistoryDialog

            JointHistoryDialog(self.session, standing, self._window).open()

    def table(self) -> None:
        """Show the selected joint's curve as a table."""
        standing = self._selected()
        if standing is not None and not standing.laid_out:
            from rackboard.ui.curve_table import CurveTableDialog

            CurveTableDialog(self.session, standing, self._window).open()

    def sheet(self) -> None:
        """Save the selected joint's curve and facts as a PDF."""
        standing = self._selected()
        if standing is not None and not standing.laid_out:
            from rackboard.ui.joint_sheet_file import save_joint_sheet

            save_joint_sheet(self.session, standing, self._window)

    def help(self) -> None:
        """Show the states, the keys, the model's rules and the cautions."""
        from rackboard.ui.help_dialog import HelpDialog

        HelpDialog(
            self._window, actions=self._window.actions(), unit=self.session.unit
        ).open()

    def about(self) -> None:
        """Show what this program is and whose work it contains."""
        from rackboard.ui.about import AboutDialog

        AboutDialog(self._window).open()
