from __future__ import annotations

from itertools import combinations

import pytest

from rackboard.core.words import Word
from rackboard.ui.theme import (
    COLD,
    DARK_TOKENS,
    FILLS,
    INK,
    LIGHT_TOKENS,
    WHITE,
    dark_theme,
    light_theme,
)

Triple = tuple[float, float, float]

# Machado, Oliveira and Fernandes, "A Physiologically-Based Model for Simulation of Color Vision
# Deficiency", IEEE Transactions on Visualization and Computer Graphics 15(6), 2009: the matrices
# of severity 1.0, on linear RGB (figures from memory, as commonly reprinted).
MACHADO = {
    "normal": ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)),
    "protan": (
        (0.152286, 1.052583, -0.204868),
        (0.114503, 0.786281, 0.099216),
        (-0.003882, -0.048116, 1.051998),
    ),
    "deutan": (
        (0.367322, 0.860646, -0.227968),
        (0.280085, 0.672501, 0.047413),
        (-0.011820, 0.042940, 0.968881),
    ),
    "tritan": (
        (1.255528, -0.076749, -0.178779),
        (-0.078411, 0.930809, 0.147602),
        (0.004733, 0.691367, 0.303900),
    ),
}


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


def lab(rgb: Triple) -> Triple:
    """CIE L*a*b* (1976) under D65 of linear sRGB."""
    r, g, b = rgb
    xyz = (
        (0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.95047,
        0.2126 * r + 0.7152 * g + 0.0722 * b,
        (0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.08883,
    )
    x, y, z = (v ** (1 / 3) if v > 216 / 24389 else (24389 / 27 * v + 16) / 116 for v in xyz)
    return 116 * y - 16, 500 * (x - y), 200 * (y - z)


def seen(color: str, eye: str) -> Triple:
    rgb = linear(color)
    rows = (
        min(max(sum(m * c for m, c in zip(row, rgb, strict=True)), 0.0), 1.0)
        for row in MACHADO[eye]
    )
    r, g, b = rows
    return r, g, b


def distance(a: str, b: str, eye: str) -> float:
    pairs = zip(lab(seen(a, eye)), lab(seen(b, eye)), strict=True)
    return float(sum((p - q) ** 2 for p, q in pairs) ** 0.5)


@pytest.mark.parametrize(
    ("a", "b", "ratio"),
    [("#000000", "#FFFFFF", 21.0), ("#767676", "#FFFFFF", 4.54), ("#777777", "#FFFFFF", 4.48)],
)
def test_contrast_formula_by_its_check_values(a: str, b: str, ratio: float) -> None:
    assert contrast(a, b) == pytest.approx(ratio, abs=0.005)


@pytest.mark.parametrize("tokens", [DARK_TOKENS, LIGHT_TOKENS], ids=["dark", "light"])
def test_contrasts_of_the_tokens(tokens: dict[str, str]) -> None:
    for ground in ("bg", "strip", "surf", "surf2", "plot"):
        for text in ("text", "sub"):
            assert contrast(tokens[text], tokens[ground]) >= 4.5, (text, ground)
        assert contrast(tokens["ring"], tokens[ground]) >= 3.0
    assert contrast(tokens["dim"], tokens["bg"]) >= 4.5
    assert contrast(tokens["dim"], tokens["surf"]) >= 4.5
    for mark in ("edge", "out"):
        assert contrast(tokens[mark], tokens["bg"]) >= 3.0, mark


def test_words_on_their_fills() -> None:
    for word, fill in FILLS.items():
        ink = WHITE if word is Word.WAIT else INK
        assert contrast(ink, fill) >= 7.0, word
    assert contrast(INK, COLD) >= 7.0
    for theme in (dark_theme(), light_theme()):
        for word in Word:
            on, fill = theme.on_fill(word).name(), theme.fills[word].name()
            assert contrast(on, fill) >= 7.0


@pytest.mark.parametrize(
    ("eye", "least"), [("normal", 36.0), ("protan", 21.7), ("deutan", 23.5), ("tritan", 21.4)]
)
def test_fills_stay_apart_for_every_eye(eye: str, least: float) -> None:
    """19 is the limit; the figures here pin what these fills reach."""
    smallest = min(distance(a, b, eye) for a, b in combinations(FILLS.values(), 2))
    assert smallest >= 19.0
    assert smallest >= least - 0.5


def test_palette_carries_the_tokens() -> None:
    for theme in (dark_theme(), light_theme()):
        palette = theme.palette()
        assert palette.window().color() == theme.bg
        assert palette.windowText().color() == theme.text
        pairs = (
            (palette.highlightedText(), palette.highlight()),
            (palette.buttonText(), palette.button()),
            (palette.text(), palette.base()),
        )
        for front, back in pairs:
            assert contrast(front.color().name(), back.color().name()) >= 4.5
