"""Every conversion and its way back."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices import units

PAIRS: list[tuple[Callable[[float], float], Callable[[float], float]]] = [
    (units.inches_to_mm, units.mm_to_inches),
    (units.feet_to_m, units.m_to_feet),
    (units.yards_to_m, units.m_to_yards),
    (units.ft2_to_m2, units.m2_to_ft2),
    (units.yd2_to_m2, units.m2_to_yd2),
    (units.acres_to_m2, units.m2_to_acres),
    (units.hectares_to_m2, units.m2_to_hectares),
    (units.ft3_to_m3, units.m3_to_ft3),
    (units.yd3_to_m3, units.m3_to_yd3),
    (units.lb_to_kg, units.kg_to_lb),
    (units.us_tons_to_t, units.t_to_us_tons),
    (units.lb_per_1000_ft2_to_kg_per_m2, units.kg_per_m2_to_lb_per_1000_ft2),
    (units.ft3_per_1000_ft2_to_mm, units.mm_to_ft3_per_1000_ft2),
    (units.lb_per_ft3_to_t_per_m3, units.t_per_m3_to_lb_per_ft3),
    (units.mph_to_km_per_h, units.km_per_h_to_mph),
    (units.fahrenheit_to_celsius, units.celsius_to_fahrenheit),
]


@pytest.mark.parametrize(("there", "back"), PAIRS)
@given(value=st.floats(-1e6, 1e6))
def test_there_and_back(
    there: Callable[[float], float], back: Callable[[float], float], value: float
) -> None:
    assert back(there(value)) == pytest.approx(value, rel=1e-12, abs=1e-10)
    assert there(back(value)) == pytest.approx(value, rel=1e-12, abs=1e-10)


def test_every_conversion_has_a_way_back() -> None:
    named = {function.__name__ for pair in PAIRS for function in pair}
    assert named == {name for name in vars(units) if "_to_" in name}


def test_rate_is_mass_over_area() -> None:
    rate = units.lb_per_1000_ft2_to_kg_per_m2(100)
    assert rate == pytest.approx(units.lb_to_kg(100) / units.ft2_to_m2(1000))


def test_density_is_mass_over_volume() -> None:
    density = units.lb_per_ft3_to_t_per_m3(100)
    assert density == pytest.approx(units.lb_to_kg(100) / 1000 / units.ft3_to_m3(1))


@pytest.mark.parametrize(("fahrenheit", "celsius"), [(32, 0), (212, 100), (-40, -40)])
def test_fixed_points_of_the_thermometers(fahrenheit: float, celsius: float) -> None:
    assert units.fahrenheit_to_celsius(fahrenheit) == pytest.approx(celsius)
    assert units.celsius_to_fahrenheit(celsius) == pytest.approx(fahrenheit)
