"""Greens as one names them."""

from __future__ import annotations

import pytest

from notices.programme.model import Green
from notices.wording.greens import (
    course_phrase,
    name_greens,
    name_greens_between,
    name_greens_briefly,
    name_holes,
    named,
)


def course(numbers: int, *names: str) -> dict[str, Green]:
    numbered = {str(n): Green(str(n), n, 500.0, area_given=True) for n in range(1, numbers + 1)}
    return numbered | {name: Green(name, None, 300.0, area_given=True) for name in names}


EIGHTEEN = course(18, "Putting green")


def keys(text: str) -> list[str]:
    """Numbers with a hyphen for runs, and names, with commas between."""
    found: list[str] = []
    for part in text.split(", "):
        first, hyphen, last = part.partition("-")
        found += [str(n) for n in range(int(first), int(last) + 1)] if hyphen else [part]
    return found


@pytest.mark.parametrize(
    ("chosen", "said", "short"),
    [
        ("1-18", "all 18 greens", "1 to 18"),
        ("1-18, Putting green", "all 18 greens and the putting green", "1 to 18, putting green"),
        ("12", "green 12", "12"),
        ("16, 17", "greens 16 and 17", "16 and 17"),
        ("1-3", "greens 1 to 3", "1 to 3"),
        ("1, 2, 5-7", "greens 1, 2 and 5 to 7", "1, 2 and 5 to 7"),
        ("1-3, 9, 11-13", "greens 1 to 3, 9 and 11 to 13", "1 to 3, 9 and 11 to 13"),
        ("Putting green", "the putting green", "putting green"),
        ("18, Putting green", "green 18 and the putting green", "18, putting green"),
    ],
)
def test_greens_of_a_course(chosen: str, said: str, short: str) -> None:
    assert name_greens(keys(chosen), EIGHTEEN) == said
    assert name_greens(keys(chosen), EIGHTEEN, short=True) == short


def test_the_order_is_that_of_the_course_and_not_of_the_work() -> None:
    assert name_greens(["7", "6", "5"], EIGHTEEN) == "greens 5 to 7"


def test_a_course_with_a_single_green() -> None:
    assert name_greens(["1"], course(1)) == "green 1"


def test_a_course_of_two() -> None:
    assert name_greens(["1", "2"], course(2)) == "both greens"


def test_a_course_of_names_only() -> None:
    named_course = course(0, "Long meadow", "Mill", "BBQ corner")
    assert name_greens(["Mill"], named_course) == "the mill"
    assert (
        name_greens(list(named_course), named_course)
        == "the long meadow, the mill and the BBQ corner"
    )
    assert name_greens(["Long meadow", "Mill"], named_course, short=True) == "long meadow, mill"


def test_none_at_all() -> None:
    assert name_greens([], EIGHTEEN) == "no green"


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("Putting green", "the putting green"),
        ("The nursery", "the nursery"),
        ("the nursery", "the nursery"),
        # Capitals that belong to the name stay.
        ("A green", "the A green"),
        ("BBQ corner", "the BBQ corner"),
    ],
)
def test_names(name: str, said: str) -> None:
    assert named(name) == said


def numbered(name: str, holes: int) -> dict[str, Green]:
    return {
        f"{name} {n}": Green(f"{name} {n}", n, 500.0, area_given=True, course=name)
        for n in range(1, holes + 1)
    }


TWO = numbered("Oak", 18) | numbered("Elm", 18) | course(0, "Putting green")
NINES = numbered("Red nine", 9) | numbered("White nine", 9) | numbered("Blue nine", 9)
ONE_NAMED = numbered("Oak", 18)


def of(name: str, first: int, last: int) -> list[str]:
    return [f"{name} {n}" for n in range(first, last + 1)]


@pytest.mark.parametrize(
    ("chosen", "said", "short"),
    [
        ([*TWO][:36], "all 36 greens", "Oak 1 to 18; Elm 1 to 18"),
        (
            [*TWO],
            "all 36 greens and the putting green",
            "Oak 1 to 18; Elm 1 to 18; putting green",
        ),
        (of("Oak", 1, 18), "all 18 greens of the Oak course", "Oak 1 to 18"),
        (
            of("Oak", 1, 9) + of("Elm", 10, 18),
            "greens 1 to 9 of the Oak course and greens 10 to 18 of the Elm course",
            "Oak 1 to 9; Elm 10 to 18",
        ),
        (
            [*of("Oak", 1, 18), "Elm 4", "Putting green"],
            "all 18 greens of the Oak course, green 4 of the Elm course and the putting green",
            "Oak 1 to 18; Elm 4; putting green",
        ),
        (
            [*of("Oak", 1, 3), *of("Oak", 5, 18), *of("Elm", 1, 18)],
            "all greens except green 4 of the Oak course",
            "Oak 1 to 3 and 5 to 18; Elm 1 to 18",
        ),
        (
            [*of("Oak", 1, 17), *of("Elm", 1, 18), "Putting green"],
            "the putting green and all greens except green 18 of the Oak course",
            "Oak 1 to 17; Elm 1 to 18; putting green",
        ),
        (
            [*of("Oak", 1, 16), *of("Elm", 2, 18)],
            "greens 1 to 16 of the Oak course and greens 2 to 18 of the Elm course",
            "Oak 1 to 16; Elm 2 to 18",
        ),
        (["Elm 7"], "green 7 of the Elm course", "Elm 7"),
        (["Elm 7", "Oak 7"], "green 7 of the Oak course and green 7 of the Elm course", None),
        (["Elm 7", "Elm 9"], "greens 7 and 9 of the Elm course", "Elm 7 and 9"),
    ],
)
def test_greens_of_two_courses(chosen: list[str], said: str, short: str | None) -> None:
    assert name_greens(chosen, TWO) == said
    if short is not None:
        assert name_greens(chosen, TWO, short=True) == short


@pytest.mark.parametrize(
    ("chosen", "said"),
    [
        ([*TWO][:36], "all greens"),
        ([*TWO], "all greens"),
        (
            [*of("Oak", 1, 3), *of("Oak", 5, 18), *of("Elm", 1, 17)],
            "all greens except Oak 4 and Elm 18",
        ),
        # The putting green would seem to be left out with it.
        (
            [*of("Oak", 2, 18), *of("Elm", 1, 18), "Putting green"],
            "the putting green and all greens except green 1 of the Oak course",
        ),
        (["Elm 7"], "green 7 of the Elm course"),
    ],
)
def test_greens_where_room_is_short(chosen: list[str], said: str) -> None:
    assert name_greens_briefly(chosen, TWO) == said


@pytest.mark.parametrize(
    ("chosen", "said", "short"),
    [
        (["Red nine 7"], "green 7 of the Red nine", "Red 7"),
        ([*NINES], "all 27 greens", "Red 1 to 9; White 1 to 9; Blue 1 to 9"),
        (
            of("Red nine", 1, 9) + of("Blue nine", 1, 9),
            "all 18 greens of the Red nine and the Blue nine",
            "Red 1 to 9; Blue 1 to 9",
        ),
    ],
)
def test_greens_of_nines(chosen: list[str], said: str, short: str) -> None:
    assert name_greens(chosen, NINES) == said
    assert name_greens(chosen, NINES, short=True) == short


def test_one_course_with_a_name_needs_no_naming() -> None:
    assert name_greens(of("Oak", 1, 18), ONE_NAMED) == "all 18 greens"
    assert name_greens(["Oak 7", "Oak 8"], ONE_NAMED) == "greens 7 and 8"
    assert name_greens(["Oak 7"], ONE_NAMED, short=True) == "7"


def test_a_putting_green_that_belongs_to_a_course() -> None:
    key = "Red nine Putting green"
    own = {key: Green(key, None, 300.0, area_given=True, course="Red nine")}
    assert name_greens([key], NINES | own) == "the Red putting green"
    assert name_greens(["Red nine 2", key], NINES | own, short=True) == "Red 2; Red putting green"


def shared(*holes: int, name: str = "") -> dict[str, Green]:
    key = f"{name} {'/'.join(map(str, holes))}".strip()
    first, *others = holes
    green = Green(key, first, 900.0, area_given=True, course=name, shared_with=tuple(others))
    return {key: green}


def links(*doubles: tuple[int, ...]) -> dict[str, Green]:
    taken = {hole for holes in doubles for hole in holes}
    single = {key: green for key, green in course(18).items() if green.number not in taken}
    for holes in doubles:
        single |= shared(*holes)
    return single


ONE_DOUBLE = links((2, 16))
DOUBLES = links((2, 16), (5, 13))


@pytest.mark.parametrize(
    ("chosen", "greens", "said", "short"),
    [
        (["2/16"], ONE_DOUBLE, "the double green 2/16", "2/16"),
        # 18 holes with one shared green have 17 greens.
        (
            [*ONE_DOUBLE],
            ONE_DOUBLE,
            "all 17 greens",
            "1, 2/16, 3 to 15, 17 and 18",
        ),
        (
            ["1", "2/16", "3", "4"],
            ONE_DOUBLE,
            "greens 1, 3 and 4, and the double green 2/16",
            "1, 2/16, 3 and 4",
        ),
        (["5/13", "2/16"], DOUBLES, "the double greens 2/16 and 5/13", "2/16 and 5/13"),
        (
            ["1", "5/13", "2/16"],
            DOUBLES,
            "green 1, and the double greens 2/16 and 5/13",
            "1, 2/16 and 5/13",
        ),
        (["2/11/16"], links((2, 11, 16)), "the triple green 2/11/16", "2/11/16"),
        (
            ["Oak 2/16", "Elm 1"],
            shared(2, 16, name="Oak") | numbered("Elm", 9),
            "the double green 2/16 of the Oak course and green 1 of the Elm course",
            "Oak 2/16; Elm 1",
        ),
    ],
)
def test_double_greens(chosen: list[str], greens: dict[str, Green], said: str, short: str) -> None:
    assert name_greens(chosen, greens) == said
    assert name_greens(chosen, greens, short=True) == short


@pytest.mark.parametrize(
    ("holes", "greens", "said"),
    [
        ([("", 7)], EIGHTEEN, "hole 7"),
        ([("", n) for n in range(1, 10)], EIGHTEEN, "holes 1 to 9"),
        ([("", n) for n in range(1, 19)], EIGHTEEN, "all 18 holes"),
        ([("", 16), ("", 17)], ONE_DOUBLE, "holes 16 and 17"),
        # Seventeen greens, and still eighteen holes.
        ([("", n) for n in range(1, 19)], ONE_DOUBLE, "all 18 holes"),
        ([("Elm", 3), ("Oak", 1)], TWO, "hole 1 on the Oak course and hole 3 on the Elm course"),
        ([("Red nine", n) for n in range(1, 10)], NINES, "all nine holes on the Red nine"),
    ],
)
def test_holes(holes: list[tuple[str, int]], greens: dict[str, Green], said: str) -> None:
    assert name_holes(holes, greens) == said


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("Oak", "the Oak course"),
        ("Red nine", "the Red nine"),
        ("Old Course", "the Old Course"),
        ("The Heath", "the Heath course"),
        ("Dune Links", "the Dune Links"),
        ("River Loop", "the River Loop"),
    ],
)
def test_courses_are_called_what_they_are(name: str, said: str) -> None:
    assert course_phrase(name) == said


@pytest.mark.parametrize(
    ("chosen", "said"),
    [
        (["Oak 4"], "Oak 4"),
        (["Elm 11", "Oak 4"], "Oak 4 and Elm 11"),
        (["Oak 4", "Putting green"], "Oak 4 and the putting green"),
        (["Oak 4", "Oak 5", "Elm 11"], "Oak 4 and 5, and Elm 11"),
    ],
)
def test_greens_in_passing(chosen: list[str], said: str) -> None:
    assert name_greens_between(chosen, TWO) == said


def test_greens_in_passing_of_one_course_say_what_they_are() -> None:
    assert name_greens_between(["4", "7"], EIGHTEEN) == "greens 4 and 7"
