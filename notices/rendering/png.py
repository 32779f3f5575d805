"""PNG files of drawings for email: most mail programs show neither SVG nor data: images."""

from __future__ import annotations

import io
import pathlib
from collections.abc import Sequence

import resvg_py
from PIL import Image

_COLOURS = 64
"""Colours in the palette: a third of the bytes of full colour, without visible loss in drawings."""


def svg_to_png(svg: str, *, width_px: int, fonts: Sequence[pathlib.Path]) -> bytes:
    """Draw an SVG as a PNG on white, in few colours, with the given fonts only.

    On a transparent ground, a mail program in dark mode would show dark lines on a dark page.

    Parameters
    ----------
    svg
        Drawing. Text appears only where font-family is the name inside one of the fonts.
    width_px
        Width of the PNG in its own pixels; the height follows.
    fonts
        Font files. System fonts are never used, so that the PNG is the same everywhere.

    Returns
    -------
    bytes
        The PNG file, without metadata; the same for the same input.

    Raises
    ------
    FileNotFoundError
        If a font file is missing: the drawing would silently lose its text.
    ValueError
        If the drawing cannot be read.
    """
    for font in fonts:
        if not font.is_file():
            raise FileNotFoundError(font)
    drawn = resvg_py.svg_to_bytes(
        svg_string=svg,
        width=width_px,
        dpi=96,  # without it a size in millimetres is ignored
        background="#ffffff",
        skip_system_fonts=True,
        font_files=[str(font) for font in fonts],
    )
    with Image.open(io.BytesIO(drawn)) as picture:
        return in_few_colours(picture)


def in_few_colours(picture: Image.Image) -> bytes:
    """Return a small PNG file of a picture with flat areas, without metadata."""
    # No dithering: flat areas stay flat, and the file stays small.
    flat = picture.convert("RGB").quantize(
        _COLOURS, method=Image.Quantize.MEDIANCUT, dither=Image.Dither.NONE
    )
    out = io.BytesIO()
    # Level 9 takes twice as long to save a fiftieth of the bytes.
    flat.save(out, "PNG", compress_level=8)
    return out.getvalue()
