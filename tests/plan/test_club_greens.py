"""Several courses, double greens, and what a list of greens means on them."""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from notices.plan.club_greens import ClubGreens, course_word, read_lines
from notices.plan.green_list import GreenRef, parse_greens


@dataclass(frozen=True)
class Line:
    green: tuple[GreenRef, ...]
    course: str | None = None
    also: tuple[GreenRef, ...] | None = None


def line(green: str, course: str | None = None, also: str | None = None) -> Line:
    return Line(parse_greens(green), course, parse_greens(also) if also else None)


def club(*lines: Line) -> ClubGreens:
    greens, problems = read_lines(lines)
    assert problems == []
    return greens


def keys(greens: ClubGreens, text: str) -> str:
    chosen = greens.choose(parse_greens(text))
    assert chosen.problems == ()
    return " | ".join(chosen.greens)


TWO = club(line("1-9", "Oak"), line("1-9", "The Elm course"), line("Putting green"))
NINES = club(line("1-3", "Red nine"), line("1-3", "Blue nine"), line("Putting green", "Red nine"))
LINKS = club(line("1-18"), line("2", also="16"), line("5", also="13"), line("Putting green"))


def test_a_course_without_a_name_has_numbers_alone() -> None:
    plain = club(line("1-3, Putting green"))
    assert [green.key for green in plain.greens] == ["1", "2", "3", "Putting green"]
    assert plain.courses == ()


def test_each_course_counts_for_itself() -> None:
    assert [green.key for green in TWO.greens[8:11]] == [
        "Oak 9",
        "The Elm course 1",
        "The Elm course 2",
    ]
    assert TWO.courses == ("Oak", "The Elm course")


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("Oak 7", "Oak 7"),
        ("oak 2-3, OAK 1", "Oak 2 | Oak 3 | Oak 1"),
        ("Oak 1 to 2, Elm 4, Putting green", "Oak 1 | Oak 2 | The Elm course 4 | Putting green"),
        ("the Elm course 4", "The Elm course 4"),
        ("Oak course 4", "Oak 4"),
        ("Elm", " | ".join(f"The Elm course {n}" for n in range(1, 10))),
    ],
)
def test_greens_of_a_course(typed: str, meant: str) -> None:
    assert keys(TWO, typed) == meant


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("Red 1, Blue nine 3", "Red nine 1 | Blue nine 3"),
        # A whole nine has its numbered greens; its putting green is named for itself.
        ("Red nine", "Red nine 1 | Red nine 2 | Red nine 3"),
        ("Putting green", "Red nine Putting green"),
        ("red nine putting green", "Red nine Putting green"),
    ],
)
def test_greens_of_a_nine(typed: str, meant: str) -> None:
    assert keys(NINES, typed) == meant


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("16", "2/16"),
        ("2", "2/16"),
        ("1-3, 16", "1 | 2/16 | 3"),
        # Both its holes are named, and it is one green.
        ("2, 16, 5, 13", "2/16 | 5/13"),
        # 18 holes, of which four share two greens.
        ("1-18", "1 | 2/16 | 3 | 4 | 5/13 | 6 | 7 | 8 | 9 | 10 | 11 | 12 | 14 | 15 | 17 | 18"),
    ],
)
def test_double_greens(typed: str, meant: str) -> None:
    assert keys(LINKS, typed) == meant


def test_a_green_of_three_holes() -> None:
    greens = club(line("1-9", "Oak"), line("3", "OAK", also="9, 1"))
    assert [green.key for green in greens.greens] == [
        *("Oak 1/3/9", "Oak 2", "Oak 4", "Oak 5", "Oak 6", "Oak 7", "Oak 8"),
    ]


def test_with_one_named_course_plain_numbers_are_clear() -> None:
    only = club(line("1-9", "Oak"))
    assert keys(only, "7, Oak 8") == "Oak 7 | Oak 8"


def test_nobody_plays_to_a_green_when_all_its_holes_are_closed() -> None:
    """While hole 16 is closed, hole 2 is still played to the green that they share."""
    assert LINKS.closed_with([("", 16), ("", 17)]) == ("17",)
    assert LINKS.closed_with([("", 2), ("", 16)]) == ("2/16",)


@pytest.mark.parametrize(
    ("greens", "typed", "told"),
    [
        (TWO, "7", '"7" does not say of which course. Write "Oak 7" or "The Elm course 7"'),
        (
            TWO,
            "1-3, 9",
            (
                '"1-3, 9" does not say of which course. '
                'Write "Oak 1-3, Oak 9" or "The Elm course 1-3, The Elm course 9"'
            ),
        ),
        # What stands before it says which is meant.
        (TWO, "Oak 1-3, 9", '"9" does not say of which course. Write "Oak 9"'),
        (TWO, "Oaks 1-9", 'there is no course "Oaks". Did you mean "Oak 1-9"?'),
        (TWO, "Ash 1-9", 'there is no course "Ash". Known are "Oak" and "The Elm course"'),
        (
            TWO,
            "Oak 9-12",
            '"Oak" has no greens 10-12. Add them under course: greens, or take them out',
        ),
        (TWO, "Oak 1-3, Oak 2", '"Oak 2" stands twice in the list. Name each green once'),
        (TWO, "Oak, Oak course 2", '"Oak 2" stands twice in the list. Name each green once'),
        (TWO, "Oak 1 and 2", '"1 and 2" misses commas. Write "1, 2"'),
        (
            TWO,
            "Puting green",
            'the club has no green "Puting green". Did you mean "Putting green"?',
        ),
        (
            club(line("1-9, Putting green", "Oak"), line("1-9, Putting green", "Elm")),
            "Putting green",
            (
                '"Putting green" does not say of which course. '
                'Write "Oak Putting green" or "Elm Putting green"'
            ),
        ),
        (
            club(line("1-9, Practice green 1")),
            "Practice green 2",
            'the course has no green "Practice green 2". Did you mean "Practice green 1"?',
        ),
    ],
)
def test_what_is_not_clear_is_told_with_what_would_be(
    greens: ClubGreens, typed: str, told: str
) -> None:
    (problem,) = greens.choose(parse_greens(typed)).problems
    assert f"{problem.message}. {problem.suggestion}" == told


@pytest.mark.parametrize(
    ("lines", "at", "told"),
    [
        (
            [line("1-9", "Oak"), line("10-18")],
            (1, "green"),
            '"10-18" does not say of which course, as other lines do. Add course: to this line',
        ),
        (
            [line("1-9"), line("2-3", also="8")],
            (1, "also"),
            (
                "this line names more than one green, and only one can be shared. "
                "Give each double green a line of its own, such as {green: 2, also: 16}"
            ),
        ),
        (
            [line("1-9"), line("2", also="2")],
            (1, "also"),
            "2 is this green itself. Write the number of the other hole",
        ),
        (
            [line("1-9"), line("2", also="Putting green")],
            (1, "also"),
            '"Putting green" is not a hole. Write the number of the other hole',
        ),
        (
            [line("1-9"), line("2", also="8"), line("3", also="8")],
            (2, "also"),
            "green 8 is already shared by 2 and 8. Write all holes of a green on one line",
        ),
        (
            [line("1-9", "Red nine"), line("1-9", "Red loop")],
            (1, "course"),
            (
                'the courses "Red nine" and "Red loop" are hardly told apart. '
                "Spell them alike, or name one of them anew"
            ),
        ),
        (
            [line("1-9", "Oak"), line("1-9", "Elm"), line("Elm")],
            (1, "course"),
            '"Elm" is the name of a green too. Give one of the two another name',
        ),
    ],
)
def test_lines_that_cannot_be_meant(lines: list[Line], at: tuple[int, str], told: str) -> None:
    _, (found,) = read_lines(lines)
    assert (found.line, found.key) == at
    assert f"{found.problem.message}. {found.problem.suggestion}" == told


@pytest.mark.parametrize(
    ("name", "word"),
    [
        ("Oak", "oak"),
        ("The Old Course", "old"),
        ("Red  Nine", "red"),
        ("Dune Links", "dune"),
        # What is all of the name stays.
        ("The Links", "links"),
        ("Course", "course"),
    ],
)
def test_a_course_may_be_typed_without_its_kind(name: str, word: str) -> None:
    assert course_word(name) == word
