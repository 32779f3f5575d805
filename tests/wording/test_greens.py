"""Greens as one names them."""

from __future__ import annotations

import pytest

from notices.programme.model import Green
from notices.wording.greens import name_greens, named


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
    assert name_greens(["1", "2"], course(2)) == "all 2 greens"


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
