"""Photographs scaled to the size that each medium shows."""

from __future__ import annotations

import base64
import io
from functools import lru_cache

from PIL import Image

QUALITY = 76


@lru_cache(maxsize=64)  # several documents show the same photographs
def scaled(data: str, width: int) -> bytes:
    """Return the JPEG of a data URL, scaled down to at most ``width`` pixels."""
    content = base64.b64decode(data.partition(",")[2])
    with Image.open(io.BytesIO(content)) as picture:
        if picture.width <= width:
            return content
        height = round(picture.height * width / picture.width)
        smaller = picture.resize((width, height), Image.Resampling.LANCZOS)
    out = io.BytesIO()
    smaller.save(out, "JPEG", quality=QUALITY, optimize=True)
    return out.getvalue()


def as_data(data: str, width: int) -> str:
    """Return a photograph's data URL, scaled down to at most ``width`` pixels."""
    return f"data:image/jpeg;base64,{base64.b64encode(scaled(data, width)).decode('ascii')}"
