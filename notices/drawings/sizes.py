"""How wide a drawing is made: letters are as large on a telephone as on a page."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Sizes:
    """Where a drawing is to be seen."""

    width: float
    """Width in CSS pixels."""
    suffix: str = ""
    """Added to the name of the drawing."""


PAGE = Sizes(680.0)
"""As wide as A4 between margins of 15 mm, and for wide screens."""
SHEET = Sizes(800.0, "-sheet")
"""A page on which much stands: set at 85 %, so that letters of 12 pixels are 7.6 points high."""
BESIDE = Sizes(328.0)
"""Half of a sheet, beside another drawing: drawn as for a telephone, since it is as narrow."""
PHONE = Sizes(328.0, "-phone")
"""As wide as a telephone held upright, with a little room beside it."""
