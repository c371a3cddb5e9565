"""Glue-up in the right column: clean hands, mixed now, all racked.

The panel shows the moment that the store says it is: after every act, and after an undo from
anywhere, it looks again.
"""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, Qt, QTimer, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QShowEvent
from PySide6.QtWidgets import QApplication, QLineEdit, QStackedWidget, QVBoxLayout, QWidget

from rackboard.core.bench import Batch
from rackboard.core.errors import InputError, RackboardError
from rackboard.core.instants import Instant
from rackboard.core.text import text
from rackboard.services.doubts import mixed_doubt
from rackboard.services.draft import Slot
from rackboard.ui.glue_up_hands import CleanHands
from rackboard.ui.glue_up_moments import MixPage, RackPage
from rackboard.ui.glue_up_page import Answer, Page, error_text
from rackboard.ui.glue_up_presenter import GlueUpPresenter
from rackboard.ui.glue_up_press import Presses
from rackboard.ui.keys import Key
from rackboard.ui.language import say, translated
from rackboard.ui.session import Session
from rackboard.ui.theme import Theme

CLOCK_MS = 5_000


class GlueUpPanel(QWidget):
    """The three moments of glue-up.

    Parameters
    ----------
    session : Session
        The open shop; the panel acts through it.
    theme : Theme
        The scheme.
    large : bool
        Sizes for 1920 or for 1280.

    Signals
    -------
    slots_chosen(list)
        Place and slot of every club of the draft, for the dashed preview; empty: none.
    finished()
        Everything that was laid out is racked and looked at.
    cancelled()
        The panel is left; what is laid out stays so.
    """

    slots_chosen = Signal(list)
    finished = Signal()
    cancelled = Signal()

    def __init__(
        self, session: Session, theme: Theme, *, large: bool, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._session = session
        self._late = 0
        self._queue: list[int] = []
        self._labels: list[str] = []
        self._batch_id: int | None = None
        self._moment: tuple[int, bool, bool] | None = None
        self.hands = CleanHands(session, theme, large=large)
        self.mix = MixPage(session, theme, large=large)
        self.rack = RackPage(session, theme, large=large)
        self._pages: tuple[Page, ...] = (*self.hands.pages, self.mix, self.rack)
        self.presses = Presses()
        for page in (self.mix, self.rack, self.hands.stop):
            page.presses = self.presses
        self.stack = QStackedWidget(self)
        for widget in (self.hands, self.mix, self.rack):
            self.stack.addWidget(widget)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.stack)
        self._timer = QTimer(self)
        self._timer.setInterval(CLOCK_MS)
        self._timer.timeout.connect(self.show_now)
        self._connect()
        for field in self.findChildren(QLineEdit):
            field.installEventFilter(self)
        self.show_size(theme, large=large)

    def _connect(self) -> None:
        self.hands.slots_chosen.connect(self.slots_chosen)
        self.hands.laid_out.connect(self._on_laid_out)
        self.hands.cancelled.connect(self._on_cancelled)
        self.mix.mixed.connect(self._on_mixed)
        self.mix.typed.connect(self._on_time_typed)
        self.mix.answered.connect(self._mix)
        self.mix.back_asked.connect(self._back)
        self.rack.racked.connect(self._on_racked)
        self.rack.looked.connect(self._on_looked)
        self.rack.typed.connect(self._on_racked_typed)
        self.rack.late_chosen.connect(self._on_late_chosen)
        self._session.acted.connect(self._on_acted)
        self._session.ticked.connect(self.show_now)

    # From outside

    def show_size(self, theme: Theme, *, large: bool) -> None:
        """Take another scheme or size."""
        for page in self._pages:
            page.show_size(theme, large=large)

    def start(self, slot: Slot | None = None) -> None:
        """Begin with a new job, its clubs from a slot on."""
        self._queue, self._labels, self._batch_id, self._moment = [], [], None, None
        self._late = 0
        self._open_hands()
        self.hands.start(slot)

    def resume(self, batch_id: int) -> None:
        """Go on with a batch that is laid out or mixed."""
        self._queue, self._labels = [], []
        self.hands.forget()
        self._enter(batch_id)

    def takes_slots(self) -> bool:
        """Return whether a tap on a free slot of the board is for the draft."""
        return self.stack.currentWidget() is self.hands and self.hands.takes_slots()

    def toggle_slot(self, place_id: int, slot: int) -> None:
        """Put the marked club on a slot, and mark the next club."""
        if self.takes_slots():
            self.hands.toggle_slot(place_id, slot)

    @property
    def page(self) -> Page:
        """The page that is up."""
        if self.stack.currentWidget() is self.hands:
            return self.hands.page
        return self.mix if self.stack.currentWidget() is self.mix else self.rack

    def show_now(self) -> None:
        """Show the time, and what has changed by its passing."""
        if not self.isVisible():
            return
        clock = self._presenter().clock()
        for page in self._pages:
            page.show_clock(clock)
        if self.page is self.rack:
            self._show_rack()
        elif self.stack.currentWidget() is self.hands:
            self.hands.show_now()

    def showEvent(self, event: QShowEvent) -> None:
        """Keep the time while the panel is seen."""
        super().showEvent(event)
        self._timer.start()
        self.show_now()

    def hideEvent(self, event: QHideEvent) -> None:
        """Rest while it is not."""
        super().hideEvent(event)
        self._timer.stop()
        self.slots_chosen.emit([])

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Keep Enter in the field that it was typed into.

        A field lets it pass on, and by then the ring may stand on the answer to a doubt.
        """
        if isinstance(event, QKeyEvent) and event.type() is QEvent.Type.KeyPress:
            enter = event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
            if enter and isinstance(watched, QLineEdit):
                if not event.isAutoRepeat():
                    watched.returnPressed.emit()
                return True
        return False

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Take Enter, Esc and Backspace; letters and the rest are left to the fields."""
        at_hands, key = self.stack.currentWidget() is self.hands, event.key()
        if event.isAutoRepeat():
            return  # a key that is held was meant once
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            focus = QApplication.focusWidget()
            if at_hands:
                self.hands.enter(focus)
            elif isinstance(focus, Key) and focus.isEnabled():
                focus.click()
        elif key == Qt.Key.Key_Escape:
            if at_hands:
                self.hands.escape()
            else:
                self._on_cancelled()
        elif key == Qt.Key.Key_Backspace and not at_hands:
            self._back()
        else:
            super().keyPressEvent(event)

    # Mixed now, all racked

    def _presenter(self) -> GlueUpPresenter:
        return GlueUpPresenter(self._session, self.hands.draft)

    def _open_hands(self) -> None:
        self.stack.setCurrentWidget(self.hands)
        self.setFocusProxy(self.hands)

    def _open(self, page: Page, *, keep_focus: bool) -> None:
        self.stack.setCurrentWidget(page)
        if not keep_focus:  # something else is to be pressed from now on
            self.presses.changed()
            page.update()
        focus = page.first_focus()
        self.setFocusProxy(focus)
        if not keep_focus:
            focus.setFocus()
        self.show_now()

    def _say(self, words: str) -> None:
        if self.page is self.mix:
            self.mix.say(words)
        else:
            self.rack.say(words)

    def _on_cancelled(self) -> None:
        self.hands.forget()
        self.slots_chosen.emit([])
        self.cancelled.emit()

    def _on_laid_out(self, batch_ids: list[int], labels: list[str]) -> None:
        self._queue, self._labels = batch_ids, labels
        self._enter(batch_ids[0])

    def _batch(self) -> Batch | None:
        if self._batch_id is None:
            return None
        found = self._session.store.work.batches([self._batch_id])
        return found[0] if found else None

    def _enter(self, batch_id: int) -> None:
        self._batch_id, self._moment = batch_id, None
        self._late = 0
        self.mix.reset()
        self.rack.reset()
        self._show_moment()

    def _on_acted(self, changes: object) -> None:
        del changes
        if self._batch_id is not None:
            self._show_moment()
        else:
            self.hands.take_in()

    def _show_moment(self) -> None:
        """Open the page that the store says it is time for."""
        batch = self._batch()
        shown, self._moment = self._moment, None
        if batch is None:  # its laying out was taken back
            self._batch_id = None
            self._queue, self._labels = [], []
            self._open_hands()
            if not self.hands.reopen():
                self._on_cancelled()
            return
        self._moment = (batch.id, batch.mixed_us is not None, batch.racked_us is not None)
        same = shown == self._moment  # somebody else's act: whoever is typing here goes on
        if batch.mixed_us is None:
            self.mix.show_batch(*self._presenter().batch_lines(batch))
            self._open(self.mix, keep_focus=same)
        elif batch.racked_us is None or batch.looked_us is None:
            self._show_rack()
            self._open(self.rack, keep_focus=same)
        else:
            self._next_batch()

    def _next_batch(self) -> None:
        done = self._batch_id
        self._queue = [batch_id for batch_id in self._queue if batch_id != done]
        self._labels = []
        if self._queue:
            self._enter(self._queue[0])
        else:
            self._batch_id = None
            self.hands.forget()
            self.finished.emit()

    def _show_rack(self) -> None:
        batch = self._batch()
        if batch is not None and batch.mixed_us is not None:
            self.rack.show_view(self._presenter().rack(batch, self._late))

    def _on_mixed(self) -> None:
        self._mix(None)

    def _mix(self, at_us: Instant | None) -> None:
        if self._batch_id is None:
            return
        try:
            changes = self._session.bench.mix(self._batch_id, at_us)
        except RackboardError as error:
            self._say(error_text(error))
            return
        self._labels.append(changes.label)
        self._session.take(changes)

    def _on_time_typed(self) -> None:
        now, hours = self._session.clock.now(), self._session.board.snapshot.hours
        try:
            at_us = self.mix.field.moment()
        except InputError as error:
            self.mix.say(error_text(error))
            self.mix.field.setFocus()
            return
        doubt = mixed_doubt(at_us, now, hours)
        if doubt is None:
            self._mix(at_us)
            return
        moment = self._presenter().moment
        yes, no = say("GlueUp", "Yes, {time}"), say("GlueUp", "No, {time}")
        if doubt.proposed_us is None:
            answers = [
                Answer(yes.format(time=moment(doubt.typed_us)), doubt.typed_us),
                Answer(say("GlueUp", "Let me correct it"), None),
            ]
        else:
            answers = [
                Answer(yes.format(time=moment(doubt.proposed_us)), doubt.proposed_us),
                Answer(no.format(time=moment(doubt.typed_us)), doubt.typed_us),
            ]
        self.mix.doubt(translated(doubt.question), answers)

    def _on_late_chosen(self, count: int) -> None:
        self._late = count
        self._show_rack()

    def _on_racked(self) -> None:
        self._rack(None)

    def _on_racked_typed(self) -> None:
        """Take a time of "all racked" that is said later."""
        batch, page = self._batch(), self.rack
        if batch is None or batch.mixed_us is None:
            return
        try:
            at_us = page.field.moment()
            if at_us < batch.mixed_us:
                moment = self._presenter().moment
                raise InputError(
                    text("GlueUp", "a time after mixing, {time}").format(
                        time=moment(batch.mixed_us)
                    ),
                    moment(at_us), text("GlueUp", "all racked at"),
                )
        except InputError as error:
            page.say(error_text(error))
            page.field.setFocus()
            return
        self._rack(at_us)

    def _rack(self, at_us: Instant | None) -> None:
        if self._batch_id is None:
            return
        try:
            changes = self._session.bench.rack_all(self._batch_id, self._late, at_us)
        except RackboardError as error:
            self._say(error_text(error))
            return
        self._labels.append(changes.label)
        self._session.take(changes)

    def _on_looked(self) -> None:
        if self._batch_id is None:
            return
        try:
            changes = self._session.bench.look(self._batch_id)
        except RackboardError as error:
            self._say(error_text(error))
            return
        self._session.take(changes)

    def _back(self) -> None:
        """Take back the last press, or the laying out before it."""
        if not self._labels:
            self._on_cancelled()
            return
        batch = self._batch()
        laying_out = batch is None or batch.mixed_us is None
        times = len(self._labels) if laying_out else 1
        for _ in range(times):
            label = self._labels[-1] if self._labels else None
            if label is None or self._session.history.undo_label != label:
                self._say(say("GlueUp", "Something else was done since. Use Edit, Undo."))
                return
            self._labels.pop()
            try:
                self._session.undo()
            except RackboardError as error:
                self._say(error_text(error))
                return

