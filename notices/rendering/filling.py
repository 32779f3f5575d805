"""The order of sections that leaves no page half empty: text may move up past a drawing that does not fit."""

from __future__ import annotations

import itertools
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

LATEST = 3
"""Most places by which a section may move back; further on, nobody would look for it."""

_SMALL = 0.3**2
"""Least gain for which a section moves: that of one gap of three tenths of a page."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A part of a section with its height on the page."""

    section: str
    height: float
    whole: bool
    """Whether it must stay on one page; otherwise it may break across pages."""


def filled_order(
    pieces: Sequence[Piece],
    movable: Collection[str],
    begin: float,
    page: float,
    now: Sequence[str],
) -> tuple[str, ...]:
    """Return the order of sections with the fewest pages, and among those with the smallest gaps.

    Parameters
    ----------
    pieces
        Parts of the sections, in document order.
    movable
        Names of the sections that may move back.
    begin
        Distance from the top of the first page to the first section.
    page
        Height of a page.
    now
        Present order, kept unless another gains enough.

    Returns
    -------
    tuple of str
        Names of the sections. Among equally good orders the one that moves sections least.
    """
    named: dict[str, list[Piece]] = {}
    for piece in pieces:
        named.setdefault(piece.section, []).append(piece)

    def cost(order: Sequence[str]) -> tuple[int, float]:
        pages, gaps = _filled([piece for name in order for piece in named[name]], begin, page)
        return pages, round(gaps, 2)

    # Orders come with the fewest moves first, and min keeps the first of equals.
    best = min(_orders(tuple(named), movable), key=cost)
    (pages, gaps), (fewest, smallest) = cost(now), cost(best)
    return tuple(now) if pages <= fewest and gaps - smallest < _SMALL else best


def _orders(names: tuple[str, ...], movable: Collection[str]) -> Iterator[tuple[str, ...]]:
    """Yield every order with movable sections moved back a little, the fewest moves first."""
    moving = [name for name in names if name in movable]
    delays = sorted(itertools.product(range(LATEST + 1), repeat=len(moving)), key=sum)
    for delay in delays:
        # Half a place more than what it follows, and the rest keep their order.
        places = {name: float(place) for place, name in enumerate(names)}
        for name, later in zip(moving, delay, strict=True):
            places[name] += later + 0.5 if later else 0.0
        yield tuple(sorted(names, key=lambda name: places[name]))


def _filled(pieces: Sequence[Piece], begin: float, page: float) -> tuple[int, float]:
    """Return the number of pages and the sum of squared gaps, in pages, before parts that stay whole.

    Squares make one gap of half a page worse than two of a quarter.
    """
    pages, gaps, y = 1, 0.0, begin
    for piece in pieces:
        if piece.whole and y and y + piece.height > page:
            gaps += ((page - y) / page) ** 2
            pages, y = pages + 1, 0.0
        more, y = divmod(y + piece.height, page)
        pages += int(more)
    return pages, gaps
