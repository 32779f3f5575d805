"""The climate that recovery is worked out with: the club's own, else a British one."""

from __future__ import annotations

import calendar
import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property, lru_cache

from notices.agronomy.climate import BRITISH_MEAN
from notices.agronomy.growth import (
    ANNUAL_MEADOW_GRASS_OPTIMUM_C,
    Climate,
    Grass,
    growth_potential,
)
from notices.plan.model import Club, Plan
from notices.programme.model import Input

HALF_A_YEAR = 6

UNTIL_29_FEBRUARY = 31 + 28
"""Days of a year before it; on it the temperature is taken to be that of the day before."""

SOUTHERNMOST_BRITISH, NORTHERNMOST_BRITISH = 49.0, 61.0
"""Latitudes between which the mean of British stations is at least not absurd (judgement)."""


@dataclass(frozen=True)
class RememberedClimate(Climate):
    """A climate that works out a year's growth once: recovery asks for its days over and over."""

    _years: dict[tuple[int, float], tuple[float, ...]] = field(
        default_factory=dict, init=False, repr=False, compare=False
    )

    def growth_on(self, day: dt.date, offset_c: float = 0.0) -> float:
        """Growth potential of a date in a year warmer by `offset_c` [°C] than usual."""
        since_new_year = day.toordinal() - dt.date(day.year, 1, 1).toordinal()
        return self.growth_in(day.year, offset_c)[since_new_year]

    def growth_in(self, year: int, offset_c: float = 0.0) -> tuple[float, ...]:
        """Growth potential of each day of a calendar year, `offset_c` [°C] warmer than usual."""
        found = self._years.get((year, offset_c))
        if found is None:
            found = self._years[year, offset_c] = self._worked_out(year, offset_c)
        return found

    def _worked_out(self, year: int, offset_c: float) -> tuple[float, ...]:
        usual = _usual_year(self.daily, self.grass, self.optimum_c, offset_c)
        days = [*usual]
        if calendar.isleap(year):
            days.insert(UNTIL_29_FEBRUARY, usual[UNTIL_29_FEBRUARY - 1])
        first = dt.date(year, 1, 1)
        for day in self.known:
            if day.year == year:
                days[(day - first).days] = Climate.growth_on(self, day, offset_c)
        return tuple(days)


@lru_cache(maxsize=32)
def _usual_year(
    daily: tuple[float, ...], grass: Grass, optimum_c: float, offset_c: float
) -> tuple[float, ...]:
    """Growth potential of each of 365 days, `offset_c` [°C] warmer than they usually are."""
    return tuple(growth_potential(mean + offset_c, grass, optimum_c) for mean in daily)


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
    def inputs(self) -> tuple[Input, ...]:
        """What a growth potential is worked out from, days apart."""
        means = ", ".join(f"{mean:g}" for mean in self.monthly_means)
        return (
            Input("grass", self.climate.grass.value),
            Input("optimum_c", self.climate.optimum_c, "optimum", "°C"),
            Input("spread_c", self.climate.grass.spread_c, "spread", "°C", is_difference=True),
            Input("monthly_means_c", means, "monthly means", "°C"),
            *self._known_days,
        )

    @property
    def days(self) -> str:
        """Say what the temperature of a day comes from."""
        if self.climate.known:
            return "the plan's own for the days that it names, else from the monthly means"
        return "the monthly means"

    @property
    def _known_days(self) -> tuple[Input, ...]:
        known = self.climate.known
        if not known:
            return ()
        return (
            Input("days_named", len(known)),
            Input("first_day_named", min(known).isoformat()),
            Input("last_day_named", max(known).isoformat()),
            Input("their_temperatures", "in plan.json, course: daily_mean_temperature"),
        )


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
