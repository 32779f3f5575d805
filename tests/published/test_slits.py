"""Section 3 of the collected figures: slits, against what others have printed."""

from __future__ import annotations

import pytest

from notices.agronomy import holes, slits

INCH = 25.4


@pytest.mark.parametrize(
    ("blade_width_mm", "blade_spacing_mm", "expected"),
    [
        pytest.param(3, INCH, 11.8, id="derived-from-ervin_nichols"),
        pytest.param(2, 25, 8.0, id="definition"),
    ],
)
def test_share_of_the_surface(
    blade_width_mm: float, blade_spacing_mm: float, expected: float
) -> None:
    percent = slits.surface_percent(blade_width_mm, blade_spacing_mm)
    assert percent == pytest.approx(expected, abs=0.05)


def test_year_of_coring_and_verticutting() -> None:
    # ervin_nichols: 26.6 % in a year of 0.25 in double-pass coring, 0.5 in coring and one pass
    # of 3 mm blades an inch apart.
    pattern = (1.33 * INCH, 1.5 * INCH)
    year = (
        holes.surface_percent(0.25 * INCH, *pattern, passes=2)
        + holes.surface_percent(0.5 * INCH, *pattern)
        + slits.surface_percent(3, INCH)
    )
    assert year == pytest.approx(26.6, abs=0.05)
