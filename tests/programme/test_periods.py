"""Which works are told together, and what is promised of them."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from notices.programme.model import Programme

ProgrammeOf = Callable[..., Programme]

COURSE = """
course:
  greens: [{green: 1-4}]
  optimum_temperature: 18 C
  monthly_mean_temperature: [4.1, 4.6, 6.2, 8.3, 11.0, 13.6, 15.8, 15.6, 13.3, 10.0, 6.6, 4.3]
works:
"""


def groups(programme: Programme) -> list[list[str]]:
    return [[work.id for work in period.works] for period in programme.periods]


def plan(*works: str) -> str:
    return COURSE + "".join(f"  - {{operation: {work}}}\n" for work in works)


CASES = [
    pytest.param(
        ["hollow tining, dates: 2026-09-01 to 2026-09-03", "top dressing, dates: 2026-09-03"],
        [["hollow-tining-1", "top-dressing-1"]],
        id="overlap",
    ),
    pytest.param(
        ["hollow tining, dates: 2026-09-01 to 2026-09-03", "top dressing, dates: 2026-09-04"],
        [["hollow-tining-1", "top-dressing-1"]],
        id="the next day",
    ),
    pytest.param(
        ["hollow tining, dates: 2026-09-01 to 2026-09-03", "top dressing, dates: 2026-09-05"],
        [["hollow-tining-1"], ["top-dressing-1"]],
        id="a day between",
    ),
    pytest.param(
        [
            "scarifying, dates: 2026-09-03",
            "hollow tining, dates: 2026-09-01",
            "slitting, dates: 2026-09-02",
        ],
        [["scarifying-1", "slitting-1", "hollow-tining-1"]],
        id="told in the usual order",
    ),
    # Common practice: mowing is raised 7 to 14 days ahead.
    pytest.param(
        ["hollow tining, dates: 2026-09-15", "raising the height of cut, dates: 2026-09-01"],
        [["raising-the-height-of-cut-1", "hollow-tining-1"]],
        id="14 days ahead",
    ),
    pytest.param(
        ["hollow tining, dates: 2026-09-16", "raising the height of cut, dates: 2026-09-01"],
        [["raising-the-height-of-cut-1"], ["hollow-tining-1"]],
        id="15 days ahead",
    ),
    pytest.param(
        [
            "verticutting, dates: 2026-08-29",
            "raising the height of cut, dates: 2026-09-01",
            "hollow tining, dates: 2026-09-10",
        ],
        [["verticutting-1"], ["raising-the-height-of-cut-1", "hollow-tining-1"]],
        id="what prepares does not follow",
    ),
    pytest.param(
        ["hollow tining, dates: 2026-09-01, greens: 1", "rolling, dates: 2026-09-01, greens: 2"],
        [["hollow-tining-1"], ["rolling-1"]],
        id="no green in common",
    ),
    pytest.param(
        ["feeding, dates: 2026-04-01", "rolling, dates: 2026-04-10"],
        [["feeding-1"], ["rolling-1"]],
        id="small works days apart are no story",
    ),
    pytest.param(
        ["hollow tining, dates: 2026-09-01", "hollow tining, dates: 2026-09-02, greens: 1"],
        [["hollow-tining-1", "hollow-tining-2"]],
        id="two works of one operation",
    ),
]


@pytest.mark.parametrize(("works", "expected"), CASES)
def test_works_that_belong_together(
    programme_of: ProgrammeOf, works: list[str], expected: list[list[str]]
) -> None:
    assert groups(programme_of(plan(*works))) == expected


def test_days_and_greens_are_those_of_the_works_that_open(programme_of: ProgrammeOf) -> None:
    programme = programme_of(
        plan(
            "raising the height of cut, dates: 2026-08-25",
            "'hollow tining', dates: 2026-09-01 to 2026-09-02, greens: '3, 1, 2'",
        )
    )
    period = programme.periods[0]
    assert period.days == (dt.date(2026, 9, 1), dt.date(2026, 9, 2))
    assert period.greens == ("3", "1", "2")
    assert period.greens_on(dt.date(2026, 9, 2)) == ("2",)
    assert period.noticed


def test_a_period_that_opens_nothing_is_hardly_noticed(programme_of: ProgrammeOf) -> None:
    period = programme_of(plan("rolling, dates: 2026-09-01")).periods[0]
    assert not period.noticed
    assert period.days == (dt.date(2026, 9, 1),)
    assert period.open_again.expect_by == dt.date(2026, 9, 1)


def test_at_worst_the_work_ends_on_the_last_reserve_date(programme_of: ProgrammeOf) -> None:
    dry = plan("hollow tining, dates: 2026-08-01 to 2026-08-03")
    wet = plan("hollow tining, dates: 2026-08-01 to 2026-08-03, reserve_dates: 2026-08-06")
    without, kept_free = (programme_of(text).periods[0] for text in (dry, wet))
    # Next morning: the 4th as planned, the 7th after rain.
    assert without.open_again.at_worst == dt.date(2026, 8, 4)
    assert kept_free.open_again.expect_by == dt.date(2026, 8, 4)
    assert kept_free.open_again.at_worst == dt.date(2026, 8, 7)
    later = programme_of(plan("hollow tining, dates: 2026-08-04 to 2026-08-06")).periods[0]
    assert kept_free.putting_well.at_worst == later.putting_well.at_worst
    assert kept_free.fully_healed.at_worst == later.fully_healed.at_worst
    assert kept_free.putting_well.expect_by == without.putting_well.expect_by


def test_a_reserve_date_between_the_days_puts_nothing_off(programme_of: ProgrammeOf) -> None:
    text = plan("hollow tining, dates: '2026-08-01, 2026-08-03', reserve_dates: 2026-08-02")
    promise = programme_of(text).periods[0].open_again
    assert promise.expect_by == promise.at_worst == dt.date(2026, 8, 4)


def test_rain_moves_the_dressing_with_the_holes_that_it_fills(programme_of: ProgrammeOf) -> None:
    period = programme_of(
        plan(
            "hollow tining, dates: 2026-08-03, reserve_dates: 2026-08-05",
            "top dressing, dates: 2026-08-03, settings: {fill: holes}",
        )
    ).periods[0]
    # The dressing is brushed in on the 5th: 10 days, and half of 10 for two works on one green.
    assert period.putting_well.at_worst == dt.date(2026, 8, 20)


def test_a_member_is_shown_a_month_at_most(programme_of: ProgrammeOf) -> None:
    # In March in Durham grass grows slowly, and rain may put the work off until the middle of June.
    works = "scarifying, dates: 2026-03-20, reserve_dates: 2026-06-15"
    period = programme_of(plan(works)).periods[0]
    healed, span = period.fully_healed, period.recoveries[0].fully_healed
    assert healed.at_worst is not None
    assert healed.at_worst - span.expected > dt.timedelta(days=31)
    assert healed.growth_stops is None
    assert healed.at_worst is not None
    assert healed.at_worst - healed.expect_by == dt.timedelta(days=31)


def test_a_winter_in_between_is_told_and_not_hidden_in_a_month(programme_of: ProgrammeOf) -> None:
    healed = programme_of(plan("hollow tining, dates: 2026-10-12")).periods[0].fully_healed
    assert healed.growth_stops is not None
    assert healed.at_worst is not None
    assert healed.expect_by < healed.growth_stops < healed.at_worst
    assert healed.through_winter
    assert healed.at_worst - healed.expect_by > dt.timedelta(days=31)


def test_of_two_winters_the_one_in_between_is_told(programme_of: ProgrammeOf) -> None:
    # Trenches dug in November heal in the next summer, or the one after.
    healed = programme_of(plan("drain trenching, dates: 2026-11-09")).periods[0].fully_healed
    assert healed.growth_stops is not None
    assert healed.expect_by.year == 2027
    assert healed.growth_stops.year == 2027
    assert healed.through_winter
