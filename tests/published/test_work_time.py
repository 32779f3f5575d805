"""Section 7 of the collected figures: work time, against what others have printed."""

from __future__ import annotations

import pytest

from notices import units
from notices.agronomy import work_time

IOWA_ROWS = [  # width [ft], speed [mph], efficiency → acres per hour, printed to a tenth
    pytest.param(40, 6, 0.70, 20.4, id="iowa_pm696"),
    pytest.param(10, 5, 0.63, 3.8, id="iowa_pm696"),
    pytest.param(15, 6, 0.63, 6.9, id="iowa_pm696"),
    pytest.param(30, 6, 0.60, 13.1, id="iowa_pm696"),
    pytest.param(11.25, 5.5, 0.85, 6.4, id="iowa_pm696"),
]


@pytest.mark.parametrize(("width_ft", "speed_mph", "efficiency", "printed"), IOWA_ROWS)
def test_field_capacity(
    width_ft: float, speed_mph: float, efficiency: float, printed: float
) -> None:
    acres = work_time.field_capacity_acres_per_h(speed_mph, width_ft, efficiency)
    assert acres == pytest.approx(printed, abs=0.05)


@pytest.mark.parametrize(("width_ft", "speed_mph", "efficiency", "printed"), IOWA_ROWS)
def test_the_metric_formula_gives_the_same_capacity(
    width_ft: float, speed_mph: float, efficiency: float, printed: float
) -> None:
    hectares = work_time.field_capacity_ha_per_h(
        units.mph_to_km_per_h(speed_mph), units.feet_to_m(width_ft), efficiency
    )
    acres = units.m2_to_acres(units.hectares_to_m2(hectares))
    assert acres == pytest.approx(printed, abs=0.05)


@pytest.mark.parametrize(("width_ft", "speed_mph", "efficiency", "printed"), IOWA_ROWS)
def test_an_hour_covers_an_hours_capacity(
    width_ft: float, speed_mph: float, efficiency: float, printed: float
) -> None:
    minutes = work_time.minutes_for_area(
        units.acres_to_m2(printed),
        units.mph_to_km_per_h(speed_mph),
        units.feet_to_m(width_ft),
        efficiency,
    )
    assert minutes == pytest.approx(60, rel=0.05 / printed)


# Not here: two days for a dozen people over 18 greens, or 5 to 6 greens a day for a small crew
# (common practice): no widths, speeds or areas are given with them. The timetable of machines
# following one another belongs to the programme.
