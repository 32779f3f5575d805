"""Every conversion against what its unit is by definition."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices import units

# An inch is 25.4 mm, a foot 12 of them, a yard 3 feet, a mile 1,760 yards; a pound is 0.45359237 kg,
# a US ton 2,000 of them.
FOOT, YARD, POUND = 12 * 0.0254, 3 * 12 * 0.0254, 0.45359237

SIZES: list[tuple[Callable[[float], float], float]] = [
    (units.mm_to_inches, 25.4),
    (units.m_to_feet, FOOT),
    (units.m2_to_ft2, FOOT**2),
    (units.m3_to_ft3, FOOT**3),
    (units.m3_to_yd3, YARD**3),
    (units.kg_to_lb, POUND),
    (units.t_to_us_tons, 2_000 * POUND / 1_000),
    (units.kg_per_m2_to_lb_per_1000_ft2, POUND / (1_000 * FOOT**2)),
    # A cubic foot over 1,000 square feet lies a thousandth of a foot deep.
    (units.mm_to_ft3_per_1000_ft2, 1_000 * FOOT / 1_000),
    (units.t_per_m3_to_lb_per_ft3, POUND / 1_000 / FOOT**3),
    (units.km_per_h_to_mph, 1_760 * YARD / 1_000),
]
"""Each conversion, and how large one of its units is in ours."""


@pytest.mark.parametrize(("convert", "size"), SIZES)
@given(number=st.floats(-1e6, 1e6))
def test_so_many_times_its_size_are_so_many(
    convert: Callable[[float], float], size: float, number: float
) -> None:
    assert convert(number * size) == pytest.approx(number, rel=1e-12, abs=1e-10)


@pytest.mark.parametrize(("celsius", "fahrenheit"), [(0, 32), (100, 212), (-40, -40)])
def test_fixed_points_of_the_thermometers(celsius: float, fahrenheit: float) -> None:
    assert units.celsius_to_fahrenheit(celsius) == pytest.approx(fahrenheit)


def test_no_conversion_is_left_out() -> None:
    named = {convert.__name__ for convert, _ in SIZES} | {"celsius_to_fahrenheit"}
    assert named == {name for name in vars(units) if "_to_" in name}
