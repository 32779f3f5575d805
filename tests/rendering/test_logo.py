"""A logo keeps its shape in the room that it is given, whether wide or tall."""

from __future__ import annotations

import base64
import io

import pytest
from PIL import Image

from notices.rendering.logo import in_mail, on_page, width_on_paper

WHITE = (255, 255, 255)


def logo(width: int, height: int) -> str:
    """A black logo, clear in its left half."""
    picture = Image.new("RGBA", (width, height), (0, 0, 0, 255))
    picture.paste((0, 0, 0, 0), (0, 0, width // 2, height))
    out = io.BytesIO()
    picture.save(out, "PNG")
    return f"data:image/png;base64,{base64.b64encode(out.getvalue()).decode('ascii')}"


@pytest.mark.parametrize(
    ("size", "mail", "page"),
    [
        # Within the plate are 80 by 36 pixels in a message and 142 by 48 on a page, with 4 of white
        # on each side. A tenth of 80 is 8, and of 142 14.2, of which the plate takes 15 at most.
        ((800, 80), (88, 16), (150, 22)),
        # Half of 36 is 18, and of 48 24.
        ((150, 300), (26, 44), (32, 56)),
        # What is small is not made larger: the picture has two pixels for one of the screen.
        ((20, 20), (18, 18), (18, 18)),
    ],
)
def test_it_keeps_its_shape(
    size: tuple[int, int], mail: tuple[int, int], page: tuple[int, int]
) -> None:
    for plate, expected in ((in_mail(logo(*size)), mail), (on_page(logo(*size)), page)):
        assert plate.width == expected[0]
        assert expected[1] <= plate.height <= expected[1] + 1
        picture = Image.open(io.BytesIO(plate.content))
        assert picture.size == (2 * plate.width, 2 * plate.height)


def test_it_stands_on_white_wherever_it_is_shown() -> None:
    """A dark logo on clear ground would vanish from a dark head."""
    picture = Image.open(io.BytesIO(in_mail(logo(60, 60)).content)).convert("RGBA")
    # The corner is plate, a quarter of the way is the clear half, three quarters the black one.
    found = [picture.getpixel((x, picture.height // 2)) for x in (1, picture.width // 4)]
    assert found == [(*WHITE, 255), (*WHITE, 255)]
    assert picture.getpixel((3 * picture.width // 4, picture.height // 2)) == (0, 0, 0, 255)


@pytest.mark.parametrize(
    ("size", "width"), [((100, 100), 1.0), ((100, 300), 0.33), ((300, 200), 1.5), ((800, 50), 3.5)]
)
def test_on_paper_it_is_as_wide_as_its_shape_up_to_a_limit(
    size: tuple[int, int], width: float
) -> None:
    """100 of 300 are 0.33; 800 of 50 are sixteen times the height, more than there is room for."""
    assert width_on_paper(logo(*size)) == width
