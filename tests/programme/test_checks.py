"""Each check: a plan that brings its finding, and one that just does not."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from notices.findings import Weight
from notices.programme.agronomic_checks import AGRONOMIC_CHECKS
from notices.programme.checks import CHECKS, logo_too_small
from notices.programme.model import Programme
from notices.programme.order_checks import ORDER_CHECKS
from notices.programme.photographs import photograph_of_nothing
from notices.programme.reserve_checks import RESERVE_CHECKS
from notices.programme.season_checks import SEASON_CHECKS
from notices.programme.trench_checks import TRENCH_CHECKS
from notices.programme.turf_checks import turf_not_rooted
from tests.programme.finding_tables import assert_found, assert_quiet, found

ProgrammeOf = Callable[..., Programme]

CLUB = "club: {name: Marl Hill, sender: {email: course@marlhill.example}}\n"
FAR = CLUB.replace(
    "name", "place: {latitude: 40, longitude: -75, timezone: America/New_York}, name"
)
COURSE = """\
course:
  greens: [{green: 1-2, area: 480 m2}]
  optimum_temperature: 18 C
  monthly_mean_temperature: [4.1, 4.6, 6.2, 8.3, 11.0, 13.6, 15.8, 15.6, 13.3, 10.0, 6.6, 4.3]
"""
DRESSING = "works: [{operation: top dressing, dates: 2026-06-01}]\n"
ROLLING = "works: [{operation: rolling, dates: 2026-06-01}]\n"


def work(text: str) -> str:
    return f"works: [{{operation: {text}}}]\n"


def fixture(day: str) -> str:
    return DRESSING + f"fixtures: [{{name: June Medal, date: {day}}}]\n"


JUNE_MEDAL = "fixtures: [{name: June Medal, date: 2026-06-01}]\n"


def shut(what: str, more: str = "") -> str:
    return f"closures: [{{what: {what}, dates: 2026-06-01{more}}}]\n"


def crew(people: int, until: str = "15:00", more: str = "", since: str = "07:00") -> str:
    return f"crew: {{people: {people}, working_day: '{since} to {until}'{more}}}\n"


CORES = "hollow tining, dates: 2026-06-01, services_checked: true"


def raised(day: str, more: str = "greens: 1-2") -> str:
    return (
        f"works:\n  - {{operation: raising the height of cut, dates: {day}, {more}}}\n"
        f"  - {{operation: {CORES}}}\n"
    )


# iowa_pm696: 480 m² at 1 km/h × 1 m × 60 % take 48 minutes; 12 between greens make it an hour.
MACHINE = (
    ", machines: [{operation: rolling, width: 1 m, speed: 1 km/h, efficiency: 60 %, "
    "minutes_between_greens: 12, people: 2}]"
)
BOTH = MACHINE.replace("]", ", ") + MACHINE.replace(", machines: [", "").replace(
    "rolling", "brushing"
)
SPREADER = MACHINE.replace("rolling", "top dressing").replace("people: 2", "people: 1")
ROLLING_AND_BRUSHING = """\
works:
  - {operation: rolling, dates: 2026-06-01}
  - {operation: brushing, dates: 2026-06-01, settings: {passes: 1}}
"""
TWO_ROLLINGS = """\
works:
  - {operation: rolling, dates: 2026-06-01, greens: 1}
  - {operation: rolling, dates: 2026-06-01, greens: 2}
"""
IN_DECEMBER = ROLLING.replace("06-01", "12-01")
MIDLANDS = CLUB.replace(
    "name", "place: {latitude: 52.5, longitude: -1.6, timezone: Europe/London}, name"
)

PUTTING = "course: {greens: [{green: '1-2, Putting green', area: 480 m2}]}\n"
TWO_PUTTING = PUTTING.replace("green'", "green, Chipping green'")
SCARIFYING = 'works: [{operation: scarifying, dates: 2026-06-01, greens: "1-2, Putting green"}]\n'
BOTH_PUTTING = SCARIFYING.replace("1-2, Putting green", "Putting green, Chipping green")

NINE_GREENS = COURSE.replace("1-2", "1-9")
GREEN_1 = "closures: [{what: green 1, dates: 2026-06-01"

# code, weight, plan with the finding, plan that just has not.
TABLE = [
    (
        "fewer-than-nine-holes",
        Weight.THINK_AGAIN,
        CLUB + NINE_GREENS + GREEN_1 + "}]\n",
        CLUB + NINE_GREENS + GREEN_1 + ", instead: temporary green}]\n",
    ),
    (
        "hired-people-every-day",
        Weight.INFORMATION,
        CLUB + COURSE + ROLLING + crew(2, more=", hired_people: 1"),
        CLUB + COURSE + ROLLING + crew(2, more=", hired_people: 1, hired_dates: 2026-06-01"),
    ),
    (
        "hired-people-every-day",
        Weight.INFORMATION,
        CLUB + COURSE + ROLLING + crew(2, more=", hired_people: 1"),
        CLUB + COURSE + ROLLING + crew(2, more=", hired_people: 0"),
    ),
    (
        # Without an accent that they lack, a letter is still printed as it stands in Czech.
        "letters-not-printed",
        Weight.INFORMATION,
        CLUB.replace("Marl Hill", "Μαρλ Hill") + COURSE + ROLLING,
        CLUB.replace("Marl Hill", "Zámek Žďár") + COURSE + ROLLING,
    ),
    (
        "letters-not-printed",
        Weight.INFORMATION,
        CLUB + COURSE + ROLLING.replace("06-01", "06-01, note: see you 🙂"),
        CLUB + COURSE + ROLLING.replace("06-01", "06-01, note: “see you” – soon…"),
    ),
    (
        # Two greens and the putting green: all of them on one day, or one of them a day later.
        "nowhere-to-putt",
        Weight.THINK_AGAIN,
        CLUB + PUTTING + SCARIFYING,
        CLUB + PUTTING + SCARIFYING.replace('"1-2, Putting green"', "1-2"),
    ),
    (
        "nowhere-to-putt",
        Weight.THINK_AGAIN,
        CLUB + PUTTING + SCARIFYING,
        CLUB + PUTTING + SCARIFYING.replace("}", ", while_working: open}"),
    ),
    (
        "putting-greens-together",
        Weight.INFORMATION,
        CLUB + TWO_PUTTING + BOTH_PUTTING,
        CLUB + TWO_PUTTING + BOTH_PUTTING.replace(", Chipping green", ""),
    ),
    (
        "no-sender",
        Weight.THINK_AGAIN,
        "club: {name: Marl Hill}\n" + COURSE + ROLLING,
        CLUB + COURSE + ROLLING,
    ),
    (
        "services-not-checked",
        Weight.THINK_AGAIN,
        CLUB + COURSE + work("hollow tining, dates: 2026-06-01"),
        CLUB + COURSE + work(CORES),
    ),
    (
        "services-not-checked",
        Weight.THINK_AGAIN,
        CLUB + COURSE + work("slitting, dates: 2026-06-01"),
        CLUB + COURSE + work("scarifying, dates: 2026-06-01"),
    ),
    (
        "fixture-in-closure",
        Weight.THINK_AGAIN,
        CLUB + COURSE + fixture("2026-06-01"),
        CLUB + COURSE + fixture("2026-06-02"),
    ),
    (
        # With mats in their place, golf can be played.
        "fixture-and-closure",
        Weight.THINK_AGAIN,
        CLUB + COURSE + JUNE_MEDAL + shut("tees 1-2"),
        CLUB + COURSE + JUNE_MEDAL + shut("practice ground"),
    ),
    (
        "fixture-and-closure",
        Weight.INFORMATION,
        CLUB + COURSE + JUNE_MEDAL + shut("tees 1-2", ", instead: the mats"),
        CLUB + COURSE + JUNE_MEDAL.replace("06-01", "06-02") + shut("tees 1-2"),
    ),
    (
        # The cores come on 1 June, and from then on the greens recover.
        "fixture-on-higher-cut",
        Weight.INFORMATION,
        CLUB + COURSE + raised("2026-05-22") + JUNE_MEDAL.replace("06-01", "05-22"),
        CLUB + COURSE + raised("2026-05-22") + JUNE_MEDAL.replace("06-01", "05-21"),
    ),
    (
        # A light dressing putts smoothly on the third day at the latest (common practice).
        "fixture-in-recovery",
        Weight.THINK_AGAIN,
        CLUB + COURSE + fixture("2026-06-03"),
        CLUB + COURSE + fixture("2026-06-04"),
    ),
    (
        "recovery-into-winter",
        Weight.THINK_AGAIN,
        CLUB + COURSE + work(CORES.replace("06-01", "10-12")),
        CLUB + COURSE + work(CORES.replace("06-01", "08-12")),
    ),
    (
        "date-past",
        Weight.INFORMATION,
        CLUB + COURSE + ROLLING.replace("2026-06-01", "2026-01-04"),
        CLUB + COURSE + ROLLING.replace("2026-06-01", "2026-01-05"),
    ),
    (
        "date-past",
        Weight.INFORMATION,
        CLUB + COURSE + "closures: [{what: practice ground, dates: 2026-01-04 to 2026-01-06}]\n",
        CLUB + COURSE + "closures: [{what: practice ground, dates: 2026-01-05 to 2026-01-06}]\n",
    ),
    (
        # Two greens take two hours; a day of three has one of them for breaks.
        "day-too-long",
        Weight.THINK_AGAIN,
        CLUB + COURSE + ROLLING + crew(2, "09:59", MACHINE),
        CLUB + COURSE + ROLLING + crew(2, "10:00", MACHINE),
    ),
    (
        # Two machines of an hour a green, two people each: with four of them 1 + 1 + 1 hours and
        # one of rest; with three, never both at once, 4 and one.
        "day-too-long",
        Weight.THINK_AGAIN,
        CLUB + COURSE + ROLLING_AND_BRUSHING + crew(3, "11:00", BOTH),
        CLUB + COURSE + ROLLING_AND_BRUSHING + crew(4, "11:00", BOTH),
    ),
    (
        # One of five is kept back for the routine work, unless the plan says otherwise.
        "day-too-long",
        Weight.THINK_AGAIN,
        CLUB + COURSE + ROLLING_AND_BRUSHING + crew(5, "11:00", ", kept_back: 2" + BOTH),
        CLUB + COURSE + ROLLING_AND_BRUSHING + crew(5, "11:00", BOTH),
    ),
    (
        # Without a rest two hours fit into two.
        "day-too-long",
        Weight.THINK_AGAIN,
        CLUB + COURSE + ROLLING + crew(2, "09:00", ", breaks: 1" + MACHINE),
        CLUB + COURSE + ROLLING + crew(2, "09:00", ", breaks: 0" + MACHINE),
    ),
    (
        # Sand from 09:00: two hours, with the rest from 08:45 to 09:45, until 11:45.
        "day-too-long",
        Weight.THINK_AGAIN,
        CLUB + COURSE + DRESSING + crew(2, "11:30", SPREADER),
        CLUB + COURSE + DRESSING + crew(2, "11:30", ", dew_off: '08:00'" + SPREADER),
    ),
    (
        # Light from about 07:20 on the first of December in the Midlands.
        "day-too-long",
        Weight.THINK_AGAIN,
        MIDLANDS + COURSE + IN_DECEMBER + crew(2, "10:00", MACHINE),
        CLUB + COURSE + IN_DECEMBER + crew(2, "10:00", MACHINE),
    ),
    (
        # Dark from about 16:30: two hours and the rest from 14:00 are too long.
        "day-too-long",
        Weight.THINK_AGAIN,
        MIDLANDS + COURSE + IN_DECEMBER + crew(2, "17:00", MACHINE, since="14:00"),
        MIDLANDS + COURSE + IN_DECEMBER + crew(2, "17:00", MACHINE, since="13:00"),
    ),
    (
        "not-enough-people",
        Weight.THINK_AGAIN,
        CLUB + COURSE + ROLLING + crew(1, more=MACHINE),
        CLUB + COURSE + ROLLING + crew(1, more=", hired_people: 1" + MACHINE),
    ),
    (
        "not-enough-people",
        Weight.THINK_AGAIN,
        CLUB + COURSE + work(CORES) + crew(1),
        CLUB + COURSE + work(CORES) + crew(1, more=", clearing_cores: {people: 1}"),
    ),
    (
        "machine-in-two-places",
        Weight.INFORMATION,
        CLUB + COURSE + TWO_ROLLINGS + crew(2),
        CLUB + COURSE + TWO_ROLLINGS.replace("06-01, greens: 2", "06-02, greens: 2") + crew(2),
    ),
    (
        "work-before-light",
        Weight.INFORMATION,
        MIDLANDS + COURSE + IN_DECEMBER + crew(2),
        MIDLANDS + COURSE + IN_DECEMBER + crew(2, since="08:00"),
    ),
    (
        "work-after-dark",
        Weight.INFORMATION,
        MIDLANDS + COURSE + IN_DECEMBER + crew(2, "17:00"),
        MIDLANDS + COURSE + IN_DECEMBER + crew(2, "16:00"),
    ),
    (
        "place-not-stated",
        Weight.INFORMATION,
        CLUB + COURSE + ROLLING + crew(2),
        MIDLANDS + COURSE + ROLLING + crew(2),
    ),
    (
        # A job of two days takes half of its time on each of them.
        "day-too-long",
        Weight.THINK_AGAIN,
        CLUB
        + COURSE
        + work("rolling, dates: 2026-06-01, greens: 1, settings: {passes: 3}")
        + crew(2, "10:00", MACHINE),
        CLUB
        + COURSE
        + work("rolling, dates: 2026-06-01 to 2026-06-02, greens: 1, settings: {passes: 3}")
        + crew(2, "10:00", MACHINE),
    ),
    (
        "nothing-to-fill",
        Weight.THINK_AGAIN,
        CLUB + COURSE + work("top dressing, dates: 2026-06-01, settings: {fill: holes}"),
        CLUB
        + COURSE
        + f"works: [{{operation: {CORES}}}, "
        + "{operation: top dressing, dates: 2026-06-01, settings: {fill: holes}}]\n",
    ),
    (
        "nothing-to-fill",
        Weight.THINK_AGAIN,
        CLUB
        + COURSE
        + f"works: [{{operation: {CORES}, greens: 1}}, "
        + "{operation: top dressing, dates: 2026-06-01, settings: {fill: holes}}]\n",
        CLUB
        + COURSE
        + f"works: [{{operation: {CORES}, greens: 1}}, "
        + "{operation: top dressing, dates: 2026-06-01, greens: 1, settings: {fill: holes}}]\n",
    ),
    (
        # Both given, plan.load refuses it; here the club's usual height decides.
        "cut-not-raised",
        Weight.THINK_AGAIN,
        CLUB
        + COURSE
        + "  mowing_height: 5 mm\n"
        + work("raising the height of cut, dates: 2026-06-01, settings: {to: 5 mm}"),
        CLUB
        + COURSE
        + "  mowing_height: 4.9 mm\n"
        + work("raising the height of cut, dates: 2026-06-01, settings: {to: 5 mm}"),
    ),
    (
        "temperatures-not-stated",
        Weight.INFORMATION,
        CLUB + "course: {greens: [{green: 1, area: 480 m2}]}\n" + ROLLING,
        CLUB
        + "course: {greens: [{green: 1, area: 480 m2}]}\n"
        + "closures: [{what: course, dates: 2026-06-01}]\n",
    ),
    (
        "temperatures-not-stated",
        Weight.THINK_AGAIN,
        FAR + "course: {greens: [{green: 1, area: 480 m2}]}\n" + ROLLING,
        FAR + COURSE + ROLLING,
    ),
    (
        "area-not-stated",
        Weight.INFORMATION,
        CLUB + COURSE.replace("}]", "}, {green: 3}]") + ROLLING,
        CLUB + COURSE.replace("}]", "}, {green: 2}]") + ROLLING,
    ),
    (
        # Yellow is too light for text, dark green is not: see the test of is_darkened.
        "colour-darkened",
        Weight.INFORMATION,
        CLUB.replace("name", "colour: '#ffd200', name") + COURSE + ROLLING,
        CLUB.replace("name", "colour: '#1b4d3e', name") + COURSE + ROLLING,
    ),
    (
        # Common practice: 7 to 14 days ahead, to the day on which the work begins.
        "cut-raised-too-late",
        Weight.THINK_AGAIN,
        CLUB + COURSE + raised("2026-05-26"),
        CLUB + COURSE + raised("2026-05-25"),
    ),
    (
        # A cut that goes up over two days is up with the last of them.
        "cut-raised-too-late",
        Weight.THINK_AGAIN,
        CLUB + COURSE + raised("2026-05-25 to 2026-05-26"),
        CLUB + COURSE + raised("2026-05-24 to 2026-05-25"),
    ),
    (
        # Up to a fortnight after the work began it was for that work; later it is for none.
        "cut-raised-too-late",
        Weight.THINK_AGAIN,
        CLUB + COURSE + raised("2026-06-15"),
        CLUB + COURSE + raised("2026-06-16"),
    ),
    (
        "cut-raised-too-early",
        Weight.THINK_AGAIN,
        CLUB + COURSE + raised("2026-05-17"),
        CLUB + COURSE + raised("2026-05-18"),
    ),
    (
        # More than four weeks ahead it is not for this work.
        "cut-raised-too-early",
        Weight.THINK_AGAIN,
        CLUB + COURSE + raised("2026-05-04"),
        CLUB + COURSE + raised("2026-05-03"),
    ),
    (
        # For other greens, or for a work that golfers hardly notice, none need go up.
        "cut-raised-too-late",
        Weight.THINK_AGAIN,
        CLUB + COURSE + raised("2026-05-31", "greens: 1"),
        CLUB + COURSE + raised("2026-05-31", "greens: 1").replace(CORES, f"{CORES}, greens: 2"),
    ),
    (
        "cut-raised-too-late",
        Weight.THINK_AGAIN,
        CLUB + COURSE + raised("2026-05-31"),
        CLUB + COURSE + raised("2026-05-31").replace("hollow tining", "needle tining"),
    ),
]


@pytest.mark.parametrize(("code", "weight", "plan", "_harmless"), TABLE)
def test_a_plan_that_brings_the_finding(
    programme_of: ProgrammeOf, code: str, weight: Weight, plan: str, _harmless: str
) -> None:
    assert_found(programme_of(plan), code, weight)


@pytest.mark.parametrize(("code", "_weight", "_plan", "harmless"), TABLE)
def test_a_plan_that_just_does_not(
    programme_of: ProgrammeOf, code: str, _weight: Weight, _plan: str, harmless: str
) -> None:
    assert_quiet(programme_of(harmless), code)


def test_every_check_is_in_the_table() -> None:
    # One row or more for each check; the light, the defaults, the raised cut and what is left to putt
    # on have two codes each.
    # Those of the agronomist, of the order, of the season and of reserve days have tables of their
    # own, and those of pictures and of laid turf are tested with them.
    elsewhere = {
        *AGRONOMIC_CHECKS,
        *ORDER_CHECKS,
        *SEASON_CHECKS,
        *RESERVE_CHECKS,
        *TRENCH_CHECKS,
        logo_too_small,
        photograph_of_nothing,
        turf_not_rooted,
    }
    own = [check for check in CHECKS if check not in elsewhere]
    assert len({row[0] for row in TABLE}) == len(own) + 4


@pytest.mark.parametrize(
    ("day", "said"),
    [
        ("2026-05-31", "on 2026-05-31, 1 day before hollow tining begins;"),
        ("2026-06-01", "on 2026-06-01, the day on which hollow tining begins;"),
        ("2026-06-04", "on 2026-06-04, 3 days after hollow tining begins;"),
    ],
)
def test_when_the_cut_should_have_gone_up(programme_of: ProgrammeOf, day: str, said: str) -> None:
    (finding,) = found(programme_of(CLUB + COURSE + raised(day)), "cut-raised-too-late")
    assert said in finding.message
    # 14 and 7 days before 1 June.
    assert "between 2026-05-18 and 2026-05-25" in finding.suggestion


def test_works_that_have_begun_are_one_remark(programme_of: ProgrammeOf) -> None:
    both = CLUB + COURSE + ROLLING.replace("2026-06-01", "2026-01-04").rstrip("]\n")
    (finding,) = found(
        programme_of(f"{both}, {{operation: brushing, dates: 2026-01-03}}]\n"), "date-past"
    )
    assert finding.message == "2 works begin before the date of issue, the first on 2026-01-03"
    assert finding.work == "brushing-1"


def test_two_works_of_one_operation_share_the_machine(programme_of: ProgrammeOf) -> None:
    programme = programme_of(CLUB + COURSE + TWO_ROLLINGS + crew(9, "09:59", MACHINE))
    assert [finding.dates for finding in found(programme, "day-too-long")] == [
        (dt.date(2026, 6, 1),)
    ]
    text = CLUB + COURSE + TWO_ROLLINGS + crew(9, "10:00", MACHINE)
    assert not found(programme_of(text), "day-too-long")


def test_machines_follow_one_another_from_green_to_green(programme_of: ProgrammeOf) -> None:
    # Two machines of an hour a green, two greens: 1 + 1 + 1 hours, not 2 and not 4.
    plan = CLUB + COURSE + ROLLING_AND_BRUSHING
    assert found(programme_of(plan + crew(9, "10:59", BOTH)), "day-too-long")
    assert not found(programme_of(plan + crew(9, "11:00", BOTH)), "day-too-long")


HELD_UP = [
    # plan, by how much, after when, by what, what would help
    (
        CLUB + ROLLING_AND_BRUSHING + crew(3, "11:00", BOTH),
        "until about 12:00, 60 minutes after 11:00, when the working day ends",
        "only 3 people are there",
        "more people",
    ),
    (
        CLUB + ROLLING + crew(9, "09:00", MACHINE),
        # The rest lies from 07:30 to 08:30.
        "until about 10:00, 60 minutes after 09:00, when the working day ends",
        "rolling, which takes 2.0 hours",
        "machine",
    ),
    (
        CLUB + DRESSING + crew(2, "11:30", SPREADER),
        "until about 11:45, 15 minutes after 11:30, when the working day ends",
        "no sand is spread before the dew is off at 09:00",
        "another day",
    ),
    (
        MIDLANDS + IN_DECEMBER + crew(2, "17:00", MACHINE, since="14:00"),
        "until about 17:00",
        "it is light only from",
        "by the light",
    ),
]


@pytest.mark.parametrize(("plan", "how_long", "why", "remedy"), HELD_UP)
def test_a_day_too_long_says_by_how_much_and_why(
    programme_of: ProgrammeOf, plan: str, how_long: str, why: str, remedy: str
) -> None:
    (finding,) = found(programme_of(COURSE + plan), "day-too-long")
    assert how_long in finding.message
    assert why in finding.message
    assert remedy in finding.suggestion


def test_what_is_named_as_short_is_named_once(programme_of: ProgrammeOf) -> None:
    days = work("rolling, dates: 2026-06-01 to 2026-06-03, greens: 1-2")
    (finding,) = found(
        programme_of(CLUB + COURSE + days + crew(1, more=MACHINE)), "not-enough-people"
    )
    assert [day.day for day in finding.dates] == [1, 2, 3]
    assert "rolling takes 2 people, and only 1 person is there" in finding.message


def test_a_later_dressing_takes_its_time_too(programme_of: ProgrammeOf) -> None:
    text = work("top dressing, dates: 2026-06-01, settings: {dressings: 2, days_between: 7}")
    machine = MACHINE.replace("rolling", "top dressing")
    findings = found(programme_of(CLUB + COURSE + text + crew(2, "09:59", machine)), "day-too-long")
    assert [finding.dates[0].day for finding in findings] == [1, 8]


def test_nothing_to_fill_names_the_greens(programme_of: ProgrammeOf) -> None:
    text = (
        f"works: [{{operation: {CORES}, greens: 1}}, "
        "{operation: top dressing, dates: 2026-06-01, settings: {fill: holes}}]\n"
    )
    (finding,) = found(programme_of(CLUB + COURSE + text), "nothing-to-fill")
    assert finding.greens == ("2",)
    assert "no work opens any on green 2 before it" in finding.message


def test_one_green_putts_and_two_putt(programme_of: ProgrammeOf) -> None:
    one = fixture("2026-06-03").replace("dates: 2026-06-01", "dates: 2026-06-01, greens: 1")
    (single,) = found(programme_of(CLUB + COURSE + one), "fixture-in-recovery")
    (both,) = found(programme_of(CLUB + COURSE + fixture("2026-06-03")), "fixture-in-recovery")
    assert "comes before green 1 putts well again" in single.message
    assert "comes before greens 1 and 2 putt well again" in both.message


def test_a_winter_is_laid_to_the_work_that_opens(programme_of: ProgrammeOf) -> None:
    text = (
        "works:\n"
        "  - {operation: raising the height of cut, dates: 2026-10-05}\n"
        f"  - {{operation: {CORES.replace('06-01', '10-12')}}}\n"
    )
    (finding,) = found(programme_of(CLUB + COURSE + text), "recovery-into-winter")
    assert finding.work == "hollow-tining-1"
    assert finding.path == ("works", 1, "dates")


def test_an_accepted_finding_is_kept_with_its_reason(programme_of: ProgrammeOf) -> None:
    accepted = "accepted: [{finding: fixture-in-recovery, by: the committee, why: it goes ahead}]\n"
    programme = programme_of(CLUB + COURSE + fixture("2026-06-03") + accepted)
    assert not found(programme, "fixture-in-recovery")
    ((finding, by, why),) = programme.accepted
    assert (finding.code, by, why) == ("fixture-in-recovery", "the committee", "it goes ahead")
