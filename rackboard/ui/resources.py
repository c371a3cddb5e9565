"""What the program loads at run time from its own package."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QByteArray
from PySide6.QtGui import QFontDatabase

SEMI_CONDENSED = "Barlow Semi Condensed"
CONDENSED = "Barlow Condensed"
FONT_FILES = (
    "BarlowSemiCondensed-Medium.ttf",
    "BarlowSemiCondensed-SemiBold.ttf",
    "BarlowCondensed-Medium.ttf",
)


def resource_bytes(*parts: str) -> bytes:
    """Return a file of this package, for example ``("fonts", "OFL.txt")``.

    Raises
    ------
    OSError
        If there is no such file: the installation is damaged.
    """
    try:
        # As it is nearly always installed; importlib.resources costs 18 ms of the first paint.
        return Path(__file__).parent.joinpath(*parts).read_bytes()
    except OSError:
        from importlib.resources import files

        return files("rackboard.ui").joinpath(*parts).read_bytes()


def resource_path(*parts: str) -> Path:
    """Return where a file of this package lies, for a reader of Qt that wants a path."""
    return Path(__file__).parent.joinpath(*parts)


def resource_text(*parts: str) -> str:
    """Return a UTF-8 text of this package; see `resource_bytes`."""
    return resource_bytes(*parts).decode("utf-8")


def load_fonts() -> bool:
    """Make the board's letters known to Qt; False, and logged, if one could not be loaded.

    Without them the system's own font serves. Needs a QGuiApplication.
    """
    loaded = True
    for name in FONT_FILES:
        try:
            number = QFontDatabase.addApplicationFontFromData(
                QByteArray(resource_bytes("fonts", name))
            )
        except OSError:
            number = -1
        if number < 0:
            import logging

            loaded = False
            logging.getLogger(__name__).warning("can't load the font %s", name)
    return loaded
