"""How long a machine takes over an area.

Turning, overlap and stops are in the field efficiency: 0.60 to 0.85 in the published table
[iowa_pm696]_, 0.5 to 0.7 on small curved greens [judgement]_. Moves between greens are not.
"""

from __future__ import annotations

from collections.abc import Sequence

from notices.agronomy.limits import count, fraction, non_negative, positive

_ACRES_PER_MPH_FT = 8.25
"""43,560 ft² in an acre divided by 5,280 ft in a mile."""

_M2_PER_HECTARE = 10_000


def field_capacity_ha_per_h(speed_km_h: float, width_m: float, efficiency: float) -> float:
    r"""Effective field capacity in metric units.

    .. math:: C = s \cdot w \cdot e / 10

    Parameters
    ----------
    speed_km_h : float
        Speed at work, above 0. [km/h]
    width_m : float
        Working width, above 0. [m]
    efficiency : float
        Field efficiency, above 0 and at most 1.

    Returns
    -------
    float
        Area per time. [ha/h]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [iowa_pm696]_
    """
    swept = positive("speed_km_h", speed_km_h) * positive("width_m", width_m)
    return swept * fraction("efficiency", efficiency) / 10


def field_capacity_acres_per_h(speed_mph: float, width_ft: float, efficiency: float) -> float:
    r"""Effective field capacity in US units, as printed in the source.

    .. math:: C = s \cdot w \cdot e / 8.25

    Parameters
    ----------
    speed_mph : float
        Speed at work, above 0. [mph]
    width_ft : float
        Working width, above 0. [ft]
    efficiency : float
        Field efficiency, above 0 and at most 1.

    Returns
    -------
    float
        Area per time. [acres/h]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [iowa_pm696]_
    """
    swept = positive("speed_mph", speed_mph) * positive("width_ft", width_ft)
    return swept * fraction("efficiency", efficiency) / _ACRES_PER_MPH_FT


def minutes_for_area(
    area_m2: float, speed_km_h: float, width_m: float, efficiency: float, passes: int = 1
) -> float:
    """Time at work on an area: area times passes, divided by field capacity.

    Parameters
    ----------
    area_m2 : float
        Area, 0 or more. [m²]
    speed_km_h : float
        Speed at work, above 0. [km/h]
    width_m : float
        Working width, above 0. [m]
    efficiency : float
        Field efficiency, above 0 and at most 1.
    passes : int
        Number of passes, at least 1.

    Returns
    -------
    float
        Time. [min]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [iowa_pm696]_
    """
    hectares = non_negative("area_m2", area_m2) * count("passes", passes) / _M2_PER_HECTARE
    return 60 * hectares / field_capacity_ha_per_h(speed_km_h, width_m, efficiency)


def makespan_minutes(minutes: Sequence[Sequence[float | None]]) -> float:
    r"""Time from the first start to the last finish of a permutation flow shop.

    Every green goes through the operations in the same order, and every operation through
    the greens. A machine starts on a green when it is free and the operation before it has
    left that green; a green that it has nothing to do on, it passes by without waiting.

    .. math:: C_{g,o} = \max(C_{g-1,o}, C_{g,o-1}) + p_{g,o}

    Parameters
    ----------
    minutes : sequence of sequences of float or None
        For each green, in the order in which they are done, the time of each operation,
        0 or more; None where it is not done there. [min]

    Returns
    -------
    float
        Time until the last operation leaves the last green; 0 without greens. [min]

    Raises
    ------
    ValueError
        If a time is negative or not finite, or the greens differ in their operations.

    References
    ----------
    [johnson1954]_
    """
    left = [0.0] * len(minutes[0]) if minutes else []
    for green in minutes:
        if len(green) != len(left):
            raise ValueError("Every green must have a time for each operation, or None.")
        ready = 0.0
        for operation, time in enumerate(green):
            if time is None:
                continue
            ready = max(ready, left[operation]) + non_negative("minutes", time)
            left[operation] = ready
    return max(left, default=0.0)
