"""Mole drains: unlined channels drawn through clay below a green.

Farm channels lie 400 to 600 mm deep, 2 m apart being best [dhakad2014]_; on greens they lie
shallower and closer: 250 to 350 mm deep, 0.5 to 1.5 m apart, 40 to 50 mm wide
[common_practice]_. On farmland they last 5 to 10 years, over 10 in a stable clay of 45 %
[ahdb_moles]_; for a green nobody has published a life, and none is promised.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from notices.agronomy.limits import between, non_negative, positive

LIFE_ON_FARMLAND_YEARS = (5, 10)
"""How long channels last on farmland; over 10 in a stable clay of 45 % [ahdb_moles]_."""


@dataclass(frozen=True, slots=True)
class SoilVerdict:
    """What one published limit says about a soil."""

    source_key: str
    limit_text: str
    passes: bool


def channel_length_m(area_m2: float, spacing_m: float) -> float:
    """Total length of channels under an area: area divided by spacing.

    Parameters
    ----------
    area_m2 : float
        Area drained, 0 or more. [m²]
    spacing_m : float
        Distance between channels, above 0. [m]

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
    return non_negative("area_m2", area_m2) / positive("spacing_m", spacing_m)


def soil_verdicts(clay_percent: float, sand_percent: float) -> tuple[SoilVerdict, ...]:
    """Hold a soil against the three published limits for mole drains.

    The limits disagree; all three are returned, because none can claim to be the
    right one. Every sand-based green fails all of them. None of them replaces a look
    into a trial hole for stones.

    Parameters
    ----------
    clay_percent : float
        Clay by weight, 0 to 100. [%]
    sand_percent : float
        Sand by weight, 0 to 100; with the clay not more than 100. [%]

    Returns
    -------
    tuple of SoilVerdict
        One for each limit.

    Raises
    ------
    ValueError
        If a share lies outside 0 to 100 %, or both together exceed 100 %.

    References
    ----------
    [ahdb_moles]_, [agriculture_victoria2002]_, [ghane2022]_
    """
    clay = between("clay_percent", clay_percent, 0, 100)
    sand = between("sand_percent", sand_percent, 0, 100)
    if round(clay + sand, 6) > 100:  # 38.1 + 61.9 may come out a hair above
        raise ValueError(f"Clay of {clay:g} % and sand of {sand:g} % add up to more than 100 %.")
    return (
        SoilVerdict(
            "ahdb_moles",
            "at least 30 % clay and at most 30 % sand, no stones at depth",
            clay >= 30 and sand <= 30,
        ),
        SoilVerdict("agriculture_victoria2002", "at least 35 % clay", clay >= 35),
        SoilVerdict(
            "ghane2022", "at least 45 % clay and under 20 % sand", clay >= 45 and sand < 20
        ),
    )


def channel_top_mm(depth_mm: float, channel_diameter_mm: float) -> float:
    """Depth of the top of a channel: depth of its middle less half its diameter.

    Parameters
    ----------
    depth_mm : float
        Depth of the middle of the channel, at least half its diameter. [mm]
    channel_diameter_mm : float
        Diameter of the channel, above 0. [mm]

    Returns
    -------
    float
        Depth below the surface. [mm]

    Raises
    ------
    ValueError
        If an argument is outside its range, or the channel would lie open.

    References
    ----------
    [definition]_
    """
    radius = positive("channel_diameter_mm", channel_diameter_mm) / 2
    if non_negative("depth_mm", depth_mm) < radius:
        raise ValueError(
            f"A channel {channel_diameter_mm:g} mm wide cannot have its middle {depth_mm:g} mm deep."
        )
    return depth_mm - radius


def holes_meeting_channels_percent(
    hole_diameter_mm: float,
    hole_depth_mm: float,
    channel_diameter_mm: float,
    channel_depth_mm: float,
    channel_spacing_m: float,
) -> float:
    r"""Share of upright holes that break into a mole channel, on average.

    .. math:: 100 \cdot \min\left(1, \frac{h + c'}{s}\right), \qquad
              c' = 2 \sqrt{(c/2)^2 - \max(0, z - d)^2}

    A hole meets a channel where the distance between their middles, seen from above, is no more
    than half the hole and half of the channel as wide as it is where the hole ends. A hole that
    reaches the middle of the channel meets its whole diameter; one that ends between the top
    and the middle meets only the chord at that depth; one that does not reach below the top meets
    nothing. Holes fall anywhere between two channels with equal chance.

    Parameters
    ----------
    hole_diameter_mm : float
        Diameter of a hole, h, 0 or more. [mm]
    hole_depth_mm : float
        Depth at which it ends, d, 0 or more. [mm]
    channel_diameter_mm : float
        Diameter of a channel, c, above 0. [mm]
    channel_depth_mm : float
        Depth of its middle, z, at least half its diameter. [mm]
    channel_spacing_m : float
        Distance between channels, s, above 0. [m]

    Returns
    -------
    float
        Percentage of the holes. [%]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    References
    ----------
    [definition]_; a test holds it to a simulation.
    """
    spacing_mm = 1_000 * positive("channel_spacing_m", channel_spacing_m)
    hole = non_negative("hole_diameter_mm", hole_diameter_mm)
    depth = non_negative("hole_depth_mm", hole_depth_mm)
    if depth <= channel_top_mm(channel_depth_mm, channel_diameter_mm):
        return 0.0
    short = max(0.0, channel_depth_mm - depth)
    half = channel_diameter_mm / 2
    chord = 2 * math.sqrt(max(0.0, half * half - short * short))
    return 100 * min(1.0, (hole + chord) / spacing_mm)
