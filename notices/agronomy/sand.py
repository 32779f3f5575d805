"""Sand: depth, mass and volume, what fills the holes, and how a fill is shared out.

Nothing here assumes a density: dry sand weighs 1.5 [woods2017]_ to 1.6 t/m³ [daniels2018]_,
moist sand bulks when loose and weighs more once settled, so whoever states a mass states the
density with it.

Yearly totals for scale: 12 to 15 mm [obrien_hartwiger2003]_, 7.6 to 10.7 mm
[whitlark_thompson2019]_. A dressing of about 3 kg/m² or more is hard to work in
[uk_trade_press]_, which also gives 2 to 8 kg/m² a year.
"""

from __future__ import annotations

import math

from notices.agronomy.limits import between, count, non_negative, positive

MOST_PER_DRESSING_KG_M2 = 3.0
"""From about here on a single dressing is hard to work in [uk_trade_press]_."""

MOST_ON_THE_SURFACE_KG_M2 = 1.0
"""The upper end of one dressing of a growing season [uk_trade_press]_."""

WASTE_FRACTION = 0.05
"""Part of an order that misses the holes [judgement]_."""

YEAR_TOTALS_MM = {"obrien_hartwiger2003": (12.0, 15.0), "whitlark_thompson2019": (7.6, 10.7)}
"""Depth of sand in a year by source [mm] [obrien_hartwiger2003]_, [whitlark_thompson2019]_."""

YEAR_TOTAL_KG_M2 = (2.0, 8.0)
"""Mass of sand in a year in Britain [kg/m²] [uk_trade_press]_."""

FILLED_DEPTH_OF_DEEP_HOLES_MM = 60.0
"""Of deep solid-tine holes only this much takes sand: below, clay closes [common_practice]_."""


def mass_kg_per_m2(depth_mm: float, density_t_m3: float) -> float:
    """Mass of a layer of sand: depth times density.

    Parameters
    ----------
    depth_mm : float
        Depth of the layer, 0 or more. [mm = L/m²]
    density_t_m3 : float
        Bulk density of the sand as delivered, above 0. [t/m³]

    Returns
    -------
    float
        Mass per area. [kg/m²]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [definition]_, checked against [woods2017]_ and [daniels2018]_.
    """
    return non_negative("depth_mm", depth_mm) * positive("density_t_m3", density_t_m3)


def depth_mm(mass_kg_per_m2: float, density_t_m3: float) -> float:
    """Depth of a layer of sand: mass divided by density.

    Parameters
    ----------
    mass_kg_per_m2 : float
        Mass per area, 0 or more. [kg/m²]
    density_t_m3 : float
        Bulk density of the sand, above 0. [t/m³]

    Returns
    -------
    float
        Depth. [mm = L/m²]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [definition]_, checked against [woods2017]_ and [daniels2018]_.
    """
    mass = non_negative("mass_kg_per_m2", mass_kg_per_m2)
    return mass / positive("density_t_m3", density_t_m3)


def mass_t(volume_m3: float, density_t_m3: float) -> float:
    """Mass of a heap of sand: volume times density.

    Parameters
    ----------
    volume_m3 : float
        Volume, 0 or more. [m³]
    density_t_m3 : float
        Bulk density of the sand, above 0. [t/m³]

    Returns
    -------
    float
        Mass. [t]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [definition]_
    """
    return non_negative("volume_m3", volume_m3) * positive("density_t_m3", density_t_m3)


def volume_m3(mass_t: float, density_t_m3: float) -> float:
    """Volume of a load of sand: mass divided by density.

    Parameters
    ----------
    mass_t : float
        Mass, 0 or more. [t]
    density_t_m3 : float
        Bulk density of the sand, above 0. [t/m³]

    Returns
    -------
    float
        Volume. [m³]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [definition]_
    """
    return non_negative("mass_t", mass_t) / positive("density_t_m3", density_t_m3)


def fill_volume_m3(
    open_volume_l_per_m2: float, area_m2: float, waste_fraction: float = WASTE_FRACTION
) -> float:
    r"""Sand to order so that the open holes of an area are full.

    .. math:: V = v \cdot A / 1000 \cdot (1 + w)

    Parameters
    ----------
    open_volume_l_per_m2 : float
        Volume of the openings, 0 or more; deep solid-tine holes count down to
        `FILLED_DEPTH_OF_DEEP_HOLES_MM` only. [L/m²]
    area_m2 : float
        Area, 0 or more. [m²]
    waste_fraction : float
        Part that misses the holes, 0 to 1; the default is a [judgement]_.

    Returns
    -------
    float
        Volume. [m³]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [definition]_
    """
    litres = non_negative("open_volume_l_per_m2", open_volume_l_per_m2) * non_negative(
        "area_m2", area_m2
    )
    return litres / 1_000 * (1 + between("waste_fraction", waste_fraction, 0, 1))


def dressing_shares(dressings: int, largest: float = 1.0) -> tuple[float, ...]:
    """Share out one fill over several visits: half at first, the rest in equal parts.

    Deep or many holes settle and take the first dressing plus two or three top-ups. Where half of
    the fill is more than can be worked in at once, and the visits are enough to do without, the
    first brings only what can be worked in.

    Parameters
    ----------
    dressings : int
        Number of visits in all, at least 1.
    largest : float
        Share of the fill that one visit can work in, above 0; 1 or more sets no limit.

    Returns
    -------
    tuple of float
        Fractions of the fill, in the order of the visits; they add up to 1.

    Raises
    ------
    ValueError
        If there is no visit, or nothing can be worked in.

    References
    ----------
    [common_practice]_
    """
    top_ups = count("dressings", dressings) - 1
    most = positive("largest", largest)
    if not top_ups:
        return (1.0,)
    first = most if most < 0.5 and most * dressings >= 1 else 0.5
    return (first, *((1 - first) / top_ups for _ in range(top_ups)))


def dressings_needed(total_kg_per_m2: float, most_per_dressing_kg_per_m2: float) -> int:
    """Fewest dressings that bring a rate when none may exceed what can be worked in.

    Rate divided by the most of one dressing, rounded up.

    Parameters
    ----------
    total_kg_per_m2 : float
        What all dressings bring, 0 or more. [kg/m²]
    most_per_dressing_kg_per_m2 : float
        What one can work in, above 0; usually `MOST_PER_DRESSING_KG_M2`. [kg/m²]

    Returns
    -------
    int
        Dressings, at least 1.

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [definition]_, with the limit of [uk_trade_press]_.
    """
    total = non_negative("total_kg_per_m2", total_kg_per_m2)
    most = positive("most_per_dressing_kg_per_m2", most_per_dressing_kg_per_m2)
    return max(1, math.ceil(round(total / most, 9)))


def on_surface_mm(brought_mm: float, open_mm: float) -> float:
    """Sand that stays on the surface: what is brought less what the open holes take.

    Parameters
    ----------
    brought_mm : float
        Depth of sand brought, 0 or more. [mm = L/m²]
    open_mm : float
        Volume of the holes that are still open, per area, 0 or more. [mm = L/m²]

    Returns
    -------
    float
        Depth of the layer, 0 or more. [mm]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [definition]_
    """
    return max(0.0, non_negative("brought_mm", brought_mm) - non_negative("open_mm", open_mm))
