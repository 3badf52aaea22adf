"""Makes the fonts of the pages from DejaVu 2.37. Needs fonttools and brotli.

    python3 make.py FOLDER_OF_DEJAVU_TTF

Each face is cut to the characters below, its layout features and hints dropped so that a text is as
wide as its letters together, and renamed: a page whose own font is missing then shows it.
`*.ttf` holds every character; `*-basic.woff2` and `*-full.woff2` travel inside SVG pages.
"""

import sys
from pathlib import Path

from fontTools import subset
from fontTools.ttLib import TTFont

SYMBOLS = "′″½¼¾⅛⅜⅝⅞²×±·–—°∅≤≥→↔↑√∑⌀△▲◆●✓≈−…‘’“”•σ÷\ufffd"
BASIC = set(range(0x20, 0x7F)) | set(range(0xA0, 0x100)) | {ord(c) for c in SYMBOLS}
FULL = (
    BASIC
    | set(range(0x100, 0x250))  # Latin, extended
    | set(range(0x1E00, 0x1F00))  # Latin, further
    | set(range(0x370, 0x400))  # Greek
    | set(range(0x400, 0x460)) | {0x490, 0x491}  # Cyrillic
    | set(range(0x2010, 0x2028)) | set(range(0x2030, 0x203B)) | {0x20AC, 0x2116, 0x2122}
)
FACES = {
    "sans": ("DejaVuSans.ttf", "Fairfoot Sans", "Regular"),
    "sans-bold": ("DejaVuSans-Bold.ttf", "Fairfoot Sans", "Bold"),
    "mono": ("DejaVuSansMono.ttf", "Fairfoot Mono", "Regular"),
}


def cut(source, family, style, characters):
    options = subset.Options()
    options.layout_features = []
    options.hinting = False
    options.drop_tables += ["GSUB", "GPOS", "GDEF", "kern", "FFTM"]
    options.name_IDs = [0, 1, 2, 3, 4, 5, 6, 13, 14]
    options.notdef_outline = True
    font = TTFont(source, recalcTimestamp=False)
    cutter = subset.Subsetter(options)
    cutter.populate(unicodes=characters)
    cutter.subset(font)
    full = f"{family} {style}".replace(" Regular", "")
    for record in font["name"].names:
        names = {1: family, 2: style, 3: full, 4: full, 6: full.replace(" ", "")}
        if record.nameID in names:
            record.string = names[record.nameID]
    return font


def main(folder):
    here = Path(__file__).parent
    for name, (file, family, style) in FACES.items():
        for cut_name, characters in (("basic", BASIC), ("full", FULL)):
            font = cut(Path(folder) / file, family, style, characters)
            if cut_name == "full":
                font.save(here / f"{name}.ttf")
            font.flavor = "woff2"
            font.save(here / f"{name}-{cut_name}.woff2")


main(sys.argv[1])
