"""Greens in words: "greens 1 to 6 and the putting green"."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from notices.programme.model import Green
from notices.wording.lists import and_list


def name_greens(keys: Sequence[str], course: Mapping[str, Green], *, short: bool = False) -> str:
    """Name greens as one says them.

    Parameters
    ----------
    keys
        The greens.
    course
        All greens of the course; when every numbered one is meant, so it is said.
    short
        Whether the numbers stand alone, as in a column headed "Greens".
    """
    chosen = set(keys)
    numbers = sorted(
        green.number for key, green in course.items() if key in chosen and green.number is not None
    )
    total = sum(green.number is not None for green in course.values())
    parts = []
    if numbers and len(numbers) == total and total > 1 and not short:
        parts.append(f"all {total} greens")
    elif numbers:
        listed = and_list(_runs(numbers))
        noun = "" if short else ("green " if len(numbers) == 1 else "greens ")
        parts.append(noun + listed)
    names = [key for key, green in course.items() if key in chosen and green.number is None]
    if short:
        return ", ".join([*parts, *(named(name, article="") for name in names)])
    return and_list([*parts, *(named(name) for name in names)]) or "no green"


def named(key: str, article: str = "the ") -> str:
    """Name a green that has a name: "the putting green"."""
    words = key[:1].lower() + key[1:] if key[1:2].islower() else key
    return words if words.startswith("the ") else f"{article}{words}"


def _runs(numbers: Sequence[int]) -> list[str]:
    """Write 1, 2, 3, 5 as "1 to 3", "5"; a pair stays a pair."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    words = []
    for run in runs:
        if len(run) > 2:
            words.append(f"{run[0]} to {run[-1]}")
        else:
            words += [str(number) for number in run]
    return words
