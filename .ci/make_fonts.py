"""Make the four fonts in ``templates/fonts/`` from the packages of npm's @fontsource.

For the rare day on which the fonts are renewed; the results are committed, so neither the tool nor
its tests need this. In a scratch folder outside the checkout::

    npm install @fontsource/source-sans-3@5.3.1 @fontsource/source-serif-4@5.3.1
    python3 -m venv venv && venv/bin/pip install fonttools==4.68.0 brotli
    venv/bin/python /path/to/checkout/.ci/make_fonts.py node_modules /path/to/checkout/templates/fonts

Then look at a page set in them before committing. The same packages and the same fonttools give the
same bytes.

Why the fonts are not used as they come:

* each style comes as several files, one per range of characters, and WeasyPrint sets wrong glyphs
  when two files share a family name: so latin and latin-ext are joined into one file;
* resvg looks a font up by the name inside the file, which in these is "Source Sans 3 ExtraLight"
  whatever the weight, and draws no text at all when it finds none: so the file says what it is;
* "Source" is a Reserved Font Name, and the Open Font License asks a changed font to bear another.
"""

from __future__ import annotations

import sys
import tempfile
from dataclasses import dataclass
from pathlib import Path

from fontTools.merge import Merger, Options
from fontTools.misc.timeTools import timestampFromString
from fontTools.ttLib import TTFont
from fontTools.ttLib.tables.otBase import USE_HARFBUZZ_REPACKER

SUBSETS = ("latin", "latin-ext")
"""The first is the one whose measures (line height, underline) the joined font takes over."""

UNWANTED_TABLES = ["BASE", "DSIG", "HVAR", "MVAR", "STAT", "vhea", "vmtx"]
"""Tables of variable and vertical fonts; STAT would bring the old names back."""

FIXED_DATE = timestampFromString("Thu Jan  1 00:00:00 2026")
"""Written as the day of making, so that making the fonts again changes no byte."""

COPYRIGHT, FAMILY, STYLE, UNIQUE_ID, FULL_NAME, VERSION, POSTSCRIPT, LICENCE, LICENCE_URL = (
    *range(7),
    13,
    14,
)
"""Numbers of the name records (OpenType, table "name")."""

WINDOWS_UNICODE_ENGLISH = (3, 1, 0x409)

LICENCE_SENTENCE = (
    "This Font Software is licensed under the SIL Open Font License, Version 1.1. "
    "This license is available with a FAQ at: https://openfontlicense.org"
)

FOREWORD = (
    "The fonts in this folder are changed versions: each joins two subsets of the original into\n"
    "one file and bears a name of its own. .ci/make_fonts.py makes them.\n"
)


@dataclass(frozen=True)
class Cut:
    """One file to make: where it comes from and what it is called."""

    package: str
    weight: int
    slope: str
    family: str
    style: str

    @property
    def postscript_name(self) -> str:
        """The name without spaces, which is the file's name too."""
        return f"{self.family.replace(' ', '')}-{self.style}"


CUTS = (
    Cut("source-sans-3", 400, "normal", "Notices Sans", "Regular"),
    Cut("source-sans-3", 700, "normal", "Notices Sans", "Bold"),
    Cut("source-sans-3", 400, "italic", "Notices Sans", "Italic"),
    Cut("source-serif-4", 700, "normal", "Notices Serif", "Bold"),
)


def joined(cut: Cut, packages: Path) -> TTFont:
    """Join the subsets of one cut into one font, kerning included."""
    with tempfile.TemporaryDirectory() as scratch:
        parts: list[str] = []
        seen: set[int] = set()
        for subset in SUBSETS:
            name = f"{cut.package}-{subset}-{cut.weight}-{cut.slope}.woff2"
            font = TTFont(packages / cut.package / "files" / name)
            # Kerning pairs live within a subset. The merger lets the last one have a character that
            # several hold, and an A from latin-ext would stand apart from a V from latin.
            for table in font["cmap"].tables:
                for character in seen & table.cmap.keys():
                    del table.cmap[character]
            seen |= font.getBestCmap().keys()
            font.flavor = None  # the merger reads plain TrueType only
            part = Path(scratch) / f"{subset}.ttf"
            font.save(part)
            parts.append(str(part))
        return Merger(options=Options(drop_tables=UNWANTED_TABLES)).merge(parts)


def rename(font: TTFont, cut: Cut) -> None:
    """Give the font its own name and keep the authors' copyright line."""
    names = font["name"]
    records = {
        COPYRIGHT: names.getDebugName(COPYRIGHT),
        FAMILY: cut.family,
        STYLE: cut.style,
        UNIQUE_ID: f"1.000;{cut.postscript_name}",
        FULL_NAME: f"{cut.family} {cut.style}",
        VERSION: "Version 1.000",
        POSTSCRIPT: cut.postscript_name,
        LICENCE: LICENCE_SENTENCE,
        LICENCE_URL: "https://openfontlicense.org",
    }
    names.names = []
    for number, text in records.items():
        names.setName(text, number, *WINDOWS_UNICODE_ENGLISH)


def make(cut: Cut, packages: Path, out: Path) -> str:
    """Write one font and return its copyright line."""
    font = joined(cut, packages)
    rename(font, cut)
    font["head"].created = font["head"].modified = FIXED_DATE
    font.recalcTimestamp = False
    # Otherwise the bytes would depend on whether uharfbuzz happens to be installed.
    font.cfg[USE_HARFBUZZ_REPACKER] = False
    path = out / f"{cut.postscript_name}.ttf"
    font.save(path)
    print(f"{path}: {path.stat().st_size} bytes, {len(font.getBestCmap())} characters")
    return str(font["name"].getDebugName(COPYRIGHT))


def write_licence(
    cuts_and_copyrights: dict[str, tuple[str, str]], packages: Path, out: Path
) -> None:
    """Write OFL.txt: whose each family is, then the licence as the packages carry it."""
    sections = [FOREWORD]
    for package, (family, copyright_line) in cuts_and_copyrights.items():
        text = (packages / package / "LICENSE").read_text(encoding="utf-8")
        # The package's first line names whoever served the files, not the authors, who stand in
        # the font itself; the licence asks that their line goes with every copy.
        licence = text[text.index("This Font Software is licensed") :].strip()
        heading = f"{family} (from @fontsource/{package})"
        sections.append(f"{heading}\n{'=' * len(heading)}\n\n{copyright_line}\n\n{licence}\n")
    (out / "OFL.txt").write_text("\n\n".join(sections), encoding="utf-8")


def main() -> None:
    """Make all cuts and the licence file: NODE_MODULES OUT."""
    packages, out = Path(sys.argv[1]) / "@fontsource", Path(sys.argv[2])
    out.mkdir(parents=True, exist_ok=True)
    made = {cut.package: (cut.family, make(cut, packages, out)) for cut in CUTS}
    write_licence(made, packages, out)


if __name__ == "__main__":
    main()
