"""The icon that is painted and the drawing in assets/icon are one picture."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from xml.etree import ElementTree

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter
from pytestqt.qtbot import QtBot

from helpers.project import ROOT
from rackboard.ui import icon

DRAWING = ROOT / "assets" / "icon" / "rackboard.svg"
pytestmark = pytest.mark.usefixtures("qapp")


def shapes() -> Iterator[ElementTree.Element]:
    tag = "{http://www.w3.org/2000/svg}"
    for node in ElementTree.parse(DRAWING).getroot():
        if node.tag != f"{tag}title":
            yield node


def on_grey() -> QImage:
    image = QImage(128, 128, QImage.Format.Format_RGB32)
    image.fill(QColor("#777777"))
    return image


@contextmanager
def painting(image: QImage) -> Iterator[QPainter]:
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    yield painter
    painter.end()


def test_the_drawing_has_the_same_numbers() -> None:
    plate, ripple, wedge = (dict(node.attrib) for node in shapes())
    side = icon.GRID - 2 * icon.PLATE_INSET
    assert [float(plate[key]) for key in ("x", "y", "width", "height", "rx", "stroke-width")] == [
        icon.PLATE_INSET, icon.PLATE_INSET, side, side, icon.PLATE_RADIUS, icon.RIM_WIDTH,
    ]  # fmt: skip
    assert (plate["fill"], plate["stroke"]) == (icon.PLATE, icon.PLATE_RIM)
    assert (ripple["d"], ripple["stroke"]) == (icon.RIPPLE, icon.MARK)
    assert float(ripple["stroke-width"]) == icon.RIPPLE_WIDTH
    assert (wedge["d"], wedge["fill"]) == (icon.WEDGE, icon.MARK)


def test_both_look_the_same() -> None:
    svg = pytest.importorskip("PySide6.QtSvg")
    renderer = svg.QSvgRenderer(str(DRAWING))
    drawn, painted = on_grey(), on_grey()
    with painting(drawn) as painter:
        renderer.render(painter, QRectF(0, 0, 128, 128))
    with painting(painted) as painter:
        icon.paint(painter, 128)
    worst = max(
        abs(drawn.pixelColor(x, y).lightness() - painted.pixelColor(x, y).lightness())
        for x in range(128)
        for y in range(128)
    )
    assert worst < 24  # of 255: only the soft edges may differ a little


@pytest.mark.parametrize("side", icon.SIZES)
def test_it_can_be_read_small(side: int) -> None:
    """The ripple's crest, the line and the bar stand out from the plate at every size."""
    image = icon.picture(side).toImage()

    def lightness(x: float, y: float) -> int:
        at = (int(x / icon.GRID * side), int(y / icon.GRID * side))
        return QColor(image.pixel(*at)).lightness()

    plate = lightness(32, 54)
    for x, y in ((11, 22), (34, 32), (52, 22), (52, 42)):
        assert lightness(x, y) - plate > 60, (x, y)
    assert QColor.fromRgba(image.pixel(0, 0)).alpha() < 80  # round corners


def test_the_window_gets_every_size(qtbot: QtBot) -> None:
    found = icon.window_icon()
    assert sorted(size.width() for size in found.availableSizes()) == list(icon.SIZES)
