"""The board's letters are in the package and have what the board writes."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtGui import QFont, QFontDatabase, QFontInfo, QFontMetricsF, QRawFont
from pytestqt.qtbot import QtBot

from rackboard.ui import resources

FONTS = [
    (resources.SEMI_CONDENSED, QFont.Weight.Medium),
    (resources.SEMI_CONDENSED, QFont.Weight.DemiBold),
    (resources.CONDENSED, QFont.Weight.Medium),
]


def font(family: str, weight: QFont.Weight) -> QFont:
    made = QFont(family)
    made.setWeight(weight)
    made.setPixelSize(100)
    return made


@pytest.fixture(autouse=True)
def _loaded(qtbot: QtBot) -> None:
    assert resources.load_fonts()


@pytest.mark.parametrize(("family", "weight"), FONTS)
def test_qt_takes_family_and_weight(family: str, weight: QFont.Weight) -> None:
    info = QFontInfo(font(family, weight))
    assert info.family() == family
    assert info.weight() == weight
    assert info.exactMatch()


@pytest.mark.parametrize(("family", "weight"), FONTS)
def test_cap_height_is_seven_tenths(family: str, weight: QFont.Weight) -> None:
    assert QFontMetricsF(font(family, weight)).tightBoundingRect("H").height() == pytest.approx(70)


@pytest.mark.parametrize(("family", "weight"), FONTS)
def test_letters_that_the_board_writes(family: str, weight: QFont.Weight) -> None:
    raw = QRawFont.fromFont(font(family, weight))
    assert not [c for c in "°–½“”‘’äöüÄÖÜßñáéŁłŠž·−…×±€" if not raw.supportsCharacter(ord(c))]


@pytest.mark.parametrize(("family", "weight"), FONTS)
def test_tabular_figures(family: str, weight: QFont.Weight) -> None:
    made = font(family, weight)
    plain = QFontMetricsF(made)
    assert plain.horizontalAdvance("11:11") < plain.horizontalAdvance("00:00")
    made.setFeature(QFont.Tag("tnum"), 1)
    tabular = QFontMetricsF(made)
    assert tabular.horizontalAdvance("11:11") == tabular.horizontalAdvance("00:00")


def test_the_widest_wall_time_fits_its_tile() -> None:
    made = font(resources.CONDENSED, QFont.Weight.Medium)
    made.setPixelSize(90)
    assert QFontMetricsF(made).horizontalAdvance("Wed 20:55") <= 338


def test_an_unusual_installation_is_read_through_its_loader(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr(resources, "__file__", str(tmp_path / "resources.py"))
    assert "Open Font License" in resources.resource_text("fonts", "OFL.txt")


def test_a_missing_file_is_an_error_of_the_world() -> None:
    with pytest.raises(OSError, match=r"none\.ttf"):
        resources.resource_bytes("fonts", "none.ttf")


@pytest.mark.expects_log("can't load the font")
def test_a_damaged_font_is_logged_and_the_board_goes_on(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(resources, "resource_bytes", lambda *parts: b"not a font")
    assert not resources.load_fonts()
    assert QFontDatabase.families()
