"""What a closure is about."""

from __future__ import annotations

import pytest

from notices.plan.places import Place, read_place
from tests.plan.test_club_greens import LINKS, NINES, TWO, club, line

NINE = club(line("1-9, Putting green"))


@pytest.mark.parametrize(
    ("what", "place"),
    [
        ("course", Place("course", whole_course=True)),
        ("the whole course", Place("course", whole_course=True)),
        ("green 4", Place("greens", ("4",), (("", 4),))),
        ("Greens 1, 2", Place("greens", ("1", "2"), (("", 1), ("", 2)))),
        ("the putting green", Place("greens", ("Putting green",))),
        ("greens 9, Putting green", Place("greens", ("9", "Putting green"), (("", 9),))),
        ("holes 8-9", Place("holes", ("8", "9"), (("", 8), ("", 9)))),
        ("tees 8-9", Place("tees", (), (("", 8), ("", 9)))),
        ("Fairway 8", Place("fairway", (), (("", 8),))),
        ("forward tees 8", Place("forward tees", (), (("", 8),))),
        # Free words, however they begin.
        ("practice ground", Place()),
        ("greens committee room", Place()),
        ("tees", Place()),
        ("tee shop", Place()),
        ("course office", Place()),
        ("short course", Place()),
        ("Oak", Place()),
        ("hole in the fence", Place()),
    ],
)
def test_at_a_club_of_one_course(what: str, place: Place) -> None:
    assert read_place(what, NINE) == place


OAK = tuple(f"Oak {n}" for n in range(1, 10))
OAK_HOLES = tuple(("Oak", n) for n in range(1, 10))


@pytest.mark.parametrize(
    ("what", "place"),
    [
        ("course Oak", Place("course", OAK, OAK_HOLES, ("Oak",))),
        ("the Oak course", Place("course", OAK, OAK_HOLES, ("Oak",))),
        ("Oak", Place("course", OAK, OAK_HOLES, ("Oak",))),
        ("both courses", Place("course", (), (), ("Oak", "The Elm course"), whole_course=True)),
        ("holes Oak", Place("holes", OAK, OAK_HOLES)),
        ("tees Elm 2", Place("tees", (), (("The Elm course", 2),))),
        ("course meeting", Place()),
    ],
)
def test_at_a_club_of_two(what: str, place: Place) -> None:
    assert read_place(what, TWO) == place


def test_two_of_three_are_named_together() -> None:
    found = read_place("courses Red, Blue nine", NINES)
    assert found.courses == ("Red nine", "Blue nine")
    assert len(found.holes) == 6


@pytest.mark.parametrize(
    ("what", "greens", "holes"),
    [
        # One hole of two: the green stays in play for the other.
        ("hole 16", (), [16]),
        ("holes 2, 16", ("2/16",), [2, 16]),
        ("green 16", ("2/16",), [16]),
        ("holes 15-17", ("15", "17"), [15, 16, 17]),
    ],
)
def test_holes_that_share_a_green(what: str, greens: tuple[str, ...], holes: list[int]) -> None:
    found = read_place(what, LINKS)
    assert found.greens == greens
    assert found.holes == tuple(("", hole) for hole in holes)


@pytest.mark.parametrize(
    ("what", "told"),
    [
        ("greens 10", "the course has no green 10"),
        ("tees 9-1", '"9-1" runs backwards'),
        ("fairways 1, Putting green", '"Putting green" is no hole'),
        ("greens 1-3, bunkers", 'the course has no green "bunkers"'),
    ],
)
def test_what_cannot_be_meant(what: str, told: str) -> None:
    (problem,) = read_place(what, NINE).problems
    assert problem.message == told
    assert problem.suggestion


def test_without_courses_nothing_is_taken_for_one() -> None:
    assert read_place("course Oak", NINE) == Place()
