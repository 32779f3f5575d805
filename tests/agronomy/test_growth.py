"""The curve of growth, the daily temperatures behind it, and the climate that joins them."""

from __future__ import annotations

import datetime as dt
import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.agronomy.climate import BRITISH_MEAN, STATIONS
from notices.agronomy.growth import (
    DAYS_IN_MONTHS,
    Climate,
    Grass,
    daily_temperatures,
    growth_potential,
    growth_returns,
    growth_stop,
    mean_of_day,
    temperature_on,
)

TEMPERATURES_C = st.floats(-60, 60)
GRASSES = st.sampled_from(Grass)
DATES = st.dates(dt.date(2020, 1, 1), dt.date(2040, 12, 31))

BRITISH = Climate.from_monthly_means(BRITISH_MEAN, Grass.COOL_SEASON, 18)


@given(st.floats(-1e300, 1e300), GRASSES)
def test_growth_is_a_fraction_at_any_temperature(temperature: float, grass: Grass) -> None:
    assert 0 <= growth_potential(temperature, grass) <= 1


@given(TEMPERATURES_C, TEMPERATURES_C, GRASSES)
def test_below_the_optimum_warmer_is_never_slower(one: float, other: float, grass: Grass) -> None:
    colder, warmer = sorted((min(one, grass.optimum_c), min(other, grass.optimum_c)))
    assert growth_potential(colder, grass) <= growth_potential(warmer, grass)


@given(st.floats(0, 40), st.floats(10, 30))
def test_cool_season_grass_suffers_from_heat_as_from_cold(distance: float, optimum: float) -> None:
    below = growth_potential(optimum - distance, Grass.COOL_SEASON, optimum)
    above = growth_potential(optimum + distance, Grass.COOL_SEASON, optimum)
    assert below == pytest.approx(above, rel=1e-9, abs=1e-12)


@given(TEMPERATURES_C, st.floats(-10, 10), GRASSES)
def test_another_optimum_moves_the_curve_and_keeps_its_shape(
    temperature: float, shift: float, grass: Grass
) -> None:
    moved = growth_potential(temperature + shift, grass, grass.optimum_c + shift)
    assert moved == pytest.approx(growth_potential(temperature, grass), rel=1e-9, abs=1e-12)


@given(st.lists(TEMPERATURES_C, min_size=12, max_size=12))
def test_monthly_means_are_kept(means: list[float]) -> None:
    daily = daily_temperatures(means)
    assert len(daily) == 365
    first = 0
    for mean, length in zip(means, DAYS_IN_MONTHS, strict=True):
        month = daily[first : first + length]
        assert math.fsum(month) / length == pytest.approx(mean, abs=1e-9, rel=0)
        first += length


@given(TEMPERATURES_C)
def test_a_year_without_seasons_stays_flat(mean: float) -> None:
    assert daily_temperatures([mean] * 12) == pytest.approx([mean] * 365)


@pytest.mark.parametrize("station", STATIONS)
def test_temperatures_move_smoothly_through_the_year(station: str) -> None:
    # No jump at the turn of a month, nor from December to January: the steepest month changes by
    # under 4 °C, which over 30 days is far from a third of a degree a day.
    daily = daily_temperatures(STATIONS[station])
    assert all(abs(b - a) < 1 / 3 for a, b in pairwise((*daily, daily[0])))


@given(st.dates(dt.date(1990, 1, 1), dt.date(2060, 12, 31)))
def test_a_date_has_the_same_temperature_every_year(day: dt.date) -> None:
    daily = daily_temperatures(BRITISH_MEAN)
    if (day.month, day.day) != (2, 29):
        assert temperature_on(daily, day) == temperature_on(daily, day.replace(year=2027))


def test_days_are_counted_from_new_year() -> None:
    days = [float(number) for number in range(1, 366)]
    assert temperature_on(days, dt.date(2027, 1, 1)) == 1
    assert temperature_on(days, dt.date(2027, 3, 1)) == 60
    assert temperature_on(days, dt.date(2028, 3, 1)) == 60
    assert temperature_on(days, dt.date(2027, 12, 31)) == 365
    assert temperature_on(days, dt.date(2028, 12, 31)) == 365


def test_leap_day_takes_the_day_before() -> None:
    days = [float(number) for number in range(1, 366)]
    assert temperature_on(days, dt.date(2028, 2, 29)) == temperature_on(days, dt.date(2028, 2, 28))


@pytest.mark.parametrize("grass", Grass)
def test_climate_takes_the_published_optimum_unless_told(grass: Grass) -> None:
    assert Climate.from_monthly_means(BRITISH_MEAN, grass).optimum_c == grass.optimum_c
    assert Climate.from_monthly_means(BRITISH_MEAN, grass, 18).optimum_c == 18


@given(st.dates(dt.date(2020, 1, 1), dt.date(2030, 12, 31)), st.floats(-5, 5), GRASSES)
def test_climate_hands_date_offset_and_optimum_to_the_formula(
    day: dt.date, offset: float, grass: Grass
) -> None:
    climate = Climate.from_monthly_means(BRITISH_MEAN, grass, 18)
    temperature = temperature_on(climate.daily, day) + offset
    assert climate.growth_on(day, offset) == growth_potential(temperature, grass, 18)


def test_a_known_day_takes_the_place_of_the_usual_one() -> None:
    day = dt.date(2026, 10, 12)
    climate = Climate.from_monthly_means([10] * 12, Grass.COOL_SEASON, 18, {day: 18.0})
    assert climate.temperature_on(day) == 18
    assert climate.growth_on(day) == 1
    # A year warmer by a degree is warmer on that day too.
    assert climate.growth_on(day, 1.0) == growth_potential(19, Grass.COOL_SEASON, 18)
    assert climate.temperature_on(day + dt.timedelta(days=1)) == pytest.approx(10)
    assert climate.temperature_on(day.replace(year=2027)) == pytest.approx(10)


def test_mean_of_a_day() -> None:
    assert mean_of_day(4.0, 13.0) == 8.5
    with pytest.raises(ValueError, match="above the highest"):
        mean_of_day(14, 13)


@given(DATES)
def test_growth_stops_for_a_week_and_not_before(done: dt.date) -> None:
    stop = growth_stop(done, BRITISH)
    assert stop is not None
    assert done < stop
    week = [BRITISH.growth_on(stop + dt.timedelta(days=number)) for number in range(7)]
    assert all(growth < 0.1 for growth in week)
    if stop > done + dt.timedelta(days=1):
        assert BRITISH.growth_on(stop - dt.timedelta(days=1)) >= 0.1


@given(DATES)
def test_growth_returns_for_a_week_and_not_before(after: dt.date) -> None:
    back = growth_returns(after, BRITISH)
    assert back is not None
    assert after < back
    week = [BRITISH.growth_on(back + dt.timedelta(days=number)) for number in range(7)]
    assert all(growth >= 0.1 for growth in week)
    if back > after + dt.timedelta(days=1):
        assert BRITISH.growth_on(back - dt.timedelta(days=1)) < 0.1


def test_growth_that_has_stopped_is_said_so_at_once() -> None:
    new_year = dt.date(2027, 1, 1)
    assert growth_stop(new_year, BRITISH) == dt.date(2027, 1, 2)


def test_growth_may_never_stop_or_never_return() -> None:
    always, never = (
        Climate.from_monthly_means([mean] * 12, Grass.COOL_SEASON) for mean in (20, -40)
    )
    assert growth_stop(dt.date(2026, 5, 4), always) is None
    assert growth_returns(dt.date(2026, 5, 4), never) is None


@pytest.mark.parametrize("station", STATIONS)
def test_a_warm_year_grows_longer_than_a_cold_one(station: str) -> None:
    climate = Climate.from_monthly_means(STATIONS[station], Grass.COOL_SEASON, 18)
    warm, cold = (growth_stop(dt.date(2026, 9, 1), climate, offset) for offset in (1, -1))
    assert cold is not None
    # Never is the latest of all.
    assert warm is None or warm >= cold
