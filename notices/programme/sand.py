"""How much sand each dressing puts on each green, and which holes it fills."""

from __future__ import annotations

from collections.abc import Sequence

from notices.agronomy import holes, sand
from notices.operations import Opening
from notices.programme.model import SandOnGreen, Work

WASTE = 0.05
"""Share ordered beyond the volume of the holes (common practice)."""


def open_depth_mm(work: Work) -> float:
    """Volume of the holes that one work opens and sand fills, per area [L/m² = mm]."""
    if not work.operation.filled:
        return 0.0
    along, across = work.settings.pair("spacing")
    depth = work.settings.number("depth")
    if work.operation.name == "deep solid tining":
        depth = min(depth, sand.FILLED_DEPTH_OF_DEEP_HOLES_MM)
    return holes.volume_l_per_m2(hole_diameter_mm(work), depth, along, across, passes(work))


def hole_diameter_mm(work: Work) -> float:
    """Width of a hole in the turf."""
    name = "hole_diameter" if "hole_diameter" in work.settings.values else "tine_diameter"
    return work.settings.number(name)


def passes(work: Work) -> int:
    """How many times a machine goes over a green."""
    return int(work.settings.number("passes")) if "passes" in work.settings.values else 1


def sand_by_green(works: Sequence[Work], density_t_m3: float) -> tuple[SandOnGreen, ...]:
    """Follow each green through its works and say what every dressing brings.

    ``fill: holes`` takes the volume opened on the same green since the last filling.
    A dressing with neither rate nor fill fills what is open, else covers at the usual rate.
    """
    steps = sorted(
        (
            (visit.date, work.operation.order, work.plan_index, green)
            for work in works
            for visit in work.main_visits
            for green in visit.greens
            if work.operation.filled or work.operation.opening is Opening.SAND
        ),
    )
    by_index = {work.plan_index: work for work in works}
    opened: dict[str, dict[str, float]] = {}
    found: dict[tuple[str, str], SandOnGreen] = {}
    for _, _, index, green in steps:
        work = by_index[index]
        if work.operation.filled:
            opened.setdefault(green, {})[work.id] = open_depth_mm(work)
        elif (work.id, green) not in found:
            count = int(work.settings.number("dressings"))
            fill = "fill" in work.settings.given or (
                "rate" not in work.settings.given and bool(opened.get(green))
            )
            if fill:
                holes_open = opened.pop(green, {})
                shares = sand.dressing_shares(count)
                depth = sum(holes_open.values())
            else:
                holes_open, shares = {}, (1.0,) * count
                depth = sand.depth_mm(work.settings.number("rate"), density_t_m3)
            found[work.id, green] = SandOnGreen(work.id, green, depth, shares, tuple(holes_open))
    return tuple(found.values())
