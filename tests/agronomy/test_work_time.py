"""What must hold of work time whatever the figures: ends of the scale, and what is refused."""

from __future__ import annotations

import math

import pytest

from notices.agronomy.work_time import (
    field_capacity_ha_per_h,
    loads,
    minutes_for_area,
    minutes_to_clear,
    minutes_to_haul,
)


@pytest.mark.parametrize(
    "arguments",
    [(0, 1, 0.6), (1, 0, 0.6), (1, 1, 0), (1, 1, 1.1), (math.nan, 1, 0.6), (-1, 1, 0.6)],
)
def test_no_capacity_without_speed_width_and_efficiency(
    arguments: tuple[float, float, float],
) -> None:
    with pytest.raises(ValueError, match="must be"):
        field_capacity_ha_per_h(*arguments)
    with pytest.raises(ValueError, match="must be"):
        minutes_for_area(480, *arguments)


def test_passes_add_and_no_area_takes_no_time() -> None:
    once = minutes_for_area(480, 1.2, 0.8, 0.6)
    assert minutes_for_area(480, 1.2, 0.8, 0.6, passes=3) == pytest.approx(3 * once)
    assert minutes_for_area(0, 1.2, 0.8, 0.6) == 0
    for passes in (0, -1):
        with pytest.raises(ValueError, match="passes"):
            minutes_for_area(480, 1.2, 0.8, 0.6, passes=passes)


def test_cores_are_cleared_by_hand() -> None:
    # Two people at 1 m³ an hour each: 1 m³ takes half an hour, and 3 people a third of one.
    assert minutes_to_clear(1, 2, 1) == 30
    assert minutes_to_clear(1, 3, 1) == 20
    assert minutes_to_clear(0, 1, 1) == 0


@pytest.mark.parametrize(
    ("volume", "load", "expected"),
    [
        (0, 1, 0),
        (0.1, 1, 1),
        (1, 1, 1),
        (1.01, 1, 2),
        (0.3, 0.1, 3),  # in binary a little less than three tenths, and a little more than three
        (0.7 + 0.1 + 0.1, 0.1, 9),
    ],
)
def test_a_part_of_a_load_is_a_trip(volume: float, load: float, expected: int) -> None:
    assert loads(volume, load) == expected
    assert minutes_to_haul(volume, load, 12) == 12 * expected


@pytest.mark.parametrize("wrong", [-1, math.nan, math.inf])
def test_no_hands_without_sense(wrong: float) -> None:
    for broken in (
        lambda: minutes_to_clear(wrong, 1, 1),
        lambda: minutes_to_clear(1, 1, wrong),
        lambda: minutes_to_clear(1, 0, 1),
        lambda: loads(wrong, 1),
        lambda: loads(1, 0),
        lambda: minutes_to_haul(1, 1, wrong),
    ):
        with pytest.raises(ValueError, match="must be"):
            broken()
