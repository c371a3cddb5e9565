"""The wall view: the whole shop on one screen, read from across the room."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from rackboard.ui import edges
from rackboard.ui.language import say
from rackboard.ui.theme import Theme
from rackboard.ui.wall_painter import WallPainter
from rackboard.ui.wall_size import Sheet, Viewing, sheet
from rackboard.ui.wall_view import CELLS, WallPage, WallView, pages

PAGE_MS = 8_000


class Wall(QWidget):
    """Shows a wall view; pages turn by themselves as the time goes on.

    Parameters
    ----------
    theme : Theme
        The colours.
    """

    def __init__(self, theme: Theme, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._painter = WallPainter(theme)
        self._view = WallView("")
        self._viewing = Viewing()
        self._cells = CELLS
        self._pages = pages(self._view)
        self._time_ms = 0
        self._since_ms: int | None = None
        self._still = False
        self._shown = (0, True)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._describe()

    def sizeHint(self) -> QSize:
        """Return the size that the wall is designed for."""
        return QSize(1920, 1080)

    def minimumSizeHint(self) -> QSize:
        """Return a size that leaves the window free."""
        return QSize(640, 360)

    def show_view(self, view: WallView) -> None:
        """Show the present state; a changed number of pages begins again with the worst."""
        if view == self._view:
            return
        self._view = view
        made = pages(view, self._cells)
        held = self._holds(made) - self._holds(self._pages)
        if len(made) != len(self._pages) or held > 0:
            self._since_ms = self._time_ms
        self._pages = made
        self._shown = self._now_shown()
        self._describe()
        self.update()

    def show_theme(self, theme: Theme) -> None:
        """Take on other colours."""
        self._painter = WallPainter(theme)
        self.update()

    def set_reduced_motion(self, still: bool) -> None:
        """Let collars stand instead of flash."""
        self._still = still
        self.update()

    def set_viewing(self, viewing: Viewing) -> None:
        """Be read from another distance, or on other pixels."""
        self._viewing = viewing
        self._fit()
        self.update()

    def sheet(self) -> Sheet:
        """Return how the design lies on this wall."""
        return sheet(self.width(), self.height(), self._viewing, self.devicePixelRatioF())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fill the pages anew if another number of tiles fits."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        cells = self.sheet().cells
        if cells == self._cells:
            return
        self._cells = cells
        self._pages = pages(self._view, cells)
        self._since_ms = self._time_ms
        self._shown = self._now_shown()
        self._describe()

    def set_time_ms(self, time_ms: int) -> None:
        """Let time go on: turns pages and flashes collars; any clock that doesn't go back."""
        self._time_ms = time_ms
        if self._since_ms is None or time_ms < self._since_ms:
            self._since_ms = time_ms
        shown = self._now_shown()
        if shown != self._shown:
            turned = shown[0] != self._shown[0]
            self._shown = shown
            if turned:
                self._describe()
            self.update()

    def pages(self) -> tuple[WallPage, ...]:
        """Return the pages in the order in which they come."""
        return self._pages

    def page(self) -> int:
        """Return which page is shown, counted from 0."""
        return self._shown[0]

    @staticmethod
    def _holds(made: tuple[WallPage, ...]) -> int:
        return sum(tile.untaken for page in made for tile in page.tiles)

    def _now_shown(self) -> tuple[int, bool]:
        since = self._time_ms if self._since_ms is None else self._since_ms
        number = (self._time_ms - since) // PAGE_MS % len(self._pages)
        flashing = not self._still and any(tile.untaken for tile in self._pages[number].tiles)
        return number, not flashing or edges.collar_lit(self._time_ms)

    def _describe(self) -> None:
        view, number = self._view, self._shown[0]
        said = [say("Wall", "Wall view"), view.clock]
        if len(self._pages) > 1:
            page = say("Wall", "page {number} of {count}")
            said.append(page.format(number=number + 1, count=len(self._pages)))
        if view.stale:
            said.append(say("Wall", "no word since {time}").format(time=view.stale))
        self.setAccessibleName(", ".join(said))
        lines = [tile.accessible for page in self._pages for tile in page.tiles]
        if view.free:
            lines.append(say("Wall", "free: {slots}").format(slots=" ".join(view.free)))
        self.setAccessibleDescription("\n".join(lines))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the page that is shown."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        number, lit = self._shown
        size = (float(self.width()), float(self.height()))
        self._painter.paint(
            painter, size, self._view, self._pages, number, lit=lit, still=self._still,
            viewing=self._viewing, ratio=self.devicePixelRatioF(),
        )  # fmt: skip
        painter.end()
