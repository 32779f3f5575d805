"""Section 4 of the collected figures: growth potential, against what others have printed."""

from __future__ import annotations

import math

import pytest

from notices.agronomy.climate import BRITISH_MEAN, STATIONS
from notices.agronomy.growth import (
    ANNUAL_MEADOW_GRASS_OPTIMUM_C,
    GOOD_GROWTH,
    GROWTH_EXTREMELY_LIMITED,
    Grass,
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


def test_bands() -> None:
    # pace_turf: 50 to 100 % good; 10 % or less extremely limited.
    assert GOOD_GROWTH == 0.50
    assert GROWTH_EXTREMELY_LIMITED == 0.10


def test_optimum_of_annual_meadow_grass() -> None:
    # Used in England and Canada: about 18 °C.
    assert ANNUAL_MEADOW_GRASS_OPTIMUM_C == 18


def test_british_mean_is_that_of_four_stations() -> None:
    # met_office_stations, worked by hand from the printed rows of Oxford, Durham, Cardiff and
    # Armagh: January (5.2 + 4.1 + 5.6 + 5.0) / 4, July (18.1 + 15.8 + 17.5 + 15.7) / 4.
    assert BRITISH_MEAN[0] == pytest.approx(19.9 / 4)
    assert BRITISH_MEAN[6] == pytest.approx(67.1 / 4)
    assert "Lerwick" in STATIONS
