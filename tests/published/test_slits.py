"""Section 3 of the collected figures: slits, against what others have printed."""

from __future__ import annotations

import pytest

from notices.agronomy import holes, slits
from notices.operations import CATALOGUE

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


def test_slits_of_the_year() -> None:
    # ervin_nichols: 0.25 in double-pass coring 4.92 %, 0.5 in coring 9.84 %, of 26.6 % in all: what
    # is left for the slits, to the rounding of the three, is what blade and spacing give.
    left = 26.6 - 4.92 - 9.84
    assert slits.surface_percent(3, INCH) == pytest.approx(left, abs=0.05 + 0.005 + 0.005)


@pytest.mark.parametrize("depth_mm", [13, 25])
def test_scarifying_may_go_as_deep_as_in_research(depth_mm: float) -> None:
    # Trade press: 13 to 25 mm deep in research programmes against organic matter.
    (depth,) = (s for s in CATALOGUE["scarifying"].settings if s.name == "depth")
    assert depth.low is not None
    assert depth.high is not None
    assert depth.low <= depth_mm <= depth.high


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
