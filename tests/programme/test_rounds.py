"""A day parted by its rounds of dressing, and what golfers meet of it."""

from __future__ import annotations

import datetime as dt

import pytest

from notices.programme.rounds import only_again_on, rounds_on
from tests.wording.small_plans import plan, programme, work

SAND = work(
    "top dressing", "2027-08-09", greens="1-3", settings={"dressings": 2, "days_between": 7}
)
FIRST, AGAIN = dt.date(2027, 8, 9), dt.date(2027, 8, 16)


def test_the_first_dressing_is_the_work_itself_and_the_second_is_only_again() -> None:
    made = programme(plan(SAND))
    assert (list(rounds_on(made, FIRST)), only_again_on(made, FIRST)) == ([1], False)
    assert (list(rounds_on(made, AGAIN)), only_again_on(made, AGAIN)) == ([2], True)
    assert not only_again_on(made, dt.date(2027, 8, 17))


@pytest.mark.parametrize(
    ("beside", "numbers", "only"),
    [
        # Brushing goes along where sand is spread; on other greens it is work of its own for the
        # team, but those open as soon as they are brushed.
        (work("brushing", "2027-08-16", greens="1-3"), [2], True),
        (work("brushing", "2027-08-16", greens="1-6"), [1, 2], True),
        (work("feeding", "2027-08-16", greens="7"), [1, 2], True),
        # Golfers meet a green that stays closed until the next morning, and turf that is opened.
        (
            work(
                "rolling",
                "2027-08-16",
                greens="7",
                while_working="closed",
                reopen="next morning",
            ),
            [1, 2],
            False,
        ),
        (work("verticutting", "2027-08-16", greens="7"), [1, 2], False),
    ],
)
def test_what_else_is_done_beside_a_second_dressing(
    beside: dict[str, object], numbers: list[int], *, only: bool
) -> None:
    made = programme(plan(SAND, beside))
    assert list(rounds_on(made, AGAIN)) == numbers
    assert only_again_on(made, AGAIN) is only


def test_brushing_alone_is_no_dressing() -> None:
    made = programme(plan(SAND, work("brushing", "2027-08-17", greens="1-3")))
    assert not only_again_on(made, dt.date(2027, 8, 17))
