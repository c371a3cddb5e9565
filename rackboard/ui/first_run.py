"""The first panel, over an empty rack: what the board does, its words, and one key."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QWidget

from rackboard.core.text import text
from rackboard.core.words import SHORT_PHRASES, Word
from rackboard.ui import legend, motif, type
from rackboard.ui.keys import RIM, TARGET, Key
from rackboard.ui.language import translated
from rackboard.ui.theme import Theme
from rackboard.ui.type import Align, Face, Roles, Style

_WORDS = (Word.WET, Word.WAIT, Word.BENCH, Word.CURED, Word.HOLD)
_STAGES = (
    (text("FirstRun", "wet"), 0.0), (text("FirstRun", "still"), 0.40),
    (text("FirstRun", "firm"), 0.70), (text("FirstRun", "hard"), 1.0),
)  # fmt: skip


class _FirstKey(Key):
    """The one key of the panel, in larger type."""

    def show_theme(self, theme: Theme, roles: Roles) -> None:
        """Take another scheme or size."""
        self._style = Style(Face.BOLD, 24 if roles.large else 19)
        super().show_theme(theme, roles)


class FirstRunPanel(QWidget):
    """Shown while nothing was ever glued.

    Signals
    -------
    first_job_asked()
        The key was pressed (Ctrl+N is the menu's).
    """

    first_job_asked = Signal()

    def __init__(self, theme: Theme, *, large: bool, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.key = _FirstKey(
            self.tr("Lay out the first job"), theme, Roles(large=large), self, primary=True,
            hint="Ctrl+N",
        )  # fmt: skip
        self.key.clicked.connect(self.first_job_asked)
        self._title = self.tr("An empty rack")
        self._said = self.tr(
            "Lay out a job with clean hands, say when it is mixed and when it is racked. The board"
            " follows the glue and says what each joint may bear."
        )
        self.setAccessibleName(self._title)
        self.setAccessibleDescription(self._said)
        self.show_size(theme, large=large)

    def show_size(self, theme: Theme, *, large: bool) -> None:
        """Take another scheme or size."""
        self._theme, self._large, self._roles = theme, large, Roles(large=large)
        self.key.show_theme(theme, self._roles)
        self._place_key()
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Place the key anew."""
        super().resizeEvent(event)
        self._place_key()

    def _place_key(self) -> None:
        pad = 28 if self._large else 18
        high = 84 if self._large else TARGET
        self.key.setGeometry(
            pad - RIM, self.height() - pad - high - RIM,
            self.width() - 2 * pad + 2 * RIM, high + 2 * RIM,
        )  # fmt: skip

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint title, text, motif and legend."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, roles, large = self._theme, self._roles, self._large
        painter.setPen(QPen(theme.surf if theme.dark else theme.line, 1))
        painter.setBrush(theme.surf)
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5), 10, 10)
        pad = 28.0 if large else 18.0
        room = self.width() - 2 * pad
        y = 72.0 if large else 46.0
        type.draw(painter, roles.title, pad, y, self._title, theme.text)
        y += 52 if large else 34
        pitch = 29 if large else 22
        style = Style(Face.MEDIUM, 19 if large else 15)
        for line in type.wrapped(style, self._said, min(room, 400)):
            type.draw(painter, style, pad, y, line, theme.sub)
            y += pitch
        y += 64 if large else 34
        high = 52.0 if large else 36.0
        inks = motif.MotifInks(theme.text, theme.dim, theme.sub)
        larger = 1.8 if large else 1.5  # the line as thick as the picture is large
        painter.save()
        painter.translate(pad, y)
        painter.scale(larger, larger)
        motif.draw(painter, inks, 0, 0, room / larger, high / larger, 1.0)
        painter.restore()
        y += high / 2 + (30 if large else 22)
        for name, u in _STAGES:
            align = Align.RIGHT if u == 1 else Align.CENTRE if u else Align.LEFT
            type.draw(painter, roles.fact, pad + u * room, y, translated(name), theme.sub, align)
        y += 46 if large else 26
        for word in _WORDS:
            self._legend(painter, pad, y, word)
            y += 62 if large else 44
        painter.end()

    def _legend(self, painter: QPainter, x: float, y: float, word: Word) -> None:
        theme, roles, large = self._theme, self._roles, self._large
        width, height = legend.plate_size(roles)
        painter.save()
        painter.translate(x, y)
        legend.draw_state(painter, theme, roles, word)
        room = self.width() - x - width - 30
        style = Style(Face.MEDIUM, 19 if large else 15)
        lines = type.wrapped(style, translated(SHORT_PHRASES[word]), room)
        pitch = 23 if large else 18
        baseline = height / 2 + type.cap_height(style) / 2 - (len(lines) - 1) * pitch / 2
        for number, line in enumerate(lines):
            type.draw(painter, style, width + 20, baseline + number * pitch, line, theme.text)
        painter.restore()
