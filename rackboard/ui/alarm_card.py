"""The alarm that is to be answered first, and the way to the others."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF, QResizeEvent
from PySide6.QtWidgets import QWidget

from rackboard.core.words import Word
from rackboard.ui import edges, glyphs, type
from rackboard.ui.board_view import Happening
from rackboard.ui.happenings import paint_bar
from rackboard.ui.keys import RIM, TARGET, Key, TapKey
from rackboard.ui.language import say
from rackboard.ui.shortening import sentences, shortened
from rackboard.ui.theme import Theme
from rackboard.ui.tile import word_text
from rackboard.ui.type import Roles


class AlarmCard(QWidget):
    """One alarm with its button, or that there is none.

    Of several the worst is shown, which is the first; `show_next` leads on to the others.

    Signals
    -------
    alarm_answered(str)
        The key of the happening.
    """

    alarm_answered = Signal(str)

    def __init__(self, theme: Theme, *, large: bool, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._alarms: tuple[Happening, ...] = ()
        self._at = 0
        self.key = Key("", theme, Roles(large=large), self)
        self.key.clicked.connect(self._on_clicked)
        self.key.hide()
        self._show()
        self.show_size(theme, large=large)

    def show_size(self, theme: Theme, *, large: bool) -> None:
        """Take another scheme or size."""
        self._theme, self._large, self._roles = theme, large, Roles(large=large)
        self.key.show_theme(theme, self._roles)
        self._place_key()
        self.update()

    def show_alarms(self, alarms: tuple[Happening, ...]) -> None:
        """Show other alarms, the worst first; the one in sight stays unless a worse one came."""
        if alarms == self._alarms:
            return
        before, self._alarms = self._alarms, alarms
        shown = before[self._at].key if before else ""
        worse = alarms and alarms[0].key not in {alarm.key for alarm in before}
        keys = [alarm.key for alarm in alarms]
        self._at = keys.index(shown) if shown in keys and not worse else 0
        self._show()

    def show_next(self) -> None:
        """Lead on to the next alarm, from the last to the first."""
        if self._alarms:
            self._at = (self._at + 1) % len(self._alarms)
            self._show()

    def shown(self) -> Happening | None:
        """Return the alarm in sight."""
        return self._alarms[self._at] if self._alarms else None

    def others(self) -> tuple[Happening, ...]:
        """Return the alarms that are out of sight, the next one first."""
        return self._alarms[self._at + 1 :] + self._alarms[: self._at]

    def _show(self) -> None:
        alarm = self.shown()
        self.key.setVisible(alarm is not None and bool(alarm.button))
        if alarm is None:
            self.setAccessibleName(say("Happenings", "No alarm"))
        else:
            said = alarm.accessible or alarm.title
            self.key.setText(alarm.button)
            self.key.setAccessibleName(f"{alarm.button}: {said}")
            self.key.on_hold = alarm.word is Word.HOLD
            self.setAccessibleName(said)
        self.update()

    def _on_clicked(self) -> None:
        alarm = self.shown()
        if alarm is not None:
            self.alarm_answered.emit(alarm.key)

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
        alarm = self.shown()
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
        text = say("Happenings", "Nothing on hold, no alarm")
        text = shortened(roles.fact, text, self.width() - 32)
        type.draw(painter, roles.fact, 16, baseline, text, theme.sub)

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
        left = x
        if hold:
            word = word_text(Word.HOLD)
            title = title.removeprefix(word).lstrip()
            left += type.draw(painter, roles.head, x, baseline, word, text) + 9
        title = shortened(roles.head, title, limit - left)
        type.draw(painter, roles.head, left, baseline, title, text)
        x = x if large else 14.0
        for number, line in enumerate(sentences(roles.fact, lines, limit - x, 2)):
            y = baseline + 27 + number * (23 if large else 21)
            type.draw(painter, roles.fact, x, y, line, sub)

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


class MoreKey(TapKey):
    """Stands in the place of the next due row while several alarms are open; a tap leads on."""

    def __init__(self, theme: Theme, roles: Roles, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._others: tuple[Happening, ...] = ()
        self.show_theme(theme, roles)

    def show_theme(self, theme: Theme, roles: Roles) -> None:
        """Take another scheme or size."""
        self._theme, self._roles = theme, roles
        self.update()

    def show_others(self, others: tuple[Happening, ...]) -> None:
        """Show how many alarms are out of sight, and which comes next."""
        self._others = others
        if others:
            count, first = self._count(), others[0]
            next_one = say("Happenings", "next {alarm}").format(
                alarm=first.accessible or first.title
            )
            self.setAccessibleName(f"{count}, {next_one}")
        self.update()

    def _count(self) -> str:
        number = len(self._others)
        if all(other.word is Word.HOLD for other in self._others):
            return say("Happenings", "+ %n more on hold", "+ %n more on hold", number)
        return say("Happenings", "+ %n more alarms", "+ %n more alarm", number)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the count, the next alarm, and an arrow."""
        del event
        if not self._others:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, roles, large = self._theme, self._roles, self._roles.large
        first = self._others[0]
        area = QRectF(self.rect()).adjusted(0.75, 0.75, -0.75, -0.75)
        painter.setPen(QPen(theme.edge, 1.5))
        painter.setBrush(theme.surf)
        painter.drawRoundedRect(area, 8, 8)
        paint_bar(painter, theme, QRectF(self.rect()), first.word)
        lower = area.center().y() + (26 if large else 23) / 2 + type.cap_height(roles.fact) / 2
        upper = lower - (26 if large else 23)
        x = 17.0 if large else 13.0
        size = 28.0 if large else 22.0
        right = area.right() - 16 - size
        type.draw(painter, roles.head, x, upper, self._count(), theme.text)
        title = first.title if large else first.title_short or first.title
        if first.word is Word.HOLD:
            title = title.removeprefix(word_text(Word.HOLD)).lstrip()
        if first.glyph is not None:
            glyphs.draw(painter, first.glyph, x, lower - 15, 18, theme.text)
        text = " ".join((title + ".", *(first.lines if large else first.lines_short)[:1]))
        text = shortened(roles.fact, text, right - 8 - x - 26)
        type.draw(painter, roles.fact, x + 26, lower, text, theme.sub)
        middle = area.center().y()
        arrow = QPolygonF([QPointF(right + 8, middle - 8), QPointF(right + 18, middle),
                           QPointF(right + 8, middle + 8)])  # fmt: skip
        painter.setPen(QPen(theme.text, 2.6))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPolyline(arrow)
        if self.hasFocus():
            painter.setPen(QPen(theme.ring, 3))
            painter.drawRoundedRect(area.adjusted(1, 1, -1, -1), 8, 8)
        painter.end()
