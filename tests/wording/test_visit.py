"""One day in words, as a visiting party asks about it."""

from __future__ import annotations

import datetime as dt

import pytest

from notices.wording import visit
from notices.wording.words import Words
from tests.wording.small_plans import MILD_WINTER, period, plan, words, work

CORES = work(
    "hollow tining",
    "2027-08-09 to 2027-08-11",
    greens={"2027-08-09": "1-6", "2027-08-10": "7-12", "2027-08-11": "13-18"},
    reserve_dates="2027-08-12",
)


@pytest.fixture(scope="module")
def told() -> Words:
    closed = [
        {"what": "course", "dates": "2027-09-20"},
        {"what": "greens 3-4", "dates": "2027-09-21", "instead": "temporary greens"},
        {"what": "holes 1-9", "dates": "2027-09-22"},
        {"what": "holes 1-6", "dates": "2027-09-23"},
    ]
    buggies = {"what": "buggies", "dates": "2027-08-09", "except": "the injured", "ask": "the shop"}
    return words(plan(CORES, closures=closed, restrictions=[buggies]))


@pytest.mark.parametrize(
    ("day", "opened", "start"),
    [
        ("2027-08-01", "All holes are open.", "Start as usual."),
        # Six greens are done a day; after the last hole comes the first, so 18 less 6 follow.
        (
            "2027-08-10",
            "Holes 7 to 12 are closed all day. All other holes are open.",
            "You can start from hole 13: 12 holes in a row are in play from there.",
        ),
        ("2027-09-20", "The course is closed all day.", ""),
        (
            "2027-09-21",
            "Holes 3 and 4 have temporary greens. All other holes are open.",
            "You can start from hole 1: 18 holes in a row are in play from there.",
        ),
        (
            "2027-09-22",
            "Holes 1 to 9 are closed all day. All other holes are open.",
            "You can start from hole 10: 9 holes in a row are in play from there.",
        ),
    ],
)
def test_what_is_open_and_where_a_round_begins(
    told: Words, day: str, opened: str, start: str
) -> None:
    date = dt.date.fromisoformat(day)
    assert visit.what_is_open(told, date) == opened
    assert visit.where_to_start(told, date) == start


@pytest.mark.parametrize(
    ("day", "said"),
    [
        ("2027-08-01", "As usual: no recent work will trouble your putts."),
        # Greens 1 to 6 were done the day before; 7 to 12 are closed today.
        (
            "2027-08-10",
            (
                "Greens 1 to 6 are recovering from our work. You will see small holes. "
                "Putts may be slower and may wander."
            ),
        ),
        (
            "2027-08-12",
            (
                "The greens are recovering from our work. You will see small holes. "
                "Putts may be slower and may wander."
            ),
        ),
    ],
)
def test_what_the_greens_are_like(told: Words, day: str, said: str) -> None:
    assert visit.what_the_greens_are_like(told, dt.date.fromisoformat(day)) == said


def test_a_day_kept_for_rain_is_told() -> None:
    said = words(plan(CORES))
    assert visit.kept_free(said, dt.date(2027, 8, 12)).startswith("We keep this day free")
    assert visit.kept_free(said, dt.date(2027, 8, 11)) == ""


def test_a_day_kept_for_work_that_closes_nothing_closes_nothing() -> None:
    drains = work(
        "drain trenching",
        "2027-08-09",
        greens="4",
        while_working="temporary green",
        reserve_dates="2027-08-10",
    )
    assert visit.kept_free(words(plan(drains)), dt.date(2027, 8, 10)) == (
        "We keep this day free in case rain stops our work before it."
    )


def test_from_the_day_that_members_expect_it_greens_should_putt_well() -> None:
    """The same sheet of paper must not tell them that putts will wander."""
    said = words(
        plan(CORES, work("scarifying", "2027-08-24", greens="4"), temperatures=MILD_WINTER)
    )
    cores, blades = said.programme.periods
    expected = cores.putts_well_after_all.expect_by
    assert expected < dt.date(2027, 8, 24)
    assert expected < max(r.putting_smoothly.late or expected for r in cores.recoveries)
    wander = "Putts may be slower and may wander."
    assert visit.what_the_greens_are_like(said, expected - dt.timedelta(1)).endswith(wander)
    assert visit.what_the_greens_are_like(said, expected) == (
        "The greens should putt well by now. Some may still be healing."
    )
    again = blades.days[0] + dt.timedelta(days=1)
    assert "green 4 is recovering" in visit.what_the_greens_are_like(said, again).lower()


def test_what_one_goes_without_that_day(told: Words) -> None:
    assert visit.restrictions_on(told, dt.date(2027, 8, 9)) == [
        "No buggies that day (except the injured). Please ask the shop."
    ]
    assert visit.restrictions_on(told, dt.date(2027, 8, 10)) == []


def test_the_best_days_are_named_only_where_they_are_known() -> None:
    mild = period(plan(CORES, temperatures=MILD_WINTER))
    worst = mild.period.putting_well.at_worst
    assert worst is not None
    said, days = visit.best_days(mild.words, mild.period)
    assert days == (dt.date(2027, 8, 9), worst)
    assert said == (
        "If you can choose your day, the greens are at their best before Monday 9 August "
        f"or after {mild.words.dates.day(worst)}."
    )
    winter = period(plan(work("hollow tining", "2027-11-08")))
    assert visit.best_days(winter.words, winter.period) == ("", ())
