"""The top strip: clock, what is due next, the question about the night, temperatures."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFocusEvent, QMouseEvent, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QLineEdit, QWidget

from rackboard.ui import edges, glyphs, type
from rackboard.ui.board_view import Ask, Due, Strip, Temperature
from rackboard.ui.grid import Grid
from rackboard.ui.keys import TapKey
from rackboard.ui.language import say
from rackboard.ui.shortening import fitted, shortened
from rackboard.ui.theme import Theme
from rackboard.ui.type import Align, Roles


class TemperatureKey(TapKey):
    """The reading of a zone: a tap corrects or adds one."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.value: Temperature | None = None
        self.theme: Theme | None = None
        self.roles: Roles | None = None

    def sizeHint(self) -> QSize:
        """Return the room that the texts need."""
        if self.value is None or self.roles is None:
            return QSize(0, 0)
        value, roles = self.value, self.roles
        names = max(type.width(roles.strip_head, value.name), type.width(roles.fact, value.age))
        unit = type.width(roles.fact, value.unit) + 4 if value.value else 0
        reading = type.width(roles.reading, value.value or "-")
        return QSize(round(names + 12 + reading + unit + 10), 0)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint name, age and reading, flush right."""
        del event
        value, theme, roles = self.value, self.theme, self.roles
        if value is None or theme is None or roles is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        upper, lower, middle = _baselines(self.height(), roles)
        x = self.width() - 5.0
        baseline = middle + type.cap_height(roles.reading) / 2
        if value.value:
            x -= type.draw(painter, roles.fact, x, baseline, value.unit, theme.sub, Align.RIGHT) + 4
            x -= type.draw(
                painter, roles.reading, x, baseline, value.value, theme.text, Align.RIGHT
            )
        else:
            painter.fillRect(QRectF(x - 14, middle - 1.5, 14, 3), theme.dim)
            x -= 14
        x -= 12
        type.draw(painter, roles.strip_head, x, upper, value.name, theme.text, Align.RIGHT)
        type.draw(painter, roles.fact, x, lower, value.age, theme.sub, Align.RIGHT)
        if self.hasFocus():
            rect = QRectF(self.rect()).adjusted(2, 7, -2, -7)
            edges.draw_ring(painter, theme.ring, rect, 0)
        painter.end()


class NightField(QLineEdit):
    """The answer to "lowest it got overnight?"; the ring is painted by the strip."""

    focus_changed = Signal()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Tell the strip."""
        super().focusInEvent(event)
        self.focus_changed.emit()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Tell the strip."""
        super().focusOutEvent(event)
        self.focus_changed.emit()


def _baselines(height: float, roles: Roles) -> tuple[float, float, float]:
    middle = height / 2
    pitch = 23.5 if roles.large else 17.0
    lower = middle + pitch / 2 + type.cap_height(roles.fact) / 2
    return lower - pitch, lower, middle


class StripBar(QWidget):
    """The strip as a widget.

    Signals
    -------
    night_answered(str, str)
        The key of the question and the text as typed.
    temperature_clicked(int)
        The zone.
    due_clicked()
        The next due thing was tapped.
    """

    night_answered = Signal(str, str)
    temperature_clicked = Signal(int)

    def __init__(self, theme: Theme, grid: Grid, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._strip: Strip | None = None
        self._keys: list[TemperatureKey] = []
        self._ask_key = ""
        self._ask_x = 0.0
        self._left_end = 0.0
        self.night = NightField(self)
        self.night.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.night.setMaxLength(9)
        self.night.setFrame(False)
        self.night.hide()
        self.night.returnPressed.connect(self._on_night_entered)
        self.night.focus_changed.connect(self.update)
        self.show_grid(theme, grid)

    def show_grid(self, theme: Theme, grid: Grid) -> None:
        """Take another scheme or size."""
        self._theme, self._grid = theme, grid
        self._roles = Roles(large=grid.large)
        style = self._roles.inspector_time
        self.night.setFont(type.font(style))
        # A palette alone leaves the style's frame and base in the field.
        self.night.setStyleSheet(
            f"QLineEdit{{background:transparent;border:none;color:{theme.text.name()}}}"
        )
        for key in self._keys:
            key.theme, key.roles = theme, self._roles
        self._place()
        self.update()

    def show_strip(self, strip: Strip) -> None:
        """Show other values."""
        old = self._strip
        if strip == old:
            return
        self._strip = strip
        if old is None or strip.temperatures != old.temperatures:
            self._show_temperatures(strip.temperatures)
        if old is None or strip.ask != old.ask:
            self._show_ask(strip.ask)
        self.setAccessibleName(f"{strip.clock}, {strip.weekday} {strip.date}")
        due = strip.next_due
        self.setAccessibleDescription(
            say("Strip", "Next: {time} {title}, {detail}").format(
                time=due.time, title=due.title, detail=due.detail
            )
        )
        self._place()
        self.update()

    def _show_temperatures(self, temperatures: tuple[Temperature, ...]) -> None:
        while len(self._keys) < len(temperatures):
            key = TemperatureKey(self)
            key.theme, key.roles = self._theme, self._roles
            key.clicked.connect(self._on_temperature_clicked)
            self._keys.append(key)
        for number, key in enumerate(self._keys):
            value = temperatures[number] if number < len(temperatures) else None
            key.value = value
            key.setVisible(value is not None)
            if value is not None:
                said = f"{value.name} {value.value} {value.unit}, {value.age}"
                key.setAccessibleName(value.accessible or said)
            key.update()

    def _show_ask(self, ask: Ask | None) -> None:
        self.night.setVisible(ask is not None)
        if ask is None:
            self._ask_key = ""
            return
        self.night.setAccessibleName(f"{ask.question} {ask.record}, {ask.unit}")
        if ask.key != self._ask_key:
            self._ask_key = ask.key
            self.night.setText(ask.proposal)

    def _on_night_entered(self) -> None:
        self.night_answered.emit(self._ask_key, self.night.text())

    def _on_temperature_clicked(self) -> None:
        sender = self.sender()
        if isinstance(sender, TemperatureKey) and sender.value is not None:
            self.temperature_clicked.emit(sender.value.zone_id)

    def ask_area(self) -> QRectF:
        """Return where a tap goes to the field: the whole question, as high as the strip."""
        if self._strip is None or self._strip.ask is None:
            return QRectF()
        unit = type.width(self._roles.fact, self._strip.ask.unit)
        right = self._field_x + (66 if self._grid.large else 50) + 8 + unit
        return QRectF(self._x_ask_rule, 0, right - self._x_ask_rule, self.height())

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take a tap on the question for one on its field, which is small."""
        if self.ask_area().contains(event.position()):
            self.night.setFocus(Qt.FocusReason.MouseFocusReason)
            self.night.selectAll()
            return
        event.ignore()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Place the keys anew."""
        super().resizeEvent(event)
        self._place()

    def _place(self) -> None:
        strip, grid = self._strip, self._grid
        if strip is None:
            return
        right = self.width() - grid.margin + 5
        between = 16 if grid.large else 8
        for number in reversed(range(len(strip.temperatures))):
            key = self._keys[number]
            wide = key.sizeHint().width()
            right -= wide
            key.setGeometry(right, 0, wide, self.height() - 1)
            right -= between
        self._left_end = right
        self._plan(strip)
        if strip.ask is not None:
            high = 52 if grid.large else 44
            wide = 66 if grid.large else 50
            inset = 4
            at = round(self._field_x)
            top = (self.height() - high) // 2
            self.night.setGeometry(
                at + inset, top + inset, wide - 2 * inset, high - 2 * inset
            )

    def _plan(self, strip: Strip) -> None:
        """Decide what fits: the following permission goes first, then the due detail."""
        roles, grid = self._roles, self._grid
        large = grid.large
        self._x_date = grid.margin + type.width(roles.clock, "00:00") + (19 if large else 12)
        dates = max(type.width(roles.fact, text) for text in (strip.weekday, strip.date))
        self._x_rule = self._x_date + dates + (28 if large else 14)
        self._x_due = self._x_rule + (27 if large else 16)
        ask = strip.ask
        ask_room = 0.0
        if ask is not None:
            texts = max(type.width(roles.strip_head, ask.question),
                        type.width(roles.fact, ask.record))  # fmt: skip
            ask_room = texts + 16 + (66 if large else 50) + 8 + type.width(roles.fact, ask.unit)
        due_room = self._due_width(strip.next_due)
        step = 28 if large else 16
        self._following = strip.following if large else None
        follow_room = self._following_width(self._following) if self._following else 0
        need = self._x_due + due_room + (2 * step + ask_room if ask else 0)
        if self._following and need + step + follow_room > self._left_end:
            self._following = None
        x = self._x_due + due_room + step
        self._x_following = x
        if self._following:
            x += follow_room + step
        self._due_end = self._left_end
        if ask is not None:
            x = min(x, self._left_end - ask_room - step)
            self._due_end = x - 8
            self._x_ask_rule = x
            self._ask_x = x + (26 if large else 16)
            texts = ask_room - 16 - (66 if large else 50) - 8 - type.width(roles.fact, ask.unit)
            self._field_x = self._ask_x + texts + 14
        elif self._following:
            self._due_end = self._x_following - 8

    def _due_texts(self, due: Due) -> tuple[str, str]:
        if self._grid.large:
            return due.title, due.detail
        return due.title_short or due.title, due.detail_short or due.detail

    def _due_lead(self, due: Due) -> float:
        if due.glyph is None:
            return 0.0
        size, gap = (34, 11) if self._grid.large else (25, 8)
        return size + gap + type.width(self._roles.reading, due.time) + (15 if size > 30 else 10)

    def _due_width(self, due: Due) -> float:
        title, detail = self._due_texts(due)
        return self._due_lead(due) + max(
            type.width(self._roles.strip_head, title), type.width(self._roles.fact, detail)
        )

    def _following_width(self, due: Due) -> float:
        style = self._roles.fact
        return 34 + max(type.width(style, due.title), type.width(style, due.detail))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the texts; readings and the field paint themselves."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme, roles, strip = self._theme, self._roles, self._strip
        painter.fillRect(self.rect(), theme.strip)
        painter.fillRect(QRectF(0, self.height() - 1, self.width(), 1), theme.line)
        if strip is None:
            painter.end()
            return
        upper, lower, middle = _baselines(self.height(), roles)
        baseline = middle + type.cap_height(roles.clock) / 2
        type.draw(painter, roles.clock, self._grid.margin, baseline, strip.clock, theme.text)
        type.draw(painter, roles.fact, self._x_date, upper, strip.weekday, theme.sub)
        type.draw(painter, roles.fact, self._x_date, lower, strip.date, theme.sub)
        self._rule(painter, self._x_rule)
        self._paint_due(painter, strip.next_due, upper, lower, middle)
        if self._following is not None:
            self._paint_following(painter, self._following, upper, lower, middle)
        if strip.ask is not None:
            self._paint_ask(painter, strip.ask, upper, lower, middle)
        painter.end()

    def _rule(self, painter: QPainter, x: float) -> None:
        inset = 14 if self._grid.large else 10
        painter.fillRect(QRectF(x, inset, 1, self.height() - 2 * inset - 1), self._theme.line)

    def _paint_due(
        self, painter: QPainter, due: Due, upper: float, lower: float, middle: float
    ) -> None:
        theme, roles = self._theme, self._roles
        x = self._x_due
        if due.glyph is not None:
            size = 34 if self._grid.large else 25
            glyphs.draw(painter, due.glyph, x, middle - size / 2, size, theme.text)
            baseline = middle + type.cap_height(roles.reading) / 2
            time_x = x + size + (11 if self._grid.large else 8)
            type.draw(painter, roles.reading, time_x, baseline, due.time, theme.text)
        x += self._due_lead(due)
        title, detail = self._due_texts(due)
        room = self._due_end - x
        title = shortened(roles.strip_head, title, room)
        type.draw(painter, roles.strip_head, x, upper, title, theme.text)
        style, detail = fitted((roles.fact, roles.fact_narrow), detail, room)
        type.draw(painter, style, x, lower, detail, theme.sub)

    def _paint_following(
        self, painter: QPainter, due: Due, upper: float, lower: float, middle: float
    ) -> None:
        x, theme, style = self._x_following, self._theme, self._roles.fact
        if due.glyph is not None:
            glyphs.draw(painter, due.glyph, x, middle - 12, 24, theme.sub, hollow=1.5)
        type.draw(painter, style, x + 34, upper, due.title, theme.sub)
        type.draw(painter, style, x + 34, lower, due.detail, theme.sub)

    def _paint_ask(
        self, painter: QPainter, ask: Ask, upper: float, lower: float, middle: float
    ) -> None:
        theme, roles, large = self._theme, self._roles, self._grid.large
        self._rule(painter, self._x_ask_rule)
        type.draw(painter, roles.strip_head, self._ask_x, upper, ask.question, theme.text)
        type.draw(painter, roles.fact, self._ask_x, lower, ask.record, theme.sub)
        high, wide = (52, 66) if large else (44, 50)
        box = QRectF(self._field_x, middle - high / 2, wide, high)
        focused = self.night.hasFocus()
        painter.setPen(QPen(theme.ring if focused else theme.edge, 3 if focused else 2))
        painter.setBrush(theme.surf)
        painter.drawRoundedRect(box.adjusted(1, 1, -1, -1), 7, 7)
        baseline = middle + type.cap_height(roles.fact) / 2
        type.draw(painter, roles.fact, box.right() + 8, baseline, ask.unit, theme.sub)
