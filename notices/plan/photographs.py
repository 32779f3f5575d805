"""Photographs beside the plan: turned upright, without what a camera adds, and not too large.

A camera writes into a file where it was taken. None of that goes on: only the picture does.
"""

from __future__ import annotations

import base64
import io
from pathlib import Path
from typing import TYPE_CHECKING

from notices.plan.beside import read_beside
from notices.plan.nearest import quoted
from notices.plan.refusal import Refusal

if TYPE_CHECKING:
    from PIL import Image

LARGEST = 30_000_000
"""Bytes of a file that are read at most."""

MOST_PIXELS = 60_000_000
"""A file of a few bytes can hold a picture that fills the memory."""

WIDEST = 1400
"""Pixels kept of the longer side: enough for the width of a sheet in print."""

QUALITY = 80
_HEAD = "data:image/jpeg;base64,"
_END_OF_JPEG = b"\xff\xd9"
_FORMATS = ("JPEG", "PNG", "WEBP")


def is_picture(text: str) -> bool:
    """Tell whether this is a picture itself, as the canonical form has it, and no name of a file."""
    return text.startswith(_HEAD)


def read_photograph(folder: Path, name: str) -> str:
    """Return a photograph as the canonical form has it: a JPEG in a data URL (RFC 2397).

    Parameters
    ----------
    folder
        Where the plan lies.
    name
        Of a file beside it, in JPEG, PNG or WebP.

    Raises
    ------
    Refusal
        When there is no such file, or it is no such picture.
    """
    data = read_beside(
        folder, name, what="a photograph", largest=LARGEST, otherwise="save a smaller one"
    )
    return _HEAD + base64.b64encode(_upright(name, data)).decode("ascii")


def picture_bytes(text: str) -> bytes:
    """Return the file that a picture in the canonical form holds."""
    return base64.b64decode(text.removeprefix(_HEAD))


def check_picture(text: str) -> None:
    """Check a picture that stands in the plan itself.

    Raises
    ------
    Refusal
        When it cannot be shown.
    """
    broken = Refusal("this picture cannot be read", "name a file beside the plan")
    try:
        data = base64.b64decode(text.removeprefix(_HEAD), validate=True)
    except ValueError:
        raise broken from None
    _upright("the picture", data)


def _as_we_write_it(opened: Image.Image, data: bytes) -> bool:
    """Tell whether a file came from here: to write it anew would only lose a little of it."""
    return (
        opened.format == "JPEG"
        and opened.mode == "RGB"
        and max(opened.size) <= WIDEST
        and {name for name, _ in getattr(opened, "applist", [])} <= {"APP0"}
        and "comment" not in opened.info
        and data.endswith(_END_OF_JPEG)
    )


def _upright(name: str, data: bytes) -> bytes:
    from PIL import Image, ImageOps  # noqa: PLC0415, only who has photographs waits for it

    try:
        with Image.open(io.BytesIO(data), formats=_FORMATS) as opened:
            # The size stands in the head of a file: what is too large is never unpacked.
            too_large = opened.width * opened.height > MOST_PIXELS
            if not too_large and _as_we_write_it(opened, data):
                opened.load()
                return data
            picture = None if too_large else ImageOps.exif_transpose(opened).convert("RGBA")
    except Exception as error:  # the readers raise whatever they like for a broken file
        raise Refusal(
            f"{quoted(name)} cannot be read as a picture", "save it again as JPEG, PNG or WebP"
        ) from error
    if picture is None:
        raise Refusal(
            f"{quoted(name)} has over {MOST_PIXELS // 1_000_000} million pixels",
            "save a smaller one",
        )
    picture.thumbnail((WIDEST, WIDEST))
    paper = Image.new("RGB", picture.size, "#ffffff")
    paper.paste(picture, mask=picture.getchannel("A"))
    out = io.BytesIO()
    paper.save(out, "JPEG", quality=QUALITY, optimize=True)
    return out.getvalue()
