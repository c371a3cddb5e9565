"""The joint's page on paper: whole, inside its margins, with the curve of the screen."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

import pytest
from PySide6.QtCore import QLocale, QRect, QRectF, QSizeF
from PySide6.QtGui import QImage, QPageSize, QPainter
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from helpers.session import BERLIN, make_session
from helpers.shop import FakeClock
from rackboard.core.errors import RackboardError
from rackboard.core.standing import Standing
from rackboard.core.words import Word
from rackboard.services import demo
from rackboard.services.bench import Bench
from rackboard.services.board import Board
from rackboard.store import Store
from rackboard.ui.joint_sheet import MARGIN, UNITS_PER_INCH, Sheet, SheetPainter, joint_sheet
from rackboard.ui.joint_sheet_file import file_name, page_of, sheet_pdf, write_sheet
from rackboard.ui.resources import load_fonts
from rackboard.ui.session import Session

A4 = QPageSize(QPageSize.PageSizeId.A4)
LETTER = QPageSize(QPageSize.PageSizeId.Letter)
DPI = 60


def demo_session() -> Session:
    """The demo's invented shop at its usual moment."""
    clock = FakeClock(demo.demo_start(BERLIN))
    store = Store.open_memory()
    demo.furnish_demo(store, clock.now(), BERLIN)
    board = Board(store, clock, BERLIN)
    session = Session(store, clock, board, Bench(store, clock, board.snapshot.hours))
    session.tick()
    return session


def standing_of(session: Session, word: Word) -> Standing:
    """The first joint with a word."""
    return next(s for s in session.board.standings if s.word is word)


@pytest.fixture(scope="module")
def session(qapp: QApplication) -> Session:
    """One for all tests that only read it."""
    del qapp
    load_fonts()
    return demo_session()


def ink(image: QImage, area: QRect) -> int:
    """How many pixels of an area are dark."""
    grey = image.copy(area).convertToFormat(QImage.Format.Format_Grayscale8)
    data, stride = bytes(grey.constBits()), grey.bytesPerLine()
    rows = (data[y * stride : y * stride + grey.width()] for y in range(grey.height()))
    return sum(value < 128 for row in rows for value in row)


def rasterised(data: bytes, folder: Path) -> QImage:
    """The page as a reader of PDF files draws it."""
    tool = shutil.which("pdftoppm")
    if tool is None:
        pytest.skip("pdftoppm (poppler) is not here")
    path = folder / "sheet.pdf"
    path.write_bytes(data)
    subprocess.run([tool, "-r", str(DPI), "-png", str(path), str(folder / "page")], check=True)
    pages = sorted(folder.glob("page*.png"))
    assert len(pages) == 1, "one page"
    return QImage(str(pages[0]))


@pytest.mark.parametrize("page", [A4, LETTER], ids=["A4", "Letter"])
@pytest.mark.parametrize("word", [Word.WET, Word.WAIT, Word.BENCH, Word.CURED, Word.HOLD])
def test_the_page_keeps_its_margins_and_shows_the_curve(
    session: Session, tmp_path: Path, page: QPageSize, word: Word
) -> None:
    sheet = joint_sheet(session, standing_of(session, word))
    image = rasterised(sheet_pdf(sheet, page), tmp_path)
    inches = page.size(QPageSize.Unit.Inch)
    assert abs(image.width() - inches.width() * DPI) <= 1
    assert abs(image.height() - inches.height() * DPI) <= 1
    margin = round(MARGIN / UNITS_PER_INCH * DPI) - 3
    wide, high = image.width(), image.height()
    for edge in (
        QRect(0, 0, wide, margin), QRect(0, high - margin, wide, margin),
        QRect(0, 0, margin, high), QRect(wide - margin, 0, margin, high),
    ):  # fmt: skip
        assert ink(image, edge) == 0
    middle = QRect(margin, round(high * 0.28), wide - 2 * margin, round(high * 0.25))
    assert ink(image, middle) > 300
    foot = QRect(margin, high - margin - 40, wide - 2 * margin, 40)
    assert ink(image, foot) > 60


@pytest.mark.parametrize("page", [A4, LETTER], ids=["A4", "Letter"])
@pytest.mark.parametrize("more", [0, 5, 40])
def test_no_text_runs_into_another_or_out_of_the_page(
    session: Session, monkeypatch: pytest.MonkeyPatch, page: QPageSize, more: int
) -> None:
    """Also with a history far too long for one page."""
    from rackboard.ui import type

    boxes: list[tuple[str, QRectF]] = []
    usual = type.draw

    def record(painter, style, x, baseline, text, color, align=type.Align.LEFT):  # type: ignore[no-untyped-def]
        wide = usual(painter, style, x, baseline, text, color, align)
        left = x - wide if align is type.Align.RIGHT else x
        left = x - wide / 2 if align is type.Align.CENTRE else left
        cap = type.cap_height(style)
        if text:
            boxes.append((text, QRectF(left, baseline - cap, wide, cap)))
        return wide

    monkeypatch.setattr(type, "draw", record)
    inches = page.size(QPageSize.Unit.Inch) * UNITS_PER_INCH
    area = QRectF(0, 0, inches.width(), inches.height()).adjusted(
        MARGIN - 1, MARGIN - 1, 1 - MARGIN, 1 - MARGIN
    )
    kinds = {(s.word, s.cold, s.unknown): s for s in session.board.standings if not s.laid_out}
    for standing in kinds.values():
        sheet = joint_sheet(session, standing)
        lines = sheet.history + tuple(
            sheet.history[0]._replace(key=f"more:{n}", what=f"carried {n}") for n in range(more)
        )
        boxes.clear()
        image = QImage(10, 10, QImage.Format.Format_ARGB32)
        painter = QPainter(image)
        SheetPainter(QSizeF(inches)).paint(painter, sheet._replace(history=lines))
        painter.end()
        said = [text for text, _ in boxes]
        assert sheet.club in said
        assert "What happened" in said
        if more == 40:
            assert any("earlier lines stand" in text for text in said)
            assert lines[-1].what in said, "the latest line is kept"
        for number, (text, box) in enumerate(boxes):
            assert area.contains(box), (text, box)
            for other, there in boxes[number + 1 :]:
                assert not box.adjusted(0.5, 0.5, -0.5, -0.5).intersects(there), (text, other)


def test_the_page_says_who_what_when_and_the_caution(session: Session) -> None:
    standing = next(s for s in session.board.standings if s.job.number == "305")
    sheet = joint_sheet(session, standing)
    facts = dict(sheet.facts)
    assert sheet.job.startswith("job 3")
    assert facts["Epoxy"] == "half-hour"
    assert facts["By its sheet"] == "35 min to use, 24 h to hit"
    assert facts["Batch"] == "5"
    assert facts["Lot"] == "H-04"
    assert facts["Mixed"] == "Wed 11 Mar 08:10"
    assert [allowed for allowed, _ in sheet.reasons] == ["off the rack", "safe to hit"]
    for _, lines in sheet.reasons:
        assert [line.name for line in lines] == ["the label", "this room", "with the margin"]
    assert "printed Thu 12 March 2026, 14:26" in sheet.head
    assert "safe to hit not before Mon 16 Mar" in sheet.sentence


def test_no_early_bound_has_a_place_on_the_page(session: Session) -> None:
    assert not [name for name in Sheet._fields if "early" in name]
    for standing in session.board.standings:
        if standing.laid_out or standing.outcome is None:
            continue
        said = repr(joint_sheet(session, standing))
        for bounds in (standing.outcome.forecast.handling, standing.outcome.forecast.full_cure):
            if bounds is None or bounds.early is None or bounds.expected is None:
                continue
            assert bounds.expected - bounds.early > 60_000_000
            local = session.board.snapshot.hours.local(bounds.early)
            assert f"{local:%a} {local.day} {local:%b %H:%M}" not in said


def test_a_joint_on_hold_has_no_times_on_paper(session: Session) -> None:
    sheet = joint_sheet(session, standing_of(session, Word.HOLD))
    assert sheet.reasons == ()
    assert sheet.curve.marks == ()
    assert "on hold" in sheet.sentence
    assert "not before" not in sheet.sentence


def test_nothing_is_saved_of_a_board_that_stands_still(qtbot: QtBot) -> None:
    del qtbot
    session = demo_session()
    standing = standing_of(session, Word.WAIT)
    clock = session.clock
    assert isinstance(clock, FakeClock)
    clock.advance(seconds=40)
    with pytest.raises(RackboardError, match="not being updated"):
        joint_sheet(session, standing)


def test_no_page_before_there_is_a_curve(qtbot: QtBot) -> None:
    del qtbot
    from helpers.session import lay_out_irons

    session, _ = make_session()
    lay_out_irons(session, 1)
    with pytest.raises(RackboardError, match="no curve of 4 iron yet"):
        joint_sheet(session, session.board.standings[0])


def test_the_file_is_written_whole_or_not_at_all(session: Session, tmp_path: Path) -> None:
    standing = standing_of(session, Word.WAIT)
    sheet = joint_sheet(session, standing)
    written = write_sheet(tmp_path / "joint", sheet, A4)
    assert written.name == "joint.pdf"
    assert written.read_bytes().startswith(b"%PDF-")
    assert [path.name for path in tmp_path.iterdir()] == ["joint.pdf"]
    before = written.read_bytes()
    with pytest.raises(RackboardError):
        write_sheet(tmp_path / "nowhere" / "joint.pdf", sheet, A4)
    assert written.read_bytes() == before


def test_the_page_is_that_of_the_country() -> None:
    assert page_of(QLocale("en_US")).id() is QPageSize.PageSizeId.Letter
    assert page_of(QLocale("de_DE")).id() is QPageSize.PageSizeId.A4
    assert page_of(QLocale("en_GB")).id() is QPageSize.PageSizeId.A4


def test_the_file_name_holds_nothing_that_a_disk_refuses(session: Session) -> None:
    standing = standing_of(session, Word.WAIT)
    club = standing.club._replace(name="3/4 wedge: 50°\\x")
    name = file_name(standing._replace(club=club))
    assert name.endswith("3-4 wedge- 50°-x.pdf")
    assert "/" not in name
