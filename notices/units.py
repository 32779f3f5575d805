"""Exact conversions between the units people write and the metric units computed in.

Every constant is exact by definition [definition]_; areas, volumes and rates are derived
from length and mass, so that no two of them can disagree.
"""

from __future__ import annotations

MM_PER_INCH = 25.4
KG_PER_LB = 0.45359237

M_PER_FOOT = 0.3048
M_PER_YARD = 0.9144
KM_PER_MILE = 1.609344

M2_PER_FT2 = 0.09290304
M2_PER_YD2 = 0.83612736
FT2_PER_ACRE = 43_560
M2_PER_ACRE = FT2_PER_ACRE * M2_PER_FT2
M2_PER_HECTARE = 10_000

FT3_PER_YD3 = 27
M3_PER_FT3 = M2_PER_FT2 * M_PER_FOOT
M3_PER_YD3 = FT3_PER_YD3 * M3_PER_FT3

LB_PER_US_TON = 2_000
KG_PER_US_TON = LB_PER_US_TON * KG_PER_LB

KG_PER_M2_PER_LB_PER_1000_FT2 = KG_PER_LB / (1_000 * M2_PER_FT2)
MM_PER_FT3_PER_1000_FT2 = M_PER_FOOT  # a foot spread over 1,000 is a thousandth of a foot
T_PER_M3_PER_LB_PER_FT3 = KG_PER_LB / M3_PER_FT3 / 1_000


def inches_to_mm(inches: float) -> float:
    """Convert inches to millimetres."""
    return inches * MM_PER_INCH


def mm_to_inches(mm: float) -> float:
    """Convert millimetres to inches."""
    return mm / MM_PER_INCH


def feet_to_m(feet: float) -> float:
    """Convert feet to metres."""
    return feet * M_PER_FOOT


def m_to_feet(m: float) -> float:
    """Convert metres to feet."""
    return m / M_PER_FOOT


def yards_to_m(yards: float) -> float:
    """Convert yards to metres."""
    return yards * M_PER_YARD


def m_to_yards(m: float) -> float:
    """Convert metres to yards."""
    return m / M_PER_YARD


def ft2_to_m2(ft2: float) -> float:
    """Convert square feet to square metres."""
    return ft2 * M2_PER_FT2


def m2_to_ft2(m2: float) -> float:
    """Convert square metres to square feet."""
    return m2 / M2_PER_FT2


def yd2_to_m2(yd2: float) -> float:
    """Convert square yards to square metres."""
    return yd2 * M2_PER_YD2


def m2_to_yd2(m2: float) -> float:
    """Convert square metres to square yards."""
    return m2 / M2_PER_YD2


def acres_to_m2(acres: float) -> float:
    """Convert acres to square metres."""
    return acres * M2_PER_ACRE


def m2_to_acres(m2: float) -> float:
    """Convert square metres to acres."""
    return m2 / M2_PER_ACRE


def hectares_to_m2(hectares: float) -> float:
    """Convert hectares to square metres."""
    return hectares * M2_PER_HECTARE


def m2_to_hectares(m2: float) -> float:
    """Convert square metres to hectares."""
    return m2 / M2_PER_HECTARE


def ft3_to_m3(ft3: float) -> float:
    """Convert cubic feet to cubic metres."""
    return ft3 * M3_PER_FT3


def m3_to_ft3(m3: float) -> float:
    """Convert cubic metres to cubic feet."""
    return m3 / M3_PER_FT3


def yd3_to_m3(yd3: float) -> float:
    """Convert cubic yards to cubic metres."""
    return yd3 * M3_PER_YD3


def m3_to_yd3(m3: float) -> float:
    """Convert cubic metres to cubic yards."""
    return m3 / M3_PER_YD3


def lb_to_kg(lb: float) -> float:
    """Convert pounds to kilograms."""
    return lb * KG_PER_LB


def kg_to_lb(kg: float) -> float:
    """Convert kilograms to pounds."""
    return kg / KG_PER_LB


def us_tons_to_t(us_tons: float) -> float:
    """Convert US (short) tons to tonnes."""
    return us_tons * KG_PER_US_TON / 1_000


def t_to_us_tons(t: float) -> float:
    """Convert tonnes to US (short) tons."""
    return t * 1_000 / KG_PER_US_TON


def lb_per_1000_ft2_to_kg_per_m2(lb_per_1000_ft2: float) -> float:
    """Convert pounds per 1,000 square feet to kilograms per square metre."""
    return lb_per_1000_ft2 * KG_PER_M2_PER_LB_PER_1000_FT2


def kg_per_m2_to_lb_per_1000_ft2(kg_per_m2: float) -> float:
    """Convert kilograms per square metre to pounds per 1,000 square feet."""
    return kg_per_m2 / KG_PER_M2_PER_LB_PER_1000_FT2


def ft3_per_1000_ft2_to_mm(ft3_per_1000_ft2: float) -> float:
    """Convert cubic feet of sand per 1,000 square feet to millimetres of depth."""
    return ft3_per_1000_ft2 * MM_PER_FT3_PER_1000_FT2


def mm_to_ft3_per_1000_ft2(mm: float) -> float:
    """Convert millimetres of depth to cubic feet of sand per 1,000 square feet."""
    return mm / MM_PER_FT3_PER_1000_FT2


def lb_per_ft3_to_t_per_m3(lb_per_ft3: float) -> float:
    """Convert a density in pounds per cubic foot to tonnes per cubic metre."""
    return lb_per_ft3 * T_PER_M3_PER_LB_PER_FT3


def t_per_m3_to_lb_per_ft3(t_per_m3: float) -> float:
    """Convert a density in tonnes per cubic metre to pounds per cubic foot."""
    return t_per_m3 / T_PER_M3_PER_LB_PER_FT3


def mph_to_km_per_h(mph: float) -> float:
    """Convert miles per hour to kilometres per hour."""
    return mph * KM_PER_MILE


def km_per_h_to_mph(km_per_h: float) -> float:
    """Convert kilometres per hour to miles per hour."""
    return km_per_h / KM_PER_MILE


def fahrenheit_to_celsius(fahrenheit: float) -> float:
    """Convert a temperature (not a difference) from °F to °C."""
    return (fahrenheit - 32) * 5 / 9


def celsius_to_fahrenheit(celsius: float) -> float:
    """Convert a temperature (not a difference) from °C to °F."""
    return celsius * 9 / 5 + 32
