"""Presses that are meant: none that a quick or a held key drops on a page just come up."""

from __future__ import annotations

import time
from collections.abc import Callable

PAUSE_MS = 400
"""A page is seen so long before a press of its great key counts [ms, decision]."""


def _monotonic_ms() -> int:
    return time.monotonic_ns() // 1_000_000


class Presses:
    """Tells a press that somebody meant from one that was still on its way.

    The pause runs from the first painting of what is to be pressed: keys that were typed
    ahead of it, while the program was busy, don't count either.

    Parameters
    ----------
    now_ms : callable
        A clock that only goes forward [ms]; tests hand in their own.
    """

    def __init__(self, now_ms: Callable[[], int] = _monotonic_ms) -> None:
        self.now_ms = now_ms
        self.pause_ms = PAUSE_MS
        self._seen_ms: int | None = None

    def changed(self) -> None:
        """Note that something else is to be pressed now."""
        self._seen_ms = None

    def seen(self) -> None:
        """Note that it is on the screen."""
        if self._seen_ms is None:
            self._seen_ms = self.now_ms()

    @property
    def meant(self) -> bool:
        """Whether a press now is meant for what is on the screen."""
        if not self.pause_ms:
            return True
        return self._seen_ms is not None and self.now_ms() - self._seen_ms >= self.pause_ms
