"""Where openings fall in a section or a patch: to scale, and out of one another's way.

On a real green it is chance where the holes of one job meet those of another. A drawing lets them
fall where each is best seen, always in the same place for the same plan.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from notices.programme.openings import Cut

_PHASES = 12


@dataclass(frozen=True, slots=True)
class Place:
    """One opening: where its middle is, in millimetres from the left, and of which pass it is."""

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
    """Return the openings that fit whole into a room, as far from others as can be.

    Parameters
    ----------
    cut
        The openings.
    room
        Width of what is drawn [mm].
    taken
        Where other openings are already, from and to [mm].
    apart
        Distance between openings of one pass; across the way of the machine if not given [mm].
    most
        Of openings that lie closer than a picture can show, only so many are drawn, on its right.
    spare
        How many fewer of each pass than would fit may be drawn, to keep out of others' way.
    """
    step = cut.across if apart is None else apart
    begin = max(0.0, room - most * step / cut.passes) if most else 0.0
    tries = [_pattern(cut, (begin, room), step, step * phase / _PHASES) for phase in range(_PHASES)]
    fit = max(len(found) for found in tries)
    least = max(min(fit, 2), fit - spare * cut.passes) if taken else fit
    fair = [found for found in tries if len(found) >= least]
    return max(fair, key=lambda found: _clearance(found, _half(cut), taken, room), default=())


def spans(cut: Cut, found: Sequence[Place]) -> list[tuple[float, float]]:
    """Return from where to where openings reach [mm]."""
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
    """Return the least distance to what is taken, then how well the pattern is in the middle."""
    gaps = [
        max(low - place.middle, place.middle - high) - half
        for place in found
        for low, high in taken
    ]
    askew = abs(found[0].middle + found[-1].middle - room) if found else 0.0
    return (round(min(gaps, default=0.0), 6), -round(askew, 6))
