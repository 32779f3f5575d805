"""Mole drains: unlined channels drawn through clay below a green.

Farm channels lie 400 to 600 mm deep, 2 m apart being best [dhakad2014]_; on greens they lie
shallower and closer [common_practice]_. They last 5 to 10 years, over 10 in a stable clay of
45 % [ahdb_moles]_.
"""

from __future__ import annotations

from dataclasses import dataclass

from notices.agronomy.limits import between, non_negative, positive


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

    The limits disagree; all three are returned, because none can claim to be the right one. Every sand-based green fails all of them.
    None of them replaces a look into a trial hole for stones.

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
