from __future__ import annotations

import io
from pathlib import Path

import pytest
from PIL import Image, ImageChops

from notices.rendering.png import svg_to_png

FONT = Path(__file__).parents[2] / "templates" / "fonts" / "NoticesSans-Regular.ttf"


def drawing(inside: str) -> str:
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" width="300" height="80" viewBox="0 0 300 80">'
        f'<circle cx="40" cy="40" r="30" fill="#2f5d3a"/>{inside}</svg>'
    )


TEXT = '<text x="90" y="50" font-family="Notices Sans" font-size="24">Green 7 – sand</text>'


def picture(png: bytes) -> Image.Image:
    return Image.open(io.BytesIO(png)).convert("RGB")


def test_text_is_drawn() -> None:
    with_text = picture(svg_to_png(drawing(TEXT), width_px=600, fonts=[FONT]))
    without = picture(svg_to_png(drawing(""), width_px=600, fonts=[FONT]))
    box = ImageChops.difference(with_text, without).getbbox()
    assert box is not None
    left, top, right, bottom = box
    # At twice the size, the text starts at 180 and stands on the line at 100.
    assert 178 <= left <= 188
    assert 340 <= right <= 540
    assert 55 <= top <= 75
    assert 98 <= bottom <= 112


def test_system_fonts_are_not_used() -> None:
    svg = drawing(TEXT.replace("Notices Sans", "DejaVu Sans"))
    assert svg_to_png(svg, width_px=600, fonts=[]) == svg_to_png(
        drawing(""), width_px=600, fonts=[]
    )


def test_the_picture_is_small_opaque_and_says_nothing_of_its_maker() -> None:
    png = svg_to_png(drawing(TEXT), width_px=600, fonts=[FONT])
    with Image.open(io.BytesIO(png)) as image:
        assert image.size == (600, 160)
        assert image.mode == "P"
        assert len(image.getcolors(1000) or []) <= 64
        assert image.info == {}
        assert image.convert("RGB").getpixel((599, 0)) == (255, 255, 255)
    chunks = set()
    at = 8
    while at < len(png):
        chunks.add(png[at + 4 : at + 8])
        at += 12 + int.from_bytes(png[at : at + 4], "big")
    assert chunks == {b"IHDR", b"PLTE", b"IDAT", b"IEND"}


def test_the_same_drawing_gives_the_same_bytes() -> None:
    assert len({svg_to_png(drawing(TEXT), width_px=600, fonts=[FONT]) for _ in range(3)}) == 1


def test_a_font_that_is_not_there_is_an_error(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError):
        svg_to_png(drawing(TEXT), width_px=600, fonts=[tmp_path / "no.ttf"])


def test_what_is_no_drawing_is_an_error() -> None:
    with pytest.raises(ValueError, match=r"."):
        svg_to_png("<p>no</p>", width_px=600, fonts=[FONT])
