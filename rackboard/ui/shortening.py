"""Texts that have to fit: a narrow face first, then fewer words, and a cut word only at last.

Whatever is cut stands in full in the accessible name, and a tap shows it.
"""

from __future__ import annotations

from collections.abc import Sequence

from rackboard.ui import type


def fitted(styles: Sequence[type.Style], text: str, room: float) -> tuple[type.Style, str]:
    """Return the first style in which a text has room; in the last one it is shortened."""
    for style in styles:
        if type.width(style, text) <= room:
            return style, text
    return styles[-1], shortened(styles[-1], text, room)


def shortened(style: type.Style, text: str, room: float) -> str:
    """Return a text cut after a whole word, or within one that is too long by itself."""
    if type.width(style, text) <= room:
        return text
    words = text.split()
    for count in range(len(words) - 1, 0, -1):
        short = " ".join(words[:count]).rstrip(",;:.") + "…"
        if type.width(style, short) <= room:
            return short
    return type.fitting(style, text, room)


def sentences(style: type.Style, parts: Sequence[str], room: float, most: int) -> list[str]:
    """Return sentences in at most so many lines: each its own, or run on and broken at words.

    Where they don't all fit, the last ones are left out; the first is shortened at worst.
    """
    if len(parts) <= most and all(type.width(style, part) <= room for part in parts):
        return list(parts)
    for count in range(len(parts), 0, -1):
        lines = type.wrapped(style, " ".join(parts[:count]), room)
        if len(lines) <= most and all(type.width(style, line) <= room for line in lines):
            return lines
    lines = type.wrapped(style, parts[0], room) if parts else []
    kept = lines[: most - 1]
    if len(lines) > len(kept):
        kept.append(shortened(style, " ".join(lines[most - 1 :]), room))
    return kept
