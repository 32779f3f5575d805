"""Every sign on a sheet is one of our fonts; the rest is put into signs that are."""

from __future__ import annotations

import pytest
from fontTools.ttLib import TTFont  # type: ignore[import-untyped,unused-ignore]
from hypothesis import given
from hypothesis import strategies as st

from notices.letters import printable
from notices.paths import font_files

IN_EVERY_FONT = set.intersection(*(set(TTFont(font).getBestCmap()) for font in font_files()))
BLANKS = {ord(blank) for blank in "\t\n\r"}


def test_what_passes_is_in_every_font() -> None:
    # The fonts end long before; emoji begin at 0x1F000.
    passing = {n for n in range(0x20000) if printable(chr(n)) == chr(n)}
    assert passing - IN_EVERY_FONT == BLANKS


@given(st.text())
def test_nothing_else_comes_out(text: str) -> None:
    assert {ord(sign) for sign in printable(text)} <= IN_EVERY_FONT | BLANKS


@pytest.mark.parametrize(
    "text",
    [
        "Greens 1 to 9, 50 × 50 mm, ½ in, £48, €50, 18 °C – “yes” … the club’s own",
        "Élan, Ångström, Łódź, Čeština, Türkçe, Malmö, Ærø, Straße, Œuvre, Ğ, ș, Ŵ",
    ],
)
def test_the_languages_of_europe_in_latin_script_stay(text: str) -> None:
    assert printable(text) == text


@pytest.mark.parametrize(
    ("text", "printed"),
    [
        ("Autumn Medal ⛳️😀", "Autumn Medal "),
        ("大会", "??"),
        ("נ", "?"),
        # An accent of its own joins its letter; one that no font has is dropped.
        ("e\u0301", "é"),
        ("e\u0302\u0301", "ê"),
        ("ﬁne", "fine"),
        ("→", ""),
    ],
)
def test_what_is_put_in_place_of_the_others(text: str, printed: str) -> None:
    assert printable(text) == printed
