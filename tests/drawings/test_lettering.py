"""Widths of letters, against the fonts themselves."""

from __future__ import annotations

import pytest

from notices.drawings.lettering import UNKNOWN, fitted, held, lines_of, width_of
from tests.drawings.metrics import face


@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize(
    "text", ["Greens 1 to 18, putting green", "Ångström’s Élan – 3½ m²", 'A "quote" & <tag>', "œ"]
)
def test_no_text_is_wider_than_we_think(text: str, *, bold: bool) -> None:
    true = face(weight="bold" if bold else "normal").width(text) * 10
    assert true - 0.01 <= width_of(text, 10, bold=bold) <= true + 0.5 * UNKNOWN / 100


def test_letters_with_accents_are_as_wide_as_those_without() -> None:
    assert width_of("éöñÅ", 12) == width_of("eonA", 12)


def test_a_text_that_fits_stays_whole() -> None:
    wide = width_of("Autumn Medal", 13)
    assert fitted("Autumn Medal", wide, 13) == "Autumn Medal"
    cut = fitted("Autumn Medal", wide - 1, 13)
    assert cut.endswith("…")
    assert "Autumn Medal".startswith(cut[:-1])
    assert width_of(cut, 13) <= wide - 1


def test_lines_break_at_spaces_and_keep_every_word() -> None:
    text = "Growth stops about 26 Nov and returns about 8 Mar"
    lines = lines_of(text, 100, 12)
    assert len(lines) > 1
    assert " ".join(lines) == text
    assert all(width_of(line, 12) <= 100 for line in lines)


def test_the_last_line_allowed_is_cut() -> None:
    lines = lines_of("one two three four five six", 40, 12, most=2)
    assert len(lines) == 2
    assert lines[-1].endswith("…")


def test_a_narrow_room_leaves_nothing() -> None:
    assert fitted("word", 1, 12) == ""


def test_words_keep_their_width_in_whatever_font_a_screen_has() -> None:
    """In Source Sans "it" is 246 + 338 thousandths wide, in bold 276 + 383; "&" is one sign of 609."""
    for words, weight, thousandths in (
        ("it", "", 584),
        ("it", ' font-weight="bold"', 659),
        ("&amp;", "", 609),
    ):
        drawn = f'<text x="1" y="2" font-size="10"{weight} fill="#000">{words}</text>'
        wide = f'textLength="{thousandths / 100:.1f}"'
        assert held(drawn).startswith(drawn.partition(">")[0])
        assert f' {wide} lengthAdjust="spacingAndGlyphs">{words}</text>' in held(drawn)
