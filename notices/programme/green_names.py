"""Greens as a finding names them: "green 12", "greens Oak 1-9 and Elm 4", "all 18 greens"."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from notices.plan.green_list import format_greens
from notices.plan.messages import listed
from notices.programme.model import Green

A_FEW = 2
"""So many greens are named one by one, even where there are no more."""


def plan_greens(course: Mapping[str, Green], keys: Collection[str]) -> str:
    """Name greens as the plan lists them, course by course, however they are ordered.

    Parameters
    ----------
    course
        All greens of the club; when every numbered one is meant, so it is said.
    keys
        The greens, at least one.
    """
    chosen = [green for key, green in course.items() if key in keys]
    numbered = [green for green in chosen if green.holes]
    names = [_with_the(green.key) for green in chosen if not green.holes]
    if len(numbered) == sum(bool(green.holes) for green in course.values()) > A_FEW:
        return listed([f"all {len(numbered)} greens", *names])
    if not numbered:
        return listed(names)
    first, *runs = _runs(numbered)
    return listed([f"{'green' if len(numbered) == 1 else 'greens'} {first}", *runs, *names])


def _with_the(name: str) -> str:
    return name if name.casefold().startswith("the ") else f"the {name}"


def _runs(greens: Sequence[Green]) -> list[str]:
    """Write greens as "Oak 1-9", "Elm 4": a run of plain numbers is one part."""
    parts: list[str] = []
    plain: dict[str, list[int]] = {}
    for green in greens:
        if len(green.holes) == 1:
            plain.setdefault(green.course, []).append(green.holes[0])
    for name, numbers in plain.items():
        parts += [f"{name} {run}".strip() for run in format_greens(sorted(numbers)).split(", ")]
    return [*parts, *(green.key for green in greens if len(green.holes) > 1)]
