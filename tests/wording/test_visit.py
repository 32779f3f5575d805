"""One day in words, as a visiting party asks about it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence

import pytest

from notices.wording import visit
from notices.wording.words import Words
from tests.wording.small_plans import (
    GREEN_OF_AN_HOUR,
    HOUR_A_GREEN,
    MILD_WINTER,
    period,
    plan,
    words,
    work,
)

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
        ("2027-08-01", "All holes can be played.", "Start as usual."),
        # Six greens are done a day; after the last hole comes the first, so 18 less 6 follow.
        (
            "2027-08-10",
            "Holes 7 to 12 are closed all day. The other 12 holes are open.",
            "You can start from hole 13: 12 holes in a row are in play from there.",
        ),
        ("2027-09-20", "The course is closed all day.", ""),
        (
            "2027-09-21",
            "Holes 3 and 4 have temporary greens. The other 16 holes are open.",
            "You can start from hole 1: 18 holes in a row are in play from there.",
        ),
        (
            "2027-09-22",
            "Holes 1 to 9 are closed all day. The other nine holes are open.",
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
    ("greens", "holes", "away"),
    [
        (
            "1-3",
            (
                "Holes 1 to 3 are closed in turn from 06:30 to 09:30, each for up to an hour. "
                "The other 15 holes are open all day."
            ),
            "Closed in turn in the morning, each for up to an hour.",
        ),
        (
            "5",
            "Hole 5 is closed from 06:30 to 07:30. The other 17 holes are open all day.",
            "Closed in the morning for up to an hour.",
        ),
    ],
)
def test_greens_closed_one_after_another_are_not_closed_all_morning(
    greens: str, holes: str, away: str
) -> None:
    verticut = work("verticutting", "2027-06-01", greens=greens, reopen="when finished")
    data = plan(verticut, crew=HOUR_A_GREEN)
    data["course"]["greens"] = [{"green": "1-18", "area": GREEN_OF_AN_HOUR}]
    told, day = words(data), dt.date(2027, 6, 1)
    assert visit.what_is_open(told, day) == holes
    assert visit.closed_for(told, day, greens.replace("1-3", "1 2 3").split()) == away
    assert visit.where_to_start(told, day).startswith("All 18 holes are in play until 06:30 and")
    assert visit.without_a_round(told) == []


def test_one_temporary_green_is_not_a_temporary_green_for_all() -> None:
    """Slits are cut on all greens while green 4 waits for its turf to root."""
    drained = work("drain trenching", "2027-06-01", greens="4", reopen="10 days later")
    told = words(plan(drained, work("slitting", "2027-06-04", while_working="open")))
    every = [str(green) for green in range(1, 19)]
    day = dt.date(2027, 6, 4)
    assert visit.closed_for(told, day, every) == (
        "Green 4 has a temporary green. The others are open."
    )
    assert visit.closed_for(told, day, ["4"]) == "Temporary green."
    assert visit.closed_for(told, day, ["5", "6"]) == "Open."


def test_days_on_which_no_round_can_start_are_told() -> None:
    """Four greens are closed, and at most five holes follow one another: 17, 18, 1, 2 and 3."""
    apart = {"2027-08-09": "4, 8, 12, 16", "2027-08-10": "1"}
    told = words(plan(work("hollow tining", "2027-08-09 to 2027-08-10", greens=apart)))
    assert visit.without_a_round(told) == [
        (
            "No round of nine holes or more can start on Monday 9 August. "
            "14 holes are open, but no nine in a row: "
            "1 to 3, 5 to 7, 9 to 11, 13 to 15, 17 and 18."
        )
    ]
    day = dt.date(2027, 8, 9)
    assert visit.where_to_start(told, day) == (
        "No round of nine holes or more can start that day: no nine in a row are open."
    )


def test_where_fewer_than_nine_holes_are_open_nobody_asks_why_there_is_no_round() -> None:
    told = words(plan(work("hollow tining", "2027-08-09", greens="1-12")))
    assert visit.without_a_round(told) == [
        "No round of nine holes or more can start on Monday 9 August. Only holes 13 to 18 are open."
    ]
    assert visit.where_to_start(told, dt.date(2027, 8, 9)) == (
        "No round of nine holes or more can start that day."
    )


def test_a_course_of_six_holes_knows_that_it_has_no_nine() -> None:
    told = words(plan(work("hollow tining", "2027-08-09", greens="1"), greens="1-6"))
    assert visit.without_a_round(told) == []


def test_greens_that_come_back_during_the_day_are_recovering_that_day() -> None:
    verticut = work("verticutting", "2027-06-01", greens="5", reopen="when finished")
    data = plan(verticut, crew=HOUR_A_GREEN)
    told = visit.what_the_greens_are_like(words(data), dt.date(2027, 6, 1))
    assert told.startswith("Green 5 is recovering from our work.")


@pytest.mark.parametrize(
    ("day", "said"),
    [
        ("2027-08-01", "As usual. No recent work will trouble your putts."),
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


def test_what_is_to_be_seen_on_one_green_is_not_said_of_all() -> None:
    drained = work("drain trenching", "2027-05-10", greens="4", reopen="2 days later")
    told = words(plan(work("hollow tining", "2027-05-17"), drained))
    assert visit.what_the_greens_are_like(told, dt.date(2027, 5, 18)) == (
        "The greens are recovering from our work. You will see small holes. "
        "On green 4 you will see the lines of new drains. Putts may be slower and may wander."
    )


def test_what_golfers_hardly_notice_does_not_make_putts_wander() -> None:
    """Members are told of needle tining that they will hardly notice: so are the starter's golfers."""
    names = ("needle tining", "verticutting", "hollow tining")
    works = [
        work(name, "2027-06-01", greens=str(green), reopen="when finished")
        for green, name in enumerate(names, 5)
    ]
    ends = (
        "Putts run much as usual.",
        "You may notice it a little when you putt.",
        "Putts may be slower and may wander.",
    )
    for number, end in enumerate(ends, 1):  # each with those that are noticed less
        told = words(plan(*works[:number], crew=HOUR_A_GREEN))
        assert visit.what_the_greens_are_like(told, dt.date(2027, 6, 1)).endswith(end)


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
    winter = period(plan(work("hollow tining", "2027-11-08")), dt.date(2027, 11, 2))
    assert visit.best_days(winter.words, winter.period) == ("", ())


def best(*works: dict[str, object], closures: Sequence[dict[str, object]] = ()) -> str:
    told = words(plan(*works, temperatures=MILD_WINTER, closures=list(closures)))
    main = told.main_period()
    assert main is not None
    return visit.best_days(told, main)[0].removeprefix(
        "If you can choose your day, the greens are at their best "
    )


def well_by(*works: dict[str, object]) -> dt.date:
    """The day at worst that members are told of the only period of some works."""
    worst = period(plan(*works, temperatures=MILD_WINTER)).period.putting_well.at_worst
    assert worst is not None
    return worst


TINES = work("hollow tining", "2027-08-09")
"""Where grass never stops growing, of the second week of August."""


def test_the_best_days_are_clear_of_all_that_is_planned() -> None:
    """A light work on 3 May comes first, and a green is dug up from 1 December on."""
    worst = well_by(TINES)
    assert worst < dt.date(2027, 11, 1)
    first = worst + dt.timedelta(days=1)  # at worst, some putt badly on the day before it
    blades = work("verticutting", "2027-05-03")
    trench = work("drain trenching", "2027-12-01", greens="12")
    assert best(TINES, blades, trench) == (
        f"before Monday 3 May or from {first:%A} {first.day} {first:%B} to Tuesday 30 November."
    )


@pytest.mark.parametrize(
    ("what", "first"), [("greens 3-4", "Monday 5 July"), ("practice ground", "Monday 9 August")]
)
def test_closures_count_where_they_are_of_greens_and_holes(what: str, first: str) -> None:
    worst = well_by(TINES)
    told = best(TINES, closures=[{"what": what, "dates": "2027-07-05"}])
    assert told == f"before {first} or after {worst:%A} {worst.day} {worst:%B}."


def test_slower_putts_count_from_the_day_on_which_mowing_is_raised() -> None:
    raised = work("raising the height of cut", "2027-08-02")
    assert best(TINES, raised).startswith("before Monday 2 August or after ")
    # Nothing says when it is mown lower again: no day after it can be named.
    alone = work("raising the height of cut", "2027-10-04")
    assert best(TINES, alone).startswith("before Monday 9 August")
    soon = work("raising the height of cut", "2027-06-07")
    assert best(TINES, soon) == "before Monday 7 June."


def test_a_few_days_between_two_works_are_nothing_to_plan_by() -> None:
    """Issued five days before the work, and the next comes three days after the greens putt well."""
    follows = dt.date.fromordinal(well_by(TINES).toordinal() + 3).isoformat()
    told = words(
        plan(TINES, work("hollow tining", follows), temperatures=MILD_WINTER),
        dt.date(2027, 8, 4),
    )
    last = told.programme.periods[1].putting_well.at_worst
    assert visit.best_days(told, told.programme.periods[0])[1] == (last,)


def test_the_best_days_are_told_while_the_work_goes_on() -> None:
    """They are the same as before it began; what comes before it is past."""
    told = words(plan(CORES, temperatures=MILD_WINTER), dt.date(2027, 8, 10))
    worst = told.programme.periods[0].putting_well.at_worst
    assert worst is not None
    assert visit.best_days(told, told.programme.periods[0]) == (
        f"If you can choose your day, the greens are at their best after {told.dates.day(worst)}.",
        (worst,),
    )
    over = words(plan(CORES, temperatures=MILD_WINTER), worst + dt.timedelta(days=1))
    assert visit.best_days(over, over.programme.periods[0]) == ("", ())


@pytest.mark.parametrize(("operation", "told"), [("needle tining", False), ("top dressing", True)])
def test_the_best_days_are_told_of_what_putts_notice(operation: str, *, told: bool) -> None:
    """Nobody need choose a day for the sake of work that hardly anybody notices."""
    assert bool(best(work(operation, "2027-08-09"))) is told


def test_no_day_after_is_named_where_marks_stay_over_winter() -> None:
    """They putt well before growth stops, and a slow autumn would leave marks until spring."""
    autumn = period(plan(work("hollow tining", "2027-09-27")))
    assert autumn.period.putting_well.growth_stops is None
    assert autumn.period.fully_healed.growth_stops is not None
    said, days = visit.best_days(autumn.words, autumn.period)
    assert days == (dt.date(2027, 9, 27),)
    assert said.endswith("at their best before Monday 27 September.")
