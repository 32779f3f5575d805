"""Photographs beside the plan: turned upright, without what a camera adds, and not too large.

A camera writes into a file where it was taken. None of that goes on: only the picture does.
"""

from __future__ import annotations

import base64
import io
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

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
_Taken = TypeVar("_Taken")
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
    picture = read_picture(name, data, lambda opened: _as_jpeg(opened, data))
    return _HEAD + base64.b64encode(picture).decode("ascii")


def check_picture(text: str) -> None:
    """Check a picture that stands in the plan itself.

    Raises
    ------
    Refusal
        When it cannot be shown.
    """
    data = picture_bytes(text)
    read_picture("the picture", data, lambda opened: _as_jpeg(opened, data))


def picture_bytes(text: str) -> bytes:
    """Return the file that a picture in the canonical form holds.

    Raises
    ------
    Refusal
        When it holds none, since somebody may have written it by hand.
    """
    try:
        return base64.b64decode(text.partition(",")[2], validate=True)
    except ValueError:
        raise Refusal("this picture cannot be read", "name a file beside the plan") from None


def read_picture(name: str, data: bytes, take: Callable[[Image.Image], _Taken]) -> _Taken:
    """Open a picture and return what is taken from it.

    Parameters
    ----------
    name
        By which it is told of.
    data
        The file: JPEG, PNG or WebP.
    take
        What to do with the picture while it is open.

    Raises
    ------
    Refusal
        When it is no such picture, or one that would fill the memory.
    """
    from PIL import Image  # noqa: PLC0415, only who has pictures waits for it

    try:
        with Image.open(io.BytesIO(data), formats=_FORMATS) as opened:
            # The size stands in the head of a file: what is too large is never unpacked.
            if opened.width * opened.height <= MOST_PIXELS:
                return take(opened)
    except Refusal:
        raise
    except Exception as error:  # the readers raise whatever they like for a broken file
        raise Refusal(
            f"{quoted(name)} cannot be read as a picture", "save it again as JPEG, PNG or WebP"
        ) from error
    raise Refusal(
        f"{quoted(name)} has over {MOST_PIXELS // 1_000_000} million pixels", "save a smaller one"
    )


def upright(opened: Image.Image) -> Image.Image:
    """Return a picture as it was seen, in four channels."""
    from PIL import ImageOps  # noqa: PLC0415, see above

    seen = ImageOps.exif_transpose(opened)
    if seen.mode.startswith("I"):  # greys in sixteen bits, which Pillow would cut off at 255
        seen = seen.convert("I").point(lambda value: value * (1 / 257)).convert("L")
    return seen.convert("RGBA")


def on_paper(picture: Image.Image) -> Image.Image:
    """Return a picture on white, without what was clear."""
    from PIL import Image  # noqa: PLC0415, see above

    paper = Image.new("RGB", picture.size, "#ffffff")
    paper.paste(picture, mask=picture.getchannel("A"))
    return paper


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


def _as_jpeg(opened: Image.Image, data: bytes) -> bytes:
    if _as_we_write_it(opened, data):
        opened.load()
        return data
    picture = upright(opened)
    picture.thumbnail((WIDEST, WIDEST))
    out = io.BytesIO()
    on_paper(picture).save(out, "JPEG", quality=QUALITY, optimize=True)
    return out.getvalue()
