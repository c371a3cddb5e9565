"""The window: models, delegates, views, dialogs. No SQL, no formulas.

This module itself imports no Qt, so that the launcher can say what is missing first.
"""

from __future__ import annotations

from typing import NamedTuple

from rackboard.core.instants import Clock


class Options(NamedTuple):
    """What the launcher hands to the window.

    `data_dir` is a folder for all files of the board, or None for the system's own places.
    `speed` is how fast the demo's clock runs; 1 outside the demo.
    """

    clock: Clock
    demo: bool = False
    data_dir: str | None = None
    speed: float = 1.0
