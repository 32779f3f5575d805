"""Each green's day as one word, and the days on which nothing changes."""

from __future__ import annotations

import datetime as dt

from notices.programme.day_by_day import CourseDay, GreenDay, course_days
from notices.programme.model import Programme
from tests.wording.small_plans import plan, programme, work

MONDAY = dt.date(2027, 8, 9)


def day_after(number: int) -> dt.date:
    return MONDAY + dt.timedelta(days=number)


def by_date(told: Programme) -> dict[dt.date, CourseDay]:
    return {day.date: day for stack in course_days(told) for day in stack}


def on(told: Programme, number: int, green: str) -> GreenDay:
    """What a green is so many days after Monday 9 August 2027."""
    return by_date(told)[day_after(number)].greens[list(told.greens).index(green)]


def test_a_green_is_closed_then_recovers_then_is_open() -> None:
    told = programme(
        plan(
            work(
                "hollow tining",
                "2027-08-09 to 2027-08-10",
                greens={"2027-08-09": "1", "2027-08-10": "2"},
            ),
            greens="1-3",
        )
    )
    assert on(told, 0, "1") is GreenDay.CLOSED
    assert on(told, 0, "2") is GreenDay.OPEN
    assert on(told, 1, "1") is GreenDay.RECOVERING
    assert on(told, 1, "2") is GreenDay.CLOSED
    assert {day.greens[2] for day in by_date(told).values()} == {GreenDay.OPEN}


def test_a_green_that_reopens_the_same_day_is_closed_part_of_it() -> None:
    told = programme(
        plan(work("hollow tining", "2027-08-09", greens="1", reopen="when finished"), greens="1-2")
    )
    assert on(told, 0, "1") is GreenDay.PART_CLOSED


def test_temporary_greens_last_all_day_or_part_of_it() -> None:
    def on_the_day(reopen: str) -> GreenDay:
        planned = work(
            "hollow tining",
            "2027-08-09",
            greens="1",
            while_working="temporary green",
            reopen=reopen,
        )
        return on(programme(plan(planned, greens="1-2")), 0, "1")

    assert on_the_day("next morning") is GreenDay.TEMPORARY
    assert on_the_day("when finished") is GreenDay.PART_TEMPORARY


def test_golfers_wait_while_a_machine_passes() -> None:
    told = programme(
        plan(
            work("needle tining", "2027-08-09", greens="1", while_working="open"),
            greens="1-2",
            crew={"people": 4},
        )
    )
    assert on(told, 0, "1") is GreenDay.WAITS
    assert on(told, 0, "2") is GreenDay.OPEN


def test_holes_that_are_closed_close_their_green() -> None:
    told = programme(
        {**plan(greens="1-3"), "closures": [{"what": "holes 2-3", "dates": "2027-08-09"}]}
    )
    assert on(told, 0, "1") is GreenDay.OPEN
    assert on(told, 0, "3") is GreenDay.CLOSED


def test_days_on_which_nothing_changes_lie_together() -> None:
    """Tees closed for ten days: the first and the last are told, and eight between them as one."""
    told = programme(
        {
            **plan(greens="1-3"),
            "closures": [{"what": "tees 1", "dates": "2027-08-09 to 2027-08-18"}],
        }
    )
    assert [len(stack) for stack in course_days(told)] == [1, 8, 1]


def test_a_fixture_parts_days_that_are_alike() -> None:
    """Closures on days 0 and 9, a fixture on day 5: four days before it, three after."""
    told = programme(
        {
            **plan(greens="1-3"),
            "closures": [
                {"what": "greens 1", "dates": "2027-08-09"},
                {"what": "greens 1", "dates": "2027-08-18"},
            ],
            "fixtures": [{"name": "Summer Bowl", "date": "2027-08-14", "kind": "competition"}],
        }
    )
    stacks = course_days(told)
    assert [len(stack) for stack in stacks] == [1, 4, 1, 3, 1]
    assert [fixture.name for fixture in stacks[2][0].fixtures] == ["Summer Bowl"]


def test_every_day_is_told_once_and_in_order() -> None:
    told = programme(
        plan(work("hollow tining", "2027-08-09", reserve_dates="2027-08-12"), greens="1-9")
    )
    days = [day.date for stack in course_days(told) for day in stack]
    assert days == [day_after(number) for number in range(len(days))]
    assert [day for day, own in by_date(told).items() if own.reserve] == [day_after(3)]


def test_a_fixture_a_week_before_is_told_and_an_older_one_is_not() -> None:
    fixtures = [
        {"name": "Near", "date": "2027-08-02", "kind": "competition"},
        {"name": "Far", "date": "2027-08-01", "kind": "competition"},
    ]
    told = programme(plan(work("hollow tining", "2027-08-09"), greens="1-9", fixtures=fixtures))
    named = [fixture.name for day in by_date(told).values() for fixture in day.fixtures]
    assert named == ["Near"]


def test_nothing_planned_is_nothing_to_tell() -> None:
    told = programme(
        {**plan(greens="1-3"), "closures": [{"what": "practice ground", "dates": "2027-08-09"}]}
    )
    assert [day.closures[0].what for day in by_date(told).values()] == ["practice ground"]


def test_only_days_that_people_are_told_of_are_reserve_days() -> None:
    """A brushing that follows a week later moves with the work; nobody keeps a day free for it."""
    told = programme(
        plan(
            work("hollow tining", "2027-08-09", reserve_dates="2027-08-10"),
            {"operation": "brushing", "after": "hollow tining, +7 days"},
            greens="1-3",
        )
    )
    assert any(day_after(8) in one.reserve_dates for one in told.works)
    assert [day for day, one in by_date(told).items() if one.reserve] == [day_after(1)]
