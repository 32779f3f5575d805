"""How long a machine takes over an area.

Turning, overlap and stops are in the field efficiency: 0.60 to 0.85 in the published table
[iowa_pm696]_, 0.5 to 0.7 on small curved greens [judgement]_. Moves between greens are not.
"""

from __future__ import annotations

import math
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


def minutes_to_clear(volume_m3: float, people: int, m3_per_person_hour: float) -> float:
    r"""Time for people to take what a machine has lifted off a green.

    .. math:: t = 60 \cdot V / (n \cdot r)

    Parameters
    ----------
    volume_m3 : float
        Volume as it lay in the ground, 0 or more. [m³]
    people : int
        People who clear, at least 1.
    m3_per_person_hour : float
        What one of them clears in an hour, above 0. [m³/h]

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
    [definition]_; usual rates are [common_practice]_.
    """
    rate = count("people", people) * positive("m3_per_person_hour", m3_per_person_hour)
    return 60 * non_negative("volume_m3", volume_m3) / rate


def loads(volume_m3: float, m3_per_load: float) -> int:
    """Count the loads that a volume takes; a part of one is a load too.

    Parameters
    ----------
    volume_m3 : float
        Volume to be moved, 0 or more. [m³]
    m3_per_load : float
        Volume of a load, above 0. [m³]

    Returns
    -------
    int
        Number of loads.

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [definition]_
    """
    exact = non_negative("volume_m3", volume_m3) / positive("m3_per_load", m3_per_load)
    # A billionth of a load beyond the last one is a rounding error and not worth a trip.
    return math.ceil(exact - 1e-9)


def minutes_to_haul(volume_m3: float, m3_per_load: float, minutes_per_load: float) -> float:
    """Time to bring sand from the heap to a green, load by load.

    Parameters
    ----------
    volume_m3 : float
        Volume of sand, 0 or more. [m³]
    m3_per_load : float
        Volume of a load, above 0. [m³]
    minutes_per_load : float
        Loading, there and back, 0 or more. [min]

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
    [definition]_; usual loads and trips are [common_practice]_.
    """
    return loads(volume_m3, m3_per_load) * non_negative("minutes_per_load", minutes_per_load)


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
