"""Parallel slits: scarifying, verticutting, slitting.

Scarifying cuts with wide-set blades (about 40 to 50 mm apart) through the thatch into the
soil; verticutting only brushes the surface with close-set ones, 1 to 2 mm below the cut
[common_practice]_.
"""

from __future__ import annotations

from notices.agronomy.limits import count, non_negative, positive


def surface_percent(blade_width_mm: float, blade_spacing_mm: float, passes: int = 1) -> float:
    r"""Share of the surface that the slits open.

    .. math:: 100 \cdot k \cdot w / s

    Passes add; where they cross, the overlap is ignored.

    Parameters
    ----------
    blade_width_mm : float
        Width of a slit, from 0 to the spacing. [mm]
    blade_spacing_mm : float
        Distance from the middle of one blade to the next, above 0. [mm]
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
    [definition]_, checked against the yearly total of [ervin_nichols]_.
    """
    spacing = positive("blade_spacing_mm", blade_spacing_mm)
    if non_negative("blade_width_mm", blade_width_mm) > spacing:
        raise ValueError(
            f"Blades {blade_width_mm:g} mm wide cannot stand {blade_spacing_mm:g} mm apart."
        )
    return 100 * count("passes", passes) * blade_width_mm / spacing


def length_m(area_m2: float, blade_spacing_mm: float, passes: int = 1) -> float:
    """Total length of slits cut in an area.

    Area divided by spacing, times passes.

    Parameters
    ----------
    area_m2 : float
        Area worked, 0 or more. [m²]
    blade_spacing_mm : float
        Distance between blades, above 0. [mm]
    passes : int
        Number of passes, at least 1.

    Returns
    -------
    float
        Length. [m]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [definition]_
    """
    metres_per_pass = (
        non_negative("area_m2", area_m2) / positive("blade_spacing_mm", blade_spacing_mm) * 1_000
    )
    return count("passes", passes) * metres_per_pass


def volume_l_per_m2(
    blade_width_mm: float, depth_mm: float, blade_spacing_mm: float, passes: int = 1
) -> float:
    """Volume of the slits, as of the thatch and soil cut out of them.

    Surface fraction times depth.

    Parameters
    ----------
    blade_width_mm : float
        Width of a slit, from 0 to the spacing. [mm]
    depth_mm : float
        Depth of a slit, 0 or more. [mm]
    blade_spacing_mm : float
        Distance between blades, above 0. [mm]
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
    [definition]_
    """
    share = surface_percent(blade_width_mm, blade_spacing_mm, passes) / 100
    return share * non_negative("depth_mm", depth_mm)
