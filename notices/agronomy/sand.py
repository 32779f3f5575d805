"""Sand: depth, mass and volume, what fills the holes, and how a fill is shared out.

Nothing here assumes a density: dry sand weighs 1.5 [woods2017]_ to 1.6 t/m³ [daniels2018]_,
moist sand bulks when loose and weighs more once settled, so whoever states a mass states the
density with it.

Yearly totals for scale: 12 to 15 mm [obrien_hartwiger2003]_, 7.6 to 10.7 mm
[whitlark_thompson2019]_. A dressing of about 3 kg/m² or more is hard to work in
[uk_trade_press]_.
"""

from __future__ import annotations

from notices.agronomy.limits import between, count, non_negative, positive

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
    open_volume_l_per_m2: float, area_m2: float, waste_fraction: float = 0.05
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


def dressing_shares(dressings: int) -> tuple[float, ...]:
    """Share out one fill over several visits: half at first, the rest in equal parts.

    Deep or many holes settle and take the first dressing plus two or three top-ups.

    Parameters
    ----------
    dressings : int
        Number of visits in all, at least 1.

    Returns
    -------
    tuple of float
        Fractions of the fill, in the order of the visits; they add up to 1.

    Raises
    ------
    ValueError
        If there is no visit.

    References
    ----------
    [common_practice]_
    """
    top_ups = count("dressings", dressings) - 1
    return (0.5, *(0.5 / top_ups for _ in range(top_ups))) if top_ups else (1.0,)
