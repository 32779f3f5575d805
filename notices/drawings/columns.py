"""How the parts of a section stand side by side, on a page and on a telephone."""

from __future__ import annotations

from dataclasses import dataclass, replace

from notices.drawings.ground import Frame
from notices.drawings.model import Drawing
from notices.drawings.sizes import BESIDE, Sizes
from notices.drawings.svg import document, text

HEAD = 17.0
"""Size of the words above the panels."""
RULER = 40.0
"""Width of the ruler on the left."""


@dataclass(frozen=True, slots=True)
class Columns:
    """How wide the parts of a section are."""

    width: float
    """Width of the whole."""
    before: float
    """The panel before the work."""
    measure: float
    """One work: room between the panels, where its depth is written."""
    labels: float
    """Several works: room beside the panels for what is said of them."""
    numbered: bool = False
    """Whether there are only numbers beside the panels, and a key below them."""
    deepest: float = 380.0
    """Several works: how high the deepest of them may be drawn."""


@dataclass(frozen=True, slots=True)
class Picture:
    """What is drawn in a section."""

    content: str
    height: float
    scale: float
    """Units of the drawing to a millimetre."""
    said: str = ""
    """What the words on it leave out, for those who do not see it."""


_ON_PAGE = Columns(480.0, before=84.0, measure=92.0, labels=134.0)
_ON_PHONE = Columns(328.0, before=72.0, measure=80.0, labels=16.0, numbered=True)
"""Each in the size of its letters: half of a page is enough, and a telephone has no more."""
_BESIDE = replace(_ON_PHONE, deepest=240.0)
"""As narrow as a telephone, and lower, since a page has a bottom."""


def columns_for(sizes: Sizes) -> Columns:
    """Return the columns that suit where a drawing is to be seen."""
    if sizes is BESIDE:
        return _BESIDE
    return _ON_PAGE if sizes.width >= _ON_PAGE.width else _ON_PHONE


def framed(
    picture: Picture, columns: Columns, name: str, title: str, description: str, caption: str
) -> Drawing:
    """Make a drawing of what is drawn: as wide as its columns, with its scale and what it shows."""
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
    """Write above each panel which it is."""
    return text("Before", (frame.before.x, HEAD), HEAD, bold=True) + text(
        "After", (frame.after.x, HEAD), HEAD, bold=True
    )
