"""What else golfers must know, in sentences."""

from __future__ import annotations

from typing import Any

import pytest

from notices.wording import circumstances
from tests.wording.small_plans import plan, words, work

WORK = work("hollow tining", "2027-08-09 to 2027-08-11")


@pytest.mark.parametrize(
    ("closure", "said", "listed"),
    [
        (
            {"what": "course", "dates": "2027-08-09"},
            "The course is closed on Monday 9 August.",
            "Course: closed",
        ),
        (
            {"what": "the whole course", "dates": "2027-08-09 to 2027-08-11"},
            "The course is closed from Monday 9 to Wednesday 11 August.",
            "Course: closed",
        ),
        (
            {
                "what": "greens 1-9",
                "dates": "2027-08-09 to 2027-08-10",
                "instead": "holes 10 to 18",
            },
            (
                "Greens 1 to 9 are closed on Monday 9 and Tuesday 10 August. "
                "Please use holes 10 to 18."
            ),
            "Greens 1 to 9: closed",
        ),
        (
            {"what": "green 7", "dates": "2027-08-09", "reason": "a drain"},
            "Green 7 is closed on Monday 9 August. The reason: a drain.",
            "Green 7: closed",
        ),
        (
            {"what": "practice ground", "dates": "2027-08-09"},
            "The practice ground is closed on Monday 9 August.",
            "Practice ground: closed",
        ),
        (
            {"what": "The nets", "dates": "2027-08-09"},
            "The nets are closed on Monday 9 August.",
            "The nets: closed",
        ),
        (
            {"what": "changing rooms", "dates": "2027-08-09"},
            "The changing rooms are closed on Monday 9 August.",
            "Changing rooms: closed",
        ),
        (
            {"what": "short course", "dates": "2027-08-09"},
            "The short course is closed on Monday 9 August.",
            "Short course: closed",
        ),
        # Two things, and then words in s that are one.
        (
            {"what": "driving range and grass", "dates": "2027-08-09"},
            "The driving range and grass are closed on Monday 9 August.",
            "Driving range and grass: closed",
        ),
        (
            {"what": "tennis", "dates": "2027-08-09"},
            "The tennis is closed on Monday 9 August.",
            "Tennis: closed",
        ),
        (
            {"what": "golf shop's terrace", "dates": "2027-08-09 to 2027-08-10, 2027-08-16"},
            (
                "The golf shop's terrace is closed on Monday 9 and Tuesday 10 August "
                "and on Monday 16 August."
            ),
            "Golf shop's terrace: closed",
        ),
    ],
)
def test_closures(closure: dict[str, object], said: str, listed: str) -> None:
    told = words(plan(WORK, closures=[closure]))
    (closed,) = told.programme.closures
    assert circumstances.closure(told, closed) == said
    assert circumstances.closed_thing(told, closed) == listed


def test_temporary_greens_are_not_called_closed() -> None:
    """Golfers play the hole, to another green."""
    closure = {
        "what": "greens 1-9",
        "dates": "2027-11-01 to 2027-11-02",
        "instead": "temporary greens",
        "reason": "drain trenching",
    }
    told = words(plan(WORK, closures=[closure]))
    (closed,) = told.programme.closures
    assert circumstances.closed_thing(told, closed) == "Greens 1 to 9: temporary greens"
    assert circumstances.closure(told, closed) == (
        "Greens 1 to 9 are closed on Monday 1 and Tuesday 2 November. "
        "Please use temporary greens. The reason: drain trenching."
    )


@pytest.mark.parametrize(
    ("date", "greens", "said"),
    [
        # The day of the work.
        ("2027-08-09", "1-18", ["Medal, Monday 9 August: greens 1 to 6 are not in play."]),
        ("2027-08-11", "12", ["Medal, Wednesday 11 August: green 12 is not in play."]),
        # Days after it, the greens open and not yet smooth.
        (
            "2027-08-13",
            "1-18",
            [
                (
                    "Medal, Friday 13 August: the greens are still recovering. "
                    "Expect slower, less even putts."
                )
            ],
        ),
        (
            "2027-08-13",
            "12",
            [
                (
                    "Medal, Friday 13 August: green 12 is still recovering. "
                    "Expect slower, less even putts."
                )
            ],
        ),
        # Long before and long after it, nothing is said.
        ("2027-07-01", "1-18", []),
        ("2028-07-01", "1-18", []),
    ],
)
def test_fixtures(date: str, greens: str, said: list[str]) -> None:
    told = words(
        plan(
            work("hollow tining", "2027-08-09 to 2027-08-11", greens=greens),
            fixtures=[{"name": "Medal", "date": date}],
        )
    )
    assert circumstances.fixtures(told) == said


def test_a_fixture_on_recovering_greens_of_a_course_with_a_putting_green_that_is_not() -> None:
    told = words(
        plan(
            work("hollow tining", "2027-08-09 to 2027-08-11", greens="1-18"),
            greens="1-18, Putting green",
            fixtures=[{"name": "Medal", "date": "2027-08-13"}],
        )
    )
    assert circumstances.fixtures(told) == [
        (
            "Medal, Friday 13 August: all 18 greens are still recovering. "
            "Expect slower, less even putts."
        )
    ]


@pytest.mark.parametrize(
    ("restriction", "said"),
    [
        ({"what": "buggies", "dates": "2027-08-09"}, "No buggies on Monday 9 August."),
        (
            {
                "what": "buggies",
                "dates": "2027-08-09 to 2027-08-15",
                "except": "members with a medical exemption",
                "ask": "the shop",
            },
            (
                "No buggies from Monday 9 to Sunday 15 August. "
                "Exception: members with a medical exemption. Please ask the shop."
            ),
        ),
    ],
)
def test_restrictions(restriction: dict[str, object], said: str) -> None:
    assert circumstances.restrictions(words(plan(WORK, restrictions=[restriction]))) == [said]


@pytest.mark.parametrize(
    ("decision", "said"),
    [
        (None, "All dates depend on the weather."),
        (
            {"by": "the Course Manager", "when": "16:00 the day before"},
            "All dates depend on the weather. The Course Manager decides at 16:00 the day before.",
        ),
        (
            {
                "by": "the Course Manager",
                "when": "16:00 the day before",
                "where": "the clubhouse board",
            },
            (
                "All dates depend on the weather. The Course Manager decides at 16:00 the day before. "
                "You find the word on the clubhouse board."
            ),
        ),
        (
            {
                "by": "the Course Manager",
                "when": "16:00 the day before",
                "confirmed": "06:30",
                "where": "the clubhouse board and the website",
            },
            (
                "All dates depend on the weather. The Course Manager decides at 16:00 the day before. "
                "You find the final word on the clubhouse board and the website at 06:30 on the day."
            ),
        ),
    ],
)
def test_who_decides(decision: dict[str, str] | None, said: str) -> None:
    more: dict[str, Any] = {"decision": decision} if decision else {}
    assert circumstances.decision(words(plan(WORK, **more))) == said


def test_a_decision_told_nowhere_in_particular_still_has_its_time() -> None:
    decision = {"by": "the Secretary", "when": "16:00 the day before", "confirmed": "06:30"}
    said = circumstances.decision(words(plan(WORK, decision=decision)))
    assert said.endswith("You find the final word at 06:30 on the day.")


@pytest.mark.parametrize(
    "when", ["at 16:00 the day before", "by noon", "before 16:00", "on the morning", "after dark"]
)
def test_a_time_that_brings_its_own_little_word(when: str) -> None:
    said = circumstances.decision(words(plan(WORK, decision={"by": "the Secretary", "when": when})))
    assert said == f"All dates depend on the weather. The Secretary decides {when}."


@pytest.mark.parametrize("where", ["on the club's site", "at the first tee", "in the shop"])
def test_a_place_that_brings_its_own_little_word(where: str) -> None:
    decision = {"by": "the Secretary", "when": "noon", "where": where}
    said = circumstances.decision(words(plan(WORK, decision=decision)))
    assert said.endswith(f"You find the word {where}.")


@pytest.mark.parametrize(
    ("approval", "said"),
    [
        (None, ""),
        ("pending", ""),
        ({"by": "the Greens Committee"}, "Approved by the Greens Committee."),
        (
            {"by": "the Greens Committee", "date": "2027-02-01", "reference": "minute 9"},
            "Approved by the Greens Committee on 1 February 2027 (minute 9).",
        ),
    ],
)
def test_approval(approval: object, said: str) -> None:
    more: dict[str, Any] = {"approval": approval} if approval else {}
    assert circumstances.approval(words(plan(WORK, **more))) == said


@pytest.mark.parametrize(
    ("club", "said"),
    [
        ({}, "Please ask at the club."),
        ({"contact": "ask the shop"}, "Ask the shop."),
        (
            {"sender": {"role": "Secretary", "email": "office@fallow.example"}},
            "Please ask the Secretary, office@fallow.example.",
        ),
    ],
)
def test_whom_to_ask(club: dict[str, object], said: str) -> None:
    assert circumstances.contact(words(plan(WORK, club=club))) == said
