"""Section 1 of the collected figures: holes, against what others have printed."""

from __future__ import annotations

import pytest

from notices import units
from notices.agronomy import holes, thatch
from notices.operations import CATALOGUE
from notices.programme import published


def inch(value: float) -> float:
    return value * units.MM_PER_INCH


@pytest.mark.parametrize(
    ("along_mm", "across_mm", "printed"),
    [
        pytest.param(50, 50, 400, id="woods2009"),
        pytest.param(25, 25, 1600, id="woods2009"),
    ],
)
def test_holes_per_square_metre(along_mm: float, across_mm: float, printed: float) -> None:
    assert holes.holes_per_m2(along_mm, across_mm) == pytest.approx(printed)


@pytest.mark.parametrize(
    ("diameter_mm", "spacing_mm", "passes", "printed", "tolerance"),
    [
        pytest.param(10, (50, 50), 1, 3.1, 0.05, id="woods2009"),
        pytest.param(12, (50, 50), 1, 4.5, 0.05, id="woods2009"),
        pytest.param(12, (50, 50), 1, 4.5, 0.05, id="woods2021"),
        # Spring and autumn: two passes a year. The year is printed as 19.6, twice a single 9.84
        # cut to 9.8; half a unit of that digit, twice.
        pytest.param(inch(0.5), (inch(1.33), inch(1.5)), 2, 19.6, 0.1, id="ervin_nichols"),
        pytest.param(inch(0.5), (inch(1.33), inch(1.5)), 1, 9.84, 0.005, id="ervin_nichols"),
        # A double pass in spring and in autumn: four a year, printed as a whole number.
        pytest.param(inch(0.25), (inch(1.33), inch(1.5)), 4, 10, 0.5, id="ervin_nichols"),
        pytest.param(inch(0.25), (inch(1.33), inch(1.5)), 2, 4.92, 0.005, id="ervin_nichols"),
        # Printed with its last digit cut, not rounded: a whole unit of it.
        pytest.param(inch(0.625), (inch(1.5), inch(1.5)), 1, 13.63, 0.01, id="gcsaa_forum2013"),
        pytest.param(inch(0.470), (inch(1.5), inch(1.5)), 1, 7.71, 0.005, id="gcsaa_forum2013"),
    ],
)
def test_share_of_the_surface(
    diameter_mm: float,
    spacing_mm: tuple[float, float],
    passes: int,
    printed: float,
    tolerance: float,
) -> None:
    percent = holes.surface_percent(diameter_mm, *spacing_mm, passes)
    assert percent == pytest.approx(printed, abs=tolerance)


def test_outside_diameter_overstates_what_is_removed() -> None:
    # gcsaa_forum2013: 0.625 in outside and 0.470 in inside of the same tine, "1.77 times".
    outside = holes.surface_percent(inch(0.625), inch(1.5), inch(1.5))
    inside = holes.surface_percent(inch(0.470), inch(1.5), inch(1.5))
    assert outside / inside == pytest.approx(1.77, abs=0.005)


def test_volume_of_the_holes() -> None:
    # woods2021: 12 mm, 50 × 50 mm, 70 mm deep hold 3,167 cm³/m² = 3.167 mm of sand.
    assert holes.volume_l_per_m2(12, 70, 50, 50) == pytest.approx(3.167, abs=0.0005)


def test_mass_of_the_cores() -> None:
    # woods2021: 4,092 g/m² come out, reckoned from the printed 3.167 L, so to one gram.
    mass = holes.core_mass_kg_per_m2(holes.volume_l_per_m2(12, 70, 50, 50))
    assert mass == pytest.approx(4.092, abs=0.001)


def test_holes_per_square_foot() -> None:
    # definition: 144 / (along × across), in inches.
    per_ft2 = holes.holes_per_m2(inch(1.33), inch(1.5)) * units.M2_PER_FT2
    assert per_ft2 == pytest.approx(144 / (1.33 * 1.5))


def test_organic_matter_at_which_pore_space_falls() -> None:
    # carrow: 3 to 4 % by weight.
    assert thatch.PORES_FALL_AT_PERCENT == (3, 4)


def test_published_targets_of_a_year() -> None:
    # hartwiger_obrien2001: 15 to 20 % of the surface a year. woods2009: at least 10 %, ideally 20 %.
    # woods2019 names no percentage any more, so that there is no third.
    found = {each.source: (each.low, each.high) for each in published.SURFACE_PERCENT}
    assert found == {"hartwiger_obrien2001": (15, 20), "woods2009": (10, 20)}


def test_usual_cores_are_wide_enough_for_sand() -> None:
    # woods2009: tines of 10 mm or more, since sand bridges over smaller holes.
    usual = {setting.name: setting.default for setting in CATALOGUE["hollow tining"].settings}
    width = usual["tine_diameter"]
    assert isinstance(width, float)
    assert width >= 10
