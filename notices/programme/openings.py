"""What each work opens in the ground: the sizes and the pattern that a drawing is made from."""

from __future__ import annotations

import enum
from collections.abc import Iterable
from dataclasses import dataclass

from notices.operations import Opening
from notices.programme.grounds import MOLE_SLOT_MM
from notices.programme.model import Period, Programme, Work
from notices.programme.sand import filled_depth_mm, hole_diameter_mm, passes

TURF_MM = 30.0
"""How thick turf for a green is typically cut (common practice, no published source)."""


class StageOfHealing(enum.Enum):
    """How far a green has come when one looks at it."""

    AFTER = "after the work"
    SMOOTH = "putting smoothly"
    HEALED = "fully healed"


@dataclass(frozen=True, slots=True)
class Cut:
    """The openings of one work; lengths in millimetres."""

    work: Work
    kind: Opening
    width: float
    """Width at the surface: of a hole its diameter, of channels that of the slot above them."""
    depth: float
    """How deep it goes; of channels the depth of their middle."""
    along: float
    """Distance along the way of the machine; 0 where the opening runs along it."""
    across: float
    passes: int = 1
    channel: float = 0.0
    """Diameter of a mole channel; 0 for all else."""
    filled: float = 0.0
    """Depth down to which sand fills it; 0 where it stays open."""

    @property
    def bottom(self) -> float:
        """Depth of its lowest point."""
        return self.depth + self.channel / 2


@dataclass(frozen=True, slots=True)
class Sand:
    """What a dressing leaves on the surface."""

    work: Work
    on_surface: float
    """Depth of the first dressing beyond what falls into open holes, where it is deepest [mm]."""
    carried: float
    """Depth of all that this dressing brings, where it is most [mm]."""


def deepest_sand(works: Iterable[Work], programme: Programme) -> Sand | None:
    """Return what dressings leave on the surface: the deepest of them; None where there are none."""
    found = []
    for work in works:
        if work.operation.opening is Opening.SAND:
            brought = [need for need in programme.sand if need.work == work.id]
            deepest = max((need.on_surface_of(1) for need in brought), default=0.0)
            carried = max((need.depth_of(1) for need in brought), default=0.0)
            found.append(Sand(work, deepest, carried))
    return max(found, key=lambda sand: sand.on_surface, default=None)


def heights_of_cut(works: Iterable[Work], programme: Programme) -> tuple[float, float]:
    """Return how high the grass is mown before works and after them [mm]."""
    before = after = programme.profile.mown_mm
    for work in works:
        if {"from", "to"} <= work.settings.values.keys():
            before, after = work.settings.number("from"), work.settings.number("to")
    return before, after


def cuts(works: Iterable[Work], programme: Programme) -> tuple[Cut, ...]:
    """Return what works open in the ground, the deepest first; sand and turf open nothing."""
    found = [_cut(work, programme) for work in works if work.operation.opening in _OPENS]
    return tuple(sorted(found, key=lambda cut: (-cut.bottom, cut.work.plan_index)))


def closed(cut: Cut, period: Period, stage: StageOfHealing, programme: Programme) -> float:
    """Return how far openings have grown over when one looks: 0 is as they were made, 1 is healed.

    It follows the dates by which the greens are expected to come back. Between the work and the
    day on which it has healed an opening closes as the grass grows.
    """
    healed = max(back.fully_healed.expected for back in programme.recoveries[cut.work.id])
    day = {
        StageOfHealing.AFTER: max(work.dates[-1] for work in period.opening_works),
        StageOfHealing.SMOOTH: period.putting_well.expect_by,
        StageOfHealing.HEALED: healed,
    }[stage]
    if healed <= day:
        return 1.0
    if stage is StageOfHealing.AFTER:
        return 0.0
    done = cut.work.dates[-1]
    growth = programme.season.growth if programme.season else {}
    whole = sum(grown for of, grown in growth.items() if done < of <= healed)
    so_far = sum(grown for of, grown in growth.items() if done < of <= day)
    return so_far / whole if whole else 0.0


_OPENS = frozenset({Opening.HOLES, Opening.SLITS, Opening.CHANNELS, Opening.TRENCHES})


def _cut(work: Work, programme: Programme) -> Cut:
    settings, kind = work.settings, work.operation.opening
    depth = settings.number("depth")
    match kind:
        case Opening.HOLES:
            along, across = settings.pair("spacing")
            return Cut(
                work,
                kind,
                hole_diameter_mm(work),
                depth,
                along,
                across,
                passes(work),
                filled=filled_depth_mm(work) if _is_filled(work, programme) else 0.0,
            )
        case Opening.SLITS:
            width, apart = settings.number("blade_width"), settings.number("blade_spacing")
            return Cut(work, kind, width, depth, 0.0, apart, passes(work))
        case Opening.CHANNELS:
            apart, channel = settings.number("spacing"), settings.number("channel_diameter")
            return Cut(work, kind, MOLE_SLOT_MM, depth, 0.0, apart, channel=channel)
        case _:
            width, apart = settings.number("width"), settings.number("spacing")
            return Cut(work, kind, width, depth, 0.0, apart)


def _is_filled(work: Work, programme: Programme) -> bool:
    # A drilled hole is filled as it is drilled, whatever is spread later.
    return work.operation.name == "drill and fill" or programme.is_filled(work.id)
