"""Quantities as a committee reads them, rounded; the exact figures stay in programme.json."""

from __future__ import annotations

import datetime as dt
import math

from notices.units import m2_to_ft2, m3_to_yd3, m_to_feet
from notices.wording import measures

MILLION = 1_000_000
FEET_PER_MILE = 5_280
_DIGITS = 2
"""So many digits of a count are worth reading."""
_WHOLE_FROM = 10.0
"""From here on, tenths are not worth reading."""


def count(number: float) -> str:
    """3.6 million; 450,000; 640."""
    if number >= MILLION:
        return f"{number / MILLION:.1f} million"
    if number < 100:
        return f"{number:,.0f}"
    digits = _DIGITS - 1 - math.floor(math.log10(number))
    return f"{round(number, digits):,.0f}"


def percent(share: float) -> str:
    """5.3 %."""
    return f"{share:.1f} %"


def volume(m3: float, units: str) -> str:
    """21 m³; 2.2 m³; 26 cubic yards."""
    if units == "imperial":
        return f"{_short(m3_to_yd3(m3))} cubic yards"
    return f"{_short(m3)} m³"


def mass(tonnes: float, units: str) -> str:
    """98 t; 7.8 t; 66 tons."""
    amount, unit = measures.mass(tonnes, units)
    return f"{_short(amount)} {unit}"


def distance(metres: float, units: str) -> str:
    """8.6 km; 160 m; 5.3 miles; 464 miles; 510 feet."""
    if units == "imperial":
        feet = m_to_feet(metres)
        return (
            f"{_short(feet / FEET_PER_MILE)} miles"
            if feet >= FEET_PER_MILE / 2
            else f"{count(feet)} feet"
        )
    return f"{_short(metres / 1000)} km" if metres >= 1000 else f"{count(metres)} m"


def area(m2: float, units: str) -> str:
    """60 m²; 650 square feet."""
    if units == "imperial":
        return f"{count(m2_to_ft2(m2))} square feet"
    return f"{m2:,.0f} m²"


def formula(written: str, units: str) -> str:
    """Write the formula of a metric figure for the units of a club: 144 square inches are a square foot.

    A rate per 1,000 square feet stands where a metric formula has a thousandth of one per square
    metre, so that only lengths differ.
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
"""Where a formula turns millimetres into metres, inches are turned into feet."""


def hours(amount: float) -> str:
    """41; 5.5."""
    return _short(amount)


def time_of_day(minutes: float) -> dt.time:
    """Return minutes from midnight as a time of day; what comes after midnight is its last minute."""
    whole = min(math.floor(minutes + 0.5), 24 * 60 - 1)
    return dt.time(whole // 60, whole % 60)


def _short(amount: float) -> str:
    return f"{amount:,.0f}" if amount >= _WHOLE_FROM else f"{amount:.1f}"
