"""Exact conversions from the metric units computed in to the units that people read.

Every constant is exact by definition [definition]_; volumes and rates are derived from length,
area and mass, so that no two of them can disagree. What people type is read by
``plan/quantities.py``, in fractions.
"""

from __future__ import annotations

MM_PER_INCH = 25.4
KG_PER_LB = 0.45359237

M_PER_FOOT = 0.3048
KM_PER_MILE = 1.609344

M2_PER_FT2 = 0.09290304
M2_PER_HECTARE = 10_000

FT3_PER_YD3 = 27
M3_PER_FT3 = M2_PER_FT2 * M_PER_FOOT
M3_PER_YD3 = FT3_PER_YD3 * M3_PER_FT3

LB_PER_US_TON = 2_000
KG_PER_US_TON = LB_PER_US_TON * KG_PER_LB

KG_PER_M2_PER_LB_PER_1000_FT2 = KG_PER_LB / (1_000 * M2_PER_FT2)
MM_PER_FT3_PER_1000_FT2 = M_PER_FOOT  # a foot spread over 1,000 is a thousandth of a foot
T_PER_M3_PER_LB_PER_FT3 = KG_PER_LB / M3_PER_FT3 / 1_000


def mm_to_inches(mm: float) -> float:
    """Convert millimetres to inches."""
    return mm / MM_PER_INCH


def m_to_feet(m: float) -> float:
    """Convert metres to feet."""
    return m / M_PER_FOOT


def m2_to_ft2(m2: float) -> float:
    """Convert square metres to square feet."""
    return m2 / M2_PER_FT2


def m3_to_ft3(m3: float) -> float:
    """Convert cubic metres to cubic feet."""
    return m3 / M3_PER_FT3


def m3_to_yd3(m3: float) -> float:
    """Convert cubic metres to cubic yards."""
    return m3 / M3_PER_YD3


def kg_to_lb(kg: float) -> float:
    """Convert kilograms to pounds."""
    return kg / KG_PER_LB


def t_to_us_tons(t: float) -> float:
    """Convert tonnes to US (short) tons."""
    return t * 1_000 / KG_PER_US_TON


def kg_per_m2_to_lb_per_1000_ft2(kg_per_m2: float) -> float:
    """Convert kilograms per square metre to pounds per 1,000 square feet."""
    return kg_per_m2 / KG_PER_M2_PER_LB_PER_1000_FT2


def mm_to_ft3_per_1000_ft2(mm: float) -> float:
    """Convert millimetres of depth to cubic feet of sand per 1,000 square feet."""
    return mm / MM_PER_FT3_PER_1000_FT2


def t_per_m3_to_lb_per_ft3(t_per_m3: float) -> float:
    """Convert a density in tonnes per cubic metre to pounds per cubic foot."""
    return t_per_m3 / T_PER_M3_PER_LB_PER_FT3


def km_per_h_to_mph(km_per_h: float) -> float:
    """Convert kilometres per hour to miles per hour."""
    return km_per_h / KM_PER_MILE


def celsius_to_fahrenheit(celsius: float) -> float:
    """Convert a temperature (not a difference) from °C to °F."""
    return celsius * 9 / 5 + 32
