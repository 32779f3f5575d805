"""Greens as findings name them: as the plan lists them, and short."""

from __future__ import annotations

import pytest

from notices.programme.green_names import plan_greens
from notices.programme.model import Green


def numbered(course: str, *numbers: int) -> dict[str, Green]:
    keys = {f"{course} {number}".strip(): number for number in numbers}
    return {
        key: Green(key, number, 480.0, area_given=True, course=course)
        for key, number in keys.items()
    }


PUTTING = {"Putting green": Green("Putting green", None, 300.0, area_given=True)}
DOUBLE = {"2/5": Green("2/5", 2, 900.0, area_given=True, shared_with=(5,))}
ONE = numbered("", *range(1, 10)) | PUTTING
TWO = numbered("Oak", *range(1, 10)) | numbered("Elm", *range(1, 10)) | PUTTING


@pytest.mark.parametrize(
    ("course", "keys", "said"),
    [
        (ONE, ["7"], "green 7"),
        (ONE, ["2", "1"], "greens 1 and 2"),
        (ONE, ["9", "3", "2", "1"], "greens 1-3 and 9"),
        (ONE, [str(number) for number in range(1, 10)], "all 9 greens"),
        (ONE, list(ONE), "all 9 greens and the Putting green"),
        (ONE, ["Putting green"], "the Putting green"),
        (ONE, ["Putting green", "4", "5"], "greens 4, 5 and the Putting green"),
        (TWO, ["Oak 4"], "green Oak 4"),
        (TWO, [f"Oak {number}" for number in range(1, 10)], "greens Oak 1-9"),
        (TWO, ["Elm 2", "Oak 1", "Oak 3"], "greens Oak 1, Oak 3 and Elm 2"),
        (numbered("", 1, 2), ["1", "2"], "greens 1 and 2"),
        (numbered("", 1, 3, 4) | DOUBLE, ["1", "2/5"], "greens 1 and 2/5"),
    ],
)
def test_greens_by_name(course: dict[str, Green], keys: list[str], said: str) -> None:
    assert plan_greens(course, keys) == said
