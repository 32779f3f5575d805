"""Which holes are played, and where a starter may send people out."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from notices.programme.holes_in_play import starts
from notices.programme.model import HolesInPlay, Programme, clock

ProgrammeOf = Callable[..., Programme]

DAY = dt.date(2026, 6, 1)

EIGHTEEN = "course: {greens: [{green: 1-18, area: 480 m2}]}\n"
NINE = "course: {greens: [{green: 1-9, area: 480 m2}]}\n"


def numbers(holes: tuple[tuple[str, int], ...]) -> list[int]:
    return [number for _, number in holes]


def run(first: int, last: int) -> list[int]:
    """Holes from one to another; past the eighteenth comes the first."""
    return [*range(first, last + 1)] if first <= last else [*range(first, 19), *range(1, last + 1)]


# Holes of the course, those closed, and from where to where nine and more can be played.
STARTS = [
    # All are open: a round from the first tee or the tenth.
    (18, [], {1: run(1, 18), 10: run(10, 9)}),
    # 7 to 18 are played from the seventh, or nine of them from the tenth.
    (18, run(1, 6), {7: run(7, 18), 10: run(10, 18)}),
    (18, run(1, 9), {10: run(10, 18)}),
    (18, run(10, 18), {1: run(1, 9)}),
    (18, [18], {1: run(1, 17)}),  # from the tenth only eight
    (18, [9], {1: [], 10: run(10, 8)}),
    # After the eighteenth comes the first, as nearly everywhere.
    (18, run(7, 12), {13: run(13, 6)}),
    (18, [5, 10], {11: run(11, 4)}),
    # 1 to 5 and 7 to 11 and 13 to 17: fifteen holes, and no nine in a row.
    (18, [6, 12, 18], {}),
    (9, [], {1: run(1, 9)}),
    (9, [4], {}),
]


@pytest.mark.parametrize(("holes", "closed", "expected"), STARTS)
def test_where_a_round_may_begin(
    holes: int, closed: list[int], expected: dict[int, list[int]]
) -> None:
    course = tuple(("", number) for number in range(1, holes + 1))
    found = starts(course, frozenset(h for h in course if h[1] not in closed))
    assert {start.hole[1]: numbers(start.holes) for start in found} == {
        number: listed for number, listed in expected.items() if listed
    }


def test_each_course_is_a_loop_of_its_own() -> None:
    oak, elm = ([(name, number) for number in range(1, 10)] for name in ("Oak", "Elm"))
    found = starts((*oak, *elm), frozenset([*oak, *elm]) - {("Oak", 3)})
    assert [(start.hole, start.holes) for start in found] == [(("Elm", 1), tuple(elm))]


def test_holes_that_the_plan_leaves_out_end_a_row() -> None:
    course = tuple(("", number) for number in (*range(1, 6), *range(7, 17)))
    found = starts(course, frozenset(course))
    assert [(start.hole[1], len(start.holes)) for start in found] == [(7, 10)]


def test_a_day_on_which_some_are_closed(programme_of: ProgrammeOf) -> None:
    programme = programme_of(f"""{EIGHTEEN}
works: [{{operation: scarifying, dates: 2026-06-01 to 2026-06-03}}]
closures: [{{what: green 18, dates: 2026-06-01, instead: temporary green}}]
""")
    day = programme.play[DAY]
    # Eighteen greens in three days: 1 to 6 on the first.
    assert numbers(day.all_day.closed) == run(1, 6)
    assert numbers(day.all_day.temporary) == [18]
    assert numbers(day.all_day.open) == run(7, 17)
    assert day.all_day.in_play == {("", number) for number in run(7, 18)}
    assert day.by_hour == (day.all_day,)
    assert day.first_start == day.all_day
    assert [start.hole for start in day.all_day.starts] == [("", 7), ("", 10)]
    assert [numbers(nine) for nine in programme.nines] == [run(1, 9), run(10, 18)]
    # On the fourth all recover, and recovering greens are played.
    assert list(programme.play) == [DAY, dt.date(2026, 6, 2), dt.date(2026, 6, 3)]


def test_a_hole_may_be_shut_without_its_green(programme_of: ProgrammeOf) -> None:
    programme = programme_of(f"""{EIGHTEEN}
closures:
  - {{what: holes 1-2, dates: 2026-06-01}}
  - {{what: tees 4-5, dates: 2026-06-02}}
""")
    assert numbers(programme.play[DAY].all_day.closed) == [1, 2]
    assert list(programme.play) == [DAY]


def test_a_double_green_closes_two_holes(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
course: {greens: [{green: 2, also: 16}, {green: "1, 3-15, 17-18"}]}
closures: [{what: green 2, dates: 2026-06-01}]
""")
    assert numbers(programme.play[DAY].all_day.closed) == [2, 16]


# iowa_pm696: 480 m² at 1 km/h × 1 m × 60 % take 48 minutes; 12 between greens make it an hour.
CREW = """
crew:
  people: 2
  breaks: 0
  working_day: 07:00 to 17:00
  machines:
    - {operation: verticutting, width: 1 m, speed: 1 km/h, efficiency: 60 %,
       minutes_between_greens: 12, people: 1}
    - {operation: rolling, width: 1 m, speed: 1 km/h, efficiency: 60 %,
       minutes_between_greens: 12, people: 1}
"""


def told(hours: HolesInPlay) -> tuple[str, list[int], list[int]]:
    return (
        f"{clock(hours.begins)} to {clock(hours.ends)}",
        numbers(hours.closed),
        [start.hole[1] for start in hours.starts],
    )


def test_from_hour_to_hour(programme_of: ProgrammeOf) -> None:
    programme = programme_of(f"""{NINE}{CREW}
works: [{{operation: verticutting, dates: 2026-06-01, greens: 1-2, reopen: when finished}}]
""")
    day = programme.play[DAY]
    assert [told(hours) for hours in day.by_hour] == [
        ("00:00 to 07:00", [], [1]),
        ("07:00 to 08:00", [1], []),
        ("08:00 to 09:00", [2], []),
        ("09:00 to 24:00", [], [1]),
    ]
    assert numbers(day.all_day.closed) == [1, 2]
    assert day.all_day.starts == ()
    assert day.first_start == day.by_hour[0]


def test_a_machine_that_golfers_wait_for_closes_no_hole(programme_of: ProgrammeOf) -> None:
    programme = programme_of(f"{NINE}{CREW}works: [{{operation: rolling, dates: 2026-06-01}}]\n")
    assert programme.stretches[DAY]["1"][1].passing
    assert programme.play == {}


def test_holes_that_come_back_the_same_day_at_no_known_hour(programme_of: ProgrammeOf) -> None:
    programme = programme_of(f"""{NINE}
works:
  - {{operation: verticutting, dates: 2026-06-01, greens: 1-2, reopen: when finished}}
  - {{operation: scarifying, dates: 2026-06-01, greens: 3}}
""")
    day = programme.play[DAY].all_day
    assert numbers(day.closed) == [1, 2, 3]
    assert numbers(day.part_of_day) == [1, 2]
