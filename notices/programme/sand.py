"""How much sand each dressing puts on each green, and which holes it fills."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from notices.agronomy import holes, sand, slits
from notices.operations import Opening
from notices.plan.model import Plan
from notices.programme.model import SandOnGreen, Work


def open_depth_mm(work: Work) -> float:
    """Volume of the holes that one work opens and sand fills, per area [L/m² = mm]."""
    if not work.operation.filled:
        return 0.0
    along, across = work.settings.pair("spacing")
    return holes.volume_l_per_m2(
        hole_diameter_mm(work), filled_depth_mm(work), along, across, passes(work)
    )


def filled_depth_mm(work: Work) -> float:
    """How far down sand fills the holes of a work."""
    depth = work.settings.number("depth")
    if work.operation.name == "deep solid tining":
        return min(depth, sand.FILLED_DEPTH_OF_DEEP_HOLES_MM)
    return depth


def hole_diameter_mm(work: Work) -> float:
    """Width of a hole in the turf."""
    return work.settings.number(diameter_setting(work))


def diameter_setting(work: Work) -> str:
    """Name of the setting that is the width of a hole in the turf."""
    return "hole_diameter" if "hole_diameter" in work.settings.values else "tine_diameter"


def passes(work: Work) -> int:
    """How many times a machine goes over a green."""
    return int(work.settings.number("passes")) if "passes" in work.settings.values else 1


def removed_depth_mm(work: Work) -> float:
    """Volume that a work takes out of the turf with holes or slits, per area [L/m² = mm]."""
    if not work.operation.removes_core:
        return 0.0
    depth = work.settings.number("depth")
    if work.operation.opening is Opening.SLITS:
        width, apart = work.settings.number("blade_width"), work.settings.number("blade_spacing")
        return slits.volume_l_per_m2(width, depth, apart, passes(work))
    along, across = work.settings.pair("spacing")
    return holes.volume_l_per_m2(core_diameter_mm(work), depth, along, across, passes(work))


def core_diameter_mm(work: Work) -> float:
    """Width of what comes out of a hole; as wide as the hole where the plan does not say."""
    inside = work.settings.values.get("inside_diameter")
    return inside if isinstance(inside, float | int) else hole_diameter_mm(work)


def disturbed_percent(work: Work) -> float:
    """Share of the surface that a work opens with holes or slits [%]."""
    if work.operation.opening is Opening.SLITS:
        width, apart = work.settings.number("blade_width"), work.settings.number("blade_spacing")
        return slits.surface_percent(width, apart, passes(work))
    if work.operation.opening is Opening.HOLES:
        return holes.surface_percent(
            hole_diameter_mm(work), *work.settings.pair("spacing"), passes(work)
        )
    return 0.0


def sand_by_green(
    works: Sequence[Work],
    density_t_m3: float,
    most_per_dressing_kg_m2: float | None = None,
) -> tuple[SandOnGreen, ...]:
    """Follow each green through its works and say what every dressing brings.

    ``fill: holes`` takes the volume opened on the same green since the last filling, and
    shares it out over its dressings: half at first, or less where the club says what a dressing
    can work in. A rate is what every dressing brings, and leaves open
    holes to a later filling. A dressing with neither fills what is open, else covers at the
    usual rate. What a rate brings falls into open holes all the same, so that only the rest of it
    lies on the surface. A job that takes several days on a green opens its holes once, on the first
    of them, and is dressed once, on the last.
    """
    opened: dict[str, dict[str, float]] = {}
    still_open: dict[str, float] = {}
    found = []
    for work, green in _in_order(works):
        if work.operation.filled:
            opened.setdefault(green, {})[work.id] = open_depth_mm(work)
            still_open[green] = still_open.get(green, 0.0) + open_depth_mm(work)
            continue
        dressings = int(work.settings.number("dressings"))
        fills: tuple[str, ...] = ()
        shares: tuple[float, ...] = (1.0,) * dressings
        room = still_open.get(green, 0.0)
        if "rate" not in work.settings.given and (
            "fill" in work.settings.given or opened.get(green)
        ):
            holes_open = opened.pop(green, {})
            fills, depth = tuple(holes_open), sum(holes_open.values())
            shares = sand.dressing_shares(
                dressings, _largest_share(depth, density_t_m3, most_per_dressing_kg_m2)
            )
            room = max(room, depth)
            still_open[green] = 0.0
        else:
            depth = sand.depth_mm(work.settings.number("rate"), density_t_m3)
        if not fills:
            still_open[green] = max(0.0, room - depth * sum(shares))
        found.append(SandOnGreen(work.id, green, depth, shares, fills, room))
    return tuple(found)


def _largest_share(depth_mm: float, density_t_m3: float, most_kg_m2: float | None) -> float:
    """Return what part of a fill one dressing can work in; all of it where the club sets no limit."""
    if most_kg_m2 is None or not depth_mm:
        return 1.0
    return sand.depth_mm(most_kg_m2, density_t_m3) / depth_mm


def _in_order(works: Sequence[Work]) -> list[tuple[Work, str]]:
    """Return works that open or fill holes, green by green, in the order in which they are done."""
    steps = [
        (
            min(days) if work.operation.filled else max(days),
            work.operation.order,
            work.plan_index,
            position,
            green,
        )
        for work in works
        if work.operation.filled or work.operation.opening is Opening.SAND
        for position, green in enumerate(work.greens)
        if (days := work.days_on(green))
    ]
    by_index = {work.plan_index: work for work in works}
    return [(by_index[index], green) for _, _, index, _, green in sorted(steps)]


def sand_of(plan: Plan, works: Sequence[Work]) -> tuple[SandOnGreen, ...]:
    """Return what each dressing brings, with the density and the limit that the plan gives."""
    given = "most_per_dressing" in plan.sand.model_fields_set
    limit = plan.sand.most_per_dressing if given else None
    return sand_by_green(works, plan.sand.density, limit)


def filled_by(
    works: Sequence[Work], needs: Sequence[SandOnGreen]
) -> Mapping[tuple[str, str], Work]:
    """Return, for the work and the green whose holes are filled, the dressing that does it."""
    by_id = {work.id: work for work in works}
    return {(opened, need.green): by_id[need.work] for need in needs for opened in need.fills}
