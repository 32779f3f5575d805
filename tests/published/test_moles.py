"""Section 6 of the collected figures: mole drains, against what others have printed."""

from __future__ import annotations

import pytest

from notices.agronomy import moles
from notices.operations import CATALOGUE


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


def test_on_greens_channels_lie_shallower_and_closer_than_on_farms() -> None:
    # dhakad2014: 400 to 600 mm deep, 2 m apart best. Common practice on greens, no published source:
    # 250 to 350 mm deep, 0.5 to 1.5 m apart, 40 to 50 mm wide.
    usual = {setting.name: setting.default for setting in CATALOGUE["mole ploughing"].settings}
    depth, spacing, width = (usual[n] for n in ("depth", "spacing", "channel_diameter"))
    assert isinstance(depth, float)
    assert isinstance(spacing, float)
    assert isinstance(width, float)
    assert 250 <= depth <= 350
    assert 500 <= spacing <= 1500
    assert 40 <= width <= 50


def test_farm_figures_can_be_written() -> None:
    # dhakad2014 and the limits of the settings: what suits a farm is no slip of the pen.
    limits = {setting.name: setting for setting in CATALOGUE["mole ploughing"].settings}
    for name, values in (("depth", (400, 600)), ("spacing", (2000,))):
        low, high = limits[name].low, limits[name].high
        assert low is not None
        assert high is not None
        assert all(low <= value <= high for value in values)


def test_usual_speed() -> None:
    # The collection, section 6: 2 to 4 km/h.
    pace = CATALOGUE["mole ploughing"].pace
    assert pace is not None
    assert 2 <= pace.speed_km_h <= 4


# Not here: runs of up to about 80 m, which no green has.
