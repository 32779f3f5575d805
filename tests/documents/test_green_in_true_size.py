"""The square of green on paper: as large as the green, whatever stands beside it."""

from __future__ import annotations

from functools import cache

import pypdfium2  # type: ignore[import-untyped,unused-ignore]
import pytest

from notices.documents.green_in_true_size import green_in_true_size, greens_in_true_size
from notices.documents.model import Sheet
from notices.rendering.sheets import write_sheet
from tests.documents.on_paper import faults_on_paper
from tests.documents.reading import Sheet as Read
from tests.documents.reading import plain
from tests.drawings.clubs import words_of
from tests.drawings.hard_plans import clubs


@cache
def printed(name: str) -> bytes:
    entry = greens_in_true_size(clubs()[name])
    assert entry is not None
    (sheet,) = entry.items
    assert isinstance(sheet, Sheet)
    return write_sheet(sheet).content


@pytest.mark.parametrize(
    ("name", "side_mm"),
    [
        ("withy-hollow", 150.0),
        ("live-oak", 152.4),  # six inches
        (
            "everything in inches",
            152.4,
        ),  # ten kinds of work beside it: their letters grow smaller, not it
    ],
)
def test_it_is_one_page_and_the_square_is_as_large_as_the_green(name: str, side_mm: float) -> None:
    content = printed(name)
    document = pypdfium2.PdfDocument(content)
    assert len(document) == 1
    page = document[0]
    assert [round(side / 72 * 25.4) for side in page.get_size()] == [297, 210]
    picture = page.render(scale=254 / 72).to_pil().convert("L")  # ten pixels to a millimetre
    # The frame is dark from end to end; margins are 15 mm and the sheet beside begins after 169.
    frame = [
        x
        for x in range(140, 1690)
        if all(picture.getpixel((x, y)) < 110 for y in range(200, 1500, 13))
    ]
    assert (frame[-1] - frame[0]) / 10 == pytest.approx(side_mm, abs=0.5)
    assert list(faults_on_paper(content)) == []


@pytest.mark.parametrize(
    ("name", "bar_mm", "said"),
    [
        ("withy-hollow", 100.0, "This line is then 10 cm long."),
        ("live-oak", 4 * 25.4, "This line is then 4 inches long."),
    ],
)
def test_a_line_below_the_square_is_as_long_as_it_says(name: str, bar_mm: float, said: str) -> None:
    content = printed(name)
    assert said in plain(Read.read(content).text)
    page = pypdfium2.PdfDocument(content)[0]
    picture = page.render(scale=254 / 72).to_pil().convert("L")  # ten pixels to a millimetre
    # The line is the lowest that goes on for nine centimetres, and ends where the paper is white.
    row = max(
        y
        for y in range(picture.height)
        if all(picture.getpixel((x, y)) < 150 for x in range(160, 1060))
    )
    right = next(x for x in range(1060, 1700) if picture.getpixel((x, row)) > 200)
    left = next(x for x in range(160, 0, -1) if picture.getpixel((x, row)) > 200)
    assert (right - left) / 10 == pytest.approx(bar_mm, abs=0.5)


def test_it_says_what_is_seen_what_share_that_is_and_when_it_putts_well() -> None:
    """2 ÷ 40 = 5 %; π × 13² ÷ 4 ÷ 50² = 5.3 %; π × 18² ÷ 4 ÷ 75² = 4.5 %."""
    text = plain(Read.read(printed("withy-hollow")).text)
    for said in ("2 mm wide, 40 mm apart 5.0 %", "75 mm apart 4.5 %", "50 mm apart 5.3 %"):
        assert said in text
    document = green_in_true_size(words_of("withy-hollow").programme)
    assert document is not None
    assert [fact.subject for fact in document.facts] == ["when", "good again"]
    for fact in document.facts:
        assert plain(fact.text) in text


@pytest.mark.parametrize("name", ["quillerby", "a roller alone", "turf alone"])
def test_there_is_none_where_nothing_is_seen_from_above(name: str) -> None:
    assert greens_in_true_size(clubs()[name]) is None


def test_sand_alone_does_not_heal() -> None:
    document = green_in_true_size(clubs()["sand alone"])
    assert document is not None
    assert [drawing.name for drawing in document.drawings] == ["square", "signs"]
