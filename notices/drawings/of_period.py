"""All drawings of what a period does to the greens."""

from __future__ import annotations

from collections.abc import Iterator

from notices.drawings.model import Drawing
from notices.drawings.section import cross_section
from notices.drawings.surface import surface
from notices.operations import Opening
from notices.programme.model import Period
from notices.programme.openings import Moment, cuts
from notices.wording.words import Words

HALF = 0.5
"""Size of the square at later moments: there is less to see."""


def drawings_of(words: Words, period: Period) -> tuple[Drawing, ...]:
    """Return every drawing of a period; names tell those of several periods apart.

    First the whole programme below ground, where it is more than one work, then each work alone,
    then the surface just after the work in true size, and when it putts smoothly and has healed
    in half of it.
    """
    return tuple(drawing for drawing in _drawn(words, period) if drawing is not None)


def _drawn(words: Words, period: Period) -> Iterator[Drawing | None]:
    number = words.programme.periods.index(period) + 1
    found = cuts(period.works, words.programme)
    sanded = any(work.operation.opening is Opening.SAND for work in period.works)
    if len(found) + sanded > 1:
        yield cross_section(words, period.works, f"section-{number}")
    for work in period.works:
        yield cross_section(words, [work], f"section-{number}-{work.id}")
    yield surface(words, period, Moment.AFTER, f"surface-{number}-after")
    if found:
        yield surface(words, period, Moment.SMOOTH, f"surface-{number}-smooth", HALF)
        yield surface(words, period, Moment.HEALED, f"surface-{number}-healed", HALF)
