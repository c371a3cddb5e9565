"""Colours: the tokens for dark and light as data, and what Qt needs made from them.

Fills of the states are the same in both schemes. Contrasts are checked by the tests.
"""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QColor, QGuiApplication, QPalette

from rackboard.core.words import Word
from rackboard.services.snapshot import CONTRAST, THEME

_MIDDLE = 128

DARK_TOKENS: dict[str, str] = {
    "bg": "#141311", "strip": "#1B1917", "surf": "#201E1B", "surf2": "#2A2723",
    "plot": "#191715", "text": "#F4F1EA", "sub": "#BDB5A8", "dim": "#928A7E",
    "edge": "#7C746A", "out": "#746D63", "line": "#3E3934", "ring": "#FFFFFF",
}  # fmt: skip
LIGHT_TOKENS: dict[str, str] = {
    "bg": "#EAE5DB", "strip": "#F4F1EA", "surf": "#FCFAF6", "surf2": "#F1EDE4",
    "plot": "#F7F4ED", "text": "#1B1916", "sub": "#585146", "dim": "#6B6357",
    "edge": "#857C6E", "out": "#877E70", "line": "#D3CCBE", "ring": "#1B1916",
}  # fmt: skip
PAPER_TOKENS: dict[str, str] = {
    "bg": "#FFFFFF", "strip": "#FFFFFF", "surf": "#FFFFFF", "surf2": "#FFFFFF",
    "plot": "#F2F2F2", "text": "#000000", "sub": "#333333", "dim": "#4D4D4D",
    "edge": "#666666", "out": "#808080", "line": "#C8C8C8", "ring": "#000000",
}  # fmt: skip

HIGH_DARK_TOKENS: dict[str, str] = {
    "bg": "#000000", "strip": "#000000", "surf": "#0C0C0C", "surf2": "#1C1C1C",
    "plot": "#000000", "text": "#FFFFFF", "sub": "#EAEAEA", "dim": "#D0D0D0",
    "edge": "#B4B4B4", "out": "#A6A6A6", "line": "#8E8E8E", "ring": "#FFFFFF",
}  # fmt: skip
HIGH_LIGHT_TOKENS: dict[str, str] = {
    "bg": "#FFFFFF", "strip": "#FFFFFF", "surf": "#FFFFFF", "surf2": "#F0F0F0",
    "plot": "#FFFFFF", "text": "#000000", "sub": "#1F1F1F", "dim": "#3A3A3A",
    "edge": "#404040", "out": "#4A4A4A", "line": "#5E5E5E", "ring": "#000000",
}  # fmt: skip
"""High contrast: every text at least 7 to 1 on every ground, every line 4.5 to 1."""

INK = "#15130F"
WHITE = "#FFFFFF"
WAIT_RIM = "#6FAEDD"
COLD = "#E986AE"
FILLS: dict[Word, str] = {
    Word.WET: "#F9D23C",
    Word.WAIT: "#0B4F80",
    Word.BENCH: "#48ABE3",
    Word.CURED: "#8FF099",
    Word.HOLD: "#FF7A45",
    Word.STALE: "#F4F1EA",
}


class Theme:
    """The colours of one scheme as QColor, for painters."""

    __slots__ = (
        "bg", "cold", "dark", "dim", "edge", "fills", "high", "ink", "line", "out", "plot",
        "ring", "strip", "sub", "surf", "surf2", "text", "wait_rim", "white",
    )  # fmt: skip

    def __init__(self, tokens: dict[str, str], *, dark: bool, high: bool = False) -> None:
        self.dark = dark
        self.high = high
        self.bg = QColor(tokens["bg"])
        self.strip = QColor(tokens["strip"])
        self.surf = QColor(tokens["surf"])
        self.surf2 = QColor(tokens["surf2"])
        self.plot = QColor(tokens["plot"])
        self.text = QColor(tokens["text"])
        self.sub = QColor(tokens["sub"])
        self.dim = QColor(tokens["dim"])
        self.edge = QColor(tokens["edge"])
        self.out = QColor(tokens["out"])
        self.line = QColor(tokens["line"])
        self.ring = QColor(tokens["ring"])
        self.ink = QColor(INK)
        self.white = QColor(WHITE)
        self.wait_rim = QColor(WAIT_RIM)
        self.cold = QColor(COLD)
        self.fills = {word: QColor(fill) for word, fill in FILLS.items()}

    def on_fill(self, word: Word) -> QColor:
        """Return the colour of word and glyph on a state's fill."""
        return self.white if word is Word.WAIT else self.ink

    def palette(self) -> QPalette:
        """Return the palette for every ordinary widget."""
        palette = QPalette()
        role = QPalette.ColorRole
        for at, color in (
            (role.Window, self.bg), (role.WindowText, self.text), (role.Base, self.surf),
            (role.AlternateBase, self.surf2), (role.Text, self.text),
            (role.Button, self.surf2), (role.ButtonText, self.text),
            (role.BrightText, self.text), (role.ToolTipBase, self.surf2),
            (role.ToolTipText, self.text), (role.PlaceholderText, self.dim),
            (role.Highlight, self.text), (role.HighlightedText, self.bg),
            (role.Link, self.text), (role.LinkVisited, self.sub),
            (role.Light, self.edge), (role.Midlight, self.line), (role.Mid, self.line),
            (role.Dark, self.line), (role.Shadow, self.bg),
        ):  # fmt: skip
            palette.setColor(at, color)
        for at in (role.WindowText, role.Text, role.ButtonText):
            palette.setColor(QPalette.ColorGroup.Disabled, at, self.dim)
        return palette

    def style_sheet(self) -> str:
        """Return the few rules that a palette can't say; the menu bar and the tool tips."""
        return (
            f"QMenuBar{{background:{self.bg.name()};color:{self.sub.name()};border:none}}"
            f"QMenuBar::item{{background:transparent;padding:1px 10px;color:{self.sub.name()}}}"
            f"QMenuBar::item:selected{{background:{self.surf2.name()};color:{self.text.name()}}}"
            f"QToolTip{{background:{self.surf2.name()};color:{self.text.name()};"
            f"border:1px solid {self.edge.name()};padding:6px}}"
        )


def dark_theme(*, high: bool = False) -> Theme:
    """Return the dark scheme, or the one of high contrast."""
    return Theme(HIGH_DARK_TOKENS if high else DARK_TOKENS, dark=True, high=high)


def light_theme(*, high: bool = False) -> Theme:
    """Return the light scheme, or the one of high contrast."""
    return Theme(HIGH_LIGHT_TOKENS if high else LIGHT_TOKENS, dark=False, high=high)


def theme_of(palette: QPalette) -> Theme:
    """Return the scheme that a palette was made from; of a foreign palette the nearest."""
    ground = palette.window().color()
    dark = ground.lightness() < _MIDDLE
    tokens = HIGH_DARK_TOKENS if dark else HIGH_LIGHT_TOKENS
    high = ground.name().upper() == tokens["bg"]
    return dark_theme(high=high) if dark else light_theme(high=high)


def paper_theme() -> Theme:
    """Return black on white for print; fills are left to the painter that prints."""
    return Theme(PAPER_TOKENS, dark=False)


class Appearance(QObject):
    """Which scheme holds: the system's, unless the settings say otherwise.

    Parameters
    ----------
    override : str
        "dark", "light", or "" for the system's.
    contrast : str
        High contrast "on", "off", or "" for the system's preference.

    Signals
    -------
    theme_changed(Theme)
        The scheme changed while the program runs.
    """

    theme_changed = Signal(object)

    def __init__(
        self, override: str = "", parent: QObject | None = None, *, contrast: str = ""
    ) -> None:
        super().__init__(parent)
        self._override = override
        self._contrast = contrast
        self._system_palette = QGuiApplication.palette()
        self.theme = self._made()
        hints = QGuiApplication.styleHints()
        hints.colorSchemeChanged.connect(self._on_scheme_changed)
        if hasattr(hints, "accessibility"):  # since Qt 6.10
            hints.accessibility().contrastPreferenceChanged.connect(self._on_scheme_changed)

    def set_override(self, override: str) -> None:
        """Take the setting: "dark", "light", or "" for the system's."""
        self._override = override
        self._on_scheme_changed()

    def set_contrast(self, contrast: str) -> None:
        """Take the setting: high contrast "on", "off", or "" for the system's."""
        self._contrast = contrast
        self._on_scheme_changed()

    def take_settings(self, settings: Mapping[str, object]) -> None:
        """Take both from the stored settings, also after an undo."""
        self._override = str(settings.get(THEME) or "")
        self._contrast = str(settings.get(CONTRAST) or "")
        self._on_scheme_changed()

    def _made(self) -> Theme:
        high = self._is_high()
        return dark_theme(high=high) if self._is_dark() else light_theme(high=high)

    def _is_dark(self) -> bool:
        if self._override:
            return self._override == "dark"
        scheme = QGuiApplication.styleHints().colorScheme()
        if scheme is Qt.ColorScheme.Unknown:
            return self._system_palette.window().color().lightness() < _MIDDLE
        return scheme is Qt.ColorScheme.Dark

    def _is_high(self) -> bool:
        return self._contrast == "on" if self._contrast else system_wants_contrast()

    def _on_scheme_changed(self) -> None:
        if (self._is_dark(), self._is_high()) != (self.theme.dark, self.theme.high):
            self.theme = self._made()
            self.theme_changed.emit(self.theme)


def system_wants_contrast() -> bool:
    """Return whether the system asks for high contrast; False where Qt can't tell."""
    hints = QGuiApplication.styleHints()
    if not hasattr(hints, "accessibility"):
        return False
    return hints.accessibility().contrastPreference() is Qt.ContrastPreference.HighContrast
