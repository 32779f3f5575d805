"""The measure that finds texts that overlap, leave their box or are too faint, held to small cases."""

from __future__ import annotations

import pytest
from PIL import ImageFont

from notices.paths import templates_folder
from tests.drawings.metrics import Box, assert_well_set, face, faint, faults, texts_in


def drawing(content: str) -> str:
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 100" '
        f'font-family="Notices Sans"><title>A title</title>{content}</svg>'
    )


def test_widths_are_those_of_the_font() -> None:
    """Against another reader of the same font; without kerning, so that no renderer is wider."""
    for name, weight in (("Regular", "normal"), ("Bold", "bold")):
        font = ImageFont.truetype(
            str(templates_folder() / "fonts" / f"NoticesSans-{name}.ttf"), 1000
        )
        for text in ("Hole", "225 mm", "1½ inches", "l'été"):
            wide = sum(font.getlength(sign) for sign in text)
            assert face(weight=weight).width(text) * 1000 == pytest.approx(wide, abs=len(text))


def test_where_a_text_stands() -> None:
    wide = face().width("mm") * 10
    (start,) = texts_in(drawing('<text x="50" y="40" font-size="10">mm</text>'))
    assert (start.box.left, start.box.right) == pytest.approx((50, 50 + wide))
    assert start.box.top < 40 < start.box.bottom
    (middle,) = texts_in(
        drawing('<g text-anchor="middle" font-size="10"><text x="50" y="40">mm</text></g>')
    )
    assert (middle.box.left, middle.box.right) == pytest.approx((50 - wide / 2, 50 + wide / 2))
    (end,) = texts_in(
        drawing(
            '<g transform="translate(10 5) scale(2)">'
            '<text x="50" y="20" font-size="10" text-anchor="end">mm</text></g>'
        )
    )
    assert (end.box.left, end.box.right) == pytest.approx((110 - 2 * wide, 110))
    assert end.size == pytest.approx(20)


def test_a_turned_text_is_as_high_as_it_is_wide() -> None:
    wide = face().width("depth") * 10
    (turned,) = texts_in(
        drawing('<text x="50" y="60" font-size="10" transform="rotate(-90 50 60)">depth</text>')
    )
    assert turned.box.bottom == pytest.approx(60)
    assert turned.box.top == pytest.approx(60 - wide)


def test_lines_of_one_text() -> None:
    lines = texts_in(
        drawing(
            '<text x="5" y="20" font-size="10"><tspan x="5">one</tspan>'
            '<tspan x="5" dy="12">two</tspan></text>'
        )
    )
    assert [line.text for line in lines] == ["one", "two"]
    assert lines[1].box.top - lines[0].box.top == pytest.approx(12)


@pytest.mark.parametrize(
    ("content", "complaint"),
    [
        ('<text x="190" y="50" font-size="10">outside</text>', "“outside” leaves the picture"),
        (
            '<g font-size="10"><text x="10" y="50">one</text><text x="14" y="55">two</text></g>',
            "“one” and “two” overlap",
        ),
        (
            '<text x="10" y="50" font-size="10" data-box="8 40 12 14">too wide</text>',
            "“too wide” leaves its box",
        ),
    ],
)
def test_what_is_wrong_is_found(content: str, complaint: str) -> None:
    (found,) = faults(drawing(content))
    assert found.startswith(complaint)
    with pytest.raises(AssertionError, match=complaint):
        assert_well_set(drawing(content))


def test_texts_side_by_side_are_fine() -> None:
    assert_well_set(
        drawing(
            '<text x="10" y="50" font-size="10" data-box="8 40 30 14">one</text>'
            '<text x="60" y="50" font-size="10">two</text>'
        )
    )


def test_a_line_below_a_text_makes_it_faint() -> None:
    letters = '<text x="10" y="50" font-size="10" fill="#1b2b2b">word</text>'
    assert faint(drawing(letters)) == []
    assert faint(drawing(f'<rect width="200" height="100" fill="#f3ead6"/>{letters}')) == []
    line = '<line x1="0" y1="48" x2="200" y2="48" stroke="#1b2b2b"/>'
    (found,) = faint(drawing(line + letters))
    assert found.startswith("“word” has a contrast of only 1.0")


def test_what_it_does_not_understand_it_refuses() -> None:
    with pytest.raises(AssertionError, match="textLength"):
        texts_in(drawing('<text x="1" y="20" textLength="40">wide</text>'))
    with pytest.raises(AssertionError, match="skewX"):
        texts_in(drawing('<g transform="skewX(3)"><text x="1" y="20">slanted</text></g>'))


def test_boxes_that_touch_do_not_overlap() -> None:
    assert not Box(0, 0, 10, 10).overlaps(Box(10, 0, 20, 10))
    assert Box(0, 0, 10, 10).overlaps(Box(9, 9, 20, 20))
