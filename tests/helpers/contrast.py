"""Contrast by the formula of WCAG 2.2, "contrast ratio" and "relative luminance"."""

from __future__ import annotations

Triple = tuple[float, float, float]


def linear(color: str) -> Triple:
    channels = (int(color[at : at + 2], 16) / 255 for at in (1, 3, 5))
    r, g, b = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels)
    return r, g, b


def luminance(color: str) -> float:
    r, g, b = linear(color)
    return 0.2126 * r + 0.7152 * g + 0.0722 * b


def contrast(a: str, b: str) -> float:
    """WCAG 2.2, "contrast ratio"."""
    low, high = sorted((luminance(a), luminance(b)))
    return (high + 0.05) / (low + 0.05)
