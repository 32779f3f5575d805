"""Places of openings in a section or a patch: to scale, and out of one another's way.

On a real green the holes of one job meet those of another by chance. A drawing puts each where it
is best seen, and always in the same place for the same plan.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from notices.programme.openings import Cut

_PHASES = 12


@dataclass(frozen=True, slots=True)
class Place:
    """One opening: its middle [mm from the left] and the number of its pass."""

    middle: float
    turn: int


def places(
    cut: Cut,
    room: float,
    taken: Sequence[tuple[float, float]],
    *,
    apart: float | None = None,
    most: int | None = None,
    spare: int = 0,
) -> tuple[Place, ...]:
    """Return the openings that fit whole into a width, as far from others as possible.

    Parameters
    ----------
    cut
        Openings of one work.
    room
        Width of ground that is drawn [mm].
    taken
        Stretches that other openings take already [mm].
    apart
        Distance between openings of one pass; by default that across the machine's way [mm].
    most
        Most openings to draw, at the right of the picture, if they are too close to show all.
    spare
        Number of openings of each pass that may be left out, to keep out of others' way.
    """
    step = cut.across if apart is None else apart
    begin = max(0.0, room - most * step / cut.passes) if most else 0.0
    tries = [_pattern(cut, (begin, room), step, step * phase / _PHASES) for phase in range(_PHASES)]
    fit = max(len(found) for found in tries)
    least = max(min(fit, 2), fit - spare * cut.passes) if taken else fit
    fair = [found for found in tries if len(found) >= least]
    return max(fair, key=lambda found: _clearance(found, _half(cut), taken, room), default=())


def spans(cut: Cut, found: Sequence[Place]) -> list[tuple[float, float]]:
    """Return the left and right edges of openings [mm]."""
    return [(place.middle - _half(cut), place.middle + _half(cut)) for place in found]


def _half(cut: Cut) -> float:
    return max(cut.width, cut.channel) / 2


def _pattern(cut: Cut, room: tuple[float, float], step: float, first: float) -> tuple[Place, ...]:
    half = _half(cut)
    begin, end = room
    found = []
    for turn in range(cut.passes):
        middle = (first + turn * step / cut.passes) % step
        while middle + half <= end:
            if middle >= begin + half:
                found.append(Place(middle, turn))
            middle += step
    return tuple(sorted(found, key=lambda place: place.middle))


def _clearance(
    found: Sequence[Place], half: float, taken: Sequence[tuple[float, float]], room: float
) -> tuple[float, float]:
    """Return the least distance to a taken stretch, then how well the pattern is centred."""
    gaps = [
        max(low - place.middle, place.middle - high) - half
        for place in found
        for low, high in taken
    ]
    askew = abs(found[0].middle + found[-1].middle - room) if found else 0.0
    return (round(min(gaps, default=0.0), 6), -round(askew, 6))
