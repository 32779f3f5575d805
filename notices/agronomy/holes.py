"""Round holes in a rectangular pattern: hollow, solid and needle tining, drill and fill.

A hollow tine has two diameters: the hole in the turf has the outside one, the core that
comes out the inside one. Use the outside for the surface disturbed, the inside for the
material removed, and say which: the outside overstates the removal, 1.77 times in one
worked example [gcsaa_forum2013]_.

Yearly targets differ: 15 to 20 % of the surface [hartwiger_obrien2001]_; at least 10 %,
ideally 20 %, with tines of 10 mm or more, since sand bridges over smaller holes
[woods2009]_; no fixed percentage, but measured organic matter [woods2019]_. Pore space
starts to fall at 3 to 4 % organic matter by weight [carrow]_.
"""

from __future__ import annotations

import math

from notices.agronomy.limits import count, non_negative, positive

BULK_DENSITY_OF_CORES_T_M3 = 1.292
"""Dry root zone of a green [woods2021]_."""

_MM2_PER_M2 = 1_000_000


def holes_per_m2(along_mm: float, across_mm: float) -> float:
    r"""Count the holes in a square metre after one pass.

    .. math:: n = 10^6 / (a \cdot b)

    Parameters
    ----------
    along_mm : float
        Distance between holes in the direction of travel, above 0. [mm]
    across_mm : float
        Distance between holes across it, above 0. [mm]

    Returns
    -------
    float
        Holes per square metre. [1/m²]

    Raises
    ------
    ValueError
        If a spacing is not above zero and finite.

    References
    ----------
    [definition]_
    """
    return _MM2_PER_M2 / positive("along_mm", along_mm) / positive("across_mm", across_mm)


def surface_percent(
    diameter_mm: float, along_mm: float, across_mm: float, passes: int = 1
) -> float:
    r"""Share of the surface that the holes open.

    .. math:: 100 \cdot k \cdot \frac{\pi d^2 / 4}{a \cdot b}

    Passes add; where they cross, the overlap is ignored, so that many passes of large holes
    can add up to more than 100 %. Two passes into the same holes do not exist in practice.

    Parameters
    ----------
    diameter_mm : float
        Diameter of a hole, from 0 to the smaller spacing: beyond it neighbouring holes
        would run into each other. [mm]
    along_mm, across_mm : float
        Distance between holes along and across the direction of travel, above 0. [mm]
    passes : int
        Number of passes, at least 1.

    Returns
    -------
    float
        Percentage of the surface. [%]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [definition]_, checked against [woods2009]_, [ervin_nichols]_ and [gcsaa_forum2013]_.
    """
    density = holes_per_m2(along_mm, across_mm)
    if non_negative("diameter_mm", diameter_mm) > min(along_mm, across_mm):
        raise ValueError(
            f"Holes of {diameter_mm:g} mm at {along_mm:g} × {across_mm:g} mm would run into each other."
        )
    hole_mm2 = math.pi * diameter_mm * diameter_mm / 4
    return 100 * count("passes", passes) * density * hole_mm2 / _MM2_PER_M2


def volume_l_per_m2(
    diameter_mm: float, depth_mm: float, along_mm: float, across_mm: float, passes: int = 1
) -> float:
    """Volume of the holes, which is also the depth of sand that fills them.

    Surface fraction times depth. One litre on a square metre is one millimetre: left
    unfilled, hollow-tined turf sinks by as much; solid-tined and filled, it rises by as much.

    Parameters
    ----------
    diameter_mm : float
        Diameter of a hole: the outside diameter for sand, the inside one for cores. [mm]
    depth_mm : float
        Depth of a hole, 0 or more. [mm]
    along_mm, across_mm : float
        Distance between holes along and across the direction of travel, above 0. [mm]
    passes : int
        Number of passes, at least 1; they add.

    Returns
    -------
    float
        Volume per area. [L/m² = mm]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [definition]_, checked against [woods2021]_.
    """
    share = surface_percent(diameter_mm, along_mm, across_mm, passes) / 100
    return share * non_negative("depth_mm", depth_mm)


def core_mass_kg_per_m2(
    volume_l_per_m2: float, bulk_density_t_m3: float = BULK_DENSITY_OF_CORES_T_M3
) -> float:
    """Dry mass of the cores that come out.

    Parameters
    ----------
    volume_l_per_m2 : float
        Volume of the cores (inside diameter), 0 or more. [L/m²]
    bulk_density_t_m3 : float
        Dry mass of root zone per volume, above 0. [t/m³]

    Returns
    -------
    float
        Dry mass per area. [kg/m²]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [woods2021]_
    """
    volume = non_negative("volume_l_per_m2", volume_l_per_m2)
    return volume * positive("bulk_density_t_m3", bulk_density_t_m3)
