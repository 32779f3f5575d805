"""Quantities rounded for a committee; the exact figures are in programme.json."""

from __future__ import annotations

import datetime as dt
import math

from notices.units import m2_to_ft2, m3_to_yd3, m_to_feet
from notices.wording import measures

MILLION = 1_000_000
FEET_PER_MILE = 5_280
_DIGITS = 2
"""Significant digits of a count."""
_WHOLE_FROM = 10.0
"""Amount from which tenths are left out."""


def count(number: float) -> str:
    """Write a count, such as "3.6 million", "450,000" or "640"."""
    if number >= MILLION:
        return f"{number / MILLION:.1f} million"
    if number < 100:
        return f"{number:,.0f}"
    digits = _DIGITS - 1 - math.floor(math.log10(number))
    return f"{round(number, digits):,.0f}"


def percent(share: float) -> str:
    """Write a percentage, such as "5.3 %"."""
    return f"{share:.1f} %"


def volume(m3: float, units: str) -> str:
    """Write a volume, such as "21 m³", "2.2 m³" or "26 cubic yards"."""
    if units == "imperial":
        return f"{_short(m3_to_yd3(m3))} cubic yards"
    return f"{_short(m3)} m³"


def mass(tonnes: float, units: str) -> str:
    """Write a mass, such as "98 t", "7.8 t" or "66 tons"."""
    amount, unit = measures.mass(tonnes, units)
    return f"{_short(amount)} {unit}"


def distance(metres: float, units: str) -> str:
    """Write a distance, such as "8.6 km", "160 m", "5.3 miles" or "510 feet"."""
    if units == "imperial":
        feet = m_to_feet(metres)
        return (
            f"{_short(feet / FEET_PER_MILE)} miles"
            if feet >= FEET_PER_MILE / 2
            else f"{count(feet)} feet"
        )
    return f"{_short(metres / 1000)} km" if metres >= 1000 else f"{count(metres)} m"


def area(m2: float, units: str) -> str:
    """Write an area, such as "60 m²" or "650 square feet"."""
    if units == "imperial":
        return f"{count(m2_to_ft2(m2))} square feet"
    return f"{m2:,.0f} m²"


def formula(written: str, units: str) -> str:
    """Return the formula of a metric figure, converted to the units of a club.

    144 square inches are a square foot. A rate per 1,000 square feet takes the place of a
    thousandth of a rate per square metre, so that only lengths differ.
    """
    if units != "imperial":
        return written
    for metric, inches in _IN_INCHES:
        written = written.replace(metric, inches)
    return written


_IN_INCHES = (
    ("1,000,000 ÷", "144 ÷"),
    ("depth ÷ 1000", "depth ÷ 12"),
    ("blade spacing ÷ 1000", "blade spacing ÷ 12"),
)
"""Metric parts of a formula, which turn mm into m, with those that turn inches into feet."""


def hours(amount: float) -> str:
    """Write a number of hours, such as "41" or "5.5"."""
    return _short(amount)


def time_of_day(minutes: float) -> dt.time:
    """Return minutes from midnight as a time of day, at latest the last minute of the day."""
    whole = min(math.floor(minutes + 0.5), 24 * 60 - 1)
    return dt.time(whole // 60, whole % 60)


def _short(amount: float) -> str:
    return f"{amount:,.0f}" if amount >= _WHOLE_FROM else f"{amount:.1f}"
