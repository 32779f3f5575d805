"""Which order of sections fills the pages: a drawing that does not fit gives way to what comes after it."""

from __future__ import annotations

import itertools
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

LATEST = 3
"""A section stands so many places later at most, or nobody would look for it there."""

_SMALL = 0.3**2
"""As much as one gap of three tenths of a page: nothing moves to gain less."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A part of a section as it is set."""

    section: str
    height: float
    whole: bool
    """Whether it stays on one page; else it flows from one to the next."""


def filled_order(
    pieces: Sequence[Piece],
    movable: Collection[str],
    begin: float,
    page: float,
    now: Sequence[str],
) -> tuple[str, ...]:
    """Return the order of sections that takes the fewest pages, and leaves the smallest gaps on them.

    Parameters
    ----------
    pieces
        What the sections are made of, in the order in which they are written.
    movable
        Sections that may stand later than they are written.
    begin
        Where the first begins on its page.
    page
        Height of a page.
    now
        The order that is kept where another gains little.

    Returns
    -------
    tuple of str
        Names of the sections; of orders that are as good, the one in which the least moves.
    """
    named: dict[str, list[Piece]] = {}
    for piece in pieces:
        named.setdefault(piece.section, []).append(piece)

    def cost(order: Sequence[str]) -> tuple[int, float]:
        pages, gaps = _filled([piece for name in order for piece in named[name]], begin, page)
        return pages, round(gaps, 2)

    # The first of orders that are as good is the one that moves least.
    best = min(_orders(tuple(named), movable), key=cost)
    (pages, gaps), (fewest, smallest) = cost(now), cost(best)
    return tuple(now) if pages <= fewest and gaps - smallest < _SMALL else best


def _orders(names: tuple[str, ...], movable: Collection[str]) -> Iterator[tuple[str, ...]]:
    """Yield every order in which movable sections stand a little later, those that move least first."""
    moving = [name for name in names if name in movable]
    delays = sorted(itertools.product(range(LATEST + 1), repeat=len(moving)), key=sum)
    for delay in delays:
        # Half a place more than what it follows, and the rest keep their order.
        places = {name: float(place) for place, name in enumerate(names)}
        for name, later in zip(moving, delay, strict=True):
            places[name] += later + 0.5 if later else 0.0
        yield tuple(sorted(names, key=lambda name: places[name]))


def _filled(pieces: Sequence[Piece], begin: float, page: float) -> tuple[int, float]:
    """Return how many pages are taken, and how bad the gaps are that what stays whole leaves.

    Gaps are squared, so that one of half a page is worse than two of a quarter.
    """
    pages, gaps, y = 1, 0.0, begin
    for piece in pieces:
        if piece.whole and y and y + piece.height > page:
            gaps += ((page - y) / page) ** 2
            pages, y = pages + 1, 0.0
        more, y = divmod(y + piece.height, page)
        pages += int(more)
    return pages, gaps
