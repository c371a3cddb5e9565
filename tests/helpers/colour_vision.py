"""How far apart two colours look, with normal vision and without one kind of cones.

The matrices are those of G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A
physiologically-based model for simulation of color vision deficiency", IEEE Transactions on
Visualization and Computer Graphics 15 (2009) 1291-1298, at severity 1.0; they are applied to
linear sRGB. The distance is CIE76: Euclidean in CIELAB, white D65 (IEC 61966-2-1, CIE 15).
"""

from __future__ import annotations

from math import dist

from helpers.contrast import Triple, linear

MATRICES: dict[str, tuple[Triple, Triple, Triple]] = {
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
_TO_XYZ: tuple[Triple, Triple, Triple] = (
    (0.4124564, 0.3575761, 0.1804375),
    (0.2126729, 0.7151522, 0.0721750),
    (0.0193339, 0.1191920, 0.9503041),
)
_WHITE: Triple = (0.95047, 1.0, 1.08883)


def _times(matrix: tuple[Triple, Triple, Triple], vector: Triple) -> Triple:
    a, b, c = (sum(m * v for m, v in zip(row, vector, strict=True)) for row in matrix)
    return a, b, c


def lab(color: str, vision: str = "normal") -> Triple:
    """Return CIELAB of an sRGB colour as somebody sees it."""
    seen = _times(MATRICES[vision], linear(color))
    clipped: Triple = tuple(min(max(channel, 0.0), 1.0) for channel in seen)  # type: ignore[assignment]
    x, y, z = (
        t ** (1 / 3) if t > 216 / 24389 else (24389 / 27 * t + 16) / 116
        for t in (
            value / white for value, white in zip(_times(_TO_XYZ, clipped), _WHITE, strict=True)
        )
    )
    return 116 * y - 16, 500 * (x - y), 200 * (y - z)


def cie76(a: str, b: str, vision: str = "normal") -> float:
    """Return the distance of two colours in CIELAB."""
    return dist(lab(a, vision), lab(b, vision))
