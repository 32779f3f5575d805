"""Scaling laws of holes, slits, channels, sand and work time."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.agronomy import holes, moles, sand, slits, work_time

DIAMETERS_MM = st.floats(0, 20)
SPACINGS_MM = st.floats(40, 300)
DEPTHS_MM = st.floats(0, 400)
PASSES = st.integers(1, 4)
AREAS_M2 = st.floats(0, 20_000)
DENSITIES_T_M3 = st.floats(0.5, 3)


@given(DIAMETERS_MM, SPACINGS_MM, SPACINGS_MM)
def test_surface_grows_with_the_square_of_the_diameter(
    diameter: float, along: float, across: float
) -> None:
    once = holes.surface_percent(diameter, along, across)
    assert holes.surface_percent(2 * diameter, along, across) == pytest.approx(4 * once)


@given(DIAMETERS_MM, SPACINGS_MM, SPACINGS_MM)
def test_surface_halves_with_twice_the_spacing(
    diameter: float, along: float, across: float
) -> None:
    once = holes.surface_percent(diameter, along, across)
    assert holes.surface_percent(diameter, 2 * along, across) == pytest.approx(once / 2)
    assert holes.surface_percent(diameter, along, 2 * across) == pytest.approx(once / 2)


@given(SPACINGS_MM, SPACINGS_MM)
def test_turning_the_pattern_changes_nothing(along: float, across: float) -> None:
    turned = holes.holes_per_m2(across, along)
    assert holes.holes_per_m2(along, across) == pytest.approx(turned)


@given(DIAMETERS_MM, DEPTHS_MM, SPACINGS_MM, PASSES, PASSES)
def test_passes_over_holes_add(
    diameter: float, depth: float, spacing: float, first: int, second: int
) -> None:
    both = holes.volume_l_per_m2(diameter, depth, spacing, spacing, first + second)
    one = holes.volume_l_per_m2(diameter, depth, spacing, spacing, first)
    other = holes.volume_l_per_m2(diameter, depth, spacing, spacing, second)
    assert both == pytest.approx(one + other)


@given(DIAMETERS_MM, DEPTHS_MM, SPACINGS_MM, SPACINGS_MM)
def test_holes_are_never_bigger_than_the_turf(
    diameter: float, depth: float, along: float, across: float
) -> None:
    assert 0 <= holes.surface_percent(diameter, along, across) <= 100
    assert 0 <= holes.volume_l_per_m2(diameter, depth, along, across) <= depth


def test_touching_holes_leave_what_circles_leave_of_squares() -> None:
    assert holes.surface_percent(50, 50, 50) == pytest.approx(100 * math.pi / 4)


@given(st.floats(0, 5), SPACINGS_MM, PASSES)
def test_surface_of_slits_is_proportional(width: float, spacing: float, passes: int) -> None:
    once = slits.surface_percent(width, spacing)
    assert slits.surface_percent(2 * width, spacing) == pytest.approx(2 * once)
    assert slits.surface_percent(width, 2 * spacing) == pytest.approx(once / 2)
    assert slits.surface_percent(width, spacing, passes) == pytest.approx(passes * once)
    assert 0 <= once <= 100


@given(AREAS_M2, st.floats(0, 5), DEPTHS_MM, SPACINGS_MM, PASSES)
def test_volume_of_slits_is_length_times_cross_section(
    area: float, width: float, depth: float, spacing: float, passes: int
) -> None:
    # The two functions take different ways to the same soil.
    litres = slits.volume_l_per_m2(width, depth, spacing, passes) * area
    cubic_metres = slits.length_m(area, spacing, passes) * (width / 1000) * (depth / 1000)
    assert litres / 1000 == pytest.approx(cubic_metres, abs=1e-12)


@given(AREAS_M2, st.floats(0.3, 5))
def test_channels_in_millimetres_are_slits(area: float, spacing_m: float) -> None:
    channels = moles.channel_length_m(area, spacing_m)
    assert channels == pytest.approx(slits.length_m(area, spacing_m * 1000))


@given(st.floats(0, 100), st.floats(0, 100))
def test_more_clay_for_sand_never_makes_a_soil_worse(clay: float, share: float) -> None:
    sand_percent = (100 - clay) * share / 100
    before = [v.passes for v in moles.soil_verdicts(clay, sand_percent)]
    after = [v.passes for v in moles.soil_verdicts(clay + sand_percent / 2, sand_percent / 2)]
    assert all(now for was, now in zip(before, after, strict=True) if was)


@given(st.floats(0, 100), DENSITIES_T_M3)
def test_depth_and_mass_of_sand_there_and_back(depth: float, density: float) -> None:
    mass = sand.mass_kg_per_m2(depth, density)
    assert sand.depth_mm(mass, density) == pytest.approx(depth)


@given(st.floats(0, 1000), DENSITIES_T_M3)
def test_volume_and_mass_of_sand_there_and_back(volume: float, density: float) -> None:
    mass = sand.mass_t(volume, density)
    assert sand.volume_m3(mass, density) == pytest.approx(volume)


@given(st.floats(0, 20), AREAS_M2, st.floats(0, 1))
def test_waste_is_on_top_of_what_the_holes_take(litres: float, area: float, waste: float) -> None:
    net = sand.fill_volume_m3(litres, area, 0)
    assert net == pytest.approx(litres * area / 1000)
    assert sand.fill_volume_m3(litres, area, waste) == pytest.approx(net * (1 + waste))


def test_one_twentieth_is_wasted_unless_said_otherwise() -> None:
    assert sand.fill_volume_m3(2, 500) == pytest.approx(1.05)


@given(st.integers(1, 60))
def test_shares_of_a_fill_add_up(dressings: int) -> None:
    shares = sand.dressing_shares(dressings)
    assert len(shares) == dressings
    assert math.fsum(shares) == pytest.approx(1)
    assert all(share > 0 for share in shares)


def test_a_single_dressing_takes_everything() -> None:
    assert sand.dressing_shares(1) == (1.0,)
    assert sand.dressing_shares(2) == (0.5, 0.5)


@given(AREAS_M2, st.floats(0.5, 10), st.floats(0.3, 5), st.floats(0.1, 1), PASSES)
def test_work_time_is_proportional(
    area: float, speed: float, width: float, efficiency: float, passes: int
) -> None:
    once = work_time.minutes_for_area(area, speed, width, efficiency)
    assert once >= 0
    assert work_time.minutes_for_area(area, speed, width, efficiency, passes) == pytest.approx(
        passes * once
    )
    assert work_time.minutes_for_area(area, 2 * speed, width, efficiency) == pytest.approx(once / 2)
    assert work_time.minutes_for_area(area, speed, 2 * width, efficiency) == pytest.approx(once / 2)


def test_work_time_of_a_green_worked_by_hand() -> None:
    # 1.2 km/h × 0.8 m × 60 % = 576 m²/h, so 480 m² take 50 minutes.
    assert work_time.minutes_for_area(480, 1.2, 0.8, 0.6) == pytest.approx(50)
