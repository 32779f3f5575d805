"""Section 6 of the collected figures: mole drains, against what others have printed."""

from __future__ import annotations

import pytest

from notices.agronomy import moles


def test_length_under_a_hectare() -> None:
    # definition: 1 ha at 2 m = 5,000 m
    assert moles.channel_length_m(10_000, 2) == 5_000


@pytest.mark.parametrize(
    ("source_key", "clay_percent", "sand_percent", "passes"),
    [
        # At least 30 % clay and at most 30 % sand
        pytest.param("ahdb_moles", 30, 30, True, id="ahdb_moles"),
        pytest.param("ahdb_moles", 29.9, 30, False, id="ahdb_moles"),
        pytest.param("ahdb_moles", 30, 30.1, False, id="ahdb_moles"),
        # At least 35 % clay, nothing said of sand
        pytest.param("agriculture_victoria2002", 35, 65, True, id="agriculture_victoria2002"),
        pytest.param("agriculture_victoria2002", 34.9, 0, False, id="agriculture_victoria2002"),
        # At least 45 % clay and under 20 % sand
        pytest.param("ghane2022", 45, 19.9, True, id="ghane2022"),
        pytest.param("ghane2022", 44.9, 19.9, False, id="ghane2022"),
        pytest.param("ghane2022", 45, 20, False, id="ghane2022"),
    ],
)
def test_soil(source_key: str, clay_percent: float, sand_percent: float, passes: bool) -> None:
    verdicts = {v.source_key: v.passes for v in moles.soil_verdicts(clay_percent, sand_percent)}
    assert verdicts[source_key] is passes


@pytest.mark.parametrize("sand_percent", [66, 80, 90, 100])
def test_every_limit_rejects_a_sand_based_green(sand_percent: float) -> None:
    # The collection: never in a sand-based green, all three limits reject it. Two thirds of sand
    # leave less than 35 % for clay, so this holds whatever else is in it.
    for verdict in moles.soil_verdicts(100 - sand_percent, sand_percent):
        assert not verdict.passes


def test_life_on_farmland() -> None:
    # ahdb_moles: 5 to 10 years.
    assert moles.LIFE_ON_FARMLAND_YEARS == (5, 10)


# Not here: depth, speed and length of runs (AHDB; Dhakad et al. 2014) are
# advice and observation, without a formula.
