"""Sizes and shares as a golfer pictures them; the exact figures are in programme.json."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from fractions import Fraction

from notices.units import (
    MM_PER_FT3_PER_1000_FT2,
    kg_per_m2_to_lb_per_1000_ft2,
    mm_to_inches,
    t_to_us_tons,
)
from notices.wording.lists import number, span

_WIDTHS = (
    (2.5, "no wider than the edge of a coin"),
    (5.0, "about as wide as a shoelace"),
    (8.0, "about as wide as a pencil"),
    (11.0, "about as wide as your little finger"),
    (16.0, "about as wide as a finger"),
    (24.0, "about as wide as a thumb"),
    (35.0, "about as wide as a broom handle"),
)

_SHARES = (
    (0.9, "less than one part in a hundred"),
    (1.12, "about one-hundredth"),
    (1.46, "about one-eightieth"),
    (1.8, "about one-sixtieth"),
    (2.25, "about one-fiftieth"),
    (2.9, "about one-fortieth"),
    (3.7, "about one-thirtieth"),
    (4.4, "about one twenty-fifth"),
    (5.8, "about one-twentieth"),
    (7.5, "about one-fifteenth"),
    (9.1, "about one-twelfth"),
    (11.2, "about one-tenth"),
    (14.6, "about one-eighth"),
    (18.0, "about one-sixth"),
    (22.3, "about one-fifth"),
    (29.0, "about one-quarter"),
    (36.5, "about one-third"),
    (44.0, "about two-fifths"),
    (58.0, "about half"),
)
"""Fractions by the percentage up to which they are used, always within 15 % of the value."""


def like(width_mm: float) -> str:
    """Return a comparison of a width with a familiar thing."""
    return next((words for limit, words in _WIDTHS if width_mm <= limit), "as wide as a fist")


def share(percent: float) -> str:
    """Return a share of the surface as a plain fraction in words."""
    return next((words for limit, words in _SHARES if percent <= limit), "more than half")


def length(mm: float, units: str = "metric") -> str:
    """Write a length in practical units: 13 mm, 22.5 cm, 1 m; 1/2 inch, 9 inches."""
    if units == "imperial":
        return _imperial(mm)
    # The unit is chosen after rounding: 999.9 mm is 1 m, not 100 cm.
    if round(mm / 10, 1) >= 100:
        return f"{_plain(mm / 1000)} m"
    if round(mm, 1) >= 100:
        return f"{_plain(mm / 10)} cm"
    return f"{_plain(mm)} mm"


_MEASURED = re.compile(r"(?:(\d+(?:\.\d+)?) to )?(\d+(?:\.\d+)?) (mm|kg/m²)(?!\w)")


def in_units(text: str, units: str) -> str:
    """Return a text with lengths and rates in a club's units: "10 to 15 mm"; "3/8 to 5/8 inch"."""
    if units != "imperial":
        return text

    def converted(match: re.Match[str]) -> str:
        low, high, unit = match.groups()
        said = [_converted(float(value), unit) for value in (low, high) if value]
        return f"{said[0][0]} to {' '.join(said[1])}" if low else " ".join(said[0])

    return _MEASURED.sub(converted, text)


def _converted(value: float, unit: str) -> tuple[str, str]:
    if unit == "kg/m²":
        return f"{kg_per_m2_to_lb_per_1000_ft2(value):,.0f}", "lb per 1,000 square feet"
    amount, _, inches = _imperial(value).rpartition(" ")
    return amount, inches


def _plain(amount: float) -> str:
    return f"{amount:.1f}".removesuffix(".0")


def mass(tonnes: float, units: str = "metric") -> tuple[float, str]:
    """Return a mass of sand with the unit in which it is bought: tonnes or US tons."""
    return (t_to_us_tons(tonnes), "tons") if units == "imperial" else (tonnes, "t")


def sand_in_year(mm: float, units: str = "metric") -> tuple[float, str]:
    """Return a year's sand with its usual unit: mm, or cubic feet per 1,000 square feet."""
    if units == "imperial":
        return mm / MM_PER_FT3_PER_1000_FT2, "cubic feet per 1,000 square feet"
    return mm, "mm"


_FINENESS = ((1.0, 16), (3.0, 8), (12.0, 2), (float("inf"), 1))
"""Upper limits of a length in inches, with the parts of an inch to which it is rounded."""

_FRACTIONS = {"1/2": "½", "1/4": "¼", "3/4": "¾"}
"""Fractions that our fonts have; others are written out."""


_NOT_ON_A_RULE = 0.15
"""Largest error of the finest mark, as a share of the length; above it decimals are used."""


def _imperial(mm: float) -> str:
    inches = mm_to_inches(mm)
    finest = max(1, round(inches * _FINENESS[0][1])) / _FINENESS[0][1]
    if abs(finest - inches) > _NOT_ON_A_RULE * inches and round(inches, 2):
        return f"{inches:.2f} inch"
    parts = next(parts for limit, parts in _FINENESS if inches <= limit)
    # At least the finest mark of the rule: no work is 0 inches deep.
    whole, rest = divmod(max(Fraction(round(inches * parts), parts), Fraction(1, 16)), 1)
    feet, odd = divmod(whole, 12)
    if feet >= 3 and not odd and not rest:
        return f"{feet} feet"
    fraction = _FRACTIONS.get(str(rest), str(rest)) if rest else ""
    joint = "" if fraction in _FRACTIONS.values() else " "
    amount = f"{whole}{joint}{fraction}".strip() if whole else fraction
    return f"{amount} inch" if whole + rest <= 1 else f"{amount} inches"


def weeks(days: Sequence[int]) -> str:
    """Return a span of days in everyday words: "two to four weeks", "a day or two"."""
    low, high = min(days), max(days)
    if high <= 2:
        return "a day" if low == high == 1 else "a day or two"
    if low >= 6 and high <= 8:
        return "about a week"
    if high <= 10:
        if low == 0:
            return f"up to {number(high)} days"
        return f"{span(low, high)} days" if low != high else f"about {number(low)} days"
    first, last = max(1, round(low / 7)), max(1, round(high / 7))
    if first == last:
        return "about a week" if first == 1 else f"about {number(first)} weeks"
    return f"{span(first, last)} weeks"


_HALF_HOUR = 30
_LONGEST_SAID = 6
"""Longest time stated, in half hours; a longer one is a part of the day."""


def up_to(minutes: float) -> str:
    """Return the longest duration, to the half hour; empty if it is most of a morning."""
    if minutes > _LONGEST_SAID * _HALF_HOUR:
        return ""
    halves = max(1, math.ceil(round(minutes / _HALF_HOUR, 3)))
    hours, half = divmod(halves, 2)
    if not hours:
        return "up to half an hour"
    if hours == 1:
        return "up to an hour and a half" if half else "up to an hour"
    return f"up to {number(hours)}{' and a half' if half else ''} hours"
