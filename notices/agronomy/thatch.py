"""Thatch: whether a work reaches through it, and what that needs.

Work against thatch goes 10 to 15 mm deeper than the thatch, so that the openings end in the soil
below [common_practice]_. Hollow tines, scarifier and drill take material out; solid tines,
needles and slitting knives only open it. Pore space starts to fall at 3 to 4 % organic matter
by weight [carrow]_.
"""

from __future__ import annotations

from notices.agronomy.limits import non_negative

USUAL_DEPTH_BELOW_MM = (10.0, 15.0)
"""How far below the thatch an opening usually ends [mm] [common_practice]_."""

PORES_FALL_AT_PERCENT = (3.0, 4.0)
"""Organic matter by weight at which pore space starts to fall [%] [carrow]_."""


def depth_below_mm(depth_mm: float, thatch_mm: float) -> float:
    """How far an opening reaches below the thatch; negative where it stops short.

    Depth of the opening minus depth of the thatch, both from the surface.

    Parameters
    ----------
    depth_mm : float
        Depth of the opening, 0 or more. [mm]
    thatch_mm : float
        Depth of the thatch, 0 or more. [mm]

    Returns
    -------
    float
        Depth below the thatch. [mm]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [definition]_
    """
    return non_negative("depth_mm", depth_mm) - non_negative("thatch_mm", thatch_mm)


def passes_thatch(depth_mm: float, thatch_mm: float) -> bool:
    """Whether an opening passes the thatch by at least the usual 10 mm.

    Parameters
    ----------
    depth_mm : float
        Depth of the opening, 0 or more. [mm]
    thatch_mm : float
        Depth of the thatch, 0 or more. [mm]

    Returns
    -------
    bool
        Whether it does.

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [common_practice]_
    """
    return depth_below_mm(depth_mm, thatch_mm) >= USUAL_DEPTH_BELOW_MM[0]
