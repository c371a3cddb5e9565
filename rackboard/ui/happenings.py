"""Due and happened: the head, the alarm card, the next due row, and the whole list."""

from __future__ import annotations

from PySide6.QtCore import (
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QRectF,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QPainter, QPainterPath, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import (
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from rackboard.core.words import Word
from rackboard.ui import edges, glyphs, type
from rackboard.ui.board_view import Happening, HappeningKind
from rackboard.ui.keys import RIM, TARGET, Key, TapKey
from rackboard.ui.rack_model import ROW_ROLE
from rackboard.ui.rack_view import RowView
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
            self.setAccessibleName(f"Due and happened: {count}")
            self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the head."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, roles = self._theme, self._roles
        baseline = self.height() / 2 - (2 if roles.large else 1) + type.cap_height(roles.head) / 2
        type.draw(painter, roles.head, 0, baseline, "Due and happened", theme.text)
        text = "back to the club" if self.isChecked() else self._count
        taken = type.draw(
            painter, roles.fact, self.width(), baseline, text, theme.sub, Align.RIGHT
        )
        if self.hasFocus() or self.isDown():
            x = self.width() - taken
            painter.fillRect(QRectF(x, baseline + 4, taken, 2), theme.ring)
        painter.end()


class AlarmCard(QWidget):
    """The first alarm with its button, or that there is none.

    Signals
    -------
    alarm_answered(str)
        The key of the happening.
    """

    alarm_answered = Signal(str)

    def __init__(self, theme: Theme, *, large: bool, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._alarm: Happening | None = None
        self.key = Key("Got it", theme, Roles(large=large), self)
        self.key.clicked.connect(self._on_clicked)
        self.key.hide()
        self.show_size(theme, large=large)

    def show_size(self, theme: Theme, *, large: bool) -> None:
        """Take another scheme or size."""
        self._theme, self._large, self._roles = theme, large, Roles(large=large)
        self.key.show_theme(theme, self._roles)
        self._place_key()
        self.update()

    def show_alarm(self, alarm: Happening | None) -> None:
        """Show another alarm."""
        if alarm == self._alarm:
            return
        self._alarm = alarm
        self.key.setVisible(alarm is not None and bool(alarm.button))
        if alarm is not None:
            self.key.setText(alarm.button)
            self.key.setAccessibleName(f"{alarm.button}: {alarm.accessible or alarm.title}")
            self.key.on_hold = alarm.word is Word.HOLD
        self.setAccessibleName((alarm.accessible or alarm.title) if alarm else "No alarm")
        self.update()

    def _on_clicked(self) -> None:
        if self._alarm is not None:
            self.alarm_answered.emit(self._alarm.key)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Place the key anew."""
        super().resizeEvent(event)
        self._place_key()

    def _place_key(self) -> None:
        wide = 120 if self._large else 96
        right = self.width() - (15 if self._large else 14)
        top = (self.height() - TARGET) // 2
        self.key.setGeometry(
            right - wide - RIM, top - RIM, wide + 2 * RIM, TARGET + 2 * RIM
        )

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the card."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        alarm = self._alarm
        if alarm is None:
            self._none(painter)
        else:
            self._paint(painter, alarm)
        painter.end()

    def _none(self, painter: QPainter) -> None:
        theme, roles = self._theme, self._roles
        painter.setPen(QPen(theme.line, 1.5))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.75, 0.75, -0.75, -0.75), 8, 8)
        baseline = self.height() / 2 + type.cap_height(roles.fact) / 2
        type.draw(painter, roles.fact, 16, baseline, "Nothing on hold, no alarm", theme.sub)

    def _paint(self, painter: QPainter, alarm: Happening) -> None:
        theme, roles, large = self._theme, self._roles, self._large
        hold = alarm.word is Word.HOLD
        area = QRectF(self.rect())
        if hold:
            cut = 18.0 if large else 14.0
            shape = edges.body(area.width(), area.height(), cut)
            painter.fillPath(shape, theme.fills[Word.HOLD])
            if not theme.dark:
                inner = edges.body(area.width() - 1.5, area.height() - 1.5, cut)
                painter.translate(0.75, 0.75)
                painter.strokePath(inner, QPen(theme.ink, 1.5))
                painter.translate(-0.75, -0.75)
        else:
            painter.setPen(QPen(theme.text, 2))
            painter.setBrush(theme.surf)
            painter.drawRoundedRect(area.adjusted(1, 1, -1, -1), 8, 8)
        text = theme.ink if hold else theme.text
        sub = theme.ink if hold else theme.sub
        title = alarm.title if large else alarm.title_short or alarm.title
        lines = alarm.lines if large else alarm.lines_short or alarm.lines
        limit = self.key.x() - 2 if alarm.button else area.right() - 14
        x = self._lead(painter, alarm, large=large)
        baseline = 33.0 if large else 31.0
        title = type.fitting(roles.head, title, limit - x)
        type.draw(painter, roles.head, x, baseline, title, text)
        x = x if large else 14.0
        for number, line in enumerate(lines[:2]):
            y = baseline + 27 + number * (23 if large else 21)
            type.draw(painter, roles.fact, x, y, type.fitting(roles.fact, line, limit - x), sub)

    def _lead(self, painter: QPainter, alarm: Happening, *, large: bool) -> float:
        if alarm.glyph is None:
            return 18.0 if large else 14.0
        ink = self._theme.ink if alarm.word is Word.HOLD else self._theme.text
        if large:
            size = 44.0
            glyphs.draw(painter, alarm.glyph, 22, self.height() / 2 - size / 2, size, ink)
            return 80.0
        glyphs.draw(painter, alarm.glyph, 14, 14, 22, ink)
        return 44.0


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
        said = (due.accessible or f"{due.time} {due.title}") if due else "Nothing due"
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
            type.draw(painter, roles.fact, 16, baseline, "Nothing due", theme.sub)
        else:
            self._bar(painter, due)
            paint_happening(painter, theme, roles, QRectF(self.rect()), due)
        if self.hasFocus():
            painter.setPen(QPen(theme.ring, 3))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(area.adjusted(1, 1, -1, -1), 8, 8)
        painter.end()

    def _bar(self, painter: QPainter, due: Happening) -> None:
        if due.word is None:
            return
        outer = QPainterPath()
        outer.addRoundedRect(QRectF(self.rect()), 8, 8)
        painter.save()
        painter.setClipPath(outer)
        bar = QRectF(0, 0, 5, self.height())
        painter.fillRect(bar, self._theme.fills[due.word])
        if not self._theme.dark:
            painter.setPen(QPen(self._theme.ink, 1.5))
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
    type.draw(painter, roles.head, x, upper, type.fitting(roles.head, title, room), theme.text)
    text = " ".join(lines)
    if lines and type.width(roles.fact, text) > room:
        text = type.fitting(roles.fact, lines[0], room)
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
        self.setAccessibleName("Due and happened")

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


def first_of(happenings: tuple[Happening, ...], kind: HappeningKind) -> Happening | None:
    """Return the first line of a kind."""
    return next((happening for happening in happenings if happening.kind is kind), None)
