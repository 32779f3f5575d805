"""Which rules of golf the works bring into play, and what temporary greens do to a score."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

import pytest

from notices.programme.model import Programme, RuleInPlay, RuleOfGolf
from notices.references import REFERENCES

ProgrammeOf = Callable[..., Programme]

ENGLISH = "club: {name: Marl Hill, country: GB-ENG}\n"
COURSE = """
course:
  greens: [{green: "1-18, Putting green"}]
  optimum_temperature: 20 C
  monthly_mean_temperature: [20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20]
"""


def works(*lines: str) -> str:
    return "works:\n" + "".join(f"  - {{operation: {line}}}\n" for line in lines)


def june(*days: int) -> tuple[dt.date, ...]:
    return tuple(dt.date(2026, 6, day) for day in days)


def rule(programme: Programme, wanted: RuleOfGolf) -> RuleInPlay:
    (found,) = (rule for rule in programme.rules if rule.rule is wanted)
    return found


E4, SAND, HOLES = (
    RuleOfGolf.RELIEF_FROM_HOLES,
    RuleOfGolf.LOOSE_SAND,
    RuleOfGolf.HOLES_NOT_REPAIRED,
)
D2, WRONG = RuleOfGolf.TEMPORARY_GREENS, RuleOfGolf.WRONG_GREEN

# Each work alone, and the rules that it calls up.
CASES = [
    ("hollow tining", {E4, SAND, HOLES}),  # soil lies about after coring
    ("deep solid tining", {E4, HOLES}),
    ("solid tining", {E4, HOLES}),
    ("needle tining", set()),  # a ball hardly notices 6 mm
    ("scarifying", {E4, SAND}),
    ("verticutting", set()),
    ("top dressing", {SAND}),
    ("drain trenching", {D2, WRONG}),
    ("rolling", set()),
    ("feeding", set()),
]


@pytest.mark.parametrize(("operation", "expected"), CASES)
def test_what_a_work_calls_up(
    programme_of: ProgrammeOf, operation: str, expected: set[RuleOfGolf]
) -> None:
    programme = programme_of(COURSE + works(f"{operation}, dates: 2026-06-01, greens: 1"))
    assert {rule.rule for rule in programme.rules} == expected
    for found in programme.rules:
        assert found.greens == ("1",)
        assert found.works == (f"{operation.replace(' ', '-')}-1",)
        assert set(found.source) <= REFERENCES.keys()


def test_it_matters_while_golfers_putt_on_what_recovers(programme_of: ProgrammeOf) -> None:
    # A light dressing recovers for up to three days; the green opens the next morning.
    programme = programme_of(COURSE + works("top dressing, dates: 2026-06-01, greens: 1-2"))
    assert rule(programme, SAND).dates == june(2, 3)
    assert rule(programme, SAND).greens == ("1", "2")
    played = programme_of(
        COURSE + works("top dressing, dates: 2026-06-01, greens: 1, while_working: open")
    )
    assert rule(played, SAND).dates == june(1, 2, 3)


def test_nobody_plays_golf_on_the_putting_green(programme_of: ProgrammeOf) -> None:
    dressed = works("top dressing, dates: 2026-06-01, greens: Putting green")
    assert programme_of(COURSE + dressed).rules == ()
    closed = "closures: [{what: Putting green, dates: 2026-06-01, instead: temporary green}]\n"
    assert programme_of(COURSE + closed).rules == ()


def test_closures_bring_temporary_greens_too(programme_of: ProgrammeOf) -> None:
    programme = programme_of(
        COURSE + "closures: [{what: greens 4-5, dates: 2026-06-01, instead: temporary greens}]\n"
    )
    assert [found.rule for found in programme.rules] == [D2, WRONG]
    for found in programme.rules:
        assert (found.dates, found.greens, found.works) == (june(1), ("4", "5"), ())


def temporary(greens: str, day: str = "2026-06-01") -> str:
    return f"closures: [{{what: greens {greens}, dates: {day}, instead: temporary greens}}]\n"


# Temporary greens, and for the eighteen and the nines that meet one: how many, within the limit?
SCORES = [
    ("9-10", [(18, 2, True), (9, 1, True), (9, 1, True)]),
    ("9-11", [(18, 3, False), (9, 1, True), (9, 2, False)]),
    ("1-2", [(18, 2, True), (9, 2, False)]),
    ("1-9", [(18, 9, False), (9, 9, False)]),
]


@pytest.mark.parametrize(("greens", "expected"), SCORES)
def test_temporary_greens_count_against_a_score(
    programme_of: ProgrammeOf, greens: str, expected: list[tuple[int, int, bool]]
) -> None:
    programme = programme_of(ENGLISH + COURSE + temporary(greens))
    assert [
        (len(day.holes), len(day.temporary), day.within_limit) for day in programme.scores
    ] == expected
    assert {day.date for day in programme.scores} == set(june(1))


def test_a_course_of_nine_has_the_limit_of_nine(programme_of: ProgrammeOf) -> None:
    nine = COURSE.replace("1-18", "1-9")
    (one,) = programme_of(ENGLISH + nine + temporary("1")).scores
    (two,) = programme_of(ENGLISH + nine + temporary("1-2")).scores
    assert (one.limit, one.within_limit, two.within_limit) == (1, True, False)


def test_holes_and_closed_greens_do_not_count_against_it(programme_of: ProgrammeOf) -> None:
    cored = works("hollow tining, dates: 2026-06-01, greens: 1-9")
    assert programme_of(ENGLISH + COURSE + cored).scores == ()


@pytest.mark.parametrize("country", ["", ", country: GB-SCT", ", country: US", ", country: IE"])
def test_only_in_england_are_the_limits_known(programme_of: ProgrammeOf, country: str) -> None:
    club = f"club: {{name: Marl Hill{country}}}\n"
    assert programme_of(club + COURSE + temporary("1-9")).scores == ()


@pytest.mark.parametrize(
    ("day", "in_season"),
    [
        ("2026-09-30", False),
        ("2026-10-01", True),
        ("2026-12-31", True),
        ("2027-01-01", True),
        ("2027-04-30", True),
        ("2027-05-01", False),
    ],
)
def test_preferred_lies_have_a_season(
    programme_of: ProgrammeOf, day: str, *, in_season: bool
) -> None:
    scores = programme_of(ENGLISH + COURSE + temporary("1", day)).scores
    assert {score.preferred_lies for score in scores} == {in_season}
