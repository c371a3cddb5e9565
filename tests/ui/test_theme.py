from __future__ import annotations

from itertools import combinations

import pytest
from pytestqt.qtbot import QtBot

from helpers.contrast import Triple, contrast, linear
from rackboard.services.snapshot import CONTRAST, THEME
from rackboard.ui.theme import (
    FILLS,
    Appearance,
    Theme,
    dark_theme,
    light_theme,
    system_wants_contrast,
    theme_of,
)

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


SCHEMES = [
    make(high=high) for make in (dark_theme, light_theme) for high in (False, True)
]


@pytest.mark.parametrize("theme", SCHEMES, ids=["dark", "dark high", "light", "light high"])
def test_a_palette_says_which_scheme_it_is_made_from(theme: Theme) -> None:
    made = theme_of(theme.palette())
    assert (made.dark, made.high, made.bg, made.text) == (
        theme.dark, theme.high, theme.bg, theme.text,
    )  # fmt: skip


def test_appearance_follows_the_settings_and_their_undoing(qtbot: QtBot) -> None:
    appearance = Appearance("dark")
    assert (appearance.theme.dark, appearance.theme.high) == (True, system_wants_contrast())
    with qtbot.waitSignal(appearance.theme_changed) as told:
        appearance.set_contrast("on")
    (theme,) = told.args
    assert theme.dark
    assert theme.high
    with qtbot.waitSignal(appearance.theme_changed):
        appearance.take_settings({THEME: "light", CONTRAST: "on"})
    assert (appearance.theme.dark, appearance.theme.high) == (False, True)
    with qtbot.waitSignal(appearance.theme_changed):
        appearance.take_settings({THEME: "light", CONTRAST: "off"})
    assert not appearance.theme.high
    with qtbot.assertNotEmitted(appearance.theme_changed):
        appearance.take_settings({THEME: "light", CONTRAST: "off"})
