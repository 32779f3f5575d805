"""Sections 4 and 9 of the collected figures: growth and climate, against what others printed."""

from __future__ import annotations

import math
from itertools import islice

import pytest

from notices.agronomy.climate import BRITISH_MEAN, STATIONS
from notices.agronomy.growth import (
    ANNUAL_MEADOW_GRASS_OPTIMUM_C,
    DAYS_IN_MONTHS,
    GROWTH_EXTREMELY_LIMITED,
    Grass,
    daily_temperatures,
    growth_potential,
)


@pytest.mark.parametrize(
    ("grass", "optimum_c", "spread_c"),
    [
        pytest.param(Grass.COOL_SEASON, 20, 5.5, id="gelernter_stowell2005"),
        pytest.param(Grass.WARM_SEASON, 31, 7, id="gelernter_stowell2005"),
    ],
)
def test_constants_of_the_curve(grass: Grass, optimum_c: float, spread_c: float) -> None:
    assert growth_potential(optimum_c, grass) == 1
    # One spread below the optimum a bell curve stands at exp(−1/2), whoever drew it.
    assert growth_potential(optimum_c - spread_c, grass) == pytest.approx(math.exp(-0.5))


def test_warm_season_does_not_tire_of_heat() -> None:
    # gelernter_stowell2005: capped at 1 above the optimum.
    assert growth_potential(40, Grass.WARM_SEASON) == 1


def test_warm_season_passes_cool_season_above_about_24_8() -> None:
    # Practitioner literature, "above about 24.8 °C": printed to a tenth, so a tenth either side.
    for temperature, warm_leads in ((24.7, False), (24.9, True)):
        warm = growth_potential(temperature, Grass.WARM_SEASON)
        cool = growth_potential(temperature, Grass.COOL_SEASON)
        assert (warm > cool) is warm_leads


@pytest.mark.parametrize("grass", Grass)
@pytest.mark.parametrize("distance_c", [-2.5, -1.0, 0.0, 1.0, 2.5])
def test_within_two_and_a_half_degrees_growth_is_at_least_90_percent(
    grass: Grass, distance_c: float
) -> None:
    # Practitioner literature: GP ≥ 0.90 within 2.5 °C of the optimum.
    assert growth_potential(grass.optimum_c + distance_c, grass) >= 0.90


def test_growth_extremely_limited() -> None:
    # pace_turf: 10 % or less.
    assert GROWTH_EXTREMELY_LIMITED == 0.10


def test_optimum_of_annual_meadow_grass() -> None:
    # Used in England and Canada: about 18 °C.
    assert ANNUAL_MEADOW_GRASS_OPTIMUM_C == 18


STATION_ROWS = [  # met_office_stations, mean °C 1991–2020, printed to a tenth
    ("Oxford", "5.2 5.5 7.5 9.8 12.9 15.9 18.1 17.8 15.0 11.5 7.9 5.4"),
    ("Durham", "4.1 4.6 6.2 8.3 11.0 13.6 15.8 15.6 13.3 10.0 6.6 4.3"),
    ("Cardiff", "5.6 5.8 7.6 10.0 12.9 15.7 17.5 17.2 14.9 11.6 8.3 6.0"),
    ("Armagh", "5.0 5.3 6.7 8.8 11.4 14.0 15.7 15.5 13.5 10.3 7.3 5.2"),
    ("Lerwick", "4.2 3.8 4.6 6.1 8.1 10.3 12.2 12.6 11.1 8.5 6.2 4.5"),
]


@pytest.mark.parametrize(("station", "printed"), STATION_ROWS)
def test_climate_of_stations(station: str, printed: str) -> None:
    # Section 9: the table itself, and the days worked out from it, whose means must be those printed.
    means = [float(mean) for mean in printed.split()]
    assert list(STATIONS[station]) == means
    days = iter(daily_temperatures(STATIONS[station]))
    for mean, length in zip(means, DAYS_IN_MONTHS, strict=True):
        assert math.fsum(islice(days, length)) / length == pytest.approx(mean, abs=1e-9)


def test_disruptive_work_while_growth_is_above_half_and_rising() -> None:
    # pace_turf. In Oxford, at an optimum of 18 °C, growth is above a half from May to October:
    # 9.8 °C in April give exp(−0.5·(8.2/5.5)²) = 0.33, 12.9 °C in May exp(−0.5·(5.1/5.5)²) = 0.65.
    april, may = (growth_potential(mean, Grass.COOL_SEASON, 18) for mean in (9.8, 12.9))
    assert april == pytest.approx(0.33, abs=0.005)
    assert may == pytest.approx(0.65, abs=0.005)
    assert april < 0.5 < may


def test_british_mean_is_that_of_four_stations() -> None:
    # met_office_stations, worked by hand from the printed rows of Oxford, Durham, Cardiff and
    # Armagh: January (5.2 + 4.1 + 5.6 + 5.0) / 4, July (18.1 + 15.8 + 17.5 + 15.7) / 4.
    assert BRITISH_MEAN[0] == pytest.approx(19.9 / 4)
    assert BRITISH_MEAN[6] == pytest.approx(67.1 / 4)
    assert "Lerwick" in STATIONS
