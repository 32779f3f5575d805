"""Section 2 of the collected figures: sand, against what others have printed."""

from __future__ import annotations

import pytest

from notices import units
from notices.agronomy import holes, sand
from notices.operations import CATALOGUE
from notices.plan.model import Sand

DRY_T_M3_WOODS = 1.5  # woods2017: 1 mm over 1 m² = 1 L = 1.5 kg of dry sand
DRY_T_M3_USGA = 100 * units.T_PER_M3_PER_LB_PER_FT3  # daniels2018: dry sand about 100 lb/ft³


@pytest.mark.parametrize(
    ("depth_mm", "printed_kg_per_m2"),
    [
        pytest.param(1, 1.5, id="woods2017"),
        pytest.param(0.5, 75 / 100, id="woods2017"),  # 75 kg on 100 m²
        pytest.param(6, 9, id="woods2017"),
    ],
)
def test_depth_and_mass(depth_mm: float, printed_kg_per_m2: float) -> None:
    assert sand.mass_kg_per_m2(depth_mm, DRY_T_M3_WOODS) == pytest.approx(printed_kg_per_m2)
    assert sand.depth_mm(printed_kg_per_m2, DRY_T_M3_WOODS) == pytest.approx(depth_mm)


@pytest.mark.parametrize(
    ("lb_per_1000_ft2", "printed_kg_per_m2"),
    [
        pytest.param(100, 0.49, id="daniels2018"),
        pytest.param(150, 0.73, id="daniels2018"),
    ],
)
def test_rate_of_one_dressing(lb_per_1000_ft2: float, printed_kg_per_m2: float) -> None:
    mass = lb_per_1000_ft2 * units.KG_PER_M2_PER_LB_PER_1000_FT2
    assert mass == pytest.approx(printed_kg_per_m2, abs=0.005)


def test_depth_of_one_dressing() -> None:
    # daniels2018: 100 lb/1,000 ft² are 0.3 mm.
    mass = 100 * units.KG_PER_M2_PER_LB_PER_1000_FT2
    assert sand.depth_mm(mass, DRY_T_M3_USGA) == pytest.approx(0.3, abs=0.05)


def test_density_in_metric_units() -> None:
    # daniels2018: 100 lb/ft³ = 1.60 t/m³; printed elsewhere in the collection as 1,602 kg/m³.
    assert pytest.approx(1.602, abs=0.0005) == DRY_T_M3_USGA


def test_volume_and_mass_of_a_heavy_dressing() -> None:
    # ervin_nichols: 12 ft³ = 1,200 lb per 1,000 ft².
    volume_m3 = 12 * units.M3_PER_FT3
    mass_lb = units.kg_to_lb(sand.mass_t(volume_m3, DRY_T_M3_USGA) * 1000)
    assert mass_lb == pytest.approx(1200)
    assert units.m3_to_ft3(sand.volume_m3(1200 * units.KG_PER_LB / 1000, DRY_T_M3_USGA)) == (
        pytest.approx(12)
    )


@pytest.mark.parametrize(
    ("ft3_per_1000_ft2", "printed_mm", "tolerance"),
    [
        pytest.param(12, 3.66, 0.005, id="ervin_nichols"),
        pytest.param(40, 12, 0.5, id="obrien_hartwiger2003"),
        pytest.param(50, 15, 0.5, id="obrien_hartwiger2003"),
        pytest.param(25, 7.6, 0.05, id="whitlark_thompson2019"),
        pytest.param(35, 10.7, 0.05, id="whitlark_thompson2019"),
    ],
)
def test_volume_per_area_as_depth(
    ft3_per_1000_ft2: float, printed_mm: float, tolerance: float
) -> None:
    depth = ft3_per_1000_ft2 * units.MM_PER_FT3_PER_1000_FT2
    assert depth == pytest.approx(printed_mm, abs=tolerance)


def test_solid_tines_raise_the_surface_by_the_sand_they_take() -> None:
    # woods2021: the holes of 12 mm, 50 × 50 mm, 70 mm deep take 3.167 mm of sand, so that a
    # green of 1 m² takes 3.167 L.
    open_volume = holes.volume_l_per_m2(12, 70, 50, 50)
    litres = 1000 * sand.fill_volume_m3(open_volume, 1, waste_fraction=0)
    assert litres == pytest.approx(3.167, abs=0.0005)


# How far the surface sinks or rises (woods2021) is checked in a whole programme:
# tests/programme/test_years_and_records.py.


def test_published_totals_of_a_year() -> None:
    # obrien_hartwiger2003: 12 to 15 mm; whitlark_thompson2019: 7.6 to 10.7 mm; trade press: 2 to 8
    # kg/m² a year, 0.5 to 1 kg/m² a dressing, about 3 kg/m² or more hard to work in.
    assert sand.YEAR_TOTALS_MM == {
        "obrien_hartwiger2003": (12, 15),
        "whitlark_thompson2019": (7.6, 10.7),
    }
    assert (*sand.YEAR_TOTAL_KG_M2, sand.MOST_ON_THE_SURFACE_KG_M2) == (2, 8, 1)
    assert pytest.approx(3) == sand.MOST_PER_DRESSING_KG_M2


def test_usual_density_lies_between_the_published_ones() -> None:
    # woods2017: 1.5 t/m³; daniels2018: 100 lb/ft³, 1.60 t/m³.
    usual = Sand.model_fields["density"].default
    assert DRY_T_M3_WOODS <= usual <= DRY_T_M3_USGA


def test_usual_dressing_lies_between_the_published_ones() -> None:
    # uk_trade_press: 0.5 to 1 kg/m² a dressing. daniels2018: one every 7 to 14 days.
    usual = {setting.name: setting.default for setting in CATALOGUE["top dressing"].settings}
    rate, days = usual["rate"], usual["days_between"]
    assert isinstance(rate, float)
    assert isinstance(days, int)
    assert 0.5 <= rate <= 1
    assert 7 <= days <= 14


def test_dressings_of_a_season_agree_with_the_total_of_a_year() -> None:
    # uk_trade_press: four to six dressings of 0.5 to 1 kg/m² are 2 to 6 kg/m², of 2 to 8 in a year.
    low, high = sand.YEAR_TOTAL_KG_M2
    assert low == 4 * 0.5
    assert high >= 6 * sand.MOST_ON_THE_SURFACE_KG_M2


def test_fill_of_four_dressings() -> None:
    # common practice, no published source: half at first, then two or three equal top-ups.
    assert sand.dressing_shares(4) == pytest.approx((1 / 2, 1 / 6, 1 / 6, 1 / 6))
    assert sand.dressing_shares(3) == pytest.approx((1 / 2, 1 / 4, 1 / 4))


# Rates and yearly totals of the trade press are advice, without a second figure to reckon them from:
# held as printed. Brushing and bridging of damp sand (USGA) are observations.
