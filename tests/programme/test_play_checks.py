"""Too few holes to play: plans that bring the finding, and plans that just do not."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from notices.findings import Finding, Weight
from notices.programme.model import Programme

ProgrammeOf = Callable[..., Programme]

EIGHTEEN = "course: {greens: [{green: 1-18, area: 480 m2}]}\n"
NINE = "course: {greens: [{green: 1-9, area: 480 m2}]}\n"

# An hour for each green, as in test_holes_in_play.py.
MACHINE = (
    "crew: {people: 9, breaks: 0, working_day: '07:00 to 17:00', machines: [{operation: "
    "verticutting, width: 1 m, speed: 1 km/h, efficiency: 60 %, minutes_between_greens: 12}]}\n"
)


def found(programme: Programme) -> list[Finding]:
    return [f for f in programme.findings if f.code == "fewer-than-nine-holes"]


def scarifying(greens: str, dates: str = "2026-06-01") -> str:
    return f"works: [{{operation: scarifying, dates: {dates}, greens: {greens}}}]\n"


def closures(*lines: str) -> str:
    return "closures:\n" + "".join(f"  - {{{line}, dates: 2026-06-01}}\n" for line in lines)


# A plan with the finding, one that just has not, and the holes that are left.
TABLE = {
    "one work": (EIGHTEEN + scarifying("1-10"), EIGHTEEN + scarifying("1-9"), "only 8 holes"),
    "a work and a closure": (
        EIGHTEEN + scarifying("1-6") + closures("what: greens 15-18"),
        EIGHTEEN + scarifying("1-6") + closures("what: greens 16-18"),
        "only 8 holes",
    ),
    "the same greens twice over": (
        EIGHTEEN + scarifying("1-9") + closures("what: greens 9-10"),
        EIGHTEEN + scarifying("1-9") + closures("what: greens 8-9"),
        "only 8 holes",
    ),
    "temporary greens are played": (
        EIGHTEEN + scarifying("1-9") + closures("what: greens 10-18"),
        EIGHTEEN + scarifying("1-9") + closures("what: greens 10-18, instead: temporary greens"),
        "no hole",
    ),
    "holes and greens": (
        EIGHTEEN + closures("what: holes 1-5", "what: greens 6-10"),
        EIGHTEEN + closures("what: holes 1-5", "what: greens 5-9"),
        "only 8 holes",
    ),
    "nine holes": (
        NINE + scarifying("1"),
        NINE + scarifying("1").replace("}]", ", while_working: temporary green}]"),
        "only 8 holes",
    ),
    "greens of two courses count together": (
        "course: {greens: [{green: 1-9, course: Oak}, {green: 1-9, course: Elm}]}\n"
        + closures("what: Oak", "what: Elm 1"),
        "course: {greens: [{green: 1-9, course: Oak}, {green: 1-9, course: Elm}]}\n"
        + closures("what: Oak"),
        "only 8 holes",
    ),
    "the practice green is no hole": (
        NINE.replace("1-9", "'1-9, Putting green'") + scarifying('"9, Putting green"'),
        NINE.replace("1-9", "'1-9, Putting green'") + scarifying('"Putting green"'),
        "only 8 holes",
    ),
    # Nine holes, and one of them is always being worked on; or the club plays on.
    "hour by hour": (
        NINE
        + MACHINE
        + "works: [{operation: verticutting, dates: 2026-06-01, reopen: when finished}]\n",
        NINE
        + MACHINE
        + "works: [{operation: verticutting, dates: 2026-06-01, while_working: open}]\n",
        "only 8 holes",
    ),
    # Six o'clock work: where nobody tells the hours, nobody can tell that they are too few.
    "hours not known": (
        EIGHTEEN + "works: [{operation: verticutting, dates: 2026-06-01, reopen: next morning}]\n",
        EIGHTEEN + "works: [{operation: verticutting, dates: 2026-06-01, reopen: when finished}]\n",
        "no hole",
    ),
    "a part of a course": (
        "course: {greens: [{green: 1-9}]}\n" + scarifying("1-9"),
        "course: {greens: [{green: 1-8}]}\n" + scarifying("1-8"),
        "no hole",
    ),
}


@pytest.mark.parametrize(("plan", "other", "left"), TABLE.values(), ids=TABLE)
def test_fewer_than_nine_holes(programme_of: ProgrammeOf, plan: str, other: str, left: str) -> None:
    (finding,) = found(programme_of(plan))
    assert finding.weight is Weight.THINK_AGAIN
    assert finding.dates == (dt.date(2026, 6, 1),)
    assert f" {left} in play" in finding.message
    assert found(programme_of(other)) == []


def test_it_says_what_meets_and_on_which_days(programme_of: ProgrammeOf) -> None:
    programme = programme_of(
        EIGHTEEN
        + scarifying("1-18", "2026-06-01 to 2026-06-02")
        + closures("what: greens 10-11").replace("06-01", "06-01 to 2026-06-02")
    )
    # On the 1st greens 1 to 9 and 10 to 11, seven are left; on the 2nd 10 to 18, nine are left.
    (finding,) = found(programme)
    assert finding.message == (
        "scarifying and the closure of greens 10-11 leave only 7 holes in play on 2026-06-01"
    )
    assert finding.suggestion == "Close fewer greens at once, or give temporary greens"
    assert finding.path == ("works", 0, "dates")
    assert finding.greens == tuple(str(number) for number in range(1, 12))


def test_each_day_has_its_own_count(programme_of: ProgrammeOf) -> None:
    """Five of nine greens and then four: four holes are left, and then five."""
    (finding,) = found(programme_of(NINE + scarifying("1-9", "2026-06-01 to 2026-06-02")))
    assert finding.message == (
        "scarifying leaves only 4 holes in play on 2026-06-01 and only 5 holes in play on 2026-06-02"
    )


def test_it_says_from_when_to_when(programme_of: ProgrammeOf) -> None:
    # Green 1 from 7 to 8, green 2 from 8 to 9.
    (finding,) = found(
        programme_of(
            NINE
            + MACHINE
            + "works: [{operation: verticutting, dates: 2026-06-01, greens: 1-2, "
            + "reopen: when finished}]\n"
        )
    )
    assert finding.message == (
        "verticutting leaves only 8 holes in play on 2026-06-01, from about 07:00 to 09:00"
    )


def test_closures_alone_are_named_where_they_stand(programme_of: ProgrammeOf) -> None:
    (finding,) = found(
        programme_of(EIGHTEEN + closures("what: practice ground", "what: holes 1-10"))
    )
    assert finding.message == "the closure of holes 1-10 leaves only 8 holes in play on 2026-06-01"
    assert finding.path == ("closures", 1, "dates")
    assert finding.work == ""


def test_a_club_may_close_its_course(programme_of: ProgrammeOf) -> None:
    assert found(programme_of(EIGHTEEN + closures("what: course"))) == []
