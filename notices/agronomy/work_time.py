"""How long a machine takes over an area.

Turning, overlap and stops are in the field efficiency: 0.60 to 0.85 in the published table
[iowa_pm696]_, 0.5 to 0.7 on small curved greens [judgement]_. Moves between greens are not.
"""

from __future__ import annotations

import math

from notices.agronomy.limits import count, fraction, non_negative, positive
from notices.units import M2_PER_HECTARE


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
    hectares = non_negative("area_m2", area_m2) * count("passes", passes) / M2_PER_HECTARE
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
