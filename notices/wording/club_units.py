"""Metric amounts as a club that measures in inches reads them: its own unit, the metric beside.

Formulas work in metric units, and a figure keeps what it was worked out from. Whoever checks one
by hand has the club's numbers before him, so both are shown.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from notices import units

IMPERIAL: Mapping[str, tuple[str, Callable[[float], float]]] = {
    "mm": ("in", units.mm_to_inches),
    "mm/day": ("in/day", units.mm_to_inches),
    "m": ("ft", units.m_to_feet),
    "m²": ("sq ft", units.m2_to_ft2),
    "m³": ("cu ft", units.m3_to_ft3),
    "per m²": ("per sq ft", lambda per_m2: per_m2 / units.m2_to_ft2(1)),
    "L/m²": ("cu ft per 1,000 sq ft", units.mm_to_ft3_per_1000_ft2),  # a litre over 1 m² is 1 mm
    "kg/m²": ("lb per 1,000 sq ft", units.kg_per_m2_to_lb_per_1000_ft2),
    "kg": ("lb", units.kg_to_lb),
    "t": ("US tons", units.t_to_us_tons),
    "t/m³": ("lb/cu ft", units.t_per_m3_to_lb_per_ft3),
    "km/h": ("mph", units.km_per_h_to_mph),
    "°C": ("°F", units.celsius_to_fahrenheit),
}
"""What stands for each unit of a figure or an input, as `explain` writes it."""

DIGITS = 4
"""Significant ones of a converted number; the exact one stands beside it."""


def in_inches(value: float, unit: str, *, apart: bool = False, digits: int = DIGITS) -> str:
    """Return an amount in the unit that stands for a metric one; empty where none does.

    Parameters
    ----------
    value
        The amount.
    unit
        Its metric unit, as it is written.
    apart
        Whether it is a difference of two temperatures and not a temperature.
    digits
        How many significant digits are written.
    """
    if unit not in IMPERIAL:
        return ""
    said, convert = IMPERIAL[unit]
    converted = convert(value) - (convert(0) if apart else 0)
    return f"{float(f'{converted:.{digits}g}'):,.10g} {said}".replace("-", "−")
