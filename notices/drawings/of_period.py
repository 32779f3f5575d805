"""All drawings of a period's effects on the greens."""

from __future__ import annotations

from collections.abc import Iterator

from notices.drawings.in_the_grass import in_the_grass
from notices.drawings.laid_turf import laid_turf
from notices.drawings.model import Drawing
from notices.drawings.section import cross_section
from notices.drawings.sizes import PAGE, Sizes
from notices.drawings.surface import as_it_heals, surface
from notices.operations import Opening
from notices.programme.model import Period, Work
from notices.programme.openings import StageOfHealing, cuts
from notices.wording.words import Words

HALF = 0.5
"""Scale of the square at later moments, when there is less to see."""


def drawings_of(words: Words, period: Period, sizes: Sizes = PAGE) -> tuple[Drawing, ...]:
    """Return every drawing of a period, with the number of the period in their names.

    First comes the whole period below ground if it has more than one work there, then each work
    alone, then the surface: just after the work in true size, and when it putts smoothly and when
    it has healed in half size. A telephone is narrower than the square, so its first surface is in
    half size, and the other two are left out because they are the same as on a page.
    """
    return tuple(drawing for drawing in _drawn(words, period, sizes) if drawing is not None)


def slice_of(words: Words, work: Work, name: str, sizes: Sizes = PAGE) -> Drawing | None:
    """Draw one work below ground or in the grass; None if there is nothing to see."""
    match work.operation.opening:
        case Opening.BARE:
            return laid_turf(words, work, name, sizes)
        case Opening.SAND | Opening.NONE:
            return in_the_grass(words, work, name, sizes)
        case _:
            return cross_section(words, [work], name, sizes)


def whole_of(words: Words, period: Period, name: str, sizes: Sizes = PAGE) -> Drawing | None:
    """Draw all works of a period below ground, or else the first work that shows anything."""
    slices = (slice_of(words, work, name, sizes) for work in period.works)
    return cross_section(words, period.works, name, sizes) or next(filter(None, slices), None)


def name_of_slice(words: Words, period: Period, work: Work) -> str:
    """Return the name of the drawing of one work, without the suffix of its size."""
    return f"section-{words.programme.periods.index(period) + 1}-{work.id}"


def _drawn(words: Words, period: Period, sizes: Sizes) -> Iterator[Drawing | None]:
    number = words.programme.periods.index(period) + 1
    found = cuts(period.works, words.programme)
    sanded = any(work.operation.opening is Opening.SAND for work in period.works)
    if len(found) + sanded > 1:
        yield cross_section(words, period.works, f"section-{number}", sizes)
    for work in period.works:
        yield slice_of(words, work, name_of_slice(words, period, work), sizes)
    square = f"surface-{number}"
    after = f"{square}-after{sizes.suffix}"
    yield surface(words, period, StageOfHealing.AFTER, after, 1.0 if sizes == PAGE else HALF)
    if sizes == PAGE:
        yield from as_it_heals(words, period, f"{square}-", HALF)
