"""Whatever a formula cannot mean is refused with a sentence that names the argument."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Callable

import pytest

from notices.agronomy import growth, holes, limits, moles, recovery, sand, slits, work_time
from notices.agronomy.climate import BRITISH_MEAN

CLIMATE = growth.Climate.from_monthly_means(BRITISH_MEAN, growth.Grass.COOL_SEASON, 18)
DAY = dt.date(2026, 10, 12)

Formula = Callable[[float], object]

NEVER_NEGATIVE: dict[str, Formula] = {
    "holes along": lambda x: holes.holes_per_m2(x, 50),
    "holes across": lambda x: holes.holes_per_m2(50, x),
    "hole diameter": lambda x: holes.surface_percent(x, 50, 50),
    "hole depth": lambda x: holes.volume_l_per_m2(10, x, 50, 50),
    "core volume": holes.core_mass_kg_per_m2,
    "core density": lambda x: holes.core_mass_kg_per_m2(1, x),
    "blade width": lambda x: slits.surface_percent(x, 25),
    "blade spacing": lambda x: slits.surface_percent(0, x),
    "slit depth": lambda x: slits.volume_l_per_m2(3, x, 25),
    "slit area": lambda x: slits.length_m(x, 25),
    "slit spacing": lambda x: slits.length_m(1, x),
    "drained area": lambda x: moles.channel_length_m(x, 2),
    "channel spacing": lambda x: moles.channel_length_m(1, x),
    "clay": lambda x: moles.soil_verdicts(x, 0),
    "sand share": lambda x: moles.soil_verdicts(0, x),
    "sand depth": lambda x: sand.mass_kg_per_m2(x, 1.5),
    "density of a layer": lambda x: sand.mass_kg_per_m2(1, x),
    "sand mass": lambda x: sand.depth_mm(x, 1.5),
    "density for a depth": lambda x: sand.depth_mm(1, x),
    "heap": lambda x: sand.mass_t(x, 1.5),
    "density of a heap": lambda x: sand.mass_t(1, x),
    "load": lambda x: sand.volume_m3(x, 1.5),
    "density of a load": lambda x: sand.volume_m3(1, x),
    "open volume": lambda x: sand.fill_volume_m3(x, 1),
    "filled area": lambda x: sand.fill_volume_m3(1, x),
    "waste": lambda x: sand.fill_volume_m3(1, 1, x),
    "opening": lambda x: recovery.growth_days_for_opening(x, 0.6),
    "rate": lambda x: recovery.growth_days_for_opening(1, x),
    "slit width": lambda x: recovery.growth_days_for_slit(x, 19, 0.6),
    "depth of a slit": lambda x: recovery.growth_days_for_slit(3, x, 0.6),
    "rate of a slit": lambda x: recovery.growth_days_for_slit(3, 19, x),
    "half closed": recovery.growth_days_to_half_closed,
    "growth days": lambda x: recovery.first_day_reaching(x, DAY, CLIMATE),
    "growth days in a span": lambda x: recovery.span(recovery.Range(x, x, x), DAY, CLIMATE),
    "width observed": lambda x: recovery.observed_rate_mm_per_day(
        x, DAY, dt.date(2026, 12, 1), CLIMATE
    ),
    "stop threshold": lambda x: growth.growth_stop(DAY, CLIMATE, threshold=x),
    "return threshold": lambda x: growth.growth_returns(DAY, CLIMATE, threshold=x),
    "speed": lambda x: work_time.field_capacity_ha_per_h(x, 1, 0.6),
    "width": lambda x: work_time.field_capacity_ha_per_h(1, x, 0.6),
    "efficiency": lambda x: work_time.field_capacity_ha_per_h(1, 1, x),
    "area": lambda x: work_time.minutes_for_area(x, 1, 1, 0.6),
}

ALWAYS_FINITE: dict[str, Formula] = {
    "temperature": lambda x: growth.growth_potential(x, growth.Grass.COOL_SEASON),
    "warm temperature": lambda x: growth.growth_potential(x, growth.Grass.WARM_SEASON),
    "optimum": lambda x: growth.growth_potential(10, growth.Grass.COOL_SEASON, x),
    "monthly mean": lambda x: growth.daily_temperatures([x] * 12),
    "daily value": lambda x: growth.Climate((x,) * 365, growth.Grass.COOL_SEASON, 20),
    "climate optimum": lambda x: growth.Climate((10,) * 365, growth.Grass.COOL_SEASON, x),
    "offset": lambda x: recovery.first_day_reaching(1, DAY, CLIMATE, x),
    "offset of a stop": lambda x: growth.growth_stop(DAY, CLIMATE, x),
}

ABOVE_ZERO = (
    "holes along",
    "blade spacing",
    "slit spacing",
    "channel spacing",
    "core density",
    "density of a layer",
    "density for a depth",
    "rate",
    "width observed",
    "stop threshold",
    "speed",
    "efficiency",
)

COUNTS: dict[str, Callable[[int], object]] = {
    "passes over holes": lambda n: holes.surface_percent(10, 50, 50, n),
    "passes of blades": lambda n: slits.surface_percent(3, 25, n),
    "passes for length": lambda n: slits.length_m(1, 25, n),
    "dressings": sand.dressing_shares,
    "horizon": lambda n: recovery.first_day_reaching(1, DAY, CLIMATE, 0, n),
    "passes of a machine": lambda n: work_time.minutes_for_area(1, 1, 1, 0.6, n),
}


@pytest.mark.parametrize("value", [-1.0, -1e-9, math.nan, math.inf, -math.inf])
@pytest.mark.parametrize("name", NEVER_NEGATIVE)
def test_negative_and_endless_figures_are_refused(name: str, value: float) -> None:
    with pytest.raises(ValueError, match=r"^\S.* must .*\.$"):
        NEVER_NEGATIVE[name](value)


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
@pytest.mark.parametrize("name", ALWAYS_FINITE)
def test_temperatures_must_be_numbers(name: str, value: float) -> None:
    with pytest.raises(ValueError, match=r"^\S.* must .*\.$"):
        ALWAYS_FINITE[name](value)


@pytest.mark.parametrize("name", ABOVE_ZERO)
def test_nothing_is_divided_by_zero(name: str) -> None:
    with pytest.raises(ValueError, match=r"above (zero|0)"):
        NEVER_NEGATIVE[name](0.0)


@pytest.mark.parametrize("number", [0, -1])
@pytest.mark.parametrize("name", COUNTS)
def test_work_is_done_once_at_least(name: str, number: int) -> None:
    with pytest.raises(ValueError, match="whole number"):
        COUNTS[name](number)


@pytest.mark.parametrize("number", [1.5, math.nan, math.inf])
def test_counts_are_whole(number: float) -> None:
    with pytest.raises(ValueError, match="whole number"):
        limits.count("passes", number)  # type: ignore[arg-type]  # what a plan could let through


@pytest.mark.parametrize(
    ("formula", "sentence"),
    [
        (
            lambda: holes.surface_percent(30, 25, 50),
            "30 mm at 25 × 50 mm would run into each other",
        ),
        (lambda: slits.surface_percent(30, 25), "30 mm wide cannot stand 25 mm apart"),
        (lambda: moles.soil_verdicts(60, 41), "add up to more than 100 %"),
        # A percentage where a fraction is meant
        (lambda: work_time.field_capacity_ha_per_h(1, 1, 60), "must be a fraction"),
        (lambda: sand.fill_volume_m3(1, 1, 5), "between 0 and 1"),
        # A green in °F
        (lambda: growth.daily_temperatures([68] * 12), "in °C must lie between"),
        (lambda: growth.daily_temperatures([10] * 11), "12 monthly means, not 11"),
        (lambda: growth.temperature_on([10] * 366, DAY), "365 daily temperatures, not 366"),
        (lambda: growth.Climate((10,) * 7, growth.Grass.COOL_SEASON, 20), "not 7"),
        (lambda: recovery.combine([], DAY), "at least one"),
        (lambda: recovery.DateRange(DAY, DAY, dt.date(2026, 10, 1)), "2026-10-01 do not"),
        (lambda: recovery.observed_rate_mm_per_day(13, DAY, DAY, CLIMATE), "cannot have healed"),
    ],
)
def test_impossible_combinations_are_refused(formula: Callable[[], object], sentence: str) -> None:
    with pytest.raises(ValueError, match=sentence):
        formula()
