"""The help (F1): a list of pages, and the page."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QAction, QKeyEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QScrollArea,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from rackboard.core.temperature import Unit
from rackboard.ui.dialog import Dialog, row
from rackboard.ui.help_pages import (
    Block,
    Heading,
    KeyLine,
    Page,
    Paragraph,
    Points,
    Shown,
    Signal,
    pages,
)
from rackboard.ui.help_signs import SignView
from rackboard.ui.list_rows import Line, LineList
from rackboard.ui.theme import Theme


class HelpDialog(Dialog):
    """What the board shows, its keys, how it reckons, and cautions.

    Parameters
    ----------
    parent : QWidget, optional
        The window underneath.
    actions : sequence of QAction
        The window's commands, whose keys are listed.
    unit : Unit
        Of the shop.
    theme : Theme, optional
        The scheme; by default the application's.
    page : str
        The page shown first: "states", "board", "keys", "model" or "cautions".
    """

    def __init__(
        self,
        parent: QWidget | None = None,
        *,
        actions: Sequence[QAction] = (),
        unit: Unit = Unit.C,
        theme: Theme | None = None,
        page: str = "states",
    ) -> None:
        super().__init__(parent, theme)
        self.pages = pages(unit, actions)
        self._lay_out()
        self.show_page(page)
        large = self.roles.large
        self.fit(1200 if large else 980, 960 if large else 760)
        self.list.setFocus()

    def _lay_out(self) -> None:
        large = self.roles.large
        content = self.frame(self.tr("Help"))
        self.list = LineList(self.tr("Pages of the help"), self.theme, self.roles)
        self.list.setFixedWidth(250 if large else 216)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.show_lines(tuple(Line(page.key, page.title) for page in self.pages))
        self.stack = QStackedWidget()
        for page in self.pages:
            self.stack.addWidget(self._area(page))
        self._filled: set[int] = set()
        self.list.selectionModel().currentChanged.connect(self._on_chosen)
        self.list.installEventFilter(self)
        columns = QHBoxLayout()
        columns.setSpacing(24 if large else 16)
        columns.addWidget(self.list)
        columns.addWidget(self.stack, 1)
        content.addLayout(columns, 1)
        self.add_buttons("", self.tr("Close"))

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        super().show_theme(theme)
        if hasattr(self, "list"):
            self.list.show_theme(theme)
        for sign in self.findChildren(SignView):
            sign.show_theme(theme)

    def show_page(self, key: str) -> None:
        """Turn to a page."""
        keys = [page.key for page in self.pages]
        at = keys.index(key) if key in keys else 0
        self.list.setCurrentIndex(self.list.lines_model.index(at))
        self._on_chosen()

    def _on_chosen(self) -> None:
        at = max(self.list.currentIndex().row(), 0)
        if at not in self._filled:  # a page is laid out when it is first turned to
            self._filled.add(at)
            area = self.stack.widget(at)
            body = area.widget() if isinstance(area, QScrollArea) else None
            assert body is not None
            self._fill(body, self.pages[at])
        self.stack.setCurrentIndex(at)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Let the page scroll by its keys while the list of pages has the focus."""
        if (
            watched is self.list
            and isinstance(event, QKeyEvent)
            and event.type() is QEvent.Type.KeyPress
            and event.key() in (Qt.Key.Key_PageUp, Qt.Key.Key_PageDown, Qt.Key.Key_Space)
        ):
            area = self.stack.currentWidget()
            assert isinstance(area, QScrollArea)
            bar = area.verticalScrollBar()
            down = event.key() != Qt.Key.Key_PageUp
            bar.setValue(bar.value() + (1 if down else -1) * (bar.pageStep() - 40))
            return True
        return super().eventFilter(watched, event)

    # A page

    def _area(self, page: Page) -> QScrollArea:
        area = self.scrolled(QWidget())
        area.setFocusPolicy(Qt.FocusPolicy.StrongFocus)  # Tab, then arrows scroll
        area.setProperty("page", "help")
        area.setAccessibleName(page.title)
        area.setAccessibleDescription(spoken(page))
        return area

    def _fill(self, body: QWidget, page: Page) -> None:
        column = QVBoxLayout(body)
        column.setContentsMargins(10, 4, 18, 12)
        column.setSpacing(12 if self.roles.large else 9)
        column.addWidget(self.label(page.title, self.roles.inspector_time))
        for block in page.blocks:
            column.addWidget(self._block(block))
        column.addStretch(1)

    def _block(self, block: Block) -> QWidget:
        roles = self.roles
        if isinstance(block, Heading):
            made = self.label(block.said, roles.head)
            made.setContentsMargins(0, 10, 0, 0)
            return made
        if isinstance(block, Paragraph):
            return self._text(block.said)
        if isinstance(block, Points):
            return self._stack(*(self._point(said) for said in block.said))
        if isinstance(block, Shown):
            return self._shown(block)
        if isinstance(block, Signal):
            return self._signal(block)
        return self._key(block)

    def _text(self, said: str, tone: str = "") -> QLabel:
        made = self.label(said, tone=tone, wrap=True)
        made.setMaximumWidth(820 if self.roles.large else 690)
        return made

    def _stack(self, *items: QWidget) -> QWidget:
        made = QWidget()
        column = QVBoxLayout(made)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        for item in items:
            column.addWidget(item)
        return made

    def _point(self, said: str) -> QWidget:
        made = QWidget()
        dash = self.label("–", tone="sub")
        line = row(dash, 10, stretch=False)
        line.setAlignment(dash, Qt.AlignmentFlag.AlignTop)
        line.addWidget(self._text(said), 1)
        line.setContentsMargins(0, 0, 0, 0)
        made.setLayout(line)
        return made

    def _shown(self, block: Shown) -> QWidget:
        made = QWidget()
        sign = SignView(block.sign, self.theme, self.roles, block.name)
        words = self._stack(
            self.label(block.name, self.roles.fact_bold, wrap=True),
            *(self._text(said, "sub") for said in block.said),
        )
        line = row(sign, 20 if self.roles.large else 16, stretch=False)
        line.setAlignment(sign, Qt.AlignmentFlag.AlignTop)
        line.addWidget(words, 1)
        line.setAlignment(words, Qt.AlignmentFlag.AlignVCenter)
        line.setContentsMargins(0, 0, 0, 0)
        made.setLayout(line)
        return made

    def _signal(self, block: Signal) -> QWidget:
        made = QFrame()
        made.setProperty("tone", "panel")
        word = self.label(block.word, self.roles.fact_bold, tone="signal")
        head = row(word, 12, self.label(block.name, self.roles.head))
        column = QVBoxLayout(made)
        pad = 18 if self.roles.large else 14
        column.setContentsMargins(pad, pad - 4, pad, pad - 2)
        column.setSpacing(8)
        column.addLayout(head)
        column.addWidget(self._text(block.said))
        return made

    def _key(self, block: KeyLine) -> QWidget:
        made = QWidget()
        keys = self.label(block.keys, self.roles.fact_bold)
        keys.setFixedWidth(240 if self.roles.large else 190)
        line = row(keys, 12, stretch=False)
        line.addWidget(self.label(block.name, tone="sub", wrap=True), 1)
        line.setContentsMargins(0, 0, 0, 0)
        made.setLayout(line)
        return made


def spoken(page: Page) -> str:
    """Return a page as one text, for a screen reader."""
    lines: list[str] = []
    for block in page.blocks:
        if isinstance(block, Heading | Paragraph):
            lines.append(block.said)
        elif isinstance(block, Points):
            lines += block.said
        elif isinstance(block, Shown):
            lines.append(f"{block.name}. {' '.join(block.said)}".strip())
        elif isinstance(block, Signal):
            lines.append(f"{block.word}: {block.name}. {block.said}")
        else:
            lines.append(f"{block.keys}: {block.name}")
    return "\n".join(lines)
