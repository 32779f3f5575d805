"""The club's own logo: as large as its letters, clear where it was clear, and seen on paper."""

from __future__ import annotations

import base64
import io
import struct
from pathlib import Path
from typing import TYPE_CHECKING

from notices.plan.beside import read_beside
from notices.plan.nearest import quoted
from notices.plan.photographs import LARGEST, on_paper, picture_bytes, read_picture, upright
from notices.plan.refusal import Refusal

if TYPE_CHECKING:
    from PIL import Image

WIDEST, HIGHEST = 800, 300
"""Pixels that are kept: 300 to the inch in the head of the largest sheet."""

FAINT = 16
"""Of 255: what differs less from white is not seen on paper."""

_HEAD = "data:image/png;base64,"
_DRAWN = (".svg", ".svgz", ".pdf", ".eps", ".ai")


def read_logo(folder: Path, name: str) -> str:
    """Return a logo as the canonical form has it: a PNG in a data URL (RFC 2397).

    What is empty around it falls away, so that every logo fills the place that it is given. One in
    canonical form comes back as it is.

    Parameters
    ----------
    folder
        Where the plan lies.
    name
        Of a file beside it, in JPEG, PNG or WebP, or a logo in canonical form.

    Raises
    ------
    Refusal
        When there is no such file, or it is no such picture, or nothing of it shows on paper.
    """
    if name.startswith(_HEAD):
        name, data = "the logo", picture_bytes(name)
    else:
        # A drawing may draw on other files and take for ever: only pictures are safe to open.
        if name.lower().endswith(_DRAWN):
            raise Refusal(
                f"{quoted(name)} is a drawing, and a logo must be a picture",
                f"save it as PNG, about {WIDEST} pixels wide",
            )
        data = read_beside(
            folder, name, what="a logo", largest=LARGEST, otherwise="save a smaller one"
        )
    picture = read_picture(name, data, lambda opened: _trimmed(name, upright(opened)))
    picture.thumbnail((WIDEST, HIGHEST))
    out = io.BytesIO()
    # Its edges may have become faint by being made smaller.
    _trimmed(name, picture).save(out, "PNG", optimize=True)
    return _HEAD + base64.b64encode(out.getvalue()).decode("ascii")


def size_of_logo(logo: str) -> tuple[int, int]:
    """Return width and height of a logo in canonical form [pixels]: a PNG begins with them."""
    begin = base64.b64decode(logo.removeprefix(_HEAD)[: 4 * _BEGIN // 3])
    width, height = struct.unpack(">II", begin[_BEGIN - 8 : _BEGIN])
    return width, height


_BEGIN = 24
"""Bytes: a mark of eight, length and name of the first part, width and height (PNG, 5.2 and 11.2.2)."""


def _trimmed(name: str, picture: Image.Image) -> Image.Image:
    from PIL import ImageOps  # noqa: PLC0415, only who has a logo waits for it

    seen = ImageOps.invert(on_paper(picture).convert("L")).point(
        lambda value: 255 if value >= FAINT else 0
    )
    box = seen.getbbox()
    if box is None:
        raise Refusal(f"nothing of {quoted(name)} shows on white paper", "save it in a dark colour")
    return picture.crop(box)
