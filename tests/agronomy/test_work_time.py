"""What must hold of work time whatever the figures: ends of the scale, and what is refused."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices.agronomy.work_time import (
    field_capacity_acres_per_h,
    field_capacity_ha_per_h,
    loads,
    makespan_minutes,
    minutes_for_area,
    minutes_to_clear,
    minutes_to_haul,
)

TIMES = st.none() | st.floats(0, 1e4)
GREENS = st.integers(1, 5).flatmap(
    lambda machines: st.lists(st.lists(TIMES, min_size=machines, max_size=machines), max_size=8)
)


@given(GREENS)
def test_no_sooner_than_the_busiest_machine_and_no_later_than_one_after_another(
    minutes: list[list[float | None]],
) -> None:
    total = makespan_minutes(minutes)
    by_machine = [sum(time or 0 for time in times) for times in zip(*minutes, strict=True)]
    by_green = [sum(time or 0 for time in green) for green in minutes]
    assert total >= max(by_machine, default=0) - 1e-6
    assert total >= max(by_green, default=0) - 1e-6
    assert total <= sum(by_green) + 1e-6


@given(GREENS, st.floats(0.1, 10))
def test_slower_machines_take_longer_in_proportion(
    minutes: list[list[float | None]], factor: float
) -> None:
    slower = [[None if time is None else time * factor for time in green] for green in minutes]
    assert makespan_minutes(slower) == pytest.approx(makespan_minutes(minutes) * factor)


@given(GREENS)
def test_a_green_more_never_shortens_the_day(minutes: list[list[float | None]]) -> None:
    assert makespan_minutes(minutes[:-1]) <= makespan_minutes(minutes)


def test_a_machine_passes_by_a_green_that_it_has_nothing_to_do_on() -> None:
    # The second machine is only wanted on the second green, which the first leaves at once: it
    # need not wait for the first green.
    assert makespan_minutes([[100, None], [None, 50]]) == 100
    # With no time at all it would have to be there, and wait.
    assert makespan_minutes([[100, 0], [0, 50]]) == 150


@pytest.mark.parametrize("minutes", [[], [[]], [[], []], [[None, None]], [[0.0]]])
def test_nothing_to_do_takes_no_time(minutes: list[list[float | None]]) -> None:
    assert makespan_minutes(minutes) == 0


@pytest.mark.parametrize(
    "minutes", [[[-1.0]], [[math.nan]], [[math.inf]], [[1.0, 2.0], [1.0]], [[], [1.0]]]
)
def test_what_is_no_time_is_refused(minutes: list[list[float | None]]) -> None:
    with pytest.raises(ValueError, match=r"minutes must be|time for each operation"):
        makespan_minutes(minutes)


@pytest.mark.parametrize(
    "arguments",
    [(0, 1, 0.6), (1, 0, 0.6), (1, 1, 0), (1, 1, 1.1), (math.nan, 1, 0.6), (-1, 1, 0.6)],
)
def test_no_capacity_without_speed_width_and_efficiency(
    arguments: tuple[float, float, float],
) -> None:
    for capacity in (field_capacity_ha_per_h, field_capacity_acres_per_h):
        with pytest.raises(ValueError, match="must be"):
            capacity(*arguments)
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
