"""The club's logo for the head of sheets, web pages and emails."""

from __future__ import annotations

import base64
import io
from dataclasses import dataclass
from functools import lru_cache

from PIL import Image

from notices.rendering.png import in_few_colours

ON_PAGE, IN_MAIL = (150, 56), (88, 44)
"""Largest width and height of a logo, its plate included [CSS pixels]: an email may be narrow."""

WIDEST = 3.5
"""Largest ratio of width to height on paper; a wider logo is set lower."""

_PLATE = 4
"""White margin around it [CSS pixels]: most logos are dark, and so is the head behind them."""

_SHARP = 2
"""Image pixels per CSS pixel, for high-resolution screens."""


@dataclass(frozen=True, slots=True)
class Plate:
    """A logo on a white plate, which mail programs cannot darken and Outlook cannot drop."""

    content: bytes
    """PNG file."""
    width: int
    """Width [CSS pixels], not pixels of the image; so too the height."""
    height: int

    @property
    def address(self) -> str:
        """Data URL of the PNG."""
        return f"data:image/png;base64,{base64.b64encode(self.content).decode('ascii')}"


def on_page(logo: str) -> Plate:
    """Return the logo of a data URL at the size for web pages."""
    return _plate(logo, *ON_PAGE)


def in_mail(logo: str) -> Plate:
    """Return the logo of a data URL at the size for emails."""
    return _plate(logo, *IN_MAIL)


def width_on_paper(logo: str) -> float:
    """Return the width of the logo of a data URL on paper, as a multiple of its allowed height."""
    with _opened(logo) as picture:
        return round(min(picture.width / picture.height, WIDEST), 2)


@lru_cache(maxsize=8)  # every page and email of a pack shows the same logo
def _plate(logo: str, width: int, height: int) -> Plate:
    with _opened(logo) as picture:
        shown = picture.convert("RGBA")
    room = (_SHARP * (width - 2 * _PLATE), _SHARP * (height - 2 * _PLATE))
    shown.thumbnail(room, Image.Resampling.LANCZOS)
    size = tuple(-(-side // _SHARP) + 2 * _PLATE for side in shown.size)
    plate = Image.new("RGB", (_SHARP * size[0], _SHARP * size[1]), "#ffffff")
    plate.paste(shown, (_SHARP * _PLATE, _SHARP * _PLATE), shown)
    return Plate(in_few_colours(plate), *size)


def _opened(logo: str) -> Image.Image:
    return Image.open(io.BytesIO(base64.b64decode(logo.partition(",")[2])))
