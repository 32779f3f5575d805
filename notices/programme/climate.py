"""The climate that recovery is worked out with: the club's own, else a British one."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from notices.agronomy.climate import BRITISH_MEAN
from notices.agronomy.growth import ANNUAL_MEADOW_GRASS_OPTIMUM_C, Climate, Grass
from notices.plan.model import Club, Plan

HALF_A_YEAR = 6

SOUTHERNMOST_BRITISH, NORTHERNMOST_BRITISH = 49.0, 61.0
"""Latitudes between which the mean of British stations is at least not absurd (judgement)."""


@dataclass(frozen=True)
class RememberedClimate(Climate):
    """A climate that works out each day's growth once: recovery asks for it over and over."""

    _remembered: dict[tuple[dt.date | tuple[int, int], float], float] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )

    def growth_on(self, day: dt.date, offset_c: float = 0.0) -> float:
        """Growth potential of a date in a year warmer by `offset_c` [°C] than usual."""
        key = (day if day in self.known else (day.month, day.day), offset_c)
        growth = self._remembered.get(key)
        if growth is None:
            growth = self._remembered[key] = Climate.growth_on(self, day, offset_c)
        return growth


@dataclass(frozen=True)
class ClubClimate:
    """A climate, and what the plan leaves to the book."""

    climate: Climate
    monthly_means: tuple[float, ...]
    """Twelve mean temperatures, January first [°C]."""
    default_used: bool
    """Whether temperatures, optimum or kind of grass are not the club's own."""
    default_used_on_known_days: bool
    """The same for a day whose temperature the plan gives."""
    source: tuple[str, ...]
    """Keys of the bibliography."""

    @cached_property
    def inputs(self) -> Mapping[str, float | int | str | None]:
        """What a growth potential is worked out from, days apart."""
        return {
            "grass": self.climate.grass.value,
            "optimum_c": self.climate.optimum_c,
            "spread_c": self.climate.grass.spread_c,
            "monthly_means_c": ", ".join(f"{mean:g}" for mean in self.monthly_means),
        } | self._known_days

    @property
    def days(self) -> str:
        """Say what the temperature of a day comes from."""
        if self.climate.known:
            return "the plan's own for the days that it names, else from the monthly means"
        return "the monthly means"

    @property
    def _known_days(self) -> dict[str, float | int | str | None]:
        known = self.climate.known
        if not known:
            return {}
        return {
            "days_named": len(known),
            "first_day_named": min(known).isoformat(),
            "last_day_named": max(known).isoformat(),
            "their_temperatures": "in plan.json, course: daily_mean_temperature",
        }


def club_climate(plan: Plan) -> ClubClimate:
    """Return the club's climate; without monthly means, that of the British lowlands.

    South of the equator the British months are turned by half a year.
    """
    course = plan.course
    grass = Grass(course.grass)
    optimum = course.optimum_temperature
    source = ["gelernter_stowell2005"]
    if optimum is None and grass is Grass.COOL_SEASON and plan.club.language == "en-GB":
        optimum = ANNUAL_MEADOW_GRASS_OPTIMUM_C
        source.append("meadow_grass_optimum")
    means = course.monthly_mean_temperature
    of_grass = course.optimum_temperature is None or "grass" not in course.model_fields_set
    if means is None:
        means = _turned(BRITISH_MEAN) if is_southern(plan.club) else BRITISH_MEAN
        source.append("met_office_stations")
    return ClubClimate(
        climate=RememberedClimate.from_monthly_means(
            means, grass, optimum, course.daily_mean_temperature
        ),
        monthly_means=means,
        default_used=course.monthly_mean_temperature is None or of_grass,
        default_used_on_known_days=of_grass,
        source=tuple(source),
    )


def is_southern(club: Club) -> bool:
    """Whether the club says that it lies south of the equator."""
    return club.place is not None and club.place.latitude < 0


def may_be_british(plan: Plan) -> bool:
    """Whether nothing in the plan says that the club is far from Britain and Ireland."""
    club, place = plan.club, plan.club.place
    return (
        club.language == "en-GB"
        and plan.course.grass == "cool-season"
        and (club.country is None or club.country[:2] in ("GB", "IE", "IM", "JE", "GG"))
        and (place is None or SOUTHERNMOST_BRITISH <= place.latitude <= NORTHERNMOST_BRITISH)
    )


def _turned(means: Sequence[float]) -> tuple[float, ...]:
    return (*means[HALF_A_YEAR:], *means[:HALF_A_YEAR])
