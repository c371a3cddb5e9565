"""What is missing is said in one message, before Qt is imported."""

from __future__ import annotations

import pytest

from rackboard import preflight

WINDOW = {"DISPLAY": ":0"}
EVERY_PACKAGE = {
    "libgl1",
    "libegl1",
    "libxkbcommon0",
    "libdbus-1-3",
    "libfontconfig1",
    "libglib2.0-0",
    "libxcb-cursor0",
    "libxkbcommon-x11-0",
    "libxcb-icccm4",
    "libxcb-keysyms1",
    "libxcb-shape0",
}


class Shelf:
    """Has every library but some."""

    def __init__(self, *lacking: str) -> None:
        self.lacking = lacking
        self.asked: list[str] = []

    def load(self, name: str) -> object:
        self.asked.append(name)
        if name in self.lacking:
            raise OSError(f"{name}: cannot open shared object file")
        return self


def apt_line(text: str) -> list[str]:
    lines = [line.split() for line in text.splitlines() if "apt-get" in line]
    assert len(lines) == 1
    return lines[0]


def test_nothing_is_said_when_nothing_is_missing() -> None:
    shelf = Shelf()
    assert preflight.trouble(WINDOW, "linux", load=shelf.load) is None
    assert "libxcb-cursor.so.0" in shelf.asked


def test_one_missing_library_names_every_package_in_one_line() -> None:
    text = preflight.trouble(WINDOW, "linux", load=Shelf("libxcb-icccm.so.4").load)
    assert text is not None
    assert "libxcb-icccm.so.4." in text
    assert "libEGL" not in text
    line = apt_line(text)
    assert line[:4] == ["sudo", "apt-get", "install", "-y"]
    assert set(line[4:]) == EVERY_PACKAGE


def test_all_missing_libraries_are_named() -> None:
    names = [*preflight.OFFSCREEN, *preflight.XCB]
    text = preflight.trouble(WINDOW, "linux", load=Shelf(*names).load)
    assert text is not None
    assert all(name in text for name in names)


def test_root_needs_no_sudo() -> None:
    text = preflight.trouble(WINDOW, "linux", as_root=True, load=Shelf("libGL.so.1").load)
    assert text is not None
    assert "sudo" not in text


@pytest.mark.parametrize(
    ("environment", "asks_xcb", "asks_wayland"),
    [
        ({"QT_QPA_PLATFORM": "offscreen"}, False, False),
        ({"QT_QPA_PLATFORM": "offscreen:configfile=x", "DISPLAY": ":0"}, False, False),
        ({"DISPLAY": ":0", "WAYLAND_DISPLAY": "wayland-0"}, True, False),
        ({"WAYLAND_DISPLAY": "wayland-0"}, False, True),
        ({"QT_QPA_PLATFORM": "wayland;xcb", "WAYLAND_DISPLAY": "wayland-0"}, False, True),
        ({"QT_QPA_PLATFORM": "xcb", "DISPLAY": ":0"}, True, False),
    ],
)
def test_only_what_the_screen_needs_is_asked_for(
    environment: dict[str, str], asks_xcb: bool, asks_wayland: bool
) -> None:
    shelf = Shelf()
    assert preflight.trouble(environment, "linux", load=shelf.load) is None
    assert ("libxcb-cursor.so.0" in shelf.asked) is asks_xcb
    assert ("libwayland-client.so.0" in shelf.asked) is asks_wayland
    assert "libEGL.so.1" in shelf.asked


@pytest.mark.parametrize(
    "environment",
    [{}, {"DISPLAY": ""}, {"QT_QPA_PLATFORM": "xcb"}, {"QT_QPA_PLATFORM": "xcb", "DISPLAY": ""}],
)
def test_no_screen_is_said_calmly(environment: dict[str, str]) -> None:
    text = preflight.trouble(environment, "linux", load=Shelf().load)
    assert text is not None
    assert "DISPLAY" in text
    assert "rackboard forecast" in text


@pytest.mark.parametrize("system", ["win32", "darwin"])
def test_other_systems_are_not_asked(system: str) -> None:
    assert preflight.trouble({}, system, load=Shelf(*preflight.OFFSCREEN).load) is None


def test_the_real_loader_tells_a_missing_library() -> None:
    assert preflight.missing_libraries(["librackboard-none.so.9"]) == ["librackboard-none.so.9"]


def test_no_font_names_the_package() -> None:
    text = preflight.font_trouble([])
    assert text is not None
    assert apt_line(text)[4:] == ["fonts-dejavu-core"]
    assert preflight.font_trouble(["DejaVu Sans"]) is None
