"""Turn the two unpacked Barlow web-font packages into the TTF files that the program ships.

    python assets/fonts/make_fonts.py SEMI_CONDENSED_PACKAGE CONDENSED_PACKAGE TARGET_FOLDER

The packages are the npm packages `@fontsource/barlow-semi-condensed` and
`@fontsource/barlow-condensed` (5.3.0 was used), unpacked. Needs fontTools and brotli. The
web fonts come cut into scripts; Latin and Latin Extended are put together again, and the
names are made one family a width with its weight, so that Qt finds them by both.
"""

from __future__ import annotations

import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from fontTools.merge import Merger
from fontTools.ttLib import TTFont

FILES = (
    # (package, weight, file name, family, style)
    (0, 500, "BarlowSemiCondensed-Medium.ttf", "Barlow Semi Condensed", "Medium"),
    (0, 600, "BarlowSemiCondensed-SemiBold.ttf", "Barlow Semi Condensed", "SemiBold"),
    (1, 500, "BarlowCondensed-Medium.ttf", "Barlow Condensed", "Medium"),
)
SLUGS = ("barlow-semi-condensed", "barlow-condensed")
NEEDED = "°–½“”äöüßñáé·−€…×±≤≥↑↓ŁłŠšŽžŐő0123456789"
OPTIONAL = "≤≥↑↓"
COPYRIGHT = "Copyright 2017 The Barlow Project Authors (https://github.com/jpt/barlow)"


def whole_font(folder: Path, slug: str, weight: int) -> TTFont:
    """Return Latin and Latin Extended of one weight as one font."""
    with TemporaryDirectory() as temporary:
        parts = []
        for script in ("latin", "latin-ext"):
            part = TTFont(folder / "files" / f"{slug}-{script}-{weight}-normal.woff2")
            part.flavor = None
            path = Path(temporary) / f"{script}.ttf"
            part.save(path)
            parts.append(str(path))
        return Merger().merge(parts)


def name(font: TTFont, family: str, style: str, weight: int) -> None:
    """Give the font its family, style and weight in every record that Qt may read."""
    table = font["name"]
    table.names = []
    postscript = f"{family.replace(' ', '')}-{style}"
    for key, text in (
        (0, COPYRIGHT),
        (1, f"{family} {style}"),
        (2, "Regular"),
        (3, postscript),
        (4, f"{family} {style}"),
        (5, "Version 1.408"),
        (6, postscript),
        (13, "This Font Software is licensed under the SIL Open Font License, Version 1.1."),
        (14, "https://scripts.sil.org/OFL"),
        (16, family),
        (17, style),
    ):
        table.setName(text, key, 3, 1, 0x409)
    font["OS/2"].usWeightClass = weight


def main(arguments: list[str]) -> int:
    """Write the three fonts and their licence; return the exit code."""
    if len(arguments) != 3:
        print(__doc__, file=sys.stderr)
        return 2
    packages, target = [Path(text) for text in arguments[:2]], Path(arguments[2])
    target.mkdir(parents=True, exist_ok=True)
    for package, weight, file_name, family, style in FILES:
        font = whole_font(packages[package], SLUGS[package], weight)
        name(font, family, style, weight)
        lacking = [c for c in NEEDED if ord(c) not in font.getBestCmap()]
        if set(lacking) - set(OPTIONAL):
            print(f"{file_name}: lacks {' '.join(lacking)}", file=sys.stderr)
            return 1
        tags = {record.FeatureTag for record in font["GSUB"].table.FeatureList.FeatureRecord}
        if "tnum" not in tags:
            print(f"{file_name}: has no tabular figures (tnum)", file=sys.stderr)
            return 1
        font.save(target / file_name)
        cap = font["OS/2"].sCapHeight / font["head"].unitsPerEm
        print(
            f"{file_name}: {len(font.getBestCmap())} characters, cap height {cap:.3f} em,"
            f" features {' '.join(sorted(tags))}, without {' '.join(lacking) or 'nothing'}"
        )
    licence = (packages[0] / "LICENSE").read_text(encoding="utf-8")
    body = licence[licence.index("This Font Software is licensed") :]
    (target / "OFL.txt").write_text(f"{COPYRIGHT}\n\n{body}", encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
