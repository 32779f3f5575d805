"""The conversions at the head of the collected figures."""

from __future__ import annotations

import pytest

from notices import units


@pytest.mark.parametrize(
    ("value", "printed", "tolerance"),
    [
        pytest.param(units.MM_PER_INCH, 25.4, 0, id="inch"),
        pytest.param(units.M2_PER_FT2, 0.09290304, 0, id="square-foot"),
        pytest.param(units.MM_PER_FT3_PER_1000_FT2, 0.3048, 0, id="ft3-per-1000-ft2"),
        pytest.param(100 * units.T_PER_M3_PER_LB_PER_FT3, 1.602, 0.0005, id="100-lb-per-ft3"),
        pytest.param(units.M3_PER_YD3 / units.M3_PER_FT3, 27, 1e-12, id="cubic-yard"),
        pytest.param(units.KG_PER_US_TON, 907.2, 0.05, id="us-ton"),
    ],
)
def test_printed_conversions(value: float, printed: float, tolerance: float) -> None:
    assert value == pytest.approx(printed, abs=tolerance, rel=0)


def test_constants_agree_with_one_another() -> None:
    # Defined apart from one another above, but a foot is twelve inches all the same.
    assert pytest.approx(12 * units.MM_PER_INCH / 1000) == units.M_PER_FOOT
    assert pytest.approx(units.M_PER_FOOT**2) == units.M2_PER_FT2
    assert pytest.approx(5280 * units.M_PER_FOOT / 1000) == units.KM_PER_MILE
