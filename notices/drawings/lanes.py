"""Labels beside their marks: to the right where there is room, else to the left, never over others."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from notices.drawings.lettering import fitted, width_of
from notices.drawings.svg import Anchor

APART = 5.0
"""From a mark to its label, and from a label to the next mark."""

_Stretch = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Marked:
    """A mark from one place to another, with the words that belong to it."""

    left: float
    right: float
    words: str
    kind: object = None
    """What the mark is; the drawing knows how it looks."""


@dataclass(frozen=True, slots=True)
class Placed:
    """A mark in its lane, and where its words stand."""

    mark: Marked
    lane: int
    lane_of_words: int
    """The next one where there is no room for the words on either side of the mark."""
    x: float
    anchor: Anchor
    words: str


def in_lanes(marks: Iterable[Marked], left: float, right: float, size: float) -> list[Placed]:
    """Lay marks and their words out, each in the first lane in which there is room for both.

    Parameters
    ----------
    marks
        From left to right.
    left, right
        Between which words may stand.
    size
        Size of the letters.
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
    """Return how many lanes are used."""
    return max((own.lane_of_words + 1 for own in placed), default=0)


def beside(mark: Marked, left: float, right: float, size: float) -> tuple[float, Anchor, str]:
    """Return where the words of one mark stand, and as much of them as there is room for."""
    wide = width_of(mark.words, size)
    after, before = right - mark.right - APART, mark.left - APART - left
    if wide <= after or (wide > before and after >= before):
        return mark.right + APART, "start", fitted(mark.words, after, size)
    return mark.left - APART, "end", fitted(mark.words, before, size)


def _first_free(taken: Sequence[Sequence[_Stretch]], spans: Sequence[_Stretch]) -> int:
    """Return the first lane from which on each stretch finds its own lane free."""
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
