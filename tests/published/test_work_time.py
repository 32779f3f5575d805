"""Section 7 of the collected figures: work time, against what others have printed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from notices import units
from notices.agronomy import work_time
from notices.agronomy.timetable import Minutes, Stage, end_of_day, timetable
from notices.operations import CATALOGUE
from notices.programme.lay_out import DEFAULT_AREA_M2

M2_PER_ACRE = 43_560 * units.M2_PER_FT2

IOWA_ROWS = [  # width [ft], speed [mph], efficiency → acres per hour, printed to a tenth
    pytest.param(40, 6, 0.70, 20.4, id="iowa_pm696"),
    pytest.param(10, 5, 0.63, 3.8, id="iowa_pm696"),
    pytest.param(15, 6, 0.63, 6.9, id="iowa_pm696"),
    pytest.param(30, 6, 0.60, 13.1, id="iowa_pm696"),
    pytest.param(11.25, 5.5, 0.85, 6.4, id="iowa_pm696"),
]


@pytest.mark.parametrize(("width_ft", "speed_mph", "efficiency", "printed"), IOWA_ROWS)
def test_field_capacity(
    width_ft: float, speed_mph: float, efficiency: float, printed: float
) -> None:
    hectares = work_time.field_capacity_ha_per_h(
        speed_mph * units.KM_PER_MILE, width_ft * units.M_PER_FOOT, efficiency
    )
    assert hectares * units.M2_PER_HECTARE / M2_PER_ACRE == pytest.approx(printed, abs=0.05)


@pytest.mark.parametrize(("width_ft", "speed_mph", "efficiency", "printed"), IOWA_ROWS)
def test_an_hour_covers_an_hours_capacity(
    width_ft: float, speed_mph: float, efficiency: float, printed: float
) -> None:
    minutes = work_time.minutes_for_area(
        printed * M2_PER_ACRE,
        speed_mph * units.KM_PER_MILE,
        width_ft * units.M_PER_FOOT,
        efficiency,
    )
    assert minutes == pytest.approx(60, rel=0.05 / printed)


def test_efficiencies() -> None:
    # iowa_pm696: 0.60 to 0.85 in its table, and the rows above have no other. Judgement of the
    # collection: 0.5 to 0.7 on small curved greens, within which every usual pace lies.
    paces = [operation.pace for operation in CATALOGUE.values() if operation.pace is not None]
    assert paces
    assert all(0.5 <= pace.efficiency <= 0.7 for pace in paces)


def test_a_green_without_an_area_is_a_typical_one() -> None:
    # Trade press: a typical green has 465 to 557 m².
    assert 465 <= DEFAULT_AREA_M2 <= 557


# Johnson 1954 (from memory): two machines, every job on the first and then on the second, in one
# order. What the second machine waits before its k-th job, all waits added, is the largest of
# sum(a_1 … a_j) − sum(b_1 … b_{j−1}) over j ≤ n; it is done when it has waited and worked.


def johnson_makespan(first: list[float], second: list[float]) -> float:
    waits = [sum(first[: job + 1]) - sum(second[:job]) for job in range(len(first))]
    return max(waits, default=0.0) + sum(second)


def makespan(minutes: Minutes) -> float:
    """Return how long a day is on which there are people enough for every machine."""
    machines = range(len(minutes[0]) if minutes else 0)
    return end_of_day(timetable(minutes, [Stage(f"machine {index}") for index in machines]))


TIMES = st.floats(0, 500, allow_nan=False)
PAIRS = st.lists(st.tuples(TIMES, TIMES), max_size=12)


@given(PAIRS)
def test_two_machines_agree_with_the_textbook(pairs: list[tuple[float, float]]) -> None:
    first, second = [a for a, _ in pairs], [b for _, b in pairs]
    expected = johnson_makespan(first, second)
    assert makespan(pairs) == pytest.approx(expected, abs=1e-6)


@pytest.mark.parametrize(
    ("minutes", "expected"),
    [
        # By hand: machine A leaves the greens at 3, 5 and 9; machine B starts at 3, 9 and 11 and
        # leaves at 9, 11 and 14.
        ([(3, 6), (2, 2), (4, 3)], 14),
        # The second machine is the slow one: 1, then 5 + 5 + 5 without a wait.
        ([(1, 5), (1, 5), (1, 5)], 16),
        # The first machine is the slow one: 5 + 5 + 5, then 1.
        ([(5, 1), (5, 1), (5, 1)], 16),
    ],
)
def test_two_machines_by_hand(minutes: list[tuple[float, float]], expected: float) -> None:
    assert makespan(minutes) == expected


def simulate(minutes: list[list[int | None]]) -> int:
    """Let a clock run minute by minute, with nothing of the recurrence in it.

    Each machine takes its greens in their order. A minute's work is done on a green when the
    machine has come to it and every earlier operation on that green is finished.
    """
    left = [[None if time is None else time for time in green] for green in minutes]
    machines = range(len(minutes[0]) if minutes else 0)

    def finished(green: int, operation: int) -> bool:
        return left[green][operation] in (None, 0)

    clock = 0
    while any(not finished(g, o) for g in range(len(left)) for o in machines):
        working = []
        for operation in machines:
            waiting = [g for g in range(len(left)) if not finished(g, operation)]
            if waiting and all(finished(waiting[0], before) for before in range(operation)):
                working.append((waiting[0], operation))
        for green, operation in working:
            left[green][operation] = (left[green][operation] or 0) - 1
        clock += 1
    return clock


# An operation that is done takes at least a minute here: the clock cannot see a time of 0.
MINUTES = st.integers(1, 6)


@given(
    st.integers(1, 4).flatmap(
        lambda machines: st.lists(
            st.lists(st.none() | MINUTES, min_size=machines, max_size=machines), max_size=6
        )
    )
)
def test_many_machines_agree_with_a_clock(minutes: list[list[int | None]]) -> None:
    assert makespan(minutes) == simulate(minutes)


# Not here: two days for a dozen people over 18 greens, or 5 to 6 greens a day for a small crew
# (common practice): no widths, speeds or areas are given with them.
