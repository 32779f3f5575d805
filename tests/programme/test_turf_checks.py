"""Turf that has not rooted when the next work opens the green: plans that bring it, and just do not.

Trenches dug on 2026-10-05 at 10 °C all year round, optimum 18 °C: in a year that is warmer by 1 °C
growth potential is exp(-0.5 × ((11 - 18) / 5.5)²) = 0.4449, so the least of laid turf, 6 weeks × 7 ×
0.75 = 31.5 growth days, takes 31.5 / 0.4449 = 70.8 days, until 2026-12-15 or a day on either side.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from notices.findings import Weight
from notices.programme.model import Programme
from tests.programme.finding_tables import assert_found, assert_quiet, found

ProgrammeOf = Callable[..., Programme]

COURSE = (
    "course:\n"
    "  greens: [{green: 1-3, area: 480 m2}]\n"
    "  optimum_temperature: 18 C\n"
    f"  monthly_mean_temperature: [{', '.join(['10'] * 12)}]\n"
)
TRENCH = "drain trenching, dates: 2026-10-05, greens: 2"
TURF = "turfing, dates: 2026-10-05, greens: 2, settings: {area: 60 m2}"
LONG_SINCE, TOO_SOON = "2026-12-17", "2026-12-13"


def works(*lines: str) -> str:
    listed = "".join(f"  - {{operation: {line}}}\n" for line in lines)
    return f"{COURSE}works:\n{listed}"


CODE = "turf-not-rooted"

TABLE = [
    pytest.param(
        works(TRENCH, f"{kind}, dates: {TOO_SOON}, greens: 1-3"),
        works(TRENCH, f"{kind}, dates: {LONG_SINCE}, greens: 1-3"),
        id=kind,
    )
    for kind in (
        *("slitting", "solid tining", "needle tining", "deep solid tining", "hollow tining"),
        *("scarifying", "verticutting", "drill and fill", "mole ploughing"),
    )
] + [
    pytest.param(
        works(TURF, "slitting, dates: 2026-10-06, greens: 1-3"),
        works(TURF, "slitting, dates: 2026-10-06, greens: [1, 3]"),
        id="another green",
    ),
    pytest.param(
        works(TURF, "slitting, dates: 2026-10-06"),
        works(TURF, "slitting, dates: 2026-10-05"),
        id="the same day, before the turf is laid",
    ),
    pytest.param(
        works(TURF, "slitting, dates: 2026-11-05"),
        works(TURF, "top dressing, dates: 2026-11-05", "rolling, dates: 2026-11-05"),
        id="sand and a roller lift no turf",
    ),
]


@pytest.mark.parametrize(("plan", "_harmless"), TABLE)
def test_a_plan_that_brings_the_finding(
    programme_of: ProgrammeOf, plan: str, _harmless: str
) -> None:
    finding = assert_found(programme_of(plan), CODE, Weight.THINK_AGAIN)
    assert finding.greens == ("2",)
    assert finding.path == ("works", 1, "greens")
    assert "the turf of green 2 will not have rooted" in finding.message
    assert finding.message.endswith("(judgement)")


@pytest.mark.parametrize(("_plan", "harmless"), TABLE)
def test_a_plan_that_just_does_not(programme_of: ProgrammeOf, _plan: str, harmless: str) -> None:
    assert_quiet(programme_of(harmless), CODE)


def test_it_names_the_day_by_which_the_turf_holds(programme_of: ProgrammeOf) -> None:
    programme = programme_of(works(TRENCH, f"slitting, dates: {TOO_SOON}"))
    (finding,) = found(programme, CODE)
    (recovery,) = programme.recoveries["drain-trenching-1"]
    holds = recovery.putting_smoothly.early
    assert abs(holds - dt.date(2026, 12, 15)) <= dt.timedelta(days=1)
    assert finding.suggestion == (
        f"Leave that green out of this work, or move it to {holds} or later"
    )


def test_a_green_with_new_turf_is_left_out_on_purpose(programme_of: ProgrammeOf) -> None:
    # The first is left out because of its turf; in the second the slits come before the turf.
    after = programme_of(works(TURF, "slitting, dates: 2026-11-05, greens: [1, 3]"))
    before = programme_of(works(TURF, "slitting, dates: 2026-09-05, greens: [1, 3]"))
    assert not [f for f in after.findings if f.code == "green-left-out"]
    assert [f.greens for f in before.findings if f.code == "green-left-out"] == [("2",)]
