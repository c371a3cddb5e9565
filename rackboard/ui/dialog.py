"""What all dialogs share: the scheme, the type, the button row, and errors said inside the form."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import (
    QApplication,
    QDialog,
    QDialogButtonBox,
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from rackboard.core.errors import RackboardError
from rackboard.ui import type
from rackboard.ui.controls import Choice, FocusRing, Option, Tick, field_height, field_style
from rackboard.ui.language import translated
from rackboard.ui.theme import Theme, theme_of
from rackboard.ui.type import Roles, Style

LARGE_WIDTH, LARGE_HEIGHT = 1800, 950
"""A dialog is large where the window under it, or else the screen, is at least so large."""


def current_theme() -> Theme:
    """Return the scheme that the application's palette has."""
    return theme_of(QGuiApplication.palette())


def room_under(parent: QWidget | None) -> QSize:
    """Return the size of the window at the bottom of all dialogs, or else of the screen."""
    if parent is None:
        return QGuiApplication.primaryScreen().availableGeometry().size()
    window = parent.window()
    while (under := window.parentWidget()) is not None:
        window = under.window()
    return window.size()


def is_large(parent: QWidget | None) -> bool:
    """Return whether a dialog over this window takes the larger sizes."""
    size = room_under(parent)
    return size.width() >= LARGE_WIDTH and size.height() >= LARGE_HEIGHT


def style_sheet(theme: Theme, roles: Roles) -> str:
    """Return the rules for the ordinary widgets of a dialog."""
    bg, surf, surf2 = theme.bg.name(), theme.surf.name(), theme.surf2.name()
    text, sub, dim = theme.text.name(), theme.sub.name(), theme.dim.name()
    edge, line = theme.edge.name(), theme.line.name()
    wide = 26 if roles.large else 18
    return (
        f"QDialog,QScrollArea,QWidget#page{{background:{bg}}}"
        f"QDialog{{border:1px solid {line if theme.dark else edge}}}"
        f"QLabel{{color:{text};background:transparent}}"
        f"QLabel[tone=sub]{{color:{sub}}}"
        f"QLabel[tone=signal]{{background:{text};color:{bg};border-radius:4px;padding:2px 9px}}"
        f"QFrame[tone=rule]{{background:{line};border:none}}"
        f"QFrame[tone=panel]{{background:{surf};border-radius:10px}}"
        f"QLineEdit{{background:{surf};color:{text};border:1.5px solid {edge};border-radius:6px;"
        f"padding:0 12px;selection-background-color:{text};selection-color:{bg};"
        f"placeholder-text-color:{dim}}}"
        f"QLineEdit[wrong=true]{{border:2.5px solid {text}}}"
        f"QLineEdit:disabled{{color:{dim};border-color:{line}}}"
        f"QPushButton{{background:{surf2};color:{text};border:1.5px solid {edge};"
        f"border-radius:7px;padding:0 {wide}px;outline:none}}"
        f"QPushButton:pressed{{background:{line}}}"
        f"QPushButton:disabled{{color:{dim};border-color:{line};background:{surf}}}"
        f"QPushButton[primary=true]{{background:{text};color:{bg};border-color:{text}}}"
        f"QPushButton[primary=true]:pressed{{background:{sub}}}"
        f"QPushButton[primary=true]:disabled{{background:{surf};color:{dim};border-color:{line}}}"
        f"QAbstractItemView{{background:{surf};color:{text};border:1.5px solid {edge};"
        f"border-radius:6px;outline:none;alternate-background-color:{surf};"
        f"selection-background-color:{text};selection-color:{bg};gridline-color:{line}}}"
        "QTableView::item{padding:0 8px}QListView::item{padding:3px 8px}"
        f"QComboBox QAbstractItemView{{border-radius:0;padding:4px}}"
        f"QComboBox QAbstractItemView::item{{min-height:{field_height(roles) - 8}px}}"
        f"QScrollArea[page=help]{{border:3px solid transparent;border-radius:8px}}"
        f"QScrollArea[page=help]:focus{{border-color:{theme.ring.name()}}}"
        f"QHeaderView{{background:{surf};border:none}}"
        f"QHeaderView::section{{background:{surf};color:{sub};border:none;"
        f"border-bottom:1px solid {line};padding:4px 8px}}"
        f"QTableCornerButton::section{{background:{surf};border:none}}"
        f"QTabWidget::pane{{border:1.5px solid {edge};border-radius:6px;top:-1px}}"
        f"QTabBar::tab{{background:{bg};color:{sub};padding:8px 18px;border:none}}"
        f"QTabBar::tab:selected{{color:{text};border-bottom:3px solid {text}}}"
        f"QPlainTextEdit{{background:{surf};color:{text};padding:8px}}"
        "QDialogButtonBox{button-layout:3}"  # the one to press stands last, as on the board
        "QScrollBar:vertical{background:transparent;width:10px;margin:0}"
        "QScrollBar:horizontal{background:transparent;height:10px;margin:0}"
        f"QScrollBar::handle{{background:{line};border-radius:3px;margin:2px;min-height:32px;"
        f"min-width:32px}}"
        f"QScrollBar::handle:hover{{background:{edge}}}"
        "QScrollBar::add-line,QScrollBar::sub-line{width:0;height:0}"
        "QScrollBar::add-page,QScrollBar::sub-page{background:transparent}"
    )


class Dialog(QDialog):
    """A dialog in the board's look.

    Parameters
    ----------
    parent : QWidget, optional
        The window underneath.
    theme : Theme, optional
        The scheme; by default the application's, also when it changes.
    """

    def __init__(self, parent: QWidget | None = None, theme: Theme | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self._follows = theme is None
        self.theme = theme = theme or current_theme()
        self.roles = Roles(large=is_large(parent))
        self._ring: FocusRing | None = None
        self.setFont(type.font(self.roles.fact))
        self.show_theme(theme)
        self.buttons = QDialogButtonBox(self)  # it asks for the order only once: after the sheet
        application = QApplication.instance()
        assert isinstance(application, QApplication)
        application.focusChanged.connect(self._on_focus_changed)

    # Look

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        self.theme = theme
        self.setPalette(theme.palette())
        self.setStyleSheet(style_sheet(theme, self.roles))
        for control in self.findChildren(QWidget):
            if isinstance(control, Choice | Tick | Option):
                control.show_theme(theme)
        if self._ring is not None:
            self._ring.leave()
            self._ring.deleteLater()
            self._ring = None

    def event(self, event: QEvent) -> bool:
        """Take the application's scheme when it changes."""
        if event.type() is QEvent.Type.ApplicationPaletteChange and self._follows:
            now = current_theme()
            if (now.dark, now.high) != (self.theme.dark, self.theme.high):
                self.show_theme(now)
        return super().event(event)

    @property
    def gap(self) -> int:
        """The distance between groups [px]."""
        return 24 if self.roles.large else 14

    @property
    def margin(self) -> int:
        """The margin of the dialog [px]."""
        return 40 if self.roles.large else 22

    def label(
        self, text: str, style: Style | None = None, *, tone: str = "", wrap: bool = False
    ) -> QLabel:
        """Return a label in a style of the roles; facts by default."""
        made = QLabel(text)
        made.setTextFormat(Qt.TextFormat.PlainText)
        made.setFont(type.font(style or self.roles.fact))
        if tone:
            made.setProperty("tone", tone)
        if wrap:
            made.setWordWrap(True)
            policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
            policy.setHeightForWidth(True)
            made.setSizePolicy(policy)
        return made

    def heading(self, text: str) -> QLabel:
        """Return the head of a group."""
        return self.label(text, self.roles.head)

    def rule(self) -> QFrame:
        """Return a hairline."""
        made = QFrame()
        made.setProperty("tone", "rule")
        made.setFixedHeight(1)
        return made

    def field(self, name: str, width: int = 0, *, placeholder: str = "") -> QLineEdit:
        """Return a field with its accessible name; `width` in px, 0: as wide as there is room."""
        made = QLineEdit()
        made.setAccessibleName(name)
        made.setPlaceholderText(placeholder)
        made.setFont(type.font(field_style(self.roles)))
        made.setFixedHeight(field_height(self.roles))
        if width:
            made.setFixedWidth(width)
        return made

    def choice(self, name: str) -> Choice:
        """Return a choice with its accessible name."""
        made = Choice(self.theme, self.roles)
        made.setAccessibleName(name)
        return made

    def tick(self, text: str) -> Tick:
        """Return a tick box."""
        return Tick(text, self.theme, self.roles)

    def option(self, text: str) -> Option:
        """Return a radio button."""
        return Option(text, self.theme, self.roles)

    def button(self, text: str, *, primary: bool = False) -> QPushButton:
        """Return a button that no stray Enter presses."""
        made = QPushButton(text)
        self.dress(made, primary=primary)
        made.setAutoDefault(False)
        return made

    def dress(self, button: QPushButton, *, primary: bool = False) -> None:
        """Give a button the dialog's look."""
        button.setFont(type.font(self.roles.button))
        button.setMinimumHeight(52 if self.roles.large else 42)
        button.setProperty("primary", primary)

    def add_buttons(self, accept: str, reject: str) -> QPushButton | None:
        """Fill the button row; return the one that accepts. An empty `accept`: only a close."""
        accepting = None
        if accept:
            accepting = QPushButton(accept)
            self.dress(accepting, primary=True)
            self.buttons.addButton(accepting, QDialogButtonBox.ButtonRole.AcceptRole)
            accepting.setDefault(True)
            self.buttons.accepted.connect(self.accept)
        rejecting = QPushButton(reject)
        self.dress(rejecting)
        self.buttons.addButton(rejecting, QDialogButtonBox.ButtonRole.RejectRole)
        rejecting.setAutoDefault(False)
        self.buttons.rejected.connect(self.reject)
        self.space_buttons()
        return accepting

    def space_buttons(self) -> None:
        """Set the buttons as far apart as on the board."""
        layout = self.buttons.layout()
        assert layout is not None
        layout.setSpacing(15)

    def scrolled(self, page: QWidget) -> QScrollArea:
        """Return a frameless area in which a page scrolls up and down."""
        page.setObjectName("page")
        area = QScrollArea()
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setWidgetResizable(True)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        area.setWidget(page)
        return area

    def frame(self, title: str, said: str = "") -> QVBoxLayout:
        """Lay out title, a line under it and the button row; return where the content goes."""
        self.setWindowTitle(title)
        outer = QVBoxLayout(self)
        margin = self.margin
        outer.setContentsMargins(margin, margin - 6, margin, margin - 4)
        outer.setSpacing(0)
        outer.addWidget(self.label(title, self.roles.inspector_title))
        if said:
            line = self.label(said, tone="sub", wrap=True)
            line.setMaximumWidth(900)
            outer.addWidget(line)
        outer.addSpacing(self.gap - 4)
        content = QVBoxLayout()
        content.setSpacing(self.gap - 4)
        outer.addLayout(content, 1)
        outer.addSpacing(self.gap)
        outer.addWidget(self.rule())
        outer.addSpacing(self.gap - 6)
        outer.addWidget(self.buttons)
        return content

    def fit(self, width: int, height: int) -> None:
        """Take this size, less where the window underneath or the screen is smaller."""
        room = room_under(self.parentWidget())
        self.resize(min(width, room.width() - 40), min(height, room.height() - 40))

    def fit_height(self, width: int) -> None:
        """Take this width for good, and the height that the texts need at it."""
        layout = self.layout()
        assert layout is not None
        self.setFixedWidth(width)
        self.setFixedHeight(layout.totalHeightForWidth(width))

    # Errors

    def mark(self, field: QWidget, wrong: bool) -> None:
        """Show at a field whether what it holds can't be taken."""
        if field.property("wrong") != wrong:
            field.setProperty("wrong", wrong)
            field.style().unpolish(field)
            field.style().polish(field)

    def _on_focus_changed(self, old: QWidget | None, new: QWidget | None) -> None:
        del old
        inside = new is not None and new.window() is self and self.isAncestorOf(new)
        if not inside or not isinstance(new, QLineEdit | QPushButton | Choice | Tick | Option):
            if self._ring is not None:
                self._ring.leave()
            return
        if self._ring is None:
            self._ring = FocusRing(self.theme)
            self._ring.destroyed.connect(self._on_ring_destroyed)
        self._ring.surround(new)
        area = new.parentWidget()
        while area is not None and not isinstance(area, QScrollArea):
            area = area.parentWidget()
        if isinstance(area, QScrollArea):
            area.ensureWidgetVisible(new, 20, 40)

    def _on_ring_destroyed(self) -> None:
        self._ring = None


def error_text(error: Exception) -> str:
    """Return what went wrong and what to do, in the language spoken."""
    if not isinstance(error, RackboardError):
        return str(error)
    return f"{translated(error.message)} {translated(error.remedy)}".strip()


def row(*items: QWidget | int, stretch: bool = True) -> QHBoxLayout:
    """Return widgets in a row; a number is a distance [px]."""
    made = QHBoxLayout()
    made.setSpacing(0)
    for item in items:
        if isinstance(item, int):
            made.addSpacing(item)
        else:
            made.addWidget(item)
    if stretch:
        made.addStretch(1)
    return made


class Confirmation(Dialog):
    """Asked only before what can't be taken back; Cancel is what Enter and Esc mean.

    Parameters
    ----------
    title, text, consequence : str
        What is asked, and what happens then.
    accept, cancel : str
        The two buttons.
    """

    def __init__(
        self,
        parent: QWidget | None,
        theme: Theme,
        title: str,
        text: str,
        consequence: str,
        accept: str,
        cancel: str,
    ) -> None:
        super().__init__(parent, theme)
        self.setWindowTitle(title)
        self.text = self.label(text, self.roles.inspector_time, wrap=True)
        self.consequence = self.label(consequence, wrap=True)
        self.setAccessibleDescription(f"{text} {consequence}")
        self.go_on = QPushButton(accept)
        self.cancel = QPushButton(cancel)
        for button, role in (
            (self.go_on, QDialogButtonBox.ButtonRole.AcceptRole),
            (self.cancel, QDialogButtonBox.ButtonRole.RejectRole),
        ):
            self.dress(button)
            self.buttons.addButton(button, role)
            button.setAutoDefault(False)
        self.cancel.setDefault(True)
        self.buttons.accepted.connect(self.accept)
        self.buttons.rejected.connect(self.reject)
        self.space_buttons()
        layout = QVBoxLayout(self)
        margin = self.margin
        layout.setContentsMargins(margin, margin - 4, margin, margin - 4)
        layout.setSpacing(14)
        layout.addWidget(self.text)
        layout.addWidget(self.consequence)
        layout.addSpacing(self.gap - 8)
        layout.addWidget(self.buttons)
        self.fit_height(620 if self.roles.large else 500)
        self.cancel.setFocus()
