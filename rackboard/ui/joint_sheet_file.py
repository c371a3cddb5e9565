"""Writes the joint's sheet as a PDF file."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QBuffer, QIODevice, QLocale, QMarginsF, QSizeF
from PySide6.QtGui import QPageSize, QPainter, QPdfWriter
from PySide6.QtWidgets import QFileDialog, QWidget

from rackboard.core.errors import RackboardError
from rackboard.core.standing import Standing
from rackboard.store.files import write_atomically
from rackboard.ui.joint_sheet import UNITS_PER_INCH, Sheet, SheetPainter, joint_sheet
from rackboard.ui.language import say
from rackboard.ui.session import Session

_RESOLUTION = 1200
_LETTER = frozenset(
    {
        QLocale.Country.UnitedStates, QLocale.Country.Canada, QLocale.Country.Mexico,
        QLocale.Country.PuertoRico, QLocale.Country.Philippines, QLocale.Country.Chile,
        QLocale.Country.Colombia, QLocale.Country.Venezuela,
    }
)  # fmt: skip
"""Where paper is Letter [from memory]."""


def page_of(locale: QLocale) -> QPageSize:
    """Return the page that printers of a country hold."""
    letter = locale.territory() in _LETTER
    return QPageSize(QPageSize.PageSizeId.Letter if letter else QPageSize.PageSizeId.A4)


def sheet_pdf(sheet: Sheet, page: QPageSize) -> bytes:
    """Return a sheet as a PDF file of one page."""
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setPageSize(page)
    writer.setPageMargins(QMarginsF(0, 0, 0, 0))
    writer.setResolution(_RESOLUTION)
    writer.setTitle(f"{sheet.club}, {sheet.job}")
    writer.setCreator("rackboard")
    painter = QPainter(writer)
    scale = _RESOLUTION / UNITS_PER_INCH
    painter.scale(scale, scale)
    inches = page.size(QPageSize.Unit.Inch)
    SheetPainter(
        QSizeF(inches.width() * UNITS_PER_INCH, inches.height() * UNITS_PER_INCH)
    ).paint(painter, sheet)
    painter.end()
    buffer.close()
    return bytes(buffer.data().data())


def write_sheet(path: Path, sheet: Sheet, page: QPageSize | None = None) -> Path:
    """Write a sheet to a file, whole or not at all; return the path with its ending.

    Raises
    ------
    RackboardError
        If the file can't be written.
    """
    target = path if path.suffix.lower() == ".pdf" else path.with_name(f"{path.name}.pdf")
    write_atomically(target, sheet_pdf(sheet, page or page_of(QLocale.system())))
    return target


def file_name(standing: Standing) -> str:
    """Return a proposal for the file's name: "305 5 iron.pdf"."""
    name = f"{standing.job.number} {standing.club.name}"
    return "".join(c if c.isalnum() or c in " -_°." else "-" for c in name).strip(" .") + ".pdf"


def save_joint_sheet(session: Session, standing: Standing, parent: QWidget) -> None:
    """Ask where to, and write the joint's sheet; what goes wrong is said calmly."""
    from rackboard.ui import message

    try:
        sheet = joint_sheet(session, standing)
        title = say("JointSheet", "Save curve as PDF")
        kind = say("JointSheet", "PDF (*.pdf)")
        path, _ = QFileDialog.getSaveFileName(parent, title, file_name(standing), kind)
        if path:
            write_sheet(Path(path), sheet)
    except RackboardError as error:
        message.say(parent, error.message, error.remedy)
