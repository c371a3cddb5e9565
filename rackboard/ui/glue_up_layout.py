"""The lay-out page of glue-up: the clubs on their slots, the epoxy, the parts, the plan."""

from __future__ import annotations

from itertools import pairwise
from typing import NamedTuple

from PySide6.QtCore import Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QLineEdit, QWidget

from rackboard.ui import type
from rackboard.ui.glue_up_clubs import ClubGrid
from rackboard.ui.glue_up_keys import ChoiceKey, dress_field, field_height
from rackboard.ui.glue_up_page import GAP, Page
from rackboard.ui.glue_up_plan import AskView, PlanBox, PlanView
from rackboard.ui.keys import RIM, TARGET, Key
from rackboard.ui.theme import Theme


class EpoxyView(NamedTuple):
    """An epoxy of the shelf: its two clocks on two lines, or its name."""

    id: int
    text: str
    sub: str
    chosen: bool


class LayoutView(NamedTuple):
    """All that the lay-out page shows; `parts` is "shop" or "cold"."""

    job: str
    promised: str
    clubs: tuple[tuple[str, str], ...]
    marked: int
    epoxies: tuple[EpoxyView, ...]
    batch: str
    parts: str
    shop_sub: str
    cold_sub: str
    plan: PlanView | None
    ask: AskView | None


class LayoutPage(Page):
    """Everything that is said with clean hands, on one page.

    Signals
    -------
    job_clicked(), shelf_clicked(), accepted(), cancelled()
        Change the job; all epoxies and the lot; go to mix; lay nothing out.
    club_chosen(int), epoxy_chosen(int), parts_chosen(str)
        Index of the club; id; "shop", "cold" or "warm".
    """

    job_clicked = Signal()
    shelf_clicked = Signal()
    accepted = Signal()
    cancelled = Signal()
    club_chosen = Signal(int)
    epoxy_chosen = Signal(int)
    parts_chosen = Signal(str)

    def __init__(self, theme: Theme, *, large: bool, parent: QWidget | None = None) -> None:
        super().__init__("", theme, large=large, parent=parent)
        self.title = self.tr("Glue-up")
        roles = self.roles
        self._view: LayoutView | None = None
        self.change = ChoiceKey(self.tr("change"), theme, roles, self)
        self.change.clicked.connect(self.job_clicked)
        self.grid = ClubGrid(self)
        self.grid.club_chosen.connect(self.club_chosen)
        self.epoxies = (ChoiceKey("", theme, roles, self), ChoiceKey("", theme, roles, self))
        for key in self.epoxies:
            key.clicked.connect(self._on_epoxy)
        self.shelf = ChoiceKey(self.tr("lot,\nothers"), theme, roles, self)
        self.shelf.clicked.connect(self.shelf_clicked)
        self.parts: dict[str, ChoiceKey] = {}
        for name, text, sub in (
            ("shop", self.tr("shop"), ""), ("cold", self.tr("cold"), self.tr("brought in")),
            ("warm", self.tr("still warm from"), self.tr("pulling: stop")),
        ):  # fmt: skip
            part = ChoiceKey(text, theme, roles, self, sub=sub)
            part.setProperty("parts", name)
            part.clicked.connect(self._on_parts)
            self.parts[name] = part
        self.box = PlanBox(theme, large=large, parent=self)
        self.go_on = Key(
            self.tr("Laid out, go to mix"), theme, roles, self, primary=True, hint=self.tr("Enter")
        )
        self.go_on.clicked.connect(self.accepted)
        self.cancel = Key(self.tr("Cancel"), theme, roles, self)
        self.cancel.clicked.connect(self.cancelled)
        order: list[QWidget] = [
            self.go_on, self.cancel, self.change, *self.epoxies, self.shelf,
            *self.parts.values(), self.box.field, self.box.at_rack, self.box.split,
        ]  # fmt: skip
        for first, second in pairwise(order):
            QWidget.setTabOrder(first, second)

    def first_focus(self) -> QWidget:
        """Return the field of what is asked, else the key that goes on."""
        return self.box.field if self.box.asks else self.go_on

    def show_size(self, theme: Theme, *, large: bool) -> None:
        """Take another scheme or size."""
        super().show_size(theme, large=large)
        self.box.show_size(theme, large=large)

    def show_view(self, view: LayoutView) -> None:
        """Show the draft."""
        if view == self._view:
            return
        self._view = view
        self.grid.show_clubs(list(view.clubs), view.marked)
        for key, epoxy in zip(self.epoxies, view.epoxies, strict=False):
            key.show_texts(epoxy.text, epoxy.sub)
            key.setChecked(epoxy.chosen)
            key.setProperty("epoxy", epoxy.id)
        self.epoxies[1].setVisible(len(view.epoxies) > 1)
        for name, part in self.parts.items():
            part.setChecked(name == view.parts)
        self.parts["shop"].show_texts(self.tr("shop"), view.shop_sub)
        self.parts["cold"].show_texts(self.tr("cold"), view.cold_sub)
        self.box.show_state(view.plan, view.ask)
        self.place()
        self.update()

    def _on_epoxy(self) -> None:
        sender = self.sender()
        if sender is not None:
            self.epoxy_chosen.emit(int(sender.property("epoxy")))

    def _on_parts(self) -> None:
        sender = self.sender()
        if sender is not None:
            self.parts_chosen.emit(str(sender.property("parts")))

    @property
    def _grid_top(self) -> float:
        return self.head_bottom + (54 if self.large else 36)

    @property
    def _epoxy_top(self) -> float:
        return self._grid_top + self.grid.wanted_height() + (30 if self.large else 22)

    @property
    def _parts_top(self) -> float:
        return self._epoxy_top + TARGET + (34 if self.large else 25)

    def place(self) -> None:
        """Place everything; what is left over goes to the plan."""
        slim = 44 if self.large else 31
        wide = 84 if self.large else 66
        y = self.head_bottom - (2 if self.large else 3)
        self.put(self.change, self.width() - self.pad - wide, y, wide, slim)
        self.grid.setGeometry(
            self.pad - RIM, round(self._grid_top) - RIM, self.room + 2 * RIM,
            self.grid.wanted_height() + 2 * RIM,
        )  # fmt: skip
        self.grid.place()
        two = self._view is None or len(self._view.epoxies) > 1
        keys = (*self.epoxies, self.shelf) if two else (self.epoxies[0], self.shelf)
        shares = (1.25, 1.25, 0.9) if two else (2.5, 0.9)
        self.put_row(keys, self._epoxy_top, TARGET, shares)
        self.put_row(list(self.parts.values()), self._parts_top, TARGET, (1, 1, 1.2))
        top = self._parts_top + TARGET + GAP
        self.put(self.box, self.pad, top, self.room, self.foot_top - GAP - top)
        self.put_row((self.go_on, self.cancel), self.foot_top, self.foot_height, (3.2, 1))

    def draw(self, painter: QPainter) -> None:
        """Paint the job's line and the captions."""
        view, roles, theme = self._view, self.roles, self.theme
        if view is None:
            return
        style, fact = roles.button if self.large else roles.fact_bold, roles.fact
        room = self.room - (100 if self.large else 76)
        one = type.width(style, view.job) + 10 + type.width(fact, view.promised) <= room
        base = self.head_bottom + (26 if self.large else 18)
        if not one:  # a promise is never cut: it goes below
            base -= 12 if self.large else 8
        shown = type.fitting(style, view.job, room)
        x = self.pad + type.draw(painter, style, self.pad, base, shown, theme.text) + 10
        if not one:
            x, base = self.pad, base + (26 if self.large else 19)
        type.draw(painter, fact, x, base, view.promised, theme.sub)
        up = 12 if self.large else 9
        self.caption(painter, self._epoxy_top - up, self.tr("Epoxy"), view.batch)
        self.caption(painter, self._parts_top - up, self.tr("The parts are"))


class ShelfPage(Page):
    """All epoxies by both their clocks, and the lot.

    Signals
    -------
    epoxy_chosen(int), accepted()
        The id; back to the lay-out (the lot is read from `lot`).
    """

    epoxy_chosen = Signal(int)
    accepted = Signal()

    def __init__(self, theme: Theme, *, large: bool, parent: QWidget | None = None) -> None:
        super().__init__("", theme, large=large, parent=parent)
        self.title = self.tr("Epoxy")
        self.lot = QLineEdit(self)
        self.lot.setMaxLength(40)
        self.lot.setAccessibleName(self.tr("Lot"))
        dress_field(self.lot, theme, self.roles)
        self.lot.returnPressed.connect(self.accepted)
        self.keys: list[ChoiceKey] = []
        self._epoxies: tuple[EpoxyView, ...] = ()
        self._page = 0
        self.go_on = Key(self.tr("Done"), theme, self.roles, self, primary=True)
        self.go_on.clicked.connect(self.accepted)
        self.more = Key(self.tr("More"), theme, self.roles, self)
        self.more.clicked.connect(self._on_more)

    def first_focus(self) -> QWidget:
        """Return the key of the chosen epoxy."""
        return next((key for key in self.keys if key.isChecked()), self.go_on)

    def show_shelf(self, epoxies: tuple[EpoxyView, ...]) -> None:
        """Show all epoxies."""
        self._epoxies = epoxies
        while len(self.keys) < len(epoxies):
            key = ChoiceKey("", self.theme, self.roles, self)
            key.clicked.connect(self._on_epoxy)
            self.keys.append(key)
        for key, epoxy in zip(self.keys, epoxies, strict=False):
            key.show_texts(epoxy.text, epoxy.sub)
            key.setChecked(epoxy.chosen)
            key.setProperty("epoxy", epoxy.id)
        self.place()

    def _on_epoxy(self) -> None:
        sender = self.sender()
        if sender is not None:
            self.epoxy_chosen.emit(int(sender.property("epoxy")))

    def _on_more(self) -> None:
        self._page += 1
        self.place()

    @property
    def _lot_top(self) -> float:
        return self.head_bottom + (40 if self.large else 28)

    def place(self) -> None:
        """Place the lot and as many epoxies as there is room for."""
        high = field_height(self.roles)
        self.put(self.lot, self.pad, self._lot_top, self.room, high)
        top = self._lot_top + high + (44 if self.large else 32)
        fit = max(int((self.foot_top - top) // (TARGET + GAP)), 1)
        pages = max(-(-len(self._epoxies) // fit), 1)
        self._page %= pages
        for index, key in enumerate(self.keys):
            shown = index < len(self._epoxies) and index // fit == self._page
            key.setVisible(shown)
            self.put(key, self.pad, top + (index % fit) * (TARGET + GAP), self.room, TARGET)
        self.more.setVisible(pages > 1)
        foot = (self.go_on, self.more) if pages > 1 else (self.go_on,)
        self.put_row(foot, self.foot_top, self.foot_height)

    def draw(self, painter: QPainter) -> None:
        """Paint the captions."""
        up = 12 if self.large else 9
        self.caption(painter, self._lot_top - up, self.tr("Lot of the packs"))
        y = self._lot_top + field_height(self.roles) + (44 if self.large else 32) - up
        self.caption(painter, y, self.tr("By the two clocks of its sheet"))
