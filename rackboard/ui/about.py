"""What this is, what it does not know, and the licences of what it ships and stands on."""

from __future__ import annotations

from typing import NamedTuple

from PySide6.QtWidgets import QFrame, QPlainTextEdit, QTabWidget, QWidget

from rackboard import __version__
from rackboard.ui import type
from rackboard.ui.dialog import Dialog
from rackboard.ui.language import say
from rackboard.ui.resources import resource_text


def what() -> str:
    """Return what the program is, and what it doesn't know."""
    return say(
        "About",
        "rackboard says what each glued golf-club joint on the drying rack may bear: do not move,"
        " off the rack, safe to hit.\n\n"
        "It estimates; it does not measure the bond. It knows the epoxy's sheet and the recorded"
        " temperature. It knows nothing of a mix off its ratio, a wrong sheet, humidity, how the"
        " joint was prepared, or the heat of a large mix. When in doubt the club isn't hit.",
    )


class Part(NamedTuple):
    """Something that the program ships or needs."""

    name: str
    package: str | None
    licence: str
    shipped: bool


PARTS = (
    Part("Barlow Semi Condensed and Barlow Condensed", None, "SIL Open Font License 1.1", True),
    Part("Python", None, "Python Software Foundation License 2", False),
    Part("SQLite", None, "public domain", False),
    Part("Qt for Python (PySide6, shiboken6) and Qt", "PySide6-Essentials", "LGPL 3", False),
    Part("platformdirs", "platformdirs", "MIT", False),
    Part("jeepney (Linux)", "jeepney", "MIT", False),
    Part("tzdata (Windows)", "tzdata", "Apache License 2.0", False),
)


def licences() -> str:
    """Return the licences of all parts, one a line, then the full texts that are shipped."""
    lines = [say("About", "Shipped with rackboard:")]
    lines += [f"  {part.name}: {part.licence}" for part in PARTS if part.shipped]
    lines += ["", say("About", "Used by rackboard, installed beside it:")]
    lines += [
        f"  {part.name}{_version(part.package)}: {part.licence}"
        for part in PARTS
        if not part.shipped
    ]
    return "\n".join((*lines, "", "", resource_text("fonts", "OFL.txt")))


def own_licence() -> str:
    """Return the text of rackboard's own licence, or its name if the text isn't installed."""
    from importlib.metadata import PackageNotFoundError, distribution

    try:
        text = distribution("rackboard").read_text("licenses/LICENSE")
    except PackageNotFoundError:
        text = None
    return text or "MIT License\n\nCopyright (c) 2026 the rackboard authors\n"


class AboutDialog(Dialog):
    """About rackboard.

    Parameters
    ----------
    parent : QWidget, optional
        The window underneath.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        content = self.frame(self.tr("About rackboard {0}").format(__version__), what())
        self.tabs = QTabWidget()
        self.tabs.setFont(type.font(self.roles.fact))
        self.tabs.addTab(self._text(own_licence(), self.tr("Licence")), self.tr("Licence"))
        self.tabs.addTab(
            self._text(licences(), self.tr("Licences of the parts")),
            self.tr("Licences of the parts"),
        )
        content.addWidget(self.tabs)
        self.add_buttons("", self.tr("Close"))
        self.fit(900, 700)

    def _text(self, text: str, name: str) -> QPlainTextEdit:
        view = QPlainTextEdit(text)
        view.setReadOnly(True)
        view.setTabChangesFocus(True)
        view.setFrameShape(QFrame.Shape.NoFrame)
        view.setFont(type.font(self.roles.fact))
        view.setAccessibleName(name)
        return view


def _version(package: str | None) -> str:
    from importlib.metadata import PackageNotFoundError, version

    if package is None:
        return ""
    try:
        return f" {version(package)}"
    except PackageNotFoundError:
        return ""
