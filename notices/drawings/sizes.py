"""Widths of drawings for each medium; letters are as large on a telephone as on a page."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Sizes:
    """Width of a drawing for one medium, and the suffix of its name."""

    width: float
    """Width in CSS pixels."""
    suffix: str = ""
    """Added to the name of the drawing."""


PAGE = Sizes(680.0)
"""For wide screens, and A4 between margins of 15 mm."""
SHEET = Sizes(800.0, "-sheet")
"""For a crowded page: set at 85 %, so that letters of 12 pixels are 7.6 points high."""
BESIDE = Sizes(328.0)
"""For half of a sheet, beside another drawing: drawn as for a telephone, since it is as narrow."""
PHONE = Sizes(328.0, "-phone")
"""For a telephone held upright, with a little room at the sides."""
