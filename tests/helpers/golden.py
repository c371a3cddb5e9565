"""Golden pictures: what a screen looked like when somebody last looked at it and was content.

`check(name, image)` compares with tests/ui/goldens/NAME.png. After a change that is meant, make
them anew by `python tests/ui/goldens/make.py` (or with RACKBOARD_GOLDENS=make around any test),
look at each picture that changed, and commit it. Needs Qt, offscreen, device pixel ratio 1 and
the shipped fonts.
"""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

from PySide6.QtCore import QPoint, QSize, Qt
from PySide6.QtGui import QImage, QPainter, QPixmap

FOLDER = Path(__file__).resolve().parents[1] / "ui" / "goldens"
MAKE = "RACKBOARD_GOLDENS"
BLOCK = 12
"""Side of the squares that are compared [px]: about a letter."""
_TABLE = 256
MOST_MEAN, MOST_BLOCK = 1.5, 18.0
"""Allowed difference, of the whole picture and of one square [levels of 255].

Another version of the font rasteriser moves the soft edge of a letter by a few levels in its
square; a figure in the place of another one by 20 and more.
"""


def check(name: str, image: QImage | QPixmap) -> None:
    """Compare a picture with the golden one of that name; make it if the environment says so.

    Raises
    ------
    AssertionError
        If they differ, or there is no golden picture. Both pictures and their difference are
        left in a temporary folder that the message names.
    """
    fresh = plain(image)
    path = FOLDER / f"{name}.png"
    if os.environ.get(MAKE) == "make":
        if not path.exists() or difference(fresh, plain(QImage(str(path)))) != (0.0, 0.0):
            FOLDER.mkdir(exist_ok=True)
            _small(fresh).save(str(path), quality=0)
        return
    assert path.exists(), f"no golden picture {name}: make it with {MAKE}=make"
    golden = plain(QImage(str(path)))
    assert fresh.size() == golden.size(), f"{name} is {fresh.size()}, was {golden.size()}"
    mean, worst = difference(fresh, golden)
    if mean > MOST_MEAN or worst > MOST_BLOCK:
        where = _left(name, fresh, golden)
        raise AssertionError(
            f"{name} differs by {mean:.2f} levels (at most {MOST_MEAN:g}), at worst by "
            f"{worst:.0f} in a square (at most {MOST_BLOCK:g}): see {where}"
        )


def plain(image: QImage | QPixmap) -> QImage:
    """Return a picture without transparency and device pixel ratio, in 65 536 colours.

    That halves the files; which colour a token has is tested elsewhere, to the level.
    """
    made = image.toImage() if isinstance(image, QPixmap) else image
    made = made.convertToFormat(QImage.Format.Format_RGB16)
    made = made.convertToFormat(QImage.Format.Format_RGB32)
    made.setDevicePixelRatio(1.0)
    return made


def _small(image: QImage) -> QImage:
    """Return the same picture with a colour table, if 256 colours are enough."""
    bits = image.constBits()
    colors = sorted({int(color) for color in memoryview(bits).cast("I")})
    if len(colors) > _TABLE:
        return image
    return image.convertToFormat(
        QImage.Format.Format_Indexed8, colors, Qt.ImageConversionFlag.AvoidDither
    )


def difference(one: QImage, other: QImage) -> tuple[float, float]:
    """Return the mean difference of two pictures and that of the worst square [levels]."""
    if one.size() != other.size():
        return 255.0, 255.0
    apart = _apart(one, other)
    # Whole squares only, or the last ones would be stretched.
    whole = QSize(-(-one.width() // BLOCK) * BLOCK, -(-one.height() // BLOCK) * BLOCK)
    ground = QImage(whole, QImage.Format.Format_RGB32)
    ground.fill(Qt.GlobalColor.black)
    painter = QPainter(ground)
    painter.drawImage(QPoint(), apart)
    painter.end()
    small = ground.scaled(
        whole / BLOCK,
        Qt.AspectRatioMode.IgnoreAspectRatio,
        Qt.TransformationMode.SmoothTransformation,
    ).convertToFormat(QImage.Format.Format_RGB32)
    levels = [
        max(color >> 16 & 255, color >> 8 & 255, color & 255)
        for y in range(small.height())
        for x in range(small.width())
        for color in (small.pixel(x, y),)
    ]
    return sum(levels) / len(levels), float(max(levels))


def _apart(one: QImage, other: QImage) -> QImage:
    made = one.copy()
    painter = QPainter(made)
    painter.setCompositionMode(QPainter.CompositionMode.CompositionMode_Difference)
    painter.drawImage(QPoint(), other)
    painter.end()
    return made


def _left(name: str, fresh: QImage, golden: QImage) -> Path:
    folder = Path(tempfile.mkdtemp(prefix="golden-"))
    for part, image in (("is", fresh), ("was", golden), ("apart", _apart(fresh, golden))):
        image.save(str(folder / f"{name}-{part}.png"))
    return folder
