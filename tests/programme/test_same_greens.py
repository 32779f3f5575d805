"""What a date tells of greens that are worked on again before they putt well, or soon after."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from notices.programme.model import Meeting, Period, Programme, Promise
from notices.programme.same_greens import SOON

ProgrammeOf = Callable[..., Programme]

COURSE = """
course:
  greens: [{green: 1-9}]
  optimum_temperature: 18 C
  monthly_mean_temperature: [4.1, 4.6, 6.2, 8.3, 11.0, 13.6, 15.8, 15.6, 13.3, 10.0, 6.6, 4.3]
works:
"""


def plan(*works: str) -> str:
    return COURSE + "".join(f"  - {{operation: {work}}}\n" for work in works)


def alone(programme_of: ProgrammeOf, work: str) -> Promise:
    (period,) = programme_of(plan(work)).periods
    return period.putting_well


def met(period: Period) -> list[tuple[str, Meeting, tuple[str, ...]]]:
    return [(other.period.works[0].id, other.how, other.greens) for other in period.others]


def test_a_date_takes_in_what_follows_on_most_of_the_greens(programme_of: ProgrammeOf) -> None:
    cores, slits = "hollow tining, dates: 2026-10-01", "slitting, dates: 2026-10-06, greens: 1-8"
    first, second = (alone(programme_of, work) for work in (cores, slits))
    assert first.expect_by > dt.date(2026, 10, 6)
    before, after = programme_of(plan(cores, slits)).periods
    assert met(before) == [("slitting-1", Meeting.FOLLOWS, after.greens)]
    assert before.putting_well == first
    latest = max(first.expect_by, second.expect_by)
    assert before.putts_well_after_all.expect_by == latest == second.expect_by
    assert first.at_worst
    assert second.at_worst
    assert before.putts_well_after_all.at_worst == max(first.at_worst, second.at_worst)


def test_what_is_felt_before_the_date_is_known_though_it_does_not_put_it_off(
    programme_of: ProgrammeOf,
) -> None:
    blades, holes = "scarifying, dates: 2026-09-01", "solid tining, dates: 2026-09-04"
    needles = "needle tining, dates: 2026-09-04"
    slow, quick = (alone(programme_of, work) for work in (blades, holes))
    assert quick.expect_by < slow.expect_by
    before, after = programme_of(plan(blades, holes)).periods
    assert met(before) == [("solid-tining-1", Meeting.FOLLOWS, after.greens)]
    assert before.putts_well_after_all == slow
    before, _ = programme_of(plan(blades, needles)).periods
    assert met(before) == []


def test_greens_that_still_recover_from_what_came_before_putt_well_no_sooner(
    programme_of: ProgrammeOf,
) -> None:
    blades, needles = "scarifying, dates: 2026-09-01", "needle tining, dates: 2026-09-05"
    slow, quick = (alone(programme_of, work) for work in (blades, needles))
    assert quick.expect_by < slow.expect_by
    before, after = programme_of(plan(blades, needles)).periods
    assert met(before) == []
    assert met(after) == [("scarifying-1", Meeting.CAME_BEFORE, after.greens)]
    assert after.putts_well_after_all == slow


def test_a_few_greens_that_take_longer_are_named_and_do_not_hold_the_rest(
    programme_of: ProgrammeOf,
) -> None:
    blades = "scarifying, dates: 2026-09-01"
    drains = (
        "drain trenching, dates: 2026-09-08, greens: 4, settings: {width: 100 mm, spacing: 3 m}"
    )
    before, after = programme_of(plan(blades, drains)).periods
    assert met(before) == [("drain-trenching-1", Meeting.KEEPS_SOME, ("4",))]
    assert before.putts_well_after_all == before.putting_well
    assert after.putting_well.expect_by > before.putting_well.expect_by


@pytest.mark.parametrize(("days_later", "told"), [(1, True), (60, False)])
def test_what_begins_soon_after_is_told(
    programme_of: ProgrammeOf, days_later: int, told: bool
) -> None:
    cores = "hollow tining, dates: 2026-05-04"
    first = alone(programme_of, cores)
    assert first.at_worst
    assert first.growth_stops is None
    begins = max(first.at_worst, first.expect_by + SOON) + dt.timedelta(days=days_later - 1)
    before, after = programme_of(
        plan(cores, f"slitting, dates: {begins - dt.timedelta(1)}")
    ).periods
    expected = [("slitting-1", Meeting.COMES_NEXT, after.greens)] if told else []
    assert met(before) == expected
    assert before.putts_well_after_all == first


def test_what_hardly_anybody_notices_is_not_told_as_next(programme_of: ProgrammeOf) -> None:
    cores = "hollow tining, dates: 2026-05-04"
    begins = alone(programme_of, cores).expect_by + dt.timedelta(days=1)
    before, _ = programme_of(plan(cores, f"needle tining, dates: {begins}")).periods
    assert met(before) == []


def test_what_opens_nothing_neither_waits_nor_is_waited_for(programme_of: ProgrammeOf) -> None:
    works = ("hollow tining, dates: 2026-05-04", "rolling, dates: 2026-05-25")
    assert [met(period) for period in programme_of(plan(*works)).periods] == [[], []]
