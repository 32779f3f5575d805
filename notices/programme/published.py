"""What has been published on a whole year of work: to compare with, never a target to reach."""

from __future__ import annotations

from dataclasses import dataclass

from notices.agronomy.sand import YEAR_TOTAL_KG_M2, YEAR_TOTALS_MM


@dataclass(frozen=True, slots=True)
class PublishedTotal:
    """What one source names for a year."""

    source: str
    """Key of the bibliography in notices.references."""
    by: str
    """Who says it, and when."""
    low: float
    high: float
    open_ended: bool = False
    """Whether the lower end is the least, and the upper one the best."""
    cubic_feet: tuple[float, float] | None = None
    """Of sand, as published: on 1,000 square feet."""


SURFACE_PERCENT = (
    PublishedTotal("hartwiger_obrien2001", "Hartwiger and O’Brien 2001", 15.0, 20.0),
    PublishedTotal("woods2009", "Woods 2009", 10.0, 20.0, open_ended=True),
)
"""Part of the surface that the holes of coring open in a year [%]; slits are not in it. Since 2019 Woods names none, and
lets measured organic matter decide [woods2019]_."""

_BY = {
    "obrien_hartwiger2003": "O’Brien and Hartwiger 2003",
    "whitlark_thompson2019": "Whitlark and Thompson 2019",
}

_CUBIC_FEET = {"obrien_hartwiger2003": (40.0, 50.0), "whitlark_thompson2019": (25.0, 35.0)}

SAND_MM = tuple(
    PublishedTotal(key, _BY[key], low, high, cubic_feet=_CUBIC_FEET[key])
    for key, (low, high) in YEAR_TOTALS_MM.items()
)
"""Depth of sand in a year [mm]."""

SAND_KG_M2 = PublishedTotal("uk_trade_press", "British trade press", *YEAR_TOTAL_KG_M2)
"""Mass of sand in a year [kg/m²]."""
