"""Working days for a committee: hours of people against hours there, like days told together."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

import pytest

from notices.programme.crew_days import crew_days
from notices.programme.model import DayTimetable, Limit, Programme, Task
from notices.programme.sand_order import SandDay, SandOrder, runs_of_sand
from tests.wording.small_plans import plan, programme, work

A_DAY = DayTimetable(
    date=dt.date(2027, 12, 1),
    tasks=(Task("a", "1", "hollow tining", 1, 2, 420, 720),),
    people=4,
    kept_back=1,
    begins=390,
    ends=930,
    light_from=450,
    light_until=960,
    light="",
    rest=(600, 660),
    dew_off=None,
    drying=None,
    limited_by=Limit.MACHINE,
    busiest="hollow tining",
    busiest_minutes=240,
    default_used=False,
)


def test_hours_leave_out_the_rest_and_the_dark() -> None:
    # Two people at work from 7:00 to 12:00, with the hour from 10:00 to 11:00 off: 2 × 4 h.
    assert A_DAY.hours_of_people == pytest.approx(8)
    # Light from 7:30, work until 15:30: four people for 8 h less 1 h.
    assert A_DAY.hours_there == pytest.approx(4 * 7)


@pytest.mark.parametrize(
    ("tasks", "busy"),
    [
        # How many people, from when to when.
        ([(1, 420, 480)], 1),
        ([(1, 420, 480), (2, 450, 500)], 3),
        # One ends as the next begins.
        ([(1, 420, 480), (2, 480, 500)], 2),
        ([(1, 420, 480), (1, 430, 440), (1, 440, 450), (1, 445, 500)], 3),
        # A job for six with four to do it takes all of them.
        ([(6, 420, 480)], 4),
    ],
)
def test_so_many_are_at_the_jobs_at_once(tasks: list[tuple[int, int, int]], busy: int) -> None:
    made = tuple(Task("a", "1", "slitting", 1, *one) for one in tasks)
    assert replace(A_DAY, tasks=made).busy_at_most == busy


@pytest.fixture(scope="module")
def dressed() -> Programme:
    return programme(
        plan(
            work("top dressing", "2027-08-09 to 2027-08-11", settings={"dressings": 2}),
            crew={"people": 4},
        )
    )


def test_days_of_later_dressings_are_one_entry(dressed: Programme) -> None:
    # The second dressing comes a week after the first.
    days = [entry.dates for entry in crew_days(dressed)]
    first = [(dt.date(2027, 8, day),) for day in (9, 10, 11)]
    assert days == [*first, tuple(dt.date(2027, 8, day) for day in (16, 17, 18))]
    told = crew_days(dressed)[-1]
    assert told.again
    assert told.hours_of_people == pytest.approx(
        sum(dressed.timetables[day].hours_of_people for day in told.dates)
    )
    assert set(told.greens) == set(dressed.greens)


def test_brushing_goes_with_the_dressing_that_is_done_again() -> None:
    made = programme(
        plan(
            work("top dressing", "2027-08-09 to 2027-08-10", settings={"dressings": 2}),
            work("brushing", "2027-08-09 to 2027-08-10"),
            work("brushing", "2027-08-16 to 2027-08-17"),
            work("brushing", "2027-08-23 to 2027-08-24"),
            crew={"people": 4},
        )
    )
    # On the last two days nothing is dressed, and each has its entry.
    assert [[day.day for day in entry.dates] for entry in crew_days(made)] == [
        [9],
        [10],
        [16, 17],
        [23],
        [24],
    ]


def test_sand_is_told_in_runs() -> None:
    days = tuple(
        SandDay(dt.date(2027, 8, day), mass / 1.5, mass, top_up)
        for day, mass, top_up in (
            (9, 3.0, False),
            (10, 4.0, False),
            (16, 2.0, True),
            (17, 1.0, True),
        )
    )
    order = SandOrder(10 / 1.5, 10.0, 1, dt.date(2027, 8, 6), days)
    assert [
        (run.dates[0].day, run.mass_t, run.least_t, run.most_t) for run in runs_of_sand(order)
    ] == [
        (9, 7.0, 3.0, 4.0),
        (16, 3.0, 1.0, 2.0),
    ]
