"""The inspector: one slot in full, with its curve, its three lines and what can be done."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QWidget

from rackboard.core.words import Word
from rackboard.ui import edges, glyphs, type
from rackboard.ui.curve import CurvePainter
from rackboard.ui.inspector_view import Action, CurveView, InspectorView, Permission, Reason
from rackboard.ui.keys import APART, RIM, TARGET, Key, TapKey
from rackboard.ui.language import say
from rackboard.ui.theme import Theme
from rackboard.ui.tile import HOLD_GLYPHS, WORD_GLYPHS, Glyph, word_text
from rackboard.ui.type import Align, Roles

_MIDDLE = 0.5


class Spot(TapKey):
    """A part of the card that can be pressed, with no body of its own: only its ring shows."""

    def __init__(self, theme: Theme, name: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._theme = theme
        self.setObjectName(name)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.hide()

    def show_theme(self, theme: Theme) -> None:
        """Take another scheme."""
        self._theme = theme
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the ring."""
        del event
        if not self.hasFocus():
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self._theme.ring, 3))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(1.5, 1.5, -1.5, -1.5), 8, 8)
        painter.end()


class Inspector(QWidget):
    """The card in the right column.

    Its head opens the joint's record, its curve the same as a table.

    Signals
    -------
    action_chosen(str)
        The key of a button; "record" and "table" for the two parts.
    """

    action_chosen = Signal(str)

    def __init__(self, theme: Theme, *, large: bool, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._view: InspectorView | None = None
        self._keys: list[Key] = []
        self._reasons_shown = False
        self.head = Spot(theme, "record", self)
        self.picture = Spot(theme, "table", self)
        for spot in (self.head, self.picture):
            spot.clicked.connect(self._on_key_clicked)
        self.show_size(theme, large=large)

    def show_size(self, theme: Theme, *, large: bool) -> None:
        """Take another scheme or size."""
        self._theme, self._large, self._roles = theme, large, Roles(large=large)
        self._pad = 22.0 if large else 14.0
        self._curve = CurvePainter(theme, self._roles, times=large)
        for key in self._keys:
            key.show_theme(theme, self._roles)
        for spot in (self.head, self.picture):
            spot.show_theme(theme)
        if self._view is not None:
            self._show_keys(self._view.actions)
        self.update()

    def show_inspector(self, view: InspectorView | None) -> None:
        """Show another slot, or the same with new times."""
        old = self._view
        if view == old:
            return
        self._view = view
        actions = view.actions if view is not None else ()
        if old is None or actions != old.actions:
            self._show_keys(actions)
        nothing = say("Inspector", "Nothing chosen")
        self.setAccessibleName(view.accessible if view is not None else nothing)
        self._place_spots()
        self.update()

    def keys(self) -> list[Key]:
        """Return the buttons in sight."""
        return [key for key in self._keys if not key.isHidden()]

    def _show_keys(self, actions: tuple[Action, ...]) -> None:
        shown = [action for action in actions if (action.large if self._large else action.small)]
        names = [(key.objectName(), key.text(), key.isEnabled()) for key in self._keys]
        if names != [(action.key, action.text, action.enabled) for action in shown]:
            for key in self._keys:
                key.hide()
                key.deleteLater()
            self._keys = [self._key(action) for action in shown]
        self._place_keys()

    def _key(self, action: Action) -> Key:
        key = Key(action.text, self._theme, self._roles, self)
        key.setObjectName(action.key)
        key.setEnabled(action.enabled)
        key.clicked.connect(self._on_key_clicked)
        key.show()
        return key

    def _on_key_clicked(self) -> None:
        sender = self.sender()
        if sender is not None:
            self.action_chosen.emit(sender.objectName())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Place the keys and the parts anew."""
        super().resizeEvent(event)
        self._place_keys()
        self._place_spots()

    def _place_spots(self) -> None:
        view, pad = self._view, self._pad
        glued = view is not None and view.word is not None
        self.head.setVisible(glued)
        self.picture.setVisible(view is not None and view.curve is not None)
        if view is None:
            return
        if glued:
            self.head.setAccessibleName(say("Inspector", "Record of the joint"))
            self.head.setAccessibleDescription("; ".join((view.title, *view.lines)))
            bottom = self._title_end(view) + (9 if self._large else 7)
            wide = self.width() - 2 * (pad - 10)
            self.head.setGeometry(round(pad - 10), 4, round(wide), round(bottom) - 4)
        if view.curve is not None:
            self.picture.setAccessibleName(say("Inspector", "How the glue goes"))
            self.picture.setAccessibleDescription(view.curve_said)
            area = self.curve_area(view).adjusted(-8, -4, 8, 2)
            self.picture.setGeometry(area.toRect())

    def _place_keys(self) -> None:
        count = len(self._keys)
        if not count:
            return
        left = round(self._pad) - RIM
        room = self.width() - 2 * left
        top = self.height() - (16 if self._large else 11) - TARGET - RIM
        wide = (room - (count - 1) * (APART - 2 * RIM)) / count
        for number, key in enumerate(self._keys):
            x = left + number * (wide + APART - 2 * RIM)
            key.setGeometry(round(x), top, round(x + wide) - round(x), TARGET + 2 * RIM)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the card."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        theme = self._theme
        card = QRectF(self.rect())
        painter.setPen(QPen(theme.surf if theme.dark else theme.line, 1))
        painter.setBrush(theme.surf)
        painter.drawRoundedRect(card.adjusted(0.5, 0.5, -0.5, -0.5), 10, 10)
        if self._view is not None:
            self._paint(painter, self._view)
        painter.end()

    def _paint(self, painter: QPainter, view: InspectorView) -> None:
        right = self.width() - self._pad
        y = self._title(painter, view, right)
        self._reasons_shown = bool(view.reasons)
        y = self._permissions(painter, view.permissions, y, right)
        if view.reasons:
            self._reasons(painter, view.reasons, y, right)
        self._foot(painter, view, right)
        if view.curve is not None:
            area = self.curve_area(view)
            self._curve.paint(painter, area, view.curve)
            self._cue(painter, area, view.curve)

    def _cue(self, painter: QPainter, area: QRectF, curve: CurveView) -> None:
        """Say beside the tag of the present, or where it would be, what a press opens."""
        text = say("Inspector", "As a table")
        y = area.y() + 15
        if curve.now is None:
            y -= self._room_for_cue
        if curve.now is not None and curve.now > _MIDDLE:
            self._link(painter, area.left(), y, text, Align.LEFT)
        else:
            self._link(painter, area.right(), y, text, Align.RIGHT)

    def _link(self, painter: QPainter, x: float, y: float, text: str, align: Align) -> None:
        """Write a text with a line under it: it can be pressed."""
        style, color = self._roles.small, self._theme.sub
        wide = type.draw(painter, style, x, y, text, color, align)
        left = x - wide if align is Align.RIGHT else x
        painter.fillRect(QRectF(left, y + 3, wide, 1), color)

    _room_for_cue = 18.0

    # Where things stand

    def _title_end(self, view: InspectorView) -> float:
        lines = len(view.lines) if self._large else min(len(view.lines), 1)
        if not self._large:
            return 31.0 + 20 * lines
        return 42.0 + (26 + 22 * (lines - 1) if lines else 0)

    def _permissions_end(self, view: InspectorView) -> float:
        large, rows = self._large, view.permissions
        y = self._title_end(view)
        if rows:
            y += 33 + 32 * (len(rows) - 1) if large else 27 + 24 * (len(rows) - 1)
        if not view.reasons:
            y += (22 if large else 17) * sum(bool(row.probably) for row in rows)
        return y

    def _foot_top(self, view: InspectorView) -> float:
        """Return where the lines over the keys begin."""
        y = float(self.height() - (16 if self._large else 11) - TARGET)
        y -= 13 if self._large else 9
        if view.sooner:
            y -= 24 if self._large else 19
        if self._large and view.facts:
            y -= 24
        return y + 4

    def curve_area(self, view: InspectorView) -> QRectF:
        """Return where the curve is painted."""
        y = self._permissions_end(view)
        if view.reasons:
            pitch = 20.0 if self._large else 17.0
            y += (43 if self._large else 34) + pitch * (len(view.reasons) - 1)
        else:
            y += 16 if self._large else 11  # the tag of the present needs the room
        if view.curve is not None and view.curve.now is None:
            y += self._room_for_cue
        pad = self._pad
        return QRectF(pad, y, self.width() - 2 * pad, self._foot_top(view) - y)

    # Painting

    def _title(self, painter: QPainter, view: InspectorView, right: float) -> float:
        theme, roles, large, pad = self._theme, self._roles, self._large, self._pad
        baseline = 42.0 if large else 31.0
        limit = right
        if view.word is not None:
            limit = self._plate(painter, view.word, view, right) - 12
        x = pad
        if view.slot:
            x += type.draw(painter, roles.inspector_title, x, baseline, view.slot, theme.sub)
            x += 13 if large else 10
        title = type.fitting(roles.inspector_title, view.title, limit - x)
        type.draw(painter, roles.inspector_title, x, baseline, title, theme.text)
        y = baseline
        lines = view.lines if large else view.lines[:1]
        for number, line in enumerate(lines):
            y += (26 if number == 0 else 22) if large else 20
            below_plate = number > 0 or not large
            room = (right if below_plate or view.word is None else limit) - pad
            if large and number and view.word is not None:
                link = say("Inspector", "Record")
                room -= type.width(roles.small, link) + 16
                self._link(painter, right, y, link, Align.RIGHT)
            text = type.fitting(roles.fact, line, room)
            type.draw(painter, roles.fact, pad, y, text, theme.sub)
        return y

    def _plate(
        self, painter: QPainter, word: Word, view: InspectorView, right: float
    ) -> float:
        theme, roles, large = self._theme, self._roles, self._large
        style, said = roles.inspector_time._replace(px=24 if large else 17), word_text(word)
        size = 22.0 if large else 16.0
        lead, gap = (14.0, 9.0) if large else (11.0, 8.0)
        width = 2 * lead + size + gap + type.width(style, said)
        height = 38.0 if large else 25.0
        left = right - width
        top = 11.0 if large else 8.0
        cut = 10.0 if word is Word.HOLD else 0.0
        painter.save()
        painter.translate(left, top)
        edges.draw_plate(painter, theme, word, width, height, 0.6, cut)
        glyph: Glyph = WORD_GLYPHS[word]
        if word is Word.HOLD and view.hold is not None:
            glyph = HOLD_GLYPHS[view.hold]
        color = theme.on_fill(word)
        glyphs.draw(painter, glyph, lead, height / 2 - size / 2, size, color)
        baseline = height / 2 + type.cap_height(style) / 2
        type.draw(painter, style, lead + size + gap, baseline, said, color)
        painter.restore()
        return left

    def _permissions(
        self, painter: QPainter, rows: tuple[Permission, ...], y: float, right: float
    ) -> float:
        theme, roles, large, pad = self._theme, self._roles, self._large, self._pad
        size = 21.0 if large else 16.0
        for number, row in enumerate(rows):
            y += (33.0 if number == 0 else 32.0) if large else (27.0 if number == 0 else 24.0)
            color = theme.sub if row.reached else theme.text
            glyphs.draw(painter, row.glyph, pad, y - size + 3, size, theme.text,
                        hollow=0.0 if row.reached else 1.4)  # fmt: skip
            x = pad + size + 11
            x += type.draw(painter, roles.fact, x, y, row.name, theme.text)
            time = type.draw(painter, roles.inspector_time, right, y, row.time, color, Align.RIGHT)
            at = right - time - (10 if large else 8)
            type.draw(painter, roles.fact, at, y, row.caption, theme.sub, Align.RIGHT)
            if row.probably and not self._reasons_shown:
                y += 22 if large else 17
                type.draw(painter, roles.fact, right, y, row.probably, theme.sub, Align.RIGHT)
        return y

    def _reasons(
        self, painter: QPainter, rows: tuple[Reason, ...], y: float, right: float
    ) -> None:
        """Paint the three lines beside each other: whose time, when, why."""
        theme, roles, large, pad = self._theme, self._roles, self._large, self._pad
        pitch = 20.0 if large else 17.0
        gap = 12.0 if large else 7.0
        y += 11 if large else 8
        painter.fillRect(QRectF(pad, y, right - pad, 1), theme.line)
        y += 18 if large else 16
        names = max(type.width(roles.small, row.name) for row in rows)
        times = max(type.width(roles.small_bold, row.time) for row in rows)
        for number, row in enumerate(rows):
            if number:
                y += pitch
            type.draw(painter, roles.small, pad, y, row.name, theme.sub)
            x = pad + names + gap
            type.draw(painter, roles.small_bold, x, y, row.time, theme.text)
            x += times + gap
            room = right - x
            why = row.why
            if type.width(roles.small, why) > room and row.why_short:
                why = row.why_short
            type.draw(painter, roles.small, x, y, type.fitting(roles.small, why, room), theme.sub)

    def _foot(self, painter: QPainter, view: InspectorView, right: float) -> None:
        theme, roles, large, pad = self._theme, self._roles, self._large, self._pad
        y = float(self.height() - (16 if large else 11) - TARGET) - (13 if large else 9)
        sooner = view.sooner if large else view.sooner_short or view.sooner
        if sooner:
            head = say("Inspector", "Sooner")
            x = pad + type.draw(painter, roles.fact, pad, y, head, theme.sub) + 8
            text = type.fitting(roles.fact_bold, sooner, right - x)
            type.draw(painter, roles.fact_bold, x, y, text, theme.text)
            y -= 24 if large else 19
        if large and view.facts:
            x = pad
            for name, value in view.facts:
                x += type.draw(painter, roles.fact, x, y, name, theme.sub) + 7
                text = type.fitting(roles.fact_bold, value, right - x)
                x += type.draw(painter, roles.fact_bold, x, y, text, theme.text) + 26
