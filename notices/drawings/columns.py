"""Widths of the parts of a section side by side, on a page and on a telephone."""

from __future__ import annotations

from dataclasses import dataclass, replace

from notices.drawings.ground import Frame
from notices.drawings.model import Drawing
from notices.drawings.sizes import BESIDE, Sizes
from notices.drawings.svg import document, text

HEAD = 17.0
"""Font size of the words above the panels."""
RULER = 40.0
"""Width of the ruler on the left."""


@dataclass(frozen=True, slots=True)
class Columns:
    """Widths of the parts of a section."""

    width: float
    """Width of the whole drawing."""
    before: float
    """Width of the panel before the work."""
    measure: float
    """Width between the panels of a section of one work, for its depth."""
    labels: float
    """Width beside the panels of a section of several works, for their labels."""
    numbered: bool = False
    """Whether the labels are numbers, with a key below the panels."""
    deepest: float = 380.0
    """Largest height of the deepest opening in a section of several works."""


@dataclass(frozen=True, slots=True)
class Picture:
    """The SVG of a section with its height, scale and description."""

    content: str
    height: float
    scale: float
    """Units of the drawing to a millimetre."""
    said: str = ""
    """Further description for people who cannot see it."""


_ON_PAGE = Columns(480.0, before=84.0, measure=92.0, labels=134.0)
_ON_PHONE = Columns(328.0, before=72.0, measure=80.0, labels=16.0, numbered=True)
"""Columns wide enough for their letters: part of a page will do, and a telephone has no more."""
_BESIDE = replace(_ON_PHONE, deepest=240.0)
"""Columns as narrow as on a telephone, and less high, since a page has a bottom."""


def columns_for(sizes: Sizes) -> Columns:
    """Return the columns for a size of drawing."""
    if sizes is BESIDE:
        return _BESIDE
    return _ON_PAGE if sizes.width >= _ON_PAGE.width else _ON_PHONE


def framed(
    picture: Picture, columns: Columns, name: str, title: str, description: str, caption: str
) -> Drawing:
    """Wrap a picture's SVG in a Drawing with its scale, title, description and caption."""
    svg = document(
        columns.width,
        picture.height,
        title,
        picture.content,
        description=description,
        data_scale=f"{picture.scale:.6f}",
    )
    return Drawing(name, title, description, svg, columns.width, picture.height, caption)


def heads(frame: Frame) -> str:
    """Return the words "Before" and "After" above the panels."""
    return text("Before", (frame.before.x, HEAD), HEAD, bold=True) + text(
        "After", (frame.after.x, HEAD), HEAD, bold=True
    )
