"""The first moment of glue-up, with clean hands: job, clubs, epoxy, parts, lay-out."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QStackedWidget, QWidget

from rackboard.core.bench import JointKind, Parts
from rackboard.core.errors import InputError, RackboardError
from rackboard.core.temperature import read_typed
from rackboard.services.draft import Draft, Slot, next_number, usual_kind
from rackboard.ui.glue_up_clubs import ClubsPage
from rackboard.ui.glue_up_keys import ChoiceKey, ClubKey
from rackboard.ui.glue_up_layout import LayoutPage, ShelfPage
from rackboard.ui.glue_up_page import Page, error_text
from rackboard.ui.glue_up_presenter import PARTS, ROOM, GlueUpPresenter
from rackboard.ui.glue_up_stop import StopPage
from rackboard.ui.job_form import JobForm
from rackboard.ui.keys import Key
from rackboard.ui.language import say, translated
from rackboard.ui.session import Session
from rackboard.ui.temperature_doubt import temperature_doubt
from rackboard.ui.theme import Theme


class CleanHands(QStackedWidget):
    """The pages on which a job is laid out.

    Parameters
    ----------
    session : Session
        The open shop.
    theme : Theme
        The scheme.
    large : bool
        Sizes for 1920 or for 1280.

    Signals
    -------
    slots_chosen(list)
        Place and slot of every club of the draft; empty: none.
    laid_out(list, list)
        The batches' ids, and the labels of the acts that laid them out.
    cancelled()
        Nothing is to be laid out.
    """

    slots_chosen = Signal(list)
    laid_out = Signal(list, list)
    cancelled = Signal()

    def __init__(
        self, session: Session, theme: Theme, *, large: bool, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._session = session
        self._draft = Draft()
        self._marked = 0
        self._split = self._laying_out = False
        self.job = JobForm(session, theme, large=large)
        self.layout_page = LayoutPage(theme, large=large)
        self.clubs = ClubsPage(theme, large=large)
        self.shelf = ShelfPage(theme, large=large)
        self.stop = StopPage(theme, large=large)
        self.pages: tuple[Page, ...] = (
            self.job, self.layout_page, self.clubs, self.shelf, self.stop,
        )  # fmt: skip
        for page in self.pages:
            self.addWidget(page)
        self._connect()

    def _connect(self) -> None:
        job, layout, clubs, shelf = self.job, self.layout_page, self.clubs, self.shelf
        job.lined_up.connect(self._on_lined_up)
        job.clubs_named.connect(self._on_clubs_named)
        job.accepted.connect(self._show_layout)
        job.cancelled.connect(self.cancelled)
        layout.job_clicked.connect(self._show_job)
        layout.shelf_clicked.connect(self._show_shelf)
        layout.accepted.connect(self._on_laid_out)
        layout.cancelled.connect(self.cancelled)
        layout.club_chosen.connect(self._on_club_chosen)
        layout.epoxy_chosen.connect(self._on_epoxy_chosen)
        layout.parts_chosen.connect(self._on_parts_chosen)
        layout.box.typed.connect(self._on_temperature_typed)
        layout.box.answered.connect(self._on_temperature_answered)
        layout.box.split_clicked.connect(self._on_split)
        clubs.club_chosen.connect(self._on_club_chosen)
        clubs.renamed.connect(self._on_renamed)
        clubs.kind_chosen.connect(self._on_kind_chosen)
        clubs.graphics_chosen.connect(self._on_graphics_chosen)
        clubs.added.connect(self._on_added)
        clubs.removed.connect(self._on_removed)
        clubs.accepted.connect(self._show_layout)
        shelf.epoxy_chosen.connect(self._on_shelf_epoxy)
        shelf.accepted.connect(self._on_shelf_done)
        self.stop.cooled.connect(self._on_cooled)
        self.stop.left.connect(self.cancelled)

    @property
    def draft(self) -> Draft:
        """What stands in the form."""
        return self._draft

    @property
    def page(self) -> Page:
        """The page that is up."""
        return next(page for page in self.pages if page is self.currentWidget())

    def start(self, slot: Slot | None = None) -> None:
        """Begin with a new job, its clubs from a slot on."""
        self._split = False
        self._marked = 0
        self._draft = Draft(
            number=next_number(self._session.store), epoxy_id=self._usual_epoxy(), start=slot
        )
        self._show_job()

    def forget(self) -> None:
        """Drop the draft: it is laid out, or something else is gone on with."""
        self._draft = Draft()

    def reopen(self) -> bool:
        """Show the draft again whose laying out was taken back; return whether there is one."""
        if not self._draft.clubs:
            return False
        self._draft.seat(self._session.board.snapshot)
        self._show_layout()
        return True

    def take_in(self) -> None:
        """Take in what others did: a slot may be gone, a temperature known."""
        if self._draft.clubs and not self._laying_out:
            self._draft.seat(self._session.board.snapshot)
            if self.isVisible():
                self._show_draft()

    def takes_slots(self) -> bool:
        """Return whether a tap on a free slot of the board is for the draft."""
        page = self.currentWidget()
        return bool(self._draft.clubs) and page in (self.layout_page, self.clubs)

    def toggle_slot(self, place_id: int, slot: int) -> None:
        """Put the marked club on a slot, and mark the next club."""
        if not self.takes_slots():
            return
        snapshot = self._session.board.snapshot
        if not self._draft.put(self._marked, (place_id, slot), snapshot):
            name = snapshot.places[place_id].slot_name(slot)
            self._say(say("GlueUp", "{slot} is taken. Tap a free slot.").format(slot=name))
            return
        if self.currentWidget() is self.layout_page:
            self._marked = (self._marked + 1) % len(self._draft.clubs)
        self._show_draft()

    def show_now(self) -> None:
        """Show what has changed by the mere passing of time."""
        if self.currentWidget() is self.layout_page:
            self._show_draft()

    def enter(self, focus: QWidget | None) -> None:
        """Take Enter: on the lay-out it lays out, elsewhere it presses the key with the ring."""
        layout = self.layout_page
        if not isinstance(focus, Key) or not focus.isEnabled():
            return
        choice = isinstance(focus, ChoiceKey | ClubKey)
        if choice and self.currentWidget() is layout and not layout.box.row.asking:
            layout.go_on.click()
        else:
            focus.click()

    def escape(self) -> None:
        """Take Esc: back to the lay-out, or out."""
        if self.currentWidget() in (self.clubs, self.shelf, self.stop):
            self._show_layout()
        else:
            self.cancelled.emit()

    # The draft

    def _presenter(self) -> GlueUpPresenter:
        return GlueUpPresenter(self._session, self._draft)

    def _usual_epoxy(self) -> int:
        """Return the epoxy of the latest batch, else the first on the shelf."""
        snapshot = self._session.board.snapshot
        shelf = [e.id for e in snapshot.epoxies.values() if e.retired_us is None]
        for batch in sorted(snapshot.batches.values(), key=lambda b: -b.id):
            if batch.epoxy_id in shelf:
                return batch.epoxy_id
        return shelf[min(1, len(shelf) - 1)] if shelf else 0

    def open(self, page: Page) -> None:
        """Bring a page up, its first widget focused."""
        self.setCurrentWidget(page)
        if page.presses is not None:
            page.presses.changed()
            page.update()
        self.slots_chosen.emit(self._draft.slots if self.takes_slots() else [])
        focus = page.first_focus()
        self.setFocusProxy(focus)
        focus.setFocus()
        self.show_now()

    def _show_job(self) -> None:
        self.job.show_draft(self._draft)
        self.open(self.job)

    def _join(self, names: tuple[str, ...]) -> bool:
        """Add clubs to the draft; say so if they are too many, and return False."""
        self._marked = len(self._draft.clubs)
        named = [(translated(name), usual_kind(str(name))) for name in names]
        try:
            self._draft.join(named, self._session.board.snapshot)
        except InputError as error:
            self._say(error_text(error))
            return False
        return True

    def _on_lined_up(self, names: tuple[str, ...]) -> None:
        if self._join(names):
            self._show_layout()

    def _on_clubs_named(self, names: tuple[str, ...]) -> None:
        """Take clubs that were typed; a single one about which nothing is odd is laid out."""
        if not self._join(names):
            return
        draft, presenter = self._draft, self._presenter()
        alone = len(draft.clubs) == 1 and draft.clubs[0].slot is not None
        self._show_layout()
        if alone and presenter.ask() is None and presenter.forecast().is_plain():
            self._on_laid_out()

    def _show_layout(self) -> None:
        self._show_draft()
        self.open(self.layout_page)

    def _show_draft(self) -> None:
        self._marked = min(self._marked, max(len(self._draft.clubs) - 1, 0))
        view = self._presenter().layout(self._marked, split=self._split)
        self.layout_page.show_view(view)
        if self._draft.clubs:
            self.clubs.show_club(list(view.clubs), self._marked, self._draft.clubs[self._marked])
        if self.takes_slots():
            self.slots_chosen.emit(self._draft.slots)

    def _on_club_chosen(self, index: int) -> None:
        self._marked = index
        self._show_draft()
        self.open(self.clubs)

    def _on_renamed(self, name: str) -> None:
        self._draft.rename(self._marked, name)
        self._show_draft()

    def _on_kind_chosen(self, kind: JointKind) -> None:
        self._draft.set_kind(self._marked, kind)
        self._show_draft()

    def _on_graphics_chosen(self, graphics: str) -> None:
        self._draft.change(self._marked, graphics=graphics)
        self._show_draft()

    def _on_added(self) -> None:
        if not self._join((say("GlueUp", "club"),)):
            return
        self._show_draft()
        self.clubs.name.setFocus()
        self.clubs.name.selectAll()

    def _on_removed(self) -> None:
        self._draft.remove(self._marked)
        if self._draft.clubs:
            self._show_draft()
        else:
            self._show_job()

    def _show_shelf(self) -> None:
        self.shelf.lot.setText(self._draft.lot)
        self.shelf.show_shelf(self._presenter().shelf())
        self.open(self.shelf)

    def _on_shelf_epoxy(self, epoxy_id: int) -> None:
        self._draft.epoxy_id = epoxy_id
        self.shelf.show_shelf(self._presenter().shelf())

    def _on_shelf_done(self) -> None:
        self._draft.lot = self.shelf.lot.text().strip()
        self._show_layout()

    def _on_epoxy_chosen(self, epoxy_id: int) -> None:
        self._draft.epoxy_id = epoxy_id
        self._show_draft()

    def _on_parts_chosen(self, parts: str) -> None:
        if parts == "warm":
            self.open(self.stop)
            return
        self._draft.parts = Parts.COLD if parts == "cold" else Parts.SHOP
        if parts == "cold":
            self._draft.parts_mc = None
        self._show_draft()
        if self.layout_page.box.asks:
            self.layout_page.box.field.setFocus()

    def _on_cooled(self) -> None:
        if self.stop.presses is None or self.stop.presses.meant:
            self._draft.parts = Parts.SHOP
            self._show_layout()

    def _on_split(self) -> None:
        self._split = not self._split
        self._show_draft()

    def _on_temperature_typed(self, text: str) -> None:
        box = self.layout_page.box
        ask = self._presenter().ask()
        if ask is None:
            return
        unit = self._session.unit
        try:
            typed = read_typed(text, unit, ask.question.rstrip("?"))
        except InputError as error:
            box.say(error_text(error))
            return
        doubt = temperature_doubt(typed, unit, warm_box=self._presenter().asks_of_box(ask))
        if doubt is None:
            self._on_temperature_answered(typed.temperature_mc)
            return
        box.doubt(translated(doubt.question), list(doubt.answers))

    def _on_temperature_answered(self, temperature_mc: int) -> None:
        ask = self._presenter().ask()
        box = self.layout_page.box
        if ask is None:
            return
        if ask.key == PARTS:
            self._draft.parts_mc = temperature_mc
        else:
            zone_id = int(ask.key.removeprefix(ROOM))
            at_rack = box.at_rack.isChecked()
            try:
                changes = self._session.bench.type_temperature(
                    zone_id, temperature_mc, at_rack=at_rack
                )
            except RackboardError as error:
                box.say(error_text(error))
                return
            self._session.take(changes)
        self._show_draft()
        self.layout_page.first_focus().setFocus()

    def _on_laid_out(self) -> None:
        box = self.layout_page.box
        if box.asks:
            if box.row.asking:
                return
            if box.field.text().strip():
                self._on_temperature_typed(box.field.text())
            else:
                box.say(say("GlueUp", "Say how warm it is: without it there are no times."))
                box.field.setFocus()
            return
        count = len(self._draft.clubs)
        parts = (self._presenter().forecast().shares() if self._split else ()) or (count,)
        queue: list[int] = []
        labels: list[str] = []
        self._laying_out = True
        try:
            for entry in self._draft.entries(parts):
                laid = self._session.bench.lay_out(entry)
                queue.append(laid.batch_id)
                labels.append(laid.changes.label)
                self._session.take(laid.changes)
        except RackboardError as error:
            self._say(error_text(error))
        finally:
            self._laying_out = False
        if queue:
            self.slots_chosen.emit([])
            self.laid_out.emit(queue, labels)

    def _say(self, text: str) -> None:
        if self.currentWidget() is self.job:
            self.job.say(text)
        elif self.currentWidget() is self.clubs:
            self.clubs.row.say(text)
        else:
            self.layout_page.box.say(text)
