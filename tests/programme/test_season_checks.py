"""Works out of season and on days off: plans that bring each finding, and plans that just do not."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Callable

import pytest

from notices.findings import Weight
from notices.programme.model import Programme
from notices.programme.season_checks import USUAL
from tests.programme.finding_tables import assert_found, assert_quiet, found

ProgrammeOf = Callable[..., Programme]

COURSE = "course: {greens: [{green: 1-3, area: 480 m2}]}\n"
WARM = COURSE.replace("{greens", "{grass: warm-season, greens")
ENGLAND = "club: {name: Marl Hill, country: GB-ENG}\n"
SCOTLAND = ENGLAND.replace("ENG", "SCT")
SOUTH = "club: {name: Marl Hill, place: {latitude: -37, longitude: 145, timezone: UTC}}\n"
ON_THE_LINE = SOUTH.replace("-37", "0")


def work(operation: str, days: str, more: str = "") -> str:
    return f"works: [{{operation: {operation}, dates: {days}{more}}}]\n"


def pair(operation: str, away: str, usual: str, more: str = "") -> tuple[str, Weight, str, str]:
    """Two plans that differ by a day or so."""
    return (
        "out-of-season",
        Weight.THINK_AGAIN,
        COURSE + work(operation, away, more),
        COURSE + work(operation, usual, more),
    )


AREA = ", settings: {area: 60 m2}"
CORES = "hollow tining"

# The months are those of issue 5 (common practice, no published source).
TABLE = [
    pair("scarifying", "2026-03-31", "2026-04-01"),
    pair("scarifying", "2026-10-01", "2026-09-30"),
    pair("verticutting", "2026-03-31", "2026-04-01"),
    pair("verticutting", "2026-10-01", "2026-09-30"),
    pair(CORES, "2027-02-28", "2027-03-01"),
    pair(CORES, "2026-05-01", "2026-04-30"),
    pair(CORES, "2026-08-14", "2026-08-15"),
    pair(CORES, "2026-10-01", "2026-09-30"),
    pair(CORES, "2026-09-30 to 2026-10-01", "2026-09-29 to 2026-09-30"),
    pair("deep solid tining", "2026-08-31", "2026-09-01"),
    pair("deep solid tining", "2026-04-01", "2026-03-31"),
    pair("mole ploughing", "2026-04-30", "2026-05-01"),
    pair("mole ploughing", "2026-10-01", "2026-09-30"),
    pair("overseeding", "2026-08-14", "2026-08-15"),
    pair("overseeding", "2026-09-16", "2026-09-15"),
    pair("drain trenching", "2026-09-30", "2026-10-01", AREA),
    pair("turfing", "2028-03-01", "2028-02-29", AREA),
    (
        # Warm-season grass is cored while it grows, May to August.
        "out-of-season",
        Weight.THINK_AGAIN,
        WARM + work(CORES, "2026-04-30"),
        WARM + work(CORES, "2026-05-01"),
    ),
    (
        "out-of-season",
        Weight.THINK_AGAIN,
        WARM + work(CORES, "2026-09-01"),
        WARM + work(CORES, "2026-08-31"),
    ),
    (
        # Nothing is usual for seed on warm-season greens.
        "out-of-season",
        Weight.THINK_AGAIN,
        COURSE + work("overseeding", "2026-10-15"),
        WARM + work("overseeding", "2026-10-15"),
    ),
    (
        # South of the line half a year later: April to September becomes October to March.
        "out-of-season",
        Weight.THINK_AGAIN,
        SOUTH + COURSE + work("scarifying", "2026-09-30"),
        SOUTH + COURSE + work("scarifying", "2026-10-01"),
    ),
    (
        # October to the end of February becomes April to the end of August.
        "out-of-season",
        Weight.THINK_AGAIN,
        SOUTH + COURSE + work("turfing", "2026-09-01", AREA),
        SOUTH + COURSE + work("turfing", "2026-08-31", AREA),
    ),
    (
        "out-of-season",
        Weight.THINK_AGAIN,
        SOUTH + COURSE + work("scarifying", "2026-06-15"),
        ON_THE_LINE + COURSE + work("scarifying", "2026-06-15"),
    ),
    (
        # The late summer bank holiday of 2026 is Monday 31 August (gov.uk/bank-holidays).
        "work-on-holiday",
        Weight.INFORMATION,
        ENGLAND + COURSE + work(CORES, "2026-08-31"),
        ENGLAND + COURSE + work(CORES, "2026-09-01"),
    ),
    (
        # Scotland has its summer bank holiday on 3 August instead.
        "work-on-holiday",
        Weight.INFORMATION,
        SCOTLAND + COURSE + work(CORES, "2026-08-03"),
        SCOTLAND + COURSE + work(CORES, "2026-08-31"),
    ),
    (
        # Without a country nobody knows, and a code that is no country's is no fault here.
        "work-on-holiday",
        Weight.INFORMATION,
        ENGLAND.replace("-ENG", "") + COURSE + work(CORES, "2026-12-25"),
        ENGLAND.replace("GB-ENG", "XX") + COURSE + work(CORES, "2026-12-25"),
    ),
    (
        # Later dressings close greens too: 24 August and a week are 31 August.
        "work-on-holiday",
        Weight.INFORMATION,
        ENGLAND
        + COURSE
        + work("top dressing", "2026-08-24", ", settings: {dressings: 2, days_between: 7}"),
        ENGLAND
        + COURSE
        + work("top dressing", "2026-08-24", ", settings: {dressings: 2, days_between: 8}"),
    ),
    (
        # Slitting leaves greens open.
        "work-on-holiday",
        Weight.INFORMATION,
        ENGLAND + COURSE + work("scarifying", "2026-08-31"),
        ENGLAND + COURSE + work("slitting", "2026-08-31"),
    ),
    (
        # 2026-09-05 is a Saturday.
        "work-at-weekend",
        Weight.INFORMATION,
        COURSE + work(CORES, "2026-09-04 to 2026-09-05"),
        COURSE + work(CORES, "2026-09-03 to 2026-09-04"),
    ),
    (
        "work-at-weekend",
        Weight.INFORMATION,
        COURSE + work(CORES, "2026-09-06"),
        COURSE + work(CORES, "2026-09-06", ", while_working: open"),
    ),
    (
        # Boxing Day of 2026 is a Saturday: said once, as a holiday.
        "work-at-weekend",
        Weight.INFORMATION,
        COURSE + work(CORES, "2026-12-26"),
        ENGLAND + COURSE + work(CORES, "2026-12-26"),
    ),
]


@pytest.mark.parametrize(("code", "weight", "plan", "_harmless"), TABLE)
def test_a_plan_that_brings_the_finding(
    programme_of: ProgrammeOf, code: str, weight: Weight, plan: str, _harmless: str
) -> None:
    finding = assert_found(programme_of(plan), code, weight)
    assert finding.path == ("works", 0, "dates")


@pytest.mark.parametrize(("code", "_weight", "_plan", "harmless"), TABLE)
def test_a_plan_that_just_does_not(
    programme_of: ProgrammeOf, code: str, _weight: Weight, _plan: str, harmless: str
) -> None:
    assert_quiet(programme_of(harmless), code)


def test_every_kind_of_work_with_a_season_is_in_the_table() -> None:
    plans = " ".join(row[2] for row in TABLE if row[0] == "out-of-season")
    assert all(f"operation: {name}," in plans for name in USUAL)


def test_only_the_days_away_are_named(programme_of: ProgrammeOf) -> None:
    plan = COURSE + work(CORES, "2026-09-29 to 2026-10-02")
    (finding,) = found(programme_of(plan), "out-of-season")
    assert finding.dates == (dt.date(2026, 10, 1), dt.date(2026, 10, 2))


def test_the_nearest_usual_start_is_named_and_what_the_delay_costs(
    programme_of: ProgrammeOf,
) -> None:
    # 12 October is 12 days after 30 September; cores heal the slower the later in autumn.
    (finding,) = found(programme_of(COURSE + work(CORES, "2026-10-12")), "out-of-season")
    assert "outside its usual time of year, March to April or mid-August to September" in (
        finding.message
    )
    told = re.search(r"up to (\d+) days, (\d+) days more than from 2026-09-30", finding.message)
    assert told
    assert 0 < int(told[2]) < int(told[1])


def test_the_whole_work_must_be_in_season(programme_of: ProgrammeOf) -> None:
    # Three days end on 30 September when they begin on the 28th.
    plan = COURSE + work(CORES, "2026-10-12 to 2026-10-14")
    (finding,) = found(programme_of(plan), "out-of-season")
    assert "from 2026-09-28, the nearest usual start" in finding.message


def test_summer_cores_cost_nothing_more(programme_of: ProgrammeOf) -> None:
    # July is warmer than mid-August, so the grass closes the holes no more slowly.
    (finding,) = found(programme_of(COURSE + work(CORES, "2026-07-27")), "out-of-season")
    assert "from 2026-08-15, the nearest usual start" in finding.message
    assert "more than" not in finding.message


def test_what_opens_nothing_costs_no_recovery(programme_of: ProgrammeOf) -> None:
    (finding,) = found(programme_of(COURSE + work("overseeding", "2026-10-01")), "out-of-season")
    assert finding.message.endswith("the nearest usual start is 2026-09-15")
