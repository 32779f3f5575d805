"""The club's logo in the head of what is printed, shown and sent."""

from __future__ import annotations

import base64
import io
from dataclasses import dataclass
from functools import lru_cache

from PIL import Image

from notices.rendering.png import in_few_colours

ON_PAGE, IN_MAIL = (150, 56), (88, 44)
"""Pixels of a screen that a logo takes at most, its plate included: a message may be narrow."""

WIDEST = 3.5
"""Times its height on paper; a wider one is set lower."""

_PLATE = 4
"""Pixels of white around it: most logos are dark, and the heads that they stand on are too."""

_SHARP = 2
"""Pixels of the picture for one of the screen, for fine screens."""


@dataclass(frozen=True, slots=True)
class Plate:
    """A logo on a white plate, which mail programs cannot darken and Outlook cannot drop."""

    content: bytes
    """A PNG."""
    width: int
    """Pixels of the screen, not of the picture."""
    height: int

    @property
    def address(self) -> str:
        """The picture itself as a data URL."""
        return f"data:image/png;base64,{base64.b64encode(self.content).decode('ascii')}"


def on_page(logo: str) -> Plate:
    """Return the logo of a data URL as a page shows it."""
    return _plate(logo, *ON_PAGE)


def in_mail(logo: str) -> Plate:
    """Return the logo of a data URL as a message shows it."""
    return _plate(logo, *IN_MAIL)


def width_on_paper(logo: str) -> float:
    """Return how wide the logo of a data URL stands on paper, in parts of the height it may have."""
    with _opened(logo) as picture:
        return round(min(picture.width / picture.height, WIDEST), 2)


@lru_cache(maxsize=8)  # every page and message of a pack shows the same one
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
