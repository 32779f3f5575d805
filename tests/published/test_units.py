"""The conversions at the head of the collected figures."""

from __future__ import annotations

import pytest

from notices import units


@pytest.mark.parametrize(
    ("value", "printed", "tolerance"),
    [
        pytest.param(units.inches_to_mm(1), 25.4, 0, id="inch"),
        pytest.param(units.ft2_to_m2(1), 0.09290304, 0, id="square-foot"),
        pytest.param(units.ft3_per_1000_ft2_to_mm(1), 0.3048, 0, id="ft3-per-1000-ft2"),
        pytest.param(units.lb_per_ft3_to_t_per_m3(100), 1.602, 0.0005, id="100-lb-per-ft3"),
        pytest.param(units.m3_to_ft3(units.yd3_to_m3(1)), 27, 1e-12, id="cubic-yard"),
        pytest.param(units.us_tons_to_t(1) * 1000, 907.2, 0.05, id="us-ton"),
    ],
)
def test_printed_conversions(value: float, printed: float, tolerance: float) -> None:
    assert value == pytest.approx(printed, abs=tolerance, rel=0)


def test_constants_agree_with_one_another() -> None:
    # Defined apart from one another above, but a foot is twelve inches all the same.
    assert pytest.approx(12 * units.MM_PER_INCH / 1000) == units.M_PER_FOOT
    assert pytest.approx(units.M_PER_FOOT**2) == units.M2_PER_FT2
    assert pytest.approx(units.M_PER_YARD**2) == units.M2_PER_YD2
    assert pytest.approx(5280 * units.M_PER_FOOT / 1000) == units.KM_PER_MILE
