"""Labels beside their marks: right if there is room, else left, and never over another."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from notices.drawings.lettering import fitted, width_of
from notices.drawings.svg import Anchor

APART = 5.0
"""Distance from a mark to its label, and from a label to the next mark."""

_Stretch = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Marked:
    """A mark from one x to another, with its label."""

    left: float
    right: float
    words: str
    kind: object = None
    """Kind of mark, by which the drawing chooses its look."""


@dataclass(frozen=True, slots=True)
class Placed:
    """A mark in its lane, with the position of its label."""

    mark: Marked
    lane: int
    lane_of_words: int
    """Lane of the label: the next one if there is no room on either side of the mark."""
    x: float
    anchor: Anchor
    words: str


def in_lanes(marks: Iterable[Marked], left: float, right: float, size: float) -> list[Placed]:
    """Place marks with their labels, each in the first lane with room for both.

    Parameters
    ----------
    marks
        Marks from left to right.
    left, right
        Limits between which labels may stand.
    size
        Font size.
    """
    taken: list[list[_Stretch]] = []
    placed = []
    for mark in marks:
        x, anchor, words = beside(mark, left, right, size)
        if words == mark.words:
            wide = width_of(words, size)
            said = (x - wide, x) if anchor == "end" else (x, x + wide)
            spans = [(min(mark.left, said[0]), max(mark.right, said[1]))]
        else:
            words = fitted(mark.words, right - left, size)
            wide = width_of(words, size)
            x, anchor = max(left, min(mark.left, right - wide)), "start"
            spans = [(mark.left, mark.right), (x, x + wide)]
        lane = _first_free(taken, spans)
        for number, span in enumerate(spans, lane):
            if number == len(taken):
                taken.append([])
            taken[number].append(span)
        placed.append(Placed(mark, lane, lane + len(spans) - 1, x, anchor, words))
    return placed


def lanes_of(placed: Sequence[Placed]) -> int:
    """Return the number of lanes used."""
    return max((own.lane_of_words + 1 for own in placed), default=0)


def beside(mark: Marked, left: float, right: float, size: float) -> tuple[float, Anchor, str]:
    """Return x, anchor and words of a mark's label, cut short if there is too little room."""
    wide = width_of(mark.words, size)
    after, before = right - mark.right - APART, mark.left - APART - left
    if wide <= after or (wide > before and after >= before):
        return mark.right + APART, "start", fitted(mark.words, after, size)
    return mark.left - APART, "end", fitted(mark.words, before, size)


def _first_free(taken: Sequence[Sequence[_Stretch]], spans: Sequence[_Stretch]) -> int:
    """Return the first lane from which one free lane for each stretch follows the other."""
    lane = 0
    while not all(
        number >= len(taken)
        or all(
            span[1] + APART <= begun or span[0] >= ended + APART for begun, ended in taken[number]
        )
        for number, span in enumerate(spans, lane)
    ):
        lane += 1
    return lane
