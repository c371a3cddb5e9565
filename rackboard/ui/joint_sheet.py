"""The joint's sheet on paper: one page with its facts, its curve, the reasons and the history.

The curve is painted by the same painter as on the screen, in black. All lengths are in units
of 1/120 inch, so that the type of the large board stands at 9 to 10 points.
"""

from __future__ import annotations

from datetime import datetime
from typing import NamedTuple

from PySide6.QtCore import QDate, QDateTime, QLocale, QRectF, QSizeF, QTime
from PySide6.QtGui import QPainter, QPen

from rackboard.core.bench import HoldReason, Milestone
from rackboard.core.errors import RackboardError
from rackboard.core.instants import Instant
from rackboard.core.standing import Standing
from rackboard.core.text import text
from rackboard.core.words import Word
from rackboard.services.portrait import joint_record, portrait
from rackboard.ui import glyphs, motif, type
from rackboard.ui.board_presenter import BoardPresenter
from rackboard.ui.curve import CurvePainter
from rackboard.ui.curve_presenter import ALLOWS
from rackboard.ui.inspector_presenter import InspectorPresenter
from rackboard.ui.inspector_view import CurveView, Reason
from rackboard.ui.joint_history import JointHistory, Line
from rackboard.ui.language import say, spoken, translated
from rackboard.ui.session import Session
from rackboard.ui.theme import paper_theme
from rackboard.ui.tile import HOLD_GLYPHS, WORD_GLYPHS, Glyph, word_text
from rackboard.ui.type import Align, Face, Roles, Style
from rackboard.ui.wording import Times, customer_said

UNITS_PER_INCH = 120
MARGIN = 76.0
_CURVE_HIGH = 440.0
_CURVE_LEAST = 310.0
_STRIP = 62.0
_ROW = 23.0
_FACT_COLUMNS = 2
_TITLE = Style(Face.BOLD, 50)
_JOB = Style(Face.MEDIUM, 26)


class PaperTimes(Times):
    """Says every instant with its date: paper is read on other days."""

    __slots__ = ()

    def moment(self, instant: Instant) -> str:
        """Return "Thu 12 Mar 17:20"."""
        return _dated(self.local(instant), say("JointSheet", "ddd d MMM HH:mm"))

    def printed(self) -> str:
        """Return the present as "Thu 12 March 2026, 14:26"."""
        return _dated(self.local(self.now), say("JointSheet", "ddd d MMMM yyyy, HH:mm"))


def _dated(local: datetime, pattern: str) -> str:
    """Return a local time in the language spoken, by a pattern of Qt's."""
    moment = QDateTime(
        QDate(local.year, local.month, local.day), QTime(local.hour, local.minute)
    )
    return QLocale(spoken()).toString(moment, pattern)


class Sheet(NamedTuple):
    """What stands on the page; no early bound has a place here.

    `reasons` are the three lines of each permission under its name.
    """

    club: str
    job: str
    head: str
    word: Word
    hold: HoldReason | None
    sentence: str
    facts: tuple[tuple[str, str], ...]
    curve: CurveView
    reasons: tuple[tuple[str, tuple[Reason, ...]], ...]
    history: tuple[Line, ...]


def joint_sheet(session: Session, standing: Standing) -> Sheet:
    """Return what a joint's page says now.

    Raises
    ------
    RackboardError
        If the board isn't up to date, or there is no curve yet.
    """
    board = session.board
    presenter = BoardPresenter(board, session.clock.now(), session.unit)
    if presenter.stale:
        raise RackboardError(
            text("JointSheet", "The board is not being updated; its times can't go on paper."),
            text("JointSheet", "Wait until it is, and save the sheet then."),
        )
    picture = portrait(board, standing)
    if picture is None:
        raise RackboardError(
            text("JointSheet", "There is no curve of {club} yet.").format(
                club=standing.club.name),
            text("JointSheet", "Mix its batch and type the temperature first."),
        )  # fmt: skip
    times = PaperTimes(presenter.snapshot.hours, presenter.now)
    inspector = InspectorPresenter(presenter, times)
    history = JointHistory(
        presenter, standing, joint_record(session.store, board, standing), times
    )
    customer = presenter.snapshot.customers.get(standing.job.customer_id)
    job = say("JointSheet", "job {job}, {customer}").format(
        job=standing.job.number,
        customer=customer_said(customer),
    )
    shop = presenter.snapshot.settings.get("shop name")
    printed = say("JointSheet", "printed {time}").format(time=times.printed())
    if isinstance(shop, str) and shop:
        printed = say("JointSheet", "{shop}, printed {time}").format(
            shop=shop, time=times.printed()
        )
    reasons = []
    if standing.hold is None:
        for milestone in Milestone:
            lines = inspector.three_lines(standing, picture, milestone)
            handling = milestone is Milestone.HANDLING
            if lines and not (handling and picture.outcome.forecast.handling is None):
                reasons.append((translated(ALLOWS[milestone]), lines))
    own = {say("History", "Job"), say("History", "Customer")}
    facts = tuple(fact for fact in history.facts(picture) if fact[0] not in own)
    return Sheet(
        standing.club.name, job, printed, standing.word,
        None if standing.hold is None else standing.hold.reason,
        inspector.in_words(standing, picture), facts, inspector.curve(standing, picture),
        tuple(reasons), history.lines(),
    )  # fmt: skip


class SheetPainter:
    """Paints a `Sheet` on a page.

    Parameters
    ----------
    page : QSizeF
        The page [1/120 inch].
    """

    def __init__(self, page: QSizeF) -> None:
        self._page = page
        self._theme = paper_theme()
        self._roles = Roles(large=True)
        self._left, self._right = MARGIN, page.width() - MARGIN

    def paint(self, painter: QPainter, sheet: Sheet) -> None:
        """Paint the page; the history gets what room is left."""
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        y = self._head(painter, sheet)
        y = self._facts(painter, sheet.facts, self._rule(painter, y + 14) + 26)
        foot = self._foot(painter)
        y = self._rule(painter, y + 8)
        below = self._reasons_high(sheet) + 96 + _ROW * len(sheet.history)
        high = min(max(foot - y - 44 - below, _CURVE_LEAST), _CURVE_HIGH)
        y = self._curve(painter, sheet, y + 30, high)
        y = self._rule(painter, y + 14)
        y = self._reasons(painter, sheet, y)
        self._history(painter, sheet.history, y, foot - 8)
        painter.restore()

    def _rule(self, painter: QPainter, y: float) -> float:
        painter.fillRect(QRectF(self._left, y, self._right - self._left, 1), self._theme.line)
        return y

    def _head(self, painter: QPainter, sheet: Sheet) -> float:
        theme, roles = self._theme, self._roles
        y = MARGIN + 16
        type.draw(painter, roles.head, self._left, y, say("JointSheet", "Cure record"), theme.sub)
        type.draw(painter, roles.fact, self._right, y, sheet.head, theme.sub, Align.RIGHT)
        y += 62
        room = self._plate(painter, sheet, y) - 24 - self._left
        club = type.fitting(_TITLE, sheet.club, room)
        x = self._left + type.draw(painter, _TITLE, self._left, y, club, theme.text) + 20
        if self._left + room - x > type.width(_JOB, sheet.job):
            type.draw(painter, _JOB, x, y, sheet.job, theme.sub)
        else:
            y += 36
            job = type.fitting(_JOB, sheet.job, self._right - self._left)
            type.draw(painter, _JOB, self._left, y, job, theme.sub)
        y += 14
        for line in type.wrapped(roles.fact, sheet.sentence, self._right - self._left):
            y += 22
            type.draw(painter, roles.fact, self._left, y, line, theme.text)
        return y

    def _plate(self, painter: QPainter, sheet: Sheet, baseline: float) -> float:
        """Paint the word in its frame, right; return where it begins."""
        theme, style = self._theme, self._roles.inspector_title
        word = sheet.word
        wide = type.width(style, word_text(word)) + 76
        frame = QRectF(self._right - wide, baseline - 42, wide - 1.5, 50)
        painter.setPen(QPen(theme.text, 3))
        painter.setBrush(theme.bg)
        painter.drawRoundedRect(frame, 7, 7)
        glyph: Glyph = WORD_GLYPHS[word]
        if sheet.hold is not None:
            glyph = HOLD_GLYPHS[sheet.hold]
        glyphs.draw(painter, glyph, frame.x() + 16, frame.center().y() - 13, 26, theme.text)
        middle = frame.center().y() + type.cap_height(style) / 2
        type.draw(painter, style, frame.x() + 56, middle, word_text(word), theme.text)
        return frame.x()

    def _facts(
        self, painter: QPainter, facts: tuple[tuple[str, str], ...], top: float
    ) -> float:
        theme, roles = self._theme, self._roles
        rows = -(-len(facts) // _FACT_COLUMNS)
        column = (self._right - self._left + 24) / _FACT_COLUMNS
        names = max(type.width(roles.fact, name) for name, _ in facts) + 18
        for number, (name, value) in enumerate(facts):
            x = self._left + number // rows * column
            y = top + number % rows * _ROW
            type.draw(painter, roles.fact, x, y, name, theme.sub)
            shown = type.fitting(roles.fact_bold, value, column - 24 - names)
            type.draw(painter, roles.fact_bold, x + names, y, shown, theme.text)
        return top + (rows - 1) * _ROW + 8

    def _curve(self, painter: QPainter, sheet: Sheet, y: float, high: float) -> float:
        theme, roles = self._theme, self._roles
        title = say("JointSheet", "How the glue goes")
        type.draw(painter, roles.head, self._left, y, title, theme.text)
        legend = say("JointSheet", "hollow: probably; solid: not before; shaded to the late side")
        type.draw(painter, roles.small, self._right, y, legend, theme.sub, Align.RIGHT)
        area = QRectF(self._left, y + 14, self._right - self._left, high)
        CurvePainter(theme, roles, strip=_STRIP).paint(painter, area, sheet.curve)
        return area.bottom()

    def _whys(self, reason: Reason) -> list[str]:
        room = self._right - self._left - self._reason_columns()[3]
        return type.wrapped(self._roles.fact, reason.why, room)

    def _reason_columns(self) -> tuple[float, float, float, float]:
        return 0.0, 130.0, 270.0, 420.0

    def _reasons_high(self, sheet: Sheet) -> float:
        return 14 + _ROW * sum(
            max(len(self._whys(reason)), 1) for _, lines in sheet.reasons for reason in lines
        )

    def _reasons(self, painter: QPainter, sheet: Sheet, y: float) -> float:
        """Paint the three lines of each permission: whose time, when, why."""
        theme, roles = self._theme, self._roles
        at = [self._left + x for x in self._reason_columns()]
        y += 5
        for allowed, lines in sheet.reasons:
            for number, reason in enumerate(lines):
                y += _ROW
                if number == 0:
                    type.draw(painter, roles.fact_bold, at[0], y, allowed, theme.text)
                type.draw(painter, roles.fact, at[1], y, reason.name, theme.sub)
                type.draw(painter, roles.fact_bold, at[2], y, reason.time, theme.text)
                for line, why in enumerate(self._whys(reason)):
                    y += _ROW if line else 0
                    type.draw(painter, roles.fact, at[3], y, why, theme.sub)
        return self._rule(painter, y + 14) if sheet.reasons else y - 5

    def _history(
        self, painter: QPainter, lines: tuple[Line, ...], y: float, bottom: float
    ) -> None:
        """Paint the history; where there is no room for all, the latest lines."""
        theme, roles = self._theme, self._roles
        y += 28
        title = say("JointSheet", "What happened")
        type.draw(painter, roles.head, self._left, y, title, theme.text)
        room = int((bottom - y) // _ROW)
        left_out = len(lines) - room
        if left_out > 0:
            said = say("JointSheet", "%n earlier lines stand on the board's record only",
                       "%n earlier line stands on the board's record only", left_out)  # fmt: skip
            type.draw(painter, roles.small, self._right, y, said, theme.sub, Align.RIGHT)
        shown = lines[max(left_out, 0) :]
        times = max((type.width(roles.fact_bold, line.time) for line in shown), default=0.0)
        for line in shown:
            y += _ROW
            type.draw(painter, roles.fact_bold, self._left, y, line.time, theme.text)
            x = self._left + times + 14
            if line.glyph is not None:
                glyphs.draw(painter, line.glyph, x, y - 15, 18, theme.text)
            x += 30
            by = type.draw(painter, roles.fact, self._right, y, line.by, theme.sub, Align.RIGHT)
            what = type.fitting(roles.fact, line.what, self._right - by - 14 - x)
            type.draw(painter, roles.fact, x, y, what, theme.text)

    def _foot(self, painter: QPainter) -> float:
        """Paint caution and name at the bottom; return where they begin."""
        theme, roles = self._theme, self._roles
        bottom = self._page.height() - MARGIN
        inks = motif.MotifInks(theme.text, theme.dim, theme.sub)
        motif.draw(painter, inks, self._left, bottom - 8, 176, 16, 1.0)
        type.draw(painter, roles.fact_bold, self._left + 192, bottom - 2, "rackboard", theme.text)
        page = say("JointSheet", "page 1 of 1")
        type.draw(painter, roles.small, self._right, bottom - 2, page, theme.sub, Align.RIGHT)
        caution = say(
            "JointSheet",
            "The board estimates the cure from the sheet and the recorded temperature; it does not"
            " measure the bond. The epoxy's own sheet comes first. When in doubt the club is not"
            " hit.",
        )
        lines = type.wrapped(roles.fact, caution, self._right - self._left)
        y = bottom - 44 - (len(lines) - 1) * 22
        top = self._rule(painter, y - 28)
        for number, line in enumerate(lines):
            type.draw(painter, roles.fact, self._left, y + 22 * number, line, theme.text)
        return top
