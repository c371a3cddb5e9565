"""What must be there before Qt is imported, said in one message instead of Qt's abort.

Qt names one library, often the wrong one, and then ends the process. Here every shared
library is tried first and the one line that installs them all is printed.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

OFFSCREEN: dict[str, tuple[str, str]] = {
    # library: (Debian and Ubuntu package, Fedora package [from memory])
    "libGL.so.1": ("libgl1", "libglvnd-glx"),
    "libEGL.so.1": ("libegl1", "libglvnd-egl"),
    "libxkbcommon.so.0": ("libxkbcommon0", "libxkbcommon"),
    "libdbus-1.so.3": ("libdbus-1-3", "dbus-libs"),
    "libfontconfig.so.1": ("libfontconfig1", "fontconfig"),
    "libglib-2.0.so.0": ("libglib2.0-0", "glib2"),
}
"""What every Qt program needs, with a screen or without."""

XCB: dict[str, tuple[str, str]] = {
    "libxcb-cursor.so.0": ("libxcb-cursor0", "xcb-util-cursor"),
    "libxkbcommon-x11.so.0": ("libxkbcommon-x11-0", "libxkbcommon-x11"),
    "libxcb-icccm.so.4": ("libxcb-icccm4", "xcb-util-wm"),
    "libxcb-keysyms.so.1": ("libxcb-keysyms1", "xcb-util-keysyms"),
    "libxcb-shape.so.0": ("libxcb-shape0", "libxcb"),
}
"""What a window on X needs besides."""

WAYLAND: dict[str, tuple[str, str]] = {
    "libwayland-client.so.0": ("libwayland-client0", "libwayland-client"),
    "libwayland-cursor.so.0": ("libwayland-cursor0", "libwayland-cursor"),
}
"""What a window on Wayland needs besides."""

FONT_PACKAGES = ("fonts-dejavu-core", "dejavu-sans-fonts")

Loader = Callable[[str], object]


def trouble(
    environment: Mapping[str, str],
    system: str,
    *,
    as_root: bool = False,
    load: Loader | None = None,
) -> str | None:
    """Return what keeps the window from opening, as text for the terminal; None if nothing.

    Parameters
    ----------
    environment : Mapping[str, str]
        The process's environment variables.
    system : str
        `sys.platform`; only Linux is looked at, elsewhere the wheel brings all it needs.
    as_root : bool
        Leave `sudo` out of the printed line.
    load : callable, optional
        Loads a shared library by its name and raises OSError if it is not there; by default
        `ctypes.CDLL`.
    """
    if not system.startswith("linux"):
        return None
    plugin = _plugin(environment)
    if plugin is None:
        return (
            "rackboard found no screen to open its window on: neither DISPLAY nor "
            "WAYLAND_DISPLAY is set.\nStart it from the desktop, or on a machine without a "
            "screen use `rackboard forecast`, which needs none."
        )
    wanted = dict(OFFSCREEN)
    if plugin == "xcb":
        wanted |= XCB
    elif plugin.startswith("wayland"):
        wanted |= WAYLAND
    missing = missing_libraries(wanted, load)
    if not missing:
        return None
    packages = list(wanted.values())
    return "\n".join(
        (
            "rackboard can't open its window: the system lacks " + ", ".join(missing) + ".",
            *_install_lines(packages, as_root),
        )
    )


def missing_libraries(names: Iterable[str], load: Loader | None = None) -> list[str]:
    """Return those of the shared libraries that can't be loaded, in the order given."""
    if load is None:
        from ctypes import CDLL

        load = CDLL
    missing = []
    for name in names:
        try:
            load(name)
        except OSError:
            missing.append(name)
    return missing


def font_trouble(families: Iterable[str], *, as_root: bool = False) -> str | None:
    """Return what to do if the system has no font at all; None if it has one.

    Ask once a QGuiApplication exists and before the board's own letters are loaded: Qt needs
    the system's fonts for every other script, and draws empty boxes without an error.

    Parameters
    ----------
    families : Iterable[str]
        What `QFontDatabase.families()` gave.
    as_root : bool
        Leave `sudo` out of the printed line.
    """
    if any(families):
        return None
    return "\n".join(
        ("rackboard found no font on this system.", *_install_lines([FONT_PACKAGES], as_root))
    )


def _plugin(environment: Mapping[str, str]) -> str | None:
    """Return the Qt platform plugin that will be used; None if there is no screen for it."""
    chosen = environment.get("QT_QPA_PLATFORM", "")
    # "wayland;xcb" is a list of choices, "offscreen:configfile=…" carries options
    plugin = chosen.split(";")[0].split(":")[0].strip()
    if plugin == "xcb" or not plugin:
        if environment.get("DISPLAY"):
            return "xcb"
        if environment.get("WAYLAND_DISPLAY") and not plugin:
            return "wayland"
        return None
    return plugin


def _install_lines(packages: list[tuple[str, str]], as_root: bool) -> tuple[str, str]:
    sudo = "" if as_root else "sudo "
    debian = " ".join(dict.fromkeys(debian for debian, _ in packages))
    fedora = " ".join(dict.fromkeys(fedora for _, fedora in packages))
    return (
        f"On Debian or Ubuntu install it with:\n  {sudo}apt-get install -y {debian}",
        f"On Fedora install it with:\n  {sudo}dnf install -y {fedora}",
    )
