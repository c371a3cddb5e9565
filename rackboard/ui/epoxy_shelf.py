"""The epoxy shelf: what the shop glues with, by both clocks."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QPersistentModelIndex,
    QRectF,
    QSize,
    Qt,
)
from PySide6.QtGui import QPainter, QPen
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFileDialog,
    QHBoxLayout,
    QListView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QVBoxLayout,
    QWidget,
)

from rackboard.core.bench import Epoxy
from rackboard.core.epoxy import Sheet
from rackboard.core.errors import RackboardError
from rackboard.store.changes import ChangeSet
from rackboard.ui import type
from rackboard.ui.dialog import Dialog, error_text
from rackboard.ui.epoxy_form import EpoxyForm
from rackboard.ui.language import say
from rackboard.ui.session import Session
from rackboard.ui.sheet_fields import copy_name, renamed
from rackboard.ui.sheet_files import export_sheet, import_sheet
from rackboard.ui.theme import Theme
from rackboard.ui.type import Roles
from rackboard.ui.wording import both_clocks

_Index = QModelIndex | QPersistentModelIndex
EPOXY_ROLE = Qt.ItemDataRole.UserRole


class ShelfModel(QAbstractListModel):
    """The epoxies of the shelf; retired ones last."""

    def __init__(self) -> None:
        super().__init__()
        self._epoxies: list[Epoxy] = []

    def show_epoxies(self, epoxies: list[Epoxy]) -> None:
        """Show these; the same ids in the same order only change in place."""
        ordered = sorted(epoxies, key=lambda e: (e.retired_us is not None, e.id))
        same = [e.id for e in ordered] == [e.id for e in self._epoxies]
        if same:
            self._epoxies = ordered
            if ordered:
                self.dataChanged.emit(self.index(0), self.index(len(ordered) - 1))
            return
        self.beginResetModel()
        self._epoxies = ordered
        self.endResetModel()

    def epoxies(self) -> list[Epoxy]:
        """Return what is shown."""
        return self._epoxies

    def rowCount(self, parent: _Index = QModelIndex()) -> int:  # noqa: B008
        """Return how many there are."""
        return 0 if parent.isValid() else len(self._epoxies)

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return the epoxy, or its name in words."""
        if not index.isValid():
            return None
        epoxy = self._epoxies[index.row()]
        if role == EPOXY_ROLE:
            return epoxy
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            parts = [epoxy.sheet.name, both_clocks(epoxy.sheet)]
            return ", ".join([*parts, *([_note(epoxy)] if _note(epoxy) else [])])
        return None


def _note(epoxy: Epoxy) -> str:
    if epoxy.retired_us is not None:
        return say("EpoxyShelf", "retired: not offered at glue-up")
    if not epoxy.typical:
        return ""
    return say("EpoxyShelf", "typical of its class; type in your own product's sheet")


class ShelfDelegate(QStyledItemDelegate):
    """Paints one epoxy: its name by both clocks, its short name, what to know of it."""

    def __init__(self, theme: Theme, roles: Roles, parent: QWidget) -> None:
        super().__init__(parent)
        self.theme, self.roles = theme, roles

    def sizeHint(self, option: QStyleOptionViewItem, index: _Index) -> QSize:
        """Return the height of two lines."""
        del option, index
        return QSize(300, 84 if self.roles.large else 64)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: _Index) -> None:
        """Paint it."""
        epoxy: Epoxy = index.data(EPOXY_ROLE)
        theme, roles = self.theme, self.roles
        state: QStyle.StateFlag = option.state
        rect = QRectF(option.rect).adjusted(4, 4, -4, -4)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        chosen = bool(state & QStyle.StateFlag.State_Selected)
        if chosen:
            focus = bool(state & QStyle.StateFlag.State_HasFocus)
            painter.setBrush(theme.surf2)
            painter.setPen(QPen(theme.ring if focus else theme.edge, 3 if focus else 1.5))
            painter.drawRoundedRect(rect.adjusted(1, 1, -1, -1), 8, 8)
        retired = epoxy.retired_us is not None
        pad = 18 if roles.large else 13
        style = roles.inspector_time
        top = rect.top() + (16 if roles.large else 11)
        baseline = top + type.cap_height(style)
        clocks = type.fitting(style, both_clocks(epoxy.sheet), rect.width() - 2 * pad)
        color = theme.dim if retired else theme.text
        type.draw(painter, style, rect.left() + pad, baseline, clocks, color)
        under = baseline + (28 if roles.large else 22)
        x = rect.left() + pad
        room = rect.width() - 2 * pad
        name = type.fitting(roles.fact_bold, epoxy.sheet.name, room)
        x += type.draw(painter, roles.fact_bold, x, under, name, color)
        if note := _note(epoxy):
            shown = type.fitting(roles.fact, note, rect.right() - pad - x - 16)
            quiet = theme.dim if retired else theme.sub
            type.draw(painter, roles.fact, x + 16, under, shown, quiet)
        painter.restore()


class EpoxyShelf(Dialog):
    """Adds, copies, changes, retires, imports and exports epoxies.

    Parameters
    ----------
    session : Session
        The open shop.
    theme : Theme, optional
        The scheme; by default the application's.
    """

    def __init__(
        self, session: Session, parent: QWidget | None = None, *, theme: Theme | None = None
    ) -> None:
        super().__init__(parent, theme)
        self.session = session
        self.form: EpoxyForm | None = None
        self.model = ShelfModel()
        self._delegate = ShelfDelegate(self.theme, self.roles, self)
        self._lay_out()
        session.acted.connect(self._on_acted)
        self.refresh()
        self.select(0)
        self.fit(1120 if self.roles.large else 900, 760 if self.roles.large else 620)
        self.list.setFocus()

    def _lay_out(self) -> None:
        content = self.frame(
            self.tr("Epoxy shelf"),
            self.tr("Batches keep the sheet that they were mixed by, whatever is changed here."),
        )
        self.list = QListView()
        self.list.setModel(self.model)
        self.list.setItemDelegate(self._delegate)
        self.list.setAccessibleName(self.tr("Epoxies"))
        self.list.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.list.setUniformItemSizes(True)
        self.list.doubleClicked.connect(self.edit)
        self.list.selectionModel().currentChanged.connect(self._on_chosen)
        self.show_retired = self.tick(self.tr("Show the retired ones"))
        self.show_retired.toggled.connect(self.refresh)
        self.message = self.label("", self.roles.fact_bold, wrap=True)
        left = QVBoxLayout()
        left.setSpacing(10)
        left.addWidget(self.list, 1)
        left.addWidget(self.show_retired)
        left.addWidget(self.message)
        self.adding = self.button(self.tr("Add…"))
        self.copying = self.button(self.tr("Copy…"))
        self.editing = self.button(self.tr("Edit…"))
        self.retiring = self.button(self.tr("Retire"))
        self.importing = self.button(self.tr("Import…"))
        self.exporting = self.button(self.tr("Export…"))
        right = QVBoxLayout()
        right.setSpacing(12)
        for button, act in (
            (self.editing, self.edit), (self.copying, self.copy), (self.adding, self.add),
            (self.retiring, self.retire), (self.importing, self._on_import),
            (self.exporting, self._on_export),
        ):  # fmt: skip
            button.clicked.connect(act)
            button.setMinimumWidth(170 if self.roles.large else 132)
            right.addWidget(button)
            if button in (self.adding, self.retiring):
                right.addSpacing(14)
        right.addStretch(1)
        columns = QHBoxLayout()
        columns.setSpacing(24)
        columns.addLayout(left, 1)
        columns.addLayout(right)
        content.addLayout(columns, 1)
        self.add_buttons("", self.tr("Close"))

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        super().show_theme(theme)
        if hasattr(self, "_delegate"):
            self._delegate.theme = theme

    # The list

    def refresh(self) -> None:
        """Read the shelf again."""
        chosen = self.chosen()
        retired = self.show_retired.isChecked()
        self.model.show_epoxies(self.session.store.shop.epoxies(retired=retired))
        ids = [epoxy.id for epoxy in self.model.epoxies()]
        self.select(ids.index(chosen.id) if chosen is not None and chosen.id in ids else 0)

    def select(self, at: int) -> None:
        """Choose the epoxy in this line."""
        self.list.setCurrentIndex(self.model.index(min(at, self.model.rowCount() - 1)))
        self._on_chosen()

    def chosen(self) -> Epoxy | None:
        """Return the chosen epoxy."""
        index = self.list.currentIndex()
        found = index.data(EPOXY_ROLE) if index.isValid() else None
        return found if isinstance(found, Epoxy) else None

    def _on_chosen(self) -> None:
        epoxy = self.chosen()
        for button in (self.copying, self.editing, self.retiring, self.exporting):
            button.setEnabled(epoxy is not None)
        retired = epoxy is not None and epoxy.retired_us is not None
        self.retiring.setText(self.tr("Bring back") if retired else self.tr("Retire"))

    def _on_acted(self, changes: ChangeSet) -> None:
        if "epoxy" in changes.tables:
            self.refresh()

    # Acts

    def add(self) -> None:
        """Open an empty form."""
        self._open(None)

    def edit(self) -> None:
        """Open the chosen epoxy's form."""
        epoxy = self.chosen()
        if epoxy is not None:
            self._show(EpoxyForm(self.session, self, theme=self.theme, epoxy=epoxy))

    def copy(self) -> None:
        """Open a form that starts from the chosen epoxy."""
        epoxy = self.chosen()
        if epoxy is not None:
            names = {e.sheet.name for e in self.session.store.shop.epoxies(retired=True)}
            self._open(renamed(epoxy.sheet, copy_name(epoxy.sheet.name, names)))

    def retire(self) -> None:
        """Take the chosen epoxy off the shelf, or put it back."""
        epoxy = self.chosen()
        if epoxy is None:
            return
        retiring = epoxy.retired_us is None
        self._do(lambda: self.session.bench.retire_epoxy(epoxy.id, retiring))

    def import_from(self, path: Path) -> None:
        """Open a form with the sheet in a file; it is kept only when saved."""
        try:
            sheet = import_sheet(path)
        except RackboardError as error:
            self.message.setText(error_text(error))
            return
        self._open(sheet)

    def export_to(self, path: Path) -> None:
        """Write the chosen epoxy's sheet to a file."""
        epoxy = self.chosen()
        if epoxy is None:
            return
        try:
            written = export_sheet(path, epoxy.sheet)
        except RackboardError as error:
            self.message.setText(error_text(error))
            return
        self.message.setText(self.tr("Written to {0}.").format(written.name))

    def _on_import(self) -> None:
        title, kind = self.tr("Import an epoxy's sheet"), self.tr("Sheets (*.toml)")
        path, _ = QFileDialog.getOpenFileName(self, title, "", kind)
        if path:
            self.import_from(Path(path))

    def _on_export(self) -> None:
        epoxy = self.chosen()
        if epoxy is None:
            return
        title, kind = self.tr("Export this sheet"), self.tr("Sheets (*.toml)")
        path, _ = QFileDialog.getSaveFileName(self, title, f"{epoxy.sheet.name}.toml", kind)
        if path:
            self.export_to(Path(path))

    def _do(self, act: Any) -> None:
        try:
            changes: ChangeSet = act()
        except RackboardError as error:
            self.message.setText(error_text(error))
            return
        self.message.setText("")
        self.session.take(changes)

    def _open(self, sheet: Sheet | None) -> None:
        self._show(EpoxyForm(self.session, self, theme=self.theme, sheet=sheet))

    def _show(self, form: EpoxyForm) -> None:
        self.message.setText("")
        self.form = form
        form.destroyed.connect(self._on_form_closed)
        form.open()

    def _on_form_closed(self) -> None:
        self.form = None
