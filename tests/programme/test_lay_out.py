"""Which green on which day: the rules of the brief, "Meaning of the plan", worked by hand."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from notices.programme.lay_out import spread
from notices.programme.model import Programme, Work

ProgrammeOf = Callable[..., Programme]

MONDAY = dt.date(2026, 10, 12)


def days(count: int) -> list[dt.date]:
    return [MONDAY + dt.timedelta(days=number) for number in range(count)]


def by_day(work: Work) -> dict[int, str]:
    """Greens of each day of October, as one line."""
    return {visit.date.day: " ".join(visit.greens) for visit in work.main_visits}


@pytest.mark.parametrize(
    ("greens", "count", "shares"),
    [
        (19, 7, [3, 3, 3, 3, 3, 2, 2]),
        (18, 3, [6, 6, 6]),
        (18, 4, [5, 5, 4, 4]),
        (9, 9, [1] * 9),
        (18, 1, [18]),
    ],
)
def test_greens_are_spread_in_the_listed_order(greens: int, count: int, shares: list[int]) -> None:
    keys = [str(number) for number in range(1, greens + 1)]
    placed = spread(keys, days(count))
    assert list(placed) == keys
    assert [sum(taken == (day,) for taken in placed.values()) for day in days(count)] == shares
    assert sorted(placed.values()) == list(placed.values())


def test_one_green_over_four_days_is_one_job() -> None:
    assert spread(["12"], days(4)) == {"12": tuple(days(4))}


def test_two_greens_over_five_days_take_three_and_two() -> None:
    assert spread(["1", "2"], days(5)) == {"1": tuple(days(5)[:3]), "2": tuple(days(5)[3:])}


def test_a_green_left_over_by_another_work_is_done_once_on_the_emptiest_day() -> None:
    fixed = {"1": (days(3)[0],), "2": (days(3)[0],), "3": (days(3)[1],)}
    placed = spread(["1", "2", "3", "Putting green"], days(3), fixed)
    assert placed["Putting green"] == (days(3)[2],)


def test_later_lines_override_and_capitals_do_not_matter(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
        course:
          greens:
            - {green: "1-3, Putting green", area: 480 m2}
            - {green: 2, area: 610 m2}
            - {green: putting green, area: 350 m2}
            - {green: 3}
        works:
          - {operation: rolling, dates: 2026-10-12}
    """)
    areas = {key: green.area_m2 for key, green in programme.greens.items()}
    assert areas == {"1": 480, "2": 610, "3": 480, "Putting green": 350}
    assert all(green.area_given for green in programme.greens.values())


def test_greens_without_an_area_have_a_default_that_is_told_apart(
    programme_of: ProgrammeOf,
) -> None:
    programme = programme_of("""
        course: {greens: [{green: 1}]}
        works: [{operation: rolling, dates: 2026-10-12}]
    """)
    assert programme.greens["1"].area_m2 == 500
    assert not programme.greens["1"].area_given


def test_left_out_greens_are_all_numbered_ones(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
        course: {greens: [{green: "1-4, Putting green"}]}
        works: [{operation: rolling, dates: 2026-10-12 to 2026-10-13}]
    """)
    assert by_day(programme.works[0]) == {12: "1 2", 13: "3 4"}


def test_a_course_of_names_only_has_all_its_greens_done(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
        course: {greens: [{green: "Oak, Ash"}]}
        works: [{operation: rolling, dates: 2026-10-12}]
    """)
    assert programme.works[0].greens == ("Oak", "Ash")


def test_works_of_the_same_dates_follow_the_one_that_assigns(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
        course: {greens: [{green: "1-6, Putting green"}]}
        works:
          - {operation: top dressing, dates: 2026-10-12 to 2026-10-14, greens: "1-6, Putting green"}
          - operation: hollow tining
            dates: 2026-10-12, 2026-10-13, 2026-10-14
            greens: {2026-10-12: "5, 6", 2026-10-13: "3, 4", 2026-10-14: "1, 2"}
    """)
    dressing, coring = programme.works
    assert by_day(coring) == {12: "5 6", 13: "3 4", 14: "1 2"}
    # Two greens a day are fixed, so the putting green goes to the first of them, once.
    assert by_day(dressing) == {12: "5 6 Putting green", 13: "3 4", 14: "1 2"}


def test_works_of_the_same_dates_go_with_the_one_of_most_greens(
    programme_of: ProgrammeOf,
) -> None:
    programme = programme_of("""
        course: {greens: [{green: 1-9}]}
        works:
          - {operation: mole ploughing, dates: 2026-10-12 to 2026-10-14, greens: "2, 5, 8"}
          - {operation: hollow tining, dates: 2026-10-12 to 2026-10-14, greens: 1-9}
    """)
    moles, coring = programme.works
    assert by_day(coring) == {12: "1 2 3", 13: "4 5 6", 14: "7 8 9"}
    assert by_day(moles) == {12: "2", 13: "5", 14: "8"}


def test_works_that_share_no_green_are_each_spread_over_all_days(
    programme_of: ProgrammeOf,
) -> None:
    programme = programme_of("""
        course: {greens: [{green: 1-8}]}
        works:
          - {operation: slitting, dates: 2026-10-12 to 2026-10-13, greens: 1-2}
          - {operation: hollow tining, dates: 2026-10-12 to 2026-10-13, greens: 3-8}
    """)
    slitting, coring = programme.works
    assert by_day(slitting) == {12: "1", 13: "2"}
    assert by_day(coring) == {12: "3 4 5", 13: "6 7 8"}


def test_a_day_without_greens_is_no_day_of_the_work(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
        course: {greens: [{green: 1-4}]}
        works:
          - operation: rolling
            dates: 2026-10-12 to 2026-10-14
            greens: {2026-10-12: "1, 2", 2026-10-14: "3, 4"}
    """)
    assert [day.day for day in programme.works[0].dates] == [12, 14]


def test_identity_is_the_operation_and_its_ordinal(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
        course: {greens: [{green: 1}]}
        works:
          - {operation: hollow tining, dates: 2026-10-12, id: autumn-cores}
          - {operation: rolling, dates: 2026-10-12}
          - {operation: hollow tining, dates: 2026-03-12}
    """)
    assert [work.id for work in programme.works] == [
        "autumn-cores",
        "rolling-1",
        "hollow-tining-2",
    ]


def test_later_dressings_follow_each_green_after_so_many_days(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
        course: {greens: [{green: 1-4}]}
        works:
          - operation: top dressing
            dates: 2026-10-12 to 2026-10-13
            settings: {rate: 0.7 kg/m2, dressings: 3, days_between: 7}
    """)
    visits = [(v.ordinal, v.date.day, v.greens) for v in programme.works[0].visits]
    assert visits == [
        (1, 12, ("1", "2")),
        (1, 13, ("3", "4")),
        (2, 19, ("1", "2")),
        (2, 20, ("3", "4")),
        (3, 26, ("1", "2")),
        (3, 27, ("3", "4")),
    ]
    assert [day.day for day in programme.works[0].dates] == [12, 13]


def test_a_leap_day_is_a_day(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
        course: {greens: [{green: 1-3}]}
        works: [{operation: hollow tining, dates: 2028-02-28 to 2028-03-01}]
    """)
    assert programme.works[0].dates[1] == dt.date(2028, 2, 29)
    assert programme.recoveries["hollow-tining-1"][1].back_in_play.early == dt.date(2028, 3, 1)


def test_the_clubs_height_of_cut_is_where_raising_it_starts(programme_of: ProgrammeOf) -> None:
    programme = programme_of("""
        course: {greens: [{green: 1}], mowing_height: 4 mm}
        works:
          - {operation: raising the height of cut, dates: 2026-10-12}
          - {operation: clean-up cut, dates: 2026-10-13}
    """)
    raising, tidying = (work.settings for work in programme.works)
    # The catalogue raises 3.5 mm by 1.5 mm; the rise stays.
    assert (raising.number("from"), raising.number("to")) == (4, 5.5)
    assert not raising.rests_on_default("from")
    assert raising.rests_on_default("to")
    assert (tidying.number("from"), tidying.number("to")) == (5, 5)


TWO_COURSES = """
    course:
      greens:
        - {course: Oak, green: 1-3, area: 400 m2}
        - {course: Elm, green: 1-3, area: 600 m2}
        - {course: oak, green: 2, area: 450 m2}
        - {green: Putting green, area: 300 m2}
"""


def test_greens_of_two_courses_with_numbers_of_their_own(programme_of: ProgrammeOf) -> None:
    programme = programme_of(
        TWO_COURSES
        + """
    works:
      - operation: rolling
        dates: 2026-10-12 to 2026-10-13
        greens: {2026-10-12: Elm, 2026-10-13: "oak 3, Oak 1, Putting green"}
      - {operation: brushing, dates: 2026-11-02}
    """
    )
    assert {key: green.area_m2 for key, green in programme.greens.items()} == {
        "Oak 1": 400,
        "Oak 2": 450,
        "Oak 3": 400,
        "Elm 1": 600,
        "Elm 2": 600,
        "Elm 3": 600,
        "Putting green": 300,
    }
    rolling, brushing = programme.works
    assert [visit.greens for visit in rolling.main_visits] == [
        ("Elm 1", "Elm 2", "Elm 3"),
        ("Oak 3", "Oak 1", "Putting green"),
    ]
    # Left out, the greens are all numbered ones, course by course.
    assert brushing.greens == ("Oak 1", "Oak 2", "Oak 3", "Elm 1", "Elm 2", "Elm 3")
    assert programme.courses == ("Oak", "Elm")
    assert len({green.slug for green in programme.greens.values()}) == 7


LINKS = """
    course:
      greens:
        - {green: 1-18, area: 500 m2}
        - {green: 2, also: 16}
        - {green: 5, also: 13, area: 1200 m2}
"""


def test_a_double_green_is_as_large_as_both_unless_it_is_measured(
    programme_of: ProgrammeOf,
) -> None:
    programme = programme_of(LINKS + "    works: [{operation: rolling, dates: 2026-10-12}]\n")
    greens = programme.greens
    assert len(greens) == 16
    assert (greens["2/16"].area_m2, greens["2/16"].holes) == (1000, (2, 16))
    assert greens["5/13"].area_m2 == 1200
    # 14 greens of 500 m², one of 1,000 and one of 1,200.
    assert sum(green.area_m2 for green in greens.values()) == 14 * 500 + 1000 + 1200
    assert all(green.area_given for green in greens.values())
    assert list(greens)[1] == "2/16"


def test_a_double_green_is_never_done_twice(programme_of: ProgrammeOf) -> None:
    programme = programme_of(
        LINKS
        + """
    works:
      - operation: rolling
        dates: 2026-10-12 to 2026-10-13
        greens: {2026-10-12: 1-9, 2026-10-13: 10-18}
      - {operation: brushing, dates: 2026-10-12 to 2026-10-13}
      - {operation: feeding, dates: 2026-11-02 to 2026-11-05, greens: "16, 2, 13, 1"}
    """
    )
    rolling, brushing, feeding = programme.works
    assert by_day(rolling) == {
        12: "1 2/16 3 4 5/13 6 7 8 9",
        13: "10 11 12 14 15 17 18",
    }
    assert by_day(brushing) == by_day(rolling)
    # Three greens over four days: the first takes two.
    assert feeding.greens == ("2/16", "5/13", "1")
    assert len(programme.greens["2/16"].holes) == 2


def test_a_closed_double_green_closes_two_holes(programme_of: ProgrammeOf) -> None:
    programme = programme_of(
        LINKS
        + """
    closures:
      - {what: green 16, dates: 2026-10-12}
      - {what: hole 13, dates: 2026-10-13}
      - {what: "greens 2, 3", dates: 2026-10-14, instead: temporary greens}
      - {what: tees 1-9, dates: 2026-10-15}
      - {what: course, dates: 2026-10-16}
    """
    )
    on = [programme.holes_closed_on(dt.date(2026, 10, day)) for day in range(12, 17)]
    assert on[0] == (("", 2), ("", 16))
    # Hole 5 is still played to the green that it shares.
    assert on[1] == (("", 13),)
    assert on[2] == ()
    assert on[3] == ()
    assert on[4] == tuple(("", number) for number in range(1, 19))


def test_one_of_two_courses_is_closed(programme_of: ProgrammeOf) -> None:
    programme = programme_of(
        TWO_COURSES
        + """
    closures:
      - {what: course Oak, dates: 2026-10-12}
      - {what: fairway Elm 2, dates: 2026-10-12}
    """
    )
    oak, fairway = programme.closures
    assert not oak.whole_course
    assert oak.greens == ("Oak 1", "Oak 2", "Oak 3")
    assert (fairway.greens, fairway.holes) == ((), (("Elm", 2),))
    day = dt.date(2026, 10, 12)
    assert programme.holes_closed_on(day) == (("Oak", 1), ("Oak", 2), ("Oak", 3))
    assert programme.status_on(day, "Elm 2").value == "open"
