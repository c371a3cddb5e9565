"""What the Qt binding has to be told before the window's modules are loaded."""

from __future__ import annotations

import sys


def spare_sources() -> None:
    """Keep the binding from reading the source of every module that is imported after it.

    It looks there for the snake_case spelling of Qt, which nobody here uses; each source
    then stays in memory. That is a tenth of the time to the first picture and 5 MB
    (measured with PySide6 6.11.3). A binding that doesn't do it is left alone.
    """
    import PySide6.QtCore  # noqa: F401 - brings the part that looks

    search = sys.modules.get("shibokensupport.feature")
    if hasattr(search, "_mod_uses_pyside"):
        search._mod_uses_pyside = _uses_no_feature  # type: ignore[union-attr]


def _uses_no_feature(module: object) -> bool:
    del module
    return False
