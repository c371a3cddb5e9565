"""The curve as a table, for those who can't see a picture: rows over time, marks among them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, NamedTuple

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from rackboard.core.bench import Milestone
from rackboard.core.cure.forecast import printed_time
from rackboard.core.instants import DAY_US, HOUR_US, MINUTE_US, Instant
from rackboard.core.standing import Standing
from rackboard.core.temperature import format_temperature
from rackboard.core.words import SHORT_PHRASES, Word
from rackboard.services.portrait import Portrait, portrait
from rackboard.ui import type
from rackboard.ui.board_presenter import BoardPresenter
from rackboard.ui.curve_presenter import ALLOWS, way_there
from rackboard.ui.dialog import Dialog
from rackboard.ui.inspector_presenter import InspectorPresenter
from rackboard.ui.language import say, translated
from rackboard.ui.session import Session
from rackboard.ui.tile import word_text
from rackboard.ui.type import Roles

_Index = QModelIndex | QPersistentModelIndex
_STEPS_MIN = (15, 30, 60, 120, 180, 240, 360, 480, 720, 1440, 2880)
_ROWS = 24
_SHORT_OF = 0.999  # of a level: what the margin leaves out is said to be short of it
_WIDE, _HIGH = (1240, 860), (940, 700)


class Row(NamedTuple):
    """One line: the instant, what is marked there, and what holds there, all in words."""

    key: str
    at_us: Instant
    time: str
    mark: str
    air: str
    word: Word
    probably: str
    margin: str


class CurveTable:
    """Makes the rows of one joint.

    Parameters
    ----------
    presenter : BoardPresenter
        Of the moment.
    standing, picture
        The joint, and its curve.
    """

    def __init__(
        self, presenter: BoardPresenter, standing: Standing, picture: Portrait
    ) -> None:
        self._p = presenter
        self._standing = standing
        self._picture = picture
        self._given = presenter.snapshot.grants.get(standing.joint.id, {})

    def rows(self) -> tuple[Row, ...]:
        """Return all rows in order of time."""
        marks = [mark for mark in self._marks() if mark[1] <= self._picture.end_us]
        marked = {at_us for _, at_us, _ in marks}
        made = [self._row(key, at_us, mark) for key, at_us, mark in marks]
        made += [
            self._row(f"at:{at_us}", at_us, "") for at_us in self._instants()
            if at_us not in marked
        ]  # fmt: skip
        return tuple(sorted(made, key=_at))

    def _marks(self) -> Iterator[tuple[str, Instant, str]]:
        picture, outcome = self._picture, self._picture.outcome
        yield "mixed", picture.start_us, say("CurveTable", "mixed")
        if outcome.use_by_us is not None:
            yield "use by", outcome.use_by_us, say("CurveTable", "use by")
        if picture.start_us <= self._p.now <= picture.end_us:
            yield "now", self._p.now, say("CurveTable", "now")
        for stretch in picture.air:
            if stretch.gap:
                begins = say("CurveTable", "from here no record")
                yield f"gap:{stretch.start_us}", stretch.start_us, begins
        if self._standing.hold is not None:
            yield "hold", self._standing.hold.from_us, say("CurveTable", "on hold from here")
            return
        for milestone in Milestone:
            permitted = self._permitted_us(milestone)
            bounds = self._bounds(milestone)
            allowed = translated(ALLOWS[milestone])
            if bounds is None:
                continue
            if bounds.expected is not None:
                probably = say("CurveTable", "probably {allowed}").format(allowed=allowed)
                yield f"probably:{milestone}", bounds.expected, probably
            if permitted is None:
                continue
            said = say("CurveTable", "not before this: {allowed}")
            if milestone in self._given:
                said = say("CurveTable", "{allowed} since")
            yield f"not before:{milestone}", permitted, said.format(allowed=allowed)

    def _bounds(self, milestone: Milestone) -> Any:
        forecast = self._picture.outcome.forecast
        return forecast.handling if milestone is Milestone.HANDLING else forecast.full_cure

    def _permitted_us(self, milestone: Milestone) -> Instant | None:
        """Return from when the permission holds, or will; None: not known."""
        grant = self._given.get(milestone)
        if grant is not None:
            return grant.printed_us
        bounds = self._bounds(milestone)
        if self._standing.unknown or bounds is None or bounds.late is None:
            return None
        return printed_time(bounds.late)

    def _instants(self) -> Iterator[Instant]:
        start, end = self._picture.start_us, self._picture.end_us
        span_min = (end - start) // MINUTE_US
        step = next((s for s in _STEPS_MIN if span_min <= s * _ROWS), _STEPS_MIN[-1])
        hours = self._p.snapshot.hours
        day = hours.local(start).date()
        last = -1
        for number in range((end - start) // (step * MINUTE_US) + DAY_US // HOUR_US * 4 + 2):
            instant = hours.at(day, number * step)
            if instant > end:
                return
            if instant > max(start, last):
                last = instant
                yield instant

    def _row(self, key: str, at_us: Instant, mark: str) -> Row:
        picture = self._picture
        temp_c, reckoned = picture.air_at(at_us)
        if temp_c is None:
            air = say("CurveTable", "no record")
        else:
            air = translated(format_temperature(round(temp_c * 1000), self._p.unit))
            if reckoned and at_us > self._p.now:
                air = say("CurveTable", "{temperature}, reckoned").format(temperature=air)
        expected, late = picture.conversion(at_us)
        for milestone, level in self._levels():
            if key == f"probably:{milestone}":
                expected = max(expected, level)  # the picture's samples lie beside it
        return Row(
            key, at_us, self._p.times.moment(at_us), mark, air, self._word(at_us),
            way_there(picture, expected), self._margin_said(at_us, late),
        )  # fmt: skip

    def _margin_said(self, at_us: Instant, late: float) -> str:
        """Return how far it is at the least; nobody knows where a low is missing."""
        outcome = self._picture.outcome
        missing = [t for t in (outcome.forecast.gap_us, outcome.unknown_us) if t is not None]
        if self._standing.unknown and missing and at_us > min(missing):
            return say("CurveTable", "not known")
        return way_there(self._picture, self._margin(at_us, late))

    def _levels(self) -> tuple[tuple[Milestone, float], ...]:
        picture = self._picture
        return (
            (Milestone.HANDLING, picture.handling), (Milestone.FULL_CURE, picture.full)
        )  # fmt: skip

    def _margin(self, at_us: Instant, late: float) -> float:
        """Return the late conversion, kept in step with the permissions.

        The picture's late curve is that of full cure; handling has one of its own.
        """
        for milestone, level in self._levels():
            bounds = self._bounds(milestone)
            if bounds is None:
                continue
            grant = self._given.get(milestone)
            reached = grant.late_us if grant is not None else bounds.late
            if reached is None or at_us < reached:
                late = min(late, level * _SHORT_OF)
            else:
                late = max(late, level)
        return late

    def _word(self, at_us: Instant) -> Word:
        hold = self._standing.hold
        if hold is not None and at_us >= hold.from_us:
            return Word.HOLD
        for milestone, word in (
            (Milestone.FULL_CURE, Word.CURED), (Milestone.HANDLING, Word.BENCH)
        ):  # fmt: skip
            permitted = self._permitted_us(milestone)
            to_come = milestone in self._given or (permitted or 0) > self._p.now
            if permitted is not None and to_come and at_us >= permitted:
                return word
        use_by = self._picture.outcome.use_by_us
        return Word.WET if use_by is not None and at_us < use_by else Word.WAIT


class CurveModel(QAbstractTableModel):
    """The rows for a view."""

    def __init__(self) -> None:
        super().__init__()
        self._rows: tuple[Row, ...] = ()
        self.bold = type.font(Roles(large=True).fact_bold)

    def show_rows(self, rows: tuple[Row, ...]) -> None:
        """Show other rows; the same instants keep their place."""
        if rows == self._rows:
            return
        if rows and [row.key for row in rows] == [row.key for row in self._rows]:
            self._rows = rows
            self.dataChanged.emit(self.index(0, 0), self.index(len(rows) - 1, 5))
            return
        self.beginResetModel()
        self._rows = rows
        self.endResetModel()

    def row_of(self, key: str) -> int:
        """Return where a row stands, -1 if nowhere."""
        return next((n for n, row in enumerate(self._rows) if row.key == key), -1)

    def key_at(self, number: int) -> str:
        """Return the key of a row, "" of none."""
        return self._rows[number].key if 0 <= number < len(self._rows) else ""

    def rowCount(self, parent: _Index = QModelIndex()) -> int:  # noqa: B008
        """Return how many rows there are."""
        return 0 if parent.isValid() else len(self._rows)

    def columnCount(self, parent: _Index = QModelIndex()) -> int:  # noqa: B008
        """Return the six columns."""
        return 0 if parent.isValid() else 6

    def data(self, index: _Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return a cell's text; the whole row in one sentence for a screen reader."""
        if not index.isValid():
            return None
        row = self._rows[index.row()]
        cells = (row.time, row.mark, row.air, word_text(row.word), row.probably, row.margin)
        if role == Qt.ItemDataRole.DisplayRole:
            return cells[index.column()]
        if role == Qt.ItemDataRole.FontRole and row.mark:
            return self.bold
        if role == Qt.ItemDataRole.AccessibleTextRole:
            head = f"{row.time}, {row.mark}" if row.mark else row.time
            return say(
                "CurveTable",
                "{when}: {word}, {phrase}; {air}; probably {probably}; with the margin {margin}",
            ).format(
                when=head, word=word_text(row.word), phrase=translated(SHORT_PHRASES[row.word]),
                air=row.air, probably=row.probably, margin=row.margin,
            )  # fmt: skip
        return None

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> Any:
        """Return a column's head."""
        if orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return (
                say("CurveTable", "When"), say("CurveTable", "Mark"),
                say("CurveTable", "Temperature"), say("CurveTable", "Word"),
                say("CurveTable", "Probably"), say("CurveTable", "With the margin"),
            )[section]  # fmt: skip
        return None


class CurveTableDialog(Dialog):
    """The curve of one joint as a table.

    Parameters
    ----------
    session : Session
        The open shop.
    standing : Standing
        The joint.
    """

    def __init__(
        self, session: Session, standing: Standing, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._session = session
        self._joint_id = standing.joint.id
        title = say("CurveTable", "How the glue goes: {club}, job {job}").format(
            club=standing.club.name, job=standing.job.number
        )
        content = self.frame(title)
        self.said = self.label("", tone="sub", wrap=True)
        content.addWidget(self.said)
        self.rows = CurveModel()
        self.rows.bold = type.font(self.roles.fact_bold)
        self.table = QTableView()
        self.table.setModel(self.rows)
        dress_table(self.table, self.roles, stretch=5)
        self.table.setAccessibleName(title)
        content.addWidget(self.table, 1)
        note = say(
            "CurveTable",
            "The board estimates from the sheet and the record; it does not measure the bond.",
        )
        content.addWidget(self.label(note, self.roles.small, tone="sub", wrap=True))
        self.add_buttons("", say("History", "Close"))
        self.show_curve()
        session.acted.connect(self._on_acted)
        session.ticked.connect(self.show_curve)
        self.table.setFocus()
        self.fit(*(_WIDE if self.roles.large else _HIGH))

    def show_curve(self) -> None:
        """Show the curve as it stands; the row that is chosen stays chosen."""
        board = self._session.board
        standing = next((s for s in board.standings if s.joint.id == self._joint_id), None)
        picture = None if standing is None else portrait(board, standing)
        if standing is None or picture is None:
            self.said.setText(say("CurveTable", "There is nothing to show yet."))
            self.rows.show_rows(())
            return
        presenter = BoardPresenter(board, self._session.clock.now(), self._session.unit)
        self.said.setText(InspectorPresenter(presenter).in_words(standing, picture))
        self.table.setAccessibleDescription(self.said.text())
        chosen = self.rows.key_at(self.table.currentIndex().row()) or "now"
        self.rows.show_rows(CurveTable(presenter, standing, picture).rows())
        at = max(self.rows.row_of(chosen), 0)
        if self.table.currentIndex().row() != at:
            self.table.setCurrentIndex(self.rows.index(at, 0))
            self.table.scrollTo(
                self.rows.index(at, 0), QAbstractItemView.ScrollHint.PositionAtCenter
            )

    def _on_acted(self, changes: object) -> None:
        del changes
        self.show_curve()


def dress_table(table: QTableView, roles: Roles, *, stretch: int) -> None:
    """Give a table to read the board's look; `stretch` is the column that takes the room."""
    table.setFont(type.font(roles.fact))
    header = table.horizontalHeader()
    header.setFont(type.font(roles.small))
    header.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft)
    header.setHighlightSections(False)
    header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
    header.setSectionResizeMode(stretch, QHeaderView.ResizeMode.Stretch)
    table.verticalHeader().hide()
    table.verticalHeader().setDefaultSectionSize(32 if roles.large else 26)
    table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
    table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
    table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
    table.setShowGrid(False)
    table.setWordWrap(False)
    table.setTabKeyNavigation(False)


def _at(row: Row) -> tuple[Instant, bool]:
    return row.at_us, not row.mark
