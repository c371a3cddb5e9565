"""Due and happened: the head, the next due row, and the whole list."""

from __future__ import annotations

from PySide6.QtCore import (
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QRectF,
    QSize,
    Qt,
)
from PySide6.QtGui import QPainter, QPainterPath, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import (
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from rackboard.core.words import Word
from rackboard.ui import glyphs, type
from rackboard.ui.board_view import Happening, HappeningKind
from rackboard.ui.keys import TARGET, TapKey
from rackboard.ui.language import say
from rackboard.ui.rack_model import ROW_ROLE
from rackboard.ui.rack_view import RowView
from rackboard.ui.shortening import shortened
from rackboard.ui.theme import Theme
from rackboard.ui.type import Align, Roles


class HeadKey(TapKey):
    """The head of the right column; a tap opens the whole list or closes it."""

    def __init__(self, theme: Theme, roles: Roles, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setCheckable(True)
        self._count = ""
        self.show_theme(theme, roles)

    def show_theme(self, theme: Theme, roles: Roles) -> None:
        """Take another scheme or size."""
        self._theme, self._roles = theme, roles
        self.update()

    def show_count(self, count: str) -> None:
        """Show "1 hold, 10 more today"."""
        if count != self._count:
            self._count = count
            self.setAccessibleName(
                say("Happenings", "Due and happened: {count}").format(count=count)
            )
            self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the head."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, roles = self._theme, self._roles
        baseline = self.height() / 2 - (2 if roles.large else 1) + type.cap_height(roles.head) / 2
        title = say("Happenings", "Due and happened")
        x = type.draw(painter, roles.head, 0, baseline, title, theme.text) + 16
        text = say("Happenings", "back to the club") if self.isChecked() else self._count
        text = shortened(roles.fact, text, self.width() - x)
        taken = type.draw(
            painter, roles.fact, self.width(), baseline, text, theme.sub, Align.RIGHT
        )
        if self.hasFocus() or self.isDown():
            x = self.width() - taken
            painter.fillRect(QRectF(x, baseline + 4, taken, 2), theme.ring)
        painter.end()


class DueRow(TapKey):
    """The next thing due; a tap shows its tile."""

    def __init__(self, theme: Theme, roles: Roles, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._due: Happening | None = None
        self.show_theme(theme, roles)

    def show_theme(self, theme: Theme, roles: Roles) -> None:
        """Take another scheme or size."""
        self._theme, self._roles = theme, roles
        self.update()

    def show_due(self, due: Happening | None) -> None:
        """Show another one."""
        if due == self._due:
            return
        self._due = due
        said = say("Happenings", "Nothing due")
        if due is not None:
            said = due.accessible or f"{due.time} {due.title}"
        self.setAccessibleName(said)
        self.setObjectName(due.key if due else "")
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the row."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, roles = self._theme, self._roles
        area = QRectF(self.rect()).adjusted(0.75, 0.75, -0.75, -0.75)
        due = self._due
        painter.setPen(QPen(theme.edge if due else theme.line, 1.5))
        painter.setBrush(theme.surf if due else Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(area, 8, 8)
        if due is None:
            baseline = area.center().y() + type.cap_height(roles.fact) / 2
            text = say("Happenings", "Nothing due")
            type.draw(painter, roles.fact, 16, baseline, text, theme.sub)
        else:
            paint_bar(painter, theme, QRectF(self.rect()), due.word)
            paint_happening(painter, theme, roles, QRectF(self.rect()), due)
        if self.hasFocus():
            painter.setPen(QPen(theme.ring, 3))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(area.adjusted(1, 1, -1, -1), 8, 8)
        painter.end()


def paint_bar(painter: QPainter, theme: Theme, area: QRectF, word: Word | None) -> None:
    """Paint the bar in a state's colour at the left of a row with round corners."""
    if word is None:
        return
    outer = QPainterPath()
    outer.addRoundedRect(area, 8, 8)
    painter.save()
    painter.setClipPath(outer)
    bar = QRectF(area.x(), area.y(), 5, area.height())
    painter.fillRect(bar, theme.fills[word])
    if not theme.dark:
        painter.setPen(QPen(theme.ink, 1.5))
        painter.drawLine(bar.topRight(), bar.bottomRight())
    painter.restore()


def paint_happening(
    painter: QPainter, theme: Theme, roles: Roles, area: QRectF, happening: Happening
) -> None:
    """Paint time, glyph, title and line into a row."""
    large = roles.large
    pitch = 26.0 if large else 23.0
    lower = area.center().y() + pitch / 2 + type.cap_height(roles.fact) / 2
    upper = lower - pitch
    x = area.x() + (17 if large else 13)
    type.draw(painter, roles.head, x, upper, happening.time, theme.text)
    x += max(type.width(roles.head, happening.time), type.width(roles.head, "00:00"))
    x += 17 if large else 14
    size = 28.0 if large else 22.0
    if happening.glyph is not None:
        top = upper - type.cap_height(roles.head) / 2 - size / 2
        glyphs.draw(painter, happening.glyph, x, top, size, theme.text)
    x += size + 12
    title = happening.title if large else happening.title_short or happening.title
    lines = happening.lines if large else happening.lines_short or happening.lines
    room = area.right() - 12 - x
    type.draw(painter, roles.head, x, upper, shortened(roles.head, title, room), theme.text)
    text = " ".join(lines)
    if lines and type.width(roles.fact, text) > room:
        text = shortened(roles.fact, lines[0], room)
    type.draw(painter, roles.fact, x, lower, text, theme.sub)


class HappeningDelegate(QStyledItemDelegate):
    """Paints a line of the list."""

    def __init__(self, theme: Theme, roles: Roles, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.theme, self.roles = theme, roles
        self.width = 300

    def sizeHint(
        self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> QSize:
        """Return the size of a line."""
        del option, index
        return QSize(self.width, TARGET)

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        """Paint one line."""
        happening = index.data(ROW_ROLE)
        if not isinstance(happening, Happening):
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        area = QRectF(option.rect)
        if happening.word is not None:
            bar = QRectF(area.x(), area.y() + 8, 5, area.height() - 16)
            painter.fillRect(bar, self.theme.fills[happening.word])
        paint_happening(painter, self.theme, self.roles, area, happening)
        painter.fillRect(QRectF(area.x(), area.bottom() - 1, area.width(), 1), self.theme.line)
        if option.state & QStyle.StateFlag.State_Selected:
            painter.setPen(QPen(self.theme.ring, 3))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(area.adjusted(2, 2, -2, -3), 8, 8)


class HappeningsList(RowView):
    """All that is due and happened today: the courier that can't fail."""

    def __init__(self, theme: Theme, *, large: bool, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._delegate = HappeningDelegate(theme, Roles(large=large), self)
        self.setItemDelegate(self._delegate)
        self.setAccessibleName(say("Happenings", "Due and happened"))

    def show_size(self, theme: Theme, *, large: bool) -> None:
        """Take another scheme or size."""
        self._delegate.theme, self._delegate.roles = theme, Roles(large=large)
        self.scheduleDelayedItemsLayout()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fit the lines to the width."""
        super().resizeEvent(event)
        if self.width() != self._delegate.width:
            self._delegate.width = self.width()
            self.columns = 1
            self.setGridSize(QSize(self.width(), TARGET))
        self._cell = QSize(self.width(), TARGET)
        self.shown_rows = max(self.height() // TARGET, 1)


def all_of(happenings: tuple[Happening, ...], kind: HappeningKind) -> tuple[Happening, ...]:
    """Return the lines of a kind."""
    return tuple(happening for happening in happenings if happening.kind is kind)


def first_of(happenings: tuple[Happening, ...], kind: HappeningKind) -> Happening | None:
    """Return the first line of a kind."""
    return next((happening for happening in happenings if happening.kind is kind), None)
